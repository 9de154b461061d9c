"""Templates on paper: every sheet is read back by a reader that knows nothing of ours, and measured."""

import io
import math
from dataclasses import dataclass, field
from functools import cache
from itertools import product
from typing import Any

import pdfplumber
import pytest

from benchrule.templates.makers import make
from benchrule.templates.pdf import to_pdf
from benchrule.templates.shapes import Label, Point, Template, cut, mark, slot

from .test_templates import fan_place, fanned, instrument, off_line, slot_x, small

MM = 25.4 / 72
NEAR = 0.005  # mm; a hair of what is promised (0.02)
CUT, SLOT, MARK = 0.25, 0.13, 0.18  # line widths, mm
SAID = {
    "instrument": "The Fourteen",
    "edition": "Handbook: Fretboard making, revision 1 of 2026-11-20",
    "note": "Invented for demonstration.",
}


@dataclass
class Page:
    """A sheet as it was read: lines as lists of points in mm, y up from the lower edge."""

    width: float
    height: float
    text: str
    lines: list[tuple[float, list[Point], bool]] = field(
        default_factory=list
    )  # width, points, broken
    letters: list[tuple[str, float, float, float]] = field(default_factory=list)  # x, y, size

    def straight(self, width: float) -> list[tuple[Point, Point]]:
        """Unbroken straight lines of a line width."""
        return [
            (points[0], points[1])
            for thick, points, broken in self.lines
            if len(points) == 2 and not broken and abs(thick - width) < 0.005
        ]

    def crosses(self) -> dict[str, Point]:
        """The middles of the join crosses by their letters."""
        level, upright = [], []
        for thick, points, _ in self.lines:
            if len(points) == 2 and abs(thick - 0.1) < 0.005:
                (x, y), (to_x, to_y) = points
                middle = (x + to_x) / 2, (y + to_y) / 2
                if abs(abs(to_x - x) - 8) < 1e-3 and abs(to_y - y) < 1e-6:
                    level.append(middle)
                if abs(abs(to_y - y) - 8) < 1e-3 and abs(to_x - x) < 1e-6:
                    upright.append(middle)
        found = {}
        for a, b in product(level, upright):
            if math.dist(a, b) < 1e-3:
                names = [
                    text
                    for text, x, y, size in self.letters
                    if 0 < x - a[0] < 4 and 0 < y - a[1] < 4 and abs(size - 2.4) < 0.05
                ]
                assert len(names) == 1, names
                found[names[0]] = a
        return found


def read(data: bytes) -> list[Page]:
    pages = []
    with pdfplumber.open(io.BytesIO(data)) as book:
        for sheet in book.pages:
            high = float(sheet.height)
            page = Page(sheet.width * MM, high * MM, sheet.extract_text() or "")
            drawn: list[Any] = [*sheet.lines, *sheet.curves, *sheet.rects]
            for one in drawn:
                points = [(x * MM, (high - y) * MM) for x, y in one["pts"]]
                broken = bool(one["dash"] and one["dash"][0])
                page.lines.append((one["linewidth"] * MM, points, broken))
            for one in sheet.chars:
                page.letters.append((one["text"], one["x0"] * MM, one["y0"] * MM, one["size"] * MM))
            pages.append(page)
    return pages


def laid_together(pages: list[Page]) -> list[Point]:
    """How far each sheet has to be moved so that its crosses lie on those of the first."""
    crosses = [page.crosses() for page in pages]
    moves: dict[int, Point] = {0: (0.0, 0.0)}
    while len(moves) < len(pages):
        before = len(moves)
        for done, other in product(list(moves), range(len(pages))):
            shared = set(crosses[done]) & set(crosses[other])
            if other in moves or not shared:
                continue
            found = [
                tuple(crosses[done][name][axis] + moves[done][axis] - crosses[other][name][axis]
                      for axis in (0, 1))
                for name in sorted(shared)
            ]  # fmt: skip
            assert len(found) == 2  # two crosses hold a sheet; both say the same
            assert math.dist(found[0], found[1]) < 1e-3
            moves[other] = found[0][0], found[0][1]
        assert len(moves) > before, "a sheet joins on to none"
    return [moves[number] for number in range(len(pages))]


def moved(point: Point, by: Point) -> Point:
    return point[0] + by[0], point[1] + by[1]


@cache
def printed(what: str, paper: str) -> tuple[Template, tuple[Page, ...]]:
    one = {"plain": instrument, "small": small, "fan": fanned}[what]()
    template = make(one, "fret-slots")
    return template, tuple(read(to_pdf(template, paper, **SAID)))


def slots_of(what: str, paper: str) -> list[tuple[int, Point, Point]]:
    """Every slot seen, as (sheet, bass end, treble end), sheets laid together."""
    _, pages = printed(what, paper)
    found = []
    for number, (page, by) in enumerate(zip(pages, laid_together(list(pages)), strict=True)):
        for line in page.straight(SLOT):
            low, high = sorted((moved(point, by) for point in line), key=lambda one: one[1])
            if high[1] - low[1] > 20:
                found.append((number, low, high))
    return found


def board_corner(pages: tuple[Page, ...]) -> tuple[Point, Point]:
    """The nut end of the board on the first sheet: bass and treble corner."""
    points = [
        point for thick, line, _ in pages[0].lines if abs(thick - CUT) < 0.005 for point in line
    ]
    left = min(x for x, _ in points)
    nut = [point for point in points if point[0] < left + 25]
    return min(nut, key=lambda one: one[1]), max(nut, key=lambda one: one[1])


@pytest.mark.parametrize("paper", ["a4", "letter"])
@pytest.mark.parametrize(("what", "scale", "frets"), [("plain", 645, 20), ("small", 380, 18)])
def test_every_slot_is_printed_in_its_place(
    what: str, paper: str, scale: float, frets: int
) -> None:
    _, pages = printed(what, paper)
    nut = board_corner(pages)[0][0]
    seen = slots_of(what, paper)
    for _, low, high in seen:
        assert low[0] == pytest.approx(high[0], abs=NEAR)
    for fret in range(1, frets + 1):
        place = nut + slot_x(scale, fret)
        assert any(abs(low[0] - place) < NEAR for _, low, _ in seen), fret
    # And nothing is taken for a slot that is none.
    places = [nut + slot_x(scale, fret) for fret in range(1, frets + 1)]
    assert all(min(abs(low[0] - place) for place in places) < NEAR for _, low, _ in seen)


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_a_fan_is_printed_in_its_place(paper: str) -> None:
    template, pages = printed("fan", paper)
    # Where the bass string leaves the nut: so far from the board's corner as the slant takes it.
    corner = board_corner(pages)[0]
    own = template.named("board").points[0], template.named("bass string").points[0]
    start = corner[0] + own[1][0] - own[0][0], corner[1] + own[1][1] - own[0][1]
    seen, spreads = slots_of("fan", paper), (36.5, 54.0)
    lead = (fan_place(665, spreads, 1)[0] - fan_place(645, spreads, 1)[0]) * slot_x(1, 7)
    for fret in range(1, 21):
        along, out = fan_place(665, spreads, slot_x(1, fret))
        bass = start[0] + along, start[1] + spreads[0] / 2 - out
        along, out = fan_place(645, spreads, slot_x(1, fret))
        treble = start[0] + lead + along, start[1] + spreads[0] / 2 + out
        assert any(
            max(abs(off_line(bass, low, high)), abs(off_line(treble, low, high))) < NEAR
            for _, low, high in seen
        ), fret


@pytest.mark.parametrize(
    ("what", "paper"), [("plain", "letter"), ("plain", "a4"), ("fan", "letter")]
)
def test_what_two_sheets_show_lies_on_itself_when_they_are_laid_together(
    what: str, paper: str
) -> None:
    _, pages = printed(what, paper)
    assert len(pages) == 2
    moves = laid_together(list(pages))
    shown = []
    for page, by in zip(pages, moves, strict=True):
        shown.append([(moved(a, by), moved(b, by)) for a, b in page.straight(SLOT)])
    overlap = moves[1][0] + 10, moves[0][0] + pages[0].width - 10
    assert overlap[1] - overlap[0] == pytest.approx(10, abs=NEAR)
    twins = [
        [line for line in lines if all(overlap[0] + 0.01 < x < overlap[1] - 0.01 for x, _ in line)
         and abs(line[0][1] - line[1][1]) > 20]
        for lines in shown
    ]  # fmt: skip
    assert len(twins[0]) == len(twins[1])
    assert twins[0], "no slot lies in the overlap, so nothing is tried"
    for a, b in zip(sorted(twins[0]), sorted(twins[1]), strict=True):
        assert math.dist(a[0], b[0]) < NEAR and math.dist(a[1], b[1]) < NEAR


def test_rows_and_columns_lie_together_too() -> None:
    corners = [(5.0, 5.0), (495.0, 5.0), (495.0, 595.0), (5.0, 595.0)]
    slants = [mark((5, 5), (495, 595)), mark((5, 300), (495, 320)), mark((250, 5), (260, 595))]
    template = Template("big", "Big", 500, 600, (cut(corners), *slants))
    pages = read(to_pdf(template, "a4"))
    assert len(pages) == 9
    assert sorted(page.text.partition("Sheet ")[2].partition("\n")[0] for page in pages) == [
        f"row {row} / column {column} of 9, A4" for row in (1, 2, 3) for column in (1, 2, 3)
    ]  # fmt: skip
    moves = laid_together(pages)
    points = [
        moved(point, by)
        for page, by in zip(pages, moves, strict=True)
        for thick, line, _ in page.lines
        if abs(thick - CUT) < 0.005
        for point in line
    ]
    for axis, length in ((0, 490), (1, 590)):
        places = [point[axis] for point in points]
        assert max(places) - min(places) == pytest.approx(length, abs=NEAR)
    low, left = min(y for _, y in points), min(x for x, _ in points)
    for one in slants:
        start, end = (moved(point, (left - 5, low - 5)) for point in one.points)
        seen = 0.0
        for page, by in zip(pages, moves, strict=True):
            for a, b in page.straight(MARK):
                ends = moved(a, by), moved(b, by)
                if max(abs(off_line(end_, start, end)) for end_ in ends) < NEAR:
                    seen += math.dist(*ends)
        assert seen >= math.dist(start, end) - NEAR  # all of it, the overlaps twice


@pytest.mark.parametrize(
    ("what", "paper", "size"),
    [("plain", "a4", (297, 210)), ("plain", "letter", (279.4, 215.9)), ("small", "a4", (297, 210))],
)
def test_every_sheet_has_true_bars_and_says_what_it_is(
    what: str, paper: str, size: tuple[float, float]
) -> None:
    template, pages = printed(what, paper)
    assert {(round(page.width, 1), round(page.height, 1)) for page in pages} == {size}
    for number, page in enumerate(pages, 1):
        lines = page.straight(MARK)
        for length, parts in ((100.0, 10), (101.6, 8)):
            bars = [
                (a, b) for a, b in lines
                if abs(a[1] - b[1]) < 1e-6 and abs(abs(a[0] - b[0]) - length) < 0.02
            ]  # fmt: skip
            assert len(bars) == 1
            start, end = sorted(bars[0])
            assert end[0] - start[0] == pytest.approx(length, abs=NEAR)
            ticks = sorted(
                a[0] for a, b in lines
                if abs(a[0] - b[0]) < 1e-6 and abs(min(a[1], b[1]) - start[1]) < 1e-3
            )  # fmt: skip
            assert ticks == pytest.approx(
                [start[0] + length * part / parts for part in range(parts + 1)], abs=NEAR
            )
        words = " ".join(page.text.split())
        for said in (
            "measure both bars with a steel rule: 100 mm and 4 in",
            "Print at actual size (100 %), without scaling", "100 mm", "4 in", template.title,
            f"Sheet row 1 / column {number} of {len(pages)}", "Invented for demonstration.",
            "Handbook: Fretboard making, revision 1 of 2026-11-20",
        ):  # fmt: skip
            assert said in words, said
    assert "Figures count from the nut end" in pages[0].text
    assert all("Figures count" not in page.text for page in pages[1:])


def test_the_first_of_several_sheets_has_a_map() -> None:
    _, pages = printed("plain", "a4")
    boxes = [
        [points for thick, points, _ in page.lines
         if len(points) >= 4 and abs(thick - 0.1) < 0.005 and points[0][1] < 60]
        for page in pages
    ]  # fmt: skip
    frames = [
        one
        for one in boxes[0]
        if all(len({round(p[axis], 3) for p in one}) == 2 for axis in (0, 1))
    ]
    assert len(frames) == 2 and "1/1" in pages[0].text and "1/2" in pages[0].text
    assert not boxes[1] and "1/2" not in pages[1].text
    assert "1/1" not in printed("small", "a4")[1][0].text


def everything() -> list[tuple[str, Template]]:
    names = ("neck-contours", "dish-gauges", "nut-and-strings", "bridge-place", "channel-gauge",
             "brace-profiles")  # fmt: skip
    return [(name, make(instrument(), name)) for name in names]


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_nothing_lies_off_the_sheet_and_every_label_is_there(paper: str) -> None:
    for name, template in [*everything(), ("fan", make(fanned(), "fret-slots"))]:
        pages = read(to_pdf(template, paper, **SAID))
        for page in pages:
            for thick, points, _ in page.lines:
                for x, y in points:
                    assert 10 - 1e-3 <= x <= page.width - 10 + 1e-3, (name, thick)
                    assert 10 - 1e-3 <= y <= page.height - 10 + 1e-3, (name, thick)
        letters = "".join(page.text for page in pages)
        for label in template.labels:
            if not label.angle_deg and len(pages) == 1:
                assert label.text in letters, (name, label.text)


def test_curves_are_printed_at_full_size() -> None:
    template = make(instrument(), "dish-gauges")
    pages = read(to_pdf(template, "a4"))
    assert len(pages) == 1
    outlines = [points for thick, points, _ in pages[0].lines if abs(thick - CUT) < 0.005]
    longest = max(outlines, key=lambda one: max(x for x, _ in one) - min(x for x, _ in one))
    assert max(x for x, _ in longest) - min(x for x, _ in longest) == pytest.approx(240, abs=NEAR)
    tops = sorted(
        (points for points in outlines if len(points) > 60),
        key=lambda one: -max(y for _, y in one),
    )
    for outline, radius, hollow in ((tops[0], 9000, True), (tops[3], 4600, False)):
        low = min(y for _, y in outline)
        arc = [point for point in outline if point[1] > low + 5]
        middle = (min(x for x, _ in arc) + max(x for x, _ in arc)) / 2
        crown = min(arc, key=lambda one: abs(one[0] - middle))
        centre = crown[1] + (radius if hollow else -radius)
        for x, y in arc:
            assert math.hypot(x - middle, y - centre) == pytest.approx(radius, abs=NEAR)


def test_the_fewest_sheets_are_taken() -> None:
    def sheets(width: float, height: float) -> list[Page]:
        corners = [(0.0, 0.0), (width, 0.0), (width, height), (0.0, height)]
        return read(to_pdf(Template("t", "T", width, height, (cut(corners),)), "a4"))

    wide, tall = sheets(270, 100), sheets(180, 220)
    assert [(len(one), one[0].width > one[0].height) for one in (wide, tall)] == [
        (1, True), (1, False),
    ]  # fmt: skip
    assert len(sheets(277, 100)) == 1  # all that is left between the margins
    assert len(sheets(277.5, 100)) == 2
    assert len(sheets(277 * 2 - 10, 100)) == 2
    assert len(sheets(277 * 2 - 9, 100)) == 3


def test_the_same_template_gives_the_same_bytes() -> None:
    for _, template in everything()[:2]:
        assert to_pdf(template, "a4", **SAID) == to_pdf(template, "a4", **SAID)
    assert to_pdf(everything()[0][1]) != to_pdf(everything()[1][1])


def test_names_with_strange_letters_and_long_editions_are_printed_in_full() -> None:
    template = Template("t", "T", 50, 50, (slot((1, 1), (40, 40), 0),), (Label("Ő ½", (1, 1)),))
    edition = "; ".join(f"Station number {n}, revision {n} of 2026-11-20" for n in range(12))
    page = read(to_pdf(template, instrument="Mödel Ő Ж", edition=edition, note="Invented."))[0]
    words = " ".join(page.text.split())
    assert "Mödel O ?" in words and "O ½" in words
    for said in ("Invented.", "number 11, revision"):
        assert said in words
    lowest = min(y for _, _, y, _ in page.letters)
    assert lowest >= 9


def test_a_paper_that_is_not_known_is_refused() -> None:
    with pytest.raises(KeyError):
        to_pdf(make(small(), "fret-slots"), "a0")
