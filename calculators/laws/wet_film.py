"""A wet film of lacquer that cools as its solvents leave, on wood that warms it from below.

The film is thin enough to be of one temperature; the wood below is cut into cells, fine towards
the film. Units: m, s, °C (differences in K), W/m², mol/m².
"""

import math
from collections.abc import Iterable, Mapping, Sequence
from functools import lru_cache
from itertools import pairwise
from operator import mul
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


class _Plate:
    """The wood under the film, cut into cells, and factored for each step length it was asked for.

    The elimination runs from the back to the film, which alone changes its law from step to step.
    """

    def __init__(self, conductivity_w_m_k: float, heat_j_m3_k: float, depth_m: float) -> None:
        cells = graded_cells(depth_m, FINEST_M, GROWTH, conductivity_w_m_k, heat_j_m3_k)
        halves = [width / (2 * conductivity_w_m_k) for width in cells.widths_m]
        self.links = [1 / (lower + upper) for lower, upper in pairwise(halves)] + [1 / halves[-1]]
        self.back_w_m2_k = 1 / (halves[0] + 1 / BACK_W_M2_K)
        self.stores_j_m2_k = [width * heat_j_m3_k for width in cells.widths_m]
        self.factored: dict[float, _Factors] = {}

    def factors(self, step_s: float) -> "_Factors":
        """The elimination for one step length; the steps of every film are the same few."""
        if step_s not in self.factored:
            rows, taken, share, low = [], [], 0.0, self.back_w_m2_k
            for store, link in zip(self.stores_j_m2_k, self.links, strict=True):
                weight = store / step_s + low + link - share
                rows.append((store / step_s / weight, 1 / weight, link))
                taken.append(link / weight)
                share, low = link * link / weight, link
            self.factored[step_s] = _Factors(rows, taken[::-1], low - share)
        return self.factored[step_s]


class _Factors(NamedTuple):
    rows: list[tuple[float, float, float]]  # per cell: of its own warmth, of what arrives, onwards
    taken: list[float]  # of the warmth of the next cell, from the film to the back
    face_w_m2_k: float

    def step(
        self, below_c: Sequence[float], back_w_m2: float, film_weight: float, film_warmth: float
    ) -> tuple[float, list[float]]:
        """One backward step of the cells, back to film, and of the film on them, °C."""
        arriving = back_w_m2
        loads = []
        for (own, passed, link), value in zip(self.rows, below_c, strict=True):
            load = own * value + passed * arriving
            loads.append(load)
            arriving = link * load
        film_c = value = (film_warmth + arriving) / (film_weight + self.face_w_m2_k)
        loads.reverse()
        found = [
            value := load + taken * value for load, taken in zip(loads, self.taken, strict=True)
        ]
        found.reverse()
        return film_c, found


_plate = lru_cache(maxsize=8)(_Plate)


class _Mix(NamedTuple):
    """The solvents reduced to the figures that the march needs, one of each a solvent."""

    tops: list[float]  # flux times exp(-fall/T) over the kelvin of the boundary layer: mol/(m²·s)
    falls_k: list[float]
    heats_j_mol: list[float]
    steep_j_k_mol: list[float]
    litres_m3_mol: list[float]


def _reduced(parts: Iterable[Leaving], share: float) -> _Mix:
    """Vapour pressure as exp(a - b/T): ``vapour_pressure_of_pa`` taken at two temperatures."""
    one, two = ZERO_CELSIUS_K, ZERO_CELSIUS_K + 20
    mix = _Mix([], [], [], [], [])
    for part in parts:
        ratio = vapour_pressure_of_pa(part.solvent, 20) / vapour_pressure_of_pa(part.solvent, 0)
        fall = math.log(ratio) / (1 / one - 1 / two)
        top = vapour_pressure_of_pa(part.solvent, 0) * math.exp(fall / one)
        mix.tops.append(2 * part.mol_m2_s_k_pa * top * share)
        mix.falls_k.append(fall)
        mix.heats_j_mol.append(part.heat_j_mol)
        mix.steep_j_k_mol.append(part.heat_j_mol * fall)
        mix.litres_m3_mol.append(part.solvent.molar_mass_g_mol / 1000 / part.solvent.density_kg_m3)
    return mix


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
    mix = _reduced(parts, share)
    moles = list(parts.values())
    start = sum(map(mul, moles, mix.litres_m3_mol))
    plate = _plate(*wood, wood_m)
    below = [wood_c] * len(plate.links)
    back = plate.back_w_m2_k * wood_c
    film_store = film_m * FILM_HEAT_J_M3_K
    air_k = air.temperature_c + ZERO_CELSIUS_K
    shine = EMISSIVITY * STEFAN_BOLTZMANN
    exp = math.exp
    time, step = 0.0, FIRST_STEP_S
    history = [Moment(0.0, film_c, 1.0)]
    while time < until_s:
        step = min(step, until_s - time) if until_s - time > 1e-6 else step
        kelvin = film_c + ZERO_CELSIUS_K
        # What leaves of each, mol/(m²·s), at the film's last temperature.
        thin = 1 / (sum(moles) * (air_k + kelvin))
        leaving = [
            n * top * exp(-fall / kelvin) * thin
            for n, top, fall in zip(moles, mix.tops, mix.falls_k, strict=True)
        ]
        # Heat out of the film, and how it grows with the film's temperature.
        out = (
            air.plate_w_m2_k * (film_c - air.temperature_c)
            + shine * (kelvin**4 - air_k**4)
            + sum(map(mul, leaving, mix.heats_j_mol))
        )
        slope = (
            air.plate_w_m2_k
            + 4 * shine * kelvin**3
            + sum(map(mul, leaving, mix.steep_j_k_mol)) / kelvin**2
        )
        warmth = film_store / step * film_c + slope * film_c - out
        film_c, below = plate.factors(step).step(below, back, film_store / step + slope, warmth)
        time += step
        # The flux at the film's mean temperature over the step.
        mean = (1 / kelvin + 1 / (film_c + ZERO_CELSIUS_K)) / 2
        gone = -thin * step
        moles = [
            n * exp(gone * top * exp(-fall * mean))
            for n, top, fall in zip(moles, mix.tops, mix.falls_k, strict=True)
        ]
        left = sum(map(mul, moles, mix.litres_m3_mol)) / start
        history.append(Moment(time, film_c, left))
        if left <= GEL_SHARE:
            break
        step = min(step * STEP_GROWTH, LONGEST_STEP_S)
    return history
