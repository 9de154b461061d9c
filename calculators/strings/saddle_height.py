"""How much comes off the saddle, and what the strings then clear at every fret."""

from ..engine.declaration import Calculator, Caution, Column, Drawing, Table
from ._saddle_height_drawings import draw_gaps, draw_side
from ._saddle_height_inputs import INPUTS, INSTRUMENT
from ._saddle_height_proof import CHECKS, DECISIONS, EXERCISES, SOURCES
from ._saddle_height_work import WORK

# fmt: off
calculator = Calculator(
    name="saddle-height",
    title="Saddle height and action",
    summary="How much to take off the saddle under each string for the action you want, what that "
    "does over the first fret, and how much air the strings have at every fret.",
    other_words=("action too high", "lower the action", "lower the saddle", "shave the saddle",
                 "sand the saddle", "twice the difference", "string height", "how high is the "
                 "action at the 12th", "string buzzes", "fret buzz", "saddle radius", "relief"),
    inputs=INPUTS,
    folded=(INSTRUMENT,),
    work=WORK,
    tables=(
        Table(
            name="by_string", title="The saddle, string by string", rows="saddle_rows",
            source="plane-geometry",
            columns=(
                Column(name="string", label="String", unit="1", decimals=0, text=True),
                Column(name="from_middle", label="From the middle", unit="mm", decimals=1),
                Column(name="action_after", label="Action at the 12th, afterwards", unit="mm",
                       decimals=2),
                Column(name="off", label="Off the saddle", unit="mm", decimals=2),
                Column(name="showing", label="Saddle showing, afterwards", unit="mm", decimals=2),
            ),
            note="The cut is along one straight line, so the foot stays flat. What shows is "
            "reckoned from the middle, over a bridge that is flat across.",
        ),
        Table(
            name="gaps", title="Gaps over the frets, once all is set", rows="gap_rows",
            source="plane-geometry",
            columns=(
                Column(name="fret", label="Fret", unit="1", decimals=0),
                Column(name="from_nut", label="From the nut", unit="mm", decimals=1),
                Column(name="open_bass", label="Open, bass", unit="mm", decimals=2),
                Column(name="open_treble", label="Open, treble", unit="mm", decimals=2),
                Column(name="pressed_bass", label="Pressed here, least beyond, bass", unit="mm",
                       decimals=2),
                Column(name="pressed_treble", label="Pressed here, least beyond, treble",
                       unit="mm", decimals=2),
            ),
            note="Gaps between crown and underside of the string at rest. A gap that is smaller "
            "than that of its neighbours is where a firm stroke rattles first.",
        ),
    ),
    results=(
        "verdict", "saddle_cut_bass", "saddle_cut_treble", "saddle_after", "nut_words",
        "rule_words", "least_bass", "least_treble", "crest_radius", "showing_bass",
        "showing_treble", "twice_bass", "twice_treble", "first_fret_gap_bass_after",
        "first_fret_gap_treble_after", "nut_cut_bass", "nut_cut_treble", "relief_lift_bass",
        "relief_lift_treble", "least_bass_fret", "least_treble_fret", "lever_bass",
        "lever_treble", "crest_rise",
    ),
    aside=(
        "showing_bass", "showing_treble", "twice_bass", "twice_treble", "first_fret_gap_bass_after",
        "first_fret_gap_treble_after", "nut_cut_bass", "nut_cut_treble", "relief_lift_bass",
        "relief_lift_treble", "least_bass_fret", "least_treble_fret", "lever_bass",
        "lever_treble", "crest_rise",
    ),
    drawings=(
        Drawing(name="side", title="The string from the side, before and after",
                function=draw_side),
        Drawing(name="gaps", title="Gaps over the frets, once all is set", function=draw_gaps),
    ),
    cautions=(
        Caution(
            text="A string at pitch whips when it slips or breaks. Slacken by pairs, glasses on, "
            "face out of its line, before the saddle comes out.",
        ),
        Caution(
            text="Bone and shell dust hurt the lungs: rub the foot on wet paper or under "
            "extraction, with the mask your local rules ask.",
        ),
        Caution(
            text="Stop short of the figure, bring it back to pitch, read, and take the rest. Bone "
            "does not go on again.",
        ),
        Caution(
            text="What the rod will do is reckoned as if the neck bent evenly; a real one bends "
            "where it is thin. Set the rod, wait, read afresh, and cut the saddle from that.",
            only_if="rod_and_nut == 'set' and relief != relief_now",
        ),
        Caution(
            text="Pressed at some fret an outer string would lie on a fret beyond it "
            "({least_bass} bass, {least_treble} treble): it buzzes. Less relief, or more action.",
            only_if="min(least_bass, least_treble) <= 0",
        ),
        Caution(
            text="{relief} is a great deal of relief: set the rod before the saddle.",
            only_if="relief > 0.5",
        ),
    ),
    validity="Exact for straight strings over frets whose crowns are level but for the relief. "
    "Cuts, with rod and nut left alone, need no more than the readings. Gaps between first fret "
    "and joint rest on a neck that bends evenly, and on a board that is a plain cylinder. They are "
    "of strings at rest: how far a string swings depends on the hand, and no gap here promises "
    "that it will not rattle. The saddle is taken as upright to the strings; a pitched neck "
    "makes less than a thousandth of difference. The top's own movement under new heights is left "
    "out.",
    sources=SOURCES,
    checks=CHECKS,
    exercises=EXERCISES,
    decisions=DECISIONS,
)
# fmt: on
