"""The parts of the bench: what each measures and what it says."""

import os
import subprocess
import sys
from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path
from typing import Any

from playwright.sync_api import Playwright

from .building import build_rows, growth_rows, measure_builds
from .first_visit import first_visit_rows, measure_first_visit
from .growth import measure_growth
from .host import host_rows, measure_host
from .orders import measure_orders, orders_rows
from .rebuild import measure_rebuild, rebuild_rows
from .recompute import measure_recompute, recompute_rows
from .rows import Row
from .search import measure_search, search_rows
from .start import measure_start, start_rows

ROOT = Path(__file__).parents[2]


@dataclass
class Bench:
    """What the parts share: a folder to work in, the browser's driver, the built site."""

    work: Path
    playwright: Playwright

    @cached_property
    def site(self) -> Path:
        """The demo handbook, built when the first part asks for it."""
        folder = self.work / "site"
        subprocess.run(
            [sys.executable, "-m", "mkdocs", "build", "-q", "-d", str(folder)], cwd=ROOT, check=True,
            env={**os.environ, "SITE_URL": "http://127.0.0.1/", "NO_MKDOCS_2_WARNING": "1"},
        )  # fmt: skip
        return folder

    def folder(self, name: str) -> Path:
        """A new folder for a part's own things."""
        made = self.work / name
        made.mkdir()
        return made


@dataclass(frozen=True)
class Part:
    """A part: its title, how it is measured, the measuring, and the rows it makes of the figures.

    Measuring gives what JSON can hold, or None where a tool that it needs is not on this machine.
    """

    title: str
    about: str
    measure: Callable[[Bench], Any]
    rows: Callable[[Any], list[Row]]


def by_text(found: dict[int, Any]) -> dict[str, Any]:
    """The same, as JSON names things."""
    return {str(count): figures for count, figures in found.items()}


PARTS = {
    "bytes": Part(
        "Bytes of a first visit",
        "A station is opened in a new browser through a host that compresses with gzip, and read to "
        "its end without a calculator being used. Everything that comes over the wire counts, "
        "headers too, but for pictures and what is then saved in the background.",
        lambda bench: measure_first_visit(bench.playwright, bench.site), first_visit_rows,
    ),
    "start": Part(
        "Start of a calculator",
        "From the start of the runtime to the first live answer, the host on the same machine, "
        "against the unmodified runtime from npm with the same calculators as source. Cold is a new "
        "browser; warm is a later visit on a device that has the handbook saved and a start kept. Medians.",
        lambda bench: measure_start(bench.playwright, bench.site, bench.folder("start")), start_rows,
    ),
    "recompute": Part(
        "Answers as one types",
        "From an entry to the answer standing in the page, on the page of every calculator.",
        lambda bench: measure_recompute(bench.playwright, bench.site), recompute_rows,
    ),
    "search": Part(
        "Search",
        "Questions of everyday work, typed key by key, from the list that the search is tested with.",
        lambda bench: measure_search(bench.playwright, bench.site), search_rows,
    ),
    "build": Part(
        "Build",
        "Processor time of the whole command, against plain MkDocs with Material on the same "
        "Markdown with none of our work done. Medians.",
        lambda bench: measure_builds(bench.folder("build")), build_rows,
    ),
    "growth": Part(
        "Build with more and more pages",
        "Processor time, against plain MkDocs with Material on the same Markdown. The pages are "
        "written after the demo's: stations with all their tolerances, and one in five of plain "
        "Markdown. `BENCH_PAGES` names the sizes.",
        lambda bench: by_text(measure_growth(bench.folder("growth"))),
        growth_rows,
    ),
    "rebuild": Part(
        "From a word changed to the page",
        "A word is changed in a station of a handbook of some hundred pages while `benchrule serve` "
        "runs, and in the same Markdown under plain `mkdocs serve`. Medians.",
        lambda bench: measure_rebuild(bench.folder("rebuild")),
        rebuild_rows,
    ),
    "orders": Part(
        "Build with more and more orders",
        "Processor time of a first build. Each order is a sheet of every station, its templates and "
        "its files.",
        lambda bench: measure_orders(bench.folder("orders")), orders_rows,
    ),
    "host": Part(
        "What a static host carries",
        "nginx as [Putting the handbook on a host](hosting.md) sets it up, one worker, loaded by wrk "
        "on the same machine: the load takes its share of the processor, so a host of its own carries "
        "more.",
        lambda bench: measure_host(bench.playwright, bench.site, bench.folder("host")), host_rows,
    ),
}  # fmt: skip
