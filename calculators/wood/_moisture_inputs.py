"""What the moisture calculator asks."""

from ..engine.declaration import Choice, Input, Number, Rows, When

ROOM, WOOD, WITNESS = "The room's air", "The wood at the start", "The witness"
OVEN = When(choice="moisture_from", is_one_of=("oven",))
METER = When(choice="moisture_from", is_one_of=("meter",))
WEIGHED = When(choice="witness", is_one_of=("weighed",))

inputs: tuple[Input, ...] = (
    Number(
        name="room_temperature", label="Air temperature", symbol="T", unit="degC", decimals=1,
        lowest=-2, highest=55, example=21, group=ROOM,
    ),
    Number(
        name="room_humidity", label="Relative humidity", symbol="φ", unit="%", decimals=0,
        lowest=5, highest=95, example=45, group=ROOM,
        help="The mean of the week, from the trace of the hygrometer at the stack.",
    ),
    Number(
        name="humidity_swing", label="Humidity goes up and down by", symbol="Δφ", unit="%",
        decimals=0, lowest=0, highest=40, example=5, group=ROOM,
        help="Half of highest less lowest: 40 to 50 % is 5 up and down.",
    ),
    Choice(
        name="moisture_from", label="Moisture at the start, from", example="oven", group=WOOD,
        options=(
            ("oven", "An offcut, weighed and dried in the oven"), ("meter", "A moisture meter"),
        ),
    ),
    Number(
        name="offcut_mass", label="Offcut as cut", symbol="m_c", unit="g", decimals=1,
        lowest=1, highest=5000, example=64.3, group=WOOD, when=OVEN,
        help="Weighed within minutes of the saw, from the middle of the board, clear of its ends.",
    ),
    Number(
        name="ovendry_mass", label="The same offcut, ovendry", symbol="m_o", unit="g", decimals=1,
        lowest=1, highest=5000, example=57.6, group=WOOD, when=OVEN,
        help="At about 103 °C until two weighings an hour apart agree.",
    ),
    Number(
        name="wood_moisture", label="Meter reading", symbol="x_m", unit="%", decimals=1,
        lowest=3, highest=30, example=11.5, group=WOOD, when=METER,
        help="Set to the wood, on the day of the first weighing; per cent of ovendry weight.",
    ),
    Number(
        name="meter_error", label="The meter may be off by", symbol="e_m", unit="%", decimals=1,
        lowest=0, highest=5, example=1, group=WOOD, when=METER,
        help="Up or down, as found against the oven.",
    ),
    Choice(
        name="witness", label="Witness", example="weighed", group=WITNESS,
        options=(("weighed", "Weighed on two days or more"), ("none", "Not weighed")),
        help="A piece of the same lot that stays in the stack and is weighed every week.",
    ),
    Rows(
        name="weighings", label="Weighings", group=WITNESS, when=WEIGHED, at_least=2, at_most=20,
        help="Oldest first. The first line belongs to the day the offcut was cut or the meter "
        "read.",
        columns=(
            Number(name="day", label="Day", unit="d", decimals=0, lowest=0, highest=3650,
                   example=28),
            Number(name="mass", label="Weight", unit="g", decimals=1, lowest=5, highest=50000,
                   example=812),
        ),
        example=((0, 812.0), (7, 803.4), (14, 798.1), (21, 794.9)),
    ),
    Number(
        name="scale_step", label="Step of the scale", symbol="d", unit="g", decimals=2,
        lowest=0.001, highest=10, example=0.1, group=WITNESS, when=WEIGHED,
        help="What its last figure counts in: 0.1 g on the precision scale.",
    ),
    Number(
        name="close_enough", label="Ready when this close to the room", symbol="c", unit="%",
        decimals=1, lowest=0.1, highest=5, example=0.5, group=WITNESS, when=WEIGHED,
        help="In per cent of moisture content.",
    ),
)  # fmt: skip
