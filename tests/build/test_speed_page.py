"""The page of figures says what was measured, and nothing else."""

import copy
import json
import re
from typing import Any

import pytest

from tests.bench import report
from tests.bench.parts import PARTS
from tests.bench.records import PUBLISHED


@pytest.fixture(scope="module")
def published() -> dict[str, Any]:
    found: dict[str, Any] = json.loads(PUBLISHED.read_text("utf-8"))
    return found


def test_the_page_is_written_from_the_published_figures(published: dict[str, Any]) -> None:
    text = report.PAGE.read_text("utf-8")
    assert report.on_page(text, published) == text, "run: python -m tests.bench --page"


def test_a_changed_figure_would_be_seen(published: dict[str, Any]) -> None:
    text = report.PAGE.read_text("utf-8")
    changed = copy.deepcopy(published)
    changed["bytes"]["figures"]["gzip"] += 10_000
    assert report.on_page(text, changed) != text


def test_every_part_measured_stands_on_the_page_with_its_command(
    published: dict[str, Any],
) -> None:
    text = report.PAGE.read_text("utf-8")
    assert report.commands(text) == [name for name in PARTS if name in published]
    assert set(published) <= set(PARTS)
    for part in published.values():
        assert part["made"]["machine"] and part["made"]["versions"]["Chromium"][0].isdigit()


def test_what_misses_its_aim_is_said_to(published: dict[str, Any]) -> None:
    missed = copy.deepcopy(published)
    missed["bytes"]["figures"]["gzip"] = 500_000
    [line] = [
        line
        for line in report.on_page(report.PAGE.read_text("utf-8"), missed).splitlines()
        if line.startswith("| The heaviest station's page")
    ]
    assert line.endswith("| **not met** |")


def test_no_figure_is_typed_outside_the_markers() -> None:
    head, _, rest = report.PAGE.read_text("utf-8").partition(report.BEGIN)
    typed = head + rest.partition(report.END)[2]
    assert not re.search(r"\d\s*(?:ms|s|kB|MB|%)\b", typed)
