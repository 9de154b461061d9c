"""Plots on two straight axes, drawn with ``drawing.Svg``: curves, areas, levels, marks."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from .drawing import Point, Svg
from .showing import half_up

LEFT, RIGHT, TOP, BOTTOM = 62.0, 18.0, 34.0, 58.0


@dataclass(frozen=True)
class Axis:
    """One axis: its words (with the unit) and the range it covers, in what it prints."""

    words: str
    lowest: float
    highest: float


def nice_ticks(lowest: float, highest: float, about: int = 6) -> list[float]:
    """Round figures (1, 2 or 5 times a power of ten) that cover the range."""
    span = highest - lowest
    if not span > 0:
        return [lowest]
    raw = span / about
    power = 10.0 ** math.floor(math.log10(raw))
    step = next(m * power for m in (1, 2, 5, 10) if m * power >= raw * (1 - 1e-9))
    first = math.ceil(lowest / step - 1e-9)
    last = math.floor(highest / step + 1e-9)
    return [number * step for number in range(first, last + 1)]


class Plot:
    """A plot under way; points are in the figures of the axes."""

    def __init__(
        self, name: str, title: str, description: str, across: Axis, up: Axis,
        width: float = 640, height: float = 380,
    ) -> None:  # fmt: skip
        self.svg = Svg(name, title, description, width, height)
        self.across = across
        self.up = up
        self._frame()

    def place(self, point: Point) -> Point:
        """Where a point of the axes lies on the paper; what lies outside goes to the edge."""
        share_x = (point[0] - self.across.lowest) / (self.across.highest - self.across.lowest)
        share_y = (point[1] - self.up.lowest) / (self.up.highest - self.up.lowest)
        width = self.svg.width - LEFT - RIGHT
        height = self.svg.height - TOP - BOTTOM
        share_x, share_y = min(1.0, max(0.0, share_x)), min(1.0, max(0.0, share_y))
        return LEFT + share_x * width, TOP + (1 - share_y) * height

    def _frame(self) -> None:
        left, right = LEFT, self.svg.width - RIGHT
        top, bottom = TOP, self.svg.height - BOTTOM
        self.svg.rectangle((left, top), right - left, bottom - top, "paper")
        for ticks, axis in (
            (nice_ticks(self.across.lowest, self.across.highest, 7), self.across),
            (nice_ticks(self.up.lowest, self.up.highest, 5), self.up),
        ):
            decimals = _decimals(ticks)
            for tick in ticks:
                words = half_up(tick, decimals)
                if axis is self.across:
                    x, _ = self.place((tick, self.up.lowest))
                    self.svg.line((x, top), (x, bottom), "grid")
                    self.svg.text((x, bottom + 20), words, "middle", "label-small")
                else:
                    _, y = self.place((self.across.lowest, tick))
                    self.svg.line((left, y), (right, y), "grid")
                    self.svg.text((left - 8, y + 5), words, "end", "label-small")
        self.svg.polyline(((left, top), (left, bottom), (right, bottom)), "ink")
        self.svg.text(((left + right) / 2, self.svg.height - 12), self.across.words, "middle")
        self.svg.text((left - 44, top - 14), self.up.words)

    def curve(self, points: Sequence[Point], style: str = "ink") -> None:
        """A curve through points."""
        self.svg.polyline([self.place(point) for point in points], style)

    def area(self, points: Sequence[Point], style: str) -> None:
        """A filled area."""
        self.svg.polygon([self.place(point) for point in points], style)

    def level(self, value: float, words: str, style: str = "hidden") -> None:
        """A level line across the plot, named at its right end."""
        _, y = self.place((self.across.lowest, value))
        self.svg.line((LEFT, y), (self.svg.width - RIGHT, y), style)
        self.svg.text((self.svg.width - RIGHT - 6, y - 6), words, "end", "label-small")

    def upright(self, value: float, words: str, style: str = "accent") -> None:
        """An upright line at ``value``, named at its top."""
        x, _ = self.place((value, self.up.lowest))
        self.svg.line((x, TOP), (x, self.svg.height - BOTTOM), style)
        anchor = "end" if x > self.svg.width * 0.7 else "start"
        self.svg.text((x + (-6 if anchor == "end" else 6), TOP + 16), words, anchor, "label-small")

    def mark(self, point: Point, words: str = "", style: str = "accent-fill") -> None:
        """A dot with words beside it."""
        x, y = self.place(point)
        self.svg.circle((x, y), 5, style)
        if words:
            anchor = "end" if x > self.svg.width * 0.6 else "start"
            self.svg.text((x + (-10 if anchor == "end" else 10), y - 8), words, anchor)

    def markup(self) -> str:
        """The finished plot."""
        return self.svg.markup()


def _decimals(ticks: Sequence[float]) -> int:
    step = ticks[1] - ticks[0] if len(ticks) > 1 else 1.0
    return max(0, -math.floor(math.log10(step) + 1e-9)) if step < 1 else 0
