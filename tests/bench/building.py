"""Build time side by side: the handbook, and the same Markdown by plain MkDocs with Material.

Plain gets every page of the handbook's Markdown, those that the build makes as well, with our blocks
and references left as the text that they are. Processor seconds of each whole command, in turn.
"""

import os
import resource
import shutil
import subprocess
import sys
from pathlib import Path

from benchrule.generated_pages import generated_pages
from benchrule.handbook import load_handbook

ROOT = Path(__file__).parents[2]


def lay_out_plain(folder: Path) -> None:
    """A plain MkDocs project with the handbook's Markdown."""
    handbook, _ = load_handbook(ROOT, ROOT / "docs")
    for page in handbook.pages:
        target = folder / "docs" / page.source
        target.parent.mkdir(parents=True, exist_ok=True)
        shutil.copyfile(ROOT / "docs" / page.source, target)
    for source, text in generated_pages(handbook).items():
        target = folder / "docs" / source
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_text(text, "utf-8")
    shutil.copytree(ROOT / "docs" / "assets", folder / "docs" / "assets")
    config = (ROOT / "mkdocs.yml").read_text("utf-8")
    config = config.replace("  - benchrule\n", "").replace("strict: true", "strict: false")
    (folder / "mkdocs.yml").write_text(config, "utf-8")


def processor_seconds(command: list[str], folder: Path) -> float:
    """What a command and its children take of the processor."""
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    subprocess.run(
        command, cwd=folder, check=True, capture_output=True,
        env={**os.environ, "NO_MKDOCS_2_WARNING": "1"},
    )  # fmt: skip
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


def measure_builds(work: Path, times: int) -> dict[str, list[float]]:
    """Seconds of ours from nothing kept, of ours again, and of plain."""
    plain = work / "plain-build"
    plain.mkdir()
    lay_out_plain(plain)
    build = [sys.executable, "-m", "mkdocs", "build", "-q", "-d", str(work / "built")]
    kept = ROOT / ".cache" / "benchrule" / "kept.json"
    found: dict[str, list[float]] = {"first": [], "again": [], "plain": []}
    for _ in range(times):
        kept.unlink(missing_ok=True)
        found["first"].append(processor_seconds(build, ROOT))
        found["again"].append(processor_seconds(build, ROOT))
        found["plain"].append(processor_seconds([*build[:-1], str(work / "built-plain")], plain))
    return found
