#!/bin/sh
# Looks every locked package up in the advisories of PyPI and npm. Needs the network; ends with 1
# where an advisory is found, and where a package could not be looked up. pip-audit has an
# environment of its own: nothing of the project depends on it.
set -u
cd "$(dirname "$0")/../.."
tool=pip-audit==2.10.1
if [ "$(cat .cache/audit/.made-from 2>/dev/null)" != "$tool" ]; then
    rm -rf .cache/audit
    .venv/bin/python -m venv .cache/audit &&
        .cache/audit/bin/python -m pip install --quiet --disable-pip-version-check "$tool" &&
        echo "$tool" > .cache/audit/.made-from || exit 1
fi
failed=0
# Without --strict a package that cannot be looked up counts as one without advisories.
.cache/audit/bin/pip-audit --strict --disable-pip --require-hashes -r requirements.lock || failed=1
# All packages: what serves the tests runs on a developer's machine too.
npm audit || failed=1
exit $failed
