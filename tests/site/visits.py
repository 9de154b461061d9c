"""Visits on which something fails: a profile without the service worker, and limits of the test's own."""

import json
from collections.abc import Iterator
from contextlib import contextmanager

from playwright.sync_api import Browser, BrowserContext, Page

LONG = 90_000
"""Milliseconds to wait for what takes a second or two where the machine has nothing else to do."""

LIMITS = {"start": 80_000, "giveUp": 160_000, "answer": 20_000, "silence": 20_000, "rest": 200}
SET_LIMITS = """document.addEventListener("readystatechange", () => {
  document.documentElement.dataset.limits = '%s';
});"""
NOTE_WORKERS = """const Plain = Worker;
window.runtimes = [];
window.Worker = class extends Plain {
  constructor(address, options) {
    super(address, options);
    if (!String(address).includes("/runtime/")) return;
    runtimes.push(this);
    this.called = options.name;
    this.addEventListener("message", ({ data }) => { if (data.started) this.goesOn = data.goesOn; });
  }
  terminate() {
    this.ended = true;
    super.terminate();
  }
};"""
HOLD_UP = """window.heldUp = { words: "", milliseconds: 0 };
const post = Worker.prototype.postMessage;
Worker.prototype.postMessage = function (message, ...rest) {
  const slow = heldUp.milliseconds && `${message.ask} ${message.text}`.includes(heldUp.words);
  setTimeout(() => post.call(this, message, ...rest), slow ? heldUp.milliseconds : 0);
};"""


def hold_up(page: Page, words: str, milliseconds: int) -> None:
    """Lets questions that hold these words reach the worker late, on a visit with ``HOLD_UP``."""
    page.evaluate("(given) => (window.heldUp = given)", {"words": words, "milliseconds": milliseconds})


@contextmanager
def visiting(
    browser: Browser, *scripts: str, javascript: bool = True, **limits: int
) -> Iterator[BrowserContext]:
    """A new profile in which each file comes as the test lets it.

    ``scripts`` run before any of the page's; ``limits`` are the engine's, in milliseconds. The
    page's ``runtimes`` are the workers that were started.
    """
    context = browser.new_context(
        service_workers="block", java_script_enabled=javascript, accept_downloads=True
    )
    for script in (SET_LIMITS % json.dumps(LIMITS | limits), NOTE_WORKERS, *scripts):
        context.add_init_script(script)
    try:
        yield context
    finally:
        context.close()
