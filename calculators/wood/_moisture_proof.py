"""Where the moisture calculation comes from, outside figures it is held against, exercises."""

from typing import Any

from ..engine.declaration import Check, Decision, Exercise, Option, Slip, Source
from ..laws.approach import NEWTON_APPROACH, fit_approach
from ..laws.equilibrium_moisture import WOOD_HANDBOOK_MOISTURE, emc_percent

DRY_KILN_MANUAL = Source(
    id="dry-kiln-manual",
    title="Dry Kiln Operator's Manual (Agriculture Handbook 188), chapter 6: moisture from an "
    "ovendried section, and from the weight of a sample board; the definition as Wood Handbook "
    "eq. (4-1)",
    author="USDA Forest Products Laboratory",
    year="1991",
    note="Named from memory; the arithmetic is checked with mpmath.",
)
TABLE_4_2 = Source(
    id="wood-handbook-table-4-2",
    title="Wood handbook, Table 4-2: moisture content of wood in equilibrium with stated "
    "temperature and relative humidity",
    author="USDA Forest Products Laboratory",
    year="2010",
    note="Cells read in a public copy, printed to 0.1 % in °F.",
)
SIMPSON = Source(
    id="simpson-1998",
    title="Equilibrium moisture content of wood in outdoor locations (FPL-RN-0268): the same "
    "equation with coefficients for °F",
    author="Simpson, W. T.",
    year="1998",
    kind="library",
    note="Coefficients read in a public weather-station program; worked out in Python beside "
    "this project.",
)
SCIPY = Source(
    id="scipy-curve-fit",
    title="scipy 1.18.1, optimize.curve_fit",
    kind="library",
    note="Nonlinear least squares, independently of this project.",
)
MPMATH = Source(
    id="mpmath-moisture",
    title="mpmath 1.4.1, arbitrary-precision arithmetic",
    kind="library",
    note="Equation, inverse, wait and its derivatives, worked out independently of this project.",
)
SOURCES = (
    WOOD_HANDBOOK_MOISTURE, TABLE_4_2, SIMPSON, DRY_KILN_MANUAL, NEWTON_APPROACH, SCIPY, MPMATH,
)  # fmt: skip
UNWEIGHED = {"witness": "none", "humidity_swing": 0}
TWO_WEIGHINGS = {"weighings": [[0, 812.0], [14, 798.1]]}


def _cell(degrees_f: int, humidity: int, moisture: str) -> Check:
    return Check(
        inputs={**UNWEIGHED, "room_temperature": f"{degrees_f} °F", "room_humidity": humidity},
        source=TABLE_4_2.id, origin="read", where=f"cell {degrees_f} °F, {humidity} %",
        expected={"emc": moisture},
    )  # fmt: skip


def _fahrenheit(celsius: float, humidity: float, moisture: str) -> Check:
    return Check(
        function=emc_percent,
        given={"temperature_c": celsius, "humidity_percent": humidity},
        source=SIMPSON.id, origin="library", unit="%", expected={"": moisture},
        where=f"{celsius} °C, {humidity} %, coefficients for °F", within="0.012",
        because="the two sets of coefficients were fitted apart",
    )  # fmt: skip


def _fit(days: list[float], gaps: list[float], start: str, rate: str) -> tuple[Check, ...]:
    given: dict[str, Any] = {"days": days, "gaps": gaps}
    where = f"{len(days)} readings from {gaps[0]:g} to {gaps[-1]:g}"
    return (
        Check(function=fitted_start, given=given, source=SCIPY.id, origin="library",
              where=f"{where}, start", expected={"": start}),
        Check(function=fitted_rate, given=given, source=SCIPY.id, origin="library",
              where=f"{where}, rate per day", expected={"": rate}),
    )  # fmt: skip


def fitted_start(days: list[float], gaps: list[float]) -> float:
    """The start of ``laws.approach.fit_approach``, in the unit of the gaps."""
    return fit_approach(days, gaps)[0]


def fitted_rate(days: list[float], gaps: list[float]) -> float:
    """The rate of ``laws.approach.fit_approach``, 1/d."""
    return fit_approach(days, gaps)[1]


CHECKS = (
    _cell(30, 15, "3.7"), _cell(30, 30, "6.3"), _cell(40, 50, "9.5"), _cell(50, 90, "20.9"),
    _cell(60, 45, "8.6"), _cell(70, 10, "2.5"), _cell(70, 30, "6.2"), _cell(70, 40, "7.7"),
    _cell(70, 50, "9.2"), _cell(70, 70, "13.1"), _cell(70, 80, "16.0"), _cell(80, 55, "9.9"),
    _cell(100, 35, "6.5"), _cell(110, 85, "16.6"), _cell(130, 5, "1.0"), _cell(130, 80, "14.0"),
    _fahrenheit(5, 70, "13.5195"), _fahrenheit(20, 55, "10.1058"), _fahrenheit(21, 40, "7.7044"),
    _fahrenheit(22, 45, "8.4409"), _fahrenheit(25, 35, "6.8632"), _fahrenheit(30, 65, "11.6109"),
    *_fit([0, 7, 14, 21], [23.0, 14.4, 9.1, 5.9], "22.9555520", "0.06572180"),
    *_fit([0, 3, 8, 15, 30], [-3.1, -2.6, -1.75, -1.2, -0.4], "-3.1151417", "0.0668021"),
    Check(
        inputs={}, source=MPMATH.id, origin="library", where="equation (4-5) at 21 °C and 45 %",
        expected={"emc": "8.461801606652"},
    ),
    Check(
        inputs={"moisture_from": "meter", "wood_moisture": 10, "witness": "none"},
        source=MPMATH.id, origin="library", where="equation (4-5) turned: 10 % at 21 °C",
        expected={"rest_humidity": "54.5744483041"},
    ),
    Check(
        inputs=TWO_WEIGHINGS, source=MPMATH.id, origin="library",
        where="offcut 64.3 and 57.6 g; witness 812.0 g, 14 days later 798.1 g",
        expected={
            "witness_dry": "727.3903576983", "moisture_now": "9.7210035235",
            "mass_at_rest": "788.9406866726", "wait": "14.0049549194",
            "time_constant": "15.1630264957", "week_change": "0.4243474504",
        },
    ),
    Check(
        inputs=TWO_WEIGHINGS, source=MPMATH.id, origin="library",
        where="the same: twice the root of the squared derivatives times 0.1 g over root 12",
        expected={"wait_uncertainty": "2.85046"}, within="0.1 %",
        because="half differences over the whole uncertainty take in a little of the bend",
    ),
)  # fmt: skip

EXERCISES = (
    Exercise(
        name="offcut-from-the-oven",
        situation="An offcut weighs {offcut_mass} fresh from the saw and {ovendry_mass} when the "
        "oven has taken all its water. What was its moisture content?",
        asks="start_moisture", within="1 %",
        draw={"offcut_mass": (61, 75, 0.1), "ovendry_mass": (50, 58, 0.1)},
        fixed={"witness": "none"},
        slips=(
            Slip(name="of-the-wet-weight",
                 formula="(offcut_mass - ovendry_mass) / offcut_mass * whole",
                 why="You divided by the wet weight. Moisture content counts from the ovendry "
                 "weight, which does not change."),
            Slip(name="dry-share", formula="ovendry_mass / offcut_mass * whole",
                 why="That is the share of wood in the piece, not the water over the wood."),
        ),
    ),
    Exercise(
        name="weight-at-rest",
        situation="An offcut weighed {offcut_mass} as cut and {ovendry_mass} from the oven. Its "
        "board now lies in a room of {room_temperature} and {room_humidity}; look up what wood comes "
        "to there. What would the offcut weigh at rest in that room?",
        asks="offcut_at_rest", within="0.1 g",
        draw={"offcut_mass": (60, 64, 0.1), "ovendry_mass": (56, 59.5, 0.1),
              "room_temperature": (17, 25, 0.5), "room_humidity": (40, 60, 1)},
        fixed={"witness": "none"},
        slips=(
            Slip(name="off-the-wet-weight", formula="offcut_mass * (1 - emc / whole)",
                 why="You took the moisture off the wet weight. Add it to the ovendry weight."),
            Slip(name="wet-basis", formula="ovendry_mass / (1 - emc / whole)",
                 why="Moisture content is a share of the dry wood, not of wood and water together."),
            Slip(name="bone-dry", formula="ovendry_mass",
                 why="In air wood always keeps some water; only the oven takes it all."),
        ),
    ),
    Exercise(
        name="how-far-from-the-room",
        situation="The meter reads {wood_moisture}. In the room it is "
        "{room_temperature} and {room_humidity}; look up what wood comes to there. By how many per "
        "cent of moisture content is the wood above that?",
        asks="gap", within="0.2",
        draw={"wood_moisture": (10.5, 16, 0.1), "room_temperature": (17, 25, 0.5),
              "room_humidity": (35, 50, 1)},
        fixed={"moisture_from": "meter", "witness": "none"},
        slips=(
            Slip(name="humidity-for-moisture", formula="wood_moisture - room_humidity",
                 why="You took the humidity of the air for the moisture of the wood, which is far "
                 "less: in air of 45 % it is some 8.5 %."),
            Slip(name="as-a-share", formula="gap / emc * whole",
                 why="That is the difference as a share of what the air gives. Moisture contents are "
                 "simply taken from one another."),
        ),
    ),
)  # fmt: skip

DECISIONS = (
    Decision(
        name="work-it-or-wait",
        situation="An offcut of the set weighed {offcut_mass} as cut and {ovendry_mass} from the "
        "oven. The room is kept at {room_temperature} and {room_humidity}; look up what wood comes "
        "to there. The shop works wood that is within 1 % of moisture content of that. What do you "
        "do with the set?",
        options=(
            Option(
                words="Work it: it is at rest",
                holds="abs(gap) <= 0.75",
                why="It holds {start_moisture} and this air gives {emc}: it has not come to rest.",
            ),
            Option(
                words="Leave it in the stickers: it is still drying",
                holds="gap >= 1.25",
                why="It holds {start_moisture}: not more than 1 % above the {emc} that this air "
                "gives.",
            ),
            Option(
                words="Leave it in the stickers: it is still taking up water",
                holds="gap <= -1.25",
                why="It holds {start_moisture}: not more than 1 % below the {emc} that this air "
                "gives.",
            ),
        ),
        because="It holds {start_moisture}, counted on the ovendry weight, and this air gives {emc}.",
        draw={"offcut_mass": (60, 64, 0.1), "ovendry_mass": (55.5, 58, 0.1),
              "room_temperature": (17, 25, 0.5), "room_humidity": (38, 55, 1)},
        fixed={"witness": "none"},
    ),
)  # fmt: skip
