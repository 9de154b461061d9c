"""What the neck-profile calculation asks."""

from ..engine.declaration import Choice, Input, Number, When

D_SHAPE = When(choice="contour", is_one_of=("d",))
SHAFT, BOARD = "The shaft", "The board"
STRINGS, FINISH, PLACES = "Strings", "Sanding and finish", "Places and rod"
FOLDED = (STRINGS, FINISH, PLACES)

# fmt: off
INPUTS: tuple[Input, ...] = (
    Number(
        name="thickness_first", label="Neck with board at the first fret", symbol="t_1", unit="mm",
        decimals=1, lowest=10, highest=40, example=21, group=SHAFT,
    ),
    Number(
        name="thickness_second", label="Neck with board at the second place", symbol="t_2",
        unit="mm", decimals=1, lowest=10, highest=50, example=22.5, group=SHAFT,
    ),
    Number(
        name="second_fret", label="That second place is at fret", symbol="n_2", unit="1",
        decimals=0, whole=True, lowest=4, highest=14, example=9, group=SHAFT,
        help="The last place before the cove begins.",
    ),
    Choice(
        name="contour", label="Back of the shaft", example="superellipse", group=SHAFT,
        options=(("superellipse", "One curve from edge to edge"),
                 ("d", "Flat in the middle, rounded shoulders")),
    ),
    Number(
        name="fullness", label="Fullness of the shoulders", symbol="n", unit="1", decimals=2,
        lowest=1.4, highest=5, example=2.3, group=SHAFT,
        help="2 is half an ellipse. Less leans to a V, more is fuller in the shoulders. The "
        "exponent of a superellipse.",
    ),
    Number(
        name="flat_share", label="Flat part of the width", symbol="q", unit="%", decimals=0,
        lowest=5, highest=80, example=30, group=SHAFT, when=D_SHAPE,
    ),
    Number(
        name="template_fret", label="Template for fret", symbol="n_t", unit="1", decimals=0,
        whole=True, lowest=1, highest=14, example=5, group=SHAFT,
    ),
    Number(
        name="scale_length", label="Scale length", symbol="S", unit="mm", decimals=2,
        lowest=250, highest=1200, example=645, group=BOARD,
    ),
    Number(
        name="neck_width_nut", label="Width at the nut", symbol="b_0", unit="mm", decimals=1,
        lowest=25, highest=80, example=43.5, group=BOARD,
    ),
    Number(
        name="board_end_width", label="Width of the board at its last fret", symbol="b_e",
        unit="mm", decimals=1, lowest=28, highest=100, example=55.5, group=BOARD,
    ),
    Number(
        name="board_joint", label="Board thickness in its middle", symbol="B", unit="mm",
        decimals=2, lowest=2, highest=12, example=6.4, group=BOARD,
    ),
    Number(
        name="fret_radius", label="Radius of the board", symbol="R", unit="mm", decimals=1,
        lowest=0, highest=3000, example=400, group=BOARD, help="0 for a flat board.",
    ),
    Number(
        name="string_spread_nut", label="Outer strings apart at the nut", symbol="w_0", unit="mm",
        decimals=2, lowest=10, highest=100, example=36.5, group=STRINGS,
        help="Centre of the bass string to centre of the treble string.",
    ),
    Number(
        name="string_spread_bridge", label="Outer strings apart at the saddle", symbol="w_s",
        unit="mm", decimals=2, lowest=10, highest=150, example=54, group=STRINGS,
    ),
    Choice(
        name="thickness_is", label="The thicknesses above are", example="bare", group=FINISH,
        options=(("bare", "Bare wood, sanded"), ("finished", "Under the hand, with lacquer")),
    ),
    Number(
        name="shaft_sanding", label="Sanding takes off the shaft", symbol="s", unit="mm",
        decimals=2, lowest=0, highest=1, example=0.2, group=FINISH,
        help="After the last file stroke. Measure a shaft before and after: common practice, no "
        "source.",
    ),
    Number(
        name="film_thickness", label="Lacquer on the shaft, polished", symbol="f", unit="um",
        decimals=0, lowest=0, highest=600, example=150, group=FINISH,
        help="On the back alone: the board is not lacquered.",
    ),
    Number(
        name="last_fret", label="Last fret", symbol="n_e", unit="1", decimals=0, whole=True,
        lowest=12, highest=36, example=20, group=PLACES,
    ),
    Number(
        name="body_joint_fret", label="Body joint at fret", symbol="j", unit="1", decimals=0,
        whole=True, lowest=8, highest=24, example=14, group=PLACES,
    ),
    Number(
        name="cove_fret", label="Straight shaft ends at fret", symbol="n_c", unit="1", decimals=0,
        whole=True, lowest=4, highest=20, example=10, group=PLACES,
        help="Behind it the cove begins.",
    ),
    Number(
        name="rod_depth", label="Depth of the rod's channel under the board", symbol="c",
        unit="mm", decimals=1, lowest=0, highest=20, example=9.5, group=PLACES,
        help="From the glue face. 0 for no rod.",
    ),
    Number(
        name="rod_width", label="Width of the rod's channel", symbol="v", unit="mm", decimals=1,
        lowest=2, highest=15, example=6, group=PLACES,
    ),
)
# fmt: on
