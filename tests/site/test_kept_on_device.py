"""What a reader did is kept, or they are told that it is not: a full store, a refused one, one that is
deleted, of a newer edition or spoilt, and two tabs that work on the same thing at once."""

import json
import re
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Page, expect

from calculators.learning import assignment as assignments

from .conftest import Site
from .visits import LONG, visiting

REFUSED = "IDBFactory.prototype.open = () => { throw new DOMException('no', 'SecurityError'); };"
SILENT = """const open = IDBFactory.prototype.open;
IDBFactory.prototype.open = () => ({ addEventListener() {}, removeEventListener() {} });"""
NO_CHOICES = """for (const name of ["getItem", "setItem"]) {
  Storage.prototype[name] = () => { throw new DOMException('no', 'SecurityError'); };
}"""
PUT = """([version, stores]) => new Promise((done, fail) => {
  const open = indexedDB.open("benchrule", version);
  open.onupgradeneeded = ({ oldVersion }) => {
    if (oldVersion) return;
    open.result.createObjectStore("answers", { keyPath: "id" }).createIndex("at", "at");
    open.result.createObjectStore("kept");
  };
  open.onerror = () => fail(open.error);
  open.onsuccess = () => {
    const step = open.result.transaction(["answers", "kept"], "readwrite");
    for (const [key, value] of stores.kept ?? []) step.objectStore("kept").put(value, key);
    for (const value of stores.answers ?? []) step.objectStore("answers").put(value);
    step.oncomplete = () => { open.result.close(); done(); };
  };
})"""
ALL = """() => new Promise((done, fail) => {
  const open = indexedDB.open("benchrule");
  open.onupgradeneeded = () => open.transaction.abort(); // there is none: none is made
  open.onerror = (event) => { event.preventDefault(); done({ answers: [], kept: {} }); };
  open.onsuccess = () => {
    const step = open.result.transaction(["answers", "kept"]);
    const [answers, keys, values] = [
      step.objectStore("answers").getAll(), step.objectStore("kept").getAllKeys(), step.objectStore("kept").getAll(),
    ];
    step.oncomplete = () => {
      open.result.close();
      done({ answers: answers.result, kept: Object.fromEntries(keys.result.map((key, at) => [key, values.result[at]])) });
    };
  };
})"""
FILL = """async () => {
  const db = await new Promise((done) => {
    const open = indexedDB.open("ballast", 1);
    open.onupgradeneeded = () => open.result.createObjectStore("bytes", { autoIncrement: true });
    open.onsuccess = () => done(open.result);
  });
  for (const size of [60_000, 6_000, 600, 60, 6]) {
    let fits = true;
    while (fits) {
      fits = await new Promise((done) => {
        const step = db.transaction("bytes", "readwrite");
        for (let at = 0; at < 5; at++) step.objectStore("bytes").put(crypto.getRandomValues(new Uint8Array(size)));
        step.oncomplete = () => done(true);
        step.onabort = () => done(false);
      });
    }
  }
  db.close();
}"""
PRACTICE = "calculators/string-tension/"
KEY = "practice/calculator-string-tension"
ORDER = "2026-101"


def practise(page: Page, site: Site, button: str = "Practise") -> None:
    page.goto(site.address + PRACTICE)
    page.get_by_role("button", name=button).click()
    expect(page.locator(".br-question")).to_be_visible(timeout=LONG)


def give(page: Page, figure: str = "12.345") -> None:
    """Any answer to the question that stands on the page."""
    question = page.locator(".br-question")
    if question.get_by_role("textbox").count():
        question.get_by_role("textbox").fill(figure)
    elif question.get_by_role("radio").count():
        question.locator("label").first.click()
    else:
        question.get_by_role("checkbox").check()


def check(page: Page) -> None:
    page.get_by_role("button", name="Check").click()
    expect(page.locator(".br-mark")).to_be_visible(timeout=LONG)


def go_on(page: Page) -> None:
    page.get_by_role("button", name="Next question").click()
    expect(page.locator(".br-mark")).to_have_count(0)
    expect(page.locator(".br-question")).to_be_visible(timeout=LONG)


def progress(page: Page) -> None:
    """To the page of progress without a full load: the visit goes on."""
    page.locator('a[href$="/learning/"]').first.evaluate("(link) => link.click()")
    page.wait_for_url("**/learning/")
    expect(page.locator("[data-progress] button").first).to_be_visible()


def saved(page: Page) -> dict[str, Any]:
    with page.expect_download() as download:
        page.get_by_role("button", name="Save to a file").click()
    found: dict[str, Any] = json.loads(Path(download.value.path()).read_text("utf-8"))
    return found


def until(page: Page, found: Any, wanted: Any) -> None:
    for _ in range(600):
        now = found()
        if now == wanted:
            return
        page.wait_for_timeout(100)
    raise AssertionError(f"{now!r} is not {wanted!r}")


def test_a_full_store_is_said_and_what_was_done_is_in_the_file(
    browser: Browser, site: Site
) -> None:
    with visiting(browser) as context:
        page = context.new_page()
        session = context.new_cdp_session(page)
        quota = {"origin": site.address.rstrip("/")}
        # Before the store is first opened: the browser goes by the room it found then for half a
        # minute, and would take in more than there is room for afterwards.
        session.send("Storage.overrideQuotaForOrigin", {**quota, "quotaSize": 3_000_000})
        practise(page, site)
        until(page, lambda: KEY in page.evaluate(ALL)["kept"], True)
        session.send("Storage.overrideQuotaForOrigin", {**quota, "quotaSize": 1})
        page.evaluate(FILL)  # takes up what is left of that room
        assert page.evaluate("navigator.storage.estimate().then(({ usage }) => usage)") < 4_000_000
        give(page)
        check(page)
        result = page.locator(".br-practice-result")
        expect(result).to_contain_text("did not keep the answer")
        expect(result).to_contain_text("save it to a file")
        go_on(page)
        give(page)
        check(page)
        progress(page)
        expect(page.locator(".br-progress-said")).to_contain_text("store is full")
        assert len(saved(page)["answers"]) == 2
        assert page.evaluate(ALL)["answers"] == []

        session.send("Storage.overrideQuotaForOrigin", quota)  # room was made
        page.go_back()
        page.get_by_role("button", name=re.compile("ractis")).click()
        expect(page.locator(".br-question")).to_be_visible(timeout=LONG)
        give(page)
        check(page)
        expect(page.locator(".br-practice-result")).not_to_contain_text("did not keep")
        until(page, lambda: len(page.evaluate(ALL)["answers"]), 3)


@pytest.mark.parametrize(
    ("script", "words"), [(REFUSED, "keeps nothing"), (SILENT, "keeps nothing")]
)  # fmt: skip
def test_a_store_that_is_refused_or_never_opens(
    script: str, words: str, browser: Browser, site: Site
) -> None:
    with visiting(browser, script, NO_CHOICES) as context:
        page = context.new_page()
        practise(page, site)
        # A choice that cannot be kept holds all the same, as long as the page does.
        units = page.locator(".br-practice-bar").get_by_label("Units")
        units.select_option("inch")
        expect(units).to_have_value("inch", timeout=LONG)
        expect(page.locator(".br-question")).to_be_visible(timeout=LONG)
        give(page)
        check(page)
        expect(page.locator(".br-practice-result")).to_contain_text(words)
        progress(page)
        expect(page.locator(".br-progress-said")).to_contain_text(words)
        expect(page.locator(".br-progress tbody tr")).to_have_count(1, timeout=LONG)
        assert len(saved(page)["answers"]) == 1


def test_a_store_of_a_newer_edition_is_left_alone(browser: Browser, site: Site) -> None:
    with visiting(browser) as context:
        page = context.new_page()
        page.goto(f"{site.address}sources/")
        kept = {"id": "newer", "exercise": "a/b", "verdict": "right", "right": True, "at": 1}
        page.evaluate(PUT, [7, {"answers": [kept]}])
        practise(page, site)
        give(page)
        check(page)
        expect(page.locator(".br-practice-result")).to_contain_text("newer edition")
        expect(page.locator(".br-practice-result")).to_contain_text("load the page again")
        assert page.evaluate(ALL)["answers"] == [kept]


def test_records_that_are_spoilt_stop_nothing(browser: Browser, site: Site) -> None:
    order = ORDER
    good = {"id": "good", "exercise": "a/b", "verdict": "right", "right": True, "at": 1}
    with visiting(browser) as context:
        page = context.new_page()
        page.goto(f"{site.address}sources/")
        page.evaluate(
            PUT,
            [1, {
                "answers": [good, {"id": "1", "exercise": 7}, {"id": "2", "right": "yes"}],
                "kept": [[KEY, 42], ["work/x/ABCD", {"given": None}], ["work/y/ABCD", "text"],
                         [f"order/{order}", [1, {"given": {}}]]],
            }],
        )  # fmt: skip
        page.evaluate(
            "localStorage['benchrule.units'] = 'furlongs'; localStorage['benchrule.model'] = '{}'"
        )
        practise(page, site)
        progress(page)
        expect(page.locator(".br-progress-said")).to_contain_text("2 of the entries")
        assert [one["id"] for one in saved(page)["answers"]] == ["good"]
        page.goto(f"{site.address}learning/work/")
        expect(page.get_by_text("Open an assignment")).to_be_visible()
        page.goto(f"{site.address}orders/{order}/")
        expect(page.locator(".br-measured input").first).to_be_visible()


def test_a_second_press_and_a_clock_set_back_count_no_answer_twice(
    browser: Browser, site: Site
) -> None:
    with visiting(browser) as context:
        page = context.new_page()
        practise(page, site)
        give(page)
        page.evaluate("Date.now = () => 86_400_000")  # a day after the epoch
        page.get_by_role("button", name="Check").dblclick()
        expect(page.locator(".br-mark")).to_be_visible(timeout=LONG)
        page.wait_for_timeout(300)
        if page.locator(".br-mark").count():  # where the second press did not go on already
            page.get_by_role("button", name="Next question").dblclick()
        expect(page.locator(".br-question")).to_be_visible(timeout=LONG)
        expect(page.locator(".br-mark")).to_have_count(0)
        give(page)
        check(page)
        found = page.evaluate(ALL)["answers"]
        assert len(found) == 2 and len({one["seed"] for one in found}) == 2


# --- Two tabs


@pytest.fixture(scope="module")
def assignment(site: Site) -> tuple[str, str]:
    """The link of an assignment of four questions, and a trainee's code."""
    bank = json.loads(
        next(site.folder.glob("assets/benchrule/exercises-*.json")).read_text("utf-8")
    )
    choices = {
        "title": "Two tabs", "word": "", "due": "", "units": "metric", "grade": 2, "marks": 1,
        "trainees": 1, "questions": [[exercise, 4] for exercise in [numbers(bank)]],
    }  # fmt: skip
    made = assignments.make(bank, choices, "ABCDEFGHJK")
    link = f"{site.address}learning/work/#{assignments.to_link_fragment(made)}"
    return link, assignments.codes(made)[0]


def numbers(bank: dict[str, Any]) -> str:
    """An exercise whose answer is a number."""
    all_of = [id for one in bank["stations"].values() for id in one["exercises"]]
    return str(next(id for id in all_of if id.startswith("fret-spacing/")))


def work(page: Page, assignment: tuple[str, str]) -> None:
    link, code = assignment
    page.goto(link)
    expect(page.get_by_label("Your code")).to_be_visible(timeout=LONG)
    page.get_by_label("Your code").fill(code)
    page.get_by_role("button", name="Begin").dblclick()  # one paper comes of it
    expect(page.locator(".br-learn-paper > li")).to_have_count(4, timeout=LONG)


def place(page: Page, number: int) -> Any:
    return page.locator(f"#br-q{number}").get_by_role("textbox")


def given(page: Page) -> dict[str, str]:
    works = [one for key, one in page.evaluate(ALL)["kept"].items() if key.startswith("work/")]
    return dict(works[0]["given"]) if works else {}


def test_an_assignment_in_two_tabs_loses_no_answer(
    browser: Browser, site: Site, assignment: tuple[str, str]
) -> None:
    with visiting(browser) as context:
        one, other = context.new_page(), context.new_page()
        work(one, assignment)
        work(other, assignment)
        place(one, 1).fill("11")
        place(other, 2).fill("22")
        place(one, 3).fill("33")
        expect(place(other, 3)).to_have_value("33")
        expect(place(one, 2)).to_have_value("22")
        expect(one.locator(".br-learn-total")).to_have_text("3 of 4 answered; kept on this device.")
        expect(other.get_by_text("open in another tab too")).to_be_visible()
        until(one, lambda: given(one), {"1": "11", "2": "22", "3": "33"})
        place(other, 1).fill("")  # taken back in the other tab
        expect(place(one, 1)).to_have_value("")
        until(one, lambda: given(one), {"2": "22", "3": "33"})

        # What was kept is deleted under both: what stands there is kept again.
        session = context.new_cdp_session(one)
        session.send(
            "Storage.clearDataForOrigin",
            {"origin": site.address.rstrip("/"), "storageTypes": "indexeddb"},
        )
        expect(one.get_by_text("was deleted")).to_be_visible()
        place(one, 4).fill("44")
        until(one, lambda: given(one), {"2": "22", "3": "33", "4": "44"})
        expect(place(other, 4)).to_have_value("44")

        # Finished in one tab, it is finished in the other: there is one result.
        other.once("dialog", lambda dialog: dialog.accept())
        other.get_by_role("button", name="Finish").dblclick()
        expect(other.locator(".br-learn-score")).to_be_visible(timeout=LONG)
        expect(one.locator(".br-learn-score")).to_be_visible()
        expect(one.get_by_text("Finished in another tab")).to_be_visible()


def test_an_assignment_whose_answers_are_not_kept_ends_in_a_file(
    browser: Browser, site: Site, assignment: tuple[str, str]
) -> None:
    with visiting(browser, REFUSED) as context:
        page = context.new_page()
        work(page, assignment)
        place(page, 1).fill("11")
        expect(page.locator(".br-learn-total")).to_contain_text("save the result file")
        page.once("dialog", lambda dialog: dialog.accept())
        page.get_by_role("button", name="Finish").click()
        expect(page.locator(".br-learn-score")).to_be_visible(timeout=LONG)
        with page.expect_download() as download:
            page.get_by_role("button", name="Save the result file").click()
        assert '"11"' in Path(download.value.path()).read_text("utf-8")


def test_practice_in_two_tabs_keeps_both_answers_and_both_questions(
    browser: Browser, site: Site
) -> None:
    with visiting(browser) as context:
        one, other = context.new_page(), context.new_page()
        practise(one, site)
        until(one, lambda: KEY in one.evaluate(ALL)["kept"], True)
        practise(other, site, "Go on practising")
        give(one)
        check(one)  # the same question stands in both
        expect(other.locator(".br-practice-result")).to_contain_text("answered in another tab")
        go_on(other)
        go_on(one)
        until(one, lambda: len(seeds(one)), 2)
        give(other)
        check(other)
        until(one, lambda: len(seeds(one)), 1)
        left = seeds(one)
        assert len(one.evaluate(ALL)["answers"]) == 2
        one.close()  # killed with its question open
        other.reload()
        other.get_by_role("button", name="Go on practising").click()
        expect(other.locator(".br-question")).to_be_visible(timeout=LONG)
        until(other, lambda: seeds(other), left)


def seeds(page: Page) -> list[str]:
    """The questions under way."""
    now = page.evaluate(ALL)["kept"].get(KEY)
    return sorted(one["seed"] for one in [now, *now["others"]]) if now else []


def test_a_build_sheet_in_two_tabs_keeps_what_both_measured(browser: Browser, site: Site) -> None:
    order = ORDER
    with visiting(browser) as context:
        one, other = context.new_page(), context.new_page()
        for page in (one, other):
            page.goto(f"{site.address}orders/{order}/")
            expect(page.locator(".br-measured input").first).to_be_visible()
        empty = "(rows) => rows.map((row, at) => row.querySelector('.br-measured input')?.value === '' ? at : -1).filter((at) => at >= 0)"
        first, second = one.locator("tr[data-key]").evaluate_all(empty)[:2]

        def cell(page: Page, at: int) -> Any:
            return page.locator("tr[data-key]").nth(at).locator(".br-measured input")

        cell(one, first).fill("1.5 mm")
        cell(other, second).fill("2.5 mm")
        expect(cell(other, first)).to_have_value("1.5 mm")
        expect(cell(one, second)).to_have_value("2.5 mm")
        kept = lambda: sorted(  # noqa: E731
            value["given"] for value in one.evaluate(ALL)["kept"][f"order/{order}"].values()
        )
        until(one, kept, ["1.5 mm", "2.5 mm"])
        expect(one.get_by_text("open in another tab too")).to_be_visible()


TYPE_WHEN_TOLD = """([place, text]) => {
  const told = new BroadcastChannel("benchrule.device");
  told.onmessage = () => {
    told.close();
    const entry = document.querySelector(place);
    entry.value = text;
    entry.dispatchEvent(new InputEvent("input", { bubbles: true }));
  };
}"""


def test_what_is_typed_just_as_another_tab_tells_of_the_same_is_not_overwritten(
    browser: Browser, site: Site, assignment: tuple[str, str]
) -> None:
    with visiting(browser) as context:
        one, other = context.new_page(), context.new_page()
        work(one, assignment)
        work(other, assignment)
        other.evaluate(TYPE_WHEN_TOLD, ["#br-q1 input", "22"])
        place(one, 1).fill("11")
        until(one, lambda: given(one), {"1": "22"})
        expect(place(one, 1)).to_have_value("22")
        expect(place(other, 1)).to_have_value("22")

        for page in (one, other):
            page.goto(f"{site.address}orders/{ORDER}/")
            expect(page.locator(".br-measured input").first).to_be_visible()
        cell = "tr[data-key='neck-top-rise'] .br-measured input"
        other.evaluate(TYPE_WHEN_TOLD, [cell, "3.2 mm"])
        one.locator(cell).fill("3.1 mm")
        expect(one.locator(cell)).to_have_value("3.2 mm")
        expect(other.locator(cell)).to_have_value("3.2 mm")
        kept = lambda: one.evaluate(ALL)["kept"][f"order/{ORDER}"]["neck-top-rise"]["given"]  # noqa: E731
        until(one, kept, "3.2 mm")


def test_a_figure_measured_in_other_units_keeps_its_unit(browser: Browser, site: Site) -> None:
    order = ORDER
    with visiting(browser) as context:
        page = context.new_page()
        page.goto(f"{site.address}orders/{order}/")
        cell = page.locator("tr[data-judge*='\"mm\"'] .br-measured input").first
        cell.fill("2.75")
        judged = page.locator("tr[data-judge*='\"mm\"'] .br-judged").first
        expect(judged).to_have_text(re.compile("In|Out|Can't tell"), timeout=LONG)
        verdict = judged.inner_text()
        page.evaluate("localStorage['benchrule.units'] = 'inch'")
        page.reload()
        expect(cell).to_have_value("2.75 mm")
        expect(judged).to_have_text(verdict, timeout=LONG)
