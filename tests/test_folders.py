"""The shape of the project: imports point one way, nothing of ours is ignored by git."""

import ast
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]

# Who may import whom in build/benchrule; from the ground up.
LAYERS = [
    {
        "problems",
        "references",
        "phrases",
        "web_packages",
        "unit_factors",
        "runtime_parts",
        "yaml_faults",
        "starter",
        "shop_icons",
        "page_policy",
    },
    {"located_yaml", "site_config", "runtime", "site_assets", "kept"},
    {"data", "own_calculators", "offline_edition"},
    {"handbook", "calc_text"},
    {
        "models",
        "measuring",
        "station_parts",
        "proof",
        "examples",
        "opening",
        "training_register",
        "watched",
    },
    {"places", "plain_words", "learning_pages", "instruments", "unchanged"},
    {"build_sheet", "rebuild"},
    {"templates", "site_keys"},
    {"order_files"},
    {"records"},
    {"paper"},
    {"record_command"},
    {"checks", "generated_pages"},
    {"search_entries"},
    {"exercise_bank"},
    {"class_files"},
    {"learning_commands"},
    {"training_commands"},
    {"paper_commands"},
    {"faces"},
    {"markdown_extension"},
    {"plugin", "begin", "stick", "web"},
    {"serving"},
    {"cli"},
]
ENGINE_LAYERS = [
    {"declaration", "text", "unit_table", "shop_packages", "strangers"},
    {"formula", "reading"},
    {"showing"},
    {"judging"},
    {"inputs", "mathml", "drawing"},
    {"compute", "plot", "registry", "legend"},
    {"markup", "checking", "soundness"},
    {"door"},
]


def imports_of(path: Path, package: str) -> set[str]:
    """The modules of ``package`` that a file imports, by their first name below it."""
    found = set()
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if isinstance(node, ast.ImportFrom):
            module = node.module or ""
            if node.level:
                inside = path.relative_to(ROOT).parts
                depth = len(inside) - node.level
                base = list(inside[:depth])
                full = ".".join([*base, *([module] if module else [])])
                names = [full] if module else [f"{full}.{alias.name}" for alias in node.names]
            else:
                names = [module]
        elif isinstance(node, ast.Import):
            names = [alias.name for alias in node.names]
        else:
            continue
        for name in names:
            name = name.removeprefix("build.")
            if name.startswith(package + "."):
                found.add(name.removeprefix(package + ".").split(".")[0])
    return found


def upward(folder: Path, package: str, layers: list[set[str]]) -> list[str]:
    level = {name: place for place, layer in enumerate(layers) for name in layer}
    faults = []
    for path in sorted(folder.rglob("*.py")):
        own = path.relative_to(folder).with_suffix("").parts[0]
        if own == "__init__":
            continue
        assert own in level, f"{own} has no place in the layers"
        for name in imports_of(path, package) - {own}:
            if name in level and level[name] >= level[own]:
                faults.append(f"{path.relative_to(ROOT)} imports {name}")
    return faults


def test_the_build_imports_downwards_only() -> None:
    assert upward(ROOT / "build" / "benchrule", "benchrule", LAYERS) == []


def test_the_engine_imports_downwards_only() -> None:
    assert upward(ROOT / "calculators" / "engine", "calculators.engine", ENGINE_LAYERS) == []


def test_an_upward_import_is_noticed(tmp_path: Path) -> None:
    path = ROOT / "calculators" / "engine" / "compute.py"
    assert "formula" in imports_of(path, "calculators.engine")
    assert upward(path.parent, "calculators.engine", ENGINE_LAYERS[::-1])


def test_calculators_import_only_the_standard_library_and_themselves() -> None:
    for path in (ROOT / "calculators").rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text("utf-8"))):
            if isinstance(node, ast.Import):
                names = [alias.name for alias in node.names]
            elif isinstance(node, ast.ImportFrom) and not node.level:
                names = [node.module or ""]
            else:
                continue
            for name in names:
                first = name.split(".")[0]
                assert first == "calculators" or first in sys.stdlib_module_names, (path, name)


def test_only_the_plugin_and_its_server_know_mkdocs() -> None:
    for path in (ROOT / "build").rglob("*.py"):
        if path.name not in ("plugin.py", "serving.py"):
            for node in ast.walk(ast.parse(path.read_text("utf-8"))):
                module = getattr(node, "module", None) or ""
                names = [alias.name for alias in getattr(node, "names", [])]
                mkdocs = isinstance(node, ast.Import | ast.ImportFrom) and any(
                    name.split(".")[0] == "mkdocs" for name in (module, *names)
                )
                assert not mkdocs, path


def test_git_ignores_nothing_of_ours() -> None:
    if not (ROOT / ".git").exists():
        pytest.skip("not a git checkout")
    for name in ("build/benchrule/x.py", "calculators/x.py", "docs/data/x.yml", "tests/x.py"):
        done = subprocess.run(["git", "check-ignore", "-q", name], cwd=ROOT, check=False)
        assert done.returncode == 1, name


def test_build_is_no_package() -> None:
    assert not (ROOT / "build" / "__init__.py").exists()


def test_modules_stay_small() -> None:
    for folder in ("build/benchrule", "calculators"):
        for path in (ROOT / folder).rglob("*.py"):
            lines = path.read_text("utf-8").count("\n")
            assert lines <= 500 or path.name in {"unit_table.py"}, f"{path} has {lines} lines"
