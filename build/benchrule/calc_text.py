"""A calculator's answer, refusals and help as lines for the terminal."""

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from calculators.engine.compute import quantities
from calculators.engine.declaration import Calculator, Choice, Input, Number, Readings, Rows, Said
from calculators.engine.inputs import allowed_range
from calculators.engine.showing import as_typed, reader_unit, show_number
from calculators.engine.unit_table import UNITS


def answer_lines(calculator: Calculator, found: Mapping[str, Any], units: str) -> Iterator[str]:
    """The answer as a person reads it in a terminal."""
    labels = _labels(calculator)
    yield calculator.title
    given = ", ".join(f"{name} {one['shown']}" for name, one in found["inputs"].items())
    yield f"  with {given if len(given) < 600 else given[:597] + '...'}"
    yield ""
    for name, result in found["results"].items():
        yield f"{labels.get(name, name)}: {result['shown']}"
    for table in calculator.tables:
        if table.name in found["tables"]:
            yield ""
            yield table.title
            yield from _table(calculator, found["tables"][table.name], table.name, units)
    for caution in found["cautions"]:
        yield f"! {caution}"


def _labels(calculator: Calculator) -> dict[str, str]:
    labels = {name: quantity.label for name, quantity in quantities(calculator).items()}
    labels.update({item.name: item.label for item in calculator.work if isinstance(item, Said)})
    return labels


def _table(
    calculator: Calculator, found: Mapping[str, Any], name: str, units: str
) -> Iterator[str]:
    declared = next(table for table in calculator.tables if table.name == name)
    columns = {column.name: column for column in declared.columns}
    shown: list[list[str]] = [list(found["columns"])]
    shown.append(
        [
            "" if columns[key].text else UNITS[reader_unit(columns[key].unit, units)].shown
            for key in found["columns"]
        ]
    )
    for row in found["rows"]:
        shown.append(
            [
                _cell(columns[key], cell, units)
                for key, cell in zip(found["columns"], row, strict=True)
            ]
        )
    widths = [max(len(row[place]) for row in shown) for place in range(len(shown[0]))]
    for row in shown:
        yield "  ".join(cell.rjust(width) for cell, width in zip(row, widths, strict=True)).rstrip()


def _cell(column: Any, value: Any, units: str) -> str:
    if column.text or value is None:
        return str(value or "")
    return show_number(value, column.unit, column.decimals, units)


def refusal_lines(refused: Sequence[Mapping[str, str]]) -> Iterator[str]:
    """Every refusal on a line: which input, why, what was given, what is allowed."""
    for one in refused:
        given = one["given"] or "nothing"
        yield f"{one['input']}: {one['why']}. Given: {given}. Allowed: {one['allowed']}."


def help_lines(calculator: Calculator) -> Iterator[str]:
    """A calculator's inputs with their units, ranges and examples."""
    yield f"{calculator.name}: {calculator.summary}"
    yield ""
    yield "Inputs (those left out take the example's value):"
    for item in calculator.inputs:
        only = (
            f"  [only with {item.when.choice}={'|'.join(item.when.is_one_of)}]" if item.when else ""
        )
        yield f"  {item.name}  {item.label}; {_allowed(item)}{only}"
        if item.help:
            yield f"      {item.help}"
    yield ""
    yield f"Holds: {calculator.validity}"


def _allowed(item: Input) -> str:
    match item:
        case Choice():
            options = ", ".join(f"{value} ({words})" for value, words in item.options)
            return f"one of {options}; example {item.example}"
        case Number():
            example = as_typed(item.example, item.unit, 0 if item.whole else 6)
            return f"{allowed_range(item)}; example {example} {UNITS[item.unit].shown}".rstrip()
        case Readings():
            example = "; ".join(as_typed(one, item.unit, 6) for one in item.example)
            return (
                f"{item.at_least} to {item.at_most} readings, each {allowed_range(item)}; "
                f"example {example}"
            )
        case Rows():
            cells = " | ".join(column.name for column in item.columns)
            first = " | ".join(str(cell) for cell in item.example[0])
            return f"rows '{cells}' with ; between them; example {first}; …"
