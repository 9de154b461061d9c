"""The steps of the clamping calculation: force, pressure, and how evenly it lies on the joint."""

import itertools
from collections.abc import Mapping
from typing import Any

from ..engine.declaration import Constant, Given, Limit, Said, Solved, Step, Work
from ..laws.elastic_bed import endless_row, row_with_ends

PSI_IN_MPA = 8896443230521 / 1290320000 / 1e6
# Compression perpendicular to grain at the proportional limit, psi as the Wood Handbook prints it
# at 12 % moisture (FPL-GTR-282, table 5-3b).
CRUSH_PSI = {
    "sitka": 580, "engelmann": 410, "white": 430, "cedar": 460, "maple": 1470, "red_maple": 1000,
    "walnut": 1010,
}  # fmt: skip
BAY_POINTS = 8  # places looked at from one clamp to the next

KNOWN, SCREW = "force_from == 'known'", "force_from == 'screw'"
TWO_CAULS = "below == 'caul'"

CONSTANTS = (
    Constant(name="whole", label="The whole", symbol="100 %", unit="%", decimals=0, value=100,
             source="pressure"),
)  # fmt: skip


def crushing(softest_wood: str, crush_own: float = 0.0) -> float:
    """Pressure, MPa, at which the wood yields across the grain.

    Source: Wood Handbook table 5-3b, proportional limit at 12 % moisture; or one's own figure.
    """
    if softest_wood == "own":
        return crush_own
    return CRUSH_PSI[softest_wood] * PSI_IN_MPA


def centres_mm(joint_length: float, clamps: int, end_distance: float) -> list[float]:
    """Where the clamps stand, mm from the left end: evenly between the two outer ones."""
    if clamps == 1:
        return [joint_length / 2]
    spacing = (joint_length - 2 * end_distance) / (clamps - 1)
    return [end_distance + number * spacing for number in range(clamps)]


def along_the_joint(
    joint_length: float, clamps: int, end_distance: float, pad_width: float, reach: float,
    pad_pressure: float,
) -> Mapping[str, Any]:  # fmt: skip
    """Pressure, MPa, along the joint, and where it is least and greatest; lengths in mm.

    ``laws.elastic_bed.row_with_ends`` at the ends, under every clamp and at places between; the
    left half is worked out, the right half is its mirror image.
    """
    centres = centres_mm(joint_length, clamps, end_distance)
    pressure_at = row_with_ends(
        joint_length / reach, [centre / reach for centre in centres], pad_width / 2 / reach
    )
    half = joint_length / 2
    left = [centre for centre in centres if centre < half * (1 - 1e-9)]
    stops = [0.0, *left, half]
    places = [
        start + (end - start) * number / BAY_POINTS
        for start, end in itertools.pairwise(stops)
        for number in range(BAY_POINTS)
    ]
    places.append(half)
    pressures = [pad_pressure * pressure_at(place / reach) for place in places]
    least, greatest = min(pressures), max(pressures)
    return {
        "profile": list(zip(places, pressures, strict=True)),
        "stations": _stations(places, pressures, clamps),
        "least_pressure": least,
        "least_at": places[pressures.index(least)],
        "greatest_pressure": greatest,
        "end_pressure": pressures[0],
    }


def _stations(places: list[float], pressures: list[float], clamps: int) -> list[dict[str, Any]]:
    """Named places from the end to the middle: end, clamp, half-way, clamp and so on."""
    rows = []
    for index in range(0, len(places), BAY_POINTS):
        number = index // BAY_POINTS
        if number == 0:
            name = "end"
        elif index == len(places) - 1 and clamps % 2 == 0:
            name = "middle, between clamps"
        else:
            name = f"clamp {number}"
        rows.append({"place": name, "from_end": places[index], "pressure": pressures[index]})
        inside = index + BAY_POINTS // 2
        last_bay = index + BAY_POINTS == len(places) - 1
        if index > 0 and inside < len(places) and not (last_bay and clamps % 2 == 0):
            rows.append(
                {"place": "half-way", "from_end": places[inside], "pressure": pressures[inside]}
            )
    return rows


def widest_spacing(
    pressure_low: float, pad_pressure: float, pad_width: float, reach: float
) -> float:
    """Spacing, mm, of an endless row that leaves just ``pressure_low`` half-way between clamps.

    Bisection from pad against pad, where the pressure is the pad's own (MPa, and more than is
    wanted), to so far apart that nothing is left. ``laws.elastic_bed.endless_row``.
    """
    half_pad = pad_width / 2 / reach
    low, high = 2 * half_pad, 2 * half_pad + 20
    for _ in range(50):
        middle = (low + high) / 2
        if pad_pressure * endless_row(middle / 2, middle, half_pad) > pressure_low:
            low = middle
        else:
            high = middle
    return low * reach


_limits: tuple[Work, ...] = (
    Limit(
        holds="pressure_high >= pressure_low", blames="pressure_high", source="common-practice",
        otherwise="The greatest pressure wanted, {pressure_high}, lies below the least",
        allowed="at least {pressure_low}",
    ),
    Limit(
        holds="pad_width <= joint_length if clamps == 1 else 2 * end_distance >= pad_width",
        blames="pad_width", source="common-practice",
        otherwise="A pad of {pad_width} hangs over the end of the joint; move the outer clamps "
        "inwards or take a smaller pad",
        allowed="a pad that stands on the joint with its whole width",
    ),
    Limit(
        holds="clamps == 1 or joint_length - 2 * end_distance >= (clamps - 1) * pad_width",
        blames="clamps", source="common-practice",
        otherwise="{clamps} clamps with pads of {pad_width} do not stand side by side on a joint "
        "{joint_length} long",
        allowed="fewer clamps, smaller pads, or outer clamps nearer the ends",
    ),
)  # fmt: skip

_screw: tuple[Work, ...] = (
    Limit(
        holds="2 * lead <= screw_diameter", blames="lead", only_if=SCREW, source="screw-thread",
        otherwise="No clamp's screw is as steep as {lead} a turn on {screw_diameter}; measure ten "
        "turns",
        allowed="at most half the diameter",
    ),
    Step(
        name="mean_diameter", label="Mean diameter of the thread", symbol="d_m", unit="mm",
        decimals=2, formula="screw_diameter - lead / 2", only_if=SCREW, source="screw-thread",
    ),
    Step(
        name="slope", label="Slope of the thread", symbol="s", unit="1", decimals=4,
        formula="lead / (pi * mean_diameter)", only_if=SCREW, source="screw-thread",
    ),
    Step(
        name="drag", label="Friction on its sloping flanks", symbol="µ'", unit="1", decimals=4,
        formula="thread_friction * sqrt(1 + (tan(flank_angle) * cos(atan(slope))) ** 2)",
        only_if=SCREW, source="screw-thread",
    ),
    Step(
        name="thread_arm", label="Arm of the thread", symbol="r_t", unit="mm", decimals=3,
        formula="mean_diameter / 2 * (slope + drag) / (1 - slope * drag)", only_if=SCREW,
        source="screw-thread",
    ),
    Step(
        name="pad_arm", label="Arm of the friction under the pad", symbol="r_p", unit="mm",
        decimals=3, formula="pad_friction * pad_friction_diameter / 2", only_if=SCREW,
        source="screw-thread",
    ),
    Step(
        name="gain", label="Force of the clamp over the pull at the handle", symbol="G", unit="1",
        decimals=1, formula="handle_radius / (thread_arm + pad_arm)", only_if=SCREW,
        source="screw-thread",
    ),
    Step(
        name="force", label="Force of each clamp", symbol="F", unit="N", decimals=0,
        formula="handle_force * gain", only_if=SCREW, source="screw-thread",
    ),
    Step(
        name="force", label="Force of each clamp", symbol="F", unit="N", decimals=0,
        formula="clamp_force", only_if=KNOWN, source="common-practice",
    ),
)  # fmt: skip

_mean: tuple[Work, ...] = (
    Step(
        name="area", label="Area of the joint", symbol="A", unit="mm2", decimals=0,
        formula="joint_length * joint_width", source="pressure",
    ),
    Step(
        name="total_force", label="Force of all clamps", symbol="F_t", unit="N", decimals=0,
        formula="clamps * force", source="pressure",
    ),
    Step(
        name="mean_pressure", label="Mean pressure on the joint", symbol="p", unit="MPa",
        decimals=3, formula="total_force / area", source="pressure",
    ),
    Step(
        name="needed_force", label="Force the joint needs in all", symbol="F_1", unit="N",
        decimals=0, formula="pressure_low * area", source="pressure",
    ),
    Step(
        name="clamps_needed", label="Clamps of this force that takes", symbol="n_1", unit="1",
        decimals=0, formula="ceil(needed_force / force - 1e-9)", source="pressure",
    ),
    Step(
        name="force_each", label="Or, with the clamps you have, each", symbol="F_n", unit="N",
        decimals=0, formula="needed_force / clamps", source="pressure",
    ),
)  # fmt: skip

_spread: tuple[Work, ...] = (
    Step(
        name="cone", label="Length pressed by one clamp, at 45 degrees", symbol="c", unit="mm",
        decimals=1, formula="pad_width + 2 * (caul_thickness + part_thickness)",
        source="common-practice",
    ),
    Step(
        name="cone_clamps", label="Clamps by the 45 degree rule", symbol="n_c", unit="1",
        decimals=0, formula="ceil(joint_length / cone - 1e-9)", source="common-practice",
    ),
    Step(
        name="caul_that_counts", label="Caul thickness that counts", symbol="h_e", unit="mm",
        decimals=2, formula="caul_thickness", only_if="below == 'bench'", source="elastic-bed",
    ),
    Step(
        name="caul_that_counts", label="Caul thickness that counts", symbol="h_e", unit="mm",
        decimals=2, only_if=TWO_CAULS, source="elastic-bed",
        formula="(1 / (1 / caul_thickness ** 3 + 1 / lower_caul_thickness ** 3)) ** (1 / 3)",
    ),
    Step(
        name="layer", label="Wood pressed across the grain", symbol="t", unit="mm", decimals=1,
        formula="part_thickness + bed_thickness", source="elastic-bed",
    ),
    Step(
        name="reach", label="Reach of the caul on that bed", symbol="λ", unit="mm", decimals=2,
        source="elastic-bed",
        formula="(caul_stiffness * caul_that_counts ** 3 * layer / (3 * pressed_stiffness)) "
        "** 0.25",
    ),
    Step(
        name="pad_pressure", label="Pressure of one clamp on its pad's length alone",
        symbol="p_p", unit="MPa", decimals=2, formula="force / (pad_width * joint_width)",
        source="pressure",
    ),
    Solved(
        name="along", label="Pressure along the joint", function=along_the_joint,
        gives=(
            Given(name="least_pressure", label="Least pressure on the joint", symbol="p_min",
                  unit="MPa", decimals=2),
            Given(name="least_at", label="Least pressure lies from the end by", unit="mm",
                  decimals=0),
            Given(name="greatest_pressure", label="Greatest pressure on the joint",
                  symbol="p_max", unit="MPa", decimals=2),
            Given(name="end_pressure", label="Pressure at the very end", symbol="p_e",
                  unit="MPa", decimals=2),
            Given(name="profile", label="Profile", unit="1", decimals=0, many=True),
            Given(name="stations", label="Named places", unit="1", decimals=0, many=True),
        ),
        method="The caul is a beam of free ends on an elastic bed, each clamp an even load over "
        "its pad: loads on an endless beam, and at both ends the force and moment that set them "
        "free.",
        source="elastic-bed",
    ),
    Step(
        name="spacing", label="Clamp to clamp", symbol="s", unit="mm", decimals=1,
        formula="(joint_length - 2 * end_distance) / (clamps - 1)", only_if="clamps > 1",
        source="pressure",
    ),
    Solved(
        name="row", label="Spacing of a long row", function=widest_spacing,
        only_if="pad_pressure > pressure_low",
        gives=(Given(name="spacing_at_most", label="Clamps of this force at most apart",
                     symbol="s_m", unit="mm", decimals=0),),
        method="In a long even row the pressure half-way between two clamps is the sum of two "
        "geometric series; the spacing that leaves just the least pressure wanted is found by "
        "bisection.",
        source="elastic-bed",
    ),
    Solved(
        name="yield", label="Where the wood gives way", function=crushing,
        gives=(Given(name="crush", label="The softest wood yields across the grain at",
                     symbol="p_y", unit="MPa", decimals=2),),
        method="Proportional limit in compression perpendicular to the grain, 12 % moisture.",
        source="wood-handbook-compression",
    ),
    Step(
        name="crush_share", label="Share of that under the hardest-pressed place", symbol="u",
        unit="%", decimals=0, formula="greatest_pressure / crush * whole", source="pressure",
    ),
)  # fmt: skip

_said: tuple[Work, ...] = (
    Said(
        name="verdict", label="These clamps",
        cases=(
            ("greatest_pressure > crush",
             "They crush the wood: {greatest_pressure} under a clamp, and it yields at {crush}. "
             "Thicker caul, wider pads, or less force."),
            ("mean_pressure < 0.995 * pressure_low",
             "Too little: {mean_pressure} on average, {pressure_low} wanted. Take "
             "{clamps_needed} clamps like these, or {force_each} from each."),
            ("mean_pressure > 1.005 * pressure_high",
             "Too much: {mean_pressure} on average, {pressure_high} is the most wanted. Ease them."),
            ("least_pressure < 0",
             "Uneven: enough in all, but between the clamps or at an end the caul lifts off. "
             "Thicker caul or more clamps."),
            ("least_pressure < 0.995 * pressure_low",
             "Uneven: {mean_pressure} on average is enough, but only {least_pressure} lies "
             "{least_at} from the end. Thicker caul, or more clamps."),
            ("greatest_pressure > 1.005 * pressure_high",
             "Uneven: {greatest_pressure} under a clamp is more than {pressure_high}. Thicker "
             "caul, or more clamps with less force each."),
            ("", "Good: from {least_pressure} to {greatest_pressure} all along, "
             "{mean_pressure} on average."),
        ),
    ),
    Said(
        name="row_words", label="How far apart",
        cases=(
            ("pad_pressure <= pressure_low",
             "Even pad against pad these clamps do not reach {pressure_low}: stronger clamps."),
            ("clamps > 1 and spacing > 1.005 * spacing_at_most",
             "Closer: in a long row these clamps may stand {spacing_at_most} apart with this caul; "
             "yours stand {spacing}."),
            ("clamps > 1",
             "Close enough: {spacing} apart, and in a long row up to {spacing_at_most} would do."),
            ("", "One clamp; in a long row they may stand {spacing_at_most} apart with this caul."),
        ),
    ),
)  # fmt: skip

WORK: tuple[Work, ...] = (*_limits, *_screw, *_mean, *_spread, *_said)
