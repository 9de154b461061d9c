"""The lines of a build sheet as they go into files: numbers, limits, gauge, what was measured."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from calculators.engine.compute import quantities
from calculators.engine.judging import judge
from calculators.engine.reading import ReadingError, read_quantity
from calculators.engine.unit_table import UNITS

from ..build_sheet import Setting, StationSheet, build_sheet, gauge_of
from ..handbook import Handbook
from ..instruments import Instrument, instrument_of_order


class NoSuchOrder(LookupError):
    """An order that the handbook does not have; the message says which it has."""


@dataclass(frozen=True)
class Line:
    """One setting, with what a file needs to know of it."""

    station: str
    setting: Setting
    decimals: int
    limits: str  # in words, empty where there are none
    limits_also: str  # in the other system; empty where it would say the same
    gauge: str
    record: str  # what was measured, as it was written down
    measured: float | None  # the same as a number in the setting's unit
    verdict: str
    initials: str  # with the day

    @property
    def planned(self) -> float | None:
        """The planned value at full precision; None where the setting is words."""
        return None if isinstance(self.setting.value, str) else self.setting.value

    @property
    def unit(self) -> str:
        """The unit as people read it."""
        return UNITS[self.setting.unit].shown if self.setting.unit else ""

    def limit(self, name: str) -> float | None:
        """``low`` or ``high``."""
        own = self.setting.tolerance
        found: float | None = own.field(name) if own else None
        return found


@dataclass(frozen=True)
class OrderSheet:
    """An order's build sheet: the instrument, its stations, and the lines of each."""

    instrument: Instrument
    stations: list[StationSheet]
    lines: dict[str, list[Line]]  # by station

    @property
    def id(self) -> str:
        """The order's id."""
        return self.instrument.id

    @property
    def fields(self) -> Mapping[str, Any]:
        """What the order says."""
        assert self.instrument.order is not None
        found: Mapping[str, Any] = self.instrument.order.fields
        return found

    @property
    def model(self) -> str:
        """The name of its model."""
        return str(self.instrument.handbook.models[self.instrument.model].fields["name"])

    def all_lines(self) -> Iterator[Line]:
        """Every line, station by station."""
        for sheet in self.stations:
            yield from self.lines[sheet.station.id]

    def woods(self) -> Iterator[tuple[str, str, str]]:
        """Each part with its wood's name and botanical name."""
        woods = self.instrument.handbook.entries["materials"]
        for part, id in (self.fields.get("woods") or {}).items():
            yield (
                part.capitalize(),
                str(woods[id].fields["name"]),
                str(woods[id].fields["botanical"]),
            )

    def warnings(self) -> Iterator[tuple[str, str]]:
        """What has to be looked at before anything is cut: the station, and what it is."""
        for sheet in self.stations:
            for words in dict.fromkeys(sheet.warnings):
                yield sheet.station.title, words

    def texts(self) -> Iterator[str]:
        """Every text that its paper prints."""
        yield from (self.instrument.title, self.model, str(self.fields["summary"]))
        yield from self.fields.get("wishes") or ()
        for row in (*self.woods(), *self.warnings()):
            yield from row
        for line in self.all_lines():
            one = line.setting
            yield from (line.station, one.label, one.shown, one.also, line.limits, line.limits_also,
                        line.gauge, line.record, line.initials)  # fmt: skip


def order_sheet(handbook: Handbook, order: str) -> OrderSheet:
    """The build sheet of an order. NoSuchOrder where there is none of this id."""
    if order not in handbook.orders:
        there = f"there are {', '.join(handbook.orders)}" if handbook.orders else "there are none"
        raise NoSuchOrder(f"there is no order '{order}'; {there}")
    instrument = instrument_of_order(handbook, order)
    stations = build_sheet(instrument)
    lines = {one.station.id: [*_lines(instrument, one)] for one in stations}
    return OrderSheet(instrument, stations, lines)


def _lines(instrument: Instrument, sheet: StationSheet) -> Iterable[Line]:
    for one in sheet.settings:
        own, gauge = one.tolerance, gauge_of(instrument, one)
        record = sheet.measured.get(one.key) or {}
        text = str(record.get("value", ""))
        yield Line(
            station=sheet.station.title, setting=one, decimals=_decimals(instrument, one),
            limits=own.limits() if own else "", limits_also=own.also() if own else "",
            gauge=gauge["name"] if gauge else "", record=text, measured=_number(one, text),
            verdict=_verdict(one, gauge, text),
            initials=f"{record.get('by', '')} {record.get('on', '')}".strip(),
        )  # fmt: skip


def _decimals(instrument: Instrument, one: Setting) -> int:
    if one.tolerance is not None:
        return int(one.tolerance.field("decimals"))
    known = quantities(instrument.handbook.calculators[one.calculator])
    quantity = known.get(one.key.partition(".")[2])
    return quantity.decimals if quantity else 0


def _number(one: Setting, text: str) -> float | None:
    if not text or isinstance(one.value, str):
        return None
    try:
        return read_quantity(text, one.unit, one.unit)
    except ReadingError:
        return None


def _verdict(one: Setting, gauge: dict[str, Any] | None, text: str) -> str:
    own = one.tolerance
    if not text or own is None or gauge is None:
        return ""
    found = judge({
        "value": text, "unit": own.field("unit"), "decimals": own.field("decimals"),
        "low": own.field("low"), "high": own.field("high"), "units": "metric", "gauge": gauge,
    })  # fmt: skip
    return str(found.get("verdict", ""))
