"""A row of wedges in one face of a beam of layers: how they bend it.

Lengths in mm, moduli in GPa, areas in mm²: a modulus times an area is kN, times a second moment
kN·mm², a thousand of which are 1 N·m². Heights are counted upwards from any level.
"""

import math
from collections.abc import Sequence
from typing import NamedTuple

from ..engine.declaration import Source

BIMETAL = Source(
    id="timoshenko-layers",
    title="Analysis of bi-metal thermostats: a layer that grows against the layers it is glued to",
    author="Timoshenko, S. P., Journal of the Optical Society of America 11, 233",
    year="1925",
    note="Named from memory. Its closed form for two layers is worked out with mpmath as a check.",
)
KN_MM2_PER_N_M2 = 1000.0


class Layer(NamedTuple):
    """One layer glued to the rest: modulus (GPa), area (mm²), height of its centroid (mm) and
    second moment about that (mm⁴)."""

    modulus_gpa: float
    area_mm2: float
    place_mm: float
    inertia_mm4: float


def strip(modulus_gpa: float, width_mm: float, from_mm: float, to_mm: float) -> Layer:
    """A rectangular layer between two heights."""
    thick = to_mm - from_mm
    return Layer(modulus_gpa, width_mm * thick, (from_mm + to_mm) / 2, width_mm * thick**3 / 12)


def half_ellipse(modulus_gpa: float, width_mm: float, depth_mm: float) -> Layer:
    """A half ellipse that hangs from height 0: the shaft of a neck.

    Area π·b·h/4, centroid 4h/(3π) from the flat, second moment b·h³·(π/16 - 4/(9π)). Properties of
    plane areas, any book of mechanics.
    """
    return Layer(
        modulus_gpa,
        math.pi * width_mm * depth_mm / 4,
        -4 * depth_mm / (3 * math.pi),
        width_mm * depth_mm**3 * (math.pi / 16 - 4 / (9 * math.pi)),
    )


def neutral_mm(layers: Sequence[Layer]) -> float:
    """Height of the neutral axis: the moduli-weighted centroid."""
    whole = math.fsum(one.modulus_gpa * one.area_mm2 for one in layers)
    return math.fsum(one.modulus_gpa * one.area_mm2 * one.place_mm for one in layers) / whole


def stiffness_n_m2(layers: Sequence[Layer]) -> float:
    """Bending stiffness EI of layers that cannot slide: own terms and parallel axes."""
    axis = neutral_mm(layers)
    return (
        math.fsum(
            one.modulus_gpa * (one.inertia_mm4 + one.area_mm2 * (one.place_mm - axis) ** 2)
            for one in layers
        )
        / KN_MM2_PER_N_M2
    )


def curvature_per_m(layers: Sequence[Layer], grows: int, strain: float) -> float:
    """Curvature, 1/m, when one layer would grow by ``strain`` and the rest hold it.

    Force and moment of E·A·strain at that layer's height, on the whole section: k = E·A·d·e/EI,
    d over the neutral axis. Timoshenko's bimetal for two layers. Plus: the growing side is the
    outside of the bend.
    """
    one = layers[grows]
    force_kn = one.modulus_gpa * one.area_mm2 * strain
    return force_kn * (one.place_mm - neutral_mm(layers)) / stiffness_n_m2(layers)


def bow_under_kinks_mm(places_mm: Sequence[float], length_mm: float, at_mm: float) -> float:
    """How high a line with equal kinks stands over its chord, per unit kink (1 = 1 rad).

    Each kink at x lifts the place z by x·(L - z)/L, or z·(L - x)/L beyond it: the moment line of a
    unit load on two supports, by the principle of virtual forces. Small angles.
    """
    return math.fsum(
        min(at_mm, place) * (length_mm - max(at_mm, place)) / length_mm for place in places_mm
    )
