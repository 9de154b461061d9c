"""Where the settling calculation comes from, what it is held against, its exercises."""

from collections.abc import Sequence

from ..engine.declaration import Check, Decision, Exercise, Option, Slip, Source
from ..laws.approach import NEWTON_APPROACH
from ..laws.settling_curves import LEAST_SQUARES, LOGARITHMIC_CREEP
from ..laws.student_factor import student_t_factor

SCIPY_FIT = Source(
    id="scipy-curve-fit",
    title="scipy 1.18.1, optimize.curve_fit (Levenberg-Marquardt)",
    kind="library",
    note="The three figures of each law fitted freely, independently of this project.",
)
MPMATH = Source(
    id="mpmath-settling",
    title="mpmath 1.4.1, 40 digits",
    kind="library",
    note="The zero of the derivative of the sum of squares, the band by lu_solve of JᵀJ, and the "
    "day on which the daily change falls to the step, found independently of this project.",
)
SCIPY_T = Source(
    id="scipy-stats-t",
    title="scipy 1.18.1, stats.t: quantiles of Student's distribution",
    kind="library",
)
SOURCES = (LOGARITHMIC_CREEP, NEWTON_APPROACH, LEAST_SQUARES, SCIPY_FIT, MPMATH, SCIPY_T)

SLOWER = ((0, 2.21), (0.5, 2.262), (1, 2.301), (2, 2.349), (3, 2.371), (4, 2.389), (6, 2.398),
          (8, 2.401))  # fmt: skip
FOUR = ((0.1, 1.905), (1, 2.004), (3, 2.083), (7, 2.133))
FALLING = ((0, 3.42), (1, 3.31), (2, 3.24), (4, 3.16), (7, 3.115), (11, 3.10))
EXAMPLE = ((0, 2.20), (1, 2.33), (2, 2.38), (3, 2.42), (4, 2.44), (5, 2.46))


def _fitted(
    words: str, rows: Sequence[tuple[float, float]], creep: str, approach: str
) -> Check:  # fmt: skip
    """The six fitted figures, each law's three in one text."""
    names = ("start", "gain", "time")
    expected = dict(zip((f"creep_{one}" for one in names), creep.split(), strict=True))
    expected.update(zip((f"approach_{one}" for one in names), approach.split(), strict=True))
    return Check(
        inputs={"readings": [list(row) for row in rows], "gauge_step": 0.001},
        source=SCIPY_FIT.id, origin="library", where=words, expected=expected,
    )  # fmt: skip


# fmt: off
CHECKS = (
    _fitted("readings of the example, six days", EXAMPLE,
            "2.19999 0.218228 0.34135", "2.202595 0.265501 1.69552"),
    _fitted("eight readings that come to rest", SLOWER,
            "2.207000 0.133832 0.226278", "2.210044 0.192277 1.57585"),
    _fitted("four readings", FOUR, "1.873202 0.163989 0.180186", "1.907610 0.227078 1.78540"),
    _fitted("six readings that fall", FALLING,
            "3.422563 -0.233033 0.395273", "3.419529 -0.322977 2.449426"),
    Check(
        inputs={}, source=MPMATH.id, origin="library",
        where="readings of the example, gauge step 0.02 mm: creep, forecast and band",
        expected={
            "forecast": "2.625277245", "curve_half": "0.05226173059",
            "reading_half": "0.05539753875", "forecast_low": "2.569879706",
            "height_now": "2.460649295", "calm_day": "3.91499109", "weight": "85.898138",
            "other_forecast": "2.468096153", "creep_scatter": "0.002720824917",
        },
    ),
    Check(
        inputs={"law": "approach"}, source=MPMATH.id, origin="library",
        where="the same by the approach to rest",
        expected={
            "forecast": "2.468096153", "curve_half": "0.03220756876",
            "reading_half": "0.04066792232", "calm_day": "3.013710368",
            "other_forecast": "2.625277245", "scatter": "0.007802322881",
        },
    ),
    Check(
        inputs={"readings": [list(row) for row in SLOWER], "gauge_step": 0.001, "look_ahead": 22},
        source=MPMATH.id, origin="library", where="eight readings that come to rest, band",
        expected={
            "forecast": "2.402320927", "curve_half": "0.002934060641",
            "reading_half": "0.004898451214", "scatter": "0.001525924397",
        },
    ),
    Check(
        inputs={"readings": [list(row) for row in FOUR], "gauge_step": 0.002, "look_ahead": 23},
        source=MPMATH.id, origin="library", where="four readings, one degree of freedom",
        expected={
            "forecast": "2.237912645", "reading_half": "0.2129784126", "calm_day": "34.93183219",
            "weight": "84.782762",
        },
    ),
    *(
        Check(
            function=student_t_factor, source=SCIPY_T.id, origin="library",
            given={"confidence_percent": confidence, "degrees_of_freedom": freedom},
            where=f"{confidence} %, {freedom} degrees of freedom", expected={"": factor},
        )
        for confidence, freedom, factor in (
            (95, 1, "12.7062047362"), (95, 3, "3.18244630528"), (99, 5, "4.03214298356"),
            (90, 12, "1.78228755565"),
        )
    ),
)

EXERCISES = (
    Exercise(
        name="by-the-logarithm",
        situation="The readings of the calculator's page follow creep: start 2.200 mm (0.0866 in), "
        "0.2182 mm (0.00859 in) for each tenfold of time, τ 0.341 d. The last reading is of day 5. "
        "The customer wants {action_bass} by the day that is {look_ahead} after that. If nobody "
        "touches it, what action does the curve give for that day?",
        asks="forecast", within="0.01 mm",
        draw={"look_ahead": (10, 150, 1), "action_bass": (2.0, 2.7, 0.01)},
        fixed={"law": "creep"},
        slips=(
            Slip(name="natural-logarithm",
                 formula="creep_start + creep_gain * log(1 + forecast_day / creep_time)",
                 why="The gain counts tenfolds of time: take the logarithm to base ten, not ln."),
            Slip(name="days-without-tau",
                 formula="creep_start + creep_gain * log10(1 + forecast_day / one_day)",
                 why="Divide the days by τ first: the logarithm counts from τ on, not from a day."),
            Slip(name="straight-on",
                 formula="height_now + next_day * look_ahead / one_day",
                 why="You carried on at tomorrow's pace. It slows down all the time."),
            Slip(name="as-wanted", formula="action_bass",
                 why="That is what is wanted. What comes by itself was asked."),
        ),
    ),
    Exercise(
        name="set-it-lower-now",
        situation="The readings of the calculator's page follow creep: 0.2182 mm (0.00859 in) for "
        "each tenfold of time, τ 0.341 d; the last is of day 5, today. The customer wants "
        "{action_bass} on the day that is {look_ahead} from now. To what do you set the action "
        "today?",
        asks="set_today", within="0.02 mm",
        draw={"action_bass": (2.0, 2.8, 0.01), "look_ahead": (10, 120, 1)},
        fixed={"law": "creep"},
        slips=(
            Slip(name="added", formula="action_bass + to_come",
                 why="It will rise by that much: set it lower by as much, not higher."),
            Slip(name="as-wanted", formula="action_bass",
                 why="That is right today and too high then: what is to come is left out."),
            Slip(name="from-the-first-day",
                 formula="action_bass - creep_gain * log10(1 + forecast_day / creep_time)",
                 why="What came up to today has come already. Only the rest is still to come."),
        ),
    ),
)

DECISIONS = (
    Decision(
        name="set-it-now-or-leave-it",
        situation="The readings of the calculator's page follow creep: 0.2182 mm (0.00859 in) for each "
        "tenfold of time, τ 0.341 d; the last is of day 5, today, and the curve stands at "
        "{height_now}. The customer wants {action_bass} on the day that is {look_ahead} from now. "
        "What would come within 0.05 mm (0.002 in) of that is left alone. What do you do today?",
        options=(
            Option(
                words="Lower it",
                holds="height_now - set_today >= 0.07",
                why="By itself it comes to {forecast}, and {action_bass} is wanted.",
            ),
            Option(
                words="Leave it: it comes to what is wanted by itself",
                holds="abs(height_now - set_today) <= 0.04",
                why="By itself it comes to {forecast}, and {action_bass} is wanted.",
            ),
            Option(
                words="Raise it",
                holds="set_today - height_now >= 0.07",
                why="By itself it comes to {forecast}, and {action_bass} is wanted.",
            ),
        ),
        because="{to_come} is still to come, to {forecast}; {action_bass} is wanted then, so it should "
        "stand at {set_today} today, and it stands at {height_now}.",
        draw={"action_bass": (2.48, 2.9, 0.01), "look_ahead": (10, 180, 1)},
        fixed={"law": "creep"},
    ),
)
# fmt: on
