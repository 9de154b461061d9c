"""Packs the runtime: Pyodide from npm, its standard library and our calculators as bytecode.

A page starts the runtime some three times sooner when nothing has to be compiled in the browser.
Everything lies in one folder named by the hash of all that went in, so that files of two editions
can never mix; the folder is kept in a cache and made again only when something changed.
"""

import hashlib
import json
import shutil
import subprocess
import sys
import tempfile
import zipfile
from importlib import resources
from pathlib import Path

from calculators.engine.registry import modules
from calculators.engine.shop_packages import PACKAGES

from . import __version__
from .web_packages import web_package

WHEEL = f"benchrule_calculators-{__version__}-py3-none-any.whl"
PACKAGES_FILE = "calculators/engine/shop_packages.py"
FIXED_DATE = (2020, 1, 1, 0, 0, 0)
FROM_NPM = ("pyodide.mjs", "pyodide.asm.mjs", "pyodide.asm.wasm")
# Parts of the standard library that no calculation can need: other programs' protocols, tests,
# debuggers, foreign encodings. The rest stays, lest a lazy import find nothing.
LEAVE_OUT = [
    r"encodings/(?!__init__|aliases|utf_8|latin_1|ascii|cp437|idna|unicode_escape|raw_unicode_escape)",
    r"(_pyrepl|curses|dbm|email|ensurepip|idlelib|lib2to3|msilib|multiprocessing|pydoc_data|sqlite3"
    r"|test|tkinter|tomllib|turtledemo|unittest|venv|wsgiref|xml|xmlrpc|html|http|ctypes)/",
    r"(pdb|bdb|doctest|pydoc|mailbox|imaplib|smtplib|ftplib|poplib|nntplib|turtle|optparse|cmd|"
    r"_pyio|pickletools|mailcap|telnetlib|webbrowser|antigravity|this|profile|cProfile|pstats|"
    r"trace|timeit|tabnanny|pyclbr|zipapp|_sysconfigdata.*|netrc|plistlib|configparser|_aix_support|"
    r"_osx_support|_android_support|_ios_support|socketserver|difflib|shelve|fileinput|argparse|"
    r"ipaddress|uuid|calendar|mimetypes|getpass|sched|quopri|getopt|rlcompleter|code|graphlib|"
    r"nturl2path|modulefinder|runpy|symtable|compileall|py_compile)\.py$",
]


class RuntimeFailed(RuntimeError):
    """The runtime could not be packed; the message says what to install or mend."""


def packages_folders(packages: tuple[str, ...]) -> list[tuple[str, Path]]:
    """The folder of each importable package of calculators."""
    found = []
    for name in packages:
        module = __import__(name)
        found.append((name, Path(next(iter(module.__path__)))))
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
    for name, data in (*sources.items(), *web.items()):
        key.update(name.encode() + b"\0" + hashlib.sha256(data).digest())
    key.update((pyodide / "package.json").read_bytes())
    key.update(json.dumps(LEAVE_OUT).encode())
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


def _sources(packages: tuple[str, ...]) -> dict[str, bytes]:
    """Every Python file of the packages, by its name in the wheel, in order."""
    found = {}
    for name, folder in packages_folders(packages):
        for path in sorted(folder.rglob("*.py")):
            found[f"{name}/{path.relative_to(folder).as_posix()}"] = path.read_bytes()
    for name in packages:
        if name not in PACKAGES:
            PACKAGES.append(name)
    found[PACKAGES_FILE] = f"PACKAGES = {list(packages)!r}\nMODULES = {modules()!r}\n".encode()
    return found


def _pack(
    made: Path, work: Path, pyodide: Path, sources: dict[str, bytes], web: dict[str, bytes]
) -> None:
    source_wheel = work / "source.zip"
    with zipfile.ZipFile(source_wheel, "w") as wheel:
        for name, data in (*sources.items(), *_wheel_metadata(sorted(sources)).items()):
            wheel.writestr(zipfile.ZipInfo(name, FIXED_DATE), data)
    for name in FROM_NPM:
        shutil.copyfile(pyodide / name, made / name)
    (made / "worker.mjs").write_bytes(web["worker.mjs"])
    job = {
        "pyodide": str(pyodide) + "/",
        "zips": [
            {
                "from": str(pyodide / "python_stdlib.zip"),
                "to": str(made / "python_stdlib.zip"),
                "leaveOut": LEAVE_OUT,
            },
            {"from": str(source_wheel), "to": str(made / WHEEL), "leaveOut": []},
        ],
    }
    (work / "job.json").write_text(json.dumps(job))
    (work / "compile.mjs").write_bytes(web["compile.mjs"])
    _run(["node", str(work / "compile.mjs"), str(work / "job.json")], "Node.js 20 or newer")
    _write_lock(made, work, pyodide)
    manifest = {
        path.name: {
            "sha256": hashlib.sha256(path.read_bytes()).hexdigest(), "bytes": path.stat().st_size,
        }
        for path in sorted(made.iterdir())
    }  # fmt: skip
    (made / "manifest.json").write_text(json.dumps(manifest, indent=1) + "\n")


def _wheel_metadata(names: list[str]) -> dict[str, bytes]:
    folder = f"benchrule_calculators-{__version__}.dist-info"
    record = "".join(f"{name}c,,\n" for name in names)
    return {
        f"{folder}/METADATA": (
            f"Metadata-Version: 2.1\nName: benchrule-calculators\nVersion: {__version__}\n"
        ).encode(),
        f"{folder}/WHEEL": b"Wheel-Version: 1.0\nGenerator: benchrule\nRoot-Is-Purelib: true\n"
        b"Tag: py3-none-any\n",
        f"{folder}/RECORD": record.encode(),
    }


def _write_lock(made: Path, work: Path, pyodide: Path) -> None:
    """The runtime's lock: upstream's own, without its packages, plus our wheel with its hash."""
    upstream = json.loads((pyodide / "pyodide-lock.json").read_text("utf-8"))
    upstream["packages"] = {}
    bare = work / "bare-lock.json"
    bare.write_text(json.dumps(upstream))
    _run(
        [
            sys.executable, "-m", "pyodide_cli", "lockfile", "add-wheels", "--input", str(bare),
            "--output", str(made / "pyodide-lock.json"), "--base-path", str(made),
            str(made / WHEEL),
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
