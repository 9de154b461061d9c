"""Where the saddle's crest belongs under each string, so that pressed notes are in tune."""

from ..engine.declaration import Calculator, Caution, Constant, Drawing, Source
from ..laws.fretted_strings import MORSE, VARIESCHI_GOWER
from ..laws.strings import ISO_16
from ..sources import GEOMETRY
from ._saddle_drawings import draw_errors, draw_saddle
from ._saddle_inputs import NECK, TOUCH, inputs
from ._saddle_proof import CHECKS, DECISIONS, EXERCISES
from ._saddle_work import tables, work
from ._string_sets import MATERIAL

DERIVED = Source(
    id="derived",
    title="Derived here: an octave that is e cents off asks for S·ln 2·e/1200 of crest",
    note="From the pitch of pressed and open string, both longer by the set-back, to the first order.",
)
SCIPY = Source(
    id="scipy-fretted",
    title="scipy 1.18.1: the same string solved another way",
    kind="library",
    note="Equation of the stiff string solved for its lowest pitch with brentq, ends as springs; set-back "
    "by brentq and by least_squares on that pitch, path of the string by numpy. Written "
    "independently of the calculation.",
)
FRETS = Source(
    id="mpmath-frets",
    title="mpmath 1.3.0, arbitrary-precision arithmetic, 50 digits",
    kind="library",
    note="x = S(1 - 2^(-n/12)), worked out independently of this project.",
)

calculator = Calculator(
    name="saddle-compensation",
    title="Saddle compensation",
    summary="Where the crest of the saddle belongs under each string, how far every fret is out of tune "
    "before and after, and whether the slot as it lies can give that.",
    other_words=(
        "intonation", "set-back", "setback", "saddle slant", "out of tune at the 12th",
        "octave sharp", "compensated saddle", "nut compensation", "harmonic and fretted note",
        "first frets sharp", "bridge position",
    ),
    inputs=inputs,
    folded=(NECK, TOUCH, MATERIAL),
    constants=(
        Constant(
            name="cents_per_octave", label="Cents in an octave", symbol="", unit="cents", decimals=0,
            value=1200, source=ISO_16.id,
        ),
    ),
    work=work,
    tables=tables,
    results=(
        "verdict", "needed_treble", "needed_bass", "nut_forward", "line_treble", "line_bass", "worst_left",
        "worst_slot", "move_words", "crest_move", "worst_fret", "worst_plain", "slot_slant", "best_slant",
    ),
    aside=("worst_fret", "worst_plain", "slot_slant", "best_slant"),
    drawings=(
        Drawing(name="saddle", title="The saddle from above", function=draw_saddle),
        Drawing(name="errors", title="Along the neck", function=draw_errors),
    ),
    cautions=(
        Caution(
            text="Slacken the strings and lift them aside before you file; glasses on. Bone dust wants "
            "wet paper or extraction, and the mask that the shop's assessment names.",
        ),
        Caution(
            text="Moving the crest changes nothing about a nut that stands too high: read the gap over "
            "the first fret before you file the saddle.",
        ),
        Caution(
            text="Cores, stiffness of nylon and the finger's force are from memory until you measure "
            "yours, and the set-back goes with all three. Believe the instrument: harmonic against "
            "pressed note, two strings of two packets.",
        ),
        Caution(
            text="These crests want to stand farther from the middle of the slot than the saddle "
            "allows: {past_names}.",
            only_if="past_names != ''",
        ),
    ),
    validity="One string at rest, pressed straight down midway between two frets; a sideways pull, or a "
    "harder thumb, is sharper. The string is taken as pinched at nut and saddle: where it slides "
    "through the nut, less is needed. Windings are counted as mass, not as stiffness, so wound strings "
    "may want a little more. Frets are ideal points in their computed places, the crest a knife edge; "
    "body and top are taken as rigid. The ends of the string are the least certain of all: compare the "
    "three kinds.",
    sources=(VARIESCHI_GOWER, MORSE, SCIPY, FRETS, ISO_16, DERIVED, GEOMETRY),
    checks=CHECKS,
    exercises=EXERCISES,
    decisions=DECISIONS,
)  # fmt: skip
