"""What a board or a plate weighs, dry wood and water, and what thinning takes off it."""

from ..engine.declaration import Calculator, Caution, Constant, Drawing
from ..laws.wood_gravity import WALL_GRAVITY
from ..laws.wood_heat import FIBRE_SATURATION_PERCENT, WATER_DENSITY_KG_M3
from ._weight_drawings import draw_bars, draw_density
from ._weight_inputs import SPREAD, inputs
from ._weight_proof import CHECKS, DECISIONS, EXERCISES, SOURCES
from ._weight_work import TABLE, work


def _constant(name: str, label: str, unit: str, value: float, source: str) -> Constant:
    decimals = len(f"{value:g}".partition(".")[2])
    return Constant(name=name, label=label, unit=unit, decimals=decimals, value=value,
                    source=source)  # fmt: skip


calculator = Calculator(
    name="board-weight",
    title="Weight and density of a board",
    summary="What a board or plate weighs at its moisture, from the kind of wood or from the "
    "scale; its density; and what thinning takes off.",
    other_words=(
        "how heavy is the top", "weight of wood", "density", "specific gravity", "how light",
        "mass of a plate", "weight saved", "thinning the back", "heavy back", "area of a plate",
        "water in the wood", "kg per cubic metre",
    ),
    inputs=inputs,
    folded=(SPREAD,),
    constants=(
        _constant("whole", "The whole, in per cent", "%", 100, "wood-handbook-heat"),
        _constant("twelve", "Moisture of the tables", "%", 12, "wood-handbook-gravity"),
        _constant("fibre_saturation", "Fibre saturation: wood swells up to here", "%",
                  FIBRE_SATURATION_PERCENT, "wood-handbook-heat"),
        _constant("water_density", "Density of water", "kg/m3", WATER_DENSITY_KG_M3,
                  "wood-handbook-heat"),
        _constant("wall_gravity", "Specific gravity of the cell wall", "1", WALL_GRAVITY,
                  "wood-handbook-heat"),
        _constant("mm2_per_cm2", "Square millimetres in a square centimetre", "mm**2/cm**2", 100,
                  "plane-geometry"),
        _constant("square_area", "Area of the square of card", "cm2", 100, "plane-geometry"),
        _constant("units_per_gram", "kg/m³ · cm² · mm in a gram", "kg/m**3*cm**2*mm/g", 10000,
                  "plane-geometry"),
        _constant("tenth", "A tenth of a millimetre", "mm", 0.1, "plane-geometry"),
    ),
    work=work,
    results=(
        "verdict", "mass", "piece_mass", "mass_after", "saved", "tenth_mass", "density",
        "density_at_12", "gravity_words", "area", "dry_mass", "water_mass", "mass_low",
        "mass_high", "gravity_green", "gravity_now", "gravity_at_12", "most_moisture",
    ),
    aside=(
        "area", "dry_mass", "water_mass", "mass_low", "mass_high", "gravity_green", "gravity_now",
        "gravity_at_12", "most_moisture",
    ),
    drawings=(
        Drawing(name="bars", title="Wood, water and what comes off", function=draw_bars),
        Drawing(name="density", title="Density and moisture", function=draw_density),
    ),
    cautions=(
        Caution(
            text="The table gives means of a species; this board is itself. Where the weight "
            "matters, put it on the scale and choose that.",
            only_if=TABLE,
        ),
        Caution(
            text="Ask of every gravity from a book whether it counts over green volume or over "
            "volume at 12 %: taking one for the other is 5 to 10 % off.",
            only_if="gravity_from == 'green' or gravity_from == 'twelve'",
        ),
        Caution(
            text="Above 25 kg a billet is a load for two, or for a lifting aid; your local rules "
            "may set less.",
            only_if="piece_mass > 25000",
        ),
        Caution(
            text="At {wood_moisture} there is free water in it: sizes are those of green wood, and "
            "it will shrink as it dries.",
            only_if="wood_moisture > fibre_saturation",
        ),
    ),
    validity="Sizes are those at the moisture entered. The step from one moisture to another takes "
    "the shrinkage of an average wood for its gravity; woods with much oil, gum or resin (rosewood, "
    "ebony, pitchy spruce) lie off it by some per cent. Carved, dished or hollow pieces: by their "
    "mean thickness. Glue, braces and lacquer are not counted.",
    sources=SOURCES,
    checks=CHECKS,
    exercises=EXERCISES,
    decisions=DECISIONS,
)  # fmt: skip
