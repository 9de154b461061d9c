"""The demo handbook in two editions behind a server of these tests, and a profile that was there once."""

import shutil
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Playwright

from benchrule.exercise_bank import exercise_bank
from benchrule.handbook import load_handbook
from benchrule.offline_edition import write_offline

from ..conftest import ROOT, Site
from .parts import (
    ABOUT,
    NAME,
    Server,
    change,
    edition,
    opened,
    saved,
    words,
)


@pytest.fixture(scope="module")
def server(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Server]:
    server = Server(log=tmp_path_factory.mktemp("log") / "requests.txt")
    yield server
    server.end()


@pytest.fixture(scope="module")
def first(site: Site, server: Server, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The demo handbook as the server of these tests has it."""
    folder = tmp_path_factory.mktemp("editions") / "first"
    shutil.copytree(site.folder, folder)
    sitemap = folder / "sitemap.xml"
    sitemap.write_text(sitemap.read_text("utf-8").replace(site.address, server.address), "utf-8")
    write_offline(folder, NAME, ABOUT)
    return folder


@pytest.fixture(scope="module")
def second(first: Path) -> Path:
    """The next edition: another page, another script that is fetched late, another runtime."""
    folder = first.with_name("second")
    shutil.copytree(first, folder)
    change(folder / "stations/polishing/index.html", "<h1", "<h1 data-second")
    change(folder / "calculators/neck-angle/index.html", "<h1", "<h1 data-second")
    change(
        folder / "assets/benchrule/practice.mjs", '"Go on practising"', '"Go on with the second"'
    )
    [runtime] = (folder / "runtime").iterdir()
    runtime.rename(runtime.with_name("second"))
    change(folder / "assets/benchrule/page.mjs", runtime.name, "second")
    with (folder / "runtime/second/worker.mjs").open("a") as worker:
        worker.write("\n// second\n")
    write_offline(folder, NAME, ABOUT)
    return folder


@pytest.fixture(scope="module")
def visited(
    playwright_running: Playwright, server: Server, first: Path,
    tmp_path_factory: pytest.TempPathFactory,
) -> Path:  # fmt: skip
    """A profile in which one page of the first edition was opened, once."""
    profile = tmp_path_factory.mktemp("visited") / "profile"
    server.serve(first)
    with opened(playwright_running, profile) as context:
        page = saved(context.new_page(), server, "hazards/")
        size = edition(first)["bytes"] / 1e6
        words(page).to_contain_text(f"Saved for offline use: {size:.1f} MB, edition of ")
    return profile


@pytest.fixture
def profile(visited: Path, tmp_path: Path) -> Path:
    """A copy of that profile, for one test."""
    return Path(shutil.copytree(visited, tmp_path / "profile"))


@pytest.fixture(scope="module")
def bank() -> dict[str, Any]:
    handbook, problems = load_handbook(ROOT, ROOT / "docs")
    assert problems == []
    return exercise_bank(handbook)
