"""What the settling calculation asks."""

from ..engine.declaration import Choice, Input, Number, Rows

READ, ASKED, RECKONING = "Readings", "Asked", "Reckoning"

# fmt: off
INPUTS: tuple[Input, ...] = (
    Rows(
        name="readings", label="Readings", group=READ, at_least=4, at_most=30,
        help="Action at the 12th, bass side, at pitch, at the same hour and in the same air. Day 0 "
        "is when it first came to pitch; parts of a day are welcome.",
        columns=(
            Number(name="day", label="Day", unit="d", decimals=2, lowest=0, highest=400,
                   example=3),
            Number(name="height", label="Reading", unit="mm", decimals=2, lowest=0, highest=20,
                   example=2.4),
        ),
        example=((0, 2.20), (1, 2.33), (2, 2.38), (3, 2.42), (4, 2.44), (5, 2.46)),
    ),
    Number(
        name="gauge_step", label="Step of the gauge", symbol="d", unit="mm", decimals=3,
        lowest=0.001, highest=0.5, example=0.02, group=READ,
        help="What two readings can just differ by. The stepped gauge has 0.1; leaves laid on the "
        "fret under the string read to 0.02.",
    ),
    Number(
        name="look_ahead", label="Look ahead from the last reading", symbol="l", unit="d",
        decimals=0, lowest=0.5, highest=4000, example=25, group=ASKED,
    ),
    Number(
        name="action_bass", label="Action wanted then", symbol="A", unit="mm", decimals=2,
        lowest=0, highest=20, example=2.4, group=ASKED,
    ),
    Choice(
        name="law", label="Law", example="better", group=RECKONING,
        options=(
            ("better", "Whichever fits better"), ("creep", "Creep, by the logarithm of time"),
            ("approach", "Exponential approach to rest"),
        ),
    ),
    Number(
        name="confidence", label="Confidence of the band", symbol="P", unit="%", decimals=1,
        lowest=50, highest=99.9, example=95, group=RECKONING,
    ),
)
# fmt: on
