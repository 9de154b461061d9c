"""The pictures of the break-angle calculation: the head from the side, the bridge in section."""

import math
from collections.abc import Mapping, Sequence
from typing import Any

from ..engine.compute import Say
from ..engine.drawing import Point, Svg

NECK_MM, HEAD_MM, BRIDGE_MM = 48.0, 15.0, 9.5


class Sheet:
    """Shapes in millimetres, x to the right and y up, fitted into a box of the drawing."""

    def __init__(self) -> None:
        self.shapes: list[tuple[str, list[Point], str]] = []

    def add(self, kind: str, points: Sequence[Point], style: str) -> None:
        """A "polygon", a "line", or a "circle" (its middle and a point on it)."""
        self.shapes.append((kind, list(points), style))

    def draw(self, svg: Svg, top: float, height: float) -> None:
        """Draws all of it to one scale, in the middle of a strip of the paper."""
        spread = [point for kind, points, _ in self.shapes for point in _extent(kind, points)]
        xs, ys = [x for x, _ in spread], [y for _, y in spread]
        wide, tall = max(xs) - min(xs), max(ys) - min(ys)
        scale = min(592 / wide, height / tall)
        left = 320 - scale * (min(xs) + max(xs)) / 2
        base = top + height / 2 + scale * (min(ys) + max(ys)) / 2
        for kind, points, style in self.shapes:
            placed = [(left + x * scale, base - y * scale) for x, y in points]
            if kind == "polygon":
                svg.polygon(placed, style)
            elif kind == "line":
                svg.polyline(placed, style)
            else:
                svg.circle(placed[0], math.dist(*placed), style)


def _extent(kind: str, points: Sequence[Point]) -> Sequence[Point]:
    if kind != "circle":
        return points
    (x, y), reach = points[0], math.dist(*points)
    return [(x - reach, y - reach), (x + reach, y + reach)]


def draw_bends(values: Mapping[str, Any], say: Say) -> str:
    """The weakest string at the nut and the weakest at the saddle, each to scale."""
    svg = Svg(
        "break-angle-bends",
        f"String {values['weak_string']} behind the nut, {say('nut_down')} down; string "
        f"{values['flat_string']} over the saddle, {say('saddle_angle')}",
        "Above, the head from the side with the string that has the least angle behind the nut. "
        "Below, the bridge in section with the string that has the least angle over the saddle. "
        f"Each to scale. {values['nut_words']} {values['saddle_words']}",
        640, 548,
    )  # fmt: skip
    svg.text((24, 26), f"Nut: string {values['weak_string']} goes down by {say('nut_down')}")
    _head(values).draw(svg, 44, 216)
    svg.text((24, 308), f"Saddle: string {values['flat_string']} bends by {say('saddle_angle')}")
    _bridge(values).draw(svg, 326, 200)
    return svg.markup()


def _head(values: Mapping[str, Any]) -> Sheet:
    """The head from the side; the string in the nut is the origin."""
    sheet = Sheet()
    head = math.radians(values["head_angle"])
    face_x, face_y = math.cos(head), -math.sin(head)

    def at(along: float, over_face: float) -> Point:
        """A point by the face of the head: along it from the nut, and square over it."""
        over = over_face - values["string_over_face"]
        return along * face_x - over * face_y, along * face_y + over * face_x

    along = values["weak_along"]
    tip = along + 14
    board = -1.6
    heel = min(board - 12, at(0, -HEAD_MM)[1])
    sheet.add("polygon", [at(0, 0), at(tip, 0), at(tip, -HEAD_MM), at(0, -HEAD_MM), (-NECK_MM, heel),
                          (-NECK_MM, board), (-5.5, board), (-5.5, at(0, 0)[1])], "wood-mid")  # fmt: skip
    if values["head"] == "solid":
        half, top = values["post_diameter"] / 2, values["hole_height"] + 3
        sheet.add("polygon", [at(along - half, 0), at(along - half, top), at(along + half, top),
                              at(along + half, 0)], "metal")  # fmt: skip
    else:
        middle = at(along, -values["roller_depth"])
        rim = at(along + values["roller_diameter"] / 2, -values["roller_depth"])
        sheet.add("circle", [middle, rim], "metal")
    sheet.add("polygon", [(-5.5, 0.6), (0, 0.3), at(0, 0), (-5.5, at(0, 0)[1])], "felt")
    meets = at(values["forward"], values["string_over_face"] - values["fall"])
    sheet.add("line", [(0, 0), (min(tip, meets[0]), 0)], "hidden")
    sheet.add("line", [(-NECK_MM, 0), (0, 0), meets], "accent")
    return sheet


def _bridge(values: Mapping[str, Any]) -> Sheet:
    """The bridge in section; the crest under the string is the origin."""
    sheet = Sheet()
    showing, back, ramp = values["flat_showing"], values["pin_back"], values["ramp_depth"]
    top, foot = -showing, -showing - max(BRIDGE_MM, ramp + 3)
    front = 34.0
    wall = back + 1.2
    hole = wall + 4.4
    sheet.add("polygon", [(-11, top - 3.5), (-6, top), (max(2.0, back - ramp * 1.5), top),
                          (back, top - ramp), (wall, top - ramp - 1), (wall, foot), (-11, foot)],
              "wood-dark board")  # fmt: skip
    sheet.add("polygon", [(hole, top), (hole + 9, top - 2.5), (hole + 9, foot), (hole, foot)],
              "wood-dark board")  # fmt: skip
    sheet.add("polygon", [(wall + 1, foot), (wall + 1, top + 1.2), (hole, top + 1.2), (hole, foot)],
              "felt")  # fmt: skip
    sheet.add("polygon", [(-1.3, -0.4), (0, 0), (1.3, -0.4), (1.3, top - 5.5), (-1.3, top - 5.5)],
              "felt")  # fmt: skip
    climb = math.tan(math.radians(values["front_rise"]))
    reach = min(back + 6, front)
    sheet.add("line", [(0, 0), (reach, reach * climb)], "hidden")
    sheet.add("line", [(-front, -front * climb), (0, 0), (back, top - ramp),
                       (wall + 0.5, top - ramp - 1.5), (wall + 0.5, foot)], "accent")  # fmt: skip
    return sheet
