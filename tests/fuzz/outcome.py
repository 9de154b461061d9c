"""What must hold of every outcome: time, memory, JSON without NaN, words that people can read."""

import json
import math
import re
import resource
import time
from collections.abc import Callable
from typing import Any, TypeVar

Result = TypeVar("Result")
SECONDS = 2.0  # of processor time a case may take
MEGABYTES = 256  # that the process may grow by in a case
REFUSED_FIELDS = {"input", "given", "allowed", "why"}
NO_FIGURE = re.compile(r"(?<![\w&])(?:nan|inf|infinity|none)(?!\w)", re.IGNORECASE)
MINUS_NOUGHT = re.compile(r"(?<![\w.,])[-−]0(?:[.,]0+)?(?![\d.,/]|\s\d+/)")
LONGEST_GIVEN = 60


KEPT = 12  # of the slowest cases; the first ones load what is lazy


class Broken(AssertionError):
    """A rule that an outcome breaks, in words."""


class Watch:
    """How long the cases took, in processor time, and how many of them were answered."""

    def __init__(self, seconds: float = SECONDS) -> None:
        self.limit = seconds
        self.slowest: list[tuple[float, bytes]] = []
        self.cases = 0
        self.answered = 0

    def run(self, case: Callable[[bytes], object], data: bytes) -> None:
        """Runs a case within its bounds; Broken where it passes one."""
        before = _peak()
        began = time.process_time()
        try:
            outcome = case(data)
        finally:
            took = time.process_time() - began
            self.cases += 1
            if len(self.slowest) < KEPT or took > self.slowest[-1][0]:
                self.slowest = sorted([*self.slowest, (took, data)], reverse=True)[:KEPT]
        self.answered += outcome == "answered"
        if took > self.limit:
            raise Broken(f"took {took:.1f} s of processor time, more than {self.limit:g} s")
        grown = _peak() - before
        if grown > MEGABYTES:
            raise Broken(f"took {grown:.0f} MB more, more than {MEGABYTES} MB")


def _peak() -> float:
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024


def need(holds: bool, words: str) -> None:
    """Broken with ``words`` unless something holds."""
    if not holds:
        raise Broken(words)


def loaded(text: object) -> Any:
    """The value of a door's text: JSON, no NaN in it, fit to be sent."""
    need(isinstance(text, str), f"the door gave {type(text).__name__}, no text")
    assert isinstance(text, str)
    text.encode()
    value = json.loads(text, parse_constant=_refuse_constant)
    check_plain(value)
    return value


def _refuse_constant(name: str) -> None:
    raise Broken(f"the answer holds {name}")


def check_plain(value: Any, where: str = "") -> None:
    """Broken where plain data holds a number that is none, a minus nought or half a letter."""
    if isinstance(value, float):
        need(math.isfinite(value), f"{where} is {value}")
        need(value != 0 or math.copysign(1, value) > 0, f"{where} is minus nought")
    elif isinstance(value, str):
        need(not any("\ud800" <= one <= "\udfff" for one in value), f"{where} holds half a letter")
    elif isinstance(value, dict):
        for name, one in value.items():
            check_plain(name, f"{where}, a name")
            check_plain(one, f"{where}.{name}"[-80:])
    elif isinstance(value, list | tuple):
        for one in value:
            check_plain(one, f"{where}[]"[-80:])


def check_shown(words: str, typed: str, where: str) -> None:
    """Broken where what people read shows no figure where one should stand.

    What was typed may come back as it was typed.
    """
    found = NO_FIGURE.search(words)
    if found and found[0].lower() not in typed.lower():
        around = words[max(0, found.start() - 40) : found.end() + 40]
        if found[0].lower() != "none" or re.search(r"None\s*(?:mm|N|°|%|</)", around):
            raise Broken(f"{where} shows {found[0]}: …{around}…")
    nought = MINUS_NOUGHT.search(words)
    if nought and nought[0] not in typed:
        around = words[max(0, nought.start() - 40) : nought.end() + 40]
        raise Broken(f"{where} shows a minus nought: …{around}…")


def check_refused(refused: Any, typed: str) -> None:
    """Broken unless refusals say which input, what was given, what is allowed and why."""
    need(isinstance(refused, list) and bool(refused), "refused, and no reason")
    for one in refused:
        need(isinstance(one, dict) and set(one) == REFUSED_FIELDS, f"a refusal is {one}"[:200])
        need(all(isinstance(words, str) for words in one.values()), f"a refusal is {one}"[:200])
        need(
            len(one["given"]) <= LONGEST_GIVEN, f"a refusal repeats {len(one['given'])} characters"
        )
        need(
            len(one["why"]) > 10 and bool(one["allowed"]), f"a refusal says too little: {one}"[:200]
        )
        check_shown(one["why"], typed, "a refusal")
        check_shown(one["given"], typed, "what was given")


def words_of(value: Any) -> list[str]:
    """Every text in plain data."""
    if isinstance(value, str):
        return [value]
    if isinstance(value, dict):
        return [words for one in value.values() for words in words_of(one)]
    if isinstance(value, list | tuple):
        return [words for one in value for words in words_of(one)]
    return []
