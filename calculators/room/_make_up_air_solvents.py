"""The solvents that the calculator of dilution air knows, and what is published about them."""

from typing import NamedTuple

from ..engine.declaration import Refusal, Source
from ..laws.solvent_vapour import AIR_MOLAR_MASS, mixture_limit, vapour_volume_m3

LIMITS = Source(
    id="published-limits",
    title="Lower explosive limits of NFPA 497 (2008) and IEC 60079-20-1 (2010); exposure limits "
    "of OSHA, NIOSH and ACGIH",
    note="Explosive limits as tabulated by the chemicals 1.5.2 library; where they differ, the "
    "lower is used. Exposure limits for 8 h read in stored copies of osha.gov, cdc.gov and data "
    "sheets; the lowest of those read is used. Later or local limits may be lower.",
)


class Solvent(NamedTuple):
    """One solvent: liquid density at 20 °C, molar mass, explosive limits, exposure limit."""

    name: str
    words: str
    density_kg_m3: float
    molar_mass_g_mol: float
    lfl_nfpa_percent: float
    lfl_iec_percent: float
    limit_ppm: float
    whose: str  # whose exposure limit it is


# Densities: CoolProp 8.0.0 (toluene, acetone, ethanol) and thermo 0.6.1 (the others).
SOLVENTS = (
    Solvent("butyl_acetate", "n-Butyl acetate", 881.0, 116.158, 1.7, 1.2, 50, "ACGIH, later list"),
    Solvent("toluene", "Toluene", 866.9, 92.138, 1.1, 1.0, 100, "NIOSH"),
    Solvent("acetone", "Acetone", 790.3, 58.079, 2.5, 2.5, 250, "NIOSH"),
    Solvent("isopropyl_alcohol", "Isopropyl alcohol", 786.7, 60.095, 2.0, 2.0, 400, "NIOSH, OSHA"),
    Solvent("ethyl_acetate", "Ethyl acetate", 899.6, 88.105, 2.0, 2.0, 400, "NIOSH, OSHA"),
    Solvent("ethanol", "Ethanol", 789.4, 46.068, 3.3, 3.1, 1000, "NIOSH, OSHA"),
    Solvent("methyl_ethyl_ketone", "Methyl ethyl ketone", 805.0, 72.106, 1.4, 1.5, 200,
            "NIOSH, OSHA, ACGIH"),
)  # fmt: skip


def mix_of_vapours(
    butyl_acetate: float,
    toluene: float,
    acetone: float,
    isopropyl_alcohol: float,
    ethyl_acetate: float,
    ethanol: float,
    methyl_ethyl_ketone: float,
    other_solvent: float,
    other_density: float,
    other_molar_mass: float,
    other_lfl: float,
    other_limit: float,
    evaporated: float,
    room_temperature: float,
    air_pressure: float,
) -> dict[str, object]:
    """Vapour an hour of all solvents together, and the limits of their mixture.

    Solvents in L/h, ``evaporated`` in % of them, temperature in °C, pressure in Pa, the other
    solvent's density in kg/m³, molar mass in g/mol, limits in % and ppm. Gives the liquid in
    L/h, the vapour in m³/h, the mixture's explosive limit in %, its exposure limit in ppm, its
    weight as a multiple of air's, and a row for each solvent in it.
    """
    litres = (
        butyl_acetate, toluene, acetone, isopropyl_alcohol, ethyl_acetate, ethanol,
        methyl_ethyl_ketone, other_solvent,
    )  # fmt: skip
    other = Solvent(
        "other_solvent", "The other solvent", other_density, other_molar_mass, other_lfl,
        other_lfl, other_limit, "as entered",
    )  # fmt: skip
    if sum(litres) <= 0:
        raise Refusal(
            "butyl_acetate",
            "No solvent goes into the air; put the litres an hour of at least one of them",
            "more than 0 L/h of one solvent or several",
        )
    present = [
        (one, litre) for one, litre in zip((*SOLVENTS, other), litres, strict=True) if litre > 0
    ]
    amounts = [
        vapour_volume_m3(
            litre * evaporated / 100,
            one.density_kg_m3,
            one.molar_mass_g_mol,
            room_temperature,
            air_pressure,
        )
        for one, litre in present
    ]
    rows = [
        {
            "solvent": one.words,
            "liquid": litre,
            "vapour": vapour,
            "lfl_nfpa": one.lfl_nfpa_percent,
            "lfl_iec": one.lfl_iec_percent,
            "limit": one.limit_ppm,
            "whose": one.whose,
        }
        for (one, litre), vapour in zip(present, amounts, strict=True)
    ]
    lowest = [min(one.lfl_nfpa_percent, one.lfl_iec_percent) for one, _ in present]
    masses = [one.molar_mass_g_mol for one, _ in present]
    vapour_rate = sum(amounts)
    mass_sum = sum(amount * mass for amount, mass in zip(amounts, masses, strict=True))
    return {
        "solvent_rows": rows,
        "liquid_rate": float(sum(litres)),
        "vapour_rate": vapour_rate,
        "mix_lfl": mixture_limit(amounts, lowest),
        "mix_limit": mixture_limit(amounts, [one.limit_ppm for one, _ in present]),
        "weight_to_air": mass_sum / vapour_rate / AIR_MOLAR_MASS,
    }
