"""The branching parts of the mitre calculation: straight or arc, and the mitre's own curve."""

import math
from typing import Any

from ..engine.declaration import Refusal

NARROWINGS = 40


def way_of_arc(joint: str) -> int:
    """1 where the arc's centre lies on the inner side of the corner, -1 where on the outer."""
    return 1 if joint == "round" else -1


def take_tip(
    joint: str, straight_tip: float, straight_inner: float,
    curved_tip: float = 0.0, curved_inner: float = 0.0,
) -> dict[str, float]:  # fmt: skip
    """The inner tip along line 1 and the inner edge of line 2, mm, for the joint at hand."""
    if joint == "straight":
        return {"tip_along": straight_tip, "inner_2": straight_inner}
    return {"tip_along": curved_tip, "inner_2": curved_inner}


def mitre_place_mm(
    share: float, width_1_mm: float, width_2_mm: float, corner_deg: float, radius_mm: float,
    bulge: int,
) -> float:  # fmt: skip
    """How far along line 1 the true mitre lies at a ``share`` (0 to 1) of both widths, mm.

    The true mitre holds every point whose distances from the two outer edges go as the widths. At
    a share t of the way that is the height t·b1 over line 1's edge, on a circle of radius R - t·b2
    (bulge 1) or R + t·b2 (bulge -1) about the arc's centre. Such a curve is a conic with its focus
    in that centre. Source: plane geometry.
    """
    corner = math.radians(corner_deg)
    centre_along = bulge * radius_mm * math.sin(corner)
    over_centre = share * width_1_mm + bulge * radius_mm * math.cos(corner)
    ring = radius_mm - bulge * share * width_2_mm
    square = ring**2 - over_centre**2
    if square < 0:
        raise Refusal(
            "arc_radius",
            "The arc turns away before the lines inside the two bundles have met; take a larger "
            "radius or narrower lines",
            "an arc that stays nearly straight over the width of the lines",
        )
    return centre_along - bulge * math.sqrt(square)


def bow_of_mitre(
    width_1: float, width_2: float, corner_angle: float, arc_radius: float, bulge: int
) -> float:
    """The most that the true mitre leaves its chord, mm; plus where line 1 ends hollow.

    A conic bends one way only, so its farthest place from the chord is where it runs parallel to
    it: there the run along line 1 grows just as the chord's does. That place is closed in from
    both sides. Widths and radius mm, corner degrees. Source: plane geometry.
    """

    def along(share: float) -> float:
        return mitre_place_mm(share, width_1, width_2, corner_angle, arc_radius, bulge)

    tip = along(1.0)
    chord = math.hypot(tip, width_1)

    def lead(share: float) -> float:
        return along(share) - share * tip

    sign = 1 if lead(0.5) >= 0 else -1
    low, high = 0.0, 1.0
    for _ in range(NARROWINGS):
        left, right = low + 0.45 * (high - low), low + 0.55 * (high - low)
        if sign * lead(left) < sign * lead(right):
            low = left
        else:
            high = right
    return lead((low + high) / 2) * width_1 / chord


def mitre_rows(
    width_1: float, width_2: float, mitre_1: float, mitre_2: float, saw_1: float, saw_2: float,
    length_1: float, length_2: float, inner_1: float, inner_2: float, blank_1: float,
    blank_2: float, joint: str,
) -> dict[str, list[dict[str, Any]]]:  # fmt: skip
    """One row a line, with its saw settings (degrees) and lengths (mm); and corners, degrees."""
    second = "2" if joint == "straight" else "2, the arc"
    lines = [
        {"line": name, "line_width": width, "from_length": mitre, "from_square": saw,
         "outer": outer, "inner": inner, "blank": blank}
        for name, width, mitre, saw, outer, inner, blank in (
            ("1", width_1, mitre_1, saw_1, length_1, inner_1, blank_1),
            (second, width_2, mitre_2, saw_2, length_2, inner_2, blank_2),
        )
    ]  # fmt: skip
    return {"lines": lines, "corners": [{"corner": 15.0 * step} for step in range(2, 11)]}
