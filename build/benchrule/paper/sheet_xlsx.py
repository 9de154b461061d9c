"""A build sheet as a workbook: the order, every setting, and a sheet for each table."""

import io
import re
from collections.abc import Iterable, Iterator
from datetime import date
from math import ceil
from typing import Any

from openpyxl import Workbook  # type: ignore[import-untyped]
from openpyxl.styles import Alignment, Border, Font, PatternFill, Side  # type: ignore[import-untyped]
from openpyxl.utils import get_column_letter  # type: ignore[import-untyped]
from openpyxl.worksheet.page import PageMargins  # type: ignore[import-untyped]

from calculators.engine.compute import Answer
from calculators.engine.declaration import Column, Table

from .fixed_zip import with_fixed_dates
from .handbook_tables import column_head
from .sheet_csv import HEADS, cells, number_text
from .sheet_lines import Line, OrderSheet

FACE = "Calibri"  # named, since what is left to programs differs
BOLD, LARGE = Font(FACE, 11, bold=True), Font(FACE, 16, bold=True)
LINK, ITALIC = Font(FACE, 11, color="1F4E79", underline="single"), Font(FACE, 11, italic=True)
HEAD = PatternFill("solid", fgColor="E7E6E6")
THIN = Side("thin", color="999999")
BOX = Border(left=THIN, right=THIN, top=THIN, bottom=THIN)
WRAPPED = Alignment(wrap_text=True, vertical="top")
SET_IN = Alignment(wrap_text=True, vertical="top", indent=1)  # text right behind a number
WIDTHS = (17, 36, 10, 7, 34, 13, 8, 8, 24, 10, 10, 13)  # of the settings' columns, in letters
LINE_PT, SPARE = 14.5, 1.12  # high is a line of text; so much wider than counted may letters be
MARGIN_IN, FOOT_IN = 0.4, 0.6
NAME_LENGTH = 31  # of a sheet, as the file format allows
NOT_IN_NAMES = re.compile(r"[\[\]:*?/\\']")
WRITTEN_AT_BENCH = ("Measured", "Verdict", "Initials")


def settings_xlsx(sheet: OrderSheet, site_address: str = "") -> bytes:
    """The workbook. The same sheet gives the same bytes."""
    book = Workbook()
    book.properties.creator = "benchrule"
    book.properties.title = sheet.instrument.title
    first = book.active
    first.title = "Order"
    _fill_settings(book.create_sheet("Settings"), sheet)
    names = [_add_table(book, *one) for one in _tables(sheet)]
    _fill_order(first, sheet, site_address, names)
    for one in book.worksheets:
        _set_heights(one)
        one.page_setup.paperSize = one.PAPERSIZE_A4
        one.page_setup.fitToWidth, one.page_setup.fitToHeight = 1, 0
        one.sheet_properties.pageSetUpPr.fitToPage = True
        one.page_margins = PageMargins(MARGIN_IN, MARGIN_IN, FOOT_IN, FOOT_IN, 0.3, 0.3)
        one.oddFooter.left.text = f"Order {sheet.id}"
        one.oddFooter.right.text = "&P of &N"
    out = io.BytesIO()
    book.save(out)
    return with_fixed_dates(out.getvalue(), date.fromisoformat(sheet.fields["ordered"]))


def _fill_order(page: Any, sheet: OrderSheet, address: str, tables: list[tuple[str, str]]) -> None:
    fields = sheet.fields
    days = (date.fromisoformat(fields["due"]) - date.fromisoformat(fields["ordered"])).days
    _put(page, 1, 1, sheet.instrument.title, font=LARGE).alignment = Alignment(wrap_text=False)
    _put(page, 2, 1, fields["summary"]).alignment = Alignment(wrap_text=False)
    row = 3
    if fields.get("invented"):
        line = _put(page, row, 1, "Invented, for demonstration.", font=ITALIC)
        line.alignment = Alignment(wrap_text=False)
        row += 1
    facts: list[tuple[str, Any]] = [
        ("Order", sheet.id), ("Model", sheet.model),
        ("Ordered", date.fromisoformat(fields["ordered"])),
        ("Due", date.fromisoformat(fields["due"])), ("Days between", days),
    ]  # fmt: skip
    if address:
        facts.append(("In the handbook", f"{address}orders/{sheet.id}/"))
    row = _block(page, row + 1, "Facts", facts)
    row = _block(
        page, row, "Woods", [(part, f"{name} ({latin})") for part, name, latin in sheet.woods()]
    )
    row = _block(page, row, "Asked for", [("", wish) for wish in fields.get("wishes") or ()])
    row = _block(page, row, "Look at these first", sheet.warnings())
    newest = [(one.station.title, one.station.revisions[0]) for one in sheet.stations]
    row = _block(page, row, "Procedures", [
        (title, f"Revision {one['revision']}, {one['on']}") for title, one in newest
    ])  # fmt: skip
    _contents(page, row, [("Settings", "Every setting of every station"), *tables])
    page.column_dimensions["A"].width, page.column_dimensions["B"].width = 36, 88
    page.print_area = f"A1:B{page.max_row}"


def _block(page: Any, row: int, title: str, pairs: Iterable[tuple[str, Any]]) -> int:
    """A heading with its lines; nothing where there are none. Returns the next free row."""
    lines = list(pairs)
    if not lines:
        return row
    _put(page, row, 1, title, font=BOLD, fill=HEAD)
    _put(page, row, 2, None, fill=HEAD)
    for name, value in lines:
        row += 1
        _put(page, row, 1, name)
        cell = _put(page, row, 2, value)
        if isinstance(value, date):
            cell.number_format = "yyyy-mm-dd"
        cell.alignment = Alignment(wrap_text=True, vertical="top", horizontal="left")
    return row + 2


def _contents(page: Any, row: int, sheets: list[tuple[str, str]]) -> None:
    start = row
    _block(page, row, "Sheets", sheets)
    for place, (name, _) in enumerate(sheets, start + 1):
        cell = page.cell(place, 1)
        cell.hyperlink = f"#'{name}'!A1"
        cell.font = LINK


def _fill_settings(page: Any, sheet: OrderSheet) -> None:
    _heads(page, HEADS, WIDTHS)
    for row, line in enumerate(sheet.all_lines(), 2):
        for column, (head, value) in enumerate(zip(HEADS, cells(line), strict=True), 1):
            cell = _put(page, row, column, value)
            if isinstance(value, int | float):
                cell.number_format = _format(line, value if head == "Measured" else None)
            if head == "Gauge":
                cell.alignment = SET_IN
            if head in WRITTEN_AT_BENCH and line.planned is not None:
                cell.border = BOX
    _finish(page, len(HEADS), page.max_row)


def _format(line: Line, reading: float | None) -> str:
    """The declared decimals; a reading shows all that was read."""
    read = 0 if reading is None else len(number_text(reading).partition(".")[2].rstrip("0"))
    return _decimals(max(line.decimals, read))


def _decimals(count: int) -> str:
    return "0." + "0" * count if count else "0"


def _tables(sheet: OrderSheet) -> Iterator[tuple[str, Answer, Table]]:
    """Each table once; one that a measured value has changed on the way stands there again."""
    seen = set()
    for station in sheet.stations:
        for answer in station.answers:
            for table in answer.calculator.tables:
                rows = answer.tables.get(table.name)
                mark = (answer.calculator.name, table.name, repr(rows))
                if rows and mark not in seen:
                    seen.add(mark)
                    yield station.station.title, answer, table


def _add_table(book: Any, station: str, answer: Answer, table: Table) -> tuple[str, str]:
    """A sheet with a table. Returns its name, and what it is."""
    title = f"{table.title} ({answer.calculator.title})"
    page = book.create_sheet(_free_name(book.sheetnames, f"{answer.calculator.name}, {table.name}"))
    columns = answer.columns[table.name]
    rows = answer.tables[table.name]
    heads = [column_head(column) for column in columns]
    widths = [_width(head, column, rows) for head, column in zip(heads, columns, strict=True)]
    _heads(page, heads, widths)
    for place, values in enumerate(rows, 2):
        for at, column in enumerate(columns, 1):
            value = values[column.name]
            cell = _put(page, place, at, str(value) if column.text and value is not None else value)
            if not column.text:
                cell.number_format = _decimals(column.decimals)
    _finish(page, len(columns), len(rows) + 1)
    if table.note:
        note = _put(page, len(rows) + 3, 1, table.note)
        note.font, note.alignment = ITALIC, Alignment(wrap_text=False)
    page.oddHeader.left.text = _plain_header(f"{station}: {title}")
    return page.title, f"{station}: {title}"


def _width(head: str, column: Column, rows: list[dict[str, Any]]) -> float:
    longest = max((len(str(row[column.name])) for row in rows), default=0) if column.text else 0
    return float(min(40, max(10, longest + 2, len(head) * 0.66)))


def _free_name(taken: list[str], title: str) -> str:
    """A sheet's name within the format's bounds, not taken yet."""
    words = NOT_IN_NAMES.sub("", title).replace("-", " ").replace("_", " ")
    name = words[:1].upper() + words[1:NAME_LENGTH].rstrip()
    lower = {one.lower() for one in taken}
    count = 1
    found = name
    while found.lower() in lower:
        count += 1
        found = f"{name[: NAME_LENGTH - len(str(count)) - 1]} {count}"
    return found


def _plain_header(text: str) -> str:
    return text.replace("&", "&&")


def _heads(page: Any, heads: Iterable[str], widths: Iterable[float]) -> None:
    for column, (head, width) in enumerate(zip(heads, widths, strict=True), 1):
        _put(page, 1, column, head, font=BOLD, fill=HEAD)
        page.column_dimensions[get_column_letter(column)].width = width


def _finish(page: Any, columns: int, rows: int) -> None:
    """What every sheet of rows has: heads that stay, filters, and a print that fits."""
    last = get_column_letter(columns)
    page.freeze_panes = "A2"
    page.auto_filter.ref = f"A1:{last}{rows}"
    page.print_title_rows = "1:1"
    page.page_setup.orientation = page.ORIENTATION_LANDSCAPE


def _set_heights(page: Any) -> None:
    """Room for text that runs over several lines: not every program makes it by itself."""
    for row in page.iter_rows():
        lines = 1
        for cell in row:
            if cell.data_type == "s" and cell.alignment.wrap_text:
                width = page.column_dimensions[cell.column_letter].width
                lines = max(lines, ceil(len(cell.value) * SPARE / width))
        if lines > 1:
            page.row_dimensions[row[0].row].height = LINE_PT * lines


def _put(page: Any, row: int, column: int, value: Any, font: Any = None, fill: Any = None) -> Any:
    """A value in a cell. Text stays text, whatever it begins with; numbers keep every digit."""
    cell = page.cell(row, column)
    cell.alignment = WRAPPED
    if isinstance(value, str):
        cell.value = value
        cell.data_type = "s"
        cell.quotePrefix = value[:1] in ("=", "+", "-", "@")
    elif isinstance(value, float):
        cell.value, cell.data_type = repr(value), "n"  # as a float it would lose the last digit
    else:
        cell.value = value
    if font:
        cell.font = font
    if fill:
        cell.fill = fill
    return cell
