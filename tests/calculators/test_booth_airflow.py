"""Laws of the booth calculation: balance of fan and filters, areas, words, pictures."""

import json
import math
import random
import xml.etree.ElementTree as ET
from typing import Any

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as some
from scipy.optimize import brentq

from calculators.engine import door
from calculators.engine.compute import Answer, work_out
from calculators.room._booth_airflow_work import air_at_face
from calculators.room.booth_airflow import calculator

from .svg_on_paper import corners, off_paper, texts_that_touch
from .variants import draw_inputs


def values(**inputs: Any) -> dict[str, Any]:
    worked = work_out(calculator, inputs)
    assert isinstance(worked, Answer), worked
    return worked.values


def pictures(units: str = "metric", **inputs: Any) -> list[ET.Element]:
    request = {"calculator": "booth-airflow", "units": units, "inputs": inputs}
    drawings = json.loads(door.live(json.dumps(request)))["parts"]["drawings"]
    return ET.fromstring(f"<all>{drawings}</all>").findall("figure/{http://www.w3.org/2000/svg}svg")


@settings(max_examples=60)
@given(
    some.floats(0.3, 1.2), some.floats(800, 3000), some.floats(800, 3000), some.integers(1, 30),
    some.floats(200, 800), some.floats(200, 800), some.floats(0.3, 2.5), some.floats(1, 80),
    some.floats(1, 150), some.floats(1.05, 4), some.floats(200, 800), some.floats(0.2, 1.2),
    some.floats(0, 2000),
)  # fmt: skip
def test_the_whole_worked_again(
    mean: float, wide: float, high: float, count: int, across: float, up: float, rated: float,
    clean: float, now: float, spare: float, shut: float, least: float, away: float,
) -> None:  # fmt: skip
    area = wide * high / 1e6
    flow = mean * area * 3600
    free = flow * spare
    assume(300 <= free <= 60000)
    pressure = shut * (1 - (flow / free) ** 2)
    assume(pressure > now)
    v = values(
        known="wanted", face_velocity=mean, booth_width=wide, booth_height=high, filters=count,
        filter_width=across, filter_height=up, filter_speed=rated, clean_loss=clean,
        filter_loss_now=now, fan_free_flow=free, fan_shut_pressure=shut, least_velocity=least,
        work_distance=away,
    )  # fmt: skip
    one = across * up / 1e6
    assert v["face_area"] == pytest.approx(area) and v["air_flow"] == pytest.approx(flow)
    assert v["fan_pressure"] == pytest.approx(pressure)
    assert v["duct_loss"] == pytest.approx(pressure - now)
    assert v["one_filter"] == pytest.approx(one)
    assert v["filter_area_needed"] * rated * 3600 == pytest.approx(flow)
    assert v["filters_needed"] == math.ceil(v["filter_area_needed"] / one - 1e-9)
    assert v["filter_speed_now"] * count * one * 3600 == pytest.approx(flow)
    assert v["clean_now"] == pytest.approx(clean * v["filter_speed_now"] / rated)
    per_flow, per_square = v["clean_now"] / flow, (pressure - now) / flow**2

    def spare_pressure(q: float) -> float:
        return shut * (1 - (q / free) ** 2) - per_flow * q - per_square * q**2

    settled = brentq(spare_pressure, 0, free, xtol=1e-9, rtol=1e-13)
    assert v["clean_flow"] == pytest.approx(settled, rel=1e-9)
    assert v["clean_velocity"] * area * 3600 == pytest.approx(settled, rel=1e-9)
    assert ("change_reading" in v) == (mean >= least)
    if mean >= least:
        q = least * area * 3600
        left = shut * (1 - (q / free) ** 2) - per_square * q**2
        assert v["change_reading"] == pytest.approx(left)
        assert v["change_reading"] >= now - 1e-9
    assert v["work_velocity"] == pytest.approx(flow / 3600 / (10 * (away / 1000) ** 2 + area))


def test_clean_filters_at_the_dial_change_nothing_and_dirty_ones_take_air() -> None:
    base = values()
    same = values(filter_loss_now=base["clean_now"])
    assert same["growth"] == pytest.approx(1)
    assert values(filter_loss_now=80)["growth"] > base["growth"] > 1
    at_least = values(known="wanted", face_velocity=0.51, filter_loss_now=base["change_reading"],
                      fan_shut_pressure=350)  # fmt: skip
    assert at_least["change_reading"] == pytest.approx(base["change_reading"])


def test_a_whole_number_of_filters_is_not_one_too_many() -> None:
    v = values(known="wanted", face_velocity=0.6, filter_speed=0.96)  # 2.4 m³/s over 2.5 m²
    assert v["filters_needed"] == 10


@given(some.lists(some.floats(0.02, 3), min_size=4, max_size=30))
def test_readings(readings: list[float]) -> None:
    found = air_at_face(face_readings=readings)
    assert found["face_lowest"] == min(readings)
    assert found["face_mean"] == pytest.approx(sum(readings) / len(readings))
    farthest = max(max(readings) - found["face_mean"], found["face_mean"] - min(readings))
    assert found["unevenness"] == pytest.approx(100 * farthest / found["face_mean"], abs=1e-9)
    kept = [row["kept"] for row in found["rule_rows"]]
    assert kept == ["yes" if found["face_mean"] >= v else "no" for v in (0.25, 1.27, 0.51, 0.51)]
    assert air_at_face(face_velocity=0.7)["unevenness"] == 0


def test_what_cannot_be_is_refused() -> None:
    fan = door.answer("booth-airflow", {"fan_free_flow": 8000})["refused"][0]
    assert fan["input"] == "fan_free_flow" and "8160" in fan["allowed"]
    weak = door.answer("booth-airflow", {"fan_shut_pressure": 60})["refused"][0]
    assert weak["input"] == "fan_shut_pressure" and "stronger" in weak["why"]
    assert "refused" not in door.answer("booth-airflow", {"fan_free_flow": 8900})


def test_words_follow_the_figures() -> None:
    assert values()["verdict"].endswith("dial reads 103 Pa.")
    assert values(face_readings=[0.4] * 4)["verdict"].startswith("Too slow")
    patchy = values(face_readings=[0.38, 0.7, 0.7, 0.7])["verdict"]
    assert "stands in the way" in patchy
    assert "stands in the way" not in values(face_readings=[0.39, 0.7, 0.7, 0.7])["verdict"]
    assert values(filters=8)["filter_words"].startswith("Too few")
    assert "would do" in values()["filter_words"]
    said = door.answer("booth-airflow", {
        "known": "wanted", "face_velocity": 1.3, "fan_free_flow": 50000, "filter_loss_now": 10,
        "cross_draught": 0.7, "work_distance": 500,
    })["cautions"]  # fmt: skip
    assert len(said) == 6 and "not a permit" in said[0]
    assert len(door.answer("booth-airflow", {})["cautions"]) == 2


@pytest.mark.parametrize("units", ["metric", "inch"])
def test_pictures(units: str) -> None:
    plot, face = pictures(units)
    assert texts_that_touch(plot) == [] and texts_that_touch(face) == []
    v = values()
    dots = [one for one in plot.iter() if one.tag.endswith("circle")]
    for dot, (flow, pressure) in zip(
        dots,
        ((8160, v["fan_pressure"]), (v["clean_flow"], 350 * (1 - (v["clean_flow"] / 12000) ** 2))),
        strict=True,
    ):
        assert float(dot.get("cx", "0")) == pytest.approx(62 + 560 * flow / 12600, abs=0.5)
        assert float(dot.get("cy", "0")) == pytest.approx(322 - 288 * pressure / 402.5, abs=0.5)
    bars = [one for one in face.iter() if one.tag.endswith("rect")]
    heights = [float(bar.get("height", "0")) for bar in bars]
    assert heights == pytest.approx([190 * r / 0.63 for r in v["face_readings"]], abs=0.1)
    assert [bar.get("class") for bar in bars].count("bad") == 1
    assert len(pictures(units, known="wanted")) == 1


def test_the_booth_curves_meet_the_fan_at_the_dots() -> None:
    plot = pictures()[0]
    lines = [one for one in plot.iter() if one.get("class") in ("accent open", "second open")]
    dots = [one for one in plot.iter() if one.tag.endswith("circle")]
    for line, dot in zip(lines, dots, strict=True):
        x, y = float(dot.get("cx", "0")), float(dot.get("cy", "0"))
        points = corners(line)
        after = next(place for place, point in enumerate(points) if point[0] > x)
        (xa, ya), (xb, yb) = points[after - 1], points[after]
        assert ya + (yb - ya) * (x - xa) / (xb - xa) == pytest.approx(y, abs=1.0)


def test_nothing_is_drawn_off_the_paper() -> None:
    stream = random.Random(6)
    drawn = 0
    for _ in range(120):
        inputs = draw_inputs(calculator, stream)
        if "refused" in door.answer("booth-airflow", inputs):
            continue
        drawn += 1
        for one in pictures(stream.choice(["metric", "inch"]), **inputs):
            assert off_paper(one) == []
    assert drawn > 10
