"""Weights that bend a neck as the strings will, and what the rod has to do under them."""

from ..engine.declaration import Calculator, Caution, Constant, Drawing, Source
from ..laws.tapered_cantilever import BEAM_THEORY
from ..sources import COMMON_PRACTICE
from ._hung_drawings import draw_bends, draw_stand
from ._hung_inputs import LIE, SECTION, inputs
from ._hung_proof import CHECKS, DECISIONS, EXERCISES
from ._hung_work import tables, work

EQUAL_DIVISION = Source(
    id="equal-division",
    title="Places of the frets: each shortens the string by the same ratio, 2^(1/12)",
    note="A definition.",
)
WOOD_HANDBOOK_9 = Source(
    id="wood-handbook-9",
    title="Wood Handbook, FPL-GTR-282, ch. 9, table 9-1 (eq. 9-2): deflection of beams",
    author="USDA Forest Products Laboratory",
    year="2021",
    note="The table's coefficients were read in a public transcription.",
)
SYMPY = Source(
    id="sympy-beams",
    title="sympy 1.14.0, physics.continuum_mechanics.beam",
    kind="library",
    note="Worked out independently of this project.",
)
SCIPY = Source(
    id="scipy-bvp",
    title="scipy 1.18.1, solve_bvp: the tapered neck as a boundary-value problem",
    kind="library",
    note="y'' = M/(E·I) along the neck, clamped at the joint; written independently of the calculation, "
    "weights by numpy.",
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
    name="hung-weights",
    title="Hung weights",
    summary="How much to hang on a neck so that it bends as under its strings, where to hang it, and "
    "what the rod has to do afterwards.",
    other_words=(
        "truss rod weight", "how much weight on the neck", "simulated string tension", "neck relief",
        "neck stiffness", "rod turns", "back-bow", "neck bends under strings", "neck jig",
    ),
    inputs=inputs,
    folded=(LIE, SECTION),
    constants=(
        _exact("mm_per_m", "Millimetres in a metre", "mm/m", 1000),
        _exact("whole", "The whole, in per cent", "%", 100),
        _exact("gravity", "Standard gravity", "m/s**2", 9.80665, decimals=5),
    ),
    work=work,
    tables=tables,
    results=(
        "verdict", "weight_first", "sag_strings", "sag_hung", "rod_words", "bow_strings", "rod_turn",
        "worst_gap", "hung_share", "middle_moment", "hung_moment", "rule_weight", "drop_strings",
        "drop_weights", "stiffness_nut", "neck_length",
    ),
    aside=(
        "hung_share", "middle_moment", "hung_moment", "rule_weight", "drop_strings", "drop_weights",
        "stiffness_nut", "neck_length",
    ),
    drawings=(
        Drawing(name="stand", title="The neck in its stand", function=draw_stand),
        Drawing(name="bends", title="Hollow along the neck", function=draw_bends),
    ),
    cautions=(
        Caution(
            text="A tray under the weight, feet back, two hands. Nobody passes in front of a hanging "
            "weight, and the yoke is tight before it goes on.",
        ),
        Caution(
            text="Strap on the back of the neck, on leather. On the head the weight counts for more than "
            "it weighs, and a head is easily broken.",
            only_if="hang_place > 15 or (arrangement == 'two' and pair_place > 15)",
        ),
        Caution(
            text="Strings bend the neck alike everywhere, a weight at the nut bends it most at the joint: "
            "only the middle agrees. The nut drops by {drop_weights} under the weight and comes forward "
            "by {drop_strings} under strings. Read the bow, never the nut.",
            only_if="arrangement == 'one'",
        ),
        Caution(
            text="Guessed from the wood alone, without board, glue and rod, the hollows are mostly too "
            "large. The weight hardly depends on it; the hollows do.",
            only_if="stiffness_from == 'wood'",
        ),
        Caution(
            text="That is more than half a turn. Let the rod out only by what was measured on this neck, "
            "and ask before you go on.",
            only_if="abs(rod_turn) > 0.5 if rod == 'set' else 1 < 0",
        ),
    ),
    validity="A slender neck held firmly at the joint, small bends, wood that springs back: readings after "
    "the wait. Left out: the neck's own weight, which hangs there with and without; the push of the "
    "strings along the neck, which adds some per cent to the hollow; the heel and the head, taken as no "
    "stiffer than the line of the two thicknesses. The neutral axis is the least certain figure: a "
    "hundredth of the thickness there is some 2 % of the weight. Pressed strings pull a little harder than "
    "is reckoned. A rod that is tight shares the load, so its bows are scaled from readings, not "
    "computed.",
    sources=(BEAM_THEORY, WOOD_HANDBOOK_9, SYMPY, SCIPY, EQUAL_DIVISION, SI, COMMON_PRACTICE),
    checks=CHECKS,
    exercises=EXERCISES,
    decisions=DECISIONS,
)  # fmt: skip
