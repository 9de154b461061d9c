"""What must hold of wood and air, whatever the room and the witness."""

import json
import math
import re
from typing import Any

import mpmath
import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import curve_fit

from calculators.engine import door
from calculators.engine.compute import Answer, work_out
from calculators.engine.inputs import Refused
from calculators.laws.approach import fit_approach, residual_spread
from calculators.laws.equilibrium_moisture import emc_line, emc_percent, humidity_for_emc
from calculators.wood._moisture_solved import read_witness
from calculators.wood.moisture_content import calculator

TEMPERATURES = st.floats(-1, 54)
HUMIDITIES = st.floats(5, 95)
DAYS = [0.0, 7.0, 14.0, 21.0]


def values(**given_inputs: Any) -> dict[str, Any]:
    worked = work_out(calculator, given_inputs)
    assert isinstance(worked, Answer), worked
    return worked.values


def answer(**given_inputs: Any) -> Answer:
    worked = work_out(calculator, given_inputs)
    assert isinstance(worked, Answer), worked
    return worked


def refusal(**given_inputs: Any) -> Refused:
    worked = work_out(calculator, given_inputs)
    assert isinstance(worked, list)
    return worked[0]


def witness(gaps: list[float], days: list[float], **more: Any) -> dict[str, Any]:
    """Inputs whose witness, 1000 g ovendry, has these gaps to the room's moisture, %."""
    emc = emc_percent(21, 45)
    rows = [[day, 1000 * (1 + (emc + gap) / 100)] for day, gap in zip(days, gaps, strict=True)]
    start = emc + gaps[0]
    return {
        "weighings": rows, "moisture_from": "oven", "ovendry_mass": 100.0,
        "offcut_mass": 100.0 + start, "scale_step": 0.001, **more,
    }  # fmt: skip


# Wood and air


def by_mpmath(celsius: float, humidity: float) -> float:
    t, h = mpmath.mpf(celsius), mpmath.mpf(humidity) / 100
    w = 349 + mpmath.mpf("1.29") * t + mpmath.mpf("0.0135") * t**2
    k = (mpmath.mpf("0.805") + mpmath.mpf("0.000736") * t - mpmath.mpf("0.00000273") * t**2) * h
    k1 = mpmath.mpf("6.27") - mpmath.mpf("0.00938") * t - mpmath.mpf("0.000303") * t**2
    k2 = mpmath.mpf("1.91") + mpmath.mpf("0.0407") * t - mpmath.mpf("0.000293") * t**2
    both = (k1 * k + 2 * k1 * k2 * k**2) / (1 + k1 * k + k1 * k2 * k**2)
    return float(1800 / w * (k / (1 - k) + both))


@given(TEMPERATURES, HUMIDITIES)
@settings(max_examples=60)
def test_the_equation_is_the_handbook_s(celsius: float, humidity: float) -> None:
    assert emc_percent(celsius, humidity) == pytest.approx(by_mpmath(celsius, humidity), rel=1e-12)
    found = values(room_temperature=celsius, room_humidity=humidity, humidity_swing=0,
                   witness="none")  # fmt: skip
    assert found["emc"] == pytest.approx(by_mpmath(celsius, humidity), rel=1e-12)
    assert found["emc_low"] == found["emc_high"] == pytest.approx(found["emc"], rel=1e-12)


@given(TEMPERATURES, HUMIDITIES, st.floats(0.5, 4))
@settings(max_examples=40)
def test_damper_air_makes_damper_wood_and_the_inverse_goes_back(
    celsius: float, humidity: float, more: float
) -> None:
    below, above = emc_line(celsius, [humidity, humidity + more])
    assert below < above
    assert humidity_for_emc(below, celsius) == pytest.approx(humidity, abs=1e-8)


def test_warmer_air_of_one_humidity_makes_drier_wood_and_no_water_makes_none() -> None:
    warm = [emc_percent(celsius, 45) for celsius in (15, 20, 25, 30, 40)]
    assert warm == sorted(warm, reverse=True)
    assert emc_percent(21, 0) == 0
    assert humidity_for_emc(0, 21) == 0
    assert humidity_for_emc(emc_percent(21, 99), 21) == pytest.approx(99, abs=1e-8)
    with pytest.raises(ValueError, match="no humidity"):
        humidity_for_emc(40, 21)
    with pytest.raises(ValueError, match="no humidity"):
        humidity_for_emc(-1, 21)


def test_the_room_s_band_is_the_equation_at_its_two_ends() -> None:
    found = values(room_humidity=45, humidity_swing=5)
    assert found["emc_low"] == pytest.approx(emc_percent(21, 40), rel=1e-12)
    assert found["emc_high"] == pytest.approx(emc_percent(21, 50), rel=1e-12)
    assert found["emc_dampest"] == pytest.approx(emc_percent(21, 95), rel=1e-12)


# The wood now


def test_the_example_by_hand() -> None:
    found = values()
    start = (64.3 - 57.6) / 57.6 * 100
    dry = 812.0 / (1 + start / 100)
    assert found["start_moisture"] == pytest.approx(start)
    assert found["witness_dry"] == pytest.approx(dry)
    assert found["moisture_now"] == pytest.approx((794.9 - dry) / dry * 100)
    assert found["gap"] == pytest.approx(found["moisture_now"] - emc_percent(21, 45))
    assert found["offcut_at_rest"] == pytest.approx(57.6 * (1 + emc_percent(21, 45) / 100))
    assert found["mass_at_rest"] == pytest.approx(dry * (1 + emc_percent(21, 45) / 100))
    assert found["ready_mass"] == pytest.approx(dry * (1 + (emc_percent(21, 45) + 0.5) / 100))
    assert found["ready_day"] == pytest.approx(21 + found["wait"])
    assert humidity_for_emc(found["moisture_now"], 21) == pytest.approx(found["rest_humidity"])


def test_a_witness_that_weighs_as_at_first_holds_what_it_held() -> None:
    found = values(weighings=[[0, 500], [9, 500.0]], close_enough=5)
    assert found["moisture_now"] == pytest.approx(found["start_moisture"])


def test_wood_as_damp_as_the_air_makes_it_is_ready_and_its_air_is_the_room() -> None:
    found = values(**witness([2.0, 0.0], [0, 30]))
    assert found["gap"] == pytest.approx(0, abs=1e-9)
    assert found["rest_humidity"] == pytest.approx(45)
    assert found["verdict"].startswith("Ready")
    assert "wait" not in found


def test_very_damp_wood_has_no_air_it_rests_in() -> None:
    assert "rest_humidity" not in values(witness="none", offcut_mass=90)
    assert "rest_humidity" not in values(witness="none", offcut_mass=57.6)
    assert any("free water" in text for text in answer(witness="none", offcut_mass=90).cautions)
    assert not any("free water" in text for text in answer().cautions)


# The wait


@given(st.floats(1.5, 8), st.floats(0.01, 0.1), st.booleans(), st.floats(0.2, 0.6))
@settings(max_examples=60)
def test_an_exact_approach_is_found_again(
    gap: float, rate: float, damp: bool, close: float
) -> None:
    sign = 1 if damp else -0.9
    gaps = [sign * gap * math.exp(-rate * day) for day in DAYS]
    if abs(gaps[-1]) <= close or abs(gaps[0] - gaps[-1]) < 0.5:
        return
    found = values(**witness(gaps, DAYS, close_enough=close))
    assert found["time_constant"] == pytest.approx(1 / rate, rel=1e-6)
    assert found["wait"] == pytest.approx(
        math.log(abs(gaps[-1]) / close) / rate, rel=1e-5, abs=1e-5
    )
    assert found["start_gap"] == pytest.approx(gaps[0], rel=1e-6)
    assert found["scatter"] == pytest.approx(0, abs=1e-6)
    week = 1000 * (gaps[-1] - gaps[-1] * math.exp(-7 * rate)) / 100
    now = 1000 * (1 + found["moisture_now"] / 100)
    assert found["week_change"] == pytest.approx(abs(week) / now * 100, rel=1e-5)


def test_a_dry_witness_comes_up_to_the_room() -> None:
    gaps = [-4.0, -2.0, -1.0]
    found = values(**witness(gaps, [0, 10, 20], close_enough=0.5))
    assert found["ready_mass"] == pytest.approx(1000 * (1 + (found["emc"] - 0.5) / 100))
    assert found["wait"] == pytest.approx(10)
    assert found["verdict"].startswith("Not yet")
    assert values(**witness(gaps, [0, 10, 20], close_enough=1.5))["verdict"].startswith("Ready")


def test_scatter_is_told_in_grams() -> None:
    gaps = [4.0, 2.2, 1.0, 0.6]
    start, rate = fit_approach([0.0, 10.0, 20.0, 30.0], gaps)
    off = residual_spread([0.0, 10.0, 20.0, 30.0], gaps, start, rate)
    found = values(**witness(gaps, [0, 10, 20, 30], close_enough=0.3))
    assert found["scatter"] == pytest.approx(off / 100 * 1000, rel=1e-6)


def test_days_may_start_anywhere() -> None:
    early = values()
    rows = [[day + 100, mass] for day, mass in ((0, 812.0), (7, 803.4), (14, 798.1), (21, 794.9))]
    late = values(weighings=rows)
    for name in ("wait", "wait_uncertainty", "time_constant", "start_gap", "scatter"):
        assert late[name] == pytest.approx(early[name])
    assert late["ready_day"] == pytest.approx(early["ready_day"] + 100)


@given(st.lists(st.floats(-0.15, 0.15), min_size=4, max_size=7), st.sampled_from([-1, 1]))
@settings(max_examples=25)
def test_least_squares_as_scipy_finds_them(noise: list[float], sign: int) -> None:
    days = np.array([6.0 * place for place in range(len(noise))])
    gaps = sign * (4 * np.exp(-0.06 * days) + np.array(noise))
    start, rate = fit_approach(list(days), list(gaps))
    found, _ = curve_fit(
        lambda t, a, k: a * np.exp(-k * t), days, gaps, p0=[4.0 * sign, 0.06],
        xtol=1e-14, ftol=1e-14, gtol=1e-14,
    )  # fmt: skip
    assert [start, rate] == pytest.approx(list(found), rel=1e-5, abs=1e-7)
    off = gaps - found[0] * np.exp(-found[1] * days)
    expected = math.sqrt(float((off**2).sum()) / (len(days) - 2))
    assert residual_spread(list(days), list(gaps), start, rate) == pytest.approx(expected, abs=1e-9)


def test_two_weighings_are_met_exactly() -> None:
    start, rate = fit_approach([0.0, 10.0], [-4.0, -1.0])
    assert (start, rate) == pytest.approx((-4, math.log(4) / 10))
    assert residual_spread([0.0, 10.0], [-4.0, -1.0], start, rate) == 0


def test_a_fit_that_starts_far_astray_still_ends() -> None:
    start, rate = fit_approach([0.0, 1.0, 3000.0], [5.0, 4.9, 4.8])
    assert math.isfinite(start)
    assert 0 < rate < 1


def test_the_uncertainty_is_what_many_rounded_weighings_scatter() -> None:
    """Two weighings and the offcut, each off by up to half a step, evenly spread."""
    stream = np.random.default_rng(5)
    off = stream.uniform(-0.05, 0.05, (4, 40_000))
    cut, dry, first, last = np.array([64.3, 57.6, 812.0, 798.1])[:, None] + off
    emc = emc_percent(21, 45)
    whole = first / (cut / dry)
    one, two = 100 * (first / whole - 1) - emc, 100 * (last / whole - 1) - emc
    wait = np.log(two / 0.5) / (np.log(one / two) / 14)
    found = values(weighings=[[0, 812.0], [14, 798.1]])
    assert found["wait_uncertainty"] == pytest.approx(2 * float(wait.std()), rel=0.02)


def test_a_coarser_scale_a_meter_and_scatter_make_the_wait_less_sure() -> None:
    two = {"weighings": [[0, 812.0], [14, 798.1]]}
    fine, coarse = values(**two, scale_step=0.01), values(**two, scale_step=0.1)
    assert coarse["wait_uncertainty"] == pytest.approx(10 * fine["wait_uncertainty"], rel=1e-2)
    meter = {**two, "moisture_from": "meter", "wood_moisture": 11.6}
    poor, good = values(**meter, meter_error=1), values(**meter, meter_error=0.1)
    assert poor["wait_uncertainty"] > 3 * good["wait_uncertainty"]
    rows = [[0, 812.0], [7, 802.4], [14, 799.1], [21, 794.9]]
    assert values(weighings=rows)["wait_uncertainty"] > 1.5 * values()["wait_uncertainty"]
    assert any("scale explains" in text for text in answer(weighings=rows).cautions)
    assert not any("scale explains" in text for text in answer().cautions)


def test_a_meter_s_error_is_taken_as_evenly_spread() -> None:
    given_inputs = {"weighings": [[0, 812.0], [14, 798.1]], "moisture_from": "meter",
                    "wood_moisture": 12.0, "scale_step": 0.001, "meter_error": 0.1}  # fmt: skip

    def wait(start: float) -> float:
        emc = emc_percent(21, 45)
        two = 798.1 / 812.0 * (100 + start) - 100 - emc
        return math.log(two / 0.5) / (math.log((start - emc) / two) / 14)

    u = 0.1 / math.sqrt(3)
    expected = abs(wait(12 + u) - wait(12 - u))
    assert values(**given_inputs)["wait_uncertainty"] == pytest.approx(expected, rel=1e-3)


def test_when_the_curve_is_in_but_the_last_weighing_is_not() -> None:
    gaps = [4.0, 1.0, 0.35, 0.36]
    found = values(**witness(gaps, [0, 10, 20, 30], close_enough=0.355, scale_step=0.1))
    assert found["wait"] == 0
    assert found["verdict"].startswith("By the curve it is ready")


@pytest.mark.parametrize(
    ("given_inputs", "start"),
    [
        ({}, "Not yet: 9.3 %, on its way to 8.5 %. About 7 d more"),
        ({"close_enough": 0.9}, "Ready: 9.3 %"),
        ({"witness": "none"}, "At 11.6 % it is damper than this air"),
        ({"witness": "none", "ovendry_mass": 62}, "At 3.7 % it is drier than this air"),
    ],
)
def test_the_verdict(given_inputs: dict[str, Any], start: str) -> None:
    assert values(**given_inputs)["verdict"].startswith(start)


def test_two_weighings_carry_a_warning() -> None:
    assert any("Two weighings" in text for text in
               answer(weighings=[[0, 812.0], [14, 798.1]]).cautions)  # fmt: skip
    assert not any("Two weighings" in text for text in answer().cautions)


# Refusals


@pytest.mark.parametrize(
    ("given_inputs", "blamed", "words"),
    [
        ({"humidity_swing": 39, "room_humidity": 40}, "humidity_swing", "2 to 98"),
        ({"humidity_swing": 10, "room_humidity": 90}, "humidity_swing", "2 to 98"),
        ({"ovendry_mass": 64.4}, "ovendry_mass", "dry wood cannot be heavier"),
        ({"ovendry_mass": 18}, "ovendry_mass", "more than any wood holds"),
        ({"weighings": [[7, 812], [0, 798]]}, "weighings", "oldest first"),
        ({"weighings": [[0, 812], [0, 798]]}, "weighings", "oldest first"),
        ({"weighings": [[0, 812], [7, 700]]}, "weighings", "which cannot be"),
        ({"weighings": [[0, 812], [7, 780]]}, "weighings", "gone past"),
        ({"weighings": [[0, 812], [7, 820]]}, "weighings", "moves away"),
        ({"weighings": [[0, 812], [7, 812]]}, "weighings", "do not come steadily"),
        ({"weighings": [[0, 812], [7, 811.9]]}, "weighings", "changed too little"),
        ({"weighings": [[0, 812], [7, 811.2]], "scale_step": 1}, "weighings", "changed too little"),
        ({"offcut_mass": 80, "close_enough": 0.1}, "weighings", "free water"),
        ({"moisture_from": "meter", "meter_error": 5}, "weighings", "moisture at the start"),
    ],
)  # fmt: skip
def test_what_cannot_be_is_refused(given_inputs: dict[str, Any], blamed: str, words: str) -> None:
    found = refusal(**given_inputs)
    assert found.input == blamed
    assert words in found.why
    assert found.allowed


def test_a_wait_of_years_is_no_answer() -> None:
    gaps = [5 * math.exp(-0.0015 * day) for day in DAYS]
    assert "changed too little" in refusal(**witness(gaps, DAYS, close_enough=0.1)).why
    gaps = [5 * math.exp(-0.006 * day) for day in DAYS]
    assert values(**witness(gaps, DAYS, close_enough=0.5))["wait"] > 300


# Pictures and exercises


@pytest.mark.parametrize("units", ["metric", "inch"])
@pytest.mark.parametrize(
    ("given_inputs", "pictures"),
    [({}, 2), ({"witness": "none"}, 1), ({"close_enough": 2}, 2), ({"humidity_swing": 0}, 2),
     ({"witness": "none", "offcut_mass": 150}, 1)],
)  # fmt: skip
def test_pictures_stay_on_their_paper(given_inputs: Any, pictures: int, units: str) -> None:
    request = {"calculator": "moisture-content", "inputs": given_inputs, "units": units}
    made = json.loads(door.live(json.dumps(request)))["parts"]["drawings"]
    assert made.count("<svg") == pictures
    for drawing in made.split("<svg")[1:]:
        box = re.search(r'viewBox="0 0 (\S+) (\S+)"', drawing)
        assert box
        for axis, limit in (("x", float(box[1])), ("y", float(box[2]))):
            for found in re.findall(rf'[ c]{axis}[12]?="([^"]+)"', drawing):
                assert 0 <= float(found) <= limit
    assert ("room&#39;s humidity" in made) == (given_inputs.get("humidity_swing") != 0)


def test_a_witness_was_weighed_for_the_days_between_its_first_and_last_line() -> None:
    found = read_witness([{"day": 3.0, "mass": 410.0}, {"day": 10.0, "mass": 408.0}])
    assert (found["weighed_for"], found["last_day"]) == (7.0, 10.0)
    assert (found["first_mass"], found["last_mass"]) == (410.0, 408.0)


@pytest.mark.parametrize(("humidity", "swing", "refused"), [(93, 5, False), (94, 5, True),
                                                            (7, 5, False), (6, 5, True)])  # fmt: skip
def test_the_room_stays_between_2_and_98_per_cent(humidity: int, swing: int, refused: bool) -> None:
    answer = door.answer("moisture-content", {"room_humidity": humidity, "humidity_swing": swing})
    blamed = [one["input"] for one in answer.get("refused", ())]
    assert ("humidity_swing" in blamed) == refused
