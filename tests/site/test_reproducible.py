"""One state of the sources gives one site: whoever builds it, where, when and under which settings."""

import hashlib
import os
import re
import shutil
import subprocess
import sys
from pathlib import Path

from .conftest import ROOT, Site

NOT_SOURCES = shutil.ignore_patterns(
    ".git", ".venv", "node_modules", "site", ".cache", "__pycache__", "*.pyc", ".*_cache", ".hypothesis"
)  # fmt: skip


def sums(folder: Path) -> dict[str, str]:
    """The SHA-256 of every file below a folder."""
    return {
        path.relative_to(folder).as_posix(): hashlib.sha256(path.read_bytes()).hexdigest()
        for path in sorted(folder.rglob("*"))
        if path.is_file()
    }


def without_day(site: Path) -> str:
    """The service worker without the day that it gives its edition, and what follows from that."""
    text = (site / "service-worker.js").read_text("utf-8")
    stripped, found = re.subn(r'"date":"\d{4}-\d\d-\d\d"', "", text)
    assert found == 1
    return stripped


def built_elsewhere(root: Path, out: Path, address: str, umask: int, **settings: str) -> Path:
    """Builds the sources at ``root``, with nothing kept from another build, under other settings."""
    done = subprocess.run(
        [sys.executable, "-m", "mkdocs", "build", "-q", "-f", str(root / "mkdocs.yml"), "-d", str(out)],
        cwd=root, capture_output=True, text=True, check=False, umask=umask,
        env={**os.environ, "PYTHONPATH": f"{root}:{root / 'build'}", "SITE_URL": address,
             "NO_MKDOCS_2_WARNING": "1", **settings},
    )  # fmt: skip
    assert done.returncode == 0, done.stdout + done.stderr
    return out


def test_two_builds_in_other_places_at_other_times_give_the_same_bytes(
    site: Site, tmp_path: Path
) -> None:
    root = tmp_path / "a folder with another name"
    shutil.copytree(ROOT, root, ignore=NOT_SOURCES)
    (root / "node_modules").symlink_to(ROOT / "node_modules")
    for path in root.rglob("*"):  # in a fresh checkout every file is new, and in another order
        if path.is_file() and not path.is_symlink():
            os.utime(path, (1, 1))
    twin = built_elsewhere(
        root, tmp_path / "out", site.address, umask=0o077, PYTHONHASHSEED="4242",
        TZ="Pacific/Kiritimati", LANG="C", LC_ALL="C", HOME=str(tmp_path), COLUMNS="40",
    )  # fmt: skip
    one, two = sums(site.folder), sums(twin)
    assert one.keys() == two.keys()
    differ = {name for name in one if one[name] != two[name]}
    # The service worker says of which day its edition is: of its commit, or where there is none, today.
    assert differ <= {"service-worker.js"}
    assert without_day(site.folder) == without_day(twin)


def test_two_wheels_of_the_project_are_the_same(tmp_path: Path) -> None:
    made = {}
    for name, umask, seed in (("one", 0o022, "1"), ("another", 0o077, "2")):
        root = tmp_path / name
        shutil.copytree(ROOT, root, ignore=NOT_SOURCES)
        done = subprocess.run(
            [sys.executable, "-m", "hatchling", "build", "-t", "wheel", "-d", str(root / "dist")],
            cwd=root, capture_output=True, text=True, check=False, umask=umask,
            env={**os.environ, "PYTHONHASHSEED": seed, "TZ": f"Etc/GMT+{seed}"},
        )  # fmt: skip
        assert done.returncode == 0, done.stdout + done.stderr
        made |= {name: sums(root / "dist")}
    assert len(made["one"]) == 1
    assert made["one"] == made["another"]
