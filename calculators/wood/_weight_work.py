"""The steps of the weight calculation: gravity, density, area, mass, what thinning takes."""

from collections.abc import Mapping

from ..engine.declaration import Given, Limit, Said, Solved, Step, Work
from ..laws.wood_gravity import AT_MOISTURE, MOST_MOISTURE, TO_GREEN, WOODS
from ..laws.wood_heat import DENSITY

TABLE = "gravity_from == 'table'"
WEIGHED = "gravity_from == 'weighed'"
UNWEIGHED = "gravity_from != 'weighed'"
BOUND = "bound_moisture"


def look_up(species: str) -> Mapping[str, float | str]:
    """The printed specific gravity of a wood and its basis: green volume where it is printed.

    Source: ``laws.wood_gravity.WOODS``.
    """
    wood = WOODS[species]
    if wood.green is not None:
        return {"table_gravity": wood.green, "table_basis": "over green volume"}
    return {"table_gravity": wood.at_twelve or 0.0, "table_basis": "over volume at 12 %"}


def _to_green(gravity: str, moisture: str) -> str:
    """The formula from one basis to green volume, with the names of a step."""
    text = TO_GREEN.replace("* gravity *", f"* {gravity} *").replace("moisture /", f"{moisture} /")
    return text.replace("gravity / (1", f"{gravity} / (1", 1)


def _green(formula: str, only_if: str) -> Step:
    return Step(
        name="gravity_green", label="Specific gravity over green volume", symbol="G_b", unit="1",
        decimals=4, formula=formula, only_if=only_if, source="wood-handbook-heat",
    )  # fmt: skip


_area: tuple[Work, ...] = (
    Limit(
        holds="thickness_after <= piece_thickness", blames="thickness_after",
        source="common-practice",
        otherwise="{thickness_after} is thicker than the {piece_thickness} it has: thinning adds "
        "nothing",
        allowed="at most {piece_thickness}",
    ),
    Step(
        name="area", label="Area of one piece", symbol="A", unit="cm2", decimals=1,
        only_if="shape == 'board'", formula="piece_length * piece_width / mm2_per_cm2",
        source="plane-geometry",
    ),
    Step(
        name="area", label="Area of one piece", symbol="A", unit="cm2", decimals=1,
        only_if="shape == 'outline'", formula="plate_area", source="plane-geometry",
    ),
    Step(
        name="area", label="Area of one piece", symbol="A", unit="cm2", decimals=1,
        only_if="shape == 'template'", formula="template_mass / square_mass * square_area",
        source="common-practice",
    ),
    Step(
        name=BOUND, label="Moisture that swells the wood, up to fibre saturation", symbol="x_b",
        unit="%", decimals=1, formula="min(wood_moisture, fibre_saturation)",
        source="wood-handbook-heat",
    ),
)  # fmt: skip

_gravity: tuple[Work, ...] = (
    Solved(
        name="look_up", label="The table's specific gravity", function=look_up, only_if=TABLE,
        gives=(
            Given(name="table_gravity", label="Specific gravity", symbol="G_t", unit="1",
                  decimals=2),
            Given(name="table_basis", label="Basis", unit="1", decimals=0, text=True),
        ),
        method="Looked up: over green volume where the table prints it, else over volume at 12 %.",
        source="wood-handbook-gravity",
    ),
    _green("table_gravity", f"{TABLE} and table_basis == 'over green volume'"),
    _green(_to_green("table_gravity", "twelve"),
           f"{TABLE} and table_basis != 'over green volume'"),
    _green("basic_gravity", "gravity_from == 'green'"),
    _green(_to_green("gravity_12", "twelve"), "gravity_from == 'twelve'"),
    Step(
        name="gravity_now", label="Specific gravity at its moisture now", symbol="G_x", unit="1",
        decimals=4, only_if=UNWEIGHED, formula=AT_MOISTURE, source="wood-handbook-heat",
    ),
    Step(
        name="density", label="Density now, with its water", symbol="ρ", unit="kg/m3", decimals=0,
        only_if=UNWEIGHED, formula=DENSITY.replace("wood_gravity", "gravity_now"),
        source="wood-handbook-heat",
    ),
    Step(
        name="density", label="Density now, with its water", symbol="ρ", unit="kg/m3", decimals=0,
        only_if=WEIGHED, formula="board_mass * units_per_gram / (area * piece_thickness)",
        source="plane-geometry",
    ),
    Step(
        name="gravity_now", label="Specific gravity at its moisture now", symbol="G_x", unit="1",
        decimals=4, only_if=WEIGHED,
        formula="density / (water_density * (1 + wood_moisture / whole))",
        source="wood-handbook-heat",
    ),
    _green(_to_green("gravity_now", BOUND), WEIGHED),
    Limit(
        holds="0.05 <= gravity_green <= 1.3", blames="board_mass", only_if=WEIGHED,
        source="wood-handbook-gravity",
        otherwise="Weight and size make a specific gravity of {gravity_green}, which no wood has; "
        "look over the weight, the size and the moisture",
        allowed="weight and size of a piece of wood",
    ),
    Step(
        name="most_moisture", label="The most water this wood can hold", symbol="x_m", unit="%",
        decimals=0, formula=MOST_MOISTURE, source="wood-handbook-heat",
    ),
    Limit(
        holds="wood_moisture <= most_moisture", blames="wood_moisture",
        source="wood-handbook-heat",
        otherwise="Wood of this gravity is full of water at {most_moisture}; look over the "
        "moisture content",
        allowed="at most {most_moisture}",
    ),
    Step(
        name="gravity_at_12", label="Specific gravity at 12 %", symbol="G_12", unit="1",
        decimals=4, source="wood-handbook-heat",
        formula=AT_MOISTURE.replace(BOUND, "twelve"),
    ),
    Step(
        name="density_at_12", label="Density at 12 %, to compare with others", symbol="ρ_12",
        unit="kg/m3", decimals=0, source="wood-handbook-heat",
        formula=DENSITY.replace("wood_gravity", "gravity_at_12").replace("wood_moisture",
                                                                         "twelve"),
    ),
)  # fmt: skip

_mass: tuple[Work, ...] = (
    Step(
        name="piece_mass", label="One piece weighs", symbol="m_1", unit="g", decimals=1,
        formula="density * area * piece_thickness / units_per_gram", source="plane-geometry",
    ),
    Step(
        name="mass", label="All pieces weigh", symbol="m", unit="g", decimals=1,
        formula="piece_mass * pieces", source="plane-geometry",
    ),
    Step(
        name="mass_low", label="A light board of this wood would make", symbol="m_l", unit="g",
        decimals=1, only_if=TABLE, formula="mass * (1 - gravity_spread / whole)",
        source="wood-handbook-gravity",
    ),
    Step(
        name="mass_high", label="A heavy one", symbol="m_h", unit="g", decimals=1, only_if=TABLE,
        formula="mass * (1 + gravity_spread / whole)", source="wood-handbook-gravity",
    ),
    Step(
        name="dry_mass", label="Dry wood in it", symbol="m_o", unit="g", decimals=1,
        formula="mass / (1 + wood_moisture / whole)", source="wood-handbook-heat",
    ),
    Step(
        name="water_mass", label="Water in it", symbol="m_w", unit="g", decimals=1,
        formula="mass - dry_mass", source="wood-handbook-heat",
    ),
    Step(
        name="mass_after", label="All pieces, thinned", symbol="m_2", unit="g", decimals=1,
        formula="mass * (thickness_after / piece_thickness)", source="plane-geometry",
    ),
    Step(
        name="saved", label="Thinning takes off", symbol="Δm", unit="g", decimals=1,
        formula="mass - mass_after", source="plane-geometry",
    ),
    Step(
        name="tenth_mass", label="Each tenth of a millimetre takes off", symbol="m_z", unit="g",
        decimals=2, formula="mass * tenth / piece_thickness", source="plane-geometry",
    ),
    Said(
        name="verdict", label="Weight",
        cases=(
            ("saved == 0 and pieces == 1", "It weighs {mass}, at {density}."),
            ("saved == 0", "Together they weigh {mass}, {piece_mass} each, at {density}."),
            ("pieces == 1", "It weighs {mass}; thinned to {thickness_after}, {mass_after}."),
            ("", "Together they weigh {mass}, {piece_mass} each; thinned to {thickness_after}, "
             "{mass_after}."),
        ),
    ),
    Said(
        name="gravity_words", label="How heavy the wood is",
        cases=(
            (TABLE, "Specific gravity {table_gravity} {table_basis}, a mean of the species; "
             "boards lie {gravity_spread} either side, {mass_low} to {mass_high}."),
            (WEIGHED, "By its weight {density} now; at 12 % it would be {density_at_12}."),
            ("gravity_from == 'green'",
             "{basic_gravity} over green volume is {gravity_now} at the moisture now."),
            ("", "{gravity_12} at 12 % is {gravity_green} over green volume, {gravity_now} now."),
        ),
    ),
)  # fmt: skip

work: tuple[Work, ...] = (*_area, *_gravity, *_mass)
