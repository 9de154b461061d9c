"""A string over the frets: the board's relief, its rounding, and the gap the string leaves.

Heights are millimetres over the straight line in which the fret tops run on beyond the body joint,
on the middle of the board; distances are millimetres from the nut.
"""

import math
from collections.abc import Iterator
from typing import NamedTuple

from ..engine.declaration import Source

EQUAL_DIVISION = Source(
    id="equal-division",
    title="Equal division of the octave: each fret shortens the string by the ratio 2^(1/12)",
    author="Barbour, J. M., Tuning and Temperament: A Historical Survey",
    year="1951",
    note="The ratio is a definition; the book is named from memory.",
)
OCTAVE_FRET = 12


class Neck(NamedTuple):
    """A fretted neck under its strings; ``fret_radius_mm`` of 0 is a flat board."""

    scale_mm: float
    joint_fret: int
    relief_mm: float
    fret_radius_mm: float
    spread_nut_mm: float
    spread_saddle_mm: float


class Line(NamedTuple):
    """A straight string: its height at the nut, its height at the saddle, its length."""

    at_nut_mm: float
    at_saddle_mm: float
    length_mm: float

    def height_mm(self, from_nut_mm: float) -> float:
        """Height of the string so far from the nut."""
        share = from_nut_mm / self.length_mm
        return self.at_nut_mm + (self.at_saddle_mm - self.at_nut_mm) * share


def fret_place_mm(scale_mm: float, fret: int) -> float:
    """Distance of a fret from the nut: S·(1 - 2^(-n/12)), twelve equal semitones."""
    return scale_mm * (1 - 2 ** (-fret / 12))


def neck_rise_mm(neck: Neck, from_nut_mm: float) -> float:
    """How far the neck bends up above the line of its frets beyond the joint.

    An even bend from the joint to the nut is a parabola, 4·r·((x_j - x)/(x_j - x_1))²: it touches
    the line at the joint and dips by the relief r below a straightedge on first and joint fret.
    Plane geometry; a circle differs by less than a ten-thousandth of the relief.
    """
    joint_mm = fret_place_mm(neck.scale_mm, neck.joint_fret)
    if from_nut_mm >= joint_mm:
        return 0.0
    share = (joint_mm - from_nut_mm) / (joint_mm - fret_place_mm(neck.scale_mm, 1))
    return 4 * neck.relief_mm * share**2


def fall_across_mm(neck: Neck, from_nut_mm: float, share_across: float) -> float:
    """How far the fret under a string lies below the middle of the board.

    ``share_across`` is -1 at one outer string, 0 in the middle, 1 at the other. The sagitta of a
    circle, R - sqrt(R² - u²); the outer strings spread evenly from nut to saddle line. Plane
    geometry.
    """
    if neck.fret_radius_mm == 0:
        return 0.0
    widens_mm = neck.spread_saddle_mm - neck.spread_nut_mm
    spread_mm = neck.spread_nut_mm + widens_mm * from_nut_mm / neck.scale_mm
    across_mm = share_across * spread_mm / 2
    return neck.fret_radius_mm - math.sqrt(neck.fret_radius_mm**2 - across_mm**2)


def fret_top_mm(neck: Neck, from_nut_mm: float, share_across: float) -> float:
    """Height of the fret's crown under a string."""
    return neck_rise_mm(neck, from_nut_mm) - fall_across_mm(neck, from_nut_mm, share_across)


def string_line(
    neck: Neck, first_gap_mm: float, action_mm: float, length_mm: float, share_across: float
) -> Line:
    """The straight string that clears the first fret and the 12th by the two gaps measured."""
    first_mm = fret_place_mm(neck.scale_mm, 1)
    octave_mm = fret_place_mm(neck.scale_mm, OCTAVE_FRET)
    low_mm = fret_top_mm(neck, first_mm, share_across) + first_gap_mm
    high_mm = fret_top_mm(neck, octave_mm, share_across) + action_mm
    slope = (high_mm - low_mm) / (octave_mm - first_mm)
    return Line(low_mm - slope * first_mm, low_mm + slope * (length_mm - first_mm), length_mm)


def open_gaps_mm(neck: Neck, line: Line, frets: int, share_across: float) -> list[float]:
    """Gap between the open string and the crown of every fret, from the first to the last."""
    places = [fret_place_mm(neck.scale_mm, fret) for fret in range(1, frets + 1)]
    return [line.height_mm(x) - fret_top_mm(neck, x, share_across) for x in places]


def pressed_gaps_mm(neck: Neck, line: Line, frets: int, share_across: float) -> list[float]:
    """Least gap over the frets beyond it while the string is pressed to each fret but the last.

    The pressed string is straight from that fret's crown to the saddle.
    """
    places = [fret_place_mm(neck.scale_mm, fret) for fret in range(1, frets + 1)]
    tops = [fret_top_mm(neck, x, share_across) for x in places]

    def gaps(pressed: int) -> Iterator[float]:
        x, top = places[pressed], tops[pressed]
        slope = (line.at_saddle_mm - top) / (line.length_mm - x)
        for other in range(pressed + 1, frets):
            yield top + slope * (places[other] - x) - tops[other]

    return [min(gaps(pressed)) for pressed in range(frets - 1)]
