"""The door: JSON in, JSON out. The command line, the page and other programs come in here.

A request is ``{"calculator": name, "inputs": {...}, "units": "metric" | "inch" | "inch64"}``. The
answer holds figures at full precision in declared units under ``value`` and as people read them
under ``shown``; or it is ``{"refused": [{"input", "given", "allowed", "why"}]}``.
"""

import json
from collections.abc import Mapping
from dataclasses import asdict
from typing import Any

from .compute import Answer, Say, work_out
from .declaration import Calculator, Number, Readings, Rows, Solved, Step
from .inputs import Refused, echo, split_readings
from .markup import PARTS, parts, refusal_parts
from .reading import ReadingError, read_quantity
from .registry import load, modules
from .showing import SYSTEMS, as_typed, reader_unit
from .strangers import UnfitText, read_json
from .unit_table import UNITS

LONGEST_REQUEST = 100_000


def answer(name: str, given: Mapping[str, Any], units: str = "metric") -> dict[str, Any]:
    """The answer of calculator ``name``, ready for JSON; never raises for bad input."""
    worked = worked_out(name, given, units)
    if isinstance(worked, list):
        return {"refused": [asdict(refused) for refused in worked]}
    return as_json(worked)


def worked_out(name: str, given: Mapping[str, Any], units: str) -> Answer | list[Refused]:
    """The worked answer, or the refusals."""
    return refused_at_once(name, units) or work_out(load(name), given, units)


def refused_at_once(name: str, units: str) -> list[Refused]:
    """Why there is no such calculator or unit system; [] where there are both."""
    if units not in SYSTEMS:
        allowed = ", ".join(SYSTEMS)
        return [Refused("units", echo(units), allowed, f"take one of {allowed}")]
    if name not in modules():
        allowed = ", ".join(modules())
        why = "there is no calculator of this name; take one of those allowed"
        return [Refused("calculator", echo(name), allowed, why)]
    return []


def answer_text(text: str) -> str:
    """The same as JSON text in, JSON text out."""
    request = read_request(text)
    if isinstance(request, list):
        return json.dumps({"refused": [asdict(refused) for refused in request]})
    found = answer(request["calculator"], request["inputs"], request["units"])
    return json.dumps(found, allow_nan=False)


def read_request(text: str) -> dict[str, Any] | list[Refused]:
    """A request read from JSON text and put in order, or why it is none."""
    allowed = '{"calculator": name, "inputs": {name: value}, "units": "metric"}'

    def bad(why: str) -> list[Refused]:
        return [Refused("request", echo(text), allowed, why)]

    try:
        request = read_json(text, LONGEST_REQUEST)
    except UnfitText as error:
        return bad(f"the request {error}")
    if not isinstance(request, dict) or not isinstance(request.get("inputs", {}), dict):
        return bad("the request must be an object whose inputs are an object")
    wanted = request.get("parts")
    return {
        "calculator": str(request.get("calculator", "")),
        "inputs": request.get("inputs", {}),
        "units": str(request.get("units", "metric")),
        "was": str(request.get("was", "metric")),
        "parts": [one for one in PARTS if one in wanted] if wanted and isinstance(wanted, list)
        else PARTS,
    }  # fmt: skip


def as_json(worked: Answer) -> dict[str, Any]:
    """A worked answer as plain data."""
    calculator = worked.calculator
    say = Say(calculator, worked.values, worked.system)
    units = {name: _unit(quantity.unit) for name, quantity in say.quantities.items()}

    def shown(name: str) -> dict[str, Any]:
        value = _plain(worked.values[name])
        return {"value": value, "unit": units.get(name, ""), "shown": say(name)}

    return {
        "calculator": calculator.name,
        "inputs": {name: shown(name) for name in worked.inputs},
        "results": {name: shown(name) for name in calculator.results if name in worked.values},
        "tables": {
            name: {
                "columns": [column.name for column in worked.columns[name]],
                "units": [
                    "" if column.text else _unit(column.unit) for column in worked.columns[name]
                ],
                "rows": [_plain(list(row.values())) for row in rows],
            }
            for name, rows in worked.tables.items()
        },
        "steps": [
            _step(item, say, shown) for item in worked.work if isinstance(item, Step | Solved)
        ],
        "cautions": worked.cautions,
        "sources": [source.fields() for source in calculator.sources],
    }


def _plain(value: Any) -> Any:
    """A value as JSON says it: minus nought is nought."""
    if isinstance(value, list | tuple):
        return [_plain(one) for one in value]
    return value + 0.0 if isinstance(value, float) else value


def _unit(unit: str) -> str:
    """A unit as JSON says it: a plain number has none."""
    return "" if unit == "1" else unit


def _step(item: Step | Solved, say: Say, shown: Any) -> dict[str, Any]:
    if isinstance(item, Step):
        return {
            "name": item.name, "label": item.label, "formula": item.formula,
            **shown(item.name), "source": item.source,
        }  # fmt: skip
    return {
        "name": item.name, "label": item.label, "method": item.method,
        "gives": {one.name: shown(one.name) for one in item.gives if not one.many},
        "source": item.source,
    }  # fmt: skip


def live(text: str) -> str:
    """What the live page asks: an answer as ready HTML parts, or fields in other units.

    The parts are made by the same code that made the static page.
    """
    request = read_request(text)
    if isinstance(request, list):
        return json.dumps({"refused": [asdict(refused) for refused in request]})
    worked = worked_out(request["calculator"], request["inputs"], request["units"])
    if isinstance(worked, list):
        refused = [asdict(one) for one in worked]
        return json.dumps({"refused": refused, "parts": refusal_parts(worked)})
    return json.dumps({"parts": parts(worked, request["parts"])})


def live_fields(text: str) -> str:
    """Entries of a form turned from one unit system to another, for the page.

    What cannot be read stays as it is: nothing that was typed is lost.
    """
    asked = read_request(text)
    if isinstance(asked, dict):
        strange = {asked["was"], asked["units"]} - set(SYSTEMS)
        asked = refused_at_once(asked["calculator"], min(strange, default="metric")) or asked
    if isinstance(asked, list):
        return json.dumps({"refused": [asdict(refused) for refused in asked]})
    calculator, was, units = load(asked["calculator"]), asked["was"], asked["units"]
    fields = {
        name: field_in(calculator, name, given, was, units)
        for name, given in asked["inputs"].items()
    }
    return json.dumps({"fields": fields, "units": field_units(calculator, units)})


def field_in(calculator: Calculator, name: str, given: Any, was: str, units: str) -> Any:
    """One entry in another unit system."""
    item = next((item for item in calculator.inputs if item.name == name), None)
    match item:
        case Number() | Readings():
            return turned_entry(given, item, was, units)
        case Rows() if isinstance(given, list):
            return [
                [
                    turned_entry(cell, column, was, units) if isinstance(column, Number) else cell
                    for column, cell in zip(item.columns, row, strict=False)
                ]
                if isinstance(row, list)
                else row
                for row in given
            ]
    return given


def turned_entry(given: Any, item: Number | Readings, was: str, units: str) -> dict[str, str]:
    """The entry in the other units, and exactly what it stands for, with its unit."""
    assumed = reader_unit(item.unit, was)
    if not isinstance(given, str):
        return {"text": given, "exact": given}
    try:
        if isinstance(item, Readings):
            values = [read_quantity(part, item.unit, assumed) for part in split_readings(given)]
            return {
                "text": "; ".join(as_typed(v, item.unit, item.decimals, units) for v in values),
                "exact": "; ".join(f"{v!r} {item.unit}" for v in values),
            }
        value = read_quantity(given, item.unit, assumed)
    except ReadingError:
        return {"text": given, "exact": given}
    decimals = 0 if item.whole else item.decimals
    unit = "" if item.unit == "1" else f" {item.unit}"
    return {"text": as_typed(value, item.unit, decimals, units), "exact": f"{value!r}{unit}"}


def field_units(calculator: Calculator, units: str) -> dict[str, str]:
    """The unit that stands behind each entry, by the entry's name."""
    found = {}
    for item in calculator.inputs:
        columns = item.columns if isinstance(item, Rows) else (item,)
        for one in columns:
            if isinstance(one, Number | Readings):
                name = one.name if one is item else f"{item.name}.{one.name}"
                found[name] = UNITS[reader_unit(one.unit, units)].shown
    return found
