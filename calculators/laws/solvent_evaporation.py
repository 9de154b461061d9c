"""Solvents that leave a wet film: vapour pressure, diffusion, flux, and the chill of it."""

import math
from collections.abc import Mapping
from typing import NamedTuple

from ..engine.declaration import Source
from .psychrometrics import ZERO_CELSIUS_K, moist_air_heat_j_kg_k
from .solvent_vapour import AIR_MOLAR_MASS, MOLAR_GAS_CONSTANT
from .standard_air import SEA_PRESSURE_PA, air_viscosity_pa_s, moist_air_density_kg_m3

SOLVENT_DATA = Source(
    id="solvent-data",
    title="Vapour pressures at 5 and 25 °C, heats of evaporation and densities at 20 °C of solvents",
    kind="library",
    note="thermo 0.6.1 and chemicals 1.5.2, their recommended correlations (equations of state, "
    "Wagner, Perry). Between the two pressures ln p is taken as straight in 1/T.",
)
FULLER = Source(
    id="fuller",
    title="A new method for prediction of binary gas-phase diffusion coefficients",
    author="Fuller, E. N., Schettler, P. D., and Giddings, J. C., Industrial and Engineering "
    "Chemistry 58, 18-27",
    year="1966",
    note="The form was read in public source text; the revised diffusion volumes (Poling et al., "
    "The Properties of Gases and Liquids, table 11-1) are from memory. Good to some 10 %.",
)
CHILTON_COLBURN = Source(
    id="chilton-colburn",
    title="Mass transfer (absorption) coefficients: prediction from data on heat transfer and "
    "fluid friction",
    author="Chilton, T. H., and Colburn, A. P., Industrial and Engineering Chemistry 26, 1183",
    year="1934",
    note="Named from memory: heat coefficient over mass coefficient is ρ·c·Le^(2/3). Also the "
    "laminar plate, Nu = 0.664·Re^0.5·Pr^(1/3), after Pohlhausen; held against the ht library.",
)
STEFAN_BOLTZMANN = 5.670374419e-8  # W/(m²·K⁴)
AIR_DIFFUSION_VOLUME = 19.7
LOW_C, HIGH_C = 5.0, 25.0  # where the two vapour pressures are given
COLDEST_SOUGHT_C = -60.0


class Solvent(NamedTuple):
    """One solvent: what is published about it. The diffusion volume is Fuller's."""

    words: str
    molar_mass_g_mol: float
    density_kg_m3: float
    pressure_5_pa: float
    pressure_25_pa: float
    heat_j_kg: float
    diffusion_volume: float


def diffusion_volume(carbon: int, hydrogen: int, oxygen: int, rings: int = 0) -> float:
    """Fuller's diffusion volume of a molecule, from its atoms (and aromatic rings)."""
    return 15.9 * carbon + 2.31 * hydrogen + 6.11 * oxygen - 18.3 * rings


SOLVENTS = {
    "acetone": Solvent("acetone", 58.079, 790.3, 12052.6, 30727.1, 539224,
                       diffusion_volume(3, 6, 1)),
    "butanone": Solvent("butanone (MEK)", 72.106, 804.9, 4325.6, 12090.9, 483758,
                        diffusion_volume(4, 8, 1)),
    "ethyl acetate": Solvent("ethyl acetate", 88.105, 899.5, 4404.5, 12614.2, 408199,
                             diffusion_volume(4, 8, 2)),
    "ethanol": Solvent("ethanol", 46.068, 789.4, 2261.2, 7885.4, 926008,
                       diffusion_volume(2, 6, 1)),
    "isopropanol": Solvent("isopropanol", 60.095, 786.7, 1494.5, 5779.9, 769289,
                           diffusion_volume(3, 8, 1)),
    "toluene": Solvent("toluene", 92.138, 866.9, 1236.5, 3799.3, 415809,
                       diffusion_volume(7, 8, 0, 1)),
    "butyl acetate": Solvent("butyl acetate", 116.158, 880.9, 488.7, 1618.8, 380408,
                             diffusion_volume(6, 12, 2)),
    "butanol": Solvent("butanol", 74.122, 808.2, 193.9, 909.5, 729116,
                       diffusion_volume(4, 10, 1)),
    "xylene": Solvent("xylene", 106.165, 864.2, 317.9, 1117.3, 404902,
                      diffusion_volume(8, 10, 0, 1)),
    "butyl glycol": Solvent("butyl glycol (2-butoxyethanol)", 118.174, 966.8, 21.2, 114.5, 457159,
                            diffusion_volume(6, 14, 2)),
}  # fmt: skip


def vapour_pressure_of_pa(solvent: Solvent, temperature_c: float) -> float:
    """Vapour pressure of a pure solvent, Pa, some -10 to 40 °C.

    ln p straight in 1/T through the two published values (Clausius and Clapeyron); within 1 % of
    the full correlations from 5 to 25 °C.
    """
    low, high = LOW_C + ZERO_CELSIUS_K, HIGH_C + ZERO_CELSIUS_K
    slope = math.log(solvent.pressure_25_pa / solvent.pressure_5_pa) / (1 / low - 1 / high)
    steps = 1 / low - 1 / (temperature_c + ZERO_CELSIUS_K)
    return solvent.pressure_5_pa * math.exp(slope * steps)


def diffusivity_in_air_m2_s(molar_mass_g_mol: float, volume: float, temperature_c: float) -> float:
    """Diffusion coefficient of a vapour in air at sea level, m²/s. Source: Fuller et al.

    D = 1.43e-7·T^1.75/(p·√M·(v^⅓ + v_air^⅓)²), p in bar, M the harmonic mean of both molar masses.
    """
    kelvin = temperature_c + ZERO_CELSIUS_K
    mass = 2 / (1 / molar_mass_g_mol + 1 / AIR_MOLAR_MASS)
    reach: float = volume ** (1 / 3) + AIR_DIFFUSION_VOLUME ** (1 / 3)
    warmth: float = kelvin**1.75
    return 1.43e-7 * warmth / (SEA_PRESSURE_PA / 1e5 * math.sqrt(mass) * reach**2)


def air_conductivity_w_m_k(temperature_c: float) -> float:
    """Conductivity of air, W/(m·K): 0.02436 at 0 °C, with T^0.848; 1 % good from -20 to 60 °C.

    A power law laid through CoolProp's figures at 0 and 40 °C.
    """
    kelvin = temperature_c + ZERO_CELSIUS_K
    return float(0.02436 * (kelvin / ZERO_CELSIUS_K) ** 0.848)


class Air(NamedTuple):
    """Air as the film meets it: density, heat capacity, diffusivity of heat, coefficient."""

    temperature_c: float
    heat_j_m3_k: float
    thermal_m2_s: float
    plate_w_m2_k: float


def air_along(temperature_c: float, speed_m_s: float, length_m: float) -> Air:
    """Dry air at sea level that draws along a flat plate, and its mean heat coefficient.

    Laminar: Nu = 0.664·Re^0.5·Pr^(1/3), Re below 5e5 (Pohlhausen; Incropera eq. 7.30, named from
    memory). Eddies in the room raise it.
    """
    density = moist_air_density_kg_m3(temperature_c, 0.0, SEA_PRESSURE_PA)
    heat = density * moist_air_heat_j_kg_k(0.0)
    conductivity = air_conductivity_w_m_k(temperature_c)
    thermal = conductivity / heat
    kinematic = air_viscosity_pa_s(temperature_c) / density
    nusselt = 0.664 * math.sqrt(speed_m_s * length_m / kinematic) * (kinematic / thermal) ** (1 / 3)
    return Air(temperature_c, heat, thermal, nusselt * conductivity / length_m)


class Leaving(NamedTuple):
    """One solvent as it leaves: mole flux for each Pa, and heat for each mole."""

    solvent: Solvent
    mol_m2_s_k_pa: float  # times Pa, over the kelvin of the boundary layer: mol/(m²·s)
    heat_j_mol: float


def leaving(solvent: Solvent, air: Air) -> Leaving:
    """How fast a solvent can leave into air: h/(ρ·c·Le^(2/3)·R), after Chilton and Colburn.

    Le is the diffusivity of heat over that of the vapour. No vapour in the free air, thin vapour
    (no correction for the wind of the vapour itself).
    """
    spread = diffusivity_in_air_m2_s(
        solvent.molar_mass_g_mol, solvent.diffusion_volume, air.temperature_c
    )
    lewis = air.thermal_m2_s / spread
    speed = air.plate_w_m2_k / (air.heat_j_m3_k * lewis ** (2 / 3))
    return Leaving(
        solvent, speed / MOLAR_GAS_CONSTANT, solvent.heat_j_kg * solvent.molar_mass_g_mol / 1000
    )


def fluxes_mol_m2_s(
    parts: Mapping[Leaving, float], air_c: float, film_c: float, share: float
) -> list[float]:
    """Mole flux of each solvent of a mix, mol/(m²·s), from a film at ``film_c`` into air.

    ``parts`` maps each to its moles (ideal mix, Raoult's law), ``share`` is how much of that
    really leaves (1: all). The boundary layer stands midway between film and air.
    """
    whole = sum(parts.values())
    if whole <= 0:
        return [0.0] * len(parts)
    middle = (air_c + film_c) / 2 + ZERO_CELSIUS_K
    return [
        share * part.mol_m2_s_k_pa * vapour_pressure_of_pa(part.solvent, film_c)
        * moles / whole / middle
        for part, moles in parts.items()
    ]  # fmt: skip


def wet_bulb_c(parts: Mapping[Leaving, float], air: Air, share: float) -> float:
    """Where evaporation and the air's warmth balance, °C: the wet bulb of a mix of solvents.

    h·(T_air - T) = Σ flux·heat; no warmth from the wood, none by radiation. The speed of the air
    falls out. Method: bisection, the left side falls and the right one grows with T.
    """
    low, high = COLDEST_SOUGHT_C, air.temperature_c
    for _ in range(60):
        middle = (low + high) / 2
        fluxes = fluxes_mol_m2_s(parts, air.temperature_c, middle, share)
        heat = sum(f * part.heat_j_mol for f, part in zip(fluxes, parts, strict=True))
        if air.plate_w_m2_k * (air.temperature_c - middle) > heat:
            low = middle
        else:
            high = middle
    return (low + high) / 2
