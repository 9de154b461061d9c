"""Laws of pressing the back: force and pressure, the sprung beam, the bent bar."""

import itertools
import math
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import quad, solve_ivp
from scipy.special import ellipe, ellipk

from calculators.engine.compute import Answer, Say, work_out
from calculators.engine.inputs import Refused
from calculators.laws.bent_bar import bent_bar, bent_shape, complete_elliptic
from calculators.plates.back_press import calculator

from .svg_bounds import outside


def worked(**given_inputs: Any) -> Answer:
    found = work_out(calculator, given_inputs)
    assert isinstance(found, Answer), found
    return found


def values(**given_inputs: Any) -> dict[str, Any]:
    return worked(**given_inputs).values


def refusal(**given_inputs: Any) -> Refused:
    found = work_out(calculator, given_inputs)
    assert isinstance(found, list)
    return found[0]


# The bladder


@given(
    kpa=st.floats(0.5, 15), area=st.floats(300, 2500), rim=st.floats(600, 2000),
    ledge=st.floats(3, 15),
)  # fmt: skip
@settings(max_examples=40)
def test_what_lies_on_the_plate_reaches_the_rim(
    kpa: float, area: float, rim: float, ledge: float
) -> None:
    v = values(bladder_pressure=kpa, plate_area=area, rim_length=rim, ledge_width=ledge)
    newtons = kpa * 1000 * area / 10_000
    assert v["press_force"] == pytest.approx(newtons)
    assert v["press_weight"] == pytest.approx(newtons / 9.80665)
    pascals = newtons / (rim * ledge / 1e6)
    assert v["joint_pressure"] == pytest.approx(pascals / 1000)
    assert v["joint_times"] == pytest.approx(area * 100 / (rim * ledge))
    assert v["bars_for_press"] == math.ceil(newtons / v["bar_force"])


# The sprung back


def overhang_end(s: float, a: float, rigid: float, ends: float, even: float) -> float:
    """Deflection, mm, of the end of an overhanging beam by Mohr's integrals of its moments.

    ``ends``: N at both ends; ``even``: N/mm all along; ``rigid``: N·mm².
    """

    def real(x: float) -> float:
        """Moment at x from the left end, hogging positive."""
        moment = ends * x + even * x * x / 2
        if x > a:
            moment -= (ends + even * (a + s / 2)) * (x - a)
        return moment

    def unit(x: float) -> float:
        return x if x <= a else a * (1 - (x - a) / s)

    return quad(lambda x: real(x) * unit(x) / rigid, 0, a + s, points=[a], limit=200)[0]


@given(
    a=st.floats(80, 250), s=st.floats(40, 250), t=st.floats(1.5, 4), width=st.floats(120, 350),
    radius=st.floats(2000, 20000), gap=st.floats(0.5, 4),
)  # fmt: skip
@settings(max_examples=40)
def test_the_sprung_back_is_an_overhanging_beam(
    a: float, s: float, t: float, width: float, radius: float, gap: float
) -> None:
    v = values(
        overhang=a, bearing_span=s, back_thickness=t, back_width=width, back_dish_radius=radius,
        end_gap=gap,
    )  # fmt: skip
    sag = radius - math.sqrt(radius**2 - width**2 / 4)
    assert v["arch_across"] == pytest.approx(sag, abs=1e-9)
    # Second moment of a parabola of that sag, thickness t, about its own middle: by quadrature.
    mean = 2 / 3 * sag
    line = quad(
        lambda u: t * (sag * (1 - (2 * u / width) ** 2) - mean) ** 2, -width / 2, width / 2
    )[0]
    rigid = v["back_gpa"] * 1000 * (line + width * t**3 / 12)
    assert v["back_stiffness"] * 1e6 == pytest.approx(rigid)
    one = overhang_end(s, a, rigid, 1.0, 0.0)
    assert v["end_rate"] == pytest.approx(1 / one)
    assert v["end_force"] == pytest.approx(gap / one)
    bend = v["end_force"] * a / rigid  # between the bearing places, 1/mm
    assert v["bend_radius"] == pytest.approx(1 / bend / 1000)
    far = max(t / 2 + mean, t / 2 + sag - mean)
    assert v["back_stress"] == pytest.approx(v["back_gpa"] * 1000 * far * bend)
    assert v["back_share"] == pytest.approx(100 * v["back_stress"] / v["back_mpa"])
    even = overhang_end(s, a, rigid, 0.0, 1.0)
    assert ("closing_pressure" in v) == (even > 0)
    if even > 1e-6:
        assert v["closing_pressure"] == pytest.approx(1000 * gap / even / width, rel=1e-6)


def test_a_push_takes_the_place_of_thickness_and_leaves_the_bend_alone() -> None:
    plate = values()
    push = values(stiffness_from="push", push_force=30, push_move=1.5)
    assert push["end_rate"] == pytest.approx(20)
    assert push["end_force"] == pytest.approx(40)
    assert push["back_stress"] == pytest.approx(plate["back_stress"])
    times = 20 / plate["end_rate"]
    assert push["closing_pressure"] == pytest.approx(times * plate["closing_pressure"])


def test_a_flat_back_has_only_its_thickness() -> None:
    v = values(back_dish_radius=1_000_000, back_wood="own", back_modulus=10, back_strength=50)
    assert v["back_stiffness"] == pytest.approx(10 * 250 * 2.6**3 / 12 / 1000, rel=1e-4)
    assert v["back_mpa"] == 50


# The bar


@given(share=st.floats(0.7, 0.9999))
@settings(max_examples=50)
def test_bent_bar_is_the_elastica(share: float) -> None:
    bent = bent_bar(share)
    m = bent.modulus**2
    first = float(ellipk(m))
    assert 2 * float(ellipe(m)) / first - 1 == pytest.approx(share, abs=1e-12)
    assert bent.force == pytest.approx((2 * first / math.pi) ** 2)
    # Shoot the differential equation θ'' = -β² sin θ from one end: length 1, end at `share`.
    beta = math.pi**2 * bent.force
    start = 2 * math.asin(bent.modulus)

    def slope(_: float, state: np.ndarray) -> list[float]:
        theta, bend = state[0], state[1]
        return [bend, -beta * math.sin(theta), math.cos(theta), math.sin(theta)]

    end = solve_ivp(slope, (0, 0.5), [start, 0, 0, 0], rtol=1e-10, atol=1e-12).y[:, -1]
    assert end[0] == pytest.approx(0, abs=1e-6)
    assert end[2] == pytest.approx(share / 2, abs=1e-7)
    assert end[3] == pytest.approx(bent.bow, abs=1e-7)
    assert -end[1] == pytest.approx(bent.bend, rel=1e-6)


@given(modulus=st.floats(0, 0.97))
@settings(max_examples=50)
def test_complete_elliptic_integrals(modulus: float) -> None:
    first, second = complete_elliptic(modulus)
    assert first == pytest.approx(float(ellipk(modulus**2)), rel=1e-13)
    assert second == pytest.approx(float(ellipe(modulus**2)), rel=1e-13)


def test_drawn_bar_ends_where_the_deck_is_and_is_as_long_as_it_was() -> None:
    for share in (0.72, 0.9, 0.99):
        bent = bent_bar(share)
        line = bent_shape(bent.modulus, 60)
        assert line[0] == (0, 0)
        assert line[-1] == pytest.approx((share, 0), abs=1e-6)
        assert max(out for _, out in line) == pytest.approx(bent.bow)
        m, first = bent.modulus**2, float(ellipk(bent.modulus**2))
        for number in (1, 7, 30, 44):
            phi = -math.pi / 2 + number * math.pi / 60
            run = quad(
                lambda u, m=m: (1 - 2 * m * math.sin(u) ** 2) / math.sqrt(1 - m * math.sin(u) ** 2),
                -math.pi / 2, phi,
            )[0]  # fmt: skip
            out = bent.modulus * math.cos(phi) / first
            assert line[number] == pytest.approx((run / 2 / first, out), rel=1e-7)
        length = sum(math.dist(a, b) for a, b in itertools.pairwise(line))
        assert length == pytest.approx(1, abs=2e-3)


def test_a_bar_that_just_bends_pushes_with_eulers_load() -> None:
    v = values(bar_length=620, deck_height=619.999)
    rigid = 11.3e3 * 12 * 6**3 / 12
    assert v["euler_force"] == pytest.approx(math.pi**2 * rigid / 620**2)
    assert v["bar_stiffness"] * 1e6 == pytest.approx(rigid)
    assert v["bar_force"] == pytest.approx(v["euler_force"], rel=1e-5)
    # A shallow bow is half a sine wave: 2/π·sqrt(shortening) of the length, stress E·t/2·bow·π²/l².
    shallow = values(bar_length=620, deck_height=619)
    bow = 2 / math.pi * math.sqrt(1 / 620) * 620
    assert shallow["bar_bow"] == pytest.approx(bow, rel=2e-3)
    stress = 11.3e3 * 3 * shallow["bar_bow"] * (math.pi / 620) ** 2
    assert shallow["bar_stress"] == pytest.approx(stress, rel=2e-3)
    assert shallow["bar_share"] == pytest.approx(100 * shallow["bar_stress"] / 92)


@given(t=st.floats(3, 9), b=st.floats(6, 20), room=st.floats(450, 615))
@settings(max_examples=30)
def test_push_goes_with_the_cube_of_thickness_and_hardly_with_the_bend(
    t: float, b: float, room: float
) -> None:
    v = values(bar_thickness=t, bar_width=b, deck_height=room)
    plain = values(bar_thickness=6, bar_width=12, deck_height=room)
    assert v["bar_force"] / plain["bar_force"] == pytest.approx((t / 6) ** 3 * b / 12)
    assert v["bar_stress"] / plain["bar_stress"] == pytest.approx(t / 6)
    assert v["bar_bow"] == pytest.approx(plain["bar_bow"])
    assert 1 < v["force_times"] < 1.19


def test_bars_on_a_brace() -> None:
    v = values(brace_length=400, bar_spacing=55, brace_width=8)
    assert v["bars_on_brace"] == 8
    assert v["brace_pressure"] == pytest.approx(8 * v["bar_force"] / (400 * 8) * 1000)
    assert values(brace_length=385)["bars_on_brace"] == 7


# Words and refusals


def test_the_words_of_the_bladder() -> None:
    assert values(bladder_pressure=5.1)["answer"].startswith("Too much")
    assert "Within" in values(bladder_pressure=5)["answer"]
    assert "Within" in values(bladder_pressure=3)["answer"]
    assert values(bladder_pressure=2.9)["answer"].startswith("Less than")
    assert any("Do not press" in one for one in worked(bladder_pressure=5.1).cautions)
    assert not any("Do not press" in one for one in worked(bladder_pressure=5).cautions)


def test_the_words_of_closing() -> None:
    assert "do not press it shut" in values(end_gap=3.1)["closing_words"]
    assert "palms first" in values(end_gap=3)["closing_words"]
    assert "palms first" in values(end_gap=1)["closing_words"]
    assert "hardly a spring" in values(end_gap=0.9)["closing_words"]
    stiff = {"stiffness_from": "push", "push_force": 300, "push_move": 2}
    assert "this bladder alone does not" in values(**stiff)["closing_words"]
    lifted = values(overhang=60, bearing_span=400)
    assert "lift the ends" in lifted["closing_words"]
    assert "closing_pressure" not in lifted


def test_the_words_of_the_bar() -> None:
    assert values()["bar_words"].startswith("Right")
    assert values(bar_strength=60)["bar_words"].startswith("It breaks")
    assert values(bar_strength=80)["bar_words"].startswith("Near breaking")
    assert any("do not bend it in" in one for one in worked(bar_strength=80).cautions)
    assert not any("do not bend it in" in one for one in worked().cautions)
    assert values(bar_width=20)["bar_words"].startswith("Too hard")
    assert values(bar_width=9)["bar_words"].startswith("Too weak")
    force = values()["bar_force"]
    assert values(bar_width=12 * 80 / force * 0.999)["bar_words"].startswith("Right")
    assert values(bar_width=12 * 50 / force * 1.001)["bar_words"].startswith("Right")


def test_refusals_name_the_input() -> None:
    assert refusal(deck_height=620).input == "deck_height"
    assert refusal(bar_length=860).input == "bar_length"
    values(bar_length=857)
    values(bar_length=600, deck_height=420)  # just seven tenths
    assert refusal(end_gap=10, overhang=50, bearing_span=60).input == "end_gap"
    # 120 mm of overhang on 20 mm with a gap of 10 mm: a radius of 0.6 m; 80 mm: 0.29 m.
    values(end_gap=10, overhang=120, bearing_span=20)
    assert refusal(end_gap=10, overhang=80, bearing_span=20).input == "end_gap"


@given(
    a=st.floats(30, 300), s=st.floats(20, 450), room=st.floats(0.71, 0.999),
    length=st.floats(250, 1500), gap=st.floats(0.1, 3),
)  # fmt: skip
@settings(max_examples=40)
def test_drawings_stay_on_their_paper(
    a: float, s: float, room: float, length: float, gap: float
) -> None:
    found = work_out(
        calculator,
        {"overhang": a, "bearing_span": s, "bar_length": length, "deck_height": room * length,
         "end_gap": gap},
    )  # fmt: skip
    if isinstance(found, Answer):
        for system in ("metric", "inch"):
            say = Say(calculator, found.values, system)
            for drawing in calculator.drawings:
                assert outside(drawing.function(found.values, say)) == []
