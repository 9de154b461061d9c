"""Outside figures that the blushing calculator is held against, and exercises."""

from ..engine.declaration import Check, Decision, Exercise, Option, Slip, Source
from ..laws.dew_point import dew_point_c
from ..laws.solvent_evaporation import (
    SOLVENTS,
    air_along,
    air_conductivity_w_m_k,
    vapour_pressure_of_pa,
)
from ..laws.standard_air import SEA_PRESSURE_PA, air_viscosity_pa_s, moist_air_density_kg_m3

PSYCHROLIB = Source(
    id="psychrolib",
    title="PsychroLib 2.5.0, after ASHRAE Fundamentals 2017",
    kind="library",
)
COOLPROP = Source(
    id="coolprop",
    title="CoolProp 8.0.0: water after IAPWS-95 and RP-1485, air after Lemmon et al.",
    kind="library",
)
THERMO = Source(
    id="thermo",
    title="thermo 0.6.1, recommended vapour pressure at each temperature",
    kind="library",
)
HT = Source(id="ht", title="ht 1.2.0, mean Nusselt number of a laminar plate", kind="library")
FILM_MODEL = Source(
    id="scipy-film",
    title="scipy 1.17.1 (BDF, 60 cells) with thermo 0.6.1 and CoolProp: the same film, solved "
    "independently",
    kind="library",
    note="Full vapour pressures and heats of evaporation at every temperature, air from CoolProp; "
    "written apart from this project's code.",
)


def vapour_pressure(name: str, temperature_c: float) -> float:
    """Vapour pressure, Pa, of a solvent by its name."""
    return vapour_pressure_of_pa(SOLVENTS[name], temperature_c)


def nusselt_of_plate() -> float:
    """Mean Nusselt number of our laminar plate, brought to Re 13000 and Pr 0.708."""
    air = air_along(20.0, 0.5, 0.4)
    conductivity = air_conductivity_w_m_k(20.0)
    kinematic = air_viscosity_pa_s(20.0) / moist_air_density_kg_m3(20.0, 0.0, SEA_PRESSURE_PA)
    reynolds, prandtl = 0.5 * 0.4 / kinematic, kinematic / air.thermal_m2_s
    ours = air.plate_w_m2_k * 0.4 / conductivity
    return float(ours * (13000 / reynolds) ** 0.5 * (0.708 / prandtl) ** (1 / 3))


def _dew(degrees: float, humidity: float, printed: str) -> Check:
    return Check(
        function=dew_point_c, source="psychrolib", origin="library",
        given={"temperature_c": degrees, "humidity_percent": humidity},
        where=f"dew point of {degrees} °C at {humidity} %", expected={"": printed},
        within="0.0005", because="PsychroLib stops its search within a thousandth of a degree",
    )  # fmt: skip


def _steam(degrees: float, humidity: float, printed: str) -> Check:
    return Check(
        function=dew_point_c, source="coolprop", origin="library",
        given={"temperature_c": degrees, "humidity_percent": humidity},
        where=f"dew point of {degrees} °C at {humidity} %", expected={"": printed},
        within="0.01", because="IAPWS-95 and real-gas air differ from Hyland and Wexler by so much",
    )  # fmt: skip


def _pressure(name: str, degrees: float, printed: str) -> Check:
    return Check(
        function=vapour_pressure, given={"name": name, "temperature_c": degrees},
        source="thermo", origin="library", where=f"vapour pressure of {name} at {degrees} °C, Pa",
        expected={"": printed}, within="1 %",
        because="ln p is taken as straight in 1/T between 5 and 25 °C",
    )  # fmt: skip


def _film(where: str, coldest: str, worst: str, **inputs: object) -> Check:
    return Check(
        inputs={"surface_length": 400, "landing_drop": 2, "wood": "spruce", **inputs},
        source="scipy-film", origin="library", where=where,
        expected={"coldest_film": coldest, "worst": worst}, within="0.4",
        because="constant heats of evaporation, straight ln p and first-order steps make up to "
        "0.15 K on wood, and up to 0.35 K where it gets far colder",
    )  # fmt: skip


CHECKS = (
    _dew(22, 45, "9.5335"),
    _dew(20, 60, "12.0075"),
    _dew(25, 60, "16.7011"),
    _dew(30, 80, "26.1686"),
    _steam(22, 45, "9.5361"),
    _steam(10, 90, "8.4374"),
    _steam(30, 60, "21.3914"),
    _pressure("acetone", 15, "19615.8"),
    _pressure("ethyl acetate", 15, "7603.1"),
    _pressure("toluene", 15, "2218.2"),
    _pressure("butyl acetate", 15, "908.1"),
    _pressure("isopropanol", 10, "2140.8"),
    _pressure("xylene", 20, "831.7"),
    Check(
        function=nusselt_of_plate, source="ht", origin="library",
        where="plate at Re 13000, Pr 0.708", expected={"": "67.4762"}, within="0.01 %",
        because="0.664 is the rounded factor of the laminar solution",
    ),
    Check(
        function=air_conductivity_w_m_k, given={"temperature_c": 20.0}, source="coolprop",
        origin="library", where="conductivity of air at 20 °C, W/(m·K)",
        expected={"": "0.025874"}, within="0.1 %", because="ours is a power law through two points",
    ),
    _film("fast mix on 2.6 mm of spruce, 22 °C", "14.625", "-3.585", thinner="fast"),
    _film("medium mix on 2.6 mm of spruce, 22 °C", "16.994", "3.127", thinner="medium"),
    _film("slow mix on 2.6 mm of spruce, 22 °C", "18.992", "13.003", thinner="slow"),
    _film("fast mix, 200 µm on rosewood at 15 °C, room 25 °C", "12.420", "-2.384",
          thinner="fast", wet_film=200, wood="heavy", room_temperature=25, body_temperature=15),
    _film("medium mix at 18 °C, air at 1 m/s", "12.983", "1.135", thinner="medium",
          room_temperature=18, body_temperature=18, air_speed=1),
)  # fmt: skip

EXERCISES = (
    Exercise(
        name="dew-point",
        situation="The spray room has {room_temperature} and {room_humidity}; an instrument of "
        "{body_temperature} has just been brought in. With a table or chart of damp air: at what "
        "temperature does dew begin to fall on it?",
        asks="dew_point",
        within="0.5 degC",
        draw={"room_temperature": (16, 28, 1), "room_humidity": (35, 72, 1),
              "body_temperature": (5, 24, 1)},
        slips=(
            Slip(name="a-degree-for-ten-per-cent",
                 formula="room_temperature - (100 - room_humidity) / 10",
                 why="Ten per cent less humidity bring the dew point down by two degrees near "
                 "saturation and by more in dry air, not by one."),
            Slip(name="room-itself", formula="room_temperature",
                 why="Dew falls at room temperature only in air of 100 %."),
            Slip(name="instrument-itself", formula="body_temperature",
                 why="The dew point belongs to the air alone. Whether the instrument is colder is "
                 "the next question."),
        ),
    ),
    Exercise(
        name="damp-in-the-air",
        situation="The air of the spray room has {room_temperature} and {room_humidity}; the "
        "instrument in it {body_temperature}. How great is the pressure of the damp in the air? Take "
        "the saturation pressure from a table.",
        asks="vapour_in_air",
        within="2 %",
        draw={"room_temperature": (15, 30, 1), "room_humidity": (30, 75, 1),
              "body_temperature": (8, 24, 1)},
        slips=(
            Slip(name="saturated", formula="saturation",
                 why="That is air of 100 %. Multiply by the humidity."),
            Slip(name="what-is-missing", formula="saturation * (1 - room_humidity / whole)",
                 why="That is what the air could still take up."),
            Slip(name="at-the-instrument",
                 formula="0.6112 * exp(17.62 * body_temperature / (243.12 + body_temperature)) "
                 "* room_humidity / whole",
                 why="You looked up the instrument's temperature. The humidity was read in the air, "
                 "and counts at the air's own temperature."),
        ),
    ),
    Exercise(
        name="solvent-to-go",
        situation="A coat lies {wet_film} wet and has {solids_sprayed} of solids by volume. How "
        "thick a film of solvent has to leave it, and chill it on the way?",
        asks="solvent_film",
        within="1 um",
        draw={"wet_film": (80, 160, 1), "solids_sprayed": (14, 32, 0.1)},
        slips=(
            Slip(name="what-stays", formula="wet_film * solids_sprayed / whole",
                 why="That is the dry film, which stays. The rest leaves."),
            Slip(name="all-of-it", formula="wet_film",
                 why="The solids do not evaporate."),
        ),
    ),
)  # fmt: skip

DECISIONS = (
    Decision(
        name="spray-or-wait",
        situation="The spray room has {room_temperature} and {room_humidity}. On a test strip with "
        "{wet_film} of wet lacquer the infrared thermometer showed {coldest_film} at the coldest. "
        "The film must stay {safety_margin} above the dew point. What do you do?",
        options=(
            Option(
                words="Spray",
                holds="margin >= safety_margin + 0.7 and room_humidity <= 55",
                why="Dew falls at {dew_point}; the film is only {margin} above that (minus: below).",
            ),
            Option(
                words="Do not spray: it would go milky",
                holds="margin <= -0.7",
                why="Dew falls at {dew_point}, and the film stays {margin} above that.",
            ),
            Option(
                words="Do not spray yet: take a slower thinner or drier air and try another strip",
                holds="margin >= 0.5 and margin <= safety_margin - 0.5",
                why="Dew falls at {dew_point}; the film is {margin} above that (minus: below), and "
                "{safety_margin} is asked.",
            ),
        ),
        because="Dew falls at {dew_point}; the film at its coldest is {margin} above that (minus: "
        "below), and {safety_margin} is asked.",
        draw={"room_temperature": (18, 26, 1), "room_humidity": (40, 82, 1),
              "wet_film": (100, 180, 5), "thinner": ("fast", "medium"),
              "air_speed": (0.3, 0.8, 0.1)},
    ),
)  # fmt: skip
