"""What the kerf-spacing calculator asks."""

from ..engine.declaration import Input, Number, Rows, Words

LINING, CURVES, LIMITS = "The lining", "The curves of the body", "Fine points"
FOLDED = (LIMITS,)

COLUMNS = (
    Words(name="place", label="Place", longest=18),
    Number(name="radius", label="Radius of the side inside", unit="mm", decimals=1, lowest=15,
           highest=2000, example=115),
    Number(name="length", label="Length of the curve", unit="mm", decimals=0, lowest=5,
           highest=2000, example=220),
)  # fmt: skip

INPUTS: tuple[Input, ...] = (
    Number(
        name="lining_width", label="Lining, glueing face to kerf face", symbol="H", unit="mm",
        decimals=2, lowest=2, highest=15, example=6.5, group=LINING,
        help="Its width at the edge for the plate.",
    ),
    Number(
        name="web", label="Web left under a kerf", symbol="b", unit="mm", decimals=2, lowest=0.2,
        highest=3, example=0.7, group=LINING,
    ),
    Number(
        name="kerf_width", label="Width of a kerf", symbol="w", unit="mm", decimals=2, lowest=0.2,
        highest=3, example=0.6, group=LINING,
        help="As sawn: the leaf that just drags in it. A saw cuts wider than its blade.",
    ),
    Number(
        name="kerf_spacing", label="Kerf to kerf", symbol="p", unit="mm", decimals=2, lowest=1,
        highest=25, example=6, group=LINING,
        help="Over ten teeth, divided by ten.",
    ),
    Rows(
        name="places", label="Where the kerfs close: bouts and horn", columns=COLUMNS,
        group=CURVES, at_most=10,
        example=(("upper bout", 115, 220), ("lower bout", 170, 415), ("cutaway horn", 45, 70)),
        help="One row a curve that is hollow on the inside of the box: the tightest radius of the "
        "side's inner face, and the length along it.",
    ),
    Number(
        name="waist_radius", label="Waist: radius of the side inside the box", symbol="R_w",
        unit="mm", decimals=1, lowest=15, highest=2000, example=107, group=CURVES,
        help="Here the kerfs open. Bend radius of the side plus its thickness.",
    ),
    Number(
        name="mouth_left", label="Leave each kerf open by at least", symbol="m_0", unit="mm",
        decimals=2, lowest=0, highest=2, example=0, group=LIMITS,
        help="At its mouth, bent. Nought: they may just close.",
    ),
    Number(
        name="gap_allowed", label="Gap allowed behind a tooth", symbol="g", unit="mm", decimals=3,
        lowest=0.005, highest=0.5, example=0.05, group=LIMITS,
        help="What glue and clips can close; the limit for the joint will do.",
    ),
    Number(
        name="web_stretch", label="Stretch the web takes", symbol="ε_a", unit="%", decimals=2,
        lowest=0.2, highest=8, example=1.5, group=LIMITS,
        help="Cold dry wood breaks at about 1 %, hot and wet at about 2 % (one how-to page that "
        "names no source); a damped web lies between. Better: bend an offcut until a web breaks, "
        "put that radius in, and read the stretch.",
    ),
)  # fmt: skip
