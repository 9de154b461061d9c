"""The pictures of the string-tension calculation: pull by string, and the lever at the bridge."""

from collections.abc import Mapping
from typing import Any

from ..engine.compute import Say
from ..engine.drawing import Svg

FILL = {"plain": "metal", "wound": "wood-mid", "nylon": "felt", "wound nylon": "wood-light"}
KIND_WORDS = {
    "plain": "plain steel", "wound": "wound on steel", "nylon": "nylon",
    "wound nylon": "wound on nylon",
}  # fmt: skip
ROW, BAR_LEFT, BAR_LONGEST = 34.0, 196.0, 340.0


def draw_pull(values: Mapping[str, Any], say: Say) -> str:
    """A bar for each string, as long as its pull."""
    rows = values["string_rows"]
    kinds = [kind for kind in FILL if any(row["kind"] == kind for row in rows)]
    key_top = 14 + ROW * len(rows) + 18
    svg = Svg(
        "string-tension-pull",
        f"The pull of each string; together {say('total_tension')}",
        f"A bar for each string, as long as its pull. {values['even_words']}",
        640, key_top + 30 * ((len(kinds) + 1) // 2) + 4,
    )  # fmt: skip
    for place, row in enumerate(rows):
        y = 14 + ROW * place
        length = BAR_LONGEST * row["pull"] / values["strongest"]
        svg.text((14, y + 19), row["string"])
        svg.text((BAR_LEFT - 10, y + 19), row["note"], "end")
        svg.rectangle((BAR_LEFT, y), length, ROW - 10, FILL[row["kind"]])
        svg.text((BAR_LEFT + length + 8, y + 19), say.quantity(row["pull"], "N", 1))
    svg.line((BAR_LEFT, 8), (BAR_LEFT, key_top - 16), "ink")
    for number, kind in enumerate(kinds):
        x, y = 14 + 310 * (number % 2), key_top + 30 * (number // 2)
        svg.rectangle((x, y), 34, 16, FILL[kind])
        svg.text((x + 44, y + 14), KIND_WORDS[kind])
    return svg.markup()


def draw_bridge(values: Mapping[str, Any], say: Say) -> str:
    """Section of the bridge: the strings pull at the saddle's crest, well above the top."""
    svg = Svg(
        "string-tension-bridge",
        f"The strings pull {say('total_tension')} at {say('bridge_arm')} above the top",
        f"Section of bridge and saddle on the top, heights to scale. The pull at the crest turns the "
        f"bridge forward with {say('bridge_torque')}.",
        640, 290,
    )  # fmt: skip
    scale = 150 / values["bridge_arm"]
    top = 208.0
    bridge = top - values["bridge_thickness"] * scale
    crest = top - values["bridge_arm"] * scale
    svg.rectangle((20, top), 600, 16, "wood-light")
    svg.polygon(
        ((330, top), (330, bridge + 14), (344, bridge), (476, bridge), (500, top - 24), (500, top)),
        "wood-dark",
    )  # fmt: skip
    svg.rectangle((386, crest), 22, top - crest - 40 * (top - bridge) / 150, "felt")
    svg.line((60, crest), (386, crest), "string")
    svg.line((408, crest), (440, bridge), "string")
    svg.line((120, crest), (250, crest), "accent")
    svg.polygon(((104, crest), (122, crest - 7), (122, crest + 7)), "accent-fill")
    svg.text((104, crest - 16), f"pull {say('total_tension')}")
    svg.dimension((300, top), (300, crest), say("bridge_arm"), offset=-30)
    svg.text((20, top + 44), f"turns the bridge forward with {say('bridge_torque')}")
    svg.text((20, top + 68), f"bends the neck with {say('neck_moment')}")
    return svg.markup()
