"""The parts of the polishing calculation that need more than a formula.

The parameters carry the names, and with them the units, of the declaration: mm, µm, s, N, K,
kW/m², W/(m·K), kg/m³, J/(kg·K), mm²/s.
"""

import math
from collections.abc import Mapping, Sequence

from ..laws.few_readings import compare_means, mean_and_spread, next_reading_below, student_t_below
from ..laws.moving_source import share_of_fast_source
from ..laws.surface_heating import film_factor, film_time_to_rise_s

# Conductivity W/(m·K), density kg/m³, heat capacity J/(kg·K): ht 1.2.0, its tables of ASHRAE
# woods (spruce, western red cedar, maple) and of DIN EN 12524 / ISO 10456 (timber 500 and 700).
WOODS = {
    "spruce": (0.09, 400.0, 1630.0),
    "cedar": (0.09, 350.0, 1630.0),
    "maple": (0.165, 667.5, 1630.0),
    "medium": (0.13, 500.0, 1600.0),
    "heavy": (0.18, 700.0, 1600.0),
}


def wood_carry(wood: str, conductivity: float, density: float, heat_capacity: float) -> float:
    """How well the wood under the film carries heat off beside the lacquer, a plain number.

    The ratio of the effusivities sqrt(k·ρ·c), wood over lacquer; 1 where the lacquer is to be
    taken as thick. Wood from the tables named at ``WOODS``, lacquer as given.
    """
    if wood not in WOODS:
        return 1.0
    k, rho, c = WOODS[wood]
    return math.sqrt(k * rho * c / (conductivity * density * heat_capacity))


def factor_of(film_um: float, diffusivity: float, time_s: float, carry: float) -> float:
    """Rise of a film on wood over that of thick lacquer after ``time_s`` of constant flux."""
    return film_factor(film_um / 1000 / math.sqrt(diffusivity * time_s), carry)


def film_on_wood(
    film_thickness: float, edge_film: float, diffusivity: float, time_under: float, dwell: float,
    carry: float,
) -> Mapping[str, float]:  # fmt: skip
    """Plain numbers that bring the rises of thick lacquer to those of a film on wood.

    For the passing wheel, for the dwell, and for the passing wheel at the edge. Method and
    source: ``laws.surface_heating.film_factor``.
    """
    return {
        "wood_factor": factor_of(film_thickness, diffusivity, time_under, carry),
        "still_factor": factor_of(film_thickness, diffusivity, dwell, carry),
        "edge_factor": factor_of(edge_film, diffusivity, time_under, carry),
    }


def still_time(
    softening_temperature: float, start_temperature: float, heat_flux: float, conductivity: float,
    diffusivity: float, film_thickness: float, carry: float,
) -> float:  # fmt: skip
    """Seconds until the film on its wood softens under a wheel that stands still.

    Method and source: ``laws.surface_heating.film_time_to_rise_s``.
    """
    return film_time_to_rise_s(
        softening_temperature - start_temperature, heat_flux * 1000, conductivity,
        diffusivity / 1e6, film_thickness / 1e6, carry,
    )  # fmt: skip


def band_share(peclet: float) -> float:
    """Jaeger's full rise as a share of the closed form; ``laws.moving_source.band_peak``."""
    return share_of_fast_source(peclet)


def upper_end(force_hot: float, force_film: float = math.inf) -> float:
    """The greatest safe force, N: heat sets it, or the film where a trial has been measured."""
    return min(force_hot, force_film)


# A division that should come out whole may miss by its last bits: 1.5 taken from 21 is 14 passes.
HAIR = 1e-9


def _rounded_up(passes: float) -> int:
    return math.ceil(passes - HAIR)


def _rounded_down(passes: float) -> int:
    return math.floor(passes + HAIR)


def whole_passes(
    orange_peel: float, removal: float, edge_film: float, edge_least_film: float,
    edge_removal: float,
) -> Mapping[str, int]:  # fmt: skip
    """Passes until the peel, µm, is gone, and what the edge can take, at so many µm a pass.

    An edge at or below its least film can take none.
    """
    return {
        "passes_to_flat": _rounded_up(orange_peel / removal),
        "edge_passes": _rounded_down(max(0.0, edge_film - edge_least_film) / edge_removal),
        "edge_wood_pass": _rounded_up(edge_film / edge_removal),
    }


def further_passes(margin_left: float, film_left: float, removal: float) -> Mapping[str, int]:
    """Passes beyond flat before the least film, and the one that shows the wood; µm, µm a pass."""
    return {
        "passes_left": _rounded_down(margin_left / removal),
        "passes_to_wood": _rounded_up(film_left / removal),
    }


def touch_a(readings_a: Sequence[float]) -> Mapping[str, float]:
    """Mean and spread, N, of the readings of polisher A, and how many there are."""
    mean, spread = mean_and_spread(readings_a)
    return {"mean_a": mean, "spread_a": spread, "count_a": len(readings_a)}


def touch_b(readings_b: Sequence[float]) -> Mapping[str, float]:
    """Mean and spread, N, of the readings of polisher B, and how many there are."""
    mean, spread = mean_and_spread(readings_b)
    return {"mean_b": mean, "spread_b": spread, "count_b": len(readings_b)}


def _chances(
    readings: Sequence[float], letter: str, force_highest: float, force_lowest: float | None
) -> Mapping[str, float]:
    """Chances, %, that the next pass is too hard and, where there is a lower end, too light."""
    mean, spread = mean_and_spread(readings)
    count = len(readings)
    # The mirror image of "below" keeps a small chance exact.
    hard = 100 * next_reading_below(-force_highest, -mean, spread, count)
    if force_lowest is None:
        return {f"chance_hard_{letter}": hard}
    light = 100 * next_reading_below(force_lowest, mean, spread, count)
    return {
        f"chance_hard_{letter}": hard,
        f"chance_light_{letter}": light,
        f"chance_outside_{letter}": hard + light,
    }


def chances_a(
    readings_a: Sequence[float], force_highest: float, force_lowest: float | None = None
) -> Mapping[str, float]:
    """The chances, %, that a pass of polisher A leaves the safe window of force, N."""
    return _chances(readings_a, "a", force_highest, force_lowest)


def chances_b(
    readings_b: Sequence[float], force_highest: float, force_lowest: float | None = None
) -> Mapping[str, float]:
    """The chances, %, that a pass of polisher B leaves the safe window of force, N."""
    return _chances(readings_b, "b", force_highest, force_lowest)


def two_hands(readings_a: Sequence[float], readings_b: Sequence[float]) -> Mapping[str, float]:
    """Polisher A less polisher B, N, its standard error, N, degrees of freedom, certainty in %.

    The certainty is the chance that the one with the greater mean truly presses harder (a flat
    prior, or one less the one-sided p value): Student's t below |difference|/error with Welch's
    degrees of freedom.
    """
    found = compare_means(readings_a, readings_b)
    t = abs(found.difference) / found.standard_error
    return {
        "difference": found.difference,
        "difference_error": found.standard_error,
        "difference_freedom": found.degrees_of_freedom,
        "certainty": 100 * student_t_below(t, found.degrees_of_freedom),
    }
