"""Build sheets in a real browser: measured, judged, carried on, kept, exported and recorded; compared."""

import json
import shutil
import subprocess
import sys
from pathlib import Path

from playwright.sync_api import Browser, Page, Route, expect

from benchrule.handbook import load_handbook
from benchrule.instruments import instrument_of_order
from calculators.engine import door

from .conftest import ROOT, Site
from .visits import HOLD_UP, hold_up, visiting

ORDER = "2026-101"
RISE = "tr[data-key='neck-top-rise']"


def open_sheet(page: Page, site: Site) -> None:
    page.goto(f"{site.address}orders/{ORDER}/")
    expect(page.locator(f"{RISE} input")).to_be_visible()


def test_what_is_measured_is_judged_and_moves_what_follows(page: Page, site: Site) -> None:
    open_sheet(page, site)
    pitch = page.locator("[data-station='neck-fit'] tr[data-key='neck-angle.pitch'] .br-set")
    planned = pitch.locator("strong").inner_text()
    for reading, verdict in (
        ("3.3", "In"),
        ("2.7", "Can't tell"),
        ("6", "Out"),
        ("high", "not a number"),
    ):
        page.locator(f"{RISE} input").fill(reading)
        expect(page.locator(f"{RISE} .br-judged")).to_contain_text(verdict)
    page.locator(f"{RISE} input").fill("2.9 mm")
    expect(pitch.locator(".br-fed")).to_have_text(f"planned {planned}")
    handbook, _ = load_handbook(ROOT, ROOT / "docs")
    given = dict(instrument_of_order(handbook, ORDER).given("neck-angle"))
    answer = door.answer("neck-angle", {**given, "arch_measured": "2.9 mm"})
    assert pitch.locator("strong").inner_text() == answer["results"]["pitch"]["shown"]
    page.locator(f"{RISE} input").fill("")
    expect(pitch.locator("strong")).to_have_text(planned)


def test_no_verdict_on_an_earlier_measure_stands_beside_a_new_one(
    browser: Browser, site: Site
) -> None:
    with visiting(browser, HOLD_UP) as context:
        page = context.new_page()
        open_sheet(page, site)
        judged = page.locator(f"{RISE} .br-judged")
        page.locator(f"{RISE} input").fill("3.3")
        expect(judged).to_have_text("In")
        hold_up(page, "judge", 3_000)
        page.locator(f"{RISE} input").fill("6")
        expect(judged).to_have_text("…")
        assert judged.get_attribute("data-verdict") is None
        expect(judged).to_have_text("Out")


def test_it_is_there_after_the_tab_was_closed_and_goes_back_into_the_data(
    browser: Browser, site: Site, tmp_path: Path
) -> None:
    context = browser.new_context(accept_downloads=True)
    page = context.new_page()
    open_sheet(page, site)
    page.locator(f"{RISE} input").fill("3.1")
    expect(page.locator(f"{RISE} .br-judged")).to_have_text("In")
    expect(page.get_by_text("Kept on this device.")).to_be_visible()
    page.close()
    page = context.new_page()
    open_sheet(page, site)
    expect(page.locator(f"{RISE} input")).to_have_value("3.1")
    with page.expect_download() as download:
        page.get_by_role("button", name="Save what was measured").click()
    download.value.save_as(tmp_path / "measured.json")
    assert json.loads((tmp_path / "measured.json").read_text())["order"] == ORDER
    shutil.copytree(ROOT / "docs", tmp_path / "docs")
    shutil.copyfile(ROOT / "mkdocs.yml", tmp_path / "mkdocs.yml")
    done = subprocess.run(
        [sys.executable, "-c", "from benchrule.cli import main; main()", "record", ORDER,
         "--take", "measured.json"],
        cwd=tmp_path, capture_output=True, text=True, check=False,
    )  # fmt: skip
    assert done.returncode == 0, done.stderr
    assert "3.1 mm" in (tmp_path / f"docs/data/records/{ORDER}.yml").read_text("utf-8")
    context.close()


def test_two_sheets_are_compared(page: Page, site: Site) -> None:
    page.goto(f"{site.address}orders/compare/")
    page.get_by_label("This instrument").select_option(ORDER)
    page.get_by_label("Compared with").select_option("twelve")
    row = page.get_by_role("row").filter(has_text="Scale length ordered")
    expect(row).to_contain_text("628 mm")
    expect(row).to_contain_text("632 mm")
    page.get_by_label("Compared with").select_option(ORDER)
    expect(page.get_by_text("The bench does nothing differently.")).to_be_visible()


def test_the_sheets_chosen_last_are_compared_though_others_come_later(
    page: Page, site: Site
) -> None:
    waiting: list[Route] = []
    page.route("**/orders/twelve.json", lambda route: waiting.append(route))
    page.goto(f"{site.address}orders/compare/")
    page.get_by_label("This instrument").select_option(ORDER)
    page.get_by_label("Compared with").select_option("twelve")
    page.get_by_label("Compared with").select_option(ORDER)
    same = page.get_by_text("The bench does nothing differently.")
    expect(same).to_be_visible()
    assert waiting, "the sheet was not asked for"
    for route in waiting:
        route.continue_()
    page.wait_for_timeout(1_000)
    expect(same).to_be_visible()


def test_what_is_refused_or_warned_of_stands_at_the_top(page: Page, site: Site) -> None:
    page.goto(f"{site.address}orders/{ORDER}/")
    first = page.locator(".br-look-first li")
    assert first.count() > 0
    tops = page.evaluate(
        "['.br-look-first', '.br-sheet-station'].map((s) => document.querySelector(s).getBoundingClientRect().top)"
    )
    assert tops[0] < tops[1]


def test_templates_are_there_to_take_along(page: Page, site: Site) -> None:
    page.goto(f"{site.address}orders/{ORDER}/")
    links = page.locator(".br-templates a")
    assert links.count() >= 18
    for at in range(links.count()):
        answer = page.request.get(links.nth(at).evaluate("(one) => one.href"))
        start = answer.body()[:5]
        assert answer.ok and start in (b"%PDF-", b"<?xml", b"<svg "), start


def test_the_sheet_fits_a_phone(page: Page, site: Site) -> None:
    page.set_viewport_size({"width": 390, "height": 844})
    open_sheet(page, site)
    assert page.evaluate("document.documentElement.scrollWidth") <= 390
