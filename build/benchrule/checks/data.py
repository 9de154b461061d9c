"""Entries of docs/data against each other: units, gauges, sources, stations, limits."""

from collections.abc import Iterator

from calculators.engine.judging import accepts_nothing, uncertainty_in
from calculators.engine.unit_table import UNITS

from ..data import Entry
from ..handbook import Handbook
from ..problems import Problem

NEEDS_DECISION = "shop-decision"


def find_problems(handbook: Handbook) -> Iterator[Problem]:
    """Unknown ids, impossible limits, gauges too coarse, decisions without role and date."""
    entries = handbook.entries
    for kind in ("gauges", "hazards", "tolerances", "models"):
        for entry in entries[kind].values():
            yield from _source(handbook, entry, entry.fields["source"], "source")
            if "unit" in entry.fields and entry.fields["unit"] not in UNITS:
                yield entry.problem(
                    f"unknown unit '{entry.fields['unit']}'",
                    "use one of " + ", ".join(UNITS), "unit",
                )  # fmt: skip
    for entry in entries["hazards"].values():
        for number, limit in enumerate(entry.fields.get("limits", [])):
            yield from _source(handbook, entry, limit["source"], "limits", number, "source")
    for entry in entries["glossary"].values():
        for number, id in enumerate(entry.fields.get("see", [])):
            if id not in entries["glossary"]:
                yield entry.problem(
                    f"sees unknown term '{id}'", "add the term or mend the id", "see", number
                )
        name = entry.fields.get("drawing")
        if name and not (handbook.docs / "drawings" / f"{name}.svg").exists():
            yield entry.problem(f"no drawing '{name}'", "draw it or mend the name", "drawing")
    for entry in entries["materials"].values():
        yield from _material(handbook, entry)
    for entry in entries["tolerances"].values():
        yield from _tolerance(handbook, entry)


def _material(handbook: Handbook, entry: Entry) -> Iterator[Problem]:
    for number, id in enumerate(entry.fields["hazards"]):
        if id not in handbook.entries["hazards"]:
            yield entry.problem(
                f"unknown hazard '{id}'", "add it to docs/data/hazards", "hazards", number
            )
    for number, one in enumerate(entry.fields["properties"]):
        yield from _source(handbook, entry, one["source"], "properties", number, "source")
        if one["unit"] not in UNITS:
            yield entry.problem(
                f"unknown unit '{one['unit']}'", "use one of " + ", ".join(UNITS),
                "properties", number, "unit",
            )  # fmt: skip
    yield from _source(
        handbook, entry, entry.fields["protection"]["source"], "protection", "source"
    )


def _source(handbook: Handbook, entry: Entry, id: str, *path: str | int) -> Iterator[Problem]:
    if id not in handbook.entries["sources"]:
        yield entry.problem(
            f"unknown source '{id}'", "add it to docs/data/sources or mend the id", *path
        )


def limit_faults(
    low: float | None, high: float | None, target: float | None
) -> Iterator[tuple[str, str, str]]:
    """What is wrong with limits among themselves: what, what to do, the field to mend."""
    if low is not None and high is not None and low > high:
        yield "low lies above high", "swap or mend the limits", "low"
    if target is not None and not (
        (low is None or low <= target) and (high is None or target <= high)
    ):
        yield "the target lies outside the limits", "mend one of them", "target"


def _tolerance(handbook: Handbook, entry: Entry) -> Iterator[Problem]:
    fields = entry.fields
    low, high, target = (fields.get(name) for name in ("low", "high", "target"))
    for what, to_do, field in limit_faults(low, high, target):
        yield entry.problem(what, to_do, field)
    if fields["source"] == NEEDS_DECISION and "decided" not in fields:
        yield entry.problem(
            "decided by the shop, but not by whom and when", "add decided: {by, on}", "source"
        )
    if handbook.station(entry.stem) is None:
        yield entry.problem(
            f"its file names no station '{entry.stem}'", "name the file as the station's page"
        )
    gauge = handbook.entries["gauges"].get(fields["gauge"])
    if gauge is None:
        yield entry.problem(
            f"unknown gauge '{fields['gauge']}'", "add it to docs/data/gauges", "gauge"
        )
        return
    same_kind = (
        fields["unit"] in UNITS
        and gauge.fields["unit"] in UNITS
        and UNITS[fields["unit"]].kind == UNITS[gauge.fields["unit"]].kind
    )
    if same_kind:
        uncertainty = uncertainty_in(
            gauge.fields["uncertainty"], gauge.fields["unit"], fields["unit"]
        )
        if accepts_nothing(low, high, uncertainty):
            yield entry.problem(
                f"{gauge.fields['name']} can accept no reading: its uncertainty is wider than half "
                "of the limits", "take a finer gauge or wider limits", "gauge",
            )  # fmt: skip
    else:
        yield entry.problem(
            f"measured in {fields['unit']} by a gauge that reads {gauge.fields['unit']}",
            "take a gauge that reads this quantity", "gauge",
        )  # fmt: skip
