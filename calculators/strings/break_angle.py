"""How strings bend over nut and saddle, what they press with, and what hangs in the nut."""

from ..engine.declaration import Calculator, Caution, Column, Drawing, Table
from ._break_angle_drawings import draw_bends
from ._break_angle_inputs import INPUTS, LIMITS
from ._break_angle_proof import CHECKS, DECISIONS, EXERCISES, SOURCES
from ._break_angle_work import CONSTANTS, WORK

# fmt: off
calculator = Calculator(
    name="break-angle",
    title="Break angle at nut and saddle",
    summary="By how much each string bends behind the nut and over the saddle, what it presses "
    "with there, whether that is enough, and how flat a sticking nut may leave it.",
    other_words=("break angle", "string rattles at the nut", "string tree", "headstock angle",
                 "string angle behind the saddle", "saddle leans forward", "string sticks in the "
                 "nut", "goes out of tune after a bend", "post too high", "winds on the post",
                 "down force", "strings break at the saddle"),
    inputs=INPUTS,
    folded=(LIMITS,),
    constants=CONSTANTS,
    work=WORK,
    tables=(
        Table(
            name="by_string", title="String by string", rows="string_rows",
            source="resultant-of-two-pulls",
            columns=(
                Column(name="string", label="String", unit="1", decimals=0, text=True),
                Column(name="nut_down", label="Down behind the nut", unit="deg", decimals=1),
                Column(name="nut_whole", label="Whole angle there", unit="deg", decimals=1),
                Column(name="nut_press", label="Presses the nut", unit="N", decimals=1),
                Column(name="nut_aside", label="and aside", unit="N", decimals=1),
                Column(name="flat", label="Flat after a bend, at most", unit="cents", decimals=1),
                Column(name="saddle_angle", label="Over the saddle", unit="deg", decimals=1),
                Column(name="saddle_press", label="Presses the saddle", unit="N", decimals=1),
                Column(name="saddle_forward", label="and towards the nut", unit="N", decimals=1),
            ),
            note="Pressing forces are for strings at rest without friction. Aside: outwards is "
            "plus. Flat after a bend: last tuned down to pitch.",
        ),
    ),
    results=(
        "nut_words", "saddle_words", "hang_words", "nut_down", "saddle_angle", "nut_total",
        "saddle_total", "saddle_push", "worst_flat", "nut_whole", "steep_down",
        "saddle_most_angle", "nut_press", "saddle_press", "winding_gain", "flat_even",
        "flat_tuned_down", "capstan", "head_string", "pull_total", "ramp_needed",
    ),
    aside=(
        "worst_flat", "nut_whole", "steep_down", "saddle_most_angle", "nut_press", "saddle_press",
        "winding_gain", "flat_even", "flat_tuned_down", "capstan", "head_string", "pull_total",
        "ramp_needed",
    ),
    drawings=(
        Drawing(name="bends", title="The weakest string at each end, to scale",
                function=draw_bends),
    ),
    cautions=(
        Caution(
            text="Strings at pitch hold some hundred newtons each. Slacken before you move a "
            "winding, a bar or the saddle; glasses on, face out of their line.",
        ),
        Caution(
            text="Deepening a ramp takes wood away in front of the pin, where bridges crack. Round "
            "file, a little at a time, and stop well above the bridge plate.",
            only_if="saddle_angle < least_saddle",
        ),
        Caution(
            text="Together the strings push the saddle towards the nut with {saddle_push}. It must "
            "stand snug in a slot that holds at least as much of it as shows.",
            only_if="saddle_push > 0.1 * pull_total",
        ),
        Caution(
            text="Friction ({friction}) is from memory. Try it: tune a string down to pitch, bend "
            "it wide, read the tuner.",
        ),
    ),
    validity="Straight, thin strings that bend at one point; a stiff string bends over a length of "
    "its own and presses a little otherwise. A nut slot that slopes is not a second support. "
    "Windings lie close, in one layer, and the string leaves the post on its inner side. What "
    "hangs in the nut is the most that the capstan equation allows after a bend wide enough to "
    "slide; most bends leave less, and the saddle's own friction is left out. The angles are "
    "exact; the limits are the shop's.",
    sources=SOURCES,
    checks=CHECKS,
    exercises=EXERCISES,
    decisions=DECISIONS,
)
# fmt: on
