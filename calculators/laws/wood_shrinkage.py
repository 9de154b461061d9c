"""How far wood moves across its grain: the Wood Handbook's shrinkages and equations.

Each relation is one formula text; calculators print and evaluate it as a step. The names in the
texts are ``shrinkage`` (%, green to ovendry, in the direction asked), ``first_moisture`` and
``later_moisture`` (%), ``fibre_saturation`` (30 %), ``whole`` (100 %), ``one`` (1 %) and
``table_middle`` (10 %).
"""

from typing import NamedTuple

from ..engine.declaration import Source
from ..engine.formula import parse

WOOD_HANDBOOK_SHRINKAGE = Source(
    id="wood-handbook-shrinkage",
    title="Wood handbook: wood as an engineering material, Tables 4-3 and 4-4: shrinkage of woods "
    "from green to ovendry",
    author="USDA Forest Products Laboratory",
    year="2010",
    note="Means of a species. Read in public copies, save the woods that say so: those are from "
    "memory.",
)
WOOD_HANDBOOK_MOVEMENT = Source(
    id="wood-handbook-movement",
    title="Wood handbook: wood as an engineering material, chapter 13: change in dimension, eq. "
    "(13-2) by coefficients for 6 to 14 % and eq. (13-3) for any moisture below fibre saturation",
    author="Bergman, R., USDA Forest Products Laboratory",
    year="2010",
    note="Eq. (13-3) as remembered; with it the shrinkages give the coefficients that were read "
    "in Table 13-5 to the last printed digit.",
)
FIBRE_SATURATION_PERCENT = 30.0
TABLE_MIDDLE_PERCENT = 10.0  # the moisture about which the table's coefficients were worked out


class Shrinkage(NamedTuple):
    """One wood: shrinkage from green to ovendry, %, along the rays and along the rings.

    ``origin`` is "read" where the figures were seen in a copy of the table, "coefficients" where
    the coefficients of Table 13-5 were and these shrinkages give them, "memory" where neither.
    """

    radial_percent: float
    tangential_percent: float
    origin: str


WOODS = {
    "engelmann": Shrinkage(3.8, 7.1, "read"),
    "sitka": Shrinkage(4.3, 7.5, "memory"),
    "redcedar": Shrinkage(2.4, 5.0, "read"),
    "port-orford": Shrinkage(4.6, 6.9, "read"),
    "mahogany": Shrinkage(3.0, 4.1, "read"),
    "spanish-cedar": Shrinkage(4.2, 6.3, "memory"),
    "rosewood": Shrinkage(2.7, 5.8, "memory"),
    "sugar maple": Shrinkage(4.8, 9.9, "read"),
    "bigleaf maple": Shrinkage(3.7, 7.1, "coefficients"),
    "walnut": Shrinkage(5.5, 7.8, "read"),
    "cherry": Shrinkage(3.7, 7.1, "read"),
    "birch": Shrinkage(7.3, 9.5, "read"),
    "basswood": Shrinkage(6.6, 9.3, "read"),
    "alder": Shrinkage(4.4, 7.3, "read"),
    "ash": Shrinkage(4.9, 7.8, "read"),
}
NAMES = (
    ("engelmann", "Engelmann spruce"),
    ("sitka", "Sitka spruce (from memory)"),
    ("redcedar", "Western red cedar"),
    ("port-orford", "Port Orford cedar"),
    ("mahogany", "Mahogany (Swietenia)"),
    ("spanish-cedar", "Spanish cedar (from memory)"),
    ("rosewood", "Indian rosewood (from memory)"),
    ("sugar maple", "Sugar maple"),
    ("bigleaf maple", "Bigleaf maple"),
    ("walnut", "Black walnut"),
    ("cherry", "Black cherry"),
    ("birch", "Yellow birch"),
    ("basswood", "Basswood"),
    ("alder", "Red alder"),
    ("ash", "White ash"),
)

STRAIN = (
    "(later_moisture - first_moisture) "
    "/ (fibre_saturation * whole / shrinkage - fibre_saturation + first_moisture) * whole"
)
COEFFICIENT = "one / (fibre_saturation * whole / shrinkage - fibre_saturation + table_middle)"
FROM_GREEN = "shrinkage * (1 - later_moisture / fibre_saturation)"
FIXED = {
    "fibre_saturation": FIBRE_SATURATION_PERCENT, "whole": 100.0, "one": 1.0,
    "table_middle": TABLE_MIDDLE_PERCENT,
}  # fmt: skip


def _work_out(formula: str, **given: float) -> float:
    value: float = parse(formula).evaluate({**FIXED, **given})
    return value


def movement_percent(shrinkage: float, first_moisture: float, later_moisture: float) -> float:
    """Change across the grain, % of the width at the first moisture; swelling is above zero.

    For moisture contents of 0 to 30 %. Source: Wood Handbook eq. (13-3), fibre saturation 30 %.
    """
    return _work_out(
        STRAIN, shrinkage=shrinkage, first_moisture=first_moisture, later_moisture=later_moisture
    )


def coefficient(shrinkage: float) -> float:
    """Change of width for 1 % of moisture, as a share: the coefficients of Table 13-5.

    For 6 to 14 %. Source: eq. (13-3) about 10 %, which is how the table was made.
    """
    return _work_out(COEFFICIENT, shrinkage=shrinkage)


def shrinkage_from_green_percent(shrinkage: float, moisture: float) -> float:
    """Shrinkage, %, from green to a moisture content of 0 to 30 %. Source: eq. (4-9)."""
    return _work_out(FROM_GREEN, shrinkage=shrinkage, later_moisture=moisture)
