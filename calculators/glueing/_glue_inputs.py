"""What the glue clock asks: the glue, the room, the wood, the data sheet, the plan."""

from ..engine.declaration import Choice, Input, Number, Rows, When, Words

COOLING = When(choice="glue", is_one_of=("cooling",))
DRYING = When(choice="glue", is_one_of=("drying",))
GLUE, ROOM, WOOD = "The glue", "The room today", "The wood"
SHEET, PLAN = "From the glue's data sheet", "The plan"
HEAT, SOAKING = "Fine points: heat and air", "Fine points: soaking in"
FOLDED = (HEAT, SOAKING)

COLUMNS = (
    Words(name="operation", label="Operation", longest=40),
    Number(name="length", label="Glue line", unit="mm", decimals=0, lowest=0, highest=20000,
           example=1500),
    Number(name="rate", label="Speed of the hand", unit="mm/s", decimals=0, lowest=1, highest=500,
           example=25),
    Number(name="clamps", label="Clamps or moves", unit="1", decimals=0, whole=True, lowest=0,
           highest=100, example=1),
    Number(name="seconds", label="Seconds each", unit="s", decimals=0, lowest=0, highest=600,
           example=5),
)  # fmt: skip
PLAN_HELP = (
    "One row an operation, in order. Glue line: how long a line or strip you spread (0 where "
    "none). Clamps or moves: how many clamps you set; laying a part on counts as one. Take the "
    "times from a dry run."
)

INPUTS: tuple[Input, ...] = (
    Choice(
        name="glue", label="How the glue runs out of time", group=GLUE, example="drying",
        options=(("drying", "It dries: yellow glue and other water-borne glue"),
                 ("cooling", "It cools to a jelly: hot hide glue")),
    ),
    Number(
        name="spread", label="Spread on the wood", symbol="m", unit="g/m2", decimals=0, lowest=60,
        highest=500, example=180, group=GLUE, when=DRYING,
        help="Weigh the bottle before and after and divide by the area that was wetted. A thin "
        "full film is some 150 to 200 g/m² (common practice).",
    ),
    Number(
        name="solids", label="Solids in the glue", symbol="s", unit="%", decimals=0, lowest=30,
        highest=70, example=46, group=GLUE, when=DRYING, help="By weight; the data sheet gives it.",
    ),
    Number(
        name="pot_temperature", label="Glue in the pot", symbol="T_pot", unit="degC", decimals=0,
        lowest=40, highest=75, example=61, group=GLUE, when=COOLING,
        help="Stirred, taken in the middle of the glue.",
    ),
    Number(
        name="gel_temperature", label="Jelly point of the glue", symbol="T_gel",
        unit="degC", decimals=0,
        lowest=20, highest=45, example=32, group=GLUE, when=COOLING,
        help="Let a cup of your mix cool and note when it stops running off the stick. Stronger "
        "glue and less water jell warmer, mostly between 28 and 36 °C (common practice, from "
        "memory).",
    ),
    Number(
        name="film_thickness", label="Thickness of the film", symbol="h", unit="mm", decimals=2,
        lowest=0.05, highest=1, example=0.2, group=GLUE, when=COOLING,
        help="A brushed coat is some 0.1 to 0.3 mm (common practice). Weigh it to be sure: 0.2 mm "
        "is about 220 g/m².",
    ),
    Number(
        name="room_temperature", label="Air temperature", symbol="T_a", unit="degC", decimals=0,
        lowest=10, highest=40, example=21, group=ROOM,
    ),
    Number(
        name="room_humidity", label="Relative humidity", symbol="φ",
        unit="%", decimals=0, lowest=10,
        highest=95, example=45, group=ROOM,
    ),
    Number(
        name="air_movement", label="Air over the glue: film coefficient", symbol="h_c",
        unit="W/m2/K", decimals=1, lowest=1, highest=40, example=4, group=ROOM,
        help="Still air in a shop is about 3 to 5, a draught 8 to 12, a fan on the work 15 to 30 "
        "(common practice, from memory).",
    ),
    Number(
        name="wood_temperature", label="Wood under the glue", symbol="T_w", unit="degC", decimals=0,
        lowest=5, highest=60, example=21, group=WOOD, when=DRYING,
        help="Parts that lay overnight in the room are as warm as the room.",
    ),
    Number(
        name="warmed_wood_temperature", label="Wood just before the brush", symbol="T_w",
        unit="degC",
        decimals=0, lowest=5, highest=70, example=45, group=WOOD, when=COOLING,
        help="Surface temperature, parts warmed through.",
    ),
    Number(
        name="wood_moisture", label="Moisture content of the wood", symbol="x",
        unit="%", decimals=0,
        lowest=3, highest=20, example=8, group=WOOD,
        help="Per cent of its ovendry weight, by the meter.",
    ),
    Number(
        name="basic_gravity", label="Basic specific gravity of the wood", symbol="G_b", unit="1",
        decimals=2, lowest=0.3, highest=1, example=0.45, group=WOOD,
        help="Ovendry weight over green volume, as the Wood Handbook's tables give it: western "
        "red cedar about 0.31, spruces 0.33 to 0.37, mahogany 0.45, hard maple 0.56, rosewood "
        "0.75 to 0.80 (from memory).",
    ),
    Number(
        name="wood_thickness", label="Depth of wood under the glue", symbol="d",
        unit="mm", decimals=1,
        lowest=1, highest=100, example=15, group=WOOD,
        help="Across the grain, as far as the wood goes: plate, lining or block.",
    ),
    Number(
        name="sheet_open_time", label="Open time it gives", symbol="t_s", unit="min", decimals=1,
        lowest=1, highest=60, example=5, group=SHEET, when=DRYING,
        help="Open assembly time. Where it gives a span, take the short end.",
    ),
    Number(
        name="sheet_temperature", label="at a temperature of", symbol="T_s",
        unit="degC", decimals=0,
        lowest=10, highest=35, example=21, group=SHEET, when=DRYING,
    ),
    Number(
        name="sheet_humidity", label="at a relative humidity of", symbol="φ_s",
        unit="%", decimals=0,
        lowest=10, highest=90, example=50, group=SHEET, when=DRYING,
    ),
    Number(
        name="sheet_spread", label="with a spread of", symbol="m_s",
        unit="g/m2", decimals=0, lowest=60,
        highest=500, example=180, group=SHEET, when=DRYING,
        help="A wet film given in mils or millimetres: each 0.1 mm is about 110 g/m², each mil 28 "
        "g/m².",
    ),
    Number(
        name="sheet_wood_moisture", label="on wood of a moisture content of", symbol="x_s",
        unit="%",
        decimals=0, lowest=3, highest=20, example=8, group=SHEET, when=DRYING,
    ),
    Number(
        name="chalk_temperature", label="Lowest working temperature", symbol="T_c", unit="degC",
        decimals=0, lowest=0, highest=25, example=13, group=SHEET, when=DRYING,
        help="Also called chalk temperature: below it the glue dries to a white powder without "
        "strength.",
    ),
    Number(
        name="sorptivity", label="How fast the wood soaks water from the glue", symbol="S",
        unit="g/m2/s0.5", decimals=2, lowest=0, highest=10, example=2.5, group=SOAKING, when=DRYING,
        help="At the data sheet's conditions. Nobody publishes it for glue; 1 to 4 across the "
        "grain is from memory. To gauge it, stand a weighed scrap with its glueing face in 2 mm "
        "of water for 5 minutes, wipe, weigh: grams gained, over the area in m², over 17.3. Glue "
        "gives its water more slowly, so take about half.",
    ),
    Number(
        name="sheet_air_movement", label="Film coefficient in the data sheet's test", symbol="h_s",
        unit="W/m2/K", decimals=1, lowest=1, highest=40, example=4, group=SOAKING, when=DRYING,
        help="No sheet gives it; still air is likely (common practice, from memory).",
    ),
    Number(
        name="air_pressure", label="Air pressure", symbol="p", unit="kPa", decimals=1, lowest=65,
        highest=107, example=101.3, group=HEAT,
        help="Not reduced to sea level; about 1.2 kPa less for every 100 m of height.",
    ),
    Number(
        name="emissivity", label="Emissivity of wet glue", symbol="ε",
        unit="1", decimals=2, lowest=0.1,
        highest=1, example=0.9, group=HEAT, help="Nearly all that is not bare metal: 0.9 to 0.95.",
    ),
    Number(
        name="glue_conductivity", label="Conductivity of the glue", symbol="k_g", unit="W/m/K",
        decimals=2, lowest=0.15, highest=0.65, example=0.4, group=HEAT,
        help="Between water, 0.6, and its solids, 0.2. A guess from memory; it matters little.",
    ),
    Number(
        name="glue_density", label="Density of the glue", symbol="ρ_g", unit="kg/m3", decimals=0,
        lowest=950, highest=1400, example=1100, group=HEAT, help="Common practice, from memory.",
    ),
    Number(
        name="glue_heat_capacity", label="Heat capacity of the glue", symbol="c_g", unit="J/kg/K",
        decimals=0, lowest=1500, highest=4200, example=3000, group=HEAT,
        help="Water has 4180, dry glue some 1500; mix them by weight. A guess from memory.",
    ),
    Number(
        name="hands", label="Pairs of hands", symbol="n",
        unit="1", decimals=0, whole=True, lowest=1,
        highest=8, example=1, group=PLAN,
        help="Counted as working together on each operation.",
    ),
    Number(
        name="margin", label="Margin kept in hand", symbol="r", unit="%", decimals=0, lowest=0,
        highest=70, example=20, group=PLAN,
        help="Share of the open time that the plan may not use.",
    ),
    Rows(
        name="plan", label="Operations", columns=COLUMNS, at_least=1, at_most=20, group=PLAN,
        when=DRYING, help=PLAN_HELP,
        example=(
            ("Bead round the rim", 1500, 25, 0, 0),
            ("Spread over both blocks", 200, 20, 0, 0),
            ("Lay the back on from the waist", 0, 25, 1, 25),
            ("Press it down at both blocks", 0, 25, 2, 15),
            ("Latch the press frame", 0, 25, 6, 5),
            ("Let air in until the dial stands", 0, 25, 1, 25),
        ),
    ),
    Rows(
        name="hot_plan", label="Operations", columns=COLUMNS, at_least=1, at_most=20, group=PLAN,
        when=COOLING, help=PLAN_HELP,
        example=(
            ("Brush the rim", 1500, 50, 0, 0),
            ("Brush both blocks", 200, 20, 0, 0),
            ("Lay the back on from the waist", 0, 50, 1, 15),
            ("Press it down at both blocks", 0, 50, 2, 10),
            ("Latch the press frame", 0, 50, 6, 4),
        ),
    ),
)  # fmt: skip
