"""Gauges for a brace: its section as a hollow, and its carved height along its length."""

from calculators.engine.compute import Answer

from ..instruments import Instrument
from .answers import answer_of, example_notes, mm
from .pieces import Piece, lay_out
from .shapes import Label, Point, Template, cut, guide, mark

NAME, TITLE = "brace-profiles", "Profiles of the brace"
CALCULATOR = "brace-stiffness"
MATTERS = (
    "brace_shape", "brace_width", "brace_profile", "brace_height", "brace_height_after",
    "brace_rows",
)  # fmt: skip
CHEEK_MM, FLOOR_MM = 12.0, 13.0  # gauge beside and beyond the hollow
STEPS = 40  # points of half a rounded ridge
BELOW_MM = 15.0  # under the long gauge, for its figures
SAME_MM = 0.01  # heights that need no gauge of their own
WIDEST_MM = 180.0
SHAPES = {"rectangle": "rectangle", "triangle": "triangle", "parabola": "rounded ridge"}


def draw_brace_profiles(instrument: Instrument) -> Template:
    """Hollows for the section before and after shaving; carved, also the line of its ridge."""
    answer = answer_of(instrument, CALCULATOR)
    values = answer.values
    heights = [("now", values["section_now"]), ("after", values["section_after"])]
    if heights[0][1] - heights[1][1] < SAME_MM:
        heights = [("now", values["section_now"])]
    pieces = [_hollow(answer, when, height) for when, height in heights]
    notes = [
        "A hollow goes over the brace: it fits when its edge stands on the plate and no light shows.",
        *example_notes(instrument, {CALCULATOR: MATTERS}),
    ]
    if values["brace_profile"] == "carved":
        pieces.append(_ridge(answer))
        notes.insert(1, "The long one stands beside the brace, its straight edge on the plate.")
    return lay_out(NAME, TITLE, pieces, WIDEST_MM, notes)


def section_points(shape: str, width_mm: float, height_mm: float) -> list[Point]:
    """The section from foot to foot over the ridge, left to right, about its middle; mm.

    The shapes are those of ``laws.braced_plate``: the rounded ridge is a parabola on its chord.
    """
    half = width_mm / 2
    if shape == "rectangle":
        return [(-half, 0.0), (-half, height_mm), (half, height_mm), (half, 0.0)]
    if shape == "triangle":
        return [(-half, 0.0), (0.0, height_mm), (half, 0.0)]
    shares = [step / STEPS for step in range(-STEPS, STEPS + 1)]
    return [(half * share, height_mm * (1 - share**2)) for share in shares]


def _hollow(answer: Answer, when: str, height: float) -> Piece:
    shape, foot = answer.values["brace_shape"], answer.values["brace_width"]
    wide, tall = max(foot + 2 * CHEEK_MM, 40.0), height + FLOOR_MM
    section = section_points(shape, foot, height)
    hollow = [(wide / 2 + x, tall - y) for x, y in section]
    outline = [(0.0, 0.0), (wide, 0.0), (wide, tall), *reversed(hollow), (0.0, tall)]
    labels = (
        Label(f"section {when}", (wide / 2, 6.0), 3.0, anchor="middle"),
        Label(f"{mm(foot)} by {mm(height)} mm, {SHAPES[shape]}", (wide / 2, 2.0), 2.4,
              anchor="middle"),
    )  # fmt: skip
    middle = guide((wide / 2, 9.5), (wide / 2, FLOOR_MM), name=f"middle, {when}")
    return Piece(wide, tall, (cut(outline, f"section {when}"), middle), labels)


def _ridge(answer: Answer) -> Piece:
    """The carved brace from the side; the line it has now is marked over it."""
    rows = sorted(answer.values["brace_rows"], key=lambda row: float(row["place"]))
    long = max(answer.values["span"], float(rows[-1]["place"]))

    def line(column: str) -> list[Point]:
        points = [(float(row["place"]), float(row[column])) for row in rows]
        start = [(0.0, points[0][1])] if points[0][0] > 0 else []
        end = [(long, points[-1][1])] if points[-1][0] < long else []
        return [*start, *points, *end]

    after, now = line("height_after"), line("height_now")
    high = max(y for _, y in now)
    outline = [(0.0, BELOW_MM), (long, BELOW_MM)]
    outline += [(x, y + BELOW_MM) for x, y in reversed(after)]
    strokes = (
        cut(outline, "carved ridge"),
        mark(*((x, y + BELOW_MM) for x, y in now), name="ridge now"),
    )
    labels: list[Label] = []
    for row in rows:
        x = min(max(float(row["place"]), 2.0), long - 0.2)
        if not labels or x - labels[-1].at[0] > 3:
            words = f"{mm(row['place'], 0)}: {mm(row['height_after'], 1)}"
            labels.append(Label(words, (x, BELOW_MM - 1.0), 2.4, 90, "end"))
    return Piece(long, high + BELOW_MM, strokes, tuple(labels))
