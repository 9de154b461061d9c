"""Straight beams on two supports: a load at one place, a couple at one place.

Slopes are small. Shear is left out: it adds about 1.2·(E/G)·(h/L)² of the bending at a central
load (Wood Handbook Eq. 9-2 and Table 9-1), some 3 % where the span is 27 heights and E/G is 16.
"""

import itertools
import math
from collections.abc import Callable, Sequence
from typing import NamedTuple

MM2_PER_M2 = 1e6

# Gauss-Legendre, 8 points on -1..1 (Abramowitz & Stegun, Table 25.4): the positive half.
NODES = (
    (0.1834346424956498, 0.3626837833783620),
    (0.5255324099163290, 0.3137066458778873),
    (0.7966664774136267, 0.2223810344533745),
    (0.9602898564975363, 0.1012285362903763),
)
PANELS = 4  # in how many equal parts each stretch between two breaks is taken


def integral(function: Callable[[float], float], breaks: Sequence[float]) -> float:
    """The integral of a function that is smooth between ``breaks`` (rising), Gauss by panels."""
    total = 0.0
    for start, end in itertools.pairwise(breaks):
        half = (end - start) / (2 * PANELS)
        for panel in range(PANELS):
            middle = start + (2 * panel + 1) * half
            for node, weight in NODES:
                reach = node * half
                total += weight * half * (function(middle - reach) + function(middle + reach))
    return total


def point_load_compliance(
    place_mm: float, span_mm: float, stiffness: Callable[[float], float], breaks: Sequence[float]
) -> float:
    """Deflection under a load of 1 N at its place, mm/N, where the stiffness changes along.

    ``stiffness`` gives EI in N·m² at mm from the first support and is smooth between ``breaks``
    (mm; those outside the span are passed over). Unit-load method (Castigliano's second theorem):
    the integral of m²/EI, m the moment of 1 N.
    """
    rest = span_mm - place_mm

    def strain(x: float) -> float:
        moment = x * rest / span_mm if x <= place_mm else (span_mm - x) * place_mm / span_mm
        return moment * moment / (stiffness(x) * MM2_PER_M2)

    inside = {one for one in breaks if 0 < one < span_mm}
    return integral(strain, sorted({0.0, *inside, place_mm, span_mm}))


class CoupleBeam(NamedTuple):
    """A beam bent by a couple that tips its middle down towards the first support.

    ``turn`` of the beam at the couple, degrees. ``sink`` and ``rise``, mm, both positive: the
    deepest and the highest place, ``sink_at`` and ``rise_at`` mm from the first support.
    ``moment``: the greatest bending moment anywhere, N·m, in size.
    """

    turn: float
    sink: float
    sink_at: float
    rise: float
    rise_at: float
    moment: float


def couple_cubics(
    couple_n_m: float, place_mm: float, span_mm: float, stiffness_n_m2: float, clamped: bool
) -> tuple[tuple[float, float, float], tuple[float, float, float]]:
    """The bent line: (c1, c2, c3) of y = c1·x + c2·x² + c3·x³, mm upwards, on either side.

    The first cubic is read from the first support, the second from the other support backwards.
    Ends hinged: Roark Table 8.1 case 3e; ends clamped: case 3d (case letters from memory); both
    worked out afresh from equal deflection, slope and shear force on both sides of the couple.
    """
    a, b = place_mm, span_mm - place_mm
    # couple/(6·EI·L) in 1/mm²: N·m over N·m² is 1/m, a thousandth of that is 1/mm.
    k = couple_n_m / stiffness_n_m2 / 1000 / (6 * span_mm)
    if clamped:
        third = 6 * k * a * b / span_mm**2
        return (
            (0.0, 3 * k * b * (b - 2 * a) / span_mm, third),
            (0.0, 3 * k * a * (2 * b - a) / span_mm, -third),
        )
    return (
        (k * (2 * b * b - 2 * a * b - a * a), 0.0, k),
        (-k * (2 * a * a - 2 * a * b - b * b), 0.0, -k),
    )


def bent_by_couple(
    couple_n_m: float, place_mm: float, span_mm: float, stiffness_n_m2: float, clamped: bool
) -> CoupleBeam:
    """What a couple does to a uniform beam; ``couple_cubics`` with its extremes.

    Deflection is extreme where the slope of a cubic is zero within its stretch, or at the couple;
    the moment, straight on either side, is greatest at an end of a stretch.
    """
    stretches = (place_mm, span_mm - place_mm)
    deflections = [(0.0, 0.0)]
    moments = []
    cubics = couple_cubics(couple_n_m, place_mm, span_mm, stiffness_n_m2, clamped)
    for side, (cubic, stretch) in enumerate(zip(cubics, stretches, strict=True)):
        c1, c2, c3 = cubic
        level = [stretch]
        if clamped:
            level.append(-2 * c2 / (3 * c3) if c3 else 0.0)
        elif c1 * c3 < 0:
            level.append(math.sqrt(-c1 / (3 * c3)))
        for x in level:
            if 0 <= x <= stretch:
                height = x * (c1 + x * (c2 + x * c3))
                deflections.append((height, x if side == 0 else span_mm - x))
        moments += [abs(2 * c2), abs(2 * c2 + 6 * c3 * stretch)]
    (sink, sink_at), (rise, rise_at) = min(deflections), max(deflections)
    c1, c2, c3 = cubics[0]
    slope = c1 + place_mm * (2 * c2 + 3 * c3 * place_mm)
    return CoupleBeam(
        turn=math.degrees(math.atan(slope)),
        sink=abs(sink), sink_at=sink_at, rise=rise, rise_at=rise_at,
        moment=max(moments) * stiffness_n_m2 * 1000,
    )  # fmt: skip
