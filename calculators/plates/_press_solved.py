"""The parts of the press calculation that branch or iterate: the wood, and the bent bar."""

from collections.abc import Mapping

from ..laws.bent_bar import bent_bar
from ..laws.wood_elastic import modulus_gpa
from ._plates_shared import strength_of


def back_modulus_of(back_wood: str, back_modulus: float = 0.0) -> float:
    """Modulus of the back along its grain, GPa: of its species, or as measured."""
    return back_modulus if back_wood == "own" else modulus_gpa(back_wood)


def back_strength_of(back_wood: str, back_strength: float = 0.0) -> float:
    """Bending strength of the back, MPa: of its species, or as measured."""
    return strength_of(back_wood, back_strength)


def sprung_bar(deck_height: float, bar_length: float) -> Mapping[str, float]:
    """A bar of ``bar_length`` between faces ``deck_height`` apart, both mm; plain numbers.

    Its force over Euler's load, its bow over its length, and the curvature in its middle times its
    length. Method and source: ``laws.bent_bar.bent_bar``.
    """
    bent = bent_bar(deck_height / bar_length)
    return {"force_times": bent.force, "bow_share": bent.bow, "bend_share": bent.bend}
