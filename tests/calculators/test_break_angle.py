"""Break angle: geometry against vectors, forces, what hangs in the nut, words, drawing."""

import itertools
import json
import math
import re
from typing import Any

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from calculators.engine import door, soundness
from calculators.engine.compute import Answer, work_out
from calculators.engine.registry import load
from calculators.laws.string_bends import (
    Way,
    capstan_ratio,
    down_angle_deg,
    flat_after_bend_cents,
    press_n,
    way_to_post,
    way_to_roller,
    whole_angle_deg,
)

CALCULATOR = load("break-angle")


def worked(**inputs: Any) -> dict[str, Any]:
    answer = work_out(CALCULATOR, inputs)
    assert isinstance(answer, Answer), answer
    return answer.values


def refused(**inputs: Any) -> tuple[str, str]:
    answer = work_out(CALCULATOR, inputs)
    assert isinstance(answer, list)
    return answer[0].input, answer[0].why


def one(pull: float = 100, gauge: float = 0.5, along: float = 80, aside: float = 0) -> Any:
    return {"strings": [["s", pull, gauge, along, aside]]}


def test_declaration_hangs_together() -> None:
    assert soundness.find_faults(CALCULATOR) == []


@given(st.floats(20, 200), st.floats(-30, 30), st.floats(1, 7), st.floats(-10, 10))
@settings(max_examples=60)
def test_the_string_touches_its_post(along: float, aside: float, reach: float, fall: float) -> None:
    way = way_to_post(along, aside, reach, fall)
    to_middle = np.array([along - way.forward_mm, aside - way.aside_mm])
    string = np.array([way.forward_mm, way.aside_mm])
    assert math.hypot(*to_middle) == pytest.approx(reach)
    assert abs(float(to_middle @ string)) < 1e-6  # touches: square to the radius
    assert string[0] * to_middle[1] - string[1] * to_middle[0] > 0  # the post lies outwards of it
    assert way.fall_mm == fall
    assert way.length_mm == pytest.approx(math.hypot(*string, fall))


@given(st.floats(20, 200), st.floats(2, 25), st.floats(1, 7))
@settings(max_examples=60)
def test_the_string_goes_over_the_top_of_its_roller(
    along: float, depth: float, reach: float
) -> None:
    way = way_to_roller(along, 4.0, reach, depth)
    to_middle = np.array([along - way.forward_mm, depth - way.fall_mm])
    string = np.array([way.forward_mm, way.fall_mm])
    assert math.hypot(*to_middle) == pytest.approx(reach)
    assert abs(float(to_middle @ string)) < 1e-6
    assert way.fall_mm < depth  # over its middle
    assert way.aside_mm == 4.0


@given(st.floats(0, 30), st.floats(20, 200), st.floats(-30, 30), st.floats(-5, 10))
@settings(max_examples=60)
def test_angles_and_forces_against_vectors(
    head: float, forward: float, aside: float, fall: float
) -> None:
    way = Way(forward, aside, fall)
    turned = math.radians(head)
    behind = (
        forward * np.array([math.cos(turned), 0, -math.sin(turned)])
        + aside * np.array([0, 1, 0])
        - fall * np.array([math.sin(turned), 0, math.cos(turned)])
    )
    unit = behind / np.linalg.norm(behind)
    assume(unit[2] < -1e-3)
    assert down_angle_deg(way, head) == pytest.approx(
        math.degrees(math.atan2(-unit[2], unit[0])), abs=1e-9
    )
    whole = whole_angle_deg(way, head)
    assert whole == pytest.approx(math.degrees(math.acos(unit[0])), abs=1e-6)
    on_nut = 90 * (unit - np.array([1, 0, 0]))
    assert press_n(90, whole) == pytest.approx(float(np.linalg.norm(on_nut)), rel=1e-6)
    assert whole >= down_angle_deg(way, head) - 1e-9


def test_worked_steps_and_rows_agree_for_the_weakest_string() -> None:
    for head in ("solid", "slotted"):
        values = worked(head=head)
        row = next(r for r in values["string_rows"] if r["string"] == values["weak_string"])
        for name in ("nut_down", "nut_whole", "nut_press", "forward", "fall"):
            assert values[name] == pytest.approx(row[name], rel=1e-12), name
        assert values["flat_tuned_down"] == pytest.approx(row["flat"], rel=1e-12)
        assert values["nut_down"] == min(r["nut_down"] for r in values["string_rows"])
        assert values["steep_down"] == max(r["nut_down"] for r in values["string_rows"])
        assert values["worst_flat"] == max(r["flat"] for r in values["string_rows"])
        flat = next(r for r in values["string_rows"] if r["string"] == values["flat_string"])
        assert values["saddle_angle"] == pytest.approx(flat["saddle_angle"], rel=1e-12)
        assert values["saddle_press"] == pytest.approx(flat["saddle_press"], rel=1e-12)
        assert values["saddle_angle"] == pytest.approx(
            min(r["saddle_angle"] for r in values["string_rows"])
        )


def test_by_hand() -> None:
    # Post straight in line, 100 mm away, string leaving at its own height over the face:
    # down by the head's angle alone.
    values = worked(**one(along=100), head_angle=12, string_over_face=6, hole_height=7.25,
                    windings=2.5)  # fmt: skip
    assert values["leave_height"] == pytest.approx(6)
    assert values["nut_down"] == pytest.approx(12)
    assert values["post_reach"] == pytest.approx(3.25)
    assert values["forward"] == pytest.approx((100**2 - 3.25**2) / 100)
    assert values["sideways"] == pytest.approx(-3.25 * math.sqrt(1 - 0.0325**2))
    # 3.5 mm of saddle and 2 mm of ramp over 11 mm: 26.565 and 1.4 degrees.
    assert values["behind"] == pytest.approx(26.565, abs=1e-3)
    assert values["saddle_press"] == pytest.approx(
        200 * math.sin(math.radians(27.965 / 2)), abs=1e-2
    )
    assert values["nut_total"] == pytest.approx(
        100 * math.sin(math.radians(12)) * values["forward"] / values["head_string"]
    )


def test_more_windings_and_a_lower_post_make_it_steeper() -> None:
    angles = [worked(**one(), windings=n)["nut_down"] for n in (1, 2, 3)]
    assert angles == sorted(angles)
    assert angles[2] - angles[1] == pytest.approx(worked(**one(), windings=2)["winding_gain"])
    assert worked(hole_height=7.5)["nut_down"] > worked()["nut_down"]
    assert worked(head_angle=16)["nut_down"] == pytest.approx(worked()["nut_down"] + 2)
    far, near = worked(**one(along=150)), worked(**one(along=60))
    assert abs(far["nut_down"] - 14) < abs(near["nut_down"] - 14)
    deep = worked(head="slotted", roller_depth=12)["nut_down"]
    assert deep > worked(head="slotted")["nut_down"]
    thick = worked(head="slotted", roller_diameter=16)["nut_down"]
    assert thick < worked(head="slotted")["nut_down"]


@given(st.floats(0, 0.5), st.floats(1, 90))
@settings(max_examples=40)
def test_capstan_factors_of_two_bends_multiply(friction: float, angle: float) -> None:
    whole = capstan_ratio(friction, angle)
    assert whole == pytest.approx(capstan_ratio(friction, angle / 2) ** 2)
    assert whole == pytest.approx(math.exp(friction * angle * math.pi / 180))
    assert capstan_ratio(0, angle) == 1


@pytest.mark.parametrize(("share", "factor"), [(0.06, 1.04), (0.2, 1.1), (0.5, 1.3)])
def test_what_hangs_in_the_nut_against_two_springs(share: float, factor: float) -> None:
    """Pull, let go in small steps; string slides whenever the capstan's factor is passed."""
    for start, down in ((1.0, False), (1 / factor, True)):
        slip = 0.0
        for bend in [*np.linspace(0, 3, 3000), *np.linspace(3, 0, 3000)]:
            here, head = 1 + bend - slip, start + slip / share
            if here > factor * head:
                slip += (here - factor * head) / (1 + factor / share)
            elif head > factor * here:
                slip -= (head - factor * here) / (1 / share + factor)
        assert flat_after_bend_cents(share, factor, down) == pytest.approx(
            -600 * math.log2(1 - slip), rel=1e-6
        )


def test_without_friction_nothing_hangs() -> None:
    values = worked(friction=0)
    assert values["worst_flat"] == values["flat_even"] == values["flat_tuned_down"] == 0
    assert "however they were tuned" in values["hang_words"]
    assert worked(friction=0.4)["worst_flat"] > worked(friction=0.1)["worst_flat"]
    assert worked(scale_length=900)["worst_flat"] < worked()["worst_flat"]
    assert worked()["flat_even"] < worked()["flat_tuned_down"]


def test_crest_runs_through_its_three_heights() -> None:
    strings = [[str(n), 100, 0.5, 80, 5] for n in range(7)]
    rows = worked(strings=strings, saddle_height=4, showing_bass=3, showing_treble=2)["string_rows"]
    shows = [row["showing"] for row in rows]
    assert [shows[0], shows[3], shows[6]] == pytest.approx([3, 4, 2])
    assert shows[1] == pytest.approx(4 + 0.5 * 2 / 3 - 1.5 * 4 / 9)
    assert worked(**one(), saddle_height=4)["flat_showing"] == 4


def test_saddle_is_pressed_down_and_pushed_to_the_nut() -> None:
    values = worked(**one(pull=120), front_rise=0)
    behind = math.atan(5.5 / 11)
    assert values["saddle_total"] == pytest.approx(120 * math.sin(behind))
    assert values["saddle_push"] == pytest.approx(120 * (1 - math.cos(behind)))
    assert values["pull_total"] == 120
    assert math.hypot(values["saddle_total"], values["saddle_push"]) == pytest.approx(
        values["saddle_press"]
    )
    climbs = worked(**one(pull=120), front_rise=2)
    assert climbs["saddle_total"] == pytest.approx(
        120 * (math.sin(behind) + math.sin(math.radians(2)))
    )
    assert climbs["saddle_push"] == pytest.approx(
        120 * (math.cos(math.radians(2)) - math.cos(behind))
    )


def test_words_judge_by_the_limits() -> None:
    assert worked()["nut_words"].startswith("Steep enough: from 10.8°")
    assert "One more winding gives" in worked(least_nut=12)["nut_words"]
    slotted = worked(head="slotted", least_nut=20)["nut_words"]
    assert slotted.startswith("Too flat")
    assert "winding" not in slotted
    assert worked()["saddle_words"].startswith("Right: from 21.8°")
    flat = worked(ramp_depth=0, pin_back=20)
    assert "Too flat: string 1" in flat["saddle_words"]
    deep = worked(ramp_depth=flat["ramp_needed"], pin_back=20)
    assert deep["saddle_angle"] == pytest.approx(15)
    assert worked(pin_back=5)["saddle_words"].startswith("Too steep: string 4")
    assert "may stay flat by up to" in worked()["hang_words"]
    cautions = " ".join(door.answer("break-angle", {"ramp_depth": 0, "pin_back": 20})["cautions"])
    assert "Deepening a ramp" in cautions
    assert "push the saddle" not in cautions
    steep = " ".join(door.answer("break-angle", {"pin_back": 5})["cautions"])
    assert "push the saddle" in steep


def test_what_cannot_be_is_refused() -> None:
    assert refused(windings=8)[0] == "windings"
    blamed, why = refused(head_angle=0, string_over_face=3, windings=0)
    assert blamed == "strings[1].along"
    assert "lift off the nut" in why
    assert refused(least_saddle=50)[0] == "least_saddle"
    assert refused(saddle_height=0.3, showing_bass=15, showing_treble=0.4)[0] == "saddle_height"
    blamed, _ = refused(front_rise=-2, saddle_height=0.3, showing_bass=0.3, showing_treble=0.3,
                        pin_back=40, ramp_depth=0)  # fmt: skip
    assert blamed == "front_rise"


@pytest.mark.parametrize("head", ["solid", "slotted"])
def test_drawing_bends_the_string_by_the_very_angles(head: str) -> None:
    request = {"calculator": "break-angle", "inputs": {"head": head}}
    drawing = json.loads(door.live(json.dumps(request)))["parts"]["drawings"]
    lines = re.findall(r'<polyline class="accent open" points="([^"]+)"', drawing)
    assert len(lines) == 2
    values = worked(head=head)
    for text, angle in zip(lines, (values["nut_down"], values["saddle_angle"]), strict=True):
        points = [tuple(map(float, pair.split(","))) for pair in text.split()]
        slopes = [
            math.degrees(math.atan2(b[1] - a[1], b[0] - a[0]))
            for a, b in itertools.pairwise(points[:3])
        ]
        assert slopes[1] - slopes[0] == pytest.approx(angle, abs=0.1)
    assert ("<circle" in drawing) == (head == "slotted")
