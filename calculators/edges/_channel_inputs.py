"""What the channel calculation asks."""

from ..engine.declaration import Choice, Input, Number, Rows, Words

STRIPS, SET, PASSES = "Strips", "Cutters and collars", "Passes"
CARD, LEAN, WOOD = "Limits on the card", "Machine and side", "Wood at the edge"
FOLDED = (CARD, LEAN, WOOD)

inputs: tuple[Input, ...] = (
    Rows(
        name="strips", label="Strips, from the outside inwards", group=STRIPS, at_most=10,
        columns=(
            Words(name="strip", label="Strip", longest=24),
            Number(name="strip_thickness", label="Thickness", unit="mm", decimals=2, lowest=0.1,
                   highest=10, example=1.5),
            Number(name="strip_height", label="Height", unit="mm", decimals=2, lowest=0.5,
                   highest=25, example=6),
        ),
        example=(("Binding", 1.54, 6.0), ("Black line", 0.5, 1.3), ("White line", 0.5, 1.3),
                 ("Black line", 0.5, 1.3)),
        help="One row a strip, each at what the micrometer says today. Strips of one height share "
        "a ledge; the first height is the binding channel.",
    ),
    Number(
        name="proud_side", label="Binding to stand out from the side, cement dry", symbol="a",
        unit="mm", decimals=2, lowest=0, highest=1, example=0.06, group=STRIPS,
        help="What is scraped off the side face later.",
    ),
    Number(
        name="proud_top", label="Strips to stand above the plate, cement dry", symbol="b", unit="mm",
        decimals=2, lowest=0, highest=1, example=0.1, group=STRIPS,
        help="What is scraped down to the plate later.",
    ),
    Number(
        name="cement_film", label="Film of cement or glue behind each strip", symbol="f",
        unit="mm", decimals=3, lowest=0, highest=0.3, example=0.02, group=STRIPS,
        help="Common practice, no source. To measure it, cement three strips, let them dry, and "
        "take the sum of the strips from the pack.",
    ),
    Number(
        name="swelling", label="Strips swell, wet with cement or glue, by", symbol="w", unit="%",
        decimals=1, lowest=0, highest=10, example=0.6, group=STRIPS,
        help="Common practice, no source: plastic in its solvent less than a hundredth in an hour, "
        "wood in glue with water more. Micrometer before, and again as the tape goes on.",
    ),
    Rows(
        name="cutters", label="Cutters in the drawer", group=SET, at_most=12,
        columns=(
            Words(name="cutter", label="Mark", longest=14),
            Number(name="cutter_diameter", label="Diameter today", unit="mm", decimals=2, lowest=5,
                   highest=60, example=19.05),
        ),
        example=(("new", 19.05), ("reground", 18.97)),
        help="Measured, not as bought: each regrinding makes a cutter smaller.",
    ),
    Rows(
        name="collars", label="Collars in the drawer", group=SET, at_most=24,
        columns=(
            Words(name="collar", label="Engraved", longest=14),
            Number(name="collar_diameter", label="Diameter", unit="mm", decimals=2, lowest=3,
                   highest=60, example=16.05),
        ),
        example=(("16.65", 16.65), ("16.05", 16.05), ("16.00", 16.0), ("12.90", 12.9),
                 ("12.75", 12.75), ("11.20", 11.2)),
        help="Bearing collars that ride on the side.",
    ),
    Number(
        name="pass_depth", label="Most wood taken in height in one pass", symbol="p", unit="mm",
        decimals=1, lowest=0.3, highest=6, example=2, group=PASSES,
    ),
    Number(
        name="last_pass", label="Left for the last pass", symbol="ℓ", unit="mm", decimals=1,
        lowest=0, highest=2, example=0.3, group=PASSES,
    ),
    Number(
        name="depth_limit", label="Depth and ledge width may be off by", symbol="ε_d", unit="mm",
        decimals=2, lowest=0.01, highest=0.5, example=0.05, group=CARD,
    ),
    Number(
        name="height_limit", label="Height may be off by", symbol="ε_h", unit="mm", decimals=2,
        lowest=0.01, highest=1, example=0.1, group=CARD,
    ),
    Number(
        name="wall_limit", label="Wall may lean, over its height, by", symbol="ε_w", unit="mm",
        decimals=2, lowest=0.01, highest=0.25, example=0.05, group=CARD,
    ),
    Choice(
        name="machine", label="The machine", example="upright", group=LEAN,
        options=(("upright", "Carriage keeps it upright"),
                 ("foot", "Its foot lies flat on the plate")),
    ),
    Number(
        name="side_lean", label="Side out of square to the rim", symbol="σ", unit="deg",
        decimals=2, lowest=-5, highest=5, example=0.2, group=LEAN,
        help="Square and feelers: 0.05 mm of light in 15 mm is 0.2°. Plus where the box is wider "
        "below, minus where it is narrower.",
    ),
    Number(
        name="dish_radius", label="Radius of the plate's arch", symbol="R", unit="mm", decimals=0,
        lowest=1500, highest=50000, example=9000, group=LEAN,
    ),
    Number(
        name="plate_width", label="Plate width at this place", symbol="B", unit="mm", decimals=0,
        lowest=60, highest=600, example=395, group=LEAN,
        help="The arch is steepest where the plate is widest: the lower bout.",
    ),
    Number(
        name="foot_inside", label="Foot stands inside the edge by", symbol="x", unit="mm",
        decimals=1, lowest=0, highest=60, example=4, group=LEAN,
        help="From the side to where the foot touches the plate.",
    ),
    Number(
        name="collar_gap", label="Cutter's lower edge to the collar", symbol="g", unit="mm",
        decimals=1, lowest=0, highest=30, example=0.5, group=LEAN,
    ),
    Number(
        name="collar_height", label="Height of the collar", symbol="c", unit="mm", decimals=1,
        lowest=1, highest=30, example=6, group=LEAN,
    ),
    Number(
        name="side_thickness", label="Side thickness", symbol="s", unit="mm", decimals=2,
        lowest=0.8, highest=6, example=2.1, group=WOOD,
    ),
    Number(
        name="plate_thickness", label="Plate thickness at its edge", symbol="t", unit="mm",
        decimals=2, lowest=1, highest=10, example=2.8, group=WOOD,
    ),
)  # fmt: skip
