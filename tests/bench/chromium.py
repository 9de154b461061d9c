"""How the bench opens the browser."""

import contextlib
from collections.abc import Iterator

from playwright.sync_api import Browser, BrowserContext, Playwright

from tests.chromium import FLAGS, chromium_path


@contextlib.contextmanager
def launched(playwright: Playwright) -> Iterator[Browser]:
    """A browser with nothing in its cache."""
    with contextlib.closing(
        playwright.chromium.launch(executable_path=chromium_path(), args=FLAGS)
    ) as browser:
        yield browser


def open_profile(playwright: Playwright, folder: str) -> BrowserContext:
    """A browser that keeps its cache in ``folder``."""
    return playwright.chromium.launch_persistent_context(
        folder, executable_path=chromium_path(), args=FLAGS
    )
