"""Sets a station's card in type: the largest at which all of it fits on its one page."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import Any

from .card_content import Card, CardLimit
from .lettering import BODY, BOLD, bold, grey, markup, paragraph, width_of
from .sizes import KEY_POINTS_LEAST_PT, LIMITS_LEAST_PT, Paper

SCALES = tuple(round(1 + 0.02 * step, 2) for step in range(61))  # times the least sizes
NUMBER_SHARE, FIGURES_SHARE = 0.045, 0.26  # of the card's width; a column of figures at most
GAP_PT = 8.0  # between columns
PART_GAP_PT = 6.0  # above a part
INSET_PT = 5.0  # of what stands in a box
MOST_AIR_PT = 6.0  # what is left over goes between the rows, up to this for each


class CannotFit(ValueError):
    """A card that is too full for its paper; the message says what would help."""


@dataclass(frozen=True)
class Cell:
    """A paragraph at its place in a row."""

    left: float
    top: float
    width: float
    words: Any
    height: float

    @property
    def bottom(self) -> float:
        """How far below the row's top it reaches."""
        return self.top + self.height


@dataclass(frozen=True)
class Row:
    """Paragraphs side by side."""

    cells: tuple[Cell, ...]
    pad_pt: float

    @property
    def height(self) -> float:
        """How high it is, with the room above and below."""
        return max(cell.bottom for cell in self.cells) + 2 * self.pad_pt


@dataclass(frozen=True)
class Part:
    """A heading and its rows."""

    heading: Row
    rows: tuple[Row, ...]
    ruled: bool = False  # a thin line between rows
    boxed: bool = False

    @property
    def height(self) -> float:
        """How high it is, with the gap above it."""
        box = 2 * INSET_PT if self.boxed else 0.0
        return PART_GAP_PT + box + self.heading.height + sum(row.height for row in self.rows)


@dataclass(frozen=True)
class Layout:
    """A card as it fits: its parts, and how many of the limits are left to the handbook."""

    parts: tuple[Part, ...]
    limits_left_out: int
    scale: float
    air_pt: float


def lay_out(card: Card, paper: Paper, width_pt: float, height_pt: float) -> Layout:
    """The parts in the room below the head. CannotFit where even the shortest does not."""
    low, high = 0, len(SCALES) - 1
    best = _Setting(card, width_pt, SCALES[0])
    if best.height(len(card.limits)) > height_pt:
        return _shortened(best, card, paper, height_pt)
    while low < high:
        middle = (low + high + 1) // 2
        tried = _Setting(card, width_pt, SCALES[middle])
        if tried.height(len(card.limits)) <= height_pt:
            low, best = middle, tried
        else:
            high = middle - 1
    return best.layout(len(card.limits), height_pt)


def _shortened(least: "_Setting", card: Card, paper: Paper, height_pt: float) -> Layout:
    for count in range(len(card.limits) - 1, -1, -1):
        if least.height(count) <= height_pt:
            return least.layout(count, height_pt)
    raise CannotFit(
        f"the card of {card.id} does not fit on {paper.name} even without its limits: shorten its "
        "key points, or take larger paper"
    )


class _Setting:
    """A card's rows in one size of type."""

    def __init__(self, card: Card, width: float, scale: float) -> None:
        self.scale, self.width = scale, width
        self.key_pt, self.limit_pt = KEY_POINTS_LEAST_PT * scale, LIMITS_LEAST_PT * scale
        figures = [one for limit in card.limits for one in limit.figures]
        self.wide = self._column((one.first for one in figures), BOLD) + GAP_PT
        self.narrow = self._column((one.also for one in figures), BODY)
        self.key_points = self._key_points(card)
        self.limits = tuple(self._limit(one) for one in card.limits)
        self.hazards = self._hazards(card)

    def height(self, count: int) -> float:
        """How high it is with the first ``count`` limits."""
        return sum(part.height for part in self.parts(count))

    def layout(self, count: int, height_pt: float) -> Layout:
        """With the first ``count`` limits, and what is left of the height as air."""
        parts = tuple(self.parts(count))
        rows = sum(len(part.rows) for part in parts)
        left = height_pt - self.height(count)
        air = min(MOST_AIR_PT, left / rows) if rows else 0.0
        return Layout(parts, len(self.limits) - count, self.scale, air)

    def parts(self, count: int) -> Iterator[Part]:
        """The parts of the card, with the first ``count`` limits."""
        if self.key_points:
            yield Part(self._heading("Key points"), self.key_points)
        if self.limits:
            rest = len(self.limits) - count
            more = f"… and {rest} more in the handbook" if count else f"{rest} in the handbook"
            rows = self.limits[:count]
            if rest:
                rows += (self._row([(0.0, self.width, markup(more))], self.limit_pt, 1.5),)
            yield Part(self._heading("Limits"), rows, ruled=True)
        if self.hazards:
            heading = self._heading("Hazards", INSET_PT)
            yield Part(heading, self.hazards, boxed=True)

    def _heading(self, words: str, inset: float = 0.0) -> Row:
        return self._row([(inset, self.width - 2 * inset, bold(words))], self.key_pt * 1.08, 1.0)

    def _key_points(self, card: Card) -> tuple[Row, ...]:
        number = max(self.width * NUMBER_SHARE, self.key_pt * 1.7)
        return tuple(
            self._row(
                [(0.0, number, bold(place)),
                 (number, self.width - number, f"{bold(_ended(title))} {markup(point)}")],
                self.key_pt, 1.2,
            )
            for place, (title, point) in enumerate(card.key_points, 1)
        )  # fmt: skip

    def _limit(self, limit: CardLimit) -> Row:
        wide, narrow, model = self.wide, self.narrow, 0.0
        if len(limit.figures) > 1:
            model = self._column((one.models for one in limit.figures), BODY) + GAP_PT
        first = self.width - wide - narrow
        only = "" if model else limit.figures[0].models
        what = markup(f"{limit.feature} ({only})" if only else limit.feature)
        cells = [self._cell(0.0, 0.0, first - model - GAP_PT, f"{what} {grey(f'·\xa0{limit.gauge}')}",
                            self.limit_pt)]  # fmt: skip
        top = 0.0
        for one in limit.figures:
            line = [
                self._cell(first, top, wide - GAP_PT, bold(one.first), self.limit_pt),
                self._cell(first + wide, top, narrow, markup(one.also), self.limit_pt),
            ]
            if model:
                words = grey(one.models)
                line.append(self._cell(first - model, top, model - GAP_PT, words, self.limit_pt))
            top = max(cell.bottom for cell in line)
            cells += line
        return Row(tuple(cells), 1.3)

    def _column(self, texts: Iterable[str], font: str) -> float:
        """As wide as the widest of the texts, in the limits' size, and no wider than is good."""
        widest = max((width_of(text, font, self.limit_pt) for text in texts), default=0.0)
        return min(self.width * FIGURES_SHARE, widest + 1)

    def _hazards(self, card: Card) -> tuple[Row, ...]:
        return tuple(
            self._row(
                [(INSET_PT, self.width - 2 * INSET_PT, f"{bold(_ended(name))} {markup(words)}")],
                self.limit_pt, 0.8,
            )
            for name, words in card.hazards
        )  # fmt: skip

    def _row(self, cells: Sequence[tuple[float, float, str]], size_pt: float, pad: float) -> Row:
        made = (self._cell(left, 0.0, width, words, size_pt) for left, width, words in cells)
        return Row(tuple(made), pad)

    def _cell(self, left: float, top: float, width: float, words: str, size_pt: float) -> Cell:
        made = paragraph(words, size_pt)
        return Cell(left, top, width, made, float(made.wrap(width, 1e6)[1]))


def _ended(words: str) -> str:
    return words if words[-1:] in ".!?…" else f"{words}."
