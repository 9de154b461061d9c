"""After one visit the whole handbook works without a network, in a browser that is really ended
and started again beside a server that is really ended."""

import re
import urllib.parse
import urllib.request
from pathlib import Path
from typing import Any

from playwright.sync_api import Playwright, expect

from calculators.engine import door

from ..test_practice import answer, asked, check
from .parts import (
    HELD,
    LONG,
    Server,
    edition,
    opened,
    saved,
    until,
)


def test_one_visit_then_everything_without_a_network(
    playwright_running: Playwright, server: Server, profile: Path, bank: dict[str, Any]
) -> None:
    server.end()
    with opened(playwright_running, profile) as context:
        page = context.new_page()
        faults: list[str] = []
        page.on("pageerror", lambda error: faults.append(str(error)))
        page.on("console", lambda m: faults.append(m.text) if m.type == "error" else None)

        response = page.goto(f"{server.address}stations/neck-fit/")
        assert response and response.from_service_worker and response.ok

        page.locator(".md-search__input").focus()
        page.locator(".md-search__input").press_sequentially("gap under the heel", delay=20)
        found = page.locator(".md-search-result__link").first
        expect(found).to_contain_text("gap under the heel", timeout=LONG, ignore_case=True)

        page.goto(f"{server.address}calculators/fret-spacing/")
        page.locator('[id="fret-spacing--scale_length"]').fill("650")
        wanted = door.answer("fret-spacing", {"scale_length": 650})["results"]["first_slot"][
            "shown"
        ]
        expect(page.locator('[data-result="first_slot"] dd').first).to_have_text(
            wanted, timeout=LONG
        )

        page.goto(f"{server.address}stations/fretting/")
        page.get_by_role("button", name="Practise").click()
        expect(page.locator(".br-question")).to_be_visible(timeout=LONG)
        answer(page, asked(page, "practice/fretting", bank))
        assert check(page).startswith("Right")
        page.goto(f"{server.address}learning/")
        expect(page.locator("[data-progress]")).to_contain_text("1 answers", timeout=LONG)

        page.goto(f"{server.address}orders/2026-101/")
        page.locator("tr[data-key='neck-top-rise'] input").fill("6 mm")
        expect(page.locator("tr[data-key='neck-top-rise'] .br-judged")).to_have_text(
            "Out", timeout=LONG
        )

        page.goto(f"{server.address}tolerances/?words=saddle+height")
        expect(page.locator("[data-count]")).not_to_have_text("", timeout=LONG)
        assert page.locator(".br-of tr[data-limits]:visible").count() > 0
        assert faults == []


def test_every_file_is_given_as_the_server_gave_it(
    playwright_running: Playwright, server: Server, profile: Path, first: Path
) -> None:
    listed = [address for address, _, _ in edition(first)["files"]]
    ask = """async (addresses) => Object.fromEntries(await Promise.all(addresses.map(async (address) => {
      const response = await fetch(new URL(address, document.baseURI));
      return [address, [response.status, response.headers.get("Content-Type"), (await response.arrayBuffer()).byteLength]];
    })))"""
    server.serve(first)
    with urllib.request.urlopen(server.address + "assets/benchrule/page.mjs") as response:
        script_type = response.headers["Content-Type"]
    server.end()
    with opened(playwright_running, profile) as context:
        page = context.new_page()
        page.goto(server.address)
        given = page.evaluate(ask, listed)
        assert {address for address, (status, *_) in given.items() if status != 200} == set()
        sizes = {address: size for address, _, size in edition(first)["files"]}
        assert {address: size for address, (_, _, size) in given.items()} == sizes
        assert given["assets/benchrule/page.mjs"][1] == script_type
        wasm = next(address for address in given if address.endswith(".wasm"))
        assert given[wasm][1] == "application/wasm"


def test_addresses_as_people_have_them(
    playwright_running: Playwright, server: Server, profile: Path
) -> None:
    server.end()
    with opened(playwright_running, profile) as context:
        page = context.new_page()
        for address, title in (
            ("stations/polishing/?h=swirl#steps", "Polishing"),
            ("stations/polishing", "Polishing"),
            ("stations/polishing/index.html", "Polishing"),
            ("?utm_source=code", "Shop"),
        ):
            response = page.goto(server.address + address)
            assert response and response.ok, address
            expect(page).to_have_title(re.compile(title))
        page.goto(server.address + "stations/polishing?h=swirl")
        assert page.url == server.address + "stations/polishing/?h=swirl"
        response = page.goto(server.address + "stations/no-such-station/at/all/")
        assert response and response.status == 404 and response.from_service_worker
        expect(page.locator("h1")).to_have_text("This page is not in the handbook")
        page.get_by_role("link", name="the first page").click()
        expect(page).to_have_url(server.address)
        expect(page.locator("h1")).not_to_have_text("This page is not in the handbook")


def test_the_page_that_brought_it_goes_on_when_the_network_goes(
    playwright_running: Playwright, server: Server, first: Path, tmp_path: Path
) -> None:
    server.serve(first)
    with opened(playwright_running, tmp_path / "profile") as context:
        page = saved(context.new_page(), server, "stations/fretting/")
        expect(page.locator(f".br-offline{HELD}")).to_be_attached()
        until(page, "navigator.serviceWorker.controller !== null")
        page.wait_for_timeout(500)  # the page says which edition it is of
        server.end()
        entry = page.locator('[id="fret-spacing--scale_length"]')
        entry.fill("650")
        wanted = door.answer("fret-spacing", {"scale_length": 650})["results"]["first_slot"][
            "shown"
        ]
        expect(page.locator('[data-result="first_slot"] dd').first).to_have_text(
            wanted, timeout=LONG
        )
        page.get_by_role("button", name="Practise").click()
        expect(page.locator(".br-question")).to_be_visible(timeout=LONG)
