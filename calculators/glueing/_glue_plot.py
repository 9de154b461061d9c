"""The plot of the glue-up: the film's course, its limit, and the operations as bars below."""

from collections.abc import Mapping, Sequence
from typing import Any

from ..engine.compute import Say
from ..engine.drawing import Point as Place
from ..engine.plot import BOTTOM, LEFT, RIGHT, TOP, Axis, Plot
from ..engine.reading import convert
from ..engine.showing import half_up, reader_unit
from ..engine.unit_table import UNITS
from ._glue_film import Point
from ._glue_runs import lost_g_m2

NAME = "glue-open-time-plan"
PLOT_HEIGHT = 360.0
LANE = 40.0
BAR = 11.0
WORDS = 0.235  # share of the axis kept for the words beside the limit
LETTER = 8.3  # width of a letter, roughly, in user units


def draw_plan(values: Mapping[str, Any], say: Say) -> str:
    """Film temperature or water left against time, with the operations on the same time axis."""
    rows: Sequence[Mapping[str, Any]] = values["rows"]
    open_s, usable_s = values["open_time"], values["usable_time"]
    first_s = min(0.0, rows[0]["start"])
    roomy_s = (open_s - WORDS * first_s) / (1 - WORDS)
    last_s = max(roomy_s, 1.06 * rows[-1]["end"])
    unit = "min" if last_s > 180 else "s"
    per = 60.0 if unit == "min" else 1.0
    cooling = values["glue"] == "cooling"
    course, level, up, level_words = (_temperature if cooling else _water)(values, say)
    across = Axis(f"Time from the first bead, {unit}", first_s / per, last_s / per)
    what = "temperature of the film" if cooling else "water left in the film"
    plot = Plot(
        NAME,
        f"Glue-up against the clock: open for {values['open_words']}",
        f"The {what} falls to its limit {values['open_words']} after the first bead. Below, "
        f"{len(rows)} operations as bars; the last ends at {values['needed_words']}.",
        across, up, height=PLOT_HEIGHT,
    )  # fmt: skip
    svg, foot, right = plot.svg, PLOT_HEIGHT - BOTTOM, plot.svg.width - RIGHT
    bottom = PLOT_HEIGHT + LANE * len(rows) + 4

    def x_of(time_s: float) -> float:
        return plot.place((time_s / per, up.lowest))[0]

    svg.rectangle((LEFT, PLOT_HEIGHT), right - LEFT, bottom - PLOT_HEIGHT, "paper")
    for top, end in ((TOP, foot), (PLOT_HEIGHT, bottom)):
        svg.rectangle((x_of(0.0), top), x_of(usable_s) - x_of(0.0), end - top, "good")
        svg.rectangle((x_of(open_s), top), right - x_of(open_s), end - top, "bad")
    y = plot.place((0.0, level))[1]
    svg.line((LEFT, y), (right, y), "hidden")
    plot.curve([(time_s / per, value) for time_s, value in _cut(course, last_s)], "second")
    early = x_of(open_s) < svg.width * 0.6
    at, anchor = ((right - 8, y - 8), "end") if early else ((LEFT + 8, y + 18), "start")
    svg.text(at, level_words, anchor, "label-small")
    for time_s, style in ((usable_s, "hidden"), (open_s, "accent")):
        svg.line((x_of(time_s), TOP), (x_of(time_s), foot), style)
        svg.line((x_of(time_s), PLOT_HEIGHT), (x_of(time_s), bottom), style)
    svg.text((x_of(open_s) + 6, TOP + 17), f"open {values['open_words']}", style="label-small")
    words, x = f"may use {values['usable_words']}", x_of(usable_s) - 6
    beside = ((x, TOP + 17), "end") if x - LETTER * len(words) > x_of(0) + 50 else (
        (x_of(open_s) + 6, TOP + 35), "start",
    )  # fmt: skip
    svg.text(beside[0], words, beside[1], "label-small")
    for number, row in enumerate(rows):
        start, end, top = x_of(row["start"]), x_of(row["end"]), PLOT_HEIGHT + LANE * number
        words = f"{row['row']}  {row['operation']}{_note(row, usable_s, open_s)}"
        svg.text((min(start, right - LETTER * len(words)), top + 18), words)
        style = "glue" if values["spreads"][number] else "wood-mid"
        svg.rectangle((start, top + 24), max(end - start, 2.0), BAR, style)
    svg.height = bottom + 2
    return plot.markup()


def _temperature(values: Mapping[str, Any], say: Say) -> tuple[list[Place], float, Axis, str]:
    """The film's mean temperature in the reader's unit, the jelly point, the axis, its words."""
    unit = reader_unit("degC", say.system)
    history: Sequence[Point] = values["history"]
    course = [(point.time_s, convert(point.film_c, "degC", unit)) for point in history]
    level = convert(values["gel_temperature"], "degC", unit)
    temperatures = [value for _, value in course]
    highest = max(temperatures)
    lowest = min([level, *temperatures])
    lowest -= 0.2 * (highest - lowest)
    axis = Axis(f"Mean temperature of the film, {UNITS[unit].shown}", lowest, highest)
    return course, level, axis, f"jells at {say('gel_temperature')}"


def _water(values: Mapping[str, Any], say: Say) -> tuple[list[Place], float, Axis, str]:
    """What is left of the glue's water, %, what it skins at, the axis, its words."""
    start, soak = values["water_at_start"], values["sorptivity_today"]
    history: Sequence[Point] = values["history"]
    level, open_s = values["skinned_water"], values["open_time"]
    wet = [point for point in history if point.time_s < open_s]  # the model ends with the skin
    course = [(point.time_s, 100 * (1 - lost_g_m2(point, soak) / start)) for point in wet]
    course.append((open_s, level))
    highest = max(value for _, value in course)
    axis = Axis("Water left in the film, %", max(0.0, level - 0.35 * (highest - level)), highest)
    return course, level, axis, f"skinned at {half_up(level, 0)} % of its water"


def _cut(course: Sequence[Place], last_s: float) -> list[Place]:
    """The course up to ``last_s``, ending there where it reaches so far."""
    kept = [place for place in course if place[0] <= last_s]
    if len(kept) < len(course):
        (t0, v0), (t1, v1) = kept[-1], course[len(kept)]
        kept.append((last_s, v0 + (v1 - v0) * (last_s - t0) / (t1 - t0)))
    return kept


def _note(row: Mapping[str, Any], usable_s: float, open_s: float) -> str:
    if row["end"] > open_s:
        return " (too late)"
    return " (into the margin)" if row["end"] > usable_s else ""
