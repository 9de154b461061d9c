"""Pores that a sawn face cuts open: what of them lies open, and what shrinking filler leaves."""

import math

from ..engine.declaration import Source

STEREOLOGY = Source(
    id="stereology",
    title="Practical Stereology: the share of a cut face that is pore is the share of the volume "
    "that is pore (Delesse's principle)",
    author="Russ, J. C., and Dehoff, R. T.; Delesse, 1847",
    year="2000",
    note="Both named from memory. For round pores along the face it is plane geometry, checked by "
    "adaptive quadrature.",
)
GEOMETRIC_SERIES = Source(
    id="geometric-series",
    title="Geometric series: each filling leaves the same share of what was open before it",
    note="Definition and sum of any school book of algebra.",
)


def segment_mm2(diameter_mm: float, depth_mm: float) -> float:
    """Section, mm², of the part of a round pore that lies below a face, open to it.

    ``depth_mm`` is from the face to the bottom of the pore, nought to the diameter. Source: area
    of the segment of a circle, r²·acos((r - h)/r) - (r - h)·sqrt(2rh - h²).
    """
    radius = diameter_mm / 2
    above = radius - depth_mm
    chord = 2 * math.sqrt(max(0.0, diameter_mm * depth_mm - depth_mm * depth_mm))
    return radius * radius * math.acos(above / radius) - above * chord / 2


def mean_segment_mm2(diameter_mm: float) -> float:
    """Mean section, mm², of round pores cut by a face that runs along them at random heights.

    Half the circle, π·d²/8: for each pore cut at depth h there is one cut at d - h, and the two
    make a whole circle. As many pores are cut, to a mm of width, as lie with their middle within
    half a diameter of the face: their number a mm² times d. Source: stereology, as above.
    """
    return math.pi * diameter_mm * diameter_mm / 8


def left_open(filled_share: float, set_share: float) -> float:
    """Share of an open pore that one filling leaves open once it has set; shares 0 to 1.

    The cloth leaves the pore ``filled_share`` full of wet filler, of which ``set_share`` stays.
    n fillings leave this to the power n (geometric series).
    """
    return 1 - filled_share * set_share
