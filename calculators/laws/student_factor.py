"""How many standard uncertainties cover so much: Student's t turned round."""

import math

from .few_readings import student_t_below


def student_t_factor(confidence_percent: float, degrees_of_freedom: float) -> float:
    """The k for which a Student's t lies between -k and k with this confidence.

    Confidence above 0 and below 100 %; any degrees of freedom from a half up, whole or not. Newton's
    method on the chance of lying outside, kept inside a bracket. Source: the distribution as NIST
    DLMF 8.17 gives it; GUM (JCGM 100:2008) annex G calls this the coverage factor.
    """
    outside = _outside(confidence_percent)
    low, high = 0.0, 1.0
    while _beyond(high, degrees_of_freedom) > outside:
        low, high = high, 2 * high
    factor = (low + high) / 2
    for _ in range(100):
        miss = _beyond(factor, degrees_of_freedom) - outside
        if miss > 0:
            low = factor
        else:
            high = factor
        step = miss / (2 * student_t_density(factor, degrees_of_freedom))
        nearer = factor + step
        if not low < nearer < high:
            nearer = (low + high) / 2
        if abs(nearer - factor) <= 1e-13 * factor:
            return nearer
        factor = nearer
    return factor


def student_t_density(t: float, degrees_of_freedom: float) -> float:
    """Density of Student's t: Γ((ν+1)/2)/(Γ(ν/2)·sqrt(π·ν)) · (1 + t²/ν)^(-(ν+1)/2).

    Source: Student's distribution in its usual form, as in GUM annex G.3.
    """
    half = (degrees_of_freedom + 1) / 2
    front = math.lgamma(half) - math.lgamma(degrees_of_freedom / 2)
    return math.exp(front - half * math.log1p(t * t / degrees_of_freedom)) / math.sqrt(
        math.pi * degrees_of_freedom
    )


def _outside(confidence_percent: float) -> float:
    """The chance left outside; no factor covers all of it, or less than nothing."""
    if not 0 < confidence_percent < 100:
        raise ValueError(f"{confidence_percent} % is no confidence between 0 and 100 %")
    return (100 - confidence_percent) / 100


def _beyond(factor: float, degrees_of_freedom: float) -> float:
    """The chance that Student's t lies outside of -factor to factor."""
    return 2 * student_t_below(-factor, degrees_of_freedom)


def normal_factor(confidence_percent: float) -> float:
    """The k for which a normal error lies between -k and k standard uncertainties.

    Student's t without limit to its degrees of freedom: erf(k/√2) = P, by Newton's method from
    0, which never overshoots: the chance left outside is convex.
    """
    outside = _outside(confidence_percent)
    factor = 0.0
    for _ in range(200):
        miss = math.erfc(factor / math.sqrt(2)) - outside
        step = miss / (math.sqrt(2 / math.pi) * math.exp(-factor * factor / 2))
        factor += step
        if abs(step) <= 1e-15 * max(1.0, factor):
            break
    return factor
