"""The worked steps of the neck-angle calculation, from the inputs to the plan."""

from ..engine.declaration import Constant, Given, Limit, Solved, Step, Work
from ._neck_angle_geometry import rise_of_top
from ._neck_angle_plan import plan
from ._neck_angle_spread import cut_spread, spread
from ._neck_angle_words import MEASURED, WORDS

GEOMETRY, TEMPERED, PRACTICE = "plane-geometry", "equal-division", "common-practice"

CONSTANTS = (
    Constant(name="um_per_mm", label="Micrometres in a millimetre", unit="um/mm", decimals=0,
             value=1000, source=GEOMETRY),
    Constant(name="hundred", label="Length the rise is stated over", unit="mm", decimals=0,
             value=100, source=GEOMETRY),
    Constant(name="shaving", label="One shaving", unit="mm", decimals=1, value=0.1,
             source=PRACTICE),
)  # fmt: skip


def _mm(name: str, label: str, symbol: str, decimals: int = 2) -> Given:
    return Given(name=name, label=label, symbol=symbol, unit="mm", decimals=decimals)


def _words(name: str, label: str) -> Given:
    return Given(name=name, label=label, unit="1", decimals=0, text=True)


# fmt: off
PITCH: tuple[Work, ...] = (
    Limit(
        holds="last_fret > body_joint_fret", blames="last_fret", source=PRACTICE,
        otherwise="The board would end at the joint or before it; give the number of its last fret",
        allowed="a last fret past fret {body_joint_fret}",
    ),
    Limit(
        holds="fret_radius == 0 or fret_radius >= 100", blames="fret_radius", source=PRACTICE,
        otherwise="No board is rounded as tightly as that; give the radius across the frets",
        allowed="0 for a flat board, or 100 mm and more",
    ),
    Step(
        name="joint_to_bridge", label="Joint to bridge place, along the frets", symbol="L",
        unit="mm", decimals=2, formula="scale_length * 2 ** (-body_joint_fret / 12)",
        source=TEMPERED,
    ),
    Step(
        name="first_fret", label="Nut to first fret", symbol="x_1", unit="mm", decimals=2,
        formula="scale_length * (1 - 2 ** (-1 / 12))", source=TEMPERED,
    ),
    Step(
        name="joint_fret", label="Nut to body-joint fret", symbol="x_j", unit="mm", decimals=2,
        formula="scale_length - joint_to_bridge", source=TEMPERED,
    ),
    Step(
        name="relief_share", label="Share of the relief at the 12th fret", symbol="k", unit="1",
        decimals=3, source=GEOMETRY,
        formula="4 * (scale_length / 2 - first_fret) * (joint_fret - scale_length / 2) / "
        "(joint_fret - first_fret) ** 2 if body_joint_fret > 12 else 0",
    ),
    Step(
        name="relief_dip", label="Dip of the 12th fret below the fret plane", symbol="δ",
        unit="mm", decimals=3, formula="relief_share * relief", source=GEOMETRY,
    ),
    Limit(
        holds="2 * (min(action_bass, action_treble) - relief_dip) > nut_height",
        blames="nut_height", source=GEOMETRY,
        otherwise="The string would slope down from the nut into the frets; lower the nut, ask for "
        "more action, or less relief",
        allowed="less than twice the lower action, the dip by relief ({relief_dip}) taken off it",
    ),
    Step(
        name="saddle_over_frets", label="String over the fret plane at the saddle", symbol="h_s",
        unit="mm", decimals=2, source=GEOMETRY,
        formula="action_bass + action_treble - 2 * relief_dip - nut_height",
    ),
    Limit(
        holds="dish_span > joint_to_bridge", blames="dish_span", only_if="arch_from == 'dish'",
        source=GEOMETRY, allowed="a span above {joint_to_bridge}",
        otherwise="The arch would end before the bridge place, {joint_to_bridge} from the joint; "
        "give the whole span from rim to rim",
    ),
    Step(
        name="dish_rise", label="Rise of the dished top from joint to bridge", symbol="a_d",
        unit="mm", decimals=2, only_if="arch_from == 'dish'", source=GEOMETRY,
        formula="sqrt(dish_radius ** 2 - (joint_to_bridge - dish_span / 2) ** 2) - "
        "sqrt(dish_radius ** 2 - (dish_span / 2) ** 2)",
    ),
    Limit(
        holds="dish_rise <= 15", blames="dish_radius", only_if="arch_from == 'dish'",
        source=PRACTICE, allowed="a radius for which the top rises by 15 mm at most",
        otherwise="This dish lifts the top by {dish_rise} at the bridge, which is no flat-top; "
        "check radius and span",
    ),
    Step(
        name="tongue_length", label="Joint to the last fret", symbol="L_e", unit="mm", decimals=2,
        formula="joint_to_bridge - scale_length * 2 ** (-last_fret / 12)", source=TEMPERED,
    ),
    Solved(
        name="rise_of_top", label="Rise of the top above the rim plane", function=rise_of_top,
        gives=(_mm("arch", "Under the bridge place", "a"),
               _mm("end_rise", "Under the board's end", "a_e")),
        method="From the dish: a circle through the rim at both ends. From a measured rise: that "
        "rise at the bridge place, and a parabola from the joint that has its crown there.",
        source=GEOMETRY,
    ),
    Step(
        name="board_and_fret", label="Board and fret at the joint", symbol="b", unit="mm",
        decimals=2, formula="board_joint + fret_height", source=GEOMETRY,
    ),
    Step(
        name="string_over_top", label="String over the top at the bridge", symbol="G", unit="mm",
        decimals=2, formula="bridge_thickness + saddle_height", source=GEOMETRY,
    ),
    Step(
        name="saddle_over_rim", label="String over the rim plane at the bridge, before the lift",
        symbol="Z", unit="mm", decimals=2, formula="string_over_top + string_lift + arch",
        source=GEOMETRY,
    ),
    Step(
        name="pitch", label="Pitch of the neck against the rim plane", symbol="θ", unit="deg",
        decimals=2, source=GEOMETRY,
        formula="asin(saddle_over_rim / hypot(joint_to_bridge, board_and_fret + saddle_over_frets))"
        " - atan((board_and_fret + saddle_over_frets) / joint_to_bridge)",
    ),
    Limit(
        holds="-2 <= pitch and pitch <= 5", blames="bridge_thickness", source=PRACTICE,
        otherwise="These heights ask for a pitch of {pitch}, which no flat-top neck has; check "
        "bridge, saddle, arch and board",
        allowed="heights that give a pitch from -2 to 5 degrees",
    ),
    Step(
        name="rise_in_100", label="Pitch as a rise over 100 mm", symbol="ρ", unit="mm",
        decimals=2, formula="hundred * tan(pitch)", source=GEOMETRY,
    ),
    Step(
        name="straightedge_height", label="Straightedge over the top at the bridge place, wanted",
        symbol="H", unit="mm", decimals=2, source=GEOMETRY,
        formula="string_over_top + string_lift - saddle_over_frets * cos(pitch)",
    ),
    Limit(
        holds="straightedge_height > 0", blames="saddle_height", source=GEOMETRY,
        otherwise="The line of the frets would run into the top before the bridge; make bridge or "
        "saddle higher, or ask for less action",
        allowed="bridge and saddle above {saddle_over_frets} together",
    ),
    Step(
        name="clearance", label="Straightedge over the bridge, once it is on", symbol="C",
        unit="mm", decimals=2, formula="straightedge_height - bridge_thickness", source=GEOMETRY,
    ),
    Step(
        name="camber", label="Outer strings lie lower than the middle, at the saddle, by",
        symbol="d", unit="mm", decimals=2, source=GEOMETRY,
        formula="fret_radius - sqrt(fret_radius ** 2 - (string_spread / 2) ** 2) "
        "if fret_radius > 0 else fret_radius",
    ),
    Step(
        name="saddle_bass", label="Saddle above the bridge, bass string", symbol="w_b", unit="mm",
        decimals=2, source=GEOMETRY,
        formula="saddle_height + (action_bass - action_treble - camber) * cos(pitch)",
    ),
    Step(
        name="saddle_treble", label="Saddle above the bridge, treble string", symbol="w_t",
        unit="mm", decimals=2, source=GEOMETRY,
        formula="saddle_height + (action_treble - action_bass - camber) * cos(pitch)",
    ),
    Limit(
        holds="min(saddle_bass, saddle_treble) > 0", blames="saddle_height", source=GEOMETRY,
        otherwise="An outer end of the saddle would come out level with the bridge's top or below "
        "it; ask for a higher saddle or a flatter board",
        allowed="a saddle that stands above the bridge under both outer strings",
    ),
    Step(
        name="tongue_gap", label="Gap under the board's end, before it is bedded", symbol="g",
        unit="mm", decimals=2, source=GEOMETRY,
        formula="tongue_length * sin(pitch) + (board_joint - board_end) * cos(pitch) - end_rise",
    ),
    Step(
        name="bridge_per_shaving", label="0.1 mm off the heel end lifts the line at the bridge by",
        symbol="ΔH", unit="mm", decimals=2, source=GEOMETRY,
        formula="shaving / heel_length * (joint_to_bridge * cos(pitch) - "
        "board_and_fret * sin(pitch))",
    ),
    Step(
        name="action_per_shaving", label="The same cut changes the action at the 12th, saddle kept",
        symbol="ΔA", unit="mm", decimals=2, formula="-bridge_per_shaving / (2 * cos(pitch))",
        source=GEOMETRY,
    ),
    Step(
        name="side_per_shaving", label="0.1 mm off one side moves the line sideways at the bridge",
        symbol="Δy", unit="mm", decimals=2, source=GEOMETRY,
        formula="shaving / shoulder_width * joint_to_bridge",
    ),
    Limit(
        holds="shim_place == 'side' or finish_build >= 1000 * binding_proud",
        blames="binding_proud", source=PRACTICE,
        otherwise="More binding will be scraped away than lacquer comes on, so no shim over the "
        "binding can stand for both; scrape the binding beside the mortise first",
        allowed="binding that stands up by {finish_build} at most",
    ),
    Step(
        name="shim_wanted", label="Shim for the dry fit", symbol="s", unit="mm", decimals=2,
        formula="finish_build / um_per_mm - binding_proud * (1 if shim_place == 'binding' else 0)",
        source=PRACTICE,
    ),
)

DRY_FIT: tuple[Work, ...] = (
    Step(
        name="pitch_now", label="Pitch of the joint as it was read", symbol="θ_m", unit="deg",
        decimals=2, only_if=MEASURED, source=GEOMETRY,
        formula="asin((height_now + arch - proud_now) / hypot(joint_to_bridge, board_and_fret)) - "
        "atan(board_and_fret / joint_to_bridge)",
    ),
    Step(
        name="action_now", label="Action at the 12th, mean, with the wanted saddle, as it was read",
        symbol="A_m", unit="mm", decimals=2, only_if=MEASURED, source=GEOMETRY,
        formula="(nut_height + (string_over_top + string_lift - height_now) / cos(pitch_now)) / 2 "
        "+ relief_dip",
    ),
    Step(
        name="heel_cut", label="For the pitch: off the heel end (minus: off the board end)",
        symbol="z", unit="mm", decimals=2, only_if=MEASURED, source=GEOMETRY,
        formula="heel_length * tan(pitch - pitch_now)",
    ),
    Step(
        name="side_cut", label="For the side: off the treble shoulder (minus: off the bass one)",
        symbol="y", unit="mm", decimals=2, only_if=MEASURED, source=GEOMETRY,
        formula="shoulder_width * offset_now / joint_to_bridge",
    ),
    Step(
        name="even_cut", label="For the lacquer: off both shoulders alike", symbol="v", unit="mm",
        decimals=2, only_if=MEASURED, formula="shim_wanted - shim_now", source=PRACTICE,
    ),
    Step(
        name="cheek_cut", label="For the seat: off each cheek", symbol="x", unit="mm", decimals=3,
        only_if=MEASURED, formula="proud_now * tan(cheek_taper)", source=GEOMETRY,
    ),
)

SPREAD: tuple[Work, ...] = (
    Solved(
        name="spread", label="What the measuring errors do", function=spread,
        gives=(
            _mm("height_low", "Straightedge height, from", "H_-"),
            _mm("height_high", "Straightedge height, to", "H_+"),
            _mm("height_worst", "Straightedge height, worst case either way", "δH"),
            Given(name="pitch_low", label="Pitch, from", symbol="θ_-", unit="deg", decimals=2),
            Given(name="pitch_high", label="Pitch, to", symbol="θ_+", unit="deg", decimals=2),
            Given(name="pitch_worst", label="Pitch, worst case either way", symbol="δθ",
                  unit="deg", decimals=2),
            _mm("action_low", "Action at the 12th, from", "A_-"),
            _mm("action_high", "Action at the 12th, to", "A_+"),
            _mm("action_worst", "Action at the 12th, worst case either way", "δA"),
        ),
        method="Every figure moves in a straight line with small errors. Monte Carlo: the errors "
        "are drawn many times from the seed, and the middle 95 % read off. Worst case: every error "
        "at its limit (twice a standard uncertainty), all the same bad way.",
        source="jcgm-101",
    ),
    Solved(
        name="cut_spread", label="How sure the cuts are", function=cut_spread, only_if=MEASURED,
        gives=(
            _mm("heel_low", "Heel end, from", "z_-"), _mm("heel_high", "Heel end, to", "z_+"),
            _mm("side_low", "Treble shoulder, from", "y_-"),
            _mm("side_high", "Treble shoulder, to", "y_+"),
            _mm("seat_low", "Seat, from", "p_-"), _mm("seat_high", "Seat, to", "p_+"),
        ),
        method="The same draws, carried on to the cuts. What wanted and present pitch share (arch, "
        "board, fret) all but cancels.",
        source="jcgm-101",
    ),
    Solved(
        name="plan", label="Cut or shim, and where", function=plan, only_if=MEASURED,
        gives=(
            _words("pitch_way", "For the pitch"), _words("side_way", "For the side"),
            _words("even_way", "For the lacquer"), _words("seat_way", "For the seat"),
            _mm("heel_off", "By the figures, heel end: pitch and lacquer together", "z_h"),
            _mm("board_off", "By the figures, board end: pitch and lacquer together", "z_b"),
            _mm("heel_size", "Cut or shim for the pitch", ""),
            _mm("side_size", "Cut or shim for the side", ""),
            _mm("even_size", "Cut or packing for the lacquer", ""),
            _mm("cheek_size", "Cut or shaving on each cheek", "", 3),
            _mm("seat_size", "How far the neck has to come down or up", ""),
            _mm("joint_moves_in", "The cuts let the neck in by", "i"),
            _mm("joint_left", "Left to spare at the joint fret", "m_l"),
            Given(name="corners", label="Corners", unit="mm", decimals=2, many=True),
        ),
        method="A cut whose 95 % interval holds zero is left undone. Where the cuts would let the "
        "neck in further than can be spared, shims at the opposite end or side take their place.",
        source=PRACTICE,
    ),
)

WORK: tuple[Work, ...] = (*PITCH, *DRY_FIT, *SPREAD, *WORDS)
# fmt: on
