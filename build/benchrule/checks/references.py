"""Every reference in a page leads somewhere, and every tolerance and hazard is used."""

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
               "hazard": "hazards"}  # fmt: skip


def find_problems(handbook: Handbook) -> Iterator[Problem]:
    """Unknown ids in references and blocks, and ids that nothing uses."""
    cited: set[tuple[str, str]] = set()
    for page in handbook.pages:
        for position, inner in find_references(page.body):
            try:
                reference = parse_reference(inner)
            except BadReference as error:
                yield page.problem(position, f"[[{inner}]]: {error}", "mend the reference")
                continue
            cited.add((reference.kind, reference.id))
            yield from _unknown(handbook, page, position, reference)
        yield from _blocks(handbook, page)
    for tolerance in handbook.tolerances.values():
        if ("tol", tolerance.id) not in cited:
            yield tolerance.entry.problem(
                "no procedure cites it", f"cite it as [[{tolerance.id}]] where it is checked"
            )
    used = {id for station in handbook.stations for id in station.field("hazards")}
    for id, entry in handbook.entries["hazards"].items():
        if id not in used and ("hazard", id) not in cited:
            yield entry.problem("no station has it", "name it in a station's hazards or remove it")
    gauges = {tolerance.field("gauge") for tolerance in handbook.tolerances.values()}
    for id, entry in handbook.entries["gauges"].items():
        if id not in gauges and ("gauge", id) not in cited:
            yield entry.problem("no tolerance is measured with it", "use it or remove it")


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
