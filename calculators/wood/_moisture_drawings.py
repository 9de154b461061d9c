"""The pictures of the moisture calculation: wood against air, and the witness over the days."""

import math
from collections.abc import Mapping
from typing import Any

from ..engine.compute import Say
from ..engine.legend import legend
from ..engine.plot import Axis, Plot
from ..laws.equilibrium_moisture import emc_line

CURVE_POINTS = 24
HUMIDITIES = [2.0, 5.0, *(float(humidity) for humidity in range(10, 95, 5)), 95.0, 98.0]


def draw_air(values: Mapping[str, Any], say: Say) -> str:
    """Moisture content against humidity at the room's temperature: the room and the wood."""
    moistures = emc_line(values["room_temperature"], HUMIDITIES)
    now, emc = values["moisture_now"], values["emc"]
    top = max(25.0, 1.1 * min(now, 60.0))
    plot = Plot(
        "moisture-content-air",
        f"Moisture that wood comes to in air of {say('room_temperature')}; in this room "
        f"{say('emc')}, the wood now {say('moisture_now')}",
        f"Relative humidity across, moisture content of the wood upwards. {values['verdict']}",
        Axis("Relative humidity, %", 0, 100), Axis("Moisture content of the wood, %", 0, top),
    )  # fmt: skip
    low = values["room_humidity"] - values["humidity_swing"]
    high = values["room_humidity"] + values["humidity_swing"]
    plot.curve([(h, x) for h, x in zip(HUMIDITIES, moistures, strict=True) if x <= top], "second")
    shown = [("second", f"wood at rest, {say('room_temperature')}"),
             ("second-fill", f"this room: {say('emc')}")]  # fmt: skip
    if high > low:
        plot.area([(low, 0), (low, top), (high, top), (high, 0)], "good")
        shown.append(("good", "the room's humidity"))
    plot.mark((values["room_humidity"], emc), style="second-fill")
    if now <= top:
        if "rest_humidity" in values:
            plot.curve([(0, now), (values["rest_humidity"], now), (values["rest_humidity"], 0)],
                       "hidden")  # fmt: skip
            plot.mark((values["rest_humidity"], now))
            shown.append(("accent-fill", f"the wood now: {say('moisture_now')}"))
        else:
            plot.curve([(0, now), (100, now)], "hidden")
            shown.append(("hidden", f"the wood now: {say('moisture_now')}"))
    legend(plot.svg, shown)
    return plot.markup()


def draw_days(values: Mapping[str, Any], say: Say) -> str:
    """The witness's moisture over the days, and the band of moisture that the room gives."""
    first = values["weighings"][0]["day"]
    start, dry = values["start_moisture"], values["witness_dry"]
    points = [(row["day"] - first, (row["mass"] / dry - 1) * 100) for row in values["weighings"]]
    waits = "wait" in values
    last = values["weighed_for"] + (values["wait"] * 1.25 if waits else 0.0)
    emc, close = values["emc"], values["close_enough"]
    curve: list[tuple[float, float]] = []
    if waits:
        days = [last * number / CURVE_POINTS for number in range(CURVE_POINTS + 1)]
        rate = 1 / values["time_constant"]
        curve = [(day, emc + values["start_gap"] * math.exp(-rate * day)) for day in days]
    seen = [x for _, x in (*points, *curve)]
    seen += [values["emc_low"], values["emc_high"], emc - close, emc + close]
    margin = 0.06 * (max(seen) - min(seen)) + 0.05
    bottom, top = max(0.0, min(seen) - margin), max(seen) + margin
    plot = Plot(
        "moisture-content-days",
        f"The witness over the days: {start:.1f} % at first, {say('moisture_now')} now, "
        f"{say('emc')} at rest",
        f"Days since the first weighing across, moisture content upwards. {values['verdict']}",
        Axis("Days since the first weighing", 0, last * 1.04),
        Axis("Moisture content of the wood, %", bottom, top),
    )
    far = last * 1.04
    low, high = values["emc_low"], values["emc_high"]
    shown = [("second", f"at rest: {say('emc')}")]
    if high > low:
        plot.area([(0, low), (0, high), (far, high), (far, low)], "good")
        shown.insert(0, ("good", f"the room: {say('emc_low')} to {say('emc_high')}"))
    plot.curve([(0, emc), (far, emc)], "second")
    edge = emc + math.copysign(close, values["gap"])
    plot.curve([(0, edge), (far, edge)], "hidden")
    shown.append(("hidden", f"close enough: within {say('close_enough')}"))
    if waits:
        plot.curve(curve, "ink")
        ready = values["weighed_for"] + values["wait"]
        x, _ = plot.place((ready, bottom))
        _, up = plot.place((ready, edge))
        _, down = plot.place((ready, bottom))
        plot.svg.line((x, up), (x, down), "accent")
        shown += [("ink", "fitted curve"), ("accent", f"ready in {say('wait')}")]
    for point in points:
        plot.mark(point, style="ink-fill")
    shown.append(("ink-fill", "weighings"))
    legend(plot.svg, shown)
    return plot.markup()
