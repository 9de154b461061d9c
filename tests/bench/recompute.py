"""Recompute: from an entry to the answer standing in the page, on each calculator's page."""

import os
import statistics
import tempfile
from pathlib import Path
from typing import Any

from playwright.sync_api import Page, Playwright

from calculators.engine.declaration import Number
from calculators.engine.registry import load, modules

from .chromium import open_profile
from .figures import spread
from .rows import Row, seconds
from .server import serving

RECOMPUTES = int(os.environ.get("BENCH_RECOMPUTES", "200"))
FRAME_MS = 1000 / 60


def measure_pages(page: Page, address: str) -> dict[str, dict[str, float]]:
    """Each calculator's page: a figure is changed again and again, as typing does."""
    found = {}
    for name in modules():
        page.goto(f"{address}calculators/{name}/")
        item = next(
            i for i in load(name).inputs
            if isinstance(i, Number) and not i.whole and i.when is None and i.example > 1
        )  # fmt: skip
        times = page.evaluate(
            """async ([field, example, turns]) => {
              const entry = document.getElementById(field);
              const next = () => new Promise((r) => document.addEventListener(
                "benchrule:answer", (e) => r(e.detail.milliseconds), {once: true}));
              const times = [];
              for (let turn = 0; turn < turns + 20; turn++) {
                const answered = next();
                entry.value = String(example * (1 + 0.0005 * (turn % 40)));
                entry.dispatchEvent(new Event("input", {bubbles: true}));
                times.push(await answered);
                await new Promise((r) => setTimeout(r, 30));
              }
              return times.slice(20);
            }""",
            [f"{name}--{item.name}", item.example, RECOMPUTES],
        )
        found[name] = spread(times)
    return found


def measure_recompute(playwright: Playwright, site: Path) -> dict[str, Any]:
    """Milliseconds of each calculator."""
    with serving(site) as host, tempfile.TemporaryDirectory() as profile:
        context = open_profile(playwright, profile)
        try:
            return measure_pages(context.new_page(), host.address)
        finally:
            context.close()


def recompute_rows(found: dict[str, Any]) -> list[Row]:
    """The middle one, the slowest, and how many keep within a frame."""
    slowest = max(found, key=lambda name: found[name]["p95"])
    in_frame = sum(one["p95"] <= FRAME_MS for one in found.values())
    frame = f"a frame, {FRAME_MS:.1f} ms"
    middle = statistics.median(one["p50"] for one in found.values())
    most = found[slowest]["p95"]
    return [
        Row("The middle calculator, half of its answers within", f"{middle:.1f} ms", frame,
            middle <= FRAME_MS),
        Row(f"The slowest ({slowest}), 95 of 100 answers within", seconds(most), frame,
            most <= FRAME_MS),
        Row("Calculators with 95 of 100 answers within a frame", f"{in_frame} of {len(found)}",
            "all", in_frame == len(found)),
    ]  # fmt: skip
