"""Works out where every string's crest belongs, and what is left where it cannot stand there."""

import math
from collections.abc import Mapping, Sequence
from typing import Any

from ..engine.declaration import Refusal
from ..laws.fretted_strings import (
    ENDS,
    Lie,
    Neck,
    Touch,
    Wire,
    crown_mm,
    errors_cents,
    fret_place_mm,
    in_tune_pull_n,
    pressed_length_mm,
    set_back_for_all_mm,
    set_back_for_fret_mm,
    stretched_pull_n,
)
from ..laws.strings import bending_length_mm, tension_n
from ._string_sets import read_strings

MOST_PULL_N = 600.0
MOST_BENDING = 0.1  # of the shortest fretted length: as far as the series of the ends holds
MOST_SET_BACK = 0.05  # of the scale


def neck_of(
    scale_mm: float, frets: int, joint_fret: int, relief_mm: float, fret_height_mm: float
) -> Neck:
    """Places and crowns of the frets, at least to the 12th and to the joint."""
    places = [fret_place_mm(fret, scale_mm) for fret in range(max(frets, joint_fret, 12) + 1)]
    crowns = [crown_mm(place, places[1], places[joint_fret], relief_mm) for place in places]
    return Neck(scale_mm, places, crowns, fret_height_mm)


def lie_of(neck: Neck, action_mm: float, gap_mm: float, side: str) -> Lie:
    """The line of an open string, from its gap over the first fret and its action at the 12th.

    Refuses a line that dips below the frets at the nut, or falls towards the saddle.
    """
    first, twelfth = neck.places_mm[1], neck.places_mm[12]
    slope = (action_mm + neck.crowns_mm[12] - gap_mm) / (twelfth - first)
    nut_mm = gap_mm - slope * first
    if nut_mm < 0:
        least_mm = math.ceil((action_mm + neck.crowns_mm[12]) * first / twelfth * 100) / 100
        raise Refusal(
            f"first_fret_gap_{side}", f"With an action of {action_mm:.2f} mm at the 12th, a gap of "
            f"{gap_mm:.2f} mm over the first fret puts the string below the frets at the nut; measure "
            "both again", f"a gap of at least {least_mm:.2f} mm, or a lower action",
        )  # fmt: skip
    if slope <= 0:
        raise Refusal(
            f"action_{side}", f"The string would stand higher over the first fret ({gap_mm:.2f} mm) "
            f"than over the 12th ({action_mm:.2f} mm); measure both again",
            f"an action above {gap_mm - neck.crowns_mm[12]:.2f} mm",
        )  # fmt: skip
    return Lie(nut_mm, slope)


def wire_of(row: Mapping[str, Any], neck: Neck, last_fret: int, place: int) -> Wire:
    """The string of a row; refuses one that pulls too hard or is too stiff for what it pulls."""
    wire = Wire(row["frequency"], row["mass"], row["core"], row["modulus"])
    pull = tension_n(neck.scale_mm, wire.frequency_hz, wire.mass_g_m)
    if pull > MOST_PULL_N:
        raise Refusal(
            "scale_length", f"String {row['string']} would pull {pull:.0f} N, which no plucked string "
            "does; look over scale, note and gauge", f"strings that pull {MOST_PULL_N:.0f} N or less",
        )  # fmt: skip
    shortest = neck.scale_mm - neck.places_mm[last_fret]
    bend = bending_length_mm(wire.modulus_gpa, wire.core_mm, pull)
    if bend > MOST_BENDING * shortest:
        raise Refusal(
            f"strings[{place}].gauge", f"String {row['string']} is too stiff for its pull of "
            f"{pull:.0f} N: it would sound like a bar. Take a thinner core, a higher note or fewer "
            "frets", "a string that bends freely at the last fret",
        )  # fmt: skip
    return wire


def set_back_of(
    wire: Wire, neck: Neck, lie: Lie, touch: Touch, aim: str, frets: Sequence[int], side: str
) -> tuple[float, float]:
    """Set-back and move of the nut, mm; refuses what no saddle gives."""
    most = MOST_SET_BACK * neck.scale_mm
    try:
        if aim == "twelfth":
            found = set_back_for_fret_mm(wire, neck, lie, touch, 12), 0.0
        else:
            found = set_back_for_all_mm(wire, neck, lie, touch, frets, aim == "both")
    except ValueError:
        found = math.inf, 0.0
    if abs(found[0]) > most:
        raise Refusal(
            f"action_{side}", f"The string of {wire.frequency_hz:.0f} Hz would want its crest farther "
            "from the scale than any saddle goes; look over action, gap, finger, gauge and core",
            f"figures that want a set-back of at most {most:.0f} mm",
        )  # fmt: skip
    return found


def crests(
    scale_length: float, frets: int, action_bass: float, action_treble: float,
    first_fret_gap_bass: float, first_fret_gap_treble: float, aim: str, setback_treble: float,
    setback_bass: float, crest_reach: float, shown: str, relief: float,
    body_joint_fret: int, fret_height: float, finger_force: float, ends: str, string_set: str,
    reference_pitch: float, steel_density: float, wrap_density: float, nylon_density: float,
    steel_modulus: float, nylon_modulus: float, strings: Sequence[dict[str, Any]] | None = None,
) -> Mapping[str, Any]:  # fmt: skip
    """Set-back of every string and its errors: on the plain scale, on the slot, as filed.

    mm, N, Hz, cents. Action, gap and slot run evenly from the first string to the last. The
    physics and its sources are in ``laws.fretted_strings``; the set-back is solved so that the
    12th fret is true, or for the least squares over all frets, with or without moving the nut.
    """
    rows = read_strings(
        string_set, strings, reference_pitch, steel_density, wrap_density, nylon_density,
        steel_modulus, nylon_modulus,
    )  # fmt: skip
    neck = neck_of(scale_length, frets, body_joint_fret, relief, fret_height)
    touch = Touch(finger_force, ENDS[ends])
    numbers = range(1, frets + 1)
    lie_of(neck, action_treble, first_fret_gap_treble, "treble")  # refuses, in what was given
    lie_of(neck, action_bass, first_fret_gap_bass, "bass")
    done: list[dict[str, Any]] = []
    bent: list[tuple[Wire, Lie, float, float, float, list[float]]] = []
    for place, row in enumerate(rows):
        share = place / max(1, len(rows) - 1)
        side = "treble" if share < 0.5 else "bass"
        lie = lie_of(
            neck, action_treble + share * (action_bass - action_treble),
            first_fret_gap_treble + share * (first_fret_gap_bass - first_fret_gap_treble), side,
        )  # fmt: skip
        wire = wire_of(row, neck, frets, place + 1)
        set_back, nut_move = set_back_of(wire, neck, lie, touch, aim, numbers, side)
        slot = setback_treble + share * (setback_bass - setback_treble)
        crest = set_back - slot
        filed = slot + max(-crest_reach, min(crest_reach, crest))
        curve = errors_cents(wire, neck, lie, touch, filed, nut_move, numbers)
        one = {
            "string": row["string"], "share": share, "pull": in_tune_pull_n(
                wire, scale_length + filed - nut_move, touch.ends
            ),
            "nut_height": lie.nut_height_mm, "set_back": set_back, "nut_move": nut_move,
            "crest": crest, "filed_at": filed,
            "plain": errors_cents(wire, neck, lie, touch, 0.0, 0.0, (12,))[0],
            "on_slot": errors_cents(wire, neck, lie, touch, slot, nut_move, (12,))[0],
            "filed": curve[11], "worst_fret": max(curve, key=abs),
        }  # fmt: skip
        done.append(one)
        bent.append((wire, lie, slot, filed, nut_move, curve))
    at = {"first": 0, "last": len(rows) - 1}.get(shown)
    if at is None:
        at = max(range(len(rows)), key=lambda place: abs(done[place]["crest"]))
    wire, lie, slot, filed, nut_move, curve = bent[at]
    plain = errors_cents(wire, neck, lie, touch, 0.0, 0.0, numbers)
    on_slot = errors_cents(wire, neck, lie, touch, slot, nut_move, numbers)
    rises = pull_rises_n(wire, neck, lie, touch, filed, nut_move, numbers)
    fret_rows = [
        {"fret": fret, "rise": rises[fret - 1], "plain": plain[fret - 1],
         "on_slot": on_slot[fret - 1], "filed": curve[fret - 1]}
        for fret in numbers
    ]  # fmt: skip
    line = straight_line([one["share"] for one in done], [one["set_back"] for one in done])
    worst = max(done, key=lambda one: abs(one["filed"]))
    past = [one["string"] for one in done if abs(one["crest"]) > crest_reach + 1e-9]
    return {
        "saddle_rows": done, "fret_rows": fret_rows, "shown_name": rows[at]["string"],
        "shown_frequency": rows[at]["frequency"],
        "needed_treble": done[0]["set_back"], "needed_bass": done[-1]["set_back"],
        "line_treble": line[0], "line_bass": line[1],
        "worst_plain": max(abs(one["plain"]) for one in done),
        "worst_slot": max(abs(one["on_slot"]) for one in done),
        "worst_left": abs(worst["filed"]), "worst_name": worst["string"],
        "worst_fret": max(abs(one["worst_fret"]) for one in done),
        "past_names": ", ".join(past),
        "nut_most": max((one["nut_move"] for one in done), key=abs),
    }  # fmt: skip


def pull_rises_n(
    wire: Wire, neck: Neck, lie: Lie, touch: Touch, set_back_mm: float, nut_mm: float,
    frets: Sequence[int],
) -> list[float]:  # fmt: skip
    """How much harder the string pulls when pressed to each fret, N."""
    saddle = neck.scale_mm + set_back_mm
    pull = in_tune_pull_n(wire, saddle - nut_mm, touch.ends)
    opened = (saddle - nut_mm) * math.hypot(1, lie.slope)
    return [
        stretched_pull_n(
            wire, pull, opened,
            pressed_length_mm(fret, neck, lie, nut_mm, saddle, touch.force_n, pull),
        ) - pull
        for fret in frets
    ]  # fmt: skip


def straight_line(shares: Sequence[float], heights: Sequence[float]) -> tuple[float, float]:
    """Ends of the straight line of least squares, at share 0 and share 1; level for one point."""
    count = len(shares)
    middle, mean = sum(shares) / count, sum(heights) / count
    spread = sum((share - middle) ** 2 for share in shares)
    if spread == 0:
        return mean, mean
    slope = sum((s - middle) * (h - mean) for s, h in zip(shares, heights, strict=True)) / spread
    return mean - slope * middle, mean + slope * (1 - middle)
