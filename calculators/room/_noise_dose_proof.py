"""Outside figures that the noise calculation is held against, and exercises."""

from ..engine.declaration import Check, Decision, Exercise, Option, Slip, Source
from ..laws.noise_exposure import allowed_minutes

G_16A = Source(
    id="table-g-16a",
    title="29 CFR 1910.95 appendix A, table G-16A: reference durations",
    author="OSHA",
    note="Read in a stored copy of osha.gov, in hours.",
)
TIMES = Source(
    id="niosh-times",
    title="Noise exposure: permissible levels and durations after NIOSH",
    note="Table of a stored page of engineering data, in hours, minutes and seconds; read.",
)
NUMPY = Source(
    id="numpy-energy",
    title="numpy 2.4, energy sums and numerical derivatives; mpmath 1.3.0, powers",
    kind="library",
    note="The day of the example worked out apart from this project; the uncertainty from "
    "derivatives by small differences.",
)
CHECK_SOURCES = (G_16A, TIMES, NUMPY)


def _hours(level: float, hours: str) -> Check:
    return Check(
        function=_osha_hours, given={"level_dba": level}, expected={"": hours}, unit="h",
        source="table-g-16a", origin="read", where=f"reference duration at {level:g} dB(A)",
    )  # fmt: skip


def _osha_hours(level_dba: float) -> float:
    return allowed_minutes(level_dba, 90, 5) / 60


def _minutes(level: float, minutes: str, clock: str) -> Check:
    return Check(
        function=allowed_minutes, unit="min", source="niosh-times", origin="read",
        given={"level_dba": level, "criterion_dba": 85, "exchange_db": 3},
        where=f"longest time at {level:g} dB(A), printed {clock}", expected={"": minutes},
        within="0.51" if level < 88 else "0.02",
        because="the table cuts off the seconds, or prints whole seconds",
    )  # fmt: skip


def _day(expected: str, *tasks: tuple[str, float, float]) -> Check:
    return Check(
        inputs={"tasks": [[name, level, minutes, 0] for name, level, minutes in tasks]},
        source="numpy-energy", origin="library", expected={"day_level": expected},
        where=", ".join(f"{level:g} dB(A) for {minutes:g} min" for _, level, minutes in tasks),
    )  # fmt: skip


CHECKS = (
    *(
        _hours(level, hours)
        for level, hours in (
            (80, "32"), (81, "27.9"), (82, "24.3"), (83, "21.1"), (84, "18.4"), (85, "16"),
            (86, "13.9"),
        )
    ),
    _minutes(86, "381", "6 h 21"), _minutes(88, "240", "4 h"), _minutes(91, "120", "2 h"),
    _minutes(94, "60", "1 h"), _minutes(97, "30", "30 min"), _minutes(100, "15", "15 min"),
    _minutes(103, "7.5", "7 min 30"), _minutes(106, "3.75", "3 min 45"),
    Check(
        inputs={}, source="numpy-energy", origin="library", where="the day of the example",
        expected={
            "day_level": "87.6083048783", "niosh_dose": "182.554193791", "osha_dose": "45.2450569164",
            "day_doubt": "1.19989196", "ear_level": "79.3598987873",
        },
    ),
    _day("90.0000000000", ("a", 90, 480)),
    _day("86.7540486677", ("a", 85, 240), ("b", 88, 240)),
    _day("85.0810868696", ("a", 100, 15), ("b", 70, 465)),
)  # fmt: skip

LOUD_DAY = [["Planer", 100, 30, 2], ["Sander", 94, 90, 2], ["Bench", 78, 360, 2]]
EXERCISES = (
    Exercise(
        name="what-the-plug-gives",
        situation="The plugs say NRR {protector_rating}. By your local rule you take {taken_off} off "
        "for levels in dB(A) and count on {share_counted} of the rest. What reduction may you count "
        "on?",
        asks="reduction",
        within="0.3 dB",
        draw={"protector_rating": (15, 39, 1), "taken_off": (3, 8, 1), "share_counted": (25, 75, 1)},
        slips=(
            Slip(name="label", formula="protector_rating",
                 why="That is the figure of the laboratory. Ears in a workshop get far less."),
            Slip(name="share-first", formula="protector_rating * share_counted / whole - taken_off",
                 why="Take it off first, then the share of what is left."),
            Slip(name="all-the-rest", formula="protector_rating - taken_off",
                 why="You took it off but counted on all the rest. Only a share of it reaches the ear."),
        ),
    ),
    Exercise(
        name="hardly-louder",
        situation="A day has three tasks: planer 100 dB(A) for 30 min, sander 94 dB(A) for "
        "90 min, bench 78 dB(A) for 360 min. "
        "Readings differ by 2 dB, the meter's doubt is {instrument_doubt}, that of its place "
        "{position_doubt}, times are known to {time_doubt}. "
        "What level is the day hardly louder than (one-sided, 95 %)?",
        asks="day_at_most",
        within="0.2 dB",
        draw={"instrument_doubt": (0.7, 3, 0.1), "position_doubt": (0.5, 2, 0.1),
              "time_doubt": (5, 30, 1)},
        fixed={"tasks": LOUD_DAY},
        slips=(
            Slip(name="bare", formula="day_level",
                 why="That is the best estimate. Half of all such days are louder: add the doubt."),
            Slip(name="standard", formula="day_level + day_doubt",
                 why="One standard uncertainty leaves one day in six louder. Take 1.65 of them."),
            Slip(name="osha", formula="osha_level_8h + expanded",
                 why="You took OSHA's level with 5 dB to a halving. Energy halves with 3 dB."),
        ),
    ),
)  # fmt: skip

DECISIONS = (
    Decision(
        name="over-the-limit-or-not",
        situation="A day has three tasks: planer 100 dB(A) for 30 min, sander 94 dB(A) for 90 min, "
        "bench 78 dB(A) for 360 min. Readings differ by 2 dB, the meter's doubt is "
        "{instrument_doubt}, that of its place {position_doubt}, times are known to {time_doubt}. "
        "The limit that binds you is {day_limit} over 8 h. What do you do?",
        options=(
            Option(
                words="Quieten the day: it is over the limit",
                holds="day_level >= day_limit + 0.4",
                why="The day comes to {day_level}, below {day_limit}.",
            ),
            Option(
                words="Treat it as over, and have it measured: too near to call",
                holds="day_level <= day_limit - 0.4 and day_at_most >= day_limit + 0.4",
                why="It comes to {day_level} and is hardly louder than {day_at_most}: held against "
                "{day_limit}, that can be called.",
            ),
            Option(
                words="Leave it: below the limit, doubt included",
                holds="day_at_most <= day_limit - 0.4",
                why="It comes to {day_level}, and with its doubt it may be {day_at_most}; the limit "
                "is {day_limit}.",
            ),
        ),
        because="The day comes to {day_level} and is hardly louder than {day_at_most}; the limit is "
        "{day_limit}. An estimate from readings: a competent person decides.",
        draw={"instrument_doubt": (0.7, 2, 0.1), "position_doubt": (0.5, 1.5, 0.1),
              "time_doubt": (5, 30, 1), "day_limit": (88, 95, 1)},
        fixed={"tasks": LOUD_DAY},
    ),
)  # fmt: skip
