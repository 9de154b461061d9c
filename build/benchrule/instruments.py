"""An instrument to be built: a model of the shop, or an order with its changes to one.

Both give values to the calculators by the names of their inputs, so whatever is made for the one
(settings, templates, sheets) can be made for the other.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property
from typing import Any

from calculators.engine.compute import Answer, quantities, work_out
from calculators.engine.inputs import Refused
from calculators.engine.reading import convert
from calculators.engine.unit_table import UNITS

from .data import Entry
from .handbook import FIGURES, Handbook, Tolerance
from .models import is_for, values_for


@dataclass
class Instrument:
    """What the calculators are given for one instrument, and what they answered."""

    id: str
    title: str
    model: str
    entry: Entry  # a model's, or one made from an order: values and calculators
    handbook: Handbook
    order: Entry | None = None
    _worked: dict[str, Answer | list[Refused]] = field(default_factory=dict)

    @cached_property
    def usual(self) -> "Instrument":
        """Its model as it stands in the data, worked out once for all that is compared with it."""
        return instrument_of_model(self.handbook, self.model)

    def applies(self, calculator: str) -> bool:
        """Whether a calculator is for this instrument at all."""
        return is_for(self.handbook.calculators[calculator], self.entry)

    def given(self, calculator: str) -> Mapping[str, Any]:
        """What the calculator is given; the rest are its examples."""
        return values_for(self.entry, self.handbook.calculators[calculator])

    def worked(self, calculator: str) -> Answer | list[Refused]:
        """What the calculator works out for this instrument, or why it refuses."""
        if calculator not in self._worked:
            declared = self.handbook.calculators[calculator]
            given, units = self.given(calculator), self.handbook.units
            self._worked[calculator] = work_out(declared, given, units)
        return self._worked[calculator]


def instrument_of_model(handbook: Handbook, model: str) -> Instrument:
    """A model as it stands in the data; KeyError where there is none of this id."""
    entry = handbook.models[model]
    return Instrument(model, str(entry.fields["name"]), model, entry, handbook)


def instrument_of_order(handbook: Handbook, order: str) -> Instrument:
    """An order's instrument: its model, with the order's changes. KeyError where there is none."""
    entry = handbook.orders[order]
    model = handbook.models[str(entry.fields["model"])]
    own = dict(model.fields.get("calculators") or {})
    for name, values in (entry.fields.get("calculators") or {}).items():
        kept = own.get(name) or {}
        own[name] = None if values is None else {**kept, **values}
    fields = {
        "name": entry.fields["name"], "calculators": own,
        "values": {**model.fields["values"], **(entry.fields.get("values") or {})},
    }  # fmt: skip
    made = replace(entry, fields=fields)
    return Instrument(order, f"{order}: {entry.fields['name']}", model.id, made, handbook, entry)


def with_measured(instrument: Instrument, values: Mapping[str, str]) -> Instrument:
    """The instrument with what was measured in place of what was planned, by the inputs' names."""
    if not values:
        return instrument
    fields = instrument.entry.fields
    own = {
        name: given and {key: values.get(key, value) for key, value in given.items()}
        for name, given in fields["calculators"].items()
    }
    entry = replace(
        instrument.entry,
        fields={**fields, "values": {**fields["values"], **values}, "calculators": own},
    )
    return replace(instrument, entry=entry, _worked={})


def figure_of(instrument: Instrument, tolerance: Tolerance) -> float | None:
    """What is worked out for the thing that a tolerance limits, in its unit; None where nothing is."""
    named = tolerance.field("agrees_with")
    calculator = instrument.handbook.calculators.get(named["calculator"]) if named else None
    if calculator is None or not instrument.applies(calculator.name):
        return None
    worked = instrument.worked(calculator.name)
    value = None if isinstance(worked, list) else worked.values.get(named["result"])
    quantity = quantities(calculator).get(named["result"])
    if quantity is None or not isinstance(value, int | float):
        return None
    if UNITS[quantity.unit].kind != UNITS[tolerance.field("unit")].kind:
        return None
    return convert(value, quantity.unit, tolerance.field("unit"))


def limits_for(instrument: Instrument, tolerance: Tolerance) -> Tolerance:
    """A tolerance as it holds for this instrument.

    Where an order asks for another size than its model has, the limits move with it and stay as wide:
    a nut ordered 1 mm wider is held as closely as the usual one.
    """
    own = tolerance.for_model(instrument.model)
    named = tolerance.field("agrees_with")
    if instrument.order is None:
        return own
    agreed = (instrument.order.fields.get("limits") or {}).get(tolerance.id)
    if agreed:
        rest = {name: value for name, value in own.entry.fields.items() if name not in FIGURES}
        return own.with_fields({**rest, **agreed})
    if not named:
        return own
    calculator = instrument.handbook.calculators.get(named["calculator"])
    if calculator is None or named["result"] not in {item.name for item in calculator.inputs}:
        return own
    here = figure_of(instrument, own)
    usual = figure_of(instrument.usual, own)
    if here is None or usual is None or here == usual:
        return own
    moved = {
        name: round(own.field(name) + here - usual, 9)
        for name in FIGURES
        if own.field(name) is not None
    }
    return own.with_fields({**own.entry.fields, **moved})


def feeds_of(handbook: Handbook) -> dict[str, list[str]]:
    """Which inputs a measured value gives to the stations that follow, by the limit's id.

    A limit names them (``feeds``); else it gives the input that it agrees with.
    """
    found = {}
    for tolerance in handbook.tolerances.values():
        named = tolerance.field("feeds")
        agrees = tolerance.field("agrees_with")
        if not named and agrees:
            calculator = handbook.calculators.get(agrees["calculator"])
            inputs = {item.name for item in calculator.inputs} if calculator else set()
            named = [agrees["result"]] if agrees["result"] in inputs else []
        if named:
            found[tolerance.id] = list(named)
    return found
