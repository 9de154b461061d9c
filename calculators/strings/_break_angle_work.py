"""The worked steps of the break-angle calculation: every string, then the weakest step by step."""

from ..engine.declaration import Constant, Given, Limit, Said, Solved, Step, Work
from ..laws.string_bends import CAPSTAN, RESULTANT
from ._break_angle_solved import at_the_nut, at_the_saddle

GEOMETRY, PRACTICE = "plane-geometry", "common-practice"
SOLID, SLOTTED = "head == 'solid'", "head == 'slotted'"

CONSTANTS = (
    Constant(name="octave", label="Cents in an octave", symbol="", unit="cents", decimals=0,
             value=1200, source=CAPSTAN.id),
    Constant(name="half_turn", label="Half a turn", symbol="", unit="deg", decimals=0, value=180,
             source=GEOMETRY),
)  # fmt: skip


def _step(
    name: str, label: str, symbol: str, unit: str, decimals: int, formula: str, only_if: str = "",
    source: str = GEOMETRY,
) -> Step:  # fmt: skip
    return Step(name=name, label=label, symbol=symbol, unit=unit, decimals=decimals,
                formula=formula, only_if=only_if, source=source)  # fmt: skip


def _text(name: str, label: str) -> Given:
    return Given(name=name, label=label, unit="1", decimals=0, text=True)


def _given(name: str, label: str, unit: str, decimals: int, symbol: str = "") -> Given:
    return Given(name=name, label=label, symbol=symbol, unit=unit, decimals=decimals)


# fmt: off
_all: tuple[Work, ...] = (
    Limit(
        holds="least_saddle < most_saddle", blames="least_saddle", source=PRACTICE,
        otherwise="The least angle over the saddle is no less than the greatest; give them in order",
        allowed="less than {most_saddle}",
    ),
    Solved(
        name="at_the_nut", label="Every string at the nut", function=at_the_nut,
        source=RESULTANT.id,
        gives=(
            Given(name="nut_rows", label="Strings", unit="1", decimals=0, many=True),
            _text("weak_string", "String with the least angle down"),
            _given("weak_pull", "its pull", "N", 0, "T"),
            _given("weak_gauge", "its gauge", "mm", 2, "g"),
            _given("weak_along", "nut to its post", "mm", 1, "a"),
            _given("weak_aside", "its post aside", "mm", 1, "v"),
            _text("steep_string", "String with the greatest angle down"),
            _given("steep_down", "its angle down", "deg", 1),
            _given("nut_total", "Strings press the nut down with", "N", 0, "F_n"),
            _given("worst_flat", "Flat after a wide bend, tuned down to pitch, at most", "cents", 1),
        ),
        method="The line that touches post or roller, turned by the head's angle; string by string. "
        "The weakest is worked out step by step below.",
    ),
    Solved(
        name="at_the_saddle", label="Every string at the saddle", function=at_the_saddle,
        source=RESULTANT.id,
        gives=(
            Given(name="string_rows", label="Strings", unit="1", decimals=0, many=True),
            _text("flat_string", "String with the least angle over the saddle"),
            _given("flat_showing", "saddle showing there", "mm", 2, "w_f"),
            _given("flat_pull", "its pull", "N", 0, "T_f"),
            _text("most_string", "String with the greatest angle over the saddle"),
            _given("saddle_most_angle", "its angle", "deg", 1),
            _given("saddle_total", "Strings press the saddle down with", "N", 0, "F_s"),
            _given("saddle_push", "Strings push the saddle towards the nut with", "N", 0, "F_f"),
            _given("pull_total", "Strings pull, all together", "N", 0),
        ),
        method="The crest as a parabola through its three heights; straight from there to the edge "
        "of the hole.",
    ),
)

_nut: tuple[Work, ...] = (
    _step("post_reach", "String's middle stands off the middle of the post", "ρ", "mm", 2,
          "(post_diameter + weak_gauge) / 2", SOLID),
    _step("post_distance", "Nut to the middle of the post, on the face", "D", "mm", 2,
          "hypot(weak_along, weak_aside)", SOLID),
    _step("post_turn", "The string turns aside, seen from above, by", "ψ", "deg", 2,
          "atan(weak_aside / weak_along) - asin(post_reach / post_distance)", SOLID),
    _step("forward", "It goes forward along the face by", "x", "mm", 2,
          "sqrt(post_distance ** 2 - post_reach ** 2) * cos(post_turn)", SOLID),
    _step("sideways", "and aside by", "y", "mm", 2,
          "sqrt(post_distance ** 2 - post_reach ** 2) * sin(post_turn)", SOLID),
    _step("leave_height", "It leaves the post over the face by", "p", "mm", 2,
          "hole_height - windings * weak_gauge", SOLID),
    _step("fall", "It falls against the face by", "z", "mm", 2, "string_over_face - leave_height",
          SOLID),
    _step("post_reach", "String's middle stands off the middle of the roller", "ρ", "mm", 2,
          "(roller_diameter + weak_gauge) / 2", SLOTTED),
    _step("axis_fall", "Roller's middle below the string in the nut", "k", "mm", 2,
          "string_over_face + roller_depth", SLOTTED),
    _step("post_distance", "Nut to the middle of the roller, seen from the side", "D", "mm", 2,
          "hypot(weak_along, axis_fall)", SLOTTED),
    _step("post_turn", "The string falls against the face by an angle of", "ψ", "deg", 2,
          "atan(axis_fall / weak_along) - asin(post_reach / post_distance)", SLOTTED),
    _step("forward", "It goes forward along the face by", "x", "mm", 2,
          "sqrt(post_distance ** 2 - post_reach ** 2) * cos(post_turn)", SLOTTED),
    _step("sideways", "and aside by", "y", "mm", 2, "weak_aside", SLOTTED),
    _step("fall", "It falls against the face by", "z", "mm", 2,
          "sqrt(post_distance ** 2 - post_reach ** 2) * sin(post_turn)", SLOTTED),
    _step("nut_down", "Angle down behind the nut, weakest string", "ν", "deg", 1,
          "head_angle + atan(fall / forward)"),
    _step("head_string", "String between nut and post", "ℓ", "mm", 1,
          "sqrt(forward ** 2 + sideways ** 2 + fall ** 2)"),
    _step("nut_whole", "Whole angle at the nut, down and aside, weakest string", "θ", "deg", 1,
          "acos((forward * cos(head_angle) - fall * sin(head_angle)) / head_string)"),
    _step("nut_press", "The weakest string presses on the nut with", "R", "N", 1,
          "2 * weak_pull * sin(nut_whole / 2)", source=RESULTANT.id),
    _step("winding_gain", "One more winding down makes it steeper by", "Δν", "deg", 2,
          "atan((fall + weak_gauge) / forward) - atan(fall / forward)", SOLID),
    _step("capstan", "Pulls before and behind the nut may differ by the factor", "c", "1", 4,
          "exp(friction * nut_whole * pi / half_turn)", source=CAPSTAN.id),
    _step("length_share", "String behind the nut over the scale", "λ", "1", 4,
          "head_string / scale_length"),
    _step("flat_even", "Weakest string, flat after a wide bend, at most", "Δ_e", "cents", 2,
          "-octave / 2 * log2(1 - length_share * (capstan - 1) / (1 + capstan * length_share))",
          source=CAPSTAN.id),
    _step("flat_tuned_down", "The same if it was last tuned down to pitch", "Δ_d", "cents", 2,
          "-octave / 2 * log2(1 - length_share * (capstan - 1 / capstan) "
          "/ (1 + capstan * length_share))", source=CAPSTAN.id),
)

_bridge: tuple[Work, ...] = (
    _step("behind", "Behind the saddle the weakest string falls by an angle of", "β", "deg", 1,
          "atan((flat_showing + ramp_depth) / pin_back)"),
    _step("saddle_angle", "Angle over the saddle, weakest string", "σ", "deg", 1,
          "front_rise + behind"),
    _step("saddle_press", "It presses on the saddle with", "R_s", "N", 1,
          "2 * flat_pull * sin(saddle_angle / 2)", source=RESULTANT.id),
    Limit(
        holds="saddle_angle > 0", blames="front_rise", source=GEOMETRY,
        otherwise="The string would not bend over the saddle at all; look over its climb and the "
        "bridge",
        allowed="a string that goes down behind the saddle",
    ),
    _step("ramp_needed", "For the least angle, string below the bridge's top at the hole (minus: above)", "r_1",
          "mm", 1, "pin_back * tan(least_saddle - front_rise) - flat_showing",
          "least_saddle - front_rise < 85"),
)

_words: tuple[Work, ...] = (
    Said(
        name="nut_words", label="At the nut",
        cases=(
            ("nut_down < least_nut and head == 'solid'",
             "Too flat: string {weak_string} goes down by {nut_down} only, less than {least_nut}. "
             "One more winding gives {winding_gain}; a bar or a lower post gives more."),
            ("nut_down < least_nut",
             "Too flat: string {weak_string} goes down by {nut_down} only, less than {least_nut}."),
            ("", "Steep enough: from {nut_down} (string {weak_string}) to {steep_down} (string "
             "{steep_string}) down; the least is {least_nut}."),
        ),
    ),
    Said(
        name="saddle_words", label="Over the saddle",
        cases=(
            ("saddle_angle < least_saddle and least_saddle - front_rise < 85",
             "Too flat: string {flat_string} bends by {saddle_angle} only, less than "
             "{least_saddle}. Its ramp would have to reach {ramp_needed} below the bridge's top."),
            ("saddle_angle < least_saddle",
             "Too flat: string {flat_string} bends by {saddle_angle} only, less than "
             "{least_saddle}."),
            ("saddle_most_angle > most_saddle",
             "Too steep: string {most_string} bends by {saddle_most_angle}, more than "
             "{most_saddle}. Ease the back of the crest, or fill the ramp."),
            ("", "Right: from {saddle_angle} (string {flat_string}) to {saddle_most_angle} (string "
             "{most_string}); {least_saddle} to {most_saddle} is allowed."),
        ),
    ),
    Said(
        name="hang_words", label="Coming home after a bend",
        cases=(
            ("worst_flat < 1",
             "The nut lets the strings home to within {worst_flat}, however they were tuned."),
            ("", "A string last tuned down may stay flat by up to {worst_flat} after a wide bend. "
             "Come up to pitch from below, and ease the slot with pencil lead."),
        ),
    ),
)
# fmt: on

WORK: tuple[Work, ...] = (*_all, *_nut, *_bridge, *_words)
