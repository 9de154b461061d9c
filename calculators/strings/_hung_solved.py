"""Bends the neck under strings and under weights, and finds the weights that stand for strings."""

from collections.abc import Mapping
from typing import Any

from ..engine.declaration import Refusal
from ..laws.fretted_strings import fret_place_mm
from ..laws.tapered_cantilever import (
    ALONG,
    Bend,
    bend,
    cut_places,
    hollow_mm,
    point_load_moment,
)

GRAVITY = 9.80665  # m/s²
PIECES = 24  # even pieces along the neck, besides the frets
NEAREST_MM = 10.0  # two weights must hang at least so far apart
MOST_SAG_MM = 6.0


def thickness_along(scale_mm: float, first_mm: float, second_mm: float, second_fret: int) -> ALONG:
    """Thickness of neck with board, mm, along the neck: the straight line through two places."""
    start, end = fret_place_mm(1, scale_mm), fret_place_mm(second_fret, scale_mm)
    slope = (second_mm - first_mm) / (end - start)
    return lambda place: first_mm + slope * (place - start)


def string_height_along(
    scale_mm: float, nut_mm: float, action_mm: float, pressed_fret: int
) -> ALONG:
    """Height of the strings' underside over the fret plane, mm, along the neck.

    Open: the line from the nut through the action at the 12th. Pressed: from the nut down to the
    fret, and from there up to the saddle.
    """
    if pressed_fret == 0:
        slope = (action_mm - nut_mm) / (scale_mm / 2)
        return lambda place: nut_mm + slope * place
    down = fret_place_mm(pressed_fret, scale_mm)
    saddle_mm = 2 * action_mm - nut_mm

    def over(place: float) -> float:
        if place < down:
            return nut_mm * (1 - place / down)
        return saddle_mm * (place - down) / (scale_mm - down)

    return over


def bent_neck(
    string_tension: float, scale_length: float, body_joint_fret: int, thickness_first: float,
    thickness_second: float, second_fret: int, stiffness_from: str, hung_weight: float,
    hang_place: float, arrangement: str, fret_height: float, nut_height: float,
    action_bass: float, action_treble: float, mean_gauge: float, pressed_fret: int,
    first_read_fret: int, neck_width_nut: float, board_end_width: float, last_fret: int,
    axis_share: float, measured_sag: float = 0.0, neck_modulus: float = 0.0,
    section_fill: float = 0.0, pair_place: float = 0.0,
) -> Mapping[str, Any]:  # fmt: skip
    """Bends of the neck (mm), its stiffness (N·m²), and the weights (kg) that match the strings.

    A cantilever from the body joint, as wide as the board and as thick as measured; E·I goes with
    width times thickness cubed, and its size comes from the measured sag or from the wood. The
    strings' moment is their pull times the height of their middles over the neutral axis. One
    weight is sized for the same hollow between the first fret read and the joint; two for that
    and for the same drop of the nut (two equations, solved exactly). Deflections:
    ``laws.tapered_cantilever``.
    """
    length = fret_place_mm(body_joint_fret, scale_length)
    read = fret_place_mm(first_read_fret, scale_length)
    frets = [fret_place_mm(fret, scale_length) for fret in range(body_joint_fret)]
    loads = [-hang_place, *([-pair_place] if arrangement == "two" else [])]
    middle = (read + length) / 2
    places = cut_places(length, (*frets, *loads, middle), PIECES)
    thickness = thickness_along(scale_length, thickness_first, thickness_second, second_fret)
    if min(thickness(0.0), thickness(length)) < 8:
        raise Refusal(
            "thickness_second", "The two thicknesses run out to less than 8 mm on the way from nut to "
            "joint; gauge both again", "thicknesses that differ by a few millimetres",
        )  # fmt: skip
    end = fret_place_mm(last_fret, scale_length)
    flare = (board_end_width - neck_width_nut) / end
    nut_size = neck_width_nut * thickness(0.0) ** 3

    def shape(place: float) -> float:
        return (neck_width_nut + flare * place) * thickness(place) ** 3 / nut_size

    over = string_height_along(
        scale_length, nut_height, (action_bass + action_treble) / 2, pressed_fret
    )
    above = fret_height + mean_gauge / 2

    def string_moment(place: float) -> float:
        height_mm = axis_share / 100 * thickness(place) + above + over(place)
        return string_tension * height_mm / 1000

    def bent(moment: ALONG, stiffness: float) -> Bend:
        return bend(places, moment, lambda place: stiffness * shape(place))

    hung_n = hung_weight * GRAVITY
    if stiffness_from == "sag":
        stiffness = hollow_mm(bent(point_load_moment(hung_n, loads[0]), 1.0), read) / measured_sag
    else:
        second_moment_mm4 = section_fill / 100 * nut_size / 12
        stiffness = neck_modulus * second_moment_mm4 / 1000
    strings = bent(string_moment, stiffness)
    one_kg = bent(point_load_moment(GRAVITY, loads[0]), stiffness)
    sag_strings, sag_one = hollow_mm(strings, read), hollow_mm(one_kg, read)
    if max(sag_strings, hung_weight * sag_one) > MOST_SAG_MM:
        raise Refusal(
            "hung_weight", f"The neck would sag by {max(sag_strings, hung_weight * sag_one):.1f} mm, "
            "which no neck does; look over weight, sag, stiffness and pull",
            f"figures that bend the neck by less than {MOST_SAG_MM:.0f} mm",
        )  # fmt: skip
    if arrangement == "one":
        weights = [sag_strings / sag_one]
        units = [one_kg]
    else:
        pair_kg = bent(point_load_moment(GRAVITY, loads[1]), stiffness)
        weights = two_weights(strings, one_kg, pair_kg, read, hang_place - pair_place)
        units = [one_kg, pair_kg]
    offs = [
        sum(w * unit.offs_mm[number] for w, unit in zip(weights, units, strict=True))
        for number in range(len(places))
    ]
    moments = [point_load_moment(w * GRAVITY, at) for w, at in zip(weights, loads, strict=True)]
    drop, read_off = strings.off_at(0.0), strings.off_at(read)
    read_weights = offs[places.index(read)]

    def below(off: float, place: float, at_read: float) -> float:
        """Hollow at a place: below the straight line from where the straightedge starts."""
        return at_read * (length - place) / (length - read) - off

    curves = [
        {"place": place, "strings": below(strings.offs_mm[number], place, read_off),
         "weights": below(offs[number], place, read_weights)}
        for number, place in enumerate(places)
    ]  # fmt: skip
    return {
        "curves": curves, "weights": weights, "stiffness_nut": stiffness,
        "sag_strings": sag_strings, "sag_hung": hung_weight * sag_one,
        "weight_first": weights[0], "weight_second": weights[1] if len(weights) > 1 else 0.0,
        "drop_strings": drop, "drop_weights": offs[0],
        "worst_gap": max(
            abs(one["strings"] - one["weights"]) for one in curves if one["place"] >= read
        ),
        "fret_rows": [
            {"fret": fret, "place": place, "thickness": thickness(place),
             "height": string_moment(place) * 1000 / string_tension,
             "weight_moment": sum(moment(place) for moment in moments),
             "hollow_strings": below(strings.off_at(place), place, read_off),
             "hollow_weights": below(offs[places.index(place)], place, read_weights)}
            for fret, place in enumerate([*frets, length])
        ],
    }  # fmt: skip


def two_weights(
    strings: Bend, first_kg: Bend, second_kg: Bend, read_mm: float, apart_mm: float
) -> list[float]:
    """Two weights, kg, with the hollow and the drop of the nut that the strings make.

    Minus is a lift: a weight over a pulley. Refuses two that hang too near to each other.
    """
    if abs(apart_mm) < NEAREST_MM:
        raise Refusal(
            "pair_place", "The two weights hang at nearly the same place and cannot do different "
            "things; hang the second elsewhere", f"a place at least {NEAREST_MM:.0f} mm from the first",
        )  # fmt: skip
    a, b = hollow_mm(first_kg, read_mm), hollow_mm(second_kg, read_mm)
    c, d = first_kg.offs_mm[0], second_kg.offs_mm[0]
    sag, drop = hollow_mm(strings, read_mm), strings.offs_mm[0]
    whole = a * d - b * c
    return [(sag * d - b * drop) / whole, (a * drop - sag * c) / whole]
