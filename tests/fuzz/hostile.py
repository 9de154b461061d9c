"""What strangers may send in place of a value, and documents with some of it put in."""

import json
import math
from typing import Any

from .tape import Tape

TEXTS = (
    "", " ", "\0", "1\0", "nan", "NaN", "inf", "-Infinity", "Infinity", "1e308", "1e309", "1e400",
    "1e-320", "-1e-320", "1e30", "1e31", "1e-30", "1E+5", "1e+", "-0", "-0.0", "+-1", "--1", "−1",
    "–1", "0x10", "0b1", "1_000", "١٢", "१२", "１２", "²", "½", "1½", "½½", "-½", "1/0", "0/0", "1/2/3",
    "1/ 2", "1 1/2", "1-1/2", "25 1/2 in", '14 9/64"', "5' 3\"", "1,000", "1,0000", "1.000,5",
    ",5", ".5", "5.", "5,", ".", ",", "-", "e5", "1 mm 2 mm", "1 mm mm", "\u00a01\u00a0mm", "\u202f5",
    "1\u2009mm", "\ufeff1", "1\u200b", "\u202e1", "\ud800", "1 \udfff", "\U0001f3b8", "1 µm", "1 μm", "1 °C",
    "20 °F", "1 " + "m" * 70, "1 " + "ß" * 30, "1" * 79, "1" * 80, "1" * 81, "1" * 5000,
    "9" * 40 + "." + "9" * 39, "1." + "0" * 77, "1" * 39 + "/" + "3" * 39, "0" * 80, "1 " * 39,
    "1 2 3 4 5", "1; 2; 3", "1;;2", "1, 2, 3", "1,2,3", ";" * 500, "a | 1 | 2", "a | 1 | 2; b | 3 | 4",
    "|" * 200, " | ; | ", "a" * 61 + " | 1", "true", "null", "[]", "{}", "<script>alert(1)</script>",
    "&lt;", "'\"><", "{scale_length}", "{}", "%s", "\\", "\x1b[31m", "\r\n", "1\n2", "\t3\t", "a" * 200,
    " " * 5000, "x" * 90_000, "'" * 100, "1 '" * 20, "__class__", "constructor",
)  # fmt: skip
NUMBERS = (
    0, 1, -1, 2, 3, 255, 10**6, -(10**6), 2**31, 2**53, 2**63, 2**64, 10**30, 10**31, -(10**400),
    10**400, 10**4000, 0.0, -0.0, 0.5, -0.5, 0.1, 1e-320, 5e-324, -5e-324, 1e-300, 1e300,
    1.7976931348623157e308, math.inf, -math.inf, math.nan, 1.0000000000000002, 1e16, 1e22, 1e30,
)  # fmt: skip


def deep(depth: int, in_lists: bool = True) -> Any:
    """Lists or objects in each other."""
    value: Any = 1
    for _ in range(depth):
        value = [value] if in_lists else {"a": value}
    return value


OTHERS: tuple[Any, ...] = (
    None, True, False, [], {}, [[]], [{}], [None], [True, False], [1], ["1"], [1, 2], ["1", "2"],
    {"a": 1}, {"": ""}, {"\ud800": 1}, {"__proto__": 1}, [1] * 60, ["1"] * 60, ["a"] * 1000,
    list(range(500)), {str(one): one for one in range(300)}, deep(5), deep(13), deep(13, False),
    deep(100), deep(400), deep(400, False), [["a", 1]], [["a", 1], ["a"]], [["a", "x", None, 3]] * 3,
    [{"a": 1}], [1, "1", None, [1]],
)  # fmt: skip
VALUES: tuple[Any, ...] = (*TEXTS, *NUMBERS, *OTHERS)
BEYOND = '"@beyond@"'  # stands for a number past the largest float, which JSON may hold


def json_text(value: Any) -> str:
    """JSON as a stranger may write it: NaN and Infinity as words, 1e400 as it is."""
    return json.dumps(value).replace(BEYOND, "1e400")


def value(tape: Tape) -> Any:
    """One hostile value."""
    choice = tape.byte()
    if choice < 8:
        return "@beyond@"
    if choice < 48:
        return tape.text()
    return fresh(tape.pick(VALUES))


def fresh(plain: Any) -> Any:
    """A value of its own, however deep: what one case changes is no other's."""
    return json.loads(json.dumps(plain)) if isinstance(plain, list | dict) else plain


def mutated(document: Any, tape: Tape) -> tuple[Any, str]:
    """A document with some places changed, and a name that its JSON text is to give twice ("")."""
    document = fresh(document)
    twice = ""
    for _ in range(tape.byte() % 5):
        holder, name = _place(document, tape)
        if holder is None:
            continue
        what = tape.byte() % 8
        if what == 0:
            del holder[name]
        elif what == 1 and isinstance(holder, dict):
            holder[tape.text()] = value(tape)
        elif what == 1:
            holder.insert(name, fresh(holder[name]))
        elif what == 2 and isinstance(holder, dict):
            twice = str(name)
        elif what == 3 and isinstance(holder[name], str) and holder[name]:
            text, at = holder[name], tape.byte() % len(holder[name])
            holder[name] = text[:at] + tape.text() + text[at + tape.byte() % 3 :]
        elif what == 4 and type(holder[name]) in (int, float):
            holder[name] = holder[name] + (tape.byte() - 128)
        elif what == 5 and isinstance(holder[name], list):
            holder[name] = fresh(holder[name] * (tape.byte() % 40))
        else:
            holder[name] = value(tape)
    return document, twice


def _place(document: Any, tape: Tape) -> tuple[Any, Any]:
    """A holder in a document and the name or the place in it."""
    holder, name = None, None
    inside = document
    for _ in range(1 + tape.byte() % 5):
        if isinstance(inside, dict) and inside:
            holder, name = inside, tape.pick(list(inside))
        elif isinstance(inside, list) and inside:
            holder, name = inside, tape.byte() % len(inside)
        else:
            break
        inside = holder[name]
    return holder, name


def mutated_text(document: Any, tape: Tape) -> str:
    """JSON text of a document with some places changed."""
    changed, twice = mutated(document, tape)
    text = json_text(changed)
    if twice and text.startswith("{"):
        text = "{" + json.dumps(twice) + ":" + json_text(value(tape)) + "," + text[1:]
    cut = tape.byte()
    return text[: cut * 7] if 0 < cut < 16 else text
