"""The door of the exercises: JSON in, JSON out, for the page. Never raises for bad input.

The page keeps no question and no answer key: it sends the seed again, and the question is drawn
again. What stands in an answer is plain data, but for worked steps, which are ready HTML.
"""

import json
from collections.abc import Callable, Mapping
from typing import Any

from ..engine.showing import SYSTEMS
from ..engine.strangers import UnfitText, clean, read_json
from . import bank as exercises
from .marking import mark
from .page_data import Unfit, as_asked, as_marked
from .question import GRADES, CannotDraw, Question
from .spacing import next_exercise, summary

LONGEST_REQUEST = 2_000_000  # a history of years
LONGEST_CLASS = 20_000_000  # the result files of a class
LONGEST_ANSWER = 200
_bank: dict[str, Any] = {}


def load_bank(text: str) -> str:
    """Takes the handbook's exercises in, once a visit."""
    _bank.clear()
    _bank.update(json.loads(text))
    return json.dumps({"edition": _bank["edition"]})


def answer(text: str) -> str:
    """Answers ``{"do": name, ...}`` from ``DOINGS``, or ``{"refused": why}``."""
    try:
        if len(text) > LONGEST_CLASS:
            raise Unfit("the request is too long")
        asked = read_json(text, LONGEST_CLASS)
        name = str(asked.get("do")) if isinstance(asked, dict) else ""
        if len(text) > LONGEST_REQUEST and name != "mark_class":
            raise Unfit("the request is too long")
        doing = DOINGS.get(name)
        if doing is None:
            raise Unfit("the request asks for nothing that there is")
        if not _bank:
            return json.dumps({"needs_bank": True})  # a worker that has just started
        return json.dumps(doing(asked), allow_nan=False)
    except exercises.UnknownExercise as error:
        return json.dumps({"refused": f"this handbook has no exercise {clean(error.args[0], 80)}"})
    except UnfitText as error:
        return json.dumps({"refused": f"the request {error}"})
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
    now = asked.get("now", 0)
    exercise = next_exercise(ids, history, now if type(now) in (int, float) else 0.0, seed)
    return {"exercise": exercise, "summary": summary(ids, history)}


def fit_history(given: Any) -> list[tuple[str, bool, float]]:
    """(exercise, right, milliseconds) of each answer; what is no such entry is left out."""
    found = []
    for entry in given if isinstance(given, list) else []:
        if isinstance(entry, list) and len(entry) == 3:
            exercise, right, when = entry
            if isinstance(exercise, str) and type(when) in (int, float):
                found.append((exercise[:120], right is True, float(when)))
    return found


def _progress(asked: Mapping[str, Any]) -> dict[str, Any]:
    """How far a reader has come at every station."""
    history = fit_history(asked.get("history"))
    return {
        "stations": [
            {"id": id, "title": station["title"], "page": station["page"],
             **summary(station["exercises"], history)}
            for id, station in _bank["stations"].items()
        ]
    }  # fmt: skip


def _for_class(name: str) -> Callable[[Mapping[str, Any]], dict[str, Any]]:
    """A doing of assignments and classes, imported when it is first asked for."""

    def doing(asked: Mapping[str, Any]) -> dict[str, Any]:
        from . import class_door

        return class_door.answer(name, _bank, asked)

    return doing


FOR_CLASSES = (
    "catalogue", "make_assignment", "open_assignment", "assignment_questions", "make_result",
    "mark_class", "sheet", "key",
)  # fmt: skip
DOINGS: dict[str, Callable[[Mapping[str, Any]], dict[str, Any]]] = {
    "draw": _draw,
    "hint": _hint,
    "mark": _mark,
    "next": _next,
    "progress": _progress,
    **{name: _for_class(name) for name in FOR_CLASSES},
}
