"""How many pieces to check, what a check has shown, how many readings to average."""

from ..engine.declaration import Calculator, Caution, Column, Drawing, Table
from ._pieces_to_check_drawings import draw_curve, draw_means
from ._pieces_to_check_inputs import INPUTS
from ._pieces_to_check_proof import CHECKS, DECISIONS, EXERCISES, SOURCES
from ._pieces_to_check_work import CONSTANTS, WORK

# fmt: off
calculator = Calculator(
    name="pieces-to-check",
    title="How many to check",
    summary="How many pieces of a batch to check so that you may trust the rest, what a check that "
    "was made has shown, or how many readings to average.",
    other_words=("sample size", "spot check", "batch inspection", "how many to measure",
                 "acceptance sampling", "zero defects", "how many readings", "average of readings",
                 "check every piece", "AQL", "confidence"),
    inputs=INPUTS,
    constants=CONSTANTS,
    work=WORK,
    tables=(
        Table(
            name="by_share", title="What the check does with better and worse lots",
            rows="lot_rows", source="sampling", only_if="ask != 'readings'",
            columns=(
                Column(name="out", label="Out, of the batch", unit="1", decimals=0,
                       only_if="batch_size > 0"),
                Column(name="share", label="Share of all that are out", unit="%", decimals=2),
                Column(name="passes", label="Shows no more misses than that, chance of", unit="%",
                       decimals=1),
            ),
        ),
    ),
    results=(
        "verdict", "pieces", "upper", "readings_count", "price_words", "t_words", "slips_through",
        "good_share", "share_checked", "best_guess", "two_low", "two_high", "reached",
        "just_too_bad", "by_logarithms", "first_count", "gauge_part", "student_factor",
    ),
    aside=(
        "share_checked", "two_low", "two_high", "just_too_bad", "by_logarithms", "first_count",
        "gauge_part", "student_factor",
    ),
    drawings=(
        Drawing(name="curve", title="Better and worse lots", function=draw_curve,
                only_if="ask != 'readings'"),
        Drawing(name="means", title="The mean of more and more readings", function=draw_means,
                only_if="ask == 'readings'"),
    ),
    cautions=(
        Caution(
            text="Draw at random: number the pieces and throw dice, or take them from all layers "
            "of the box. The ones that lie on top were made on one morning.",
            only_if="ask != 'readings'",
        ),
        Caution(
            text="A joint, a guard or anything whose failure can hurt is checked on every piece. "
            "No share of misses is allowed there.",
        ),
        Caution(
            text="A piece within the gauge's uncertainty of its limit is neither in nor out: count "
            "it as out here, or measure it finer.",
            only_if="ask != 'readings'",
        ),
        Caution(
            text="Nearly all of the batch ({pieces} of {batch_size}) has to be looked at. Check "
            "them all.",
            only_if="pieces >= 0.8 * batch_size if ask == 'pieces' and batch_size > 0 else 1 < 0",
        ),
        Caution(
            text="Averaging betters scatter alone. A gauge that reads high reads high on average, "
            "too.",
            only_if="ask == 'readings'",
        ),
    ),
    validity="Exact for pieces drawn at random and judged without error. The confidence is about "
    "the method: of lots just too bad, that share is stopped. It does not say how many of your "
    "lots are bad. A batch counts whole pieces: just too bad is the first number out that is more "
    "than the share allowed. For the mean, readings are taken as independent and normal, each laid "
    "on afresh; the spread that you enter stands in for theirs.",
    sources=SOURCES,
    checks=CHECKS,
    exercises=EXERCISES,
    decisions=DECISIONS,
)
# fmt: on
