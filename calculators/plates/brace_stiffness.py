"""How stiff a brace is with the plate under it, and what shaving it takes away."""

from ..engine.declaration import Calculator, Caution, Drawing
from ..sources import COMMON_PRACTICE
from ._brace_drawings import draw_carving, draw_curve, draw_section
from ._brace_inputs import KNIVES, inputs
from ._brace_proof import CHECKS, DECISIONS, EXERCISES, SOURCES
from ._brace_work import CARVED, CONSTANTS, WORK

calculator = Calculator(
    name="brace-stiffness",
    title="Brace stiffness",
    summary="How stiff a brace is together with the plate it is glued to, how much a shaving takes "
    "off, and what the knives should read before and after.",
    other_words=(
        "how much to shave", "brace height", "scalloped bracing", "stiffness of a brace", "EI",
        "top too stiff", "voicing", "carving braces", "cube law", "triangular brace",
        "brace section", "moment of inertia",
    ),
    inputs=inputs,
    folded=(KNIVES,),
    constants=CONSTANTS,
    work=WORK,
    results=(
        "answer", "stiffness_now", "stiffness_after", "share_left", "height_tenth", "plate_tenth",
        "deflection_now", "deflection_after", "knife_share", "brace_alone_now", "brace_alone_after",
        "brace_share_left", "plate_alone", "times_plate", "equal_now", "equal_after",
        "bare_tenth", "axis_now", "brace_gpa", "plate_gpa",
    ),
    aside=(
        "knife_share", "brace_alone_now", "brace_alone_after", "brace_share_left", "plate_alone", "times_plate",
        "equal_now", "equal_after", "bare_tenth", "axis_now", "brace_gpa", "plate_gpa",
    ),
    drawings=(
        Drawing(name="section", title="Brace and plate across, to scale", function=draw_section),
        Drawing(name="carving", title="The carved brace from the side, heights enlarged",
                function=draw_carving, only_if=CARVED),
        Drawing(name="curve", title="Stiffness by height", function=draw_curve),
    ),
    cautions=(
        Caution(
            text="One stick is not the mean of its species: a fifth more or less is common. Shares "
            "and per cents hold for any stick; for newtons and millimetres believe the knives.",
        ),
        Caution(
            text="Wood that is gone does not come back. Carve in single shavings and put the plate "
            "on the knives in between.",
        ),
        Caution(
            text="The chisel goes away from both hands, the plate lies firm on the bench.",
        ),
        Caution(
            text="At {section_now} on a foot of {brace_width} this brace is tall and thin: it may "
            "lean over before it bends, which is not in these figures.",
            only_if="section_now > 3 * brace_width",
        ),
        Caution(
            text="Span and height are close: shear adds to the give on the knives, more than "
            "some tenth of it, and is not in these figures.",
            only_if="span < 14 * section_now",
        ),
    ),
    validity="Small bends of straight, clear wood, glued without give. The plate is taken as "
    "quartersawn and as one narrow strip that bends in one direction only; a real plate is also "
    "held from the sides, so it is stiffer than its strips. Shear is left out: some 3 % where the "
    "span is 27 heights. The cap over a crossing and the notch under it are not counted. Moduli "
    "are means at 12 % moisture; at 8 % spruce is some 7 % stiffer (Wood Handbook Eq. 5-3).",
    sources=(*SOURCES, COMMON_PRACTICE),
    checks=CHECKS,
    exercises=EXERCISES,
    decisions=DECISIONS,
)  # fmt: skip
