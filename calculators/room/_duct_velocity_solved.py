"""The parts of the duct calculation that go row by row: air, branches, friction of the main."""

import math
from collections.abc import Mapping, Sequence
from typing import Any

from ..engine.declaration import Refusal
from ..laws.duct_friction import friction_factor, straight_loss_pa, velocity_pressure_pa
from ..laws.standard_air import (
    air_viscosity_pa_s,
    moist_air_density_kg_m3,
    standard_pressure_pa,
)


def air_of_room(
    room_temperature: float, room_humidity: float, height_above_sea: float
) -> dict[str, float]:
    """Pressure (Pa), density (kg/m³) and kinematic viscosity (mm²/s) of the room's air.

    Temperature in °C, humidity in %, height in m. Sources: those of ``laws.standard_air``.
    """
    pressure = standard_pressure_pa(height_above_sea)
    density = moist_air_density_kg_m3(room_temperature, room_humidity, pressure)
    viscosity = air_viscosity_pa_s(room_temperature) / density * 1e6
    return {"air_pressure": pressure, "air_density": density, "air_viscosity": viscosity}


def duct_for(flow_m3_h: float, velocity_m_s: float, step_mm: float) -> float:
    """Largest duct made, mm, in which a flow keeps at least a velocity; sizes go by steps."""
    exact_mm = 1000 * math.sqrt(4 * flow_m3_h / (math.pi * velocity_m_s * 3600))
    return math.floor(exact_mm / step_mm + 1e-9) * step_mm


def branches_of_duct(
    branches: Sequence[Mapping[str, Any]],
    open_at_once: float,
    transport_velocity: float,
    size_step: float,
    bend_loss: float,
    hood_loss: float,
    roughness: float,
    air_density: float,
    air_viscosity: float,
) -> dict[str, Any]:
    """Every branch's duct, velocity and loss, and the least and most air in the main.

    Flows in m³/h, lengths in m, sizes and roughness in mm, viscosity in mm²/s, pressures in Pa.
    The main carries at least the smallest flows that may be open together and at most the
    largest. Sources: continuity; Darcy-Weisbach; losses of hood and bends as shares of the
    velocity pressure.
    """
    count = round(open_at_once)
    if count > len(branches):
        raise Refusal(
            "open_at_once",
            f"{count} gates open, but there are only {len(branches)} machines; mend one of them",
            f"a whole number from 1 to {len(branches)}",
        )
    rows: list[dict[str, Any]] = []
    for place, branch in enumerate(branches, start=1):
        flow = float(branch["flow"])
        diameter = duct_for(flow, transport_velocity, size_step)
        if diameter <= 0:
            raise Refusal(
                f"branches[{place}].flow",
                f"{branch['machine']} draws too little for the smallest duct of {size_step:g} mm; "
                "give it more air or take finer steps of size",
                "a flow that keeps the velocity in the smallest duct",
            )
        velocity = flow / 3600 / (math.pi * (diameter / 1000) ** 2 / 4)
        head = velocity_pressure_pa(air_density, velocity)
        straight = straight_loss_pa(
            air_density, air_viscosity / 1e6, velocity, diameter / 1000,
            float(branch["run"]), roughness / 1000,
        )  # fmt: skip
        fittings = (hood_loss + bend_loss * float(branch["bends"])) * head
        rows.append(
            {
                "number": place, "machine": branch["machine"], "flow": flow,
                "diameter": diameter, "velocity": velocity, "straight": straight,
                "fittings": fittings, "loss": straight + fittings,
            }
        )  # fmt: skip
    flows = sorted(row["flow"] for row in rows)
    worst = max(rows, key=lambda row: float(row["loss"]))
    return {
        "branch_rows": rows,
        "flow_low": float(sum(flows[:count])),
        "flow_high": float(sum(flows[-count:])),
        "branch_loss": worst["loss"],
        "worst_branch": worst["machine"],
        "widest_branch": max(row["diameter"] for row in rows),
    }


def main_friction(main_reynolds: float, roughness: float, main_diameter: float) -> float:
    """Colebrook's friction factor of the main; roughness and diameter in mm."""
    return friction_factor(main_reynolds, roughness / main_diameter)
