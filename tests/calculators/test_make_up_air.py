"""Laws of the dilution calculation: balances, mixtures, waiting, heat, pictures."""

import json
import math
import random
import xml.etree.ElementTree as ET
from typing import Any

import numpy as np
import psychrolib
import pytest
from CoolProp.CoolProp import PropsSI
from hypothesis import given, settings
from hypothesis import strategies as some
from scipy.integrate import solve_ivp

from calculators.engine import door
from calculators.engine.compute import Answer, work_out
from calculators.laws.solvent_vapour import mixture_limit, vapour_volume_m3
from calculators.laws.standard_air import (
    air_viscosity_pa_s,
    moist_air_density_kg_m3,
    standard_pressure_pa,
)
from calculators.room._make_up_air_drawings import vapour_after
from calculators.room._make_up_air_solvents import SOLVENTS
from calculators.room.make_up_air import calculator

from .svg_on_paper import off_paper, texts_that_touch
from .variants import draw_inputs

NAMES = [one.name for one in SOLVENTS]
NONE = dict.fromkeys(NAMES, 0)
# Density at 20 °C, molar mass, both explosive limits, exposure limit: as published.
PUBLISHED = {
    "butyl_acetate": (881.0, 116.158, 1.7, 1.2, 50),
    "toluene": (866.9, 92.138, 1.1, 1.0, 100),
    "acetone": (790.3, 58.079, 2.5, 2.5, 250),
    "isopropyl_alcohol": (786.7, 60.095, 2.0, 2.0, 400),
    "ethyl_acetate": (899.6, 88.105, 2.0, 2.0, 400),
    "ethanol": (789.4, 46.068, 3.3, 3.1, 1000),
    "methyl_ethyl_ketone": (805.0, 72.106, 1.4, 1.5, 200),
}
litres = some.floats(0.01, 10)


def values(**inputs: Any) -> dict[str, Any]:
    worked = work_out(calculator, inputs)
    assert isinstance(worked, Answer), worked
    return worked.values


def pictures(units: str = "metric", **inputs: Any) -> list[ET.Element]:
    request = {"calculator": "make-up-air", "units": units, "inputs": inputs}
    drawings = json.loads(door.live(json.dumps(request)))["parts"]["drawings"]
    return ET.fromstring(f"<all>{drawings}</all>").findall("figure/{http://www.w3.org/2000/svg}svg")


def test_every_figure_of_every_solvent_is_the_published_one() -> None:
    assert {one.name for one in SOLVENTS} == set(PUBLISHED)
    for one in SOLVENTS:
        assert tuple(one)[2:7] == PUBLISHED[one.name]
        alone = values(**{**NONE, one.name: 1})
        assert alone["mix_lfl"] == pytest.approx(min(PUBLISHED[one.name][2:4]))
        assert alone["mix_limit"] == pytest.approx(PUBLISHED[one.name][4])
        assert alone["weight_to_air"] == pytest.approx(PUBLISHED[one.name][1] / 28.966)


@pytest.mark.parametrize(("name", "fluid"), [("toluene", "Toluene"), ("acetone", "Acetone"),
                                             ("ethanol", "Ethanol")])  # fmt: skip
def test_densities_are_those_of_coolprop(name: str, fluid: str) -> None:
    density, mass = PUBLISHED[name][:2]
    assert density == pytest.approx(PropsSI("D", "T", 293.15, "P", 101325, fluid), abs=0.051)
    assert mass == pytest.approx(1000 * PropsSI("molar_mass", fluid), abs=0.001)


@settings(max_examples=40)
@given(
    some.lists(some.floats(0, 5), min_size=7, max_size=7), some.floats(50, 20000),
    some.floats(1, 10), some.floats(10, 1000), some.floats(10, 100), some.floats(5, 45),
    some.floats(-40, 45), some.floats(0, 3000), some.floats(0.5, 80), some.floats(0.01, 3),
    some.sampled_from([("tenth", 10), ("quarter", 4)]),
)  # fmt: skip
def test_the_whole_worked_again(
    amounts: list[float], flow: float, mixing: float, room: float, share: float, warm: float,
    cold: float, height: float, fall: float, other: float, part: tuple[str, int],
) -> None:  # fmt: skip
    given_inputs = {
        **dict(zip(NAMES, amounts, strict=True)), "air_flow": flow, "mixing_factor": mixing,
        "room_volume": room, "evaporated": share, "room_temperature": warm,
        "outdoor_temperature": cold, "height_above_sea": height, "fall_to": fall,
        "other_solvent": other, "other_density": 900, "other_molar_mass": 80, "other_lfl": 0.9,
        "other_limit": 20, "fire_share": part[0],
    }  # fmt: skip
    v = values(**given_inputs)
    data = np.array([PUBLISHED[name] for name in NAMES] + [(900, 80, 0.9, 0.9, 20)], dtype=float)
    psychrolib.SetUnitSystem(psychrolib.SI)
    pressure = psychrolib.GetStandardAtmPressure(height)
    assert v["air_pressure"] == pytest.approx(pressure)
    moles = np.array([*amounts, other]) * share / 100 * data[:, 0] / data[:, 1]
    vapour = moles * 8.314462618 * (warm + 273.15) / pressure
    assert v["vapour_rate"] == pytest.approx(vapour.sum())
    assert v["liquid_rate"] == pytest.approx(sum(amounts) + other)
    lfl = moles.sum() / (moles / data[:, 2:4].min(axis=1)).sum()
    limit = moles.sum() / (moles / data[:, 4]).sum()
    assert v["mix_lfl"] == pytest.approx(lfl) and v["mix_limit"] == pytest.approx(limit)
    assert v["weight_to_air"] == pytest.approx((moles * data[:, 1]).sum() / moles.sum() / 28.966)
    aim = lfl / part[1] / 100
    assert v["fire_aim"] == pytest.approx(100 * aim)
    assert v["fire_air"] == pytest.approx(mixing * vapour.sum() * (1 - aim) / aim)
    assert v["health_air"] == pytest.approx(mixing * vapour.sum() * (1e6 / limit - 1))
    assert v["air_needed"] == max(v["fire_air"], v["health_air"])
    assert v["changes_needed"] == pytest.approx(v["air_needed"] / room)
    assert v["changes_now"] == pytest.approx(flow / room)
    level = vapour.sum() / (flow / mixing + vapour.sum())
    assert v["level_now"] == pytest.approx(1e6 * level)
    assert v["level_of_lfl"] == pytest.approx(100 * level / (lfl / 100))
    assert v["level_of_limit"] == pytest.approx(1e6 * level / limit)
    assert v["mixing_time"] == pytest.approx(60 * mixing * room / flow)
    assert math.exp(-v["clear_time"] / v["mixing_time"]) == pytest.approx(fall / 100)
    if v["level_of_limit"] > 1:
        after = v["level_now"] * math.exp(-v["safe_time"] / v["mixing_time"])
        assert after == pytest.approx(limit)
    else:
        assert v["safe_time"] == 0
    density = pressure / (287.042 * (warm + 273.15))
    assert v["air_density"] == pytest.approx(density)
    heat = density * 1006 * max(0.0, warm - cold) / 3.6e6
    assert v["heat_now"] == pytest.approx(flow * heat)
    assert v["heat_needed"] == pytest.approx(v["air_needed"] * heat)


@settings(max_examples=30)
@given(litres, litres, some.floats(1, 10))
def test_the_air_asked_for_holds_the_limits(one: float, two: float, mixing: float) -> None:
    mix = {**NONE, "toluene": one, "ethanol": two, "mixing_factor": mixing}
    v = values(**mix)
    if 50 <= v["fire_air"] <= 1e5:
        assert values(**mix, air_flow=v["fire_air"])["level_of_lfl"] == pytest.approx(10, rel=3e-3)
    if 50 <= v["health_air"] <= 1e5:
        kept = values(**mix, air_flow=v["health_air"])
        assert kept["level_of_limit"] == pytest.approx(1, rel=2e-3)


@settings(max_examples=30)
@given(some.floats(0.01, 6), some.floats(1.1, 3))
def test_more_liquid_less_air_or_poor_mixing_is_worse(amount: float, times: float) -> None:
    base = values(**{**NONE, "acetone": amount})
    more = values(**{**NONE, "acetone": amount * times})
    assert more["air_needed"] == pytest.approx(times * base["air_needed"])
    assert (
        values(**{**NONE, "acetone": amount}, air_flow=4000 / times)["level_now"]
        > base["level_now"]
    )
    assert values(**{**NONE, "acetone": amount}, mixing_factor=3 * times)["air_needed"] == (
        pytest.approx(times * base["air_needed"])
    )
    quarter = values(**{**NONE, "acetone": amount}, fire_share="quarter")
    assert quarter["fire_air"] < base["fire_air"] / 2.4


def test_the_balance_by_an_integrator() -> None:
    """Rise while spraying and fall afterwards, against scipy's integration of the balance."""
    v = values(**{**NONE, "toluene": 2}, air_flow=800, room_volume=90, spray_time=20)
    useful = 800 / 3 / 60  # m³/min
    source = v["vapour_rate"] / 60

    def change(minute: float, level: list[float]) -> list[float]:
        making = source if minute <= 20 else 0.0
        return [(making - useful * level[0]) / 90]

    up = solve_ivp(change, (0, 20), [0.0], rtol=1e-10, atol=1e-14)
    down = solve_ivp(change, (20.0001, 60), [up.y[0, -1]], rtol=1e-10, atol=1e-14)
    # The balance drawn leaves the vapour's own volume out of the air: 0.2 % here.
    assert vapour_after(v, 20) == pytest.approx(1e6 * up.y[0, -1], rel=3e-3)
    assert vapour_after(v, 60) == pytest.approx(1e6 * down.y[0, -1], rel=3e-3)
    assert vapour_after(v, 0) == 0


def test_laws_alone() -> None:
    assert mixture_limit([2.0, 0.0], [3.0, 1.0]) == 3
    assert mixture_limit([1.0, 1.0], [2.0, 6.0]) == 3
    assert vapour_volume_m3(1, 1000, 18, 0, 101325) == pytest.approx(1.2452, rel=1e-4)
    assert standard_pressure_pa(0) == 101325
    for warmth in (-10, 0, 20, 40):
        theirs = PropsSI("V", "T", warmth + 273.15, "P", 101325, "Air")
        assert air_viscosity_pa_s(warmth) == pytest.approx(theirs, rel=0.006)
    psychrolib.SetUnitSystem(psychrolib.SI)
    for warmth, damp, pressure in ((20, 50, 101325), (5, 90, 90000), (35, 30, 80000)):
        ratio = psychrolib.GetHumRatioFromRelHum(warmth, damp / 100, pressure)
        assert moist_air_density_kg_m3(warmth, damp, pressure) == pytest.approx(
            psychrolib.GetMoistAirDensity(warmth, ratio, pressure), rel=1e-4
        )


def test_no_solvent_is_refused_and_words_follow_the_air() -> None:
    refused = door.answer("make-up-air", NONE)["refused"][0]
    assert refused["input"] == "butyl_acetate" and "litres" in refused["why"]
    assert "asks for" in values()["verdict"] and "permit" in values()["verdict"]
    assert "lungs" in values(air_flow=1000)["verdict"]
    assert "against fire" in values(air_flow=150)["verdict"]
    dire = {**NONE, "acetone": 20, "air_flow": 50}
    assert "Do not spray:" in values(**dire)["verdict"]
    said = door.answer("make-up-air", dire)["cautions"]
    assert any("Stop spraying" in one for one in said) and len(said) == 5
    assert "not a design" in door.answer("make-up-air", {})["cautions"][0]
    assert values(outdoor_temperature=30)["heat_now"] == 0


def test_the_table_shows_both_limits_and_adds_up() -> None:
    found = door.answer("make-up-air", {})
    table = found["tables"]["solvents"]
    rows = [dict(zip(table["columns"], row, strict=True)) for row in table["rows"]]
    assert rows[0]["lfl_nfpa"] == 1.7 and rows[0]["lfl_iec"] == 1.2 and rows[0]["lfl_used"] == 1.2
    v = values()
    # Each alone thins its vapour by million/limit - 1; together they add up, bar one volume.
    assert sum(row["air_alone"] for row in rows) == pytest.approx(v["health_air"], rel=1e-9)
    assert sum(row["vapour"] for row in rows) == pytest.approx(v["vapour_rate"])


def test_pictures_are_to_scale_and_on_paper() -> None:
    v = values()
    bars = [one for one in pictures()[0].iter() if one.tag.endswith("rect")]
    widths = [float(bar.get("width", "0")) for bar in bars]
    for name, width in zip(("air_flow", "fire_air", "health_air"), widths, strict=True):
        assert width == pytest.approx(590 * v[name] / v["air_flow"], abs=0.5)
    for units in ("metric", "inch", "inch64"):
        for picture in pictures(units):
            assert texts_that_touch(picture) == []
    stream = random.Random(8)
    for _ in range(40):
        for picture in pictures(**draw_inputs(calculator, stream)):
            assert off_paper(picture) == []
            assert texts_that_touch(picture) == []
