"""What the blushing calculator asks."""

from ..engine.declaration import Choice, Input, Number, Rows, When, Words

ROOM, LACQUER, WORK, DOUBT = "Room", "Lacquer", "Work", "Air, mist and doubt"
OWN = When(choice="thinner", is_one_of=("own",))

inputs: tuple[Input, ...] = (
    Number(
        name="room_temperature", label="Room temperature", symbol="T", unit="degC", decimals=0,
        lowest=5, highest=40, example=22, group=ROOM,
        help="Thermometer beside the work, fan running.",
    ),
    Number(
        name="room_humidity", label="Relative humidity", symbol="φ", unit="%", decimals=0,
        lowest=5, highest=100, example=50, group=ROOM,
        help="Hygrometer beside the work after a quarter of an hour with the fan on, which draws "
        "the outside in.",
    ),
    Choice(
        name="thinner", label="Solvents of lacquer and thinner together", group=LACQUER,
        example="medium",
        options=(
            ("fast", "Fast: acetone, ethyl acetate, toluene"),
            ("medium", "Medium: toluene, butyl acetate, some ketones"),
            ("slow", "Slow: butyl acetate, toluene, xylene, butyl glycol"),
            ("own", "Own mix from the data sheets"),
        ),
        help="The three mixes are common practice, from memory; no tin keeps to them.",
    ),
    Rows(
        name="solvents", label="Solvents in the mix", group=LACQUER, at_least=1, at_most=10,
        when=OWN,
        columns=(
            Words(name="solvent", label="Solvent", longest=40),
            Number(name="parts", label="Parts by volume", unit="1", decimals=1, lowest=0.1,
                   highest=1000, example=30),
        ),
        example=(("acetone", 10), ("isopropanol", 10), ("toluene", 45), ("butyl acetate", 35)),
        help="Known: acetone, butanone (MEK), ethyl acetate, ethanol, isopropanol, toluene, "
        "butyl acetate, butanol, xylene, butyl glycol.",
    ),
    Number(
        name="retarder_added", label="Retarder added to 100 parts of these solvents", symbol="r",
        unit="%", decimals=1, lowest=0, highest=50, example=0, group=LACQUER,
        help="Taken as butyl glycol.",
    ),
    Number(
        name="wet_film", label="Wet film of one coat", symbol="w", unit="um", decimals=0,
        lowest=20, highest=500, example=125, group=LACQUER, help="Wet film comb.",
    ),
    Number(
        name="solids_sprayed", label="Volume solids as sprayed", symbol="V_m", unit="%",
        decimals=1, lowest=2, highest=80, example=20, group=LACQUER,
    ),
    Number(
        name="body_temperature", label="Instrument's own temperature", symbol="T_b", unit="degC",
        decimals=0, lowest=-5, highest=45, example=22, group=WORK,
        help="Infrared thermometer on bare wood or dull lacquer. A case that was out in the cold "
        "needs a night.",
    ),
    Choice(
        name="wood", label="Wood under the coat", group=WORK, example="medium",
        options=(
            ("spruce", "Spruce"), ("cedar", "Cedar"), ("maple", "Maple"),
            ("medium", "Medium wood, 500 kg/m³ (mahogany)"),
            ("heavy", "Heavy wood, 700 kg/m³ (rosewood, walnut)"),
        ),
    ),
    Number(
        name="plate_thickness", label="Plate thickness", symbol="h", unit="mm", decimals=1,
        lowest=1, highest=60, example=2.6, group=WORK,
    ),
    Number(
        name="air_speed", label="Air along the work", symbol="u", unit="m/s", decimals=2,
        lowest=0.1, highest=3, example=0.5, group=DOUBT,
        help="Vane meter beside the work, not in the face of the booth.",
    ),
    Number(
        name="surface_length", label="Length of the surface along the air", symbol="l", unit="mm",
        decimals=0, lowest=50, highest=1000, example=400, group=DOUBT,
    ),
    Number(
        name="landing_drop", label="The mist lands colder than the room by", symbol="ΔT_0",
        unit="K", decimals=1, lowest=0, highest=15, example=2, group=DOUBT,
        help="A guess. To measure: infrared thermometer on brown paper right after the pass.",
    ),
    Number(
        name="evaporation_share", label="Evaporation, of that of an ideal mix", symbol="ε",
        unit="%", decimals=0, lowest=20, highest=150, example=100, group=DOUBT,
        help="Change it until the coldest film agrees with your infrared thermometer.",
    ),
    Number(
        name="safety_margin", label="Stay above the dew point by", symbol="m", unit="K",
        decimals=1, lowest=0, highest=15, example=3, group=DOUBT,
        help="For what the sum does not know: drops, edges, draught, gauges.",
    ),
)  # fmt: skip
