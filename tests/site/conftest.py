"""The demo handbook built once, served by a process of its own, looked at in a real Chromium."""

import contextlib
import json
import os
import socket
import subprocess
import sys
import time
import urllib.request
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import (
    Browser,
    BrowserContext,
    Page,
    Playwright,
    expect,
    sync_playwright,
)

from tests.chromium import FLAGS, chromium_path

ROOT = Path(__file__).parents[2]
# What takes a moment takes longer where other tests run beside; how long, the benchmark says.
PATIENCE_MS = 60_000
expect.set_options(timeout=PATIENCE_MS)
NO_WORKER = "Service Worker registration blocked by Playwright"


@dataclass(frozen=True)
class Site:
    """A built site: its folder and where it is served."""

    folder: Path
    address: str


def every_page(site: Site) -> list[str]:
    """The address of every page below the site's, the home page first."""
    found = [
        path.parent.relative_to(site.folder).as_posix() for path in site.folder.rglob("index.html")
    ]
    return sorted("" if one == "." else f"{one}/" for one in found)


def search_places(site: Site) -> dict[str, list[Any]]:
    """What the search finds, column by column, from the file that the theme's index names."""
    index = json.loads((site.folder / "search" / "search_index.json").read_text("utf-8"))
    [entry] = index["docs"]
    found: dict[str, list[Any]] = json.loads((site.folder / entry["location"]).read_text("utf-8"))
    return found


def free_port() -> int:
    with contextlib.closing(socket.socket()) as probe:
        probe.bind(("127.0.0.1", 0))
        return int(probe.getsockname()[1])


def build_site(root: Path, folder: Path, address: str) -> None:
    """Builds the handbook at ``root`` into ``folder``, strict, for the address it is served at."""
    done = subprocess.run(
        [sys.executable, "-m", "mkdocs", "build", "-q", "-f", str(root / "mkdocs.yml"), "-d", str(folder)],
        env={**os.environ, "SITE_URL": address, "NO_MKDOCS_2_WARNING": "1"},
        capture_output=True, text=True, check=False,
    )  # fmt: skip
    assert done.returncode == 0, done.stdout + done.stderr


@contextlib.contextmanager
def served(folder: Path, port: int) -> Iterator[None]:
    server = subprocess.Popen(
        [sys.executable, "-m", "http.server", str(port), "--bind", "127.0.0.1", "-d", str(folder)],
        stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
    )  # fmt: skip
    try:
        for _ in range(100):
            with contextlib.suppress(OSError):
                urllib.request.urlopen(f"http://127.0.0.1:{port}/", timeout=1)
                break
            time.sleep(0.05)
        yield
    finally:
        server.kill()
        server.wait()


@pytest.fixture(scope="session")
def site(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Site]:
    port = free_port()
    address = f"http://127.0.0.1:{port}/"
    folder = tmp_path_factory.mktemp("site")
    build_site(ROOT, folder, address)
    with served(folder, port):
        yield Site(folder, address)


@pytest.fixture(scope="session")
def playwright_running() -> Iterator[Playwright]:
    with sync_playwright() as running:
        yield running


@pytest.fixture(scope="session")
def browser(playwright_running: Playwright) -> Iterator[Browser]:
    with contextlib.closing(
        playwright_running.chromium.launch(executable_path=chromium_path(), args=FLAGS)
    ) as running:
        # Each new profile would save the whole handbook; the tests of that ask for it.
        plain = running.new_context

        def new_context(**options: Any) -> BrowserContext:
            context = plain(**{"service_workers": "block", **options})
            context.set_default_timeout(PATIENCE_MS)
            return context

        running.new_context = new_context  # type: ignore[method-assign]
        yield running


@pytest.fixture
def context(browser: Browser, site: Site) -> Iterator[BrowserContext]:
    """A new profile in which every other host is refused and every fault is collected."""
    context = browser.new_context(viewport={"width": 1280, "height": 900})
    strays: list[str] = []
    faults: list[str] = []

    def watch(page: Page) -> None:
        page.on(
            "request",
            lambda r: (
                None if r.url.startswith((site.address, "data:", "blob:")) else strays.append(r.url)
            ),
        )
        page.on(
            "console",
            lambda m: (
                faults.append(m.text)
                if m.type in ("error", "warning") and m.text != NO_WORKER
                else None
            ),
        )
        page.on("pageerror", lambda error: faults.append(str(error)))

    context.on("page", watch)
    context.route(lambda url: not url.startswith(site.address), lambda route: route.abort())
    yield context
    context.close()
    assert strays == [], "a page asked another host"
    assert faults == [], "the console shows faults"


@pytest.fixture
def page(context: BrowserContext) -> Page:
    return context.new_page()
