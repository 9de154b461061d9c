"""The worked steps of the arch's calculation: crowns, taper, the rim round the body."""

from ..engine.declaration import Column, Constant, Given, Limit, Said, Solved, Step, Table, Work
from ._arch_solved import rim_round

GEOMETRY, SPLINE, PRACTICE = "plane-geometry", "cubic-spline", "common-practice"

CONSTANTS = (
    Constant(name="deg_per_rad", label="Degrees in a radian", unit="deg/rad", decimals=4,
             value=57.29577951308232, source=GEOMETRY),
    Constant(name="hundred", label="Length the taper is stated over", unit="mm", decimals=0,
             value=100, source=GEOMETRY),
)  # fmt: skip


def _mm(name: str, label: str, symbol: str, decimals: int = 1) -> Given:
    return Given(name=name, label=label, symbol=symbol, unit="mm", decimals=decimals)


def _crown(name: str, label: str, symbol: str, radius: str, chord: str) -> Step:
    return Step(
        name=name, label=label, symbol=symbol, unit="mm", decimals=2, source=GEOMETRY,
        formula=f"{radius} - sqrt({radius} ** 2 - ({chord} / 2) ** 2)",
    )  # fmt: skip


# fmt: off
WORK: tuple[Work, ...] = (
    Limit(
        holds="bridge_from_neck < body_length", blames="bridge_from_neck", source=PRACTICE,
        otherwise="The saddle would lie beyond the tail; measure it from the neck end of the body",
        allowed="less than {body_length}",
    ),
    Limit(
        holds="abs(depth_end_block - depth_neck_block) <= body_length / 4",
        blames="depth_end_block", source=PRACTICE,
        otherwise="The depth would change by more than a quarter of the body's length; look over "
        "both depths",
        allowed="depths closer together",
    ),
    Step(
        name="back_chord", label="From block to block along the back", symbol="c", unit="mm",
        decimals=2, formula="hypot(body_length, depth_end_block - depth_neck_block)",
        source=GEOMETRY,
    ),
    Step(
        name="taper_angle", label="Taper of the depth, as an angle", symbol="τ", unit="deg",
        decimals=2, formula="atan((depth_end_block - depth_neck_block) / body_length)",
        source=GEOMETRY,
    ),
    Step(
        name="taper_100", label="Taper of the depth over 100 mm", symbol="ρ", unit="mm",
        decimals=2, formula="(depth_end_block - depth_neck_block) / body_length * hundred",
        source=GEOMETRY,
    ),
    _crown("top_crown", "Crown of the top over its blocks, along", "s_t", "dish_radius",
           "body_length"),
    _crown("back_crown", "Crown of the back over its blocks, along", "s_b", "back_dish_radius",
           "back_chord"),
    Step(
        name="bridge_rise", label="Rise of the top from the neck end to the saddle place",
        symbol="a", unit="mm", decimals=2, source=GEOMETRY,
        formula="sqrt(dish_radius ** 2 - (bridge_from_neck - body_length / 2) ** 2) - "
        "sqrt(dish_radius ** 2 - (body_length / 2) ** 2)",
    ),
    Solved(
        name="rim_round", label="The rim round half the body", function=rim_round,
        gives=(
            _mm("widest", "Widest place of the body", "w"),
            _mm("side_length", "Length of one side, neck end to tail", "ℓ"),
            Given(name="area", label="Area of a plate", symbol="A", unit="cm2", decimals=0),
            _mm("shallowest", "Side is shallowest", "d_1"),
            _mm("shallowest_at", "Shallowest, from the neck end", "x_1", 0),
            _mm("deepest", "Side is deepest", "d_2"),
            _mm("deepest_at", "Deepest, from the neck end", "x_2", 0),
            Given(name="top_bevel_most", label="Steepest bevel of the lining, top", symbol="β_t",
                  unit="deg", decimals=2),
            Given(name="back_bevel_most", label="Steepest bevel of the lining, back",
                  symbol="β_b", unit="deg", decimals=2),
            Given(name="swings", label="Places where the outline swings back", unit="1",
                  decimals=0),
            Given(name="stations", label="Stations", unit="1", decimals=0, many=True),
        ),
        method="A smooth curve through the stations (cubic splines over the chords, square to the "
        "centre line at both ends); at each place the heights of two balls that meet the blocks, "
        "and the slope of each ball square to the side.",
        source=SPLINE,
    ),
    _crown("top_across", "Crown of the top across the widest place", "s_w", "dish_radius",
           "widest"),
    _crown("back_across", "Crown of the back across the widest place", "s_v", "back_dish_radius",
           "widest"),
    Step(
        name="top_arc", label="Length of the top along its arch", symbol="ℓ_t", unit="mm",
        decimals=2, source=GEOMETRY,
        formula="2 * dish_radius * asin(body_length / (2 * dish_radius)) / deg_per_rad",
    ),
    Step(
        name="rim_length", label="Length of the whole rim", symbol="U", unit="mm", decimals=0,
        formula="2 * side_length", source=SPLINE,
    ),
    Step(
        name="blank_depth", label="Depth to saw the side blank to", symbol="d_s", unit="mm",
        decimals=1, formula="deepest + 2 * edge_spare", source=PRACTICE,
    ),
    Said(
        name="answer", label="The side",
        cases=(
            ("deepest_at > 0.5 and deepest_at < body_length - 0.5",
             "From {shallowest} to {deepest} deep: {depth_neck_block} at the neck, "
             "{depth_end_block} at the tail, but deepest {deepest_at} from the neck end. Saw the "
             "blank {blank_depth} deep and {side_length} long, and more for the joints."),
            ("", "From {shallowest} to {deepest} deep: {depth_neck_block} at the neck, "
             "{depth_end_block} at the tail. Saw the blank {blank_depth} deep and {side_length} "
             "long, and more for the joints."),
        ),
    ),
)

TABLES = (
    Table(
        name="rim", title="The side, station by station", rows="stations", source=SPLINE,
        columns=(
            Column(name="station", label="Station", unit="1", decimals=0),
            Column(name="from_neck", label="From the neck end", unit="mm", decimals=1),
            Column(name="half_width", label="Half width", unit="mm", decimals=1),
            Column(name="along", label="Along the side", unit="mm", decimals=1),
            Column(name="depth", label="Depth of the side", unit="mm", decimals=2),
            Column(name="sawn", label="Depth to saw", unit="mm", decimals=1,
                   formula="depth + 2 * edge_spare"),
            Column(name="top_edge", label="Top edge over the blocks", unit="mm", decimals=2),
            Column(name="back_edge", label="Back edge past the straight line", unit="mm",
                   decimals=2),
            Column(name="top_bevel", label="Bevel, top", unit="deg", decimals=2),
            Column(name="back_bevel", label="Bevel, back", unit="deg", decimals=2),
        ),
        note="Station 0 is the neck end. Lay off \"along the side\" on the flat blank and the depths "
        "square to it. The bevel is how far the glueing face of side and lining falls outwards from "
        "square; minus: it falls inwards.",
    ),
)
# fmt: on
