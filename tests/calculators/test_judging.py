"""The decision rule: published figures, laws that must hold, and what the page is told."""

import json
import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.engine.judging import (
    ACCEPT,
    CANNOT_TELL,
    REJECT,
    acceptance_zone,
    chance_in,
    decide,
    is_coarse,
    judge,
    judge_text,
    uncertainty_in,
)

FEELERS = {"name": "Feeler gauges", "resolution": 0.01, "unit": "mm", "uncertainty": 0.01}
THERMOMETER = {"name": "Thermometer", "resolution": 0.1, "unit": "degC", "uncertainty": 2}


# JCGM 106:2012, conformance probability for a normal error, limits 9.95 to 10.05, u = 0.010;
# figures by scipy 1.17.1 norm.cdf.
@pytest.mark.parametrize(
    ("reading", "chance"),
    [(10, 0.999999), (10.03, 0.977250), (10.0335, 0.950529), (10.05, 0.5), (10.06, 0.158655)],
)
def test_the_chance_of_being_in_is_that_of_jcgm_106(reading: float, chance: float) -> None:
    assert round(chance_in(reading, 9.95, 10.05, 0.010), 6) == pytest.approx(chance, abs=6e-7)


def test_the_guard_band_of_the_2017_edition_gives_95_per_cent() -> None:
    # ISO 14253-1:2017: 1.65 u, at least 95 %; risk at that limit 4.94715 % (scipy 1.17.1 norm.sf).
    risk = 1 - chance_in(10.05 - 1.65 * 0.010, None, 10.05, 0.010)
    assert round(100 * risk, 5) == 4.94715


def test_our_wider_band_accepts_with_at_least_97_per_cent() -> None:
    zone = acceptance_zone(9.95, 10.05, 0.020)
    assert zone == pytest.approx((9.97, 10.03))
    assert chance_in(10.03, 9.95, 10.05, 0.010) >= 0.977


@pytest.mark.parametrize(
    ("value", "low", "high", "uncertainty", "word", "side"),
    [
        (0.04, None, 0.05, 0.01, ACCEPT, ""),
        (0.045, None, 0.05, 0.01, CANNOT_TELL, "high"),
        (0.06, None, 0.05, 0.01, CANNOT_TELL, "high"),
        (0.0601, None, 0.05, 0.01, REJECT, "high"),
        (0.2, None, 0.3, 0.1, ACCEPT, ""),  # 0.3 − 0.1 is a hair below 0.2 in binary
        (2.72, 2.7, 2.9, 0.03, CANNOT_TELL, "low"),
        (2.60, 2.7, 2.9, 0.03, REJECT, "low"),
        (1.02, 0.9, 1.1, 0.5, CANNOT_TELL, "high"),  # a gauge that can accept nothing
        (10, 10, None, 0, ACCEPT, ""),
        (9.99, 10, None, 0, REJECT, "low"),
    ],
)
def test_the_verdict(
    value: float, low: float | None, high: float | None, uncertainty: float, word: str, side: str
) -> None:
    verdict = decide(value, low, high, uncertainty)
    assert (verdict.word, verdict.side) == (word, side)


limits = st.floats(-1e3, 1e3, allow_nan=False)


@given(limits, st.floats(0, 100), st.floats(0, 50), limits)
def test_accept_and_reject_are_sure_and_meet_at_no_point(
    low: float, width: float, uncertainty: float, value: float
) -> None:
    high = low + width
    verdict = decide(value, low, high, uncertainty)
    true_low, true_high = value - uncertainty, value + uncertainty
    slack = 1e-6
    if verdict.word == ACCEPT:
        assert low - slack <= true_low and true_high <= high + slack
    elif verdict.word == REJECT:
        assert true_high < low + slack or true_low > high - slack
    else:
        assert true_high >= low - slack and true_low <= high + slack
    assert 0 <= verdict.chance <= 1
    # A better gauge never turns accept into reject, nor the other way.
    finer = decide(value, low, high, uncertainty / 2).word
    assert finer == verdict.word or verdict.word == CANNOT_TELL


@given(limits, st.floats(0.001, 100), st.floats(0, 20))
def test_the_zone_is_what_is_accepted(low: float, width: float, uncertainty: float) -> None:
    zone = acceptance_zone(low, low + width, uncertainty)
    if zone is None:
        assert uncertainty > width / 2 * (1 - 1e-6)
        return
    least, most = zone
    assert least is not None and most is not None
    assert decide(least, low, low + width, uncertainty).word == ACCEPT
    assert decide(most, low, low + width, uncertainty).word == ACCEPT


def test_a_gauge_is_coarse_from_a_quarter_of_the_room() -> None:
    assert not is_coarse(2.7, 2.9, 0.05)
    assert is_coarse(2.7, 2.9, 0.051)
    assert is_coarse(None, 0.03, 0.01)  # a gap is counted from nought
    assert not is_coarse(10, None, 5)


def test_widths_of_a_scale_with_an_offset_have_none() -> None:
    assert uncertainty_in(2, "degC", "degF") == pytest.approx(3.6)


def ask(value: str, gauge: dict[str, object] = FEELERS, **more: object) -> dict[str, object]:
    asked = {"value": value, "unit": "mm", "decimals": 2, "low": None, "high": 0.05, "gauge": gauge}
    return judge({**asked, **more})


def test_the_page_is_told_in_words() -> None:
    found = ask("0.03")
    assert found["verdict"] == ACCEPT
    assert (
        found["words"] == "Accept: 0.03 mm is in. With this gauge, readings of at most 0.04 mm are."
    )
    assert "too high. The limit is 0.05 mm" in str(ask("0.2")["words"])
    assert "about 50 in 100" in str(ask("0.05")["words"])


def test_inches_and_fractions_are_read() -> None:
    assert ask("0.001 in")["value"] == pytest.approx(0.0254)
    assert ask("1/64", units="inch")["verdict"] == REJECT
    assert "in" in str(ask("0.001", units="inch")["read"])


def test_a_reading_finer_than_the_gauge_is_said() -> None:
    assert any("Finer than the gauge" in note for note in ask("0.034")["notes"])  # type: ignore[attr-defined]
    assert not ask("0.03")["notes"]


def test_a_coarse_gauge_is_said_and_a_hopeless_one() -> None:
    coarse = ask("0.02", gauge={**FEELERS, "uncertainty": 0.02})
    assert any("is coarse" in note for note in coarse["notes"])  # type: ignore[attr-defined]
    hopeless = ask("5", gauge={**FEELERS, "uncertainty": 1}, low=4.5, high=5.5)
    assert any("cannot accept anything" in note for note in hopeless["notes"])  # type: ignore[attr-defined]


def test_temperatures_turn_as_readings_and_their_widths_as_widths() -> None:
    warm = ask("140 °F", gauge=THERMOMETER, unit="degC", decimals=0, low=55, high=65)
    assert warm["value"] == pytest.approx(60)
    near = ask("149", gauge=THERMOMETER, unit="degC", decimals=0, low=55, high=65, units="inch")
    assert "4 F°" in str(near["words"])


@pytest.mark.parametrize("bad", ["", "x", "1/0", "1e99", "NaN", "2 3", "5 kg", "9" * 200])
def test_what_is_no_reading_is_refused(bad: str) -> None:
    refused = ask(bad)["refused"]
    assert refused[0]["why"].startswith("the reading ")  # type: ignore[index]


@given(st.text(max_size=40))
def test_any_text_gives_a_verdict_or_a_refusal(text: str) -> None:
    found = json.loads(judge_text(json.dumps({
        "value": text, "unit": "mm", "decimals": 2, "low": 0.1, "high": 0.5, "gauge": FEELERS,
    })))  # fmt: skip
    assert "refused" in found or (
        found["verdict"] in (ACCEPT, REJECT, CANNOT_TELL) and math.isfinite(found["value"])
    )
