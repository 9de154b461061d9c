"""How many readers a static host carries: nginx as the hosting page sets it up, loaded by wrk.

Both run on this machine, so the load takes its share of the processor from the host: what a host of
its own carries is more. Everything is sent from files compressed beforehand.
"""

import re
import shutil
import socket
import subprocess
from collections.abc import Iterable
from contextlib import closing
from pathlib import Path
from typing import Any

from .first_visit import heaviest_station, visit
from .nginx import nginx, published, running
from .rows import Row, kilobytes

SECONDS = 8
AT_ONCE = 32
"""Connections that ask without a pause."""
LINE_BITS = 100e6
SCRIPT = """
local paths = {{ {paths} }}
local at = 0
wrk.headers["Accept-Encoding"] = "gzip"
request = function()
  at = at % #paths + 1
  return wrk.format("GET", paths[at])
end
done = function(summary)
  local e = summary.errors
  io.write(string.format("RESULT %d %d %d %d\\n", summary.requests, summary.bytes, summary.duration,
    e.connect + e.read + e.write + e.status + e.timeout))
end
"""


def compress(folder: Path) -> None:
    """Compresses a built site's files as the hosting page says."""
    [command] = [block for block in published("sh") if block.startswith("find site ")]
    subprocess.run(["sh", "-c", command], cwd=folder, check=True)


def load(address: str, paths: Iterable[str], work: Path) -> dict[str, float]:
    """Asks for the files again and again, as fast as they come."""
    script = work / "load.lua"
    script.write_text(SCRIPT.format(paths=", ".join(f'"/{path}"' for path in paths)), "utf-8")
    done = subprocess.run(
        ["wrk", "-t1", f"-c{AT_ONCE}", f"-d{SECONDS}s", "-s", str(script), address],
        capture_output=True, text=True, check=True,
    )  # fmt: skip
    found = re.search(r"RESULT (\d+) (\d+) (\d+) (\d+)", done.stdout)
    assert found, done.stdout
    requests, sent, took, errors = map(int, found.groups())
    assert not errors, done.stdout
    return {"requests_s": requests / took * 1e6, "bytes_s": sent / took * 1e6}


def memory(work: Path) -> int:
    """Bytes that the host's processes hold."""
    first = (work / "nginx.pid").read_text().strip()
    children = Path(f"/proc/{first}/task/{first}/children").read_text().split()
    held = [Path(f"/proc/{process}/statm").read_text().split()[1] for process in [first, *children]]
    return sum(map(int, held)) * 4096


def measure_host(playwright: Any, site: Path, work: Path) -> dict[str, Any] | None:
    """Requests and bytes a second, for a station's page and for a whole edition; None without tools."""
    if nginx() is None or shutil.which("wrk") is None:
        return None
    seen = visit(playwright, site, heaviest_station(site))
    packed = work / "packed"
    shutil.copytree(site, packed / "site")
    compress(packed)
    with closing(socket.socket()) as probe:
        probe.bind(("127.0.0.1", 0))
        port = int(probe.getsockname()[1])
    with running(packed / "site", port, work / "nginx") as address:
        return {
            "page": load(address, seen.page, work),
            "edition": load(address, seen.background, work),
            "page_files": len(seen.page),
            "page_bytes": sum(seen.page.values()),
            "edition_files": len(seen.background),
            "edition_bytes": sum(seen.background.values()),
            "memory": memory(work / "nginx"),
        }


def host_rows(found: dict[str, Any]) -> list[Row]:
    """What the host carries, and what a line carries."""
    page, edition = found["page"], found["edition"]
    first = found["page_bytes"] + found["edition_bytes"]
    line = LINE_BITS / 8 * 60

    def a_minute(whole: float) -> str:
        return f"{whole:,.0f} readers a minute"

    return [
        Row("Files a second, a station's page and all it needs", f"{page['requests_s']:,.0f}"),
        Row("The same in bytes", f"{kilobytes(page['bytes_s'])} a second"),
        Row(
            "So the host carries, pages alone",
            a_minute(page["requests_s"] / found["page_files"] * 60),
        ),
        Row("Saving the whole handbook, in bytes", f"{kilobytes(edition['bytes_s'])} a second"),
        Row("Memory of the host's two processes", kilobytes(found["memory"])),
        Row("A line of 100 Mbit/s carries, pages alone", a_minute(line / found["page_bytes"])),
        Row(
            "A line of 100 Mbit/s carries, first visits with the handbook saved",
            a_minute(line / first),
        ),
    ]
