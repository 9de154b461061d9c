"""Where the string-spacing calculation comes from, what it is held against, its exercises."""

from ..engine.declaration import Check, Exercise, Slip, Source
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

EXERCISES = (
    Exercise(
        name="even-gap",
        situation="Six strings, {gauges}, treble to bass, outer middles {string_spread_nut} apart. How "
        "wide is the gap from string to string when all gaps are equal?",
        asks="nut_gap", within="1 %",
        draw={"string_spread_nut": (33, 42, 0.5)},
        fixed={"gauges": [0.305, 0.406, 0.61, 0.813, 1.067, 1.346]},
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
        situation="The same six strings are set by equal middles, {string_spread_nut} from the first "
        "to the last. How wide is the narrowest gap, between the two thickest (1.067 and 1.346 mm)?",
        asks="nut_gap_least", within="1 %",
        draw={"string_spread_nut": (33, 42, 0.5)}, fixed={"nut_rule": "centres"},
        slips=(
            Slip(name="both-whole", formula="nut_pitch - 1.067 - 1.346",
                 why="Only the near half of each string reaches into the gap."),
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
        situation="Frets stand {fret_height} over the board. The bass string is to lie "
        "{nut_height_bass} over their line at the nut. What stack of leaves do you lay on the board "
        "for the file to touch?",
        asks="floor_bass", within="0.02 mm",
        draw={"fret_height": (0.9, 1.3, 0.05), "nut_height_bass": (0.1, 0.2, 0.05)},
        slips=(
            Slip(name="leaf-alone", formula="nut_height_bass",
                 why="The leaves stand on the board, not on a fret: the fret's height comes "
                 "first."),
            Slip(name="fret-less-leaf", formula="fret_height - nut_height_bass",
                 why="The string lies over the line of the frets: add the leaf, or it buzzes on the "
                 "first fret."),
            Slip(name="string-added", formula="fret_height + nut_height_bass + gauge_bass / 2",
                 why="The floor carries the underside of the string, not its middle."),
        ),
    ),
)
# fmt: on
