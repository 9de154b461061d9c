"""Pressure under a beam on an elastic bed: how a caul spreads its clamps over a joint.

Winkler's bed presses back in proportion to how far it is pressed in. The one length that counts
is the reach of the beam, (4·E·I/(k·b))^¼ for stiffness E·I, width b and bed k; Hetényi writes 1/λ.
A load is spread evenly over a pad; pressures come as multiples of the pressure that the pad alone
would make. The linear bed also pulls: where an answer is below zero, the beam lifts off instead.
"""

import math
from collections.abc import Callable, Sequence

from ..engine.declaration import Source

HETENYI = Source(
    id="elastic-bed",
    title="Beams on Elastic Foundation: the infinite beam under a load over a part of its length; "
    "the finite beam by end-conditioning forces",
    author="Hetényi, M., University of Michigan Press",
    year="1946",
    note="Chapters II and III, named from memory; checked with scipy and mpmath.",
)
NEGLIGIBLE = 30.0  # reaches away a load has died out to 1e-13


def _cosine(distance: float) -> float:
    """exp(-x)·cos x of a distance in reaches."""
    return math.exp(-distance) * math.cos(distance) if distance < NEGLIGIBLE else 0.0


def _sine(distance: float) -> float:
    """exp(-x)·sin x of a distance in reaches."""
    return math.exp(-distance) * math.sin(distance) if distance < NEGLIGIBLE else 0.0


def under_pad(distance: float, half_pad: float) -> float:
    """Pressure of an endless beam at a distance from the middle of one pad, lengths in reaches.

    As a multiple of the pad's own pressure. Source: ``HETENYI``.
    """
    near, far = abs(abs(distance) - half_pad), abs(distance) + half_pad
    if abs(distance) <= half_pad:
        return 1 - (_cosine(near) + _cosine(far)) / 2
    return (_cosine(near) - _cosine(far)) / 2


def _echoes(distance: float, spacing: float) -> float:
    """exp(-x)·cos x summed over a distance and every spacing further, lengths in reaches."""
    if distance >= NEGLIGIBLE:
        return 0.0
    first = complex(_cosine(distance), -_sine(distance))
    return (first / (1 - complex(_cosine(spacing), -_sine(spacing)))).real


def endless_row(distance: float, spacing: float, half_pad: float) -> float:
    """Pressure at a distance from the middle of a pad in an endless even row, lengths in reaches.

    As a multiple of the pad's own pressure; at most half a spacing away. The pads to both sides
    add up as two geometric series. Source: ``HETENYI``.
    """
    total = under_pad(distance, half_pad)
    for away in (spacing - distance, spacing + distance):
        total += (_echoes(away - half_pad, spacing) - _echoes(away + half_pad, spacing)) / 2
    return total


def row_with_ends(
    length: float, centres: Sequence[float], half_pad: float
) -> Callable[[float], float]:
    """Pressure along a beam of free ends under pads that stand evenly about its middle.

    Lengths in reaches; the pads lie on the beam. Returns the pressure at a distance from the left
    end as a multiple of the pad's own. A force and a moment beyond each end take away the moment
    and the shear that the endless beam has there. Source: ``HETENYI``, end-conditioning forces.
    """
    moment = shear = 0.0  # of the endless beam at the left end
    for centre in centres:
        near, far = centre - half_pad, centre + half_pad
        moment += (_sine(far) - _sine(near)) / 4
        shear += (_cosine(near) - _sine(near) - _cosine(far) + _sine(far)) / 4
    cosine, sine = _cosine(length), _sine(length)
    # Moment: force·(1 + C)/4 + couple·(1 + D)/2; shear: -force·(1 - D)/2 - couple·(1 - A)/2.
    a, b = (1 + cosine - sine) / 4, (1 + cosine) / 2
    c, d = (1 - cosine) / 2, (1 - cosine - sine) / 2
    whole = a * d - b * c
    force = (-moment * d - b * shear) / whole
    couple = (a * shear + moment * c) / whole

    def pressure(place: float) -> float:
        total = sum(under_pad(place - centre, half_pad) for centre in centres)
        for far in (place, length - place):
            total += force * (_cosine(far) + _sine(far)) / 2 + couple * _sine(far)
        return total

    return pressure
