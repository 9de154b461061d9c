"""The steps of the string-tension calculation."""

from collections.abc import Mapping, Sequence
from typing import Any

from ..engine.declaration import Column, Given, Limit, Said, Solved, Step, Table, Work
from ..laws.strings import stress_mpa, tension_n
from ._string_sets import read_strings

MOST_PULL = "600"
# Least strength of music wire of d mm, MPa: 2211/d^0.145 (ASTM A228 by Shigley, from memory).
WIRE_MPA, WIRE_POWER = 2211.0, 0.145
WORDS_BY_SHARE = (
    (0.4, "far from it"),
    (0.7, "as usual"),
    (0.9, "near it"),
    (1.0, "very near it"),
)
PAST = "past it"


def breaking_words(kind: str, stress: float, core_mm: float) -> str:
    """How near a steel wire is to breaking, in words; a dash where nothing is known.

    ``stress`` in MPa beside the strength that music wire is remembered to have at least. Words
    alone, because that strength is from memory.
    """
    if kind.endswith("nylon"):
        return "–"
    share = stress / (WIRE_MPA / core_mm**WIRE_POWER)
    return next((words for limit, words in WORDS_BY_SHARE if share < limit), PAST)


def pull(
    scale_length: float, string_set: str, reference_pitch: float, steel_density: float,
    wrap_density: float, nylon_density: float, steel_modulus: float, nylon_modulus: float,
    strings: Sequence[dict[str, Any]] | None = None,
) -> Mapping[str, Any]:  # fmt: skip
    """What every string pulls and what they pull together, N.

    T = 4·L²·f²·µ for each (mm, Hz, g/m: ``laws.strings.tension_n``); the sum, the strongest and
    the weakest, the sum of the masses in g/m, and which plain or cored steel is nearest breaking.
    """
    rows = read_strings(
        string_set, strings, reference_pitch, steel_density, wrap_density, nylon_density,
        steel_modulus, nylon_modulus,
    )  # fmt: skip
    for row in rows:
        tension = tension_n(scale_length, row["frequency"], row["mass"])
        stress = stress_mpa(tension, row["core"])
        row["pull"] = tension
        row["breaking"] = breaking_words(row["kind"], stress, row["core"])
    by_pull = sorted(rows, key=lambda row: row["pull"])
    names = {
        words: ", ".join(row["string"] for row in rows if row["breaking"] == words)
        for words in ("very near it", PAST)
    }
    return {
        "string_rows": rows,
        "total_tension": sum(row["pull"] for row in rows),
        "mass_sum": sum(row["mass"] for row in rows),
        "strongest": by_pull[-1]["pull"], "strongest_name": by_pull[-1]["string"],
        "weakest": by_pull[0]["pull"], "weakest_name": by_pull[0]["string"],
        "near_names": names["very near it"], "past_names": names[PAST],
    }  # fmt: skip


work: tuple[Work, ...] = (
    Solved(
        name="pulls", label="Pull of the strings", function=pull,
        gives=(
            Given(name="string_rows", label="Strings", unit="1", decimals=0, many=True),
            Given(name="total_tension", label="All strings together pull", symbol="T", unit="N",
                  decimals=0),
            Given(name="mass_sum", label="One of each weighs", symbol="Σµ", unit="g/m",
                  decimals=2),
            Given(name="strongest", label="The hardest pull of one string", symbol="T_1", unit="N",
                  decimals=1),
            Given(name="strongest_name", label="String that pulls hardest", unit="1", decimals=0,
                  text=True),
            Given(name="weakest", label="The lightest pull of one string", symbol="T_2", unit="N",
                  decimals=1),
            Given(name="weakest_name", label="String that pulls least", unit="1", decimals=0,
                  text=True),
            Given(name="near_names", label="Strings very near to breaking", unit="1", decimals=0,
                  text=True),
            Given(name="past_names", label="Strings past breaking", unit="1", decimals=0,
                  text=True),
        ),
        method="For each string 4·L²·f²·µ: pitch from the note, mass a metre from the scale or from "
        "gauge, core and density (a winding of touching round turns); then the sum.",
        source="mersenne-taylor",
    ),
    Limit(
        holds=f"strongest <= {MOST_PULL}", blames="scale_length", source="common-practice",
        otherwise="String {strongest_name} would pull {strongest}, which no plucked string does; look "
        "over scale, note and gauge",
        allowed=f"strings that pull {MOST_PULL} N or less, each",
    ),
    Step(
        name="against_design", label="Pull beside what the instrument is braced for", symbol="p",
        unit="%", decimals=0, formula="total_tension / design_tension * whole",
        source="common-practice",
    ),
    Step(
        name="as_heavy_as", label="As heavy as", symbol="m", unit="kg", decimals=1,
        formula="total_tension / gravity", source="si-brochure",
    ),
    Step(
        name="spread", label="Hardest pull over lightest", symbol="q", unit="1", decimals=2,
        formula="strongest / weakest", source="common-practice",
    ),
    Step(
        name="set_mass", label="The set, each string cut to length, weighs", symbol="M", unit="g",
        decimals=2, formula="mass_sum * cut_length / mm_per_m", source="mersenne-taylor",
    ),
    Step(
        name="bridge_arm", label="Strings above the top at the saddle", symbol="h_b", unit="mm",
        decimals=1, formula="bridge_thickness + saddle_height", source="statics",
    ),
    Step(
        name="bridge_torque", label="Turning moment on the bridge", symbol="M_b", unit="N.m",
        decimals=2, formula="total_tension * bridge_arm / mm_per_m", source="statics",
    ),
    Step(
        name="design_torque", label="Turning moment that it is braced for", symbol="M_d",
        unit="N.m", decimals=2, formula="design_tension * bridge_arm / mm_per_m", source="statics",
    ),
    Step(
        name="string_over_frets", label="Strings over the frets, midway to the 12th", symbol="a_m",
        unit="mm", decimals=2, source="statics",
        formula="(nut_height + (action_bass + action_treble) / 2) / 2",
    ),
    Step(
        name="neck_arm", label="Strings above the middle of the neck's thickness", symbol="h_n",
        unit="mm", decimals=2, formula="neck_thickness / 2 + fret_height + string_over_frets",
        source="statics",
    ),
    Step(
        name="neck_moment", label="Moment that bends the neck", symbol="M_n", unit="N.m",
        decimals=2, formula="total_tension * neck_arm / mm_per_m", source="statics",
    ),
    Said(
        name="verdict", label="This set",
        cases=(
            ("against_design > 108",
             "Too much: together {total_tension}, {against_design} of what the instrument is braced "
             "for. Lighter strings, a lower tuning, or the designer's word."),
            ("against_design < 91",
             "Little: together {total_tension}, {against_design} of what the instrument is braced "
             "for. It is safe; the top is driven less, and rod weights for the usual set are too "
             "heavy."),
            ("", "It fits: together {total_tension}, {against_design} of what the instrument is braced "
             "for, as heavy as {as_heavy_as}."),
        ),
    ),
    Said(
        name="even_words", label="From string to string",
        cases=(
            ("spread > 1.6",
             "Uneven: {strongest_name} pulls {strongest}, {weakest_name} only {weakest}. The hand "
             "feels it, and so does the neck, which may twist."),
            ("spread == 1",
             "One pull for all: {strongest}."),
            ("", "Even enough: from {weakest} ({weakest_name}) to {strongest} ({strongest_name})."),
        ),
    ),
)  # fmt: skip

tables = (
    Table(
        name="pull", title="String by string", rows="string_rows", source="mersenne-taylor",
        columns=(
            Column(name="string", label="String", unit="1", decimals=0, text=True),
            Column(name="note", label="Note", unit="1", decimals=0, text=True),
            Column(name="gauge", label="Gauge", unit="mm", decimals=3),
            Column(name="kind", label="Kind", unit="1", decimals=0, text=True),
            Column(name="core", label="Core", unit="mm", decimals=3),
            Column(name="frequency", label="Pitch", symbol="f", unit="Hz", decimals=3),
            Column(name="mass", label="Mass a metre", symbol="µ", unit="g/m", decimals=3),
            Column(name="tension", label="Pull", symbol="T", unit="N", decimals=1,
                   formula="4 * (scale_length / mm_per_m) ** 2 * frequency ** 2 * mass / g_per_kg"),
            Column(name="share", label="Of all", unit="%", decimals=1,
                   formula="tension / total_tension * whole"),
            Column(name="stress", label="Stress in the core", unit="MPa", decimals=0,
                   formula="tension / (pi * core ** 2 / 4)"),
            Column(name="breaking", label="Breaking", unit="1", decimals=0, text=True),
        ),
        note="Breaking: stress beside the strength that music wire has as remembered, in words only.",
    ),
    Table(
        name="overtones", title="Stiffness and overtones", rows="string_rows",
        source="fletcher-1964",
        columns=(
            Column(name="string", label="String", unit="1", decimals=0, text=True),
            Column(name="core", label="Core", unit="mm", decimals=3),
            Column(name="modulus", label="Stiffness of the core", unit="GPa", decimals=1),
            Column(name="pull", label="Pull", unit="N", decimals=1),
            Column(name="stiffness", label="Stiffness number B", unit="1", decimals=7,
                   formula="pi ** 3 * modulus * mpa_per_gpa * core ** 4"
                           " / (64 * pull * scale_length ** 2)"),
            Column(name="second", label="Second partial sharp by", unit="cents", decimals=2,
                   formula="600 * log2(1 + 4 * stiffness)"),
            Column(name="tenth", label="Tenth partial sharp by", unit="cents", decimals=1,
                   formula="600 * log2(1 + 100 * stiffness)"),
        ),
        note="The core alone is counted as stiff: a winding adds a little to B.",
    ),
)  # fmt: skip
