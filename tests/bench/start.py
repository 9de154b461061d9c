"""Start: from a new worker to the first live answer.

Ours against a plain start of the unmodified npm runtime with the same calculators as source, and
ours with the first four calculators alone, all in the same browser, in turn. Cold is a new profile
each time; warm is a later load in a profile that has them in its cache and, of ours, a start that was
kept (see ``kept_start.mjs``); ``unkept`` is ours without.
"""

import os
import shutil
import tempfile
import zipfile
from pathlib import Path
from typing import Any

from playwright.sync_api import Playwright

from benchrule.web_packages import web_package

from .chromium import open_profile
from .figures import spread
from .four import runtime_with_four
from .rows import Row, seconds
from .server import serving

ROOT = Path(__file__).parents[2]
STARTS = int(os.environ.get("BENCH_STARTS", "5"))
COLD = ("ours", "four", "plain")
WARM = ("ours", "four", "plain", "unkept")
WARM_UP = 3
STAY_MS = 4000
AIMS = {"cold": 0.5, "warm": 0.25}

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
    const fault = data.amiss || data.failed || data.ended;
    if (fault) reject(new Error(JSON.stringify(fault)));
    if (data.begun) return;
    if (data.id === 1) worker.postMessage({id: 2, ask: "live", text: request});
    if (data.id === 2) {
      const took = performance.now() - from;
      setTimeout(() => { worker.terminate(); resolve(took); }, keep);
    }
  };
});
window.ours = packed("ours");
window.four = packed("four");
window.unkept = packed("unkept");
window.keepStart = (folder) => new Promise((resolve, reject) => {
  const worker = new Worker(`${folder}/worker.mjs`, {type: "module", name: "keeper"});
  worker.onerror = (e) => reject(new Error(e.message));
  worker.onmessage = ({data}) => {
    worker.terminate();
    if (data.kept) resolve();
    else reject(new Error(JSON.stringify(data)));
  };
});
</script>"""


def lay_out(folder: Path, site: Path) -> None:
    """The bench page, our packed runtime, and the plain one with the calculators as source."""
    (folder / "index.html").write_text(PAGE)
    shutil.copytree(next((site / "runtime").iterdir()), folder / "ours")
    shutil.copytree(folder / "ours", folder / "unkept")
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


def in_turn(which: tuple[str, ...], turn: int) -> tuple[str, ...]:
    """Which is measured first changes from turn to turn."""
    place = turn % len(which)
    return which[place:] + which[:place]


def measure_in_turn(playwright: Playwright, address: str) -> dict[str, dict[str, list[float]]]:
    """Cold: a new profile each time. Warm: one profile, all of them in turn.

    A browser keeps compiled code only after a worker has lived for some seconds, as it does while
    a page is read; so each is visited and left to live a few times first.
    """
    found: dict[str, dict[str, list[float]]] = {"cold": {}, "warm": {}}
    for turn in range(STARTS):
        for which in in_turn(COLD, turn):
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
            if turn == WARM_UP:
                for folder in ("ours", "four"):
                    page.evaluate(f"keepStart('{folder}')")
            for which in in_turn(WARM, turn):
                page.goto(address)
                took = page.evaluate(f"{which}({STAY_MS if turn < WARM_UP else 300})")
                if turn >= WARM_UP:
                    found["warm"].setdefault(which, []).append(took)
        context.close()
    return found


def measure_start(playwright: Playwright, site: Path, work: Path) -> dict[str, Any]:
    """Milliseconds of each, cold and warm."""
    bench = work / "bench"
    bench.mkdir()
    lay_out(bench, site)
    with serving(bench, for_good=("",)) as host:
        found = measure_in_turn(playwright, host.address)
    return {
        kind: {which: spread(times) for which, times in of_kind.items()}
        for kind, of_kind in found.items()
    }


def start_rows(found: dict[str, Any]) -> list[Row]:
    """Ours, plain, and one by the other."""
    rows = []
    for kind, aim in AIMS.items():
        ours, plain, four = (found[kind][which]["p50"] for which in ("ours", "plain", "four"))
        rows += [
            Row(f"{kind.capitalize()}, ours", seconds(ours)),
            Row(f"{kind.capitalize()}, a plain start", seconds(plain)),
            Row(f"{kind.capitalize()}, ours by plain", f"{ours / plain:.2f}", f"at most {aim}",
                ours / plain <= aim),
            Row(f"{kind.capitalize()}, all calculators by the first four", f"{ours / four:.2f}"),
        ]  # fmt: skip
    unkept, plain = (found["warm"][which]["p50"] for which in ("unkept", "plain"))
    rows.append(Row("Warm, ours by plain, before a start is kept", f"{unkept / plain:.2f}"))
    return rows
