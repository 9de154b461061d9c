"""A jig from the body joint to the middle of the saddle's slot, at both outer strings."""

from calculators.engine.compute import Answer

from ..instruments import Instrument
from .answers import CannotMake, answer_of, example_notes, mm, taken_from
from .board_plan import board_plan
from .shapes import Label, Point, Stroke, Template, cut, guide, mark, size_within

NAME, TITLE = "bridge-place", "Place of the bridge"
CALCULATOR, SET_BACK = "fret-spacing", "saddle-compensation"
MATTERS = (
    "scale_length", "bass_scale_length", "treble_scale_length", "square_fret", "frets",
    "body_joint_fret", "string_spread_nut", "string_spread_bridge",
)  # fmt: skip
SLOT = ("setback_bass", "setback_treble")
SIDE_MM = 12.0  # jig outside the outer strings
SHORTEST_MM = 40.0
PAST_MM, ROOM_MM = 6.0, 9.0  # centre line past the jig, and free paper round it

Line = tuple[Point, Point]  # bass end first


def draw_bridge_place(instrument: Instrument) -> Template:
    """The near end is the slot at the body joint, the far end the middle of the saddle's slot."""
    answer = answer_of(instrument, CALCULATOR)
    board = board_plan(answer)
    fanned = answer.values["layout"] == "fanned"
    # The set-back is reckoned for one scale length; a fan has two.
    found = None if fanned else taken_from(instrument, SET_BACK)
    fret = answer.values["body_joint_fret"]
    share = board.shares[fret] if fret <= board.frets else board.share_of(fret)
    joint, scale = board.across(share), board.across(1.0)
    saddle = _set_back(scale, found)
    if min(saddle[end][0] - joint[end][0] for end in (0, 1)) < SHORTEST_MM:
        raise CannotMake(
            f"Fret {fret} of {instrument.title} lies within {SHORTEST_MM:g} mm of the saddle line; "
            "look over the fret at the body joint."
        )
    half = board.half_nut_mm + max(board.flare_mm, 0.0) + SIDE_MM
    last = board.across(board.shares[-1]) if fret < board.frets else None
    strokes = _strokes(joint, scale, saddle, last, half)
    labels = _labels((fret, board.frets), joint, saddle, last)
    x = _middle(joint) + 3
    labels += [
        Label("bass side", (x, 2 - half), 3.0),
        Label("treble side", (x, half - 4.5), 3.0),
    ]
    notes = [
        f"The near end is the middle of the slot of fret {fret}, the far end the middle of the "
        "saddle's slot: draw along it.",
        _set_back_words(found, fanned),
        "Where the pins go is not known here.",
        *example_notes(instrument, {CALCULATOR: MATTERS, **({SET_BACK: SLOT} if found else {})}),
    ]
    return _placed(strokes, labels, notes)


def _set_back(scale: Line, found: Answer | None) -> Line:
    """The middle of the saddle's slot.

    The set-back is laid off along the centre line: an outer string leaves it by so little that the
    difference is some thousandths of a millimetre.
    """
    if found is None:
        return scale
    (bass_x, bass_y), (treble_x, treble_y) = scale
    return (
        (bass_x + found.values["setback_bass"], bass_y),
        (treble_x + found.values["setback_treble"], treble_y),
    )


def _set_back_words(found: Answer | None, fanned: bool) -> str:
    if found:
        return (
            f"The slot lies {mm(found.values['setback_bass'])} mm behind the scale at the bass string "
            f"and {mm(found.values['setback_treble'])} mm at the treble string."
        )
    if fanned:
        return "No set-back: it is not reckoned for a fan. Add it at both strings."
    return "No set-back: none is reckoned for this instrument. Add what its card says."


def carried(line: Line, half_mm: float) -> Line:
    """A line carried on at its slant to both long edges, which run beside the centre line."""
    (x, y), (to_x, to_y) = line
    slant = (to_x - x) / (to_y - y)
    return (x + (-half_mm - y) * slant, -half_mm), (x + (half_mm - y) * slant, half_mm)


def _strokes(
    joint: Line, scale: Line, saddle: Line, last: Line | None, half: float
) -> list[Stroke]:
    near, far = carried(joint, half), carried(saddle, half)
    strokes = [
        cut((near[0], far[0], far[1], near[1]), "jig"),
        guide(joint[0], saddle[0], name="bass string"),
        guide(joint[1], saddle[1], name="treble string"),
        guide(
            (_middle(joint) - PAST_MM, 0.0), (_middle(saddle) + PAST_MM, 0.0), name="centre line"
        ),
    ]
    if scale != saddle:
        strokes.append(guide(*carried(scale, half), name="scale line"))
    if last:
        strokes.append(mark(*carried(last, half), name="last fret"))
    return strokes


def _middle(line: Line) -> float:
    """Where a line crosses the centre line."""
    return (line[0][0] + line[1][0]) / 2


def _labels(frets: tuple[int, int], joint: Line, saddle: Line, last: Line | None) -> list[Label]:
    found = []
    for end, side in ((0, "bass"), (1, "treble")):
        x, (to_x, to_y) = joint[end][0], saddle[end]
        words = f"{side} string: {mm(to_x - x)} mm along the centre line"
        size = size_within(words, to_x - x - 14, 3.0)
        found.append(Label(words, (to_x - 10, to_y + (1.2 if end else -3.6)), size, anchor="end"))
    lines = [(f"fret {frets[0]}", _middle(joint) + 6), ("saddle", _middle(saddle) - 10)]
    if last and _middle(last) - _middle(joint) > 12 and _middle(saddle) - _middle(last) > 20:
        lines.append((f"fret {frets[1]}", _middle(last) - 2))
    room = min(joint[1][1], saddle[1][1]) - 3
    found += [Label(text, (x, 2.0), size_within(text, room, 3.0), 90) for text, x in lines]
    return found


def _placed(strokes: list[Stroke], labels: list[Label], notes: list[str]) -> Template:
    points = [point for one in strokes for point in one.points]
    left = ROOM_MM - min(x for x, _ in points)
    up = ROOM_MM - min(y for _, y in points)
    return Template(
        NAME,
        TITLE,
        max(x for x, _ in points) + left + ROOM_MM,
        max(y for _, y in points) + up + ROOM_MM,
        tuple(one.moved(left, up) for one in strokes),
        tuple(one.moved(left, up) for one in labels),
        tuple(notes),
    )
