"""What the saddle-height calculation asks."""

from ..engine.declaration import Choice, Input, Number, When

ALL = When(choice="rod_and_nut", is_one_of=("set",))
READ, WANTED, SADDLE = "Read at pitch", "Wanted", "Saddle"
INSTRUMENT = "The instrument"

# fmt: off
INPUTS: tuple[Input, ...] = (
    Number(
        name="action_bass_now", label="Action at the 12th, bass, now", symbol="B", unit="mm",
        decimals=2, lowest=0.3, highest=10, example=2.7, group=READ,
        help="Fret top to underside of the string, in playing position.",
    ),
    Number(
        name="action_treble_now", label="Action at the 12th, treble, now", symbol="T", unit="mm",
        decimals=2, lowest=0.3, highest=10, example=2.0, group=READ,
    ),
    Number(
        name="first_fret_gap_bass", label="Gap over the first fret, bass, now", symbol="b_1",
        unit="mm", decimals=2, lowest=0.02, highest=2, example=0.45, group=READ,
        help="Open string; the leaf that just touches.",
    ),
    Number(
        name="first_fret_gap_treble", label="Gap over the first fret, treble, now", symbol="t_1",
        unit="mm", decimals=2, lowest=0.02, highest=2, example=0.3, group=READ,
    ),
    Number(
        name="action_bass", label="Action at the 12th, bass, wanted", symbol="B_w", unit="mm",
        decimals=2, lowest=0.3, highest=10, example=2.4, group=WANTED,
    ),
    Number(
        name="action_treble", label="Action at the 12th, treble, wanted", symbol="T_w",
        unit="mm", decimals=2, lowest=0.3, highest=10, example=1.8, group=WANTED,
    ),
    Number(
        name="relief", label="Relief under strings, as it will stay", symbol="r", unit="mm",
        decimals=2, lowest=0, highest=1.5, example=0.2, group=WANTED,
        help="Dip of the neck midway between the first fret and the body joint.",
    ),
    Choice(
        name="rod_and_nut", label="Rod and nut slots", example="stay", group=WANTED,
        options=(("stay", "Stay as they are: only the saddle is cut"),
                 ("set", "Are still to be set as well")),
    ),
    Number(
        name="relief_now", label="Relief now", symbol="r_n", unit="mm", decimals=2, lowest=0,
        highest=1.5, example=0.25, group=WANTED, when=ALL,
    ),
    Number(
        name="first_fret_gap_bass_wanted", label="Gap over the first fret, bass, wanted",
        symbol="b_w", unit="mm", decimals=2, lowest=0.02, highest=2, example=0.35, group=WANTED,
        when=ALL,
    ),
    Number(
        name="first_fret_gap_treble_wanted", label="Gap over the first fret, treble, wanted",
        symbol="t_w", unit="mm", decimals=2, lowest=0.02, highest=2, example=0.2, group=WANTED,
        when=ALL,
    ),
    Number(
        name="saddle_now", label="Saddle showing in its middle, now", symbol="w", unit="mm",
        decimals=2, lowest=0.3, highest=15, example=3.9, group=SADDLE,
        help="Crest over the bridge in front of it.",
    ),
    Number(
        name="saddle_least", label="Least that may show", symbol="w_1", unit="mm", decimals=1,
        lowest=0, highest=10, example=2.5, group=SADDLE,
    ),
    Number(
        name="saddle_most", label="Most that may show", symbol="w_2", unit="mm", decimals=1,
        lowest=0.5, highest=15, example=4.5, group=SADDLE,
    ),
    Number(
        name="scale_length", label="Scale length", symbol="S", unit="mm", decimals=2,
        lowest=300, highest=1200, example=645, group=INSTRUMENT,
    ),
    Number(
        name="body_joint_fret", label="Body joint at fret", symbol="j", unit="1", decimals=0,
        whole=True, lowest=10, highest=20, example=14, group=INSTRUMENT,
    ),
    Number(
        name="frets", label="Number of frets", symbol="N", unit="1", decimals=0, whole=True,
        lowest=12, highest=36, example=20, group=INSTRUMENT,
    ),
    Number(
        name="strings", label="Number of strings", symbol="n", unit="1", decimals=0, whole=True,
        lowest=3, highest=12, example=6, group=INSTRUMENT,
        help="Pairs count as one.",
    ),
    Number(
        name="setback_bass", label="Saddle set back beyond the scale, bass", symbol="c_b",
        unit="mm", decimals=1, lowest=-2, highest=20, example=4.5, group=INSTRUMENT,
    ),
    Number(
        name="setback_treble", label="Saddle set back beyond the scale, treble", symbol="c_t",
        unit="mm", decimals=1, lowest=-2, highest=20, example=2.5, group=INSTRUMENT,
    ),
    Number(
        name="fret_radius", label="Radius across the frets", symbol="R", unit="mm", decimals=1,
        lowest=0, highest=3000, example=400, group=INSTRUMENT, help="0 for a flat board.",
    ),
    Number(
        name="string_spread_nut", label="Outer strings apart at the nut", symbol="e_0",
        unit="mm", decimals=1, lowest=10, highest=100, example=36.5, group=INSTRUMENT,
    ),
    Number(
        name="string_spread_bridge", label="Outer strings apart at the saddle", symbol="e_s",
        unit="mm", decimals=1, lowest=10, highest=150, example=54, group=INSTRUMENT,
    ),
)
# fmt: on
