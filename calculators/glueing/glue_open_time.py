"""How long a glue stays open in this room on this wood, and whether the plan fits that time."""

from ..engine.declaration import Calculator, Caution, Column, Drawing, Table
from ..laws.conduction import HEAT_CONDUCTION
from ..laws.drying import LEWIS_RELATION, RADIATION, SORPTIVITY, STEFAN_FLOW, WATER_VISCOSITY
from ..laws.psychrometrics import ASHRAE
from ..laws.wood_heat import WOOD_HANDBOOK_HEAT
from ..sources import COMMON_PRACTICE
from ._glue_checks import CHECK_SOURCES, CHECKS
from ._glue_exercises import DECISIONS, EXERCISES
from ._glue_inputs import FOLDED, INPUTS
from ._glue_plot import draw_plan
from ._glue_work import CONSTANTS, COOLING, DRYING, WORK

calculator = Calculator(
    name="glue-open-time",
    title="Glue open time",
    summary="How long the glue stays open on this wood in this air, and whether your plan of the "
    "glue-up is done in time.",
    other_words=(
        "open time",
        "assembly time",
        "working time",
        "glue skinned",
        "skinning",
        "hide glue",
        "hot glue",
        "jelly",
        "gel time",
        "yellow glue",
        "glue-up",
        "clamping plan",
        "how long have I got",
    ),
    inputs=INPUTS,
    constants=CONSTANTS,
    work=WORK,
    tables=(
        Table(
            name="operations",
            title="The plan on the clock of the first bead",
            rows="rows",
            source="common-practice",
            columns=(
                Column(name="row", label="Row", unit="1", decimals=0),
                Column(name="operation", label="Operation", unit="1", decimals=0, text=True),
                Column(name="takes", label="Takes", unit="s", decimals=0),
                Column(name="start", label="Starts at", unit="s", decimals=0),
                Column(name="end", label="Ends at", unit="s", decimals=0),
                Column(name="age", label="Glue's age then", unit="s", decimals=0),
                Column(name="left", label="Open time left", unit="s", decimals=0),
            ),
            note="The clock starts when the first bead goes on; what comes before counts below "
            "zero. Where the open time left is below zero, the glue spread first is no longer "
            "open.",
        ),
    ),
    results=(
        "verdict",
        "open_said",
        "runs_out",
        "span",
        "open_time",
        "usable_time",
        "needed_time",
        "spare_time",
        "contact_temperature",
        "skinned_water",
        "skinned_solids",
        "evaporated",
        "soaked",
        "skin_temperature",
    ),
    aside=(
        "contact_temperature",
        "skinned_water",
        "skinned_solids",
        "evaporated",
        "soaked",
        "skin_temperature",
    ),
    drawings=(
        Drawing(
            name="plan",
            title="The film against its limit; below, the operations on the same clock (yellow "
            "bars spread glue)",
            function=draw_plan,
        ),
    ),
    cautions=(
        Caution(
            text="This is an estimate to plan a rehearsal by. Read the glue's own data sheet "
            "first, try the glue on scrap in today's air, and run the plan dry against the clock "
            "before the first bead.",
        ),
        Caution(
            text="The plan does not fit the open time with your margin: do not start glueing.",
            only_if="needed_time > usable_time",
        ),
        Caution(
            text="A glue pot scalds: carry it level, keep the cord and the water jacket out of "
            "the way, cool a burn under running water. Follow your local electrical code for pots "
            "and warming boxes, with a cut-out against running dry.",
            only_if=COOLING,
        ),
        Caution(
            text="Above 65 °C hide glue loses strength for good (common practice, no source).",
            only_if="pot_temperature > 65 if glue == 'cooling' else 1 < 0",
        ),
        Caution(
            text="Wood this warm dries out and may open its seams; most shops stay below 50 °C "
            "(common practice, no source).",
            only_if="warmed_wood_temperature > 50 if glue == 'cooling' else 1 < 0",
        ),
        Caution(
            text="The glue's face against the wood starts at {contact_temperature}, below the "
            "jelly point: it jells there before it wets the wood. Warm the wood.",
            only_if="contact_temperature < gel_temperature if glue == 'cooling' else 1 < 0",
        ),
        Caution(
            text="Wood or air is below the glue's lowest working temperature, "
            "{chalk_temperature}: do not glue, whatever the open time.",
            only_if="min(wood_temperature, room_temperature) < chalk_temperature "
            "if glue == 'drying' else 1 < 0",
        ),
        Caution(
            text="By these figures the glue skins at {skinned_solids} solids. Glue of this kind "
            "mostly skins between 55 and 80 % (from memory): check spread, solids and soaking "
            "rate before you trust the time.",
            only_if="skinned_solids < 55 or skinned_solids > 80 if glue == 'drying' else 1 < 0",
        ),
        Caution(
            text="Today is far from the data sheet's conditions, so the time leans on the model "
            "more than on the sheet: keep a larger margin.",
            only_if="abs(room_temperature - sheet_temperature) > 8 or abs(room_humidity - "
            "sheet_humidity) > 25 or abs(wood_temperature - sheet_temperature) > 8 or spread > "
            "1.5 * sheet_spread or spread < sheet_spread / 1.5 if glue == 'drying' else 1 < 0",
        ),
        Caution(
            text="How fast the wood soaks and how the air moves are from memory and common "
            "practice. The data sheet's open time takes up most of that error; what a wrong guess "
            "of the soaking does is said above.",
            only_if=DRYING,
        ),
        Caution(text="Air the room: glue gives off vapour as it dries, and a hot pot smells."),
    ),
    validity="For a film of even thickness on one face, open to the air. A round bead stays open "
    "somewhat longer than a film. Once the parts are together the glue dries and cools more "
    "slowly, so counting its age to the last operation errs on the safe side. Cooling counts the "
    "mean temperature of the film, takes the jelly point as sharp, and the other part as no "
    "colder than the film; the wood is warm right through, its properties are fixed and across "
    "the grain. Drying counts the mean water of the film, while a skin forms at the face: the "
    "data sheet's open time stands for that. End grain drinks faster.",
    sources=(
        WOOD_HANDBOOK_HEAT,
        HEAT_CONDUCTION,
        ASHRAE,
        LEWIS_RELATION,
        STEFAN_FLOW,
        SORPTIVITY,
        WATER_VISCOSITY,
        RADIATION,
        *CHECK_SOURCES,
        COMMON_PRACTICE,
    ),
    checks=CHECKS,
    folded=FOLDED,
    exercises=EXERCISES,
    decisions=DECISIONS,
)
