"""What the calculator of dilution air asks."""

from ..engine.declaration import Choice, Input, Number

SOLVENT, ROOM, OTHER = "Solvent going into the air", "The room", "Another solvent"
CARE, HEAT = "Mixing and safety", "Heating and height"
SHEET = "From the safety data sheet."


def _litres(name: str, label: str, example: float, group: str = SOLVENT, help: str = "") -> Number:
    return Number(
        name=name, label=label, unit="L/h", decimals=3, lowest=0, highest=20, example=example,
        group=group, help=help,
    )  # fmt: skip


INPUTS: tuple[Input, ...] = (
    _litres("butyl_acetate", "n-Butyl acetate", 0.15,
            help="Liquid sprayed, wiped on and drying, by the hour. The data sheet has the shares."),
    _litres("toluene", "Toluene", 0.05),
    _litres("acetone", "Acetone", 0.1),
    _litres("isopropyl_alcohol", "Isopropyl alcohol", 0.05),
    _litres("ethyl_acetate", "Ethyl acetate", 0.05),
    _litres("ethanol", "Ethanol", 0),
    _litres("methyl_ethyl_ketone", "Methyl ethyl ketone", 0),
    Number(
        name="room_volume", label="Air in the room", symbol="V", unit="m3", decimals=1, lowest=5,
        highest=5000, example=60, group=ROOM, help="Length by width by height.",
    ),
    Number(
        name="air_flow", label="Air drawn out to the open", symbol="Q", unit="m3/h", decimals=0,
        lowest=50, highest=100000, example=4000, group=ROOM,
        help="Measured at the exhaust. Air that is blown back through a filter does not count.",
    ),
    Number(
        name="spray_time", label="Spraying goes on for", symbol="t_s", unit="min", decimals=0,
        lowest=1, highest=600, example=30, group=ROOM,
    ),
    Choice(
        name="fire_share", label="Keep vapour below", group=CARE, example="tenth",
        options=(
            ("tenth", "A tenth of the lower explosive limit"),
            ("quarter", "A quarter of the lower explosive limit"),
        ),
        help="A quarter is the limit of the spray-booth rules; a tenth is kept where people work.",
    ),
    Number(
        name="mixing_factor", label="Mixing factor", symbol="K", unit="1", decimals=1, lowest=1,
        highest=10, example=3, group=CARE,
        help="1 is perfect mixing, which no room has. Common practice: 3 good, 5 fair, 10 poor.",
    ),
    Number(
        name="evaporated", label="Share that evaporates within the hour", symbol="e", unit="%",
        decimals=0, lowest=10, highest=100, example=100, group=CARE,
        help="Leave 100 unless you have weighed it.",
    ),
    Number(
        name="fall_to", label="Wait until vapour has fallen to", symbol="x", unit="%", decimals=1,
        lowest=0.1, highest=90, example=5, group=CARE, help="Of what it was when spraying stopped.",
    ),
    Number(
        name="room_temperature", label="Warmth of the room", symbol="t_i", unit="degC", decimals=1,
        lowest=5, highest=45, example=22, group=HEAT,
    ),
    Number(
        name="outdoor_temperature", label="Warmth outdoors, coldest day", symbol="t_o",
        unit="degC", decimals=1, lowest=-40, highest=45, example=-5, group=HEAT,
    ),
    Number(
        name="height_above_sea", label="Height above the sea", symbol="z", unit="m", decimals=0,
        lowest=0, highest=3000, example=0, group=HEAT,
    ),
    _litres("other_solvent", "Another solvent", 0, OTHER, "With the four figures below."),
    Number(
        name="other_density", label="Its density", unit="kg/m3", decimals=1, lowest=500,
        highest=1600, example=870, group=OTHER, help=SHEET,
    ),
    Number(
        name="other_molar_mass", label="Its molar mass, in grams a mole", unit="1", decimals=2,
        lowest=30, highest=300, example=106.17, group=OTHER, help=SHEET,
    ),
    Number(
        name="other_lfl", label="Its lower explosive limit", unit="%", decimals=2, lowest=0.3,
        highest=15, example=1, group=OTHER, help="By volume. The lowest on any sheet you have.",
    ),
    Number(
        name="other_limit", label="Its exposure limit for 8 hours", unit="ppm", decimals=1,
        lowest=0.1, highest=2000, example=50, group=OTHER, help="The lowest that binds you.",
    ),
)  # fmt: skip
FOLDED = (HEAT, OTHER)
