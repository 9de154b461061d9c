"""Frets in their slots: how they fit, how they bend the neck, how long their crowns last."""

from ..engine.declaration import Calculator, Caution, Column, Count, Drawing, Table
from ._fret_seating_drawings import draw_bow, draw_slot
from ._fret_seating_inputs import FOLDED, INPUTS
from ._fret_seating_proof import CHECKS, DECISIONS, EXERCISES, SOURCES
from ._fret_seating_work import CONSTANTS, NO_TRIAL, TRIAL, WORK

# fmt: off
calculator = Calculator(
    name="fret-seating",
    title="Fret seating",
    summary="How tang and slot fit, how far a row of frets bends the neck back, which slot gives the "
    "bow you want, and how many dressings the crowns have in them.",
    other_words=("tang", "fret slot too tight", "slot too wide", "compression fretting", "back-bow "
                 "after fretting", "neck bent back by the frets", "fret crown height", "fret "
                 "levelling", "worn frets", "how often can frets be dressed", "refret"),
    inputs=INPUTS,
    folded=FOLDED,
    constants=CONSTANTS,
    work=WORK,
    tables=(
        Table(
            name="by_slot", title="Slot width and back-bow", source="common-practice",
            rows=Count(name="hundredths", first="-6", last="12"),
            columns=(
                Column(name="hundredths", label="Hundredths over the tang", unit="1", decimals=0),
                Column(name="slot", label="Slot", unit="mm", decimals=2,
                       formula="tang_thickness + hundredths * hundredth"),
                Column(name="bite", label="Bite of a bead", unit="mm", decimals=3,
                       formula="(tang_beads - slot) / 2"),
                Column(name="opened", label="Each fret opens it by", unit="mm", decimals=4,
                       only_if=TRIAL,
                       formula="max(bead_share / whole * (tang_beads - slot), "
                               "tang_thickness - slot, 0)"),
                Column(name="opened", label="Each fret opens it by", unit="mm", decimals=4,
                       only_if=NO_TRIAL, formula="max(tang_thickness - slot, 0)"),
                Column(name="bows", label="Back-bow", unit="mm", decimals=2,
                       formula="opened * kink_rate * lever_sum / mm_per_m"),
            ),
            note="A bite below nought: the beads do not touch.",
        ),
        Table(
            name="line", title="The neck under a straightedge, nut to body joint",
            source="timoshenko-layers", rows="fret_rows",
            columns=(
                Column(name="fret", label="Fret", unit="1", decimals=0),
                Column(name="fret_from_nut", label="From the nut", unit="mm", decimals=1),
                Column(name="stands", label="Stands over the line by", unit="mm", decimals=3),
            ),
        ),
    ),
    results=(
        "verdict", "bow", "slot_wanted", "fit_words", "string_words", "crown_words", "clearance",
        "bead_bite", "depth_margin", "bow_hundredth", "wedge", "bead_share", "wedge_strain",
        "wedge_pressure", "crush_wedge", "bow_fret", "kinked_frets", "stiffness", "string_bow",
        "hollow_left", "crown_new", "band", "dressings", "crown_last", "years", "crown_bow",
    ),
    aside=(
        "clearance", "bead_bite", "depth_margin", "bow_hundredth", "wedge", "bead_share",
        "wedge_strain", "wedge_pressure", "crush_wedge", "bow_fret", "kinked_frets", "stiffness",
        "string_bow", "hollow_left", "crown_new", "band", "dressings", "crown_last", "years",
        "crown_bow",
    ),
    drawings=(
        Drawing(name="slot", title="The fret in its slot, to scale", function=draw_slot),
        Drawing(name="bow", title="Back-bow against slot width", function=draw_bow),
    ),
    cautions=(
        Caution(
            text="Cut ends of fret wire go through a finger, and clipped ends fly: glasses on, hand "
            "cupped over the cutters. Metal filings are vacuumed, not blown.",
        ),
        Caution(
            text="A hundredth of a millimetre of tang is {bow_hundredth} of bow: the micrometer on "
            "the wire of this coil, leaves in three slots, before the first fret.",
        ),
        Caution(
            text="Without a trial the beads are left out: real bow is more than this.",
            only_if="beads_from == 'none'",
        ),
        Caution(
            text="In the slot for that bow, {slot_wanted}, the beads would bite hardly anything: do not "
            "open the slots so far, take a wire with a thinner tang or gentler beads.",
            only_if="slot_wanted > tang_beads - 0.1 and bow > bow_wanted",
        ),
        Caution(
            text="Less than 0.2 mm is left below the tang: glue and chips will hold the fret up.",
            only_if="depth_margin < 0.2",
        ),
        Caution(
            text="Do not level a back-bow out of the frets: it would cost {bow} of crown in the "
            "middle. Hang the neck overnight, measure, ask.",
            only_if="bow > bow_wanted + 0.0005",
        ),
    ),
    validity="The neck is taken as one section, that halfway to the joint, half an ellipse under its "
    "board; taper, rod and channel are left out and may change bow by a fifth. Wood stays elastic and "
    "the glue does not give. A tang thicker than its slot is reckoned to open it by all it is too "
    "thick, the most there can be; sawn walls give a little. What share of the beads' bite is left as "
    "wedge nobody has published: it is found on a neck of your own, and carried over only to the "
    "same wire and wood. In time the bow eases. Glue that swells the board is another matter. Wear a "
    "year and the lowest crown are common practice.",
    sources=SOURCES,
    checks=CHECKS,
    exercises=EXERCISES,
    decisions=DECISIONS,
)
# fmt: on
