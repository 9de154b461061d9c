"""How the build grows with the pages, beside plain MkDocs with Material on the same Markdown.

A handbook of any size is made from the demo's: its own 30 pages as they are, then stations written
after them under new ids (with their tolerances, references, terms, steps, faults, links and
calculators, each text a little different, so that nothing kept for one serves another), and one
page in five of plain Markdown. Plain MkDocs gets every page that ours has, those that the build
makes as well, the same theme, features and order of the book; our blocks and references are left as
the text that they are. Processor seconds of each whole command, in turn, the runtime packed before.
"""

import os
import re
import shutil
import sys
from pathlib import Path
from typing import Any

import yaml

from benchrule.generated_pages import MANY_PAGES, generated_pages, navigation
from benchrule.handbook import Handbook, load_handbook

from .building import forget_kept, processor_seconds, without_ours

ROOT = Path(__file__).parents[2]
PAGES = tuple(int(one) for one in os.environ.get("BENCH_PAGES", "30,300").split(","))
TIMES = int(os.environ.get("BENCH_BUILDS", "3"))
OF_THE_TOOL = ("hosting.md", "how-fast.md", "how-it-is-kept-safe.md")  # link to one another alone
PLAIN_SHARE = 5  # one page in so many is plain Markdown
GROUP = 50  # stations of a group, plain pages of a folder
REFERENCE = re.compile(r"\[\[(?:(station|tol):)?([a-z0-9-]+)([|:.\]])")


def lay_out_growth(folder: Path, count: int) -> Handbook:
    """A sound handbook of ``count`` written pages in ``folder``; returns it, read."""
    shutil.copytree(ROOT / "docs", folder / "docs")
    shutil.copyfile(ROOT / "mkdocs.yml", folder / "mkdocs.yml")
    for name in OF_THE_TOOL:
        (folder / "docs" / name).unlink()
    demo, _ = load_handbook(folder, folder / "docs")
    more = count - len(demo.pages)
    if more < 0:
        raise ValueError(f"the demo alone has {len(demo.pages)} pages")
    plain = more // PLAIN_SHARE
    groups: dict[str, dict[str, str]] = {}
    ids = [station.id for station in demo.stations]
    names = {f"{ids[at % len(ids)]}-{at // len(ids) + 2}" for at in range(more - plain)}
    for at in range(more - plain):
        group = f"bench-{at // GROUP + 1}"
        groups[group] = {"name": f"Bench {at // GROUP + 1}", "summary": "Written after the others."}
        _write_station(
            folder / "docs", demo, ids[at % len(ids)], at // len(ids) + 2, at, group, names
        )
    for at in range(plain):
        _write_plain(folder / "docs", demo, at)
    path = folder / "docs/data/groups.yml"
    path.write_text(path.read_text("utf-8") + "\n" + _dump(groups) if groups else path.read_text())
    shutil.copytree(
        ROOT / ".cache", folder / ".cache", ignore=shutil.ignore_patterns("kept.*", "pieces")
    )
    return load_handbook(folder, folder / "docs")[0]


def _write_station(
    docs: Path, demo: Handbook, of: str, turn: int, at: int, group: str, names: set[str]
) -> None:
    """A station after ``of``: its page, its tolerances, and what people ask."""
    station = demo.station(of)
    assert station is not None
    own = {tolerance.id: f"{tolerance.id}-{turn}" for tolerance in demo.tolerances_of(of)}
    new = f"{of}-{turn}"

    def renamed(found: re.Match[str]) -> str:
        kind, id, end = found.groups()
        if kind == "station":
            return f"[[station:{id}-{turn}{end}" if f"{id}-{turn}" in names else found[0]
        return f"[[{'tol:' if kind else ''}{own.get(id, id)}{end}"

    def other(text: str) -> str:
        return REFERENCE.sub(renamed, text)

    front = dict(station.page.front)
    front |= {
        "title": f"{station.title} {turn}", "station": new, "order": 1000 + at, "group": group,
        "summary": f"{front['summary']} So on bench {turn}.",
    }  # fmt: skip
    follows = [f"{id}-{turn}" for id in front.pop("follows", ()) if f"{id}-{turn}" in names]
    if follows:
        front["follows"] = follows
    if front.pop("calculators", None):  # placed on the page; an order is built at the first bench
        front["no_calculator"] = "Set at the first bench."
    body = other(station.page.body)
    body = re.sub(
        r"^(### .+)$", rf"\1\n\nOn bench {turn} as on the first.", body, flags=re.MULTILINE
    )
    elsewhere = "".join(f" [[{id}]]" for id in own.values() if f"[[{id}" not in body)
    body = body.replace("\n## What good looks like", f"{elsewhere}\n\n## What good looks like")
    (docs / f"stations/{new}.md").write_text(f"---\n{_dump(front)}---\n{body}", "utf-8")
    tolerances = {}
    for tolerance in demo.tolerances_of(of):
        fields = {
            name: value
            for name, value in tolerance.entry.fields.items()
            if name not in ("agrees_with", "feeds")
        }
        fields["reason"] = f"{fields['reason']} So on bench {turn}."
        fields["when_out"] = other(str(fields["when_out"]))
        tolerances[own[tolerance.id]] = fields
    (docs / f"data/tolerances/{new}.yml").write_text(_dump(tolerances), "utf-8")
    asked = {}
    for id, entry in demo.entries["asked"].items():
        place = id.partition("#")
        key = own.get(id) or (f"{new}#{place[2]}" if place[0] == of and place[1] else "")
        if key:
            asked[key] = [f"{phrase} on bench {turn}" for phrase in entry.fields]
    (docs / f"data/asked/{new}.yml").write_text(_dump(asked), "utf-8")


def _write_plain(docs: Path, demo: Handbook, at: int) -> None:
    """A page of plain Markdown: the words of a station without its blocks."""
    station = demo.stations[at % len(demo.stations)]
    body = re.sub(r"^/// .*?^///$", "", station.page.body, flags=re.MULTILINE | re.DOTALL)
    folder = docs / "notes" / f"shelf-{at // GROUP + 1}"
    folder.mkdir(parents=True, exist_ok=True)
    text = (
        f"---\ntitle: Note {at + 1}\n---\n\n# Note {at + 1}\n\nSee [the station]"
        f"(../../stations/{station.id}.md#steps). Note {at + 1} of the shop.\n\n{body.strip()}\n"
    )
    (folder / f"note-{at + 1}.md").write_text(text, "utf-8")


def _dump(value: Any) -> str:
    return yaml.safe_dump(value, sort_keys=False, allow_unicode=True, width=1000)


def lay_out_plain(folder: Path, handbook: Handbook) -> None:
    """A plain MkDocs project with a handbook's Markdown and the same order of the book."""
    texts = {
        page.source: (handbook.docs / page.source).read_text("utf-8") for page in handbook.pages
    }
    for source, text in (texts | generated_pages(handbook)).items():
        target = folder / "docs" / source
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_text(text, "utf-8")
    shutil.copytree(ROOT / "docs" / "assets", folder / "docs" / "assets")
    config = without_ours((ROOT / "mkdocs.yml").read_text("utf-8"))
    if len(handbook.pages) > MANY_PAGES:
        config = config.replace("    - navigation.sections\n", "")
    nav = [entry for entry in navigation(handbook) if all(entry.values())]
    (folder / "mkdocs.yml").write_text(f"{config}\n{_dump({'nav': nav})}", "utf-8")


def measure_growth(work: Path) -> dict[int, dict[str, list[float]]]:
    """Seconds of ours from nothing kept, of ours again, and of plain, by the written pages."""
    found: dict[int, dict[str, list[float]]] = {}
    for count in PAGES:
        ours, plain = work / f"ours-{count}", work / f"plain-{count}"
        handbook = lay_out_growth(ours, count)
        lay_out_plain(plain, handbook)
        build = [sys.executable, "-m", "mkdocs", "build", "-q", "-d"]
        mine: dict[str, list[float]] = {"first": [], "again": [], "plain": []}
        for _ in range(TIMES):
            forget_kept(ours / ".cache" / "benchrule")
            mine["first"].append(processor_seconds([*build, str(work / "built")], ours))
            mine["again"].append(processor_seconds([*build, str(work / "built")], ours))
            mine["plain"].append(processor_seconds([*build, str(work / "built-plain")], plain))
        mine["pages"] = [float(len(list((work / "built-plain").rglob("*.html"))))]
        found[count] = mine
        for folder in (ours, plain, work / "built", work / "built-plain"):
            shutil.rmtree(folder)
    return found
