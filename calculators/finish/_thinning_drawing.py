"""The plot of the thinning calculation: seconds in the cup against thinner added."""

import math
from collections.abc import Mapping
from typing import Any

from ..engine.compute import Say
from ..engine.plot import LEFT, RIGHT, TOP, Axis, Plot
from ..laws.flow_cups import seconds_for
from ._thinning_solved import trial_points

CURVE_POINTS = 14


def draw_seconds(values: Mapping[str, Any], say: Say) -> str:
    """Seconds against thinner: the trials, the line through them, what is wanted."""
    cup, needed, wanted = values["cup"], values["thinner_needed"], values["wanted_seconds"]
    points = trial_points(values["trials"], cup)
    tried = sorted((row["trial_thinner"], row["trial_seconds"]) for row in values["trials"])
    farthest = max(1.25 * needed, 1.1 * tried[-1][0], 5.0)
    highest = 1.2 * max(wanted, tried[0][1])

    def seconds(thinner: float) -> float:
        share = thinner / (100 + thinner)
        place = 1
        while place < len(points) - 1 and points[place][0] < share:
            place += 1
        (x1, y1), (x2, y2) = points[place - 1], points[place]
        height = y1 + (share - x1) * (y2 - y1) / (x2 - x1)
        return seconds_for(cup, math.exp(min(height, 60.0)))

    plot = Plot(
        "thinning-seconds",
        f"Seconds in the cup against thinner: {say('wanted_seconds')} needs "
        f"{say('thinner_needed')}",
        f"Seconds upwards, thinner to 100 parts of lacquer across. Dots are the trials, the line "
        f"runs through them, broken where it is a guess. {values['trial_words']}",
        Axis("Thinner to 100 parts of lacquer, %", 0, farthest),
        Axis("Seconds in the cup", 0, highest),
    )
    for low, high, style in (
        (0.0, tried[0][0], "hidden"), (tried[0][0], tried[-1][0], "second"),
        (tried[-1][0], farthest, "hidden"),
    ):  # fmt: skip
        if high > low:
            steps = [low + (high - low) * n / CURVE_POINTS for n in range(CURVE_POINTS + 1)]
            shown = [(x, seconds(x)) for x in steps]
            kept = [point for point in shown if point[1] <= highest]
            if len(kept) > 1:
                plot.curve(kept, style)
    for thinner, time in tried:
        plot.mark((thinner, time), style="second-fill")
    plot.svg.line(plot.place((0, wanted)), plot.place((needed, wanted)), "accent")
    plot.svg.line(plot.place((needed, wanted)), plot.place((needed, 0)), "accent")
    plot.mark((needed, wanted))
    x, y = plot.place((needed, wanted))
    across = plot.svg.width - LEFT - RIGHT
    words = f"{say('wanted_seconds')} at {say('thinner_needed')}"
    # The curve falls to the right: words that clear it at their left end clear it everywhere.
    left = min(x + 12, 616 - 9.2 * len(words))
    _, over = plot.place((0, seconds(max(0.0, (left - LEFT) / across * farthest))))
    plot.svg.text((left, max(TOP + 18, min(y, over) - 12)), words)
    return plot.markup()
