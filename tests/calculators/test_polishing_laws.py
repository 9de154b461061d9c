"""The laws behind the polishing calculator, held against scipy and mpmath."""

import math

import mpmath
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from scipy import integrate, optimize, special, stats

from calculators.laws.few_readings import (
    compare_means,
    mean_and_spread,
    next_reading_below,
    student_t_below,
)
from calculators.laws.moving_source import band_peak, scaled_bessel_k, share_of_fast_source
from calculators.laws.surface_heating import film_factor, film_time_to_rise_s, integral_erfc

PECLETS = st.floats(-4, 6).map(lambda power: 10**power)
READINGS = st.lists(st.floats(1, 100), min_size=3, max_size=12)


@given(st.floats(-5, 6).map(lambda power: 10**power))
@settings(max_examples=200)
def test_scaled_bessel_functions_are_those_of_scipy(argument: float) -> None:
    zero, one = scaled_bessel_k(argument)
    assert zero == pytest.approx(special.k0e(argument), rel=1e-13)
    assert one == pytest.approx(special.k1e(argument), rel=1e-13)


def band_rise_by_quadrature(place: float, peclet: float) -> float:
    """Jaeger's integral itself, by adaptive quadrature on both sides of its singular point."""

    def height(u: float) -> float:
        return math.exp(-u - abs(u)) * special.k0e(abs(u))

    ahead = integrate.quad(height, 0, place + peclet, limit=200)[0]
    behind = integrate.quad(height, place - peclet, 0, limit=200)[0]
    return ahead + behind


@pytest.mark.parametrize("peclet", [0.03, 0.4, 3.0, 15.0, 60.0])
def test_band_peak_is_the_greatest_value_of_jaegers_integral(peclet: float) -> None:
    found = optimize.minimize_scalar(
        lambda place: -band_rise_by_quadrature(place, peclet),
        bounds=(-peclet, peclet), method="bounded", options={"xatol": 1e-8 * peclet},
    )  # fmt: skip
    peak = band_peak(peclet)
    assert peak["rise"] == pytest.approx(-found.fun, rel=1e-8)
    assert peak["place"] == pytest.approx(found.x / peclet, abs=2e-4)


@given(PECLETS)
@settings(max_examples=100)
def test_peak_lies_behind_the_middle_and_below_the_closed_form(peclet: float) -> None:
    assert -1 < band_peak(peclet)["place"] < 0
    assert 0 < share_of_fast_source(peclet) < 1


@given(PECLETS, st.floats(1.05, 3))
@settings(max_examples=100)
def test_full_answer_nears_the_closed_form_as_the_source_speeds_up(
    peclet: float, faster: float
) -> None:
    assert share_of_fast_source(peclet) < share_of_fast_source(peclet * faster)


def test_closed_form_is_the_limit_of_a_fast_source() -> None:
    assert share_of_fast_source(1e8) == pytest.approx(1, abs=1e-7)


def test_a_slow_band_warms_like_a_standing_one() -> None:
    # For a small L the integral is that of -ln(u/2) - γ over the band: 2L·(1 - γ - ln(L/2)).
    peclet = 1e-5
    slow = 2 * peclet * (1 - float(mpmath.euler) - math.log(peclet / 2))
    assert band_peak(peclet)["rise"] == pytest.approx(slow, rel=1e-4)


@pytest.mark.parametrize("peclet", [0.0, -1.0, 1e12, math.nan])
def test_a_peclet_number_out_of_range_is_refused(peclet: float) -> None:
    with pytest.raises(ValueError, match="Péclet"):
        band_peak(peclet)


@given(st.floats(0, 5))
def test_integral_erfc_is_the_integral_of_erfc(argument: float) -> None:
    by_quadrature = integrate.quad(math.erfc, argument, 12)[0]
    assert integral_erfc(argument) == pytest.approx(by_quadrature, abs=1e-9)


@pytest.mark.parametrize("film_over_reach", [0.1, 0.5, 1.3, 4.0])
@pytest.mark.parametrize("carry", [0.2, 0.43, 0.9, 1.6])
def test_film_factor_is_the_inverse_of_its_laplace_transform(
    film_over_reach: float, carry: float
) -> None:
    # q = k = α = t = 1, so that the film is as thick as film_over_reach.
    mirror = mpmath.mpf(1 - carry) / (1 + carry)

    def transform(s: mpmath.mpf) -> mpmath.mpf:
        echo = mirror * mpmath.exp(-2 * film_over_reach * mpmath.sqrt(s))
        return (1 + echo) / (1 - echo) / (s * mpmath.sqrt(s))

    with mpmath.workdps(30):
        rise = mpmath.invertlaplace(transform, 1, method="talbot")
    thick = 2 / math.sqrt(math.pi)
    assert film_factor(film_over_reach, carry) == pytest.approx(float(rise) / thick, rel=1e-10)


@given(st.floats(0.05, 3))
def test_limits_of_a_film(carry: float) -> None:
    assert film_factor(30, carry) == pytest.approx(1, abs=1e-12)
    assert film_factor(1e-4, carry) == pytest.approx(1 / carry, rel=5e-3)
    assert film_factor(0.7, 1) == 1


@given(st.floats(0.05, 3), st.floats(0.1, 0.9), st.floats(1.1, 3))
def test_wood_that_carries_less_makes_the_film_hotter(
    thickness: float, carry: float, better: float
) -> None:
    assert film_factor(thickness, carry) > film_factor(thickness, carry * better)


@given(
    st.floats(1, 100), st.floats(500, 2e5), st.floats(20e-6, 800e-6), st.floats(0.2, 2.5)
)  # fmt: skip
@settings(max_examples=150)
def test_time_to_rise_turns_the_rise_round(
    rise: float, flux: float, film: float, carry: float
) -> None:
    k, alpha = 0.18, 1.017e-7
    time = film_time_to_rise_s(rise, flux, k, alpha, film, carry)
    thick = 2 * flux * math.sqrt(alpha * time / math.pi) / k
    assert thick * film_factor(film / math.sqrt(alpha * time), carry) == pytest.approx(rise, 1e-8)


# Close to nought scipy rounds to a half; the arctangent below, exact for one degree, is tried there.
@given(st.floats(-60, 60).filter(lambda t: abs(t) > 1e-6), st.floats(1, 200))
@settings(max_examples=200)
def test_student_t_is_that_of_scipy(t: float, freedom: float) -> None:
    assert student_t_below(t, freedom) == pytest.approx(stats.t.cdf(t, freedom), rel=1e-9)


@pytest.mark.parametrize("t", [2.5392108569589686e-09, 1e-6, 0.3, 12.0])
def test_student_t_of_one_degree_is_the_arctangent(t: float) -> None:
    assert student_t_below(t, 1.0) == pytest.approx(0.5 + math.atan(t) / math.pi, rel=1e-12)


@given(st.floats(-30, 30), st.floats(1, 60))
def test_student_t_is_even_handed(t: float, freedom: float) -> None:
    assert student_t_below(t, freedom) + student_t_below(-t, freedom) == pytest.approx(1)


@given(READINGS)
def test_mean_and_spread_are_those_of_scipy(readings: list[float]) -> None:
    assume(max(readings) - min(readings) > 0.01)
    mean, spread = mean_and_spread(readings)
    assert mean == pytest.approx(stats.tmean(readings))
    assert spread == pytest.approx(stats.tstd(readings))


def test_equal_readings_have_no_spread_at_all() -> None:
    assert mean_and_spread([0.1, 0.1, 0.1]) == (0.1, 0.0)


@given(READINGS, READINGS)
@settings(max_examples=100)
def test_comparison_is_welchs_test(first: list[float], second: list[float]) -> None:
    assume(max(first) - min(first) > 0.1 and max(second) - min(second) > 0.1)
    found = compare_means(first, second)
    welch = stats.ttest_ind(first, second, equal_var=False)
    assert found.difference / found.standard_error == pytest.approx(welch.statistic, abs=1e-9)
    assert found.degrees_of_freedom == pytest.approx(welch.df)


@given(st.integers(3, 50), st.floats(0.3, 4))
def test_few_readings_leave_more_chance_outside_than_the_normal_curve(
    count: int, spreads_away: float
) -> None:
    outside = next_reading_below(-spreads_away, 0, 1, count)
    assert outside > stats.norm.cdf(-spreads_away)


def test_chance_of_one_more_reading_is_that_of_many_trials() -> None:
    # One more of n + 1 equal hands: the share of trials in which it falls below mean - 2 spreads.
    generator = stats.norm()
    draws = generator.rvs(size=(40_000, 6), random_state=11)
    means, spreads = draws[:, :5].mean(axis=1), draws[:, :5].std(axis=1, ddof=1)
    share = float((draws[:, 5] < means - 2 * spreads).mean())
    assert next_reading_below(-2, 0, 1, 5) == pytest.approx(share, abs=0.004)
