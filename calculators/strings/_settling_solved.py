"""The parts of the settling calculation that need more than a formula: days and millimetres."""

import itertools
import math
from collections.abc import Mapping, Sequence
from typing import Any

from ..engine.declaration import Refusal
from ..laws.settling_curves import APPROACH, CREEP, Curve, Law, fit_curve, half_width
from ..laws.student_factor import student_t_factor

PARAMETERS = 3  # start, gain and time of either law
BAND_POINTS = 20
LAWS: Mapping[str, Law] = {"creep": CREEP, "approach": APPROACH}


def in_order(readings: Sequence[Mapping[str, float]], gauge_step: float) -> Mapping[str, Any]:
    """The readings by day, once they are seen to say anything: days, d; heights, mm.

    ``plain_spread`` is their standard deviation about their own mean, mm.
    """
    rows = sorted(readings, key=lambda row: row["day"])
    for before, after in itertools.pairwise(rows):
        if after["day"] - before["day"] < 0.01:
            raise Refusal(
                "readings",
                f"Day {after['day']:g} has two readings: strike one out, or give the part of the "
                "day",
                "days that differ",
            )
    heights = [row["height"] for row in rows]
    if max(heights) - min(heights) <= gauge_step * (1 + 1e-9):
        raise Refusal(
            "readings",
            "The readings differ by no more than one step of the gauge: it stands still, or it was "
            "not kept at pitch. There is nothing to forecast",
            f"readings that differ by more than {gauge_step:g} mm",
        )
    count = len(rows)
    mean = math.fsum(heights) / count
    squares = math.fsum((height - mean) ** 2 for height in heights)
    return {
        "days": [row["day"] for row in rows], "heights": heights, "count": count,
        "freedom": count - PARAMETERS, "first_day": rows[0]["day"], "last_day": rows[-1]["day"],
        "rise_so_far": heights[-1] - heights[0], "plain_spread": math.sqrt(squares / (count - 1)),
    }  # fmt: skip


def fit_creep(days: Sequence[float], heights: Sequence[float], freedom: int) -> Mapping[str, Any]:
    """Start and gain a decade, mm, and time, d, of the creep law; spread of the readings, mm."""
    return _fit("creep", days, heights, freedom)


def fit_approach(
    days: Sequence[float], heights: Sequence[float], freedom: int
) -> Mapping[str, Any]:
    """Start and whole gain, mm, and time constant, d, of the approach; spread, mm."""
    return _fit("approach", days, heights, freedom)


def _fit(
    name: str, days: Sequence[float], heights: Sequence[float], freedom: int
) -> Mapping[str, Any]:
    curve = fit_curve(days, heights, LAWS[name])
    return {
        f"{name}_start": curve.start, f"{name}_gain": curve.gain, f"{name}_time": curve.time_d,
        f"{name}_scatter": math.sqrt(curve.squares(days, heights) / freedom), f"{name}_edge": curve.edge,
    }  # fmt: skip


def choose(
    law: str, count: int, freedom: int, gauge_step: float, plain_spread: float,
    creep_scatter: float, approach_scatter: float, creep_edge: str, approach_edge: str,
) -> Mapping[str, Any]:  # fmt: skip
    """Which law is used, and how much better it fits; mm throughout.

    No reading is better than the gauge: a scatter below step/√12 is taken as that. The share of
    the evidence is Akaike's weight of two laws with equally many parameters,
    1/(1 + (S_used/S_other)^(n/2)), S being the sums of squares.
    """
    floor = gauge_step / math.sqrt(12)
    scatter = {"creep": max(creep_scatter, floor), "approach": max(approach_scatter, floor)}
    raw = {"creep": creep_scatter, "approach": approach_scatter}
    slows = [name for name, edge in (("creep", creep_edge), ("approach", approach_edge))
             if edge != "long"]  # fmt: skip
    asked = slows if law == "better" else [name for name in slows if name == law]
    if not asked:
        raise Refusal(
            "readings",
            "It does not slow down: as far as these readings tell, it goes on at the same pace or "
            "faster. That is no settling. Look at heel, bridge and braces before the saddle",
            "readings whose steps grow smaller from day to day",
        )
    used = min(asked, key=lambda name: (scatter[name], raw[name]))
    other = "approach" if used == "creep" else "creep"
    if raw[used] >= plain_spread:
        raise Refusal(
            "readings",
            "The readings go up and down by more than they follow any curve. Read again at one "
            "hour, at pitch and in one air, and strike out what was read otherwise",
            "readings that settle in one direction",
        )
    weight = 1 / (1 + (scatter[used] / scatter[other]) ** count)
    return {
        "used": used, "scatter": raw[used], "spread": scatter[used], "weight": weight * 100,
    }  # fmt: skip


def band(
    days: Sequence[float], first_day: float, used: str, spread: float, freedom: int, confidence: float,
    forecast_day: float, creep_start: float, creep_gain: float, creep_time: float,
    creep_edge: str, approach_start: float, approach_gain: float, approach_time: float,
    approach_edge: str,
) -> Mapping[str, Any]:  # fmt: skip
    """Student's factor, and how far the curve and one more reading may lie off the forecast, mm.

    Method: ``laws.settling_curves.half_width`` and ``laws.student_factor``; a reading adds its own
    scatter to the curve's uncertainty, as squares.
    """
    curve = (
        Curve(CREEP, 0.0, creep_start, creep_gain, creep_time, creep_edge)
        if used == "creep"
        else Curve(APPROACH, first_day, approach_start, approach_gain, approach_time, approach_edge)
    )
    factor = student_t_factor(confidence, freedom)

    def reading_may_miss(day: float) -> float:
        return factor * math.hypot(spread, half_width(curve, days, day, spread))

    rows = []
    for number in range(BAND_POINTS + 1):
        day = first_day + (forecast_day - first_day) * (number / BAND_POINTS) ** 2
        height, miss = curve.height(day), reading_may_miss(day)
        rows.append({"day": day, "height": height, "low": height - miss, "high": height + miss})
    return {
        "factor": factor,
        "curve_half": factor * half_width(curve, days, forecast_day, spread),
        "reading_half": reading_may_miss(forecast_day), "band_rows": rows,
    }  # fmt: skip


def compared(
    days: Sequence[float], heights: Sequence[float], first_day: float, creep_start: float, creep_gain: float,
    creep_time: float, approach_start: float, approach_gain: float, approach_time: float,
) -> Mapping[str, Any]:  # fmt: skip
    """Every reading beside both curves, mm."""
    creep = Curve(CREEP, 0.0, creep_start, creep_gain, creep_time)
    approach = Curve(APPROACH, first_day, approach_start, approach_gain, approach_time)
    rows = [
        {
            "day": day, "height": height, "creep": creep.height(day),
            "creep_off": height - creep.height(day), "approach": approach.height(day),
            "approach_off": height - approach.height(day),
        }
        for day, height in zip(days, heights, strict=True)
    ]  # fmt: skip
    return {"reading_rows": rows}
