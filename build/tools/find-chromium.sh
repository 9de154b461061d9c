#!/bin/sh
# Prints the path of a Chromium for the browser tests; installs Debian's where it may.
set -eu
find_it() {
    for name in "${CHROMIUM:-}" chromium chromium-browser google-chrome-stable google-chrome; do
        [ -n "$name" ] && command -v "$name" && return
    done
    return 1
}
if find_it; then exit; fi
if command -v apt-get >/dev/null 2>&1 && [ "$(id -u)" = 0 ]; then
    echo "Installing Chromium for the browser tests ..." >&2
    { apt-get update -qq && DEBIAN_FRONTEND=noninteractive apt-get install -y -qq chromium; } \
        >/dev/null 2>&1 || true # what is missing is said below
    if find_it; then exit; fi
fi
echo "The browser tests need Chromium: install it (Debian: apt-get install chromium)," >&2
echo "or name one: CHROMIUM=/path/to/chromium make test" >&2
exit 1
