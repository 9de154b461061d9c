"""Where the weight calculation comes from, outside figures it is held against, exercises."""

from typing import Any

from ..engine.declaration import Check, Decision, Exercise, Option, Slip, Source
from ..laws.wood_gravity import WOOD_HANDBOOK_GRAVITY, gravity_to_green, most_moisture_percent
from ..laws.wood_heat import WOOD_HANDBOOK_HEAT
from ..sources import COMMON_PRACTICE, GEOMETRY

HANDBOOK_EXAMPLE = Source(
    id="wood-handbook-ash",
    title="Wood handbook (FPL-GTR-190), p. 4-9: density of white ash at 12 % moisture, worked "
    "example",
    author="USDA Forest Products Laboratory",
    year="2010",
)
HANDBOOK_FULL = Source(
    id="wood-handbook-full-of-water",
    title="Wood handbook (FPL-GTR-282), eq. (4-3): the most water, from 267 % at a gravity of "
    "0.30 to 44 % at 0.90",
    author="USDA Forest Products Laboratory",
    year="2021",
    note="Read in a public program that cites it.",
)
PINT = Source(
    id="pint",
    title="pint 0.26.2, quantities with units",
    kind="library",
    note="Density times volume, in metric and inch units, independently of this project.",
)
MPMATH = Source(
    id="mpmath-weight",
    title="mpmath 1.4.1, arbitrary-precision arithmetic",
    kind="library",
    note="Gravity, density and weights worked out independently of this project.",
)
SOURCES = (
    WOOD_HANDBOOK_GRAVITY, WOOD_HANDBOOK_HEAT, GEOMETRY, COMMON_PRACTICE, HANDBOOK_EXAMPLE,
    HANDBOOK_FULL, PINT, MPMATH,
)  # fmt: skip
GREEN: dict[str, Any] = {"gravity_from": "green"}
WEIGHED: dict[str, Any] = {"gravity_from": "weighed", "thickness_after": 0.5}


def _both(wood: str, green: float, at_twelve: str) -> Check:
    return Check(
        inputs={**GREEN, "basic_gravity": green}, source=WOOD_HANDBOOK_GRAVITY.id, origin="read",
        where=f"{wood}: printed green {green:g}, at 12 % {at_twelve}",
        expected={"gravity_at_12": at_twelve}, within="3 %",
        because="the table rounds to 0.01 and measured each wood; the equation takes an average "
        "shrinkage",
    )  # fmt: skip


def _full(green: float, moisture: str, within: str) -> Check:
    return Check(
        function=most_moisture_percent, given={"gravity_green": green}, unit="%",
        source=HANDBOOK_FULL.id, origin="read", where=f"full of water, gravity {green:g}",
        expected={"": moisture}, within=within,
        because="printed as approximate; the digits follow with 1.5 for the cell wall, not 1.54",
    )  # fmt: skip


CHECKS = (
    Check(
        inputs={**GREEN, "basic_gravity": 0.55, "wood_moisture": 12}, source=HANDBOOK_EXAMPLE.id,
        origin="read", where="white ash, basic gravity 0.55, at 12 %",
        expected={"gravity_now": "0.605", "density": "678"}, within="0.5 %",
        because="the handbook reads the gravity off a figure",
    ),
    _both("Engelmann spruce", 0.33, "0.35"), _both("Sitka spruce", 0.37, "0.40"),
    _both("western red cedar", 0.31, "0.32"), _both("sugar maple", 0.56, "0.63"),
    _full(0.30, "267", "1 %"), _full(0.90, "44", "5 %"),
    Check(
        inputs={}, source=MPMATH.id, origin="library",
        where="Engelmann spruce, 0.33 green, at 8.5 %, two pieces 550 by 205 by 4.5 mm",
        expected={
            "gravity_now": "0.35206477992", "density": "381.9902862127",
            "piece_mass": "193.8123214671", "mass": "387.6246429343",
            "dry_mass": "357.2577354233", "mass_after": "241.1886667147",
            "saved": "146.4359762196", "tenth_mass": "8.6138809541",
            "gravity_at_12": "0.3482739333", "density_at_12": "390.0668052727",
        },
    ),
    Check(
        inputs={"species": "walnut"}, source=MPMATH.id, origin="library",
        where="black walnut, 0.55 at 12 %, turned to green and to 8.5 %",
        expected={"gravity_green": "0.5057703802", "gravity_now": "0.5595140705"},
    ),
    Check(
        inputs=WEIGHED, source=MPMATH.id, origin="library",
        where="196 g, 550 by 205 by 4.5 mm, at 8.5 %",
        expected={"density": "386.3020448386", "gravity_now": "0.3560387510",
                  "gravity_green": "0.3334889946"},
    ),
    Check(
        inputs={**WEIGHED, "board_mass": 213.0975}, source=PINT.id, origin="library",
        where="420 kg/m³ times 550 by 205 by 4.5 mm is 213.0975 g",
        expected={"density": "420.0000000"},
    ),
    Check(
        inputs={**WEIGHED, "board_mass": 149.62248315972224, "piece_length": "20 in",
                "piece_width": "8 in", "piece_thickness": "0.125 in"},
        source=PINT.id, origin="library", unit="lb/ft3", expected={"density": "28.5000000"},
        where="28.5 lb/ft³ times 20 by 8 by 0.125 in is 149.62248315972 g",
    ),
    Check(
        inputs={**WEIGHED, "shape": "outline", "plate_area": 1490, "piece_thickness": 2.8,
                "board_mass": 166.88},
        source=PINT.id, origin="library", where="400 kg/m³ times 1490 cm² by 2.8 mm is 166.88 g",
        expected={"density": "400.0000000"},
    ),
    Check(
        function=gravity_to_green, given={"gravity": 0.55, "moisture": 12}, source=MPMATH.id,
        origin="library", where="0.55 at 12 % over green volume",
        expected={"": "0.5057703802"},
    ),
)  # fmt: skip

EXERCISES = (
    Exercise(
        name="billet-by-gravity",
        situation="A billet {piece_length} by {piece_width} by {piece_thickness} has a specific "
        "gravity of {gravity_12} at 12 %, and it is at 12 %. What does it weigh, water and all?",
        asks="piece_mass", within="0.5 %",
        draw={"piece_length": (500, 900, 5), "piece_width": (70, 120, 1),
              "piece_thickness": (20, 60, 1), "gravity_12": (0.35, 0.8, 0.01)},
        fixed={"gravity_from": "twelve", "wood_moisture": 12,
               "pieces": 1, "thickness_after": 1},
        slips=(
            Slip(name="forgot-the-water", formula="piece_mass / (1 + wood_moisture / whole)",
                 why="Specific gravity counts the dry wood alone. Add 12 % of it for the water."),
            Slip(name="shrunk-again",
                 formula="piece_mass / (1 - 0.265 * gravity_12 * (1 - 12 / 30))",
                 why="The figure is already for the volume at 12 %; there is nothing to shrink."),
            Slip(name="water-of-the-whole",
                 formula="piece_mass / (1 + wood_moisture / whole) / (1 - wood_moisture / whole)",
                 why="12 % is of the dry weight, not of the whole."),
        ),
    ),
    Exercise(
        name="what-thinning-takes",
        situation="{pieces} half plates of one wood, {piece_thickness} thick, weigh {board_mass} "
        "each. Together, how much weight comes off when they go through the drum to "
        "{thickness_after}?",
        asks="saved", within="1 %",
        draw={"board_mass": (150, 260, 1), "piece_thickness": (3.6, 4.4, 0.05),
              "thickness_after": (2.5, 3.0, 0.05)},
        fixed={"gravity_from": "weighed", "pieces": 2},
        slips=(
            Slip(name="what-is-left", formula="mass_after",
                 why="That is what is left, not what comes off."),
            Slip(name="of-the-thin", formula="saved * piece_thickness / thickness_after",
                 why="You took the share of the thinned plate. The weight belongs to the "
                 "thickness before."),
            Slip(name="one-half-alone", formula="saved / pieces",
                 why="That is one half alone; both go through the drum."),
        ),
    ),
    Exercise(
        name="area-by-card",
        situation="A card template of the top weighs {template_mass}; a 100 mm (3.937 in) square of the "
        "same card weighs {square_mass}. What is the area of the top?",
        asks="area", within="1 %",
        draw={"template_mass": (38, 56, 0.1), "square_mass": (2.6, 3.6, 0.01)},
        fixed={"shape": "template"},
        slips=(
            Slip(name="upside-down", formula="square_mass / template_mass * square_area",
                 why="You divided the wrong way round: the top is larger than the square."),
            Slip(name="ten-for-hundred", formula="area / 10",
                 why="A square of 100 mm has ten times ten square centimetres: 100 cm²."),
        ),
    ),
)  # fmt: skip

DECISIONS = (
    Decision(
        name="who-carries-it",
        situation="A plank {piece_length} by {piece_width} by {piece_thickness} has to go to the "
        "saw. Its specific gravity is {gravity_12} at 12 %, and it is at 12 %. The shop lets nobody "
        "lift more than 25 kg (55 lb), and two no more than 50 kg (110 lb). How does it get there?",
        options=(
            Option(
                words="One carries it",
                holds="piece_mass <= 23000",
                why="It weighs {piece_mass}, water and all: more than one may lift.",
            ),
            Option(
                words="Two carry it",
                holds="piece_mass >= 27000 and piece_mass <= 46000",
                why="At {piece_mass} one is enough, or two are not.",
            ),
            Option(
                words="It goes on the trolley",
                holds="piece_mass >= 54000",
                why="It weighs {piece_mass}: hands will do.",
            ),
        ),
        because="It weighs {piece_mass}: volume times gravity, and 12 % more for the water.",
        draw={"piece_length": (1500, 2500, 20), "piece_width": (200, 450, 5),
              "piece_thickness": (40, 105, 1), "gravity_12": (0.4, 0.9, 0.01)},
        fixed={"gravity_from": "twelve", "wood_moisture": 12, "pieces": 1, "thickness_after": 20},
    ),
)  # fmt: skip
