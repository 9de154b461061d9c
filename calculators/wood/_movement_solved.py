"""The parts of the movement calculation that need more than a formula."""

from collections.abc import Mapping

from ..laws.braced_plate import SECTIONS
from ..laws.equilibrium_moisture import humidity_for_emc
from ..laws.wood_shrinkage import WOODS


def shrinkages_of(
    species: str, own_shrinkage_radial: float = 0.0, own_shrinkage_tangential: float = 0.0
) -> Mapping[str, float | str]:
    """Shrinkage green to ovendry, %, along rays and rings, and where it is from.

    Source: ``laws.wood_shrinkage.WOODS``, or what the reader gives.
    """
    if species == "own":
        radial, tangential, origin = own_shrinkage_radial, own_shrinkage_tangential, "own"
    else:
        radial, tangential, origin = WOODS[species]
    return {
        "shrinkage_radial": radial, "shrinkage_tangential": tangential, "figures_from": origin,
    }  # fmt: skip


def section_of(brace_shape: str) -> Mapping[str, float]:
    """A brace's section beside its bounding rectangle; plain numbers.

    Share of the area, height of the centroid, and squared radius of gyration (second moment over
    area) beside the squared height. Source: ``laws.braced_plate.SECTIONS``.
    """
    section = SECTIONS[brace_shape]
    return {
        "area_share": section.area, "centroid_share": section.centroid,
        "gyration_share": section.inertia / section.area,
    }  # fmt: skip


def flat_air(flat_moisture: float, room_temperature: float) -> float:
    """Humidity, %, in which an arched plate has just gone flat, at a moisture of so many %.

    Source: ``laws.equilibrium_moisture.humidity_for_emc``.
    """
    return humidity_for_emc(flat_moisture, room_temperature)


def tight_air(tight_moisture: float, room_temperature: float) -> float:
    """Humidity, %, in which a fitted piece just fills its place, at a moisture of so many %.

    Source: ``laws.equilibrium_moisture.humidity_for_emc``.
    """
    return humidity_for_emc(tight_moisture, room_temperature)
