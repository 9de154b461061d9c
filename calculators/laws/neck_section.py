"""Section of a neck: the carved back as part of a superellipse, and the rounded board on it.

Lengths in mm. Depths count from the glue face between board and shaft: down into the shaft, up
into the board. Board and shaft are taken as one piece of one stiffness.
"""

import math
from typing import NamedTuple

from ..engine.declaration import Source
from .bending_beam import NODES
from .board_radius import fall_mm

SUPERELLIPSE = Source(
    id="superellipse",
    title="Superellipse (Lamé curve) (x/a)^n + (y/b)^n = 1 and its moments by the gamma function",
    author="Gradshteyn, I. S., and Ryzhik, I. M., Table of Integrals, Series, and Products",
    note="Integral of (1 - v^n)^(k/n) from 0 to 1, a beta function; the book is named from "
    "memory, the figures are checked with scipy.",
)


AT_EDGE = 1e-12  # a steep shoulder magnifies the last bits: from here on it is the edge


class Section(NamedTuple):
    """Area, mm²; centroid below the board's crown, mm; second moment about it, mm⁴."""

    area_mm2: float
    centroid_mm: float
    second_moment_mm4: float


def contour_depth_mm(
    across_mm: float, half_width_mm: float, depth_mm: float, fullness: float, flat: float
) -> float:
    """How deep the back lies below the glue face, ``across_mm`` from the middle (0..half width).

    ``flat`` is the share of the width (0 to below 1) over which the back is flat; the shoulders
    beyond are quarters of a superellipse of the exponent ``fullness`` (above 0; 2 an ellipse).
    Source: ``SUPERELLIPSE``.
    """
    beyond = across_mm - flat * half_width_mm
    if beyond <= 0:
        return depth_mm
    share = beyond / ((1 - flat) * half_width_mm)
    if share > 1 - AT_EDGE:
        return 0.0
    return float(depth_mm * (1 - share**fullness) ** (1 / fullness))


def shoulder_integral(fullness: float, power: int) -> float:
    """The integral of (1 - v^n)^(k/n) over v from 0 to 1, n the fullness, k the power.

    Γ(1 + 1/n)·Γ(1 + k/n)/Γ(1 + (k + 1)/n). Source: ``SUPERELLIPSE``.
    """
    return (
        math.gamma(1 + 1 / fullness)
        * math.gamma(1 + power / fullness)
        / math.gamma(1 + (power + 1) / fullness)
    )


def shaft_moments(
    half_width_mm: float, depth_mm: float, fullness: float, flat: float
) -> tuple[float, float, float]:
    """Area, first and second moment of the shaft about the glue face (mm², mm³, mm⁴), down plus.

    Depth to the power k over k, summed over the width, k = 1, 2, 3. Source: ``SUPERELLIPSE``.
    """
    area, first, second = (
        2 * half_width_mm * depth_mm**power / power
        * (flat + (1 - flat) * shoulder_integral(fullness, power))
        for power in (1, 2, 3)
    )  # fmt: skip
    return area, first, second


def board_moments(
    half_width_mm: float, thickness_mm: float, radius_mm: float
) -> tuple[float, float, float]:
    """Area, first and second moment of the board about the glue face (mm², mm³, mm⁴), up plus.

    ``thickness_mm`` in the middle, less the fall of the round (radius 0: flat) beside it. Gauss's
    rule of eight points over the half width, Abramowitz & Stegun Table 25.4.
    """
    area = first = second = 0.0
    for node, weight in NODES:
        for share in ((1 - node) / 2, (1 + node) / 2):
            fall = fall_mm(radius_mm, share * half_width_mm) if radius_mm > 0 else 0.0
            height = thickness_mm - fall
            part = weight * half_width_mm  # half the width either side, the rule's interval is 2
            area += part * height
            first += part * height**2 / 2
            second += part * height**3 / 3
    return area, first, second


def neck_section(
    half_width_mm: float, thickness_mm: float, board_mm: float, radius_mm: float, fullness: float,
    flat: float,
) -> Section:  # fmt: skip
    """The section of neck and board, ``thickness_mm`` through both on the middle line.

    The moments of both about the glue face, moved to their common centroid (Steiner).
    """
    below = shaft_moments(half_width_mm, thickness_mm - board_mm, fullness, flat)
    above = board_moments(half_width_mm, board_mm, radius_mm)
    area = below[0] + above[0]
    middle = (below[1] - above[1]) / area
    second = below[2] + above[2] - area * middle**2
    return Section(area, board_mm + middle, second)
