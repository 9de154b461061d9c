"""The drawing of the channel: a section of the edge with the strips in it, to scale."""

from collections.abc import Mapping
from typing import Any

from ..engine.compute import Say
from ..engine.drawing import Svg

WIDTH, LEFT, WALL = 640.0, 136.0, 112.0
WORDS = 414.0  # where the words at the right begin
TALL, WIDE, PROUD, LARGEST = 230.0, 150.0, 26.0, 60.0  # at most; the last a millimetre
FILLS = ("wood-dark", "paper")


def draw_section(values: Mapping[str, Any], say: Say) -> str:
    """Section of the edge, outside at the left: wood, cement, strips, depth and height."""
    cuts = values["cuts"]
    depth = sum(cut["width"] for cut in cuts)
    proud = values["proud_side"]
    most_proud = max(proud, values["proud_top"], PROUD / LARGEST)
    height = values["channel_height"]
    scale = min(TALL / height, WIDE / (depth + proud), PROUD / most_proud)
    svg = Svg(
        "channel-cut-section",
        f"The edge in section: channel {say('channel_depth')} deep, {say('channel_height')} high",
        f"Section of the edge, outside at the left, drawn to scale with {len(values['strips'])} "
        "strips on their ledges. The strips stand a little out of the side and above the plate.",
        WIDTH, max(WALL + height * scale + 76, WALL + 190),
    )  # fmt: skip
    foot = WALL + height * scale + 40
    _draw_wood(svg, values, scale, foot)
    _draw_strips(svg, values, scale)
    wall = LEFT + values["channel_depth"] * scale
    floor = WALL + height * scale
    high = WALL - values["proud_top"] * scale - 10
    svg.dimension((LEFT, high), (wall, high), "", -8)
    svg.text((wall - 4, high - 14), say("channel_depth"), "end")
    left = LEFT - proud * scale - 8
    svg.dimension((left, WALL), (left, floor), say("channel_height"), -10)
    words = [f"Channel {say('channel_depth')} in,", f"{say('channel_height')} down"]
    if values["ledge_count"] > 0:
        end = wall + values["ledge_width"] * scale
        svg.dimension((wall, high), (end, high), say("ledge_width"), -42)
        words += [f"Ledge {say('ledge_width')} further in,", f"{say('ledge_height')} down"]
    words += ["", f"Cutter {values['cutter_mark']},", f"collar {values['collar_mark']}",
              f"cuts in by {say('reach')}"]  # fmt: skip
    for line, text in enumerate(words):
        svg.text((WORDS, WALL + 12 + 22 * line), text)
    note = "To scale; plate, side and lining cut off. Cement too thin to see."
    svg.text((20, svg.height - 12), note, style="label-small")
    return svg.markup()


def _draw_wood(svg: Svg, values: Mapping[str, Any], scale: float, foot: float) -> None:
    """Plate, side and lining with the steps cut out of their corner."""
    right = WORDS - 16
    plate = min(WALL + values["plate_thickness"] * scale, foot - 8)
    side = min(LEFT + values["side_thickness"] * scale, right - 20)
    svg.polygon([(side, plate), (right, plate), (side + 0.4 * (right - side), foot),
                 (side, foot)], "wood-mid")  # fmt: skip
    svg.rectangle((LEFT, plate), side - LEFT, foot - plate, "wood-dark")
    svg.rectangle((LEFT, WALL), right - LEFT, plate - WALL, "wood-light")
    svg.text((right - 8, plate - 8), "plate", "end", "label-small")
    lining = (side + 0.35 * (right - side), (plate + foot) / 2 + 5)
    svg.text(lining, "lining", "middle", "label-small")
    svg.text((LEFT - 8, foot - 10), "side", "end", "label-small")
    start = LEFT - 2
    for cut in values["cuts"]:
        end = start + cut["width"] * scale + (2 if start < LEFT else 0)
        tall = cut["height"] * scale
        svg.rectangle((start, WALL - 2), end - start, tall + 2, "paper")
        svg.polyline([(start, WALL + tall), (end, WALL + tall), (end, WALL)], "ink")
        inside = max(start, LEFT)
        svg.rectangle((inside, WALL), end - inside, tall, "glue")
        start = end


def _draw_strips(svg: Svg, values: Mapping[str, Any], scale: float) -> None:
    """The strips as they lie once the cement is dry, the outer one standing out."""
    film = values["cement_film"]
    x = LEFT - values["proud_side"] * scale
    number = 0
    for cut, ledge in zip(values["cuts"], values["ledges"], strict=True):
        floor = WALL + (cut["height"] - film) * scale
        for place in range(ledge["count"]):
            strip = values["strips"][number + place]
            width = strip["strip_thickness"] * scale
            corner = (x, floor - strip["strip_height"] * scale)
            fill = "paper" if number + place == 0 else FILLS[(number + place + 1) % 2]
            tall = strip["strip_height"] * scale
            svg.rectangle(corner, width, tall, fill)
            svg.rectangle(corner, width, tall, "ink")
            x += width + film * scale
        number += ledge["count"]
