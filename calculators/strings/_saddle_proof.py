"""Outside figures that the saddle calculation is held against, and exercises."""

from ..engine.declaration import Check, Decision, Exercise, Option, Slip
from ..laws.fretted_strings import stiff_pitch_hz

SERIES = "the calculation takes the ends to the second order, the source solves them exactly"
UKULELE = {
    "string_set": "ukulele", "scale_length": 380, "frets": 18, "relief": 0.05,
    "fret_height": 0.95, "action_bass": 2.2, "action_treble": 2.0, "first_fret_gap_bass": 0.4,
    "first_fret_gap_treble": 0.35,
}  # fmt: skip


def _solved(
    where: str, chosen: dict[str, object], within: str = "0.0006", **expected: str
) -> Check:
    names = {"first": "crest[1 E].set_back", "last": "crest[6 E].set_back",
             "nut": "crest[6 E].nut_move", "third": "crest[3 C].set_back"}  # fmt: skip
    return Check(
        inputs=chosen, source="scipy-fretted", origin="library", where=where, within=within,
        because=SERIES, expected={names[name]: digits for name, digits in expected.items()},
    )  # fmt: skip


def _pitch(where: str, ends: float, hertz: str) -> Check:
    return Check(
        function=stiff_pitch_hz, source="scipy-fretted", origin="library",
        where=f"322.5 mm, 103 N, 1.0163 g/m, E·I 266.750 N·mm², ends {where}", unit="Hz",
        given={
            "length_mm": 322.5, "pull_n": 103.0, "mass_g_m": 1.0163, "ends": ends,
            "bend_mm": 1.6092863,
        },
        expected={"": hertz}, within="0.0003", because=SERIES,
    )  # fmt: skip


CHECKS = (
    _pitch("hinged", 0.0, "493.6297138"),
    _pitch("running on", 0.5, "496.1050866"),
    _pitch("clamped", 1.0, "498.6060270"),
    _solved("octave true, strings running on over crest and fret", {}, first="1.88718",
            last="4.35880"),
    _solved("octave true, hinged", {"ends": "hinged"}, first="0.98859", last="2.68208"),
    _solved("octave true, clamped", {"ends": "clamped"}, first="2.78593", last="6.03669"),
    _solved("all frets by least squares", {"aim": "frets"}, first="1.75863", last="4.11152"),
    _solved("all frets by least squares, nut moved", {"aim": "both"}, first="1.35981",
            last="3.38955", nut="1.02303"),
    _solved("a ukulele's C string of nylon", UKULELE, within="0.002", third="3.70506"),
    Check(
        inputs={}, source="scipy-fretted", origin="library", within="0.005", because=SERIES,
        where="low E of the example with no set-back, fret by fret, taut over every crown",
        expected={
            "fret[1].plain": "2.99121", "fret[2].plain": "3.75314", "fret[7].plain": "7.58169",
            "fret[12].plain": "11.91967", "fret[14].plain": "13.91156", "fret[20].plain": "23.11061",
        },
    ),
    Check(
        inputs={"finger_force": 15}, source="scipy-fretted", origin="library", within="0.005",
        because=SERIES, where="the same pressed with 15 N",
        expected={
            "fret[1].plain": "24.86734", "fret[2].plain": "23.77639", "fret[12].plain": "24.88010",
            "fret[20].plain": "31.21812",
        },
    ),
    Check(
        inputs={"scale_length": 650, "frets": 22}, source="mpmath-frets", origin="library",
        where="table of fret positions, 650 mm",
        expected={
            "fret[1].from_nut": "36.481697", "fret[7].from_nut": "216.177047",
            "fret[15].from_nut": "376.708665", "fret[22].from_nut": "467.599917",
        },
    ),
    Check(
        inputs={}, source="iso-16", origin="library", where="notes on the low E string",
        expected={
            "fret[2].pitch": "92.4986056779086", "fret[5].pitch": "110.0",
            "fret[9].pitch": "138.591315488436", "fret[20].pitch": "261.625565300599",
        },
    ),
)  # fmt: skip

EXERCISES = (
    Exercise(
        name="move-the-crest",
        situation="On a scale of {scale_length} the pressed octave sounds {octave_off} sharp of the "
        "harmonic. How far back must the crest go?",
        asks="crest_move",
        within="4 %",
        draw={"scale_length": (330, 670, 1), "octave_off": (3, 15, 0.1)},
        slips=(
            Slip(
                name="half-the-string", formula="crest_move / 2",
                why="That lengthens the pressed half enough, but the open string gets longer as well, "
                "and takes half of it back.",
            ),
            Slip(
                name="a-semitone-for-an-octave", formula="scale_length * octave_off / cents_per_octave",
                why="The pitch goes with the logarithm of the length: ln 2 belongs in it.",
            ),
            Slip(
                name="per-cent-for-cents", formula="scale_length * octave_off / 1000",
                why="A cent is no thousandth. It is the 1200th part of an octave, a change of length "
                "by 0.058 %.",
            ),
        ),
    ),
    Exercise(
        name="slant-of-the-slot",
        situation="The middle of the slot lies {setback_treble} behind the scale at the first string "
        "and {setback_bass} at the last; those two are {string_spread_bridge} apart. By what angle does "
        "the slot slant?",
        asks="slot_slant",
        within="3 %",
        draw={
            "setback_treble": (1.5, 3.5, 0.1), "setback_bass": (4.2, 6, 0.1),
            "string_spread_bridge": (48, 60, 0.1),
        },
        slips=(
            Slip(
                name="whole-set-back", formula="atan(setback_bass / string_spread_bridge)",
                why="The treble end is set back as well: only the difference slants the slot.",
            ),
            Slip(
                name="in-per-cent",
                formula="(setback_bass - setback_treble) / string_spread_bridge * 100",
                why="That is a rise in per cent. The angle is the arc tangent of the ratio.",
            ),
            Slip(
                name="half-the-spread",
                formula="atan(2 * (setback_bass - setback_treble) / string_spread_bridge)",
                why="The difference runs from the first string to the last, over the whole spread.",
            ),
        ),
    ),
)  # fmt: skip

DECISIONS = (
    Decision(
        name="where-to-file-the-crest",
        situation="On a scale of {scale_length} the pressed octave is off by {octave_off} from the "
        "harmonic (plus: sharp). Up to {octave_limit} is left alone. The crest stands in the middle of "
        "the saddle and may be filed {crest_reach} either way. What do you do?",
        options=(
            Option(
                words="Leave it",
                holds="abs(octave_off) <= 0.85 * octave_limit",
                why="It is off by {octave_off}, and up to {octave_limit} is left alone.",
            ),
            Option(
                words="File the crest back, away from the nut",
                holds="octave_off >= 1.15 * octave_limit and crest_move <= 0.9 * crest_reach",
                why="Back makes the string longer and the octave flatter. It is off by {octave_off} "
                "(plus: sharp), which is {crest_move} of crest (minus: forward); {crest_reach} is "
                "there.",
            ),
            Option(
                words="File the crest forward, towards the nut",
                holds="octave_off <= -1.15 * octave_limit and -crest_move <= 0.9 * crest_reach",
                why="Forward makes the string shorter and the octave sharper. It is off by "
                "{octave_off} (plus: sharp), which is {crest_move} of crest (minus: forward); "
                "{crest_reach} is there.",
            ),
            Option(
                words="Do not file: this saddle does not reach so far; look at slot and action first",
                holds="abs(crest_move) >= 1.1 * crest_reach "
                "and abs(octave_off) >= 1.15 * octave_limit",
                why="The crest would have to move by {crest_move} (minus: forward), and "
                "{crest_reach} is there.",
            ),
        ),
        because="Off by {octave_off} where {octave_limit} is left alone; for that the crest has to "
        "go back by {crest_move} (minus: forward), and {crest_reach} is there.",
        draw={
            "scale_length": (600, 660, 1), "octave_off": (-9, 9, 0.5), "octave_limit": (1, 3, 1),
            "crest_reach": (1.5, 3.5, 0.1),
        },
    ),
)  # fmt: skip
