"""What the wood-movement calculator asks."""

from ..engine.declaration import Choice, Input, Number, When
from ..laws.wood_shrinkage import NAMES

WOOD, AIR, HELD = "The wood", "The air, then and later", "How it is held"
BRACE, OWN_WOOD = "Brace and stiffness", "Own figures"
OWN = When(choice="species", is_one_of=("own",))
BY_AIR = When(choice="moisture_by", is_one_of=("humidity",))
BY_METER = When(choice="moisture_by", is_one_of=("moisture",))
BRACED = When(choice="held", is_one_of=("braced",))
FITTED = When(choice="held", is_one_of=("fitted",))
HELD_AT_ALL = When(choice="held", is_one_of=("braced", "fitted"))
ARCHED = When(choice="dish", is_one_of=("arched",))

inputs: tuple[Input, ...] = (
    Choice(
        name="species", label="Wood", example="engelmann", group=WOOD,
        options=(*NAMES, ("own", "Other: my own figures")),
        help="Means of the species; one board may move a fifth more or less (from memory). Ebony "
        "is not among them: nothing we trust was found.",
    ),
    Number(
        name="own_shrinkage_radial", label="Shrinks along the rays, green to ovendry",
        symbol="S_R", unit="%", decimals=1, lowest=0.5, highest=15, example=4.0, group=WOOD,
        when=OWN, help="From a published table, across a quartersawn board.",
    ),
    Number(
        name="own_shrinkage_tangential", label="Shrinks along the rings, green to ovendry",
        symbol="S_T", unit="%", decimals=1, lowest=0.5, highest=18, example=7.5, group=WOOD,
        when=OWN, help="From the same table, across a flatsawn board.",
    ),
    Number(
        name="ring_angle", label="Year rings stand to the face at", symbol="α", unit="deg",
        decimals=0, lowest=0, highest=90, example=85, group=WOOD,
        help="Seen on the end. 90: quartersawn. 0: flatsawn.",
    ),
    Number(
        name="piece_width", label="Width across the grain", symbol="b", unit="mm", decimals=1,
        lowest=2, highest=1000, example=395, group=WOOD,
    ),
    Choice(
        name="moisture_by", label="Then and later, by", example="humidity", group=AIR,
        options=(("humidity", "Humidity of the air"), ("moisture", "Moisture of the wood")),
    ),
    Number(
        name="room_temperature", label="Air temperature", symbol="T", unit="degC", decimals=1,
        lowest=-2, highest=55, example=21, group=AIR, when=BY_AIR,
    ),
    Number(
        name="room_humidity", label="Humidity when it was made", symbol="φ_1", unit="%",
        decimals=0, lowest=5, highest=95, example=45, group=AIR, when=BY_AIR,
        help="The air that the wood had come to rest in when it was cut or glued.",
    ),
    Number(
        name="later_humidity", label="Humidity later", symbol="φ_2", unit="%", decimals=0,
        lowest=5, highest=95, example=30, group=AIR, when=BY_AIR,
        help="Weeks of it: a heated room in winter, a damp summer.",
    ),
    Number(
        name="wood_moisture", label="Moisture when it was made", symbol="x_1", unit="%",
        decimals=1, lowest=0, highest=30, example=8.5, group=AIR, when=BY_METER,
        help="30 for green wood, however wet: it shrinks only below that.",
    ),
    Number(
        name="later_moisture_given", label="Moisture later", symbol="x_2", unit="%", decimals=1,
        lowest=0, highest=30, example=10.5, group=AIR, when=BY_METER,
    ),
    Choice(
        name="held", label="The piece is", example="braced", group=HELD,
        options=(
            ("braced", "A plate braced across its grain"),
            ("fitted", "Fitted between shoulders that do not move"),
            ("free", "Free to move"),
        ),
    ),
    Choice(
        name="dish", label="Braced", example="arched", group=HELD, when=BRACED,
        options=(("arched", "Over a dish"), ("flat", "Flat")),
    ),
    Number(
        name="dish_radius", label="Radius of the dish", symbol="R", unit="mm", decimals=0,
        lowest=1000, highest=30000, example=9000, group=HELD, when=ARCHED,
    ),
    Number(
        name="plate_thickness", label="Plate thickness", symbol="t", unit="mm", decimals=2,
        lowest=1, highest=6, example=2.8, group=HELD, when=BRACED,
    ),
    Number(
        name="fit_gap", label="Gap when it was fitted", symbol="g_1", unit="mm", decimals=2,
        lowest=0, highest=5, example=0.05, group=HELD, when=FITTED,
        help="Both sides together; 0 for a tight or glued fit.",
    ),
    Choice(
        name="brace_shape", label="Section of the brace", example="parabola", group=BRACE,
        when=BRACED,
        options=(
            ("rectangle", "Rectangle"), ("triangle", "Triangle, ridged"),
            ("parabola", "Parabola, rounded ridge"),
        ),
    ),
    Number(
        name="brace_width", label="Brace width at the plate", symbol="w_b", unit="mm",
        decimals=1, lowest=2, highest=30, example=8, group=BRACE, when=BRACED,
    ),
    Number(
        name="brace_height", label="Brace height over the plate", symbol="h", unit="mm",
        decimals=1, lowest=2, highest=40, example=15, group=BRACE, when=BRACED,
    ),
    Number(
        name="strip_width", label="Strip of plate that goes with the brace", symbol="w",
        unit="mm", decimals=0, lowest=5, highest=400, example=100, group=BRACE, when=BRACED,
        help="About halfway to the next brace on either side.",
    ),
    Number(
        name="grain_angle", label="Between brace and grain of the plate", symbol="θ", unit="deg",
        decimals=0, lowest=20, highest=90, example=90, group=BRACE, when=BRACED,
        help="90: straight across, where the plate moves most. An X-brace lies at about half that.",
    ),
    Number(
        name="brace_modulus", label="Modulus of the brace", symbol="E_b", unit="GPa", decimals=1,
        lowest=2, highest=30, example=10.8, group=BRACE, when=BRACED,
        help="Along its grain. Sitka spruce 10.8 (Wood Handbook).",
    ),
    Number(
        name="plate_modulus", label="Modulus of the wood across its grain", symbol="E_p",
        unit="GPa", decimals=2, lowest=0.1, highest=10, example=1.15, group=BRACE,
        when=HELD_AT_ALL,
        help="Quartersawn, by the Wood Handbook: spruce 0.8 to 1.2, red cedar 0.6, mahogany 1.1, "
        "sugar maple 1.7. Under a slanted brace, of the plate along the brace.",
    ),
)  # fmt: skip
