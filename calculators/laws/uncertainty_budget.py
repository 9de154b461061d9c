"""What makes a measurement uncertain, added up as the GUM does: squares, and degrees of freedom."""

import math
from collections.abc import Sequence

from ..engine.declaration import Source

GUM = Source(
    id="gum",
    title="Guide to the expression of uncertainty in measurement (JCGM 100:2008): 4.3 standard "
    "uncertainty of a distribution, 5.1.2 eq. (10) combining, G.4.1 eq. (G.2b) effective degrees "
    "of freedom, 6.2.1 expanded uncertainty",
    author="Joint Committee for Guides in Metrology",
    year="2008",
    note="Clauses and equation numbers from memory; the figures are checked with the GUM Tree "
    "Calculator and scipy.",
)
DIVISORS = {
    "standard": 1.0,
    "normal": 2.0,
    "rectangular": math.sqrt(3),
    "triangular": math.sqrt(6),
    "u-shaped": math.sqrt(2),
}
UNLIMITED = 1e7  # degrees of freedom from which on Student's t is the normal curve to 1e-7


def divisor(shape: str) -> float | None:
    """What the half-width of an error is divided by to give its standard uncertainty.

    "standard" is one already, "normal" the half-width for k = 2, as on certificates; an error
    even over its range has a/√3, one heaped up in the middle a/√6, one that lingers at both ends
    (a swing, a wave) a/√2. None for any other word. Source: GUM 4.3.
    """
    return DIVISORS.get(shape.strip().lower())


def combined(parts: Sequence[float]) -> float:
    """Root of the sum of squares of independent contributions, all in one unit: GUM eq. (10)."""
    return math.sqrt(math.fsum(part * part for part in parts))


def effective_freedom(parts: Sequence[float], freedoms: Sequence[float]) -> float | None:
    """Welch-Satterthwaite: u_c⁴ over the sum of u_i⁴/ν_i; GUM eq. (G.2b).

    A freedom of 0 stands for one that is known well, without limit. None where nothing limits it
    (or only beyond ``UNLIMITED``). Not cut to a whole number.
    """
    whole = combined(parts)
    below = math.fsum(
        (part / whole) ** 4 / freedom
        for part, freedom in zip(parts, freedoms, strict=True)
        if freedom > 0
    )
    return 1 / below if below * UNLIMITED > 1 else None
