"""The neck angle: geometry against independent solutions, cuts, spread, words, drawings."""

import json
import math
import random
import re
from statistics import fmean, stdev
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import fsolve
from scipy.stats import norm

from calculators.engine import checking, door, soundness
from calculators.engine.compute import Answer, work_out
from calculators.engine.declaration import Choice, Number
from calculators.engine.formula import parse
from calculators.engine.registry import load
from calculators.neck._neck_angle_geometry import dish_rise_mm, measured_rise_mm
from calculators.neck._neck_angle_spread import Draws, middle_95

CALCULATOR = load("neck-angle")
NOT_YET = {"dry_fit": "not_yet"}

necks = st.fixed_dictionaries(
    {
        "scale_length": st.floats(400, 900),
        "body_joint_fret": st.integers(12, 17),
        "last_fret": st.integers(18, 24),
        "board_joint": st.floats(4, 8),
        "fret_height": st.floats(0.8, 1.4),
        "arch_measured": st.floats(0, 5),
        "bridge_thickness": st.floats(7, 11),
        "saddle_height": st.floats(3, 6),
        "string_lift": st.floats(0, 1),
        "action_bass": st.floats(2.2, 3.2),
        "action_treble": st.floats(1.7, 2.2),
        "nut_height": st.floats(0.3, 0.8),
        "relief": st.floats(0.02, 0.4),
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


@pytest.mark.parametrize("check", CALCULATOR.checks, ids=lambda check: check.where)
def test_agrees_with_outside_figures(check: Any) -> None:
    for compared in checking.compare(CALCULATOR, check):
        assert compared.agrees, (compared.label, compared.printed, compared.ours)


def solved_by_turning(values: dict[str, Any]) -> tuple[float, float]:
    """Pitch (degrees) and straightedge height of a drawn neck, turned until it is right.

    Points in the frame of the rim plane; relief is an arc of a circle here, not a parabola.
    """
    scale, joint = values["scale_length"], values["body_joint_fret"]
    board = values["board_joint"] + values["fret_height"]

    def fret(number: float) -> float:
        return scale * (1 - 2 ** (-number / 12))

    dip = 0.0
    if joint > 12 and values["relief"] > 0:
        chord, depth = fret(joint) - fret(1), values["relief"]
        radius = chord**2 / (8 * depth) + depth / 2
        off = fret(12) - (fret(1) + fret(joint)) / 2
        dip = math.sqrt(radius**2 - off**2) - (radius - depth)
    wanted = (values["action_bass"] + values["action_treble"]) / 2

    def turned(angle: float, along: float, up: float) -> tuple[float, float]:
        return (
            along * math.cos(angle) - up * math.sin(angle),
            along * math.sin(angle) + up * math.cos(angle),
        )

    crown = (
        values["bridge_thickness"] + values["saddle_height"] + values["string_lift"]
        + values["arch_measured"]
    )  # fmt: skip

    def off_by(unknown: Any) -> list[float]:
        angle, saddle_x = unknown
        nut = (-fret(joint), board + values["nut_height"])
        saddle = turned(-angle, saddle_x, crown)
        at_twelfth = fret(12) - fret(joint)
        share = (at_twelfth - nut[0]) / (saddle[0] - nut[0])
        gap = nut[1] + share * (saddle[1] - nut[1]) - board + dip
        return [saddle[0] - (scale - fret(joint)), gap - wanted]

    angle, _ = fsolve(off_by, [0.01, scale - fret(joint)], xtol=1e-10)
    edge = turned(angle, scale - fret(joint), board)
    return math.degrees(angle), edge[1] - values["arch_measured"]


@settings(max_examples=60)
@given(necks)
def test_pitch_and_height_are_those_of_a_drawn_neck(neck: dict[str, Any]) -> None:
    pitch, height = solved_by_turning(neck)
    ours = worked(**neck, **NOT_YET, fret_radius=0)
    assert ours["pitch"] == pytest.approx(pitch, abs=2e-6)
    assert ours["straightedge_height"] == pytest.approx(height, abs=1e-5)


@settings(max_examples=40)
@given(necks)
def test_small_pitch_is_the_bench_rule(neck: dict[str, Any]) -> None:
    """Height missing at the saddle over the distance to the bridge, in radians."""
    ours = worked(**neck, **NOT_YET, fret_radius=0)
    missing = ours["saddle_over_rim"] - ours["board_and_fret"] - ours["saddle_over_frets"]
    small = missing / ours["joint_to_bridge"]
    # Next in the series is b θ²/2 over L, and θ³/6.
    assert math.radians(ours["pitch"]) == pytest.approx(small, abs=0.1 * small**2 + 1e-12)


@settings(max_examples=40)
@given(necks)
def test_reading_the_wanted_height_asks_for_nothing(neck: dict[str, Any]) -> None:
    wanted = worked(**neck, **NOT_YET, fret_radius=0)
    ours = worked(
        **neck, fret_radius=0, height_now=wanted["straightedge_height"], offset_now=0, proud_now=0
    )
    assert ours["pitch_now"] == pytest.approx(wanted["pitch"], abs=1e-9)
    assert ours["heel_cut"] == pytest.approx(0, abs=1e-9)
    mean = (neck["action_bass"] + neck["action_treble"]) / 2
    assert ours["action_now"] == pytest.approx(mean, abs=1e-9)
    for words in ("say_pitch", "say_side"):
        assert ours[words].startswith("Nothing to take off")
        assert ours[words].endswith("within the measuring spread.")
    assert ours["say_seat"].startswith("Leave the cheeks alone")
    assert ours["say_shim"] == "The shim in the joint is right: 0.15 mm."
    assert ours["joint_moves_in"] == 0


@settings(max_examples=40)
@given(st.floats(8.5, 11.5), st.floats(-0.4, 0.6), st.floats(60, 120))
def test_the_cut_brings_the_straightedge_to_its_height(
    height: float, proud: float, heel: float
) -> None:
    """Turn the neck as the wedge lets it turn, drop it on the top, and measure again."""
    ours = worked(height_now=height, proud_now=proud, heel_length=heel)
    turn = math.atan(ours["heel_cut"] / heel)
    angle = math.radians(ours["pitch_now"]) + turn
    run, board = ours["joint_to_bridge"], ours["board_and_fret"]
    fitted = run * math.sin(angle) + board * math.cos(angle) - ours["arch"]
    assert fitted == pytest.approx(ours["straightedge_height"], abs=1e-9)


def test_what_a_saddle_changes_the_twelfth_changes_by_half() -> None:
    low, high = worked(height_now=9.7), worked(height_now=9.2)
    # The line sinks by 0.5 mm at the bridge: the string over the saddle gains it, the 12th half.
    assert high["action_now"] - low["action_now"] == pytest.approx(0.25, abs=2e-4)
    shaved = worked(height_now=9.7 + low["bridge_per_shaving"])
    assert low["heel_cut"] - shaved["heel_cut"] == pytest.approx(0.1, abs=1e-4)
    assert shaved["action_now"] - low["action_now"] == pytest.approx(
        low["action_per_shaving"], abs=1e-4
    )


def test_outer_saddles_carry_the_difference_twice() -> None:
    ours = worked(fret_radius=0)
    assert ours["saddle_bass"] - ours["saddle_treble"] == pytest.approx(
        2 * (2.4 - 1.8) * math.cos(math.radians(ours["pitch"])), abs=1e-9
    )
    assert (ours["saddle_bass"] + ours["saddle_treble"]) / 2 == pytest.approx(3.5)
    round_board = worked(fret_radius=300)
    assert round_board["saddle_bass"] < ours["saddle_bass"]
    assert round_board["pitch"] == ours["pitch"]


def test_both_strings_get_their_action_over_a_flat_board() -> None:
    ours = worked(fret_radius=0)
    cosine = math.cos(math.radians(ours["pitch"]))
    for string in ("bass", "treble"):
        over_top = 9.5 + ours[f"saddle_{string}"]
        over_frets = (over_top + 0.5 - ours["straightedge_height"]) / cosine
        action = (0.45 + over_frets) / 2 + ours["relief_dip"]
        assert action == pytest.approx({"bass": 2.4, "treble": 1.8}[string], abs=1e-9)


def test_relief_share_limits() -> None:
    assert worked(body_joint_fret=12, **NOT_YET)["relief_share"] == 0
    assert worked(body_joint_fret=11, **NOT_YET)["relief_share"] == 0
    shares = [worked(body_joint_fret=fret)["relief_share"] for fret in (13, 14, 16, 18)]
    assert shares == sorted(shares)
    assert 0 < shares[0] < shares[-1] < 1


@settings(max_examples=50)
@given(st.floats(1500, 50000), st.floats(150, 900), st.floats(0, 1))
def test_dish_is_a_circle_through_both_rims(radius: float, span: float, share: float) -> None:
    rise = dish_rise_mm(radius, span, share * span)
    centre = -math.sqrt(radius**2 - (span / 2) ** 2)
    assert math.hypot(share * span - span / 2, rise - centre) == pytest.approx(radius)
    assert rise == pytest.approx(dish_rise_mm(radius, span, (1 - share) * span), abs=1e-8)
    assert rise >= -1e-9


def test_measured_arch_starts_at_nothing_and_crowns_at_the_bridge() -> None:
    assert measured_rise_mm(3.5, 290, 0) == 0
    assert measured_rise_mm(3.5, 290, 290) == 3.5
    assert measured_rise_mm(3.5, 290, 280) < 3.5 > measured_rise_mm(3.5, 290, 300)


def test_dish_step_and_the_drawn_top_are_one() -> None:
    ours = worked(arch_from="dish")
    assert ours["arch"] == pytest.approx(ours["dish_rise"], abs=1e-12)
    assert ours["end_rise"] == dish_rise_mm(7620, 500, ours["tongue_length"])


@pytest.mark.parametrize(
    ("inputs", "moves"),
    [
        ({"saddle_height": 3.8}, +1), ({"bridge_thickness": 10.0}, +1),
        ({"arch_measured": 4.0}, +1), ({"string_lift": 0.9}, +1), ({"nut_height": 0.6}, +1),
        ({"board_joint": 7.0}, -1), ({"fret_height": 1.3}, -1), ({"action_bass": 2.8}, -1),
        ({"scale_length": 700}, -1), ({"relief": 0.4}, +1),
    ],
)  # fmt: skip
def test_pitch_moves_the_right_way(inputs: dict[str, float], moves: int) -> None:
    assert (worked(**inputs)["pitch"] - worked()["pitch"]) * moves > 0


def test_the_example_is_the_handbooks() -> None:
    ours = worked()
    assert 1 < ours["pitch"] < 2
    assert 12.5 <= ours["string_over_top"] <= 13.5
    assert 0.1 <= ours["clearance"] <= 0.8  # the tolerance for the gap over the dummy bridge
    assert 1.6 <= ours["action_low"] < ours["action_high"] <= 2.6
    assert ours["say_pitch"].startswith("Take 0.12 mm off both shoulders at the heel end")
    assert ours["say_side"].startswith("Take 0.08 mm off the treble shoulder")


@settings(max_examples=40)
@given(st.floats(-3, 3))
def test_sides_mirror(offset: float) -> None:
    right, left = worked(offset_now=offset), worked(offset_now=-offset)
    assert right["side_cut"] == -left["side_cut"]
    assert right["side_way"].replace("treble", "bass") == left["side_way"].replace("treble", "bass")
    if abs(offset) > 0.2:
        assert right["side_way"] != left["side_way"]
        assert ("treble" in right["side_way"]) == (offset > 0) or "shim" in right["side_way"]


def corners(values: dict[str, Any]) -> dict[str, float]:
    return {row["place"]: row["in_all"] for row in values["corners"]}


def test_corners_add_up_and_say_where() -> None:
    ours = worked(spare=2, shim_now=0, offset_now=-1.5, height_now=11)
    cut, side = -ours["heel_cut"], -ours["side_cut"]
    assert cut > 0
    assert side > 0
    assert corners(ours) == pytest.approx(
        {
            "Heel end, bass side": side + 0.15, "Heel end, treble side": 0.15,
            "Board end, bass side": cut + side + 0.15, "Board end, treble side": cut + 0.15,
        }
    )  # fmt: skip
    assert "at the board end" in ours["say_pitch"]
    assert "off the bass shoulder" in ours["say_side"]
    assert ours["joint_moves_in"] == pytest.approx(cut + side / 2)


def test_too_much_gone_turns_cuts_into_shims() -> None:
    ours = worked(spare=0.1, offset_now=1.5, height_now=11)
    cut, side = -ours["heel_cut"], ours["side_cut"]
    assert corners(ours) == pytest.approx(
        {
            "Heel end, bass side": -cut - side, "Heel end, treble side": -cut,
            "Board end, bass side": -side, "Board end, treble side": 0,
        }
    )  # fmt: skip
    assert ours["joint_left"] < 0
    assert "shim 0.31 mm thick behind both shoulders at the heel end" in ours["say_pitch"]
    assert "outer edge of the bass shoulder" in ours["say_side"]
    # A shim swings the neck by as much as the cut on the other corners would have done.
    swing = corners(ours)["Heel end, treble side"] - corners(ours)["Heel end, bass side"]
    assert swing == pytest.approx(side)


def test_tilting_back_never_spends_the_spare() -> None:
    ours = worked(spare=0, offset_now=0, height_now=9)
    assert ours["joint_left"] == 0
    assert ours["pitch_way"] == "off the heel end"


def test_seat() -> None:
    proud, low = worked(proud_now=0.4), worked(proud_now=-0.4)
    assert proud["cheek_cut"] == pytest.approx(0.4 * math.tan(math.radians(3)))
    assert low["cheek_cut"] == -proud["cheek_cut"]
    assert proud["say_seat"].startswith("Take 0.021 mm off both cheeks")
    assert "glue a shaving 0.021 mm thick" in low["say_seat"]
    # A neck that will drop needs more pitch for the same reading, millimetre for millimetre.
    assert worked(proud_now=0.4, height_now=10.1)["heel_cut"] == pytest.approx(
        worked(proud_now=0, height_now=9.7)["heel_cut"]
    )


def test_shim_stands_for_lacquer_and_scraping() -> None:
    assert worked()["shim_wanted"] == 0.15
    over = worked(shim_place="binding", binding_proud=0.05)
    assert over["shim_wanted"] == pytest.approx(0.10)
    assert "0.05 mm too thick" in over["say_shim"]
    assert "Put the 0.15 mm shim in" in worked(shim_now=0)["say_shim"]
    assert worked(shim_now=0)["heel_off"] == pytest.approx(worked()["heel_cut"] + 0.15)
    assert "packing" in worked(shim_now=0.5, spare=0.1)["say_shim"]
    assert worked(**NOT_YET)["say_shim"] == "Fit the joint dry on a shim of 0.15 mm."


def test_spread_of_one_error_is_the_normal_law() -> None:
    alone = {"err_arch": 0, "err_thickness": 0, "err_made": 0, "err_proud": 0, "draws": 2000}
    reach = norm.ppf(0.975) * 0.1
    ours = worked(**alone, error_kind="standard", err_height=0.1)
    assert (ours["height_high"] - ours["height_low"]) / 2 == pytest.approx(reach, rel=0.08)
    assert (ours["action_high"] - ours["action_low"]) / 2 == pytest.approx(reach / 2, rel=0.08)
    assert ours["height_worst"] == pytest.approx(0.2)
    same = worked(**alone, error_kind="expanded", err_height=0.2)
    assert same["height_low"] == pytest.approx(ours["height_low"])
    even = worked(**alone, error_kind="limits", err_height=0.1)
    assert (even["height_high"] - even["height_low"]) / 2 == pytest.approx(0.095, abs=0.004)
    assert even["height_worst"] == pytest.approx(0.1)


def test_spread_agrees_with_drawing_the_whole_calculation() -> None:
    """Errors put into the inputs and worked out exactly, many times, with other draws."""
    source = random.Random(99)
    gauges = {"err_height": 0.08, "err_arch": 0.15, "err_thickness": 0.04, "err_made": 0.06}
    kept = {"error_kind": "standard", "err_proud": 0.05, **gauges}
    ours = worked(**kept, draws=2000)

    def off(name: str, example: float, gauge: str) -> dict[str, float]:
        return {name: example + source.gauss(0, kept[gauge])}

    drawn: dict[str, list[float]] = {"pitch": [], "action": [], "heel": []}
    for _ in range(500):
        seen = {
            **off("height_now", 9.7, "err_height"), **off("arch_measured", 3.5, "err_arch"),
            **off("board_joint", 6.4, "err_thickness"), **off("fret_height", 1.1, "err_thickness"),
            **off("proud_now", 0.15, "err_proud"), **off("bridge_thickness", 9.5, "err_thickness"),
        }  # fmt: skip
        made = {
            **off("nut_height", 0.45, "err_made"), **off("saddle_height", 3.5, "err_made"),
            **off("relief", 0.2, "err_made"),
        }  # fmt: skip
        one = worked(**seen)
        drawn["pitch"].append(one["pitch_now"])
        drawn["heel"].append(one["heel_cut"])
        drawn["action"].append(worked(**seen, **made)["action_now"])
    for name, values in drawn.items():
        middle, half = fmean(values), 1.96 * stdev(values)
        assert ours[f"{name}_high"] - ours[f"{name}_low"] == pytest.approx(2 * half, rel=0.14), name
        assert (ours[f"{name}_high"] + ours[f"{name}_low"]) / 2 == pytest.approx(
            middle, abs=0.2 * half
        )


@pytest.mark.parametrize("kind", ["limits", "expanded"])
def test_worst_case_is_the_worst_corner(kind: str) -> None:
    ours = worked(error_kind=kind)
    bad = worked(height_now=9.7 + 0.06, arch_measured=3.6, board_joint=6.37, fret_height=1.07,
                 proud_now=0.13)  # fmt: skip
    assert bad["pitch_now"] - ours["pitch_now"] == pytest.approx(ours["pitch_worst"], rel=1e-3)
    bad = worked(height_now=9.7 - 0.06, bridge_thickness=9.53, nut_height=0.5, saddle_height=3.55,
                 relief=0.25)  # fmt: skip
    assert bad["action_now"] - ours["action_now"] == pytest.approx(ours["action_worst"], rel=1e-3)


def test_same_seed_same_answer() -> None:
    assert worked(seed=3)["action_low"] == worked(seed=3)["action_low"]
    assert worked(seed=3)["action_low"] != worked(seed=4)["action_low"]
    first, second = Draws(5, 300, "expanded"), Draws(5, 300, "expanded")
    assert first.columns == second.columns


def test_gauges_without_error_leave_no_spread() -> None:
    gauges = [item.name for item in CALCULATOR.inputs if item.name.startswith("err_")]
    sure = dict.fromkeys(gauges, 0)
    ours = worked(**sure, height_now=9.88, proud_now=0)
    assert ours["height_low"] == ours["height_high"] == 9.88
    assert ours["action_worst"] == 0
    assert ours["say_pitch"].startswith("Take 0.01 mm off")
    wide = worked(height_now=9.88, proud_now=0)
    assert wide["say_pitch"].startswith("Nothing to take off for the pitch")


def test_middle_95_of_known_values() -> None:
    # Of ±1..±20 the 97.5 % point lies at place 38.025 of 0..39: between 19 and 20.
    assert middle_95([float(n) for n in range(-20, 0)]) == pytest.approx(19.025)


@pytest.mark.parametrize(
    ("inputs", "blamed"),
    [
        ({"last_fret": 14}, "last_fret"),
        ({"fret_radius": 20}, "fret_radius"),
        ({"nut_height": 3, "action_treble": 1.2}, "nut_height"),
        ({"arch_from": "dish", "dish_span": 280}, "dish_span"),
        ({"arch_from": "dish", "dish_span": 600, "dish_radius": 1500}, "dish_radius"),
        ({"bridge_thickness": 20, "saddle_height": 12, "arch_measured": 12}, "bridge_thickness"),
        ({"bridge_thickness": 3, "saddle_height": 3, "arch_measured": -2,
          "string_lift": 0, "board_joint": 11}, "bridge_thickness"),
        ({"bridge_thickness": 4, "saddle_height": 0.5, "arch_measured": 8, "board_joint": 4,
          "action_bass": 4, "action_treble": 4}, "saddle_height"),
        ({"fret_radius": 100, "string_spread": 90}, "saddle_height"),
        ({"shim_place": "binding", "binding_proud": 0.2}, "binding_proud"),
        ({"scale_length": 100}, "scale_length"),
        ({"height_now": "nan"}, "height_now"),
    ],
)  # fmt: skip
def test_refusals_name_the_input_to_mend(inputs: dict[str, Any], blamed: str) -> None:
    name, why = refused(**inputs)
    assert name == blamed
    assert len(why) > 20


def cautions(**inputs: Any) -> str:
    answer = work_out(CALCULATOR, inputs)
    assert isinstance(answer, Answer)
    return " ".join(answer.cautions)


def test_cautions() -> None:
    usual = cautions()
    for word in ("never one in front", "Take less than the figure", "Glueing is final", "dust"):
        assert word in usual
    for inputs, word in (
        ({"binding_proud": 0.2}, "Scrape it down"),
        ({"height_now": 7.0}, "no shaving"),
        ({"height_now": 11, "spare": 0.1}, "stop and ask"),
        ({"saddle_height": 3.0}, "below the bridge's top"),
        ({"board_end": 5.5}, "do not meet"),
    ):
        assert word in cautions(**inputs)
        assert word not in usual


def exercise_values(exercise: Any, source: random.Random) -> dict[str, Any]:
    drawn: dict[str, Any] = dict(exercise.fixed)
    for name, (low, high, step) in exercise.draw.items():
        steps = round((high - low) / step)
        drawn[name] = round(low + source.randint(0, steps) * step, 6)
    return worked(**drawn)


@pytest.mark.parametrize("exercise", CALCULATOR.exercises, ids=lambda one: one.name)
def test_no_slip_is_right(exercise: Any) -> None:
    source = random.Random(1)
    allowed = float(exercise.within.split()[0])
    for _ in range(150):
        values = exercise_values(exercise, source)
        right = values[exercise.asks]
        wrong = [parse(slip.formula).evaluate(values) for slip in exercise.slips]
        assert all(abs(one - right) > 2 * allowed for one in wrong), (right, wrong)


def test_the_heel_exercise_tells_true_figures() -> None:
    (exercise,) = [one for one in CALCULATOR.exercises if one.name == "heel-end"]
    ours = worked(**exercise.fixed)
    assert f"{ours['straightedge_height']:.2f} mm" in exercise.situation
    assert f"{ours['joint_to_bridge']:.1f} mm" in exercise.situation


def drawn_inputs(source: random.Random, near: bool) -> dict[str, Any]:
    """Values inside every declared range, or (``near``) about the example."""
    inputs: dict[str, Any] = {}
    for item in CALCULATOR.inputs:
        if isinstance(item, Choice):
            inputs[item.name] = source.choice([value for value, _ in item.options])
        elif isinstance(item, Number):
            low, high = item.lowest, item.highest
            if near:
                reach = 0.15 * (high - low)
                low, high = max(low, item.example - reach), min(high, item.example + reach)
            inputs[item.name] = (
                source.randint(math.ceil(low), math.floor(high))
                if item.whole
                else source.uniform(low, high)
            )
    return inputs


@pytest.mark.parametrize("near", [False, True])
def test_any_valid_inputs_answer_or_refuse_and_draw_inside_the_paper(near: bool) -> None:
    source = random.Random(7)
    answered = 0
    for _ in range(150):
        request = {"calculator": "neck-angle", "inputs": drawn_inputs(source, near)}
        live = json.loads(door.live(json.dumps(request)))
        if "refused" in live:
            assert all(one["why"] and one["allowed"] for one in live["refused"])
            continue
        answered += 1
        assert not re.search(r"\b(nan|inf)\b", json.dumps(live["parts"]))
        for svg in re.findall(r"<svg.*?</svg>", live["parts"]["drawings"]):
            assert_inside(svg)
    assert answered > 20


def assert_inside(svg: str) -> None:
    found = re.search(r'viewBox="0 0 ([\d.]+) ([\d.]+)"', svg)
    assert found
    width, height = float(found[1]), float(found[2])
    for pair in re.findall(r'points="([^"]*)"', svg):
        for point in pair.split():
            x, y = map(float, point.split(","))
            assert -1 <= x <= width + 1
            assert -1 <= y <= height + 1
    for axis, most in (("x", width), ("y", height)):
        for place in re.findall(rf' {axis}[12]?="(-?[\d.]+)"', svg):
            assert -1 <= float(place) <= most + 1


def test_drawings_tell_the_figures() -> None:
    live = json.loads(door.live(json.dumps({"calculator": "neck-angle"})))
    drawings = live["parts"]["drawings"]
    for words in ("9.91 mm", "13.00 mm", "0.12 mm off the heel end", "times too large",
                  "0.08 mm off the treble shoulder", "0.4 mm to the treble side"):  # fmt: skip
        assert words in drawings
    plain = json.loads(door.live(json.dumps({"calculator": "neck-angle", "inputs": NOT_YET})))
    assert plain["parts"]["drawings"].count("<svg") == 1
