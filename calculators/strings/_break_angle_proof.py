"""Where the break-angle calculation comes from, what it is held against, its exercises."""

from ..engine.declaration import Check, Decision, Exercise, Option, Slip, Source
from ..laws.string_bends import CAPSTAN, RESULTANT, capstan_ratio, flat_after_bend_cents
from ..sources import COMMON_PRACTICE, GEOMETRY

MPMATH = Source(
    id="mpmath-vectors",
    title="mpmath 1.4.1, 40 digits: sums of vectors",
    kind="library",
    note="The point where the string touches its post or roller by findroot, the head turned as "
    "vectors, both pulls added up; independently of this project.",
)
SCIPY = Source(
    id="scipy-capstan",
    title="scipy 1.18.1, integrate.solve_ivp (DOP853): dT = µ·T·dθ",
    kind="library",
)
NUMPY = Source(
    id="numpy-slip",
    title="numpy 2.5.1: a bend of 400 000 small steps over two springs and a capstan",
    kind="library",
    note="Sounding length and head as springs; string slides whenever the pulls differ by more "
    "than the capstan's factor.",
)
SOURCES = (GEOMETRY, RESULTANT, CAPSTAN, COMMON_PRACTICE, MPMATH, SCIPY, NUMPY)

ONE = [["3", 132, 0.61, 116, 16]]


# fmt: off
CHECKS = (
    Check(
        inputs={}, source=MPMATH.id, origin="library", where="six strings on a solid head",
        expected={
            "nut_down": "10.798336846", "nut_whole": "11.527112324", "nut_press": "21.088928284",
            "head_string": "40.387374265", "by_string[6].nut_down": "14.534291463",
            "by_string[6].nut_whole": "14.900170661", "by_string[6].nut_press": "29.822356714",
            "by_string[6].nut_aside": "6.655174205", "by_string[4].nut_down": "13.519949026",
            "by_string[4].nut_press": "34.619863006", "by_string[4].nut_aside": "14.441240846",
            "by_string[2].nut_whole": "13.767177796", "by_string[1].nut_aside": "7.4300873051",
        },
    ),
    Check(
        inputs={"head": "slotted"}, source=MPMATH.id, origin="library",
        where="the same strings on a slotted head",
        expected={
            "nut_down": "17.985444403", "nut_whole": "19.556247179", "nut_press": "45.515309088",
            "head_string": "117.74988737", "by_string[6].nut_down": "24.924139998",
            "by_string[6].nut_press": "52.02260076", "by_string[5].nut_whole": "21.278825417",
            "by_string[5].nut_aside": "17.521992648",
        },
    ),
    Check(
        inputs={"head_angle": 4, "string_over_face": 8, "hole_height": 9, "windings": 4,
                "post_diameter": 8, "strings": [["G", 60, 0.7, 150, -3]]},
        source=MPMATH.id, origin="library", where="a nearly flat head, post inside the line",
        expected={
            "nut_down": "4.6884941317", "nut_whole": "5.4629521084", "nut_press": "5.7186233395",
            "nut_total": "4.898417486", "by_string[G].nut_aside": "-2.9383483",
        },
    ),
    Check(
        inputs={}, source=MPMATH.id, origin="library", where="six strings over the saddle",
        expected={
            "saddle_angle": "21.841796558", "saddle_press": "39.785254685",
            "by_string[6].saddle_angle": "26.274153914",
            "by_string[6].saddle_press": "52.274752906",
            "by_string[6].saddle_forward": "10.633778465",
            "by_string[4].saddle_angle": "28.231115865",
            "by_string[2].saddle_press": "46.876557425",
            "by_string[1].saddle_forward": "6.5807730059",
        },
    ),
    *(
        Check(
            function=capstan_ratio, given={"friction": friction, "angle_deg": angle},
            source=SCIPY.id, origin="library", where=f"µ = {friction}, {angle}°",
            expected={"": ratio},
        )
        for friction, angle, ratio in (
            (0.15, 14, "1.03733187759"), (0.25, 180, "2.19328005074"), (0.3, 720, "43.37621218"),
        )
    ),
    Check(
        inputs={}, source=NUMPY.id, origin="library", where="first string, friction 0.2",
        expected={"flat_even": "2.09172728062", "flat_tuned_down": "4.10573080232"},
    ),
    *(
        Check(
            function=flat_after_bend_cents,
            given={"length_share": 0.2, "capstan": 1.1, "tuned_down": down},
            source=NUMPY.id, origin="library", unit="cents",
            where=f"a fifth of the scale behind the nut, factor 1.1, {words}",
            expected={"": cents},
        )
        for down, words, cents in (
            (False, "evened", "14.3080451726"), (True, "tuned down", "27.5238289706"),
        )
    ),
)

EXERCISES = (
    Exercise(
        name="angle-over-the-saddle",
        situation="The saddle shows {saddle_height}. The edge of the pin hole is {pin_back} behind "
        "its crest; there the string lies {ramp_depth} below the bridge's top. In front the string "
        "climbs by {front_rise}. By how much does it bend over the saddle?",
        asks="saddle_angle", within="0.3 deg",
        draw={
            "saddle_height": (2.5, 4.5, 0.1), "pin_back": (8, 14, 0.1),
            "ramp_depth": (1, 3, 0.1), "front_rise": (1.0, 2.0, 0.1),
        },
        fixed={"strings": ONE},
        slips=(
            Slip(name="front-forgotten", formula="behind",
                 why="The string climbs to the saddle too; both angles add up."),
            Slip(name="ramp-forgotten", formula="front_rise + atan(flat_showing / pin_back)",
                 why="Behind, the string goes down to the floor of the ramp, not to the bridge's "
                 "top."),
            Slip(name="turned-over",
                 formula="front_rise + atan(pin_back / (flat_showing + ramp_depth))",
                 why="You took the way back over the way down; the angle is measured from the "
                 "string's line."),
        ),
    ),
    Exercise(
        name="press-on-the-saddle",
        situation="A string pulls 132 N (29.7 lbf). The saddle shows {saddle_height}; {pin_back} behind its "
        "crest the string lies {ramp_depth} below the bridge's top; in front it climbs by {front_rise}. "
        "What does it press on the saddle with?",
        asks="saddle_press", within="1 %",
        draw={
            "saddle_height": (2.5, 4.0, 0.1), "pin_back": (9, 13, 0.1), "ramp_depth": (1, 2.5, 0.1),
            "front_rise": (1.0, 2.0, 0.1),
        },
        fixed={"strings": ONE},
        slips=(
            Slip(name="one-side", formula="flat_pull * sin(saddle_angle / 2)",
                 why="Both ends pull, in front and behind: twice that."),
            Slip(name="whole-angle-twice", formula="2 * flat_pull * sin(saddle_angle)",
                 why="The force halves the angle: 2·T·sin(θ/2), not of the whole angle."),
            Slip(name="pull-itself", formula="flat_pull",
                 why="That is what the string pulls lengthwise; on the saddle it presses only as "
                 "much as it bends."),
        ),
    ),
    Exercise(
        name="where-it-leaves-the-post",
        situation="In the nut a string of 0.61 mm (0.024 in) lies {string_over_face} over the head's "
        "face. The hole of its post is {hole_height} over the face, and it is wound {windings} times, "
        "downwards, in one layer. By how much does it fall against the face, from nut to post "
        "(climbs: minus)?",
        asks="fall", within="0.1 mm",
        draw={"string_over_face": (4.5, 8, 0.1), "hole_height": (6.5, 9.5, 0.1),
              "windings": (1.5, 4.5, 0.5)},
        fixed={"strings": ONE, "head": "solid"},
        slips=(
            Slip(name="wound-upwards", formula="string_over_face - (hole_height + windings * weak_gauge)",
                 why="Wound downwards each turn lies below the last: take it off."),
            Slip(name="windings-forgotten", formula="string_over_face - hole_height",
                 why="The string leaves from the lowest winding, not from the hole."),
            Slip(name="half-a-gauge",
                 formula="string_over_face - (hole_height - windings * weak_gauge / 2)",
                 why="Each winding takes up a whole thickness of string."),
        ),
    ),
)

PLACES = (
    3.5, 4, 4.5, 5, 5.5, 6, 7, 8, 9, 10, 11, 12, 14, 16, 18, 20, 22, 24, 26, 28, 30,
)  # of the pin hole, mm: as often far and near as usual
DECISIONS = (
    Decision(
        name="ramp-or-leave-it",
        situation="The saddle shows {saddle_height}. The edge of the pin hole is {pin_back} behind its "
        "crest; there the string lies {ramp_depth} below the bridge's top. In front the string climbs "
        "by {front_rise}. Over the saddle it must bend by {least_saddle} to {most_saddle}. What do "
        "you do?",
        options=(
            Option(
                words="Leave it",
                holds="saddle_angle >= least_saddle + 1.2 and saddle_angle <= most_saddle - 1.5",
                why="It bends by {saddle_angle}, outside of {least_saddle} to {most_saddle}.",
            ),
            Option(
                words="Deepen the ramp behind the saddle, a little at a time",
                holds="saddle_angle <= least_saddle - 1",
                why="A deeper ramp makes it bend more, and it bends by {saddle_angle} already.",
            ),
            Option(
                words="Ease it: lead the string into its hole further back, or higher",
                holds="saddle_angle >= most_saddle + 1.5",
                why="That makes it bend less, and it bends by {saddle_angle} only.",
            ),
        ),
        because="Behind the saddle it falls by {behind}, in front it climbs by {front_rise}: it bends "
        "by {saddle_angle}, and {least_saddle} to {most_saddle} is asked.",
        draw={
            "saddle_height": (0.5, 6, 0.1), "pin_back": PLACES, "ramp_depth": (0, 3.5, 0.5),
            "front_rise": (1.0, 2.0, 0.1),
        },
        fixed={"strings": ONE},
    ),
)
# fmt: on
