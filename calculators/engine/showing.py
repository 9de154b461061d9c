"""Shows numbers to people: half-up rounding, inches as decimals or 64ths. Print only."""

import math
from functools import lru_cache

from .reading import convert
from .unit_table import UNITS

SYSTEMS = ("metric", "inch", "inch64")
LEAST_IN_64THS = 1.0  # inches; what is smaller, a gap or a film, is read in thousandths


def half_up(value: float, decimals: int) -> str:
    """``value`` with ``decimals`` decimals, rounded half up on the digits a person reads.

    Works on the shortest decimal text of the float, so 2.675 prints 2.68 as anyone at a bench
    expects, though the binary number is a hair below.
    """
    text = repr(value)
    if text[-1] != "5" and "e" not in text and decimals >= 0:
        # No tie on the digits a person reads: the quick way gives the same.
        text = f"{value:.{decimals}f}"
        return text[1:] if text[0] == "-" and not text.strip("-0.") else text
    digits, _, exponent = f"{abs(value)!r}".partition("e")
    whole, _, part = digits.partition(".")
    number, scale = int(whole + part), len(part) - int(exponent or 0)
    drop = scale - decimals
    if drop > 0:
        number = (number + 5 * 10 ** (drop - 1)) // 10**drop
    else:
        number *= 10**-drop
    text = f"{number:0{decimals + 1}d}"
    if decimals > 0:
        text = f"{text[:-decimals]}.{text[-decimals:]}"
    return f"-{text}" if value < 0 and number else text


def in_64ths(inches: float) -> str:
    """Inches as a whole and a fraction reduced from 64ths: ``14 9/64``."""
    count = math.floor(round(abs(inches) * 64, 9) + 0.5)
    whole, rest = divmod(count, 64)
    bottom = 64
    while rest and rest % 2 == 0:
        rest, bottom = rest // 2, bottom // 2
    text = (
        f"{whole} {rest}/{bottom}" if rest and whole else f"{rest}/{bottom}" if rest else f"{whole}"
    )
    return f"-{text}" if inches < 0 and count else text


def reader_unit(unit: str, system: str) -> str:
    """The unit that a reader of ``system`` reads a ``unit`` in."""
    return UNITS[unit].inch or unit if system != "metric" else unit


@lru_cache(maxsize=4096)  # at a change of one entry most figures stay what they were
def show_number(value: float, unit: str, decimals: int, system: str = "metric") -> str:
    """The figure alone, in the reader's unit."""
    if system == "metric" or not UNITS[unit].inch:
        return half_up(value, decimals)
    to = UNITS[unit].inch
    theirs = convert(value, unit, to)
    if system == "inch64" and to == "in" and abs(theirs) >= LEAST_IN_64THS:
        return in_64ths(theirs)
    return half_up(theirs, max(0, decimals + (UNITS[unit].inch_decimals if to != unit else 0)))


def show(value: float, unit: str, decimals: int, system: str = "metric") -> str:
    """The figure with its unit, as people read it."""
    return with_unit(show_number(value, unit, decimals, system), unit, system)


def with_unit(number: str, unit: str, system: str = "metric") -> str:
    """A figure already printed, with the unit that a reader of ``system`` reads behind it."""
    name = UNITS[reader_unit(unit, system)].shown
    return f"{number}{name}" if name == "°" else f"{number} {name}".rstrip()


def as_typed(value: float, unit: str, decimals: int, system: str = "metric") -> str:
    """An example or a converted entry as one would type it: no needless zeros."""
    text = show_number(value, unit, decimals, system)
    return text.rstrip("0").rstrip(".") if "." in text else text
