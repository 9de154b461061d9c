"""Practice at the end of a page: the place for the live exercises, and some questions on paper."""

from collections.abc import Iterable
from functools import partial

from calculators.engine.declaration import Calculator
from calculators.engine.text import escape
from calculators.learning.numbers import draw_number

from ..exercise_bank import exercises_of
from ..handbook import Handbook, Station

SEED = "printed"


def station_practice(handbook: Handbook, station: Station) -> str:
    """Every exercise of a station."""
    exercises = exercises_of(handbook, station)
    names = station.field("calculators") or ()
    return _live(station.id, exercises) + _on_paper(handbook, names)


def calculator_practice(handbook: Handbook, name: str) -> str:
    """The exercises of one calculator."""
    calculator = handbook.calculators[name]
    exercises = [
        *(f"{name}/{exercise.name}" for exercise in calculator.exercises),
        *(f"{name}/{decision.name}" for decision in calculator.decisions),
    ]
    return _live(f"calculator-{name}", exercises) + _on_paper(handbook, [name])


def _live(key: str, exercises: list[str]) -> str:
    """The script fills this in; without one it stays out of sight."""
    if not exercises:
        return ""
    return (
        f'<section class="br-practice-live" data-practice="{escape(key)}" aria-label="Practice" '
        f'data-exercises="{escape(" ".join(exercises))}" hidden></section>'
    )


def _on_paper(handbook: Handbook, names: Iterable[str]) -> str:
    """A question of each exercise with a number, its answer folded away."""
    lines = "".join(
        handbook.kept.get(
            f"practice {name} {handbook.units}",
            partial(_questions, handbook.calculators[name], handbook.units),
        )
        for name in names
    )
    return f'<ol class="br-practice">{lines}</ol>' if lines else ""


def _questions(calculator: Calculator, units: str) -> str:
    made = []
    for exercise in calculator.exercises:
        question = draw_number(calculator, exercise, SEED, 2, units)
        slips = "".join(
            f"<li>{escape(slip.shown)}: {escape(slip.why)}</li>" for slip in question.slips
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
