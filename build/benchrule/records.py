"""Measured values of an order, back in the data: read against its build sheet, judged, written."""

from collections.abc import Mapping
from datetime import date
from pathlib import Path
from typing import Any

import yaml

from calculators.engine.judging import judge
from calculators.engine.reading import ReadingError, read_quantity
from calculators.engine.showing import SYSTEMS, reader_unit
from calculators.engine.strangers import TooLong, UnfitText, clean, is_clean, read_json
from calculators.learning.assignment import is_day

from .build_sheet import Setting, build_sheet, gauge_of
from .handbook import Handbook
from .instruments import Instrument, instrument_of_order

LARGEST_FILE = 1_000_000  # characters
LONGEST_KEY = 120


class CannotRecord(ValueError):
    """An order, station, setting or reading that does not fit; the message says what does."""


def settings_of(handbook: Handbook, order: str) -> tuple[Instrument, dict[str, dict[str, Setting]]]:
    """An order's instrument, and its settings with a number, by station and key."""
    if order not in handbook.orders:
        raise CannotRecord(f"there is no order '{order}'; there are {', '.join(handbook.orders)}")
    instrument = instrument_of_order(handbook, order)
    found = {
        sheet.station.id: {one.key: one for one in sheet.settings if not isinstance(one.value, str)}
        for sheet in build_sheet(instrument)
    }
    return instrument, found


def recorded(
    handbook: Handbook, order: str, station: str, readings: Mapping[str, str], units: str = "metric"
) -> dict[str, dict[str, Any]]:
    """Each reading judged: ``{"value", "verdict", "words"}`` by key; CannotRecord where one is none."""
    instrument, stations = settings_of(handbook, order)
    if station not in stations:
        raise CannotRecord(
            f"{station} sets nothing for {order}; stations that do: {', '.join(stations)}"
        )
    return {
        key: _read(instrument, _setting(stations[station], key, station), reading, units)
        for key, reading in readings.items()
    }


def _setting(settings: Mapping[str, Setting], name: str, station: str) -> Setting:
    """A setting by its key, or by a result's name where only one calculator has it."""
    if name in settings:
        return settings[name]
    near = [key for key in settings if key.partition(".")[2] == name or name in key]
    exact = [key for key in near if key.partition(".")[2] == name]
    if len(exact) == 1:
        return settings[exact[0]]
    hint = f"did you mean {', '.join(near[:6])}" if near else f"there are {', '.join(settings)}"
    raise CannotRecord(f"{station} has no setting '{name}'; {hint}")


def _read(instrument: Instrument, one: Setting, reading: str, units: str) -> dict[str, Any]:
    own, gauge = one.tolerance, gauge_of(instrument, one)
    unit = own.field("unit") if own else one.unit
    try:
        value = read_quantity(reading, unit, reader_unit(unit, units))
    except ReadingError as error:
        raise CannotRecord(f"{one.label}: {reading} {error}") from None
    kept = f"{value!r} {unit}".replace(" 1", "") if unit == "1" else f"{value!r} {unit}"
    if own is None or gauge is None:
        return {"key": one.key, "value": kept, "verdict": "", "words": f"{one.label}: noted."}
    found = judge({
        "value": reading, "unit": unit, "decimals": own.field("decimals"), "low": own.field("low"),
        "high": own.field("high"), "units": units, "gauge": gauge,
    })  # fmt: skip
    words = f"{one.label}: {found['words']}"
    if found["verdict"] == "reject":
        words += f" {own.field('when_out')}"
    return {"key": one.key, "value": kept, "verdict": found["verdict"], "words": words}


def device_text(path: Path) -> str:
    """The text of a file that a device is said to have saved; CannotRecord where it has none."""
    try:
        with path.open("rb") as file:
            return file.read(4 * LARGEST_FILE + 1).decode("utf-8-sig")
    except (OSError, UnicodeDecodeError):
        raise CannotRecord(f"{path} cannot be read as text; save it on the device again") from None


def from_device(text: str, order: str) -> dict[str, tuple[str, str, str]]:
    """(reading, unit system, day) by key from a file that a device saved."""
    try:
        data = read_json(text, LARGEST_FILE)
    except TooLong:
        raise CannotRecord("the file is too large to be a device's measured values") from None
    except UnfitText:
        raise CannotRecord(
            "the file is not what a device saved, or it was cut off; save it there again"
        ) from None
    if (
        not isinstance(data, dict)
        or data.get("benchrule") != "measured"
        or data.get("version") != 1
    ):
        raise CannotRecord("the file is not what a device saved")
    if data.get("order") != order:
        named = clean(str(data.get("order")), 40)
        raise CannotRecord(f"the file is of order {named}, not of {order}")
    found = {}
    values = data.get("values")
    for key, one in (values if isinstance(values, dict) else {}).items():
        if not isinstance(one, dict) or not isinstance(one.get("given"), str):
            raise CannotRecord(f"the file's entry {clean(key, 60)} is damaged")
        if not is_clean(key) or len(key) > LONGEST_KEY or not is_clean(one["given"]):
            raise CannotRecord(f"the file's entry {clean(key, 60)} cannot be shown")
        units = one.get("units") if one.get("units") in SYSTEMS else "metric"
        day = str(one.get("at", ""))[:10]
        found[key] = (one["given"][:60], str(units), day if is_day(day) else "")
    return found


def write_records(
    data: Path, order: str, found: Mapping[str, dict[str, Any]], on: str = "", by: str = ""
) -> Path:
    """Adds what was measured to the order's file in docs/data/records; a newer reading takes the place
    of an older one."""
    path = data / "records" / f"{order}.yml"
    path.parent.mkdir(exist_ok=True)
    before = yaml.safe_load(path.read_text("utf-8")) if path.exists() else None
    records = dict((before or {}).get(order) or {})
    for one in found.values():
        day = one.get("on") or on or date.today().isoformat()
        records[one["key"]] = {"value": one["value"], "on": day, **({"by": by} if by else {})}
    text = yaml.safe_dump({order: records}, sort_keys=True, allow_unicode=True)
    path.write_text(
        f"# What was measured for {order}; written by `benchrule record`.\n{text}", "utf-8"
    )
    return path
