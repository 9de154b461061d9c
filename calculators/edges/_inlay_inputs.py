"""What the inlay calculation asks."""

from ..engine.declaration import Choice, Input, Number, When

FIGURE = When(choice="work", is_one_of=("figure",))
STRIP = When(choice="work", is_one_of=("strip",))
ENDS = When(choice="board_shape", is_one_of=("ends",))
PIECE, BOARD, LEVEL = "The piece", "The board", "Levelling"
EDGE, POCKET, BLANK = "The channel", "Pocket and glue", "Blank and saw"
FOLDED = (POCKET, BLANK)

inputs: tuple[Input, ...] = (
    Choice(
        name="work", label="What is let in", example="figure", group=PIECE,
        options=(("figure", "A piece in a board or veneer"),
                 ("strip", "Strips in a channel round an edge")),
    ),
    Number(
        name="shell_thickness", label="Thickness of the blank", symbol="t", unit="mm", decimals=2,
        lowest=0.3, highest=6, example=1.3, group=PIECE,
        help="Micrometer with round faces, at the thinnest place.",
    ),
    Number(
        name="piece_width", label="Piece, across the board", symbol="w", unit="mm", decimals=1,
        lowest=2, highest=80, example=28, group=PIECE, when=FIGURE,
    ),
    Number(
        name="piece_length", label="Piece, along the board", symbol="ℓ", unit="mm", decimals=1,
        lowest=2, highest=120, example=14, group=PIECE, when=FIGURE,
    ),
    Number(
        name="piece_offset", label="Its middle off the centre line by", symbol="y", unit="mm",
        decimals=1, lowest=0, highest=40, example=0, group=PIECE, when=FIGURE,
    ),
    Number(
        name="strip_width", label="Width of the strip", symbol="b", unit="mm", decimals=2,
        lowest=0.5, highest=10, example=1.3, group=PIECE, when=STRIP,
    ),
    Number(
        name="strip_piece", label="Length of one piece of strip", symbol="ℓ", unit="mm",
        decimals=1, lowest=3, highest=120, example=18, group=PIECE, when=STRIP,
        help="As sawn, before it is pressed into the curve.",
    ),
    Number(
        name="fret_radius", label="Radius of the board", symbol="R", unit="mm", decimals=1,
        lowest=0, highest=3000, example=400, group=BOARD, when=FIGURE,
        help="0 for a flat board or a head veneer. Where it grows along the board: at the nut.",
    ),
    Choice(
        name="board_shape", label="Along the board", example="one", group=BOARD, when=FIGURE,
        options=(("one", "One radius"), ("ends", "Radius grows from nut to last fret")),
    ),
    Number(
        name="radius_end", label="Radius at the last fret", symbol="R_e", unit="mm", decimals=1,
        lowest=100, highest=5000, example=500, group=BOARD, when=ENDS,
    ),
    Number(
        name="scale_length", label="Scale length", symbol="S", unit="mm", decimals=2,
        lowest=250, highest=1200, example=645, group=BOARD, when=ENDS,
    ),
    Number(
        name="frets", label="Number of frets", symbol="N", unit="1", decimals=0, whole=True,
        lowest=5, highest=36, example=20, group=BOARD, when=ENDS,
    ),
    Number(
        name="inlay_fret", label="The piece lies before fret", symbol="n", unit="1", decimals=0,
        whole=True, lowest=1, highest=36, example=5, group=BOARD, when=ENDS,
        help="In the middle between this fret and the one before it.",
    ),
    Number(
        name="curve_radius", label="Tightest curve, at the channel's outer wall", symbol="R_w",
        unit="mm", decimals=1, lowest=10, highest=10000, example=120, group=EDGE, when=STRIP,
        help="The wall farther from the curve's centre.",
    ),
    Number(
        name="strip_clearance", label="Channel wider than the strip by", symbol="c", unit="mm",
        decimals=3, lowest=0.01, highest=0.5, example=0.05, group=EDGE, when=STRIP,
        help="0.05 leaves room for thin glue.",
    ),
    Number(
        name="shell_proud", label="Shell to stand above the wood, glued", symbol="p", unit="mm",
        decimals=2, lowest=0, highest=0.5, example=0.1, group=LEVEL,
    ),
    Number(
        name="levelled", label="Wood that levelling takes off the middle", symbol="a", unit="mm",
        decimals=2, lowest=0, highest=1, example=0.1, group=LEVEL,
        help="Trueing and all sanding, where it takes least. The fall of the round is reckoned "
        "beside it.",
    ),
    Number(
        name="least_left", label="Least shell to be left at its edges", symbol="t_k", unit="mm",
        decimals=2, lowest=0.1, highest=3, example=0.7, group=LEVEL,
        help="Common practice, no source. Thin shell looks dull and chips at the edge.",
    ),
    Number(
        name="glue_film", label="Glue under the piece", symbol="f", unit="mm", decimals=2,
        lowest=0, highest=0.5, example=0.05, group=POCKET,
    ),
    Choice(
        name="pocket_floor", label="Floor of the pocket", example="level", group=POCKET,
        when=FIGURE,
        options=(("level", "Level: cut while the board is flat"),
                 ("tilted", "Square to the round, cut in the rounded board")),
    ),
    Number(
        name="board_joint", label="Board thickness in its middle", symbol="B", unit="mm",
        decimals=2, lowest=0.5, highest=12, example=6.4, group=POCKET, when=FIGURE,
        help="Or of the veneer.",
    ),
    Number(
        name="blank_hollow", label="Hollow of the blank over its length", symbol="h", unit="mm",
        decimals=2, lowest=0, highest=3, example=0, group=BLANK,
        help="Shell is grown curved. Lay it hollow side down on glass, feelers in the middle.",
    ),
    Number(
        name="blank_length", label="Blank, length", symbol="ℓ_b", unit="mm", decimals=1,
        lowest=5, highest=250, example=60, group=BLANK,
    ),
    Number(
        name="blank_width", label="Blank, width", symbol="w_b", unit="mm", decimals=1, lowest=3,
        highest=150, example=35, group=BLANK,
    ),
    Number(
        name="saw_kerf", label="Kerf of the saw", symbol="k", unit="mm", decimals=2, lowest=0.1,
        highest=2, example=0.3, group=BLANK,
    ),
    Number(
        name="saw_allowance", label="Left outside the line for the file, each side", symbol="q",
        unit="mm", decimals=2, lowest=0, highest=1, example=0.15, group=BLANK,
    ),
)  # fmt: skip
