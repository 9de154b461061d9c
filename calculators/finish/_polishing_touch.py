"""What a handful of force readings says about a polisher's touch, and about two."""

from collections.abc import Callable
from typing import Any

from ..engine.declaration import Given, Said, Solved, Step, Work
from ._polishing_solved import chances_a, chances_b, touch_a, touch_b, two_hands

STUDENT_METHOD = (
    "Student's t for one more reading, not the normal curve: a handful of readings knows its own "
    "spread badly, and the normal curve would call the hand steadier than it is."
)


def _touch(
    letter: str, asked: str, touch: Callable[..., Any], chances: Callable[..., Any]
) -> tuple[Work, ...]:  # fmt: skip
    """The work on one polisher's readings; names end in ``letter``."""
    who = f"polisher {letter.upper()}"
    spreads = f"{asked} and spread_{letter} > 0"
    both_ends = f"{spreads} and trial == 'measured' and force_lowest < force_highest"
    upper_end = f"{spreads} and trial != 'measured'"
    mean, spread = f"{{mean_{letter}}}", f"{{spread_{letter}}}"
    outside, too_hard, too_light = (
        f"{{chance_{kind}_{letter}}}" for kind in ("outside", "hard", "light")
    )
    hands = f"Mean {mean}, spread {spread}."

    def chance(kind: str, words: str) -> Given:
        label = f"Chance that a pass {words}, {who}"
        return Given(name=f"chance_{kind}_{letter}", label=label, unit="%", decimals=1)

    return (
        Solved(
            name=f"readings_of_{letter}", label=f"Readings of {who}", function=touch,
            gives=(
                Given(name=f"mean_{letter}", label=f"Mean force, {who}",
                      symbol=f"m_{letter.upper()}", unit="N", decimals=1),
                Given(name=f"spread_{letter}", label=f"Spread (standard deviation), {who}",
                      symbol=f"s_{letter.upper()}", unit="N", decimals=1),
                Given(name=f"count_{letter}", label="Readings", unit="1", decimals=0),
            ),
            method="Mean, and sample standard deviation with n - 1.", source="student",
            only_if=asked,
        ),
        Solved(
            name=f"chances_{letter}", label=f"Chances, {who}", function=chances,
            gives=(chance("hard", "is too hard"), chance("light", "is too light"),
                   chance("outside", "leaves the safe window")),
            method=STUDENT_METHOD, source="student", only_if=both_ends,
        ),
        Solved(
            name=f"chance_hard_alone_{letter}", label=f"Chance, {who}", function=chances,
            gives=(chance("hard", "is too hard"),),
            method=STUDENT_METHOD, source="student", only_if=upper_end,
        ),
        Said(
            name=f"touch_words_{letter}", label=f"Touch of {who}", only_if=asked,
            cases=(
                (f"spread_{letter} == 0",
                 f"Mean {mean}. All readings are alike, which no hand is: read the scale finer."),
                ("trial != 'measured'", f"{hands} About {too_hard} of passes are too hard."),
                ("force_lowest < force_highest",
                 f"{hands} About {outside} of passes leave the window: {too_hard} too hard, "
                 f"{too_light} too light."),
                ("", f"{hands} There is no safe window to hold them against."),
            ),
        ),
    )  # fmt: skip


TWO = "touch == 'two'"
EITHER_SPREADS = "touch == 'two' and spread_a + spread_b > 0"
work: tuple[Work, ...] = (
    *_touch("a", "touch != 'none'", touch_a, chances_a),
    *_touch("b", TWO, touch_b, chances_b),
    Solved(
        name="two_touches", label="The two beside each other", function=two_hands,
        gives=(
            Given(name="difference", label="A presses harder than B by", symbol="d", unit="N",
                  decimals=1),
            Given(name="difference_error", label="Standard error of that", symbol="s_d", unit="N",
                  decimals=1),
            Given(name="difference_freedom", label="Degrees of freedom", symbol="ν", unit="1",
                  decimals=1),
            Given(name="certainty", label="Certainty about who presses harder", unit="%",
                  decimals=2),
        ),
        method="Difference of the means over its standard error, as Student's t with Welch's "
        "degrees of freedom: the two spreads may differ.",
        source="welch", only_if=EITHER_SPREADS,
    ),
    Step(
        name="apart", label="Their means lie apart by", symbol="", unit="N", decimals=1,
        formula="abs(mean_a - mean_b)", source="welch", only_if=TWO,
    ),
    Said(
        name="compare_words", label="A and B", only_if=TWO,
        cases=(
            ("spread_a + spread_b == 0",
             "All readings of each are alike: read the scale finer before you compare."),
            ("certainty < 95",
             "Not told apart: the means lie {apart} apart, who presses harder is only {certainty} "
             "certain. Take more readings before you change a hand."),
            ("difference > 0", "A presses harder, by {apart}; certainty {certainty}."),
            ("", "B presses harder, by {apart}; certainty {certainty}."),
        ),
    ),
)  # fmt: skip
