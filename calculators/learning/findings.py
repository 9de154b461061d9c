"""What a result file claims, held against what the assignment draws and our marking gives."""

from collections.abc import Collection, Mapping
from datetime import datetime
from typing import Any

from .assignment import Assignment, digest_of, revisions_of, to_json
from .marking import MISSING
from .result_records import (
    ASSIGNMENT,
    CHANGED,
    EDITION_DIFFERS,
    LATE,
    REVISIONS,
    SCORE,
    STRAY,
    TIMES,
    UNANSWERED,
    VERDICT,
    WORDS,
    Answered,
    Claimed,
    Finding,
    Result,
    asked_words,
    figure,
)

NEAR = 1e-6


def of_assignment(assignment: Assignment, result: Result, file: str) -> list[Finding]:
    """What differs between the assignment in the file and the trainer's."""
    inside = result.assignment
    if inside.id != assignment.id:
        words = f"{file} is for another assignment: {inside.id}, “{inside.title}”."
        return [Finding(ASSIGNMENT, words, file)]
    if digest_of(inside) == digest_of(assignment):
        return []
    ours, theirs = to_json(assignment), to_json(inside)
    names = ", ".join(name for name in ours if ours[name] != theirs[name])
    words = f"{file}: the assignment in it was altered ({names}); yours was used."
    return [Finding(ASSIGNMENT, words, file)]


def of_answer(
    edition: str, result: Result, claim: Claimed, found: Answered, file: str
) -> list[Finding]:
    """What an answer claims and our drawing and marking do not bear out."""
    number, findings = claim.number, []
    shown = asked_words(found.asked.question)
    if (claim.exercise, claim.words) != (found.asked.exercise, shown):
        other = (
            "" if result.edition == edition
            else f" (its handbook is of edition {result.edition}, this one of {edition})"
        )  # fmt: skip
        words = (
            f"{file}, question {number}: its words are not those that this assignment draws{other}; "
            "the answer was marked for the question as drawn."
        )
        findings.append(Finding(WORDS, words, file, number))
    ours = found.mark
    if claim.verdict != ours.verdict or abs(claim.share - ours.share) > NEAR:
        words = (
            f"{file}, question {number}: it claims “{claim.verdict}” ({claim.share:g} of the marks); "
            f"marked again it is “{ours.verdict}” ({ours.share:g})."
        )
        findings.append(Finding(VERDICT, words, file, number))
    return findings


def of_numbers(
    assignment: Assignment, result: Result, answered: list[Answered], file: str
) -> list[Finding]:
    """Answers to questions that there are not, and questions without an answer."""
    findings = [
        Finding(STRAY, f"{file}: it answers a question {one.number} that there is not.", file,
                one.number)
        for one in result.answers
        if one.number > assignment.length
    ]  # fmt: skip
    missing = [one.asked.number for one in answered if one.mark.verdict == MISSING]
    if missing:
        words = f"{file}: no answer to {_numbers(missing)}."
        findings.append(Finding(UNANSWERED, words, file, missing[0]))
    return findings


def changed_findings(
    assignment: Assignment, changed: Collection[str], file: str = ""
) -> list[Finding]:
    """A finding for each exercise that cannot be drawn again, and the numbers of its questions."""
    findings, first = [], 1
    for exercise, count in assignment.questions:
        if exercise in changed:
            it, so = ("it was", "it is") if count == 1 else ("they were", "they are")
            words = (
                f"{_numbers(range(first, first + count)).capitalize()} ({exercise}) cannot be drawn "
                f"again as {it}, so {so} not marked: build the edition {assignment.edition}, "
                "or set it again."
            )
            findings.append(Finding(CHANGED, words, file, first))
        first += count
    return findings


def _numbers(numbers: Collection[int]) -> str:
    names = [str(one) for one in numbers]
    if len(names) == 1:
        return f"question {names[0]}"
    return f"questions {', '.join(names[:-1])} and {names[-1]}"


def of_score(
    assignment: Assignment, claims: Mapping[int, Claimed], answered: list[Answered],
    result: Result, file: str,
) -> list[Finding]:  # fmt: skip
    """Whether the score is the sum of what we mark; what we cannot mark is taken as claimed."""
    marked = {one.asked.number for one in answered}
    unmarked = sum(
        claim.share for number, claim in claims.items()
        if number not in marked and number <= assignment.length
    )  # fmt: skip
    ours = (sum(one.mark.share for one in answered) + unmarked) * assignment.marks
    of = assignment.length * assignment.marks
    if abs(result.score - ours) <= NEAR and result.of == of:
        return []
    words = (
        f"{file}: it claims {result.score:g} of {result.of:g} marks; "
        f"marked again it is {figure(ours):g} of {of}."
    )
    return [Finding(SCORE, words, file)]


def of_edition(
    bank: dict[str, Any], assignment: Assignment, result: Result, file: str
) -> list[Finding]:
    """Another edition of the handbook is no fault; revisions that our own edition denies are."""
    if result.edition != bank["edition"]:
        words = (
            f"{file} was made with edition {result.edition} of the handbook; "
            f"this one is {bank['edition']}."
        )
        return [Finding(EDITION_DIFFERS, words, file)]
    if dict(result.revisions) == revisions_of(bank, assignment.prints):
        return []
    words = f"{file}: the revisions it names are not those of its edition, {result.edition}."
    return [Finding(REVISIONS, words, file)]


def of_times(assignment: Assignment, result: Result, file: str) -> list[Finding]:
    """Lateness, and times that are in no order: both to be looked at, neither a fault."""
    findings = []
    day = result.saved[:10]  # the day where the trainee is, as the file writes it
    if assignment.due and day > assignment.due:
        words = f"{file} was saved on {day}, after the due day {assignment.due}."
        findings.append(Finding(LATE, words, file))
    began, saved = datetime.fromisoformat(result.began), datetime.fromisoformat(result.saved)
    astray = [
        one.number for one in result.answers
        if one.at and not began <= datetime.fromisoformat(one.at) <= saved
    ]  # fmt: skip
    if saved < began:
        findings.append(Finding(TIMES, f"{file} was saved before it was begun.", file))
    elif astray:
        words = f"{file}: {_numbers(sorted(astray))} answered before it was begun or after it was saved."
        findings.append(Finding(TIMES, words, file, min(astray)))
    return findings
