"""Sources, outside checks and exercises of the inlay calculation."""

from typing import Any

from ..engine.declaration import Check, Decision, Exercise, Option, Slip, Source
from ..sources import COMMON_PRACTICE, GEOMETRY

SHELL_CURVE = Source(
    id="shell-curve",
    title="Flat slab out of a curved sheet: the sheet's thickness less its hollow over the slab's "
    "length; over a shorter length the hollow goes with the square",
    note="Plane geometry of shallow arcs.",
)
SAGITTA = Source(
    id="sagitta-table",
    title="mpmath 1.3.0, table of sagittas, s = R - sqrt(R² - (c/2)²)",
    kind="library",
    note="Worked out independently of this project.",
)
MPMATH = Source(
    id="mpmath",
    title="mpmath 1.3.0, 30 digits",
    kind="library",
    note="Radius between nut and last fret in proportion to the way, slots at S(1 - 2^(-n/12)), "
    "and the sagittas there.",
)
SHAPELY = Source(
    id="shapely",
    title="shapely 2.2.0, plane shapes",
    kind="library",
    note="The pocket as a rectangle turned about the round's centre; its lowest corner over the "
    "board's underside.",
)
SCIPY = Source(
    id="scipy",
    title="scipy 1.18.1, optimize.brentq",
    kind="library",
    note="The length at which the corners of a rectangle that touches the inner wall reach the "
    "outer one.",
)
SOURCES = (GEOMETRY, COMMON_PRACTICE, SHELL_CURVE, SAGITTA, MPMATH, SHAPELY, SCIPY)
STRIP: dict[str, Any] = {"work": "strip"}
ENDS: dict[str, Any] = {
    "board_shape": "ends", "fret_radius": 300, "radius_end": 500, "scale_length": 645,
    "frets": 20, "inlay_fret": 12, "piece_width": 40, "piece_length": 20,
}  # fmt: skip

# fmt: off
CHECKS = (
    *(
        Check(
            inputs={"fret_radius": radius, "piece_width": 50}, source="sagitta-table",
            origin="library", where=f"R = {radius} mm, chord 50 mm", expected={"edge_fall": fall},
        )
        for radius, fall in (
            (101.6, "3.12380998"), (150, "2.09800542"), (241.3, "1.29856250"),
            (304.8, "1.02699264"),
        )
    ),
    *(
        Check(
            inputs={**STRIP, "curve_radius": radius, "strip_piece": chord},
            source="sagitta-table", origin="library",
            where=f"R = {radius} mm, chord {chord} mm: a strip's clearance",
            expected={"clearance_needed": rise},
        )
        for radius, chord, rise in (
            (150, 100, "8.57864376"), (254, 100, "4.96988134"), (406.4, 100, "3.08751569"),
        )
    ),
    Check(
        inputs={**STRIP, "curve_radius": 6096, "strip_clearance": 0.05126334},
        source="sagitta-table", origin="library",
        where="R = 6096 mm, rise 0.05126334 mm: chord 50 mm",
        expected={"longest_straight": "50.00000"},
    ),
    Check(
        inputs=ENDS, source="mpmath", origin="library",
        where="300 mm at the nut, 500 mm at fret 20 of 645 mm, before fret 12",
        expected={"round_radius": "437.11439969222", "flat_radius": "446.16749706718",
                  "edge_fall": "0.457785842974", "fall_along": "0.0092982864853"},
    ),
    Check(
        inputs={**ENDS, "fret_radius": 500, "radius_end": 320, "inlay_fret": 1},
        source="mpmath", origin="library",
        where="500 mm at the nut, 320 mm at fret 20, before fret 1",
        expected={"round_radius": "488.55214075818", "flat_radius": "496.69992839565"},
    ),
    Check(
        inputs={"pocket_floor": "tilted", "piece_offset": 18, "piece_width": 20},
        source="shapely", origin="library",
        where="pocket 1.25 mm deep, 20 mm wide, 18 mm off the middle of a 400 mm round",
        expected={"board_under": "4.296061027265", "tilt": "2.579181051648"},
    ),
    *(
        Check(
            inputs={**STRIP, "curve_radius": radius, "strip_clearance": clearance,
                    "strip_width": width},
            source="scipy", origin="library", expected={"longest_straight": length},
            where=f"strip {width} mm, clearance {clearance} mm, outer wall {radius} mm",
        )
        for radius, clearance, width, length in (
            (120, 0.05, 1.3, "6.9274815"), (60, 0.08, 2.0, "6.1947074"),
        )
    ),
)

EXERCISES = (
    Exercise(
        name="fall-at-the-edge",
        situation="A flat board gets a radius of {fret_radius} after its pearl is in. A piece "
        "{piece_width} wide lies with its middle {piece_offset} off the centre line. By how much "
        "will the board fall at the piece's outer edge?",
        asks="edge_fall",
        draw={"fret_radius": (250, 450, 5), "piece_width": (10, 20, 0.5),
              "piece_offset": (6, 12, 0.5)},
        within="0.01 mm",
        slips=(
            Slip(name="offset-forgotten", formula="piece_width ** 2 / (8 * fret_radius)",
                 why="The round falls from the board's centre line, not from the piece's middle."),
            Slip(name="whole-width",
                 formula="(piece_offset + piece_width) ** 2 / (2 * fret_radius)",
                 why="Half the piece lies outside its middle, not all of it."),
            Slip(name="radius-once", formula="reach_out ** 2 / fret_radius",
                 why="The distance squared goes by twice the radius."),
        ),
    ),
    Exercise(
        name="least-thickness",
        situation="A block {piece_width} wide lies across the middle of a board that gets a radius "
        "of {fret_radius}. Shell is to stand {shell_proud} above the wood, levelling takes "
        "{levelled} off the middle, and {least_left} must be left at the edges. The blank is flat. "
        "How thick must it be at least?",
        asks="least_thickness",
        draw={"piece_width": (30, 44, 0.5), "fret_radius": (250, 400, 5),
              "shell_proud": (0.07, 0.2, 0.01), "levelled": (0.05, 0.2, 0.01),
              "least_left": (0.6, 0.9, 0.05)},
        within="0.03 mm",
        slips=(
            Slip(name="fall-forgotten", formula="least_left + shell_proud + levelled",
                 why="The radius takes most from the ends of the piece; that fall comes on top."),
            Slip(name="proud-forgotten", formula="least_left + levelled + edge_fall",
                 why="What stands above the wood is filed away first."),
            Slip(name="over-the-whole-width",
                 formula="least_left + shell_proud + levelled + piece_width ** 2 / "
                 "(2 * fret_radius)",
                 why="The board falls over half the width, from the centre line out."),
        ),
    ),
    Exercise(
        name="longest-strip",
        situation="A channel for shell is {strip_clearance} wider than its strip and runs round a "
        "curve of {curve_radius} at its outer wall. How long may a straight piece be and still lie "
        "in without a crack?",
        asks="longest_straight",
        draw={"strip_clearance": (0.03, 0.12, 0.001), "curve_radius": (80, 160, 0.5)},
        fixed={"work": "strip"},
        within="0.2 mm",
        slips=(
            Slip(name="half-the-piece",
                 formula="sqrt(strip_clearance * (2 * curve_radius - strip_clearance))",
                 why="That is the way from the middle of the piece to its end: half of it."),
            Slip(name="radius-once", formula="2 * sqrt(strip_clearance * curve_radius)",
                 why="The half length squared goes by twice the radius."),
        ),
    ),
)

DECISIONS = (
    Decision(
        name="is-the-shell-thick-enough",
        situation="A block {piece_width} wide is to lie across the middle of a board that gets a "
        "radius of {fret_radius}. The flat blank is {shell_thickness} thick. Glued in, the shell "
        "stands {shell_proud} above the wood, levelling takes {levelled} off the middle, and "
        "{least_left} must be left at its edges. What do you do with the blank?",
        options=(
            Option(
                words="Saw the block out of it",
                holds="left_edge >= least_left + 0.04",
                why="{left_edge} would be left at the edges (minus: it is through), and "
                "{least_left} is wanted.",
            ),
            Option(
                words="Keep it for a narrower piece: too little would be left at the edges",
                holds="left_edge >= 0.04 and left_edge <= least_left - 0.04",
                why="{left_edge} would be left at the edges (minus: it is through); {least_left} is "
                "wanted.",
            ),
            Option(
                words="Keep it for flat work: levelling would go through at the edges",
                holds="left_edge <= -0.03",
                why="{left_edge} of it would be left at the edges.",
            ),
        ),
        because="The board falls by {edge_fall} out to the edge of the block: {left_edge} is left "
        "there (minus: it is through), and {least_left} is wanted.",
        draw={"shell_thickness": (0.5, 1.8, 0.05), "piece_width": (30, 44, 1),
              "fret_radius": (250, 400, 10), "shell_proud": (0.05, 0.2, 0.01),
              "levelled": (0.05, 0.2, 0.01), "least_left": (0.5, 0.8, 0.05)},
    ),
)
# fmt: on
