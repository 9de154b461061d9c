"""Sources, outside checks and exercises of the mitre calculation."""

from ..engine.declaration import Check, Decision, Exercise, Option, Slip, Source
from ..sources import COMMON_PRACTICE, GEOMETRY

EQUAL_RATIO = Source(
    id="equal-ratio",
    title="Mitre of unequal lines: all points whose distances from the two outer edges go as the "
    "widths; beside a circle that is a conic with its focus in the circle's centre",
    note="Focus and directrix of conics, any school book of geometry; checked with mpmath.",
)
SAW_SCALE = Source(
    id="saw-scale",
    title="How to draw a star, pentagon, hexagon, octagon and equilateral triangle, with the "
    "settings of the mitre saw",
    note="A woodworking page on the public web, read in a stored copy: the scale shows the angle "
    "from square; 180 over the number of sides.",
)
TANGENTS = Source(
    id="tangent-table",
    title="Table of natural tangents, degree by degree, eight decimals",
    note="A public source file that prints the table; the file's repository is not known.",
)
SYMPY = Source(
    id="sympy",
    title="sympy 1.14.0, linear equations solved with 30 digits",
    kind="library",
    note="The two inner edges as lines, and where they cross.",
)
MPMATH = Source(
    id="mpmath",
    title="mpmath 1.3.0, 30 digits",
    kind="library",
    note="Points of equal ratio found as roots of the distance from the arc's centre; their "
    "derivative; their greatest distance from the chord.",
)
SHAPELY = Source(
    id="shapely",
    title="shapely 2.2.0 and scipy 1.18.1 (optimize.brentq)",
    kind="library",
    note="A cut drawn at the wrong angle, laid against the true mitre by the end that touches; "
    "the distance of its free end.",
)
SOURCES = (
    GEOMETRY, COMMON_PRACTICE, EQUAL_RATIO, SAW_SCALE, TANGENTS, SYMPY, MPMATH, SHAPELY,
)  # fmt: skip


def _corner(width_1: float, width_2: float, corner: float) -> dict[str, float]:
    return {"width_1": width_1, "width_2": width_2, "corner_angle": corner}


def _crossing(figures: tuple[float, float, float], tip: str, mitre: str, long: str) -> Check:
    return Check(
        inputs=_corner(*figures), source="sympy", origin="library",
        where=f"{figures[0]} and {figures[1]} mm at {figures[2]}°",
        expected={"tip_along": tip, "mitre_1": mitre, "mitre_length": long},
    )  # fmt: skip


def _arc(
    figures: tuple[float, float, float], radius: float, side: str, **expected: str
) -> Check:  # fmt: skip
    return Check(
        inputs={**_corner(*figures), "joint": side, "arc_radius": radius},
        source="mpmath", origin="library", expected=expected,
        where=f"{figures[0]} and {figures[1]} mm at {figures[2]}°, arc {side}, {radius} mm",
    )  # fmt: skip


# fmt: off
CHECKS = (
    _crossing((1.5, 2.1, 90), "2.10000000000", "35.5376777919744", "2.58069758011279"),
    _crossing((1.5, 2.1, 62), "3.17596125393920", "25.2812700411396", "3.51236813083752"),
    _crossing((3, 0.8, 128), "-1.32864230746209", "113.887631641265", "3.28105019485807"),
    _crossing((0.5, 0.5, 75), "0.651612686420603", "37.5000000000000", "0.821339815852291"),
    Check(
        inputs={**_corner(1.5, 2.1, 62), "length_2": 40}, source="sympy", origin="library",
        where="1.5 and 2.1 mm at 62°: 2.81544488252266 mm off the inner edge of 40 mm",
        expected={"inner_2": "37.18455511748"},
    ),
    *(
        Check(
            inputs=_corner(2, 2, corner), source="saw-scale", origin="read",
            where=f"saw setting of a frame with {sides} equal sides",
            expected={"saw_1": setting, "saw_2": setting},
        )
        for sides, corner, setting in ((5, 108, "36"), (6, 120, "30"), (8, 135, "22.5"))
    ),
    *(
        Check(
            inputs=_corner(1, 1, corner), source="tangent-table", origin="read",
            where=f"tan {degrees}°: equal lines 1 mm wide at {corner}°",
            expected={"tip_along": tangent},
        )
        for degrees, corner, tangent in (
            (15, 150, "0.26794919"), (40, 100, "0.83909963"), (70, 40, "2.74747742"),
        )
    ),
    _arc((1.5, 2.1, 90), 55, "round", tip_along="2.12127081709", mitre_1="35.2650202832",
         mitre_length="2.59803577331", bow="-0.00313074237", start_angle="35.53767779",
         end_angle="34.9852659364"),
    _arc((1.5, 2.1, 90), 55, "hollow", tip_along="2.080294323", mitre_1="35.7935570265",
         bow="0.00282793995", end_angle="36.0431462207"),
    _arc((3, 2, 70), 30, "round", tip_along="3.52995192201", bow="-0.0534621617",
         end_angle="37.6827255191"),
    _arc((3, 2, 115), 30, "hollow", tip_along="0.706700451871", bow="0.0242837888",
         end_angle="78.5408446958"),
    _arc((6, 4, 80), 25, "round", tip_along="6.34289942226", bow="-0.2405716279",
         end_angle="36.9021090669"),
    Check(
        inputs={**_corner(6, 4, 80), "joint": "round", "arc_radius": 25, "length_2": 40},
        source="mpmath", origin="library",
        where="inner edge of that arc: 21/25 of 40 mm less 7.1474790966 mm",
        expected={"inner_2": "26.4525209034"},
    ),
    *(
        Check(
            inputs={"angle_error": error}, source="shapely", origin="library",
            where=f"1.5 and 2.1 mm at 90°, cut {error}° off",
            expected={"gap_1": first, "gap_2": second},
        )
        for error, first, second in (
            (1, "0.0439717033", "0.0444915277"), (-1, "0.0461746171", "0.0456149668"),
            (2.5, "0.1061850920", "0.1092680150"),
        )
    ),
    Check(
        inputs={}, source="shapely", origin="library",
        where="brentq: the error that opens 0.05 mm in line 1, in line 2",
        expected={"error_1": "1.08063979", "error_2": "1.09479717"},
    ),
)

EXERCISES = (
    Exercise(
        name="unequal-lines",
        situation="A bundle of lines {width_1} wide runs down into a graft whose lines are "
        "{width_2} wide, at a right angle. At what angle from square do you set the saw for the "
        "narrower bundle, so that every line meets its own?",
        asks="saw_1",
        draw={"width_1": (0.9, 1.8, 0.01), "width_2": (1.9, 2.8, 0.01)},
        fixed={"corner_angle": 90},
        within="0.5 deg",
        slips=(
            Slip(name="half-the-corner", formula="corner_angle / 2",
                 why="Half the corner suits equal lines alone; here the lines would step."),
            Slip(name="other-line", formula="saw_2",
                 why="That is the setting of the wider bundle."),
            Slip(name="cosine", formula="acos(width_1 / width_2)",
                 why="The widths are the two short sides of the triangle: tangent, not cosine."),
        ),
    ),
    Exercise(
        name="inner-edge",
        situation="Line 1, {width_1} wide, meets line 2, {width_2} wide, in a corner of "
        "{corner_angle}, both straight. Its outer edge is to be {length_1} long. How long is its "
        "inner edge?",
        asks="inner_1",
        draw={"width_1": (2.0, 4.0, 0.1), "width_2": (2.0, 4.0, 0.1),
              "corner_angle": (60, 120, 1), "length_1": (60, 120, 1)},
        within="0.1 mm",
        slips=(
            Slip(name="as-if-square", formula="length_1 - width_2",
                 why="Only in a right angle does the mitre take off just the other line's width."),
            Slip(name="mitre-taken-off", formula="length_1 - mitre_length",
                 why="The mitre runs aslant; what it takes off the edge is its run along the "
                 "line."),
            Slip(name="added", formula="length_1 + tip_along",
                 why="The inner edge begins at the inner tip, which lies along the line."),
        ),
    ),
    Exercise(
        name="gap-of-an-error",
        situation="Two straight strips of shell, {width_1} and {width_2} wide, meet at "
        "{corner_angle}. Each comes off the mitre block {angle_error} too blunt. How wide does the "
        "joint stand open at its outer tip?",
        asks="gap_both",
        draw={"width_1": (1.2, 2.0, 0.1), "width_2": (1.2, 2.0, 0.1),
              "corner_angle": (80, 110, 1), "angle_error": (0.5, 2, 0.05)},
        within="5 %",
        slips=(
            Slip(name="one-strip", formula="gap_1",
                 why="Both strips are off, and both errors open the same joint."),
            Slip(name="over-the-width",
                 formula="(width_1 + width_2) * sin(angle_error)",
                 why="The cut is longer than the strip is wide: the error swings over the whole "
                 "mitre."),
        ),
    ),
)

DECISIONS = (
    Decision(
        name="which-tip-to-shoot",
        situation="Two straight strips, {width_1} and {width_2} wide, meet at {corner_angle}. Each "
        "comes off the mitre block off by {angle_error} (plus: too blunt; minus: too sharp). The "
        "card lets the joint gape {gap_limit}. What do you do?",
        options=(
            Option(
                words="Leave both: the joint closes well enough",
                holds="gap_both <= 0.9 * gap_limit",
                why="It gapes {gap_both}, and {gap_limit} is allowed.",
            ),
            Option(
                words="Shoot a hair off both at the inner tip",
                holds="gap_both >= 1.1 * gap_limit and angle_error > 0",
                why="It gapes {gap_both}. The inner tips touch first only where the cuts are too "
                "blunt; these are off by {angle_error}.",
            ),
            Option(
                words="Shoot a hair off both at the outer tip",
                holds="gap_both >= 1.1 * gap_limit and angle_error < 0",
                why="It gapes {gap_both}. The outer tips touch first only where the cuts are too "
                "sharp; these are off by {angle_error}.",
            ),
        ),
        because="It gapes {gap_both} where {gap_limit} is allowed. Too blunt, the inner tips touch "
        "first and the outer gape; too sharp, it is the other way round.",
        draw={"width_1": (1.2, 3, 0.1), "width_2": (1.2, 3, 0.1), "corner_angle": (70, 110, 1),
              "angle_error": (-2, 2, 0.05)},
    ),
)
# fmt: on
