"""Small windows and large letters: 400 % zoom, 200 % zoom, more space between letters, less motion.

At 1280 px across, 200 % leaves 640 CSS pixels and 400 % leaves 320 (WCAG 2.2, 1.4.4 and 1.4.10).
"""

from typing import Any

import pytest
from playwright.sync_api import Browser, Page, expect

from .conftest import Site

KINDS = ["", "stations/neck-fit/", "tolerances/", "hazards/", "glossary/", "revisions/", "models/twelve/",
         "materials/sitka-spruce/", "calculators/", "calculators/neck-angle/", "calculators/fret-spacing/",
         "calculators/how-we-know/", "learning/", "learning/set/", "learning/work/", "learning/mark/",
         "learning/sign-off/neck-fit/", "orders/", "orders/2026-104/", "writing-procedures/", "gauges/"]  # fmt: skip

# What hangs out at the right without a part of its own to scroll in, and the page's own width.
HANGS_OUT = """() => {
  const wide = document.documentElement.clientWidth;
  const out = [...document.querySelectorAll("main article *")].filter((one) => {
    const box = one.getBoundingClientRect();
    if (box.width < 2 || box.right <= wide + 1 || !one.checkVisibility({visibilityProperty: true})) return false;
    if (one.closest(".br-hidden, .br-for-readers, mjx-container")) return false;
    for (let up = one.parentElement; up; up = up.parentElement) {
      const flow = getComputedStyle(up).overflowX;
      if (flow === "auto" || flow === "scroll") return false;
      if (up.matches("svg, math")) return false;
    }
    return true;
  });
  return { page: document.documentElement.scrollWidth - wide,
           out: out.slice(0, 3).map((one) => one.outerHTML.replace(/\\s+/g, " ").slice(0, 120)) };
}"""
# WCAG 1.4.12: a reader's own spacing.
SPACING = """() => {
  const style = document.createElement("style");
  style.textContent = "* { line-height: 1.5 !important; letter-spacing: .12em !important; word-spacing: .16em !important } p { margin-bottom: 2em !important }";
  document.head.append(style);
}"""
CUT = """() => [...document.querySelectorAll("main article :is(p, li, dd, dt, th, td, button, label, summary, a, span, h1, h2, h3)")]
  .filter((one) => {
    const style = getComputedStyle(one);
    if (!["hidden", "clip"].includes(style.overflowX) && !["hidden", "clip"].includes(style.overflowY)) return false;
    if (one.closest(".br-hidden, .br-for-readers, .br-qr") || style.clipPath !== "none") return false;
    return one.scrollWidth > one.clientWidth + 2 || one.scrollHeight > one.clientHeight + 2;
  }).map((one) => one.outerHTML.slice(0, 120))"""


def opened(browser: Browser, width: int, **options: Any) -> Page:
    context = browser.new_context(viewport={"width": width, "height": 700}, **options)
    context.route("**/runtime/**", lambda route: None)
    return context.new_page()


@pytest.mark.parametrize("width", [320, 640])
def test_no_page_scrolls_sideways(browser: Browser, site: Site, width: int) -> None:
    page = opened(browser, width)
    faults = []
    for path in KINDS:
        page.goto(site.address + path)
        page.evaluate(
            "document.querySelectorAll('main details').forEach((one) => (one.open = true))"
        )
        for spaced in (False, True):
            if spaced:
                page.evaluate(SPACING)
            found = page.evaluate(HANGS_OUT)
            if found["page"] > 0 or found["out"]:
                faults.append(f"{path} {'spaced ' if spaced else ''}{found}")
        faults += [f"{path} cut: {one}" for one in page.evaluate(CUT)[:2]]
    page.context.close()
    assert not faults, "\n".join(faults)


def test_words_keep_off_the_edges(browser: Browser, site: Site) -> None:
    page = opened(browser, 390)
    near = []
    for path in KINDS:
        page.goto(site.address + path)
        for width in (390, 700, 1000, 1230, 1280):
            page.set_viewport_size({"width": width, "height": 700})
            left, right = page.locator("main article").evaluate(
                """(article) => { const { left, right } = article.getBoundingClientRect();
                return [left, document.documentElement.clientWidth - right]; }"""
            )
            if min(left, right) < 12:
                near.append(f"{path} at {width}: {left:.0f} px on the left, {right:.0f} on the right")
    page.context.close()
    assert not near, "\n".join(near)


def test_nothing_moves_for_who_asks_for_less_motion(browser: Browser, site: Site) -> None:
    page = opened(browser, 1280, reduced_motion="reduce")
    for path in ("calculators/neck-angle/", "stations/neck-fit/", "learning/set/"):
        page.goto(site.address + path)
        if path.startswith("calculators"):
            page.locator("[data-input] input").first.fill("640")
            expect(page.locator(".br-state")).to_have_attribute("data-state", "starting")
        page.keyboard.press("/")  # the theme's search slides in
        page.keyboard.press("Escape")
        assert page.evaluate("document.getAnimations().length") == 0, path
        assert page.evaluate(
            "[...document.querySelectorAll('*')].every((one) => getComputedStyle(one).scrollBehavior === 'auto')"
        )
    page.context.close()


def test_something_moves_for_others(browser: Browser, site: Site) -> None:
    page = opened(browser, 1280, reduced_motion="no-preference")
    page.goto(f"{site.address}calculators/neck-angle/")
    page.locator("[data-input] input").first.fill("640")
    expect(page.locator(".br-state")).to_have_attribute("data-state", "starting")
    assert page.evaluate("document.getAnimations().length") > 0
    page.context.close()


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_forced_colours_leave_drawings_and_choices_visible(
    browser: Browser, site: Site, scheme: Any
) -> None:
    page = opened(browser, 1280, forced_colors="active", color_scheme=scheme)
    page.goto(f"{site.address}calculators/neck-angle/")
    ground = page.evaluate("getComputedStyle(document.body).backgroundColor")
    strokes = page.evaluate(
        "[...document.querySelectorAll('.br-answer .br-drawing .ink, .br-answer .br-drawing .dim')]"
        ".map((one) => getComputedStyle(one).stroke)"
    )
    assert strokes and ground not in strokes
    chosen, other = (
        page.locator(f".br-units input{which} + span").first.evaluate(
            "(one) => getComputedStyle(one).backgroundColor"
        )
        for which in (":checked", ":not(:checked)")
    )
    assert chosen != other, "what is chosen looks like what is not"
    page.context.close()


def test_targets_are_large_enough_for_a_glove(browser: Browser, site: Site) -> None:
    """Controls of our own are 44 px high at least; 24 px is what the standard asks."""
    page = opened(browser, 390)
    small = []
    for path in ("calculators/neck-angle/", "tolerances/", "learning/set/", "orders/2026-104/"):
        page.goto(site.address + path)
        page.wait_for_timeout(300)
        small += page.evaluate(
            """() => [...document.querySelectorAll("main article :is(button, select, summary, input:not([type=radio], [type=checkbox], [type=file]))")]
              .filter((one) => one.checkVisibility({visibilityProperty: true}) && one.getBoundingClientRect().height < 43.5)
              .map((one) => one.outerHTML.slice(0, 120) + " " + one.getBoundingClientRect().height).slice(0, 4)"""
        )
    page.context.close()
    assert not small, "\n".join(small)
