"""What must hold of the blushing calculation: damp air, solvents, the film that they chill."""

import math
from typing import Any

import psychrolib
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calculators.engine.compute import Answer, Say, work_out
from calculators.engine.inputs import Refused
from calculators.finish._blush_drawing import draw_film
from calculators.finish._blush_solved import MIXES, OTHER_NAMES, Coat, history, moles_m2
from calculators.finish._polishing_solved import WOODS
from calculators.finish.blush_risk import calculator
from calculators.laws.conduction import Cells, graded_cells, march
from calculators.laws.dew_point import dew_point_c
from calculators.laws.psychrometrics import saturation_pressure_pa
from calculators.laws.solvent_evaporation import (
    SOLVENTS,
    STEFAN_BOLTZMANN,
    Solvent,
    air_along,
    air_conductivity_w_m_k,
    diffusion_volume,
    diffusivity_in_air_m2_s,
    fluxes_mol_m2_s,
    leaving,
    vapour_pressure_of_pa,
    wet_bulb_c,
)

from .svg_bounds import outside

psychrolib.SetUnitSystem(psychrolib.SI)
NAMES = st.sampled_from(sorted(SOLVENTS))


def answer(**given_inputs: Any) -> Answer:
    worked = work_out(calculator, given_inputs)
    assert isinstance(worked, Answer), worked
    return worked


def values(**given_inputs: Any) -> dict[str, Any]:
    return answer(**given_inputs).values


def refusal(**given_inputs: Any) -> Refused:
    worked = work_out(calculator, given_inputs)
    assert isinstance(worked, list)
    return worked[0]


def a_coat(**changes: Any) -> Coat:
    coat = Coat(
        room_temperature=22.0, mix=MIXES["medium"], retarder_added=0.0, wet_film=125.0,
        solids_sprayed=20.0, body_temperature=22.0, wood="medium", plate_thickness=2.6,
        air_speed=0.5, surface_length=400.0, landing_drop=2.0, evaporation_share=100.0,
    )  # fmt: skip
    return coat._replace(**changes)


# Damp air


@given(st.floats(0, 40), st.floats(5, 100))
@settings(max_examples=60)
def test_the_dew_point_is_where_the_vapour_saturates(degrees: float, humidity: float) -> None:
    dew = dew_point_c(degrees, humidity)
    assert dew <= degrees + 1e-9
    vapour = humidity / 100 * saturation_pressure_pa(degrees)
    assert saturation_pressure_pa(dew) == pytest.approx(vapour, rel=1e-9)
    if dew > 0.1:
        theirs = psychrolib.GetTDewPointFromRelHum(degrees, humidity / 100)
        assert dew == pytest.approx(theirs, abs=2e-3)


def test_the_damp_of_the_example() -> None:
    v = values()
    assert v["saturation"] == pytest.approx(saturation_pressure_pa(22) / 1000)
    assert v["vapour_in_air"] == pytest.approx(v["saturation"] / 2)
    assert values(room_humidity=100)["dew_point"] == pytest.approx(22)


# Solvents


@given(NAMES, st.floats(-10, 40))
@settings(max_examples=40)
def test_vapour_pressure_rises_straight_in_its_logarithm(name: str, degrees: float) -> None:
    solvent = SOLVENTS[name]
    assert vapour_pressure_of_pa(solvent, 5) == pytest.approx(solvent.pressure_5_pa)
    assert vapour_pressure_of_pa(solvent, 25) == pytest.approx(solvent.pressure_25_pa)
    assert vapour_pressure_of_pa(solvent, degrees) < vapour_pressure_of_pa(solvent, degrees + 1)
    share = (1 / 278.15 - 1 / (degrees + 273.15)) / (1 / 278.15 - 1 / 298.15)
    ratio = solvent.pressure_25_pa / solvent.pressure_5_pa
    assert vapour_pressure_of_pa(solvent, degrees) == pytest.approx(
        solvent.pressure_5_pa * ratio**share
    )


@pytest.mark.parametrize("name", sorted(SOLVENTS))
def test_the_slope_of_the_vapour_pressure_is_the_heat_of_evaporation(name: str) -> None:
    """Clausius and Clapeyron; two of the library's solvents keep to it only roughly."""
    solvent = SOLVENTS[name]
    slope = math.log(solvent.pressure_25_pa / solvent.pressure_5_pa) / (1 / 278.15 - 1 / 298.15)
    heat = 8.314462618 * slope / (solvent.molar_mass_g_mol / 1000)
    rough = 0.12 if name in ("butyl glycol", "butyl acetate") else 0.05
    assert heat == pytest.approx(solvent.heat_j_kg, rel=rough)


def test_fuller_by_hand() -> None:
    assert diffusion_volume(3, 6, 1) == pytest.approx(3 * 15.9 + 6 * 2.31 + 6.11)
    assert diffusion_volume(7, 8, 0, 1) == pytest.approx(7 * 15.9 + 8 * 2.31 - 18.3)
    mass = 2 / (1 / 58.079 + 1 / 28.966)
    reach = 67.67 ** (1 / 3) + 19.7 ** (1 / 3)
    expected = 0.00143 * 298.15**1.75 / (1.01325 * math.sqrt(mass) * reach**2) * 1e-4
    assert diffusivity_in_air_m2_s(58.079, 67.67, 25) == pytest.approx(expected)


@given(st.floats(0, 40), st.floats(0.1, 3), st.floats(0.05, 1))
@settings(max_examples=30)
def test_air_along_a_plate(degrees: float, speed: float, length: float) -> None:
    air, faster = air_along(degrees, speed, length), air_along(degrees, 4 * speed, length)
    assert faster.plate_w_m2_k == pytest.approx(2 * air.plate_w_m2_k)
    longer = air_along(degrees, speed, 4 * length)
    assert longer.plate_w_m2_k == pytest.approx(air.plate_w_m2_k / 2)
    assert air.heat_j_m3_k == pytest.approx(353 / (degrees + 273.15) * 1006, rel=2e-3)
    assert air.thermal_m2_s * air.heat_j_m3_k == pytest.approx(air_conductivity_w_m_k(degrees))


def test_the_air_agrees_with_the_library_from_end_to_end() -> None:
    assert air_conductivity_w_m_k(0) == pytest.approx(0.024360, rel=1e-3)
    assert air_conductivity_w_m_k(40) == pytest.approx(0.027354, rel=1e-3)
    assert air_along(22, 0.5, 0.4).plate_w_m2_k == pytest.approx(4.4016, rel=3e-3)


@given(NAMES, st.floats(5, 40), st.floats(0.1, 3), st.floats(0.2, 1.5))
@settings(max_examples=50)
def test_the_wet_bulb_balances_and_does_not_ask_the_wind(
    name: str, degrees: float, speed: float, share: float
) -> None:
    air = air_along(degrees, speed, 0.4)
    parts = {leaving(SOLVENTS[name], air): 2.0}
    bulb = wet_bulb_c(parts, air, share)
    assert -60 < bulb < degrees
    (part,) = parts
    (flux,) = fluxes_mol_m2_s(parts, degrees, bulb, share)
    assert flux * part.heat_j_mol == pytest.approx(air.plate_w_m2_k * (degrees - bulb), rel=1e-6)
    windy = air_along(degrees, 3 * speed, 0.2)
    assert wet_bulb_c({leaving(SOLVENTS[name], windy): 1.0}, windy, share) == pytest.approx(bulb)


def test_the_flux_by_hand() -> None:
    air = air_along(22, 0.5, 0.4)
    toluene = SOLVENTS["toluene"]
    part = leaving(toluene, air)
    lewis = air.thermal_m2_s / diffusivity_in_air_m2_s(92.138, toluene.diffusion_volume, 22)
    speed = air.plate_w_m2_k / air.heat_j_m3_k / lewis ** (2 / 3)
    parts = {part: 1.0, leaving(SOLVENTS["acetone"], air): 3.0}
    found = fluxes_mol_m2_s(parts, 22, 12, 0.8)[0]
    pressure = vapour_pressure_of_pa(toluene, 12) / 4
    assert found == pytest.approx(0.8 * speed * pressure / (8.314462618 * 290.15))
    assert part.heat_j_mol == pytest.approx(415809 * 0.092138)
    assert fluxes_mol_m2_s({part: 0.0}, 22, 12, 1.0) == [0.0]


@pytest.mark.parametrize("degrees", [15, 22, 30])
def test_water_for_a_solvent_is_a_wet_bulb_thermometer(degrees: float) -> None:
    """Draughted and shielded, it lies up to a tenth of its drop below adiabatic saturation."""
    water = Solvent("water", 18.015, 998.2, 872.487, 3169.216, 2453548, diffusion_volume(0, 2, 1))
    air = air_along(degrees, 1.0, 0.1)
    ours = degrees - wet_bulb_c({leaving(water, air): 1.0}, air, 1.0)
    theirs = degrees - psychrolib.GetTWetBulbFromRelHum(degrees, 0.0, 101325.0)
    assert 1.0 < ours / theirs < 1.1


# The film


def test_the_solvents_of_the_coat_by_hand() -> None:
    coat = a_coat(mix={"toluene": 30, "butyl acetate": 20}, retarder_added=10.0)
    parts = moles_m2(coat, air_along(22, 0.5, 0.4))
    litres = {part.solvent.words: moles * part.solvent.molar_mass_g_mol
              / part.solvent.density_kg_m3 for part, moles in parts.items()}  # fmt: skip
    whole = 125 * 0.8 / 1000
    assert litres["toluene"] == pytest.approx(whole * 30 / 55)
    assert litres["butyl acetate"] == pytest.approx(whole * 20 / 55)
    assert litres["butyl glycol (2-butoxyethanol)"] == pytest.approx(whole * 5 / 55)
    v = values(thinner="own", solvents=[["toluene", 30], ["butyl acetate", 20]], retarder_added=10)
    assert v["solvent_mass"] == pytest.approx(100 / 55 * (30 * 0.8669 + 20 * 0.8809 + 5 * 0.9668))
    assert v["solvent_film"] == pytest.approx(100)


@pytest.mark.parametrize(
    "changes",
    [
        {}, {"mix": MIXES["fast"], "wood": "spruce"}, {"mix": MIXES["slow"], "air_speed": 2.0},
        {"body_temperature": 12.0, "plate_thickness": 15.0, "wet_film": 200.0, "wood": "heavy"},
        {"landing_drop": 8.0, "evaporation_share": 50.0, "wood": "maple"},
    ],
)  # fmt: skip
def test_the_film_agrees_with_the_finer_march_of_heat(changes: dict[str, Any]) -> None:
    """The same film by the shared march of cells: finer cells, second order, secant steps."""
    coat = a_coat(**changes)
    air = air_along(coat.room_temperature, coat.air_speed, coat.surface_length / 1000)
    parts = moles_m2(coat, air)
    start = sum(n * p.solvent.molar_mass_g_mol / p.solvent.density_kg_m3 for p, n in parts.items())
    conductivity, density, heat = WOODS[coat.wood]
    film_m = coat.wet_film * 1e-6
    cells = graded_cells(coat.plate_thickness / 1000, 5e-5, 1.3, conductivity, density * heat)
    cells = cells + Cells((film_m,), (50.0,), (1.7e6,))
    room, share = coat.room_temperature, coat.evaporation_share / 100

    def loss(face_c: float) -> float:
        fluxes = fluxes_mol_m2_s(parts, room, face_c, share)
        shine = 0.9 * STEFAN_BOLTZMANN * ((face_c + 273.15) ** 4 - (room + 273.15) ** 4)
        gone = sum(f * p.heat_j_mol for f, p in zip(fluxes, parts, strict=True))
        return gone + shine + air.plate_w_m2_k * (face_c - room)

    begins = [coat.body_temperature] * (len(cells.widths_m) - 1) + [room - coat.landing_drop]
    before, coldest, coldest_at = 0.0, room - coat.landing_drop, 0.0
    for moment in march(cells, begins, loss, back_w_m2_k=5.0, back_c=coat.body_temperature,
                        first_step_s=0.05, longest_step_s=2.0):  # fmt: skip
        step, before = moment.time_s - before, moment.time_s
        for part, flux in zip(
            parts, fluxes_mol_m2_s(parts, room, moment.face_c, share), strict=True
        ):
            parts[part] *= math.exp(-flux * step / parts[part])
        left = sum(n * p.solvent.molar_mass_g_mol / p.solvent.density_kg_m3
                   for p, n in parts.items())  # fmt: skip
        if moment.face_c < coldest:
            coldest, coldest_at = moment.face_c, moment.time_s
        if left < 0.4 * start or moment.time_s > 600:
            break
    ours = history(coat)
    least = min(ours, key=lambda one: one.film_c)
    assert least.film_c == pytest.approx(coldest, abs=0.1)
    assert least.time_s == pytest.approx(coldest_at, rel=0.1, abs=8)
    assert ours[-1].time_s == pytest.approx(min(before, 600), rel=0.05)


@given(
    st.sampled_from(sorted(MIXES)), st.floats(5, 40), st.floats(-5, 45), st.floats(20, 500),
    st.floats(2, 80), st.floats(1, 60), st.floats(0.1, 3),
)  # fmt: skip
@settings(max_examples=40)
def test_the_film_stays_between_its_wet_bulb_and_the_warmest_about_it(
    mix: str, room: float, body: float, wet: float, solids: float, plate: float, speed: float
) -> None:
    coat = a_coat(mix=MIXES[mix], room_temperature=room, body_temperature=body, wet_film=wet,
                  solids_sprayed=solids, plate_thickness=plate, air_speed=speed)  # fmt: skip
    film = history(coat)
    air = air_along(room, speed, 0.4)
    coldest = wet_bulb_c(moles_m2(coat, air), air, 1.0)
    low, high = min(coldest, body, room - 2), max(room, body)
    assert all(low - 0.01 <= one.film_c <= high + 0.01 for one in film)
    assert film[0] == (0.0, room - 2, 1.0)
    lefts = [one.left for one in film]
    assert lefts == sorted(lefts, reverse=True)
    assert film[-1].left <= 0.4 or film[-1].time_s == pytest.approx(600)
    assert all(one.left > 0.4 for one in film[:-1])


def test_a_film_that_hardly_evaporates_takes_the_wood_s_temperature() -> None:
    glycol = a_coat(mix={"butyl glycol": 1.0}, evaporation_share=20.0, landing_drop=15.0)
    assert history(glycol)[-1].film_c == pytest.approx(22, abs=0.3)


def test_what_makes_it_colder_and_what_does_not() -> None:
    coldest = values()["coldest_film"]
    assert values(thinner="fast")["coldest_film"] < coldest - 1
    assert values(thinner="slow")["coldest_film"] > coldest + 1
    assert values(evaporation_share=150)["coldest_film"] < coldest - 1
    assert values(air_speed=2)["coldest_film"] < coldest
    assert values(plate_thickness=20)["coldest_film"] > coldest
    assert values(wood="spruce")["coldest_film"] < coldest
    assert values(body_temperature=18)["coldest_film"] < coldest - 1
    assert values(retarder_added=20)["coldest_film"] > coldest
    assert values(room_humidity=90)["coldest_film"] == coldest
    wet = [values(wet_film=w)["coldest_film"] for w in (60, 125, 250)]
    assert wet == sorted(wet, reverse=True)


def test_the_answers_hang_together() -> None:
    v = values(thinner="fast", room_humidity=80)
    assert v["margin"] == pytest.approx(v["coldest_film"] - v["dew_point"])
    assert v["film_chill"] == pytest.approx(22 - v["coldest_film"])
    times = [time for time, _ in v["film_history"]]
    below = sum(b - a for a, b, (_, c) in
                zip(times, times[1:], v["film_history"][1:], strict=False)
                if c < v["dew_point"])  # fmt: skip
    assert v["seconds_below"] == pytest.approx(below) and below > 60
    assert min(v["film_history"], key=lambda one: one[1]) == (
        v["coldest_after"], v["coldest_film"],
    )  # fmt: skip
    assert 20 < v["solvent_gone"] < 60
    assert v["worst"] < v["coldest_film"]
    assert v["air_coefficient"] == pytest.approx(air_along(22, 0.5, 0.4).plate_w_m2_k)
    assert values()["seconds_below"] == 0


@given(st.sampled_from(["fast", "medium", "slow"]), st.floats(15, 30), st.floats(0, 6))
@settings(max_examples=20)
def test_at_the_highest_humidity_the_margin_is_just_kept(
    mix: str, room: float, margin: float
) -> None:
    given_inputs = {"thinner": mix, "room_temperature": room, "body_temperature": room,
                    "safety_margin": margin}  # fmt: skip
    highest = values(**given_inputs)["highest_humidity"]
    assert 5 < highest < 100
    assert values(**given_inputs, room_humidity=highest)["margin"] == pytest.approx(margin)


def test_no_humidity_is_named_where_any_will_do() -> None:
    v = values(body_temperature=45, landing_drop=0, safety_margin=0, evaporation_share=20,
               thinner="slow", plate_thickness=60, room_temperature=15)  # fmt: skip
    assert v["coldest_film"] <= 15 or "highest_humidity" not in v
    assert "highest_humidity" in values()


# What helps


def test_each_change_is_what_the_calculator_itself_would_say() -> None:
    worked = answer(thinner="fast", room_humidity=70)
    rows = {row["change"]: row for row in worked.tables["help"]}
    same = rows["As it is"]
    assert same["coldest_then"] == worked.values["coldest_film"]
    assert same["dew_then"] == worked.values["dew_point"]
    more = values(thinner="fast", room_humidity=70, retarder_added=10)
    assert rows["10 parts more retarder"]["coldest_then"] == pytest.approx(more["coldest_film"])
    slow = values(thinner="slow", room_humidity=70)
    row = rows["The slow mix in place of this one"]
    assert row["coldest_then"] == pytest.approx(slow["coldest_film"])
    dry = values(thinner="fast", room_humidity=60)
    row = rows["10 % less humidity"]
    assert (row["coldest_then"], row["dew_then"]) == (
        pytest.approx(dry["coldest_film"]), pytest.approx(dry["dew_point"]),
    )  # fmt: skip
    warm = values(thinner="fast", room_temperature=25, body_temperature=25)
    row = rows["Room and work 3 K warmer, same damp"]
    assert row["coldest_then"] == pytest.approx(warm["coldest_film"])
    assert row["dew_then"] == same["dew_then"]
    for row in rows.values():
        assert row["margin_then"] == pytest.approx(row["coldest_then"] - row["dew_then"])
    best = max(list(rows.values())[1:], key=lambda one: one["margin_then"])
    assert worked.values["best_change"] == best["change"]
    assert worked.values["best_margin"] == best["margin_then"]


def test_changes_that_cannot_be_made_are_not_shown() -> None:
    names = [row["change"] for row in answer(thinner="slow", room_humidity=20).tables["help"]]
    assert not any("slow mix" in name or "less humidity" in name for name in names)
    names = [row["change"] for row in answer(room_humidity=20.1).tables["help"]]
    assert any("less humidity" in name for name in names)


@pytest.mark.parametrize(
    ("given_inputs", "start", "helps"),
    [
        ({}, "Clear: the film cools to 17.3 °C, 6.2 K above", "Nothing is needed"),
        ({"room_humidity": 65}, "Close: the film cools", "10 % less humidity: the margin"),
        ({"room_humidity": 80}, "It will go milky", "Room and work 3 K warmer, same damp"),
        ({"room_humidity": 95, "thinner": "fast"}, "It will go milky", "The slow mix"),
        ({"room_humidity": 60, "body_temperature": 10}, "Do not spray", ""),
    ],
)
def test_the_words_follow_the_margin(given_inputs: dict[str, Any], start: str, helps: str) -> None:
    v = values(**given_inputs)
    assert v["verdict"].startswith(start)
    assert v["help_words"].startswith(helps)


def test_a_day_that_no_single_change_saves() -> None:
    assert "another day" in values(room_humidity=95, thinner="fast")["help_words"]


# Own mixes, refusals, cautions


def test_an_own_mix_equal_to_ours_is_ours() -> None:
    rows = [[name, parts] for name, parts in MIXES["medium"].items()]
    own, ours = values(thinner="own", solvents=rows), values()
    assert own["coldest_film"] == pytest.approx(ours["coldest_film"])
    doubled = values(thinner="own", solvents=[[name, 2 * parts] for name, parts in rows])
    assert doubled["coldest_film"] == pytest.approx(ours["coldest_film"])
    split = [*rows[:-1], *([[rows[-1][0], rows[-1][1] / 2]] * 2)]
    assert values(thinner="own", solvents=split)["solvent_mass"] == pytest.approx(
        ours["solvent_mass"]
    )


@pytest.mark.parametrize(("other", "name"), sorted(OTHER_NAMES.items()))
def test_other_names_of_a_solvent_are_understood(other: str, name: str) -> None:
    one = values(thinner="own", solvents=[[f" {other.upper()} ", 10], ["xylene", 20]])
    two = values(thinner="own", solvents=[[name, 10], ["xylene", 20]])
    assert one["coldest_film"] == two["coldest_film"]


def test_an_unknown_solvent_is_refused_by_name() -> None:
    found = refusal(thinner="own", solvents=[["toluene", 10], ["rain water", 5]])
    assert found.input == "solvents"
    assert "Row 2" in found.why and "rain water" in found.why
    assert "butyl acetate" in found.allowed


@pytest.mark.parametrize(
    ("given_inputs", "words"),
    [
        ({"room_humidity": 56}, "Humidity above 55 %"),
        ({"body_temperature": 19.9}, "stand until both are alike"),
        ({"retarder_added": 11}, "So much retarder"),
    ],
)
def test_the_cautions_come_when_they_should(given_inputs: dict[str, Any], words: str) -> None:
    assert any(words in text for text in answer(**given_inputs).cautions)
    assert not any(words in text for text in answer().cautions)


# Drawing and exercises


@given(
    st.sampled_from(["fast", "medium", "slow"]), st.floats(5, 40), st.floats(5, 100),
    st.floats(-5, 45), st.sampled_from(["metric", "inch"]),
)  # fmt: skip
@settings(max_examples=40)
def test_the_drawing_stays_on_its_paper(
    mix: str, room: float, humidity: float, body: float, system: str
) -> None:
    worked = work_out(calculator, {"thinner": mix, "room_temperature": room,
                                   "room_humidity": humidity, "body_temperature": body}, system)  # fmt: skip
    assert isinstance(worked, Answer)
    drawn = draw_film(worked.values, Say(calculator, worked.values, system))
    assert outside(drawn) == []
    assert drawn.count('class="second open"') == 1
