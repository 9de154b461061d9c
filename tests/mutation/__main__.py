"""Changes one constant or operator at a time in a calculator's work, and sees whether a test fails.

    python -m tests.mutation [NAME ...] [--sample N] [--seed S] [--jobs J]

General tools change Python; most of our work stands in formula texts inside declarations, so the
places are found here: formulas and conditions, named constants, and the bodies of the functions that
solve, with the laws they call. Each change is made in a copy and the calculator's tests are run on it.
What survives is listed with its place, to be looked at.
"""

import argparse
import ast
import os
import random
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from queue import Queue

from calculators.engine.registry import modules

ROOT = Path(__file__).parents[2]
LEFT_OUT = (
    "drawing",
    "plot",
    "check",
    "proof",
    "exercise",
    "input",
    "word",
    "said",
    "source",
    "legend",
)
SWAPS: dict[type[ast.operator], type[ast.operator]] = {
    ast.Add: ast.Sub, ast.Sub: ast.Add, ast.Mult: ast.Div, ast.Div: ast.Mult, ast.Pow: ast.Mult,
}  # fmt: skip
TURNS: dict[type[ast.cmpop], type[ast.cmpop]] = {
    ast.Lt: ast.Gt, ast.Gt: ast.Lt, ast.LtE: ast.Gt, ast.GtE: ast.Lt, ast.Eq: ast.NotEq,
}  # fmt: skip


@dataclass(frozen=True)
class Mutant:
    """One change: the file, the line, and the file's whole new text."""

    calculator: str
    file: str
    line: int
    what: str
    text: str


def files_of(module: str) -> list[Path]:
    """A calculator's module, its parts and the laws it calls, without pictures, words and checks."""
    found: list[Path] = []
    todo = [ROOT / (module.replace(".", "/") + ".py")]
    while todo:
        path = todo.pop()
        if path in found or not path.exists():
            continue
        found.append(path)
        for node in ast.walk(ast.parse(path.read_text("utf-8"))):
            if isinstance(node, ast.ImportFrom) and node.level:
                base = path.parents[node.level - 1]
                inside = base.joinpath(*(node.module or "").split("."))
                todo.append(inside.with_suffix(".py"))
                todo += [inside / f"{alias.name}.py" for alias in node.names]
    inside_work = [path for path in found if "engine" not in path.parts]
    return [path for path in inside_work if not any(word in path.stem for word in LEFT_OUT)]


def changes(tree: ast.AST) -> Iterator[tuple[ast.AST, str]]:
    """Each place of an expression that can be changed, changed in place and put back after."""
    for node in ast.walk(tree):
        if isinstance(node, ast.BinOp) and type(node.op) in SWAPS:
            old = node.op
            node.op = SWAPS[type(old)]()
            yield node, f"{type(old).__name__} to {type(node.op).__name__}"
            node.op = old
        elif isinstance(node, ast.Compare) and type(node.ops[0]) in TURNS:
            before = node.ops[0]
            node.ops[0] = TURNS[type(before)]()
            yield node, f"{type(before).__name__} turned"
            node.ops[0] = before
        elif isinstance(node, ast.Constant) and type(node.value) in (int, float):
            value = node.value
            node.value = value + 1 if isinstance(value, int) else value * 1.05 + 0.001
            yield node, f"{value} to {node.value}"
            node.value = value


def mutants(name: str, path: Path) -> Iterator[Mutant]:
    """Every change of one file."""
    text = path.read_text("utf-8")
    tree = ast.parse(text)
    file = path.relative_to(ROOT).as_posix()
    for node in ast.walk(tree):
        if isinstance(node, ast.keyword) and node.arg in ("formula", "holds", "value"):
            inner = node.value
            if isinstance(inner, ast.Constant) and isinstance(inner.value, str):
                formula = inner.value
                if "{" in formula:
                    continue
                expression = ast.parse(formula, mode="eval")
                for _, what in changes(expression):
                    inner.value = ast.unparse(expression)
                    yield Mutant(name, file, inner.lineno, f"{formula}: {what}", ast.unparse(tree))
                inner.value = formula
            elif node.arg == "value":
                for _, what in changes(node):
                    yield Mutant(name, file, node.value.lineno, what, ast.unparse(tree))
        elif isinstance(node, ast.FunctionDef):
            for statement in node.body:
                if isinstance(statement, ast.Expr | ast.Raise):
                    continue
                for place, what in changes(statement):
                    line = getattr(place, "lineno", statement.lineno)
                    yield Mutant(name, file, line, f"{node.name}: {what}", ast.unparse(tree))


def survives(mutant: Mutant, copy: Path) -> bool:
    """Whether no test of the calculator fails on the change."""
    target = copy / mutant.file
    kept = target.read_text("utf-8")
    target.write_text(mutant.text, "utf-8")
    users = callers(mutant.file)
    own = [f"tests/calculators/test_{part}.py" for part in _test_names(users, mutant.file)]
    chosen = [path for path in own if (copy / path).exists()]
    base = [sys.executable, "-m", "pytest", "-x", "-q", "-p", "no:cacheprovider"]
    env = {**os.environ, "PYTHONPATH": f"{copy}:{copy / 'build'}", "PYTHONDONTWRITEBYTECODE": "1"}
    try:
        for arguments in (
            ["tests/calculators/test_outside_checks.py", "-k",
             " or ".join(f"{name}:" for name in users)],
            chosen,
            ["tests/calculators/test_declarations.py", "tests/calculators/test_units.py",
             "tests/calculators/test_printed_steps.py", "-k", " or ".join(users)],
        ):  # fmt: skip
            if not arguments:
                continue
            try:
                done = subprocess.run(
                    [*base, *arguments], cwd=copy, env=env, capture_output=True, check=False,
                    timeout=180,
                )  # fmt: skip
            except subprocess.TimeoutExpired:
                return False
            if done.returncode not in (0, 5):
                return False
    finally:
        target.write_text(kept, "utf-8")
    return True


@cache
def callers(file: str) -> list[str]:
    """The calculators that work with a file: one for its parts, any number for a law."""
    return [name for name, module in modules().items() if ROOT / file in files_of(module)]


def _test_names(users: list[str], file: str) -> list[str]:
    stems = [name.replace("-", "_") for name in users]
    starts = tuple(f"{part}_" for stem in stems for part in (stem, stem.partition("_")[0]))
    names = [
        path.stem.removeprefix("test_") for path in (ROOT / "tests/calculators").glob("test_*.py")
    ]
    law = Path(file).stem.lstrip("_")
    return [one for one in names if one in (*stems, law) or one.startswith(starts)]


def main() -> None:
    parser = argparse.ArgumentParser(prog="python -m tests.mutation")
    parser.add_argument("names", nargs="*")
    parser.add_argument("--sample", type=int, default=12, help="changes a calculator")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--jobs", type=int, default=os.cpu_count() or 1)
    asked = parser.parse_args()
    where = modules()
    todo: list[Mutant] = []
    for name in asked.names or where:
        every = [one for path in files_of(where[name]) for one in mutants(name, path)]
        stream = random.Random(f"{asked.seed}/{name}")
        todo += stream.sample(every, min(asked.sample, len(every)))
    copies: Queue[Path] = Queue()
    with tempfile.TemporaryDirectory() as work:
        for number in range(asked.jobs):
            copy = Path(work) / str(number)
            for folder in ("calculators", "tests", "build"):
                shutil.copytree(
                    ROOT / folder, copy / folder, ignore=shutil.ignore_patterns("__pycache__")
                )
            for name in ("pyproject.toml", "mkdocs.yml"):
                shutil.copyfile(ROOT / name, copy / name)
            copies.put(copy)

        def run(mutant: Mutant) -> bool:
            copy = copies.get()
            try:
                lives = survives(mutant, copy)
                words = f"LIVES {mutant.what}" if lives else "found"
                print(f"{mutant.calculator} {mutant.file}:{mutant.line} {words}", file=sys.stderr)
                return lives
            finally:
                copies.put(copy)

        with ThreadPoolExecutor(asked.jobs) as pool:
            left = list(pool.map(run, todo))
    for name in dict.fromkeys(one.calculator for one in todo):
        own = [lives for one, lives in zip(todo, left, strict=True) if one.calculator == name]
        print(f"{name:24} {len(own) - sum(own):3} of {len(own):3} found")
    print(
        f"\n{len(left) - sum(left)} of {len(left)} found, {1 - sum(left) / max(1, len(left)):.1%}"
    )
    for one, lives in zip(todo, left, strict=True):
        if lives:
            print(f"{one.file}:{one.line}: {one.what}")


if __name__ == "__main__":
    main()
