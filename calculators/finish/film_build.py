"""How thick the lacquer gets: coats, thinner, sanding and polishing, calendar and quantity."""

from ..engine.declaration import Calculator, Caution, Column, Drawing, Table
from ..sources import COMMON_PRACTICE
from . import _film_work
from ._coating_sources import DRY_FILM, PINT, SPREADING, THINNED, UNITS, exact
from ._film_drawing import draw_film
from ._film_inputs import BUYING, LIMITS, WAITS, inputs
from ._film_proof import CHECKS, DECISIONS, EXERCISES, NUMPY

calculator = Calculator(
    name="film-build",
    title="Film build",
    summary="How thick the lacquer is after all coats and sandings, what levelling and polishing "
    "leave of it, on which day you may level, and how much lacquer it takes.",
    other_words=(
        "how many coats of lacquer", "dry film thickness", "wet film", "mil thickness",
        "volume solids", "how much lacquer", "coverage", "spray schedule", "days between coats",
        "when can I polish", "sanding between coats", "cost of lacquer",
    ),
    inputs=inputs,
    folded=(WAITS, LIMITS, BUYING),
    constants=(
        exact("whole", "The whole, in per cent", "%", 100),
        exact("um_m2_per_l", "Micrometres thick that a litre lies on a square metre", "um*m**2/L",
              1000),
        exact("ml_per_l", "Millilitres in a litre", "mL/L", 1000),
    ),
    work=_film_work.work,
    tables=(
        Table(
            name="coats", title="Calendar of coats", rows="coat_rows", source="common-practice",
            columns=(
                Column(name="coat", label="Coat", unit="1", decimals=0),
                Column(name="round", label="Round", unit="1", decimals=0),
                Column(name="when", label="Day", unit="1", decimals=0, text=True),
                Column(name="clock", label="Begin at", unit="1", decimals=0, text=True),
                Column(name="taken", label="Sanded off before", unit="um", decimals=0),
                Column(name="film", label="Film when dry", unit="um", decimals=0),
            ),
            note="Each round begins with the sanding of the round before. Days off count for the "
            "waits, but nobody sprays on them.",
        ),
    ),
    results=(
        "verdict", "film_before", "film_after", "dry_film", "coats", "coats_words", "wet_for_aim",
        "calendar_words", "days_in_all", "lacquer_needed", "thinner_needed", "cost",
        "solids_sprayed", "sprayed_film", "sanded_film", "film_levelled", "share_kept",
        "mix_needed", "spreading_rate", "solvent_off", "last_coat_day", "levelling_day",
        "round_hours",
    ),
    aside=(
        "solids_sprayed", "sprayed_film", "sanded_film", "film_levelled", "share_kept",
        "mix_needed", "spreading_rate", "solvent_off", "last_coat_day", "levelling_day",
        "round_hours",
    ),
    drawings=(Drawing(name="film", title="The film, round by round", function=draw_film),),
    cautions=(
        Caution(
            text="The film gauge has the last word: hands differ, sides get less than tops, edges "
            "less again. Measure at the marked places before the block and before the wheel.",
        ),
        Caution(
            text="{solvent_off} of solvent go into the air. It burns, and it harms lungs and "
            "nerves: booth with its fan running, no spark, the respirator that was fitted to you. "
            "Booth and fire protection follow the local code.",
        ),
        Caution(
            text="A wet coat of {wet_film} is more than most lacquers hold on an upright side "
            "(150 µm, common practice): it runs, and keeps its solvent.",
            only_if="wet_film > 150",
        ),
        Caution(
            text="More than three coats in a day shut solvent in: the film stays soft below and "
            "sinks for months (common practice).",
            only_if="coats_per_round > 3",
        ),
        Caution(
            text="Less than 10 days of cure: lacquer that is levelled too soon sinks afterwards, "
            "and pores and scratches come back.",
            only_if="cure_days < 10",
        ),
    ),
    validity="Plain volume: every coat as wet as the comb says and all solids staying in it. A "
    "film goes on shrinking a little for months, and the first coat partly sinks into the wood; "
    "neither is counted. Sanding is taken as even. The calendar knows weekends, not holidays. The "
    "share of the spray that lands is a guess until you have measured your own.",
    sources=(DRY_FILM, THINNED, SPREADING, PINT, NUMPY, UNITS, COMMON_PRACTICE),
    checks=CHECKS,
    exercises=EXERCISES,
    decisions=DECISIONS,
)  # fmt: skip
