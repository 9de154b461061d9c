"""A class marked: who has what in which skill, what went wrong and why, what to teach again."""

from collections.abc import Iterable, Sequence
from datetime import datetime
from typing import Any, NamedTuple

from ..engine.strangers import clean
from .assignment import Assignment, changed_since, codes
from .findings import changed_findings
from .marking import MISSING, RIGHT, ROUNDED, UNIT
from .question import CHOICE
from .result_records import (
    CHANGED,
    EDITION_DIFFERS,
    LATE,
    REPEATED,
    TWICE,
    Answered,
    Finding,
    MarkedResult,
    UnfitResult,
    figure,
    given_words,
)
from .results import LONGEST_FILE_NAME, mark_result

MOST_FILES = 500
FEW = 2  # trainees who make the same slip, from which it is common
PART = 3  # or one in so many


class TooManyFiles(ValueError):
    """More files than a class can have."""


class Wrong(NamedTuple):
    """An answer that was not wholly right."""

    number: int
    exercise: str
    skill: str
    question: str
    given: str
    verdict: str
    words: str
    why: str
    shown: str  # the right answer
    share: float


class Row(NamedTuple):
    """A trainee: marks by skill, in the order of the table's skills."""

    code: str
    file: str
    cells: tuple[tuple[float, int], ...]  # got, of
    got: float
    of: int
    wrong: tuple[Wrong, ...]


class CommonSlip(NamedTuple):
    """What several trainees got wrong in the same way."""

    words: str
    trainees: int


class Taught(NamedTuple):
    """How an exercise went: how many of its questions were right, and what to teach again."""

    exercise: str
    skill: str
    right: int
    asked: int
    trainees: int
    slips: tuple[CommonSlip, ...]


class ClassTable(NamedTuple):
    """A class, marked."""

    assignment: Assignment
    edition: str
    skills: tuple[tuple[str, int], ...]  # title, marks to be had
    rows: tuple[Row, ...]
    exercises: tuple[Taught, ...]
    findings: tuple[Finding, ...]
    unreadable: tuple[tuple[str, str], ...]  # file, why
    absent: tuple[str, ...]  # codes of which there is no file
    marked: tuple[MarkedResult, ...]

    @property
    def is_clean(self) -> bool:
        """Whether every file could be read and none was tampered with."""
        return not self.unreadable and not any(one.tampered for one in self.findings)


def mark_class(
    bank: dict[str, Any], assignment: Assignment, files: Sequence[tuple[str, object]]
) -> ClassTable:
    """Marks the result files of a class, (name, text) each. A file that cannot be read is listed."""
    if len(files) > MOST_FILES:
        raise TooManyFiles(f"there are {len(files)} files; at most {MOST_FILES} are marked at once")
    changed = changed_since(bank, assignment)
    marked: list[MarkedResult] = []
    unreadable: list[tuple[str, str]] = []
    for name, text in files:
        try:
            marked.append(mark_result(bank, assignment, text, name, changed))
        except UnfitResult as error:
            unreadable.append((clean(name, LONGEST_FILE_NAME), str(error)))
    counted, twice = _one_of_each(marked)
    counted.sort(key=lambda one: one.result.code)
    skills = _skills(assignment, counted)
    rows = tuple(_row(one, skills) for one in counted)
    findings = [*changed_findings(assignment, changed), *twice, *_of_files(marked, bank["edition"])]
    findings.sort(key=lambda one: not one.tampered)
    present = {one.result.code for one in marked}
    return ClassTable(
        assignment, bank["edition"], tuple(skills.items()), rows, _taught(assignment, counted),
        tuple(findings), tuple(unreadable),
        tuple(code for code in codes(assignment) if code not in present), tuple(counted),
    )  # fmt: skip


def _one_of_each(marked: list[MarkedResult]) -> tuple[list[MarkedResult], list[Finding]]:
    """The result of each code that was saved first; others of the same code are named."""
    by_code: dict[str, list[MarkedResult]] = {}
    for one in marked:
        if one.answered:
            by_code.setdefault(one.result.code, []).append(one)
    kept, findings = [], []
    for code, same in by_code.items():
        first = min(same, key=_when_saved)
        kept.append(first)
        if len(same) > 1:
            names = " and ".join(one.file for one in same)
            words = f"{names} have the same code, {code}: the table has {first.file}, saved first."
            kind = TWICE
            if all(one.result == first.result for one in same):
                kind, words = REPEATED, f"{names} are the same result, {code}; it counts once."
            findings.append(Finding(kind, words, first.file))
    return kept, findings


def _when_saved(marked: MarkedResult) -> tuple[datetime, bool, str]:
    """What decides between results of one code: the time, then whether anything is amiss."""
    tampered = any(one.tampered for one in marked.findings)
    return datetime.fromisoformat(marked.result.saved), tampered, marked.file


def _of_files(marked: list[MarkedResult], edition: str) -> list[Finding]:
    """The findings of the files; what holds for many of them is said once."""
    found = [
        finding for one in marked for finding in one.findings
        if finding.kind not in (CHANGED, EDITION_DIFFERS, LATE)
    ]  # fmt: skip
    editions: dict[str, list[str]] = {}
    for one in marked:
        if one.result.edition != edition:
            editions.setdefault(one.result.edition, []).append(one.file)
    for other, files in sorted(editions.items()):
        words = f"Made with edition {other} of the handbook, where this one is {edition}: "
        found.append(Finding(EDITION_DIFFERS, f"{words}{', '.join(files)}.", files[0]))
    late = [one for one in marked if any(each.kind == LATE for each in one.findings)]
    if late:
        names = ", ".join(f"{one.file} ({one.result.saved[:10]})" for one in late)
        found.append(Finding(LATE, f"Saved after the due day: {names}.", late[0].file))
    return found


def _skills(assignment: Assignment, marked: Iterable[MarkedResult]) -> dict[str, int]:
    """Marks to be had in each skill, in the order of the questions; the same for every trainee."""
    skills: dict[str, int] = {}
    for one in marked:
        for each in one.answered:
            title = each.asked.question.title
            skills[title] = skills.get(title, 0) + assignment.marks
        break
    return skills


def _row(marked: MarkedResult, skills: dict[str, int]) -> Row:
    marks = marked.of // len(marked.answered)
    got = dict.fromkeys(skills, 0.0)
    wrong = []
    for one in marked.answered:
        question = one.asked.question
        got[question.title] += one.mark.share * marks
        if one.mark.verdict != RIGHT:
            wrong.append(Wrong(
                one.asked.number, one.asked.exercise, question.title, question.words,
                given_words(question, one.given), one.mark.verdict, one.mark.words, one.mark.why,
                question.shown, one.mark.share,
            ))  # fmt: skip
    cells = tuple((got[title], of) for title, of in skills.items())
    return Row(marked.result.code, marked.file, cells, marked.got, marked.of, tuple(wrong))


def _taught(assignment: Assignment, marked: list[MarkedResult]) -> tuple[Taught, ...]:
    """Each exercise, the one that went worst first."""
    found = []
    for exercise, _ in assignment.questions:
        answers = [
            (one.result.code, each)
            for one in marked for each in one.answered if each.asked.exercise == exercise
        ]  # fmt: skip
        if not answers:
            continue
        trainees = len({code for code, _ in answers})
        right = sum(each.mark.verdict == RIGHT for _, each in answers)
        made: dict[str, tuple[set[str], str]] = {}
        for code, each in answers:
            slip = slip_of(each)
            if slip:
                made.setdefault(slip, (set(), _slip_words(each)))[0].add(code)
        slips = [
            CommonSlip(words, len(who)) for who, words in made.values()
            if len(who) >= FEW or len(who) * PART >= trainees
        ]  # fmt: skip
        slips.sort(key=lambda slip: (-slip.trainees, slip.words))
        title = answers[0][1].asked.question.title
        found.append(Taught(exercise, title, right, len(answers), trainees, tuple(slips)))
    return tuple(sorted(found, key=lambda one: (one.right / one.asked, one.exercise)))


def slip_of(answered: Answered) -> str:
    """What kind of slip an answer is, the same word for every trainee who makes it; or empty."""
    mark, question = answered.mark, answered.asked.question
    if mark.verdict in (RIGHT, MISSING):
        return ""
    if mark.verdict in (ROUNDED, UNIT):
        return mark.verdict
    if question.kind == CHOICE and mark.slip and answered.asked.exercise.startswith("fault/"):
        return given_words(question, answered.given)  # its options are laid out anew each time
    return mark.slip


def _slip_words(answered: Answered) -> str:
    mark, question = answered.mark, answered.asked.question
    if mark.verdict == ROUNDED:
        return f"Rounded too far. {mark.why}"
    if mark.verdict == UNIT:
        return f"The right number in the wrong unit. {mark.why}"
    if question.kind == CHOICE:
        return f"“{given_words(question, answered.given).rstrip('.')}”: {mark.why}"
    return mark.why


def to_json(table: ClassTable) -> dict[str, Any]:
    """The table as plain data."""
    return {
        "assignment": table.assignment.id, "title": table.assignment.title,
        "edition": table.edition,
        "skills": [{"skill": title, "of": of} for title, of in table.skills],
        "trainees": [
            {
                "code": row.code, "file": row.file, "got": figure(row.got), "of": row.of,
                "skills": {
                    title: figure(got)
                    for (title, _), (got, _) in zip(table.skills, row.cells, strict=True)
                },
                "wrong": [one._asdict() for one in row.wrong],
            }
            for row in table.rows
        ],
        "exercises": [
            {**one._asdict(), "slips": [slip._asdict() for slip in one.slips]}
            for one in table.exercises
        ],
        "findings": findings_json(table),
        "unreadable": [{"file": file, "why": why} for file, why in table.unreadable],
        "absent": list(table.absent),
    }  # fmt: skip


def findings_json(table: ClassTable) -> list[dict[str, Any]]:
    """The findings as plain data."""
    return [{**one._asdict(), "tampered": one.tampered} for one in table.findings]
