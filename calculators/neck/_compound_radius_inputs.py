"""What the compound-radius calculation asks."""

from ..engine.declaration import Choice, Input, Number, When

ENDS = When(choice="shape", is_one_of=("ends",))
SADDLE = When(choice="shape", is_one_of=("saddle",))
BOARD, TRUEING, GAUGE = "The board", "Blocks and facets", "Radius gauge"
WIDTHS = "Widths and thickness"

# fmt: off
INPUTS: tuple[Input, ...] = (
    Choice(
        name="shape", label="Shape of the face", example="cone", group=BOARD,
        options=(
            ("cone", "Cone under its strings: straight under each of them"),
            ("ends", "Radius known at nut and last fret"),
            ("saddle", "Radius known at nut and saddle line"),
            ("cylinder", "Cylinder: one radius all along"),
        ),
    ),
    Number(
        name="fret_radius", label="Radius at the nut", symbol="R_0", unit="mm", decimals=1,
        lowest=0, highest=3000, example=400, group=BOARD,
        help="Of the wood. On a cylinder it is the radius everywhere.",
    ),
    Number(
        name="radius_end", label="Radius at the last fret", symbol="R_e", unit="mm", decimals=1,
        lowest=100, highest=5000, example=500, group=BOARD, when=ENDS,
    ),
    Number(
        name="radius_saddle", label="Radius at the saddle line", symbol="R_s", unit="mm",
        decimals=1, lowest=100, highest=8000, example=600, group=BOARD, when=SADDLE,
        help="Where the board would have it if it went on so far.",
    ),
    Number(
        name="frets", label="Number of frets", symbol="N", unit="1", decimals=0, whole=True,
        lowest=1, highest=36, example=20, group=BOARD,
    ),
    Number(
        name="gap_allowed", label="Gap or ridge allowed", symbol="a", unit="mm", decimals=2,
        lowest=0.01, highest=0.5, example=0.05, group=TRUEING,
        help="Under the radius gauge, when block or plane has done its part. Half of the shop's "
        "limit is a good figure.",
    ),
    Number(
        name="gauge_radius", label="Radius of the gauge or block laid on", symbol="R_g",
        unit="mm", decimals=1, lowest=100, highest=5000, example=300, group=GAUGE,
    ),
    Number(
        name="gauge_fret", label="Laid on at fret", symbol="g", unit="1", decimals=0, whole=True,
        lowest=0, highest=36, example=0, group=GAUGE, help="0 is the nut.",
    ),
    Number(
        name="scale_length", label="Scale length", symbol="S", unit="mm", decimals=2,
        lowest=250, highest=1200, example=645, group=WIDTHS,
    ),
    Number(
        name="string_spread_nut", label="Outer strings apart at the nut", symbol="w_0", unit="mm",
        decimals=2, lowest=10, highest=100, example=36.5, group=WIDTHS,
        help="Centre of the bass string to centre of the treble string.",
    ),
    Number(
        name="string_spread_bridge", label="Outer strings apart at the saddle", symbol="w_s",
        unit="mm", decimals=2, lowest=10, highest=150, example=54, group=WIDTHS,
    ),
    Number(
        name="edge_margin", label="String to board edge", symbol="e", unit="mm", decimals=2,
        lowest=0, highest=15, example=3.5, group=WIDTHS,
    ),
    Number(
        name="board_joint", label="Board thickness in its middle", symbol="t", unit="mm",
        decimals=2, lowest=2, highest=12, example=6.4, group=WIDTHS,
    ),
)
# fmt: on
FOLDED = (WIDTHS,)
