"""What a template is made of: lines and words at their places, in millimetres.

The origin is the lower left corner; x runs to the right, y upwards. Places are exact: nothing is
rounded before a file is written.
"""

import math
from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Literal

Point = tuple[float, float]
Kind = Literal["cut", "slot", "mark", "guide"]
Anchor = Literal["start", "middle", "end"]
LETTER_SHARE = 0.58  # width of a letter in the height of the type, on the safe side
ROUNDING_MM = 1e-6  # how far floats may carry a point over the edge


class CannotCut(ValueError):
    """Why a template cannot be cut with some kerf or tool: sentences that say what to do."""


@dataclass(frozen=True)
class Stroke:
    """One line of a template.

    ``cut`` is a closed outline that is cut out, ``slot`` a straight saw line of ``width_mm`` (0:
    the width is not known), ``mark`` a line to be transferred to the work, ``guide`` one that only
    helps to lay the template. ``name`` says what it is, such as ``fret 7``.
    """

    kind: Kind
    points: tuple[Point, ...]
    closed: bool = False
    width_mm: float = 0.0
    name: str = ""

    def __post_init__(self) -> None:
        if len(self.points) < (3 if self.closed else 2):
            raise ValueError(f"a {self.kind} has too few points")
        if self.kind == "cut" and not self.closed:
            raise ValueError("a cut is a closed outline; close it or call it a mark")
        if self.kind == "slot" and (self.closed or len(self.points) != 2):
            raise ValueError("a slot is one straight line; give its two ends")
        if self.width_mm < 0 or (self.width_mm > 0 and self.kind != "slot"):
            raise ValueError("only a slot has a width, and none below 0")

    def moved(self, x_mm: float, y_mm: float) -> "Stroke":
        """The same line so far to the right and up."""
        return replace(self, points=tuple((x + x_mm, y + y_mm) for x, y in self.points))


@dataclass(frozen=True)
class Label:
    """Words on a template. ``size_mm`` is the height of the type, ``angle_deg`` turns it leftwards."""

    text: str
    at: Point
    size_mm: float = 3.0
    angle_deg: float = 0.0
    anchor: Anchor = "start"

    def moved(self, x_mm: float, y_mm: float) -> "Label":
        """The same words so far to the right and up."""
        return replace(self, at=(self.at[0] + x_mm, self.at[1] + y_mm))


@dataclass(frozen=True)
class Template:
    """A template as it is drawn, at full size; ``notes`` are sentences on how it is used.

    ValueError where a line or a label lies outside its width and height.
    """

    name: str
    title: str
    width_mm: float
    height_mm: float
    strokes: tuple[Stroke, ...]
    labels: tuple[Label, ...] = ()
    notes: tuple[str, ...] = ()

    def __post_init__(self) -> None:
        places = [(one.name or one.kind, point) for one in self.strokes for point in one.points]
        places += [(one.text, one.at) for one in self.labels]
        for what, (x, y) in places:
            if not (
                -ROUNDING_MM <= x <= self.width_mm + ROUNDING_MM
                and -ROUNDING_MM <= y <= self.height_mm + ROUNDING_MM
            ):
                raise ValueError(f"{self.name}: {what} lies at {x:g}, {y:g}, off the template")

    def named(self, name: str) -> Stroke:
        """The line of this name; KeyError where there is none."""
        for stroke in self.strokes:
            if stroke.name == name:
                return stroke
        raise KeyError(name)


def cut(points: Iterable[Point], name: str = "") -> Stroke:
    """A closed outline to be cut."""
    return Stroke("cut", tuple(points), closed=True, name=name)


def slot(start: Point, end: Point, width_mm: float, name: str = "") -> Stroke:
    """A saw line from end to end of its middle."""
    return Stroke("slot", (start, end), width_mm=width_mm, name=name)


def mark(*points: Point, name: str = "") -> Stroke:
    """A line to be transferred."""
    return Stroke("mark", points, name=name)


def guide(*points: Point, name: str = "") -> Stroke:
    """A line to lay the template by."""
    return Stroke("guide", points, name=name)


def size_within(text: str, room_mm: float, largest_mm: float) -> float:
    """The height of type, mm, with which a text keeps within its room; no letter is measured."""
    return min(largest_mm, room_mm / (len(text) * LETTER_SHARE))


def rectangle(width_mm: float, height_mm: float) -> tuple[Point, ...]:
    """The corners of a rectangle that stands on the origin, anticlockwise."""
    return (0.0, 0.0), (width_mm, 0.0), (width_mm, height_mm), (0.0, height_mm)


def arc_over(chord_mm: float, radius_mm: float, parts: int = 64) -> list[Point]:
    """Points on the arc of a circle over its chord, left to right; the chord lies on y = 0.

    The middle is the highest. Between two points a straight line is off by no more than the fall
    of the whole arc over ``parts`` squared.
    """
    half = math.asin(chord_mm / (2 * radius_mm))
    low = radius_mm * math.cos(half)
    turns = [half * (2 * part / parts - 1) for part in range(1, parts)]
    inner = [
        (chord_mm / 2 + radius_mm * math.sin(turn), radius_mm * math.cos(turn) - low)
        for turn in turns
    ]
    return [(0.0, 0.0), *inner, (chord_mm, 0.0)]
