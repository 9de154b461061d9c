"""Sources, constants and words that the calculators of plates and braces share."""

from ..engine.declaration import Constant, Source
from ..laws.braced_plate import SECTIONS
from ..laws.wood_elastic import (
    UNKNOWN_POISSON,
    UNKNOWN_SHEAR_RATIO,
    WOODS,
    modulus_gpa,
    strength_mpa,
)

WOOD_TABLES = Source(
    id="wood-handbook-5-3b",
    title="Wood Handbook, FPL-GTR-282, Tables 5-3b and 5-5b: bending strength and modulus at 12 %",
    author="USDA Forest Products Laboratory",
    year="2021",
    note="Read in a public transcription; means of clear wood. A single stick differs: coefficient "
    "of variation about 22 % for the modulus and 16 % for the strength (from memory).",
)
WOOD_RATIOS = Source(
    id="wood-handbook-5-1",
    title="Wood Handbook, FPL-GTR-190, Tables 5-1 and 5-2: elastic ratios and Poisson's ratios",
    author="USDA Forest Products Laboratory",
    year="2010",
    note="Read in a public transcription. Rosewood is not in them: black walnut stands in.",
)
COMPOSITE = Source(
    id="transformed-section",
    title="Bending of beams of two materials: the transformed section, parallel axes",
    author="Timoshenko, S., Strength of Materials, part I",
    year="1955",
    note="Textbook formula; the book is named from memory.",
)
BEAMS = Source(
    id="roark-beams",
    title="Roark's Formulas for Stress and Strain, Table 8.1: straight beams",
    author="Young, W. C., and Budynas, R. G.",
    year="2002",
    note="Case letters from memory; the formulas were worked out afresh and checked by sympy and "
    "scipy.",
)
ORTHOTROPIC = Source(
    id="orthotropic-rotation",
    title="Anisotropic Plates: the modulus of an orthotropic plate at an angle to its grain",
    author="Lekhnitskii, S. G.",
    year="1968",
    note="Textbook formula; the book is named from memory.",
)
SYMPY_BEAMS = Source(
    id="sympy-beams",
    title="sympy 1.14.0, physics.continuum_mechanics.beam",
    kind="library",
    note="Beams worked out by singularity functions, independently of this project.",
)

STRENGTHS = (
    ("sitka", "Sitka spruce"),
    ("engelmann", "Engelmann spruce"),
    ("redcedar", "Western red cedar"),
    ("mahogany", "Mahogany"),
    ("sugar maple", "Sugar maple"),
    ("rosewood", "Indian rosewood"),
)
OWN = ("own", "Measured: my own figures")
BRACE_WOODS = (*STRENGTHS[:3], STRENGTHS[3], OWN)
SHAPES = (
    ("rectangle", "Rectangle"),
    ("triangle", "Triangle, ridged"),
    ("parabola", "Parabola, rounded ridge"),
)

WHOLE = Constant(
    name="whole", label="The whole", symbol="100 %", unit="%", decimals=0, value=100,
    source=COMPOSITE.id,
)  # fmt: skip
KN_MM2 = Constant(
    name="kn_mm2", label="kN·mm² in 1 N·m²", unit="kN*mm^2/(N*m^2)", decimals=0, value=1000,
    source=COMPOSITE.id,
)  # fmt: skip
MM2_PER_M2 = Constant(
    name="mm2_per_m2", label="Square millimetres in a square metre", unit="mm^2/m^2", decimals=0,
    value=1_000_000, source=BEAMS.id,
)  # fmt: skip

# The modulus of the plate along a beam that lies at an angle to the grain (the law of
# ``wood_elastic.modulus_at_angle``, written as a step so that it is printed).
MODULUS_AT_ANGLE = (
    "plate_along / (cos(grain_angle) ** 4 + sin(grain_angle) ** 4 / radial_ratio"
    " + (1 / shear_ratio - 2 * poisson) * sin(grain_angle) ** 2 * cos(grain_angle) ** 2)"
)


def shape_shares(brace_shape: str) -> dict[str, float]:
    """Area, centroid height and second moment of a section, as shares (plain numbers)."""
    section = SECTIONS[brace_shape]
    return {
        "area_share": section.area,
        "centroid_share": section.centroid,
        "inertia_share": section.inertia,
    }


def brace_modulus_of(brace_wood: str, brace_modulus: float = 0.0) -> float:
    """Modulus of the brace along its grain, GPa: of its species, or as measured."""
    return brace_modulus if brace_wood == "own" else modulus_gpa(brace_wood)


def plate_elastic(
    plate_wood: str, plate_modulus_along: float = 0.0, plate_modulus_across: float = 0.0
) -> dict[str, float]:
    """Modulus of the plate along the grain, GPa, and its ratios (plain numbers).

    A species takes the printed ratios. A measured plate takes its own ratio across over along,
    and for shear and Poisson's ratio the stand-ins of ``laws.wood_elastic``.
    """
    if plate_wood == "own":
        return {
            "plate_along": plate_modulus_along,
            "radial_ratio": plate_modulus_across / plate_modulus_along,
            "shear_ratio": UNKNOWN_SHEAR_RATIO,
            "poisson": UNKNOWN_POISSON,
        }
    wood = WOODS[plate_wood]
    return {
        "plate_along": modulus_gpa(plate_wood),
        "radial_ratio": wood.radial_ratio,
        "shear_ratio": wood.shear_ratio,
        "poisson": wood.poisson,
    }


def strength_of(wood: str, strength: float = 0.0) -> float:
    """Bending strength, MPa: of a species, or as measured."""
    return strength if wood == "own" else strength_mpa(wood)
