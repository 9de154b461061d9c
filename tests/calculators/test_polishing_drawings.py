"""The pictures of the polishing calculator."""

import json
import xml.etree.ElementTree as ET

import pytest

from calculators.engine import door
from calculators.finish._polishing_drawings import below, cut_off, windows


def area_of(shape: list[tuple[float, float]]) -> float:
    turned = zip(shape, [*shape[1:], shape[0]], strict=True)
    return abs(sum(a[0] * b[1] - b[0] * a[1] for a, b in turned)) / 2


def test_the_window_ends_where_its_limits_cross() -> None:
    # A floor of slope 1 under a level roof at 2: a triangle with corners (0, 0), (0, 2), (2, 2).
    shapes = windows([0, 1, 3, 4], [0, 1, 3, 4], [2, 2, 2, 2])
    assert [area_of(shape) for shape in shapes if len(shape) > 2] == [pytest.approx(2)]
    opened = windows([0, 1, 3], [2, 2, 2], [0, 1, 3])
    assert [area_of(shape) for shape in opened if len(shape) > 2] == [pytest.approx(0.5)]


def test_what_rises_off_the_paper_is_cut_where_it_leaves() -> None:
    assert cut_off([(0, 0), (1, 1), (2, 3), (3, 9)], 2) == [(0, 0), (1, 1), (1.5, 2)]
    square = [(0.0, 0.0), (4.0, 0.0), (4.0, 4.0), (0.0, 4.0)]
    assert area_of(below(square, 1)) == pytest.approx(4)
    assert below([(0, 5), (1, 5), (1, 6)], 2) == []


@pytest.mark.parametrize("units", ["metric", "inch", "inch64"])
@pytest.mark.parametrize("touch", ["none", "one", "two"])
@pytest.mark.parametrize("trial", ["measured", "not yet"])
def test_pictures_are_sound_and_show_the_working_point(units: str, touch: str, trial: str) -> None:
    chosen = {"touch": touch, "trial": trial}
    request = {"calculator": "polishing-pressure", "units": units, "inputs": chosen}
    drawings = json.loads(door.live(json.dumps(request)))["parts"]["drawings"]
    figures = ET.fromstring(f"<all>{drawings}</all>")
    pictures = figures.findall("figure/{http://www.w3.org/2000/svg}svg")
    assert len(pictures) == (2 if trial == "measured" else 1)
    plot = pictures[0]
    dots = [one for one in plot.iter() if one.tag.endswith("circle")]
    assert float(dots[0].get("cx", "0")) == pytest.approx(342, abs=0.5)  # the middle of the plot
    assert any(one.get("class") == "good" for one in plot.iter() if one.tag.endswith("polygon"))
