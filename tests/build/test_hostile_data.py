"""What a data file must not be able to do: run something, or keep the build busy for ever."""

import ast
import importlib
import resource
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest
import yaml

from benchrule.located_yaml import LONGEST_TEXT, read_yaml
from benchrule.opening import site_places
from benchrule.site_config import read_site_config
from tests.build.trees import sound_tree, write_tree

ROOT = Path(__file__).parents[2]
SOURCES = [*sorted((ROOT / "build").rglob("*.py")), *sorted((ROOT / "calculators").rglob("*.py"))]
SCRIPTS = [
    path
    for kind in ("*.mjs", "*.js", "*.html")
    for path in sorted((ROOT / "build" / "benchrule").rglob(kind))
]
LAUGHS = "a0: &a0 [ha, ha, ha, ha, ha, ha, ha, ha, ha]\n" + "".join(
    f"a{n}: &a{n} [{', '.join([f'*a{n - 1}'] * 9)}]\n" for n in range(1, 12)
)
BOMBS = {
    "an alias of aliases": (LAUGHS, "values"),
    "a list within itself": ("a: &a [*a]\n", "nested too deep"),
    "a mapping within itself": ("a: &a {b: *a}\n", "nested too deep"),
    "brackets without end": ("[" * 100_000, "depth"),
    "names without end": ("? " * 20_000, "depth"),
    "a long file": ("a: 1\n" * (LONGEST_TEXT // 5 + 1), "characters"),
    "an object of Python": ("a: !!python/object/apply:os.system ['touch ran']\n", "is no text"),
    "a name of Python": ("a: !!python/name:os.system\n", "no text"),
    "a character that turns text round": ('a: "2.1 \\u202e mm"\n', "U+202E"),
    "a character that ends a text in C": ('a: "2.1 \\0 mm"\n', "U+0000"),
}
SECONDS, MEGABYTES = 20, 400  # a sound handbook of this size takes one and eighty


@pytest.mark.parametrize("name", BOMBS)
def test_a_hostile_document_is_a_problem_on_a_line_and_soon(name: str) -> None:
    text, what = BOMBS[name]
    located, problems = read_yaml(text, "docs/data/x.yml")
    assert problems, located.value
    assert what in problems[0].what
    assert problems[0].line >= 1
    assert problems[0].to_do


def checked(root: Path) -> subprocess.CompletedProcess[str]:
    """``benchrule check`` with a bound to its time and its memory."""

    def bounded() -> None:
        resource.setrlimit(resource.RLIMIT_CPU, (SECONDS, SECONDS))
        resource.setrlimit(resource.RLIMIT_DATA, (MEGABYTES << 20, MEGABYTES << 20))

    return subprocess.run(
        [sys.executable, "-c", "from benchrule.cli import main; main()", "check", "-f", str(root / "mkdocs.yml")],
        cwd=root, capture_output=True, text=True, check=False, preexec_fn=bounded,
    )  # fmt: skip


def test_the_bounds_of_these_tests_let_a_sound_handbook_through(tmp_path: Path) -> None:
    done = checked(write_tree(tmp_path, sound_tree()))
    assert done.returncode == 0, done.stdout + done.stderr


@pytest.mark.parametrize("name", ["an alias of aliases", "a list within itself", "a long file"])
@pytest.mark.parametrize(
    "place", ["docs/data/gauges.yml", "docs/stations/sanding.md", "docs/index.md"]
)
def test_the_check_stops_with_words_wherever_it_stands(
    place: str, name: str, tmp_path: Path
) -> None:
    tree = sound_tree()
    text = BOMBS[name][0]
    if place.endswith(".md"):
        tree[place] = tree[place].replace("---\n", f"---\n{text}", 1)
        if not tree[place].startswith("---"):
            tree[place] = f"---\n{text}---\n{tree[place]}"
    else:
        tree[place] += text
    root = write_tree(tmp_path, tree)
    done = checked(root)
    assert done.returncode == 1, done.stdout + done.stderr
    assert place in done.stdout
    assert "Traceback" not in done.stderr


def test_nothing_of_a_yaml_file_is_ever_run(tmp_path: Path) -> None:
    evil = "x: !!python/object/apply:os.mkdir [ran]\n!!python/object/apply:os.mkdir [ran]: y\n"
    (tmp_path / "mkdocs.yml").write_text(f"site_name: x\nplugins: [benchrule]\n{evil}")
    read_yaml(evil, "x.yml")
    read_site_config(tmp_path / "mkdocs.yml")
    site_places(tmp_path / "mkdocs.yml")
    assert not (tmp_path / "ran").exists()
    assert not Path("ran").exists()


def calls(path: Path) -> Iterator[tuple[str, ast.Call]]:
    """Every call in a file, by its dotted name."""
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if isinstance(node, ast.Call):
            yield ast.unparse(node.func), node


RUNS_TEXT = {"eval", "exec", "compile", "os.system", "os.popen", "os.execv", "os.spawnv"}
UNPACKS = {"pickle", "cPickle", "dill", "marshal", "shelve", "joblib", "jsonpickle", "copyreg"}
YAML_CALLS = {"yaml.load", "yaml.safe_load", "yaml.safe_dump", "yaml.dump"}


def faults_in(path: Path) -> list[str]:
    """What of a file could run what it was given to read."""
    found = []
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        names = [alias.name for alias in node.names] if isinstance(node, ast.Import) else []
        names += [node.module or ""] if isinstance(node, ast.ImportFrom) else []
        found += [f"imports {name}" for name in names if name.split(".")[0] in UNPACKS]
        if isinstance(node, ast.ImportFrom) and node.module == "yaml":
            found.append("imports parts of yaml by name")
    for name, call in calls(path):
        if name in RUNS_TEXT:
            found.append(name)
        if name.startswith("subprocess.") or name == "asyncio.create_subprocess_shell":
            shell = [word for word in call.keywords if word.arg == "shell"]
            if shell or name.endswith(("getoutput", "getstatusoutput", "_shell")):
                found.append(f"{name} by a shell")
            if call.args and isinstance(call.args[0], ast.Constant | ast.JoinedStr):
                found.append(f"{name} of a text")
        if name.startswith("yaml.") and name[5].islower() and name not in YAML_CALLS:
            found.append(name)
        if name == "yaml.load" and not _is_safe(path, call):
            found.append("yaml.load without a safe loader")
    return found


def _is_safe(path: Path, call: ast.Call) -> bool:
    loader = ast.unparse(call.args[1]) if len(call.args) > 1 else ""
    folder = next(one for one in (ROOT / "build", ROOT) if path.is_relative_to(one))
    module = importlib.import_module(".".join(path.relative_to(folder).with_suffix("").parts))
    found = getattr(module, loader, None)
    return isinstance(found, type) and issubclass(found, (yaml.SafeLoader, yaml.CSafeLoader))


def test_no_source_runs_a_text_or_unpacks_objects() -> None:
    assert len(SOURCES) > 200
    assert {
        str(path.relative_to(ROOT)): faults_in(path) for path in SOURCES if faults_in(path)
    } == {"build/benchrule/serving.py": ["os.execv"]}  # the author's own command, begun again


@pytest.mark.parametrize(
    "code",
    [
        "eval(x)", "exec(x)", "import pickle", "from marshal import loads", "import subprocess\nsubprocess.run(x, shell=True)",
        "import subprocess\nsubprocess.run(f'rm {x}')", "import yaml\nyaml.load(x)", "import yaml\nyaml.load(x, yaml.Loader)",
        "import yaml\nyaml.unsafe_load(x)", "from yaml import load", "import os\nos.system(x)",
    ],
)  # fmt: skip
def test_each_such_thing_is_noticed(code: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:  # fmt: skip
    monkeypatch.syspath_prepend(tmp_path)
    monkeypatch.setattr(sys.modules[__name__], "ROOT", tmp_path)
    (tmp_path / "suspect.py").write_text(
        f"x = ''\n{code}\n" if "load(x" not in code else "import yaml\n"
    )
    path = tmp_path / "suspect.py"
    if "load(x" in code:
        importlib.invalidate_caches()
        sys.modules.pop("suspect", None)
        importlib.import_module("suspect")
        path.write_text(code)
    assert faults_in(path)


def test_no_script_of_ours_runs_a_text() -> None:
    assert len(SCRIPTS) > 20
    for path in SCRIPTS:
        text = path.read_text("utf-8")
        for words in ("eval(", "new Function", "document.write", "setTimeout(\"", "setInterval(\"", "srcdoc", "javascript:"):  # fmt: skip
            assert words not in text, (path.name, words)
