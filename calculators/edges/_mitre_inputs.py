"""What the mitre calculation asks."""

from ..engine.declaration import Choice, Input, Number, When

CURVED = When(choice="joint", is_one_of=("round", "hollow"))
CORNER, LENGTHS, CUTTING = "The corner", "Lengths", "How true you cut"
FOLDED = (CUTTING,)

inputs: tuple[Input, ...] = (
    Choice(
        name="joint", label="What meets", example="straight", group=CORNER,
        options=(("straight", "Two straight lines"),
                 ("round", "A straight line and an arc that bulges outwards"),
                 ("hollow", "A straight line and an arc that curves inwards")),
        help="The straight line is line 1, the arc line 2. An arc that bulges outwards has its "
        "centre on the inner side of the corner.",
    ),
    Number(
        name="corner_angle", label="Corner between the lines", symbol="γ", unit="deg", decimals=1,
        lowest=20, highest=160, example=90, group=CORNER,
        help="On the inner side. With an arc: between the straight line and the arc's direction at "
        "the outer tip.",
    ),
    Number(
        name="width_1", label="Width of line 1", symbol="b_1", unit="mm", decimals=2, lowest=0.2,
        highest=30, example=1.5, group=CORNER,
        help="The whole bundle of lines, or the strip of shell, as it lies in the wood.",
    ),
    Number(
        name="width_2", label="Width of line 2", symbol="b_2", unit="mm", decimals=2, lowest=0.2,
        highest=30, example=2.1, group=CORNER,
    ),
    Number(
        name="arc_radius", label="Radius of the arc's outer edge", symbol="R", unit="mm",
        decimals=1, lowest=8, highest=5000, example=55, group=CORNER, when=CURVED,
        help="The edge that runs into the outer tip of the corner.",
    ),
    Number(
        name="length_1", label="Line 1, outer edge, tip to its other end", symbol="ℓ_1", unit="mm",
        decimals=1, lowest=5, highest=1000, example=110, group=LENGTHS,
    ),
    Number(
        name="length_2", label="Line 2, outer edge, tip to its other end", symbol="ℓ_2", unit="mm",
        decimals=1, lowest=5, highest=1000, example=40, group=LENGTHS,
        help="Along the curve, where it is an arc. Both other ends are taken as square.",
    ),
    Number(
        name="spare", label="Left on for the shooting block", symbol="s", unit="mm", decimals=1,
        lowest=0, highest=20, example=2, group=LENGTHS,
    ),
    Number(
        name="angle_error", label="Each cut is off by", symbol="ε", unit="deg", decimals=2,
        lowest=-5, highest=5, example=1, group=CUTTING,
        help="Plus where it is too blunt, minus where it is too sharp.",
    ),
    Number(
        name="gap_limit", label="Most gap that the card allows", symbol="g", unit="mm",
        decimals=2, lowest=0.01, highest=0.3, example=0.1, group=CUTTING,
        help="0.10 for plastic lines, 0.05 for shell.",
    ),
)  # fmt: skip
