"""Vapour of solvents: how much a litre makes, and the limits of a mixture of vapours."""

from collections.abc import Sequence

from ..engine.declaration import Source
from .psychrometrics import ZERO_CELSIUS_K

IDEAL_GAS = Source(
    id="ideal-gas",
    title="The ideal gas law: a mole of vapour fills R·T/p",
    note="R = 8.314462618 J/(mol·K), fixed by the definition of the units (SI Brochure, 2019).",
)
LE_CHATELIER = Source(
    id="le-chatelier",
    title="Rule of mixtures for the lower explosive limit: 1/L = Σ y/L of the parts",
    author="Le Chatelier, H.",
    year="1891",
    note="Named from memory; the arithmetic is held against the chemicals library.",
)
ADDITIVE_LIMITS = Source(
    id="additive-limits",
    title="29 CFR 1910.1000(d)(2): exposures to a mixture add up, each over its own limit; the "
    "sum must not exceed 1",
    note="From memory; the rule has the form of the one above.",
)
MOLAR_GAS_CONSTANT = 8.314462618  # J/(mol·K)
AIR_MOLAR_MASS = 28.966  # g/mol, dry air


def vapour_volume_m3(
    litres: float,
    density_kg_m3: float,
    molar_mass_g_mol: float,
    temperature_c: float,
    pressure_pa: float,
) -> float:
    """Volume of the vapour, m³, of so many litres of liquid when all of it has gone.

    A litre of liquid weighs its density in grams, which over the molar mass is moles; each
    fills R·T/p. Source: the ideal gas law, good to 0.1 % for thin vapours.
    """
    moles = litres * density_kg_m3 / molar_mass_g_mol
    return moles * MOLAR_GAS_CONSTANT * (temperature_c + ZERO_CELSIUS_K) / pressure_pa


def mixture_limit(amounts: Sequence[float], limits: Sequence[float]) -> float:
    """Limit of a mixture, in the unit of the limits: the harmonic mean by amounts of vapour.

    It is Le Chatelier's rule for explosive limits, and what adding exposures over their limits
    comes to. Vapour amounts may be volumes or moles; their unit falls out.
    """
    return sum(amounts) / sum(
        amount / limit for amount, limit in zip(amounts, limits, strict=True) if amount > 0
    )
