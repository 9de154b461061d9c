"""Pieces of a template, each drawn by itself, laid side by side and row under row."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from .shapes import Label, Stroke, Template

GAP_MM = 8.0  # between two pieces, so that a cutter finds room


@dataclass(frozen=True)
class Piece:
    """A part of a template with an origin and a size of its own, mm."""

    width_mm: float
    height_mm: float
    strokes: tuple[Stroke, ...]
    labels: tuple[Label, ...] = ()


def lay_out(
    name: str,
    title: str,
    pieces: Sequence[Piece],
    widest_mm: float,
    notes: Iterable[str] = (),
    gap_mm: float = GAP_MM,
) -> Template:
    """The pieces in rows from the top, no row wider than ``widest_mm`` unless one piece is.

    Half a gap stays free all round.
    """
    rows: list[list[Piece]] = [[]]
    for piece in pieces:
        row = rows[-1]
        taken = sum(one.width_mm + gap_mm for one in row)
        if row and taken + piece.width_mm > widest_mm:
            rows.append([])
        rows[-1].append(piece)
    width = max(sum(one.width_mm + gap_mm for one in row) for row in rows)
    height = sum(max(one.height_mm for one in row) + gap_mm for row in rows)
    strokes: list[Stroke] = []
    labels: list[Label] = []
    top = height - gap_mm / 2
    for row in rows:
        tall = max(one.height_mm for one in row)
        x = gap_mm / 2
        for piece in row:
            strokes += [one.moved(x, top - tall) for one in piece.strokes]
            labels += [one.moved(x, top - tall) for one in piece.labels]
            x += piece.width_mm + gap_mm
        top -= tall + gap_mm
    return Template(name, title, width, height, tuple(strokes), tuple(labels), tuple(notes))
