"""The figures of a run as they are kept: each part with the machine, the versions and the day."""

import datetime
import json
import os
import platform
import subprocess
from importlib.metadata import version
from pathlib import Path
from typing import Any

from benchrule.web_packages import web_package
from tests.chromium import chromium_path

ROOT = Path(__file__).parents[2]
KEPT = ROOT / ".cache" / "bench.json"
PUBLISHED = ROOT / "docs" / "assets" / "speed.json"
"""What the page of figures is written from."""


def circumstances() -> dict[str, Any]:
    """The machine, the versions of what matters, the commit, the day, and how busy it all was."""
    pyodide = json.loads((web_package("pyodide") / "package.json").read_text("utf-8"))
    browser = _said([chromium_path(), "--version"]).split()
    return {
        "machine": f"{_processor()}, {os.cpu_count()} cores, {_memory():.0f} GB",
        "versions": {
            "Python": platform.python_version(),
            "Node.js": _said(["node", "--version"]).removeprefix("v"),
            "Chromium": next((word for word in browser if word[0].isdigit()), "?"),
            "Pyodide": pyodide["version"],
            "MkDocs": version("mkdocs"),
            "Material": version("mkdocs-material"),
        },
        "commit": _said(["git", "rev-parse", "--short=12", "HEAD"])
        + (" with changes" if _said(["git", "status", "--porcelain", "-uno"]) else ""),
        "date": datetime.datetime.now(datetime.UTC).date().isoformat(),
        "load_before": round(os.getloadavg()[0], 1),
    }


def _said(command: list[str]) -> str:
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=False)
    return done.stdout.strip()


def _processor() -> str:
    """The processor's model, as the system names it."""
    try:
        lines = Path("/proc/cpuinfo").read_text("utf-8").splitlines()
    except OSError:
        return platform.processor() or platform.machine()
    return next((line.partition(": ")[2] for line in lines if line.startswith("model name")),
                platform.machine())  # fmt: skip


def _memory() -> float:
    return os.sysconf("SC_PAGE_SIZE") * os.sysconf("SC_PHYS_PAGES") / 1e9


def read() -> dict[str, Any]:
    """Every part measured so far, by name."""
    for path in (KEPT, PUBLISHED):
        if path.exists():
            found: dict[str, Any] = json.loads(path.read_text("utf-8"))
            return found
    return {}


def add(name: str, figures: Any, made: dict[str, Any], took: float) -> None:
    """Puts a part's figures in the place of its last ones; the other parts stay."""
    kept = read()
    kept[name] = {"made": made | {"took_s": round(took)}, "figures": figures}
    KEPT.parent.mkdir(exist_ok=True)
    KEPT.write_text(json.dumps(kept, indent=1) + "\n", "utf-8")


def publish() -> dict[str, Any]:
    """Writes what was measured to where the page is written from."""
    found = read()
    PUBLISHED.write_text(json.dumps(found, indent=1) + "\n", "utf-8")
    return found
