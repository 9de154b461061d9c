"""The worked steps of pieces-to-check."""

from ..engine.declaration import Constant, Given, Limit, Said, Solved, Step, Work
from ..laws.sampling import SAMPLING
from ..laws.uncertainty_budget import GUM
from ._pieces_to_check_solved import count_readings, normal_cover, plan, shown

PIECES, FOUND, READINGS = "ask == 'pieces'", "ask == 'found'", "ask == 'readings'"
PLAIN = "ask == 'pieces' and allowed_misses == 0"

CONSTANTS = (
    Constant(name="whole", label="The whole, in per cent", symbol="", unit="%", decimals=0,
             value=100, source=SAMPLING.id),
    Constant(name="list_factor", label="The k of the gauge list", symbol="k_l", unit="1",
             decimals=0, value=2, source=GUM.id),
)  # fmt: skip


def _given(name: str, label: str, unit: str, decimals: int, symbol: str = "") -> Given:
    return Given(name=name, label=label, symbol=symbol, unit=unit, decimals=decimals)


# fmt: off
_shares: tuple[Work, ...] = (
    Step(
        name="by_logarithms", label="Pieces to check from a run that goes on, none out",
        symbol="n_0", unit="1", decimals=0, only_if=PLAIN, source=SAMPLING.id,
        formula="ceil(log(1 - confidence / whole) / log(1 - worst_share / whole))",
    ),
    Solved(
        name="plan", label="How many to check", function=plan, source=SAMPLING.id, only_if=PIECES,
        gives=(
            _given("pieces", "Pieces to check", "1", 0, "n"),
            _given("just_too_bad", "Share out that is just too bad", "%", 1, "p_1"),
            _given("slips_through", "such a lot slips through with a chance of", "%", 2, "β"),
            _given("good_share", "Share out with which it still passes 95 times in 100", "%", 2,
                   "p_a"),
            Given(name="curve_rows", label="Curve", unit="1", decimals=0, many=True),
            Given(name="lot_rows", label="Lots", unit="1", decimals=0, many=True),
        ),
        method="The fewest pieces for which a lot just too bad shows no more misses than allowed "
        "with a chance of one less the confidence: by the binomial distribution for a run, by the "
        "hypergeometric one for a batch, found by halving.",
    ),
    Step(
        name="share_checked", label="That is of the batch", symbol="", unit="%", decimals=0,
        formula="pieces / batch_size * whole", source=SAMPLING.id,
        only_if="ask == 'pieces' and batch_size > 0",
    ),
    Solved(
        name="shown", label="What the check has shown", function=shown, source=SAMPLING.id,
        only_if=FOUND,
        gives=(
            _given("upper", "Of all, no more are out than", "%", 2, "p_u"),
            _given("most_out", "pieces of the batch (0 for a run)", "1", 0),
            _given("two_low", "On both sides: from", "%", 2, "p_2"),
            _given("two_high", "up to", "%", 2, "p_3"),
            Given(name="curve_rows", label="Curve", unit="1", decimals=0, many=True),
            Given(name="lot_rows", label="Lots", unit="1", decimals=0, many=True),
        ),
        method="The greatest share for which so few misses would still come up with a chance of "
        "one less the confidence (Clopper and Pearson); both sides with half of it each. For a "
        "batch the same, piece by piece, with the hypergeometric distribution.",
    ),
    Step(
        name="best_guess", label="Share out among those checked", symbol="p̂", unit="%",
        decimals=2, formula="found_out / checked * whole", source=SAMPLING.id, only_if=FOUND,
    ),
)

_readings: tuple[Work, ...] = (
    Solved(
        name="normal_cover", label="Coverage factor of the normal curve", function=normal_cover,
        gives=(_given("normal_k", "k for this confidence", "1", 4, "k"),), source=GUM.id,
        method="erf(k/√2) = C, by Newton's method.", only_if=READINGS,
    ),
    Step(
        name="gauge_part", label="Of the uncertainty, the gauge's own part", symbol="U_1",
        unit="mm", decimals=4, formula="normal_k * gauge_uncertainty / list_factor",
        source=GUM.id, only_if=READINGS,
    ),
    Limit(
        holds="gauge_part < 0.999 * wanted", blames="wanted", only_if=READINGS, source=GUM.id,
        otherwise="However many readings: the gauge's own part, {gauge_part}, stays. Take a finer "
        "gauge, or be content with less",
        allowed="more than {gauge_part}",
    ),
    Step(
        name="random_room", label="Room left for the scatter of the mean", symbol="E_1",
        unit="mm", decimals=4, formula="sqrt(wanted ** 2 - gauge_part ** 2)", source=GUM.id,
        only_if=READINGS,
    ),
    Limit(
        holds="(normal_k * spread / random_room) ** 2 <= 400", blames="wanted", only_if=READINGS,
        source="common-practice",
        otherwise="That would take more than 400 readings. Measure in a way that scatters less",
        allowed="a wanted uncertainty nearer to the scatter",
    ),
    Step(
        name="first_count", label="Readings, were the scatter known for certain", symbol="n_0",
        unit="1", decimals=0, formula="ceil((normal_k * spread / random_room) ** 2)",
        source=GUM.id, only_if=READINGS,
    ),
    Solved(
        name="count_readings", label="Readings, the scatter being known from them alone",
        function=count_readings, source=GUM.id, only_if=READINGS,
        gives=(
            _given("readings_count", "Readings to average", "1", 0, "n"),
            _given("student_factor", "Student's factor for n - 1", "1", 3, "t"),
            _given("reached", "The mean is then sure to within", "mm", 3, "U"),
        ),
        method="Counted up from there until Student's t of n - 1 times s/√n fits into the room.",
    ),
)

_words: tuple[Work, ...] = (
    Said(
        name="verdict", label="Answer",
        cases=(
            (READINGS,
             "Take the mean of {readings_count} readings: it is sure to within {reached}."),
            ("ask == 'pieces' and allowed_misses == 0",
             "Check {pieces}, drawn at random. If none is out, no more than {worst_share} of all "
             "are, with {confidence} confidence. One out stops it."),
            ("ask == 'pieces'",
             "Check {pieces}, drawn at random. If at most {allowed_misses} of them are out, no more "
             "than {worst_share} of all are, with {confidence} confidence."),
            ("upper <= worst_share and batch_size > 0",
             "Good enough: with {confidence} confidence no more than {most_out} of the "
             "{batch_size} are out, and {worst_share} may be."),
            ("upper <= worst_share",
             "Good enough: with {confidence} confidence no more than {upper} of all are out, and "
             "{worst_share} may be."),
            ("best_guess > worst_share",
             "Not good enough: {best_guess} of those checked are out, and only {worst_share} may "
             "be."),
            ("batch_size > 0",
             "Not proved: as many as {most_out} of the {batch_size} may be out, with {confidence} "
             "confidence; {worst_share} may be. Check more."),
            ("", "Not proved: as many as {upper} of all may be out, with {confidence} confidence; "
             "{worst_share} may be. Check more."),
        ),
    ),
    Said(
        name="price_words", label="What it costs", only_if=PIECES,
        cases=(
            ("good_share == 0",
             "A lot with a single one out is stopped more than 5 times in 100."),
            ("", "Good work is stopped too: a lot with more than {good_share} out is stopped more "
             "than 5 times in 100."),
        ),
    ),
    Said(
        name="t_words", label="Why more than the plain formula", only_if=READINGS,
        cases=(
            ("readings_count > first_count",
             "With the scatter known for certain {first_count} would do. So few readings know their "
             "own scatter badly, so it takes {readings_count}."),
            ("", "As many as with the scatter known for certain."),
        ),
    ),
)
# fmt: on

WORK: tuple[Work, ...] = (*_shares, *_readings, *_words)
