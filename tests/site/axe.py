"""axe-core over a page that is open: wide and narrow, light and dark.

A page is loaded once and looked at four times. Two looks are by every rule: wide and light, narrow and dark.
What is on a page does not hang on its colours, so the other two are by the rules of colour alone.
"""

import contextlib
from collections.abc import Iterator, Sequence
from typing import Any

from playwright.sync_api import Browser, BrowserContext, Locator, Page, expect

from .conftest import ROOT

AXE = (ROOT / "node_modules/axe-core/axe.min.js").read_text("utf-8")
RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]
COLOURS = ["color-contrast", "link-in-text-block"]
LOOKS = [
    (1280, "light", RULES), (1280, "dark", COLOURS), (390, "dark", RULES), (390, "light", COLOURS),
]  # fmt: skip
SCHEMES = {"light": "bench", "dark": "bench-night"}
MENU = [".md-sidebar--primary", ".md-tabs"]
# The reader chooses a scheme by the theme's own switch. The width and the scheme are there, and nothing is on its way, before anything is looked at.
LOOK = """async ([width, scheme, rules, without]) => {
  const frame = () => new Promise(requestAnimationFrame);
  const choice = document.querySelector(`input[data-md-color-scheme="${scheme}"]`);
  if (document.body.dataset.mdColorScheme !== scheme) choice.click();
  const there = () => innerWidth === width && document.body.dataset.mdColorScheme === scheme;
  for (let frames = 0; !there(); frames++) {
    if (frames > 300) throw new Error(`${innerWidth} ${document.body.dataset.mdColorScheme}`);
    await frame();
  }
  await frame();
  await frame();
  if (document.getAnimations().length) throw new Error("something moves");
  const found = await axe.run(without.length ? { exclude: without } : document, {
    runOnly: rules, preload: false, resultTypes: ["violations"],
  });
  return found.violations.map(({ id, impact, nodes }) => `${id} (${impact}, ${nodes.length}): `
    + `${nodes[0].html.replace(/\\s+/g, " ").slice(0, 170)} ${nodes[0].failureSummary.slice(-220)}`);
}"""


@contextlib.contextmanager
def reading(browser: Browser, **options: Any) -> Iterator[BrowserContext]:
    """A profile in which nothing slides or fades; ``test_reflow`` holds the pages to that."""
    context = browser.new_context(reduced_motion="reduce", **options)
    try:
        yield context
    finally:
        context.close()


def look(
    pages: Sequence[Page], width: int, scheme: Any, rules: Sequence[str], without: Sequence[str]
) -> list[list[str]]:
    """What axe finds on pages that are open, a line a rule; it looks at them side by side."""
    for page in pages:
        page.set_viewport_size({"width": width, "height": 900})
        page.emulate_media(color_scheme=scheme)
        page.evaluate(
            f"(given) => {{ window.looked = ({LOOK})(given); }}",
            [width, SCHEMES[scheme], list(rules), list(without)],
        )
    return [
        [f"{width} {scheme} {one}" for one in page.evaluate("() => window.looked")]
        for page in pages
    ]


def faults_of(*pages: Page, there: Locator | None = None, menu: bool = False) -> list[str]:
    """What axe finds in four looks; ``there`` is what must be in sight in each of them.

    The menu and the tabs are the same on every page: they are looked at where ``menu`` is set.
    """
    for page in pages:
        page.evaluate(AXE)
    found = []
    for width, scheme, rules in LOOKS:
        for page, faults in zip(
            pages, look(pages, width, scheme, rules, [] if menu else MENU), strict=True
        ):
            found += [f"{page.url}: {one}" for one in faults]
        if there:
            expect(there).to_be_visible()
    return found
