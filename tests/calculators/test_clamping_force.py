"""What must hold of clamps on a joint, whatever the shop."""

import math
from typing import Any

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from scipy.optimize import brentq

from calculators.engine.compute import Answer, work_out
from calculators.engine.inputs import Refused
from calculators.glueing._clamping_force_work import centres_mm, crushing
from calculators.glueing.clamping_force import calculator
from calculators.laws.elastic_bed import endless_row, row_with_ends


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


# Force and mean pressure


@given(st.floats(20, 1000), st.floats(2, 200), st.integers(1, 6), st.floats(10, 5000))
@settings(max_examples=40)
def test_force_over_area(length: float, width: float, clamps: int, force: float) -> None:
    worked = work_out(
        calculator,
        {"joint_length": length, "joint_width": width, "clamps": clamps, "clamp_force": force,
         "pad_width": 4, "end_distance": length / 8},
    )  # fmt: skip
    assume(isinstance(worked, Answer))
    assert isinstance(worked, Answer)
    v = worked.values
    assert v["mean_pressure"] == pytest.approx(clamps * force / (length * width))
    assert v["area"] == pytest.approx(length * width)
    assert v["total_force"] == pytest.approx(clamps * force)
    assert v["pad_pressure"] == pytest.approx(force / 4 / width)
    need = 0.7 * length * width
    assert v["needed_force"] == pytest.approx(need)
    assert v["force_each"] == pytest.approx(need / clamps)
    count = v["clamps_needed"]
    assert count * force >= need * (1 - 1e-8) and (count - 1) * force < need
    assert v["crush_share"] == pytest.approx(100 * v["greatest_pressure"] / v["crush"])


def test_a_whole_number_of_clamps_is_not_rounded_up_for_the_last_bits() -> None:
    v = values(joint_length=100, joint_width=30, pressure_low=0.7, clamp_force=210)
    assert v["clamps_needed"] == 10
    assert values(joint_length=182, end_distance=30)["cone_clamps"] == 2
    assert values(joint_length=183, end_distance=30)["cone_clamps"] == 3


# The screw


def screw_force(
    d: float, lead: float, mu: float, alpha: float, pad: float, pad_d: float, pull: float, r: float
) -> float:
    """The force of a screw by balance of forces on its flank."""
    mean = d - lead / 2
    climb = math.atan(lead / math.pi / mean)
    flank = math.radians(alpha)
    # Tangents of the flank: along the thread, and outwards (tangential, axial, radial).
    t = (math.cos(climb), math.sin(climb), 0.0)
    f = (0.0, math.sin(flank), math.cos(flank))
    n = (
        t[1] * f[2] - t[2] * f[1],
        t[2] * f[0] - t[0] * f[2],
        t[0] * f[1] - t[1] * f[0],
    )
    size = math.hypot(*n)
    axial, round_about = abs(n[1]) / size, abs(n[0]) / size

    def torque(force: float) -> float:
        normal = force / (axial - mu * math.sin(climb))
        return normal * (round_about + mu * math.cos(climb)) * mean / 2 + force * pad * pad_d / 2

    found: float = brentq(lambda force: torque(force) - pull * r, 0, 1e7)
    return found


@given(
    st.floats(6, 40), st.floats(0.02, 0.5), st.floats(0.05, 0.5), st.floats(0, 35),
    st.floats(0, 0.5), st.floats(0, 40), st.floats(1, 500), st.floats(5, 300),
)  # fmt: skip
@settings(max_examples=60)
def test_the_screw_is_in_balance(
    d: float, steep: float, mu: float, alpha: float, pad: float, pad_d: float, pull: float, r: float
) -> None:
    lead = max(0.5, min(12, steep * d))
    assume(2 * lead <= d)
    v = values(
        force_from="screw", screw_diameter=d, lead=lead, thread_friction=mu, flank_angle=alpha,
        pad_friction=pad, pad_friction_diameter=pad_d, handle_force=pull, handle_radius=r,
        joint_width=300, joint_length=300, end_distance=60, pressure_low=0.001,
    )  # fmt: skip
    assert v["force"] == pytest.approx(screw_force(d, lead, mu, alpha, pad, pad_d, pull, r))
    assert v["gain"] == pytest.approx(v["force"] / pull)
    assert v["gain"] < 2 * math.pi * r / lead  # never more than without friction
    assert v["mean_diameter"] == pytest.approx(d - lead / 2)


# Along the joint


@given(
    st.floats(60, 600), st.integers(1, 6), st.floats(2, 60), st.floats(0.5, 40),
    st.floats(0.5, 100), st.floats(500, 70000), st.floats(50, 5000),
)  # fmt: skip
@settings(max_examples=40)
def test_the_profile_carries_the_clamps(
    length: float, clamps: int, caul: float, part: float, bed: float, stiff: float, soft: float
) -> None:
    v = values(
        joint_length=length, clamps=clamps, caul_thickness=caul, part_thickness=part,
        bed_thickness=bed, caul_stiffness=stiff, pressed_stiffness=soft, below="bench",
        end_distance=length / 2 / clamps, pad_width=8,
    )  # fmt: skip
    # A beam 1 mm wide: E·I over the bed's modulus, to the fourth root of four times that.
    inertia, modulus = caul**3 / 12, soft / (part + bed)
    reach = (4 * stiff * inertia / modulus) ** 0.25
    assert v["reach"] == pytest.approx(reach)
    assert v["layer"] == pytest.approx(part + bed)
    centres = [length * (number + 0.5) / clamps for number in range(clamps)]
    pressure = row_with_ends(length / reach, [c / reach for c in centres], 4 / reach)
    pad = 1400 / 8 / 30
    for place, found in v["profile"]:
        assert found == pytest.approx(pad * pressure(place / reach), abs=1e-6)
    assert v["profile"][0][0] == 0 and v["profile"][-1][0] == pytest.approx(length / 2)
    figures = [found for _, found in v["profile"]]
    assert v["least_pressure"] == min(figures)
    assert v["greatest_pressure"] == max(figures)
    assert (v["least_at"], v["least_pressure"]) in v["profile"]
    assert v["end_pressure"] == figures[0]
    for centre in centres:
        if centre < length / 2 * (1 + 1e-9):
            assert any(abs(place - centre) < 1e-6 for place, _ in v["profile"])


def test_a_second_caul_gives_and_one_as_thick_as_a_bench_does_not() -> None:
    two = values(caul_thickness=20, lower_caul_thickness=20)
    assert two["caul_that_counts"] == pytest.approx(20 / 2 ** (1 / 3))
    bench = values(caul_thickness=20, below="bench")
    assert bench["caul_that_counts"] == 20
    one_thick = values(caul_thickness=8, lower_caul_thickness=80)
    assert one_thick["caul_that_counts"] == pytest.approx(8, rel=1e-3)
    uneven = values(caul_thickness=30, lower_caul_thickness=10)["caul_that_counts"]
    assert 1 / uneven**3 == pytest.approx(1 / 30**3 + 1 / 10**3)


@given(st.floats(3, 30))
@settings(max_examples=30)
def test_a_thicker_caul_presses_more_evenly(caul: float) -> None:
    thin, thick = (values(caul_thickness=t, below="bench") for t in (caul, 2.5 * caul))
    spread = [v["greatest_pressure"] - v["least_pressure"] for v in (thin, thick)]
    assert spread[1] < spread[0]
    assert thin["mean_pressure"] == thick["mean_pressure"]


@given(st.floats(0.05, 2), st.floats(3, 60))
@settings(max_examples=30)
def test_at_the_widest_spacing_a_long_row_leaves_just_what_is_wanted(
    low: float, caul: float
) -> None:
    v = values(pressure_low=low, pressure_high=6, caul_thickness=caul, softest_wood="maple")
    reach, spacing = v["reach"], v["spacing_at_most"]
    midway = endless_row(spacing / 2 / reach, spacing / reach, 11 / reach)
    assert v["pad_pressure"] * midway == pytest.approx(low, rel=1e-6)
    assert spacing > 22
    # A real row of many clamps says the same in its middle.
    long = row_with_ends(
        21 * spacing / reach, [(n + 0.5) * spacing / reach for n in range(21)], 11 / reach
    )
    assert v["pad_pressure"] * long(11 * spacing / reach) == pytest.approx(low, rel=0.02, abs=1e-3)


def test_clamps_too_weak_for_any_spacing_say_so() -> None:
    v = values(clamp_force=400)
    assert "spacing_at_most" not in v
    assert v["row_words"].startswith("Even pad against pad")


# The table and the words


@pytest.mark.parametrize(
    ("clamps", "names"),
    [
        (1, ["end", "clamp 1"]),
        (2, ["end", "clamp 1", "middle, between clamps"]),
        (3, ["end", "clamp 1", "half-way", "clamp 2"]),
        (4, ["end", "clamp 1", "half-way", "clamp 2", "middle, between clamps"]),
        (5, ["end", "clamp 1", "half-way", "clamp 2", "half-way", "clamp 3"]),
    ],
)
def test_the_places_of_the_table(clamps: int, names: list[str]) -> None:
    worked = answer(clamps=clamps, joint_length=200, pad_width=10)
    rows = worked.tables["along"]
    assert [row["place"] for row in rows] == names
    centres = centres_mm(200, clamps, 22)
    for row in rows:
        if row["place"].startswith("clamp"):
            assert row["from_end"] == pytest.approx(centres[int(row["place"][6:]) - 1])
        assert row["of_mean"] == pytest.approx(
            100 * row["pressure"] / worked.values["mean_pressure"]
        )
    places = [row["from_end"] for row in rows]
    assert places[0] == 0 and places[-1] == pytest.approx(100)
    for before, at, after in zip(rows, rows[1:], rows[2:], strict=False):
        if at["place"] == "half-way":
            assert at["from_end"] == pytest.approx((before["from_end"] + after["from_end"]) / 2)


@pytest.mark.parametrize(
    ("inputs", "start"),
    [
        ({}, "Good: from 0.78 MPa to 1.03 MPa"),
        ({"clamp_force": 1080, "pad_width": 20}, "Uneven: 0.697 MPa on average"),
        ({"clamp_force": 1075}, "Too little"),
        ({"clamp_force": 1090}, "Uneven: 0.703 MPa on average is enough, but only"),
        ({"clamp_force": 2680}, "Too much"),
        ({"clamp_force": 2600}, "Uneven: 1.92 MPa under a clamp"),
        ({"clamp_force": 2000, "caul_thickness": 2}, "Uneven: enough in all, but between"),
        ({"clamp_force": 5500, "pressure_high": 6}, "They crush the wood: 4.05 MPa"),
        ({"clamp_force": 5400, "pressure_high": 6}, "Good"),
    ],
)
def test_the_verdict_follows_the_figures(inputs: dict[str, Any], start: str) -> None:
    v = values(**inputs)
    assert v["verdict"].startswith(start), v["verdict"]


@pytest.mark.parametrize(
    ("inputs", "start"),
    [
        ({}, "Close enough: 55.5 mm apart"),
        ({"joint_length": 190, "clamp_force": 1400}, "Closer"),
        ({"clamps": 1, "joint_length": 40}, "One clamp"),
    ],
)
def test_the_words_of_the_row(inputs: dict[str, Any], start: str) -> None:
    v = values(**inputs)
    assert v["row_words"].startswith(start), v["row_words"]
    if "spacing" in v:
        assert v["spacing"] == pytest.approx((v["joint_length"] - 44) / 2)


def test_the_words_in_the_table() -> None:
    def words(**inputs: Any) -> list[str]:
        return [row["word"] for row in answer(**inputs).tables["along"]]

    assert words() == ["good"] * 4
    assert words(caul_thickness=2, clamp_force=2000) == [
        "lifts off", "too much", "lifts off", "too much",
    ]  # fmt: skip
    assert words(clamp_force=1200) == ["good", "good", "too little", "good"]


@pytest.mark.parametrize(
    ("wood", "psi"),
    [("sitka", 580), ("engelmann", 410), ("white", 430), ("cedar", 460), ("maple", 1470),
     ("red_maple", 1000), ("walnut", 1010)],
)  # fmt: skip
def test_wood_yields_where_the_handbook_says(wood: str, psi: float) -> None:
    assert crushing(wood) == pytest.approx(psi * 0.00689475729)
    assert values(softest_wood=wood)["crush"] == crushing(wood)
    assert values(softest_wood="own", crush_own=7)["crush"] == 7


@pytest.mark.parametrize(
    ("inputs", "blamed"),
    [
        ({"pressure_high": 0.6}, "pressure_high"),
        ({"pad_width": 45}, "pad_width"),
        ({"clamps": 1, "joint_length": 20}, "pad_width"),
        ({"clamps": 7}, "clamps"),
        ({"end_distance": 60}, "clamps"),
        ({"force_from": "screw", "lead": 6.1}, "lead"),
    ],
)
def test_what_cannot_be_is_refused(inputs: dict[str, Any], blamed: str) -> None:
    found = refusal(**inputs)
    assert found.input == blamed
    assert found.why and found.allowed


def test_the_ends_of_what_is_allowed_are_read() -> None:
    assert values(pad_width=44)["pad_width"] == 44
    assert values(clamps=6)["spacing"] == pytest.approx(22.2)
    assert values(clamps=1, joint_length=22)["pad_width"] == 22
    assert values(force_from="screw", lead=6)["lead"] == 6
    assert values(pressure_high=0.7)["pressure_high"] == 0.7


def test_cautions_come_when_they_should() -> None:
    def said(**inputs: Any) -> str:
        return " ".join(answer(**inputs).cautions)

    assert "half or double" in said(force_from="screw") and "half or double" not in said()
    assert "past half" in said(clamp_force=2800) and "past half" not in said(clamp_force=2600)
    assert "45 degree" in said(joint_length=300) and "45 degree" not in said()
    assert "more block than beam" in said(pressed_stiffness=5000)
    assert "more block than beam" not in said()
