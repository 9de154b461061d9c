"""The pictures of the compound-radius calculation: sections of the board, radius along it."""

import math
from collections.abc import Mapping
from itertools import pairwise
from typing import Any

from ..engine.compute import Say
from ..engine.drawing import Point, Svg
from ..engine.plot import Axis, Plot
from ..engine.reading import convert
from ..engine.showing import reader_unit
from ..engine.unit_table import UNITS

ACROSS, TALL, SPACE = 560.0, 96.0, 66.0
ARC_POINTS = 16
MIDDLE = 320.0


def draw_sections(values: Mapping[str, Any], say: Say) -> str:
    """The board cut across at the nut, half-way along and at the last fret, all to one scale."""
    thick, growth = values["board_joint"], values["growth"]
    half_way = values["frets"] // 2
    widens = (values["string_spread_bridge"] - values["string_spread_nut"]) / values["scale_length"]
    cuts = []
    for words, fret in (("Nut", 0), ("Fret", half_way), ("Fret", values["frets"])):
        place = values["scale_length"] * (1 - 2 ** (-fret / 12))
        if fret or words == "Nut":
            cuts.append((
                words if words == "Nut" else f"Fret {fret}",
                values["fret_radius"] + growth * place,
                values["width_nut"] + widens * place,
            ))  # fmt: skip
    widest = max(width for _, _, width in cuts)
    scale = min(ACROSS / widest, TALL / thick)
    svg = Svg(
        "compound-radius-sections",
        f"The board across: radius {say('fret_radius')} at the nut, {say('end_radius')} at the "
        "last fret",
        "Sections of the board, to scale, one above the other. A broken line at the height of the "
        f"middle shows how far the edges fall away: {say('nut_fall')} at the nut, "
        f"{say('end_fall')} at the last fret.",
        640, 14 + len(cuts) * (thick * scale + SPACE),
    )  # fmt: skip
    top = 44.0
    for words, radius, width in cuts:
        half = width / 2
        fall = radius - math.sqrt(radius**2 - half**2)
        steps = [half * (number / ARC_POINTS * 2 - 1) for number in range(ARC_POINTS + 1)]
        arc: list[Point] = [
            (MIDDLE + x * scale, top + (radius - math.sqrt(radius**2 - x**2)) * scale)
            for x in steps
        ]
        foot = top + thick * scale
        left, right = arc[0][0], arc[-1][0]
        svg.polygon([*arc, (right, foot), (left, foot)], "wood-dark board")
        svg.line((left - 14, top), (right + 14, top), "hidden")
        svg.text((left, top - 10), f"{words}: radius {say.quantity(radius, 'mm', 1)}")
        svg.text((left, foot + 17), f"{say.quantity(width, 'mm', 1)} wide, edges "
                 f"{say.quantity(fall, 'mm', 2)} lower", style="label-small")  # fmt: skip
        top = foot + SPACE
    return svg.markup()


def draw_radius(values: Mapping[str, Any], say: Say) -> str:
    """Radius of the board along its length, and the blocks that serve each stretch of it."""
    unit = reader_unit("mm", say.system)
    per = convert(1.0, "mm", unit)
    start, end = values["fret_radius"], values["end_radius"]
    rows = values["block_rows"]
    spare = max(0.12 * (end - start), 0.04 * end)
    # The bands that reach past the board's own radii are shown too, if they are not very wide.
    low = min(start - spare, max(0.75 * start, rows[0]["least"] - spare))
    most = rows[-1]["most"] or 2 * end
    high = max(end + spare, min(1.3 * end, most + spare))
    length = values["last_slot"]
    plot = Plot(
        "compound-radius-radius",
        f"Radius along the board, from {say('fret_radius')} to {say('end_radius')}",
        "Distance from the nut across, radius upwards. The sloping line is the board. Each level "
        "line is one sanding block over the stretch it serves, and the band around it holds every "
        f"radius that would do there. {values['block_words']}",
        Axis(f"From the nut, {UNITS[unit].shown}", 0, length * per),
        Axis(f"Radius, {UNITS[unit].shown}", low * per, high * per),
    )
    joints = [
        0.0,
        *((a["stretch_to"] + b["stretch_from"]) / 2 for a, b in pairwise(rows)),
        length,
    ]
    spans = [(row, *ends) for row, ends in zip(rows, pairwise(joints), strict=True)]
    for row, left, right in spans:
        least = max(low, row["least"]) * per
        most = high * per if row["most"] is None else min(high, row["most"]) * per
        left, right = left * per, right * per
        plot.area(((left, least), (right, least), (right, most), (left, most)), "good")
    plot.curve([(0, start * per), (length * per, end * per)], "ink")
    for row, left, right in spans:
        level = row["block_radius"] * per
        plot.curve([(left * per, level), (right * per, level)], "accent")
    svg = plot.svg
    base = svg.height + 4
    svg.line((62, base), (96, base), "ink")
    svg.text((104, base + 5), "the board")
    svg.line((62, base + 26), (96, base + 26), "accent")
    svg.text((104, base + 31), "best block")
    svg.rectangle((352, base - 8), 34, 16, "good")
    svg.text((394, base + 5), "any block within does")
    svg.height = base + 44
    return plot.markup()
