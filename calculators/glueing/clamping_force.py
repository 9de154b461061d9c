"""Clamping a joint: how much force, how many clamps, and how evenly the caul spreads them."""

from ..engine.declaration import Calculator, Caution, Column, Drawing, Table
from ..laws.elastic_bed import HETENYI
from ..sources import COMMON_PRACTICE
from ._clamping_force_drawings import draw_pressure, draw_stack
from ._clamping_force_inputs import FOLDED, INPUTS
from ._clamping_force_proof import (
    CHECK_SOURCES,
    CHECKS,
    DECISIONS,
    EXERCISES,
    PRESSURE,
    SCREW_THREAD,
    WOOD_HANDBOOK,
)
from ._clamping_force_work import CONSTANTS, SCREW, WORK

calculator = Calculator(
    name="clamping-force",
    title="Clamping force",
    summary="Whether the clamps press a glue joint enough and evenly: force against area, clamp "
    "spacing, and what caul it takes.",
    other_words=(
        "how many clamps", "clamp pressure", "clamp spacing", "how tight", "starved joint",
        "caul thickness", "glue-up pressure", "clamp force in newtons", "screw clamp force",
        "45 degree rule", "joint not closed between the clamps",
    ),
    inputs=INPUTS,
    folded=FOLDED,
    constants=CONSTANTS,
    work=WORK,
    results=(
        "verdict", "mean_pressure", "least_pressure", "greatest_pressure", "needed_force",
        "total_force", "clamps_needed", "force_each", "row_words", "spacing_at_most", "force",
        "gain", "cone_clamps", "cone", "reach", "end_pressure", "crush", "crush_share", "area",
    ),
    aside=(
        "gain", "cone_clamps", "cone", "reach", "end_pressure", "crush", "crush_share", "area",
    ),
    tables=(
        Table(
            name="along", title="Along the joint, from an end to the middle", rows="stations",
            source="elastic-bed",
            columns=(
                Column(name="place", label="Place", unit="1", decimals=0, text=True),
                Column(name="from_end", label="From the end", unit="mm", decimals=0),
                Column(name="pressure", label="Pressure", unit="MPa", decimals=3),
                Column(name="of_mean", label="Of the mean", unit="%", decimals=0,
                       formula="pressure / mean_pressure * whole"),
                Column(name="word", label="So", unit="1", decimals=0, text=True,
                       formula="'lifts off' if pressure < 0 else 'too little' if pressure < "
                       "0.995 * pressure_low else 'too much' if pressure > 1.005 * pressure_high "
                       "else 'good'"),
            ),
            note="The other half is the mirror image. Below nought the caul would have to pull: "
            "it lifts off there.",
        ),
    ),
    drawings=(
        Drawing(name="stack", title="The joint under its clamps, and the 45 degree rule",
                function=draw_stack),
        Drawing(name="pressure", title="Pressure along the joint", function=draw_pressure),
    ),
    cautions=(
        Caution(
            text="Run it dry first, with every clamp on. A joint that only closes under force "
            "goes on pulling: fit it, do not press it.",
        ),
        Caution(
            text="Clamps slip and springs fly: glasses on, fingers out from under the jaws, long "
            "clamps held until they bite. Never lengthen a handle with a tube.",
        ),
        Caution(
            text="The pressures that books give for wood glue are for planed boards and could not "
            "be confirmed here; the glue's own data sheet goes before them.",
        ),
        Caution(
            text="Friction in the screw can easily be half or double what is put in. Squeeze the "
            "load pad once and put that in.",
            only_if=SCREW,
        ),
        Caution(
            text="Under a clamp the wood is past half of what crushes it: dents in soft tops stay.",
            only_if="crush_share > 50 and crush_share <= 100",
        ),
        Caution(
            text="The wood under the caul is so stiff that the caul is more block than beam: the "
            "figures between the clamps come out too good.",
            only_if="reach < caul_that_counts",
        ),
        Caution(
            text="The 45 degree rule asks for {cone_clamps} clamps, more than you have: the caul "
            "is thin for them.",
            only_if="cone_clamps > clamps",
        ),
    ),
    validity="Flat, well-fitting faces; the pads press over the whole width of the joint. The "
    "caul is an elastic beam on wood that presses back like a row of springs (Winkler); the part "
    "under it is not counted as stiffening, so real joints are pressed somewhat more evenly. "
    "Where the pressure comes out below nought the caul lifts off, and the rest is only near. "
    "Where the caul's reach is shorter than its thickness, beam theory flatters it. Pressure "
    "fades as clamps settle and glue squeezes out: go round and tighten again.",
    sources=(PRESSURE, HETENYI, SCREW_THREAD, WOOD_HANDBOOK, *CHECK_SOURCES, COMMON_PRACTICE),
    checks=CHECKS,
    exercises=EXERCISES,
    decisions=DECISIONS,
)  # fmt: skip
