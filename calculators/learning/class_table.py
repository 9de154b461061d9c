"""A marked class for people and programs: HTML, lines for a terminal, CSV for a spreadsheet."""

import re
from collections.abc import Iterable, Sequence

from ..engine.text import escape
from .class_marks import ClassTable, Row, Taught, Wrong, mark_class
from .result_records import figure

FORMULA_STARTS = ("=", "+", "-", "@", "\t", "\r", "\n")
PLAIN_NUMBER = re.compile(r"-?\d+(\.\d+)?")
COLUMNS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"


def to_csv(table: ClassTable) -> str:
    """A row for each trainee: marks by skill, and in all. What is absent has empty cells."""
    heads = [f"{title} (of {of})" for title, of in table.skills]
    lines = [["Code", "File", *heads, "Marks", "Of"]]
    for row in table.rows:
        cells = [f"{got:g}" for got, _ in row.cells]
        lines.append([row.code, row.file, *cells, f"{row.got:g}", str(row.of)])
    lines += [[code, "", *([""] * (len(heads) + 2))] for code in table.absent]
    return csv_text(lines)


def csv_text(lines: Iterable[Sequence[str]]) -> str:
    """Rows as RFC 4180 has them, no cell of which a spreadsheet takes for a formula."""
    return "".join(",".join(_cell(str(cell)) for cell in line) + "\r\n" for line in lines)


def _cell(text: str) -> str:
    begins = text.lstrip(" ")[:1] in FORMULA_STARTS if text.strip(" ") else False
    if begins and not PLAIN_NUMBER.fullmatch(text):
        text = "'" + text
    if any(letter in text for letter in ',"\r\n'):
        return '"' + text.replace('"', '""') + '"'
    return text


def to_text(table: ClassTable) -> str:
    """The class for a terminal: findings, the table, what to teach again."""
    lines = [f"{table.assignment.title} ({table.assignment.id})"]
    lines += [f"Cannot be read: {file}: {why}." for file, why in table.unreadable]
    lines += [("! " if one.tampered else "- ") + one.words for one in table.findings]
    if table.absent:
        lines.append(f"No file of {', '.join(table.absent)}.")
    lines += ["", *_table_lines(table)]
    taught = [_taught_line(one) for one in table.exercises]
    lines += ["", "How often right", *taught] if taught else []
    again = [
        f"  {one.skill}: {slip.trainees} of {one.trainees}: {slip.words}"
        for one in table.exercises for slip in one.slips
    ]  # fmt: skip
    lines += ["", "To teach again", *again] if again else []
    return "\n".join(lines) + "\n"


def _table_lines(table: ClassTable) -> list[str]:
    if not table.rows:
        return ["No result could be marked."]
    names = [_column(at) for at in range(len(table.skills))]
    legend = [
        f"{name}  {title} (of {of})" for name, (title, of) in zip(names, table.skills, strict=True)
    ]
    lines = [["Code", *names, "Marks"]]
    for row in table.rows:
        cells = [f"{got:g}" for got, _ in row.cells]
        lines.append([row.code, *cells, f"{row.got:g} of {row.of}"])
    widths = [max(map(len, column)) for column in zip(*lines, strict=True)]
    shown = [
        "  ".join(cell.rjust(width) for cell, width in zip(line, widths, strict=True))
        for line in lines
    ]
    return [*legend, "", *shown]


def _column(at: int) -> str:
    """A, B, … Z, AA, AB …"""
    before = at // len(COLUMNS)
    return (COLUMNS[before - 1] if before else "") + COLUMNS[at % len(COLUMNS)]


def _taught_line(one: Taught) -> str:
    return f"  {one.right} of {one.asked}  {one.skill}  ({one.exercise})"


def to_html(table: ClassTable) -> str:
    """The class as a part of a page: findings first, the table, what to teach again, each trainee."""
    parts = [f"<h2>{escape(table.assignment.title)}</h2>", _findings(table)]
    if table.rows:
        parts += [_class_table(table), _taught(table), "<h3>Each trainee</h3>"]
        parts += [_trainee(row) for row in table.rows]
    else:
        parts.append("<p>No result could be marked.</p>")
    return f'<div class="br-class">{"".join(parts)}</div>'


def _findings(table: ClassTable) -> str:
    items = [
        f'<li class="br-tampered"><strong>Cannot be read.</strong> {escape(file)}: {escape(why)}.</li>'
        for file, why in table.unreadable
    ]
    for one in table.findings:
        kind = ' class="br-tampered"' if one.tampered else ""
        mark = "<strong>Does not agree.</strong> " if one.tampered else ""
        items.append(f"<li{kind}>{mark}{escape(one.words)}</li>")
    if table.absent:
        items.append(f"<li>No file of {escape(', '.join(table.absent))}.</li>")
    if not items:
        return "<p>Every file agrees with the assignment and with our marking.</p>"
    return f'<h3>Findings</h3><ul class="br-findings">{"".join(items)}</ul>'


def _class_table(table: ClassTable) -> str:
    heads = "".join(
        f'<th scope="col">{escape(title)}<br><small>of {of}</small></th>'
        for title, of in table.skills
    )
    rows = []
    for row in table.rows:
        cells = "".join(f"<td>{figure(got)}</td>" for got, _ in row.cells)
        rows.append(
            f'<tr><th scope="row"><a href="#br-trainee-{row.code}">{row.code}</a></th>{cells}'
            f'<td class="br-narrow"><strong>{figure(row.got)}</strong> of {row.of}</td></tr>'
        )
    return (
        '<div class="br-scroll" tabindex="0" role="region" aria-label="Marks">'
        "<table><caption>Marks by trainee and skill</caption>"
        f'<thead><tr><th scope="col">Code</th>{heads}<th scope="col">Marks</th></tr></thead>'
        f"<tbody>{''.join(rows)}</tbody></table></div>"
    )


def _taught(table: ClassTable) -> str:
    rows = "".join(
        f'<tr><th scope="row">{escape(one.skill)}<br><small>{escape(one.exercise)}</small></th>'
        f'<td class="br-narrow">{one.right} of {one.asked}</td><td>{_slips(one)}</td></tr>'
        for one in table.exercises
    )
    return (
        '<div class="br-scroll" tabindex="0" role="region" aria-label="Exercises">'
        '<table class="br-taught">'
        "<caption>How each exercise went, and what to teach again</caption>"
        '<thead><tr><th scope="col">Exercise</th><th scope="col">Right</th>'
        f'<th scope="col">Common slips</th></tr></thead><tbody>{rows}</tbody></table></div>'
    )


def _slips(one: Taught) -> str:
    if not one.slips:
        return "None common."
    items = "".join(
        f"<li>{slip.trainees} of {one.trainees}: {escape(slip.words)}</li>" for slip in one.slips
    )
    return f"<ul>{items}</ul>"


def _trainee(row: Row) -> str:
    wrong = "".join(_wrong(one) for one in row.wrong) or "<p>Everything right.</p>"
    # The id stands inside, so that a link to it opens the fold.
    return (
        f"<details><summary>{row.code}: {figure(row.got)} of {row.of} "
        f"<small>{escape(row.file)}</small></summary>"
        f'<div id="br-trainee-{row.code}">{wrong}</div></details>'
    )


def _wrong(one: Wrong) -> str:
    given = f"Given: {escape(one.given)}. " if one.given else ""
    return (
        f"<p><strong>Question {one.number}, {escape(one.skill)}.</strong> {escape(one.question)}<br>"
        f"{given}{escape(one.words)} {escape(one.why)}</p>"
    )


__all__ = ["csv_text", "mark_class", "to_csv", "to_html", "to_text"]
