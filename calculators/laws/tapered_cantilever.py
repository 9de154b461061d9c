"""A slender beam clamped at one end, its stiffness and moment changing along it.

Places in mm from the free end (0) to the clamp; moments in N·m, bending stiffness E·I in N·m².
"""

import math
from collections.abc import Callable, Sequence
from typing import NamedTuple

from ..engine.declaration import Source

ALONG = Callable[[float], float]
# Gauss's three points on -1..1 and their weights: exact for polynomials up to the fifth degree.
GAUSS = ((-math.sqrt(0.6), 5 / 9), (0.0, 8 / 9), (math.sqrt(0.6), 5 / 9))

BEAM_THEORY = Source(
    id="beam-theory",
    title="Slender beams: curvature = M/(E·I); deflection from the moments of the curvature",
    author="Any text of strength of materials (moment-area theorems of Mohr)",
    note="Named from memory; checked against Wood Handbook table 9-1 (read), sympy and scipy.",
)


class Bend(NamedTuple):
    """A bent beam: places, how far each stands from the line of the clamp, slopes there."""

    places_mm: list[float]
    offs_mm: list[float]
    slopes_rad: list[float]

    def off_at(self, place_mm: float) -> float:
        """Distance from the clamp's line at a place that the beam was cut at."""
        return self.offs_mm[self.places_mm.index(place_mm)]


def cut_places(length_mm: float, cuts_mm: Sequence[float], pieces: int) -> list[float]:
    """Places from 0 to the clamp: even pieces, and every cut inside as a place of its own."""
    even = {length_mm * number / pieces for number in range(1, pieces)}
    return sorted({0.0, length_mm} | even | {cut for cut in cuts_mm if 0 < cut < length_mm})


def bend(places_mm: Sequence[float], moment_n_m: ALONG, stiffness_n_m2: ALONG) -> Bend:
    """Deflection of a cantilever clamped at its last place.

    slope(x) = ∫ M/EI ds and off(x) = ∫ M/EI·(s - x) ds, both from x to the clamp (Mohr). Every
    piece between places is summed with Gauss's three points, so moments and stiffness may kink at
    a place, not between.
    """
    turned, levered = 0.0, 0.0  # 1/m · mm and 1/m · mm² summed from the clamp to here
    offs, slopes = [0.0], [0.0]
    for start, end in zip(places_mm[-2::-1], places_mm[:0:-1], strict=True):
        middle, half = (start + end) / 2, (end - start) / 2
        for point, weight in GAUSS:
            place = middle + half * point
            curved = weight * half * moment_n_m(place) / stiffness_n_m2(place)
            turned += curved
            levered += curved * place
        offs.append((levered - turned * start) / 1000)
        slopes.append(turned / 1000)
    return Bend(list(places_mm), offs[::-1], slopes[::-1])


def hollow_mm(bent: Bend, from_mm: float) -> float:
    """Sag midway between a place and the clamp, below the straight line through those two.

    Both places must be places of the beam. A beam that bends towards the line is hollow: plus.
    """
    middle = (from_mm + bent.places_mm[-1]) / 2
    return bent.off_at(from_mm) / 2 - bent.off_at(middle)


def point_load_moment(load_n: float, at_mm: float) -> ALONG:
    """Moment of a load square to the beam at a place (minus: beyond the free end): F·(x - a)."""
    return lambda place: load_n * max(0.0, place - at_mm) / 1000


def end_load(load_n: float, length_mm: float, stiffness_n_m2: float) -> dict[str, float]:
    """Drop (mm) and slope (rad) at the free end of an even cantilever under a load there."""
    places = cut_places(length_mm, (), 8)
    bent = bend(places, point_load_moment(load_n, 0.0), lambda _: stiffness_n_m2)
    return {"drop": bent.offs_mm[0], "slope": bent.slopes_rad[0]}


def even_load_share(pieces: int) -> float:
    """Drop at the free end under an even load W, as a share of W·L³/(E·I): 1/8."""
    places = cut_places(1000.0, (), pieces)
    bent = bend(places, lambda place: (place / 1000) ** 2 / 2, lambda _: 1.0)
    return bent.offs_mm[0] / 1000
