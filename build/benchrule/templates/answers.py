"""What the calculators answered for an instrument, or in words why a template cannot be made."""

from collections.abc import Collection, Mapping

from calculators.engine.compute import Answer
from calculators.engine.showing import half_up

from ..instruments import Instrument


class CannotMake(ValueError):
    """Why there is no such template of this instrument: sentences that say what to do."""


def is_for(instrument: Instrument, calculator: str) -> bool:
    """Whether the handbook has this calculator, and the instrument is one for it."""
    return calculator in instrument.handbook.calculators and instrument.applies(calculator)


def answer_of(instrument: Instrument, calculator: str) -> Answer:
    """What a calculator works out; CannotMake with its refusals, or where it is not for this one."""
    if not is_for(instrument, calculator):
        raise CannotMake(
            f"The calculator {calculator} is not for {instrument.title}; there is nothing to draw."
        )
    found = instrument.worked(calculator)
    if isinstance(found, list):
        title = instrument.handbook.calculators[calculator].title
        reasons = [
            f"{one.input}: {one.why.rstrip('.')}. Given: {one.given or 'nothing'}. "
            f"Allowed: {one.allowed.rstrip('.')}."
            for one in found
        ]
        raise CannotMake(f"{title} has no answer for {instrument.title}. {' '.join(reasons)}")
    return found


def taken_from(instrument: Instrument, calculator: str) -> Answer | None:
    """As ``answer_of``, but None where the calculator is not for this instrument."""
    return answer_of(instrument, calculator) if is_for(instrument, calculator) else None


def example_notes(instrument: Instrument, asked: Mapping[str, Collection[str]]) -> list[str]:
    """A sentence that names the inputs which the instrument does not give; none where it gives all.

    ``asked`` names a calculator's inputs that matter; calculators that are not for this instrument
    are passed over. What is not given stands at the calculator's example, and whoever cuts by it
    has to know.
    """
    missing = []
    for calculator, inputs in asked.items():
        answer = taken_from(instrument, calculator)
        if answer is None:
            continue
        given = instrument.given(calculator)
        missing += [
            item.label[0].lower() + item.label[1:]
            for item in answer.calculator.inputs
            if item.name in inputs and item.name not in given and item.name in answer.values
        ]
    if not missing:
        return []
    return [f"Not given for this instrument, taken from an example: {'; '.join(missing)}."]


def mm(value: float, decimals: int = 2) -> str:
    """A length as it is printed on a template, without its unit."""
    return half_up(value, decimals)
