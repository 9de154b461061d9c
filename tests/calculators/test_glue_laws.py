"""Air, water and wood behind the glue clock, against PsychroLib, CoolProp and printed figures."""

import math

import psychrolib
import pytest
from CoolProp.CoolProp import HAPropsSI, PropsSI
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import brentq

from calculators.glueing._glue_film import Air, air_state
from calculators.glueing.glue_open_time import calculator
from calculators.laws import wood_heat
from calculators.laws.drying import (
    evaporation_kg_m2_s,
    radiation_w_m2_k,
    water_viscosity_pa_s,
)
from calculators.laws.psychrometrics import (
    evaporation_heat_j_kg,
    humidity_ratio,
    saturation_pressure_pa,
    vapour_pressure_pa,
)

MODEST = settings(max_examples=40)
PRESSURE_PA = 101325.0
room = st.floats(10, 40)
humidity = st.floats(10, 95)
psychrolib.SetUnitSystem(psychrolib.SI)


@MODEST
@given(st.floats(1, 75))
def test_saturation_pressure(temperature_c: float) -> None:
    ours = saturation_pressure_pa(temperature_c)
    assert ours == pytest.approx(psychrolib.GetSatVapPres(temperature_c), rel=1e-12)
    water = PropsSI("P", "T", temperature_c + 273.15, "Q", 0, "Water")
    assert ours == pytest.approx(water, rel=4e-4)


@MODEST
@given(room, humidity, st.floats(65, 107))
def test_moist_air(temperature_c: float, humidity_percent: float, pressure_kpa: float) -> None:
    ours = air_state(temperature_c, humidity_percent, pressure_kpa)
    share, pressure = humidity_percent / 100, 1000 * pressure_kpa
    ratio = psychrolib.GetHumRatioFromRelHum(temperature_c, share, pressure)
    assert ours["humidity_ratio"] == pytest.approx(ratio, rel=1e-9)
    density = psychrolib.GetMoistAirDensity(temperature_c, ratio, pressure)
    assert ours["air_density"] == pytest.approx(density, rel=1e-6)
    state = ("T", temperature_c + 273.15, "R", share, "P", pressure)
    assert ours["humidity_ratio"] == pytest.approx(HAPropsSI("W", *state), rel=7e-3)
    assert ours["air_heat_capacity"] == pytest.approx(HAPropsSI("cp_ha", *state), rel=5e-3)


@pytest.mark.parametrize("temperature_c", [1, 10, 21, 35, 50, 70])
def test_water(temperature_c: float) -> None:
    kelvin = temperature_c + 273.15
    viscosity = PropsSI("V", "T", kelvin, "P", PRESSURE_PA, "Water")
    assert water_viscosity_pa_s(temperature_c) == pytest.approx(viscosity, rel=1e-4)
    heat = PropsSI("H", "T", kelvin, "Q", 1, "Water") - PropsSI("H", "T", kelvin, "Q", 0, "Water")
    assert evaporation_heat_j_kg(temperature_c) == pytest.approx(heat, rel=3e-3)


def test_lewis_number_is_that_of_air_and_vapour() -> None:
    """Diffusivity of heat from CoolProp over that of vapour from ASHRAE's equation, 10 to 40 °C."""
    printed = next(c.value for c in calculator.constants if c.name == "lewis_number")
    for kelvin in (283.15, 293.15, 313.15):
        state = ("T", kelvin, "P", PRESSURE_PA, "Air")
        heat = PropsSI("L", *state) / PropsSI("D", *state) / PropsSI("C", *state)
        vapour = 1e-6 * 0.926 / 101.325 * kelvin**2.5 / (kelvin + 245)
        assert printed == pytest.approx(heat / vapour, rel=0.01)


def air_over(temperature_c: float, humidity_percent: float, radiation: float) -> Air:
    state = air_state(temperature_c, humidity_percent, PRESSURE_PA / 1000)
    carried = 4 / (state["air_density"] * state["air_heat_capacity"] * 0.854 ** (2 / 3))
    return Air(temperature_c, state["vapour_pressure"], PRESSURE_PA, 4, radiation, carried)


@MODEST
@given(room, humidity)
def test_a_wet_face_rests_at_the_wet_bulb(temperature_c: float, humidity_percent: float) -> None:
    """Without radiation or wood it settles near the thermodynamic wet bulb, a little below."""
    loss = air_over(temperature_c, humidity_percent, 0).loss()
    rests: float = brentq(loss, temperature_c - 30, temperature_c)
    wet_bulb = psychrolib.GetTWetBulbFromRelHum(temperature_c, humidity_percent / 100, PRESSURE_PA)
    assert wet_bulb - 1 < rests < wet_bulb + 0.1


@MODEST
@given(room, humidity, st.floats(0, 70))
def test_evaporation(temperature_c: float, humidity_percent: float, face_c: float) -> None:
    vapour = vapour_pressure_pa(temperature_c, humidity_percent)
    given_air = (temperature_c, vapour, PRESSURE_PA)
    rate = evaporation_kg_m2_s(face_c, *given_air, 0.004)
    # It follows the sign of the difference in pressure, and grows with the face's temperature.
    assert (rate > 0) == (saturation_pressure_pa(face_c) > vapour)
    assert evaporation_kg_m2_s(face_c + 1, *given_air, 0.004) > rate
    assert evaporation_kg_m2_s(face_c, *given_air, 0.008) == pytest.approx(2 * rate)
    # Stefan's flow makes it a little more than the plain difference, never much.
    mean_k = (face_c + temperature_c) / 2 + 273.15
    plain = 0.004 * (saturation_pressure_pa(face_c) - vapour) / (461.524 * mean_k)
    assert 1 <= (rate / plain if plain else 1) < 1.25


def test_radiation_is_the_slope_of_the_fourth_power_law() -> None:
    def sent(celsius: float) -> float:
        return 0.9 * 5.670374419e-8 * (celsius + 273.15) ** 4

    slope = (sent(21.01) - sent(20.99)) / 0.02
    assert radiation_w_m2_k(21, 0.9) == pytest.approx(slope, rel=1e-8)


@pytest.mark.parametrize(
    ("moisture", "celsius", "printed"),
    [(0, 20, 1236.7), (6, 20, 1442.2), (6, 100, 1847.3), (8, 60, 1723.1), (12, 60, 1871.6)],
)
def test_heat_capacity_of_wood(moisture: float, celsius: float, printed: float) -> None:
    assert wood_heat.heat_capacity_j_kg_k(moisture, celsius) == pytest.approx(printed, abs=0.06)


@pytest.mark.parametrize(
    ("gravity", "printed"), [(0.40, 0.1158), (0.35, 0.1036), (0.32, 0.0964), (0.63, 0.1716)]
)
def test_conductivity_of_wood_at_twelve_per_cent(gravity: float, printed: float) -> None:
    assert wood_heat.conductivity_w_m_k(gravity, 12) == pytest.approx(printed, abs=5e-5)


@pytest.mark.parametrize(
    ("gravity", "table"), [(0.31 / (1 - 0.05), 0.10), (0.63, 0.18), (0.43, 0.12), (0.50, 0.15)]
)
def test_conductivity_against_the_table_of_woods(gravity: float, table: float) -> None:
    """Western red cedar, sugar maple, black spruce, black cherry: the table rounds and averages."""
    assert wood_heat.conductivity_w_m_k(gravity, 12) == pytest.approx(table, rel=0.08)


@MODEST
@given(st.floats(0.3, 0.75), st.floats(3, 20))
def test_wood_swells_and_gains_weight_with_moisture(basic: float, moisture: float) -> None:
    now, wetter = wood_heat.gravity(basic, moisture), wood_heat.gravity(basic, moisture + 1)
    assert basic < wetter < now
    assert wood_heat.density_kg_m3(wetter, moisture + 1) > wood_heat.density_kg_m3(now, moisture)
    assert wood_heat.gravity(basic, 30) == basic
    assert math.isclose(wood_heat.density_kg_m3(now, 0), 1000 * now)


def test_humidity_ratio_of_dry_air_is_nothing() -> None:
    assert humidity_ratio(0, PRESSURE_PA) == 0
