"""Outside figures that the film-build calculator is held against, and exercises."""

from ..engine.declaration import Check, Decision, Exercise, Option, Slip, Source

NUMPY = Source(
    id="numpy-busday",
    title="numpy 2.5.5, business days (busday_offset)",
    kind="library",
    note="First, last and levelling day by a week's mask, worked out independently of this "
    "project.",
)
ONE_COAT = {"rounds": 1, "coats_per_round": 1, "thinner_added": 0}


def _days(
    start_day: str, rounds: int, cure_days: int, weekend: str, where: str, last: str, level: str
) -> Check:
    return Check(
        inputs={"start_day": start_day, "rounds": rounds, "cure_days": cure_days,
                "weekend": weekend},
        source="numpy-busday", origin="library", where=where,
        expected={"last_coat_day": last, "levelling_day": level},
    )  # fmt: skip


CHECKS = (
    Check(
        inputs={**ONE_COAT, "wet_film": 100, "volume_solids": 50, "levelling_loss": 0,
                "wheel_loss": 0},
        source="dry-film-relation", origin="read", where="wet film 100 µm, volume solids 50 %",
        expected={"dry_film": "50"},
    ),
    Check(
        inputs={**ONE_COAT, "volume_solids": 71, "film_aim": 125},
        source="dry-film-relation", origin="read",
        where="wet film for a dry film of 125 µm at 71 % solids", expected={"wet_for_aim": "176"},
    ),
    Check(
        inputs={**ONE_COAT, "volume_solids": 71, "film_aim": 125}, source="pint",
        origin="library", where="125 µm over 71 %", expected={"wet_for_aim": "176.0563"},
    ),
    Check(
        inputs={"wet_film": 125}, source="spreading-rate", origin="read",
        where="8 m² a litre is a wet film of 125 µm", expected={"spreading_rate": "8"},
    ),
    Check(
        inputs={**ONE_COAT, "wet_film": "7.6923076923 mil", "volume_solids": 65},
        source="spreading-rate", origin="read", unit="ft2/gal",
        where="1604 · 0.65 / 5.0 mil of dry film", expected={"spreading_rate": "208.52"},
        within="0.03", because="the sheet rounds 1604.17 ft² · mil a gallon to 1604",
    ),
    Check(
        inputs={**ONE_COAT, "wet_film": "7.6923076923 mil", "volume_solids": 65},
        source="pint", origin="library", unit="mil",
        where="5 mil of dry film from 5/0.65 mil of wet film", expected={"dry_film": "5.000000"},
    ),
    Check(
        inputs={"wet_film": "1 mil", "volume_solids": 100, "thinner_added": 0, "rounds": 1},
        source="pint", origin="library", unit="ft2/gal",
        where="a US gallon (231 in³) laid 1 mil thick", expected={"spreading_rate": "1604.1667"},
    ),
    Check(
        inputs={"sprayed_area": 0.5, "transfer_efficiency": 100, "left_over": 0},
        source="pint", origin="library", where="0.5 m² · 125 µm · 12 coats, in litres",
        expected={"mix_needed": "0.75"},
    ),
    Check(
        inputs={"sprayed_area": "6 ft2", "wet_film": "4 mil", "rounds": 3,
                "transfer_efficiency": 30, "left_over": 0},
        source="pint", origin="library", where="6 ft² · 4 mil · 9 coats over 30 %",
        expected={"mix_needed": "1.6990108"},
    ),
    _days("Thursday", 6, 10, "both", "from Thursday 26 November 2026, 6 rounds, 10 days", "8", "19"),
    _days("Saturday", 9, 13, "sunday", "from Saturday 28 November 2026, 9 rounds, Sundays off",
          "11", "24"),
    _days("Sunday", 5, 14, "both", "from Sunday 29 November 2026, 5 rounds, counted from Monday",
          "5", "19"),
    _days("Wednesday", 15, 21, "none", "from Wednesday 25 November 2026, every day worked",
          "15", "36"),
    _days("Monday", 4, 10, "both", "from Monday 23 November 2026, 4 rounds, 10 days", "4", "15"),
)  # fmt: skip

EXERCISES = (
    Exercise(
        name="dry-film-of-a-coat",
        situation="The comb reads {wet_film} of wet film. The tin says {volume_solids} solids by "
        "volume, and {thinner_added} of thinner was added to the lacquer. How much of the coat "
        "stays when it is dry?",
        asks="dry_film",
        within="2 %",
        draw={"wet_film": (90, 160, 1), "volume_solids": (22, 36, 0.5),
              "thinner_added": (25, 75, 1)},
        fixed={"sanding_loss": 0, "levelling_loss": 10, "wheel_loss": 5},
        slips=(
            Slip(name="forgot-the-thinner", formula="wet_film * volume_solids / whole",
                 why="The tin's solids are spread through lacquer and thinner together: divide by "
                 "one plus the share of thinner first."),
            Slip(name="took-the-thinner-off",
                 formula="wet_film * volume_solids / whole * (1 - thinner_added / whole)",
                 why="Thinner is counted on the lacquer, not on the mix: divide by one plus its "
                 "share, do not take it off."),
            Slip(name="what-went-off", formula="wet_film - dry_film",
                 why="That is what went into the air. What stays is the solids."),
        ),
    ),
    Exercise(
        name="film-before-levelling",
        situation="You spray {rounds} rounds of {coats_per_round} coats, {wet_film} wet each, of "
        "lacquer with {volume_solids} solids in the tin and {thinner_added} of thinner. Sanding "
        "between two rounds takes {sanding_loss}. How thick is the film before levelling?",
        asks="film_before",
        within="2 um",
        draw={"rounds": (3, 5, 1), "coats_per_round": (2, 4, 1), "wet_film": (110, 150, 1),
              "volume_solids": (26, 32, 0.5), "thinner_added": (25, 50, 5),
              "sanding_loss": (15, 25, 1)},
        slips=(
            Slip(name="forgot-the-sanding", formula="sprayed_film",
                 why="The block has been there between the rounds: take off its share."),
            Slip(name="sanded-the-last-round", formula="sprayed_film - rounds * sanding_loss",
                 why="The last round is not sanded by you. There is one sanding fewer than rounds."),
            Slip(name="one-sanding", formula="sprayed_film - sanding_loss",
                 why="Every round but the last is sanded, not only one."),
            Slip(name="rounds-for-coats", formula="rounds * dry_film - sanded_film",
                 why="You counted one coat a round; multiply by the coats in a round."),
        ),
    ),
    Exercise(
        name="lacquer-from-the-tin",
        situation="{coats_per_round} coats a round, {rounds} rounds, {wet_film} wet, on "
        "{sprayed_area}. Of the spray {transfer_efficiency} lands on the work, and {left_over} "
        "stays in cup and strainer each round. {thinner_added} of thinner is added. How much "
        "lacquer from the tin does it take?",
        asks="lacquer_needed",
        within="2 %",
        draw={"coats_per_round": (2, 3, 1), "rounds": (3, 5, 1), "sprayed_area": (0.2, 0.8, 0.01),
              "transfer_efficiency": (30, 60, 1), "wet_film": (110, 150, 1)},
        slips=(
            Slip(name="nothing-beside-the-work",
                 formula="(coats * sprayed_area / spreading_rate + rounds * left_over / ml_per_l)"
                 " / (1 + thinner_added / whole)",
                 why="You let all the spray land. Divide what lies on the work by the share that "
                 "lands."),
            Slip(name="bought-the-thinner-too", formula="mix_needed",
                 why="That is the mix, lacquer and thinner together."),
            Slip(name="efficiency-the-wrong-way",
                 formula="(coats * sprayed_area / spreading_rate * transfer_efficiency / whole"
                 " + rounds * left_over / ml_per_l) / (1 + thinner_added / whole)",
                 why="You multiplied by the share that lands; the less lands, the more you need: "
                 "divide."),
        ),
    ),
)  # fmt: skip

DECISIONS = (
    Decision(
        name="level-it-or-not",
        situation="{rounds} rounds of {coats_per_round} coats are on, {wet_film} wet each, of lacquer "
        "with {volume_solids} solids in the tin and {thinner_added} of thinner; between two rounds "
        "the block took {sanding_loss}. The shop levels a film of {least_film_before} to "
        "{most_film_before}. It has cured; the film gauge is away. What do you do?",
        options=(
            Option(
                words="Level it, and prove the film with the gauge first",
                holds="film_before >= 1.03 * least_film_before "
                "and film_before <= 0.97 * most_film_before",
                why="By the figures there are {film_before}, outside of {least_film_before} to "
                "{most_film_before}.",
            ),
            Option(
                words="Spray another coat first: too thin to level",
                holds="film_before <= 0.95 * least_film_before",
                why="By the figures there are {film_before}, and {least_film_before} is enough.",
            ),
            Option(
                words="Sand it down first: too thick",
                holds="film_before >= 1.05 * most_film_before",
                why="By the figures there are {film_before}, and up to {most_film_before} may be.",
            ),
        ),
        because="{coats_per_round} coats in each of {rounds} rounds leave {dry_film} each when dry; "
        "less the sandings, one fewer than rounds, that is {film_before}.",
        draw={"rounds": (3, 5, 1), "coats_per_round": (2, 4, 1), "wet_film": (105, 145, 1),
              "volume_solids": (24, 32, 0.5), "thinner_added": (30, 60, 1),
              "sanding_loss": (15, 30, 1)},
    ),
)  # fmt: skip
