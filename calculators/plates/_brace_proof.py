"""Outside figures that the brace calculation is held against, and exercises."""

from ..engine.declaration import Check, Decision, Exercise, Option, Slip, Source
from ..laws.wood_elastic import modulus_at_angle, modulus_gpa
from ._plates_shared import (
    BEAMS,
    COMPOSITE,
    ORTHOTROPIC,
    SYMPY_BEAMS,
    WOOD_RATIOS,
    WOOD_TABLES,
)

SECTIONS_LIBRARY = Source(
    id="sectionproperties",
    title="sectionproperties 3.10.2, cross-sections of several materials by finite elements",
    kind="library",
    note="Sections drawn as polygons and meshed; the parabola as 800 points.",
)
SCIPY_SECTION = Source(
    id="scipy-sections",
    title="scipy 1.17.1, integrate.quad: sections cut in strips, then the bent beam",
    kind="library",
    note="Centroid and second moment by quadrature at every place, and the unit-load integral by "
    "quadrature over those, independently of this project.",
)
NUMPY_ROTATION = Source(
    id="numpy-rotation",
    title="numpy 2.x: the compliance matrix of an orthotropic plate turned by its tensor rule",
    kind="library",
)
SYMPY_AREAS = Source(
    id="sympy-areas",
    title="sympy 1.14.0: area, centroid and second moment by integration of the width",
    kind="library",
)

SOURCES = (
    COMPOSITE, ORTHOTROPIC, BEAMS, WOOD_TABLES, WOOD_RATIOS, SECTIONS_LIBRARY, SCIPY_SECTION,
    SYMPY_AREAS, SYMPY_BEAMS, NUMPY_ROTATION,
)  # fmt: skip

# A brace of 10.8 GPa on 60 mm of a plate that has 1.5 GPa across its grain, brace across.
TRIED = {
    "brace_wood": "own", "brace_modulus": 10.8, "brace_width": 8, "plate_wood": "own",
    "plate_modulus_along": 10.8, "plate_modulus_across": 1.5, "grain_angle": 90,
    "plate_thickness": 2.8, "strip_width": 60,
}  # fmt: skip
HIGH = {**TRIED, "brace_shape": "rectangle", "brace_height": 15}


def _modulus(wood: str, words: str, printed: str) -> Check:
    return Check(
        function=modulus_gpa, given={"wood": wood}, expected={"": printed}, unit="GPa",
        source=WOOD_TABLES.id, where=f"{words}, 12 %, modulus of elasticity", origin="read",
    )  # fmt: skip


def _ratios(wood: str, words: str, across: str, shear: str, poisson: str) -> Check:
    return Check(
        inputs={"plate_wood": wood}, source=WOOD_RATIOS.id, where=words, origin="read",
        expected={"radial_ratio": across, "shear_ratio": shear, "poisson": poisson},
    )  # fmt: skip


def _turned(angle: float, printed: str) -> Check:
    return Check(
        function=modulus_at_angle, origin="library", source=NUMPY_ROTATION.id, unit="GPa",
        given={"along_gpa": 10.0, "radial_ratio": 0.08, "shear_ratio": 0.0625, "poisson": 0.372,
               "angle_deg": angle},
        where=f"10 GPa along, 0.8 GPa across, at {angle:g} degrees", expected={"": printed},
    )  # fmt: skip


CHECKS = (
    _modulus("sitka", "Sitka spruce", "10.82"),
    _modulus("engelmann", "Engelmann spruce", "8.96"),
    _modulus("redcedar", "Western red cedar (US)", "7.65"),
    _modulus("mahogany", "True mahogany", "10.34"),
    _modulus("sugar maple", "Sugar maple", "12.62"),
    _modulus("rosewood", "Indian rosewood", "12.27"),
    _ratios("redcedar", "Cedar, western red", "0.081", "0.087", "0.378"),
    _ratios("mahogany", "Mahogany, Honduras", "0.107", "0.066", "0.314"),
    _ratios("sugar maple", "Maple, sugar", "0.132", "0.111", "0.424"),
    _ratios("sitka", "Spruce, Sitka (from the same public transcription)", "0.078", "0.064",
            "0.372"),
    _ratios("engelmann", "Spruce, Engelmann (from the same public transcription)", "0.128",
            "0.124", "0.422"),
    _turned(30, "2.378545519"),
    _turned(45, "1.391014049"),
    _turned(60, "1.004596027"),
    Check(
        inputs={"brace_shape": "parabola"}, source=SYMPY_AREAS.id, origin="library",
        where="parabola on its chord",
        expected={"area_share": "0.6667", "centroid_share": "0.4", "inertia_share": "0.0457142857"},
    ),
    Check(
        inputs={"brace_shape": "triangle"}, source=SYMPY_AREAS.id, origin="library",
        where="triangle on its foot",
        expected={"area_share": "0.5", "centroid_share": "0.3333", "inertia_share": "0.0277777778"},
    ),
    Check(
        inputs={**HIGH, "grain_angle": 0}, source=SECTIONS_LIBRARY.id, origin="library",
        where="rectangle 8 by 15 on a plate as stiff as itself",
        expected={"stiffness_now": "85.368168", "axis_now": "5.108333"},
    ),
    Check(
        inputs=HIGH, source=SECTIONS_LIBRARY.id, origin="library", where="rectangle 8 by 15",
        expected={"stiffness_now": "41.176108", "axis_now": "8.851163"},
    ),
    Check(
        inputs={**HIGH, "brace_shape": "triangle"}, source=SECTIONS_LIBRARY.id, origin="library",
        where="triangle 8 by 15", expected={"stiffness_now": "15.696422", "axis_now": "6.008000"},
    ),
    Check(
        inputs={**TRIED, "brace_shape": "parabola", "brace_height": 13}, origin="library",
        source=SECTIONS_LIBRARY.id, where="parabola 8 by 13",
        expected={"stiffness_now": "17.0552", "axis_now": "6.3381"}, within="0.001 %",
        because="a polygon of 800 points is a hair smaller than the parabola",
    ),
    Check(
        inputs=HIGH, source=SYMPY_BEAMS.id, origin="library",
        where="2 kg at 220 mm of 400 mm on the rectangle 8 by 15 (41.17610790697683 N·m²)",
        expected={"deflection_now": "0.622464379"},
    ),
    Check(
        inputs={**HIGH, "knife_load": 1, "load_place": 100}, source=SYMPY_BEAMS.id,
        origin="library", where="1 kg at 100 mm of 400 mm on the same",
        expected={"deflection_now": "0.178622698"},
    ),
    Check(
        inputs={**HIGH, "brace_profile": "carved"}, source=SCIPY_SECTION.id, origin="library",
        where="the carved brace of the example as rectangles 8 wide, 2 kg at 220 mm",
        expected={"deflection_now": "0.713147863", "deflection_after": "1.138687097"},
    ),
    Check(
        inputs={**HIGH, "brace_profile": "carved", "load_place": 150}, origin="library",
        source=SCIPY_SECTION.id, where="the same, 2 kg at 150 mm",
        expected={"deflection_now": "0.643896833", "deflection_after": "1.222715442"},
    ),
)  # fmt: skip

EXERCISES = (
    Exercise(
        name="planed-brace",
        situation="A square-edged brace, {brace_width} wide, stands {brace_height} high on the bench, "
        "not glued yet. You plane it to {brace_height_after}. What share of its stiffness is left?",
        asks="brace_share_left",
        draw={
            "brace_width": (5, 10, 0.5), "brace_height": (12, 17, 0.1),
            "brace_height_after": (7, 11, 0.1),
        },
        fixed={"brace_shape": "rectangle"},
        within="2 %",
        slips=(
            Slip(
                name="straight-share", formula="brace_height_after / brace_height * whole",
                why="Stiffness does not go with the height but with its cube.",
            ),
            Slip(
                name="square", formula="(brace_height_after / brace_height) ** 2 * whole",
                why="The square is for strength. Stiffness goes with the cube of the height.",
            ),
            Slip(
                name="what-was-taken",
                formula="(1 - (brace_height_after / brace_height) ** 3) * whole",
                why="That is the share taken off. What is left was asked.",
            ),
        ),
    ),
    Exercise(
        name="thinner-plate",
        situation="The sander takes 0.1 mm (0.0039 in) off a bare strip of {plate_wood}, "
        "{strip_width} wide and {plate_thickness} thick. What share of the strip's stiffness goes "
        "with it?",
        asks="bare_tenth",
        draw={
            "plate_wood": (
                "sitka", "engelmann", "redcedar", "mahogany", "sugar maple", "rosewood",
            ),
            "plate_thickness": (1.5, 4, 0.01), "strip_width": (40, 200, 10),
        },
        within="2 %",
        slips=(
            Slip(
                name="straight-share", formula="tenth / plate_thickness * whole",
                why="That is the share of the thickness. Stiffness goes with the cube: about three "
                "times as much.",
            ),
            Slip(
                name="square", formula="(1 - (1 - tenth / plate_thickness) ** 2) * whole",
                why="The square is for strength. Stiffness goes with the cube of the thickness.",
            ),
            Slip(
                name="what-is-left", formula="(1 - tenth / plate_thickness) ** 3 * whole",
                why="That is the share left. What goes was asked.",
            ),
        ),
    ),
    Exercise(
        name="glued-brace",
        situation="A square-edged brace, {brace_width} wide and {brace_height} high, is glued across "
        "the grain of a plate {plate_thickness} thick; a strip {strip_width} wide bends with it. The "
        "brace has a modulus of {brace_modulus}, the plate one of {plate_modulus_across} across its "
        "grain. How stiff are the two together?",
        asks="stiffness_now",
        draw={
            "brace_height": (9, 15, 0.1), "brace_width": (6, 9, 0.1), "strip_width": (40, 80, 1),
            "plate_thickness": (2.2, 3.2, 0.1), "brace_modulus": (9.5, 13, 0.1),
            "plate_modulus_across": (0.5, 1.0, 0.02),
        },
        fixed={"brace_shape": "rectangle", "brace_wood": "own", "plate_wood": "own",
               "plate_modulus_along": 10.8, "grain_angle": 90, "brace_height_after": 8},
        within="2 %",
        slips=(
            Slip(
                name="one-beside-the-other", formula="plate_alone + brace_alone_now",
                why="Glued together they bend about one common line: the plate pulls while the "
                "ridge is pressed. You added them as if they could slide on each other, which is "
                "hardly more than the brace alone.",
            ),
            Slip(
                name="plate-as-stiff-as-the-brace",
                formula="plate_alone * brace_gpa / plate_gpa + brace_alone_now + lever_now ** 2 "
                "* brace_gpa * strip_width * plate_thickness * brace_kn_now / "
                "(brace_gpa * strip_width * plate_thickness + brace_kn_now) / kn_mm2",
                why="Across its grain the plate has less than a tenth of the stiffness it has "
                "along: count its width down before you put the two together.",
            ),
        ),
    ),
)  # fmt: skip

DECISIONS = (
    Decision(
        name="shave-it-or-not",
        situation="A square-edged brace ({brace_wood}), {brace_width} wide and {brace_height} high, "
        "is glued at {grain_angle} to the grain of a plate ({plate_wood}) {plate_thickness} thick; "
        "a strip {strip_width} wide bends with it. The sheet says: carve to {brace_height_after}, "
        "keep at least 75 % of the stiffness of brace and plate, and let no brace stand more than "
        "three times as high as it is wide. What do you do?",
        options=(
            Option(
                words="Carve it to {brace_height_after}",
                holds="share_left >= 78 and brace_height_after <= 2.85 * brace_width",
                why="At that height {share_left} of the stiffness would be left, on a foot of "
                "{brace_width}.",
            ),
            Option(
                words="Stop higher: that would take too much",
                holds="share_left <= 72 and brace_height_after <= 2.85 * brace_width",
                why="{share_left} would be left, and 75 % is asked; see how high it stands for its "
                "width.",
            ),
            Option(
                words="Ask first: so high on so narrow a foot it would lean before it bends",
                holds="brace_height_after >= 3.15 * brace_width",
                why="{brace_height_after} on a foot of {brace_width} is less than three times as "
                "high as wide.",
            ),
        ),
        because="{share_left} of the stiffness of brace and plate is left at {brace_height_after}, "
        "on a foot of {brace_width}. Wood that is gone does not come back.",
        draw={
            "brace_wood": ("sitka", "engelmann", "redcedar", "mahogany"),
            "plate_wood": ("sitka", "engelmann", "redcedar", "mahogany"),
            "brace_width": (3.2, 7, 0.1), "brace_height": (13, 15, 0.1),
            "brace_height_after": (11.5, 13, 0.1), "plate_thickness": (2.4, 3.2, 0.1),
            "strip_width": (50, 70, 5), "grain_angle": (30, 60, 5),
        },
        fixed={"brace_shape": "rectangle"},
    ),
)  # fmt: skip
