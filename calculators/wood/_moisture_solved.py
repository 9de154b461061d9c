"""The parts of the moisture calculation that need more than a formula.

Moisture contents are per cent of ovendry mass, masses grams, times days.
"""

import itertools
import math
from collections.abc import Mapping, Sequence
from typing import Any, NamedTuple

from ..engine.declaration import Refusal
from ..laws.approach import fit_approach, residual_spread
from ..laws.equilibrium_moisture import emc_percent, humidity_for_emc

MOST_DAYS = 1000.0  # a wait longer than this is no forecast
VAGUE_DAYS = 60.0  # an uncertainty may be greater than the wait itself up to here
FREE_WATER_PERCENT = 30.0  # fibre saturation: above it free water leaves first


def room_band(
    room_temperature: float, room_humidity: float, humidity_swing: float
) -> Mapping[str, float]:
    """Moisture contents, %, at the two ends of the room's humidity, %, and in air of 95 %.

    Source: ``laws.equilibrium_moisture.emc_percent``.
    """
    return {
        "emc_low": emc_percent(room_temperature, room_humidity - humidity_swing),
        "emc_high": emc_percent(room_temperature, room_humidity + humidity_swing),
        "emc_dampest": emc_percent(room_temperature, 95),
    }


def at_rest_in(moisture_now: float, room_temperature: float) -> float:
    """Humidity, %, in which wood of this moisture, %, stays as it is.

    Method and source: ``laws.equilibrium_moisture.humidity_for_emc``.
    """
    return humidity_for_emc(moisture_now, room_temperature)


def read_witness(weighings: Sequence[Mapping[str, float]]) -> Mapping[str, float]:
    """First and last weighing, g and d, once the days are seen to be in order."""
    for before, after in itertools.pairwise(weighings):
        if after["day"] <= before["day"]:
            raise Refusal(
                "weighings",
                f"Day {after['day']:g} stands after day {before['day']:g}: write the weighings "
                "oldest first, one a day",
                "days that rise from line to line",
            )
    return {
        "first_mass": weighings[0]["mass"], "last_mass": weighings[-1]["mass"],
        "last_day": weighings[-1]["day"], "weighed_for": weighings[-1]["day"] - weighings[0]["day"],
    }  # fmt: skip


class Weighed(NamedTuple):
    """What was measured, each with its own error: masses in g, moisture at the start in %."""

    masses: tuple[float, ...]
    start: tuple[float, ...]  # offcut as cut and ovendry, g; or the meter's reading, %


class Asked(NamedTuple):
    """What the wait is asked for: days from the first weighing, the room's EMC and the target, %."""

    days: tuple[float, ...]
    emc: float
    close_enough: float


class Curve(NamedTuple):
    """The fitted approach: gap at the first weighing, %, and rate, 1/d."""

    start_gap: float
    rate: float
    wait: float  # d from the last weighing until the gap is close enough; below zero: long since
    scatter: float  # of the moisture contents about the curve, %


def start_moisture_percent(start: Sequence[float]) -> float:
    """Moisture at the start, %: from an offcut's two masses, or the meter's own reading."""
    return start[0] if len(start) == 1 else (start[0] - start[1]) / start[1] * 100


def gaps_percent(weighed: Weighed, emc: float) -> list[float]:
    """Moisture content less the room's, %, at every weighing."""
    dry = weighed.masses[0] / (1 + start_moisture_percent(weighed.start) / 100)
    return [(mass / dry - 1) * 100 - emc for mass in weighed.masses]


def curve_of(weighed: Weighed, asked: Asked) -> Curve | None:
    """The exponential approach to the room's moisture, or None where nothing approaches it."""
    gaps = gaps_percent(weighed, asked.emc)
    if min(gaps) <= 0 <= max(gaps):
        return None
    start, rate = fit_approach(asked.days, gaps)
    if rate <= 0:
        return None
    left = abs(start) * math.exp(-rate * asked.days[-1])
    if left == 0:
        return None
    wait = math.log(left / asked.close_enough) / rate
    return Curve(start, rate, wait, residual_spread(asked.days, gaps, start, rate))


def wait_uncertainty(weighed: Weighed, asked: Asked, step: float, scatter: float,
                     meter_error: float) -> float | None:  # fmt: skip
    """Standard uncertainty of the wait, d, from what each measured figure does to it.

    A rounded weighing is off by up to half a step, evenly spread: step over root 12; where the
    weighings scatter more than that about the curve, g, the scatter stands for it. A meter that
    may be off by so much: error over root 3. Each figure is moved up and down by its own
    uncertainty and the curve fitted anew; half the differences add as squares (GUM 5.1.3,
    note 2). None where a move leaves nothing that approaches.
    """
    of_step = step / math.sqrt(12)
    of_start = of_step if len(weighed.start) == 2 else meter_error / math.sqrt(3)
    squares = []
    for part, own in (("masses", max(of_step, scatter)), ("start", of_start)):
        figures: tuple[float, ...] = getattr(weighed, part)
        for place in range(len(figures)):
            waits = []
            for move in (own, -own):
                moved = list(figures)
                moved[place] += move
                curve = curve_of(weighed._replace(**{part: tuple(moved)}), asked)
                if curve is None:
                    return None
                waits.append(curve.wait)
            squares.append(((waits[0] - waits[1]) / 2) ** 2)
    return math.sqrt(math.fsum(squares))


def wait_for_rest(
    weighings: Sequence[Mapping[str, float]], moisture_from: str, emc: float, close_enough: float,
    scale_step: float, start_moisture: float, moisture_now: float, offcut_mass: float = 0.0,
    ovendry_mass: float = 0.0, wood_moisture: float = 0.0, meter_error: float = 0.0,
) -> Mapping[str, Any]:  # fmt: skip
    """How the witness comes to the room's moisture, and the days until it is close enough.

    Least squares on moisture contents: ``laws.approach.fit_approach``; uncertainty with k = 2.
    """
    start = (offcut_mass, ovendry_mass) if moisture_from == "oven" else (wood_moisture,)
    weighed = Weighed(tuple(row["mass"] for row in weighings), start)
    first = weighings[0]["day"]
    asked = Asked(tuple(row["day"] - first for row in weighings), emc, close_enough)
    if start_moisture > FREE_WATER_PERCENT:
        raise Refusal(
            "weighings",
            f"At the start the wood held {start_moisture:.0f} %: above about 30 % free water "
            "leaves first, at a pace of its own. Begin the list with a weighing after that",
            "a first weighing at 30 % or less",
        )
    curve = curve_of(weighed, asked)
    if curve is None:
        raise Refusal("weighings", _why_not(gaps_percent(weighed, emc), emc, moisture_now),
                      "weighings that come nearer to what the room's air gives")  # fmt: skip
    dry = weighed.masses[0] / (1 + start_moisture / 100)
    scatter = curve.scatter / 100 * dry
    uncertainty = wait_uncertainty(weighed, asked, scale_step, scatter, meter_error)
    vague = uncertainty is None or 2 * uncertainty > max(curve.wait, VAGUE_DAYS)
    if uncertainty is None or vague or curve.wait > MOST_DAYS:
        raise Refusal(
            "weighings",
            "These figures cannot say how long it will take: the weight has changed too little "
            "for the scale, or the moisture at the start is too unsure. Weigh again after a "
            "longer time, or a heavier witness; dry an offcut in the oven rather than trust a "
            "meter",
            "a change of weight of many steps of the scale",
        )
    return {
        "start_gap": curve.start_gap, "time_constant": 1 / curve.rate,
        "wait": max(0.0, curve.wait), "wait_uncertainty": 2 * uncertainty, "scatter": scatter,
        "weighing_count": len(weighings),
    }  # fmt: skip


def _why_not(gaps: Sequence[float], emc: float, now: float) -> str:
    if min(gaps) <= 0 <= max(gaps):
        return (
            f"The witness has gone past the {emc:.1f} % that this air gives, to {now:.1f} %: the "
            "air was not what is entered, or it changed meanwhile. Give the humidity it has lain "
            "in, and only weighings from that time"
        )
    if abs(gaps[-1]) > abs(gaps[0]):
        return (
            f"The witness moves away from the {emc:.1f} % that this air gives; it is at "
            f"{now:.1f} %. Look at the humidity entered, at the weights and at the offcut"
        )
    return (
        f"The weighings do not come steadily nearer to the {emc:.1f} % that this air gives. "
        "Strike out the one that is wrong, or weigh again in a week"
    )
