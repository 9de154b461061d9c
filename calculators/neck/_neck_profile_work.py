"""The steps of the neck-profile calculation: places, thickness, widths, sections, template."""

from ..engine.declaration import (
    Column,
    Constant,
    Count,
    Given,
    Limit,
    Said,
    Solved,
    Step,
    Table,
    Work,
)
from ._neck_profile_solved import flat_part, floor_under_rod, sections, template_points

CONSTANTS = (
    Constant(name="um_per_mm", label="Micrometres in a millimetre", symbol="", unit="um/mm",
             decimals=0, value=1000, source="plane-geometry"),
    Constant(name="hundred", label="Length that the growth is told for", symbol="", unit="mm",
             decimals=0, value=100, source="common-practice"),
)  # fmt: skip


def place_formula(fret: str) -> str:
    """The place of a fret from the nut, as formula text."""
    return f"scale_length * (1 - 2 ** (-{fret} / 12))"


def _place(name: str, label: str, symbol: str, fret: str) -> Step:
    return Step(
        name=name, label=label, symbol=symbol, unit="mm", decimals=2, formula=place_formula(fret),
        source="equal-division",
    )  # fmt: skip


_places: tuple[Work, ...] = (
    Limit(
        holds="second_fret <= cove_fret", blames="second_fret", source="common-practice",
        otherwise="The straight shaft ends at fret {cove_fret}, before the second place at fret "
        "{second_fret}; look over both",
        allowed="at most fret {cove_fret}",
    ),
    Limit(
        holds="template_fret <= cove_fret", blames="template_fret", source="common-practice",
        otherwise="At fret {template_fret} the cove has begun, which has a template of its own; "
        "take a fret of the straight shaft",
        allowed="1 to {cove_fret}",
    ),
    Limit(
        holds="cove_fret < body_joint_fret and body_joint_fret <= last_fret", blames="cove_fret",
        source="common-practice",
        otherwise="Shaft, body joint and last fret must follow one another: here they lie at "
        "{cove_fret}, {body_joint_fret} and {last_fret}; look over all three",
        allowed="a straight shaft that ends before the body joint",
    ),
    Step(
        name="first_place", label="First fret from the nut", symbol="x_1", unit="mm", decimals=3,
        formula="scale_length * (1 - 2 ** (-1 / 12))", source="equal-division",
    ),
    _place("second_place", "Second place from the nut", "x_2", "second_fret"),
    _place("cove_place", "End of the straight shaft from the nut", "x_c", "cove_fret"),
    _place("joint_place", "Body joint from the nut", "x_j", "body_joint_fret"),
    _place("last_place", "Last fret from the nut", "x_e", "last_fret"),
    _place("template_place", "Template from the nut", "x_t", "template_fret"),
)  # fmt: skip

_thickness: tuple[Work, ...] = (
    Step(
        name="bare_first", label="Bare wood at the first fret", symbol="T_1", unit="mm",
        decimals=2, source="common-practice",
        formula="thickness_first - film_thickness / um_per_mm "
        "if thickness_is == 'finished' else thickness_first",
    ),
    Step(
        name="bare_second", label="Bare wood at the second place", symbol="T_2", unit="mm",
        decimals=2, source="common-practice",
        formula="thickness_second - film_thickness / um_per_mm "
        "if thickness_is == 'finished' else thickness_second",
    ),
    Step(
        name="growth", label="Thickness grows, each mm along the neck, by", symbol="g", unit="1",
        decimals=6, formula="(bare_second - bare_first) / (second_place - first_place)",
        source="plane-geometry",
    ),
    Step(
        name="taper", label="Thickness grows over 100 mm by", symbol="G", unit="mm", decimals=3,
        formula="growth * hundred", source="plane-geometry",
    ),
    Step(
        name="bare_cove", label="Bare wood where the straight shaft ends", symbol="T_c",
        unit="mm", decimals=2, formula="bare_first + growth * (cove_place - first_place)",
        source="plane-geometry",
    ),
    Limit(
        holds="min(bare_first, bare_second, bare_cove) >= board_joint + 4",
        blames="thickness_first", source="common-practice",
        otherwise="With a board of {board_joint} less than 4 mm of shaft would be left under it "
        "somewhere; look over the thicknesses",
        allowed="thicknesses at least 4 mm over the board's",
    ),
    Step(
        name="gauge_first", label="Gauge at the first fret, before sanding", symbol="M_1",
        unit="mm", decimals=2, formula="bare_first + shaft_sanding", source="common-practice",
    ),
    Step(
        name="gauge_second", label="Gauge at the second place, before sanding", symbol="M_2",
        unit="mm", decimals=2, formula="bare_second + shaft_sanding", source="common-practice",
    ),
    Step(
        name="finished_first", label="Lacquered, at the first fret", symbol="F_1", unit="mm",
        decimals=2, formula="bare_first + film_thickness / um_per_mm", source="common-practice",
    ),
    Step(
        name="finished_second", label="Lacquered, at the second place", symbol="F_2", unit="mm",
        decimals=2, formula="bare_second + film_thickness / um_per_mm", source="common-practice",
    ),
)  # fmt: skip

_widths: tuple[Work, ...] = (
    Step(
        name="width_growth", label="Width grows, each mm along the neck, by", symbol="k",
        unit="1", decimals=6, formula="(board_end_width - neck_width_nut) / last_place",
        source="plane-geometry",
    ),
    Limit(
        holds="fret_radius == 0 or fret_radius >= max(board_end_width, neck_width_nut)",
        blames="fret_radius", source="common-practice",
        otherwise="A board {board_end_width} wide is far too wide for a radius of {fret_radius}; "
        "look over both, or give 0 for a flat board",
        allowed="0, or at least the width of the board",
    ),
    Step(
        name="edge_least", label="Board at its edge, where it is widest", symbol="e_w", unit="mm",
        decimals=2, source="plane-geometry",
        formula="board_joint - (fret_radius - sqrt(fret_radius ** 2 - "
        "(max(board_end_width, neck_width_nut) / 2) ** 2)) if fret_radius > 0 else board_joint",
    ),
    Limit(
        holds="edge_least >= 0.5", blames="board_joint", source="common-practice",
        otherwise="The round leaves only {edge_least} of board at its edge; take a thicker board "
        "or a flatter radius",
        allowed="a board that keeps at least 0.5 mm at its edges",
    ),
    Step(
        name="margin_nut", label="String to board edge at the nut", symbol="m_0", unit="mm",
        decimals=2, formula="(neck_width_nut - string_spread_nut) / 2", source="plane-geometry",
    ),
    Step(
        name="width_joint", label="Width at the body joint", symbol="b_j", unit="mm", decimals=2,
        formula="neck_width_nut + width_growth * joint_place", source="plane-geometry",
    ),
    Step(
        name="spread_joint", label="Outer strings apart at the body joint", symbol="w_j",
        unit="mm", decimals=2, source="plane-geometry",
        formula="string_spread_nut + (string_spread_bridge - string_spread_nut) * "
        "joint_place / scale_length",
    ),
    Step(
        name="margin_joint", label="String to board edge at the body joint", symbol="m_j",
        unit="mm", decimals=2, formula="(width_joint - spread_joint) / 2",
        source="plane-geometry",
    ),
)  # fmt: skip

_template: tuple[Work, ...] = (
    Step(
        name="width_template", label="Width at the template", symbol="b_t", unit="mm",
        decimals=2, formula="neck_width_nut + width_growth * template_place",
        source="plane-geometry",
    ),
    Step(
        name="bare_template", label="Bare wood at the template", symbol="T_t", unit="mm",
        decimals=2, formula="bare_first + growth * (template_place - first_place)",
        source="plane-geometry",
    ),
    Step(
        name="gauge_template", label="Gauge at the template, before sanding", symbol="M_t",
        unit="mm", decimals=2, formula="bare_template + shaft_sanding",
        source="common-practice",
    ),
    Step(
        name="depth_template", label="Shaft under the board at the template", symbol="d_t",
        unit="mm", decimals=2, formula="bare_template - board_joint", source="plane-geometry",
    ),
    Step(
        name="edge_template", label="Board at its edge, by the template", symbol="e_t", unit="mm",
        decimals=2, source="plane-geometry",
        formula="board_joint - (fret_radius - sqrt(fret_radius ** 2 - (width_template / 2) ** 2)) "
        "if fret_radius > 0 else board_joint",
    ),
    Solved(
        name="flat_of_back", label="Flat part of the back", function=flat_part,
        gives=(Given(name="flat", label="Share of the width", symbol="q_f", unit="1",
                     decimals=2),),
        method="As given for a flat back with shoulders; none for one curve.",
        source="common-practice",
    ),
    Solved(
        name="points", label="Points of the template", function=template_points,
        gives=(Given(name="contour_points", label="Points", unit="1", decimals=0, many=True),),
        method="The superellipse of the shoulder from the flat out to the edge of the board.",
        source="superellipse",
    ),
    Solved(
        name="all_sections", label="Sections of neck and board", function=sections,
        gives=(
            Given(name="shaft_rows", label="Sections", unit="1", decimals=0, many=True),
            Given(name="area_first", label="Section at the first fret", symbol="A_1", unit="mm2",
                  decimals=0),
            Given(name="second_moment_first", label="Second moment at the first fret",
                  symbol="I_1", unit="mm4", decimals=0),
            Given(name="second_moment_second", label="Second moment at the second place",
                  symbol="I_2", unit="mm4", decimals=0),
        ),
        method="Moments of the shaft by the gamma function and of the board by Gauss's rule, about "
        "the glue face, moved to the common centroid.",
        source="superellipse",
    ),
    Step(
        name="stiffness_gain", label="Stiffer at the second place than at the first fret, times",
        symbol="I_2/I_1", unit="1", decimals=2,
        formula="second_moment_second / second_moment_first", source="superellipse",
    ),
    Solved(
        name="rod", label="Wood under the rod's channel", function=floor_under_rod,
        gives=(Given(name="rod_floor", label="Wood left under the rod's channel", symbol="w_r",
                     unit="mm", decimals=1),),
        method="From the channel's lower corners straight down to the back, at the first fret or "
        "the second place.",
        source="superellipse", only_if="rod_depth > 0",
    ),
    Said(
        name="shape_words", label="The back",
        cases=(
            ("contour == 'd'", "Flat over {flat_share} of the width, shoulders of fullness "
             "{fullness}."),
            ("fullness < 1.85", "Leans to a V: less wood in the shoulders than half an ellipse."),
            ("fullness <= 2.15", "Near half an ellipse, a plain C."),
            ("", "Fuller in the shoulders than half an ellipse, towards a U."),
        ),
    ),
)  # fmt: skip

work: tuple[Work, ...] = (*_places, *_thickness, *_widths, *_template)

_WIDTH = "neck_width_nut + width_growth * from_nut"
_SPREAD = "string_spread_nut + (string_spread_bridge - string_spread_nut) * from_nut / scale_length"
TABLES = (
    Table(
        name="shaft", title="The straight shaft, fret by fret", rows="shaft_rows",
        source="superellipse",
        columns=(
            Column(name="fret", label="Fret", unit="1", decimals=0),
            Column(name="from_nut", label="From the nut", unit="mm", decimals=2,
                   formula=place_formula("fret")),
            Column(name="width", label="Width", unit="mm", decimals=2, formula=_WIDTH),
            Column(name="gauge", label="Gauge before sanding", unit="mm", decimals=2,
                   formula="bare_first + growth * (from_nut - first_place) + shaft_sanding"),
            Column(name="bare", label="Bare wood", unit="mm", decimals=2,
                   formula="gauge - shaft_sanding"),
            Column(name="finished", label="Lacquered", unit="mm", decimals=2,
                   formula="bare + film_thickness / um_per_mm"),
            Column(name="area", label="Section", unit="mm2", decimals=0),
            Column(name="centroid", label="Centroid below the crown", unit="mm", decimals=2),
            Column(name="second_moment", label="Second moment", unit="mm4", decimals=0),
        ),
        note="Thicknesses are through board and shaft on the middle line. Section and second "
        "moment are of bare wood, board and shaft as one piece, rod channel not taken off.",
    ),
    Table(
        name="template", title="Template points, bare wood", rows="contour_points",
        source="superellipse",
        columns=(
            Column(name="across", label="From the middle", unit="mm", decimals=2),
            Column(name="below_face", label="Below the board", unit="mm", decimals=2),
            Column(name="below_edge", label="Below the board's upper edge", unit="mm",
                   decimals=2),
        ),
        note="Left and right alike. Mark the points on the template's blank, saw outside them and "
        "file to them.",
    ),
    Table(
        name="board", title="Widths and margins, fret by fret", source="equal-division",
        rows=Count(name="fret", first="0", last="last_fret"),
        columns=(
            Column(name="fret", label="Fret", unit="1", decimals=0),
            Column(name="from_nut", label="From the nut", unit="mm", decimals=3,
                   formula=place_formula("fret")),
            Column(name="width", label="Width", unit="mm", decimals=2, formula=_WIDTH),
            Column(name="spread", label="Outer strings apart", unit="mm", decimals=2,
                   formula=_SPREAD),
            Column(name="margin", label="String to edge", unit="mm", decimals=2,
                   formula="(width - spread) / 2"),
        ),
    ),
)  # fmt: skip
