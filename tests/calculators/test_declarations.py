"""What must hold of every calculator's declaration, and of every answer it can give."""

import json
import math
import random
from typing import Any

import pytest

from calculators.engine import door
from calculators.engine.compute import Answer, work_out
from calculators.engine.declaration import Calculator, Choice
from calculators.engine.inputs import applies
from calculators.engine.markup import parts
from calculators.engine.soundness import find_faults

from .variants import CALCULATORS, choices_of, draw_inputs, numbers_of

each = pytest.mark.parametrize("calculator", CALCULATORS, ids=lambda calculator: calculator.name)
WORST = ["", "  ", "words", "12 kg m", "-1", "1e999", "-1e999", "1e30", "nan", "NaN", "Infinity",
         "<script>alert(1)</script>", "1/0", "2,500", "5 5", "0x10", "१२", "1" * 400, "\x00", "--1",
         None, [], {}, True, float("nan"), float("inf"), -1e300, 10**400, [1, 2], {"a": 1}]  # fmt: skip


def _all_floats(value: Any) -> list[float]:
    if isinstance(value, float):
        return [value]
    if isinstance(value, dict):
        value = list(value.values())
    return [x for one in value for x in _all_floats(one)] if isinstance(value, list) else []


@each
def test_hangs_together(calculator: Calculator) -> None:
    assert find_faults(calculator) == []


@each
def test_every_choice_of_the_example_has_an_answer_with_every_part(calculator: Calculator) -> None:
    for given in choices_of(calculator):
        worked = work_out(calculator, given)
        assert isinstance(worked, Answer), f"{given}: {worked}"
        for system in ("metric", "inch", "inch64"):
            again = work_out(calculator, given, system)
            assert isinstance(again, Answer)
            made = parts(again)
            assert made["results"].count("<dt>") >= 3
            assert "None" not in made["results"]
            assert "nan" not in "".join(made.values()).lower().replace("nance", "")


@each
def test_random_valid_inputs_give_numbers_or_a_reason(calculator: Calculator) -> None:
    stream = random.Random(7)
    answered = 0
    for _ in range(150):
        given = draw_inputs(calculator, stream)
        found = door.answer(calculator.name, given)
        json.dumps(found, allow_nan=False)
        if "refused" in found:
            for refused in found["refused"]:
                assert all(refused[key] for key in ("input", "allowed", "why")), (given, refused)
        else:
            answered += 1
            assert all(math.isfinite(value) for value in _all_floats(found["results"]))
            door.live(json.dumps({"calculator": calculator.name, "inputs": given}))
    assert answered >= 15, f"only {answered} of 150 random valid inputs have an answer"


@each
@pytest.mark.parametrize("bad", WORST, ids=lambda bad: repr(bad)[:24])
def test_bad_input_is_refused_by_name_in_every_field(calculator: Calculator, bad: Any) -> None:
    for choices in choices_of(calculator)[:6]:
        for item in calculator.inputs:
            if not applies(item, choices):
                continue
            given = {**choices, item.name: bad}
            if isinstance(item, Choice):
                given = {item.name: bad}
            found = door.answer(calculator.name, given)
            json.dumps(found, allow_nan=False)
            if "refused" not in found:
                # The few of these that are sound values of some field: a negative or a 1 somewhere.
                value = found["inputs"][item.name]["value"]
                assert isinstance(bad, str | list) and math.isfinite(_all_floats([value])[0])
                continue
            first = found["refused"][0]
            assert any(one["input"].startswith(item.name) for one in found["refused"]), first
            assert first["why"] and first["allowed"] and len(first["given"]) <= 60


@each
def test_just_outside_a_range_is_refused_and_the_ends_are_read(calculator: Calculator) -> None:
    for choices in choices_of(calculator)[:4]:
        for item in numbers_of(calculator):
            if not applies(item, {**_defaults(calculator), **choices}):
                continue
            gap = 1 if item.whole else max(abs(item.highest), 1e-3) * 1e-6
            for outside in (item.lowest - gap, item.highest + gap):
                found = door.answer(calculator.name, {**choices, item.name: outside})
                assert [one["input"] for one in found["refused"]] == [item.name]
                assert "too" in found["refused"][0]["why"]
            for end in (item.lowest, item.highest):
                found = door.answer(calculator.name, {**choices, item.name: end})
                # The end itself may be impossible with the rest, but never "too small" or "too large".
                for refused in found.get("refused", []):
                    assert "for this calculation; give" not in refused["why"]


def _defaults(calculator: Calculator) -> dict[str, str]:
    return {item.name: item.example for item in calculator.inputs if isinstance(item, Choice)}


@each
def test_the_same_inputs_in_inches_give_the_same_answer(calculator: Calculator) -> None:
    for item in numbers_of(calculator):
        if item.unit != "mm" or item.when is not None:
            continue
        metric = door.answer(calculator.name, {item.name: f"{item.example} mm"})
        inch = door.answer(calculator.name, {item.name: f"{item.example / 25.4!r} in"}, "inch")
        for name, result in metric["results"].items():
            if isinstance(result["value"], float):
                assert math.isclose(
                    result["value"], inch["results"][name]["value"], rel_tol=1e-9, abs_tol=1e-9
                ), (item.name, name)


def test_html_in_inputs_is_escaped_everywhere() -> None:
    for calculator in CALCULATORS:
        for item in calculator.inputs:
            request = {
                "calculator": calculator.name,
                "inputs": {item.name: "<img src=x onerror=1>"},
            }
            found = json.loads(door.live(json.dumps(request)))
            assert "<img" not in "".join(found["parts"].values())
