"""Outside figures that the string-tension calculation is held against, and exercises."""

from ..engine.declaration import Check, Decision, Exercise, Option, Slip
from ..laws.strings import note_hz, partial_sharp_cents, winding_mass_g_m, young_cents


def _note(note: str, hertz: str) -> Check:
    return Check(
        function=note_hz, given={"note": note, "a4_hz": 440.0}, expected={"": hertz},
        source="iso-16", origin="library", where=f"frequency of {note}", unit="Hz",
    )  # fmt: skip


def _plain(name: str, note: str, scale: float, gauge: float, **expected: str) -> Check:
    tables = {"stiffness": "overtones", "second": "overtones", "tenth": "overtones"}
    cells = {
        f"{tables.get(column, 'pull')}[{name}].{column}": digits
        for column, digits in expected.items()
    }
    return Check(
        inputs={
            "string_set": "own", "scale_length": scale, "steel_modulus": 203.4,
            "strings": [[name, note, gauge, "plain", 0, 0]],
        },
        source="worked-strings", origin="library",
        where=f"plain steel, {gauge} mm, {note} on {scale} mm", expected=cells,
    )  # fmt: skip


CHECKS = (
    _note("A2", "110.0"),
    _note("Bb2", "116.540940379522"),
    _note("C4", "261.625565300599"),
    _note("F#5", "739.988845423269"),
    _note("D6", "1174.65907166963"),
    _plain("e", "E4", 647.7, 0.2286, mass="0.3221900", tension="58.74444", stress="1431.28",
           stiffness="1.091970e-05"),
    _plain("b", "B3", 647.7, 0.2794, mass="0.4812961", tension="49.25029", stress="803.28",
           stiffness="2.906495e-05", second="0.10063", tenth="2.51226"),
    _plain("d", "D3", 650, 0.6604, mass="2.688894", tension="97.97247", stress="286.02",
           second="1.56643", tenth="38.33468"),
    _plain("low", "E2", 650, 1.0668, mass="7.016581", tension="80.52659",
           stiffness="3.751342e-03", second="12.89241"),
    Check(
        inputs={
            "string_set": "own", "scale_length": 650, "steel_modulus": 203.4,
            "strings": [["low", "E2", 1.0668, "plain", 0, 0]],
        },
        source="worked-strings", origin="library", where="the same string's tenth partial",
        expected={"overtones[low].tenth": "275.74343"}, within="0.00001",
        because="the source took the pitch as 82.406889 Hz, rounded",
    ),
    Check(
        function=young_cents, given={"modulus_over_density_m2_s2": 25.5e6},
        expected={"": "3.4040e13"}, source="young-1952", origin="library",
        where="constant of a steel wire's inharmonicity from the printed E/ρ; the abstract prints "
        "3.4e13",
    ),
    Check(
        function=partial_sharp_cents, given={"stiffness": 9.761372e-05, "partial": 10},
        expected={"": "8.40864"}, source="worked-strings", origin="library",
        where="tenth partial of a string with B = 9.761372e-05",
    ),
    Check(
        function=winding_mass_g_m,
        given={"gauge_mm": 1.346, "core_mm": 0.43, "wrap_density_kg_m3": 8860.0},
        expected={"": "9.010049556"}, source="scipy-helix", origin="library",
        where="winding of 0.458 mm wire on a core of 0.43 mm, length of the helix by quadrature",
    ),
    Check(
        function=winding_mass_g_m,
        given={"gauge_mm": 0.61, "core_mm": 0.33, "wrap_density_kg_m3": 8000.0},
        expected={"": "1.304665174"}, source="scipy-helix", origin="library",
        where="winding of 0.14 mm wire on a core of 0.33 mm, length of the helix by quadrature",
    ),
)  # fmt: skip

EXERCISES = (
    Exercise(
        name="one-string",
        situation="A string weighs 0.58 g a metre (0.039 lb in 100 ft) and is tuned to E4, five "
        "semitones below an A4 of {reference_pitch}. Nut to saddle it is {scale_length}. How hard "
        "does it pull?",
        asks="total_tension",
        within="2 %",
        draw={"scale_length": (600, 665, 0.5), "reference_pitch": (430, 446, 0.2)},
        fixed={"string_set": "own", "strings": [["1 E", "E4", 0.305, "plain", 0, 0.58]]},
        slips=(
            Slip(
                name="whole-wave", formula="total_tension / 4",
                why="You took the string for a whole wave. It is half of one: the wave is twice as "
                "long as the string, and the length counts squared.",
            ),
            Slip(
                name="length-not-squared", formula="total_tension / (scale_length / mm_per_m)",
                why="Length and pitch both count squared: T = 4·L²·f²·µ.",
            ),
            Slip(
                name="double-for-four", formula="total_tension / 2",
                why="The 2 of the doubled string is squared as well: it is 4 times.",
            ),
        ),
    ),
    Exercise(
        name="bridge-lever",
        situation="A guitar is braced for strings that pull {design_tension}. Its bridge is "
        "{bridge_thickness} thick and the saddle stands {saddle_height} above it. With what moment do "
        "the strings turn the bridge?",
        asks="design_torque",
        within="2 %",
        draw={
            "design_tension": (600, 800, 5), "bridge_thickness": (8, 10.5, 0.1),
            "saddle_height": (2.5, 4.5, 0.1),
        },
        slips=(
            Slip(
                name="saddle-left-out", formula="design_tension * bridge_thickness / mm_per_m",
                why="The strings pull at the top of the saddle, not at the top of the bridge.",
            ),
            Slip(
                name="bridge-left-out", formula="design_tension * saddle_height / mm_per_m",
                why="The lever goes down to the top, through the bridge as well.",
            ),
            Slip(
                name="in-centimetres", formula="design_torque * 100",
                why="That is newton-centimetres. A newton-metre wants the lever in metres.",
            ),
        ),
    ),
    Exercise(
        name="cut-and-weigh",
        situation="Plain steel wire of 0.43 mm (0.0169 in) has a density of {steel_density}. You cut "
        "{cut_length} of it. What should the scale show?",
        asks="set_mass",
        within="3 %",
        draw={"cut_length": (600, 1000, 1), "steel_density": (7750, 7950, 5)},
        fixed={"string_set": "own", "strings": [["2 B", "B3", 0.43, "plain", 0, 0]]},
        slips=(
            Slip(
                name="diameter-for-radius", formula="set_mass * 4",
                why="You took the gauge for the radius. Gauge is the diameter: π·d²/4.",
            ),
            Slip(
                name="square-wire", formula="set_mass * 4 / pi",
                why="That is the mass of a square wire. Round wire has π/4 of it.",
            ),
        ),
    ),
)  # fmt: skip

DECISIONS = (
    Decision(
        name="will-it-bear-the-set",
        situation="An instrument of {scale_length} scale is braced for strings that pull "
        "{design_tension} together. The customer wants this set on it, in its usual notes with A4 at "
        "{reference_pitch}: {string_set}. The shop strings up what pulls 91 to 108 % of what it is "
        "braced for. Work it out on the page: what do you do?",
        options=(
            Option(
                words="String it up",
                holds="against_design >= 93 and against_design <= 106",
                why="The set pulls {total_tension}, {against_design} of what it is braced for.",
            ),
            Option(
                words="Do not: it pulls too hard; offer a lighter set",
                holds="against_design >= 110",
                why="The set pulls {total_tension}, {against_design} of what it is braced for.",
            ),
            Option(
                words="Do not: it pulls too little; offer a heavier set",
                holds="against_design <= 89",
                why="The set pulls {total_tension}, {against_design} of what it is braced for.",
            ),
        ),
        because="The set pulls {total_tension}, {against_design} of the {design_tension} that it is "
        "braced for. It goes with the square of scale and pitch.",
        draw={
            "string_set": ("light", "medium"), "scale_length": (600, 690, 1),
            "design_tension": (550, 950, 5), "reference_pitch": (430, 446, 1),
        },
    ),
)  # fmt: skip
