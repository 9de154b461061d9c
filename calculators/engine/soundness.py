"""Says whether a declaration hangs together: every name known, every source given, no doubles.

Run by the tests and by ``benchrule check``, not in the browser.
"""

from collections.abc import Iterable

from .compute import PLACE, quantities
from .declaration import (
    Calculator,
    Choice,
    Count,
    Limit,
    Number,
    Readings,
    Rows,
    Said,
    Solved,
    Step,
)
from .formula import FormulaError, parse
from .unit_table import UNITS


def find_faults(calculator: Calculator) -> list[str]:
    """Every fault of one declaration, in words."""
    return [f"{calculator.name}: {fault}" for fault in _faults(calculator)]


def _faults(calculator: Calculator) -> Iterable[str]:
    known = {item.name for item in calculator.inputs} | {c.name for c in calculator.constants}
    if len(known) != len(calculator.inputs) + len(calculator.constants):
        yield "two inputs or constants share a name"
    sources = {source.id for source in calculator.sources}
    used: set[str] = {constant.source for constant in calculator.constants}
    yield from _input_faults(calculator)
    for item in calculator.work:
        yield from _formula(item.only_if, known, "a condition")
        match item:
            case Step():
                yield from _formula(item.formula, known, item.name)
                known.add(item.name)
            case Solved():
                code = item.function.__code__
                for name in code.co_varnames[: code.co_argcount + code.co_kwonlyargcount]:
                    if name not in known:
                        yield f"{item.name} asks its function for unknown '{name}'"
                known.update(given.name for given in item.gives)
            case Said():
                for condition, template in item.cases:
                    yield from _formula(condition, known, item.name)
                    yield from _places(template, known, item.name)
                known.add(item.name)
            case Limit():
                yield from _formula(item.holds, known, "a limit")
                yield from _places(item.otherwise + item.allowed, known, "a limit")
        if isinstance(item, Step | Solved | Limit):
            used.add(item.source)
    for table in calculator.tables:
        used.add(table.source)
        row = {column.name for column in table.columns}
        if isinstance(table.rows, Count):
            row.add(table.rows.name)
        for column in table.columns:
            yield from _formula(column.formula, known | row, f"{table.name}.{column.name}")
            if column.unit not in UNITS:
                yield f"{table.name}.{column.name} has unknown unit '{column.unit}'"
    known.update(taken.name for taken in calculator.taken)
    for caution in calculator.cautions:
        yield from _formula(caution.only_if, known, "a caution")
        yield from _places(caution.text, known, "a caution")
    for result in calculator.results:
        if result not in known:
            yield f"result '{result}' is not worked out"
    for name in calculator.aside:
        if name not in calculator.results:
            yield f"'{name}' stands aside but is no result"
    for name, quantity in quantities(calculator).items():
        # A constant is never converted, so its unit may be any that pint knows.
        if quantity.unit not in UNITS and name not in {c.name for c in calculator.constants}:
            yield f"'{name}' has unknown unit '{quantity.unit}'"
    for check in calculator.checks:
        used.add(check.source)
        if check.within and not check.because:
            yield f"check '{check.where}' says within, not because"
    if len({(check.source, check.where) for check in calculator.checks}) < 2:
        yield "has fewer than two outside checks"
    for exercise in calculator.exercises:
        asked = {item.name for item in calculator.inputs}
        for name in (*exercise.draw, *exercise.fixed, *PLACE.findall(exercise.situation)):
            if name not in asked:
                yield f"exercise {exercise.name} draws unknown '{name}'"
        for slip in exercise.slips:
            yield from _formula(slip.formula, known, f"slip {slip.name}")
    for decision in calculator.decisions:
        asked = {item.name for item in calculator.inputs}
        for name in (*decision.draw, *decision.fixed):
            if name not in asked:
                yield f"decision {decision.name} draws unknown '{name}'"
        if len(decision.options) < 2:
            yield f"decision {decision.name} has fewer than two options"
        for option in decision.options:
            yield from _formula(option.holds, known, f"decision {decision.name}")
            yield from _places(option.words + option.why, known, f"decision {decision.name}")
        yield from _places(
            decision.situation + decision.because, known, f"decision {decision.name}"
        )
    for source in sorted(used - sources):
        yield f"source '{source}' is cited but not listed"
    for source in sorted(sources - used):
        yield f"source '{source}' is listed but not cited"


def _input_faults(calculator: Calculator) -> Iterable[str]:
    choices = {
        item.name: [value for value, _ in item.options]
        for item in calculator.inputs
        if isinstance(item, Choice)
    }
    for item in calculator.inputs:
        if item.when is not None:
            values = choices.get(item.when.choice, [])
            if not set(item.when.is_one_of) <= set(values):
                yield f"{item.name} applies when {item.when.choice} has a value it cannot have"
        match item:
            case Choice() if item.example not in choices[item.name]:
                yield f"the example of {item.name} is not an option"
            case Number() if not item.lowest <= item.example <= item.highest:
                yield f"the example of {item.name} lies outside its range"
            case Readings() if not all(item.lowest <= one <= item.highest for one in item.example):
                yield f"the example of {item.name} lies outside its range"
            case Rows():
                for row in item.example:
                    if len(row) != len(item.columns):
                        yield f"an example row of {item.name} has the wrong number of cells"


def _formula(text: str, known: set[str], where: str) -> Iterable[str]:
    if not text:
        return
    try:
        missing = parse(text).names - known
    except FormulaError as error:
        yield f"{where}: {error}"
        return
    for name in sorted(missing):
        yield f"{where} uses unknown '{name}'"


def _places(template: str, known: set[str], where: str) -> Iterable[str]:
    for name in PLACE.findall(template):
        if name not in known:
            yield f"{where} prints unknown '{name}'"
