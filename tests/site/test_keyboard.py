"""The handbook by keyboard alone: looking up, calculating, practising, setting and marking.

Keys are pressed and nothing else; ``Keys`` looks at every stop on the way.
"""

import json
import re
from pathlib import Path

import pytest
from playwright.sync_api import Browser, FileChooser, Page, expect

from .conftest import PATIENCE_MS, Site
from .keys import Keys



def test_look_up_from_the_home_page(page: Page, site: Site) -> None:
    page.goto(site.address)
    keys = Keys(page)
    keys.press("Tab")
    assert keys.stop()["name"] == "Skip to content"
    keys.press("/")
    expect(page.locator("[data-md-component=search-query]")).to_be_focused()
    page.keyboard.type("gap under the heel", delay=15)
    expect(page.locator(".md-search-result__link").first).to_be_visible()
    page.wait_for_timeout(2500)  # the theme lays out the rest of what it found
    keys.press("ArrowDown")
    keys.stop()
    keys.press("Enter")
    row = page.locator("tr:target, :is(h2, h3):target")
    expect(row).to_be_visible()
    expect(row).to_be_in_viewport()
    keys.press("Tab")
    keys.stop()
    # The keyboard went on from the row, not from the top of the page.
    assert page.evaluate(
        "!!(document.querySelector(':target').compareDocumentPosition(document.activeElement)"
        " & (Node.DOCUMENT_POSITION_FOLLOWING | Node.DOCUMENT_POSITION_CONTAINED_BY))"
    )


def test_look_up_by_filter_and_is_it_in(page: Page, site: Site) -> None:
    page.goto(f"{site.address}tolerances/")
    keys = Keys(page)
    keys.skip_to_content()
    keys.to("words", most=8)
    keys.type("crown lift")
    count = page.locator("[data-lookup] [data-count]")
    expect(count).to_have_text(re.compile(r"^\d{1,2} limits?$"))
    expect(count).to_have_attribute("role", "status")
    button = keys.to("Is it in?", "button", most=20)
    keys.press("Enter")
    assert keys.stop()["input"] == "value"
    keys.type("0.5 mm")
    verdict = page.locator(".br-verdict")
    expect(verdict.locator("strong")).to_be_visible()
    expect(verdict).to_have_attribute("role", "status")
    keys.to("gauge", "select", most=4)
    keys.press("Escape")
    assert keys.stop()["name"] == button["name"]
    for _ in range(6):  # and back up, under what sticks to the top
        keys.press("Shift+Tab")
        keys.stop()


def test_a_calculator_with_a_refusal_and_its_mend(page: Page, site: Site) -> None:
    page.goto(f"{site.address}calculators/fret-spacing/")
    keys = Keys(page)
    keys.skip_to_content()
    keys.to("Scale length", "input", most=12)
    said = page.locator("[data-said]")
    expect(said).to_have_attribute("role", "status")
    page.evaluate(
        "window.heard = []; new MutationObserver(() => window.heard.push(document.querySelector('[data-said]')"
        ".textContent)).observe(document.querySelector('[data-said]'), {childList: true, subtree: true})"
    )
    keys.type("640")
    expect(said).to_have_text(re.compile(r"\d"))
    page.wait_for_timeout(1200)
    assert len(page.evaluate("window.heard")) == 1, "read out once, when the typing pauses"
    first = said.inner_text()

    field = page.locator("[data-input=scale_length] input")
    keys.type("0")
    expect(field).to_have_attribute("aria-invalid", "true")
    expect(said).to_contain_text("No answer yet")
    error = page.locator("[data-input=scale_length] .br-error")
    expect(error).to_be_visible()
    assert error.get_attribute("id") in (field.get_attribute("aria-describedby") or "").split()
    assert keys.stop()["input"] == "scale_length", "the keyboard stays where the mend is made"
    keys.type("650")
    expect(field).not_to_have_attribute("aria-invalid", "true")
    assert error.get_attribute("id") not in (field.get_attribute("aria-describedby") or "").split()
    expect(said).not_to_contain_text("No answer")
    assert said.inner_text() != first

    keys.to("fret-spacing-units", most=10, key="Shift+Tab")
    keys.press("ArrowRight")
    keys.stop()
    expect(field).to_have_value(re.compile(r"^25\.59"))
    keys.to("Worked steps", "summary")
    keys.press("Enter")
    expect(page.locator("[data-part=steps] .br-formula").first).to_be_visible()
    keys.stop()


def test_an_exercise_answered_and_the_next(page: Page, site: Site) -> None:
    page.goto(f"{site.address}stations/neck-fit/")
    keys = Keys(page)
    keys.press("End")
    keys.to("Practise", "button", most=260)
    keys.press("Enter")
    words = page.locator(".br-question-words")
    expect(words).to_be_focused()
    keys.press("Tab")
    while keys.stop()["tag"] not in ("input", "button"):
        keys.press("Tab")
    if page.evaluate("document.activeElement.type") == "radio":
        keys.press(" ")
    elif page.evaluate("document.activeElement.type") == "text":
        keys.type("9999")
    keys.to("Check", "button", most=20)
    keys.press("Enter")
    mark = page.locator(".br-mark")
    expect(mark).to_be_visible()
    expect(
        page.locator(".br-practice-result [role=status], .br-mark[role=status]").first
    ).to_be_attached()
    assert keys.stop()["name"] == "Next question"
    keys.press("Enter")
    expect(mark).to_be_hidden()
    expect(words).to_be_focused()


def test_an_assignment_set_worked_and_marked(page: Page, site: Site, tmp_path: Path) -> None:
    page.on("dialog", lambda dialog: dialog.accept())
    page.goto(f"{site.address}learning/set/")
    keys = Keys(page)
    expect(page.locator("[data-set-assignment] form")).to_be_visible()
    keys.skip_to_content()
    keys.to("Wood selection", "summary")
    keys.press("Enter")
    keys.press("Tab")
    assert keys.stop()["name"].startswith("Questions of")
    keys.type("2")
    keys.press("Enter")
    expect(page.get_by_role("heading", name="The assignment")).to_be_focused()
    keys.to("Save the file", "button", most=3)
    with page.expect_download() as saved:
        keys.press("Enter")
    assignment = tmp_path / "assignment.json"
    saved.value.save_as(assignment)
    link = page.locator("input[readonly]").input_value()
    code = page.locator(".br-learn-codes li").first.inner_text()

    page.goto("about:blank")
    page.goto(link)
    expect(page.locator("input[name=code]")).to_be_focused()
    keys.type(code)
    keys.press("Enter")
    expect(page.locator("[data-work-assignment] h2").first).to_be_focused()
    keys.press("Tab")
    keys.stop()
    if page.evaluate("document.activeElement.type") == "radio":
        keys.press(" ")
    else:
        keys.type("1")
    keys.to("Finish", "button")
    keys.press("Enter")
    expect(page.get_by_role("button", name="Save the result file")).to_be_focused()
    with page.expect_download() as saved:
        keys.press("Enter")
    result = tmp_path / "result.json"
    saved.value.save_as(result)
    assert json.loads(result.read_text("utf-8"))["code"] == code

    page.goto(f"{site.address}learning/mark/")
    keys.skip_to_content()
    # Listened for throughout: a listener that is set up as the key goes down can come too late.
    opened: list[FileChooser] = []
    page.on("filechooser", lambda chooser: opened.append(chooser))
    for label, file in (("The assignment's file", assignment), ("The result files", result)):
        keys.to(label, "input", most=8)
        opened.clear()
        keys.press(" ")
        for _ in range(PATIENCE_MS // 100):
            if opened:
                break
            page.wait_for_timeout(100)
        assert opened, f"no file can be chosen: {label}"
        opened[0].set_files(file)
    keys.to("Mark", "button", most=3)
    keys.press("Enter")
    expect(page.locator("[data-mark-results] table").first).to_be_visible()
    expect(page.locator("[data-mark-results] [role=status]")).to_contain_text("Marked: one result")
    keys.to("Marks", most=6)


@pytest.mark.parametrize("path", ["calculators/neck-angle/", "tolerances/"])
def test_the_menu_of_a_narrow_page(browser: Browser, site: Site, path: str) -> None:
    context = browser.new_context(viewport={"width": 390, "height": 844})
    page = context.new_page()
    page.goto(site.address + path)
    keys = Keys(page)
    expect(page.get_by_role("button", name="Menu")).to_be_visible()
    keys.to("Menu", most=4)
    keys.press("Enter")
    page.wait_for_timeout(400)
    assert keys.stop()["tag"] in ("a", "span")
    for _ in range(2):  # each stop in the menu is seen; none is in what is shut
        keys.press("Tab")
        keys.stop()
    keys.press("Escape")
    assert keys.stop()["name"] == "Menu"
    # Shut, the menu is no place for the keyboard: content is near.
    for _ in range(12):
        keys.press("Tab")
        keys.stop()
        if page.evaluate("!!document.activeElement.closest('main article')"):
            break
    else:
        raise AssertionError("the content was not reached in twelve stops")
    context.close()


@pytest.mark.parametrize("key", ["Tab", "Shift+Tab"])
def test_nothing_lies_over_the_menu_of_a_wide_page(browser: Browser, site: Site, key: str) -> None:
    context = browser.new_context(viewport={"width": 1280, "height": 500})
    page = context.new_page()
    page.goto(f"{site.address}calculators/neck-angle/")
    menu = page.locator(".md-sidebar--primary .md-sidebar__scrollwrap")
    expect(menu.locator(".md-nav__link--active[href]").last).to_be_in_viewport()
    links = menu.locator("a[href]:visible")
    (links.first if key == "Tab" else links.last).focus()
    covered, looked = [], 0
    while menu.evaluate("(menu) => menu.contains(document.activeElement)"):
        looked += 1
        covered += page.evaluate(
            """() => {
              const link = document.activeElement;
              const { top, bottom, left } = link.getBoundingClientRect();
              const whole = [top + 2, bottom - 2].every((y) => link.contains(document.elementFromPoint(left + 4, y)));
              return whole ? [] : [link.textContent.trim()];
            }"""
        )
        page.keyboard.press(key)
    assert looked > 30
    assert covered == []
    context.close()


def test_no_page_keeps_the_keyboard(browser: Browser, site: Site) -> None:
    context = browser.new_context(viewport={"width": 1280, "height": 700})
    page = context.new_page()
    for path in ("learning/", "orders/2026-101/", "learning/mark/"):
        page.goto(site.address + path)
        keys = Keys(page)
        for _ in range(400):
            keys.press("Tab")
            if page.evaluate("document.activeElement === document.body || !document.hasFocus()"):
                break
            keys.stop()
        else:
            raise AssertionError(f"{path}: the keyboard did not come out at the end")
    context.close()
