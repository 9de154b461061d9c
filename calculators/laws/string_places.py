"""Strings side by side: where their middles lie so that the gaps, or the middles, are even.

Lengths in mm. Strings are counted from the bass side on; places are measured from the middle of
the outer bass string.
"""

from collections.abc import Sequence
from itertools import pairwise

EVEN_GAPS, EVEN_MIDDLES = "gaps", "centres"


def even_gap_mm(gauges_mm: Sequence[float], spread_mm: float) -> float:
    """The one gap between neighbours whose outer middles lie ``spread_mm`` apart.

    What the strings themselves do not fill of the spread, over the number of gaps: the outer two
    reach into it by half their gauge each. Two strings or more. Plane geometry.
    """
    filled = sum(gauges_mm) - (gauges_mm[0] + gauges_mm[-1]) / 2
    return (spread_mm - filled) / (len(gauges_mm) - 1)


def places_mm(gauges_mm: Sequence[float], spread_mm: float, rule: str) -> list[float]:
    """The middle of each string, by even gaps (``EVEN_GAPS``) or even middles. Plane geometry."""
    if rule == EVEN_MIDDLES:
        step = spread_mm / (len(gauges_mm) - 1)
        return [number * step for number in range(len(gauges_mm))]
    gap = even_gap_mm(gauges_mm, spread_mm)
    places = [0.0]
    for before, after in pairwise(gauges_mm):
        places.append(places[-1] + before / 2 + gap + after / 2)
    return places


def gaps_mm(gauges_mm: Sequence[float], places_mm: Sequence[float]) -> list[float]:
    """The gap from each string to the next, side to side."""
    return [
        places_mm[after] - places_mm[after - 1] - (gauges_mm[after - 1] + gauges_mm[after]) / 2
        for after in range(1, len(gauges_mm))
    ]


def between_mm(nut_mm: Sequence[float], saddle_mm: Sequence[float], share: float) -> list[float]:
    """Places of straight strings at a ``share`` of the way from nut (0) to saddle (1).

    Any figure that runs evenly along a straight string will do: places, or gaps.
    """
    return [a + (b - a) * share for a, b in zip(nut_mm, saddle_mm, strict=True)]
