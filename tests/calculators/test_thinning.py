"""What must hold of the thinning calculation: cups, trials, pouring, warmth."""

import math
from typing import Any

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from scipy.interpolate import make_interp_spline
from scipy.optimize import brentq

from calculators.engine.compute import Answer, Say, work_out
from calculators.engine.inputs import Refused
from calculators.finish._thinning_drawing import draw_seconds
from calculators.finish._thinning_solved import pour, stretch
from calculators.finish.thinning import calculator
from calculators.laws.flow_cups import CUPS, seconds_for, steepness, viscosity_mm2_s
from calculators.laws.liquid_viscosity import (
    at_temperature_mm2_s,
    mixed_mm2_s,
    warming_constant_k,
)

from .svg_bounds import outside

CUP_NAMES = st.sampled_from(sorted(CUPS))


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


# Cups

# Seconds and mm²/s worked out by hand from the published equations.
BY_HAND = [
    ("ford4", 50, 3.85 * 45.51), ("ford3", 50, 2.31 * 43.42), ("ford2", 50, 1.44 * 32),
    ("iso3", 50, 22.15 - 4), ("iso4", 50, 68.5 - 4), ("iso5", 50, 164 - 4.4),
    ("iso6", 50, 345 - 11.4), ("din4", 50, 228.5 - 9.04), ("zahn1", 50, 23.1),
    ("zahn2", 50, 126), ("zahn3", 50, 11.7 * 42.5),
]  # fmt: skip
RANGES = {
    "ford2": (40, 100), "ford3": (20, 100), "ford4": (20, 100), "iso3": (30, 100),
    "iso4": (30, 100), "iso5": (30, 100), "iso6": (30, 100), "din4": (25, 150),
    "zahn1": (35, 80), "zahn2": (20, 80), "zahn3": (20, 80),
}  # fmt: skip


@pytest.mark.parametrize(("cup", "seconds", "viscosity"), BY_HAND)
def test_every_cup_by_hand(cup: str, seconds: float, viscosity: float) -> None:
    assert viscosity_mm2_s(cup, seconds) == pytest.approx(viscosity)
    assert (CUPS[cup].shortest_s, CUPS[cup].longest_s) == RANGES[cup]
    assert values(cup=cup, wanted_seconds=seconds, trials=[[0, 90], [50, 40]])[
        "viscosity_wanted"
    ] == pytest.approx(viscosity)


@given(CUP_NAMES, st.floats(30, 150), st.floats(1.01, 1.5))
@settings(max_examples=60)
def test_more_seconds_are_more_viscosity_and_back(cup: str, seconds: float, more: float) -> None:
    viscosity = viscosity_mm2_s(cup, seconds)
    assert viscosity < viscosity_mm2_s(cup, seconds * more)
    if viscosity > 0:
        assert seconds_for(cup, viscosity) == pytest.approx(seconds)
        root = brentq(lambda t: viscosity_mm2_s(cup, t) - viscosity, 1, 1000)
        assert seconds_for(cup, viscosity) == pytest.approx(root)
    step = 1e-3
    slope = viscosity_mm2_s(cup, seconds + step) - viscosity_mm2_s(cup, seconds - step)
    assert steepness(cup, seconds) == pytest.approx(slope / (2 * step), rel=1e-6)


# Mixing and warmth


@given(st.floats(0, 1), st.floats(1, 500), st.floats(0.3, 5))
@settings(max_examples=40)
def test_mixing_runs_from_one_liquid_to_the_other(share: float, one: float, two: float) -> None:
    mixed = mixed_mm2_s(share, one, two)
    assert min(one, two) * (1 - 1e-12) <= mixed <= max(one, two) * (1 + 1e-12)
    assert mixed == pytest.approx(one ** (1 - share) * two**share)
    assert mixed_mm2_s(0, one, two) == pytest.approx(one)
    assert mixed_mm2_s(1, one, two) == pytest.approx(two)


@given(st.floats(0, 20), st.floats(3, 20), st.floats(1.05, 4), st.floats(5, 40))
@settings(max_examples=40)
def test_warmth_passes_through_both_readings(
    cool: float, gap: float, ratio: float, wanted: float
) -> None:
    constant = warming_constant_k(cool, 80.0 * ratio, cool + gap, 80.0)
    assert constant > 0
    assert at_temperature_mm2_s(80.0 * ratio, cool, constant, cool + gap) == pytest.approx(80)
    there = at_temperature_mm2_s(80.0, cool + gap, constant, wanted)
    assert at_temperature_mm2_s(there, wanted, constant, cool) == pytest.approx(80 * ratio)
    kelvin = 1 / (wanted + 273.15) - 1 / (cool + gap + 273.15)
    assert math.log(there / 80) == pytest.approx(constant * kelvin)


# Trials


def test_the_example_by_hand() -> None:
    v = values()
    heights = [math.log(3.85 * (t - 4.49)) for t in (29, 19, 22)]
    low, high = 25 / 125, 50 / 150
    share = low + (high - low) * (heights[2] - heights[0]) / (heights[1] - heights[0])
    needed = share / (1 - share)
    assert v["thinner_needed"] == pytest.approx(100 * needed)
    slope = (heights[1] - heights[0]) / (high - low)
    assert v["log_slope"] == pytest.approx(slope)
    doubt = 1.5 * 3.85 / (3.85 * 17.51) / -slope * (1 + needed) ** 2
    assert v["thinner_doubt"] == pytest.approx(100 * doubt)
    assert v["thinner_to_add"] == pytest.approx(500 * needed - 100)
    assert v["thinner_mass"] == pytest.approx((500 * needed - 100) * 0.86)
    assert v["pot_after"] == pytest.approx(500 * (1 + needed))
    assert v["solids_after"] == pytest.approx(28 / (1 + needed))
    assert v["dry_film"] == pytest.approx(125 * 0.28 / (1 + needed))
    assert v["film_unthinned"] == pytest.approx(35)
    assert v["lacquer_to_add"] == 0
    assert (v["fewest_seconds"], v["longest_seconds"]) == (19, 58)
    assert (v["cup_shortest"], v["cup_longest"]) == (20, 100)
    assert "seconds_now" not in v


@given(
    CUP_NAMES, st.floats(0, 20), st.floats(5, 60), st.floats(5, 60), st.floats(0, 1),
    st.floats(1.2, 3), st.floats(1.2, 3),
)  # fmt: skip
@settings(max_examples=60)
def test_the_line_goes_through_the_trials(
    cup: str, first: float, more: float, yet: float, at: float, fast: float, faster: float
) -> None:
    """What is wanted between two trials lies on scipy's straight spline through them."""
    thinner = [first, first + more, first + more + yet]
    start = viscosity_mm2_s(cup, 60)
    heights = [math.log(v) for v in (start, start / fast, start / fast / faster)]
    seconds = [seconds_for(cup, math.exp(height)) for height in heights]
    assume(min(seconds) > 5)
    wanted = heights[2] + at * (heights[0] - heights[2])
    time = seconds_for(cup, math.exp(wanted))
    assume(time >= 5 and viscosity_mm2_s(cup, time) > 0)
    trials = [list(pair) for pair in zip(thinner, seconds, strict=True)]
    v = values(cup=cup, trials=trials[::-1], wanted_seconds=time, thinner_in_pot=0)
    shares = [r / (100 + r) for r in thinner]
    line = make_interp_spline(heights[::-1], shares[::-1], k=1)
    share = float(line(wanted))
    assert v["thinner_needed"] / (100 + v["thinner_needed"]) == pytest.approx(share, abs=1e-6)


@pytest.mark.parametrize("place", [0, 1, 2])
def test_a_trial_is_answered_by_its_own_thinner(place: int) -> None:
    trial = ((0, 58), (25, 29), (50, 19))[place]
    v = values(wanted_seconds=trial[1], thinner_in_pot=0, pot_volume=1000)
    assert v["thinner_needed"] == pytest.approx(trial[0], abs=1e-9)
    assert v["thinner_to_add"] == pytest.approx(10 * trial[0], abs=1e-6)


def test_beyond_the_trials_the_last_line_runs_on() -> None:
    points = [(0.0, 6.0), (0.2, 5.0), (0.4, 4.5)]
    assert stretch(points, 4.0)[0] == pytest.approx(0.6)
    assert stretch(points, 6.5)[0] == pytest.approx(-0.1)
    assert stretch(points, 5.0)[0] == pytest.approx(0.2)
    assert stretch(points, 4.75) == (pytest.approx(0.3), pytest.approx(-2.5))
    assert stretch(points, 5.5) == (pytest.approx(0.1), pytest.approx(-5))


def test_the_doubt_of_the_cup_is_half_of_what_its_two_ends_make() -> None:
    doubt = values(cup_uncertainty=0.1)["thinner_doubt"]
    ends = [values(wanted_seconds=22 + d)["thinner_needed"] for d in (-0.1, 0.1)]
    assert doubt == pytest.approx((ends[0] - ends[1]) / 2, rel=1e-3)
    assert values(cup_uncertainty=0)["thinner_doubt"] == 0


@given(st.floats(19.5, 57), st.floats(0.2, 0.5))
@settings(max_examples=30)
def test_fewer_seconds_take_more_thinner(wanted: float, step: float) -> None:
    more, less = (
        values(wanted_seconds=t, thinner_in_pot=0)["thinner_needed"]
        for t in (wanted, wanted + step)
    )
    assert more > less


# Pouring


@given(st.floats(10, 5000), st.floats(0, 200), st.floats(5, 200))
@settings(max_examples=60)
def test_after_pouring_the_pot_is_as_wanted(pot: float, within: float, wanted: float) -> None:
    added = pour(pot, within, wanted)
    lacquer = pot / (1 + within / 100) + added["lacquer_to_add"]
    thinner = pot - pot / (1 + within / 100) + added["thinner_to_add"]
    assert thinner == pytest.approx(lacquer * wanted / 100, abs=1e-9 * pot)
    assert min(added.values()) == 0
    assert (added["thinner_to_add"] > 0) == (wanted > within) or wanted == pytest.approx(within)


@pytest.mark.parametrize(
    ("given_inputs", "start"),
    [
        ({}, "Add 100 mL of thinner (86 g)"),
        ({"thinner_in_pot": 60}, "Too thin already: add 188 mL of lacquer"),
        ({"wanted_seconds": 29, "thinner_in_pot": 25}, "Nothing"),
    ],
)
def test_the_words_about_pouring(given_inputs: dict[str, Any], start: str) -> None:
    assert values(**given_inputs)["pour_words"].startswith(start)


@pytest.mark.parametrize(
    ("wanted", "start"), [(22, "22.0 s lies between"), (18.9, "18.9 s lies outside"),
                          (58, "58.0 s lies between"), (19, "19.0 s lies between")],
)  # fmt: skip
def test_the_words_about_trials(wanted: float, start: str) -> None:
    assert values(wanted_seconds=wanted, thinner_in_pot=0)["trial_words"].startswith(start)


# Warmth


def test_the_seconds_now_by_hand() -> None:
    v = values(warmth="pair")
    cool, warm = 3.85 * (27 - 4.49), 3.85 * (19 - 4.49)
    constant = math.log(cool / warm) / (1 / 290.15 - 1 / 300.15)
    now = 3.85 * 17.51 * math.exp(constant * (1 / 291.15 - 1 / 295.15))
    assert v["warming_constant"] == pytest.approx(constant)
    assert v["seconds_now"] == pytest.approx(now / 3.85 + 4.49)
    assert v["seconds_now"] > 22
    same = values(warmth="pair", lacquer_temperature=22)
    assert same["seconds_now"] == pytest.approx(22)
    assert values(warmth="pair", lacquer_temperature=26)["seconds_now"] < 22


# Refusals and cautions


@pytest.mark.parametrize(
    ("given_inputs", "blamed", "word"),
    [
        ({"wanted_seconds": 9, "cup": "zahn2"}, "wanted_seconds", "smaller hole"),
        ({"trials": [[0, 14], [20, 8]], "cup": "zahn2"}, "trials", "smaller hole"),
        ({"trials": [[20, 30], [20.4, 20]]}, "trials", "keep one"),
        ({"trials": [[20, 30], [40, 30]]}, "trials", "no faster"),
        ({"wanted_seconds": 59}, "wanted_seconds", "Without any thinner"),
        ({"wanted_seconds": 8, "trials": [[0, 190], [20, 180]]}, "wanted_seconds", "More than 400 %"),
        ({"trials": [[0, 22], [20, 15]], "thinner_in_pot": 5}, "thinner_in_pot", "fresh"),
        ({"warmth": "pair", "cool_temperature": 20, "warm_temperature": 21.9}, "warm_temperature", "2 °C"),
        ({"warmth": "pair", "warm_seconds": 27}, "warm_seconds", "no faster"),
        ({"warmth": "pair", "cup": "zahn2", "cool_seconds": 13}, "cool_seconds", "smaller"),
        ({"warmth": "pair", "cup": "zahn2", "warm_seconds": 13}, "warm_seconds", "smaller"),
        ({
                "warmth": "pair", "cool_seconds": 200, "warm_seconds": 8, "lacquer_temperature": 5,
                "cool_temperature": 20, "warm_temperature": 22,
            },
         "lacquer_temperature", "quarter of an hour"),
    ],
)  # fmt: skip
def test_what_cannot_be_is_refused(given_inputs: dict[str, Any], blamed: str, word: str) -> None:
    found = refusal(**given_inputs)
    assert found.input == blamed
    assert word in found.why
    assert found.allowed


def test_just_inside_what_is_refused_has_an_answer() -> None:
    assert values(trials=[[20, 30], [20.5, 29.9]])["thinner_needed"] > 20
    assert values(warmth="pair", cool_temperature=20, warm_temperature=22)["seconds_now"] > 22
    assert pour(600, 100, 1.0)["lacquer_to_add"] == pytest.approx(29700)


def test_a_pot_without_thinner_can_be_left_as_it_is() -> None:
    v = values(wanted_seconds=58, thinner_in_pot=0)
    assert v["thinner_needed"] == pytest.approx(0, abs=1e-9)
    assert v["pour_words"].startswith("Nothing")


@pytest.mark.parametrize(
    ("given_inputs", "words"),
    [
        ({"wanted_seconds": 19.5}, "outside the range of this cup"),
        ({"trials": [[0, 58], [80, 40], [150, 10]], "wanted_seconds": 20}, "The more thinner"),
        ({"warmth": "pair", "lacquer_temperature": 16}, "better bring"),
    ],
)
def test_the_cautions_come_when_they_should(given_inputs: dict[str, Any], words: str) -> None:
    assert any(words in text for text in answer(**given_inputs).cautions)
    assert not any(words in text for text in answer().cautions)
    assert not any("better bring" in text for text in answer(warmth="pair").cautions)


# Drawing and exercises


@given(st.floats(6, 60), st.floats(0, 100), st.floats(1, 100), st.floats(6, 55))
@settings(max_examples=50)
def test_the_drawing_stays_on_its_paper(
    wanted: float, first: float, more: float, fast: float
) -> None:
    worked = work_out(calculator, {
        "wanted_seconds": wanted, "trials": [[first, 58], [first + more, fast]],
        "thinner_in_pot": 0,
    })  # fmt: skip
    assume(isinstance(worked, Answer))
    assert isinstance(worked, Answer)
    drawn = draw_seconds(worked.values, Say(calculator, worked.values, "metric"))
    assert outside(drawn) == []
    assert drawn.count('class="second-fill"') == 2


def test_the_exercises_tell_true_figures() -> None:
    v = values(trials=[[0, 58], [50, 19]], wanted_seconds=22)
    assert f"{v['thinner_needed']:.1f}" == "39.9"
