"""The pictures of the fret-seating calculation: the fret in its slot, back-bow by slot width."""

from collections.abc import Mapping
from typing import Any

from ..engine.compute import Say
from ..engine.drawing import Svg
from ..engine.plot import Axis, Plot
from ..engine.reading import convert
from ..engine.showing import reader_unit
from ..engine.unit_table import UNITS

MIDDLE, BOARD_WIDE, TOP = 170.0, 300.0, 40.0
TALL = 270.0
WORDS_AT = 350.0


def draw_slot(values: Mapping[str, Any], say: Say) -> str:
    """A fret seated in its slot, cut along the neck, to scale; its figures beside it."""
    crown, wide = values["crown_wire"], max(values["crown_width"], values["tang_beads"])
    depth, tang = values["slot_depth"], values["tang_depth"]
    under = min(1.2, values["board_joint"] - depth)
    scale = min(TALL / (crown + depth + under), (BOARD_WIDE - 40) / wide)
    face = TOP + crown * scale
    floor = face + depth * scale
    foot = floor + under * scale
    svg = Svg(
        "fret-seating-slot",
        f"A fret in its slot: tang {say('tang_thickness')}, slot {say('slot_width')}",
        f"Section along the neck, to scale: crown, tang with its beads, slot. {values['fit_words']}",
        640, max(foot + 16, TOP + 7 * 28 + 10),
    )  # fmt: skip
    left, right = MIDDLE - BOARD_WIDE / 2, MIDDLE + BOARD_WIDE / 2
    half = values["slot_width"] / 2 * scale
    svg.polygon(
        ((left, face), (MIDDLE - half, face), (MIDDLE - half, floor), (MIDDLE + half, floor),
         (MIDDLE + half, face), (right, face), (right, foot), (left, foot)),
        "wood-dark board",
    )  # fmt: skip
    bead = values["tang_beads"] / 2 * scale
    body = values["tang_thickness"] / 2 * scale
    for share in (0.3, 0.55, 0.8):
        y = face + share * tang * scale
        reach = 0.06 * tang * scale
        svg.polygon(
            ((MIDDLE - body, y - reach), (MIDDLE - bead, y), (MIDDLE - body, y + reach),
             (MIDDLE + body, y + reach), (MIDDLE + bead, y), (MIDDLE + body, y - reach)),
            "metal",
        )  # fmt: skip
    svg.rectangle((MIDDLE - body, face), 2 * body, tang * scale, "metal")
    cap, radius = values["crown_width"] / 2 * scale, values["crown_radius"] * scale
    large = 1 if values["crown_wire"] > values["crown_radius"] else 0
    svg.path(
        f"M{MIDDLE - cap:.5g} {face:.5g} A{radius:.5g} {radius:.5g} 0 {large} 1 "
        f"{MIDDLE + cap:.5g} {face:.5g} Z",
        "metal",
    )
    lines = (
        f"crown {say('crown_wire')} over the board",
        f"tang {say('tang_thickness')}, {say('tang_depth')} deep",
        f"over its beads {say('tang_beads')}",
        f"slot {say('slot_width')}, {say('slot_depth')} deep",
        _above(say, "clearance", "beside the tang", "tang too thick by"),
        _above(say, "bead_bite", "a bead bites", "beads fall short by"),
        f"left below the tang {say('depth_margin')}",
    )
    for number, words in enumerate(lines):
        svg.text((WORDS_AT, TOP + 12 + number * 28), words)
    return svg.markup()


def _above(say: Say, name: str, words: str, below: str) -> str:
    """A figure with its words, or with others where it lies below nought."""
    shown = say(name)
    return f"{below} {shown[1:]}" if shown[0] == "-" else f"{words} {shown}"


def draw_bow(values: Mapping[str, Any], say: Say) -> str:
    """Back-bow of the neck against the width of its slots; the slot now, the bow wanted."""
    beads, tang, slot = values["tang_beads"], values["tang_thickness"], values["slot_width"]
    share = values.get("bead_share", 0.0) / 100
    a_wedge = values["lever_sum"] * values["kink_rate"] / 1000
    wanted, bow = values["bow_wanted"], values["bow"]

    def bow_at(width: float) -> float:
        return float(max(share * (beads - width), tang - width, 0.0) * a_wedge)

    low = min(tang - 0.06, slot - 0.02, values["slot_wanted"] - 0.02)
    high = max(beads, slot, values["slot_wanted"]) + 0.03
    top = min(bow_at(low), max(2.5 * wanted, 1.4 * bow, 0.15))
    edge = tang - top / a_wedge
    if share:
        edge = max(edge, beads - top / a_wedge / share)
    start = max(low, edge)
    widths = [start + (high - start) * number / 48 for number in range(49)]
    widths += [one for one in (tang, beads, (tang - share * beads) / (1 - share)) if one > start]
    unit = reader_unit("mm", say.system)
    per = convert(1.0, "mm", unit)
    plot = Plot(
        "fret-seating-bow",
        f"Back-bow against slot width; now {say('bow')} in a slot of {say('slot_width')}",
        "Slot width across, back-bow upwards. To the left of the tang's own thickness every fret is "
        f"a wedge and the line climbs steeply. {values['verdict']}",
        Axis(f"Slot width, {UNITS[unit].shown}", low * per, high * per),
        Axis(f"Back-bow, {UNITS[unit].shown}", 0, 1.05 * top * per),
    )
    plot.curve([(x * per, min(top, bow_at(x)) * per) for x in sorted(widths)], "ink")
    plot.upright(tang * per, f"tang {say('tang_thickness')}", "hidden")
    if wanted > 0:
        plot.level(wanted * per, f"wanted {say('bow_wanted')}", "second")
    plot.mark((slot * per, bow * per), "")
    svg = plot.svg
    y = svg.height + 4
    svg.circle((79, y), 5, "accent-fill")
    svg.text((104, y + 5), f"your slot, {say('slot_width')}: {say('bow')}")
    svg.height = y + 20
    return plot.markup()
