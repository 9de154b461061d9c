"""A string bent over nut and saddle: the way to its post, the angle, what presses, what sticks.

At the nut the axes are: ``forward`` along the head's face away from the nut, ``aside`` across it,
``fall`` square to it, downwards from the string in its slot. Millimetres, degrees, newtons.
"""

import math
from typing import NamedTuple

from ..engine.declaration import Source

RESULTANT = Source(
    id="resultant-of-two-pulls",
    title="Two equal pulls that meet at an angle: the resultant, 2T·sin(θ/2), halves the angle",
    author="Parallelogram of forces, in any school book of mechanics",
    note="Checked with mpmath as a sum of vectors.",
)
CAPSTAN = Source(
    id="capstan",
    title="A line sliding over a curved support: the pulls differ by the factor exp(µ·θ)",
    author="Euler, L., Remarques sur l'effet du frottement dans l'équilibre; Eytelwein, J. A., "
    "Handbuch der Statik fester Körper",
    year="1762, 1808",
    note="Both named from memory; checked with scipy by adding up dT = µ·T·dθ.",
)


class Way(NamedTuple):
    """From the string's place in the nut to where it meets its post or roller."""

    forward_mm: float
    aside_mm: float
    fall_mm: float

    @property
    def length_mm(self) -> float:
        """Length of the string between nut and post."""
        return math.sqrt(self.forward_mm**2 + self.aside_mm**2 + self.fall_mm**2)


def way_to_post(along_mm: float, aside_mm: float, reach_mm: float, fall_mm: float) -> Way:
    """The straight line that touches an upright post on its inner side, seen from above.

    ``reach_mm`` is the post's radius and half the string, smaller than the distance to the post's
    middle. The tangent is sqrt(along² + aside² - reach²) long and turns back from the post's
    middle by asin(reach/distance). Plane geometry.
    """
    distance_mm = math.hypot(along_mm, aside_mm)
    tangent_mm = math.sqrt(distance_mm**2 - reach_mm**2)
    turn = math.atan2(aside_mm, along_mm) - math.asin(reach_mm / distance_mm)
    return Way(tangent_mm * math.cos(turn), tangent_mm * math.sin(turn), fall_mm)


def way_to_roller(along_mm: float, aside_mm: float, reach_mm: float, depth_mm: float) -> Way:
    """The straight line over the top of a roller that lies across a slotted head.

    ``depth_mm`` is how far its axis lies below the string in the nut, square to the face.
    """
    distance_mm = math.hypot(along_mm, depth_mm)
    tangent_mm = math.sqrt(distance_mm**2 - reach_mm**2)
    turn = math.atan2(depth_mm, along_mm) - math.asin(reach_mm / distance_mm)
    return Way(tangent_mm * math.cos(turn), aside_mm, tangent_mm * math.sin(turn))


def down_angle_deg(way: Way, head_angle_deg: float) -> float:
    """Angle by which the string goes down behind the nut, seen from the side: it holds the slot.

    The head's own angle and the fall against its face.
    """
    return head_angle_deg + math.degrees(math.atan2(way.fall_mm, way.forward_mm))


def whole_angle_deg(way: Way, head_angle_deg: float) -> float:
    """Angle between the string before the nut and behind it, down and aside together."""
    head = math.radians(head_angle_deg)
    onward_mm = way.forward_mm * math.cos(head) - way.fall_mm * math.sin(head)
    return math.degrees(math.acos(max(-1.0, min(1.0, onward_mm / way.length_mm))))


def press_n(pull_n: float, angle_deg: float) -> float:
    """Force of a string on what bends it by an angle: 2T·sin(θ/2), no friction."""
    return 2 * pull_n * math.sin(math.radians(angle_deg) / 2)


def capstan_ratio(friction: float, angle_deg: float) -> float:
    """By how many times the pulls on both sides may differ before the string slides: exp(µ·θ)."""
    return math.exp(friction * math.radians(angle_deg))


def flat_after_bend_cents(length_share: float, capstan: float, tuned_down: bool) -> float:
    """How far a string may stay flat after a wide bend, because the nut holds it back; cents.

    The bend draws string over the nut into the sounding length. As it goes back, string slides
    home only while the head's pull is more than ``capstan`` times the sounding one, so at rest
    T_h = c·T. By Hooke, with the head's length λ times the scale and both ends held, a slip s
    changes the pulls by k·s and k·s/λ: from equal pulls T falls by λ(c - 1)/(1 + cλ) of itself;
    from a string last tuned down, whose head pulls only T/c, by λ(c - 1/c)/(1 + cλ). Pitch goes
    with the root of the pull. A string last tuned up has c·T behind the nut and comes home.
    A derivation of this project from the capstan equation.
    """
    spread = capstan - (1 / capstan if tuned_down else 1)
    lost = length_share * spread / (1 + capstan * length_share)
    return -600 * math.log2(1 - lost)
