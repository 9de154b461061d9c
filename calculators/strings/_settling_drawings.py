"""The picture of the settling calculation: readings, curves and the forecast's band."""

from collections.abc import Mapping
from typing import Any

from ..engine.compute import Say
from ..engine.legend import legend
from ..engine.plot import Axis, Plot
from ..engine.reading import convert
from ..engine.showing import reader_unit
from ..engine.unit_table import UNITS
from ..laws.settling_curves import APPROACH, CREEP, Curve

NAMES = {"creep": "creep", "approach": "approach to rest"}


def draw_days(values: Mapping[str, Any], say: Say) -> str:
    """Readings over the days, the two curves, the band of one more reading."""
    unit = reader_unit("mm", say.system)
    factor = convert(1.0, "mm", unit)
    far = values["forecast_day"] * 1.04
    used = values["used"]
    other = "approach" if used == "creep" else "creep"
    rows = values["band_rows"]
    both = [(row["day"], row["height"]) for row in rows]
    second = []
    if values[f"{other}_edge"] != "long":
        curve = Curve(
            CREEP if other == "creep" else APPROACH,
            0.0 if other == "creep" else values["first_day"],
            values[f"{other}_start"], values[f"{other}_gain"], values[f"{other}_time"],
        )  # fmt: skip
        second = [(row["day"], curve.height(row["day"])) for row in rows]
    points = list(zip(values["days"], values["heights"], strict=True))
    seen = [y for _, y in (*points, *both, *second)]
    tall = max(seen) - min(seen)
    # A band that is much wider than all there is to see runs off the paper.
    lowest = max(min(row["low"] for row in rows), min(seen) - 0.6 * tall)
    highest = min(max(row["high"] for row in rows), max(seen) + 0.6 * tall)
    bottom = min(lowest, *seen) - 0.05 * tall
    top = max(highest, *seen) + 0.05 * tall
    plot = Plot(
        "settling-days",
        f"Readings over the days and the forecast at {say('forecast_day')}: "
        f"{say('forecast_low')} to {say('forecast_high')}",
        f"Days across, height upwards. {values['verdict']} {values['law_words']}",
        Axis("Days at pitch", 0, far),
        Axis(f"Action, {UNITS[unit].shown}", bottom * factor, top * factor),
    )

    def shown(pairs: list[tuple[float, float]]) -> list[tuple[float, float]]:
        return [(day, height * factor) for day, height in pairs]

    lower = [(row["day"], row["low"]) for row in rows]
    upper = [(row["day"], row["high"]) for row in rows]
    plot.area(shown([*lower, *reversed(upper)]), "good")
    marks = [("good", f"one more reading, {say('confidence')}")]
    if second:
        plot.curve(shown(second), "hidden")
        marks.append(("hidden", NAMES[other]))
    plot.curve(shown(both), "ink")
    marks.append(("ink", f"used: {NAMES[used]}"))
    for point in shown(points):
        plot.mark(point, style="ink-fill")
    marks.append(("ink-fill", "readings"))
    plot.mark((values["forecast_day"], values["forecast"] * factor))
    marks.append(("accent-fill", f"forecast {say('forecast')}"))
    legend(plot.svg, marks)
    return plot.markup()
