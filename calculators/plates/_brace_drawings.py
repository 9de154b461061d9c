"""The pictures of the brace calculation: the section, the stiffness by height, the carving."""

from collections.abc import Mapping
from typing import Any

from ..engine.compute import Say
from ..engine.drawing import Point, Svg
from ..engine.plot import Axis, Plot
from ..engine.reading import convert
from ..engine.showing import reader_unit
from ..engine.unit_table import UNITS
from ..laws.braced_plate import brace_alone_n_m2, braced_strip_n_m2
from ._brace_solved import height_at, in_order

CURVE_POINTS = 24


def outline(shape: str, width: float, height: float) -> list[Point]:
    """Corners of a section, mm, about the middle of its foot, upwards."""
    if shape == "rectangle":
        return [(-width / 2, 0), (-width / 2, height), (width / 2, height), (width / 2, 0)]
    if shape == "triangle":
        return [(-width / 2, 0), (0, height), (width / 2, 0)]
    steps = [number / 10 - 1 for number in range(21)]
    return [(share * width / 2, height * (1 - share * share)) for share in steps]


def draw_section(values: Mapping[str, Any], say: Say) -> str:
    """Plate and brace across, to scale, now and after, with the line of no strain."""
    now, after = values["section_now"], values["section_after"]
    thickness = values["plate_thickness"]
    # Of a wide strip only the part beside the brace is drawn, broken off at both ends.
    shown = min(values["strip_width"], max(6 * values["brace_width"], 4 * (now + thickness)))
    factor = min(390 / shown, 230 / (now + thickness))
    middle, foot = 320.0, 40 + now * factor
    svg = Svg(
        "brace-stiffness-section",
        f"Section of the brace on its strip of plate: {say('section_now')} now, "
        f"{say('section_after')} after, drawn to scale",
        f"A strip of plate {say('strip_width')} wide and {say('plate_thickness')} thick with the "
        f"brace on it, inside of the box upwards. The reddened part is shaved off. The broken line "
        f"is the line of no strain, {say('axis_now')} from the outer face.",
        640, foot + thickness * factor + 92,
    )  # fmt: skip

    def placed(points: list[Point]) -> list[Point]:
        return [(middle + x * factor, foot - y * factor) for x, y in points]

    half = shown / 2 * factor
    svg.rectangle((middle - half, foot), 2 * half, thickness * factor, "wood-mid")
    if shown < values["strip_width"]:
        for x, out in ((middle - half, -1), (middle + half, 1)):
            ends = (foot - 5, foot + thickness * factor + 5)
            svg.line((x + 5 * out, ends[0]), (x - 2 * out, ends[1]), "ink")
    whole = placed(outline(values["brace_shape"], values["brace_width"], now))
    left = placed(outline(values["brace_shape"], values["brace_width"], after))
    if after < now:
        svg.polygon(whole, "bad")
        svg.polyline(whole, "accent")
    svg.polygon(left, "wood-light")
    axis = foot + (thickness - values["axis_now"]) * factor
    svg.line((middle - half - 30, axis), (middle + half + 30, axis), "hidden")
    edge = middle + values["brace_width"] / 2 * factor
    reach = max(edge + 30, middle + 60)
    svg.dimension((edge, foot - now * factor), (edge, foot), say("section_now"), reach - edge)
    other = middle - values["brace_width"] / 2 * factor
    if after < now:
        away = min(other - 30, middle - 60)
        svg.dimension(
            (other, foot - after * factor), (other, foot), say("section_after"), away - other
        )
    under = foot + thickness * factor
    svg.text(
        (middle, under + 30),
        f"plate {say('plate_thickness')} thick, {say('strip_width')} of it with the brace",
        "middle",
    )
    svg.text(
        (middle, under + 54), f"foot {say('brace_width')} wide; red: to be shaved off", "middle"
    )
    svg.text((middle, under + 78), "broken line: neither pulled nor pressed", "middle")
    return svg.markup()


def draw_curve(values: Mapping[str, Any], say: Say) -> str:
    """Stiffness against the height of the brace: with its strip, and alone."""
    shape, width, brace = values["brace_shape"], values["brace_width"], values["brace_gpa"]
    strip, thickness = values["strip_width"], values["plate_thickness"]
    now, after = values["section_now"], values["section_after"]
    highest = 1.2 * now
    heights = [highest * number / CURVE_POINTS for number in range(CURVE_POINTS + 1)]
    glued = [
        braced_strip_n_m2(shape, width, h, brace, strip, thickness, values["plate_gpa"])
        for h in heights
    ]
    alone = [brace_alone_n_m2(shape, width, h, brace) for h in heights]
    length, stiff = reader_unit("mm", say.system), reader_unit("N.m2", say.system)
    per_mm, per_stiff = convert(1.0, "mm", length), convert(1.0, "N.m2", stiff)
    plot = Plot(
        "brace-stiffness-curve",
        f"Stiffness against height: {say('stiffness_now')} now, {say('stiffness_after')} after",
        "Bending stiffness upwards, height of the brace across. The upper curve is the brace with "
        "its strip of plate, the lower one the brace alone; both climb ever more steeply.",
        Axis(f"Height of the brace, {UNITS[length].shown}", 0, highest * per_mm),
        Axis(f"Stiffness, {UNITS[stiff].shown}", 0, 1.05 * glued[-1] * per_stiff),
    )
    for heights_of, style in ((glued, "accent"), (alone, "second")):
        plot.curve(
            [(h * per_mm, y * per_stiff) for h, y in zip(heights, heights_of, strict=True)], style
        )
    plot.mark((now * per_mm, values["stiffness_now"] * per_stiff), "now")
    apart = (values["stiffness_now"] - values["stiffness_after"]) / glued[-1]
    if after < now:
        point = (after * per_mm, values["stiffness_after"] * per_stiff)
        plot.mark(point)
        if apart > 0.07:
            x, y = plot.place(point)
            anchor = "end" if x > 110 else "start"
            plot.svg.text((x + (4 if anchor == "end" else -4), y - 12), "after", anchor)
    start = plot.svg.height
    for number, (style, words) in enumerate(
        (("accent", "brace and strip of plate"), ("second", "brace alone"))
    ):
        x = 62 + 300 * number
        plot.svg.line((x, start + 12), (x + 34, start + 12), style)
        plot.svg.text((x + 44, start + 17), words)
    plot.svg.height = start + 34
    return plot.markup()


def draw_carving(values: Mapping[str, Any], say: Say) -> str:
    """The carved brace from the side, heights enlarged, with knives and weight."""
    rows = in_order(values["brace_rows"])
    span, place = values["span"], values["load_place"]
    inside = [float(row["place"]) for row in rows if 0 < row["place"] < span]
    places = sorted({0.0, *inside, place, span})
    now = [height_at(rows, "height_now", x) for x in places]
    after = [height_at(rows, "height_after", x) for x in places]
    across, up = 540 / span, 110 / max(now)
    foot = 180.0
    svg = Svg(
        "brace-stiffness-carving",
        f"The carved brace between two knives {say('span')} apart, weight {say('knife_load')}",
        "Side view, heights enlarged. The brace stands on its plate; the reddened part is shaved "
        "off. Triangles are the knives, the arrow is the weight.",
        640, 300,
    )  # fmt: skip

    def line(heights: list[float]) -> list[Point]:
        return [(50 + x * across, foot - h * up) for x, h in zip(places, heights, strict=True)]

    ends = [(50 + span * across, foot), (50.0, foot)]
    svg.polygon([*line(now), *ends], "bad")
    svg.polyline(line(now), "accent")
    svg.polygon([*line(after), *ends], "wood-light")
    svg.rectangle((50, foot), 540, 9, "wood-mid")
    for x in (50.0, 590.0):
        svg.polygon(((x, foot + 9), (x - 10, foot + 31), (x + 10, foot + 31)), "metal")
    x = 50 + place * across
    top = foot - height_at(rows, "height_now", place) * up
    svg.line((x, min(30.0, top - 20)), (x, top - 3), "ink")
    svg.polygon(((x, top - 1), (x - 6, top - 13), (x + 6, top - 13)), "ink-fill")
    anchor = "end" if x > 430 else "start"
    svg.text((x + (-10 if anchor == "end" else 10), 24), say("knife_load"), anchor)
    svg.dimension((50, foot + 31), (x, foot + 31), say("load_place"), 22, above=False)
    svg.dimension((50, foot + 31), (590, foot + 31), say("span"), 64, above=False)
    return svg.markup()
