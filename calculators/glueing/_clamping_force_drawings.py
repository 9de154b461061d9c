"""The pictures of the clamping calculation: the cauls and cones, and the pressure on the joint."""

from collections.abc import Mapping
from typing import Any

from ..engine.compute import Say
from ..engine.drawing import Svg
from ..engine.plot import Axis, Plot
from ..engine.reading import convert
from ..engine.showing import reader_unit
from ..engine.unit_table import UNITS
from ._clamping_force_work import centres_mm

LEFT, ACROSS = 40.0, 560.0
LEAST_BAND, MOST_STACK = 14.0, 260.0


def draw_stack(values: Mapping[str, Any], say: Say) -> str:
    """The joint from the side: clamps, caul, parts; the 45 degree cones of every clamp."""
    length = values["joint_length"]
    scale = ACROSS / length
    bands = [
        ("wood-light", values["caul_thickness"], f"caul {say('caul_thickness')}"),
        ("wood-dark", values["part_thickness"], f"above the joint {say('part_thickness')}"),
        ("wood-mid", values["bed_thickness"], f"below the joint {say('bed_thickness')}"),
    ]
    if values["below"] == "caul":
        bands.append(
            ("wood-light", values["lower_caul_thickness"], f"caul {say('lower_caul_thickness')}")
        )
    # True heights where they can be seen and fit; else each band is drawn high enough to see.
    squeeze = min(1.0, MOST_STACK / (scale * sum(band[1] for band in bands)))
    heights = [max(LEAST_BAND, band[1] * scale * squeeze) for band in bands]
    true = squeeze == 1.0 and all(
        abs(height - band[1] * scale) < 1e-9 for height, band in zip(heights, bands, strict=True)
    )
    top = 84.0
    foot = top + sum(heights)
    svg = Svg(
        "clamping-force-stack",
        f"{values['clamps']} clamps of {say('force')} on a joint {say('joint_length')} long",
        "From above: clamps, caul, the part above the joint, the part below it"
        + (", a second caul. " if values["below"] == "caul" else ", a stiff bench. ")
        + f"From every pad lines run down at 45 degrees as far as the joint, where each presses "
        f"{say('cone')}.",
        640, foot + 30 + 24 * len(bands) + 12,
    )  # fmt: skip
    y = top
    for (style, _, _), height in zip(bands, heights, strict=True):
        svg.rectangle((LEFT, y), ACROSS, height, style)
        y += height
    joint = top + heights[0] + heights[1]
    svg.line((LEFT, joint), (LEFT + ACROSS, joint), "accent")
    if values["below"] == "bench":
        svg.rectangle((LEFT - 12, foot), ACROSS + 24, 10, "metal")
    pad = values["pad_width"] / 2
    cone = values["cone"] / 2
    for centre in centres_mm(length, values["clamps"], values["end_distance"]):
        x = LEFT + centre * scale
        svg.rectangle((x - pad * scale, top - 7), 2 * pad * scale, 7, "metal")
        svg.line((x, top - 34), (x, top - 9), "ink")
        svg.polygon(((x - 5, top - 17), (x + 5, top - 17), (x, top - 8)), "ink-fill")
        for side in (-1, 1):
            end, down = _stop(centre, side * pad, side * cone, length)
            svg.line(
                (x + side * pad * scale, top),
                (LEFT + end * scale, top + down * (joint - top)),
                "hidden",
            )
    count = values["clamps"]
    svg.text(
        (320, 24), f"{count} {'clamp' if count == 1 else 'clamps'} of {say('force')}", "middle"
    )
    note = "to scale" if true else "heights not to scale"
    svg.text((320, 44), note, "middle", "label-small")
    for number, (style, _, words) in enumerate(bands):
        line = foot + 36 + 24 * number
        svg.rectangle((LEFT, line - 12), 26, 14, style)
        svg.text((LEFT + 36, line), words)
    svg.line((330, foot + 30), (360, foot + 30), "accent")
    svg.text((370, foot + 36), "joint")
    svg.line((330, foot + 54), (360, foot + 54), "hidden")
    svg.text((370, foot + 60), f"45 degrees: {say('cone')} a clamp")
    return svg.markup()


def _stop(centre: float, pad: float, cone: float, length: float) -> tuple[float, float]:
    """Where a cone's edge ends, mm from the left, and at what share of the way down.

    It runs from the pad's edge to the joint, or to the end of the parts if that comes first.
    """
    end = centre + cone
    inside = min(length, max(0.0, end))
    return inside, (inside - centre - pad) / (cone - pad)


def draw_pressure(values: Mapping[str, Any], say: Say) -> str:
    """Pressure along the joint, between the least and the greatest wanted."""
    length, low, high = values["joint_length"], values["pressure_low"], values["pressure_high"]
    half: list[tuple[float, float]] = values["profile"]
    points = [*half, *((length - x, p) for x, p in reversed(half[:-1]))]
    greatest, least = values["greatest_pressure"], values["least_pressure"]
    top = 1.2 * max(greatest, low, min(high, 2 * greatest))
    bottom = min(0.0, 1.2 * least)
    long_unit, unit = reader_unit("mm", say.system), reader_unit("MPa", say.system)
    per, per_pressure = convert(1.0, "mm", long_unit), convert(1.0, "MPa", unit)
    plot = Plot(
        "clamping-force-pressure",
        f"Pressure along the joint, {say('least_pressure')} to {say('greatest_pressure')}",
        f"A curve over the length of the joint, high under the clamps. The tinted band is what is "
        f"wanted, {say('pressure_low')} to {say('pressure_high')}. {values['verdict']}",
        Axis(f"Along the joint, {UNITS[long_unit].shown}", 0, length * per),
        Axis(f"Pressure, {UNITS[unit].shown}", bottom * per_pressure, top * per_pressure),
    )
    ceiling = min(high, top)
    band = [(0.0, low), (length, low), (length, ceiling), (0.0, ceiling)]
    plot.area([(x * per, p * per_pressure) for x, p in band], "good")
    if bottom < 0:
        plot.curve([(0.0, 0.0), (length * per, 0.0)], "thin")
    mean = values["mean_pressure"] * per_pressure
    plot.curve([(0.0, mean), (length * per, mean)], "hidden")
    plot.curve([(x * per, p * per_pressure) for x, p in points], "accent")
    for centre in centres_mm(length, values["clamps"], values["end_distance"]):
        x, _ = plot.place((centre * per, bottom))
        plot.svg.polygon(((x - 6, 38), (x + 6, 38), (x, 52)), "ink-fill")
    svg = plot.svg
    start = svg.height
    key = (("good", "wanted"), ("accent", "pressure"), ("hidden", "mean"))
    for number, (style, words) in enumerate(key):
        x = 62 + 190 * number
        if style == "good":
            svg.rectangle((x, start + 6), 34, 16, style)
        else:
            svg.line((x, start + 14), (x + 34, start + 14), style)
        svg.text((x + 44, start + 19), words)
    svg.height = start + 34
    return plot.markup()
