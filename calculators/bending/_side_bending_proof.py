"""Outside figures that the side-bending calculation is held against, and exercises."""

from collections.abc import Mapping
from typing import Any

from ..engine.declaration import Check, Decision, Exercise, Option, Slip, Source
from ..laws.bent_strip import face_stretch_percent, inner_shrink_percent
from ._side_bending_work import wood_strength

WOOD_HANDBOOK = Source(
    id="wood-handbook-strength",
    title="Wood handbook: wood as an engineering material (FPL-GTR-282), chapter 5: modulus of "
    "rupture and of elasticity, tables 5-3b and 5-5b",
    author="Senalik, C. A., and Farber, B., USDA Forest Products Laboratory",
    year="2021",
    note="Read in a public copy of the tables. The authors are named from memory. Modulus of "
    "rupture over modulus of elasticity is taken for the stretch at which dry wood breaks.",
)
MPMATH = Source(
    id="mpmath-arcs",
    title="mpmath 1.4.1, lengths of arcs by quadrature",
    kind="library",
    note="Outer, middle and inner face as arcs of one angle, measured along and compared; worked "
    "out independently of this project.",
)
BENDING_PACK = Source(
    id="mpmath-bending-geometry",
    title="mpmath 1.3.0, worked examples of bending geometry",
    kind="library",
    note="Length of the inner over the outer face, R/(R + t), the outer one held or the middle "
    "line kept.",
)
SCIPY = Source(
    id="scipy-unloading",
    title="scipy 1.18.1, quadrature and root finding (Brent)",
    kind="library",
    note="A strip 2.1 mm thick whose fibres yield at a strain of 0.0008, bent to a curvature and "
    "let go: the moment over its layers by quadrature, less than elastic curvature. Also "
    "thicknesses found from the face lengths. Independent of this project.",
)
HOW_TO = Source(
    id="failure-strain-page",
    title="A woodworking how-to page on bending: cold dry wood breaks at about 1 % of stretch, "
    "wood at 100 °C and 33 % moisture at 2 %",
    kind="published",
    note="Read; it names no original, so it is a weak source.",
)
CHECK_SOURCES = (MPMATH, BENDING_PACK, SCIPY, HOW_TO)


def one_curve(radius: float, thickness: float, **more: Any) -> Mapping[str, Any]:
    """Inputs for one curve bent without springing back."""
    return {
        "side_thickness": thickness, "places": [["curve", radius, 0]], "spring_trial": "none",
        **more,
    }  # fmt: skip


def _arc(thickness: float, radius: float, percent: str) -> Check:
    return Check(
        inputs=one_curve(radius, thickness), source="mpmath-arcs", origin="library",
        where=f"arcs of a strip {thickness} mm thick, inside radius {radius} mm",
        expected={"stretch": percent, "shrink": percent},
    )  # fmt: skip


def _middle(thickness: float, radius: float, percent: str) -> Check:
    return Check(
        function=face_stretch_percent, source="mpmath-bending-geometry", origin="library",
        given={"thickness_mm": thickness, "radius_mm": radius}, unit="%",
        where=f"middle line kept, {thickness} mm at {radius} mm", expected={"": percent},
    )  # fmt: skip


def _held(thickness: float, radius: float, percent: str) -> Check:
    return Check(
        function=inner_shrink_percent, source="mpmath-bending-geometry", origin="library", unit="%",
        given={"thickness_mm": thickness, "radius_mm": radius, "outer_percent": 1.5},
        where=f"outer face held to 1.5 %, {thickness} mm at {radius} mm", expected={"": percent},
    )  # fmt: skip


def _unloaded(wanted: float, former: str) -> Check:
    return Check(
        inputs={
            "places": [["curve", wanted, 0]], "trial_former": 100, "trial_rest": 112.87504351192153,
        },
        source="scipy-unloading", origin="library", expected={"tight_bent": former},
        where=f"a yielding strip that rests at {wanted} mm", within="0.05 %",
        because="the rule takes the loss of curvature as the same at every radius; in the strip "
        "it grows by a hair as the bend gets tighter",
    )  # fmt: skip


def _dry(wood: str, percent: str) -> Check:
    return Check(
        inputs={"state": "dry", "wood": wood}, source="wood-handbook-strength", origin="read",
        where=f"{wood}: modulus of rupture over modulus of elasticity as printed in psi",
        expected={"allowed": percent},
    )  # fmt: skip


CHECKS = (
    _arc(2.1, 105, "0.990099009901"),
    _arc(1.8, 45, "1.960784313725"),
    _arc(1.6, 60, "1.315789473684"),
    _middle(2.5, 90, "1.3699"),
    _middle(2, 12.7, "7.2993"),
    _middle(6, 300, "0.9901"),
    _held(2.2, 50, "2.7778"),
    _held(2.5, 90, "1.2432"),
    _held(2, 12.7, "12.3095"),
    _held(6, 300, "0.4902"),
    Check(
        inputs=one_curve(50, 2.2, slat="held"), source="mpmath-bending-geometry", origin="library",
        where="behind a slat that lets 1.5 % through, 2.2 mm at 50 mm",
        expected={"stretch": "1.5", "shrink": "2.7778", "curves[curve].shrink": "2.7778"},
    ),
    Check(
        inputs=one_curve(45, 2.1), source="scipy-unloading", origin="library",
        where="thickness whose outer face is longer by 2 % at 45 mm",
        expected={"thin_to": "1.83673469", "curves[curve].may_be": "1.83673469"},
    ),
    Check(
        inputs=one_curve(45, 2.1, slat="held", most_shrink=20, held_stretch=1.5),
        source="scipy-unloading", origin="library", expected={"thin_to": "12.09375"},
        where="thickness whose inner face is shorter by 20 % at 45 mm, outer held to 1.5 %",
    ),
    _unloaded(45, "42.79966"),
    _unloaded(105, "93.76709"),
    _unloaded(170, "142.43546"),
    _dry("mahogany", "0.7666667"),
    _dry("rosewood", "0.9494382"),
    _dry("maple", "0.8633880"),
    _dry("walnut", "0.8690476"),
    Check(
        function=wood_strength, given={"wood": "mahogany"}, source="wood-handbook-strength",
        origin="read", unit="MPa", where="true mahogany at 12 %, in MPa",
        expected={"rupture": "79.3"},
    ),
    Check(
        inputs={"state": "dry", "wood": "rosewood"}, source="failure-strain-page", origin="read",
        where="cold dry wood breaks at about 1 % of stretch", expected={"allowed": "1"},
        within="0.3", because="the page says 'about' and names no wood",
    ),
)  # fmt: skip

EXERCISES = (
    Exercise(
        name="stretch-where-it-broke",
        situation="An offcut {break_thickness} thick broke over the iron, wet and hot, where its "
        "hollow face had a radius of {break_radius}. Its middle line kept its length. By how many "
        "per cent was the outer face stretched?",
        asks="break_stretch",
        within="4 %",
        draw={"break_thickness": (1.5, 2.6, 0.01), "break_radius": (35, 70, 0.1)},
        fixed={"state": "offcut", "spring_trial": "none"},
        slips=(
            Slip(
                name="whole-thickness",
                formula="break_thickness / break_radius * whole",
                why="Only half the thickness lies outside the middle line: halve it.",
            ),
            Slip(
                name="diameter-for-radius",
                formula="break_thickness / (4 * break_radius) * whole",
                why="You put in the diameter; the stretch is half the thickness over the radius.",
            ),
            Slip(
                name="no-per-cent",
                formula="break_thickness / (2 * break_radius)",
                why="That is the plain ratio. In per cent it is a hundred times as much.",
            ),
        ),
    ),
    Exercise(
        name="thin-for-the-cutaway",
        situation="An offcut of this board, {break_thickness} thick, broke wet and hot at an inside "
        "radius of {break_radius}. You go to {break_share} of the stretch it had there. The cutaway "
        "is bent to an inside radius of 45 mm (1.77 in). How thick may the side be there?",
        asks="thin_to",
        within="0.04 mm",
        draw={
            "break_thickness": (1.8, 2.4, 0.02),
            "break_radius": (50, 70, 0.5),
            "break_share": (70, 90, 1),
        },
        fixed={"state": "offcut", "places": [["cutaway", 45, 0]], "spring_trial": "none"},
        slips=(
            Slip(
                name="forgot-the-share",
                formula="break_thickness * tight_radius / break_radius",
                why="That is as thick as what broke. Keep to the share of its stretch.",
            ),
            Slip(
                name="forgot-the-radius",
                formula="break_thickness * break_share / whole",
                why="The cutaway is a tighter curve than the one it broke at: the side has to get "
                "thinner with the radius.",
            ),
            Slip(
                name="turned-over",
                formula="break_thickness * break_share / whole * break_radius / tight_radius",
                why="The radii are turned over: a tighter curve wants a thinner side.",
            ),
        ),
    ),
    Exercise(
        name="over-bend",
        situation="An offcut {side_thickness} thick, bent round a former of {trial_former} "
        "radius, came to rest at {trial_rest}. The lower bout is to rest at an inside radius of 170 mm (6.69 in). What "
        "radius do you bend it to?",
        asks="tight_bent",
        within="0.5 mm",
        draw={
            "side_thickness": (1.5, 2.6, 0.02),
            "trial_former": (97, 104, 0.5),
            "trial_rest": (106, 111, 0.5),
        },
        fixed={"places": [["lower bout", 170, 0]]},
        slips=(
            Slip(
                name="same-millimetres",
                formula="tight_radius - (trial_rest - trial_former)",
                why="A wide curve opens by many more millimetres of radius than a tight one: it "
                "is the curvature that drops by the same.",
            ),
            Slip(
                name="same-ratio",
                formula="tight_radius * trial_former / trial_rest",
                why="A wide curve opens by a larger share than a tight one: take the difference "
                "of the curvatures, not their ratio.",
            ),
            Slip(
                name="wrong-way",
                formula="mm_per_m / (mm_per_m / tight_radius - spring)",
                why="That is what a bend to the template opens to. Bend tighter, not wider.",
            ),
        ),
    ),
)

DECISIONS = (
    Decision(
        name="is-the-cutaway-too-tight",
        situation="A side {side_thickness} thick is to be bent into a cutaway of 45 mm (1.77 in) "
        "inside radius, by hand. Wet and hot this board takes {stretch_hot} of stretch, as its "
        "offcuts told. The shop thins no side below 1.2 mm (0.047 in). What do you do?",
        options=(
            Option(
                words="Bend it at this thickness",
                holds="use <= 88",
                why="It would stretch {stretch}, and it takes {allowed}.",
            ),
            Option(
                words="Thin it there first, then bend",
                holds="use >= 108 and thin_to >= 1.35",
                why="It stretches {stretch} where it takes {allowed}; a side that just bends is "
                "{thin_to} thick.",
            ),
            Option(
                words="Do not bend it: a mitre, two thin layers or a wider curve",
                holds="use >= 108 and thin_to <= 1.08",
                why="It stretches {stretch} where it takes {allowed}; a side that just bends is "
                "{thin_to} thick, which is side enough.",
            ),
        ),
        because="Bent to that radius it stretches {stretch}, and it takes {allowed}; a side that "
        "just bends is {thin_to} thick.",
        draw={"side_thickness": (1.4, 2.6, 0.02), "stretch_hot": (0.8, 3.2, 0.01)},
        fixed={"places": [["cutaway", 45, 0]], "spring_trial": "none"},
    ),
)  # fmt: skip
