"""Where the string-spacing calculation comes from, what it is held against, its exercises."""

from ..engine.declaration import Check, Decision, Exercise, Option, Slip, Source
from ..laws.string_places import even_gap_mm
from ..sources import COMMON_PRACTICE, GEOMETRY

MPMATH = Source(
    id="mpmath-strings",
    title="mpmath 1.4.1: linear equations for even gaps, straight strings in plan, arcs by their "
    "angle",
    kind="library",
    note="One equation a gap, solved together; independent of this project.",
)
GAUGES = Source(
    id="worked-strings",
    title="Worked examples of plain steel strings: diameters in millimetres of gauges in "
    "thousandths of an inch",
    kind="library",
    note="Computed independently of this project.",
)
PINT = Source(
    id="pint",
    title="pint 0.26.2, unit definitions: one thou is 0.0254 mm",
    kind="library",
)
FRETS = Source(
    id="mpmath-frets",
    title="mpmath 1.3.0, 50 digits: places of frets, S·(1 - 2^(-n/12))",
    kind="library",
    note="Worked out independently of this project.",
)
SOURCES = (GEOMETRY, MPMATH, GAUGES, PINT, FRETS, COMMON_PRACTICE)

# fmt: off
CHECKS = (
    Check(
        inputs={}, source="mpmath-strings", origin="library",
        where="six strings, 36.5 mm apart at the nut, 54 mm at the saddle",
        expected={
            "nut_gap": "6.5557", "saddle_gap": "10.0557",
            "nut[5].place": "11.2622", "nut[4].place": "18.7579", "nut[3].place": "26.0251",
            "nut[2].place": "33.0888", "nut[1].place": "40.0000",
            "saddle[5].bridge_place": "11.2622", "saddle[3].bridge_place": "33.0251",
            "saddle[2].bridge_place": "43.5888",
            "by_fret[7].narrowest": "7.719730255202", "by_fret[7].widest": "7.719730255202",
            "by_fret[7].spread": "42.320151276", "octave_gap_least": "8.3057",
            "middles_gap_least": "6.0935", "middles_gap_most": "6.9445",
        },
    ),
    Check(
        inputs={"bridge_rule": "centres"}, source="mpmath-strings", origin="library",
        where="the same, equal middles at the saddle: gaps at frets 7 and 12",
        expected={
            "by_fret[7].narrowest": "7.566011745501", "by_fret[7].widest": "7.849037387552",
            "octave_gap_least": "8.0746", "octave_gap_most": "8.5001",
        },
    ),
    Check(
        inputs={}, source="mpmath-strings", origin="library",
        where="top of the nut: board 6.4 mm less its fall at 400 mm, fret 1.05 mm, leaf, string",
        expected={
            "nut[6].top": "7.856454987816", "nut[5].top": "7.9859839256116",
            "nut[2].top": "7.8052572203985", "nut[1].top": "7.438454987816",
            "nut[5].floor": "1.19", "nut[4].slot_depth": "0.4065",
        },
    ),
    Check(
        inputs={"gauges_in": "mil", "gauges_mil": [9, 11, 26, 42]}, source="worked-strings",
        origin="library", where="gauges of 9, 11, 26 and 42 thousandths in millimetres",
        expected={"nut[1].gauge": "0.2286", "nut[2].gauge": "0.2794", "nut[3].gauge": "0.6604",
                  "nut[4].gauge": "1.0668"},
    ),
    Check(
        inputs={"gauges_in": "mil"}, source="pint", origin="library",
        where="12 and 53 thou in millimetres",
        expected={"nut[1].gauge": "0.3048", "nut[6].gauge": "1.3462"},
    ),
    Check(
        inputs={"scale_length": 650}, source="mpmath-frets", origin="library",
        where="650 mm, frets 7 and 16 from the nut",
        expected={"by_fret[7].fret_from_nut": "216.177047",
                  "by_fret[16].fret_from_nut": "392.047329"},
    ),
    Check(
        function=even_gap_mm,
        given={"gauges_mm": (1.346, 1.067, 0.813, 0.610, 0.406, 0.305), "spread_mm": 54.0},
        source="mpmath-strings", origin="library", unit="mm",
        where="even gap of the same strings, 54 mm apart", expected={"": "10.0557"},
    ),
)

# Thin and thick halves of sets, in thousandths of an inch.
THIN = (
    (9, 11, 16), (10, 13, 17), (10, 14, 23), (11, 14, 18), (11, 15, 22), (11, 15, 23), (12, 16, 24),
    (12, 16, 25), (13, 17, 26),
)
THICK = (
    (24, 32, 42), (26, 36, 46), (28, 38, 49), (30, 39, 47), (30, 40, 50), (32, 42, 52), (32, 42, 53),
    (32, 42, 54), (34, 44, 54), (35, 45, 56),
)
SETS = tuple(
    tuple(round(mil * 0.0254, 3) for mil in (*thin, *thick))
    for thin in THIN
    for thick in THICK
    if thin[-1] < thick[0]
)
EXERCISES = (
    Exercise(
        name="even-gap",
        situation="Six strings, {gauges}, treble to bass, outer middles {string_spread_nut} apart "
        "and {edge_margin} inside the edges of the board. How wide is the gap from string to string "
        "when all gaps are equal?",
        asks="nut_gap", within="0.05 mm",
        draw={"gauges": SETS, "string_spread_nut": (33, 42, 0.1), "edge_margin": (2.5, 4, 0.1)},
        slips=(
            Slip(name="gauges-forgotten", formula="string_spread_nut / (strings_count - 1)",
                 why="That is from middle to middle. The strings themselves fill part of it."),
            Slip(name="outer-ones-whole",
                 formula="(string_spread_nut - gauge_sum) / (strings_count - 1)",
                 why="The spread runs from middle to middle: only half of each outer string lies in "
                 "it."),
            Slip(name="six-gaps",
                 formula="(string_spread_nut - gauge_sum + (gauge_bass + gauge_treble) / 2) "
                 "/ strings_count",
                 why="Six strings have five gaps between them."),
        ),
    ),
    Exercise(
        name="even-middles",
        situation="Six strings, {gauges}, treble to bass, are set by equal middles, "
        "{string_spread_nut} from the first to the last, {edge_margin} inside the edges of the board. "
        "How wide is the narrowest gap, between the two thickest?",
        asks="nut_gap_least", within="0.03 mm",
        draw={"gauges": SETS, "string_spread_nut": (33, 42, 0.1), "edge_margin": (2.5, 4, 0.1)},
        fixed={"nut_rule": "centres"},
        slips=(
            Slip(name="thickest-alone", formula="nut_pitch - gauge_bass",
                 why="The near half of each of the two reaches into the gap, not the whole of one."),
            Slip(name="middle-to-middle", formula="nut_pitch",
                 why="That is from middle to middle; half of each string comes off."),
            Slip(name="mean-gap",
                 formula="(string_spread_nut - gauge_sum + (gauge_bass + gauge_treble) / 2) "
                 "/ (strings_count - 1)",
                 why="That is the average gap. Between the thick strings there is less."),
        ),
    ),
    Exercise(
        name="leaves-for-the-file",
        situation="Frets stand {fret_height} over the board. At the nut the treble string is to lie "
        "{nut_height} over their line, the bass string {nut_height_bass}. What stack of leaves do "
        "you lay on the board for the file to touch under the bass string?",
        asks="floor_bass", within="0.01 mm",
        draw={"fret_height": (0.8, 1.5, 0.01), "nut_height": (0.04, 0.1, 0.01),
              "nut_height_bass": (0.13, 0.3, 0.01)},
        slips=(
            Slip(name="leaf-alone", formula="nut_height_bass",
                 why="The leaves stand on the board, not on a fret: the fret's height comes "
                 "first."),
            Slip(name="fret-less-leaf", formula="fret_height - nut_height_bass",
                 why="The string lies over the line of the frets: add the leaf, or it buzzes on the "
                 "first fret."),
            Slip(name="treble-leaf", formula="fret_height + nut_height",
                 why="That is for the treble string. The bass string swings wider and lies higher."),
        ),
    ),
)

DECISIONS = (
    Decision(
        name="will-the-hand-fit",
        situation="Six strings, {gauges}, treble to bass, equal gaps, are to lie {string_spread_nut} "
        "apart at the nut, outer middles, and {edge_margin} inside the edges. The customer asks at "
        "least 6 mm (0.236 in) between any two strings; the shop asks at least 2 mm (0.079 in) of "
        "board outside the bass string. What do you do?",
        options=(
            Option(
                words="Mark the nut out like this",
                holds="nut_gap >= 6.1 and bass_outside >= 2.1",
                why="{nut_gap} is left between strings and {bass_outside} outside the bass string: "
                "one of them is too little.",
            ),
            Option(
                words="Spread the strings further: the gaps are too narrow",
                holds="nut_gap <= 5.9 and bass_outside >= 2.1",
                why="{nut_gap} is left between strings, which is enough.",
            ),
            Option(
                words="Bring the strings in from the edges: the bass string would slip off",
                holds="nut_gap >= 6.1 and bass_outside <= 1.9",
                why="{bass_outside} of board lies outside the bass string, which is enough.",
            ),
        ),
        because="{nut_gap} is left between strings; outside the bass string lies {bass_outside}: the "
        "margin counts from its middle, and half the string comes off.",
        draw={"gauges": SETS, "string_spread_nut": (31, 37, 0.1), "edge_margin": (1.8, 3.6, 0.1)},
    ),
)
# fmt: on
