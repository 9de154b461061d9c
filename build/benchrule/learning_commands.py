"""Commands for trainers: set an assignment, print its sheets, mark what comes back."""

import json
import secrets
import sys
from pathlib import Path
from typing import Any

import click

from calculators.engine.showing import SYSTEMS
from calculators.learning import assignment as assignments
from calculators.learning.assignment import ALPHABET, ID, ID_LENGTH, Assignment, UnfitAssignment
from calculators.learning.class_marks import mark_class, to_json
from calculators.learning.class_table import to_csv, to_html, to_text
from calculators.learning.question import GRADES
from calculators.learning.sheet import key_html, sheet_html, standalone

from .class_files import Refused, bank_of, outside_site, read_assignment, result_files, write
from .opening import site_places
from .site_config import read_site_config

PAGE = "learning/work/"
A_FILE = click.Path(exists=True, dir_okay=False, path_type=Path)
NEW_FILE = click.Path(dir_okay=False, path_type=Path)
RESULTS = click.Path(exists=True, path_type=Path)
CONFIG = click.option(
    "-f", "--config-file", default="mkdocs.yml", type=click.Path(path_type=Path),
    help="the handbook's mkdocs.yml",
)  # fmt: skip


@click.command()
@click.option("--out", required=True, type=NEW_FILE, help="the file to write")
@click.option("--station", "stations", multiple=True, help="every exercise of a station")
@click.option("--exercise", "chosen", multiple=True, help="ID or ID:COUNT, as often as you like")
@click.option("--count", default=1, show_default=True, help="questions of each exercise")
@click.option("--title", default="Assignment", show_default=True)
@click.option("--word", default="", help="a word of instruction to the trainees")
@click.option("--due", default="", help="a day, like 2026-11-30")
@click.option("--units", type=click.Choice(SYSTEMS), help="the shop's own where left out")
@click.option(
    "--grade", type=click.IntRange(min(GRADES), max(GRADES)), default=2, show_default=True
)
@click.option("--marks", default=1, show_default=True, help="marks for each question")
@click.option("--trainees", default=12, show_default=True)
@click.option("--id", default="", help="the same id and choices give the same file; else by chance")
@click.option("--qr", type=NEW_FILE, help="an SVG file for the link as a QR code")
@CONFIG
def assignment(
    out: Path, stations: tuple[str, ...], chosen: tuple[str, ...], count: int, id: str,
    qr: Path | None, config_file: Path, **choices: Any,
) -> None:  # fmt: skip
    """Set an assignment: writes its file, prints its link and the trainees' codes."""
    id = id or "".join(secrets.choice(ALPHABET) for _ in range(ID_LENGTH))
    if not ID.fullmatch(id):
        raise Refused(f"--id must be {ID_LENGTH} characters of {ALPHABET}")
    if not stations and not chosen:
        raise Refused("name a --station or an --exercise")
    if not 1 <= count <= assignments.MOST_OF_ONE:
        raise Refused(f"--count must be 1 to {assignments.MOST_OF_ONE}")
    bank = bank_of(config_file)
    choices["units"] = choices["units"] or read_site_config(config_file)[0].choices.units
    questions = _named(chosen, count)
    for station in stations:
        questions += _of_station(bank, station, count, questions, choices, id)
    try:
        made = assignments.make(bank, {**choices, "questions": questions}, id)
    except UnfitAssignment as error:
        raise Refused(str(error)) from None
    address = site_places(config_file).address
    if not address and qr:
        raise Refused("--qr needs the site's address: write site_url in mkdocs.yml")
    link = f"{address}{PAGE}#{assignments.to_link_fragment(made)}"
    drawn = _qr(link) if qr else ""
    text = assignments.to_text(made)
    if out.exists() and out.read_bytes() != text.encode():
        raise Refused(f"{out} is there already and holds something else; name another file")
    write(out, text)
    if qr:
        write(qr, drawn)
    click.echo(
        f"{out}: assignment {made.id}, {made.length} questions for each of {made.trainees} trainees"
    )
    click.echo(f"Link: {link}")
    if not address:
        click.echo("Put the site's address before it: mkdocs.yml has no site_url", err=True)
    click.echo(f"Codes: {' '.join(assignments.codes(made))}")


def _named(chosen: tuple[str, ...], count: int) -> list[list[Any]]:
    questions: list[list[Any]] = []
    for one in chosen:
        exercise, colon, own = one.partition(":")
        if colon and not (own.isascii() and own.isdigit() and len(own) < 4):
            raise Refused(f"--exercise {one}: write ID or ID:COUNT")
        questions.append([exercise, int(own) if colon else count])
    return questions


def _of_station(
    bank: dict[str, Any], station: str, count: int, already: list[list[Any]],
    choices: dict[str, Any], id: str,
) -> list[list[Any]]:  # fmt: skip
    """A station's exercises, each as often as asked or as often as it has different questions."""
    if station not in bank["stations"]:
        near = [one for one in bank["stations"] if station in one]
        raise Refused(
            f"there is no station '{station}'"
            + (f"; did you mean {', '.join(near[:6])}?" if near else "")
        )
    questions = []
    for exercise in bank["stations"][station]["exercises"]:
        if exercise in [one for one, _ in already]:
            continue
        have = assignments.how_many(
            bank, exercise, count, choices["grade"], choices["units"], id
        )  # fmt: skip
        if have < count:
            what = f"only {have} of it" if have else "left out"
            click.echo(f"{exercise} has {have} different questions: {what}", err=True)
        if have:
            questions.append([exercise, have])
    return questions


def _qr(link: str) -> str:
    import segno

    try:
        code = segno.make(link, micro=False, error="l")
    except segno.DataOverflowError:
        raise Refused(
            f"the link has {len(link)} characters, too many for a QR code; name fewer exercises"
        ) from None
    return str(code.svg_inline(scale=4, border=4, dark="#000", light="#fff")) + "\n"


@click.command()
@click.argument("assignment", type=A_FILE)
@click.option("--out", required=True, type=NEW_FILE, help="the HTML file to write")
@click.option("--code", default="", help="the sheet of one trainee")
@click.option("--all", "everyone", is_flag=True, help="a sheet for every code (as without --code)")
@click.option("--key", is_flag=True, help="the answers to those sheets instead")
@CONFIG
def sheet(
    assignment: Path, out: Path, code: str, everyone: bool, key: bool, config_file: Path
) -> None:
    """Print an assignment: a sheet for each trainee, or the key to them."""
    found = read_assignment(assignment)
    if code and everyone:
        raise Refused("name a --code or --all, not both")
    chosen = [code.upper()] if code else assignments.codes(found)
    bank = bank_of(config_file)
    note_changed(bank, found)
    try:
        if key:
            html = key_html(bank, found, chosen)
        else:
            html = "".join(sheet_html(bank, found, one) for one in chosen)
    except UnfitAssignment as error:
        raise Refused(str(error)) from None
    write(out, standalone(f"{'Key: ' if key else ''}{found.title}", html))
    what = "key" if key else "sheet" if len(chosen) == 1 else "sheets"
    click.echo(f"{out}: {what} for {' '.join(chosen)}")


def note_changed(bank: dict[str, Any], found: Assignment) -> None:
    """Says which exercises can no longer be drawn as they were."""
    for exercise in assignments.changed_since(bank, found):
        click.echo(
            f"{exercise} has changed since edition {found.edition} and is left out", err=True
        )  # fmt: skip


@click.command()
@click.argument("results", nargs=-1, required=True, type=RESULTS)
@click.option("--assignment", required=True, type=A_FILE, help="the assignment's file, your own")
@click.option("--csv", type=NEW_FILE, help="write the table for a spreadsheet")
@click.option("--html", type=NEW_FILE, help="write the table as a page")
@click.option("--json", "as_json", is_flag=True, help="the table as JSON")
@CONFIG
def mark(
    results: tuple[Path, ...], assignment: Path, csv: Path | None, html: Path | None,
    as_json: bool, config_file: Path,
) -> None:  # fmt: skip
    """Mark result files, or folders of them, again from the assignment.

    Exits 0; 1 where a file was tampered with or cannot be read; 2 where nothing could be marked.
    """
    for path in (csv, html):
        if path:
            outside_site(path, config_file)
    found = read_assignment(assignment)
    files = result_files(results, assignment)
    table = mark_class(bank_of(config_file), found, files)
    if as_json:
        click.echo(json.dumps(to_json(table), ensure_ascii=False, allow_nan=False))
    else:
        click.echo(to_text(table), nl=False)
    if csv:
        write(csv, to_csv(table))
    if html:
        write(html, standalone(f"Marks: {found.title}", to_html(table)))
    if not table.is_clean:
        sys.exit(1)
