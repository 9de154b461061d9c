"""What must hold of weights and densities, whatever the wood and the piece."""

import itertools
import json
import re
from typing import Any

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from calculators.engine import door
from calculators.engine.compute import Answer, quantities, work_out
from calculators.engine.declaration import Step
from calculators.engine.inputs import Refused
from calculators.laws.wood_gravity import (
    NAMES,
    WOODS,
    gravity_to_green,
    most_moisture_percent,
)
from calculators.laws.wood_heat import density_kg_m3, gravity
from calculators.wood.board_weight import calculator

from .pint_evaluation import PINT_NAMES, evaluate

GRAVITIES = st.floats(0.2, 0.9)
DRY = st.floats(0, 30)


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


def own(green: float, **more: Any) -> dict[str, Any]:
    return {"gravity_from": "green", "basic_gravity": green, **more}


def own_12(at_twelve: float, **more: Any) -> dict[str, Any]:
    return {"gravity_from": "twelve", "gravity_12": at_twelve, **more}


# Gravity on its two bases


@given(GRAVITIES, DRY)
@settings(max_examples=40)
def test_to_green_and_back(green: float, moisture: float) -> None:
    assert gravity_to_green(gravity(green, moisture), moisture) == pytest.approx(green, rel=1e-12)
    assert gravity(green, 30) == pytest.approx(green)
    assert gravity(green, moisture) >= green * (1 - 1e-12)


@given(GRAVITIES)
@settings(max_examples=30)
def test_the_two_bases_are_one_wood(green: float) -> None:
    by_green = values(**own(green))
    by_twelve = values(**own_12(by_green["gravity_at_12"]))
    for name in ("density", "mass", "gravity_green", "gravity_now", "most_moisture"):
        assert by_twelve[name] == pytest.approx(by_green[name], rel=1e-12)
    assert by_green["density_at_12"] == pytest.approx(1120 * by_green["gravity_at_12"])


@given(GRAVITIES)
@settings(max_examples=20)
def test_dry_wood_at_its_dry_volume_has_no_water(green: float) -> None:
    found = values(**own(green, wood_moisture=0))
    assert found["water_mass"] == 0
    assert found["dry_mass"] == found["mass"]
    dry_volume = 1 - 0.265 * green
    assert found["density"] == pytest.approx(1000 * green / dry_volume)


@given(GRAVITIES, st.floats(30.01, 200))
@settings(max_examples=40)
def test_above_saturation_the_volume_stays(green: float, moisture: float) -> None:
    assume(moisture < most_moisture_percent(green))
    found = values(**own(green, wood_moisture=moisture))
    assert found["gravity_now"] == pytest.approx(green)
    assert found["density"] == pytest.approx(1000 * green * (1 + moisture / 100))
    assert any(
        "free water" in text for text in answer(**own(green, wood_moisture=moisture)).cautions
    )


def test_full_of_water_is_wood_wall_and_water_and_no_air() -> None:
    """In a cubic centimetre: 0.4 g of wood takes 0.4/1.54 of the room, water the rest."""
    water = 1 - 0.4 / 1.54
    assert most_moisture_percent(0.4) == pytest.approx(water / 0.4 * 100)


# The table of woods


def test_every_wood_is_asked_and_is_what_the_table_prints() -> None:
    assert [name for name, _ in NAMES] == list(WOODS)
    printed = {
        "engelmann": (0.33, 0.35), "sitka": (0.37, 0.40), "white spruce": (None, 0.36),
        "redcedar": (0.31, 0.32), "port-orford": (None, 0.43), "mahogany": (0.45, None),
        "african mahogany": (0.42, None), "spanish-cedar": (0.41, None), "sapele": (0.55, None),
        "rosewood": (0.75, None), "sugar maple": (0.56, 0.63), "ash": (0.55, None),
        "red maple": (None, 0.54), "walnut": (None, 0.55),
    }  # fmt: skip
    for name, (green, at_twelve) in printed.items():
        assert WOODS[name] == (green, at_twelve)
        found = values(species=name)
        if green is not None:
            assert found["gravity_green"] == green
            assert "over green volume" in found["gravity_words"]
        else:
            assert found["gravity_at_12"] == pytest.approx(at_twelve, rel=1e-12)
            assert "over volume at 12 %" in found["gravity_words"]


def test_the_spread_lies_on_both_sides() -> None:
    found = values(gravity_spread=15)
    assert found["mass_low"] == pytest.approx(0.85 * found["mass"])
    assert found["mass_high"] == pytest.approx(1.15 * found["mass"])
    assert "mass_low" not in values(**own(0.4))


# Weight


@given(st.floats(10, 3000), st.floats(10, 500), st.floats(1, 60), st.integers(1, 9), DRY)
@settings(max_examples=40)
def test_weight_is_density_times_room(
    length: float, width: float, thick: float, pieces: int, moisture: float
) -> None:
    found = values(**own(0.45, wood_moisture=moisture), piece_length=length, piece_width=width,
                   piece_thickness=thick, thickness_after=thick, pieces=pieces)  # fmt: skip
    rho = density_kg_m3(gravity(0.45, moisture), moisture)
    assert found["density"] == pytest.approx(rho)
    assert found["piece_mass"] == pytest.approx(rho * length * width * thick * 1e-9 * 1000)
    assert found["mass"] == pytest.approx(pieces * found["piece_mass"])
    assert found["dry_mass"] + found["water_mass"] == pytest.approx(found["mass"])
    assert found["water_mass"] == pytest.approx(found["dry_mass"] * moisture / 100)
    assert found["saved"] == 0


@given(st.floats(0.5, 4.5))
@settings(max_examples=20)
def test_what_is_left_and_what_is_taken_off_make_the_whole(after: float) -> None:
    found = values(thickness_after=after)
    assert found["mass_after"] + found["saved"] == pytest.approx(found["mass"])
    assert found["mass_after"] == pytest.approx(values(piece_thickness=after,
                                                       thickness_after=after)["mass"])  # fmt: skip
    thinner = values(piece_thickness=4.4, thickness_after=0.5)["mass"]
    assert found["tenth_mass"] == pytest.approx(found["mass"] - thinner)


@given(GRAVITIES, st.floats(0, 60), st.sampled_from(["board", "outline", "template"]))
@settings(max_examples=40)
def test_the_scale_gives_back_the_gravity(green: float, moisture: float, shape: str) -> None:
    assume(moisture < most_moisture_percent(green))
    by_gravity = values(**own(green, wood_moisture=moisture), shape=shape)
    again = values(gravity_from="weighed", board_mass=by_gravity["piece_mass"],
                   wood_moisture=moisture, shape=shape)  # fmt: skip
    for name in ("gravity_green", "gravity_now", "density", "density_at_12", "mass"):
        assert again[name] == pytest.approx(by_gravity[name], rel=1e-9)


def test_three_ways_to_an_area() -> None:
    board = values(shape="board", piece_length=500, piece_width=298)
    outline = values(shape="outline", plate_area=1490)
    template = values(shape="template", template_mass=46.19, square_mass=3.1)
    for found in (board, outline, template):
        assert found["area"] == pytest.approx(1490)
        assert found["mass"] == pytest.approx(board["mass"])


@pytest.mark.parametrize(
    ("given_inputs", "start"),
    [
        ({}, "Together they weigh 387.6 g, 193.8 g each; thinned to 2.80 mm, 241.2 g"),
        ({"pieces": 1}, "It weighs 193.8 g; thinned"),
        ({"thickness_after": 4.5}, "Together they weigh 387.6 g, 193.8 g each, at 382 kg/m³"),
        ({"thickness_after": 4.5, "pieces": 1}, "It weighs 193.8 g, at 382 kg/m³"),
    ],
)
def test_the_verdict(given_inputs: dict[str, Any], start: str) -> None:
    assert values(**given_inputs)["verdict"].startswith(start)


@pytest.mark.parametrize(
    ("given_inputs", "start"),
    [
        (own(0.45), "0.450 over green volume is 0.49"),
        (own_12(0.48), "0.480 at 12 % is 0.44"),
        ({"gravity_from": "weighed"}, "By its weight 386 kg/m³ now; at 12 % it would be 39"),
    ],
)
def test_the_words_of_the_gravity(given_inputs: dict[str, Any], start: str) -> None:
    assert values(**given_inputs)["gravity_words"].startswith(start)


# Units, refusals, cautions, pictures, exercises


@pytest.mark.parametrize(
    "given_inputs",
    [{}, {"species": "walnut"}, own(0.45), own_12(0.48), {"gravity_from": "weighed"},
     {"shape": "outline"}, {"shape": "template"}],
)  # fmt: skip
def test_every_way_to_a_step_has_its_unit(given_inputs: dict[str, Any]) -> None:
    worked = answer(**given_inputs)
    units = {name: one.unit for name, one in quantities(calculator).items()}
    for item in worked.work:
        if isinstance(item, Step):
            found = evaluate(item.formula, units, worked.values)
            ours = found.to(PINT_NAMES[item.unit]).magnitude if hasattr(found, "to") else found
            assert ours == pytest.approx(worked.values[item.name], rel=1e-9), item.name


@pytest.mark.parametrize(
    ("given_inputs", "blamed", "words"),
    [
        ({"thickness_after": 4.6}, "thickness_after", "adds nothing"),
        ({"gravity_from": "weighed", "board_mass": 1000}, "board_mass", "which no wood has"),
        ({"gravity_from": "weighed", "board_mass": 10}, "board_mass", "which no wood has"),
        (own(0.9, wood_moisture=47), "wood_moisture", "full of water at 46 %"),
    ],
)
def test_what_cannot_be_is_refused(given_inputs: dict[str, Any], blamed: str, words: str) -> None:
    found = refusal(**given_inputs)
    assert found.input == blamed
    assert words in found.why
    assert found.allowed


@pytest.mark.parametrize(
    ("given_inputs", "words", "warned"),
    [
        ({}, "means of a species", True),
        ({"gravity_from": "weighed"}, "means of a species", False),
        (own(0.45), "green volume or over volume at 12 %", True),
        (own_12(0.45), "green volume or over volume at 12 %", True),
        ({}, "green volume or over volume at 12 %", False),
        ({"piece_length": 3000, "piece_thickness": 120}, "load for two", True),
        ({}, "load for two", False),
        ({"wood_moisture": 31}, "free water", True),
        ({"wood_moisture": 30}, "free water", False),
    ],
)
def test_cautions(given_inputs: dict[str, Any], words: str, warned: bool) -> None:
    assert any(words in text for text in answer(**given_inputs).cautions) == warned


@pytest.mark.parametrize("units", ["metric", "inch"])
@pytest.mark.parametrize(
    ("given_inputs", "taken_off", "water"),
    [({}, True, True), ({"thickness_after": 4.5}, False, True),
     (own(0.9, wood_moisture=0), True, False), (own(0.3, wood_moisture=200), True, True)],
)  # fmt: skip
def test_pictures_say_what_there_is(
    given_inputs: Any, taken_off: bool, water: bool, units: str
) -> None:
    request = {"calculator": "board-weight", "inputs": given_inputs, "units": units}
    made = json.loads(door.live(json.dumps(request)))["parts"]["drawings"]
    assert made.count("<svg") == 2
    bars = made.split("<svg")[1]
    assert ("taken off" in bars) == taken_off
    assert ("water:" in bars) == water
    for drawing in made.split("<svg")[1:]:
        box = re.search(r'viewBox="0 0 (\S+) (\S+)"', drawing)
        assert box
        for axis, limit in (("x", float(box[1])), ("y", float(box[2]))):
            for found in re.findall(rf'[ c]{axis}[12]?="([^"]+)"', drawing):
                assert 0 <= float(found) <= limit


@pytest.mark.parametrize("units", ["metric", "inch"])
@pytest.mark.parametrize("moisture", [4, 20, 60])
def test_the_curve_of_density_passes_through_now(moisture: float, units: str) -> None:
    request = {"calculator": "board-weight", "inputs": {"wood_moisture": moisture}, "units": units}
    made = json.loads(door.live(json.dumps(request)))["parts"]["drawings"].split("<svg")[2]
    curve = re.search(r'class="second open" points="([^"]+)"', made)
    dot = re.search(r'class="accent-fill" cx="([^"]+)" cy="([^"]+)"', made)
    assert curve
    assert dot
    x, y = float(dot[1]), float(dot[2])
    assert x == pytest.approx(62 + 560 * moisture / max(30, 1.15 * moisture), abs=0.1)
    points = [tuple(map(float, pair.split(","))) for pair in curve[1].split()]
    near = [
        y1 + (y2 - y1) * (x - x1) / (x2 - x1)
        for (x1, y1), (x2, y2) in itertools.pairwise(points)
        if x1 <= x <= x2
    ]
    assert near[0] == pytest.approx(y, abs=0.3)


def test_bars_are_to_one_scale() -> None:
    made = json.loads(door.live(json.dumps({"calculator": "board-weight", "inputs": {}})))
    bars = made["parts"]["drawings"].split("<svg")[1]
    widths = {
        style: [
            float(width) for width in re.findall(rf'class="{style}" [^>]*?width="([^"]+)"', bars)
        ]
        for style in ("wood-light", "metal", "bad")
    }
    v = values()
    per_gram = 540 / v["mass"]
    share = v["thickness_after"] / v["piece_thickness"]
    assert widths["wood-light"][:2] == pytest.approx(
        [v["dry_mass"] * per_gram, v["dry_mass"] * per_gram * share], abs=0.1
    )
    assert widths["metal"][0] == pytest.approx(v["water_mass"] * per_gram, abs=0.1)
    assert widths["bad"][0] == pytest.approx(v["saved"] * per_gram, abs=0.1)
