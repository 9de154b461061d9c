"""A brace glued to a strip of plate: one beam of two woods (method of the transformed section).

Lengths in mm, moduli in GPa. A modulus times an area in mm² is kN; times a second moment in mm⁴
it is kN·mm², a thousand of which are 1 N·m².
"""

from typing import NamedTuple

KN_MM2_PER_N_M2 = 1000.0


class Section(NamedTuple):
    """A section of width b and height h: area, centroid and own second moment as shares.

    The area is ``area``·b·h, the centroid lies ``centroid``·h above the foot, and the second
    moment about the centroid is ``inertia``·b·h³.
    """

    area: float
    centroid: float
    inertia: float


# Properties of plane areas, any book of mechanics. The parabola stands on its chord: at the
# height y it is b·sqrt(1 - y/h) wide.
SECTIONS = {
    "rectangle": Section(1.0, 1 / 2, 1 / 12),
    "triangle": Section(1 / 2, 1 / 3, 1 / 36),
    "parabola": Section(2 / 3, 2 / 5, 8 / 175),
}


def brace_alone_n_m2(shape: str, width_mm: float, height_mm: float, brace_gpa: float) -> float:
    """Bending stiffness EI, N·m², of a brace by itself, bent in the plane of its height."""
    return brace_gpa * SECTIONS[shape].inertia * width_mm * height_mm**3 / KN_MM2_PER_N_M2


def plate_alone_n_m2(strip_mm: float, thickness_mm: float, plate_gpa: float) -> float:
    """Bending stiffness EI, N·m², of a strip of plate by itself: E·w·t³/12."""
    return plate_gpa * strip_mm * thickness_mm**3 / 12 / KN_MM2_PER_N_M2


def braced_strip_n_m2(
    shape: str, width_mm: float, height_mm: float, brace_gpa: float, strip_mm: float,
    thickness_mm: float, plate_gpa: float,
) -> float:  # fmt: skip
    """Bending stiffness EI, N·m², of a brace glued to a strip of plate.

    EI = E_p·I_p + E_b·I_b + d²·A_p·A_b/(A_p + A_b), with A = modulus times area and d between the
    two centroids (parallel axes about the common neutral axis). The glue does not give, plane
    sections stay plane. Source: any book of mechanics, composite beams; Timoshenko, Strength of
    Materials, part I (from memory).
    """
    section = SECTIONS[shape]
    brace_kn = brace_gpa * section.area * width_mm * height_mm
    plate_kn = plate_gpa * strip_mm * thickness_mm
    lever = thickness_mm / 2 + section.centroid * height_mm
    return (
        plate_alone_n_m2(strip_mm, thickness_mm, plate_gpa)
        + brace_alone_n_m2(shape, width_mm, height_mm, brace_gpa)
        + lever**2 * plate_kn * brace_kn / (plate_kn + brace_kn) / KN_MM2_PER_N_M2
    )
