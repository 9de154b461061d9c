"""What must hold of a kerfed lining, whatever the body."""

import math
from typing import Any

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from scipy.optimize import brentq

from calculators.bending._kerf_spacing_work import web_for_stretch, web_stretch_percent
from calculators.bending.kerf_spacing import calculator
from calculators.engine.compute import Answer, work_out
from calculators.engine.inputs import Refused

RADIUS = st.floats(25, 800)


def answer(**given_inputs: Any) -> Answer:
    worked = work_out(calculator, given_inputs)
    assert isinstance(worked, Answer), worked
    return worked


def one(radius: float, length: float = 100, **more: Any) -> dict[str, Any]:
    return {**answer(places=[["c", radius, length]], **more).values}


def refusal(**given_inputs: Any) -> Refused:
    worked = work_out(calculator, given_inputs)
    assert isinstance(worked, list)
    return worked[0]


# Closing


def mouth_of_blocks(radius: float, width: float, web: float, kerf: float, spacing: float) -> float:
    """The mouth of two teeth placed as stiff blocks on their circle, measured between corners."""
    middle, depth = radius - web / 2, width - web / 2
    # Half a spacing of the web's middle line: straight tooth, then the web's arc.
    half = spacing / middle / 2
    tooth = (spacing - kerf) / 2
    # The corner at the mouth, in a frame whose upright is the tooth's; then the frame is turned.
    corner_across, corner_up = tooth, middle - depth
    across = corner_across * math.cos(-half) + corner_up * math.sin(-half)
    return -2 * across


@given(RADIUS, st.floats(0.4, 1.2), st.floats(2, 8))
@settings(max_examples=60)
def test_the_mouth_is_what_stiff_blocks_leave(radius: float, kerf: float, spacing: float) -> None:
    assume(spacing > kerf + 0.5 and spacing < radius / 5)
    v = one(radius, kerf_width=kerf, kerf_spacing=spacing)
    blocks = mouth_of_blocks(radius, 6.5, 0.7, kerf, spacing)
    turn = math.radians(v["turn"])
    assert v["mouth"] == pytest.approx(blocks, abs=spacing * turn**2 / 6 + 1e-6)
    assert turn == pytest.approx(spacing / (radius - 0.35))


@given(st.floats(4, 12), st.floats(0.2, 1.2), st.floats(0.3, 1.5), st.floats(2, 10))
@settings(max_examples=60)
def test_at_the_closing_radius_the_inner_arc_has_lost_just_the_kerfs(
    width: float, web: float, kerf: float, spacing: float
) -> None:
    assume(spacing > kerf + 0.5)
    shape = {"lining_width": width, "web": web, "kerf_width": kerf, "kerf_spacing": spacing}
    closes = one(500, **shape)["closes_radius"]
    outer, inner = closes - web / 2, closes - width
    assert kerf == pytest.approx(spacing * (outer - inner) / outer)
    if max(1.5 * width, spacing, 15) < closes < 2000:
        v = one(closes, **shape)
        assert v["mouth"] == pytest.approx(0, abs=1e-9)
        assert v["close_spacing"] == pytest.approx(spacing)


@given(RADIUS, st.floats(0, 0.5))
@settings(max_examples=40)
def test_sawn_at_the_closing_spacing_it_stays_open_as_asked(radius: float, left: float) -> None:
    spacing = one(radius, mouth_left=left)["close_spacing"]
    assume(1.1 < spacing < 25 and spacing < radius)
    v = one(radius, mouth_left=left, kerf_spacing=spacing)
    assert v["mouth"] == pytest.approx(left, abs=1e-9)


@given(RADIUS, st.floats(10, 1000), st.floats(0, 0.5))
@settings(max_examples=40)
def test_the_kerfs_that_close_take_out_the_difference_of_the_arcs(
    radius: float, length: float, left: float
) -> None:
    worked = answer(places=[["c", radius, length]], mouth_left=left)
    row = worked.tables["curves"][0]
    angle = length / radius
    assert row["to_close"] * (0.6 - left) == pytest.approx(angle * (6.5 - 0.35))
    strip = angle * (radius - 0.35)
    assert row["kerfs"] == math.ceil(strip / 6 - 1e-9)


def test_a_whole_number_of_kerfs_is_not_rounded_up_for_the_last_bits() -> None:
    rows = answer(places=[["c", 100.35, 100.35 * 0.6]]).tables["curves"]
    assert rows[0]["kerfs"] == 10


# Teeth


@given(RADIUS, st.floats(2, 12))
@settings(max_examples=60)
def test_the_gap_behind_a_tooth_is_the_arc_over_its_chord(radius: float, spacing: float) -> None:
    v = one(radius, kerf_spacing=spacing, waist_radius=radius)
    flat = spacing - 0.6
    assert v["flat"] == pytest.approx(flat)
    half_angle = math.asin(flat / 2 / radius)
    assert v["sag"] == pytest.approx(radius * (1 - math.cos(half_angle)), rel=1e-6)
    assert v["sag"] == pytest.approx(flat**2 / (8 * radius), rel=0.05)
    # At the waist the flat touches with its middle and its ends stand off the circle.
    ends = math.dist((0, 0), (flat / 2, radius)) - radius
    assert v["waist_sag"] == pytest.approx(ends, rel=1e-6)


@given(RADIUS, st.floats(0.01, 0.3))
@settings(max_examples=40)
def test_at_the_spacing_allowed_the_gap_is_just_that(radius: float, gap: float) -> None:
    spacing = one(radius, gap_allowed=gap)["sag_spacing"]
    assume(1.1 < spacing < min(25, radius))
    assert one(radius, kerf_spacing=spacing)["sag"] == pytest.approx(gap)


# The web


@given(RADIUS, st.floats(0.3, 1.2), st.floats(1.2, 10))
@settings(max_examples=60)
def test_the_turn_is_shared_by_the_hinge(radius: float, web: float, spacing: float) -> None:
    v = one(radius, web=web, kerf_spacing=spacing)
    length = min(0.6 + 2.5 * web, spacing)
    assert v["hinge"] == pytest.approx(length)
    bent_to = length / (spacing / (radius - web / 2))  # the radius the hinge itself has
    assert v["stretch"] == pytest.approx(100 * web / 2 / bent_to)
    assert v["stretch"] == pytest.approx(web_stretch_percent(web, 0.6, spacing, radius))
    assert v["even_stretch"] == pytest.approx(100 * web / (2 * radius - web))
    assert v["even_stretch"] <= v["stretch"] * (1 + 1e-9)
    if spacing <= 0.6 + 2.5 * web:
        assert v["stretch"] == pytest.approx(v["even_stretch"])


@given(RADIUS, st.floats(0.5, 4))
@settings(max_examples=40)
def test_at_the_web_spacing_the_web_just_holds(radius: float, takes: float) -> None:
    spacing = one(radius, web_stretch=takes)["web_spacing"]
    assume(0.6 + 2.5 * 0.7 < spacing < min(25, radius))
    v = one(radius, web_stretch=takes, kerf_spacing=spacing)
    assert v["stretch"] == pytest.approx(takes)


@given(st.floats(20, 80), st.floats(0.4, 1.5), st.floats(3, 9))
@settings(max_examples=40)
def test_thinned_as_told_the_web_just_holds(radius: float, takes: float, spacing: float) -> None:
    v = one(radius, web=1, web_stretch=takes, kerf_spacing=spacing)
    assert ("web_may_be" in v) == (v["stretch"] > takes)
    if "web_may_be" in v:
        assert web_stretch_percent(v["web_may_be"], 0.6, spacing, radius) == pytest.approx(takes)
        root: float = brentq(
            lambda web: web_stretch_percent(web, 0.6, spacing, radius) - takes, 1e-9, 1
        )
        assert web_for_stretch(takes, 0.6, spacing, radius, 1.0) == pytest.approx(root)


# The waist


@given(RADIUS, st.floats(2, 9))
@settings(max_examples=40)
def test_at_the_waist_kerfs_open_as_far_as_they_would_close(radius: float, spacing: float) -> None:
    v = one(radius + 0.35, waist_radius=radius - 0.35, kerf_spacing=spacing)
    assert v["waist_mouth"] - 0.6 == pytest.approx(0.6 - v["mouth"])
    assert v["waist_stretch"] == pytest.approx(v["stretch"])


# The answer


def test_the_example_by_hand() -> None:
    v = answer().values
    assert v["tight_place"] == "cutaway horn"
    assert v["kerf_depth"] == pytest.approx(5.8)
    assert v["closes_radius"] == pytest.approx(6 * 6.15 / 0.6 + 0.35)
    assert v["mouth"] == pytest.approx(0.6 - 6 * 6.15 / 44.65)
    assert v["widest"] == pytest.approx(0.6 * 44.65 / 6.15)
    assert v["stretch"] == pytest.approx(100 * 0.7 * 6 / (2 * 2.35 * 44.65))
    assert v["sag"] == pytest.approx(5.4**2 / 8 / 45, rel=1e-3)
    assert v["waist_stretch"] == pytest.approx(100 * 0.7 * 6 / (2 * 2.35 * 107.35))
    words = [row["word"] for row in answer().tables["curves"]]
    assert words == ["goes", "goes", "kerfs close"]


def test_one_kerf_more_between_each_two_goes_round_the_horn() -> None:
    worked = answer(kerf_spacing=3)
    assert worked.values["verdict"].startswith("Goes round cutaway horn")
    assert [row["word"] for row in worked.tables["curves"]] == ["goes"] * 3


@given(st.lists(RADIUS, min_size=1, max_size=6), st.floats(2, 9), st.floats(0.3, 4))
@settings(max_examples=40)
def test_the_table_agrees_with_each_curve_alone(
    radii: list[float], spacing: float, takes: float
) -> None:
    places = [[f"p{n}", radius, 100] for n, radius in enumerate(radii)]
    shape = {"kerf_spacing": spacing, "mouth_left": 0.05, "web_stretch": takes}
    worked = answer(places=places, **shape)
    for row, radius in zip(worked.tables["curves"], radii, strict=True):
        alone = one(radius, **shape)
        for column, name in (("open", "mouth"), ("behind", "sag"), ("web_stretches", "stretch"),
                             ("at_most", "widest")):  # fmt: skip
            assert row[column] == pytest.approx(alone[name]), column
        assert alone["widest"] == min(
            alone["close_spacing"], alone["sag_spacing"], alone["web_spacing"]
        )
    assert worked.values["tight_radius"] == min(radii)


@pytest.mark.parametrize(
    ("inputs", "word", "start"),
    [
        ({}, "goes", "Goes round c"),
        ({"kerf_spacing": 9.36}, "kerfs close", "Too wide at c: the kerfs close at 96.3 mm"),
        ({"mouth_left": 0.25}, "kerfs close", "Too wide at c: the kerfs stay open only 0.21 mm"),
        ({"mouth_left": 0.21}, "goes", "Goes round c"),
        ({"web_stretch": 0.9}, "web breaks", "The web breaks at c"),
        ({"web_stretch": 0.94}, "goes", "Goes round c"),
        ({"gap_allowed": 0.0375}, "teeth too long", "Teeth too long at c"),
        ({"gap_allowed": 0.0385}, "goes", "Goes round c"),
        ({"web_stretch": 0.36}, "web breaks", "No spacing helps at c"),
        ({"web_stretch": 0.38}, "web breaks", "The web breaks at c"),
        ({"gap_allowed": 0.005, "kerf_width": 1.2}, "teeth too long", "Teeth too long"),
        (
            {"kerf_width": 0.2, "lining_width": 14, "places": [["c", 50, 9]]},
            "kerfs close",
            "No spacing does it at c",
        ),
        (
            {"kerf_width": 0.3, "lining_width": 14, "places": [["c", 51, 9]]},
            "kerfs close",
            "Too wide at c",
        ),
    ],
)
def test_the_words_follow_the_figures(inputs: dict[str, Any], word: str, start: str) -> None:
    worked = answer(**{"places": [["c", 95, 100]], **inputs})
    assert worked.values["verdict"].startswith(start), worked.values["verdict"]
    assert worked.tables["curves"][0]["word"] == word


@pytest.mark.parametrize(
    ("inputs", "start"),
    [
        ({}, "Goes"),
        ({"waist_radius": 60}, "Just goes"),
        ({"waist_radius": 55}, "The web breaks"),
        ({"waist_radius": 107, "gap_allowed": 0.03, "web_stretch": 3}, "Teeth too long"),
    ],
)
def test_the_words_of_the_waist(inputs: dict[str, Any], start: str) -> None:
    plain = {"gap_allowed": 0.5, **inputs}
    assert answer(**plain).values["waist_words"].startswith(start)


@pytest.mark.parametrize(
    ("inputs", "blamed"),
    [
        ({"web": 2.11, "lining_width": 3}, "web"),
        ({"kerf_spacing": 1.2, "kerf_width": 0.8}, "kerf_spacing"),
        ({"mouth_left": 0.6}, "mouth_left"),
        ({"places": [["a", 50, 100], ["b", 20, 100]], "lining_width": 14}, "places"),
        ({"places": [["b", 20, 100]], "kerf_spacing": 21}, "places"),
    ],
)
def test_what_cannot_be_is_refused(inputs: dict[str, Any], blamed: str) -> None:
    found = refusal(**inputs)
    assert found.input == blamed
    assert found.why and found.allowed


def test_the_ends_of_what_is_allowed_are_read() -> None:
    assert one(21, lining_width=14)["tight_radius"] == 21
    assert one(50, web=2.09, lining_width=3)["web"] == 2.09
    assert one(50, kerf_spacing=1.3, kerf_width=0.8)["flat"] == pytest.approx(0.5)


def test_cautions_come_when_they_should() -> None:
    def said(**inputs: Any) -> str:
        return " ".join(answer(**inputs).cautions)

    assert "falls apart" in said(web=0.3) and "falls apart" not in said()
    assert "foot of the kerf" in said() and "foot of the kerf" not in said(waist_radius=125)
