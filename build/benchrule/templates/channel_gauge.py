"""Gauges for the channels of binding and purfling: the whole profile, and feet of every size."""

from collections.abc import Sequence

from calculators.engine.compute import Answer

from ..instruments import Instrument
from .answers import answer_of, example_notes, mm
from .pieces import Piece, lay_out
from .shapes import Label, Point, Template, cut

NAME, TITLE = "channel-gauge", "Gauges for the channels"
CALCULATOR = "channel-cut"
MATTERS = ("strips", "proud_side", "proud_top", "cement_film", "swelling")
OUTSIDE_MM, ABOVE_MM, ON_MM = 16.0, 18.0, 26.0  # profile gauge beside the side and over the plate
FOOT_MM, BETWEEN_MM, BASE_MM = 9.0, 11.0, 15.0  # feet of a gauge, and its back
LEAST_FOOT_MM = 0.1
WIDEST_MM = 170.0


def draw_channel_gauge(instrument: Instrument) -> Template:
    """The profile of all channels, and for each a gauge inwards and one down with three feet."""
    answer = answer_of(instrument, CALCULATOR)
    cuts = answer.tables["cut_list"]
    deep, low = answer.values["depth_limit"], answer.values["height_limit"]
    pieces = [_profile(answer)]
    inwards = 0.0
    for row in cuts:
        inwards += row["width"]
        what = str(row["cut"])
        pieces.append(_feet(f"{what}, inwards from the side", inwards, deep))
        pieces.append(_feet(f"{what}, down from the plate", row["height"], low))
    notes = [
        "The profile gauge lies against side and plate at once and fills the channel and its ledges.",
        "The others: back on the side (or the plate), foot in the channel. The left foot lets the "
        "back touch, the right one does not: then the cut is within its limits.",
        *example_notes(instrument, {CALCULATOR: MATTERS}),
    ]
    return lay_out(NAME, TITLE, pieces, WIDEST_MM, notes)


def steps(cuts: Sequence[tuple[float, float]]) -> list[Point]:
    """The channels in section from the side inwards: the side is x = 0, the plate is y = 0.

    ``cuts`` are (width, height) in mm, the outermost first; heights count downwards.
    """
    points: list[Point] = []
    x = 0.0
    for width, height in cuts:
        points += [(x, -height), (x + width, -height)]
        x += width
    return [*points, (x, 0.0)]


def _profile(answer: Answer) -> Piece:
    section = steps([(row["width"], row["height"]) for row in answer.tables["cut_list"]])
    deepest, wide = -section[0][1], section[-1][0]
    foot = deepest + ABOVE_MM
    outline = [
        (0.0, 0.0), (OUTSIDE_MM, 0.0), *((OUTSIDE_MM + x, foot + y) for x, y in section),
        (OUTSIDE_MM + wide + ON_MM, foot), (OUTSIDE_MM + wide + ON_MM, foot + BASE_MM),
        (0.0, foot + BASE_MM),
    ]  # fmt: skip
    labels = (
        Label("side", (OUTSIDE_MM - 1.5, 2.0), 2.8, anchor="end"),
        Label("plate", (OUTSIDE_MM + wide + ON_MM - 1.5, foot + 1.6), 2.8, anchor="end"),
        Label("profile", (2.0, foot + BASE_MM - 4.2), 3.2),
    )
    size = OUTSIDE_MM + wide + ON_MM, foot + BASE_MM
    return Piece(*size, (cut(outline, "profile"),), labels)


def _feet(what: str, reach: float, limit: float) -> Piece:
    """A gauge with feet as long as the least, the wanted and the greatest reach; up is the feet."""
    sizes = [size for size in (reach - limit, reach, reach + limit) if size >= LEAST_FOOT_MM]
    wide = BETWEEN_MM + len(sizes) * (FOOT_MM + BETWEEN_MM)
    outline: list[Point] = [(0.0, 0.0), (wide, 0.0), (wide, BASE_MM)]
    labels = [Label(what, (wide / 2, 2.2), 2.8, anchor="middle")]
    for number, size in reversed(list(enumerate(sizes))):
        left = BETWEEN_MM + number * (FOOT_MM + BETWEEN_MM)
        outline += [
            (left + FOOT_MM, BASE_MM), (left + FOOT_MM, BASE_MM + size),
            (left, BASE_MM + size), (left, BASE_MM),
        ]  # fmt: skip
        labels.append(Label(mm(size), (left + FOOT_MM / 2, BASE_MM - 5), 3.0, anchor="middle"))
    outline.append((0.0, BASE_MM))
    return Piece(wide, BASE_MM + sizes[-1], (cut(outline, what),), tuple(labels))
