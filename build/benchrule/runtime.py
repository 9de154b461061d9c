"""Packs the runtime: Pyodide from npm, its standard library and our calculators as bytecode.

A page starts the runtime some three times sooner when nothing has to be compiled in the browser.
Everything lies in one folder named by the hash of all that went in, so that files of two editions
can never mix; the folder is kept in a cache and made again only when something changed.
"""

import base64
import hashlib
import json
import shutil
import subprocess
import sys
import tempfile
import zipfile
from importlib import resources
from importlib.util import find_spec
from pathlib import Path

from calculators.engine.registry import modules
from calculators.engine.shop_packages import LEFT_OUT, PACKAGES

from . import __version__
from .runtime_parts import CORE, LEAVE_OUT, Part, cut, only_needed
from .web_packages import web_package

PARTS_FILE = "parts.json"
PACKAGES_FILE = "calculators/engine/shop_packages.py"
FIXED_DATE = (2020, 1, 1, 0, 0, 0)
FROM_NPM = ("pyodide.mjs", "pyodide.asm.mjs", "pyodide.asm.wasm")
HASHES = b"{/* HASHES */}"  # where the worker has those of all other files


class RuntimeFailed(RuntimeError):
    """The runtime could not be packed; the message says what to install or mend."""


def packages_folders(packages: tuple[str, ...]) -> list[tuple[str, Path]]:
    """The folder of each importable package of calculators."""
    found = []
    for name in packages:
        spec = find_spec(name)  # found, and not run: what it holds is an author's
        if spec is None or not spec.submodule_search_locations:
            raise RuntimeFailed(f"there is no package {name}; name it as its folder is called")
        found.append((name, Path(next(iter(spec.submodule_search_locations)))))
    return found


def runtime_folder(cache: Path, packages: tuple[str, ...] = ("calculators",)) -> Path:
    """The folder of the packed runtime, made if it is not in the cache."""
    pyodide = web_package("pyodide")
    sources = _sources(packages)
    web = {
        name: resources.files("benchrule").joinpath(f"web/{name}").read_bytes()
        for name in ("compile.mjs", "worker.mjs")
    }
    key = hashlib.sha256()
    for name, data in (*sources.items(), *web.items(), ("cut", _own_source())):
        key.update(name.encode() + b"\0" + hashlib.sha256(data).digest())
    key.update((pyodide / "package.json").read_bytes())
    key.update(__version__.encode())
    folder = cache / f"runtime-{key.hexdigest()[:12]}"
    if not (folder / "manifest.json").exists():
        with tempfile.TemporaryDirectory() as work:
            made = Path(work) / "made"
            made.mkdir()
            _pack(made, Path(work), pyodide, sources, web)
            cache.mkdir(parents=True, exist_ok=True)
            shutil.rmtree(folder, ignore_errors=True)
            shutil.copytree(made, folder)
    return folder


def _own_source() -> bytes:
    """What decides how sources are cut and packed."""
    names = ("runtime.py", "runtime_parts.py")
    return b"".join(resources.files("benchrule").joinpath(name).read_bytes() for name in names)


def _sources(packages: tuple[str, ...]) -> dict[str, bytes]:
    """Every Python file of the packages, by its name in the wheel, in order."""
    found = {}
    for name, folder in packages_folders(packages):
        for path in sorted(folder.rglob("*.py")):
            found[f"{name}/{path.relative_to(folder).as_posix()}"] = path.read_bytes()
    if LEFT_OUT:
        found = only_needed(found, set(modules().values()))
    for name in packages:
        if name not in PACKAGES:
            PACKAGES.append(name)
    found[PACKAGES_FILE] = (
        f"LEFT_OUT = []\nPACKAGES = {list(packages)!r}\nMODULES = {modules()!r}\n".encode()
    )
    return found


def _pack(
    made: Path, work: Path, pyodide: Path, sources: dict[str, bytes], web: dict[str, bytes]
) -> None:
    for name in FROM_NPM:
        shutil.copyfile(pyodide / name, made / name)
    zips = [
        {
            "from": str(pyodide / "python_stdlib.zip"),
            "to": str(made / "python_stdlib.zip"),
            "leaveOut": LEAVE_OUT,
        }
    ]
    parts = cut(sources)
    for part in parts:
        source_wheel = work / _wheel_name(part)
        with zipfile.ZipFile(source_wheel, "w") as wheel:
            files = {name: sources[name] for name in part.files} | _wheel_metadata(part)
            for name, data in files.items():
                wheel.writestr(zipfile.ZipInfo(name, FIXED_DATE), data)
        zips.append(
            {"from": str(source_wheel), "to": str(made / _wheel_name(part)), "leaveOut": []}
        )
    (work / "job.json").write_text(json.dumps({"pyodide": str(pyodide) + "/", "zips": zips}))
    (work / "compile.mjs").write_bytes(web["compile.mjs"])
    _run(["node", str(work / "compile.mjs"), str(work / "job.json")], "Node.js 20 or newer")
    _write_lock(made, work, pyodide, [made / _wheel_name(part) for part in parts])
    (made / PARTS_FILE).write_text(json.dumps(_parts_of_calculators(parts)) + "\n")
    (made / "worker.mjs").write_bytes(web["worker.mjs"].replace(HASHES, _hashes(made)))
    manifest = {
        path.name: {
            "sha256": hashlib.sha256(path.read_bytes()).hexdigest(), "bytes": path.stat().st_size,
        }
        for path in sorted(made.iterdir())
    }  # fmt: skip
    (made / "manifest.json").write_text(json.dumps(manifest, indent=1) + "\n")


def _hashes(made: Path) -> bytes:
    """The SHA-256 of every file so far, as browsers take them, for the worker to check."""
    sums = {path.name: hashlib.sha256(path.read_bytes()).digest() for path in made.iterdir()}
    return json.dumps(
        {name: f"sha256-{base64.b64encode(sums[name]).decode()}" for name in sorted(sums)}
    ).encode()


def _parts_of_calculators(parts: list[Part]) -> dict[str, list[str]]:
    """The parts to be loaded besides the core before a calculator can be asked, or the exercises."""
    holder = {file: part for part in parts for file in part.files}
    found = {}
    for name, module in {**modules(), "learning": "calculators.learning.door"}.items():
        part = holder[module.replace(".", "/") + ".py"]
        found[name] = [one for one in (*part.needs, part.name) if one != CORE]
    return found


def _wheel_name(part: Part) -> str:
    return f"{part.name.replace('-', '_')}-{__version__}-py3-none-any.whl"


def _wheel_metadata(part: Part) -> dict[str, bytes]:
    folder = f"{part.name.replace('-', '_')}-{__version__}.dist-info"
    record = "".join(f"{name}c,,\n" for name in part.files)
    return {
        f"{folder}/METADATA": (
            f"Metadata-Version: 2.1\nName: {part.name}\nVersion: {__version__}\n"
        ).encode(),
        f"{folder}/WHEEL": b"Wheel-Version: 1.0\nGenerator: benchrule\nRoot-Is-Purelib: true\n"
        b"Tag: py3-none-any\n",
        f"{folder}/RECORD": record.encode(),
    }


def _write_lock(made: Path, work: Path, pyodide: Path, wheels: list[Path]) -> None:
    """The runtime's lock: upstream's own, without its packages, plus our wheels with their hashes."""
    upstream = json.loads((pyodide / "pyodide-lock.json").read_text("utf-8"))
    upstream["packages"] = {}
    bare = work / "bare-lock.json"
    bare.write_text(json.dumps(upstream))
    _run(
        [
            sys.executable, "-m", "pyodide_cli", "lockfile", "add-wheels", "--input", str(bare),
            "--output", str(made / "pyodide-lock.json"), "--base-path", str(made),
            *map(str, wheels),
        ],
        "pyodide-build",
    )  # fmt: skip


def _run(command: list[str], needs: str) -> None:
    try:
        done = subprocess.run(command, capture_output=True, text=True, check=False)
    except FileNotFoundError:
        raise RuntimeFailed(f"{command[0]} is not there; install {needs}") from None
    if done.returncode:
        raise RuntimeFailed(f"{' '.join(command[:3])} failed:\n{done.stdout}{done.stderr}")
