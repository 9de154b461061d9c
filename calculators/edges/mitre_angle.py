"""Mitres of lines that differ in width, straight or curved: angles, lengths, gaps."""

from ..engine.declaration import Calculator, Caution, Drawing
from ._mitre_checks import CHECKS, DECISIONS, EXERCISES, SOURCES
from ._mitre_drawing import draw_corner
from ._mitre_inputs import FOLDED, inputs
from ._mitre_work import CONSTANTS, TABLES, work

calculator = Calculator(
    name="mitre-angle",
    title="Mitre angle",
    summary="At what angle to cut two lines of any widths so that they meet in a corner with every "
    "line running into its own, how long to cut the pieces, and how wide an error gapes.",
    other_words=(
        "miter", "mitre", "corner of the purfling", "lines do not meet", "end graft corner",
        "unequal widths", "bevel", "shooting block angle", "saw setting", "curved mitre",
        "shell corner",
    ),
    inputs=inputs,
    folded=FOLDED,
    constants=CONSTANTS,
    work=work,
    tables=TABLES,
    results=(
        "saw_1", "saw_2", "mitre_1", "mitre_2", "curve_words", "mitre_length", "tip_along",
        "blank_1", "blank_2", "gap_both", "gap_words", "error_most",
        "bow", "start_angle", "end_angle", "end_error", "inner_corner",
        "inner_1", "inner_2", "gap_1", "gap_2", "error_1", "error_2",
    ),
    aside=(
        "start_angle", "end_angle", "end_error", "inner_corner", "inner_1", "inner_2", "gap_1",
        "gap_2", "error_1", "error_2",
    ),
    drawings=(Drawing(name="corner", title="The corner, to scale", function=draw_corner),),
    cautions=(
        Caution(
            text="Fingers behind the blade, the line held down on its block, and slices as thin as "
            "a hair. Shell dust hurts the lungs for good: cut and shoot it wet, extraction on.",
        ),
        Caution(
            text="Try the corner in scrap of the same lines before you cut the last piece: set the "
            "angle by what closes there.",
        ),
        Caution(
            text="With both cuts {angle_error} off the joint gapes by {gap_both}, more than the "
            "card's {gap_limit}. Each may be off by {error_most} at most.",
            only_if="gap_both > gap_limit",
        ),
        Caution(
            text="One cut is sharper than 15° to its line: its point is as thin as a hair and "
            "breaks. Leave it backed by its bundle while you shoot it.",
            only_if="min(mitre_1, mitre_2) < 15",
        ),
    ),
    validity="Exact for lines of even width and straight cuts. Every line inside a bundle meets its "
    "own only where both bundles are divided alike. With an arc, the angle for line 2 counts "
    "from the arc's direction at the outer tip. Lines bent in their own plane are taken as long as "
    "their outer edge; kerf and shooting come out of what is left on.",
    sources=SOURCES,
    checks=CHECKS,
    exercises=EXERCISES,
    decisions=DECISIONS,
)  # fmt: skip
