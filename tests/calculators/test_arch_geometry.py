"""Laws of arched plates on a rim: circles, balls, smooth outlines, and what the library makes."""

import math
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import quad
from scipy.interpolate import CubicSpline

from calculators.engine.compute import Answer, Say, work_out
from calculators.engine.inputs import Refused
from calculators.laws.dished_plate import ball_over, fall_outwards, height_on
from calculators.laws.outline_curve import outline_through, pieces_of, place_on
from calculators.plates.arch_geometry import calculator

from .svg_bounds import outside

SMALL = {
    "body_length": 280, "depth_neck_block": 60, "depth_end_block": 72, "back_dish_radius": 3600,
    "outline": ((10, 40), (60, 81), (120, 70), (200, 107), (260, 70)), "bridge_from_neck": 169,
}  # fmt: skip


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


# The outline


@given(
    widths=st.lists(st.floats(40, 220), min_size=3, max_size=8), length=st.floats(250, 600),
)  # fmt: skip
@settings(max_examples=20)
def test_outline_is_the_library_spline_with_mirrored_ends(
    widths: list[float], length: float
) -> None:
    xs = np.linspace(0, length, len(widths) + 2)
    ys = np.array([0.0, *widths, 0.0])
    outline = outline_through(list(zip(xs, ys, strict=True)))
    knots = np.concatenate([[0], np.cumsum(np.hypot(np.diff(xs), np.diff(ys)))])
    assert outline.knots == pytest.approx(knots)
    spline_x = CubicSpline(knots, xs, bc_type=((1, 0), (1, 0)))
    spline_y = CubicSpline(knots, ys, bc_type=((2, 0), (2, 0)))
    lengths = pieces_of(outline)
    for piece in range(len(knots) - 1):
        for share in (0.0, 0.3, 0.77, 1.0):
            u = knots[piece] + share * (knots[piece + 1] - knots[piece])
            place = place_on(outline, piece, share)
            assert place.x == pytest.approx(float(spline_x(u)), abs=1e-7)
            assert place.y == pytest.approx(float(spline_y(u)), abs=1e-7)
            dx, dy = float(spline_x(u, 1)), float(spline_y(u, 1))
            speed = math.hypot(dx, dy)
            if speed > 1e-3:
                assert place.along_x == pytest.approx(dx / speed, abs=1e-6)
                assert place.along_y == pytest.approx(dy / speed, abs=1e-6)
        ends = knots[piece], knots[piece + 1]
        wanted = quad(lambda u: math.hypot(spline_x(u, 1), spline_y(u, 1)), *ends)[0]
        assert lengths[piece][0] == pytest.approx(wanted, rel=4e-3)
        under = quad(lambda u: float(spline_y(u) * spline_x(u, 1)), *ends)[0]
        assert lengths[piece][1] == pytest.approx(under, rel=1e-9, abs=1e-6)


def test_a_round_body_has_the_round_of_a_circle() -> None:
    """Stations of a circle of 200 mm: its length, its area, and bevels alike all round."""
    places = [200 - 200 * math.cos(math.pi * number / 14) for number in range(1, 14)]
    rows = [(x, math.sqrt(200**2 - (x - 200) ** 2)) for x in places]
    v = values(
        body_length=400, outline=rows, depth_neck_block=100, depth_end_block=100,
        bridge_from_neck=200, dish_radius=3000, back_dish_radius=2000,
    )  # fmt: skip
    assert v["side_length"] == pytest.approx(200 * math.pi, rel=2e-5)
    assert v["rim_length"] == pytest.approx(400 * math.pi, rel=2e-5)
    assert v["area"] == pytest.approx(math.pi * 200**2 / 100, rel=5e-5)
    # On a circle round the crown the rim is level, and the bevel is asin(r/R).
    for row in v["stations"]:
        assert row["depth"] == pytest.approx(100, abs=2e-4)
        assert row["top_edge"] == pytest.approx(0, abs=2e-4)
        assert row["back_edge"] == pytest.approx(0, abs=2e-4)
        assert row["top_bevel"] == pytest.approx(math.degrees(math.asin(200 / 3000)), abs=0.01)
        assert row["back_bevel"] == pytest.approx(math.degrees(math.asin(0.1)), abs=0.01)
    assert v["top_crown"] == pytest.approx(3000 - math.sqrt(3000**2 - 200**2))
    assert v["bridge_rise"] == pytest.approx(v["top_crown"])
    assert v["shallowest"] == pytest.approx(100, abs=1e-3)


# The balls


@given(
    length=st.floats(200, 600), neck=st.floats(40, 120), tail=st.floats(40, 140),
    radius=st.floats(1600, 20000), sense=st.sampled_from([1, -1]),
)  # fmt: skip
@settings(max_examples=50)
def test_a_ball_meets_both_blocks_and_bulges_its_own_way(
    length: float, neck: float, tail: float, radius: float, sense: int
) -> None:
    ball = ball_over(length, -neck, -tail, radius, sense)
    assert height_on(ball, 0, 0) == pytest.approx(-neck, abs=1e-7)
    assert height_on(ball, length, 0) == pytest.approx(-tail, abs=1e-7)
    middle = height_on(ball, length / 2, 0)
    assert sense * (middle + (neck + tail) / 2) > 0
    chord = math.hypot(length, neck - tail)
    # Square to the chord the crown stands off by the sagitta.
    foot = np.array([length / 2, -(neck + tail) / 2])
    away = float(np.linalg.norm(foot - np.array([ball.centre_x, ball.centre_z])))
    assert radius - away == pytest.approx(radius - math.sqrt(radius**2 - chord**2 / 4))
    for x, y in ((100.0, 90.0), (length - 30, -60.0)):
        z = height_on(ball, x, y)
        to_centre = math.dist((x, y, z), (ball.centre_x, 0, ball.centre_z))
        assert to_centre == pytest.approx(radius)


@given(x=st.floats(0, 500), y=st.floats(-200, 200), turn=st.floats(0, 2 * math.pi))
@settings(max_examples=40)
def test_fall_is_the_slope_outwards(x: float, y: float, turn: float) -> None:
    out = (math.cos(turn), math.sin(turn))
    for sense in (1, -1):
        ball = ball_over(505, -100, -120, 4600, sense)
        step = 1e-3
        ahead = height_on(ball, x + step * out[0], y + step * out[1])
        behind = height_on(ball, x - step * out[0], y - step * out[1])
        slope = math.degrees(math.atan(-sense * (ahead - behind) / (2 * step)))
        assert fall_outwards(ball, x, y, *out) == pytest.approx(slope, abs=1e-4)


# The whole rim


@given(
    top=st.floats(1500, 20000), back=st.floats(1500, 20000), neck=st.floats(60, 130),
    tail=st.floats(60, 130),
)  # fmt: skip
@settings(max_examples=30)
def test_the_rim_stands_on_its_two_balls(top: float, back: float, neck: float, tail: float) -> None:
    v = values(dish_radius=top, back_dish_radius=back, depth_neck_block=neck, depth_end_block=tail)
    upper, lower = ball_over(505, 0, 0, top, 1), ball_over(505, -neck, -tail, back, -1)
    rows = v["stations"]
    assert [row["station"] for row in rows] == list(range(14))
    for row in rows:
        x, y = row["from_neck"], row["half_width"]
        assert row["top_edge"] == pytest.approx(height_on(upper, x, y), abs=1e-9)
        assert row["depth"] == pytest.approx(height_on(upper, x, y) - height_on(lower, x, y))
        straight = neck + (tail - neck) * x / 505
        assert row["back_edge"] == pytest.approx(-height_on(lower, x, y) - straight, abs=1e-8)
        assert v["shallowest"] - 1e-9 <= row["depth"] <= v["deepest"] + 1e-9
        assert row["top_bevel"] <= v["top_bevel_most"] + 1e-12
        assert row["back_bevel"] <= v["back_bevel_most"] + 1e-12
    assert rows[0]["depth"] == pytest.approx(neck)
    assert rows[-1]["depth"] == pytest.approx(tail)
    assert rows[-1]["along"] == pytest.approx(v["side_length"])
    assert math.tan(math.radians(v["taper_angle"])) == pytest.approx((tail - neck) / 505)
    assert v["taper_100"] == pytest.approx(100 * (tail - neck) / 505)
    assert v["back_chord"] == pytest.approx(math.hypot(505, tail - neck))
    half = v["back_chord"] / 2
    assert v["back_crown"] == pytest.approx(back - math.sqrt(back**2 - half**2), abs=1e-9)
    assert v["back_across"] == pytest.approx(back - math.sqrt(back**2 - 197.5**2), abs=1e-9)
    assert v["top_across"] == pytest.approx(top - math.sqrt(top**2 - 197.5**2), abs=1e-9)
    assert v["top_arc"] == pytest.approx(2 * top * math.asin(505 / 2 / top))
    assert v["bridge_rise"] == pytest.approx(height_on(upper, 287.3, 0), abs=1e-9)
    assert v["blank_depth"] == pytest.approx(v["deepest"] + 3)


def test_flat_plates_leave_a_straight_taper() -> None:
    v = values(dish_radius=1_000_000, back_dish_radius=1_000_000)
    for row in v["stations"]:
        assert row["depth"] == pytest.approx(100 + 20 * row["from_neck"] / 505, abs=0.07)
        assert row["top_bevel"] == pytest.approx(0, abs=0.02)
    assert (v["shallowest"], v["shallowest_at"]) == (pytest.approx(100, abs=0.01), 0)
    assert v["deepest"] == pytest.approx(120, abs=0.01)


def test_the_deepest_place_is_told_where_it_lies_inside() -> None:
    v = values(depth_neck_block=110, depth_end_block=112)
    assert v["deepest"] > 112.5
    assert 100 < v["deepest_at"] < 300
    assert "deepest" in v["answer"]
    assert "but deepest" not in values()["answer"]
    mirrored = values(depth_neck_block=130, depth_end_block=100)
    assert "but deepest" not in mirrored["answer"]


def test_stations_may_come_in_any_order() -> None:
    rows = [(x, y) for x, y in reversed(SMALL["outline"])]  # type: ignore[call-overload]
    assert values(**SMALL)["area"] == values(**{**SMALL, "outline": rows})["area"]
    assert values(**SMALL)["widest"] == 214


def test_sawn_depth_adds_both_edges() -> None:
    found = worked(edge_spare=2.5)
    for row in found.tables["rim"]:
        assert row["sawn"] == pytest.approx(row["depth"] + 5)


# Refusals, cautions, drawings


def test_refusals_name_the_input_and_the_way_out() -> None:
    rows = [list(row) for row in SMALL["outline"]]  # type: ignore[attr-defined]
    beyond = refusal(**{**SMALL, "outline": [*rows, [280, 30]]})
    assert (beyond.input, "tail of the body" in beyond.why) == ("outline", True)
    values(**{**SMALL, "outline": [*rows, [279.9, 20]]})
    twice = refusal(**{**SMALL, "outline": [*rows, [200.9, 107]]})
    assert (twice.input, "keep one" in twice.why) == ("outline", True)
    values(**{**SMALL, "outline": [*rows, [201, 107]]})
    assert refusal(bridge_from_neck=505).input == "bridge_from_neck"
    assert refusal(depth_neck_block=40, depth_end_block=166.3).input == "depth_end_block"
    values(depth_neck_block=40, depth_end_block=166.2)
    values(body_length=504, depth_neck_block=40, depth_end_block=166)  # just a quarter
    thin = refusal(
        depth_neck_block=30, depth_end_block=30, dish_radius=1500, back_dish_radius=1500,
        body_length=300, outline=((20, 150), (150, 300), (280, 150)), bridge_from_neck=150,
    )  # fmt: skip
    assert (thin.input, "look over depths" in thin.why) == ("depth_neck_block", True)


def test_an_outline_that_swings_back_is_told() -> None:
    wild = worked(outline=((200, 30), (202, 290), (210, 40)))
    assert wild.values["swings"] > 0
    assert any("swings back" in one for one in wild.cautions)
    assert values()["swings"] == 0
    assert not any("swings back" in one for one in worked().cautions)


def test_caution_for_a_steep_lining() -> None:
    assert any("linings lose most" in one for one in worked().cautions)
    calm = worked(depth_neck_block=110, depth_end_block=112)
    assert not any("linings lose most" in one for one in calm.cautions)


@given(
    length=st.floats(200, 650), widths=st.lists(st.floats(5, 300), min_size=3, max_size=6),
    top=st.floats(1500, 1e6), back=st.floats(1500, 1e6), tail=st.floats(60, 130),
)  # fmt: skip
@settings(max_examples=40)
def test_drawings_stay_on_their_paper(
    length: float, widths: list[float], top: float, back: float, tail: float
) -> None:
    count = len(widths)
    rows = [(length * (n + 1) / (count + 1), width) for n, width in enumerate(widths)]
    found = work_out(
        calculator,
        {"body_length": length, "outline": rows, "dish_radius": top, "back_dish_radius": back,
         "depth_end_block": tail, "bridge_from_neck": 190},
    )  # fmt: skip
    if isinstance(found, Answer):
        for system in ("metric", "inch"):
            say = Say(calculator, found.values, system)
            for drawing in calculator.drawings:
                assert outside(drawing.function(found.values, say)) == []
