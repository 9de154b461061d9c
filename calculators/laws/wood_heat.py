"""Heat in wood, from moisture content and specific gravity: the Wood Handbook's equations.

Each relation is one formula text. Calculators print and evaluate it as a step; the function of the
same name evaluates it for anyone else, so a page and a number cannot disagree. The names in the
texts are ``basic_gravity`` (ovendry mass over green volume), ``wood_gravity`` (over today's
volume), ``wood_moisture`` (% of ovendry mass), ``property_temperature`` (°C).
"""

from ..engine.declaration import Source
from ..engine.formula import parse

WOOD_HANDBOOK_HEAT = Source(
    id="wood-handbook-heat",
    title="Wood handbook: wood as an engineering material (FPL-GTR-190), chapter 4: density, eq. "
    "(4-11) and (4-12); conductivity across the grain, eq. (4-15); heat capacity, eq. (4-16a) to "
    "(4-18)",
    author="Glass, S. V. and Zelinka, S. L., USDA Forest Products Laboratory",
    year="2010",
    note="Read in public copies of the chapter. Conductivity may lie 20 % off for one piece of "
    "wood.",
)
FIBRE_SATURATION_PERCENT = 30.0
WATER_DENSITY_KG_M3 = 1000.0
WATER_HEAT_J_KG_K = 4180.0

GRAVITY = "basic_gravity / (1 - 0.265 * basic_gravity * (1 - wood_moisture / fibre_saturation))"
DENSITY = "water_density * wood_gravity * (1 + wood_moisture / whole)"
CONDUCTIVITY = "wood_gravity * (0.1941 + 0.004064 * wood_moisture) + 0.01864"
DRY_HEAT = "103.1 + 3.867 * (property_temperature + 273.15)"
BOUND_WATER_HEAT = (
    "1000 * wood_moisture * (-0.06191 + 0.000236 * (property_temperature + 273.15) "
    "- 0.000133 * wood_moisture)"
)
HEAT_CAPACITY = (
    "(dry_wood_heat + water_heat * wood_moisture / whole) / (1 + wood_moisture / whole) "
    "+ bound_water_heat"
)
FIXED = {
    "fibre_saturation": FIBRE_SATURATION_PERCENT,
    "water_density": WATER_DENSITY_KG_M3,
    "water_heat": WATER_HEAT_J_KG_K,
    "whole": 100.0,
}


def _work_out(formula: str, **given: float) -> float:
    value: float = parse(formula).evaluate({**FIXED, **given})
    return value


def gravity(basic_gravity: float, wood_moisture: float) -> float:
    """Specific gravity, ovendry mass over volume at a moisture content of 0 to 30 %.

    Source: Wood Handbook eq. (4-11), average shrinkage, fibre saturation taken as 30 %.
    """
    return _work_out(GRAVITY, basic_gravity=basic_gravity, wood_moisture=wood_moisture)


def density_kg_m3(wood_gravity: float, wood_moisture: float) -> float:
    """Density with its water, kg/m³. Source: Wood Handbook eq. (4-12)."""
    return _work_out(DENSITY, wood_gravity=wood_gravity, wood_moisture=wood_moisture)


def conductivity_w_m_k(wood_gravity: float, wood_moisture: float) -> float:
    """Conductivity across the grain, W/(m·K), at about 24 °C.

    For a specific gravity above 0.3 and a moisture content below 25 %; along the grain it is 1.5
    to 2.8 times as much. Source: Wood Handbook eq. (4-15).
    """
    return _work_out(CONDUCTIVITY, wood_gravity=wood_gravity, wood_moisture=wood_moisture)


def heat_capacity_j_kg_k(wood_moisture: float, property_temperature: float) -> float:
    """Heat capacity of moist wood, J/(kg·K), at 7 to 147 °C below fibre saturation.

    Source: Wood Handbook eq. (4-16a), (4-17) and (4-18).
    """
    given = {"wood_moisture": wood_moisture, "property_temperature": property_temperature}
    dry = _work_out(DRY_HEAT, **given)
    bound = _work_out(BOUND_WATER_HEAT, **given)
    return _work_out(HEAT_CAPACITY, dry_wood_heat=dry, bound_water_heat=bound, **given)
