"""What the uncertainty of a reading asks."""

from ..engine.declaration import Choice, Input, Number, Readings, Rows, When, Words

ROWS = When(choice="budget", is_one_of=("rows",))
LISTED = When(choice="budget", is_one_of=("listed",))
TAKEN = When(choice="repeats", is_one_of=("taken",))
LOW = When(choice="limits", is_one_of=("both", "low"))
HIGH = When(choice="limits", is_one_of=("both", "high"))
OWN = When(choice="coverage", is_one_of=("own",))
GAUGE, SCATTER, LIMITS, COVER = "What makes it uncertain", "Repeats", "Limits", "Confidence"

# fmt: off
INPUTS: tuple[Input, ...] = (
    Choice(
        name="budget", label="Known about the gauge", group=GAUGE, example="rows",
        options=(("rows", "What makes it uncertain, line by line"),
                 ("listed", "Its uncertainty from the gauge list")),
    ),
    Number(
        name="gauge_uncertainty", label="Uncertainty on the gauge list, k = 2", symbol="U_l",
        unit="mm", decimals=3, lowest=0, highest=20, example=0.1, group=GAUGE, when=LISTED,
    ),
    Rows(
        name="contributions", label="What makes it uncertain", group=GAUGE, when=ROWS,
        at_least=1, at_most=12,
        help="Up to: the half-width, so a step of 0.1 counts 0.05. Shape: rectangular (a step, a "
        "limit), triangular (mostly in the middle), u-shaped (a swing from end to end), normal (a "
        "certificate with k = 2), standard (k = 1). Counts: how strongly it comes through, 1 for "
        "one to one. Freedom: degrees of freedom, 0 where it is known well.",
        columns=(
            Words(name="what", label="What", longest=30),
            Number(name="half_width", label="Up to", unit="mm", decimals=3, lowest=0, highest=20,
                   example=0.05),
            Words(name="shape", label="Shape", longest=14),
            Number(name="counts", label="Counts", unit="1", decimals=2, lowest=0, highest=100,
                   example=1),
            Number(name="freedom", label="Freedom", unit="1", decimals=1, lowest=0,
                   highest=1e6, example=0),
        ),
        example=(
            ("Step of the gauge", 0.05, "rectangular", 1, 0),
            ("Gauge itself, certificate", 0.03, "normal", 1, 0),
            ("Where it stands on the fret", 0.03, "triangular", 1, 0),
            ("Pitch of the string", 0.02, "u-shaped", 1, 0),
        ),
    ),
    Choice(
        name="repeats", label="Repeated readings", group=SCATTER, example="taken",
        options=(("taken", "Taken: gauge off and on again each time"), ("none", "None")),
    ),
    Readings(
        name="readings", label="The repeats", symbol="x", unit="mm", decimals=3, lowest=-100,
        highest=3000, example=(2.40, 2.40, 2.45, 2.40, 2.35), at_least=2, at_most=30,
        group=SCATTER, when=TAKEN,
        help="Same place, same hour, gauge laid on afresh.",
    ),
    Number(
        name="averaged", label="At work, a reading is the mean of", symbol="m", unit="1",
        decimals=0, whole=True, lowest=1, highest=30, example=2, group=SCATTER, when=TAKEN,
    ),
    Choice(
        name="limits", label="Limits", group=LIMITS, example="both",
        options=(("both", "From and to"), ("high", "At most"), ("low", "At least")),
    ),
    Number(
        name="limit_low", label="Low limit", symbol="L", unit="mm", decimals=3, lowest=-100,
        highest=3000, example=2.2, group=LIMITS, when=LOW,
    ),
    Number(
        name="limit_high", label="High limit", symbol="H", unit="mm", decimals=3, lowest=-100,
        highest=3000, example=2.6, group=LIMITS, when=HIGH,
    ),
    Number(
        name="reading", label="Reading to judge", symbol="y", unit="mm", decimals=3, lowest=-100,
        highest=3000, example=2.5, group=LIMITS,
    ),
    Choice(
        name="coverage", label="Expanded so as to cover", group=COVER, example="usual",
        options=(("usual", "95.45 %, which is k = 2 where all is known well"),
                 ("own", "Another share")),
    ),
    Number(
        name="confidence", label="Share to cover", symbol="P_o", unit="%", decimals=2, lowest=50,
        highest=99.9, example=99, group=COVER, when=OWN,
    ),
)
# fmt: on
