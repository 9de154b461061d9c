"""What must hold of a handbook: one file a check, each with ``find_problems(handbook)``."""

from collections.abc import Callable, Iterable
from types import ModuleType

from ..handbook import Handbook
from ..problems import Problem
from . import calculators, data, links, numbers, references, stations

CHECKS: tuple[ModuleType, ...] = (data, references, numbers, stations, links, calculators)


def find_problems(handbook: Handbook) -> list[Problem]:
    """Every problem that any check finds, in the order of files and lines."""
    found: list[Problem] = []
    for check in CHECKS:
        find: Callable[[Handbook], Iterable[Problem]] = check.find_problems
        found += find(handbook)
    return sorted(set(found))
