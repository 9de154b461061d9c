"""What exercises are drawn from, for the page: the procedures and the limits as plain data.

``calculators.learning`` draws and marks from it, natively and in the browser alike.
"""

import json
from hashlib import sha256
from typing import Any

from calculators.learning.limits import can_be_asked
from calculators.learning.procedure import FEWEST

from .handbook import Handbook, Station, Tolerance
from .measuring import gauge_facts
from .plain_words import plain_words
from .station_parts import Place, definitions, places_of


def exercise_bank(handbook: Handbook) -> dict[str, Any]:
    """``{"edition", "stations", "tolerances", "gauges"}``, each by id."""
    found: dict[str, Any] = handbook.kept.get("exercise bank", lambda: _make(handbook))
    return found


def _make(handbook: Handbook) -> dict[str, Any]:
    places: dict[str, list[Place]] = {}
    for place in places_of(handbook):
        places.setdefault(place.station, []).append(place)
    bank: dict[str, Any] = {
        "gauges": {
            id: gauge_facts(gauge) for id, gauge in handbook.entries["gauges"].items()
        },
        "tolerances": {
            id: _tolerance(handbook, tolerance) for id, tolerance in handbook.tolerances.items()
        },
        "stations": {
            station.id: _station(handbook, station, places.get(station.id, []))
            for station in handbook.stations
        },
    }  # fmt: skip
    for station in bank["stations"].values():
        station["exercises"] = [
            exercise
            for exercise in station["exercises"]
            if not exercise.startswith("limit/") or can_be_asked(bank, exercise.partition("/")[2])
        ]
    asked = {one for station in bank["stations"].values() for one in station["exercises"]}
    bank["tolerances"] = {
        id: tolerance for id, tolerance in bank["tolerances"].items() if f"limit/{id}" in asked
    }
    used = {tolerance["gauge"] for tolerance in bank["tolerances"].values()}
    bank["gauges"] = {id: gauge for id, gauge in bank["gauges"].items() if id in used}
    bank["edition"] = sha256(bank_text(bank).encode()).hexdigest()[:12]
    return bank


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
