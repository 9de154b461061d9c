"""Every reference and block in a page leads somewhere."""

import re
from collections.abc import Container, Iterator
from dataclasses import dataclass
from difflib import get_close_matches
from itertools import pairwise

from ..handbook import Handbook, Page
from ..problems import Problem
from ..references import (
    BLOCKS,
    CODE,
    FENCE,
    PARTS,
    BadReference,
    Reference,
    blank,
    find_references,
    of_text,
    parse_reference,
)

BLOCK = re.compile(r"^/// (?P<name>[a-z-]+)(?: \| (?P<argument>[^\n]+))?$", re.MULTILINE)
BLOCK_LINE = re.compile(r"^/// ?[^\n]*$", re.MULTILINE)
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


def known_ids(handbook: Handbook, kind: str) -> Container[str]:
    """Every id that a reference of a kind may name."""
    if kind == "station":
        return handbook.station_ids
    if kind == "calc":
        return handbook.calculators
    return handbook.entries[ENTRY_KINDS[kind]]


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


@dataclass(frozen=True)
class _Written:
    """A block as it stands on a page."""

    position: int
    name: str
    argument: str
    closed: bool


@of_text
def _blocks_in(body: str) -> tuple[_Written, ...]:
    text = blank(body, FENCE, CODE)
    lines = list(BLOCK_LINE.finditer(text))
    ends = {
        line.start(): after[0].strip() == "///"
        for line, after in pairwise(lines)
    }  # fmt: skip
    return tuple(
        _Written(
            found.start(), found["name"], (found["argument"] or "").strip(),
            ends.get(found.start(), False),
        )
        for found in BLOCK.finditer(text)
    )  # fmt: skip


def _shape(page: Page, block: _Written) -> Iterator[Problem]:
    """A block by a name that is nearly one of ours, or without its end."""
    name = block.name
    if name not in BLOCKS:
        near = get_close_matches(name, BLOCKS, 1, 0.75)
        if near:
            yield page.problem(block.position, f"no block '/// {name}'", f"write /// {near[0]}")
    elif not block.closed:
        yield page.problem(
            block.position, f"the block '/// {name}' is not closed", "write /// on a line below it"
        )


def _blocks(handbook: Handbook, page: Page) -> Iterator[Problem]:
    for block in _blocks_in(page.body):
        yield from _shape(page, block)
        name, argument = block.name, block.argument
        if name == "calculator" and argument not in handbook.calculators:
            yield page.problem(
                block.position, f"unknown calculator '{argument}'",
                "take one of " + ", ".join(handbook.calculators),
            )  # fmt: skip
        if name == "drawing" and not (handbook.docs / "drawings" / f"{argument}.svg").exists():
            yield page.problem(
                block.position,
                f"no drawing 'docs/drawings/{argument}.svg'",
                "draw it or mend the name",
            )
