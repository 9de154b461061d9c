"""What the thinning calculator asks."""

from ..engine.declaration import Choice, Input, Number, Rows, When
from ..laws.flow_cups import CUPS

CUP, TRIALS, POT, WARMTH, MORE = (
    "Cup", "Trials", "Pot", "Colder or warmer lacquer", "Weighing and the cup's doubt",
)  # fmt: skip
PAIR = When(choice="warmth", is_one_of=("pair",))

inputs: tuple[Input, ...] = (
    Choice(
        name="cup", label="Flow cup", group=CUP, example="ford4",
        options=tuple((name, cup.words) for name, cup in CUPS.items()),
        help="It is stamped on the cup. Seconds of one cup mean nothing in another.",
    ),
    Number(
        name="wanted_seconds", label="Seconds wanted", symbol="t_w", unit="s", decimals=1,
        lowest=8, highest=100, example=22, group=CUP,
    ),
    Rows(
        name="trials", label="Trials with this lacquer and thinner", group=TRIALS, at_least=2,
        at_most=3,
        columns=(
            Number(name="trial_thinner", label="Thinner to 100 of lacquer", unit="%", decimals=1,
                   lowest=0, highest=400, example=25),
            Number(name="trial_seconds", label="Seconds in the cup", unit="s", decimals=1,
                   lowest=8, highest=200, example=29),
        ),
        example=((0, 58), (25, 29), (50, 19)),
        help="A small pot, thinner measured in, stirred, no bubbles, all at one temperature. Two "
        "trials are enough if what you want lies between them.",
    ),
    Number(
        name="pot_volume", label="In the pot now", symbol="v_0", unit="mL", decimals=0, lowest=10,
        highest=50000, example=600, group=POT,
    ),
    Number(
        name="thinner_in_pot", label="Thinner already in it, to 100 parts of lacquer", symbol="r_0",
        unit="%", decimals=1, lowest=0, highest=400, example=20, group=POT,
    ),
    Number(
        name="volume_solids", label="Volume solids of the lacquer in the tin", symbol="V_s",
        unit="%", decimals=1, lowest=5, highest=100, example=28, group=POT,
        help="By volume, from the data sheet.",
    ),
    Number(
        name="wet_film", label="Wet film of one coat", symbol="w", unit="um", decimals=0,
        lowest=10, highest=500, example=125, group=POT, help="Wet film comb.",
    ),
    Choice(
        name="warmth", label="Temperature", group=WARMTH, example="same",
        options=(
            ("same", "As warm as in the trials"),
            ("pair", "Colder or warmer: correct it by two readings"),
        ),
    ),
    Number(
        name="trial_temperature", label="Lacquer in the trials", symbol="T_0", unit="degC",
        decimals=0, lowest=5, highest=40, example=22, group=WARMTH, when=PAIR,
    ),
    Number(
        name="lacquer_temperature", label="Lacquer now", symbol="T_n", unit="degC", decimals=0,
        lowest=5, highest=40, example=18, group=WARMTH, when=PAIR,
    ),
    Number(
        name="cool_temperature", label="First reading, cool", symbol="T_1", unit="degC",
        decimals=0, lowest=0, highest=20, example=17, group=WARMTH, when=PAIR,
        help="The same lacquer, thinned about as wanted, timed cool and warm.",
    ),
    Number(
        name="cool_seconds", label="First reading, seconds", symbol="t_1", unit="s", decimals=1,
        lowest=10, highest=200, example=27, group=WARMTH, when=PAIR,
    ),
    Number(
        name="warm_temperature", label="Second reading, warm", symbol="T_2", unit="degC",
        decimals=0, lowest=21, highest=45, example=27, group=WARMTH, when=PAIR,
        help="Warmed by standing in the room or in warm water with the lid on, never on a flame "
        "or plate.",
    ),
    Number(
        name="warm_seconds", label="Second reading, seconds", symbol="t_2", unit="s", decimals=1,
        lowest=8, highest=100, example=19, group=WARMTH, when=PAIR,
    ),
    Number(
        name="thinner_density", label="Density of the thinner", symbol="ρ_t", unit="g/cm3",
        decimals=2, lowest=0.65, highest=1.3, example=0.86, group=MORE,
        help="Data sheet. From memory: 0.80 to 0.90.",
    ),
    Number(
        name="cup_uncertainty", label="Two timings may differ by", symbol="u", unit="s",
        decimals=1, lowest=0, highest=10, example=1.5, group=MORE,
    ),
)  # fmt: skip
