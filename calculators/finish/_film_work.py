"""The steps of the film-build calculation."""

from ..engine.declaration import Given, Limit, Said, Solved, Step, Work
from ._film_calendar import coats_that_fit, plan_coats

_limits: tuple[Work, ...] = (
    Limit(
        holds="least_film_before < most_film_before", blames="least_film_before",
        source="common-practice",
        otherwise="The least film before levelling, {least_film_before}, is not below the most, "
        "{most_film_before}; look over both",
        allowed="less than {most_film_before}",
    ),
    Limit(
        holds="least_film < most_film", blames="least_film", source="common-practice",
        otherwise="The least film to keep, {least_film}, is not below the most, {most_film}; look "
        "over both",
        allowed="less than {most_film}",
    ),
    Limit(
        holds="least_in_all < most_in_all", blames="least_in_all", source="common-practice",
        otherwise="The shortest time in all, {least_in_all}, is not below the longest, "
        "{most_in_all}; look over both",
        allowed="less than {most_in_all}",
    ),
)  # fmt: skip

_film: tuple[Work, ...] = (
    Step(
        name="solids_sprayed", label="Volume solids as sprayed", symbol="V_m", unit="%",
        decimals=1, formula="volume_solids / (1 + thinner_added / whole)", source="thinned-solids",
    ),
    Step(
        name="dry_film", label="Film left of one coat when dry", symbol="d", unit="um",
        decimals=1, formula="wet_film * solids_sprayed / whole", source="dry-film-relation",
    ),
    Limit(
        holds="rounds == 1 or coats_per_round * dry_film > sanding_loss", blames="sanding_loss",
        source="common-practice",
        otherwise="A round leaves {dry_film} a coat, and sanding takes {sanding_loss}: the block "
        "would be through to the wood after the first round; sand less or spray more before it",
        allowed="less than a round leaves",
    ),
    Step(
        name="coats", label="Coats in all", symbol="n", unit="1", decimals=0,
        formula="rounds * coats_per_round", source="common-practice",
    ),
    Step(
        name="sprayed_film", label="Film of all coats, nothing sanded", symbol="h_s", unit="um",
        decimals=0, formula="coats * dry_film", source="dry-film-relation",
    ),
    Step(
        name="sanded_film", label="Sanded off between the rounds", symbol="s_a", unit="um",
        decimals=0, formula="(rounds - 1) * sanding_loss", source="common-practice",
    ),
    Step(
        name="film_before", label="Film before levelling", symbol="h_b", unit="um", decimals=0,
        formula="sprayed_film - sanded_film", source="dry-film-relation",
    ),
    Limit(
        holds="levelling_loss + wheel_loss < film_before", blames="levelling_loss",
        source="common-practice",
        otherwise="Levelling and wheels would take the whole film of {film_before} and reach the "
        "wood; plan more coats or take less",
        allowed="less than {film_before} together",
    ),
    Step(
        name="film_levelled", label="Film after levelling", symbol="h_l", unit="um", decimals=0,
        formula="film_before - levelling_loss", source="common-practice",
    ),
    Step(
        name="film_after", label="Film left after polishing", symbol="h_a", unit="um", decimals=0,
        formula="film_levelled - wheel_loss", source="common-practice",
    ),
    Step(
        name="share_kept", label="Of the dry lacquer, on the finished instrument", symbol="k",
        unit="%", decimals=0, formula="film_after / sprayed_film * whole",
        source="common-practice",
    ),
    Step(
        name="wet_for_aim", label="Wet film of a coat that would meet the aim", symbol="w_0",
        unit="um", decimals=0, source="dry-film-relation",
        formula="(film_aim + sanded_film) / coats / solids_sprayed * whole",
    ),
    Solved(
        name="coat_limits", label="Coats that keep all limits", function=coats_that_fit,
        gives=(
            Given(name="coats_least", label="Fewest coats that will do", symbol="n_1", unit="1",
                  decimals=0),
            Given(name="coats_most", label="Most coats that will do", symbol="n_2", unit="1",
                  decimals=0),
        ),
        method="Each limit, before levelling and after polishing, is solved for the number of "
        "coats, the sandings as planned; rounded up from below, down from above.",
        source="dry-film-relation",
    ),
    Said(
        name="verdict", label="Verdict",
        cases=(
            ("film_before < least_film_before",
             "Too thin: {film_before} before levelling, and at least {least_film_before} is "
             "wanted; after polishing {film_after} would be left."),
            ("film_after < least_film",
             "Too thin: {film_after} would be left after polishing, and at least {least_film} "
             "must stay."),
            ("film_before > most_film_before",
             "Too thick: {film_before} before levelling, and at most {most_film_before} is "
             "wanted; after polishing {film_after} would be left."),
            ("film_after > most_film",
             "Too thick: {film_after} would be left after polishing, and at most {most_film} is "
             "wanted."),
            ("",
             "Right: {film_before} before levelling, {film_after} left after polishing."),
        ),
    ),
    Said(
        name="coats_words", label="Coats",
        cases=(
            ("coats_least > coats_most",
             "No whole number of coats keeps all limits with this wet film and these sandings; "
             "the comb should read {wet_for_aim} for the aim of {film_aim}."),
            ("coats_least == coats_most",
             "Only {coats_least} coats keep all limits; you plan {coats}."),
            ("",
             "Between {coats_least} and {coats_most} coats keep all limits; you plan {coats}."),
        ),
    ),
)  # fmt: skip

_calendar: tuple[Work, ...] = (
    Solved(
        name="calendar", label="Calendar of coats", function=plan_coats,
        gives=(
            Given(name="coat_rows", label="Coats", unit="1", decimals=0, many=True),
            Given(name="last_coat_day", label="Last coat on day", symbol="D_n", unit="1",
                  decimals=0),
            Given(name="levelling_day", label="Levelling may begin on day", symbol="D_l",
                  unit="1", decimals=0),
            Given(name="days_in_all", label="In all, first coat to levelling", symbol="T",
                  unit="d", decimals=0),
            Given(name="round_hours", label="Longest working day of a round", symbol="t_R",
                  unit="h", decimals=1),
            Given(name="first_words", label="First coat", unit="1", decimals=0, text=True),
            Given(name="last_words", label="Last coat", unit="1", decimals=0, text=True),
            Given(name="levelling_words", label="Levelling", unit="1", decimals=0, text=True),
        ),
        method="Day by day: a round with its sanding goes into one working day, as soon as the "
        "last coat has waited its time; levelling on the first working day after the cure.",
        source="common-practice",
    ),
    Said(
        name="calendar_words", label="Calendar",
        cases=(
            ("days_in_all < least_in_all",
             "First coat {first_words}; last coat {last_words}; levelling {levelling_words}. "
             "{days_in_all} in all is less than {least_in_all}: let it hang longer."),
            ("days_in_all > most_in_all",
             "First coat {first_words}; last coat {last_words}; levelling {levelling_words}. "
             "{days_in_all} in all is more than the {most_in_all} planned for."),
            ("",
             "First coat {first_words}; last coat {last_words}; levelling may begin "
             "{levelling_words}: {days_in_all} in all."),
        ),
    ),
)  # fmt: skip

_buying: tuple[Work, ...] = (
    Step(
        name="spreading_rate", label="Area that a litre of the mix covers, one coat, no loss",
        symbol="q", unit="m2/L", decimals=2, formula="um_m2_per_l / wet_film",
        source="spreading-rate",
    ),
    Step(
        name="mix_needed", label="Mix needed, thinned", symbol="v_m", unit="L", decimals=2,
        formula="coats * sprayed_area / spreading_rate * whole / transfer_efficiency"
        " + rounds * left_over / ml_per_l",
        source="spreading-rate",
    ),
    Step(
        name="lacquer_needed", label="Lacquer from the tin", symbol="v_l", unit="L", decimals=2,
        formula="mix_needed / (1 + thinner_added / whole)", source="thinned-solids",
    ),
    Step(
        name="thinner_needed", label="Thinner, without cleaning the gun", symbol="v_t", unit="L",
        decimals=2, formula="mix_needed - lacquer_needed", source="thinned-solids",
    ),
    Step(
        name="cost", label="Cost of lacquer and thinner, in your money", symbol="P", unit="1",
        decimals=2, formula="lacquer_needed * lacquer_price + thinner_needed * thinner_price",
        source="common-practice",
    ),
    Step(
        name="solvent_off", label="Solvent that goes into the air", symbol="v_e", unit="L",
        decimals=2, formula="mix_needed * (1 - solids_sprayed / whole)", source="thinned-solids",
    ),
)  # fmt: skip

work: tuple[Work, ...] = (*_limits, *_film, *_calendar, *_buying)
