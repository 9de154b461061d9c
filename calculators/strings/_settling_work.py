"""The worked steps of the settling calculation."""

from ..engine.declaration import Constant, Given, Said, Solved, Step, Work
from ..laws.settling_curves import LEAST_SQUARES, LOGARITHMIC_CREEP
from ._settling_solved import band, choose, compared, fit_approach, fit_creep, in_order

CREEP, APPROACH = "used == 'creep'", "used == 'approach'"
FIT, LOG, EXP = LEAST_SQUARES.id, LOGARITHMIC_CREEP.id, "exponential-approach"

CONSTANTS = (
    Constant(name="one_day", label="A day", unit="d", decimals=0, value=1, source=LOG),
    Constant(name="whole", label="The whole, in per cent", unit="%", decimals=0, value=100,
             source=FIT),
)  # fmt: skip


def _given(name: str, label: str, unit: str, decimals: int, symbol: str = "") -> Given:
    return Given(name=name, label=label, symbol=symbol, unit=unit, decimals=decimals)


def _hidden(name: str, label: str, text: bool = False) -> Given:
    return Given(name=name, label=label, unit="1", decimals=0, many=not text, text=text)


def _curve(name: str, label: str, symbol: str, day: str) -> tuple[Step, Step]:
    """The height of the used curve on a day (a formula), by either law."""
    return (
        Step(
            name=name,
            label=label,
            symbol=symbol,
            unit="mm",
            decimals=3,
            only_if=CREEP,
            formula=f"creep_start + creep_gain * log10(1 + ({day}) / creep_time)",
            source=LOG,
        ),
        Step(
            name=name,
            label=label,
            symbol=symbol,
            unit="mm",
            decimals=3,
            only_if=APPROACH,
            formula=f"approach_start + approach_gain * (1 - exp((first_day - ({day})) / approach_time))",
            source=EXP,
        ),
    )


# fmt: off
_fits: tuple[Work, ...] = (
    Solved(
        name="in_order", label="The readings, by day", function=in_order, source=FIT,
        gives=(
            _hidden("days", "Days"), _hidden("heights", "Heights"),
            _given("count", "Readings", "1", 0, "n"),
            _given("freedom", "Degrees of freedom, readings less the three of a curve", "1", 0,
                   "ν"),
            _given("first_day", "First reading after", "d", 2, "t_1"),
            _given("last_day", "Last reading after", "d", 1, "t_n"),
            _given("rise_so_far", "Moved from the first reading to the last", "mm", 2),
            _given("plain_spread", "Spread of the readings about their mean", "mm", 3),
        ),
        method="Sorted by day; refused where a day stands twice or nothing has moved by more than a "
        "step of the gauge.",
    ),
    Solved(
        name="fit_creep", label="Creep: a + b·log10(1 + t/τ)", function=fit_creep, source=FIT,
        gives=(
            _given("creep_start", "a, at day 0", "mm", 4, "a_c"),
            _given("creep_gain", "b, gain in each tenfold of time", "mm", 5, "b_c"),
            _given("creep_time", "τ, time from which it goes by the logarithm", "d", 5, "τ_c"),
            _given("creep_scatter", "Scatter of the readings about the curve", "mm", 4, "s_c"),
            _hidden("creep_edge", "Fixed by the readings", text=True),
        ),
        method="Least squares: for each τ the straight line of reading against log10(1 + t/τ), then "
        "the τ with the least sum of squares. Scatter: root of the sum over the degrees of freedom.",
    ),
    Solved(
        name="fit_approach", label="Approach to rest: a + b·(1 - exp(-(t - t₁)/τ))",
        function=fit_approach, source=FIT,
        gives=(
            _given("approach_start", "a, at the first reading", "mm", 4, "a_a"),
            _given("approach_gain", "b, gain from there until it rests", "mm", 5, "b_a"),
            _given("approach_time", "τ, time constant", "d", 5, "τ_a"),
            _given("approach_scatter", "Scatter of the readings about the curve", "mm", 4, "s_a"),
            _hidden("approach_edge", "Fixed by the readings", text=True),
        ),
        method="Least squares, in the same way.",
    ),
    Solved(
        name="choose", label="Which law fits better", function=choose, source=FIT,
        gives=(
            _hidden("used", "Law used", text=True),
            _given("scatter", "Scatter of the readings about the curve used", "mm", 3, "s"),
            _given("spread", "The same, no less than the gauge's own step/√12", "mm", 4, "u"),
            _given("weight", "Share of the evidence for the law used", "%", 0),
        ),
        method="The one with the smaller scatter, the gauge's rounding being the least there is; "
        "the evidence is Akaike's weight. Refused where neither slows down, or where a plain mean "
        "does as well.",
    ),
    Solved(
        name="compared", label="Readings beside both curves", function=compared, source=FIT,
        gives=(_hidden("reading_rows", "Reading by reading"),),
        method="Each reading less each curve.",
    ),
)

_forecast: tuple[Work, ...] = (
    Step(
        name="forecast_day", label="Days at pitch by then", symbol="t_f", unit="d", decimals=0,
        formula="last_day + look_ahead", source=FIT,
    ),
    *_curve("height_now", "The curve at the last reading", "y_n", "last_day"),
    *_curve("forecast", "Forecast", "y_f", "forecast_day"),
    Step(
        name="other_forecast", label="Forecast of the other law", symbol="", unit="mm", decimals=2,
        formula="approach_start + approach_gain * (1 - exp((first_day - forecast_day) "
        "/ approach_time))",
        only_if="used == 'creep' and approach_edge != 'long'", source=EXP,
    ),
    Step(
        name="other_forecast", label="Forecast of the other law", symbol="", unit="mm", decimals=2,
        formula="creep_start + creep_gain * log10(1 + forecast_day / creep_time)",
        only_if="used == 'approach' and creep_edge != 'long'", source=LOG,
    ),
    Solved(
        name="band", label="How far the forecast may miss", function=band, source=FIT,
        gives=(
            _given("factor", "Student's factor", "1", 3, "k"),
            _given("curve_half", "The curve itself may lie off by", "mm", 3),
            _given("reading_half", "One reading that day may lie off by", "mm", 3, "U"),
            _hidden("band_rows", "Band"),
        ),
        method="The scatter carried through the slopes of the curve by its start, gain and time; "
        "one reading adds its own scatter, as squares. Times Student's factor.",
    ),
    Step(
        name="forecast_low", label="A reading that day, from", symbol="y_1", unit="mm", decimals=2,
        formula="forecast - reading_half", source=FIT,
    ),
    Step(
        name="forecast_high", label="A reading that day, to", symbol="y_2", unit="mm", decimals=2,
        formula="forecast + reading_half", source=FIT,
    ),
    Step(
        name="to_come", label="Still to come until then", symbol="Δ", unit="mm", decimals=2,
        formula="forecast - height_now", source=FIT,
    ),
    Step(
        name="set_today", label="Set it now to", symbol="A_0", unit="mm", decimals=2,
        formula="action_bass - to_come", source=FIT,
    ),
    *_curve("tomorrow", "The curve a day after the last reading", "y_m", "last_day + one_day"),
    Step(
        name="next_day", label="Moves in the next day by", symbol="δ", unit="mm", decimals=3,
        formula="tomorrow - height_now", source=FIT,
    ),
    Step(
        name="calm_day", label="Moves less than a step of the gauge a day after", symbol="t_c",
        unit="d", decimals=1, only_if=CREEP, source=LOG,
        formula="max(0 * one_day, one_day / (10 ** min(300, gauge_step / abs(creep_gain)) - 1) "
        "- creep_time)",
    ),
    Step(
        name="calm_day", label="Moves less than a step of the gauge a day after", symbol="t_c",
        unit="d", decimals=1, only_if=APPROACH, source=EXP,
        formula="first_day + max(0 * one_day, approach_time * log(abs(approach_gain) "
        "* (1 - exp(-one_day / approach_time)) / gauge_step))",
    ),
)

_words: tuple[Work, ...] = (
    Said(
        name="verdict", label="When to set it again",
        cases=(
            ("calm_day <= last_day",
             "Now, if its days are over: it moves by {next_day} in the next day, less than a step "
             "of the gauge. Set it to {set_today} to have {action_bass} after {forecast_day}."),
            ("", "Not yet: it still moves by {next_day} a day. After {calm_day} it is less "
             "than a step of the gauge, {gauge_step}."),
        ),
    ),
    Said(
        name="law_words", label="Which law",
        cases=(
            ("used == 'creep' and creep_edge == 'short' or used == 'approach' and approach_edge == "
             "'short'",
             "Nearly all of it came before the second reading: how fast, these readings cannot "
             "tell. It has scattered by {scatter} since."),
            ("used == 'creep' and approach_edge == 'long' or used == 'approach' and creep_edge == "
             "'long'",
             "Only one of the two laws fits at all; readings lie {scatter} about it."),
            ("used == 'creep' and weight >= 90",
             "Creep by the logarithm of time fits better: {creep_scatter} about it, "
             "{approach_scatter} about the approach to rest ({weight} of the evidence). It never "
             "quite stops."),
            ("used == 'approach' and weight >= 90",
             "The approach to rest fits better: {approach_scatter} about it, {creep_scatter} about "
             "creep ({weight} of the evidence)."),
            ("used == 'creep'",
             "Used: creep by the logarithm of time, {creep_scatter} about it; the approach to rest "
             "has {approach_scatter}. These readings do not tell the two apart ({weight} of the "
             "evidence): look at both forecasts."),
            ("", "Used: the approach to rest, {approach_scatter} about it; creep has "
             "{creep_scatter}. These readings do not tell the two apart ({weight} of the evidence): "
             "look at both forecasts."),
        ),
    ),
)
# fmt: on

WORK: tuple[Work, ...] = (*_fits, *_forecast, *_words)
