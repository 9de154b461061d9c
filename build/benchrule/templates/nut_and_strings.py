"""The nut's blank with its slots, and two rules with the places of the strings."""

from collections.abc import Iterator, Mapping, Sequence
from itertools import pairwise
from typing import Any

from calculators.engine.compute import Answer

from ..instruments import Instrument
from .answers import CannotMake, answer_of, example_notes, mm, taken_from
from .pieces import Piece, lay_out
from .shapes import Label, Point, Template, cut, guide, mark, rectangle, size_within, slot

NAME, TITLE = "nut-and-strings", "Nut and places of the strings"
CALCULATOR, SETS, BOARD = "string-spacing", "string-tension", "fret-spacing"
MATTERS = (
    "gauges", "gauges_mil", "string_spread_nut", "edge_margin", "string_spread_bridge",
    "fret_height", "nut_height", "nut_height_bass", "slot_clearance", "fret_radius",
    "board_joint", "blank_spare",
)  # fmt: skip
RULE_MM, MARKS_MM = 20.0, 9.0  # a rule's width, and the length of its marks
BEYOND_MM = 8.0  # bridge rule beyond the outer strings
SQUARE_DEG = 0.05  # a nut that slants less is square
WIDEST_MM = 180.0

Row = Mapping[str, Any]


def draw_nut_and_strings(instrument: Instrument) -> Template:
    """Blank and rules; CannotMake where the strings are not known, or the nut stands aslant."""
    answer = answer_of(instrument, CALCULATOR)
    _same_strings(instrument, answer)
    _square_nut(instrument)
    rows = answer.tables["nut"]
    nut = [(row["string"], row["place"]) for row in rows]
    spread = answer.values["string_spread_bridge"]
    bridge = [(row["string"], row["bridge_place"] + BEYOND_MM) for row in answer.tables["saddle"]]
    pieces = [
        _blank(answer, rows),
        _rule("At the nut", nut, answer.values["nut_width"], "ends are the board's edges"),
        _rule("At the saddle", bridge, spread + 2 * BEYOND_MM, "middle on the centre line"),
    ]
    notes = [
        "The bass side is at the left. Marks are the middles of the strings.",
        "The blank is seen from its front, standing on its shelf. Lines of slots are their middles, "
        "from the floor up; the figure under each is how wide it is filed. The upper mark is the "
        "nut's top: the floors are filed last, at pitch.",
        *example_notes(instrument, {CALCULATOR: MATTERS}),
    ]
    return lay_out(NAME, TITLE, pieces, 0.0, notes)


def _same_strings(instrument: Instrument, answer: Answer) -> None:
    """Refuses a spacing that reckons with another number of strings than the strings' own page."""
    pull = taken_from(instrument, SETS)
    count = int(answer.values["strings_count"])
    if pull and len(pull.tables["pull"]) != count:
        raise CannotMake(
            f"For {instrument.title} the spacing reckons with {count} strings and their tension with "
            f"{len(pull.tables['pull'])}. Give the instrument its gauges and its set of strings, so "
            "that both agree."
        )


def _square_nut(instrument: Instrument) -> None:
    board = taken_from(instrument, BOARD)
    slant = board.values.get("nut_angle", 0.0) if board else 0.0
    if abs(slant) > SQUARE_DEG:
        raise CannotMake(
            f"The nut of {instrument.title} stands {mm(abs(slant), 1)} degrees aslant, and the "
            "spacing is reckoned for a square one. Mark this nut under strings that are drawn up."
        )


def _blank(answer: Answer, rows: Sequence[Row]) -> Piece:
    values = answer.values
    wide, high = values["nut_width"], values["blank_height"]
    below, above = 9.0, 5.0
    strokes = [cut([(x, y + below) for x, y in rectangle(wide, high)], "nut blank")]
    top: list[Point] = [(row["place"], row["top"] + below) for row in rows]
    strokes.append(mark(*top, name="nut top"))
    labels = []
    room = closest([(row["string"], row["place"]) for row in rows]) - 0.3
    size, upright = size_within("10", room, 3.0), min(2.2, room)
    for row in rows:
        x, name = row["place"], row["string"]
        floor = row["top"] - row["slot_depth"]
        strokes.append(
            slot((x, floor + below), (x, high + below), row["slot_width"], f"slot {name}")
        )
        labels += [
            Label(name, (x, high + below + 1.4), size, anchor="middle"),
            Label(mm(row["slot_width"]), (x + 0.36 * upright, below - 1.2), upright, 90, "end"),
        ]
    strokes.append(guide((wide / 2, below - 4), (wide / 2, below + high), name="middle of the nut"))
    return Piece(wide, high + below + above, tuple(strokes), tuple(labels))


def _rule(title: str, places: Sequence[tuple[str, float]], wide: float, says: str) -> Piece:
    strokes = [cut(rectangle(wide, RULE_MM), title)]
    strokes += [mark((x, 0.0), (x, MARKS_MM), name=f"{title}, string {name}") for name, x in places]
    strokes.append(guide((wide / 2, 0.0), (wide / 2, MARKS_MM / 2), name=f"{title}, middle"))
    words = f"{title}: {says}"
    labels = (
        *_numbers(places),
        Label(words, (wide / 2, RULE_MM - 4.2), size_within(words, wide, 2.2), anchor="middle"),
    )
    return Piece(wide, RULE_MM, tuple(strokes), labels)


def _numbers(places: Sequence[tuple[str, float]]) -> Iterator[Label]:
    size = size_within("10", closest(places) - 0.3, 3.0)
    for name, x in places:
        yield Label(name, (x, MARKS_MM + 1.0), size, anchor="middle")


def closest(places: Sequence[tuple[str, float]]) -> float:
    """How near the nearest two strings lie, mm, from middle to middle."""
    return min(after - before for (_, before), (_, after) in pairwise(places))
