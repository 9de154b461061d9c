"""What a screen reader is told: the names of drawings and controls, read from the browser's own tree.

The tree is what a browser hands to a screen reader; a name that stands in the markup may still be lost on the
way there.
"""

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from playwright.sync_api import Browser, CDPSession, Page

from .conftest import Site, every_page

DRAWINGS = {"image", "figure"}
CONTROLS = {
    "button", "checkbox", "combobox", "Date", "DisclosureTriangle", "listbox", "radio", "searchbox", "slider",
    "spinbutton", "switch", "textbox",
}  # fmt: skip
# What a reader hears on the way to a thing: the same name may stand once in each.
PLACES = {"article", "figure", "form", "group", "list", "listitem", "navigation", "radiogroup", "region", "row",
          "table", "term"}  # fmt: skip
# A page of each kind is read narrow too.
KINDS = {"", "stations/neck-fit/", "tolerances/", "glossary/", "models/twelve/", "materials/sitka-spruce/",
         "calculators/neck-angle/", "learning/", "learning/set/", "learning/work/", "learning/mark/",
         "orders/2026-104/", "orders/compare/", "writing-procedures/"}  # fmt: skip
# Where a script of its own makes the fields.
LATE = ":is([data-order], [data-compare], [data-set-assignment], [data-work-assignment], [data-mark-results], [data-progress])"
# What a page holds for the eye: what is folded away is in no tree, and a file is chosen by a button there.
DRAWN = """() => [...document.querySelectorAll("main svg[role=img]")]
  .filter((one) => one.checkVisibility({ visibilityProperty: true }))
  .map((one) => (one.querySelector("title") ?? one).textContent.trim().replace(/\\s+/g, " "))"""
FIELDS = """() => [...document.querySelectorAll("main :is(input:not([type=file]), select, textarea)")]
  .filter((one) => one.checkVisibility({ visibilityProperty: true })).length"""


@dataclass(frozen=True)
class Part:
    """A thing in the tree: what it is, its name, the names of the places it stands in."""

    role: str
    name: str
    places: tuple[str, ...]
    holds: tuple["Part", ...]

    def every(self) -> Iterator["Part"]:
        """What it holds, all the way down."""
        for one in self.holds:
            yield one
            yield from one.every()


def tree_of(session: CDPSession) -> Part:
    """The whole tree of a page, without what the browser leaves out of it."""
    nodes: dict[str, dict[str, Any]] = {
        node["nodeId"]: node for node in session.send("Accessibility.getFullAXTree")["nodes"]
    }

    def said(node: dict[str, Any]) -> str:
        return " ".join(str(node.get("name", {}).get("value", "")).split())

    def label(node: dict[str, Any]) -> str:
        # A row and an item are told apart by what is read out first in them.
        role = node["role"]["value"]
        if said(node) or role not in ("row", "listitem"):
            return said(node)
        return first_words(node)

    def first_words(node: dict[str, Any]) -> str:
        for child in map(nodes.get, node.get("childIds", ())):
            if child and (words := said(child) or first_words(child)):
                return words
        return ""

    def read(node: dict[str, Any], places: tuple[str, ...]) -> list[Part]:
        role = "" if node["ignored"] else node["role"]["value"]
        inside = (*places, label(node)) if role in PLACES and label(node) else places
        held = tuple(
            part
            for child in node.get("childIds", ())
            if child in nodes
            for part in read(nodes[child], inside)
        )
        return [Part(role, said(node), places, held)] if role else list(held)

    [root] = [node for node in nodes.values() if "parentId" not in node]
    [tree] = read(root, ())
    return tree


def unnamed(tree: Part) -> list[str]:
    """Drawings and controls without a name. A figure has that of the one drawing it holds."""
    faults = []
    for one in tree.every():
        if one.role not in DRAWINGS | CONTROLS or one.name:
            continue
        drawn = [part for part in one.every() if part.role == "image" and part.name]
        if one.role != "figure" or len(drawn) != 1:
            faults.append(f"{one.role} without a name in {one.places}")
    return faults


def alike(tree: Part) -> list[str]:
    """Drawings of one name on a page, controls of one name in one place."""
    drawn = Counter(one.name for one in tree.every() if one.role == "image" and one.name)
    worked = Counter(
        (one.role, one.name, one.places) for one in tree.every() if one.role in CONTROLS
    )
    return [
        f"{count} times {what}" for what, count in [*drawn.items(), *worked.items()] if count > 1
    ]


def faults_of(page: Page, tree: Part) -> list[str]:
    """What is amiss with the names on a page that is open, and what of it is not in the tree at all."""
    faults = unnamed(tree) + alike(tree)
    [main] = [one for one in tree.every() if one.role == "main"]
    names = [one.name for one in main.every() if one.role == "image"]
    for title in page.evaluate(DRAWN):
        if not any(name.startswith(title) for name in names):
            faults.append(f"not in the tree: drawing {title}")
    fields = sum(one.role in CONTROLS - {"button", "DisclosureTriangle"} for one in main.every())
    if fields < (there := page.evaluate(FIELDS)):
        faults.append(f"{there} fields, {fields} in the tree")
    return faults


def test_every_drawing_and_control_has_a_name_of_its_own(browser: Browser, site: Site) -> None:
    context = browser.new_context()
    page = context.new_page()
    session = context.new_cdp_session(page)
    faults, drawings, controls = [], 0, 0
    for path in every_page(site):
        page.set_viewport_size({"width": 1280, "height": 900})
        page.goto(site.address + path)
        if page.locator(LATE).count():
            page.wait_for_load_state("networkidle")
        for width in (1280, 390) if path in KINDS else (1280,):
            page.set_viewport_size({"width": width, "height": 900})
            tree = tree_of(session)
            drawings += sum(one.role == "image" for one in tree.every())
            controls += sum(one.role in CONTROLS for one in tree.every())
            faults += [f"{path} {width}: {one}" for one in faults_of(page, tree)]
    context.close()
    assert not faults, "\n".join(faults)
    assert set(every_page(site)) >= KINDS
    assert drawings > 200 and controls > 2000


def test_a_lost_name_and_a_name_given_twice_are_seen(browser: Browser, site: Site) -> None:
    context = browser.new_context(viewport={"width": 1280, "height": 900})
    page = context.new_page()
    session = context.new_cdp_session(page)
    page.goto(f"{site.address}calculators/neck-angle/")
    assert faults_of(page, tree_of(session)) == []
    first, second = page.locator("main svg[role=img]").all()[:2]
    first.evaluate(
        "(one, named) => one.setAttribute('aria-labelledby', named)",
        second.get_attribute("aria-labelledby"),
    )
    assert any("2 times" in one for one in faults_of(page, tree_of(session)))
    second.evaluate("(one) => one.setAttribute('aria-hidden', 'true')")
    assert any("not in the tree" in one for one in faults_of(page, tree_of(session)))
    page.locator("main form label[for]").first.evaluate("(one) => one.remove()")
    assert any("without a name" in one for one in faults_of(page, tree_of(session)))
    context.close()
