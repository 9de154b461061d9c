"""The worked steps of the brace calculation: the section, the shaving, the knives."""

from ..engine.declaration import Constant, Given, Limit, Said, Solved, Step, Work
from ._brace_solved import carved_deflection, section_at_load
from ._plates_shared import (
    BEAMS,
    COMPOSITE,
    KN_MM2,
    MM2_PER_M2,
    MODULUS_AT_ANGLE,
    ORTHOTROPIC,
    WHOLE,
    WOOD_RATIOS,
    WOOD_TABLES,
    brace_modulus_of,
    plate_elastic,
    shape_shares,
)

LEVEL, CARVED = "brace_profile == 'level'", "brace_profile == 'carved'"
GLUED, PRACTICE = COMPOSITE.id, "common-practice"

CONSTANTS = (
    WHOLE,
    KN_MM2,
    MM2_PER_M2,
    Constant(name="tenth", label="One tenth", symbol="0.1", unit="mm", decimals=1, value=0.1,
             source=PRACTICE),
    Constant(name="gravity", label="Standard gravity", symbol="g", unit="m/s^2", decimals=5,
             value=9.80665, source=BEAMS.id),
)  # fmt: skip


def _plain(name: str, label: str, symbol: str, decimals: int = 3) -> Given:
    return Given(name=name, label=label, symbol=symbol, unit="1", decimals=decimals)


def _plate_kn(name: str, which: str, symbol: str, plate: str) -> Step:
    return Step(
        name=name, label=f"Modulus times area of the plate{which}", symbol=symbol, unit="kN",
        decimals=1, formula=f"plate_gpa * strip_width * {plate}", source=GLUED,
    )  # fmt: skip


def _stiffness(
    suffix: str, which: str, mark: str, height: str, plate: str, plate_kn: str
) -> tuple[Work, ...]:
    """Brace and strip as one beam, at a height of the brace and a thickness of the plate."""
    return (
        Step(
            name=f"brace_alone_{suffix}", label=f"Brace alone, {which}", symbol=f"B_{mark}",
            unit="N.m2", decimals=2, source=GLUED,
            formula=f"brace_gpa * inertia_share * brace_width * {height} ** 3 / kn_mm2",
        ),
        Step(
            name=f"brace_kn_{suffix}", label=f"Modulus times area of the brace, {which}",
            symbol=f"A_{mark}", unit="kN", decimals=1, source=GLUED,
            formula=f"brace_gpa * area_share * brace_width * {height}",
        ),
        Step(
            name=f"lever_{suffix}", label=f"Middle of the plate to centroid of the brace, {which}",
            symbol=f"d_{mark}", unit="mm", decimals=2, source=GLUED,
            formula=f"{plate} / 2 + centroid_share * {height}",
        ),
        Step(
            name=f"stiffness_{suffix}", label=f"Strip with brace, {which}", symbol=f"EI_{mark}",
            unit="N.m2", decimals=1, source=GLUED,
            formula=f"{plate_kn} * {plate} ** 2 / 12 / kn_mm2 + brace_alone_{suffix} + "
            f"lever_{suffix} ** 2 * {plate_kn} * brace_kn_{suffix} / "
            f"({plate_kn} + brace_kn_{suffix}) / kn_mm2",
        ),
    )  # fmt: skip


section: tuple[Work, ...] = (
    Limit(
        holds="strip_width >= brace_width", blames="strip_width", source=PRACTICE,
        otherwise="The strip of plate would be narrower than the brace on it; give the plate that "
        "goes with this brace, up to halfway to the next one",
        allowed="at least the width of the brace, {brace_width}",
    ),
    Limit(
        holds="load_place < span", blames="load_place", source=PRACTICE,
        otherwise="The weight would hang beyond the second knife; put it between the two",
        allowed="less than {span}",
    ),
    Limit(
        holds="brace_height_after <= brace_height", blames="brace_height_after", only_if=LEVEL,
        source=PRACTICE, allowed="at most {brace_height}",
        otherwise="Shaving cannot make a brace higher; give the height that is to be left",
    ),
    Limit(
        holds="plate_modulus_across <= plate_modulus_along", blames="plate_modulus_across",
        only_if="plate_wood == 'own'", source=WOOD_RATIOS.id,
        otherwise="No wood is stiffer across the grain than along it; look whether the two figures "
        "have changed places",
        allowed="at most the modulus along the grain",
    ),
    Solved(
        name="section_at_load", label="The section looked at", function=section_at_load,
        gives=(
            Given(name="section_now", label="Height now", symbol="h_1", unit="mm", decimals=1),
            Given(name="section_after", label="Height after", symbol="h_2", unit="mm", decimals=1),
        ),
        method="The one height of a level brace; of a carved one, the height where the weight "
        "hangs, straight between the places given.",
        source=PRACTICE,
    ),
    Solved(
        name="brace_modulus_of", label="Wood of the brace", function=brace_modulus_of,
        gives=(Given(name="brace_gpa", label="Modulus along the brace", symbol="E_b", unit="GPa",
                     decimals=2),),
        method="The printed mean of the species, or the figure given.", source=WOOD_TABLES.id,
    ),
    Solved(
        name="plate_elastic", label="Wood of the plate", function=plate_elastic,
        gives=(
            Given(name="plate_along", label="Modulus along the grain", symbol="E_L", unit="GPa",
                  decimals=2),
            _plain("radial_ratio", "Modulus across over along, quartersawn", "r"),
            _plain("shear_ratio", "Shear modulus over modulus along", "g"),
            _plain("poisson", "Poisson's ratio", "ν"),
        ),
        method="Printed means of the species. A measured plate takes its own two moduli; for shear "
        "a sixteenth of the modulus along, and Poisson's ratio of Sitka spruce.",
        source=WOOD_RATIOS.id,
    ),
    Step(
        name="plate_gpa", label="Modulus of the plate in the direction of the brace", symbol="E_p",
        unit="GPa", decimals=2, formula=MODULUS_AT_ANGLE, source=ORTHOTROPIC.id,
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
        name="plate_alone", label="Strip of plate alone", symbol="EI_p", unit="N.m2", decimals=2,
        formula="plate_gpa * strip_width * plate_thickness ** 3 / 12 / kn_mm2", source=GLUED,
    ),
    _plate_kn("plate_kn", "", "A_p", "plate_thickness"),
    *_stiffness("now", "now", "1", "section_now", "plate_thickness", "plate_kn"),
    *_stiffness("after", "after", "2", "section_after", "plate_thickness", "plate_kn"),
    Step(
        name="axis_now", label="Line of no strain, from the outer face of the plate, now",
        symbol="z_1", unit="mm", decimals=2, source=GLUED,
        formula="plate_thickness / 2 + lever_now * brace_kn_now / "
        "(brace_kn_now + plate_kn)",
    ),
    Step(
        name="share_left", label="Stiffness left of the strip with its brace", symbol="s",
        unit="%", decimals=0, formula="stiffness_after / stiffness_now * whole", source=GLUED,
    ),
    Step(
        name="brace_share_left", label="Stiffness left of the brace alone", symbol="s_b",
        unit="%", decimals=0, formula="brace_alone_after / brace_alone_now * whole", source=GLUED,
    ),
    Step(
        name="times_plate", label="Strip with brace, after, beside the plate alone", symbol="n",
        unit="1", decimals=0, formula="stiffness_after / plate_alone", source=GLUED,
    ),
)  # fmt: skip

tenths: tuple[Work, ...] = (
    *_stiffness(
        "less", "a tenth lower", "3", "(section_now - tenth)", "plate_thickness", "plate_kn"
    ),
    Step(
        name="height_tenth",
        label="0.1 mm off the brace takes",
        symbol="p_b",
        unit="%",
        decimals=1,
        formula="(1 - stiffness_less / stiffness_now) * whole",
        source=GLUED,
    ),
    _plate_kn("plate_kn_thin", ", a tenth thinner", "A_q", "(plate_thickness - tenth)"),
    *_stiffness(
        "thin",
        "plate a tenth thinner",
        "4",
        "section_now",
        "(plate_thickness - tenth)",
        "plate_kn_thin",
    ),
    Step(
        name="plate_tenth",
        label="0.1 mm off the plate takes",
        symbol="p_p",
        unit="%",
        decimals=1,
        formula="(1 - stiffness_thin / stiffness_now) * whole",
        source=GLUED,
    ),
    Step(
        name="bare_tenth",
        label="0.1 mm off the plate takes, of the bare plate",
        symbol="p_0",
        unit="%",
        decimals=1,
        source=GLUED,
        formula="(1 - (1 - tenth / plate_thickness) ** 3) * whole",
    ),
)


def _level(suffix: str, which: str) -> Step:
    return Step(
        name=f"deflection_{suffix}", label=f"Give under the weight, {which}",
        symbol="y_1" if suffix == "now" else "y_2", unit="mm", decimals=2, only_if=LEVEL,
        source=BEAMS.id,
        formula="load * (load_place * (span - load_place)) ** 2 / "
        f"(3 * stiffness_{suffix} * mm2_per_m2 * span)",
    )  # fmt: skip


def _equal(suffix: str, which: str) -> Step:
    return Step(
        name=f"equal_{suffix}", label=f"Gives as much as a level brace of, {which}",
        symbol="EI_e1" if suffix == "now" else "EI_e2", unit="N.m2", decimals=1, only_if=CARVED,
        source=BEAMS.id,
        formula="load * (load_place * (span - load_place)) ** 2 / "
        f"(3 * deflection_{suffix} * mm2_per_m2 * span)",
    )  # fmt: skip


knives: tuple[Work, ...] = (
    Step(
        name="load",
        label="Force of the weight",
        symbol="F",
        unit="N",
        decimals=2,
        formula="knife_load * gravity",
        source=BEAMS.id,
    ),
    _level("now", "now"),
    _level("after", "after"),
    Solved(
        name="carved_deflection",
        label="The carved brace on the knives",
        function=carved_deflection,
        only_if=CARVED,
        gives=(
            Given(
                name="deflection_now",
                label="Give under the weight, now",
                symbol="y_1",
                unit="mm",
                decimals=2,
            ),
            Given(
                name="deflection_after",
                label="Give under the weight, after",
                symbol="y_2",
                unit="mm",
                decimals=2,
            ),
        ),
        method="Moment squared over the stiffness of each section, summed along the span "
        "(Castigliano), by Gauss's rule between the places given.",
        source=BEAMS.id,
    ),
    _equal("now", "now"),
    _equal("after", "after"),
    Step(
        name="knife_share",
        label="Stiffness left on the knives",
        symbol="s_k",
        unit="%",
        decimals=0,
        formula="deflection_now / deflection_after * whole",
        source=BEAMS.id,
    ),
    Limit(
        holds="deflection_after <= span / 10",
        blames="knife_load",
        source=BEAMS.id,
        otherwise="This weight would bend the strip by {deflection_after}, and these formulas are "
        "for small bends; take a lighter weight or a shorter span",
        allowed="a weight that bends the strip by less than a tenth of the span",
    ),
)

said: tuple[Work, ...] = (
    Said(
        name="answer", label="What the shaving leaves",
        cases=(
            (CARVED,
             "Carved like this, {knife_share} of the stiffness on the knives is left: "
             "{deflection_now} of give now, {deflection_after} after."),
            ("section_after == section_now",
             "Nothing is shaved here: {section_now} high, {stiffness_now} with its strip of plate. "
             "The first 0.1 mm will take {height_tenth}."),
            ("", "From {section_now} down to {section_after} leaves {share_left} of the stiffness "
             "of brace and plate ({stiffness_now} now, {stiffness_after} after)."),
        ),
    ),
)  # fmt: skip

WORK: tuple[Work, ...] = (*section, *tenths, *knives, *said)
