"""The worked steps of the press calculation: bladder and joint, sprung back, go-bars."""

from ..engine.declaration import Constant, Given, Limit, Said, Solved, Source, Step, Work
from ._plates_shared import BEAMS, COMPOSITE, KN_MM2, MM2_PER_M2, WHOLE, WOOD_TABLES
from ._press_solved import back_modulus_of, back_strength_of, sprung_bar

PRACTICE = "common-practice"
PRESSURE = Source(
    id="pressure-on-area",
    title="Pressure times area is force; force over area is pressure",
    note="Definitions.",
)
ELASTICA = Source(
    id="elastica",
    title="Theory of Elastic Stability: the elastica of a bar with free ends",
    author="Timoshenko, S., and Gere, J.",
    year="1961",
    note="Section 2.7, from memory; checked by scipy's elliptic integrals.",
)
SHOP = Source(
    id="shop-limits",
    title="The shop's limits for the bladder, the gap and the go-bars",
    kind="shop",
    note="Tolerances box-bladder-pressure, box-back-end-gap and brace-bar-force of the handbook.",
)


def _limit(name: str, label: str, unit: str, value: float) -> Constant:
    return Constant(name=name, label=label, unit=unit, decimals=0, value=value, source=SHOP.id)


CONSTANTS = (
    WHOLE,
    KN_MM2,
    MM2_PER_M2,
    Constant(name="kpa_cm2", label="kPa·cm² in 1 N", unit="kPa*cm^2/N", decimals=0, value=10,
             source=PRESSURE.id),
    Constant(name="kpa_per_mpa", label="Kilopascals in a megapascal", unit="kPa/MPa", decimals=0,
             value=1000, source=PRESSURE.id),
    Constant(name="mpa_per_gpa", label="Megapascals in a gigapascal", unit="MPa/GPa", decimals=0,
             value=1000, source=PRESSURE.id),
    Constant(name="mm_per_m", label="Millimetres in a metre", unit="mm/m", decimals=0, value=1000,
             source=PRESSURE.id),
    Constant(name="gravity", label="Standard gravity", symbol="g_n", unit="m/s^2", decimals=5,
             value=9.80665, source=PRESSURE.id),
    _limit("pressure_low", "Bladder, least", "kPa", 3),
    _limit("pressure_high", "Bladder, most", "kPa", 5),
    _limit("gap_low", "Gap at a block, least", "mm", 1),
    _limit("gap_high", "Gap at a block, most", "mm", 3),
    _limit("bar_low", "Push of a go-bar, least", "N", 50),
    _limit("bar_high", "Push of a go-bar, most", "N", 80),
)  # fmt: skip


# fmt: off
bladder: tuple[Work, ...] = (
    Step(
        name="press_force", label="Force of the bladder on the plate", symbol="F", unit="N",
        decimals=0, formula="bladder_pressure * plate_area / kpa_cm2", source=PRESSURE.id,
    ),
    Step(
        name="press_weight", label="As the weight of", symbol="m", unit="kg", decimals=0,
        formula="press_force / gravity", source=PRESSURE.id,
    ),
    Step(
        name="joint_pressure", label="Pressure in the joint, evenly spread", symbol="p_j",
        unit="kPa", decimals=0, source=PRESSURE.id,
        formula="press_force / (rim_length * ledge_width) * kpa_per_mpa",
    ),
    Step(
        name="joint_times", label="Joint beside bladder, times", symbol="n_j", unit="1",
        decimals=1, formula="joint_pressure / bladder_pressure", source=PRESSURE.id,
    ),
)

back: tuple[Work, ...] = (
    Solved(
        name="back_modulus_of", label="Wood of the back", function=back_modulus_of,
        gives=(Given(name="back_gpa", label="Modulus along the grain", symbol="E", unit="GPa",
                     decimals=2),),
        method="The printed mean of the species, or the figure given.", source=WOOD_TABLES.id,
    ),
    Solved(
        name="back_strength_of", label="Strength of the back", function=back_strength_of,
        gives=(Given(name="back_mpa", label="Bending strength, short test", symbol="f",
                     unit="MPa", decimals=1),),
        method="The printed mean of the species, or the figure given.", source=WOOD_TABLES.id,
    ),
    Step(
        name="arch_across", label="Crown of the back across its mean width", symbol="h",
        unit="mm", decimals=2, source="plane-geometry",
        formula="back_dish_radius - sqrt(back_dish_radius ** 2 - (back_width / 2) ** 2)",
    ),
    Step(
        name="back_stiffness", label="Stiffness of the arched back, along", symbol="EI",
        unit="N.m2", decimals=2, source=COMPOSITE.id,
        formula="back_gpa * back_width * back_thickness * (back_thickness ** 2 / 12 + "
        "4 / 45 * arch_across ** 2) / kn_mm2",
    ),
    Step(
        name="end_rate", label="Force at each block for a millimetre", symbol="k", unit="N/mm",
        decimals=2, only_if="stiffness_from == 'plate'", source=BEAMS.id,
        formula="6 * back_stiffness * mm2_per_m2 / (overhang ** 2 * (3 * bearing_span + "
        "2 * overhang))",
    ),
    Step(
        name="end_rate", label="Force at each block for a millimetre", symbol="k", unit="N/mm",
        decimals=2, only_if="stiffness_from == 'push'", source=PRACTICE,
        formula="push_force / push_move",
    ),
    Step(
        name="end_force", label="Force that closes the back at each block", symbol="F_e",
        unit="N", decimals=1, formula="end_rate * end_gap", source=BEAMS.id,
    ),
    Step(
        name="bend_radius", label="Radius it is bent by, over the bearing places", symbol="R_e",
        unit="m", decimals=2, source=BEAMS.id,
        formula="overhang * (3 * bearing_span + 2 * overhang) / (6 * end_gap) / mm_per_m",
    ),
    Limit(
        holds="bend_radius >= 0.3", blames="end_gap", source=BEAMS.id,
        otherwise="The back would be bent to a radius of {bend_radius} to close this gap, which is "
        "no small bend and no way to treat a back; look over gap and overhang",
        allowed="a gap that bends the back to 0.30 m or more",
    ),
    Step(
        name="back_stress", label="Stress in the back from closing", symbol="σ", unit="MPa",
        decimals=1, source=COMPOSITE.id,
        formula="back_gpa * (back_thickness / 2 + 2 / 3 * arch_across) / bend_radius",
    ),
    Step(
        name="back_share", label="Share of its strength", symbol="u", unit="%", decimals=0,
        formula="back_stress / back_mpa * whole", source=WOOD_TABLES.id,
    ),
    Step(
        name="closing_pressure", label="Bladder alone closes it from", symbol="p_c", unit="kPa",
        decimals=2, source=BEAMS.id,
        only_if="3 * overhang ** 3 + 6 * overhang ** 2 * bearing_span > bearing_span ** 3",
        formula="4 * end_force * overhang * (3 * bearing_span + 2 * overhang) / (back_width * "
        "(3 * overhang ** 3 + 6 * overhang ** 2 * bearing_span - bearing_span ** 3)) * kpa_per_mpa",
    ),
)

bars: tuple[Work, ...] = (
    Limit(
        holds="deck_height < bar_length", blames="deck_height", source=ELASTICA.id,
        otherwise="The bar is no longer than its room, so it neither bends nor pushes; take a "
        "longer bar or pack the deck",
        allowed="less than the length of the bar, {bar_length}",
    ),
    Limit(
        holds="deck_height >= 0.7 * bar_length", blames="bar_length", source=PRACTICE,
        otherwise="The bar would be bent to less than seven tenths of its length, which no bar in "
        "a shop stands; take a shorter one",
        allowed="a bar whose room is at least seven tenths of its length",
    ),
    Step(
        name="bar_stiffness", label="Stiffness of a bar", symbol="B", unit="N.m2", decimals=3,
        formula="bar_modulus * bar_width * bar_thickness ** 3 / 12 / kn_mm2", source=BEAMS.id,
    ),
    Step(
        name="euler_force", label="Euler's load, just bent", symbol="F_E", unit="N", decimals=1,
        formula="pi ** 2 * bar_stiffness * mm2_per_m2 / bar_length ** 2", source=ELASTICA.id,
    ),
    Solved(
        name="sprung_bar", label="The bar in the deck", function=sprung_bar,
        gives=(
            Given(name="force_times", label="Force over Euler's load", symbol="n_E", unit="1",
                  decimals=4),
            Given(name="bow_share", label="Bow over length", symbol="v", unit="1", decimals=4),
            Given(name="bend_share", label="Curvature in the middle, times the length",
                  symbol="c", unit="1", decimals=4),
        ),
        method="The elastica with free ends: the bend for which the ends are as far apart as the "
        "deck says, found by halving; complete elliptic integrals by arithmetic-geometric means.",
        source=ELASTICA.id,
    ),
    Step(
        name="bar_force", label="Push of one bar", symbol="F_g", unit="N", decimals=0,
        formula="euler_force * force_times", source=ELASTICA.id,
    ),
    Step(
        name="bar_bow", label="Bow of its middle", symbol="f_b", unit="mm", decimals=0,
        formula="bar_length * bow_share", source=ELASTICA.id,
    ),
    Step(
        name="bar_stress", label="Stress in its middle", symbol="σ_g", unit="MPa", decimals=0,
        formula="bar_modulus * mpa_per_gpa * bar_thickness / 2 * bend_share / bar_length",
        source=ELASTICA.id,
    ),
    Step(
        name="bar_share", label="Share of the bar's strength", symbol="u_g", unit="%", decimals=0,
        formula="bar_stress / bar_strength * whole", source=ELASTICA.id,
    ),
    Step(
        name="bars_on_brace", label="Bars on the brace", symbol="N_b", unit="1", decimals=0,
        formula="ceil(brace_length / bar_spacing)", source=PRACTICE,
    ),
    Step(
        name="brace_pressure", label="Pressure under the brace, evenly spread", symbol="p_b",
        unit="kPa", decimals=0, source=PRESSURE.id,
        formula="bars_on_brace * bar_force / (brace_length * brace_width) * kpa_per_mpa",
    ),
    Step(
        name="bars_for_press", label="Bars that push as hard as the bladder", symbol="N_p",
        unit="1", decimals=0, formula="ceil(press_force / bar_force)", source=PRESSURE.id,
    ),
)

said: tuple[Work, ...] = (
    Said(
        name="answer", label="The bladder",
        cases=(
            ("bladder_pressure > pressure_high",
             "Too much: above the shop's {pressure_high}. {press_force} would lie on the plate, "
             "the weight of {press_weight}. Let air out before you look at anything else."),
            ("bladder_pressure < pressure_low",
             "Less than the shop's {pressure_low}: {press_force} on the plate, the weight of "
             "{press_weight}, {joint_pressure} in the joint. Look for a leak."),
            ("", "{press_force} on the plate, the weight of {press_weight}; in the joint that is "
             "{joint_pressure}. Within the shop's {pressure_low} to {pressure_high}."),
        ),
    ),
    Said(
        name="closing_words", label="Closing the back",
        cases=(
            ("end_gap > gap_high",
             "The gap is above the shop's {gap_high}: do not press it shut. It would take "
             "{end_force} at each block, and the two ends would have to hold that for ever."),
            ("end_gap < gap_low",
             "The gap is below the shop's {gap_low}: there is hardly a spring, {end_force} at each "
             "block. Look at arch and rim."),
            ("3 * overhang ** 3 + 6 * overhang ** 2 * bearing_span <= bearing_span ** 3",
             "{end_force} at each block closes it. The bladder alone would lift the ends, as it "
             "presses the middle in: hold both blocks down until the frame is latched."),
            ("closing_pressure > bladder_pressure",
             "{end_force} at each block closes it, and this bladder alone does not: it would take "
             "{closing_pressure}. Palms on both blocks until the frame is latched."),
            ("", "{end_force} at each block closes it: palms first, then the bladder, which holds "
             "it from {closing_pressure} up."),
        ),
    ),
    Said(
        name="bar_words", label="The go-bar",
        cases=(
            ("bar_share >= 100",
             "It breaks: {bar_stress} in a bar that bears {bar_strength}. Take a thinner or a "
             "shorter one."),
            ("bar_share > 70",
             "Near breaking: {bar_force} of push, but {bar_share} of its strength is used. A "
             "thinner, wider bar pushes as hard and bends easier."),
            ("bar_force > bar_high",
             "Too hard: {bar_force}, above the shop's {bar_high}. Take a thinner bar."),
            ("bar_force < bar_low",
             "Too weak: {bar_force}, below the shop's {bar_low}. Take a thicker or a shorter bar."),
            ("", "Right: {bar_force}, within the shop's {bar_low} to {bar_high}; bowed by "
             "{bar_bow}."),
        ),
    ),
)
# fmt: on

WORK: tuple[Work, ...] = (*bladder, *back, *bars, *said)
