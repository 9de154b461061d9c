"""How an instrument settles under its strings, from the daily readings: forecast and its band."""

from ..engine.declaration import Calculator, Caution, Column, Drawing, Table
from ._settling_drawings import draw_days
from ._settling_inputs import INPUTS, RECKONING
from ._settling_proof import CHECKS, DECISIONS, EXERCISES, SOURCES
from ._settling_work import CONSTANTS, WORK

# fmt: off
calculator = Calculator(
    name="settling",
    title="Settling under the strings",
    summary="What the daily readings of the action say: whether it slows down, when to set it "
    "again, and where it will stand weeks from now, with how sure that is.",
    other_words=("action goes on rising", "how long must it settle", "how many days at pitch",
                 "creep", "top rises", "when to set up again", "neck moves", "bellying",
                 "new guitar moves", "action rises", "forecast"),
    inputs=INPUTS,
    folded=(RECKONING,),
    constants=CONSTANTS,
    work=WORK,
    tables=(
        Table(
            name="by_reading", title="Readings beside the two curves", rows="reading_rows",
            source="least-squares",
            columns=(
                Column(name="day", label="Day", unit="d", decimals=2),
                Column(name="height", label="Reading", unit="mm", decimals=2),
                Column(name="creep", label="Creep", unit="mm", decimals=3),
                Column(name="creep_off", label="Reading over it", unit="mm", decimals=3),
                Column(name="approach", label="Approach", unit="mm", decimals=3),
                Column(name="approach_off", label="Reading over it", unit="mm", decimals=3),
            ),
        ),
    ),
    results=(
        "verdict", "law_words", "forecast", "forecast_low", "forecast_high", "other_forecast",
        "to_come", "set_today", "next_day", "calm_day", "rise_so_far", "scatter", "spread",
        "weight", "count", "freedom", "factor", "curve_half", "reading_half", "creep_start",
        "creep_gain", "creep_time", "creep_scatter", "approach_start", "approach_gain",
        "approach_time", "approach_scatter",
    ),
    aside=(
        "scatter", "spread", "weight", "count", "freedom", "factor", "curve_half", "reading_half",
        "creep_start", "creep_gain", "creep_time", "creep_scatter", "approach_start",
        "approach_gain", "approach_time", "approach_scatter",
    ),
    drawings=(Drawing(name="days", title="The readings and where they lead", function=draw_days),),
    cautions=(
        Caution(
            text="It stands at full pitch: a string that lets go whips. Glasses on when you tune "
            "or measure close to it.",
        ),
        Caution(
            text="A curve does not see a loose brace. Whatever it says, read the relief, the arch "
            "of the top, the leaf at bridge and heel before the saddle is cut.",
        ),
        Caution(
            text="One degree of freedom: four readings carry a curve of three, and one is left to "
            "judge it by. The band is as wide as that deserves. Go on reading.",
            only_if="freedom == 1",
        ),
        Caution(
            text="The readings scatter by {scatter}, more than the gauge's step explains: pitch, "
            "hour or air was not the same each time.",
            only_if="scatter > gauge_step",
        ),
        Caution(
            text="{look_ahead} ahead is far beyond readings that end at {last_day}. The band "
            "holds only if the law does, and nobody has seen that.",
            only_if="look_ahead > 3 * last_day",
        ),
        Caution(
            text="Damp or dry air moves it more in a week than creep does in a month. The forecast "
            "is for the same air.",
        ),
    ),
    validity="Two plain laws with three figures each, fitted by least squares. Degrees of freedom "
    "are the readings less three, even where the readings do not fix the time. The band takes the "
    "curve as straight near its fit, the scatter as normal and the same each day, and the law as "
    "true; with few readings the last is the weakest. Scatter is never taken as less than the "
    "gauge's rounding. Setting rod or saddle in between starts a new list. Which law wood under "
    "strings follows, these readings can only hint at.",
    sources=SOURCES,
    checks=CHECKS,
    exercises=EXERCISES,
    decisions=DECISIONS,
)
# fmt: on
