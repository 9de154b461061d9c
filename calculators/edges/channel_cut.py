"""Channels for purfling and binding: how deep, which cutter and collar, in which passes."""

from ..engine.declaration import Calculator, Caution, Drawing
from ._channel_checks import CHECKS, DECISIONS, EXERCISES, SOURCES
from ._channel_drawing import draw_section
from ._channel_inputs import FOLDED, inputs
from ._channel_work import CONSTANTS, TABLES, work

calculator = Calculator(
    name="channel-cut",
    title="Channel for binding",
    summary="How deep and how high to cut the channel for this stack of strips, which cutter and "
    "collar in the drawer cut it, in which passes, and what a leaning machine does to it.",
    other_words=(
        "binding channel", "purfling channel", "rabbet", "rebate", "bearing", "collar",
        "router bit", "how deep for the binding", "binding too proud", "ledge",
        "which bearing", "binding ledge",
    ),
    inputs=inputs,
    folded=FOLDED,
    constants=CONSTANTS,
    work=work,
    tables=TABLES,
    results=(
        "channel_depth", "channel_height", "ledge_width", "ledge_height",
        "pair_words", "reach", "depth_error", "proud_got",
        "ledge_words", "no_ledge_words", "ledge_error",
        "pass_count", "stop_setting", "lean_words", "side_left",
        "collar_wanted", "wet_side", "wet_top", "plate_slope", "lean", "depth_floor",
        "depth_plate", "wall_lean", "lean_most", "floor_gap", "height_short",
    ),
    aside=(
        "collar_wanted", "wet_side", "wet_top", "plate_slope", "lean", "depth_floor",
        "depth_plate", "wall_lean", "lean_most", "floor_gap", "height_short",
    ),
    drawings=(
        Drawing(name="section", title="The edge in section, to scale", function=draw_section),
    ),
    cautions=(
        Caution(
            text="Plug out whenever a collar or cutter is changed. Two hands on the machine, body "
            "strapped in its cradle, feed against the turn of the cutter; eye and ear protection, "
            "extraction on. Rosewood dust can cause allergies.",
        ),
        Caution(
            text="Prove pair and stop on scrap with the strip itself: collars are precise, "
            "reground cutters are not.",
        ),
        Caution(
            text="With this pair the strip would stand {proud_got} out of the side laid dry: below "
            "the wood, where no scraper helps. Take a smaller reach or a thicker strip.",
            only_if="proud_got < 0",
        ),
        Caution(
            text="The channel goes through the side ({side_thickness}): lining will show. Thinner "
            "binding, or a less deep channel.",
            only_if="side_left <= 0",
        ),
        Caution(
            text="Only {side_left} of the side stays behind the channel: light passes, and the "
            "last one a shaving.",
            only_if="0 < side_left and side_left < 0.4",
        ),
        Caution(
            text="Under the foot the arch lifts the machine: set on flat scrap, the channel would "
            "come out {height_short} too shallow, more than the card allows. Give the stop "
            "{stop_setting}.",
            only_if="height_short > height_limit",
        ),
        Caution(
            text="The ledge goes through the plate ({plate_thickness}).",
            only_if="(ledge_height if ledge_count > 0 else 0) >= plate_thickness",
        ),
    ),
    validity="Exact for straight walls, round cutters and a collar that runs true and touches the "
    "side all along; it holds round bouts and waist as long as the cutter's radius is smaller "
    "than the hollow's. Film and swelling are what you enter: measure your own strips and cement. "
    "The lean is taken as the same along the height; a dip or a drop of glue on the side is copied "
    "into the wall besides. A side line welded under the binding counts in the binding's height.",
    sources=SOURCES,
    checks=CHECKS,
    exercises=EXERCISES,
    decisions=DECISIONS,
)  # fmt: skip
