"""The pictures of the dilution calculation: air as bars, vapour against the clock."""

import math
from collections.abc import Callable, Mapping
from typing import Any

from ..engine.drawing import Svg
from ..engine.plot import Axis, Plot

LEFT, LONGEST, BAR = 24.0, 590.0, 30.0


def draw_air(values: Mapping[str, Any], say: Callable[[str], str]) -> str:
    """Air drawn out now beside the air that fire and lungs ask for."""
    bars = (
        ("Drawn out now", "air_flow", "metal"),
        ("Against fire", "fire_air", "glue"),
        ("For lungs", "health_air", "lacquer"),
    )
    most = max(values[name] for _, name, _ in bars)
    svg = Svg(
        "make-up-air-air", "Air drawn out and air needed",
        f"The fan draws {say('air_flow')}; against fire {say('fire_air')} are needed, for lungs "
        f"{say('health_air')}.",
        640, 228,
    )  # fmt: skip
    for place, (words, name, style) in enumerate(bars):
        y = 14 + 70 * place
        length = LONGEST * values[name] / most
        svg.text((LEFT + 8, y + 14), f"{words}: {say(name)}")
        svg.rectangle((LEFT, y + 22), max(1.0, length), BAR, style)
    svg.line((LEFT, 10), (LEFT, 218), "ink")
    now = LEFT + LONGEST * values["air_flow"] / most
    for y in (106, 176):
        svg.line((now, y - 6), (now, y + BAR + 6), "hidden")
    return svg.markup()


def vapour_after(values: Mapping[str, Any], minutes: float) -> float:
    """Vapour in ppm so many minutes after spraying began, from clean air, by the mixing time."""
    spraying = min(minutes, values["spray_time"])
    level = values["level_now"] * -math.expm1(-spraying / values["mixing_time"])
    return float(level * math.exp(-(minutes - spraying) / values["mixing_time"]))


def draw_time(values: Mapping[str, Any], say: Callable[[str], str]) -> str:
    """Vapour in the room while spraying and afterwards."""
    last = values["spray_time"] + max(values["clear_time"], values["safe_time"], 1.0) * 1.15
    limit, fire = values["mix_limit"], values["fire_aim"] * values["ppm_per_percent"]
    peak = vapour_after(values, values["spray_time"])
    top = max(1.25 * limit, 1.2 * peak)
    plot = Plot(
        "make-up-air-time", "Vapour in the room against the clock",
        f"Spraying for {say('spray_time')}, the vapour rises towards {say('level_now')}; the "
        f"exposure limit of the mixture is {say('mix_limit')}.",
        Axis("minutes from the first coat", 0, last), Axis("vapour, ppm", 0, top),
    )  # fmt: skip
    plot.area(((0, 0), (0, limit), (last, limit), (last, 0)), "good")
    if fire < 0.97 * top:
        plot.area(((0, fire), (0, top), (last, top), (last, fire)), "bad")
    stops = values["spray_time"]
    times = [stops * (n / 20) ** 2 for n in range(21)]
    times += [stops + (last - stops) * (n / 30) ** 2 for n in range(1, 31)]
    plot.curve([(time, vapour_after(values, time)) for time in times], "accent")
    plot.level(limit, f"exposure limit, {say('mix_limit')}")
    if limit + 0.08 * top < fire < 0.9 * top:
        plot.level(fire, f"kept below for fire, {say('fire_aim')}")
    plot.svg.text((334, 22), "spraying stops at the dashes", "start", "label-small")
    x, _ = plot.place((stops, 0))
    plot.svg.line((x, 34), (x, 322), "hidden")
    return plot.markup()
