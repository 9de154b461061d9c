"""Laws of a beam on an elastic bed, whatever the caul."""

import math

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from scipy.integrate import quad

from calculators.glueing._clamping_force_work import centres_mm
from calculators.laws.elastic_bed import endless_row, row_with_ends, under_pad

HALF_PAD = st.floats(0.02, 0.6)


def point_load(x: float) -> float:
    """Pressure of a unit load on an endless beam, in reaches, as Hetényi has it."""
    return 0.5 * math.exp(-abs(x)) * (math.cos(x) + math.sin(abs(x)))


@given(st.floats(-5, 5), HALF_PAD)
@settings(max_examples=60)
def test_a_pad_is_a_sum_of_point_loads(x: float, half: float) -> None:
    summed = quad(lambda s: point_load(x - s), -half, half, points=[x] if abs(x) < half else None)
    assert under_pad(x, half) == pytest.approx(summed[0], abs=1e-9)


@given(st.floats(0.5, 6), HALF_PAD, st.floats(0, 0.5))
@settings(max_examples=60)
def test_an_endless_row_is_the_sum_of_its_pads(spacing: float, half: float, share: float) -> None:
    assume(2 * half <= spacing)
    x = share * spacing
    pads = range(-round(40 / spacing) - 2, round(40 / spacing) + 3)
    summed = sum(under_pad(x - pad * spacing, half) for pad in pads)
    assert endless_row(x, spacing, half) == pytest.approx(summed, abs=1e-10)


@given(st.floats(0.3, 5))
@settings(max_examples=40)
def test_a_row_of_points_is_the_closed_form(spacing: float) -> None:
    half = 1e-4
    u = spacing
    below = math.cosh(u) - math.cos(u)
    under = 0.5 * (math.sinh(u) + math.sin(u)) / below
    midway = math.sinh(u / 2) * math.cos(u / 2) + math.cosh(u / 2) * math.sin(u / 2)
    assert endless_row(0, spacing, half) / (2 * half) == pytest.approx(under, rel=1e-4)
    assert endless_row(u / 2, spacing, half) / (2 * half) == pytest.approx(
        midway / below, rel=1e-4, abs=1e-5
    )


@given(st.floats(0.5, 20), st.integers(1, 8), st.floats(0.05, 0.45), st.floats(0.1, 0.9))
@settings(max_examples=40)
def test_the_bed_carries_all_the_load_and_balances_it(
    length: float, count: int, end_share: float, pad_share: float
) -> None:
    end = end_share * length / count
    centres = centres_mm(length, count, end)
    half = pad_share * min(end, length / count / 2)
    pressure = row_with_ends(length, centres, half)
    edges = sorted(edge for c in centres for edge in (c - half, c + half))
    carried = quad(pressure, 0, length, points=edges, limit=400)[0]
    assert carried == pytest.approx(2 * half * count, rel=1e-7)
    for x in (0.0, length / 3, length / 2):
        assert pressure(x) == pytest.approx(pressure(length - x), abs=1e-9)


@given(st.floats(2, 15), st.floats(0.2, 0.4))
@settings(max_examples=25)
def test_the_ends_are_free_and_the_beam_obeys_its_law(length: float, end_share: float) -> None:
    end = end_share * length
    half = 0.1 * end
    pressure = row_with_ends(length, [end, length - end], half)
    h = 0.02

    def derivative(x: float, weights: list[float], order: int) -> float:
        total = sum(w * pressure(x + n * h) for n, w in enumerate(weights))
        return total / h**order

    # Bending moment and shear vanish at the end: second and third derivative of the deflection.
    second = derivative(0, [35 / 12, -26 / 3, 19 / 2, -14 / 3, 11 / 12], 2)
    third = derivative(0, [-5 / 2, 9, -12, 7, -3 / 2], 3)
    assert second == pytest.approx(0, abs=2e-4)
    assert third == pytest.approx(0, abs=2e-3)
    # Between the loads: y'''' = -4 y, lengths in reaches.
    x = length / 2 - 2 * h
    fourth = derivative(x, [1, -4, 6, -4, 1], 4)
    assert fourth == pytest.approx(-4 * pressure(length / 2), abs=2e-3)


def test_a_stiff_beam_presses_evenly_and_a_long_one_like_an_endless_one() -> None:
    stiff = row_with_ends(0.05, [0.0125, 0.0375], 0.005)
    for x in (0, 0.0125, 0.025):
        assert stiff(x) == pytest.approx(0.4, rel=1e-4)
    long = row_with_ends(80, [40], 0.3)
    for x in (0.0, 0.2, 1.0, 3.0):
        assert long(40 + x) == pytest.approx(under_pad(x, 0.3), abs=1e-12)
    assert under_pad(50, 0.3) == 0.0
