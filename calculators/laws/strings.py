"""A stretched string: its pitch, its mass a metre, its pull, and what its stiffness does to it.

Lengths in mm, masses a length in g/m, frequencies in Hz, forces in N, moduli in GPa.
"""

import math

from ..engine.declaration import Source

ISO_16 = Source(
    id="iso-16",
    title="ISO 16:1975, standard tuning frequency (A4 = 440 Hz), with twelve equal semitones to the "
    "octave",
    year="1975",
    note="Frequencies from PyTuning 0.7.3, music21 10.5.1 and mpmath 1.3.0, which agree to 1e-11 Hz.",
)
MERSENNE = Source(
    id="mersenne-taylor",
    title="The law of the stretched string: T = 4·L²·f²·µ",
    author="Mersenne, M., Harmonie universelle; Taylor, B.",
    year="1636, 1713",
    note="Both named from memory; the law stands in every text of acoustics (Fletcher & Rossing, The "
    "Physics of Musical Instruments, ch. 2).",
)
YOUNG = Source(
    id="young-1952",
    title="Inharmonicity of plain wire piano strings",
    author="Young, R. W., Journal of the Acoustical Society of America 24 (3)",
    year="1952",
    note="The abstract was read: Young's modulus over density of steel wire is 25.5·10¹⁰ cm²/s² "
    "(200 GPa at 7850 kg/m³). The density of steel is from memory.",
)
FLETCHER = Source(
    id="fletcher-1964",
    title="Normal vibration frequencies of a stiff piano string",
    author="Fletcher, H., Journal of the Acoustical Society of America 36, 203",
    year="1964",
    note="B = π³·E·d⁴/(64·T·L²), as in Fletcher & Rossing, sec. 2.18; from memory, and worked "
    "figures for it were computed independently of this project.",
)
WORKED_STRINGS = Source(
    id="worked-strings",
    title="Worked examples of plain steel strings: mass, pull, stress, stiffness number",
    kind="library",
    note="Computed independently of this project, E = 203.4 GPa, 7850 kg/m³.",
)

LETTERS = {"C": 0, "D": 2, "E": 4, "F": 5, "G": 7, "A": 9, "B": 11}
SIGNS = {"": 0, "#": 1, "♯": 1, "b": -1, "♭": -1}
A4_SEMITONES = 57  # above C0


def semitones_from_a4(note: str) -> int | None:
    """How many semitones a note lies above A4 (below: minus); None where it is no note.

    A note is a letter A to G, a sharp or flat if it has one, and the number of its octave, which
    begins at C: E2, Bb3, F#4. C4 is middle C.
    """
    words = note.strip()
    letter, sign, octave = words[:1].upper(), words[1:-1], words[-1:]
    if letter not in LETTERS or sign not in SIGNS or octave not in "0123456789" or not octave:
        return None
    return LETTERS[letter] + SIGNS[sign] + 12 * int(octave) - A4_SEMITONES


def pitch_hz(semitones: float, a4_hz: float) -> float:
    """Frequency of the note so many semitones above A4, twelve equal ones to the octave.

    f = a·2^(n/12). Source: ISO 16:1975 for a = 440 Hz; the division is a definition.
    """
    return a4_hz * math.exp2(semitones / 12)


def note_hz(note: str, a4_hz: float) -> float:
    """Frequency of a note by its name; see ``semitones_from_a4`` and ``pitch_hz``."""
    semitones = semitones_from_a4(note)
    if semitones is None:
        raise ValueError(f"{note} is no note")
    return pitch_hz(semitones, a4_hz)


def cents_between(lower_hz: float, upper_hz: float) -> float:
    """Hundredths of an equal semitone from one frequency up to another: 1200·log2 of the ratio."""
    return 1200 * math.log2(upper_hz / lower_hz)


def round_mass_g_m(diameter_mm: float, density_kg_m3: float) -> float:
    """Mass a length of solid round wire: density times π·d²/4."""
    return density_kg_m3 * math.pi * diameter_mm**2 / 4 / 1000


def winding_mass_g_m(gauge_mm: float, core_mm: float, wrap_density_kg_m3: float) -> float:
    """Mass a length of one close layer of round wire wound on a round core.

    The wire is as thick as half of what gauge exceeds core, its turns touch. One turn is a helix
    of radius (core + wire)/2 that rises by one thickness of wire, so a length of string carries
    sqrt((π·(c + w))² + w²)/w lengths of wire: for flat turns the wire fills π/4 of its ring.
    Geometry alone; wire pressed into the edges of a six-sided core comes out a little heavier.
    """
    wire_mm = (gauge_mm - core_mm) / 2
    turn_mm = math.hypot(math.pi * (core_mm + wire_mm), wire_mm)
    return round_mass_g_m(wire_mm, wrap_density_kg_m3) * turn_mm / wire_mm


def tension_n(length_mm: float, frequency_hz: float, mass_g_m: float) -> float:
    """Pull of a flexible string: T = 4·L²·f²·µ (Mersenne, Taylor)."""
    return 4 * (length_mm / 1000) ** 2 * frequency_hz**2 * mass_g_m / 1000


def stress_mpa(pull_n: float, diameter_mm: float) -> float:
    """Pull over the round section that carries it."""
    return pull_n / (math.pi * diameter_mm**2 / 4)


def stiffness_number(
    modulus_gpa: float, diameter_mm: float, pull_n: float, length_mm: float
) -> float:
    """Fletcher's B of a solid round string on hinged ends: B = π³·E·d⁴/(64·T·L²).

    Its partial n lies sqrt(1 + B·n²) above n times the pitch it had without stiffness.
    """
    return math.pi**3 * modulus_gpa * 1000 * diameter_mm**4 / (64 * pull_n * length_mm**2)


def partial_sharp_cents(stiffness: float, partial: float) -> float:
    """How far partial n of a stiff string lies above n times its flexible pitch."""
    return 600 * math.log2(1 + stiffness * partial**2)


def young_cents(modulus_over_density_m2_s2: float) -> float:
    """Young's constant, cgs: a plain wire's partial n is sharp by this · n²·d²/(f²·L⁴) cents.

    (1200/ln 2)/2 · π²·(E/ρ)/64, with d and L in cm; 3.4e13 for steel (Young 1952). It is
    ``partial_sharp_cents`` for a small B, with the pull put in by Mersenne's law.
    """
    return 600 / math.log(2) * math.pi**2 * modulus_over_density_m2_s2 * 1e4 / 64


def bending_length_mm(modulus_gpa: float, diameter_mm: float, pull_n: float) -> float:
    """sqrt(E·I/T) of a solid round string: over about this length it bends at a support."""
    return math.sqrt(modulus_gpa * 1000 * math.pi * diameter_mm**4 / 64 / pull_n)
