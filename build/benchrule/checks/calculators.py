"""Every calculator's declaration hangs together, and its outside checks agree."""

import inspect
import re
import sys
from collections.abc import Iterator
from pathlib import Path

import yaml

from calculators.engine.registry import modules

from ..examples import example_of
from ..handbook import Handbook
from ..problems import Problem, place
from ..proof import faults_of, proof_of, undrawable
from ..references import FENCE, blank
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
        for found in BLOCK.finditer(blank(page.body, FENCE)):
            calculator = handbook.calculators.get((found["argument"] or "").strip())
            if found["name"] != "calculator" or calculator is None:
                continue
            options = re.match(r"(?:\n {4}[^\n]*)*", page.body[found.end() :])
            try:
                given = yaml.safe_load(options[0] if options else "") or {}
                presets = given.get("presets") or {}
            except (yaml.YAMLError, AttributeError):
                yield page.problem(
                    found.start(), "the block's options are not YAML", "indent them by four spaces"
                )
                continue
            for refused in example_of(handbook, calculator, presets).get("refused", ()):
                yield page.problem(
                    found.start(), f"{calculator.name} refuses {refused['input']}: {refused['why']}",
                    f"allowed: {refused['allowed']}",
                )  # fmt: skip
