"""A question as it was drawn: its words, the right answer, and what is known to go wrong."""

from typing import NamedTuple

GRADES = {1: "First steps", 2: "At the bench", 3: "On your own"}
NUMBER, CHOICE, ORDER = "number", "choice", "order"


class CannotDraw(ValueError):
    """An exercise that has no question to ask with these settings; the message says why."""


class KnownSlip(NamedTuple):
    """A wrong answer that people are known to give, and why it is wrong."""

    name: str
    value: float  # in the unit of the question
    shown: str
    why: str


class Question(NamedTuple):
    """One question. ``answer`` is a number in ``unit``, the right option's place, or an order.

    An answer's text is read in ``unit`` by a reader of the unit system ``system``; ``within`` is how
    far off it may be, in ``unit``, for the task at the bench.
    """

    exercise: str
    title: str
    kind: str  # NUMBER, CHOICE or ORDER
    grade: int
    words: str
    answer: float | int | tuple[int, ...]
    shown: str  # the right answer as people read it
    facts: tuple[tuple[str, str], ...] = ()  # what stands beside the words: name, value
    read: tuple[str, str] = ("", "")  # where it is taught: page, words
    unit: str = "1"
    system: str = "metric"
    within: float = 0.0
    within_shown: str = ""
    slips: tuple[KnownSlip, ...] = ()
    options: tuple[str, ...] = ()  # of a choice, or the items of an order as they are laid out
    whys: tuple[str, ...] = ()  # of each option: why it is wrong, or right
    steps: tuple[str, ...] = ()  # the way to the answer, HTML, one step after the other
