"""Station cards: one page each, all that matters on it, readable at arm's length."""

import io
from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from pathlib import Path
from typing import Any

import pdfplumber
import pytest
import zxingcpp

from benchrule.paper.card_content import Card
from benchrule.paper.card_layout import CannotFit
from benchrule.paper.cards import CardSet, cards_pdf
from benchrule.paper.sizes import CARD_PAPERS

from .test_paper import ADDRESS, demo, demo_cards, run, run_apart, squeezed
from .trees import sound_tree, write_tree

SIZES_MM = {"a5": (148, 210), "a4": (210, 297), "half-letter": (139.7, 215.9)}
NOTE = "Invented, for demonstration."
KEY_POINTS_LEAST_PT, LIMITS_LEAST_PT = 9.0, 7.5
LEAST_PT = 6.9  # of anything, the foot included


@cache
def made(paper: str) -> CardSet:
    return cards_pdf(demo_cards(), paper, NOTE)


@cache
def opened(paper: str) -> Any:
    return pdfplumber.open(io.BytesIO(made(paper).pdf))


@cache
def text_of(paper: str, number: int) -> str:
    return squeezed(opened(paper).pages[number].extract_text())


def each(paper: str) -> Iterator[tuple[Card, Any, str]]:
    """Each card with its page and the page's text."""
    for number, card in enumerate(demo_cards()):
        yield card, opened(paper).pages[number], text_of(paper, number)


@pytest.mark.parametrize("paper", CARD_PAPERS)
def test_a_page_a_station_at_the_size_of_the_paper(paper: str) -> None:
    pages = opened(paper).pages
    assert len(pages) == len(demo().stations)
    width, height = (length / 25.4 * 72 for length in SIZES_MM[paper])
    for page in pages:
        assert page.width == pytest.approx(width, abs=0.01)
        assert page.height == pytest.approx(height, abs=0.01)


@pytest.mark.parametrize("paper", CARD_PAPERS)
def test_each_card_says_what_its_station_says(paper: str) -> None:
    for card, _, text in each(paper):
        assert squeezed(card.title) in text and squeezed(card.revision) in text
        assert squeezed(card.group) in text
        assert len(card.key_points) >= 8
        for title, point in card.key_points:
            assert squeezed(f"{title}. {point}") in text, (card.id, title)
        for name, words in card.hazards:
            assert squeezed(f"{name}. {words}") in text, (card.id, name)
        assert squeezed(NOTE) in text and squeezed(f"{ADDRESS}stations/{card.id}/") in text


@pytest.mark.parametrize("paper", CARD_PAPERS)
def test_limits_stand_in_the_order_of_the_file_and_the_rest_is_counted(paper: str) -> None:
    for card, _, text in each(paper):
        left = made(paper).left_out.get(card.id, 0)
        shown = card.limits[: len(card.limits) - left]
        assert shown, card.id
        place = text.index("Limits")
        for limit in shown:
            place = text.index(squeezed(limit.feature)[:14], place + 1)  # each after the one before
            for one in limit.figures:
                assert squeezed(one.first) in text and squeezed(one.also) in text, limit
        assert (f"…and{left}moreinthehandbook" in text) == bool(left)


def test_only_small_paper_leaves_limits_out_and_only_in_the_least_type() -> None:
    assert made("a4").left_out == {}
    assert made("a5").left_out
    for card, page, _ in each("a5"):
        if card.id in made("a5").left_out:
            sizes = {round(char["size"], 2) for char in page.chars}
            assert LIMITS_LEAST_PT in sizes and KEY_POINTS_LEAST_PT in sizes


@pytest.mark.parametrize("paper", CARD_PAPERS)
def test_type_is_large_enough_and_nothing_leaves_the_page(paper: str) -> None:
    for card, page, _ in each(paper):
        words = page.extract_words(extra_attrs=["size"])
        tops = {}
        for word in words:
            tops.setdefault(word["text"], word["top"])
        foot = max(word["top"] for word in words if word["text"] == "Invented,")
        for word in words:
            where = (card.id, word["text"], word["size"])
            assert word["size"] >= LEAST_PT, where
            assert word["x0"] > 10 and word["x1"] < page.width - 10, where
            assert word["top"] > 10 and word["bottom"] < page.height - 10, where
            if tops["Key"] < word["top"] < tops["Limits"]:
                assert word["size"] >= KEY_POINTS_LEAST_PT - 0.01, where
            elif tops["Limits"] <= word["top"] < foot:
                assert word["size"] >= LIMITS_LEAST_PT - 0.01, where


@pytest.mark.parametrize("paper", CARD_PAPERS)
def test_no_line_is_printed_over_another(paper: str) -> None:
    for card, page, _ in each(paper):
        words = page.extract_words(extra_attrs=["size"], keep_blank_chars=True)
        for place, one in enumerate(words):
            for other in words[place + 1 :]:
                wide = min(one["x1"], other["x1"]) - max(one["x0"], other["x0"])
                high = min(one["bottom"], other["bottom"]) - max(one["top"], other["top"])
                # Boxes are as high as the type; lines closer than that would touch.
                assert wide < 0.5 or high < 0.5, (card.id, one["text"], other["text"])


def test_the_code_leads_to_the_stations_page() -> None:
    for card, page, _ in each("a5"):
        image = page.to_image(resolution=150).original
        found = [one.text for one in zxingcpp.read_barcodes(image)]
        assert found == [f"{ADDRESS}stations/{card.id}/"]


def test_there_is_a_bookmark_for_each_station() -> None:
    titles = [entry[1] for entry in opened("a5").doc.get_outlines()]
    assert titles == [card.title for card in demo_cards()]


def test_a_model_that_differs_is_named_with_its_own_limits() -> None:
    [card] = [one for one in demo_cards() if one.id == "neck-fit"]
    [rise] = [one for one in card.limits if one.feature.startswith("Rise of the top")]
    assert [(one.models, one.first) for one in rise.figures] == [
        ("The Fourteen", "3.5 ± 0.6 mm"), ("The Twelve", "3.3 ± 0.6 mm"),
        ("The Concert", "1.0 ± 0.4 mm"),
    ]  # fmt: skip
    [shim] = [one for one in card.limits if one.feature.startswith("Thickness of the metal shim")]
    assert [(one.models, one.first) for one in shim.figures] == [("", "0.15 ± 0.02 mm")]


def test_a_card_that_is_too_full_is_refused_in_words() -> None:
    [card] = [one for one in demo_cards() if one.id == "neck-fit"]
    full = replace(card, key_points=card.key_points * 5)
    with pytest.raises(CannotFit, match="neck-fit does not fit on A5 even without its limits"):
        cards_pdf([full], "a5")
    with pytest.raises(CannotFit, match="shorten its key points"):
        cards_pdf([full], "a4")


def test_the_same_cards_give_the_same_bytes(tmp_path: Path) -> None:
    assert cards_pdf(demo_cards(), "a5", NOTE).pdf == made("a5").pdf
    for seed in (1, 2):
        run_apart(["cards", "--station", "fretting", "--out", str(tmp_path / f"{seed}.pdf")], seed)
    assert (tmp_path / "1.pdf").read_bytes() == (tmp_path / "2.pdf").read_bytes()


def test_the_command_writes_the_stations_asked_for_in_the_shops_order(tmp_path: Path) -> None:
    out = tmp_path / "cards.pdf"
    found = run(
        "cards", "--station", "neck-fit", "--station", "bracing", "--paper", "half-letter",
        "--note", "For the loft.", "--out", str(out),
    )  # fmt: skip
    assert found.exit_code == 0 and "2 cards, half Letter" in found.stdout
    assert "neck-fit" in found.stderr and "left to the handbook" in found.stderr
    with pdfplumber.open(out) as pdf:
        texts = [page.extract_text() for page in pdf.pages]
    assert ["Bracing" in texts[0], "Neck fit" in texts[1]] == [True, True]
    assert all("For the loft." in text and "Invented" not in text for text in texts)


def test_without_an_address_there_is_no_code_and_it_is_said(tmp_path: Path) -> None:
    write_tree(tmp_path, sound_tree())
    out = tmp_path / "cards.pdf"
    found = run("cards", "--out", str(out), config=tmp_path / "mkdocs.yml")
    assert found.exit_code == 0 and "write site_url in mkdocs.yml" in found.stderr
    with pdfplumber.open(out) as pdf:
        assert not zxingcpp.read_barcodes(pdf.pages[0].to_image(resolution=150).original)
        assert "Long strokes." in pdf.pages[0].extract_text()


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["--out", "{}/cards.doc"], "must end in .pdf"),
        (["--out", "{}/none/cards.pdf"], "name a file in a folder that is there"),
        (["--out", "{}/cards.pdf", "--paper", "a3"], "'a5', 'a4', 'half-letter'"),
        (["--out", "{}/cards.pdf", "--station", "sand"], "there is no station 'sand'; there is sanding"),
        (["--out", "{}/cards.pdf", "--station", "x"], "there is no station 'x'; there is sanding"),
        ([], "Missing option '--out'"),
    ],
)  # fmt: skip
def test_what_cannot_be_printed_is_refused_in_words(
    tmp_path: Path, words: list[str], said: str
) -> None:
    write_tree(tmp_path, sound_tree())
    words = [word.format(tmp_path) for word in words]
    found = run("cards", *words, config=tmp_path / "mkdocs.yml")
    assert found.exit_code == 2 and said in found.stderr
    assert not list(tmp_path.glob("cards.*"))


def test_a_handbook_with_problems_prints_no_cards(tmp_path: Path) -> None:
    write_tree(tmp_path, {**sound_tree(), "docs/data/gauges.yml": "rule: {name: Rule}\n"})
    out = ["--out", str(tmp_path / "cards.pdf")]
    found = run("cards", *out, config=tmp_path / "mkdocs.yml")
    assert found.exit_code == 2 and "see benchrule check" in found.stderr
