"""Flow cups: kinematic viscosity from the seconds a cup takes to run out, and back again."""

import math
from typing import NamedTuple

from ..engine.declaration import Source

CUP_EQUATIONS = Source(
    id="cup-equations",
    title="Flow cups: ISO 2431 (3 to 6 mm), DIN 53211 (4 mm), ASTM D1200 (Ford), ASTM D4212 (Zahn)",
    author="ISO, DIN, ASTM",
    note="The standards themselves were not seen. Coefficients, ranges and worked examples read "
    "in a public table of them (conversion_calculators, 2024); for Ford and Zahn cups also on a "
    "stored page on calibration liquids, which agrees.",
)


class Cup(NamedTuple):
    """One cup: its equation and the seconds it is meant for.

    The viscosity in mm²/s is slope · t - drag / t - slope · dead, t in s: ISO and DIN cups have
    a drag (what the thread carries off as speed), Ford and Zahn cups a dead time instead.
    """

    words: str
    slope: float  # mm²/s for each s
    drag: float  # mm²
    dead: float  # s
    shortest_s: float
    longest_s: float


CUPS = {
    "ford4": Cup("Ford No. 4", 3.85, 0.0, 4.49, 20, 100),
    "ford3": Cup("Ford No. 3", 2.31, 0.0, 6.58, 20, 100),
    "ford2": Cup("Ford No. 2", 1.44, 0.0, 18.0, 40, 100),
    "iso3": Cup("ISO 2431, 3 mm", 0.443, 200.0, 0.0, 30, 100),
    "iso4": Cup("ISO 2431, 4 mm", 1.37, 200.0, 0.0, 30, 100),
    "iso5": Cup("ISO 2431, 5 mm", 3.28, 220.0, 0.0, 30, 100),
    "iso6": Cup("ISO 2431, 6 mm", 6.90, 570.0, 0.0, 30, 100),
    "din4": Cup("DIN 53211, 4 mm", 4.57, 452.0, 0.0, 25, 150),
    "zahn1": Cup("Zahn No. 1", 1.1, 0.0, 29.0, 35, 80),
    "zahn2": Cup("Zahn No. 2", 3.5, 0.0, 14.0, 20, 80),
    "zahn3": Cup("Zahn No. 3", 11.7, 0.0, 7.5, 20, 80),
}


def viscosity_mm2_s(cup: str, seconds: float) -> float:
    """Kinematic viscosity, mm²/s, of what runs out of a cup of ``CUPS`` in so many seconds.

    Good within the cup's range of seconds; below it the figure may come out at nought or less,
    which means that the cup cannot tell. Source: the equations named at ``CUP_EQUATIONS``.
    """
    c = CUPS[cup]
    return c.slope * (seconds - c.dead) - c.drag / seconds


def seconds_for(cup: str, viscosity: float) -> float:
    """Seconds, for a viscosity in mm²/s: the equation above solved for t (closed form)."""
    c = CUPS[cup]
    if c.drag:
        return (viscosity + math.sqrt(viscosity**2 + 4 * c.slope * c.drag)) / (2 * c.slope)
    return viscosity / c.slope + c.dead


def steepness(cup: str, seconds: float) -> float:
    """How the viscosity grows with the seconds there, mm²/s for each s (its derivative)."""
    c = CUPS[cup]
    return c.slope + c.drag / seconds**2
