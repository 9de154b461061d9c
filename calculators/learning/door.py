"""The door of the exercises: JSON in, JSON out, for the page. Never raises for bad input.

The page keeps no question and no answer key: it sends the seed again, and the question is drawn
again. What stands in an answer is plain data, but for worked steps, which are ready HTML.
"""

import json
from collections.abc import Callable, Mapping
from typing import Any

from ..engine.reading import units_of_kind
from ..engine.showing import SYSTEMS, reader_unit
from ..engine.unit_table import UNITS
from . import bank as exercises
from .marking import Mark, mark
from .question import GRADES, NUMBER, CannotDraw, Question
from .spacing import next_exercise, summary

LONGEST_REQUEST = 2_000_000  # a history of years
LONGEST_ANSWER = 200
_bank: dict[str, Any] = {}


class Unfit(ValueError):
    """A request that cannot be met; the message says why in plain words."""


def load_bank(text: str) -> str:
    """Takes the handbook's exercises in, once a visit."""
    _bank.clear()
    _bank.update(json.loads(text))
    return json.dumps({"edition": _bank["edition"]})


def answer(text: str) -> str:
    """Answers ``{"do": name, ...}`` from ``DOINGS``, or ``{"refused": why}``."""
    try:
        if len(text) > LONGEST_REQUEST:
            raise Unfit("the request is too long")
        asked = json.loads(text, parse_constant=str)
        doing = DOINGS.get(str(asked.get("do"))) if isinstance(asked, dict) else None
        if doing is None:
            raise Unfit("the request asks for nothing that there is")
        if not _bank:
            return json.dumps({"needs_bank": True})  # a worker that has just started
        return json.dumps(doing(asked), allow_nan=False)
    except exercises.UnknownExercise as error:
        return json.dumps({"refused": f"this handbook has no exercise {str(error.args[0])[:80]}"})
    except (Unfit, CannotDraw) as error:
        return json.dumps({"refused": str(error)})
    except (ValueError, TypeError, KeyError, RecursionError):
        return json.dumps({"refused": "the request cannot be read"})


def drawn(asked: Mapping[str, Any]) -> Question:
    """The question that a request names by exercise, seed, grade and units."""
    units = asked.get("units", "metric")
    grade = asked.get("grade", 2)
    if units not in SYSTEMS or grade not in GRADES or type(grade) is not int:
        raise Unfit("the unit system or the grade is none that there is")
    return exercises.draw(
        _bank, str(asked["exercise"])[:120], str(asked["seed"])[:200], grade, units
    )


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


def _draw(asked: Mapping[str, Any]) -> dict[str, Any]:
    return as_asked(drawn(asked))


def _hint(asked: Mapping[str, Any]) -> dict[str, Any]:
    question = drawn(asked)
    count = asked["count"] if type(asked.get("count")) is int else 1
    steps = question.steps if question.grade < 3 else ()
    return {"steps": steps[: max(0, count)], "left": max(0, len(steps) - count)}


def _mark(asked: Mapping[str, Any]) -> dict[str, Any]:
    question = drawn(asked)
    return as_marked(question, mark(question, fit_answer(asked.get("given"))))


def fit_answer(given: Any) -> Any:
    """An answer as far as one can be: short text, a whole number, a short list of them."""
    if isinstance(given, str):
        return given[:LONGEST_ANSWER]
    if type(given) is int and abs(given) < 10**6:
        return given
    if isinstance(given, list) and len(given) <= 20:
        return [one for one in given if type(one) is int and abs(one) < 10**6]
    return None


def _next(asked: Mapping[str, Any]) -> dict[str, Any]:
    """The exercise to practise now among those of a page, and how far its reader has come."""
    history = fit_history(asked.get("history"))
    named = asked.get("exercises")
    ids = [str(one)[:120] for one in named[:500]] if isinstance(named, list) else []
    if not ids:
        raise Unfit("there are no exercises here")
    seed = str(asked.get("seed", ""))[:100]
    exercise = next_exercise(ids, history, float(asked.get("now", 0)), seed)
    return {"exercise": exercise, "summary": summary(ids, history)}


def fit_history(given: Any) -> list[tuple[str, bool, float]]:
    """(exercise, right, milliseconds) of each answer; what is no such entry is left out."""
    found = []
    for entry in given if isinstance(given, list) else []:
        if isinstance(entry, list) and len(entry) == 3:
            exercise, right, when = entry
            if isinstance(exercise, str) and isinstance(when, int | float):
                found.append((exercise[:120], right is True, float(when)))
    return found


def _progress(asked: Mapping[str, Any]) -> dict[str, Any]:
    """How far a reader has come at every station."""
    history = fit_history(asked.get("history"))
    return {
        "stations": [
            {"id": id, "title": station["title"], "page": station["page"],
             **summary(station["exercises"], [e for e in history if e[0] in station["exercises"]])}
            for id, station in _bank["stations"].items()
        ]
    }  # fmt: skip


DOINGS: dict[str, Callable[[Mapping[str, Any]], dict[str, Any]]] = {
    "draw": _draw,
    "hint": _hint,
    "mark": _mark,
    "next": _next,
    "progress": _progress,
}
