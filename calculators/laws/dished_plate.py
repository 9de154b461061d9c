"""A plate that is a piece of a ball, standing on two blocks of a body.

Lengths in mm. x runs along the centre line from the neck block, y to the side, z up towards the
top. ``sense`` is 1 for a top, whose crown is up, and -1 for a back, whose crown is down.
"""

import math
from typing import NamedTuple


class Ball(NamedTuple):
    """Centre of the ball in the plane of the centre line, its radius, and the crown's sense."""

    centre_x: float
    centre_z: float
    radius: float
    sense: int


def ball_over(length: float, z_neck: float, z_tail: float, radius: float, sense: int) -> Ball:
    """The ball of ``radius`` that meets the centre line at both blocks, crown up or down.

    Its centre stands over the middle of the chord from block to block, square to it, by
    sqrt(R² − (c/2)²) (circle geometry).
    """
    rise = z_tail - z_neck
    chord = math.hypot(length, rise)
    reach = math.sqrt(radius**2 - (chord / 2) ** 2)
    return Ball(
        length / 2 + sense * reach * rise / chord,
        (z_neck + z_tail) / 2 - sense * reach * length / chord,
        radius, sense,
    )  # fmt: skip


def height_on(ball: Ball, x: float, y: float) -> float:
    """Height z, mm, of the plate at a place in plan."""
    return ball.centre_z + ball.sense * math.sqrt(ball.radius**2 - (x - ball.centre_x) ** 2 - y**2)


def fall_outwards(ball: Ball, x: float, y: float, out_x: float, out_y: float) -> float:
    """Angle, degrees, by which the plate falls away outwards, against the plane of the rim.

    ``out_x``, ``out_y``: unit direction outwards, square to the side. "Falls" is towards the inside
    of the body, for a top and a back alike. The tangent is r·n/sqrt(R² − r²), r from the crown.
    """
    dx = x - ball.centre_x
    drop = math.sqrt(ball.radius**2 - dx**2 - y**2)
    return math.degrees(math.atan((dx * out_x + y * out_y) / drop))
