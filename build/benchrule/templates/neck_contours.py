"""Hollow templates of the shaft's back, to be held against the neck while it is carved."""

import math

from calculators.engine.compute import Answer
from calculators.laws.neck_section import contour_depth_mm

from ..instruments import Instrument
from .answers import answer_of, example_notes, mm
from .pieces import Piece, lay_out
from .shapes import Label, Point, Template, cut, guide

NAME, TITLE = "neck-contours", "Contours of the neck"
CALCULATOR = "neck-profile"
MATTERS = (
    "thickness_first", "thickness_second", "second_fret", "contour", "fullness", "flat_share",
    "template_fret", "cove_fret", "scale_length", "neck_width_nut", "board_end_width",
    "board_joint",
)  # fmt: skip
CHEEK_MM, FLOOR_MM = 12.0, 13.0  # template beside and below the hollow
STEPS = 90  # points of half a hollow: chords leave some thousandths of a millimetre
WIDEST_MM = 180.0


def draw_neck_contours(instrument: Instrument) -> Template:
    """A hollow for the first fret, the template's, the second place and the end of the shaft."""
    answer = answer_of(instrument, CALCULATOR)
    notes = [
        "The hollow is the shaft's back, bare wood after sanding; the mouth is as wide as the board.",
        "Hold it square to the neck, middle on middle: it fits when its upper edge stands at the "
        "joint of board and shaft and no light shows.",
        *example_notes(instrument, {CALCULATOR: MATTERS}),
    ]
    pieces = [_hollow(answer, fret) for fret in stations(answer)]
    return lay_out(NAME, TITLE, pieces, WIDEST_MM, notes)


def stations(answer: Answer) -> list[int]:
    """The frets that get a template, from the nut on."""
    names = ("template_fret", "second_fret", "cove_fret")
    return sorted({1, *(int(answer.values[name]) for name in names)})


def contour_points(
    half_width_mm: float, depth_mm: float, fullness: float, flat: float
) -> list[Point]:
    """The back from edge to edge, left to right, y down from the glue face as minus; mm.

    Points stand closer where the shoulder turns steep: at even steps of the superellipse's own
    parameter.
    """
    half = []
    for step in range(STEPS + 1):
        share = math.sin(math.pi / 2 * step / STEPS) ** (2 / fullness)
        across = half_width_mm * (flat + (1 - flat) * share)
        depth = contour_depth_mm(across, half_width_mm, depth_mm, fullness, flat)
        half.append((across, -depth))
    left = [(-x, y) for x, y in reversed(half)]
    return [*left, *(half if flat else half[1:])]


def _hollow(answer: Answer, fret: int) -> Piece:
    values = answer.values
    row = next(one for one in answer.tables["shaft"] if one["fret"] == fret)
    half, depth = row["width"] / 2, row["bare"] - values["board_joint"]
    wide, tall = row["width"] + 2 * CHEEK_MM, depth + FLOOR_MM
    back = contour_points(half, depth, values["fullness"], values["flat"])
    hollow = [(wide / 2 + x, tall + y) for x, y in back]
    outline = [(0.0, 0.0), (wide, 0.0), (wide, tall), *reversed(hollow), (0.0, tall)]
    labels = (
        Label(f"Fret {fret}", (wide / 2 - 2.5, 5.6), 4.2, anchor="end"),
        Label(f"{mm(row['from_nut'])} mm from the nut", (wide / 2 + 2.5, 6.2), 2.6),
        Label(f"{mm(row['width'])} mm wide, {mm(row['bare'])} mm with board", (wide / 2, 2.0), 2.6,
              anchor="middle"),
    )  # fmt: skip
    middle = guide((wide / 2, 5.0), (wide / 2, FLOOR_MM), name=f"middle {fret}")
    return Piece(wide, tall, (cut(outline, f"fret {fret}"), middle), labels)
