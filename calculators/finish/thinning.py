"""How much thinner brings the lacquer to the seconds wanted in the flow cup."""

from ..engine.declaration import Calculator, Caution, Drawing
from ..laws.flow_cups import CUP_EQUATIONS
from ..laws.liquid_viscosity import ANDRADE, LOG_MIXING
from . import _thinning_work
from ._coating_sources import DRY_FILM, THINNED, UNITS, exact
from ._thinning_drawing import draw_seconds
from ._thinning_inputs import MORE, WARMTH, inputs
from ._thinning_proof import CALIBRATION, CHECKS, CHEMICALS, DECISIONS, EXERCISES, MPMATH

calculator = Calculator(
    name="thinning",
    title="Thinning",
    summary="How much thinner brings the lacquer in the pot to the seconds wanted in the flow cup, "
    "what that does to the solids, and what the cup must show in colder or warmer lacquer.",
    other_words=(
        "viscosity cup", "flow cup seconds", "how much thinner", "thin the lacquer", "Ford cup",
        "Zahn cup", "DIN cup", "lacquer too thick to spray", "lacquer too thin", "cold lacquer",
        "thinner ratio", "reduce lacquer", "centistokes",
    ),
    inputs=inputs,
    folded=(WARMTH, MORE),
    constants=(
        exact("whole", "The whole, in per cent", "%", 100),
        exact("ml_per_cm3", "Millilitres in a cubic centimetre", "mL/cm**3", 1),
    ),
    work=_thinning_work.work,
    results=(
        "pour_words", "thinner_needed", "thinner_to_add", "lacquer_to_add", "seconds_now",
        "solids_after", "dry_film", "trial_words", "viscosity_wanted", "thinner_mass",
        "pot_after", "thinner_doubt", "film_unthinned", "log_slope", "warming_constant",
        "cup_shortest", "cup_longest",
    ),
    aside=(
        "viscosity_wanted", "thinner_mass", "pot_after", "thinner_doubt", "film_unthinned",
        "log_slope", "warming_constant", "cup_shortest", "cup_longest",
    ),
    drawings=(
        Drawing(name="seconds", title="Seconds in the cup against thinner", function=draw_seconds),
    ),
    cautions=(
        Caution(
            text="Thinner burns and its vapour creeps along the floor to the next spark; it harms "
            "skin, lungs and nerves. Extraction on, gloves and glasses, cans bonded and earthed, "
            "lids back on. Local fire rules decide what may stand in the room.",
        ),
        Caution(
            text="Only the thinner that the lacquer's maker names: a wrong one throws the resin "
            "out in strings, or leaves a white film.",
        ),
        Caution(
            text="{wanted_seconds} lies outside the range of this cup, {cup_shortest} to "
            "{cup_longest}: it still compares one day with the next, but says little in mm²/s.",
            only_if="wanted_seconds < cup_shortest or wanted_seconds > cup_longest",
        ),
        Caution(
            text="The more thinner, the less film: a coat that left {film_unthinned} unthinned "
            "leaves {dry_film} now. Look over the number of coats.",
            only_if="thinner_needed > 75",
        ),
        Caution(
            text="Now it is {lacquer_temperature} and the trials were at {trial_temperature}: "
            "better bring lacquer and cup to the trials' temperature and time again.",
            only_if="abs(lacquer_temperature - trial_temperature) > 5"
            " if warmth == 'pair' else 1 < 0",
        ),
    ),
    validity="Your own trials carry it: between two of them it is as good as the cup, beyond "
    "them a guess. Cup equations are for liquids that flow like oil; a lacquer that gels or "
    "thickens when left standing keeps to them only freshly stirred, and seconds outside the "
    "cup's range are only a comparison. Volumes are taken to add up. The correction for warmth "
    "holds for a few degrees about the two readings.",
    sources=(
        CUP_EQUATIONS, CALIBRATION, CHEMICALS, LOG_MIXING, ANDRADE, MPMATH, DRY_FILM, THINNED,
        UNITS,
    ),
    checks=CHECKS,
    exercises=EXERCISES,
    decisions=DECISIONS,
)  # fmt: skip
