"""The parts of the brace calculation that need more than a formula.

The parameters carry the names, and with them the units, of the declaration: mm, GPa, N, N·m².
"""

import itertools
from collections.abc import Mapping, Sequence
from typing import Any

from ..engine.declaration import Refusal
from ..laws.bending_beam import point_load_compliance
from ..laws.braced_plate import braced_strip_n_m2

Row = Mapping[str, Any]


def in_order(brace_rows: Sequence[Row]) -> list[Row]:
    """The rows of a carved brace by place; refuses two of one place, and heights that grow."""
    rows = sorted(brace_rows, key=lambda row: float(row["place"]))
    for before, row in itertools.pairwise(rows):
        if row["place"] - before["place"] < 1:
            raise Refusal(
                "brace_rows",
                f"Two heights are given for one place, {row['place']:g} mm from the first knife; "
                "keep one of them",
                "places at least 1 mm apart",
            )
    for row in rows:
        if row["height_after"] > row["height_now"]:
            raise Refusal(
                "brace_rows",
                f"At {row['place']:g} mm the brace would be higher after shaving than before; "
                "look over that row",
                "heights after that are no greater than those now",
            )
    return rows


def height_at(rows: Sequence[Row], column: str, place: float) -> float:
    """Height, mm, at ``place``: straight between the rows, kept beyond the first and the last."""
    for before, row in itertools.pairwise(rows):
        if before["place"] <= place <= row["place"]:
            share = (place - before["place"]) / (row["place"] - before["place"])
            return float(before[column] + share * (row[column] - before[column]))
    return float((rows[0] if place < rows[0]["place"] else rows[-1])[column])


def section_at_load(
    brace_profile: str, load_place: float, brace_height: float = 0.0,
    brace_height_after: float = 0.0, brace_rows: Sequence[Row] = (),
) -> Mapping[str, float]:  # fmt: skip
    """Heights, mm, of the section looked at: the one height, or those at the weight's place."""
    if brace_profile == "level":
        return {"section_now": brace_height, "section_after": brace_height_after}
    rows = in_order(brace_rows)
    return {
        "section_now": height_at(rows, "height_now", load_place),
        "section_after": height_at(rows, "height_after", load_place),
    }


def carved_deflection(
    brace_rows: Sequence[Row], load_place: float, span: float, load: float, brace_shape: str,
    brace_width: float, brace_gpa: float, strip_width: float, plate_thickness: float,
    plate_gpa: float,
) -> Mapping[str, float]:  # fmt: skip
    """Deflection, mm, of the carved brace on its strip under the load, N, now and after.

    The stiffness of every section along the span goes into the integral of
    ``laws.bending_beam.point_load_compliance``.
    """
    rows = in_order(brace_rows)
    breaks = [float(row["place"]) for row in rows]

    def deflection(column: str) -> float:
        def stiffness(x: float) -> float:
            return braced_strip_n_m2(
                brace_shape, brace_width, height_at(rows, column, x), brace_gpa, strip_width,
                plate_thickness, plate_gpa,
            )  # fmt: skip

        return load * point_load_compliance(load_place, span, stiffness, breaks)

    return {
        "deflection_now": deflection("height_now"),
        "deflection_after": deflection("height_after"),
    }
