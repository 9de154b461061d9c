"""Every table of the handbook as CSV, for spreadsheets and for other programs."""

from collections.abc import Callable, Iterable, Iterator, Sequence
from typing import Any

from calculators.engine.compute import work_out
from calculators.engine.declaration import Column
from calculators.engine.reading import convert
from calculators.engine.unit_table import UNITS
from calculators.learning.class_table import csv_text

from ..handbook import FIGURES, Handbook, Tolerance
from .sheet_csv import minus, number_text

Rows = Iterable[Sequence[Any]]
ALL = "all"  # in the column of models
BETWEEN = "; "  # the members of a list in one cell
DIGITS = 9  # of a converted figure; more are noise of the conversion


def handbook_tables(handbook: Handbook) -> dict[str, bytes]:
    """Each file's name and its content: UTF-8, heads first, no cell that becomes a formula."""
    made = {f"{name}.csv": _csv(heads, rows(handbook)) for name, (heads, rows) in TABLES.items()}
    for name, calculator in handbook.calculators.items():
        worked = work_out(calculator, {})
        if isinstance(worked, list):
            continue
        for table in calculator.tables:
            if table.name in worked.tables:
                columns = worked.columns[table.name]
                rows = [[row[one.name] for one in columns] for row in worked.tables[table.name]]
                made[f"{name}.{table.name}.csv"] = _csv([column_head(one) for one in columns], rows)
    return made


def column_head(column: Column) -> str:
    """A column's label with its unit."""
    unit = "" if column.text else UNITS[column.unit].shown
    return f"{column.label}, {unit}" if unit else column.label


def _csv(heads: Sequence[str], rows: Rows) -> bytes:
    return csv_text([heads, *([_text(cell) for cell in row] for row in rows)]).encode()


def _text(cell: Any) -> str:
    if cell is None:
        return ""
    if isinstance(cell, list | tuple):
        return BETWEEN.join(map(str, cell))
    return number_text(cell) if isinstance(cell, float) else str(cell)


def _tolerances(handbook: Handbook) -> Iterator[Sequence[Any]]:
    gauges = handbook.entries["gauges"]
    for tolerance in handbook.tolerances.values():
        station = handbook.station(tolerance.station)
        for models, own in _by_model(handbook, tolerance):
            unit, inch = own.field("unit"), UNITS[own.field("unit")].inch or own.field("unit")
            figures = [own.field(name) for name in FIGURES]
            theirs = [_converted(one, unit, inch) for one in figures]
            decided = own.field("decided") or {}
            yield (
                own.id, tolerance.station, station.title if station else "", models,
                own.field("feature"), own.field("part"), *figures, UNITS[unit].shown,
                *theirs, UNITS[inch].shown, own.field("decimals"), minus(own.limits()),
                minus(own.limits("inch")), own.field("gauge"),
                gauges[own.field("gauge")].fields["name"], own.field("measure"),
                own.field("reason"), own.field("when_out"), own.field("source"),
                decided.get("by"), decided.get("on"),
            )  # fmt: skip


def _by_model(handbook: Handbook, tolerance: Tolerance) -> Iterator[tuple[str, Tolerance]]:
    """A tolerance as it holds for each model; once where it is the same for all of them."""
    if not tolerance.field("by_model") and not tolerance.field("applies_to"):
        yield ALL, tolerance
        return
    for id in handbook.models:
        if tolerance.holds_for(id):
            yield id, tolerance.for_model(id)


def _converted(value: float | None, unit: str, to: str) -> float | None:
    return None if value is None else round(convert(value, unit, to), DIGITS)


def _gauges(handbook: Handbook) -> Iterator[Sequence[Any]]:
    for entry in handbook.entries["gauges"].values():
        one = entry.fields
        yield (entry.id, one["name"], one["resolution"], one["uncertainty"],
               UNITS[one["unit"]].shown, one.get("note"), one["source"])  # fmt: skip


def _hazards(handbook: Handbook) -> Iterator[Sequence[Any]]:
    for entry in handbook.entries["hazards"].values():
        one = entry.fields
        where = [
            station.id for station in handbook.stations if entry.id in station.field("hazards")
        ]
        yield (entry.id, one["name"], one["agent"], one["harm"], one["cautions"],
               one.get("protection"), one["defer"], where, one["source"])  # fmt: skip


def _hazard_limits(handbook: Handbook) -> Iterator[Sequence[Any]]:
    for entry in handbook.entries["hazards"].values():
        for one in entry.fields.get("limits") or ():
            yield (entry.id, one["what"], one["value"], one["unit"], one["source"], one["as_of"],
                   one.get("origin"))  # fmt: skip


def _glossary(handbook: Handbook) -> Iterator[Sequence[Any]]:
    terms = sorted(
        handbook.entries["glossary"].values(), key=lambda one: str(one.fields["term"]).lower()
    )
    for entry in terms:
        one = entry.fields
        yield entry.id, one["term"], one["meaning"], one.get("other_words"), one.get("see")


def _woods(handbook: Handbook) -> Iterator[Sequence[Any]]:
    for entry in handbook.entries["materials"].values():
        one, guard = entry.fields, entry.fields["protection"]
        yield (entry.id, one["name"], one["botanical"], one["group"], one["used_for"],
               one["looks_and_feel"], one["works"], one["go_wrong"], one["hazards"],
               one["spread"], guard["status"], guard["advice"], guard["as_of"],
               guard["source"])  # fmt: skip


def _wood_properties(handbook: Handbook) -> Iterator[Sequence[Any]]:
    for entry in handbook.entries["materials"].values():
        for one in entry.fields["properties"]:
            yield (entry.id, entry.fields["name"], one["name"], one["value"],
                   UNITS[one["unit"]].shown, one.get("at"), one["source"], one["origin"],
                   one.get("note"))  # fmt: skip


def _sources(handbook: Handbook) -> Iterator[Sequence[Any]]:
    for entry in handbook.entries["sources"].values():
        one = entry.fields
        yield (entry.id, *(one.get(name) for name in ("kind", "title", "author", "year", "link")))


TABLES: dict[str, tuple[tuple[str, ...], Callable[[Handbook], Rows]]] = {
    "tolerances": (
        ("Id", "Station id", "Station", "Model", "Feature", "Part", "Target", "Low", "High",
         "Unit", "Target, inch", "Low, inch", "High, inch", "Unit, inch", "Decimals", "Limits",
         "Limits, inch", "Gauge id", "Gauge", "How measured", "Reason", "When out", "Source",
         "Decided by", "Decided on"), _tolerances,
    ),
    "gauges": (
        ("Id", "Gauge", "Resolution", "Uncertainty (k = 2)", "Unit", "Note", "Source"), _gauges,
    ),
    "hazards": (
        ("Id", "Hazard", "Agent", "Harm", "Cautions", "Protection", "Defer to", "Stations",
         "Source"), _hazards,
    ),
    "hazard-limits": (
        ("Hazard id", "What", "Value", "Unit", "Source", "As of", "Origin"), _hazard_limits,
    ),
    "glossary": (("Id", "Term", "Meaning", "Other words", "See"), _glossary),
    "woods": (
        ("Id", "Wood", "Botanical name", "Group", "Used for", "Looks and feel", "Works",
         "Goes wrong", "Hazards", "Spread", "Protection", "Advice", "As of", "Source"), _woods,
    ),
    "wood-properties": (
        ("Wood id", "Wood", "Property", "Value", "Unit", "At", "Source", "Origin", "Note"),
        _wood_properties,
    ),
    "sources": (("Id", "Kind", "Title", "Author", "Year", "Link"), _sources),
}  # fmt: skip
