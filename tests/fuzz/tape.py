"""Bytes read as choices: the same bytes make the same case, whoever drives."""

import math
from collections.abc import Sequence
from typing import TypeVar

Item = TypeVar("Item")


class Tape:
    """Bytes under way; past their end every choice is the first."""

    def __init__(self, data: bytes) -> None:
        self._data = data
        self._at = 0

    def byte(self) -> int:
        """0 to 255."""
        self._at += 1
        return self._data[self._at - 1] if self._at <= len(self._data) else 0

    def share(self) -> float:
        """0 to 1, both included, in 65 535 steps."""
        return (self.byte() * 256 + self.byte()) / 65_535

    def pick(self, items: Sequence[Item]) -> Item:
        """One of the items."""
        if len(items) <= 256:
            return items[self.byte() % len(items)]
        return items[(self.byte() * 256 + self.byte()) % len(items)]

    def text(self) -> str:
        """A text that says its own length: two bytes, then UTF-8, lone surrogates and all."""
        length = self.byte() * 256 + self.byte()
        taken = self._data[self._at : self._at + length]
        self._at += length
        return decoded(taken)

    def rest(self) -> bytes:
        """What is left."""
        left = self._data[self._at :]
        self._at = len(self._data)
        return left


def decoded(data: bytes) -> str:
    """Bytes as text, whatever they are; lone surrogates come through."""
    try:
        return data.decode("utf-8", "surrogatepass")
    except UnicodeDecodeError:
        return data.decode("utf-8", "replace")


def text_bytes(text: str) -> bytes:
    """A text as ``Tape.text`` reads it, at most 65 535 bytes of it."""
    data = text.encode("utf-8", "surrogatepass")[:65_535]
    return len(data).to_bytes(2, "big") + data


def between(low: float, high: float, share: float) -> float:
    """A number of a range: ``share`` of the way through it."""
    return min(high, max(low, low + (high - low) * share))


def between_by_factors(low: float, high: float, share: float) -> float:
    """The same, by factors, where the range allows it: small figures come as often as large ones."""
    if low < 0 < high or low == high:
        return between(low, high, share)
    sign = -1.0 if high <= 0 else 1.0
    least, most = sorted((abs(low), abs(high)))
    least = least or most * 1e-9
    size = least * math.exp(share * math.log(most / least))
    return min(high, max(low, sign * size))
