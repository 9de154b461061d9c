"""The pitch of the neck, and what to take off the dovetail's shoulders to reach it.

The geometry is told in ``_neck_angle_geometry``, the measuring errors in ``_neck_angle_spread``,
cut or shim in ``_neck_angle_plan``.
"""

from ..engine.declaration import Calculator, Caution, Column, Drawing, Table
from ._neck_angle_checks import CHECKS, DECISIONS, EXERCISES, SOURCES
from ._neck_angle_drawings import draw_plan, draw_side
from ._neck_angle_inputs import GAUGES, INPUTS
from ._neck_angle_work import CONSTANTS, WORK

# fmt: off
calculator = Calculator(
    name="neck-angle",
    title="Neck angle",
    summary="The pitch that brings the strings to the wanted action, the height a straightedge "
    "must pass at, and how much to take off which end and side of the shoulders to get there.",
    other_words=("neck pitch", "neck set", "neck reset", "action too high", "action too low",
                 "straightedge on the bridge", "shave the heel", "neck off centre", "dovetail",
                 "shim", "saddle height", "neck alignment"),
    inputs=INPUTS,
    constants=CONSTANTS,
    work=WORK,
    tables=(
        Table(
            name="shoulders", title="Where to take off the shoulders, at their outer edges",
            rows="corners", only_if="dry_fit == 'measured'", source="plane-geometry",
            columns=(
                Column(name="place", label="Corner", unit="1", decimals=0, text=True),
                Column(name="for_pitch", label="For the pitch", unit="mm", decimals=2),
                Column(name="for_side", label="For the side", unit="mm", decimals=2),
                Column(name="for_lacquer", label="For the lacquer", unit="mm", decimals=2),
                Column(name="in_all", label="In all", unit="mm", decimals=2),
            ),
            note="Plus is wood to take off, minus a shim of that thickness. The cut for the side "
            "runs out to nothing across the heel's width, the cut for the pitch along its length; "
            "where the heel is narrower, the cut for the side is less in the same proportion.",
        ),
    ),
    results=(
        "say_pitch", "say_side", "say_seat", "say_shim", "say_aim", "straightedge_height",
        "clearance", "pitch", "rise_in_100", "string_over_top", "saddle_bass", "saddle_treble",
        "tongue_gap", "pitch_now", "action_now", "heel_off", "board_off", "side_cut", "cheek_cut",
        "shim_wanted", "joint_left", "bridge_per_shaving", "action_per_shaving",
        "side_per_shaving", "say_height_spread", "say_pitch_spread", "say_action_spread",
    ),
    aside=(
        "tongue_gap", "pitch_now", "action_now", "heel_off", "board_off", "side_cut", "cheek_cut",
        "joint_left", "bridge_per_shaving", "action_per_shaving", "side_per_shaving",
        "say_height_spread", "say_pitch_spread", "say_action_spread",
    ),
    drawings=(
        Drawing(name="side", title="The neck from the side", function=draw_side),
        Drawing(name="plan", title="The neck from above; the offset is drawn large",
                function=draw_plan, only_if="dry_fit == 'measured'"),
    ),
    cautions=(
        Caution(
            text="Chisel and knife cut towards a hand sooner or later: keep both hands behind the "
            "edge, never one in front of it, and clamp the neck.",
        ),
        Caution(
            text="Take less than the figure, draw the joint home, measure, then take again. Wood "
            "does not come back.",
        ),
        Caution(
            text="Glueing is final. Prove the fit dry once more, shim in place and clamped as it "
            "will be glued, before any glue is mixed.",
        ),
        Caution(
            text="Paring and scraping make fine dust, and rosewood, ebony and mahogany dust can "
            "cause allergies: extract it or wear a dust mask, as your local rules ask.",
        ),
        Caution(
            text="{heel_size} at the heel is no shaving. Measure again, check the figures, and ask "
            "before you cut.",
            only_if="dry_fit == 'measured' and heel_size > 0.6",
        ),
        Caution(
            text="The cuts would let the neck in by {joint_moves_in}, more than the {spare} that "
            "the joint fret can spare: stop and ask; the figures above give shims instead.",
            only_if="dry_fit == 'measured' and joint_left < 0",
        ),
        Caution(
            text="The binding stands up by {binding_proud}, no lower than the shim, {shim_wanted}: "
            "the shoulder would bear on binding that the scraper takes away. Scrape it down beside "
            "the mortise first.",
            only_if="shim_place == 'side' and binding_proud > 0 and binding_proud >= shim_wanted",
        ),
        Caution(
            text="The line of the frets passes below the bridge's top ({clearance}). Little is "
            "left to lower the saddle once the top has risen.",
            only_if="clearance < 0",
        ),
        Caution(
            text="The board's end and the top do not meet ({tongue_gap}; minus means that the top "
            "is in the way). Bed the tongue on a wedge or thin it before glueing, or it kinks at "
            "the joint.",
            only_if="abs(tongue_gap) > 0.3",
        ),
    ),
    validity="Exact for a flat-top whose frets lie in one plane from the first fret to the joint. "
    "The string is taken as straight, the bridge's top as flat from side to side, and the saddle "
    "at the scale length: setting it back by a few millimetres adds a few hundredths. Strings that "
    "spread over a rounded board come out some hundredths lower at the 12th. How far strings lift "
    "the bridge is the shop's own figure; the calculation does not foretell it. Cuts are for "
    "shoulders that bear along their outer edges; they do not follow what the cheeks do as the "
    "neck turns.",
    sources=SOURCES,
    checks=CHECKS,
    exercises=EXERCISES,
    decisions=DECISIONS,
    folded=(GAUGES,),
)
# fmt: on
