"""Something that comes to rest: the gap that is left shrinks by the same share in the same time."""

import math
from collections.abc import Sequence

from ..engine.declaration import Source

NEWTON_APPROACH = Source(
    id="exponential-approach",
    title="Exponential approach to equilibrium: the rate of change goes with what is left to go",
    author="Newton's law of cooling; for diffusion in a board, the first term of the series in "
    "Crank, J., The Mathematics of Diffusion, sec. 4.3",
    year="1975",
    note="Both named from memory. The first term alone holds once the skin has dried ahead of the "
    "middle, some days after the air has changed.",
)


def fit_approach(days: Sequence[float], gaps: Sequence[float]) -> tuple[float, float]:
    """Least-squares gap = start · exp(-rate · day): the start, in the gaps' unit, and the rate, 1/d.

    Two or more readings, all of one sign, no day below zero. Exact for two. Method: Gauss-Newton from the straight
    line through the logarithms, each weighed by the square of its gap; a step that makes the sum
    of squares greater is halved. A rate at or below zero means that nothing approaches.
    """
    weights = [gap * gap for gap in gaps]
    logs = [math.log(abs(gap)) for gap in gaps]
    total = math.fsum(weights)
    mean_day = math.fsum(w * day for w, day in zip(weights, days, strict=True)) / total
    mean_log = math.fsum(w * log for w, log in zip(weights, logs, strict=True)) / total
    spread = math.fsum(w * (day - mean_day) ** 2 for w, day in zip(weights, days, strict=True))
    slope = math.fsum(
        w * (day - mean_day) * (log - mean_log)
        for w, day, log in zip(weights, days, logs, strict=True)
    ) / spread  # fmt: skip
    rate = -slope
    start = math.copysign(math.exp(mean_log + rate * mean_day), gaps[0])
    if len(days) == 2:
        return start, rate
    best = math.inf, start, rate
    for _ in range(100):
        squares, step_start, step_rate = _normal_equations(days, gaps, start, rate)
        if squares > best[0]:
            start, rate = (start + best[1]) / 2, (rate + best[2]) / 2
            if (start, rate) == best[1:]:
                break
            continue
        best = squares, start, rate
        if abs(step_start) <= 1e-12 * abs(start) and abs(step_rate) <= 1e-12 * abs(rate):
            break
        start, rate = start + step_start, rate + step_rate
    return best[1], best[2]


def residual_spread(
    days: Sequence[float], gaps: Sequence[float], start: float, rate: float
) -> float:
    """How far readings scatter about their curve, in their unit: root of squares over n - 2.

    Nought for two readings, which any such curve fits.
    """
    if len(days) < 3:
        return 0.0
    return math.sqrt(_normal_equations(days, gaps, start, rate)[0] / (len(days) - 2))


def _normal_equations(
    days: Sequence[float], gaps: Sequence[float], start: float, rate: float
) -> tuple[float, float, float]:
    """Sum of squares at a point, and the Gauss-Newton step from it (2 by 2, by Cramer's rule)."""
    if -rate * max(days) > 700:  # a trial step far astray: e to that power is no number
        return math.inf, 0.0, 0.0
    squares = aa = ab = bb = ar = br = 0.0
    for day, gap in zip(days, gaps, strict=True):
        falls = math.exp(-rate * day)
        bends, off = -start * day * falls, gap - start * falls
        squares += off * off
        aa, ab, bb = aa + falls * falls, ab + falls * bends, bb + bends * bends
        ar, br = ar + falls * off, br + bends * off
    whole = aa * bb - ab * ab
    if whole == 0:
        return squares, 0.0, 0.0
    return squares, (bb * ar - ab * br) / whole, (aa * br - ab * ar) / whole
