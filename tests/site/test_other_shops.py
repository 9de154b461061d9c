"""Two invented shops of other trades, built and used in a real Chromium: units, own calculators, search."""

import json
import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from .conftest import PATIENCE_MS, ROOT, Site, build_site, free_port, served
from .test_search import ask

SHOPS = ROOT / "tests" / "shops"


def built(shop: str, folder: Path) -> Iterator[Site]:
    port = free_port()
    address = f"http://127.0.0.1:{port}/"
    shutil.copytree(SHOPS / shop, folder / "shop", ignore=shutil.ignore_patterns("__pycache__"))
    build_site(folder / "shop", folder / "site", address)
    with served(folder / "site", port):
        yield Site(folder / "site", address)


@pytest.fixture(scope="module")
def violin(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Site]:
    yield from built("violin", tmp_path_factory.mktemp("violin"))


@pytest.fixture(scope="module")
def ukulele(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Site]:
    yield from built("ukulele", tmp_path_factory.mktemp("ukulele"))


@pytest.fixture
def page(browser: Browser) -> Iterator[Page]:
    """A page of a new profile whose console stays clean."""
    context = browser.new_context(viewport={"width": 1280, "height": 900})
    faults: list[str] = []
    context.on(
        "console",
        lambda m: (
            faults.append(m.text)
            if m.type in ("error", "warning") and "Service Worker" not in m.text
            else None
        ),
    )
    context.on("weberror", lambda error: faults.append(str(error.error)))
    yield context.new_page()
    context.close()
    assert faults == []


def test_an_own_calculator_is_packed_and_what_is_left_out_is_not(
    violin: Site, ukulele: Site
) -> None:
    for site, own, part in (
        (violin, "neck-stop", "shop-calculators-violin-sums"),
        (ukulele, "board-feet", "shop-calculators-yard"),
    ):
        (runtime,) = (site.folder / "runtime").iterdir()
        parts = json.loads((runtime / "parts.json").read_text())
        assert parts[own] == [part]
        assert "neck-angle" not in parts
        assert not (site.folder / "calculators" / "neck-angle").exists()
        assert not list(runtime.glob("*plates*"))


def test_the_violin_shop_s_own_calculator_answers_in_the_browser(violin: Site, page: Page) -> None:
    page.goto(f"{violin.address}stations/neck-set/")
    form = page.locator("#calc-neck-stop")
    form.locator("[name=body_stop]").fill("192")
    expect(form.locator("[data-part=headline]")).to_contain_text("128.0 mm")
    form.locator("[data-model-of-form]").select_option("viola")
    expect(form.locator("[data-part=headline]")).to_contain_text("143.3 mm")
    clamps = page.locator("#calc-clamping-force")  # one of ours on the same page
    clamps.locator("[name=clamps]").fill("3")
    expect(clamps.locator(".br-state")).to_have_attribute("data-state", "live")


def test_an_inch_shop_s_pages_are_right_without_script(ukulele: Site, browser: Browser) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(f"{ukulele.address}stations/fretboard/")
    form = page.locator("#calc-fret-spacing")
    expect(form.locator("[name=scale_length]")).to_have_value("25 19/32")
    expect(form.locator("[data-unit-of=scale_length]")).to_have_text("in")
    expect(form.locator(".br-units input:checked")).to_have_value("inch64")
    expect(form.locator("[data-part=headline]")).to_contain_text("1 7/16 in")
    expect(form.locator("[data-input=scale_length]")).to_contain_text(
        "5 29/32 to 47 1/4 in"
    )
    row = page.locator("#tol-slot-depth .br-limits")
    expect(row.locator("strong")).to_have_text("0.085 ± 0.005 in")
    expect(row.locator(".br-inch")).to_have_text("2.16 ± 0.13 mm")
    expect(page.locator(".br-tol").nth(1)).to_have_text("0.085 ± 0.005 in")
    page.goto(f"{ukulele.address}models/concert/")
    expect(page.locator("#figures + table thead")).to_have_text("Whatinchmm")
    context.close()


def test_an_inch_shop_s_form_is_live_in_its_units(ukulele: Site, page: Page) -> None:
    page.goto(f"{ukulele.address}stations/fretboard/")
    form = page.locator("#calc-fret-spacing")
    form.locator("[name=frets]").fill("12")
    # The example is 650 mm to the last digit, though its text is rounded to a 64th.
    expect(form.locator("[data-part=results]")).to_contain_text("12 51/64 in")
    form.locator("[name=scale_length]").fill("17")
    expect(form.locator("[data-part=results]")).to_contain_text("8 1/2 in")
    form.locator(".br-units [value=metric]").check(force=True)
    expect(form.locator("[name=scale_length]")).to_have_value("431.8")
    form.get_by_role("button", name="Back to the example").click()
    expect(form.locator("[name=scale_length]")).to_have_value("650")
    page.reload()  # the reader's choice is kept
    expect(form.locator("[name=scale_length]")).to_have_value("650")
    expect(form.locator("[data-part=headline]")).to_contain_text("mm")
    form.locator(".br-units [value=inch64]").check(force=True)
    expect(form.locator("[name=scale_length]")).to_have_value("25 19/32")


def test_the_inch_shop_s_own_calculator_and_is_it_in(ukulele: Site, page: Page) -> None:
    page.goto(f"{ukulele.address}stations/stock/")
    form = page.locator("#calc-board-feet")
    form.locator("[name=boards]").fill("10")
    expect(form.locator("[data-part=headline]")).to_contain_text("20.00")
    page.goto(f"{ukulele.address}stations/stringing/")
    page.get_by_role("button", name="Is it in? Height").click()
    page.locator(".br-judge [name=value]").fill("0.1")
    expect(page.locator("[data-verdict=accept]")).to_contain_text("Accept")


def test_practice_is_in_the_shop_s_units(ukulele: Site, page: Page) -> None:
    page.goto(f"{ukulele.address}calculators/fret-spacing/")
    page.get_by_role("button", name="Practise").click()
    expect(page.locator(".br-question")).to_be_visible()
    expect(page.locator(".br-question-words")).to_contain_text(" in")
    expect(page.get_by_label("Units").last).to_have_value("inch64")


def test_the_order_s_sheet_is_in_the_shop_s_units(ukulele: Site, page: Page) -> None:
    page.goto(f"{ukulele.address}orders/2026-7/")
    row = page.locator("[data-key='fret-spacing.joint_position']")
    expect(row.locator(".br-set strong")).to_have_text("8 1/2 in")
    expect(row.locator(".br-set .br-inch")).to_have_text("215.90 mm")


def test_the_shop_s_handbook_works_offline(ukulele: Site, browser: Browser) -> None:
    context = browser.new_context(service_workers="allow")
    page = context.new_page()
    page.goto(ukulele.address)
    expect(page.locator(".br-offline[data-state=saved]")).to_be_attached(timeout=2 * PATIENCE_MS)
    context.set_offline(True)
    page.goto(f"{ukulele.address}stations/stock/")
    form = page.locator("#calc-board-feet")
    form.locator("[name=boards]").fill("10")
    expect(form.locator("[data-part=headline]")).to_contain_text("20.00")
    context.close()


@pytest.mark.parametrize(
    ("shop", "question", "place"),
    [
        ("violin", "gap under the post", "#tol-post-gap"),
        ("violin", "rattle inside when i shake it", "#the-post-falls"),
        ("violin", "how long is the neck", "calc-neck-stop"),
        ("ukulele", "how much wood to buy", "calc-board-feet"),
        ("ukulele", "strings too high", "#tol-string-height"),
    ],
)
def test_the_search_finds(
    shop: str, question: str, place: str, request: pytest.FixtureRequest
) -> None:
    (found,) = ask(request.getfixturevalue(shop), [question])
    assert any(place in one for one in found[:3]), found[:5]
