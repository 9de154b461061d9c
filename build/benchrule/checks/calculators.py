"""Every calculator's declaration hangs together, and its outside checks agree."""

import inspect
import re
import sys
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

import yaml

from calculators.engine.registry import modules

from ..examples import example_of
from ..handbook import Handbook
from ..problems import Problem, place
from ..proof import faults_of, proof_of, undrawable
from ..references import FENCE, blank, of_text
from .references import BLOCK


def find_problems(handbook: Handbook) -> Iterator[Problem]:
    """Faults of declarations and checks that disagree."""
    yield from _presets(handbook)
    where = modules()
    for name, calculator in handbook.calculators.items():
        module = sys.modules[where[name]]
        path = Path(inspect.getfile(module))
        file = place(path, handbook.root)
        line = next(
            (
                number
                for number, text in enumerate(path.read_text("utf-8").splitlines(), 1)
                if text.startswith("calculator = ")
            ),
            1,
        )
        faults = faults_of(handbook, calculator)
        for fault in faults:
            yield Problem(file, line, fault, "mend the declaration")
        if faults:
            continue
        for fault in undrawable(handbook, calculator):
            yield Problem(file, line, fault, "widen its draw, or move its slips apart")
        for check, figures in zip(calculator.checks, proof_of(handbook, calculator), strict=True):
            for one in figures:
                if not one["agrees"]:
                    yield Problem(
                        file, line,
                        f"{name}: {check.source} has {one['printed']} for {one['label']}, "
                        f"we have {one['ours']!r}",
                        "find out which is right",
                    )  # fmt: skip


def _presets(handbook: Handbook) -> Iterator[Problem]:
    """Calculators placed on a page with values that they refuse."""
    for page in handbook.pages:
        for position, name, presets in _placed_in(page.body):
            calculator = handbook.calculators.get(name)
            if calculator is None:
                continue
            if presets is None:
                yield page.problem(
                    position, "the block's options are not YAML", "indent them by four spaces"
                )
                continue
            for refused in example_of(handbook, calculator, presets).get("refused", ()):
                yield page.problem(
                    position, f"{calculator.name} refuses {refused['input']}: {refused['why']}",
                    f"allowed: {refused['allowed']}",
                )  # fmt: skip


@of_text
def _placed_in(body: str) -> tuple[tuple[int, str, Mapping[str, Any] | None], ...]:
    """Each calculator on a page: its place, its name, what it is given; None where that is no YAML."""
    return tuple(
        (found.start(), (found["argument"] or "").strip(), _presets_after(body[found.end() :]))
        for found in BLOCK.finditer(blank(body, FENCE))
        if found["name"] == "calculator"
    )


def _presets_after(text: str) -> Mapping[str, Any] | None:
    options = re.match(r"(?:\n {4}[^\n]*)*", text)
    try:
        given = yaml.safe_load(options[0] if options else "") or {}
        presets: Mapping[str, Any] = given.get("presets") or {}
    except (yaml.YAMLError, AttributeError):
        return None
    return presets
