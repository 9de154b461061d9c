"""The pictures and the exercises of the side-bending calculation."""

import json
import random
import xml.etree.ElementTree as ET
from typing import Any

import pytest

from calculators.bending.side_bending import calculator
from calculators.engine import door
from calculators.engine.compute import Answer, work_out

from .svg_on_paper import off_paper, texts_that_touch
from .variants import draw_inputs


def answer(**given_inputs: Any) -> Answer:
    worked = work_out(calculator, given_inputs)
    assert isinstance(worked, Answer), worked
    return worked


@pytest.mark.parametrize("units", ["metric", "inch"])
@pytest.mark.parametrize("slat", ["none", "held"])
def test_pictures_show_what_is_worked_out(units: str, slat: str) -> None:
    request = {"calculator": "side-bending", "units": units, "inputs": {"slat": slat}}
    drawings = json.loads(door.live(json.dumps(request)))["parts"]["drawings"]
    pictures = ET.fromstring(f"<all>{drawings}</all>").findall(
        "figure/{http://www.w3.org/2000/svg}svg"
    )
    assert len(pictures) == 2
    bars = [one for one in pictures[1].iter() if one.tag.endswith("rect")]
    worked = answer(slat=slat)
    asked = [
        max(row["shrink"] / 20, row["stretch"] / 2) if slat == "held" else row["stretch"]
        for row in worked.tables["curves"]
    ]
    widths = [float(bar.get("width", "0")) for bar in bars]
    for bar, figure in zip(widths, asked, strict=True):
        assert bar / widths[0] == pytest.approx(figure / asked[0], rel=1e-3)
    line = next(one for one in pictures[1].iter() if one.get("class") == "ink")
    limit = 1 if slat == "held" else 2
    start = float(bars[0].get("x", "0"))
    assert (float(line.get("x1", "0")) - start) / widths[0] == pytest.approx(
        limit / asked[0], rel=1e-3
    )
    metal = [one for one in pictures[0].iter() if one.get("class") == "metal"]
    assert len(metal) == (1 if slat == "held" else 0)


def test_a_bar_past_the_limit_is_red_and_named() -> None:
    request = {
        "calculator": "side-bending",
        "inputs": {"places": [["a", 30, 0], ["b", 300, 0]], "spring_trial": "none"},
    }
    drawings = json.loads(door.live(json.dumps(request)))["parts"]["drawings"]
    assert drawings.count('rect class="accent-fill"') == 1
    assert drawings.count('rect class="second-fill"') == 1
    assert drawings.count("3.38 % too tight") == 1


def all_pictures(name: str, inputs: dict[str, Any], units: str) -> list[ET.Element]:
    request = {"calculator": name, "units": units, "inputs": inputs}
    drawings = json.loads(door.live(json.dumps(request)))["parts"].get("drawings", "")
    return ET.fromstring(f"<all>{drawings}</all>").findall("figure/{http://www.w3.org/2000/svg}svg")


def test_nothing_is_drawn_off_the_paper() -> None:
    stream = random.Random(5)
    for _ in range(80):
        inputs = draw_inputs(calculator, stream)
        for picture in all_pictures("side-bending", inputs, stream.choice(["metric", "inch"])):
            assert off_paper(picture) == [], inputs


@pytest.mark.parametrize("units", ["metric", "inch", "inch64"])
@pytest.mark.parametrize("slat", ["none", "held"])
def test_no_words_run_into_each_other(units: str, slat: str) -> None:
    for picture in all_pictures("side-bending", {"slat": slat}, units):
        assert texts_that_touch(picture) == []
