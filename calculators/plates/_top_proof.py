"""Outside figures that the top's calculation is held against, and exercises."""

from typing import Any

from ..engine.declaration import Check, Exercise, Slip, Source
from ..laws.wood_elastic import strength_mpa
from ._plates_shared import (
    BEAMS,
    COMPOSITE,
    ORTHOTROPIC,
    SYMPY_BEAMS,
    WOOD_RATIOS,
    WOOD_TABLES,
)
from ._top_solved import bent_top
from ._top_work import SKEW, TIME

SCIPY_BVP = Source(
    id="scipy-bvp",
    title="scipy 1.17.1, integrate.solve_bvp (and quad for the section)",
    kind="library",
    note="The bent line solved as a boundary-value problem in two stretches joined at the couple; "
    "highest and deepest place read off 200 000 points of either stretch.",
)
SOURCES = (
    COMPOSITE, ORTHOTROPIC, SKEW, BEAMS, TIME, WOOD_TABLES, WOOD_RATIOS, SYMPY_BEAMS, SCIPY_BVP,
)  # fmt: skip

TRIED = {
    "string_tension": 700, "bridge_thickness": 9, "saddle_height": 3, "top_thickness": 2.7,
    "span": 400, "bridge_place": 190, "brace_count": 2, "brace_width": 7, "brace_height": 11,
    "brace_angle": 40, "brace_shape": "rectangle", "top_width": 280, "strip_width": 55,
    "plate_wood": "own", "plate_modulus_along": 10, "plate_modulus_across": 0.8,
    "brace_wood": "own", "brace_modulus": 11, "held_times": 1,
}  # fmt: skip


def _strength(wood: str, words: str, printed: str) -> Check:
    return Check(
        function=strength_mpa, given={"wood": wood}, expected={"": printed}, unit="MPa",
        source=WOOD_TABLES.id, where=f"{words}, 12 %, modulus of rupture", origin="read",
    )  # fmt: skip


def _bent(place: float, ends: str, **expected: str) -> Check:
    given: dict[str, Any] = {
        "couple": 10.0, "bridge_place": place, "span": 400.0, "stiffness": 16.0, "ends": ends,
    }  # fmt: skip
    return Check(
        function=bent_top, given=given, expected=expected, source=SCIPY_BVP.id, origin="library",
        where=f"10 N·m at {place:g} of 400 mm on 16 N·m², {ends}",
    )  # fmt: skip


CHECKS = (
    _strength("sitka", "Sitka spruce", "70.3"),
    _strength("engelmann", "Engelmann spruce", "64.1"),
    _strength("redcedar", "Western red cedar (US)", "51.7"),
    _strength("mahogany", "True mahogany", "79.3"),
    Check(
        function=bent_top, source=SYMPY_BEAMS.id, origin="library", unit="mm",
        given={"couple": 5.0, "bridge_place": 0.0, "span": 650.0,
               "stiffness": 10.83 * 10 * 8**3 / 12 / 1000, "ends": "hinged"},
        where="case 6, end moment of 5 N·m on a stick 10 by 8 mm, 650 mm, E 10.83 GPa",
        expected={"rise": "29.3275922", "rise_at": "274.7223"},
    ),
    _bent(130, "hinged", turn="1.631891", rise="3.621989", moment="6.75"),
    _bent(130, "clamped", turn="1.074153", rise="1.422505", moment="5.553437"),
    _bent(300, "hinged", turn="2.087984", sink="4.698205", moment="7.5"),
    _bent(300, "clamped", turn="1.174846", sink="1.607510", moment="5.3125"),
    Check(
        inputs=TRIED, source=SCIPY_BVP.id, origin="library", where="a whole top, ends hinged",
        expected={
            "couple": "9.345", "plate_gpa": "1.618834", "added": "17.326868", "axis": "6.685633",
            "stiffness": "20.170709", "turn": "0.891394", "rise": "0.873435", "sink": "0.342543",
            "moment": "4.906125", "brace_stress": "11.013024", "plate_stress": "16.261475",
        },
    ),
    Check(
        inputs={**TRIED, "ends": "clamped"}, source=SCIPY_BVP.id, origin="library",
        where="the same, ends clamped",
        expected={
            "turn": "0.666898", "rise": "0.449741", "sink": "0.245202", "moment": "4.788436",
            "brace_stress": "10.748842", "plate_stress": "15.871393",
        },
    ),
    Check(
        inputs={**TRIED, "ends": "clamped"}, source=SCIPY_BVP.id, origin="library",
        where="the same, highest and deepest place",
        expected={"rise_at": "253.968", "sink_at": "119.298"}, within="0.002",
        because="the library's points lie 0.001 mm apart",
    ),
)  # fmt: skip

EXERCISES = (
    Exercise(
        name="couple",
        situation="The strings pull with {string_tension} in all. The bridge is {bridge_thickness} "
        "thick, the saddle stands {saddle_height} above it, the top is {top_thickness} thick. "
        "With what couple do they turn the top, reckoned to the middle of the top?",
        asks="couple",
        draw={
            "string_tension": (600, 800, 5), "bridge_thickness": (8.5, 10, 0.1),
            "saddle_height": (2.5, 4.5, 0.1), "top_thickness": (2.2, 3.4, 0.1),
        },
        within="1 %",
        slips=(
            Slip(
                name="without-the-saddle",
                formula="string_tension * (bridge_thickness + top_thickness / 2) / mm_per_m",
                why="The strings pull at the top of the saddle, not at the top of the bridge.",
            ),
            Slip(
                name="down-to-the-outer-face",
                formula="string_tension * (bridge_thickness + saddle_height) / mm_per_m",
                why="The top bends about its middle: half its thickness belongs to the lever.",
            ),
            Slip(
                name="whole-thickness",
                formula="string_tension * (bridge_thickness + saddle_height + top_thickness) "
                "/ mm_per_m",
                why="The middle of the top was asked, not its inner face: take half the thickness.",
            ),
        ),
    ),
    Exercise(
        name="leaning-brace",
        situation="A brace {brace_width} wide and {brace_height} high lies at {brace_angle} to the "
        "centre line. What share of the stiffness it adds works along the strings?",
        asks="lean_share",
        draw={
            "brace_angle": (20, 60, 1), "brace_width": (6, 10, 0.1), "brace_height": (11, 15, 0.1),
        },
        within="3 %",
        slips=(
            Slip(
                name="plain-cosine", formula="cos(brace_angle) * whole",
                why="The brace bends less than the top by the square of the cosine, and pays that "
                "back by the square as well; only its length over the strip gives one back.",
            ),
            Slip(
                name="square", formula="cos(brace_angle) ** 2 * whole",
                why="That is how much less the brace bends. It also pushes back that much less.",
            ),
            Slip(
                name="sine", formula="sin(brace_angle) ** 3 * whole",
                why="The angle is to the strings: a brace along them, 0 degrees, works in full.",
            ),
        ),
    ),
    Exercise(
        name="strength-for-years",
        situation="Brace wood breaks at {brace_strength} in the short test, give or take "
        "{strength_spread}. Under a load of years {long_share} of that is left. What may you count "
        "on at the weak end?",
        asks="brace_bears_low",
        draw={"brace_strength": (55, 95, 1), "strength_spread": (12, 35, 1),
              "long_share": (50, 70, 1)},
        fixed={"brace_wood": "own"},
        within="2 %",
        slips=(
            Slip(
                name="forgot-the-years",
                formula="brace_strength * (1 - strength_spread / whole)",
                why="That is for a test of minutes. Strings pull for years.",
            ),
            Slip(
                name="forgot-the-spread", formula="brace_strength * long_share / whole",
                why="That is the mean stick. Half of all sticks bear less.",
            ),
            Slip(
                name="strong-end",
                formula="brace_strength * (1 + strength_spread / whole) * long_share / whole",
                why="You went to the strong end of the spread; the weak end was asked.",
            ),
        ),
    ),
)  # fmt: skip
