"""The steps of the thinning calculation."""

from ..engine.declaration import Given, Said, Solved, Step, Work
from ._thinning_solved import pour, seconds_now, thinner_wanted, wanted_viscosity

work: tuple[Work, ...] = (
    Solved(
        name="cup_reading", label="From seconds to viscosity", function=wanted_viscosity,
        gives=(
            Given(name="viscosity_wanted", label="Kinematic viscosity wanted", symbol="ν_w",
                  unit="mm2/s", decimals=1),
            Given(name="cup_shortest", label="The cup is meant for at least", symbol="t_a",
                  unit="s", decimals=0),
            Given(name="cup_longest", label="The cup is meant for at most", symbol="t_b",
                  unit="s", decimals=0),
        ),
        method="The equation of the cup: slope · (t - dead time) for Ford and Zahn cups, slope · t "
        "- drag / t for ISO and DIN cups.",
        source="cup-equations",
    ),
    Solved(
        name="from_trials", label="Thinner from the trials", function=thinner_wanted,
        gives=(
            Given(name="thinner_needed", label="Thinner to 100 parts of lacquer", symbol="r",
                  unit="%", decimals=1),
            Given(name="log_slope", label="ln of the viscosity, from lacquer to pure thinner",
                  symbol="m", unit="1", decimals=2),
            Given(name="thinner_doubt", label="The cup leaves this in doubt, to either side",
                  symbol="u_r", unit="%", decimals=1),
            Given(name="fewest_seconds", label="Fewest seconds in the trials", symbol="t_min",
                  unit="s", decimals=1),
            Given(name="longest_seconds", label="Most seconds in the trials", symbol="t_max",
                  unit="s", decimals=1),
        ),
        method="The logarithm of the viscosity goes straight with the share of thinner between "
        "the two trials on either side of what is wanted, or on beyond the last two.",
        source="log-mixing",
    ),
    Solved(
        name="pot", label="What to pour", function=pour,
        gives=(
            Given(name="thinner_to_add", label="Thinner to add", symbol="v_t", unit="mL",
                  decimals=0),
            Given(name="lacquer_to_add", label="Lacquer from the tin to add", symbol="v_l",
                  unit="mL", decimals=0),
        ),
        method="The pot is parted into its lacquer and its thinner; one of the two is then "
        "filled up to the wanted share.",
        source="thinned-solids",
    ),
    Step(
        name="thinner_mass", label="Thinner to add, by weight", symbol="m_t", unit="g", decimals=0,
        formula="thinner_to_add * thinner_density / ml_per_cm3", source="thinned-solids",
    ),
    Step(
        name="pot_after", label="In the pot afterwards", symbol="v_1", unit="mL", decimals=0,
        formula="pot_volume + thinner_to_add + lacquer_to_add", source="thinned-solids",
    ),
    Step(
        name="solids_after", label="Volume solids after thinning", symbol="V_m", unit="%",
        decimals=1, formula="volume_solids / (1 + thinner_needed / whole)",
        source="thinned-solids",
    ),
    Step(
        name="dry_film", label="Film left of one coat when dry", symbol="d", unit="um",
        decimals=1, formula="wet_film * solids_after / whole", source="dry-film-relation",
    ),
    Step(
        name="film_unthinned", label="Film the same wet coat would leave unthinned", symbol="d_0",
        unit="um", decimals=1, formula="wet_film * volume_solids / whole",
        source="dry-film-relation",
    ),
    Solved(
        name="warmth_now", label="Colder or warmer lacquer", function=seconds_now,
        only_if="warmth == 'pair'",
        gives=(
            Given(name="warming_constant", label="How fast warmth thins it", symbol="B", unit="K",
                  decimals=0),
            Given(name="seconds_now", label="Seconds to thin to, as warm as it is now",
                  symbol="t_n", unit="s", decimals=1),
        ),
        method="ln of the viscosity goes straight with one over the absolute temperature; B from "
        "the two readings, then from the trials' temperature to that of now.",
        source="andrade",
    ),
    Said(
        name="pour_words", label="Pour",
        cases=(
            ("lacquer_to_add > 0",
             "Too thin already: add {lacquer_to_add} of lacquer from the tin."),
            ("thinner_to_add < 0.5", "Nothing: it is as it should be."),
            ("",
             "Add {thinner_to_add} of thinner ({thinner_mass}). Hold a fifth back, stir, let the "
             "bubbles out, time it, and go on by small steps."),
        ),
    ),
    Said(
        name="trial_words", label="Trials",
        cases=(
            ("wanted_seconds < fewest_seconds or wanted_seconds > longest_seconds",
             "{wanted_seconds} lies outside the trials ({fewest_seconds} to {longest_seconds}): "
             "the line is drawn on by guess. Make one more trial near it."),
            ("", "{wanted_seconds} lies between the trials. The cup leaves {thinner_doubt} of "
             "thinner in doubt, to either side."),
        ),
    ),
)  # fmt: skip
