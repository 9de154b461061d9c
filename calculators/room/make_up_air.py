"""How much fresh air thins the vapour of lacquer solvents, for fire and for lungs: an estimate."""

from ..engine.declaration import Calculator, Caution, Column, Drawing, Table
from ._make_up_air_drawings import draw_air, draw_time
from ._make_up_air_inputs import FOLDED, INPUTS
from ._make_up_air_proof import CHECK_SOURCES, CHECKS, DECISIONS, EXERCISES
from ._make_up_air_work import CONSTANTS, SOURCES, WORK

calculator = Calculator(
    name="make-up-air",
    title="Make-up air",
    summary="An estimate, no design: how much fresh air keeps solvent vapour below the explosive "
    "limit and the exposure limits, how long to wait after spraying, what heating it takes. Local "
    "code and a licensed engineer decide.",
    other_words=(
        "ventilation for spraying", "how much air for lacquer fumes", "explosive limit", "LEL",
        "ppm of thinner", "air changes an hour", "dilution air", "fumes", "smell of lacquer",
        "when can I go back into the spray room", "replacement air", "heating the spray room",
    ),
    inputs=INPUTS,
    folded=FOLDED,
    constants=CONSTANTS,
    work=WORK,
    results=(
        "verdict", "air_needed", "fire_air", "health_air", "level_now", "level_of_lfl",
        "level_of_limit", "clear_time", "safe_time", "heat_now", "changes_now", "changes_needed",
        "heat_needed", "liquid_rate", "vapour_rate", "mix_lfl", "mix_limit", "weight_to_air",
        "mixing_time",
    ),
    aside=(
        "changes_now", "changes_needed", "heat_needed", "liquid_rate", "vapour_rate", "mix_lfl",
        "mix_limit", "weight_to_air", "mixing_time",
    ),
    tables=(
        Table(
            name="solvents", title="Each solvent and its published limits", rows="solvent_rows",
            source="published-limits",
            columns=(
                Column(name="solvent", label="Solvent", unit="1", decimals=0, text=True),
                Column(name="liquid", label="Liquid", unit="L/h", decimals=3),
                Column(name="vapour", label="Vapour", unit="m3/h", decimals=4),
                Column(name="lfl_nfpa", label="Explosive limit, NFPA 497", unit="%", decimals=2),
                Column(name="lfl_iec", label="Explosive limit, IEC 60079-20-1", unit="%",
                       decimals=2),
                Column(name="lfl_used", label="Used", unit="%", decimals=2,
                       formula="min(lfl_nfpa, lfl_iec)"),
                Column(name="limit", label="Exposure limit, 8 h", unit="ppm", decimals=0),
                Column(name="whose", label="Of", unit="1", decimals=0, text=True),
                Column(name="air_alone", label="Air for lungs, this one alone", unit="m3/h",
                       decimals=0,
                       formula="mixing_factor * vapour * (million - limit) / limit"),
            ),
            note="The lower of two explosive limits is used, and the lowest exposure limit that "
            "was read (OSHA's own are 150 ppm for butyl acetate, 200 for toluene, 1000 for "
            "acetone). Air for lungs adds up over the solvents.",
        ),
    ),
    drawings=(
        Drawing(name="air", title="Air drawn out and air needed", function=draw_air),
        Drawing(name="time", title="Vapour in the room against the clock", function=draw_time),
    ),
    cautions=(
        Caution(
            text="An estimate, not a design and not a permit. Spray rooms, fans, wiring and fire "
            "protection follow the local code and are designed by licensed people; what the "
            "sprayer breathes is measured by one who is trained to.",
        ),
        Caution(
            text="No spark, no flame, no ordinary fan motor in the air drawn out. The vapour is "
            "{weight_to_air} times as heavy as air and runs along the floor to the pilot light. "
            "Air blown back through a carbon filter is no fresh air.",
        ),
        Caution(
            text="By this reckoning the room's mean is {level_of_limit} times the exposure limit, "
            "and at the gun it is several times more. The respirator is chosen and fitted by a "
            "competent person.",
            only_if="level_of_limit > 1",
        ),
        Caution(
            text="Vapour would stand at {level_of_lfl} of the explosive limit. Stop spraying and "
            "get air in before anything is switched.",
            only_if="level_of_lfl >= 25",
        ),
        Caution(
            text="Wet work goes on giving off vapour after the gun stops: the wait begins when "
            "the last coat no longer smells wet, not at the last stroke.",
        ),
    ),
    validity="An estimate of the mean of a room with one steady source. Near the gun, the drying "
    "rack and the floor there is far more vapour, which the mixing factor only guesses at. The "
    "exposure limits are for eight hours and are taken as if you sprayed all day; short-term "
    "limits are not reckoned. Solvents act alike in the body here, so their shares add. Limits are "
    "those of 25 °C; hot ovens need lower ones. Spray mist, isocyanates and dust are left out. "
    "Local code and licensed design come first.",
    sources=(*SOURCES, *CHECK_SOURCES),
    checks=CHECKS,
    exercises=EXERCISES,
    decisions=DECISIONS,
)  # fmt: skip
