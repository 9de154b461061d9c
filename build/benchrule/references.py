"""Inline references: ``[[fret-crown-lift]]``, ``[[term:kerfed-lining|kerfed linings]]`` …

One grammar, read by the checks and by the pages.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass

REFERENCE = re.compile(r"\[\[([^\[\]\n]+)\]\]")
FENCE = re.compile(r"^```.*?^```\s*$", re.MULTILINE | re.DOTALL)
CODE = re.compile(r"`[^`\n]+`")
KINDS = ("tol", "term", "station", "calc", "gauge", "source", "hazard", "model", "wood")
PARTS = ("limits", "target", "low", "high")


@dataclass(frozen=True)
class Reference:
    """One reference: its kind, the id it names, a tolerance's part, words in its place."""

    kind: str  # one of KINDS, or "plain"
    id: str
    part: str = "limits"
    words: str = ""


class BadReference(ValueError):
    """Text between double brackets that is no reference; the message says what would be."""


def parse_reference(inner: str) -> Reference:
    """The reference written between the brackets."""
    target, _, words = (part.strip() for part in inner.partition("|"))
    kind, colon, rest = target.partition(":")
    if kind == "plain":
        if not rest.strip() or not words:
            raise BadReference("a plain number needs its reason: [[plain: 3 mm | reason]]")
        return Reference("plain", rest.strip(), words=words)
    if colon and kind in KINDS:
        id, _, part = rest.strip().partition(":")
        return Reference(kind, id, part or "limits", words)
    if colon and rest not in PARTS:
        raise BadReference(f"'{kind}:' is no kind of reference and '{rest}' no part of one")
    return Reference("tol", kind, rest or "limits", words)


def find_references(text: str) -> Iterator[tuple[int, str]]:
    """Every reference in ``text`` as (position, what stands between the brackets); not in code."""
    for found in REFERENCE.finditer(blank(text, FENCE, CODE)):
        yield found.start(), found[1]


def blank(text: str, *patterns: re.Pattern[str]) -> str:
    """``text`` with what the patterns match blanked out; every position and line is kept."""
    for pattern in patterns:
        text = pattern.sub(lambda found: re.sub(r"[^\n]", " ", found[0]), text)
    return text
