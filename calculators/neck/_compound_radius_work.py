"""The worked steps of the compound-radius calculation."""

from collections.abc import Mapping
from typing import Any

from ..engine.declaration import Given, Limit, Said, Solved, Step, Work
from ..laws.board_radius import Ruled, even_block, fewest_blocks, hump_mm

GEOMETRY, TEMPERED, PRACTICE = "plane-geometry", "equal-division", "common-practice"


def string_hump(
    fret_radius: float, growth: float, string_spread_nut: float, string_spread_bridge: float,
    scale_length: float, last_slot: float,
) -> Mapping[str, float]:  # fmt: skip
    """Hump of the board along its outer string, nut to last fret, in mm; and its place, mm.

    ``growth`` is mm of radius a mm along. The same for a cylinder of the nut's radius. Method and
    meaning: ``laws.board_radius.hump_mm``.
    """
    out = string_spread_nut / 2, (string_spread_bridge - string_spread_nut) / (2 * scale_length)
    hump, place = hump_mm(Ruled(fret_radius, growth, *out), last_slot)
    cylinder, _ = hump_mm(Ruled(fret_radius, 0.0, *out), last_slot)
    return {"hump": hump, "hump_at": place, "cylinder_hump": cylinder}


def blocks(
    fret_radius: float, growth: float, string_spread_nut: float, string_spread_bridge: float,
    edge_margin: float, scale_length: float, frets: int, gap_allowed: float,
) -> Mapping[str, Any]:  # fmt: skip
    """The fewest cylinder blocks for the board, fret by fret, and what one block would leave.

    Lengths in mm. Method and meaning: ``laws.board_radius.fewest_blocks``, over the board's whole
    width at the nut and at every fret.
    """
    places = [scale_length * (1 - 2 ** (-fret / 12)) for fret in range(frets + 1)]
    radii = [fret_radius + growth * place for place in places]
    widens = (string_spread_bridge - string_spread_nut) / scale_length
    widths = [string_spread_nut + widens * place + 2 * edge_margin for place in places]
    rows = [
        {
            "stretch": _stretch(block.first, block.last),
            "stretch_from": places[block.first], "stretch_to": places[block.last],
            "block_radius": block.radius_mm, "least": block.least_mm, "most": block.most_mm,
            "gap": block.gap_mm,
        }
        for block in fewest_blocks(radii, widths, gap_allowed)
    ]  # fmt: skip
    one_radius, one_gap = even_block(radii, widths)
    return {
        "block_rows": rows, "blocks_needed": len(rows),
        "one_block_radius": one_radius, "one_block_gap": one_gap,
    }  # fmt: skip


def _stretch(first: int, last: int) -> str:
    start = "nut" if first == 0 else f"fret {first}"
    return start if first == last else f"{start} to {last}"


def _mm(
    name: str, label: str, symbol: str, formula: str, decimals: int = 2, only_if: str = "",
    source: str = GEOMETRY,
) -> Step:  # fmt: skip
    return Step(name=name, label=label, symbol=symbol, unit="mm", decimals=decimals,
                formula=formula, only_if=only_if, source=source)  # fmt: skip


# fmt: off
_limits: tuple[Work, ...] = (
    Limit(
        holds="fret_radius >= 100", blames="fret_radius", source=PRACTICE,
        otherwise="A flat board has no radius to reckon, and none is rounder than 100 mm; on a flat "
        "board use the plain straightedge",
        allowed="a radius of 100 mm or more",
    ),
    Limit(
        holds="string_spread_bridge >= string_spread_nut", blames="string_spread_bridge",
        only_if="shape == 'cone'", source=GEOMETRY,
        otherwise="Under strings that close up towards the saddle a cone would get rounder that "
        "way; look over the two spreads",
        allowed="at least the spread at the nut, {string_spread_nut}",
    ),
    Limit(
        holds="radius_end >= fret_radius", blames="radius_end", only_if="shape == 'ends'",
        source=PRACTICE,
        otherwise="The board would get rounder towards the body; look over which end is which",
        allowed="at least the radius at the nut, {fret_radius}",
    ),
    Limit(
        holds="radius_saddle >= fret_radius", blames="radius_saddle",
        only_if="shape == 'saddle'", source=PRACTICE,
        otherwise="The board would get rounder towards the body; look over which end is which",
        allowed="at least the radius at the nut, {fret_radius}",
    ),
    Limit(
        holds="gauge_fret <= frets", blames="gauge_fret", source=PRACTICE,
        otherwise="The board ends before that fret; lay the gauge on the board",
        allowed="0 to {frets}",
    ),
)

_radii: tuple[Work, ...] = (
    _mm("last_slot", "Nut to last fret", "x_e", "scale_length * (1 - 2 ** (-frets / 12))",
        source=TEMPERED),
    Step(
        name="growth", label="The radius grows, each mm along the board, by", symbol="k",
        unit="1", decimals=5, only_if="shape == 'cone'", source=GEOMETRY,
        formula="fret_radius * (string_spread_bridge - string_spread_nut) "
        "/ (string_spread_nut * scale_length)",
    ),
    Step(
        name="growth", label="The radius grows, each mm along the board, by", symbol="k",
        unit="1", decimals=5, only_if="shape == 'ends'", source=GEOMETRY,
        formula="(radius_end - fret_radius) / last_slot",
    ),
    Step(
        name="growth", label="The radius grows, each mm along the board, by", symbol="k",
        unit="1", decimals=5, only_if="shape == 'saddle'", source=GEOMETRY,
        formula="(radius_saddle - fret_radius) / scale_length",
    ),
    Step(
        name="growth", label="The radius grows, each mm along the board, by", symbol="k",
        unit="1", decimals=5, only_if="shape == 'cylinder'", source=GEOMETRY, formula="0",
    ),
    _mm("end_radius", "Radius at the last fret", "R_N", "fret_radius + growth * last_slot", 1),
    _mm("octave_radius", "Radius at the 12th fret", "R_12",
        "fret_radius + growth * scale_length / 2", 1),
    _mm("saddle_radius", "Radius at the saddle line", "R_L", "fret_radius + growth * scale_length",
        1),
    _mm("apex", "The radius would be nothing so far behind the nut", "z", "fret_radius / growth", 0,
        "shape != 'cylinder' and growth > 0.001"),
    _mm("strings_meet", "The outer strings would meet so far behind the nut", "z_w",
        "string_spread_nut * scale_length / (string_spread_bridge - string_spread_nut)", 0,
        "string_spread_bridge > string_spread_nut + 0.1"),
)

_falls: tuple[Work, ...] = (
    _mm("width_nut", "Board width at the nut", "b_0", "string_spread_nut + 2 * edge_margin"),
    _mm("width_end", "Board width at the last fret", "b_N",
        "string_spread_nut + (string_spread_bridge - string_spread_nut) * last_slot / scale_length "
        "+ 2 * edge_margin"),
    _mm("nut_fall", "Edges lie lower than the middle, at the nut", "s_0",
        "fret_radius - sqrt(fret_radius ** 2 - (width_nut / 2) ** 2)"),
    _mm("end_fall", "Edges lie lower than the middle, at the last fret", "s_N",
        "end_radius - sqrt(end_radius ** 2 - (width_end / 2) ** 2)"),
    Limit(
        holds="max(nut_fall, end_fall) < board_joint - 0.5", blames="board_joint", source=GEOMETRY,
        otherwise="Rounded so far the board has no edge left: it would fall by {nut_fall} at the "
        "nut, {end_fall} at its end; a thicker board or a larger radius",
        allowed="a board at least half a millimetre thicker than its rounding falls",
    ),
    _mm("edge_nut", "Edge of the board, thick at the nut", "t_0", "board_joint - nut_fall"),
    _mm("edge_end", "Edge of the board, thick at the last fret", "t_N", "board_joint - end_fall"),
    Solved(
        name="under_strings", label="The board under the outer strings", function=string_hump,
        gives=(
            Given(name="hump", label="Hump under a straightedge along an outer string",
                  symbol="h", unit="mm", decimals=3),
            Given(name="hump_at", label="and its place, from the nut", symbol="x_h", unit="mm",
                  decimals=0),
            Given(name="cylinder_hump", label="The same on a cylinder of the nut's radius",
                  symbol="h_c", unit="mm", decimals=3),
        ),
        method="The fall under the string against the straight line from nut to last fret; the "
        "place where they run parallel is found by halving. It is never a dip.",
        source=GEOMETRY,
    ),
)

_gauge: tuple[Work, ...] = (
    _mm("gauge_place", "Nut to the gauge", "x_g", "scale_length * (1 - 2 ** (-gauge_fret / 12))",
        source=TEMPERED),
    _mm("gauge_board", "Radius of the board there", "R_b", "fret_radius + growth * gauge_place", 1),
    _mm("gauge_width", "Width of the board there", "b_g",
        "string_spread_nut + (string_spread_bridge - string_spread_nut) * gauge_place "
        "/ scale_length + 2 * edge_margin"),
    _mm("gauge_gap", "Fall of the board less fall of the gauge", "d",
        "gauge_board - sqrt(gauge_board ** 2 - (gauge_width / 2) ** 2) "
        "- (gauge_radius - sqrt(gauge_radius ** 2 - (gauge_width / 2) ** 2))", 3),
    _mm("gauge_leaf", "Leaf that goes in", "", "abs(gauge_gap)", 3),
)

_trueing: tuple[Work, ...] = (
    Solved(
        name="sanding_blocks", label="The blocks", function=blocks,
        gives=(
            Given(name="block_rows", label="Block by block", unit="1", decimals=0, many=True),
            Given(name="blocks_needed", label="Sanding blocks needed", symbol="n_b", unit="1",
                  decimals=0),
            Given(name="one_block_radius", label="Best single block for the whole board",
                  symbol="R_1", unit="mm", decimals=0),
            Given(name="one_block_gap", label="Gap that it leaves", symbol="d_1", unit="mm",
                  decimals=3),
        ),
        method="From the nut on, each block serves as many frets as one radius can within the gap "
        "allowed; its radius is the one whose gaps at edges and middle come out alike.",
        source=GEOMETRY,
    ),
    Step(
        name="half_turn", label="From the middle to the edge the face turns by", symbol="φ",
        unit="deg", decimals=3, source=GEOMETRY,
        formula="max(asin(width_nut / (2 * fret_radius)), asin(width_end / (2 * end_radius)))",
    ),
    Step(
        name="facet_turn", label="A facet may turn by", symbol="θ_a", unit="deg", decimals=3,
        source=GEOMETRY, formula="2 * acos(end_radius / (end_radius + gap_allowed))",
    ),
    Step(
        name="facets", label="Flats to plane along the board", symbol="n_f", unit="1", decimals=0,
        formula="ceil(2 * half_turn / facet_turn - 1e-9)", source=GEOMETRY,
    ),
    _mm("facet_nut", "One flat is wide, at the nut", "c_0",
        "2 * fret_radius * tan(half_turn / facets)"),
    _mm("facet_end", "One flat is wide, at the last fret", "c_N",
        "2 * end_radius * tan(half_turn / facets)"),
)

_words: tuple[Work, ...] = (
    Said(
        name="verdict", label="The face",
        cases=(
            ("shape == 'cylinder'",
             "{fret_radius} all along. Under the outer strings a straightedge rides on a hump of "
             "{hump}."),
            ("hump < 0.0005",
             "From {fret_radius} at the nut to {end_radius} at fret {frets}. Under every string the "
             "board runs straight."),
            ("", "From {fret_radius} at the nut to {end_radius} at fret {frets}. Under the outer "
             "strings it stands {hump} proud, {hump_at} from the nut."),
        ),
    ),
    Said(
        name="block_words", label="Sanding blocks",
        cases=(
            ("blocks_needed == 1",
             "One block of {one_block_radius} does it, to {one_block_gap}."),
            ("", "{blocks_needed} blocks, by the table. A single one, {one_block_radius}, would be "
             "out by {one_block_gap}."),
        ),
    ),
    Said(
        name="gauge_words", label="The gauge laid on",
        cases=(
            ("gauge_gap >= 0.005",
             "{gauge_radius} on {gauge_board}: it stands on the middle; a leaf of {gauge_leaf} goes "
             "in at both edges."),
            ("gauge_gap <= -0.005",
             "{gauge_radius} on {gauge_board}: it stands on the edges; a leaf of {gauge_leaf} goes "
             "in under the middle."),
            ("", "{gauge_radius} on {gauge_board}: no leaf goes in anywhere."),
        ),
    ),
)
# fmt: on

WORK: tuple[Work, ...] = (*_limits, *_radii, *_falls, *_gauge, *_trueing, *_words)
