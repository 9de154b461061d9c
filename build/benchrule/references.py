"""Inline references: ``[[crown-height]]``, ``[[term:kerfed-lining|kerfed linings]]`` …

One grammar, read by the checks and by the pages.
"""

import re
from collections.abc import Callable
from dataclasses import dataclass
from functools import lru_cache

REFERENCE = re.compile(r"\[\[([^\[\]\n]+)\]\]")
FENCE = re.compile(r"^```.*?^```\s*$", re.MULTILINE | re.DOTALL)
CODE = re.compile(r"`[^`\n]+`")
KINDS = ("tol", "term", "station", "calc", "gauge", "source", "hazard", "model", "wood")
# Every block that a page may hold; markdown_extension makes them.
BLOCKS = (
    "calculator", "tolerances", "hazards", "tools", "drawing", "practice", "progress",
    "assignment-set", "assignment-work", "assignment-mark", "sign-off", "orders", "order",
    "order-compare", "glossary", "gauges", "sources", "how-we-know", "shop-map", "calculators",
    "models", "model", "materials", "material", "revisions", "fields", "station-head",
    "station-foot",
)  # fmt: skip
PARTS = ("limits", "target", "low", "high")
KEPT_TEXTS = 8192  # more than the pages of a large handbook


def of_text[**Given, Made](make: Callable[Given, Made]) -> Callable[Given, Made]:
    """Makes a thing once of each text, however often it is asked for while the program runs.

    For what is worked out of its texts alone and is not changed afterwards: of the same text it
    would come out the same, so that nothing kept can be out of date.
    """
    return lru_cache(maxsize=KEPT_TEXTS)(make)  # type: ignore[return-value]  # texts are hashable


@dataclass(frozen=True)
class Reference:
    """One reference: its kind, the id it names, a tolerance's part, words in its place."""

    kind: str  # one of KINDS, or "plain"
    id: str
    part: str = "limits"
    words: str = ""


class BadReference(ValueError):
    """Text between double brackets that is no reference; the message says what would be."""


@of_text
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


@of_text
def find_references(text: str) -> tuple[tuple[int, str], ...]:
    """Every reference in ``text`` as (position, what stands between the brackets); not in code."""
    blanked = blank(text, FENCE, CODE)
    return tuple((found.start(), found[1]) for found in REFERENCE.finditer(blanked))


def blank(text: str, *patterns: re.Pattern[str]) -> str:
    """``text`` with what the patterns match blanked out; every position and line is kept."""
    for pattern in patterns:
        text = pattern.sub(lambda found: re.sub(r"[^\n]", " ", found[0]), text)
    return text


def in_markdown(text: object) -> str:
    """Words out of a data file as Markdown shows them: no mark of HTML or Markdown among them."""
    return re.sub(r'[&<>"\\`*_{}\[\]]', lambda found: f"&#{ord(found[0])};", str(text))
