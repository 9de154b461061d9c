"""The pressed string and the saddle: physical laws, and the same physics solved another way."""

import itertools
import json
import math
import xml.etree.ElementTree as ET
from collections.abc import Sequence
from typing import Any

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as some
from scipy.optimize import brentq

from calculators.engine import door
from calculators.laws import fretted_strings as law
from calculators.laws import strings as plain
from calculators.strings._saddle_solved import lie_of, neck_of, straight_line

few = settings(max_examples=25)
GUITAR = neck_of(645, 20, 14, 0.2, 1.05)
E1 = law.Wire(329.6275569, 0.5735, 0.305, 200)
E6 = law.Wire(82.4068892, 10.15, 0.43, 200)
C3 = law.Wire(261.6255653, 0.934, 1.04, 3)


def answer(**chosen: Any) -> dict[str, Any]:
    found = door.answer("saddle-compensation", chosen)
    assert "refused" not in found, found
    return found


def value(name: str, **chosen: Any) -> Any:
    return answer(**chosen)["results"][name]["value"]


def rows(table: str, **chosen: Any) -> list[dict[str, Any]]:
    one = answer(**chosen)["tables"][table]
    return [dict(zip(one["columns"], row, strict=True)) for row in one["rows"]]


def refused(**chosen: Any) -> dict[str, str]:
    found = door.answer("saddle-compensation", chosen)
    return found["refused"][0]  # type: ignore[no-any-return]


# ---- the ends of a stiff string


def exact_hz(length: float, pull: float, mass: float, bend: float, kind: str) -> float:
    """Lowest pitch of EI·y'''' - T·y'' = µω²·y by its characteristic equation (m, N, kg/m)."""
    half, mass_kg, bend_m = length / 2000, mass / 1000, bend / 1000
    stiff = pull * bend_m**2
    resist = {"hinged": 0.0, "over": math.sqrt(stiff * pull), "clamped": math.inf}[kind]

    def off(k: float) -> float:
        grow = math.sqrt(pull / stiff + k * k)
        c, s = math.cos(k * half), math.sin(k * half)
        slope = -k * s - c * grow * math.tanh(grow * half)
        bent = -k * k * c - c * grow * grow
        return slope if math.isinf(resist) else stiff * bent + resist * slope

    k = brentq(off, 0.9 * math.pi / (2 * half), 1.4 * math.pi / (2 * half), xtol=1e-14)
    return math.sqrt(stiff / mass_kg * (pull / stiff + k * k)) * k / (2 * math.pi)


@given(some.floats(60, 900), some.floats(20, 200), some.floats(0.3, 12), some.floats(0.002, 0.03))
@few
def test_the_three_ends_agree_with_the_equation_of_the_stiff_string(
    length: float, pull: float, mass: float, share: float
) -> None:
    bend = share * length
    for kind, ends in law.ENDS.items():
        ours = law.stiff_pitch_hz(length, pull, mass, bend, ends)
        exact = exact_hz(length, pull, mass, bend, kind)
        allowed = 1e-6 if kind == "hinged" else 1730 * 6 * share**3 + 1e-6
        assert abs(plain.cents_between(exact, ours)) < allowed


@given(some.floats(100, 900), some.sampled_from([E1, E6, C3]), some.sampled_from([0, 0.5, 1]))
@few
def test_the_pull_in_tune_gives_the_pitch(length: float, wire: law.Wire, ends: float) -> None:
    pull = law.in_tune_pull_n(wire, length, ends)
    bend = plain.bending_length_mm(wire.modulus_gpa, wire.core_mm, pull)
    assume(bend < 0.1 * length)
    hertz = law.stiff_pitch_hz(length, pull, wire.mass_g_m, bend, ends)
    assert hertz == pytest.approx(wire.frequency_hz, rel=1e-11)


def test_a_limp_string_needs_mersennes_pull_alone() -> None:
    limp = E1._replace(modulus_gpa=1e-9)
    pull = law.in_tune_pull_n(limp, 645, 1)
    assert pull == pytest.approx(plain.tension_n(645, E1.frequency_hz, E1.mass_g_m), rel=1e-6)


# ---- stretch


@given(some.floats(20, 200), some.floats(0.0, 3.0))
@few
def test_stretch_follows_hooke_from_the_slack_length(pull: float, longer: float) -> None:
    spring = 200e3 * math.pi * E1.core_mm**2 / 4
    slack = 645 / (1 + pull / spring)
    hooke = spring * ((645 + longer) / slack - 1)
    assert law.stretched_pull_n(E1, pull, 645, 645 + longer) == pytest.approx(hooke, rel=1e-12)


Points = list[tuple[float, float]]


def over_all_crowns(points: Points) -> Points:
    """The taut string over points: their upper hull."""
    kept: Points = []
    for point in points:
        while len(kept) >= 2:
            (x0, y0), (x1, y1) = kept[-2:]
            if (y1 - y0) * (point[0] - x0) > (point[1] - y0) * (x1 - x0):
                break
            kept.pop()
        kept.append(point)
    return kept


def taut(
    fret: int, neck: law.Neck, lie: law.Lie, nut: float, saddle: float, force: float, pull: float
) -> float:
    """The pressed string over every crown, the finger's depth from the balance at its kink."""

    def line(x: float) -> float:
        return lie.nut_height_mm + lie.slope * x

    crowns = list(zip(neck.places_mm, neck.crowns_mm, strict=True))
    end, behind = crowns[fret], [(nut, line(nut)), *crowns[1:fret]]
    back = crowns[fret - 1][0] if fret > 1 else nut
    x = (end[0] + back) / 2
    floor = (end[1] + (crowns[fret - 1][1] if fret > 1 else 0)) / 2 - neck.fret_height_mm

    def push(y: float) -> float:
        left = over_all_crowns([*behind, (x, y)])[-2]
        return pull * ((left[1] - y) / (x - left[0]) + (end[1] - y) / (end[0] - x)) - force

    path = over_all_crowns([*behind, end])
    top = float(np.interp(x, [p[0] for p in path], [p[1] for p in path]))
    y = max(floor, brentq(push, top - 90, top + 1e-6, xtol=1e-13))
    points = [*over_all_crowns([*behind, (x, y)]), end, (saddle, line(saddle))]
    return math.fsum(math.dist(a, b) for a, b in itertools.pairwise(points))


@given(
    some.integers(1, 20), some.floats(0.01, 25), some.floats(30, 150), some.floats(1.2, 3.5),
    some.floats(0.0, 0.5), some.floats(-0.2, 1.0), some.floats(0, 0.4),
)  # fmt: skip
@settings(max_examples=150)
def test_the_pressed_path_is_the_taut_string_over_all_crowns(
    fret: int, force: float, pull: float, action: float, nut: float, forward: float, relief: float
) -> None:
    neck = neck_of(645, 20, 14, relief, 1.05)
    lie = law.Lie(nut, (action + neck.crowns_mm[12] - nut) / neck.places_mm[12])
    ours = law.pressed_length_mm(fret, neck, lie, forward, 648.0, force, pull)
    assert ours == pytest.approx(taut(fret, neck, lie, forward, 648.0, force, pull), abs=1e-9)


def test_a_light_touch_leaves_two_straight_pieces_and_a_hard_one_meets_the_board() -> None:
    lie = law.Lie(0.1, 0.006)
    place, crown = GUITAR.places_mm[5], GUITAR.crowns_mm[5]
    straight = math.hypot(place, crown - 0.1) + math.hypot(647 - place, 0.1 + 0.006 * 647 - crown)
    assert law.pressed_length_mm(5, GUITAR, lie, 0, 647, 0, 100) == pytest.approx(straight)
    hard = law.pressed_length_mm(5, GUITAR, lie, 0, 647, 400, 100)
    assert hard == law.pressed_length_mm(5, GUITAR, lie, 0, 647, 900, 100)
    four = GUITAR.places_mm[4], GUITAR.crowns_mm[4]
    finger = (place + four[0]) / 2, (crown + four[1]) / 2 - 1.05
    points = [(0, 0.1), four, finger, (place, crown), (647, 0.1 + 0.006 * 647)]
    assert hard == pytest.approx(math.fsum(math.dist(a, b) for a, b in itertools.pairwise(points)))


def test_relief_is_a_parabola_between_first_fret_and_joint() -> None:
    middle = (GUITAR.places_mm[1] + GUITAR.places_mm[14]) / 2
    first, joint = GUITAR.places_mm[1], GUITAR.places_mm[14]
    assert law.crown_mm(middle, first, joint, 0.2) == pytest.approx(-0.2)
    quarter = first + (joint - first) / 4
    assert law.crown_mm(quarter, first, joint, 0.2) == pytest.approx(-0.15)
    assert GUITAR.crowns_mm[1] == GUITAR.crowns_mm[14] == GUITAR.crowns_mm[20] == 0
    assert len(neck_of(645, 12, 20, 0.2, 1).places_mm) == 21
    assert len(neck_of(645, 11, 10, 0.2, 1).places_mm) == 13


def test_the_line_of_the_string_is_the_one_that_was_measured() -> None:
    lie = lie_of(GUITAR, 2.4, 0.4, "bass")
    first = lie.nut_height_mm + lie.slope * GUITAR.places_mm[1]
    twelfth = lie.nut_height_mm + lie.slope * GUITAR.places_mm[12] - GUITAR.crowns_mm[12]
    assert first == pytest.approx(0.4)
    assert twelfth == pytest.approx(2.4)


# ---- errors and set-back


def test_an_ideal_string_is_in_tune_everywhere() -> None:
    ideal = E1._replace(modulus_gpa=1e-9)
    lie = law.Lie(0.0, 1e-7)
    errors = law.errors_cents(
        ideal, neck_of(645, 20, 14, 0, 1), lie, law.Touch(0, 1), 0, 0, range(1, 21)
    )
    assert max(map(abs, errors)) < 1e-3


@given(
    some.sampled_from([E1, E6]),
    some.floats(1.2, 3),
    some.floats(0, 8),
    some.sampled_from([0, 0.5, 1]),
)
@few
def test_set_back_makes_the_fret_true(
    wire: law.Wire, action: float, force: float, ends: float
) -> None:
    lie, touch = lie_of(GUITAR, action, 0.5, "bass"), law.Touch(force, ends)
    for fret in (5, 12, 19):
        found = law.set_back_for_fret_mm(wire, GUITAR, lie, touch, fret)
        assert abs(law.errors_cents(wire, GUITAR, lie, touch, found, 0, (fret,))[0]) < 1e-7


def squares(errors: Sequence[float]) -> float:
    return math.fsum(error**2 for error in errors)


@pytest.mark.parametrize("kind", list(law.ENDS))
@pytest.mark.parametrize(("back", "forward"), [(0.0, 0.0), (3.0, 0.0), (1.0, 0.9), (4.0, -0.5)])
@pytest.mark.parametrize("wire", [E1, E6])
def test_errors_agree_with_an_exact_string_over_all_crowns(
    wire: law.Wire, back: float, forward: float, kind: str
) -> None:
    lie, force, frets = lie_of(GUITAR, 2.2, 0.45, "bass"), 5.0, (1, 2, 3, 7, 12, 15, 20)
    ours = law.errors_cents(
        wire, GUITAR, lie, law.Touch(force, law.ENDS[kind]), back, forward, frets
    )
    stiff = wire.modulus_gpa * 1e3 * math.pi * wire.core_mm**4 / 64
    spring = wire.modulus_gpa * 1e3 * math.pi * wire.core_mm**2 / 4
    saddle = 645 + back

    def sounds(length: float, pull: float, mass: float) -> float:
        return exact_hz(length, pull, mass, math.sqrt(stiff / pull), kind)

    pull = brentq(
        lambda t: sounds(saddle - forward, t, wire.mass_g_m) - wire.frequency_hz,
        40,
        300,
        xtol=1e-10,
    )
    ends = [(x, lie.nut_height_mm + lie.slope * x) for x in (forward, saddle)]
    opened = math.dist(*ends)
    for fret, error in zip(frets, ours, strict=True):
        pressed = taut(fret, GUITAR, lie, forward, saddle, force, pull)
        tight = spring * (pressed / (opened / (1 + pull / spring)) - 1)
        hertz = sounds(saddle - GUITAR.places_mm[fret], tight, wire.mass_g_m * opened / pressed)
        wanted = 1200 * math.log2(hertz / wire.frequency_hz) - 100 * fret
        assert error == pytest.approx(wanted, abs=0.008)


@given(some.sampled_from([E1, E6]), some.floats(1.2, 3), some.floats(1, 8), some.booleans())
@few
def test_least_squares_are_least(
    wire: law.Wire, action: float, force: float, with_nut: bool
) -> None:
    lie, touch, frets = lie_of(GUITAR, action, 0.5, "bass"), law.Touch(force, 0.5), range(1, 21)
    saddle, nut = law.set_back_for_all_mm(wire, GUITAR, lie, touch, frets, with_nut)
    assert nut == 0 or with_nut
    best = squares(law.errors_cents(wire, GUITAR, lie, touch, saddle, nut, frets))
    moves = [(0.03, 0), (-0.03, 0), *([(0, 0.03), (0, -0.03), (0.03, 0.03)] if with_nut else [])]
    for by, nut_by in moves:
        other = law.errors_cents(wire, GUITAR, lie, touch, saddle + by, nut + nut_by, frets)
        assert squares(other) > best


def test_ends_cost_their_share_of_the_bending_length() -> None:
    lie = lie_of(GUITAR, 2.0, 0.4, "bass")
    for wire in (E1, E6):
        found = {
            kind: law.set_back_for_fret_mm(wire, GUITAR, lie, law.Touch(3, ends), 12)
            for kind, ends in law.ENDS.items()
        }
        bend = plain.bending_length_mm(
            wire.modulus_gpa, wire.core_mm, law.in_tune_pull_n(wire, 648, 0.5)
        )
        assert found["over"] - found["hinged"] == pytest.approx(bend, rel=0.02)
        assert found["clamped"] - found["hinged"] == pytest.approx(2 * bend, rel=0.02)


def test_stretch_alone_is_half_the_rise_of_the_pull() -> None:
    neck = neck_of(645, 20, 14, 0, 1.05)
    lie, touch = lie_of(neck, 2.0, 0.4, "bass"), law.Touch(0, 0)
    pull = law.in_tune_pull_n(E1, 645, 0)
    longer = 2 * 2.0**2 / 645  # two slopes of action over half a scale, to the first order
    rise = 200e3 * math.pi * 0.305**2 / 4 * longer / 645
    cents = 600 * math.log2(1 + rise / pull)
    found = law.errors_cents(E1, neck, lie, touch, 0, 0, (12,))[0]
    assert found == pytest.approx(cents, rel=0.06)


@given(some.floats(1.5, 2.5), some.floats(0.1, 1))
@few
def test_more_action_force_and_core_want_more_set_back(action: float, more: float) -> None:
    def need(action: float = action, force: float = 4.0, core: float = 0.43) -> float:
        lie = lie_of(GUITAR, action, 0.6, "bass")
        wire = E6._replace(core_mm=core)
        return law.set_back_for_fret_mm(wire, GUITAR, lie, law.Touch(force, 0.5), 12)

    base = need()
    assert need(action=action + more) > base
    assert need(force=4 + 4 * more) > base
    assert need(core=0.43 * (1 + more / 5)) > base


# ---- the calculator


def test_the_shop_slot_suits_the_shop_strings() -> None:
    found = answer()["results"]
    assert found["worst_left"]["value"] < 3
    assert abs(found["needed_treble"]["value"] - 2.5) < 1
    assert abs(found["needed_bass"]["value"] - 4.5) < 1
    uke = {
        "string_set": "ukulele", "scale_length": 380, "frets": 18, "relief": 0.05,
        "fret_height": 0.95, "action_bass": 2.2, "action_treble": 2.0, "first_fret_gap_bass": 0.4,
        "first_fret_gap_treble": 0.35, "setback_treble": 2, "setback_bass": 2, "crest_reach": 0.8,
        "octave_limit": 5, "shown": "worst",
    }  # fmt: skip
    assert value("worst_left", **uke) < 5
    low = [row["filed"] for row in rows("fret", **uke)][:3]
    assert all(-4 < error < 8 for error in low)


@pytest.mark.parametrize("aim", ["twelfth", "frets", "both"])
def test_the_table_holds_together(aim: str) -> None:
    chosen = {"aim": aim, "crest_reach": 0.7}
    found = answer(**chosen)["results"]
    table = rows("crest", **chosen)
    for place, row in enumerate(table):
        slot = 2.5 + 2.0 * place / 5
        assert row["slot_here"] == pytest.approx(slot)
        assert row["crest"] == pytest.approx(row["set_back"] - slot)
        assert row["share"] == pytest.approx(place / 5)
        nut = row.get("nut_move", 0.0)
        touch, neck = law.Touch(4, 0.5), GUITAR
        lie = lie_of(neck, 1.8 + 0.6 * place / 5, 0.25 + 0.15 * place / 5, "bass")
        assert row["nut_height"] == pytest.approx(lie.nut_height_mm)
        wire = _wire(place)
        filed = slot + max(-0.7, min(0.7, row["crest"]))
        for name, at, moved in (("plain", 0, 0), ("on_slot", slot, nut), ("filed", filed, nut)):
            error = law.errors_cents(wire, neck, lie, touch, at, moved, (12,))[0]
            assert row[name] == pytest.approx(error, abs=1e-9)
        assert row["pull"] == pytest.approx(law.in_tune_pull_n(wire, 645 + filed - nut, 0.5))
    past = [row["string"] for row in table if abs(row["crest"]) > 0.7]
    assert ", ".join(past) in found["verdict"]["value"]
    worst = max(table, key=lambda row: abs(row["filed"]))
    assert found["worst_left"]["value"] == pytest.approx(abs(worst["filed"]))
    assert found["worst_slot"]["value"] == pytest.approx(max(abs(r["on_slot"]) for r in table))
    assert found["worst_plain"]["value"] == pytest.approx(max(abs(r["plain"]) for r in table))
    assert found["needed_treble"]["value"] == table[0]["set_back"]
    assert found["needed_bass"]["value"] == table[-1]["set_back"]
    spread = {"string_spread_bridge": 50, "setback_treble": 1, "setback_bass": 6}
    turned = answer(**chosen, **spread)["results"]
    assert turned["slot_slant"]["value"] == pytest.approx(math.degrees(math.atan(0.1)))
    fall = turned["line_bass"]["value"] - turned["line_treble"]["value"]
    assert turned["best_slant"]["value"] == pytest.approx(math.degrees(math.atan2(fall, 50)))
    assert ("nut_forward" in found) == (aim == "both")
    if aim == "both":
        assert found["nut_forward"]["value"] == max(row["nut_move"] for row in table)
    wide = answer(**{**chosen, "crest_reach": 5})
    notes = [
        law.errors_cents(
            _wire(place), GUITAR,
            lie_of(GUITAR, 1.8 + 0.6 * place / 5, 0.25 + 0.15 * place / 5, "bass"),
            law.Touch(4, 0.5), row["set_back"], row.get("nut_move", 0.0), range(1, 21),
        )
        for place, row in enumerate(table)
    ]  # fmt: skip
    assert wide["results"]["worst_fret"]["value"] == pytest.approx(
        max(abs(one) for note in notes for one in note)
    )


def _wire(place: int) -> law.Wire:
    from calculators.strings._string_sets import read_strings

    row = read_strings("light", None, 440, 7850, 8860, 1100, 200, 3)[place]
    return law.Wire(row["frequency"], row["mass"], row["core"], row["modulus"])


def test_the_shown_string_fret_by_fret() -> None:
    table = rows("fret", setback_bass=4, frets=15, crest_reach=0.2)
    lie, touch = lie_of(GUITAR, 2.4, 0.4, "bass"), law.Touch(4, 0.5)
    crest = rows("crest", setback_bass=4, frets=15, crest_reach=0.2)[-1]
    assert crest["crest"] > 0.2
    for name, at in (("plain", 0), ("on_slot", 4), ("filed", 4.2)):
        errors = law.errors_cents(_wire(5), GUITAR, lie, touch, at, 0, range(1, 16))
        assert [row[name] for row in table] == pytest.approx(errors, abs=1e-9)
    for row in table:
        fret = row["fret"]
        assert row["from_nut"] == pytest.approx(GUITAR.places_mm[fret])
        assert row["pitch"] == pytest.approx(82.4068892282175 * 2 ** (fret / 12))
        pull = law.in_tune_pull_n(_wire(5), 649.2, 0.5)
        opened = 649.2 * math.hypot(1, lie.slope)
        pressed = law.pressed_length_mm(fret, GUITAR, lie, 0, 649.2, 4, pull)
        rise = law.stretched_pull_n(_wire(5), pull, opened, pressed) - pull
        assert row["rise"] == pytest.approx(rise)


def test_which_string_is_shown() -> None:
    table = rows("crest", setback_treble=9)
    errors = {row["string"]: row["filed"] for row in table}
    worst = max(table, key=lambda row: abs(row["crest"]))["string"]
    assert worst not in ("1 E", "6 E") or len(errors) == 6
    for shown, name in (("first", "1 E"), ("last", "6 E"), ("worst", worst)):
        one = rows("fret", setback_treble=9, shown=shown)
        assert one[11]["filed"] == pytest.approx(errors[name])
        open_hz = one[11]["pitch"] / 2
        assert open_hz == pytest.approx(
            {"1": 329.6276, "6": 82.4069}.get(name[0], open_hz), rel=1e-6
        )


def test_rows_shorter_than_a_line_still_have_one() -> None:
    single = {
        "string_set": "own",
        "strings": [["1 E", "E4", 0.305, "plain", 0, 0]],
    }
    found = answer(**single)["results"]
    assert found["line_treble"]["value"] == found["line_bass"]["value"]


@given(some.lists(some.tuples(some.floats(0, 1), some.floats(-5, 9)), min_size=3, max_size=8))
@few
def test_the_straight_slot_is_the_line_of_least_squares(points: list[tuple[float, float]]) -> None:
    shares, heights = zip(*points, strict=True)
    assume(max(shares) - min(shares) > 0.05)
    slope, start = np.polyfit(shares, heights, 1)
    low, high = straight_line(shares, heights)
    assert low == pytest.approx(start, abs=1e-7)
    assert high == pytest.approx(start + slope, abs=1e-7)


@pytest.mark.parametrize("heard", [-9, -3, 2, 8])
def test_the_rule_of_the_crest_mends_what_was_heard(heard: float) -> None:
    move = value("crest_move", octave_off=heard)
    ideal = (645 / 2 + move) / (645 + move)
    assert 1200 * math.log2(2 * ideal) == pytest.approx(heard, rel=0.02)
    words = value("move_words", octave_off=heard)
    assert words.startswith("Sharp by" if heard > 0 else "Flat")
    assert value("move_words", octave_off=0) == "True: leave it."


def test_verdicts() -> None:
    assert value("verdict").startswith("Near enough. Out of reach: 3 G, 4 D.")
    assert value("verdict", crest_reach=3) == (
        "Every crest is within reach, and with them filed every octave is true."
    )
    far = value("verdict", setback_bass=9)
    assert far.startswith("Not with this slot:") and "2.0 mm behind the scale" in far
    left = value("worst_left", crest_reach=0)
    whole = math.ceil(left)
    assert value("verdict", crest_reach=0, octave_limit=whole).startswith("Near enough")
    assert value("verdict", crest_reach=0, octave_limit=whole - 1).startswith("Not with")
    assert value("verdict", aim="frets").startswith("Out of reach")
    assert value("verdict", aim="frets", crest_reach=3).startswith(
        "Every crest is within reach. With"
    )
    assert "farther from the middle" in " ".join(answer()["cautions"])
    assert "farther from the middle" not in " ".join(answer(crest_reach=3)["cautions"])


REFUSALS: list[tuple[dict[str, Any], str, str]] = [
    ({"first_fret_gap_bass": 0.2}, "first_fret_gap_bass", "below the frets at the nut"),
    ({"first_fret_gap_treble": 0.15}, "first_fret_gap_treble", "below the frets at the nut"),
    ({"first_fret_gap_bass": 1.9, "action_bass": 0.9}, "action_bass", "higher over the first"),
    ({"string_set": "own", "strings": [["1", "E4", 0.74, "plain", 0, 0]]},
     "scale_length", "no plucked string"),
    ({"string_set": "own", "strings": [["low", "E2", 2.2, "plain", 0, 0]],
      "scale_length": 300}, "strings[1].gauge", "like a bar"),
    ({"action_bass": 8, "action_treble": 8, "first_fret_gap_bass": 1.5,
      "first_fret_gap_treble": 1.5, "finger_force": 30, "ends": "clamped",
      "string_set": "medium", "scale_length": 520}, "action_treble", "than any saddle goes"),
    ({"string_set": "own", "strings": [["1", "X2", 1, "plain", 0, 0]]},
     "strings[1].note", "no note"),
]  # fmt: skip


@pytest.mark.parametrize(("chosen", "blamed", "why"), REFUSALS)
def test_what_cannot_be_is_refused(chosen: dict[str, Any], blamed: str, why: str) -> None:
    found = refused(**chosen)
    assert found["input"] == blamed and why in found["why"] and found["allowed"]


@pytest.mark.parametrize(("side", "gap", "action"), [("bass", 0.2, 2.4), ("treble", 0.11, 1.8)])
def test_a_refusal_says_which_gap_would_do(side: str, gap: float, action: float) -> None:
    name = f"first_fret_gap_{side}"
    found = refused(**{name: gap})
    assert f"action of {action:.2f} mm at the 12th, a gap of {gap:.2f} mm" in found["why"]
    least = float(found["allowed"].split()[5])
    answer(**{name: least})
    assert refused(**{name: least - 0.011})["input"] == name


# ---- pictures


@pytest.mark.parametrize("units", ["metric", "inch64"])
@pytest.mark.parametrize("aim", ["twelfth", "both"])
def test_pictures_show_every_crest_inside_the_paper(units: str, aim: str) -> None:
    chosen = {"aim": aim, "setback_treble": -3, "setback_bass": 12, "crest_reach": 2}
    request = {"calculator": "saddle-compensation", "units": units, "inputs": chosen}
    drawings = json.loads(door.live(json.dumps(request)))["parts"]["drawings"]
    figures = ET.fromstring(f"<all>{drawings}</all>")
    pictures = figures.findall("figure/{http://www.w3.org/2000/svg}svg")
    assert len(pictures) == 2
    height = float(pictures[0].get("viewBox", "").split()[3])
    table = rows("crest", **chosen)
    dots = [one for one in pictures[0].iter() if one.tag.endswith("circle")][: len(table)]
    heights = [float(dot.get("cy", "0")) for dot in dots]
    assert all(0 < y < height for y in heights)
    # Depth to one scale: the dots lie as far apart as the crests.
    scale = (heights[-1] - heights[0]) / (table[-1]["set_back"] - table[0]["set_back"])
    for y, row in zip(heights, table, strict=True):
        assert y - heights[0] == pytest.approx(
            scale * (row["set_back"] - table[0]["set_back"]), abs=0.1
        )
