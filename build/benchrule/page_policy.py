"""Gives every page of a built site its Content-Security-Policy, one and the same on all of them.

The policy allows scripts and styles by file. Of what stands in line it allows what the theme itself
puts on every page: that is seen on 404.html, which holds the theme and nothing else, so that no
script that came in with a page's content is ever allowed. What a page holds beyond that is named.
"""

import base64
import hashlib
import re
from html.parser import HTMLParser
from pathlib import Path

from calculators.learning.sheet import STYLE as SHEET_STYLE

PAGE_POLICY = {
    "default-src": "'none'",
    "script-src": "'self' 'wasm-unsafe-eval'",  # the runtime is WebAssembly; no text is evaluated
    "style-src": "'self'",
    "img-src": "'self' data:",  # the theme's icons are data in its style sheets
    "font-src": "'self'",
    "connect-src": "'self'",
    "worker-src": "'self'",
    "manifest-src": "'self'",
    "object-src": "'none'",
    "base-uri": "'none'",
    "form-action": "'self'",
}
"""What a page may do; the hashes of what stands in line are added."""

WORKER_POLICY = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; connect-src 'self'"
"""What a worker may do: it has the policy it is sent with, never that of the page it serves."""

WORKER_FILES = ("/runtime/*/worker.mjs", "/assets/benchrule/search.js", "/service-worker.js")
"""The files, by their addresses below the site's, that are sent with the workers' policy."""

PAGE_HEADERS = {
    "Content-Security-Policy": "frame-ancestors 'none'",  # no page can say this of itself
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "no-referrer",
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
    "Permissions-Policy": "camera=(), geolocation=(), microphone=(), payment=(), usb=()",
}
"""What a host does well to send with every file, beside the policy that stands in the pages."""

WORKER_HEADERS = PAGE_HEADERS | {"Content-Security-Policy": WORKER_POLICY}
"""The same for the workers' files."""

REFERRER = '<meta name="referrer" content="no-referrer">'
OURS = re.compile(
    rb'<meta http-equiv="Content-Security-Policy" content="[^"]*">' + re.escape(REFERRER.encode())
)
CHARSET = re.compile(rb"<meta charset=[^>]*>", re.I)
HEAD = re.compile(rb"<head[^>]*>", re.I)
HEAD_BYTES = 4096  # the policy stands within them

SCRIPT = re.compile(rb"<script\b([^>]*)>(.*?)</script\s*>", re.I | re.S)
DATA = ("application/json", "application/ld+json")
NOT_RUN = re.compile(rb"""\bsrc=|\btype=["']?application/(?:ld\+)?json\b""", re.I)
SUSPECT = re.compile(rb" on[a-z]+=")
SUSPECTS = (b"<style", b" style=", b"javascript:")


def set_policy(site: Path) -> list[str]:
    """Writes one policy, the same for all, into every page of ``site``, and names what it forbids.

    A page that carries this very policy is left alone: it has been through here before. One that
    carries another has it replaced. Returns a line for each kind of thing on a page it writes that
    the policy keeps from working.
    """
    theme = site / "404.html"
    allowed = set(_inline_scripts(theme.read_bytes())) if theme.exists() else set()
    line = policy_line(sorted(allowed)).encode()
    found = []
    for page in sorted(site.rglob("*.html")):
        with page.open("rb") as file:
            start = file.read(HEAD_BYTES)
            fresh = _with_policy(start, line)
            if fresh == start:
                continue
            rest = file.read()
        name = page.relative_to(site).as_posix()
        found += [f"{name}: {what}" for what in forbidden(start + rest, allowed)]
        page.write_bytes(fresh + rest)
    return found


def policy_line(scripts: list[bytes]) -> str:
    """The meta elements that carry the policy, given the inline scripts that it allows."""
    sources = dict(PAGE_POLICY)
    sources["script-src"] += "".join(f" '{_hash(script)}'" for script in scripts)
    # Sheets to print open as documents of their own, under the policy of the page they came from.
    sources["style-src"] += f" '{_hash(SHEET_STYLE.encode())}'"
    policy = "; ".join(f"{name} {value}" for name, value in sources.items())
    return f'<meta http-equiv="Content-Security-Policy" content="{policy}">{REFERRER}'


def forbidden(page: bytes, allowed: set[bytes]) -> list[str]:
    """What of a page the policy keeps from working, given the inline scripts that it allows."""
    suspect = any(one in page for one in SUSPECTS) or SUSPECT.search(page)
    if not suspect and all(one in allowed for one in _inline_scripts(page)):
        return []  # as nearly every page; the others are read with care
    reading = _Forbidden(allowed)
    reading.feed(page.decode("utf-8", "replace"))
    reading.close()
    return sorted(reading.found)


class _Forbidden(HTMLParser):
    """Goes through a page for what the policy forbids."""

    def __init__(self, allowed: set[bytes]) -> None:
        super().__init__()
        self.allowed = allowed
        self.script: str | None = None  # the text so far of the one being read
        self.found: set[str] = set()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = dict(attrs)
        if tag == "script" and "src" not in given and given.get("type") not in DATA:
            self.script = ""
        if tag == "style":
            self.found.add("a style element has no effect; name a file in extra_css")
        for name, value in attrs:
            if name == "style":
                self.found.add(
                    "a style attribute has no effect; use a class, and a file in extra_css"
                )
            elif name.startswith("on"):
                self.found.add(f"{name}= will not run; listen from a script in a file")
            elif (value or "").strip().lower().startswith("javascript:"):
                self.found.add("a javascript: link does nothing; use a script in a file")

    def handle_data(self, data: str) -> None:
        if self.script is not None:
            self.script += data

    def handle_endtag(self, tag: str) -> None:
        if tag == "script" and self.script is not None:
            if self.script.encode() not in self.allowed:
                self.found.add("a script in line will not run; name a file in extra_javascript")
            self.script = None


def _inline_scripts(page: bytes) -> list[bytes]:
    return [text for attributes, text in SCRIPT.findall(page) if not NOT_RUN.search(attributes)]


def _hash(text: bytes) -> str:
    return f"sha256-{base64.b64encode(hashlib.sha256(text).digest()).decode()}"


def _with_policy(start: bytes, line: bytes) -> bytes:
    """A page's start with the policy before all that it rules; one without a head as it was."""
    start = OURS.sub(b"", start)
    place = CHARSET.search(start) or HEAD.search(start)
    return start[: place.end()] + line + start[place.end() :] if place else start
