"""What a handful of readings says: mean, spread, the next one, and two handfuls beside another.

Few readings know their own spread badly. Student's t allows for that; the normal curve does not,
and would call a wild hand steadier than it is.
"""

import math
from collections.abc import Sequence
from typing import NamedTuple


class Comparison(NamedTuple):
    """Two means side by side: first less second, its standard error, degrees of freedom."""

    difference: float
    standard_error: float
    degrees_of_freedom: float


def mean_and_spread(readings: Sequence[float]) -> tuple[float, float]:
    """Mean and sample standard deviation (n - 1), in the unit of the readings; two or more.

    Source: definitions, ISO 3534-1.
    """
    count = len(readings)
    mean = math.fsum(readings) / count
    if min(readings) == max(readings):
        return readings[0], 0.0
    squares = math.fsum((reading - mean) ** 2 for reading in readings)
    return mean, math.sqrt(squares / (count - 1))


def student_t_below(t: float, degrees_of_freedom: float) -> float:
    """The chance (0 to 1) that Student's t with so many degrees of freedom lies below ``t``.

    Half of the regularised incomplete beta function I_x(ν/2, 1/2), x = ν/(ν + t²), in each tail
    (NIST DLMF 8.17). Any positive degrees of freedom, whole or not.
    """
    half = degrees_of_freedom / 2
    squared = t * t
    tail = _incomplete_beta(
        half, 0.5, degrees_of_freedom / (degrees_of_freedom + squared),
        squared / (degrees_of_freedom + squared),
    ) / 2  # fmt: skip
    return tail if t < 0 else 1 - tail


def next_reading_below(limit: float, mean: float, spread: float, count: int) -> float:
    """The chance (0 to 1) that the next reading falls below ``limit``; same unit for all three.

    Of ``count`` readings with this mean and sample spread (above 0), taken from one normal
    population, the next one differs from the mean by spread·sqrt(1 + 1/n) times a Student's t of
    n - 1 degrees of freedom. Source: prediction interval for one future observation, Hahn &
    Meeker, Statistical Intervals.
    """
    t = (limit - mean) / (spread * math.sqrt(1 + 1 / count))
    return student_t_below(t, count - 1)


def compare_means(first: Sequence[float], second: Sequence[float]) -> Comparison:
    """Difference of two means where the spreads may differ (Welch 1947); unit of the readings.

    At least one of the two must spread: with no spread at all there is no error to speak of.
    """
    mean_1, spread_1 = mean_and_spread(first)
    mean_2, spread_2 = mean_and_spread(second)
    share_1, share_2 = spread_1**2 / len(first), spread_2**2 / len(second)
    both = share_1 + share_2
    degrees = both**2 / (share_1**2 / (len(first) - 1) + share_2**2 / (len(second) - 1))
    return Comparison(mean_1 - mean_2, math.sqrt(both), degrees)


def _incomplete_beta(a: float, b: float, x: float, rest: float) -> float:
    """I_x(a, b) by the continued fraction of DLMF 8.17.22; ``rest`` is 1 - x without loss."""
    if x <= 0 or rest <= 0:
        return 0.0 if x <= 0 else 1.0
    front = math.exp(
        math.lgamma(a + b) - math.lgamma(a) - math.lgamma(b) + a * math.log(x) + b * math.log(rest)
    )
    if x < (a + 1) / (a + b + 2):
        return front * _fraction(a, b, x) / a
    return 1 - front * _fraction(b, a, rest) / b


def _fraction(a: float, b: float, x: float) -> float:
    """The continued fraction of the incomplete beta function, worked forwards (Lentz)."""
    tiny = 1e-300
    c, d = 1.0, 1 - (a + b) * x / (a + 1)
    d = 1 / (d if abs(d) > tiny else tiny)
    value = d
    for m in range(1, 300):
        even = m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m))
        odd = -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1))
        change = 1.0
        for part in (even, odd):
            d, c = 1 + part * d, 1 + part / c
            d = 1 / (d if abs(d) > tiny else tiny)
            c = c if abs(c) > tiny else tiny
            change = c * d
            value *= change
        if abs(change - 1) < 1e-15:
            break
    return value
