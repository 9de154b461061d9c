"""A calculator's declaration and outside checks, gone through once for the check and the page."""

from typing import Any

from calculators.engine.checking import compare
from calculators.engine.declaration import Calculator
from calculators.engine.showing import SYSTEMS
from calculators.engine.soundness import find_faults
from calculators.learning.bank import draw
from calculators.learning.question import CannotDraw

from .handbook import Handbook


def faults_of(handbook: Handbook, calculator: Calculator) -> list[str]:
    """What is wrong with the declaration."""
    found: list[str] = handbook.kept.get(
        f"faults {calculator.name}", lambda: find_faults(calculator)
    )
    return found


def proof_of(handbook: Handbook, calculator: Calculator) -> list[list[dict[str, Any]]]:
    """For each outside check its figures: label, printed, ours, unit, agrees."""

    def make() -> list[list[dict[str, Any]]]:
        return [
            [
                {
                    "label": one.label, "printed": one.printed, "ours": one.ours, "unit": one.unit,
                    "difference": one.difference, "agrees": one.agrees,
                }
                for one in compare(calculator, check)
            ]
            for check in calculator.checks
        ]  # fmt: skip

    found: list[list[dict[str, Any]]] = handbook.kept.get(f"proof {calculator.name}", make)
    return found


def undrawable(handbook: Handbook, calculator: Calculator) -> list[str]:
    """The exercises that draw no question, in the words of their refusal."""

    def make() -> list[str]:
        found = []
        names = [exercise.name for exercise in calculator.exercises]
        names += [decision.name for decision in calculator.decisions]
        for name in names:
            for units in SYSTEMS:
                try:
                    draw({}, f"{calculator.name}/{name}", "check", 2, units)
                except CannotDraw as error:
                    found.append(str(error))
                    break
        return found

    found: list[str] = handbook.kept.get(f"undrawable {calculator.name}", make)
    return found
