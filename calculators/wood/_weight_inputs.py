"""What the board-weight calculator asks."""

from ..engine.declaration import Choice, Input, Number, When
from ..laws.wood_gravity import NAMES

WOOD, PIECE, THINNING, SPREAD = "The wood", "The piece", "Thinning", "Spread of the species"
TABLE = When(choice="gravity_from", is_one_of=("table",))
WEIGHED = When(choice="gravity_from", is_one_of=("weighed",))
GREEN = When(choice="gravity_from", is_one_of=("green",))
AT_TWELVE = When(choice="gravity_from", is_one_of=("twelve",))
BOARD = When(choice="shape", is_one_of=("board",))
OUTLINE = When(choice="shape", is_one_of=("outline",))
TEMPLATE = When(choice="shape", is_one_of=("template",))

inputs: tuple[Input, ...] = (
    Choice(
        name="gravity_from", label="How heavy the wood is, from", example="table", group=WOOD,
        options=(
            ("table", "The table of woods"),
            ("green", "A specific gravity over green volume (basic)"),
            ("twelve", "A specific gravity over volume at 12 %"),
            ("weighed", "This piece on the scale"),
        ),
        help="Green and 12 % are not the same: at 12 % the wood has shrunk and its gravity is 5 to "
        "10 % higher. In neither is the water's weight counted. Ebony is not in the table: weigh "
        "it.",
    ),
    Choice(
        name="species", label="Wood", options=NAMES, example="engelmann", group=WOOD, when=TABLE,
    ),
    Number(
        name="basic_gravity", label="Basic specific gravity of the wood", symbol="G_b", unit="1",
        decimals=3, lowest=0.1, highest=1.2, example=0.45, group=WOOD, when=GREEN,
    ),
    Number(
        name="gravity_12", label="Specific gravity at 12 %", symbol="G_12", unit="1", decimals=3,
        lowest=0.1, highest=1.4, example=0.48, group=WOOD, when=AT_TWELVE,
    ),
    Number(
        name="board_mass", label="One piece weighs", symbol="m_1", unit="g", decimals=1,
        lowest=0.1, highest=100000, example=196, group=WOOD, when=WEIGHED,
    ),
    Number(
        name="wood_moisture", label="Moisture content of the wood", symbol="x", unit="%",
        decimals=1, lowest=0, highest=200, example=8.5, group=WOOD,
        help="Per cent of its ovendry weight.",
    ),
    Choice(
        name="shape", label="Its shape", example="board", group=PIECE,
        options=(
            ("board", "A board, square"), ("outline", "An outline whose area is known"),
            ("template", "An outline, by a weighed card template"),
        ),
    ),
    Number(
        name="piece_length", label="Length", symbol="l", unit="mm", decimals=1, lowest=1,
        highest=6000, example=550, group=PIECE, when=BOARD,
    ),
    Number(
        name="piece_width", label="Width", symbol="b", unit="mm", decimals=1, lowest=1,
        highest=2000, example=205, group=PIECE, when=BOARD,
    ),
    Number(
        name="plate_area", label="Area of the outline", symbol="A_o", unit="cm2", decimals=0,
        lowest=1, highest=20000, example=1490, group=PIECE, when=OUTLINE,
    ),
    Number(
        name="template_mass", label="The card template weighs", symbol="m_t", unit="g",
        decimals=1, lowest=0.1, highest=2000, example=46.2, group=PIECE, when=TEMPLATE,
        help="Cut to the outline from card of one thickness.",
    ),
    Number(
        name="square_mass", label="A 100 mm square of that card weighs", symbol="m_q", unit="g",
        decimals=2, lowest=0.05, highest=100, example=3.1, group=PIECE, when=TEMPLATE,
        help="Weigh ten of them and divide by ten.",
    ),
    Number(
        name="piece_thickness", label="Thickness now", symbol="t", unit="mm", decimals=2,
        lowest=0.2, highest=300, example=4.5, group=PIECE,
    ),
    Number(
        name="pieces", label="Pieces", symbol="N", unit="1", decimals=0, whole=True, lowest=1,
        highest=1000, example=2, group=PIECE,
    ),
    Number(
        name="thickness_after", label="Thickness when thinned", symbol="t_2", unit="mm",
        decimals=2, lowest=0.1, highest=300, example=2.8, group=THINNING,
        help="As now, if nothing is to come off.",
    ),
    Number(
        name="gravity_spread", label="Boards differ from the mean by", symbol="v", unit="%",
        decimals=0, lowest=0, highest=40, example=10, group=SPREAD, when=TABLE,
        help="From memory, the Wood Handbook gives 10 % as the spread of one wood (coefficient of "
        "variation): two boards of three lie within it.",
    ),
)  # fmt: skip
