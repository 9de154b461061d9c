"""From a word changed to the page with it: ``benchrule serve``, and plain ``mkdocs serve`` beside it."""

import contextlib
import os
import re
import statistics
import subprocess
import sys
import threading
import time
import urllib.error
import urllib.request
from collections.abc import Iterator
from pathlib import Path

from .growth import lay_out_growth, lay_out_plain
from .rows import Row

PAGES = int(os.environ.get("BENCH_SERVED_PAGES", "300"))
EDITS = int(os.environ.get("BENCH_EDITS", "5"))
PORT = int(os.environ.get("BENCH_PORT", "9125"))
STATION = "neck-fit"
FIRST_BUILD_S, REBUILD_S = 900, 300
AIM_S = 2.0
WORD = re.compile(r"(?<=\n## Purpose\n\n)")
STARTED = re.compile(r"/livereload/(\d+)/|livereload\((\d+), ")


@contextlib.contextmanager
def serving(command: list[str], folder: Path, address: str) -> Iterator[None]:
    """The command runs until the end, its site answering from the beginning."""
    env = {**os.environ, "NO_MKDOCS_2_WARNING": "1", "SITE_URL": address,
           "BENCHRULE_ADDRESS": f"127.0.0.1:{PORT}"}  # fmt: skip
    process = subprocess.Popen(
        command, cwd=folder, env=env, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL
    )
    try:
        until = time.monotonic() + FIRST_BUILD_S
        while not answers(address):
            if process.poll() is not None or time.monotonic() > until:
                raise RuntimeError(f"{' '.join(command)} serves nothing")
            time.sleep(0.2)
        yield
    finally:
        process.terminate()
        process.wait()


def answers(address: str) -> bool:
    """Whether a server is there."""
    try:
        with urllib.request.urlopen(address, timeout=5):
            return True
    except (urllib.error.URLError, OSError):
        return False


def changes(source: Path, address: str, page: str, written: Path | None) -> dict[str, list[float]]:
    """Seconds from each change of a word until the page holds it, and until the browser is told."""
    found: dict[str, list[float]] = {"told": [], **({"written": []} if written else {})}
    text = source.read_text("utf-8")
    for number in range(EDITS):
        with urllib.request.urlopen(address + page, timeout=60) as answer:
            epochs = STARTED.search(answer.read().decode())
        assert epochs is not None, "the page does not wait for a change"
        epoch = epochs[1] or epochs[2]
        told: list[float] = []

        def wait(asked: str = f"{epoch}/{number}", told: list[float] = told) -> None:
            path = f"{address}livereload/{asked}"
            with urllib.request.urlopen(path, timeout=REBUILD_S) as answer:
                answer.read()
            told.append(time.monotonic())

        waiting = threading.Thread(target=wait)
        waiting.start()
        time.sleep(1)
        word = f"Newword{number}"
        source.write_text(WORD.sub(f"{word} ", text, count=1), "utf-8")
        began = time.monotonic()
        while written and word not in (written.read_text("utf-8") if written.exists() else ""):
            time.sleep(0.02)
            assert time.monotonic() - began < REBUILD_S, "the word does not come"
        if written:
            found["written"].append(time.monotonic() - began)
        waiting.join()
        found["told"].append(told[0] - began)
    return found


def measure_rebuild(work: Path) -> dict[str, dict[str, list[float]]]:
    """Ours and plain, one after the other, on the same words."""
    ours, plain = work / "ours", work / "plain"
    handbook = lay_out_growth(ours, PAGES)
    lay_out_plain(plain, handbook)
    address, page = f"http://127.0.0.1:{PORT}/", f"stations/{STATION}/"
    source = f"docs/stations/{STATION}.md"
    found = {}
    with serving(
        [sys.executable, "-c", "from benchrule.cli import main; main()", "serve"], ours, address
    ):
        site = ours / "site" / page / "index.html"
        found["ours"] = changes(ours / source, address, page, site)
    with serving([sys.executable, "-m", "mkdocs", "serve", "-q", "-a", f"127.0.0.1:{PORT}"],
                 plain, address):  # fmt: skip
        found["plain"] = changes(plain / source, address, page, None)
    return found


def rebuild_rows(found: dict[str, dict[str, list[float]]]) -> list[Row]:
    """Ours against the aim, and against plain."""
    middle = {
        which: {what: statistics.median(times) for what, times in mine.items()}
        for which, mine in found.items()
    }
    ours, plain = middle["ours"]["told"], middle["plain"]["told"]
    return [
        Row("The page in the site's folder", f"{middle['ours']['written']:.1f} s"),
        Row("The browser is told", f"{ours:.1f} s", f"under {AIM_S:.0f} s", ours < AIM_S),
        Row("Plain: the browser is told", f"{plain:.1f} s; ours takes {ours / plain:.2f} of it"),
    ]
