"""The pictures of the string-spacing calculation: the nut from its front, the strings in plan."""

import math
from collections.abc import Mapping
from typing import Any

from ..engine.compute import Say
from ..engine.drawing import Point, Svg

ACROSS, TALL = 560.0, 200.0
LEFT = 40.0
ARC_POINTS = 20
PLAN_WIDE = 170.0


def draw_nut(values: Mapping[str, Any], say: Say) -> str:
    """The nut seen along the strings, bass at the left, behind the end of the board; to scale."""
    rows, width = values["nut_rows"], values["nut_width"]
    ends = rows[0]["top"], rows[-1]["top"]
    highest = max(row["top"] + row["gauge"] for row in rows) + 0.5
    scale = min(ACROSS / width, TALL / highest)
    left = 320 - width * scale / 2
    foot = 64 + highest * scale
    gap = _span(say, "nut_gap_least", "nut_gap_most")
    svg = Svg(
        "string-spacing-nut",
        f"The nut from its front: {len(rows)} strings, gaps {gap}, {say('nut_width')} wide",
        "Bass side at the left, to scale. Each string lies in its slot; the end of the board covers "
        "the lower part of the nut, and the broken line is the height of the frets. The nut's blank "
        f"has to be {say('blank_height')} high.",
        640, foot + 104,
    )  # fmt: skip

    def at(across: float, up: float) -> Point:
        return left + across * scale, foot - up * scale

    crest = [at(0, ends[0]), *(at(row["place"], row["top"]) for row in rows), at(width, ends[1])]
    svg.polygon([*crest, at(width, 0), at(0, 0)], "felt")
    for row in rows:
        half = row["slot_width"] / 2
        floor = row["top"] - row["slot_depth"]
        svg.polygon(
            (at(row["place"] - half, row["top"] + 0.03), at(row["place"] + half, row["top"] + 0.03),
             at(row["place"] + half, floor), at(row["place"] - half, floor)),
            "paper",
        )  # fmt: skip
        svg.circle(at(row["place"], floor + row["gauge"] / 2), row["gauge"] / 2 * scale, "metal")
    svg.polyline(_round(values, at, values["fret_height"]), "hidden")
    if values["board_joint"] > 0:
        svg.polygon(
            [*_round(values, at, 0.0), at(width, 0), at(0, 0)], "wood-dark board"
        )  # fmt: skip
    for row in rows:
        x, _ = at(row["place"], 0)
        svg.text((x, 46), row["string"], "middle", "label-small")
    svg.text((left, 24), f"string number; gaps {gap}")
    first, _ = at(rows[0]["place"], 0)
    edge, _ = at(0, 0)
    for x in (edge, first):
        svg.line((x, foot + 6), (x, foot + 22), "dim")
    svg.line((edge, foot + 14), (first, foot + 14), "dim")
    svg.text((edge, foot + 42), f"bass edge to the first middle {say('bass_edge')}")
    svg.text((edge, foot + 66), f"blank {say('blank_height')} high, {say('nut_width')} wide")
    svg.text((edge, foot + 90), "broken line: height of the frets", style="label-small")
    return svg.markup()


def _span(say: Say, least: str, most: str) -> str:
    """Two figures, or one where both read alike."""
    return say(least) if say(least) == say(most) else f"{say(least)} to {say(most)}"


def _round(values: Mapping[str, Any], at: Any, over: float) -> list[Point]:
    """The round of the board, so much over its face, from edge to edge."""
    width, radius = values["nut_width"], values["fret_radius"]
    points = []
    for number in range(ARC_POINTS + 1):
        out = width * (number / ARC_POINTS - 0.5)
        fall = radius - math.sqrt(radius**2 - out**2) if radius > 0 else 0.0
        points.append(at(out + width / 2, max(0.0, values["board_joint"] - fall + over)))
    return points


def draw_plan(values: Mapping[str, Any], say: Say) -> str:
    """The strings from nut to saddle in plan, widths drawn larger than lengths."""
    nut, saddle = values["nut_places"], values["saddle_places"]
    margin = values["edge_margin"]
    wide = max(values["string_spread_nut"], values["string_spread_bridge"]) + 2 * margin
    scale = PLAN_WIDE / wide
    middle = 44 + PLAN_WIDE / 2
    last = 1 - 2 ** (-(values["frets"] + 0.35) / 12)
    svg = Svg(
        "string-spacing-plan",
        f"The strings in plan, {say('string_spread_nut')} at the nut, "
        f"{say('string_spread_bridge')} at the saddle",
        "Nut at the left, saddle line at the right, treble side up. Widths are drawn larger than "
        f"lengths. Gaps at the 12th fret: {_span(say, 'octave_gap_least', 'octave_gap_most')}.",
        640, middle + PLAN_WIDE / 2 + 76,
    )  # fmt: skip

    def spread(share: float) -> float:
        return float(
            values["string_spread_nut"]
            + (values["string_spread_bridge"] - values["string_spread_nut"]) * share
        )

    def at(share: float, out: float) -> Point:
        """``out`` mm from the centre line towards the bass, which is drawn below."""
        return LEFT + share * ACROSS, middle + out * scale

    def edges(share: float) -> tuple[Point, Point]:
        half = spread(share) / 2 + margin
        return at(share, half), at(share, -half)

    svg.polygon((*edges(0), *reversed(edges(last))), "wood-mid board")
    for fret in range(1, values["frets"] + 1):
        svg.line(*edges(1 - 2 ** (-fret / 12)), "slot")
    shift = values["nut_width"] / 2 - values["bass_edge"] - values["string_spread_nut"] / 2
    for start, end in zip(nut, saddle, strict=True):
        svg.line(
            at(0, spread(0) / 2 + shift - start), at(1, spread(1) / 2 - end), "dim"
        )  # fmt: skip
    svg.line(*edges(0), "bone")
    svg.line(at(1, spread(1) / 2 + margin), at(1, -spread(1) / 2 - margin), "saddle")
    svg.text((LEFT, 24), f"nut: {say('string_spread_nut')}")
    svg.text((320, 24), f"12th: {say.quantity(spread(0.5), 'mm', 2)}", "middle")
    svg.text((LEFT + ACROSS, 24), f"saddle: {say('string_spread_bridge')}", "end")
    foot = middle + PLAN_WIDE / 2 + 30
    gaps = _span(say, "octave_gap_least", "octave_gap_most")
    svg.text((320, foot), f"gaps at the 12th: {gaps}", "middle")
    svg.text((320, foot + 26), "Widths are drawn larger than lengths; bass side below", "middle",
             "label-small")  # fmt: skip
    return svg.markup()
