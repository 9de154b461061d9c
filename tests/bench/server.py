"""A static host for the bench: it compresses what hosts compress, and counts what it sends.

Each file is compressed once, when it is first asked for, so that no measured time has the
compressing in it.
"""

import contextlib
import gzip
import hashlib
import http.server
import sys
import threading
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any
from urllib.parse import unquote, urlsplit

TYPES = {
    ".html": "text/html; charset=utf-8", ".css": "text/css; charset=utf-8",
    ".js": "text/javascript; charset=utf-8", ".mjs": "text/javascript; charset=utf-8",
    ".json": "application/json", ".webmanifest": "application/manifest+json",
    ".svg": "image/svg+xml", ".xml": "application/xml", ".txt": "text/plain; charset=utf-8",
    ".wasm": "application/wasm", ".woff2": "font/woff2", ".png": "image/png",
    ".zip": "application/zip", ".pdf": "application/pdf",
}  # fmt: skip
COMPRESSED = (
    ".html",
    ".css",
    ".js",
    ".mjs",
    ".json",
    ".webmanifest",
    ".svg",
    ".xml",
    ".txt",
    ".wasm",
)
SERVICE_WORKER = "service-worker.js"
FOR_GOOD = "public, max-age=31536000, immutable"
"""For files whose address changes with what is in them."""


def gzipped(content: bytes) -> bytes:
    """The content as a static host compresses it on the way: gzip, level 6."""
    return gzip.compress(content, 6, mtime=0)


@dataclass(frozen=True)
class Sent:
    """One answer: the address below the root, bytes with the headers, whether a service worker
    (or the browser, for one) asked for it, and whether it said "not changed" (304).
    """

    address: str
    bytes: int
    in_background: bool
    not_changed: bool = False


@dataclass
class Host:
    """Where a folder is served, and what was sent, in order."""

    folder: Path
    for_good: tuple[str, ...] = ()
    address: str = ""
    sent: list[Sent] = field(default_factory=list)
    _made: dict[Path, bytes] = field(default_factory=dict)

    def content(self, path: Path, accepted: str) -> tuple[bytes, str]:
        """A file's bytes as they are sent, and their encoding, "" where they are sent as they are."""
        if path.suffix not in COMPRESSED or "gzip" not in accepted:
            return path.read_bytes(), ""
        if path not in self._made:
            self._made[path] = gzipped(path.read_bytes())
        return self._made[path], "gzip"

    def cached(self, path: str) -> str:
        """The Cache-Control of an address."""
        return FOR_GOOD if path.startswith(self.for_good) else "no-cache"


class Handler(http.server.BaseHTTPRequestHandler):
    """Answers GET from the host's folder."""

    protocol_version = "HTTP/1.1"
    disable_nagle_algorithm = True
    wbufsize = -1
    host: Host

    def do_GET(self) -> None:
        """A file, or the index of a folder; 304 where the browser has it."""
        address = unquote(urlsplit(self.path).path).lstrip("/")
        path = self.host.folder / address
        if address.endswith("/") or not address:
            path /= "index.html"
        found = path.is_file() and path.resolve().is_relative_to(self.host.folder.resolve())
        if not found:
            path = self.host.folder / "404.html"
        if not path.is_file():
            self._send(address, 404, {}, b"")
            return
        content, encoding = self.host.content(path, self.headers.get("Accept-Encoding", ""))
        headers = {
            "Content-Type": TYPES.get(path.suffix, "application/octet-stream"),
            "Cache-Control": self.host.cached(address),
            "ETag": f'"{hashlib.sha256(content).hexdigest()[:16]}"',
            "Vary": "Accept-Encoding",
        }
        if encoding:
            headers["Content-Encoding"] = encoding
        if self.headers.get("If-None-Match") == headers["ETag"]:
            self._send(address, 304, headers, b"")
        else:
            self._send(address, 200 if found else 404, headers, content)

    def _send(self, address: str, status: int, headers: dict[str, str], content: bytes) -> None:
        self.send_response(status)
        for name, value in headers.items():
            self.send_header(name, value)
        if status != 304:
            self.send_header("Content-Length", str(len(content)))
        head = sum(map(len, self._headers_buffer))  # type: ignore[attr-defined]
        self.end_headers()
        with contextlib.suppress(ConnectionError):
            self.wfile.write(content)
        sent = Sent(address, head + len(content), self._in_background(), status == 304)
        self.host.sent.append(sent)

    def _in_background(self) -> bool:
        worker = urlsplit(self.headers.get("Referer", "")).path.rpartition("/")[2] == SERVICE_WORKER
        return worker or self.headers.get("Sec-Fetch-Dest") == "serviceworker"

    def log_message(self, format: str, *args: Any) -> None:
        """Keeps quiet."""


class Server(http.server.ThreadingHTTPServer):
    """One thread a connection; a browser that goes away in the middle is no fault."""

    daemon_threads = True

    def handle_error(self, request: Any, client_address: Any) -> None:
        """Says what went wrong, but for a connection that was closed."""
        if not isinstance(sys.exception(), ConnectionError):
            super().handle_error(request, client_address)


@contextlib.contextmanager
def serving(folder: Path, for_good: tuple[str, ...] = ("runtime/",)) -> Iterator[Host]:
    """Serves a folder while the block runs; ``for_good`` begin the addresses that never change."""
    host = Host(folder, for_good)
    handler = type("HostHandler", (Handler,), {"host": host})
    server = Server(("127.0.0.1", 0), handler)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    host.address = f"http://127.0.0.1:{server.server_address[1]}/"
    try:
        yield host
    finally:
        server.shutdown()
        server.server_close()
