"""What must hold of the polishing calculator, whatever the shop."""

import json
import math
from typing import Any

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from calculators.engine import door
from calculators.engine.compute import Answer, work_out
from calculators.engine.declaration import Choice, Number, Readings
from calculators.engine.inputs import Refused
from calculators.finish.polishing_pressure import calculator

FORCES = st.floats(5, 60)


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


# Heat


def test_the_example_by_hand() -> None:
    v = values(wood="none")
    rim = math.pi * 0.35 * 700 / 60
    flux = 0.30 * 0.40 * 30 * rim / (0.030 * 0.075)
    rise = 2 * flux * math.sqrt(0.2 / math.pi) / math.sqrt(0.18 * 1180 * 1500)
    assert v["heat_flux"] * 1000 == pytest.approx(flux)
    assert v["fast_rise"] == pytest.approx(rise)
    assert v["peak_temperature"] == pytest.approx(22 + rise, abs=0.01)
    assert v["peclet"] == pytest.approx(0.150 * 0.015 / (2 * 0.18 / (1180 * 1500)))


@given(FORCES, FORCES)
@settings(max_examples=40)
def test_heat_goes_with_force_and_the_limits_do_not(one: float, other: float) -> None:
    a, b = values(pressing_force=one), values(pressing_force=other)
    assert a["peak_rise"] / one == pytest.approx(b["peak_rise"] / other)
    for name in ("force_lowest", "force_highest", "edge_force_hot", "force_film"):
        assert a[name] == pytest.approx(b[name])


def test_the_hottest_force_just_uses_up_the_margin() -> None:
    limit = values()["force_hot"]
    v = values(pressing_force=limit)
    assert v["peak_temperature"] == pytest.approx(v["softening_temperature"] - v["safety_margin"])


def test_the_hottest_force_at_the_edge_just_uses_up_the_margin() -> None:
    limit = values()["edge_force_hot"]
    v = values(pressing_force=limit)
    assert v["edge_temperature"] == pytest.approx(v["softening_temperature"] - v["safety_margin"])


@given(st.floats(20, 1000), st.floats(1.1, 2))
@settings(max_examples=40)
def test_a_faster_hand_keeps_the_lacquer_cooler(travel: float, faster: float) -> None:
    assume(travel * faster <= 2000)
    slow, quick = (values(travel_speed=t, pressing_force=3) for t in (travel, travel * faster))
    assert slow["peak_rise"] > quick["peak_rise"]
    assert slow["fast_rise"] == pytest.approx(quick["fast_rise"] * math.sqrt(faster))


@pytest.mark.parametrize("wood", ["spruce", "cedar", "maple", "medium", "heavy"])
def test_wood_under_a_thin_film_makes_it_hotter_and_under_a_thick_one_does_not_matter(
    wood: str,
) -> None:
    thin, thick = (values(wood=wood, film_thickness=h) for h in (110, 1000))
    assert thin["peak_rise"] > 1.03 * thin["thick_rise"]
    assert thick["peak_rise"] == pytest.approx(thick["thick_rise"], rel=1e-6)
    assert values(wood="none")["peak_rise"] == values(wood="none")["thick_rise"]


def test_the_words_say_whether_the_heat_reached_the_wood() -> None:
    assert values()["wood_words"].startswith("Yes")
    assert values(film_thickness=400)["wood_words"].startswith("Hardly")
    assert values(wood="none")["wood_words"].startswith("Not asked")


@given(st.floats(5, 60), st.floats(110, 800))
@settings(max_examples=40)
def test_standing_still_for_the_softening_time_just_softens(force: float, film: float) -> None:
    time = values(pressing_force=force, film_thickness=film)["still_time"]
    assume(0.1 <= time <= 60)
    v = values(pressing_force=force, film_thickness=film, dwell=time)
    assert v["still_temperature"] == pytest.approx(v["softening_temperature"], abs=1e-6)


def test_standing_still_as_long_as_a_pass_lasts_is_as_hot_as_the_pass() -> None:
    v = values(dwell=0.2)
    assert v["still_rise"] == pytest.approx(v["fast_rise"])


def test_a_small_peclet_number_uses_the_full_answer_and_says_so() -> None:
    v = values(travel_speed=2, contact_length=2, pressing_force=1)
    assert v["peclet"] < 10
    assert v["thick_rise"] < 0.98 * v["fast_rise"]
    assert "below 10" in v["band_words"]
    assert "above 10" in values()["band_words"]


# Film


def test_polishing_as_in_the_trial_takes_what_the_trial_took() -> None:
    assert values()["removal"] == pytest.approx(6 / 4)


@given(st.floats(10, 60), st.floats(50, 300), st.floats(5, 200), st.floats(300, 1500))
@settings(max_examples=40)
def test_film_off_goes_with_force_and_speed_over_travel_and_width(
    force: float, travel: float, width: float, turning: float
) -> None:
    v = values(
        pressing_force=force, travel_speed=travel, contact_width=width, turning_speed=turning,
        edge_width=1, heat_share=1,
    )  # fmt: skip
    expected = 1.5 * force / 30 * 150 / travel * 75 / width * turning / 700
    assert v["removal"] == pytest.approx(expected)


@given(st.floats(5, 200))
@settings(max_examples=20)
def test_film_off_does_not_ask_how_long_the_print_is(length: float) -> None:
    assert values(contact_length=length, heat_share=1)["removal"] == pytest.approx(1.5)


@given(st.floats(110, 400), st.floats(1, 60), st.floats(1, 40))
@settings(max_examples=60)
def test_film_is_neither_made_nor_lost(film: float, peel: float, lost: float) -> None:
    v = values(film_thickness=film, orange_peel=peel, trial_film_lost=lost)
    passes, removal = v["passes_to_flat"], v["removal"]
    assert peel <= passes * removal * (1 + 1e-8) < peel + removal * (1 + 1e-8)
    assert passes == int(passes) >= 1
    if "film_left" in v:
        assert v["film_left"] + passes * removal == pytest.approx(film)
    if "margin_left" in v:
        left, to_wood = v["passes_left"], v["passes_to_wood"]
        assert v["margin_left"] - left * removal > -1e-6
        assert v["margin_left"] - (left + 1) * removal < 1e-6
        assert v["film_left"] - to_wood * removal < 1e-6
        assert v["film_left"] - (to_wood - 1) * removal > -1e-6
    else:
        assert v["film_words"].startswith("Not enough") or "overshoot" in v["film_words"]


def test_a_whole_number_of_passes_is_not_spoilt_by_the_last_bits() -> None:
    v = values(orange_peel=21, trial_film_lost=0.3, trial_passes=3)
    assert v["removal"] == pytest.approx(0.1)
    assert v["passes_to_flat"] == 210


def test_the_lightest_force_needs_just_the_most_passes() -> None:
    light = values()["force_lowest"]
    assert values(pressing_force=light)["passes_to_flat"] == 20
    assert values(pressing_force=0.999 * light)["passes_to_flat"] == 21


def test_the_film_limit_takes_all_the_spare_film_in_one_pass() -> None:
    dull = {"trial_film_lost": 60, "trial_passes": 1, "heat_share": 5, "pressing_force": 20}
    v = values(**dull)
    assert v["force_highest"] == v["force_film"] < v["force_hot"]
    full = values(**{**dull, "pressing_force": v["force_film"]})
    assert full["removal"] == pytest.approx(full["spare_film"])


def test_without_a_trial_nothing_is_said_of_film_and_a_caution_says_so() -> None:
    worked = answer(trial="not yet")
    shown = door.as_json(worked)["results"]
    for name in ("removal", "passes_to_flat", "film_left", "edge_removal", "wear", "force_lowest",
                 "film_words", "edge_film_words", "chance_light_a"):  # fmt: skip
        assert name not in shown
    assert shown["force_highest"]["value"] == pytest.approx(worked.values["force_hot"])
    assert any("No trial pass" in text for text in worked.cautions)
    assert not any("No trial pass" in text for text in answer().cautions)


# The edge


def test_an_edge_as_wide_and_thick_as_the_flat_is_the_flat() -> None:
    v = values(edge_width=75, edge_film=180, edge_least_film=100)
    assert v["edge_pressure"] == pytest.approx(v["mean_pressure"])
    assert v["edge_temperature"] == pytest.approx(v["peak_temperature"])
    assert v["edge_removal"] == pytest.approx(v["removal"])
    assert v["edge_left"] == pytest.approx(v["film_left"])
    assert v["edge_passes"] == v["passes_to_flat"] + v["passes_left"]
    assert v["edge_wood_pass"] == v["passes_to_flat"] + v["passes_to_wood"]


def test_a_thinner_film_at_the_edge_feels_the_wood_more() -> None:
    v = values(edge_width=75, edge_film=90)
    assert v["edge_temperature"] > v["peak_temperature"] + 1


@pytest.mark.parametrize(
    ("given_inputs", "start"),
    [
        ({"edge_film": 70}, "Nothing to spare"),
        ({"edge_width": 5}, "Burns through on pass 7, "),
        ({"edge_width": 20}, "Too thin before"),
        ({}, "Keeps 87 µm"),
    ],
)
def test_the_words_of_the_edge(given_inputs: dict[str, Any], start: str) -> None:
    assert values(**given_inputs)["edge_film_words"].startswith(start)


# The window and the verdict


@pytest.mark.parametrize(
    ("given_inputs", "start"),
    [
        ({}, "Right"),
        ({"pressing_force": 50}, "Too hard"),
        ({"pressing_force": 10}, "Too light"),
        ({"most_passes": 11}, "Too light"),
        ({"most_passes": 10}, "No force is right"),
        ({"trial": "not yet"}, "Cool enough"),
        ({"trial": "not yet", "pressing_force": 50}, "Too hard"),
    ],
)
def test_the_verdict_follows_the_window(given_inputs: dict[str, Any], start: str) -> None:
    v = values(**given_inputs)
    assert v["verdict"].startswith(start)
    assert ("force_aim" in v) == ("force_lowest" in v and v["force_lowest"] < v["force_highest"])


@pytest.mark.parametrize(
    ("given_inputs", "blamed"),
    [
        ({"film_thickness": 100}, "film_thickness"),
        ({"contact_length": 120, "wheel_diameter": 100}, "contact_length"),
        ({"edge_width": 80}, "edge_width"),
        ({"start_temperature": 50}, "start_temperature"),
        ({"turning_speed": 3000}, "turning_speed"),
        ({"contact_length": 2, "contact_width": 2, "edge_width": 1}, "pressing_force"),
        ({"readings_a": "30 31"}, "readings_a"),
        ({"trial_passes": 2.5}, "trial_passes"),
    ],
)
def test_what_cannot_be_is_refused_with_the_input_to_blame(
    given_inputs: dict[str, Any], blamed: str
) -> None:
    found = refusal(**given_inputs)
    assert found.input == blamed
    assert found.why
    assert found.allowed


# Exercises


# Any shop


@st.composite
def any_inputs(draw: st.DrawFn) -> dict[str, Any]:
    chosen = {
        item.name: draw(st.sampled_from(item.options))[0]
        for item in calculator.inputs
        if isinstance(item, Choice)
    }
    drawn: dict[str, Any] = dict(chosen)
    for item in calculator.inputs:
        if item.when is not None and chosen[item.when.choice] not in item.when.is_one_of:
            continue
        if isinstance(item, Number) and item.whole:
            drawn[item.name] = draw(st.integers(int(item.lowest), int(item.highest)))
        elif isinstance(item, Number):
            drawn[item.name] = draw(st.floats(item.lowest, item.highest))
        elif isinstance(item, Readings):
            one = st.floats(item.lowest, item.highest)
            drawn[item.name] = draw(st.lists(one, min_size=item.at_least, max_size=12))
    drawn["edge_width"] = min(drawn["edge_width"], drawn["contact_width"])
    drawn["contact_length"] = min(drawn["contact_length"], drawn["wheel_diameter"])
    drawn["pressing_force"] = min(drawn["pressing_force"], drawn["contact_width"] / 10 + 0.5)
    return drawn


@given(any_inputs(), st.sampled_from(["metric", "inch", "inch64"]))
@settings(max_examples=150)
def test_any_valid_inputs_give_an_answer_or_a_reason(drawn: dict[str, Any], units: str) -> None:
    request = {"calculator": "polishing-pressure", "inputs": drawn, "units": units}
    found = json.loads(door.live(json.dumps(request)))
    if "refused" in found:
        assert all(one["why"] and one["allowed"] for one in found["refused"])
        return
    worked = work_out(calculator, drawn, units)
    assert isinstance(worked, Answer)
    for name, value in worked.values.items():
        if isinstance(value, float):
            assert math.isfinite(value), name
            if not name.endswith("temperature") and name != "difference":
                assert value >= 0, name
