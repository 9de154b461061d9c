"""The printed figures of a worked step give the printed result: what a person can recompute."""

import random

import pytest

from calculators.engine.compute import Answer, quantities, work_out
from calculators.engine.declaration import Calculator, Step
from calculators.engine.formula import parse
from calculators.engine.showing import as_typed, half_up

from .variants import CALCULATORS, draw_inputs


@pytest.mark.parametrize("calculator", CALCULATORS, ids=lambda calculator: calculator.name)
def test_figures_on_paper_give_the_printed_result(calculator: Calculator) -> None:
    """Each name is put in as it is printed; the result must agree to what that rounding allows."""
    stream = random.Random(3)
    known = quantities(calculator)
    tried = 0
    for _ in range(400):
        if tried >= 250:
            break
        worked = work_out(calculator, draw_inputs(calculator, stream))
        if not isinstance(worked, Answer):
            continue
        for item in worked.work:
            if not isinstance(item, Step) or isinstance(worked.values[item.name], str | bool):
                continue
            formula = parse(item.formula)
            exact = formula.evaluate(worked.values)
            # How far the rounding of each printed figure can carry the result.
            reach = 0.5 * 10**-item.decimals
            printed = dict(worked.values)
            for name in formula.names:
                value = worked.values[name]
                if isinstance(value, str | bool | int) or name not in known:
                    continue
                digits = known[name].decimals
                if value != 0 and abs(value) < 10**-digits:
                    digits += 4
                rounded = float(as_typed(value, known[name].unit, digits))
                printed[name] = rounded
                step = max(0.5 * 10**-digits, abs(value) * 1e-9)
                for moved in (value - step, value + step):
                    try:
                        near = formula.evaluate({**worked.values, name: moved})
                    except (ArithmeticError, ValueError):
                        continue
                    reach += abs(near - exact) if not isinstance(near, complex) else 0
            try:
                again = formula.evaluate(printed)
            except (ArithmeticError, ValueError):
                continue  # the printed figure has rounded to a place where there is no value
            shown = float(half_up(exact, item.decimals))
            assert abs(again - shown) <= 1.5 * reach + abs(shown) * 1e-6, (
                f"{item.name}: printed figures give {again}, printed result is {shown}"
            )
            tried += 1
    assert tried >= 20
