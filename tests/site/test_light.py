"""What a reader's first visit weighs, and that nothing comes before it is used."""

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, Playwright, Request

from tests.bench.first_visit import AIM_BYTES, heaviest_station, read_to_the_end, visit, watch
from tests.bench.server import Host, serving

from .conftest import Site

CALCULATOR = "calculators/fret-spacing/"


@pytest.fixture
def host(site: Site) -> Iterator[Host]:
    with serving(site.folder) as running:
        yield running


@pytest.fixture
def fresh(browser: Browser, host: Host) -> Iterator[BrowserContext]:
    """A new profile; a service worker that keeps the handbook has not been here yet."""
    context = browser.new_context(
        viewport={"width": 1280, "height": 900}, service_workers="block"
    )  # fmt: skip
    yield context
    context.close()


def of_runtime(ended: list[Request]) -> list[str]:
    return [request.url for request in ended if "/runtime/" in request.url]


def test_the_heaviest_station_is_light_on_a_first_visit(
    playwright_running: Playwright, site: Site
) -> None:
    station = heaviest_station(site.folder)
    page = visit(playwright_running, site.folder, station, saved=False).page
    assert station in page, "the page itself is counted"
    assert any(name.endswith(".woff2") for name in page), "its type is counted"
    assert sum(page.values()) <= AIM_BYTES, page
    assert not [name for name in page if name.startswith(("runtime/", "search/places-"))]


def test_the_host_and_the_browser_count_the_same(
    playwright_running: Playwright, site: Site
) -> None:
    """What the host says it sent is what came in, file by file, as the browser reports it."""
    found = visit(playwright_running, site.folder, "stations/neck-fit/", saved=False)
    assert len(found.by_browser) > 20
    for name, size in found.by_browser.items():
        counted = found.page[name] - found.not_changed.get(name, 0)
        assert abs(counted - size) <= 0.02 * size + 64, name
    counted = sum(found.page[name] for name in found.by_browser)
    assert abs(counted - sum(found.by_browser.values())) <= 0.02 * counted


def test_who_only_reads_fetches_no_runtime(fresh: BrowserContext, host: Host) -> None:
    page = fresh.new_page()
    ended = watch(fresh, host.address)
    page.mouse.move(640, 450)  # the calculator is scrolled along under it
    page.goto(host.address + CALCULATOR)
    read_to_the_end(page)
    assert of_runtime(ended) == []


@pytest.mark.parametrize("use", ["focus", "hover", "touch"])
def test_the_first_sign_of_use_starts_the_calculator(
    use: str, fresh: BrowserContext, host: Host
) -> None:
    page = fresh.new_page()
    page.goto(host.address + CALCULATOR)
    entry = page.locator("[data-calculator] input[inputmode]").first
    entry.scroll_into_view_if_needed()
    with page.expect_request(lambda request: "/runtime/" in request.url):
        if use == "focus":
            entry.focus()
        elif use == "hover":
            entry.hover()
        else:
            press(page, "pointerup")


def test_a_finger_that_scrolls_over_a_calculator_starts_nothing(
    fresh: BrowserContext, host: Host
) -> None:
    page = fresh.new_page()
    ended = watch(fresh, host.address)
    page.goto(host.address + CALCULATOR)
    for kind in ("pointerdown", "pointermove", "pointercancel"):
        press(page, kind)
    page.wait_for_timeout(1500)
    assert of_runtime(ended) == []


def press(page: Page, kind: str) -> None:
    """An event of a finger on a calculator's entry."""
    page.locator("[data-calculator] input[inputmode]").first.evaluate(
        """(entry, kind) => entry.dispatchEvent(
          new PointerEvent(kind, { bubbles: true, pointerType: "touch" }))""",
        kind,
    )


def test_a_device_that_has_the_runtime_starts_on_sight(fresh: BrowserContext, host: Host) -> None:
    page = fresh.new_page()
    page.goto(host.address + CALCULATOR)
    entry = page.locator("[data-calculator] input[inputmode]").first
    entry.fill("640")
    page.wait_for_selector(".br-state[data-state=live]")
    page.wait_for_timeout(500)  # the answer itself comes right after
    assert page.evaluate("localStorage['benchrule.runtime']").startswith(host.address)
    again = fresh.new_page()
    again.goto(host.address + CALCULATOR)
    again.locator("[data-calculator]").first.scroll_into_view_if_needed()
    again.wait_for_selector(".br-state[data-state=live]")
