"""Reads what people write: ``25 1/2 in``, ``650``, ``25,5 mm``, ``14 9/64"``, ``1.2e3``.

Numbers are read exactly, as a fraction of whole numbers, and only then divided, so that
``25 1/2 in`` is 647.7 mm to the last bit.
"""

import math
import re
from functools import lru_cache

from .unit_table import UNITS, Unit

LONGEST_TEXT = 80
LARGEST_EXPONENT = 30
NUMBER_BEGINS = re.compile(r"[\d.,/+-]")
# Units whose names begin as numbers do: 1/m, /min, 10^6 psi.
LIKE_NUMBERS = frozenset(
    name
    for unit in UNITS.values()
    for name in (unit.id, unit.shown, *unit.spellings)
    if NUMBER_BEGINS.match(name) and name != "1"
)
VULGAR = {
    "½": " 1/2", "¼": " 1/4", "¾": " 3/4", "⅛": " 1/8", "⅜": " 3/8", "⅝": " 5/8", "⅞": " 7/8",
    "⅓": " 1/3", "⅔": " 2/3", "−": "-", "–": "-", "⁄": "/", "\u00a0": " ", "\u202f": " ",
}  # fmt: skip
NUMBER = re.compile(
    r"""\s*(?P<sign>[+-]?)\s*
    (?: (?P<whole>\d+)(?:\s+|\s*-\s*)(?P<top>\d+)\s*/\s*(?P<bottom>\d+)
      | (?P<only_top>\d+)\s*/\s*(?P<only_bottom>\d+)
      | (?P<decimal>\d+(?:[.,]\d*)?|[.,]\d+)(?:[eE](?P<exponent>[+-]?\d+))?
    )\s*(?P<rest>.*)""",
    re.VERBOSE | re.ASCII | re.DOTALL,
)


class ReadingError(ValueError):
    """Text that is no value: the message says why and how to write it."""


def read_exact(text: str) -> tuple[int, int, str]:
    """The number at the start of ``text`` as (numerator, denominator), and what follows it."""
    if len(text) > LONGEST_TEXT:
        raise ReadingError(f"is {len(text)} characters long; give one number")
    plain = "".join(VULGAR.get(letter, letter) for letter in text).strip()
    if not plain:
        raise ReadingError("is empty; give a number")
    found = NUMBER.fullmatch(plain)
    if not found:
        raise ReadingError("is not a number; write it like 650, 25.5 or 25 1/2 in")
    part = found.groupdict()
    if part["decimal"] is not None:
        numerator, denominator = _decimal(part["decimal"], part["exponent"])
    else:
        top = int(part["top"] or part["only_top"])
        denominator = int(part["bottom"] or part["only_bottom"])
        if denominator == 0:
            raise ReadingError("divides by zero; mend the fraction")
        numerator = int(part["whole"] or 0) * denominator + top
    if part["sign"] == "-":
        numerator = -numerator
    rest = part["rest"].strip()
    if NUMBER_BEGINS.match(rest) and rest not in LIKE_NUMBERS:
        raise ReadingError("has more than one number in it; write one, like 1500 or 25 1/2 in")
    return numerator, denominator, rest


def _decimal(digits: str, exponent: str | None) -> tuple[int, int]:
    if re.fullmatch(r"[1-9]\d{0,2},\d{3}", digits):
        raise ReadingError(
            f"can be read two ways; write {digits.replace(',', '')} or {digits.replace(',', '.')}"
        )
    whole, _, part = digits.replace(",", ".").partition(".")
    power = int(exponent or 0) if len(exponent or "") <= 4 else LARGEST_EXPONENT + 1
    if abs(power) > LARGEST_EXPONENT:
        raise ReadingError("is out of all proportion; write it without a large exponent")
    numerator, denominator = int((whole + part) or "0"), 10 ** len(part)
    return (numerator * 10**power, denominator) if power >= 0 else (
        numerator, denominator * 10**-power,
    )  # fmt: skip


def units_of_kind(unit: str) -> list[Unit]:
    """Every unit a value of ``unit`` may be given in."""
    kind = UNITS[unit].kind
    return [other for other in UNITS.values() if other.kind == kind]


def find_unit(words: str, like: str) -> Unit:
    """The unit that ``words`` mean where a value of unit ``like`` is asked."""
    squeezed = words.strip().rstrip(".")
    for same_case in (True, False):
        for unit in units_of_kind(like):
            known = [name.rstrip(".") for name in (unit.id, unit.shown, *unit.spellings)]
            if squeezed in known or (
                not same_case and squeezed.lower() in [name.lower() for name in known]
            ):
                return unit
    allowed = ", ".join(unit.shown for unit in units_of_kind(like) if unit.shown)
    if not allowed:
        raise ReadingError("has a unit where a plain number is asked; leave the unit out")
    raise ReadingError(f"has a unit that does not fit here; use {allowed}")


def convert(value: float, unit: str, to: str) -> float:
    """``value`` of ``unit`` in the unit ``to`` (both of one kind; readings keep their offset)."""
    if unit == to:
        return value
    a, b = UNITS[unit], UNITS[to]
    base = value * a.numerator / a.denominator + a.offset_numerator / a.offset_denominator
    return (base - b.offset_numerator / b.offset_denominator) * b.denominator / b.numerator


@lru_cache(maxsize=4096)  # the page sends every entry again at each change of one
def read_quantity(text: str, unit: str, assumed: str = "") -> float:
    """``text`` as a value in ``unit``; where it names no unit it is in ``assumed`` (or ``unit``)."""
    numerator, denominator, words = read_exact(text)
    a, b = find_unit(words, unit) if words else UNITS[assumed or unit], UNITS[unit]
    # (x·na/da + oa − ob)·db/nb over one denominator: a single division, correctly rounded.
    top = numerator * a.numerator * a.offset_denominator * b.offset_denominator
    common = denominator * a.denominator * a.offset_denominator * b.offset_denominator
    top += a.offset_numerator * denominator * a.denominator * b.offset_denominator
    top -= b.offset_numerator * denominator * a.denominator * a.offset_denominator
    value = (top * b.denominator) / (common * b.numerator)
    if not math.isfinite(value):
        raise ReadingError("is too large")
    return value
