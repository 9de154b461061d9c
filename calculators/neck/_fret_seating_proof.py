"""Where the fret-seating calculation comes from, what it is held against, its exercises."""

from ..engine.declaration import Check, Decision, Exercise, Option, Slip, Source
from ..laws.wedged_frets import BIMETAL, bow_under_kinks_mm, curvature_per_m, strip
from ..sources import COMMON_PRACTICE, GEOMETRY
from ._fret_seating_woods import WOOD_HANDBOOK

EQUAL_DIVISION = Source(
    id="equal-division",
    title="Equal division of the octave: x = S·(1 - 2^(-n/12))",
    note="The ratio is a definition.",
)
SI = Source(
    id="si-brochure",
    title="The International System of Units (SI Brochure), 9th edition: prefixes",
    author="BIPM",
    year="2019",
)
SYMPY = Source(
    id="sympy-beam",
    title="sympy 1.14.0, module of beams: deflection of beams on two supports",
    kind="library",
    note="Worked out independently of this project.",
)
MPMATH = Source(
    id="mpmath-neck",
    title="mpmath 1.4.1: the neck's section by quadrature over its height, the bent line by adding "
    "up slopes",
    kind="library",
    note="Force and moment balance solved as two equations; independent of this project.",
)
ARCS = Source(
    id="mpmath-arcs",
    title="mpmath 1.3.0 and 1.4.1: chord and height of an arc",
    kind="library",
    note="Worked out independently of this project.",
)
SOURCES = (
    BIMETAL, WOOD_HANDBOOK, SYMPY, MPMATH, ARCS, EQUAL_DIVISION, GEOMETRY, SI, COMMON_PRACTICE,
)  # fmt: skip
BEAM_N_MM2 = 10830.0 * 10 * 8**3 / 12  # 10 by 8 mm, 10.83 GPa


def two_layers(
    first_gpa: float, first_mm: float, second_gpa: float, second_mm: float, strain: float
) -> float:
    """Curvature, 1/m, of two strips of one width when the second grows by ``strain``."""
    layers = (
        strip(first_gpa, 10, 0, first_mm),
        strip(second_gpa, 10, first_mm, first_mm + second_mm),
    )
    return curvature_per_m(layers, 1, strain)


def bent_by_many_kinks(load: str, at_mm: float) -> float:
    """Deflection, mm, of a beam on two supports 650 mm apart, its bend cut into 1000 kinks.

    ``load``: "even" for 100 N/m, "point" for 50 N at 200 mm. Each kink is M/EI times its stretch.
    """
    span, count = 650.0, 1000
    step = span / count
    total = 0.0
    for number in range(count):
        x = (number + 0.5) * step
        if load == "even":
            moment = 0.1 * x * (span - x) / 2
        else:
            moment = 50 * min(x, 200) * (span - max(x, 200)) / span
        total += moment / BEAM_N_MM2 * step * bow_under_kinks_mm((x,), span, at_mm)
    return total


def _wood(where: str, board: str, neck: str, expected: dict[str, str]) -> Check:
    return Check(
        inputs={"board_wood": board, "neck_wood": neck}, source="wood-handbook-strength",
        origin="read", where=where, expected=expected,
    )  # fmt: skip


# fmt: off
CHECKS = (
    Check(
        function=two_layers,
        given={"first_gpa": 10.0, "first_mm": 5.0, "second_gpa": 12.0, "second_mm": 2.0,
               "strain": 0.001},
        source="timoshenko-layers", origin="library", unit="1/m",
        where="two layers, 5 mm of 10 GPa and 2 mm of 12 GPa, 0.1 %",
        expected={"": "0.18260604918769"},
    ),
    Check(
        function=two_layers,
        given={"first_gpa": 11.0, "first_mm": 1.5, "second_gpa": 11.0, "second_mm": 1.5,
               "strain": 0.001},
        source="timoshenko-layers", origin="library", unit="1/m",
        where="two layers alike, 3 mm together: 3/2 of strain over thickness",
        expected={"": "0.5000000000"},
    ),
    Check(
        function=bent_by_many_kinks, given={"load": "even", "at_mm": 325.0},
        source="sympy-beam", origin="library", unit="mm",
        where="case 4, 100 N/m on 650 mm, at midspan", expected={"": "50.3008165"},
        within="0.001 %", because="the even bend is cut into a thousand kinks",
    ),
    Check(
        function=bent_by_many_kinks, given={"load": "point", "at_mm": 200.0},
        source="sympy-beam", origin="library", unit="mm",
        where="case 3, 50 N at 200 mm, at the load", expected={"": "44.9472619"},
        within="0.001 %", because="the even bend is cut into a thousand kinks",
    ),
    _wood("Rosewood, Indian; Mahogany, true", "rosewood", "mahogany",
          {"board_modulus": "12.27", "board_crush": "63.6", "neck_modulus": "10.34"}),
    _wood("Maple, sugar", "maple", "maple",
          {"board_modulus": "12.62", "board_crush": "54.0", "neck_modulus": "12.62"}),
    _wood("Spanish-cedar", "rosewood", "cedar", {"neck_modulus": "9.93"}),
    Check(
        inputs={}, source="mpmath-neck", origin="library",
        where="rosewood on mahogany, 48.4 by 21.8 mm, 645 mm, joint at 14",
        expected={
            "neutral": "-2.9990925816767", "stiffness": "319.51666281214",
            "kink_rate": "29.843826409575", "lever_sum": "612.01567558126",
            "bow_at": "188.916126135", "trial_wedge": "0.00218999407691",
            "bead_share": "1.09499703846", "closest_pitch": "17.5925816999",
        },
    ),
    Check(
        inputs={"slot_width": 0.5}, source="mpmath-neck", origin="library",
        where="a slot of 0.50 mm for a tang of 0.53 mm", expected={"bow": "0.54794668746"},
    ),
    Check(
        inputs={"slot_width": 0.48, "string_moment": 9.6}, source="mpmath-neck",
        origin="library", where="wedges of 0.05 mm: pressure in the closest; strings of 9.6 N·m",
        expected={"wedge_pressure": "21.9668582347", "string_bow": "0.480495790073"},
    ),
    Check(
        inputs={}, source="mpmath-arcs", origin="library",
        where="a crown 2.4 wide and 1.15 high, 0.1 taken off its top",
        expected={"crown_radius": "1.20108695652", "band": "0.959619489807"},
    ),
)

EXERCISES = (
    Exercise(
        name="bow-by-the-trial",
        situation="A neck of this sort, its slots {trial_slot} wide, was bent back {bow_trial} by "
        "this wire. The wire is {tang_beads} over its beads; the tang itself slips in. What bends "
        "the neck goes with how far the beads are wider than the slot. The next neck's slots are "
        "{slot_width}. How much back-bow will fretting give it?",
        asks="bow", within="3 %",
        draw={"tang_beads": (0.74, 0.86, 0.01), "trial_slot": (0.54, 0.58, 0.01),
              "slot_width": (0.61, 0.66, 0.01), "bow_trial": (0.05, 0.3, 0.01)},
        slips=(
            Slip(name="as-in-the-trial", formula="bow_trial",
                 why="The slots are wider now: the beads bite less and the neck bends less."),
            Slip(name="by-the-slots", formula="bow_trial * trial_slot / slot_width",
                 why="It is not the slot that counts but by how much the beads are wider than it."),
            Slip(name="turned-over",
                 formula="bow_trial * (tang_beads - trial_slot) / (tang_beads - slot_width)",
                 why="Turned over: a wider slot lets the beads bite less, and the bow gets smaller."),
        ),
    ),
    Exercise(
        name="slot-for-a-bow",
        situation="A neck of this sort, its slots {trial_slot} wide, was bent back {bow_trial} by "
        "this wire. The wire is {tang_beads} over its beads; the tang itself slips in. The next neck "
        "is to be bent back {bow_wanted} only. What slot do you saw?",
        asks="slot_wanted", within="0.005 mm",
        draw={"tang_beads": (0.74, 0.86, 0.01), "trial_slot": (0.54, 0.62, 0.01),
              "bow_wanted": (0.03, 0.1, 0.01), "bow_trial": (0.12, 0.3, 0.01)},
        slips=(
            Slip(name="as-in-the-trial", formula="trial_slot",
                 why="That slot gives the trial's bow. For less bow the slot must be wider."),
            Slip(name="by-the-slots", formula="trial_slot * bow_trial / bow_wanted",
                 why="It is not the slot that counts but by how much the beads are wider than it."),
            Slip(name="bite-for-slot",
                 formula="(tang_beads - trial_slot) * bow_wanted / bow_trial",
                 why="That is by how much the beads may be wider than the slot. Take it off the "
                 "measure over the beads."),
        ),
    ),
    Exercise(
        name="what-a-dressing-takes",
        situation="Pits under the strings are {wear_dressed} deep, and you go {dress_spare} below the "
        "deepest. The first levelling took {level_loss} off crowns of {crown_wire}; they play down to "
        "{crown_least}. How high are they after as many dressings as they can take?",
        asks="crown_last", within="0.01 mm",
        draw={"wear_dressed": (0.06, 0.13, 0.01), "dress_spare": (0.03, 0.06, 0.01),
              "crown_wire": (1.1, 1.3, 0.01), "level_loss": (0.05, 0.15, 0.01),
              "crown_least": (0.6, 0.75, 0.05)},
        slips=(
            Slip(name="as-new", formula="crown_new",
                 why="Each dressing takes its share off them."),
            Slip(name="one-more", formula="crown_last - dress_loss",
                 why="One dressing more would take them below what still plays: round down."),
            Slip(name="pits-only", formula="crown_new - dressings * wear_dressed",
                 why="You go below the deepest pit each time; that is lost as well."),
        ),
    ),
)

DECISIONS = (
    Decision(
        name="will-this-wire-do",
        situation="The slots are {slot_width} wide. The wire's tang is {tang_thickness}, and "
        "{tang_beads} over its beads. The neck is to stay straight. What do you do?",
        options=(
            Option(
                words="Press the frets in",
                holds="clearance >= 0.02 and bead_bite >= 0.03",
                why="The tang has {clearance} to spare in its slot (minus: it is thicker), and the "
                "beads bite {bead_bite} into each wall (minus: they do not reach it).",
            ),
            Option(
                words="Open the slots: each tang is a wedge",
                holds="clearance <= -0.01",
                why="The tang has {clearance} to spare: it does not wedge.",
            ),
            Option(
                words="Take a wire with larger beads: these do not reach the walls",
                holds="clearance >= 0.02 and bead_bite <= -0.005",
                why="The beads bite {bead_bite} into each wall, which holds; look at the tang.",
            ),
        ),
        because="The tang has {clearance} to spare in its slot (minus: it is thicker), and the beads "
        "bite {bead_bite} into each wall (minus: they do not reach it).",
        draw={"slot_width": (0.5, 0.78, 0.01), "tang_thickness": (0.5, 0.62, 0.01),
              "tang_beads": (0.64, 0.82, 0.01)},
        fixed={"beads_from": "none"},
    ),
)
# fmt: on
