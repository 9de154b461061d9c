"""Sources, outside checks and exercises of the neck-profile calculation."""

from typing import Any

from ..engine.declaration import Check, Decision, Exercise, Option, Slip, Source
from ..laws.neck_section import SUPERELLIPSE, shoulder_integral
from ..sources import COMMON_PRACTICE, GEOMETRY

EQUAL_DIVISION = Source(
    id="equal-division",
    title="Equal division of the octave: each fret shortens the string by the ratio 2^(1/12)",
    author="Barbour, J. M., Tuning and Temperament: A Historical Survey",
    year="1951",
    note="The ratio is a definition; the book is named from memory.",
)
MPMATH = Source(
    id="mpmath",
    title="mpmath 1.3.0, tables of fret places and sagittas, 50 digits",
    kind="library",
    note="x = S(1 - 2^(-n/12)) and s = R - sqrt(R² - (c/2)²), independently of this project.",
)
SCIPY = Source(
    id="scipy",
    title="scipy 1.18.1, integrate.quad, error below 1e-12",
    kind="library",
    note="Area, centroid and second moment of the sections as integrals over the width.",
)
SECTIONPROPERTIES = Source(
    id="sectionproperties",
    title="sectionproperties 3.10.2, sections by finite elements",
    kind="library",
    note="The same sections drawn as polygons of 800 sides with shapely 2.2.0.",
)
SOURCES = (
    GEOMETRY, COMMON_PRACTICE, EQUAL_DIVISION, SUPERELLIPSE, MPMATH, SCIPY, SECTIONPROPERTIES,
)  # fmt: skip
FULL_D: dict[str, Any] = {"fullness": 2.6, "contour": "d", "flat_share": 30, "fret_radius": 250}
FLAT_V: dict[str, Any] = {"fullness": 1.7, "fret_radius": 0}


def _section(
    where: str, inputs: dict[str, Any], fret: int, area: str, centroid: str, second: str
) -> Check:
    return Check(
        inputs=inputs, source="scipy", origin="library", where=where,
        expected={f"shaft[{fret}].area": area, f"shaft[{fret}].centroid": centroid,
                  f"shaft[{fret}].second_moment": second},
    )  # fmt: skip


def _by_elements(where: str, inputs: dict[str, Any], fret: int, **expected: str) -> Check:
    return Check(
        inputs=inputs, source="sectionproperties", origin="library", where=where,
        expected={f"shaft[{fret}].{name}": figure for name, figure in expected.items()},
        within="0.005 %", because="the polygon has 800 sides and lies inside the curve",
    )  # fmt: skip


def _integral(fullness: float, power: int, figure: str) -> Check:
    return Check(
        function=shoulder_integral, given={"fullness": fullness, "power": power},
        source="scipy", origin="library", expected={"": figure},
        where=f"special.beta, n = {fullness}, k = {power}",
    )  # fmt: skip


# fmt: off
CHECKS = (
    _integral(2, 1, "0.785398163397"),
    _integral(2.3, 2, "0.720765156355"),
    _integral(1.7, 3, "0.512176395820"),
    Check(
        inputs={"scale_length": 650, "last_fret": 22}, source="mpmath", origin="library",
        where="table of fret positions, 650 mm",
        expected={
            "board[1].from_nut": "36.481697", "board[7].from_nut": "216.177047",
            "board[9].from_nut": "263.507688", "board[20].from_nut": "445.262829",
            "board[22].from_nut": "467.599917", "second_place": "263.507688",
        },
    ),
    Check(
        inputs={"scale_length": "25.5 in", "last_fret": 23}, source="mpmath", origin="library",
        where="table of fret positions, 25.5 in in millimetres",
        expected={
            "board[5].from_nut": "162.473253", "joint_place": "359.182450",
            "last_place": "476.146438", "template_place": "162.473253",
        },
    ),
    Check(
        inputs={"neck_width_nut": 50, "board_end_width": 50, "board_joint": 10,
                "thickness_first": 24, "thickness_second": 24, "fret_radius": 101.6},
        source="mpmath", origin="library", where="R = 101.6 mm, chord 50 mm: 10 mm less 3.12380998",
        expected={"edge_template": "6.87619002", "edge_least": "6.87619002"},
    ),
    _section("645 mm scale, fret 1, fullness 2.3", {}, 1, "811.108623335", "9.560058599",
             "25431.071452946"),
    _section("the same at fret 5", {}, 5, "904.762517008", "9.939806793", "30582.382474991"),
    _section("the same at fret 9", {}, 9, "982.197559232", "10.242204092", "35168.740298646"),
    _section("flat board, fullness 1.7, fret 3", FLAT_V, 3, "805.721095097", "9.099007059",
             "25071.850139828"),
    _section("flat over 30 %, fullness 2.6, radius 250 mm, fret 9", FULL_D, 9, "1033.761158993",
             "10.814958780", "39044.364620052"),
    _by_elements("fret 1, fullness 2.3", {}, 1, area="811.1029", centroid="9.56002",
                 second_moment="25430.754"),
    _by_elements("flat over 30 %, fullness 2.6, fret 9", FULL_D, 9, area="1033.7532",
                 centroid="10.814923", second_moment="39043.896"),
)

EXERCISES = (
    Exercise(
        name="thickness-between",
        situation="A neck of {scale_length} scale is {thickness_first} thick at the first fret and "
        "{thickness_second} at fret {second_fret}, bare wood, and straight between them. Nothing "
        "will be lost in sanding. What must the gauge show at fret {template_fret}?",
        asks="gauge_template",
        draw={"scale_length": (620, 660, 1), "thickness_first": (20, 21.5, 0.1),
              "thickness_second": (22.5, 24.5, 0.1), "template_fret": (3, 6, 1)},
        fixed={"shaft_sanding": 0},
        within="0.04 mm",
        slips=(
            Slip(name="by-the-fret-number",
                 formula="thickness_first + (thickness_second - thickness_first) * "
                 "(template_fret - 1) / (second_fret - 1)",
                 why="Frets stand closer together up the neck: the thickness grows with the way, "
                 "not with the number."),
            Slip(name="from-the-nut",
                 formula="thickness_first + (thickness_second - thickness_first) * "
                 "template_place / second_place",
                 why="The first thickness stands at the first fret, not at the nut."),
        ),
    ),
    Exercise(
        name="gauge-for-the-finished-neck",
        situation="Under the hand, lacquered, the neck is to be {thickness_first} thick at the "
        "first fret. The shaft will carry {film_thickness} of lacquer and sanding will take "
        "{shaft_sanding} off it. What must the thickness gauge show when you put the file down?",
        asks="gauge_first",
        draw={"thickness_first": (19.5, 22.5, 0.1), "film_thickness": (100, 220, 5),
              "shaft_sanding": (0.15, 0.45, 0.01)},
        fixed={"thickness_is": "finished"},
        within="0.02 mm",
        slips=(
            Slip(name="film-on-both-sides",
                 formula="thickness_first - 2 * film_thickness / um_per_mm + shaft_sanding",
                 why="The board is not lacquered: there is film on the back alone."),
            Slip(name="film-added",
                 formula="thickness_first + film_thickness / um_per_mm + shaft_sanding",
                 why="The lacquer will come on top; leave the wood thinner by it."),
            Slip(name="sanding-forgotten",
                 formula="thickness_first - film_thickness / um_per_mm",
                 why="A shaft that measures right before sanding is under afterwards."),
        ),
    ),
    Exercise(
        name="margin-at-the-joint",
        situation="The board is {neck_width_nut} wide at the nut and {board_end_width} at fret "
        "{last_fret}. The outer strings are {string_spread_nut} apart at the nut and "
        "{string_spread_bridge} at the saddle; the scale is {scale_length}. How far is an outer "
        "string from the board's edge at the body joint, fret {body_joint_fret}?",
        asks="margin_joint",
        draw={"neck_width_nut": (43, 46, 0.1), "board_end_width": (55, 57, 0.1),
              "string_spread_nut": (36, 38, 0.1), "string_spread_bridge": (53, 56, 0.1),
              "scale_length": (620, 660, 1)},
        within="0.05 mm",
        slips=(
            Slip(name="both-edges", formula="width_joint - spread_joint",
                 why="That is what is left on both sides together."),
            Slip(name="spread-of-the-saddle", formula="(width_joint - string_spread_bridge) / 2",
                 why="At the joint the strings have not yet spread as far as at the saddle."),
            Slip(name="by-the-fret-number",
                 formula="(neck_width_nut + (board_end_width - neck_width_nut) * body_joint_fret / "
                 "last_fret - spread_joint) / 2",
                 why="The board widens with the way from the nut, not with the fret's number."),
        ),
    ),
)

DECISIONS = (
    Decision(
        name="will-a-string-slip-off",
        situation="The board is to be {neck_width_nut} wide at the nut and {board_end_width} at fret "
        "{last_fret}, the outer strings {string_spread_nut} apart at the nut and "
        "{string_spread_bridge} at the saddle; the scale is {scale_length}, the body joins at fret "
        "{body_joint_fret}. An outer string must keep 2 mm (0.079 in) from the edge, at the nut and "
        "at the body joint. What do you do?",
        options=(
            Option(
                words="Cut the board to these widths",
                holds="min(margin_nut, margin_joint) >= 2.12",
                why="{margin_nut} is left outside a string at the nut and {margin_joint} at the body "
                "joint: one of them is too little.",
            ),
            Option(
                words="Set the strings closer at the nut",
                holds="margin_nut <= 1.88 and margin_joint >= 2.12",
                why="At the nut {margin_nut} is left outside a string, which is enough.",
            ),
            Option(
                words="Set the strings closer at the saddle",
                holds="margin_joint <= 1.88 and margin_nut >= 2.12",
                why="At the body joint {margin_joint} is left outside a string, which is enough.",
            ),
        ),
        because="{margin_nut} is left outside a string at the nut, {margin_joint} at the body joint. "
        "Board and strings both spread with the way from the nut, not with the fret's number.",
        draw={"neck_width_nut": (40, 44, 0.1), "board_end_width": (52, 57, 0.1),
              "string_spread_nut": (36, 39.4, 0.1), "string_spread_bridge": (53, 60, 0.1)},
    ),
)
# fmt: on
