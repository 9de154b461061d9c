"""The fretboard with every slot: to saw by, or to cut out as a template for the saw."""

from collections.abc import Callable, Iterable, Iterator
from itertools import pairwise

from calculators.engine.compute import Answer

from ..instruments import Instrument
from .answers import answer_of, example_notes, is_for, mm
from .board_plan import BoardPlan, board_plan
from .shapes import (
    LETTER_SHARE,
    Label,
    Point,
    Stroke,
    Template,
    cut,
    guide,
    mark,
    size_within,
    slot,
)

NAME, TITLE = "fret-slots", "Fret slots"
CALCULATOR, SLOT_WIDTH = "fret-spacing", "fret-seating"
MATTERS = (
    "scale_length", "bass_scale_length", "treble_scale_length", "square_fret", "frets",
    "body_joint_fret", "string_spread_nut", "string_spread_bridge", "edge_margin",
)  # fmt: skip
SEMITONES = 12
LEFT_MM, RIGHT_MM = 12.0, 6.0
SADDLE_WITHIN_MM = 255.0  # so that board and saddle line still go on one sheet
NUMBER_MM, DISTANCE_MM, WORD_MM = 3.2, 2.2, 2.2  # type


def draw_fret_slots(instrument: Instrument) -> Template:
    """Nut end, slots and edges of the board, and its saddle line where that is near enough."""
    answer = answer_of(instrument, CALCULATOR)
    board = board_plan(answer)
    width = _slot_width(instrument)
    fanned = answer.values["layout"] == "fanned"
    saddle = max(board.bass_run_mm, board.treble_lead_mm + board.treble_run_mm)
    with_saddle = saddle <= SADDLE_WITHIN_MM
    reach = 1.0 if with_saddle else board.end_share
    strokes = [*_lines(board, width, reach), *_saddle(board, with_saddle)]
    labels = [*_numbers(board), *_distances(board, answer, fanned), *_words(board, with_saddle)]
    joint = answer.values["body_joint_fret"]
    if joint <= board.frets:
        labels.append(_over_joint(board, joint, fanned))
    notes = [
        *_notes(answer, board, width, with_saddle),
        *example_notes(instrument, {CALCULATOR: MATTERS}),
    ]
    return _placed(strokes, labels, notes, fanned)


def _slot_width(instrument: Instrument) -> float:
    """The width of the saw line, mm; 0 where nothing is known of it."""
    if not is_for(instrument, SLOT_WIDTH):
        return 0.0
    found = instrument.worked(SLOT_WIDTH)
    return 0.0 if isinstance(found, list) else float(found.values["slot_width"])


def _lines(board: BoardPlan, width: float, reach: float) -> Iterator[Stroke]:
    nut = board.across(0.0, board.margin_mm)
    end = board.across(board.end_share, board.margin_mm)
    yield cut((nut[0], end[0], end[1], nut[1]), "board")
    for fret in range(1, board.frets + 1):
        low, high = board.across(board.shares[fret], board.margin_mm)
        yield slot(low, high, width, f"fret {fret}")
    yield guide(board.bass(0.0), board.bass(reach), name="bass string")
    yield guide(board.treble(0.0), board.treble(reach), name="treble string")
    start = min(nut[0][0], nut[1][0])
    stop = max(x for x, _ in board.across(reach, board.margin_mm))
    yield guide((start - 4, 0.0), (stop + 4, 0.0), name="centre line")


def _saddle(board: BoardPlan, with_saddle: bool) -> Iterator[Stroke]:
    if with_saddle:
        yield mark(*board.across(1.0, board.margin_mm), name="saddle line")


def _numbers(board: BoardPlan) -> list[Label]:
    places = [board.across(share, board.margin_mm)[1] for share in board.shares[1:]]
    least = min((b[0] - a[0] for a, b in pairwise(places)), default=20.0)
    size = max(1.6, size_within("10", least - 0.4, NUMBER_MM))
    found = [
        Label(f"{fret}", (x, y + 1.6), size, anchor="middle")
        for fret, (x, y) in enumerate(places, 1)
    ]
    return list(_with_room(found, lambda one: len(one.text) * LETTER_SHARE * one.size_mm))


def _distances(board: BoardPlan, answer: Answer, fanned: bool) -> list[Label]:
    """How far each slot lies from the nut, written along it: with a fan, at either string's end."""
    if not fanned:
        return _upright(board, 0, [row["from_nut"] for row in answer.tables["slots"]])
    rows = answer.tables["fan"][1:]
    return [
        *_upright(board, 0, [row["bass_from_nut"] for row in rows]),
        *_upright(board, 1, [row["treble_from_nut"] for row in rows]),
    ]


def _upright(board: BoardPlan, end: int, distances: list[float]) -> list[Label]:
    places = [board.across(share, board.margin_mm)[end] for share in board.shares[1:]]
    least = min((b[0] - a[0] for a, b in pairwise(places)), default=20.0)
    size = min(DISTANCE_MM, max(1.2, least - 0.5))
    off = -1.4 if end == 0 else 6.4  # on the treble side the numbers stand between
    found = [
        Label(
            mm(distance), (x + 0.35 * size, y + off), size, 90,
            "end" if end == 0 else "start",
        )
        for (x, y), distance in zip(places, distances, strict=True)
    ]  # fmt: skip
    return list(_with_room(found, lambda one: one.size_mm))


def _with_room(labels: Iterable[Label], wide: Callable[[Label], float]) -> Iterator[Label]:
    """Those that do not run into the one before."""
    last = None
    for label in labels:
        if last is None or label.at[0] - last.at[0] > (wide(last) + wide(label)) / 2 + 0.3:
            yield label
            last = label


def _words(board: BoardPlan, with_saddle: bool) -> Iterator[Label]:
    bass, treble = board.across(0.0, board.margin_mm)
    room = board.margin_mm * 0.75
    size = min(WORD_MM, room)
    if size >= 1.2:
        yield Label("bass string", (bass[0] + 2, bass[1] + 0.3 * size), size)
        yield Label("treble string", (treble[0] + 2, treble[1] - size), size)
    yield Label("nut", (min(bass[0], treble[0]) - 1.5, 3.0), 3.0, 90)
    yield Label("centre line", (max(bass[0], treble[0]) + 2, 0.6), WORD_MM)
    if with_saddle:
        low, high = board.across(1.0, board.margin_mm)
        yield Label("saddle line", (min(low[0], high[0]) - 1.5, 3.0), WORD_MM, 90)


def _over_joint(board: BoardPlan, joint: int, fanned: bool) -> Label:
    x, y = board.across(board.shares[joint], board.margin_mm)[1]
    return Label("body joint", (x, y + (14.4 if fanned else 5.2)), WORD_MM, anchor="middle")


def _notes(answer: Answer, board: BoardPlan, width: float, with_saddle: bool) -> Iterator[str]:
    values = answer.values
    if values["layout"] == "fanned":
        square = values["square_fret"]
        yield (
            f"Scale {mm(values['bass_scale_length'])} mm at the bass string and "
            f"{mm(values['treble_scale_length'])} mm at the treble string; "
            f"{f'fret {square}' if square else 'the nut'} is square. Figures count along each string "
            "from its own end of the nut."
        )
    else:
        yield f"Scale {mm(values['scale_length'])} mm. Figures count from the nut end of the board."
    if values["divisions"] != SEMITONES:
        yield f"The octave has {values['divisions']} frets."
    yield (
        "Lines of slots are the middle of the saw cut"
        + (f", which is {mm(width)} mm wide." if width else "; its width is not known.")
    )
    yield (
        "The far end is drawn half a space past the last slot: leave it longer until its length is "
        "decided."
    )
    if not with_saddle:
        yield "The saddle line lies beyond this template; there is one for the bridge's place."


def _placed(strokes: list[Stroke], labels: list[Label], notes: list[str], fanned: bool) -> Template:
    """All of it moved so that it begins in the corner, with room for the words."""
    points: list[Point] = [point for one in strokes for point in one.points]
    below = 11.0
    above = 17.0 if fanned else 9.0
    left = LEFT_MM - min(x for x, _ in points) - 4
    up = below - min(y for _, y in points)
    return Template(
        NAME,
        TITLE,
        max(x for x, _ in points) + left + RIGHT_MM,
        max(y for _, y in points) + up + above,
        tuple(one.moved(left, up) for one in strokes),
        tuple(one.moved(left, up) for one in labels),
        tuple(notes),
    )
