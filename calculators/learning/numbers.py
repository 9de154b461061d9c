"""Draws questions with a number for an answer from what a calculator declares."""

from collections.abc import Iterator, Mapping
from typing import Any

from ..engine.compute import PLACE, Answer, Say, work_out
from ..engine.declaration import Calculator, Decision, Exercise, Number
from ..engine.formula import parse
from ..engine.judging import uncertainty_in
from ..engine.markup import step_lines
from ..engine.reading import convert, read_quantity
from ..engine.showing import as_typed, half_up, reader_unit, with_unit
from ..engine.unit_table import UNITS
from .question import CHOICE, NUMBER, CannotDraw, KnownSlip, Question
from .stream import Stream

MOST_TRIES = 300
MOST_DECIMALS = 8
HALF_64TH_IN = 1 / 128
APART = 2.2  # how many tolerances a slip keeps from the right answer and from other slips


def draw_number(
    calculator: Calculator, exercise: Exercise, seed: str, grade: int, units: str
) -> Question:
    """A question of an exercise; the same seed, grade and units draw the same one anywhere.

    Draws on, from the same stream, where the calculator refuses the figures, or where a known slip
    would come out as the right answer and so teach nothing.

    Grade 1 shows the first of the worked steps, grade 2 uncovers them on request; grade 3 gives the
    sizes in the other unit system, as a drawing from elsewhere does, and no hints.
    """
    for worked in _workings(calculator, exercise, seed, grade, units):
        question = _question(calculator, exercise, worked, grade, units)
        if question is not None:
            return question
    raise CannotDraw(f"{calculator.name}/{exercise.name} draws no question that can be asked")


def draw_decision(
    calculator: Calculator, decision: Decision, seed: str, grade: int, units: str
) -> Question:
    """A question of which way to go: figures are drawn until exactly one of the options holds."""
    for worked in _workings(calculator, decision, seed, grade, units):
        places = [
            place
            for place, option in enumerate(decision.options)
            if parse(option.holds).evaluate(worked.values)
        ]
        if len(places) == 1:
            say = Say(calculator, worked.values, worked.system)
            options = tuple(say.fill(option.words) for option in decision.options)
            return Question(
                exercise=f"{calculator.name}/{decision.name}", title=calculator.title, kind=CHOICE,
                grade=grade, words=say.fill(decision.situation), answer=places[0],
                shown=options[places[0]], read=(f"calculators/{calculator.name}", calculator.title),
                system=units, options=options,
                whys=tuple(
                    say.fill(decision.because if place == places[0] else option.why)
                    for place, option in enumerate(decision.options)
                ),
                steps=tuple(step_lines(worked, say, _names_of(decision))),
            )  # fmt: skip
    raise CannotDraw(f"{calculator.name}/{decision.name} draws no question with one right option")


def _names_of(decision: Decision) -> set[str]:
    """The values that a decision looks at."""
    names = set(PLACE.findall(decision.because))
    return names.union(*(parse(option.holds).names for option in decision.options))


def _workings(
    calculator: Calculator, exercise: Exercise | Decision, seed: str, grade: int, units: str
) -> Iterator[Answer]:
    """The worked answers of one draw after the other; refused figures are passed over."""
    stream = Stream(f"{calculator.name}/{exercise.name}/{seed}/{grade}/{units}")
    system = {"metric": "inch"}.get(units, "metric") if grade == 3 else units
    for _ in range(MOST_TRIES):
        figures = _figures(calculator, exercise, stream, system)
        worked = work_out(calculator, figures, system)
        if not isinstance(worked, list):
            yield worked


def _figures(
    calculator: Calculator, exercise: Exercise | Decision, stream: Stream, system: str
) -> dict[str, Any]:
    """The inputs of one draw, each as the reader will see it: what is printed is what is meant."""
    drawn = {name: draw_value(stream, span) for name, span in exercise.draw.items()}
    given = {**exercise.fixed, **drawn}
    numbers = {item.name: item for item in calculator.inputs if isinstance(item, Number)}
    seen = {*given, *PLACE.findall(exercise.situation)} & set(numbers)
    for name in sorted(seen):
        value = given.get(name, numbers[name].example)
        if isinstance(value, int | float):
            given[name] = _as_read(numbers[name], value, system)
    return given


def draw_value(stream: Stream, span: tuple[Any, ...]) -> Any:
    """A value from (low, high, step), or one of several."""
    if is_range(span):
        low, high, step = span
        value = low + stream.whole(0, round((high - low) / step)) * step
        return value if isinstance(value, int) else float(half_up(value, 6))
    return stream.pick(span)


def is_range(span: tuple[Any, ...]) -> bool:
    """Whether a span is (low, high, step) and not a list of choices."""
    return len(span) == 3 and all(type(part) in (int, float) for part in span)


def _as_read(item: Number, value: float, system: str) -> str:
    """A figure as its reader sees it: with more decimals where rounding would leave the range."""
    unit = reader_unit(item.unit, system)
    decimals = 0 if item.whole else item.decimals
    for more in range(4):
        text = as_typed(value, item.unit, decimals + more, system)
        if item.lowest <= read_quantity(text, item.unit, unit) <= item.highest:
            break
    return f"{text} {UNITS[unit].shown}".strip() if UNITS[unit].shown else text


def _question(
    calculator: Calculator, exercise: Exercise, worked: Answer, grade: int, units: str
) -> Question | None:
    """The question on a worked answer, or None where a slip would hide in its tolerance."""
    say = Say(calculator, worked.values, worked.system)
    quantity = say.quantities[exercise.asks]
    answer = float(worked.values[exercise.asks])
    within = within_of(exercise, answer)
    if within <= 0:
        return None
    system = answer_system(quantity.unit, within, units)

    def shown(value: float) -> str:
        return show_fine(value, quantity.unit, quantity.decimals, within, system)

    slips = []
    for slip in exercise.slips:
        value = _slip_value(slip.formula, worked.values)
        if value is None:
            return None
        slips.append(KnownSlip(slip.name, value, shown(value), slip.why))
    values = [answer, *(slip.value for slip in slips)]
    if any(abs(a - b) <= APART * within for at, a in enumerate(values) for b in values[:at]):
        return None
    return Question(
        exercise=f"{calculator.name}/{exercise.name}", title=calculator.title, kind=NUMBER,
        grade=grade, words=say.fill(exercise.situation), answer=answer, shown=shown(answer),
        read=(f"calculators/{calculator.name}", calculator.title), unit=quantity.unit, system=system,
        within=within, within_shown=_within_shown(exercise, quantity.unit, within, system),
        slips=tuple(slips), steps=tuple(step_lines(worked, say, [exercise.asks])),
    )  # fmt: skip


def _slip_value(formula: str, values: Mapping[str, Any]) -> float | None:
    try:
        value = float(parse(formula).evaluate(values))
    except (ArithmeticError, ValueError, TypeError):
        return None
    return value if abs(value) < float("inf") else None


def within_of(exercise: Exercise, answer: float) -> float:
    """How far off an answer may be, in the unit of the answer."""
    amount, _, unit = exercise.within.partition(" ")
    return abs(answer) * float(amount) / 100 if unit == "%" else float(amount)


def answer_system(unit: str, within: float, units: str) -> str:
    """The unit system to answer in: 64ths only where they are as fine as the task asks."""
    if units == "inch64" and reader_unit(unit, "inch64") == "in":
        return "inch64" if uncertainty_in(within, unit, "in") >= HALF_64TH_IN else "inch"
    return units


def show_fine(value: float, unit: str, decimals: int, within: float, system: str) -> str:
    """A value with as many decimals as its tolerance needs, and no fewer than are usual."""
    to = reader_unit(unit, system)
    if system == "inch64" and to == "in":
        fraction = as_typed(value, unit, decimals, system)
        if abs(read_quantity(fraction, unit, to) - value) <= within / 2:
            return with_unit(fraction, unit, system)
    needed = decimals
    while needed < MOST_DECIMALS and 10.0**-needed > uncertainty_in(within, unit, to):
        needed += 1
    return with_unit(half_up(convert(value, unit, to), needed), unit, system)


def _within_shown(exercise: Exercise, unit: str, within: float, system: str) -> str:
    if exercise.within.endswith("%"):
        return exercise.within
    to = reader_unit(unit, system)
    width = uncertainty_in(within, unit, to)
    text = half_up(width, MOST_DECIMALS).rstrip("0").rstrip(".")
    if to != unit:  # two significant figures will do
        decimals = 1
        while decimals < MOST_DECIMALS and 10 ** (decimals - 1) * width < 1:
            decimals += 1
        text = half_up(width, decimals)
    return with_unit(text, unit, system)
