"""What the neck-angle calculation asks."""

from ..engine.declaration import Choice, Input, Number, When

DISH = When(choice="arch_from", is_one_of=("dish",))
MEASURED_ARCH = When(choice="arch_from", is_one_of=("measured",))
DRY_FIT = When(choice="dry_fit", is_one_of=("measured",))
BOARD, TOP, STRINGS = "Neck and board", "Top and bridge", "Strings"
DRY, SHOULDERS, SHIM, GAUGES = "Dry fit", "Heel and shoulders", "Lacquer and shim", "Measuring"

# fmt: off
INPUTS: tuple[Input, ...] = (
    Number(
        name="scale_length", label="Scale length", symbol="S", unit="mm", decimals=2,
        lowest=300, highest=1200, example=650, group=BOARD,
        help="Nut to saddle line, before the saddle is set back.",
    ),
    Number(
        name="body_joint_fret", label="Body joint at fret", symbol="j", unit="1", decimals=0,
        whole=True, lowest=10, highest=20, example=14, group=BOARD,
    ),
    Number(
        name="last_fret", label="Last fret", symbol="n", unit="1", decimals=0, whole=True,
        lowest=12, highest=36, example=20, group=BOARD,
    ),
    Number(
        name="board_joint", label="Board thickness at the joint", symbol="t", unit="mm",
        decimals=2, lowest=2, highest=12, example=6.4, group=BOARD,
        help="In the middle of the board, without the fret.",
    ),
    Number(
        name="board_end", label="Board thickness at its end", symbol="t_e", unit="mm",
        decimals=2, lowest=1, highest=12, example=6.4, group=BOARD,
        help="In the middle of the board, at the last fret.",
    ),
    Number(
        name="fret_height", label="Fret height over the board", symbol="f", unit="mm",
        decimals=2, lowest=0.3, highest=2.5, example=1.1, group=BOARD,
    ),
    Number(
        name="fret_radius", label="Radius across the frets", symbol="R_f", unit="mm",
        decimals=1, lowest=0, highest=3000, example=400, group=BOARD,
        help="0 for a flat board.",
    ),
    Choice(
        name="arch_from", label="Arch of the top", example="measured", group=TOP,
        options=(("measured", "Measured rise"), ("dish", "From the radius of the dish")),
    ),
    Number(
        name="arch_measured", label="Rise of the top from joint to bridge", symbol="a_m",
        unit="mm", decimals=2, lowest=-2, highest=15, example=3.5, group=TOP, when=MEASURED_ARCH,
        help="How much higher the top is at the bridge place than at its edge by the joint, "
        "square to the rim plane, on the centre line.",
    ),
    Number(
        name="dish_radius", label="Radius of the dish", symbol="R_d", unit="mm", decimals=0,
        lowest=1500, highest=50000, example=7620, group=TOP, when=DISH,
    ),
    Number(
        name="dish_span", label="Span of the arch", symbol="c", unit="mm", decimals=1,
        lowest=150, highest=900, example=500, group=TOP, when=DISH,
        help="Along the centre line, from the rim at the joint to the rim at the end block.",
    ),
    Number(
        name="bridge_thickness", label="Bridge thickness", symbol="B", unit="mm", decimals=2,
        lowest=3, highest=20, example=9.5, group=TOP,
        help="On the centre line, at the saddle.",
    ),
    Number(
        name="saddle_height", label="Saddle above the bridge, wanted", symbol="w", unit="mm",
        decimals=2, lowest=0.5, highest=12, example=3.5, group=TOP,
        help="In the middle of the saddle.",
    ),
    Number(
        name="string_lift", label="Lift under the strings, to come", symbol="u", unit="mm",
        decimals=2, lowest=0, highest=4, example=0.5, group=TOP,
        help="How much the strings will raise the bridge against the line of the frets, by "
        "pulling up the top and pulling the neck forward. Measure it on the last instruments of "
        "this model; the example is common practice, no source.",
    ),
    Number(
        name="action_bass", label="Action at the 12th, bass, wanted", symbol="A_b", unit="mm",
        decimals=2, lowest=0.5, highest=8, example=2.4, group=STRINGS,
        help="Gap between the fret top and the underside of the string.",
    ),
    Number(
        name="action_treble", label="Action at the 12th, treble, wanted", symbol="A_t",
        unit="mm", decimals=2, lowest=0.5, highest=8, example=1.8, group=STRINGS,
    ),
    Number(
        name="nut_height", label="String over the fret plane at the nut", symbol="h_0",
        unit="mm", decimals=2, lowest=0.1, highest=3, example=0.45, group=STRINGS,
        help="Height of the string at the nut over a straightedge laid on the frets.",
    ),
    Number(
        name="relief", label="Relief under strings", symbol="r", unit="mm", decimals=2,
        lowest=0, highest=1.5, example=0.2, group=STRINGS,
        help="Dip of the neck midway between the first fret and the joint.",
    ),
    Number(
        name="string_spread", label="Outer strings apart at the saddle", symbol="e", unit="mm",
        decimals=1, lowest=20, highest=90, example=54, group=STRINGS,
    ),
    Number(
        name="heel_length", label="Heel, from the board to the heel cap", symbol="ℓ", unit="mm",
        decimals=1, lowest=25, highest=160, example=95, group=SHOULDERS,
        help="Along the shoulder, from the underside of the board to where the cap sits.",
    ),
    Number(
        name="shoulder_width", label="Heel width over both shoulders", symbol="b_s", unit="mm",
        decimals=1, lowest=20, highest=100, example=56, group=SHOULDERS,
        help="Outer edge to outer edge, by the board.",
    ),
    Choice(
        name="dry_fit", label="Joint measured, fitted dry", example="measured", group=DRY,
        options=(("measured", "Yes: work out what to take off"), ("not_yet", "No, not yet")),
    ),
    Number(
        name="height_now", label="Straightedge over the top at the bridge place, now",
        symbol="H_m", unit="mm", decimals=2, lowest=0, highest=40, example=9.7, group=DRY,
        when=DRY_FIT, help="On the fret tops, along the middle; square down to the bare top.",
    ),
    Number(
        name="offset_now", label="Centre line off at the bridge place, now", symbol="y_m",
        unit="mm", decimals=1, lowest=-10, highest=10, example=0.4, group=DRY, when=DRY_FIT,
        help="Plus towards the treble side, minus towards the bass side.",
    ),
    Number(
        name="proud_now", label="Board proud of the top at the joint, now", symbol="p",
        unit="mm", decimals=2, lowest=-2, highest=3, example=0.15, group=DRY, when=DRY_FIT,
        help="Neck drawn down. Plus where it stands up, minus where it sits too low.",
    ),
    Number(
        name="spare", label="How far the neck may still move in", symbol="m", unit="mm",
        decimals=2, lowest=0, highest=5, example=0.3, group=DRY, when=DRY_FIT,
        help="From the place of the body-joint fret: what the shoulders can still spare.",
    ),
    Number(
        name="cheek_taper", label="Taper of each dovetail cheek", symbol="τ", unit="deg",
        decimals=1, lowest=0.2, highest=15, example=3, group=DRY, when=DRY_FIT,
        help="Between cheek and the way the neck slides down.",
    ),
    Number(
        name="shim_now", label="Shim in the joint, now", symbol="s_m", unit="mm", decimals=2,
        lowest=0, highest=1, example=0.15, group=DRY, when=DRY_FIT, help="0 for none.",
    ),
    Number(
        name="finish_build", label="Lacquer to come at the shoulder", symbol="F", unit="um",
        decimals=0, lowest=0, highest=600, example=150, group=SHIM,
        help="Film on the side of the body after polishing.",
    ),
    Choice(
        name="shim_place", label="Where the shim lies", example="side", group=SHIM,
        options=(("side", "On the bare side, clear of the binding"),
                 ("binding", "Over the binding that will be scraped")),
    ),
    Number(
        name="binding_proud", label="Binding still to be scraped", symbol="q", unit="mm",
        decimals=2, lowest=0, highest=1, example=0.05, group=SHIM,
        help="How far it stands above the side beside the mortise.",
    ),
    Choice(
        name="error_kind", label="The figures below are", example="expanded", group=GAUGES,
        options=(
            ("expanded", "Expanded uncertainty, k = 2, as on the gauge list"),
            ("limits", "Limits that are never passed"),
            ("standard", "Standard uncertainty, k = 1"),
        ),
    ),
    Number(
        name="err_height", label="Straightedge over the top", symbol="ε_H", unit="mm",
        decimals=2, lowest=0, highest=1, example=0.06, group=GAUGES,
        help="Gauge and laying on. Lay it on afresh five times; it is no better than that.",
    ),
    Number(
        name="err_offset", label="Centre line at the bridge", symbol="ε_y", unit="mm",
        decimals=2, lowest=0, highest=2, example=0.1, group=GAUGES, when=DRY_FIT,
    ),
    Number(
        name="err_proud", label="Board over the top at the joint", symbol="ε_p", unit="mm",
        decimals=2, lowest=0, highest=1, example=0.02, group=GAUGES, when=DRY_FIT,
    ),
    Number(
        name="err_arch", label="Rise of the top", symbol="ε_a", unit="mm", decimals=2,
        lowest=0, highest=2, example=0.1, group=GAUGES,
    ),
    Number(
        name="err_thickness", label="Board, fret, bridge: each", symbol="ε_t", unit="mm",
        decimals=2, lowest=0, highest=0.5, example=0.03, group=GAUGES,
    ),
    Number(
        name="err_made", label="Nut, saddle, relief: how close each is made", symbol="ε_n",
        unit="mm", decimals=2, lowest=0, highest=1, example=0.05, group=GAUGES,
    ),
    Number(
        name="draws", label="Draws", symbol="", unit="1", decimals=0, whole=True, lowest=200,
        highest=2000, example=500, group=GAUGES,
    ),
    Number(
        name="seed", label="Seed of the draws", symbol="", unit="1", decimals=0, whole=True,
        lowest=0, highest=999999, example=12, group=GAUGES,
        help="The same seed gives the same draws.",
    ),
)
# fmt: on
