"""Where the movement calculation comes from, outside figures it is held against, exercises."""

from typing import Any

from ..engine.declaration import Check, Decision, Exercise, Option, Slip, Source
from ..laws.equilibrium_moisture import WOOD_HANDBOOK_MOISTURE
from ..laws.wood_shrinkage import WOOD_HANDBOOK_MOVEMENT, WOOD_HANDBOOK_SHRINKAGE
from ..sources import GEOMETRY

SMALL_STRAIN = Source(
    id="small-strain",
    title="Small changes of length at an angle: cos² of the one plus sin² of the other; a piece "
    "held fast is squeezed by what it wanted to grow",
    kind="published",
    note="Rotation of a strain, and Hooke's law, in any textbook of mechanics. That the rings are "
    "straight across the piece is the usual simplification.",
)
BIMETAL = Source(
    id="bimetal",
    title="Analysis of bi-metal thermostats: two strips glued together, one of which wants to "
    "change its length",
    author="Timoshenko, S., Journal of the Optical Society of America 11, 233-255",
    year="1925",
    note="Cited from memory. Written here for a brace of any section under a strip of plate: "
    "equal and opposite pulls, one curvature. Checked with mpmath by the balance of forces and "
    "moments over the whole section, and by Timoshenko's own formula.",
)
TABLE_13_5 = Source(
    id="wood-handbook-table-13-5",
    title="Wood handbook, Table 13-5: dimensional change coefficients (6 to 14 %)",
    author="USDA Forest Products Laboratory",
    year="2010",
    note="Hardwoods, read in a public copy.",
)
MPMATH = Source(
    id="mpmath-movement",
    title="mpmath 1.3.0 and 1.4.1, arbitrary-precision arithmetic",
    kind="library",
    note="Moisture, movement, sagitta, and the brace with its plate by quadrature over the "
    "section, worked out independently of this project.",
)
SOURCES = (
    WOOD_HANDBOOK_MOISTURE, WOOD_HANDBOOK_SHRINKAGE, WOOD_HANDBOOK_MOVEMENT, SMALL_STRAIN, BIMETAL,
    GEOMETRY, TABLE_13_5, MPMATH,
)  # fmt: skip
FREE: dict[str, Any] = {"held": "free"}
ALONG_RAYS, ALONG_RINGS = 90, 0


def _coefficients(species: str, radial: str, tangential: str) -> tuple[Check, ...]:
    return tuple(
        Check(
            inputs={**FREE, "species": species, "ring_angle": angle}, source=TABLE_13_5.id,
            origin="read", where=f"{species}, {words}", expected={"table_coefficient": printed},
        )
        for angle, words, printed in (
            (ALONG_RAYS, "radial", radial), (ALONG_RINGS, "tangential", tangential),
        )
    )  # fmt: skip


def _shrinkages(species: str, radial: str, tangential: str) -> Check:
    return Check(
        inputs={**FREE, "species": species}, source=WOOD_HANDBOOK_SHRINKAGE.id, origin="read",
        where=f"{species}, Table 4-3 or 4-4",
        expected={"shrinkage_radial": radial, "shrinkage_tangential": tangential},
    )  # fmt: skip


def _sagitta(radius: int, chord: int, height: str) -> Check:
    return Check(
        inputs={"dish_radius": radius, "piece_width": chord}, source=MPMATH.id, origin="library",
        where=f"sagitta, radius {radius} mm, chord {chord} mm", expected={"crown_first": height},
    )  # fmt: skip


CHECKS = (
    *_coefficients("sugar maple", "0.00165", "0.00353"),
    *_coefficients("walnut", "0.0019", "0.00274"),
    *_coefficients("cherry", "0.00126", "0.00248"),
    *_coefficients("basswood", "0.0023", "0.0033"),
    *_coefficients("birch", "0.00256", "0.00338"),
    *_coefficients("alder", "0.00151", "0.00256"),
    *_coefficients("bigleaf maple", "0.00126", "0.00248"),
    _shrinkages("engelmann", "3.8", "7.1"), _shrinkages("redcedar", "2.4", "5.0"),
    _shrinkages("port-orford", "4.6", "6.9"), _shrinkages("mahogany", "3.0", "4.1"),
    _shrinkages("sugar maple", "4.8", "9.9"), _shrinkages("walnut", "5.5", "7.8"),
    _shrinkages("cherry", "3.7", "7.1"), _shrinkages("birch", "7.3", "9.5"),
    _shrinkages("basswood", "6.6", "9.3"), _shrinkages("ash", "4.9", "7.8"),
    _sagitta(6096, 380, "2.96167746"), _sagitta(7620, 100, "0.16404376"),
    _sagitta(9144, 100, "0.13670268"),
    Check(
        inputs={**FREE, "species": "own", "own_shrinkage_tangential": 7.5,
                "ring_angle": ALONG_RINGS, "moisture_by": "moisture", "wood_moisture": 30,
                "later_moisture_given": 8},
        source=MPMATH.id, origin="library", where="7.5 % to ovendry is 5.5 % to 8 %",
        expected={"from_green": "5.5", "strain": "-5.5"},
    ),
    Check(
        inputs={}, source=MPMATH.id, origin="library",
        where="Engelmann spruce, 45 to 30 % at 21 °C, a parabolic brace 8 by 15 mm: balance of "
        "forces and moments by quadrature over the section",
        expected={
            "first_moisture": "8.461801607", "later_moisture": "6.171474953",
            "strain": "-0.3002676346", "movement": "-1.1860571568",
            "bending_length": "15.2005128724", "crown_first": "2.1672748378",
            "crown_later": "-1.6857139223", "plate_stress": "1.2909229834",
            "flat_moisture": "7.1735383015", "flat_humidity": "36.5079950603",
        },
    ),
    Check(
        inputs={"brace_shape": "rectangle"}, source=BIMETAL.id, origin="library",
        where="two strips, 2.8 by 100 mm of 1.15 GPa on 15 by 8 mm of 10.8 GPa: 1/0.05107853270 "
        "by Timoshenko's formula, worked out with mpmath",
        expected={"bending_length": "19.57769629"},
    ),
    Check(
        inputs={"species": "sugar maple", "ring_angle": ALONG_RINGS, "moisture_by": "moisture",
                "wood_moisture": 8, "later_moisture_given": 12, "piece_width": 60,
                "held": "fitted", "fit_gap": 0.1, "plate_modulus": 1.65},
        source=MPMATH.id, origin="library", where="60 mm of flatsawn sugar maple from 8 to 12 %",
        expected={
            "movement": "0.8540004313", "joint_gap": "-0.7540004313", "squeeze": "1.2390318237",
            "squeeze_pressure": "20.4440250904", "tight_moisture": "8.4683838384",
        },
    ),
)  # fmt: skip

EXERCISES = (
    Exercise(
        name="by-the-coefficient",
        situation="A flatsawn plank of sugar maple is {piece_width} wide at {wood_moisture}. The "
        "table's tangential coefficient is 0.00353 for one per cent, the radial one 0.00165. By "
        "how much does the width change when it comes to {later_moisture_given}? Write shrinking "
        "below zero.",
        asks="table_movement", within="2 %",
        draw={"piece_width": (80, 300, 1), "wood_moisture": (9.5, 13, 0.1),
              "later_moisture_given": (6, 8.5, 0.1)},
        fixed={"species": "sugar maple", "ring_angle": 0, "moisture_by": "moisture",
               "held": "free"},
        slips=(
            Slip(name="rays-for-rings",
                 formula="piece_width * 0.00165 * (later_moisture - first_moisture) / one",
                 why="You took the radial coefficient. Across a flatsawn plank the wood moves "
                 "along the rings, about twice as much."),
            Slip(name="wrong-way-round", formula="-table_movement",
                 why="Wood that dries shrinks: later less first, not first less later."),
            Slip(name="no-difference",
                 formula="piece_width * table_coefficient * later_moisture / one",
                 why="The coefficient goes with the change of moisture, not with the moisture."),
            Slip(name="share-of-moisture",
                 formula="piece_width * table_coefficient * (later_moisture - first_moisture) "
                 "/ first_moisture",
                 why="You took the change as a share of the moisture at first. Count it in per "
                 "cent of moisture content."),
        ),
    ),
    Exercise(
        name="gap-left",
        situation="A quartersawn key of yellow birch, {piece_width} across the grain, was fitted "
        "at 10 % with a gap of {fit_gap}, both sides together. Its coefficient is 0.00256 for one "
        "per cent. The wood goes to {later_moisture_given}. What gap is left? Write pinched below "
        "zero.",
        asks="joint_gap", within="0.01 mm",
        draw={"piece_width": (30, 70, 0.5), "fit_gap": (0.1, 0.4, 0.01),
              "later_moisture_given": (11, 13.5, 0.1)},
        fixed={"species": "birch", "ring_angle": 90, "moisture_by": "moisture",
               "wood_moisture": 10, "held": "fitted"},
        slips=(
            Slip(name="added", formula="fit_gap + movement",
                 why="Damper wood grows into its gap; you let the gap grow with it."),
            Slip(name="forgot-the-gap", formula="-movement",
                 why="That is how much the key grows; it had a gap to grow into."),
            Slip(name="twice", formula="fit_gap - 2 * movement",
                 why="The gap is counted for both sides together, and so is the growth."),
        ),
    ),
    Exercise(
        name="crown-of-the-dish",
        situation="A plate {piece_width} across is braced over a dish of {dish_radius}. How high "
        "is its crown over the edges?",
        asks="crown_first", within="3 %",
        draw={"piece_width": (200, 420, 1), "dish_radius": (3000, 10000, 50)},
        fixed={"later_humidity": 45},
        slips=(
            Slip(name="four-for-eight", formula="piece_width ** 2 / (4 * dish_radius)",
                 why="The width squared goes over eight times the radius, not four."),
            Slip(name="two-for-eight", formula="piece_width ** 2 / (2 * dish_radius)",
                 why="With the whole width it is eight times the radius; two belongs to half the "
                 "width."),
            Slip(name="half-width", formula="(piece_width / 2) ** 2 / (8 * dish_radius)",
                 why="You halved the width and kept the eight: with half the width it is two."),
        ),
    ),
)  # fmt: skip

DECISIONS = (
    Decision(
        name="how-close-to-fit",
        situation="A quartersawn filler strip ({species}), {piece_width} across the grain, lies "
        "between two shoulders that do not move, with a gap of {fit_gap}, both sides together. It is "
        "at {wood_moisture}; in the dampest month it comes to {later_moisture_given}. Its "
        "coefficient is {table_coefficient} for one per cent. Then it must not press, and no more "
        "than 0.15 mm (0.006 in) of gap may be left. What do you do?",
        options=(
            Option(
                words="Fit it as it is",
                holds="joint_gap >= 0.02 and joint_gap <= 0.13",
                why="Then {joint_gap} would be left (minus: it presses), and 0 to 0.15 mm is asked.",
            ),
            Option(
                words="Plane it narrower: it will press",
                holds="joint_gap <= -0.02",
                why="It grows by {movement} and has {fit_gap} to grow into.",
            ),
            Option(
                words="Make a wider one: it will stay loose",
                holds="joint_gap >= 0.18",
                why="It grows by {movement}, and of the gap {joint_gap} is left (minus: it presses).",
            ),
        ),
        because="It grows by {movement} in its gap of {fit_gap}: {joint_gap} is left (minus: it "
        "presses).",
        draw={
            "species": ("birch", "sugar maple", "walnut", "cherry", "ash", "mahogany"),
            "piece_width": (30, 80, 1), "fit_gap": (0.1, 0.5, 0.01), "wood_moisture": (7, 10, 0.1),
            "later_moisture_given": (10.5, 13, 0.1),
        },
        fixed={"ring_angle": 90, "moisture_by": "moisture", "held": "fitted"},
    ),
)  # fmt: skip
