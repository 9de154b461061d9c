"""What the fret-seating calculation asks."""

from ..engine.declaration import Choice, Input, Number, When

TRIAL = When(choice="beads_from", is_one_of=("trial",))
OWN_BOARD = When(choice="board_wood", is_one_of=("own",))
OWN_NECK = When(choice="neck_wood", is_one_of=("own",))
WIRE, BOW, CROWNS = "Wire and slot", "Bow of the neck", "Crowns"
DEPTHS, NECK, WEAR = "Depths", "The neck", "Wear and dressing"

# fmt: off
INPUTS: tuple[Input, ...] = (
    Number(
        name="slot_width", label="Slot width", symbol="s", unit="mm", decimals=2, lowest=0.3,
        highest=1, example=0.58, group=WIRE, help="The thickest leaf that slides in.",
    ),
    Number(
        name="tang_thickness", label="Tang, without its beads", symbol="g", unit="mm",
        decimals=2, lowest=0.3, highest=0.9, example=0.53, group=WIRE,
        help="Micrometer between the beads.",
    ),
    Number(
        name="tang_beads", label="Tang, over its beads", symbol="B", unit="mm", decimals=2,
        lowest=0.4, highest=1.4, example=0.78, group=WIRE,
    ),
    Choice(
        name="beads_from", label="What the beads do to the neck", example="trial", group=BOW,
        options=(("trial", "Known from a neck of this sort, fretted with this wire"),
                 ("none", "Not known: reckon the tang alone")),
    ),
    Number(
        name="bow_trial", label="Back-bow that fretting gave that neck", symbol="y_t", unit="mm",
        decimals=2, lowest=0.01, highest=2, example=0.04, group=BOW, when=TRIAL,
        help="Bow after fretting less bow before, nut to body joint, rod slack.",
    ),
    Number(
        name="trial_slot", label="Slot width of that neck", symbol="s_t", unit="mm", decimals=2,
        lowest=0.3, highest=1, example=0.58, group=BOW, when=TRIAL,
    ),
    Number(
        name="bow_wanted", label="Back-bow wanted from fretting", symbol="y_w", unit="mm",
        decimals=2, lowest=0, highest=2, example=0.05, group=BOW,
        help="The most you allow. Or, on a neck without a rod, what you want of it.",
    ),
    Number(
        name="crown_wire", label="Crown of the new wire", symbol="h_0", unit="mm", decimals=2,
        lowest=0.5, highest=2.5, example=1.15, group=CROWNS, help="Top over the board, seated.",
    ),
    Number(
        name="level_loss", label="Taken off by the first levelling", symbol="l", unit="mm",
        decimals=2, lowest=0, highest=0.6, example=0.1, group=CROWNS,
    ),
    Number(
        name="slot_depth", label="Slot depth", symbol="d_s", unit="mm", decimals=1, lowest=1,
        highest=5, example=2.4, group=DEPTHS, help="At the shallowest place.",
    ),
    Number(
        name="tang_depth", label="Tang depth", symbol="d_t", unit="mm", decimals=1, lowest=0.6,
        highest=3, example=1.9, group=DEPTHS,
    ),
    Number(
        name="scale_length", label="Scale length", symbol="S", unit="mm", decimals=1, lowest=250,
        highest=1200, example=645, group=NECK,
    ),
    Number(
        name="body_joint_fret", label="Body joint at fret", symbol="j", unit="1", decimals=0,
        whole=True, lowest=5, highest=24, example=14, group=NECK,
    ),
    Number(
        name="neck_thickness", label="Neck with board, halfway to the joint", symbol="T",
        unit="mm", decimals=1, lowest=10, highest=40, example=21.8, group=NECK,
    ),
    Number(
        name="neck_width", label="Neck width, halfway to the joint", symbol="b", unit="mm",
        decimals=1, lowest=25, highest=90, example=48.4, group=NECK,
    ),
    Number(
        name="board_joint", label="Board thickness in its middle", symbol="t", unit="mm",
        decimals=2, lowest=2, highest=12, example=6.4, group=NECK,
    ),
    Choice(
        name="board_wood", label="Wood of the board", example="rosewood", group=NECK,
        options=(("rosewood", "Rosewood, Indian"), ("maple", "Maple, sugar"),
                 ("own", "Another: give its figures")),
    ),
    Number(
        name="own_board_modulus", label="Stiffness of the board along its grain", symbol="E_b",
        unit="GPa", decimals=1, lowest=4, highest=30, example=16, group=NECK, when=OWN_BOARD,
        help="Ebony: some 16 to 17, from memory.",
    ),
    Number(
        name="own_board_crush", label="Pressure that crushes it along its grain", symbol="σ_c",
        unit="MPa", decimals=0, lowest=20, highest=150, example=65, group=NECK, when=OWN_BOARD,
    ),
    Choice(
        name="neck_wood", label="Wood of the neck", example="mahogany", group=NECK,
        options=(("mahogany", "Mahogany"), ("maple", "Maple, sugar"), ("cedar", "Spanish cedar"),
                 ("own", "Another: give its figure")),
    ),
    Number(
        name="own_neck_modulus", label="Stiffness of the neck along its grain", symbol="E_n",
        unit="GPa", decimals=1, lowest=4, highest=30, example=10.5, group=NECK, when=OWN_NECK,
    ),
    Number(
        name="string_moment", label="Bending moment of the strings", symbol="M", unit="N.m",
        decimals=1, lowest=0, highest=40, example=9.4, group=NECK,
        help="From the string-tension calculation.",
    ),
    Number(
        name="crown_width", label="Crown width at its foot", symbol="w", unit="mm", decimals=2,
        lowest=0.8, highest=4, example=2.4, group=WEAR,
    ),
    Number(
        name="crown_least", label="Lowest crown that still plays", symbol="h_1", unit="mm",
        decimals=2, lowest=0.2, highest=1.5, example=0.7, group=WEAR,
    ),
    Number(
        name="wear_dressed", label="Wear at which frets are dressed", symbol="w_d", unit="mm",
        decimals=2, lowest=0.01, highest=0.5, example=0.1, group=WEAR,
        help="Depth of the pits under the strings.",
    ),
    Number(
        name="dress_spare", label="Taken below the deepest pit", symbol="z", unit="mm",
        decimals=2, lowest=0, highest=0.3, example=0.02, group=WEAR,
    ),
    Number(
        name="wear_year", label="Wear in a year of playing", symbol="v", unit="mm", decimals=3,
        lowest=0.001, highest=0.5, example=0.02, group=WEAR,
        help="Common practice, no source; measure it on instruments that come back.",
    ),
)
# fmt: on
FOLDED = (DEPTHS, NECK, WEAR)
