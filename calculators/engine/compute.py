"""Works a calculator out: inputs in, values and tables out, or the reasons why not."""

import math
import re
from collections.abc import Callable, Collection, Mapping, Sequence
from dataclasses import dataclass, field
from functools import lru_cache
from typing import Any

from .declaration import (
    Calculator,
    Choice,
    Column,
    Count,
    Limit,
    Number,
    Quantity,
    Readings,
    Refusal,
    Said,
    Solved,
    Step,
    Table,
    Taken,
    Work,
)
from .formula import parse
from .inputs import Refused, read_inputs, refused_by_work
from .showing import show

MOST_ROWS = 400
PLACE = re.compile(r"\{([a-z][a-z0-9_]*)\}")


@dataclass
class Answer:
    """A worked calculation: every value by name, in declared units, at full precision."""

    calculator: Calculator
    system: str
    inputs: dict[str, Any]
    values: dict[str, Any]
    work: list[Work] = field(default_factory=list)  # what was done, in order
    tables: dict[str, list[dict[str, Any]]] = field(default_factory=dict)
    columns: dict[str, tuple[Column, ...]] = field(default_factory=dict)
    cautions: list[str] = field(default_factory=list)


class Say:
    """Prints values with their units, in the reader's unit system."""

    def __init__(self, calculator: Calculator, values: Mapping[str, Any], system: str) -> None:
        self.values = values
        self.system = system
        self.quantities = quantities(calculator)
        self.words = {
            item.name: dict(item.options) for item in calculator.inputs if isinstance(item, Choice)
        }

    def __call__(self, name: str) -> str:
        """The value called ``name`` as people read it."""
        value = self.values[name]
        if name in self.words:
            return self.words[name][value]
        quantity = self.quantities.get(name)
        if quantity is None or isinstance(value, str):
            return str(value)
        if isinstance(value, list | tuple):
            return ", ".join(self.quantity(one, quantity.unit, quantity.decimals) for one in value)
        return self.quantity(value, quantity.unit, quantity.decimals)

    def quantity(self, value: float, unit: str, decimals: int) -> str:
        """Any number with its unit, in the reader's unit system."""
        return show(value, unit, decimals, self.system)

    def fill(self, template: str) -> str:
        """``template`` with every ``{name}`` printed."""
        return PLACE.sub(lambda found: self(found[1]), template)


@lru_cache(maxsize=64)
def quantities(calculator: Calculator) -> Mapping[str, Quantity]:
    """Every number a calculator names: inputs, constants, steps, what functions give."""
    found: dict[str, Quantity] = {item.name: item for item in calculator.constants}
    found.update({one.name: one for one in calculator.inputs if isinstance(one, Number | Readings)})
    for item in calculator.work:
        if isinstance(item, Step):
            found[item.name] = item
        elif isinstance(item, Solved):
            found.update({given.name: given for given in item.gives})
    found.update({taken.name: taken for taken in calculator.taken})
    return found


def work_out(
    calculator: Calculator, given: Mapping[str, Any], system: str = "metric"
) -> Answer | list[Refused]:
    """The answer of ``calculator`` for what was ``given``, or every refusal."""
    inputs, refused = read_inputs(calculator, given, system)
    if refused:
        return refused
    values: dict[str, Any] = {constant.name: constant.value for constant in calculator.constants}
    values.update(inputs)
    answer = Answer(calculator, system, inputs, values)
    say = Say(calculator, values, system)
    try:
        for item in calculator.work:
            if not item.only_if or parse(item.only_if).evaluate(values):
                _do(item, calculator, values, say)
                answer.work.append(item)
        for table in calculator.tables:
            if not table.only_if or parse(table.only_if).evaluate(values):
                columns = tuple(
                    column
                    for column in table.columns
                    if not column.only_if or parse(column.only_if).evaluate(values)
                )
                answer.columns[table.name] = columns
                answer.tables[table.name] = _rows(table, columns, values)
        for taken in calculator.taken:
            if not taken.only_if or parse(taken.only_if).evaluate(values):
                values[taken.name] = _take(taken, answer.tables[taken.table])
    except Refusal as refusal:
        return [refused_by_work(refusal, calculator, inputs)]
    answer.cautions = [
        say.fill(caution.text)
        for caution in calculator.cautions
        if not caution.only_if or parse(caution.only_if).evaluate(values)
    ]
    return answer


def steps_behind(work: Sequence[Work], names: Collection[str]) -> list[Work]:
    """The steps that the values called ``names`` rest on, in order."""
    wanted = set(names)
    found: list[Work] = []
    for item in reversed(work):
        if isinstance(item, Step) and item.name in wanted:
            wanted |= parse(item.formula).names
        elif isinstance(item, Solved) and wanted & {given.name for given in item.gives}:
            wanted |= set(parameters(item.function))
        else:
            continue
        found.append(item)
    return found[::-1]


def parameters(function: Callable[..., Any]) -> tuple[str, ...]:
    """The names a function takes."""
    code = function.__code__
    return code.co_varnames[: code.co_argcount + code.co_kwonlyargcount]


def _do(item: Work, calculator: Calculator, values: dict[str, Any], say: Say) -> None:
    match item:
        case Step():
            values[item.name] = _evaluate(item.formula, item.label, calculator, values)
        case Solved():
            values.update(_solve(item, values))
        case Said():
            for condition, template in item.cases:
                if not condition or parse(condition).evaluate(values):
                    values[item.name] = say.fill(template)
                    break
            else:
                raise LookupError(f"{calculator.name}: no case of {item.name} holds")
        case Limit():
            if not _evaluate(item.holds, "A limit", calculator, values):
                raise Refusal(item.blames, say.fill(item.otherwise), say.fill(item.allowed))


def _evaluate(text: str, label: str, calculator: Calculator, values: Mapping[str, Any]) -> Any:
    """A formula's value, or a refusal naming an input it rests on: never NaN, never infinity."""
    formula = parse(text)
    try:
        value = formula.evaluate(values)
    except (ArithmeticError, ValueError):
        value = math.nan
    if isinstance(value, complex) or (isinstance(value, float) and not math.isfinite(value)):
        asked = [item.name for item in calculator.inputs]
        used = [name for name in asked if name in formula.names] or asked
        raise Refusal(
            used[0],
            f"{label} has no value for these figures; change {' or '.join(used)}",
            "figures for which the calculation has an answer",
        )
    return value


def _solve(item: Solved, values: Mapping[str, Any]) -> Mapping[str, Any]:
    known = {name: values[name] for name in parameters(item.function) if name in values}
    returned = item.function(**known)
    given: Mapping[str, Any] = (
        returned if isinstance(returned, Mapping) else {item.gives[0].name: returned}
    )
    for promised in item.gives:
        if isinstance(given[promised.name], float) and not math.isfinite(given[promised.name]):
            raise ArithmeticError(f"{item.name} gave {given[promised.name]} for {promised.name}")
    return given


def _rows(
    table: Table, columns: tuple[Column, ...], values: dict[str, Any]
) -> list[dict[str, Any]]:
    """The rows of a table: every column's value, worked out or brought."""
    brought: list[dict[str, Any]]
    if isinstance(table.rows, Count):
        first = int(parse(table.rows.first).evaluate(values))
        last = int(parse(table.rows.last).evaluate(values))
        brought = [
            {table.rows.name: number} for number in range(first, min(last, first + MOST_ROWS) + 1)
        ]
    else:
        brought = [dict(row) for row in values[table.rows]]
    sums = {column.name: 0.0 for column in columns if column.running}
    work = [(column, parse(column.formula).evaluate) for column in columns if column.formula]
    rows = []
    for row in brought:
        known = {**values, **row}
        for column, evaluate in work:
            value = evaluate(known)
            if column.running:
                sums[column.name] += value
                value = sums[column.name]
            known[column.name] = value
        rows.append({column.name: known[column.name] for column in columns})
    return rows


def _take(taken: Taken, rows: list[dict[str, Any]]) -> float:
    found: list[float] = [row[taken.column] for row in rows]
    return found[-1] if taken.take == "last" else max(found, key=abs)
