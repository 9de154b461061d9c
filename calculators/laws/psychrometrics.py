"""Moist air: vapour pressures, humidity ratio, density, heat, and the heat it takes to evaporate.

Pressures in pascal, temperatures in degrees Celsius, humidity in percent.
"""

import math

from ..engine.declaration import Source

ASHRAE = Source(
    id="ashrae-psychrometrics",
    title="ASHRAE Handbook: Fundamentals, chapter 1, Psychrometrics (saturation pressure after "
    "Hyland and Wexler)",
    author="ASHRAE",
    year="2017",
    note="Equations (6), (20), (26) and (30), and the heat of evaporation of (33). Coefficients "
    "as in the PsychroLib library.",
)
ZERO_CELSIUS_K = 273.15
DRY_AIR_GAS_CONSTANT = 287.042  # J/(kg·K)
VAPOUR_GAS_CONSTANT = 461.524  # J/(kg·K), 8314.462/18.015268
MASS_RATIO = 0.621945  # water to dry air, molecule for molecule


def saturation_pressure_pa(temperature_c: float) -> float:
    """Vapour pressure over liquid water, Pa, at a temperature in °C.

    Range 0 to 200 °C; a few degrees below zero it stands for supercooled water.
    Source: Hyland and Wexler (1983) as ASHRAE Fundamentals 2017, ch. 1, eq. (6).
    """
    kelvin = temperature_c + ZERO_CELSIUS_K
    return math.exp(
        -5.8002206e3 / kelvin + 1.3914993 - 4.8640239e-2 * kelvin + 4.1764768e-5 * kelvin**2
        - 1.4452093e-8 * kelvin**3 + 6.5459673 * math.log(kelvin)
    )  # fmt: skip


def vapour_pressure_pa(temperature_c: float, humidity_percent: float) -> float:
    """Pressure of the vapour in air of a relative humidity, Pa (the definition of it)."""
    return humidity_percent / 100 * saturation_pressure_pa(temperature_c)


def humidity_ratio(vapour_pa: float, air_pressure_pa: float) -> float:
    """Kilograms of vapour to a kilogram of dry air. Source: ASHRAE ch. 1, eq. (20)."""
    return MASS_RATIO * vapour_pa / (air_pressure_pa - vapour_pa)


def dry_air_volume_m3_kg(temperature_c: float, ratio: float, air_pressure_pa: float) -> float:
    """Volume of moist air to a kilogram of dry air, m³/kg. Source: ASHRAE ch. 1, eq. (26)."""
    kelvin = temperature_c + ZERO_CELSIUS_K
    return DRY_AIR_GAS_CONSTANT * kelvin * (1 + 1.607858 * ratio) / air_pressure_pa


def moist_air_heat_j_kg_k(ratio: float) -> float:
    """Heat capacity of moist air, J/(kg·K) of the mixture. Source: ASHRAE ch. 1, eq. (30)."""
    return (1006 + 1860 * ratio) / (1 + ratio)


def evaporation_heat_j_kg(temperature_c: float) -> float:
    """Heat that evaporates a kilogram of water, J/kg, 0 to 70 °C. Source: ASHRAE eq. (33)."""
    return 2.501e6 - 2326 * temperature_c
