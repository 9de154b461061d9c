"""What the string-spacing calculation asks."""

from ..engine.declaration import Choice, Input, Number, Readings, When

IN_MM = When(choice="gauges_in", is_one_of=("mm",))
IN_MIL = When(choice="gauges_in", is_one_of=("mil",))
STRINGS, WIDTHS, MARKING = "Strings", "Widths", "Marking"
NUT, INSTRUMENT = "Nut slots and blank", "Scale and frets"
EVEN = (("gaps", "Equal gaps between strings"), ("centres", "Equal middle to middle"))
GRADUATIONS_MM = {
    "0.01 mm": 0.01, "0.05 mm": 0.05, "0.1 mm": 0.1, "0.5 mm": 0.5, "0.001 in": 0.0254,
    "0.01 in": 0.254, "1/64 in": 25.4 / 64,
}  # fmt: skip

# fmt: off
INPUTS: tuple[Input, ...] = (
    Choice(
        name="gauges_in", label="Gauges are given in", example="mm", group=STRINGS,
        options=(("mm", "Millimetres"), ("mil", "Thousandths of an inch")),
    ),
    Readings(
        name="gauges", label="String gauges, treble to bass", symbol="d", unit="mm", decimals=3,
        lowest=0.15, highest=4, example=(0.305, 0.406, 0.610, 0.813, 1.067, 1.346), at_least=2,
        at_most=12, group=STRINGS, when=IN_MM,
        help="As on the packet, from the thinnest side to the bass side.",
    ),
    Readings(
        name="gauges_mil", label="String gauges, treble to bass", symbol="d", unit="mil",
        decimals=1, lowest=6, highest=157, example=(12, 16, 24, 32, 42, 53), at_least=2,
        at_most=12, group=STRINGS, when=IN_MIL,
        help="Whole thousandths: 12 16 24 32 42 53.",
    ),
    Number(
        name="plain_strings", label="Plain strings among them", symbol="p", unit="1", decimals=0,
        whole=True, lowest=0, highest=12, example=2, group=STRINGS,
        help="Counted from the treble. On a ukulele, all.",
    ),
    Choice(
        name="nut_rule", label="At the nut", example="gaps", options=EVEN, group=WIDTHS,
    ),
    Number(
        name="string_spread_nut", label="Outer strings apart at the nut", symbol="w_0", unit="mm",
        decimals=2, lowest=10, highest=100, example=36.5, group=WIDTHS,
        help="Centre of the bass string to centre of the treble string.",
    ),
    Number(
        name="edge_margin", label="String to board edge", symbol="e", unit="mm", decimals=2,
        lowest=0.5, highest=15, example=3.5, group=WIDTHS,
        help="From the middle of an outer string; the mean of both sides.",
    ),
    Choice(
        name="edge_rule", label="Outer strings set", example="centres", group=WIDTHS,
        options=(("centres", "Middles equally far from the edges"),
                 ("sides", "As much board outside the thick string as outside the thin one")),
    ),
    Choice(
        name="bridge_rule", label="At the saddle", example="gaps", options=EVEN, group=WIDTHS,
    ),
    Number(
        name="string_spread_bridge", label="Outer strings apart at the saddle", symbol="w_s",
        unit="mm", decimals=2, lowest=10, highest=150, example=54, group=WIDTHS,
    ),
    Choice(
        name="rule", label="Rule in hand", group=MARKING, example="0.1 mm",
        options=tuple((name, name) for name in GRADUATIONS_MM),
        help="The finest graduation that you can mark to.",
    ),
    Number(
        name="fret_height", label="Fret height over the board", symbol="f", unit="mm",
        decimals=2, lowest=0, highest=2.5, example=1.05, group=NUT,
        help="At the first fret. 0 where a fret stands before the nut.",
    ),
    Number(
        name="nut_height", label="String over the fret plane at the nut", symbol="h_t", unit="mm",
        decimals=2, lowest=0, highest=3, example=0.1, group=NUT,
        help="The thin leaf under the treble string; strings between lie on even steps.",
    ),
    Number(
        name="nut_height_bass", label="The same under the bass string", symbol="h_b", unit="mm",
        decimals=2, lowest=0, highest=3, example=0.15, group=NUT,
    ),
    Number(
        name="slot_clearance", label="Slot wider than its string by", symbol="c", unit="mm",
        decimals=2, lowest=0, highest=0.5, example=0.05, group=NUT,
    ),
    Number(
        name="wound_share", label="Wound strings lie in the nut by", symbol="q_w", unit="%",
        decimals=0, lowest=20, highest=150, example=50, group=NUT,
        help="Of their thickness.",
    ),
    Number(
        name="plain_share", label="Plain strings lie in the nut by", symbol="q_p", unit="%",
        decimals=0, lowest=20, highest=150, example=100, group=NUT,
    ),
    Number(
        name="fret_radius", label="Radius across the frets", symbol="R", unit="mm", decimals=1,
        lowest=0, highest=3000, example=400, group=NUT, help="0 for a flat board.",
    ),
    Number(
        name="board_joint", label="Board thickness in its middle", symbol="t", unit="mm",
        decimals=2, lowest=0, highest=12, example=6.4, group=NUT,
        help="From the shelf that the nut stands on. 0 where it stands on the board itself.",
    ),
    Number(
        name="blank_spare", label="To leave on the blank", symbol="z", unit="mm", decimals=1,
        lowest=0, highest=5, example=0.5, group=NUT,
    ),
    Number(
        name="scale_length", label="Scale length", symbol="S", unit="mm", decimals=2,
        lowest=250, highest=1200, example=645, group=INSTRUMENT,
    ),
    Number(
        name="frets", label="Number of frets", symbol="N", unit="1", decimals=0, whole=True,
        lowest=1, highest=36, example=20, group=INSTRUMENT,
    ),
)
# fmt: on
FOLDED = (NUT, INSTRUMENT)
