"""Figures from outside for the glue clock, and how to get ours beside them."""

import math
from itertools import pairwise

from ..engine.declaration import Check, Source
from ..laws import wood_heat
from ..laws.conduction import Loss, contact_temperature_c, graded_cells, march
from ..laws.drying import water_viscosity_pa_s
from ..laws.psychrometrics import saturation_pressure_pa
from ._glue_film import Air, air_state, cut_layers, film_history
from ._glue_runs import point_at

PSYCHROLIB = Source(
    id="psychrolib", title="PsychroLib 2.5.0 (ASHRAE Fundamentals 2017, ch. 1)", kind="library",
)  # fmt: skip
COOLPROP = Source(
    id="coolprop", title="CoolProp 8.0.0 (water after IAPWS-95, moist air after ASHRAE RP-1485)",
    kind="library",
)  # fmt: skip
MPMATH = Source(
    id="mpmath", title="mpmath, arbitrary-precision arithmetic and inverse Laplace transforms",
    kind="library",
    note="Flux cases: Carslaw and Jaeger 2.9 with mpmath 1.3.0. Film on deep wood: the two-layer "
    "transform turned back with mpmath 1.4.1 at 30 digits.",
)  # fmt: skip
SCIPY = Source(
    id="scipy-model", title="scipy 1.18.1, BDF, on a separate model of the film and the wood",
    kind="library",
    note="Node-centred differences on 425 points, air and water from CoolProp; written apart from "
    "this project's solver.",
)  # fmt: skip
EES_HELP = Source(
    id="semi-infinite-examples",
    title="Heat transfer library help, semi-infinite bodies (after Nellis and Klein, Heat "
    "Transfer, Table 3-2)",
    author="F-Chart Software",
    note="Worked examples semiinf1 and SemiInf10, read from stored copies of the help pages.",
)
HT_LIBRARY = Source(
    id="ht-materials", title="ht 1.2.0, building materials of DIN EN 12524, ISO 10456 and ASHRAE "
    "Fundamentals",
    kind="library", note="Effusivities from its properties, contact temperatures by Carslaw and "
    "Jaeger 2.15.",
)  # fmt: skip
CHEMICS = Source(
    id="chemics-wood", title="chemics, wood properties after the Wood Handbook, chapter 4 (2010)",
    kind="library", note="Docstring example of its conductivity.",
)  # fmt: skip
HANDBOOK_EXAMPLE = Source(
    id="wood-handbook-ash",
    title="Wood handbook (FPL-GTR-190), p. 4-9: density of white ash at 12 % moisture, worked "
    "example",
    author="USDA Forest Products Laboratory",
    year="2010",
)
CHECK_SOURCES = (
    PSYCHROLIB, COOLPROP, MPMATH, SCIPY, EES_HELP, HT_LIBRARY, CHEMICS, HANDBOOK_EXAMPLE,
)  # fmt: skip
FINE, WIDENING, STEPS = 0.01, 1.04, 6  # of the deep body below, in reaches √(α·t); stages of time


def deep_body_by_cells_c(
    time_s: float, depth_m: float, conductivity_w_m_k: float, diffusivity_m2_s: float,
    flux_w_m2: float = 0.0, surface_c: float | None = None, start_c: float = 0.0,
    start_slope_c_m: float = 0.0,
) -> float:  # fmt: skip
    """What the march of cells makes of a deep body: temperature at a depth after a time, °C.

    The face takes a steady flux, or (``surface_c``) jumps to a temperature; the start rises by
    ``start_slope_c_m`` with depth.
    """
    reach_m = math.sqrt(diffusivity_m2_s * time_s)
    heat_j_m3_k = conductivity_w_m_k / diffusivity_m2_s
    cells = graded_cells(12 * reach_m, FINE * reach_m, WIDENING, conductivity_w_m_k, heat_j_m3_k)
    depths, deep_m = [], 12 * reach_m
    for width in cells.widths_m:
        depths.append(deep_m - width / 2)
        deep_m -= width
    loss: Loss = (
        (lambda _: -flux_w_m2) if surface_c is None
        else lambda face_c: 1e9 * (face_c - surface_c)
    )  # fmt: skip
    start = [start_c + start_slope_c_m * depth for depth in depths]
    moments = march(cells, start, loss, first_step_s=time_s / (8 * (2**STEPS - 1)))
    end = next(moment for moment in moments if moment.time_s >= time_s * (1 - 1e-9))
    places = [(0.0, end.face_c), *zip(reversed(depths), reversed(end.temperatures_c), strict=True)]
    (d0, t0), (d1, t1) = next(pair for pair in pairwise(places) if pair[1][0] >= depth_m)
    return t0 + (t1 - t0) * (depth_m - d0) / (d1 - d0)


def touch_by_cells_c(
    first_c: float, first_effusivity: float, second_c: float, second_effusivity: float
) -> float:
    """What the march of cells makes of two deep bodies that touch: temperature of the joint, °C."""
    second = graded_cells(12, FINE, WIDENING, second_effusivity, second_effusivity)
    turned = graded_cells(12, FINE, WIDENING, first_effusivity, first_effusivity)
    first = type(turned)(turned.widths_m[::-1], turned.conductivities_w_m_k, turned.heats_j_m3_k)
    count = len(second.widths_m)
    start = [second_c] * count + [first_c] * len(first.widths_m)
    moments = march(second + first, start, lambda _: 0.0, first_step_s=1 / (8 * (2**STEPS - 1)))
    end = next(moment for moment in moments if moment.time_s >= 1 - 1e-9).temperatures_c
    links = second_effusivity / second.widths_m[-1], first_effusivity / first.widths_m[0]
    return (links[0] * end[count - 1] + links[1] * end[count]) / sum(links)


def film_on_deep_wood_c(time_s: float) -> float:
    """Mean temperature of a 0.2 mm film, 61 °C, on deep wood of 22 °C, nothing lost to the air."""
    layers = cut_layers(
        wood_conductivity=0.11, wood_density=687.5, wood_heat_capacity=1000, wood_thickness=100,
        glue_conductivity=0.4, glue_density=1100, glue_heat_capacity=3000, film_thickness=0.2,
    )  # fmt: skip
    still = Air(22, 1000, 101325, 0, 0, 0)
    history = []
    for point in film_history(layers, 61, 22, still, 0.002):
        history.append(point)
        if point.time_s >= time_s:
            break
    return point_at(history, time_s).film_c


PLASTIC = {"conductivity_w_m_k": 0.2, "diffusivity_m2_s": 1.1e-7, "depth_m": 0}
STEEL = {"conductivity_w_m_k": 50, "diffusivity_m2_s": 1.425e-5, "flux_w_m2": 50000, "time_s": 1}
HAND_ON_TIMBER = {
    "first_c": 60, "first_effusivity": 322.5, "second_c": 34, "second_effusivity": 1616.6,
}  # fmt: skip
CELLS_WHY = "we cut the body into cells of a hundredth of the reach and widening"
AIR_WHY = "CoolProp counts that air and vapour are not ideal gases; ASHRAE's equations do not"
MODEL_WHY = (
    "the separate model has other cells, other air and water properties and no fixed Lewis number"
)
COLD_WOOD = {"glue": "cooling", "warmed_wood_temperature": 21}

CHECKS: tuple[Check, ...] = (
    Check(
        function=air_state,
        given={"room_temperature": 20, "room_humidity": 45, "air_pressure": 101.325},
        source="psychrolib", origin="library", where="20 °C, 45 %, 101.325 kPa",
        expected={"saturation_pressure": "2338.804", "humidity_ratio": "0.0065279",
                  "air_density": "1.19942"},
    ),
    Check(
        function=air_state,
        given={"room_temperature": 30, "room_humidity": 60, "air_pressure": 101.325},
        source="psychrolib", origin="library", where="30 °C, 60 %, 101.325 kPa",
        expected={"saturation_pressure": "4246.030", "humidity_ratio": "0.0160409",
                  "air_density": "1.15336"},
    ),
    Check(
        function=air_state,
        given={"room_temperature": 20, "room_humidity": 50, "air_pressure": 84.5559},
        source="psychrolib", origin="library", where="20 °C, 50 %, 1500 m above the sea",
        expected={"humidity_ratio": "0.0087221"},
    ),
    Check(
        function=air_state,
        given={"room_temperature": 25, "room_humidity": 60, "air_pressure": 101.325},
        source="coolprop", origin="library", where="25 °C, 60 %, 101.325 kPa",
        expected={"saturation_pressure": "3169.929", "humidity_ratio": "0.011949",
                  "air_density": "1.17597"},
        within="0.5 %", because=AIR_WHY,
    ),
    Check(
        function=saturation_pressure_pa, given={"temperature_c": 35}, source="coolprop",
        origin="library", where="saturation pressure at 35 °C",
        unit="Pa", expected={"": "5629.016"},
        within="0.03 %", because="Hyland and Wexler's equation and IAPWS-95 differ by so much",
    ),
    Check(
        function=water_viscosity_pa_s, given={"temperature_c": 20}, source="coolprop",
        origin="library", where="viscosity of water at 20 °C, Pa·s", expected={"": "0.00100160"},
        within="0.01 %", because="the IAPWS short equation fits its full one to so much",
    ),
    Check(
        function=wood_heat.conductivity_w_m_k,
        given={"wood_gravity": 0.588235, "wood_moisture": 10},
        source="chemics-wood", origin="read", unit="W/m/K", expected={"": "0.1567"},
        where="conductivity, basic gravity 0.54, shrinkage 12.3 %, moisture 10 %: gravity 0.588235",
    ),
    Check(
        function=wood_heat.heat_capacity_j_kg_k,
        given={"wood_moisture": 12, "property_temperature": 20}, source="ht-materials",
        origin="library", where="heat capacity of wood at 12 % moisture, ASHRAE's table of "
        "materials",
        unit="J/kg/K", expected={"": "1630"}, within="1 %",
        because="the table gives one round value for all woods",
    ),
    Check(
        inputs={"wood_moisture": 12, "basic_gravity": 0.55}, source="wood-handbook-ash",
        origin="read",
        where="white ash, basic gravity 0.55, at 12 %",
        expected={"wood_gravity": "0.605", "wood_density": "678"}, within="0.5 %",
        because="the handbook reads the gravity off a figure",
    ),
    Check(
        function=deep_body_by_cells_c, given={**PLASTIC, "flux_w_m2": 2000, "time_s": 5},
        source="mpmath", origin="library", where="constant flux 2000 W/m² on plastic, surface, 5 s",
        unit="K", expected={"": "8.3682839"}, within="0.03 %", because=CELLS_WHY,
    ),
    Check(
        function=deep_body_by_cells_c, given={**PLASTIC, "flux_w_m2": 10000, "time_s": 1},
        source="mpmath", origin="library",
        where="constant flux 10000 W/m² on plastic, surface, 1 s",
        unit="K", expected={"": "18.712052"}, within="0.03 %", because=CELLS_WHY,
    ),
    Check(
        function=deep_body_by_cells_c, given={**STEEL, "depth_m": 0.001}, source="mpmath",
        origin="library", where="constant flux 50000 W/m² on steel, 1 mm down, 1 s", unit="K",
        expected={"": "3.3340489"}, within="0.03 %", because=CELLS_WHY,
    ),
    Check(
        function=deep_body_by_cells_c,
        given={"time_s": 2, "depth_m": 0.05, "conductivity_w_m_k": 100,
               "diffusivity_m2_s": 9.547e-5, "surface_c": 303, "start_c": 378},
        source="semi-infinite-examples", origin="read",
        where="semiinf1: surface step from 378 to 303 K",
        unit="K", expected={"": "377.2"},
    ),
    Check(
        function=deep_body_by_cells_c,
        given={"time_s": 10, "depth_m": 0.1, "conductivity_w_m_k": 100, "diffusivity_m2_s": 1e-3,
               "flux_w_m2": 1e5, "start_c": 100, "start_slope_c_m": 10},
        source="semi-infinite-examples", origin="read",
        where="SemiInf10: constant flux on a body that starts warmer with depth", unit="K",
        expected={"": "141.3"},
    ),
    Check(
        function=contact_temperature_c,
        given=HAND_ON_TIMBER,
        source="ht-materials", origin="library", where="timber of 60 °C touches skin of 34 °C",
        unit="degC", expected={"": "38.3241"}, within="0.0005",
        because="the effusivities are printed with one decimal",
    ),
    Check(
        function=touch_by_cells_c,
        given=HAND_ON_TIMBER,
        source="ht-materials", origin="library", where="the same, by the march of cells",
        unit="degC",
        expected={"": "38.3241"}, within="0.01", because=CELLS_WHY,
    ),
    Check(
        function=touch_by_cells_c,
        given={"first_c": 20, "first_effusivity": 13247.6, "second_c": 100,
               "second_effusivity": 564.4},
        source="ht-materials", origin="library",
        where="steel of 20 °C touches acrylic glass of 100 °C, by the march of cells",
        unit="degC", expected={"": "23.2693"}, within="0.01",
        because=CELLS_WHY,
    ),
    *(
        Check(
            function=film_on_deep_wood_c, given={"time_s": time_s}, source="mpmath",
            origin="library",
            where=f"hot film on deep wood, inverse Laplace transform, {time_s} s", unit="degC",
            expected={"": printed}, within="0.05", because="the film has eight cells",
        )
        for time_s, printed in ((1, "48.0960"), (5, "39.5618"), (20, "32.5980"))
    ),
    Check(
        inputs={"glue": "cooling"}, source="scipy-model", origin="library",
        where="hide glue of the example on wood of 45 °C: seconds to the jelly point",
        expected={"open_time": "132.32"}, within="1 %", because=MODEL_WHY,
    ),
    Check(
        inputs=COLD_WOOD, source="scipy-model", origin="library",
        where="the same on wood of 21 °C: seconds to the jelly point",
        expected={"open_time": "7.4326"}, within="1 %", because=MODEL_WHY,
    ),
    Check(
        inputs={}, source="scipy-model", origin="library",
        where="water-borne glue of the example: seconds to the skin, water to air and wood",
        expected={"open_time": "291.83", "evaporated": "8.648", "soaked": "42.71",
                  "skinned_water": "47.165", "skin_temperature": "18.260"},
        within="1 %", because=MODEL_WHY,
    ),
    Check(
        inputs={"room_temperature": 26, "room_humidity": 30, "wood_temperature": 26,
                "wood_moisture": 6},
        source="scipy-model", origin="library",
        where="the same at 26 °C and 30 % on wood of 6 % moisture",
        expected={"open_time": "215.39", "evaporated": "10.738", "skin_temperature": "21.883"},
        within="1 %", because=MODEL_WHY,
    ),
    Check(
        inputs={"air_movement": 12, "spread": 150}, source="scipy-model", origin="library",
        where="the same in a draught with a spread of 150 g/m²",
        expected={"open_time": "156.28", "evaporated": "11.544"}, within="1 %", because=MODEL_WHY,
    ),
)  # fmt: skip
