"""The pictures of the arch's calculation: the outline, and the side laid flat."""

from collections.abc import Mapping, Sequence
from typing import Any

from ..engine.compute import Say
from ..engine.drawing import Point, Svg
from ..engine.plot import Axis, Plot
from ..engine.reading import convert
from ..engine.showing import reader_unit
from ..engine.unit_table import UNITS
from ._arch_solved import go_round


def draw_plan(values: Mapping[str, Any], say: Say) -> str:
    """The outline in plan, to scale, with its stations."""
    half = [(rim.place.x, rim.place.y) for rim in go_round(values).rims]
    lowest, highest = min(x for x, _ in half), max(x for x, _ in half)
    widest = max(abs(y) for _, y in half)
    factor = min(540 / (highest - lowest), 340 / (2 * widest))
    left = 320 - (lowest + highest) / 2 * factor
    middle = 34 + widest * factor
    svg = Svg(
        "arch-geometry-plan",
        f"Outline of the body, {say('body_length')} long and {say('widest')} wide, to scale",
        "Plan of the body, neck end to the left. Thin lines are the stations, the broken line is "
        "the centre line.",
        640, middle + widest * factor + 62,
    )  # fmt: skip

    def at(x: float, y: float) -> Point:
        return left + x * factor, middle - y * factor

    svg.polygon(
        [*(at(x, y) for x, y in half), *(at(x, -y) for x, y in reversed(half))], "wood-light"
    )
    for row in values["outline"]:
        x, y = row["place"], row["half_width"]
        svg.line(at(x, y), at(x, -y), "thin")
    svg.line(at(0, 0), at(values["body_length"], 0), "hidden")
    bridge = at(values["bridge_from_neck"], 0)
    svg.line((bridge[0], bridge[1] - 22), (bridge[0], bridge[1] + 22), "saddle")
    svg.text((left + lowest * factor, 22), "neck end", "start", "label-small")
    svg.text((left + highest * factor, 22), "tail", "end", "label-small")
    svg.text(
        (320, svg.height - 34),
        f"{say('body_length')} long, {say('widest')} wide, {say('area')}", "middle",
    )  # fmt: skip
    svg.text(
        (320, svg.height - 12), f"red: saddle place, the top rises {say('bridge_rise')} there",
        "middle",
    )  # fmt: skip
    return svg.markup()


def draw_side(values: Mapping[str, Any], say: Say) -> str:
    """One side laid flat: both edges with their curve much enlarged, the depth shortened."""
    rims = go_round(values).rims
    tops, backs = [rim.top for rim in rims], [rim.back for rim in rims]
    svg = Svg(
        "arch-geometry-side",
        f"One side laid flat, {say('side_length')} long, {say('shallowest')} to {say('deepest')} "
        "deep",
        "The side as a flat strip, neck end to the left, top edge up. The curve of both edges is "
        "much enlarged and the depth between them shortened; thin lines are the stations.",
        640, 330,
    )  # fmt: skip
    across = 540 / values["side_length"]
    # One enlargement for both edges; the depth between them is shortened to 70 units.
    up = 110 / max(max(tops) - min(tops) + max(backs) - min(backs), 0.5)
    upper = 54.0
    lower = upper + (max(tops) - min(tops)) * up + 70

    def top_at(height: float) -> float:
        return upper + (max(tops) - height) * up

    def back_at(height: float) -> float:
        return lower + (max(backs) - height) * up

    edge = [(50 + rim.along * across, top_at(rim.top)) for rim in rims]
    foot = [(50 + rim.along * across, back_at(rim.back)) for rim in rims]
    svg.polygon([*edge, *reversed(foot)], "wood-mid")
    for above, below, rim in zip(edge, foot, rims, strict=True):
        if rim.station:
            svg.line(above, below, "thin")
    level = top_at(0.0)
    svg.line((40, level), (600, level), "hidden")
    svg.text((50, 24), "neck end", "start", "label-small")
    svg.text((590, 24), "tail", "end", "label-small")
    svg.text((320, 24), "top edge; broken line: level of the blocks", "middle", "label-small")
    half = (upper + lower) / 2 + (max(tops) - min(tops)) * up / 2 + 6
    for x, name, anchor in ((56.0, "depth_neck_block", "start"), (584.0, "depth_end_block", "end")):
        svg.text((x, half), say(name), anchor)
    svg.text((320, 274), f"{say('side_length')} along the side", "middle")
    svg.text((320, 298), f"{say('shallowest')} to {say('deepest')} deep", "middle")
    svg.text(
        (320, 320), "curves of both edges enlarged alike, depth shortened", "middle",
        "label-small",
    )  # fmt: skip
    return svg.markup()


def draw_edges(values: Mapping[str, Any], say: Say) -> str:
    """How far both edges leave the straight line from block to block, along the side."""
    taper = (values["depth_end_block"] - values["depth_neck_block"]) / values["body_length"]
    rims = go_round(values).rims
    top = [(rim.along, rim.top) for rim in rims]
    neck = values["depth_neck_block"]
    back = [(rim.along, -rim.back - neck - taper * rim.place.x) for rim in rims]
    unit = reader_unit("mm", say.system)
    per = convert(1.0, "mm", unit)
    heights = [height for _, height in (*top, *back)]
    low, high = min(0.0, *heights), max(0.2, *heights)
    plot = Plot(
        "arch-geometry-edges",
        "How far the edges of the side leave the straight line from block to block",
        "Distance along the side across, neck end to the left. Upwards is outwards: towards the "
        "top for the top edge, towards the back for the back edge.",
        Axis(f"Along the side, {UNITS[unit].shown}", 0, values["side_length"] * per),
        Axis(f"Past the straight line, {UNITS[unit].shown}", low * 1.1 * per, high * 1.1 * per),
    )
    for points, style in ((back, "second"), (top, "accent")):
        plot.curve([(x * per, y * per) for x, y in points], style)
    _key(plot.svg, (("accent", "top edge"), ("second", "back edge")))
    return plot.markup()


def _key(svg: Svg, legend: Sequence[tuple[str, str]]) -> None:
    """Names two curves below a plot."""
    start = svg.height
    for number, (style, words) in enumerate(legend):
        x = 62 + 300 * number
        svg.line((x, start + 12), (x + 34, start + 12), style)
        svg.text((x + 44, start + 17), words)
    svg.height = start + 34
