"""What the hung-weights calculation asks."""

from ..engine.declaration import Choice, Input, Number, When

SAG = When(choice="stiffness_from", is_one_of=("sag",))
WOOD = When(choice="stiffness_from", is_one_of=("wood",))
PAIR = When(choice="arrangement", is_one_of=("two",))
ROD_SET = When(choice="rod", is_one_of=("set",))
NECK, WEIGHT, ROD = "The neck", "The weight", "The rod"
LIE, SECTION = "How the strings lie", "Widths and section"

inputs: tuple[Input, ...] = (
    Number(
        name="string_tension", label="All strings together pull", symbol="T", unit="N", decimals=0,
        lowest=20, highest=3000, example=720, group=NECK, help="From the string-tension calculator.",
    ),
    Number(
        name="scale_length", label="Scale length", symbol="S", unit="mm", decimals=1, lowest=250,
        highest=1200, example=645, group=NECK,
    ),
    Number(
        name="body_joint_fret", label="Body joint at fret", symbol="j", unit="1", decimals=0,
        whole=True, lowest=8, highest=24, example=14, group=NECK,
        help="The stand's crossbar lies under it.",
    ),
    Number(
        name="thickness_first", label="Neck with board at the first fret", symbol="t_1", unit="mm",
        decimals=1, lowest=10, highest=40, example=21, group=NECK,
    ),
    Number(
        name="thickness_second", label="Neck with board at the second place", symbol="t_2",
        unit="mm", decimals=1, lowest=10, highest=50, example=22.5, group=NECK,
    ),
    Number(
        name="second_fret", label="That second place is at fret", symbol="n_2", unit="1",
        decimals=0, whole=True, lowest=4, highest=14, example=9, group=NECK,
        help="The last place before the cove begins.",
    ),
    Choice(
        name="stiffness_from", label="How stiff the neck is", example="sag", group=NECK,
        options=(("sag", "From the sag under the weight, measured"),
                 ("wood", "From the wood, a first guess")),
    ),
    Number(
        name="hung_weight", label="Weight in hand, with strap and hook", symbol="m", unit="kg",
        decimals=2, lowest=0.1, highest=40, example=5.4, group=WEIGHT,
    ),
    Number(
        name="hang_place", label="It hangs from the nut by", symbol="p", unit="mm", decimals=0,
        lowest=-60, highest=250, example=0, group=WEIGHT,
        help="Plus towards the head, minus towards the body.",
    ),
    Number(
        name="measured_sag", label="Hollow that it adds, rod slack", symbol="s_m", unit="mm",
        decimals=2, lowest=0.02, highest=4, example=0.25, group=WEIGHT, when=SAG,
        help="Bow with the weight less bow without, in the middle, after the wait.",
    ),
    Number(
        name="neck_modulus", label="Stiffness (Young's modulus) of the neck wood", symbol="E",
        unit="GPa", decimals=1, lowest=4, highest=40, example=10.3, group=WEIGHT, when=WOOD,
        help="Along the grain; mahogany 10.3 (Wood Handbook table 5-5). Board and rod add to it.",
    ),
    Choice(
        name="arrangement", label="What stands for the strings", example="one", group=WEIGHT,
        options=(("one", "One weight, where it hangs now"),
                 ("two", "Two: that one and one more, for the drop of the nut as well")),
    ),
    Number(
        name="pair_place", label="The second hangs from the nut by", symbol="p_2", unit="mm",
        decimals=0, lowest=-60, highest=300, example=100, group=WEIGHT, when=PAIR,
        help="Plus towards the head.",
    ),
    Choice(
        name="rod", label="Rod", example="set", group=ROD,
        options=(("set", "Set, and both bows read"), ("none", "None, or not yet set")),
    ),
    Number(
        name="bow_loaded", label="Bow under the weight, rod set (hollow plus)", symbol="b_1",
        unit="mm", decimals=2, lowest=-2, highest=2, example=0, group=ROD, when=ROD_SET,
    ),
    Number(
        name="bow_free", label="Bow without the weight, rod set", symbol="b_0", unit="mm",
        decimals=2, lowest=-3, highest=2, example=-0.2, group=ROD, when=ROD_SET,
    ),
    Number(
        name="relief", label="Relief wanted under strings", symbol="r", unit="mm", decimals=2,
        lowest=0, highest=1.5, example=0.2, group=ROD, when=ROD_SET,
    ),
    Number(
        name="rod_effect", label="One turn of the rod moves the bow by", symbol="k", unit="mm/turn",
        decimals=2, lowest=0.02, highest=5, example=0.5, group=ROD, when=ROD_SET,
        help="Measured on this neck: change of the bow over the turns given.",
    ),
    Number(
        name="fret_height", label="Fret height over the board", symbol="f", unit="mm", decimals=2,
        lowest=0.3, highest=2.5, example=1.05, group=LIE,
    ),
    Number(
        name="nut_height", label="String over the fret plane at the nut", symbol="h_0", unit="mm",
        decimals=2, lowest=0, highest=3, example=0.1, group=LIE,
    ),
    Number(
        name="action_bass", label="Action at the 12th, bass", symbol="A_b", unit="mm", decimals=2,
        lowest=0.5, highest=8, example=2.4, group=LIE,
    ),
    Number(
        name="action_treble", label="Action at the 12th, treble", symbol="A_t", unit="mm",
        decimals=2, lowest=0.5, highest=8, example=1.8, group=LIE,
    ),
    Number(
        name="mean_gauge", label="Mean thickness of the strings", symbol="g", unit="mm", decimals=2,
        lowest=0.2, highest=3, example=0.77, group=LIE,
        help="They pull along their middles.",
    ),
    Number(
        name="pressed_fret", label="Strings pressed down at fret (0: open)", symbol="n_p", unit="1",
        decimals=0, whole=True, lowest=0, highest=12, example=0, group=LIE,
        help="A barre or capo brings the strings nearer to the neck and bends it less.",
    ),
    Number(
        name="first_read_fret", label="Straightedge lies from fret (0: nut)", symbol="n_r",
        unit="1", decimals=0, whole=True, lowest=0, highest=3, example=1, group=LIE,
        help="To the body joint; the bow is read midway.",
    ),
    Number(
        name="neck_width_nut", label="Width at the nut", symbol="b_0", unit="mm", decimals=1,
        lowest=25, highest=80, example=43.5, group=SECTION,
    ),
    Number(
        name="board_end_width", label="Width of the board at its last fret", symbol="b_e",
        unit="mm", decimals=1, lowest=28, highest=100, example=55.5, group=SECTION,
    ),
    Number(
        name="last_fret", label="Last fret", symbol="n_e", unit="1", decimals=0, whole=True,
        lowest=12, highest=36, example=20, group=SECTION,
    ),
    Number(
        name="axis_share", label="Neutral axis below the board's face, of the thickness",
        symbol="a", unit="%", decimals=0, lowest=35, highest=65, example=51, group=SECTION,
        help="Half for a plain section. The round back lifts it, fret slots across the board lower it: "
        "from memory, 45 to 53.",
    ),
    Number(
        name="section_fill", label="Stiffness beside a rectangle", symbol="q", unit="%",
        decimals=0, lowest=40, highest=150, example=66, group=SECTION, when=WOOD,
        help="Half an ellipse has 66 % of the rectangle around it.",
    ),
)  # fmt: skip
