"""The search: from the last key of a question to its first result on the page."""

import random
from pathlib import Path
from typing import Any

import yaml
from playwright.sync_api import Page, Playwright

from .chromium import launched
from .figures import spread
from .rows import Row, seconds
from .server import serving

ROOT = Path(__file__).parents[2]
QUESTIONS = 40
COLD = 5
KEY_MS = 30
"""Between two keys; a fast typist's are 60 ms apart."""
SETTLE_MS = 300
AIM_MS = 100
"""So soon, an answer seems to stand there at once."""

# Notes when the last key came, and when the list first held a result of that question: the theme
# empties the list and fills it again, in one go, with each answer of the worker.
WATCH = """() => {
  window.answered = (last) => new Promise((resolve) => {
    const list = document.querySelector(".md-search-result__list");
    const box = document.querySelector("[data-md-component=search-query]");
    let pressed = null;
    box.addEventListener("keyup", () => { if (box.value === last) pressed ??= performance.now(); }, true);
    new MutationObserver((_, watch) => {
      if (pressed === null || !list.querySelector(".md-search-result__link")) return;
      watch.disconnect();
      resolve(performance.now() - pressed);
    }).observe(list, { childList: true, subtree: true });
  });
}"""


def everyday_questions() -> list[str]:
    """The questions asked: forty of those that the search is tested with, the same each time."""
    text = (ROOT / "tests" / "site" / "everyday_questions.yml").read_text("utf-8")
    every = [str(question["ask"]) for question in yaml.safe_load(text)]
    return random.Random(7).sample(every, QUESTIONS)


def ask(page: Page, question: str) -> float:
    """Types a question key by key; milliseconds from its last key to its first result.

    The last key waits until the key before is answered, so that no earlier answer is taken for it.
    """
    box = page.locator("[data-md-component=search-query]")
    box.press_sequentially(question[:-1], delay=KEY_MS)
    page.wait_for_timeout(SETTLE_MS)
    page.evaluate("(last) => { window.found = window.answered(last); }", question)
    box.press_sequentially(question[-1])
    return float(page.evaluate("window.found"))


def measure_search(playwright: Playwright, site: Path) -> dict[str, Any]:
    """Questions on a page whose search is open; and from a page opened cold, its search at once.

    Cold is a new browser: the page is loaded, the search is opened, and one word is typed. Its time
    counts from the opening of the search, before which nothing of what it searches is fetched.
    """
    questions = everyday_questions()
    word = "fret"
    cold: dict[str, list[float]] = {"page": [], "opened": []}
    warm = []
    with serving(site) as host:
        for turn in range(COLD):
            with launched(playwright) as browser:
                page = browser.new_page()
                page.goto(host.address)
                from_page = page.evaluate("performance.now()")
                page.evaluate(WATCH)
                cold["opened"].append(
                    page.evaluate(
                        """async (word) => {
                          const box = document.querySelector("[data-md-component=search-query]");
                          const from = performance.now();
                          const found = window.answered(word);
                          box.focus();
                          box.value = word;
                          box.dispatchEvent(new KeyboardEvent("keyup", { bubbles: true }));
                          await found;
                          return performance.now() - from;
                        }""",
                        word,
                    )
                )
                cold["page"].append(from_page + cold["opened"][-1])
                if turn == COLD - 1:
                    for question in questions:
                        page.locator("[data-md-component=search-query]").fill("")
                        warm.append(ask(page, question))
    return {
        "questions": spread(warm),
        "opened_cold": spread(cold["opened"]),
        "page_cold": spread(cold["page"]),
    }


def search_rows(found: dict[str, Any]) -> list[Row]:
    """From the last key, and from a cold page."""
    asked = found["questions"]
    return [
        Row(f"Last key to first result, half of {asked['count']} questions within",
            seconds(asked["p50"]), f"{AIM_MS} ms", asked["p50"] <= AIM_MS),
        Row("Last key to first result, 95 of 100 within", seconds(asked["p95"]), f"{AIM_MS} ms",
            asked["p95"] <= AIM_MS),
        Row("Search opened for the first time and a word typed at once, to its first result",
            seconds(found["opened_cold"]["p50"])),
        Row("The same, counted from the opening of the page in a new browser",
            seconds(found["page_cold"]["p50"])),
    ]  # fmt: skip
