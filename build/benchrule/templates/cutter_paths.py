"""Where the middle of a beam or cutter has to run so that its edge runs on the template's line.

A beam of light takes away its kerf, a router's tool its diameter; both lie wholly in the waste. What
the tool cannot reach is refused: an inside corner keeps a round, a narrow slot comes out wide.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from ezdxf.math import (
    Vec2,
    has_clockwise_orientation,
    is_point_in_polygon_2d,
    offset_vertices_2d,
)

from .shapes import CannotCut, Point, Stroke, Template

CORNER_LEFT_MM = 0.05  # a round no greater than this in an inside corner is taken for sharp
TOO_NEAR_MM = 0.005  # how far a path may come too near before the tool is too thick for the curve
SAME_MM = 1e-6


@dataclass(frozen=True)
class Path:
    """A path of a cutter's middle, or a line that is left as it is."""

    kind: str
    points: tuple[Point, ...]
    closed: bool


def cutter_paths(
    template: Template, kerf_mm: float = 0.0, tool_diameter_mm: float = 0.0
) -> list[Path]:
    """Every line of a template as it is cut: outlines set off into the waste, slots as rectangles.

    An outline within another is a window, and its waste lies inside it. A slot of known width
    becomes a rectangle less the kerf (a tool as wide as the slot runs along its middle); one of
    unknown width stays its middle line. Marks and guides stay as they are. CannotCut where the
    two are given together or below 0, and where kerf or tool does not go in.
    """
    if min(kerf_mm, tool_diameter_mm) < 0 or not math.isfinite(kerf_mm + tool_diameter_mm):
        raise CannotCut("A kerf and a tool have a width of 0 or more; mend the figure.")
    if kerf_mm and tool_diameter_mm:
        raise CannotCut("Give the kerf of a beam or the diameter of a tool, not both.")
    tool = _Tool(kerf_mm or tool_diameter_mm, "tool" if tool_diameter_mm else "kerf")
    outlines = [one for one in template.strokes if one.kind == "cut"]
    found = []
    for stroke in template.strokes:
        if stroke.kind == "cut":
            found.append(_outline(stroke, outlines, tool))
        elif stroke.kind == "slot" and stroke.width_mm > 0:
            found.append(_slot(stroke, tool))
        else:
            found.append(Path(stroke.kind, stroke.points, stroke.closed))
    return found


@dataclass(frozen=True)
class _Tool:
    width_mm: float
    what: str  # kerf or tool

    @property
    def reach_mm(self) -> float:
        return self.width_mm / 2

    @property
    def words(self) -> str:
        return f"a {self.what} of {self.width_mm:.2f} mm"


def _outline(stroke: Stroke, outlines: Sequence[Stroke], tool: _Tool) -> Path:
    points = Vec2.list(stroke.points)
    around = sum(
        1
        for other in outlines
        if other is not stroke and is_point_in_polygon_2d(points[0], Vec2.list(other.points)) > 0
    )
    window = around % 2 == 1
    # Turned so that the waste lies on the right of the way round.
    if has_clockwise_orientation(points) != window:
        points.reverse()
    if tool.what == "tool":
        _refuse_corners(stroke, points, tool)
    if not tool.reach_mm:
        return Path("cut", tuple((one.x, one.y) for one in points), True)
    path = list(offset_vertices_2d(points, -tool.reach_mm, closed=True))
    _refuse_near(stroke, path, outlines, tool)
    return Path("cut", tuple((one.x, one.y) for one in path), True)


def _refuse_corners(stroke: Stroke, points: Sequence[Vec2], tool: _Tool) -> None:
    """An inside corner is a turn to the right: there the round of the tool leaves wood standing."""
    before, after = points[-1], [*points[1:], points[0]]
    for here, following in zip(points, after, strict=True):
        way, onward = here - before, following - here
        turn = math.atan2(way.det(onward), way.dot(onward))
        left = tool.reach_mm * (1 / max(math.cos(turn / 2), 1e-9) - 1)
        if turn < 0 and left > CORNER_LEFT_MM:
            raise CannotCut(
                f"'{stroke.name}' has an inside corner at {here.x:.1f}, {here.y:.1f} that is narrower "
                f"than {tool.words}: {left:.2f} mm would be left in it. Take a thinner tool, cut it "
                "by laser, or leave the tool out and finish the corner by hand."
            )
        before = here


def _refuse_near(
    stroke: Stroke, path: Sequence[Vec2], outlines: Sequence[Stroke], tool: _Tool
) -> None:
    """A path that comes nearer to an outline than it may cuts into the piece, or into another."""
    least = tool.reach_mm - TOO_NEAR_MM
    low, high = _bounds(path)
    for other in outlines:
        edge = Vec2.list(other.points)
        edge_low, edge_high = _bounds(edge)
        if any(
            edge_low[axis] > high[axis] + least or edge_high[axis] < low[axis] - least
            for axis in (0, 1)
        ):
            continue
        if _comes_within(path, edge, least):
            if other is stroke:
                raise CannotCut(
                    f"'{stroke.name}' has an inside curve that is narrower than {tool.words}. Take a "
                    "thinner one."
                )
            raise CannotCut(
                f"'{stroke.name}' and '{other.name}' lie too near each other for {tool.words}. Take "
                "a thinner one."
            )


def _bounds(points: Sequence[Vec2]) -> tuple[Vec2, Vec2]:
    xs, ys = [one.x for one in points], [one.y for one in points]
    return Vec2(min(xs), min(ys)), Vec2(max(xs), max(ys))


def _comes_within(path: Sequence[Vec2], edge: Sequence[Vec2], least: float) -> bool:
    sides = list(pairwise([*edge, edge[0]]))
    return any(
        _distance(place, start, end) < least
        for place in _along(path)
        for start, end in sides
        if min(start.x, end.x) - least <= place.x <= max(start.x, end.x) + least
        and min(start.y, end.y) - least <= place.y <= max(start.y, end.y) + least
    )


def _along(path: Sequence[Vec2]) -> Iterator[Vec2]:
    """Corners of a path and the middles between them."""
    for start, end in pairwise([*path, path[0]]):
        yield start
        yield start.lerp(end)


def _distance(place: Vec2, start: Vec2, end: Vec2) -> float:
    """From a place to a straight piece of line between two ends."""
    way = end - start
    share = (place - start).dot(way) / way.dot(way)
    if 0 < share < 1:
        return float(abs(way.det(place - start)) / way.magnitude)
    return float(place.distance(start if share <= 0 else end))


def _slot(stroke: Stroke, tool: _Tool) -> Path:
    start, end = Vec2.list(stroke.points)
    length, width = start.distance(end) - tool.width_mm, stroke.width_mm - tool.width_mm
    if width < -SAME_MM or length <= 0:
        size = f"{stroke.width_mm:.2f} mm wide, narrower"
        if width >= -SAME_MM:
            size = f"{start.distance(end):.2f} mm long, shorter"
        raise CannotCut(
            f"'{stroke.name}' is a slot {size} than {tool.words}. Take a thinner one, or saw the slots."
        )
    way = (end - start).normalize(tool.reach_mm) if tool.reach_mm else Vec2()
    start, end = start + way, end - way
    if width <= SAME_MM:
        return Path("slot", ((start.x, start.y), (end.x, end.y)), False)
    aside = (end - start).orthogonal().normalize(width / 2)
    corners = (start - aside, end - aside, end + aside, start + aside)
    return Path("slot", tuple((one.x, one.y) for one in corners), True)
