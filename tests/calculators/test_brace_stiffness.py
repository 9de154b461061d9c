"""Laws of brace stiffness, held against integrals that scipy does its own way."""

import math
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import quad

from calculators.engine.compute import Answer, Say, work_out
from calculators.engine.inputs import Refused
from calculators.laws import wood_elastic
from calculators.laws.bending_beam import integral, point_load_compliance
from calculators.laws.braced_plate import SECTIONS, braced_strip_n_m2
from calculators.laws.wood_elastic import modulus_at_angle
from calculators.plates._brace_solved import height_at
from calculators.plates.brace_stiffness import calculator

from .svg_bounds import outside

SHAPES = ("rectangle", "triangle", "parabola")
OWN = {
    "brace_wood": "own", "brace_modulus": 11.5, "plate_wood": "own", "plate_modulus_along": 9.5,
    "plate_modulus_across": 0.9,
}  # fmt: skip


def values(**given_inputs: Any) -> dict[str, Any]:
    worked = work_out(calculator, given_inputs)
    assert isinstance(worked, Answer), worked
    return worked.values


def refusal(**given_inputs: Any) -> Refused:
    worked = work_out(calculator, given_inputs)
    assert isinstance(worked, list)
    return worked[0]


def width_at(shape: str, b: float, h: float, y: float) -> float:
    share = max(0.0, 1 - y / h)
    return b * {"rectangle": 1.0, "triangle": share, "parabola": math.sqrt(share)}[shape]


def by_strips(
    shape: str, b: float, h: float, brace: float, w: float, t: float, plate: float
) -> tuple[float, float]:
    """EI in N·m² and the neutral axis from the outer face in mm, by strips of the section."""

    def over(power: int, about: float) -> float:
        def brace_part(y: float) -> float:
            return brace * width_at(shape, b, h, y) * (y - about) ** power

        inner = quad(brace_part, 0, h, epsabs=1e-12, epsrel=1e-12)[0]
        outer = quad(lambda y: plate * w * (y - about) ** power, -t, 0, epsabs=1e-12)[0]
        return float(inner + outer)

    axis = over(1, 0.0) / over(0, 0.0)
    return over(2, axis) / 1000, axis + t


@pytest.mark.parametrize("shape", SHAPES)
@given(
    b=st.floats(4, 12), h=st.floats(4, 20), brace=st.floats(6, 16), w=st.floats(20, 120),
    t=st.floats(1.5, 4), angle=st.floats(0, 90),
)  # fmt: skip
@settings(max_examples=12)
def test_section_is_what_strips_add_up_to(
    shape: str, b: float, h: float, brace: float, w: float, t: float, angle: float
) -> None:
    after = 0.7 * h
    v = values(
        **{**OWN, "brace_modulus": brace}, brace_shape=shape, brace_width=b, brace_height=h,
        brace_height_after=after, strip_width=w, plate_thickness=t, grain_angle=angle, knife_load=0.05,
    )  # fmt: skip
    plate = v["plate_gpa"]
    now, axis = by_strips(shape, b, h, brace, w, t, plate)
    later, _ = by_strips(shape, b, after, brace, w, t, plate)
    lower, _ = by_strips(shape, b, h - 0.1, brace, w, t, plate)
    thinner, _ = by_strips(shape, b, h, brace, w, t - 0.1, plate)
    assert v["stiffness_now"] == pytest.approx(now, rel=1e-7)
    assert v["axis_now"] == pytest.approx(axis, rel=1e-7)
    assert v["stiffness_after"] == pytest.approx(later, rel=1e-7)
    assert v["share_left"] == pytest.approx(100 * later / now, rel=1e-7)
    assert v["height_tenth"] == pytest.approx(100 * (1 - lower / now), rel=1e-5)
    assert v["plate_tenth"] == pytest.approx(100 * (1 - thinner / now), rel=1e-5)
    assert v["plate_alone"] == pytest.approx(plate * w * t**3 / 12000)
    assert v["times_plate"] == pytest.approx(later / (plate * w * t**3 / 12000), rel=1e-7)
    assert v["bare_tenth"] == pytest.approx(100 * (1 - ((t - 0.1) / t) ** 3))


@pytest.mark.parametrize("shape", SHAPES)
def test_a_brace_alone_goes_with_width_and_the_cube_of_its_height(shape: str) -> None:
    one = values(brace_shape=shape, brace_width=6, brace_height=8, brace_height_after=8)
    two = values(brace_shape=shape, brace_width=9, brace_height=16, brace_height_after=8)
    assert two["brace_alone_now"] / one["brace_alone_now"] == pytest.approx(1.5 * 8)
    assert two["brace_share_left"] == pytest.approx(100 / 8)
    alone = quad(lambda y: width_at(shape, 6, 8, y) * (y - 8 * SECTIONS[shape].centroid) ** 2, 0, 8)
    assert one["brace_alone_now"] == pytest.approx(one["brace_gpa"] * alone[0] / 1000, rel=1e-6)


def test_a_plate_as_stiff_as_the_brace_and_as_wide_makes_one_beam() -> None:
    """A rectangle on a strip of its own width and wood is one rectangle of both heights."""
    v = values(
        brace_shape="rectangle", brace_width=10, brace_height=7, brace_height_after=5,
        strip_width=10, plate_thickness=3, grain_angle=0, brace_wood="own", brace_modulus=10,
        plate_wood="own", plate_modulus_along=10, plate_modulus_across=1,
    )  # fmt: skip
    assert v["stiffness_now"] == pytest.approx(10 * 10 * 10**3 / 12 / 1000)
    assert v["stiffness_after"] == pytest.approx(10 * 10 * 8**3 / 12 / 1000)
    assert v["axis_now"] == pytest.approx(5)


def test_triangle_is_less_stiff_than_parabola_and_that_than_rectangle() -> None:
    three = [values(brace_shape=shape)["stiffness_now"] for shape in SHAPES]
    assert three[1] < three[2] < three[0]


@given(angle=st.floats(0, 90))
@settings(max_examples=30)
def test_modulus_turns_as_a_tensor(angle: float) -> None:
    along, radial, shear, poisson = 10.0, 0.9, 0.7, 0.4
    compliance = np.array(
        [[1 / along, -poisson / along, 0], [-poisson / along, 1 / radial, 0], [0, 0, 1 / shear]]
    )
    c, s = math.cos(math.radians(angle)), math.sin(math.radians(angle))
    turn = np.array([c * c, s * s, s * c])
    wanted = 1 / float(turn @ compliance @ turn)
    assert modulus_at_angle(along, radial / along, shear / along, poisson, angle) == pytest.approx(
        wanted
    )
    # The printed step is the same law.
    v = values(grain_angle=angle)
    law = modulus_at_angle(
        v["plate_along"], v["radial_ratio"], v["shear_ratio"], v["poisson"], angle
    )
    assert v["plate_gpa"] == pytest.approx(law)


@pytest.mark.parametrize("wood", ["sitka", "redcedar", "own"])
def test_with_and_across_the_grain_are_the_two_moduli(wood: str) -> None:
    with_grain, across = (
        values(plate_wood=wood, grain_angle=a, plate_modulus_across=0.7, plate_modulus_along=9)
        if wood == "own"
        else values(plate_wood=wood, grain_angle=a)
        for a in (0, 90)
    )
    assert with_grain["plate_gpa"] == pytest.approx(with_grain["plate_along"])
    assert across["plate_gpa"] == pytest.approx(across["plate_along"] * across["radial_ratio"])
    if wood == "own":
        assert across["plate_gpa"] == pytest.approx(0.7)
        assert across["shear_ratio"] == 0.0625
        assert across["poisson"] == 0.372


def test_psi_are_turned_right() -> None:
    # 1 psi is a pound-force (4.4482216152605 N) on a square inch of 25.4 mm.
    psi = 4.4482216152605 / 25.4**2
    assert psi == pytest.approx(wood_elastic.MPA_PER_PSI, rel=1e-12)
    assert psi * 1000 == pytest.approx(wood_elastic.GPA_PER_MPSI, rel=1e-12)
    assert wood_elastic.strength_mpa("sitka") == pytest.approx(10200 * psi)


# On the knives


@given(place=st.floats(20, 380), weight=st.floats(0.1, 3))
@settings(max_examples=25)
def test_level_brace_bends_as_the_beam_formula_and_both_ways_alike(
    place: float, weight: float
) -> None:
    one = values(load_place=place, knife_load=weight)
    other = values(load_place=400 - place, knife_load=weight)
    rigid = one["stiffness_now"] * 1e6
    force = 9.80665 * weight
    wanted = force * place**2 * (400 - place) ** 2 / (3 * rigid * 400)
    assert one["load"] == pytest.approx(force)
    assert one["deflection_now"] == pytest.approx(wanted)
    assert other["deflection_now"] == pytest.approx(wanted)
    later = wanted * one["stiffness_now"] / one["stiffness_after"]
    assert one["deflection_after"] == pytest.approx(later)
    assert one["knife_share"] == pytest.approx(one["share_left"])


def test_central_load_is_the_well_known_forty_eighth() -> None:
    v = values(load_place=200, knife_load=1)
    wanted = 9.80665 * 400**3 / (48 * v["stiffness_now"] * 1e6)
    assert v["deflection_now"] == pytest.approx(wanted)


def test_carving_nothing_away_is_a_level_brace() -> None:
    level = values(brace_height=13, brace_height_after=12)
    rows = [[10, 13, 12], [50, 13, 12], [333, 13, 12]]
    carved = values(brace_profile="carved", brace_rows=rows)
    for name in ("stiffness_now", "stiffness_after", "deflection_now", "deflection_after"):
        assert carved[name] == pytest.approx(level[name], rel=1e-9)
    assert carved["equal_now"] == pytest.approx(level["stiffness_now"])
    assert carved["equal_after"] == pytest.approx(level["stiffness_after"])


@given(
    heights=st.lists(st.floats(3, 18), min_size=4, max_size=4), place=st.floats(60, 340),
    shape=st.sampled_from(SHAPES),
)  # fmt: skip
@settings(max_examples=15)
def test_carved_brace_bends_as_quadrature_says(
    heights: list[float], place: float, shape: str
) -> None:
    places = [0, 120, 230, 400]
    rows = [[x, h, 0.8 * h] for x, h in zip(places, heights, strict=True)]
    v = values(
        brace_profile="carved", brace_shape=shape, brace_rows=rows, load_place=place,
        knife_load=0.3,
    )  # fmt: skip

    def bend(x: float, share: float) -> float:
        moment = x * (400 - place) / 400 if x <= place else (400 - x) * place / 400
        height = share * float(np.interp(x, places, heights))
        rigid = braced_strip_n_m2(shape, 8, height, v["brace_gpa"], 60, 2.8, v["plate_gpa"])
        return moment**2 / (rigid * 1e6)

    for name, share in (("deflection_now", 1.0), ("deflection_after", 0.8)):
        found = quad(bend, 0, 400, args=(share,), points=[120, 230, place], limit=200)[0]
        assert v[name] == pytest.approx(0.3 * 9.80665 * found, rel=1e-7)
    here = float(np.interp(place, places, heights))
    assert v["section_now"] == pytest.approx(here)
    assert v["section_after"] == pytest.approx(0.8 * here)


def test_rows_may_come_in_any_order_and_heights_run_on_beyond_them() -> None:
    rows = [[90, 12, 12], [300, 10, 9], [155, 15, 8]]
    one = values(brace_profile="carved", brace_rows=rows)
    two = values(brace_profile="carved", brace_rows=sorted(rows))
    assert one["deflection_after"] == two["deflection_after"]
    kept = [{"place": 90, "h": 12.0}, {"place": 155, "h": 15.0}]
    assert height_at(kept, "h", 0) == 12
    assert height_at(kept, "h", 400) == 15
    assert height_at(kept, "h", 122.5) == 13.5


def test_a_scallop_far_from_the_weight_counts_less_than_one_under_it() -> None:
    def give(low: int) -> float:
        rows = [[x, 14, 6 if x == low else 14] for x in (0, 40, 80, 160, 200, 240, 400)]
        v = values(brace_profile="carved", brace_rows=rows, load_place=200)
        return float(v["deflection_after"])

    assert give(200) > give(160) > give(40)


def test_gauss_rule_is_exact_for_high_powers_and_close_for_a_root() -> None:
    assert integral(lambda x: x**15, [0.0, 0.4, 2.0]) == pytest.approx(2**16 / 16, rel=1e-13)
    assert integral(math.exp, [-1.0, 2.0]) == pytest.approx(math.exp(2) - math.exp(-1), rel=1e-13)


def test_a_stiff_end_piece_beyond_the_span_does_not_matter() -> None:
    def stiff(x: float) -> float:
        return 10 + x / 100

    inside = point_load_compliance(150, 400, stiff, [100.0])
    assert point_load_compliance(150, 400, stiff, [-50.0, 0.0, 100.0, 400.0, 900.0]) == inside


# Refusals and words


def test_refusals_name_the_input_and_the_way_out() -> None:
    assert refusal(strip_width=6).input == "strip_width"
    assert refusal(load_place=400).input == "load_place"
    assert refusal(brace_height=10, brace_height_after=10.5).input == "brace_height_after"
    assert refusal(**{**OWN, "plate_modulus_across": 9.6}).input == "plate_modulus_across"
    assert refusal(knife_load=10, brace_height=3, brace_height_after=2).input == "knife_load"
    twice = refusal(brace_profile="carved", brace_rows=[[50, 9, 8], [50.5, 9, 8]])
    assert (twice.input, "one place" in twice.why) == ("brace_rows", True)
    values(brace_profile="carved", brace_rows=[[50, 9, 8], [51, 9, 8]])
    grown = refusal(brace_profile="carved", brace_rows=[[50, 9, 8], [90, 9, 9.5]])
    assert (grown.input, "higher after" in grown.why) == ("brace_rows", True)


def test_a_load_that_just_bends_a_tenth_of_the_span_is_still_taken() -> None:
    v = values(brace_height=3, brace_height_after=3, knife_load=0.5)
    most = 0.5 * 40 / v["deflection_after"]
    values(brace_height=3, brace_height_after=3, knife_load=most * 0.999)
    assert refusal(brace_height=3, brace_height_after=3, knife_load=most * 1.001).why


def test_the_words_follow_the_case() -> None:
    assert values()["answer"].startswith("From 13.0 mm down to 12.0 mm leaves 83 %")
    assert values(brace_height_after=13)["answer"].startswith("Nothing is shaved")
    assert values(brace_profile="carved")["answer"].startswith("Carved")


def test_cautions_for_a_tall_brace_and_a_short_span() -> None:
    def cautions(**given_inputs: Any) -> str:
        worked = work_out(calculator, given_inputs)
        assert isinstance(worked, Answer)
        return " ".join(worked.cautions)

    assert "lean over" in cautions(brace_height=26, brace_width=8)
    assert "lean over" not in cautions(brace_height=24, brace_width=8)
    assert "shear" in cautions(span=181, load_place=90)
    assert "shear" not in cautions(span=182, load_place=90)


@given(
    h=st.floats(2, 40), cut=st.floats(0.1, 1), b=st.floats(2, 30), w=st.floats(30, 400),
    t=st.floats(1, 6), shape=st.sampled_from(SHAPES), profile=st.sampled_from(["level", "carved"]),
)  # fmt: skip
@settings(max_examples=40)
def test_drawings_stay_on_their_paper(
    h: float, cut: float, b: float, w: float, t: float, shape: str, profile: str
) -> None:
    given_inputs: dict[str, Any] = {
        "brace_shape": shape, "brace_width": b, "strip_width": w, "plate_thickness": t,
        "knife_load": 0.05, "brace_profile": profile,
    }  # fmt: skip
    if profile == "level":
        given_inputs |= {"brace_height": h, "brace_height_after": max(2, h * cut)}
    else:
        given_inputs["brace_rows"] = [[0, h, max(1, h * cut)], [200, 20, 5], [400, 3, 3]]
    worked = work_out(calculator, given_inputs)
    if not isinstance(worked, Answer):
        return
    for system in ("metric", "inch"):
        say = Say(calculator, worked.values, system)
        for drawing in calculator.drawings:
            if drawing.name != "carving" or profile == "carved":
                assert outside(drawing.function(worked.values, say)) == []
