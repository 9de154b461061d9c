"""The models' values fit the calculators, and what is calculated from them fits the tolerances."""

import re
from collections.abc import Iterator

from calculators.engine.compute import quantities
from calculators.engine.declaration import Calculator, Number
from calculators.engine.unit_table import UNITS

from ..data import Entry
from ..handbook import Handbook
from ..models import agreements, figures_for, values_for
from ..problems import Problem
from .data import limit_faults


def find_problems(handbook: Handbook) -> Iterator[Problem]:
    """Models whose values no calculator takes, or one refuses; limits that a calculation denies."""
    yield from _values(handbook)
    yield from _by_model(handbook)
    yield from _agreements(handbook)
    yield from _feeds(handbook)


def _values(handbook: Handbook) -> Iterator[Problem]:
    known = {item.name for one in handbook.calculators.values() for item in one.inputs}
    for model in handbook.models.values():
        for name in model.fields["values"]:
            if name not in known:
                yield model.problem(
                    f"no calculator asks '{name}'", "mend the name or remove it", "values", name
                )
        for name in model.fields.get("calculators") or ():
            if name not in handbook.calculators:
                yield model.problem(f"unknown calculator '{name}'", "mend it", "calculators", name)
        for calculator in handbook.calculators.values():
            if not values_for(model, calculator):
                continue
            yield from unitless(model, calculator)
            for refused in figures_for(handbook, model, calculator).get("refused", ()):
                yield model.problem(
                    f"{calculator.name} refuses {refused['input']} = {refused['given']}: "
                    f"{refused['why']}",
                    f"allowed: {refused['allowed']}", "values", refused["input"],
                )  # fmt: skip


def unitless(entry: Entry, calculator: Calculator) -> Iterator[Problem]:
    """Values that a shop of millimetres and one of inches would take for different things."""
    for item in calculator.inputs:
        given = entry.fields["values"].get(item.name) if isinstance(item, Number) else None
        if given is None or not isinstance(item, Number) or not UNITS[item.unit].inch:
            continue
        if str(given).strip("+-0., ") == "":
            continue  # nothing is nothing in any unit
        if UNITS[item.unit].inch != item.unit and re.fullmatch(r"\s*[-+]?[\d.,/ ]+", str(given)):
            yield entry.problem(
                f"{item.name}: {given} has no unit", f"write it, like {given} {item.unit}",
                "values", item.name,
            )  # fmt: skip


def _by_model(handbook: Handbook) -> Iterator[Problem]:
    for tolerance in handbook.tolerances.values():
        named = [*(tolerance.field("by_model") or ()), *(tolerance.field("applies_to") or ())]
        for id in named:
            if id not in handbook.models:
                yield tolerance.entry.problem(
                    f"unknown model '{id}'", "take one of " + ", ".join(handbook.models)
                )
        for id in tolerance.field("by_model") or ():
            own = tolerance.for_model(id)
            low, high, target = own.field("low"), own.field("high"), own.field("target")
            where = ("by_model", id)
            if low is None and high is None:
                yield own.entry.problem(f"{id} has neither low nor high", "give one", *where)
            for what, to_do, _ in limit_faults(low, high, target):
                yield own.entry.problem(f"{id}: {what}", to_do, *where)


def _feeds(handbook: Handbook) -> Iterator[Problem]:
    known = {item.name for one in handbook.calculators.values() for item in one.inputs}
    for tolerance in handbook.tolerances.values():
        for name in tolerance.field("feeds") or ():
            if name not in known:
                yield tolerance.entry.problem(
                    f"feeds '{name}', which no calculator asks", "mend the name", "feeds"
                )


def _agreements(handbook: Handbook) -> Iterator[Problem]:
    for tolerance in handbook.tolerances.values():
        named = tolerance.field("agrees_with")
        if not named:
            continue
        one = handbook.calculators.get(named["calculator"])
        if one is None or named["result"] not in quantities(one):
            yield tolerance.entry.problem(
                f"agrees with an unknown figure {named['calculator']}.{named['result']}",
                "name a calculator and one of its figures", "agrees_with",
            )  # fmt: skip
        elif (
            UNITS[quantities(one)[named["result"]].unit].kind != UNITS[tolerance.field("unit")].kind
        ):
            yield tolerance.entry.problem(
                f"is in {tolerance.field('unit')}, the calculation in another kind of unit",
                "name a figure of the same kind", "agrees_with",
            )  # fmt: skip
    for found in agreements(handbook):
        if not found.holds:
            yield found.tolerance.entry.problem(
                f"for {found.model} {found.calculator} works out {found.result} = "
                f"{found.tolerance.figure(found.value)}, outside {found.tolerance.limits()}",
                "mend the limits, or the model's values", "agrees_with",
            )  # fmt: skip
