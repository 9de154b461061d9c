"""The shaft of the neck: thickness and width fret by fret, gauge settings, contour, sections."""

from ..engine.declaration import Calculator, Caution, Drawing
from ._neck_profile_drawing import draw_sections
from ._neck_profile_inputs import FOLDED, INPUTS
from ._neck_profile_proof import CHECKS, DECISIONS, EXERCISES, SOURCES
from ._neck_profile_work import CONSTANTS, TABLES, work

calculator = Calculator(
    name="neck-profile",
    title="Neck profile",
    summary="How thick and how wide the neck must be at every fret, what the thickness gauge must "
    "show before sanding and lacquer, and the points of the contour template.",
    other_words=(
        "neck thickness", "neck shape", "neck carve", "C shape", "V neck", "D shape", "template",
        "how thick is the neck", "neck too thick", "shaft", "string to edge", "neck taper",
    ),
    inputs=INPUTS,
    folded=FOLDED,
    constants=CONSTANTS,
    work=work,
    tables=TABLES,
    results=(
        "gauge_first", "gauge_second", "gauge_template", "taper", "shape_words",
        "width_template", "depth_template", "margin_nut", "margin_joint", "rod_floor",
        "stiffness_gain",
        "bare_template", "finished_first", "finished_second", "bare_cove", "width_joint",
        "spread_joint", "edge_template", "area_first", "second_moment_first",
        "second_moment_second",
    ),
    aside=(
        "bare_template", "finished_first", "finished_second", "bare_cove", "width_joint",
        "spread_joint", "edge_template", "area_first", "second_moment_first",
        "second_moment_second",
    ),
    drawings=(
        Drawing(name="sections", title="Sections of neck and board", function=draw_sections),
    ),
    cautions=(
        Caution(
            text="Draw drawknife and spokeshave so that neither hand nor belly lies where the edge "
            "goes when the wood gives way; clamp the neck. Mask on for rasp and sanding dust: "
            "mahogany, rosewood and ebony dust can cause allergies.",
        ),
        Caution(
            text="Gauge on the middle line, square to the back, and creep up on it: what sanding "
            "and a last look take off comes on top of what you meant.",
        ),
        Caution(
            text="Only {rod_floor} of wood stays under the rod's channel: carving may find it. "
            "Shallower channel or a thicker shaft.",
            only_if="0 < (rod_floor if rod_depth > 0 else 9) "
            "and (rod_floor if rod_depth > 0 else 9) < 3",
        ),
        Caution(
            text="The rod's channel comes through the back.",
            only_if="(rod_floor if rod_depth > 0 else 9) <= 0",
        ),
        Caution(
            text="An outer string lies {margin_nut} from the edge at the nut and {margin_joint} at "
            "the body joint: less than 2 mm, and it slips off the board.",
            only_if="min(margin_nut, margin_joint) < 2",
        ),
        Caution(
            text="The neck gets thinner towards the body: look over the two thicknesses.",
            only_if="growth < 0",
        ),
    ),
    validity="Exact for a straight taper of thickness and width. Section and second moment take "
    "board and shaft as one piece of one stiffness, without slots, rod or channel; a stiffer board "
    "makes the neck stiffer than told. The contour is a superellipse down from the glue face at "
    "the board's edges; a hand-carved back need not be one. Cove and heel have templates of their "
    "own.",
    sources=SOURCES,
    checks=CHECKS,
    exercises=EXERCISES,
    decisions=DECISIONS,
)  # fmt: skip
