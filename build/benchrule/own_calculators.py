"""A shop's own packages of calculators: looked over before they are run, then loaded.

What a newcomer gets wrong (a syntax error, a module that the browser does not have, no object
``calculator``) is a problem at its line, never a traceback.
"""

import ast
import importlib
import importlib.util
import re
import sys
import traceback
from collections.abc import Iterator
from pathlib import Path

from calculators.engine import registry
from calculators.engine.checking import compare
from calculators.engine.compute import work_out
from calculators.engine.declaration import Calculator
from calculators.engine.markup import parts
from calculators.engine.shop_packages import LEFT_OUT, PACKAGES
from calculators.engine.soundness import find_faults

from .problems import Problem, place
from .runtime_parts import LEAVE_OUT
from .site_config import Choices

OURS = "calculators"
RESERVED = (OURS, "benchrule")
CONFIG = "mkdocs.yml"
_seen: dict[str, tuple[tuple[str, int, int], ...]] = {}  # what each own package was loaded from


def load_calculators(root: Path, choices: Choices) -> tuple[dict[str, Calculator], list[Problem]]:
    """Every calculator that the shop uses, by name, and what is wrong with its own packages."""
    left_out, problems = _left_out(choices)
    packages: list[str] = []
    for name in choices.calculators:
        folder = make_importable(root, name)
        if folder is None:
            problems.append(_no_package(root, name))
            continue
        found = list(_read(folder, name, root))
        problems += found
        if not found:
            _forget_changed(folder, name)
            packages.append(name)
    PACKAGES[:] = [OURS, *packages]
    LEFT_OUT[:] = left_out
    registry.forget()
    ours = registry.modules_of(OURS)
    calculators: dict[str, Calculator] = {}
    for name, module in registry.modules().items():
        if module.partition(".")[0] == OURS:
            calculators[name] = registry.load(name)
            continue
        file = Path(str(importlib.util.find_spec(module.partition(".")[0]).origin)).parent  # type: ignore[union-attr]
        path = file.joinpath(*module.split(".")[1:]).with_suffix(".py")
        if name in ours and name not in left_out:
            problems.append(Problem(
                place(path, root), 1, f"Benchrule has a calculator '{name}' already",
                f"give the file another name, or write 'leave_out: [{name}]' in {CONFIG}",
            ))  # fmt: skip
            continue
        loaded = _loaded(name, module, path, root)
        if isinstance(loaded, Problem):
            problems.append(loaded)
        else:
            calculators[name] = loaded
    return calculators, problems


def make_importable(root: Path, package: str) -> Path | None:
    """Lets a shop's package be imported from beside mkdocs.yml; its folder, None where there is none."""
    if package in RESERVED or not package.isidentifier():
        return None
    if str(root) not in sys.path:
        sys.path.insert(0, str(root))
    beside = root / package
    spec = importlib.util.find_spec(package)
    folder = Path(str(spec.origin)).parent if spec and spec.origin else None
    if (beside / "__init__.py").exists() and folder != beside:
        # Another handbook's package of that name was looked at in this process.
        _drop(package)
        sys.path.remove(str(root))
        sys.path.insert(0, str(root))
        importlib.invalidate_caches()
        spec = importlib.util.find_spec(package)
        folder = Path(str(spec.origin)).parent if spec and spec.origin else None
    return folder


def _no_package(root: Path, name: str) -> Problem:
    what = f"there is no package of calculators '{name}'"
    to_do = f"make the folder {name} beside {CONFIG} with an empty file __init__.py in it"
    if name in RESERVED:
        what, to_do = f"'{name}' is the name of Benchrule's own package", "call yours otherwise"
    elif not name.isidentifier():
        what = f"'{name}' cannot be the name of a package"
        to_do = "take letters, digits and underscores only"
    lines = (root / CONFIG).read_text("utf-8").splitlines() if (root / CONFIG).exists() else []
    at = next((number for number, line in enumerate(lines, 1) if name in line), 1)
    return Problem(CONFIG, at, what, to_do)


def _left_out(choices: Choices) -> tuple[list[str], list[Problem]]:
    """The names of ours that the shop does without; a name that is none is a problem."""
    ours = registry.modules_of(OURS)
    groups: dict[str, set[str]] = {}
    for name, module in ours.items():
        groups.setdefault(module.split(".")[1], set()).add(name)
    problems = []

    def named(words: tuple[str, ...], option: str) -> set[str]:
        found: set[str] = set()
        for word in words:
            if word not in ours and word not in groups:
                problems.append(Problem(
                    CONFIG, 1, f"{option}: there is no calculator and no group '{word}'",
                    f"take a group ({', '.join(sorted(groups))}) or a name that 'benchrule calc' lists",
                ))  # fmt: skip
            found |= groups.get(word, {word})
        return found

    kept = named(choices.only, "only") if choices.only else set(ours)
    return sorted(set(ours) - (kept - named(choices.leave_out, "leave_out"))), problems


def _read(folder: Path, package: str, root: Path) -> Iterator[Problem]:
    """What can be seen of a package's files without running them."""
    for path in sorted(folder.rglob("*.py")):
        file = place(path, root)
        try:
            tree = ast.parse(path.read_text("utf-8"))
        except UnicodeDecodeError:
            yield Problem(file, 1, "not UTF-8 text", "save the file as UTF-8")
            continue
        except (SyntaxError, ValueError) as error:
            line = getattr(error, "lineno", None) or 1
            said = getattr(error, "msg", None) or str(error)
            yield Problem(file, line, f"not Python: {said}", "mend the line, or the one above it")
            continue
        for line, module in _imports(tree):
            first = module.split(".")[0]
            if first in (OURS, package):
                continue
            if first not in sys.stdlib_module_names:
                yield Problem(
                    file, line, f"imports {first}, which a reader's browser does not have",
                    "use Python's own modules (math, for instance) and calculators.engine only",
                )  # fmt: skip
            elif any(
                re.match(one, f"{first}/") or re.match(one, f"{first}.py") for one in LEAVE_OUT
            ):
                yield Problem(
                    file, line, f"imports {first}, which is left out of what the browser gets",
                    "do without it: a calculation needs math and little else",
                )  # fmt: skip


def _imports(tree: ast.Module) -> Iterator[tuple[int, str]]:
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            yield from ((node.lineno, alias.name) for alias in node.names)
        elif isinstance(node, ast.ImportFrom) and not node.level:
            yield node.lineno, str(node.module)


def _loaded(name: str, module: str, path: Path, root: Path) -> Calculator | Problem:
    """The calculator of a module, or what is wrong at which line."""
    file = place(path, root)
    try:
        found = importlib.import_module(module)
    except Exception as error:  # whatever an author's file does when it is run
        sys.modules.pop(module, None)
        frames = [
            one for one in traceback.extract_tb(error.__traceback__)
            if Path(one.filename).resolve().is_relative_to(path.parent.resolve())
        ]  # fmt: skip
        at = frames[-1] if frames else None
        said = str(error).strip().partition("\n")[0] or type(error).__name__
        return Problem(
            place(Path(at.filename), root) if at else file, (at.lineno or 1) if at else 1,
            f"cannot be loaded: {said} ({type(error).__name__})", "mend what the line says or names",
        )  # fmt: skip
    calculator = getattr(found, "calculator", None)
    if not isinstance(calculator, Calculator):
        return Problem(
            file, 1, "has no object 'calculator'",
            "write 'calculator = Calculator(…)', or begin the file's name with _ where it only helps "
            "another",
        )  # fmt: skip
    if calculator.name != name:
        return Problem(
            file, 1, f"the calculator is called '{calculator.name}', its file '{path.name}'",
            f"write name=\"{name}\", or call the file {calculator.name.replace('-', '_')}.py",
        )  # fmt: skip
    return _tried(calculator, path, file) or calculator


def _tried(calculator: Calculator, path: Path, file: str) -> Problem | None:
    """What is wrong with a declaration, or with its work, pictures and checks when they are run."""
    lines = path.read_text("utf-8").splitlines()
    starts = (number for number, line in enumerate(lines, 1) if line.startswith("calculator = "))
    line = next(starts, 1)
    for fault in find_faults(calculator):
        return Problem(file, line, fault, "mend the declaration")
    try:
        answer = work_out(calculator, {})
        if isinstance(answer, list):
            said = "; ".join(f"{one.input}: {one.why}" for one in answer)
            return Problem(file, line, f"refuses its own example: {said}", "mend the example")
        parts(answer)
        for check in calculator.checks:
            compare(calculator, check)
    except Exception as error:  # whatever an author's functions do
        at = [one for one in traceback.extract_tb(error.__traceback__) if one.filename == str(path)]
        return Problem(
            file, (at[-1].lineno or line) if at else line,
            f"fails with its example or a check: {error} ({type(error).__name__})",
            "mend the line; where there is no answer, raise Refusal with the reason",
        )  # fmt: skip
    return None


def _forget_changed(folder: Path, package: str) -> None:
    """Lets a package whose files changed since it was loaded be loaded anew."""
    now = tuple(
        (str(path), path.stat().st_mtime_ns, path.stat().st_size)
        for path in sorted(folder.rglob("*.py"))
    )
    if _seen.get(package, now) != now:
        _drop(package)
        importlib.invalidate_caches()
    _seen[package] = now


def _drop(package: str) -> None:
    for name in [one for one in sys.modules if one == package or one.startswith(f"{package}.")]:
        del sys.modules[name]
