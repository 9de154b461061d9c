"""Outside figures that the pore-filler calculator is held against, and exercises."""

from ..engine.declaration import Check, Decision, Exercise, Option, Slip, Source
from ..laws.open_pores import mean_segment_mm2, segment_mm2

SCIPY = Source(
    id="scipy-segments",
    title="scipy 1.18.1, adaptive quadrature over the heights at which a face cuts round pores",
    kind="library",
    note="Segments of a circle integrated from 0 to d, worked out independently of this project.",
)
MPMATH = Source(
    id="mpmath-fillings",
    title="mpmath 1.4.1, powers and sums of 1 - f·s with 40 digits",
    kind="library",
    note="Worked out independently of this project.",
)


def _mean(diameter: float, area: str) -> Check:
    return Check(
        function=mean_segment_mm2, given={"diameter_mm": diameter}, source="scipy-segments",
        origin="library", where=f"mean open section of pores {diameter} mm wide, mm²",
        expected={"": area},
    )  # fmt: skip


def _own(diameter: float, number: float, depth: float, share: str, volume: str) -> Check:
    return Check(
        inputs={"filled_wood": "own", "own_pore_diameter": diameter, "own_pores": number,
                "own_pore_depth": depth},
        source="scipy-segments", origin="library",
        where=f"{number} pores a mm², {diameter} µm wide: open share of the face, volume over it",
        expected={"pore_share": share, "pore_volume": volume},
    )  # fmt: skip


CHECKS = (
    _mean(0.15, "0.008835729338"),
    _mean(0.19, "0.014176436849"),
    _mean(0.3, "0.035342917353"),
    Check(
        function=segment_mm2, given={"diameter_mm": 0.15, "depth_mm": 0.05}, origin="library",
        source="scipy-segments", where="segment 0.05 mm high of a circle of 0.15 mm, mm²",
        expected={"": "0.00515637977"},
    ),
    _own(150, 8, 75, "14.137166941", "10.602875206"),
    _own(190, 5, 95, "14.176436849", "13.467615007"),
    _own(240, 3.5, 120, "15.833626974", "19.000352369"),
    Check(
        inputs={"filled_wood": "rosewood", "fill_share": 85, "set_share": 65, "allowed_sink": 5},
        source="mpmath-fillings", origin="library",
        where="0.85 filled, 0.65 staying, 95 µm deep: 1 to 4 fillings",
        expected={
            "left_share": "44.75", "fillings[1].sink": "42.5125", "fillings[2].sink": "19.02434375",
            "fillings[3].sink": "8.5133938281", "fillings[4].sink": "3.80974373809",
            "sink_left": "3.80974373809",
        },
    ),
    Check(
        inputs={"filled_wood": "rosewood", "fill_share": 85, "set_share": 65, "allowed_sink": 5,
                "filled_area": 0.0742522},
        source="mpmath-fillings", origin="library",
        where="wet filler of four fillings, pores of 1 mL: 0.85 · (1 + r + r² + r³)",
        expected={"filler_kept": "1.47676528"}, within="0.000005",
        because="the area that has 1 mL of pores is rounded to seven digits",
    ),
    Check(
        inputs={"allowed_sink": 40}, source="pint", origin="library",
        where="0.35 m² · 120 µm, at 1.5 g/cm³",
        expected={"filler_needed": "42.0", "filler_mass": "63.0"},
    ),
    Check(
        inputs={"allowed_sink": 40, "filled_area": "4 ft2", "brushed_film": "5 mil",
                "filler_density": 1.4379171278027605},
        source="pint", origin="library", where="4 ft² · 5 mil, at 12 lb a US gallon",
        expected={"filler_mass": "67.862131"},
    ),
    Check(
        inputs={"allowed_sink": 40, "filled_area": "4 ft2", "brushed_film": "5 mil"},
        source="pint", origin="library", unit="floz", where="4 ft² · 5 mil in US fluid ounces",
        expected={"filler_needed": "1.5958442"},
    ),
)  # fmt: skip

EXERCISES = (
    Exercise(
        name="sink-after-first",
        situation="Open pores are {own_pore_depth} deep. Your rubbing leaves them {fill_share} "
        "full of wet filler, and {set_share} of that stays when it has set. How deep does the "
        "filler lie below the face after one filling?",
        asks="sink_first",
        within="2 um",
        draw={"own_pore_depth": (60, 140, 1), "fill_share": (80, 89, 1),
              "set_share": (67, 82, 1)},
        fixed={"filled_wood": "own", "own_pore_diameter": 150, "own_pores": 6},
        slips=(
            Slip(name="forgot-the-shrinking", formula="pore_depth * (1 - fill_share / whole)",
                 why="That is how it looks while wet. The thinner leaves, and the filler shrinks."),
            Slip(name="forgot-the-cloth", formula="pore_depth * (1 - set_share / whole)",
                 why="The cloth did not leave the pores full: it pulls some out again."),
            Slip(name="what-is-filled",
                 formula="pore_depth * fill_share / whole * set_share / whole",
                 why="That is the height of filler in the pore. What is open lies above it."),
        ),
    ),
    Exercise(
        name="filler-to-mix",
        situation="{filled_area} of wood is filled, {brushed_film} of wet filler brushed on each "
        "time. The pores are {own_pore_depth} deep, {fill_share} is left full and {set_share} of "
        "it stays. Lacquer may level {allowed_sink}. The filler weighs {filler_density}. What "
        "volume of filler do all the fillings take?",
        asks="filler_needed",
        within="2 %",
        draw={"filled_area": (0.2, 0.6, 0.01), "brushed_film": (90, 180, 1),
              "own_pore_depth": (90, 130, 1), "fill_share": (78, 88, 1),
              "set_share": (58, 70, 1), "allowed_sink": (18, 33, 1)},
        fixed={"filled_wood": "own", "own_pore_diameter": 190, "own_pores": 5},
        slips=(
            Slip(name="one-filling", formula="brushed_film * filled_area / um_m2_per_ml",
                 why="One filling is not enough here: work out the sink-back after each."),
            Slip(name="density-on-top", formula="filler_needed * filler_density / ml_per_cm3",
                 why="That is its weight. Volume is asked."),
        ),
    ),
)  # fmt: skip

DECISIONS = (
    Decision(
        name="fill-again-or-lacquer",
        situation="Open pores are {own_pore_depth} deep. Your rubbing leaves them {fill_share} full "
        "of wet filler, and {set_share} of that stays when it has set. Lacquer may level "
        "{allowed_sink}, and you fill {most_fillings} times at most. What do you plan?",
        options=(
            Option(
                words="Fill once, then lacquer",
                holds="sink_first <= 0.94 * allowed_sink",
                why="After one filling {sink_first} is still open, and lacquer levels {allowed_sink}.",
            ),
            Option(
                words="Fill twice, then lacquer",
                holds="sink_first >= 1.06 * allowed_sink "
                "and sink_first * left_share / whole <= 0.94 * allowed_sink",
                why="The first filling leaves {sink_first}, and each leaves {left_share} of what it "
                "found; lacquer levels {allowed_sink}.",
            ),
            Option(
                words="Take another filler: twice is not enough with this one",
                holds="sink_first * left_share / whole >= 1.06 * allowed_sink",
                why="The first filling leaves {sink_first}, the second {left_share} of that: "
                "little enough for lacquer to level.",
            ),
        ),
        because="The first filling leaves {sink_first} open, each further one {left_share} of what "
        "it finds; lacquer levels {allowed_sink}.",
        draw={"own_pore_depth": (50, 130, 1), "fill_share": (60, 95, 1), "set_share": (47, 94, 1),
              "allowed_sink": (18, 42, 1)},
        fixed={"filled_wood": "own", "own_pore_diameter": 150, "own_pores": 6},
    ),
)  # fmt: skip
