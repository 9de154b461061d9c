"""Laws of the mitre calculation: ratio of widths, arcs, lengths, gaps."""

import json
import math
import xml.etree.ElementTree as ET
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as some
from scipy.optimize import minimize_scalar

from calculators.edges._mitre_solved import bow_of_mitre, mitre_place_mm, way_of_arc
from calculators.engine import door
from calculators.engine.declaration import Refusal

NAME = "mitre-angle"
widths = some.floats(0.5, 8)
corners = some.floats(35, 145)


def values(**given: Any) -> dict[str, Any]:
    found = door.answer(NAME, given)
    assert "refused" not in found, (given, found)
    steps = {step["name"]: step["value"] for step in found["steps"] if "value" in step}
    for step in found["steps"]:
        steps.update({name: one["value"] for name, one in step.get("gives", {}).items()})
    return {**steps, **{name: one["value"] for name, one in found["results"].items()}}


def rows(table: str, **given: Any) -> list[dict[str, Any]]:
    one = door.answer(NAME, given)["tables"][table]
    return [dict(zip(one["columns"], row, strict=True)) for row in one["rows"]]


def refused(**given: Any) -> dict[str, str]:
    first: dict[str, str] = door.answer(NAME, given)["refused"][0]
    return first


@settings(max_examples=50)
@given(widths, corners)
def test_equal_lines_halve_the_corner(width: float, corner: float) -> None:
    found = values(width_1=width, width_2=width, corner_angle=corner)
    assert found["mitre_1"] == pytest.approx(corner / 2)
    assert found["mitre_2"] == pytest.approx(corner / 2)
    assert found["saw_1"] == pytest.approx(90 - corner / 2)


@settings(max_examples=50)
@given(some.floats(0.8, 8), some.floats(0.8, 8), corners)
def test_both_cuts_cover_their_width_with_one_mitre(a: float, b: float, corner: float) -> None:
    found = values(width_1=a, width_2=b, corner_angle=corner)
    assert found["mitre_1"] + found["mitre_2"] == pytest.approx(corner)
    assert found["saw_1"] + found["mitre_1"] == pytest.approx(90)
    assert found["saw_2"] + found["mitre_2"] == pytest.approx(90)
    assert found["mitre_length"] * math.sin(math.radians(found["mitre_1"])) == pytest.approx(a)
    assert found["mitre_length"] * math.sin(math.radians(found["mitre_2"])) == pytest.approx(b)
    assert found["mitre_length"] * math.cos(math.radians(found["mitre_1"])) == pytest.approx(
        found["tip_along"], abs=1e-9
    )
    assert found["mitre_length"] * math.cos(math.radians(found["mitre_2"])) == pytest.approx(
        40 - found["inner_2"], abs=1e-9
    )


@settings(max_examples=50)
@given(some.floats(1.5, 6), some.floats(1.5, 6), corners, some.floats(1.01, 2))
def test_swapping_and_scaling(a: float, b: float, corner: float, times: float) -> None:
    long = {"corner_angle": corner, "length_2": 300}
    one = values(width_1=a, width_2=b, **long)
    two = values(width_1=b, width_2=a, **long)
    assert one["saw_1"] == pytest.approx(two["saw_2"])
    more = values(width_1=a * times, width_2=b * times, **long)
    assert more["saw_1"] == pytest.approx(one["saw_1"])
    assert more["mitre_length"] == pytest.approx(one["mitre_length"] * times)
    assert values(width_1=a * times, width_2=b, **long)["mitre_1"] > one["mitre_1"]


def test_a_right_angle_by_hand() -> None:
    found = values()
    assert found["saw_1"] == pytest.approx(math.degrees(math.atan(2.1 / 1.5)))
    assert found["inner_1"] == pytest.approx(110 - 2.1)
    assert found["inner_2"] == pytest.approx(40 - 1.5)
    assert found["blank_1"] == 112 and found["blank_2"] == 42
    assert found["gap_both"] == found["gap_1"] + found["gap_2"]
    assert found["error_most"] == min(found["error_1"], found["error_2"])
    table = rows("saw_settings")
    assert [row["line"] for row in table] == ["1", "2"]
    assert [row["line_width"] for row in table] == [1.5, 2.1]
    assert [row["from_square"] for row in table] == [found["saw_1"], found["saw_2"]]
    assert [row["from_length"] for row in table] == [found["mitre_1"], found["mitre_2"]]
    assert [row["outer"] for row in table] == [110, 40]
    assert [row["inner"] for row in table] == [found["inner_1"], found["inner_2"]]
    assert [row["blank"] for row in table] == [found["blank_1"], found["blank_2"]]
    assert rows("saw_settings", joint="round")[1]["line"] == "2, the arc"


def test_a_blunt_corner_may_leave_the_inner_edge_longer() -> None:
    found = values(width_1=3, width_2=0.8, corner_angle=128)
    assert found["inner_1"] > 110
    assert found["blank_1"] == pytest.approx(found["inner_1"] + 2)
    assert found["saw_1"] < 0


def test_the_table_of_corners_agrees_with_the_calculation() -> None:
    table = rows("other_corners")
    assert [row["corner"] for row in table] == list(range(30, 151, 15))
    for row in table:
        found = values(corner_angle=row["corner"])
        assert row["at_1"] == pytest.approx(found["saw_1"])
        assert row["at_2"] == pytest.approx(found["saw_2"])


@settings(max_examples=40)
@given(
    some.floats(0.5, 4), some.floats(0.5, 4), some.floats(50, 130), some.floats(25, 400),
    some.sampled_from(["round", "hollow"]), some.floats(0, 1),
)  # fmt: skip
def test_the_true_mitre_keeps_the_ratio_everywhere(
    a: float, b: float, corner: float, radius: float, side: str, share: float
) -> None:
    bulge = way_of_arc(side)
    x = mitre_place_mm(share, a, b, corner, radius, bulge)
    angle = math.radians(corner)
    centre = np.array([math.sin(angle), -math.cos(angle)]) * bulge * radius
    off = bulge * (radius - np.linalg.norm(np.array([x, share * a]) - centre))
    assert off == pytest.approx(share * b, abs=1e-9)
    assert mitre_place_mm(0, a, b, corner, radius, bulge) == pytest.approx(0, abs=1e-9)


@settings(max_examples=40)
@given(
    some.floats(1, 4), some.floats(1, 4), some.floats(50, 130), some.floats(30, 400),
    some.sampled_from(["round", "hollow"]),
)  # fmt: skip
def test_arcs_beside_scipy_and_their_own_angles(
    a: float, b: float, corner: float, radius: float, side: str
) -> None:
    given = {"joint": side, "width_1": a, "width_2": b, "corner_angle": corner,
             "arc_radius": radius}  # fmt: skip
    found = values(**given)
    bulge = way_of_arc(side)
    tip = mitre_place_mm(1, a, b, corner, radius, bulge)
    assert found["tip_along"] == pytest.approx(tip)
    assert found["end_error"] == pytest.approx(abs(tip - found["straight_tip"]))
    assert found["straight_tip"] == pytest.approx(
        values(**{**given, "joint": "straight"})["tip_along"]
    )

    def away(share: float) -> float:
        return -abs(mitre_place_mm(share, a, b, corner, radius, bulge) - share * tip)

    best = minimize_scalar(away, bounds=(0, 1), method="bounded", options={"xatol": 1e-10})
    assert abs(found["bow"]) == pytest.approx(
        -best.fun * math.sin(math.radians(found["mitre_1"])), rel=1e-6, abs=1e-9
    )
    # The curve's own angle at its two ends, by small steps.
    for at, name in ((0.0, "start_angle"), (1.0, "end_angle")):
        step = 1e-5
        near = [mitre_place_mm(at + s * step, a, b, corner, radius, bulge) for s in (-1, 1)]
        turned = math.degrees(math.atan2(2 * step * a, near[1] - near[0]))
        assert found[name] == pytest.approx(turned, abs=1e-3)


def test_the_inner_edge_of_an_arc_by_its_angle() -> None:
    for side in ("round", "hollow"):
        found = values(joint=side, arc_radius=30, width_1=3, width_2=2)
        bulge = way_of_arc(side)
        ring = 30 - bulge * 2
        from_centre = np.array([found["tip_along"] - bulge * 30, 3.0])
        turned = math.asin(from_centre[1] / ring)
        assert found["inner_2"] == pytest.approx(ring * (40 / 30 - turned))
        assert np.linalg.norm(from_centre) == pytest.approx(ring)


@pytest.mark.parametrize("side", ["round", "hollow"])
def test_a_very_large_arc_is_straight(side: str) -> None:
    straight = values(corner_angle=70)
    arc = values(corner_angle=70, joint=side, arc_radius=5000)
    for name in ("saw_1", "saw_2", "tip_along", "mitre_length", "inner_1"):
        assert arc[name] == pytest.approx(straight[name], abs=0.02)
    assert arc["inner_2"] == pytest.approx(straight["inner_2"], abs=0.05)
    assert abs(arc["bow"]) < 1e-4
    assert "Cut both straight" in arc["curve_words"]
    assert (
        values(joint="round", arc_radius=500)["end_error"]
        > values(joint="round", arc_radius=1000)["end_error"]
    )


def test_which_line_is_filed_hollow() -> None:
    round_arc = {
        "joint": "round",
        "width_1": 6,
        "width_2": 4,
        "corner_angle": 80,
        "arc_radius": 25,
    }
    assert values(**round_arc)["bow"] < 0
    assert "file the arc hollow" in values(**round_arc)["curve_words"]
    hollow = values(**{**round_arc, "joint": "hollow", "gap_limit": 0.05})
    assert hollow["bow"] > 0 and "file line 1 hollow" in hollow["curve_words"]
    assert hollow["bow_size"] == hollow["bow"]
    assert values(**round_arc)["bow_size"] == -values(**round_arc)["bow"]
    assert bow_of_mitre(6, 4, 80, 25, 1) == values(**round_arc)["bow"]


@settings(max_examples=50)
@given(some.floats(0.05, 4), some.sampled_from([-1, 1]))
def test_the_gap_by_turning_the_cut(error: float, sign: int) -> None:
    """A cut at the wrong angle, turned in coordinates about the tip that touches."""
    found = values(angle_error=sign * error, width_1=1.5, width_2=2.1, corner_angle=80)
    for width, mitre, gap in ((1.5, "mitre_1", "gap_1"), (2.1, "mitre_2", "gap_2")):
        cut = math.radians(found[mitre] + sign * error)
        free = np.array([width / math.tan(cut), width])
        true = math.radians(found[mitre])
        away = abs(free[0] * math.sin(true) - free[1] * math.cos(true))
        assert found[gap] == pytest.approx(away)
    assert found["gap_words"].endswith("are off.")
    assert ("inner tip, by" if sign < 0 else "outer tip, by") in found["gap_words"]


@settings(max_examples=50)
@given(widths, corners, some.floats(0.02, 0.3))
def test_the_error_allowed_opens_just_half_the_gap(width: float, corner: float, gap: float) -> None:
    found = values(width_1=width, width_2=width, corner_angle=corner, gap_limit=gap)
    error = found["error_1"]
    worst = max(
        width * math.sin(math.radians(error)) / math.sin(math.radians(found["mitre_1"] + s * error))
        for s in (-1, 1)
    )
    assert worst == pytest.approx(gap / 2)
    assert found["error_2"] == pytest.approx(error)


def test_no_error_no_gap() -> None:
    found = values(angle_error=0)
    assert found["gap_both"] == 0 and "Nowhere" in found["gap_words"]
    assert values(angle_error=2)["gap_both"] > 1.9 * values(angle_error=1)["gap_both"]


def test_what_cannot_be_is_refused() -> None:
    assert refused(width_1=0.2, width_2=30)["input"] == "corner_angle"
    assert refused(length_1=5, width_2=8, width_1=8)["input"] == "length_1"
    assert refused(length_2=5, width_1=8, width_2=8)["input"] == "length_1"
    assert refused(joint="round", arc_radius=8, length_2=49)["input"] == "length_2"
    assert refused(joint="round", arc_radius=8, length_2=40, width_2=10)["input"] == "arc_radius"
    sharp = {"width_1": 1, "width_2": 20, "corner_angle": 90}
    assert values(**sharp)["mitre_1"] == pytest.approx(2.862, abs=1e-3)
    assert refused(**sharp, angle_error=-1.9)["input"] == "angle_error"
    values(**sharp, angle_error=-1.8)
    # A hair over 2° is a cut, a hair under is none.
    values(width_1=1, width_2=28.5)
    assert refused(width_1=1, width_2=28.7)["input"] == "corner_angle"
    assert values(joint="round", arc_radius=8, length_2=48, width_2=1)["inner_2"] > 0
    assert values(length_1=5, width_2=4.5)["inner_1"] == pytest.approx(0.5)
    with pytest.raises(Refusal, match="turns away"):
        mitre_place_mm(0.9, 5, 1, 60, 8, 1)


def test_cautions_speak_up_where_they_must() -> None:
    def said(**given: Any) -> str:
        return " ".join(door.answer(NAME, given)["cautions"])

    assert "gapes" not in said() and "as thin as a hair and" not in said()
    assert "gapes" in said(angle_error=1.5)
    assert "as thin as a hair and" in said(width_2=6)
    assert "as thin as a hair and" not in said(width_2=5.5)


@pytest.mark.parametrize("units", ["metric", "inch", "inch64"])
@pytest.mark.parametrize(
    "inputs",
    [{}, {"joint": "round"}, {"joint": "hollow", "arc_radius": 20},
     {"corner_angle": 160}, {"corner_angle": 20, "width_1": 4}],
)  # fmt: skip
def test_the_drawing_shows_the_angle_and_stays_on_its_paper(units: str, inputs: Any) -> None:
    request = {"calculator": NAME, "units": units, "inputs": inputs}
    drawing = json.loads(door.live(json.dumps(request)))["parts"]["drawings"]
    svg = ET.fromstring(drawing).find(".//{http://www.w3.org/2000/svg}svg")
    assert svg is not None
    _, _, wide, high = map(float, svg.attrib["viewBox"].split())
    shapes = [one for one in svg if one.tag.endswith("polygon")]
    assert len(shapes) == 6
    for shape in shapes:
        for point in shape.attrib["points"].split():
            x, y = map(float, point.split(","))
            assert 0 <= x <= wide and 0 <= y <= high
    mitre = next(one for one in svg if one.get("class") == "accent")
    run = float(mitre.attrib["x2"]) - float(mitre.attrib["x1"])
    rise = float(mitre.attrib["y1"]) - float(mitre.attrib["y2"])
    found = values(**inputs)
    assert math.degrees(math.atan2(rise, run)) == pytest.approx(found["mitre_1"], abs=0.3)
