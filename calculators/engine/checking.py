"""Runs a calculator's outside checks: the source's figure, ours, and whether they agree."""

import re
from dataclasses import dataclass
from typing import Any

from .compute import quantities, work_out
from .declaration import Calculator, Check, Quantity
from .reading import convert

CELL = re.compile(r"(?P<table>\w+)\[(?P<row>[^\]]+)\]\.(?P<column>\w+)")


@dataclass(frozen=True)
class Compared:
    """One figure of a check: what it is, the source's digits, ours, and the verdict."""

    check: Check
    label: str
    printed: str
    ours: float
    allowed: float
    unit: str

    @property
    def difference(self) -> float:
        """Ours less the source's."""
        return self.ours - float(self.printed)

    @property
    def agrees(self) -> bool:
        """Whether ours is the source's figure, to its last digit or to what the check allows."""
        return abs(self.difference) <= self.allowed


def compare(calculator: Calculator, check: Check) -> list[Compared]:
    """Every figure of one check beside ours."""
    if check.function is not None:
        given = check.function(**check.given)
        label = check.where
        return [
            Compared(
                check, label if not name else f"{label}: {name}", printed,
                float(given[name] if name else given), _allowed(check, printed), check.unit,
            )
            for name, printed in check.expected.items()
        ]  # fmt: skip
    worked = work_out(calculator, check.inputs)
    if isinstance(worked, list):
        raise ValueError(f"{calculator.name}, check '{check.where}': refused, {worked[0].why}")
    known = quantities(calculator)
    compared = []
    for path, printed in check.expected.items():
        cell = CELL.fullmatch(path)
        if cell:
            columns = {column.name: column for column in worked.columns[cell["table"]]}
            quantity: Quantity = columns[cell["column"]]
            first = next(iter(columns))
            row = _find_row(worked.tables[cell["table"]], first, cell["row"], path)
            value = float(row[cell["column"]])
            label = f"{quantity.label}, {columns[first].label.lower()} {cell['row']}"
        else:
            quantity, value = known[path], float(worked.values[path])
            label = quantity.label
        unit = check.unit or quantity.unit
        value = convert(value, quantity.unit, unit)
        compared.append(Compared(check, label, printed, value, _allowed(check, printed), unit))
    return compared


def _find_row(rows: list[dict[str, Any]], first: str, wanted: str, path: str) -> dict[str, Any]:
    for row in rows:
        if str(row[first]) == wanted:
            return row
    raise LookupError(f"no row '{wanted}' for {path}")


def _allowed(check: Check, printed: str) -> float:
    """How far ours may lie off: half the last printed digit, unless the check says otherwise."""
    if check.within.endswith("%"):
        return abs(float(printed)) * float(check.within[:-1]) / 100
    if check.within:
        return float(check.within)
    mantissa, _, exponent = printed.lower().partition("e")
    decimals = len(mantissa.partition(".")[2])
    return 0.5000001 * 10.0 ** (int(exponent or 0) - decimals)
