"""An assignment on paper: a sheet for a trainee, and the key for whoever marks it."""

from collections.abc import Collection
from typing import Any

from ..engine.showing import reader_unit
from ..engine.text import escape
from ..engine.unit_table import UNITS
from .assignment import Asked, Assignment, changed_since, questions_for
from .question import NUMBER, ORDER, Question

LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
FOOT = "This is no exam under supervision; practical skill is signed off at the bench by a person."
STYLE = """
@page { margin: 15mm; }
* { box-sizing: border-box; }
html { color: #000; background: #fff; font: 11pt/1.4 system-ui, "Segoe UI", "Noto Sans",
  "Liberation Sans", Arial, sans-serif; }
body { max-width: 46rem; margin: 0 auto; padding: 1rem; }
h1, h2, h3 { line-height: 1.2; margin: 0 0 .4rem; break-after: avoid; }
h1 { font-size: 1.5rem; } h2 { font-size: 1.25rem; } h3 { font-size: 1.05rem; margin-top: 1.2rem; }
p { margin: 0 0 .5rem; overflow-wrap: anywhere; }
small { font-size: .82em; }
.br-sheet + .br-sheet, .br-key + .br-key { break-before: page; margin-top: 2rem; }
.br-sheet-head { border-bottom: 1.5pt solid #000; margin-bottom: .9rem; padding-bottom: .5rem; }
.br-sheet-facts { display: flex; flex-wrap: wrap; gap: .2rem 1.6rem; margin: 0 0 .6rem; }
.br-sheet-facts div { display: flex; gap: .4rem; }
.br-sheet-facts dt { color: #333; } .br-sheet-facts dt::after { content: ":"; }
.br-sheet-facts dd { margin: 0; font-weight: 600; overflow-wrap: anywhere; }
.br-word { white-space: pre-line; }
.br-fill { display: flex; flex-wrap: wrap; gap: .6rem 1.5rem; margin-top: .9rem; }
.br-line { display: inline-flex; align-items: flex-end; gap: .5rem; }
.br-line span { display: inline-block; border-bottom: 1pt solid #000; height: 1.7em; width: 9rem;
  max-width: 60vw; }
.br-line.br-wide span { width: 17rem; }
.br-questions { list-style: none; margin: 0; padding: 0; }
.br-question { break-inside: avoid; padding: .2rem 0 .8rem 2.2rem; position: relative;
  margin-bottom: .5rem; border-bottom: .5pt solid #bbb; }
.br-question > b { position: absolute; left: 0; top: .2rem; min-width: 1.7rem; }
.br-question .br-skill { color: #333; float: right; margin-left: 1rem; }
.br-options { list-style: none; margin: .3rem 0 0; padding: 0; }
.br-options li { display: flex; gap: .6rem; align-items: baseline; margin-bottom: .3rem; }
.br-box { flex: none; display: inline-block; width: 1.05em; height: 1.05em; border: 1pt solid #000;
  position: relative; top: .18em; }
.br-box.br-large { width: 1.9em; height: 1.6em; top: .3em; }
.br-foot { margin-top: 1rem; font-size: .8em; color: #333; }
.br-scroll { overflow-x: auto; margin: .6rem 0 1rem; }
table { border-collapse: collapse; width: 100%; font-size: .92em; }
caption { text-align: left; font-weight: 600; padding-bottom: .3rem; }
th, td { border: .5pt solid #888; padding: .25rem .45rem; text-align: left; vertical-align: top; }
th { font-weight: 600; } th small { font-weight: 400; } .br-narrow { white-space: nowrap; }
.br-key th:nth-child(2) { width: 30%; } tr { break-inside: avoid; } thead { display: table-header-group; }
td ul, .br-slips { margin: 0; padding-left: 1.1rem; }
details { margin: .4rem 0; } summary { font-weight: 600; cursor: pointer; }
.br-tampered { border-left: 3pt solid #000; padding-left: .5rem; }
.br-findings li { margin-bottom: .3rem; overflow-wrap: anywhere; }
@media print { body { max-width: none; padding: 0; } a { color: inherit; text-decoration: none; }
  .br-scroll { overflow: visible; } .br-sheet + .br-sheet, .br-key + .br-key { margin-top: 0; } }
@media (max-width: 30rem) { .br-question .br-skill { float: none; display: block; margin: 0; }
  .br-line.br-wide span { width: 12rem; } }
"""


def sheet_html(bank: dict[str, Any], assignment: Assignment, code: str) -> str:
    """A trainee's sheet: a part of a page, for ``standalone`` or another page to wrap."""
    changed = changed_since(bank, assignment)
    asked = questions_for(bank, assignment, code, changed)
    due = f"<div><dt>Due</dt><dd>{assignment.due}</dd></div>" if assignment.due else ""
    word = f'<p class="br-word">{escape(assignment.word)}</p>' if assignment.word else ""
    of = assignment.marks * len(asked)
    left_out = (
        "<p>Left out, for the handbook has changed since this was set: "
        f"{escape(', '.join(changed))}.</p>" if changed else ""
    )  # fmt: skip
    return (
        f'<section class="br-sheet"><header class="br-sheet-head"><h1>{escape(assignment.title)}</h1>'
        f'<dl class="br-sheet-facts"><div><dt>Code</dt><dd>{escape(code)}</dd></div>{due}'
        f"<div><dt>Assignment</dt><dd>{assignment.id}</dd></div>"
        f"<div><dt>Marks for each question</dt><dd>{assignment.marks}</dd></div></dl>{word}"
        f'<p class="br-fill"><span class="br-line br-wide">Name <span></span></span>'
        f'<span class="br-line">Marks <span></span> of {of}</span></p></header>{left_out}'
        f'<ol class="br-questions">{"".join(_question(one) for one in asked)}</ol>'
        f'<p class="br-foot">{FOOT}</p></section>'
    )


def _question(asked: Asked) -> str:
    question = asked.question
    facts = "".join(
        f"<div><dt>{escape(name)}</dt><dd>{escape(value)}</dd></div>"
        for name, value in question.facts
    )
    facts = f'<dl class="br-sheet-facts">{facts}</dl>' if facts else ""
    return (
        f'<li class="br-question"><b>{asked.number}.</b>'
        f'<small class="br-skill">{escape(question.title)}</small>'
        f"<p>{escape(question.words)}</p>{facts}{_room_for_answer(question)}</li>"
    )


def _room_for_answer(question: Question) -> str:
    if question.kind == NUMBER:
        unit = UNITS[reader_unit(question.unit, question.system)].shown
        within = f" <small>within {escape(question.within_shown)}</small>"
        return (
            f'<p><span class="br-line">Answer <span></span> {escape(unit)}</span>'
            f"{within if question.within_shown else ''}</p>"
        )
    large = " br-large" if question.kind == ORDER else ""
    hint = "<p><small>Number the boxes from 1.</small></p>" if large else ""
    items = "".join(
        f'<li><span class="br-box{large}"></span>'
        f"<span>{'' if large else f'{LETTERS[place]}. '}{escape(option)}</span></li>"
        for place, option in enumerate(question.options)
    )
    return f'{hint}<ul class="br-options">{items}</ul>'


def key_html(bank: dict[str, Any], assignment: Assignment, codes: Collection[str]) -> str:
    """The key to some trainees' sheets: a part of a page, a table for each code."""
    changed = changed_since(bank, assignment)
    parts = []
    for code in codes:
        asked = questions_for(bank, assignment, code, changed)
        rows = "".join(_key_row(one) for one in asked)
        of = assignment.marks * len(asked)
        parts.append(
            f'<section class="br-key"><h1>Key: {escape(assignment.title)}</h1>'
            f'<dl class="br-sheet-facts"><div><dt>Code</dt><dd>{escape(code)}</dd></div>'
            f"<div><dt>Assignment</dt><dd>{assignment.id}</dd></div>"
            f"<div><dt>Marks</dt><dd>{assignment.marks} for each question, {of} in all</dd></div></dl>"
            "<p>An answer that is right but rounded too far has half the marks.</p>"
            f'<div class="br-scroll" tabindex="0" role="region" aria-label="Key of {escape(code)}"><table>'
            f"<caption>Answers and known slips of {escape(code)}</caption>"
            '<thead><tr><th scope="col">No.</th><th scope="col">Answer</th>'
            '<th scope="col">Within</th><th scope="col">Known slips</th></tr></thead>'
            f'<tbody>{rows}</tbody></table></div><p class="br-foot">{FOOT}</p></section>'
        )
    return "".join(parts)


def _key_row(asked: Asked) -> str:
    question = asked.question
    slips = "".join(
        f"<li><strong>{escape(slip.shown)}</strong> {escape(slip.why)}</li>"
        for slip in question.slips
    )
    slips = f'<ul class="br-slips">{slips}</ul>' if slips else ""
    rest = f'<td class="br-narrow">{escape(question.within_shown)}</td><td>{slips}</td>'
    wide = "" if question.kind == NUMBER else ' colspan="3"'
    return (
        f'<tr><th scope="row">{asked.number}</th><td{wide}>{_right(question)}<br>'
        f"<small>{escape(question.title)}</small></td>{'' if wide else rest}</tr>"
    )


def _right(question: Question) -> str:
    """The right answer as it looks on the sheet: a figure, a letter, the numbers in the boxes."""
    if question.kind == NUMBER:
        return f"<strong>{escape(question.shown)}</strong>"
    if question.kind == ORDER:
        order = list(question.answer)  # type: ignore[arg-type]
        boxes = ", ".join(str(order.index(place) + 1) for place in range(len(order)))
        return f"Boxes from the top: <strong>{boxes}</strong>"
    return f"<strong>{LETTERS[int(question.answer)]}</strong> {escape(question.shown)}"  # type: ignore[arg-type]


def standalone(title: str, fragment: str) -> str:
    """A whole HTML document round a fragment, fit to be printed on A4 and Letter."""
    return (
        '<!doctype html>\n<html lang="en"><head><meta charset="utf-8">'
        '<meta http-equiv="Content-Security-Policy" content="default-src \'none\'; '
        "style-src 'unsafe-inline'\">"
        '<meta name="viewport" content="width=device-width, initial-scale=1">'
        f"<title>{escape(title)}</title><style>{STYLE}</style></head><body>{fragment}</body></html>\n"
    )
