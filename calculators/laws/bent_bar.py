"""A slender bar sprung between two faces: the elastica, exact for any bend.

Both ends are free to turn. k is the sine of half the slope at an end; K and E are the complete
elliptic integrals of the first and second kind.
"""

import math
from typing import NamedTuple


class BentBar(NamedTuple):
    """A bent bar beside its own length: plain numbers.

    ``force``: over Euler's load. ``bow``: of the middle, over the bar's length. ``bend``:
    curvature in the middle times the bar's length. ``modulus``: k.
    """

    force: float
    bow: float
    bend: float
    modulus: float


def complete_elliptic(modulus: float) -> tuple[float, float]:
    """K(k) and E(k) for 0 <= k < 1, by the arithmetic-geometric mean (DLMF 19.8.5, 19.8.6)."""
    a, g = 1.0, math.sqrt(1 - modulus * modulus)
    c = modulus
    power, total = 0.5, 0.5 * c * c
    while c > 1e-9:  # the next c is about c²/4: below the last bit
        a, g, c = (a + g) / 2, math.sqrt(a * g), (a - g) / 2
        power *= 2
        total += power * c * c
    first = math.pi / (2 * a)
    return first, first * (1 - total)


def bent_bar(height_share: float) -> BentBar:
    """A bar whose ends are ``height_share`` of its length apart, 0.05 to just below 1.

    Solves 2E(k)/K(k) - 1 = share (it falls as k grows) by halving k², then
    force = (2K/π)² of Euler's, bow = k/K, bend = 4kK. Source: Timoshenko & Gere, Theory of Elastic
    Stability, section 2.7 (from memory); Love, Mathematical Theory of Elasticity, chapter 19.
    """
    low, high = 0.0, 0.95
    for _ in range(60):
        middle = (low + high) / 2
        first, second = complete_elliptic(math.sqrt(middle))
        if 2 * second / first - 1 > height_share:
            low = middle
        else:
            high = middle
    modulus = math.sqrt((low + high) / 2)
    first, _ = complete_elliptic(modulus)
    return BentBar((2 * first / math.pi) ** 2, modulus / first, 4 * modulus * first, modulus)


def bent_shape(modulus: float, steps: int) -> list[tuple[float, float]]:
    """The bent line, over the bar's length: along from one end, and out to the side.

    With sin(θ/2) = k·sin φ along the bar, cos θ = 1 - 2k²·sin²φ and ds = dφ/(2K·sqrt(1 - k²sin²φ)).
    """
    first, _ = complete_elliptic(modulus)

    def rate(phi: float) -> float:
        squared = (modulus * math.sin(phi)) ** 2
        return (1 - 2 * squared) / (2 * first * math.sqrt(1 - squared))

    step = math.pi / steps
    along, line = 0.0, [(0.0, 0.0)]
    for number in range(1, steps + 1):
        phi = -math.pi / 2 + number * step
        along += (rate(phi - step) + 4 * rate(phi - step / 2) + rate(phi)) * step / 6
        line.append((along, modulus * math.cos(phi) / first))
    return line
