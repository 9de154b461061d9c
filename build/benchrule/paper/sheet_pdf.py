"""A build sheet as PDF: it goes with the instrument from station to station."""

import io
from collections.abc import Iterator
from datetime import date
from functools import partial
from typing import Any

from reportlab.platypus import (  # type: ignore[import-untyped]
    BaseDocTemplate,
    CondPageBreak,
    Frame,
    PageTemplate,
    Spacer,
    Table,
    TableStyle,
)

from .lettering import BODY, PALE, RULE, EmbeddedCanvas, bold, grey, markup, paragraph, printed
from .qr_mark import QrMark
from .sheet_lines import Line, OrderSheet
from .sizes import PAPERS, Paper, mm

MARGIN_MM, HEAD_MM, FOOT_MM = 9.0, 5.5, 4.5
TEXT_PT, SMALL_PT, TITLE_PT, STATION_PT = 7.7, 6.5, 15.0, 10.5
QR_MM, ORDER_QR_MM = 12.5, 24.0
ROW_LEAST_PT = 13.6  # room to write in
COLUMNS = (0.37, 0.19, 0.17, 0.15, 0.12)  # shares of the width: setting … initials
SETTING, PLANNED, LIMITS, MEASURED, INITIALS = range(len(COLUMNS))
HEADS = ("For this instrument", "Limits", "Measured, initials")
GAP_PT = 8.0  # above a station
OWN_FONT = ("FONTNAME", (0, 0), (-1, -1), BODY)  # else a table names one that is not embedded
KEPT_ROWS = 3  # of a station, with its head


def sheet_pdf(sheet: OrderSheet, paper: str = "a4", site_address: str = "") -> bytes:
    """The sheet on ``a4`` or ``letter``. The same sheet gives the same bytes."""
    size = PAPERS[paper]
    count, _ = _build(sheet, size, site_address, 0)
    return _build(sheet, size, site_address, count)[1]


def _build(sheet: OrderSheet, paper: Paper, address: str, of: int) -> tuple[int, bytes]:
    """How many pages, and the file; ``of`` stands on each as their number."""
    out = io.BytesIO()
    margin = mm(MARGIN_MM)
    width = paper.width_pt - 2 * margin
    document = BaseDocTemplate(
        out, pagesize=(paper.width_pt, paper.height_pt), invariant=1, lang="en-GB",
        title=printed(sheet.instrument.title), creator="benchrule", author="",
        subject="Build sheet",
    )  # fmt: skip
    room = Frame(
        margin, margin + mm(FOOT_MM), width,
        paper.height_pt - 2 * margin - mm(HEAD_MM) - mm(FOOT_MM),
        leftPadding=0, rightPadding=0, topPadding=0, bottomPadding=0,
    )  # fmt: skip
    on_page = partial(_page_marks, sheet, paper, of)
    document.addPageTemplates(PageTemplate(frames=[room], onPage=on_page))
    story = [*_first(sheet, width, address), *_stations(sheet, width, address)]
    document.build(story, canvasmaker=EmbeddedCanvas)
    return int(document.page), out.getvalue()


def _page_marks(sheet: OrderSheet, paper: Paper, of: int, canvas: Any, document: Any) -> None:
    """What stands on every page: the order, its page number, and the line to the handbook."""
    margin, right = mm(MARGIN_MM), paper.width_pt - mm(MARGIN_MM)
    y = paper.height_pt - margin
    number = f"Page {document.page} of {of or document.page}"
    for words, end in ((bold(f"Order {sheet.instrument.title}"), False), (markup(number), True)):
        line = paragraph(words, TEXT_PT, end=end)
        _, height = line.wrap(right - margin, 100)
        line.drawOn(canvas, margin, y - height)
    canvas.setStrokeColor(RULE)
    canvas.setLineWidth(0.5)
    canvas.line(margin, y - TEXT_PT - 4, right, y - TEXT_PT - 4)
    note = "Invented, for demonstration. " if sheet.fields.get("invented") else ""
    foot = paragraph(
        grey(
            f"{note}Planned values are worked out by the handbook, which has the procedure in force."
        ),
        SMALL_PT,
    )
    foot.wrap(right - margin, 100)
    foot.drawOn(canvas, margin, margin)


def _first(sheet: OrderSheet, width: float, address: str) -> Iterator[Any]:
    """The head of the sheet, and what has to be looked at before anything is cut."""
    fields = sheet.fields
    days = (date.fromisoformat(fields["due"]) - date.fromisoformat(fields["ordered"])).days
    facts = [
        f"{grey('Model')} {markup(sheet.model)}   {grey('Ordered')} {markup(fields['ordered'])}   "
        f"{grey('Due')} {markup(fields['due'])}{markup(f', {days} days after')}",
    ]
    woods = "; ".join(f"{markup(part.lower())} {markup(name)}" for part, name, _ in sheet.woods())
    facts += [f"{grey('Woods')} {woods}"] if woods else []
    facts += [f"{grey('Asked for')} {markup(wish)}" for wish in fields.get("wishes") or ()]
    if any(one.answers for one in sheet.stations):
        facts.append(
            grey("Tables of slots, curves and strings: on the order's page in the handbook.")
        )
    code = mm(ORDER_QR_MM) if address else 0.0
    lines = [
        paragraph(bold(sheet.instrument.title), TITLE_PT),
        paragraph(markup(fields["summary"]), TEXT_PT),
        *(paragraph(fact, TEXT_PT) for fact in facts),
    ]
    mark = [QrMark(f"{address}orders/{sheet.id}/", code)] if address else []
    yield Table(
        [[lines, mark]], colWidths=[width - code, code],
        style=TableStyle([*_bare(), ("VALIGN", (0, 0), (-1, -1), "TOP")]),
    )  # fmt: skip
    warnings = [[paragraph(f"{bold(f'{station}.')} {markup(words)}", TEXT_PT)]
                for station, words in sheet.warnings()]  # fmt: skip
    if warnings:
        yield Spacer(0, 5)
        yield Table(
            [[paragraph(bold("Look at these first"), STATION_PT)], *warnings], colWidths=[width],
            style=TableStyle([
                OWN_FONT, ("BACKGROUND", (0, 0), (-1, -1), PALE), ("BOX", (0, 0), (-1, -1), 0.8, RULE),
                ("TOPPADDING", (0, 0), (-1, -1), 2), ("BOTTOMPADDING", (0, 0), (-1, -1), 1.5),
                ("LEFTPADDING", (0, 0), (-1, -1), 5), ("RIGHTPADDING", (0, 0), (-1, -1), 5),
            ]),
        )  # fmt: skip


def _stations(sheet: OrderSheet, width: float, address: str) -> Iterator[Any]:
    for one in sheet.stations:
        page = one.station.page.source.removesuffix(".md")
        mark = QrMark(f"{address}{page}/", mm(QR_MM)) if address else None
        made = _Station(sheet.lines[one.station.id], width)
        newest = one.station.revisions[0]
        head = (one.station.title, f"revision\xa0{newest['revision']},\xa0{newest['on']}")
        table = made.table(head, list(dict.fromkeys(one.warnings)), mark)
        yield CondPageBreak(made.kept_height(table))
        yield table
        yield Spacer(0, GAP_PT if not mark else 0)  # a code brings white of its own


class _Station:
    """A station's table: a head that comes again on the next page, warnings, a row a setting."""

    def __init__(self, lines: list[Line], width: float) -> None:
        self.lines = lines
        self.widths = [share * width for share in COLUMNS]
        self.style: list[tuple[Any, ...]] = [
            OWN_FONT, ("VALIGN", (0, 0), (-1, -1), "MIDDLE"), ("VALIGN", (0, 0), (-1, 0), "BOTTOM"),
            ("LINEBELOW", (0, 0), (-1, -1), 0.3, RULE), ("LINEBELOW", (0, 0), (-1, 0), 0.9, RULE),
            ("TOPPADDING", (0, 0), (-1, -1), 1.5), ("BOTTOMPADDING", (0, 0), (-1, -1), 2),
            ("LEFTPADDING", (0, 0), (-1, -1), 2), ("RIGHTPADDING", (0, 0), (-1, -1), 4),
            ("LEFTPADDING", (0, 0), (0, -1), 0),
            ("TOPPADDING", (0, 0), (-1, 0), 0), ("BOTTOMPADDING", (0, 0), (-1, 0), 1),
        ]  # fmt: skip

    def table(self, head: tuple[str, str], warnings: list[str], mark: Any) -> Any:
        """The table; its rows are never split."""
        rows = [self._head(head, mark)]
        for words in warnings:
            at = len(rows)
            self.style += [("SPAN", (0, at), (-1, at)), ("BACKGROUND", (0, at), (-1, at), PALE),
                           ("LEFTPADDING", (0, at), (0, at), 4)]  # fmt: skip
            rows.append([paragraph(f"{bold('Look first.')} {markup(words)}", TEXT_PT)])
        for line in self.lines:
            rows.append(self._row(line, len(rows)))
        made = Table(
            rows, colWidths=self.widths, repeatRows=1, splitInRow=0,
            minRowHeights=[0.0, *[ROW_LEAST_PT] * (len(rows) - 1)], style=TableStyle(self.style),
        )  # fmt: skip
        made.hAlign = "LEFT"
        return made

    def kept_height(self, table: Any) -> float:
        """The room that the head needs with its first rows."""
        table.wrap(sum(self.widths), 1e6)
        return float(sum(table._rowHeights[: 1 + KEPT_ROWS]))

    def _head(self, head: tuple[str, str], mark: Any) -> list[Any]:
        title, revision = head
        words = paragraph(f"{bold(title)} {grey(revision, SMALL_PT)}", STATION_PT)
        return [words, *(paragraph(grey(one), SMALL_PT) for one in HEADS), mark]

    def _row(self, line: Line, at: int) -> list[Any]:
        one = line.setting
        gauge = f" {grey(f'·\xa0{line.gauge}', SMALL_PT)}" if line.gauge else ""
        label = paragraph(f"{markup(one.label)}{gauge}", TEXT_PT)
        if line.planned is None:
            self.style.append(("SPAN", (PLANNED, at), (INITIALS, at)))
            return [label, paragraph(markup(one.shown), TEXT_PT)]
        self.style.append(("BOX", (MEASURED, at), (MEASURED, at), 0.7, RULE))
        self.style.append(("BOX", (INITIALS, at), (INITIALS, at), 0.7, RULE))
        also = f"  {grey(_whole(one.also), SMALL_PT)}" if one.also != one.shown else ""
        limits = (
            f"{markup(line.limits)} {grey(_whole(line.limits_also), SMALL_PT)}"
            if line.limits
            else ""
        )
        return [
            label,
            paragraph(f"{bold(one.shown)}{also}", TEXT_PT),
            paragraph(limits, TEXT_PT),
            paragraph(f"{bold(line.record)} {grey(line.verdict, SMALL_PT)}", TEXT_PT),
            paragraph(markup(line.initials), SMALL_PT),
        ]


def _whole(words: str) -> str:
    """Words that stay on one line."""
    return words.replace(" ", "\xa0")


def _bare() -> list[tuple[Any, ...]]:
    sides = ("LEFT", "RIGHT", "TOP", "BOTTOM")
    return [OWN_FONT, *((f"{side}PADDING", (0, 0), (-1, -1), 0) for side in sides)]
