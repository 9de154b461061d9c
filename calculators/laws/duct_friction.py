"""Pressure lost by air in round ducts: Darcy-Weisbach with Colebrook's friction factor."""

import math

from ..engine.declaration import Source

COLEBROOK = Source(
    id="colebrook",
    title="Turbulent flow in pipes, with particular reference to the transition region: "
    "1/√f = -2·log(ε/(3.7·D) + 2.51/(Re·√f))",
    author="Colebrook, C. F.",
    year="1939",
    note="With the Darcy-Weisbach equation; formulas from memory, held against the fluids library.",
)
LEAST_REYNOLDS = 4000.0


def first_guess(reynolds: float, relative_roughness: float) -> float:
    """Friction factor after Swamee and Jain (1976), within some 3 % of Colebrook's."""
    return float(0.25 / math.log10(relative_roughness / 3.7 + 5.74 / reynolds**0.9) ** 2)


def friction_factor(reynolds: float, relative_roughness: float) -> float:
    """Darcy friction factor of turbulent flow, Reynolds number at least 4000, roughness up to 0.1.

    Method: Newton's steps on Colebrook's equation for 1/√f from Swamee and Jain's guess, until a
    step is below 1e-12. Source: Colebrook (1939).
    """
    if reynolds < LEAST_REYNOLDS:
        raise ValueError(f"Reynolds number {reynolds:g} is below {LEAST_REYNOLDS:g}")
    root = 1 / math.sqrt(first_guess(reynolds, relative_roughness))
    for _ in range(20):
        inside = relative_roughness / 3.7 + 2.51 * root / reynolds
        miss = root + 2 * math.log10(inside)
        slope = 1 + 2 / math.log(10) * 2.51 / (reynolds * inside)
        root -= miss / slope
        if abs(miss) < 1e-12:
            break
    return 1 / root**2


def velocity_pressure_pa(density_kg_m3: float, velocity_m_s: float) -> float:
    """Pressure of motion, Pa: half the density times the velocity squared (Bernoulli)."""
    return density_kg_m3 * velocity_m_s**2 / 2


def straight_loss_pa(
    density_kg_m3: float,
    viscosity_m2_s: float,
    velocity_m_s: float,
    diameter_m: float,
    length_m: float,
    roughness_m: float,
) -> float:
    """Pressure lost in a straight round duct, Pa: f·L/D times the velocity pressure.

    Kinematic viscosity in m²/s, lengths in metres. Source: Darcy-Weisbach.
    """
    reynolds = velocity_m_s * diameter_m / viscosity_m2_s
    factor = friction_factor(reynolds, roughness_m / diameter_m)
    return factor * length_m / diameter_m * velocity_pressure_pa(density_kg_m3, velocity_m_s)
