"""How the tests and the bench start Chromium: no sandbox, and no errands of its own."""

import os
import shutil

FLAGS = [
    "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
    "--disable-background-networking", "--disable-component-update", "--disable-sync",
]  # fmt: skip


def chromium_path() -> str:
    """The browser's program: the one that CHROMIUM names, else the one on the path."""
    return os.environ.get("CHROMIUM") or shutil.which("chromium") or "/usr/bin/chromium"
