"""What a result file holds, and what is said of one when it is marked again."""

from collections.abc import Mapping
from typing import Any, NamedTuple

from ..engine.strangers import clean
from .assignment import Asked, Assignment
from .marking import Mark
from .question import CHOICE, ORDER, Question
from .untrusted import UnfitFile

LONGEST_ANSWER = 200
LONGEST_WORDS = 20_000  # of a question as it is shown
LONGEST_LINE = 2_000
MOST_PLACES = 20
LARGEST_PLACE = 10**6

# Kinds of findings.
ASSIGNMENT, UNKNOWN_CODE, WORDS, VERDICT, SCORE, STRAY = (
    "assignment", "code", "words", "verdict", "score", "stray",
)  # fmt: skip
REVISIONS, UNANSWERED, EDITION_DIFFERS, CHANGED, LATE, TIMES, TWICE, REPEATED = (
    "revisions", "unanswered", "edition", "changed", "late", "times", "twice", "repeated",
)  # fmt: skip
TAMPERED = frozenset({ASSIGNMENT, UNKNOWN_CODE, WORDS, VERDICT, SCORE, STRAY, REVISIONS})


class UnfitResult(UnfitFile):
    """A file that is no result, or none that can be read; the message says why."""


class Answered(NamedTuple):
    """A question of a trainee, what was given, and what it is worth."""

    asked: Asked
    given: Any
    mark: Mark
    at: str = ""


class Claimed(NamedTuple):
    """An answer as a result file has it; its verdict and share are claims."""

    number: int
    exercise: str
    words: str
    given: Any
    at: str
    verdict: str
    share: float


class Result(NamedTuple):
    """A result file as it was read; nothing in it is checked against the assignment yet."""

    assignment: Assignment
    code: str
    edition: str
    revisions: Mapping[str, int]  # of the stations in the trainee's handbook
    began: str
    saved: str
    answers: tuple[Claimed, ...]
    score: float
    of: float


class Finding(NamedTuple):
    """Something a trainer should know of a file. ``number`` is the question's, 0 for the whole."""

    kind: str
    words: str
    file: str
    number: int = 0

    @property
    def tampered(self) -> bool:
        """Whether a file is only so when somebody has altered it."""
        return self.kind in TAMPERED


class MarkedResult(NamedTuple):
    """A result marked again: ``got`` of ``of`` marks, by our own marking alone."""

    file: str
    result: Result
    answered: tuple[Answered, ...]
    got: float
    of: int
    findings: tuple[Finding, ...]


def figure(value: float) -> float | int:
    """Marks without a needless point: 3, 2.5."""
    return int(value) if value == int(value) else value


def asked_words(question: Question) -> str:
    """A question as its trainee sees it: the words, what stands beside them, the options."""
    lines = [question.words, *(f"{name}: {value}" for name, value in question.facts)]
    lines += [f"{place}) {option}" for place, option in enumerate(question.options, 1)]
    return "\n".join(clean(line, LONGEST_LINE) for line in lines)


def given_words(question: Question, given: Any) -> str:
    """An answer as people read it: the option's words, the steps in the order given."""
    if given is None or given == "" or given == []:
        return ""
    count = len(question.options)
    if question.kind == CHOICE and type(given) is int and 0 <= given < count:
        return question.options[given]
    if question.kind == ORDER and isinstance(given, list):
        places = [one for one in given if 0 <= one < count]
        return " → ".join(question.options[one] for one in places)
    return clean(str(given), LONGEST_ANSWER)


def fit_given(given: object) -> Any:
    """An answer as far as one can be: a short line, a whole number, a short list of them."""
    if isinstance(given, str):
        return clean(given, LONGEST_ANSWER).strip() or None
    if type(given) is int and abs(given) < LARGEST_PLACE:
        return given
    if isinstance(given, list) and len(given) <= MOST_PLACES:
        return [one for one in given if type(one) is int and abs(one) < LARGEST_PLACE]
    return None
