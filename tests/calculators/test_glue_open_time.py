"""The glue clock: what dries or cools sooner, what must balance, what it refuses."""

import json
import math
from itertools import islice, pairwise
from typing import Any

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from scipy.integrate import solve_ivp

from calculators.engine import door
from calculators.engine.compute import Answer, work_out
from calculators.engine.declaration import Rows
from calculators.glueing import _glue_film, _glue_runs
from calculators.glueing._glue_film import Air, cut_layers, film_history
from calculators.glueing._glue_inputs import INPUTS
from calculators.glueing._glue_plan import in_words
from calculators.glueing.glue_open_time import calculator
from calculators.laws import conduction
from calculators.laws.psychrometrics import evaporation_heat_j_kg

MODEST = settings(max_examples=20)
COOLING = {"glue": "cooling"}


def worked(**inputs: Any) -> dict[str, Any]:
    answer = work_out(calculator, inputs)
    assert isinstance(answer, Answer), answer
    return answer.values


def open_time(**inputs: Any) -> float:
    value: float = worked(**inputs)["open_time"]
    return value


def refusal(**inputs: Any) -> dict[str, str]:
    refused = door.answer("glue-open-time", inputs)["refused"]
    assert len(refused) == 1
    only: dict[str, str] = refused[0]
    return only


# Drying


@MODEST
@given(
    minutes=st.floats(1, 8),  # longer, and a thin film on thirsty wood has no water left to lose
    temperature=st.integers(15, 30),
    humidity=st.integers(25, 75),
    spread=st.integers(150, 250),
    sorptivity=st.floats(0.5, 3),
)
def test_in_the_data_sheets_own_air_the_open_time_is_the_data_sheets(
    minutes: float, temperature: int, humidity: int, spread: int, sorptivity: float
) -> None:
    given_here = {
        "sheet_open_time": minutes, "sheet_temperature": temperature, "sheet_humidity": humidity,
        "sheet_spread": spread, "sorptivity": sorptivity, "room_temperature": temperature,
        "wood_temperature": temperature, "room_humidity": humidity, "spread": spread,
    }  # fmt: skip
    assert open_time(**given_here) == pytest.approx(60 * minutes, rel=1e-9)


@pytest.mark.parametrize(
    ("changed", "longer"),
    [
        ({"room_humidity": 30}, False),
        ({"room_humidity": 70}, True),
        ({"air_movement": 12}, False),
        ({"spread": 140}, False),
        ({"spread": 240}, True),
        ({"wood_moisture": 5}, False),
        ({"wood_moisture": 14}, True),
        ({"wood_temperature": 35}, False),
        ({"room_temperature": 15, "wood_temperature": 15}, True),
        ({"room_temperature": 30, "wood_temperature": 30}, False),
        ({"sheet_open_time": 4}, False),
        ({"air_pressure": 80}, False),
    ],
)
def test_what_lengthens_and_shortens_drying(changed: dict[str, float], longer: bool) -> None:
    difference = open_time(**changed) - open_time()
    assert (difference > 1) if longer else (difference < -1)


@MODEST
@given(st.integers(20, 80), st.floats(2, 20), st.integers(120, 300), st.floats(0.3, 3))
def test_the_water_balances(humidity: int, air: float, spread: int, sorptivity: float) -> None:
    """At the open time: water at the start, less air and wood, is the skinned share of it."""
    found = worked(room_humidity=humidity, air_movement=air, spread=spread, sorptivity=sorptivity)
    left = found["water_at_start"] - found["evaporated"] - found["soaked"]
    skinned = found["skinned_water"] / 100 * found["water_at_start"]
    assert left == pytest.approx(skinned, rel=1e-9)
    assert found["soaked"] == pytest.approx(
        found["sorptivity_today"] * math.sqrt(found["open_time"]), rel=1e-9
    )


def test_evaporation_alone_goes_as_the_spread() -> None:
    """Without soaking, twice the film takes a little over or under twice the time."""
    single = open_time(sorptivity=0, sheet_open_time=10, spread=100, sheet_spread=100)
    double = open_time(sorptivity=0, sheet_open_time=10, spread=200, sheet_spread=100)
    assert double == pytest.approx(2 * single, rel=0.12)


def test_soaking_alone_goes_as_the_square_of_the_spread() -> None:
    """With hardly any evaporation the wood takes its share as the root of time."""
    still = {"sheet_air_movement": 1, "air_movement": 1, "room_humidity": 90, "sheet_humidity": 90,
             "sheet_spread": 150}  # fmt: skip
    single, double = open_time(spread=150, **still), open_time(spread=300, **still)
    assert double == pytest.approx(4 * single, rel=0.06)


def test_the_wet_face_cools_below_the_room() -> None:
    found = worked()
    assert 13 < found["skin_temperature"] < found["room_temperature"]


def test_solids_at_skinning_follow_from_the_water() -> None:
    found = worked()
    solids = found["spread"] * found["solids"] / 100
    water = found["water_at_start"] * found["skinned_water"] / 100
    assert found["skinned_solids"] == pytest.approx(100 * solids / (solids + water))


@pytest.mark.parametrize(
    ("given_here", "blamed", "words"),
    [
        ({"sheet_open_time": 60}, "sheet_open_time", "no water would be left"),
        ({"sorptivity": 8}, "sheet_open_time", "no water would be left"),
        ({"sorptivity": 0, "sheet_humidity": 90, "sheet_air_movement": 1, "room_humidity": 95,
          "sheet_open_time": 60, "room_temperature": 20, "wood_temperature": 12}, "room_humidity",
         "does not skin"),
    ],
)  # fmt: skip
def test_drying_refuses(given_here: dict[str, float], blamed: str, words: str) -> None:
    found = refusal(**given_here)
    assert found["input"] == blamed
    assert words in found["why"]


# Cooling


@pytest.mark.parametrize(
    ("changed", "longer"),
    [
        ({"warmed_wood_temperature": 35}, False),
        ({"warmed_wood_temperature": 50}, True),
        ({"film_thickness": 0.1}, False),
        ({"film_thickness": 0.35}, True),
        ({"pot_temperature": 70}, True),
        ({"gel_temperature": 35}, False),
        ({"room_humidity": 20}, False),
        ({"air_movement": 10}, False),
        ({"room_temperature": 28}, True),
        ({"wood_thickness": 3}, False),
    ],
)
def test_what_lengthens_and_shortens_cooling(changed: dict[str, float], longer: bool) -> None:
    difference = open_time(**COOLING, **changed) - open_time(**COOLING)
    assert (difference > 1) if longer else (difference < -1)


def test_on_cold_wood_the_time_goes_as_the_square_of_the_film() -> None:
    """Thin films on deep cold wood: only the wood draws heat in so short a time."""
    cold = {**COOLING, "warmed_wood_temperature": 15, "room_humidity": 95, "air_movement": 1,
            "room_temperature": 40}  # fmt: skip
    thin, thick = (open_time(film_thickness=film, **cold) for film in (0.05, 0.1))
    assert thick == pytest.approx(4 * thin, rel=0.05)
    # The closed form of a thin film on deep wood, with nothing lost to the air.
    found = worked(film_thickness=0.05, **cold)
    heat = 0.05e-3 * 1100 * 3000
    left = thin_film_share(thin, heat, found["wood_effusivity"])
    assert left == pytest.approx((32 - 15) / (61 - 15), rel=0.06)


def test_dense_wood_draws_more_heat() -> None:
    cold = {**COOLING, "warmed_wood_temperature": 21}
    assert open_time(basic_gravity=0.8, **cold) < open_time(basic_gravity=0.33, **cold)


def test_the_contact_temperature_lies_between_and_nearer_to_the_glue() -> None:
    found = worked(**COOLING)
    assert 53 < found["contact_temperature"] < 61


@pytest.mark.parametrize(
    ("given_here", "blamed", "words"),
    [
        ({"room_temperature": 40, "warmed_wood_temperature": 60, "room_humidity": 95,
          "gel_temperature": 30}, "warmed_wood_temperature", "does not jell"),
        ({"room_temperature": 40, "warmed_wood_temperature": 25, "room_humidity": 95,
          "gel_temperature": 26, "wood_thickness": 1, "film_thickness": 1}, "room_temperature",
         "does not jell"),
        ({"pot_temperature": 41, "gel_temperature": 42}, "gel_temperature", "jelly in the pot"),
    ],
)  # fmt: skip
def test_cooling_refuses(given_here: dict[str, float], blamed: str, words: str) -> None:
    found = refusal(**COOLING, **given_here)
    assert found["input"] == blamed
    assert words in found["why"]


def test_says_so_where_the_glue_jells_at_once() -> None:
    answer = door.answer(
        "glue-open-time", {**COOLING, "warmed_wood_temperature": 8, "film_thickness": 0.06}
    )
    assert "jells as it touches the wood" in answer["results"]["open_said"]["shown"]
    assert answer["results"]["open_time"]["value"] < 3
    assert any("do not start glueing" in caution for caution in answer["cautions"])


# The model itself


def thin_film_share(time_s: float, film_heat: float, effusivity_below: float) -> float:
    """Carslaw and Jaeger 12.4: excess left to a well-mixed film on a deep body, as a share."""
    x = effusivity_below * math.sqrt(time_s) / film_heat
    return math.exp(x * x) * math.erfc(x)


def scipy_open_time(glue_c: float, wood_c: float, air: Air, gel_c: float) -> float:
    """The cooling example by scipy on its own grid: nodes, not cells; BDF, not Runge-Kutta."""
    found = worked(**COOLING, warmed_wood_temperature=wood_c)
    k, heat = found["wood_conductivity"], found["wood_density"] * found["wood_heat_capacity"]
    wood = -0.015 * np.linspace(1, 0, 161) ** 2.2
    places = np.concatenate([wood, np.linspace(0, 2e-4, 13)[1:]])
    gaps, film = np.diff(places), np.arange(172) >= 160
    conductances = np.where(film, 0.4, k) / gaps
    stores = np.zeros(173)
    stores[:-1] += np.where(film, 3.3e6, heat) * gaps / 2
    stores[1:] += np.where(film, 3.3e6, heat) * gaps / 2
    loss = air.loss()

    def rates(_: float, now: Any) -> Any:
        flow = conductances * (now[:-1] - now[1:])
        change = np.zeros(173)
        change[1:] += flow
        change[:-1] -= flow
        change[0] -= air.dry_w_m2_k * (now[0] - air.temperature_c)
        change[-1] -= loss(float(now[-1]))
        return change / stores

    def excess(_: float, now: Any) -> float:
        mean: float = np.trapezoid(now[160:], places[160:]) / 2e-4
        return mean - gel_c

    excess.terminal = True  # type: ignore[attr-defined]
    start = np.where(places > 0, glue_c, wood_c).astype(float)
    start[160] = (heat * gaps[159] * wood_c + 3.3e6 * gaps[160] * glue_c) / (
        heat * gaps[159] + 3.3e6 * gaps[160]
    )
    ended = solve_ivp(rates, (0, 900), start, "BDF", rtol=1e-6, atol=1e-6, events=excess)
    time: float = ended.t_events[0][0]
    return time


@pytest.mark.parametrize("wood_c", [21, 38, 45])
def test_the_film_model_against_scipy(wood_c: float) -> None:
    found = worked(**COOLING, warmed_wood_temperature=wood_c)
    air = Air(21, found["vapour_pressure"], 101300, 4, found["radiation"], found["mass_transfer"])
    assert found["open_time"] == pytest.approx(scipy_open_time(61, wood_c, air, 32), rel=0.006)


@pytest.mark.parametrize("inputs", [{}, COOLING, {**COOLING, "warmed_wood_temperature": 21}])
def test_finer_cells_and_shorter_steps_change_little(
    inputs: dict[str, Any], monkeypatch: pytest.MonkeyPatch
) -> None:
    usual = open_time(**inputs)
    monkeypatch.setattr(_glue_film, "FILM_CELLS", 24)
    monkeypatch.setattr(_glue_film, "GROWTH", 1.05)
    monkeypatch.setattr(conduction, "STEPS_A_STAGE", 24)
    monkeypatch.setattr(_glue_runs, "FIRST_STEP_COOLING_S", 0.0005)
    monkeypatch.setattr(_glue_runs, "FIRST_STEP_DRYING_S", 0.005)
    assert usual == pytest.approx(open_time(**inputs), rel=0.006)


def test_evaporation_and_heat_are_of_one_piece() -> None:
    """What the face loses as heat is what dries plus what the air and the walls take."""
    layers = cut_layers(0.11, 437, 1500, 15, 0.4, 1100, 3000, film_thickness=0.2)
    air = Air(21, 1100, 101300, 4, 5, 0.004)
    points = list(islice(film_history(layers, 50, 40, air, 0.01), 90))
    start = [40.0] * layers.wood_cells + [50.0] * _glue_film.FILM_CELLS
    moments = conduction.march(
        layers.cells, start, air.loss(), back_w_m2_k=9, back_c=21, first_step_s=0.01
    )
    lost = list(islice(moments, 89))[-1].lost_j_m2
    dry = latent = 0.0
    for before, after in pairwise(points):
        step, face_c = after.time_s - before.time_s, (before.face_c + after.face_c) / 2
        dry += step * 9 * (face_c - 21)
        gone_kg = (after.evaporated_g_m2 - before.evaporated_g_m2) / 1000
        latent += gone_kg * evaporation_heat_j_kg(face_c)
    assert latent > dry > 0
    assert lost == pytest.approx(dry + latent, rel=0.005)


# The answer as a whole


@MODEST
@given(st.sampled_from(("drying", "cooling")), st.integers(1, 8), st.integers(0, 70))
def test_the_plan_is_read_off_the_same_clock(glue: str, hands: int, margin: int) -> None:
    answer = work_out(calculator, {"glue": glue, "hands": hands, "margin": margin})
    assert isinstance(answer, Answer)
    values, rows = answer.values, answer.tables["operations"]
    assert values["usable_time"] == pytest.approx(values["open_time"] * (1 - margin / 100))
    assert rows[-1]["end"] == pytest.approx(values["needed_time"])
    for row in rows:
        assert row["end"] - row["start"] == pytest.approx(row["takes"])
        assert row["left"] == pytest.approx(values["open_time"] - row["age"])
    fits = values["needed_time"] <= values["usable_time"]
    assert values["verdict"].startswith("It fits" if fits else "It does not fit")
    assert fits == (1 <= values["fewest_hands"] <= hands)
    assert fits == (values["glue_ups"] == 1)


@pytest.mark.parametrize("units", ["metric", "inch", "inch64"])
@pytest.mark.parametrize("glue", ["drying", "cooling"])
def test_the_plot_shows_every_operation_once(glue: str, units: str) -> None:
    asked = json.dumps({"calculator": "glue-open-time", "inputs": {"glue": glue}, "units": units})
    drawn = json.loads(door.live(asked))["parts"]["drawings"]
    name = "plan" if glue == "drying" else "hot_plan"
    plan = next(item for item in INPUTS if isinstance(item, Rows) and item.name == name)
    for number, (operation, *_) in enumerate(plan.example, start=1):
        assert drawn.count(f"{number}  {operation}<") == 1
    if glue == "cooling":
        assert ("°C" in drawn) == (units == "metric")
        assert ("°F" in drawn) == (units != "metric")


def test_the_span_brackets_the_open_time() -> None:
    """Half and twice the soaking rate, reckoned anew, are what the span says."""
    half, twice = open_time(sorptivity=1.25), open_time(sorptivity=5)
    span = worked()["span_words"]
    for time in (half, twice):
        assert in_words(time) in span
    thin = open_time(**COOLING, film_thickness=0.15)
    cool = open_time(**COOLING, warmed_wood_temperature=40)
    span = worked(**COOLING)["span_words"]
    assert in_words(cool) in span
    minutes, seconds = divmod(round(thin), 60)
    assert any(f"{minutes} min {near} s" in span for near in (seconds - 1, seconds, seconds + 1))


@MODEST
@given(st.floats(0.5, 3), st.floats(2, 9))
def test_a_thirstier_reckoning_still_meets_the_data_sheet(rate: float, minutes: float) -> None:
    """Whatever the soaking rate, a small change of air changes the time a little only."""
    assume(rate * math.sqrt(60 * minutes) < 60)
    near = open_time(sorptivity=rate, sheet_open_time=minutes, room_humidity=48)
    assert near == pytest.approx(60 * minutes, rel=0.06)


@MODEST
@given(st.floats(12, 30), st.floats(4, 16))
def test_the_data_sheets_test_knows_nothing_of_today(room: float, moisture: float) -> None:
    """It was made in its own air, on wood of its own moisture."""
    today = worked(room_temperature=room, wood_temperature=room, wood_moisture=moisture)
    for name in ("sheet_evaporated", "sheet_soaked", "skinned_water"):
        assert today[name] == worked()[name]
