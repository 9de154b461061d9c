"""Where to take off, and where to put a shim instead: the plan for a joint that was read dry."""

from typing import Any

NOTHING = "nothing"
LEAST_WORTH_A_STROKE_MM = 0.005  # half of the hundredth that is printed
CORNERS = (
    ("Heel end, bass side", "heel", "bass"),
    ("Heel end, treble side", "heel", "treble"),
    ("Board end, bass side", "board", "bass"),
    ("Board end, treble side", "board", "treble"),
)


def plan(
    heel_cut: float, heel_low: float, heel_high: float,
    side_cut: float, side_low: float, side_high: float,
    seat_low: float, seat_high: float, proud_now: float, cheek_cut: float, even_cut: float,
    spare: float,
) -> dict[str, Any]:  # fmt: skip
    """What to do at the four corners of the shoulders; all in millimetres.

    A cut whose 95 % interval holds nothing is left undone. Tilting back only takes from the heel
    end: the joint fret stays where it is. Tilting forward takes from the board end and lets the
    neck in by the cut; swinging it takes from one shoulder and lets the middle in by half the
    cut; a shim thicker than the lacquer to come lets it in by the difference. Where that adds up
    to more than may be spared, too much is gone, and a shim at the opposite end or side does the
    same turn. Taking off is positive, a shim negative. ``heel_off`` and ``board_off`` are the bare
    figures for pitch and lacquer, before any of this is weighed.
    """
    pitch = 0.0 if heel_low <= 0 <= heel_high else heel_cut
    side = 0.0 if side_low <= 0 <= side_high else side_cut
    even = 0.0 if abs(even_cut) < LEAST_WORTH_A_STROKE_MM else even_cut
    moves_in = max(0.0, -pitch) + abs(side) / 2 + max(0.0, -even)
    gone = moves_in > spare
    pitch_end, side_of, even_way = _ways(pitch, side, even, gone)
    corners = []
    for place, end, edge in CORNERS:
        for_pitch = _signed(pitch, pitch_end, end)
        for_side = _signed(side, side_of, edge)
        for_lacquer = even if even > 0 or gone else 0.0
        corners.append(
            {
                "place": place, "for_pitch": for_pitch, "for_side": for_side,
                "for_lacquer": for_lacquer, "in_all": for_pitch + for_side + for_lacquer,
            }
        )  # fmt: skip
    if seat_low <= 0 <= seat_high:
        seat_way = NOTHING
    else:
        seat_way = "pare the cheeks" if proud_now > 0 else "build up the cheeks"
    return {
        "pitch_way": pitch_end, "side_way": side_of, "even_way": even_way, "seat_way": seat_way,
        "heel_off": max(0.0, heel_cut) + even_cut, "board_off": max(0.0, -heel_cut) + even_cut,
        "heel_size": abs(heel_cut), "side_size": abs(side_cut), "even_size": abs(even_cut),
        "cheek_size": abs(cheek_cut), "seat_size": abs(proud_now),
        "joint_moves_in": moves_in, "joint_left": spare - moves_in, "corners": corners,
    }  # fmt: skip


def _ways(pitch: float, side: float, even: float, gone: bool) -> tuple[str, str, str]:
    """In words: at which end, on which side, and how room is made for the lacquer."""
    if pitch == 0:
        end = NOTHING
    elif pitch > 0:
        end = "off the heel end"
    else:
        end = "shim at the heel end" if gone else "off the board end"
    if side == 0:
        of = NOTHING
    elif gone:
        of = "shim on the bass side" if side > 0 else "shim on the treble side"
    else:
        of = "off the treble side" if side > 0 else "off the bass side"
    if even == 0:
        way = NOTHING
    elif even > 0:
        way = "off both shoulders alike"
    else:
        way = "packing behind both shoulders" if gone else "the neck goes further in"
    return end, of, way


def _signed(amount: float, way: str, here: str) -> float:
    """What one corner gets: taken off (positive), shimmed (negative) or nothing."""
    if here not in way:
        return 0.0
    return -abs(amount) if way.startswith("shim") else abs(amount)
