"""Questions and marks as plain data for the page, and the refusal that it is told in words."""

from typing import Any

from ..engine.reading import units_of_kind
from ..engine.showing import reader_unit
from ..engine.unit_table import UNITS
from .marking import Mark
from .question import NUMBER, Question


class Unfit(ValueError):
    """A request that cannot be met; the message says why in plain words."""


def as_asked(question: Question) -> dict[str, Any]:
    """A question as the page shows it, without its answer."""
    unit = UNITS[reader_unit(question.unit, question.system)]
    also = [one.shown for one in units_of_kind(question.unit) if one.shown and one is not unit]
    return {
        "exercise": question.exercise, "title": question.title, "kind": question.kind,
        "grade": question.grade, "words": question.words, "facts": question.facts,
        "options": question.options, "unit": unit.shown if question.kind == NUMBER else "",
        "other_units": also if question.kind == NUMBER else [],
        "within": question.within_shown, "read": question.read,
        "hints": len(question.steps) if question.grade < 3 else 0,
        "open_hints": 1 if question.grade == 1 and question.steps else 0,
    }  # fmt: skip


def as_marked(question: Question, found: Mark) -> dict[str, Any]:
    """What an answer is worth, with the way to the right one."""
    return {
        "verdict": found.verdict, "share": found.share, "words": found.words, "why": found.why,
        "slip": found.slip, "shown": question.shown, "answer": question.answer,
        "steps": question.steps, "read": question.read,
    }  # fmt: skip
