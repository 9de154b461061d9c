"""What must hold of wood that moves, whatever the wood, the air and the brace."""

import itertools
import json
import math
import re
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import quad
from scipy.optimize import minimize

from calculators.engine import door
from calculators.engine.compute import Answer, work_out
from calculators.engine.inputs import Refused
from calculators.laws.equilibrium_moisture import emc_percent
from calculators.laws.wood_shrinkage import (
    NAMES,
    WOODS,
    coefficient,
    movement_percent,
    shrinkage_from_green_percent,
)
from calculators.wood._movement_drawings import rings
from calculators.wood.wood_movement import calculator

SHRINKAGES = st.floats(1, 12)
MOISTURES = st.floats(0, 30)


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


def moistures(first: float, later: float, **more: Any) -> dict[str, Any]:
    return {
        "moisture_by": "moisture",
        "wood_moisture": first,
        "later_moisture_given": later,
        **more,
    }


def own(radial: float, tangential: float, **more: Any) -> dict[str, Any]:
    return {"species": "own", "own_shrinkage_radial": radial,
            "own_shrinkage_tangential": tangential, **more}  # fmt: skip


# Free movement


@given(SHRINKAGES, MOISTURES, MOISTURES)
@settings(max_examples=60)
def test_there_and_back_again_is_the_first_width(s: float, one: float, two: float) -> None:
    there, back = movement_percent(s, one, two), movement_percent(s, two, one)
    assert (1 + there / 100) * (1 + back / 100) == pytest.approx(1, rel=1e-12)
    assert there * (two - one) >= 0


@given(SHRINKAGES)
@settings(max_examples=30)
def test_green_to_ovendry_is_the_shrinkage_itself(s: float) -> None:
    assert movement_percent(s, 30, 0) == pytest.approx(-s, rel=1e-12)
    assert movement_percent(s, 30, 12) == pytest.approx(-s * 18 / 30, rel=1e-12)
    assert shrinkage_from_green_percent(s, 12) == pytest.approx(s * 0.6, rel=1e-12)
    assert shrinkage_from_green_percent(s, 30) == 0


@given(SHRINKAGES)
@settings(max_examples=30)
def test_the_table_s_coefficient_is_the_equation_at_ten_per_cent(s: float) -> None:
    assert 100 * coefficient(s) == pytest.approx(movement_percent(s, 10, 11), rel=1e-12)
    found = values(**own(s, s), **moistures(10, 12.5), held="free", piece_width=100)
    assert found["table_movement"] == pytest.approx(found["movement"], rel=1e-12)
    assert found["table_coefficient"] == pytest.approx(coefficient(s), rel=1e-12)
    assert found["from_green"] == pytest.approx(s * 17.5 / 30)


def test_the_coefficient_is_kept_to_its_range() -> None:
    assert "table_movement" in values(**moistures(6, 14))
    for first, later in ((5.9, 10), (10, 14.1), (14.1, 10), (10, 5.9)):
        assert "table_movement" not in values(**moistures(first, later))


@given(st.floats(0, 90), st.floats(2, 5), st.floats(5, 10))
@settings(max_examples=40)
def test_slanted_rings_move_between_the_two(angle: float, radial: float, tangential: float) -> None:
    s = values(**own(radial, tangential), ring_angle=angle)["shrinkage"]
    share = (1 - math.cos(math.radians(2 * angle))) / 2
    assert s == pytest.approx(radial * share + tangential * (1 - share))
    assert radial - 1e-9 <= s <= tangential + 1e-9


@given(st.floats(10, 900), st.floats(5, 95), st.floats(5, 95))
@settings(max_examples=40)
def test_movement_goes_with_the_width_and_with_the_air(
    width: float, then: float, later: float
) -> None:
    air = {"room_humidity": then, "later_humidity": later, "held": "free"}
    one, two = values(**air, piece_width=width), values(**air, piece_width=100)
    assert one["movement"] * 100 == pytest.approx(two["movement"] * width, abs=1e-9)
    assert one["later_width"] == pytest.approx(width + one["movement"])
    assert one["first_moisture"] == pytest.approx(emc_percent(21, then), rel=1e-12)
    assert one["later_moisture"] == pytest.approx(emc_percent(21, later), rel=1e-12)
    by_moisture = values(**moistures(one["first_moisture"], one["later_moisture"]), held="free",
                         piece_width=width)  # fmt: skip
    assert by_moisture["movement"] == pytest.approx(one["movement"], abs=1e-9)


def test_what_is_from_memory_is_what_was_remembered() -> None:
    """No published table to hold these against: they must at least not change unseen."""
    remembered = {name: wood[:2] for name, wood in WOODS.items() if wood.origin == "memory"}
    assert remembered == {
        "sitka": (4.3, 7.5), "spanish-cedar": (4.2, 6.3), "rosewood": (2.7, 5.8),
    }  # fmt: skip


def test_every_wood_is_asked_and_known() -> None:
    assert [name for name, _ in NAMES] == list(WOODS)
    for name, wood in WOODS.items():
        assert 0 < wood.radial_percent < wood.tangential_percent, name
        found = values(species=name, ring_angle=90)
        assert found["shrinkage"] == pytest.approx(wood.radial_percent)
        memory = wood.origin == "memory"
        assert ("From memory" in found["wood_words"]) == memory
        words = dict(NAMES)[name]
        assert ("from memory" in words) == memory
    assert "70 %" in values(species="mahogany")["wood_words"]
    assert "coefficients" in values(species="bigleaf maple")["wood_words"]
    assert values(**own(4, 8))["wood_words"].startswith("Your own: 4.0 % and 8.0 %")


# The braced plate


def by_energy(eps: float, values_: dict[str, Any]) -> tuple[float, float]:
    """Strain at the glue line and curvature, 1/mm, of least elastic energy, by scipy."""
    t, w, h, b = (values_[name] for name in
                  ("plate_thickness", "strip_width", "brace_height", "brace_width"))  # fmt: skip
    widths = {
        "rectangle": lambda u: b,
        "triangle": lambda u: b * (1 - u / h),
        "parabola": lambda u: b * math.sqrt(max(0.0, 1 - u / h)),
    }
    width = widths[values_["brace_shape"]]
    down = [quad(lambda u, p=p: width(u) * u**p, 0, h, epsabs=1e-12)[0] for p in range(3)]
    e_p, e_b = values_["plate_modulus"], values_["brace_modulus"]

    def energy(x: Any) -> float:
        e0, k = x[0] * eps, x[1] * eps
        plate = e_p * w * ((e0 - eps) ** 2 * t + (e0 - eps) * k * t**2 + k * k * t**3 / 3)
        brace = e_b * (e0 * e0 * down[0] - 2 * e0 * k * down[1] + k * k * down[2])
        return float((plate + brace) / (eps * eps * e_p * w * t))

    found = minimize(energy, [0.3, 0.05], method="BFGS", options={"gtol": 1e-12})
    return float(found.x[0] * eps), float(found.x[1] * eps)


@pytest.mark.parametrize("shape", ["rectangle", "triangle", "parabola"])
@pytest.mark.parametrize(
    ("height", "thickness", "strip"), [(15, 2.8, 100), (4, 2.0, 30), (8, 5, 200)]
)
def test_the_brace_bends_as_least_energy_says(
    shape: str, height: float, thickness: float, strip: float
) -> None:
    found = values(brace_shape=shape, brace_height=height, plate_thickness=thickness,
                   strip_width=strip, later_humidity=43)  # fmt: skip
    eps = found["brace_strain"] / 100
    glue_line, curvature = by_energy(eps, found)
    assert eps / found["bending_length"] == pytest.approx(curvature, rel=1e-4)
    middle = glue_line + curvature * thickness / 2
    assert found["held_back"] / 100 == pytest.approx(middle - eps, rel=1e-4)
    assert found["plate_stress"] == pytest.approx(1150 * (middle - eps), rel=1e-4)


@given(st.floats(200, 450), st.floats(4000, 20000))
@settings(max_examples=30)
def test_the_crown_is_the_sagitta(width: float, radius: float) -> None:
    found = values(piece_width=width, dish_radius=radius, later_humidity=45)
    expected = radius - math.sqrt(radius**2 - width**2 / 4)
    assert found["crown_first"] == pytest.approx(expected, rel=1e-6)
    assert found["crown_later"] == pytest.approx(expected, rel=1e-6)
    assert found["crown_change"] == pytest.approx(0, abs=1e-9)


@given(st.floats(10, 90), st.floats(3000, 20000), st.floats(30, 90))
@settings(max_examples=30)
def test_damper_air_raises_the_crown_and_drier_sinks_it(
    later: float, radius: float, angle: float
) -> None:
    found = values(later_humidity=later, dish_radius=radius, grain_angle=angle)
    assert found["crown_change"] * (later - 45) >= 0
    assert found["held_back"] * (later - 45) <= 0
    assert found["brace_strain"] == pytest.approx(
        found["strain"] * (1 - math.cos(math.radians(2 * angle))) / 2
    )


def test_in_the_air_in_which_it_goes_flat_it_is_flat() -> None:
    for angle in (90, 60):
        flat = values(grain_angle=angle)["flat_humidity"]
        found = values(later_humidity=flat, grain_angle=angle)
        assert found["crown_later"] == pytest.approx(0, abs=1e-6)
        assert found["later_moisture"] == pytest.approx(found["flat_moisture"], rel=1e-9)
    by_moisture = values(**moistures(8.5, 7))
    again = values(**moistures(8.5, by_moisture["flat_moisture"]))
    assert again["crown_later"] == pytest.approx(0, abs=1e-9)
    assert "flat_humidity" not in by_moisture


def test_a_flat_plate_moves_as_much_as_an_arched_one_nearly() -> None:
    flat = values(dish="flat", later_humidity=40)
    arched = values(dish="arched", later_humidity=40)
    assert flat["crown_first"] == 0
    assert flat["crown_later"] == pytest.approx(arched["crown_change"], rel=1e-3)
    assert "flat_moisture" not in flat


def test_a_mighty_brace_hardly_bends_and_a_slight_one_bends_less_the_thicker_the_plate() -> None:
    changes = [abs(values(brace_height=h)["crown_change"]) for h in (10, 15, 20, 30, 40)]
    assert changes == sorted(changes, reverse=True)
    changes = [abs(values(plate_thickness=t)["crown_change"]) for t in (1, 2, 3, 4)]
    assert changes == sorted(changes)


@pytest.mark.parametrize(
    ("given_inputs", "start", "flat"),
    [
        ({}, "Hollow: the crown goes from 2.17 mm to -1.69 mm", "In air below 37 %"),
        ({"later_humidity": 40}, "It sinks", "In air below 37 %"),
        ({"later_humidity": 55}, "It rises", "In air below 37 %"),
        ({"later_humidity": 45}, "Nothing to speak of", "In air below 37 %"),
        ({"dish": "flat", "later_humidity": 44}, "Hollow", "Braced flat, it goes hollow"),
        ({"dish_radius": 1000, "piece_width": 200}, "It sinks", "Not even in bone-dry air"),
        (moistures(8.5, 8.0), "It sinks", "Below a moisture of 7.2"),
    ],
)  # fmt: skip
def test_the_words_of_the_plate(given_inputs: dict[str, Any], start: str, flat: str) -> None:
    found = values(**given_inputs)
    assert found["verdict"].startswith(start)
    assert found["flat_words"].startswith(flat)


# The fitted piece


@given(st.floats(5, 300), st.floats(0, 1), st.floats(6, 12), st.floats(6, 14))
@settings(max_examples=40)
def test_gap_and_growth_add_up(width: float, gap: float, first: float, later: float) -> None:
    found = values(**moistures(first, later), held="fitted", piece_width=width, fit_gap=gap)
    assert found["joint_gap"] + found["movement"] == pytest.approx(gap)
    if found["joint_gap"] < 0:
        wants = found["later_width"]
        assert found["squeeze"] == pytest.approx((wants - width - gap) / wants * 100)
        assert found["squeeze_pressure"] == pytest.approx(1150 * found["squeeze"] / 100)
        assert found["verdict"].startswith("Pinched")
    else:
        assert "squeeze" not in found
        assert found["verdict"].startswith("Loose")


def test_in_the_air_in_which_it_is_tight_the_gap_is_gone() -> None:
    small = {"held": "fitted", "piece_width": 60, "species": "sugar maple", "ring_angle": 0}
    found = values(**small)
    again = values(**small, later_humidity=found["tight_humidity"])
    assert again["joint_gap"] == pytest.approx(0, abs=1e-9)
    assert found["tight_words"].startswith("In air above")
    assert values(**small, **moistures(8, 9))["tight_words"].startswith("Above a moisture of 8.2")
    assert values(**small, fit_gap=3)["tight_words"].startswith("In no air")
    assert "tight_humidity" not in values(**small, fit_gap=3)


@pytest.mark.parametrize(
    ("later", "start"), [(45, "It keeps its width"), (30, "It shrinks by 1.19 mm, to 393.81 mm"),
                         (60, "It swells by")],
)  # fmt: skip
def test_the_words_of_a_free_piece(later: float, start: str) -> None:
    assert values(held="free", later_humidity=later)["verdict"].startswith(start)


# Refusals, cautions, pictures, exercises


def test_a_plate_that_would_roll_up_is_refused() -> None:
    slight = {"brace_height": 2, "brace_width": 2, "plate_thickness": 1, "piece_width": 900}
    found = refusal(**slight, later_humidity=90)
    assert found.input == "brace_height"
    assert "roll up" in found.why
    assert refusal(**slight, later_humidity=5).input == "brace_height"


@pytest.mark.parametrize(
    ("given_inputs", "words", "warned"),
    [
        ({}, "loose at its edges", True),
        ({"held": "free"}, "loose at its edges", False),
        ({}, "pulled across its grain by 1.29 MPa", True),
        ({"later_humidity": 35}, "pulled across its grain", False),
        ({"held": "fitted", "later_humidity": 80, "ring_angle": 0}, "crushes across", True),
        ({"held": "fitted", "later_humidity": 50}, "crushes across", False),
        ({"later_humidity": 85}, "only the direction", True),
        ({}, "only the direction", False),
    ],
)
def test_cautions(given_inputs: dict[str, Any], words: str, warned: bool) -> None:
    assert any(words in text for text in answer(**given_inputs).cautions) == warned


@pytest.mark.parametrize("angle", [0, 1, 30, 45, 85, 90])
def test_rings_lie_inside_and_at_their_angle(angle: float) -> None:
    found = rings(angle, (60, 44), (580, 144), 26)
    assert len(found) >= 3
    for (x1, y1), (x2, y2) in found:
        for x, y in ((x1, y1), (x2, y2)):
            assert 60 - 1e-6 <= x <= 580 + 1e-6
            assert 44 - 1e-6 <= y <= 144 + 1e-6
        assert math.degrees(math.atan2(y1 - y2, x2 - x1)) == pytest.approx(angle, abs=1e-6)


@pytest.mark.parametrize("units", ["metric", "inch"])
@pytest.mark.parametrize(
    "given_inputs",
    [{}, {"dish": "flat", "later_humidity": 80}, {"held": "free", "ring_angle": 30},
     {"held": "fitted", "later_humidity": 90}, moistures(30, 0, held="free"),
     {"later_humidity": 45, "dish": "flat"}],
)  # fmt: skip
def test_pictures_stay_on_their_paper(given_inputs: Any, units: str) -> None:
    request = {"calculator": "wood-movement", "inputs": given_inputs, "units": units}
    made = json.loads(door.live(json.dumps(request)))["parts"]["drawings"]
    assert made.count("<svg") == 2
    for drawing in made.split("<svg")[1:]:
        box = re.search(r'viewBox="0 0 (\S+) (\S+)"', drawing)
        assert box
        width, height = float(box[1]), float(box[2])
        for axis, limit in (("x", width), ("y", height)):
            for found in re.findall(rf'[ c]{axis}[12]?="([^"]+)"', drawing):
                assert 0 <= float(found) <= limit
        for points in re.findall(r'points="([^"]+)"', drawing):
            for pair in points.split():
                x, y = map(float, pair.split(","))
                assert 0 <= x <= width
                assert 0 <= y <= height


def test_the_course_passes_through_then_and_later() -> None:
    for held in ("braced", "fitted", "free"):
        request = {"calculator": "wood-movement", "inputs": {"held": held}}
        made = json.loads(door.live(json.dumps(request)))["parts"]["drawings"]
        plot = made.split("<svg")[-1]
        curve = re.search(r'class="second open" points="([^"]+)"', plot)
        assert curve
        points = [tuple(map(float, pair.split(","))) for pair in curve[1].split()]
        for style in ("second-fill", "accent-fill"):
            dot = re.search(rf'class="{style}" cx="([^"]+)" cy="([^"]+)"', plot)
            assert dot
            x, y = float(dot[1]), float(dot[2])
            for (x1, y1), (x2, y2) in itertools.pairwise(points):
                if x1 <= x <= x2:
                    assert y == pytest.approx(y1 + (y2 - y1) * (x - x1) / (x2 - x1), abs=1.5)
