"""What the arch-geometry calculator asks."""

from ..engine.declaration import Input, Number, Rows

BOX, OUTLINE, CUTTING = "Body", "Outline", "Cutting and neck"

inputs: tuple[Input, ...] = (
    Number(
        name="body_length", label="Body length", symbol="L", unit="mm", decimals=1, lowest=150,
        highest=650, example=505, group=BOX, help="Along the centre line, without the neck.",
    ),
    Number(
        name="depth_neck_block", label="Depth of the side at the neck block", symbol="d_n",
        unit="mm", decimals=1, lowest=30, highest=200, example=100, group=BOX,
        help="On the centre line, side only, without top and back.",
    ),
    Number(
        name="depth_end_block", label="Depth of the side at the end block", symbol="d_e",
        unit="mm", decimals=1, lowest=30, highest=200, example=120, group=BOX,
    ),
    Number(
        name="dish_radius", label="Radius of the dish, top", symbol="R_t", unit="mm", decimals=0,
        lowest=1500, highest=1_000_000, example=9000, group=BOX,
        help="For a flat plate give 1 000 000.",
    ),
    Number(
        name="back_dish_radius", label="Radius of the dish, back", symbol="R_b", unit="mm",
        decimals=0, lowest=1500, highest=1_000_000, example=4600, group=BOX,
    ),
    Rows(
        name="outline", label="Half outline, from the neck end to the tail", group=OUTLINE,
        at_least=3, at_most=24,
        help="Measured on the template. The two ends on the centre line come by themselves; give a "
        "place close to each end, and the widest and narrowest places.",
        columns=(
            Number(name="place", label="From the neck end", unit="mm", decimals=1, lowest=1,
                   highest=649, example=250),
            Number(name="half_width", label="Half width", unit="mm", decimals=1, lowest=5,
                   highest=300, example=140),
        ),
        example=(
            (8, 65), (25, 103.7), (60, 135.7), (106, 146), (150, 141.1), (200, 135),
            (250, 148.8), (310, 181.5), (376, 197.5), (430, 186.5), (472, 149.8), (497, 86.7),
        ),
    ),
    Number(
        name="edge_spare", label="Left on each edge for the dish", symbol="e", unit="mm",
        decimals=1, lowest=0, highest=20, example=1.5, group=CUTTING,
        help="What the sanding on the dished form takes down.",
    ),
    Number(
        name="bridge_from_neck", label="Saddle from the neck end of the body", symbol="x_s",
        unit="mm", decimals=1, lowest=50, highest=640, example=287.3, group=CUTTING,
        help="Scale length times 2^(-fret/12), the fret at the body joint.",
    ),
)  # fmt: skip
