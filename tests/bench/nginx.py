"""nginx as ``docs/hosting.md`` sets it up: the configuration is taken from the page and run."""

import contextlib
import os
import re
import shutil
import socket
import subprocess
import time
from collections.abc import Iterator
from pathlib import Path

ROOT = Path(__file__).parents[2]
PAGE = ROOT / "docs" / "hosting.md"
WHOLE = """
pid {work}/nginx.pid;
error_log {work}/error.log;
worker_processes {workers};
events {{ worker_connections 1024; }}
http {{
    access_log off;
    client_body_temp_path {work}/body;
    proxy_temp_path {work}/proxy;
    fastcgi_temp_path {work}/fastcgi;
    uwsgi_temp_path {work}/uwsgi;
    scgi_temp_path {work}/scgi;
    {ours}
}}
"""


def nginx() -> str | None:
    """The program, where it is installed."""
    return shutil.which("nginx") or shutil.which("/usr/sbin/nginx")


def published(language: str) -> list[str]:
    """The page's blocks of code in a language."""
    return re.findall(rf"^```{language}\n(.*?)^```$", PAGE.read_text("utf-8"), re.M | re.S)


def configured(site: Path, port: int, work: Path, workers: int = 1) -> str:
    """The page's configuration with this folder and port, over plain http."""
    [ours] = published("nginx")
    changes = [
        (r"listen 443 ssl;", f"listen 127.0.0.1:{port};"),
        (r"root /srv/handbook;", f"root {site};"),
        (r" *ssl_certificate(?:_key)? [^;]*;\n", ""),
    ]
    for old, new in changes:
        ours, found = re.subn(old, new, ours)
        assert found, f"docs/hosting.md has no line {old}"
    return WHOLE.format(work=work, workers=workers, ours=ours)


@contextlib.contextmanager
def running(site: Path, port: int, work: Path, workers: int = 1) -> Iterator[str]:
    """Serves a site; gives its address. The host ends with the block."""
    program = nginx()
    assert program is not None
    work.mkdir(parents=True, exist_ok=True)
    if os.geteuid() == 0:
        work.chmod(0o755)  # its workers are another user
    path = work / "nginx.conf"
    path.write_text(configured(site, port, work, workers), "utf-8")
    user = ["-g", "daemon off; user root;"] if os.geteuid() == 0 else ["-g", "daemon off;"]
    process = subprocess.Popen(
        [program, "-p", str(work), "-c", str(path), "-e", str(work / "error.log"), *user],
        stdout=subprocess.DEVNULL, stderr=subprocess.PIPE, text=True,
    )  # fmt: skip
    try:
        for _ in range(100):
            if process.poll() is not None:
                raise RuntimeError(process.stderr.read() if process.stderr else "nginx ended")
            with contextlib.suppress(OSError), socket.create_connection(("127.0.0.1", port), 1):
                break
            time.sleep(0.05)
        yield f"http://127.0.0.1:{port}/"
    finally:
        process.terminate()
        process.wait(10)
