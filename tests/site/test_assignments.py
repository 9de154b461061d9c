"""A whole class in a real browser: set, worked offline on three devices, marked in the page and by
the command with one table; a tampered file is named; hostile files and links are refused."""

import csv
import io
import json
import re
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
import zxingcpp
from PIL import Image
from playwright.sync_api import Browser, BrowserContext, Page, expect

from benchrule.exercise_bank import exercise_bank
from benchrule.handbook import load_handbook
from calculators.learning import assignment as assignments
from calculators.learning.question import NUMBER, ORDER, Question

from .conftest import ROOT, Site

CHOSEN = {
    "Fretting": ["Fret spacing: slot from nut"],
    "Neck fit": ["Order of work: Neck fit", "Faults: Neck fit"],
}
Answerer = Callable[[Page, int, Question], None]


@pytest.fixture(scope="module")
def bank() -> dict[str, Any]:
    handbook, problems = load_handbook(ROOT, ROOT / "docs")
    assert problems == []
    return exercise_bank(handbook)


def set_one(page: Page, site: Site, folder: Path) -> tuple[Path, str, list[str]]:
    """Sets an assignment in the page: its file, its link, its codes."""
    page.goto(f"{site.address}learning/set/")
    expect(page.locator(".br-learn-station")).not_to_have_count(0)
    page.get_by_label("Title").fill("First week <b>& after</b>")
    page.get_by_label("A word of instruction").fill("Work alone.\nGuess nothing.")
    page.get_by_label("Trainees").fill("3")
    for station, exercises in CHOSEN.items():
        place = page.locator(
            ".br-learn-station", has=page.locator("summary", has_text=re.compile(f"^{station}"))
        )
        place.locator("summary").click()
        for title in exercises:
            place.get_by_label(f"Questions of {title}").fill("2")
    expect(page.locator(".br-learn-total")).to_have_text("6 questions for each trainee.")
    page.get_by_role("button", name="Make the assignment").click()
    expect(page.locator(".br-learn-codes li")).to_have_count(3)
    with page.expect_download() as download:
        page.get_by_role("button", name="Save the file").click()
    file = folder / "assignment.json"
    download.value.save_as(file)
    link = page.get_by_role("textbox", name="Link").input_value()
    picture = Image.open(io.BytesIO(page.locator(".br-learn-qr").screenshot()))
    assert [code.text for code in zxingcpp.read_barcodes(picture)] == [link]
    return file, link, page.locator(".br-learn-codes li").all_inner_texts()


def work(
    context: BrowserContext, site: Site, link: str, code: str, bank: dict[str, Any],
    answer: Answerer, folder: Path,
) -> Path:  # fmt: skip
    """A trainee's device: the page was once open there, then the network is gone."""
    page = context.new_page()
    page.goto(f"{site.address}learning/work/")
    page.wait_for_load_state("networkidle")
    context.set_offline(True)
    page.evaluate("(link) => { location.href = link; }", link)
    page.get_by_label("Your code").fill(code.lower())
    page.get_by_role("button", name="Begin").click()
    expect(page.locator(".br-learn-paper > li")).to_have_count(6)
    found = assignments.from_link_fragment(link.partition("#")[2])
    for one in assignments.questions_for(bank, found, code):
        place = page.locator(f"#br-q{one.number}")
        assert place.locator(".br-question-words").inner_text() == one.question.words
        answer(page, one.number, one.question)
    page.once("dialog", lambda dialog: dialog.accept())
    page.get_by_role("button", name="Finish").click()
    expect(page.locator(".br-learn-score")).to_be_visible()
    with page.expect_download() as download:
        page.get_by_role("button", name="Save the result file").click()
    file = folder / f"{code}.json"
    download.value.save_as(file)
    context.set_offline(False)
    return file


def right(page: Page, number: int, question: Question) -> None:
    place = page.locator(f"#br-q{number}")
    if question.kind == NUMBER:
        place.get_by_role("textbox").fill(question.shown)
    elif question.kind == ORDER:
        assert isinstance(question.answer, tuple)
        for at, wanted in enumerate(question.answer):
            words = question.options[wanted]
            while place.locator(".br-order li").nth(at).locator("span").inner_text() != words:
                place.locator("li", has_text=words).get_by_role("button", name="earlier").click()
        if not place.get_by_role("checkbox").is_checked():
            place.get_by_role("checkbox").check()
    else:
        place.locator(".br-options label").nth(int(question.answer)).click()  # type: ignore[arg-type]


def slipping(page: Page, number: int, question: Question) -> None:
    """The first known slip for a number, the right answer elsewhere."""
    if question.kind == NUMBER:
        page.locator(f"#br-q{number}").get_by_role("textbox").fill(question.slips[0].shown)
    else:
        right(page, number, question)


def wrong_or_nothing(page: Page, number: int, question: Question) -> None:
    place = page.locator(f"#br-q{number}")
    if question.kind == NUMBER:
        place.get_by_role("textbox").fill("=1+1")
    elif question.kind != ORDER:
        wrong = (int(question.answer) + 1) % len(question.options)  # type: ignore[arg-type]
        place.locator(".br-options label").nth(wrong).click()


def marked_in_page(page: Page, site: Site, assignment: Path, results: list[Path]) -> str:
    page.goto(f"{site.address}learning/mark/")
    page.get_by_label("The assignment's file").set_input_files(assignment)
    page.get_by_label("The result files, any number").set_input_files(results)
    page.get_by_role("button", name="Mark").click()
    expect(page.locator(".br-class table").first).to_be_visible()
    with page.expect_download() as download:
        page.get_by_role("button", name="Save as CSV").click()
    return download.value.path().read_text("utf-8")


def marked_by_command(assignment: Path, results: list[Path], folder: Path) -> tuple[int, str, str]:
    table = folder / "marks.csv"
    done = subprocess.run(
        [sys.executable, "-c", "from benchrule.cli import main; main()", "mark", *map(str, results), "--assignment",
         str(assignment), "--csv", str(table)],
        cwd=ROOT, capture_output=True, text=True, check=False,
    )  # fmt: skip
    return done.returncode, done.stdout + done.stderr, table.read_text("utf-8")


def test_a_class_is_set_worked_offline_and_marked_alike(
    browser: Browser, page: Page, site: Site, bank: dict[str, Any], tmp_path: Path
) -> None:
    assignment, link, codes = set_one(page, site, tmp_path)
    results = []
    for code, answer in zip(codes, (right, slipping, wrong_or_nothing), strict=True):
        context = browser.new_context(accept_downloads=True)
        results.append(work(context, site, link, code, bank, answer, tmp_path))
        context.close()
    scores = [json.loads(file.read_text())["score"] for file in results]
    assert scores == [12, 8, 0]

    in_page = marked_in_page(page, site, assignment, results)
    code, words, by_command = marked_by_command(assignment, results, tmp_path)
    assert code == 0, words
    assert by_command.lstrip("\ufeff") == in_page.lstrip("\ufeff")
    rows = list(csv.reader(io.StringIO(in_page.lstrip("\ufeff"))))
    assert set(codes) <= {row[0] for row in rows if row}
    assert "you measured from the wrong end" in page.locator(".br-class").inner_html()
    assert page.locator(".br-class b", has_text="& after").count() == 0, "a title became markup"

    doctored = json.loads(results[1].read_text())
    doctored["score"] = 12
    results[1].write_text(json.dumps(doctored))
    marked_in_page(page, site, assignment, results)
    expect(page.locator(".br-class")).to_contain_text(results[1].name)
    code, words, _ = marked_by_command(assignment, results, tmp_path)
    assert code == 1 and results[1].name in words


def test_an_assignment_goes_on_where_it_was_left(
    browser: Browser, page: Page, site: Site, bank: dict[str, Any], tmp_path: Path
) -> None:
    _, link, codes = set_one(page, site, tmp_path)
    context = browser.new_context()
    first = context.new_page()
    first.goto(link)
    first.get_by_label("Your code").fill(codes[0])
    first.get_by_role("button", name="Begin").click()
    box = first.locator(".br-learn-paper").get_by_role("textbox").first
    box.fill("12.5")
    expect(first.locator(".br-learn-total")).to_have_text("1 of 6 answered; kept on this device.")
    first.wait_for_timeout(300)
    first.close()
    second = context.new_page()
    second.goto(f"{site.address}learning/work/")
    second.get_by_role("button", name=re.compile(f"{codes[0]}: 1 answered")).click()
    expect(second.locator(".br-learn-paper").get_by_role("textbox").first).to_have_value(
        "12.5"
    )
    context.close()


@pytest.mark.parametrize(
    "fragment",
    ["a1.", "a1.!!!!", "a1.eJw", "a1." + "A" * 60_000, "a1.%3Cscript%3Ealert(1)%3C/script%3E"],
)
def test_a_hostile_link_is_refused_in_words(fragment: str, page: Page, site: Site) -> None:
    page.on("dialog", lambda dialog: pytest.fail("a script ran"))
    page.goto(f"{site.address}learning/work/#{fragment}")
    expect(page.locator("[data-work-assignment] .br-error")).to_be_visible()
    assert page.get_by_label("Or paste its link").is_visible()


def test_hostile_files_are_refused_and_named(page: Page, site: Site, tmp_path: Path) -> None:
    assignment, _link, _ = set_one(page, site, tmp_path)
    page.on("dialog", lambda dialog: pytest.fail("a script ran"))
    bad = {
        "cut.json": assignment.read_text()[:200],
        "deep.json": "[" * 100_000,
        "script.json": json.dumps({"benchrule": "result", "code": "<img src=x onerror=alert(1)>"}),
        "empty.json": "",
    }
    for name, text in bad.items():
        (tmp_path / name).write_text(text)
    page.goto(f"{site.address}learning/mark/")
    page.get_by_label("The assignment's file").set_input_files(assignment)
    page.get_by_label("The result files, any number").set_input_files([tmp_path / n for n in bad])
    page.get_by_role("button", name="Mark").click()
    expect(page.locator(".br-class")).to_be_visible()
    for name in bad:
        expect(page.locator(".br-class")).to_contain_text(name)
    page.get_by_label("The assignment's file").set_input_files(tmp_path / "deep.json")
    page.get_by_role("button", name="Mark").click()
    expect(page.locator("[data-mark-results] .br-error")).to_be_visible()
    page.goto(f"{site.address}learning/work/")
    page.locator("#br-assignment-file").set_input_files(tmp_path / "script.json")
    expect(page.locator("[data-work-assignment] .br-error")).to_be_visible()
