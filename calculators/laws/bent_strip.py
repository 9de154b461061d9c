"""A strip bent to an arc: how far its faces stretch and shrink, and what springs back.

Plane sections stay plane, so each layer is as long as its own radius asks. The names in the texts
are ``thickness``, ``radius`` (of the inside face) and ``whole`` (100 %); a calculator prints and
evaluates them with its own names put in.
"""

import math

from ..engine.declaration import Source

BENT_STRIP = Source(
    id="bent-strip",
    title="Bending of a strip to an arc: each layer as long as its own radius asks",
    author="Gere, J. M., and Timoshenko, S. P., Mechanics of Materials, pure bending",
    note="Geometry of circles; the book is named from memory. Checked with mpmath and scipy.",
)


def face_stretch_percent(thickness_mm: float, radius_mm: float) -> float:
    """Stretch, %, of the outer face of a strip bent freely to an inside radius.

    The middle line keeps its length, so the outer face is longer by t/(2R + t) and the inner
    shorter by as much. Any thickness and radius above zero. Source: ``BENT_STRIP``.
    """
    return 100 * thickness_mm / (2 * radius_mm + thickness_mm)


def inner_shrink_percent(thickness_mm: float, radius_mm: float, outer_percent: float) -> float:
    """Shrinking, %, of the inner face where the outer one is held to a stretch of so many %.

    Both faces turn through one angle: inner over outer length is R/(R + t). Source:
    ``BENT_STRIP``.
    """
    share = radius_mm / (radius_mm + thickness_mm)
    return 100 * (1 - (1 + outer_percent / 100) * share)


def former_radius_mm(radius_mm: float, spring_per_m: float) -> float:
    """Radius to bend to, mm, so that the strip rests at ``radius_mm`` after springing back.

    Letting go takes off the same curvature, here in 1/m, wherever the strip has been bent well
    past what it takes as a spring: 1/R' = 1/R + k. Found on a trial of the same strip. Source:
    ``BENT_STRIP`` (unloading of a strip that has yielded).
    """
    return 1000 / (1000 / radius_mm + spring_per_m)


def sagitta_mm(radius_mm: float, chord_mm: float) -> float:
    """Height, mm, of an arc over its chord (no longer than the diameter). Circle geometry."""
    return radius_mm - math.sqrt(radius_mm**2 - (chord_mm / 2) ** 2)
