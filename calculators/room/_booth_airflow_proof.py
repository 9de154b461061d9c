"""Outside figures that the booth calculation is held against, and exercises."""

from ..engine.declaration import Check, Decision, Exercise, Option, Slip, Source

PINT = Source(
    id="pint-air",
    title="pint 0.26.2, velocities and flows in feet",
    kind="library",
    note="Worked out independently of this project.",
)
SCIPY = Source(
    id="scipy-balance",
    title="scipy 1.18.1 (brentq): flow at which fan, filters and duct balance; numpy mean",
    kind="library",
    note="Filters as a·Q and duct as b·Q² set up from the readings, the root found apart from "
    "this project.",
)
CHECK_SOURCES = (PINT, SCIPY)
DESIGN = {"known": "wanted"}

CHECKS = (
    Check(
        inputs={**DESIGN, "face_velocity": "100 ft/min"}, source="model-code", origin="read",
        where="100 ft/min printed as 0.51 m/s", expected={"face_mean": "0.51"},
    ),
    Check(
        inputs={**DESIGN, "face_velocity": "50 ft/min"}, source="model-code", origin="read",
        where="50 ft/min printed as 0.25 m/s", expected={"face_mean": "0.25"},
    ),
    Check(
        inputs={**DESIGN, "face_velocity": "100 ft/min", "booth_width": "8 ft",
                "booth_height": "8 ft"},
        source="pint-air", origin="library", where="100 ft/min over 8 ft by 8 ft",
        expected={"face_mean": "0.508", "air_flow": "10873.669091328"},
    ),
    Check(
        inputs={**DESIGN, "face_velocity": "150 ft/min", "booth_width": "10 ft",
                "booth_height": "7 ft", "fan_free_flow": 30000},
        source="pint-air", origin="library", where="150 ft/min over 10 ft by 7 ft",
        expected={"air_flow": "17839.61335296"},
    ),
    Check(
        inputs={}, source="scipy-balance", origin="library", where="the booth of the example",
        expected={
            "face_mean": "0.5666666666667", "unevenness": "15.2941176471", "air_flow": "8160",
            "fan_pressure": "188.16", "duct_loss": "143.16", "clean_now": "22.6666666667",
            "clean_flow": "8443.308657", "clean_velocity": "0.586340878987",
            "change_reading": "102.95",
        },
    ),
    Check(
        inputs={**DESIGN, "face_velocity": 0.6, "booth_width": 1500, "filters": 8,
                "filter_loss_now": 60, "fan_free_flow": 9000, "fan_shut_pressure": 300},
        source="scipy-balance", origin="library", where="3 m² at 0.6 m/s, eight filters, 60 Pa",
        expected={
            "air_flow": "6480", "fan_pressure": "144.48", "clean_now": "22.5",
            "clean_flow": "6947.475004", "clean_velocity": "0.643284722617",
            "change_reading": "126.60",
        },
    ),
)  # fmt: skip

EXERCISES = (
    Exercise(
        name="air-of-a-booth",
        situation="A booth is open {booth_width} wide and {booth_height} high and the air-speed "
        "meter reads {face_velocity} on the mean. How much air does it draw?",
        asks="air_flow",
        within="2 %",
        draw={"booth_width": (1500, 2500, 10), "booth_height": (1800, 2200, 10),
              "face_velocity": (0.45, 0.75, 0.01)},
        fixed={"known": "wanted", "fan_free_flow": 30000},
        slips=(
            Slip(name="by-the-minute", formula="air_flow / 60",
                 why="That is cubic metres a minute. An hour has 3600 seconds."),
            Slip(name="round-the-face",
                 formula="face_mean * s_per_h * 2 * (booth_width + booth_height) / mm_per_m",
                 why="You went round the face. Velocity goes through its area: width by height."),
            Slip(name="divided", formula="face_area * s_per_h / face_mean",
                 why="Multiply the velocity by the area; faster air is more air."),
        ),
    ),
    Exercise(
        name="how-many-filters",
        situation="The booth draws {face_velocity} through an open face of {booth_width} by "
        "{booth_height}. A filter is {filter_width} by {filter_height} and is rated for "
        "{filter_speed}. What area of filter do you need?",
        asks="filter_area_needed",
        within="3 %",
        draw={"face_velocity": (0.45, 0.75, 0.01), "filter_speed": (0.8, 1.5, 0.05),
              "booth_width": (1600, 2400, 10), "booth_height": (1800, 2200, 10)},
        fixed={"known": "wanted", "fan_free_flow": 30000},
        slips=(
            Slip(name="open-face", formula="face_area",
                 why="The face is not the filter: the filter is rated for a higher velocity and "
                 "needs less area."),
            Slip(name="upside-down", formula="face_area * filter_speed / face_mean",
                 why="Turned over: a filter rated for faster air needs less area, not more."),
            Slip(name="one-filter", formula="one_filter",
                 why="That is one filter. Divide the flow by the rated velocity."),
        ),
    ),
)  # fmt: skip

DECISIONS = (
    Decision(
        name="may-you-spray",
        situation="The booth is open {booth_width} by {booth_height}. On the mean the meter reads "
        "{face_velocity} over its face, and {cross_draught} comes across the front. {filters} "
        "filters of {filter_width} by {filter_height} are in, rated for {filter_speed}. The shop "
        "asks at least {least_velocity} over the face, and a draught of at most half of what the "
        "face has. What do you do?",
        options=(
            Option(
                words="Do not spray: the face is too slow, look at filters and fan",
                holds="face_mean <= 0.95 * least_velocity",
                why="{face_mean} over the face is more than the {least_velocity} asked.",
            ),
            Option(
                words="Do not spray: fit more filters first",
                holds="face_mean >= 1.05 * least_velocity "
                "and filter_speed_now >= 1.07 * filter_speed and cross_draught <= 0.45 * face_mean",
                why="{filters} filters let the air through at {filter_speed_now}, and they are rated "
                "for {filter_speed}. Look at face and draught as well.",
            ),
            Option(
                words="Do not spray: stop the draught across the front first",
                holds="face_mean >= 1.05 * least_velocity "
                "and filter_speed_now <= 0.95 * filter_speed and cross_draught >= 0.55 * face_mean",
                why="{cross_draught} across the front against {face_mean} into the face: see whether "
                "that is more than half, and what else is amiss.",
            ),
            Option(
                words="Spray: face, filters and draught are as the shop asks",
                holds="face_mean >= 1.05 * least_velocity "
                "and filter_speed_now <= 0.95 * filter_speed and cross_draught <= 0.45 * face_mean",
                why="Hold each against what is asked: {face_mean} over the face, {filter_speed_now} "
                "through the filters, {cross_draught} across the front.",
            ),
        ),
        because="{face_mean} over the face where {least_velocity} is asked, {filter_speed_now} "
        "through filters rated for {filter_speed}, {cross_draught} across the front. This is an "
        "estimate; the local code decides.",
        draw={"booth_width": (1800, 2200, 20), "booth_height": (1800, 2200, 20),
              "face_velocity": (0.45, 0.74, 0.01), "cross_draught": (0.08, 0.52, 0.01),
              "filters": (6, 14, 1), "filter_speed": (0.9, 1.2, 0.05)},
        fixed={"known": "wanted", "fan_free_flow": 30000},
    ),
)  # fmt: skip
