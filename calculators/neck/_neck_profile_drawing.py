"""The drawing of the neck profile: three sections of neck and board, one above the other."""

from collections.abc import Mapping
from typing import Any

from ..engine.compute import Say
from ..engine.drawing import Point, Svg
from ..laws.board_radius import fall_mm
from ..laws.neck_section import contour_depth_mm
from ._neck_profile_solved import fret_place_mm

WIDTH, MIDDLE, WORDS = 640.0, 204.0, 420.0
WIDE, TALL = 360.0, 170.0  # a section at most
STEPS = 15  # points of half a contour
STRING_UP, STRING_DOT = 2.0, 3.0  # mm over the board, and user units


def draw_sections(values: Mapping[str, Any], say: Say) -> str:
    """Sections at the first fret, half-way and at the second place, to one scale."""
    second = values["second_fret"]
    frets = [1, (1 + second) // 2, second]
    shapes = [_Section(values, fret) for fret in frets]
    scale = min(
        WIDE / max(max(shape.width, shape.spread) for shape in shapes),
        TALL / max(shape.thickness + STRING_UP for shape in shapes),
    )
    rows = [max((shape.thickness + STRING_UP) * scale + 26, 104.0) for shape in shapes]
    svg = Svg(
        "neck-profile-sections",
        f"Sections at frets {frets[0]}, {frets[1]} and {frets[2]}, board on, bare wood",
        f"Three sections of neck and board, one above the other, to one scale, from "
        f"{say('bare_first')} thick at fret 1 to {say('bare_second')} at fret {second}. "
        f"{values['shape_words']}",
        WIDTH, sum(rows) + 56,
    )  # fmt: skip
    top = 24.0
    for fret, shape, row in zip(frets, shapes, rows, strict=True):
        shape.draw(svg, top + STRING_UP * scale, scale)
        words = (
            f"fret {fret}",
            f"{say.quantity(shape.width, 'mm', 1)} wide",
            f"{say.quantity(shape.thickness, 'mm', 2)} thick",
            f"margin {say.quantity(shape.margin, 'mm', 1)}",
        )
        for line, text in enumerate(words):
            svg.text((WORDS, top + 18 + 22 * line), text.replace(" -", " −"))
        top += row
    note = "Dots: outer strings. To one scale, bare wood."
    if values["rod_depth"] > 0:
        note = f"Dots: outer strings. Broken: rod channel, {say('rod_depth')} deep. To one scale."
    svg.text((20, svg.height - 14), note, style="label-small")
    return svg.markup()


class _Section:
    """One section: its sizes in mm, and how it is drawn."""

    def __init__(self, values: Mapping[str, Any], fret: int) -> None:
        place = fret_place_mm(values["scale_length"], fret)
        self.values = values
        self.width = values["neck_width_nut"] + values["width_growth"] * place
        self.thickness = values["bare_first"] + values["growth"] * (place - values["first_place"])
        start, end = values["string_spread_nut"], values["string_spread_bridge"]
        self.spread = start + (end - start) * place / values["scale_length"]
        self.margin = (self.width - self.spread) / 2

    def draw(self, svg: Svg, crown_y: float, scale: float) -> None:
        """Draws it with the crown of its board at a height on the paper."""
        values, half = self.values, self.width / 2
        board, radius = values["board_joint"], values["fret_radius"]

        def at(across: float, below_crown: float) -> Point:
            return MIDDLE + across * scale, crown_y + below_crown * scale

        def fall(across: float) -> float:
            return fall_mm(radius, abs(across)) if radius > 0 else 0.0

        # Points close together towards the edge, where the shoulder turns steep.
        reach = [half * (1 - (1 - step / STEPS) ** 2) for step in range(STEPS + 1)]
        right = [
            (x, board + contour_depth_mm(x, half, self.thickness - board, values["fullness"],
                                         values["flat"]))
            for x in reach
        ]  # fmt: skip
        back = [*((-x, z) for x, z in reversed(right)), *right[1:]]
        svg.polygon([at(x, z) for x, z in back], "wood-mid")
        face = [half * (step / 4 - 1) for step in range(9)]
        svg.polygon(
            [*(at(x, fall(x)) for x in face), at(half, board), at(-half, board)], "wood-dark"
        )
        if values["rod_depth"] > 0:
            deep = min(values["rod_depth"], self.thickness - board)
            corner = at(-values["rod_width"] / 2, board)
            svg.rectangle(corner, values["rod_width"] * scale, deep * scale, "hidden")
        for side in (-1, 1):
            x, y = at(side * self.spread / 2, -0.5 * STRING_UP)
            svg.circle((x, y), STRING_DOT, "ink-fill")
