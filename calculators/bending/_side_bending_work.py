"""The steps of the side-bending calculation: what each curve asks and what the wood takes."""

from collections.abc import Mapping, Sequence
from typing import Any

from ..engine.declaration import Constant, Given, Limit, Refusal, Said, Solved, Step, Work
from ..laws.bent_strip import former_radius_mm

THINNEST_MM = 0.3
PSI_IN_MPA = 8896443230521 / 1290320000 / 1e6
# Modulus of rupture and of elasticity at 12 % moisture, psi as the Wood Handbook prints them
# (FPL-GTR-282, tables 5-3b and 5-5b).
PRINTED_PSI = {
    "mahogany": (11500, 1.50e6), "rosewood": (16900, 1.78e6), "brazilian": (19000, 1.88e6),
    "maple": (15800, 1.83e6), "red_maple": (13400, 1.64e6), "walnut": (14600, 1.68e6),
    "sapele": (15300, 1.82e6), "spanish_cedar": (11500, 1.44e6),
}  # fmt: skip

FREE, HELD = "slat == 'none'", "slat == 'held'"
MEASURED = "spring_trial == 'measured'"

CONSTANTS = (
    Constant(name="whole", label="The whole", symbol="100 %", unit="%", decimals=0, value=100,
             source="bent-strip"),
    Constant(name="mm_per_m", label="Millimetres in a metre", unit="mm/m", decimals=0, value=1000,
             source="bent-strip"),
)  # fmt: skip


def wood_strength(wood: str) -> Mapping[str, float]:
    """Bending strength and stiffness, MPa, of clear dry wood (12 % moisture).

    Source: Wood Handbook, tables 5-3b and 5-5b, turned from psi.
    """
    rupture, elasticity = PRINTED_PSI[wood]
    return {"rupture": rupture * PSI_IN_MPA, "elasticity": elasticity * PSI_IN_MPA}


def bends(
    places: Sequence[Mapping[str, Any]], side_thickness: float, spring: float = 0.0
) -> Mapping[str, Any]:
    """Every curve, and the one that asks most of the wood.

    Lengths in mm, ``spring`` in 1/m. The thickness is what thinning leaves; the radius to bend to
    allows for springing back (``laws.bent_strip.former_radius_mm``). Both faces are strained by
    the thickness over that radius and nothing else, so the curve of the largest ratio asks most;
    of two alike, the first.
    """
    rows = []
    for number, place in enumerate(places, start=1):
        thickness = side_thickness - place["thinned"]
        if thickness < THINNEST_MM:
            raise Refusal(
                f"places[{number}].thinned",
                f"At '{place['place']}' no side is left: thinning takes {place['thinned']:.2f} mm "
                f"off {side_thickness:.2f} mm; take less off",
                f"what leaves at least {THINNEST_MM} mm",
            )
        bent = former_radius_mm(place["radius"], spring)
        rows.append(
            {"place": place["place"], "radius": place["radius"], "thickness": thickness,
             "bent": bent}
        )  # fmt: skip
    worst = max(rows, key=lambda row: row["thickness"] / row["bent"])
    return {
        "curves": rows,
        "tight_place": worst["place"],
        "tight_radius": worst["radius"],
        "tight_thickness": worst["thickness"],
    }


_allowed: tuple[Work, ...] = (
    Solved(
        name="strength", label="The wood when dry", function=wood_strength,
        only_if="state == 'dry'",
        gives=(Given(name="rupture", label="Bending strength", symbol="σ_b", unit="MPa",
                     decimals=2),
               Given(name="elasticity", label="Stiffness along the grain", symbol="E", unit="MPa",
                     decimals=0)),
        method="Clear wood at 12 % moisture, from the tables of the Wood Handbook.",
        source="wood-handbook-strength",
    ),
    Step(
        name="allowed", label="Stretch the wood takes", symbol="ε_a", unit="%", decimals=2,
        formula="stretch_hot", only_if="state == 'hot'", source="common-practice",
    ),
    Step(
        name="allowed", label="Stretch the wood takes", symbol="ε_a", unit="%", decimals=2,
        formula="rupture / elasticity * whole", only_if="state == 'dry'",
        source="wood-handbook-strength",
    ),
    Step(
        name="break_stretch", label="Stretch at which the offcut broke", symbol="ε_b", unit="%",
        decimals=3, formula="break_thickness / (2 * break_radius + break_thickness) * whole",
        only_if="state == 'offcut'", source="bent-strip",
    ),
    Step(
        name="allowed", label="Stretch the wood takes", symbol="ε_a", unit="%", decimals=2,
        formula="break_stretch * break_share / whole", only_if="state == 'offcut'",
        source="common-practice",
    ),
    Limit(
        holds="most_shrink >= held_stretch", blames="most_shrink", only_if=HELD,
        source="common-practice",
        otherwise="Hot wood shrinks far more readily than it stretches; shrinking of "
        "{most_shrink} beside a stretch of {held_stretch} is too little to be true",
        allowed="at least {held_stretch}",
    ),
)  # fmt: skip

_spring: tuple[Work, ...] = (
    Limit(
        holds="trial_rest >= trial_former", blames="trial_rest", only_if=MEASURED,
        source="bent-strip",
        otherwise="A bend let go opens: it cannot rest tighter than the former it was bent round, "
        "{trial_former}. Measure both again",
        allowed="at least {trial_former}",
    ),
    Step(
        name="spring", label="Curvature lost when the bend is let go", symbol="k", unit="1/m",
        decimals=3, formula="mm_per_m / trial_former - mm_per_m / trial_rest", only_if=MEASURED,
        source="bent-strip",
    ),
    Solved(
        name="all_bends", label="The curve that asks most", function=bends,
        gives=(
            Given(name="curves", label="Every curve", unit="1", decimals=0, many=True, text=True),
            Given(name="tight_place", label="Tightest for its thickness", unit="1", decimals=0,
                  text=True),
            Given(name="tight_radius", label="Inside radius wanted there", symbol="R", unit="mm",
                  decimals=1),
            Given(name="tight_thickness", label="Thickness there", symbol="t", unit="mm",
                  decimals=2),
        ),
        method="Thickness over radius says how much a bend asks of both faces; the curve with the "
        "largest is worked out below, all of them stand in the table.",
        source="bent-strip",
    ),
    Step(
        name="tight_bent", label="Radius to bend it to", symbol="R'", unit="mm", decimals=2,
        formula="mm_per_m / (mm_per_m / tight_radius + spring)", only_if=MEASURED,
        source="bent-strip",
    ),
    Step(
        name="tight_bent", label="Radius to bend it to", symbol="R'", unit="mm", decimals=2,
        formula="tight_radius", only_if="spring_trial == 'none'", source="bent-strip",
    ),
)  # fmt: skip

_strain: tuple[Work, ...] = (
    Step(
        name="free_stretch", label="Stretch of the outer face, bent freely", symbol="ε_f",
        unit="%", decimals=2, source="bent-strip",
        formula="tight_thickness / (2 * tight_bent + tight_thickness) * whole",
    ),
    Step(
        name="stretch", label="Stretch of the outer face", symbol="ε_o", unit="%", decimals=2,
        formula="free_stretch", only_if=FREE, source="bent-strip",
    ),
    Step(
        name="stretch", label="Stretch of the outer face", symbol="ε_o", unit="%", decimals=2,
        formula="min(free_stretch, held_stretch)", only_if=HELD, source="bent-strip",
    ),
    Step(
        name="shrink", label="Shrinking of the inner face", symbol="ε_i", unit="%", decimals=2,
        formula="whole - (whole + stretch) * tight_bent / (tight_bent + tight_thickness)",
        source="bent-strip",
    ),
    Step(
        name="use", label="Share used of what the wood takes", symbol="u", unit="%", decimals=0,
        formula="stretch / allowed * whole", only_if=FREE, source="bent-strip",
    ),
    Step(
        name="use", label="Share used of what the wood takes", symbol="u", unit="%", decimals=0,
        formula="max(stretch / allowed, shrink / most_shrink) * whole", only_if=HELD, source="bent-strip",
    ),
    Step(
        name="thin_to", label="Thickness that would just bend there", symbol="t_m", unit="mm",
        decimals=2, formula="2 * tight_bent * allowed / (whole - allowed)", only_if=FREE,
        source="bent-strip",
    ),
    Step(
        name="thin_to", label="Thickness that would just bend there", symbol="t_m", unit="mm",
        decimals=2, only_if=HELD, source="bent-strip",
        formula="tight_bent * (held_stretch + most_shrink) / (whole - most_shrink) "
        "if held_stretch <= allowed else 2 * tight_bent * allowed / (whole - allowed)",
    ),
    Step(
        name="least_radius", label="Tightest inside radius for the thickness there",
        symbol="R_m", unit="mm", decimals=1, only_if=FREE, source="bent-strip",
        formula="tight_thickness * (whole - allowed) / (2 * allowed)",
    ),
    Step(
        name="least_radius", label="Tightest inside radius for the thickness there",
        symbol="R_m", unit="mm", decimals=1, only_if=HELD, source="bent-strip",
        formula="tight_thickness * (whole - most_shrink) / (held_stretch + most_shrink) "
        "if held_stretch <= allowed else tight_thickness * (whole - allowed) / (2 * allowed)",
    ),
    Step(
        name="stiffness_left", label="Stiffness left by thinning so far", symbol="S", unit="%",
        decimals=0, formula="(thin_to / tight_thickness) ** 3 * whole", only_if="use > 100.5",
        source="bent-strip",
    ),
)  # fmt: skip

_said: tuple[Work, ...] = (
    Said(
        name="verdict", label="The tightest bend",
        cases=(
            ("use > 100.5 and stretch > allowed",
             "Too tight, {tight_place}: {tight_thickness} bent to {tight_bent} would stretch "
             "{stretch}, and the wood takes {allowed}. Thin it to {thin_to} there, or bend no "
             "tighter than {least_radius}."),
            ("use > 100.5",
             "Too tight, {tight_place}: behind the slat the hollow face would shrink {shrink}, "
             "and it takes {most_shrink}. Thin it to {thin_to} there, or bend no tighter than "
             "{least_radius}."),
            ("use > 75 and stretch > 0.75 * allowed",
             "Just goes, {tight_place}: {stretch} of stretch, and the wood takes {allowed}. "
             "Slowly, wet, with the slat; look at the stretched face before it cools."),
            ("use > 75",
             "Just goes, {tight_place}: the hollow face shrinks {shrink}, and it takes "
             "{most_shrink}. Watch it for wrinkles."),
            (FREE,
             "Goes: the tightest is {tight_place} with {stretch} of stretch, and the wood takes "
             "{allowed}."),
            ("",
             "Goes: the tightest is {tight_place}; the slat holds the stretch to {stretch}, the "
             "hollow face shrinks {shrink} of {most_shrink}."),
        ),
    ),
    Said(
        name="spring_words", label="Springing back",
        cases=(
            ("spring_trial == 'none'",
             "Not measured: make a trial on an offcut, or go a hair past the template and let it "
             "cool in the hand."),
            ("spring < 0.0005", "None to speak of: bend to the template."),
            ("",
             "Bend {tight_place} to {tight_bent} and it opens to {tight_radius}. The other curves "
             "stand in the table."),
        ),
    ),
)  # fmt: skip

WORK: tuple[Work, ...] = (*_allowed, *_spring, *_strain, *_said)
