"""What the booth calculator asks and how it works."""

import math
from collections.abc import Sequence
from typing import Any

from ..engine.declaration import (
    Choice,
    Constant,
    Given,
    Input,
    Limit,
    Number,
    Readings,
    Said,
    Solved,
    Source,
    Step,
    When,
    Work,
)
from ..sources import GEOMETRY

BOOTH, FILTERS, FAN, LIMITS = "The booth", "Filters", "Fan", "Limits"
READ, WANTED = (
    When(choice="known", is_one_of=("readings",)),
    When(choice="known", is_one_of=("wanted",)),
)
# 100 feet a minute, the figure that both rules read for an open-face booth print.
PUBLISHED_LEAST_M_S = 0.51

OSHA_BOOTHS = Source(
    id="osha-booths",
    title="29 CFR 1910.94(c)(6)(i), table G-10 (50 to 250 ft/min by operation and design), and "
    "1910.107(b)(5)(i) (100 ft/min over an open face with dry collectors)",
    author="OSHA",
    note="Read in a stored OSHA letter of 2001-10-22. The second is for fire and vapour, not for "
    "exposure limits.",
)
MODEL_CODE = Source(
    id="model-code",
    title="International Mechanical Code 502.7.3.3: open face booth not less than 100 ft/min "
    "(0.51 m/s), fixed electrostatic 50 ft/min (0.25 m/s), vapour below 25 % of the explosive "
    "limit",
    note="Read in stored pages of two places that adopted it.",
)
FAN_AND_SYSTEM = Source(
    id="fan-and-system",
    title="A fan and what it draws through: pressures balance; stack and duct go with the square "
    "of the flow",
    note="Common fan engineering. The fan's curve is taken as a parabola between its two ends, "
    "fibre filters as proportional to flow: common practice.",
)
DALLA_VALLE = Source(
    id="dalla-valle",
    title="Velocity in front of a plain opening: V = Q/(10·x² + A)",
    author="Dalla Valle, J. M.",
    year="1930",
    note="From memory; good to a width or so in front of the opening.",
)
SI = Source(
    id="si-brochure",
    title="The International System of Units (SI Brochure), 9th edition",
    author="BIPM",
    year="2019",
)

INPUTS: tuple[Input, ...] = (
    Number(name="booth_width", label="Width of the open face", symbol="w", unit="mm", decimals=0,
           lowest=300, highest=10000, example=2000, group=BOOTH),
    Number(name="booth_height", label="Height of the open face", symbol="h", unit="mm",
           decimals=0, lowest=300, highest=5000, example=2000, group=BOOTH),
    Choice(
        name="known", label="Air at the face", group=BOOTH, example="readings",
        options=(
            ("readings", "Readings of the air-speed meter"),
            ("wanted", "A velocity to design for"),
        ),
    ),
    Readings(
        name="face_readings", label="Readings over the face", symbol="v", unit="m/s", decimals=2,
        lowest=0.02, highest=3, at_least=4, at_most=30, group=BOOTH, when=READ,
        example=(0.52, 0.58, 0.61, 0.54, 0.60, 0.63, 0.48, 0.55, 0.59),
        help="Nine or more in a grid, booth empty, doors as when you spray.",
    ),
    Number(name="face_velocity", label="Velocity wanted over the face", symbol="v", unit="m/s",
           decimals=2, lowest=0.1, highest=2.5, example=0.6, group=BOOTH, when=WANTED),
    Number(name="work_distance", label="Work stands in front of the face by", symbol="x",
           unit="mm", decimals=0, lowest=0, highest=3000, example=0, group=BOOTH,
           help="0 if it stands inside."),
    Number(name="filters", label="Filters fitted", symbol="n", unit="1", decimals=0, whole=True,
           lowest=1, highest=200, example=10, group=FILTERS),
    Number(name="filter_width", label="Width of one filter", unit="mm", decimals=0, lowest=100,
           highest=2000, example=500, group=FILTERS),
    Number(name="filter_height", label="Height of one filter", unit="mm", decimals=0, lowest=100,
           highest=2000, example=500, group=FILTERS),
    Number(name="filter_speed", label="Filter's rated air velocity", symbol="v_f", unit="m/s",
           decimals=2, lowest=0.1, highest=3, example=1, group=FILTERS, help="From its sheet."),
    Number(name="clean_loss", label="Clean filter loses at that velocity", symbol="F_0",
           unit="Pa.air", decimals=0, lowest=1, highest=200, example=25, group=FILTERS,
           help="From its sheet."),
    Number(name="filter_loss_now", label="Filter dial reads now", symbol="F", unit="Pa.air",
           decimals=0, lowest=1, highest=500, example=45, group=FILTERS,
           help="Pressure across the filters. For a design put the loss at which you would "
           "change them."),
    Number(name="fan_free_flow", label="Fan's flow with nothing to draw through", symbol="Q_0",
           unit="m3/h", decimals=0, lowest=300, highest=60000, example=12000, group=FAN,
           help="Where its curve meets no pressure."),
    Number(name="fan_shut_pressure", label="Fan's pressure with its inlet shut", symbol="p_0",
           unit="Pa.air", decimals=0, lowest=20, highest=3000, example=350, group=FAN,
           help="Where its curve meets no flow."),
    Number(name="least_velocity", label="Least velocity over the face", symbol="v_1", unit="m/s",
           decimals=2, lowest=0.2, highest=1.5, example=PUBLISHED_LEAST_M_S, group=LIMITS,
           help="100 ft/min for an open face by two published rules. Put your local figure, if "
           "it is more."),
    Number(name="cross_draught", label="Draught across the front of the booth", symbol="v_c",
           unit="m/s", decimals=2, lowest=0, highest=3, example=0.1, group=LIMITS,
           help="Air-speed meter, booth fan off."),
)  # fmt: skip
FOLDED = (FAN, LIMITS)

CONSTANTS = (
    Constant(name="mm2_per_m2", label="Square millimetres in a square metre", unit="mm**2/m**2",
             decimals=0, value=1_000_000, source="si-brochure"),
    Constant(name="mm_per_m", label="Millimetres in a metre", unit="mm/m", decimals=0, value=1000,
             source="si-brochure"),
    Constant(name="s_per_h", label="Seconds in an hour", unit="s/h", decimals=0, value=3600,
             source="si-brochure"),
    Constant(name="whole", label="The whole, in per cent", unit="%", decimals=0, value=100,
             source="si-brochure"),
)  # fmt: skip


def air_at_face(
    face_readings: Sequence[float] | None = None, face_velocity: float | None = None
) -> dict[str, Any]:
    """Mean and lowest velocity over the face, m/s, and the largest departure from it, %.

    From readings in m/s of equal parts of the face, or from the one velocity to design for.
    Then the published least velocities, each with whether it is kept. Source: definitions; the
    rules named in the rows.
    """
    readings = list(face_readings) if face_readings else [face_velocity or 0.0]
    mean = math.fsum(readings) / len(readings)
    rules = (
        ("Table G-10, the lowest of its range", 0.25), ("Table G-10, the highest", 1.27),
        ("1910.107, open face, dry collectors", 0.51), ("Model mechanical code, open face", 0.51),
    )  # fmt: skip
    return {
        "face_mean": mean,
        "face_lowest": min(readings),
        "unevenness": 100 * max(abs(one - mean) for one in readings) / mean,
        "rule_rows": [
            {"rule": rule, "velocity": least, "kept": "yes" if mean >= least else "no"}
            for rule, least in rules
        ],
    }


WORK: tuple[Work, ...] = (
    Solved(
        name="face", label="Air over the face", function=air_at_face,
        gives=(
            Given(name="face_mean", label="Mean velocity over the face", symbol="v_m", unit="m/s",
                  decimals=3),
            Given(name="face_lowest", label="Lowest place of the face", unit="m/s", decimals=2),
            Given(name="unevenness", label="Farthest from the mean", unit="%", decimals=0),
            Given(name="rule_rows", label="Published velocities", unit="1", decimals=0, many=True),
        ),
        method="Mean of the readings, the lowest of them, and the largest departure from the mean.",
        source="osha-booths",
    ),
    Step(name="face_area", label="Open face", symbol="A", unit="m2", decimals=3,
         formula="booth_width * booth_height / mm2_per_m2", source="plane-geometry"),
    Step(name="air_flow", label="Air through the booth", symbol="Q", unit="m3/h", decimals=0,
         formula="face_mean * face_area * s_per_h", source="fan-and-system"),
    Limit(holds="air_flow < fan_free_flow", blames="fan_free_flow", source="fan-and-system",
          otherwise="The face passes {air_flow}, more than the fan can ever move "
          "({fan_free_flow}); check the readings, or take a larger fan",
          allowed="a free flow of more than {air_flow}"),
    Step(name="fan_pressure", label="Pressure the fan gives at that flow", symbol="p",
         unit="Pa.air", decimals=1, source="fan-and-system",
         formula="fan_shut_pressure * (1 - (air_flow / fan_free_flow) ** 2)"),
    Limit(holds="fan_pressure >= filter_loss_now", blames="fan_shut_pressure",
          source="fan-and-system",
          otherwise="At {air_flow} the fan gives {fan_pressure}, less than the filters alone "
          "take ({filter_loss_now}); check the fan's curve and the dial, or take a stronger fan",
          allowed="a fan that gives at least {filter_loss_now} at {air_flow}"),
    Step(name="duct_loss", label="Left for stack and duct", symbol="D", unit="Pa.air", decimals=1,
         formula="fan_pressure - filter_loss_now", source="fan-and-system"),
    Step(name="one_filter", label="Area of one filter", unit="m2", decimals=4,
         formula="filter_width * filter_height / mm2_per_m2", source="plane-geometry"),
    Step(name="filter_area_needed", label="Filter area for the rated velocity", symbol="A_f",
         unit="m2", decimals=3, formula="air_flow / (filter_speed * s_per_h)",
         source="fan-and-system"),
    Step(name="filters_needed", label="Filters needed", unit="1", decimals=0,
         formula="ceil(filter_area_needed / one_filter - 1e-9)", source="fan-and-system"),
    Step(name="filter_speed_now", label="Air through the filters fitted", symbol="v_n",
         unit="m/s", decimals=3, formula="air_flow / (filters * one_filter * s_per_h)",
         source="fan-and-system"),
    Step(name="clean_now", label="Clean filters would lose at this flow", symbol="F_c",
         unit="Pa.air", decimals=1, formula="clean_loss * filter_speed_now / filter_speed",
         source="fan-and-system"),
    Step(name="square_part", label="What goes with the square of the flow, fan and duct",
         symbol="S", unit="Pa.air", decimals=1, formula="fan_shut_pressure - filter_loss_now",
         source="fan-and-system"),
    Step(name="growth", label="Flow with clean filters over flow now", symbol="g", unit="1",
         decimals=4, source="fan-and-system",
         formula="(sqrt(clean_now ** 2 + 4 * square_part * fan_shut_pressure) - clean_now) / "
         "(2 * square_part)"),
    Step(name="clean_flow", label="Air with clean filters", symbol="Q_c", unit="m3/h", decimals=0,
         formula="air_flow * growth", source="fan-and-system"),
    Step(name="clean_velocity", label="Face velocity with clean filters", symbol="v_c0",
         unit="m/s", decimals=3, formula="face_mean * growth", source="fan-and-system"),
    Step(name="change_reading", label="Change the filters when the dial reads", symbol="F_x",
         unit="Pa.air", decimals=0, only_if="face_mean >= least_velocity",
         formula="fan_shut_pressure - square_part * (least_velocity / face_mean) ** 2",
         source="fan-and-system"),
    Step(name="work_velocity", label="Air at the work", symbol="v_x", unit="m/s", decimals=3,
         source="dalla-valle", formula="face_mean * face_area / "
         "(10 * (work_distance / mm_per_m) ** 2 + face_area)"),
    Said(name="verdict", label="By this estimate", cases=(
        ("face_mean < least_velocity", "Too slow: {face_mean} over the face, least "
         "{least_velocity}. Do not spray: change the filters, clear the stack, call whoever "
         "serves the fan."),
        ("face_lowest < 0.75 * least_velocity", "The mean will do ({face_mean}), but a place of "
         "the face has only {face_lowest}: find what stands in the way."),
        ("", "{face_mean} over the face, least {least_velocity}; change the filters when the "
         "dial reads {change_reading}."),
    )),
    Said(name="filter_words", label="Filters", cases=(
        ("filters < filters_needed", "Too few: {filters} are fitted, {filters_needed} are needed "
         "for the rated velocity. Air rushes through at {filter_speed_now} and takes mist along."),
        ("", "{filters} are fitted, {filters_needed} would do; air goes through at "
         "{filter_speed_now}."),
    )),
)  # fmt: skip
SOURCES = (OSHA_BOOTHS, MODEL_CODE, FAN_AND_SYSTEM, DALLA_VALLE, GEOMETRY, SI)
