"""What exercises are drawn from, for the page: the procedures and the limits as plain data.

``calculators.learning`` draws and marks from it, natively and in the browser alike.
"""

import json
from functools import partial
from hashlib import sha256
from typing import Any

from calculators.learning.limits import can_be_asked
from calculators.learning.procedure import FEWEST

from .handbook import Handbook, Station, Tolerance
from .kept import digest
from .measuring import gauge_facts
from .plain_words import plain_words
from .station_parts import Place, definitions, places_in
from .unchanged import Piece, made_now


def exercise_bank(handbook: Handbook, piece: Piece | None = None) -> dict[str, Any]:
    """``{"edition", "stations", "tolerances", "gauges"}``, each by id; put together station by
    station, where they are kept as pieces.
    """
    piece = piece or made_now(handbook)
    stations: dict[str, Any] = {}
    tolerances: dict[str, Any] = {}
    gauges: dict[str, Any] = {}
    for station in handbook.stations:
        part = piece(f"exercises {station.id}", "", partial(_part, station.id))
        stations[station.id] = part["station"]
        tolerances |= part["tolerances"]
        gauges |= part["gauges"]
    bank: dict[str, Any] = {
        "gauges": {id: gauges[id] for id in handbook.entries["gauges"] if id in gauges},
        "tolerances": {id: tolerances[id] for id in handbook.tolerances if id in tolerances},
        "stations": stations,
    }
    bank["edition"] = sha256(bank_text(bank).encode()).hexdigest()[:12]
    return bank


def exercises_of(handbook: Handbook, station: Station) -> list[str]:
    """The exercises of one station, as the bank has them; nothing else of the handbook is read."""
    found: list[str] = _part(station.id, handbook)["station"]["exercises"]
    return found


def _part(id: str, handbook: Handbook) -> dict[str, Any]:
    """What one station gives to the bank: itself, the limits that can be asked, their gauges."""
    station = handbook.station(id)
    assert station is not None  # it was asked for by the id that it has
    own = {tolerance.id: tolerance for tolerance in handbook.tolerances_of(id)}
    entries = handbook.entries["gauges"]
    used = dict.fromkeys(str(tolerance.field("gauge")) for tolerance in own.values())
    bank = {
        "gauges": {gauge: gauge_facts(entries[gauge]) for gauge in used},
        "tolerances": {id: _tolerance(handbook, tolerance) for id, tolerance in own.items()},
    }
    asked = {
        id: one
        for id, one in bank["tolerances"].items()
        if _can_be_asked(handbook, one, bank["gauges"][one["gauge"]])
    }
    made = _station(handbook, station, places_in(station))
    made["exercises"] = [
        exercise
        for exercise in made["exercises"]
        if not exercise.startswith("limit/") or exercise.partition("/")[2] in asked
    ]
    used = dict.fromkeys(tolerance["gauge"] for tolerance in asked.values())
    gauges = {gauge: bank["gauges"][gauge] for gauge in used}
    return {"station": made, "tolerances": asked, "gauges": gauges}


def _can_be_asked(handbook: Handbook, tolerance: dict[str, Any], gauge: dict[str, Any]) -> bool:
    """Kept by the figures, which are all that is gone through: it takes long, and most limits have
    those of another.
    """
    limit = {name: tolerance[name] for name in ("unit", "low", "high")}
    limit |= {"gauge": "", "models": [["", *own] for _, *own in tolerance.get("models", ())]}
    reads = {name: gauge[name] for name in ("unit", "resolution", "uncertainty")}
    bank = {"tolerances": {"": limit}, "gauges": {"": reads}}
    said = json.dumps(bank, sort_keys=True)
    found: bool = handbook.kept.get(f"asked {digest(said)}", partial(can_be_asked, bank, ""))
    return found


def bank_text(bank: dict[str, Any]) -> str:
    """The bank as the page reads it."""
    return json.dumps(bank, ensure_ascii=False, separators=(",", ":"))


def _station(handbook: Handbook, station: Station, places: list[Place]) -> dict[str, Any]:
    steps = [
        {"title": place.title, "reason": _words(handbook, place, "Reason")}
        for place in places
        if place.kind == "step"
    ]
    faults = [
        {
            "title": place.title, "anchor": place.anchor, "sign": _words(handbook, place, "Sign"),
            "cause": _words(handbook, place, "Likely cause"), "mend": _words(handbook, place, "Mend"),
        }
        for place in places
        if place.kind == "fault"
    ]  # fmt: skip
    exercises = []
    for name in station.field("calculators") or ():
        calculator = handbook.calculators[name]
        exercises += [f"{name}/{exercise.name}" for exercise in calculator.exercises]
        exercises += [f"{name}/{decision.name}" for decision in calculator.decisions]
    exercises += [f"limit/{tolerance.id}" for tolerance in handbook.tolerances_of(station.id)]
    exercises += [f"order/{station.id}"] if len(steps) >= FEWEST else []
    exercises += [f"fault/{station.id}"] if len(faults) >= FEWEST else []
    newest = station.revisions[0]
    return {
        "title": station.title, "page": station.page.source.removesuffix(".md"),
        "group": station.group, "revision": newest["revision"], "approved_on": str(newest["on"]),
        "steps": steps, "faults": faults, "exercises": exercises,
    }  # fmt: skip


def _words(handbook: Handbook, place: Place, term: str) -> str:
    return plain_words(handbook, definitions(place.text).get(term, ""))


def _tolerance(handbook: Handbook, tolerance: Tolerance) -> dict[str, Any]:
    own = [
        [str(handbook.models[model].fields["name"]), version.field("low"), version.field("high")]
        for model in tolerance.field("by_model") or ()
        for version in (tolerance.for_model(model),)
    ]
    fields = ("feature", "unit", "decimals", "low", "high", "gauge")
    return {
        **{name: tolerance.field(name) for name in fields},
        "station": tolerance.station,
        "when_out": plain_words(handbook, str(tolerance.field("when_out") or "ask")),
        **({"models": own} if own else {}),
    }
