"""What must hold of bent sides, whatever the shop."""

import math
from typing import Any

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from scipy.integrate import quad
from scipy.optimize import brentq

from calculators.bending.side_bending import calculator
from calculators.engine.compute import Answer, work_out
from calculators.engine.inputs import Refused
from calculators.laws import bent_strip

THICKNESS = st.floats(0.6, 5)
RADIUS = st.floats(10, 1500)


def answer(**given_inputs: Any) -> Answer:
    worked = work_out(calculator, given_inputs)
    assert isinstance(worked, Answer), worked
    return worked


def values(**given_inputs: Any) -> dict[str, Any]:
    return answer(**given_inputs).values


def one(radius: float, thickness: float, **more: Any) -> dict[str, Any]:
    plain = {"side_thickness": thickness, "places": [["c", radius, 0]], "spring_trial": "none"}
    return {**values(**{**plain, **more})}


def refusal(**given_inputs: Any) -> Refused:
    worked = work_out(calculator, given_inputs)
    assert isinstance(worked, list)
    return worked[0]


# Strain


def arc(radius: float) -> float:
    """Length of an arc of 1.3 rad, by quadrature."""
    length: float = quad(lambda s: math.hypot(radius * math.cos(s), radius * math.sin(s)), 0, 1.3)[
        0
    ]
    return length


@given(THICKNESS, RADIUS)
@settings(max_examples=60)
def test_the_faces_are_as_long_as_their_arcs(thickness: float, radius: float) -> None:
    v = one(radius, thickness)
    middle = arc(radius + thickness / 2)
    assert v["stretch"] == pytest.approx(100 * (arc(radius + thickness) / middle - 1), rel=1e-7)
    assert v["shrink"] == pytest.approx(100 * (1 - arc(radius) / middle), rel=1e-6)
    assert v["free_stretch"] == v["stretch"]
    assert bent_strip.face_stretch_percent(thickness, radius) == pytest.approx(v["stretch"])


@given(THICKNESS, RADIUS, st.floats(0.2, 1.9), st.floats(5, 35))
@settings(max_examples=60)
def test_behind_a_slat_the_outer_face_is_held_and_the_inner_gives(
    thickness: float, radius: float, held: float, most: float
) -> None:
    v = one(radius, thickness, slat="held", held_stretch=held, most_shrink=most)
    free = one(radius, thickness)["stretch"]
    assert v["stretch"] == pytest.approx(min(free, held))
    outer = 1 + v["stretch"] / 100
    assert 1 - v["shrink"] / 100 == pytest.approx(outer * radius / (radius + thickness))
    assert bent_strip.inner_shrink_percent(thickness, radius, v["stretch"]) == pytest.approx(
        v["shrink"]
    )
    assert v["use"] == pytest.approx(max(100 * v["shrink"] / most, 50 * v["stretch"]))
    if free <= held:
        assert v["shrink"] == pytest.approx(free)
    else:
        assert v["shrink"] > free


@given(THICKNESS, RADIUS, st.floats(0.5, 6))
@settings(max_examples=40)
def test_thinned_as_told_or_bent_as_told_it_just_bends(
    thickness: float, radius: float, takes: float
) -> None:
    v = one(radius, thickness, stretch_hot=takes)
    assert v["allowed"] == takes
    assert v["use"] == pytest.approx(100 * v["stretch"] / takes)
    if 0.5 <= v["thin_to"] <= 6:
        assert one(radius, v["thin_to"], stretch_hot=takes)["stretch"] == pytest.approx(takes)
    if 8 <= v["least_radius"] <= 2000:
        tight = one(v["least_radius"], thickness, stretch_hot=takes)
        assert tight["stretch"] == pytest.approx(takes)
        assert tight["use"] == pytest.approx(100)


@given(THICKNESS, RADIUS, st.floats(0.3, 1.9), st.floats(3, 35))
@settings(max_examples=40)
def test_behind_a_slat_too(thickness: float, radius: float, held: float, most: float) -> None:
    slat = {"slat": "held", "held_stretch": held, "most_shrink": most}
    v = one(radius, thickness, **slat)
    if 0.5 <= v["thin_to"] <= 6:
        assert one(radius, v["thin_to"], **slat)["shrink"] == pytest.approx(most)
    if 8 <= v["least_radius"] <= 2000:
        assert one(v["least_radius"], thickness, **slat)["shrink"] == pytest.approx(most)


@given(THICKNESS, RADIUS, st.floats(1.05, 2))
@settings(max_examples=40)
def test_thicker_or_tighter_asks_more(thickness: float, radius: float, more: float) -> None:
    v = one(radius, thickness)
    assert one(radius, min(6, thickness * more))["stretch"] > v["stretch"]
    if radius * more <= 2000:
        assert one(radius * more, thickness)["stretch"] < v["stretch"]
    # Only thickness over radius counts.
    assume(thickness * more <= 6 and radius * more <= 2000)
    assert one(radius * more, thickness * more)["stretch"] == pytest.approx(v["stretch"])


# What the wood takes


@pytest.mark.parametrize(
    ("wood", "psi", "million_psi"),
    [("mahogany", 11500, 1.50), ("rosewood", 16900, 1.78), ("brazilian", 19000, 1.88),
     ("maple", 15800, 1.83), ("red_maple", 13400, 1.64), ("walnut", 14600, 1.68),
     ("sapele", 15300, 1.82), ("spanish_cedar", 11500, 1.44)],
)  # fmt: skip
def test_dry_wood_takes_strength_over_stiffness(wood: str, psi: float, million_psi: float) -> None:
    v = values(state="dry", wood=wood)
    assert v["allowed"] == pytest.approx(psi / million_psi / 1e4)
    assert v["rupture"] == pytest.approx(psi * 0.00689475729)
    assert v["elasticity"] == pytest.approx(million_psi * 6894.75729)


@given(st.floats(0.6, 5), st.floats(20, 200), st.floats(20, 100))
@settings(max_examples=30)
def test_an_offcut_that_broke_sets_the_limit(thick: float, radius: float, share: float) -> None:
    offcut = {"state": "offcut", "break_thickness": thick, "break_radius": radius}
    v = values(**offcut, break_share=share)
    assert v["break_stretch"] == pytest.approx(one(radius, thick)["stretch"])
    assert v["allowed"] == pytest.approx(v["break_stretch"] * share / 100)
    if thick <= 3:
        again = one(radius, thick, **offcut, break_share=100)
        assert again["use"] == pytest.approx(100)


# Springing back


def rest_radius(bent: float, thickness: float, yields: float) -> float:
    """Where a strip rests whose layers yield at a strain, bent to a radius and let go."""
    half, limit = thickness / 2, yields * bent

    def moment(y: float) -> float:
        return min(y / bent, yields) * y

    m = 2 * quad(moment, 0, half, points=[min(limit, half)])[0]
    return 1 / (1 / bent - m / (thickness**3 / 12))


@given(st.floats(40, 250))
@settings(max_examples=25)
def test_a_strip_that_has_yielded_springs_back_by_one_curvature(wanted: float) -> None:
    trial = rest_radius(90, 2.1, 0.0005)
    v = values(places=[["c", wanted, 0]], side_thickness=2.1, trial_former=90, trial_rest=trial)
    true: float = brentq(lambda r: rest_radius(r, 2.1, 0.0005) - wanted, 0.5 * wanted, wanted)
    assert v["tight_bent"] < wanted
    assert wanted - v["tight_bent"] == pytest.approx(wanted - true, rel=0.02)


def test_the_trial_itself_comes_out_again_and_no_spring_means_no_over_bend() -> None:
    v = values(places=[["c", 103, 0]])
    assert v["tight_bent"] == pytest.approx(100)
    assert v["spring"] == pytest.approx(1000 / 100 - 1000 / 103)
    still = values(trial_rest=100)
    assert still["tight_bent"] == pytest.approx(45)
    assert still["spring_words"].startswith("None to speak of")
    assert values()["spring_words"].startswith("Bend cutaway to 44.42 mm")
    assert "tight_bent" in one(45, 2) and one(45, 2)["tight_bent"] == 45
    assert values(spring_trial="none")["spring_words"].startswith("Not measured")


def test_over_bending_stretches_more() -> None:
    assert values()["stretch"] > values(spring_trial="none")["stretch"]


# The curves


def test_the_example_by_hand() -> None:
    v = values()
    bent = 1 / (1 / 45 + 1 / 100 - 1 / 103)
    assert v["tight_place"] == "cutaway"
    assert v["tight_thickness"] == pytest.approx(1.8)
    assert v["stretch"] == pytest.approx(100 * 0.9 / (bent + 0.9))
    assert v["thin_to"] == pytest.approx(2 * bent * 0.02 / 0.98)
    assert v["least_radius"] == pytest.approx(1.8 * 0.98 / 0.04)
    assert v["verdict"].startswith("Just goes, cutaway")


def test_the_cutaway_asks_about_twice_what_the_waist_does() -> None:
    rows = answer(spring_trial="none").tables["curves"]
    asked = {row["place"]: row["stretch"] for row in rows}
    assert asked["cutaway"] / asked["waist"] == pytest.approx(2, abs=0.05)


@given(st.lists(st.tuples(RADIUS, st.floats(0, 0.5)), min_size=1, max_size=8))
@settings(max_examples=40)
def test_the_table_agrees_with_each_curve_alone(places: list[tuple[float, float]]) -> None:
    for slat in ("none", "held"):
        rows = [[f"p{n}", *place] for n, place in enumerate(places)]
        worked = answer(side_thickness=2, places=rows, slat=slat, spring_trial="measured")
        table = worked.tables["curves"]
        for row, (radius, thinned) in zip(table, places, strict=True):
            alone = values(side_thickness=2 - thinned, places=[["c", radius, 0]], slat=slat)
            assert row["bent"] == pytest.approx(alone["tight_bent"])
            assert row["bent"] == pytest.approx(
                bent_strip.former_radius_mm(radius, 10 - 1000 / 103)
            )
            assert row["stretch"] == pytest.approx(alone["stretch"])
            assert row["may_be"] == pytest.approx(alone["thin_to"])
            assert row["thickness"] == pytest.approx(2 - thinned)
            if slat == "held":
                assert row["shrink"] == pytest.approx(alone["shrink"])
        worst = max(table, key=lambda row: row["thickness"] / row["bent"])
        assert worked.values["tight_place"] == worst["place"]
        assert worked.values["stretch"] == pytest.approx(max(row["stretch"] for row in table))


@pytest.mark.parametrize(
    ("thickness", "word", "start"),
    [(1.36, "goes", "Goes"), (1.4, "just goes", "Just goes"), (1.84, "just goes", "Just goes"),
     (1.86, "too tight", "Too tight")],
)  # fmt: skip
def test_the_words_follow_the_share_used(thickness: float, word: str, start: str) -> None:
    # At 45 mm and 2 % the limit is 1.837 mm, three quarters of the stretch 1.371 mm.
    worked = answer(side_thickness=thickness, places=[["c", 45, 0]], spring_trial="none")
    assert worked.tables["curves"][0]["word"] == word
    assert worked.values["verdict"].startswith(start)
    assert ("stiffness_left" in worked.values) == (word == "too tight")


@pytest.mark.parametrize(
    ("most", "word", "start"),
    [
        (20, "goes", "Goes"),
        (4.9, "goes", "Goes"),
        (4.5, "just goes", "Just goes"),
        (3.4, "too tight", "Too tight"),
    ],
)
def test_and_behind_a_slat(most: float, word: str, start: str) -> None:
    worked = answer(
        side_thickness=2.4, places=[["c", 45, 0]], spring_trial="none", slat="held",
        most_shrink=most,
    )  # fmt: skip
    assert worked.values["shrink"] == pytest.approx(100 * (1 - 1.015 * 45 / 47.4))
    assert worked.tables["curves"][0]["word"] == word
    assert worked.values["verdict"].startswith(start)


@given(THICKNESS, RADIUS, st.floats(0.3, 1.4))
@settings(max_examples=30)
def test_a_slat_that_lets_too_much_through_is_as_good_as_none(
    thickness: float, radius: float, takes: float
) -> None:
    slat = {"slat": "held", "held_stretch": 1.5, "stretch_hot": takes}
    with_slat, free = one(radius, thickness, **slat), one(radius, thickness, stretch_hot=takes)
    for name in ("thin_to", "least_radius"):
        assert with_slat[name] == pytest.approx(free[name])
    assert (with_slat["use"] > 100) == (free["use"] > 100)
    assert any("does not help" in text for text in answer(**slat).cautions)
    row = answer(**slat).tables["curves"][3]
    assert row["may_be"] == pytest.approx(2 * row["bent"] * takes / (100 - takes))
    assert row["word"] == "too tight"


def test_stiffness_goes_with_the_cube_of_the_thickness() -> None:
    v = one(45, 3)
    assert v["stiffness_left"] == pytest.approx(100 * (v["thin_to"] / 3) ** 3)


def test_cautions_come_when_they_should() -> None:
    def said(**inputs: Any) -> str:
        return " ".join(answer(**inputs).cautions)

    assert "No handbook figure" in said() and "No handbook figure" not in said(state="dry")
    assert "springs right back" in said(state="dry") and "springs right back" not in said()
    assert "tight from end to end" in said(slat="held")
    assert "little side is left" in said(stretch_hot=1.2)
    assert "little side is left" not in said(stretch_hot=1.5)
    assert "little side is left" in said(
        side_thickness=1.5, places=[["c", 55, 0]], stretch_hot=1.05
    )
    assert "little side is left" not in said(side_thickness=1.1, places=[["c", 55, 0]])
    assert "far from the radius" not in said()
    assert "far from the radius" not in said(spring_trial="none")
    assert "does not help" not in said() and "does not help" not in said(slat="held")
    assert "far from the radius" in said(places=[["wide", 301, 0]])
    assert "far from the radius" in said(places=[["tight", 30, 0]])
    assert "far from the radius" not in said(places=[["c", 299, 0]])


@pytest.mark.parametrize(
    ("inputs", "blamed"),
    [
        ({"places": [["a", 50, 2]]}, "places[1].thinned"),
        ({"places": [["a", 50, 0], ["b", 50, 1.81]]}, "places[2].thinned"),
        ({"trial_rest": 99}, "trial_rest"),
        ({"slat": "held", "most_shrink": 1}, "most_shrink"),
    ],
)
def test_what_cannot_be_is_refused(inputs: dict[str, Any], blamed: str) -> None:
    found = refusal(**inputs)
    assert found.input == blamed
    assert found.why and found.allowed


def test_the_thinnest_side_is_read() -> None:
    assert values(places=[["a", 500, 1.79]])["tight_thickness"] == pytest.approx(0.31)


def test_sagitta_is_that_of_the_circle() -> None:
    assert bent_strip.sagitta_mm(65, 126) == pytest.approx(49)  # 16, 63, 65
    assert bent_strip.sagitta_mm(50, 100) == pytest.approx(50)
