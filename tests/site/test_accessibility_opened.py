"""axe-core over what opens on a page: an answer, a refusal, a fold, a mark, a result, the offer of an edition."""

import re
import shutil
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Locator, Page, expect

from benchrule.offline_edition import write_offline

from .axe import faults_of, reading
from .conftest import Site, free_port, served
from .visits import LONG


def search_open(page: Page, site: Site) -> Locator:
    page.goto(site.address)
    page.keyboard.press("/")
    page.keyboard.type("gap under the heel")
    found = page.locator(".md-search-result__link").first
    expect(found).to_be_visible(timeout=LONG)
    expect(page.locator(".md-search-result__meta")).to_contain_text("matching", timeout=LONG)
    return found


def refused(page: Page, site: Site) -> Locator:
    page.goto(f"{site.address}calculators/fret-spacing/")
    page.locator("[data-input=scale_length] input").fill("0")
    expect(page.locator(".br-refused")).to_be_visible(timeout=LONG)
    open_folds(page)
    return page.locator(".br-refused")


def answered(page: Page, site: Site) -> Locator:
    page.goto(f"{site.address}calculators/fret-spacing/")
    page.locator("[data-input=scale_length] input").fill("640")
    expect(page.locator(".br-state").first).to_have_attribute("data-state", "live", timeout=LONG)
    open_folds(page)
    return page.locator(".br-formula").first


def open_folds(page: Page) -> None:
    page.evaluate("document.querySelectorAll('main details').forEach((one) => (one.open = true))")


def all_folds_open(page: Page, site: Site) -> Locator:
    page.goto(f"{site.address}stations/neck-fit/")
    open_folds(page)
    return page.locator(".br-formula").first


def could_not_start(page: Page, site: Site) -> Locator:
    page.route(re.compile("/runtime/"), lambda route: route.abort())
    page.goto(f"{site.address}calculators/neck-angle/")
    page.locator("[data-input] input").first.fill("17")
    trouble = page.locator(".br-trouble")
    expect(trouble).to_be_visible(timeout=LONG)
    open_folds(page)
    return trouble


def script_missing(page: Page, site: Site) -> Locator:
    page.route(re.compile(r"/page\.mjs"), lambda route: route.abort())
    page.goto(f"{site.address}calculators/neck-angle/")
    return page.locator(".br-script-missing")


def answered_wrong(page: Page, site: Site) -> Locator:
    page.goto(f"{site.address}calculators/thinning/")
    page.get_by_role("button", name="Practise").click(timeout=LONG)
    answer = page.locator(".br-question")
    expect(answer).to_be_visible(timeout=LONG)
    if answer.locator("input[type=radio]").count():
        answer.locator("input[type=radio]").last.check()
    elif answer.locator("input").count():
        answer.locator("input").fill("99999")
    page.get_by_role("button", name="Check").click()
    mark = page.locator(".br-mark")
    expect(mark).to_be_visible(timeout=LONG)
    open_folds(page)
    return mark


def assignment_set(page: Page, site: Site) -> Locator:
    page.goto(f"{site.address}learning/set/")
    station = page.locator(".br-learn-station", has_text="Wood selection").first
    station.locator("summary").click(timeout=LONG)
    for entry in station.locator("input").all():
        entry.fill("1")
    page.get_by_role("button", name="Make the assignment").click()
    code = page.locator(".br-learn-codes li").first
    expect(code).to_be_visible(timeout=LONG)
    return code


def assignment_at_work(page: Page, site: Site) -> Locator:
    code = assignment_set(page, site).inner_text()
    link = page.locator("input[readonly]").input_value()
    page.goto("about:blank")
    page.goto(link)
    page.locator("input[name=code]").fill(code, timeout=LONG)
    page.keyboard.press("Enter")
    paper = page.locator(".br-learn-paper")
    expect(paper).to_be_visible(timeout=LONG)
    return paper


def assignment_finished(page: Page, site: Site) -> Locator:
    assignment_at_work(page, site)
    page.on("dialog", lambda dialog: dialog.accept())
    page.get_by_role("button", name="Finish").click()
    expect(page.get_by_role("button", name="Save the result file")).to_be_visible(timeout=LONG)
    open_folds(page)
    return page.locator(".br-mark").first


def class_marked(page: Page, site: Site) -> Locator:
    assignment_set(page, site)
    with page.expect_download() as assignment:
        page.get_by_role("button", name="Save the file").click()
    link = page.locator("input[readonly]").input_value()
    codes = page.locator(".br-learn-codes li").all_inner_texts()[:2]
    page.on("dialog", lambda dialog: dialog.accept())
    results = []
    for code in codes:
        page.goto("about:blank")
        page.goto(link)
        page.locator("input[name=code]").fill(code, timeout=LONG)
        page.keyboard.press("Enter")
        page.get_by_role("button", name="Finish").click(timeout=LONG)
        with page.expect_download() as result:
            page.get_by_role("button", name="Save the result file").click(timeout=LONG)
        results.append(result.value.path())
    page.goto(f"{site.address}learning/mark/")
    page.get_by_label("The assignment's file").set_input_files(assignment.value.path())
    page.get_by_label("The result files, any number").set_input_files(results)
    page.get_by_role("button", name="Mark").click()
    table = page.locator(".br-class table").first
    expect(table).to_be_visible(timeout=LONG)
    open_folds(page)
    return table


def sheets_compared(page: Page, site: Site) -> Locator:
    page.goto(f"{site.address}orders/compare/")
    page.get_by_label("This instrument").select_option("2026-101")
    page.get_by_label("Compared with").select_option("twelve")
    row = page.get_by_role("row").filter(has_text="Scale length ordered")
    expect(row).to_contain_text("632 mm", timeout=LONG)
    return row


def measured_on_a_sheet(page: Page, site: Site) -> Locator:
    page.goto(f"{site.address}orders/2026-101/")
    page.locator(".br-measured input").first.fill("999")
    judged = page.locator(".br-judged[data-verdict]").first
    expect(judged).to_be_visible(timeout=LONG)
    open_folds(page)
    return judged


def is_it_in(page: Page, site: Site) -> Locator:
    page.goto(f"{site.address}stations/fretting/#tol-fret-crown-lift")
    for row, value in ((0, "0"), (1, "999")):
        page.locator(".br-measure").nth(row).click()
        page.locator(".br-judge-row input").nth(row).fill(value)
        expect(page.locator(".br-verdict").nth(row)).not_to_have_text(
            re.compile("^…?$"), timeout=LONG
        )
    return page.locator(".br-verdict").first


def looked_up(page: Page, site: Site) -> Locator:
    page.goto(f"{site.address}tolerances/")
    page.locator("[data-lookup] input").first.fill("neck")
    return page.locator(".br-tolerances tbody tr:visible").first


STATES = [
    search_open, refused, answered, all_folds_open, could_not_start, script_missing, answered_wrong, assignment_set,
    assignment_at_work, assignment_finished, class_marked, sheets_compared, measured_on_a_sheet, is_it_in, looked_up,
]  # fmt: skip


@pytest.mark.parametrize("state", STATES, ids=lambda one: one.__name__)
def test_what_opens_on_a_page(
    browser: Browser, site: Site, state: Callable[[Page, Site], Locator]
) -> None:
    with reading(browser, accept_downloads=True) as context:
        page = context.new_page()
        faults = faults_of(page, there=state(page, site))
    assert not faults, "\n".join(faults)


def test_what_is_said_of_the_saved_handbook(browser: Browser, site: Site, tmp_path: Path) -> None:
    """What is saved, folded out, and the offer of a newer edition."""
    folder, port = tmp_path / "site", free_port()
    shutil.copytree(site.folder, folder)
    with served(folder, port), reading(browser, service_workers="allow") as context:
        page = context.new_page()
        page.goto(f"http://127.0.0.1:{port}/glossary/")
        expect(page.locator(".br-offline[data-state=saved]")).to_be_attached(timeout=LONG)
        page.locator(".br-offline summary").click()
        faults = faults_of(page, there=page.locator(".br-offline-more"))
        changed = folder / "stations/polishing/index.html"
        changed.write_text(changed.read_text("utf-8").replace("<h1", "<h1 data-second"), "utf-8")
        write_offline(folder, "The Shop", "A shop's handbook")
        # As when a reader comes back to the tab.
        page.evaluate("document.dispatchEvent(new Event('visibilitychange'))")
        offer = page.locator(".br-newer")
        expect(offer).to_be_visible(timeout=LONG)
        faults += faults_of(page, there=offer)
    assert not faults, "\n".join(faults)
