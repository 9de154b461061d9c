"""From one edition to the next: offered, never forced, never mixed."""

import re
import shutil
from pathlib import Path
from typing import Any

from playwright.sync_api import Playwright, expect

from calculators.learning import assignment as assignments

from ..test_practice import KEPT
from .parts import (
    HELD,
    LONG,
    Server,
    assert_holds,
    look_for_newer,
    offer,
    opened,
    requests_of,
    saved,
    words,
)


def test_a_newer_edition_is_offered_and_never_mixed_with_the_old(
    playwright_running: Playwright, server: Server, profile: Path, first: Path, second: Path
) -> None:
    server.serve(first)
    [old] = [path.name for path in (first / "runtime").iterdir()]
    with opened(playwright_running, profile) as context:
        page = saved(context.new_page(), server, "calculators/fret-spacing/")
        server.serve(second)
        before = len(requests_of(server))
        look_for_newer(page)
        expect(offer(page)).to_contain_text("A newer edition of this handbook waits", timeout=LONG)
        fetched = requests_of(server)[before:]
        assert "/stations/polishing/" in fetched
        assert "/stations/neck-fit/" not in fetched, "what did not change was fetched again"

        offer(page).get_by_role("button", name="Later").click()
        expect(offer(page)).to_have_count(0)
        words(page).to_contain_text("a newer edition waits")
        # The old runtime and late scripts are nowhere but in this device's old edition.
        page.locator('[id="fret-spacing--scale_length"]').fill("640")
        expect(page.locator(".br-state").first).to_have_attribute(
            "data-state", "live", timeout=LONG
        )
        for tab in (page, context.new_page()):
            tab.goto(f"{server.address}stations/polishing/")
            assert tab.locator("h1[data-second]").count() == 0
            expect(tab.get_by_role("button", name="Practise", exact=True)).to_be_visible()
            expect(offer(tab)).to_have_count(0 if tab is page else 1, timeout=LONG)
        tab.get_by_role("button", name="Practise", exact=True).click()
        expect(tab.locator(".br-question")).to_be_visible(timeout=LONG)
        assert any(f"/runtime/{old}/worker.mjs" in worker.url for worker in tab.workers)
        tab.close()

        page.locator(".br-offline summary").click()
        page.get_by_role("button", name="Read the newer edition").click()
        expect(page.locator("h1[data-second]")).to_have_count(1, timeout=LONG)
        expect(offer(page)).to_have_count(0)
        server.end()
        page.get_by_role("button", name="Go on with the second").click(timeout=LONG)
        expect(page.locator(".br-question")).to_be_visible(timeout=LONG)
        assert any("/runtime/second/worker.mjs" in worker.url for worker in page.workers)
        page.goto(f"{server.address}calculators/neck-angle/")
        assert page.locator("h1[data-second]").count() == 1
        assert_holds(page, second)


def test_another_tab_goes_on_in_its_own_edition(
    playwright_running: Playwright, server: Server, profile: Path, first: Path, second: Path
) -> None:
    server.serve(first)
    [old] = [path.name for path in (first / "runtime").iterdir()]
    with opened(playwright_running, profile) as context:
        taker = saved(context.new_page(), server, "stations/polishing/")
        typist = saved(context.new_page(), server, "calculators/neck-angle/")
        entry = typist.locator(".br-form [data-input] input").first
        entry.fill("612.5")
        expect(typist.locator(".br-state").first).to_have_attribute(
            "data-state", re.compile("live|refused"), timeout=LONG
        )
        server.serve(second)
        taker.bring_to_front()
        look_for_newer(taker)
        offer(taker).get_by_role("button", name="Read it now").click(timeout=LONG)
        expect(taker.locator("h1[data-second]")).to_have_count(1, timeout=LONG)

        typist.bring_to_front()
        expect(offer(typist)).to_contain_text("was opened in another tab", timeout=LONG)
        expect(entry).to_have_value("612.5")
        assert typist.locator("h1[data-second]").count() == 0
        # Whatever it still fetches is of its own edition, though the server and the device have both.
        script = "async (path) => (await fetch(new URL(path, location.origin))).text()"
        assert old in typist.evaluate(script, "assets/benchrule/page.mjs")
        assert "data-second" not in typist.evaluate(script, "stations/polishing/")
        assert "// second" not in typist.evaluate(script, f"runtime/{old}/worker.mjs")
        assert "second" in taker.evaluate(script, "assets/benchrule/page.mjs")

        offer(typist).get_by_role("button", name="Read it now").click()
        expect(typist.locator("h1[data-second]")).to_have_count(1, timeout=LONG)
        expect(entry).to_have_value("612.5")
        taker.goto(f"{server.address}hazards/")
        assert_holds(taker, second)


def test_an_assignment_under_way_is_there_after_the_newer_edition(
    playwright_running: Playwright, server: Server, profile: Path, first: Path, second: Path,
    bank: dict[str, Any],
) -> None:  # fmt: skip
    questions = [["fault/neck-fit", 1], ["order/neck-fit", 1]]
    made = assignments.make(bank, {"title": "Week one", "questions": questions}, "ABCDEFGHJK")
    code = assignments.codes(made)[0]
    server.serve(first)
    with opened(playwright_running, profile) as context:
        page = context.new_page()
        page.goto(f"{server.address}learning/work/#{assignments.to_link_fragment(made)}")
        page.get_by_label("Your code").fill(code, timeout=LONG)
        page.get_by_role("button", name="Begin").click()
        page.locator(".br-learn-paper .br-options label").first.click(timeout=LONG)
        expect(page.locator(".br-learn-total")).to_contain_text("1 of 2 answered")
        expect(page.locator(f".br-offline{HELD}")).to_be_attached(timeout=LONG)
        server.serve(second)
        look_for_newer(page)
        expect(offer(page)).to_be_visible(timeout=LONG)
        expect(page.locator(".br-learn-total")).to_contain_text("1 of 2 answered")
        with page.expect_navigation():
            offer(page).get_by_role("button", name="Read it now").click()
        page.get_by_role("button", name=re.compile(f"Week one, {code}: 1 answered")).click(
            timeout=LONG
        )
        expect(page.locator(".br-learn-total")).to_contain_text("1 of 2 answered", timeout=LONG)
        expect(page.locator(".br-options input").first).to_be_checked()
        assert page.evaluate(KEPT, f"work/{made.id}/{code}")["given"]


def test_a_server_that_is_half_changed_makes_no_edition(
    playwright_running: Playwright, server: Server, profile: Path, first: Path, second: Path,
    tmp_path: Path,
) -> None:  # fmt: skip
    half = tmp_path / "half"
    shutil.copytree(second, half)
    page_of = "stations/polishing/index.html"
    shutil.copyfile(first / page_of, half / page_of)  # the new worker is there, this page is not
    server.serve(first)
    with opened(playwright_running, profile) as context:
        page = saved(context.new_page(), server, "stations/fretting/")
        server.serve(half)
        page.evaluate("""async () => {
          const registration = await navigator.serviceWorker.getRegistration();
          await registration.update();
          const worker = registration.installing;
          await new Promise((resolve) => worker.addEventListener("statechange", resolve));
          window.ended = worker.state;
        }""")
        assert page.evaluate("window.ended") == "redundant"
        words(page).to_have_text(re.compile("^Saved for offline use"))
        expect(offer(page)).to_have_count(0)
        server.serve(second)
        look_for_newer(page)
        expect(offer(page)).to_be_visible(timeout=LONG)
        server.end()
        page.goto(f"{server.address}stations/polishing/")
        assert page.locator("h1[data-second]").count() == 0
        page.get_by_role("button", name="Practise", exact=True).click()
        expect(page.locator(".br-question")).to_be_visible(timeout=LONG)
