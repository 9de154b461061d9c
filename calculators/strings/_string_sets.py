"""The strings that several calculations ask for: ready sets, the rows of a set of one's own."""

from collections.abc import Sequence
from typing import Any

from ..engine.declaration import Choice, Input, Number, Refusal, Rows, When, Words
from ..laws.strings import (
    pitch_hz,
    round_mass_g_m,
    semitones_from_a4,
    winding_mass_g_m,
)

OWN = When(choice="string_set", is_one_of=("own",))
STRINGS, MATERIAL = "Strings", "What the strings are made of"

# String, note, gauge in mm, kind, core in mm, mass in g/m (0: reckoned from the gauge).
# Gauges of common practice; cores from memory.
Row = tuple[str, str, float, str, float, float]
LIGHT: tuple[Row, ...] = (
    ("1 E", "E4", 0.305, "plain", 0, 0),
    ("2 B", "B3", 0.406, "plain", 0, 0),
    ("3 G", "G3", 0.610, "wound", 0.33, 0),
    ("4 D", "D3", 0.813, "wound", 0.36, 0),
    ("5 A", "A2", 1.067, "wound", 0.41, 0),
    ("6 E", "E2", 1.346, "wound", 0.43, 0),
)
MEDIUM: tuple[Row, ...] = (
    ("1 E", "E4", 0.330, "plain", 0, 0),
    ("2 B", "B3", 0.432, "plain", 0, 0),
    ("3 G", "G3", 0.660, "wound", 0.36, 0),
    ("4 D", "D3", 0.889, "wound", 0.38, 0),
    ("5 A", "A2", 1.143, "wound", 0.43, 0),
    ("6 E", "E2", 1.422, "wound", 0.46, 0),
)
UKULELE: tuple[Row, ...] = (
    ("1 A", "A4", 0.64, "nylon", 0, 0),
    ("2 E", "E4", 0.84, "nylon", 0, 0),
    ("3 C", "C4", 1.04, "nylon", 0, 0),
    ("4 G", "G4", 0.76, "nylon", 0, 0),
)
SETS = {"light": LIGHT, "medium": MEDIUM, "ukulele": UKULELE}
SET_WORDS = (
    ("light", "Six steel strings, light: 0.305 to 1.346 mm"),
    ("medium", "Six steel strings, medium: 0.330 to 1.422 mm"),
    ("ukulele", "Ukulele, four of nylon, high G"),
    ("own", "My own: fill in the table"),
)
KINDS = {
    "plain": "plain", "plain steel": "plain", "steel": "plain",
    "wound": "wound", "wound steel": "wound", "bronze": "wound", "nickel": "wound",
    "nylon": "nylon", "plain nylon": "nylon",
    "wound nylon": "wound nylon", "nylon wound": "wound nylon",
}  # fmt: skip
LOWEST_HZ, HIGHEST_HZ = 20.0, 1500.0
LIGHTEST_KG_M3, HEAVIEST_KG_M3 = 500.0, 10000.0  # mass over the full round of the gauge
THINNEST_WIRE_MM = 0.02

string_inputs: tuple[Input, ...] = (
    Choice(
        name="string_set", label="Set of strings", options=SET_WORDS, example="light",
        group=STRINGS,
        help="The ready sets are common gauges, tuned E A D G B E and G C E A.",
    ),
    Rows(
        name="strings", label="Strings", example=LIGHT, at_least=1, at_most=12, when=OWN,
        group=STRINGS,
        columns=(
            Words(name="string", label="String", longest=12),
            Words(name="note", label="Note", longest=4),
            Number(name="gauge", label="Gauge", unit="mm", decimals=3, lowest=0.15, highest=4,
                   example=0.406),
            Words(name="kind", label="Kind", longest=12),
            Number(name="core", label="Core", unit="mm", decimals=2, lowest=0, highest=2,
                   example=0),
            Number(name="mass", label="Weighs", unit="g/m", decimals=3, lowest=0, highest=100,
                   example=0),
        ),
        help="From the treble side. Note with its octave: E2 is a guitar's low string, A4 is 440 Hz. "
        "Kind: plain (steel), wound (on steel), nylon, wound nylon. Core: caliper on the bare "
        "wire by the ball; 0 where there is none. Weighs: a cut piece on the scale, for a metre; 0 to "
        "reckon it from the gauge.",
    ),
)  # fmt: skip

reference_pitch = Number(
    name="reference_pitch", label="Pitch of A4", symbol="a", unit="Hz", decimals=1, lowest=380,
    highest=480, example=440, group=MATERIAL,
)  # fmt: skip
densities: tuple[Input, ...] = (
    Number(
        name="steel_density", label="Density of steel wire", symbol="ρ_s", unit="kg/m3",
        decimals=0, lowest=7000, highest=8500, example=7850, group=MATERIAL,
        help="From memory, as in handbooks of carbon steel.",
    ),
    Number(
        name="wrap_density", label="Density of the winding", symbol="ρ_w", unit="kg/m3",
        decimals=0, lowest=2000, highest=11000, example=8860, group=MATERIAL,
        help="From memory: phosphor bronze 8860, brass of 80 to 20 8670, nickelled steel 7900.",
    ),
    Number(
        name="nylon_density", label="Density of nylon string", symbol="ρ_n", unit="kg/m3",
        decimals=0, lowest=800, highest=2000, example=1100, group=MATERIAL,
        help="From memory: nylon 1050 to 1150, fluorocarbon about 1780. It gets thinner on its way "
        "to pitch: gauge it there.",
    ),
)  # fmt: skip
moduli: tuple[Input, ...] = (
    Number(
        name="steel_modulus", label="Stiffness (Young's modulus) of steel wire", symbol="E_s",
        unit="GPa", decimals=1, lowest=150, highest=230, example=200, group=MATERIAL,
        help="Young 1952: 25.5·10¹⁰ cm²/s² times the density.",
    ),
    Number(
        name="nylon_modulus", label="Stiffness (Young's modulus) of nylon string", symbol="E_n",
        unit="GPa", decimals=1, lowest=0.5, highest=20, example=3, group=MATERIAL,
        help="From memory: 2 to 6, and more the harder it is drawn.",
    ),
)  # fmt: skip


def read_strings(
    string_set: str, strings: Sequence[dict[str, Any]] | None, reference_pitch_hz: float,
    steel_kg_m3: float, wrap_kg_m3: float, nylon_kg_m3: float, steel_gpa: float, nylon_gpa: float,
) -> list[dict[str, Any]]:  # fmt: skip
    """Each string of the set with its frequency (Hz), mass (g/m), core (mm) and modulus (GPa).

    The core is what carries pull and bends: the whole string where it is not wound. Mass as
    weighed where it was; else core and winding from their diameters and densities
    (``laws.strings.round_mass_g_m`` and ``winding_mass_g_m``). Refuses a note that is none, a
    kind it does not know, a winding without a core, a mass that no string of the gauge has.
    """
    if string_set == "own":
        given = [dict(row) for row in strings or ()]
    else:
        names = ("string", "note", "gauge", "kind", "core", "mass")
        given = [dict(zip(names, row, strict=True)) for row in SETS[string_set]]
    read = []
    for place, row in enumerate(given, start=1):
        where = f"strings[{place}]"
        hertz = _frequency_hz(row, where, reference_pitch_hz)
        kind = KINDS.get(str(row["kind"]).lower())
        if kind is None:
            raise Refusal(
                f"{where}.kind", f"{row['kind']} is no kind of string that is known here; write "
                "one of those allowed", "plain, wound, nylon or wound nylon",
            )  # fmt: skip
        nylon = kind.endswith("nylon")
        core_mm = _core_mm(row, kind, where)
        mass_g_m = row["mass"]
        if mass_g_m == 0:
            mass_g_m = round_mass_g_m(core_mm, nylon_kg_m3 if nylon else steel_kg_m3)
            if kind.startswith("wound"):
                mass_g_m += winding_mass_g_m(row["gauge"], core_mm, wrap_kg_m3)
        else:
            _fits(row, where)
        read.append({
            "string": row["string"], "note": row["note"], "gauge": row["gauge"], "kind": kind,
            "core": core_mm, "frequency": hertz, "mass": mass_g_m,
            "modulus": nylon_gpa if nylon else steel_gpa,
        })  # fmt: skip
    return read


def _frequency_hz(row: dict[str, Any], where: str, reference_pitch_hz: float) -> float:
    semitones = semitones_from_a4(str(row["note"]))
    if semitones is None:
        raise Refusal(
            f"{where}.note", f"{row['note']} is no note with its octave; write a letter, a sharp or "
            "flat if it has one, and the octave", "a note such as E2, Bb3 or F#4",
        )  # fmt: skip
    hertz = pitch_hz(semitones, reference_pitch_hz)
    if not LOWEST_HZ <= hertz <= HIGHEST_HZ:
        raise Refusal(
            f"{where}.note", f"{row['note']} is {hertz:.1f} Hz, which no open string of a fretted "
            "instrument is tuned to; look over the octave", "a note from 20 to 1500 Hz",
        )  # fmt: skip
    return hertz


def _core_mm(row: dict[str, Any], kind: str, where: str) -> float:
    gauge_mm, core_mm = float(row["gauge"]), float(row["core"])
    if not kind.startswith("wound"):
        return gauge_mm
    if core_mm == 0:
        raise Refusal(
            f"{where}.core", f"String {row['string']} is wound, and its core is missing; put the "
            "caliper on the bare wire by the ball", f"a core thinner than {gauge_mm:.3f} mm",
        )  # fmt: skip
    if gauge_mm - core_mm < 2 * THINNEST_WIRE_MM:
        raise Refusal(
            f"{where}.core", f"A core of {core_mm:.3f} mm leaves no room for a winding in a gauge of "
            f"{gauge_mm:.3f} mm; look over both", f"a core thinner than {gauge_mm:.3f} mm",
        )  # fmt: skip
    return core_mm


def _fits(row: dict[str, Any], where: str) -> None:
    """Refuses a weighed mass that would make the string lighter than cork or heavier than lead."""
    least, most = (round_mass_g_m(row["gauge"], d) for d in (LIGHTEST_KG_M3, HEAVIEST_KG_M3))
    if not least <= row["mass"] <= most:
        raise Refusal(
            f"{where}.mass", f"No string of {row['gauge']:.3f} mm weighs {row['mass']:.3f} g a metre; "
            "weigh it again, or give 0 to have it reckoned", f"{least:.3f} to {most:.3f} g/m",
        )  # fmt: skip
