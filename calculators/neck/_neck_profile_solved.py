"""The parts of the neck-profile calculation that go fret by fret, or round the contour."""

from typing import Any

from ..laws.neck_section import contour_depth_mm, neck_section

POINTS_PERCENT = (0, 10, 20, 30, 40, 50, 60, 70, 80, 90, 95, 98, 100)


def flat_part(contour: str, flat_share: float = 0.0) -> float:
    """The share (0 to 1) of the width over which the back is flat; none for one curve."""
    return flat_share / 100 if contour == "d" else 0.0


def fret_place_mm(scale_length_mm: float, fret: int) -> float:
    """The fret's place from the nut, mm: S·(1 - 2^(-n/12)), equal division of the octave."""
    return float(scale_length_mm * (1 - 2 ** (-fret / 12)))


def sections(
    scale_length: float, neck_width_nut: float, width_growth: float, first_place: float,
    bare_first: float, growth: float, board_joint: float, fret_radius: float, fullness: float,
    flat: float, cove_fret: int, second_fret: int,
) -> dict[str, Any]:  # fmt: skip
    """The section at every fret of the straight shaft, bare wood; lengths mm, growths mm/mm.

    Width and thickness grow evenly along the neck. Source: ``neck_section``.
    """
    rows = []
    for fret in range(1, cove_fret + 1):
        place = fret_place_mm(scale_length, fret)
        half = (neck_width_nut + width_growth * place) / 2
        thickness = bare_first + growth * (place - first_place)
        found = neck_section(half, thickness, board_joint, fret_radius, fullness, flat)
        rows.append(
            {"fret": fret, "area": found.area_mm2, "centroid": found.centroid_mm,
             "second_moment": found.second_moment_mm4}
        )  # fmt: skip
    first, second = rows[0], rows[second_fret - 1]
    return {
        "shaft_rows": rows,
        "area_first": first["area"],
        "second_moment_first": first["second_moment"],
        "second_moment_second": second["second_moment"],
    }


def template_points(
    width_template: float, depth_template: float, edge_template: float, fullness: float,
    flat: float,
) -> list[dict[str, float]]:  # fmt: skip
    """Points of the contour, mm: from the middle out, below the glue face and the board's edge.

    Closer together where the shoulder turns steep. Source: ``contour_depth_mm``.
    """
    half = width_template / 2
    points = []
    for percent in POINTS_PERCENT:
        depth = contour_depth_mm(half * percent / 100, half, depth_template, fullness, flat)
        points.append(
            {"across": half * percent / 100, "below_face": depth,
             "below_edge": depth + edge_template}
        )  # fmt: skip
    return points


def floor_under_rod(
    neck_width_nut: float, width_growth: float, first_place: float, second_place: float,
    bare_first: float, bare_second: float, board_joint: float, fullness: float, flat: float,
    rod_depth: float, rod_width: float,
) -> float:  # fmt: skip
    """The least wood between the rod channel's lower corners and the back, mm, straight down.

    At the first fret or the second place, whichever leaves less; below 0 the channel shows.
    """
    floors = []
    for place, thickness in ((first_place, bare_first), (second_place, bare_second)):
        half = (neck_width_nut + width_growth * place) / 2
        depth = contour_depth_mm(rod_width / 2, half, thickness - board_joint, fullness, flat)
        floors.append(depth - rod_depth)
    return min(floors)
