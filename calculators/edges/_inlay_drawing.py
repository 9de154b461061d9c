"""The drawings of the inlay: the pocket in section, or the strip in its curve from above."""

import math
from collections.abc import Mapping
from typing import Any

from ..engine.compute import Say
from ..engine.drawing import Point, Svg

LEFT, RIGHT, WIDTH = 40.0, 600.0, 640.0
STEPS = 32


def draw_pocket(values: Mapping[str, Any], say: Say) -> str:
    """Section across the board: pocket, shell, the surface after levelling; heights enlarged."""
    tilted = values["pocket_floor"] == "tilted"
    middle = 0.0 if tilted else values["piece_offset"]
    half, radius = values["piece_width"] / 2, values["round_radius"]
    start, end = middle - 1.5 * half, middle + 1.5 * half
    across = (RIGHT - LEFT) / (end - start)
    places = [start + (end - start) * step / STEPS for step in range(STEPS + 1)]

    def fall(x: float) -> float:
        return radius - math.sqrt(radius**2 - x**2) if radius > 0 else 0.0

    if radius > 0:
        places = [x for x in places if abs(x) <= 0.95 * radius]
    levelled, proud, pocket = values["levelled"], values["shell_proud"], values["pocket_depth"]
    lowest = max(pocket, max(levelled + fall(x) for x in places)) + 0.35 * pocket
    times = min(60.0, 200.0 / (proud + lowest)) / across
    up = times * across
    top = 84.0

    def at(x: float, height: float) -> Point:
        return LEFT + (x - start) * across, top + (proud - height) * up

    times_words = f"{times:.0f} times" if times >= 1.5 else "not"
    svg = Svg(
        "inlay-depth-pocket",
        f"The piece in its pocket: {say('left_edge')} of shell left at the outer edge",
        f"Section across the board, heights drawn {times_words} larger than widths. The pocket is "
        f"{say('pocket_depth')} deep. Levelling takes the reddened part off; "
        f"{say('left_edge')} of shell is left at the outer edge and {say('left_top')} at the "
        "highest place.",
        WIDTH, top + (proud + lowest) * up + 74,
    )  # fmt: skip
    before = [at(x, -fall(x) if tilted else 0.0) for x in places]
    after = [at(x, -levelled - fall(x)) for x in places]
    foot = at(start, -lowest)[1]
    svg.polygon([*before, (before[-1][0], foot), (before[0][0], foot)], "bad")
    svg.polygon([*after, (after[-1][0], foot), (after[0][0], foot)], "wood-dark")
    wall = [middle - half, middle + half]
    floor = at(wall[0], -pocket)
    wide = 2 * half * across
    svg.rectangle((floor[0], at(0, proud)[1]), wide, floor[1] - at(0, proud)[1], "paper")
    under = max(1.5, values["glue_film"] * up)
    svg.rectangle((floor[0], floor[1] - under), wide, under, "glue")
    shell_y = floor[1] - under
    svg.rectangle((floor[0], at(0, proud)[1]), wide, shell_y - at(0, proud)[1], "bad")
    inside = [x for x in places if wall[0] < x < wall[1]]
    line = [at(x, -levelled - fall(x)) for x in (wall[0], *inside, wall[1])]
    kept = [(x, min(y, shell_y)) for x, y in line]
    svg.polygon([*kept, (kept[-1][0], shell_y), (kept[0][0], shell_y)], "lacquer")
    svg.polyline(before, "hidden")
    svg.polyline(after, "accent")
    svg.polyline([(floor[0], kept[0][1]), floor, (floor[0] + wide, floor[1]),
                  (floor[0] + wide, kept[-1][1])], "ink")  # fmt: skip
    svg.text((LEFT, 24), f"pocket {say('pocket_depth')} deep")
    svg.text((LEFT, 48), f"board falls {say('edge_fall')} at the outer edge")
    for y, words, name in ((24, "left at the outer edge", "left_edge"),
                           (48, "at the highest place", "left_top")):  # fmt: skip
        size = say(name) if values[name] > 0 else "none"
        svg.text((RIGHT, y), f"{words} {size}", "end")
    drawn = f"Heights drawn {times:.0f} times too large." if times >= 1.5 else "To scale."
    note = "Red line: after levelling. Broken: before."
    svg.text((LEFT, svg.height - 38), f"{note} {drawn}", style="label-small")
    from_where = "the piece's middle" if tilted else "the centre line"
    svg.text((LEFT, svg.height - 14),
             f"Outer edge at the right, {say('edge_reach')} from {from_where}.",
             style="label-small")  # fmt: skip
    return svg.markup()


def draw_strip(values: Mapping[str, Any], say: Say) -> str:
    """The channel from above in its curve, with the longest piece that lies in it whole."""
    outer, width = values["curve_radius"], values["channel_width"]
    length, strip = values["longest_straight"], values["strip_width"]
    half_view = min(0.75 * length, 0.9 * outer)
    inner = outer - width
    dip = outer - math.sqrt(outer**2 - half_view**2)
    scale = min((RIGHT - LEFT) / (2 * half_view), 150.0 / (width + dip))
    top = 70.0

    def at(x: float, y: float) -> Point:
        return WIDTH / 2 + x * scale, top + (outer - y) * scale

    def arc(radius: float) -> list[Point]:
        reach = min(half_view, 0.98 * max(radius, 0.0))
        turn = math.asin(reach / radius) if radius > 0 else 0.0
        angles = [turn * (2 * step / STEPS - 1) for step in range(STEPS + 1)]
        return [at(radius * math.sin(a), radius * math.cos(a)) for a in angles]

    outside, inside = arc(outer), arc(inner)
    bottom = max(point[1] for point in (*outside, *inside)) + 20
    svg = Svg(
        "inlay-depth-strip",
        f"The longest piece that lies in uncracked: {say('longest_straight')}",
        f"The channel, {say('channel_width')} wide, from above in a curve of "
        f"{say('curve_radius')}, to scale. A straight piece of strip {say('longest_straight')} "
        "long touches the inner wall in its middle and the outer wall with both corners.",
        WIDTH, bottom + 66,
    )  # fmt: skip
    left, right = outside[0][0], outside[-1][0]
    svg.polygon([*outside, (right, top - 10), (left, top - 10)], "wood-light")
    svg.polygon([*outside, *reversed(inside)], "paper")
    svg.polygon([*inside, (inside[-1][0], bottom), (inside[0][0], bottom)], "wood-light")
    high = at(-length / 2, inner + strip)
    svg.rectangle(high, length * scale, strip * scale, "lacquer")
    svg.rectangle(high, length * scale, strip * scale, "ink")
    svg.text((LEFT, 24), f"channel {say('channel_width')} wide, {say('channel_depth')} deep")
    svg.text((LEFT, 48), f"curve {say('curve_radius')} at its outer wall")
    svg.text((RIGHT, 24), f"longest straight piece {say('longest_straight')}", "end")
    parts = values["parts_of_piece"]
    words = "lies in whole" if parts == 1 else f"lies in as {say('parts_of_piece')} parts"
    svg.text((RIGHT, 48), f"{say('strip_piece')} {words}", "end")
    svg.text((LEFT, svg.height - 14), "From above, to scale; the curve's centre is below.",
             style="label-small")  # fmt: skip
    return svg.markup()
