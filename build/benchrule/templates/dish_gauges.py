"""Radius gauges, hollow and full, for the dish of top and back and for the fretboard."""

from dataclasses import dataclass

from calculators.laws.board_radius import fall_mm

from ..instruments import Instrument
from .answers import CannotMake, example_notes, mm, taken_from
from .pieces import Piece, lay_out
from .shapes import Label, Point, Template, arc_over, cut, guide, size_within

NAME, TITLE = "dish-gauges", "Radius gauges"
BODY, BOARD = "arch-geometry", "compound-radius"
MATTERS = {BODY: ("dish_radius", "back_dish_radius"), BOARD: ("fret_radius", "shape")}
DISH_CHORD_MM = 240.0  # long enough for a fall that shows, short enough for one sheet
BOARD_OVERHANG_MM = 2.0  # gauge beyond the board's edges, each side
LEAST_FALL_MM = 0.05  # flatter than that is a straightedge
SAME_RADIUS = 0.01  # as a share: one gauge does for both ends of a board
BODY_MM = 18.0  # gauge below the hollow, or below the crown's ends
WIDEST_MM = 248.0


@dataclass(frozen=True)
class Round:
    """A round to be gauged: what it is, its radius and the gauge's length, mm."""

    what: str
    radius_mm: float
    chord_mm: float

    @property
    def fall_mm(self) -> float:
        """How far the arc falls from its middle to the gauge's ends."""
        return fall_mm(self.radius_mm, self.chord_mm / 2)


def draw_dish_gauges(instrument: Instrument) -> Template:
    """A hollow and a full gauge for every round; CannotMake where all of it is flat."""
    found = rounds(instrument)
    drawn = [one for one in found if one.fall_mm >= LEAST_FALL_MM]
    if not drawn:
        raise CannotMake(
            f"Plates and fretboard of {instrument.title} are flat or nearly so; use a straightedge."
        )
    notes = [
        "A hollow gauge stands on the round, a full one in its mould or on a block; the true one "
        "shows no light from end to end.",
        *(f"{one.what}: so flat that a straightedge does." for one in found if one not in drawn),
        *example_notes(instrument, MATTERS),
    ]
    pieces = [piece for one in drawn for piece in (_hollow(one), _full(one))]
    return lay_out(NAME, TITLE, pieces, WIDEST_MM, notes)


def rounds(instrument: Instrument) -> list[Round]:
    """Every round that the calculators know of this instrument."""
    found = []
    body, board = taken_from(instrument, BODY), taken_from(instrument, BOARD)
    if body:
        chord = min(DISH_CHORD_MM, body.values["widest"])
        found += [
            Round("Top", body.values["dish_radius"], chord),
            Round("Back", body.values["back_dish_radius"], chord),
        ]
    if board:
        rows = board.tables["by_fret"]
        ends = [("Board at the nut", rows[0]), (f"Board at fret {rows[-1]['fret']}", rows[-1])]
        if abs(rows[-1]["radius"] / rows[0]["radius"] - 1) <= SAME_RADIUS:
            ends = [("Board", rows[-1])]
        found += [
            Round(what, row["radius"], row["width"] + 2 * BOARD_OVERHANG_MM) for what, row in ends
        ]
    return found


def _hollow(one: Round) -> Piece:
    arc = [(x, BODY_MM + one.fall_mm - y) for x, y in arc_over(one.chord_mm, one.radius_mm)]
    return _piece(one, "hollow", arc)


def _full(one: Round) -> Piece:
    arc = [(x, BODY_MM + y) for x, y in arc_over(one.chord_mm, one.radius_mm)]
    return _piece(one, "full", arc)


def _piece(one: Round, kind: str, arc: list[Point]) -> Piece:
    wide, middle = one.chord_mm, one.chord_mm / 2
    outline = [(0.0, 0.0), (wide, 0.0), *reversed(arc)]
    lines = (
        (f"{one.what}, {kind}", 9.4, 3.6),
        (f"radius {mm(one.radius_mm, 1)} mm", 5.4, 2.8),
        (f"falls {mm(one.fall_mm)} mm over {mm(wide, 1)} mm", 1.8, 2.6),
    )
    labels = tuple(
        Label(text, (middle, y), size_within(text, wide, size), anchor="middle")
        for text, y, size in lines
    )
    line = guide((middle, 13.2), (middle, BODY_MM), name=f"middle of {one.what}, {kind}")
    return Piece(wide, BODY_MM + one.fall_mm, (cut(outline, f"{one.what}, {kind}"), line), labels)
