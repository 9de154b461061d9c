"""The branching parts of the channel calculation: ledges, pairs from the drawer, passes."""

import math
from collections.abc import Mapping, Sequence
from typing import Any

from ..engine.declaration import Refusal

Row = Mapping[str, Any]
SAME_MM = 1e-6  # two heights, or two errors, nearer than this are one


def cutter_reach_mm(cutter_mm: float, collar_mm: float) -> float:
    """How far the cutter cuts in past the face its collar rides on, mm, from both diameters.

    Cutter and collar turn on one axis, so the reach is the difference of their radii, round any
    curve that the cutter can enter: parallel curves. Source: plane geometry.
    """
    return (cutter_mm - collar_mm) / 2


def ledge_width_mm(
    thickness_mm: float, strips: int, cement_film_mm: float, swelling_percent: float
) -> float:
    """Width, mm, of a ledge that lies shut between the channel's wall and its own.

    All strips on it, thickness in all ``thickness_mm``, swell while wet and each has a film of
    cement behind it. Source: common practice.
    """
    return thickness_mm * (1 + swelling_percent / 100) + strips * cement_film_mm


def group_strips(strips: Sequence[Row]) -> list[dict[str, Any]]:
    """Strips of one height, one after another from the outside, as one ledge; all in mm.

    Each ledge has ``names``, ``thickness`` in all, ``count`` and ``height``. Refused where a strip
    stands taller than the one outside it: no cutter reaches under it from the outside.
    """
    ledges: list[dict[str, Any]] = []
    for place, row in enumerate(strips, start=1):
        height = row["strip_height"]
        if ledges and height > ledges[-1]["height"] + SAME_MM:
            raise Refusal(
                "strips",
                f"Strip {place} is taller than the one outside it, so no cutter that rides on the "
                "side can make its ledge; list the strips from the outside, tallest first",
                "heights that stay or fall from row to row",
            )
        if not ledges or height < ledges[-1]["height"] - SAME_MM:
            ledges.append({"names": [], "thickness": 0.0, "count": 0, "height": height})
        ledges[-1]["names"].append(row["strip"])
        ledges[-1]["thickness"] += row["strip_thickness"]
        ledges[-1]["count"] += 1
    return ledges


def read_strips(strips: Sequence[Row]) -> dict[str, Any]:
    """The binding channel's strips (mm) and how many ledges lie further in."""
    ledges = group_strips(strips)
    first = ledges[0]
    return {
        "ledges": ledges,
        "channel_strips": first["count"],
        "channel_thickness": first["thickness"],
        "channel_strip_height": first["height"],
        "ledge_count": len(ledges) - 1,
        "least_strip_height": ledges[-1]["height"],
    }


def read_ledge(ledges: Sequence[Row]) -> dict[str, Any]:
    """The strips of the first ledge inside the channel, mm."""
    ledge = ledges[1]
    return {
        "ledge_strips": ledge["count"],
        "ledge_thickness": ledge["thickness"],
        "ledge_strip_height": ledge["height"],
    }


def nearest_pair(
    wanted_mm: float, from_mm: float, cutters: Sequence[Row], collars: Sequence[Row]
) -> tuple[Row, Row] | None:
    """The cutter and collar whose reach is nearest ``wanted_mm``, and further in than ``from_mm``.

    Of pairs that miss by the same the one listed first; None where no pair reaches further.
    """
    best: tuple[float, Row, Row] | None = None
    for cutter in cutters:
        for collar in collars:
            reach = cutter_reach_mm(cutter["cutter_diameter"], collar["collar_diameter"])
            miss = abs(reach - wanted_mm)
            if reach > from_mm + SAME_MM and (best is None or miss < best[0] - SAME_MM):
                best = miss, cutter, collar
    return best and (best[1], best[2])


def pick_channel_pair(
    channel_depth: float, cutters: Sequence[Row], collars: Sequence[Row]
) -> dict[str, Any]:
    """The pair for the binding channel (depth and diameters in mm)."""
    pair = nearest_pair(channel_depth, 0.0, cutters, collars)
    if pair is None:
        raise Refusal(
            "collars",
            "No collar in the drawer is smaller than a cutter, so nothing would be cut; list a "
            "smaller collar or a larger cutter",
            "at least one collar smaller than the largest cutter",
        )
    cutter, collar = pair
    return {
        "cutter_mark": cutter["cutter"], "collar_mark": collar["collar"],
        "cutter_taken": cutter["cutter_diameter"], "collar_taken": collar["collar_diameter"],
    }  # fmt: skip


def plan_cuts(
    ledges: Sequence[Row], channel_depth: float, channel_height: float, proud_top: float,
    cement_film: float, swelling: float, cutters: Sequence[Row], collars: Sequence[Row],
) -> list[dict[str, Any]]:  # fmt: skip
    """Every cut from the outside in, with its pair: all lengths mm, swelling %.

    A ledge begins where the pair before it really cuts its wall, so the pair for it is the one
    whose reach lies nearest to that wall plus the ledge's width. None stands for no pair.
    """
    cuts: list[dict[str, Any]] = []
    wall: float | None = 0.0
    for number, ledge in enumerate(ledges):
        inner = number > 0
        width, height = channel_depth, channel_height
        if inner:
            width = ledge_width_mm(ledge["thickness"], ledge["count"], cement_film, swelling)
            height = ledge["height"] + cement_film - proud_top
        pair = None if wall is None else nearest_pair(wall + width, wall, cutters, collars)
        reach = pair and cutter_reach_mm(pair[0]["cutter_diameter"], pair[1]["collar_diameter"])
        names = dict.fromkeys(ledge["names"])
        cuts.append(
            {
                "cut": f"ledge {number}" if inner else "channel",
                "strips_in": " + ".join(names),
                "width": width,
                "height": height,
                "cutter": pair[0]["cutter"] if pair else "none here",
                "collar": pair[1]["collar"] if pair else "none here",
                "wall_at": reach,
                "miss": None if reach is None or wall is None else reach - wall - width,
            }
        )
        wall = reach
    return cuts


def first_ledge_pair(cuts: Sequence[Row]) -> dict[str, Any]:
    """Whether the drawer has a pair for the first ledge (1 or 0), and which."""
    ledge = cuts[1]
    return {
        "ledge_has_pair": int(ledge["miss"] is not None),
        "ledge_cutter": ledge["cutter"],
        "ledge_collar": ledge["collar"],
    }


def ledge_miss_mm(cuts: Sequence[Row]) -> float:
    """How far the first ledge comes out wider (plus) or narrower than wanted, mm."""
    return float(cuts[1]["miss"])


def plan_passes(cuts: Sequence[Row], pass_depth: float, last_pass: float) -> dict[str, Any]:
    """The passes in order, ledges first (shallow and wide), the channel last; lengths mm.

    Each cut takes what the one before it left standing. The last pass of a cut takes ``last_pass``
    and what lies above goes in equal passes of at most ``pass_depth``. Source: common practice.
    """
    passes: list[dict[str, Any]] = []
    floor = 0.0
    for cut in reversed(cuts):
        wood = cut["height"] - floor
        rest = min(last_pass, wood)
        count = math.ceil((wood - rest) / pass_depth - SAME_MM)
        takes = [(wood - rest) / count] * count if count > 0 else []
        if rest > SAME_MM:
            takes.append(rest)
        for take in takes:
            floor += take
            passes.append(
                {"pass_number": len(passes) + 1, "pass_cut": cut["cut"], "takes": take,
                 "floor_at": floor}
            )  # fmt: skip
        floor = cut["height"]
    return {"passes": passes, "pass_count": len(passes)}
