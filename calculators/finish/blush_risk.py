"""Whether fresh lacquer goes milky: the film that its solvents chill, beside the dew point."""

from ..engine.declaration import Calculator, Caution, Column, Drawing, Table
from ..laws.psychrometrics import ASHRAE
from ..laws.solvent_evaporation import CHILTON_COLBURN, FULLER, SOLVENT_DATA
from . import _blush_work
from ._blush_drawing import draw_film
from ._blush_inputs import DOUBT, inputs
from ._blush_proof import CHECKS, COOLPROP, DECISIONS, EXERCISES, FILM_MODEL, HT, PSYCHROLIB, THERMO
from ._coating_sources import DRY_FILM, UNITS, exact

calculator = Calculator(
    name="blush-risk",
    title="Blushing",
    summary="Whether fresh lacquer will go milky: how cold the film gets while its solvents "
    "leave, how far that is above the room's dew point, and what helps.",
    other_words=(
        "lacquer went milky", "blush", "white finish", "cloudy lacquer", "white veil",
        "too humid to spray", "dew point", "rainy day", "retarder", "damp air", "cold body",
        "bloom",
    ),
    inputs=inputs,
    folded=(DOUBT,),
    constants=(exact("whole", "The whole, in per cent", "%", 100),),
    work=_blush_work.work,
    tables=(
        Table(
            name="help", title="What helps, one change at a time", rows="changes",
            source="chilton-colburn",
            columns=(
                Column(name="change", label="Change", unit="1", decimals=0, text=True),
                Column(name="coldest_then", label="Coldest film", unit="degC", decimals=1),
                Column(name="dew_then", label="Dew point", unit="degC", decimals=1),
                Column(name="margin_then", label="Margin", unit="K", decimals=1),
            ),
            note="Retarder keeps the film soft for days: the lead finisher decides about it. "
            "Warming the room does not take damp out of it, but carries film and work away from "
            "the dew point.",
        ),
    ),
    results=(
        "verdict", "margin", "coldest_film", "dew_point", "highest_humidity", "help_words",
        "coldest_after", "seconds_below", "film_chill", "solvent_gone", "worst", "vapour_in_air",
        "saturation", "solvent_film", "solvent_mass", "air_coefficient", "best_margin",
    ),
    aside=(
        "film_chill", "solvent_gone", "worst", "vapour_in_air", "saturation", "solvent_film",
        "air_coefficient", "best_margin",
    ),
    drawings=(Drawing(name="film", title="Film and dew point", function=draw_film),),
    cautions=(
        Caution(
            text="This is an estimate of some 2 or 3 degrees either way: mixes, mist and draught "
            "are guesses until you have held the infrared thermometer on a wet test strip. Trust "
            "the strip.",
        ),
        Caution(
            text="Never warm the room, the work or the lacquer with a flame, a glowing heater or "
            "a lamp of your own: what leaves the film burns. Heating outside the spray room, "
            "booth and fan by the local code, respirator as fitted to you.",
        ),
        Caution(
            text="Water in the air line blushes in spots, whatever the room is like: drain the "
            "trap.",
        ),
        Caution(
            text="Humidity above 55 %: the shop does not spray. The margin here is no leave to.",
            only_if="room_humidity > 55",
        ),
        Caution(
            text="The instrument is {body_temperature} in a room of {room_temperature}: let it "
            "stand until both are alike.",
            only_if="body_temperature < room_temperature - 2",
        ),
        Caution(
            text="So much retarder leaves the film soft for days and may let it sag.",
            only_if="retarder_added > 10",
        ),
    ),
    validity="A film that evaporates like an ideal mix of liquids into clean air along a flat "
    "plate. Not counted: solvent lost in the mist (it makes the film slower), the chill of the "
    "gun's air beyond what you enter, resin that holds solvent back towards the end, warmth of "
    "dew that settles, the cooler air of a draught, damp that alcohols draw in by themselves. The "
    "sum ends when four tenths of the solvent are left. Below 0 °C the dew point is that of "
    "supercooled water. Sea level.",
    sources=(
        ASHRAE, CHILTON_COLBURN, FULLER, SOLVENT_DATA, DRY_FILM, PSYCHROLIB, COOLPROP, THERMO, HT,
        FILM_MODEL, UNITS,
    ),
    checks=CHECKS,
    exercises=EXERCISES,
    decisions=DECISIONS,
)  # fmt: skip
