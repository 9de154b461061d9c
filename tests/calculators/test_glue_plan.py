"""The plan of a glue-up: hands, splits and the clock, against plain counting and brute force."""

import itertools
import math
from typing import Any

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from calculators.engine import door
from calculators.engine.declaration import Refusal
from calculators.glueing._glue_plan import (
    MOST_HANDS,
    duration_s,
    fewest_hands,
    first_bead,
    in_words,
    judge_plan,
    plan_time,
    split,
)

MODEST = settings(max_examples=60)
operation = st.fixed_dictionaries({
    "operation": st.just("Work"),
    "length": st.sampled_from((0.0, 0.0, 300.0, 1200.0)),
    "rate": st.floats(5, 100),
    "clamps": st.integers(0, 9),
    "seconds": st.floats(1, 30),
}).filter(lambda row: row["length"] or row["clamps"])  # fmt: skip
operations = st.lists(operation, min_size=1, max_size=7)


def row(length: float, rate: float, clamps: int, seconds: float, name: str = "Work") -> Any:
    return {
        "operation": name, "length": length, "rate": rate, "clamps": clamps, "seconds": seconds,
    }  # fmt: skip


def test_one_pair_of_hands_by_counting() -> None:
    assert duration_s(row(1200, 20, 9, 12), 1) == 60 + 9 * 12
    assert duration_s(row(1200, 20, 9, 12), 2) == 30 + 5 * 12
    assert duration_s(row(1200, 20, 9, 12), 9) == pytest.approx(60 / 9 + 12)


@MODEST
@given(operations, st.integers(1, 7))
def test_more_hands_are_never_slower(rows: list[Any], hands: int) -> None:
    for one in rows:
        slow, fast = duration_s(one, hands), duration_s(one, hands + 1)
        assert fast <= slow
        assert fast * (hands + 1) >= duration_s(one, 1) - 1e-9  # nor faster than all together


@MODEST
@given(operations, st.floats(10, 400))
def test_fewest_hands(rows: list[Any], usable: float) -> None:
    def time(hands: int) -> float:
        return sum(duration_s(one, hands) for one in rows)

    found = fewest_hands(rows, usable)
    if found == 0:
        assert time(MOST_HANDS) > usable
    else:
        assert time(found) <= usable
        assert found == 1 or time(found - 1) > usable


@MODEST
@given(operations, st.integers(1, 3), st.floats(20, 400))
def test_fewest_glue_ups_by_brute_force(rows: list[Any], hands: int, usable: float) -> None:
    assume(rows[0]["length"] > 0)
    times = [duration_s(one, hands) for one in rows]
    allowed = [
        place for place in range(1, len(rows))
        if rows[place]["length"] > 0 and rows[place - 1]["clamps"] > 0
    ]  # fmt: skip
    best = None
    for count in range(len(allowed) + 1):
        for cuts in itertools.combinations(allowed, count):
            edges = [0, *cuts, len(rows)]
            if all(sum(times[a:b]) <= usable for a, b in itertools.pairwise(edges)):
                best = count + 1
                break
        if best:
            break
    found = split(rows, hands, usable)
    assert len(found) == (best or 0)
    if found:
        assert found[0][0] == 0
        assert found[-1][1] == len(rows) - 1
        assert all(b[0] == a[1] + 1 for a, b in itertools.pairwise(found))
        assert all(part[2] <= usable + 1e-9 for part in found)
        assert all(start in (0, *allowed) for start, _, _ in found)


def test_the_clock_starts_at_the_first_bead() -> None:
    rows = [row(0, 1, 2, 30, "Dry fit"), row(500, 10, 0, 0, "Bead"), row(0, 1, 4, 5, "Clamps")]
    assert plan_time(1, plan=rows) == 70
    judged = judge_plan(1, 100, 80, 70, plan=rows)
    assert [one["start"] for one in judged["rows"]] == [-60, 0, 50]
    assert [one["age"] for one in judged["rows"]] == [None, 50, 70]
    assert [one["left"] for one in judged["rows"]] == [None, 50, 30]
    assert judged["spreads"] == [False, True, False]


def test_says_where_the_glue_runs_out() -> None:
    rows = [row(500, 10, 0, 0, "Bead"), row(0, 1, 4, 5, "Clamps")]
    late = judge_plan(1, 60, 48, 70, plan=rows)
    assert late["run_out_words"] == "1 min after the first bead, during row 2, Clamps"
    early = judge_plan(1, 100, 80, 70, plan=rows)
    assert early["run_out_words"].endswith("30 s after the last operation")


def test_ways_out_in_words() -> None:
    two = [row(300, 10, 5, 6), row(300, 10, 5, 6)]
    judged = judge_plan(1, 100, 80, 120, hot_plan=two)
    assert judged["fewest_hands"] == 2
    assert judged["glue_ups"] == 2
    assert judged["remedy_words"] == (
        "With 2 pairs of hands it takes 1 min 6 s and fits. Or split it into 2 glue-ups, one after "
        "the other: row 1 (1 min); row 2 (1 min)."
    )
    hopeless = judge_plan(1, 3, 2, 120, hot_plan=two)
    assert hopeless["fewest_hands"] == hopeless["glue_ups"] == 0
    assert hopeless["remedy_words"].startswith("Neither more hands nor a split helps")


def test_glue_left_open_is_no_place_to_split() -> None:
    """Two beads one after the other, then the clamps: the first bead would be left unclosed."""
    rows = [row(300, 10, 0, 0), row(300, 10, 0, 0), row(0, 1, 5, 6)]
    assert split(rows, 1, 60) == []


@pytest.mark.parametrize(
    ("plan", "blamed", "words"),
    [
        ([["Clamps", 0, 10, 4, 5]], "plan", "never starts"),
        ([["Bead", 500, 10, 0, 0], ["Nothing", 0, 10, 3, 0]], "plan[2]", "Row 2 takes no time"),
    ],
)
def test_a_plan_without_work_or_glue_is_refused(plan: Any, blamed: str, words: str) -> None:
    refused = door.answer("glue-open-time", {"plan": plan})["refused"]
    assert [one["input"] for one in refused] == [blamed]
    assert words in refused[0]["why"]


def test_first_bead_blames_the_plan_it_was_given() -> None:
    with pytest.raises(Refusal) as caught:
        first_bead([row(0, 1, 1, 5)], "hot_plan")
    assert caught.value.blames == "hot_plan"


@pytest.mark.parametrize(
    ("seconds", "words"),
    [(0.42, "0.4 s"), (9.94, "9.9 s"), (9.96, "10 s"), (59.4, "59 s"), (59.6, "1 min"),
     (60, "1 min"), (282.7, "4 min 43 s"), (3600, "60 min")],
)  # fmt: skip
def test_times_in_words(seconds: float, words: str) -> None:
    assert in_words(seconds) == words


def test_every_pair_of_hands_sets_whole_clamps() -> None:
    for clamps, hands in itertools.product(range(1, 12), range(1, 9)):
        assert duration_s(row(0, 1, clamps, 1), hands) == math.ceil(clamps / hands)
