"""Every word a calculator may use to say what it asks, works out and answers.

A calculator is declared once. The form, the printed tables, the JSON door, the exercises, the
marking, the tests and the "how we know" table all read that one declaration, so these classes
hold data and no logic. Units are ids of ``units.UNITS``; angles are degrees throughout.
"""

from collections.abc import Callable, Mapping
from types import MappingProxyType
from typing import Any, ClassVar, dataclass_transform

NOTHING: Mapping[str, Any] = MappingProxyType({})


@dataclass_transform(frozen_default=True, kw_only_default=True, eq_default=False)
class Declared:
    """A frozen record given by keywords, as a frozen dataclass is.

    Made by hand because dataclasses write and compile code for every class, which costs the
    browser a tenth of a second before the first answer.
    """

    FIELDS: ClassVar[tuple[str, ...]] = ()

    def __init_subclass__(cls) -> None:
        own = [name for name in cls.__annotations__ if name != "FIELDS"]
        cls.FIELDS = tuple(dict.fromkeys((*cls.FIELDS, *own)))

    def __init__(self, **given: Any) -> None:
        for name in self.FIELDS:
            if name in given:
                object.__setattr__(self, name, given.pop(name))
            elif not hasattr(type(self), name):
                raise TypeError(f"{type(self).__name__} needs {name}")
        if given:
            raise TypeError(f"{type(self).__name__} has no {', '.join(given)}")

    def __setattr__(self, name: str, value: Any) -> None:
        raise AttributeError(f"{type(self).__name__} is declared once: {name} cannot be set")

    def __repr__(self) -> str:
        fields = ", ".join(f"{name}={getattr(self, name)!r}" for name in self.FIELDS)
        return f"{type(self).__name__}({fields})"

    def fields(self) -> dict[str, Any]:
        """Every field by name."""
        return {name: getattr(self, name) for name in self.FIELDS}


Origin = str  # "read" (seen in the source), "library" (computed by one), "memory", "derived"


class Source(Declared):
    """Where a formula or a figure comes from. ``kind``: published, library, practice or shop."""

    id: str
    title: str
    author: str = ""
    year: str = ""
    kind: str = "published"
    note: str = ""


class When(Declared):
    """An input applies only while another input, a choice, has one of these values."""

    choice: str
    is_one_of: tuple[str, ...]


class Quantity(Declared):
    """A number with a name for formulas, words for people, a symbol for the worked steps."""

    name: str
    label: str
    unit: str
    decimals: int
    symbol: str = ""
    help: str = ""


class Number(Quantity):
    """A number the reader gives. Outside lowest..highest the answer is a reason, not a number."""

    lowest: float
    highest: float
    example: float
    whole: bool = False
    group: str = ""
    when: When | None = None


class Choice(Declared):
    """One of a few named ways; ``options`` are (value, words) pairs."""

    name: str
    label: str
    options: tuple[tuple[str, str], ...]
    example: str
    help: str = ""
    group: str = ""
    when: When | None = None


class Readings(Quantity):
    """A handful of measured values of one quantity, given in one field."""

    lowest: float
    highest: float
    example: tuple[float, ...]
    at_least: int = 1
    at_most: int = 50
    group: str = ""
    when: When | None = None


class Words(Declared):
    """A short text in a row of ``Rows`` (the name of an operation, say)."""

    name: str
    label: str
    longest: int = 60


class Rows(Declared):
    """A small table the reader fills in, row by row."""

    name: str
    label: str
    columns: tuple[Number | Words, ...]
    example: tuple[tuple[float | str, ...], ...]
    at_least: int = 1
    at_most: int = 30
    help: str = ""
    group: str = ""
    when: When | None = None


Input = Number | Choice | Readings | Rows


class Constant(Quantity):
    """A fixed number with its unit, e.g. 1000 um/mm; formulas name it, the steps print it."""

    value: float
    source: str


class Step(Quantity):
    """One worked step. The formula is evaluated *and* printed, so the two cannot disagree."""

    formula: str
    source: str
    only_if: str = ""
    empirical: bool = False  # a fit whose constants hide units: spared the dimension test alone


class Given(Quantity):
    """One thing a ``Solved`` step gives: a number, or (``many``) a list or rows."""

    many: bool = False
    text: bool = False


class Solved(Declared):
    """A step that iterates, solves or branches: a plain function, named values in, values out.

    The function's parameters are names known so far; it returns a mapping with every name in
    ``gives`` (or the bare value where there is one) and raises ``Refusal`` where it cannot.
    """

    name: str
    label: str
    function: Callable[..., Any]
    gives: tuple[Given, ...]
    method: str  # how it works, in a sentence; printed among the worked steps
    source: str
    only_if: str = ""


class Said(Declared):
    """An answer in words: the first case whose condition holds; ``{name}`` prints a value."""

    name: str
    label: str
    cases: tuple[tuple[str, str], ...]
    only_if: str = ""


class Limit(Declared):
    """What must hold at this point of the work, and what to say to the reader if it does not.

    ``blames`` is the input to put right; ``otherwise`` says what is wrong and how to mend it;
    ``allowed`` says what would do. Both may print values as ``{name}``.
    """

    holds: str
    blames: str
    otherwise: str
    allowed: str
    source: str
    only_if: str = ""


Work = Step | Solved | Said | Limit


class Column(Quantity):
    """A column of a table: a formula over the row, or (no formula) a value the row brings."""

    formula: str = ""
    running: bool = False  # the sum of the formula over the rows so far
    text: bool = False
    only_if: str = ""


class Count(Declared):
    """Rows counted by a whole number, from ``first`` to ``last`` (formulas)."""

    name: str
    first: str
    last: str


class Table(Declared):
    """A table among the answers; ``rows`` counts, or names a list of rows a Solved step gave."""

    name: str
    title: str
    rows: Count | str
    columns: tuple[Column, ...]
    source: str
    note: str = ""
    only_if: str = ""


class Taken(Quantity):
    """A figure taken from a finished table: the value in ``column`` that ``take`` names.

    ``take`` is "last" (of the last row) or "farthest from zero".
    """

    table: str
    column: str
    take: str
    only_if: str = ""


class Drawing(Declared):
    """A drawing or plot: ``function(values, say)`` returns SVG text.

    ``values`` maps every name to its value; ``say(name)`` prints one with its unit in the
    reader's unit system and ``say.quantity(value, unit, decimals)`` prints any other.
    """

    name: str
    title: str
    function: Callable[..., str]
    only_if: str = ""


class Caution(Declared):
    """A warning: always, or only if a formula holds. ``{name}`` prints a value."""

    text: str
    only_if: str = ""


class Check(Declared):
    """A figure from outside the project, and how to get ours.

    Either ``inputs`` for the whole calculator and ``expected`` by name ("pitch") or table cell
    ("slots[12].from_nut", rows by the first column), or a ``function`` of the module with what
    it is ``given`` and the one expected figure under "" . Digits are typed as the source prints
    them, before the code runs; ours must agree to the last one unless ``within`` (with
    ``because``) says how closely.
    """

    expected: Mapping[str, str]
    source: str
    where: str
    origin: Origin
    inputs: Mapping[str, Any] = NOTHING
    function: Callable[..., Any] | None = None
    given: Mapping[str, Any] = NOTHING
    unit: str = ""  # of the expected figure, where it is not the declared one
    within: str = ""  # "0.5 %" or "0.002" (in the unit of the figure)
    because: str = ""


class Slip(Declared):
    """A known wrong way to the answer: the formula people use by mistake, and why it is wrong."""

    name: str
    formula: str
    why: str


class Exercise(Declared):
    """A question drawn from ranges: ``draw`` maps inputs to (low, high, step) or to choices."""

    name: str
    situation: str
    asks: str  # a result's name, or a table cell as in Check
    draw: Mapping[str, tuple[Any, ...]]
    within: str
    slips: tuple[Slip, ...] = ()
    fixed: Mapping[str, Any] = NOTHING


class Option(Declared):
    """One way to go in a ``Decision``: right where ``holds``, else wrong for the reason ``why``."""

    words: str
    holds: str
    why: str


class Decision(Declared):
    """A question of which way to go, drawn as an exercise is, until exactly one option holds.

    ``because`` says why the right one is right; both may print values as ``{name}``.
    """

    name: str
    situation: str
    options: tuple[Option, ...]
    because: str
    draw: Mapping[str, tuple[Any, ...]]
    fixed: Mapping[str, Any] = NOTHING


class Calculator(Declared):
    """Everything one calculation asks and answers."""

    name: str
    title: str
    summary: str
    inputs: tuple[Input, ...]
    work: tuple[Work, ...]
    results: tuple[str, ...]
    sources: tuple[Source, ...]
    checks: tuple[Check, ...]
    validity: str  # where the calculation holds and where it does not, in words
    constants: tuple[Constant, ...] = ()
    tables: tuple[Table, ...] = ()
    taken: tuple[Taken, ...] = ()
    drawings: tuple[Drawing, ...] = ()
    cautions: tuple[Caution, ...] = ()
    exercises: tuple[Exercise, ...] = ()
    decisions: tuple[Decision, ...] = ()
    aside: tuple[str, ...] = ()  # results of second rank, folded under "More figures"
    folded: tuple[str, ...] = ()  # groups of inputs that start folded in the form
    other_words: tuple[str, ...] = ()  # what a newcomer would search for


class Refusal(Exception):
    """A calculation that cannot give an answer, and the reason in words.

    ``blames`` is the input to put right, ``why`` what is wrong and how to mend it, ``allowed``
    what would do. Raised by Solved functions; the door turns it into a refused answer.
    """

    def __init__(self, blames: str, why: str, allowed: str) -> None:
        super().__init__(why)
        self.blames = blames
        self.why = why
        self.allowed = allowed
