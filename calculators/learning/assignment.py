"""Assignments: which exercises, how many of each, for how many trainees, as a file or a link.

No name is in one. Each trainee has a code, and the code draws the trainee's own questions, the same
on any machine; so a result can be marked again from the assignment alone.
"""

import json
import re
from collections.abc import Collection, Iterable, Mapping
from datetime import date
from typing import Any, NamedTuple

from ..engine.showing import SYSTEMS
from . import bank as exercises
from . import link_text
from .question import GRADES, CannotDraw, Question
from .stream import Stream, digest
from .untrusted import Fields, UnfitFile, parse, said

ALPHABET = "23456789ABCDEFGHJKLMNPQRSTUVWXYZ"  # nothing that is read as another: 0 O, 1 I
ID_LENGTH, CODE_LENGTH = 10, 4
LONGEST_TEXT = 40_000
LONGEST_TITLE, LONGEST_WORD = 80, 600
MOST_EXERCISES, MOST_OF_ONE, MOST_QUESTIONS = 40, 20, 100
MOST_MARKS, MOST_TRAINEES, MOST_STATIONS = 20, 200, 500
LINK_PREFIX = "a1."
TRIES, TRIES_WHEN_MADE = 60, 20  # draws for one question that is not there yet
HOPELESS = 3  # draws in a row without a question, after which there is none to be had

ID = re.compile(f"[{ALPHABET}]{{{ID_LENGTH}}}")
CODE = re.compile(f"[{ALPHABET}]{{{CODE_LENGTH}}}")
EXERCISE = re.compile(r"[a-z0-9][a-z0-9-]{0,59}/[a-z0-9][a-z0-9-]{0,79}")
STATION = re.compile(r"[a-z0-9][a-z0-9-]{0,79}")
EDITION = re.compile(r"[0-9A-Za-z.-]{1,40}")
PRINT = re.compile(r"[0-9a-f]{12}")
DAY = re.compile(r"\d{4}-\d\d-\d\d")

CHOICES = ("title", "word", "due", "units", "grade", "marks", "trainees", "questions")
USUAL = {"word": "", "due": "", "units": "metric", "grade": 2, "marks": 1, "trainees": 12}
KEYS = ("benchrule", "version", "id", *CHOICES, "prints", "edition", "revisions")
VERSION = 1


class UnfitAssignment(UnfitFile):
    """No assignment that can be set; the message says why in plain words."""


class Assignment(NamedTuple):
    """What a trainer sets."""

    id: str
    title: str
    word: str  # the trainer's word of instruction
    due: str  # YYYY-MM-DD, or empty
    units: str
    grade: int
    marks: int  # for each question
    trainees: int
    questions: tuple[tuple[str, int], ...]  # exercise, how many of it
    prints: Mapping[str, str]  # by exercise: what it was drawn from when this was made
    edition: str
    revisions: Mapping[str, int]  # of the stations that practise its exercises

    @property
    def length(self) -> int:
        """How many questions each trainee has."""
        return sum(count for _, count in self.questions)


class Asked(NamedTuple):
    """One question of one trainee."""

    number: int  # from 1
    exercise: str
    seed: str
    question: Question


def make(bank: dict[str, Any], choices: Mapping[str, Any], id: str) -> Assignment:
    """A new assignment from a trainer's choices; ``id`` comes from a source of chance.

    What is left out is as in ``USUAL``. UnfitAssignment where it could not be set: an exercise that
    there is not, or that has fewer different questions than are asked for.
    """
    if not isinstance(choices, Mapping):
        raise UnfitAssignment("the choices are no object with fields")
    try:
        plan = _plan(Fields({**USUAL, **choices}, "the choices", CHOICES))
    except UnfitFile as error:
        raise UnfitAssignment(str(error)) from None
    if not isinstance(id, str) or not ID.fullmatch(id):
        raise UnfitAssignment(f"the id must be {ID_LENGTH} characters of {ALPHABET}")
    chosen = [exercise for exercise, _ in plan["questions"]]
    _refuse_unknown(bank, chosen)
    try:
        prints = {one: print_at(bank, one, plan["grade"], plan["units"]) for one in chosen}
    except CannotDraw as error:
        raise UnfitAssignment(f"{error}; leave it out") from None
    made = Assignment(
        id=id, prints=prints, edition=str(bank["edition"]),
        revisions=revisions_of(bank, chosen), **plan,
    )  # fmt: skip
    questions_for(bank, made, codes(made)[0], tries=TRIES_WHEN_MADE)
    return read(bank, to_text(made))


def how_many(
    bank: dict[str, Any], exercise: str, most: int, grade: int, units: str, id: str
) -> int:
    """How many different questions an exercise has for an assignment, up to ``most``."""
    stem = f"{id}/{_codes(id, 1)[0]}/{exercise}"
    return len(different(bank, exercise, most, stem, grade, units, TRIES_WHEN_MADE))


def read(bank: dict[str, Any] | None, given: object) -> Assignment:
    """An assignment from a file's text, or from its JSON value; UnfitAssignment says what is wrong.

    With a bank, exercises that the handbook does not have are refused; without one they are for
    ``changed_since`` to find.
    """
    try:
        value = parse(given, LONGEST_TEXT) if isinstance(given, str) else given
        found = _read(value)
    except UnfitFile as error:
        raise UnfitAssignment(str(error)) from None
    if bank is not None:
        _refuse_unknown(bank, found.prints)
    return found


def check_kind(value: object, kind: str) -> None:
    """UnfitFile unless a JSON value says that it is of ``kind`` and of the version read here."""
    named = value.get("benchrule") if isinstance(value, dict) else None
    article = "an" if kind == "assignment" else "a"
    if named != kind:
        other = {"assignment": "an assignment", "result": "a result"}.get(str(named))
        raise UnfitFile(f"it is {other or 'something else'}, not {article} {kind} of a handbook")
    version = value.get("version") if isinstance(value, dict) else None
    if type(version) is not int or version != VERSION:
        raise UnfitFile(f"it is of version {said(version)}; this handbook reads version {VERSION}")


def _read(value: object) -> Assignment:
    check_kind(value, "assignment")
    fields = Fields(value, "the assignment", KEYS)
    plan = _plan(fields)
    prints = fields.mapping(
        "prints", MOST_EXERCISES, EXERCISE,
        lambda one: isinstance(one, str) and PRINT.fullmatch(one) is not None,
        "a print of 12 hexadecimal digits for each exercise",
    )  # fmt: skip
    if set(prints) != {exercise for exercise, _ in plan["questions"]}:
        raise UnfitFile("the assignment: “prints” and “questions” name different exercises")
    return Assignment(
        id=fields.like("id", ID, f"{ID_LENGTH} characters of {ALPHABET}"), prints=prints,
        edition=fields.like("edition", EDITION, "an edition"), revisions=read_revisions(fields),
        **plan,
    )  # fmt: skip


def read_revisions(fields: Fields) -> dict[str, int]:
    """The field ``revisions``: a whole number for each station."""
    return fields.mapping(
        "revisions", MOST_STATIONS, STATION,
        lambda one: type(one) is int and 0 <= one < 10**6, "a revision for each station",
    )  # fmt: skip


def _plan(fields: Fields) -> dict[str, Any]:
    """What a trainer chooses, checked."""
    due = fields.text("due", 0, 10)
    if due and not is_day(due):
        raise UnfitFile(f"“due” must be a day like 2026-11-30, not “{said(due)}”")
    return {
        "title": fields.text("title", 1, LONGEST_TITLE),
        "word": fields.text("word", 0, LONGEST_WORD, lines=True),
        "due": due,
        "units": fields.one_of("units", SYSTEMS),
        "grade": fields.whole("grade", min(GRADES), max(GRADES)),
        "marks": fields.whole("marks", 1, MOST_MARKS),
        "trainees": fields.whole("trainees", 1, MOST_TRAINEES),
        "questions": _questions(fields.entries("questions", 1, MOST_EXERCISES)),
    }


def _questions(entries: list[Any]) -> tuple[tuple[str, int], ...]:
    found: dict[str, int] = {}
    for entry in entries:
        if not isinstance(entry, list | tuple) or len(entry) != 2:
            raise UnfitFile("“questions” must be pairs of an exercise and a count")
        exercise, count = entry
        if not isinstance(exercise, str) or not EXERCISE.fullmatch(exercise):
            raise UnfitFile(f"“{said(exercise)}” is no exercise")
        if type(count) is not int or not 1 <= count <= MOST_OF_ONE:
            raise UnfitFile(f"{exercise} must be asked 1 to {MOST_OF_ONE} times")
        if exercise in found:
            raise UnfitFile(f"{exercise} is named twice")
        found[exercise] = count
    if sum(found.values()) > MOST_QUESTIONS:
        raise UnfitFile(f"there are more than {MOST_QUESTIONS} questions in all")
    return tuple(found.items())


def is_day(text: str) -> bool:
    """Whether a text is a day of the calendar, like 2026-11-30."""
    try:
        return DAY.fullmatch(text) is not None and date.fromisoformat(text) is not None
    except ValueError:
        return False


def _refuse_unknown(bank: dict[str, Any], chosen: Iterable[str]) -> None:
    known = set(exercises.every_exercise(bank))
    unknown = sorted(one for one in chosen if one not in known)
    if unknown:
        raise UnfitAssignment(f"this handbook has no exercise {', '.join(unknown[:5])}")


def print_at(bank: dict[str, Any], exercise: str, grade: int, units: str) -> str:
    """What an exercise is drawn from, at a grade and in units: another where questions changed.

    Wider than the exercise's own print: in grade 3 a question may draw on neighbouring stations.
    """
    drawn = [exercises.draw(bank, exercise, f"print {at}", grade, units) for at in range(3)]
    return digest(exercises.print_of(bank, exercise), *(_marked_by(one) for one in drawn))


def _marked_by(question: Question) -> str:
    """All of a question that its asking and its marking rest on."""
    slips = [(slip.name, slip.shown) for slip in question.slips]
    return repr((question.words, question.facts, question.options, question.shown,
                 question.within_shown, slips))  # fmt: skip


def changed_since(bank: dict[str, Any], assignment: Assignment) -> tuple[str, ...]:
    """Its exercises whose questions could not be drawn again as they were when it was made."""
    changed = []
    for exercise, before in assignment.prints.items():
        try:
            now = print_at(bank, exercise, assignment.grade, assignment.units)
        except (CannotDraw, exercises.UnknownExercise):
            now = ""
        if now != before:
            changed.append(exercise)
    return tuple(sorted(changed))


def revisions_of(bank: dict[str, Any], chosen: Collection[str]) -> dict[str, int]:
    """The stations that practise some of the exercises, each with its revision."""
    return {
        id: station["revision"]
        for id, station in bank["stations"].items()
        if not set(chosen).isdisjoint(station["exercises"])
    }


def calculators_of(assignment: Assignment) -> list[str]:
    """The calculators that its questions are drawn from."""
    kinds = {exercise.partition("/")[0] for exercise, _ in assignment.questions}
    return sorted(kinds - set(exercises.OF_BANK))


def to_json(assignment: Assignment) -> dict[str, Any]:
    """The assignment as a JSON value."""
    return {
        "benchrule": "assignment", "version": VERSION, **assignment._asdict(),
        "questions": [list(entry) for entry in assignment.questions],
        "prints": dict(assignment.prints), "revisions": dict(assignment.revisions),
    }  # fmt: skip


def to_text(assignment: Assignment) -> str:
    """The assignment's file: the same text for the same assignment on any machine."""
    return canonical(to_json(assignment))


def canonical(value: object) -> str:
    """JSON in one form only, with a line's end."""
    text = json.dumps(
        value, ensure_ascii=False, sort_keys=True, separators=(",", ":"), allow_nan=False
    )
    return text + "\n"


def digest_of(assignment: Assignment) -> str:
    """A short name for exactly this assignment."""
    return digest(to_text(assignment))


def to_link_fragment(assignment: Assignment) -> str:
    """The assignment as the part of a link after the #: letters, digits, dots, - and _ only."""
    return link_text.pack(to_text(assignment), LINK_PREFIX)


def from_link_fragment(text: str) -> Assignment:
    """The assignment of a link. UnfitAssignment tells a link that is cut off from a changed one."""
    try:
        return read(None, link_text.unpack(text, LINK_PREFIX, LONGEST_TEXT))
    except UnfitFile as error:
        raise UnfitAssignment(str(error)) from None


def codes(assignment: Assignment) -> list[str]:
    """A code for each trainee, all different, the same ones each time."""
    return _codes(assignment.id, assignment.trainees)


def _codes(id: str, count: int) -> list[str]:
    found: dict[str, None] = {}
    for number in range(1, count + 1):
        stream = Stream(f"code/{id}/{number}")
        code = ""
        while not code or code in found:
            code = "".join(stream.pick(ALPHABET) for _ in range(CODE_LENGTH))
        found[code] = None
    return list(found)


def is_code(text: object) -> bool:
    """Whether a text has the form of a trainee's code."""
    return isinstance(text, str) and CODE.fullmatch(text) is not None


def questions_for(
    bank: dict[str, Any], assignment: Assignment, code: str, leave_out: Collection[str] = (),
    tries: int = TRIES,
) -> list[Asked]:  # fmt: skip
    """A trainee's questions, the same on any machine; none of them twice.

    Exercises in ``leave_out`` keep their numbers and are not drawn.
    """
    if code not in codes(assignment):
        raise UnfitAssignment(f"“{said(code)}” is no code of this assignment")
    found: list[Asked] = []
    first = 1
    for exercise, count in assignment.questions:
        if exercise not in leave_out:
            stem = f"{assignment.id}/{code}/{exercise}"
            drawn = different(
                bank, exercise, count, stem, assignment.grade, assignment.units, tries
            )
            if len(drawn) < count:
                raise UnfitAssignment(
                    f"{exercise} has only {len(drawn)} different question"
                    f"{'' if len(drawn) == 1 else 's'} at this grade; ask for no more"
                )
            found += [Asked(first + at, exercise, *one) for at, one in enumerate(drawn)]
        first += count
    return found


def different(
    bank: dict[str, Any], exercise: str, count: int, stem: str, grade: int, units: str,
    tries: int = TRIES,
) -> list[tuple[str, Question]]:  # fmt: skip
    """Up to ``count`` different questions of an exercise, each with its seed.

    Question n is drawn from seed n, and where that gives one that is there already, from n + count,
    n + 2 count and so on.
    """
    found: list[tuple[str, Question]] = []
    seen: set[tuple[str, str]] = set()
    without = 0
    for number in range(1, count + 1):
        for attempt in range(tries):
            seed = f"{stem}/{number + attempt * count}"
            try:
                question = exercises.draw(bank, exercise, seed, grade, units)
            except CannotDraw:
                without += 1
                if without >= HOPELESS:
                    return found
                continue
            without = 0
            if (question.words, question.shown) not in seen:
                seen.add((question.words, question.shown))
                found.append((seed, question))
                break
        else:
            break
    return found
