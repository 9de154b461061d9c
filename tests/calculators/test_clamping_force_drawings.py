"""The pictures and the exercises of the clamping calculation."""

import json
import random
import xml.etree.ElementTree as ET
from typing import Any

import pytest

from calculators.engine import door
from calculators.engine.compute import Answer, work_out
from calculators.glueing._clamping_force_drawings import _stop
from calculators.glueing.clamping_force import calculator

from .svg_on_paper import corners, off_paper, texts_that_touch
from .variants import draw_inputs


def answer(**given_inputs: Any) -> Answer:
    worked = work_out(calculator, given_inputs)
    assert isinstance(worked, Answer), worked
    return worked


def pictures(units: str = "metric", **inputs: Any) -> list[ET.Element]:
    request = {"calculator": "clamping-force", "units": units, "inputs": inputs}
    drawings = json.loads(door.live(json.dumps(request)))["parts"]["drawings"]
    return ET.fromstring(f"<all>{drawings}</all>").findall("figure/{http://www.w3.org/2000/svg}svg")


def shapes(picture: ET.Element, tag: str, style: str) -> list[ET.Element]:
    return [one for one in picture.iter() if one.tag.endswith(tag) and one.get("class") == style]


@pytest.mark.parametrize("below", ["bench", "caul"])
@pytest.mark.parametrize("clamps", [1, 2, 3, 5])
def test_the_stack_shows_every_clamp_and_layer(clamps: int, below: str) -> None:
    picture = pictures(clamps=clamps, below=below)[0]
    pads = [one for one in shapes(picture, "rect", "metal") if one.get("height") == "7"]
    assert len(pads) == clamps
    scale = 560 / 155
    for number, pad in enumerate(pads):
        middle = float(pad.get("x", "0")) + float(pad.get("width", "0")) / 2
        place = 22 + number * 111 / (clamps - 1) if clamps > 1 else 77.5
        assert middle == pytest.approx(40 + place * scale, abs=0.05)
        assert float(pad.get("width", "0")) == pytest.approx(22 * scale, abs=0.05)
    cauls = [one for one in shapes(picture, "rect", "wood-light") if one.get("width") == "560"]
    assert len(cauls) == (2 if below == "caul" else 1)
    dark = next(one for one in shapes(picture, "rect", "wood-dark") if one.get("width") == "560")
    assert float(dark.get("height", "0")) / float(cauls[0].get("height", "0")) == pytest.approx(
        9.5 / 25, rel=1e-3
    )
    assert len(shapes(picture, "line", "hidden")) == 2 * clamps + 1


def test_a_cone_runs_at_45_degrees_to_the_joint_or_to_the_end_of_the_parts() -> None:
    assert _stop(50, 10, 40, 200) == (90, 1)
    assert _stop(50, -10, -40, 200) == (10, 1)
    end, down = _stop(30, -10, -40, 200)
    assert end == 0 and down == pytest.approx(20 / 30)
    end, down = _stop(180, 10, 40, 200)
    assert end == 200 and down == pytest.approx(10 / 30)


@pytest.mark.parametrize("units", ["metric", "inch", "inch64"])
@pytest.mark.parametrize("inputs", [{}, {"clamps": 2}, {"caul_thickness": 2, "clamp_force": 2000}])
def test_the_curve_is_the_pressure(units: str, inputs: dict[str, Any]) -> None:
    worked = answer(**inputs)
    plot = pictures(units, **inputs)[1]
    curve = shapes(plot, "polyline", "accent open")[0]
    points = [tuple(map(float, pair.split(","))) for pair in curve.get("points", "").split()]
    profile = worked.values["profile"]
    assert len(points) == 2 * len(profile) - 1
    assert points[0][0] == pytest.approx(62) and points[-1][0] == pytest.approx(622)
    for (x, y), (mirror_x, mirror_y) in zip(points, reversed(points), strict=True):
        assert x + mirror_x == pytest.approx(684, abs=0.05)
        assert y == pytest.approx(mirror_y, abs=0.05)
    highest = min(range(len(profile)), key=lambda n: points[n][1])
    assert profile[highest][1] == pytest.approx(worked.values["greatest_pressure"], rel=1e-3)
    mean = shapes(plot, "polyline", "hidden open")[0].get("points", "").split()[0]
    # Heights go with pressure: end, greatest and mean on one scale.
    rise = (points[0][1] - points[highest][1]) / (profile[highest][1] - profile[0][1])
    from_mean = (float(mean.split(",")[1]) - points[highest][1]) / rise
    assert profile[highest][1] - from_mean == pytest.approx(
        worked.values["mean_pressure"], rel=0.01
    )
    assert len(shapes(plot, "polygon", "good")) == 1
    assert len(shapes(plot, "polygon", "ink-fill")) == worked.values["clamps"]


def test_the_cones_end_on_the_joint_or_at_the_end_of_the_parts() -> None:
    picture = pictures()[0]
    joint = corners(shapes(picture, "line", "accent")[0])[0][1]
    dark = corners(shapes(picture, "rect", "wood-dark")[0])
    assert dark[1][1] == pytest.approx(joint, abs=0.05)
    scale = 560 / 155
    cones = shapes(picture, "line", "hidden")[:-1]
    ends = [corners(line)[1] for line in cones]
    for (x, y), wanted in zip(ends, (-23.5, 67.5, 32, 123, 87.5, 178.5), strict=True):
        assert x == pytest.approx(40 + min(155, max(0, wanted)) * scale, abs=0.1)
        if 0 < wanted < 155:
            assert y == pytest.approx(joint, abs=0.1)
        else:
            # 11 mm of the 34.5 mm down at 45 degrees lie inside the parts.
            top = corners(shapes(picture, "rect", "wood-light")[0])[0][1]
            assert (y - top) / (joint - top) == pytest.approx(11 / 34.5, abs=0.01)


def test_nothing_is_drawn_off_the_paper() -> None:
    stream = random.Random(5)
    drawn = 0
    for _ in range(250):
        inputs = draw_inputs(calculator, stream)
        request = {"calculator": "clamping-force", "inputs": inputs}
        if "refused" not in json.loads(door.live(json.dumps(request))):
            drawn += 1
            for picture in pictures(stream.choice(["metric", "inch"]), **inputs):
                assert off_paper(picture) == [], inputs
    assert drawn > 20


@pytest.mark.parametrize("units", ["metric", "inch", "inch64"])
@pytest.mark.parametrize("below", ["bench", "caul"])
def test_no_words_run_into_each_other(units: str, below: str) -> None:
    for picture in pictures(units, below=below):
        assert texts_that_touch(picture) == []
