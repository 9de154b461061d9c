"""Outside figures that the press calculation is held against, and exercises."""

from ..engine.declaration import Check, Decision, Exercise, Option, Slip, Source
from ..laws.wood_elastic import modulus_gpa, strength_mpa
from ..sources import COMMON_PRACTICE, GEOMETRY
from ._plates_shared import BEAMS, COMPOSITE, SYMPY_BEAMS, WOOD_TABLES
from ._press_solved import sprung_bar
from ._press_work import ELASTICA, PRESSURE, SHOP

PINT = Source(
    id="pint",
    title="pint 0.25.3: pressures, areas and forces carried with their units",
    kind="library",
)
SCIPY_ELLIPTIC = Source(
    id="scipy-elliptic",
    title="scipy 1.17.1: special.ellipk and ellipe, optimize.brentq",
    kind="library",
)
SECTIONS_LIBRARY = Source(
    id="sectionproperties",
    title="sectionproperties 3.10.2: an arc of a ring by finite elements",
    kind="library",
)
SOURCES = (
    PRESSURE, BEAMS, COMPOSITE, ELASTICA, WOOD_TABLES, SHOP, SYMPY_BEAMS, PINT, SCIPY_ELLIPTIC,
    SECTIONS_LIBRARY, GEOMETRY, COMMON_PRACTICE,
)  # fmt: skip


def _bar(height: float, force: str, bow: str, bend: str) -> Check:
    return Check(
        function=sprung_bar, given={"deck_height": height * 1000, "bar_length": 1000.0},
        expected={"force_times": force, "bow_share": bow, "bend_share": bend},
        source=SCIPY_ELLIPTIC.id, where=f"bar pressed to {height:g} of its length",
        origin="library",
    )  # fmt: skip


CHECKS = (
    Check(
        inputs={}, source=PINT.id, origin="library", where="4 kPa on 1535 cm²",
        expected={"press_force": "614.0", "joint_pressure": "47.281688"},
    ),
    Check(
        inputs={"bladder_pressure": 3.5, "plate_area": 1400}, source=PINT.id, origin="library",
        where="3.5 kPa on 1400 cm², in pounds", unit="lbf", expected={"press_force": "110.156382"},
    ),
    Check(
        inputs={}, source=PINT.id, origin="library", where="the mass that weighs 614 N",
        expected={"press_weight": "62.610575"},
    ),
    Check(
        inputs={"bar_length": 620, "bar_width": 12, "bar_thickness": 6, "bar_modulus": 12},
        source=PINT.id, origin="library", where="π²·EI/l² of a bar 620 by 12 by 6 mm, 12 GPa",
        expected={"euler_force": "66.550506"},
    ),
    _bar(0.99, "1.005028", "0.063463", "0.629501"),
    _bar(0.95, "1.025724", "0.140111", "1.418409"),
    _bar(0.9, "1.052987", "0.194924", "2.025763"),
    _bar(0.75, "1.145587", "0.292390", "3.305900"),
    Check(
        function=modulus_gpa, given={"wood": "rosewood"}, expected={"": "12.27"}, unit="GPa",
        source=WOOD_TABLES.id, where="Indian rosewood, 12 %, modulus of elasticity",
        origin="read",
    ),
    Check(
        function=strength_mpa, given={"wood": "rosewood"}, expected={"": "116.5"}, unit="MPa",
        source=WOOD_TABLES.id, where="Indian rosewood, 12 %, modulus of rupture", origin="read",
    ),
    Check(
        function=strength_mpa, given={"wood": "sugar maple"}, expected={"": "108.9"}, unit="MPa",
        source=WOOD_TABLES.id, where="Sugar maple, 12 %, modulus of rupture", origin="read",
    ),
    # An arc of 250 mm of a ring of 4600 mm, 2.6 mm thick: second moment 532.877 mm⁴.
    Check(
        inputs={"back_wood": "own", "back_modulus": 10}, source=SECTIONS_LIBRARY.id,
        origin="library", where="second moment of the arched back times 10 GPa",
        expected={"back_stiffness": "5.32877", "arch_across": "1.6986832"}, within="0.02 %",
        because="ours takes the arc as a parabola",
    ),
    # Overhanging beams, 1 N at both ends: y·EI is 3 375 000 N·mm³ for 200 and 150 mm. With
    # 5.32877 N·m² that is a rate of 5.32877e6/3.375e6 N/mm.
    Check(
        inputs={"back_wood": "own", "back_modulus": 10}, source=SYMPY_BEAMS.id, origin="library",
        where="overhangs of 150 mm on 200 mm, 1 N at both ends", within="0.02 %",
        expected={"end_rate": "1.5788948"}, because="ours takes the arc as a parabola",
    ),
    Check(
        inputs={"back_wood": "own", "back_modulus": 10, "overhang": 90, "bearing_span": 120},
        source=SYMPY_BEAMS.id, origin="library", within="0.02 %",
        where="overhangs of 90 mm on 120 mm, 1 N at both ends",
        expected={"end_rate": "7.3097"}, because="ours takes the arc as a parabola",
    ),
    # Uniform load of 1 N/mm on the same beams: y·EI is 182 031 250 N·mm³; 2 mm of gap on 250 mm
    # of width take 2·5.32877e6/182031250/250 MPa.
    Check(
        inputs={"back_wood": "own", "back_modulus": 10}, source=SYMPY_BEAMS.id, origin="library",
        where="overhangs of 150 mm on 200 mm, uniform load", within="0.02 %",
        expected={"closing_pressure": "0.23419"}, because="ours takes the arc as a parabola",
    ),
)  # fmt: skip

EXERCISES = (
    Exercise(
        name="force-of-the-bladder",
        situation="The dial stands at {bladder_pressure}. The back has {plate_area}. With what "
        "force is it pressed?",
        asks="press_force",
        draw={"bladder_pressure": (2.5, 5, 0.1), "plate_area": (900, 1650, 1)},
        within="2 %",
        slips=(
            Slip(
                name="forgot-the-ten", formula="press_force * kpa_cm2",
                why="A kilopascal is a thousand newtons on a square metre, a tenth of a newton on a "
                "square centimetre.",
            ),
            Slip(
                name="kilograms", formula="press_weight",
                why="That is the weight it is like, in kilograms. Force is in newtons, some ten "
                "times as many.",
            ),
        ),
    ),
    Exercise(
        name="pressure-in-the-joint",
        situation="The bladder stands at {bladder_pressure} on a back of {plate_area}. The rim is "
        "{rim_length} round and its ledge {ledge_width} wide. What is the pressure in the joint?",
        asks="joint_pressure",
        draw={
            "bladder_pressure": (2.5, 5, 0.1), "plate_area": (1450, 1600, 5),
            "rim_length": (1450, 1550, 10), "ledge_width": (7.5, 9.5, 0.1),
        },
        within="2 %",
        slips=(
            Slip(
                name="same-as-the-bladder", formula="bladder_pressure",
                why="The plate gathers the pressure of its whole area and hands it to the narrow "
                "rim: there it is many times as much.",
            ),
            Slip(
                name="half-the-rim", formula="2 * joint_pressure",
                why="Both sides of the body carry: take the whole way round.",
            ),
            Slip(
                name="ledge-on-both-sides", formula="joint_pressure / 2",
                why="The whole rim was counted once already; do not double it.",
            ),
        ),
    ),
    Exercise(
        name="euler",
        situation="A go-bar is {bar_length} long, {bar_width} wide and {bar_thickness} thick, of "
        "wood with a modulus of {bar_modulus}. With what force does it push when it just begins to bow?",
        asks="euler_force",
        draw={
            "bar_length": (610, 690, 1), "bar_width": (10, 16, 0.5), "bar_thickness": (4.5, 7, 0.1),
            "bar_modulus": (9, 14, 0.1),
        },
        within="2 %",
        slips=(
            Slip(
                name="on-edge",
                formula="euler_force * bar_width ** 2 / bar_thickness ** 2",
                why="It bows the thin way: the thickness is cubed, the width is not.",
            ),
            Slip(
                name="ends-held", formula="4 * euler_force",
                why="That is for ends that cannot turn. A bar stands free on both.",
            ),
            Slip(
                name="without-pi-squared", formula="euler_force / pi ** 2",
                why="You left out π squared, which is nearly ten.",
            ),
        ),
    ),
)  # fmt: skip

DECISIONS = (
    Decision(
        name="which-bar",
        situation="A go-bar {bar_length} long, {bar_width} wide and {bar_thickness} thick is to be "
        "bent in between deck and caul, {deck_height} apart. Its wood has a modulus of "
        "{bar_modulus} and breaks at {bar_strength}. The shop wants {bar_low} to {bar_high} of push "
        "from a bar, and never more than 70 % of its strength. What do you do with it?",
        options=(
            Option(
                words="Bend it in",
                holds="bar_low * 1.06 <= bar_force and bar_force <= bar_high * 0.95 "
                "and bar_share <= 66",
                why="Not this bar. It pushes with {bar_force} and uses {bar_share} of its strength.",
            ),
            Option(
                words="Take a thinner bar: this one pushes too hard",
                holds="bar_force >= bar_high * 1.06 and bar_share <= 66",
                why="It pushes with {bar_force}, and {bar_high} is allowed. Look at the push and at "
                "the strength, each by itself.",
            ),
            Option(
                words="Take a thicker or a shorter bar: this one pushes too weakly",
                holds="bar_force <= bar_low * 0.94 and bar_share <= 66",
                why="It pushes with {bar_force} (the least is {bar_low}) and uses {bar_share} of its "
                "strength already.",
            ),
            Option(
                words="Leave it out: bent so far it is near breaking",
                holds="bar_share >= 75",
                why="It uses {bar_share} of its strength, less than the 70 % where it must stay out.",
            ),
        ),
        because="It pushes with {bar_force}, where {bar_low} to {bar_high} are wanted, and uses "
        "{bar_share} of its strength.",
        draw={
            "bar_length": (606, 640, 1), "deck_height": (590, 600, 1), "bar_width": (8, 26, 0.5),
            "bar_thickness": (5, 6.4, 0.1), "bar_modulus": (8, 13, 0.1),
            "bar_strength": (75, 140, 1),
        },
    ),
    Decision(
        name="close-the-back",
        situation="The dry back stands {end_gap} off the rim at both blocks. Pushed down there with "
        "{push_force} at each, it gives {push_move}. It bears {overhang} from each block, on two "
        "places {bearing_span} apart, and is {back_width} wide over its ends. The bladder will stand "
        "at {bladder_pressure}; no gap above {gap_high} is pressed shut. How do you close it?",
        options=(
            Option(
                words="Palms on both blocks first; then the bladder alone holds it",
                holds="end_gap <= 0.95 * gap_high and closing_pressure <= 0.9 * bladder_pressure",
                why="It takes {closing_pressure} to hold a gap of {end_gap} shut; the bladder gives "
                "{bladder_pressure}, and gaps above {gap_high} are not pressed shut at all.",
            ),
            Option(
                words="Hold both blocks down until the frame is latched: this bladder alone does not",
                holds="end_gap <= 0.95 * gap_high and closing_pressure >= 1.1 * bladder_pressure",
                why="{closing_pressure} holds it, and the bladder gives {bladder_pressure}; look at "
                "the gap itself as well, {end_gap}.",
            ),
            Option(
                words="Do not press it shut: look at arch and rim",
                holds="end_gap >= 1.05 * gap_high",
                why="A gap of {end_gap} is within the {gap_high} that may be pressed shut.",
            ),
        ),
        because="The gap is {end_gap}, at most {gap_high} may be pressed shut, and it takes "
        "{closing_pressure} to hold it where the bladder gives {bladder_pressure}.",
        draw={
            "end_gap": (1, 4.4, 0.1), "push_force": (5, 60, 0.5), "push_move": (0.5, 2, 0.05),
            "overhang": (130, 170, 5), "bearing_span": (180, 220, 5), "back_width": (230, 270, 5),
            "bladder_pressure": (3, 5, 0.1),
        },
        fixed={"stiffness_from": "push"},
    ),
)  # fmt: skip
