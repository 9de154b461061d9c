"""The pictures of the press calculation: the sprung back on its rim, and the bar in the deck."""

from collections.abc import Mapping
from typing import Any

from ..engine.compute import Say
from ..engine.drawing import Point, Svg
from ..laws.bent_bar import bent_bar, bent_shape

STEPS = 36


def draw_back(values: Mapping[str, Any], say: Say) -> str:
    """The dry back on the rim, gaps enlarged, with the bladder over it and the forces."""
    a, s = values["overhang"], values["bearing_span"]
    factor = 540 / (2 * a + s)
    svg = Svg(
        "back-press-back",
        f"The sprung back on its rim: gap {say('end_gap')} at each block, closed by "
        f"{say('end_force')} at each",
        "Long section, back upwards, gaps much enlarged. The back bears at two places and stands "
        "off above both blocks. The bladder presses it all along; an arrow at each block is the "
        f"force that closes it. {values['closing_words']}",
        640, 398,
    )  # fmt: skip
    left, right, rim, crown = 50.0, 590.0, 262.0, 70.0
    whole = 2 * a + s
    lift = 40.0 * min(1.0, float(3.5 * a / whole))

    def arch(x: float) -> float:
        """Height of the rim's upper edge on paper, at mm from the left block."""
        return float(rim - crown * (1 - (2 * x / whole - 1) ** 2))

    def standing(x: float) -> float:
        """How far the dry back stands off the rim on paper."""
        beyond = float(max(0.0, a - x, x - a - s) / a)
        return lift * beyond**2 * (1.5 - beyond / 2)

    svg.rectangle((left, 84), 540, 14, "felt")
    for number in range(13):
        x = left + 24 + number * 41
        svg.line((x, 100), (x, 116), "dim")
        svg.polygon(((x, 122), (x - 4, 113), (x + 4, 113)), "thin")
    svg.text((320, 74), f"bladder {say('bladder_pressure')}, {say('press_force')}", "middle")
    places = [whole * number / STEPS for number in range(STEPS + 1)]
    edge = [(left + x * factor, arch(x)) for x in places]
    under = [(left + x * factor, arch(x) - standing(x)) for x in places]
    svg.polygon([*edge, (right, rim + 40), (left, rim + 40)], "wood-mid")
    for x in (left, right - 26):
        svg.rectangle((x, rim + 6), 26, 34, "wood-light")
    svg.polygon([*under, *((x, y - 8) for x, y in reversed(under))], "wood-dark")
    for x in (a, a + s):
        at, y = left + x * factor, arch(x) + 4
        svg.polygon(((at, y), (at - 9, y + 18), (at + 9, y + 18)), "accent-fill")
    tip = rim - lift - 10
    for x, anchor in ((left, "start"), (right, "end")):
        svg.line((x, 40), (x, tip - 10), "accent")
        svg.polygon(((x, tip), (x - 6, tip - 13), (x + 6, tip - 13)), "accent-fill")
        svg.text((x - (10 if anchor == "start" else -10), 30), say("end_force"), anchor)
    svg.text((320, 30), f"gap {say('end_gap')} at each block", "middle")
    foot = rim + 40
    ends = (left, left + a * factor, right - a * factor, right)
    words = ("overhang", "bearing_span", "overhang")
    for start, end, name in zip(ends[:-1], ends[1:], words, strict=True):
        svg.line((start, foot + 6), (start, foot + 22), "thin")
        svg.line((end, foot + 6), (end, foot + 22), "thin")
        svg.line((start, foot + 16), (end, foot + 16), "dim")
        if end - start > 66:
            svg.text(((start + end) / 2, foot + 36), say(name), "middle")
    svg.text((320, 366), "red triangles: where the dry back bears", "middle")
    svg.text((320, 388), "gaps and arch much enlarged", "middle", "label-small")
    return svg.markup()


def draw_bar(values: Mapping[str, Any], say: Say) -> str:
    """One bar between deck and caul, to scale in its bend."""
    share = values["deck_height"] / values["bar_length"]
    bent = bent_bar(share)
    scale = 300 / share  # the room is 300 high on paper
    top, middle = 44.0, 200.0
    svg = Svg(
        "back-press-bar",
        f"A bar of {say('bar_length')} in {say('deck_height')} of room bows by {say('bar_bow')} "
        f"and pushes with {say('bar_force')}",
        "A thin bar stands bent between the deck above and the caul below, to scale. "
        f"{values['bar_words']}",
        640, 404,
    )  # fmt: skip
    line: list[Point] = [
        (middle + out * scale, top + along * scale) for along, out in bent_shape(bent.modulus, 24)
    ]
    svg.rectangle((60, top - 22), 330, 22, "wood-mid")
    svg.rectangle((60, top + 300), 330, 12, "wood-light")
    svg.rectangle((60, top + 312), 330, 22, "wood-dark")
    svg.line((middle, top), (middle, top + 300), "hidden")
    svg.polyline(line, "ink")
    svg.polyline([(x + 3, y) for x, y in line], "ink")
    bow = bent.bow * scale
    svg.line((middle, top + 150), (middle + bow, top + 150), "dim")
    for y, sense in ((top + 4, -1), (top + 296, 1)):
        svg.line((middle - 30, y - sense * 40), (middle - 30, y - sense * 8), "accent")
        tip = (middle - 30, y)
        svg.polygon(
            (tip, (tip[0] - 6, y - sense * 12), (tip[0] + 6, y - sense * 12)), "accent-fill"
        )
    svg.text((middle - 44, top + 36), say("bar_force"), "end")
    svg.text((middle - 44, top + 276), say("bar_force"), "end")
    for row, words in enumerate(
        (
            f"bar {say('bar_length')}",
            f"room {say('deck_height')}",
            f"bow {say('bar_bow')}",
            f"stress {say('bar_stress')}",
            f"that is {say('bar_share')} of",
            "its strength",
        )
    ):
        svg.text((420, top + 60 + 28 * row), words)
    svg.text((60, top + 354), "deck above, caul and work below; keep your face out of the bow")
    return svg.markup()
