"""The parts of the top's calculation that branch: the strip bent by the bridge's couple, woods."""

from collections.abc import Mapping

from ..laws.bending_beam import bent_by_couple
from ._plates_shared import strength_of


def bent_top(
    couple: float, bridge_place: float, span: float, stiffness: float, ends: str
) -> Mapping[str, float]:
    """How the strip bends under the couple of the bridge, N·m.

    Places in mm from the upper brace, stiffness in N·m². Gives the turn of the bridge in degrees,
    the rise behind it and the sinking before it in mm, their places, and the greatest moment in
    N·m. Method and source: ``laws.bending_beam.bent_by_couple``.
    """
    bent = bent_by_couple(couple, bridge_place, span, stiffness, ends == "clamped")
    return {
        "turn": bent.turn, "rise": bent.rise, "rise_at": bent.rise_at, "sink": bent.sink,
        "sink_at": bent.sink_at, "moment": bent.moment,
    }  # fmt: skip


def brace_strength_of(brace_wood: str, brace_strength: float = 0.0) -> float:
    """Bending strength of the braces, MPa: of their species, or as measured."""
    return strength_of(brace_wood, brace_strength)


def plate_strength_of(plate_wood: str, plate_strength: float = 0.0) -> float:
    """Bending strength of the top, MPa: of its species, or as measured."""
    return strength_of(plate_wood, plate_strength)
