"""Outside figures that the blushing calculator is held against, and exercises."""

from ..engine.declaration import Check, Exercise, Slip, Source
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
        situation="The spray room has {room_temperature} and {room_humidity}. With a table or "
        "chart of damp air: at what temperature does dew begin to fall?",
        asks="dew_point",
        within="0.5 degC",
        draw={"room_temperature": (18, 26, 1), "room_humidity": (40, 70, 1)},
        slips=(
            Slip(name="a-degree-for-ten-per-cent",
                 formula="room_temperature - (100 - room_humidity) / 10",
                 why="Ten per cent less humidity bring the dew point down by two degrees near "
                 "saturation and by more in dry air, not by one."),
            Slip(name="room-itself", formula="room_temperature",
                 why="Dew falls at room temperature only in air of 100 %."),
        ),
    ),
    Exercise(
        name="damp-in-the-air",
        situation="At {room_temperature} and {room_humidity}, how great is the pressure of the "
        "vapour in the air? Take the saturation pressure from a table.",
        asks="vapour_in_air",
        within="2 %",
        draw={"room_temperature": (18, 28, 1), "room_humidity": (55, 75, 1)},
        slips=(
            Slip(name="saturated", formula="saturation",
                 why="That is air of 100 %. Multiply by the humidity."),
            Slip(name="what-is-missing", formula="saturation * (1 - room_humidity / whole)",
                 why="That is what the air could still take up."),
        ),
    ),
    Exercise(
        name="solvent-to-go",
        situation="A coat lies {wet_film} wet and has {solids_sprayed} of solids by volume. How "
        "thick a film of solvent has to leave it, and chill it on the way?",
        asks="solvent_film",
        within="1 um",
        draw={"wet_film": (100, 150, 5), "solids_sprayed": (16, 28, 1)},
        slips=(
            Slip(name="what-stays", formula="wet_film * solids_sprayed / whole",
                 why="That is the dry film, which stays. The rest leaves."),
            Slip(name="all-of-it", formula="wet_film",
                 why="The solids do not evaporate."),
        ),
    ),
)  # fmt: skip
