"""Water leaving a wet face: into the air, by the analogy of heat and mass, and into the wood."""

import math

from ..engine.declaration import Source
from .psychrometrics import VAPOUR_GAS_CONSTANT, ZERO_CELSIUS_K, saturation_pressure_pa

LEWIS_RELATION = Source(
    id="lewis-relation",
    title="Analogy of heat and mass transfer: Incropera et al., Fundamentals of Heat and Mass "
    "Transfer, eq. (6.60); vapour in air diffuses as in ASHRAE Fundamentals ch. 6, 0.926 T^2.5 / "
    "(p (T + 245)) mm²/s",
    author="Incropera, F. P. and others; Lewis, W. K. (1922)",
    year="2007",
    note="The books are named from memory. The Lewis number follows from that equation and the "
    "thermal diffusivity of air in CoolProp at 20 °C.",
)
STEFAN_FLOW = Source(
    id="stefan-flow",
    title="Transport Phenomena, 2nd ed., sec. 18.2: evaporation through a film of still air",
    author="Bird, R. B., Stewart, W. E. and Lightfoot, E. N.",
    year="2002",
    note="Named from memory; for small vapour pressures it is the plain difference of vapour "
    "densities.",
)
SORPTIVITY = Source(
    id="sorptivity",
    title="Water Transport in Brick, Stone and Concrete: uptake goes as sorptivity times the root "
    "of time; sorptivity goes as the root of free room and of one over viscosity",
    author="Hall, C. and Hoff, W. D.; Philip, J. R. (1957)",
    year="2012",
    note="Named from memory. That the free room in wood ends at fibre saturation, and that a "
    "glue's water follows the law at all, is our assumption.",
)
WATER_VISCOSITY = Source(
    id="iapws-viscosity",
    title="Revised supplementary release on properties of liquid water at 0.1 MPa, viscosity",
    author="IAPWS",
    year="2011",
    note="Coefficients from memory, checked against CoolProp 8.0.0: within 0.01 % from 5 to 60 °C.",
)
RADIATION = Source(
    id="radiation",
    title="Stefan-Boltzmann law, taken linear about the room's temperature: 4 ε σ T³",
    author="Any textbook of heat transfer; σ as in CODATA 2018",
)
STEFAN_BOLTZMANN_W_M2_K4 = 5.670374419e-8


def evaporation_kg_m2_s(
    face_c: float, air_c: float, vapour_pa: float, air_pressure_pa: float, mass_transfer_m_s: float
) -> float:
    """Water leaving a wet face, kg/(m²·s); below zero it condenses.

    The face gives off vapour like free water, so it must be wet. Range: a face below 90 °C and its
    vapour pressure below the air's pressure. Source: film theory with Stefan's logarithm.
    """
    mean_k = (face_c + air_c) / 2 + ZERO_CELSIUS_K
    at_face_pa = saturation_pressure_pa(face_c)
    drive = math.log((air_pressure_pa - vapour_pa) / (air_pressure_pa - at_face_pa))
    return mass_transfer_m_s * air_pressure_pa / (VAPOUR_GAS_CONSTANT * mean_k) * drive


def radiation_w_m2_k(temperature_c: float, emissivity: float) -> float:
    """Radiation as a film coefficient, W/(m²·K), for faces near the room's temperature."""
    return 4 * emissivity * STEFAN_BOLTZMANN_W_M2_K4 * (temperature_c + ZERO_CELSIUS_K) ** 3


def water_viscosity_pa_s(temperature_c: float) -> float:
    """Viscosity of liquid water, Pa·s, -20 to 110 °C. Source: IAPWS (2011), eq. (7)."""
    ratio = (temperature_c + ZERO_CELSIUS_K) / 300
    terms = ((280.68, -1.9), (511.45, -7.7), (61.131, -19.6), (0.45903, -40.0))
    return 1e-6 * math.fsum(factor * ratio**power for factor, power in terms)
