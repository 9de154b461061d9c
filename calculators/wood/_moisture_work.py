"""The steps of the moisture calculation: the room's air, the wood now, the wait."""

from ..engine.declaration import Given, Limit, Said, Solved, Step, Work
from ..laws.equilibrium_moisture import EMC, SORPTION_KH, SORPTION_STEPS
from ._moisture_solved import at_rest_in, read_witness, room_band, wait_for_rest

BY_OVEN = "moisture_from == 'oven'"
BY_METER = "moisture_from == 'meter'"
WEIGHED = "witness == 'weighed'"
UNWEIGHED = "witness == 'none'"
WAITS = "witness == 'weighed' and abs(gap) > close_enough"

_air: tuple[Work, ...] = (
    Limit(
        holds="room_humidity - humidity_swing >= 2 and room_humidity + humidity_swing <= 98",
        blames="humidity_swing", source="wood-handbook-moisture",
        otherwise="With {humidity_swing} up and down about {room_humidity} the air would leave 2 "
        "to 98 %, where the equation holds; the swing is half of highest less lowest",
        allowed="humidity less and more its swing between 2 and 98 %",
    ),
    *SORPTION_STEPS,
    Step(
        name="sorption_kh", label="K times the humidity as a fraction", symbol="Kh", unit="1",
        decimals=5, formula=SORPTION_KH, source="wood-handbook-moisture",
    ),
    Step(
        name="emc", label="Moisture content this air gives", symbol="x_e", unit="%", decimals=1,
        formula=EMC, source="wood-handbook-moisture",
    ),
    Solved(
        name="band", label="The same at the ends of the room's humidity", function=room_band,
        gives=(
            Given(name="emc_low", label="In the room's driest air", symbol="x_1", unit="%",
                  decimals=1),
            Given(name="emc_high", label="In the room's dampest air", symbol="x_2", unit="%",
                  decimals=1),
            Given(name="emc_dampest", label="In air of 95 %", symbol="x_95", unit="%", decimals=1),
        ),
        method="The same equation at humidity less and more its swing, and at 95 %.",
        source="wood-handbook-moisture",
    ),
)  # fmt: skip

_wood: tuple[Work, ...] = (
    Limit(
        holds="ovendry_mass <= offcut_mass", blames="ovendry_mass", only_if=BY_OVEN,
        source="dry-kiln-manual",
        otherwise="The offcut weighs {offcut_mass} as cut and {ovendry_mass} from the oven: dry "
        "wood cannot be heavier; look whether the two are exchanged",
        allowed="at most {offcut_mass}",
    ),
    Step(
        name="start_moisture", label="Moisture content at the start", symbol="x_0", unit="%",
        decimals=1, only_if=BY_OVEN, source="dry-kiln-manual",
        formula="(offcut_mass - ovendry_mass) / ovendry_mass * whole",
    ),
    Step(
        name="start_moisture", label="Moisture content at the start", symbol="x_0", unit="%",
        decimals=1, only_if=BY_METER, source="dry-kiln-manual", formula="wood_moisture",
    ),
    Limit(
        holds="start_moisture <= 250", blames="ovendry_mass", source="dry-kiln-manual",
        otherwise="That would be {start_moisture} of water, more than any wood holds; weigh the "
        "same offcut both times",
        allowed="two weights of one piece",
    ),
    Step(
        name="offcut_at_rest", label="What the offcut would weigh at rest in this air",
        symbol="m_e", unit="g", decimals=1, only_if=BY_OVEN, source="dry-kiln-manual",
        formula="ovendry_mass * (1 + emc / whole)",
    ),
    Solved(
        name="read_witness", label="The witness", function=read_witness, only_if=WEIGHED,
        gives=(
            Given(name="first_mass", label="First weighing", symbol="w_1", unit="g", decimals=1),
            Given(name="last_mass", label="Last weighing", symbol="w_n", unit="g", decimals=1),
            Given(name="last_day", label="Day of the last weighing", symbol="t_n", unit="d",
                  decimals=0),
            Given(name="weighed_for", label="From first to last", symbol="Δt", unit="d",
                  decimals=0),
        ),
        method="First and last line of the list, once the days rise from line to line.",
        source="dry-kiln-manual",
    ),
    Step(
        name="witness_dry", label="What the witness would weigh ovendry", symbol="w_o", unit="g",
        decimals=1, only_if=WEIGHED, source="dry-kiln-manual",
        formula="first_mass / (1 + start_moisture / whole)",
    ),
    Step(
        name="moisture_now", label="Moisture content now", symbol="x", unit="%", decimals=1,
        only_if=WEIGHED, source="dry-kiln-manual",
        formula="(last_mass / witness_dry - 1) * whole",
    ),
    Step(
        name="moisture_now", label="Moisture content now", symbol="x", unit="%", decimals=1,
        only_if=UNWEIGHED, source="dry-kiln-manual", formula="start_moisture",
    ),
    Limit(
        holds="0 <= moisture_now <= 250", blames="weighings", only_if=WEIGHED,
        source="dry-kiln-manual",
        otherwise="By its weights the witness would now hold {moisture_now} of water, which cannot "
        "be; look over the weights and the moisture at the start",
        allowed="weights of one piece, all on one scale",
    ),
    Step(
        name="gap", label="Now less what this air gives", symbol="Δx", unit="%", decimals=1,
        formula="moisture_now - emc", source="dry-kiln-manual",
    ),
    Step(
        name="mass_at_rest", label="What the witness will weigh at rest", symbol="w_e", unit="g",
        decimals=1, only_if=WEIGHED, source="dry-kiln-manual",
        formula="witness_dry * (1 + emc / whole)",
    ),
    Solved(
        name="at_rest", label="The air in which it would stay as it is", function=at_rest_in,
        only_if="0 < moisture_now < emc_dampest",
        gives=(
            Given(name="rest_humidity", label="Humidity in which it would stay as it is",
                  symbol="φ_x", unit="%", decimals=0),
        ),
        method="The same equation turned round, closed in on from both sides.",
        source="wood-handbook-moisture",
    ),
)  # fmt: skip

_wait: tuple[Work, ...] = (
    Solved(
        name="wait_for_rest", label="How it comes to rest", function=wait_for_rest, only_if=WAITS,
        gives=(
            Given(name="wait", label="Ready in", symbol="t_w", unit="d", decimals=0),
            Given(name="wait_uncertainty", label="Give or take (k = 2)", symbol="U", unit="d",
                  decimals=1),
            Given(name="time_constant", label="The gap falls to 37 % in", symbol="τ", unit="d",
                  decimals=1),
            Given(name="start_gap", label="Fitted gap at the first weighing", symbol="Δx_0",
                  unit="%", decimals=2),
            Given(name="scatter", label="Weighings lie off the curve by", symbol="s", unit="g",
                  decimals=2),
            Given(name="weighing_count", label="Weighings", symbol="n", unit="1", decimals=0),
        ),
        method="Every weighing as moisture less what the air gives; least squares for a gap that "
        "shrinks by the same share each day; days from the last weighing until the curve is close "
        "enough. Uncertainty: each weight moved by the scale's rounding or the scatter, whichever "
        "is more, the curve fitted anew.",
        source="exponential-approach",
    ),
    Step(
        name="ready_day", label="Ready about day", symbol="t_r", unit="d", decimals=0,
        only_if=WAITS, formula="last_day + wait", source="exponential-approach",
    ),
    Step(
        name="week_change", label="Change of its weight in the coming week", symbol="Δw",
        unit="%", decimals=2, only_if=WAITS, source="exponential-approach",
        formula="abs(gap) * (1 - exp(-week / time_constant)) / (1 + moisture_now / whole)",
    ),
    Said(
        name="verdict", label="Is it ready",
        cases=(
            ("witness == 'none' and gap > 0",
             "At {moisture_now} it is damper than this air, which brings it down to {emc}. Weigh "
             "a witness to see how fast."),
            ("witness == 'none'",
             "At {moisture_now} it is drier than this air, which brings it up to {emc}. Weigh a "
             "witness to see how fast."),
            ("abs(gap) <= close_enough",
             "Ready: {moisture_now}, within {close_enough} of the {emc} that this air gives."),
            ("wait == 0",
             "By the curve it is ready; the last weighing alone still says {moisture_now}. Weigh "
             "once more."),
            ("", "Not yet: {moisture_now}, on its way to {emc}. About {wait} more, give or take "
             "{wait_uncertainty}. Ready when it weighs about {ready_mass}."),
        ),
    ),
)  # fmt: skip

_ready: tuple[Work, ...] = (
    Step(
        name="ready_mass", label="Ready at a weight of", symbol="w_r", unit="g", decimals=1,
        only_if="witness == 'weighed' and gap >= 0", source="dry-kiln-manual",
        formula="witness_dry * (1 + (emc + close_enough) / whole)",
    ),
    Step(
        name="ready_mass", label="Ready at a weight of", symbol="w_r", unit="g", decimals=1,
        only_if="witness == 'weighed' and gap < 0", source="dry-kiln-manual",
        formula="witness_dry * (1 + (emc - close_enough) / whole)",
    ),
)  # fmt: skip

work: tuple[Work, ...] = (*_air, *_wood, *_ready, *_wait)
