"""What the break-angle calculation asks."""

from ..engine.declaration import Choice, Input, Number, Rows, When, Words

SOLID = When(choice="head", is_one_of=("solid",))
SLOTTED = When(choice="head", is_one_of=("slotted",))
HEAD, STRINGS, BRIDGE = "Head and tuners", "Strings", "Saddle and pins"
LIMITS = "Limits and friction"

# fmt: off
INPUTS: tuple[Input, ...] = (
    Choice(
        name="head", label="Head", group=HEAD, example="solid",
        options=(("solid", "Solid: posts stand on its face"),
                 ("slotted", "Slotted: rollers lie across it")),
    ),
    Number(
        name="head_angle", label="Head falls back by", symbol="α", unit="deg", decimals=1,
        lowest=0, highest=30, example=14, group=HEAD, help="Face of the head to the board.",
    ),
    Number(
        name="string_over_face", label="String in the nut, over the head's face", symbol="q",
        unit="mm", decimals=1, lowest=0.5, highest=25, example=5.5, group=HEAD,
        help="Straightedge on the face, up to the nut; square to the face.",
    ),
    Number(
        name="hole_height", label="Hole of the post over the face", symbol="h", unit="mm",
        decimals=1, lowest=1, highest=40, example=8.5, group=HEAD, when=SOLID,
    ),
    Number(
        name="windings", label="Windings below the hole", symbol="n", unit="1", decimals=1,
        lowest=0, highest=8, example=2.5, group=HEAD, when=SOLID,
        help="Downwards, none crossed.",
    ),
    Number(
        name="post_diameter", label="Post", symbol="d_p", unit="mm", decimals=1, lowest=3,
        highest=14, example=6, group=HEAD, when=SOLID,
    ),
    Number(
        name="roller_depth", label="Middle of the roller below the face", symbol="e", unit="mm",
        decimals=1, lowest=0, highest=25, example=8, group=HEAD, when=SLOTTED,
    ),
    Number(
        name="roller_diameter", label="Roller", symbol="d_r", unit="mm", decimals=1, lowest=3,
        highest=16, example=10, group=HEAD, when=SLOTTED,
    ),
    Rows(
        name="strings", label="Strings", group=STRINGS, at_least=1, at_most=12,
        help="From bass to treble. Nut to post: along the string's line, to the middle of its "
        "post or roller. Aside: how far the post's middle lies outside that line (minus: inside); "
        "on a roller, how far its winding lies aside.",
        columns=(
            Words(name="string", label="String", longest=12),
            Number(name="pull", label="Pull", unit="N", decimals=0, lowest=5, highest=400,
                   example=120),
            Number(name="gauge", label="Gauge", unit="mm", decimals=2, lowest=0.15, highest=4,
                   example=0.8),
            Number(name="along", label="Nut to post", unit="mm", decimals=0, lowest=12,
                   highest=300, example=80),
            Number(name="aside", label="Aside", unit="mm", decimals=1, lowest=-40, highest=40,
                   example=10),
        ),
        example=(
            ("6", 115, 1.35, 40, 6), ("5", 127, 1.07, 78, 11), ("4", 134, 0.81, 116, 16),
            ("3", 132, 0.61, 116, 16), ("2", 107, 0.41, 78, 11), ("1", 105, 0.30, 40, 6),
        ),
    ),
    Number(
        name="saddle_height", label="Saddle showing in its middle", symbol="w", unit="mm",
        decimals=1, lowest=0.3, highest=15, example=3.5, group=BRIDGE,
    ),
    Number(
        name="showing_bass", label="The same at the bass string", symbol="w_b", unit="mm",
        decimals=1, lowest=0.3, highest=15, example=3.1, group=BRIDGE,
    ),
    Number(
        name="showing_treble", label="The same at the treble string", symbol="w_t", unit="mm",
        decimals=1, lowest=0.3, highest=15, example=2.1, group=BRIDGE,
    ),
    Number(
        name="pin_back", label="Crest to the edge of the pin hole", symbol="b", unit="mm",
        decimals=1, lowest=2, highest=40, example=11, group=BRIDGE,
        help="To where the string dives into its hole or ramp.",
    ),
    Number(
        name="ramp_depth", label="String there, below the bridge's top", symbol="r", unit="mm",
        decimals=1, lowest=0, highest=8, example=2, group=BRIDGE,
        help="0 for a hole without a ramp.",
    ),
    Number(
        name="front_rise", label="String climbs to the saddle by", symbol="φ", unit="deg",
        decimals=1, lowest=-2, highest=6, example=1.4, group=BRIDGE,
        help="Against the bridge's top: pitch of the neck and the string's own climb.",
    ),
    Number(
        name="least_nut", label="Least angle down behind the nut", symbol="ν_1", unit="deg",
        decimals=0, lowest=0, highest=30, example=8, group=LIMITS,
        help="Common practice, no source.",
    ),
    Number(
        name="least_saddle", label="Least angle over the saddle", symbol="σ_1", unit="deg",
        decimals=0, lowest=0, highest=60, example=15, group=LIMITS,
    ),
    Number(
        name="most_saddle", label="Greatest angle over the saddle", symbol="σ_2", unit="deg",
        decimals=0, lowest=5, highest=90, example=40, group=LIMITS,
    ),
    Number(
        name="friction", label="Friction of the string in its slot", symbol="µ", unit="1",
        decimals=2, lowest=0, highest=0.6, example=0.2, group=LIMITS,
        help="From memory: 0.1 to 0.2 in bone with pencil lead, more where it binds.",
    ),
    Number(
        name="scale_length", label="Scale length", symbol="S", unit="mm", decimals=1,
        lowest=250, highest=1200, example=645, group=LIMITS,
    ),
)
# fmt: on
