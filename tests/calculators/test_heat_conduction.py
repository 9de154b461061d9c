"""The march of cells against the closed forms of Carslaw and Jaeger, and the laws it must keep."""

import math
from collections.abc import Iterator

import mpmath
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calculators.laws import conduction
from calculators.laws.conduction import (
    Cells,
    Moment,
    contact_temperature_c,
    graded_cells,
    march,
)

STAGES = 6
FIRST = 1 / (conduction.STEPS_A_STAGE * (2**STAGES - 1))
MODEST = settings(max_examples=20)
share = st.floats(0.05, 20)


def deep_body_c(depth_m: float, time_s: float, start_c: float, face_c: float, a: float) -> float:
    """Carslaw and Jaeger 2.4: a deep body of diffusivity ``a`` whose face jumps."""
    return face_c + (start_c - face_c) * math.erf(depth_m / (2 * math.sqrt(a * time_s)))


def flux_rise_k(time_s: float, flux: float, conductivity: float, diffusivity: float) -> float:
    """Carslaw and Jaeger 2.9: rise of a deep body's face under a steady flux."""
    return 2 * flux * math.sqrt(diffusivity * time_s / math.pi) / conductivity


def thin_film_share(time_s: float, film_heat: float, effusivity_below: float) -> float:
    """Carslaw and Jaeger 12.4: excess left to a well-mixed film on a deep body, as a share."""
    x = effusivity_below * math.sqrt(time_s) / film_heat
    return math.exp(x * x) * math.erfc(x)


def effusivity(conductivity: float, heat: float) -> float:
    return math.sqrt(conductivity * heat)


def at_end(moments: Iterator[Moment], time_s: float) -> Moment:
    return next(moment for moment in moments if moment.time_s >= time_s * (1 - 1e-9))


def deep(conductivity: float, heat: float, reach_m: float) -> Cells:
    return graded_cells(12 * reach_m, 0.01 * reach_m, 1.04, conductivity, heat)


@MODEST
@given(st.floats(0.1, 100), st.floats(0.001, 0.5), st.sampled_from((1, 1.1, 1.3)))
def test_cells_fill_the_layer(depth: float, finest: float, growth: float) -> None:
    cells = graded_cells(depth, finest, growth, 1, 1)
    assert sum(cells.widths_m) == pytest.approx(depth, rel=1e-12)
    assert cells.widths_m[-1] == min(cells.widths_m)
    assert cells.widths_m[-1] <= finest * 1.5 or len(cells.widths_m) == 1


@MODEST
@given(share, share, st.floats(0.01, 100))
def test_constant_flux_on_a_deep_body(conductivity: float, heat: float, time_s: float) -> None:
    reach = math.sqrt(conductivity / heat * time_s)
    cells = deep(conductivity, heat, reach)
    start = [0.0] * len(cells.widths_m)
    end = at_end(march(cells, start, lambda _: -1000.0, first_step_s=FIRST * time_s), time_s)
    rise = flux_rise_k(time_s, 1000, conductivity, conductivity / heat)
    assert end.face_c == pytest.approx(rise, rel=5e-4)
    assert end.lost_j_m2 == pytest.approx(-1000 * time_s, rel=1e-9)


@MODEST
@given(share, share)
def test_step_at_the_surface_of_a_deep_body(conductivity: float, heat: float) -> None:
    diffusivity = conductivity / heat
    reach = math.sqrt(diffusivity)
    cells = deep(conductivity, heat, reach)
    start = [80.0] * len(cells.widths_m)
    end = at_end(march(cells, start, lambda c: 1e9 * (c - 20), first_step_s=FIRST), 1)
    depth = 12 * reach
    for width, found in zip(cells.widths_m, end.temperatures_c, strict=True):
        depth -= width / 2
        expected = deep_body_c(max(depth, 0), 1, 80, 20, diffusivity)
        depth -= width / 2
        assert found == pytest.approx(expected, abs=0.05)


@MODEST
@given(share, share, share, share)
def test_two_bodies_touch(k_a: float, heat_a: float, k_b: float, heat_b: float) -> None:
    """The joint takes the contact temperature at once and keeps it."""
    below = deep(k_a, heat_a, math.sqrt(k_a / heat_a))
    turned = deep(k_b, heat_b, math.sqrt(k_b / heat_b))
    above = Cells(turned.widths_m[::-1], turned.conductivities_w_m_k, turned.heats_j_m3_k)
    count = len(below.widths_m)
    start = [20.0] * count + [60.0] * len(above.widths_m)
    expected = contact_temperature_c(60, effusivity(k_b, heat_b), 20, effusivity(k_a, heat_a))
    for moment in march(below + above, start, lambda _: 0.0, first_step_s=FIRST):
        if moment.time_s < 0.02:
            continue
        links = k_a / below.widths_m[-1], k_b / above.widths_m[0]
        sides = moment.temperatures_c[count - 1], moment.temperatures_c[count]
        joint = (links[0] * sides[0] + links[1] * sides[1]) / sum(links)
        assert joint == pytest.approx(expected, abs=0.05)
        if moment.time_s > 1:
            break


def test_thin_conducting_film_on_deep_wood() -> None:
    wood, film = deep(0.11, 687500, math.sqrt(0.11 / 687500 * 20)), graded_cells(
        2e-4, 2.5e-5, 1, 50, 3.3e6
    )  # fmt: skip
    start = [22.0] * len(wood.widths_m) + [61.0] * 8
    for moment in march(wood + film, start, lambda _: 0.0, first_step_s=0.001):
        if moment.time_s > 0.3:
            left = thin_film_share(moment.time_s, 2e-4 * 3.3e6, effusivity(0.11, 687500))
            mean = sum(moment.temperatures_c[-8:]) / 8
            assert mean == pytest.approx(22 + 39 * left, abs=0.08)
        if moment.time_s > 20:
            break


def test_film_and_wood_against_an_inverse_laplace_transform() -> None:
    def mean_rise(s: mpmath.mpf) -> mpmath.mpf:
        film, wood = mpmath.sqrt(0.4 * 3.3e6), mpmath.sqrt(0.11 * 687500)
        depth = mpmath.sqrt(s / mpmath.mpf(0.4 / 3.3e6)) * mpmath.mpf("2e-4")
        pull = wood / (wood * mpmath.cosh(depth) + film * mpmath.sinh(depth))
        return 39 / s * (1 - pull * mpmath.sinh(depth) / depth)

    wood, film = deep(0.11, 687500, 0.0018), graded_cells(2e-4, 1.25e-5, 1, 0.4, 3.3e6)
    start = [22.0] * len(wood.widths_m) + [61.0] * 16
    end = at_end(march(wood + film, start, lambda _: 0.0, first_step_s=10 * FIRST), 10)
    expected = 22 + float(mpmath.invertlaplace(mean_rise, 10, method="talbot"))
    assert sum(end.temperatures_c[-16:]) / 16 == pytest.approx(expected, abs=0.02)


@MODEST
@given(share, share, st.floats(1, 50), st.floats(0, 60))
def test_heat_is_conserved(conductivity: float, heat: float, film: float, air_c: float) -> None:
    """With a closed back, what the cells lose has left through the face."""
    cells = graded_cells(1, 0.02, 1.2, conductivity, heat)
    start = [50.0 - 20 * number / len(cells.widths_m) for number in range(len(cells.widths_m))]
    end = at_end(march(cells, start, lambda c: film * (c - air_c), first_step_s=0.01), 2)
    stored = sum(
        heat * width * (was - now)
        for width, was, now in zip(cells.widths_m, start, end.temperatures_c, strict=True)
    )
    assert end.lost_j_m2 == pytest.approx(stored, rel=1e-8, abs=1e-8)


@MODEST
@given(st.floats(1, 50), st.floats(1, 50), st.floats(0, 60), st.floats(0, 60))
def test_settles_to_the_steady_wall(face: float, back: float, out_c: float, in_c: float) -> None:
    cells = graded_cells(0.1, 0.01, 1.3, 0.5, 1000)
    start = [30.0] * len(cells.widths_m)
    moments = march(
        cells, start, lambda c: face * (c - out_c), back_w_m2_k=back, back_c=in_c, first_step_s=1
    )
    end = at_end(moments, 1e5)
    flux = (in_c - out_c) / (1 / face + 0.1 / 0.5 + 1 / back)
    assert end.face_c == pytest.approx(out_c + flux / face, abs=1e-6)


@MODEST
@given(st.floats(1e-4, 1), st.floats(1, 200))
def test_no_overshoot(first_step_s: float, film: float) -> None:
    """However long the steps, a hot film on cold wood stays between the two."""
    cells = graded_cells(0.02, 3e-5, 1.2, 0.1, 7e5) + graded_cells(2e-4, 5e-5, 1, 0.4, 3.3e6)
    start = [20.0] * (len(cells.widths_m) - 4) + [60.0] * 4
    for moment in march(cells, start, lambda c: film * (c - 20), first_step_s=first_step_s):
        assert 20 - 0.5 <= min(moment.temperatures_c) <= max(moment.temperatures_c) <= 60 + 0.5
        if moment.time_s > 50 * first_step_s:
            break


def test_second_order_in_time(monkeypatch: pytest.MonkeyPatch) -> None:
    """Half the step, a quarter of the error."""
    cells = graded_cells(0.02, 0.001, 1.1, 0.1, 7e5)
    start = [60.0] * len(cells.widths_m)

    def face(steps: int) -> float:
        monkeypatch.setattr(conduction, "STEPS_A_STAGE", steps)
        moments = march(cells, start, lambda c: 40 * (c - 20), first_step_s=100 / steps)
        return at_end(moments, 100).face_c

    exact = face(1024)
    coarse, fine = abs(face(8) - exact), abs(face(16) - exact)
    assert 3 < coarse / fine < 5.5
