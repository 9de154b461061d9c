"""What the strings do to the braced top: turn of the bridge, rise, sinking, stress, as ranges."""

from ..engine.declaration import Calculator, Caution, Drawing
from ..sources import COMMON_PRACTICE
from ._top_drawings import draw_range, draw_side
from ._top_inputs import TAKEN, TIME, inputs
from ._top_proof import CHECKS, EXERCISES, SOURCES
from ._top_work import CONSTANTS, WORK

calculator = Calculator(
    name="top-deflection",
    title="Top under the strings",
    summary="How far the strings turn the bridge, lift the top behind it and press it down before "
    "it, and what braces and top have in hand: as a range between too stiff and too weak, never "
    "as a verdict.",
    other_words=(
        "top is caving in at the bridge", "belly behind the bridge", "top bulges", "top too stiff",
        "top too weak", "bridge rotation", "how strong are the braces", "string pull", "torque",
        "factor of safety", "top sinking", "creep",
    ),
    inputs=inputs,
    folded=(TAKEN, TIME),
    constants=CONSTANTS,
    work=WORK,
    results=(
        "answer", "rise_low", "rise_high", "sink_low", "sink_high", "turn_low", "turn_high",
        "strength_words", "safety_low", "safety_high", "couple", "rise", "sink", "turn",
        "rise_at", "sink_at", "stiffness", "plate_part", "added", "lean_share", "moment",
        "brace_stress", "plate_stress", "brace_bears_low", "plate_bears_low", "axis",
    ),
    aside=(
        "rise", "sink", "turn", "rise_at", "sink_at", "stiffness", "plate_part", "added",
        "lean_share", "moment", "brace_stress", "plate_stress", "brace_bears_low",
        "plate_bears_low", "axis",
    ),
    drawings=(
        Drawing(name="side", title="The top from the side, first minute", function=draw_side),
        Drawing(name="range", title="Rise against brace height, with its spread",
                function=draw_range),
    ),
    cautions=(
        Caution(
            text="NEVER A VERDICT. This is a strip where a real top is an arched plate with a hole, "
            "held all round, and the wood is a mean of its species. The answer is a range. Carve "
            "by the jig, by the top of the last instrument and by the lead bracer.",
        ),
        Caution(
            text="How much an arched top that is held all round is stiffer than its strip "
            "({held_times} times here) is common practice without a source, and everything goes "
            "with it. Set it by an instrument whose rise you measured.",
        ),
        Caution(
            text="Strings under tension store a blow: glasses on, face out of their line, and "
            "slacken them before you put a hand inside.",
        ),
        Caution(
            text="Nothing rises behind the bridge here, because the bridge stands far back: look "
            "at the sinking before it instead.",
            only_if="rise < 0.01",
        ),
        Caution(
            text="With the strength of the weak end, {safety_low} times the stress or less, do not "
            "carve further on the word of a calculation.",
            only_if="safety_low < 2",
        ),
    ),
    validity="A strip of even stiffness between two supports, small bends, bent by the couple of "
    "the strings alone, which is put on one line (a real bridge spreads it over its width). Braces "
    "keep their height at the bridge all along; scallops make the top softer than this, the bridge, "
    "the bridge plate, tone bars and the held edges make it stiffer. The stress in the top is an "
    "upper bound. Moisture, heat, knots and run-out are not in it. Compare instruments of one "
    "model with it; do not trust its millimetres across models.",
    sources=(*SOURCES, COMMON_PRACTICE),
    checks=CHECKS,
    exercises=EXERCISES,
)  # fmt: skip
