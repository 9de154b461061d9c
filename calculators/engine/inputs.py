"""Reads what was given against a calculator's declaration: values, or every reason why not."""

import math
import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any

from .declaration import Calculator, Choice, Input, Number, Readings, Refusal, Rows, Words
from .reading import ReadingError, read_quantity
from .showing import as_typed, half_up, reader_unit, show, with_unit
from .strangers import clean, is_clean

LONGEST_ECHO = 60
LONGEST_READINGS, LONGEST_ROWS = 2000, 20_000  # characters of readings and of rows in one text
MOST_NAMES = 20  # that there are not, refused one by one


@dataclass(frozen=True)
class Refused:
    """One input that was refused: which, what was given, what is allowed, why and what to do."""

    input: str
    given: str
    allowed: str
    why: str


def applies(item: Input, chosen: Mapping[str, Any]) -> bool:
    """Whether an input is asked at all, given the choices made."""
    return item.when is None or chosen.get(item.when.choice) in item.when.is_one_of


def allowed_range(item: Number | Readings, system: str = "metric") -> str:
    """The allowed range in words, in the reader's units: ``150 to 1200 mm``."""
    if isinstance(item, Number) and item.whole:
        return f"a whole number from {half_up(item.lowest, 0)} to {half_up(item.highest, 0)}"
    low, high = (
        as_typed(bound, item.unit, _needed_decimals(bound), system)
        for bound in (item.lowest, item.highest)
    )
    return f"{low} to {with_unit(high, item.unit, system)}"


def echo(given: Any) -> str:
    """What was given, fit to be quoted: text, on one line, not too long."""
    text = clean(" ".join(str(given)[:1000].split()), 1000, "�")
    return text if len(text) <= LONGEST_ECHO else text[: LONGEST_ECHO - 1] + "…"


class InputReader:
    """Reads all inputs of one request; ``values`` and ``refused`` hold the outcome."""

    def __init__(self, calculator: Calculator, given: Mapping[str, Any], system: str) -> None:
        self.calculator = calculator
        self.system = system
        self.values: dict[str, Any] = {}
        self.refused: list[Refused] = []
        known = {item.name: item for item in calculator.inputs}
        for name in [name for name in given if name not in known][:MOST_NAMES]:
            self._refuse(
                    str(name), given[name], "one of " + ", ".join(known),
                    f"{calculator.title} has no input of this name; take one of those allowed",
                )  # fmt: skip
        # Choices first: they decide which other inputs are asked.
        for item in sorted(calculator.inputs, key=lambda item: not isinstance(item, Choice)):
            if applies(item, self.values):
                self._read(item, given.get(item.name, item.example), item.name in given)

    def _refuse(self, name: str, given: Any, allowed: str, why: str) -> None:
        self.refused.append(Refused(echo(name), echo(given), allowed, why))

    def _read(self, item: Input, given: Any, was_given: bool) -> None:
        match item:
            case Choice():
                if given in [value for value, _ in item.options] and isinstance(given, str):
                    self.values[item.name] = given
                else:
                    options = ", ".join(value for value, _ in item.options)
                    self._refuse(
                        item.name, given, f"one of {options}",
                        f"{item.label} is none of the ways there are; take one of {options}",
                    )  # fmt: skip
            case Number():
                value = self._number(item, given, item.name, item.label, was_given)
                if value is not None:
                    self.values[item.name] = value
            case Readings():
                self._readings(item, given, was_given)
            case Rows():
                self._rows(item, given, was_given)

    def _number(
        self, item: Number | Readings, given: Any, name: str, label: str, was_given: bool
    ) -> float | None:
        """One number in the declared unit, or None with the reason noted."""
        try:
            value = _as_number(given, item.unit, reader_unit(item.unit, self.system))
        except ReadingError as error:
            why = f"{label} {error}"
        else:
            whole = isinstance(item, Number) and item.whole
            if whole and value != math.floor(value):
                why = f"{label} must be a whole number; round it"
            elif item.lowest <= value <= item.highest or not was_given:
                return int(value) if whole else value
            else:
                size = "small" if value < item.lowest else "large"
                allowed = allowed_range(item, self.system)
                why = f"{label} is too {size} for this calculation; give {allowed}"
        self._refuse(name, given, allowed_range(item, self.system), why)
        return None

    def _readings(self, item: Readings, given: Any, was_given: bool) -> None:
        try:
            parts = split_readings(given)
        except ReadingError as error:
            allowed = f"{item.at_least} to {item.at_most} readings"
            self._refuse(item.name, given, allowed, f"{item.label} {error}")
            return
        if not item.at_least <= len(parts) <= item.at_most:
            self._refuse(
                item.name, given, f"{item.at_least} to {item.at_most} readings",
                f"{item.label} has {len(parts)} readings; give {item.at_least} to {item.at_most}, "
                "with a space or semicolon between them",
            )  # fmt: skip
            return
        numbers = [
            self._number(item, part, item.name, f"{item.label}, reading {place},", was_given)
            for place, part in enumerate(parts, start=1)
        ]
        if None not in numbers:
            self.values[item.name] = numbers

    def _rows(self, item: Rows, given: Any, was_given: bool) -> None:
        names = [column.name for column in item.columns]
        cells = " | ".join(names)
        try:
            rows = _split_rows(given, names)
        except ReadingError as error:
            self._refuse(item.name, given, f"rows of {cells}", f"{item.label} {error}")
            return
        if not item.at_least <= len(rows) <= item.at_most:
            self._refuse(
                item.name, f"{len(rows)} rows", f"{item.at_least} to {item.at_most} rows",
                f"{item.label} has {len(rows)} rows; give {item.at_least} to {item.at_most}",
            )  # fmt: skip
            return
        before = len(self.refused)
        read: list[dict[str, Any]] = []
        for place, row in enumerate(rows, start=1):
            values: dict[str, Any] = {}
            for column, cell in zip(item.columns, row, strict=True):
                where = f"{item.name}[{place}].{column.name}"
                label = f"{column.label} in row {place}"
                if isinstance(column, Words):
                    values[column.name] = self._words(column, cell, where, label)
                else:
                    values[column.name] = self._number(column, cell, where, label, was_given)
            read.append(values)
        if len(self.refused) == before:
            self.values[item.name] = read

    def _words(self, column: Words, cell: Any, where: str, label: str) -> str:
        words = " ".join(str(cell).split()) if isinstance(cell, str | int | float) else ""
        if not 1 <= len(words) <= column.longest:
            self._refuse(
                where, cell, f"1 to {column.longest} characters",
                f"{label} is empty or too long; give it a short name",
            )  # fmt: skip
        elif not is_clean(words):
            self._refuse(
                where, cell, "letters, digits and signs",
                f"{label} has characters that cannot be shown; type it anew",
            )  # fmt: skip
        return words


def read_inputs(
    calculator: Calculator, given: Mapping[str, Any], system: str
) -> tuple[dict[str, Any], list[Refused]]:
    """The values of every input that applies, in declared units, and all refusals at once.

    Inputs left out take the example's values. Text without a unit is in the unit that the
    reader's ``system`` shows; a bare JSON number is in the declared unit.
    """
    reader = InputReader(calculator, given, system)
    return reader.values, reader.refused


def refused_by_work(refusal: Refusal, calculator: Calculator, values: Mapping[str, Any]) -> Refused:
    """A refusal raised while working, with what was given for the input it blames."""
    name = refusal.blames
    given = values.get(name.partition("[")[0], "")
    for item in calculator.inputs:
        if item.name == name and isinstance(item, Number):
            given = show(given, item.unit, _needed_decimals(given), "metric")
    return Refused(name, echo(given), refusal.allowed, refusal.why)


def _needed_decimals(value: Any) -> int:
    text = f"{value!r}"
    return len(text.partition(".")[2].rstrip("0")) if "e" not in text else 6


def _as_number(given: Any, unit: str, assumed: str) -> float:
    if isinstance(given, bool) or given is None:
        raise ReadingError("is not a number; write it like 650, 25.5 or 25 1/2 in")
    if isinstance(given, int | float):
        if isinstance(given, int) and abs(given) > 10**30:
            raise ReadingError("is out of all proportion; give a sensible size")
        if not math.isfinite(given):
            raise ReadingError("is not a finite number; give a sensible size")
        return float(given) + 0.0  # minus nought is nought
    if isinstance(given, str):
        return read_quantity(given, unit, assumed)
    raise ReadingError("is not one number; write it like 650, 25.5 or 25 1/2 in")


def split_readings(given: Any) -> list[Any]:
    """Readings from a list, or from text with spaces, semicolons or new lines between them.

    ReadingError where the text is too long.
    """
    if isinstance(given, str):
        if len(given) > LONGEST_READINGS:
            raise ReadingError(f"has {len(given)} characters; give at most {LONGEST_READINGS}")
        # A comma divides readings only where a space follows: 27,5 is one reading.
        return [part for part in re.split(r"[;\n]+|,\s+|\s+(?=[+-]?[\d.])", given) if part.strip()]
    return list(given) if isinstance(given, list | tuple) else [given]


def _split_rows(given: Any, names: list[str]) -> list[list[Any]]:
    """Rows from a list of lists or objects, or from text ``a | 1 | 2; b | 3 | 4``."""
    if isinstance(given, str):
        if len(given) > LONGEST_ROWS:
            raise ReadingError(f"has {len(given)} characters; give at most {LONGEST_ROWS}")
        given = [line.split("|") for line in re.split(r"[;\n]+", given) if line.strip()]
    if not isinstance(given, list | tuple):
        raise ReadingError(f"is not a list of rows; give rows of {' | '.join(names)}")
    rows: list[list[Any]] = []
    for place, row in enumerate(given, start=1):
        if isinstance(row, Mapping):
            unknown = _quoted(name for name in row if name not in names)
            missing = _quoted(name for name in names if name not in row)
            if unknown or missing:
                raise ReadingError(
                    f"row {place} lacks {missing or 'nothing'} and has unknown "
                    f"{unknown or 'nothing'}; give {' | '.join(names)}"
                )
            rows.append([row[name] for name in names])
        elif isinstance(row, list | tuple) and len(row) == len(names):
            rows.append(list(row))
        else:
            raise ReadingError(
                f"row {place} does not have {len(names)} cells; give {' | '.join(names)}"
            )
    return rows


def _quoted(names: Iterable[Any]) -> str:
    return ", ".join(echo(name) for name in names)
