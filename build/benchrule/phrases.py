"""Finds known phrases in running text, quickly: word by word, the longest first."""

import re
from collections.abc import Iterator, Mapping

WORD = re.compile(r"\w+")


class Phrases:
    """Phrases with a value each; found whatever their case, with or without a plural s."""

    def __init__(self, phrases: Mapping[str, str]) -> None:
        self._by_first: dict[str, list[tuple[str, int, str]]] = {}
        for phrase, value in phrases.items():
            plain = " ".join(phrase.lower().split())
            words = WORD.findall(plain)
            if words:
                for first in {words[0], f"{words[0]}s"} if len(words) == 1 else {words[0]}:
                    self._by_first.setdefault(first, []).append((plain, len(words), value))
        for found in self._by_first.values():
            found.sort(key=lambda one: -len(one[0]))

    def find(self, text: str, overlapping: bool = False) -> Iterator[tuple[int, int, str]]:
        """Every phrase in ``text`` as (start, end, value).

        Phrases within and across phrases too, where ``overlapping``.
        """
        by_first = self._by_first
        if by_first.keys().isdisjoint(WORD.findall(text.lower())):
            return  # most pieces of text name nothing
        words = list(WORD.finditer(text))
        free = 0
        for at, word in enumerate(words):
            if not overlapping and word.start() < free:
                continue
            for plain, count, value in by_first.get(word[0].lower(), ()):
                if at + count > len(words):
                    continue
                start, end = word.start(), words[at + count - 1].end()
                said = " ".join(text[start:end].lower().split())
                if said not in (plain, f"{plain}s") or _joined(text, start, end):
                    continue
                yield start, end, value
                free = end
                if not overlapping:
                    break


def _joined(text: str, start: int, end: int) -> bool:
    """Whether a hyphen makes the phrase a part of a longer word."""
    return text[max(0, start - 1) : start] == "-" or text[end : end + 1] == "-"
