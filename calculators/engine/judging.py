"""Is a measured value in? The decision rule of ISO 14253-1, for every limit of the handbook.

The guard band is the whole expanded uncertainty U (k = 2) of the gauge, as in the standard's first
edition: what is accepted is in, and what is rejected is out, with a chance of at least 97.7 % where
the gauge's errors are normal. The edition of 2017 lets 1.65 u (0.825 U) do, for 95 %; the wider
band asks for no more than a better gauge. Between the two lies what this gauge cannot tell.

The chance of being in is the conformance probability of JCGM 106 for normal errors.
"""

import json
import math
from typing import Any, NamedTuple

from .reading import ReadingError, read_quantity
from .showing import SYSTEMS, half_up, reader_unit, show
from .strangers import UnfitText, clean, read_json
from .unit_table import UNITS

ACCEPT, REJECT, CANNOT_TELL = "accept", "reject", "cannot tell"
LONGEST_REQUEST = 10_000
COARSE_SHARE = 4  # U more than a quarter of the tolerance: half of the room or more is lost to it
MOST_DECIMALS, LARGEST = 12, 1e30
SLACK = 1e-9  # of the figures compared: 0.3 − 0.1 must not miss 0.2


class Verdict(NamedTuple):
    """What a reading says."""

    word: str  # ACCEPT, REJECT or CANNOT_TELL
    side: str  # "low" or "high": the limit it is past or near; "" where it is in
    chance: float  # that the true value is within the limits, 0 to 1


def decide(value: float, low: float | None, high: float | None, uncertainty: float) -> Verdict:
    """The verdict on ``value`` against the limits, by a gauge of expanded uncertainty (k = 2).

    All in one unit; a limit that is None does not bind.
    """
    slack = SLACK * max(abs(value), abs(low or 0), abs(high or 0), uncertainty)
    side, below = "", False
    for limit, sign, name in ((low, 1, "low"), (high, -1, "high")):
        if limit is None:
            continue
        room = (value - limit) * sign  # how far inside this limit
        if room < uncertainty - slack:
            side = name
            below = room < -uncertainty - slack
            if below:
                break
    word = ACCEPT if not side else REJECT if below else CANNOT_TELL
    if side and not below and low is not None and high is not None:
        side = "low" if value - low < high - value else "high"
    return Verdict(word, side, chance_in(value, low, high, uncertainty / 2))


def chance_in(value: float, low: float | None, high: float | None, standard: float) -> float:
    """Conformance probability (JCGM 106) for a normal error of ``standard`` uncertainty."""
    if standard <= 0:
        inside = (low is None or value >= low) and (high is None or value <= high)
        return 1.0 if inside else 0.0

    def below(limit: float) -> float:
        return 0.5 * math.erfc((value - limit) / (standard * math.sqrt(2)))

    return (1.0 if high is None else below(high)) - (0.0 if low is None else below(low))


def acceptance_zone(
    low: float | None, high: float | None, uncertainty: float
) -> tuple[float | None, float | None] | None:
    """The readings that are accepted, from and to; None where no reading can be."""
    least = None if low is None else low + uncertainty
    most = None if high is None else high - uncertainty
    if least is not None and most is not None:
        slack = SLACK * max(abs(least), abs(most))
        if least > most + slack:
            return None
    return least, most


def accepts_nothing(low: float | None, high: float | None, uncertainty: float) -> bool:
    """Whether a gauge can accept no reading at all: half of the limits are narrower than it.

    A limit only from above is taken as that of a gap or a width, which is never below nought.
    """
    zone = acceptance_zone(low, high, uncertainty)
    if zone is None:
        return True
    return low is None and high is not None and high >= 0 > high - uncertainty * (1 - SLACK)


def room(low: float | None, high: float | None) -> float | None:
    """The width of a tolerance. One that only a high limit bounds is counted from nought, as a
    gap or a thickness is; one with only a low limit is as wide as you like."""
    if high is None:
        return None
    return high - (low if low is not None else min(0.0, high))


def is_coarse(low: float | None, high: float | None, uncertainty: float) -> bool:
    """Whether the gauge takes half of the tolerance, or more, for itself."""
    wide = room(low, high)
    return wide is not None and uncertainty * COARSE_SHARE > wide * (1 + SLACK)


def uncertainty_in(value: float, unit: str, to: str) -> float:
    """A width (no reading of a scale with an offset) of ``unit`` in the unit ``to``."""
    a, b = UNITS[unit], UNITS[to]
    return value * a.numerator * b.denominator / (a.denominator * b.numerator)


def judge(asked: dict[str, Any]) -> dict[str, Any]:
    """The verdict in words. ``asked`` holds ``value`` (text), ``unit``, ``decimals``, ``low``,
    ``high``, ``gauge`` (name, resolution, uncertainty, unit), ``units`` (the reader's system).

    Answers ``{"verdict", "side", "read", "chance", "words", "notes"}`` or ``{"refused": [...]}``.
    """
    unit, decimals = str(asked["unit"]), int(asked["decimals"])
    system = str(asked.get("units")) if asked.get("units") in SYSTEMS else "metric"
    low, high, gauge = asked.get("low"), asked.get("high"), asked["gauge"]
    uncertainty = uncertainty_in(gauge["uncertainty"], gauge["unit"], unit)
    try:
        value = read_quantity(str(asked["value"]), unit, reader_unit(unit, system))
    except ReadingError as error:
        limit = next((one for one in (low, high) if one is not None), 0.0)
        example = show(limit, unit, decimals, system)
        return {
            "refused": [
                {
                    "input": "value", "given": clean(str(asked["value"]), 60, "�"),
                    "allowed": f"one reading, like {example}", "why": f"the reading {error}",
                }
            ]
        }  # fmt: skip
    verdict = decide(value, low, high, uncertainty)
    finer = max(decimals, _decimals(value, decimals + 2))

    def said(figure: float) -> str:
        return show(figure, unit, finer, system)

    spread = show(
        uncertainty, "K" if UNITS[unit].kind == "temperature" else unit,
        max(finer, _decimals(uncertainty, decimals + 2)), system,
    )  # fmt: skip
    zone = acceptance_zone(low, high, uncertainty)
    words = _words(verdict, said, value, low, high, spread, zone)
    notes = []
    if accepts_nothing(low, high, uncertainty):
        notes.append(
            f"{gauge['name']} cannot accept anything here: its uncertainty, {spread}, "
            "is wider than half of the limits. Take a finer gauge."
        )
    elif is_coarse(low, high, uncertainty):
        notes.append(
            f"{gauge['name']} is coarse for this limit: its uncertainty, {spread}, takes "
            "more than half of the room for itself."
        )
    if _finer_than_gauge(value, uncertainty_in(gauge["resolution"], gauge["unit"], unit)):
        notes.append(
            f"Finer than the gauge reads ({show_own(gauge['resolution'], gauge['unit'])}): read again."
        )
    return {
        "verdict": verdict.word, "side": verdict.side, "read": said(value),
        "value": value, "unit": unit, "chance": verdict.chance, "words": words, "notes": notes,
    }  # fmt: skip


def _words(
    verdict: Verdict, said: Any, value: float, low: float | None, high: float | None,
    spread: str, zone: tuple[float | None, float | None] | None,
) -> str:  # fmt: skip
    limit = low if verdict.side == "low" else high
    if verdict.word == ACCEPT:
        least, most = zone or (None, None)
        span = (
            f"{said(least)} to {said(most)}" if least is not None and most is not None
            else f"at most {said(most)}" if most is not None
            else f"at least {said(least)}"
        )  # fmt: skip
        return f"Accept: {said(value)} is in. With this gauge, readings of {span} are."
    if verdict.word == REJECT:
        way = "low" if verdict.side == "low" else "high"
        return f"Reject: {said(value)} is too {way}. The limit is {said(limit)}."
    hundred = min(99, max(1, int(half_up(verdict.chance * 100, 0))))
    return (
        f"Can't tell with this gauge: {said(value)} lies within its uncertainty, "
        f"{spread}, of the limit {said(limit)}. The chance that it is in is about "
        f"{hundred} in 100. Measure with a finer gauge before you pass it on or throw it out."
    )


def show_own(value: float, unit: str) -> str:
    """A gauge's figure with as many decimals as it has."""
    return show(value, unit, len(f"{value!r}".partition(".")[2].rstrip("0")))


def _decimals(value: float, most: int) -> int:
    """How many decimals ``value`` has, at most ``most``."""
    return len(f"{value:.{most}f}".partition(".")[2].rstrip("0"))


def _finer_than_gauge(value: float, resolution: float) -> bool:
    if resolution <= 0:
        return False
    steps = value / resolution
    return math.isfinite(steps) and abs(steps - round(steps)) > 0.2


def judge_text(text: str) -> str:
    """The same as JSON text in, JSON text out, for the page."""
    try:
        asked = read_json(text, LONGEST_REQUEST)
        fault = _fault(asked)
    except UnfitText as error:
        fault = str(error)
    if fault:
        refused = {
            "input": "request", "given": "", "allowed": "a reading, its limits and a gauge",
            "why": f"the request {fault}",
        }  # fmt: skip
        return json.dumps({"refused": [refused]})
    return json.dumps(judge(asked), allow_nan=False)


def _fault(asked: Any) -> str:
    """Why a request is none that can be judged; empty where it can."""
    gauge = asked.get("gauge") if isinstance(asked, dict) else None
    if not isinstance(gauge, dict) or "value" not in asked:
        return "must be an object with a value, limits and a gauge"
    named = (asked.get("unit"), gauge.get("unit"))
    units = [UNITS[unit] for unit in named if isinstance(unit, str) and unit in UNITS]
    if len(units) < 2:
        return "has a unit that there is not; take one of the handbook's"
    if units[0].kind not in (units[1].kind, units[1].kind.split()[0]):
        return "has a gauge that measures something else; take one that reads in the limits' unit"
    decimals, low, high = asked.get("decimals"), asked.get("low"), asked.get("high")
    if type(decimals) is not int or not 0 <= decimals <= MOST_DECIMALS:
        return f"must have decimals from 0 to {MOST_DECIMALS}"
    if not all(one is None or _is_size(one) for one in (low, high)) or low is high is None:
        return "must have a limit, low or high or both, as a plain number"
    if low is not None and high is not None and low > high:
        return "has its low limit above the high one; turn them round"
    if not _is_size(gauge.get("uncertainty")) or gauge["uncertainty"] < 0:
        return "must have a gauge with an uncertainty, as a plain number not below nought"
    if not _is_size(gauge.get("resolution")) or gauge["resolution"] < 0:
        return "must have a gauge with a resolution, as a plain number not below nought"
    return "" if isinstance(gauge.get("name"), str) else "must have a gauge with a name"


def _is_size(value: Any) -> bool:
    return type(value) in (int, float) and abs(value) <= LARGEST
