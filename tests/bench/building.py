"""Build time side by side: the handbook, and the same Markdown by plain MkDocs with Material.

Plain gets every page of the handbook's Markdown, those that the build makes as well, with our blocks
and references left as the text that they are. Processor seconds of each whole command, in turn.
"""

import os
import re
import resource
import shutil
import statistics
import subprocess
import sys
from pathlib import Path

from benchrule.generated_pages import generated_pages
from benchrule.handbook import load_handbook

from .rows import Row

ROOT = Path(__file__).parents[2]
AIM_OF_PLAIN = 1.3
BUILDS = int(os.environ.get("BENCH_BUILDS", "3"))


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
    config = without_ours((ROOT / "mkdocs.yml").read_text("utf-8"))
    (folder / "mkdocs.yml").write_text(config, "utf-8")


def without_ours(config: str) -> str:
    """A mkdocs.yml without our plugin and its options, and not strict: our links are text to it."""
    config = re.sub(r"^  - benchrule\b.*\n(?:    .*\n)*", "", config, flags=re.MULTILINE)
    return config.replace("strict: true", "strict: false")


def forget_kept(cache: Path) -> None:
    """Takes away what earlier builds kept, but for the packed runtime."""
    (cache / "kept.json").unlink(missing_ok=True)
    shutil.rmtree(cache / "pieces", ignore_errors=True)


def processor_seconds(command: list[str], folder: Path) -> float:
    """What a command and its children take of the processor.

    Python keeps what it has compiled, as it does by itself: not so where an environment of tests
    forbids it.
    """
    kept = {key: value for key, value in os.environ.items() if key != "PYTHONDONTWRITEBYTECODE"}
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    subprocess.run(
        command, cwd=folder, check=True, capture_output=True,
        env={**kept, "NO_MKDOCS_2_WARNING": "1"},
    )  # fmt: skip
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


def measure_builds(work: Path) -> dict[str, list[float]]:
    """Seconds of ours from nothing kept, of ours again, and of plain."""
    plain = work / "plain-build"
    plain.mkdir()
    lay_out_plain(plain)
    build = [sys.executable, "-m", "mkdocs", "build", "-q", "-d", str(work / "built")]
    found: dict[str, list[float]] = {"first": [], "again": [], "plain": []}
    for _ in range(BUILDS):
        forget_kept(ROOT / ".cache" / "benchrule")
        found["first"].append(processor_seconds(build, ROOT))
        found["again"].append(processor_seconds(build, ROOT))
        found["plain"].append(processor_seconds([*build[:-1], str(work / "built-plain")], plain))
    return found


def build_rows(found: dict[str, list[float]]) -> list[Row]:
    """Plain, ours from nothing kept, ours again."""
    middle = {name: statistics.median(times) for name, times in found.items()}
    rows = [Row("Plain", f"{middle['plain']:.1f} s")]
    for name, words in (("first", "nothing kept of an earlier build"), ("again", "built before")):
        ratio = f"{middle[name]:.1f} s, {middle[name] / middle['plain']:.2f} of plain"
        rows.append(Row(f"Ours, {words}", ratio))
    return rows


def growth_rows(found: dict[str, dict[str, list[float]]]) -> list[Row]:
    """By pages: plain, ours from nothing kept, ours again, and what each page of ours takes."""
    rows = []
    for count, mine in found.items():
        pages = mine["pages"][0]
        plain = statistics.median(mine["plain"])
        rows.append(Row(f"{count} pages written, {pages:.0f} in the site: plain", f"{plain:.1f} s"))
        for name, words in (("first", "nothing kept"), ("again", "built before")):
            taken = statistics.median(mine[name])
            of_plain = (
                f"{taken:.1f} s, {taken / plain:.2f} of plain, {taken / pages * 1000:.0f} ms a page"
            )
            rows.append(
                Row(
                    f"{count} pages written: ours, {words}", of_plain,
                    f"at most {AIM_OF_PLAIN} of plain", taken <= AIM_OF_PLAIN * plain,
                )
            )  # fmt: skip
    return rows
