"""Places of the handbook that can be named: a step or a fault, a row, a hazard, a calculator.

``station#heading`` is a part of a station's page, by the id that the page gives its heading; others
are ``kind:id`` (hazard, term, calc, wood, model, gauge), and a plain id is a tolerance.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass

from markdown.extensions.toc import slugify

from .handbook import Handbook

ENTRY_KINDS = {"hazard": "hazards", "term": "glossary", "wood": "materials", "model": "models",
               "gauge": "gauges"}  # fmt: skip
HEADING = re.compile(r"^(?P<level>#{2,3}) (?P<title>.+?)\s*$", re.MULTILINE)


@dataclass(frozen=True)
class Part:
    """A step or a fault of a station: its section, its title, its id on the page."""

    station: str
    section: str
    title: str
    anchor: str


def parts(handbook: Handbook) -> Iterator[Part]:
    """Every step and fault of every station."""
    for station in handbook.stations:
        section = ""
        for found in HEADING.finditer(station.page.body):
            if found["level"] == "##":
                section = found["title"]
            elif section in ("Steps", "What goes wrong"):
                title = found["title"]
                yield Part(station.id, section, title, slugify(title, "-"))


def known_places(handbook: Handbook) -> set[str]:
    """Every name of a place."""
    known = {f"{part.station}#{part.anchor}" for part in parts(handbook)}
    known |= set(handbook.tolerances)
    known |= {f"calc:{name}" for name in handbook.calculators}
    for kind, entries in ENTRY_KINDS.items():
        known |= {f"{kind}:{id}" for id in handbook.entries[entries]}
    return known
