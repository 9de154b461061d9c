"""Outside figures that the clamping calculation is held against, and exercises."""

from ..engine.declaration import Check, Decision, Exercise, Option, Slip, Source
from ..laws.elastic_bed import endless_row
from ._clamping_force_work import crushing

PRESSURE = Source(
    id="pressure",
    title="Pressure is force over area: definition",
    author="BIPM, The International System of Units (SI Brochure), 9th edition",
    year="2019",
)
SCREW_THREAD = Source(
    id="screw-thread",
    title="Torque of a power screw: thread as an inclined plane with friction, flank and collar",
    author="Budynas, R. G., and Nisbett, J. K., Shigley's Mechanical Engineering Design, ch. 8",
    note="The book is named from memory; its formula was read on a page of amesweb.info. The flank "
    "is taken square to the thread here, which the book neglects.",
)
WOOD_HANDBOOK = Source(
    id="wood-handbook-compression",
    title="Wood handbook: wood as an engineering material (FPL-GTR-282), chapter 5: compression "
    "perpendicular to grain, table 5-3b",
    author="Senalik, C. A., and Farber, B., USDA Forest Products Laboratory",
    year="2021",
    note="Read in a public copy of the table. The authors are named from memory.",
)
PINT = Source(
    id="pint-pressure",
    title="pint 0.26.2, unit arithmetic",
    kind="library",
    note="Force, area and pressure in mixed units; independent of this project.",
)
PACK = Source(
    id="force-examples",
    title="Worked examples of pressure to force",
    kind="library",
    note="Computed independently of this project.",
)
SCIPY = Source(
    id="scipy-bed",
    title="scipy 1.18.1, boundary value problem (collocation)",
    kind="library",
    note="y'''' + 4y = 4q in lengths of the reach, free ends, q = 1 under the pads, solved piece "
    "by piece; independent of this project.",
)
MPMATH_ROW = Source(
    id="mpmath-row",
    title="mpmath 1.4.1, quadrature of the point load's answer over pads, sum over a row",
    kind="library",
    note="exp(-x)·(cos x + sin x)/2 over every pad, pads added one by one; independent of this "
    "project.",
)
MPMATH_SCREW = Source(
    id="mpmath-screw",
    title="mpmath 1.4.1, statics of a screw by vectors",
    kind="library",
    note="Normal of the flank from its two tangents, friction against the sliding, balance along "
    "and about the axis; independent of this project.",
)
AMESWEB = Source(
    id="amesweb-screw",
    title="Lead screw formula: T = F·d_m/2·(l + π·f·d_m·sec α)/(π·d_m - f·l·sec α) + F·f_c·d_c/2",
    author="amesweb.info, lead screw calculation",
    note="Read there; worked out with mpmath 1.4.1.",
)
CHECK_SOURCES = (PINT, PACK, SCIPY, MPMATH_ROW, MPMATH_SCREW, AMESWEB)

# A caul of reach 10 mm on the bench, joint 20 mm wide: E·h³·t/(3·E_t) = 10⁴ mm⁴.
TEN = {
    "caul_stiffness": 2100, "caul_thickness": 10, "part_thickness": 5, "bed_thickness": 5,
    "pressed_stiffness": 700, "below": "bench", "joint_width": 20, "pressure_low": 0.1,
    "pressure_high": 6,
}  # fmt: skip


def _bed(length: float, clamps: int, end: float, pad: float, expected: dict[str, str]) -> Check:
    return Check(
        inputs={
            **TEN, "joint_length": length, "clamps": clamps, "end_distance": end,
            "pad_width": pad, "clamp_force": 20 * pad,
        },
        source="scipy-bed", origin="library", expected=expected,
        where=f"{clamps} pads of {pad / 10:g} reaches on a beam of {length / 10:g}, ends free, "
        "pad pressure 1",
    )  # fmt: skip


def _row(distance: float, spacing: float, half_pad: float, pressure: str) -> Check:
    return Check(
        function=endless_row, source="mpmath-row", origin="library", expected={"": pressure},
        given={"distance": distance, "spacing": spacing, "half_pad": half_pad}, unit="1",
        where=f"row of pads every {spacing} reaches, pad {2 * half_pad}, at {distance}",
    )  # fmt: skip


def _wood(wood: str, printed: str) -> Check:
    return Check(
        function=crushing, given={"softest_wood": wood}, source="wood-handbook-compression",
        origin="read", unit="MPa", where=f"{wood}, 12 % moisture",
        expected={"": printed},
    )  # fmt: skip


def _known(inputs: dict[str, object], where: str, source: str, expected: dict[str, str]) -> Check:
    return Check(inputs=inputs, where=where, source=source, origin="library", expected=expected)


SQUARE = {
    "force_from": "screw", "screw_diameter": 16, "lead": 4, "thread_friction": 0.15,
    "flank_angle": 0, "pad_friction": 0, "pad_friction_diameter": 0, "handle_force": 50,
    "handle_radius": 100,
}  # fmt: skip

CHECKS = (
    _known({"joint_length": 400, "joint_width": 40}, "400 mm by 40 mm at 0.7 MPa",
           "force-examples", {"needed_force": "11200"}),
    _known({"joint_length": 380, "joint_width": 200, "pressure_low": 0.1},
           "380 mm by 200 mm at 0.10 MPa", "force-examples", {"needed_force": "7600"}),
    _known({"joint_length": "6 in", "joint_width": "1.25 in", "pressure_low": "100 psi"},
           "6 in by 1.25 in at 100 psi", "pint-pressure", {"needed_force": "3336.166211"}),
    Check(
        inputs={}, source="pint-pressure", origin="library", unit="psi",
        where="3 times 1400 N on 155 mm by 30 mm", expected={"mean_pressure": "131.0018276"},
    ),
    _known({"joint_length": "5 in", "joint_width": "1.25 in", "pad_width": "1 in",
            "clamp_force": "180 lbf"},
           "180 lbf on a pad of 1 in by 1.25 in", "pint-pressure",
           {"pad_pressure": "0.992845050"}),
    _bed(80, 3, 10, 5, {"end_pressure": "0.19358912", "along[clamp 1].pressure": "0.257586106",
                        "along[clamp 2].pressure": "0.222457174"}),
    _bed(40, 3, 5, 5, {"end_pressure": "0.457955765", "along[clamp 1].pressure": "0.415501394",
                       "along[clamp 2].pressure": "0.334043369"}),
    _bed(60, 4, 10, 6, {"end_pressure": "0.147085542", "along[clamp 1].pressure": "0.395476576",
                        "along[middle, between clamps].pressure": "0.474837437"}),
    _row(0, 2, 0.25, "0.268637223929"),
    _row(1, 2, 0.25, "0.232986197833"),
    _row(0, 3.5, 0.25, "0.226785334442"),
    _row(1.75, 3.5, 0.25, "0.071109429878"),
    _row(0.6, 1.2, 0.3, "0.496642934283"),
    _known({**TEN, "joint_length": 80, "end_distance": 10, "pad_width": 5, "clamp_force": 100,
            "pressure_low": 0.071109429877684},
           "the same turned round: what 3.5 reaches leave, pad pressure 1 MPa", "mpmath-row",
           {"spacing_at_most": "35.000000"}),
    _known({"force_from": "screw"}, "trapezoidal thread 12 mm by 3 mm, 60 N at 60 mm",
           "mpmath-screw", {"force": "1503.622334"}),
    _known({"force_from": "screw", "screw_diameter": 10, "lead": 1.5, "thread_friction": 0.15,
            "flank_angle": 30, "pad_friction": 0.15, "pad_friction_diameter": 12,
            "handle_force": 40, "handle_radius": 80},
           "V thread 10 mm by 1.5 mm, 40 N at 80 mm", "mpmath-screw", {"force": "1641.939695"}),
    _known({**SQUARE, "joint_width": 100}, "square thread 16 mm by 4 mm, no collar, 50 N at 100 mm",
           "amesweb-screw", {"force": "2924.067902"}),
    Check(
        inputs={"force_from": "screw"}, source="amesweb-screw", origin="read", within="0.05 %",
        where="trapezoidal thread 12 mm by 3 mm, 60 N at 60 mm", expected={"force": "1503.43"},
        because="the page takes the flank in the plane of the axis, here it is square to the "
        "thread",
    ),
    _wood("sitka", "4.0"),
    _wood("cedar", "3.17"),
    _wood("maple", "10.14"),
    _wood("walnut", "6.96"),
)  # fmt: skip

EXERCISES = (
    Exercise(
        name="force-for-a-joint",
        situation="A joint is {joint_length} long and {joint_width} wide and wants "
        "{pressure_low}. {clamps} clamps lie ready. What force does it need in all?",
        asks="needed_force",
        within="1 %",
        draw={
            "joint_length": (140, 200, 1),
            "joint_width": (22, 40, 0.5),
            "pressure_low": (0.4, 1.2, 0.05),
            "clamps": (3, 5, 1),
        },
        slips=(
            Slip(
                name="length-only",
                formula="pressure_low * joint_length",
                why="Pressure times a length is no force: take the area, length times width.",
            ),
            Slip(
                name="share-for-each",
                formula="force_each",
                why="That is the share of each clamp; the question was for all together.",
            ),
            Slip(
                name="ten-times",
                formula="10 * needed_force",
                why="A decimal has slipped: one megapascal is one newton on each square "
                "millimetre.",
            ),
        ),
    ),
    Exercise(
        name="clamps-enough",
        situation="A joint {joint_length} long and {joint_width} wide wants {pressure_low} at least "
        "and bears {pressure_high} at most. Your clamps give {clamp_force} each. How many does it "
        "take at least?",
        asks="clamps_needed",
        within="0.4",
        draw={
            "joint_length": (200, 480, 5),
            "joint_width": (30, 50, 1),
            "clamp_force": (900, 1400, 50),
            "pressure_low": (0.5, 0.8, 0.05),
            "pressure_high": (1.2, 1.8, 0.1),
        },
        slips=(
            Slip(
                name="rounded-down",
                formula="floor(needed_force / force - 1e-9)",
                why="Rounded down, the joint gets less than it wants. Round up.",
            ),
            Slip(
                name="greatest-for-least",
                formula="ceil(pressure_high * area / force)",
                why="That many would bring the joint to the greatest pressure; it was asked how "
                "many reach the least.",
            ),
        ),
    ),
    Exercise(
        name="force-of-a-screw",
        situation="You pull {handle_force} at {handle_radius} from the middle of a screw of "
        "{screw_diameter} that travels {lead} a turn. Thread friction {thread_friction}, flank "
        "{flank_angle}, pad friction {pad_friction} on {pad_friction_diameter}. What is the force "
        "of the clamp?",
        asks="force",
        within="4 %",
        draw={
            "handle_force": (30, 80, 1),
            "handle_radius": (45, 75, 1),
            "screw_diameter": (10, 16, 0.5),
            "lead": (2, 4, 0.5),
            "thread_friction": (0.14, 0.24, 0.01),
        },
        fixed={"force_from": "screw", "joint_width": 100},
        slips=(
            Slip(
                name="no-friction",
                formula="handle_force * 2 * pi * handle_radius / lead",
                why="Without friction it would be so. Friction takes most of what the hand gives.",
            ),
            Slip(
                name="forgot-the-pad",
                formula="handle_force * handle_radius / thread_arm",
                why="The swivel pad rubs too: add its arm to that of the thread.",
            ),
            Slip(
                name="forgot-the-slope",
                formula="handle_force * handle_radius / (mean_diameter / 2 * drag + pad_arm)",
                why="The screw also climbs its own slope: slope and friction add up.",
            ),
        ),
    ),
)

DECISIONS = (
    Decision(
        name="are-the-clamps-right",
        situation="A joint {joint_length} long and {joint_width} wide lies on a bench that does not "
        "give, {bed_thickness} of wood below it and {part_thickness} above. {clamps} clamps of "
        "{clamp_force} each, pads {pad_width} along it, the outer ones {end_distance} from its ends, "
        "press on a caul {caul_thickness} thick. The wood is hard maple and wants {pressure_low} to "
        "{pressure_high} everywhere. Work it out on the page: what do you do?",
        options=(
            Option(
                words="Glue it up like this",
                holds="greatest_pressure <= 0.97 * pressure_high "
                "and least_pressure >= 1.03 * pressure_low",
                why="{mean_pressure} on average, {least_pressure} at the least and "
                "{greatest_pressure} at the most: not {pressure_low} to {pressure_high} everywhere.",
            ),
            Option(
                words="More clamps, or stronger ones: too little in all",
                holds="mean_pressure <= 0.93 * pressure_low",
                why="In all they bring {mean_pressure}, and {pressure_low} is enough.",
            ),
            Option(
                words="Ease them: too much in all",
                holds="mean_pressure >= 1.07 * pressure_high",
                why="In all they bring {mean_pressure}, and {pressure_high} is allowed.",
            ),
            Option(
                words="A thicker caul: enough in all, but not everywhere",
                holds="mean_pressure >= 1.05 * pressure_low and mean_pressure <= 0.95 * pressure_high "
                "and least_pressure <= 0.88 * pressure_low",
                why="{mean_pressure} on average; at the least place there is {least_pressure}, where "
                "{pressure_low} is wanted.",
            ),
        ),
        because="{mean_pressure} on average, {least_pressure} at the least place, "
        "{greatest_pressure} under a clamp; {pressure_low} to {pressure_high} is wanted.",
        draw={
            "joint_length": (140, 200, 5), "joint_width": (25, 35, 1), "clamps": (2, 4, 1),
            "clamp_force": (600, 3500, 50), "caul_thickness": (12, 45, 1),
        },
        fixed={"softest_wood": "maple", "below": "bench"},
    ),
)  # fmt: skip
