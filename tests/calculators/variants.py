"""Inputs that between them reach every branch of a calculator: one for each way to choose."""

import itertools
import random
from collections.abc import Iterator
from typing import Any

from calculators.engine.declaration import Calculator, Choice, Input, Number, Readings, Rows, Words
from calculators.engine.inputs import applies
from calculators.engine.registry import load, modules

CALCULATORS = [load(name) for name in modules()]
MOST_VARIANTS = 64


def by_name(calculator: Calculator) -> str:
    return calculator.name


def choices_of(calculator: Calculator) -> list[dict[str, str]]:
    """Every combination of choices (a choice of many options counts its first and last)."""
    spans = []
    for item in calculator.inputs:
        if isinstance(item, Choice):
            values = [value for value, _ in item.options]
            kept = values if len(values) <= 3 else [values[0], values[-1]]
            spans.append([(item.name, value) for value in kept])
    return [dict(pairs) for pairs in itertools.product(*spans)][:MOST_VARIANTS]


def draw_inputs(calculator: Calculator, stream: random.Random) -> dict[str, Any]:
    """Random inputs inside every declared range, as a person would give them."""
    given: dict[str, Any] = {}
    for item in calculator.inputs:
        if isinstance(item, Choice):
            given[item.name] = stream.choice([value for value, _ in item.options])
    for item in calculator.inputs:
        if not isinstance(item, Choice) and applies(item, given):
            given[item.name] = _draw(item, stream)
    return given


def _draw(item: Input, stream: random.Random) -> Any:
    match item:
        case Number():
            return _number(item, stream)
        case Readings():
            count = stream.randint(item.at_least, min(item.at_most, item.at_least + 6))
            return [_number(item, stream) for _ in range(count)]
        case Rows():
            count = stream.randint(item.at_least, min(item.at_most, item.at_least + 5))
            return [
                [
                    f"part {row}" if isinstance(column, Words) else _number(column, stream)
                    for column in item.columns
                ]
                for row in range(count)
            ]
    raise TypeError(item)


def _number(item: Number | Readings, stream: random.Random) -> float:
    if isinstance(item, Number) and item.whole:
        return stream.randint(int(item.lowest), int(item.highest))
    if stream.random() < 0.5 and isinstance(item, Number):
        # Near the example, where a wholly random value would mostly be refused.
        value = item.example * stream.uniform(0.8, 1.25)
        return round(min(item.highest, max(item.lowest, value)), 6)
    return round(stream.uniform(item.lowest, item.highest), 6)


def numbers_of(calculator: Calculator) -> Iterator[Number]:
    """Every plain number that a calculator asks."""
    for item in calculator.inputs:
        if isinstance(item, Number):
            yield item
