"""How long a glue stays open: until its film jells, or until it has dried to a skin."""

import math
from collections.abc import Sequence
from functools import lru_cache
from itertools import pairwise
from typing import Any

from ..engine.declaration import Refusal
from ._glue_film import LONGEST_S, Air, Layers, Point, film_history, until
from ._glue_plan import in_words

FIRST_STEP_COOLING_S = 0.002
FIRST_STEP_DRYING_S = 0.3  # a tenth of it moves the open time by less than one part in 10 000
THINNER_FILM = 0.75
COOLER_WOOD_K = 5.0
SOAKING_SPAN = {"open_time": 1.0, "dull": 0.5, "thirsty": 2.0}  # times the soaking rate given


def cooling_run(
    layers: Layers, glue_start: float, wood_start: float, room_temperature: float,
    vapour_pressure: float, air_pressure: float, air_movement: float, radiation: float,
    mass_transfer: float, gel_temperature: float, needed_time: float,
) -> dict[str, Any]:  # fmt: skip
    """When the mean temperature of the film has fallen to the jelly point, s.

    Temperatures in °C, vapour_pressure in Pa, air_pressure in kPa, film coefficients in W/(m²·K),
    mass_transfer in m/s, needed_time in s. Method: finite volumes through film and wood (see
    ``laws.conduction.march``); evaporation cools the face. The span repeats the run with a film a
    quarter thinner and with wood 5 K cooler. Refuses where the film stays above the jelly point
    for two hours.
    """
    air = Air(
        room_temperature, vapour_pressure, 1000 * air_pressure, air_movement, radiation,
        mass_transfer,
    )  # fmt: skip

    def run(film: Layers, wood_c: float, least_s: float) -> tuple[list[Point], float | None]:
        history = until(
            film_history(film, glue_start, wood_c, air, FIRST_STEP_COOLING_S),
            lambda point: point.film_c <= gel_temperature and point.time_s >= least_s,
        )
        return history, _gel_time(history, gel_temperature)

    history, open_s = run(layers, wood_start, 1.1 * needed_time)
    if open_s is None:
        raise Refusal(
            "warmed_wood_temperature" if wood_start > gel_temperature else "room_temperature",
            "This glue does not jell within two hours: wood and air keep the film above its jelly "
            "point. Let the wood cool, cool the room, or check the jelly point",
            "wood and room well below the jelly point",
        )
    _, thinner_s = run(layers.with_film(THINNER_FILM), wood_start, 0)
    _, cooler_s = run(layers, wood_start - COOLER_WOOD_K, 0)
    return {
        "open_time": open_s,
        "span_words": f"With a film a quarter thinner: {_or_longer(thinner_s)}. "
        f"With wood 5 K (9 F°) cooler: {_or_longer(cooler_s)}.",
        "history": history,
    }


def _gel_time(history: Sequence[Point], gel_c: float) -> float | None:
    """When the film's mean temperature first meets ``gel_c``, on a straight line between points."""
    for before, after in pairwise(history):
        if after.film_c <= gel_c:
            share = (before.film_c - gel_c) / (before.film_c - after.film_c)
            return before.time_s + share * (after.time_s - before.time_s)
    return None


def _or_longer(time_s: float | None) -> str:
    return f"more than {in_words(LONGEST_S)}" if time_s is None else in_words(time_s)


def skin_point(
    sheet_layers: Layers, sheet_temperature: float, sheet_vapour_pressure: float,
    air_pressure: float, sheet_air_movement: float, sheet_radiation: float,
    sheet_mass_transfer: float,
    sheet_water: float, sorptivity: float, sheet_open_time: float,
) -> dict[str, float]:  # fmt: skip
    """How much of its water the glue still has when, by its data sheet, it has skinned: %.

    sheet_open_time in minutes, sheet_water in g/m², sorptivity in g/(m²·√s). The water that went
    into the air (g/m²) comes from the same film model as today's, that into the wood from
    sorptivity times the root of time. Refuses figures that leave no water, or more than at first.
    """
    air = Air(
        sheet_temperature, sheet_vapour_pressure, 1000 * air_pressure, sheet_air_movement,
        sheet_radiation, sheet_mass_transfer,
    )  # fmt: skip
    open_s = 60 * sheet_open_time
    history = _sheet_history(sheet_layers, sheet_temperature, air, open_s)
    evaporated = point_at(history, open_s).evaporated_g_m2
    soaked = sorptivity * math.sqrt(open_s)
    left = sheet_water - evaporated - soaked
    if left <= 0:
        raise Refusal(
            "sheet_open_time",
            "By these figures no water would be left at the data sheet's open time: "
            f"{evaporated:.0f} g/m² go into the air, {soaked:.0f} g/m² into the wood, and the film "
            f"holds {sheet_water:.0f} g/m². Check the sheet's spread, solids and open time, or "
            "lower the soaking rate",
            f"an open time of less than {_or_longer(_skin_time(history, sorptivity, sheet_water))}, "
            "with the other figures as they are",
        )
    if left >= sheet_water:
        raise Refusal(
            "sheet_humidity",
            "By these figures the film gains water in the data sheet's test instead of losing it. "
            "Check the data sheet's humidity and temperature, and the soaking rate",
            "air that dries the film, or wood that drinks from it",
        )
    return {
        "sheet_evaporated": evaporated,
        "sheet_soaked": soaked,
        "skinned_water": 100 * left / sheet_water,
    }


@lru_cache(maxsize=4)
def _sheet_history(
    layers: Layers, temperature_c: float, air: Air, open_s: float
) -> tuple[Point, ...]:
    """The data sheet's test up to its open time; the same while one types in today's figures."""
    history = film_history(layers, temperature_c, temperature_c, air, FIRST_STEP_DRYING_S)
    return tuple(until(history, lambda point: point.time_s >= open_s))


def drying_run(
    layers: Layers, glue_start: float, wood_start: float, room_temperature: float,
    vapour_pressure: float, air_pressure: float, air_movement: float, radiation: float,
    mass_transfer: float, water_at_start: float, sorptivity_today: float, sheet_water: float,
    sheet_evaporated: float, sheet_soaked: float, needed_time: float,
) -> dict[str, Any]:  # fmt: skip
    """When the film has as little of its water left as at the data sheet's open time, s.

    Units as in ``cooling_run`` and ``skin_point``. The span repeats the whole reckoning, data
    sheet and today alike, with half and with twice the soaking rate. Refuses where the film does
    not skin within two hours.
    """
    air = Air(
        room_temperature, vapour_pressure, 1000 * air_pressure, air_movement, radiation,
        mass_transfer,
    )  # fmt: skip
    cases: dict[str, tuple[float, float]] = {}  # soaking rate today, water to lose
    for name, times in SOAKING_SPAN.items():
        lost_share = (sheet_evaporated + times * sheet_soaked) / sheet_water
        if 0 < lost_share < 1:
            cases[name] = times * sorptivity_today, lost_share * water_at_start
    history = until(
        film_history(layers, glue_start, wood_start, air, FIRST_STEP_DRYING_S),
        lambda point: (
            point.time_s >= 1.1 * needed_time
            and all(lost_g_m2(point, soak) >= limit for soak, limit in cases.values())
        ),
    )
    found = {name: _skin_time(history, *case) for name, case in cases.items()}
    open_s = found["open_time"]
    if open_s is None:
        raise Refusal(
            "room_humidity",
            "This film does not skin within two hours: the air is too humid to dry it and the "
            "wood takes too little. Check humidity, wood moisture and temperature",
            "air that dries the film, or wood that drinks from it",
        )
    at_skin = point_at(history, open_s)
    words = {
        name: _or_longer(found[name]) if name in found else "the data sheet's figures do not add up"
        for name in SOAKING_SPAN
    }
    return {
        "open_time": open_s,
        "evaporated": at_skin.evaporated_g_m2,
        "soaked": sorptivity_today * math.sqrt(open_s),
        "skin_temperature": at_skin.face_c,
        "span_words": f"If the wood soaks half as fast as given: {words['dull']}. "
        f"Twice as fast: {words['thirsty']}.",
        "history": history,
    }


def lost_g_m2(point: Point, soak: float) -> float:
    """Water lost so far to air and wood, g/m², with a soaking rate in g/(m²·√s)."""
    return point.evaporated_g_m2 + soak * math.sqrt(point.time_s)


def _skin_time(history: Sequence[Point], soak: float, limit: float) -> float | None:
    """When the loss first reaches ``limit`` g/m²; between points by bisection."""
    for before, after in pairwise(history):
        if lost_g_m2(after, soak) >= limit:
            low, high = before.time_s, after.time_s
            for _ in range(50):
                middle = (low + high) / 2
                if lost_g_m2(_between(before, after, middle), soak) < limit:
                    low = middle
                else:
                    high = middle
            return high
    return None


def point_at(history: Sequence[Point], time_s: float) -> Point:
    """The film at any time within its history."""
    before, after = next(pair for pair in pairwise(history) if pair[1].time_s >= time_s)
    return _between(before, after, time_s)


def _between(before: Point, after: Point, time_s: float) -> Point:
    """The film between two points, every figure on a straight line."""
    share = (time_s - before.time_s) / (after.time_s - before.time_s)
    return Point(*(low + share * (high - low) for low, high in zip(before, after, strict=True)))
