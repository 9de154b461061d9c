"""Laws of the neck profile: tapers, contours, sections, margins, rod."""

import itertools
import json
import math
import xml.etree.ElementTree as ET
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as some
from scipy.integrate import quad

from calculators.engine import door
from calculators.laws.neck_section import (
    board_moments,
    contour_depth_mm,
    neck_section,
    shaft_moments,
    shoulder_integral,
)

NAME = "neck-profile"


def values(**given: Any) -> dict[str, Any]:
    found = door.answer(NAME, given)
    assert "refused" not in found, (given, found)
    steps = {step["name"]: step["value"] for step in found["steps"] if "value" in step}
    for step in found["steps"]:
        steps.update({name: one["value"] for name, one in step.get("gives", {}).items()})
    return {**steps, **{name: one["value"] for name, one in found["results"].items()}}


def rows(table: str, **given: Any) -> list[dict[str, float]]:
    one = door.answer(NAME, given)["tables"][table]
    return [dict(zip(one["columns"], row, strict=True)) for row in one["rows"]]


def refused(**given: Any) -> dict[str, str]:
    first: dict[str, str] = door.answer(NAME, given)["refused"][0]
    return first


def place(fret: int, scale: float = 645) -> float:
    return scale * (1 - 2 ** (-fret / 12))


def test_the_example_by_hand() -> None:
    found = values()
    growth = 1.5 / (place(9) - place(1))
    assert found["taper"] == pytest.approx(100 * growth)
    assert found["bare_first"] == 21 and found["bare_second"] == 22.5
    assert found["gauge_first"] == pytest.approx(21.2)
    assert found["gauge_second"] == pytest.approx(22.7)
    assert found["finished_first"] == pytest.approx(21.15)
    assert found["finished_second"] == pytest.approx(22.65)
    assert found["bare_template"] == pytest.approx(21 + growth * (place(5) - place(1)))
    assert found["gauge_template"] == pytest.approx(found["bare_template"] + 0.2)
    assert found["depth_template"] == pytest.approx(found["bare_template"] - 6.4)
    assert found["bare_cove"] == pytest.approx(21 + growth * (place(10) - place(1)))
    half = found["width_template"] / 2
    assert found["edge_template"] == pytest.approx(6.4 - (400 - math.sqrt(400**2 - half**2)))
    assert found["edge_least"] == pytest.approx(6.4 - (400 - math.sqrt(400**2 - 27.75**2)))
    assert found["margin_nut"] == pytest.approx(3.5)
    width = 43.5 + 12 * place(14) / place(20)
    spread = 36.5 + 17.5 * place(14) / 645
    assert found["width_joint"] == pytest.approx(width)
    assert found["spread_joint"] == pytest.approx(spread)
    assert found["margin_joint"] == pytest.approx((width - spread) / 2)
    assert found["stiffness_gain"] == pytest.approx(
        found["second_moment_second"] / found["second_moment_first"]
    )


def test_a_finished_thickness_leaves_room_for_the_film_once() -> None:
    bare, finished = values(), values(thickness_is="finished")
    assert finished["bare_first"] == pytest.approx(21 - 0.15)
    assert finished["bare_second"] == pytest.approx(22.5 - 0.15)
    assert finished["finished_first"] == pytest.approx(21)
    assert finished["finished_second"] == pytest.approx(22.5)
    assert finished["gauge_first"] == pytest.approx(bare["gauge_first"] - 0.15)
    assert finished["taper"] == pytest.approx(bare["taper"])


def test_the_shaft_runs_straight_from_fret_to_fret() -> None:
    table = rows("shaft")
    assert [row["fret"] for row in table] == list(range(1, 11))
    assert table[0]["bare"] == pytest.approx(21) and table[8]["bare"] == pytest.approx(22.5)
    for before, after in itertools.pairwise(table):
        way = after["from_nut"] - before["from_nut"]
        assert after["bare"] - before["bare"] == pytest.approx(1.5 / (place(9) - place(1)) * way)
        assert after["width"] - before["width"] == pytest.approx(12 / place(20) * way)
        assert after["second_moment"] > before["second_moment"]
    for row in table:
        assert row["from_nut"] == pytest.approx(place(int(row["fret"])))
        assert row["gauge"] - row["bare"] == pytest.approx(0.2)
        assert row["finished"] - row["bare"] == pytest.approx(0.15)
        section = neck_section(row["width"] / 2, row["bare"], 6.4, 400, 2.3, 0)
        assert row["area"] == pytest.approx(section.area_mm2)
        assert row["centroid"] == pytest.approx(section.centroid_mm)
        assert row["second_moment"] == pytest.approx(section.second_moment_mm4)
    found = values()
    assert found["area_first"] == table[0]["area"]
    assert found["second_moment_first"] == table[0]["second_moment"]
    assert found["second_moment_second"] == table[8]["second_moment"]


def test_the_board_runs_straight_from_nut_to_end() -> None:
    table = rows("board")
    assert len(table) == 21 and table[0]["width"] == 43.5
    assert table[20]["width"] == pytest.approx(55.5)
    assert table[12]["spread"] == pytest.approx((36.5 + 54) / 2)
    for row in table:
        assert row["margin"] == pytest.approx((row["width"] - row["spread"]) / 2)
        assert row["spread"] == pytest.approx(36.5 + 17.5 * row["from_nut"] / 645)
    assert table[14]["margin"] == pytest.approx(values()["margin_joint"])
    assert table[5]["width"] == pytest.approx(values()["width_template"])


@settings(max_examples=50)
@given(some.floats(1.4, 5), some.floats(0, 0.8), some.floats(15, 45), some.floats(5, 30))
def test_the_contour_is_a_superellipse_with_a_flat(
    n: float, flat: float, half: float, depth: float
) -> None:
    assert contour_depth_mm(0, half, depth, n, flat) == depth
    assert contour_depth_mm(half, half, depth, n, flat) == 0
    assert contour_depth_mm(flat * half, half, depth, n, flat) == pytest.approx(depth)
    for share in (0.2, 0.5, 0.8):
        across = half * (flat + share * (1 - flat))
        down = contour_depth_mm(across, half, depth, n, flat)
        assert share**n + (down / depth) ** n == pytest.approx(1)
        fuller = contour_depth_mm(across, half, depth, n * 1.1, flat)
        assert fuller > down


def test_an_ellipse_and_a_rectangle_as_limits() -> None:
    area, first, second = shaft_moments(20, 15, 2, 0)
    assert area == pytest.approx(math.pi * 20 * 15 / 2)
    assert first == pytest.approx(2 / 3 * 20 * 15**2)
    assert second == pytest.approx(math.pi * 20 * 15**3 / 8)
    area, first, second = shaft_moments(20, 15, 2, 0.999999)
    assert (area, first, second) == pytest.approx((600, 4500, 45000), rel=1e-5)
    assert board_moments(20, 6, 0) == pytest.approx((240, 720, 2880))
    # Board and shaft both rectangles: b·h³/12 about the middle.
    section = neck_section(20, 21, 6, 0, 2, 0.9999999)
    assert section.area_mm2 == pytest.approx(840, rel=1e-5)
    assert section.centroid_mm == pytest.approx(10.5, rel=1e-5)
    assert section.second_moment_mm4 == pytest.approx(40 * 21**3 / 12, rel=1e-5)


@settings(max_examples=25)
@given(
    some.floats(1.4, 5), some.floats(0, 0.8), some.floats(15, 45), some.floats(12, 35),
    some.floats(3, 7), some.floats(120, 3000) | some.just(0.0),
)  # fmt: skip
def test_sections_beside_integrals_over_the_width(
    n: float, flat: float, half: float, thick: float, board: float, radius: float
) -> None:
    """scipy's own integrals over the width, the edge smoothed by x = h·sin t."""

    def up(x: float) -> float:
        return board - (radius - math.sqrt(radius**2 - x**2) if radius else 0)

    def down(x: float) -> float:
        beyond = (x / half - flat) / (1 - flat)
        return (thick - board) * (1 - max(0.0, beyond) ** n) ** (1 / n) if beyond < 1 else 0.0

    def over(function: Any) -> float:
        found: float = quad(
            lambda t: function(half * math.sin(t)) * half * math.cos(t), 0, math.pi / 2,
            points=[math.asin(flat)], limit=200,
        )[0]  # fmt: skip
        return 2 * found

    area = over(lambda x: up(x) + down(x))
    middle = over(lambda x: (down(x) ** 2 - up(x) ** 2) / 2) / area
    second = over(lambda x: ((down(x) - middle) ** 3 + (up(x) + middle) ** 3) / 3)
    section = neck_section(half, thick, board, radius, n, flat)
    assert section.area_mm2 == pytest.approx(area, rel=1e-6)
    assert section.centroid_mm == pytest.approx(board + middle, rel=1e-6)
    assert section.second_moment_mm4 == pytest.approx(second, rel=1e-6)


def test_known_shoulder_integrals() -> None:
    assert shoulder_integral(2, 2) == pytest.approx(2 / 3)
    assert shoulder_integral(2, 3) == pytest.approx(3 * math.pi / 16)
    assert shoulder_integral(1, 1) == pytest.approx(1 / 2)  # a straight V
    assert shoulder_integral(1, 3) == pytest.approx(1 / 4)


def test_the_template_follows_the_contour() -> None:
    points = rows("template", contour="d", flat_share=30, fullness=2.6)
    found = values(contour="d", flat_share=30, fullness=2.6)
    half, depth = found["width_template"] / 2, found["depth_template"]
    assert points[0]["across"] == 0 and points[-1]["across"] == pytest.approx(half)
    assert points[-1]["below_face"] == 0
    assert points[3]["below_face"] == pytest.approx(depth)  # 30 % of the width: still flat
    for before, after in itertools.pairwise(points):
        assert after["across"] > before["across"]
        assert after["below_face"] <= before["below_face"]
    for point in points:
        assert point["below_edge"] - point["below_face"] == pytest.approx(found["edge_template"])
        share = max(0.0, point["across"] / half - 0.3) / 0.7
        left = (point["below_face"] / depth) ** 2.6 + share**2.6
        assert left == pytest.approx(1)
    # Without a flat the flat share is not asked.
    assert values()["flat"] == 0 and values(contour="d")["flat"] == 0.3


def test_wood_under_the_rod() -> None:
    found = values()
    width = 43.5 + 12 * place(1) / place(20)
    depth = contour_depth_mm(3, width / 2, 21 - 6.4, 2.3, 0)
    assert found["rod_floor"] == pytest.approx(depth - 9.5)
    assert "rod_floor" not in values(rod_depth=0)
    thinner = values(thickness_first=23, thickness_second=21, rod_width=10)
    width = 43.5 + 12 * place(9) / place(20)
    depth = contour_depth_mm(5, width / 2, 21 - 6.4, 2.3, 0)
    assert thinner["rod_floor"] == pytest.approx(depth - 9.5)
    assert values(rod_depth=11)["rod_floor"] == pytest.approx(found["rod_floor"] - 1.5)


def test_a_flat_board_has_full_edges() -> None:
    found = values(fret_radius=0)
    assert found["edge_template"] == found["edge_least"] == 6.4
    assert found["area_first"] > values()["area_first"]


def test_what_cannot_be_is_refused() -> None:
    assert refused(second_fret=11)["input"] == "second_fret"
    values(second_fret=10)
    assert refused(template_fret=11)["input"] == "template_fret"
    values(template_fret=10)
    assert refused(cove_fret=14)["input"] == "cove_fret"
    values(cove_fret=13)
    assert refused(body_joint_fret=21)["input"] == "cove_fret"
    values(body_joint_fret=20)
    assert refused(thickness_first=10.3)["input"] == "thickness_first"
    values(thickness_first=10.5)
    assert refused(thickness_second=10.3)["input"] == "thickness_first"
    steep = {"thickness_first": 20, "second_fret": 4, "cove_fret": 10}
    assert refused(**steep, thickness_second=16)["input"] == "thickness_first"  # at the cove
    assert refused(fret_radius=55)["input"] == "fret_radius"
    values(fret_radius=56, board_joint=12)
    assert refused(fret_radius=64)["input"] == "board_joint"
    assert values(fret_radius=70, thickness_first=22)["edge_least"] > 0.5


def test_words_for_the_back() -> None:
    assert "towards a U" in values()["shape_words"]
    assert "plain C" in values(fullness=2)["shape_words"]
    assert "plain C" in values(fullness=2.15)["shape_words"]
    assert "plain C" in values(fullness=1.85)["shape_words"]
    assert "V" in values(fullness=1.8)["shape_words"]
    assert "Flat over 30 %" in values(contour="d")["shape_words"]


def test_cautions_speak_up_where_they_must() -> None:
    def said(**given: Any) -> str:
        return " ".join(door.answer(NAME, given)["cautions"])

    plain = said()
    assert "Only" not in plain and "slips" not in plain and "thinner towards" not in plain
    assert "carving may find it" in said(rod_depth=12)
    assert "comes through" in said(rod_depth=15) and "Only" not in said(rod_depth=15)
    assert "slips off" in said(string_spread_nut=40)
    assert "slips off" in said(string_spread_bridge=60)
    assert "thinner towards" in said(thickness_second=20.5)


@pytest.mark.parametrize("units", ["metric", "inch", "inch64"])
@pytest.mark.parametrize(
    "inputs",
    [{}, {"contour": "d", "rod_depth": 0}, {"fullness": 1.4, "fret_radius": 0},
     {"string_spread_nut": 90, "rod_depth": 20}],
)  # fmt: skip
def test_the_drawing_is_to_one_scale_and_stays_on_its_paper(
    units: str, inputs: dict[str, Any]
) -> None:
    request = {"calculator": NAME, "units": units, "inputs": inputs}
    drawing = json.loads(door.live(json.dumps(request)))["parts"]["drawings"]
    svg = ET.fromstring(drawing).find(".//{http://www.w3.org/2000/svg}svg")
    assert svg is not None
    _, _, wide, high = map(float, svg.attrib["viewBox"].split())
    shafts = []
    for one in svg:
        for point in one.get("points", "").split():
            x, y = map(float, point.split(","))
            assert 0 <= x <= wide and 0 <= y <= high
        if one.get("class") == "wood-mid":
            shafts.append([tuple(map(float, p.split(","))) for p in one.attrib["points"].split()])
        if one.tag.endswith("circle"):
            assert 0 <= float(one.attrib["cx"]) <= wide
    assert len(shafts) == 3
    table = {int(row["fret"]): row for row in rows("shaft", **inputs)}
    scales = []
    for fret, shaft in zip((1, 5, 9), shafts, strict=True):
        xs, ys = [x for x, _ in shaft], [y for _, y in shaft]
        scales.append((max(xs) - min(xs)) / table[fret]["width"])
        scales.append((max(ys) - min(ys)) / (table[fret]["bare"] - 6.4))
    assert max(scales) / min(scales) == pytest.approx(1, abs=0.01)
