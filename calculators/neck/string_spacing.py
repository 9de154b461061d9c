"""Strings side by side: gaps and middles at nut and saddle, slots, and the nut's blank."""

from ..engine.declaration import Calculator, Caution, Column, Drawing, Table
from ._string_spacing_drawings import draw_nut, draw_plan
from ._string_spacing_inputs import FOLDED, INPUTS
from ._string_spacing_proof import CHECKS, DECISIONS, EXERCISES, SOURCES
from ._string_spacing_work import WORK

# fmt: off
calculator = Calculator(
    name="string-spacing",
    title="String spacing",
    summary="Where each string goes at nut and saddle, with equal gaps or equal middles, how deep "
    "and wide its slot is, and how high the nut's blank must be.",
    other_words=("nut slots", "nut spacing", "spacing rule", "how far apart are the strings",
                 "strings too close together", "uneven string spacing", "how deep are nut slots",
                 "nut file size", "gap between strings", "string spread", "string slips off the "
                 "edge", "nut blank"),
    inputs=INPUTS,
    folded=FOLDED,
    work=WORK,
    tables=(
        Table(
            name="nut", title="The nut, from the bass edge", rows="nut_rows",
            source="plane-geometry",
            columns=(
                Column(name="string", label="String", unit="1", decimals=0, text=True),
                Column(name="gauge", label="Gauge", unit="mm", decimals=3),
                Column(name="place", label="Middle from the bass edge", unit="mm", decimals=2),
                Column(name="mark", label="Mark", unit="mm", decimals=2),
                Column(name="wall", label="Slot's near wall from the bass edge", unit="mm",
                       decimals=2),
                Column(name="slot_width", label="Slot wide", unit="mm", decimals=2),
                Column(name="slot_depth", label="Slot deep", unit="mm", decimals=2),
                Column(name="floor", label="Floor over the board", unit="mm", decimals=2),
                Column(name="top", label="Nut's top over its shelf", unit="mm", decimals=2),
            ),
            note="All marks from the bass edge, none from the mark before. 'Floor over the board' is "
            "the stack of leaves on the board that the file may touch.",
        ),
        Table(
            name="saddle", title="At the saddle, from the bass string", rows="nut_rows",
            source="plane-geometry",
            columns=(
                Column(name="string", label="String", unit="1", decimals=0, text=True),
                Column(name="bridge_place", label="From the bass string", unit="mm", decimals=2),
                Column(name="bridge_mark", label="Mark", unit="mm", decimals=2),
                Column(name="from_centre", label="From the centre line", unit="mm", decimals=2,
                       formula="bridge_place - string_spread_bridge / 2"),
            ),
            note="Minus lies on the bass side of the middle between the outer strings.",
        ),
        Table(
            name="by_fret", title="Gaps along the neck", rows="fret_rows", source="plane-geometry",
            columns=(
                Column(name="fret", label="Fret", unit="1", decimals=0),
                Column(name="fret_from_nut", label="From the nut", unit="mm", decimals=1),
                Column(name="spread", label="Outer strings apart", unit="mm", decimals=2),
                Column(name="step", label="Middle to middle, on average", unit="mm", decimals=2,
                       formula="spread / (strings_count - 1)"),
                Column(name="narrowest", label="Narrowest gap", unit="mm", decimals=2),
                Column(name="widest", label="Widest gap", unit="mm", decimals=2),
                Column(name="board_width", label="Board width", unit="mm", decimals=2),
            ),
        ),
    ),
    results=(
        "verdict", "nut_gap", "nut_pitch", "bass_edge", "blank_height", "rule_words", "mark_words",
        "saddle_gap", "saddle_pitch", "octave_gap_least", "octave_gap_most", "treble_edge",
        "bass_outside", "treble_outside", "nut_width", "floor_bass", "floor_treble",
        "highest_top", "lowest_top", "nut_gap_least", "nut_gap_most", "mark_difference",
    ),
    aside=(
        "treble_edge", "bass_outside", "treble_outside", "nut_width", "floor_bass",
        "floor_treble", "highest_top", "lowest_top", "nut_gap_least", "nut_gap_most",
        "mark_difference",
    ),
    drawings=(
        Drawing(name="nut", title="The nut from its front, to scale", function=draw_nut),
        Drawing(name="plan", title="The strings in plan", function=draw_plan),
    ),
    cautions=(
        Caution(
            text="Bone and shell dust hurt the lungs: file and sand wet or under extraction, with the "
            "mask that your local rules ask.",
        ),
        Caution(
            text="Knife cuts first, lay the strings in and look. The floor is filed last, at pitch, "
            "by the gap over the first fret and not by a figure from here.",
        ),
        Caution(
            text="Less than 2 mm of board outside an outer string ({bass_outside} bass, "
            "{treble_outside} treble): a bent string slips over the fret ends.",
            only_if="min(bass_outside, treble_outside) < 2",
        ),
        Caution(
            text="Narrowest gap at the nut {nut_gap_least}: a fingertip hardly goes between.",
            only_if="nut_gap_least < 4.5",
        ),
        Caution(
            text="Slots {slot_clearance} wider than their strings: the strings wander and sing "
            "against one wall.",
            only_if="slot_clearance > 0.1",
        ),
        Caution(
            text="Slots no wider than their strings: they stick, ping and jump when they are tuned.",
            only_if="slot_clearance < 0.02",
        ),
    ),
    validity="Plane geometry of straight strings, exact for the gauges given: a wound string is "
    "rarely round to a hundredth. The saddle's spread is taken on the scale's line; set back for "
    "intonation it is wider by less than half a millimetre. Gaps at the frets are those of open "
    "strings. Pairs of strings are not covered. How deep a string lies in the bone is common "
    "practice: wound ones by half, plain ones just level.",
    sources=SOURCES,
    checks=CHECKS,
    exercises=EXERCISES,
    decisions=DECISIONS,
)
# fmt: on
