"""What moisture the wood has, what this room's air gives it, and how long it still takes."""

from ..engine.declaration import Calculator, Caution, Constant, Drawing
from ..laws.equilibrium_moisture import SORPTION_CONSTANT
from ._moisture_drawings import draw_air, draw_days
from ._moisture_inputs import inputs
from ._moisture_proof import CHECKS, DECISIONS, EXERCISES, SOURCES
from ._moisture_work import WEIGHED, work

calculator = Calculator(
    name="moisture-content",
    title="Moisture content and the wait",
    summary="What moisture the wood has now, what it comes to in this room's air, and when a "
    "witness on the scale says that it is ready.",
    other_words=(
        "EMC", "equilibrium moisture content", "how dry is the wood", "acclimate", "acclimatise",
        "how long must wood rest", "weigh the wood", "witness", "oven dry", "moisture meter",
        "humidity and wood", "still losing weight",
    ),
    inputs=inputs,
    constants=(
        SORPTION_CONSTANT,
        Constant(name="whole", label="The whole, in per cent", unit="%", decimals=0, value=100,
                 source="wood-handbook-moisture"),
        Constant(name="week", label="A week", unit="d", decimals=0, value=7,
                 source="exponential-approach"),
    ),
    work=work,
    results=(
        "verdict", "emc", "moisture_now", "gap", "wait", "wait_uncertainty", "ready_mass",
        "week_change", "rest_humidity", "start_moisture", "emc_low", "emc_high", "ready_day",
        "mass_at_rest", "offcut_at_rest", "witness_dry", "time_constant", "scatter",
    ),
    aside=(
        "start_moisture", "emc_low", "emc_high", "ready_day", "mass_at_rest", "offcut_at_rest",
        "witness_dry", "time_constant", "scatter",
    ),
    drawings=(
        Drawing(name="days", title="The witness on its way", function=draw_days, only_if=WEIGHED),
        Drawing(name="air", title="Wood at rest in the room's air", function=draw_air),
    ),
    cautions=(
        Caution(
            text="The oven: dry slivers of resinous wood smoulder before you see it. A laboratory "
            "oven with its own cut-out, about 103 °C, never left alone; its installation is for a "
            "licensed electrician and the local code.",
        ),
        Caution(
            text="One wood comes to rest a per cent higher or lower than another, and higher on "
            "the way down than on the way up (from memory). Where the weight stands still for "
            "weeks, believe the scale.",
        ),
        Caution(
            text="The wait holds only while the air stays as entered. Between {emc_low} and "
            "{emc_high} the wood just follows the room.",
            only_if="witness == 'weighed' and humidity_swing > 0",
        ),
        Caution(
            text="A meter that may be off by {meter_error} makes the moisture now as unsure, and "
            "the wait with it. Dry an offcut in the oven.",
            only_if="moisture_from == 'meter' and meter_error > 0",
        ),
        Caution(
            text="Two weighings fit any curve: nothing here says whether this one is right. A "
            "third weighing does.",
            only_if="weighing_count == 2 if witness == 'weighed' and abs(gap) > close_enough "
            "else 1 < 0",
        ),
        Caution(
            text="The weighings lie {scatter} off the curve, more than the scale explains: the "
            "air has changed meanwhile, or a weight is wrong.",
            only_if="scatter > 2 * scale_step if witness == 'weighed' and abs(gap) > close_enough "
            "else 1 < 0",
        ),
        Caution(
            text="At {start_moisture} there is free water in the wood. It dries slowly and cracks "
            "if it is forced: outside first, ends sealed.",
            only_if="start_moisture > 30",
        ),
    ),
    validity="The equation is a mean over woods for air of -1 to 54 °C; it does not know what the "
    "wood went through before, nor resin and oil (rosewood, ebony). The moisture of the witness "
    "rests on the offcut: it must come from the same board. The wait takes one steady air and the "
    "last, slow part of drying, where the gap shrinks by the same share each day: leave out the "
    "first days after the air changed, and start again when the piece is sawn thinner. Its "
    "uncertainty is of the weights (or their scatter) and the meter alone.",
    sources=SOURCES,
    checks=CHECKS,
    exercises=EXERCISES,
    decisions=DECISIONS,
)  # fmt: skip
