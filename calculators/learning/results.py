"""Results: what a trainee answered, as a file; and the marking of it again from the assignment.

Nothing in a result is believed but what was given: the questions are drawn again from the trainer's
own assignment, every answer is marked again, and what the file claims is held against that.
"""

import re
from collections.abc import Collection, Mapping
from datetime import datetime
from typing import Any

from ..engine.strangers import clean, is_clean
from . import findings
from .assignment import (
    CODE,
    EDITION,
    EXERCISE,
    MOST_QUESTIONS,
    VERSION,
    Assignment,
    canonical,
    changed_since,
    check_kind,
    codes,
    questions_for,
    read_revisions,
    revisions_of,
)
from .assignment import read as read_assignment
from .assignment import to_json as assignment_to_json
from .marking import MISSING, RIGHT, ROUNDED, SLIP, UNIT, UNREADABLE, WRONG, mark
from .result_records import (
    LONGEST_WORDS,
    UNKNOWN_CODE,
    Answered,
    Claimed,
    Finding,
    MarkedResult,
    Result,
    UnfitResult,
    asked_words,
    figure,
    fit_given,
)
from .untrusted import Fields, UnfitFile, parse

LONGEST_TEXT = 400_000
LONGEST_FILE_NAME = 80
VERDICTS = (RIGHT, ROUNDED, UNIT, SLIP, WRONG, UNREADABLE, MISSING)
KEYS = ("benchrule", "version", "assignment", "code", "edition", "revisions", "began", "saved",
        "answers", "score", "of")  # fmt: skip
ANSWER_KEYS = ("number", "exercise", "words", "given", "at", "verdict", "share")
TIME = re.compile(r"2[01]\d\d-\d\d-\d\dT\d\d:\d\d(:\d\d(\.\d{1,6})?)?(Z|[+-]\d\d:\d\d)")


def make(
    bank: dict[str, Any], assignment: Assignment, code: str, given: Mapping[Any, Any],
    times: Mapping[str, Any],
) -> dict[str, Any]:  # fmt: skip
    """Marks what a trainee gave, by question number, and returns the result file's value.

    ``times`` has ``began`` and ``saved``, and may have ``at``: when each answer was given.
    """
    return result_of(
        bank, assignment, code, answer_all(bank, assignment, code, given, times), times
    )


def answer_all(
    bank: dict[str, Any], assignment: Assignment, code: str, given: Mapping[Any, Any],
    times: Mapping[str, Any],
) -> list[Answered]:  # fmt: skip
    """Every question of a trainee with the answer that was given, marked."""
    answers = {str(number): fit_given(one) for number, one in given.items()}
    when = times.get("at")
    at = {str(number): one for number, one in when.items()} if isinstance(when, dict) else {}
    found = []
    for asked in questions_for(bank, assignment, code, changed_since(bank, assignment)):
        name = str(asked.number)
        one = answers.get(name)
        time = at.get(name, "")
        time = time if is_time(time) and one is not None else ""
        found.append(Answered(asked, one, mark(asked.question, one), time))
    return found


def result_of(
    bank: dict[str, Any], assignment: Assignment, code: str, answered: list[Answered],
    times: Mapping[str, Any],
) -> dict[str, Any]:  # fmt: skip
    """The result file's value of marked answers."""
    for name in ("began", "saved"):
        if not is_time(times.get(name)):
            raise UnfitResult(f"“{name}” must be a time with its zone, like 2026-11-30T14:05:00Z")
    return {
        "benchrule": "result", "version": VERSION, "assignment": assignment_to_json(assignment),
        "code": code, "edition": bank["edition"],
        "revisions": revisions_of(bank, assignment.prints),
        "began": times["began"], "saved": times["saved"],
        "answers": [
            {
                "number": one.asked.number, "exercise": one.asked.exercise,
                "words": asked_words(one.asked.question), "given": one.given, "at": one.at,
                "verdict": one.mark.verdict, "share": one.mark.share,
            }
            for one in answered
        ],
        "score": figure(sum(one.mark.share for one in answered) * assignment.marks),
        "of": assignment.length * assignment.marks,
    }  # fmt: skip


def to_text(result: dict[str, Any]) -> str:
    """A result's file."""
    return canonical(result)


def is_time(text: object) -> bool:
    """Whether a text is a time with its zone, as ISO 8601 writes it."""
    try:
        return (
            isinstance(text, str)
            and TIME.fullmatch(text) is not None
            and datetime.fromisoformat(text) is not None
        )
    except ValueError:
        return False


def read(text: object) -> Result:
    """A result file; UnfitResult says what is wrong with it."""
    try:
        return _read(parse(text, LONGEST_TEXT))
    except UnfitFile as error:
        raise UnfitResult(str(error)) from None


def _read(value: Any) -> Result:
    check_kind(value, "result")
    fields = Fields(value, "the result", KEYS)
    answers = [_claimed(one) for one in fields.entries("answers", 0, 2 * MOST_QUESTIONS)]
    numbers = [one.number for one in answers]
    twice = next((one for at, one in enumerate(numbers) if one in numbers[:at]), 0)
    if twice:
        raise UnfitFile(f"question {twice} is answered twice")
    for name in ("began", "saved"):
        if not is_time(fields.raw(name)):
            raise UnfitFile(f"“{name}” is no time with its zone")
    return Result(
        assignment=_assignment_inside(fields.raw("assignment")),
        code=fields.like("code", CODE, "a trainee's code"),
        edition=fields.like("edition", EDITION, "an edition"),
        revisions=read_revisions(fields), began=fields.raw("began"), saved=fields.raw("saved"),
        answers=tuple(answers), score=fields.number("score", 0, 10**6),
        of=fields.number("of", 0, 10**6),
    )  # fmt: skip


def _assignment_inside(value: object) -> Assignment:
    try:
        return read_assignment(None, value if isinstance(value, dict) else None)
    except UnfitFile as error:
        raise UnfitFile(f"the assignment in it is unfit: {error}") from None


def _claimed(value: object) -> Claimed:
    fields = Fields(value, "an answer", ANSWER_KEYS)
    words, given, at = fields.raw("words"), fields.raw("given"), fields.raw("at")
    if not isinstance(words, str) or len(words) > LONGEST_WORDS or not is_clean(words, lines=True):
        raise UnfitFile("an answer: “words” must be the question as it was shown")
    if given is not None and fit_given(given) != given:
        raise UnfitFile("an answer: “given” must be a short line, a number or a list of numbers")
    if at != "" and not is_time(at):
        raise UnfitFile("an answer: “at” must be a time with its zone, or empty")
    return Claimed(
        fields.whole("number", 1, 10**6), fields.like("exercise", EXERCISE, "an exercise"),
        words, given, at, fields.one_of("verdict", VERDICTS), fields.number("share", 0, 1),
    )  # fmt: skip


def mark_result(
    bank: dict[str, Any], assignment: Assignment, text: object, file: str,
    changed: Collection[str] | None = None,
) -> MarkedResult:  # fmt: skip
    """Marks a result file again from the trainer's assignment, and says what does not agree.

    ``changed`` is what ``changed_since`` gives, where the caller has it already.
    """
    result = read(text)
    file = clean(file, LONGEST_FILE_NAME)
    if changed is None:
        changed = changed_since(bank, assignment)
    found = findings.of_assignment(assignment, result, file)
    if result.code not in codes(assignment):
        words = f"{file}: {result.code} is no code of this assignment; nothing in it is marked."
        found.append(Finding(UNKNOWN_CODE, words, file))
        return MarkedResult(file, result, (), 0.0, 0, tuple(found))
    claims = {one.number: one for one in result.answers}
    answered = []
    for asked in questions_for(bank, assignment, result.code, changed):
        claim = claims.get(asked.number)
        given = claim.given if claim else None
        one = Answered(asked, given, mark(asked.question, given), claim.at if claim else "")
        answered.append(one)
        if claim:
            found += findings.of_answer(bank["edition"], result, claim, one, file)
    found += findings.of_numbers(assignment, result, answered, file)
    found += findings.changed_findings(assignment, changed, file)
    found += findings.of_score(assignment, claims, answered, result, file)
    found += findings.of_edition(bank, assignment, result, file)
    found += findings.of_times(assignment, result, file)
    got = sum(one.mark.share for one in answered) * assignment.marks
    of = len(answered) * assignment.marks
    return MarkedResult(file, result, tuple(answered), got, of, tuple(found))
