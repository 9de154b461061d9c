"""The pictures and the exercises of the kerf calculation."""

import itertools
import json
import math
import random
import xml.etree.ElementTree as ET
from typing import Any

import pytest

from calculators.bending._kerf_spacing_drawings import _below, _close, _sag, _web
from calculators.bending.kerf_spacing import calculator
from calculators.engine import door
from calculators.engine.compute import Answer, work_out

from .svg_on_paper import corners, off_paper, texts_that_touch
from .variants import draw_inputs

Shape = list[tuple[float, float]]


def answer(**given_inputs: Any) -> Answer:
    worked = work_out(calculator, given_inputs)
    assert isinstance(worked, Answer), worked
    return worked


def pictures(units: str = "metric", **inputs: Any) -> list[ET.Element]:
    request = {"calculator": "kerf-spacing", "units": units, "inputs": inputs}
    drawings = json.loads(door.live(json.dumps(request)))["parts"]["drawings"]
    return ET.fromstring(f"<all>{drawings}</all>").findall("figure/{http://www.w3.org/2000/svg}svg")


def polygons(picture: ET.Element, style: str) -> list[Shape]:
    found = []
    for one in picture.iter():
        if one.tag.endswith("polygon") and one.get("class") == style:
            pairs = [pair.split(",") for pair in one.get("points", "").split()]
            found.append([(float(x), float(y)) for x, y in pairs])
    return found


@pytest.mark.parametrize("radius", [50, 115, 600])
def test_the_teeth_are_drawn_to_scale(radius: float) -> None:
    worked = answer(places=[["c", radius, 100]])
    shapes = polygons(pictures(places=[["c", radius, 100]])[0], "wood-light")
    teeth = shapes[len(shapes) // 2 :]
    webs = shapes[: len(shapes) // 2]
    assert len(teeth) == len(webs) + 1
    scale = math.dist(teeth[0][0], teeth[0][1]) / 5.4
    for tooth in teeth:
        assert math.dist(tooth[0], tooth[1]) == pytest.approx(5.4 * scale, rel=5e-3)
        assert math.dist(tooth[1], tooth[2]) == pytest.approx(6.5 * scale, rel=5e-3)
    for before, after in itertools.pairwise(teeth):
        mouth = math.copysign(math.dist(before[2], after[3]), after[3][0] - before[2][0])
        assert mouth / scale == pytest.approx(worked.values["mouth"], abs=0.06)
    for shape, before in zip(webs, teeth, strict=False):
        assert shape[0] == before[1]


def test_kerfs_that_close_too_soon_are_ringed_and_said() -> None:
    rings = [one for one in pictures()[0].iter() if one.tag.endswith("circle")]
    teeth = polygons(pictures()[0], "wood-light")[len(rings) :]
    assert len(rings) == len(teeth) - 1
    for ring, (before, after) in zip(rings, itertools.pairwise(teeth), strict=True):
        at = float(ring.get("cx", "0")), float(ring.get("cy", "0"))
        mouth = [(a + b) / 2 for a, b in zip(before[2], after[3], strict=True)]
        assert math.dist(at, mouth) < 6
    open_picture = pictures(kerf_spacing=3)[0]
    assert not [one for one in open_picture.iter() if one.tag.endswith("circle")]
    assert "too soon" in "".join(pictures()[0].itertext())
    assert "stay open" in "".join(open_picture.itertext())


def test_the_limits_on_the_map_are_those_of_the_calculation() -> None:
    values = answer(mouth_left=0.1).values
    assert _close(values, 45) == pytest.approx(values["close_spacing"])
    assert _sag(values, 45) == pytest.approx(values["sag_spacing"])
    assert _web(values, 45) == pytest.approx(values["web_spacing"])
    assert _close(values, 0) == 0 and _web(values, 0) == 0 and _sag(values, 0) == 0.6


def test_a_curve_leaves_the_paper_where_it_crosses_its_edge() -> None:
    assert _below([0, 1, 2, 3], [0, 1, 3, 9], 2) == [(0, 0), (1, 1), (1.5, 2)]


@pytest.mark.parametrize("units", ["metric", "inch", "inch64"])
def test_the_map_has_a_dot_for_every_curve_and_a_safe_area(units: str) -> None:
    plot = pictures(units)[1]
    dots = [one for one in plot.iter() if one.tag.endswith("circle") and one.get("r") == "5"]
    across = [float(dot.get("cx", "0")) for dot in dots[:3]]
    # 115, 170 and 45 mm on an axis that ends at 1.25 times the widest.
    for x, radius in zip(across, (115, 170, 45), strict=True):
        assert x == pytest.approx(62 + 560 * radius / (1.25 * 170), abs=0.5)
    heights = {dot.get("cy") for dot in dots[:3]}
    assert len(heights) == 1
    assert len(polygons(plot, "good")) == 1


@pytest.mark.parametrize("radius", [30, 45, 115, 1500])
def test_the_lining_lies_against_its_side(radius: float) -> None:
    picture = pictures(places=[["c", radius, 100]], kerf_spacing=5)[0]
    side = polygons(picture, "wood-dark")[0]
    assert len(side) == 50
    teeth = polygons(picture, "wood-light")
    teeth = teeth[len(teeth) // 2 :]
    inner = side[25:]
    # The ends of every glueing face lie on the side's inner face, within the gap of a flat.
    flat = math.dist(teeth[0][0], teeth[0][1])
    for tooth in teeth:
        for corner in tooth[:2]:
            assert min(math.dist(corner, point) for point in inner) < flat
            assert corner[1] > min(y for _, y in side)
    # Side and lining are as wide as the room allows, or as high.
    xs = [x for x, _ in side]
    ys = [y for _, y in side] + [y for tooth in teeth for _, y in tooth]
    assert max(xs) + min(xs) == pytest.approx(640, abs=0.2)
    assert max(xs) - min(xs) == pytest.approx(560, abs=0.5) or max(ys) - min(ys) > 280
    assert max(xs) - min(xs) < 560.5 and max(ys) - min(ys) < 320


def test_the_limits_are_drawn_where_they_lie() -> None:
    values = answer().values
    for units, inches in (("metric", 1.0), ("inch", 25.4)):
        plot = pictures(units)[1]
        lines = [one for one in plot.iter() if one.get("class") in ("accent open", "second open")]
        for one, limit in zip(lines, (_close, _sag), strict=True):
            for x, y in corners(one):
                radius = (x - 62) / 560 * 1.25 * 170
                spacing = (322 - y) / 288 * 2.2 * 6
                assert spacing == pytest.approx(limit(values, radius), rel=0.03, abs=0.4), inches


def test_nothing_is_drawn_off_the_paper() -> None:
    stream = random.Random(5)
    for _ in range(80):
        inputs = draw_inputs(calculator, stream)
        request = {"calculator": "kerf-spacing", "inputs": inputs}
        if "refused" not in json.loads(door.live(json.dumps(request))):
            for picture in pictures(stream.choice(["metric", "inch"]), **inputs):
                assert off_paper(picture) == [], inputs


@pytest.mark.parametrize("units", ["metric", "inch", "inch64"])
@pytest.mark.parametrize("spacing", [3, 6])
def test_no_words_run_into_each_other(units: str, spacing: float) -> None:
    for picture in pictures(units, kerf_spacing=spacing):
        assert texts_that_touch(picture) == []
