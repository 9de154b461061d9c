"""Air at a height, a warmth and a dampness: its pressure, its density, its viscosity."""

from ..engine.declaration import Source
from .psychrometrics import (
    ZERO_CELSIUS_K,
    dry_air_volume_m3_kg,
    humidity_ratio,
    vapour_pressure_pa,
)

STANDARD_ATMOSPHERE = Source(
    id="standard-atmosphere",
    title="ASHRAE Handbook: Fundamentals, chapter 1: pressure of the standard atmosphere",
    author="ASHRAE",
    year="2017",
    note="Equation (3), from memory; held against PsychroLib's figures.",
)
SEA_PRESSURE_PA = 101325.0
HEIGHT_FALL_PER_M = 2.25577e-5
HEIGHT_EXPONENT = 5.2559


def standard_pressure_pa(height_m: float) -> float:
    """Pressure of the standard atmosphere, Pa, at a height above the sea in metres.

    Range -5000 to 11000 m. Source: ASHRAE Fundamentals 2017, ch. 1, eq. (3).
    """
    return SEA_PRESSURE_PA * float((1 - HEIGHT_FALL_PER_M * height_m) ** HEIGHT_EXPONENT)


def moist_air_density_kg_m3(
    temperature_c: float, humidity_percent: float, air_pressure_pa: float
) -> float:
    """Mass of a cubic metre of moist air, kg/m³. Source: ASHRAE ch. 1, eq. (11), (20), (26)."""
    ratio = humidity_ratio(vapour_pressure_pa(temperature_c, humidity_percent), air_pressure_pa)
    return (1 + ratio) / dry_air_volume_m3_kg(temperature_c, ratio, air_pressure_pa)


def air_viscosity_pa_s(temperature_c: float) -> float:
    """Dynamic viscosity of air, Pa·s, at a temperature in °C, good to 1 % from -20 to 60 °C.

    Method: Sutherland's law, 1.716e-5 Pa·s at 273.15 K with a constant of 110.4 K.
    Source: White, F. M., Viscous Fluid Flow, table 1-2 (from memory); held against CoolProp.
    """
    kelvin = temperature_c + ZERO_CELSIUS_K
    share = kelvin / ZERO_CELSIUS_K
    return float(1.716e-5 * share**1.5 * (ZERO_CELSIUS_K + 110.4) / (kelvin + 110.4))
