"""How a template is cut up over sheets of paper, and where the sheets are joined again; mm."""

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass

from .shapes import Point, Template

PAPERS = {"a4": (210.0, 297.0), "letter": (215.9, 279.4)}
PAPER_NAMES = {"a4": "A4", "letter": "Letter"}
MARGIN_MM = 10.0  # what printers leave white
OVERLAP_MM = 10.0
# How high the foot of a sheet is, by the width between its margins and whether it has a map.
FootHeight = Callable[[float, bool], float]
CROSS_SHARES = (0.3, 0.85)  # where on a joint its two crosses stand


@dataclass(frozen=True)
class Sheet:
    """One sheet: its row and column from the upper left, and the part of the template on it."""

    row: int
    column: int
    left_mm: float
    bottom_mm: float


@dataclass(frozen=True)
class Joint:
    """Where two neighbours are laid together: along the middle of what both show.

    ``first`` is the sheet at the left or above, ``second`` is cut and laid on it. The line and the
    crosses on it are places of the template.
    """

    first: Sheet
    second: Sheet
    start: Point
    end: Point
    crosses: tuple[tuple[str, Point], ...]


@dataclass(frozen=True)
class Plan:
    """The sheets of a template on one paper. The window is the part of a page that is drawn on."""

    paper: str
    page_width_mm: float
    page_height_mm: float
    window_width_mm: float
    window_height_mm: float
    columns: int
    rows: int
    template_height_mm: float
    foot_mm: float  # below the window

    @property
    def count(self) -> int:
        """How many sheets."""
        return self.columns * self.rows

    @property
    def landscape(self) -> bool:
        """Whether the sheets lie on their long side."""
        return self.page_width_mm > self.page_height_mm

    def sheets(self) -> Iterator[Sheet]:
        """Every sheet, row by row from the upper left."""
        for row in range(self.rows):
            for column in range(self.columns):
                yield self.sheet(row, column)

    def sheet(self, row: int, column: int) -> Sheet:
        """The sheet at a place, counted from 0."""
        left = column * (self.window_width_mm - OVERLAP_MM)
        top = self.template_height_mm - row * (self.window_height_mm - OVERLAP_MM)
        return Sheet(row, column, left, top - self.window_height_mm)

    def joints(self) -> Iterator[Joint]:
        """Every joint, each with two crosses of its own letters."""
        letters = _letters()
        for sheet in self.sheets():
            if sheet.column + 1 < self.columns:
                x = sheet.left_mm + self.window_width_mm - OVERLAP_MM / 2
                low, high = sheet.bottom_mm, sheet.bottom_mm + self.window_height_mm
                yield self._joint(sheet, 0, 1, (x, low), (x, high), letters)
            if sheet.row + 1 < self.rows:
                y = sheet.bottom_mm + OVERLAP_MM / 2
                left, right = sheet.left_mm, sheet.left_mm + self.window_width_mm
                yield self._joint(sheet, 1, 0, (left, y), (right, y), letters)

    def _joint(
        self, sheet: Sheet, down: int, right: int, start: Point, end: Point, letters: Iterator[str]
    ) -> Joint:
        other = self.sheet(sheet.row + down, sheet.column + right)
        crosses = tuple(
            (
                next(letters),
                (start[0] + share * (end[0] - start[0]), start[1] + share * (end[1] - start[1])),
            )
            for share in CROSS_SHARES
        )
        return Joint(sheet, other, start, end, crosses)


def plan_sheets(template: Template, paper: str, foot_mm: FootHeight) -> Plan:
    """The way up that takes the fewest sheets; upright where both take as many.

    KeyError for a paper that is not known.
    """
    narrow, tall = PAPERS[paper]
    plans = [_plan(template, paper, *size, foot_mm) for size in ((narrow, tall), (tall, narrow))]
    return min(plans, key=lambda plan: plan.count)


def _plan(template: Template, paper: str, wide: float, high: float, foot_mm: FootHeight) -> Plan:
    across = wide - 2 * MARGIN_MM
    for with_map in (False, True):  # a single sheet needs no map
        foot = foot_mm(across, with_map)
        up = high - 2 * MARGIN_MM - foot
        columns, rows = _count(template.width_mm, across), _count(template.height_mm, up)
        if columns * rows == 1:
            break
    return Plan(paper, wide, high, across, up, columns, rows, template.height_mm, foot)


def _count(length: float, window: float) -> int:
    if length <= window:
        return 1
    return math.ceil((length - window) / (window - OVERLAP_MM) - 1e-9) + 1


def _letters() -> Iterator[str]:
    """A, B ... Z, then A1, B1 and so on."""
    number = 0
    while True:
        turn = number // 26
        yield chr(ord("A") + number % 26) + (f"{turn}" if turn else "")
        number += 1
