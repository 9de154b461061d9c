"""What the top-deflection calculator asks."""

from ..engine.declaration import Choice, Input, Number, When
from ._plates_shared import BRACE_WOODS, OWN, SHAPES, STRENGTHS

OWN_BRACE = When(choice="brace_wood", is_one_of=("own",))
OWN_PLATE = When(choice="plate_wood", is_one_of=("own",))
PULL, TOP, BRACES = "Strings and bridge", "Top", "Braces under the bridge"
TAKEN, TIME = "Wood and edges", "Spread, time and your marks"

inputs: tuple[Input, ...] = (
    Number(
        name="string_tension", label="Pull of all strings together", symbol="T", unit="N",
        decimals=0, lowest=20, highest=1500, example=720, group=PULL,
    ),
    Number(
        name="bridge_thickness", label="Bridge thickness", symbol="B", unit="mm", decimals=2,
        lowest=3, highest=20, example=9.5, group=PULL,
        help="On the centre line, at the saddle.",
    ),
    Number(
        name="saddle_height", label="Saddle above the bridge", symbol="w", unit="mm", decimals=2,
        lowest=0.5, highest=12, example=3.5, group=PULL,
    ),
    Number(
        name="top_thickness", label="Top thickness", symbol="t", unit="mm", decimals=2, lowest=1,
        highest=6, example=2.8, group=TOP,
    ),
    Number(
        name="span", label="From the upper brace to the end block", symbol="L", unit="mm",
        decimals=0, lowest=100, highest=700, example=390, group=TOP,
        help="Along the centre line, between the two places where the top is held down and up.",
    ),
    Number(
        name="bridge_place", label="From the upper brace to the saddle", symbol="a", unit="mm",
        decimals=0, lowest=30, highest=670, example=180, group=TOP,
    ),
    Number(
        name="brace_count", label="Braces that run under the bridge", symbol="n", unit="1",
        decimals=0, whole=True, lowest=1, highest=10, example=2, group=BRACES,
        help="The two legs of an X count as two; a fan, its bars.",
    ),
    Number(
        name="brace_width", label="Width at the plate, each", symbol="b", unit="mm", decimals=1,
        lowest=2, highest=30, example=8, group=BRACES,
    ),
    Number(
        name="brace_height", label="Height over the plate, at the bridge", symbol="h", unit="mm",
        decimals=1, lowest=2, highest=40, example=12, group=BRACES,
    ),
    Number(
        name="brace_angle", label="Between brace and centre line", symbol="φ", unit="deg",
        decimals=0, lowest=0, highest=75, example=45, group=BRACES,
        help="0: along the strings, as in a fan.",
    ),
    Choice(
        name="brace_shape", label="Section of the braces", options=SHAPES, example="parabola",
        group=TAKEN,
    ),
    Number(
        name="top_width", label="Width of top that bends with the bridge", symbol="W", unit="mm",
        decimals=0, lowest=60, highest=500, example=340, group=TAKEN,
        help="Common practice: the lower bout at the bridge, less the linings.",
    ),
    Number(
        name="held_times", label="Arched and held all round: stiffer than its strip, times",
        symbol="m", unit="1", decimals=1, lowest=1, highest=8, example=3, group=TAKEN,
        help="Common practice, no source. Set it so that the rise of your last instrument of this "
        "model comes out; 1 is the bare strip.",
    ),
    Number(
        name="strip_width", label="Strip of plate that goes with each brace", symbol="w_s",
        unit="mm", decimals=0, lowest=5, highest=200, example=60, group=TAKEN,
    ),
    Choice(
        name="ends", label="The top at its two ends", example="hinged", group=TAKEN,
        options=(("hinged", "Hinged: free to turn, the soft case"),
                 ("clamped", "Clamped: cannot turn, the stiff case")),
        help="A glued rim lies between the two. Try both.",
    ),
    Choice(
        name="plate_wood", label="Wood of the top", options=(*STRENGTHS[:4], OWN),
        example="sitka", group=TAKEN,
    ),
    Number(
        name="plate_modulus_along", label="Modulus of the top, along", symbol="E_L", unit="GPa",
        decimals=1, lowest=2, highest=30, example=10.8, group=TAKEN, when=OWN_PLATE,
    ),
    Number(
        name="plate_modulus_across", label="Modulus of the top, across", symbol="E_R",
        unit="GPa", decimals=2, lowest=0.1, highest=10, example=0.84, group=TAKEN, when=OWN_PLATE,
    ),
    Number(
        name="plate_strength", label="Bending strength of the top", symbol="f_p", unit="MPa",
        decimals=0, lowest=10, highest=200, example=70, group=TAKEN, when=OWN_PLATE,
    ),
    Choice(
        name="brace_wood", label="Wood of the braces", options=BRACE_WOODS, example="sitka",
        group=TAKEN,
    ),
    Number(
        name="brace_modulus", label="Modulus of the braces", symbol="E_b", unit="GPa", decimals=1,
        lowest=2, highest=30, example=10.8, group=TAKEN, when=OWN_BRACE,
    ),
    Number(
        name="brace_strength", label="Bending strength of the braces", symbol="f_b", unit="MPa",
        decimals=0, lowest=10, highest=200, example=70, group=TAKEN, when=OWN_BRACE,
    ),
    Number(
        name="modulus_spread", label="Spread of stiffness, either way", symbol="s_E", unit="%",
        decimals=0, lowest=0, highest=50, example=20, group=TIME,
        help="From memory: the Wood Handbook has a coefficient of variation of 22 %. Less if you "
        "measured your plate and braces.",
    ),
    Number(
        name="strength_spread", label="Spread of strength, either way", symbol="s_f", unit="%",
        decimals=0, lowest=0, highest=60, example=30, group=TIME,
        help="From memory: coefficient of variation 16 %, so 30 % leaves few pieces outside.",
    ),
    Number(
        name="creep_least", label="Settling: the bend grows by, at least", symbol="c_1", unit="1",
        decimals=1, lowest=1, highest=4, example=1.1, group=TIME,
        help="Times the bend of the first minute.",
    ),
    Number(
        name="creep_most", label="Settling: the bend grows by, at most", symbol="c_2", unit="1",
        decimals=1, lowest=1, highest=6, example=1.5, group=TIME,
        help="For the days of settling. From memory: over years up to twice the first bend.",
    ),
    Number(
        name="long_share", label="Strength left under a load of years", symbol="q", unit="%",
        decimals=0, lowest=30, highest=100, example=60, group=TIME,
        help="From memory (Madison curve): about 60 % of the strength in a short test.",
    ),
    Number(
        name="rise_least", label="Your mark for too stiff: a rise below", symbol="r_1", unit="mm",
        decimals=2, lowest=0, highest=3, example=0.2, group=TIME,
        help="The shop's limits for the rise of the top behind the bridge, settled.",
    ),
    Number(
        name="rise_most", label="Your mark for too weak: a rise above", symbol="r_2", unit="mm",
        decimals=2, lowest=0.05, highest=6, example=0.9, group=TIME,
    ),
)  # fmt: skip
