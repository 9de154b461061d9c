"""Laws of the braced top under its strings, held against a beam solved as linear equations."""

import math
from typing import Any

import numpy as np
import pytest
from hypothesis import assume, example, given, settings
from hypothesis import strategies as st

from calculators.engine.compute import Answer, Say, work_out
from calculators.engine.inputs import Refused
from calculators.laws.bending_beam import bent_by_couple, couple_cubics
from calculators.laws.braced_plate import braced_strip_n_m2, plate_alone_n_m2
from calculators.laws.wood_elastic import modulus_at_angle
from calculators.plates._top_drawings import bent_line, stiffness_at
from calculators.plates.top_deflection import calculator

from .svg_bounds import outside

BARE = {"held_times": 1, "string_tension": 100}


def worked(**given_inputs: Any) -> Answer:
    found = work_out(calculator, given_inputs)
    assert isinstance(found, Answer), found
    return found


def values(**given_inputs: Any) -> dict[str, Any]:
    return worked(**given_inputs).values


def refusal(**given_inputs: Any) -> Refused:
    found = work_out(calculator, given_inputs)
    assert isinstance(found, list)
    return found[0]


def solved(couple: float, a: float, span: float, rigid: float, clamped: bool) -> dict[str, float]:
    """The beam in metres as eight linear equations, its extremes read off many points."""
    a, span = a / 1000, span / 1000
    b = span - a

    def row(x: float, order: int) -> list[float]:
        powers = [[1, x, x**2, x**3], [0, 1, 2 * x, 3 * x**2], [0, 0, 2, 6 * x], [0, 0, 0, 6]]
        return powers[order]

    zero = [0.0] * 4
    held = 1 if clamped else 2
    matrix = [
        row(0, 0) + zero, row(0, held) + zero, zero + row(b, 0), zero + row(b, held),
        row(a, 0) + [-one for one in row(0, 0)], row(a, 1) + [-one for one in row(0, 1)],
        row(a, 2) + [-one for one in row(0, 2)], row(a, 3) + [-one for one in row(0, 3)],
    ]  # fmt: skip
    front, back = np.split(np.linalg.solve(matrix, [0, 0, 0, 0, 0, 0, couple / rigid, 0]), 2)
    xs, us = np.linspace(0, a, 40001), np.linspace(0, b, 40001)
    line = np.concatenate([np.polyval(front[::-1], xs), np.polyval(back[::-1], us)])
    moments = [
        abs(rigid * (2 * part[2] + 6 * part[3] * x))
        for part, ends in ((front, (0, a)), (back, (0, b)))
        for x in ends
    ]
    slope = front[1] + 2 * front[2] * a + 3 * front[3] * a * a
    places = np.concatenate([xs, us + a])
    return {
        "turn": math.degrees(math.atan(slope)), "rise": 1000 * line.max(),
        "sink": -1000 * line.min(), "rise_at": 1000 * places[line.argmax()],
        "sink_at": 1000 * places[line.argmin()], "moment": max(moments),
    }  # fmt: skip


@pytest.mark.parametrize("clamped", [False, True])
@example(span=254.0, share=0.65625, rigid=5.0)
@given(span=st.floats(150, 600), share=st.floats(0.08, 0.92), rigid=st.floats(5, 60))
@settings(max_examples=40)
def test_bent_beam_is_what_the_equations_say(
    clamped: bool, span: float, share: float, rigid: float
) -> None:
    ours = bent_by_couple(7.0, share * span, span, rigid, clamped)
    wanted = solved(7.0, share * span, span, rigid, clamped)
    for name in ("turn", "rise", "sink", "moment"):
        assert getattr(ours, name) == pytest.approx(wanted[name], rel=2e-6, abs=1e-9), name
    for height, place in (("rise", "rise_at"), ("sink", "sink_at")):
        if wanted[height] > 1e-3:
            assert getattr(ours, place) == pytest.approx(wanted[place], abs=0.001 * span)


@pytest.mark.parametrize("clamped", [False, True])
@given(share=st.floats(0.1, 0.9))
@settings(max_examples=20)
def test_turned_end_for_end_rise_and_sinking_change_places(clamped: bool, share: float) -> None:
    one = bent_by_couple(9.0, share * 400, 400, 20, clamped)
    other = bent_by_couple(9.0, (1 - share) * 400, 400, 20, clamped)
    assert one.rise == pytest.approx(other.sink, abs=1e-12)
    assert one.sink == pytest.approx(other.rise, abs=1e-12)
    assert one.turn == pytest.approx(other.turn)
    assert one.moment == pytest.approx(other.moment)
    if one.rise > 0:
        assert one.rise_at == pytest.approx(400 - other.sink_at)


def test_in_the_middle_the_turn_is_a_twelfth_or_a_sixteenth() -> None:
    hinged = bent_by_couple(10.0, 200, 400, 20, False)
    clamped = bent_by_couple(10.0, 200, 400, 20, True)
    assert math.tan(math.radians(hinged.turn)) == pytest.approx(10 * 0.4 / (12 * 20))
    assert math.tan(math.radians(clamped.turn)) == pytest.approx(10 * 0.4 / (16 * 20))
    assert hinged.rise == pytest.approx(hinged.sink)
    assert hinged.rise == pytest.approx(1000 * 10 * 0.16 / (72 * math.sqrt(3) * 20))
    assert (hinged.moment, clamped.moment) == (pytest.approx(5), pytest.approx(5))


def test_a_couple_at_the_very_end_lifts_the_whole_beam() -> None:
    end = bent_by_couple(5.0, 0, 650, 4.6208, False)
    assert end.sink == pytest.approx(0, abs=1e-9)
    assert end.rise_at == pytest.approx(650 * (1 - 1 / math.sqrt(3)))
    assert end.moment == pytest.approx(5)
    nothing = bent_by_couple(5.0, 0, 650, 4.6208, True)
    assert (nothing.rise, nothing.turn) == (0.0, 0.0)
    assert couple_cubics(5.0, 0, 650, 4.6208, True)[0][2] == 0


# The strip


@given(
    pull=st.floats(100, 900), bridge=st.floats(5, 12), saddle=st.floats(2, 6), t=st.floats(1.5, 4),
    angle=st.floats(0, 70), count=st.integers(1, 4), h=st.floats(8, 18), held=st.floats(2, 6),
)  # fmt: skip
@settings(max_examples=40)
def test_the_strip_by_other_means(
    pull: float, bridge: float, saddle: float, t: float, angle: float, count: int, h: float,
    held: float,
) -> None:  # fmt: skip
    given_inputs = {
        "string_tension": pull, "bridge_thickness": bridge, "saddle_height": saddle,
        "top_thickness": t, "brace_angle": angle, "brace_count": count, "brace_height": h,
        "held_times": held,
    }  # fmt: skip
    found = work_out(calculator, given_inputs)
    assume(isinstance(found, Answer))
    v = values(**given_inputs)
    couple = pull * (bridge + saddle + t / 2) / 1000
    plate = modulus_at_angle(
        v["plate_along"], v["radial_ratio"], v["shear_ratio"], v["poisson"], angle
    )
    glued = braced_strip_n_m2("parabola", 8, h, v["brace_gpa"], 60, t, plate)
    c = math.cos(math.radians(angle))
    bare = plate_alone_n_m2(340, t, v["plate_along"])
    rigid = held * (bare + count * (glued - plate_alone_n_m2(60, t, plate)) * c**3)
    assert v["couple"] == pytest.approx(couple)
    assert v["stiffness"] == pytest.approx(rigid)
    assert stiffness_at(v, h) == pytest.approx(rigid)
    wanted = solved(couple, 180, 390, rigid, False)
    for name in ("turn", "rise", "sink", "moment"):
        assert v[name] == pytest.approx(wanted[name], rel=1e-5)
    # Where the axis lies, the pull of the plate and the push of the brace are alike.
    brace_kn = v["brace_gpa"] * 2 / 3 * 8 * h
    plate_kn = plate * 60 * t
    axis = v["axis"]
    assert plate_kn * (axis - t / 2) == pytest.approx(brace_kn * (t + 0.4 * h - axis))
    bend = v["moment"] / rigid
    ridge = v["brace_gpa"] * (t + h - axis) * bend * c**2
    face = v["plate_along"] * axis * bend
    assert v["brace_stress"] == pytest.approx(ridge)
    assert v["plate_stress"] == pytest.approx(face)
    assert v["lean_share"] == pytest.approx(100 * c**3)


def test_energy_of_a_leaning_brace_gives_the_cube_of_the_cosine() -> None:
    """Bend a strip of 1 m along the strings to 0.1 1/m; the brace takes the energy of its own."""
    angle, added, bend = 50.0, 14.0, 0.1
    c = math.cos(math.radians(angle))
    length, own_bend = 1.0 / c, bend * c**2
    energy = added * own_bend**2 * length / 2
    share = energy / (added * bend**2 * 1.0 / 2)
    assert values(brace_angle=50)["lean_share"] == pytest.approx(100 * share)


def test_the_drawn_line_is_the_bent_line() -> None:
    for ends in ("hinged", "clamped"):
        v = values(ends=ends, bridge_place=150)
        line = bent_line(v)
        heights = [y for _, y in line]
        assert max(heights) == pytest.approx(v["rise"], rel=0.02)
        assert -min(heights) == pytest.approx(v["sink"], rel=0.02)
        assert [x for x, _ in line] == sorted(x for x, _ in line)
        assert line[0] == (0, 0)
        assert line[-1] == pytest.approx((390, 0), abs=1e-9)


# Spread and strength


def test_the_ranges_come_from_spread_and_settling() -> None:
    v = values(modulus_spread=25, creep_least=1.3, creep_most=1.9)
    for name in ("rise", "sink", "turn"):
        assert v[f"{name}_low"] == pytest.approx(v[name] * 1.3 / 1.25)
        assert v[f"{name}_high"] == pytest.approx(v[name] * 1.9 / 0.75)


def test_no_spread_and_no_settling_leave_one_figure() -> None:
    v = values(modulus_spread=0, creep_least=1, creep_most=1, strength_spread=0)
    assert v["rise_low"] == v["rise"] == v["rise_high"]
    assert v["safety_low"] == v["safety_high"]


def test_strength_over_stress_is_that_of_the_weaker() -> None:
    v = values(
        brace_wood="own", brace_modulus=11, brace_strength=80, plate_wood="own",
        plate_modulus_along=11, plate_strength=50, strength_spread=20, long_share=70,
    )  # fmt: skip
    assert v["brace_bears_low"] == pytest.approx(80 * 0.8 * 0.7)
    assert v["brace_bears_high"] == pytest.approx(80 * 1.2 * 0.7)
    assert v["plate_bears_low"] == pytest.approx(50 * 0.8 * 0.7)
    assert v["plate_bears_high"] == pytest.approx(50 * 1.2 * 0.7)
    low = min(v["brace_bears_low"] / v["brace_stress"], v["plate_bears_low"] / v["plate_stress"])
    assert v["safety_low"] == pytest.approx(low)
    assert v["safety_high"] == pytest.approx(low * 1.2 / 0.8)
    weak = values(brace_wood="own", brace_modulus=25, brace_strength=20)
    assert weak["safety_low"] == pytest.approx(weak["brace_bears_low"] / weak["brace_stress"])


def test_stress_does_not_ask_how_stiff_the_wood_is_when_all_of_it_is_stiffer() -> None:
    both = {"plate_wood": "own", "brace_wood": "own"}
    one = values(**both, plate_modulus_along=8, plate_modulus_across=0.8, brace_modulus=8)
    two = values(**both, plate_modulus_along=16, plate_modulus_across=1.6, brace_modulus=16)
    assert one["plate_stress"] == pytest.approx(two["plate_stress"])
    assert one["brace_stress"] == pytest.approx(two["brace_stress"])
    assert one["rise"] == pytest.approx(2 * two["rise"])


@given(h=st.floats(6, 25), more=st.floats(1.02, 1.5))
@settings(max_examples=25)
def test_higher_braces_and_thicker_tops_bend_less(h: float, more: float) -> None:
    low, high = values(brace_height=h), values(brace_height=h * more)
    assert high["rise"] < low["rise"]
    thin, thick = values(top_thickness=2.5), values(top_thickness=2.5 * more)
    assert thick["rise"] < thin["rise"]


# Words, refusals, drawings


def test_the_words_say_where_the_range_lies_and_never_more() -> None:
    ask = {"creep_least": 1, "creep_most": 1, "modulus_spread": 50}
    rise = values(**ask)["rise"]
    low, high = rise / 1.5, rise / 0.5

    def words(least: float, most: float) -> str:
        return str(values(**ask, rise_least=least, rise_most=most)["answer"])

    assert "between your marks" in words(low * 0.9, high * 1.1)
    assert "past both marks" in words(low * 1.1, high * 0.9)
    assert "all of it above your mark for too weak" in words(low * 0.5, low * 0.9)
    assert "part of that lies above" in words(low * 0.9, high * 0.9)
    assert "all of it below your mark for too stiff" in words(high * 1.1, high * 2)
    assert "part of that lies below" in words(low * 1.1, high * 1.1)
    for least, most in ((low * 0.9, high * 1.1), (low * 1.1, high * 0.9), (high * 1.1, high * 2)):
        assert "no verdict" in words(least, most)
    assert "nothing rises" in values(bridge_place=330)["answer"]


def test_the_first_caution_is_always_that_this_is_no_verdict() -> None:
    for given_inputs in ({}, {"bridge_place": 330}, {"brace_height": 30}):
        assert worked(**given_inputs).cautions[0].startswith("NEVER A VERDICT")
    assert any("stands far back" in one for one in worked(bridge_place=330).cautions)
    assert not any("stands far back" in one for one in worked().cautions)
    weak = worked(held_times=1)
    assert any("do not carve further" in one for one in weak.cautions)
    assert "little is left" in weak.values["strength_words"]
    assert not any("do not carve further" in one for one in worked().cautions)
    poor = values(plate_wood="own", plate_strength=11)
    assert "Do not build" in poor["strength_words"]


def test_refusals_name_the_input() -> None:
    assert refusal(bridge_place=390).input == "bridge_place"
    assert refusal(strip_width=7).input == "strip_width"
    assert refusal(brace_count=5, strip_width=70).input == "top_width"
    values(brace_count=5, strip_width=68)  # just fits into 340
    assert refusal(creep_least=2, creep_most=1.9).input == "creep_most"
    values(creep_least=2, creep_most=2)
    assert refusal(rise_least=0.9).input == "rise_most"
    own = {"plate_wood": "own", "plate_modulus_along": 5, "plate_modulus_across": 5.1}
    assert refusal(**own).input == "plate_modulus_across"
    soft = {"held_times": 1, "brace_height": 2, "top_thickness": 1, "string_tension": 1500}
    assert refusal(**soft).input == "brace_height"
    values(strip_width=8)


def test_a_turn_of_six_degrees_is_the_last_that_is_taken() -> None:
    one = values(held_times=1, span=600, brace_height=3, string_tension=100)
    pull = 100 * math.tan(math.radians(6)) / math.tan(math.radians(one["turn"]))
    values(held_times=1, span=600, brace_height=3, string_tension=pull * 0.999)
    assert refusal(held_times=1, span=600, brace_height=3, string_tension=pull * 1.001).input


@given(
    place=st.floats(30, 380), h=st.floats(4, 30), pull=st.floats(20, 900),
    ends=st.sampled_from(["hinged", "clamped"]), least=st.floats(0, 0.8), most=st.floats(0.9, 6),
)  # fmt: skip
@settings(max_examples=40)
def test_drawings_stay_on_their_paper(
    place: float, h: float, pull: float, ends: str, least: float, most: float
) -> None:
    found = work_out(
        calculator,
        {"bridge_place": place, "brace_height": h, "string_tension": pull, "ends": ends,
         "rise_least": least, "rise_most": most},
    )  # fmt: skip
    if isinstance(found, Answer):
        for system in ("metric", "inch"):
            for drawing in calculator.drawings:
                assert (
                    outside(drawing.function(found.values, Say(calculator, found.values, system)))
                    == []
                )
