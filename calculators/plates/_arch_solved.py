"""The part of the arch's calculation that goes round the body: the outline and its rim.

The parameters carry the names, and with them the units, of the declaration: all lengths in mm.
"""

import itertools
from collections.abc import Mapping, Sequence
from functools import lru_cache
from typing import Any, NamedTuple

from ..engine.declaration import Refusal
from ..laws.dished_plate import ball_over, fall_outwards, height_on
from ..laws.outline_curve import Place, outline_through, pieces_of, place_on

MM2_PER_CM2 = 100.0
STEPS = 6  # places looked at in every piece between two stations
LEAST_DEPTH = 10.0  # mm: a side that is lower is no side


class Rim(NamedTuple):
    """The rim at one place: heights in mm over the line between the blocks' upper ends, bevels.

    ``along`` is the way along the side from the neck end, mm; ``station`` says whether the place
    is one of the stations given (or an end).
    """

    place: Place
    along: float
    station: bool
    top: float
    back: float
    top_bevel: float
    back_bevel: float


class Round(NamedTuple):
    """The rim at many places from neck to tail, and the area of the whole plate, mm²."""

    rims: tuple[Rim, ...]
    area: float


def go_round(values: Mapping[str, Any]) -> Round:
    """The rim from the values of the declaration; refuses stations that cannot be."""
    length = values["body_length"]
    rows = sorted(values["outline"], key=lambda row: float(row["place"]))
    if rows[-1]["place"] >= length:
        raise Refusal(
            "outline",
            f"A station lies {rows[-1]['place']:g} mm from the neck end, at the tail of the body or "
            "beyond it; measure from the neck end along the centre line",
            f"places less than {length:g} mm from the neck end",
        )
    for before, row in itertools.pairwise(rows):
        if row["place"] - before["place"] < 1:
            raise Refusal(
                "outline",
                f"Two half widths are given {row['place']:g} mm from the neck end; keep one",
                "places at least 1 mm apart",
            )
    return _go_round(
        tuple((float(row["place"]), float(row["half_width"])) for row in rows),
        length, values["depth_neck_block"], values["depth_end_block"], values["dish_radius"],
        values["back_dish_radius"],
    )  # fmt: skip


@lru_cache(maxsize=4)  # the drawings go the same round as the answer
def _go_round(
    points: tuple[tuple[float, float], ...], length: float, neck: float, tail: float,
    top_radius: float, back_radius: float,
) -> Round:  # fmt: skip
    outline = outline_through([(0.0, 0.0), *points, (length, 0.0)])
    top = ball_over(length, 0.0, 0.0, top_radius, 1)
    back = ball_over(length, -neck, -tail, back_radius, -1)
    pieces = pieces_of(outline)
    last = len(pieces) - 1
    rims = []
    start = 0.0
    for piece, (piece_length, _) in enumerate(pieces):
        for step in range(STEPS + (piece == last)):
            share = step / STEPS
            place = place_on(outline, piece, share)
            x, y = place.x, place.y
            # Outwards is to the left of the way from neck to tail.
            out = (-place.along_y, place.along_x)
            rims.append(
                Rim(
                    place, start + share * piece_length, step in (0, STEPS), height_on(top, x, y),
                    height_on(back, x, y), fall_outwards(top, x, y, *out),
                    fall_outwards(back, x, y, *out),
                )
            )  # fmt: skip
        start += piece_length
    return Round(tuple(rims), 2 * sum(area for _, area in pieces))


def rim_round(
    body_length: float, depth_neck_block: float, depth_end_block: float, dish_radius: float,
    back_dish_radius: float, outline: Sequence[Mapping[str, Any]],
) -> Mapping[str, Any]:  # fmt: skip
    """The rim round half the body: a row for every station, and the extremes.

    The outline is ``laws.outline_curve``, the plates are ``laws.dished_plate``. The back's edge is
    stated as how far it lies below the straight line from block to block. Lengths in mm, area in
    cm², angles in degrees.
    """
    round_body = go_round(
        {
            "body_length": body_length, "depth_neck_block": depth_neck_block,
            "depth_end_block": depth_end_block, "dish_radius": dish_radius,
            "back_dish_radius": back_dish_radius, "outline": outline,
        }
    )  # fmt: skip
    rims = round_body.rims
    for rim in rims:
        if rim.top - rim.back < LEAST_DEPTH:
            raise Refusal(
                "depth_neck_block",
                f"With these dishes the side would be {max(0.0, rim.top - rim.back):.1f} mm deep or "
                f"less {rim.place.x:.0f} mm from the neck end; look over depths, radii and outline",
                f"depths and radii that leave a side of {LEAST_DEPTH:g} mm everywhere",
            )
    taper = (depth_end_block - depth_neck_block) / body_length
    rows = [
        {
            "station": number, "from_neck": rim.place.x, "half_width": rim.place.y,
            "along": rim.along, "top_edge": rim.top,
            "back_edge": -rim.back - depth_neck_block - taper * rim.place.x,
            "depth": rim.top - rim.back, "top_bevel": rim.top_bevel, "back_bevel": rim.back_bevel,
        }
        for number, rim in enumerate(one for one in rims if one.station)
    ]  # fmt: skip
    depths = [(rim.top - rim.back, rim.place.x) for rim in rims]
    (shallowest, shallowest_at), (deepest, deepest_at) = min(depths), max(depths)
    return {
        "stations": rows,
        "widest": 2 * max(row["half_width"] for row in outline),
        "side_length": rims[-1].along,
        "area": round_body.area / MM2_PER_CM2,
        "shallowest": shallowest, "shallowest_at": shallowest_at,
        "deepest": deepest, "deepest_at": deepest_at,
        "top_bevel_most": max(rim.top_bevel for rim in rims),
        "back_bevel_most": max(rim.back_bevel for rim in rims),
        "swings": sum(1 for rim in rims if rim.place.along_x < -1e-9 or rim.place.y < -1e-9),
    }  # fmt: skip
