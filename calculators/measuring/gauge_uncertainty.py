"""How uncertain a reading is, and what may be accepted with it."""

from ..engine.declaration import Calculator, Caution, Column, Drawing, Table
from ._gauge_uncertainty_drawings import draw_budget, draw_zones
from ._gauge_uncertainty_inputs import COVER, INPUTS
from ._gauge_uncertainty_proof import CHECKS, DECISIONS, EXERCISES, SOURCES
from ._gauge_uncertainty_work import CONSTANTS, WORK

# fmt: off
calculator = Calculator(
    name="gauge-uncertainty",
    title="Uncertainty of a gauge",
    summary="How far a reading may be off, from what makes it uncertain and from repeats; what "
    "readings may be accepted then, and whether the gauge is fine enough for the limits.",
    other_words=("measurement uncertainty", "is my caliper good enough", "gauge accuracy",
                 "guard band", "can't tell with this gauge", "repeatability", "calibration",
                 "error budget", "expanded uncertainty", "k = 2", "resolution", "accept or reject"),
    inputs=INPUTS,
    folded=(COVER,),
    constants=CONSTANTS,
    work=WORK,
    tables=(
        Table(
            name="by_contribution", title="The budget", rows="budget_rows", source="gum",
            columns=(
                Column(name="what", label="What", unit="1", decimals=0, text=True),
                Column(name="half_width", label="Up to", unit="mm", decimals=4),
                Column(name="shape", label="Shape", unit="1", decimals=0, text=True),
                Column(name="divisor", label="Over", unit="1", decimals=3),
                Column(name="counts", label="Counts", unit="1", decimals=2),
                Column(name="part", label="Standard uncertainty", unit="mm", decimals=4),
                Column(name="share", label="Share of the squares", unit="%", decimals=1),
                Column(name="freedom_words", label="Degrees of freedom", unit="1", decimals=0,
                       text=True),
            ),
            note="Squares add up, so the biggest one or two decide. Halving a small one changes "
            "nothing.",
        ),
    ),
    results=(
        "verdict", "expanded", "zone_words", "fit_words", "chance", "combined_u", "factor",
        "freedom_words", "biggest_share", "without_biggest", "accept_low", "accept_high",
        "narrow_low", "narrow_high", "capability", "known_u", "repeat_u", "repeat_spread",
        "repeat_mean",
    ),
    aside=(
        "combined_u", "factor", "freedom_words", "biggest_share", "without_biggest", "accept_low",
        "accept_high", "narrow_low", "narrow_high", "capability", "known_u", "repeat_u",
        "repeat_spread", "repeat_mean",
    ),
    drawings=(
        Drawing(name="budget", title="What makes it uncertain", function=draw_budget),
        Drawing(name="zones", title="Limits, guard bands, reading", function=draw_zones),
    ),
    cautions=(
        Caution(
            text="A budget knows only what is put in: a gauge that was dropped, a straightedge on "
            "a burr, a reading taken a tone flat stand in no line. Prove the gauge first.",
        ),
        Caution(
            text="Where a figure guards a hand or a lung (a guard's gap, a speed, an air flow), no "
            "sum here replaces the local rules and a licensed check.",
        ),
        Caution(
            text="The repeats are all alike: the gauge's step hides their scatter. Its rounding "
            "must stand in the list.",
            only_if="repeat_spread == 0 if repeats == 'taken' else 1 < 0",
        ),
        Caution(
            text="Few degrees of freedom ({freedom_eff}): the factor has grown to {factor}. More "
            "repeats bring it down.",
            only_if="limited == 'yes' and freedom_eff < 10",
        ),
        Caution(
            text="The gauge list's figure may hold the usual scatter already; with repeats beside "
            "it that part counts twice, on the safe side.",
            only_if="budget == 'listed' and repeats == 'taken'",
        ),
    ),
    validity="For contributions that are independent and small, the sum of squares; a known error "
    "is first corrected for, not listed. Degrees of freedom after Welch and Satterthwaite are not "
    "cut to whole numbers. The decision takes the whole expanded uncertainty as guard band, as "
    "this handbook does everywhere; the edition of 2017 lets 1.65 standard uncertainties do. The "
    "chance of being in takes the errors as normal. A high limit alone counts its room from "
    "nought.",
    sources=SOURCES,
    checks=CHECKS,
    exercises=EXERCISES,
    decisions=DECISIONS,
)
# fmt: on
