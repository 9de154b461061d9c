"""What a handful of force readings may say about a polisher, and what it may not."""

from typing import Any

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from calculators.engine.compute import Answer, work_out
from calculators.finish.polishing_pressure import calculator


def values(**given_inputs: Any) -> dict[str, Any]:
    worked = work_out(calculator, given_inputs)
    assert isinstance(worked, Answer), worked
    return worked.values


def test_readings_may_be_kilograms_or_pounds_on_a_bench_scale() -> None:
    assert values(readings_a="3 kgf; 3.2 kgf; 2.8 kgf")["mean_a"] == pytest.approx(3 * 9.80665)
    assert values(readings_a="7 lbf; 7 lbf; 7 lbf")["mean_a"] == pytest.approx(7 * 4.4482216152605)


def test_chances_add_up_and_grow_with_a_wilder_hand() -> None:
    calm, wild = values(readings_a=[29, 30, 31, 30, 29]), values(readings_a=[20, 30, 40, 25, 34])
    for v in (calm, wild):
        both = v["chance_hard_a"] + v["chance_light_a"]
        assert v["chance_outside_a"] == pytest.approx(both)
    assert wild["chance_outside_a"] > calm["chance_outside_a"]


def test_readings_all_alike_give_no_chance_but_a_reason() -> None:
    v = values(readings_a=[30, 30, 30])
    assert "chance_hard_a" not in v
    assert "finer" in v["touch_words_a"]


def test_a_closed_window_gives_no_chance_but_a_reason() -> None:
    v = values(most_passes=5)
    assert "chance_hard_a" not in v
    assert "no safe window" in v["touch_words_a"]


@given(
    st.lists(st.floats(5, 80), min_size=3, max_size=10),
    st.lists(st.floats(5, 80), min_size=3, max_size=10),
)
@settings(max_examples=40)
def test_comparing_turns_round_with_the_polishers(one: list[float], other: list[float]) -> None:
    assume(max(one) - min(one) > 0.1 and max(other) - min(other) > 0.1)
    a = values(touch="two", readings_a=one, readings_b=other)
    b = values(touch="two", readings_a=other, readings_b=one)
    assert a["difference"] == pytest.approx(-b["difference"], abs=1e-9)
    assert a["certainty"] == pytest.approx(b["certainty"])
    assert 50 <= a["certainty"] <= 100


def test_the_words_name_the_harder_hand_or_none() -> None:
    hard, soft = [30, 31, 32, 33, 31], [20, 21, 22, 21, 20]
    assert values(touch="two", readings_a=hard, readings_b=soft)["compare_words"].startswith("A ")
    assert values(touch="two", readings_a=soft, readings_b=hard)["compare_words"].startswith("B ")
    same = values(touch="two", readings_a=hard, readings_b=[30, 31, 32, 33, 32])
    assert same["compare_words"].startswith("Not told apart")
    alike = values(touch="two", readings_a=[30, 30, 30], readings_b=[20, 20, 20])
    assert "certainty" not in alike
    assert "finer" in alike["compare_words"]
