"""What the door does for trainers and classes: assignments, results, marking, sheets.

Imported at the first such request, so that a page of exercises alone does not pay for it. A request
that needs calculators which the page has not fetched is refused with their names in ``needs``.
"""

from collections.abc import Iterable, Mapping
from typing import Any

from ..engine import registry
from . import assignment as assignments
from . import class_marks, class_table, results, sheet
from .assignment import Asked, Assignment
from .page_data import Unfit, as_asked, as_marked
from .question import CHOICE, NUMBER, ORDER
from .result_records import Answered, asked_words, figure, given_words
from .untrusted import UnfitFile, said

Answer = dict[str, Any]
Request = Mapping[str, Any]
KIND_TITLES = {"order": "Order of work", "fault": "Faults"}
KINDS = {"limit": CHOICE, "order": ORDER, "fault": CHOICE}


class NotLoaded(Unfit):
    """Calculators that the page has to fetch before it asks again."""

    def __init__(self, names: list[str]) -> None:
        super().__init__(f"these calculators are not loaded yet: {', '.join(names)}")
        self.names = names


def answer(name: str, bank: dict[str, Any], asked: Request) -> Answer:
    """The answer of one of ``DOINGS``; Unfit says in plain words what cannot be done."""
    try:
        return DOINGS[name](bank, asked)
    except NotLoaded as error:
        return {"refused": str(error), "needs": error.names}
    except (UnfitFile, class_marks.TooManyFiles) as error:
        raise Unfit(str(error)) from None


def catalogue(bank: dict[str, Any], asked: Request) -> Answer:
    """Every station and its exercises, for a trainer to choose from."""
    return {
        "edition": bank["edition"],
        "stations": [
            {
                "id": id, "title": station["title"], "page": station["page"],
                "exercises": [named(bank, exercise) for exercise in station["exercises"]],
            }
            for id, station in bank["stations"].items()
        ],
    }  # fmt: skip


def named(bank: dict[str, Any], exercise: str) -> dict[str, str]:
    """An exercise's id, its title for people, and its kind; no kind where its part is not loaded."""
    kind, _, name = exercise.partition("/")
    if kind in KINDS:
        what = bank["stations"][name]["title"] if kind != "limit" else (
            bank["tolerances"][name]["feature"]
        )  # fmt: skip
        title = f"{KIND_TITLES.get(kind, 'Limits')}: {what}"
        return {"id": exercise, "title": title, "kind": KINDS[kind]}
    short = name.replace("-", " ")
    try:
        calculator = registry.load(kind)
    except (ImportError, KeyError):
        return {
            "id": exercise,
            "title": f"{kind.replace('-', ' ').capitalize()}: {short}",
            "kind": "",
        }
    decides = any(decision.name == name for decision in calculator.decisions)
    return {
        "id": exercise, "title": f"{calculator.title}: {short}", "kind": CHOICE if decides else NUMBER,
    }  # fmt: skip


def need(names: Iterable[str]) -> None:
    """NotLoaded unless each of the calculators can be asked; what there is not, others refuse."""
    missing = []
    for name in names:
        try:
            registry.load(name)
        except ImportError:
            missing.append(name)
        except KeyError:
            continue
    if missing:
        raise NotLoaded(missing)


def make_assignment(bank: dict[str, Any], asked: Request) -> Answer:
    """A new assignment from ``choices`` and an ``id`` that the page has drawn by chance."""
    choices = asked.get("choices")
    if not isinstance(choices, dict):
        raise Unfit("the request has no choices")
    questions = choices.get("questions")
    need(_calculators_in(questions if isinstance(questions, list) else []))
    return as_opened(bank, assignments.make(bank, choices, asked.get("id", "")))


def _calculators_in(questions: list[Any]) -> list[str]:
    ids = [one[0] for one in questions if isinstance(one, list) and one and type(one[0]) is str]
    return sorted({one.partition("/")[0] for one in ids} - set(KINDS))


def open_assignment(bank: dict[str, Any], asked: Request) -> Answer:
    """An assignment from a file's ``text`` or a link's ``fragment``."""
    if isinstance(asked.get("fragment"), str):
        found = assignments.from_link_fragment(asked["fragment"])
    elif isinstance(asked.get("text"), str):
        found = assignments.read(None, asked["text"])
    else:
        raise Unfit("the request has neither a text nor a fragment")
    need(assignments.calculators_of(found))
    return as_opened(bank, found)


def as_opened(bank: dict[str, Any], found: Assignment) -> Answer:
    """An assignment as the page works with it."""
    return {
        "assignment": assignments.to_json(found), "text": assignments.to_text(found),
        "fragment": assignments.to_link_fragment(found), "digest": assignments.digest_of(found),
        "file_name": f"assignment-{found.id}.json", "count": found.trainees,
        "codes": assignments.codes(found), "questions": found.length,
        "of": found.length * found.marks, "calculators": assignments.calculators_of(found),
        "changed": list(assignments.changed_since(bank, found)),
    }  # fmt: skip


def given_assignment(asked: Request) -> Assignment:
    """The assignment of a request: its JSON value, its file's text or its link's fragment."""
    given = asked.get("assignment")
    if isinstance(given, str) and given.startswith(assignments.LINK_PREFIX):
        found = assignments.from_link_fragment(given)
    else:
        found = assignments.read(None, given)
    need(assignments.calculators_of(found))
    return found


def given_code(found: Assignment, asked: Request) -> str:
    """The trainee's code of a request, as people may write it: small letters, spaces."""
    given = asked.get("code")
    code = "".join(given[:40].split()).upper() if isinstance(given, str) else ""
    if code not in assignments.codes(found):
        raise Unfit(f"“{said(given)}” is no code of this assignment")
    return code


def assignment_questions(bank: dict[str, Any], asked: Request) -> Answer:
    """A trainee's questions without their answers. Nothing is marked until it is finished."""
    found = given_assignment(asked)
    changed = assignments.changed_since(bank, found)
    questions = assignments.questions_for(bank, found, given_code(found, asked), changed)
    return {
        "questions": [_as_set(one) for one in questions],
        "left_out": _left_out(found, changed),
    }


def _as_set(one: Asked) -> Answer:
    """A question of an assignment: no hints, but the first step of a number in grade 1."""
    question = one.question
    first = question.steps[:1] if question.grade == 1 and question.kind == NUMBER else ()
    return {
        "number": one.number, **as_asked(question), "hints": 0, "open_hints": 0, "steps": first,
    }  # fmt: skip


def _left_out(found: Assignment, changed: Iterable[str]) -> list[Answer]:
    """The questions that cannot be drawn as they were when the assignment was made."""
    left, first = [], 1
    for exercise, count in found.questions:
        if exercise in changed:
            left += [{"number": first + at, "exercise": exercise} for at in range(count)]
        first += count
    return left


def make_result(bank: dict[str, Any], asked: Request) -> Answer:
    """A trainee's finished answers, marked: the result's file, and what each answer is worth."""
    found = given_assignment(asked)
    code = given_code(found, asked)
    given = asked.get("given")
    if not isinstance(given, dict):
        raise Unfit("the request has no answers")
    answered = results.answer_all(bank, found, code, given, asked)
    result = results.result_of(bank, found, code, answered, asked)
    return {
        "text": results.to_text(result), "file_name": f"result-{found.id}-{code}.json",
        "code": code, "score": result["score"], "of": result["of"],
        "marks": [_as_marked(found, one) for one in answered],
        "left_out": _left_out(found, assignments.changed_since(bank, found)),
    }  # fmt: skip


def _as_marked(found: Assignment, one: Answered) -> Answer:
    question = one.asked.question
    marked = as_marked(question, one.mark)
    return {
        **marked, "number": one.asked.number, "exercise": one.asked.exercise,
        "title": question.title, "question": asked_words(question),
        "given": given_words(question, one.given), "got": figure(one.mark.share * found.marks),
        "of": found.marks,
    }  # fmt: skip


def mark_class(bank: dict[str, Any], asked: Request) -> Answer:
    """The result files of a class, marked again from the trainer's own assignment."""
    found = given_assignment(asked)
    files = asked.get("files")
    if not isinstance(files, list) or not all(isinstance(one, dict) for one in files):
        raise Unfit("the request has no list of files")
    pairs = [(str(one.get("name", "")) or "a file", one.get("text")) for one in files]
    table = class_marks.mark_class(bank, found, pairs)
    plain = class_marks.to_json(table)
    return {
        "html": class_table.to_html(table), "csv": class_table.to_csv(table),
        "findings": plain["findings"], "unreadable": plain["unreadable"],
        "absent": plain["absent"], "clean": table.is_clean, "trainees": len(table.rows),
        "document": sheet.standalone(f"Marks: {found.title}", class_table.to_html(table)),
    }  # fmt: skip


def make_sheet(bank: dict[str, Any], asked: Request) -> Answer:
    """The sheet of one code, or of every code where none is named."""
    found = given_assignment(asked)
    chosen = [given_code(found, asked)] if "code" in asked else assignments.codes(found)
    html = "".join(sheet.sheet_html(bank, found, code) for code in chosen)
    return {"html": html, "document": sheet.standalone(found.title, html)}


def make_key(bank: dict[str, Any], asked: Request) -> Answer:
    """The key to the sheet of one code, or of every code where none is named."""
    found = given_assignment(asked)
    chosen = [given_code(found, asked)] if "code" in asked else assignments.codes(found)
    html = sheet.key_html(bank, found, chosen)
    return {"html": html, "document": sheet.standalone(f"Key: {found.title}", html)}


DOINGS = {
    "catalogue": catalogue,
    "make_assignment": make_assignment,
    "open_assignment": open_assignment,
    "assignment_questions": assignment_questions,
    "make_result": make_result,
    "mark_class": mark_class,
    "sheet": make_sheet,
    "key": make_key,
}
