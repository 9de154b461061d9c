"""Opens the handbook that lies beside this file: double-click it, or python3 open-handbook.py

It hands the pages to the browser of this machine, and to no other. With --network it hands them to
whoever reaches this machine, at the address that it prints.
"""

from __future__ import annotations

import contextlib
import http.server
import socket
import sys
import webbrowser
from functools import partial
from pathlib import Path

FOLDER = Path(__file__).resolve().parent / "handbook"
PORT = 8737  # always the same where it is free: what a browser keeps, it keeps by this address
TYPES = {
    ".html": "text/html; charset=utf-8", ".css": "text/css; charset=utf-8",
    ".js": "text/javascript; charset=utf-8", ".mjs": "text/javascript; charset=utf-8",
    ".json": "application/json", ".webmanifest": "application/manifest+json",
    ".wasm": "application/wasm", ".svg": "image/svg+xml", ".woff2": "font/woff2",
}  # fmt: skip


class Handler(http.server.SimpleHTTPRequestHandler):
    """The files with the right types, whatever this machine takes them for."""

    extensions_map = {
        "": "application/octet-stream",
        **http.server.SimpleHTTPRequestHandler.extensions_map,
        **TYPES,
    }

    def end_headers(self) -> None:
        """Has the browser ask whether its copy still stands."""
        self.send_header("Cache-Control", "no-cache")
        super().end_headers()

    def send_error(self, code: int, message: str | None = None, explain: str | None = None) -> None:
        """The handbook's own words for what is not there."""
        page = FOLDER / "404.html"
        if code != 404 or not page.is_file():
            super().send_error(code, message, explain)
            return
        words = page.read_bytes()
        self.send_response(404)
        self.send_header("Content-Type", TYPES[".html"])
        self.send_header("Content-Length", str(len(words)))
        self.end_headers()
        if self.command != "HEAD":
            self.wfile.write(words)

    def log_message(self, format: str, *words: object) -> None:
        """Keeps quiet."""


class Server(http.server.ThreadingHTTPServer):
    """Takes no port that another program listens at."""

    allow_reuse_address = sys.platform != "win32"
    daemon_threads = True


def main() -> None:
    """Serves until the window is closed."""
    if not (FOLDER / "index.html").is_file():
        sys.exit("The folder handbook is not beside this file: " + str(FOLDER))
    network = "--network" in sys.argv[1:]
    handler = partial(Handler, directory=str(FOLDER))
    server = None
    for port in (PORT, 0):
        try:
            server = Server(("" if network else "127.0.0.1", port), handler)
            break
        except OSError:
            continue
    if server is None:
        sys.exit("This machine lets no program hand out pages.")
    port = server.server_address[1]
    address = f"http://127.0.0.1:{port}/"
    print("The handbook is at " + address + "  (close this window to end it)", flush=True)
    if network:
        print(f"In this network: http://{own_address()}:{port}/", flush=True)
    if "--quiet" not in sys.argv[1:]:
        webbrowser.open(address)
    with contextlib.suppress(KeyboardInterrupt):
        server.serve_forever()


def own_address() -> str:
    """The address by which others of the network reach this machine, as far as it knows."""
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as probe:
        try:
            probe.connect(("192.0.2.1", 9))  # nothing is sent
            return str(probe.getsockname()[0])
        except OSError:
            return socket.gethostname()


if __name__ == "__main__":
    main()
