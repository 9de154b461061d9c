"""Arched plates on a rim: crowns, the depth of the side all round, bevels of the linings."""

from ..engine.declaration import Calculator, Caution, Drawing
from ..sources import COMMON_PRACTICE, GEOMETRY
from ._arch_drawings import draw_edges, draw_plan, draw_side
from ._arch_inputs import CUTTING, inputs
from ._arch_proof import CHECKS, EXERCISES, SOURCES
from ._arch_work import CONSTANTS, TABLES, WORK

calculator = Calculator(
    name="arch-geometry",
    title="Arch and rim",
    summary="How high an arched top and back stand, how deep the side must be at each place round "
    "the body, and at what bevel side and lining are cut.",
    other_words=(
        "dish radius", "radius dish", "sagitta", "side template", "side height", "body depth",
        "taper of the body", "lining angle", "how deep are the sides", "arch height",
        "dome", "profile the rim", "curve of the sides",
    ),
    inputs=inputs,
    folded=(CUTTING,),
    constants=CONSTANTS,
    work=WORK,
    tables=TABLES,
    results=(
        "answer", "shallowest", "deepest", "side_length", "blank_depth", "top_crown",
        "back_crown", "top_across", "back_across", "bridge_rise", "taper_angle", "taper_100",
        "top_bevel_most", "back_bevel_most", "rim_length", "area", "widest", "top_arc",
        "back_chord", "deepest_at", "shallowest_at",
    ),
    aside=(
        "taper_100", "rim_length", "area", "widest", "top_arc", "back_chord", "deepest_at",
        "shallowest_at",
    ),
    drawings=(
        Drawing(name="side", title="One side laid flat", function=draw_side),
        Drawing(name="edges", title="Curve of both edges", function=draw_edges),
        Drawing(name="plan", title="The outline, to scale", function=draw_plan),
    ),
    cautions=(
        Caution(
            text="The curve through the stations swings back or crosses the centre line somewhere: "
            "look at the plan, and look over the stations or give more of them.",
            only_if="swings > 0",
        ),
        Caution(
            text="Saw outside the line and leave the last to the dished form: the chalk decides, "
            "not the figure.",
        ),
        Caution(
            text="Rotating sanding dish and bandsaw: glasses, mask against the dust, no gloves, "
            "hands clear of the rim's underside.",
        ),
        Caution(
            text="The linings lose most at {back_bevel_most} of bevel on the back: leave enough "
            "lining for the channel.",
            only_if="back_bevel_most > 4",
        ),
    ),
    validity="Exact for plates that are pieces of a ball and meet the centre line at both blocks, "
    "top level with them. Between the stations the outline is a smooth curve: with a dozen "
    "stations on a guitar it lies within some 0.5 mm of the template. A cutaway or a corner is "
    "not covered. Depths are of the side alone, without top and back, on the side's middle line.",
    sources=(*SOURCES, GEOMETRY, COMMON_PRACTICE),
    checks=CHECKS,
    exercises=EXERCISES,
)  # fmt: skip
