"""The geometry of a neck against the body's rim plane, and what bends it.

The neck's own frame has its origin O where the plane of the fret tops crosses the joint (the
edge of the body). One axis runs along the fret tops towards the bridge, the other stands square
to them. Straight below O, by board and fret (b), the board's underside rests on the edge of the
top, P; there the rim plane begins. The pitch is the angle between fret plane and rim plane::

      nut                                         W  saddle, h_s over the fret plane
       |h_0 ........ string .....................'|
       +---------------- O ======================= E  straightedge on the fret tops
            neck         |b                       |H  straightedge over the top
                         P ~~~~~~ the top ~~~~~~~ Q
                         +-------- rim plane ---- |a  rise of the top above the rim plane
                         |<--------- L --------->|    joint to bridge, along the fret plane

Turning the neck by the pitch θ about P takes the points of its frame to heights above the rim
plane, exactly::

      E (L, 0)    is at  L sin θ + b cos θ         = H + a
      W (L, h_s)  is at  L sin θ + (b + h_s) cos θ = Z

The saddle's crown W has to come out at Z = bridge + saddle + what the strings will lift + a. The
left side is hypot(L, b + h_s) · sin(θ + atan((b + h_s)/L)), so

      θ = asin(Z / hypot(L, b + h_s)) - atan((b + h_s) / L),   H = Z - a - h_s cos θ.

For a small pitch this is the bench rule θ = (Z - b - h_s) / L in radians. For a joint that is
standing, the same with E gives the pitch from the height H that is read. The foot of E lies
short of L by L (1 - cos θ) + b sin θ, a fifth of a millimetre; the rise of the top is taken at L,
which shifts it by a few thousandths at most.

Action. The string is straight, and the 12th fret halves it: over the fret plane it stands there
at the mean of h_0 and h_s. Both outer strings start at h_0; what bass and treble differ by at the
12th is half of what they differ by at the saddle. The mean of the two sets the pitch.

Relief. Strings bow the neck between the first fret (x_1) and the stiff joint (x_j). A straightedge
then touches those two, and that chord is the fret plane here. A shallow bow is a parabola: at x
it dips 4 r (x - x_1)(x_j - x)/(x_j - x_1)^2 below the chord, r in the middle. At the twelfth fret
that is a share of the relief, about 0.39 at a 14-fret joint. Where the joint lies at the twelfth
fret or before it there is no dip. A circle through the same three points differs by less than
a ten-thousandth of the relief.
"""

import math

from ..engine.declaration import Refusal


def dish_rise_mm(dish_radius_mm: float, span_mm: float, along_mm: float) -> float:
    """Height of a dished top above the chord of its rim, ``along_mm`` from one end of the chord.

    A circle of ``dish_radius_mm`` through both ends of ``span_mm``; in the middle this is the
    sagitta. All in millimetres; needs a radius above half the span.
    """
    half_mm = span_mm / 2
    return math.sqrt(dish_radius_mm**2 - (along_mm - half_mm) ** 2) - math.sqrt(
        dish_radius_mm**2 - half_mm**2
    )


def measured_rise_mm(arch_mm: float, joint_to_bridge_mm: float, along_mm: float) -> float:
    """Height of a top of which only the rise at the bridge is known, in millimetres.

    A parabola from nothing at the joint to its crown, ``arch_mm``, at the bridge place.
    """
    share = along_mm / joint_to_bridge_mm
    return arch_mm * share * (2 - share)


def top_rise_mm(
    along_mm: float,
    joint_to_bridge_mm: float,
    arch_measured_mm: float | None,
    dish_radius_mm: float | None,
    span_mm: float | None,
) -> float:
    """Height of the top above the rim plane ``along_mm`` from the joint, whichever is known."""
    if arch_measured_mm is not None:
        return measured_rise_mm(arch_measured_mm, joint_to_bridge_mm, along_mm)
    if dish_radius_mm is None or span_mm is None:
        raise Refusal("arch_from", "Nothing says how the top is arched; give it", "one of the two")
    return dish_rise_mm(dish_radius_mm, span_mm, along_mm)


def rise_of_top(
    joint_to_bridge: float,
    tongue_length: float,
    arch_measured: float | None = None,
    dish_radius: float | None = None,
    dish_span: float | None = None,
) -> dict[str, float]:
    """Rise of the top above the rim plane under the bridge place and under the board's end.

    All in millimetres. From the dish it is the circle; from a measured rise the parabola with
    its crown at the bridge place. The distances along the board stand for those along the rim.
    """
    arch_mm, end_mm = (
        top_rise_mm(along_mm, joint_to_bridge, arch_measured, dish_radius, dish_span)
        for along_mm in (joint_to_bridge, tongue_length)
    )
    return {"arch": arch_mm, "end_rise": end_mm}
