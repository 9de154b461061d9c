"""axe-core over every page of the handbook and over its menu, wide and narrow, light and dark."""

from itertools import batched

import pytest
from playwright.sync_api import Browser

from .axe import LOOKS, RULES, SCHEMES, faults_of, look, reading
from .conftest import Site, every_page

PARTS = {"stations": "stations/", "calculators": "calculators/", "orders": "orders/",
         "sign-off": "learning/sign-off/"}  # fmt: skip


def part_of(path: str) -> str:
    """The part of the site whose pages are looked at together."""
    return next((name for name, under in PARTS.items() if path.startswith(under)), "others")


@pytest.mark.parametrize("part", [*PARTS, "others"])
def test_every_page(browser: Browser, site: Site, part: str) -> None:
    paths = [path for path in every_page(site) if part_of(path) == part]
    assert len(paths) >= 5
    faults = []
    # Two profiles: what runs in one does not wait for the other.
    with reading(browser) as one, reading(browser) as other:
        both = [one.new_page(), other.new_page()]
        for two in batched([*paths, "404.html"] if part == "others" else paths, 2, strict=False):
            pages = both[: len(two)]
            for page, path in zip(pages, two, strict=True):
                page.goto(site.address + path, wait_until="commit")
            for page in pages:
                page.wait_for_load_state("load")
            faults += faults_of(*pages)
    assert not faults, "\n".join(faults)


def test_the_look_sees_each_width_and_scheme(browser: Browser, site: Site) -> None:
    with reading(browser) as context:
        page = context.new_page()
        page.goto(f"{site.address}glossary/")
        page.evaluate(
            "document.querySelector('main h1').nextElementSibling.style.color = 'color-mix(in srgb, var(--br-paper) 70%, var(--br-ink))'"
        )
        found = [one.split()[1:4] for one in faults_of(page)]
    assert found == [[str(width), scheme, "color-contrast"] for width, scheme, _ in LOOKS]


@pytest.mark.parametrize(
    "path",
    [
        "",
        "stations/neck-fit/",
        "gauges/",
        "calculators/neck-angle/",
        "learning/",
        "orders/2026-104/",
        "models/twelve/",
        "materials/sitka-spruce/",
        "writing-procedures/",
    ],
)
def test_the_menu_and_the_tabs(browser: Browser, site: Site, path: str) -> None:
    with reading(browser) as context:
        page = context.new_page()
        page.set_viewport_size({"width": 390, "height": 900})
        page.goto(site.address + path)
        assert faults_of(page, menu=True) == []
        page.set_viewport_size({"width": 390, "height": 900})
        page.get_by_role("button", name="Menu").press("Enter")
        shut = page.get_by_role("button", name="Shut the menu")
        deeper = page.locator(".md-nav--primary .br-press[role=button][aria-label^=Back]")
        assert shut.is_visible() or deeper.last.is_visible()
        for scheme in SCHEMES:
            assert look([page], 390, scheme, RULES, []) == [[]]
