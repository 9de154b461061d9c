"""String by string and fret by fret: what the saddle has to be, and what gaps it leaves.

Lengths are millimetres. Inner strings lie on an even step between the outer two, at the first fret
and at the 12th; the saddle is cut along a straight line.
"""

from collections.abc import Mapping
from typing import Any

from ..laws.string_over_frets import (
    Neck,
    fret_place_mm,
    open_gaps_mm,
    pressed_gaps_mm,
    string_line,
)

BASS, MIDDLE, TREBLE = -1.0, 0.0, 1.0


def between(bass: float, treble: float, share_across: float) -> float:
    """A figure of a string between the outer two, on an even step."""
    return bass + (treble - bass) * (share_across + 1) / 2


def saddle_by_string(
    strings: int, scale_length: float, body_joint_fret: int, fret_radius: float,
    string_spread_nut: float, string_spread_bridge: float, setback_bass: float,
    setback_treble: float, saddle_now: float, relief_before: float,
    action_bass_now: float, action_treble_now: float, first_fret_gap_bass: float,
    first_fret_gap_treble: float, action_bass: float, action_treble: float,
    saddle_cut_bass: float, saddle_cut_treble: float,
) -> Mapping[str, Any]:  # fmt: skip
    """Cut and height of the saddle at every string, from the bass (``side`` "bass") on.

    All lengths in mm. Each string is the straight line through its readings at the first fret and
    the 12th; its height at the saddle over that of the middle one shapes the crest.
    """
    neck = Neck(scale_length, body_joint_fret, relief_before, fret_radius, string_spread_nut,
                string_spread_bridge)  # fmt: skip

    def crest_mm(share: float) -> float:
        length_mm = scale_length + between(setback_bass, setback_treble, share)
        gap_mm = between(first_fret_gap_bass, first_fret_gap_treble, share)
        action_mm = between(action_bass_now, action_treble_now, share)
        return string_line(neck, gap_mm, action_mm, length_mm, share).at_saddle_mm

    middle_mm = crest_mm(MIDDLE)
    rows = []
    for number in range(strings):
        share = 2 * number / (strings - 1) - 1
        off_mm = between(saddle_cut_bass, saddle_cut_treble, share)
        rows.append({
            "string": _name(number, strings),
            "from_middle": share * string_spread_bridge / 2,
            "action_after": between(action_bass, action_treble, share),
            "off": off_mm,
            "showing": saddle_now + crest_mm(share) - middle_mm - off_mm,
        })  # fmt: skip
    return {
        "saddle_rows": rows, "showing_bass": rows[0]["showing"],
        "showing_treble": rows[-1]["showing"],
    }  # fmt: skip


def _name(number: int, strings: int) -> str:
    return "bass" if number == 0 else "treble" if number == strings - 1 else str(number + 1)


def gaps_by_fret(
    frets: int, scale_length: float, body_joint_fret: int, fret_radius: float,
    string_spread_nut: float, string_spread_bridge: float, setback_bass: float,
    setback_treble: float, relief: float, action_bass: float, action_treble: float,
    first_fret_gap_bass_after: float, first_fret_gap_treble_after: float,
) -> Mapping[str, Any]:  # fmt: skip
    """Gap of the two outer strings over every fret, open and pressed, once all is set; in mm.

    Method and meaning: ``laws.string_over_frets``.
    """
    neck = Neck(scale_length, body_joint_fret, relief, fret_radius, string_spread_nut,
                string_spread_bridge)  # fmt: skip
    lines = {
        share: string_line(neck, gap_mm, action_mm, scale_length + setback_mm, share)
        for share, gap_mm, action_mm, setback_mm in (
            (BASS, first_fret_gap_bass_after, action_bass, setback_bass),
            (TREBLE, first_fret_gap_treble_after, action_treble, setback_treble),
        )
    }
    open_mm = {share: open_gaps_mm(neck, lines[share], frets, share) for share in lines}
    pressed_mm = {share: pressed_gaps_mm(neck, lines[share], frets, share) for share in lines}
    rows: list[dict[str, float | None]] = []
    for number in range(frets):
        last = number == frets - 1  # no fret lies beyond it
        rows.append({
            "fret": number + 1, "from_nut": fret_place_mm(scale_length, number + 1),
            "open_bass": open_mm[BASS][number], "open_treble": open_mm[TREBLE][number],
            "pressed_bass": None if last else pressed_mm[BASS][number],
            "pressed_treble": None if last else pressed_mm[TREBLE][number],
        })  # fmt: skip
    least = {share: min(pressed_mm[share]) for share in lines}
    return {
        "gap_rows": rows, "least_bass": least[BASS], "least_treble": least[TREBLE],
        "least_bass_fret": pressed_mm[BASS].index(least[BASS]) + 1,
        "least_treble_fret": pressed_mm[TREBLE].index(least[TREBLE]) + 1,
        "least_open": min(*open_mm[BASS], *open_mm[TREBLE]),
    }  # fmt: skip
