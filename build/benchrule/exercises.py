"""Draws exercises from the calculators' declarations; the door works out the answers."""

import random
from collections.abc import Mapping
from dataclasses import dataclass
from functools import partial
from typing import Any

from calculators.engine.compute import Say, quantities, work_out
from calculators.engine.declaration import Calculator, Exercise
from calculators.engine.formula import parse
from calculators.engine.showing import half_up
from calculators.engine.text import escape

from .handbook import Handbook

MOST_TRIES = 200


@dataclass(frozen=True)
class Question:
    """A question drawn: its inputs, the words, the right answer, the answers of known slips."""

    exercise: Exercise
    inputs: Mapping[str, Any]
    words: str
    answer: float
    unit: str
    shown: str
    slips: Mapping[str, float]


def draw_question(calculator: Calculator, exercise: Exercise, seed: int | str) -> Question:
    """A question of an exercise: the same seed draws the same question on any machine.

    Draws again (from the same stream) where the calculator refuses the figures, or where a known
    slip would come out as the right answer and so teach nothing.
    """
    stream = random.Random(f"{calculator.name}/{exercise.name}/{seed}")
    for _ in range(MOST_TRIES):
        inputs = dict(exercise.fixed)
        for name, span in exercise.draw.items():
            inputs[name] = _draw(stream, span)
        worked = work_out(calculator, inputs)
        if isinstance(worked, list):
            continue
        say = Say(calculator, worked.values, "metric")
        quantity = say.quantities[exercise.asks]
        answer = float(worked.values[exercise.asks])
        slips = {
            slip.name: float(parse(slip.formula).evaluate(worked.values)) for slip in exercise.slips
        }
        if all(abs(slip - answer) > within(exercise, answer) for slip in slips.values()):
            return Question(
                exercise, inputs, say.fill(exercise.situation), answer, quantity.unit,
                say(exercise.asks), slips,
            )  # fmt: skip
    raise ValueError(
        f"{calculator.name}: exercise {exercise.name} draws no question that can be asked"
    )


def within(exercise: Exercise, answer: float) -> float:
    """How far off an answer may be, in the unit of the answer."""
    words = exercise.within.split()
    if words[-1].endswith("%"):
        return abs(answer) * float(exercise.within.rstrip("% ")) / 100
    return float(words[0])


def _draw(stream: random.Random, span: tuple[Any, ...]) -> Any:
    if all(isinstance(part, int | float) for part in span) and len(span) == 3:
        low, high, step = span
        count = round((high - low) / step)
        value = low + stream.randint(0, count) * step
        return value if isinstance(step, int) else float(half_up(value, 6))
    return stream.choice(span)


def practice_block(handbook: Handbook, calculators: list[Calculator]) -> str:
    """A few questions to try on paper, each with its answer folded away."""
    lines = "".join(
        handbook.kept.get(f"practice {calculator.name}", partial(_questions, calculator))
        for calculator in calculators
    )
    return f'<ol class="br-practice">{lines}</ol>' if lines else ""


def _questions(calculator: Calculator) -> str:
    made = []
    for exercise in calculator.exercises:
        question = draw_question(calculator, exercise, "printed")
        slips = "".join(
            f"<li>{escape(_slip_words(calculator, exercise, question, slip.name))}: "
            f"{escape(slip.why)}</li>"
            for slip in exercise.slips
        )
        because = (
            f"<p>If you had one of these, here is why it is wrong:</p><ul>{slips}</ul>"
            if slips
            else ""
        )
        made.append(
            f'<li><p>{escape(question.words)}</p><details class="br-fold"><summary>Answer</summary>'
            f"<p><strong>{escape(question.shown)}</strong> (within {escape(exercise.within)})</p>"
            f"{because}</details></li>"
        )
    return "".join(made)


def _slip_words(calculator: Calculator, exercise: Exercise, question: Question, slip: str) -> str:
    quantity = quantities(calculator)[exercise.asks]
    value = half_up(question.slips[slip], quantity.decimals)
    return f"{value} {quantity.unit}" if quantity.unit != "1" else value
