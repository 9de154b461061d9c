"""The handbook in a real browser, used as its readers use it."""

import re
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, expect

from calculators.engine import door
from calculators.engine.declaration import Choice, Number, Rows
from calculators.engine.inputs import applies
from calculators.engine.registry import load, modules
from tests.build.trees import sound_tree, write_tree

from .conftest import Site, build_site, every_page, free_port, served
from .visits import HOLD_UP, hold_up, visiting

ANSWER = "window.answers = []; document.addEventListener('benchrule:answer', (e) => answers.push(e.detail))"


def open_calculator(page: Page, site: Site, name: str) -> None:
    page.goto(f"{site.address}calculators/{name}/")
    page.evaluate(ANSWER)


def entry(page: Page, name: str, field: str):  # type: ignore[no-untyped-def]
    return page.locator(f'[id="{name}--{field}"]')


def settled(page: Page, before: int = 0) -> None:
    """Waits for an answer after the ``before``-th."""
    page.wait_for_function("(n) => window.answers.length > n", arg=before)


def count(page: Page) -> int:
    return int(page.evaluate("answers.length"))


def result(page: Page, name: str) -> str:
    return page.locator(f'[data-result="{name}"] dd').first.inner_text().replace("−", "-")


@pytest.mark.parametrize("name", modules())
def test_typing_recalculates_and_agrees_with_the_door(name: str, page: Page, site: Site) -> None:
    open_calculator(page, site, name)
    calculator = load(name)
    item = next(
        i for i in calculator.inputs if isinstance(i, Number) and not i.whole and i.when is None
    )
    value = round(item.example * 1.02, 3)
    entry(page, name, item.name).fill(str(value))
    settled(page)
    expect(page.locator(".br-state")).to_have_attribute("data-state", "live")
    for key, found in door.answer(name, {item.name: value})["results"].items():
        place = page.locator(f'[data-result="{key}"] dd')
        if place.count():
            assert result(page, key) == found["shown"] or not place.first.is_visible()


def test_the_latest_entry_wins_and_no_keystroke_is_lost(page: Page, site: Site) -> None:
    open_calculator(page, site, "fret-spacing")
    field = entry(page, "fret-spacing", "scale_length")
    field.fill("")
    field.press_sequentially("647.7", delay=5)
    expect(field).to_have_value("647.7")
    expect(page.locator('[data-result="first_slot"] dd')).to_have_text("36.353 mm")
    field.fill("25 1/2 in")
    field.press_sequentially("ch", delay=1)
    expect(page.locator('[data-result="last_slot"] dd')).to_have_text("443.69 mm")


def test_an_answer_to_earlier_entries_is_seen_to_be_one(browser: Browser, site: Site) -> None:
    with visiting(browser, HOLD_UP) as context:
        page = context.new_page()
        open_calculator(page, site, "fret-spacing")
        field = entry(page, "fret-spacing", "scale_length")
        answer, state = page.locator(".br-answer"), page.locator(".br-state")
        foot = page.locator(".br-headline strong")
        slot = page.locator('[data-result="first_slot"] dd')
        hold_up(page, "live", 3_000)
        field.fill("640")  # the runtime has to start first
        expect(answer).to_have_attribute("aria-busy", "true")
        expect(foot).to_be_hidden()
        expect(slot).to_have_text("35.920 mm")
        expect(answer).to_have_attribute("aria-busy", "false")
        expect(foot).to_be_visible()
        field.fill("600")
        expect(state).to_have_text("Working it out …")
        expect(page.locator("[data-part=results]")).to_have_css("filter", "grayscale(1)")
        expect(page.locator("[data-part=cautions]")).to_have_css("filter", "none")
        expect(answer).to_have_attribute("aria-busy", "true")
        expect(foot).to_be_hidden()
        expect(slot).to_have_text("33.675 mm")
        expect(answer).to_have_attribute("aria-busy", "false")
        expect(state).to_have_text("Live: worked out on this device.")
        expect(foot).to_be_visible()


def test_units_turn_there_and_back_without_loss(page: Page, site: Site) -> None:
    open_calculator(page, site, "fret-spacing")
    field = entry(page, "fret-spacing", "scale_length")
    page.locator('input[value="inch64"]').check(force=True)
    expect(field).to_have_value("25 19/32")
    expect(page.locator('[data-result="first_slot"] dd')).to_have_text("1 7/16 in")
    expect(page.locator('[data-unit-of="scale_length"]')).to_have_text("in")
    page.locator('input[value="inch"]').check(force=True)
    expect(page.locator('[data-result="first_slot"] dd')).to_have_text("1.43629 in")
    page.locator('input[value="metric"]').check(force=True)
    expect(field).to_have_value("650")
    expect(page.locator('[data-result="first_slot"] dd')).to_have_text("36.482 mm")
    # A plain number typed in the inch system is in inches.
    page.locator('input[value="inch"]').check(force=True)
    expect(field).to_have_value("25.5906")
    field.fill("25 1/2")
    page.locator('input[value="metric"]').check(force=True)
    expect(field).to_have_value("647.7")


BAD = ["", "words", "5 furlongs", "-99999", "1e999", "NaN", "<script>alert(1)</script>", "1e30"]


@pytest.mark.parametrize("name", modules())
def test_bad_input_in_any_field_is_refused_beside_it_and_breaks_nothing(
    name: str, page: Page, site: Site
) -> None:
    open_calculator(page, site, name)
    calculator = load(name)
    chosen = {item.name: item.example for item in calculator.inputs if isinstance(item, Choice)}
    tried = 0
    for item in calculator.inputs:
        if isinstance(item, Choice) or not applies(item, chosen):
            continue
        # Every kind of bad entry in the first field, two kinds in each of the others.
        every = BAD if isinstance(item, Number) else BAD[:3]
        kinds = every if tried == 0 else list({every[0], every[tried % len(every)]})
        tried += 1
        if isinstance(item, Rows):
            field = page.locator(
                f'[data-rows="{item.name}"] tbody input[inputmode="decimal"]'
            ).first
        else:
            field = entry(page, name, item.name)
        before = field.input_value()
        page.evaluate("document.querySelectorAll('details').forEach((d) => { d.open = true })")
        for bad in kinds:
            seen = count(page)
            field.fill(bad)
            settled(page, seen)
            error = page.locator(f'[data-input="{item.name}"] .br-error')
            expect(error).to_be_visible()
            assert re.search(r"Allowed: .+\.$", error.inner_text()), error.inner_text()
            expect(field).to_have_attribute("aria-invalid", "true")
            expect(page.locator(".br-refused")).to_be_visible()
            assert page.locator(".br-error:visible").count() == 1, f"{item.name}: {bad}"
        seen = count(page)
        field.fill(before)
        settled(page, seen)
        expect(page.locator(".br-refused")).to_have_count(0)
        expect(page.locator(".br-error:visible")).to_have_count(0)
    assert page.evaluate("document.querySelector('[data-calculator] script')") is None


def test_choices_show_what_they_ask_and_reset_brings_the_example_back(
    page: Page, site: Site
) -> None:
    open_calculator(page, site, "fret-spacing")
    expect(entry(page, "fret-spacing", "bass_scale_length")).to_be_hidden()
    entry(page, "fret-spacing", "layout").select_option("fanned")
    expect(entry(page, "fret-spacing", "bass_scale_length")).to_be_visible()
    expect(entry(page, "fret-spacing", "scale_length")).to_be_hidden()
    expect(page.locator('[data-result="nut_angle"] dd')).to_have_text("13.01°")
    page.get_by_role("button", name="Back to the example").click()
    expect(entry(page, "fret-spacing", "scale_length")).to_be_visible()
    expect(page.locator('[data-result="first_slot"] dd')).to_have_text("36.482 mm")


def test_rows_are_added_and_removed(page: Page, site: Site) -> None:
    open_calculator(page, site, "glue-open-time")
    plan = page.locator("[data-input]:not([hidden]) [data-rows]").locator("..").locator("..")
    rows = plan.locator("tbody tr")
    number = rows.count()
    plan.get_by_role("button", name="Add a row").click()
    expect(rows).to_have_count(number + 1)
    settled(page)
    plan.get_by_role("button", name=f"Remove row {number + 1}").click()
    expect(rows).to_have_count(number)
    rows.first.locator("input").first.fill("<b>glue</b>")
    expect(page.locator('[data-part="tables"]')).to_contain_text("<b>glue</b>")


def test_worked_steps_follow_when_they_are_opened(page: Page, site: Site) -> None:
    open_calculator(page, site, "fret-spacing")
    entry(page, "fret-spacing", "scale_length").fill("700")
    settled(page)
    steps = page.locator('[data-part="steps"]')
    page.get_by_text("Worked steps").click()
    expect(steps).to_contain_text("39.288 mm")
    assert steps.locator("math").count() > 3


def test_one_engine_serves_a_visit(page: Page, site: Site) -> None:
    """Moving on by a link keeps the runtime: the second calculator answers at once."""
    workers: list[str] = []
    page.on("worker", lambda w: workers.append(w.url) if "runtime" in w.url else None)
    open_calculator(page, site, "fret-spacing")
    entry(page, "fret-spacing", "scale_length").fill("640")
    settled(page)
    page.get_by_role("link", name="Neck angle").first.click()
    expect(page.locator("[data-calculator='neck-angle']")).to_be_visible()
    entry(page, "neck-angle", "scale_length").fill("640")
    settled(page, 1)
    assert len(workers) == 1


def test_keyboard_alone_reaches_and_works_a_calculator(page: Page, site: Site) -> None:
    open_calculator(page, site, "fret-spacing")
    for _ in range(80):
        page.keyboard.press("Tab")
        if page.evaluate("document.activeElement.name") == "scale_length":
            break
    page.keyboard.press("Control+A")
    page.keyboard.type("600")
    expect(page.locator('[data-result="first_slot"] dd')).to_have_text("33.675 mm")


@pytest.mark.parametrize(
    ("words", "landing"),
    [
        ("fret lifts in the middle", "tol-fret-crown-lift|a-fret-lifts-in-the-middle"),
        ("fret spacing calculator", "calc-fret-spacing"),
        ("glue open time", "calc-glue-open-time|tol-|glue"),
        ("gap under the heel", "gap-under-the-heel|tol-neck"),
    ],
)
def test_search_finds_rows_and_lands_on_them(
    words: str, landing: str, page: Page, site: Site
) -> None:
    page.goto(site.address)
    page.get_by_role("textbox", name="Search").click()
    page.get_by_role("textbox", name="Search").press_sequentially(words, delay=10)
    first = page.locator(".md-search-result__link")
    expect(first.first).to_be_visible()
    page.wait_for_timeout(600)  # the list follows the last key after a moment
    links = [link.get_attribute("href") or "" for link in first.all()[:4]]
    wanted = [link for link in links if re.search(landing, link)]
    assert wanted, links
    page.goto(wanted[0])
    anchor = wanted[0].partition("#")[2]
    if anchor:
        assert page.locator(f'[id="{anchor}"]').is_visible()
        assert page.evaluate("document.querySelector(':target')?.id") == anchor


def test_a_phone_shows_no_sideways_scroll(browser: Browser, site: Site) -> None:
    context = browser.new_context(viewport={"width": 390, "height": 844}, has_touch=True)
    page = context.new_page()
    for path in every_page(site):
        page.goto(site.address + path)
        wide = page.evaluate("document.documentElement.scrollWidth")
        assert wide <= 390, f"{path} is {wide} wide"
    context.close()


def test_targets_are_large_enough_for_gloves(page: Page, site: Site) -> None:
    open_calculator(page, site, "glue-open-time")
    page.evaluate("document.querySelectorAll('details').forEach((d) => { d.open = true })")
    small = page.evaluate(
        """[...document.querySelectorAll('.br-calculator :is(button, select, summary, .br-entry, .br-units span)')]
        .filter((e) => e.offsetParent).map((e) => [e.outerHTML.slice(0, 60), e.getBoundingClientRect()])
        .filter(([, box]) => box.height < 43.5 || box.width < 43.5).map(([html]) => html)"""
    )
    assert small == []


def test_a_missing_runtime_is_said_in_words_and_the_example_stays(
    browser: Browser, site: Site
) -> None:
    context = browser.new_context()
    context.route("**/python_stdlib.zip", lambda route: route.abort())
    page = context.new_page()
    open_calculator(page, site, "fret-spacing")
    entry(page, "fret-spacing", "scale_length").fill("600")
    state = page.locator(".br-state")
    expect(state).to_have_attribute("data-state", "broken")
    assert "cannot start" in state.inner_text()
    assert result(page, "first_slot") == "36.482 mm"
    context.close()


HANGING = '''"""A calculation that never ends for one figure, to try the watch over it."""
from calculators.engine.declaration import Calculator, Check, Given, Number, Solved, Source


def spin(turns):
    """Never comes back for 13."""
    while turns == 13:
        pass
    return turns * 2.0


SOURCE = Source(id="own", title="Own")
calculator = Calculator(
    name="spinner", title="Spinner", summary="Turns.",
    inputs=(Number(name="turns", label="Turns", unit="1", decimals=0, lowest=0, highest=99, example=1),),
    work=(Solved(name="spun", label="Spun", function=spin, method="Doubling.", source="own",
                 gives=(Given(name="twice", label="Twice", unit="1", decimals=1),)),),
    results=("twice",), sources=(SOURCE,), validity="Everywhere.",
    checks=(Check(inputs={}, expected={"twice": "2.0"}, source="own", where="a", origin="derived"),
            Check(inputs={"turns": 2}, expected={"twice": "4.0"}, source="own", where="b", origin="derived")),
)
'''


def test_a_calculation_that_hangs_is_stopped_and_the_next_one_works(
    browser: Browser, tmp_path: Path
) -> None:
    """In a shop's own small handbook, with a calculator of its own in its own folder."""
    tree = sound_tree()
    tree["docs/stations/sanding.md"] = tree["docs/stations/sanding.md"].replace(
        "fret-spacing", "spinner"
    )
    tree["mkdocs.yml"] = (
        "site_name: Test\nsite_url: !ENV SITE_URL\ntheme: {name: material, font: false}\n"
        "plugins: [search, {benchrule: {calculators: [shop_calculators]}}]\n"
        "markdown_extensions: [def_list, attr_list, toc]\n"
    )
    tree["shop_calculators/__init__.py"] = ""
    tree["shop_calculators/spinner.py"] = HANGING
    root = write_tree(tmp_path / "shop", tree)
    port = free_port()
    address = f"http://127.0.0.1:{port}/"
    build_site(root, tmp_path / "site", address)
    with served(tmp_path / "site", port):
        context: BrowserContext = browser.new_context()
        page = context.new_page()
        open_calculator(page, Site(tmp_path / "site", address), "spinner")
        field = entry(page, "spinner", "turns")
        field.fill("3")
        expect(page.locator('[data-result="twice"] dd')).to_have_text("6.0")
        field.fill("13")
        state = page.locator(".br-state")
        expect(state).to_have_attribute("data-state", "stopped")
        assert "took too long" in state.inner_text()
        expect(field).to_have_value("13")
        field.fill("4")
        expect(page.locator('[data-result="twice"] dd')).to_have_text("8.0")
        expect(state).to_have_attribute("data-state", "live")
        context.close()
