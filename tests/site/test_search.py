"""What people type at the bench, and whether the right place comes first."""

import json
import re
import subprocess
from pathlib import Path
from typing import Any

import pytest
import yaml
from playwright.sync_api import Browser, Page, expect

from benchrule.handbook import load_handbook

from .conftest import ROOT, Site

QUESTIONS: list[dict[str, Any]] = yaml.safe_load(
    Path(__file__).with_name("everyday_questions.yml").read_text("utf-8")
)


def ask(site: Site, questions: list[str]) -> list[list[str]]:
    """The first places for each question, ranked by the page's own code under Node."""
    done = subprocess.run(
        ["node", str(Path(__file__).with_name("ask_search.mjs")), str(site.folder)],
        input=json.dumps(questions), capture_output=True, text=True, check=False,
    )  # fmt: skip
    assert done.returncode == 0, done.stderr
    found: list[list[str]] = json.loads(done.stdout)
    return found


def is_at(location: str, place: str) -> bool:
    """Whether a location of the site is the place that a question names."""
    kind, colon, id = place.partition(":")
    if colon:
        return {
            "hazard": location.endswith(f"#hazard-{id}"),
            "term": location.endswith(f"#term-{id}"),
            "calc": f"calculators/{id}/" in location,
            "wood": f"materials/{id}/" in location,
        }[kind]
    station, hash, heading = place.partition("#")
    if hash:
        return location == f"stations/{station}/#{heading}"
    return location.endswith(f"#tol-{place}")


def test_everyday_questions_find_the_right_place(site: Site) -> None:
    answers = ask(site, [question["ask"] for question in QUESTIONS])
    assert len(QUESTIONS) >= 80
    ranks = [
        next((at for at, one in enumerate(found) if any(is_at(one, f) for f in question["finds"])), 99)
        for question, found in zip(QUESTIONS, answers, strict=True)
    ]  # fmt: skip
    late = [
        f"{question['ask']}: {found[:3]}"
        for question, found, rank in zip(QUESTIONS, answers, ranks, strict=True)
        if rank > 2
    ]
    assert not late, "\n".join(late)
    assert sum(rank == 0 for rank in ranks) >= 0.9 * len(QUESTIONS)


def test_every_tolerance_is_found_by_a_newcomers_words(site: Site) -> None:
    """Each of a tolerance's other words finds its row, or one that is called the same, near the top."""
    handbook, _ = load_handbook(ROOT, ROOT / "docs")
    said = [
        (tolerance.id, words)
        for tolerance in handbook.tolerances.values()
        for words in tolerance.field("other_words") or ()
    ]
    answers = ask(site, [words for _, words in said])
    missed = [
        f"{words} ({id}): {found[:3]}"
        for (id, words), found in zip(said, answers, strict=True)
        if not any(one.endswith(f"#tol-{id}") for one in found[:10])
    ]
    assert len(missed) <= 0.1 * len(said), "\n".join(missed)


def test_what_is_asked_of_a_step_or_a_fault_finds_it(site: Site) -> None:
    handbook, _ = load_handbook(ROOT, ROOT / "docs")
    said = [
        (id, words) for id, entry in handbook.entries["asked"].items() for words in entry.fields
    ]
    answers = ask(site, [words for _, words in said])
    first = sum(is_at(found[0], id) for (id, _), found in zip(said, answers, strict=True) if found)
    three = sum(
        any(is_at(one, id) for one in found[:3])
        for (id, _), found in zip(said, answers, strict=True)
    )
    assert first >= 0.9 * len(said)
    assert three >= 0.97 * len(said)


@pytest.mark.parametrize(
    "nonsense", ["", "   ", "the of a", "zxqv", "((((", "*", "\\", "🎸", "a" * 500]
)
def test_nonsense_finds_nothing_and_breaks_nothing(nonsense: str, site: Site) -> None:
    assert len(ask(site, [nonsense])[0]) <= 10


@pytest.mark.parametrize(
    ("words", "place"),
    [
        ("frets lifting in the middle", "stations/fretting/#a-fret-lifts-in-the-middle"),
        ("gap under the heel", "stations/neck-fit/#there-is-a-gap-under-the-heel"),
        ("how high is the action at the 12th", "#tol-setup-action"),
        ("lacquer went milky", "stations/spraying/#the-lacquer-went-milky"),
    ],
)
def test_the_page_shows_the_answer_first(words: str, place: str, page: Page, site: Site) -> None:
    page.goto(site.address)
    box = page.get_by_role("textbox", name="Search")
    box.click()
    box.press_sequentially(words, delay=10)
    first = page.locator(".md-search-result__link").first
    # The list follows the last key after a moment.
    expect(first).to_have_attribute("href", re.compile(re.escape(place)))
    first.click()
    page.wait_for_timeout(500)
    anchor = place.partition("#")[2]
    assert page.locator(f'[id^="{anchor}"]').first.is_visible()


def test_what_is_searched_comes_when_the_search_is_opened(page: Page, site: Site) -> None:
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    page.goto(site.address)
    page.wait_for_load_state("networkidle")
    assert not [url for url in asked if "places-" in url or "minisearch" in url]
    with page.expect_request(lambda request: "/search/places-" in request.url):
        page.get_by_role("textbox", name="Search").focus()


def test_a_shared_search_answers_when_its_link_is_opened(page: Page, site: Site) -> None:
    page.goto(f"{site.address}?q=gap+under+the+heel")
    first = page.locator(".md-search-result__link").first
    heading = re.compile("neck-fit/.*#there-is-a-gap-under-the-heel")
    expect(first).to_have_attribute("href", heading)


def test_a_search_that_cannot_be_fetched_says_so_and_tries_again(
    browser: Browser, site: Site
) -> None:
    context = browser.new_context(service_workers="block")
    page = context.new_page()
    page.goto(site.address)
    context.route("**/search/places-*", lambda route: route.abort())
    box = page.get_by_role("textbox", name="Search")
    box.press_sequentially("gap")
    expect(page.locator(".md-search-result__list")).to_contain_text(
        "The search could not be fetched"
    )
    context.unroute("**/search/places-*")
    box.press_sequentially(" under the heel")
    first = page.locator(".md-search-result__link").first
    expect(first).to_have_attribute(
        "href", re.compile("#there-is-a-gap-under-the-heel")
    )
    context.close()
