"""The speed figures: ``make bench`` measures every part, ``python -m tests.bench start`` one of them.

Each part is kept in ``.cache/bench.json`` with the machine, the versions, the commit and the day, in
the place of its last figures. ``--page`` writes the page of figures from what is kept; with no part
named it measures nothing.
"""

import argparse
import tempfile
import time
from pathlib import Path

from playwright.sync_api import sync_playwright

from . import records
from .parts import PARTS, Bench
from .report import in_terminal, write_page


def main() -> None:
    """Measures the parts named, all of them where none is, and prints their table."""
    asked = argparse.ArgumentParser(prog="python -m tests.bench", description=__doc__)
    asked.add_argument("parts", nargs="*", metavar="part", help=", ".join(PARTS))
    asked.add_argument("--page", action="store_true", help="write docs/how-fast.md")
    options = asked.parse_args()
    strange = set(options.parts) - set(PARTS)
    if strange:
        asked.error(f"no part {', '.join(sorted(strange))}; there are {', '.join(PARTS)}")
    names = options.parts or ([] if options.page else list(PARTS))
    if names:
        names = measure(names)
        print(in_terminal(records.read(), names))
    if options.page:
        print(f"Written: {write_page(records.publish()).relative_to(records.ROOT)}")


def measure(names: list[str]) -> list[str]:
    """Measures parts one by one, each kept as soon as it is done; gives those that could be."""
    done = []
    with tempfile.TemporaryDirectory() as work, sync_playwright() as playwright:
        bench = Bench(Path(work), playwright)
        for name in names:
            made, began = records.circumstances(), time.monotonic()
            figures = PARTS[name].measure(bench)
            if figures is None:
                print(f"{name}: left out; a tool that it needs is not on this machine")
                continue
            records.add(name, figures, made, time.monotonic() - began)
            print(f"{name}: {time.monotonic() - began:.0f} s", flush=True)
            done.append(name)
    return done


if __name__ == "__main__":
    main()
