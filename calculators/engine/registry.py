"""Finds calculators by name without importing them: ``fret-spacing`` is ``fret_spacing.py``.

A handbook may bring calculators of its own, in any importable package listed in ``PACKAGES``.
"""

import importlib
import os
import sys
from functools import lru_cache
from types import ModuleType

from .declaration import Calculator
from .shop_packages import MODULES, PACKAGES

SHARED = ("engine", "laws", "learning", "sources")  # what calculators share is no calculator


def modules() -> dict[str, str]:
    """Every calculator's name and the module that holds it, in alphabetical order."""
    return MODULES or _modules(tuple(PACKAGES))


@lru_cache(maxsize=8)
def _modules(packages: tuple[str, ...]) -> dict[str, str]:
    found: dict[str, str] = {}
    for package_name in packages:
        package = sys.modules.get(package_name) or importlib.import_module(package_name)
        for folder in package.__path__:
            found.update(_modules_in(folder, package_name))
    return dict(sorted(found.items()))


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
