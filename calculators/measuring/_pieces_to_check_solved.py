"""The parts of pieces-to-check that search; shares and chances in per cent, lengths in mm."""

import math
from collections.abc import Mapping
from typing import Any

from ..engine.declaration import Refusal
from ..laws.sampling import (
    batch_at_most,
    binomial_at_most,
    fewest_pieces,
    most_out,
    share_at_least,
    share_for_chance,
)
from ..laws.student_factor import normal_factor, student_t_factor

CURVE_POINTS = 28
MOST_ROWS = 12
SHARES = (0.1, 0.25, 0.5, 0.75, 1.0, 1.5, 2.0, 3.0)  # of the share that is just too bad


def worst_of(batch_size: int, worst_share: float) -> int:
    """The fewest pieces out that are more than the share, %, of a batch.

    The product is cleared of binary noise, so that 2.3 % of 1000 are 23 and not 22.
    """
    return math.floor(round(batch_size * worst_share / 100, 9)) + 1


def passing(share: float, pieces: int, misses: int, batch_size: int) -> float:
    """The chance, %, that a lot of which ``share`` % are out passes with at most so many misses.

    A ``batch_size`` of 0 stands for a run that goes on, here and below.
    """
    if batch_size == 0:
        return 100 * binomial_at_most(misses, pieces, share / 100)
    return 100 * batch_at_most(misses, batch_size, round(share / 100 * batch_size), pieces)


def plan(
    confidence: float, worst_share: float, allowed_misses: int, batch_size: int
) -> Mapping[str, Any]:
    """The fewest pieces so that a lot just too bad passes with chance 1 - confidence or less.

    Endless: exactly ``worst_share`` % out, binomial. A batch of N: the fewest out that are more
    than that share, hypergeometric. Chances and shares in per cent.
    """
    risk = 1 - confidence / 100
    if batch_size == 0:
        share = worst_share / 100
        last = 2
        while binomial_at_most(allowed_misses, last, share) > risk:
            last *= 2
        pieces = fewest_pieces(
            lambda n: binomial_at_most(allowed_misses, n, share), allowed_misses + 1, last, risk
        )
        worst, slips = worst_share, 100 * binomial_at_most(allowed_misses, pieces, share)
        good = 100 * share_for_chance(allowed_misses, pieces, 0.95)
    else:
        out = worst_of(batch_size, worst_share)
        if out <= allowed_misses:
            raise Refusal(
                "allowed_misses",
                f"A batch with {out} out is too bad already, and you would let {allowed_misses} "
                "pass: no check can prove it then. Allow fewer",
                f"at most {out - 1}",
            )
        pieces = fewest_pieces(
            lambda n: batch_at_most(allowed_misses, batch_size, out, n),
            allowed_misses + 1, batch_size, risk,
        )  # fmt: skip
        worst = 100 * out / batch_size
        slips = 100 * batch_at_most(allowed_misses, batch_size, out, pieces)
        good = 100 / batch_size * _passes_mostly(pieces, allowed_misses, batch_size)
    return {
        "pieces": pieces, "just_too_bad": worst, "slips_through": slips, "good_share": good,
        "curve_rows": curve(pieces, allowed_misses, worst, batch_size),
        "lot_rows": lots(pieces, allowed_misses, worst, batch_size),
    }  # fmt: skip


def _passes_mostly(pieces: int, misses: int, batch_size: int) -> int:
    """The most that may be out in a batch that still passes 95 times in 100."""
    low, high = 0, batch_size
    while low < high:
        middle = (low + high + 1) // 2
        if batch_at_most(misses, batch_size, middle, pieces) >= 0.95:
            low = middle
        else:
            high = middle - 1
    return low


def curve(pieces: int, misses: int, worst: float, batch_size: int) -> list[Mapping[str, float]]:
    """The chance of passing, %, against the share out, %, up to three times the worst one."""
    if batch_size == 0:
        top = min(100.0, 3 * worst)
        shares = [top * number / CURVE_POINTS for number in range(CURVE_POINTS + 1)]
    else:
        most = min(batch_size, max(3, round(3 * worst / 100 * batch_size)))
        step = max(1, most // CURVE_POINTS)
        shares = [100 * out / batch_size for out in range(0, most + 1, step)]
    return [
        {"share": share, "passes": passing(share, pieces, misses, batch_size)} for share in shares
    ]


def lots(pieces: int, misses: int, worst: float, batch_size: int) -> list[dict[str, float | None]]:
    """The same for a few lots, better and worse: a batch piece by piece, a run by its share."""
    if batch_size == 0:
        pairs: list[tuple[int | None, float]] = [
            (None, min(100.0, worst * part)) for part in SHARES
        ]
    else:
        most = min(batch_size, max(3, round(3 * worst / 100 * batch_size)))
        step = math.ceil(most / MOST_ROWS)
        pairs = [(out, 100 * out / batch_size) for out in range(0, most + 1, step)]
    return [
        {"out": out, "share": share, "passes": passing(share, pieces, misses, batch_size)}
        for out, share in pairs
    ]


def shown(
    checked: int, found_out: int, confidence: float, worst_share: float, batch_size: int
) -> Mapping[str, Any]:
    """What so many pieces out among those checked say of all of them, in per cent.

    The one-sided upper limit of Clopper and Pearson, and their two-sided limits; for a batch the
    most that may be out, by the hypergeometric distribution.
    """
    if found_out > checked:
        raise Refusal("found_out", "More are out than were checked; look over the two numbers",
                      f"at most {checked}")  # fmt: skip
    if 0 < batch_size < checked:
        raise Refusal("checked", f"The batch has only {batch_size} pieces",
                      f"at most {batch_size}")  # fmt: skip
    risk, half = 1 - confidence / 100, (1 - confidence / 100) / 2
    if batch_size == 0:
        upper = 100 * share_for_chance(found_out, checked, risk)
        high = 100 * share_for_chance(found_out, checked, half)
        most = 0
    else:
        most = most_out(found_out, batch_size, checked, risk)
        upper = 100 * most / batch_size
        high = 100 * most_out(found_out, batch_size, checked, half) / batch_size
    low = (
        100 * share_at_least(found_out, checked, 1 - half)
        if batch_size == 0
        else 100 * _fewest_out(found_out, batch_size, checked, half) / batch_size
    )
    worst = max(upper, worst_share)
    return {
        "upper": upper, "most_out": most, "two_low": low, "two_high": high,
        "curve_rows": curve(checked, found_out, worst, batch_size),
        "lot_rows": lots(checked, found_out, worst, batch_size),
    }  # fmt: skip


def _fewest_out(misses: int, batch: int, pieces: int, risk: float) -> int:
    """The fewest out in a batch for which so many misses or more still come up above ``risk``."""
    low, high = misses, batch - (pieces - misses)
    while low < high:
        middle = (low + high) // 2
        if 1 - batch_at_most(misses - 1, batch, middle, pieces) > risk * (1 + 1e-12):
            high = middle
        else:
            low = middle + 1
    return low


def normal_cover(confidence: float) -> float:
    """The coverage factor of the normal curve: ``laws.student_factor.normal_factor``."""
    return normal_factor(confidence)


def count_readings(
    first_count: int, random_room: float, gauge_part: float, spread: float, confidence: float
) -> Mapping[str, float]:
    """The fewest readings whose mean, by Student's t of n - 1, keeps within the room left, mm.

    Counts up from what the normal curve asks. ``reached`` is the mean's uncertainty with the
    gauge's part added as squares.
    """
    count = max(2, int(first_count))
    while True:
        factor = student_t_factor(confidence, count - 1)
        scatter = factor * spread / math.sqrt(count)
        if scatter <= random_room * (1 + 1e-12):
            break
        count += 1
    return {
        "readings_count": count, "student_factor": factor,
        "reached": math.hypot(scatter, gauge_part),
    }  # fmt: skip
