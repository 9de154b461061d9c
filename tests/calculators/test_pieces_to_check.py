"""Pieces to check: chances against scipy and brute force, least numbers, limits, means, words."""

import itertools
import json
import math
import re
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.stats import beta, binom, hypergeom, norm, t

from calculators.engine import door, soundness
from calculators.engine.compute import Answer, work_out
from calculators.engine.registry import load
from calculators.laws.sampling import (
    batch_at_most,
    binomial_at_most,
    fewest_pieces,
    most_out,
    share_at_least,
    share_for_chance,
)
from calculators.measuring._pieces_to_check_solved import worst_of

CALCULATOR = load("pieces-to-check")
RUN = {"batch_size": 0}


def worked(**inputs: Any) -> dict[str, Any]:
    answer = work_out(CALCULATOR, inputs)
    assert isinstance(answer, Answer), answer
    return answer.values


def refused(**inputs: Any) -> tuple[str, str]:
    answer = work_out(CALCULATOR, inputs)
    assert isinstance(answer, list)
    return answer[0].input, answer[0].why


def test_declaration_hangs_together() -> None:
    assert soundness.find_faults(CALCULATOR) == []


@given(st.integers(1, 1500), st.floats(0, 1), st.floats(0, 1))
@settings(max_examples=80)
def test_binomial_against_scipy(pieces: int, part: float, share: float) -> None:
    misses = round(part * pieces)
    assert binomial_at_most(misses, pieces, share) == pytest.approx(
        float(binom.cdf(misses, pieces, share)), abs=1e-11
    )


@given(st.integers(1, 1500), st.floats(0, 1), st.floats(0, 1), st.floats(0, 1))
@settings(max_examples=80)
def test_hypergeometric_against_scipy(batch: int, a: float, b: float, c: float) -> None:
    out, pieces = round(a * batch), round(b * batch)
    misses = round(c * min(out, pieces))
    assert batch_at_most(misses, batch, out, pieces) == pytest.approx(
        float(hypergeom.cdf(misses, batch, out, pieces)), abs=1e-10
    )


def test_chances_at_the_ends() -> None:
    assert binomial_at_most(3, 3, 0.5) == 1
    assert binomial_at_most(-1, 3, 0.5) == 0
    assert binomial_at_most(0, 3, 0) == 1
    assert binomial_at_most(2, 3, 1) == 0
    assert batch_at_most(0, 10, 0, 5) == 1
    assert batch_at_most(1, 10, 8, 5) == 0  # two good ones at most: three are out at least
    assert batch_at_most(0, 2, 1, 1) == pytest.approx(0.5)
    # By counting: 5 pieces, 2 out, 3 drawn.
    draws = list(itertools.combinations((1, 1, 0, 0, 0), 3))
    assert batch_at_most(1, 5, 2, 3) == pytest.approx(
        sum(sum(draw) <= 1 for draw in draws) / len(draws)
    )


def test_a_large_batch_is_like_a_run() -> None:
    assert batch_at_most(2, 20_000, 1000, 60) == pytest.approx(
        binomial_at_most(2, 60, 0.05), abs=2e-3
    )
    small = [worked(batch_size=n)["pieces"] for n in (20, 60, 200, 2000, 20_000)]
    assert small == sorted(small)
    assert small[-1] in (58, 59)
    assert worked(**RUN)["pieces"] == 59


@given(
    st.floats(51, 99.9), st.floats(0.5, 50), st.integers(0, 6), st.one_of(st.none(), st.integers(10, 900))
)  # fmt: skip
@settings(max_examples=60)
def test_one_piece_fewer_would_not_do(
    confidence: float, share: float, misses: int, batch: int | None
) -> None:
    lot = RUN if batch is None else {"batch_size": batch}
    answer = work_out(
        CALCULATOR,
        {**lot, "confidence": confidence, "worst_share": share, "allowed_misses": misses},
    )
    risk = 1 - confidence / 100
    if isinstance(answer, list):
        assert batch is not None
        assert answer[0].input == "allowed_misses"
        assert worst_of(batch, share) <= misses
        return
    pieces = answer.values["pieces"]

    def slips(n: int) -> float:
        if batch is None:
            return float(binom.cdf(misses, n, share / 100))
        return float(hypergeom.cdf(misses, batch, worst_of(batch, share), n))

    assert slips(pieces) <= risk * (1 + 1e-6)
    assert slips(pieces - 1) > risk * (1 - 1e-6) or pieces == misses + 1
    assert answer.values["slips_through"] == pytest.approx(100 * slips(pieces), abs=1e-7)


@given(st.floats(50, 99.9), st.floats(0.1, 50))
@settings(max_examples=40)
def test_none_out_is_the_closed_form(confidence: float, share: float) -> None:
    values = worked(**RUN, confidence=confidence, worst_share=share)
    assert values["pieces"] == values["by_logarithms"]
    exact = math.log(1 - confidence / 100) / math.log(1 - share / 100)
    assert exact - 1e-6 <= values["pieces"] < exact + 1 + 1e-6


def test_whole_pieces_are_counted_without_binary_noise() -> None:
    assert worst_of(1000, 2.3) == 24
    assert worst_of(60, 5) == 4
    assert worst_of(60, 4.9) == 3
    assert worst_of(10, 5) == 1
    values = worked(batch_size=10)
    assert values["just_too_bad"] == 10
    assert values["pieces"] == 10  # with 95 % a single one must not be missed: nine in ten is less
    assert worked(batch_size=10, confidence=90)["pieces"] == 9
    assert values["share_checked"] == 100


def test_good_lots_pass_and_more_misses_let_more_through() -> None:
    for misses in (0, 1, 3):
        values = worked(**RUN, allowed_misses=misses)
        assert binom.cdf(misses, values["pieces"], values["good_share"] / 100) == pytest.approx(
            0.95
        )
    batch = worked(batch_size=500, worst_share=6, allowed_misses=3)
    out = round(batch["good_share"] * 5)
    assert hypergeom.cdf(3, 500, out, batch["pieces"]) >= 0.95
    assert hypergeom.cdf(3, 500, out + 1, batch["pieces"]) < 0.95
    pieces = [worked(**RUN, allowed_misses=c)["pieces"] for c in range(5)]
    goods = [worked(**RUN, allowed_misses=c)["good_share"] for c in range(5)]
    assert pieces == sorted(pieces)
    assert goods == sorted(goods)
    assert "single one out" in worked()["price_words"]
    assert "more than 0.09 %" in worked(**RUN)["price_words"]


@given(st.integers(1, 300), st.floats(0, 1), st.floats(51, 99.9))
@settings(max_examples=60)
def test_limits_of_a_share_against_the_beta_distribution(
    checked: int, part: float, confidence: float
) -> None:
    out = round(part * checked)
    values = worked(**RUN, ask="found", checked=checked, found_out=out, confidence=confidence)
    level = confidence / 100
    upper = 1.0 if out == checked else float(beta.ppf(level, out + 1, checked - out))
    high = 1.0 if out == checked else float(beta.ppf((1 + level) / 2, out + 1, checked - out))
    low = 0.0 if out == 0 else float(beta.ppf((1 - level) / 2, out, checked - out + 1))
    assert values["upper"] == pytest.approx(100 * upper, abs=1e-7)
    assert values["two_high"] == pytest.approx(100 * high, abs=1e-7)
    assert values["two_low"] == pytest.approx(100 * low, abs=1e-7)
    assert values["best_guess"] == pytest.approx(100 * out / checked)
    assert values["two_low"] <= values["best_guess"] + 1e-9 <= values["two_high"] + 2e-9
    # Mirror: good for bad.
    assert share_at_least(checked - out, checked, level) == pytest.approx(
        1 - share_for_chance(out, checked, 1 - level), abs=1e-9
    )


@given(st.integers(5, 150), st.floats(0.1, 1), st.floats(0, 0.4), st.floats(60, 99))
@settings(max_examples=25)
def test_limits_in_a_batch_by_trying_every_number(
    batch: int, part: float, share: float, confidence: float
) -> None:
    checked = max(1, round(part * batch))
    out = round(share * checked)
    values = worked(ask="found", batch_size=batch, checked=checked, found_out=out,
                    confidence=confidence)  # fmt: skip
    risk = (1 - confidence / 100) * (1 + 1e-10)  # a tie is proof enough, as in the planning
    tried = range(out, batch - (checked - out) + 1)
    most = max(d for d in tried if hypergeom.cdf(out, batch, d, checked) > risk)
    assert values["most_out"] == most_out(out, batch, checked, 1 - confidence / 100) == most
    assert values["upper"] == pytest.approx(100 * most / batch)
    high = max(d for d in tried if hypergeom.cdf(out, batch, d, checked) > risk / 2)
    low = min(d for d in tried if hypergeom.sf(out - 1, batch, d, checked) > risk / 2)
    assert values["two_high"] == pytest.approx(100 * high / batch)
    assert values["two_low"] == pytest.approx(100 * low / batch)


def test_what_is_planned_is_proved_when_none_is_out() -> None:
    for batch, confidence in ((5, 60), (60, 95), (24, 90), (300, 99)):
        pieces = worked(batch_size=batch, confidence=confidence, worst_share=20)["pieces"]
        found: dict[str, Any] = {"ask": "found", "batch_size": batch, "confidence": confidence}
        assert worked(**found, checked=pieces, worst_share=20)["upper"] <= 20
        assert worked(**found, checked=pieces - 1, worst_share=20)["upper"] > 20
    run: dict[str, Any] = {**RUN, "ask": "found"}
    assert worked(**run, checked=59)["upper"] <= 5 < worked(**run, checked=58)["upper"]


def test_checking_all_leaves_no_doubt() -> None:
    values = worked(ask="found", batch_size=40, checked=40, found_out=3, worst_share=10)
    assert values["upper"] == values["two_low"] == values["two_high"] == pytest.approx(7.5)
    assert values["verdict"].startswith("Good enough")


def test_halving_finds_the_first() -> None:
    assert fewest_pieces(lambda n: 1 / n, 1, 1000, 0.01) == 100
    assert fewest_pieces(lambda n: 1 / n, 1, 1000, 0.0101) == 100
    assert fewest_pieces(lambda n: 1 / n, 1, 1000, 0.00999) == 101


@given(st.floats(0.005, 0.1), st.floats(0.02, 0.2), st.floats(0, 0.015), st.floats(60, 99.5))
@settings(max_examples=40)
def test_means_against_counting_up(
    spread: float, wanted: float, gauge: float, confidence: float
) -> None:
    values = worked(ask="readings", spread=spread, wanted=wanted, gauge_uncertainty=gauge,
                    confidence=confidence)  # fmt: skip
    tail = (1 - confidence / 100) / 2
    part = float(norm.isf(tail)) * gauge / 2
    assert values["gauge_part"] == pytest.approx(part, rel=1e-9, abs=1e-15)
    count = values["readings_count"]

    def reached(n: int) -> float:
        return math.hypot(float(t.isf(tail, n - 1)) * spread / math.sqrt(n), part)

    assert reached(count) <= wanted * (1 + 1e-9)
    assert count == 2 or reached(count - 1) > wanted
    assert values["reached"] == pytest.approx(reached(count))
    exact = (float(norm.isf(tail)) * spread) ** 2 / (wanted**2 - part**2)
    assert exact - 1e-6 <= values["first_count"] < exact + 1 + 1e-6
    assert values["first_count"] <= count


def test_what_cannot_be_is_refused() -> None:
    assert refused(batch_size=20, allowed_misses=2)[0] == "allowed_misses"
    assert refused(ask="found", checked=10, found_out=11)[0] == "found_out"
    assert refused(ask="found", checked=61)[0] == "checked"
    blamed, why = refused(ask="readings", wanted=0.029)
    assert blamed == "wanted"
    assert "stays" in why
    blamed, why = refused(ask="readings", gauge_uncertainty=0, wanted=0.003)
    assert blamed == "wanted"
    assert "400 readings" in why
    assert worked(ask="readings", gauge_uncertainty=0, wanted=0.0035)["readings_count"] > 380


def test_words_answer_the_question() -> None:
    assert worked()["verdict"].startswith("Check 31, drawn at random. If none")
    assert "If at most 2" in worked(allowed_misses=2)["verdict"]
    found: dict[str, Any] = {"ask": "found", "worst_share": 10}
    assert worked(**found)["verdict"].startswith(
        "Good enough: with 95.0 % confidence no more than 4"
    )
    assert worked(**found, **RUN)["verdict"].startswith("Good enough: with 95.0 % confidence no more "
                                                        "than 9.50 %")  # fmt: skip
    assert worked(**found, found_out=4)["verdict"].startswith("Not good enough: 13.33 %")
    assert worked(**found, found_out=2)["verdict"].startswith("Not proved: as many as 9 of the 60")
    assert worked(**found, **RUN, found_out=2)["verdict"].startswith(
        "Not proved: as many as 19.53 %"
    )
    assert worked(ask="readings")["verdict"].startswith("Take the mean of 6 readings")
    assert "it takes 6" in worked(ask="readings")["t_words"]
    cautions = " ".join(door.answer("pieces-to-check", {"batch_size": 12})["cautions"])
    assert "Check them all" in cautions
    assert "Check them all" not in " ".join(door.answer("pieces-to-check", {})["cautions"])


@pytest.mark.parametrize("batch", [60, 0])
@pytest.mark.parametrize("ask", ["pieces", "found"])
def test_curve_and_table_fall_and_go_through_the_answer(ask: str, batch: int) -> None:
    values = worked(ask=ask, batch_size=batch)
    for rows in (values["curve_rows"], values["lot_rows"]):
        passes = [row["passes"] for row in rows]
        assert passes == sorted(passes, reverse=True)
        shares = [row["share"] for row in rows]
        assert shares == sorted(shares)
    assert len(values["lot_rows"]) <= 14
    if ask == "pieces":
        at = [
            row
            for row in values["lot_rows"]
            if row["share"] == pytest.approx(values["just_too_bad"])
        ]
        assert at[0]["passes"] == pytest.approx(values["slips_through"])
    if batch:
        assert all(
            row["share"] == pytest.approx(row["out"] / 60 * 100) for row in values["lot_rows"]
        )


@pytest.mark.parametrize("units", ["metric", "inch"])
def test_plot_of_means_marks_the_answer(units: str) -> None:
    request = {"calculator": "pieces-to-check", "inputs": {"ask": "readings"}, "units": units}
    drawing = json.loads(door.live(json.dumps(request)))["parts"]["drawings"]
    assert drawing.count("<svg") == 1
    dots = re.findall(r'<circle class="accent-fill" cx="([\d.]+)"', drawing)
    # Six readings on an axis from 1 to 10 that is 560 wide and begins at 62.
    assert float(dots[0]) == pytest.approx(62 + 560 * 5 / 9, abs=0.1)
