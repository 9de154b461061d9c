"""The pictures of the kerf calculation: the lining in its curve, and the map of its limits."""

import itertools
import math
from collections.abc import Mapping
from typing import Any

from ..engine.compute import Say
from ..engine.drawing import Point, Svg
from ..engine.plot import Axis, Plot
from ..engine.reading import convert
from ..engine.showing import reader_unit
from ..engine.unit_table import UNITS

ROOM_ACROSS, ROOM_UP = 560.0, 300.0
MOST_TEETH = 7
MOST_TURN = 1.5  # rad; more would not fit as an arch
CURVE_POINTS = 24


def draw_teeth(values: Mapping[str, Any], say: Say) -> str:
    """Some teeth in the tightest curve, side above, kerfs towards the box; all to scale."""
    spacing, radius, width = values["kerf_spacing"], values["bend_radius"], values["lining_width"]
    turn = spacing / radius
    teeth = max(2, min(MOST_TEETH, int(MOST_TURN / turn)))
    half_turn = teeth * turn / 2
    outer = radius + values["web"] / 2
    side = max(0.25 * width, 1.5)
    bottom = (outer - width) * math.cos(half_turn)
    left = (outer + side) * math.sin(half_turn)
    scale = min(ROOM_ACROSS / (2 * left), ROOM_UP / (outer + side - bottom))
    top = 66.0

    def paper(x: float, up: float) -> Point:
        return 320 + x * scale, top + (outer + side - up) * scale

    def around(distance: float, angle: float) -> Point:
        return paper(distance * math.sin(angle), distance * math.cos(angle))

    def in_tooth(angle: float, across: float, up: float) -> Point:
        """A point of the tooth that stands at ``angle``, from the middle of its web's line."""
        x = across * math.cos(angle) + (radius + up) * math.sin(angle)
        return paper(x, (radius + up) * math.cos(angle) - across * math.sin(angle))

    closed = values["mouth"] < 0
    svg = Svg(
        "kerf-spacing-teeth",
        f"The lining in the {values['tight_place']}, radius {say('tight_radius')}, drawn to scale",
        f"Teeth of a lining bent against the side, kerfs towards the box. Kerfs {say('kerf_width')}"
        f" wide every {say('kerf_spacing')} "
        + (
            f"run into each other: they close at {say('closes_radius')} already."
            if closed
            else f"stay open {say('mouth')} at the mouth."
        ),
        640, top + (outer + side - bottom) * scale + 44,
    )  # fmt: skip
    steps = [half_turn * (number / 12 - 1) for number in range(25)]
    svg.polygon(
        [*(around(outer + side, a) for a in steps), *(around(outer, a) for a in reversed(steps))],
        "wood-dark",
    )
    flat, web = values["flat"] / 2, values["web"] / 2
    depth = values["mouth_depth"]
    angles = [turn * (number - (teeth - 1) / 2) for number in range(teeth)]
    for before, after in itertools.pairwise(angles):
        svg.polygon(
            (in_tooth(before, flat, web), in_tooth(after, -flat, web),
             in_tooth(after, -flat, -web), in_tooth(before, flat, -web)),
            "wood-light",
        )  # fmt: skip
    for angle in angles:
        svg.polygon(
            [in_tooth(angle, x, up) for x, up in
             ((-flat, web), (flat, web), (flat, -depth), (-flat, -depth))],
            "wood-light",
        )  # fmt: skip
    if closed:
        for before in angles[:-1]:
            svg.circle(around(radius - depth, before + turn / 2), 6, "accent")
    words = f"{values['tight_place']}: radius {say('tight_radius')}"
    svg.text((320, 24), words, "middle")
    svg.text((320, 48), f"kerfs {say('kerf_width')} every {say('kerf_spacing')}", "middle")
    foot = svg.height - 14
    svg.text(
        (320, foot),
        f"too soon: the kerfs close at {say('closes_radius')} already" if closed
        else f"kerfs stay open {say('mouth')}, {say('sag')} behind a tooth",
        "middle",
    )  # fmt: skip
    return svg.markup()


def draw_map(values: Mapping[str, Any], say: Say) -> str:
    """The widest spacing by each limit against the radius; every curve as a dot."""
    spacing = values["kerf_spacing"]
    places = values["places"]
    widest_radius = max(place["radius"] for place in places)
    farthest = 1.25 * widest_radius
    top = 2.2 * spacing
    unit = reader_unit("mm", say.system)
    per = convert(1.0, "mm", unit)
    plot = Plot(
        "kerf-spacing-map",
        f"Spacing against radius; yours is {say('kerf_spacing')}",
        "Three curves rise with the radius: the spacing at which kerfs close, teeth get too long, "
        f"and webs break. Below all three is safe. {values['verdict']}",
        Axis(f"Radius of the side, {UNITS[unit].shown}", 0, farthest * per),
        Axis(f"Spacing, {UNITS[unit].shown}", 0, top * per),
    )
    radii = [farthest * (number / CURVE_POINTS) ** 2 for number in range(CURVE_POINTS + 1)]
    curves = [[limit(values, radius) for radius in radii] for limit in (_close, _sag, _web)]
    floor = [min(top, *heights) for heights in zip(*curves, strict=True)]
    area = [(0.0, 0.0), *zip(radii, floor, strict=True), (farthest, 0.0)]
    plot.area([(x * per, y * per) for x, y in area], "good")
    styles = ("accent", "second", "hidden")
    for heights, style in zip(curves, styles, strict=True):
        shown = [(x * per, y * per) for x, y in _below(radii, heights, top)]
        plot.curve(shown, style)
    for place in places:
        plot.mark((place["radius"] * per, spacing * per))
    svg = plot.svg
    start = svg.height
    key = (("accent", "kerfs close above this"), ("second", "teeth too long above this"),
           ("hidden", "webs break above this"), ("accent-fill", "your spacing, each curve"))  # fmt: skip
    for number, (style, words) in enumerate(key):
        x, y = 62 + 290 * (number // 2), start + 14 + 24 * (number % 2)
        if style == "accent-fill":
            svg.circle((x + 17, y), 5, style)
        else:
            svg.line((x, y), (x + 34, y), style)
        svg.text((x + 44, y + 5), words)
    svg.height = start + 60
    return plot.markup()


def _below(radii: list[float], heights: list[float], top: float) -> list[Point]:
    """A rising curve as far as it stays on the paper, ending on its upper edge."""
    kept: list[Point] = []
    for radius, height in zip(radii, heights, strict=True):
        if height > top:
            (x, y), share = kept[-1], 0.0
            share = (top - y) / (height - y)
            kept.append((x + share * (radius - x), top))
            break
        kept.append((radius, height))
    return kept


def _close(values: Mapping[str, Any], radius: float) -> float:
    """Spacing, mm, at which the kerfs just close in a curve of ``radius`` mm."""
    kerf = values["kerf_width"] - values["mouth_left"]
    return float(kerf * max(0.0, radius - values["web"] / 2) / values["mouth_depth"])


def _sag(values: Mapping[str, Any], radius: float) -> float:
    """Spacing, mm, at which the gap behind a tooth is just what is allowed."""
    gap = min(values["gap_allowed"], radius)
    return float(values["kerf_width"] + 2 * math.sqrt(2 * radius * gap - gap**2))


def _web(values: Mapping[str, Any], radius: float) -> float:
    """Spacing, mm, at which the web just holds."""
    hinge = values["kerf_width"] + values["hinge_share"] * values["web"]
    bend = max(0.0, radius - values["web"] / 2)
    return float(2 * values["web_stretch"] / 100 * hinge * bend / values["web"])
