"""Every calculator's declaration hangs together, and its outside checks agree."""

import inspect
import sys
from collections.abc import Iterator
from pathlib import Path

from calculators.engine.checking import compare
from calculators.engine.registry import modules
from calculators.engine.soundness import find_faults

from ..handbook import Handbook
from ..problems import Problem, place


def find_problems(handbook: Handbook) -> Iterator[Problem]:
    """Faults of declarations and checks that disagree."""
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
        faults = find_faults(calculator)
        for fault in faults:
            yield Problem(file, line, fault, "mend the declaration")
        if faults:
            continue
        for check in calculator.checks:
            for compared in compare(calculator, check):
                if not compared.agrees:
                    yield Problem(
                        file, line,
                        f"{name}: {check.source} has {compared.printed} for {compared.label}, "
                        f"we have {compared.ours!r}",
                        "find out which is right",
                    )  # fmt: skip
