"""What a check of some pieces says about all of them: misses in a sample, and limits from them.

Chances and shares run from 0 to 1; everything that is counted is a whole number.
"""

import math
from collections.abc import Callable

from ..engine.declaration import Source

SAMPLING = Source(
    id="sampling",
    title="Misses in a random sample: the binomial distribution for an endless stream, the "
    "hypergeometric one for a batch; exact limits for a share",
    author="Clopper, C. J., and Pearson, E. S., Biometrika 26, 404-413; ISO 2859-2 for sampling of "
    "single batches",
    year="1934",
    note="Both named from memory; the figures are checked with scipy.",
)
NEGLIGIBLE = 1e-18


def binomial_at_most(misses: int, pieces: int, share: float) -> float:
    """The chance that among so many pieces at most so many are out, each being out with ``share``.

    Terms are added from the greatest number downwards until they no longer count; where that
    would be the longer way round, the other tail is added up instead.
    """
    if misses >= pieces or share <= 0:
        return 1.0
    if misses < 0 or share >= 1:
        return 0.0
    if misses > pieces * share:
        return 1 - binomial_at_most(pieces - misses - 1, pieces, 1 - share)
    term = math.exp(
        _log_choose(pieces, misses) + misses * math.log(share)
        + (pieces - misses) * math.log1p(-share)
    )  # fmt: skip
    total, odds = 0.0, (1 - share) / share
    for count in range(misses, -1, -1):
        total += term
        if term < NEGLIGIBLE * total:
            break
        term *= count / (pieces - count + 1) * odds
    return min(1.0, total)


def batch_at_most(misses: int, batch: int, out: int, pieces: int) -> float:
    """The chance that among ``pieces`` drawn from a batch at most ``misses`` are out.

    ``out`` of the batch are out; nothing is put back: the hypergeometric distribution.
    """
    fewest, most = max(0, pieces - (batch - out)), min(pieces, out)
    if misses >= most:
        return 1.0
    if misses < fewest:
        return 0.0
    if misses * batch > pieces * out:
        return 1 - batch_at_most(pieces - misses - 1, batch, batch - out, pieces)
    term = math.exp(
        _log_choose(out, misses) + _log_choose(batch - out, pieces - misses)
        - _log_choose(batch, pieces)
    )  # fmt: skip
    total = 0.0
    for count in range(misses, fewest - 1, -1):
        total += term
        if term < NEGLIGIBLE * total:
            break
        left = batch - out - pieces + count  # good pieces not drawn
        term *= count * left / ((out - count + 1) * (pieces - count + 1))
    return min(1.0, total)


def fewest_pieces(passes: Callable[[int], float], first: int, last: int, risk: float) -> int:
    """The least number of pieces for which the chance of passing is ``risk`` or less.

    ``passes`` falls as the number rises; it must be down to ``risk`` at ``last``. Halving.
    """
    slack = 1 + 1e-12
    while first < last:
        middle = (first + last) // 2
        if passes(middle) <= risk * slack:
            last = middle
        else:
            first = middle + 1
    return first


def share_for_chance(misses: int, pieces: int, chance: float) -> float:
    """The share out at which at most so many misses come up with just this chance.

    With chance 1 - C it is the upper limit of Clopper and Pearson for so many misses found, with
    confidence C. Halving; 0 misses: 1 - chance^(1/n).
    """
    if misses >= pieces:
        return 1.0
    low, high = 0.0, 1.0
    for _ in range(60):
        middle = (low + high) / 2
        if binomial_at_most(misses, pieces, middle) > chance:
            low = middle
        else:
            high = middle
    return (low + high) / 2


def share_at_least(misses: int, pieces: int, confidence: float) -> float:
    """The share out is at least this, with such confidence, when so many misses were found.

    The lower limit of Clopper and Pearson: so many misses or more come up with chance 1 - C.
    """
    if misses == 0:
        return 0.0
    return share_for_chance(misses - 1, pieces, confidence)


def most_out(misses: int, batch: int, pieces: int, risk: float) -> int:
    """The most that may be out in a batch in which so many misses were found among the pieces.

    The greatest number for which at most so many misses would still come up with a chance above
    ``risk``. Halving.
    """
    low, high = misses, batch - (pieces - misses)
    while low < high:
        middle = (low + high + 1) // 2
        if batch_at_most(misses, batch, middle, pieces) > risk * (1 + 1e-12):
            low = middle
        else:
            high = middle - 1
    return low


def _log_choose(whole: int, part: int) -> float:
    return math.lgamma(whole + 1) - math.lgamma(part + 1) - math.lgamma(whole - part + 1)
