"""Commands for a trainer's register: who has shown what, and what needs another look."""

import contextlib
import csv
import io
import json
import sys
from collections.abc import Iterable, Iterator
from datetime import date
from pathlib import Path
from typing import Any

import click

from calculators.engine.strangers import is_clean
from calculators.learning.assignment import canonical, is_code, is_day, revisions_of
from calculators.learning.class_marks import ClassTable, mark_class
from calculators.learning.class_table import csv_text
from calculators.learning.marking import RIGHT
from calculators.learning.result_records import CHANGED, TWICE, MarkedResult
from calculators.learning.stream import digest
from calculators.learning.untrusted import said

from .class_files import (
    Refused,
    bank_of,
    outside_site,
    read_assignment,
    result_files,
    text_of,
    write,
)
from .learning_commands import A_FILE, CONFIG, NEW_FILE, RESULTS
from .training_register import BENCH, COLUMNS, PAPER, Answer, Paper, Register, RegisterError

LONGEST_NAME, LONGEST_NOTE = 80, 300
LONGEST_NAMES_FILE = 100_000
REGISTER = click.option(
    "--register", default="training.sqlite", show_default=True, type=NEW_FILE,
    help="the register's file, which is yours; outside docs and site",
)  # fmt: skip


@click.group()
def training() -> None:
    """Keep a register of training: take results, sign off at the bench, show, export, forget."""


@training.command()
@click.argument("results", nargs=-1, required=True, type=RESULTS)
@click.option("--assignment", required=True, type=A_FILE, help="the assignment's file, your own")
@click.option("--names", type=A_FILE, help="a CSV file of code,name")
@REGISTER
@CONFIG
def take(
    results: tuple[Path, ...], assignment: Path, names: Path | None, register: Path,
    config_file: Path,
) -> None:  # fmt: skip
    """Mark result files again and enter them. What was tampered with is not entered.

    Exits 1 where a file was not entered.
    """
    outside_site(register, config_file)
    found = read_assignment(assignment)
    called = read_names(text_of(names, LONGEST_NAMES_FILE)) if names else {}
    files = result_files(results, assignment)
    bank = bank_of(config_file)
    table = mark_class(bank, found, files)
    papers = []
    for marked in table.marked:
        if any(one.tampered for one in marked.findings):
            continue
        name = called.get(marked.result.code) or f"{marked.result.code} of {found.id}"
        papers.append((name, _paper(bank, marked, table)))
    with _opened(register, create=True) as book:
        done = book.take(papers)
    left = _left_out(table)
    for name, paper, what in done:
        if what in ("taken", "there"):
            click.echo(f"{name}: {'taken' if what == 'taken' else 'on record already'}")
        else:
            left.append(f"{name} ({paper.code}): {what}")
    for line in left:
        click.echo(f"Not taken: {line}", err=True)
    if left:
        sys.exit(1)


def _left_out(table: ClassTable) -> list[str]:
    """What of a class is not entered: files that cannot be read or do not agree, later doubles."""
    lines = [f"{file}: {why}" for file, why in table.unreadable]
    lines += [one.words.rstrip(".") for one in table.findings if one.tampered]
    lines += [one.words.rstrip(".") for one in table.findings if one.kind in (CHANGED, TWICE)]
    return lines


def _paper(bank: dict[str, Any], marked: MarkedResult, table: ClassTable) -> Paper:
    result, marks = marked.result, table.assignment.marks
    answers = []
    for one in marked.answered:
        for station, now in revisions_of(bank, [one.asked.exercise]).items():
            # No later revision than there is: nobody has shown what is not yet written.
            revision = min(result.revisions.get(station, now), now)
            answers.append(Answer(
                one.asked.number, one.asked.exercise, one.asked.question.title, station, revision,
                one.mark.verdict, one.mark.share * marks, marks,
            ))  # fmt: skip
    given = [[one.number, one.given, one.at] for one in result.answers]
    return Paper(
        table.assignment.id, table.assignment.title, result.code, result.saved[:10],
        digest(canonical([result.code, result.edition, result.began, result.saved, given])),
        tuple(answers),
    )  # fmt: skip


def read_names(text: str) -> dict[str, str]:
    """Name by code of each line of ``code,name``; a heading may stand over them. Refused says why not."""
    found: dict[str, str] = {}
    if len(text) > LONGEST_NAMES_FILE or "\0" in text:
        raise Refused("the names are no CSV file of code,name")
    try:
        rows = list(csv.reader(io.StringIO(text, newline="")))
    except csv.Error:
        raise Refused("the names are no CSV file of code,name") from None
    for number, row in enumerate(rows, 1):
        cells = [cell.strip() for cell in row]
        if not any(cells) or (number == 1 and [cell.lower() for cell in cells] == ["code", "name"]):
            continue
        if len(cells) != 2 or not is_code(cells[0].upper()):
            raise Refused(f"the names, line {number}: write code,name, with a comma between")
        code, name = cells[0].upper(), _fit(cells[1], LONGEST_NAME, f"the names, line {number}")
        if code in found:
            raise Refused(f"the names, line {number}: {code} is there twice")
        if name in found.values():
            raise Refused(f"the names, line {number}: {name} is there twice; write them apart")
        found[code] = name
    return found


def _fit(text: str, longest: int, what: str, shortest: int = 1) -> str:
    text = text.strip()
    if not shortest <= len(text) <= longest or not is_clean(text):
        raise Refused(f"{what}: write {shortest} to {longest} characters that can be shown")
    return text


@training.command("sign-off")
@click.argument("person")
@click.argument("station")
@click.option("--by", "signed_by", required=True, help="role or initials of who signs")
@click.option("--on", "day", default="", help="a day, like 2026-11-30; else today")
@click.option("--note", default="")
@REGISTER
@CONFIG
def sign_off(
    person: str, station: str, signed_by: str, day: str, note: str, register: Path,
    config_file: Path,
) -> None:  # fmt: skip
    """Enter that PERSON has shown the work of STATION at the bench, on its revision of today."""
    outside_site(register, config_file)
    person = _fit(person, LONGEST_NAME, "the person")
    signed_by = _fit(signed_by, LONGEST_NAME, "--by")
    note = _fit(note, LONGEST_NOTE, "--note", 0)
    today = date.today().isoformat()
    if day and not is_day(day):
        raise Refused(f"--on must be a day like 2026-11-30, not {said(day)}")
    if day > today:
        raise Refused(f"--on {day} is still to come")
    stations = bank_of(config_file)["stations"]
    if station not in stations:
        near = [one for one in stations if station in one]
        raise Refused(
            f"there is no station '{said(station)}'"
            + (f"; did you mean {', '.join(near[:6])}?" if near else "")
        )
    revision = stations[station]["revision"]
    with _opened(register, create=True) as book:
        new = book.sign_off(person, station, revision, signed_by, day or today, note)
    title = stations[station]["title"]
    what = "signed off" if new else "on record already, signed off"
    click.echo(f"{person}: {title}, revision {revision}, {what} by {signed_by} on {day or today}")


@training.command()
@click.argument("person", default="")
@REGISTER
@CONFIG
def show(person: str, register: Path, config_file: Path) -> None:
    """Who has shown what, on which revision, and what needs another look since."""
    with _opened(outside_site(register, config_file)) as book:
        people, rows = book.people(), book.rows(person)
    if person and person not in people:
        raise Refused(f"there is nobody called {said(person)} on record")
    stations = bank_of(config_file)["stations"]
    for name in [person] if person else people:
        click.echo(name)
        for line in shown_lines([row for row in rows if row["person"] == name], stations):
            click.echo(f"  {line}")


def shown_lines(rows: list[dict[str, Any]], stations: dict[str, Any]) -> list[str]:
    """What a person has shown at each station, in the order of the work."""
    lines = []
    places = [*stations, *sorted({row["station"] for row in rows} - set(stations))]
    for station in places:
        here = [row for row in rows if row["station"] == station]
        if not here:
            continue
        now = stations[station]["revision"] if station in stations else 0
        title = (
            f"{stations[station]['title']}, revision {now}"
            if now
            else f"{station}, no longer there"
        )
        lines.append(title)
        skills: dict[str, list[dict[str, Any]]] = {}
        for row in here:
            if row["kind"] == PAPER:
                skills.setdefault(row["skill"], []).append(row)
        for skill, answers in skills.items():
            lines.append(f"  {skill}: {_on_paper(answers, now)}")
        signed = [row for row in here if row["kind"] == BENCH]
        for row in signed:
            late = _another_look(row["revision"], now) if row is _newest(signed) else ""
            note = f" ({row['note']})" if row["note"] else ""
            lines.append(
                f"  At the bench: signed off by {row['signed_by']} on {row['day']}, "
                f"revision {row['revision']}{note}{late}"
            )
        if not signed:
            lines.append("  At the bench: not signed off")
    return lines


def _newest(rows: Iterable[dict[str, Any]]) -> dict[str, Any]:
    return max(rows, key=lambda row: (row["revision"], row["day"]))


def _on_paper(answers: list[dict[str, Any]], now: int) -> str:
    right = [row for row in answers if row["verdict"] == RIGHT]
    count = f"{len(right)} of {len(answers)} right"
    if not right:
        return f"{count}, not shown yet"
    newest = _newest(right)
    revision = newest["revision"]
    return f"{count}, last on {newest['day']}, revision {revision}{_another_look(revision, now)}"


def _another_look(revision: int, now: int) -> str:
    return f": needs another look, the procedure is at revision {now}" if revision < now else ""


@training.command()
@click.option("--csv", "table", type=NEW_FILE, help="write every entry for a spreadsheet")
@click.option("--json", "as_json", is_flag=True, help="print every entry as JSON")
@REGISTER
@CONFIG
def export(table: Path | None, as_json: bool, register: Path, config_file: Path) -> None:
    """Give out every entry of the register."""
    if not table and not as_json:
        raise Refused("say --csv FILE or --json")
    if table:
        outside_site(table, config_file)
    with _opened(outside_site(register, config_file)) as book:
        rows = book.rows()
    if table:
        lines = [["" if row[name] is None else f"{row[name]}" for name in COLUMNS] for row in rows]
        write(table, csv_text([list(COLUMNS), *lines]))
        click.echo(f"{table}: {len(rows)} entries")
    if as_json:
        click.echo(json.dumps(rows, ensure_ascii=False))


@training.command()
@click.argument("person")
@REGISTER
@CONFIG
def forget(person: str, register: Path, config_file: Path) -> None:
    """Remove PERSON and every entry of theirs from the register."""
    with _opened(outside_site(register, config_file)) as book:
        if not book.forget(person):
            raise Refused(f"there is nobody called {said(person)} on record")
    click.echo(f"{person}: forgotten")


@contextlib.contextmanager
def _opened(path: Path, create: bool = False) -> Iterator[Register]:
    """The register, opened; what it refuses ends the command with a sentence."""
    try:
        with Register(path, create) as book:
            yield book
    except RegisterError as error:
        raise Refused(str(error)) from None
