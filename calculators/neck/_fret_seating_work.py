"""The worked steps of the fret-seating calculation."""

from collections.abc import Mapping, Sequence
from typing import Any

from ..engine.declaration import Constant, Given, Limit, Said, Solved, Step, Work
from ..laws.wedged_frets import bow_under_kinks_mm
from ._fret_seating_woods import moduli

GEOMETRY, TEMPERED, PRACTICE = "plane-geometry", "equal-division", "common-practice"
LAYERS, HANDBOOK, SI = "timoshenko-layers", "wood-handbook-strength", "si-brochure"
TRIAL, NO_TRIAL = "beads_from == 'trial'", "beads_from == 'none'"

CONSTANTS = (
    Constant(name="whole", label="The whole, in per cent", unit="%", decimals=0, value=100,
             source=SI),
    Constant(name="mm_per_m", label="Millimetres in a metre", unit="mm/m", decimals=0,
             value=1000, source=SI),
    Constant(name="mpa_per_gpa", label="Megapascals in a gigapascal", unit="MPa/GPa", decimals=0,
             value=1000, source=SI),
    Constant(name="kn_mm2", label="Kilonewton square millimetres in a newton square metre",
             unit="kN*mm**2/(N*m**2)", decimals=0, value=1000, source=SI),
    Constant(name="hundredth", label="A hundredth of a millimetre", unit="mm", decimals=2,
             value=0.01, source=SI),
)  # fmt: skip


def kinks(scale_length: float, body_joint_fret: int) -> Mapping[str, Any]:
    """The bow, over the chord from nut to body joint, of equal kinks at the frets between.

    In mm for a kink of 1 rad: at every fret, the greatest, and the fret where it is. The line is
    straight from fret to fret, so it is highest at one of them. Method:
    ``laws.wedged_frets.bow_under_kinks_mm``.
    """
    places = [scale_length * (1 - 2 ** (-fret / 12)) for fret in range(body_joint_fret + 1)]
    bent = places[1:-1]
    rows = [
        {"fret": fret, "fret_from_nut": place,
         "lever": bow_under_kinks_mm(bent, places[-1], place)}
        for fret, place in enumerate(places)
    ]  # fmt: skip
    highest = max(rows, key=lambda row: row["lever"])
    return {
        "kink_rows": rows, "lever_sum": highest["lever"], "bow_fret": highest["fret"],
        "bow_at": highest["fret_from_nut"], "kinked_frets": len(bent),
    }  # fmt: skip


def bent_neck(kink_rows: Sequence[Mapping[str, float]], kink: float) -> Mapping[str, Any]:
    """The neck at nut, frets and body joint over the chord of its ends, mm; ``kink`` in mm/m.

    What a turn of 1 rad at every fret does (``kinks``), times the turn there is.
    """
    return {
        "fret_rows": [{**row, "stands": row["lever"] * kink / 1000} for row in kink_rows]
    }  # fmt: skip


def _step(
    name: str, label: str, symbol: str, unit: str, decimals: int, formula: str,
    only_if: str = "", source: str = GEOMETRY,
) -> Step:  # fmt: skip
    return Step(name=name, label=label, symbol=symbol, unit=unit, decimals=decimals,
                formula=formula, only_if=only_if, source=source)  # fmt: skip


# fmt: off
_fit: tuple[Work, ...] = (
    Limit(
        holds="tang_beads >= tang_thickness", blames="tang_beads", source=PRACTICE,
        otherwise="Over its beads a tang is no thinner than between them; measure both again",
        allowed="at least the tang's thickness, {tang_thickness}",
    ),
    Limit(
        holds="tang_depth <= slot_depth", blames="slot_depth", source=GEOMETRY,
        otherwise="The tang, {tang_depth} deep, would stand on the floor of a slot {slot_depth} "
        "deep and the fret would never go home: deepen the slot",
        allowed="a slot deeper than the tang, {tang_depth}",
    ),
    Limit(
        holds="slot_depth <= board_joint - 0.5", blames="slot_depth", source=GEOMETRY,
        otherwise="A slot {slot_depth} deep goes through a board of {board_joint}",
        allowed="at least half a millimetre less than the board is thick",
    ),
    Limit(
        holds="neck_thickness >= board_joint + 3", blames="neck_thickness", source=PRACTICE,
        otherwise="Neck and board together are hardly thicker than the board; measure over both",
        allowed="at least 3 mm more than the board, {board_joint}",
    ),
    _step("clearance", "Slot wider than the tang by", "c", "mm", 3, "slot_width - tang_thickness"),
    _step("bead_bite", "Beads bite into each wall by", "β", "mm", 3,
          "(tang_beads - slot_width) / 2"),
    _step("depth_margin", "Left under the tang", "m", "mm", 2, "slot_depth - tang_depth"),
)

_section: tuple[Work, ...] = (
    Solved(
        name="woods", label="The woods", function=moduli,
        gives=(
            Given(name="board_modulus", label="Stiffness of the board along its grain",
                  symbol="E_b", unit="GPa", decimals=2),
            Given(name="board_crush", label="Pressure that crushes it along its grain",
                  symbol="σ_c", unit="MPa", decimals=1),
            Given(name="neck_modulus", label="Stiffness of the neck along its grain",
                  symbol="E_n", unit="GPa", decimals=2),
        ),
        method="The Wood Handbook's figures in Mpsi and psi, times 6.894757 GPa/Mpsi and "
        "0.006894757 MPa/psi; or as given.",
        source=HANDBOOK,
    ),
    _step("shaft_depth", "Wood under the board", "h", "mm", 2, "neck_thickness - board_joint"),
    _step("shaft_pull", "Stretch stiffness of the shaft, half an ellipse", "A_n", "kN", 1,
          "neck_modulus * pi / 4 * neck_width * shaft_depth", source=LAYERS),
    _step("under_pull", "Stretch stiffness of the board below its slots", "A_u", "kN", 1,
          "board_modulus * neck_width * (board_joint - slot_depth)", source=LAYERS),
    _step("wedge_pull", "Stretch stiffness of the board beside the tangs", "A_w", "kN", 1,
          "board_modulus * neck_width * tang_depth", source=LAYERS),
    _step("shaft_place", "Middle of the shaft under the board", "y_n", "mm", 3,
          "4 * shaft_depth / (3 * pi)"),
    _step("under_place", "Middle of that board over the joint", "y_u", "mm", 3,
          "(board_joint - slot_depth) / 2"),
    _step("wedge_place", "Middle of the tangs over the joint", "y_w", "mm", 3,
          "board_joint - tang_depth / 2"),
    _step("neutral", "Neutral axis over the joint of board and neck", "y_0", "mm", 3,
          "(under_pull * under_place + wedge_pull * wedge_place - shaft_pull * shaft_place) "
          "/ (shaft_pull + under_pull + wedge_pull)", source=LAYERS),
    _step("lever", "Tangs over the neutral axis", "e", "mm", 3, "wedge_place - neutral",
          source=LAYERS),
    _step("own_stiffness", "Bending stiffness of the three by themselves", "D_1", "N.m2", 2,
          "(neck_modulus * neck_width * shaft_depth ** 3 * (pi / 16 - 4 / (9 * pi)) "
          "+ board_modulus * neck_width / 12 "
          "* ((board_joint - slot_depth) ** 3 + tang_depth ** 3)) / kn_mm2", source=LAYERS),
    _step("stiffness", "Bending stiffness of the neck, glued together", "D", "N.m2", 1,
          "own_stiffness + (shaft_pull * (shaft_place + neutral) ** 2 "
          "+ under_pull * (under_place - neutral) ** 2 + wedge_pull * lever ** 2) / kn_mm2",
          source=LAYERS),
    _step("kink_rate", "Kink at a fret for each mm of wedge, rad", "κ", "1/m", 3,
          "wedge_pull * lever / stiffness", source=LAYERS),
    Solved(
        name="row_of_kinks", label="A kink at every fret", function=kinks,
        gives=(
            Given(name="kink_rows", label="Fret by fret", unit="1", decimals=0, many=True),
            Given(name="lever_sum", label="Bow of a neck that turns 1 rad at each of them",
                  symbol="Λ", unit="mm", decimals=2),
            Given(name="bow_fret", label="greatest at fret", unit="1", decimals=0),
            Given(name="bow_at", label="so far from the nut", symbol="x_m", unit="mm", decimals=0),
            Given(name="kinked_frets", label="Frets between nut and body joint", symbol="n",
                  unit="1", decimals=0),
        ),
        method="Each kink lifts a place by its shares of the way from nut and from joint, as a "
        "moment line does; added up over all frets before the body joint.",
        source=LAYERS,
    ),
    _step("closest_pitch", "Closest frets on the neck are apart, on average", "p", "mm", 2,
          "scale_length * (2 ** (-(body_joint_fret - 2) / 12) - 2 ** (-body_joint_fret / 12)) / 2",
          source=TEMPERED),
)

_wedge: tuple[Work, ...] = (
    Limit(
        holds="tang_beads - trial_slot >= 0.02", blames="trial_slot", only_if=TRIAL,
        source=PRACTICE,
        otherwise="In a slot of {trial_slot} beads of {tang_beads} bite hardly anything, so they did "
        "not bend that neck; look over the three figures",
        allowed="a slot at least 0.02 mm narrower than the beads",
    ),
    _step("trial_wedge", "Each fret wedged that neck by", "w_t", "mm", 4,
          "bow_trial * mm_per_m / (lever_sum * kink_rate)", TRIAL, LAYERS),
    Limit(
        holds="trial_wedge <= tang_beads - trial_slot", blames="bow_trial", only_if=TRIAL,
        source=PRACTICE,
        otherwise="So much bow would ask for a wedge of {trial_wedge} at each fret, more than the "
        "beads bite: something else bent that neck, glue or damp",
        allowed="a bow that the beads can account for",
    ),
    _step("bead_share", "Of the beads' bite there is left as wedge", "q", "%", 3,
          "trial_wedge / (tang_beads - trial_slot) * whole", TRIAL, PRACTICE),
    _step("wedge", "Each fret opens its slot by", "w_f", "mm", 4,
          "max(bead_share / whole * (tang_beads - slot_width), tang_thickness - slot_width, 0)",
          TRIAL, PRACTICE),
    _step("wedge", "Each fret opens its slot by", "w_f", "mm", 4,
          "max(tang_thickness - slot_width, 0)", NO_TRIAL, PRACTICE),
    _step("give", "Of that, the wood gives by the share (neck and board take the rest)", "η", "1",
          4, "1 - wedge_pull / (shaft_pull + under_pull + wedge_pull) "
          "- wedge_pull * lever ** 2 / (stiffness * kn_mm2)", source=LAYERS),
    _step("crush_wedge", "Wedge at which the closest slots' walls crush", "w_c", "mm", 4,
          "board_crush * closest_pitch / (board_modulus * mpa_per_gpa * give)", source=HANDBOOK),
    _step("wedge_wanted", "Wedge that gives the bow wanted", "w_w", "mm", 4,
          "bow_wanted * mm_per_m / (lever_sum * kink_rate)", source=LAYERS),
    Limit(
        holds="wedge <= crush_wedge", blames="slot_width", source=HANDBOOK,
        otherwise="A tang that opens its slot by {wedge} crushes the walls (from {crush_wedge} on): "
        "it will not go in, or the board splits; open the slots",
        allowed="a slot that the tang opens by less than {crush_wedge}",
    ),
    Limit(
        holds="wedge_wanted <= crush_wedge", blames="bow_wanted", source=HANDBOOK,
        otherwise="For so much bow each fret would have to open its slot by {wedge_wanted}, and the "
        "walls crush from {crush_wedge} on",
        allowed="a bow that frets can give",
    ),
    _step("wedge_strain", "Wood between the closest frets is pressed by, at most", "ε", "%", 4,
          "wedge / closest_pitch * whole", source=LAYERS),
    _step("wedge_pressure", "Pressure of tangs on the slot walls, mean", "σ", "MPa", 2,
          "board_modulus * mpa_per_gpa * wedge / closest_pitch * give", source=LAYERS),
    _step("kink", "Kink at each fret", "φ", "mm/m", 4, "wedge * kink_rate", source=LAYERS),
    _step("bow", "Back-bow of the neck from its frets", "y", "mm", 3,
          "kink * lever_sum / mm_per_m", source=LAYERS),
    Solved(
        name="bent_line", label="The neck at every fret", function=bent_neck,
        gives=(Given(name="fret_rows", label="Fret by fret", unit="1", decimals=0, many=True),),
        method="The bow of a turn of 1 rad at every fret, times the kink there is.",
        source=LAYERS,
    ),
    _step("bow_hundredth", "Once the tang wedges: bow for each 0.01 mm", "y_1", "mm", 3,
          "hundredth * kink_rate * lever_sum / mm_per_m", source=LAYERS),
    _step("slot_wanted", "Slot for the bow wanted", "s_w", "mm", 3,
          "max(tang_beads - wedge_wanted * whole / bead_share, tang_thickness - wedge_wanted)",
          TRIAL, PRACTICE),
    _step("slot_wanted", "Slot for the bow wanted", "s_w", "mm", 3,
          "tang_thickness - wedge_wanted", NO_TRIAL, PRACTICE),
    Limit(
        holds="slot_wanted >= 0.1", blames="bow_wanted", source=PRACTICE,
        otherwise="No saw cuts so narrow a slot as that would need, {slot_wanted}",
        allowed="a bow that a slot of a tenth of a millimetre or more can give",
    ),
    _step("joint_place", "Nut to body joint", "L", "mm", 1,
          "scale_length * (1 - 2 ** (-body_joint_fret / 12))", source=TEMPERED),
    _step("string_bow", "Hollow that the strings pull, rod slack", "y_s", "mm", 3,
          "string_moment * joint_place ** 2 / (8 * stiffness) / mm_per_m", source=LAYERS),
    _step("hollow_left", "Hollow left under strings, rod slack", "y_h", "mm", 2,
          "string_bow - bow", source=LAYERS),
)

_crowns: tuple[Work, ...] = (
    Limit(
        holds="crown_wire - level_loss >= crown_least", blames="level_loss", source=GEOMETRY,
        otherwise="The first levelling alone would take the crown below {crown_least}; mend the board "
        "or the seat before you level",
        allowed="less than the new wire has to spare over {crown_least}",
    ),
    _step("crown_new", "Crown after the first levelling", "h", "mm", 2, "crown_wire - level_loss"),
    _step("crown_radius", "Radius of the crown's top", "r", "mm", 3,
          "crown_width ** 2 / (8 * crown_wire) + crown_wire / 2"),
    _step("band", "Bright band that levelling leaves, before crowning", "a", "mm", 2,
          "2 * sqrt(level_loss * (2 * crown_radius - level_loss))"),
    _step("dress_loss", "One later dressing takes", "l_d", "mm", 2, "wear_dressed + dress_spare",
          source=PRACTICE),
    _step("dressings", "Dressings before new frets", "n_d", "1", 0,
          "floor((crown_new - crown_least) / dress_loss + 1e-9)", source=PRACTICE),
    _step("crown_last", "Crown after the last of them", "h_n", "mm", 2,
          "crown_new - dressings * dress_loss", source=PRACTICE),
    _step("years", "Years of playing in these frets", "Y", "1", 1,
          "(dressings * wear_dressed + min(crown_last - crown_least, wear_dressed)) / wear_year",
          source=PRACTICE),
    _step("crown_bow", "Crown in the middle if the bow were levelled out", "h_b", "mm", 2,
          "crown_new - bow", "bow >= 0.005 and bow < crown_new"),
)

_words: tuple[Work, ...] = (
    Said(
        name="fit_words", label="The fit",
        cases=(
            ("bead_bite <= 0",
             "Loose: the beads, {tang_beads}, do not touch a slot of {slot_width}. Nothing but glue "
             "would hold; wire with wider beads."),
            ("clearance < 0",
             "Tight: the tang is thicker than its slot. Every fret is a wedge that opens it by "
             "{wedge}."),
            ("clearance < 0.02",
             "Close: the tang has {clearance} to spare, the beads bite {bead_bite} into each wall. "
             "Try each slot."),
            ("", "The tang slips in with {clearance} to spare, the beads bite {bead_bite} into each "
             "wall. {depth_margin} is left below."),
        ),
    ),
    Said(
        name="verdict", label="The neck",
        cases=(
            ("bow < 0.0005 and beads_from == 'none'",
             "The tang does not wedge. What the beads do, only a fretted neck of this sort tells."),
            ("bow < 0.0005", "No bow from these frets: the beads do not reach the walls."),
            ("bow > bow_wanted + 0.0005",
             "Bent back by {bow}, {bow_wanted} wanted. Open the slots to {slot_wanted}, or take "
             "wire with a thinner tang."),
            ("bow > 0.9 * bow_wanted",
             "Bent back by {bow}: as wanted."),
            ("", "Bent back by {bow}, within {bow_wanted}. A slot of {slot_wanted} would bring just "
             "that."),
        ),
    ),
    Said(
        name="string_words", label="Under strings",
        cases=(
            ("string_moment == 0", "No strings reckoned."),
            ("hollow_left < 0",
             "The strings pull {string_bow} hollow: the neck stays bent back, and no rod that only "
             "bends it back will help."),
            ("", "The strings pull {string_bow} hollow; {hollow_left} is left, for a rod or for "
             "planing."),
        ),
    ),
    Said(
        name="crown_words", label="The crowns",
        cases=(
            ("dressings == 0",
             "{crown_new} after levelling, {crown_least} still plays: not one dressing left in "
             "them."),
            ("dressings == 1",
             "{crown_new} after levelling: one dressing at {dress_loss}, down to {crown_last}. "
             "Some {years} years of playing."),
            ("", "{crown_new} after levelling: {dressings} dressings at {dress_loss} each, down to "
             "{crown_last}. Some {years} years of playing."),
        ),
    ),
)
# fmt: on

WORK: tuple[Work, ...] = (*_fit, *_section, *_wedge, *_crowns, *_words)
