"""Finds what the pages take from npm: the runtime and the fonts, at their pinned versions.

In a checkout they lie in ``node_modules``. Where the project was installed with pip they are
fetched once, by npm and by the lock file that travels with it, into the user's cache.
"""

import json
import os
import shutil
import subprocess
from functools import cache
from importlib import resources
from pathlib import Path

CHECKOUT = Path(__file__).resolve().parents[2]


class WebPackageMissing(RuntimeError):
    """A package from npm is not there and could not be fetched; the message says what to do."""


def user_cache() -> Path:
    """The folder for what can be made or fetched again."""
    base = os.environ.get("XDG_CACHE_HOME") or Path.home() / ".cache"
    return Path(base) / "benchrule"


def _manifest(name: str) -> str:
    """package.json or its lock: from the checkout, or as packed into the installed project."""
    in_checkout = CHECKOUT / name
    if in_checkout.exists():
        return in_checkout.read_text("utf-8")
    return resources.files("benchrule").joinpath(f"web/{name}").read_text("utf-8")


@cache
def web_package(name: str) -> Path:
    """The folder of an npm package at the version that package.json pins."""
    wanted = json.loads(_manifest("package.json"))["dependencies"][name]
    for folder in (CHECKOUT / "node_modules", user_cache() / "web" / "node_modules"):
        if _version(folder / name) == wanted:
            return folder / name
    _fetch(user_cache() / "web")
    folder = user_cache() / "web" / "node_modules" / name
    if _version(folder) != wanted:
        raise WebPackageMissing(f"npm did not bring {name} {wanted}; run npm ci by hand")
    return folder


def _version(folder: Path) -> str | None:
    try:
        return str(json.loads((folder / "package.json").read_text("utf-8"))["version"])
    except OSError:
        return None


def _fetch(folder: Path) -> None:
    npm = shutil.which("npm")
    if npm is None:
        raise WebPackageMissing("npm is not there; install Node.js 20 or newer")
    folder.mkdir(parents=True, exist_ok=True)
    for name in ("package.json", "package-lock.json"):
        (folder / name).write_text(_manifest(name), "utf-8")
    done = subprocess.run(
        [npm, "ci", "--omit=dev", "--no-audit", "--no-fund"], cwd=folder,
        capture_output=True, text=True, check=False,
    )  # fmt: skip
    if done.returncode:
        raise WebPackageMissing(f"npm ci failed in {folder}:\n{done.stderr}")
