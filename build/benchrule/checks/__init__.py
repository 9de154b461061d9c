"""What must hold of a handbook: one file a check, each with ``find_problems(handbook)``."""

from collections.abc import Callable, Iterable
from functools import partial
from types import ModuleType

from ..handbook import Handbook
from ..problems import Problem
from ..unchanged import Piece
from . import asked, calculators, data, links, models, numbers, orders, references, stations, unused

CHECKS: tuple[ModuleType, ...] = (
    data, references, unused, numbers, stations, links, models, calculators, asked, orders,
)  # fmt: skip
OF_ENTRIES = (data, models, orders)
"""Those that read entries and no page: a build goes through them again when an entry has changed."""


def find_problems(handbook: Handbook, piece: Piece | None = None) -> list[Problem]:
    """Every problem that any check finds, in the order of files and lines.

    Given ``piece``, a check of entries that found nothing before is not gone through again until
    something that it read is another.
    """
    found: list[Problem] = []
    for check in CHECKS:
        name = f"check {check.__name__.rpartition('.')[2]}"
        if piece and check in OF_ENTRIES and piece(name, "", partial(_is_sound, check)):
            continue
        found += _found(check, handbook)
    return sorted(set(found))


def _found(check: ModuleType, handbook: Handbook) -> Iterable[Problem]:
    find: Callable[[Handbook], Iterable[Problem]] = check.find_problems
    return find(handbook)


def _is_sound(check: ModuleType, handbook: Handbook) -> bool | None:
    """Whether a check finds nothing; None where it does, so that it is not kept."""
    return None if list(_found(check, handbook)) else True
