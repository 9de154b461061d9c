"""A board rounded across: how far it falls to its edges, what a gauge or block of another radius
leaves open, and what a straight string finds under it. Lengths in mm.
"""

import math
from collections.abc import Sequence
from typing import NamedTuple


def fall_mm(radius_mm: float, half_width_mm: float) -> float:
    """How far a round of ``radius_mm`` falls from its middle out to ``half_width_mm``.

    The sagitta of a circle, R - sqrt(R² - u²), for u up to R. Plane geometry.
    """
    return radius_mm - math.sqrt(radius_mm**2 - half_width_mm**2)


def radius_for_fall_mm(half_width_mm: float, fall_mm: float) -> float:
    """Radius of the round that falls by ``fall_mm`` (above 0) at ``half_width_mm``.

    R = u²/(2s) + s/2: ``fall_mm`` turned round. Plane geometry.
    """
    return half_width_mm**2 / (2 * fall_mm) + fall_mm / 2


def gauge_gap_mm(board_radius_mm: float, gauge_radius_mm: float, width_mm: float) -> float:
    """The gap a hollow gauge (or block) of another radius leaves on a rounded board.

    Above 0 the gauge is the flatter one: it stands on the middle and the gap is at the edges.
    Below 0 it is the rounder one: it stands on the edges and the gap is under its middle. The
    difference of the two sagittas over the width. Plane geometry.
    """
    return fall_mm(board_radius_mm, width_mm / 2) - fall_mm(gauge_radius_mm, width_mm / 2)


class Ruled(NamedTuple):
    """A board whose radius grows evenly from the nut, ``growth`` a mm, and the outer string over
    it, ``half_spread_nut_mm`` from the middle at the nut and ``spread_growth`` a mm further out."""

    radius_nut_mm: float
    growth: float
    half_spread_nut_mm: float
    spread_growth: float

    def fall_mm(self, from_nut_mm: float) -> float:
        """How far the board under the outer string lies below its middle."""
        return fall_mm(
            self.radius_nut_mm + self.growth * from_nut_mm,
            self.half_spread_nut_mm + self.spread_growth * from_nut_mm,
        )

    def fall_slope(self, from_nut_mm: float) -> float:
        """How fast that grows along the board: R' - (R·R' - u·u')/sqrt(R² - u²)."""
        radius = self.radius_nut_mm + self.growth * from_nut_mm
        out = self.half_spread_nut_mm + self.spread_growth * from_nut_mm
        return self.growth - (radius * self.growth - out * self.spread_growth) / math.sqrt(
            radius**2 - out**2
        )


def hump_mm(board: Ruled, length_mm: float) -> tuple[float, float]:
    """The hump under a straightedge laid along the outer string, nut to ``length_mm``; and where.

    R·f(u/R) with a hollow f is hollow in u and R together, and both run evenly along the board:
    so the fall is never more in between than on the straight line, and the board never dips. It
    runs straight only where u/R stays the same, that is where board and strings run to one point
    (a cone under its own lines). The place where the fall runs parallel to its chord is found by
    halving. Plane geometry.
    """
    start, end = board.fall_mm(0), board.fall_mm(length_mm)
    chord = (end - start) / length_mm
    low, high = 0.0, length_mm
    for _ in range(50):
        middle = (low + high) / 2
        if board.fall_slope(middle) < chord:
            low = middle
        else:
            high = middle
    return max(0.0, start + chord * low - board.fall_mm(low)), low


class Block(NamedTuple):
    """One block: the places it serves (indices, both counted in), its radius, the worst gap it
    leaves, and the radii between which any block leaves no more than was allowed (``most_mm`` is
    None where even a flat one does)."""

    first: int
    last: int
    radius_mm: float
    gap_mm: float
    least_mm: float
    most_mm: float | None


def fewest_blocks(
    radii_mm: Sequence[float], widths_mm: Sequence[float], allowed_mm: float
) -> list[Block]:
    """The fewest cylinder blocks that together keep to ``allowed_mm`` at every place of a board.

    A block serves a place if its fall over the width there is within ``allowed_mm`` of the
    board's: that is a span of radii for each place. From the nut on, each block takes places as
    long as one radius lies in all their spans; no choice needs fewer. Its own radius is the one
    whose worst gaps either way are alike, found by halving.
    """
    blocks = []
    first, least, most = 0, 0.0, math.inf
    spans = [_span(r, w, allowed_mm) for r, w in zip(radii_mm, widths_mm, strict=True)]
    for place, (low, high) in enumerate([*spans, (math.inf, 0.0)]):
        if max(least, low) > min(most, high):
            radius, gap = even_block(radii_mm[first:place], widths_mm[first:place])
            blocks.append(
                Block(first, place - 1, radius, gap, least, None if most == math.inf else most)
            )
            first, least, most = place, low, high
        else:
            least, most = max(least, low), min(most, high)
    return blocks


def _span(radius_mm: float, width_mm: float, allowed_mm: float) -> tuple[float, float]:
    """The radii whose fall over the width is within ``allowed_mm`` of this radius's."""
    fall = fall_mm(radius_mm, width_mm / 2)
    low = radius_for_fall_mm(width_mm / 2, fall + allowed_mm)
    return low, radius_for_fall_mm(width_mm / 2, fall - allowed_mm) if fall > allowed_mm else (
        math.inf
    )  # fmt: skip


def even_block(radii_mm: Sequence[float], widths_mm: Sequence[float]) -> tuple[float, float]:
    """The block radius whose worst gap at the edges is as large as its worst in the middle; and
    that gap, mm.

    A flatter block opens the edges and closes the middle, so there is one such radius between the
    least and the greatest of the board; found by false position (Illinois).
    """
    halves = [width / 2 for width in widths_mm]
    falls = [fall_mm(r, half) for r, half in zip(radii_mm, halves, strict=True)]

    def gaps(radius_mm: float) -> list[float]:
        square = radius_mm**2
        return [
            fall - radius_mm + math.sqrt(square - half**2)
            for fall, half in zip(falls, halves, strict=True)
        ]

    def odds(radius_mm: float) -> float:
        found = gaps(radius_mm)
        return max(found) + min(found)

    low, high = min(radii_mm), max(radii_mm)
    odds_low, odds_high = odds(low), odds(high)
    radius, side = low, 0
    while high - low > 1e-9 * high:
        before, radius = radius, (low * odds_high - high * odds_low) / (odds_high - odds_low)
        here = odds(radius)
        if here == 0 or abs(radius - before) <= 1e-10 * radius:
            break
        if here > 0:
            high, odds_high = radius, here
            odds_low, side = odds_low / (2 if side > 0 else 1), 1
        else:
            low, odds_low = radius, here
            odds_high, side = odds_high / (2 if side < 0 else 1), -1
    return radius, max(abs(gap) for gap in gaps(radius))
