"""The markup of every built page: names for drawings, headings, tables, links, landmarks, language.

What axe-core cannot see, or sees only on the page it is shown: that titles are the site's own,
that no drawing is without words, that a link says where it leads.
"""

import re
from collections import Counter
from collections.abc import Iterator
from pathlib import Path

import pytest

from .built_page import Element, read_page
from .conftest import Site

# Link texts that say nothing where they stand alone, as in a reader's list of links.
EMPTY_WORDS = {"", "here", "click here", "link", "more", "read more", "this", "this page"}
NAMES_ANOTHER = ("aria-labelledby", "aria-describedby", "aria-controls", "aria-errormessage")


@pytest.fixture(scope="module")
def pages(site: Site) -> dict[str, Element]:
    """Every built page as a tree, by its path."""
    return {
        path.relative_to(site.folder).as_posix(): read_page(path)
        for path in every_file(site.folder)
    }


def every_file(folder: Path) -> Iterator[Path]:
    yield from sorted(folder.rglob("index.html"))
    yield folder / "404.html"


def only(found: list[str]) -> None:
    """No fault is left; a fault that many pages share is shown once."""
    assert not found, f"{len(found)} faults\n" + "\n".join(found[:30])


def by_id(page: Element) -> dict[str, Element]:
    return {one.attributes["id"]: one for one in page.every() if "id" in one.attributes}


def test_every_page_has_a_language_and_a_title_of_its_own(pages: dict[str, Element]) -> None:
    assert len(pages) > 100
    titles = Counter(next(one.says() for one in page.every("title")) for page in pages.values())
    twice = [title for title, times in titles.items() if times > 1 or not title]
    assert not twice, twice
    for path, page in pages.items():
        assert next(page.every("html")).attributes.get("lang") == "en", path


def test_headings_go_down_one_level_at_a_time(pages: dict[str, Element]) -> None:
    faults = []
    for path, page in pages.items():
        main = next(page.every("main"))
        before = 0
        ones = 0
        for one in main.every():
            level = (
                int(one.tag[1]) if re.fullmatch("h[1-6]", one.tag)
                else int(one.attributes.get("aria-level", 0)) if one.attributes.get("role") == "heading"
                else 0
            )  # fmt: skip
            if not level or one.hidden() or any(up.tag == "template" for up in one.above()):
                continue
            ones += level == 1
            if level > before + 1:
                faults.append(f"{path}: level {level} after {before}: {one.where()}")
            if not one.says().strip("¶ "):
                faults.append(f"{path}: says nothing: {one.where()}")
            before = level
        if ones != 1:
            faults.append(f"{path}: {ones} headings of level 1")
    only(faults)


def test_every_picture_is_named_or_said_to_be_for_the_eye_alone(pages: dict[str, Element]) -> None:
    faults, named = [], 0
    for path, page in pages.items():
        ids = by_id(page)
        for one in page.every("svg", "img"):
            if any(up.attributes.get("aria-hidden") == "true" for up in one.above()):
                continue
            if one.tag == "img":
                if "alt" not in one.attributes:
                    faults.append(f"{path}: {one.where()}")
                continue
            # The theme's icons stand inside links and buttons that have a name, or in labels,
            # which the script names where keys can press them.
            holder = next((up for up in one.above() if up.tag in ("a", "button", "label")), None)
            if holder and not one.attributes.get("role"):
                theirs = "md-icon" in holder.attributes.get("class", "") and holder.tag == "label"
                if not (theirs or holder.says() or holder.attributes.get("title")):
                    faults.append(f"{path}: an icon alone in {holder.where()}")
                continue
            if "md-" in next(
                (up.attributes["class"] for up in one.above() if up.attributes.get("class")), ""
            ):
                continue  # an icon of the theme, in a place of its own that is named
            words = [
                ids[id].says() if id in ids else ""
                for id in one.attributes.get("aria-labelledby", "").split()
            ]
            if one.attributes.get("role") != "img" or len(words) < 2 or not all(words):
                faults.append(f"{path}: {one.where()}")
            named += 1
    only(faults)
    assert named > 100


def test_what_names_another_part_names_one_that_is_there(pages: dict[str, Element]) -> None:
    faults = []
    for path, page in pages.items():
        ids = by_id(page)
        for one in page.every():
            for name in NAMES_ANOTHER:
                for id in one.attributes.get(name, "").split():
                    if id not in ids:
                        faults.append(f"{path}: {name} of {one.where()}")
    only(faults)


def test_every_table_is_named_and_headed(pages: dict[str, Element]) -> None:
    faults, tables = [], 0
    for path, page in pages.items():
        for table in page.every("table"):
            if "class" not in table.attributes:
                continue  # an author's own in Markdown: plain, below words that introduce it
            tables += 1
            named = table.attributes.get("aria-label") or table.attributes.get("aria-labelledby")
            if not named and not any(one.says() for one in table.every("caption")):
                region = next(
                    (up for up in table.above() if up.attributes.get("role") == "region"), None
                )
                if region is None:
                    faults.append(f"{path}: no caption or label: {table.where()}")
            heads = list(table.every("th"))
            if not heads:
                faults.append(f"{path}: no headers: {table.where()}")
            for head in heads:
                if head.attributes.get("scope") not in ("col", "row", "colgroup", "rowgroup"):
                    faults.append(f"{path}: no scope: {head.where()} in {table.where()[:60]}")
                    break
    only(faults)
    assert tables > 200


def test_every_link_says_where_it_leads(pages: dict[str, Element]) -> None:
    faults = []
    for path, page in pages.items():
        for link in page.every("a"):
            if "href" not in link.attributes or link.hidden():
                continue
            if link.says().strip(" .…→←").lower() in EMPTY_WORDS:
                faults.append(f"{path}: {link.where()}")
    only(faults)


def test_every_control_has_a_name(pages: dict[str, Element]) -> None:
    faults = []
    for path, page in pages.items():
        labels = {
            one.attributes["for"]: one.says()
            for one in page.every("label")
            if "for" in one.attributes
        }
        for one in page.every("input", "select", "textarea", "button", "summary"):
            if one.attributes.get("type") == "hidden" or one.hidden():
                continue
            if any("md-toggle" in up.attributes.get("class", "") for up in one.above()):
                continue  # the theme's switches, worked by their labels
            around = next((up.says() for up in one.above() if up.tag == "label"), "")
            own = one.says() if one.tag in ("button", "summary") else ""
            if not (
                own or around or labels.get(one.attributes.get("id", ""), "")
                or one.attributes.get("aria-label") or one.attributes.get("aria-labelledby")
                or one.attributes.get("title")
            ):  # fmt: skip
                faults.append(f"{path}: {one.where()}")
    only(faults)


def test_one_main_part_and_landmarks_that_can_be_told_apart(pages: dict[str, Element]) -> None:
    faults = []
    for path, page in pages.items():
        for tag in ("main", "header", "footer"):
            mine = [one for one in page.every(tag) if tag == "main" or (one.parent and one.parent.tag == "body")
                    or "md-" in one.attributes.get("class", "")]  # fmt: skip
            if not mine or (tag == "main" and len(mine) != 1):
                faults.append(f"{path}: {len(mine)} {tag}")
        for one in page.every("nav"):
            if not (one.attributes.get("aria-label") or one.attributes.get("aria-labelledby")):
                faults.append(f"{path}: {one.where()}")
    only(faults)


def test_no_order_of_its_own_for_the_keyboard(pages: dict[str, Element]) -> None:
    faults = [
        f"{path}: {one.where()}"
        for path, page in pages.items()
        for one in page.every()
        if one.attributes.get("tabindex", "0").lstrip("-").isdigit()
        and int(one.attributes.get("tabindex", "0")) > 0
    ]
    only(faults)


def test_what_scrolls_aside_can_be_reached_and_is_named(pages: dict[str, Element]) -> None:
    faults, regions = [], 0
    for path, page in pages.items():
        for one in page.every():
            if "br-scroll" not in one.attributes.get("class", "").split():
                continue
            regions += 1
            named = one.attributes.get("aria-label") or one.attributes.get("aria-labelledby")
            if (
                one.attributes.get("tabindex") != "0"
                or one.attributes.get("role") != "region"
                or not named
            ):
                faults.append(f"{path}: {one.where()}")
    only(faults)
    assert regions > 50
