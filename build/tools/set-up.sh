#!/bin/sh
# Makes .venv from requirements.lock and node_modules from package-lock.json; does nothing when both
# are up to date. Finds a Python 3.12 or newer by itself.
set -eu
cd "$(dirname "$0")/../.."

fits() { # a Python that runs, is new enough and can make environments
    "$1" -c 'import sys, venv, ensurepip; sys.exit(sys.version_info < (3, 12))' >/dev/null 2>&1
}

find_python() {
    for name in "${PYTHON:-}" python3.13 python3.14 python3.12 python3 python; do
        [ -n "$name" ] && command -v "$name" >/dev/null 2>&1 && fits "$name" && echo "$name" && return
    done
    for path in "${PYENV_ROOT:-$HOME/.pyenv}"/versions/3.1[3-9]*/bin/python3 \
                "${PYENV_ROOT:-$HOME/.pyenv}"/versions/3.12*/bin/python3; do
        [ -x "$path" ] && fits "$path" && echo "$path" && return
    done
    return 1
}

wanted=$(cat requirements.lock pyproject.toml | cksum)
if [ "$(cat .venv/.made-from 2>/dev/null)" != "$wanted" ]; then
    if ! python=$(find_python); then
        echo "Benchrule needs Python 3.12 or newer, with its venv module; none was found." >&2
        echo "Install it (Debian: apt-get install python3 python3-venv; or from python.org)," >&2
        echo "or name one: PYTHON=/path/to/python3.13 make ..." >&2
        exit 1
    fi
    echo "Making .venv with $("$python" --version) ..."
    rm -rf .venv
    "$python" -m venv .venv
    .venv/bin/python -m pip install --quiet --disable-pip-version-check --require-hashes \
        -r requirements.lock
    .venv/bin/python -m pip install --quiet --disable-pip-version-check --no-deps \
        --no-build-isolation -e .
    echo "$wanted" > .venv/.made-from
fi

wanted=$(cksum < package-lock.json)
if [ "$(cat node_modules/.made-from 2>/dev/null)" != "$wanted" ]; then
    if ! command -v npm >/dev/null 2>&1; then
        echo "Benchrule needs Node.js 20 or newer with npm (Debian: apt-get install nodejs npm)." >&2
        exit 1
    fi
    echo "Fetching the browser runtime and the fonts ..."
    npm ci --silent
    echo "$wanted" > node_modules/.made-from
fi
