"""What the film-build calculator asks."""

from ..engine.declaration import Choice, Input, Number

COAT, COATS, POLISHING, START = "One coat", "Coats and sanding", "Polishing", "Start"
WAITS, LIMITS, BUYING = "Waits and the working day", "Limits of the film", "Lacquer to buy"
WEEKDAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")

inputs: tuple[Input, ...] = (
    Number(
        name="volume_solids", label="Volume solids of the lacquer in the tin", symbol="V_s",
        unit="%", decimals=1, lowest=5, highest=100, example=28, group=COAT,
        help="By volume, from the data sheet. Solids by weight are a larger figure: do not use "
        "them here.",
    ),
    Number(
        name="thinner_added", label="Thinner added to 100 parts of lacquer", symbol="r", unit="%",
        decimals=1, lowest=0, highest=400, example=40, group=COAT,
        help="By volume: 40 mL to 100 mL is 40 %. Put 0 if the solids are those of the mix.",
    ),
    Number(
        name="wet_film", label="Wet film of one coat", symbol="w", unit="um", decimals=0,
        lowest=10, highest=500, example=125, group=COAT, help="Wet film comb, on a test strip.",
    ),
    Number(
        name="rounds", label="Rounds of coats", symbol="R", unit="1", decimals=0, whole=True,
        lowest=1, highest=15, example=4, group=COATS,
        help="A round is sprayed in one day and sanded level before the next.",
    ),
    Number(
        name="coats_per_round", label="Coats in a round", symbol="c", unit="1", decimals=0,
        whole=True, lowest=1, highest=6, example=3, group=COATS,
    ),
    Number(
        name="sanding_loss", label="Film sanded off between two rounds", symbol="s", unit="um",
        decimals=0, lowest=0, highest=150, example=30, group=COATS,
        help="Film gauge before less film gauge after.",
    ),
    Number(
        name="levelling_loss", label="Film taken off by levelling", symbol="s_l", unit="um",
        decimals=0, lowest=0, highest=150, example=45, group=POLISHING,
        help="After the cure, down to flat.",
    ),
    Number(
        name="wheel_loss", label="Film taken off by the wheels", symbol="s_w", unit="um",
        decimals=0, lowest=0, highest=80, example=15, group=POLISHING,
    ),
    Choice(
        name="start_day", label="First coat is sprayed on a", group=START, example="Monday",
        options=tuple((day, day) for day in WEEKDAYS),
    ),
    Choice(
        name="weekend", label="Days off", group=WAITS, example="both",
        options=(
            ("both", "Saturday and Sunday"), ("sunday", "Sunday"), ("none", "None"),
        ),
    ),
    Number(
        name="recoat_time", label="From one coat to the next within a round", symbol="t_r",
        unit="min", decimals=0, lowest=5, highest=240, example=90, group=WAITS,
    ),
    Number(
        name="sand_wait", label="From the last coat of a round to sanding it", symbol="t_s",
        unit="h", decimals=0, lowest=1, highest=240, example=16, group=WAITS,
    ),
    Number(
        name="cure_days", label="From the last coat to levelling", symbol="t_c", unit="d",
        decimals=0, whole=True, lowest=1, highest=90, example=10, group=WAITS,
        help="Counted from the sprayer's signature; days off count too.",
    ),
    Number(
        name="coat_time", label="Spraying one coat takes", symbol="t_k", unit="min", decimals=0,
        lowest=1, highest=90, example=20, group=WAITS,
    ),
    Number(
        name="sanding_time", label="Sanding a round level takes", symbol="t_b", unit="min",
        decimals=0, lowest=0, highest=240, example=60, group=WAITS,
    ),
    Number(
        name="day_begins", label="The working day begins at", symbol="t_0", unit="h", decimals=1,
        lowest=0, highest=12, example=8, group=WAITS, help="By the clock: 7.5 is half past seven.",
    ),
    Number(
        name="day_length", label="Length of the working day", symbol="t_d", unit="h", decimals=1,
        lowest=4, highest=12, example=8, group=WAITS,
    ),
    Number(
        name="least_in_all", label="In all, first coat to levelling: at least", symbol="T_1",
        unit="d", decimals=0, whole=True, lowest=1, highest=21, example=14, group=WAITS,
    ),
    Number(
        name="most_in_all", label="In all, first coat to levelling: at most", symbol="T_2",
        unit="d", decimals=0, whole=True, lowest=14, highest=365, example=21, group=WAITS,
    ),
    Number(
        name="film_aim", label="Film aimed at before levelling", symbol="h_0", unit="um",
        decimals=0, lowest=10, highest=1000, example=210, group=LIMITS,
    ),
    Number(
        name="least_film_before", label="Least film before levelling", symbol="h_1", unit="um",
        decimals=0, lowest=20, highest=300, example=180, group=LIMITS,
    ),
    Number(
        name="most_film_before", label="Most film before levelling", symbol="h_2", unit="um",
        decimals=0, lowest=150, highest=800, example=250, group=LIMITS,
    ),
    Number(
        name="least_film", label="Least film to keep after polishing", symbol="h_k", unit="um",
        decimals=0, lowest=0, highest=250, example=100, group=LIMITS,
    ),
    Number(
        name="most_film", label="Most film after polishing", symbol="h_m", unit="um", decimals=0,
        lowest=100, highest=600, example=200, group=LIMITS,
    ),
    Number(
        name="sprayed_area", label="Area sprayed", symbol="A", unit="m2", decimals=2, lowest=0.01,
        highest=20, example=0.5, group=BUYING,
        help="From memory: a guitar with its neck about 0.5 m², a concert ukulele about 0.2 m².",
    ),
    Number(
        name="transfer_efficiency", label="Share of the spray that lands on the work", symbol="e",
        unit="%", decimals=0, lowest=5, highest=100, example=35, group=BUYING,
        help="From memory: 25 to 40 % for an ordinary gun on narrow work, 50 to 65 % for a "
        "low-pressure one. To find yours: mix used against wet film times area.",
    ),
    Number(
        name="left_over", label="Left in cup and strainer, a round", symbol="v_c", unit="mL",
        decimals=0, lowest=0, highest=2000, example=50, group=BUYING,
    ),
    Number(
        name="lacquer_price", label="Price of the lacquer, in your money", symbol="p_l",
        unit="1/L", decimals=2, lowest=0, highest=10000, example=24, group=BUYING,
    ),
    Number(
        name="thinner_price", label="Price of the thinner, in your money", symbol="p_t",
        unit="1/L", decimals=2, lowest=0, highest=10000, example=9, group=BUYING,
    ),
)  # fmt: skip
