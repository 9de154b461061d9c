"""Every reference and block in a page leads somewhere."""

import re
from collections.abc import Iterator

from ..handbook import Handbook, Page
from ..problems import Problem
from ..references import (
    CODE,
    FENCE,
    PARTS,
    BadReference,
    Reference,
    blank,
    find_references,
    parse_reference,
)

BLOCK = re.compile(r"^/// (?P<name>[a-z-]+)(?: \| (?P<argument>[^\n]+))?$", re.MULTILINE)
ENTRY_KINDS = {"tol": "tolerances", "term": "glossary", "gauge": "gauges", "source": "sources",
               "hazard": "hazards", "model": "models", "wood": "materials"}  # fmt: skip


def find_problems(handbook: Handbook) -> Iterator[Problem]:
    """Unknown ids in references and blocks."""
    for page in handbook.pages:
        for position, inner in find_references(page.body):
            try:
                reference = parse_reference(inner)
            except BadReference as error:
                yield page.problem(position, f"[[{inner}]]: {error}", "mend the reference")
                continue
            yield from _unknown(handbook, page, position, reference)
        yield from _blocks(handbook, page)


def known_ids(handbook: Handbook, kind: str) -> set[str]:
    """Every id that a reference of a kind may name."""
    if kind == "station":
        return {station.id for station in handbook.stations}
    if kind == "calc":
        return set(handbook.calculators)
    return set(handbook.entries[ENTRY_KINDS[kind]])


def _unknown(
    handbook: Handbook, page: Page, position: int, reference: Reference
) -> Iterator[Problem]:
    if reference.kind == "plain":
        return
    if reference.id not in known_ids(handbook, reference.kind):
        yield page.problem(
            position, f"unknown {reference.kind} '{reference.id}'", "mend the id or add the entry"
        )
    elif reference.kind == "tol" and reference.part != "limits":
        value = handbook.tolerances[reference.id].field(reference.part)
        if reference.part not in PARTS or value is None:
            yield page.problem(
                position, f"'{reference.id}' has no {reference.part}", "cite its limits instead"
            )


def _blocks(handbook: Handbook, page: Page) -> Iterator[Problem]:
    for found in BLOCK.finditer(blank(page.body, FENCE, CODE)):
        name, argument = found["name"], (found["argument"] or "").strip()
        if name == "calculator" and argument not in handbook.calculators:
            yield page.problem(
                found.start(), f"unknown calculator '{argument}'",
                "take one of " + ", ".join(handbook.calculators),
            )  # fmt: skip
        if name == "drawing" and not (handbook.docs / "drawings" / f"{argument}.svg").exists():
            yield page.problem(
                found.start(),
                f"no drawing 'docs/drawings/{argument}.svg'",
                "draw it or mend the name",
            )
