"""What the clamping calculator asks."""

from ..engine.declaration import Choice, Input, Number, When

JOINT, CLAMPS, SCREW, CAULS = "The joint", "The clamps", "The screw", "Cauls and wood"
PRESSURE, FINE = "Pressure wanted", "Fine points"
FOLDED = (FINE,)
KNOWN = When(choice="force_from", is_one_of=("known",))
BY_SCREW = When(choice="force_from", is_one_of=("screw",))
TWO_CAULS = When(choice="below", is_one_of=("caul",))
OWN = When(choice="softest_wood", is_one_of=("own",))

WOODS = (
    ("sitka", "Spruce, Sitka"), ("engelmann", "Spruce, Engelmann"), ("white", "Spruce, white"),
    ("cedar", "Cedar, western red"), ("maple", "Maple, hard"), ("red_maple", "Maple, red"),
    ("walnut", "Walnut, black"),
)  # fmt: skip

INPUTS: tuple[Input, ...] = (
    Number(
        name="joint_length", label="Length of the joint", symbol="L", unit="mm", decimals=0,
        lowest=10, highest=1500, example=155, group=JOINT,
    ),
    Number(
        name="joint_width", label="Width of the joint", symbol="b", unit="mm", decimals=1,
        lowest=1, highest=300, example=30, group=JOINT,
        help="The mean, where it tapers.",
    ),
    Number(
        name="clamps", label="Number of clamps", symbol="n", unit="1", decimals=0, whole=True,
        lowest=1, highest=40, example=3, group=CLAMPS,
    ),
    Number(
        name="end_distance", label="Outer clamps from the ends", symbol="e", unit="mm", decimals=0,
        lowest=2, highest=300, example=22, group=CLAMPS,
        help="To the middle of the pad. Some 0.4 of the spacing lies evenest.",
    ),
    Number(
        name="pad_width", label="Pad of a clamp, along the joint", symbol="a", unit="mm",
        decimals=0, lowest=4, highest=120, example=22, group=CLAMPS,
    ),
    Choice(
        name="force_from", label="Force of a clamp", group=CLAMPS, example="known",
        options=(("known", "Known: load pad, spring or data sheet"),
                 ("screw", "From the pull on the screw's handle")),
    ),
    Number(
        name="clamp_force", label="Force of each clamp", symbol="F_c", unit="N", decimals=0,
        lowest=1, highest=20000, example=1400, group=CLAMPS, when=KNOWN,
        help="Squeeze the load pad as you tighten in earnest. A spring clip gives some 20 to 60 N, "
        "a cam clamp a few hundred, a screw clamp 1 to 3 kN (common practice).",
    ),
    Number(
        name="handle_force", label="Pull at the handle", symbol="P", unit="N", decimals=0,
        lowest=1, highest=500, example=60, group=SCREW, when=BY_SCREW,
        help="Spring balance at the end of the bar, pulled square.",
    ),
    Number(
        name="handle_radius", label="Handle: middle of the screw to the hand", symbol="r",
        unit="mm", decimals=0, lowest=5, highest=300, example=60, group=SCREW, when=BY_SCREW,
    ),
    Number(
        name="screw_diameter", label="Outer diameter of the thread", symbol="d", unit="mm",
        decimals=1, lowest=5, highest=40, example=12, group=SCREW, when=BY_SCREW,
    ),
    Number(
        name="lead", label="Travel of the screw in one turn", symbol="l", unit="mm", decimals=2,
        lowest=0.5, highest=12, example=3, group=SCREW, when=BY_SCREW,
    ),
    Number(
        name="thread_friction", label="Friction in the thread", symbol="µ", unit="1", decimals=2,
        lowest=0.05, highest=0.5, example=0.2, group=FINE, when=BY_SCREW,
        help="From memory: 0.12 to 0.15 greased, 0.2 dry, more with glue in it.",
    ),
    Number(
        name="flank_angle", label="Slope of the thread's flank", symbol="α", unit="deg",
        decimals=1, lowest=0, highest=35, example=15, group=FINE, when=BY_SCREW,
        help="Square 0, trapezoidal 15, acme 14.5, ordinary V thread 30 degrees.",
    ),
    Number(
        name="pad_friction", label="Friction under the swivel pad", symbol="µ_p", unit="1",
        decimals=2, lowest=0, highest=0.5, example=0.2, group=FINE, when=BY_SCREW,
    ),
    Number(
        name="pad_friction_diameter", label="Mean diameter it rubs on", symbol="d_p", unit="mm",
        decimals=1, lowest=0, highest=40, example=8, group=FINE, when=BY_SCREW,
        help="Of the ball in its socket, not of the pad.",
    ),
    Number(
        name="caul_thickness", label="Caul thickness", symbol="h", unit="mm", decimals=1,
        lowest=1, highest=80, example=25, group=CAULS,
    ),
    Number(
        name="part_thickness", label="Wood between caul and joint", symbol="t_1", unit="mm",
        decimals=1, lowest=0.5, highest=100, example=9.5, group=CAULS,
    ),
    Number(
        name="bed_thickness", label="Wood below the joint", symbol="t_2", unit="mm", decimals=1,
        lowest=0.5, highest=150, example=5.3, group=CAULS,
        help="Down to the bench or the lower caul.",
    ),
    Choice(
        name="below", label="Under it all", group=CAULS, example="caul",
        options=(("bench", "A stiff bench or block"), ("caul", "A second caul")),
    ),
    Number(
        name="lower_caul_thickness", label="Thickness of the second caul", symbol="h_2",
        unit="mm", decimals=1, lowest=1, highest=80, example=18, group=CAULS, when=TWO_CAULS,
    ),
    Number(
        name="pressure_low", label="Least pressure wanted", symbol="p_1", unit="MPa", decimals=2,
        lowest=0.001, highest=3, example=0.7, group=PRESSURE,
        help="Books have 0.7 MPa for light woods, softwoods 0.7 to 1.0 (from memory, not "
        "confirmed). Thin parts that fit by themselves hold with far less: a vacuum bag has 0.1 "
        "at the most.",
    ),
    Number(
        name="pressure_high", label="Greatest pressure wanted", symbol="p_2", unit="MPa",
        decimals=2, lowest=0.005, highest=6, example=1.7, group=PRESSURE,
        help="Books have 1.7 MPa for the densest woods, hardwoods 1.2 to 1.7 (from memory, not "
        "confirmed). More starves the joint.",
    ),
    Choice(
        name="softest_wood", label="Softest wood under the pressure", group=FINE, example="sitka",
        options=(*WOODS, ("own", "My own figure")),
    ),
    Number(
        name="crush_own", label="It yields across the grain at", symbol="p_y", unit="MPa",
        decimals=2, lowest=0.5, highest=30, example=5, group=FINE, when=OWN,
    ),
    Number(
        name="caul_stiffness", label="Stiffness of the cauls along the grain", symbol="E",
        unit="MPa", decimals=0, lowest=500, highest=210000, example=12600, group=FINE,
        help="Hard maple 12 600, spruce 10 800, mahogany 10 300, aluminium 70 000 (metal from "
        "memory).",
    ),
    Number(
        name="pressed_stiffness", label="Stiffness of the pressed wood across the grain",
        symbol="E_t", unit="MPa", decimals=0, lowest=50, highest=5000, example=700, group=FINE,
        help="About 0.05 to 0.1 of that along the grain: cedar 400 to 600, mahogany 660 to 1100, "
        "maple 820 to 1700.",
    ),
)  # fmt: skip
