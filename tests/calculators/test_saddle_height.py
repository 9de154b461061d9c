"""Saddle height: levers, limiting cases, gaps against brute force, words, drawings."""

import itertools
import json
import math
import re
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import brentq

from calculators.engine import door, soundness
from calculators.engine.compute import Answer, work_out
from calculators.engine.registry import load
from calculators.laws.string_over_frets import (
    Line,
    Neck,
    fall_across_mm,
    fret_place_mm,
    fret_top_mm,
    neck_rise_mm,
    open_gaps_mm,
    pressed_gaps_mm,
    string_line,
)

CALCULATOR = load("saddle-height")
SET = {"rod_and_nut": "set"}

readings = st.fixed_dictionaries(
    {
        "scale_length": st.floats(350, 900),
        "body_joint_fret": st.integers(11, 18),
        "action_bass_now": st.floats(2.3, 3.2),
        "action_treble_now": st.floats(2.0, 2.6),
        "action_bass": st.floats(2.0, 2.6),
        "action_treble": st.floats(1.7, 2.2),
        "first_fret_gap_bass": st.floats(0.3, 0.6),
        "first_fret_gap_treble": st.floats(0.25, 0.4),
        "relief": st.floats(0, 0.3),
        "setback_bass": st.floats(0, 6),
        "setback_treble": st.floats(0, 4),
        "fret_radius": st.sampled_from([0.0, 250.0, 400.0]),
    }
)


def worked(**inputs: Any) -> dict[str, Any]:
    answer = work_out(CALCULATOR, inputs)
    assert isinstance(answer, Answer), answer
    return answer.values


def refused(**inputs: Any) -> tuple[str, str]:
    answer = work_out(CALCULATOR, inputs)
    assert isinstance(answer, list)
    return answer[0].input, answer[0].why


def test_declaration_hangs_together() -> None:
    assert soundness.find_faults(CALCULATOR) == []


def test_without_setback_twice_the_difference_is_exact() -> None:
    values = worked(setback_bass=0, setback_treble=0)
    for side in ("bass", "treble"):
        assert values[f"saddle_cut_{side}"] == pytest.approx(values[f"twice_{side}"], abs=1e-12)
        assert values[f"lever_{side}"] == 0.5
    assert values["rule_error"] == pytest.approx(0, abs=1e-12)


def test_by_hand() -> None:
    # 0.3 mm too high at the 12th; string 649.5 mm, 12th at 322.5 mm: 0.3 · 649.5/322.5.
    values = worked()
    assert values["saddle_cut_bass"] == pytest.approx(0.3 * 649.5 / 322.5)
    assert values["saddle_cut_treble"] == pytest.approx(0.2 * 647.5 / 322.5)
    assert values["rule_error"] == pytest.approx((0.3 * 649.5 / 322.5 - 0.6) * 322.5 / 649.5)
    assert values["saddle_after"] == pytest.approx(3.9 - (0.6041860 + 0.4015504) / 2, abs=1e-6)
    first = 645 * (1 - 2 ** (-1 / 12))
    assert values["first_fret_gap_bass_after"] == pytest.approx(0.45 - 0.60418605 * first / 649.5)


@given(readings)
@settings(max_examples=40)
def test_the_cut_saddle_gives_the_action_asked_for(inputs: dict[str, float]) -> None:
    """Cut the saddle of the string as read, nut left alone, and read the 12th again."""
    values = worked(**inputs, saddle_now=8)
    for side, share in (("bass", -1), ("treble", 1)):
        neck = Neck(inputs["scale_length"], int(inputs["body_joint_fret"]), inputs["relief"],
                    inputs["fret_radius"], 36.5, 54)  # fmt: skip
        length = inputs["scale_length"] + inputs[f"setback_{side}"]
        line = string_line(
            neck, inputs[f"first_fret_gap_{side}"], inputs[f"action_{side}_now"], length, share
        )
        lower = line._replace(at_saddle_mm=line.at_saddle_mm - values[f"saddle_cut_{side}"])
        gaps = open_gaps_mm(neck, lower, 20, share)
        assert gaps[11] == pytest.approx(inputs[f"action_{side}"], abs=1e-9)
        assert gaps[0] == pytest.approx(values[f"first_fret_gap_{side}_after"], abs=1e-9)
        column = [row[f"open_{side}"] for row in values["gap_rows"]]
        assert column == pytest.approx(gaps, abs=1e-9)


@given(readings, st.floats(0.05, 0.5), st.floats(0.2, 0.4))
@settings(max_examples=40)
def test_rod_nut_and_saddle_together_reach_all_three(
    inputs: dict[str, float], relief_now: float, gap: float
) -> None:
    """Bend the neck about the joint, lower nut slot and saddle, read both gaps again."""
    wanted = {"first_fret_gap_bass_wanted": gap, "first_fret_gap_treble_wanted": gap}
    values = worked(**SET, **inputs, **wanted, relief_now=relief_now, saddle_now=10)
    for side, share in (("bass", -1), ("treble", 1)):
        before = Neck(inputs["scale_length"], int(inputs["body_joint_fret"]), relief_now,
                      inputs["fret_radius"], 36.5, 54)  # fmt: skip
        after = before._replace(relief_mm=inputs["relief"])
        length = inputs["scale_length"] + inputs[f"setback_{side}"]
        line = string_line(
            before, inputs[f"first_fret_gap_{side}"], inputs[f"action_{side}_now"], length, share
        )
        nut_moves = neck_rise_mm(after, 0) - neck_rise_mm(before, 0)
        turned = Line(line.at_nut_mm + nut_moves, line.at_saddle_mm, length)
        moved = open_gaps_mm(after, turned, 12, share)
        assert moved[11] - inputs[f"action_{side}_now"] == pytest.approx(
            values[f"relief_lift_{side}"], abs=1e-9
        )
        assert moved[0] - inputs[f"first_fret_gap_{side}"] == pytest.approx(
            values[f"relief_lift_first_{side}"], abs=1e-9
        )
        cut = Line(
            turned.at_nut_mm - values[f"nut_cut_{side}"],
            turned.at_saddle_mm - values[f"saddle_cut_{side}"], length,
        )  # fmt: skip
        gaps = open_gaps_mm(after, cut, 12, share)
        assert gaps[11] == pytest.approx(inputs[f"action_{side}"], abs=1e-9)
        assert gaps[0] == pytest.approx(gap, abs=1e-9)


def test_setting_nothing_else_is_the_same_as_leaving_it() -> None:
    plain = worked()
    same = worked(
        **SET, relief_now=0.2, first_fret_gap_bass_wanted=plain["first_fret_gap_bass_after"],
        first_fret_gap_treble_wanted=plain["first_fret_gap_treble_after"],
    )  # fmt: skip
    for name in ("saddle_cut_bass", "saddle_cut_treble", "saddle_after", "least_bass"):
        assert same[name] == pytest.approx(plain[name], abs=1e-12)
    assert same["nut_cut_bass"] == pytest.approx(0, abs=1e-12)
    assert same["nut_cut_treble"] == pytest.approx(0, abs=1e-12)


@given(st.floats(0.01, 0.8), st.integers(11, 18), st.floats(350, 900))
@settings(max_examples=40)
def test_the_bow_dips_by_the_relief_under_a_straightedge(
    relief: float, joint: int, scale: float
) -> None:
    neck = Neck(scale, joint, relief, 0, 30, 50)
    first, end = fret_place_mm(scale, 1), fret_place_mm(scale, joint)
    middle = (first + end) / 2
    straightedge = (neck_rise_mm(neck, first) + neck_rise_mm(neck, end)) / 2
    assert straightedge - neck_rise_mm(neck, middle) == pytest.approx(relief)
    assert neck_rise_mm(neck, end) == pytest.approx(0, abs=1e-9)
    assert neck_rise_mm(neck, end + 1) == 0
    # It touches the line of the tongue: no kink at the joint.
    assert neck_rise_mm(neck, end - 0.01) < 1e-6


def test_rounding_falls_away_towards_both_sides_alike() -> None:
    neck = Neck(645, 14, 0.2, 400, 36.5, 54)
    assert fall_across_mm(neck, 100, 0) == 0
    assert fall_across_mm(neck, 100, 1) == fall_across_mm(neck, 100, -1)
    # At the saddle line 27 mm to the side, at the nut 18.25 mm.
    assert fall_across_mm(neck, 645, 1) == pytest.approx(400 - math.sqrt(400**2 - 27**2))
    assert fall_across_mm(neck, 0, 1) == pytest.approx(400 - math.sqrt(400**2 - 18.25**2))
    assert fall_across_mm(neck._replace(fret_radius_mm=0), 300, 1) == 0
    assert fret_top_mm(neck, 0, 1) == neck_rise_mm(neck, 0) - fall_across_mm(neck, 0, 1)


def test_pressed_gaps_against_a_line_drawn_fret_by_fret() -> None:
    neck = Neck(645, 14, 0.3, 400, 36.5, 54)
    line = string_line(neck, 0.4, 2.2, 649, -1)
    found = pressed_gaps_mm(neck, line, 20, -1)
    assert len(found) == 19
    for pressed in range(1, 20):
        x, top = fret_place_mm(645, pressed), fret_top_mm(neck, fret_place_mm(645, pressed), -1)
        least = brentq(
            # How far the string pressed here must rise at the saddle end to touch nothing beyond.
            lambda lift, x=x, top=top, pressed=pressed: min(
                top + (line.at_saddle_mm - top) * (fret_place_mm(645, n) - x) / (649 - x)
                - fret_top_mm(neck, fret_place_mm(645, n), -1) - lift
                for n in range(pressed + 1, 21)
            ), -5, 5,
        )  # fmt: skip
        assert found[pressed - 1] == pytest.approx(least, abs=1e-9)


def test_more_relief_gives_the_pressed_string_more_air_low_and_less_higher_up() -> None:
    flat, bowed = worked(relief=0), worked(relief=0.4)
    assert bowed["gap_rows"][0]["pressed_bass"] > flat["gap_rows"][0]["pressed_bass"]
    assert bowed["gap_rows"][14]["pressed_bass"] < flat["gap_rows"][14]["pressed_bass"]
    # Open gaps at the first fret and the 12th are what was read, whatever the relief.
    for row in (0, 11):
        assert bowed["gap_rows"][row]["open_bass"] == pytest.approx(
            flat["gap_rows"][row]["open_bass"]
        )
    assert bowed["gap_rows"][5]["open_bass"] > flat["gap_rows"][5]["open_bass"]


@given(readings, st.integers(3, 12))
@settings(max_examples=30)
def test_strings_between_lie_on_an_even_step(inputs: dict[str, float], strings: int) -> None:
    values = worked(**inputs, strings=strings, saddle_now=8)
    rows = values["saddle_rows"]
    assert [rows[0]["string"], rows[-1]["string"]] == ["bass", "treble"]
    assert len(rows) == strings
    for name in ("off", "action_after", "from_middle"):
        steps = [b[name] - a[name] for a, b in itertools.pairwise(rows)]
        assert max(steps) - min(steps) < 1e-9
    assert rows[0]["off"] == values["saddle_cut_bass"]
    assert rows[-1]["off"] == pytest.approx(values["saddle_cut_treble"], abs=1e-12)
    assert rows[0]["action_after"] == inputs["action_bass"]
    assert rows[0]["from_middle"] == -27
    if strings % 2:
        assert rows[strings // 2]["showing"] == pytest.approx(values["saddle_after"], abs=1e-9)


def test_crest_of_the_strings_is_the_circle_that_is_named() -> None:
    """All gaps alike: the rows' crest lies on the radius within what strings' lengths change."""
    values = worked(
        action_bass_now=2.4, action_treble_now=2.4, action_bass=2.2, action_treble=2.2,
        first_fret_gap_bass=0.3, first_fret_gap_treble=0.3, setback_bass=3, setback_treble=3, strings=7,
    )  # fmt: skip
    rows, radius = values["saddle_rows"], values["crest_radius"]
    for row in rows:
        fall = radius - math.sqrt(radius**2 - row["from_middle"] ** 2)
        assert rows[3]["showing"] - row["showing"] == pytest.approx(fall, abs=2e-3)
    assert rows[3]["showing"] - rows[0]["showing"] == pytest.approx(values["crest_rise"])
    assert values["showing_bass"] == rows[0]["showing"]
    assert values["showing_treble"] == rows[-1]["showing"]


def test_a_flat_board_has_a_straight_crest_and_parallel_strings_the_board_radius() -> None:
    flat = worked(fret_radius=0)
    assert "crest_radius" not in flat
    even = worked(string_spread_nut=50, string_spread_bridge=50)
    assert even["crest_radius"] == pytest.approx(400, abs=0.01)


def test_words_say_what_to_do() -> None:
    assert worked()["verdict"].startswith("Take 0.60 mm off")
    assert worked(action_bass=2.7, action_treble=2.0)["verdict"].startswith("Leave it")
    assert worked(action_bass=2.8)["verdict"].startswith("Too low: it has to rise by 0.20 mm")
    assert worked(saddle_now=2.9)["verdict"].startswith("Stop and ask: only 2.40 mm")
    assert "more than 4.5 mm" in worked(saddle_now=5.2)["verdict"]
    assert "becomes 0.42 mm bass" in worked()["nut_words"]
    assert worked(**SET)["nut_words"].startswith("File 0.05 mm off the bass slot")
    assert "too deep already" in worked(**SET, first_fret_gap_bass=0.3)["nut_words"]
    assert "near enough" in worked()["rule_words"]
    assert "knows nothing of rod" in worked(**SET)["rule_words"]


def test_impossible_readings_are_refused() -> None:
    assert refused(first_fret_gap_bass=1.9, action_bass_now=1.5)[0] == "first_fret_gap_bass"
    assert refused(first_fret_gap_treble=1.9, action_treble_now=1.5)[0] == "first_fret_gap_treble"
    assert (
        refused(**SET, first_fret_gap_bass_wanted=1.9, action_bass=1.5)[0]
        == "first_fret_gap_bass_wanted"
    )
    assert refused(frets=13)[0] == "frets"
    assert refused(fret_radius=60)[0] == "fret_radius"
    assert refused(saddle_least=5)[0] == "saddle_least"
    assert refused(saddle_now=0.45)[0] == "saddle_now"
    assert refused(string_spread_nut=100, string_spread_bridge=40)[0] == "string_spread_bridge"
    low = {"action_bass": 0.5, "action_treble": 0.5, "first_fret_gap_bass": 0.4, "saddle_now": 9}
    blamed, why = refused(**low, relief=1.5, body_joint_fret=20, frets=22)
    assert blamed == "relief"
    assert "lie on a fret" in why


def test_cautions_warn_of_touching_frets_and_of_the_rod() -> None:
    def cautions(**inputs: Any) -> str:
        return " ".join(door.answer("saddle-height", inputs)["cautions"])

    assert "it buzzes" not in cautions()
    assert "it buzzes" in cautions(action_treble=0.8, action_bass=0.9, saddle_now=8, relief=0.5)
    assert "bent evenly" in cautions(**SET)
    assert "bent evenly" not in cautions(**SET, relief_now=0.2)
    assert "great deal of relief" in cautions(relief=0.6)
    assert "great deal of relief" not in cautions(relief=0.5)


@pytest.mark.parametrize("units", ["metric", "inch", "inch64"])
@pytest.mark.parametrize("choice", ["stay", "set"])
def test_drawings_show_both_strings_and_their_cuts(units: str, choice: str) -> None:
    request = {"calculator": "saddle-height", "inputs": {"rod_and_nut": choice}, "units": units}
    drawings = json.loads(door.live(json.dumps(request)))["parts"]["drawings"]
    assert drawings.count("<svg") == 2
    assert ">Bass<" in drawings
    assert ">Treble<" in drawings
    assert len(re.findall(r">off [\d.]+ (mm|in)<", drawings)) == 2
    assert drawings.count('class="bad"') == 2
    raised = {"inputs": {"action_bass": 3.0}, "calculator": "saddle-height"}
    again = json.loads(door.live(json.dumps(raised)))["parts"]["drawings"]
    assert ">raise 0.60 mm<" in again
    assert again.count('class="bad"') == 1


def test_drawn_strings_keep_their_heights_in_proportion() -> None:
    request = {"calculator": "saddle-height", "inputs": {"relief": 0}}
    drawings = json.loads(door.live(json.dumps(request)))["parts"]["drawings"]
    lines = re.findall(
        r'<line class="(hidden|ink)" x1="44" y1="([\d.]+)" x2="560" y2="([\d.]+)"', drawings
    )
    assert [style for style, _, _ in lines] == ["hidden", "ink", "hidden", "ink"]
    values = worked(relief=0)
    drop = [float(lines[n + 1][2]) - float(lines[n][2]) for n in (0, 2)]
    assert drop[0] / drop[1] == pytest.approx(
        values["saddle_cut_bass"] / values["saddle_cut_treble"], rel=5e-3
    )
