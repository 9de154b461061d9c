"""What must hold of the pore-filler calculation: open pores, fillings, quantities."""

import math
import random
from typing import Any

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from scipy.integrate import quad

from calculators.engine.compute import Answer, Say, work_out
from calculators.engine.inputs import Refused
from calculators.finish._filler_drawing import draw_pore
from calculators.finish._filler_work import fillings_needed
from calculators.finish.pore_filler import calculator
from calculators.laws.open_pores import left_open, mean_segment_mm2, segment_mm2

from .svg_bounds import outside


def answer(**given_inputs: Any) -> Answer:
    worked = work_out(calculator, given_inputs)
    assert isinstance(worked, Answer), worked
    return worked


def values(**given_inputs: Any) -> dict[str, Any]:
    return answer(**given_inputs).values


def refusal(**given_inputs: Any) -> Refused:
    worked = work_out(calculator, given_inputs)
    assert isinstance(worked, list)
    return worked[0]


def own(diameter: float, number: float, depth: float, **more: Any) -> dict[str, Any]:
    return {"filled_wood": "own", "own_pore_diameter": diameter, "own_pores": number,
            "own_pore_depth": depth, **more}  # fmt: skip


# Open pores


def test_the_example_by_hand() -> None:
    v = values()
    assert (v["pore_diameter"], v["pores_per_mm2"], v["pore_depth"]) == (150, 8, 75)
    assert v["pore_share"] == pytest.approx(100 * 8 * math.pi / 4 * 0.15**2)
    assert v["pore_volume"] == pytest.approx(0.1413716694 * 75)
    assert v["pore_total"] == pytest.approx(0.35 * 0.1413716694 * 75)
    assert v["left_share"] == pytest.approx(44.75)
    assert v["fillings"] == 1
    assert v["sink_first"] == v["sink_left"] == pytest.approx(75 * 0.4475)
    assert v["filler_needed"] == pytest.approx(42)
    assert v["filler_mass"] == pytest.approx(63)
    assert v["filler_kept"] == pytest.approx(v["pore_total"] * 0.85)
    assert v["filler_wiped"] == pytest.approx(42 - v["pore_total"] * 0.85)
    assert v["waiting"] == 24
    assert v["lacquer_sunk"] == pytest.approx(v["pore_volume"] * 0.4475)


@pytest.mark.parametrize(
    ("wood", "width", "number"), [("mahogany", 150, 8), ("rosewood", 190, 5), ("walnut", 150, 6)]
)
def test_a_named_wood_is_its_own_figures_cut_along_the_grain(
    wood: str, width: float, number: float
) -> None:
    named, given_figures = values(filled_wood=wood), values(**own(width, number, width / 2))
    for name in ("pore_share", "pore_volume", "fillings", "sink_left", "filler_kept"):
        assert named[name] == pytest.approx(given_figures[name]), name


@given(st.floats(0.02, 0.5), st.floats(0.01, 0.99))
@settings(max_examples=40)
def test_segments_of_a_circle(diameter: float, share: float) -> None:
    depth = share * diameter
    found = quad(lambda y: 2 * math.sqrt(max(0.0, y * (diameter - y))), 0, depth, epsabs=0)[0]
    assert segment_mm2(diameter, depth) == pytest.approx(found, rel=1e-6)
    whole = math.pi * diameter**2 / 4
    assert segment_mm2(diameter, depth) + segment_mm2(diameter, diameter - depth) == pytest.approx(
        whole
    )
    assert segment_mm2(diameter, diameter) == pytest.approx(whole)
    mean = quad(lambda h: segment_mm2(diameter, h), 0, diameter)[0] / diameter
    assert mean_segment_mm2(diameter) == pytest.approx(mean, rel=1e-6)


def test_a_face_thrown_at_random_through_round_pores() -> None:
    """Pores scattered at random below a face: what it cuts open is as the formulas say."""
    stream = random.Random(4)
    diameter, number, width, reach = 0.15, 8.0, 1500.0, 0.2
    volume = opened = 0.0
    for _ in range(int(number * width * 2 * reach)):
        middle = stream.uniform(-reach, reach)  # height of the pore's middle over the face
        depth = diameter / 2 - middle
        if 0 < depth < diameter:
            volume += segment_mm2(diameter, depth)
            opened += 2 * math.sqrt(depth * (diameter - depth))
    v = values(**own(150, 8, 75))
    assert volume / width * 1000 == pytest.approx(v["pore_volume"], rel=0.03)
    assert opened / width * 100 == pytest.approx(v["pore_share"], rel=0.03)


@given(st.floats(20, 300), st.floats(0.1, 3), st.floats(5, 300))
@settings(max_examples=40)
def test_the_volume_goes_with_number_and_depth_and_the_square_of_the_width(
    width: float, number: float, depth: float
) -> None:
    one = values(**own(width, number, depth, brushed_film=1000, allowed_sink=200))
    two = values(**own(width, 2 * number, depth, brushed_film=1000, allowed_sink=200))
    assert two["pore_volume"] == pytest.approx(2 * one["pore_volume"])
    assert one["pore_volume"] * 4 * 1e6 * 100 == pytest.approx(
        100 * number * math.pi * width**2 * depth
    )


# Fillings


@given(st.floats(10, 900), st.floats(2, 200), st.floats(30, 100), st.floats(10, 100))
@settings(max_examples=80)
def test_the_fillings_are_the_fewest_that_do(
    depth: float, allowed: float, filled: float, stays: float
) -> None:
    given_inputs = own(60, 1, depth, allowed_sink=allowed, fill_share=filled, set_share=stays,
                       brushed_film=1000)  # fmt: skip
    worked = work_out(calculator, given_inputs)
    left = 1 - filled / 100 * stays / 100
    assert left == pytest.approx(left_open(filled / 100, stays / 100))
    if isinstance(worked, list):
        assert worked[0].input == "set_share"
        assert depth * left**20 > allowed
        return
    v, count = worked.values, worked.values["fillings"]
    assert v["sink_left"] == pytest.approx(depth * left**count)
    assert v["sink_left"] <= allowed * (1 + 1e-8)
    assert count == 0 or depth * left ** (count - 1) > allowed
    # Nothing is made or lost: what stays of the filler and what is open make the pore.
    assert v["filler_kept"] * stays / 100 + v["pore_total"] * left**count == pytest.approx(
        v["pore_total"]
    )
    assert v["filler_kept"] + v["filler_wiped"] == pytest.approx(v["filler_needed"])
    rows = worked.tables["fillings"]
    assert sum(row["taken"] for row in rows[:count]) == pytest.approx(v["filler_kept"])
    assert rows[-1]["mixed"] == pytest.approx(len(rows) * 350)
    assert rows[-1]["hours"] == len(rows) * 24
    assert len(rows) == max(count, 3)


def test_a_level_met_exactly_needs_no_further_filling() -> None:
    assert fillings_needed(100.0, 100 * 0.3**3, 30.0) == 3
    assert fillings_needed(100.0, 0.999 * 100 * 0.3**3, 30.0) == 4
    assert fillings_needed(30.0, 30.0, 50.0) == 0
    assert fillings_needed(2.0**20, 1.0, 50.0) == 20
    assert values(fill_share=100, set_share=100)["sink_left"] == 0


def test_a_filler_that_shrinks_less_never_needs_more() -> None:
    counts = [values(set_share=share, allowed_sink=5)["fillings"] for share in range(40, 101, 5)]
    assert counts == sorted(counts, reverse=True)
    assert counts[-1] < counts[0]


@pytest.mark.parametrize(
    ("given_inputs", "start"),
    [
        ({}, "One filling: it leaves 34 µm"),
        ({"filled_wood": "rosewood"}, "2 fillings: the first leaves 43 µm of sink-back, the last"),
        ({"allowed_sink": 75}, "None: the pores are 75 µm deep"),
        ({"allowed_sink": 10}, "3 fillings would be needed, more than 2"),
    ],
)
def test_the_words_about_fillings(given_inputs: dict[str, Any], start: str) -> None:
    assert values(**given_inputs)["verdict"].startswith(start)


def test_no_filling_takes_no_filler() -> None:
    v = values(allowed_sink=100)
    assert v["filler_needed"] == v["filler_kept"] == v["filler_wiped"] == v["waiting"] == 0
    assert v["lacquer_sunk"] == v["pore_volume"]
    assert not any("go into cloths" in text for text in answer(allowed_sink=100).cautions)


# Refusals and cautions


@pytest.mark.parametrize(
    ("given_inputs", "blamed"),
    [
        (own(400, 20, 200), "own_pores"),
        (own(300, 5, 900, brushed_film=100), "brushed_film"),
        ({"set_share": 10, "fill_share": 30, "allowed_sink": 5}, "set_share"),
    ],
)
def test_what_cannot_be_is_refused(given_inputs: dict[str, Any], blamed: str) -> None:
    found = refusal(**given_inputs)
    assert found.input == blamed
    assert found.why and found.allowed


def test_the_brushed_film_may_just_fill_the_pores() -> None:
    needed = values(**own(240, 3.5, 900, brushed_film=1000))["pore_volume"] * 0.85
    assert values(**own(240, 3.5, 900, brushed_film=needed * 1.001))["fillings"] > 0
    assert refusal(**own(240, 3.5, 900, brushed_film=needed * 0.999)).input == "brushed_film"
    full = 60 / (25 * math.pi * 0.4**2)
    assert values(**own(400, full * 0.999, 100, brushed_film=900))["pore_share"] < 60
    assert refusal(**own(400, full * 1.001, 100, brushed_film=900)).input == "own_pores"


@pytest.mark.parametrize(
    ("given_inputs", "words"),
    [({"set_time": 23}, "less than a full"), ({"set_share": 50}, "more than half")],
)
def test_the_cautions_come_when_they_should(given_inputs: dict[str, Any], words: str) -> None:
    assert any(words in text for text in answer(**given_inputs).cautions)
    assert not any(words in text for text in answer().cautions)


# Drawing and exercises


@given(st.floats(20, 500), st.floats(5, 1000), st.floats(2, 200), st.floats(30, 100))
@settings(max_examples=50)
def test_the_drawing_stays_on_its_paper(
    width: float, depth: float, allowed: float, filled: float
) -> None:
    worked = work_out(calculator, own(width, 0.3, depth, allowed_sink=allowed, fill_share=filled,
                                      brushed_film=1000), "inch")  # fmt: skip
    assume(isinstance(worked, Answer))
    assert isinstance(worked, Answer)
    drawn = draw_pore(worked.values, Say(calculator, worked.values, "inch"))
    assert outside(drawn) == []
    shown = min(max(1, worked.values["fillings"]), 3)
    assert drawn.count('class="glue"') == shown
    assert drawn.count('class="wood-mid"') == shown + 1
