"""Reads what others wrote: JSON within bounds of size and depth, every field of the kind it must be."""

import json
import math
import re
from collections.abc import Callable, Collection
from typing import Any

from ..engine.strangers import DEEPEST, clean, depth, is_clean

LONGEST_SAID = 60


class UnfitFile(ValueError):
    """What cannot be taken as it is; the message says why in plain words."""


def parse(text: object, longest: int) -> Any:
    """The JSON value of ``text``. UnfitFile where it is too long, too deep, cut off or no JSON."""
    if not isinstance(text, str):
        raise UnfitFile("it is no text")
    if len(text) > longest:
        raise UnfitFile(f"it is longer than {longest // 1000} kB")
    text = text.removeprefix("\ufeff").strip()
    if not text:
        raise UnfitFile("it is empty")
    if depth(text) > DEEPEST:
        raise UnfitFile(f"it is nested more than {DEEPEST} deep")
    try:
        return json.loads(
            text, object_pairs_hook=_once, parse_constant=_refuse_constant, parse_float=_figure
        )
    except UnfitFile:
        raise
    except json.JSONDecodeError as error:
        if error.pos >= len(text) or error.msg.startswith("Unterminated"):
            raise UnfitFile("it is cut off: its end is missing") from None
        raise UnfitFile("it is damaged: it is no JSON") from None
    except (ValueError, RecursionError):  # a number of thousands of digits
        raise UnfitFile("it is damaged: it is no JSON") from None


def _once(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    found: dict[str, Any] = {}
    for name, value in pairs:
        if name in found:
            raise UnfitFile(f"it gives “{said(name)}” twice")
        found[name] = value
    return found


def _figure(digits: str) -> float:
    value = float(digits)
    if not math.isfinite(value):
        raise UnfitFile(f"{said(digits)} is past all figures")
    return value


def _refuse_constant(name: str) -> None:
    raise UnfitFile(f"{name} is no number")


def said(value: object) -> str:
    """A value of strangers as a message may repeat it: short and clean."""
    text = value if isinstance(value, str) else repr(value)[: LONGEST_SAID + 1]
    return clean(text, LONGEST_SAID) + ("…" if len(text) > LONGEST_SAID else "")


class Fields:
    """The fields of a JSON object, each taken as the kind it must be, or UnfitFile."""

    def __init__(self, value: object, what: str, names: Collection[str]) -> None:
        self._what = what
        if not isinstance(value, dict):
            raise UnfitFile(f"{what} is no object with fields")
        self._value: dict[str, Any] = value
        for name in value:
            if name not in names:
                raise UnfitFile(f"{what} has a field “{said(name)}” that there is not")
        for name in names:
            if name not in value:
                raise UnfitFile(f"{what} has no “{name}”")

    def _wrong(self, name: str, must: str) -> UnfitFile:
        given = said(self._value[name])
        return UnfitFile(f"{self._what}: “{name}” must be {must}, not “{given}”")

    def raw(self, name: str) -> Any:
        """A field as it stands."""
        return self._value[name]

    def text(self, name: str, shortest: int, longest: int, lines: bool = False) -> str:
        """A text without characters that steer or hide, its ends trimmed."""
        value = self._value[name]
        if not isinstance(value, str):
            raise self._wrong(name, "a text")
        value = value.strip()
        if not shortest <= len(value) <= longest:
            raise UnfitFile(
                f"{self._what}: “{name}” must have {shortest} to {longest} characters, "
                f"not {len(value)}"
            )
        if not is_clean(value, lines):
            raise UnfitFile(f"{self._what}: “{name}” has characters that cannot be shown")
        return value

    def like(self, name: str, pattern: re.Pattern[str], must: str) -> str:
        """A text of a given form."""
        value = self._value[name]
        if not isinstance(value, str) or not pattern.fullmatch(value):
            raise self._wrong(name, must)
        return value

    def whole(self, name: str, low: int, high: int) -> int:
        """A whole number from ``low`` to ``high``."""
        value = self._value[name]
        if type(value) is not int or not low <= value <= high:
            raise self._wrong(name, f"a whole number from {low} to {high}")
        return value

    def number(self, name: str, low: float, high: float) -> float:
        """A number from ``low`` to ``high``; never NaN, which is in no range."""
        value = self._value[name]
        if type(value) not in (int, float) or not low <= value <= high:
            raise self._wrong(name, f"a number from {low:g} to {high:g}")
        return float(value) + 0.0  # minus nought is nought

    def one_of(self, name: str, options: Collection[str]) -> str:
        """One of a few words."""
        value = self._value[name]
        if not isinstance(value, str) or value not in options:
            raise self._wrong(name, f"one of {', '.join(options)}")
        return value

    def entries(self, name: str, fewest: int, most: int) -> list[Any]:
        """A list with so many entries."""
        value = self._value[name]
        if not isinstance(value, list | tuple) or not fewest <= len(value) <= most:
            raise self._wrong(name, f"a list of {fewest} to {most} entries")
        return [*value]

    def mapping(
        self, name: str, most: int, key: re.Pattern[str], fit: Callable[[object], bool], must: str
    ) -> dict[str, Any]:
        """An object of which every name and every value is fit."""
        value = self._value[name]
        if not isinstance(value, dict) or len(value) > most:
            raise self._wrong(name, f"an object with at most {most} fields")
        for one, what in value.items():
            if not isinstance(one, str) or not key.fullmatch(one) or not fit(what):
                raise UnfitFile(f"{self._what}: “{name}” must give {must}, not “{said(one)}”")
        return dict(value)
