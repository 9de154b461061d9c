"""Where the uncertainty of a reading comes from, what it is held against, its exercises."""

from ..engine.declaration import Check, Decision, Exercise, Option, Slip, Source
from ..engine.judging import chance_in
from ..laws.student_factor import normal_factor, student_t_factor
from ..laws.uncertainty_budget import GUM

RULES = Source(
    id="iso-14253-1",
    title="ISO 14253-1: decision rules for proving conformity or nonconformity with specifications",
    year="1998, 2017",
    note="The guard band of 1.65 u of the edition of 2017 was read in a public calibration "
    "procedure that cites its p. 16; the whole U of the first edition is from memory.",
)
JCGM_106 = Source(
    id="jcgm-106",
    title="The role of measurement uncertainty in conformity assessment (JCGM 106:2012): "
    "conformance probability, guard bands, measurement capability index",
    author="Joint Committee for Guides in Metrology",
    year="2012",
    note="Clauses from memory; the figures are from scipy.",
)
GUM_H1 = Source(
    id="gum-h1",
    title="GUM (JCGM 100:2008) example H.1, an end gauge of 50 mm",
    note="Its contributions and the result, 50 000 838 nm with 32 nm, were read in the "
    "documentation of the GUM Tree Calculator.",
)
GTC = Source(
    id="gtc",
    title="GTC 1.5.1, the GUM Tree Calculator",
    kind="library",
    note="Budgets of example H.1 and of this page, combined, their degrees of freedom and "
    "coverage factors, independently of this project.",
)
SCIPY = Source(
    id="scipy-stats",
    title="scipy 1.17.1 and 1.18.1, stats.norm and stats.t",
    kind="library",
)
SOURCES = (GUM, RULES, JCGM_106, GUM_H1, GTC, SCIPY)

# Lengths of example H.1 in mm: 25 nm is 0.000025 mm.
H1 = {
    "contributions": [
        ["standard", 0.000025, "standard", 1, 18], ["d0", 0.0000058, "standard", 1, 24],
        ["d1", 0.0000039, "standard", 1, 5], ["d2", 0.0000067, "standard", 1, 8],
        ["expansion", 5.0000623e-6, "rectangular", 1, 50],
        ["temperature", 2.8750358225e-5, "rectangular", 1, 2],
    ],
    "repeats": "none",
}  # fmt: skip
TENTH = {
    "contributions": [["gauge", 0.01, "standard", 1, 0]], "repeats": "none", "limit_low": 9.95,
    "limit_high": 10.05, "reading": 10,
}  # fmt: skip
THREE = {
    "contributions": [["a", 0.05, "rectangular", 1, 0], ["b", 0.03, "normal", 2, 8],
                      ["c", 0.02, "standard", 0.5, 3]],
    "readings": [1.12, 1.15, 1.09], "averaged": 3,
}  # fmt: skip


# fmt: off
CHECKS = (
    Check(
        inputs=H1, source=GUM_H1.id, origin="read", unit="um",
        where="contributions and combined standard uncertainty, 32 nm",
        expected={
            "combined_u": "0.032", "by_contribution[temperature].part": "0.016599",
            "by_contribution[expansion].part": "0.00288679",
        },
    ),
    Check(
        inputs={**H1, "coverage": "own", "confidence": 99}, source=GTC.id, origin="library",
        where="example H.1, 99 %",
        expected={
            "combined_u": "0.00003166387911", "freedom_eff": "16.7518557376",
            "factor": "2.90354763045",
        },
    ),
    Check(
        inputs={}, source=GTC.id, origin="library", where="the example of this page",
        expected={"combined_u": "0.045092497528229", "freedom_eff": "42.3367111111"},
    ),
    Check(
        inputs={**THREE, "coverage": "own", "confidence": 95}, source=GTC.id, origin="library",
        where="counts of 2 and a half, three repeats averaged, 95 %",
        expected={
            "combined_u": "0.04618802153517", "freedom_eff": "30.4252553389",
            "factor": "2.04107613307", "expanded": "0.0942732683894",
        },
    ),
    Check(
        inputs={**THREE, "coverage": "own", "confidence": 99}, source=GTC.id, origin="library",
        where="the same, 99 %", expected={"expanded": "0.126897575329"},
    ),
    Check(
        inputs={"contributions": [["gauge", 1, "standard", 1, 0]], "repeats": "none",
                "limit_low": 0, "limit_high": 100},
        source=RULES.id, origin="read", where="guard band 1.65 u of the edition of 2017",
        expected={"narrow_low": "1.65"},
    ),
    Check(
        inputs=TENTH, source=SCIPY.id, origin="library",
        where="worked example, limits 9.95 and 10.05, u = 0.010",
        expected={"narrow_low": "9.9665", "narrow_high": "10.0335", "capability": "2.500"},
    ),
    *(
        Check(
            function=chance_in, source=SCIPY.id, origin="library",
            given={"value": value, "low": 9.95, "high": 10.05, "standard": 0.01},
            where=f"conformance probability at {value}", expected={"": chance},
        )
        for value, chance in (
            (10, "0.999999"), (10.03, "0.977250"), (10.0335, "0.950529"), (10.05, "0.500000"),
            (10.06, "0.158655"),
        )
    ),
    *(
        Check(
            function=student_t_factor, source=SCIPY.id, origin="library",
            given={"confidence_percent": confidence, "degrees_of_freedom": freedom},
            where=f"Student's t, {confidence} %, {freedom} degrees of freedom",
            expected={"": factor},
        )
        for confidence, freedom, factor in (
            (95, 4, "2.77644510520"), (95.45, 10, "2.28368161330"), (99, 16.7, "2.90468093843"),
        )
    ),
    Check(
        function=normal_factor, source=SCIPY.id, origin="library",
        given={"confidence_percent": 95.45}, where="normal curve, 95.45 %",
        expected={"": "2.0000024439"},
    ),
)

# Five repeats by how many twentieths of a millimetre each lies off a place on the scale.
SCATTERS = (
    (0, 0, 1, 0, -1), (0, 1, 0, 0, 0), (0, 1, 1, 0, 0), (1, 0, -1, 0, 1), (0, 2, 0, 1, 0),
    (0, 2, 0, 2, 1), (0, 1, 2, -1, 0), (0, 3, 1, 1, 0), (2, 0, -2, 1, 0), (0, 1, 3, 2, 0),
    (0, 3, 3, 1, 0), (0, 2, -2, 2, 1), (0, 4, 1, 2, 0), (0, 3, -1, 3, 0),
)
FIVE_READINGS = tuple(
    tuple(round((place + off) / 20, 2) for off in scatter)
    for place in range(30, 120)
    for scatter in SCATTERS
)
EXERCISES = (
    Exercise(
        name="accept-up-to",
        situation="The gauge list says {gauge_uncertainty} for your gauge (k = 2). The sheet says "
        "at most {limit_high}. Up to what reading do you accept?",
        asks="accept_high", within="0.005 mm",
        draw={"limit_high": (1.5, 3.5, 0.01), "gauge_uncertainty": (0.03, 0.15, 0.002)},
        fixed={"budget": "listed", "repeats": "none", "limits": "high", "reading": 1.5},
        slips=(
            Slip(name="the-limit-itself", formula="limit_high",
                 why="At the limit itself the chance of being out is a half. Stay below it by the "
                 "gauge's uncertainty."),
            Slip(name="added", formula="limit_high + expanded",
                 why="The doubt is taken off the limit, not added: what you accept must be in."),
            Slip(name="half-of-it", formula="limit_high - combined_u",
                 why="That is the standard uncertainty. The guard band is the expanded one, k = 2."),
        ),
    ),
    Exercise(
        name="mean-of-several",
        situation="Five repeats, the gauge off and on again each time, read {readings}. At work you "
        "take the mean of {averaged} readings. How far does such a mean scatter, as a standard "
        "uncertainty?",
        asks="repeat_u", within="2 %",
        draw={"averaged": (2, 9, 1), "readings": FIVE_READINGS},
        slips=(
            Slip(name="not-averaged", formula="repeat_spread",
                 why="That is one reading's scatter. A mean of several scatters less."),
            Slip(name="divided-by-the-number", formula="repeat_spread / averaged",
                 why="It shrinks with the root of the number, not with the number."),
            Slip(name="by-the-five", formula="repeat_spread / sqrt(repeat_count)",
                 why="The five told you the spread. What counts is how many you average at work."),
        ),
    ),
    Exercise(
        name="room-for-the-gauge",
        situation="Limits {limit_low} to {limit_high}; the gauge list says {gauge_uncertainty} "
        "(k = 2). How many times do four standard uncertainties go into the room between the limits?",
        asks="capability", within="2 %",
        draw={"limit_low": (1.5, 2.2, 0.01), "limit_high": (2.3, 2.8, 0.01),
              "gauge_uncertainty": (0.02, 0.08, 0.005)},
        fixed={"budget": "listed", "repeats": "none"},
        slips=(
            Slip(name="four-times-the-expanded", formula="(limit_high - limit_low) / (4 * expanded)",
                 why="The list's figure is two standard uncertainties; you took it for one."),
            Slip(name="once-expanded", formula="(limit_high - limit_low) / expanded",
                 why="That counts U once. It lies on both sides of a reading: twice U, which is "
                 "four standard uncertainties."),
        ),
    ),
)

DECISIONS = (
    Decision(
        name="in-or-out",
        situation="The sheet says {limit_low} to {limit_high}. Your gauge reads {reading}; the gauge "
        "list gives it {gauge_uncertainty} (k = 2). What do you do with the piece?",
        options=(
            Option(
                words="Pass it on: it is in",
                holds="reading >= accept_low + 0.1 * expanded "
                "and reading <= accept_high - 0.1 * expanded",
                why="Only readings from {accept_low} to {accept_high} are in with this gauge, its "
                "uncertainty and all.",
            ),
            Option(
                words="Put it right: it is out",
                holds="reading <= limit_low - 1.1 * expanded or reading >= limit_high + 1.1 * expanded",
                why="It is out only where the reading lies past a limit by more than "
                "{gauge_uncertainty}.",
            ),
            Option(
                words="Measure it with a finer gauge: this one cannot tell",
                holds="abs(reading - limit_low) <= 0.9 * expanded "
                "or abs(reading - limit_high) <= 0.9 * expanded",
                why="It can tell: {reading} lies further than {gauge_uncertainty} from either limit.",
            ),
        ),
        because="{gauge_uncertainty} of doubt on a reading of {reading}: in from {accept_low} to "
        "{accept_high}, out where it is past a limit by more than that.",
        draw={"limit_low": (2.0, 2.2, 0.01), "limit_high": (2.4, 2.6, 0.01),
              "reading": (1.9, 2.7, 0.01), "gauge_uncertainty": (0.03, 0.09, 0.005)},
        fixed={"budget": "listed", "repeats": "none"},
    ),
)
# fmt: on
