"""Commands for paper and files: station cards, an order's build sheet, every table as CSV."""

from collections.abc import Iterable
from pathlib import Path

import click

from .class_files import Refused
from .handbook import Handbook, Station
from .learning_commands import CONFIG, NEW_FILE
from .opening import open_handbook, site_places
from .paper.sheet_lines import NoSuchOrder, OrderSheet, order_sheet
from .paper.sizes import CARD_PAPERS, PAPERS, SHEET_PAPERS

NEW_FOLDER = click.Path(file_okay=False, path_type=Path)
INVENTED = "Invented, for demonstration."


@click.command()
@click.option("--out", required=True, type=NEW_FILE, help="the PDF file to write")
@click.option("--station", "stations", multiple=True, help="only this one, as often as you like")
@click.option("--paper", type=click.Choice(CARD_PAPERS), default="a5", show_default=True)
@click.option("--note", default=INVENTED, show_default=True, help="words in the foot of each card")
@CONFIG
def cards(out: Path, stations: tuple[str, ...], paper: str, note: str, config_file: Path) -> None:
    """Print a card for each station, to hang at its bench: key points, limits, hazards, QR code."""
    _ending(out, (".pdf",))
    handbook = _handbook(config_file)
    chosen = _stations(handbook, stations)
    from .paper.card_content import card_of
    from .paper.card_layout import CannotFit
    from .paper.cards import cards_pdf
    from .paper.lettering import unprintable

    address = _address(config_file)
    made = [card_of(handbook, one, address) for one in chosen]
    try:
        found = cards_pdf(made, paper, note)
    except CannotFit as error:
        raise Refused(str(error)) from None
    _say_unprintable(unprintable(text for card in made for text in card.texts()))
    _write(out, found.pdf)
    if found.left_out:
        limits = {card.id: len(card.limits) for card in made}
        left = ", ".join(f"{id} {count} of {limits[id]}" for id, count in found.left_out.items())
        click.echo(f"Limits that did not fit and are left to the handbook: {left}", err=True)
    count = f"{len(made)} card{'s' if len(made) > 1 else ''}"
    click.echo(f"{count}, {PAPERS[paper].name}: {out}")


@click.command("build-sheet")
@click.argument("order")
@click.option("--out", required=True, type=NEW_FILE, help="the .xlsx, .csv or .pdf file to write")
@click.option(
    "--paper", type=click.Choice(SHEET_PAPERS), default="a4", show_default=True, help="for a PDF"
)
@CONFIG
def build_sheet(order: str, out: Path, paper: str, config_file: Path) -> None:
    """Write the build sheet of ORDER as a workbook, as CSV, or as a PDF that goes with the instrument."""
    make = {".xlsx": _xlsx, ".csv": _csv, ".pdf": _pdf}
    ending = _ending(out, make)
    try:
        sheet = order_sheet(_handbook(config_file), order)
    except NoSuchOrder as error:
        raise Refused(str(error)) from None
    address = "" if ending == ".csv" else _address(config_file)
    _write(out, make[ending](sheet, paper, address))
    count = sum(1 for _ in sheet.all_lines())
    click.echo(f"{order}: {count} settings of {len(sheet.stations)} stations: {out}")


@click.command()
@click.option("--out", required=True, type=NEW_FOLDER, help="the folder to write into")
@CONFIG
def tables(out: Path, config_file: Path) -> None:
    """Write every table of the handbook as CSV: limits by model, gauges, hazards, woods, calculators."""
    from .paper.handbook_tables import handbook_tables

    made = handbook_tables(_handbook(config_file))
    try:
        out.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise Refused(f"{out}: {error.strerror or 'cannot be made'}") from None
    for name, content in made.items():
        _write(out / name, content)
    click.echo(f"{len(made)} tables: {out}")


def _xlsx(sheet: OrderSheet, paper: str, address: str) -> bytes:
    from .paper.sheet_xlsx import settings_xlsx

    return settings_xlsx(sheet, address)


def _csv(sheet: OrderSheet, paper: str, address: str) -> bytes:
    from .paper.sheet_csv import settings_csv

    return settings_csv(sheet)


def _pdf(sheet: OrderSheet, paper: str, address: str) -> bytes:
    from .paper.lettering import unprintable
    from .paper.sheet_pdf import sheet_pdf

    _say_unprintable(unprintable(sheet.texts()))
    return sheet_pdf(sheet, paper, address)


def _handbook(config_file: Path) -> Handbook:
    handbook, problems = open_handbook(config_file)
    if problems:
        raise Refused(f"the handbook has problems, such as {problems[0]}; see benchrule check")
    return handbook


def _stations(handbook: Handbook, ids: Iterable[str]) -> list[Station]:
    """The stations of these ids in the order of the shop; all where none is named."""
    wanted = set(ids)
    there = [one.id for one in handbook.stations]
    for id in sorted(wanted - set(there)):
        near = [one for one in there if id and (id in one or one in id)] or there
        raise Refused(f"there is no station '{id}'; there is {', '.join(near)}")
    if not there:
        raise Refused("the handbook has no stations; write one in docs/stations")
    return [one for one in handbook.stations if not wanted or one.id in wanted]


def _ending(out: Path, endings: Iterable[str]) -> str:
    """The file's ending in lower case, where it is one of these."""
    allowed, ending = tuple(endings), out.suffix.lower()
    if ending not in allowed:
        raise Refused(f"{out} must end in {' or '.join(allowed)}; name it {out.stem}{allowed[0]}")
    return ending


def _address(config_file: Path) -> str:
    address = site_places(config_file).address
    if not address:
        click.echo("Without QR codes: write site_url in mkdocs.yml to have them.", err=True)
    return address


def _say_unprintable(letters: str) -> None:
    if letters:
        click.echo(
            f"Printed as ?, since the fonts for paper lack them: {' '.join(letters)}", err=True
        )


def _write(out: Path, content: bytes) -> None:
    try:
        out.write_bytes(content)
    except OSError as error:
        raise Refused(
            f"{out}: {error.strerror or 'cannot be written'}; name a file in a folder that is there"
        ) from None
