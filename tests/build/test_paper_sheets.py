"""Build sheets in files: workbook, CSV and PDF say what the sheet says, number for number."""

import csv
import io
import re
import shutil
import subprocess
from dataclasses import replace
from datetime import date
from functools import cache
from itertools import pairwise
from pathlib import Path
from typing import Any

import openpyxl  # type: ignore[import-untyped]
import pdfplumber
import pytest
import zxingcpp

from benchrule.build_sheet import build_sheet
from benchrule.instruments import instrument_of_order
from benchrule.paper.lettering import printed
from benchrule.paper.sheet_csv import HEADS, settings_csv
from benchrule.paper.sheet_lines import OrderSheet, order_sheet
from benchrule.paper.sheet_pdf import COLUMNS, MARGIN_MM, sheet_pdf
from benchrule.paper.sheet_xlsx import settings_xlsx

from .test_paper import (
    ADDRESS,
    RECORDED,
    RECORDED_ORDER,
    demo,
    demo_sheet,
    run,
    run_apart,
    squeezed,
)
from .trees import sound_tree, write_tree

ORDERS = ("2026-101", "2026-102", "2026-103", "2026-104")
MOST_PAGES = 9  # eight today; one more for what the calculators may come to say
OFFICE = shutil.which("soffice") or shutil.which("libreoffice")


@cache
def workbook(order: str) -> Any:
    return openpyxl.load_workbook(io.BytesIO(settings_xlsx(demo_sheet(order), ADDRESS)))


@cache
def pdf(order: str, paper: str = "a4") -> Any:
    return pdfplumber.open(io.BytesIO(sheet_pdf(demo_sheet(order), paper, ADDRESS)))


def rows_of(page: Any) -> list[dict[str, Any]]:
    heads, *rows = page.iter_rows(values_only=True)
    return [dict(zip(heads, row, strict=True)) for row in rows]


def expected(order: str) -> list[tuple[Any, Any]]:
    """Every setting of the build sheet itself, with its station's sheet."""
    sheets = build_sheet(instrument_of_order(demo(), order))
    return [(sheet, one) for sheet in sheets for one in sheet.settings]


# The workbook


@pytest.mark.parametrize("order", ORDERS)
def test_the_workbook_has_every_setting_at_full_precision(order: str) -> None:
    rows, lines = rows_of(workbook(order)["Settings"]), expected(order)
    assert len(rows) == len(lines) > 100
    assert list(rows[0]) == list(HEADS)
    for row, (sheet, one) in zip(rows, lines, strict=True):
        assert (row["Station"], row["Setting"]) == (sheet.station.title, one.label)
        assert row["Planned"] == (None if isinstance(one.value, str) else one.value)
        assert row["Shown"] == one.shown.replace("-", "−", 1) if one.shown[0] == "-" else one.shown
        low, high = (
            one.tolerance.field(name) if one.tolerance else None for name in ("low", "high")
        )
        assert (row["Low"], row["High"]) == (low, high)
        assert bool(row["Gauge"]) == bool(one.tolerance)


def test_numbers_are_numbers_with_the_declared_decimals() -> None:
    page = workbook("2026-101")["Settings"]
    found = {row[1].value: row for row in page.iter_rows(min_row=2)}
    for label, decimals in (
        ("First slot from the nut", "0.000"), ("Scale length ordered", "0"),
        ("Change of its width", "0.00"), ("Moisture content of wood released to the benches", "0.0"),
    ):  # fmt: skip
        cell = found[label][2]
        assert cell.data_type == "n" and cell.number_format == decimals, label
    for row in page.iter_rows(min_row=2):
        for cell in (row[2], row[6], row[7]):
            assert cell.value is None or isinstance(cell.value, int | float)


def test_the_first_sheet_is_the_order() -> None:
    page = workbook("2026-101").worksheets[0]
    assert page.title == "Order"
    cells = {row[0]: row[1] for row in page.iter_rows(values_only=True)}
    values = [value for row in page.iter_rows(values_only=True) for value in row if value]
    assert page["A1"].value == "2026-101: Twelve-fret with a slotted head"
    assert cells["Model"] == "The Twelve" and cells["Days between"] == 189
    assert cells["Due"].date() == date(2027, 3, 15)
    assert cells["Top"] == "Western redcedar (Thuja plicata)"
    assert cells["In the handbook"] == f"{ADDRESS}orders/2026-101/"
    assert "No shell but the rosette." in values and "Invented, for demonstration." in values
    first = values.index("Look at these first")
    warnings = list(demo_sheet("2026-101").warnings())
    assert len(warnings) > 5
    assert values[first + 1 : first + 1 + 2 * len(warnings)] == [
        words for pair in warnings for words in pair
    ]


def test_the_workbook_is_ready_for_the_screen_and_for_paper() -> None:
    for page in workbook("2026-101").worksheets[1:]:
        assert page.freeze_panes == "A2" and page.print_title_rows == "$1:$1"
        assert page.auto_filter.ref.startswith("A1:")
        assert page.page_setup.orientation == "landscape"
        assert page.page_setup.fitToWidth == 1 and page.page_setup.fitToHeight == 0
        assert page.sheet_properties.pageSetUpPr.fitToPage
        assert all(page.column_dimensions[cell.column_letter].width >= 7 for cell in page[1])


@pytest.mark.parametrize("order", ORDERS)
def test_every_table_has_a_sheet_with_its_numbers(order: str) -> None:
    book = workbook(order)
    tables = {
        repr(rows): (answer.columns[name], rows)
        for sheet in demo_sheet(order).stations
        for answer in sheet.answers
        for name, rows in answer.tables.items()
        if rows
    }
    pages = book.worksheets[2:]
    assert len(pages) == len(tables) > 10
    assert all(len(page.title) <= 31 for page in pages)
    for page, (columns, rows) in zip(pages, tables.values(), strict=True):
        found = list(page.iter_rows(max_row=len(rows) + 1, values_only=True))
        assert [head.split(",")[0] for head in found[0]] == [
            one.label.split(",")[0] for one in columns
        ]
        for row, values in zip(found[1:], rows, strict=True):
            assert list(row) == [
                values[one.name] if values[one.name] != "" else None for one in columns
            ]


def hostile(start: str) -> OrderSheet:
    """A sheet whose words all begin like a formula."""
    sheet = demo_sheet()
    assert sheet.instrument.order is not None
    fields = {**sheet.instrument.order.fields, "summary": f"{start}1+1", "wishes": [f"{start}A1"]}
    order = replace(sheet.instrument.order, fields=fields)
    instrument = replace(sheet.instrument, order=order, title=f"{start}cmd")
    station = sheet.stations[0].station.id
    first = sheet.lines[station][0]
    named = replace(
        first,
        setting=replace(first.setting, label=f"{start}SUM(A1)"),
        record=f"{start}9 x",
        measured=None,
    )
    return replace(sheet, instrument=instrument, lines={**sheet.lines, station: [named]})


@pytest.mark.parametrize("start", ["=", "+", "-", "@"])
def test_no_text_becomes_a_formula(start: str) -> None:
    book = openpyxl.load_workbook(io.BytesIO(settings_xlsx(hostile(start))))
    page = book["Settings"]
    for cell, text in ((book["Order"]["A1"], "cmd"), (book["Order"]["A2"], "1+1"), (page["B2"], "SUM(A1)"), (page["J2"], "9 x")):  # fmt: skip
        assert (cell.value, cell.data_type) == (start + text, "s")
        assert cell.quotePrefix
    for row in book.worksheets:
        assert all(cell.data_type != "f" for line in row.iter_rows() for cell in line)
    [line] = list(csv.DictReader(io.StringIO(settings_csv(hostile(start)).decode())))[:1]
    assert line["Setting"] == f"'{start}SUM(A1)" and line["Measured"] == f"'{start}9 x"


@pytest.mark.skipif(not OFFICE, reason="LibreOffice is not on this machine")
def test_libreoffice_reads_the_same_numbers(tmp_path: Path) -> None:
    (tmp_path / "sheet.xlsx").write_bytes(settings_xlsx(demo_sheet(), ADDRESS))
    # Comma, quotes, UTF-8, values as they are and not as shown, the second sheet.
    kind = "csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,false,false,false,false,2"
    subprocess.run(
        [str(OFFICE), f"-env:UserInstallation=file://{tmp_path}/profile", "--headless",
         "--convert-to", kind, "--outdir", str(tmp_path), str(tmp_path / "sheet.xlsx")],
        check=True, timeout=150, capture_output=True,
    )  # fmt: skip
    [found] = tmp_path.glob("*.csv")
    rows = list(csv.DictReader(io.StringIO(found.read_text("utf-8"))))
    lines = expected(RECORDED_ORDER)
    assert len(rows) == len(lines)
    for row, (_, one) in zip(rows, lines, strict=True):
        assert row["Setting"] == one.label
        if not isinstance(one.value, str):
            # It writes fifteen digits.
            assert float(row["Planned"]) == pytest.approx(one.value, rel=5e-15)
        else:
            assert row["Planned"] == "" and row["Shown"].split() == one.shown.split()


# CSV


@pytest.mark.parametrize("order", ORDERS)
def test_the_csv_has_every_setting_at_full_precision(order: str) -> None:
    text = settings_csv(demo_sheet(order)).decode("utf-8")
    rows, lines = list(csv.DictReader(io.StringIO(text, newline=""))), expected(order)
    assert len(rows) == len(lines)
    for row, (_, one) in zip(rows, lines, strict=True):
        assert row["Setting"] == one.label
        assert row["Planned"] == ("" if isinstance(one.value, str) else repr(one.value))
        low = one.tolerance.field("low") if one.tolerance else None
        assert row["Low"] == ("" if low is None else repr(low))
    assert not re.search(r"(^|,)[=+@]", text, re.MULTILINE)


# Records


def test_what_was_measured_stands_in_every_file_with_its_verdict() -> None:
    [line] = [one for one in demo_sheet().all_lines() if one.setting.key == RECORDED]
    assert (line.record, line.measured, line.initials) == ("628.5 mm", 628.5, "XY 2026-11-20")
    assert line.verdict == "accept"
    [row] = [
        row for row in rows_of(workbook(RECORDED_ORDER)["Settings"]) if row["Measured"] is not None
    ]
    assert (row["Setting"], row["Measured"], row["Verdict"]) == (
        line.setting.label,
        628.5,
        "accept",
    )
    assert row["Initials"] == "XY 2026-11-20"
    [cell] = [one for one in workbook(RECORDED_ORDER)["Settings"]["J"][1:] if one.value is not None]
    assert (
        cell.number_format == "0.0"
    )  # all that was read, though the limit is in whole millimetres
    text = settings_csv(demo_sheet()).decode()
    [row] = [row for row in csv.DictReader(io.StringIO(text)) if row["Measured"]]
    assert (row["Measured"], row["Verdict"]) == ("628.5", "accept")
    box = column(pdf(RECORDED_ORDER).pages[0], 3)
    assert "628.5 mm" in box and "accept" in box
    assert "XY 2026-11-20" in column(pdf(RECORDED_ORDER).pages[0], 4)


def test_a_reading_that_is_out_says_so() -> None:
    book = demo()
    before = book.entries["records"]
    entry = before[RECORDED_ORDER]
    try:
        bad = {RECORDED: {"value": "640 mm", "on": "2026-11-20"}}
        book.entries["records"] = {RECORDED_ORDER: replace(entry, fields=bad)}
        lines = order_sheet(book, RECORDED_ORDER).all_lines()
        [line] = [one for one in lines if one.setting.key == RECORDED]
    finally:
        book.entries["records"] = before
    assert (line.verdict, line.initials) == ("reject", "2026-11-20")


# PDF


def column(page: Any, number: int) -> str:
    """The text of one column of the settings."""
    margin = MARGIN_MM / 25.4 * 72
    width = page.width - 2 * margin
    left = margin + width * sum(COLUMNS[:number])
    return str(page.crop((left, 0, left + width * COLUMNS[number], page.height)).extract_text())


@pytest.mark.parametrize("order", ORDERS)
def test_the_pdf_has_every_setting_whole_on_one_page(order: str) -> None:
    pages = pdf(order).pages
    assert len(pages) <= MOST_PAGES
    labels = [squeezed(column(page, 0)) for page in pages]
    margin = MARGIN_MM / 25.4 * 72
    right = [
        page.crop((margin + (page.width - 2 * margin) * COLUMNS[0], 0, page.width, page.height))
        for page in pages
    ]
    values = [squeezed(one.extract_text()) for one in right]
    for line in demo_sheet(order).all_lines():
        words = squeezed(
            f"{line.setting.label} · {line.gauge}" if line.gauge else line.setting.label
        )
        value = squeezed(line.setting.shown)
        both = [
            words in label and value in shown for label, shown in zip(labels, values, strict=True)
        ]
        assert any(both), (line.setting.label, line.setting.shown)
        if line.limits:
            assert any(squeezed(line.limits) in squeezed(column(page, 2)) for page in pages)


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_each_page_says_which_order_and_page_it_is(paper: str) -> None:
    pages = pdf("2026-102", paper).pages
    assert 3 < len(pages) <= MOST_PAGES + 1
    for number, page in enumerate(pages, 1):
        head = page.extract_text().splitlines()[0]
        assert "Order 2026-102" in head and f"Page {number} of {len(pages)}" in head
        size = (210 / 25.4 * 72, 297 / 25.4 * 72) if paper == "a4" else (612, 792)
        assert (page.width, page.height) == pytest.approx(size, abs=0.01)


@pytest.mark.parametrize("order", ORDERS)
def test_warnings_come_first_and_again_at_their_station(order: str) -> None:
    sheet = demo_sheet(order)
    first = squeezed(pdf(order).pages[0].extract_text())
    everything = squeezed("".join(page.extract_text() for page in pdf(order).pages))
    top = first[: first.index(squeezed("revision 1,"))]
    for station, words in sheet.warnings():
        assert squeezed(f"{station}. {words}") in top
        assert squeezed(f"Look first. {words}") in everything
    for wish in sheet.fields["wishes"]:
        assert squeezed(wish) in top


def test_the_codes_lead_to_the_order_and_to_each_station() -> None:
    found = {
        one.text
        for page in pdf(RECORDED_ORDER).pages
        for one in zxingcpp.read_barcodes(page.to_image(resolution=200).original)
    }
    stations = {f"{ADDRESS}stations/{one.station.id}/" for one in demo_sheet().stations}
    assert found == stations | {f"{ADDRESS}orders/{RECORDED_ORDER}/"}


def test_no_page_but_the_last_is_half_empty_and_no_line_lies_over_another() -> None:
    for order in ORDERS:
        pages = pdf(order).pages
        for page in pages:
            words = page.extract_words(keep_blank_chars=True)
            if page is not pages[-1]:
                foot = max(word["top"] for word in words)
                lowest = max(word["bottom"] for word in words if word["bottom"] < foot)
                assert lowest > 0.8 * page.height, (order, page.page_number)
            ordered = sorted(words, key=lambda word: (word["x0"], word["top"]))
            for one, other in pairwise(ordered):
                if abs(one["x0"] - other["x0"]) < 0.5:
                    assert other["top"] >= one["bottom"] - 0.6, (one["text"], other["text"])


def test_a_minus_is_a_minus() -> None:
    assert any("−1.19 mm" in page.extract_text() for page in pdf("2026-101").pages)
    assert printed("-1.19 mm") == "−1.19 mm"


# The same each time, and what is refused


def test_the_same_sheet_gives_the_same_bytes(tmp_path: Path) -> None:
    for ending in ("xlsx", "csv", "pdf"):
        files = []
        for seed in (1, 2):
            files.append(tmp_path / f"{seed}.{ending}")
            run_apart(["build-sheet", "2026-104", "--out", str(files[-1])], seed)
        assert files[0].read_bytes() == files[1].read_bytes(), ending


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["2026-999", "--out", "{}/a.pdf"], "there is no order '2026-999'; there are 2026-101"),
        (["2026-101", "--out", "{}/a.doc"], "must end in .xlsx or .csv or .pdf; name it a.xlsx"),
        (["2026-101", "--out", "{}/a"], "must end in .xlsx"),
        (["2026-101", "--out", "{}/none/a.csv"], "name a file in a folder that is there"),
        (["2026-101", "--out", "{}/a.pdf", "--paper", "a5"], "'a4', 'letter'"),
        (["2026-101"], "Missing option '--out'"),
    ],
)  # fmt: skip
def test_what_cannot_be_written_is_refused_in_words(
    tmp_path: Path, words: list[str], said: str
) -> None:
    found = run("build-sheet", *(word.format(tmp_path) for word in words))
    assert found.exit_code == 2 and said in found.stderr
    assert not list(tmp_path.iterdir())


def test_a_handbook_without_orders_says_so(tmp_path: Path) -> None:
    write_tree(tmp_path, sound_tree())
    out = str(tmp_path / "a.csv")
    found = run("build-sheet", "x", "--out", out, config=tmp_path / "mkdocs.yml")
    assert found.exit_code == 2 and "there is no order 'x'; there are none" in found.stderr


def test_the_command_says_what_it_wrote(tmp_path: Path) -> None:
    out = tmp_path / "sheet.CSV"
    found = run("build-sheet", "2026-101", "--out", str(out))
    said = f"{len(expected('2026-101'))} settings of {len(demo_sheet().stations)} stations"
    assert found.exit_code == 0 and said in found.stdout
    assert out.read_bytes().startswith(b"Station,Setting,Planned")
