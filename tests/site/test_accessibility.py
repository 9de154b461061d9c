"""axe-core over every kind of page, light and dark, wide and narrow."""

from typing import Any

import pytest
from playwright.sync_api import Browser

from calculators.engine.registry import modules

from .conftest import ROOT, Site

PATHS = ["", "stations/glueing-up-the-box/", "stations/fretting/", "stations/neck-fit/",
         "stations/polishing/", "tolerances/", "hazards/", "glossary/", "gauges/", "sources/",
         "calculators/", "writing-procedures/", *(f"calculators/{name}/" for name in modules())]  # fmt: skip


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("width", [1280, 390])
def test_axe_finds_nothing_serious(browser: Browser, site: Site, scheme: Any, width: int) -> None:
    context = browser.new_context(color_scheme=scheme, viewport={"width": width, "height": 900})
    page = context.new_page()
    axe = (ROOT / "node_modules/axe-core/axe.min.js").read_text("utf-8")
    faults = []
    for path in PATHS:
        page.goto(site.address + path)
        page.wait_for_timeout(300)
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
