"""axe-core over every page, wide and light (of pages made alike, one); the rest by kind."""

from typing import Any

import pytest
from playwright.sync_api import Browser

from .conftest import ROOT, Site, every_page

KINDS = ["", "stations/neck-fit/", "tolerances/", "hazards/", "glossary/", "revisions/", "models/twelve/",
         "materials/sitka-spruce/", "calculators/", "calculators/neck-angle/", "learning/",
         "learning/set/", "learning/sign-off/neck-fit/", "orders/2026-104/"]  # fmt: skip
# Pages by the dozen from one pattern, hundreds of rows each: one of them stands for the others.
ALIKE = ("learning/sign-off/", "orders/20")


@pytest.mark.parametrize(
    ("width", "scheme", "all_pages"),
    [(1280, "light", True), (390, "dark", False), (1280, "dark", False), (390, "light", False)],
)
def test_axe_finds_nothing_serious(
    browser: Browser, site: Site, width: int, scheme: Any, all_pages: bool
) -> None:
    context = browser.new_context(color_scheme=scheme, viewport={"width": width, "height": 900})
    page = context.new_page()
    axe = (ROOT / "node_modules/axe-core/axe.min.js").read_text("utf-8")
    faults = []
    every = [path for path in every_page(site) if not path.startswith(ALIKE) or path in KINDS]
    paths = every if all_pages else KINDS
    assert len(paths) >= len(KINDS)
    for path in paths:
        page.goto(site.address + path)
        page.wait_for_timeout(200)
        page.evaluate(axe)
        found = page.evaluate("axe.run(document, {resultTypes: ['violations']})")
        for one in found["violations"]:
            if one["impact"] in ("serious", "critical"):
                where = one["nodes"][0]
                faults.append(
                    f"{path}: {one['id']} ({len(one['nodes'])}): {where['html'][:140]} {where['failureSummary'][-160:]}"
                )
    context.close()
    assert not faults, "\n".join(faults)
