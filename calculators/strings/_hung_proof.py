"""Outside figures that the hung-weights calculation is held against, and exercises."""

from ..engine.declaration import Check, Decision, Exercise, Option, Slip
from ..laws.tapered_cantilever import end_load, even_load_share

TWELVE = {
    "scale_length": 632, "body_joint_fret": 12, "last_fret": 19, "thickness_first": 21.5,
    "thickness_second": 23, "second_fret": 8, "neck_width_nut": 46, "board_end_width": 58,
    "action_bass": 2.3, "action_treble": 1.7, "string_tension": 690, "hung_weight": 5.8,
}  # fmt: skip

CHECKS = (
    Check(
        function=end_load, source="sympy-beams", origin="library",
        where="cantilever of 300 mm, 6 by 12 mm, 10.83 GPa (E·I 9.35712 N·m²), 20 N at its end",
        given={"load_n": 20.0, "length_mm": 300.0, "stiffness_n_m2": 9.35712},
        expected={"drop": "19.2366882", "slope": "0.0961834411"},
    ),
    Check(
        function=even_load_share, given={"pieces": 6}, expected={"": "0.125"}, origin="read",
        source="wood-handbook-9", where="table 9-1, cantilever under an even load: 1/8",
    ),
    Check(
        inputs={"arrangement": "one"}, source="scipy-bvp", origin="library",
        where="the example, a neck of 645 mm",
        expected={
            "stiffness_nut": "388.8635633", "sag_strings": "0.2487521", "weight_first": "5.3730462",
            "drop_strings": "1.194003", "drop_weights": "1.391013", "middle_moment": "10.088782",
            "neck[14].string_moment": "11.199522",
        },
    ),
    Check(
        inputs=TWELVE, source="scipy-bvp", origin="library", where="a neck of 632 mm, 12 frets free",
        expected={"stiffness_nut": "288.46805", "sag_strings": "0.2497104",
                  "weight_first": "5.7932824", "drop_strings": "1.231135"},
    ),
    Check(
        inputs={"arrangement": "two"}, source="scipy-bvp", origin="library",
        where="the example, two weights, the second 100 mm beyond the nut",
        expected={"weight_first": "-8.195339", "weight_second": "8.899971"},
    ),
    Check(
        inputs={"hang_place": 30, "first_read_fret": 0}, source="scipy-bvp", origin="library",
        where="hung 30 mm beyond the nut, bow read from the nut",
        expected={"stiffness_nut": "521.918052", "sag_strings": "0.2327626",
                  "weight_first": "5.0276714", "middle_moment": "9.9637059"},
    ),
    Check(
        inputs={"pressed_fret": 5}, source="scipy-bvp", origin="library",
        where="strings pressed at the fifth fret",
        expected={"sag_strings": "0.2326426", "weight_first": "5.0250804",
                  "neck[14].string_moment": "10.7271465"},
    ),
)  # fmt: skip

EXERCISES = (
    Exercise(
        name="moment-at-the-joint",
        situation="A neck of {scale_length} scale is held at fret {body_joint_fret}. A weight of "
        "{hung_weight} hangs at the nut. With what moment does it bend the neck at the joint?",
        asks="hung_moment",
        within="2 %",
        draw={
            "scale_length": (620, 660, 0.5), "body_joint_fret": (13, 15, 1),
            "hung_weight": (4.5, 7, 0.05),
        },
        slips=(
            Slip(
                name="kilograms-for-newtons", formula="hung_moment / 9.80665",
                why="You took the kilograms for newtons: a kilogram pulls with 9.81 N.",
            ),
            Slip(
                name="whole-scale", formula="hung_pull * scale_length / mm_per_m",
                why="The lever ends at the joint, where the neck is held, not at the saddle.",
            ),
            Slip(
                name="wrong-end", formula="hung_pull * (scale_length - neck_length) / mm_per_m",
                why="That is the way from the joint to the saddle. The weight hangs at the nut.",
            ),
        ),
    ),
    Exercise(
        name="let-the-rod-out",
        situation="The weight in hand makes just the strings' hollow. Without it the neck reads "
        "{bow_free}, under it {bow_loaded}, hollow plus; the rod moves the bow by "
        "{rod_effect}. You want {relief} of relief under the strings. How far do you let the rod "
        "out?",
        asks="rod_turn",
        within="0.03 turn",
        draw={
            "bow_free": (-0.3, -0.12, 0.02), "bow_loaded": (-0.06, 0.06, 0.02),
            "relief": (0.16, 0.3, 0.02), "rod_effect": (0.4, 0.8, 0.02),
        },
        fixed={"hung_weight": 5.373},
        slips=(
            Slip(
                name="from-the-free-bow", formula="(relief - bow_free) / rod_effect",
                why="You started from the bow without the weight. The strings will bend the neck as the "
                "weight does: start from the bow under it.",
            ),
            Slip(
                name="times-for-over", formula="(relief - bow_loaded) * rod_effect",
                why="Millimetres over millimetres a turn gives turns; you multiplied.",
            ),
            Slip(
                name="the-other-way", formula="(bow_loaded - relief) / rod_effect",
                why="More relief is more hollow, and that is a rod let out, not tightened.",
            ),
        ),
    ),
)  # fmt: skip

DECISIONS = (
    Decision(
        name="which-way-the-rod",
        situation="The weight in hand makes just the strings' hollow. Without it the neck reads "
        "{bow_free}, under it {bow_loaded}, hollow plus; the rod moves the bow by "
        "{rod_effect}. {relief} of relief is wanted under the strings; less than a twentieth of a turn "
        "is not worth the key. What do you do with the rod?",
        options=(
            Option(
                words="Let it out",
                holds="rod_turn >= 0.09",
                why="Let out, the neck gets more hollow; under the strings it will stand at "
                "{bow_strings} as it is, and {relief} is wanted.",
            ),
            Option(
                words="Tighten it",
                holds="rod_turn <= -0.09",
                why="Tightened, the neck gets less hollow; under the strings it will stand at "
                "{bow_strings} as it is, and {relief} is wanted.",
            ),
            Option(
                words="Leave it",
                holds="abs(rod_turn) <= 0.04",
                why="Under the strings it will stand at {bow_strings}, and {relief} is wanted: that "
                "is {rod_turn} (plus: out).",
            ),
        ),
        because="Under the strings it will stand as under the weight, at {bow_strings}; for {relief} "
        "the rod has to go {rod_turn} (plus: out).",
        draw={
            "bow_free": (-0.3, 0, 0.02), "bow_loaded": (0.1, 0.34, 0.02), "relief": (0.16, 0.3, 0.02),
            "rod_effect": (0.5, 1.2, 0.05),
        },
        fixed={"hung_weight": 5.373},
    ),
)  # fmt: skip
