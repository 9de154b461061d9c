"""Pressing the back on: force of the bladder, spring of the back, go-bars."""

from ..engine.declaration import Calculator, Caution, Drawing
from ._press_drawings import draw_back, draw_bar
from ._press_inputs import BARS, SHAPE, inputs
from ._press_proof import CHECKS, DECISIONS, EXERCISES, SOURCES
from ._press_work import CONSTANTS, WORK

calculator = Calculator(
    name="back-press",
    title="Pressing the back",
    summary="With what force the bladder presses, what reaches the joint, what closes the sprung "
    "back at both blocks, and how hard a go-bar pushes.",
    other_words=(
        "bladder pressure", "clamp pressure", "how hard to press", "back springs up", "back gap",
        "go bar", "go-bar force", "how many go bars", "go deck", "clamping the back",
        "back cracked in the press", "glueing the box",
    ),
    inputs=inputs,
    folded=(SHAPE, BARS),
    constants=CONSTANTS,
    work=WORK,
    results=(
        "answer", "press_force", "press_weight", "joint_pressure", "closing_words", "end_force",
        "closing_pressure", "back_stress", "back_share", "bar_words", "bar_force", "bar_bow",
        "bar_share", "bars_on_brace", "brace_pressure", "bars_for_press",
        "joint_times", "end_rate", "back_stiffness", "arch_across", "bend_radius", "euler_force",
        "force_times", "bar_stress",
    ),
    aside=(
        "joint_times", "end_rate", "back_stiffness", "arch_across", "bend_radius", "euler_force",
        "force_times", "bar_stress",
    ),
    drawings=(
        Drawing(name="back", title="The sprung back on its rim", function=draw_back),
        Drawing(name="bar", title="A bar in the deck", function=draw_bar),
    ),
    cautions=(
        Caution(
            text="Fingers out and frame latched before the valve is opened; air out fully before "
            "the latch is lifted. The seal of the relief valve stays on, and a competent person "
            "sets it under the local rules.",
        ),
        Caution(
            text="A bent bar stores a blow: glasses on for everybody near, face out of the plane in "
            "which it bows. A bar with a crack is broken in two and thrown away.",
        ),
        Caution(
            text="Even pressure comes from fitted wood, not from force: where rim and plate do not "
            "meet, more air cracks the back over a brace.",
        ),
        Caution(
            text="{bladder_pressure} is above the shop's {pressure_high}. Do not press with it.",
            only_if="bladder_pressure > pressure_high",
        ),
        Caution(
            text="This bar is at {bar_share} of its strength: do not bend it in.",
            only_if="bar_share > 70",
        ),
    ),
    validity="The bladder covers the whole plate and the rim carries all of it evenly; a brace end "
    "that bears early takes more than its share. The back is a beam on two bearing places with "
    "equal overhangs, small bends, arch kept; cross braces are left out unless you give a push, "
    "and the stress is that of the bend along, not of a hard spot under a brace. The bar is a "
    "straight, even stick with ends free to turn; wood that was bent for days pushes less.",
    sources=SOURCES,
    checks=CHECKS,
    exercises=EXERCISES,
    decisions=DECISIONS,
)  # fmt: skip
