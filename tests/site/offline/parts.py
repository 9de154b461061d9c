"""A server that really ends, a browser with a profile on the disk, and what both hold."""

import contextlib
import json
import re
import socket
import subprocess
import sys
import time
import urllib.parse
import urllib.request
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from playwright.sync_api import BrowserContext, Page, Playwright, expect

from tests.chromium import FLAGS, chromium_path

from ..conftest import free_port

NAME, ABOUT = "The Shop", "A shop's handbook"
NAME, ABOUT = "The Shop", "A shop's handbook"
HELD = "[data-state=saved]"
LONG = 60_000
MANIFEST = re.compile(r"const EDITION = (\{.*?\}); //")
CACHED = """async () => {
  const [name] = (await caches.keys()).filter((one) => one.startsWith("workbox-precache"));
  return (await (await caches.open(name)).keys()).map(({ url }) => url);
}"""


@dataclass
class Server:
    """A server process at one port, ended and begun again over one folder or another."""

    port: int = field(default_factory=free_port)
    log: Path | None = None
    running: subprocess.Popen[bytes] | None = None

    @property
    def address(self) -> str:
        return f"http://127.0.0.1:{self.port}/"

    def serve(self, folder: Path) -> None:
        self.end()
        out = self.log.open("ab") if self.log else subprocess.DEVNULL
        self.running = subprocess.Popen(
            [sys.executable, "-m", "http.server", str(self.port), "--bind", "127.0.0.1", "-d", str(folder)],
            stdout=out, stderr=out,
        )  # fmt: skip
        wait_for(self.port)

    def end(self) -> None:
        if self.running:
            self.running.kill()
            self.running.wait()
            self.running = None


def wait_for(port: int, seconds: int = 20) -> None:
    for _ in range(20 * seconds):
        with contextlib.suppress(OSError), socket.create_connection(("127.0.0.1", port), 1):
            return
        time.sleep(0.05)
    raise AssertionError("the server did not begin")


def change(path: Path, old: str, new: str) -> None:
    text = path.read_text("utf-8")
    assert old in text, f"{path.name} has no {old}"
    path.write_text(text.replace(old, new), "utf-8")


def edition(folder: Path) -> dict[str, Any]:
    """What the service worker of a site says of its edition."""
    found = MANIFEST.search((folder / "service-worker.js").read_text("utf-8"))
    assert found
    listed: dict[str, Any] = json.loads(found[1])
    return listed


@contextlib.contextmanager
def opened(playwright: Playwright, profile: Path, **options: Any) -> Iterator[BrowserContext]:
    """A browser with a profile on the disk; ended at the end."""
    context = playwright.chromium.launch_persistent_context(
        str(profile), executable_path=chromium_path(), viewport={"width": 1280, "height": 900},
        args=[*FLAGS, "--host-resolver-rules=MAP handbook.test 127.0.0.1"], **options,
    )  # fmt: skip
    try:
        yield context
    finally:
        context.close()


def words(page: Page) -> Any:
    return expect(page.locator(".br-offline summary"))


def until(page: Page, script: str) -> None:
    """Asked from outside again and again: the page's policy lets no text become a script."""
    for _ in range(LONG // 100):
        if page.evaluate(script):
            return
        page.wait_for_timeout(100)
    raise AssertionError(f"never: {script}")


def saved(page: Page, server: Server, path: str = "") -> Page:
    page.goto(server.address + path)
    expect(page.locator(f".br-offline{HELD}")).to_be_attached(timeout=LONG)
    return page


def look_for_newer(page: Page) -> None:
    """As when a reader comes back to the tab."""
    page.evaluate("document.dispatchEvent(new Event('visibilitychange'))")


def offer(page: Page) -> Any:
    return page.locator(".br-newer")


def requests_of(server: Server) -> list[str]:
    assert server.log
    return re.findall(r'"GET (\S+) ', server.log.read_text("utf-8"))


def assert_holds(page: Page, folder: Path, and_no_more: bool = True) -> None:
    """The device comes to hold the files of one edition, all of them and nothing else."""
    sums: set[str] = set()
    kept: set[str] = set()
    for _ in range(LONG // 250):
        sums = {item[1] for item in edition(folder)["files"]}
        urls = page.evaluate(CACHED)
        kept = {urllib.parse.unquote(url.split("__WB_REVISION__=")[1]) for url in urls}
        if kept == sums and len(urls) == len(edition(folder)["files"]):
            return
        if kept > sums and not and_no_more:
            return
        page.wait_for_timeout(250)
    raise AssertionError(f"missing: {len(sums - kept)}, left over: {len(kept - sums)}")
