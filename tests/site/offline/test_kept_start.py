"""A start of the calculators that is kept on the device: it answers the same, and nothing hangs on it."""

import contextlib
import shutil
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page, Playwright, expect

from calculators.engine.registry import modules

from ..test_practice import answer, asked, check
from ..test_unbreakable import entry, first_slot, shows
from ..visits import NOTE_WORKERS, SET_LIMITS
from .parts import LONG, Server, edition, look_for_newer, offer, opened, saved, until, words

STORE = "(await caches.keys()).find((name) => name.startsWith('benchrule-starts-'))"
KEPT = f"""async () => {{
  const name = {STORE};
  const store = name && await caches.open(name);
  const found = [];
  for (const one of store ? await store.keys() : []) {{
    const image = await (await store.match(one)).arrayBuffer();
    found.push([one.url, image.byteLength]);
  }}
  return found;
}}"""
KEEPER_ENDED = "runtimes.some(({ called, ended }) => called === 'keeper' && ended)"
# Asks a worker of its own every calculator's example; a reader's worker is named "".
ASK_ALL = """([address, names]) => new Promise((resolve, reject) => {
  const worker = new Worker(address, { type: "module", name: "" });
  const found = {};
  let goesOn = null;
  worker.onerror = (event) => reject(new Error(event.message));
  worker.onmessage = ({ data }) => {
    if (data.amiss || data.failed || data.ended) reject(new Error(JSON.stringify(data)));
    if (data.started) goesOn = data.goesOn;
    if (!data.id || data.begun) return;
    if (data.id < 1000) worker.postMessage({ id: data.id + 1000, ask: "answer",
      text: JSON.stringify({ calculator: names[data.id - 1], inputs: {} }) });
    else {
      found[names[data.id - 1001]] = data.answer;
      if (Object.keys(found).length === names.length) { worker.terminate(); resolve({ goesOn, found }); }
    }
  };
  names.forEach((calculator, at) => worker.postMessage({ id: at + 1, prepare: calculator }));
})"""


# Of a worker that goes on from a kept start, the page hears nothing more.
HANG = """const Sound = Worker;
window.Worker = class extends Sound {
  constructor(...given) {
    super(...given);
    this.addEventListener("message", (event) => {
      this.hangs ||= event.data.started && event.data.goesOn;
      if (this.hangs) event.stopImmediatePropagation();
    });
  }
};"""


@contextlib.contextmanager
def visit(
    playwright: Playwright, server: Server, folder: Path | None, profile: Path
) -> Iterator[Page]:
    """A page in a browser with ``profile``; the server has ``folder``, or is not there."""
    if folder:
        server.serve(folder)
    else:
        server.end()
    with opened(playwright, profile) as context:
        context.add_init_script(NOTE_WORKERS)
        page = context.new_page()
        page.goto(f"{server.address}hazards/")
        yield page


def enter(page: Page, given: str) -> None:
    """Enters a figure; the answer to it comes."""
    entry(page).fill(given)
    shows(page, first_slot(scale_length=given))


def calculate(page: Page, server: Server) -> None:
    """Opens a calculator and has it answer."""
    page.goto(f"{server.address}calculators/fret-spacing/")
    enter(page, "640")


def named(page: Page) -> list[str]:
    """The names of the runtime's workers on this page."""
    return list(page.evaluate("runtimes.map(({ called }) => called)"))


def going_on(page: Page) -> list[bool]:
    """Of each worker that started to answer, whether it went on from a kept start."""
    return list(page.evaluate("runtimes.map(({ goesOn }) => goesOn).filter((one) => one != null)"))


def rest(page: Page) -> None:
    """Longer than the rest after which a start is kept."""
    page.wait_for_timeout(6_000)


def kept(page: Page) -> list[tuple[str, int]]:
    """Address and size of every start that is kept."""
    return [(url, size) for url, size in page.evaluate(KEPT)]


def wait_for_start(page: Page) -> int:
    """The size of the one that comes to be kept."""
    for _ in range(LONG // 250):
        if found := kept(page):
            [(_, size)] = found
            return size
        page.wait_for_timeout(250)
    raise AssertionError("no start was kept")


def grant(page: Page, server: Server, more_bytes: int) -> None:
    """Leaves the handbook that much more room than it has taken."""
    usage = page.evaluate("async () => (await navigator.storage.estimate()).usage")
    quota = {"origin": server.address.rstrip("/"), "quotaSize": usage + more_bytes}
    page.context.new_cdp_session(page).send("Storage.overrideQuotaForOrigin", quota)


def added_by(folder: Path, to: Path) -> int:
    """How many bytes a device has to take in that holds one edition already."""
    held = {(address, kept) for address, kept, _ in edition(to)["files"]}
    return sum(size for address, kept, size in edition(folder)["files"] if (address, kept) not in held)


@pytest.fixture(scope="module")
def used(
    playwright_running: Playwright, server: Server, first: Path, visited: Path,
    tmp_path_factory: pytest.TempPathFactory,
) -> Path:  # fmt: skip
    """A profile with the copy, in which a calculator was used and its start kept."""
    profile = Path(shutil.copytree(visited, tmp_path_factory.mktemp("used") / "profile"))
    with visit(playwright_running, server, first, profile) as page:
        calculate(page, server)
        assert going_on(page) == [False]
        size = wait_for_start(page)
        assert named(page) == ["", "keeper"]
        more = page.locator(".br-offline-more")
        expect(more).to_contain_text(f"Another {size / 1e6:.1f} MB, made on this device")
        assert 5e6 < size < 20e6
    return profile


@pytest.fixture
def used_profile(used: Path, tmp_path: Path) -> Path:
    """A copy of that profile, for one test."""
    return Path(shutil.copytree(used, tmp_path / "profile"))


def spoil(page: Page, script: str) -> None:
    """Puts another start in the place of the one kept: ``script`` has its ``image`` and ``headers``."""
    page.evaluate(f"""async () => {{
      const store = await caches.open({STORE});
      const [key] = await store.keys();
      const found = await store.match(key);
      const headers = Object.fromEntries(found.headers);
      let image = new Uint8Array(await found.arrayBuffer());
      const sumOf = async (bytes) => {{
        const sum = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
        return `sha-256=:${{btoa(String.fromCharCode(...sum))}}:`;
      }};
      const [, count] = new Uint32Array(image.buffer, 0, 2);
      {script}
      await store.put(key, new Response(image, {{ headers }}));
    }}""")


def test_every_calculator_answers_as_after_a_start_from_nothing(
    playwright_running: Playwright, server: Server, first: Path, used_profile: Path
) -> None:
    [worker] = (first / "runtime").glob("*/worker.mjs")
    wanted = [f"{server.address}{worker.relative_to(first)}", list(modules())]
    with visit(playwright_running, server, None, used_profile) as page:
        went_on = page.evaluate(ASK_ALL, wanted)
        page.evaluate(f"async () => caches.delete({STORE})")
        anew = page.evaluate(ASK_ALL, wanted)
    assert (went_on["goesOn"], anew["goesOn"]) == (True, False)
    assert sorted(anew["found"]) == sorted(modules())
    assert went_on["found"] == anew["found"]
    assert not [name for name, text in anew["found"].items() if '"refused"' in text]


def test_a_page_goes_on_from_the_start_that_was_kept(
    playwright_running: Playwright, server: Server, used_profile: Path, bank: dict[str, Any]
) -> None:
    with visit(playwright_running, server, None, used_profile) as page:
        calculate(page, server)
        assert going_on(page) == [True]
        page.goto(f"{server.address}stations/fretting/")
        page.get_by_role("button", name="Practise").click()
        expect(page.locator(".br-question")).to_be_visible(timeout=LONG)
        answer(page, asked(page, "practice/fretting", bank))
        assert check(page).startswith("Right")
        assert going_on(page) == [True]


SPOILT = {
    "another byte": "image[image.length >> 1] ^= 1;",
    "cut short": "image = image.slice(0, image.length >> 1);",
    "of another browser": "headers['user-agent'] = 'another';",
}


@pytest.mark.parametrize("how", SPOILT)
def test_a_start_that_is_not_as_it_was_kept_is_made_anew(
    how: str, playwright_running: Playwright, server: Server, first: Path, used_profile: Path
) -> None:
    with visit(playwright_running, server, first, used_profile) as page:
        [(_, whole)] = kept(page)
        spoil(page, SPOILT[how])
        calculate(page, server)
        assert going_on(page) == [False]
        assert abs(wait_for_start(page) - whole) < whole / 10
        calculate(page, server)
        assert going_on(page) == [True]


UNFIT = {
    "of another build": "image[8 + 4 * count + 16] ^= 1;",
    "no start at all": "image = new Uint8Array(1e6);",
    "with a heap of nonsense": "image.fill(7, 1e6);",
}


@pytest.mark.parametrize("how", UNFIT)
def test_a_start_that_cannot_be_gone_on_from_is_not_tried_again(
    how: str, playwright_running: Playwright, server: Server, first: Path, used_profile: Path
) -> None:
    with visit(playwright_running, server, first, used_profile) as page:
        spoil(page, UNFIT[how] + " headers['repr-digest'] = await sumOf(image);")
        for _ in range(2):
            calculate(page, server)
            assert going_on(page) == [False]
            assert [size for _, size in kept(page)] == [0]
        rest(page)
        assert named(page) == [""]


def test_after_a_worker_that_broke_no_start_is_trusted(
    playwright_running: Playwright, server: Server, first: Path, used_profile: Path
) -> None:
    with visit(playwright_running, server, first, used_profile) as page:
        calculate(page, server)
        assert going_on(page) == [True]
        page.evaluate("runtimes.at(-1).dispatchEvent(new ErrorEvent('error', { message: 'broke' }))")
        enter(page, "620")
        rest(page)
        assert (going_on(page), named(page)) == ([True, False], ["", "anew"])
        assert kept(page) == []
        calculate(page, server)  # nor is one made on the next page, on the same day
        rest(page)
        assert (going_on(page), named(page)) == ([False], [""])
        page.evaluate("localStorage.setItem('benchrule.no-start', '2026-01-01')")
        calculate(page, server)
        wait_for_start(page)


def test_a_start_that_hangs_as_it_goes_on_is_made_from_nothing(
    playwright_running: Playwright, server: Server, first: Path, used_profile: Path
) -> None:
    with visit(playwright_running, server, first, used_profile) as page:
        page.add_init_script(SET_LIMITS % '{"goOn": 3000}')
        page.add_init_script(HANG)
        calculate(page, server)
        assert page.evaluate("runtimes.map(({ hangs, ended }) => [hangs, ended])") == [
            [True, True], [None, None]
        ]  # fmt: skip
        assert (going_on(page), named(page)) == ([True, False], ["", "anew"])
        assert kept(page) == []


def test_the_reader_goes_first(
    playwright_running: Playwright, server: Server, first: Path, profile: Path
) -> None:
    with visit(playwright_running, server, first, profile) as page:
        calculate(page, server)
        until(page, "runtimes.some(({ called }) => called === 'keeper')")
        enter(page, "655")
        until(page, KEEPER_ENDED)
        assert kept(page) == []
        wait_for_start(page)
        assert named(page) == ["", "keeper", "keeper"]


@pytest.mark.parametrize("says_so", [True, False])
def test_without_room_none_is_kept(
    says_so: bool, playwright_running: Playwright, server: Server, first: Path, profile: Path,
) -> None:  # fmt: skip
    with visit(playwright_running, server, first, profile) as page:
        grant(page, server, 5_000_000)
        # Browsers may report more than they give: then it is seen in the writing.
        quota = 50e6 if says_so else 1e12
        page.add_init_script(
            f"StorageManager.prototype.estimate = async () => ({{ quota: {quota}, usage: 0 }})"
        )
        calculate(page, server)
        if not says_so:
            until(page, KEEPER_ENDED)
            enter(page, "655")
        rest(page)
        assert named(page) == ([""] if says_so else ["", "keeper"])
        assert kept(page) == []
        words(page).to_contain_text("Saved for offline use")
        expect(page.locator(".br-offline-more")).not_to_contain_text("Another")
        calculate(page, server)  # the next page does not try again on the same day
        rest(page)
        assert named(page) == [""]


def test_a_start_that_is_no_good_on_a_full_device_is_no_hindrance(
    playwright_running: Playwright, server: Server, first: Path, used_profile: Path
) -> None:
    with visit(playwright_running, server, first, used_profile) as page:
        spoil(page, UNFIT["of another build"] + " headers['repr-digest'] = await sumOf(image);")
        grant(page, server, -5_000_000)
        calculate(page, server)
        assert going_on(page) == [False]
        [(_, size)] = kept(page)
        assert size, "the browser took what it was to refuse"


def test_a_newer_edition_takes_the_room_of_a_start(
    playwright_running: Playwright, server: Server, first: Path, second: Path, used_profile: Path
) -> None:
    with visit(playwright_running, server, first, used_profile) as page:
        saved(page, server, "hazards/")
        [(_, size)] = kept(page)
        # A store that a page has open keeps its room even when it is deleted.
        page.evaluate(f"async () => {{ globalThis.held = await caches.open({STORE}); }}")
        grant(page, server, added_by(second, to=first) - size // 2)
        server.serve(second)
        look_for_newer(page)
        expect(offer(page)).to_be_visible(timeout=LONG)
        assert kept(page) == []


def test_a_start_goes_with_its_edition_and_with_the_copy(
    playwright_running: Playwright, server: Server, first: Path, second: Path, used_profile: Path
) -> None:
    with visit(playwright_running, server, first, used_profile) as page:
        saved(page, server, "hazards/")
        [(former, _)] = kept(page)
        server.serve(second)
        look_for_newer(page)
        with page.expect_navigation():
            offer(page).get_by_role("button", name="Read it now").click(timeout=LONG)
        until(page, f"({KEPT})().then((kept) => kept.length === 0)")
        calculate(page, server)
        assert going_on(page) == [False]
        wait_for_start(page)
        [(now, _)] = kept(page)
        assert now != former and "/runtime/second/" in now
        page.on("dialog", lambda dialog: dialog.accept())
        page.locator(".br-offline summary").click()
        page.get_by_role("button", name="Forget the saved copy").click()
        words(page).to_contain_text("you let the saved copy go")
        assert kept(page) == []
        expect(page.locator(".br-offline-more")).not_to_contain_text("Another")
