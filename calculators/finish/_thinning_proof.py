"""Outside figures that the thinning calculator is held against, and exercises."""

from ..engine.declaration import Check, Decision, Exercise, Option, Slip, Source
from ..laws.flow_cups import seconds_for, viscosity_mm2_s
from ..laws.liquid_viscosity import at_temperature_mm2_s, mixed_mm2_s, warming_constant_k

CALIBRATION = Source(
    id="cup-calibration",
    title="Viscosity standards for flow cups: drain times of calibration liquids",
    note="A stored page of viscosity standards, read: liquids of 34 to 460 mm²/s with the seconds "
    "they take in Ford and Zahn cups, rounded to whole seconds.",
)
CHEMICALS = Source(
    id="chemicals",
    title="chemicals 1.5.2: viscosity_converter (tables after Gardner and Sward, Paint Testing "
    "Manual, 1972) and mixing_logarithmic",
    kind="library",
)
MPMATH = Source(
    id="mpmath-thinning",
    title="mpmath 1.4.1, 30 digits: cup equations solved for t, ln ν = a + B/T, logarithmic mixing",
    kind="library",
    note="Worked out independently of this project.",
)


def _cup(cup: str, seconds: float, printed: str) -> Check:
    return Check(
        function=viscosity_mm2_s, given={"cup": cup, "seconds": seconds}, origin="read",
        source="cup-equations", where=f"worked example: {cup}, {seconds} s, in mm²/s",
        expected={"": printed},
    )  # fmt: skip


def _liquid(cup: str, viscosity: float, printed: str) -> Check:
    return Check(
        function=seconds_for, given={"cup": cup, "viscosity": viscosity}, origin="read",
        source="cup-calibration", where=f"{cup}: seconds for {viscosity} mm²/s",
        expected={"": printed}, within="0.6",
        because="the page prints whole seconds, some rounded up that should go down and the other "
        "way",
    )  # fmt: skip


def _table(seconds: float, printed: str) -> Check:
    return Check(
        function=viscosity_mm2_s, given={"cup": "ford4", "seconds": seconds}, source="chemicals",
        origin="library", where=f"Ford No. 4 by table, {seconds} s, in mm²/s",
        expected={"": printed}, within="4 %",
        because="the table holds older measurements, whole figures a few per cent apart from the "
        "equation that ASTM later fitted",
    )  # fmt: skip


def _solved(cup: str, viscosity: float, printed: str) -> Check:
    return Check(
        function=seconds_for, given={"cup": cup, "viscosity": viscosity}, origin="library",
        source="mpmath-thinning", where=f"{cup}: seconds for {viscosity} mm²/s, root of the equation",
        expected={"": printed},
    )  # fmt: skip


def _mixed(share: float, printed: str) -> Check:
    return Check(
        function=mixed_mm2_s,
        given={"share": share, "first_mm2_s": 206.0335, "second_mm2_s": 0.68},
        source="chemicals", origin="library", where=f"{share} of 0.68 mm²/s in 206.0335 mm²/s",
        expected={"": printed},
    )  # fmt: skip


def _warm(degrees: float, printed: str) -> Check:
    return Check(
        function=at_temperature_mm2_s,
        given={"known_mm2_s": 75.0, "known_c": 25.0, "constant_k": 4749.45258771,
               "wanted_c": degrees},
        source="mpmath-thinning", origin="library",
        where=f"110 mm²/s at 18 °C and 75 at 25 °C, carried to {degrees} °C",
        expected={"": printed},
    )  # fmt: skip


CHECKS = (
    _cup("ford4", 80, "290.7135"),
    _cup("din4", 97, "438.6302"),
    _cup("iso3", 57, "21.7422"),
    _cup("zahn2", 35, "73.5"),
    _liquid("ford2", 34, "42"),
    _liquid("ford2", 66, "64"),
    _liquid("ford3", 66, "35"),
    _liquid("ford3", 120, "58"),
    _liquid("ford4", 120, "36"),
    _liquid("ford4", 230, "64"),
    _liquid("zahn1", 17, "45"),
    _liquid("zahn1", 34, "60"),
    _liquid("zahn2", 66, "33"),
    _liquid("zahn2", 120, "48"),
    _liquid("zahn3", 230, "27"),
    _liquid("zahn3", 460, "47"),
    _table(40, "132.0"),
    _table(60, "210.7"),
    _table(80, "292.6"),
    _solved("iso4", 100, "74.9407126489"),
    _solved("din4", 100, "25.7263719378"),
    _solved("iso6", 400, "59.3626092474"),
    _mixed(0.2, "65.7131150215"),
    _mixed(0.5, "11.8365020171"),
    Check(
        function=warming_constant_k, source="mpmath-thinning", origin="library",
        given={"cool_c": 18.0, "cool_mm2_s": 110.0, "warm_c": 25.0, "warm_mm2_s": 75.0},
        where="110 mm²/s at 18 °C and 75 at 25 °C, the constant B in K",
        expected={"": "4749.45258771"},
    ),
    _warm(22, "88.182026448"),
    _warm(15, "130.36213416"),
    _warm(30, "57.670809890"),
    Check(
        inputs={"trials": [[0, 58], [50, 19]], "wanted_seconds": 22}, source="mpmath-thinning",
        origin="library", where="Ford No. 4: 58 s unthinned, 19 s with 50 %, 22 s wanted",
        expected={"thinner_needed": "39.9248885706", "log_slope": "-3.91509145628",
                  "solids_after": "20.0107359642"},
    ),
)  # fmt: skip

TRIALS = ((0, 58), (50, 19))
SLOPE = "(2.31 if cup == 'ford3' else 3.85 if cup == 'ford4' else 3.5 if cup == 'zahn2' else 11.7)"
DEAD = "(6.58 if cup == 'ford3' else 4.49 if cup == 'ford4' else 14 if cup == 'zahn2' else 7.5)"
EXERCISES = (
    Exercise(
        name="seconds-to-viscosity",
        situation="A sample from a pot of {pot_volume} runs out of the cup {cup} in "
        "{wanted_seconds}. The cups' card says: "
        "viscosity is a slope times the seconds less a dead time. Slope and dead time are 2.31 and "
        "6.58 s for Ford No. 3, 3.85 and 4.49 s for Ford No. 4, 3.5 and 14 s for Zahn No. 2, 11.7 "
        "and 7.5 s for Zahn No. 3. What is its kinematic viscosity?",
        asks="viscosity_wanted",
        within="0.5 %",
        draw={"cup": ("ford3", "ford4", "zahn2", "zahn3"), "wanted_seconds": (20, 90, 0.1),
              "pot_volume": (300, 1500, 50)},
        fixed={"trials": ((0, 95), (50, 19))},
        slips=(
            Slip(name="no-dead-time", formula=f"{SLOPE} * wanted_seconds",
                 why="The first seconds are the cup's own: take them off before you multiply."),
            Slip(name="took-it-off-after", formula=f"{SLOPE} * wanted_seconds - {DEAD}",
                 why="The dead time is taken from the seconds, inside the bracket, not from the "
                 "product."),
        ),
    ),
    Exercise(
        name="thinner-to-add",
        situation="There is {pot_volume} in the pot with {thinner_in_pot} of thinner in it. By "
        "your trials 39.9 % of thinner, on the lacquer's volume, gives {wanted_seconds} in the "
        "cup. How much thinner do you add?",
        asks="thinner_to_add",
        within="5 mL",
        draw={"pot_volume": (500, 1500, 10), "thinner_in_pot": (8, 25, 0.1)},
        fixed={"trials": TRIALS, "wanted_seconds": 22},
        slips=(
            Slip(name="on-the-whole-pot", formula="pot_volume * thinner_needed / whole",
                 why="Part of the pot is thinner already. The share counts on the lacquer alone."),
            Slip(name="difference-on-the-pot",
                 formula="pot_volume * (thinner_needed - thinner_in_pot) / whole",
                 why="The shares are of the lacquer, and the pot is more than its lacquer."),
            Slip(name="forgot-what-is-in",
                 formula="pot_volume / (1 + thinner_in_pot / whole) * thinner_needed / whole",
                 why="That is all the thinner it needs; take off what is in the pot already."),
        ),
    ),
    Exercise(
        name="film-after-thinning",
        situation="The lacquer has {volume_solids} solids by volume in the tin, and 39.9 parts of "
        "thinner go to 100 parts of it. A coat goes on {wet_film} wet. How much of it is left when "
        "it is dry?",
        asks="dry_film",
        within="2 %",
        draw={"volume_solids": (20, 40, 0.1), "wet_film": (90, 160, 1)},
        fixed={"trials": TRIALS, "wanted_seconds": 22},
        slips=(
            Slip(name="took-the-thinner-off",
                 formula="wet_film * volume_solids / whole * (1 - thinner_needed / whole)",
                 why="The thinner is counted on the lacquer: divide by one plus its share."),
            Slip(name="as-in-the-tin", formula="film_unthinned",
                 why="The solids stay, but they are spread through more liquid."),
        ),
    ),
)  # fmt: skip

DECISIONS = (
    Decision(
        name="thinner-or-lacquer",
        situation="By your trials {thinner_needed} of thinner, on the lacquer's volume, brings the "
        "cup to {wanted_seconds}. There is {pot_volume} in the pot, with {thinner_in_pot} of thinner "
        "in it. What lies within 2 % of what the trials say stays as it is. What do you pour?",
        options=(
            Option(
                words="Thinner",
                holds="thinner_in_pot <= thinner_needed - 2.5",
                why="It holds {thinner_in_pot} where {thinner_needed} is right: not more than 2 % too "
                "little.",
            ),
            Option(
                words="Lacquer from the tin",
                holds="thinner_in_pot >= thinner_needed + 2.5",
                why="It holds {thinner_in_pot} where {thinner_needed} is right: not more than 2 % too "
                "much.",
            ),
            Option(
                words="Nothing: strain it and spray",
                holds="abs(thinner_in_pot - thinner_needed) <= 1.5",
                why="It holds {thinner_in_pot}, and {thinner_needed} is right: that is more than 2 % "
                "off.",
            ),
        ),
        because="It holds {thinner_in_pot} where {thinner_needed} is right: to add, "
        "{thinner_to_add} of thinner or {lacquer_to_add} of lacquer.",
        draw={"pot_volume": (300, 1500, 10), "thinner_in_pot": (35, 45, 0.1),
              "wanted_seconds": (20, 24, 0.1)},
        fixed={"trials": TRIALS},
    ),
)  # fmt: skip
