"""How far wood moves with the air, and what that does to a braced plate or a fitted piece."""

from ..engine.declaration import Calculator, Caution, Constant, Drawing
from ..laws.equilibrium_moisture import SORPTION_CONSTANT
from ..laws.wood_shrinkage import FIBRE_SATURATION_PERCENT, TABLE_MIDDLE_PERCENT
from ._movement_drawings import draw_arch, draw_board, draw_course
from ._movement_inputs import BRACE, inputs
from ._movement_proof import CHECKS, DECISIONS, EXERCISES, SOURCES
from ._movement_work import BRACED, work


def _constant(name: str, label: str, unit: str, value: float, source: str) -> Constant:
    return Constant(name=name, label=label, unit=unit, decimals=0, value=value, source=source)


calculator = Calculator(
    name="wood-movement",
    title="Wood movement with humidity",
    summary="How far wood shrinks or swells across its grain from one air to another, and what it "
    "does then: a braced plate that sinks or goes hollow, a fitted piece that gapes or pinches.",
    other_words=(
        "shrinkage", "swelling", "top sinks in winter", "plate goes hollow", "dry winter crack",
        "top has risen", "back has gone flat", "wood movement", "fret ends stick out",
        "humidity and arch", "gap in the joint", "seasonal movement", "how much does wood shrink",
    ),
    inputs=inputs,
    folded=(BRACE,),
    constants=(
        SORPTION_CONSTANT,
        _constant("whole", "The whole, in per cent", "%", 100, "wood-handbook-movement"),
        _constant("one", "One per cent of moisture", "%", 1, "wood-handbook-movement"),
        _constant("fibre_saturation", "Fibre saturation: shrinking begins below", "%",
                  FIBRE_SATURATION_PERCENT, "wood-handbook-movement"),
        _constant("table_middle", "Moisture in the middle of the table's range", "%",
                  TABLE_MIDDLE_PERCENT, "wood-handbook-movement"),
        _constant("mpa_per_gpa", "Megapascals in a gigapascal", "MPa/GPa", 1000, "small-strain"),
    ),
    work=work,
    results=(
        "verdict", "flat_words", "tight_words", "movement", "crown_first", "crown_later",
        "crown_change", "joint_gap", "first_moisture", "later_moisture", "wood_words",
        "later_width", "strain", "shrinkage", "table_coefficient", "table_movement", "from_green",
        "brace_strain", "bending_length", "held_back", "plate_stress", "squeeze",
        "squeeze_pressure",
    ),
    aside=(
        "later_width", "strain", "shrinkage", "table_coefficient", "table_movement", "from_green",
        "brace_strain", "bending_length", "held_back", "plate_stress", "squeeze",
        "squeeze_pressure",
    ),
    drawings=(
        Drawing(name="arch", title="The braced plate, then and later", function=draw_arch,
                only_if=BRACED),
        Drawing(name="board", title="The end of the piece, then and later", function=draw_board,
                only_if="held != 'braced'"),
        Drawing(name="course", title="In other air", function=draw_course),
    ),
    cautions=(
        Caution(
            text="Means of a species and one steady air for weeks. A board may move a fifth more "
            "or less, and lacquer, glue and a closed box slow it down: a guide, not a limit.",
        ),
        Caution(
            text="The plate is taken as loose at its edges. Glued to its rim it can sink or rise "
            "less in the middle and pulls on rim and joints instead.",
            only_if="held == 'braced'",
        ),
        Caution(
            text="The plate is pulled across its grain by {plate_stress} if nothing gives. From "
            "memory, clear spruce tears at 2 to 3 MPa, sooner at a flaw. Do not leave it in this "
            "air; bring it back slowly.",
            only_if="held == 'braced' and plate_stress > 1.2",
        ),
        Caution(
            text="Squeezed by {squeeze}: beyond about 1 % (from memory) wood crushes across its "
            "grain, keeps that and is loose when it dries.",
            only_if="held == 'fitted' and joint_gap < 0 and squeeze > 1",
        ),
        Caution(
            text="Over that much the sum of small changes is rough: only the direction is sure.",
            only_if="held == 'braced' and abs(arch_later - arch_first) > 0.2",
        ),
    ),
    validity="Clear wood between ovendry and fibre saturation (30 %), which has come to rest in "
    "both airs. Rings are taken as straight over the width. The arch: a brace that keeps its "
    "length and a plate that wants to change, glued without slip, both elastic, one strip of plate "
    "to a brace, free at the rim; no strings. Wood under load gives way in weeks, so real arches "
    "move less, and do not quite come back. Below 6 and above 14 % the table's coefficients do "
    "not hold; eq. (13-3) is used throughout.",
    sources=SOURCES,
    checks=CHECKS,
    exercises=EXERCISES,
    decisions=DECISIONS,
)  # fmt: skip
