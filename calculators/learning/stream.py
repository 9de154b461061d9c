"""Draws that are the same on every machine and in every version of Python.

The library's own generator promises this for its raw numbers only, not for choices or shuffles; so
each draw is taken from SHA-256 over the seed and a counter.
"""

from collections.abc import Sequence
from hashlib import sha256
from typing import TypeVar

Item = TypeVar("Item")
BYTES = 8


class Stream:
    """A stream of draws that its seed alone decides."""

    def __init__(self, seed: str) -> None:
        self._seed = seed.encode()
        self._count = 0

    def whole(self, low: int, high: int) -> int:
        """A whole number from ``low`` to ``high``, both included, each as likely as the others."""
        span = high - low + 1
        limit = 256**BYTES // span * span
        while True:
            digest = sha256(b"%s/%d" % (self._seed, self._count)).digest()
            self._count += 1
            number = int.from_bytes(digest[:BYTES], "big")
            if number < limit:  # what is left over at the top would favour the first numbers
                return low + number % span

    def pick(self, items: Sequence[Item]) -> Item:
        """One of the items."""
        return items[self.whole(0, len(items) - 1)]

    def shuffled(self, items: Sequence[Item]) -> list[Item]:
        """The items in an order of chance."""
        left = list(items)
        for place in range(len(left) - 1, 0, -1):
            other = self.whole(0, place)
            left[place], left[other] = left[other], left[place]
        return left

    def some(self, items: Sequence[Item], count: int) -> list[Item]:
        """``count`` different items, in the order they had."""
        places = sorted(self.shuffled(range(len(items)))[:count])
        return [items[place] for place in places]


def digest(*parts: str) -> str:
    """A short hexadecimal digest of texts, to see whether they changed."""
    return sha256("\0".join(parts).encode()).hexdigest()[:12]
