"""A board whose radius grows towards the body: radius, fall and edge at every fret, its blocks."""

from ..engine.declaration import Calculator, Caution, Column, Count, Drawing, Table
from ._compound_radius_drawings import draw_radius, draw_sections
from ._compound_radius_inputs import FOLDED, INPUTS
from ._compound_radius_proof import CHECKS, DECISIONS, EXERCISES, SOURCES
from ._compound_radius_work import WORK

# fmt: off
calculator = Calculator(
    name="compound-radius",
    title="Compound radius",
    summary="The radius of a board at every fret, how far its edges fall, which sanding blocks make "
    "it and what a gauge of another radius leaves open.",
    other_words=("conical fretboard", "cone board", "fretboard radius", "fingerboard radius",
                 "camber", "radius block", "radius gauge", "sanding block", "sagitta",
                 "how round is the fretboard", "strings choke when bent"),
    inputs=INPUTS,
    folded=FOLDED,
    work=WORK,
    tables=(
        Table(
            name="by_fret", title="The board, fret by fret", source="plane-geometry",
            rows=Count(name="fret", first="0", last="frets"),
            columns=(
                Column(name="fret", label="Fret", unit="1", decimals=0),
                Column(name="from_nut", label="From the nut", unit="mm", decimals=2,
                       formula="scale_length * (1 - 2 ** (-fret / 12))"),
                Column(name="radius", label="Radius", unit="mm", decimals=1,
                       formula="fret_radius + growth * from_nut"),
                Column(name="spread", label="Outer strings apart", unit="mm", decimals=2,
                       formula="string_spread_nut + (string_spread_bridge - string_spread_nut) "
                               "* from_nut / scale_length"),
                Column(name="string_fall", label="Lower under an outer string", unit="mm",
                       decimals=3, formula="radius - sqrt(radius ** 2 - (spread / 2) ** 2)"),
                Column(name="width", label="Board width", unit="mm", decimals=2,
                       formula="spread + 2 * edge_margin"),
                Column(name="edge_fall", label="Lower at the edge", unit="mm", decimals=3,
                       formula="radius - sqrt(radius ** 2 - (width / 2) ** 2)"),
                Column(name="edge_thick", label="Edge thick", unit="mm", decimals=2,
                       formula="board_joint - edge_fall"),
            ),
            note="Fret 0 is the nut. What the edge falls, a slot sawn in the flat board loses of its "
            "depth there.",
        ),
        Table(
            name="blocks", title="Sanding blocks, from the nut on", rows="block_rows",
            source="plane-geometry",
            columns=(
                Column(name="stretch", label="Stretch", unit="1", decimals=0, text=True),
                Column(name="stretch_from", label="From", unit="mm", decimals=0),
                Column(name="stretch_to", label="To", unit="mm", decimals=0),
                Column(name="block_radius", label="Best block", unit="mm", decimals=0),
                Column(name="gap", label="Gap it leaves", unit="mm", decimals=3),
                Column(name="least", label="Any block from", unit="mm", decimals=0),
                Column(name="most", label="to", unit="mm", decimals=0),
            ),
            note="'Gap it leaves' is the worst at any fret of the stretch, edge or middle. An empty "
            "last cell: even a flat block would do. Press cauls are chosen by the same table.",
        ),
    ),
    results=(
        "verdict", "end_radius", "saddle_radius", "nut_fall", "end_fall", "block_words", "facets",
        "gauge_words", "octave_radius", "edge_nut", "edge_end", "facet_nut", "facet_end", "hump",
        "cylinder_hump", "gauge_gap", "blocks_needed", "one_block_radius", "one_block_gap", "apex",
        "strings_meet",
    ),
    aside=(
        "octave_radius", "edge_nut", "edge_end", "facet_nut", "facet_end", "hump",
        "cylinder_hump", "gauge_gap", "blocks_needed", "one_block_radius", "one_block_gap", "apex",
        "strings_meet",
    ),
    drawings=(
        Drawing(name="sections", title="The board across, to scale", function=draw_sections),
        Drawing(name="radius", title="Radius along the board, and the blocks",
                function=draw_radius),
    ),
    cautions=(
        Caution(
            text="Sanding rosewood or ebony makes dust that hurts lungs and skin: extraction on, and "
            "the mask that your local rules ask.",
        ),
        Caution(
            text="Slots sawn in the flat board lose {end_fall} of their depth at the edges by the "
            "last fret: deepen them with the stopped saw before a tang goes in.",
            only_if="max(nut_fall, end_fall) >= 0.2",
        ),
        Caution(
            text="Blocks are run along the lines of the strings, and their joints taken out with the "
            "straight beam on the same lines, never across.",
            only_if="blocks_needed > 1",
        ),
        Caution(
            text="The edge comes out only {edge_end} thick at the last fret. See first how deep the "
            "slots are.",
            only_if="edge_end < 3",
        ),
    ),
    validity="Exact for a face that is round in every cut square to the centre line, whose middle "
    "runs straight and whose radius grows evenly. That is a cone, and straight on every line through "
    "its point. Flats are planed along those lines. Strings are taken as straight in plan. Radii are "
    "of the wood; crowns lie on a radius larger by their own height. Relief is left out.",
    sources=SOURCES,
    checks=CHECKS,
    exercises=EXERCISES,
    decisions=DECISIONS,
)
# fmt: on
