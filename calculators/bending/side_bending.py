"""Bending sides: what each curve asks of the wood, how thin it has to be, what springs back."""

from ..engine.declaration import Calculator, Caution, Column, Drawing, Table
from ..laws.bent_strip import BENT_STRIP
from ..sources import COMMON_PRACTICE
from ._side_bending_drawings import draw_bars, draw_strip
from ._side_bending_inputs import FOLDED, INPUTS
from ._side_bending_proof import CHECK_SOURCES, CHECKS, DECISIONS, EXERCISES, WOOD_HANDBOOK
from ._side_bending_work import CONSTANTS, FREE, HELD, WORK

STRETCH = "thickness / (2 * bent + thickness) * whole"


def _verdict(share: str) -> str:
    """The word for a share of what the wood takes, as the headline judges it."""
    return f"'too tight' if {share} > 100.5 else 'just goes' if {share} > 75 else 'goes'"


calculator = Calculator(
    name="side-bending",
    title="Side bending",
    summary="Whether each curve of a side can be bent at its thickness, how thin it has to be, and "
    "how far past the template to go for springing back.",
    other_words=(
        "how thin must the side be", "side cracked while bending", "side broke at the waist",
        "minimum bending radius", "tight bend", "cutaway", "spring back", "springback",
        "over-bend", "bending iron", "rib bending", "binding strips will not bend",
    ),
    inputs=INPUTS,
    folded=FOLDED,
    constants=CONSTANTS,
    work=WORK,
    results=(
        "verdict", "stretch", "allowed", "thin_to", "least_radius", "tight_bent", "spring_words",
        "shrink", "use", "stiffness_left", "free_stretch", "break_stretch", "spring",
    ),
    aside=("shrink", "use", "stiffness_left", "free_stretch", "break_stretch", "spring"),
    tables=(
        Table(
            name="curves", title="Every curve", rows="curves", source="bent-strip",
            columns=(
                Column(name="place", label="Place", unit="1", decimals=0, text=True),
                Column(name="radius", label="Inside radius", symbol="R", unit="mm", decimals=1),
                Column(name="bent", label="Bend to", symbol="R'", unit="mm", decimals=1),
                Column(name="thickness", label="Thickness there", symbol="t", unit="mm",
                       decimals=2),
                Column(name="stretch", label="Stretch", unit="%", decimals=2, only_if=FREE,
                       formula=STRETCH),
                Column(name="stretch", label="Stretch", unit="%", decimals=2, only_if=HELD,
                       formula=f"min({STRETCH}, held_stretch)"),
                Column(name="shrink", label="Shrinking", unit="%", decimals=2, only_if=HELD,
                       formula="whole - (whole + stretch) * bent / (bent + thickness)"),
                Column(name="may_be", label="May be as thick as", unit="mm", decimals=2,
                       only_if=FREE, formula="2 * bent * allowed / (whole - allowed)"),
                Column(name="may_be", label="May be as thick as", unit="mm", decimals=2,
                       only_if=HELD,
                       formula="bent * (held_stretch + most_shrink) / (whole - most_shrink) if "
                       "held_stretch <= allowed else 2 * bent * allowed / (whole - allowed)"),
                Column(name="word", label="Bends?", unit="1", decimals=0, text=True, only_if=FREE,
                       formula=_verdict("stretch / allowed * 100")),
                Column(name="word", label="Bends?", unit="1", decimals=0, text=True, only_if=HELD,
                       formula=_verdict("max(stretch / allowed, shrink / most_shrink) * 100")),
            ),
            note="Radii are of the hollow face. 'Bend to' allows for springing back once a trial "
            "has been measured. Just goes: more than three quarters of what the wood takes.",
        ),
    ),
    drawings=(
        Drawing(name="strip", title="The strip at the tightest bend, not to scale",
                function=draw_strip),
        Drawing(name="bars", title="What each curve asks, against what the wood takes",
                function=draw_bars),
    ),
    cautions=(
        Caution(
            text="The iron burns and so does the steam. Glasses, hair and cuffs away, dry hands "
            "at the switch, a socket that trips on earth leakage; electrical matters follow the "
            "local code.",
        ),
        Caution(
            text="A side that breaks springs at you: stand beside it. Grain that runs out, a knot "
            "or a thin spot breaks long before these figures.",
        ),
        Caution(
            text="The {tight_place} is too tight for this side: thin it to {thin_to} there, or bend no "
            "tighter than {least_radius}.",
            only_if="use > 100.5",
        ),
        Caution(
            text="No handbook figure for wet, hot sides could be confirmed. Break an offcut of "
            "this board and trust that.",
            only_if="state == 'hot'",
        ),
        Caution(
            text="What is bent cold and dry springs right back. These figures say when it breaks, "
            "not that it stays.",
            only_if="state == 'dry'",
        ),
        Caution(
            text="A slat holds the stretch only while it is tight from end to end. A slat that "
            "slides along does not: reckon without it.",
            only_if=HELD,
        ),
        Caution(
            text="The slat lets {held_stretch} through and the wood takes {allowed}: it does not "
            "help. Tighten it until it lets less through.",
            only_if="held_stretch > allowed if slat == 'held' else 1 < 0",
        ),
        Caution(
            text="At {thin_to} little side is left. Think of a held slat, a wider curve, two thin "
            "layers, or a mitre.",
            only_if="use > 100.5 and thin_to < 1.2",
        ),
        Caution(
            text="The trial's former was far from the radius of {tight_place}: measure another "
            "trial near it.",
            only_if="tight_radius > 3 * trial_former or trial_former > 3 * tight_radius "
            "if spring_trial == 'measured' else 1 < 0",
        ),
    ),
    validity="The geometry is exact for a round bend of even thickness, the middle line keeping "
    "its length where no slat holds the outer face. Wood yields sooner on the hollow face, so the "
    "outer one stretches somewhat less than said: the error is on the safe side. What the wood "
    "takes is for straight grain; the dry figure is bending strength over stiffness of clear wood, "
    "which pieces miss by a quarter either way. Springing back holds for the wood, thickness, heat "
    "and wetting of the trial: thinner wood springs back more.",
    sources=(BENT_STRIP, WOOD_HANDBOOK, *CHECK_SOURCES, COMMON_PRACTICE),
    checks=CHECKS,
    exercises=EXERCISES,
    decisions=DECISIONS,
)  # fmt: skip
