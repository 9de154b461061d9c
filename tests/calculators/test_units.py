"""Every formula carried through with units by pint: dimension and magnitude must come out."""

import math
from typing import Any

import pytest

from benchrule.unit_factors import TABLE, table_text
from calculators.engine.compute import Answer, quantities, work_out
from calculators.engine.declaration import Calculator, Count, Step

from .pint_evaluation import PINT_NAMES, REGISTRY, evaluate, quantity
from .variants import CALCULATORS, choices_of


def test_the_written_table_is_what_pint_says() -> None:
    assert TABLE.read_text("utf-8") == table_text(), "run python -m benchrule.unit_factors"


def _agrees(found: Any, value: Any, unit: str, what: str) -> None:
    if isinstance(value, str | bool):
        return
    if not isinstance(found, REGISTRY.Quantity):
        found = quantity(found, "1")
    wanted = PINT_NAMES.get(unit, unit)
    assert found.is_compatible_with(wanted), f"{what}: is {found.units}, declared {unit}"
    ours = found.to(wanted).magnitude
    assert math.isclose(ours, value, rel_tol=1e-9, abs_tol=1e-9), (
        f"{what}: with units it is {ours} {unit}, without {value}"
    )


@pytest.mark.parametrize("calculator", CALCULATORS, ids=lambda calculator: calculator.name)
def test_every_formula_has_its_declared_unit(calculator: Calculator) -> None:
    units = {name: one.unit for name, one in quantities(calculator).items()}
    checked: set[str] = set()
    for given in choices_of(calculator):
        worked = work_out(calculator, given)
        if not isinstance(worked, Answer):
            continue
        for item in worked.work:
            if isinstance(item, Step) and not item.empirical:
                found = evaluate(item.formula, units, worked.values)
                _agrees(found, worked.values[item.name], item.unit, item.name)
                checked.add(item.name)
        for table in calculator.tables:
            if table.name in worked.tables:
                _check_table(worked, table.name, units)
    steps = {item.name for item in calculator.work if isinstance(item, Step) and not item.empirical}
    assert checked == steps, f"no choice reaches {steps - checked}"


def _check_table(worked: Answer, name: str, units: dict[str, str]) -> None:
    table = next(table for table in worked.calculator.tables if table.name == name)
    columns = worked.columns[name]
    known_units = {**units, **{column.name: column.unit for column in columns}}
    if isinstance(table.rows, Count):
        known_units.setdefault(table.rows.name, "1")
    for row in worked.tables[name][:3]:
        for column in columns:
            if column.formula and not column.running and not column.text:
                found = evaluate(column.formula, known_units, {**worked.values, **row})
                _agrees(found, row[column.name], column.unit, f"{name}.{column.name}")


def test_a_wrong_unit_is_noticed() -> None:
    with pytest.raises(AssertionError, match="declared mm"):
        _agrees(evaluate("length * length", {"length": "mm"}, {"length": 3.0}), 9.0, "mm", "area")
    with pytest.raises(AssertionError, match="without"):
        _agrees(
            evaluate("length + film", {"length": "mm", "film": "um"}, {"length": 1.0, "film": 5.0}),
            6.0, "mm", "sum",
        )  # fmt: skip
