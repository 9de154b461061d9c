"""Where pieces-to-check comes from, what it is held against, its exercises."""

from ..engine.declaration import Check, Decision, Exercise, Option, Slip, Source
from ..laws.sampling import SAMPLING, batch_at_most, binomial_at_most
from ..laws.uncertainty_budget import GUM
from ..sources import COMMON_PRACTICE

SCIPY = Source(
    id="scipy-stats",
    title="scipy 1.18.1, stats: binom, hypergeom, beta, t, norm",
    kind="library",
    note="Counts found by trying one piece, or one reading, after another; limits as quantiles of "
    "the beta distribution; independently of this project.",
)
MPMATH = Source(
    id="mpmath-binomials",
    title="mpmath 1.4.1, 40 digits: logarithms, whole binomial coefficients, findroot",
    kind="library",
)
SOURCES = (SAMPLING, GUM, COMMON_PRACTICE, SCIPY, MPMATH)


def _run(confidence: float, share: float, misses: int, pieces: str, slips: str) -> Check:
    return Check(
        inputs={"batch_size": 0, "confidence": confidence, "worst_share": share,
                "allowed_misses": misses},
        source=SCIPY.id, origin="library",
        where=f"a run, {confidence} %, {share} %, {misses} out let pass",
        expected={"pieces": pieces, "slips_through": slips},
    )  # fmt: skip


def _batch(
    confidence: float, batch: int, share: float, misses: int, pieces: str, slips: str
) -> Check:
    return Check(
        inputs={"confidence": confidence, "batch_size": batch, "worst_share": share,
                "allowed_misses": misses},
        source=SCIPY.id, origin="library",
        where=f"a batch of {batch}, {confidence} %, {share} %, {misses} out let pass",
        expected={"pieces": pieces, "slips_through": slips},
    )  # fmt: skip


def _found(confidence: float, checked: int, out: int, batch: int, **expected: str) -> Check:
    return Check(
        inputs={"ask": "found", "confidence": confidence, "checked": checked, "found_out": out,
                "batch_size": batch},
        source=SCIPY.id, origin="library",
        where=f"{out} of {checked} out, {'a batch of ' + str(batch) if batch else 'a run'}, "
        f"{confidence} %", expected=expected,
    )  # fmt: skip


# fmt: off
CHECKS = (
    _run(95, 5, 0, "59", "4.84945252494"), _run(90, 10, 0, "22", "9.84770902184"),
    _run(99, 2, 0, "228", "0.998953465593"), _run(95, 5, 1, "93", "4.99757952426"),
    _run(90, 2, 3, "333", "9.89865277875"), _run(99.9, 0.1, 0, "6905", "0.0999300720198"),
    _batch(95, 60, 5, 0, "31", "4.87065120428"), _batch(95, 60, 5, 1, "45", "4.47875972808"),
    _batch(90, 24, 10, 0, "13", "8.15217391304"), _batch(99, 500, 2, 2, "285", "0.974161281714"),
    _batch(95, 1000, 2.3, 0, "116", "4.99870845793"),
    _found(95, 30, 0, 0, upper="9.50338528553", two_high="11.5703308222", two_low="0"),
    _found(95, 30, 2, 0, upper="19.5326043655", two_low="0.817813446066",
           two_high="22.0735401523"),
    _found(99, 125, 5, 0, upper="10.1508394311", two_low="0.87260329073",
           two_high="10.9116997511"),
    _found(90, 1000, 20, 0, upper="2.69496231245", two_low="1.32930055346",
           two_high="2.89301228514"),
    _found(95, 30, 0, 60, most_out="4", two_high="8.33333", two_low="0"),
    _found(95, 30, 2, 60, most_out="9", two_high="16.66667", two_low="3.33333"),
    _found(99, 80, 3, 500, most_out="56", two_high="12.2", two_low="0.8"),
    *(
        Check(
            inputs={"ask": "readings", "spread": spread, "wanted": wanted,
                    "gauge_uncertainty": gauge, "confidence": confidence},
            source=SCIPY.id, origin="library",
            where=f"scatter {spread}, wanted {wanted}, gauge {gauge} mm, {confidence} %",
            expected={"first_count": first, "readings_count": count, "gauge_part": part,
                      "reached": reached},
        )
        for spread, wanted, gauge, confidence, first, count, part, reached in (
            (0.035, 0.05, 0.03, 95, "3", "6", "0.0293994597681", "0.0470472029823"),
            (0.1, 0.03, 0, 95, "43", "46", "0", "0.0296963343555"),
            (0.02, 0.05, 0.01, 99, "2", "5", "0.0128791465177", "0.0431472778026"),
            (0.035, 0.02, 0.01, 90, "10", "12", "0.00822426813476", "0.0199217967558"),
        )
    ),
    Check(
        inputs={"batch_size": 0}, source=MPMATH.id, origin="library",
        where="ln 0.05 / ln 0.95 = 58.4039748143, rounded up; (1 - p)^59 = 0.95",
        expected={"by_logarithms": "59", "good_share": "8.69000071526e-2"},
    ),
    Check(
        inputs={"batch_size": 0, "allowed_misses": 1}, source=MPMATH.id, origin="library",
        where="none or one out of 93 with chance 0.95", expected={"good_share": "0.383443853004"},
    ),
    Check(
        function=binomial_at_most, given={"misses": 0, "pieces": 59, "share": 0.05},
        source=MPMATH.id, origin="library", where="0.95^59", expected={"": "0.0484945252494"},
    ),
    Check(
        function=batch_at_most, given={"misses": 0, "batch": 60, "out": 4, "pieces": 31},
        source=MPMATH.id, origin="library", where="56 over 31, divided by 60 over 31",
        expected={"": "0.0487065120428"},
    ),
)

EXERCISES = (
    Exercise(
        name="none-out",
        situation="Saddle blanks come in without end. You want to know with {confidence} "
        "confidence that no more than {worst_share} are out, and let none pass. How many do you "
        "check?",
        asks="pieces", within="0.4",
        draw={"confidence": (80, 99, 0.5), "worst_share": (1, 25, 0.1)},
        fixed={"batch_size": 0, "allowed_misses": 0},
        slips=(
            Slip(name="one-in-so-many", formula="ceil(whole / worst_share)",
                 why="On average one of those is out; but such a sample shows none out more than "
                 "a third of the time."),
            Slip(name="confidence-for-risk",
                 formula="ceil(log(confidence / whole) / log(1 - worst_share / whole))",
                 why="Take the risk that is left, one less the confidence, not the confidence."),
        ),
    ),
    Exercise(
        name="none-of-these-out",
        situation="You have checked {checked} pieces of a long run and none was out. With "
        "{confidence} confidence, no more than what share of all of them is out?",
        asks="upper", within="2 %",
        draw={"checked": (15, 300, 1), "confidence": (82, 99, 0.5)},
        fixed={"ask": "found", "batch_size": 0, "found_out": 0},
        slips=(
            Slip(name="none-found-none-there", formula="best_guess",
                 why="None found is not none there; the ones you did not look at may be out."),
            Slip(name="one-in-so-many", formula="whole / checked",
                 why="With that share out, a third of such samples would show none all the same. "
                 "It takes about three times as much to be found 95 times in 100."),
        ),
    ),
    Exercise(
        name="readings-to-average",
        situation="One reading scatters by {spread}, known for certain; the gauge's own error is "
        "nothing beside it. The mean is to be sure to within {wanted}, with {confidence} confidence. How "
        "many readings does that take?",
        asks="first_count", within="0.4",
        draw={"spread": (0.03, 0.09, 0.001), "wanted": (0.012, 0.03, 0.001),
              "confidence": (90, 99, 1)},
        fixed={"ask": "readings", "gauge_uncertainty": 0},
        slips=(
            Slip(name="not-squared", formula="ceil(normal_k * spread / wanted)",
                 why="The mean betters with the root of the number, so the number goes with the "
                 "square."),
            Slip(name="k-forgotten", formula="ceil((spread / wanted) ** 2)",
                 why="That is for one standard uncertainty, which covers two in three only."),
            Slip(name="k-not-squared", formula="ceil(normal_k * (spread / wanted) ** 2)",
                 why="The factor stands inside the square."),
        ),
    ),
)

DECISIONS = (
    Decision(
        name="pass-or-check-more",
        situation="Of a long run {checked} pieces, drawn at random, have been checked; outside of "
        "their limits: {found_out}. At most {worst_share} may be out, and you want {confidence} "
        "confidence. What do you do with the run?",
        options=(
            Option(
                words="Pass it: no more are out than may be",
                holds="upper <= 0.95 * worst_share",
                why="As many as {upper} of all may be out by this check, and {worst_share} is the "
                "most allowed.",
            ),
            Option(
                words="Check more pieces: nothing is proved yet",
                holds="best_guess <= 0.92 * worst_share and upper >= 1.05 * worst_share",
                why="{best_guess} of those checked are out and {upper} of all at the most: with "
                "{worst_share} allowed, that says enough.",
            ),
            Option(
                words="Stop it: more are out than may be",
                holds="best_guess >= 1.08 * worst_share",
                why="Of those checked {best_guess} are out, and {worst_share} may be.",
            ),
        ),
        because="{best_guess} of those checked are out; with {confidence} confidence no more than "
        "{upper} of all are, and {worst_share} may be.",
        draw={"checked": (30, 200, 1), "found_out": (0, 5, 1), "worst_share": (2, 6, 0.1),
              "confidence": (85, 95, 1)},
        fixed={"ask": "found", "batch_size": 0},
    ),
)
# fmt: on
