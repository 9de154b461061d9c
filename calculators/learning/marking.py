"""Marks an answer: right, or what is wrong with it and why."""

from typing import Any, NamedTuple

from ..engine.judging import uncertainty_in
from ..engine.reading import (
    ReadingError,
    convert,
    find_unit,
    read_exact,
    read_quantity,
    units_of_kind,
)
from ..engine.showing import reader_unit
from ..engine.unit_table import UNITS, Unit
from .question import NUMBER, ORDER, Question

RIGHT, ROUNDED, UNIT, SLIP, WRONG = "right", "rounded", "unit", "slip", "wrong"
UNREADABLE, MISSING = "unreadable", "missing"
SHARES = {RIGHT: 1.0, ROUNDED: 0.5}  # of the marks of a question
SLACK = 1e-9


class Mark(NamedTuple):
    """What an answer is worth. ``slip`` names the known slip, where it is one."""

    verdict: str
    words: str  # the right answer, or what keeps the given one from being read
    why: str = ""  # why it is wrong
    slip: str = ""

    @property
    def share(self) -> float:
        """The share of the question's marks, 0 to 1."""
        return SHARES.get(self.verdict, 0.0)


def mark(question: Question, given: Any) -> Mark:
    """Marks what was given: text for a number, the option's place, or a list of places."""
    if given is None or given == "" or given == []:
        return Mark(MISSING, right_words(question))
    if question.kind == NUMBER:
        return _mark_number(question, str(given))
    if question.kind == ORDER:
        return _mark_order(question, given)
    return _mark_choice(question, given)


def right_words(question: Question) -> str:
    """The right answer in a sentence."""
    return f"The answer: {question.shown.rstrip('.')}."


def _mark_number(question: Question, given: str) -> Mark:
    assumed = reader_unit(question.unit, question.system)
    try:
        top, bottom, words = read_exact(given)
        unit = find_unit(words, question.unit) if words else UNITS[assumed]
        value = read_quantity(given, question.unit, assumed)
    except ReadingError as error:
        return Mark(UNREADABLE, f"The answer {error}.")
    right, within = float(question.answer), question.within  # type: ignore[arg-type]
    if abs(value - right) <= within * (1 + SLACK):
        return Mark(RIGHT, right_words(question))
    step = 1 / bottom
    slip = _slip(question, value, top / bottom, step, unit)
    if slip is not None:
        return slip
    if abs(top / bottom - convert(right, question.unit, unit.id)) <= step / 2 * (1 + SLACK):
        return Mark(
            ROUNDED, right_words(question),
            f"The task at the bench needs it within {question.within_shown}.",
        )  # fmt: skip
    other = _other_unit(question, top / bottom, step, unit)
    if other is not None:
        return Mark(
            UNIT, right_words(question),
            f"It would be right in {other.shown or 'plain numbers'}; you gave "
            f"{unit.shown or 'a plain number'}.",
        )  # fmt: skip
    if abs(value + right) <= within * (1 + SLACK):
        return Mark(
            SLIP, right_words(question),
            "Look again which way it goes: more or less, in or out, up or down.", "sign",
        )  # fmt: skip
    return Mark(WRONG, right_words(question), "Go through the steps with your figures.")


def _slip(question: Question, value: float, number: float, step: float, unit: Unit) -> Mark | None:
    """The known slip that an answer is, if it is one: within the tolerance, or rounded to it.

    An answer that is as well the right one, rounded, is not called a slip.
    """
    near = [
        slip for slip in question.slips if abs(value - slip.value) <= question.within * (1 + SLACK)
    ]
    if not near:
        right = convert(float(question.answer), question.unit, unit.id)  # type: ignore[arg-type]
        if abs(number - right) <= step / 2 * (1 + SLACK):
            return None
        near = [
            slip
            for slip in question.slips
            if abs(number - convert(slip.value, question.unit, unit.id)) <= step / 2 * (1 + SLACK)
        ]
    if not near:
        return None
    slip = min(near, key=lambda one: abs(one.value - value))
    return Mark(SLIP, right_words(question), slip.why, slip.name)


def _other_unit(question: Question, number: float, step: float, used: Unit) -> Unit | None:
    """The unit in which the number would have been right."""
    right, within = float(question.answer), question.within  # type: ignore[arg-type]
    for unit in units_of_kind(question.unit):
        if unit.id == used.id:
            continue
        there = convert(right, question.unit, unit.id)
        room = max(uncertainty_in(within, question.unit, unit.id), step / 2)
        # A number rounded until anything fits says nothing.
        if abs(number - there) <= room * (1 + SLACK) and room <= abs(there) / 20:
            return unit
    return None


def _mark_choice(question: Question, given: Any) -> Mark:
    place = _place(given, len(question.options))
    if place is None:
        return Mark(UNREADABLE, "The answer is none of the options.")
    if place == question.answer:
        return Mark(RIGHT, "", question.whys[place])
    return Mark(WRONG, right_words(question), question.whys[place], f"option {place + 1}")


def _mark_order(question: Question, given: Any) -> Mark:
    places = (
        [_place(one, len(question.options)) for one in given] if isinstance(given, list) else []
    )
    if None in places or sorted(p for p in places if p is not None) != list(
        range(len(question.options))
    ):
        return Mark(UNREADABLE, "The answer does not put every step in a place.")
    right = list(question.answer)  # type: ignore[arg-type]
    if places == right:
        return Mark(RIGHT, "")
    first = next(
        at for at, pair in enumerate(zip(places, right, strict=True)) if pair[0] != pair[1]
    )
    step = right[first]
    return Mark(
        WRONG, right_words(question),
        f"“{question.options[step]}” comes before “{question.options[places[first] or 0]}”. "
        f"{question.whys[step]}",
    )  # fmt: skip


def _place(given: Any, count: int) -> int | None:
    """An option's place from a whole number, or from its text."""
    if isinstance(given, str) and given.strip().isascii() and given.strip().isdigit():
        given = int(given.strip()[:4])
    if type(given) is int and 0 <= given < count:
        return given
    return None
