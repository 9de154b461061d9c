"""Finds calculators by name without importing them: ``fret-spacing`` is ``fret_spacing.py``.

A handbook may bring calculators of its own, in any importable package listed in ``PACKAGES``, and
do without others (``LEFT_OUT``).
"""

import importlib
import os
import sys
from functools import lru_cache
from types import ModuleType

from .declaration import Calculator
from .shop_packages import LEFT_OUT, MODULES, PACKAGES

SHARED = ("engine", "laws", "learning", "sources")  # what calculators share is no calculator


def modules() -> dict[str, str]:
    """Every calculator's name and the module that holds it, in alphabetical order."""
    return MODULES or _modules(tuple(PACKAGES), tuple(LEFT_OUT))


@lru_cache(maxsize=8)
def _modules(packages: tuple[str, ...], left_out: tuple[str, ...]) -> dict[str, str]:
    found: dict[str, str] = {}
    for package in packages:
        found.update(modules_of(package))
        for name in left_out if package == PACKAGES[0] else ():
            found.pop(name, None)  # a shop may have one of that name instead
    return dict(sorted(found.items()))


def modules_of(package_name: str) -> dict[str, str]:
    """Every calculator of one package, and the module that holds it."""
    package = sys.modules.get(package_name) or importlib.import_module(package_name)
    found: dict[str, str] = {}
    for folder in package.__path__:
        found.update(_modules_in(folder, package_name))
    return found


def forget() -> None:
    """Looks through the packages again: a shop's own may have changed."""
    _modules.cache_clear()


def _modules_in(folder: str, prefix: str) -> dict[str, str]:
    """Calculator modules in ``folder`` and its sub-folders; shared parts are passed over."""
    found: dict[str, str] = {}
    for entry in os.scandir(folder):
        stem, _, ending = entry.name.partition(".")
        if stem.startswith("_") or stem in SHARED:
            continue
        if entry.is_dir():
            found.update(_modules_in(entry.path, f"{prefix}.{stem}"))
        elif ending in ("py", "pyc"):
            found[stem.replace("_", "-")] = f"{prefix}.{stem}"
    return found


def add_archive(path: str) -> None:
    """Makes a packed part importable beside the core: a group of ours, or a shop's own package."""
    sys.path.append(path)
    for name in ("calculators", "calculators.laws"):
        importlib.import_module(name).__path__.append(f"{path}/{name.replace('.', '/')}")


def load(name: str) -> Calculator:
    """The calculator called ``name``; KeyError where there is none."""
    module: ModuleType = importlib.import_module(modules()[name])
    calculator: Calculator = module.calculator
    return calculator
