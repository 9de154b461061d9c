"""A steady heat flux on a film that lies on a deep body of another material."""

import math

ROOT_PI = math.sqrt(math.pi)


def integral_erfc(argument: float) -> float:
    """ierfc(z) = exp(-z²)/sqrt(π) - z·erfc(z), a plain number (Carslaw & Jaeger, app. II)."""
    return math.exp(-argument * argument) / ROOT_PI - argument * math.erfc(argument)


def film_factor(film_over_reach: float, carry: float) -> float:
    """How many times the rise of a deep body of the film's own material, 2q·sqrt(α·t/π)/k.

    ``film_over_reach`` is film thickness over sqrt(α·t) of the film; ``carry`` is the effusivity
    sqrt(k·ρ·c) of the body below over that of the film (1: no difference, 0: no heat gets out).
    Constant flux on the film's surface, perfect contact below, one-dimensional:
    1 + 2·sqrt(π)·Σ Γⁿ·ierfc(n·d/sqrt(α·t)), Γ = (1 - carry)/(1 + carry), n = 1, 2, ...
    The Laplace transform behind it is q/(k·p·s)·(1 + Γ·exp(-2pd))/(1 - Γ·exp(-2pd)),
    p = sqrt(s/α). Source: Carslaw & Jaeger, 2nd ed., composite solids, sec. 12.8.
    """
    mirror = (1 - carry) / (1 + carry)
    total, power, number = 0.0, mirror, 1
    while number < 5000:
        term = power * integral_erfc(number * film_over_reach)
        total += term
        if abs(term) < 1e-12:
            break
        power *= mirror
        number += 1
    return 1 + 2 * ROOT_PI * total


def film_time_to_rise_s(
    rise_k: float,
    heat_flux_w_m2: float,
    conductivity_w_m_k: float,
    diffusivity_m2_s: float,
    film_m: float,
    carry: float,
) -> float:
    """Seconds of constant flux until the surface of a film on another body has risen ``rise_k``.

    The inverse of 2q·sqrt(α·t/π)/k times ``film_factor``, in sqrt(t), where the rise is
    nearly straight. The answer lies between those for the film's material alone and for the
    body below alone; regula falsi with halved ends (Illinois) closes in from both.
    """

    def excess(root_time: float) -> float:
        reach_m = math.sqrt(diffusivity_m2_s) * root_time
        deep_k = 2 * heat_flux_w_m2 * reach_m / (ROOT_PI * conductivity_w_m_k)
        return deep_k * film_factor(film_m / reach_m, carry) - rise_k

    alone = rise_k * ROOT_PI * conductivity_w_m_k / (2 * heat_flux_w_m2)
    alone /= math.sqrt(diffusivity_m2_s)
    low, high = min(alone, alone * carry), max(alone, alone * carry)
    if high - low < 1e-12 * high:
        return alone**2
    below, above = excess(low), excess(high)
    root, side = high, 0
    for _ in range(80):
        if below == above:
            break
        root = (low * above - high * below) / (above - below)
        here = excess(root)
        if abs(here) <= 1e-10 * rise_k or high - low <= 1e-12 * high:
            break
        if (here > 0) == (above > 0):
            high, above = root, here
            below, side = (below / 2, 1) if side == 1 else (below, 1)
        else:
            low, below = root, here
            above, side = (above / 2, -1) if side == -1 else (above, -1)
    return root**2
