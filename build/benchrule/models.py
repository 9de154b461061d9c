"""The shop's instrument models: what each gives to a calculator, and where tolerance and
calculation must agree."""

import json
from collections.abc import Iterator
from dataclasses import asdict, dataclass
from typing import Any

from calculators.engine.compute import quantities, work_out
from calculators.engine.declaration import Calculator
from calculators.engine.reading import convert
from calculators.engine.unit_table import UNITS

from .data import Entry
from .handbook import Handbook, Tolerance


def is_for(calculator: Calculator, model: Entry) -> bool:
    """Whether a calculator is for a model at all: ``null`` under its name says that it is not."""
    own = model.fields.get("calculators") or {}
    return own.get(calculator.name, {}) is not None


def values_for(model: Entry, calculator: Calculator) -> dict[str, Any]:
    """What a model gives to a calculator's inputs, by name.

    Nothing where the model says that the calculator is not for it.
    """
    if not is_for(calculator, model):
        return {}
    own = model.fields.get("calculators") or {}
    shared = model.fields["values"]
    found = {item.name: shared[item.name] for item in calculator.inputs if item.name in shared}
    return {**found, **own.get(calculator.name, {})}


def figures_for(handbook: Handbook, model: Entry, calculator: Calculator) -> dict[str, Any]:
    """What a calculator works out for a model: ``{"figures": {name: number}}``.

    Or ``{"refused": [{"input", "given", "allowed", "why"}]}``.
    """
    given = values_for(model, calculator)

    def make() -> dict[str, Any]:
        worked = work_out(calculator, given)
        if isinstance(worked, list):
            return {"refused": [asdict(one) for one in worked]}
        known = quantities(calculator)
        return {
            "figures": {
                name: value
                for name, value in worked.values.items()
                if name in known and isinstance(value, int | float)
            }
        }

    name = f"figures {calculator.name} {json.dumps(given, sort_keys=True)}"
    found: dict[str, Any] = handbook.kept.get(name, make)
    return found


@dataclass(frozen=True)
class Agreement:
    """A tolerance beside what a calculator works out for a model."""

    tolerance: Tolerance  # with the model's own figures
    model: str
    calculator: str
    result: str
    value: float  # in the tolerance's unit

    @property
    def holds(self) -> bool:
        """Whether the calculated figure lies within the limits."""
        low, high = self.tolerance.field("low"), self.tolerance.field("high")
        return (low is None or self.value >= low) and (high is None or self.value <= high)


def agreements(handbook: Handbook) -> Iterator[Agreement]:
    """Every tolerance that names a calculation, for every model that has the thing.

    What the check of the models finds fault with is left out.
    """
    for tolerance in handbook.tolerances.values():
        named = tolerance.field("agrees_with")
        calculator = handbook.calculators.get(named["calculator"]) if named else None
        if not named or calculator is None:
            continue
        for id, model in handbook.models.items():
            if not tolerance.holds_for(id) or not is_for(calculator, model):
                continue
            figures = figures_for(handbook, model, calculator).get("figures", {})
            if named["result"] not in figures:
                continue
            unit = quantities(calculator)[named["result"]].unit
            if UNITS[unit].kind != UNITS[tolerance.field("unit")].kind:
                continue
            value = convert(figures[named["result"]], unit, tolerance.field("unit"))
            yield Agreement(tolerance.for_model(id), id, calculator.name, named["result"], value)
