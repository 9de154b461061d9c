"""What strangers send: JSON within bounds of size and depth, and letters that can be shown."""

import json
import math
import re
from typing import Any

DEEPEST = 12
LONGEST_WHOLE = 40  # digits of a whole number
# A string, or what is left of one that is cut off; it never goes back.
STRING = re.compile(r'"[^"\\]*+(?:\\.[^"\\]*+)*+(?:"|\\?\Z)', re.DOTALL)
NO_BRACKET = re.compile(r"[^\[\]{}]+")
# Spaces, joiners and soft hyphens: not printable by themselves, but part of what people type.
JOINERS = "\u00a0\u00ad\u1680\u200b\u200c\u200d\u202f\u205f\u2060\u3000" + "".join(
    chr(code) for code in range(0x2000, 0x200B)
)


class UnfitText(ValueError):
    """Text that is no JSON, or none within bounds; the message says why and what to do."""


class TooLong(UnfitText):
    """Text of more characters than are taken."""


def read_json(text: str, longest: int) -> Any:
    """The JSON value of a request.

    A number that is none or past all figures (NaN, 1e400, a thousand digits) stays text, so that the
    field it stands in refuses it; minus nought is nought.
    """
    if len(text) > longest:
        raise TooLong(f"has {len(text)} characters; send at most {longest}")
    if depth(text) > DEEPEST:
        raise UnfitText(f"is nested more than {DEEPEST} deep; send plain values")
    try:
        return json.loads(text, parse_constant=str, parse_float=_figure, parse_int=_whole)
    except (ValueError, RecursionError) as error:
        raise UnfitText(f"is not JSON ({error}); mend it") from None


def _figure(digits: str) -> float | str:
    value = float(digits)
    return value + 0.0 if math.isfinite(value) else digits


def _whole(digits: str) -> int | str:
    return int(digits) if len(digits) <= LONGEST_WHOLE else digits


def depth(text: str) -> int:
    """How deep brackets stand in each other; strings are passed over.

    Counted before the text is parsed: the browser's Python does not survive thousands of them.
    """
    now = most = 0
    for letter in NO_BRACKET.sub("", STRING.sub("", text)):
        if letter in "[{":
            now += 1
            if now > most:
                most = now
        else:
            now -= 1
    return most


def is_clean(text: str, lines: bool = False) -> bool:
    """Whether a text has no characters that steer a terminal or hide what is written."""
    return text.isprintable() or all(
        letter.isprintable() or letter in JOINERS or (lines and letter == "\n") for letter in text
    )


def clean(text: str, longest: int, instead: str = " ") -> str:
    """A text of strangers made fit to be shown: one line, what steers a terminal left out."""
    text = text[:longest]
    if text.isprintable():
        return text
    return "".join(
        letter if letter.isprintable() or letter in JOINERS else instead for letter in text
    )
