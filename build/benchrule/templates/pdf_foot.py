"""The foot of a printed sheet: two bars to be measured, what the sheet is, and a map of them all."""

import unicodedata
from typing import Any

from reportlab.lib import units  # type: ignore[import-untyped]
from reportlab.lib.utils import simpleSplit  # type: ignore[import-untyped]

from ..references import of_text
from .shapes import Template
from .sheets import MARGIN_MM, OVERLAP_MM, PAPER_NAMES, Plan, Sheet

BODY, BOLD = "Helvetica", "Helvetica-Bold"
BARS_WIDE_MM, BETWEEN_MM = 116.0, 5.0  # the part with the bars; free beside it
BASE_MM = 29.0
LEADING = 1.25  # from line to line, as a share of the type's height
WHICH = "#"  # stands for the words that differ from sheet to sheet
LINE_MM, NOTE_MM, SMALL_MM = 2.8, 2.3, 2.1  # from line to line; type
MAP_WIDE_MM, MAP_HIGH_MM = 46.0, 17.0
CHECK_MM, CHECK_IN, MM_PER_IN = 100.0, 4, 25.4
CHECK_WORDS = (
    "Before use, measure both bars with a steel rule: 100 mm and 4 in. If they are not true, the",
    "sheet is not either. Print at actual size (100 %), without scaling or fitting to the page.",
)


def pt(length_mm: float) -> float:
    """Millimetres in points, of which 72 are an inch."""
    return float(length_mm * units.mm)


@of_text
def plain(text: str) -> str:
    """Text in what the standard fonts hold; letters with other marks lose these, the rest is '?'."""
    found = []
    for letter in text:
        bare = letter
        if not _is_held(letter):
            bare = "".join(
                one
                for one in unicodedata.normalize("NFKD", letter)
                if not unicodedata.combining(one)
            )
        found.append(bare if bare and _is_held(bare) else "?")
    return "".join(found)


def _is_held(text: str) -> bool:
    try:
        text.encode("cp1252")
    except UnicodeEncodeError:
        return False
    return text.isprintable()


class Foot:
    """The foot of every sheet of one template."""

    def __init__(self, template: Template, instrument: str, edition: str, note: str) -> None:
        self.template = template
        self.instrument = plain(instrument)
        self.edition = plain(edition)
        self.note = plain(note)

    def height_mm(self, width_mm: float, with_map: bool) -> float:
        """How high it is where the sheet is so wide between its margins."""
        notes = len(self._notes(width_mm, with_map)) * LINE_MM
        return self._base_mm(width_mm) + max(notes, MAP_HIGH_MM if with_map else 0.0) + 2.0

    def draw(self, canvas: Any, plan: Plan, sheet: Sheet) -> None:
        """Draws it on the page that is under way."""
        high, with_map = plan.foot_mm, plan.count > 1
        canvas.setFillGray(0)
        canvas.setStrokeGray(0.6)
        canvas.setLineWidth(pt(0.1))
        left, right = MARGIN_MM, MARGIN_MM + plan.window_width_mm
        canvas.line(pt(left), pt(MARGIN_MM + high), pt(right), pt(MARGIN_MM + high))
        canvas.setStrokeGray(0)
        self._draw_bars(canvas, self._base_mm(plan.window_width_mm))
        self._draw_names(canvas, plan, sheet)
        if (sheet.row, sheet.column) == (0, 0):
            y = MARGIN_MM + high - 1.0
            canvas.setFont(BODY, pt(NOTE_MM))
            for number, line in enumerate(self._notes(plan.window_width_mm, with_map), 1):
                canvas.drawString(pt(left), pt(y - number * LINE_MM), line)
            if with_map:
                self._draw_map(canvas, plan, right, y)

    def _notes(self, width_mm: float, with_map: bool) -> list[str]:
        room = width_mm - (MAP_WIDE_MM + BETWEEN_MM if with_map else 0.0)
        return [
            line
            for note in self.template.notes
            for line in simpleSplit(plain(note), BODY, pt(NOTE_MM), pt(room))
        ]

    def _draw_bars(self, canvas: Any, base: float) -> None:
        canvas.setFont(BOLD, pt(SMALL_MM))
        for number, words in enumerate(CHECK_WORDS):
            y = MARGIN_MM + base - 4.0 - number * LINE_MM
            canvas.drawString(pt(MARGIN_MM), pt(y), words)
        canvas.setLineWidth(pt(0.18))
        _draw_bar(canvas, MARGIN_MM + 12.0, CHECK_MM, 10.0, "100 mm")
        _draw_bar(canvas, MARGIN_MM + 3.0, CHECK_IN * MM_PER_IN, MM_PER_IN / 2, "4 in")

    def _names(self, width_mm: float) -> list[tuple[str, float, str]]:
        """What the sheet is, line by line: font, size in mm, words."""
        room = pt(width_mm - BARS_WIDE_MM - BETWEEN_MM)
        parts = (
            (BOLD, 3.6, plain(self.template.title)),
            (BODY, 3.0, self.instrument),
            (BOLD, 2.8, WHICH),
            (BODY, SMALL_MM, self.edition),
            (BODY, SMALL_MM, self.note),
        )
        return [
            (font, size, line)
            for font, size, text in parts
            for line in simpleSplit(text, font, pt(size), room)
        ]

    def _base_mm(self, width_mm: float) -> float:
        """How high the part with bars and names is."""
        return max(BASE_MM, 4.0 + sum(size * LEADING for _, size, _ in self._names(width_mm)))

    def _draw_names(self, canvas: Any, plan: Plan, sheet: Sheet) -> None:
        width = plan.window_width_mm
        left = MARGIN_MM + BARS_WIDE_MM + BETWEEN_MM
        y = MARGIN_MM + self._base_mm(width) - 1.0
        which = (
            f"Sheet row {sheet.row + 1} / column {sheet.column + 1} of {plan.count}, "
            f"{PAPER_NAMES[plan.paper]}"
        )
        for font, size, text in self._names(width):
            y -= size * LEADING
            canvas.setFont(font, pt(size))
            canvas.drawString(pt(left), pt(y), which if text == WHICH else text)

    def _draw_map(self, canvas: Any, plan: Plan, right: float, top: float) -> None:
        """The sheets as they lie together, with the outlines of the template."""
        wide = plan.columns * (plan.window_width_mm - OVERLAP_MM) + OVERLAP_MM
        high = plan.rows * (plan.window_height_mm - OVERLAP_MM) + OVERLAP_MM
        scale = min(MAP_WIDE_MM / wide, (MAP_HIGH_MM - 1) / high)
        x0, y0 = right - wide * scale, top - 0.5
        under = plan.template_height_mm

        def at(x: float, y: float) -> tuple[float, float]:
            return pt(x0 + x * scale), pt(y0 - (under - y) * scale)

        canvas.setLineWidth(pt(0.1))
        canvas.setStrokeGray(0.6)
        for stroke in self.template.strokes:
            if stroke.kind == "cut":
                path = canvas.beginPath()
                path.moveTo(*at(*stroke.points[0]))
                for point in stroke.points[1:]:
                    path.lineTo(*at(*point))
                path.close()
                canvas.drawPath(path)
        canvas.setStrokeGray(0)
        canvas.setFont(BODY, pt(1.9))
        for sheet in plan.sheets():
            x, y = at(sheet.left_mm, sheet.bottom_mm)
            size = pt(plan.window_width_mm * scale), pt(plan.window_height_mm * scale)
            canvas.rect(x, y, *size)
            words = f"{sheet.row + 1}/{sheet.column + 1}"
            canvas.drawCentredString(x + size[0] / 2, y + pt(0.8), words)


def _draw_bar(canvas: Any, y: float, length: float, step: float, words: str) -> None:
    start = MARGIN_MM + 0.5
    canvas.line(pt(start), pt(y), pt(start + length), pt(y))
    count = round(length / step)
    for number in range(count + 1):
        x = start + length * number / count
        tall = 4.0 if number in (0, count) else 1.6
        canvas.line(pt(x), pt(y), pt(x), pt(y + tall))
    canvas.setFont(BODY, pt(2.8))
    canvas.drawString(pt(start + length + 1.5), pt(y), words)
