"""What must hold of the film-build calculator: films, calendar, quantities."""

import math
from datetime import date, timedelta
from typing import Any

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from calculators.engine.compute import Answer, Say, work_out
from calculators.engine.inputs import Refused
from calculators.finish._film_calendar import clock, coats_that_fit
from calculators.finish._film_drawing import draw_film
from calculators.finish._film_inputs import WEEKDAYS
from calculators.finish.film_build import calculator

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


# Film


def test_the_example_by_hand() -> None:
    v = values()
    assert v["solids_sprayed"] == pytest.approx(20)
    assert v["dry_film"] == pytest.approx(25)
    assert v["sprayed_film"] == pytest.approx(300)
    assert v["film_before"] == pytest.approx(210)
    assert v["film_levelled"] == pytest.approx(165)
    assert v["film_after"] == pytest.approx(150)
    assert v["share_kept"] == pytest.approx(50)
    assert v["wet_for_aim"] == pytest.approx(125)
    assert (v["coats_least"], v["coats_most"]) == (11, 13)
    assert (v["last_coat_day"], v["levelling_day"], v["days_in_all"]) == (4, 15, 14)
    assert v["round_hours"] == pytest.approx(5)
    assert v["mix_needed"] == pytest.approx(0.75 / 0.35 + 0.2)
    assert v["lacquer_needed"] == pytest.approx((0.75 / 0.35 + 0.2) / 1.4)
    assert v["thinner_needed"] == pytest.approx((0.75 / 0.35 + 0.2) * 0.4 / 1.4)
    assert v["cost"] == pytest.approx((0.75 / 0.35 + 0.2) * (24 + 0.4 * 9) / 1.4)
    assert v["solvent_off"] == pytest.approx((0.75 / 0.35 + 0.2) * 0.8)


@given(st.floats(50, 150), st.floats(10, 60), st.floats(0, 200), st.integers(1, 6))
@settings(max_examples=40)
def test_solids_are_neither_made_nor_lost_by_thinning(
    wet: float, solids: float, thinner: float, rounds: int
) -> None:
    given_inputs = {"sanding_loss": 0, "levelling_loss": 0, "wheel_loss": 0, "rounds": rounds}
    thin = values(wet_film=wet, volume_solids=solids, thinner_added=thinner, **given_inputs)
    neat = values(wet_film=wet, volume_solids=solids, thinner_added=0, **given_inputs)
    assert thin["dry_film"] * (1 + thinner / 100) == pytest.approx(neat["dry_film"])
    assert thin["lacquer_needed"] + thin["thinner_needed"] == pytest.approx(thin["mix_needed"])
    assert thin["thinner_needed"] / thin["lacquer_needed"] == pytest.approx(thinner / 100)
    kept = thin["lacquer_needed"] * solids / 100
    assert thin["mix_needed"] - thin["solvent_off"] == pytest.approx(kept)


@given(st.floats(80, 300), st.integers(2, 6), st.integers(2, 4), st.floats(0, 40))
@settings(max_examples=40)
def test_spraying_what_the_aim_asks_meets_the_aim(
    aim: float, rounds: int, coats: int, sanded: float
) -> None:
    first = work_out(calculator, {"film_aim": aim, "rounds": rounds, "coats_per_round": coats,
                                  "sanding_loss": sanded})  # fmt: skip
    assume(isinstance(first, Answer))
    assert isinstance(first, Answer)
    wet = first.values["wet_for_aim"]
    assume(10 <= wet <= 500 and coats * wet * 0.2 > sanded)
    again = values(film_aim=aim, rounds=rounds, coats_per_round=coats, sanding_loss=sanded,
                   wet_film=wet)  # fmt: skip
    assert again["film_before"] == pytest.approx(aim)


@given(st.integers(1, 15), st.integers(1, 4), st.floats(5, 60), st.floats(0, 40))
@settings(max_examples=40)
def test_the_table_ends_at_the_film_before_levelling(
    rounds: int, coats: int, dry: float, sanded: float
) -> None:
    assume(coats * dry > sanded + 1)
    assume(rounds * coats * dry - (rounds - 1) * sanded > 61)
    worked = answer(rounds=rounds, coats_per_round=coats, wet_film=dry * 5, sanding_loss=sanded)
    rows = worked.tables["coats"]
    assert len(rows) == rounds * coats == worked.values["coats"]
    assert rows[-1]["film"] == pytest.approx(worked.values["film_before"])
    assert sum(row["taken"] for row in rows) == pytest.approx(worked.values["sanded_film"])
    assert [row["coat"] for row in rows] == list(range(1, rounds * coats + 1))
    assert [row["round"] for row in rows] == [1 + n // coats for n in range(rounds * coats)]
    film = 0.0
    for row in rows:
        film += dry - row["taken"]
        assert row["film"] == pytest.approx(film)


@given(
    st.floats(3, 60), st.floats(0, 200), st.floats(0, 80), st.floats(0, 40), st.floats(50, 250),
    st.floats(10, 200), st.floats(0, 150), st.floats(10, 200),
)  # fmt: skip
@settings(max_examples=60)
def test_the_coats_that_fit_are_all_that_fit(
    dry: float, sanded: float, level: float, wheel: float, least_before: float, more: float,
    least: float, most_more: float,
) -> None:  # fmt: skip
    found = coats_that_fit(dry, sanded, level, wheel, least_before, least_before + more, least,
                           least + most_more)  # fmt: skip

    def fits(coats: int) -> bool:
        before = coats * dry - sanded
        after = before - level - wheel
        return (least_before - 1e-6 <= before <= least_before + more + 1e-6
                and least - 1e-6 <= after <= least + most_more + 1e-6)  # fmt: skip

    for coats in range(max(0, found["coats_least"] - 2), found["coats_most"] + 3):
        assert fits(coats) == (found["coats_least"] <= coats <= found["coats_most"])
    if found["coats_least"] > found["coats_most"]:
        assert not any(fits(coats) for coats in range(400))


def test_a_whole_number_of_coats_is_not_spoilt_by_the_last_bits() -> None:
    found = coats_that_fit(0.1, 0.0, 0.0, 0.0, 0.3, 0.7, 0.0, 9.0)
    assert found == {"coats_least": 3, "coats_most": 7}


@pytest.mark.parametrize(
    ("given_inputs", "start"),
    [
        ({}, "Right: 210 µm before levelling, 150 µm left"),
        ({"wet_film": 100}, "Too thin: 150 µm before levelling, and at least 180"),
        ({"levelling_loss": 100, "wheel_loss": 20}, "Too thin: 90 µm would be left after"),
        ({"wet_film": 150}, "Too thick: 270 µm before levelling, and at most 250"),
        ({"levelling_loss": 5, "wheel_loss": 0, "most_film": 200}, "Too thick: 205 µm would be"),
    ],
)
def test_the_verdict_follows_the_limits(given_inputs: dict[str, Any], start: str) -> None:
    assert values(**given_inputs)["verdict"].startswith(start)


@pytest.mark.parametrize(
    ("given_inputs", "words"),
    [
        ({}, "Between 11 and 13 coats"),
        ({"most_film_before": 205}, "Only 11 coats"),
        ({"least_film_before": 240}, "No whole number of coats"),
    ],
)
def test_the_words_about_coats(given_inputs: dict[str, Any], words: str) -> None:
    assert values(**given_inputs)["coats_words"].startswith(words)


@pytest.mark.parametrize(
    ("given_inputs", "blamed"),
    [
        ({"sanding_loss": 75}, "sanding_loss"),
        ({"wet_film": 60, "levelling_loss": 39, "wheel_loss": 15}, "levelling_loss"),
        ({"coats_per_round": 5}, "coats_per_round"),
        ({"least_film_before": 250}, "least_film_before"),
        ({"least_film": 200}, "least_film"),
        ({"least_in_all": 21}, "least_in_all"),
    ],
)
def test_what_cannot_be_is_refused(given_inputs: dict[str, Any], blamed: str) -> None:
    assert refusal(**given_inputs).input == blamed


def test_just_inside_what_is_refused_has_an_answer() -> None:
    assert values(sanding_loss=74.9)["film_before"] > 0
    assert values(sanding_loss=150, rounds=1, wet_film=200)["sanded_film"] == 0
    thin = values(wet_film=60, levelling_loss=38, wheel_loss=15)
    assert thin["film_after"] == pytest.approx(1)
    assert values(coats_per_round=4, recoat_time=110, coat_time=22.5)["round_hours"] == 8
    assert "9.5 h" in refusal(coats_per_round=6, rounds=1).why


# Calendar


@given(
    st.integers(0, 6), st.sampled_from(["both", "sunday", "none"]), st.integers(1, 15),
    st.integers(1, 60),
)  # fmt: skip
@settings(max_examples=80)
def test_the_calendar_agrees_with_business_days(
    weekday: int, weekend: str, rounds: int, cure: int
) -> None:
    mask = {"both": "1111100", "sunday": "1111110", "none": "1111111"}[weekend]
    monday = date(2026, 11, 23)
    start = np.busday_offset(monday + timedelta(weekday), 0, "forward", weekmask=mask)
    last = np.busday_offset(start, rounds - 1, weekmask=mask)
    level = np.busday_offset(last + np.timedelta64(cure, "D"), 0, "forward", weekmask=mask)
    v = values(start_day=WEEKDAYS[weekday], weekend=weekend, rounds=rounds, cure_days=cure)
    day = np.timedelta64(1, "D")
    assert v["last_coat_day"] == (last - start) / day + 1
    assert v["levelling_day"] == (level - start) / day + 1
    assert v["days_in_all"] == v["levelling_day"] - 1
    for words, moment in (("first_words", start), ("last_words", last), ("levelling_words", level)):
        name, _, number = v[words].partition(", day ")
        assert name == moment.astype(date).strftime("%A")
        assert int(number) == (moment - start) / day + 1


@given(st.floats(1, 240), st.integers(2, 8), st.floats(1, 12))
@settings(max_examples=60)
def test_no_round_begins_before_its_wait_nor_later_than_it_need(
    wait: float, rounds: int, opens: float
) -> None:
    worked = answer(sand_wait=wait, rounds=rounds, day_begins=opens, weekend="none", coat_time=20,
                    recoat_time=90, sanding_time=60)  # fmt: skip
    rows = worked.tables["coats"]

    def minutes(row: dict[str, Any]) -> float:
        hours, _, rest = row["clock"].partition(":")
        day = int(row["when"].rpartition(" ")[2])
        return (day - 1) * 1440 + int(hours) * 60 + int(rest)

    for number in range(1, rounds):
        before, after = rows[3 * number - 1], rows[3 * number]
        gap = minutes(after) - 60 - (minutes(before) + 20)
        assert gap >= wait * 60 - 1
        # A day earlier would have been too early, or would have run past closing time.
        assert gap < wait * 60 + 1440


def test_a_round_that_waits_past_noon_goes_over_to_the_next_day() -> None:
    early, late = values(sand_wait=19), values(sand_wait=23)
    # The first round ends at 12:00, a sanded one takes five hours and must be over by 16:00.
    assert early["last_coat_day"] == 4
    assert late["last_coat_day"] == 8  # Monday, Tuesday at noon, Thursday, Monday
    rows = answer(sand_wait=22.5, rounds=2).tables["coats"]
    assert (rows[3]["when"], rows[3]["clock"]) == ("Tuesday, day 2", "11:30")
    rows = answer(sand_wait=23.1, rounds=2).tables["coats"]
    assert (rows[3]["when"], rows[3]["clock"]) == ("Wednesday, day 3", "09:00")


def test_the_hours_of_the_example() -> None:
    rows = answer().tables["coats"]
    assert [row["clock"] for row in rows[:6]] == [
        "08:00", "09:50", "11:40", "09:00", "10:50", "12:40",
    ]  # fmt: skip
    assert answer(day_begins=7.5).tables["coats"][0]["clock"] == "07:30"
    assert (clock(0), clock(59.6), clock(24 * 60 + 61)) == ("00:00", "01:00", "01:01")


def test_a_single_round_is_not_sanded() -> None:
    v = values(rounds=1, levelling_loss=10, wheel_loss=5)
    assert v["round_hours"] == pytest.approx(4)
    assert v["sanded_film"] == 0
    assert v["last_coat_day"] == 1
    assert values(rounds=2)["round_hours"] == pytest.approx(5)
    assert refusal(rounds=2, day_length=4.5).input == "coats_per_round"


@pytest.mark.parametrize(
    ("given_inputs", "words"),
    [
        ({}, "levelling may begin Monday, day 15: 14 d in all."),
        ({"cure_days": 7}, "14 d: let it hang longer"),
        ({"cure_days": 30}, "more than the 21 d"),
        ({"start_day": "Saturday"}, "First coat Monday, day 1"),
    ],
)
def test_the_words_of_the_calendar(given_inputs: dict[str, Any], words: str) -> None:
    assert words in values(**given_inputs)["calendar_words"]


# Quantity and cautions


@given(st.floats(0.05, 5), st.floats(10, 100), st.floats(20, 300), st.floats(0, 500))
@settings(max_examples=30)
def test_the_mix_is_volume_on_the_work_over_its_share_and_what_stays_in_the_cup(
    area: float, share: float, wet: float, left: float
) -> None:
    v = values(sprayed_area=area, transfer_efficiency=share, wet_film=wet, left_over=left,
               sanding_loss=0, levelling_loss=0, wheel_loss=0)  # fmt: skip
    on_work = area * wet * 1e-6 * 12 * 1000
    assert v["mix_needed"] == pytest.approx(on_work / (share / 100) + 4 * left / 1000)
    assert v["spreading_rate"] * wet == pytest.approx(1000)


@pytest.mark.parametrize(
    ("given_inputs", "words"),
    [
        ({"wet_film": 151}, "runs, and keeps its solvent"),
        ({"coats_per_round": 4, "recoat_time": 60}, "More than three coats"),
        ({"cure_days": 9}, "Less than 10 days"),
    ],
)
def test_the_cautions_come_when_they_should(given_inputs: dict[str, Any], words: str) -> None:
    assert any(words in text for text in answer(**given_inputs).cautions)
    assert not any(words in text for text in answer().cautions)
    assert len(answer().cautions) == 2


@given(
    st.integers(1, 15), st.integers(1, 4), st.floats(20, 400), st.floats(20, 300),
    st.floats(10, 500), st.sampled_from(["metric", "inch"]),
)  # fmt: skip
@settings(max_examples=60)
def test_the_drawing_stays_on_its_paper(
    rounds: int, coats: int, wet: float, low: float, more: float, system: str
) -> None:
    worked = work_out(calculator, {
        "rounds": rounds, "coats_per_round": coats, "wet_film": wet, "least_film_before": low,
        "most_film_before": max(150, low + more), "sanding_loss": 0.4 * wet * 0.2 * coats,
        "levelling_loss": 0, "wheel_loss": 0.1 * wet * 0.2,
    }, system)  # fmt: skip
    assert isinstance(worked, Answer)
    drawn = draw_film(worked.values, Say(calculator, worked.values, system))
    assert outside(drawn) == []
    assert math.isclose(drawn.count('class="lacquer"'), rounds * coats + rounds - 1 + 2)
