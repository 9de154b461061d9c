"""What the brace-stiffness calculator asks."""

from ..engine.declaration import Choice, Input, Number, Rows, When
from ._plates_shared import BRACE_WOODS, OWN, SHAPES, STRENGTHS

LEVEL = When(choice="brace_profile", is_one_of=("level",))
CARVED = When(choice="brace_profile", is_one_of=("carved",))
OWN_BRACE = When(choice="brace_wood", is_one_of=("own",))
OWN_PLATE = When(choice="plate_wood", is_one_of=("own",))
BRACE, PLATE, KNIVES = "Brace", "Plate under it", "On the knives"


def _height(name: str, label: str, symbol: str, example: float, help: str = "") -> Number:
    return Number(
        name=name, label=label, symbol=symbol, unit="mm", decimals=1, lowest=2, highest=40,
        example=example, group=BRACE, when=LEVEL, help=help,
    )  # fmt: skip


inputs: tuple[Input, ...] = (
    Choice(
        name="brace_shape", label="Section of the brace", options=SHAPES, example="parabola",
        group=BRACE,
    ),
    Choice(
        name="brace_wood", label="Wood of the brace", options=BRACE_WOODS, example="sitka",
        group=BRACE, help="Means of the species. Your own figure, from the knives, is better.",
    ),
    Number(
        name="brace_modulus", label="Modulus of the brace", symbol="E_b", unit="GPa", decimals=1,
        lowest=2, highest=30, example=10.8, group=BRACE, when=OWN_BRACE,
    ),
    Number(
        name="brace_width", label="Width at the plate", symbol="b", unit="mm", decimals=1,
        lowest=2, highest=30, example=8, group=BRACE,
    ),
    Choice(
        name="brace_profile", label="Along its length", example="level", group=BRACE,
        options=(("level", "One height"), ("carved", "Carved: heights place by place")),
    ),
    _height("brace_height", "Height over the plate, now", "h_1", 13,
            "From the plate to the ridge."),
    _height("brace_height_after", "Height after shaving", "h_2", 12),
    Rows(
        name="brace_rows", label="Heights along the brace", group=BRACE, when=CARVED,
        at_least=2, at_most=16,
        help="Straight from place to place. Beyond the first and the last, the height is kept.",
        columns=(
            Number(name="place", label="From the first knife", unit="mm", decimals=0, lowest=0,
                   highest=700, example=150),
            Number(name="height_now", label="Height now", unit="mm", decimals=1, lowest=1,
                   highest=40, example=14),
            Number(name="height_after", label="Height after", unit="mm", decimals=1, lowest=1,
                   highest=40, example=10),
        ),
        example=((0, 2.5, 2.5), (90, 15, 12.5), (155, 15, 8.8), (220, 15, 15), (300, 15, 13),
                 (400, 2.5, 2.5)),
    ),
    Choice(
        name="plate_wood", label="Wood of the plate", options=(*STRENGTHS, OWN), example="sitka",
        group=PLATE,
    ),
    Number(
        name="plate_modulus_along", label="Modulus along the grain", symbol="E_L", unit="GPa",
        decimals=1, lowest=2, highest=30, example=10.8, group=PLATE, when=OWN_PLATE,
    ),
    Number(
        name="plate_modulus_across", label="Modulus across the grain", symbol="E_R", unit="GPa",
        decimals=2, lowest=0.1, highest=10, example=0.84, group=PLATE, when=OWN_PLATE,
    ),
    Number(
        name="plate_thickness", label="Plate thickness", symbol="t", unit="mm", decimals=2,
        lowest=1, highest=6, example=2.8, group=PLATE,
    ),
    Number(
        name="strip_width", label="Strip of plate that goes with the brace", symbol="w", unit="mm",
        decimals=0, lowest=5, highest=400, example=60, group=PLATE,
        help="About halfway to the next brace on either side.",
    ),
    Number(
        name="grain_angle", label="Between brace and grain of the plate", symbol="θ", unit="deg",
        decimals=0, lowest=0, highest=90, example=45, group=PLATE,
        help="0: the brace runs with the grain. 90: across it.",
    ),
    Number(
        name="span", label="Knife to knife", symbol="L", unit="mm", decimals=0, lowest=60,
        highest=700, example=400, group=KNIVES,
    ),
    Number(
        name="load_place", label="First knife to the weight", symbol="a", unit="mm", decimals=0,
        lowest=10, highest=690, example=220, group=KNIVES,
        help="The section of a carved brace is looked at here.",
    ),
    Number(
        name="knife_load", label="Weight", symbol="m", unit="kg", decimals=2, lowest=0.05,
        highest=10, example=2, group=KNIVES,
    ),
)  # fmt: skip
