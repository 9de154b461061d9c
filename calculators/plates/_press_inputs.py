"""What the back-press calculator asks."""

from ..engine.declaration import Choice, Input, Number, When
from ._plates_shared import OWN, STRENGTHS

OWN_BACK = When(choice="back_wood", is_one_of=("own",))
PUSHED = When(choice="stiffness_from", is_one_of=("push",))
PRESS, BACK, SHAPE, BARS = "Bladder press", "Sprung back", "Where the back bears", "Go-bars"

inputs: tuple[Input, ...] = (
    Number(
        name="bladder_pressure", label="Pressure in the bladder", symbol="p", unit="kPa",
        decimals=1, lowest=0.2, highest=20, example=4, group=PRESS,
        help="On the low-pressure dial, needle standing still.",
    ),
    Number(
        name="plate_area", label="Area of the plate", symbol="A", unit="cm2", decimals=0,
        lowest=200, highest=3000, example=1535, group=PRESS,
        help="The calculator for arch and rim gives it from the outline.",
    ),
    Number(
        name="rim_length", label="Length of the whole rim", symbol="U", unit="mm", decimals=0,
        lowest=500, highest=2500, example=1510, group=PRESS,
    ),
    Number(
        name="ledge_width", label="Width of the glueing ledge", symbol="b", unit="mm", decimals=1,
        lowest=2, highest=25, example=8.6, group=PRESS, help="Side and lining together.",
    ),
    Number(
        name="back_thickness", label="Back thickness", symbol="t", unit="mm", decimals=2,
        lowest=1, highest=6, example=2.6, group=BACK,
    ),
    Choice(
        name="back_wood", label="Wood of the back", options=(*STRENGTHS[3:], OWN),
        example="rosewood", group=BACK,
    ),
    Number(
        name="back_modulus", label="Modulus of the back, along", symbol="E", unit="GPa",
        decimals=1, lowest=2, highest=30, example=11, group=BACK, when=OWN_BACK,
    ),
    Number(
        name="back_strength", label="Bending strength of the back", symbol="f", unit="MPa",
        decimals=0, lowest=10, highest=250, example=90, group=BACK, when=OWN_BACK,
    ),
    Number(
        name="end_gap", label="Gap under the dry back at each block", symbol="g", unit="mm",
        decimals=1, lowest=0.1, highest=10, example=2, group=BACK,
    ),
    Choice(
        name="stiffness_from", label="How stiff the back is", example="plate", group=BACK,
        options=(("plate", "From its thickness and arch"),
                 ("push", "From a push on the load pad")),
        help="Cross braces and centre strip make a real back stiffer: the push is better.",
    ),
    Number(
        name="push_force", label="Push at each block, both alike", symbol="F_p", unit="N",
        decimals=1, lowest=0.5, highest=300, example=20, group=BACK, when=PUSHED,
        help="Dry back on the rim, pressed down at both blocks alike; the force at one of them.",
    ),
    Number(
        name="push_move", label="It goes down by", symbol="g_p", unit="mm", decimals=2,
        lowest=0.1, highest=10, example=1, group=BACK, when=PUSHED,
    ),
    Number(
        name="overhang", label="From where it bears to the block", symbol="a", unit="mm",
        decimals=0, lowest=30, highest=300, example=150, group=SHAPE,
        help="The mean of both ends.",
    ),
    Number(
        name="bearing_span", label="Between the two places where it bears", symbol="s", unit="mm",
        decimals=0, lowest=20, highest=450, example=200, group=SHAPE,
        help="Along the centre line; with feelers, where the gap is nil.",
    ),
    Number(
        name="back_width", label="Mean width of the back over the ends", symbol="w", unit="mm",
        decimals=0, lowest=60, highest=450, example=250, group=SHAPE,
    ),
    Number(
        name="back_dish_radius", label="Radius of the dish, back", symbol="R", unit="mm",
        decimals=0, lowest=1500, highest=1_000_000, example=4600, group=SHAPE,
        help="For a flat back give 1 000 000.",
    ),
    Number(
        name="bar_length", label="Length of a bar", symbol="l", unit="mm", decimals=0, lowest=200,
        highest=2000, example=620, group=BARS,
    ),
    Number(
        name="deck_height", label="Room for it, caul to deck", symbol="H", unit="mm", decimals=0,
        lowest=150, highest=1990, example=600, group=BARS,
        help="The height between the two faces it stands on, work and caul in place.",
    ),
    Number(
        name="bar_width", label="Width of a bar", symbol="b_g", unit="mm", decimals=1, lowest=3,
        highest=50, example=12, group=BARS,
    ),
    Number(
        name="bar_thickness", label="Thickness of a bar, the way it bows", symbol="t_g",
        unit="mm", decimals=1, lowest=1.5, highest=20, example=6, group=BARS,
    ),
    Number(
        name="bar_modulus", label="Modulus of the bars", symbol="E_g", unit="GPa", decimals=1,
        lowest=3, highest=60, example=11.3, group=BARS,
        help="Red maple 11.3 (Wood Handbook Table 5-3b); glass fibre rod about 40, from memory.",
    ),
    Number(
        name="bar_strength", label="Bending strength of the bars", symbol="f_g", unit="MPa",
        decimals=0, lowest=20, highest=1000, example=92, group=BARS, help="Red maple 92.",
    ),
    Number(
        name="bar_spacing", label="Bar to bar along a brace", symbol="e", unit="mm", decimals=0,
        lowest=15, highest=200, example=55, group=BARS, help="Three fingers' breadth.",
    ),
    Number(
        name="brace_length", label="Length of the brace", symbol="l_b", unit="mm", decimals=0,
        lowest=30, highest=600, example=400, group=BARS,
    ),
    Number(
        name="brace_width", label="Width of the brace", symbol="w_b", unit="mm", decimals=1,
        lowest=2, highest=40, example=8, group=BARS,
    ),
)  # fmt: skip
