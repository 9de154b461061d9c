"""Settling: both laws against scipy, the band, the choice between them, refusals, words."""

import json
import math
import random
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import brentq, curve_fit
from scipy.stats import t as student

from calculators.engine import door, soundness
from calculators.engine.compute import Answer, work_out
from calculators.engine.registry import load
from calculators.laws.settling_curves import APPROACH, CREEP, Curve, fit_curve, half_width
from calculators.laws.student_factor import normal_factor, student_t_density, student_t_factor

CALCULATOR = load("settling")
DAYS = [0.0, 1, 2, 3, 5, 7, 10, 14]
EXAMPLE = [2.20, 2.33, 2.38, 2.42, 2.44, 2.46]


def worked(**inputs: Any) -> dict[str, Any]:
    answer = work_out(CALCULATOR, inputs)
    assert isinstance(answer, Answer), answer
    return answer.values


def refused(**inputs: Any) -> tuple[str, str]:
    answer = work_out(CALCULATOR, inputs)
    assert isinstance(answer, list)
    return answer[0].input, answer[0].why


def rows(days: Any, heights: Any) -> list[list[float]]:
    return [[day, height] for day, height in zip(days, heights, strict=True)]


def creep(day: Any, a: float, b: float, tau: float) -> Any:
    return a + b * np.log10(1 + day / tau)


def approach(day: Any, a: float, b: float, tau: float) -> Any:
    return a + b * (1 - np.exp(-day / tau))


def test_declaration_hangs_together() -> None:
    assert soundness.find_faults(CALCULATOR) == []


@given(st.floats(1, 4), st.floats(0.05, 0.5), st.sampled_from([-1, 1]), st.floats(0.1, 4))
@settings(max_examples=40)
def test_readings_on_a_curve_give_it_back(a: float, b: float, sign: int, tau: float) -> None:
    for law, shape in ((CREEP, creep), (APPROACH, approach)):
        found = fit_curve(DAYS, list(shape(np.array(DAYS), a, sign * b, tau)), law)
        assert found.edge == ""
        assert (found.start, found.gain, found.time_d) == pytest.approx(
            (a, sign * b, tau), rel=1e-5
        )
        assert found.height(30) == pytest.approx(float(shape(30, a, sign * b, tau)), rel=1e-6)


@pytest.mark.parametrize("seed", range(6))
@pytest.mark.parametrize("name", ["creep", "approach"])
def test_scattered_readings_against_curve_fit(seed: int, name: str) -> None:
    """Parameters, scatter and both half widths, for readings that begin on day 0 or later."""
    stream = random.Random(seed)
    law, shape = (CREEP, creep) if name == "creep" else (APPROACH, approach)
    days = np.array([0.5 * (seed % 3), 1.3, 2, 3.5, 5, 8, 12])
    heights = [shape(day, 2.2, 0.25, 1.4) + stream.gauss(0, 0.004) for day in days]
    origin = days[0] if name == "approach" else 0.0
    best, covariance = curve_fit(
        shape, days - origin, heights, p0=[2.2, 0.25, 1.4], xtol=1e-14, ftol=1e-14
    )
    found = fit_curve(list(days), heights, law)
    assert (found.start, found.gain, found.time_d) == pytest.approx(tuple(best), rel=2e-5)
    off = np.array(heights) - shape(days - origin, *best)
    scatter = math.sqrt(float(off @ off) / 4)
    values = worked(readings=rows(days, heights), gauge_step=1e-3, law=name, look_ahead=20)
    assert values[f"{name}_scatter"] == pytest.approx(scatter, rel=1e-6)
    assert values["freedom"] == 4
    day = 32 - origin
    moves = []
    for place in range(3):
        step = abs(best[place]) * 1e-5
        up, down = best.copy(), best.copy()
        up[place] += step
        down[place] -= step
        moves.append((shape(day, *up) - shape(day, *down)) / (2 * step))
    error = math.sqrt(float(np.array(moves) @ covariance @ np.array(moves)))
    factor = float(student.ppf(0.975, 4))
    assert values["curve_half"] == pytest.approx(factor * error, rel=1e-3)
    assert values["reading_half"] == pytest.approx(factor * math.hypot(error, scatter), rel=1e-3)
    assert values["forecast"] == pytest.approx(shape(day, *best), rel=1e-6)
    assert values["forecast_high"] - values["forecast_low"] == pytest.approx(
        2 * values["reading_half"]
    )


@given(st.floats(51, 99.9), st.floats(0.6, 400))
@settings(max_examples=60)
def test_students_factor_and_density_against_scipy(confidence: float, freedom: float) -> None:
    factor = student_t_factor(confidence, freedom)
    assert factor == pytest.approx(
        float(student.isf((1 - confidence / 100) / 2, freedom)), rel=1e-8
    )
    assert student_t_density(factor, freedom) == pytest.approx(
        float(student.pdf(factor, freedom)), rel=1e-9
    )


@pytest.mark.parametrize("confidence", [0, 100, 101, -5])
def test_no_factor_covers_everything(confidence: float) -> None:
    with pytest.raises(ValueError, match="no confidence"):
        student_t_factor(confidence, 4)
    with pytest.raises(ValueError, match="no confidence"):
        normal_factor(confidence)


def test_order_of_the_lines_and_their_zero_do_not_matter() -> None:
    listed = rows(range(6), EXAMPLE)
    assert worked(readings=listed[::-1])["forecast"] == worked(readings=listed)["forecast"]
    lifted = worked(readings=rows(range(6), [h + 1 for h in EXAMPLE]))
    plain = worked(readings=listed)
    assert lifted["to_come"] == pytest.approx(plain["to_come"], abs=1e-9)
    assert lifted["forecast"] == pytest.approx(plain["forecast"] + 1, abs=1e-9)
    # The approach looks the same from any day on; creep counts from the load.
    later = worked(readings=rows([d + 3 for d in range(6)], EXAMPLE), law="approach")
    assert later["to_come"] == pytest.approx(worked(law="approach")["to_come"], abs=1e-9)
    assert later["calm_day"] == pytest.approx(worked(law="approach")["calm_day"] + 3, abs=1e-6)


def test_falling_readings_mirror_rising_ones() -> None:
    up = worked(readings=rows(range(6), EXAMPLE))
    down = worked(readings=rows(range(6), [5 - h for h in EXAMPLE]))
    assert down["to_come"] == pytest.approx(-up["to_come"], abs=1e-9)
    assert down["calm_day"] == pytest.approx(up["calm_day"], abs=1e-6)
    assert down["rise_so_far"] == pytest.approx(-0.26)
    assert down["reading_half"] == pytest.approx(up["reading_half"], abs=1e-9)


@pytest.mark.parametrize("law", ["creep", "approach"])
@pytest.mark.parametrize("step", [0.005, 0.01, 0.03])
def test_calm_day_is_when_the_next_day_moves_it_by_one_step(law: str, step: float) -> None:
    values = worked(law=law, gauge_step=step)
    tau, gain = values[f"{law}_time"], values[f"{law}_gain"]
    shape = creep if law == "creep" else approach

    def excess(day: float) -> float:
        return float(shape(day + 1, 0, gain, tau) - shape(day, 0, gain, tau)) - step

    assert values["calm_day"] == pytest.approx(brentq(excess, 0, 500), rel=1e-9)
    assert values["next_day"] == pytest.approx(excess(5) + step, rel=1e-9)


@pytest.mark.parametrize("law", ["creep", "approach"])
def test_a_gauge_coarser_than_the_first_day_is_calm_from_the_start(law: str) -> None:
    assert worked(law=law, gauge_step=0.2)["calm_day"] == 0


def test_a_coarse_gauge_is_the_least_scatter_there_is() -> None:
    fine, coarse = worked(gauge_step=0.001), worked(gauge_step=0.1)
    assert fine["spread"] == fine["scatter"] == fine["creep_scatter"]
    assert coarse["spread"] == pytest.approx(0.1 / math.sqrt(12))
    assert coarse["reading_half"] > 5 * fine["reading_half"]
    # Both laws then stand at the floor: the evidence is even, and the smaller scatter is used.
    assert coarse["weight"] == pytest.approx(50)
    assert coarse["used"] == "creep"
    share = (fine["creep_scatter"] / fine["approach_scatter"]) ** 6
    assert fine["weight"] == pytest.approx(100 / (1 + share))


def test_each_law_is_known_again_from_its_own_readings() -> None:
    for name, shape in (("creep", creep), ("approach", approach)):
        heights = [round(float(shape(day, 2.2, 0.3, 1.0)), 3) for day in DAYS]
        values = worked(readings=rows(DAYS, heights), gauge_step=0.001)
        assert values["used"] == name
        assert values["weight"] > 99
        assert "fits better" in values["law_words"]
        assert values["other_forecast"] != values["forecast"]
    asked = worked(readings=rows(DAYS, heights), gauge_step=0.001, law="creep")
    assert asked["used"] == "creep"
    assert asked["weight"] < 1


def test_set_today_allows_for_what_is_to_come() -> None:
    values = worked(action_bass=2.5)
    now = 2.19998612 + 0.2182283491 * math.log10(1 + 5 / 0.3413497048)
    assert values["height_now"] == pytest.approx(now)
    assert values["set_today"] == pytest.approx(2.5 - (values["forecast"] - now))
    assert values["forecast_day"] == 30
    assert worked(look_ahead=10)["to_come"] < values["to_come"]


def test_four_readings_leave_one_degree_of_freedom() -> None:
    listed = rows([0, 1, 3, 7], [1.90, 2.0, 2.08, 2.13])
    values = worked(readings=listed, gauge_step=0.01)
    assert values["freedom"] == 1
    assert values["factor"] == pytest.approx(12.7062, abs=1e-4)
    cautions = " ".join(door.answer("settling", {"readings": listed})["cautions"])
    assert "One degree of freedom" in cautions
    assert "One degree of freedom" not in " ".join(door.answer("settling", {})["cautions"])
    blamed, why = refused(readings=listed[:3])
    assert blamed == "readings"
    assert "give 4 to 30" in why


def test_readings_that_say_nothing_are_refused() -> None:
    assert "nothing to forecast" in refused(readings=rows(range(4), [2.2, 2.21, 2.22, 2.21]))[1]
    assert isinstance(worked(readings=rows(range(4), [2.2, 2.21, 2.22, 2.221])), dict)
    assert "two readings" in refused(readings=rows([0, 1, 1, 2], [2, 2.1, 2.1, 2.2]))[1]
    steady = rows(range(6), [2.2, 2.3, 2.4, 2.5, 2.6, 2.7])
    assert "does not slow down" in refused(readings=steady)[1]
    faster = rows(range(6), [2.2, 2.21, 2.24, 2.3, 2.4, 2.6])
    assert "does not slow down" in refused(readings=faster)[1]
    wild = rows(range(6), [2.2, 2.6, 2.1, 2.5, 2.15, 2.4])
    assert "go up and down" in refused(readings=wild)[1]
    assert "does not slow down" in refused(readings=steady, law="creep")[1]


def test_a_step_that_was_over_at_once_says_so() -> None:
    values = worked(readings=rows(range(6), [2.2, 2.41, 2.4, 2.4, 2.41, 2.4]))
    assert values["approach_edge"] == "short"
    assert values["forecast"] == pytest.approx(2.404, abs=1e-3)
    assert "before the second reading" in values["law_words"]
    assert values["calm_day"] < 1
    held = Curve(APPROACH, 0, 2.2, 0.2, 0.05, "short")
    free = Curve(APPROACH, 0, 2.2, 0.2, 0.05)
    assert len(held.slopes(3)) == 2
    assert len(free.slopes(3)) == 3
    # Two figures, five readings at the top: s·sqrt(1/5) there.
    assert half_width(held, [0.0, 1, 2, 3, 4, 5], 4, 1.0) == pytest.approx(math.sqrt(1 / 5))


def test_a_law_that_does_not_fit_is_left_out() -> None:
    heights = [2.209, 2.287, 2.365, 2.458, 2.536, 2.608]
    listed = rows(range(6), heights)
    values = worked(readings=listed, gauge_step=0.001)
    assert (values["creep_edge"], values["used"]) == ("long", "approach")
    assert values["creep_time"] == pytest.approx(20 * 5)  # held at twenty times the days read
    assert "other_forecast" not in values
    assert "Only one of the two" in values["law_words"]
    assert "does not slow down" in refused(readings=listed, gauge_step=0.001, law="creep")[1]


def test_words_tell_when_to_set_it() -> None:
    assert worked()["verdict"].startswith("Now, if its days are over")
    early = worked(readings=rows([0, 0.3, 0.6, 1, 1.5], [2.2, 2.26, 2.3, 2.335, 2.365]))
    assert early["verdict"].startswith("Not yet")
    assert early["calm_day"] > 1.5
    assert "do not tell the two apart" in worked()["law_words"]
    cautions = " ".join(door.answer("settling", {"look_ahead": 20})["cautions"])
    assert "far beyond" in cautions
    assert "far beyond" not in " ".join(door.answer("settling", {"look_ahead": 15})["cautions"])
    shaky = rows(range(7), [2.2, 2.36, 2.35, 2.45, 2.40, 2.48, 2.43])
    assert "same each time" in " ".join(door.answer("settling", {"readings": shaky})["cautions"])


def test_table_sets_every_reading_beside_both_curves() -> None:
    values = worked()
    for row in values["reading_rows"]:
        assert row["creep"] + row["creep_off"] == pytest.approx(row["height"])
        assert row["approach"] + row["approach_off"] == pytest.approx(row["height"])
    squares = sum(row["approach_off"] ** 2 for row in values["reading_rows"])
    assert math.sqrt(squares / 3) == pytest.approx(values["approach_scatter"])


@pytest.mark.parametrize("units", ["metric", "inch"])
def test_plot_shows_readings_band_and_forecast(units: str) -> None:
    request = {"calculator": "settling", "inputs": {}, "units": units}
    drawing = json.loads(door.live(json.dumps(request)))["parts"]["drawings"]
    assert drawing.count('class="ink-fill"') == 7  # six readings and the key
    assert drawing.count('class="accent-fill"') == 2
    assert drawing.count('class="good"') == 2
    assert "used: creep" in drawing
    assert ("Action, mm" if units == "metric" else "Action, in") in drawing
