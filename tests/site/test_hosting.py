"""The hosting page's configurations: they say what the build says, and nginx runs with its own."""

import os
import time
import urllib.error
import urllib.request
from collections.abc import Iterator
from email.message import Message
from pathlib import Path
from shutil import copytree

import pytest
from playwright.sync_api import Browser

from benchrule.page_policy import PAGE_HEADERS, WORKER_POLICY
from tests.bench import nginx

from .conftest import Site, free_port

LANGUAGES = ("nginx", "apache", "caddy")
needs_nginx = pytest.mark.skipif(nginx.nginx() is None, reason="nginx is not installed")


@pytest.mark.parametrize("language", LANGUAGES)
def test_each_configuration_sends_the_headers_that_the_build_names(language: str) -> None:
    [text] = nginx.published(language)
    for name, value in PAGE_HEADERS.items():
        assert name in text and value in text, f"{language}: {name}"
    assert WORKER_POLICY in text


@pytest.fixture(scope="module")
def hosted(site: Site, tmp_path_factory: pytest.TempPathFactory) -> Iterator[tuple[str, Path]]:
    """A copy of the site behind nginx: its address and its folder."""
    work = tmp_path_factory.mktemp("hosted")
    copytree(site.folder, work / "site")
    with nginx.running(work / "site", free_port(), work / "nginx") as address:
        yield address, work / "site"


def got(address: str, etag: str = "") -> tuple[int, Message, bytes]:
    asked = urllib.request.Request(address, headers={"Accept-Encoding": "gzip"})
    if etag:
        asked.add_header("If-None-Match", etag)
    try:
        with urllib.request.urlopen(asked, timeout=20) as answer:
            return answer.status, answer.headers, answer.read()
    except urllib.error.HTTPError as error:
        return error.code, error.headers, error.read()


@needs_nginx
def test_nginx_sends_types_and_says_how_long_each_file_keeps(hosted: tuple[str, Path]) -> None:
    address, folder = hosted
    runtime = next((folder / "runtime").iterdir()).name
    places = next((folder / "search").glob("places-*")).name
    for name, type, kept in (
        ("", "text/html; charset=utf-8", False),
        ("stations/neck-fit/", "text/html; charset=utf-8", False),
        ("assets/benchrule/page.mjs", "text/javascript; charset=utf-8", False),
        ("service-worker.js", "text/javascript; charset=utf-8", False),
        ("manifest.webmanifest", "application/manifest+json", False),
        (f"runtime/{runtime}/pyodide.asm.wasm", "application/wasm", True),
        (f"runtime/{runtime}/worker.mjs", "text/javascript; charset=utf-8", True),
        (f"search/{places}", "application/json", True),
    ):
        status, headers, _ = got(address + name)
        assert (status, headers["Content-Type"]) == (200, type), name
        assert headers["Content-Encoding"] == "gzip" or name == "manifest.webmanifest", name
        assert ("immutable" in headers["Cache-Control"]) == kept, name
        assert kept or headers["Cache-Control"] == "no-cache", name
        assert got(address + name, headers["ETag"])[0] == 304, name
    status, headers, words = got(f"{address}nothing/here/")
    assert status == 404 and headers["Content-Type"].startswith("text/html") and words


@needs_nginx
def test_nginx_sends_a_new_edition_at_once(hosted: tuple[str, Path]) -> None:
    address, folder = hosted
    _, headers, _ = got(f"{address}gauges/")
    page = folder / "gauges" / "index.html"
    page.write_text(page.read_text("utf-8").replace("<body", "<body data-new", 1), "utf-8")
    os.utime(page, (time.time() + 2, time.time() + 2))
    assert got(f"{address}gauges/", headers["ETag"])[0] == 200


@needs_nginx
def test_a_calculator_works_behind_nginx(browser: Browser, hosted: tuple[str, Path]) -> None:
    address, _ = hosted
    context = browser.new_context()
    page = context.new_page()
    faults: list[str] = []
    page.on("console", lambda m: faults.append(m.text) if m.type == "error" else None)
    page.on("pageerror", lambda error: faults.append(str(error)))
    page.goto(f"{address}calculators/fret-spacing/")
    page.locator("[data-calculator] input[inputmode]").first.fill("640")
    page.wait_for_selector(".br-state[data-state=live]")
    context.close()
    assert faults == []
