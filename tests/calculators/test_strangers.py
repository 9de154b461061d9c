"""What strangers send is read within bounds, and numbers with units as the pages write them."""

import json
import math
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calculators.engine import door
from calculators.engine.formula import Formula, FormulaError, parse
from calculators.engine.inputs import read_inputs
from calculators.engine.reading import ReadingError, read_quantity
from calculators.engine.registry import load
from calculators.engine.strangers import (
    DEEPEST,
    UnfitText,
    clean,
    depth,
    is_clean,
    read_json,
)
from calculators.engine.unit_table import UNITS
from tests.fuzz.outcome import Watch

PLAIN = st.recursive(
    st.none() | st.booleans() | st.integers() | st.text(),
    lambda inside: st.lists(inside) | st.dictionaries(st.text(), inside),
)


def depth_of(value: Any) -> int:
    inside = value.values() if isinstance(value, dict) else value if isinstance(value, list) else ()
    return max(map(depth_of, inside), default=0) + isinstance(value, dict | list)


@settings(max_examples=50)
@given(value=PLAIN)
def test_brackets_are_counted_and_strings_passed_over(value: Any) -> None:
    assert depth(json.dumps(value)) == depth_of(value)


@pytest.mark.parametrize(
    "text", ['"' + "\\\\" * 3_000_000, '"' + '\\"' * 3_000_000, '"' * 1_000_000, "[" * 1_000_000]
)
def test_no_text_takes_a_long_time_or_much_room_to_count(text: str) -> None:
    Watch(seconds=8).run(lambda _: str(depth(text)), b"")


def test_a_number_that_is_none_stays_text_and_minus_nought_is_nought() -> None:
    found = read_json(f"[NaN, -Infinity, 1e400, {'7' * 5000}, -0.0, 2.5, 12]", 10_000)
    assert found == ["NaN", "-Infinity", "1e400", "7" * 5000, 0.0, 2.5, 12]
    assert math.copysign(1, found[4]) == 1


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("[" * (DEEPEST + 1), "nested more than 12 deep"),
        ("1" * 101, "101 characters"),
        ("{'a': 1}", "is not JSON"),
        ("", "is not JSON"),
    ],
)
def test_what_is_no_json_within_bounds_is_refused_in_words(text: str, why: str) -> None:
    with pytest.raises(UnfitText, match=why):
        read_json(text, 100)


def test_what_steers_a_terminal_is_left_out() -> None:
    assert clean("a\x1b[31mb\u202ec\ud800", 60) == "a [31mb c "
    assert is_clean("25\u00a0mm · fünf") and not is_clean("a\nb") and is_clean("a\nb", lines=True)


@pytest.mark.parametrize("name", UNITS)
def test_a_figure_is_read_with_each_name_of_its_unit(name: str) -> None:
    unit = UNITS[name]
    for word in {unit.id, unit.shown, *unit.spellings} - {"1"}:
        assert read_quantity(f"2.5 {word}", name) == 2.5


@pytest.mark.parametrize("text", ["5 1/2 1/2", "5 6", "5 2/", "5 10^6", "5 1/mm"])
def test_two_numbers_are_still_no_one(text: str) -> None:
    with pytest.raises(ReadingError):
        read_quantity(text, "mm")


def test_a_turned_entry_in_a_unit_that_begins_as_a_number_is_taken_again() -> None:
    turned = json.loads(door.live_fields(json.dumps({
        "calculator": "film-build", "inputs": {"coats_a_day": "3"}, "was": "metric", "units": "inch",
    })))  # fmt: skip
    assert "units" in turned
    item = next(one for one in load("film-build").inputs if getattr(one, "unit", "") == "1/L")
    exact = door.turned_entry(str(item.example), item, "metric", "inch")["exact"]  # type: ignore[arg-type, union-attr]
    _, refused = read_inputs(load("film-build"), {item.name: exact}, "inch")
    assert [one for one in refused if one.input == item.name] == []


def test_readings_and_rows_that_are_too_long_are_refused_not_cut() -> None:
    found = door.answer("gauge-uncertainty", {"readings": "1.00; " * 400})
    assert "characters" in found["refused"][0]["why"] or "readings" in found["refused"][0]["why"]


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("-" * 990 + "1", "too many parts"),
        ("1 +" * 400 + " 1", "more than 1000"),
        ("9" * 40, "out of all proportion"),
        ("'a' * 3", "reckons with words"),
        ("('a' if b else 'c') + 1", "reckons with words"),
        ("a < 'b'", "reckons with words"),
        ("max(1)", "two or more"),
        ("\ud800", "is not a formula"),
        ("a.b", "outside the grammar"),
    ],
)
def test_a_formula_that_cannot_be_worked_out_is_refused_when_it_is_read(
    text: str, why: str
) -> None:
    with pytest.raises(FormulaError, match=why) as refused:
        Formula(text)
    assert len(str(refused.value)) < 800


@pytest.mark.parametrize("text", ["9 ** 9 ** 9", "2 ** 2000", "(-8) ** 0.5", "2.0 ** 2000"])
def test_a_power_past_all_figures_ends_at_once(text: str) -> None:
    with pytest.raises((ArithmeticError, ValueError)):
        parse(text).evaluate({})


def test_powers_are_what_they_were() -> None:
    assert parse("2 ** 10 + 2 ** -1 + a ** 0.5 + b ** 2").evaluate({"a": 9.0, "b": 3}) == 1036.5
