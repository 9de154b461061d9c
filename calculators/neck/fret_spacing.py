"""Where the fret slots go: straight or fanned, any division of the octave, any rule in hand."""

from ..engine.declaration import (
    Calculator,
    Caution,
    Check,
    Choice,
    Column,
    Count,
    Decision,
    Drawing,
    Exercise,
    Given,
    Limit,
    Number,
    Option,
    Slip,
    Solved,
    Source,
    Step,
    Table,
    Taken,
    When,
)
from ..sources import COMMON_PRACTICE, GEOMETRY
from ._fret_spacing_drawing import draw_board

EQUAL_DIVISION = Source(
    id="equal-division",
    title="Equal division of the octave: each fret shortens the string by the same ratio 2^(1/d)",
    author="Barbour, J. M., Tuning and Temperament: A Historical Survey",
    year="1951",
    note="The ratio is a definition; the book is named from memory.",
)
RULE_OF_EIGHTEEN = Source(
    id="rule-of-eighteen",
    title="The rule of eighteen (18:17) for placing frets",
    author="Galilei, V., Dialogo della musica antica et della moderna",
    year="1581",
    note="Named from memory, page not confirmed; the arithmetic is checked with mpmath.",
)
MPMATH = Source(
    id="mpmath",
    title="mpmath 1.3.0, arbitrary-precision arithmetic, 50 digits",
    kind="library",
    note="x = S(1 - 2^(-n/12)), and 18:17, worked out independently of this project.",
)
CONCERT_PITCH = Source(
    id="iso-16",
    title="ISO 16:1975, standard tuning frequency (A4 = 440 Hz)",
    year="1975",
    note="Equal-tempered frequencies from PyTuning 0.7.3 and music21 10.5.1, which agree to 1e-11 Hz.",
)

SINGLE = When(choice="layout", is_one_of=("single",))
FANNED = When(choice="layout", is_one_of=("fanned",))
GRADUATIONS_MM = {
    "0.01 mm": 0.01,
    "0.1 mm": 0.1,
    "0.5 mm": 0.5,
    "1 mm": 1.0,
    "0.001 in": 0.0254,
    "0.01 in": 0.254,
    "1/64 in": 25.4 / 64,
    "1/32 in": 25.4 / 32,
}


def graduation_mm(rule: str) -> float:
    """The length of one graduation, in millimetres, of the rule chosen."""
    return GRADUATIONS_MM[rule]


# fmt: off
POSITION = "2 ** (-fret / divisions)"
calculator = Calculator(
    name="fret-spacing",
    title="Fret spacing",
    summary="Where each fret slot goes, how to mark it with the rule in hand, and what rounding the "
    "marks does to the pitch.",
    other_words=("fret positions", "fret calculator", "slot positions", "scale length", "fan fret",
                 "multiscale", "slanted frets", "17.817", "rule of 18"),
    inputs=(
        Choice(
            name="layout", label="Layout", group="The board", example="single",
            options=(("single", "One scale length"), ("fanned", "Fanned: two scale lengths")),
        ),
        Number(
            name="scale_length", label="Scale length", symbol="S", unit="mm", decimals=2,
            lowest=150, highest=1200, example=650, group="The board", when=SINGLE,
            help="Nut to saddle line along the centre line, before any compensation.",
        ),
        Number(
            name="bass_scale_length", label="Scale length, bass string", symbol="S_b", unit="mm",
            decimals=2, lowest=150, highest=1200, example=660, group="The board", when=FANNED,
            help="Along the outer bass string, nut to saddle line.",
        ),
        Number(
            name="treble_scale_length", label="Scale length, treble string", symbol="S_t", unit="mm",
            decimals=2, lowest=150, highest=1200, example=635, group="The board", when=FANNED,
            help="Along the outer treble string, nut to saddle line.",
        ),
        Number(
            name="square_fret", label="Fret that stays square", symbol="p", unit="1", decimals=0,
            whole=True, lowest=0, highest=36, example=7, group="The board", when=FANNED,
            help="The fret at right angles to the centre line; 0 is the nut.",
        ),
        Number(
            name="frets", label="Number of frets", symbol="N", unit="1", decimals=0, whole=True,
            lowest=1, highest=36, example=20, group="The board",
        ),
        Number(
            name="divisions", label="Divisions of the octave", symbol="d", unit="1", decimals=0,
            whole=True, lowest=5, highest=72, example=12, group="The board",
            help="12 for ordinary semitones, 24 for quarter tones.",
        ),
        Number(
            name="body_joint_fret", label="Body joint at fret", symbol="j", unit="1", decimals=0,
            whole=True, lowest=1, highest=36, example=14, group="The board",
        ),
        Number(
            name="string_spread_nut", label="Outer strings apart at the nut", symbol="w_0", unit="mm",
            decimals=2, lowest=10, highest=100, example=36, group="Widths",
            help="Centre of the bass string to centre of the treble string.",
        ),
        Number(
            name="string_spread_bridge", label="Outer strings apart at the saddle", symbol="w_s",
            unit="mm", decimals=2, lowest=10, highest=150, example=54, group="Widths",
        ),
        Number(
            name="edge_margin", label="String to board edge", symbol="e", unit="mm", decimals=2,
            lowest=0, highest=15, example=3, group="Widths",
        ),
        Choice(
            name="rule", label="Rule in hand", group="Marking", example="0.1 mm",
            options=tuple((name, name) for name in GRADUATIONS_MM),
            help="The finest graduation that you can mark to.",
        ),
    ),
    work=(
        Solved(
            name="rule_reading", label="Graduation of the rule", function=graduation_mm,
            gives=(Given(name="graduation", label="Graduation", symbol="g", unit="mm", decimals=4),),
            method="One graduation of the rule chosen, in millimetres (1 in is 25.4 mm exactly).",
            source="common-practice",
        ),
        Step(
            name="fret_ratio", label="Each fret shortens the string by the ratio", symbol="r",
            unit="1", decimals=6, formula="2 ** (1 / divisions)", source="equal-division",
        ),
        Step(
            name="divisor", label="The divisor behind the rule: the string is this many first spaces long",
            symbol="k", unit="1", decimals=6, formula="1 / (1 - 2 ** (-1 / divisions))",
            source="equal-division",
        ),
        Step(
            name="first_slot", label="First slot from the nut", symbol="x_1", unit="mm", decimals=3,
            only_if="layout == 'single'", formula="scale_length * (1 - 2 ** (-1 / divisions))",
            source="equal-division",
        ),
        Step(
            name="joint_position", label="Body-joint slot from the nut", symbol="x_j", unit="mm",
            decimals=2, only_if="layout == 'single'",
            formula="scale_length * (1 - 2 ** (-body_joint_fret / divisions))",
            source="equal-division",
        ),
        Step(
            name="joint_to_saddle", label="Body-joint slot to the saddle line", symbol="L_j", unit="mm",
            decimals=2, only_if="layout == 'single'",
            formula="scale_length * 2 ** (-body_joint_fret / divisions)", source="equal-division",
        ),
        Step(
            name="last_slot", label="Last slot from the nut", symbol="x_N", unit="mm", decimals=2,
            only_if="layout == 'single'", formula="scale_length * (1 - 2 ** (-frets / divisions))",
            source="equal-division",
        ),
        Step(
            name="flare", label="How far an outer string leaves the centre line from nut to saddle",
            symbol="f", unit="mm", decimals=3, only_if="layout == 'fanned'",
            formula="(string_spread_bridge - string_spread_nut) / 2", source="plane-geometry",
        ),
        Limit(
            holds="abs(flare) < 0.5 * min(bass_scale_length, treble_scale_length)",
            blames="string_spread_bridge", only_if="layout == 'fanned'", source="plane-geometry",
            otherwise="The strings would spread wider than they are long; check the two spreads",
            allowed="a spread much smaller than the scale length",
        ),
        Step(
            name="bass_run", label="Bass string's run along the centre line", symbol="R_b", unit="mm",
            decimals=3, only_if="layout == 'fanned'",
            formula="sqrt(bass_scale_length ** 2 - flare ** 2)", source="plane-geometry",
        ),
        Step(
            name="treble_run", label="Treble string's run along the centre line", symbol="R_t",
            unit="mm", decimals=3, only_if="layout == 'fanned'",
            formula="sqrt(treble_scale_length ** 2 - flare ** 2)", source="plane-geometry",
        ),
        Step(
            name="treble_nut_lead", label="Treble end of the nut lies past the bass end by",
            symbol="a_0", unit="mm", decimals=2, only_if="layout == 'fanned'",
            formula="(bass_run - treble_run) * (1 - 2 ** (-square_fret / divisions))",
            source="plane-geometry",
        ),
        Step(
            name="treble_saddle_lead", label="Treble end of the saddle line lies past the bass end by",
            symbol="a_s", unit="mm", decimals=2, only_if="layout == 'fanned'",
            formula="treble_nut_lead + treble_run - bass_run", source="plane-geometry",
        ),
        Step(
            name="nut_angle", label="Slant of the nut", symbol="β_0", unit="deg", decimals=2,
            only_if="layout == 'fanned'", formula="atan(treble_nut_lead / string_spread_nut)",
            source="plane-geometry",
        ),
        Step(
            name="saddle_angle", label="Slant of the saddle line", symbol="β_s", unit="deg",
            decimals=2, only_if="layout == 'fanned'",
            formula="atan(treble_saddle_lead / string_spread_bridge)", source="plane-geometry",
        ),
        Limit(
            holds="max(abs(nut_angle), abs(saddle_angle)) <= 30", blames="treble_scale_length",
            only_if="layout == 'fanned'", source="common-practice",
            otherwise="The fan slants the nut or the saddle by more than 30 degrees, which no hand can "
            "play; bring the two scale lengths together or move the square fret",
            allowed="two scale lengths that slant nut and saddle by 30 degrees or less",
        ),
    ),
    tables=(
        Table(
            name="slots", title="Slots, all measured from the nut", source="equal-division",
            rows=Count(name="fret", first="1", last="frets"), only_if="layout == 'single'",
            columns=(
                Column(name="fret", label="Fret", unit="1", decimals=0),
                Column(name="from_nut", label="From the nut", symbol="x_n", unit="mm", decimals=3,
                       formula=f"scale_length * (1 - {POSITION})"),
                Column(name="mark", label="Mark", symbol="m_n", unit="mm", decimals=2,
                       formula="round_to(from_nut, graduation)"),
                Column(name="mark_cents", label="Pitch off by the mark", unit="cents", decimals=2,
                       formula="1200 * log2((scale_length - from_nut) / (scale_length - mark))"),
                Column(name="from_previous", label="From the fret before", unit="mm", decimals=3,
                       formula=f"scale_length * {POSITION} * (2 ** (1 / divisions) - 1)"),
                Column(name="to_saddle", label="To the saddle line", unit="mm", decimals=3,
                       formula=f"scale_length * {POSITION}"),
                Column(name="stepped", label="Stepped with rounded spaces", unit="mm", decimals=2,
                       formula="round_to(from_previous, graduation)", running=True),
                Column(name="stepped_cents", label="Pitch off by stepping", unit="cents", decimals=2,
                       formula="1200 * log2((scale_length - from_nut) / (scale_length - stepped))"),
                Column(name="eighteen", label="Rule of eighteen", unit="mm", decimals=3,
                       only_if="divisions == 12", formula="scale_length * (1 - (17 / 18) ** fret)"),
                Column(name="eighteen_cents", label="Pitch off by eighteen", unit="cents", decimals=2,
                       only_if="divisions == 12",
                       formula="1200 * log2((scale_length - from_nut) / (scale_length - eighteen))"),
            ),
            note="Mark every slot from the nut. Stepping from fret to fret adds up the rounding of every "
            "space. A pitch off above zero sounds sharp.",
        ),
        Table(
            name="fan", title="Slots of the fan", source="plane-geometry",
            rows=Count(name="fret", first="0", last="frets"), only_if="layout == 'fanned'",
            columns=(
                Column(name="fret", label="Fret", unit="1", decimals=0),
                Column(name="bass_from_nut", label="Along the bass string", unit="mm", decimals=3,
                       formula=f"bass_scale_length * (1 - {POSITION})"),
                Column(name="treble_from_nut", label="Along the treble string", unit="mm", decimals=3,
                       formula=f"treble_scale_length * (1 - {POSITION})"),
                Column(name="bass_mark", label="Mark, bass", unit="mm", decimals=2,
                       formula="round_to(bass_from_nut, graduation)"),
                Column(name="treble_mark", label="Mark, treble", unit="mm", decimals=2,
                       formula="round_to(treble_from_nut, graduation)"),
                Column(name="bass_cents", label="Pitch off, bass", unit="cents", decimals=2,
                       formula="1200 * log2((bass_scale_length - bass_from_nut) / "
                               "(bass_scale_length - bass_mark))"),
                Column(name="treble_cents", label="Pitch off, treble", unit="cents", decimals=2,
                       formula="1200 * log2((treble_scale_length - treble_from_nut) / "
                               "(treble_scale_length - treble_mark))"),
                Column(name="bass_along", label="Bass end along the centre line", unit="mm", decimals=3,
                       formula=f"bass_run * (1 - {POSITION})"),
                Column(name="treble_along", label="Treble end along the centre line", unit="mm",
                       decimals=3, formula=f"treble_nut_lead + treble_run * (1 - {POSITION})"),
                Column(name="slant", label="Slant from square", unit="deg", decimals=2,
                       formula="atan((treble_along - bass_along) / (string_spread_nut + 2 * flare * "
                               f"(1 - {POSITION})))"),
            ),
            note="Mark each slot on the lines of the two outer strings, measured along each string from "
            "its own end of the nut, then join the marks and carry the line to the edges. Distances along "
            "the centre line start square from the bass end of the nut.",
        ),
    ),
    taken=(
        Taken(name="worst_mark", label="Worst pitch error from rounding the marks", unit="cents",
              decimals=2, table="slots", column="mark_cents", take="farthest from zero",
              only_if="layout == 'single'"),
        Taken(name="worst_step", label="Worst pitch error if you step from fret to fret", unit="cents",
              decimals=2, table="slots", column="stepped_cents", take="farthest from zero",
              only_if="layout == 'single'"),
        Taken(name="worst_bass_mark", label="Worst pitch error of a mark, bass", unit="cents",
              decimals=2, table="fan", column="bass_cents", take="farthest from zero",
              only_if="layout == 'fanned'"),
        Taken(name="worst_treble_mark", label="Worst pitch error of a mark, treble", unit="cents",
              decimals=2, table="fan", column="treble_cents", take="farthest from zero",
              only_if="layout == 'fanned'"),
    ),
    aside=("divisor",),
    results=(
        "first_slot", "joint_position", "joint_to_saddle", "last_slot", "worst_mark", "worst_step",
        "treble_nut_lead", "treble_saddle_lead", "nut_angle", "saddle_angle", "worst_bass_mark",
        "worst_treble_mark", "divisor",
    ),
    drawings=(Drawing(name="board", title="The board, to scale", function=draw_board),),
    cautions=(
        Caution(
            text="With this rule a mark may be off by {worst_mark}, which a careful ear hears; use a "
            "finer rule or a template.",
            only_if="abs(worst_mark) > 2 if layout == 'single' else 1 < 0",
        ),
        Caution(
            text="The body joint, fret {body_joint_fret}, lies past the last fret, {frets}: there is no "
            "slot there, only its place.",
            only_if="body_joint_fret > frets",
        ),
        Caution(
            text="These are places for an ideal string. A real string is pressed down, stretches and "
            "goes sharp: the saddle is set back for that, never the slots.",
        ),
        Caution(
            text="The slotting saw cuts as wide as its set: keep fingers off its path, clamp the board, "
            "and wear a dust mask: ebony and rosewood dust can cause allergies.",
        ),
    ),
    validity="Exact for an ideal string and an equal division of the octave. It holds for straight slots: "
    "curved or stepped frets are not covered. Pitch errors are of the slot alone.",
    sources=(EQUAL_DIVISION, RULE_OF_EIGHTEEN, MPMATH, CONCERT_PITCH, GEOMETRY, COMMON_PRACTICE),
    checks=(
        Check(
            inputs={"scale_length": 650, "frets": 22}, source="mpmath", origin="library",
            where="table of fret positions, 650 mm",
            expected={
                "slots[1].from_nut": "36.481697", "slots[2].from_previous": "34.434136",
                "slots[7].from_nut": "216.177047", "slots[13].to_saddle": "306.759152",
                "slots[15].eighteen": "374.222011", "slots[22].from_nut": "467.599917",
            },
        ),
        Check(
            inputs={"scale_length": "25.5 in", "frets": 23}, source="mpmath", origin="library",
            where="table of fret positions, 25.5 in in millimetres",
            expected={
                "slots[5].from_nut": "162.473253", "slots[12].from_nut": "323.850000",
                "slots[14].from_nut": "359.182450", "slots[17].eighteen": "402.583259",
                "slots[23].to_saddle": "171.553562",
            },
        ),
        Check(
            inputs={"scale_length": 440, "frets": 20, "body_joint_fret": 12}, source="iso-16",
            origin="library",
            where="string lengths go as frequencies turned over: a 440 mm string stopped n frets up "
            "is as many millimetres long as the note n semitones below A4 has hertz",
            expected={
                "slots[5].to_saddle": "329.627556913", "slots[9].to_saddle": "261.625565301",
                "slots[14].to_saddle": "195.997717991", "slots[20].to_saddle": "138.591315488",
            },
        ),
        Check(
            inputs={}, source="mpmath", origin="library", where="exact divisor 1/(1 - 2^(-1/12))",
            expected={"divisor": "17.8171537451058", "fret_ratio": "1.059463094359295"},
        ),
        Check(
            inputs={"scale_length": 650, "frets": 12, "body_joint_fret": 12}, source="rule-of-eighteen",
            origin="library",
            where="12 steps of 18:17 leave 0.50363626591 of the string, not half (worked out with mpmath)",
            expected={"slots[12].eighteen": "322.636427158", "slots[1].eighteen": "36.111111"},
        ),
    ),
    exercises=(
        Exercise(
            name="slot-from-nut",
            situation="A board has a scale length of {scale_length}. You mark every slot from the nut. "
            "How far from the nut is the slot of fret {frets}?",
            asks="last_slot",
            draw={"scale_length": (330, 690, 0.5), "frets": (3, 20, 1)},
            fixed={"body_joint_fret": 1},
            within="0.05 mm",
            slips=(
                Slip(name="from-the-saddle", formula="scale_length * 2 ** (-frets / divisions)",
                     why="This is the distance to the saddle line: you measured from the wrong end."),
                Slip(name="last-space-only",
                     formula="scale_length * 2 ** (-frets / divisions) * (2 ** (1 / divisions) - 1)",
                     why="This is the space from the fret before, not the distance from the nut."),
                Slip(name="rule-of-eighteen", formula="scale_length * (1 - (17 / 18) ** frets)",
                     why="The old rule of eighteen puts every fret a little too near the nut."),
                Slip(name="even-spaces", formula="scale_length / 2 * frets / divisions",
                     why="Frets are not evenly spaced: each space is shorter than the one before."),
            ),
        ),
        Exercise(
            name="joint-to-saddle",
            situation="A board of {scale_length} scale has {frets} frets; its neck joins the body at "
            "fret {body_joint_fret}. How far is the saddle line from that slot?",
            asks="joint_to_saddle",
            draw={"scale_length": (330, 690, 0.5), "frets": (17, 24, 1),
                  "body_joint_fret": (13, 16, 1)},
            within="0.1 mm",
            slips=(
                Slip(name="from-the-nut",
                     formula="scale_length * (1 - 2 ** (-body_joint_fret / divisions))",
                     why="This is the distance from the nut; the saddle line lies at the other end."),
                Slip(name="half-the-string", formula="scale_length / 2",
                     why="Half the string is left only at the octave, fret 12."),
            ),
        ),
    ),
    decisions=(
        Decision(
            name="is-the-rule-fine-enough",
            situation="You mark the {frets} slots of a board of {scale_length} scale from the nut, "
            "each to the nearest mark of a rule with marks every {rule}. No mark may put a note off by "
            "more than 2 cents. Work it out on the page: what do you do?",
            options=(
                Option(
                    words="Mark it with this rule",
                    holds="abs(worst_mark) <= 1.7",
                    why="The worst mark would be off by {worst_mark}.",
                ),
                Option(
                    words="Take a finer rule, or a template",
                    holds="abs(worst_mark) >= 2.3",
                    why="Even the worst mark is off by {worst_mark} only.",
                ),
            ),
            because="The worst mark is off by {worst_mark}. Half a mark counts most where the string "
            "left is shortest.",
            draw={"scale_length": (330, 690, 1), "frets": (12, 24, 1),
                  "rule": ("0.1 mm", "0.5 mm", "1 mm", "1/64 in", "1/32 in")},
            fixed={"body_joint_fret": 12},
        ),
    ),
)
# fmt: on
