"""The pictures of the polishing calculation: the map of force, and the film before and after."""

import math
from collections.abc import Mapping, Sequence
from typing import Any

from ..engine.compute import Say
from ..engine.drawing import Point, Svg, short
from ..engine.plot import Axis, Plot
from ..engine.reading import convert
from ..engine.showing import reader_unit
from ..engine.unit_table import UNITS
from ..laws.moving_source import share_of_fast_source
from ._polishing_solved import factor_of

CURVE_POINTS = 12
CLOSED_FORM_DRAWN = 200.0


class Limits:
    """The limits of force, N, as functions of travel speed, mm/s, all else as given."""

    def __init__(self, values: Mapping[str, Any]) -> None:
        self.values = values
        self.measured = values["trial"] == "measured"

    def too_hot(self, travel: float) -> tuple[float, float]:
        """Forces at which the flat, and the edge, get too hot."""
        v = self.values
        times = travel / v["travel_speed"]
        peclet = v["peclet"] * times
        # From there up the closed form is nearer than the width of the line.
        share = 1.0 if peclet > CLOSED_FORM_DRAWN else share_of_fast_source(peclet)
        thick = v["fast_rise"] / math.sqrt(times) * share
        force = v["pressing_force"] * v["allowed_rise"] / thick
        given = v["diffusivity"], v["time_under"] / times, v["carry"]
        narrow = v["edge_width"] / v["contact_width"]
        return (
            force / factor_of(v["film_thickness"], *given),
            force * narrow / factor_of(v["edge_film"], *given),
        )

    def flat(self, travel: float) -> float:
        """Force that gets flat in just the most passes."""
        return float(self.values["force_lowest"] * travel / self.values["travel_speed"])

    def film(self, travel: float) -> float:
        """Force at which one pass takes all the film to spare."""
        return float(self.values["force_film"] * travel / self.values["travel_speed"])


def draw_map(values: Mapping[str, Any], say: Say) -> str:
    """Force against travel speed: the safe window, its limits, the point of work, the readings."""
    limits = Limits(values)
    travel, force = values["travel_speed"], values["pressing_force"]
    farthest = 2 * travel
    speeds = [farthest * (number / CURVE_POINTS) ** 2 for number in range(1, CURVE_POINTS + 1)]
    hot, edge = zip(*map(limits.too_hot, speeds), strict=True)
    upper, lower = [*hot], [0.0] * len(speeds)
    if limits.measured:
        upper = [min(a, limits.film(speed)) for a, speed in zip(hot, speeds, strict=True)]
        lower = [limits.flat(speed) for speed in speeds]
    readings = [*values.get("readings_a", ()), *values.get("readings_b", ())]
    seen = [force, min(values["force_highest"], 3 * force)]
    seen += [min(reading, 3 * force) for reading in readings]
    top = 1.3 * max(seen)

    newton, speed_unit = reader_unit("N", say.system), reader_unit("mm/s", say.system)
    per_n, per_speed = convert(1.0, "N", newton), convert(1.0, "mm/s", speed_unit)
    plot = Plot(
        "polishing-pressure-map",
        f"Safe force against travel speed; you work at {say('pressing_force')} and "
        f"{say('travel_speed')}",
        f"Force upwards, travel speed across. {values['verdict']}",
        Axis(f"Travel speed, {UNITS[speed_unit].shown}", 0, farthest * per_speed),
        Axis(f"Force, {UNITS[newton].shown}", 0, top * per_n),
    )

    def curve(heights: Sequence[float], style: str) -> None:
        points = [(0.0, 0.0), *zip(speeds, heights, strict=True)]
        shown = [(x * per_speed, y * per_n) for x, y in cut_off(points, top)]
        plot.curve(shown, style)

    for window in windows([0.0, *speeds], [0.0, *lower], [0.0, *upper]):
        area = below(window, top)
        if len(area) > 2:
            plot.area([(x * per_speed, y * per_n) for x, y in area], "good")
    legend = [
        ("good", "safe window" if limits.measured else "cool enough"),
        ("accent", "too hot above this"),
    ]
    curve(hot, "accent")
    if limits.measured:
        curve(lower, "second")
        passes = values["most_passes"]
        legend.append(("second", f"flat in {passes} {'pass' if passes == 1 else 'passes'}"))
        if values["force_film"] * farthest / travel < 2 * top:
            curve([limits.film(speed) for speed in speeds], "dim")
            legend.append(("dim", "one pass takes the spare film"))
    curve(edge, "hidden")
    legend.append(("hidden", "too hot at the edge"))
    for name, side in (("readings_a", -1), ("readings_b", 1)):
        for reading in values.get(name, ()):
            if reading <= top:
                x, y = plot.place((travel * per_speed, reading * per_n))
                plot.svg.line((x + side * 9, y), (x + side * 21, y), "ink")
    if readings and min(readings) <= top:
        both = "A left, B right" if "readings_b" in values else "polisher A"
        legend.append(("ink", f"readings, {both}"))
    plot.mark((travel * per_speed, force * per_n))
    legend.append(("accent-fill", "you work here"))
    key(plot.svg, legend)
    return plot.markup()


def cut_off(points: Sequence[Point], top: float) -> list[Point]:
    """A rising curve as far as it stays on the paper, ending on its upper edge."""
    kept: list[Point] = []
    for point in points:
        if point[1] > top:
            kept.append(meets(kept[-1], point, top))
            break
        kept.append(point)
    return kept


def meets(low: Point, high: Point, level: float) -> Point:
    """Where the line between two points meets a level that lies between them."""
    share = (level - low[1]) / (high[1] - low[1])
    return low[0] + share * (high[0] - low[0]), level


def below(shape: Sequence[Point], top: float) -> list[Point]:
    """The part of a closed shape that lies below ``top``."""
    kept: list[Point] = []
    for place, point in enumerate(shape):
        before = shape[place - 1]
        if (before[1] <= top) != (point[1] <= top):
            kept.append(meets(before, point, top))
        if point[1] <= top:
            kept.append(point)
    return kept


def windows(
    speeds: Sequence[float], lower: Sequence[float], upper: Sequence[float]
) -> list[list[Point]]:
    """The areas where the lower of two limits lies below the upper, as closed shapes."""
    shapes: list[list[Point]] = []
    floor: list[Point] = []
    roof: list[Point] = []
    gap = 0.0
    for place, x in enumerate(speeds):
        before, gap = gap, upper[place] - lower[place]
        if before * gap < 0:
            share = before / (before - gap)
            cross_x = speeds[place - 1] + share * (x - speeds[place - 1])
            cross_y = lower[place - 1] + share * (lower[place] - lower[place - 1])
            floor.append((cross_x, cross_y))
        if gap >= 0:
            floor.append((x, lower[place]))
            roof.append((x, upper[place]))
        elif roof:
            shapes.append([*floor, *reversed(roof)])
            floor, roof = [], []
    shapes.append([*floor, *reversed(roof)])
    return shapes


def key(svg: Svg, legend: Sequence[tuple[str, str]]) -> None:
    """Names the marks of a plot in two columns below it and makes the paper longer for them."""
    start = svg.height
    rows = (len(legend) + 1) // 2
    for number, (style, words) in enumerate(legend):
        x = 62 + 290 * (number // rows)
        y = start + 14 + 24 * (number % rows)
        if style == "good":
            svg.rectangle((x, y - 8), 34, 16, style)
        elif style == "accent-fill":
            svg.circle((x + 17, y), 5, style)
        else:
            inset = 11 if style == "ink" else 0
            svg.line((x + inset, y), (x + 34 - inset, y), style)
        svg.text((x + 44, y + 5), words)
    svg.height = start + 24 * rows + 12


def draw_film(values: Mapping[str, Any], say: Say) -> str:
    """The film on the flat and at the edge, before and after, to one scale."""
    svg = Svg(
        "polishing-pressure-film",
        f"The film before and after {say('passes_to_flat')} passes, on the flat and at the edge",
        "Two sections of lacquer on wood, thickness to scale. The reddened part is taken off, the "
        f"broken line is the least film to keep. {values['film_words']} At the edge: "
        f"{values['edge_film_words']}",
        640, 366,
    )  # fmt: skip
    thickest = max(values["film_thickness"], values["edge_film"])
    scale = 190 / thickest
    for left, name, film, taken, least in (
        (20.0, "On the flat", "film_thickness", values["film_taken"], "least_film"),
        (330.0, "At the edge", "edge_film",
         values["passes_to_flat"] * values["edge_removal"], "edge_least_film"),
    ):  # fmt: skip
        _section(svg, say, left, name, (film, taken, least), scale, values["orange_peel"])
    return svg.markup()


def _section(
    svg: Svg, say: Say, left: float, name: str, film: tuple[str, float, str], scale: float,
    peel: float,
) -> None:  # fmt: skip
    """One section of lacquer on wood, 290 wide, with its words above and below."""
    now, taken, least = say.values[film[0]], film[1], say.values[film[2]]
    width, ground = 290.0, 268.0
    surface = ground - now * scale
    left_over = max(0.0, now - taken)
    after = ground - left_over * scale
    svg.text((left + width / 2, 24), f"{name}: {say(film[0])} now", "middle")
    svg.rectangle((left, ground), width, 26, "wood-light")
    if left_over > 0:
        svg.rectangle((left, after), width, ground - after, "lacquer")
    # Six waves; the mirrored control points of "t" make hills and hollows by turns.
    height = 2 * min(peel * scale / 2, (after - surface) / 2)
    crest, half = short(surface + height / 2), width / 12
    wave = f"M{short(left)},{crest}q{short(half / 2)},{short(-height)} {short(half)},0"
    wave += f"t{short(half)},0" * 11
    svg.path(f"{wave}V{short(after)}H{short(left)}Z", "bad")
    svg.path(wave, "thin")
    svg.line((left, after), (left + width, after), "ink")
    if 0 < least < 1.1 * now:
        line = ground - least * scale
        svg.line((left, line), (left + width, line), "hidden")
    passes = int(say.values["passes_to_flat"])
    count = f"{passes} {'pass' if passes == 1 else 'passes'}"
    film_after = say.quantity(left_over, "um", 0)
    words = f"{film_after} after {count}" if left_over > 0 else f"down to the wood in {count}"
    svg.text((left + width / 2, ground + 50), words, "middle")
    svg.text((left + width / 2, ground + 76), f"keep {say(film[2])} (broken line)", "middle")
