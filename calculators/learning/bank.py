"""Every exercise that a handbook has, by id: ``fret-spacing/last-slot``, ``limit/neck-gap``,
``order/neck-fit``, ``fault/neck-fit``.

The bank is what the build writes from the procedures and the data:
``{"edition", "stations", "tolerances", "gauges"}``; the calculators bring their own exercises.
"""

from collections.abc import Callable, Iterator
from typing import Any

from ..engine import registry
from .limits import draw_limit
from .numbers import draw_decision, draw_number
from .procedure import draw_fault, draw_order
from .question import GRADES, CannotDraw, Question
from .stream import digest

OF_BANK: dict[str, Callable[[dict[str, Any], str, str, int, str], Question]] = {
    "limit": draw_limit,
    "order": draw_order,
    "fault": draw_fault,
}


class UnknownExercise(KeyError):
    """An exercise that the handbook does not have."""


def draw(bank: dict[str, Any], exercise: str, seed: str, grade: int, units: str) -> Question:
    """The question that ``seed`` draws. UnknownExercise or CannotDraw where there is none."""
    kind, _, name = exercise.partition("/")
    if grade not in GRADES:
        raise CannotDraw(f"there is no grade {grade}")
    if kind in OF_BANK:
        holder = bank["tolerances"] if kind == "limit" else bank["stations"]
        if name not in holder:
            raise UnknownExercise(exercise)
        return OF_BANK[kind](bank, name, seed, grade, units)
    if kind not in registry.modules():
        raise UnknownExercise(exercise)
    calculator = registry.load(kind)
    for one in calculator.exercises:
        if one.name == name:
            return draw_number(calculator, one, seed, grade, units)
    for decision in calculator.decisions:
        if decision.name == name:
            return draw_decision(calculator, decision, seed, grade, units)
    raise UnknownExercise(exercise)


def exercises_of_station(bank: dict[str, Any], station: str) -> list[str]:
    """Every exercise that is practised at a station."""
    found: list[str] = bank["stations"][station]["exercises"]
    return found


def every_exercise(bank: dict[str, Any]) -> Iterator[str]:
    """Every exercise of the handbook, each once."""
    yield from dict.fromkeys(
        exercise for station in bank["stations"].values() for exercise in station["exercises"]
    )


def print_of(bank: dict[str, Any], exercise: str) -> str:
    """A digest of what an exercise is drawn from: another where questions may have changed.

    Taken from questions that fixed seeds draw, so that a change of words or of a figure shows too.
    """
    drawn = [draw(bank, exercise, f"print {count}", 2, "metric") for count in range(3)]
    return digest(*(f"{one.words}|{one.shown}|{one.options}" for one in drawn))
