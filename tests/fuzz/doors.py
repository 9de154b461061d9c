"""Cases for the calculators' door: requests built from a declaration, and JSON text as it comes."""

import json
import math
from collections.abc import Iterator
from functools import cache
from typing import Any

from calculators.engine import door
from calculators.engine.declaration import Calculator, Choice, Number, Readings, Words
from calculators.engine.judging import judge_text
from calculators.engine.reading import units_of_kind
from calculators.engine.registry import load, modules
from calculators.engine.showing import SYSTEMS
from calculators.engine.unit_table import UNITS

from . import hostile
from .outcome import check_refused, check_shown, loaded, need, words_of
from .tape import Tape, between, between_by_factors, decoded, text_bytes

WAYS = ("answer", "live", "answer", "live", "fields")
EXAMPLE, LOW, HIGH, SHARE, FACTOR, EDGE, HOSTILE, TEXT, JSON, UNIT = range(10)
PARTS: tuple[Any, ...] = (
    None,
    [],
    ["headline"],
    ["drawings", "tables"],
    "results",
    5,
    True,
    {},
    [[]],
)


@cache
def calculators() -> tuple[Calculator, ...]:
    """Every calculator, in one order."""
    return tuple(load(name) for name in modules())


# --- requests built from a declaration


def number(item: Number | Readings, kind: int, tape: Tape) -> Any:
    """A number for an input: within its range, at an edge, just past it, or something else."""
    low, high = item.lowest, item.highest
    if kind == LOW:
        return low
    if kind == HIGH:
        return high
    if kind == SHARE:
        return _whole(item, between(low, high, tape.share()))
    if kind == FACTOR:
        return _whole(item, between_by_factors(low, high, tape.share()))
    if kind == EDGE:
        edge = tape.pick((low, high, item.example if isinstance(item, Number) else low, 0.0))
        step = tape.byte() - 128
        return (
            edge + math.copysign(math.ulp(edge) * 2.0 ** (abs(step) % 53), step) if step else edge
        )
    if kind == UNIT:
        unit = tape.pick(units_of_kind(item.unit))
        way = tape.pick(("{:.6g} {}", "{:.0f} {}", "{!r}{}", "{:.3e} {}", "{:.2f}\u00a0{}"))
        return way.format(between(low, high, tape.share()), unit.shown)
    return _other(kind, tape)


def _whole(item: Number | Readings, value: float) -> float:
    return round(value) if isinstance(item, Number) and item.whole else value


def _other(kind: int, tape: Tape) -> Any:
    if kind == TEXT:
        return tape.text()
    if kind == JSON:
        try:
            return json.loads(tape.text())
        except (ValueError, RecursionError):
            return None
    return hostile.value(tape)


def entry(item: Any, tape: Tape) -> Any:
    """A value for any input, and whether there is one at all."""
    kind = tape.byte() % 10
    if isinstance(item, Number):
        return item.example if kind == EXAMPLE else number(item, kind, tape)
    if isinstance(item, Words):
        return tape.text() if kind == TEXT else hostile.value(tape) if kind == HOSTILE else "a part"
    if kind in (HOSTILE, TEXT, JSON):
        return _other(kind, tape)
    if isinstance(item, Choice):
        return item.example if kind == EXAMPLE else tape.pick(item.options)[0]
    if kind == EXAMPLE:
        return [list(one) if isinstance(one, tuple) else one for one in item.example]
    count = tape.byte() % (item.at_most + 2)
    if isinstance(item, Readings):
        found = [number(item, kind, tape) for _ in range(count)]
        return "; ".join(str(one) for one in found) if tape.byte() % 4 == 1 else found
    if kind in (LOW, HIGH):
        return [
            [
                number(one, kind, tape) if isinstance(one, Number) else f"part {at}"
                for one in item.columns
            ]
            for at in range(count)
        ]
    rows = [[entry(one, tape) for one in item.columns] for _ in range(count)]
    if tape.byte() % 4 == 1:
        return "; ".join(" | ".join(str(cell) for cell in row) for row in rows)
    return rows


def request(tape: Tape) -> tuple[str, dict[str, Any]]:
    """Which way through the door, and what is asked there."""
    calculator = calculators()[tape.byte() % len(calculators())]
    head = tape.byte()
    way, units = WAYS[head % 5], (*SYSTEMS, *SYSTEMS, *SYSTEMS, "furlongs")[head // 5 % 10]
    inputs: dict[str, Any] = {}
    for _ in range(tape.byte() % 25):
        item = calculator.inputs[tape.byte() % len(calculator.inputs)]
        inputs[item.name] = entry(item, tape)
    asked: dict[str, Any] = {"calculator": calculator.name, "inputs": inputs, "units": units}
    last = tape.byte()
    if last % 16 == 1:
        asked["parts"] = tape.pick(PARTS)
    if last % 16 == 2:
        inputs[tape.text()] = hostile.value(tape)
    if last % 16 == 3:
        asked[tape.pick(("calculator", "inputs", "units", "parts", "was", "x"))] = hostile.value(
            tape
        )
    if way == "fields":
        asked.setdefault("was", SYSTEMS[head // 50 % 3])
    return way, asked


def built(data: bytes) -> str:
    """A request built from a declaration, through the door."""
    way, asked = request(Tape(data))
    return through(way, hostile.json_text(asked))


def seeds() -> Iterator[bytes]:
    """Requests of every declaration: its checks, its options, each end of each range and all ends."""
    for place, calculator in enumerate(calculators()):
        for units in range(3):
            yield bytes((place, 5 * units + 1, 0))
        for check in calculator.checks:
            if check.function is None:
                yield bytes((place, 0)) + _given(calculator, dict(check.inputs))
        for kind in (LOW, HIGH):
            fields = [_field(calculator, at, kind) for at in range(len(calculator.inputs))]
            for one in fields:
                yield bytes((place, 1, 1)) + one
            yield bytes((place, 1, len(fields))) + b"".join(fields)
        for choice in (one for one in calculator.inputs if isinstance(one, Choice)):
            at = calculator.inputs.index(choice)
            for option in range(len(choice.options)):
                yield bytes((place, 1, 1, at, LOW, option))


def _field(calculator: Calculator, at: int, kind: int) -> bytes:
    item = calculator.inputs[at]
    if isinstance(item, Choice):
        return bytes((at, EXAMPLE))
    if isinstance(item, Number):
        return bytes((at, kind))
    return bytes((at, kind, item.at_most if kind == HIGH else item.at_least))


def _given(calculator: Calculator, inputs: dict[str, Any]) -> bytes:
    names = [item.name for item in calculator.inputs]
    fields = [
        bytes((names.index(name), JSON)) + text_bytes(json.dumps(value))
        for name, value in inputs.items()
        if name in names
    ][:24]
    return bytes((len(fields),)) + b"".join(fields)


# --- through the door, with everything that must hold


def through(way: str, text: str) -> str:
    """Sends text through the door; "answered" or "refused"."""
    if way == "fields":
        return _fields(text)
    found = loaded(door.answer_text(text) if way == "answer" else door.live(text))
    need(isinstance(found, dict), "the door's answer is no object")
    if "refused" in found:
        check_refused(found["refused"], text)
        need(set(found) <= {"refused", "parts"}, f"a refusal with {set(found)}")
        return "refused"
    if way == "live":
        for name, markup in found["parts"].items():
            check_shown(markup, text, name)
        return "answered"
    need(bool(found["results"]), "an answer without a result")
    for words in words_of({name: found[name] for name in ("results", "steps", "cautions")}):
        check_shown(words, text, "an answer")
    return "answered"


def _fields(text: str) -> str:
    found = loaded(door.live_fields(text))
    if "refused" in found:
        check_refused(found["refused"], text)
        return "refused"
    need(set(found) == {"fields", "units"}, f"the fields came with {set(found)}")
    return "answered"


def as_text(data: bytes) -> str:
    """Any text, through every way that takes JSON."""
    way, text = data[:1], decoded(data[1:])
    if way in (b"a", b"l", b"f"):
        return through({b"a": "answer", b"l": "live", b"f": "fields"}[way], text)
    return judged(text)


def text_seeds() -> Iterator[bytes]:
    """Requests as text, whole and damaged."""
    for name in modules():
        for way in (b"a", b"l"):
            yield way + json.dumps({"calculator": name, "inputs": {}, "units": "metric"}).encode()
        yield (
            b"f"
            + json.dumps(
                {"calculator": name, "inputs": {}, "was": "metric", "units": "inch"}
            ).encode()
        )
    for way in (b"a", b"l", b"f", b"j"):
        for depth in (10, 500, 3000, 40_000):
            yield way + b"[" * depth
            yield way + b'{"a":' * depth
            yield way + b'{"calculator":"fret-spacing","inputs":{"frets":' + b"[" * depth
            yield way + b'{"inputs":{"a":' + b"[" * depth + b"]" * depth + b"}}"
        yield way + b'{"calculator":"fret-spacing","calculator":5,"inputs":{},"inputs":[]}'
        yield way + b'{"calculator":"fret-spacing","inputs":{"frets":' + b"1" * 5000 + b"}}"
        yield way + b'{"calculator":"fret-spacing","inputs":{"frets":' + b"1" * 90_000 + b"}}"
        yield way + b'{"calculator":"fret-spacing","inputs":{"frets":1e400,"scale_length":-0.0}}'
        yield way + b'{"calculator":"fret-spacing","inputs":{"frets":NaN},"units":null}'
        yield way + b'"' + b"\\" * 99_000
        yield way + b'{"calculator":"\\ud800","inputs":{"\\udc00":"\\ud800"}}'
        yield way + b"\xed\xa0\x80"
        yield way + b"\0" * 100
        yield way + b"1" * 200_000
    yield b"j" + json.dumps(MEASURED).encode()


# --- judging

MEASURED: dict[str, Any] = {
    "value": "2.72 mm", "unit": "mm", "decimals": 2, "low": 2.5, "high": 2.8, "units": "metric",
    "gauge": {"name": "Caliper", "resolution": 0.01, "unit": "mm", "uncertainty": 0.03},
}  # fmt: skip


def judged(text: str) -> str:
    """Sends text to be judged."""
    found = loaded(judge_text(text))
    if "refused" in found:
        check_refused(found["refused"], text)
        return "refused"
    need(
        found["verdict"] in ("accept", "reject", "cannot tell"),
        f"the verdict is {found['verdict']}",
    )
    need(0 <= found["chance"] <= 1, f"the chance is {found['chance']}")
    for words in words_of(found):
        check_shown(words, text, "a verdict")
    return "answered"


def judging(data: bytes) -> str:
    """A reading against limits, with some of it changed."""
    tape = Tape(data)
    unit = tape.pick([unit for unit in UNITS if UNITS[unit].kind != "number"])
    gauge_unit = tape.pick(units_of_kind(unit)).id
    low, high = tape.share() * 10 - 2, tape.share() * 20 - 1
    bounds = tape.pick(
        ((low, high), (None, high), (low, None), (None, None), (high, high), (high, low))
    )
    reading = tape.share() * 25 - 5
    asked = {
        "value": tape.pick((f"{reading:.3f}", f"{reading!r} {gauge_unit}", f"{reading:.0f}", reading)),
        "unit": unit, "decimals": tape.byte() % 6, "low": bounds[0], "high": bounds[1],
        "units": tape.pick(SYSTEMS),
        "gauge": {"name": "Gauge", "resolution": 10.0 ** -(tape.byte() % 6), "unit": gauge_unit,
                  "uncertainty": tape.share() * 10.0 ** (1 - tape.byte() % 6)},
    }  # fmt: skip
    return judged(hostile.mutated_text(asked, tape))
