"""How stiff and how strong clear wood is, along the grain, across it and at an angle.

The figures are as the Wood Handbook prints them, for clear straight-grained wood at 12 % moisture:
averages over many trees, each a mean of its species and not of the board in hand.
"""

import math
from typing import NamedTuple

GPA_PER_MPSI = 6.894757293168361
MPA_PER_PSI = 0.006894757293168361


class Wood(NamedTuple):
    """One species: Mpsi and psi as printed, and ratios to the modulus along the grain.

    ``modulus_mpsi`` is the modulus of elasticity in bending and ``strength_psi`` the modulus of
    rupture (FPL-GTR-282, Tables 5-3b and 5-5b). ``radial_ratio`` is E_R/E_L and ``shear_ratio``
    G_LR/E_L (FPL-GTR-190, Table 5-1), ``poisson`` is ν_LR (Table 5-2): the plane of a
    quartersawn plate.
    """

    modulus_mpsi: float
    strength_psi: float
    radial_ratio: float
    shear_ratio: float
    poisson: float


WOODS = {
    "sitka": Wood(1.57, 10200, 0.078, 0.064, 0.372),
    "engelmann": Wood(1.30, 9300, 0.128, 0.124, 0.422),
    "redcedar": Wood(1.11, 7500, 0.081, 0.087, 0.378),
    "mahogany": Wood(1.50, 11500, 0.107, 0.066, 0.314),
    "sugar maple": Wood(1.83, 15800, 0.132, 0.111, 0.424),
    # Table 5-1 prints no ratios for rosewood: those of black walnut stand in.
    "rosewood": Wood(1.78, 16900, 0.106, 0.085, 0.495),
}
# A plate that was measured along and across: the shear ratio is the Handbook's "about a
# sixteenth" for want of better (note to Eq. 9-11), Poisson's ratio that of Sitka spruce.
UNKNOWN_SHEAR_RATIO = 1 / 16
UNKNOWN_POISSON = 0.372


def modulus_gpa(wood: str) -> float:
    """Modulus of elasticity along the grain, GPa, of a species of ``WOODS``."""
    return WOODS[wood].modulus_mpsi * GPA_PER_MPSI


def strength_mpa(wood: str) -> float:
    """Modulus of rupture along the grain, MPa, of a species of ``WOODS``."""
    return WOODS[wood].strength_psi * MPA_PER_PSI


def modulus_at_angle(
    along_gpa: float, radial_ratio: float, shear_ratio: float, poisson: float, angle_deg: float
) -> float:
    """Modulus, GPa, of a quartersawn plate at ``angle_deg`` to its grain.

    Rotation of the compliance of an orthotropic plate in its own plane:
    1/E(θ) = cos⁴θ/E_L + sin⁴θ/E_R + (1/G_LR − 2ν_LR/E_L)·sin²θ·cos²θ
    (Lekhnitskii, Anisotropic Plates, section 9; the formula is any textbook's). For 0 to 90
    degrees.
    """
    c, s = math.cos(math.radians(angle_deg)), math.sin(math.radians(angle_deg))
    return along_gpa / (c**4 + s**4 / radial_ratio + (1 / shear_ratio - 2 * poisson) * s**2 * c**2)
