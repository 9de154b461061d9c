"""Draws questions of in, out or can't tell from the handbook's tolerances."""

from collections.abc import Iterator
from math import ceil, floor
from typing import Any

from ..engine.judging import (
    ACCEPT,
    CANNOT_TELL,
    REJECT,
    decide,
    judge,
    room,
    uncertainty_in,
)
from ..engine.reading import convert, read_quantity
from ..engine.showing import SYSTEMS, half_up, reader_unit, with_unit
from ..engine.unit_table import UNITS
from .question import CHOICE, CannotDraw, Question
from .stream import Stream

WORDS = {
    ACCEPT: "It is in: pass it on",
    REJECT: "It is out: {mend}",
    CANNOT_TELL: "This gauge cannot tell: measure with a finer one",
}
SEVERITY = (ACCEPT, CANNOT_TELL, REJECT)  # the worst of the readings decides
READINGS = 3
REACH = 0.8  # of the tolerance's width, or three uncertainties: how far out readings are drawn
MOST_READINGS = 300  # that a question may be drawn from


def draw_limit(
    bank: dict[str, Any], tolerance_id: str, seed: str, grade: int, units: str
) -> Question:
    """Three readings on the shop's gauge, and what to do with the piece: the worst of them decides.

    Grade 1 shows the limits and the gauge's uncertainty and keeps clear of doubt; grade 2 shows
    them and asks near the limits too; grade 3 shows neither: look them up, or know them.
    """
    tolerance = bank["tolerances"][tolerance_id]
    stream = Stream(f"limit/{tolerance_id}/{seed}/{grade}/{units}")
    model, low, high = stream.pick(_versions(tolerance))
    gauge = bank["gauges"][tolerance["gauge"]]
    unit, system = tolerance["unit"], "inch" if units in SYSTEMS[1:] else "metric"
    uncertainty = uncertainty_in(gauge["uncertainty"], gauge["unit"], unit)
    zones = _zones(tolerance, gauge, low, high, uncertainty, system, grade)
    if len(zones) < 2:
        raise CannotDraw(f"limit/{tolerance_id} has readings of one kind only")
    word = stream.pick(sorted(zones))
    first = stream.pick(zones[word])
    milder = [
        reading for zone in SEVERITY[: SEVERITY.index(word) + 1] for reading in zones.get(zone, ())
    ]
    readings = [first, *(stream.pick(milder) for _ in range(READINGS - 1))]
    deciding = min(readings, key=lambda one: _inside(read_quantity(one, unit), low, high))
    found = judge({
        "value": deciding, "unit": unit, "decimals": tolerance["decimals"], "low": low, "high": high,
        "gauge": gauge, "units": system,
    })  # fmt: skip
    decided = found["words"] if word == ACCEPT else f"{deciding} decides. {found['words']}"
    words = [WORDS[one].format(mend=tolerance["when_out"]) for one in WORDS]
    right = list(WORDS).index(word)
    station = bank["stations"][tolerance["station"]]
    spread = _own(uncertainty, unit, gauge, system)
    facts = [("Gauge", gauge["name"])]
    if grade < 3:
        facts += [("Limits", _limits(low, high, tolerance, system, deciding)),
                  ("Uncertainty of this gauge", spread)]  # fmt: skip
    return Question(
        exercise=f"limit/{tolerance_id}", title=f"Limits: {station['title']}", kind=CHOICE,
        grade=grade,
        words=f"{tolerance['feature']}{f' ({model})' if model else ''}. Three readings: "
        f"{'; '.join(stream.shuffled(readings))}. What now?",
        answer=right, shown=words[right], facts=tuple(facts),
        read=(f"{station['page']}#tol-{tolerance_id}", station["title"]), system=system,
        options=tuple(words),
        whys=tuple(
            decided if place == right else _why(one, word, decided, spread)
            for place, one in enumerate(WORDS)
        ),
    )  # fmt: skip


def can_be_asked(bank: dict[str, Any], tolerance_id: str) -> bool:
    """Whether a tolerance has readings that are in and others that are not, in every grade."""
    tolerance = bank["tolerances"][tolerance_id]
    for system in ("metric", "inch"):
        for _, low, high in _versions(tolerance):
            gauge = bank["gauges"][tolerance["gauge"]]
            wide = uncertainty_in(gauge["uncertainty"], gauge["unit"], tolerance["unit"])
            for grade in (1, 2):
                said = _said(tolerance, gauge, low, high, wide, system, grade)
                first = next(said, None)
                if first is None or all(word == first[0] for word, _ in said):
                    return False
    return True


def _versions(tolerance: dict[str, Any]) -> list[tuple[str, float | None, float | None]]:
    """(model's name, low, high): the general limits and those of models that have their own."""
    general = ("", tolerance["low"], tolerance["high"])
    own = [(name, low, high) for name, low, high in tolerance.get("models", ())]
    return [general, *own]


def _zones(
    tolerance: dict[str, Any], gauge: dict[str, Any], low: float | None, high: float | None,
    uncertainty: float, system: str, grade: int,
) -> dict[str, list[str]]:  # fmt: skip
    """Readings of the gauge by what they say, as they stand on it."""
    found: dict[str, list[str]] = {}
    for word, text in _said(tolerance, gauge, low, high, uncertainty, system, grade):
        found.setdefault(word, []).append(text)
    return found


def _said(
    tolerance: dict[str, Any], gauge: dict[str, Any], low: float | None, high: float | None,
    uncertainty: float, system: str, grade: int,
) -> Iterator[tuple[str, str]]:  # fmt: skip
    """What each reading that a grade asks says, and the reading as it stands on the gauge."""
    for value, text in _readings(tolerance["unit"], gauge, low, high, uncertainty, system):
        word = decide(value, low, high, uncertainty).word
        if grade == 1 and (word == CANNOT_TELL or _is_near(value, low, high, uncertainty)):
            continue
        yield word, text


def _inside(value: float, low: float | None, high: float | None) -> float:
    """How far a value is inside the nearer limit; below nought where it is outside."""
    below = float("inf") if low is None else value - low
    above = float("inf") if high is None else high - value
    return min(below, above)


def _is_near(value: float, low: float | None, high: float | None, uncertainty: float) -> bool:
    return any(
        limit is not None and abs(value - limit) < 1.5 * uncertainty for limit in (low, high)
    )


def _readings(
    unit: str, gauge: dict[str, Any], low: float | None, high: float | None,
    uncertainty: float, system: str,
) -> Iterator[tuple[float, str]]:  # fmt: skip
    """What the gauge can show round the limits: (value in ``unit``, text with its unit)."""
    to = reader_unit(unit, system)
    step = uncertainty_in(gauge["resolution"], gauge["unit"], to)
    if to != unit:
        step = _round_step(step)  # an inch gauge has divisions of its own
    wide = room(low, high)
    reach = max(3 * uncertainty, REACH * wide if wide else 0.0, 4 * uncertainty_in(step, to, unit))
    ends = [limit for limit in (low, high) if limit is not None]
    least, most = min(ends) - reach, max(ends) + reach
    if min(ends) >= 0:
        least = max(0.0, least)  # a gap or a thickness is never below nought
    first, last = ceil(convert(least, unit, to) / step), floor(convert(most, unit, to) / step)
    every = max(1, (last - first) // MOST_READINGS)
    decimals = _decimals(step)
    for count in range(first, last + 1, every):
        text = with_unit(half_up(count * step, decimals), unit, system)
        yield convert(float(half_up(count * step, decimals)), to, unit), text


def _round_step(step: float) -> float:
    """The division nearest to ``step`` among 1, 2 and 5 of a power of ten."""
    power = 1.0
    while power > step:
        power /= 10
    while power * 10 <= step:
        power *= 10
    nearest = min((1, 2, 5, 10), key=lambda count: abs(count * power - step))
    return float(half_up(nearest * power, 9))


def _decimals(step: float) -> int:
    return len(half_up(step, 9).partition(".")[2].rstrip("0"))


def _limits(
    low: float | None, high: float | None, tolerance: dict[str, Any], system: str, reading: str
) -> str:
    """The limits, printed as finely as the gauge reads."""
    unit = tolerance["unit"]
    to = reader_unit(unit, system)
    usual = tolerance["decimals"] + (UNITS[unit].inch_decimals if to != unit else 0)
    decimals = max(usual, len(reading.split()[0].partition(".")[2]))

    def said(value: float) -> str:
        return half_up(convert(value, unit, to), decimals)

    if low is not None and high is not None:
        return f"{said(low)} to {with_unit(said(high), unit, system)}"
    words, limit = ("at most", high) if high is not None else ("at least", low)
    return f"{words} {with_unit(said(limit or 0.0), unit, system)}"


def _own(uncertainty: float, unit: str, gauge: dict[str, Any], system: str) -> str:
    """A gauge's uncertainty, a width, with two figures that count."""
    to = reader_unit(unit, system)
    width = uncertainty_in(uncertainty, unit, to)
    decimals = 0
    while decimals < 8 and width * 10**decimals < 10 and half_up(width, decimals) != f"{width:g}":
        decimals += 1
    name = UNITS["K"].shown if UNITS[unit].kind == "temperature" and to == unit else UNITS[to].shown
    return f"{half_up(width, decimals)} {name}".rstrip()


def _why(chosen: str, right: str, judged: str, spread: str) -> str:
    if chosen == CANNOT_TELL:
        return (
            f"It can tell: that reading is further from the limit than the gauge's uncertainty, "
            f"{spread}. {judged}"
        )
    if right == CANNOT_TELL:
        return f"Nobody can know that from these readings. {judged}"
    return judged


__all__ = ["can_be_asked", "draw_limit"]
