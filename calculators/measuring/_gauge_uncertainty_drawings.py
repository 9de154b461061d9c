"""The pictures of a reading's uncertainty: the budget as bars, limits and reading on a line."""

from collections.abc import Mapping
from typing import Any

from ..engine.compute import Say
from ..engine.drawing import Svg

NAMES, BARS, ENDS = 24.0, 268.0, 520.0
ROW = 30.0


def draw_budget(values: Mapping[str, Any], say: Say) -> str:
    """A bar for every contribution, as long as its standard uncertainty, and one for them all."""
    rows = values["budget_rows"]
    svg = Svg(
        "gauge-uncertainty-budget",
        f"What makes the reading uncertain; together {say('combined_u')} standard, "
        f"{say('expanded')} expanded",
        "One bar for each contribution, as long as its standard uncertainty; the lowest bar is "
        f"their combination. The biggest is: {values['biggest']}.",
        640, 56 + ROW * (len(rows) + 1),
    )  # fmt: skip
    scale = (ENDS - BARS) / values["combined_u"]
    svg.text((NAMES, 24), "Standard uncertainty")
    bars = [(row["what"], row["part"], "wood-mid") for row in rows]
    bars.append(("All of it", values["combined_u"], "metal"))
    for number, (what, part, style) in enumerate(bars):
        y = 40 + ROW * number
        svg.text((NAMES, y + 16), what, "start", "label-small")
        svg.rectangle((BARS, y), max(1.0, part * scale), 20, style)
        svg.text((BARS + part * scale + 8, y + 16), say.quantity(part, "mm", 4), "start",
                 "label-small")  # fmt: skip
    svg.line((BARS, 34), (BARS, 40 + ROW * len(bars)), "ink")
    return svg.markup()


def draw_zones(values: Mapping[str, Any], say: Say) -> str:
    """Limits, guard bands and the reading with its uncertainty, on one line."""
    low: float | None = values.get("limit_low")
    high: float | None = values.get("limit_high")
    expanded, reading = float(values["expanded"]), float(values["reading"])
    ends = [one for one in (low, high) if one is not None]
    reach = max(expanded * 2.2, 0.35 * (max(ends) - min(ends)))
    left = min(ends) - reach * (1.0 if low is not None else 2.5)
    right = max(ends) + reach * (1.0 if high is not None else 2.5)
    svg = Svg(
        "gauge-uncertainty-zones",
        f"Limits, what is accepted, and the reading {say('reading')} with {say('expanded')} on "
        "either side",
        f"{values['verdict']} Accepted readings: {values['zone_words']} From the outside "
        "inwards: rejected, cannot tell, accepted.",
        640, 196,
    )  # fmt: skip

    def at(value: float) -> float:
        return 20 + 600 * min(1.0, max(0.0, (value - left) / (right - left)))

    top, tall = 62.0, 62.0
    # Red first and all the way, then what cannot be told, then green over it.
    svg.rectangle((20, top), 600, tall, "bad")
    unsure_left = at(low - expanded) if low is not None else 20.0
    unsure_right = at(high + expanded) if high is not None else 620.0
    svg.rectangle((unsure_left, top), unsure_right - unsure_left, tall, "lacquer")
    good_left = good_right = (unsure_left + unsure_right) / 2
    if values["zone"] == "yes":
        good_left = at(low + expanded) if low is not None else 20.0
        good_right = max(good_left, at(high - expanded) if high is not None else 620.0)
        svg.rectangle((good_left, top), good_right - good_left, tall, "paper")
        svg.rectangle((good_left, top), good_right - good_left, tall, "good")
    # Words keep clear of the limits' lines, which cut the doubtful bands in two.
    if low is not None:
        named = [("reject", 20.0, unsure_left), ("can't tell", at(low), good_left)]
    else:
        named = []
    if high is not None:
        named += [("can't tell", good_right, at(high)), ("reject", unsure_right, 620.0)]
    for words, start, end in [*named, ("accept", good_left, good_right)]:
        if end - start > 62:
            svg.text(((start + end) / 2, top + tall - 8), words, "middle", "label-small")
    for limit, name, anchor, shift in (
        (low, "limit_low", "end" if high is not None else "middle", -6),
        (high, "limit_high", "start" if low is not None else "middle", 6),
    ):
        if limit is not None:
            x = at(limit)
            svg.line((x, top - 10), (x, top + tall + 12), "ink")
            away = shift if low is not None and high is not None else 0
            svg.text((x + away, top + tall + 30), say(name), anchor)
    accept = values["zone_words"].partition(":")[0].rstrip(".").lower()
    svg.text((320, 26), f"Accept: {accept}", "middle")
    x, y = at(reading), top + tall / 2
    svg.line((at(reading - expanded), y), (at(reading + expanded), y), "accent")
    svg.circle((x, y), 6, "accent-fill")
    place = "" if left <= reading <= right else ", off the paper"
    words = f"reading {say('reading')}, give or take {say('expanded')}{place}"
    svg.text((320, top + tall + 62), words, "middle")
    return svg.markup()
