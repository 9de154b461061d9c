"""The drawing of the corner: both lines with what lies in them, and the mitre, to scale."""

import math
from collections.abc import Callable, Mapping
from typing import Any

from ..engine.compute import Say
from ..engine.drawing import Point, Svg
from ._mitre_solved import mitre_place_mm

LEFT, RIGHT, TOP, FOOT = 128.0, 398.0, 42.0, 312.0  # where the corner may lie
WORDS = 424.0
PARTS = 3  # each line is drawn as three, dark, light, dark
STEPS = 8  # points along a curve
FILLS = ("wood-dark", "paper", "wood-dark")

Place = Callable[[float], Point]
Line = Callable[[Point, float], list[Point]]


def draw_corner(values: Mapping[str, Any], say: Say) -> str:
    """The corner from above with both lines, each cut into three as a bundle is."""
    width_1 = values["width_1"]
    wide = max(width_1, values["width_2"], values["mitre_length"])
    tip = max(values["tip_along"], values["length_2"] - values["inner_2"], 0.0)
    stub = tip + 1.4 * wide
    end = _line_2(values, stub)

    def mitre(share: float) -> Point:
        if values["joint"] == "straight":
            return share * values["tip_along"], share * width_1
        along = mitre_place_mm(
            share, width_1, values["width_2"], values["corner_angle"], values["arc_radius"],
            values["bulge"],
        )  # fmt: skip
        return along, share * width_1

    shapes = [_shape(mitre, number, stub, width_1, end) for number in range(PARTS)]
    points = [point for pair in shapes for shape in pair for point in shape]
    left, right = min(x for x, _ in points), max(x for x, _ in points)
    low, high = min(y for _, y in points), max(y for _, y in points)
    scale = min((RIGHT - LEFT) / (right - left), (FOOT - TOP) / (high - low))
    height = TOP + (high - low) * scale + 42

    def at(point: Point) -> Point:
        return LEFT + (point[0] - left) * scale, TOP + (high - point[1]) * scale

    svg = Svg(
        "mitre-angle-corner",
        f"Line 1 sawn {say('saw_1')} and line 2 {say('saw_2')} from square",
        f"The corner of {say('corner_angle')} from above, drawn to scale. Line 1, "
        f"{say('width_1')} wide, runs to the right; line 2, {say('width_2')} wide, runs off at the "
        f"corner. They meet in a mitre {say('mitre_length')} long from the outer to the inner tip.",
        640, max(height, 236),
    )  # fmt: skip
    for first, second, fill in zip(*zip(*shapes, strict=True), FILLS, strict=True):
        svg.polygon([at(point) for point in first], fill)
        svg.polygon([at(point) for point in second], fill)
    tip_point = mitre(1.0)
    reach = 0.16
    svg.line(
        at((-reach * tip_point[0], -reach * tip_point[1])),
        at(((1 + reach) * tip_point[0], (1 + reach) * tip_point[1])), "accent",
    )  # fmt: skip
    x, y = at((stub, 0.0))
    svg.text((x, y + 24), f"line 1, {say('width_1')}", "end")
    ends = at(end(mitre(0.0), 0.0)[-1])[0], at(end(tip_point, 1.0)[-1])[0]
    middle = min(max(sum(ends) / 2, 80.0), RIGHT - 60)
    svg.text((middle, TOP - 14), f"line 2, {say('width_2')}", "middle")
    words = [
        f"Line 1: saw {say('saw_1')}", f"Line 2: saw {say('saw_2')}", "(both from square)",
        f"Tip to tip {say('mitre_length')}",
    ]  # fmt: skip
    if values["angle_error"] != 0:
        words += ["", f"Both cuts {say.quantity(abs(values['angle_error']), 'deg', 2)} off",
                  f"open {say('gap_both')}"]  # fmt: skip
    for line, text in enumerate(words):
        svg.text((WORDS, 60 + 24 * line), text.replace(" -", " −"))
    return svg.markup()


def _line_2(values: Mapping[str, Any], stub: float) -> Line:
    """Where line 2 lies: from a point on it out to the end of its stub, ``inwards`` (0 to 1)."""
    corner = math.radians(values["corner_angle"])
    ahead, across = (math.cos(corner), math.sin(corner)), (math.sin(corner), -math.cos(corner))
    width = values["width_2"]
    if values["joint"] == "straight":

        def end(_: Point, inwards: float) -> list[Point]:
            x, y = (stub * ahead[place] + inwards * width * across[place] for place in (0, 1))
            return [(x, y)]

        return end
    radius, bulge = values["arc_radius"], values["bulge"]
    turn = min(stub / radius, 1.4)
    centre = (bulge * radius * across[0], bulge * radius * across[1])

    def along_arc(start: Point, inwards: float) -> list[Point]:
        from_x, from_y = start[0] - centre[0], start[1] - centre[1]
        first = math.atan2(
            from_x * ahead[0] + from_y * ahead[1],
            -bulge * (from_x * across[0] + from_y * across[1]),
        )
        ring = radius - bulge * inwards * width
        points = []
        for step in range(1, STEPS + 1):
            angle = first + (turn - first) * step / STEPS
            out, on = -bulge * ring * math.cos(angle), ring * math.sin(angle)
            points.append(
                (centre[0] + out * across[0] + on * ahead[0],
                 centre[1] + out * across[1] + on * ahead[1])
            )  # fmt: skip
        return points

    return along_arc


def _shape(
    mitre: Place, number: int, stub: float, width_1: float, line_2: Line
) -> tuple[list[Point], list[Point]]:
    """One third of either line: from the mitre out to the square end of its stub."""
    low, high = number / PARTS, (number + 1) / PARTS
    cut = [mitre(low + (high - low) * step / STEPS) for step in range(STEPS + 1)]
    first = [(stub, low * width_1), *cut, (stub, high * width_1)]
    return first, [*reversed(line_2(cut[0], low)), *cut, *line_2(cut[-1], high)]
