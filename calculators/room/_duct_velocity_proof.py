"""Outside figures that the duct calculation is held against, and exercises."""

from ..engine.declaration import Check, Exercise, Slip, Source
from ..laws.duct_friction import friction_factor, straight_loss_pa, velocity_pressure_pa
from ..laws.standard_air import air_viscosity_pa_s

FLUIDS = Source(
    id="fluids",
    title="fluids 1.3.1, friction factor (Colebrook solved exactly) and loss of a pipe",
    kind="library",
    note="Worked out independently of this project.",
)
PSYCHROLIB = Source(
    id="psychrolib-air",
    title="PsychroLib 2.5.0, density of moist air in the standard atmosphere",
    kind="library",
)
COOLPROP = Source(id="coolprop-air", title="CoolProp 8.0.0, viscosity of dry air", kind="library")
CHECK_SOURCES = (FLUIDS, PSYCHROLIB, COOLPROP)


def _factor(reynolds: float, rough: float, factor: str) -> Check:
    return Check(
        function=friction_factor, source="fluids", origin="library", expected={"": factor},
        given={"reynolds": reynolds, "relative_roughness": rough},
        where=f"Re = {reynolds:g}, ε/D = {rough:g}",
    )  # fmt: skip


def _loss(flow: float, velocity: float, diameter: float, length: float, loss: str) -> Check:
    return Check(
        function=straight_loss_pa, source="fluids", origin="library", expected={"": loss},
        given={"density_kg_m3": 1.2, "viscosity_m2_s": 1.82e-5 / 1.2, "velocity_m_s": velocity,
               "diameter_m": diameter, "length_m": length, "roughness_m": 1.5e-4},
        where=f"{flow:g} m³/h in {1000 * diameter:g} mm, {length:g} m", unit="Pa.air",
    )  # fmt: skip


def _density(warmth: float, damp: float, height: float, density: str) -> Check:
    return Check(
        inputs={"room_temperature": warmth, "room_humidity": damp, "height_above_sea": height},
        source="psychrolib-air", origin="library", where=f"{warmth:g} °C, {damp:g} %, {height:g} m",
        expected={"air_density": density},
    )  # fmt: skip


def _viscosity(warmth: float, viscosity: str) -> Check:
    return Check(
        function=air_viscosity_pa_s, given={"temperature_c": warmth}, source="coolprop-air",
        origin="library", where=f"dry air at {warmth:g} °C, Pa·s", expected={"": viscosity},
        within="0.6 %", because="Sutherland's law is a two-constant fit",
    )  # fmt: skip


CHECKS = (
    _factor(1e5, 1e-3, "0.0221745359445"),
    _factor(2.2e5, 1e-3, "0.0209191975332"),
    _factor(5e4, 5e-4, "0.0225649685966"),
    _factor(3e6, 1e-5, "0.0101676657375"),
    _loss(850, 20.87680580680726, 0.12, 6, "290.112202602"),
    _loss(2000, 21.83195378489648, 0.18, 8, "254.691192808"),
    Check(
        function=velocity_pressure_pa, given={"density_kg_m3": 1.2, "velocity_m_s": 20.0},
        source="fluids", origin="library", where="0.3 of the velocity pressure at 20 m/s is 72 Pa",
        expected={"": "240"}, unit="Pa.air",
    ),
    _density(20, 50, 0, "1.19890"),
    _density(10, 40, 1500, "1.03807"),
    _density(25, 60, 500, "1.10704"),
    _viscosity(0, "1.72184e-05"),
    _viscosity(20, "1.82057e-05"),
    _viscosity(40, "1.91652e-05"),
)  # fmt: skip

EXERCISES = (
    Exercise(
        name="size-of-the-main",
        situation="A main {main_length} long serves four machines that draw 850, 900, 1000 and "
        "1000 m³/h (500, 530, 589 and 589 cfm). At least {open_at_once} gates are open together, "
        "always. Dust needs {transport_velocity}. Duct is made in steps of 10 mm (0.394 in). Which "
        "is the widest main that still carries the dust with the least air?",
        asks="main_diameter",
        within="1 mm",
        draw={"transport_velocity": (18, 26, 0.1), "open_at_once": (2, 3, 1),
              "main_length": (4, 30, 0.5)},
        slips=(
            Slip(name="rounded-up", formula="main_diameter + size_step",
                 why="In the next size up the air is too slow and the dust settles. Round down."),
            Slip(name="all-gates",
                 formula="sqrt(4 * 3750 / (pi * transport_velocity * s_per_h)) * mm_per_m",
                 why="That is sized for all machines at once. With the least air the main silts up."),
            Slip(name="radius", formula="main_diameter / 2",
                 why="You found the radius. Duct is sold by its diameter."),
        ),
    ),
    Exercise(
        name="power-of-the-fan",
        situation="The four machines on the calculator's page hang on a main {main_length} long with "
        "{main_bends} bends, {open_at_once} gates open together; dust needs {transport_velocity}. "
        "The dirty filter loses {filter_loss}. Fan and motor turn {fan_efficiency} to use. Work it "
        "out on the page: what does the motor draw with the most air?",
        asks="fan_power",
        within="3 %",
        draw={"filter_loss": (600, 1200, 10), "fan_efficiency": (40, 65, 1),
              "main_length": (5, 20, 0.5)},
        slips=(
            Slip(name="all-to-use", formula="fan_power * fan_efficiency / whole",
                 why="That is what the air takes. Divide by the share that fan and motor turn to "
                 "use."),
            Slip(name="filter-alone", formula="fan_power * filter_loss / fan_total",
                 why="The filter is only a part: ducts, hood and bends come on top."),
            Slip(name="least-air", formula="fan_power * flow_low / flow_high",
                 why="You took the least air. The motor must bear the most."),
        ),
    ),
)  # fmt: skip
