"""What cards and sheets on paper share: the demo handbook, the fonts, dates taken out of files."""

import io
import os
import re
import subprocess
import sys
import zipfile
from collections.abc import Sequence
from dataclasses import replace
from datetime import date
from functools import cache
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from benchrule.cli import main
from benchrule.handbook import Handbook
from benchrule.opening import open_handbook
from benchrule.paper.card_content import Card, card_of
from benchrule.paper.cards import cards_pdf
from benchrule.paper.fixed_zip import with_fixed_dates
from benchrule.paper.lettering import printed, unprintable
from benchrule.paper.sheet_lines import OrderSheet, order_sheet
from benchrule.paper.sheet_pdf import sheet_pdf
from benchrule.paper.sizes import PAPERS
from benchrule.plain_words import plain_words
from benchrule.station_parts import places_of

ROOT = Path(__file__).parents[2]
CONFIG = ROOT / "mkdocs.yml"
ADDRESS = "https://shop.example/handbook/"
RECORDED, RECORDED_ORDER = "order-scale", "2026-101"


@cache
def demo() -> Handbook:
    """The demo handbook, where one thing has been measured for an order."""
    handbook, problems = open_handbook(CONFIG)
    assert problems == []
    entry = replace(
        handbook.orders[RECORDED_ORDER],
        fields={RECORDED: {"value": "628.5 mm", "on": "2026-11-20", "by": "XY"}},
    )
    handbook.entries["records"] = {RECORDED_ORDER: entry}
    return handbook


@cache
def demo_cards() -> list[Card]:
    """Every station's card."""
    return [card_of(demo(), one, ADDRESS) for one in demo().stations]


@cache
def demo_sheet(order: str = RECORDED_ORDER) -> OrderSheet:
    """The build sheet of an order."""
    return order_sheet(demo(), order)


def squeezed(text: str) -> str:
    """A text without its spaces and breaks, as it is printed."""
    return re.sub(r"\s", "", printed(text))


def run(*words: str, config: Path = CONFIG) -> Result:
    return CliRunner().invoke(main, [*words, "-f", str(config)])


def run_apart(words: Sequence[str], seed: int) -> None:
    """A command in a process of its own, with another order of sets and dictionaries' hashes."""
    subprocess.run(
        [sys.executable, "-c", "from benchrule.cli import main; main()", *words],
        check=True, cwd=ROOT, env={**os.environ, "PYTHONHASHSEED": str(seed)}, timeout=120,
        stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
    )  # fmt: skip


def test_the_fonts_have_every_letter_that_the_handbook_prints() -> None:
    book = demo()
    texts = [text for card in demo_cards() for text in card.texts()]
    for order in book.orders:
        texts += demo_sheet(order).texts()
    texts += [plain_words(book, place.text) for place in places_of(book)]
    for kind in ("tolerances", "gauges", "hazards", "glossary", "materials", "models", "orders"):
        texts += [str(entry.fields) for entry in book.entries[kind].values()]
    assert unprintable(texts) == ""
    changed = {
        (one, other)
        for text in texts
        for one, other in zip(text, printed(text), strict=True)
        if one != other and not one.isspace()
    }
    assert changed <= {("-", "−")}


def test_the_letters_that_count_are_printed_as_they_are() -> None:
    letters = "−±°µ²³é“”–…·×½≤≥ö"
    assert printed(letters) == letters


def test_what_the_fonts_lack_is_printed_as_near_as_can_be() -> None:
    assert printed("mm⁴") == "mm^4"
    assert printed("⅓") == "1/3"
    assert printed("from -0.5 to 2-3, x-1, (-2)") == "from −0.5 to 2-3, x-1, (−2)"
    assert printed("日") == "?" and unprintable(["a日b\n"]) == "日"
    assert unprintable(["mm⁴ ± 3 °C"]) == ""


def test_sizes_of_paper() -> None:
    assert PAPERS["a5"].width_pt == pytest.approx(148 / 25.4 * 72)
    assert PAPERS["half-letter"].height_pt == 612


def test_an_office_file_loses_its_clock_and_nothing_else() -> None:
    def made(hour: int) -> bytes:
        out = io.BytesIO()
        with zipfile.ZipFile(out, "w") as file:
            stamp = zipfile.ZipInfo("docProps/core.xml", (2026, 11, 20, hour, 0, 0))
            times = f'<dcterms:modified xsi:type="x">2026-11-20T{hour}:00:00Z</dcterms:modified>'
            file.writestr(stamp, f"<a>{times}</a>")
            file.writestr(zipfile.ZipInfo("data.xml", (2026, 11, 20, hour, 0, 0)), "<b>12:00</b>")
        return out.getvalue()

    assert made(10) != made(11)
    fixed = with_fixed_dates(made(10), date(2026, 9, 7))
    assert fixed == with_fixed_dates(made(11), date(2026, 9, 7))
    with zipfile.ZipFile(io.BytesIO(fixed)) as file:
        assert file.read("data.xml") == b"<b>12:00</b>"
        assert b">2026-09-07T00:00:00Z<" in file.read("docProps/core.xml")


def test_every_font_is_embedded() -> None:
    for made in (cards_pdf(demo_cards()[:1]).pdf, sheet_pdf(demo_sheet("2026-104"))):
        names = set(re.findall(rb"/BaseFont /(\S+)", made))
        assert len(names) == 2 and all(b"+BitstreamVera" in name for name in names)
        assert len(re.findall(rb"/FontFile2 ", made)) == 2
