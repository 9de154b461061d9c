"""A film of glue on wood: cut into cells, and its history of heat and water in the room's air."""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, replace
from typing import NamedTuple

from ..laws import wood_heat
from ..laws.conduction import Cells, graded_cells, march
from ..laws.drying import evaporation_kg_m2_s, radiation_w_m2_k, water_viscosity_pa_s
from ..laws.psychrometrics import (
    dry_air_volume_m3_kg,
    evaporation_heat_j_kg,
    humidity_ratio,
    moist_air_heat_j_kg_k,
    saturation_pressure_pa,
    vapour_pressure_pa,
)

FILM_CELLS = 8
GROWTH = 1.15  # of the cells in the wood, going down from the glue
LONGEST_S = 7200.0


class Point(NamedTuple):
    """The film at one time: its mean and its face's temperature (°C), the water lost to the air."""

    time_s: float
    film_c: float
    face_c: float
    evaporated_g_m2: float


@dataclass(frozen=True)
class Layers:
    """Wood under a film of glue, cut into cells; the film has the last ``FILM_CELLS``."""

    cells: Cells

    @property
    def wood_cells(self) -> int:
        """How many cells the wood has."""
        return len(self.cells.widths_m) - FILM_CELLS

    def with_film(self, share: float) -> "Layers":
        """The same wood under a film ``share`` times as thick."""
        widths = self.cells.widths_m
        film = tuple(share * width for width in widths[-FILM_CELLS:])
        return Layers(replace(self.cells, widths_m=widths[:-FILM_CELLS] + film))


@dataclass(frozen=True)
class Air:
    """The air over the film and what passes between the two."""

    temperature_c: float
    vapour_pa: float
    pressure_pa: float
    convection_w_m2_k: float
    radiation_w_m2_k: float
    mass_transfer_m_s: float

    def evaporation(self) -> Callable[[float], float]:
        """Water leaving the face, g/(m²·s), as a function of its temperature, °C."""
        air = (self.temperature_c, self.vapour_pa, self.pressure_pa, self.mass_transfer_m_s)
        return lambda face_c: 1000 * evaporation_kg_m2_s(face_c, *air)

    def loss(self) -> Callable[[float], float]:
        """Heat leaving the face, W/m²: to the air, to the walls, and with the vapour."""
        dry, air_c, leaving = self.dry_w_m2_k, self.temperature_c, self.evaporation()
        return lambda face_c: (
            dry * (face_c - air_c) + leaving(face_c) / 1000 * evaporation_heat_j_kg(face_c)
        )

    @property
    def dry_w_m2_k(self) -> float:
        """Film coefficient of a dry face."""
        return self.convection_w_m2_k + self.radiation_w_m2_k


def start_temperatures(
    glue: str,
    room_temperature: float,
    pot_temperature: float = 0.0,
    warmed_wood_temperature: float = 0.0,
    wood_temperature: float = 0.0,
) -> dict[str, float]:
    """Temperatures (°C) at which glue and wood start: from the pot, or as warm as the room."""
    if glue == "cooling":
        return {"glue_start": pot_temperature, "wood_start": warmed_wood_temperature}
    return {"glue_start": room_temperature, "wood_start": wood_temperature}


def air_state(
    room_temperature: float, room_humidity: float, air_pressure: float
) -> dict[str, float]:
    """Vapour pressures (Pa), density (kg/m³) and heat (J/(kg·K)) of the air; air_pressure in kPa.

    Source: ASHRAE Fundamentals ch. 1, eq. (6), (20), (26), (30).
    """
    pressure_pa = 1000 * air_pressure
    vapour_pa = vapour_pressure_pa(room_temperature, room_humidity)
    ratio = humidity_ratio(vapour_pa, pressure_pa)
    volume_m3_kg = dry_air_volume_m3_kg(room_temperature, ratio, pressure_pa)
    return {
        "saturation_pressure": saturation_pressure_pa(room_temperature),
        "vapour_pressure": vapour_pa,
        "humidity_ratio": ratio,
        "air_density": (1 + ratio) / volume_m3_kg,
        "air_heat_capacity": moist_air_heat_j_kg_k(ratio),
    }


def sheet_air_state(
    sheet_temperature: float, sheet_humidity: float, air_pressure: float
) -> dict[str, float]:
    """The same for the air of the data sheet's test."""
    air = air_state(sheet_temperature, sheet_humidity, air_pressure)
    names = ("vapour_pressure", "air_density", "air_heat_capacity")
    return {f"sheet_{name}": air[name] for name in names}


def radiation(room_temperature: float, emissivity: float) -> float:
    """Radiation between the film and the room, W/(m²·K), taken linear about room temperature."""
    return radiation_w_m2_k(room_temperature, emissivity)


def sheet_radiation(sheet_temperature: float, emissivity: float) -> float:
    """The same at the data sheet's temperature."""
    return radiation_w_m2_k(sheet_temperature, emissivity)


def viscosity_ratio(sheet_temperature: float, wood_temperature: float) -> float:
    """Viscosity of water at the data sheet's temperature over that at the wood's today."""
    return water_viscosity_pa_s(sheet_temperature) / water_viscosity_pa_s(wood_temperature)


def cut_layers(
    wood_conductivity: float,
    wood_density: float,
    wood_heat_capacity: float,
    wood_thickness: float,
    glue_conductivity: float,
    glue_density: float,
    glue_heat_capacity: float,
    film_thickness: float = 0.0,
    spread_thickness: float = 0.0,
) -> Layers:
    """Wood (mm thick) with a film (mm thick) on it, cut into cells that are fine at the joint.

    Conductivities W/(m·K), densities kg/m³, heat capacities J/(kg·K); of the two film
    thicknesses the one that applies is given.
    """
    film_m = (film_thickness or spread_thickness) / 1000
    cell_m = film_m / FILM_CELLS
    wood = graded_cells(
        wood_thickness / 1000, cell_m, GROWTH, wood_conductivity, wood_density * wood_heat_capacity
    )
    return Layers(
        wood + graded_cells(film_m, cell_m, 1, glue_conductivity, glue_density * glue_heat_capacity)
    )


def cut_sheet_layers(
    basic_gravity: float,
    sheet_wood_moisture: float,
    sheet_temperature: float,
    wood_thickness: float,
    glue_conductivity: float,
    glue_density: float,
    glue_heat_capacity: float,
    sheet_thickness: float,
) -> Layers:
    """The same wood at the data sheet's moisture (%) and temperature (°C), with its film on it."""
    gravity = wood_heat.gravity(basic_gravity, sheet_wood_moisture)
    return cut_layers(
        wood_heat.conductivity_w_m_k(gravity, sheet_wood_moisture),
        wood_heat.density_kg_m3(gravity, sheet_wood_moisture),
        wood_heat.heat_capacity_j_kg_k(sheet_wood_moisture, sheet_temperature),
        wood_thickness, glue_conductivity, glue_density, glue_heat_capacity,
        spread_thickness=sheet_thickness,
    )  # fmt: skip


def film_history(
    layers: Layers, glue_c: float, wood_c: float, air: Air, first_step_s: float
) -> Iterator[Point]:
    """The film from the moment it is laid on, step by step, without end.

    The wood starts at one temperature throughout; its back loses heat like a dry face. The film
    keeps its thickness and its properties, and its face stays wet.
    """
    leaving = air.evaporation()
    before = Point(0.0, glue_c, glue_c, 0.0)
    rate_g = leaving(glue_c)
    yield before
    for moment in march(
        layers.cells,
        [wood_c] * layers.wood_cells + [glue_c] * FILM_CELLS,
        air.loss(),
        back_w_m2_k=air.dry_w_m2_k,
        back_c=air.temperature_c,
        first_step_s=first_step_s,
    ):
        was, rate_g = rate_g, leaving(moment.face_c)
        before = Point(
            moment.time_s,
            sum(moment.temperatures_c[-FILM_CELLS:]) / FILM_CELLS,
            moment.face_c,
            before.evaporated_g_m2 + (moment.time_s - before.time_s) * (was + rate_g) / 2,
        )
        yield before


def until(history: Iterable[Point], done: Callable[[Point], bool]) -> list[Point]:
    """The points of a history up to the first that is ``done``, or the longest time we look at."""
    points = []
    for point in history:
        points.append(point)
        if done(point) or point.time_s >= LONGEST_S:
            break
    return points
