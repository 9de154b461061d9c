"""Kerfed lining: how many kerfs, how far apart and how deep, for every curve of the body."""

from ..engine.declaration import Calculator, Caution, Column, Drawing, Table
from ..laws.bent_strip import BENT_STRIP
from ..sources import COMMON_PRACTICE, GEOMETRY
from ._kerf_spacing_drawings import draw_map, draw_teeth
from ._kerf_spacing_inputs import FOLDED, INPUTS
from ._kerf_spacing_proof import CHECK_SOURCES, CHECKS, DECISIONS, ELEMENTS, EXERCISES, WEDGES
from ._kerf_spacing_work import CONSTANTS, WORK

OPEN = "kerf_width - kerf_spacing * mouth_depth / (radius - web / 2)"
BEHIND = "radius - sqrt(radius ** 2 - (flat / 2) ** 2)"
STRETCH = "web * kerf_spacing / (2 * hinge * (radius - web / 2)) * whole"
WIDEST = (
    "min((kerf_width - mouth_left) * (radius - web / 2) / mouth_depth, "
    "kerf_width + 2 * sqrt(2 * radius * gap_allowed - gap_allowed ** 2), "
    "2 * web_stretch / whole * (kerf_width + hinge_share * web) * (radius - web / 2) / web)"
)

calculator = Calculator(
    name="kerf-spacing",
    title="Kerf spacing",
    summary="How far apart and how deep to saw a lining so that it goes round every curve: kerfs "
    "that do not close too soon, teeth that lie against the side, webs that hold.",
    other_words=(
        "kerfed lining", "kerfing", "how far apart are the saw cuts", "kerf bending",
        "lining will not bend", "lining snaps", "kerfs close up", "teeth", "how deep to saw",
        "reverse kerfing", "saw kerf calculator",
    ),
    inputs=INPUTS,
    folded=FOLDED,
    constants=CONSTANTS,
    work=WORK,
    results=(
        "verdict", "widest", "kerf_depth", "closes_radius", "mouth", "sag", "stretch",
        "waist_words", "close_spacing", "sag_spacing", "web_spacing", "web_may_be", "turn",
        "even_stretch", "waist_mouth", "waist_sag", "waist_stretch",
    ),
    aside=(
        "close_spacing", "sag_spacing", "web_spacing", "web_may_be", "turn", "even_stretch",
        "waist_mouth", "waist_sag", "waist_stretch",
    ),
    tables=(
        Table(
            name="curves", title="Every curve where kerfs close", rows="places",
            source="wedge-geometry",
            columns=(
                Column(name="place", label="Place", unit="1", decimals=0, text=True),
                Column(name="radius", label="Radius", symbol="R", unit="mm", decimals=1),
                Column(name="length", label="Length", unit="mm", decimals=0),
                Column(name="kerfs", label="Kerfs in it", unit="1", decimals=0,
                       formula="ceil(length / radius * (radius - web / 2) / kerf_spacing - 1e-9)"),
                Column(name="open", label="Mouth left open", unit="mm", decimals=2, formula=OPEN),
                Column(name="behind", label="Gap behind a tooth", unit="mm", decimals=3,
                       formula=BEHIND),
                Column(name="web_stretches", label="Web stretches", unit="%", decimals=2,
                       formula=STRETCH),
                Column(name="at_most", label="Spacing at most", unit="mm", decimals=2,
                       formula=WIDEST),
                Column(name="to_close", label="Kerfs that just close", unit="1", decimals=1,
                       formula="length / radius * mouth_depth / (kerf_width - mouth_left)"),
                Column(name="word", label="So far", unit="1", decimals=0, text=True,
                       formula="'kerfs close' if open < mouth_left - 0.0005 else "
                       "'web breaks' if web_stretches > 1.005 * web_stretch else "
                       "'teeth too long' if behind > gap_allowed + 0.0005 else 'goes'"),
            ),
            note="A mouth below nought cannot be: the kerfs close before the curve is made, and "
            "the web is torn off the side. 'Kerfs that just close' are spread over the length of "
            "the curve.",
        ),
    ),
    drawings=(
        Drawing(name="teeth", title="The lining in the tightest curve, to scale",
                function=draw_teeth),
        Drawing(name="map", title="Spacing against radius: what each limit allows",
                function=draw_map),
    ),
    cautions=(
        Caution(
            text="The kerfing saw takes a fingertip: strip on its sled, push block, never reach "
            "behind the blade. Unplug it before you set the stop. Glasses and dust extraction on.",
        ),
        Caution(
            text="Try an offcut first: bend it dry to the template. Figures for the web are for "
            "straight grain; one short-grained tooth and it parts there.",
        ),
        Caution(
            text="At the waist the foot of the kerf is stretched, and a sharp saw corner raises "
            "that by a fifth or more: damp and warm the web there.",
            only_if="waist_stretch > 0.5 * web_stretch",
        ),
        Caution(
            text="A web under 0.4 mm falls apart in the hand: tape the glueing face.",
            only_if="web < 0.4",
        ),
    ),
    validity="Teeth are taken as stiff blocks that turn about the middle of the web, on a circle "
    "at every place. How far the bend reaches into a tooth comes from finite elements of mahogany "
    "(web 0.4 to 1 mm, spacing 4 to 6 mm), and is good to some 5 % there, 15 % beyond. The gap "
    "behind a tooth is that of stiff teeth touching with their ends; clips close part of it. "
    "Glue in the kerfs and a lining wedge-shaped in section are left out.",
    sources=(WEDGES, BENT_STRIP, ELEMENTS, *CHECK_SOURCES, GEOMETRY, COMMON_PRACTICE),
    checks=CHECKS,
    exercises=EXERCISES,
    decisions=DECISIONS,
)  # fmt: skip
