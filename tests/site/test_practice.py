"""Practice in a real browser: marked as the command line marks, kept over a power cut, exported."""

import json
import re
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, expect

from benchrule.exercise_bank import exercise_bank
from benchrule.handbook import load_handbook
from calculators.learning.bank import draw
from calculators.learning.question import NUMBER, ORDER, Question

from .conftest import ROOT, Site
from .visits import HOLD_UP, LONG, hold_up, visiting

DRAW = '"do":"draw"'
KEPT = """async (key) => {
  const db = await new Promise((done, fail) => {
    const open = indexedDB.open("benchrule");
    open.onsuccess = () => done(open.result);
    open.onerror = () => fail(open.error);
  });
  const found = await new Promise((done) => {
    const ask = db.transaction("kept").objectStore("kept").get(key);
    ask.onsuccess = () => done(ask.result ?? null);
  });
  db.close();
  return found;
}"""


@pytest.fixture(scope="module")
def bank() -> dict[str, Any]:
    handbook, problems = load_handbook(ROOT, ROOT / "docs")
    assert problems == []
    return exercise_bank(handbook)


def begin(page: Page, site: Site, where: str, name: str = "Practise") -> None:
    page.goto(f"{site.address}{where}")
    page.get_by_role("button", name=name).click()
    expect(page.locator(".br-question")).to_be_visible()


def asked(page: Page, key: str, bank: dict[str, Any]) -> Question:
    """The question that stands on the page, drawn here from what the device keeps of it."""
    for _ in range(100):
        under_way = page.evaluate(KEPT, key)
        shown = page.locator(".br-question-words").all_inner_texts()
        if under_way and shown and not page.locator(".br-mark").count():
            question = draw(
                bank,
                under_way["exercise"],
                under_way["seed"],
                under_way["grade"],
                under_way["units"],
            )
            if [question.words] == shown:
                return question
        page.wait_for_timeout(100)
    raise AssertionError(f"no question came: {under_way}, {shown}")


def answer(page: Page, question: Question, text: str | None = None) -> None:
    """Gives an answer: the right one, or ``text``."""
    place = page.locator(".br-question")
    if question.kind == NUMBER:
        place.get_by_role("textbox").fill(text or question.shown)
    elif question.kind == ORDER:
        assert isinstance(question.answer, tuple)
        for at, wanted in enumerate(question.answer):
            words = question.options[wanted]
            while place.locator("li").nth(at).locator("span").inner_text() != words:
                place.locator("li", has_text=words).get_by_role("button", name="earlier").click()
        if not place.get_by_role("checkbox").is_checked():
            place.get_by_role("checkbox").check()
    else:
        place.locator("label").nth(int(question.answer)).click()  # type: ignore[arg-type]


def check(page: Page) -> str:
    page.get_by_role("button", name="Check").click()
    expect(page.locator(".br-mark")).to_be_visible()
    return page.locator(".br-mark").inner_text()


def test_right_answers_are_marked_right_one_after_the_other(
    page: Page, site: Site, bank: dict[str, Any]
) -> None:
    key = "practice/neck-fit"
    begin(page, site, "stations/neck-fit/")
    kinds = set()
    for _ in range(8):
        question = asked(page, key, bank)
        assert page.locator(".br-question-words").inner_text() == question.words
        kinds.add(question.exercise.partition("/")[0])
        answer(page, question)
        assert check(page).startswith("Right"), question
        page.get_by_role("button", name="Next question").click()
    assert len(kinds) > 1, "eight questions of one kind alone"


def test_a_known_slip_is_named_with_its_reason_and_the_steps(
    page: Page, site: Site, bank: dict[str, Any]
) -> None:
    begin(page, site, "calculators/fret-spacing/")
    for _ in range(6):  # until a question with a number comes
        question = asked(page, "practice/calculator-fret-spacing", bank)
        if question.kind == NUMBER:
            break
        answer(page, question)
        check(page)
        page.get_by_role("button", name="Next question").click()
    slip = question.slips[0]
    answer(page, question, slip.shown)
    words = check(page)
    assert words.startswith("A known slip") and slip.why in words and question.shown in words
    page.get_by_text("The way there, with your figures").click()
    assert page.locator(".br-mark .br-steps li").count() == len(question.steps)


def test_what_cannot_be_read_is_no_answer(page: Page, site: Site, bank: dict[str, Any]) -> None:
    begin(page, site, "calculators/saddle-height/")
    question = asked(page, "practice/calculator-saddle-height", bank)
    page.get_by_role("button", name="Check").click()
    expect(page.locator(".br-practice-live .br-error")).to_have_text("Give an answer first.")
    if question.kind == NUMBER:
        page.get_by_role("textbox", name="Your answer").fill("two <b>turns</b>")
        page.get_by_role("button", name="Check").click()
        expect(page.locator(".br-practice-live .br-error")).to_contain_text("is not a number")
        assert page.locator(".br-mark").count() == 0


def test_a_power_cut_loses_nothing(
    browser: Browser, site: Site, bank: dict[str, Any], tmp_path: Path
) -> None:
    """The tab is killed with a question half answered; the same question stands there again."""
    context = browser.new_context()
    page = context.new_page()
    begin(page, site, "calculators/string-tension/")
    question = asked(page, "practice/calculator-string-tension", bank)
    if question.kind == NUMBER:
        page.get_by_role("textbox", name="Your answer").fill("12.345")
    else:
        page.locator(".br-question label").nth(1).click()
    for _ in range(50):
        if page.evaluate(KEPT, "practice/calculator-string-tension")["given"] is not None:
            break
        page.wait_for_timeout(100)
    page.close()
    page = context.new_page()
    begin(page, site, "calculators/string-tension/", "Go on practising")
    assert asked(page, "practice/calculator-string-tension", bank) == question
    if question.kind == NUMBER:
        expect(page.get_by_role("textbox", name="Your answer")).to_have_value("12.345")
    else:
        expect(page.locator(".br-question input").nth(1)).to_be_checked()
    context.close()


def practised(context: BrowserContext, site: Site, bank: dict[str, Any]) -> Page:
    """A page of progress after two answers."""
    page = context.new_page()
    begin(page, site, "stations/polishing/")
    for turn in range(2):
        if turn:
            page.get_by_role("button", name="Next question").click()
            expect(page.locator(".br-mark")).to_have_count(0)
        answer(page, asked(page, "practice/polishing", bank))
        check(page)
    page.goto(f"{site.address}learning/")
    expect(page.locator(".br-progress tbody tr")).to_have_count(1)
    return page


def test_progress_is_shown_exported_wiped_and_taken_in_again(
    browser: Browser, site: Site, bank: dict[str, Any], tmp_path: Path
) -> None:
    context = browser.new_context(accept_downloads=True)
    page = practised(context, site, bank)
    row = page.locator(".br-progress tbody tr").inner_text().split()
    assert row[0] == "Polishing" and row[-2:] == ["2", "2"]
    with page.expect_download() as download:
        page.get_by_role("button", name="Save to a file").click()
    file = tmp_path / "progress.json"
    download.value.save_as(file)
    saved = json.loads(file.read_text())
    assert [one["verdict"] for one in saved["answers"]] == ["right", "right"]

    page.once("dialog", lambda dialog: dialog.accept())
    page.get_by_role("button", name="Wipe").click()
    expect(page.locator("[data-progress]")).to_contain_text("Nothing practised on this device yet")
    entry = page.locator("#br-progress-file")
    entry.set_input_files(file)
    expect(page.locator(".br-progress tbody tr")).to_have_count(1)
    entry.set_input_files(file)
    expect(page.locator(".br-progress-said")).to_contain_text("0 new answers")
    for name, text, words in (
        ("cut.json", file.read_text()[:-20], "cut off"),
        ("other.json", '{"benchrule": "result", "version": 1}', "not a progress file"),
        ("bad.json", json.dumps({**saved, "answers": [{"id": 1}]}), "damaged"),
    ):
        entry.set_input_files(
            {"name": name, "mimeType": "application/json", "buffer": text.encode()}
        )
        expect(page.locator(".br-progress-said")).to_contain_text(re.compile(words))
    expect(page.locator(".br-progress tbody tr")).to_have_count(1)
    context.close()


def test_where_nothing_can_be_kept_it_is_said_and_practice_goes_on(
    browser: Browser, site: Site, bank: dict[str, Any]
) -> None:
    context = browser.new_context()
    context.add_init_script(
        "IDBFactory.prototype.open = () => { throw new DOMException('refused', 'SecurityError'); }"
    )
    page = context.new_page()
    page.goto(f"{site.address}stations/polishing/")
    page.get_by_role("button", name="Practise").click()
    question = page.locator(".br-question")
    expect(question).to_be_visible()
    if question.get_by_role("textbox").count():
        question.get_by_role("textbox").fill("1")
    elif question.get_by_role("radio").count():
        question.locator("label").first.click()
    else:
        question.get_by_role("checkbox").check()
    check(page)
    expect(page.locator(".br-practice-result .br-error")).to_contain_text("did not keep the answer")
    page.get_by_role("button", name="Next question").click()
    expect(page.locator(".br-mark")).to_have_count(0)
    context.close()


HELD_KEY = "practice/calculator-string-tension"


@contextmanager
def held_up(
    browser: Browser, site: Site, bank: dict[str, Any]
) -> Iterator[tuple[Page, Question]]:
    """A visit whose worker can be held up, and the question that stands there."""
    with visiting(browser, HOLD_UP) as context:
        page = context.new_page()
        begin(page, site, "calculators/string-tension/")
        yield page, asked(page, HELD_KEY, bank)


def test_nothing_can_be_typed_that_a_question_on_its_way_would_sweep_away(
    browser: Browser, site: Site, bank: dict[str, Any]
) -> None:
    with held_up(browser, site, bank) as (page, first):
        bar = page.locator(".br-practice-bar")
        entries = page.locator(".br-question").locator("input, button")
        assert entries.count()
        hold_up(page, DRAW, 1_000)
        bar.get_by_label("Units").select_option("inch")
        for entry in entries.all():
            expect(entry).to_be_disabled()
        expect(page.get_by_role("button", name="Check")).to_be_disabled()
        expect(page.get_by_text("Drawing another question …")).to_be_visible()
        # What is chosen while a question is on its way holds too, and the last choice wins.
        bar.get_by_label("Grade").select_option("3")
        bar.get_by_label("Units").select_option("inch64")
        words = page.locator(".br-question-words")
        expect(words).not_to_have_text(first.words, timeout=LONG)
        expect(bar.get_by_label("Units")).to_be_focused()
        expect(bar.get_by_label("Units")).to_have_value("inch64")
        expect(bar.get_by_label("Grade")).to_have_value("3")
        drawn = words.inner_text()
        page.wait_for_timeout(2_000)
        assert words.inner_text() == drawn, "one that was let go came after all"
        hold_up(page, DRAW, 0)
        question = asked(page, HELD_KEY, bank)
        kept = page.evaluate(KEPT, HELD_KEY)
        assert (kept["units"], kept["grade"], kept["others"]) == ("inch64", 3, [])
        assert question.exercise == first.exercise
        answer(page, question)
        assert check(page).startswith("Right")


def test_stopping_while_a_question_is_on_its_way(
    browser: Browser, site: Site, bank: dict[str, Any]
) -> None:
    with held_up(browser, site, bank) as (page, _):
        hold_up(page, DRAW, 1_000)
        page.locator(".br-practice-bar").get_by_label("Units").select_option("inch")
        page.get_by_role("button", name="Stop for now").click()
        offer = page.get_by_role("button", name=re.compile("ractis"))
        expect(offer).to_be_visible()
        page.wait_for_timeout(2_000)
        expect(offer).to_be_visible()
        expect(page.locator(".br-question")).to_have_count(0)


def test_stopping_while_an_answer_is_being_marked(
    browser: Browser, site: Site, bank: dict[str, Any]
) -> None:
    """The answer was given: it counts, and its question does not come back."""
    with held_up(browser, site, bank) as (page, question):
        answer(page, question)
        hold_up(page, '"do":"mark"', 1_000)
        page.get_by_role("button", name="Check").click()
        expect(page.locator(".br-practice-bar").get_by_label("Units")).to_be_disabled()
        page.get_by_role("button", name="Stop for now").click()
        expect(page.locator(".br-question")).to_have_count(0)
        page.wait_for_timeout(2_000)
        expect(page.locator(".br-mark")).to_have_count(0)
        assert page.evaluate(KEPT, HELD_KEY) is None
        page.get_by_role("button", name="Go on practising").click()
        expect(page.locator(".br-practice-count")).to_contain_text("1 tried", timeout=LONG)
        assert asked(page, HELD_KEY, bank) != question
