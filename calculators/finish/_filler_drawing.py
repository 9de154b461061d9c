"""The picture of the pore-filler calculation: one open pore, filling by filling, to scale."""

from collections.abc import Mapping
from typing import Any

from ..engine.compute import Say
from ..engine.drawing import Svg, short

FACE, LEFT, RIGHT = 78.0, 14.0, 626.0
DEEPEST, BELOW = 162.0, 44.0  # of the pore drawn, and of the wood below it
MOST_PANELS = 4


def draw_pore(values: Mapping[str, Any], say: Say) -> str:
    """An open pore in section: as cut, then set after each filling, all to one scale."""
    fillings = values["fillings"]
    shown = min(max(1, fillings), MOST_PANELS - 1)
    step = (RIGHT - LEFT) / (shown + 1)
    width = step - 16
    scale = min(0.62 * width / values["pore_diameter"], DEEPEST / values["pore_depth"])
    half, depth = values["pore_diameter"] / 2 * scale, values["pore_depth"] * scale
    foot = FACE + depth + BELOW
    svg = Svg(
        "pore-filler-pore",
        f"An open pore as cut, {say('pore_depth')} deep, and after {shown} "
        f"{'filling' if shown == 1 else 'fillings'}",
        "Sections across the grain, to one scale: wood, the open pore, and the filler in it after "
        f"it has set and sunk. {values['verdict']}",
        640, foot + 76,
    )  # fmt: skip
    for number in range(shown + 1):
        left = LEFT + number * step + 8
        middle = left + width / 2
        open_share = (values["left_share"] / 100) ** number
        svg.rectangle((left, FACE), width, foot - FACE, "wood-mid")
        groove = f"A{short(half)},{short(depth)} 0 0 0 {short(middle + half)},{FACE:g}"
        start = f"M{short(middle - half)},{FACE:g}"
        svg.path(f"{start}{groove}Z", "paper")
        if number:
            # The filler clings to the rims and sinks in the middle; a curve through that point
            # has its handle twice as deep.
            sunk = 2 * depth * open_share
            svg.path(
                f"{start}{groove}Q{short(middle)},{short(FACE + sunk)} "
                f"{short(middle - half)},{FACE:g}Z",
                "glue",
            )
        svg.path(f"{start}{groove}", "ink")
        svg.line((left, FACE), (middle - half, FACE), "ink")
        svg.line((middle + half, FACE), (left + width, FACE), "ink")
        words = "as cut" if not number else f"filled {('once', 'twice', 'three times')[number - 1]}"
        svg.text((middle, FACE - 16), words, "middle")
        sink = say.quantity(values["pore_depth"] * open_share, "um", 0)
        svg.text((middle, foot + 24), f"{sink} deep" if not number else sink, "middle")
    words = "still open in the middle, when set" if shown > 1 else "still open, when set"
    svg.text((RIGHT - 8, foot + 50), words, "end", "label-small")
    svg.text(
        (LEFT + 8, FACE - 46), f"Pore {say('pore_diameter')} wide, cut along the grain; to scale"
    )
    return svg.markup()
