"""A reading against a tolerance of the handbook, for the command line and for records."""

from typing import Any

from calculators.engine.judging import judge

from .data import Entry
from .handbook import Handbook


def gauge_facts(gauge: Entry) -> dict[str, Any]:
    """What a verdict needs to know of a gauge."""
    return {name: gauge.fields[name] for name in ("name", "resolution", "unit", "uncertainty")}


class CannotMeasure(ValueError):
    """A tolerance, model or gauge that is not there; the message says which are."""


def measured(
    handbook: Handbook, tolerance_id: str, reading: str, model: str = "", gauge: str = "",
    units: str = "",
) -> dict[str, Any]:  # fmt: skip
    """The verdict on ``reading`` by the rule of ``calculators.engine.judging``.

    ``model`` and ``gauge`` are ids; left out, the general limits and the tolerance's own gauge.
    ``units`` is the shop's own system where it is left out.
    """
    units = units or handbook.units
    tolerance = handbook.tolerances.get(tolerance_id)
    if tolerance is None:
        near = [id for id in handbook.tolerances if tolerance_id in id]
        raise CannotMeasure(
            f"there is no tolerance '{tolerance_id}'"
            + (f"; did you mean {', '.join(near[:6])}?" if near else "")
        )
    if model and model not in handbook.models:
        raise CannotMeasure(f"there is no model '{model}'; there are {', '.join(handbook.models)}")
    if model and not tolerance.holds_for(model):
        raise CannotMeasure(f"{model} does not have this")
    gauges = handbook.entries["gauges"]
    if gauge and gauge not in gauges:
        raise CannotMeasure(f"there is no gauge '{gauge}'; the list is in docs/data/gauges")
    own = tolerance.for_model(model)
    found = judge({
        "value": reading, "unit": own.field("unit"), "decimals": own.field("decimals"),
        "low": own.field("low"), "high": own.field("high"), "units": units,
        "gauge": gauge_facts(gauges[gauge or own.field("gauge")]),
    })  # fmt: skip
    if found.get("verdict") == "reject":
        found["mend"] = own.field("when_out")
    return {"tolerance": tolerance_id, "limits": own.limits(units), **found}
