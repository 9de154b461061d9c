"""Laws of the noise calculation: energies, doses, doubts, protectors, pictures."""

import json
import math
import random
import xml.etree.ElementTree as ET
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as some

from calculators.engine import door
from calculators.engine.compute import Answer, work_out
from calculators.laws.noise_exposure import (
    allowed_minutes,
    day_level_dba,
    day_uncertainty_db,
    dose_percent,
    worn_level_dba,
)
from calculators.room._noise_dose_drawing import shorten
from calculators.room.noise_dose import calculator

from .svg_on_paper import off_paper, texts_that_touch
from .variants import draw_inputs

days = some.lists(
    some.tuples(some.floats(40, 130), some.floats(1, 240), some.floats(0, 15)),
    min_size=1, max_size=6,
)  # fmt: skip


def values(**inputs: Any) -> dict[str, Any]:
    worked = work_out(calculator, inputs)
    assert isinstance(worked, Answer), worked
    return worked.values


def tasks(day: list[tuple[float, float, float]]) -> list[list[Any]]:
    return [[f"task {place}", *one] for place, one in enumerate(day)]


def pictures(units: str = "metric", **inputs: Any) -> list[ET.Element]:
    request = {"calculator": "noise-dose", "units": units, "inputs": inputs}
    drawings = json.loads(door.live(json.dumps(request)))["parts"]["drawings"]
    return ET.fromstring(f"<all>{drawings}</all>").findall("figure/{http://www.w3.org/2000/svg}svg")


@settings(max_examples=60)
@given(days, some.floats(0, 45), some.floats(0, 15), some.floats(0, 100), some.floats(0, 99),
       some.floats(40, 130), some.floats(0, 5), some.floats(0, 5), some.floats(0, 50))  # fmt: skip
def test_the_whole_worked_again(
    day: list[tuple[float, float, float]], rating: float, off: float, counted: float, worn: float,
    worn_from: float, meter: float, place: float, times: float,
) -> None:  # fmt: skip
    v = values(
        tasks=tasks(day), protector_rating=rating, taken_off=off, share_counted=counted,
        worn_share=worn, worn_from=worn_from, instrument_doubt=meter, position_doubt=place,
        time_doubt=times,
    )  # fmt: skip
    level, minutes, spread = (np.array(one) for one in zip(*day, strict=True))

    def mean(levels: Any, time: Any) -> float:
        return float(10 * np.log10((time / 480 * 10 ** (levels / 10)).sum()))

    assert v["minutes_in_all"] == pytest.approx(minutes.sum())
    assert v["day_level"] == pytest.approx(mean(level, minutes))
    loud = level >= 80
    niosh = 100 * (minutes * 2 ** ((level - 85) / 3) / 480)[loud].sum()
    osha = 100 * (minutes * 2 ** ((level - 90) / 5) / 480)[loud].sum()
    assert v["niosh_dose"] == pytest.approx(niosh)
    assert v["osha_dose"] == pytest.approx(osha)
    assert ("niosh_level_8h" in v) == bool(loud.any())
    if loud.any():
        assert v["niosh_level_8h"] == pytest.approx(85 + 10 * math.log10(niosh / 100))
        assert v["osha_level_8h"] == pytest.approx(90 + 16.61 * math.log10(osha / 100))
    share = minutes * 10 ** (level / 10)
    share = share / share.sum()
    doubt = share**2 * (spread**2 / 3 + meter**2 + place**2)
    doubt = doubt + (share * 4.342944819 * times / 100) ** 2
    assert v["day_doubt"] == pytest.approx(math.sqrt(doubt.sum()))
    assert v["expanded"] == pytest.approx(1.65 * v["day_doubt"])
    assert v["day_at_most"] == pytest.approx(v["day_level"] + v["expanded"])
    assert v["worst_share"] == pytest.approx(100 * share.max())
    if "without_worst" in v:
        kept = np.arange(len(day)) != int(share.argmax())
        assert v["without_worst"] == pytest.approx(mean(level[kept], minutes[kept]), abs=1e-4)
    reduction = max(rating - off, 0) * counted / 100
    assert v["reduction"] == pytest.approx(reduction)
    under = level + 10 * np.log10(worn / 100 * 10 ** (-reduction / 10) + 1 - worn / 100)
    ear = np.where(level >= worn_from, under, level)
    assert v["ear_level"] == pytest.approx(mean(ear, minutes))


@settings(max_examples=40)
@given(some.lists(some.tuples(some.floats(70, 110), some.floats(5, 200)), min_size=2, max_size=5),
       some.floats(0.1, 3), some.floats(0.1, 3), some.floats(1, 20))  # fmt: skip
def test_the_uncertainty_is_the_law_of_propagation(
    day: list[tuple[float, float]], doubt: float, meter: float, times: float
) -> None:
    """Against derivatives of the day's level taken by small differences."""
    levels, minutes = ([float(x) for x in one] for one in zip(*day, strict=True))
    base = day_level_dba(levels, minutes)
    energies = [time * 10 ** (level / 10) for level, time in day]
    shares = [one / sum(energies) for one in energies]
    total = 0.0
    for place in range(len(day)):
        more = [*levels]
        more[place] += 1e-5
        by_level = (day_level_dba(more, minutes) - base) / 1e-5
        longer = [*minutes]
        longer[place] *= 1 + 1e-6
        by_time = (day_level_dba(levels, longer) - base) / 1e-6
        total += by_level**2 * (doubt**2 + meter**2 + 1) + (by_time * times / 100) ** 2
    ours = day_uncertainty_db(shares, [doubt] * len(day), meter, 1, times)
    assert ours == pytest.approx(math.sqrt(total), rel=1e-4)


@settings(max_examples=40)
@given(days, some.floats(0.1, 20))
def test_louder_by_some_is_louder_by_that(
    day: list[tuple[float, float, float]], more: float
) -> None:
    levels, minutes = [one[0] for one in day], [one[1] for one in day]
    base = day_level_dba(levels, minutes)
    louder = day_level_dba([one + more for one in levels], minutes)
    assert louder == pytest.approx(base + more)
    twice = day_level_dba(levels * 2, minutes * 2)
    assert twice == pytest.approx(base + 10 * math.log10(2))


@given(some.floats(80, 120), some.floats(1, 480))
def test_doses_double_by_their_exchange(level: float, minutes: float) -> None:
    for criterion, exchange in ((85.0, 3.0), (90.0, 5.0)):
        one = dose_percent(level, minutes, criterion, exchange)
        assert dose_percent(level + exchange, minutes, criterion, exchange) == pytest.approx(
            2 * one
        )
        assert dose_percent(criterion, 480, criterion, exchange) == pytest.approx(100)
        assert allowed_minutes(level, criterion, exchange) * one == pytest.approx(100 * minutes)


def test_the_threshold_and_the_protector() -> None:
    assert dose_percent(79.99, 480, 85, 3) == 0
    assert dose_percent(80, 480, 90, 5) == pytest.approx(25)
    assert worn_level_dba(95, 20, 100) == pytest.approx(75)
    assert worn_level_dba(95, 20, 0) == 95
    assert worn_level_dba(95, 300, 90) == pytest.approx(85)  # a tenth of the time bare: ten less
    assert values()["ear_level"] < values(worn_share=50)["ear_level"] < values()["day_level"]
    assert values(protector_rating=5)["ear_level"] == pytest.approx(values()["day_level"])
    assert values(worn_from=93)["ear_level"] > values()["ear_level"]


def test_a_day_has_an_end_and_words_follow_the_figures() -> None:
    refused = door.answer(
        "noise-dose", {"tasks": [["a", 80, 720, 1], ["b", 80, 720, 1], ["c", 80, 1, 1]]}
    )["refused"][0]
    assert refused["input"] == "tasks" and "1441" in refused["why"]
    assert values(tasks=[["a", 80, 720, 1], ["b", 80, 720, 1]])["minutes_in_all"] == 1440
    quiet = [["Bench", 66, 480, 2]]
    assert values()["verdict"].startswith("Over the limit of 85 dB(A)")
    assert "Router" in values()["verdict"] and values()["worst_task"] == "Router, binding channels"
    assert values(tasks=[["Saw", 84, 480, 2]])["verdict"].startswith("Too near")
    assert values(tasks=quiet)["verdict"].startswith("Below")
    assert "unheard" in values(tasks=quiet)["ear_words"]
    assert "Still over" in values(worn_share=0)["ear_words"]
    assert values()["ear_words"].endswith("as you say.")
    said = door.answer("noise-dose", {"tasks": [["Saw", 96, 120, 2]]})["cautions"]
    assert "not an assessment" in said[0] and len(said) == 5
    assert "without_worst" not in values(tasks=quiet)


def test_the_table_adds_up() -> None:
    found = door.answer("noise-dose", {})
    table = found["tables"]["day_tasks"]
    rows = [dict(zip(table["columns"], row, strict=True)) for row in table["rows"]]
    assert sum(row["share"] for row in rows) == pytest.approx(100)
    assert sum(row["niosh"] for row in rows) == pytest.approx(
        found["results"]["niosh_dose"]["value"]
    )
    assert sum(row["osha"] for row in rows) == pytest.approx(found["results"]["osha_dose"]["value"])
    assert [row["ear"] < row["level"] for row in rows] == [True] * 4 + [False, True]
    assert rows[0]["niosh_time"] == pytest.approx(480 / 2 ** (7 / 3))


def test_the_picture_is_to_scale_and_on_paper() -> None:
    picture = pictures()[0]
    bars = [one for one in picture.iter() if one.tag.endswith("rect")]
    rows = values()["task_rows"]
    for bar, row in zip(bars, rows, strict=True):
        assert float(bar.get("width", "0")) == pytest.approx(max(1, 5 * row["share"]), abs=0.1)
    dark = [bar.get("class") for bar in bars]
    assert dark.count("wood-dark") == 1 and dark[3] == "wood-dark"
    assert shorten("x" * 34) == "x" * 34 and len(shorten("x" * 40)) == 34
    stream = random.Random(4)
    for _ in range(60):
        inputs = draw_inputs(calculator, stream)
        if "refused" in door.answer("noise-dose", inputs):
            continue
        for one in pictures(stream.choice(["metric", "inch"]), **inputs):
            assert off_paper(one) == [] and texts_that_touch(one) == []
    long = [["m" * 40, 130, 720, 15]] * 2
    assert off_paper(pictures(tasks=long)[0]) == []
