"""Where the saddle-height calculation comes from, what it is held against, its exercises."""

from ..engine.declaration import Check, Decision, Exercise, Option, Slip, Source
from ..laws.string_over_frets import EQUAL_DIVISION, Neck, fall_across_mm
from ..sources import COMMON_PRACTICE, GEOMETRY

MPMATH = Source(
    id="mpmath",
    title="mpmath 1.4.1 (tables of frets and sagittas: 1.3.0), 50 digits",
    kind="library",
    note="The bow as a parabola through its conditions and the string through its two gaps, each "
    "as linear equations solved independently of this project.",
)
SCIPY = Source(
    id="scipy-drawn-neck",
    title="scipy 1.18.1, optimize.fsolve and brentq",
    kind="library",
    note="A neck drawn as the arc of a circle, its points turned in the plane; nut and saddle are "
    "moved until the drawn string clears first fret and 12th as asked.",
)
SOURCES = (GEOMETRY, EQUAL_DIVISION, COMMON_PRACTICE, MPMATH, SCIPY)

SET = {"rod_and_nut": "set"}
ARC = "a circle and a parabola differ by a few hundred thousandths of a millimetre"
UKULELE = {
    "scale_length": 380, "frets": 18, "strings": 4, "setback_bass": 2, "setback_treble": 2,
    "fret_radius": 0, "string_spread_nut": 29, "string_spread_bridge": 41, "relief": 0.05,
    "action_bass": 2.2, "action_treble": 2.0,
}  # fmt: skip


def _drawn(cut: str, nut: str, gaps: tuple[str, str, str], **inputs: float) -> Check:
    return Check(
        inputs={**SET, "fret_radius": 0, **inputs}, source=SCIPY.id, origin="library",
        where=f"drawn neck, relief {inputs['relief_now']} to {inputs['relief']} mm",
        within="0.00005", because=ARC,
        expected={
            "saddle_cut_bass": cut, "nut_cut_bass": nut, "gaps[3].open_bass": gaps[0],
            "gaps[7].open_bass": gaps[1], "gaps[10].open_bass": gaps[2],
        },
    )  # fmt: skip


# fmt: off
CHECKS = (
    Check(
        inputs={}, source=MPMATH.id, origin="library",
        where="a flat-top of 14 frets to the body, rod and nut left alone, 50 digits, printed to twelve",
        expected={
            "saddle_cut_bass": "0.604186046512", "saddle_cut_treble": "0.401550387597",
            "first_fret_gap_bass_after": "0.416324587609", "first_fret_gap_treble_after": "0.277549725073",
            "gaps[5].open_bass": "1.43810249723", "gaps[17].open_bass": "2.75361928080",
            "gaps[1].pressed_bass": "0.324639040750", "gaps[9].pressed_bass": "0.234522815079",
            "gaps[16].pressed_bass": "0.209813986800", "gaps[5].open_treble": "1.09699532282",
            "gaps[17].open_treble": "2.02329331869", "gaps[1].pressed_treble": "0.261911563572",
            "gaps[9].pressed_treble": "0.172467920022",
            "gaps[16].pressed_treble": "0.148511725453", "crest_rise": "0.869360881470",
            "crest_radius": "419.708203979",
        },
    ),
    Check(
        inputs=SET, source=MPMATH.id, origin="library",
        where="a flat-top of 14 frets to the body, rod and nut set as well, 50 digits, printed to twelve",
        expected={
            "saddle_cut_bass": "0.305131952610", "saddle_cut_treble": "0.0915975038989",
            "nut_cut_bass": "0.0521186130958", "nut_cut_treble": "0.0647631130623",
            "gaps[5].open_bass": "1.40087347718", "gaps[9].pressed_treble": "0.177376815370",
        },
    ),
    Check(
        inputs={**UKULELE, "action_bass_now": 2.5, "action_treble_now": 2.3,
                "first_fret_gap_bass": 0.42, "first_fret_gap_treble": 0.38},
        source=MPMATH.id, origin="library",
        where="ukulele, flat board, 50 digits, printed to twelve",
        expected={
            "saddle_cut_bass": "0.603157894737", "first_fret_gap_bass_after": "0.386324587609",
            "gaps[9].open_bass": "1.84004993751", "gaps[9].open_treble": "1.67415096288",
            "gaps[3].pressed_bass": "0.246682823922", "gaps[3].pressed_treble": "0.225369009327",
        },
    ),
    Check(
        inputs={**SET, "scale_length": 632, "body_joint_fret": 12, "frets": 19,
                "string_spread_nut": 39, "string_spread_bridge": 57, "relief_now": 0.3,
                "relief": 0.15, "action_bass_now": 3.1, "action_bass": 2.3, "first_fret_gap_bass": 0.5,
                "first_fret_gap_bass_wanted": 0.4},
        source=MPMATH.id, origin="library",
        where="joint at the 12th fret, 50 digits, printed to twelve",
        expected={
            "saddle_cut_bass": "0.914248614681", "nut_cut_bass": "-0.0739715023286",
            "gaps[7].open_bass": "1.71960151091", "gaps[7].pressed_bass": "0.239686323462",
            "crest_rise": "0.971302277018", "crest_radius": "418.609863970",
        },
    ),
    _drawn("0.30513707", "0.05212004", ("0.93863996", "1.77582779", "2.19265766"),
           relief_now=0.25, relief=0.2),
    _drawn("0.20263384", "-0.06773415", ("0.92052040", "1.72016517", "2.16183094"),
           relief_now=0.4, relief=0.1, first_fret_gap_bass=0.55, action_bass_now=3.2,
           first_fret_gap_bass_wanted=0.4),
    _drawn("0.93792143", "-0.02104797", ("0.84585740", "1.55833953", "1.97055801"),
           relief_now=0.15, relief=0.05, first_fret_gap_bass=0.5, action_bass_now=2.9,
           first_fret_gap_bass_wanted=0.4, action_bass=2.2, scale_length=380, frets=18,
           setback_bass=2),
    Check(
        inputs={"scale_length": 650, "frets": 22}, source=MPMATH.id, origin="library",
        where="table of fret positions, 650 mm",
        expected={
            "first_fret": "36.481697", "gaps[9].from_nut": "263.507688",
            "gaps[22].from_nut": "467.599917",
        },
    ),
    *(
        Check(
            function=fall_across_mm, source=MPMATH.id, origin="library", unit="mm",
            given={"neck": Neck(645, 14, 0.2, radius, chord, chord), "from_nut_mm": 100,
                   "share_across": 1},
            where=f"table of sagittas, R = {radius} mm with a chord of {chord} mm",
            expected={"": sagitta},
        )
        for radius, chord, sagitta in (
            (241.3, 50, "1.29856250"), (304.8, 50, "1.02699264"), (406.4, 100, "3.08751569"),
        )
    ),
)

EXERCISES = (
    Exercise(
        name="off-the-saddle",
        situation="Relief and nut are right. On a scale of {scale_length}, the saddle set back "
        "{setback_bass} under it, the bass string reads {action_bass_now} at the 12th and is to come "
        "to {action_bass}. How much comes off the saddle's foot under it?",
        asks="saddle_cut_bass", within="0.03 mm",
        draw={"scale_length": (620, 660, 1), "setback_bass": (3.5, 5.5, 0.1),
              "action_bass_now": (2.6, 3.3, 0.05), "action_bass": (2.1, 2.5, 0.05)},
        slips=(
            Slip(name="once", formula="action_bass_now - action_bass",
                 why="The 12th is half way along the string: there it moves by half of what the "
                 "saddle moves. Take off twice the difference."),
            Slip(name="half", formula="(action_bass_now - action_bass) / 2",
                 why="The lever is turned over. The saddle moves more than the string at the "
                 "12th, not less."),
        ),
    ),
    Exercise(
        name="what-is-left",
        situation="The saddle shows {saddle_now} in its middle. The bass string is to come down "
        "from {action_bass_now} to {action_bass} at the 12th, the treble from "
        "{action_treble_now} to {action_treble}. What shows in the middle afterwards?",
        asks="saddle_after", within="0.03 mm",
        draw={
            "saddle_now": (3.4, 4.6, 0.05), "action_bass_now": (2.7, 3.2, 0.05),
            "action_treble_now": (1.9, 2.2, 0.05), "action_bass": (2.2, 2.4, 0.05),
            "action_treble": (1.6, 1.8, 0.05),
        },
        slips=(
            Slip(name="bass-everywhere", formula="saddle_now - saddle_cut_bass",
                 why="Only the bass end loses that much. The middle loses the mean of both ends."),
            Slip(name="sum-of-both", formula="saddle_now - saddle_cut_bass - saddle_cut_treble",
                 why="The middle loses the mean of the two cuts, not their sum."),
            Slip(name="not-twice",
                 formula="saddle_now - (action_bass_now - action_bass + action_treble_now "
                 "- action_treble) / 2",
                 why="You took off what is too much at the 12th; at the saddle it is twice that."),
        ),
    ),
    Exercise(
        name="over-the-first-fret",
        situation="On a scale of {scale_length} the treble string clears the first fret by "
        "{first_fret_gap_treble}. At the 12th it is lowered from {action_treble_now} to "
        "{action_treble} at the saddle alone. What does it clear over the first fret then?",
        asks="first_fret_gap_treble_after", within="0.01 mm",
        draw={"scale_length": (620, 660, 1), "first_fret_gap_treble": (0.22, 0.4, 0.01),
              "action_treble_now": (2.1, 2.7, 0.05), "action_treble": (1.6, 1.8, 0.05)},
        slips=(
            Slip(name="unchanged", formula="first_fret_gap_treble",
                 why="The whole string tilts about the nut. An eighteenth of the cut arrives over "
                 "the first fret."),
            Slip(name="as-at-the-12th", formula="first_fret_gap_treble - saddle_cut_treble / 8",
                 why="The first fret is an eighteenth of the string from the nut, not an eighth."),
        ),
    ),
)

DECISIONS = (
    Decision(
        name="lower-or-raise",
        situation="Relief and nut are right. At the 12th the bass string reads {action_bass_now} and "
        "is to read {action_bass}, the treble {action_treble_now} and {action_treble}. The saddle "
        "shows {saddle_now} in its middle, and at least {saddle_least} must show. What do you do?",
        options=(
            Option(
                words="Make a higher saddle",
                holds="saddle_raise >= 0.1",
                why="Under both strings it may come down: by {saddle_cut_bass} under the bass, by "
                "{saddle_cut_treble} under the treble.",
            ),
            Option(
                words="Take it off the saddle's foot",
                holds="min(saddle_cut_bass, saddle_cut_treble) >= 0.08 "
                "and saddle_after >= saddle_least + 0.1",
                why="Off the foot: {saddle_cut_bass} under the bass, {saddle_cut_treble} under the "
                "treble (minus: it has to rise). Then {saddle_after} shows, and {saddle_least} must.",
            ),
            Option(
                words="Stop and ask: too little of the saddle would show",
                holds="min(saddle_cut_bass, saddle_cut_treble) >= 0.08 "
                "and saddle_after <= saddle_least - 0.1",
                why="{saddle_after} would show, and {saddle_least} must.",
            ),
        ),
        because="At the saddle it is twice what is wrong at the 12th: {saddle_cut_bass} under the "
        "bass, {saddle_cut_treble} under the treble (minus: it has to rise); then {saddle_after} "
        "shows in the middle.",
        draw={
            "action_bass_now": (2.2, 3.2, 0.05), "action_treble_now": (1.65, 2.6, 0.05),
            "saddle_now": (2.6, 4.0, 0.05), "action_bass": (2.3, 2.4, 0.05),
        },
        fixed={"action_treble": 1.8},
    ),
)
# fmt: on
