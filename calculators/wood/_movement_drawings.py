"""The pictures of the movement calculation: the arch, the end of the board, the course with air."""

import math
from collections.abc import Mapping
from typing import Any

from ..engine.compute import Say
from ..engine.drawing import Point, Svg, points_text
from ..engine.legend import legend
from ..engine.plot import Axis, Plot
from ..engine.reading import convert
from ..engine.showing import reader_unit
from ..engine.unit_table import UNITS
from ..laws.equilibrium_moisture import emc_line

LEFT, RIGHT = 60.0, 580.0
ARCH_POINTS = 24


def said(text: str) -> str:
    """A printed figure with a true minus sign."""
    return f"−{text[1:]}" if text.startswith("-") else text


def draw_arch(values: Mapping[str, Any], say: Say) -> str:
    """The braced plate, then and later, heights drawn larger."""
    then, later = values["crown_first"], values["crown_later"]
    largest = max(abs(then), abs(later), 0.02 * values["piece_width"] / 40)
    scale = 66 / largest
    times = scale / ((RIGHT - LEFT) / values["piece_width"])
    svg = Svg(
        "wood-movement-arch",
        f"The braced plate: crown {said(say('crown_first'))} then, {said(say('crown_later'))} "
        "later",
        f"Section along the brace, heights drawn {times:.0f} times too large. {values['verdict']}",
        640, 272,
    )  # fmt: skip
    ground = 136.0

    def line(crown: float, down: float, inset: float = 0.0) -> list[Point]:
        found = []
        for number in range(ARCH_POINTS + 1):
            u = inset + (1 - 2 * inset) * number / ARCH_POINTS
            height = 4 * u * (1 - u) * crown * scale
            found.append((LEFT + u * (RIGHT - LEFT), ground - height + down))
        return found

    plate, brace = line(later, 0), line(later, 14)
    foot = line(later, 36, 0.12)
    svg.polygon([*line(later, 14, 0.03), *reversed(foot)], "wood-mid")
    svg.polygon([*plate, *reversed(brace)], "wood-light")
    svg.line((LEFT - 30, ground), (RIGHT + 30, ground), "thin")
    svg.raw(f'<polyline class="hidden" points="{points_text(line(then, 0))}"/>')
    svg.text((320, 24), f"Heights drawn {times:.0f} times too large", "middle", "label-small")
    svg.text((320, 262), f"{say('piece_width')} across the grain", "middle", "label-small")
    legend(svg, [("hidden", f"then: crown {said(say('crown_first'))}"),
                 ("wood-light", f"later: crown {said(say('crown_later'))}")])  # fmt: skip
    return svg.markup()


def draw_board(values: Mapping[str, Any], say: Say) -> str:
    """The end of the piece with its year rings, then and later, the change drawn larger."""
    movement, gap = values["movement"], values.get("fit_gap", 0.0)
    largest = max(abs(movement), gap, values["piece_width"] * 1e-5)
    scale = 24 / largest
    svg = Svg(
        "wood-movement-board",
        f"The end of the piece: {say('piece_width')} wide then, {say('later_width')} later",
        f"Year rings at {say('ring_angle')} to the face; the change of width is drawn larger. "
        f"{values['verdict']}",
        640, 214,
    )  # fmt: skip
    top, bottom = 44.0, 144.0
    grow, room = movement * scale, gap * scale
    if values["held"] == "fitted":
        svg.rectangle((4, top - 16), LEFT - room - 4, bottom - top + 32, "wood-dark")
        svg.rectangle((RIGHT + room, top - 16), 636 - RIGHT - room, bottom - top + 32, "wood-dark")
    svg.rectangle((LEFT, top), RIGHT - LEFT, bottom - top, "wood-light")
    for start, end in rings(values["ring_angle"], (LEFT, top), (RIGHT, bottom), 26):
        svg.line(start, end, "thin")
    svg.rectangle((LEFT - grow, top - 8), RIGHT - LEFT + 2 * grow, bottom - top + 16, "accent")
    svg.text((320, 24), "Change of width drawn larger", "middle", "label-small")
    svg.dimension((LEFT, bottom), (RIGHT, bottom), f"{say('piece_width')} then", offset=52)
    shown = [("wood-light", "then"), ("accent", f"later: {say('later_width')}")]
    if values["held"] == "fitted":
        shown += [("wood-dark", "shoulders")]
    legend(svg, shown)
    return svg.markup()


def rings(angle: float, corner: Point, far: Point, apart: float) -> list[tuple[Point, Point]]:
    """Lines at an angle to the level, ``apart`` from each other, cut off at a rectangle."""
    along = math.cos(math.radians(angle)), -math.sin(math.radians(angle))
    across = -along[1], along[0]
    middle = (corner[0] + far[0]) / 2, (corner[1] + far[1]) / 2
    reach = math.hypot(far[0] - corner[0], far[1] - corner[1]) / 2
    count = math.floor(reach / apart)
    found = []
    for number in range(-count, count + 1):
        point = (middle[0] + number * apart * across[0], middle[1] + number * apart * across[1])
        low, high = -reach * 2, reach * 2
        for axis in (0, 1):
            if abs(along[axis]) < 1e-9:
                if not corner[axis] < point[axis] < far[axis]:
                    low, high = 1.0, 0.0
                continue
            ends = sorted((edge - point[axis]) / along[axis] for edge in (corner[axis], far[axis]))
            low, high = max(low, ends[0]), min(high, ends[1])
        if high - low > 4:
            found.append(
                (
                    (point[0] + low * along[0], point[1] + low * along[1]),
                    (point[0] + high * along[0], point[1] + high * along[1]),
                )
            )
    return found


def draw_course(values: Mapping[str, Any], say: Say) -> str:
    """Crown, gap or change of width against the air, or the moisture, with then and later."""
    by_air = values["moisture_by"] == "humidity"
    if by_air:
        then, later = float(values["room_humidity"]), float(values["later_humidity"])
        low, high = min(10.0, then, later), max(85.0, then, later)
        places = [low + (high - low) * number / 16 for number in range(17)]
        moistures = emc_line(values["room_temperature"], places)
        across = Axis("Relative humidity, %", 0, 100)
    else:
        places = [1.5 * number for number in range(21)]
        moistures = places
        then, later = values["first_moisture"], values["later_moisture"]
        across = Axis("Moisture content of the wood, %", 0, 30)
    what, height = _course(values)
    unit = reader_unit("mm", say.system)
    factor = convert(1.0, "mm", unit)
    points = [
        (place, found * factor)
        for place, moisture in zip(places, moistures, strict=True)
        if (found := height(moisture)) is not None
    ]
    marks = [
        (place, (height(moisture) or 0.0) * factor)
        for place, moisture in ((then, values["first_moisture"]), (later, values["later_moisture"]))
    ]
    seen = [y for _, y in (*points, *marks)] + [0.0]
    margin = 0.08 * (max(seen) - min(seen)) + 1e-6
    plot = Plot(
        "wood-movement-course",
        f"{what} in the air it may meet" if by_air else f"{what} at other moistures",
        f"{across.words} across, {what.lower()} upwards. {values['verdict']}",
        across, Axis(f"{what}, {UNITS[unit].shown}", min(seen) - margin, max(seen) + margin),
    )  # fmt: skip
    zero = {"braced": "flat", "fitted": "tight", "free": "as wide as then"}[values["held"]]
    plot.curve([(across.lowest, 0.0), (across.highest, 0.0)], "hidden")
    plot.curve(points, "second")
    plot.mark(marks[0], style="second-fill")
    plot.mark(marks[1])
    legend(plot.svg, [("second", what.lower()), ("hidden", zero),
                      ("second-fill", f"then: {say('first_moisture')} in the wood"),
                      ("accent-fill", f"later: {say('later_moisture')}")])  # fmt: skip
    return plot.markup()


def _course(values: Mapping[str, Any]) -> tuple[str, Any]:
    """What is drawn, and its height in mm at a moisture content in %; None past the limit."""
    first, width = values["first_moisture"], values["piece_width"]
    divisor = 3000 / values["shrinkage"] - 30 + first

    def change(moisture: float) -> float:
        return float(width * (moisture - first) / divisor)

    if values["held"] == "free":
        return "Change of width", change
    if values["held"] == "fitted":
        return "Gap", lambda moisture: values["fit_gap"] - change(moisture)
    share = math.sin(math.radians(values["grain_angle"])) ** 2 / values["bending_length"]

    def crown(moisture: float) -> float | None:
        arch = values["arch_first"] + change(moisture) * share
        return None if abs(arch) > 1 else width * arch / (4 * (1 + math.sqrt(1 - arch * arch / 4)))

    return "Crown", crown
