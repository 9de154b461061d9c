"""Sources, outside checks and exercises of the neck-angle calculation."""

from ..engine.declaration import Check, Decision, Exercise, Option, Slip, Source
from ..sources import COMMON_PRACTICE, GEOMETRY
from ._neck_angle_geometry import dish_rise_mm

EQUAL_DIVISION = Source(
    id="equal-division",
    title="Equal division of the octave: each fret shortens the string by the ratio 2^(1/12)",
    author="Barbour, J. M., Tuning and Temperament: A Historical Survey",
    year="1951",
    note="The ratio is a definition; the book is named from memory.",
)
MONTE_CARLO = Source(
    id="jcgm-101",
    title="JCGM 101, Propagation of distributions using a Monte Carlo method; with JCGM 100 for "
    "the standard deviation of an error that is even over its limits (a/√3)",
    author="Joint Committee for Guides in Metrology",
    year="2008",
    note="Titles and clauses from memory; the figures are checked with scipy.",
)
MPMATH = Source(
    id="mpmath",
    title="mpmath 1.4.1 (tables of frets and sagittas: 1.3.0), 50 digits",
    kind="library",
    note="Fret places, sagittas and right triangles worked out independently: the pitch as the "
    "root of L sin θ + (b + h_s) cos θ = Z, the bow as a parabola through three points.",
)
SCIPY = Source(
    id="scipy",
    title="scipy 1.18.1: optimize.fsolve and stats.norm",
    kind="library",
    note="fsolve turns a drawn neck until the string from nut to saddle clears the 12th fret by "
    "the action and the saddle stands over its place; relief there is an arc of a circle.",
)
TANGENTS = Source(
    id="tangent-table",
    title="Table of natural tangents, half-degree steps, eight decimals",
    note="A public source file that prints the table; the file's repository is not known.",
)
SOURCES = (GEOMETRY, COMMON_PRACTICE, EQUAL_DIVISION, MONTE_CARLO, MPMATH, SCIPY, TANGENTS)

# Each row: scale, joint, board, fret, rise, bridge, saddle, lift, bass, treble, nut, relief.
_NAMES = (
    "scale_length", "body_joint_fret", "board_joint", "fret_height", "arch_measured",
    "bridge_thickness", "saddle_height", "string_lift", "action_bass", "action_treble",
    "nut_height", "relief",
)  # fmt: skip


def _instrument(*figures: float) -> dict[str, float]:
    return dict(zip(_NAMES, figures, strict=True))


# fmt: off
CHECKS = (
    *(
        Check(
            inputs={"body_joint_fret": fret}, source="mpmath", origin="library",
            where=f"table of fret positions, 650 mm, to the bridge from fret {fret}",
            expected={"joint_to_bridge": to_bridge},
        )
        for fret, to_bridge in (
            (13, "306.759152"), (15, "273.291335"), (16, "257.952671"), (17, "243.474900"),
        )
    ),
    Check(
        inputs={"scale_length": 380, "body_joint_fret": 12, "arch_from": "dish",
                "dish_radius": 6096, "dish_span": 380, "fret_radius": 304.8,
                "string_spread": 50},
        source="mpmath", origin="library",
        where="table of sagittas: R = 6096 mm with a chord of 380 mm, R = 304.8 mm with 50 mm",
        expected={"dish_rise": "2.96167746", "camber": "1.02699264"},
    ),
    Check(
        inputs={"fret_radius": 241.3, "string_spread": 50}, source="mpmath", origin="library",
        where="table of sagittas: R = 241.3 mm with a chord of 50 mm",
        expected={"camber": "1.29856250"},
    ),
    Check(
        function=dish_rise_mm,
        given={"dish_radius_mm": 7620, "span_mm": 100, "along_mm": 50},
        source="mpmath", origin="library", unit="mm",
        where="table of sagittas: R = 7620 mm with a chord of 100 mm",
        expected={"": "0.16404376"},
    ),
    Check(
        inputs={}, source="mpmath", origin="library",
        where="right triangles of the example, 50 digits, printed to ten",
        expected={
            "relief_share": "0.3898704394", "saddle_over_frets": "3.594051824",
            "pitch": "1.169231592", "rise_in_100": "2.040977425",
            "straightedge_height": "9.906696509", "camber": "0.9122903421",
            "pitch_now": "1.098596974", "heel_cut": "0.1171166905", "side_cut": "0.07736353810",
            "side_per_shaving": "0.5170394346",
        },
    ),
    Check(
        inputs=_instrument(648, 14, 6.2, 1.0, 3.0, 9.6, 3.4, 0.6, 2.3, 1.7, 0.5, 0.15),
        source="mpmath", origin="library",
        where="right triangles of a 648 mm scale, 50 digits, printed to ten",
        expected={"pitch": "1.194879320", "straightedge_height": "10.21769677"},
    ),
    Check(
        inputs={**_instrument(610, 12, 5.8, 1.05, 4.2, 9, 4, 0.4, 3.2, 2.8, 0.6, 0.2)},
        source="mpmath", origin="library",
        where="right triangles of a joint at the 12th fret, 50 digits, printed to ten",
        expected={"pitch": "1.005430234", "clearance": "-0.9991685977"},
    ),
    *(
        Check(
            inputs=_instrument(*figures), source="scipy", origin="library",
            where=f"fsolve, drawn neck of a {figures[0]} mm scale, joint at fret {figures[1]}",
            expected={"pitch": pitch, "straightedge_height": height},
        )
        for figures, pitch, height in (
            ((864, 16, 6.8, 1.2, 2.8, 11, 4, 0.6, 3.0, 2.2, 0.5, 0.3), "1.014222", "11.26790"),
            ((430, 14, 5.5, 0.9, 1.6, 8, 3, 0.2, 2.6, 2.4, 0.4, 0.1), "0.561919", "6.67819"),
            ((660, 12, 6.0, 1.0, 3.0, 9.0, 4.5, 0.4, 3.6, 3.0, 0.7, 0.15),
             "0.694676", "8.00043"),
        )
    ),
    Check(
        inputs={"proud_now": 1, "cheek_taper": 3}, source="tangent-table", origin="read",
        where="tan 3.0°, seating deeper by 1 mm", expected={"cheek_cut": "0.05240778"},
    ),
    Check(
        inputs={"proud_now": 1, "cheek_taper": 2}, source="tangent-table", origin="read",
        where="tan 2.0°, seating deeper by 1 mm", expected={"cheek_cut": "0.03492077"},
    ),
    Check(
        inputs={"dry_fit": "not_yet", "error_kind": "standard", "err_height": 0.1,
                "draws": 2000},
        source="scipy", origin="library",
        where="norm.ppf(0.975) = 1.959964 times 0.1 mm either side of 9.9067 mm",
        expected={"height_low": "9.7107", "height_high": "10.1027"},
        within="0.015",
        because="2000 draws leave the ends of the interval uncertain by some 0.006 mm",
    ),
)

EXERCISES = (
    Exercise(
        name="straightedge-height",
        situation="The bridge is {bridge_thickness} thick and the saddle will stand "
        "{saddle_height} above it. Wanted at the 12th: {action_bass} bass, {action_treble} treble. "
        "At the nut the strings stand {nut_height} over the fret plane. The neck will be kept dead "
        "straight: relief {relief}. The strings will lift the bridge by {string_lift}. At what "
        "height must a straightedge on the frets pass over the top at the bridge place?",
        asks="straightedge_height",
        draw={
            "bridge_thickness": (8.5, 10.5, 0.1), "saddle_height": (3.2, 4.4, 0.1),
            "action_bass": (2.0, 2.8, 0.1), "action_treble": (1.5, 1.9, 0.1),
            "nut_height": (0.3, 0.5, 0.05), "string_lift": (0.5, 1.0, 0.1),
        },
        fixed={"dry_fit": "not_yet", "relief": 0, "body_joint_fret": 14},
        within="0.05 mm",
        slips=(
            Slip(name="same-at-the-saddle",
                 formula="string_over_top + string_lift - (action_bass + action_treble) / 2",
                 why="The string leaves the frets in a straight line from the nut: over the saddle "
                 "it has risen twice as far as at the 12th, which is half way."),
            Slip(name="nut-forgotten",
                 formula="string_over_top + string_lift - (action_bass + action_treble)",
                 why="The string does not start on the fret plane: at the nut it already stands "
                 "above it, so less is left to rise."),
            Slip(name="lift-forgotten", formula="string_over_top - saddle_over_frets",
                 why="Without the lift the neck is right only until the strings pull the top up."),
            Slip(name="added", formula="string_over_top + string_lift + saddle_over_frets",
                 why="The straightedge lies on the frets, below the string: subtract."),
        ),
    ),
    Exercise(
        name="pitch",
        situation="A neck of {scale_length} scale joins the body at fret {body_joint_fret}. The "
        "board is {board_joint} thick there, the frets stand {fret_height} high and the top rises "
        "by {arch_measured} from joint to bridge. Bridge {bridge_thickness}, saddle "
        "{saddle_height} above it; the strings will lift them by {string_lift}. Wanted: "
        "{action_bass} and {action_treble} at the 12th, {nut_height} at the nut, relief {relief}. "
        "What pitch does the neck need against the rim plane?",
        asks="pitch",
        draw={
            "scale_length": (630, 660, 1), "board_joint": (5.8, 7.0, 0.1),
            "fret_height": (0.9, 1.3, 0.1), "arch_measured": (2.5, 4.5, 0.1),
            "bridge_thickness": (9.0, 10.0, 0.1), "saddle_height": (3.2, 4.0, 0.1),
        },
        fixed={"dry_fit": "not_yet", "body_joint_fret": 14},
        within="0.02 deg",
        slips=(
            Slip(name="fret-forgotten",
                 formula="asin(saddle_over_rim / hypot(joint_to_bridge, board_joint + "
                 "saddle_over_frets)) - atan((board_joint + saddle_over_frets) / joint_to_bridge)",
                 why="The straightedge lies on the frets, not on the wood: they count too."),
            Slip(name="arch-forgotten",
                 formula="asin((saddle_over_rim - arch) / hypot(joint_to_bridge, board_and_fret + "
                 "saddle_over_frets)) - atan((board_and_fret + saddle_over_frets) / "
                 "joint_to_bridge)",
                 why="The bridge stands on the arch: the pitch has to climb that as well."),
            Slip(name="rise-for-degrees", formula="rise_in_100",
                 why="This is the rise in millimetres over 100 mm, not the angle in degrees."),
        ),
    ),
    Exercise(
        name="heel-end",
        situation="Dry, without any shim, the straightedge passes {height_now} over the top at the "
        "bridge place; it should pass 9.91 mm (0.3900 in). The board lies down on the top. The heel "
        "is {heel_length} long from board to cap, and it is 289.5 mm (11.40 in) from the joint to "
        "the bridge place. {finish_build} of lacquer will come on the side. How much has to come "
        "off both shoulders at the heel end, all in all?",
        asks="heel_off",
        draw={
            "height_now": (9.0, 9.4, 0.02), "heel_length": (85, 105, 0.5),
            "finish_build": (100, 200, 5),
        },
        fixed={"shim_now": 0, "proud_now": 0},
        within="0.02 mm",
        slips=(
            Slip(name="wrong-end", formula="board_off",
                 why="That is the board end. To lift the line at the bridge the neck tilts back, "
                 "and for that the heel end has to go in."),
            Slip(name="lacquer-forgotten", formula="heel_cut",
                 why="The lacquer to come needs room too, all along the shoulders."),
            Slip(name="no-lever", formula="straightedge_height - height_now",
                 why="The bridge lies further from the joint than the heel is long: what is "
                 "missing there is some three times what comes off the heel."),
            Slip(name="lever-turned-over",
                 formula="(straightedge_height - height_now) * joint_to_bridge / heel_length",
                 why="The lever is turned over: the heel is the short arm, so the cut is smaller."),
        ),
    ),
)

DECISIONS = (
    Decision(
        name="heel-end-or-board-end",
        situation="Dry, on its shim, the straightedge on the frets passes {height_now} over the top at "
        "the bridge place; it should pass {straightedge_height}. Your reading is good to "
        "{err_height}. The board lies down on the top. Where do you take wood off the shoulders?",
        options=(
            Option(
                words="Nowhere: it is right, as far as this reading tells",
                holds="pitch_way == 'nothing' "
                "and abs(straightedge_height - height_now) <= 0.8 * err_height",
                why="{height_now} where {straightedge_height} is wanted is more than the {err_height} "
                "that the reading may be off.",
            ),
            Option(
                words="At the heel end of both, running out to nothing at the board",
                holds="pitch_way == 'off the heel end' "
                "and straightedge_height - height_now >= 1.3 * err_height",
                why="That tilts the neck back and lifts the line at the bridge; it passes "
                "{height_now} and should pass {straightedge_height}, give or take {err_height}.",
            ),
            Option(
                words="At the board end of both, running out to nothing at the heel cap",
                holds="pitch_way == 'off the board end' "
                "and height_now - straightedge_height >= 1.3 * err_height",
                why="That tilts the neck forward and lowers the line at the bridge; it passes "
                "{height_now} and should pass {straightedge_height}, give or take {err_height}.",
            ),
        ),
        because="It passes {height_now} and should pass {straightedge_height}, give or take "
        "{err_height}. Off the heel end lifts the line at the bridge, off the board end lowers it.",
        draw={
            "height_now": (9.3, 10.5, 0.05), "bridge_thickness": (9.3, 9.7, 0.01),
            "saddle_height": (3.3, 3.7, 0.05), "err_height": (0.1, 0.3, 0.02),
        },
        fixed={"proud_now": 0, "draws": 200},
    ),
    Decision(
        name="bass-or-treble-shoulder",
        situation="The heel is {shoulder_width} wide over both shoulders. Dry, the neck's centre line "
        "passes {offset_now} off the centre at the bridge place (plus: towards the treble side). Your "
        "reading is good to {err_offset}. Where do you take wood off?",
        options=(
            Option(
                words="Nowhere: it is in the middle, as far as this reading tells",
                holds="side_way == 'nothing' and abs(offset_now) <= 0.8 * err_offset",
                why="{offset_now} is more than the {err_offset} that the reading may be off.",
            ),
            Option(
                words="Off the treble shoulder",
                holds="side_way == 'off the treble side' and offset_now >= 1.3 * err_offset",
                why="That swings the line at the bridge towards the bass side; it is off by "
                "{offset_now}, give or take {err_offset}.",
            ),
            Option(
                words="Off the bass shoulder",
                holds="side_way == 'off the bass side' and -offset_now >= 1.3 * err_offset",
                why="That swings the line at the bridge towards the treble side; it is off by "
                "{offset_now}, give or take {err_offset}.",
            ),
        ),
        because="It is off by {offset_now} (plus: towards the treble side), give or take "
        "{err_offset}. Wood off a shoulder swings the line at the bridge away from that side.",
        draw={"offset_now": (-1.2, 1.2, 0.1), "shoulder_width": (50, 62, 0.5),
              "err_offset": (0.2, 0.7, 0.02)},
        fixed={"draws": 200},
    ),
)
# fmt: on
