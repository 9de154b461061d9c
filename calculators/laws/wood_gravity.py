"""How heavy woods are: specific gravities as printed, each on the basis it is printed on.

Specific gravity is ovendry mass over the mass of as much water as the wood takes up room: over its
green volume ("basic"), or over its volume at 12 % moisture, which is smaller. The two differ by 5
to 10 %. The formula texts carry ``gravity`` on the one basis to the other; names as in
``laws.wood_heat``.
"""

from typing import NamedTuple

from ..engine.declaration import Source
from ..engine.formula import parse
from .wood_heat import FIXED, GRAVITY

WOOD_HANDBOOK_GRAVITY = Source(
    id="wood-handbook-gravity",
    title="Wood handbook: wood as an engineering material (FPL-GTR-282), Tables 5-3b and 5-5b: "
    "specific gravity, green and at 12 %",
    author="USDA Forest Products Laboratory",
    year="2021",
    note="Means of a species, read in a public transcription; white ash in a worked example of "
    "chapter 4. Imported woods are printed over green volume alone.",
)
WALL_GRAVITY = 1.54  # of the cell wall without its pores


class Gravity(NamedTuple):
    """One wood: specific gravity over green volume and over volume at 12 %; None: not printed."""

    green: float | None
    at_twelve: float | None


WOODS = {
    "engelmann": Gravity(0.33, 0.35),
    "sitka": Gravity(0.37, 0.40),
    "white spruce": Gravity(None, 0.36),
    "redcedar": Gravity(0.31, 0.32),
    "port-orford": Gravity(None, 0.43),
    "mahogany": Gravity(0.45, None),
    "african mahogany": Gravity(0.42, None),
    "spanish-cedar": Gravity(0.41, None),
    "sapele": Gravity(0.55, None),
    "rosewood": Gravity(0.75, None),
    "sugar maple": Gravity(0.56, 0.63),
    "ash": Gravity(0.55, None),
    "red maple": Gravity(None, 0.54),
    "walnut": Gravity(None, 0.55),
}
NAMES = (
    ("engelmann", "Engelmann spruce"),
    ("sitka", "Sitka spruce"),
    ("white spruce", "White spruce"),
    ("redcedar", "Western red cedar"),
    ("port-orford", "Port Orford cedar"),
    ("mahogany", "Mahogany (Swietenia)"),
    ("african mahogany", "African mahogany (Khaya)"),
    ("spanish-cedar", "Spanish cedar"),
    ("sapele", "Sapele"),
    ("rosewood", "Indian rosewood"),
    ("sugar maple", "Sugar maple"),
    ("ash", "White ash"),
    ("red maple", "Red maple"),
    ("walnut", "Black walnut"),
)

# Over the volume at a moisture content (no more than fibre saturation), and back.
AT_MOISTURE = GRAVITY.replace("basic_gravity", "gravity_green").replace(
    "wood_moisture", "bound_moisture"
)
TO_GREEN = "gravity / (1 + 0.265 * gravity * (1 - moisture / fibre_saturation))"
MOST_MOISTURE = "(wall_gravity - gravity_green) / (wall_gravity * gravity_green) * whole"


def gravity_to_green(gravity: float, moisture: float) -> float:
    """Specific gravity over green volume from that over the volume at 0 to 30 % moisture.

    Source: Wood Handbook eq. (4-11) turned, average shrinkage, fibre saturation 30 %.
    """
    found: float = parse(TO_GREEN).evaluate({**FIXED, "gravity": gravity, "moisture": moisture})
    return found


def most_moisture_percent(gravity_green: float) -> float:
    """Moisture content, %, with every pore full of water. Source: Wood Handbook eq. (4-3)."""
    given = {**FIXED, "wall_gravity": WALL_GRAVITY, "gravity_green": gravity_green}
    found: float = parse(MOST_MOISTURE).evaluate(given)
    return found
