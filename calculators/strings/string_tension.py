"""How hard the strings pull: each and all, on the bridge and along the neck."""

from ..engine.declaration import Calculator, Caution, Constant, Drawing, Number, Source
from ..laws.strings import FLETCHER, ISO_16, MERSENNE, WORKED_STRINGS, YOUNG
from ..sources import COMMON_PRACTICE
from ._string_sets import MATERIAL, STRINGS, densities, moduli, reference_pitch, string_inputs
from ._string_tension_drawings import draw_bridge, draw_pull
from ._string_tension_proof import CHECKS, DECISIONS, EXERCISES
from ._string_tension_work import tables, work

BODY, NECK = "The instrument", "The neck"
STATICS = Source(
    id="statics",
    title="Statics: the moment of a force is the force times its lever",
    note="Definition, of any school book of mechanics.",
)
HELIX = Source(
    id="scipy-helix",
    title="scipy 1.18.1, quadrature: length of a helix of touching turns",
    kind="library",
    note="Mass a metre from the length of the wire, worked out independently of this project.",
)
SI = Source(
    id="si-brochure",
    title="The International System of Units (SI Brochure), 9th edition: prefixes; standard gravity "
    "9.80665 m/s² (CGPM 1901)",
    author="BIPM",
    year="2019",
)


def _exact(name: str, label: str, unit: str, value: float, decimals: int = 0) -> Constant:
    return Constant(
        name=name, label=label, symbol="", unit=unit, decimals=decimals, value=value, source=SI.id
    )


calculator = Calculator(
    name="string-tension",
    title="String tension",
    summary="How hard each string pulls and all of them together, whether the instrument is braced "
    "for it, and how it turns the bridge and bends the neck.",
    other_words=(
        "string gauge", "heavy strings", "light strings", "how many kilos do the strings pull",
        "drop tuning", "bridge lifting", "top caving in", "mass of the string set", "inharmonicity",
        "will the string break",
    ),
    inputs=(
        *string_inputs,
        Number(
            name="scale_length", label="Scale length", symbol="L", unit="mm", decimals=1,
            lowest=250, highest=1200, example=645, group=STRINGS,
            help="Nut to saddle, as it sounds.",
        ),
        Number(
            name="design_tension", label="Pull that the instrument is braced for", symbol="T_d",
            unit="N", decimals=0, lowest=20, highest=3000, example=720, group=BODY,
            help="All strings together, from the model's papers.",
        ),
        Number(
            name="bridge_thickness", label="Bridge thickness", symbol="B_t", unit="mm", decimals=2,
            lowest=3, highest=20, example=9.5, group=BODY,
        ),
        Number(
            name="saddle_height", label="Saddle above the bridge", symbol="w", unit="mm",
            decimals=2, lowest=0.5, highest=12, example=3.5, group=BODY,
        ),
        Number(
            name="neck_thickness", label="Neck with board, halfway to the joint", symbol="t",
            unit="mm", decimals=1, lowest=10, highest=40, example=21.8, group=NECK,
        ),
        Number(
            name="fret_height", label="Fret height over the board", symbol="f_h", unit="mm",
            decimals=2, lowest=0.3, highest=2.5, example=1.05, group=NECK,
        ),
        Number(
            name="nut_height", label="String over the fret plane at the nut", symbol="h_0",
            unit="mm", decimals=2, lowest=0, highest=3, example=0.1, group=NECK,
        ),
        Number(
            name="action_bass", label="Action at the 12th, bass", symbol="A_b", unit="mm",
            decimals=2, lowest=0.5, highest=8, example=2.4, group=NECK,
        ),
        Number(
            name="action_treble", label="Action at the 12th, treble", symbol="A_t", unit="mm",
            decimals=2, lowest=0.5, highest=8, example=1.8, group=NECK,
        ),
        reference_pitch, *densities, *moduli,
        Number(
            name="cut_length", label="Strings cut to, for weighing", symbol="ℓ", unit="mm",
            decimals=0, lowest=50, highest=2000, example=800, group=MATERIAL,
            help="From the plain end, without the ball.",
        ),
    ),
    folded=(NECK, MATERIAL),
    constants=(
        _exact("mm_per_m", "Millimetres in a metre", "mm/m", 1000),
        _exact("g_per_kg", "Grams in a kilogram", "g/kg", 1000),
        _exact("mpa_per_gpa", "Megapascals in a gigapascal", "MPa/GPa", 1000),
        _exact("whole", "The whole, in per cent", "%", 100),
        _exact("gravity", "Standard gravity", "m/s**2", 9.80665, decimals=5),
    ),
    work=work,
    tables=tables,
    results=(
        "verdict", "total_tension", "against_design", "even_words", "bridge_torque", "neck_moment",
        "set_mass", "as_heavy_as", "strongest", "weakest", "spread", "bridge_arm", "design_torque",
        "neck_arm",
    ),
    aside=(
        "as_heavy_as", "strongest", "weakest", "spread", "bridge_arm", "design_torque", "neck_arm",
    ),
    drawings=(
        Drawing(name="pull", title="The pull of each string", function=draw_pull),
        Drawing(name="bridge", title="The lever at the bridge", function=draw_bridge),
    ),
    cautions=(
        Caution(
            text="Strings under tension store what they pull: eyes out of their line, safety glasses "
            "on, and slacken before you cut.",
        ),
        Caution(
            text="By the strength that music wire is remembered to have, these are past breaking: "
            "{past_names}. Do not tune them up; look over gauge, core and note.",
            only_if="past_names != ''",
        ),
        Caution(
            text="By the strength that music wire is remembered to have, these are very near to "
            "breaking: {near_names}. Do not tune them higher; believe the maker of the string.",
            only_if="near_names != ''",
        ),
        Caution(
            text="Cores of the ready sets and the densities are from memory. Two sets of the same "
            "gauges can weigh differently: cut one of each to {cut_length}, weigh them together, and "
            "compare with {set_mass}.",
        ),
    ),
    validity="The pull of a flexible string at rest; plucking adds to it for moments. A winding is taken "
    "as one layer of touching round wire on a round core: give the mass of flat, ground, doubly wound "
    "or six-sided strings as weighed. Nylon gets thinner on its way to pitch, by some per cent; "
    "gauged slack it is reckoned too heavy by as much. B counts the core alone. The neck's moment is "
    "taken about the middle of its thickness.",
    sources=(
        MERSENNE, ISO_16, FLETCHER, YOUNG, WORKED_STRINGS, HELIX, STATICS, SI, COMMON_PRACTICE,
    ),
    checks=CHECKS,
    exercises=EXERCISES,
    decisions=DECISIONS,
)  # fmt: skip
