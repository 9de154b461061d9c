"""The drawing of the fretboard in plan, to scale."""

from collections.abc import Mapping
from typing import Any

from ..engine.compute import Say
from ..engine.drawing import Svg

INLAID_FRETS = (3, 5, 7, 9, 12, 15, 17, 19, 21, 24)


def draw_board(values: Mapping[str, Any], say: Say) -> str:
    """The board in plan, to scale, nut at the left, saddle line at the right."""
    fanned = values["layout"] == "fanned"
    division, frets = values["divisions"], values["frets"]
    nut_half = values["string_spread_nut"] / 2
    flare = (values["string_spread_bridge"] - values["string_spread_nut"]) / 2
    margin = values["edge_margin"]
    if fanned:
        bass = (0.0, values["bass_run"])
        treble = (values["treble_nut_lead"], values["treble_run"])
        words = f"{say('bass_scale_length')} and {say('treble_scale_length')}"
    else:
        bass = treble = (0.0, values["scale_length"])
        words = say("scale_length")
    left = min(bass[0], treble[0])
    right = max(bass[0] + bass[1], treble[0] + treble[1])
    factor = 580 / (right - left)
    middle = 60 + (nut_half + flare + margin) * factor

    def across(
        edge: tuple[float, float], share: float, side: int, reach: float
    ) -> tuple[float, float]:
        """A point on an outer string's line (``reach`` outside it), ``share`` of its run along."""
        x = edge[0] + share * edge[1]
        return 30 + (x - left) * factor, middle + side * (nut_half + share * flare + reach) * factor

    svg = Svg(
        "fret-spacing-board",
        f"Fretboard with {frets} slots, scale {words}, drawn to scale",
        f"Plan of the board from the nut at the left to the saddle line at the right; "
        f"{'the slots fan out' if fanned else 'the slots are square to the centre line'}.",
        640, middle + (nut_half + flare + margin) * factor + 74,
    )  # fmt: skip
    last = 1 - 2 ** (-(frets + 0.35) / division)
    svg.polygon(
        (
            across(bass, -0.004, 1, margin), across(bass, last, 1, margin),
            across(treble, last, -1, margin), across(treble, -0.004, -1, margin),
        ),
        "wood-dark board",
    )  # fmt: skip
    for edge, side in ((bass, 1), (treble, -1)):
        svg.line(across(edge, 0, side, 0), across(edge, 1, side, 0), "string")
    for share, style in ((0.0, "bone"), (1.0, "saddle")):
        svg.line(across(bass, share, 1, margin), across(treble, share, -1, margin), style)
    for number in range(1, frets + 1):
        share = 1 - 2 ** (-number / division)
        ends = across(bass, share, 1, margin), across(treble, share, -1, margin)
        joint = number == values["body_joint_fret"]
        svg.line(*ends, "slot")
        if joint:
            svg.line((ends[1][0], ends[1][1] - 26), (ends[1][0], ends[1][1] - 2), "accent")
            svg.text(
                (ends[1][0], ends[1][1] - 32), f"body joint at {number}", "middle", "label-small"
            )
        if division == 12 and number in INLAID_FRETS:
            previous = 1 - 2 ** (-(number - 1) / division)
            x = (ends[0][0] + across(bass, previous, 1, margin)[0]) / 2
            svg.text((x, ends[0][1] + 16), str(number), "middle", "label-small")
    foot = svg.height - 40
    start, end = across(bass, 0, 1, margin)[0], across(bass, 1, 1, margin)[0]
    svg.dimension((start, foot), (end, foot), f"scale length {words}", above=False)
    return svg.markup()
