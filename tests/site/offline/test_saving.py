"""How the handbook is saved, what the foot of the page says of it, and what keeps it from being saved."""

import contextlib
import json
import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Page, Playwright, Route, expect

from .parts import (
    CACHED,
    HELD,
    LONG,
    NAME,
    Server,
    assert_holds,
    edition,
    opened,
    requests_of,
    saved,
    until,
    words,
)

# Notes what the reader's calculator says when saving begins, and when it is told to wait.
NOTE_SAVING = """window.noted = {};
const note = (prototype, name, see) => {
  const plain = prototype[name];
  prototype[name] = function (...given) { see(...given); return plain.apply(this, given); };
};
const state = () => document.querySelector(".br-state").dataset.state;
note(ServiceWorkerContainer.prototype, "register", () => { noted.begun = state(); });
note(ServiceWorker.prototype, "postMessage", ({ ask }) => { noted[ask] = state(); });"""
ENTER_AT_ONCE = """window.addEventListener("load", () => {
  const entry = document.getElementById("fret-spacing--scale_length");
  entry.value = "650";
  entry.dispatchEvent(new InputEvent("input", { bubbles: true }));
});"""


@contextlib.contextmanager
def starting_slowly(page: Page) -> Iterator[None]:
    """Within, no start of a calculator on this page comes to its end."""
    waiting: list[Route] = []
    slow = True

    def serve(route: Route) -> None:
        if slow:
            waiting.append(route)
        else:
            route.continue_()

    page.route("**/python_stdlib.zip", serve)
    yield
    slow = False
    assert waiting, "no calculator was started"
    for route in waiting:
        route.continue_()


def is_live(page: Page) -> None:
    state = page.locator(".br-state").first
    expect(state).to_have_attribute("data-state", "live", timeout=LONG)


def test_saving_waits_for_a_calculator_that_starts(
    playwright_running: Playwright, server: Server, first: Path, tmp_path: Path
) -> None:
    server.serve(first)
    with opened(playwright_running, tmp_path / "profile") as context:
        page = context.new_page()
        page.add_init_script(NOTE_SAVING)
        page.add_init_script(ENTER_AT_ONCE)
        with starting_slowly(page):
            page.goto(server.address + "calculators/fret-spacing/")
            page.wait_for_timeout(5_000)  # long after saving begins on a page that is only read
            assert page.evaluate("noted") == {}
        is_live(page)
        expect(page.locator(f".br-offline{HELD}")).to_be_attached(timeout=LONG)
        assert page.evaluate("noted.begun") == "live", "saving began before the answer"


def test_saving_that_began_lets_a_calculator_that_starts_go_first(
    playwright_running: Playwright, server: Server, first: Path, tmp_path: Path
) -> None:
    server.serve(first)
    with opened(playwright_running, tmp_path / "profile") as context:
        page = context.new_page()
        page.add_init_script(NOTE_SAVING)
        page.goto(server.address + "calculators/fret-spacing/")
        words(page).to_contain_text("Being saved for offline use", timeout=LONG)
        with starting_slowly(page):
            page.locator('[id="fret-spacing--scale_length"]').fill("650")
            until(page, "noted.hold === 'starting'")
            came = -1
            while came != (came := len(requests_of(server))):
                page.wait_for_timeout(2_000)  # what was under way ends; longer than the page's beat
            words(page).to_contain_text("Being saved for offline use")
            page.wait_for_timeout(10_000)  # longer than the worker waits for a page that is gone
            assert len(requests_of(server)) == came, "saving went on beside the start"
        is_live(page)
        expect(page.locator(f".br-offline{HELD}")).to_be_attached(timeout=LONG)
        assert page.evaluate("'go on' in noted"), "saving was not let go on"


def test_saving_that_stops_says_why_and_goes_on(
    playwright_running: Playwright, server: Server, first: Path, tmp_path: Path
) -> None:
    server.serve(first)
    with opened(playwright_running, tmp_path / "profile") as context:
        page = context.new_page()
        page.goto(server.address + "hazards/")
        words(page).to_have_text(
            re.compile(r"Being saved for offline use … \d+ of \d+ files"), timeout=LONG
        )
        server.end()
        words(page).to_have_text(
            "Saving stopped: no network; it goes on at the next visit", timeout=LONG
        )
        came = len(page.evaluate(CACHED))
        assert 0 < came < len(edition(first)["files"])
        server.serve(first)
        before = len(requests_of(server))
        page.locator(".br-offline summary").click()
        page.get_by_role("button", name="Save it now").click()
        words(page).to_contain_text("Saved for offline use", timeout=LONG)
        assert len(requests_of(server)) - before <= len(edition(first)["files"]) - came + 5


def test_a_full_device_says_how_much_to_free(
    playwright_running: Playwright, server: Server, first: Path, tmp_path: Path
) -> None:
    server.serve(first)
    with opened(playwright_running, tmp_path / "profile") as context:
        page = context.new_page()
        quota = {"origin": server.address.rstrip("/"), "quotaSize": 5_000_000}
        context.new_cdp_session(page).send("Storage.overrideQuotaForOrigin", quota)
        page.goto(server.address + "hazards/")
        lacking = edition(first)["bytes"] / 1e6 - 5
        words(page).to_have_text(
            re.compile(r"Not saved: the device is full; free \d+ MB"), timeout=LONG
        )
        said = int(re.findall(r"\d+", page.locator(".br-offline summary").inner_text())[0])
        assert lacking <= said <= lacking + 6, "what is not on the device yet, and no more"


@pytest.mark.parametrize(
    ("script", "says"),
    [
        ("delete Navigator.prototype.serviceWorker", "Not saved: this browser keeps nothing here"),
        (
            "CacheStorage.prototype.has = () => Promise.reject(new DOMException('', 'SecurityError'))",
            "Not saved: this browser keeps nothing here",
        ),
        (
            "Object.defineProperty(Navigator.prototype, 'connection', {value: {saveData: true}})",
            "Not saved: this device asks to save traffic",
        ),
    ],
)
def test_where_nothing_can_be_or_should_be_saved(
    script: str, says: str, playwright_running: Playwright, server: Server, first: Path,
    tmp_path: Path,
) -> None:  # fmt: skip
    server.serve(first)
    with opened(playwright_running, tmp_path / "profile") as context:
        faults: list[str] = []
        page = context.new_page()
        page.on("pageerror", lambda error: faults.append(str(error)))
        page.add_init_script(script)
        page.goto(server.address + "hazards/")
        words(page).to_contain_text(says)
        assert faults == []
        if "traffic" in says:
            page.locator(".br-offline summary").click()
            page.get_by_role("button", name="Save it now").click()
            words(page).to_contain_text("Saved for offline use", timeout=LONG)


def test_plain_http_is_said_to_be_the_reason(
    playwright_running: Playwright, server: Server, first: Path, tmp_path: Path
) -> None:
    server.serve(first)
    with opened(playwright_running, tmp_path / "profile") as context:
        page = context.new_page()
        page.goto(f"http://handbook.test:{server.port}/hazards/")
        words(page).to_have_text("Not saved: the address is not https")


def test_a_saved_copy_that_is_let_go_does_not_come_back_unasked(
    playwright_running: Playwright, server: Server, profile: Path, first: Path
) -> None:
    server.serve(first)
    with opened(playwright_running, profile) as context:
        page = saved(context.new_page(), server, "hazards/")
        page.once("dialog", lambda dialog: dialog.accept())
        page.locator(".br-offline summary").click()
        page.get_by_role("button", name="Forget the saved copy").click()
        words(page).to_contain_text("you let the saved copy go")
        assert page.evaluate("caches.keys()") == []
        page.goto(server.address)
        words(page).to_contain_text("you let the saved copy go")
        assert page.evaluate("navigator.serviceWorker.getRegistration().then(Boolean)") is False


def test_what_the_browser_cleared_is_fetched_again(
    playwright_running: Playwright, server: Server, profile: Path, first: Path
) -> None:
    server.serve(first)
    with opened(playwright_running, profile) as context:
        page = saved(context.new_page(), server, "hazards/")
        page.evaluate("""async () => {
          for (const name of await caches.keys()) {
            const cache = await caches.open(name);
            for (const key of await cache.keys()) if (key.url.includes("/stations/")) await cache.delete(key);
          }
        }""")
        page.goto(server.address + "glossary/")
        expect(page.locator(f".br-offline{HELD}")).to_be_attached(timeout=LONG)
        words(page).to_contain_text("Saved for offline use", timeout=LONG)
        assert_holds(page, first)


def test_a_device_can_show_it_among_its_programs(
    playwright_running: Playwright, server: Server, profile: Path, first: Path
) -> None:
    server.serve(first)
    with opened(playwright_running, profile) as context:
        page = context.new_page()
        page.goto(server.address + "stations/fretting/")
        tools = context.new_cdp_session(page)
        found = tools.send("Page.getAppManifest")
        assert found["errors"] == []
        assert found["url"] == server.address + "manifest.webmanifest"
        assert json.loads(found["data"])["name"] == NAME
        faults = [
            one["errorId"]
            for one in tools.send("Page.getInstallabilityErrors")["installabilityErrors"]
        ]
        assert set(faults) <= {"in-incognito"}
