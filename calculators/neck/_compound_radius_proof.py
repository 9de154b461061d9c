"""Where the compound-radius calculation comes from, what it is held against, its exercises."""

from ..engine.declaration import Check, Decision, Exercise, Option, Slip, Source
from ..laws.board_radius import gauge_gap_mm
from ..sources import COMMON_PRACTICE, GEOMETRY

EQUAL_DIVISION = Source(
    id="equal-division",
    title="Equal division of the octave: x = S·(1 - 2^(-n/12))",
    note="The ratio is a definition. Places checked with mpmath 1.3.0, 50 digits.",
)
ARCS = Source(
    id="mpmath-arcs",
    title="mpmath 1.3.0: sagittas, s = R - √(R² - (c/2)²)",
    kind="library",
    note="Worked out independently of this project.",
)
CONE = Source(
    id="mpmath-cone",
    title="mpmath 1.4.1: points of the nut's circle carried on straight lines from where the strings "
    "meet; the circle through three of them",
    kind="library",
    note="Apex by solving for two lines, falls from the angle of the arc. Independent of this "
    "project.",
)
SCIPY = Source(
    id="scipy-search",
    title="scipy 1.18.1: bounded search for the highest place over a chord, root finding for the "
    "block with the least worst gap",
    kind="library",
    note="Set up apart from this project, on arcs from mpmath.",
)
SOURCES = (GEOMETRY, EQUAL_DIVISION, ARCS, CONE, SCIPY, COMMON_PRACTICE)


def _sagitta(radius: float, chord: float, printed: str) -> Check:
    """A cylinder as wide as the chord at the nut, 3.5 mm of it outside each outer string."""
    return Check(
        inputs={"shape": "cylinder", "fret_radius": radius, "string_spread_nut": chord - 7},
        source="mpmath-arcs", origin="library", where=f"radius {radius} mm, chord {chord} mm",
        expected={"nut_fall": printed, "by_fret[0].edge_fall": printed},
    )  # fmt: skip


# fmt: off
CHECKS = (
    _sagitta(150, 50, "2.09800542"),
    _sagitta(241.3, 50, "1.29856250"),
    _sagitta(304.8, 50, "1.02699264"),
    _sagitta(254, 100, "4.96988134"),
    Check(
        inputs={"scale_length": 650, "frets": 22}, source="equal-division", origin="library",
        where="places of frets, 650 mm, mpmath 50 digits",
        expected={"by_fret[7].from_nut": "216.177047", "by_fret[20].from_nut": "445.262829",
                  "last_slot": "467.599917"},
    ),
    Check(
        inputs={}, source="mpmath-cone", origin="library",
        where="400 mm at the nut, strings 36.5 and 54 mm apart, 645 mm",
        expected={
            "octave_radius": "495.890410958904", "end_radius": "531.373648292712",
            "saddle_radius": "591.780821917808", "by_fret[7].radius": "463.782479737120",
            "apex": "1345.285714285714", "strings_meet": "1345.285714285714",
            "nut_fall": "0.591765858539", "end_fall": "0.724772996686",
            "gauge_gap": "-0.197710429476",
        },
    ),
    Check(
        inputs={"gauge_radius": 500, "gauge_fret": 12}, source="mpmath-cone", origin="library",
        where="a gauge of 500 mm laid on at fret 12 of that board",
        expected={"gauge_gap": "0.005667911282"},
    ),
    Check(
        inputs={}, source="scipy-search", origin="library",
        where="the best single block for that board, over nut and 20 frets",
        expected={"one_block_radius": "472.338445010", "one_block_gap": "0.0907336662"},
    ),
    Check(
        inputs={"shape": "ends", "fret_radius": 250, "radius_end": 400}, source="scipy-search",
        origin="library", where="250 mm at the nut, 400 mm at fret 20",
        expected={"hump": "0.006025331", "hump_at": "195.0345", "one_block_radius": "325.631371958",
                  "one_block_gap": "0.2207328043"},
    ),
    Check(
        inputs={"shape": "cylinder"}, source="scipy-search", origin="library",
        where="cylinder of 400 mm: hump under a string that runs outwards",
        expected={"hump": "0.011275067", "hump_at": "220.9630"},
    ),
    Check(
        function=gauge_gap_mm,
        given={"board_radius_mm": 406.4, "gauge_radius_mm": 254.0, "width_mm": 100.0},
        source="mpmath-arcs", origin="library", unit="mm",
        where="3.08751569 less 4.96988134, two sagittas over 100 mm",
        expected={"": "-1.88236565"},
    ),
)

EXERCISES = (
    Exercise(
        name="edges-fall",
        situation="The outer strings lie {string_spread_nut} apart at the nut, {edge_margin} inside "
        "the board's edges. The board is rounded to {fret_radius}. How far do its edges lie below "
        "its middle there?",
        asks="nut_fall", within="3 %",
        draw={"fret_radius": (250, 500, 5), "string_spread_nut": (30, 45, 0.1),
              "edge_margin": (2.5, 4.5, 0.1)},
        slips=(
            Slip(name="whole-width", formula="width_nut ** 2 / (2 * fret_radius)",
                 why="You put in the whole width. The board falls from its middle: take half of "
                 "it."),
            Slip(name="strings-only", formula="string_spread_nut ** 2 / (8 * fret_radius)",
                 why="That is the fall under the outer strings. The edge lies further out."),
            Slip(name="diameter", formula="width_nut ** 2 / (16 * fret_radius)",
                 why="You halved once too often: it is half the width squared over twice the "
                 "radius."),
        ),
    ),
    Exercise(
        name="radius-at-the-end",
        situation="Radius {fret_radius} at the nut, strings {string_spread_nut} apart there and "
        "{string_spread_bridge} at the saddle, {scale_length} away. The board is to run straight "
        "under every string. What radius has it at fret {frets}?",
        asks="end_radius", within="1 %",
        draw={"string_spread_nut": (33, 38, 0.1), "string_spread_bridge": (50, 60, 0.1),
              "fret_radius": (250, 450, 5), "frets": (18, 21, 1)},
        slips=(
            Slip(name="at-the-saddle",
                 formula="fret_radius * string_spread_bridge / string_spread_nut",
                 why="That is the radius at the saddle. The last fret lies well before it."),
            Slip(name="by-fret-number",
                 formula="fret_radius + (saddle_radius - fret_radius) * frets / 24",
                 why="Radius grows with the distance, not with the number of the fret."),
            Slip(name="spread-added",
                 formula="fret_radius + string_spread_bridge - string_spread_nut",
                 why="Radius goes in proportion to the spread, it does not grow by the same "
                 "millimetres."),
        ),
    ),
    Exercise(
        name="gauge-on-the-nut",
        situation="At the nut the board has a radius of {fret_radius}. The outer strings will lie "
        "{string_spread_nut} apart there, {edge_margin} inside its edges. By mistake you lay the "
        "gauge of {gauge_radius} on it. What leaf goes in under the gauge's middle?",
        asks="gauge_leaf", within="5 %",
        draw={"fret_radius": (370, 500, 10), "gauge_radius": (220, 330, 5),
              "string_spread_nut": (33, 40, 0.5), "edge_margin": (2.5, 4, 0.1)},
        slips=(
            Slip(name="gauge-alone", formula="gauge_width ** 2 / (8 * gauge_radius)",
                 why="That is the hollow of the gauge itself. The board fills most of it."),
            Slip(name="radii-subtracted",
                 formula="gauge_width ** 2 / (8 * (gauge_board - gauge_radius))",
                 why="Do not take the radii from each other, but the two falls."),
            Slip(name="diameters",
                 formula="gauge_width ** 2 / 16 * (1 / gauge_radius - 1 / gauge_board)",
                 why="You put in diameters; both falls are reckoned with radii."),
        ),
    ),
)

DECISIONS = (
    Decision(
        name="where-to-sand",
        situation="A board is to have a radius of {gauge_radius} all along. By the set of gauges it "
        "now has {fret_radius}. At the nut the outer strings will lie {string_spread_nut} apart, "
        "{edge_margin} inside its edges. The right gauge may stand off by {gap_allowed}. What do you "
        "do at the nut?",
        options=(
            Option(
                words="Leave it: it is near enough",
                holds="gauge_leaf <= 0.88 * gap_allowed",
                why="The right gauge would stand off by {gauge_leaf}, and {gap_allowed} is allowed.",
            ),
            Option(
                words="Sand along the middle: the board is too round",
                holds="gauge_gap >= 1.12 * gap_allowed",
                why="A board of {fret_radius} is flatter than {gauge_radius}, or so near that the "
                "gauge stands off by {gauge_leaf} only.",
            ),
            Option(
                words="Sand along the edges: the board is too flat",
                holds="gauge_gap <= -1.12 * gap_allowed",
                why="A board of {fret_radius} is rounder than {gauge_radius}, or so near that the "
                "gauge stands off by {gauge_leaf} only.",
            ),
        ),
        because="Out to its edges a board of {fret_radius} and one of {gauge_radius} differ by "
        "{gauge_leaf}, and {gap_allowed} is allowed. The smaller radius falls more.",
        draw={"fret_radius": (250, 500, 5), "gauge_radius": (300, 450, 10),
              "string_spread_nut": (33, 40, 0.5), "edge_margin": (2.5, 4, 0.1),
              "gap_allowed": (0.04, 0.12, 0.01)},
        fixed={"shape": "cylinder"},
    ),
)
# fmt: on
