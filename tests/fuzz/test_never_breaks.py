"""Nothing that strangers type or send breaks anything: cases by chance, and all that once did.

A few hundred cases in an ordinary run; FUZZ_CASES asks each target for more. ``python -m tests.fuzz``
goes deeper, led by which branches a case reaches.
"""

import base64
import json
import os
from functools import cache
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from .outcome import Broken, Watch, check_plain, check_shown
from .targets import TARGETS

CASES = int(os.environ.get("FUZZ_CASES", "40"))
FOUND = sorted((Path(__file__).parent / "found").glob("*.json"))


@cache
def seeds(name: str) -> list[bytes]:
    """The seeds of a target, without the longest."""
    return [seed for seed in TARGETS[name].seeds() if len(seed) <= TARGETS[name].longest]


@st.composite
def cases(draw: st.DrawFn, name: str) -> bytes:
    """Bytes of any kind, or a seed with a part of it replaced."""
    if draw(st.integers(0, 3)) == 0:
        return draw(st.binary(max_size=200))
    seed = draw(st.sampled_from(seeds(name)))
    at = draw(st.integers(0, len(seed)))
    return seed[:at] + draw(st.binary(max_size=30)) + seed[at + draw(st.integers(0, 12)) :]


@pytest.mark.parametrize("name", TARGETS)
def test_a_case_by_chance_is_answered_or_refused(name: str) -> None:
    watch = Watch()

    @settings(max_examples=CASES, suppress_health_check=list(HealthCheck))
    @given(data=cases(name))
    def one(data: bytes) -> None:
        watch.run(TARGETS[name].case, data)

    one()
    assert watch.cases >= min(CASES, 10)


@pytest.mark.parametrize("name", TARGETS)
def test_the_longest_cases_are_answered_or_refused_in_time(name: str) -> None:
    watch = Watch()
    for seed in TARGETS[name].seeds():
        if len(seed) > TARGETS[name].longest:
            watch.run(TARGETS[name].case, seed)


@pytest.mark.parametrize("path", FOUND, ids=[path.stem for path in FOUND])
def test_what_once_broke_holds(path: Path) -> None:
    found = json.loads(path.read_text("utf-8"))
    assert found["was"], "says what broke"
    data = base64.b64decode(found["case"])
    assert Watch().run(TARGETS[found["target"]].case, data) is None


def test_the_rules_can_be_broken() -> None:
    for value in (float("nan"), float("inf"), -0.0, "\ud800", {"a": [float("nan")]}):
        with pytest.raises(Broken):
            check_plain(value)
    for words in ("nan mm", "Depth: inf", "-0.00 mm", "−0 mm", "None mm"):
        with pytest.raises(Broken):
            check_shown(words, "", "here")
    for words in ("0 mm", "-0.5 mm", "1-0", "info", "finance", "none of them", "−0 1/2 in"):
        check_shown(words, "", "here")
    with pytest.raises(Broken, match="processor time"):
        Watch(0.01).run(lambda data: str(sum(range(2_000_000))), b"")
    with pytest.raises(Broken, match="MB"):
        Watch(60).run(lambda data: str(len(b"\1" * (700 << 20))), b"")
