"""What must hold of a handbook: one file a check, each with ``find_problems(handbook)``."""

from collections.abc import Callable, Iterable
from types import ModuleType

from ..handbook import Handbook
from ..problems import Problem
from . import asked, calculators, data, links, models, numbers, orders, references, stations, unused

CHECKS: tuple[ModuleType, ...] = (
    data, references, unused, numbers, stations, links, models, calculators, asked, orders,
)  # fmt: skip


def find_problems(handbook: Handbook) -> list[Problem]:
    """Every problem that any check finds, in the order of files and lines."""
    found: list[Problem] = []
    for check in CHECKS:
        find: Callable[[Handbook], Iterable[Problem]] = check.find_problems
        found += find(handbook)
    return sorted(set(found))
