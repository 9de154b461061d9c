"""What the pieces-to-check calculation asks."""

from ..engine.declaration import Choice, Input, Number, When

PIECES = When(choice="ask", is_one_of=("pieces",))
FOUND = When(choice="ask", is_one_of=("found",))
SHARES = When(choice="ask", is_one_of=("pieces", "found"))
READINGS = When(choice="ask", is_one_of=("readings",))
QUESTION, LOT, MEAN = "The question", "The pieces", "The readings"

# fmt: off
INPUTS: tuple[Input, ...] = (
    Choice(
        name="ask", label="What you want to know", group=QUESTION, example="pieces",
        options=(("pieces", "How many pieces to check"),
                 ("found", "What a check has shown"),
                 ("readings", "How many readings to average")),
    ),
    Number(
        name="confidence", label="Confidence", symbol="C", unit="%", decimals=1, lowest=50,
        highest=99.9, example=95, group=QUESTION,
    ),
    Number(
        name="batch_size", label="Pieces in the batch", symbol="N", unit="1", decimals=0,
        whole=True, lowest=0, highest=20000, example=60, group=LOT, when=SHARES,
        help="0 for a run that goes on.",
    ),
    Number(
        name="worst_share", label="Share that may be out, at most", symbol="p", unit="%",
        decimals=1, lowest=0.1, highest=50, example=5, group=LOT, when=SHARES,
    ),
    Number(
        name="allowed_misses", label="Pieces found out that still let it pass", symbol="c",
        unit="1", decimals=0, whole=True, lowest=0, highest=10, example=0, group=LOT, when=PIECES,
        help="0: one miss stops the batch.",
    ),
    Number(
        name="checked", label="Pieces checked", symbol="n", unit="1", decimals=0, whole=True,
        lowest=1, highest=2000, example=30, group=LOT, when=FOUND,
    ),
    Number(
        name="found_out", label="of these out", symbol="k", unit="1", decimals=0, whole=True,
        lowest=0, highest=2000, example=0, group=LOT, when=FOUND,
    ),
    Number(
        name="spread", label="One reading scatters by", symbol="s", unit="mm", decimals=3,
        lowest=0.0005, highest=5, example=0.035, group=MEAN, when=READINGS,
        help="Standard deviation of repeats, gauge laid on afresh.",
    ),
    Number(
        name="wanted", label="The mean is to be sure to within", symbol="E", unit="mm", decimals=3,
        lowest=0.001, highest=10, example=0.05, group=MEAN, when=READINGS,
        help="Up or down, with the confidence above.",
    ),
    Number(
        name="gauge_uncertainty", label="What averaging does not better, k = 2", symbol="U_g",
        unit="mm", decimals=3, lowest=0, highest=5, example=0.03, group=MEAN, when=READINGS,
        help="The gauge's own error, from its certificate or the gauge list.",
    ),
)
# fmt: on
