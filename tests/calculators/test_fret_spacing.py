"""Laws of fret spacing that no table shows."""

import itertools
import math

import pytest
from hypothesis import given
from hypothesis import strategies as some

from calculators.engine import door
from calculators.engine.compute import work_out
from calculators.engine.registry import load

scales = some.floats(150, 1200)
divisions = some.integers(5, 72)


def slots(**given: object) -> list[dict[str, float]]:
    table = door.answer("fret-spacing", given)["tables"]
    one = table.get("slots") or table["fan"]
    return [dict(zip(one["columns"], row, strict=True)) for row in one["rows"]]


@given(scales, divisions)
def test_the_octave_halves_the_string(scale: float, division: int) -> None:
    if division <= 36:
        rows = slots(scale_length=scale, divisions=division, frets=division)
        assert rows[-1]["from_nut"] == pytest.approx(scale / 2, rel=1e-12)


@given(scales, divisions, some.integers(2, 36))
def test_each_space_is_shorter_by_one_ratio_and_they_add_up(
    scale: float, d: int, frets: int
) -> None:
    rows = slots(scale_length=scale, divisions=d, frets=frets)
    for before, after in itertools.pairwise(rows):
        assert before["from_previous"] / after["from_previous"] == pytest.approx(2 ** (1 / d))
    assert math.fsum(row["from_previous"] for row in rows) == pytest.approx(rows[-1]["from_nut"])
    for row in rows:
        assert row["from_nut"] + row["to_saddle"] == pytest.approx(scale)


@given(scales, some.sampled_from(["0.01 mm", "0.1 mm", "1 mm", "1/64 in", "0.001 in"]))
def test_marks_are_on_the_rule_and_near(scale: float, rule: str) -> None:
    step = {"0.01 mm": 0.01, "0.1 mm": 0.1, "1 mm": 1, "1/64 in": 25.4 / 64, "0.001 in": 0.0254}[
        rule
    ]
    for row in slots(scale_length=scale, rule=rule):
        assert abs(row["mark"] - row["from_nut"]) <= step / 2 + 1e-6
        assert row["mark"] / step == pytest.approx(round(row["mark"] / step), abs=1e-6)


def test_a_mark_too_near_the_nut_sounds_flat() -> None:
    for row in slots(scale_length=647.7, rule="1 mm"):
        off = row["mark"] - row["from_nut"]
        assert off * row["mark_cents"] >= 0


def test_stepping_ends_farther_off_than_marking_from_the_nut() -> None:
    found = door.answer("fret-spacing", {"rule": "1/64 in"})["results"]
    assert abs(found["worst_step"]["value"]) > 2 * abs(found["worst_mark"]["value"])


def test_a_fan_of_equal_scales_is_no_fan() -> None:
    rows = slots(layout="fanned", bass_scale_length=650, treble_scale_length=650)
    assert all(row["slant"] == 0 for row in rows)


@given(some.floats(620, 635), some.floats(610, 619), some.integers(0, 20))
def test_the_square_fret_is_square_and_the_slants_turn_there(
    bass: float, treble: float, p: int
) -> None:
    rows = slots(layout="fanned", bass_scale_length=bass, treble_scale_length=treble, square_fret=p)
    assert rows[p]["slant"] == pytest.approx(0, abs=1e-9)
    assert all(row["slant"] > 0 for row in rows[:p])
    assert all(row["slant"] < 0 for row in rows[p + 1 :])


@given(some.floats(620, 635), some.floats(610, 619))
def test_swapping_the_scales_mirrors_the_fan(bass: float, treble: float) -> None:
    one = slots(layout="fanned", bass_scale_length=bass, treble_scale_length=treble)
    two = slots(layout="fanned", bass_scale_length=treble, treble_scale_length=bass)
    for a, b in zip(one, two, strict=True):
        assert a["slant"] == pytest.approx(-b["slant"], abs=1e-9)


def test_fan_positions_lie_on_strings_of_the_right_length() -> None:
    """The two ends of nut and saddle are as far apart as the scale says, by Pythagoras."""
    found = door.answer("fret-spacing", {"layout": "fanned"})
    values = {step["name"]: step["value"] for step in found["steps"] if "value" in step}
    flare = values["flare"]
    assert math.hypot(values["bass_run"], flare) == pytest.approx(660)
    assert math.hypot(values["treble_run"], flare) == pytest.approx(635)


def test_the_first_slot_is_the_tables_and_the_divisors() -> None:
    worked = work_out(load("fret-spacing"), {"scale_length": 612.4, "frets": 15})
    assert not isinstance(worked, list)
    first = worked.values["first_slot"]
    assert first == pytest.approx(worked.tables["slots"][0]["from_nut"])
    assert first == pytest.approx(612.4 / worked.values["divisor"])


def test_pitch_off_on_a_fan_is_that_of_the_string_left() -> None:
    """1200 log2 of the true string over the string to the mark, for each of the two strings."""
    worked = work_out(load("fret-spacing"), {"layout": "fanned", "rule": "1 mm"})
    assert not isinstance(worked, list)
    for row in worked.tables["fan"]:
        for side in ("bass", "treble"):
            scale = worked.values[f"{side}_scale_length"]
            true, marked = scale - row[f"{side}_from_nut"], scale - row[f"{side}_mark"]
            assert row[f"{side}_cents"] == pytest.approx(1200 * math.log2(true / marked), abs=1e-9)
