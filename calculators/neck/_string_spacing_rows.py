"""String by string and fret by fret: where the strings lie, and how deep and wide their slots.

Lengths in mm. Rows run from the bass side; strings are numbered from the treble, as players do.
"""

import math
from collections.abc import Mapping, Sequence
from typing import Any

from ..engine.declaration import Refusal
from ..engine.formula import round_to
from ..laws.string_places import EVEN_MIDDLES, between_mm, gaps_mm, places_mm
from ._string_spacing_inputs import GRADUATIONS_MM

MM_PER_MIL = 0.0254


def read_gauges(
    gauges_in: str, plain_strings: int, rule: str, gauges: Sequence[float] = (),
    gauges_mil: Sequence[float] = (),
) -> Mapping[str, Any]:  # fmt: skip
    """Gauges in mm, treble to bass, with their number, sum and outer two; one graduation in mm.

    A thousandth of an inch is 0.0254 mm exactly. Refuses more plain strings than there are.
    """
    read = list(gauges) if gauges_in == "mm" else [mil * MM_PER_MIL for mil in gauges_mil]
    if plain_strings > len(read):
        raise Refusal(
            "plain_strings",
            f"There are only {len(read)} strings, so {plain_strings} cannot be plain; "
            "look over the gauges",
            f"0 to {len(read)}",
        )
    return {
        "strings_mm": read, "strings_count": len(read), "gauge_sum": math.fsum(read),
        "gauge_treble": read[0], "gauge_bass": read[-1], "graduation": GRADUATIONS_MM[rule],
    }  # fmt: skip


def across(
    strings_mm: Sequence[float], string_spread_nut: float, string_spread_bridge: float,
    nut_rule: str, bridge_rule: str, scale_length: float, frets: int, edge_margin: float,
) -> Mapping[str, Any]:  # fmt: skip
    """Places and gaps at the nut, at the saddle and at every fret, from the bass string on; mm.

    Method and meaning: ``laws.string_places``. Gaps run evenly along straight strings.
    """
    bass_first = list(reversed(strings_mm))
    nut = places_mm(bass_first, string_spread_nut, nut_rule)
    saddle = places_mm(bass_first, string_spread_bridge, bridge_rule)
    nut_gaps, saddle_gaps = gaps_mm(bass_first, nut), gaps_mm(bass_first, saddle)
    middle_gaps = gaps_mm(bass_first, places_mm(bass_first, string_spread_nut, EVEN_MIDDLES))
    rows = []
    for fret in range(frets + 1):
        share = 1 - 2 ** (-fret / 12)
        gaps = between_mm(nut_gaps, saddle_gaps, share)
        spread = string_spread_nut + (string_spread_bridge - string_spread_nut) * share
        rows.append({
            "fret": fret, "fret_from_nut": scale_length * share, "spread": spread,
            "narrowest": min(gaps), "widest": max(gaps), "board_width": spread + 2 * edge_margin,
        })  # fmt: skip
    octave = between_mm(nut_gaps, saddle_gaps, 0.5)
    return {
        "nut_places": nut, "saddle_places": saddle, "fret_rows": rows,
        "nut_gap_least": min(nut_gaps), "nut_gap_most": max(nut_gaps),
        "saddle_gap_least": min(saddle_gaps), "saddle_gap_most": max(saddle_gaps),
        "octave_gap_least": min(octave), "octave_gap_most": max(octave),
        "middles_gap_least": min(middle_gaps), "middles_gap_most": max(middle_gaps),
    }  # fmt: skip


def string_rows(
    strings_mm: Sequence[float], nut_places: Sequence[float], saddle_places: Sequence[float],
    bass_edge: float, nut_width: float, graduation: float, plain_strings: int,
    slot_clearance: float, wound_share: float, plain_share: float, fret_height: float,
    nut_height: float, nut_height_bass: float, fret_radius: float, board_joint: float,
) -> Mapping[str, Any]:  # fmt: skip
    """Each string at the nut: place, mark, slot and heights; in mm, shares in %.

    ``floor`` is the slot's floor over the board just before it: the fret's height and the leaf
    under this string, on an even step from treble to bass. ``top`` is the nut's top there over its
    shelf: board, less what a round board falls so far from its middle (sagitta), floor, and as much
    of the string as is to lie in the bone.
    """
    count = len(strings_mm)
    rows: list[dict[str, Any]] = []
    for number in range(count):
        gauge = strings_mm[count - 1 - number]
        place = bass_edge + nut_places[number]
        plain = count - number <= plain_strings
        from_middle = place - nut_width / 2
        fall = 0.0
        if fret_radius > 0:
            fall = fret_radius - math.sqrt(fret_radius**2 - from_middle**2)
        leaf = nut_height_bass + (nut_height - nut_height_bass) * number / (count - 1)
        floor = fret_height + leaf
        depth = gauge * (plain_share if plain else wound_share) / 100
        rows.append({
            "string": str(count - number), "gauge": gauge, "place": place,
            "mark": round_to(place, graduation), "from_middle": from_middle,
            "bridge_place": saddle_places[number],
            "bridge_mark": round_to(saddle_places[number], graduation),
            "slot_width": gauge + slot_clearance, "wall": place - (gauge + slot_clearance) / 2,
            "floor": floor, "slot_depth": depth, "top": board_joint - fall + floor + depth,
        })  # fmt: skip
    marks = gaps_mm(list(reversed(strings_mm)), [row["mark"] for row in rows])
    return {
        "nut_rows": rows, "mark_difference": max(marks) - min(marks),
        "highest_top": max(row["top"] for row in rows),
        "lowest_top": min(row["top"] for row in rows),
    }  # fmt: skip
