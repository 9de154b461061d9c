"""The look-up for the floor, *Is it in?*, the chosen model, revisions, codes: in a real browser."""

import io
import re

import pytest
import zxingcpp
from PIL import Image
from playwright.sync_api import Browser, Page, expect

from benchrule.handbook import Handbook, load_handbook

from .conftest import ROOT, Site, search_places
from .visits import HOLD_UP, hold_up, visiting

VISIBLE = "[...document.querySelectorAll('.br-of tr[data-limits]')].filter((r) => r.offsetParent).map((r) => r.id)"


@pytest.fixture(scope="module")
def demo() -> Handbook:
    handbook, problems = load_handbook(ROOT, ROOT / "docs")
    assert problems == []
    return handbook


def open_look_up(page: Page, site: Site, query: str = "") -> None:
    page.goto(f"{site.address}tolerances/{query}")
    expect(page.locator(".br-measure").first).to_be_visible()


def find(page: Page, words: str) -> list[str]:
    page.locator("[name=words]").fill(words)
    found: list[str] = page.evaluate(VISIBLE)
    return found


def measure(page: Page, row: str, reading: str) -> str:
    """The verdict's text for a reading typed at a row."""
    line = page.locator(f"#{row}")
    panel = line.locator("xpath=following-sibling::tr[1][contains(@class,'br-judge-row')]")
    if not panel.count():
        line.locator(".br-measure").click()
    panel.locator("[name=value]").fill(reading)
    verdict = panel.locator(".br-verdict")
    expect(verdict).to_have_attribute("aria-busy", "false")
    return verdict.inner_text()


@pytest.mark.parametrize(
    ("words", "row"),
    [
        ("how thick is the back", "tol-plate-back-thickness"),
        ("action at the 12th", "tol-setup-action-bass"),
        ("lifting fret", "tol-fret-crown-lift"),
        ("soundhole diameter", "tol-rose-soundhole-diameter"),
    ],
)
def test_a_limit_is_found_as_one_types(words: str, row: str, page: Page, site: Site) -> None:
    open_look_up(page, site)
    found = find(page, words)
    assert row in found[:5], found
    assert len(found) < 40
    assert words.split()[0] in page.url


def test_the_choices_narrow_and_the_address_keeps_them(
    page: Page, site: Site, demo: Handbook
) -> None:
    open_look_up(page, site)
    page.locator("[name=station]").select_option("fretting")
    assert len(page.evaluate(VISIBLE)) == len(demo.tolerances_of("fretting"))
    page.locator("[name=gauge]").select_option("rocking-straightedge")
    narrowed = page.evaluate(VISIBLE)
    assert set(narrowed) == {
        f"tol-{t.id}"
        for t in demo.tolerances_of("fretting")
        if t.field("gauge") == "rocking-straightedge"
    }
    page.goto(page.url)
    expect(page.locator("[name=station]")).to_have_value("fretting")
    assert page.evaluate(VISIBLE) == narrowed
    assert find(page, "zymurgy quixotic") == []
    expect(page.locator(".br-nothing")).to_be_visible()


def test_words_that_nothing_has_all_of_find_what_has_most(page: Page, site: Site) -> None:
    open_look_up(page, site)
    found = find(page, "soundhole diameter xylophone")
    assert "tol-rose-soundhole-diameter" in found
    expect(page.locator("[data-count]")).to_contain_text("No limit has every word")


def test_a_reading_is_accepted_rejected_or_cannot_be_told(page: Page, site: Site) -> None:
    open_look_up(page, site)
    row = "tol-fret-crown-lift"  # at most 0.05 mm, by leaves that are good to 0.01
    assert "Accept" in measure(page, row, "0.03")
    assert "Can't tell with this gauge" in measure(page, row, "0.05")
    rejected = measure(page, row, "0.2")
    assert "Reject" in rejected and "too high" in rejected
    assert "Out?" in rejected, "the mend stands beside the verdict"
    assert "not a number" in measure(page, row, "thick")
    assert "Accept" in measure(page, row, "0.001 in")
    assert "Finer than the gauge" in measure(page, row, "0.033")


def test_no_verdict_on_an_earlier_reading_stands_beside_a_new_one(
    browser: Browser, site: Site
) -> None:
    with visiting(browser, HOLD_UP) as context:
        page = context.new_page()
        open_look_up(page, site)
        assert "Accept" in measure(page, "tol-fret-crown-lift", "0.03")
        hold_up(page, "judge", 3_000)
        page.locator(".br-judge [name=value]").fill("0.2")
        verdict = page.locator(".br-verdict")
        expect(verdict).to_have_text("…")
        expect(verdict).to_have_attribute("data-verdict", "")
        expect(verdict.locator("strong")).to_have_text("Reject")


def test_another_gauge_and_another_unit_change_the_verdict(page: Page, site: Site) -> None:
    open_look_up(page, site)
    row = "tol-plate-top-thickness"
    assert "Can't tell" in measure(page, row, "2.72")
    panel = page.locator(".br-judge")
    panel.locator("[name=gauge]").select_option("micrometer")
    expect(panel.locator(".br-verdict strong")).to_have_text("Accept")
    panel.locator(".br-unit").click()
    expect(panel.locator(".br-unit")).to_have_text("in")
    assert "Reject" in measure(page, row, "2.72")  # inches now
    assert "Accept" in measure(page, row, "0.110")


def test_the_chosen_model_changes_the_limits_everywhere_and_is_remembered(
    page: Page, site: Site
) -> None:
    open_look_up(page, site)
    row = "tol-plate-top-thickness"
    assert "Reject" in measure(page, row, "1.90")
    page.locator("[data-model-choice]").select_option("ukulele")
    expect(page.locator(".br-verdict strong")).to_have_text("Accept")
    assert page.locator(f"#{row} .br-limits").inner_text().startswith("The Concert")
    assert page.locator("#tol-rod-hung-weight").is_hidden(), "a ukulele has no rod"
    page.goto(site.address + "stations/joining-and-thicknessing/")
    expect(page.locator("[data-model-choice]")).to_have_value("ukulele")
    inline = page.locator('[data-by-model]:has(a[href*="plate-top-thickness"])').first
    expect(inline).to_contain_text("1.9 ± 0.1 mm")
    expect(inline).to_contain_text("(The Concert)")
    page.locator("[data-model-choice]").select_option("")
    expect(inline).to_contain_text("2.8 ± 0.1 mm")


def test_a_model_feeds_the_calculators(page: Page, site: Site) -> None:
    page.goto(site.address + "calculators/fret-spacing/")
    choice = page.locator("[data-model-of-form]")
    choice.select_option("twelve")
    scale = page.locator('[name="scale_length"]')
    expect(scale).to_have_value("632")
    # The first slot of 632 mm: 632 (1 - 2^(-1/12)) = 35.4712 mm.
    expect(page.locator('[data-result="first_slot"] dd')).to_contain_text("35.47")
    page.locator(".br-units label:has([value=inch])").click()
    expect(scale).to_have_value(re.compile(r"^24\.88"))
    choice.select_option("ukulele")
    expect(scale).to_have_value(re.compile(r"^14\.96"))
    choice.select_option("")
    expect(scale).to_have_value(re.compile(r"^25\.59"))


def test_a_models_page_leads_to_a_calculator_with_its_figures(page: Page, site: Site) -> None:
    page.goto(site.address + "models/twelve/")
    link = page.locator('[data-with-model][data-ready][href*="fret-spacing"]')
    link.scroll_into_view_if_needed()
    page.wait_for_timeout(400)  # the theme notes where it is scrolled to; nobody clicks sooner
    link.click()
    expect(page.locator('[name="scale_length"]')).to_have_value("632")
    expect(page.locator("[data-model-of-form]")).to_have_value("twelve")


def test_the_keyboard_alone_measures(page: Page, site: Site) -> None:
    open_look_up(page, site)
    find(page, "soundhole diameter")
    page.locator("#tol-rose-soundhole-diameter .br-measure").focus()
    page.keyboard.press("Enter")
    page.keyboard.type("100.1")
    expect(page.locator(".br-verdict strong")).to_have_text("Accept")
    page.keyboard.press("Escape")
    expect(page.locator(".br-judge")).to_have_count(0)
    focused = page.evaluate("document.activeElement.className")
    assert "br-measure" in focused


def test_revisions_since_a_day(page: Page, site: Site, demo: Handbook) -> None:
    page.goto(site.address + "revisions/")
    rows = page.locator(".br-revisions tbody tr")
    assert rows.count() == sum(len(station.revisions) for station in demo.stations)
    days = sorted({str(one["on"]) for station in demo.stations for one in station.revisions})
    assert len(days) > 2
    page.locator("[name=trained]").fill(days[-2])
    newer = {s.id for s in demo.stations for one in s.revisions if str(one["on"]) > days[-2]}
    expect(page.locator("[data-count]")).to_contain_text(f"{len(newer)} procedure")
    shown = page.locator(".br-revisions tbody tr:visible")
    assert {shown.nth(at).get_attribute("data-station") for at in range(shown.count())} == newer
    page.locator("[name=trained]").fill(days[-1])
    expect(page.locator("[data-count]")).to_contain_text("Nothing has changed")


@pytest.mark.parametrize("path", ["stations/neck-fit/", "tolerances/?station=polishing"])
def test_the_code_opens_the_table(path: str, page: Page, site: Site) -> None:
    page.goto(site.address + path)
    code = page.locator(".br-qr:visible").first
    code.scroll_into_view_if_needed()
    picture = Image.open(io.BytesIO(code.locator("svg").screenshot(scale="css")))
    (found,) = zxingcpp.read_barcodes(picture)
    station = "neck-fit" if "neck-fit" in path else "polishing"
    assert found.text == f"{site.address}tolerances/#of-{station}"
    page.goto(found.text)
    expect(page.locator(f"#of-{station}")).to_be_in_viewport()


def test_each_station_opens_from_the_map(page: Page, site: Site, demo: Handbook) -> None:
    page.goto(site.address)
    links = page.locator(".br-way-map a")
    assert links.count() == len(demo.stations)
    plates = page.evaluate(
        "[...document.querySelectorAll('.br-way-map a')].map((a) => { const b = a.getBoundingClientRect();"
        " return [b.x, b.y, b.right, b.bottom, a.scrollWidth <= a.clientWidth + 1 && a.scrollHeight <= a.clientHeight + 1] })"
    )
    for at, one in enumerate(plates):
        assert one[4], f"the words run out of plate {at + 1}"
        for other in plates[at + 1 :]:
            apart = (
                one[2] <= other[0] or other[2] <= one[0] or one[3] <= other[1] or other[3] <= one[1]
            )
            assert apart, "plates lie over one another"
    links.nth(17).click()
    expect(page.locator("h1")).to_contain_text("Neck fit")


def test_before_and_after_are_the_other_way_round(site: Site, demo: Handbook) -> None:
    for station in demo.stations:
        before, after = demo.neighbours(station)
        html = (site.folder / "stations" / station.id / "index.html").read_text("utf-8")
        foot = html[html.index('class="br-way"') :]
        for other in (*before, *after):
            assert f"../{other.id}/" in foot
        for other in after:
            assert station in demo.neighbours(other)[0]


def test_terms_are_linked_where_a_page_first_uses_them(site: Site) -> None:
    html = (site.folder / "stations" / "kerfed-lining" / "index.html").read_text("utf-8")
    links = re.findall(r'href="\.\./\.\./glossary/#term-([\w-]+)"', html)
    assert len(links) > 8
    assert len(links) == len(set(links)) or max(links.count(one) for one in links) <= 3
    assert "term" in search_places(site)["kind"]


def test_the_look_up_works_on_a_phone(browser: Browser, site: Site) -> None:
    context = browser.new_context(viewport={"width": 390, "height": 844}, has_touch=True)
    page = context.new_page()
    open_look_up(page, site)
    assert page.evaluate("document.documentElement.scrollWidth") <= 390
    find(page, "fret lift")
    page.locator("#tol-fret-crown-lift .br-measure").tap()
    page.locator(".br-judge [name=value]").fill("0.03")
    expect(page.locator(".br-verdict strong")).to_have_text("Accept")
    assert page.evaluate("document.documentElement.scrollWidth") <= 390
    small = page.evaluate(
        "[...document.querySelectorAll('.br-judge :is(input, select, button), .br-lookup :is(input, select), .br-measure')]"
        ".filter((e) => e.offsetParent).filter((e) => e.getBoundingClientRect().height < 43.5).length"
    )
    assert small == 0
    context.close()
