"""The site before any script runs: pages, anchors, static answers, search index, runtime files."""

import hashlib
import json
import re
from html.parser import HTMLParser
from pathlib import Path

import pytest

from benchrule.handbook import load_handbook
from calculators.engine import door
from calculators.engine.registry import modules

from .conftest import ROOT, Site, search_places


class Ids(HTMLParser):
    """Collects ids and links of a page."""

    def __init__(self) -> None:
        super().__init__()
        self.ids: list[str] = []
        self.links: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        for name, value in attrs:
            if name == "id" and value:
                self.ids.append(value)
            if name in ("href", "src") and value:
                self.links.append(value)


def pages(site: Site) -> dict[Path, Ids]:
    found = {}
    for path in site.folder.rglob("*.html"):
        if path.name != "404.html":
            found[path] = Ids()
            found[path].feed(path.read_text("utf-8"))
    return found


def test_every_link_and_anchor_leads_somewhere(site: Site) -> None:
    read = pages(site)
    assert len(read) >= 14
    for path, page in read.items():
        for link in page.links:
            target, _, anchor = link.partition("#")
            if re.match(r"[a-z]+:|//", link) or not (target or anchor):
                continue
            target = target.partition("?")[0]
            where = (path.parent / target).resolve() if target else path
            where = where / "index.html" if where.is_dir() else where
            assert where.exists(), f"{path}: {link}"
            if anchor and where in read:
                assert anchor in read[where].ids, f"{path.relative_to(site.folder)}: {link}"


def test_ids_are_unique_on_every_page(site: Site) -> None:
    for path, page in pages(site).items():
        doubles = {id for id in page.ids if page.ids.count(id) > 1}
        assert not doubles, f"{path.relative_to(site.folder)}: {doubles}"


@pytest.mark.parametrize("name", modules())
def test_a_calculator_is_complete_without_script(name: str, site: Site) -> None:
    html = (site.folder / "calculators" / name / "index.html").read_text("utf-8")
    answer = door.answer(name, {})
    for result in answer["results"].values():
        shown = result["shown"].replace("&", "&amp;").replace("'", "&#39;").replace('"', "&quot;")
        assert (f"−{shown[1:]}" if shown.startswith("-") else shown) in html
    assert html.count('class="br-drawing"') >= 1
    assert "br-steps" in html and "<math" in html and "How we know" in html


def test_every_tolerance_stands_at_its_station_and_in_the_list(site: Site) -> None:
    handbook, _ = load_handbook(ROOT, ROOT / "docs")
    every = (site.folder / "tolerances" / "index.html").read_text("utf-8")
    for tolerance in handbook.tolerances.values():
        page = (site.folder / "stations" / tolerance.station / "index.html").read_text("utf-8")
        assert f'id="tol-{tolerance.id}"' in page
        assert f'id="tol-{tolerance.id}"' in every


def test_search_entries_land_on_rows(site: Site) -> None:
    read = {
        path.parent.relative_to(site.folder).as_posix(): page for path, page in pages(site).items()
    }
    rows = 0
    for location in search_places(site)["location"]:
        address, _, anchor = location.partition("#")
        if anchor:
            assert anchor in read[address.rstrip("/") or "."].ids, location
            rows += anchor.startswith(("tol-", "calc-", "term-"))
    assert rows > 100


def test_nothing_of_another_host_is_referred_to(site: Site) -> None:
    for path in [*site.folder.rglob("*.html"), *site.folder.rglob("benchrule/*.css")]:
        text = path.read_text("utf-8")
        for found in re.findall(
            r"""(?:src|href|url)\s*[=(]\s*["']?(https?:)?//([^"')\s>]+)""", text
        ):
            assert "squidfunk" in found[1] or site.address.split("//")[1].startswith(
                found[1][:9]
            ), (path, found)


def test_the_runtime_is_what_its_lock_says(site: Site) -> None:
    (folder,) = (site.folder / "runtime").iterdir()
    lock = json.loads((folder / "pyodide-lock.json").read_text())
    package = lock["packages"]["benchrule-calculators"]
    wheel = folder / package["file_name"]
    assert hashlib.sha256(wheel.read_bytes()).hexdigest() == package["sha256"]
    assert folder.name in (site.folder / "assets/benchrule/page.mjs").read_text()


def test_two_builds_give_the_same_runtime(tmp_path: Path) -> None:
    from benchrule.runtime import runtime_folder

    one, two = runtime_folder(tmp_path / "a"), runtime_folder(tmp_path / "b")
    assert one.name == two.name
    assert (one / "manifest.json").read_text() == (two / "manifest.json").read_text()
