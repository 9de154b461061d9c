"""The worked steps of the top's calculation: couple, strip, bend, stress, and their spread."""

from ..engine.declaration import Constant, Given, Limit, Said, Solved, Source, Step, Work
from ._plates_shared import (
    BEAMS,
    COMPOSITE,
    KN_MM2,
    MODULUS_AT_ANGLE,
    ORTHOTROPIC,
    WHOLE,
    WOOD_RATIOS,
    WOOD_TABLES,
    brace_modulus_of,
    plate_elastic,
    shape_shares,
)
from ._top_solved import bent_top, brace_strength_of, plate_strength_of

GLUED, PRACTICE = COMPOSITE.id, "common-practice"

SKEW = Source(
    id="skew-brace",
    title="A brace at an angle to the bend: its share goes with the cube of the cosine",
    kind="published",
    note="Strain energy: a bend κ along the strings is κ·cos²φ along the brace, and a length dx of "
    "strip holds dx/cosφ of brace. Worked out here from the definitions.",
)
TIME = Source(
    id="wood-under-long-load",
    title="Wood Handbook: creep, and strength under loads of years",
    author="USDA Forest Products Laboratory",
    year="2010",
    note="Figures from memory, not confirmed: change them where you know better.",
)
CONSTANTS = (
    WHOLE,
    KN_MM2,
    Constant(name="mm_per_m", label="Millimetres in a metre", unit="mm/m", decimals=0, value=1000,
             source=BEAMS.id),
)  # fmt: skip


def _plain(name: str, label: str, symbol: str, decimals: int = 3) -> Given:
    return Given(name=name, label=label, symbol=symbol, unit="1", decimals=decimals)


def _mm(name: str, label: str, symbol: str, decimals: int = 2) -> Given:
    return Given(name=name, label=label, symbol=symbol, unit="mm", decimals=decimals)


# fmt: off
limits: tuple[Work, ...] = (
    Limit(
        holds="bridge_place < span", blames="bridge_place", source=PRACTICE,
        otherwise="The saddle would lie beyond the end block; measure both from the upper brace",
        allowed="less than {span}",
    ),
    Limit(
        holds="strip_width >= brace_width", blames="strip_width", source=PRACTICE,
        otherwise="The strip of plate would be narrower than the brace on it",
        allowed="at least the width of a brace, {brace_width}",
    ),
    Limit(
        holds="brace_count * strip_width <= top_width", blames="top_width", source=PRACTICE,
        otherwise="The strips of {brace_count} braces, {strip_width} each, do not find room side "
        "by side; give narrower strips or more width",
        allowed="a width that holds all the strips",
    ),
    Limit(
        holds="plate_modulus_across <= plate_modulus_along", blames="plate_modulus_across",
        only_if="plate_wood == 'own'", source=WOOD_RATIOS.id,
        otherwise="No wood is stiffer across the grain than along it; look whether the two figures "
        "have changed places",
        allowed="at most the modulus along the grain",
    ),
    Limit(
        holds="creep_least <= creep_most", blames="creep_most", source=TIME.id,
        otherwise="The most that settling adds is less than the least; look over the two",
        allowed="at least {creep_least}",
    ),
    Limit(
        holds="rise_least < rise_most", blames="rise_most", source=PRACTICE,
        otherwise="Your mark for too weak lies below the one for too stiff; look over the two",
        allowed="more than {rise_least}",
    ),
)

strip: tuple[Work, ...] = (
    Step(
        name="couple", label="Couple of the strings on the top", symbol="C", unit="N.m",
        decimals=2, source=PRACTICE,
        formula="string_tension * (bridge_thickness + saddle_height + top_thickness / 2) "
        "/ mm_per_m",
    ),
    Solved(
        name="plate_elastic", label="Wood of the top", function=plate_elastic,
        gives=(
            Given(name="plate_along", label="Modulus along the grain", symbol="E_L", unit="GPa",
                  decimals=2),
            _plain("radial_ratio", "Modulus across over along, quartersawn", "r"),
            _plain("shear_ratio", "Shear modulus over modulus along", "g"),
            _plain("poisson", "Poisson's ratio", "ν"),
        ),
        method="Printed means of the species. A measured top takes its own two moduli; for shear a "
        "sixteenth of the modulus along, and Poisson's ratio of Sitka spruce.",
        source=WOOD_RATIOS.id,
    ),
    Solved(
        name="brace_modulus_of", label="Wood of the braces", function=brace_modulus_of,
        gives=(Given(name="brace_gpa", label="Modulus along the brace", symbol="E_b", unit="GPa",
                     decimals=2),),
        method="The printed mean of the species, or the figure given.", source=WOOD_TABLES.id,
    ),
    Solved(
        name="shape_shares", label="The section as shares of width and height",
        function=shape_shares,
        gives=(
            _plain("area_share", "Area over b·h", "k_A", 4),
            _plain("centroid_share", "Centroid over h", "k_c", 4),
            _plain("inertia_share", "Second moment over b·h³", "k_I", 5),
        ),
        method="Rectangle 1, 1/2, 1/12; triangle 1/2, 1/3, 1/36; parabola 2/3, 2/5, 8/175.",
        source=GLUED,
    ),
    Step(
        name="plate_gpa", label="Modulus of the top in the direction of a brace", symbol="E_p",
        unit="GPa", decimals=2, source=ORTHOTROPIC.id,
        formula=MODULUS_AT_ANGLE.replace("grain_angle", "brace_angle"),
    ),
    Step(
        name="brace_kn", label="Modulus times area of a brace", symbol="A_b", unit="kN",
        decimals=1, formula="brace_gpa * area_share * brace_width * brace_height", source=GLUED,
    ),
    Step(
        name="plate_kn", label="Modulus times area of its strip of plate", symbol="A_p",
        unit="kN", decimals=1, formula="plate_gpa * strip_width * top_thickness", source=GLUED,
    ),
    Step(
        name="lever", label="Middle of the plate to centroid of the brace", symbol="d",
        unit="mm", decimals=2, formula="top_thickness / 2 + centroid_share * brace_height",
        source=GLUED,
    ),
    Step(
        name="added", label="What one brace adds to its strip, along the brace", symbol="D",
        unit="N.m2", decimals=2, source=GLUED,
        formula="brace_gpa * inertia_share * brace_width * brace_height ** 3 / kn_mm2 + "
        "lever ** 2 * plate_kn * brace_kn / (plate_kn + brace_kn) / kn_mm2",
    ),
    Step(
        name="lean_share", label="Share of it that works along the strings", symbol="k", unit="%",
        decimals=0, formula="cos(brace_angle) ** 3 * whole", source=SKEW.id,
    ),
    Step(
        name="plate_part", label="Stiffness of the bare top over its width", symbol="EI_p",
        unit="N.m2", decimals=2, source=GLUED,
        formula="plate_along * top_width * top_thickness ** 3 / 12 / kn_mm2",
    ),
    Step(
        name="stiffness", label="Stiffness of the braced top along the strings", symbol="EI",
        unit="N.m2", decimals=1, source=SKEW.id,
        formula="held_times * (plate_part + brace_count * added * lean_share / whole)",
    ),
    Step(
        name="axis", label="Line of no strain, from the outer face", symbol="z", unit="mm",
        decimals=2, formula="top_thickness / 2 + lever * brace_kn / (brace_kn + plate_kn)",
        source=GLUED,
    ),
    Solved(
        name="bent_top", label="The strip under the couple", function=bent_top,
        gives=(
            Given(name="turn", label="The bridge turns by, first minute", symbol="α", unit="deg",
                  decimals=2),
            _mm("rise", "The top rises behind the bridge by, first minute", "y_r"),
            _mm("rise_at", "Highest place, from the upper brace", "x_r", 0),
            _mm("sink", "The top sinks before the bridge by, first minute", "y_s"),
            _mm("sink_at", "Deepest place, from the upper brace", "x_s", 0),
            Given(name="moment", label="Greatest moment in the strip", symbol="M", unit="N.m",
                  decimals=2),
        ),
        method="A beam of even stiffness between two supports, bent by a couple at the bridge: a "
        "cubic on either side with equal deflection, slope and shear at the couple; its highest "
        "and deepest places where the slope is zero.",
        source=BEAMS.id,
    ),
    Limit(
        holds="turn <= 6", blames="brace_height", source=BEAMS.id,
        otherwise="The bridge would turn by {turn}; these formulas are for small bends, and no top "
        "stands that. Look over heights, widths and the pull",
        allowed="a top in which the bridge turns by 6 degrees at most",
    ),
)

spread: tuple[Work, ...] = (
    *(
        Step(
            name=f"{name}_{end}", label=f"{label}, {words}", symbol=f"{symbol}{mark}", unit=unit,
            decimals=decimals, source=TIME.id,
            formula=f"{name} * creep_{creep} / (1 {sign} modulus_spread / whole)",
        )
        for name, label, symbol, unit, decimals in (
            ("rise", "Settled, the top rises behind the bridge", "y_r", "mm", 2),
            ("sink", "Settled, the top sinks before the bridge", "y_s", "mm", 2),
            ("turn", "Settled, the bridge turns", "α", "deg", 1),
        )
        for end, words, mark, creep, sign in (
            ("low", "from", "1", "least", "+"), ("high", "to", "2", "most", "-"),
        )
    ),
    Step(
        name="radius", label="Radius of the bend where the moment is greatest", symbol="R",
        unit="m", decimals=2, formula="stiffness / moment", source=BEAMS.id,
    ),
    Step(
        name="brace_stress", label="Stress in the ridge of a brace", symbol="σ_b", unit="MPa",
        decimals=1, source=SKEW.id,
        formula="brace_gpa * (top_thickness + brace_height - axis) * cos(brace_angle) ** 2 "
        "/ radius",
    ),
    Step(
        name="plate_stress", label="Stress in the outer face of the top, at most", symbol="σ_p",
        unit="MPa", decimals=1, formula="plate_along * axis / radius", source=GLUED,
    ),
    Solved(
        name="strength_of_brace", label="Strength of the braces", function=brace_strength_of,
        gives=(Given(name="brace_mpa", label="Bending strength, short test", symbol="f_b",
                     unit="MPa", decimals=1),),
        method="The printed mean of the species, or the figure given.", source=WOOD_TABLES.id,
    ),
    Solved(
        name="strength_of_top", label="Strength of the top", function=plate_strength_of,
        gives=(Given(name="plate_mpa", label="Bending strength, short test", symbol="f_p",
                     unit="MPa", decimals=1),),
        method="The printed mean of the species, or the figure given.", source=WOOD_TABLES.id,
    ),
    *(
        Step(
            name=f"{part}_bears_{end}", label=f"{of} bears for years, {words}",
            symbol=f"{symbol}{mark}", unit="MPa", decimals=1, source=TIME.id,
            formula=f"{part}_mpa * (1 {sign} strength_spread / whole) * long_share / whole",
        )
        for part, of, symbol in (("brace", "A brace", "g_b"), ("plate", "The top", "g_p"))
        for end, words, mark, sign in (("low", "from", "1", "-"), ("high", "to", "2", "+"))
    ),
    *(
        Step(
            name=f"safety_{end}", label=f"Strength over stress, the weaker of brace and top, {words}",
            symbol=f"S_{mark}", unit="1", decimals=1, source=TIME.id,
            formula=f"min(brace_bears_{end} / brace_stress, plate_bears_{end} / plate_stress)",
        )
        for end, words, mark in (("low", "from", "1"), ("high", "to", "2"))
    ),
)

RANGE = "Settled, the top may rise by {rise_low} to {rise_high} behind the bridge"
MARKS = "Your marks are {rise_least} and {rise_most}"
JIG = "This is a range and no verdict: the jig and the top of the last instrument decide."
said: tuple[Work, ...] = (
    Said(
        name="answer", label="Between too stiff and too weak",
        cases=(
            ("rise < 0.01",
             "The bridge stands so far back that nothing rises behind it: the top only sinks, "
             f"settled by {{sink_low}} to {{sink_high}}, before it. {JIG}"),
            ("rise_low < rise_least and rise_high > rise_most",
             f"{RANGE}: past both marks. {MARKS}. These figures cannot tell. {JIG}"),
            ("rise_low > rise_most",
             f"{RANGE}: all of it above your mark for too weak. {MARKS}. {JIG}"),
            ("rise_high > rise_most",
             f"{RANGE}, and part of that lies above your mark for too weak. {MARKS}. {JIG}"),
            ("rise_high < rise_least",
             f"{RANGE}: all of it below your mark for too stiff. {MARKS}. {JIG}"),
            ("rise_low < rise_least",
             f"{RANGE}, and part of that lies below your mark for too stiff. {MARKS}. {JIG}"),
            ("", f"{RANGE}: between your marks over the whole spread. {MARKS}. {JIG}"),
        ),
    ),
    Said(
        name="strength_words", label="Strength",
        cases=(
            ("safety_low < 1",
             "Strength over stress lies between {safety_low} and {safety_high}: at the weak end of "
             "the spread the wood would bear less than the strings ask for years. Do not build on "
             "these figures."),
            ("safety_low < 2",
             "Strength over stress lies between {safety_low} and {safety_high}: little is left at "
             "the weak end of the spread, and knots, run-out and a dry winter are not in it."),
            ("", "Strength over stress lies between {safety_low} and {safety_high}. Knots, run-out "
             "and a dry winter are not in it."),
        ),
    ),
)
# fmt: on

WORK: tuple[Work, ...] = (*limits, *strip, *spread, *said)
