"""The steps and tables of the saddle-compensation calculation."""

from ..engine.declaration import Column, Given, Said, Solved, Step, Table, Work
from ._saddle_solved import crests

work: tuple[Work, ...] = (
    Solved(
        name="crests", label="Where the crests belong", function=crests,
        gives=(
            Given(name="saddle_rows", label="Strings", unit="1", decimals=0, many=True),
            Given(name="fret_rows", label="Frets", unit="1", decimals=0, many=True),
            Given(name="shown_name", label="String shown", unit="1", decimals=0, text=True),
            Given(name="shown_frequency", label="Its pitch open", symbol="f_0", unit="Hz",
                  decimals=3),
            Given(name="needed_treble", label="Set-back wanted, first string", symbol="ΔS_1",
                  unit="mm", decimals=1),
            Given(name="needed_bass", label="Set-back wanted, last string", symbol="ΔS_n",
                  unit="mm", decimals=1),
            Given(name="line_treble", label="Straight slot that suits best, treble end",
                  symbol="ℓ_t", unit="mm", decimals=1),
            Given(name="line_bass", label="Straight slot that suits best, bass end", symbol="ℓ_b",
                  unit="mm", decimals=1),
            Given(name="worst_plain", label="Worst octave with no set-back", symbol="e_0",
                  unit="cents", decimals=1),
            Given(name="worst_slot", label="Worst octave, crests in the middle of the slot",
                  symbol="e_1", unit="cents", decimals=1),
            Given(name="worst_left", label="Worst octave, crests filed", symbol="e_2",
                  unit="cents", decimals=1),
            Given(name="worst_name", label="String of the worst octave", unit="1", decimals=0,
                  text=True),
            Given(name="worst_fret", label="Worst note of all frets, crests filed", symbol="e_3",
                  unit="cents", decimals=1),
            Given(name="nut_most", label="Farthest move of the nut", symbol="ΔN", unit="mm",
                  decimals=2),
            Given(name="past_names", label="Crests out of reach", unit="1", decimals=0,
                  text=True),
        ),
        method="Each string is brought to pitch open, pressed to each fret by the finger, its stretched "
        "length measured along the straight pieces, its pull raised by Hooke's law, and its pitch "
        "taken as that of a stiff string. The set-back is moved until the 12th fret is true (secant "
        "steps), or until the squares of all errors are least (Gauss and Newton).",
        source="varieschi-gower",
    ),
    Step(
        name="slot_slant", label="Slant of the slot as it lies", symbol="φ", unit="deg", decimals=2,
        formula="atan((setback_bass - setback_treble) / string_spread_bridge)",
        source="plane-geometry",
    ),
    Step(
        name="best_slant", label="Slant that suits these strings best", symbol="φ_b", unit="deg",
        decimals=2, formula="atan((line_bass - line_treble) / string_spread_bridge)",
        source="plane-geometry",
    ),
    Step(
        name="nut_forward", label="Nut moved towards the saddle, at the string that wants it most",
        symbol="N", unit="mm", decimals=2, formula="nut_most", source="varieschi-gower",
        only_if="aim == 'both'",
    ),
    Step(
        name="crest_move", label="For the octave you heard, move the crest back by", symbol="Δ",
        unit="mm", decimals=2, formula="scale_length * log(2) * octave_off / cents_per_octave",
        source="derived",
    ),
    Said(
        name="verdict", label="This saddle",
        cases=(
            ("aim == 'twelfth' and worst_left > octave_limit",
             "Not with this slot: with its crest as far as it may go, {worst_name} stays {worst_left} "
             "off at the 12th. A straight slot for these strings: {line_treble} behind the scale at "
             "the first, {line_bass} at the last."),
            ("aim == 'twelfth' and past_names != ''",
             "Near enough. Out of reach: {past_names}. With those crests as far as they may go, no "
             "octave is off by more than {worst_left}."),
            ("aim == 'twelfth'",
             "Every crest is within reach, and with them filed every octave is true."),
            ("past_names != ''",
             "Out of reach: {past_names}. With those crests as far as they may go, no fret is off by "
             "more than {worst_fret}, no octave by more than {worst_left}."),
            ("", "Every crest is within reach. With them filed, no fret is off by more than "
             "{worst_fret}."),
        ),
    ),
    Said(
        name="move_words", label="Heard on the instrument",
        cases=(
            ("octave_off > 0", "Sharp by {octave_off}: file so that the crest goes back by "
             "{crest_move}."),
            ("octave_off < 0", "Flat: the crest has to come forward. Minus counts towards the nut: "
             "{crest_move}."),
            ("", "True: leave it."),
        ),
    ),
)  # fmt: skip

tables = (
    Table(
        name="crest", title="String by string", rows="saddle_rows", source="varieschi-gower",
        columns=(
            Column(name="string", label="String", unit="1", decimals=0, text=True),
            Column(name="set_back", label="Crest behind the scale, wanted", symbol="ΔS",
                   unit="mm", decimals=2),
            Column(name="nut_move", label="Nut moved towards the saddle", symbol="ΔN", unit="mm",
                   decimals=2, only_if="aim == 'both'"),
            Column(name="slot_here", label="Middle of the slot", unit="mm", decimals=2,
                   formula="setback_treble + (setback_bass - setback_treble) * share"),
            Column(name="crest", label="Crest behind that middle", unit="mm", decimals=2,
                   formula="set_back - slot_here"),
            Column(name="plain", label="Octave, no set-back", unit="cents", decimals=1),
            Column(name="on_slot", label="Octave, crest in the middle", unit="cents", decimals=1),
            Column(name="filed", label="Octave, crest filed", unit="cents", decimals=1),
            Column(name="pull", label="Pull", unit="N", decimals=1),
            Column(name="nut_height", label="Over the fret plane at the nut", unit="mm",
                   decimals=2),
            Column(name="share", label="Place, treble 0, bass 1", unit="1", decimals=2),
        ),
        note="Minus: the crest stands before the middle, towards the nut. Cents above nought sound "
        "sharp.",
    ),
    Table(
        name="fret", title="The string shown, fret by fret", rows="fret_rows",
        source="morse-stiff-string",
        columns=(
            Column(name="fret", label="Fret", unit="1", decimals=0),
            Column(name="from_nut", label="From the nut", unit="mm", decimals=3,
                   formula="scale_length * (1 - 2 ** (-fret / 12))"),
            Column(name="pitch", label="Should sound", unit="Hz", decimals=3,
                   formula="shown_frequency * 2 ** (fret / 12)"),
            Column(name="rise", label="Pull rises by", unit="N", decimals=2),
            Column(name="plain", label="Off, no set-back", unit="cents", decimals=1),
            Column(name="on_slot", label="Off, crest in the middle", unit="cents", decimals=1),
            Column(name="filed", label="Off, crest filed", unit="cents", decimals=1),
        ),
    ),
)  # fmt: skip
