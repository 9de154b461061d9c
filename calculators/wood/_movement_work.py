"""The steps of the movement calculation: moisture, width, arch, joint."""

from ..engine.declaration import Given, Limit, Said, Solved, Step, Work
from ..laws.equilibrium_moisture import EMC, SORPTION_KH, SORPTION_STEPS
from ..laws.wood_shrinkage import COEFFICIENT, FROM_GREEN, STRAIN
from ._movement_solved import flat_air, section_of, shrinkages_of, tight_air

BY_AIR = "moisture_by == 'humidity'"
BY_METER = "moisture_by == 'moisture'"
BRACED = "held == 'braced'"
FITTED = "held == 'fitted'"
ARCHED = "held == 'braced' and dish == 'arched'"
FLAT = "held == 'braced' and dish == 'flat'"
PINCHED = "held == 'fitted' and joint_gap < 0"
DAMPEST = "20"  # air of about 90 %; the humidity of damper wood is not asked


def only_by_air(step: Step) -> Step:
    """The same step, done only where the reader gives humidities."""
    return Step(**{**step.fields(), "only_if": BY_AIR})


def _emc(name: str, label: str, sign: str, humidity: str) -> tuple[Step, Step]:
    kh = f"{name}_kh"
    return (
        Step(
            name=kh, label=f"K times the humidity, {label}", symbol=f"Kh_{sign}", unit="1",
            decimals=5, only_if=BY_AIR, source="wood-handbook-moisture",
            formula=SORPTION_KH.replace("room_humidity", humidity),
        ),
        Step(
            name=name, label=f"Moisture of the wood, {label}", symbol=f"x_{sign}", unit="%",
            decimals=2, only_if=BY_AIR, formula=EMC.replace("sorption_kh", kh),
            source="wood-handbook-moisture",
        ),
    )  # fmt: skip


_moisture: tuple[Work, ...] = (
    *map(only_by_air, SORPTION_STEPS),
    *_emc("first_moisture", "then", "1", "room_humidity"),
    *_emc("later_moisture", "later", "2", "later_humidity"),
    Step(
        name="first_moisture", label="Moisture of the wood, then", symbol="x_1", unit="%",
        decimals=2, only_if=BY_METER, formula="wood_moisture", source="wood-handbook-moisture",
    ),
    Step(
        name="later_moisture", label="Moisture of the wood, later", symbol="x_2", unit="%",
        decimals=2, only_if=BY_METER, formula="later_moisture_given",
        source="wood-handbook-moisture",
    ),
)  # fmt: skip

_width: tuple[Work, ...] = (
    Solved(
        name="look_up", label="How far this wood shrinks", function=shrinkages_of,
        gives=(
            Given(name="shrinkage_radial", label="Along the rays, green to ovendry", symbol="S_R",
                  unit="%", decimals=1),
            Given(name="shrinkage_tangential", label="Along the rings, green to ovendry",
                  symbol="S_T", unit="%", decimals=1),
            Given(name="figures_from", label="Figures", unit="1", decimals=0, text=True),
        ),
        method="Looked up in the table of woods, or as given.", source="wood-handbook-shrinkage",
    ),
    Step(
        name="shrinkage", label="Across this piece, green to ovendry", symbol="S", unit="%",
        decimals=2, source="small-strain",
        formula="shrinkage_radial * sin(ring_angle) ** 2 "
        "+ shrinkage_tangential * cos(ring_angle) ** 2",
    ),
    Step(
        name="strain", label="Change across the grain", symbol="ε", unit="%", decimals=3,
        formula=STRAIN, source="wood-handbook-movement",
    ),
    Step(
        name="movement", label="Change of its width", symbol="Δb", unit="mm", decimals=2,
        formula="piece_width * strain / whole", source="wood-handbook-movement",
    ),
    Step(
        name="later_width", label="Its width later", symbol="b_2", unit="mm", decimals=2,
        formula="piece_width + movement", source="wood-handbook-movement",
    ),
    Step(
        name="table_coefficient", label="The table's coefficient, for 1 % of moisture",
        symbol="C", unit="1", decimals=5, formula=COEFFICIENT, source="wood-handbook-movement",
    ),
    Step(
        name="table_movement", label="Change of width by the coefficient", symbol="Δb_C",
        unit="mm", decimals=2, source="wood-handbook-movement",
        only_if="min(first_moisture, later_moisture) >= 6 "
        "and max(first_moisture, later_moisture) <= 14",
        formula="piece_width * table_coefficient * (later_moisture - first_moisture) / one",
    ),
    Step(
        name="from_green", label="Shrunk from green, later", symbol="S_x", unit="%", decimals=2,
        formula=FROM_GREEN, source="wood-handbook-movement",
    ),
)  # fmt: skip

_arch: tuple[Work, ...] = (
    Solved(
        name="section", label="Section of the brace", function=section_of, only_if=BRACED,
        gives=(
            Given(name="area_share", label="Area beside its rectangle", symbol="a", unit="1",
                  decimals=4),
            Given(name="centroid_share", label="Height of its centroid", symbol="c", unit="1",
                  decimals=4),
            Given(name="gyration_share", label="Second moment over area, beside the squared "
                  "height", symbol="i", unit="1", decimals=5),
        ),
        method="Properties of plane areas.", source="bimetal",
    ),
    Step(
        name="lever", label="From the middle of the plate to the middle of the brace", symbol="d",
        unit="mm", decimals=2, only_if=BRACED, source="bimetal",
        formula="plate_thickness / 2 + centroid_share * brace_height",
    ),
    Step(
        name="pull_ratio", label="Brace beside plate, how hard each is to stretch", symbol="n",
        unit="1", decimals=3, only_if=BRACED, source="bimetal",
        formula="brace_modulus * area_share * brace_width * brace_height "
        "/ (plate_modulus * strip_width * plate_thickness)",
    ),
    Step(
        name="bending_length", label="Change of the plate over change of curvature", symbol="λ",
        unit="mm", decimals=2, only_if=BRACED, source="bimetal",
        formula="lever + (plate_thickness ** 2 / 12 + pull_ratio * gyration_share "
        "* brace_height ** 2) * (1 + 1 / pull_ratio) / lever",
    ),
    Step(
        name="brace_strain", label="Change of the plate along the brace", symbol="ε_b", unit="%",
        decimals=3, only_if=BRACED, source="small-strain",
        formula="strain * sin(grain_angle) ** 2",
    ),
    Step(
        name="arch_first", label="Width over radius, then", symbol="κ_1", unit="1", decimals=5,
        only_if=ARCHED, formula="piece_width / dish_radius", source="plane-geometry",
    ),
    Step(
        name="arch_first", label="Width over radius, then", symbol="κ_1", unit="1", decimals=5,
        only_if=FLAT, formula="0", source="plane-geometry",
    ),
    Step(
        name="arch_later", label="Width over radius, later", symbol="κ_2", unit="1", decimals=5,
        only_if=BRACED, source="bimetal",
        formula="arch_first + piece_width * brace_strain / whole / bending_length",
    ),
    Limit(
        holds="abs(arch_later) <= 1", blames="brace_height", only_if=BRACED, source="bimetal",
        otherwise="The brace is so slight that the plate would roll up, and no glue joint follows "
        "that; look over brace, thickness and humidity",
        allowed="a brace that keeps the radius above the width of the plate",
    ),
    Step(
        name="crown_first", label="Crown when it was braced", symbol="c_1", unit="mm", decimals=2,
        only_if=BRACED, source="plane-geometry",
        formula="piece_width * arch_first / (4 * (1 + sqrt(1 - arch_first ** 2 / 4)))",
    ),
    Step(
        name="crown_later", label="Crown later", symbol="c_2", unit="mm", decimals=2,
        only_if=BRACED, source="plane-geometry",
        formula="piece_width * arch_later / (4 * (1 + sqrt(1 - arch_later ** 2 / 4)))",
    ),
    Step(
        name="crown_change", label="Change of the crown", symbol="Δc", unit="mm", decimals=2,
        only_if=BRACED, formula="crown_later - crown_first", source="plane-geometry",
    ),
    Step(
        name="held_back", label="Kept from the plate by the brace, on average", symbol="ε_h",
        unit="%", decimals=3, only_if=BRACED, source="bimetal",
        formula="-brace_strain * (1 - lever / bending_length) * pull_ratio / (1 + pull_ratio)",
    ),
    Step(
        name="plate_stress", label="Pull across the grain of the plate, if nothing gives",
        symbol="σ", unit="MPa", decimals=2, only_if=BRACED, source="bimetal",
        formula="plate_modulus * mpa_per_gpa * held_back / whole",
    ),
    Step(
        name="flat_moisture", label="It goes flat at a moisture of", symbol="x_f", unit="%",
        decimals=2, only_if=ARCHED, source="bimetal",
        formula="first_moisture - arch_first * bending_length / piece_width "
        "/ sin(grain_angle) ** 2 "
        "* (fibre_saturation * whole / shrinkage - fibre_saturation + first_moisture)",
    ),
    Solved(
        name="flat_in", label="The air in which it goes flat", function=flat_air,
        only_if=f"{ARCHED} and {BY_AIR} and flat_moisture > 0",
        gives=(
            Given(name="flat_humidity", label="It goes flat, then hollow, below", symbol="φ_f",
                  unit="%", decimals=0),
        ),
        method="The equation of wood and air turned round, closed in on from both sides.",
        source="wood-handbook-moisture",
    ),
)  # fmt: skip

_joint: tuple[Work, ...] = (
    Step(
        name="joint_gap", label="Gap later (below zero: pinched)", symbol="g_2", unit="mm",
        decimals=2, only_if=FITTED, formula="fit_gap - movement", source="small-strain",
    ),
    Step(
        name="squeeze", label="Squeezed across the grain by", symbol="ε_q", unit="%", decimals=3,
        only_if=PINCHED, formula="-joint_gap / later_width * whole", source="small-strain",
    ),
    Step(
        name="squeeze_pressure", label="Pressure in the joint, if nothing gives", symbol="p",
        unit="MPa", decimals=2, only_if=PINCHED, source="small-strain",
        formula="plate_modulus * mpa_per_gpa * squeeze / whole",
    ),
    Step(
        name="tight_moisture", label="It is just tight at a moisture of", symbol="x_f",
        unit="%", decimals=2, only_if=FITTED, source="small-strain",
        formula="first_moisture + fit_gap / piece_width "
        "* (fibre_saturation * whole / shrinkage - fibre_saturation + first_moisture)",
    ),
    Solved(
        name="tight_in", label="The air in which it is just tight", function=tight_air,
        only_if=f"{FITTED} and {BY_AIR} and tight_moisture < {DAMPEST}",
        gives=(
            Given(name="tight_humidity", label="It pinches above", symbol="φ_f", unit="%",
                  decimals=0),
        ),
        method="The equation of wood and air turned round, closed in on from both sides.",
        source="wood-handbook-moisture",
    ),
)  # fmt: skip

_words: tuple[Work, ...] = (
    Step(
        name="amount", label="Change of its width, either way", symbol="|Δb|", unit="mm",
        decimals=2, formula="abs(movement)", source="wood-handbook-movement",
    ),
    Said(
        name="verdict", label="What happens",
        cases=(
            ("held == 'braced' and abs(crown_change) < 0.005",
             "Nothing to speak of: the crown stays at {crown_later}."),
            ("held == 'braced' and crown_later < -0.005",
             "Hollow: the crown goes from {crown_first} to {crown_later}."),
            ("held == 'braced' and crown_change < 0",
             "It sinks: the crown goes from {crown_first} to {crown_later}, still arched."),
            (BRACED, "It rises: the crown goes from {crown_first} to {crown_later}."),
            (PINCHED, "Pinched: it wants {amount} more room and has {fit_gap}."),
            (FITTED, "Loose: the gap goes from {fit_gap} to {joint_gap}."),
            ("amount < 0.005", "It keeps its width."),
            ("movement < 0", "It shrinks by {amount}, to {later_width}."),
            ("", "It swells by {amount}, to {later_width}."),
        ),
    ),
    Said(
        name="flat_words", label="When it goes hollow", only_if=BRACED,
        cases=(
            ("dish == 'flat'",
             "Braced flat, it goes hollow as soon as the air is drier than when it was braced."),
            ("flat_moisture <= 0", "Not even in bone-dry air."),
            ("moisture_by == 'moisture'", "Below a moisture of {flat_moisture}."),
            ("", "In air below {flat_humidity}, where the wood is at {flat_moisture}."),
        ),
    ),
    Said(
        name="tight_words", label="When it pinches", only_if=FITTED,
        cases=(
            (f"tight_moisture >= {DAMPEST}", "In no air that a room has."),
            (BY_METER, "Above a moisture of {tight_moisture}."),
            ("", "In air above {tight_humidity}, where the wood is at {tight_moisture}."),
        ),
    ),
    Said(
        name="wood_words", label="The wood's figures",
        cases=(
            ("figures_from == 'own'", "Your own: {shrinkage_radial} and {shrinkage_tangential}."),
            ("species == 'mahogany'",
             "Read in the Wood Handbook's table: {shrinkage_radial} along the rays, "
             "{shrinkage_tangential} along the rings. The coefficients we remember for mahogany "
             "say some 70 % more: measure a strip of your own before you trust either."),
            ("figures_from == 'memory'",
             "From memory, not seen in the table: {shrinkage_radial} along the rays, "
             "{shrinkage_tangential} along the rings. Measure a strip of your own."),
            ("figures_from == 'coefficients'",
             "{shrinkage_radial} along the rays and {shrinkage_tangential} along the rings give "
             "the coefficients read in the Wood Handbook's table."),
            ("", "Read in the Wood Handbook's table: {shrinkage_radial} along the rays, "
             "{shrinkage_tangential} along the rings."),
        ),
    ),
)  # fmt: skip

work: tuple[Work, ...] = (*_moisture, *_width, *_arch, *_joint, *_words)
