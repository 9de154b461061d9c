"""Places of the handbook that can be named: a step or a fault, a row, a hazard, a calculator.

``station#heading`` is a part of a station's page, by the id that the page gives its heading; others
are ``kind:id`` (hazard, term, calc, wood, model, gauge), and a plain id is a tolerance.
"""

from .handbook import Handbook
from .station_parts import places_of

ENTRY_KINDS = {"hazard": "hazards", "term": "glossary", "wood": "materials", "model": "models",
               "gauge": "gauges"}  # fmt: skip


def known_places(handbook: Handbook) -> set[str]:
    """Every name of a place."""
    known = {f"{one.station}#{one.anchor}" for one in places_of(handbook)}
    known |= set(handbook.tolerances)
    known |= {f"calc:{name}" for name in handbook.calculators}
    for kind, entries in ENTRY_KINDS.items():
        known |= {f"{kind}:{id}" for id in handbook.entries[entries]}
    return known
