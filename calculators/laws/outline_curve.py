"""A smooth outline of a body through measured points, mirrored at both ends of its centre line.

Lengths in mm. The half outline starts on the centre line at the neck end, (0, 0), and ends on it
at the tail, (length, 0); the other half is its mirror image, so at both ends it crosses the centre
line at right angles.
"""

import itertools
import math
from collections.abc import Sequence
from typing import NamedTuple

# Gauss-Legendre, 5 points on -1..1 (Abramowitz & Stegun, Table 25.4): the positive half.
MIDDLE_WEIGHT = 0.5688888888888889
NODES = ((0.5384693101056831, 0.4786286704993665), (0.9061798459386640, 0.2369268850561891))


class Place(NamedTuple):
    """A place on the outline: position, and the unit direction of travel from neck to tail."""

    x: float
    y: float
    along_x: float
    along_y: float


class Outline(NamedTuple):
    """A cubic spline for x and one for y over the summed chords ``knots``."""

    knots: tuple[float, ...]
    xs: tuple[float, ...]
    ys: tuple[float, ...]
    bends_x: tuple[float, ...]  # second derivatives at the knots
    bends_y: tuple[float, ...]


def outline_through(points: Sequence[tuple[float, float]]) -> Outline:
    """The outline through points from the neck end to the tail, both ends on the centre line.

    Cubic splines over the chord length (de Boor, A Practical Guide to Splines): x with level ends
    and y with straight ends, which is what the mirror image asks for.
    """
    knots = [0.0]
    for (x1, y1), (x2, y2) in itertools.pairwise(points):
        knots.append(knots[-1] + math.hypot(x2 - x1, y2 - y1))
    xs, ys = zip(*points, strict=True)
    return Outline(
        tuple(knots),
        xs,
        ys,
        _bends(knots, xs, level_ends=True),
        _bends(knots, ys, level_ends=False),
    )


def _bends(knots: Sequence[float], values: Sequence[float], level_ends: bool) -> tuple[float, ...]:
    """Second derivatives at the knots: slopes zero at the ends, or bends zero there."""
    last = len(knots) - 1
    steps = [b - a for a, b in itertools.pairwise(knots)]
    rises = [(b - a) / step for a, b, step in zip(values[:-1], values[1:], steps, strict=True)]
    below, middle, above, right = ([0.0] * (last + 1) for _ in range(4))
    for i in range(1, last):
        below[i], above[i] = steps[i - 1], steps[i]
        middle[i] = 2 * (steps[i - 1] + steps[i])
        right[i] = 6 * (rises[i] - rises[i - 1])
    middle[0] = middle[last] = 1.0
    if level_ends:
        middle[0], above[0], right[0] = 2 * steps[0], steps[0], 6 * rises[0]
        middle[last], below[last], right[last] = 2 * steps[-1], steps[-1], -6 * rises[-1]
    for i in range(1, last + 1):
        share = below[i] / middle[i - 1]
        middle[i] -= share * above[i - 1]
        right[i] -= share * right[i - 1]
    bends = [0.0] * (last + 1)
    bends[last] = right[last] / middle[last]
    for i in range(last - 1, -1, -1):
        bends[i] = (right[i] - above[i] * bends[i + 1]) / middle[i]
    return tuple(bends)


def _at(
    values: Sequence[float], bends: Sequence[float], piece: int, step: float, reach: float
) -> tuple[float, float]:
    """Value and slope of one piece of a spline, ``reach`` beyond its first knot."""
    first, bend = values[piece], bends[piece]
    jerk = (bends[piece + 1] - bend) / (6 * step)
    slope = (values[piece + 1] - first) / step - step * (2 * bend + bends[piece + 1]) / 6
    value = first + reach * (slope + reach * (bend / 2 + reach * jerk))
    return value, slope + reach * (bend + 3 * reach * jerk)


def place_on(outline: Outline, piece: int, share: float) -> Place:
    """The place ``share`` (0 to 1) of the way through a piece between two points."""
    step = outline.knots[piece + 1] - outline.knots[piece]
    reach = share * step
    x, dx = _at(outline.xs, outline.bends_x, piece, step, reach)
    y, dy = _at(outline.ys, outline.bends_y, piece, step, reach)
    speed = math.hypot(dx, dy)
    return Place(x, y, dx / speed, dy / speed) if speed else Place(x, y, 0.0, 0.0)


def pieces_of(outline: Outline) -> list[tuple[float, float]]:
    """Length, mm, of each piece between two points, and half the area under it, mm².

    Gauss's rule with 5 points in each half of a piece; the area of both halves of the body is
    twice the sum.
    """
    found = []
    for piece in range(len(outline.knots) - 1):
        step = outline.knots[piece + 1] - outline.knots[piece]
        length = area = 0.0
        for middle in (step / 4, step * 3 / 4):
            for node, weight in ((0.0, MIDDLE_WEIGHT), *NODES):
                for side in (-1, 1) if node else (1,):
                    reach = middle + side * node * step / 4
                    _, dx = _at(outline.xs, outline.bends_x, piece, step, reach)
                    y, dy = _at(outline.ys, outline.bends_y, piece, step, reach)
                    length += weight * math.hypot(dx, dy) * step / 4
                    area += weight * y * dx * step / 4
        found.append((length, area))
    return found
