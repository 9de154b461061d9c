"""The pictures of the top's calculation: the bent top, and rise against brace height."""

from collections.abc import Mapping
from typing import Any

from ..engine.compute import Say
from ..engine.drawing import Point, Svg
from ..engine.plot import Axis, Plot
from ..engine.reading import convert
from ..engine.showing import reader_unit
from ..engine.unit_table import UNITS
from ..laws.bending_beam import couple_cubics
from ..laws.braced_plate import braced_strip_n_m2, plate_alone_n_m2

CURVE_POINTS = 24
SIDE_POINTS = 20


def stiffness_at(values: Mapping[str, Any], height: float) -> float:
    """Stiffness of the braced top, N·m², with braces of another height, mm."""
    given = (values["strip_width"], values["top_thickness"], values["plate_gpa"])
    glued = braced_strip_n_m2(
        values["brace_shape"], values["brace_width"], height, values["brace_gpa"], *given
    )
    added = glued - plate_alone_n_m2(*given)
    lean = values["lean_share"] / 100
    bare = values["plate_part"] + values["brace_count"] * added * lean
    return float(values["held_times"] * bare)


def bent_line(values: Mapping[str, Any]) -> list[Point]:
    """The bent line of the top, mm from the upper brace and mm upwards, first minute."""
    a, span = values["bridge_place"], values["span"]
    before, after = couple_cubics(
        values["couple"], a, span, values["stiffness"], values["ends"] == "clamped"
    )

    def height(cubic: tuple[float, float, float], x: float) -> float:
        return x * (cubic[0] + x * (cubic[1] + x * cubic[2]))

    steps = [number / SIDE_POINTS for number in range(SIDE_POINTS + 1)]
    front = [(a * share, height(before, a * share)) for share in steps]
    back = [(span - s, height(after, s)) for s in ((span - a) * share for share in steps)]
    return [*front, *reversed(back[:-1])]


def draw_side(values: Mapping[str, Any], say: Say) -> str:
    """The top from the side, much enlarged in height: rest, bend, bridge and pull."""
    svg = Svg(
        "top-deflection-side",
        f"The top from the side: it rises by {say('rise')} behind the bridge and sinks by "
        f"{say('sink')} before it in the first minute",
        "Long section, heights much enlarged. The broken line is the top without strings, the full "
        "line the top under them. The bridge stands on it and leans with it; the strings pull at "
        "the saddle towards the neck.",
        640, 330,
    )  # fmt: skip
    span, level = values["span"], 190.0
    across = 560 / span
    deepest = max(values["rise"], values["sink"], 1e-9)
    line = [(40 + x * across, level - y / deepest * 55) for x, y in bent_line(values)]
    svg.line((40, level), (600, level), "hidden")
    svg.polyline(line, "ink")
    for x in (40.0, 600.0):
        svg.polygon(((x, level + 2), (x - 10, level + 24), (x + 10, level + 24)), "wood-mid")
    place = 40 + values["bridge_place"] * across
    foot = line[SIDE_POINTS][1]
    # The bridge leans with the line, as far as the line does on paper, at most a little.
    after, before = line[SIDE_POINTS + 1], line[SIDE_POINTS - 1]
    slope = (after[1] - before[1]) / max(after[0] - before[0], 1e-6)
    lean = max(-0.5, min(0.5, slope))

    def at(x: float, y: float) -> Point:
        return place + x + lean * y, foot + lean * x - y

    svg.polygon((at(-20, 0), at(20, 0), at(14, 24), at(-14, 24)), "wood-dark")
    svg.polygon((at(-3, 24), at(3, 24), at(3, 40), at(-3, 40)), "paper")
    svg.polyline((at(-3, 24), at(-3, 40), at(3, 40), at(3, 24)), "thin")
    saddle = at(0, 40)
    svg.line(saddle, (30, saddle[1] - 8), "accent")
    head = (30.0, saddle[1] - 8)
    svg.polygon((head, (head[0] + 13, head[1] - 6), (head[0] + 13, head[1] + 6)), "accent-fill")
    svg.text((40, 28), f"strings pull with {say('string_tension')}")
    svg.text((600, 28), f"couple {say('couple')}", "end")
    svg.text((40, 246), "upper brace", "start", "label-small")
    svg.text((600, 246), "end block", "end", "label-small")
    svg.text((320, 276), f"sinks {say('sink')}, rises {say('rise')}, turns {say('turn')}", "middle")
    svg.text(
        (320, 302),
        f"settled: rises {say('rise_low')} to {say('rise_high')}", "middle",
    )  # fmt: skip
    svg.text((320, 322), "heights much enlarged", "middle", "label-small")
    return svg.markup()


def draw_range(values: Mapping[str, Any], say: Say) -> str:
    """The settled rise against the height of the braces, as a band, between the two marks."""
    length = reader_unit("mm", say.system)
    per_mm = convert(1.0, "mm", length)
    now = values["brace_height"]
    lowest, highest = 0.6 * now, 1.4 * now
    heights = [
        lowest + (highest - lowest) * number / CURVE_POINTS for number in range(CURVE_POINTS + 1)
    ]
    scale = [values["stiffness"] / stiffness_at(values, h) for h in heights]
    seen = values["rise_high"] * min(3.0, scale[0])
    top = 1.1 * max(seen, values["rise_most"], 0.05)
    plot = Plot(
        "top-deflection-range",
        f"Rise of the settled top against brace height: {say('rise_low')} to {say('rise_high')} at "
        f"{say('brace_height')}",
        "Rise behind the bridge upwards, height of the braces across. The shaded band is the "
        "spread of wood and settling; the two level lines are the marks for too weak and too "
        f"stiff. {values['answer']}",
        Axis(f"Height of the braces, {UNITS[length].shown}", lowest * per_mm, highest * per_mm),
        Axis(f"Rise, settled, {UNITS[length].shown}", 0, top * per_mm),
    )

    def curve(rise: float) -> list[Point]:
        return [
            (h * per_mm, min(top, rise * times) * per_mm)
            for h, times in zip(heights, scale, strict=True)
        ]

    low, high = curve(values["rise_low"]), curve(values["rise_high"])
    plot.area([*low, *reversed(high)], "lacquer")
    plot.curve(low, "ink")
    plot.curve(high, "ink")
    for mark, style in (("rise_most", "accent"), ("rise_least", "second")):
        y = values[mark] * per_mm
        plot.curve([(lowest * per_mm, y), (highest * per_mm, y)], style)
    plot.upright(now * per_mm, "your braces", "hidden")
    svg, start = plot.svg, plot.svg.height
    svg.rectangle((62, start + 4), 34, 16, "lacquer")
    svg.text((106, start + 17), "spread of wood and settling: a range, no verdict")
    for number, (style, words) in enumerate(
        (("accent", "your mark: too weak above"), ("second", "your mark: too stiff below"))
    ):
        x = 62 + 290 * number
        svg.line((x, start + 36), (x + 34, start + 36), style)
        svg.text((x + 44, start + 41), words)
    svg.height = start + 58
    return plot.markup()
