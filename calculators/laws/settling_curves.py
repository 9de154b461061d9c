"""Curves of something that gives way under a load, fast at first and ever slower.

Both run as y = a + b·f(t/τ): creep by f = log10(1 + t/τ), which never quite stops, and the
approach to rest by f = 1 - exp(-t/τ). Days, and heights in any one unit. Creep counts its days from
the load; the approach looks the same from any day on and counts from the first reading.
"""

import itertools
import math
from collections.abc import Callable, Sequence
from typing import NamedTuple

from ..engine.declaration import Source

LOGARITHMIC_CREEP = Source(
    id="logarithmic-creep",
    title="Creep that grows with the logarithm of time: deformation = a + b·log10(1 + t/τ)",
    author="Phillips, P., Philosophical Magazine 9, 513; Andrade's and Findley's creep laws beside "
    "it; for wood, Wood Handbook, ch. 5, time under load",
    year="1905",
    note="All named from memory. A description of what is seen over days, not a theory of wood.",
)
LEAST_SQUARES = Source(
    id="least-squares",
    title="Nonlinear least squares, and the interval for one further observation",
    author="Golub, G. H., and Pereyra, V., SIAM Journal on Numerical Analysis 10, 413 (variable "
    "projection); Bates & Watts, Nonlinear Regression Analysis, ch. 2",
    year="1973, 1988",
    note="Named from memory; the figures are checked with scipy and numpy.",
)
GRID_STEPS = 22
LONGEST_SHARE = 20.0  # of the days read: slower than that and a curve is a straight line


class Law(NamedTuple):
    """A law of settling: its shape, how that changes with ln τ, its shortest τ in gaps of days."""

    shape: Callable[[float, float], float]
    change: Callable[[float, float], float]
    shortest_share: float
    from_load: bool  # counts its days from day 0, else from the first reading


def creep_shape(day: float, time_d: float) -> float:
    """log10(1 + t/τ)."""
    return math.log10(1 + day / time_d)


def creep_change(day: float, time_d: float) -> float:
    """d/d(ln τ) of ``creep_shape``: -(t/(τ + t))/ln 10."""
    return -day / (time_d + day) / math.log(10)


def approach_shape(day: float, time_d: float) -> float:
    """1 - exp(-t/τ)."""
    return -math.expm1(-day / time_d)


def approach_change(day: float, time_d: float) -> float:
    """d/d(ln τ) of ``approach_shape``: -(t/τ)·exp(-t/τ)."""
    return -day / time_d * math.exp(-day / time_d)


CREEP = Law(creep_shape, creep_change, 1e-3, True)
APPROACH = Law(approach_shape, approach_change, 0.05, False)


class Curve(NamedTuple):
    """A fitted curve; ``edge`` is "long" or "short" where the readings do not fix its time."""

    law: Law
    origin_d: float  # the day from which its days are counted
    start: float  # a
    gain: float  # b
    time_d: float  # τ
    edge: str = ""

    def height(self, day: float) -> float:
        """The curve's height on a day."""
        return self.start + self.gain * self.law.shape(day - self.origin_d, self.time_d)

    def slopes(self, day: float) -> tuple[float, ...]:
        """Derivatives of the height by a, b and ln τ (not by ln τ at an edge, where it is held)."""
        since = day - self.origin_d
        shape = self.law.shape(since, self.time_d)
        if self.edge:
            return 1.0, shape
        return 1.0, shape, self.gain * self.law.change(since, self.time_d)

    def squares(self, days: Sequence[float], heights: Sequence[float]) -> float:
        """Sum of the squared differences between readings and curve."""
        return math.fsum((y - self.height(day)) ** 2 for day, y in zip(days, heights, strict=True))


def fit_curve(days: Sequence[float], heights: Sequence[float], law: Law) -> Curve:
    """Least squares for a, b and τ on four readings or more, on rising days, not all alike.

    For a given τ, a and b follow from a straight line of height against f, so only τ is sought
    (variable projection): a grid of ln τ, then the zero of the derivative by regula falsi
    (Illinois). The time is held at the end of the grid where the sum still falls there: "long"
    when it does not slow down within the days read, "short" when all is over before the second
    reading.
    """
    gap = min(b - a for a, b in itertools.pairwise(days))
    shortest = math.log(gap * law.shortest_share)
    longest = math.log((days[-1] - days[0]) * LONGEST_SHARE)
    steps = [shortest + (longest - shortest) * n / GRID_STEPS for n in range(GRID_STEPS + 1)]
    sums = [_line(days, heights, law, math.exp(step)).squares(days, heights) for step in steps]
    best = sums.index(min(sums))
    if best in (0, GRID_STEPS):
        held = _line(days, heights, law, math.exp(steps[best]))
        return held._replace(edge="long" if best else "short")
    place = _zero(lambda step: _slope(days, heights, law, step), steps[best - 1], steps[best + 1])
    return _line(days, heights, law, math.exp(place))


def half_width(curve: Curve, days: Sequence[float], day: float, spread: float) -> float:
    """Standard uncertainty of the curve's height on ``day``, in the unit of ``spread``.

    sqrt(s²·gᵀ(JᵀJ)⁻¹g), the curve taken as straight in its parameters near the fit: g are the
    slopes on that day, J those on the days read.
    """
    rows = [curve.slopes(one) for one in days]
    size = len(rows[0])
    normal = [[math.fsum(r[i] * r[j] for r in rows) for j in range(size)] for i in range(size)]
    target = curve.slopes(day)
    return spread * math.sqrt(max(0.0, _quadratic(normal, target)))


def _line(days: Sequence[float], heights: Sequence[float], law: Law, time_d: float) -> Curve:
    """The straight line of height against the law's shape for one τ."""
    origin_d = 0.0 if law.from_load else days[0]
    shapes = [law.shape(day - origin_d, time_d) for day in days]
    count = len(days)
    mean_x, mean_y = math.fsum(shapes) / count, math.fsum(heights) / count
    wide = math.fsum((x - mean_x) ** 2 for x in shapes)
    both = math.fsum((x - mean_x) * (y - mean_y) for x, y in zip(shapes, heights, strict=True))
    gain = both / wide
    return Curve(law, origin_d, mean_y - gain * mean_x, gain, time_d)


def _slope(days: Sequence[float], heights: Sequence[float], law: Law, step: float) -> float:
    """Half the derivative of the sum of squares by ln τ, a and b following."""
    time_d = math.exp(step)
    line = _line(days, heights, law, time_d)
    return -math.fsum(
        (y - line.height(day)) * line.gain * law.change(day - line.origin_d, time_d)
        for day, y in zip(days, heights, strict=True)
    )


def _zero(function: Callable[[float], float], low: float, high: float) -> float:
    """Where a function that is negative at ``low`` and positive at ``high`` goes through zero."""
    at_low, at_high = function(low), function(high)
    side = 0
    place = (low + high) / 2
    for _ in range(200):
        if at_high == at_low:
            return place
        place = (low * at_high - high * at_low) / (at_high - at_low)
        value = function(place)
        if value == 0 or high - low <= 1e-13 * max(1.0, abs(place)):
            return place
        if value < 0:
            low, at_low = place, value
            at_high = at_high / 2 if side < 0 else at_high
            side = -1
        else:
            high, at_high = place, value
            at_low = at_low / 2 if side > 0 else at_low
            side = 1
    return place


def _quadratic(normal: list[list[float]], target: Sequence[float]) -> float:
    """gᵀ·N⁻¹·g for a small symmetric positive N, by Cholesky's factor."""
    size = len(target)
    factor = [[0.0] * size for _ in range(size)]
    solved: list[float] = []
    for i in range(size):
        for j in range(i + 1):
            rest = normal[i][j] - math.fsum(factor[i][k] * factor[j][k] for k in range(j))
            if i == j:
                factor[i][i] = math.sqrt(max(rest, 1e-300))
            else:
                factor[i][j] = rest / factor[j][j]
        done = math.fsum(factor[i][k] * solved[k] for k in range(i))
        solved.append((target[i] - done) / factor[i][i])
    return math.fsum(one * one for one in solved)
