"""The shared machinery: formulas, reading, showing, the door."""

import json
import subprocess
import sys
from decimal import ROUND_HALF_UP, Decimal
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as some

from calculators.engine import door
from calculators.engine.formula import FormulaError, parse, round_to
from calculators.engine.mathml import with_figures, with_symbols
from calculators.engine.reading import ReadingError, convert, read_quantity, units_of_kind
from calculators.engine.showing import half_up, in_64ths, show
from calculators.engine.unit_table import UNITS

ROOT = Path(__file__).parents[2]


@pytest.mark.parametrize(
    "text",
    ["__import__('os')", "x.y", "x[0]", "lambda: 1", "f'{x}'", "[1]", "{1}", "x if", "exec(x)",
     "x := 1", "True", "None", "sqrt(1, 2)", "sqrt(x=1)", "x @ y", "x // y", "x % y", "*x", "(1, 2)",
     "open('f')", "x is y", "x in y", "...", "b'x'", "1j"],
)  # fmt: skip
def test_formulas_outside_the_grammar_are_refused(text: str) -> None:
    with pytest.raises(FormulaError):
        parse(text)


@pytest.mark.parametrize(
    ("text", "value"),
    [("2 ** (1 / 12)", 2 ** (1 / 12)), ("-x ** 2", -9), ("a if x > 2 else b", 1), ("not x < 1", True),
     ("1 < x <= 3 and x != 2", True), ("atan(1)", 45), ("tan(45)", 1), ("min(x, 2, 7)", 2),
     ("word == 'yes'", True), ("round_to(2.5, 1)", 3), ("hypot(x, 4)", 5), ("pi", 3.14159265358979)],
)  # fmt: skip
def test_formulas_evaluate(text: str, value: float) -> None:
    found = parse(text).evaluate({"x": 3, "a": 1, "b": 2, "word": "yes"})
    assert found == pytest.approx(value, rel=1e-14)


def test_formula_prints_with_brackets_where_they_are_needed() -> None:
    shown = with_figures(
        "(a + b) * c ** 2 / (d - (a - b))", lambda name: {"a": "-1"}.get(name, "2")
    )
    assert "<mfrac>" in shown
    assert "<mrow><mo>(</mo><mn>−1</mn><mo>)</mo></mrow>" in shown
    assert with_symbols("a * (b + c)", {}).count("<mo>(</mo>") == 1
    assert with_symbols("a * b + c", {}).count("<mo>(</mo>") == 0


@given(some.floats(-1e9, 1e9), some.integers(0, 6))
def test_half_up_is_what_decimal_says(value: float, decimals: int) -> None:
    wanted = str(Decimal(repr(value)).quantize(Decimal(1).scaleb(-decimals), ROUND_HALF_UP))
    if wanted.startswith("-") and not wanted.strip("-0."):
        wanted = wanted[1:]
    assert half_up(value, decimals) == wanted


@pytest.mark.parametrize(
    ("text", "millimetres"),
    [("25 1/2 in", 647.7), ("25½″", 647.7), ("25-1/2 inches", 647.7), ("650", 650), ("650,5", 650.5),
     ("65 cm", 650), ("0.65 m", 650), (".5", 0.5), ("5/64 in", 1.984375), ("1e2", 100), ("10 mil", 0.254),
     ("-3", -3), ("−3 mm", -3), ("2'", 609.6), ("500 µm", 0.5), ("0,125", 0.125), ("14 9/64\"", 359.171875)],
)  # fmt: skip
def test_lengths_are_read_exactly(text: str, millimetres: float) -> None:
    assert read_quantity(text, "mm") == millimetres


@pytest.mark.parametrize(
    "text", ["", "x", "1,500", "5/0", "3 4", "1e31", "1e-9999999999", "650 kg", "5 mm mm"]
)
def test_what_is_no_length_is_refused_with_words(text: str) -> None:
    with pytest.raises(ReadingError) as raised:
        read_quantity(text, "mm")
    assert len(str(raised.value)) > 15


def test_temperatures_keep_their_offset_and_differences_do_not() -> None:
    assert read_quantity("68 °F", "degC") == 20
    assert read_quantity("9 °F", "K") == 5
    assert show(20, "degC", 0, "inch") == "68 °F"
    assert show(5, "K", 0, "inch") == "9 F°"


@given(some.sampled_from(sorted(UNITS)), some.floats(-1e6, 1e6))
def test_conversion_there_and_back_is_the_same(unit: str, value: float) -> None:
    for other in units_of_kind(unit):
        back = convert(convert(value, unit, other.id), other.id, unit)
        assert back == pytest.approx(value, rel=1e-12, abs=1e-9)


@given(some.integers(0, 64 * 60))
def test_64ths_are_reduced_and_read_back(count: int) -> None:
    text = in_64ths(count / 64)
    assert read_quantity(f"{text} in", "in") == count / 64
    assert "/64" not in text or count % 2 == 1


@given(some.floats(0, 1000), some.sampled_from([0.01, 0.1, 0.5, 1.0, 0.396875]))
def test_a_mark_is_at_most_half_a_graduation_away(value: float, step: float) -> None:
    assert abs(round_to(value, step) - value) <= step / 2 * (1 + 1e-6) + 1e-9


@settings(max_examples=300)
@given(some.text(max_size=40))
def test_no_text_breaks_the_reader(text: str) -> None:
    try:
        value = read_quantity(text, "mm")
    except ReadingError:
        return
    assert value == value and abs(value) < 1e40


@settings(max_examples=150)
@given(
    some.recursive(
        some.none() | some.booleans() | some.floats() | some.text(max_size=8) | some.integers(),
        lambda inner: some.lists(inner, max_size=3) | some.dictionaries(some.text(max_size=8), inner, max_size=3),
        max_leaves=6,
    )
)  # fmt: skip
def test_no_request_breaks_the_door(request: object) -> None:
    for text in (json.dumps(request), json.dumps({"calculator": "fret-spacing", "inputs": request}),
                 json.dumps({"calculator": "fret-spacing", "inputs": {"scale_length": request}})):  # fmt: skip
        found = json.loads(door.answer_text(text))
        assert "refused" in found or "results" in found
        json.loads(door.live(text))


@pytest.mark.parametrize(
    "text", ["", "{", "[]", "1", "null", '{"inputs": 5}', "[" * 100_000, "x" * 200_000]
)
def test_what_is_no_request_is_refused(text: str) -> None:
    assert json.loads(door.answer_text(text))["refused"][0]["why"]


def test_the_door_answers_as_promised() -> None:
    found = door.answer("fret-spacing", {"scale_length": "25 1/2 in", "frets": "12"})
    assert list(found) == [
        "calculator",
        "inputs",
        "results",
        "tables",
        "steps",
        "cautions",
        "sources",
    ]
    assert found["results"]["first_slot"] == {
        "value": pytest.approx(36.3526, abs=1e-4), "unit": "mm", "shown": "36.353 mm",
    }  # fmt: skip
    slots = found["tables"]["slots"]
    assert slots["columns"][:2] == ["fret", "from_nut"] and slots["units"][:2] == ["", "mm"]
    assert slots["rows"][11][1] == pytest.approx(323.85, abs=1e-9)


def test_all_refusals_come_at_once() -> None:
    found = door.answer(
        "fret-spacing", {"scale_length": "x", "frets": 2.5, "divisions": -1, "odd": 1}
    )
    assert sorted(one["input"] for one in found["refused"]) == [
        "divisions",
        "frets",
        "odd",
        "scale_length",
    ]


def test_calculators_import_in_a_bare_interpreter() -> None:
    """Nothing but the standard library, and nothing slow of it: -S hides site-packages."""
    code = (
        "import sys; sys.path.insert(0, sys.argv[1])\n"
        "from calculators.engine import door\n"
        "from calculators.engine.registry import modules\n"
        "assert all('results' in door.answer(name, {}) for name in modules())\n"
        "print(sorted({'fractions', 'decimal', 'statistics', 'html', 'email'} & set(sys.modules)))"
    )
    done = subprocess.run(
        [sys.executable, "-I", "-S", "-c", code, str(ROOT)],
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    assert done.stdout.strip() == "[]"
