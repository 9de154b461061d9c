"""Ducts for wood dust: sizes that keep the dust moving, losses, the fan it takes: an estimate."""

from ..engine.declaration import Calculator, Caution, Column, Drawing, Table
from ._duct_velocity_drawings import draw_main, draw_tree
from ._duct_velocity_proof import CHECK_SOURCES, CHECKS, EXERCISES
from ._duct_velocity_work import CONSTANTS, FOLDED, INPUTS, SOURCES, WORK

calculator = Calculator(
    name="duct-velocity",
    title="Duct velocity",
    summary="An estimate, no design: ducts for wood dust that keep it moving, what they lose, "
    "and the fan that it takes. Local code and a licensed engineer decide.",
    other_words=(
        "dust extraction", "dust collector", "duct size", "pipe for the extraction",
        "chips block the pipe", "blast gates", "cfm of the dust collector", "static pressure",
        "sawdust settles in the duct", "hose diameter",
    ),
    inputs=INPUTS,
    folded=FOLDED,
    constants=CONSTANTS,
    work=WORK,
    results=(
        "verdict", "main_diameter", "velocity_low", "velocity_high", "fan_static", "flow_high",
        "fan_power", "flow_low", "fan_total", "worst_branch", "branch_loss", "main_straight",
        "main_fittings", "air_density",
    ),
    aside=(
        "flow_low", "fan_total", "worst_branch", "branch_loss", "main_straight", "main_fittings",
        "air_density",
    ),
    tables=(
        Table(
            name="ducts", title="Each branch", rows="branch_rows", source="colebrook",
            columns=(
                Column(name="number", label="No.", unit="1", decimals=0),
                Column(name="machine", label="Machine", unit="1", decimals=0, text=True),
                Column(name="flow", label="Air", unit="m3/h", decimals=0),
                Column(name="diameter", label="Duct", unit="mm", decimals=0),
                Column(name="velocity", label="Velocity", unit="m/s", decimals=1),
                Column(name="straight", label="Lost along it", unit="Pa.air", decimals=0),
                Column(name="fittings", label="Lost in hood and bends", unit="Pa.air",
                       decimals=0),
                Column(name="loss", label="Lost in all", unit="Pa.air", decimals=0),
                Column(name="throttled", label="Gate takes up", unit="Pa.air", decimals=0,
                       formula="branch_loss - loss"),
            ),
            note="Branches with less loss would draw more than their share: their gates are "
            "closed by as much as the last column says.",
        ),
    ),
    drawings=(
        Drawing(name="tree", title="The ducts, widths to one scale", function=draw_tree),
        Drawing(name="main", title="Velocity in the main against its size", function=draw_main),
    ),
    cautions=(
        Caution(
            text="An estimate, not a design and not a permit. Wood dust explodes: collectors, "
            "vents, spark traps, earthing and air that comes back follow the local code and are "
            "designed by licensed people. No sparks from grinding into this duct, ever.",
        ),
        Caution(
            text="Fine dust is judged by what is breathed, not by what the duct carries. Measure "
            "at the machines, and wear the mask that was fitted while you sand.",
        ),
        Caution(
            text="The main runs at {velocity_high} with the most air: loud, and it costs "
            "pressure. Make the machines more alike, or add a bleed gate.",
            only_if="velocity_high > 30",
        ),
        Caution(
            text="At {transport_velocity} heavy sawdust and chips settle; published figures for "
            "them begin at 20 m/s.",
            only_if="transport_velocity < 20",
        ),
        Caution(
            text="The main would be narrower than a branch: chips wedge there. Keep more gates "
            "open together.",
            only_if="main_diameter < widest_branch",
        ),
    ),
    validity="An estimate for round duct, steady air and little dust in it (a few grams to a "
    "cubic metre). Junctions count as bends, hoods and bends by one figure each; ribbed hose "
    "needs its own roughness and loses several times as much. Upright runs, wet chips and long "
    "shavings need more velocity. Every branch is taken at its own air with its gate set. Local "
    "code and licensed design come first.",
    sources=(*SOURCES, *CHECK_SOURCES),
    checks=CHECKS,
    exercises=EXERCISES,
)  # fmt: skip
