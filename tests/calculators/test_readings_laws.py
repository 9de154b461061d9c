"""The laws of a handful of readings, beside scipy's statistics; the factor of a normal error."""

import statistics

import pytest
from hypothesis import given
from hypothesis import strategies as some
from scipy import stats

from calculators.laws.few_readings import (
    compare_means,
    mean_and_spread,
    next_reading_below,
    student_t_below,
)
from calculators.laws.student_factor import normal_factor

READINGS = some.lists(some.floats(1, 9).map(lambda x: round(x, 2)), min_size=2, max_size=9)


@given(READINGS)
def test_mean_and_spread_are_those_of_the_library(readings: list[float]) -> None:
    mean, spread = mean_and_spread(readings)
    assert mean == pytest.approx(statistics.fmean(readings))
    assert spread == pytest.approx(statistics.stdev(readings), abs=1e-12)


def test_readings_all_alike_have_no_spread_and_their_own_mean() -> None:
    assert mean_and_spread([0.1, 0.1, 0.1]) == (0.1, 0.0)


@given(READINGS, READINGS)
def test_two_means_are_compared_as_welch_does(first: list[float], second: list[float]) -> None:
    if len(set(first)) == 1 or len(set(second)) == 1:
        return
    ours = compare_means(first, second)
    theirs = stats.ttest_ind(first, second, equal_var=False)
    assert ours.degrees_of_freedom == pytest.approx(theirs.df, rel=1e-9)
    assert ours.difference / ours.standard_error == pytest.approx(theirs.statistic, rel=1e-9)


@pytest.mark.parametrize("count", [2, 3, 7, 20])
def test_the_next_reading_falls_where_students_t_says(count: int) -> None:
    expected = stats.t.cdf((4.0 - 5.0) / (0.8 * (1 + 1 / count) ** 0.5), count - 1)
    assert next_reading_below(4.0, 5.0, 0.8, count) == pytest.approx(expected, rel=1e-10)


@given(some.floats(-6, 6), some.floats(1, 60))
def test_students_t_is_that_of_the_library(t: float, degrees: float) -> None:
    assert student_t_below(t, degrees) == pytest.approx(
        stats.t.cdf(t, degrees), rel=1e-8, abs=1e-14
    )


@pytest.mark.parametrize("confidence", [50.0, 68.27, 90.0, 95.0, 95.45, 99.0, 99.73])
def test_the_normal_factor_is_that_of_the_library(confidence: float) -> None:
    expected = stats.norm.ppf(0.5 + confidence / 200)
    assert normal_factor(confidence) == pytest.approx(expected, rel=1e-12)
