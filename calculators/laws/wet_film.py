"""A wet film of lacquer that cools as its solvents leave, on wood that warms it from below.

The film is thin enough to be of one temperature; the wood below is cut into cells, fine towards
the film. Units: m, s, °C (differences in K), W/m², mol/m².
"""

import math
from collections.abc import Mapping, Sequence
from itertools import pairwise
from typing import NamedTuple

from .conduction import graded_cells
from .psychrometrics import ZERO_CELSIUS_K
from .solvent_evaporation import (
    STEFAN_BOLTZMANN,
    Air,
    Leaving,
    vapour_pressure_of_pa,
)

FILM_HEAT_J_M3_K = 1.7e6  # wet lacquer: some 900 kg/m³ and 1900 J/(kg·K), from memory
EMISSIVITY = 0.9  # of lacquer and of walls, from memory
BACK_W_M2_K = 5.0  # still air in the box, behind the plate, from memory
FINEST_M, GROWTH = 1.5e-4, 1.7
FIRST_STEP_S, STEP_GROWTH, LONGEST_STEP_S = 0.1, 1.12, 8.0
GEL_SHARE = 0.4  # of the solvent: less, and the film no longer evaporates like a liquid


class Moment(NamedTuple):
    """The film at one time: its temperature and the share of the solvent's volume left."""

    time_s: float
    film_c: float
    left: float


class _Part(NamedTuple):
    """A solvent reduced to the figures that the march needs."""

    flux: float  # times exp(-fall/T) over the kelvin of the boundary layer: mol/(m²·s)
    fall_k: float
    heat_j_mol: float
    litre_m3_mol: float


def _reduced(part: Leaving, share: float) -> _Part:
    """Vapour pressure as exp(a - b/T): ``vapour_pressure_of_pa`` taken at two temperatures."""
    one, two = ZERO_CELSIUS_K, ZERO_CELSIUS_K + 20
    ratio = vapour_pressure_of_pa(part.solvent, 20) / vapour_pressure_of_pa(part.solvent, 0)
    fall = math.log(ratio) / (1 / one - 1 / two)
    top = vapour_pressure_of_pa(part.solvent, 0) * math.exp(fall / one)
    volume = part.solvent.molar_mass_g_mol / 1000 / part.solvent.density_kg_m3
    return _Part(part.mol_m2_s_k_pa * top * share, fall, part.heat_j_mol, volume)


def chill(
    parts: Mapping[Leaving, float], air: Air, film_m: float, film_c: float,
    wood: tuple[float, float], wood_m: float, wood_c: float, share: float, until_s: float,
) -> list[Moment]:  # fmt: skip
    """The history of a wet film ``film_m`` thick from the moment that it lies, at ``film_c``.

    ``parts`` are its solvents in mol/m² (ideal mix), ``share`` how much of the ideal evaporation
    there is, ``wood`` conductivity, W/(m·K), and heat, J/(m³·K), of a plate ``wood_m`` thick that
    begins at ``wood_c`` and has air of that temperature behind it. Ends at ``until_s`` or where
    ``GEL_SHARE`` of the solvent's volume is left.

    Warmth comes from the air (laminar plate), from the walls (radiation, at the air's
    temperature) and from the wood; evaporation carries it off. Method: finite volumes, backward
    Euler, evaporation and radiation made straight about the film's last temperature; each
    solvent falls exponentially within a step. Steps grow by an eighth, up to 8 s. Held against
    ``laws.conduction.march`` and scipy.
    """
    solvents = [_reduced(part, share) for part in parts]
    moles = list(parts.values())
    start = sum(n * s.litre_m3_mol for n, s in zip(moles, solvents, strict=True))
    cells = graded_cells(wood_m, FINEST_M, GROWTH, *wood)
    halves = [w / (2 * k) for w, k in zip(cells.widths_m, cells.conductivities_w_m_k, strict=True)]
    links = [1 / (a + b) for a, b in pairwise(halves)] + [1 / halves[-1]]
    back = 1 / (halves[0] + 1 / BACK_W_M2_K)
    stores = [w * c for w, c in zip(cells.widths_m, cells.heats_j_m3_k, strict=True)]
    below = [wood_c] * len(stores)
    film_store = film_m * FILM_HEAT_J_M3_K
    air_k = air.temperature_c + ZERO_CELSIUS_K
    shine = EMISSIVITY * STEFAN_BOLTZMANN
    time, step = 0.0, FIRST_STEP_S
    history = [Moment(0.0, film_c, 1.0)]
    while time < until_s:
        step = min(step, until_s - time) if until_s - time > 1e-6 else step
        # Heat out of the film, and how it grows with the film's temperature.
        kelvin = film_c + ZERO_CELSIUS_K
        whole = sum(moles)
        out = air.plate_w_m2_k * (film_c - air.temperature_c) + shine * (kelvin**4 - air_k**4)
        slope = air.plate_w_m2_k + 4 * shine * kelvin**3
        going = []
        for n, s in zip(moles, solvents, strict=True):
            flux = s.flux * math.exp(-s.fall_k / kelvin) * n / whole * 2 / (air_k + kelvin)
            going.append(flux)
            out += flux * s.heat_j_mol
            slope += flux * s.heat_j_mol * s.fall_k / kelvin**2
        warmth = film_store / step * film_c + slope * film_c - out
        film_c, below = _step(stores, links, back, below, wood_c, step, film_store / step + slope,
                              warmth)  # fmt: skip
        time += step
        kelvin_now = film_c + ZERO_CELSIUS_K
        left = 0.0
        for place, (n, s) in enumerate(zip(moles, solvents, strict=True)):
            # The flux at the film's mean temperature over the step.
            fall = s.fall_k * (1 / kelvin - 1 / kelvin_now) / 2
            moles[place] = n * math.exp(-going[place] * math.exp(fall) * step / n) if n else 0.0
            left += moles[place] * s.litre_m3_mol
        history.append(Moment(time, film_c, left / start))
        if left <= GEL_SHARE * start:
            break
        step = min(step * STEP_GROWTH, LONGEST_STEP_S)
    return history


def _step(
    stores: Sequence[float], links: Sequence[float], back: float, below: Sequence[float],
    back_c: float, step: float, film_weight: float, film_warmth: float,
) -> tuple[float, list[float]]:  # fmt: skip
    """One backward step of wood cells and film on them: elimination from the back to the film."""
    share, load, low = 0.0, 0.0, back
    passed: list[tuple[float, float]] = []
    arriving = back * back_c
    for store, link, value in zip(stores, links, below, strict=True):
        weight = store / step + low + link - share
        load = (store / step * value + arriving) / weight
        taken = link / weight
        passed.append((load, taken))
        arriving, share, low = link * load, link * taken, link
    film_c = (film_warmth + arriving) / (film_weight + low - share)
    value, found = film_c, []
    for load, taken in reversed(passed):
        value = load + taken * value
        found.append(value)
    found.reverse()
    return film_c, found
