"""What can fail under a page fails here, in a real browser: a killed worker, a broken interpreter,
every file missing, spoilt, of a wrong type, or never coming. Each time the reader is told in plain
words what to do, what was entered stands, and the page goes on without being loaded again."""

import json
import re
from collections.abc import Callable

import pytest
from playwright.sync_api import Browser, BrowserContext, Locator, Page, Route, expect

from calculators.engine import door

from .conftest import Site
from .visits import LONG, visiting

PAGE = "<!doctype html><title>Log in</title><p>Log in to use this network.</p>"
NAME = "fret-spacing"


def entry(page: Page, field: str = "scale_length") -> Locator:
    return page.locator(f'[id="{NAME}--{field}"]')


def first_slot(**inputs: str) -> str:
    return str(door.answer(NAME, inputs)["results"]["first_slot"]["shown"])


def shows(page: Page, answer: str) -> None:
    """The page is live and shows an answer, and nothing of the trouble is left."""
    expect(page.locator('[data-result="first_slot"] dd')).to_have_text(answer, timeout=LONG)
    expect(page.locator(".br-state")).to_have_attribute("data-state", "live", timeout=LONG)
    expect(page.locator(".br-calculator .br-trouble")).to_have_count(0)


def told(page: Page, words: str) -> None:
    """The trouble is said in these words, and never by its technical reason alone."""
    trouble = page.locator(".br-trouble").first
    expect(trouble).to_contain_text(words, timeout=LONG)
    expect(trouble.locator(".br-error")).not_to_contain_text(
        re.compile(r"Error\b|undefined|\d{3}$")
    )


NOTE_TROUBLES = """window.troubles = [];
new MutationObserver((all) => all.forEach(({ addedNodes }) => addedNodes.forEach((one) => {
  if (one.matches?.(".br-trouble")) troubles.push(one.textContent);
}))).observe(document, { childList: true, subtree: true });"""


def try_again(page: Page) -> None:
    page.locator(".br-trouble").get_by_role("button", name="Try again").click()


# How a file can go wrong, and the words by which the reader knows what to do.
MISSING, A_PAGE, LOG_IN, SPOILT, WRONG_TYPE, SILENT, SOUND, CUT = (
    "missing", "a page", "log-in", "spoilt", "wrong type", "silent", "sound", "cut at a line",
)  # fmt: skip
WORDS = {
    MISSING: "tell whoever keeps the handbook",
    A_PAGE: "Log in to the network",
    LOG_IN: "Log in to the network",
    SPOILT: "not the one that this edition was built with",
    WRONG_TYPE: "under a type that browsers refuse",
    SILENT: "goes on by itself",
}


class Fault:
    """Serves the files of a pattern as ``how`` says."""

    def __init__(self, context: BrowserContext, pattern: str) -> None:
        self.how = SOUND
        self.waiting: list[Route] = []
        context.route(pattern, self.serve)

    def serve(self, route: Route) -> None:
        match self.how:
            case "missing":
                route.fulfill(status=404, body="not here")
            case "a page":
                route.fulfill(body=PAGE, content_type="text/html")
            case "log-in":
                route.fulfill(status=302, headers={"Location": "/404.html"})
            case "spoilt":
                sound = route.fetch()
                kind = sound.headers["content-type"]
                route.fulfill(body=sound.body()[: len(sound.body()) // 2], content_type=kind)
            case "cut at a line":
                whole = route.fetch().text()
                body = whole[: whole.rindex("document.documentElement")]
                route.fulfill(body=body, content_type="text/javascript")
            case "wrong type":
                route.fulfill(response=route.fetch(), content_type="application/octet-stream")
            case "silent":
                self.waiting.append(route)
            case _:
                route.continue_()

    def let_come(self) -> None:
        self.how = SOUND
        for route in self.waiting:
            route.continue_()
        self.waiting.clear()


FAULTS_OF_ANY = (MISSING, A_PAGE, LOG_IN, SPOILT)
RUNTIME_FILES = {
    "worker.mjs": (*FAULTS_OF_ANY, WRONG_TYPE),
    "pyodide.mjs": (*FAULTS_OF_ANY, WRONG_TYPE),
    "pyodide.asm.mjs": (*FAULTS_OF_ANY, WRONG_TYPE),
    "pyodide.asm.wasm": FAULTS_OF_ANY,
    "python_stdlib.zip": FAULTS_OF_ANY,
    "pyodide-lock.json": FAULTS_OF_ANY,
    "parts.json": FAULTS_OF_ANY,
    "benchrule_calculators-*.whl": FAULTS_OF_ANY,
    "benchrule_calculators_neck-*.whl": FAULTS_OF_ANY,
    "benchrule_calculators_strings-*.whl": FAULTS_OF_ANY,
}


@pytest.mark.parametrize("file", [name for name in RUNTIME_FILES if "strings" not in name])
def test_a_file_of_the_runtime_that_does_not_come_sound(
    file: str, browser: Browser, site: Site
) -> None:
    """In one visit each fault in turn, then the sound file: the last try is live."""
    if not list(site.folder.glob(f"runtime/*/{file}")):
        pytest.skip(f"the runtime has no {file}")
    with visiting(browser, NOTE_TROUBLES) as context:
        fault = Fault(context, f"**/runtime/*/{file}")
        faults = RUNTIME_FILES[file]
        fault.how = faults[0]
        page = context.new_page()
        page.goto(f"{site.address}calculators/{NAME}/")
        entry(page).fill("600")
        for now, after in zip(faults, [*faults[1:], SOUND], strict=True):
            told(page, WORDS[now])
            expect(page.locator(".br-state")).to_have_attribute("data-state", "broken")
            expect(entry(page)).to_have_value("600")
            fault.how = after
            try_again(page)
        shows(page, first_slot(scale_length="600"))
        # Each is said once, when all was tried: a button never changes under a finger.
        assert len(page.evaluate("troubles")) == len(faults)


@pytest.mark.parametrize("file", ["pyodide.asm.wasm", "benchrule_calculators_neck-*.whl"])
def test_what_is_typed_under_a_fault_asks_again_and_moves_no_button(
    file: str, browser: Browser, site: Site
) -> None:
    """Each entry, once the engine has rested, fetches the file anew; what is said stays in place."""
    with visiting(browser, NOTE_TROUBLES) as context:
        fault = Fault(context, f"**/runtime/*/{file}")
        fault.how = MISSING
        page = context.new_page()
        page.goto(f"{site.address}calculators/{NAME}/")
        entry(page).fill("600")
        told(page, WORDS[MISSING])
        button = page.locator(".br-trouble").get_by_role("button").element_handle()
        for value in ("610", "620", "630"):
            with page.expect_request(f"**/runtime/*/{file}"):
                entry(page).fill(value)
            page.wait_for_timeout(1_000)  # four rests: longer than a failure stands
        assert page.evaluate("troubles.length") == 1
        assert button is not None
        assert button.evaluate("button => button.isConnected")
        fault.how = SOUND
        entry(page).fill("640")
        shows(page, first_slot(scale_length="640"))


def test_a_host_that_knows_no_wasm_is_no_hindrance(browser: Browser, site: Site) -> None:
    with visiting(browser) as context:
        fault = Fault(context, "**/pyodide.asm.wasm")
        fault.how = WRONG_TYPE
        page = context.new_page()
        page.goto(f"{site.address}calculators/{NAME}/")
        entry(page).fill("600")
        shows(page, first_slot(scale_length="600"))


def test_a_file_missing_for_a_moment_is_fetched_again_by_itself(
    browser: Browser, site: Site
) -> None:
    with visiting(browser) as context:
        context.route(
            re.compile(r"(stdlib\.zip|asm\.wasm|_neck-\S+\.whl|exercises-\w+\.json)$"),
            lambda route: route.fulfill(status=503), times=1,
        )  # fmt: skip
        page = context.new_page()
        page.goto(f"{site.address}calculators/{NAME}/")
        entry(page).fill("600")
        shows(page, first_slot(scale_length="600"))


def test_a_network_that_comes_back_is_enough(browser: Browser, site: Site) -> None:
    with visiting(browser) as context:
        page = context.new_page()
        page.goto(f"{site.address}calculators/{NAME}/")
        context.set_offline(True)
        entry(page).fill("600")
        told(page, "no network just now")
        context.set_offline(False)  # nobody presses anything
        shows(page, first_slot(scale_length="600"))


def test_what_is_entered_after_a_start_failed_is_asked_when_the_network_is_back(
    browser: Browser, site: Site
) -> None:
    """The start fails before anything is entered; what is entered then is not forgotten."""
    with visiting(browser) as context:
        page = context.new_page()
        page.goto(f"{site.address}calculators/{NAME}/")
        context.set_offline(True)
        entry(page).focus()
        told(page, "The answer shown is the example’s. This device has no network just now")
        entry(page).fill("600")
        told(page, "The answer shown is not to what you entered. This device has no network")
        page.wait_for_timeout(1_000)  # several rests: it has failed again by then
        context.set_offline(False)
        shows(page, first_slot(scale_length="600"))


@pytest.mark.parametrize("file", ["pyodide.asm.wasm", "benchrule_calculators_*.whl"])
def test_a_start_that_never_settles_is_said_and_goes_on_when_the_file_comes(
    file: str, browser: Browser, site: Site
) -> None:
    with visiting(browser, start=1_500) as context:
        fault = Fault(context, f"**/runtime/*/{file}")
        fault.how = SILENT
        page = context.new_page()
        page.goto(f"{site.address}calculators/{NAME}/")
        entry(page).fill("600")
        told(page, WORDS[SILENT])
        fault.let_come()  # nobody presses anything
        shows(page, first_slot(scale_length="600"))


def test_try_again_takes_a_fresh_start_where_one_hangs(browser: Browser, site: Site) -> None:
    with visiting(browser, start=2_500) as context:
        fault = Fault(context, "**/python_stdlib.zip")
        fault.how = SILENT
        page = context.new_page()
        page.goto(f"{site.address}calculators/{NAME}/")
        entry(page).fill("600")
        told(page, WORDS[SILENT])
        fault.how = SOUND  # the first request stays without an answer for ever
        try_again(page)
        shows(page, first_slot(scale_length="600"))


# A worker of the test's own making, that breaks on some entries as an interpreter can break.
BREAKS = {
    "601": ("throw new WebAssembly.RuntimeError('memory access out of bounds')", "broke off"),
    "602": ("python._api.fatal_error(new WebAssembly.RuntimeError('unreachable'))", "broke off"),
    "603": ("python.runPython('raise MemoryError')", "more memory"),
    "604": ("python.runPython('1 / 0')", "program failed"),
    "605": ("for (;;);", "took too long"),
}


def break_worker(context: BrowserContext) -> None:
    def serve(route: Route) -> None:
        sound = route.fetch()
        text = sound.text()
        acts = "".join(
            f"if (text.includes('\"{on}\"')) {{ {act}; }} " for on, (act, _) in BREAKS.items()
        )
        acts += "if (text.includes('\"606\"')) python.runPython('bytearray(300_000_000)'); "
        plain = "live: (python, door, text) => door.live(text)"
        assert plain in text
        route.fulfill(
            body=text.replace(plain, f"live: (python, door, text) => {{ {acts} return door.live(text); }}"),
            content_type="text/javascript",
        )  # fmt: skip

    context.route("**/runtime/*/worker.mjs", serve)


def test_a_broken_interpreter_is_replaced_and_nothing_entered_is_lost(
    browser: Browser, site: Site
) -> None:
    with visiting(browser, answer=1_500) as context:
        break_worker(context)
        page = context.new_page()
        page.goto(f"{site.address}calculators/{NAME}/")
        entry(page, "frets").fill("20")
        shows(page, first_slot(frets="20"))
        for given, (_, words) in BREAKS.items():
            entry(page).fill(given)
            told(page, words)
            expect(entry(page)).to_have_value(given)
            expect(entry(page, "frets")).to_have_value("20")
            stale = page.locator(".br-answer")
            expect(stale).to_have_attribute("data-stale", "all")
            assert page.locator(".br-headline").is_hidden()
            entry(page).fill("600")
            shows(page, first_slot(scale_length="600", frets="20"))
        # A heap that grew is let go of after the answer, which is given all the same.
        before = page.evaluate("runtimes.length")
        entry(page).fill("606")
        shows(page, first_slot(scale_length="606", frets="20"))
        entry(page).fill("600")
        shows(page, first_slot(scale_length="600", frets="20"))
        assert page.evaluate("runtimes.length") == before + 1


def test_a_worker_killed_from_outside_is_replaced_without_a_word(
    browser: Browser, site: Site
) -> None:
    with visiting(browser, silence=700) as context:
        page = context.new_page()
        page.goto(f"{site.address}calculators/{NAME}/")
        entry(page).fill("600")
        shows(page, first_slot(scale_length="600"))
        page.evaluate("runtimes.at(-1).terminate()")
        entry(page).fill("610")
        shows(page, first_slot(scale_length="610"))
        assert page.evaluate("runtimes.length") == 2
        # ... and in the middle of its start
        page.goto(f"{site.address}tolerances/")
        button = page.locator(".br-measure:visible").first
        button.click()
        page.evaluate("runtimes.at(-1).dispatchEvent(new ErrorEvent('error', {message: 'killed'}))")
        page.locator(".br-judge input").first.fill("1")
        expect(page.locator(".br-verdict").first).to_contain_text(
            re.compile("Accept|Reject|Can't tell|Allowed"), timeout=LONG
        )


def test_units_changed_in_the_middle_of_a_calculation(browser: Browser, site: Site) -> None:
    """Two changes and an entry while the runtime is still on its way: the figures stay the same."""
    with visiting(browser) as context:
        page = context.new_page()
        page.goto(f"{site.address}calculators/{NAME}/")
        units = page.locator(".br-units")
        units.get_by_role("radio", name="inch, decimal").click()
        units.get_by_role("radio", name="inch, 64ths").click()
        entry(page).fill("600 mm")
        units.get_by_role("radio", name="inch, decimal").click()
        wanted = door.answer(NAME, {"scale_length": "600 mm"}, "inch")["results"]["first_slot"]
        shows(page, wanted["shown"])
        expect(units.get_by_role("radio", name="inch, decimal")).to_be_checked()
        assert abs(float(entry(page).input_value()) * 25.4 - 600) < 0.01


def test_units_stay_as_they_are_where_they_cannot_be_turned(browser: Browser, site: Site) -> None:
    """A figure in millimetres is never read as inches because the runtime failed in between."""
    with visiting(browser) as context:
        fault = Fault(context, "**/pyodide.asm.wasm")
        fault.how = MISSING
        page = context.new_page()
        page.goto(f"{site.address}calculators/{NAME}/")
        page.locator(".br-units").get_by_role("radio", name="inch, decimal").click()
        told(page, WORDS[MISSING])
        expect(page.locator(".br-units").get_by_role("radio", name="mm")).to_be_checked()
        fault.how = SOUND
        entry(page).fill("600")  # the engine may still rest after its failure
        shows(page, first_slot(scale_length="600"))


def test_hands_that_are_too_quick_and_entries_that_are_too_long(
    browser: Browser, site: Site
) -> None:
    with visiting(browser) as context:
        page = context.new_page()
        page.goto(f"{site.address}calculators/{NAME}/")
        entry(page).press_sequentially("1" * 40, delay=0)
        entry(page).fill("600")
        shows(page, first_slot(scale_length="600"))
        page.evaluate(
            """(id) => {
              const entry = document.getElementById(id);
              entry.value = "9".repeat(1_000_000);
              entry.dispatchEvent(new InputEvent("input", { bubbles: true }));
            }""",
            f"{NAME}--scale_length",
        )
        error = page.locator('[data-input="scale_length"] .br-error')
        expect(error).to_be_visible(timeout=LONG)
        assert len(error.inner_text()) < 300
        entry(page).fill("600")
        shows(page, first_slot(scale_length="600"))


def test_leaving_in_the_middle_of_a_calculation_and_coming_back(
    browser: Browser, site: Site
) -> None:
    with visiting(browser) as context:
        faults: list[str] = []
        page = context.new_page()
        page.on("pageerror", lambda error: faults.append(str(error)))
        page.goto(f"{site.address}calculators/{NAME}/")
        entry(page).fill("600")  # the runtime is still on its way
        page.evaluate("document.querySelector('.md-nav a[href*=\"neck-angle\"]').click()")
        expect(page.locator("h1")).to_contain_text("Neck angle")
        page.go_back()
        expect(page.locator("h1")).to_contain_text("Fret spacing")
        entry(page).fill("610")
        shows(page, first_slot(scale_length="610"))
        page.goto("about:blank")  # a full load: the browser may have kept the page as it was
        page.go_back()
        entry(page).fill("620")
        shows(page, first_slot(scale_length="620"))
        assert faults == []


def test_without_scripts_the_pages_are_read_and_promise_nothing(
    browser: Browser, site: Site
) -> None:
    with visiting(browser, javascript=False) as context:
        page = context.new_page()
        page.goto(f"{site.address}calculators/{NAME}/")
        expect(page.locator('[data-result="first_slot"] dd')).to_have_text(first_slot())
        expect(page.locator("noscript .br-no-script")).to_be_visible()
        expect(page.locator(".br-script-missing")).to_be_hidden()
        expect(page.locator(".br-state")).to_have_text("Shown: the example.", use_inner_text=True)
        for live in (".br-units", ".br-form-end", ".br-model-choice"):
            assert page.locator(f"{live}:visible").count() == 0, live
        page.goto(f"{site.address}learning/work/")
        expect(page.locator("[data-work-assignment]")).to_contain_text("needs the page's script")
        page.goto(f"{site.address}tolerances/")
        assert page.locator("tr[data-limits]:visible").count() > 10
        assert page.locator("[data-lookup]:visible").count() == 0


@pytest.mark.parametrize("file", ["page.mjs", "engine.mjs"])
def test_a_page_whose_script_does_not_come_says_so(file: str, browser: Browser, site: Site) -> None:
    with visiting(browser) as context:
        fault = Fault(context, f"**/benchrule/{file}")
        # Cut at a line a file is sound by itself, and yet not all of it.
        for fault.how in (MISSING, A_PAGE, SPOILT, WRONG_TYPE, *[CUT] * (file == "page.mjs")):
            page = context.new_page()
            page.goto(f"{site.address}calculators/{NAME}/")
            expect(page.locator(".br-script-missing")).to_be_visible()
            expect(page.locator('[data-result="first_slot"] dd')).to_have_text(first_slot())
            assert page.locator(".br-live-only").is_hidden()
        fault.how = SOUND
        page.get_by_role("link", name="Load the page again").click()
        expect(page.locator(".br-script-missing")).to_be_hidden()
        entry(page).fill("600")
        shows(page, first_slot(scale_length="600"))


# A part that only some pages have: its file, its page, what stands there once it has come.
def _practised(page: Page) -> None:
    page.get_by_role("button", name="Practise").click()
    expect(page.locator(".br-question")).to_be_visible(timeout=LONG)


PARTS: dict[str, tuple[str, Callable[[Page], None]]] = {
    "practice.mjs": ("stations/neck-fit/", _practised),
    "exercise_view.mjs": ("stations/neck-fit/", _practised),
    "device.mjs": ("stations/neck-fit/", _practised),
    "idb.mjs": ("stations/neck-fit/", _practised),
    "progress.mjs": (
        "learning/", lambda page: expect(page.locator("[data-progress]")).to_contain_text("Nothing practised"),
    ),
    "compare_sheets.mjs": (
        "orders/compare/", lambda page: expect(page.locator("[data-compare] caption")).to_contain_text("differ"),
    ),
    "set_assignment.mjs": (
        "learning/set/", lambda page: expect(page.get_by_label("Title")).to_be_visible(timeout=LONG),
    ),
}  # fmt: skip


@pytest.mark.parametrize("file", PARTS)
def test_a_part_of_a_page_that_does_not_come_is_fetched_again(
    file: str, browser: Browser, site: Site
) -> None:
    where, works = PARTS[file]
    with visiting(browser) as context:
        fault = Fault(context, f"**/benchrule/{file}")
        fault.how = MISSING
        page = context.new_page()
        page.goto(site.address + where)
        told(page, "did not come")
        expect(page.locator(".br-script-missing")).to_be_hidden()  # the rest of the page is live
        fault.how = A_PAGE
        try_again(page)
        told(page, "did not come")
        fault.how = SOUND
        try_again(page)
        works(page)
        assert page.locator(".br-trouble").count() == 0


def test_exercises_and_sheets_that_do_not_come_sound(browser: Browser, site: Site) -> None:
    with visiting(browser) as context:
        fault = Fault(context, "**/exercises-*.json")
        page = context.new_page()
        page.goto(f"{site.address}stations/neck-fit/")
        fault.how = FAULTS_OF_ANY[0]
        page.get_by_role("button", name="Practise").click()
        for now, after in zip(FAULTS_OF_ANY, [*FAULTS_OF_ANY[1:], SOUND], strict=True):
            told(page, "The exercises cannot start here")
            told(page, WORDS[now])
            fault.how = after
            try_again(page)
        expect(page.locator(".br-question")).to_be_visible(timeout=LONG)

        sheets = Fault(context, "**/orders/*.json")
        sheets.how = MISSING
        page.goto(f"{site.address}orders/compare/")
        told(page, "The sheets cannot be compared just now")
        sheets.how = LOG_IN
        try_again(page)
        told(page, WORDS[A_PAGE])
        sheets.how = SOUND
        try_again(page)
        expect(page.locator("[data-compare] caption")).to_contain_text("differ")


def test_a_search_that_does_not_come_is_said_and_comes_with_the_next_key(
    browser: Browser, site: Site
) -> None:
    index = json.loads((site.folder / "search" / "search_index.json").read_text("utf-8"))
    with visiting(browser) as context:
        fault = Fault(context, f"**/{index['docs'][0]['location']}")
        page = context.new_page()
        page.goto(site.address)
        for fault.how in (MISSING, A_PAGE):
            field = page.get_by_role("textbox", name="Search")
            field.press_sequentially("fret")
            expect(page.locator(".md-search-result__item").first).to_contain_text(
                "could not be fetched"
            )
        fault.how = SOUND
        field.press_sequentially(" slot")
        expect(page.locator(".md-search-result__item").first).to_contain_text(
            re.compile("slot", re.I)
        )


def test_is_it_in_fails_in_words_and_tries_again(browser: Browser, site: Site) -> None:
    with visiting(browser) as context:
        fault = Fault(context, "**/python_stdlib.zip")
        fault.how = MISSING
        page = context.new_page()
        page.goto(f"{site.address}tolerances/")
        page.locator(".br-measure:visible").first.click()
        page.locator(".br-judge input").fill("1")
        told(page, "compare with the limits above")
        fault.how = SOUND
        try_again(page)
        expect(page.locator(".br-verdict")).to_contain_text(
            re.compile("Accept|Reject|Can't tell|Allowed"), timeout=LONG
        )
