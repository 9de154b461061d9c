"""A band of heat that moves over a body: how hot the surface gets under it (Jaeger).

The band is long across its travel and ``contact_length`` along it, gives a uniform flux, and moves
steadily over a body that is deep and wide beside the band. Everything follows from one number,
the Péclet number L = V·l/(2·α), with l the HALF length of the band along the travel. A large L
means that heat has no time to run ahead or sideways: each place under the band simply takes a
constant flux q for the time w/V that the band, w long, needs to pass, and rises by the closed form
(2q/k)·sqrt(α·w/(π·V)) of a fast source. A smaller L stays below that.
"""

import math
from collections.abc import Mapping

LEAST_PECLET, GREATEST_PECLET = 1e-6, 1e9
LARGE_ARGUMENT = 20.0


def scaled_bessel_k(argument: float) -> tuple[float, float]:
    """exp(x)·K0(x) and exp(x)·K1(x) for x > 0, to about 14 digits; plain numbers.

    Below 20 the trapezoidal rule on the integral of exp(-x·(cosh t - 1))·cosh(n·t) over t >= 0
    (NIST DLMF 10.32.9), which converges faster than any power of its step; from 20 up the
    asymptotic series (DLMF 10.40.2), cut off where its terms stop mattering.
    """
    if argument >= LARGE_ARGUMENT:
        lead = math.sqrt(math.pi / (2 * argument))
        return lead * _series(0.0, argument), lead * _series(4.0, argument)
    step = 0.2 if argument < 10 else 0.15
    zero = one = 0.5
    place = step
    while True:
        hyperbolic = math.cosh(place)
        height = math.exp(-argument * (hyperbolic - 1))
        zero += height
        one += height * hyperbolic
        if height * hyperbolic < 1e-17 * one:
            return step * zero, step * one
        place += step


def _series(four_order_squared: float, argument: float) -> float:
    """The asymptotic series of K_n without its leading factor (DLMF 10.40.2)."""
    total = term = 1.0
    for number in range(1, 30):
        term *= (four_order_squared - (2 * number - 1) ** 2) / (8 * argument * number)
        total += term
        if abs(term) < 1e-17:
            break
    return total


def band_peak(peclet: float) -> Mapping[str, float]:
    """``rise``, Jaeger's greatest dimensionless θ = π·k·V·T/(2·α·q), and its ``place``.

    The place is counted from the middle of the band in half lengths; negative is behind the
    middle, where the band has been longest. Holds for any Péclet number from 1e-6 to 1e9.

    The rise at x is the integral of exp(-u)·K0(|u|) from X - L to X + L, X = L·x/l (Jaeger 1942;
    Carslaw & Jaeger sec. 10.7). With DLMF 10.43.9 the integral is closed,
    θ = a·exp(-a)·(K0(a) - K1(a)) + b·exp(b)·(K0(b) + K1(b)), a = L + X, b = L - X, and it is
    greatest where exp(-a)·K0(a) = exp(b)·K0(b). That place is found by Newton's method on the
    logarithms, which fall steadily with a, kept inside 0 < a < L by halving.
    """
    if not LEAST_PECLET <= peclet <= GREATEST_PECLET:
        raise ValueError(f"Péclet number {peclet} lies outside 1e-6 to 1e9")
    low, high = 0.0, peclet
    front = min(0.8 * peclet, 0.25 * math.log1p(4 * peclet))
    for _ in range(60):
        back = 2 * peclet - front
        front_zero, front_one = scaled_bessel_k(front)
        back_zero, back_one = scaled_bessel_k(back)
        unbalance = math.log(front_zero / back_zero) - 2 * front
        if unbalance > 0:
            low = front
        else:
            high = front
        # θ is level at its greatest, so a front good to 1e-6 gives θ to a dozen digits.
        step = unbalance / (front_one / front_zero + back_one / back_zero)
        if abs(step) <= 1e-6 * front:
            break
        front = front + step if low < front + step < high else (low + high) / 2
    rise = front * math.exp(-2 * front) * (front_zero - front_one)
    rise += back * (back_zero + back_one)
    return {"rise": rise, "place": (front - peclet) / peclet}


def share_of_fast_source(peclet: float) -> float:
    """The full greatest rise as a share of the closed form for a fast source; always below 1.

    θ/(2·sqrt(π·L)), with θ from ``band_peak``.
    """
    return band_peak(peclet)["rise"] / (2 * math.sqrt(math.pi * peclet))
