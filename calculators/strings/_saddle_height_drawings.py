"""The pictures of the saddle-height calculation: the string from the side, the gaps by fret."""

from collections.abc import Mapping
from typing import Any

from ..engine.compute import Say
from ..engine.drawing import Svg
from ..engine.plot import Axis, Plot
from ..engine.reading import convert
from ..engine.showing import reader_unit
from ..engine.unit_table import UNITS
from ..laws.string_over_frets import Line, Neck, fret_place_mm, neck_rise_mm, string_line
from ._plot_key import add_key

LEFT, RIGHT, TALL = 44.0, 560.0, 92.0
BOARD, DEEP = 20.0, 30.0


def draw_side(values: Mapping[str, Any], say: Say) -> str:
    """Nut, frets and saddle from the side, once for each outer string; heights drawn large."""
    svg = Svg(
        "saddle-height-side",
        f"The saddle cut by {say('saddle_cut_bass')} bass and {say('saddle_cut_treble')} treble, "
        "from the side",
        "Two views from the side, bass string above, treble string below, heights drawn much "
        "larger than lengths. The broken line is the string now, the full line the string "
        f"afterwards; the reddened part of the saddle comes off. {values['verdict']}",
        640, 486,
    )  # fmt: skip
    views = [_View(values, side) for side in ("bass", "treble")]
    heights = [height for view in views for height in view.heights()]
    scale = min(TALL / max(heights), DEEP / max(0.01, -min(heights)))
    for ground, view in zip((170.0, 392.0), views, strict=True):
        _draw_view(svg, say, view, ground, scale)
    svg.text((320, 476), "Heights are drawn much larger than lengths", "middle", "label-small")
    return svg.markup()


class _View:
    """One outer string from the side: the neck afterwards, the string before and after."""

    def __init__(self, values: Mapping[str, Any], side: str) -> None:
        self.values, self.side = values, side
        self.length = values[f"string_{side}"]
        self.neck = self._neck(values["relief"])
        before = self._neck(values["relief_before"])
        self.after = string_line(
            self.neck,
            values[f"first_fret_gap_{side}_after"],
            values[f"action_{side}"],
            self.length,
            0,
        )
        self.before = string_line(
            before, values[f"first_fret_gap_{side}"], values[f"action_{side}_now"], self.length, 0
        )

    def _neck(self, relief: float) -> Neck:
        return Neck(self.values["scale_length"], self.values["body_joint_fret"], relief, 0, 1, 1)

    def heights(self) -> list[float]:
        """Heights that must find room on the paper, in mm."""
        lines: tuple[Line, ...] = (self.before, self.after)
        return [0.3, *(one.at_saddle_mm for one in lines), *(one.at_nut_mm for one in lines)]


def _draw_view(svg: Svg, say: Say, view: _View, ground: float, scale: float) -> None:
    """One view: ``ground`` is where the line of the frets runs, ``scale`` user units a mm."""
    values, side = view.values, view.side
    along = (RIGHT - LEFT) / view.length

    def at(from_nut: float, height: float) -> tuple[float, float]:
        return LEFT + from_nut * along, ground - height * scale

    places = [fret_place_mm(values["scale_length"], n) for n in range(values["frets"] + 1)]
    tops = [at(x, neck_rise_mm(view.neck, x)) for x in places]
    end = tops[-1][0] + 6
    upper = [(LEFT - 10, tops[0][1] + 8), *((x, y + 8) for x, y in tops), (end, tops[-1][1] + 8)]
    under = [(x, y + BOARD) for x, y in reversed(upper)]
    svg.polygon([*upper, *under], "wood-dark board")
    for number, (x, y) in enumerate(tops[1:], start=1):
        svg.line((x, y), (x, y + 9), "accent" if number == 12 else "ink")
    bridge_top = ground + 34
    svg.rectangle((RIGHT - 26, bridge_top), 58, 20, "wood-mid")
    before, after = view.before.at_saddle_mm, view.after.at_saddle_mm
    _, crest_before = at(0, before)
    _, crest_after = at(0, after)
    svg.rectangle((RIGHT - 7, crest_after), 14, bridge_top + 8 - crest_after, "felt")
    if crest_before < crest_after - 0.3:
        svg.rectangle((RIGHT - 7, crest_before), 14, crest_after - crest_before, "bad")
    nut_top = ground - view.after.at_nut_mm * scale
    svg.rectangle((LEFT - 12, nut_top), 12, upper[0][1] + 8 - nut_top, "felt")
    svg.line(at(0, view.before.at_nut_mm), at(view.length, before), "hidden")
    svg.line(at(0, view.after.at_nut_mm), at(view.length, after), "ink")
    octave, _ = at(values["octave_fret"], 0)
    words = f"12th: {say(f'action_{side}_now')} now, {say(f'action_{side}')} wanted"
    top = ground - TALL - 30
    svg.text((LEFT - 12, top), side.capitalize(), "start")
    svg.text((octave, top), words, "middle")
    svg.line((octave, top + 8), (octave, tops[12][1] - 3), "thin")
    cut = say(f"saddle_cut_{side}").removeprefix("-")
    verb = "raise" if values[f"saddle_cut_{side}"] < -0.005 else "off"
    svg.text((632, top), f"{verb} {cut}", "end")
    svg.text((LEFT - 12, ground + 76), f"first fret: {say(f'first_fret_gap_{side}_after')}", "start",
             "label-small")  # fmt: skip
    svg.text((632, ground + 76), "saddle, in the bridge", "end", "label-small")


def draw_gaps(values: Mapping[str, Any], say: Say) -> str:
    """Gap over each fret, open and pressed, of both outer strings."""
    unit = reader_unit("mm", say.system)
    factor = convert(1.0, "mm", unit)
    rows = values["gap_rows"]

    def curve(column: str) -> list[tuple[float, float]]:
        return [(row["fret"], row[column] * factor) for row in rows if row[column] is not None]

    curves = {name: curve(name) for name in
              ("open_bass", "open_treble", "pressed_bass", "pressed_treble")}  # fmt: skip
    seen = [y for points in curves.values() for _, y in points]
    bottom = min(0.0, min(seen) * 1.1)
    plot = Plot(
        "saddle-height-gaps",
        f"Gap of the strings over the frets; least beyond a pressed fret {say('least_bass')} bass, "
        f"{say('least_treble')} treble",
        "Fret across, gap upwards. Full lines: the open string over each fret. Broken and thin "
        "lines: the string pressed at a fret, and its least gap over the frets beyond.",
        Axis("Fret", 1, values["frets"]), Axis(f"Gap, {UNITS[unit].shown}", bottom,
                                               max(seen) * 1.08 or 1.0),
    )  # fmt: skip
    marks = []
    for name, style, words in (
        ("open_bass", "ink", "bass, open"), ("open_treble", "second", "treble, open"),
        ("pressed_bass", "hidden", "bass, pressed there"),
        ("pressed_treble", "dim", "treble, pressed there"),
    ):  # fmt: skip
        plot.curve(curves[name], style)
        marks.append((style, words))
    add_key(plot.svg, marks)
    return plot.markup()
