"""The pictures of pieces-to-check: the chance of passing, and the mean of more and more readings."""

import math
from collections.abc import Mapping
from typing import Any

from ..engine.compute import Say
from ..engine.legend import legend
from ..engine.plot import Axis, Plot
from ..engine.reading import convert
from ..engine.showing import reader_unit
from ..engine.unit_table import UNITS
from ..laws.student_factor import student_t_factor


def draw_curve(values: Mapping[str, Any], say: Say) -> str:
    """The chance that a lot passes against the share of it that is out."""
    rows = values["curve_rows"]
    far = max(1e-9, rows[-1]["share"])
    asked = values["ask"] == "pieces"
    misses = values["allowed_misses"] if asked else values["found_out"]
    count = values["pieces"] if asked else values["checked"]
    words = "none out" if misses == 0 else f"at most {misses} out"
    plot = Plot(
        "pieces-to-check-curve",
        f"Chance of finding {words} among {count} against the share out",
        f"Share of all that are out across, chance of finding {words} among {count} upwards. "
        f"{values['verdict']}",
        Axis("Share of all that are out, %", 0, far),
        Axis(f"Chance of {words} among {count}, %", 0, 100),
    )
    plot.curve([(row["share"], row["passes"]) for row in rows], "ink")
    marks = [("ink", f"chance of {words}")]
    if asked:
        plot.upright(values["just_too_bad"], f"just too bad: {say('just_too_bad')}")
        plot.mark((values["just_too_bad"], values["slips_through"]))
        marks.append(("accent-fill", f"slips through: {say('slips_through')}"))
    else:
        edge = values["upper"]
        plot.upright(edge, f"at most {say('upper')} out")
        if values["worst_share"] <= far:
            plot.curve([(values["worst_share"], 0), (values["worst_share"], 100)], "hidden")
            marks.append(("hidden", f"{say('worst_share')} may be out"))
    legend(plot.svg, marks)
    return plot.markup()


def draw_means(values: Mapping[str, Any], say: Say) -> str:
    """How sure the mean is against the number of readings."""
    unit = reader_unit("mm", say.system)
    factor = convert(1.0, "mm", unit)
    count = values["readings_count"]
    last = max(8, math.ceil(1.6 * count))
    step = max(1, last // 16)
    counts = sorted({*range(2, last + 1, step), count, 3, 4})
    points = [
        (n, math.hypot(student_t_factor(values["confidence"], n - 1) * values["spread"]
                       / math.sqrt(n), values["gauge_part"]))
        for n in counts
    ]  # fmt: skip
    top = min(points[0][1], 3.2 * values["wanted"])
    top = max(top, 1.3 * values["reached"])
    plot = Plot(
        "pieces-to-check-means",
        f"How sure the mean is against the number of readings; {say('readings_count')} bring it to "
        f"{say('reached')}",
        "Number of readings across, uncertainty of their mean upwards. The broken line is what is "
        "wanted, the lowest line the part of the gauge that averaging does not better.",
        Axis("Readings averaged", 1, last),
        Axis(f"The mean is sure to within, {UNITS[unit].shown}", 0, 1.08 * top * factor),
    )
    shown = [(n, y * factor) for n, y in points if y <= top * 1.08]
    plot.curve(shown, "ink")
    plot.curve([(1, values["wanted"] * factor), (last, values["wanted"] * factor)], "hidden")
    plot.curve(
        [(1, values["gauge_part"] * factor), (last, values["gauge_part"] * factor)], "second"
    )
    plot.mark((count, values["reached"] * factor))
    legend(plot.svg, [
        ("ink", "mean of so many"), ("hidden", f"wanted: {say('wanted')}"),
        ("second", f"gauge alone: {say('gauge_part')}"),
        ("accent-fill", f"{say('readings_count')} readings: {say('reached')}"),
    ])  # fmt: skip
    return plot.markup()
