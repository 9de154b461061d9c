"""What the side-bending calculator asks."""

from ..engine.declaration import Choice, Input, Number, Rows, When, Words

SIDE, BEND, SPRING = "The side", "The bend", "Springing back"
FOLDED = (SPRING,)
HOT = When(choice="state", is_one_of=("hot",))
DRY = When(choice="state", is_one_of=("dry",))
OFFCUT = When(choice="state", is_one_of=("offcut",))
HELD = When(choice="slat", is_one_of=("held",))
MEASURED = When(choice="spring_trial", is_one_of=("measured",))

WOODS = (
    ("mahogany", "Mahogany, true"), ("rosewood", "Rosewood, East Indian"),
    ("brazilian", "Rosewood, Brazilian"), ("maple", "Maple, hard"), ("red_maple", "Maple, red"),
    ("walnut", "Walnut, black"), ("sapele", "Sapele"), ("spanish_cedar", "Spanish cedar"),
)  # fmt: skip

COLUMNS = (
    Words(name="place", label="Place", longest=20),
    Number(name="radius", label="Inside radius", unit="mm", decimals=1, lowest=8, highest=2000,
           example=105),
    Number(name="thinned", label="Thinned there by", unit="mm", decimals=2, lowest=0, highest=3,
           example=0),
)  # fmt: skip

INPUTS: tuple[Input, ...] = (
    Number(
        name="side_thickness", label="Side thickness", symbol="t_s", unit="mm", decimals=2,
        lowest=0.5, highest=6, example=2.1, group=SIDE,
        help="As sanded for bending, before any place is thinned.",
    ),
    Rows(
        name="places", label="The curves", columns=COLUMNS, group=SIDE, at_most=10,
        example=(("waist", 105, 0), ("upper bout", 115, 0), ("lower bout", 170, 0),
                 ("cutaway", 45, 0.3)),
        help="One row a curve: the tightest arc of it, on its hollow face. From a template: chord "
        "c and height h give c²/(8h) + h/2.",
    ),
    Choice(
        name="state", label="How far the wood may stretch", group=BEND, example="hot",
        options=(("hot", "Wet and hot, over the iron"), ("dry", "Cold and dry, by the wood"),
                 ("offcut", "As an offcut of this board broke")),
    ),
    Number(
        name="stretch_hot", label="Stretch it takes wet and hot", symbol="ε_h", unit="%",
        decimals=2, lowest=0.2, highest=8, example=2, group=BEND, when=HOT,
        help="About 2 % at 100 °C and wet breaks it (one how-to page that names no source); 1 to "
        "2 % in the handbooks (from memory). Better is an offcut, bent till it breaks.",
    ),
    Choice(
        name="wood", label="Wood", group=BEND, example="mahogany", when=DRY, options=WOODS,
    ),
    Number(
        name="break_thickness", label="Thickness of the offcut", symbol="t_b", unit="mm",
        decimals=2, lowest=0.5, highest=6, example=2.1, group=BEND, when=OFFCUT,
    ),
    Number(
        name="break_radius", label="Inside radius at which it broke", symbol="R_b", unit="mm",
        decimals=1, lowest=5, highest=2000, example=42, group=BEND, when=OFFCUT,
        help="Same wetting, same iron. Lay templates into the bend just before it goes.",
    ),
    Number(
        name="break_share", label="Go at most to this share of it", symbol="s", unit="%",
        decimals=0, lowest=10, highest=100, example=80, group=BEND, when=OFFCUT,
        help="No two pieces of one board break alike.",
    ),
    Choice(
        name="slat", label="Slat behind the bend", group=BEND, example="none",
        options=(("none", "None, or drawn along by hand"),
                 ("held", "Tight from end to end: it holds the stretch")),
    ),
    Number(
        name="held_stretch", label="Stretch the slat lets through", symbol="ε_s", unit="%",
        decimals=2, lowest=0.1, highest=4, example=1.5, group=BEND, when=HELD,
        help="Mark two lines on the stretched face a hand apart, bend, and measure how far they "
        "move. A strap with end stops lets 1 to 2 % through (from memory).",
    ),
    Number(
        name="most_shrink", label="Shrinking the hollow face takes", symbol="ε_c", unit="%",
        decimals=1, lowest=0.5, highest=40, example=20, group=BEND, when=HELD,
        help="Wet and hot 25 to 30 % (from memory), thin sides wrinkle sooner; cold and dry "
        "about 5 %.",
    ),
    Choice(
        name="spring_trial", label="Trial bend", group=SPRING, example="measured",
        options=(("measured", "Measured on an offcut"), ("none", "Not yet")),
        help="Bend an offcut round a former as you will bend the side, let it go when cool and "
        "dry, and lay templates into it.",
    ),
    Number(
        name="trial_former", label="Radius of the trial's former", symbol="R_f", unit="mm",
        decimals=1, lowest=8, highest=2000, example=100, group=SPRING, when=MEASURED,
    ),
    Number(
        name="trial_rest", label="Inside radius the trial came to rest at", symbol="R_r",
        unit="mm", decimals=1, lowest=8, highest=4000, example=103, group=SPRING, when=MEASURED,
    ),
)  # fmt: skip
