"""The speed figures, measured side by side in one run: ``make bench``.
``python -m tests.bench start`` measures a part: build, orders, start or recompute.

Start: from a new worker to the first live answer, ours against a plain start of the unmodified npm
runtime with the same calculators as source, and ours with the first four calculators alone, all in
the same browser, in turn. Cold is a new
profile each time; warm is a later load in a profile that has them in its cache.
Recompute: from an entry to the answer standing in the page.
Build: the whole handbook, against plain MkDocs with Material on the same Markdown.
"""

import contextlib
import http.server
import json
import os
import platform
import shutil
import statistics
import subprocess
import sys
import tempfile
import threading
import zipfile
from collections.abc import Iterator
from functools import partial
from pathlib import Path
from typing import Any

from playwright.sync_api import BrowserContext, Page, Playwright, sync_playwright

from benchrule.web_packages import web_package
from calculators.engine.declaration import Number
from calculators.engine.registry import load, modules
from tests.bench.building import measure_builds
from tests.bench.four import runtime_with_four
from tests.bench.orders import measure_orders
from tests.chromium import FLAGS

ROOT = Path(__file__).parents[2]
STARTS = int(os.environ.get("BENCH_STARTS", "5"))
BUILDS = int(os.environ.get("BENCH_BUILDS", "3"))
WHICH = ("ours", "four", "plain")
WARM_UP = 3
STAY_MS = 4000
RECOMPUTES = int(os.environ.get("BENCH_RECOMPUTES", "200"))
FRAME_MS = 1000 / 60

PLAIN_WORKER = """
import { loadPyodide } from "./pyodide.mjs";
onmessage = async ({ data }) => {
  const python = await loadPyodide();
  const archive = await (await fetch("calculators.zip")).arrayBuffer();
  python.FS.mkdirTree("/app");
  python.unpackArchive(archive, "zip", { extractDir: "/app" });
  python.runPython("import sys; sys.path.insert(0, '/app')");
  const door = python.pyimport("calculators.engine.door");
  postMessage(door.live(data));
};
"""
PAGE = """<!doctype html><title>bench</title><script type="module">
const request = JSON.stringify({calculator: "fret-spacing", inputs: {scale_length: "640"},
  parts: ["headline", "results", "cautions", "drawings", "tables"]});  // what a page has in sight
window.plain = (keep) => new Promise((resolve, reject) => {
  const from = performance.now();
  const worker = new Worker("plain/worker.mjs", {type: "module"});
  worker.onerror = (e) => reject(new Error(e.message));
  worker.onmessage = () => {
    const took = performance.now() - from;
    setTimeout(() => { worker.terminate(); resolve(took); }, keep);
  };
  worker.postMessage(request);
});
const packed = (folder) => (keep) => new Promise((resolve, reject) => {
  const from = performance.now();
  const worker = new Worker(`${folder}/worker.mjs`, {type: "module"});
  worker.postMessage({id: 1, prepare: "fret-spacing"});  // as the page does
  worker.onerror = (e) => reject(new Error(e.message));
  worker.onmessage = ({data}) => {
    const fault = data.broken || data.failed || data.missing;
    if (fault) reject(new Error(fault));
    if (data.id === 1) worker.postMessage({id: 2, ask: "live", text: request});
    if (data.id === 2) {
      const took = performance.now() - from;
      setTimeout(() => { worker.terminate(); resolve(took); }, keep);
    }
  };
});
window.ours = packed("ours");
window.four = packed("four");
</script>"""


class CachingHandler(http.server.SimpleHTTPRequestHandler):
    """Serves files as a static host does: compressed where the browser takes it, cached for good."""

    protocol_version = "HTTP/1.1"

    def end_headers(self) -> None:
        if "." in self.path.rpartition("/")[2]:
            self.send_header("Cache-Control", "public, max-age=31536000, immutable")
        super().end_headers()

    def log_message(self, format: str, *args: Any) -> None:
        """Keeps quiet."""


@contextlib.contextmanager
def serving(folder: Path) -> Iterator[str]:
    handler = partial(CachingHandler, directory=str(folder))
    server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), handler)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    yield f"http://127.0.0.1:{server.server_address[1]}/"
    server.shutdown()


def lay_out(folder: Path, site: Path) -> None:
    """The bench page, our packed runtime, and the plain one with the calculators as source."""
    (folder / "index.html").write_text(PAGE)
    shutil.copytree(next((site / "runtime").iterdir()), folder / "ours")
    shutil.copytree(runtime_with_four(folder), folder / "four")
    plain = folder / "plain"
    plain.mkdir()
    pyodide = web_package("pyodide")
    for name in ("pyodide.mjs", "pyodide.asm.mjs", "pyodide.asm.wasm", "python_stdlib.zip",
                 "pyodide-lock.json"):  # fmt: skip
        shutil.copyfile(pyodide / name, plain / name)
    (plain / "worker.mjs").write_text(PLAIN_WORKER)
    with zipfile.ZipFile(plain / "calculators.zip", "w", zipfile.ZIP_DEFLATED) as archive:
        for path in sorted((ROOT / "calculators").rglob("*.py")):
            archive.write(path, path.relative_to(ROOT).as_posix())


def open_profile(playwright: Playwright, folder: str) -> BrowserContext:
    path = os.environ.get("CHROMIUM") or "/usr/bin/chromium"
    return playwright.chromium.launch_persistent_context(folder, executable_path=path, args=FLAGS)


def in_turn(turn: int) -> tuple[str, ...]:
    """Which is measured first changes from turn to turn."""
    place = turn % len(WHICH)
    return WHICH[place:] + WHICH[:place]


def measure_starts(playwright: Playwright, address: str) -> dict[str, dict[str, list[float]]]:
    """Cold: a new profile each time. Warm: one profile, the two in turn.

    A browser keeps compiled code only after a worker has lived for some seconds, as it does while
    a page is read; so each is visited and left to live a few times first.
    """
    found: dict[str, dict[str, list[float]]] = {"cold": {}, "warm": {}}
    for turn in range(STARTS):
        for which in in_turn(turn):
            with tempfile.TemporaryDirectory() as profile:
                context = open_profile(playwright, profile)
                page = context.new_page()
                page.goto(address)
                found["cold"].setdefault(which, []).append(page.evaluate(f"{which}(0)"))
                context.close()
    with tempfile.TemporaryDirectory() as profile:
        context = open_profile(playwright, profile)
        page = context.new_page()
        for turn in range(WARM_UP + 2 * STARTS):
            for which in in_turn(turn):
                page.goto(address)
                took = page.evaluate(f"{which}({STAY_MS if turn < WARM_UP else 300})")
                if turn >= WARM_UP:
                    found["warm"].setdefault(which, []).append(took)
        context.close()
    return found


def measure_recomputes(page: Page, address: str) -> dict[str, dict[str, float]]:
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
        times.sort()
        found[name] = {
            "p50": times[len(times) // 2], "p95": times[int(len(times) * 0.95)], "most": times[-1],
        }  # fmt: skip
    return found


def main() -> None:
    parts = sys.argv[1:] or [
        "build",
        "orders",
        "start",
        "recompute",
    ]  # what to measure: all, or those named
    measured: dict[str, Any] = {}
    with tempfile.TemporaryDirectory() as work:
        site = Path(work) / "site"
        subprocess.run(
            [sys.executable, "-m", "mkdocs", "build", "-q", "-d", str(site)],
            cwd=ROOT, check=True, env={**os.environ, "SITE_URL": "http://127.0.0.1/"},
        )  # fmt: skip
        if "build" in parts:
            measured["builds"] = measure_builds(Path(work), BUILDS)
        if "orders" in parts:
            build = [sys.executable, "-m", "mkdocs", "build", "-q"]
            measured["orders"] = measure_orders(Path(work), build)
        runtime = next((site / "runtime").iterdir())
        measured["sizes"] = {path.name: path.stat().st_size for path in runtime.iterdir()}
        bench = Path(work) / "bench"
        bench.mkdir()
        if "start" in parts:
            lay_out(bench, site)
        with sync_playwright() as playwright, serving(bench) as address, serving(site) as pages:
            if "start" in parts:
                measured["starts"] = measure_starts(playwright, address)
            if "recompute" in parts:
                with tempfile.TemporaryDirectory() as profile:
                    context = open_profile(playwright, profile)
                    measured["recomputes"] = measure_recomputes(context.new_page(), pages)
                    context.close()
    print(f"{platform.machine()}, {os.cpu_count()} cores, Python {platform.python_version()}")
    for name, say in (("starts", say_starts), ("recomputes", say_recomputes),
                      ("builds", say_builds), ("orders", say_orders), ("sizes", say_sizes)):  # fmt: skip
        if name in measured:
            say(measured[name])
    path = ROOT / ".cache" / "bench.json"
    path.parent.mkdir(exist_ok=True)
    path.write_text(json.dumps(measured, indent=1))
    print(f"Written to {path.relative_to(ROOT)}")


def say_starts(starts: dict[str, dict[str, list[float]]]) -> None:
    print(f"\nStart: new worker to first answer, medians of {STARTS} (least to most), ms")
    for kind, found in starts.items():
        middle = {which: statistics.median(times) for which, times in found.items()}
        for which, times in found.items():
            print(
                f"  {kind:5} {which:6} {middle[which]:7.0f}  ({min(times):.0f} to {max(times):.0f})"
            )
        print(f"  {kind:5} ours / plain  {middle['ours'] / middle['plain']:7.2f}")
        print(f"  {kind:5} ours / four   {middle['ours'] / middle['four']:7.2f}")


def say_recomputes(recomputes: dict[str, dict[str, float]]) -> None:
    print(f"\nRecompute on the page, {RECOMPUTES} entries each, ms (one frame is {FRAME_MS:.1f})")
    for name, found in recomputes.items():
        print(
            f"  {name:20} p50 {found['p50']:5.1f}  p95 {found['p95']:5.1f}  most {found['most']:5.1f}"
        )


def say_builds(builds: dict[str, list[float]]) -> None:
    middle = {name: statistics.median(times) for name, times in builds.items()}
    print(
        "\nBuild, processor seconds, runtime packed before; plain is MkDocs with Material on the same"
    )
    print(f"  plain {middle['plain']:.2f}")
    for name, words in (("first", "nothing kept"), ("again", "built before")):
        print(f"  ours, {words:13} {middle[name]:.2f}  ratio {middle[name] / middle['plain']:.2f}")


def say_orders(orders: dict[int, float]) -> None:
    print("\nBuild with more and more orders, processor seconds, nothing kept")
    for count, seconds in orders.items():
        print(f"  {count:4} orders {seconds:6.1f}")
    least, most = min(orders), max(orders)
    each = (orders[most] - orders[least]) / (most - least)
    print(f"  each order more: {each * 1000:.0f} ms")


def say_sizes(sizes: dict[str, int]) -> None:
    print(f"\nRuntime: {sum(sizes.values()) / 1e6:.1f} MB on disk")


if __name__ == "__main__":
    main()
