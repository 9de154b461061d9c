"""On paper: black on white from the dark scheme too, nothing to press, nothing cut, no page wasted."""

import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pdfplumber
import pytest
from pdfplumber.pdf import PDF
from playwright.sync_api import Browser, Page

from .conftest import Site

# A page of each kind, and how many sheets of A4 it may take.
PAGES = {
    "": 6, "stations/neck-fit/": 20, "tolerances/": 90, "hazards/": 20, "models/twelve/": 8,
    "materials/sitka-spruce/": 4, "calculators/neck-angle/": 9, "learning/": 3, "learning/set/": 2,
    "learning/work/": 2, "learning/mark/": 2, "learning/sign-off/neck-fit/": 3, "orders/": 2,
    "orders/2026-104/": 24, "revisions/": 12, "gauges/": 5,
}  # fmt: skip
TO_PRESS = ("Is it in?", "Back to the example", "Practise", "Make the assignment", "Save to a file")


@pytest.fixture(scope="module")
def dark(browser: Browser) -> Iterator[Page]:
    context = browser.new_context(color_scheme="dark")
    context.route("**/runtime/**", lambda route: None)
    yield context.new_page()
    context.close()


def printed(page: Page, address: str, file: Path, paper: str = "") -> PDF:
    page.goto(address)
    page.wait_for_timeout(300)
    sizes: dict[str, Any] = {"format": paper} if paper else {"prefer_css_page_size": True}
    page.pdf(path=file, print_background=True, **sizes)
    return pdfplumber.open(file)


def darkest_ground(sheet: pdfplumber.page.Page) -> int:
    """The darkest corner of a sheet, where nothing is printed: 255 is white."""
    image = sheet.to_image(resolution=30).original.convert("L")
    wide, high = image.size
    corners = [image.crop((x, y, x + 2, y + 2)) for x, y in ((1, 1), (wide - 4, 1), (1, high - 4))]
    return min(min(corner.tobytes()) for corner in corners)


@pytest.mark.parametrize("path", PAGES)
def test_a_page_of_each_kind_on_paper(dark: Page, site: Site, tmp_path: Path, path: str) -> None:
    with printed(dark, site.address + path, tmp_path / "page.pdf") as pdf:
        assert len(pdf.pages) <= PAGES[path]
        first = pdf.pages[0]
        assert (round(first.width), round(first.height)) == (595, 842)
        for sheet in (first, pdf.pages[-1]):
            assert darkest_ground(sheet) == 255, "the dark scheme comes through"
        words = first.extract_text() or ""
        assert f"1 of {len(pdf.pages)}" in words
        inside = [word for word in first.extract_words() if word["x1"] > first.width - 28]
        assert not inside, f"cut at the edge: {inside[:3]}"
        for sheet in pdf.pages[:8]:
            text = sheet.extract_text() or ""
            assert not [words for words in TO_PRESS if f"\n{words}\n" in f"\n{text}\n"]
        ink = {tuple(one["non_stroking_color"] or ()) for one in first.chars}
        assert all(max(colour, default=0) < 0.5 for colour in ink if len(colour) in (1, 3)), ink


def test_the_way_through_the_shop_breaks_no_word(dark: Page, site: Site, tmp_path: Path) -> None:
    dark.goto(site.address)
    names = dark.locator(".br-way-plate").evaluate_all(
        "(plates) => plates.map((plate) => plate.lastElementChild.textContent)"
    )
    with printed(dark, site.address, tmp_path / "page.pdf") as pdf:
        found = pdf.pages[0].extract_text(x_tolerance=1, y_tolerance=1)  # small letters
    missing = [word for name in names for word in re.findall(r"\w+", name) if word not in found]
    assert len(names) > 20
    assert not missing


@pytest.mark.parametrize("path", ["stations/neck-fit/", "orders/2026-104/"])
def test_letter_takes_no_more_room_than_it_has(
    dark: Page, site: Site, tmp_path: Path, path: str
) -> None:
    with printed(dark, site.address + path, tmp_path / "page.pdf", "Letter") as pdf:
        for sheet in pdf.pages:
            out = [
                one
                for one in sheet.extract_words()
                if one["x1"] > sheet.width - 10 or one["x0"] < 10
            ]
            assert not out, out[:3]


def test_headings_stand_above_what_they_head(dark: Page, site: Site, tmp_path: Path) -> None:
    with printed(dark, f"{site.address}stations/neck-fit/", tmp_path / "page.pdf") as pdf:
        for sheet in pdf.pages:
            lines = [one for one in sheet.extract_text_lines() if one["bottom"] < sheet.height - 45]
            big = max((char["size"] for char in lines[-1]["chars"]), default=0) if lines else 0
            assert big < 13, f"a heading ends the sheet: {lines[-1]['text']}"
