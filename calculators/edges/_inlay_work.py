"""The steps of the inlay calculation: fall of the board, pocket, what is left, strips, blank."""

from ..engine.declaration import Column, Given, Limit, Said, Solved, Step, Table, Work
from ._inlay_solved import profile_places, radius_at_piece

IS_FIGURE, IS_STRIP = "work == 'figure'", "work == 'strip'"
IS_TILTED = "work == 'figure' and pocket_floor == 'tilted' and round_radius > 0"
IS_LEVEL = "work == 'figure' and (pocket_floor == 'level' or round_radius == 0)"

_fall: tuple[Work, ...] = (
    Solved(
        name="radius_here", label="Radius of the board at the piece", function=radius_at_piece,
        gives=(
            Given(name="round_radius", label="Radius at its rounder end", symbol="R_1", unit="mm",
                  decimals=1),
            Given(name="flat_radius", label="Radius at its flatter end", symbol="R_2", unit="mm",
                  decimals=1),
        ),
        method="One radius all along, or growing evenly from the nut to the last fret; the piece "
        "in the middle before its fret. 0 is flat.",
        source="plane-geometry", only_if=IS_FIGURE,
    ),
    Step(
        name="reach_out", label="Outer edge of the piece, from the centre line", symbol="u",
        unit="mm", decimals=2, only_if=IS_FIGURE, formula="piece_offset + piece_width / 2",
        source="plane-geometry",
    ),
    Step(
        name="reach_in", label="The piece comes nearest to the centre line at", symbol="v",
        unit="mm", decimals=2, only_if=IS_FIGURE, source="plane-geometry",
        formula="max(piece_offset - piece_width / 2, 0)",
    ),
    Limit(
        holds="round_radius == 0 or reach_out <= round_radius / 2", blames="fret_radius",
        only_if=IS_FIGURE, source="common-practice",
        otherwise="The outer edge lies {reach_out} from the centre line, far round a board of only "
        "{round_radius} radius; look over radius, offset and width",
        allowed="0 for a flat board, or at least twice the outer edge's distance",
    ),
    Step(
        name="edge_reach", label="The fall at its edge counts over", symbol="u_e", unit="mm",
        decimals=2, only_if=IS_FIGURE, source="plane-geometry",
        formula="piece_width / 2 if pocket_floor == 'tilted' else reach_out",
    ),
    Step(
        name="top_reach", label="The fall at its highest place counts over", symbol="u_t",
        unit="mm", decimals=2, only_if=IS_FIGURE, source="plane-geometry",
        formula="0 * reach_in if pocket_floor == 'tilted' else reach_in",
    ),
    Step(
        name="edge_fall", label="The round falls, at the outer edge, by", symbol="s_e", unit="mm",
        decimals=3, only_if=IS_FIGURE, source="plane-geometry",
        formula="round_radius - sqrt(round_radius ** 2 - edge_reach ** 2) "
        "if round_radius > 0 else 0 * edge_reach",
    ),
    Step(
        name="top_fall", label="The round falls, at its highest place, by", symbol="s_t",
        unit="mm", decimals=3, only_if=IS_FIGURE, source="plane-geometry",
        formula="round_radius - sqrt(round_radius ** 2 - top_reach ** 2) "
        "if round_radius > 0 else 0 * top_reach",
    ),
    Step(
        name="fall_along", label="Outer edge, rounder end lower than the flatter by", symbol="s_a",
        unit="mm", decimals=3, only_if="work == 'figure' and board_shape == 'ends'",
        source="plane-geometry",
        formula="edge_fall - (flat_radius - sqrt(flat_radius ** 2 - edge_reach ** 2))",
    ),
)  # fmt: skip

_shell: tuple[Work, ...] = (
    Step(
        name="longest", label="Longest way across the piece", symbol="d", unit="mm", decimals=1,
        only_if=IS_FIGURE, formula="hypot(piece_width, piece_length)", source="plane-geometry",
    ),
    Step(
        name="curve_loss", label="Lapping the curved piece flat takes", symbol="h_p", unit="mm",
        decimals=3, only_if=IS_FIGURE, formula="blank_hollow * (longest / blank_length) ** 2",
        source="shell-curve",
    ),
    Step(
        name="strip_curve_loss", label="Lapping the curved strip flat takes", symbol="h_s",
        unit="mm", decimals=3, only_if=IS_STRIP,
        formula="blank_hollow * (strip_piece / blank_length) ** 2", source="shell-curve",
    ),
    Step(
        name="flat_thickness", label="The piece, lapped flat", symbol="t_f", unit="mm",
        decimals=3, only_if=IS_FIGURE, formula="shell_thickness - curve_loss",
        source="shell-curve",
    ),
    Step(
        name="strip_thickness", label="The strip, lapped flat", symbol="t_s", unit="mm",
        decimals=3, only_if=IS_STRIP, formula="shell_thickness - strip_curve_loss",
        source="shell-curve",
    ),
    Limit(
        holds="(flat_thickness if work == 'figure' else strip_thickness) >= shell_proud + 0.1",
        blames="shell_thickness", source="common-practice",
        otherwise="Nothing to speak of would lie in the wood: the blank is {shell_thickness} thick "
        "before it is lapped flat, and {shell_proud} is to stand above the wood; take a thicker or "
        "a flatter blank",
        allowed="a blank that is at least 0.1 mm thicker, lapped flat, than it stands proud",
    ),
)  # fmt: skip

_figure: tuple[Work, ...] = (
    Step(
        name="pocket_depth", label="Pocket, depth", symbol="P", unit="mm", decimals=2,
        only_if=IS_FIGURE, formula="flat_thickness - shell_proud + glue_film",
        source="common-practice",
    ),
    Step(
        name="left_edge", label="Shell left at its outer edge", symbol="t_e", unit="mm",
        decimals=2, only_if=IS_FIGURE, source="plane-geometry",
        formula="flat_thickness - shell_proud - levelled - edge_fall",
    ),
    Step(
        name="left_top", label="Shell left at its highest place", symbol="t_m", unit="mm",
        decimals=2, only_if=IS_FIGURE, source="plane-geometry",
        formula="flat_thickness - shell_proud - levelled - top_fall",
    ),
    Step(
        name="least_thickness", label="Least thickness of the blank", symbol="t_n", unit="mm",
        decimals=2, only_if=IS_FIGURE, source="plane-geometry",
        formula="least_left + shell_proud + levelled + edge_fall + curve_loss",
    ),
    Step(
        name="pocket_edge", label="Pocket, depth left at its outer end", symbol="P_e", unit="mm",
        decimals=2, only_if=IS_FIGURE, formula="pocket_depth - levelled - edge_fall",
        source="plane-geometry",
    ),
    Step(
        name="tilt", label="The floor leans by", symbol="τ", unit="deg", decimals=2,
        only_if=IS_TILTED, formula="asin(piece_offset / round_radius)", source="plane-geometry",
    ),
    Step(
        name="board_under", label="Board left under the pocket", symbol="B_u", unit="mm",
        decimals=2, only_if=IS_TILTED, source="plane-geometry",
        formula="board_joint - round_radius * (1 - cos(tilt)) - pocket_depth * cos(tilt) "
        "- piece_width / 2 * sin(tilt)",
    ),
    Step(
        name="board_under", label="Board left under the pocket", symbol="B_u", unit="mm",
        decimals=2, only_if=IS_LEVEL, formula="board_joint - pocket_depth",
        source="plane-geometry",
    ),
    Said(
        name="verdict", label="This blank", only_if=IS_FIGURE,
        cases=(
            ("left_edge <= 0",
             "Far too thin: levelling goes through the shell at its outer edge. Take one of at "
             "least {least_thickness}."),
            ("left_edge < least_left - 0.000001",
             "Too thin: {left_edge} would be left at the outer edge, {least_left} is wanted. Take "
             "one of at least {least_thickness}."),
            ("", "Thick enough: {left_edge} is left at the outer edge, {least_left} is wanted."),
        ),
    ),
    Solved(
        name="profile", label="Places across the piece", function=profile_places,
        gives=(Given(name="places", label="Places", unit="1", decimals=0, many=True),),
        method="Nine places from edge to edge.", source="plane-geometry", only_if=IS_FIGURE,
    ),
)  # fmt: skip

_strip: tuple[Work, ...] = (
    Step(
        name="channel_width", label="Channel, width", symbol="W", unit="mm", decimals=2,
        only_if=IS_STRIP, formula="strip_width + strip_clearance", source="common-practice",
    ),
    Step(
        name="channel_depth", label="Channel, depth", symbol="D", unit="mm", decimals=2,
        only_if=IS_STRIP, formula="strip_thickness - shell_proud + glue_film",
        source="common-practice",
    ),
    Step(
        name="strip_left", label="Shell left in the channel", symbol="t_l", unit="mm", decimals=2,
        only_if=IS_STRIP, formula="strip_thickness - shell_proud - levelled",
        source="common-practice",
    ),
    Limit(
        holds="strip_piece <= curve_radius and strip_clearance < curve_radius",
        blames="curve_radius", only_if=IS_STRIP, source="plane-geometry",
        otherwise="A piece {strip_piece} long is longer than the curve's radius of {curve_radius}; "
        "look over both",
        allowed="a radius of at least the length of the piece",
    ),
    Step(
        name="longest_straight", label="Longest piece that lies in uncracked", symbol="ℓ_s",
        unit="mm", decimals=1, only_if=IS_STRIP, source="plane-geometry",
        formula="2 * sqrt(strip_clearance * (2 * curve_radius - strip_clearance))",
    ),
    Step(
        name="clearance_needed", label="Uncracked, this piece needs a clearance of", symbol="c_n",
        unit="mm", decimals=3, only_if=IS_STRIP, source="plane-geometry",
        formula="curve_radius - sqrt(curve_radius ** 2 - (strip_piece / 2) ** 2)",
    ),
    Step(
        name="parts_of_piece", label="It cracks, or is broken, into parts", symbol="N_c",
        unit="1", decimals=0, only_if=IS_STRIP, source="plane-geometry",
        formula="ceil(strip_piece / longest_straight - 0.000001)",
    ),
    Said(
        name="strip_words", label="In the curve", only_if=IS_STRIP,
        cases=(
            ("parts_of_piece == 1", "A piece {strip_piece} long lies in as it is."),
            ("", "A piece {strip_piece} long does not lie in whole: it cracks into "
             "{parts_of_piece} as you press it down, or break it so first. Uncracked goes up to "
             "{longest_straight}."),
        ),
    ),
)  # fmt: skip

_blank: tuple[Work, ...] = (
    Step(
        name="cell_width", label="A piece takes of the blank, across", symbol="w_z", unit="mm",
        decimals=2, only_if=IS_FIGURE, formula="piece_width + 2 * saw_allowance + saw_kerf",
        source="common-practice",
    ),
    Step(
        name="cell_length", label="A piece takes of the blank, along", symbol="ℓ_z", unit="mm",
        decimals=2, only_if=IS_FIGURE, formula="piece_length + 2 * saw_allowance + saw_kerf",
        source="common-practice",
    ),
    Step(
        name="pieces_across", label="Pieces, their width across the blank", symbol="N_a",
        unit="1", decimals=0, only_if=IS_FIGURE, source="common-practice",
        formula="floor((blank_width + saw_kerf) / cell_width + 0.000001) * "
        "floor((blank_length + saw_kerf) / cell_length + 0.000001)",
    ),
    Step(
        name="pieces_along", label="Pieces, their width along the blank", symbol="N_b",
        unit="1", decimals=0, only_if=IS_FIGURE, source="common-practice",
        formula="floor((blank_length + saw_kerf) / cell_width + 0.000001) * "
        "floor((blank_width + saw_kerf) / cell_length + 0.000001)",
    ),
    Step(
        name="pieces", label="Pieces out of a blank, all laid one way", symbol="N", unit="1",
        decimals=0, only_if=IS_FIGURE, formula="max(pieces_across, pieces_along)",
        source="common-practice",
    ),
    Step(
        name="strips_out", label="Strips out of a blank", symbol="N_s", unit="1", decimals=0,
        only_if=IS_STRIP, source="common-practice",
        formula="floor((blank_width + saw_kerf) / (strip_width + 2 * saw_allowance + saw_kerf) "
        "+ 0.000001)",
    ),
    Step(
        name="strip_run", label="Run of channel that a blank fills", symbol="ℓ_r", unit="mm",
        decimals=0, only_if=IS_STRIP, formula="strips_out * blank_length",
        source="common-practice",
    ),
)  # fmt: skip

work: tuple[Work, ...] = (*_fall, *_shell, *_figure, *_strip, *_blank)

TABLES = (
    Table(
        name="profile", title="Across the piece, at its rounder end", rows="places",
        source="plane-geometry", only_if=IS_FIGURE,
        columns=(
            Column(name="place", label="Place", symbol="x", unit="mm", decimals=1),
            Column(name="fall", label="Round falls", unit="mm", decimals=3,
                   formula="round_radius - sqrt(round_radius ** 2 - place ** 2) "
                           "if round_radius > 0 else 0 * place"),
            Column(name="left", label="Shell left", unit="mm", decimals=2,
                   formula="flat_thickness - shell_proud - levelled - fall"),
        ),
        note="Places count from the board's centre line; for a floor square to the round, from the "
        "middle of the piece.",
    ),
)  # fmt: skip
