"""What the saddle-compensation calculation asks."""

from ..engine.declaration import Choice, Input, Number
from ._string_sets import STRINGS, densities, moduli, reference_pitch, string_inputs

LIE, SADDLE, NECK, TOUCH = "How the strings lie", "The saddle", "The neck", "Touch and ends"

inputs: tuple[Input, ...] = (
    *string_inputs,
    Number(
        name="scale_length", label="Scale length", symbol="S", unit="mm", decimals=2, lowest=250,
        highest=1200, example=645, group=STRINGS, help="As the frets are cut, without set-back.",
    ),
    Number(
        name="frets", label="Number of frets", symbol="N", unit="1", decimals=0, whole=True,
        lowest=12, highest=36, example=20, group=STRINGS,
    ),
    Number(
        name="action_bass", label="Action at the 12th, bass", symbol="A_b", unit="mm", decimals=2,
        lowest=0.5, highest=8, example=2.4, group=LIE,
        help="Gap between the fret top and the underside of the string.",
    ),
    Number(
        name="action_treble", label="Action at the 12th, treble", symbol="A_t", unit="mm",
        decimals=2, lowest=0.5, highest=8, example=1.8, group=LIE,
    ),
    Number(
        name="first_fret_gap_bass", label="Gap over the first fret, bass", symbol="g_b",
        unit="mm", decimals=2, lowest=0.1, highest=2, example=0.4, group=LIE,
        help="Open string, feelers on the crown.",
    ),
    Number(
        name="first_fret_gap_treble", label="Gap over the first fret, treble", symbol="g_t",
        unit="mm", decimals=2, lowest=0.1, highest=2, example=0.25, group=LIE,
    ),
    Choice(
        name="aim", label="Make true", example="twelfth", group=SADDLE,
        options=(("twelfth", "The octave at the 12th fret"),
                 ("frets", "All frets, as near as the saddle can"),
                 ("both", "All frets, with the nut moved as well")),
    ),
    Number(
        name="setback_treble", label="Middle of the slot behind the scale, treble", symbol="c_t",
        unit="mm", decimals=1, lowest=-5, highest=20, example=2.5, group=SADDLE,
        help="At the first string. As glued, or as you mean to glue it.",
    ),
    Number(
        name="setback_bass", label="Middle of the slot behind the scale, bass", symbol="c_b",
        unit="mm", decimals=1, lowest=-5, highest=20, example=4.5, group=SADDLE,
        help="At the last string.",
    ),
    Number(
        name="crest_reach", label="Crest may stand from the middle, at most", symbol="r_c",
        unit="mm", decimals=1, lowest=0, highest=5, example=1, group=SADDLE,
        help="Less than half the saddle's thickness: at the very edge the bone chips.",
    ),
    Number(
        name="octave_limit", label="Octave may be off by", symbol="e", unit="cents", decimals=0,
        lowest=1, highest=30, example=3, group=SADDLE,
    ),
    Number(
        name="octave_off", label="Octave heard sharp by (flat: minus)", symbol="o", unit="cents",
        decimals=1, lowest=-60, highest=60, example=4, group=SADDLE,
        help="On the instrument: pressed 12th against the harmonic. For the rule of how far to file.",
    ),
    Number(
        name="string_spread_bridge", label="Outer strings apart at the saddle", symbol="w_s",
        unit="mm", decimals=1, lowest=10, highest=150, example=54, group=SADDLE,
    ),
    Choice(
        name="shown", label="String to show fret by fret", example="last", group=SADDLE,
        options=(("last", "The last, at the bass side"), ("first", "The first, at the treble side"),
                 ("worst", "The one that fits the slot least")),
    ),
    Number(
        name="relief", label="Relief under strings", symbol="r", unit="mm", decimals=2, lowest=0,
        highest=1.5, example=0.2, group=NECK,
    ),
    Number(
        name="body_joint_fret", label="Body joint at fret", symbol="j", unit="1", decimals=0,
        whole=True, lowest=10, highest=24, example=14, group=NECK,
    ),
    Number(
        name="fret_height", label="Fret height over the board", symbol="f", unit="mm", decimals=2,
        lowest=0.3, highest=2.5, example=1.05, group=NECK,
    ),
    Number(
        name="finger_force", label="Finger presses with", symbol="F", unit="N", decimals=1,
        lowest=0, highest=30, example=4, group=TOUCH,
        help="Midway between two frets. From memory: 2 to 4 for nylon, 3 to 6 for steel. To measure, "
        "press a bench scale as you press a string.",
    ),
    Choice(
        name="ends", label="At crest and fret the string", example="over", group=TOUCH,
        options=(("over", "Runs on over them"),
                 ("hinged", "Hinges there: stiffness hardly counts"),
                 ("clamped", "Is clamped there: stiffness counts most")),
        help="The other two show how much hangs on this.",
    ),
    reference_pitch, *densities, *moduli,
)  # fmt: skip
