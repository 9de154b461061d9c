"""Bytes of a first visit: what comes over the wire when a station is opened and only read.

A new profile in a real browser, a host that compresses. Each file counts with its headers. Pictures
are not counted; what the service worker then saves for use without a network is counted apart.
"""

import json
import statistics
import subprocess
from collections.abc import Iterable
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from playwright.sync_api import BrowserContext, Page, Playwright, Request

from .chromium import launched
from .rows import Row, kilobytes
from .server import COMPRESSED, TYPES, Host, Sent, gzipped, serving

AIM_BYTES = 400_000
READING_MS = 4000
"""How long the page is left to fetch what it wants: longer than any idle time it waits for."""
SCROLLS = 12
QUIET_MS = 3000
"""So long without a request, nothing more is coming."""
LONGEST_MS = 180_000


BROTLI = """
const { brotliCompressSync } = require("node:zlib");  // its usual level is 11
const { readFileSync } = require("node:fs");
const sizes = process.argv.slice(1).map((path) => brotliCompressSync(readFileSync(path)).length);
process.stdout.write(JSON.stringify(sizes));
"""


@dataclass
class Visit:
    """What a visit fetched: address below the root → bytes with headers."""

    page: dict[str, int] = field(default_factory=dict)
    background: dict[str, int] = field(default_factory=dict)
    by_browser: dict[str, int] = field(default_factory=dict)
    """As the browser counts it (``encodedDataLength``): nothing for the scripts of workers, nor for
    an answer "not changed", which is headers alone."""
    not_changed: dict[str, int] = field(default_factory=dict)
    """What of ``page`` were such answers."""


def heaviest_station(site: Path) -> str:
    """The address of the station whose page weighs most."""
    pages = station_pages(site)
    return max(pages, key=lambda name: pages[name])


def station_pages(site: Path) -> dict[str, int]:
    """Each station's address, and its page's bytes as they are sent."""
    return {
        f"stations/{page.parent.name}/": len(gzipped(page.read_bytes()))
        for page in sorted((site / "stations").glob("*/index.html"))
    }


def watch(context: BrowserContext, address: str) -> list[Request]:
    """Notes what the context's pages and their workers fetch from ``address``, as it ends."""
    ended: list[Request] = []
    context.on(
        "requestfinished",
        lambda request: ended.append(request) if request.url.startswith(address) else None,
    )
    return ended


def read_to_the_end(page: Page) -> None:
    """Reads as one does who touches nothing: waits, scrolls to the end, waits."""
    page.wait_for_timeout(READING_MS / 2)
    for _ in range(SCROLLS):
        page.mouse.wheel(0, 3000)
        page.wait_for_timeout(100)
    page.evaluate("scrollTo(0, document.body.scrollHeight)")
    page.wait_for_timeout(READING_MS)


def visit(playwright: Playwright, site: Path, station: str, saved: bool = True) -> Visit:
    """Opens a station in a new profile, reads it, and waits until all is still.

    ``saved``: the browser lets the handbook be saved for use without a network.
    """
    with serving(site) as host, launched(playwright) as browser:
        context = browser.new_context(
            viewport={"width": 1280, "height": 900}, service_workers="allow" if saved else "block"
        )  # fmt: skip
        ended = watch(context, host.address)
        page = context.new_page()
        page.goto(host.address + station)
        read_to_the_end(page)
        if saved:
            wait_until_saved(page)
        wait_until_still(page, host)
        return Visit(
            page=weigh(sent for sent in host.sent if not sent.in_background),
            background=weigh(sent for sent in host.sent if sent.in_background),
            by_browser=weigh(sizes(ended, host.address)),
            not_changed=weigh(
                sent for sent in host.sent if sent.not_changed and not sent.in_background
            ),
        )


def wait_until_saved(page: Page) -> None:
    """Waits until the service worker has the whole handbook."""
    done = page.evaluate(
        """(longest) => Promise.race([
          navigator.serviceWorker.ready.then(() => true),
          new Promise((resolve) => setTimeout(() => resolve(false), longest)),
        ])""",
        LONGEST_MS,
    )
    if not done:
        raise TimeoutError(f"the handbook was not saved within {LONGEST_MS / 1000:.0f} s")


def wait_until_still(page: Page, host: Host) -> None:
    """Waits until the host was asked for nothing for a while."""
    for _ in range(LONGEST_MS // QUIET_MS):
        before = len(host.sent)
        page.wait_for_timeout(QUIET_MS)
        if len(host.sent) == before:
            return
    raise TimeoutError(f"the page still fetches after {LONGEST_MS / 1000:.0f} s")


def sizes(ended: Iterable[Request], address: str) -> Iterable[Sent]:
    """What the browser says each file took, where it says so."""
    for request in ended:
        size = request.sizes()
        if request.service_worker is None and size["responseBodySize"]:
            name = request.url.removeprefix(address).partition("#")[0].partition("?")[0]
            yield Sent(name, size["responseBodySize"] + size["responseHeadersSize"], False)


def weigh(every: Iterable[Sent]) -> dict[str, int]:
    """Bytes by address, the heaviest first; pictures are left out."""
    found: dict[str, int] = {}
    for sent in every:
        if not TYPES.get(Path(sent.address).suffix, "").startswith("image/"):
            found[sent.address] = found.get(sent.address, 0) + sent.bytes
    return dict(sorted(found.items(), key=lambda one: -one[1]))


def with_brotli(site: Path, page: dict[str, int]) -> int:
    """What the same files weigh from a host that has them compressed beforehand, Brotli level 11."""
    paths = [
        site / name / "index.html" if not name or name.endswith("/") else site / name
        for name in page
    ]
    plain = [path for path in paths if path.suffix in COMPRESSED]
    done = subprocess.run(
        ["node", "-e", BROTLI, *map(str, plain)], capture_output=True, text=True, check=True
    )
    saved = sum(len(gzipped(path.read_bytes())) for path in plain) - sum(json.loads(done.stdout))
    return sum(page.values()) - saved


def measure_first_visit(playwright: Playwright, site: Path) -> dict[str, Any]:
    """The heaviest station's files, their sum with Brotli, and what is saved afterwards."""
    pages = station_pages(site)
    station = heaviest_station(site)
    found = visit(playwright, site, station)
    whole = sum(found.page.values())
    return {
        "station": station,
        "gzip": whole,
        "brotli": with_brotli(site, found.page),
        "middle_station": round(whole - pages[station] + statistics.median(pages.values())),
        "saved_afterwards": sum(found.background.values()),
        "runtime": sum(size for name, size in found.page.items() if name.startswith("runtime/")),
        "files": found.page,
    }


def first_visit_rows(found: dict[str, Any]) -> list[Row]:
    """The whole, and what it is made of."""
    whole, aim = found["gzip"], f"at most {AIM_BYTES / 1000:.0f} kB"
    fonts = sum(size for name, size in found["files"].items() if name.endswith(".woff2"))
    styles = sum(size for name, size in found["files"].items() if name.endswith(".css"))
    scripts = sum(size for name, size in found["files"].items() if name.endswith((".js", ".mjs")))
    page = found["files"][found["station"]]
    return [
        Row(f"The heaviest station's page ({found['station']}), gzip", kilobytes(whole), aim,
            whole <= AIM_BYTES),
        Row("of that, the page itself", kilobytes(page)),
        Row("of that, type", kilobytes(fonts)),
        Row("of that, styles", kilobytes(styles)),
        Row("of that, scripts", kilobytes(scripts)),
        Row("The same from a host with Brotli", kilobytes(found["brotli"])),
        Row("A middling station's page, gzip", kilobytes(found["middle_station"])),
        Row("Runtime fetched by who only reads", kilobytes(found["runtime"]), "none",
            found["runtime"] == 0),
        Row("Saved afterwards for use without a network, once, over https",
            kilobytes(found["saved_afterwards"])),
    ]  # fmt: skip
