"""Uncertainty of a reading: the budget, degrees of freedom, coverage, decisions, pictures."""

import json
import math
import random
import re
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.stats import norm, t

from calculators.engine import door, soundness
from calculators.engine.compute import Answer, work_out
from calculators.engine.registry import load
from calculators.laws.student_factor import normal_factor
from calculators.laws.uncertainty_budget import combined, divisor, effective_freedom

CALCULATOR = load("gauge-uncertainty")
LISTED = {"budget": "listed", "repeats": "none"}


def worked(**inputs: Any) -> dict[str, Any]:
    answer = work_out(CALCULATOR, inputs)
    assert isinstance(answer, Answer), answer
    return answer.values


def refused(**inputs: Any) -> tuple[str, str]:
    answer = work_out(CALCULATOR, inputs)
    assert isinstance(answer, list)
    return answer[0].input, answer[0].why


def one(half_width: float, shape: str = "standard", counts: float = 1, freedom: float = 0) -> Any:
    return {"contributions": [["x", half_width, shape, counts, freedom]], "repeats": "none"}


def test_declaration_hangs_together() -> None:
    assert soundness.find_faults(CALCULATOR) == []


def test_divisors_are_the_spreads_of_their_distributions() -> None:
    """Against the spread of a great many drawn errors."""
    stream = random.Random(1)
    draws = {
        "rectangular": lambda: stream.uniform(-1, 1),
        "triangular": lambda: stream.triangular(-1, 1, 0),
        "u-shaped": lambda: math.cos(stream.uniform(0, math.pi)),
        "normal": lambda: stream.gauss(0, 0.5),  # half-width is two spreads
        "standard": lambda: stream.gauss(0, 1),
    }
    for shape, draw in draws.items():
        spread = math.sqrt(sum(draw() ** 2 for _ in range(60_000)) / 60_000)
        assert worked(**one(1, shape))["known_u"] == pytest.approx(spread, rel=0.015), shape
        assert (
            worked(**one(1, shape.upper() + " "))["known_u"] == worked(**one(1, shape))["known_u"]
        )
    assert divisor("rectangular") == pytest.approx(math.sqrt(3), rel=1e-15)
    assert divisor("triangular") == pytest.approx(math.sqrt(6), rel=1e-15)
    assert divisor("u-shaped") == pytest.approx(math.sqrt(2), rel=1e-15)
    assert divisor("box") is None


parts = st.lists(st.tuples(st.floats(0.01, 1), st.floats(1, 60)), min_size=1, max_size=6)


@given(parts)
@settings(max_examples=60)
def test_effective_freedom_lies_between_the_least_and_the_sum(
    pairs: list[tuple[float, float]],
) -> None:
    sizes, freedoms = [size for size, _ in pairs], [freedom for _, freedom in pairs]
    found = effective_freedom(sizes, freedoms)
    assert found is not None
    assert min(freedoms) * (1 - 1e-9) <= found <= sum(freedoms) * (1 + 1e-9)
    whole = math.sqrt(sum(size**2 for size in sizes))
    assert found == pytest.approx(whole**4 / sum(s**4 / f for s, f in pairs))
    assert combined(sizes) == pytest.approx(whole)
    # One that is known well lends its weight, not its freedom.
    more = effective_freedom([*sizes, whole], [*freedoms, 0])
    assert more == pytest.approx(4 * found)
    assert effective_freedom(sizes, [0.0] * len(sizes)) is None


def test_one_contribution_keeps_its_own_freedom() -> None:
    values = worked(**one(0.02, freedom=7), coverage="own", confidence=95)
    assert values["freedom_eff"] == pytest.approx(7)
    assert values["factor"] == pytest.approx(float(t.ppf(0.975, 7)))
    assert values["expanded"] == pytest.approx(0.02 * float(t.ppf(0.975, 7)))
    assert values["freedom_words"].startswith("7.0 in effect")


@given(st.floats(1, 99.99))
@settings(max_examples=40)
def test_normal_factor_against_scipy(confidence: float) -> None:
    assert normal_factor(confidence) == pytest.approx(
        float(norm.isf((1 - confidence / 100) / 2)), rel=1e-10
    )


def test_usual_coverage_gives_the_gauge_list_back_exactly() -> None:
    values = worked(**LISTED, gauge_uncertainty=0.1, limits="high", limit_high=2.6, reading=2.5)
    assert values["factor"] == pytest.approx(2, abs=1e-14)
    assert values["expanded"] == pytest.approx(0.1, abs=1e-15)
    assert values["level"] == pytest.approx(100 * (1 - 2 * float(norm.sf(2))))
    assert values["word"] == "accept"
    assert values["freedom_words"].startswith("No limit")


def test_counts_and_squares() -> None:
    assert worked(**one(0.03, counts=2))["combined_u"] == pytest.approx(0.06)
    both = worked(contributions=[["a", 0.03, "standard", 1, 0], ["b", 0.02, "standard", 2, 0]],
                  repeats="none")  # fmt: skip
    assert both["combined_u"] == pytest.approx(0.05)
    shares = [row["share"] for row in both["budget_rows"]]
    assert shares == pytest.approx([36, 64])
    assert both["biggest"] == "b"
    assert both["biggest_share"] == pytest.approx(64)
    assert both["without_biggest"] == pytest.approx(2 * 0.03)


def test_repeats_add_their_scatter_and_their_freedom() -> None:
    readings = [2.40, 2.40, 2.45, 2.40, 2.35]
    spread = math.sqrt((0.05**2 + 0.05**2) / 4)
    values = worked(**one(0.03) | {"repeats": "taken"}, readings=readings, averaged=4)
    assert values["repeat_mean"] == pytest.approx(2.4)
    assert values["repeat_u"] == pytest.approx(spread / 2)
    assert values["combined_u"] == pytest.approx(math.hypot(0.03, spread / 2))
    assert values["freedom_eff"] == pytest.approx(
        4 * (values["combined_u"] / values["repeat_u"]) ** 4
    )
    assert sum(row["share"] for row in values["budget_rows"]) == pytest.approx(100)
    assert values["budget_rows"][-1]["freedom_words"] == "4"
    assert values["budget_rows"][0]["freedom_words"] == "no limit"
    assert worked(averaged=9)["combined_u"] < worked(averaged=1)["combined_u"]
    alike = door.answer("gauge-uncertainty", {"readings": [2.4, 2.4, 2.4]})
    assert "all alike" in " ".join(alike["cautions"])
    assert "all alike" not in " ".join(door.answer("gauge-uncertainty", {})["cautions"])


def test_zone_keeps_the_whole_uncertainty_from_both_limits() -> None:
    values = worked(**LISTED, gauge_uncertainty=0.06)
    assert values["accept_low"] == pytest.approx(2.26)
    assert values["accept_high"] == pytest.approx(2.54)
    assert values["narrow_low"] == pytest.approx(2.2 + 1.65 * 0.03)
    assert values["narrow_high"] == pytest.approx(2.6 - 1.65 * 0.03)
    assert values["capability"] == pytest.approx(0.4 / (4 * 0.03))
    assert values["zone_words"] == "From 2.260 mm to 2.540 mm."
    high = worked(**LISTED, limits="high")
    assert "accept_low" not in high
    assert "capability" not in high
    assert high["zone_words"].startswith("Up to 2.5")
    low = worked(**LISTED, limits="low")
    assert "accept_high" not in low
    assert low["zone_words"] == "From 2.300 mm up."


@pytest.mark.parametrize(
    ("reading", "word", "begins"),
    [
        (2.40, "accept", "Accept"), (2.54, "accept", "Accept"), (2.26, "accept", "Accept"),
        (2.55, "cannot tell", "Can't tell: 2.550 mm lies within 0.060 mm of the high"),
        (2.25, "cannot tell", "Can't tell: 2.250 mm lies within 0.060 mm of the low"),
        (2.65, "cannot tell", "Can't tell"), (2.67, "reject", "Reject 2.670 mm: it is too high"),
        (2.13, "reject", "Reject 2.130 mm: it is too low"),
    ],
)  # fmt: skip
def test_decisions(reading: float, word: str, begins: str) -> None:
    values = worked(**LISTED, gauge_uncertainty=0.06, reading=reading)
    assert values["word"] == word
    assert values["verdict"].startswith(begins)
    inside = norm.cdf((2.6 - reading) / 0.03) - norm.cdf((2.2 - reading) / 0.03)
    assert values["chance"] == pytest.approx(100 * float(inside), abs=1e-9)


def test_few_repeats_make_it_unsure_though_it_is_most_likely_in() -> None:
    shaky = {"contributions": [["x", 0.001, "standard", 1, 0]], "readings": [2.4, 2.44]}
    values = worked(**shaky, averaged=1, reading=2.5)
    assert values["factor"] > 12
    assert values["verdict"].startswith("Can't tell quite")
    assert "low limit" in worked(**shaky, averaged=1, reading=2.3)["verdict"]
    cautions = " ".join(door.answer("gauge-uncertainty", shaky)["cautions"])
    assert "Few degrees of freedom" in cautions
    assert "Few degrees" not in " ".join(door.answer("gauge-uncertainty", LISTED)["cautions"])


def test_coarse_gauges_are_called_so() -> None:
    fine = worked(**LISTED, gauge_uncertainty=0.1)
    assert fine["fit_words"].startswith("Yes: it leaves")
    coarse = worked(**LISTED, gauge_uncertainty=0.11)
    assert coarse["fit_words"].startswith("Coarse")
    hopeless = worked(**LISTED, gauge_uncertainty=0.21)
    assert hopeless["fit_words"].startswith("No")
    assert hopeless["zone_words"].startswith("None")
    assert hopeless["word"] != "accept"
    assert "as wide as you like" in worked(**LISTED, limits="low", gauge_uncertainty=9)["fit_words"]
    # A high limit alone counts its room from nought.
    gap = {**LISTED, "limits": "high", "limit_high": 0.05, "reading": 0.01}
    assert worked(**gap, gauge_uncertainty=0.013)["fit_words"].startswith("Coarse")
    assert worked(**gap, gauge_uncertainty=0.012)["fit_words"].startswith("Yes")


def test_what_cannot_be_is_refused() -> None:
    blamed, why = refused(**one(0.1, "box"))
    assert blamed == "contributions[1].shape"
    assert "rectangular" in why
    assert refused(limit_low=2.6)[0] == "limit_high"
    assert refused(limit_low=2.7)[0] == "limit_high"
    assert refused(**one(0))[0] == "budget"
    assert refused(**LISTED, gauge_uncertainty=0)[0] == "budget"


def test_listed_with_repeats_warns_of_counting_twice() -> None:
    both = " ".join(door.answer("gauge-uncertainty", {"budget": "listed"})["cautions"])
    assert "counts twice" in both
    assert "counts twice" not in " ".join(door.answer("gauge-uncertainty", LISTED)["cautions"])
    rows = worked(budget="listed")["budget_rows"]
    assert [row["what"] for row in rows] == ["Gauge list, k = 2", "Scatter of repeats"]
    assert rows[0]["part"] == pytest.approx(0.05)
    assert rows[0]["half_width"] == pytest.approx(0.1)


def test_bars_are_as_long_as_their_figures() -> None:
    drawings = json.loads(door.live('{"calculator": "gauge-uncertainty"}'))["parts"]["drawings"]
    bars = [float(w) for w in re.findall(r'class="wood-mid"[^>]*width="([\d.]+)"', drawings)]
    whole = float(re.findall(r'class="metal"[^>]*width="([\d.]+)"', drawings)[0])
    values = worked()
    assert [bar / whole for bar in bars] == pytest.approx(
        [row["part"] / values["combined_u"] for row in values["budget_rows"]], abs=2e-3
    )


@pytest.mark.parametrize("limits", ["both", "high", "low"])
@pytest.mark.parametrize("units", ["metric", "inch"])
def test_zones_are_drawn_to_scale(limits: str, units: str) -> None:
    request = {"calculator": "gauge-uncertainty", "inputs": {"limits": limits}, "units": units}
    drawings = json.loads(door.live(json.dumps(request)))["parts"]["drawings"]
    good = re.findall(r'class="good" x="([\d.]+)" y="62" width="([\d.]+)"', drawings)
    assert len(good) == 1
    left, wide = map(float, good[0])
    assert (left == 20) == (limits == "high")
    assert (round(left + wide) == 620) == (limits == "low")
    if limits == "both":
        values = worked()
        unsure = re.findall(r'class="lacquer" x="([\d.]+)" y="62" width="([\d.]+)"', drawings)
        zone = (values["accept_high"] - values["accept_low"]) / (0.4 + 2 * values["expanded"])
        assert wide / float(unsure[0][1]) == pytest.approx(zone, abs=2e-3)
        assert len(re.findall(r">can[^<]{1,8}t tell<", drawings)) == 2
        assert ">accept<" in drawings
