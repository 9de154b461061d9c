"""What the duct calculator asks and how it works."""

from ..engine.declaration import (
    Constant,
    Given,
    Input,
    Number,
    Rows,
    Said,
    Solved,
    Source,
    Step,
    Words,
    Work,
)
from ..laws.duct_friction import COLEBROOK
from ..laws.psychrometrics import ASHRAE
from ._duct_velocity_solved import air_of_room, branches_of_duct, main_friction

RUNS, MAIN, LOSSES, AIR = "Machines and their branches", "The main", "Losses and fan", "The air"

TRANSPORT = Source(
    id="transport-velocities",
    title="A duct maker's range of least design velocities: light shavings 3000 to 4000 ft/min "
    "(18 to 20 m/s), heavy sawdust 4000 to 4500 ft/min (20 to 24 m/s)",
    note="Read on two stored pages, which differ; the example takes the top of the first for "
    "heavy sawdust, 4500 ft/min or 22.9 m/s. Local code may ask for more.",
)
CONTINUITY = Source(
    id="continuity",
    title="Flow is velocity times area; pressures of motion and losses add along the way",
    note="Bernoulli with losses. Loss figures of hoods and bends: common practice, from memory.",
)
SI = Source(
    id="si-brochure",
    title="The International System of Units (SI Brochure), 9th edition",
    author="BIPM",
    year="2019",
)
SOURCES = (TRANSPORT, CONTINUITY, COLEBROOK, ASHRAE, SI)

INPUTS: tuple[Input, ...] = (
    Rows(
        name="branches", label="Machines", group=RUNS, at_least=1, at_most=12,
        help="Air as the machine's maker asks for, length of straight duct to the main, bends.",
        columns=(
            Words(name="machine", label="Machine", longest=40),
            Number(name="flow", label="Air", unit="m3/h", decimals=0, lowest=100, highest=6000,
                   example=850),
            Number(name="run", label="Straight length", unit="m", decimals=1, lowest=0,
                   highest=40, example=5),
            Number(name="bends", label="Bends", unit="1", decimals=0, whole=True, lowest=0,
                   highest=10, example=2),
        ),
        example=(
            ("Bandsaw", 850, 5, 2), ("Drum sander", 1000, 6, 2), ("Thicknesser", 1000, 4, 2),
            ("Router table", 900, 7, 3),
        ),
    ),
    Number(name="transport_velocity", label="Least velocity that carries the dust", symbol="v_t",
           unit="m/s", decimals=1, lowest=10, highest=35, example=23, group=RUNS,
           help="Published: some 20 for light shavings, 20 to 24 for heavy sawdust."),
    Number(name="open_at_once", label="Gates open together, always", symbol="n", unit="1",
           decimals=0, whole=True, lowest=1, highest=6, example=2, group=MAIN,
           help="Fewer, and the main silts up; more, and the fan falls short."),
    Number(name="main_length", label="Straight length of the main", symbol="L", unit="m",
           decimals=1, lowest=0.5, highest=80, example=10, group=MAIN),
    Number(name="main_bends", label="Bends in the main", symbol="b", unit="1", decimals=0,
           whole=True, lowest=0, highest=15, example=2, group=MAIN),
    Number(name="filter_loss", label="Filter and cyclone lose, dirty", symbol="F", unit="Pa.air",
           decimals=0, lowest=0, highest=4000, example=900, group=MAIN, help="From their sheets."),
    Number(name="size_step", label="Duct is made in steps of", symbol="s", unit="mm", decimals=0, whole=True,
           lowest=1, highest=50, example=10, group=LOSSES),
    Number(name="roughness", label="Roughness of the duct wall", symbol="ε", unit="mm",
           decimals=3, lowest=0.001, highest=3, example=0.15, group=LOSSES,
           help="From memory: spiral steel duct 0.15, ribbed hose 1 to 3."),
    Number(name="bend_loss", label="A bend loses this much of the velocity pressure", symbol="k",
           unit="1", decimals=2, lowest=0, highest=2, example=0.3, group=LOSSES,
           help="Common practice: 0.3 for a long bend, 0.6 and more for a sharp one."),
    Number(name="hood_loss", label="A hood loses this much of it", symbol="k_h", unit="1",
           decimals=2, lowest=0, highest=5, example=0.6, group=LOSSES),
    Number(name="fan_efficiency", label="Fan and motor turn to use", symbol="η", unit="%",
           decimals=0, lowest=10, highest=90, example=50, group=LOSSES),
    Number(name="room_temperature", label="Warmth of the air", symbol="t", unit="degC",
           decimals=1, lowest=0, highest=45, example=21, group=AIR),
    Number(name="room_humidity", label="Humidity of the air", symbol="φ", unit="%", decimals=0,
           lowest=0, highest=100, example=45, group=AIR),
    Number(name="height_above_sea", label="Height above the sea", symbol="z", unit="m",
           decimals=0, lowest=0, highest=3000, example=0, group=AIR),
)  # fmt: skip
FOLDED = (LOSSES, AIR)

CONSTANTS = (
    Constant(name="mm_per_m", label="Millimetres in a metre", unit="mm/m", decimals=0, value=1000,
             source="si-brochure"),
    Constant(name="s_per_h", label="Seconds in an hour", unit="s/h", decimals=0, value=3600,
             source="si-brochure"),
    Constant(name="w_per_kw", label="Watts in a kilowatt", unit="W/kW", decimals=0, value=1000,
             source="si-brochure"),
    Constant(name="whole", label="The whole, in per cent", unit="%", decimals=0, value=100,
             source="si-brochure"),
)  # fmt: skip
MAIN_AREA = "(pi / 4 * (main_diameter / mm_per_m) ** 2 * s_per_h)"

WORK: tuple[Work, ...] = (
    Solved(
        name="air", label="The room's air", function=air_of_room,
        gives=(
            Given(name="air_pressure", label="Pressure of the air", symbol="p", unit="Pa",
                  decimals=0),
            Given(name="air_density", label="Density of the air", symbol="ρ", unit="kg/m3",
                  decimals=4),
            Given(name="air_viscosity", label="Kinematic viscosity of the air", symbol="ν",
                  unit="mm2/s", decimals=3),
        ),
        method="Pressure of the standard atmosphere at this height (ASHRAE's equation), moist air "
        "as an ideal mixture, viscosity by Sutherland's law.",
        source="ashrae-psychrometrics",
    ),
    Solved(
        name="plan", label="Branches", function=branches_of_duct,
        gives=(
            Given(name="flow_low", label="Least air in the main", symbol="Q_1", unit="m3/h",
                  decimals=0),
            Given(name="flow_high", label="Most air in the main", symbol="Q_2", unit="m3/h",
                  decimals=0),
            Given(name="branch_loss", label="Loss of the worst branch", symbol="B",
                  unit="Pa.air", decimals=1),
            Given(name="worst_branch", label="Worst branch", unit="1", decimals=0, text=True),
            Given(name="widest_branch", label="Widest branch", unit="mm", decimals=0),
            Given(name="branch_rows", label="Each branch", unit="1", decimals=0, many=True),
        ),
        method="Each branch gets the largest duct in which its air keeps the velocity; loss by "
        "Darcy-Weisbach with Colebrook's friction, hood and bends as shares of the velocity "
        "pressure. Least air in the main: the smallest flows open together; most: the largest.",
        source="colebrook",
    ),
    Step(name="main_exact", label="Main in which the least air just keeps the velocity",
         symbol="D_0", unit="mm", decimals=2, source="transport-velocities",
         formula="sqrt(4 * flow_low / (pi * transport_velocity * s_per_h)) * mm_per_m"),
    Step(name="main_diameter", label="Main, the size made below that", symbol="D", unit="mm",
         decimals=0, formula="floor(main_exact / size_step + 1e-9) * size_step",
         source="continuity"),
    Step(name="velocity_low", label="Velocity in the main, least air", symbol="v_1", unit="m/s",
         decimals=2, formula=f"flow_low / {MAIN_AREA}", source="continuity"),
    Step(name="velocity_high", label="Velocity in the main, most air", symbol="v_2", unit="m/s",
         decimals=2, formula=f"flow_high / {MAIN_AREA}", source="continuity"),
    Step(name="main_head", label="Velocity pressure in the main, most air", symbol="h",
         unit="Pa.air", decimals=1, formula="air_density * velocity_high ** 2 / 2",
         source="continuity"),
    Step(name="main_reynolds", label="Reynolds number of the main", symbol="Re", unit="1",
         decimals=0, formula="velocity_high * mm_per_m * main_diameter / air_viscosity",
         source="colebrook"),
    Solved(
        name="main_factor_solved", label="Friction of the main", function=main_friction,
        gives=(Given(name="main_factor", label="Friction factor of the main", symbol="f",
                     unit="1", decimals=5),),
        method="Colebrook's equation by Newton's steps from Swamee and Jain's guess.",
        source="colebrook",
    ),
    Step(name="main_straight", label="Loss along the main", unit="Pa.air", decimals=1,
         symbol="M", source="colebrook",
         formula="main_factor * main_length * mm_per_m / main_diameter * main_head"),
    Step(name="main_fittings", label="Loss in its bends and into the filter", unit="Pa.air",
         decimals=1, symbol="M_k", formula="(main_bends * bend_loss + 1) * main_head",
         source="continuity"),
    Step(name="fan_total", label="Total pressure the fan must make", symbol="P", unit="Pa.air",
         decimals=0, formula="branch_loss + main_straight + main_fittings + filter_loss",
         source="continuity"),
    Step(name="fan_static", label="Which is a fan static pressure of", symbol="P_s",
         unit="Pa.air", decimals=0, formula="fan_total - main_head", source="continuity"),
    Step(name="fan_power", label="Power the motor draws", symbol="W", unit="kW", decimals=2,
         formula="flow_high * fan_total * whole / (s_per_h * w_per_kw * fan_efficiency)",
         source="continuity"),
    Said(name="verdict", label="By this estimate", cases=(
        ("main_diameter < widest_branch", "Open more gates together: for the least air the main "
         "would be {main_diameter}, narrower than a branch of {widest_branch}."),
        ("", "Main {main_diameter}: {velocity_low} with the least air, {velocity_high} with the "
         "most. The fan must make {fan_static} static at {flow_high}; {worst_branch} is the "
         "worst branch."),
    )),
)  # fmt: skip
