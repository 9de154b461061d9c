"""Orders: their model and woods are there, the calculators take their values, the limits hold."""

from collections.abc import Iterator
from datetime import date

from calculators.engine.declaration import Calculator
from calculators.engine.inputs import Refused, read_inputs

from ..data import Entry
from ..handbook import Handbook, Tolerance
from ..instruments import Instrument, figure_of, instrument_of_order, limits_for
from ..problems import Problem
from .data import limit_faults
from .models import unitless


def find_problems(handbook: Handbook) -> Iterator[Problem]:
    """Every mistake of every order, each with its line."""
    known = {item.name for one in handbook.calculators.values() for item in one.inputs}
    for order in handbook.orders.values():
        yield from _names(handbook, order, known)
        yield from _dates(order)
        if order.fields["model"] in handbook.models:
            instrument = instrument_of_order(handbook, order.id)
            yield from _values(instrument, order)
            yield from _limits(instrument, order)


def _names(handbook: Handbook, order: Entry, known: set[str]) -> Iterator[Problem]:
    model = order.fields["model"]
    if model not in handbook.models:
        allowed = ", ".join(handbook.models)
        yield order.problem(f"unknown model '{model}'", f"take one of {allowed}", "model")
    for part, wood in (order.fields.get("woods") or {}).items():
        if wood not in handbook.entries["materials"]:
            allowed = ", ".join(handbook.entries["materials"])
            yield order.problem(
                f"unknown wood '{wood}' for the {part}",
                f"take one of {allowed}, or add it to docs/data/materials", "woods", part,
            )  # fmt: skip
    if order.fields.get("values"):
        for one in handbook.calculators.values():
            yield from unitless(order, one)
    for name in order.fields.get("values") or ():
        if name not in known:
            yield order.problem(
                f"no calculator asks '{name}'", "mend the name or remove it", "values", name
            )
    for name, limits in (order.fields.get("limits") or {}).items():
        if name not in handbook.tolerances:
            yield order.problem(f"unknown limit '{name}'", "mend the id", "limits", name)
        low, high, target = (limits.get(one) for one in ("low", "high", "target"))
        for what, to_do, _ in limit_faults(low, high, target):
            yield order.problem(f"{name}: {what}", to_do, "limits", name)
    for name, values in (order.fields.get("calculators") or {}).items():
        calculator = handbook.calculators.get(name)
        if calculator is None:
            yield order.problem(f"unknown calculator '{name}'", "mend it", "calculators", name)
            continue
        inputs = {item.name for item in calculator.inputs}
        for input in values or ():
            if input not in inputs:
                yield order.problem(
                    f"{name} has no input '{input}'", f"take one of {', '.join(sorted(inputs))}",
                    "calculators", name, input,
                )  # fmt: skip


def _dates(order: Entry) -> Iterator[Problem]:
    days = {}
    for name in ("ordered", "due"):
        try:
            days[name] = date.fromisoformat(order.fields[name])
        except ValueError:
            yield order.problem(f"{order.fields[name]} is no day", "write a real date", name)
    if len(days) == 2 and days["due"] <= days["ordered"]:
        yield order.problem("is due before it was ordered", "mend one of the dates", "due")


def _values(instrument: Instrument, order: Entry) -> Iterator[Problem]:
    """Values that a calculator cannot read or that are past its range.

    What a calculation refuses on its way (a curve too tight for its side) is no mistake of the
    order: it stands at the top of the build sheet.
    """
    for name, calculator in instrument.handbook.calculators.items():
        if not instrument.applies(name):
            continue
        given = {
            key: value
            for key, value in instrument.given(name).items()
            if any(item.name == key for item in calculator.inputs)
        }
        for refused in read_inputs(calculator, given, "metric")[1]:
            yield order.problem(
                f"{name} refuses {refused.input} = {refused.given}: {refused.why}",
                f"allowed: {refused.allowed}", *_where(order, calculator, refused),
            )  # fmt: skip


def _where(order: Entry, calculator: Calculator, refused: Refused) -> tuple[str, ...]:
    """The place of a value in the order; its model's line where it is not the order's own."""
    name = refused.input.partition("[")[0]
    own = (order.fields.get("calculators") or {}).get(calculator.name) or {}
    if name in own:
        return ("calculators", calculator.name, name)
    return ("values", name) if name in (order.fields.get("values") or {}) else ("model",)


def _limits(instrument: Instrument, order: Entry) -> Iterator[Problem]:
    """What is worked out for the order, against the limits that say they agree with it."""
    for tolerance in instrument.handbook.tolerances.values():
        if not tolerance.holds_for(instrument.model):
            continue
        own = limits_for(instrument, tolerance)
        yield from _not_worked_out(instrument, own, order)
        here = figure_of(instrument, own)
        if here is None:
            continue
        named = own.field("agrees_with")
        calculator = instrument.handbook.calculators[named["calculator"]]
        low, high = own.field("low"), own.field("high")
        if (low is not None and here < low) or (high is not None and here > high):
            yield order.problem(
                f"{own.field('feature')} comes out at {own.figure(here)}, outside {own.limits()} "
                f"({tolerance.id})",
                f"change what {calculator.name} is given, or agree another limit for this order",
                *_nearest(order, calculator, named["result"]),
            )  # fmt: skip


def _not_worked_out(
    instrument: Instrument, tolerance: Tolerance, order: Entry
) -> Iterator[Problem]:
    """A limited figure that the calculation refuses: a film that would end thinner than the least."""
    named = tolerance.field("agrees_with")
    calculator = instrument.handbook.calculators.get(named["calculator"]) if named else None
    if calculator is None or not instrument.applies(calculator.name):
        return
    if any(item.name == named["result"] for item in calculator.inputs):
        return  # it is given, not worked out
    given = instrument.given(calculator.name)
    worked = instrument.worked(calculator.name)
    if isinstance(worked, list) and not read_inputs(calculator, given, "metric")[1]:
        yield order.problem(
            f"{tolerance.field('feature')} cannot be worked out, {calculator.name} refuses: "
            f"{worked[0].why}",
            f"allowed: {worked[0].allowed}", *_nearest(order, calculator, named["result"]),
        )  # fmt: skip


def _nearest(order: Entry, calculator: Calculator, result: str) -> tuple[str, ...]:
    """The line of the order that most likely moved a figure."""
    if (order.fields.get("calculators") or {}).get(calculator.name):
        return ("calculators", calculator.name)
    return ("values", result) if result in (order.fields.get("values") or {}) else ("model",)
