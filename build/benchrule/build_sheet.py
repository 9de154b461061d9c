"""The settings of one instrument, station by station: what is worked out for it, and how near.

Made from the same calculators and limits that the handbook shows; the build sheet's page, its CSV and
XLSX, the comparison and the records read it.
"""

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Any

from calculators.engine.compute import Answer, Say
from calculators.engine.declaration import Said
from calculators.engine.formula import parse

from .handbook import Station, Tolerance
from .instruments import Instrument, feeds_of, figure_of, limits_for, with_measured
from .measuring import gauge_facts


@dataclass(frozen=True)
class Setting:
    """One line of the sheet. ``value`` is a number in ``unit``, or words."""

    key: str  # the limit's id, or calculator.result
    label: str
    value: float | str
    unit: str
    shown: str
    inch: str
    also: str  # in the system that the shop does not read first
    calculator: str
    tolerance: Tolerance | None = None  # as it holds for this instrument

    def facts(self) -> dict[str, Any]:
        """The line as plain data, for the page and for files."""
        own = self.tolerance
        limits = {"low": own.field("low"), "high": own.field("high"), "limits": own.limits(),
                  "decimals": own.field("decimals")} if own else {}  # fmt: skip
        return {
            "label": self.label, "value": self.value, "unit": self.unit, "shown": self.shown,
            "inch": self.inch, "calculator": self.calculator, **limits,
        }  # fmt: skip


@dataclass
class StationSheet:
    """What one station sets for this instrument."""

    station: Station
    settings: list[Setting] = field(default_factory=list)
    answers: list[Answer] = field(default_factory=list)  # whose tables belong here
    warnings: list[str] = field(default_factory=list)  # what a calculator refuses or warns of
    measured: dict[str, Any] = field(default_factory=dict)  # records, by key


def build_sheet(instrument: Instrument) -> list[StationSheet]:
    """Every station that sets something for this instrument, in the order of the work."""
    limited = _limited(instrument)
    records = instrument.handbook.records(instrument.id)
    feeds = feeds_of(instrument.handbook)
    measured: dict[str, str] = {}
    sheets = []
    known = instrument  # with what was measured so far on its way through the shop
    for station in instrument.handbook.stations:
        sheet = _station_sheet(known, station, limited)
        sheets.append(sheet)
        found = {
            name: records[one.key]["value"]
            for one in sheet.settings
            if one.key in records
            for name in feeds.get(one.key, ())
        }
        if found:
            measured |= found
            known = with_measured(instrument, measured)
            sheet.settings = _settings_again(sheet, _station_sheet(known, station, limited))
        for one in sheet.settings:
            if one.key in records:
                sheet.measured[one.key] = records[one.key]
    return [sheet for sheet in sheets if sheet.settings or sheet.warnings]


def _settings_again(before: StationSheet, after: StationSheet) -> list[Setting]:
    """A station's settings with what was measured there; what was measured itself stays as planned."""
    new = {one.key: one for one in after.settings}
    return [one if one.tolerance else new.get(one.key, one) for one in before.settings]


def _limited(instrument: Instrument) -> dict[str, list[Tolerance]]:
    """The limits that agree with a calculation, as they hold for this instrument, by station."""
    found: dict[str, list[Tolerance]] = {}
    for tolerance in instrument.handbook.tolerances.values():
        if tolerance.field("agrees_with") and tolerance.holds_for(instrument.model):
            own = limits_for(instrument, tolerance)
            if figure_of(instrument, own) is not None:
                found.setdefault(tolerance.station, []).append(own)
    return found


def _station_sheet(
    instrument: Instrument, station: Station, limited: dict[str, list[Tolerance]]
) -> StationSheet:
    sheet = StationSheet(station)
    settled = set()
    for own in limited.get(station.id, ()):
        value = figure_of(instrument, own)
        assert value is not None
        named = own.field("agrees_with")
        settled.add(f"{named['calculator']}.{named['result']}")
        sheet.settings.append(
            Setting(own.id, own.field("feature"), value, own.field("unit"), own.figure(value),
                    own.figure(value, "inch"), own.figure(value, _other(own.units)),
                    named["calculator"], own)
        )  # fmt: skip
    for name in station.field("calculators") or ():
        if not instrument.applies(name) or not instrument.given(name):
            continue  # not for this instrument, or the same for every one
        worked = instrument.worked(name)
        title = instrument.handbook.calculators[name].title
        if isinstance(worked, list):
            sheet.warnings += [f"{title}: {one.why}. Allowed: {one.allowed}." for one in worked]
            continue
        sheet.warnings += [
            f"{title}: {words}" for words in _warnings(worked, instrument.handbook.units)
        ]
        units = instrument.handbook.units
        sheet.settings += [one for one in _settings(worked, units) if one.key not in settled]
        sheet.answers.append(worked)
    return sheet


def _other(units: str) -> str:
    return "inch" if units == "metric" else "metric"


def _settings(worked: Answer, units: str) -> Iterator[Setting]:
    """The results of first rank."""
    calculator = worked.calculator
    first, inch, other = (
        Say(calculator, worked.values, system) for system in (units, "inch", _other(units))
    )
    said = {item.name: item.label for item in calculator.work if isinstance(item, Said)}
    for name in calculator.results:
        if name not in worked.values or name in calculator.aside:
            continue
        value, key = worked.values[name], f"{calculator.name}.{name}"
        if name in said:
            yield Setting(key, said[name], str(value), "", str(value), "", "", calculator.name)
        elif isinstance(value, int | float):
            quantity = first.quantities[name]
            yield Setting(key, quantity.label, value, quantity.unit, first(name), inch(name),
                          other(name), calculator.name)  # fmt: skip


def _warnings(worked: Answer, units: str) -> Iterator[str]:
    """The cautions that hold for these figures alone."""
    say = Say(worked.calculator, worked.values, units)
    for caution in worked.calculator.cautions:
        if caution.only_if and parse(caution.only_if).evaluate(worked.values):
            yield say.fill(caution.text)


def sheet_facts(instrument: Instrument, sheets: list[StationSheet]) -> dict[str, Any]:
    """The whole sheet as plain data: for the comparison, for records and for files."""
    return {
        "id": instrument.id, "title": instrument.title, "model": instrument.model,
        "stations": [
            {
                "id": sheet.station.id, "title": sheet.station.title,
                "page": sheet.station.page.source.removesuffix(".md"),
                "settings": {one.key: one.facts() for one in sheet.settings},
            }
            for sheet in sheets
        ],
    }  # fmt: skip


def differences(
    one: dict[str, Any], other: dict[str, Any]
) -> list[tuple[str, str, str, str]]:  # fmt: skip
    """What the bench does differently for ``one`` than for ``other``: station, what, and both figures."""
    found = []
    theirs = {
        (station["id"], key): fact
        for station in other["stations"]
        for key, fact in station["settings"].items()
    }
    for station in one["stations"]:
        for key, fact in station["settings"].items():
            before = theirs.pop((station["id"], key), None)
            if before is None or before["shown"] != fact["shown"]:
                shown = before["shown"] if before else "not set"
                found.append((station["title"], fact["label"], fact["shown"], shown))
    titles = {station["id"]: station["title"] for station in other["stations"]}
    found += [
        (titles[id], fact["label"], "not set", fact["shown"]) for (id, _), fact in theirs.items()
    ]
    return found


def gauge_of(instrument: Instrument, setting: Setting) -> dict[str, Any] | None:
    """The facts of the gauge that a limited setting is measured with."""
    if setting.tolerance is None:
        return None
    return gauge_facts(instrument.handbook.entries["gauges"][setting.tolerance.field("gauge")])
