"""The pictures of the side-bending calculation: the bent strip, and the bars of its curves."""

import math
from collections.abc import Mapping
from typing import Any

from ..engine.compute import Say
from ..engine.drawing import Point, Svg, short

OUTER, THICK, HALF_ANGLE = 330.0, 64.0, 42.0
CENTRE = (300.0, 392.0)


def _at(radius: float, angle: float) -> Point:
    """A point at ``radius`` from the centre, ``angle`` degrees clockwise from straight up."""
    turn = math.radians(angle)
    return CENTRE[0] + radius * math.sin(turn), CENTRE[1] - radius * math.cos(turn)


def _arc(radius: float, start: float, end: float, move: str = "M") -> str:
    (x1, y1), (x2, y2) = _at(radius, start), _at(radius, end)
    sweep = 1 if end > start else 0
    r = short(radius)
    return f"{move}{short(x1)},{short(y1)}A{r} {r} 0 0 {sweep} {short(x2)},{short(y2)}"


def _band(outer: float, inner: float) -> str:
    return f"{_arc(outer, -HALF_ANGLE, HALF_ANGLE)}{_arc(inner, HALF_ANGLE, -HALF_ANGLE, 'L')}Z"


def draw_strip(values: Mapping[str, Any], say: Say) -> str:
    """The strip round its bend: stretched face, line that keeps its length, hollow face."""
    held = values["slat"] == "held"
    svg = Svg(
        "side-bending-strip",
        f"The side at the {values['tight_place']}, {say('tight_thickness')} thick, bent to an "
        f"inside radius of {say('tight_bent')}",
        f"A strip bent to an arc, thickness drawn too large. The outer face is stretched by "
        f"{say('stretch')}, the hollow face shrinks by {say('shrink')}; a broken line between "
        "them keeps its length.",
        640, 404,
    )  # fmt: skip
    inner = OUTER - THICK
    # Where the strain passes through nought, counted from the hollow face.
    share = values["shrink"] / (values["shrink"] + values["stretch"])
    kept = inner + THICK * share
    if held:
        svg.path(_band(OUTER + 9, OUTER), "metal")
    svg.path(_band(OUTER, inner), "wood-mid")
    svg.path(_band(OUTER, kept), "bad")
    svg.path(_arc(OUTER, -HALF_ANGLE, HALF_ANGLE), "accent open")
    svg.path(_arc(inner, -HALF_ANGLE, HALF_ANGLE), "second open")
    svg.path(_arc(kept, -HALF_ANGLE, HALF_ANGLE), "hidden open")
    for angle in range(-35, 36, 10):
        svg.line(_at(inner, angle), _at(OUTER, angle), "thin")
    svg.text((300, 24), f"{values['tight_place']}: {say('tight_thickness')} thick", "middle")
    svg.text((300, 46), f"outer face stretched {say('stretch')}", "middle")
    svg.text((300, 160), f"hollow face shrinks {say('shrink')}", "middle")
    _radius(svg, f"bend to {say('tight_bent')}", inner)
    end = _at(kept, HALF_ANGLE)
    svg.line(end, (end[0] + 22, end[1] + 26), "thin")
    x = min(end[0] + 6, 516)
    svg.text((x, end[1] + 44), "keeps its", "start")
    svg.text((x, end[1] + 64), "length", "start")
    if held:
        slat = _at(OUTER + 9, -HALF_ANGLE)
        svg.line(slat, (slat[0] - 14, slat[1] - 16), "thin")
        svg.text((slat[0] - 18, slat[1] - 22), "slat", "middle")
    return svg.markup()


def _radius(svg: Svg, words: str, inner: float) -> None:
    """The radius of the hollow face, from the centre up to the left."""
    end = _at(inner, -31)
    svg.line(CENTRE, end, "dim")
    svg.circle(CENTRE, 3.5, "ink-fill")
    svg.text((CENTRE[0] + 14, CENTRE[1] - 60), words)


def draw_bars(values: Mapping[str, Any], say: Say) -> str:
    """A bar a curve: its stretch against what the wood takes, or behind a slat the share used."""
    held = values["slat"] == "held"
    limit = 100.0 if held else values["allowed"]
    decimals = 0 if held else 2
    limit_words = say.quantity(limit, "%", decimals)
    what = "Share used of what the wood takes" if held else "Stretch of the outer face"
    rows = [(row["place"], _asked(values, row)) for row in values["curves"]]
    top = max(1.15 * limit, min(3 * limit, max(asked for _, asked in rows)))
    scale = 300 / top
    height = 74 + 34 * len(rows) + 16
    most, most_asked = max(rows, key=lambda row: row[1])
    svg = Svg(
        "side-bending-bars",
        f"What each curve asks. {what}, limit {limit_words}",
        f"One bar a curve. The longest is {most} with {say.quantity(most_asked, '%', decimals)}. "
        f"An upright line marks the limit, {limit_words}.",
        640, height,
    )  # fmt: skip
    left = 190.0
    line = left + limit * scale
    svg.text((left, 24), what)
    words = "all it takes" if held else f"takes {limit_words}"
    svg.text((line + 6, 52), words, "end" if line > 430 else "start")
    for number, (place, asked) in enumerate(rows):
        y = 66.0 + 34 * number
        over = asked > 1.005 * limit
        width = min(asked, top) * scale
        svg.text((left - 10, y + 17), place, "end")
        svg.rectangle((left, y), width, 22, "accent-fill" if over else "second-fill")
        words = say.quantity(asked, "%", decimals) + (" too tight" if over else "")
        svg.text((max(left + width, line if width > line - left - 66 else 0) + 8, y + 17), words)
    svg.line((line, 58), (line, height - 12), "ink")
    return svg.markup()


def _asked(values: Mapping[str, Any], row: Mapping[str, Any]) -> float:
    """What one curve asks of the wood, %: its stretch, or behind a slat the share used."""
    thickness, bent = row["thickness"], row["bent"]
    free = 100 * thickness / (2 * bent + thickness)
    if values["slat"] != "held":
        return float(free)
    stretch = min(free, values["held_stretch"])
    shrink = 100 - (100 + stretch) * bent / (bent + thickness)
    return float(100 * max(stretch / values["allowed"], shrink / values["most_shrink"]))
