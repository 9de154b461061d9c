"""Shell let into a round board or an edge: thickness, pocket, what levelling leaves, the blank."""

from ..engine.declaration import Calculator, Caution, Drawing
from ._inlay_checks import CHECKS, DECISIONS, EXERCISES, SOURCES
from ._inlay_drawing import draw_pocket, draw_strip
from ._inlay_inputs import FOLDED, inputs
from ._inlay_work import TABLES, work

calculator = Calculator(
    name="inlay-depth",
    title="Inlay depth",
    summary="How thick shell must be so that its edges outlast the radius of the board, how deep "
    "its pocket, how wide a channel for strips, and how many pieces a blank gives.",
    other_words=(
        "pearl", "mother of pearl", "abalone", "inlay thickness", "pocket depth", "dots", "blocks",
        "sanded through the inlay", "inlay too thin", "shell channel", "position markers",
    ),
    inputs=inputs,
    folded=FOLDED,
    work=work,
    tables=TABLES,
    results=(
        "verdict", "pocket_depth", "left_edge", "left_top", "least_thickness", "pocket_edge",
        "edge_fall", "board_under", "pieces",
        "channel_width", "channel_depth", "strip_words", "longest_straight", "clearance_needed",
        "strip_left", "strips_out", "strip_run",
        "round_radius", "fall_along", "top_fall", "tilt", "curve_loss", "strip_curve_loss",
        "pieces_across", "pieces_along",
    ),
    aside=(
        "round_radius", "fall_along", "top_fall", "tilt", "curve_loss", "strip_curve_loss",
        "pieces_across", "pieces_along",
    ),
    drawings=(
        Drawing(name="pocket", title="The pocket across the board", function=draw_pocket,
                only_if="work == 'figure'"),
        Drawing(name="strip", title="The strip in its curve, from above", function=draw_strip,
                only_if="work == 'strip'"),
    ),
    cautions=(
        Caution(
            text="Shell dust hurts the lungs for good. Saw, file and level it wet, extraction on, "
            "mask on, and wipe the slurry up before it dries. Ebony and rosewood dust can cause "
            "allergies.",
        ),
        Caution(
            text="Instant glue holds skin in seconds and its fumes sting: eye protection, air, and "
            "never near heat.",
        ),
        Caution(
            text="Only {board_under} of wood stays under the pocket: mind the fret slots beside it "
            "and do not press it through.",
            only_if="0 < (board_under if work == 'figure' else 9) "
            "and (board_under if work == 'figure' else 9) < 2",
        ),
        Caution(
            text="The pocket goes through the wood ({board_joint}): thinner shell, or let the piece "
            "through on purpose and back it.",
            only_if="(board_under if work == 'figure' else 9) <= 0",
        ),
        Caution(
            text="The piece with its allowance does not come out of this blank at all.",
            only_if="(pieces if work == 'figure' else strips_out) == 0",
        ),
        Caution(
            text="Levelling would leave {strip_left} of shell in the channel; {least_left} is "
            "wanted.",
            only_if="(strip_left - least_left if work == 'strip' else 0) < 0",
        ),
        Caution(
            text="A blank as hollow as this snaps when it is pressed flat: lap it, do not force "
            "it.",
            only_if="blank_hollow > 0.3",
        ),
    ),
    validity="Exact for a flat piece and a round that is a true circle across. Where the radius "
    "grows along the board, the rounder end of the piece counts. The hollow of a blank is taken as "
    "a shallow arc. Pieces of a blank are counted as rectangles laid in rows all one way; round a "
    "crack or a dull place you will get fewer. A tilted floor is for boards rounded first.",
    sources=SOURCES,
    checks=CHECKS,
    exercises=EXERCISES,
    decisions=DECISIONS,
)  # fmt: skip
