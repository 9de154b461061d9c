"""Station cards as one PDF: a page a station, to hang where the work is done."""

import io
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from .card_content import Card
from .card_layout import INSET_PT, PART_GAP_PT, Layout, Part, Row, lay_out
from .lettering import GREY, RULE, EmbeddedCanvas, bold, grey, markup, paragraph, printed
from .qr_mark import draw_qr, quiet_pt
from .sizes import PAPERS, Paper, mm

A5_WIDTH_PT = PAPERS["a5"].width_pt
MARGIN_MM = 6.5
FOOT_PT = 7.0
TITLE_PT, SMALL_PT = 16.0, 8.0  # on A5; they grow with the paper
QR_SHARE = 0.17  # of the width between the margins


@dataclass(frozen=True)
class CardSet:
    """The PDF, and how many limits each card leaves to the handbook."""

    pdf: bytes
    left_out: dict[str, int]


def cards_pdf(cards: Sequence[Card], paper: str = "a5", note: str = "") -> CardSet:
    """The cards on ``a5``, ``a4`` or ``half-letter``; ``note`` stands in the foot of each.

    The same cards give the same bytes. CannotFit where one is too full for the paper.
    """
    size = PAPERS[paper]
    out = io.BytesIO()
    canvas = EmbeddedCanvas(
        out, pagesize=(size.width_pt, size.height_pt), invariant=1, lang="en-GB"
    )
    canvas.setTitle(f"Station cards, {size.name}")
    canvas.setSubject(printed(note))
    canvas.setCreator("benchrule")
    left_out = {}
    for card in cards:
        canvas.bookmarkPage(card.id)
        canvas.addOutlineEntry(printed(card.title), card.id, 0)
        left_out[card.id] = _Page(canvas, size, card).draw(note).limits_left_out
        canvas.showPage()
    canvas.save()
    return CardSet(out.getvalue(), {id: count for id, count in left_out.items() if count})


class _Page:
    """One card under way, from the top edge down."""

    def __init__(self, canvas: Any, paper: Paper, card: Card) -> None:
        self.canvas, self.paper, self.card = canvas, paper, card
        self.margin = mm(MARGIN_MM) * paper.width_pt / A5_WIDTH_PT
        self.width = paper.width_pt - 2 * self.margin
        self.grown = paper.width_pt / A5_WIDTH_PT  # what is large on A5 grows with the paper
        self.y = paper.height_pt - self.margin

    def draw(self, note: str) -> Layout:
        """Draws all of it."""
        self._head()
        foot = self._foot(note)
        layout = lay_out(self.card, self.paper, self.width, self.y - foot)
        for part in layout.parts:
            self._part(part, layout.air_pt)
        return layout

    def _head(self) -> None:
        card, code = self.card, self.width * QR_SHARE if self.card.address else 0.0
        room = self.width - code
        title = paragraph(bold(card.title), TITLE_PT * self.grown)
        below = paragraph(
            grey(", ".join(filter(None, (card.group, card.revision)))), SMALL_PT * self.grown
        )
        first, second = title.wrap(room, 1e6)[1], below.wrap(room, 1e6)[1]
        gap = 3.0 * self.grown
        tall = max(code, first + gap + second)
        y = self.y - (tall - first - gap - second) / 2
        title.drawOn(self.canvas, self.margin, y - first)
        below.drawOn(self.canvas, self.margin, y - first - gap - second)
        if code:
            # Its white border may lie in the margin; the code itself ends with the text.
            x = self.margin + self.width - code + quiet_pt(card.address, code)
            draw_qr(self.canvas, card.address, x, self.y - (tall + code) / 2, code)
        self.y -= tall
        self._rule(1.4 * self.grown)

    def _foot(self, note: str) -> float:
        """Draws the foot; returns how high on the page it reaches."""
        words = "The handbook has the procedure in force" + (
            f": {self.card.address}" if self.card.address else "."
        )
        size = max(FOOT_PT, FOOT_PT * self.grown * 0.9)
        half = paragraph("   ".join(filter(None, (bold(note), markup(words)))), size)
        height = half.wrap(self.width, 1e6)[1]
        half.drawOn(self.canvas, self.margin, self.margin)
        y = self.margin + height + 3
        self.canvas.setStrokeColor(RULE)
        self.canvas.setLineWidth(0.4)
        self.canvas.line(self.margin, y, self.margin + self.width, y)
        return float(y + 4)

    def _part(self, part: Part, air: float) -> None:
        self.y -= PART_GAP_PT
        top = self.y
        self.y -= INSET_PT if part.boxed else 0.0
        self._row(part.heading, 0.0)
        for place, row in enumerate(part.rows):
            if part.ruled:
                self._rule(0.7 if place == 0 else 0.3)
            self._row(row, air)
        if part.boxed:
            self.y -= INSET_PT
            self.canvas.setLineWidth(1.2)
            self.canvas.setStrokeColor(GREY)
            self.canvas.rect(self.margin, self.y, self.width, top - self.y)

    def _row(self, row: Row, air: float) -> None:
        top = self.y - row.pad_pt - air / 2
        for cell in row.cells:
            cell.words.drawOn(self.canvas, self.margin + cell.left, top - cell.bottom)
        self.y -= row.height + air

    def _rule(self, width_pt: float) -> None:
        self.canvas.setStrokeColor(GREY if width_pt > 1 else RULE)
        self.canvas.setLineWidth(width_pt)
        self.canvas.line(self.margin, self.y, self.margin + self.width, self.y)
