"""An answer as HTML: the same text in the built page and, made in the browser, in the live one."""

from collections.abc import Collection, Sequence
from typing import Any

from .compute import Answer, Say, steps_behind
from .declaration import Column, Drawing, Given, Said, Solved, Step, Table
from .formula import parse
from .inputs import Refused
from .mathml import math, symbol, with_figures, with_symbols
from .showing import as_typed, reader_unit, show, show_number
from .text import escape
from .unit_table import UNITS

PARTS = ("headline", "results", "more", "cautions", "drawings", "tables", "steps")


def parts(answer: Answer, wanted: Sequence[str] = PARTS) -> dict[str, str]:
    """The parts of an answer's page, by name, each ready to stand in its place.

    The live page wants only those that the reader has before them.
    """
    say = Say(answer.calculator, answer.values, answer.system)
    makers = {
        "headline": _headline, "results": _results, "more": _more, "cautions": _cautions,
        "drawings": _drawings, "tables": _tables, "steps": _steps,
    }  # fmt: skip
    return {name: make(answer, say) for name, make in makers.items() if name in wanted}


def refusal_parts(refused: Sequence[Refused]) -> dict[str, str]:
    """What stands in place of the results when there is no answer."""
    lines = "".join(
        f"<li><strong>{escape(one.why)}</strong>. "
        f"<span>Given: {escape(one.given) or 'nothing'}. Allowed: {escape(one.allowed)}.</span></li>"
        for one in refused
    )
    return {
        "headline": f"<span>No answer yet</span> {escape(refused[0].why)}",
        "results": f'<div class="br-refused"><p>No answer yet.</p><ul>{lines}</ul></div>',
    }


def minus(text: str) -> str:
    """Escaped text of a figure, with a true minus sign."""
    return escape(f"−{text[1:]}" if text.startswith("-") else text)


def _headline(answer: Answer, say: Say) -> str:
    """The first answer alone: it stays in sight while the form is filled in."""
    name = next(name for name in answer.calculator.results if name in answer.values)
    return f"<span>{escape(_label(answer, say, name))}</span> <strong>{minus(say(name))}</strong>"


def _label(answer: Answer, say: Say, name: str) -> str:
    if name in say.quantities:
        return say.quantities[name].label
    return next(item.label for item in answer.work if isinstance(item, Said) and item.name == name)


def _results(answer: Answer, say: Say) -> str:
    names = [name for name in answer.calculator.results if name not in answer.calculator.aside]
    return _result_list(answer, say, names)


def _more(answer: Answer, say: Say) -> str:
    return _result_list(answer, say, answer.calculator.aside)


def _result_list(answer: Answer, say: Say, names: Sequence[str]) -> str:
    lines = []
    for name in names:
        if name not in answer.values:
            continue
        label, shown = escape(_label(answer, say, name)), minus(say(name))
        quantity = say.quantities.get(name)
        if quantity is None:
            lines.append(f'<div class="br-said"><dt>{label}</dt><dd>{shown}</dd></div>')
            continue
        sign = f' <span class="br-symbol">{math(symbol(quantity, name))}</span>'
        lines.append(
            f'<div data-result="{name}"><dt>{label}{sign if quantity.symbol else ""}</dt>'
            f"<dd>{shown}</dd></div>"
        )
    return f'<dl class="br-results">{"".join(lines)}</dl>'


def _cautions(answer: Answer, say: Say) -> str:
    if not answer.cautions:
        return ""
    lines = "".join(f"<li>{escape(text)}</li>" for text in answer.cautions)
    return f'<ul class="br-cautions" aria-label="Cautions">{lines}</ul>'


def _drawings(answer: Answer, say: Say) -> str:
    made = []
    for drawing in answer.calculator.drawings:
        if drawing.only_if and not _holds(drawing, answer):
            continue
        svg = drawing.function(answer.values, say)
        made.append(f"<figure>{svg}<figcaption>{escape(drawing.title)}</figcaption></figure>")
    return "".join(made)


def _holds(drawing: Drawing, answer: Answer) -> bool:
    return bool(parse(drawing.only_if).evaluate(answer.values))


def _tables(answer: Answer, say: Say) -> str:
    return "".join(
        _table(table, answer.columns[table.name], answer.tables[table.name], answer.system)
        for table in answer.calculator.tables
        if table.name in answer.tables
    )


def _table(
    table: Table, columns: Sequence[Column], rows: Sequence[dict[str, Any]], system: str
) -> str:
    heads = "".join(
        f'<th scope="col"{_kind(column)}>{escape(column.label)}{_unit(column, system)}</th>'
        for column in columns
    )
    lines = []
    for row in rows:
        cells = [f"<td{_kind(column)}>{_cell(column, row, system)}</td>" for column in columns]
        cells[0] = cells[0].replace("<td", '<th scope="row"', 1).replace("</td>", "</th>")
        lines.append(f"<tr>{''.join(cells)}</tr>")
    note = f'<p class="br-note">{escape(table.note)}</p>' if table.note else ""
    title = escape(table.title)
    return (
        f'<div class="br-scroll" role="region" tabindex="0" aria-label="{title}">'
        f'<table class="br-table"><caption>{title}</caption><thead><tr>{heads}</tr></thead>'
        f"<tbody>{''.join(lines)}</tbody></table></div>{note}"
    )


def _kind(column: Column) -> str:
    return ' class="br-words"' if column.text else ""


def _unit(column: Column, system: str) -> str:
    shown = "" if column.text else UNITS[reader_unit(column.unit, system)].shown
    return f' <span class="br-unit">{escape(shown)}</span>' if shown else ""


def _cell(column: Column, row: dict[str, Any], system: str) -> str:
    value = row[column.name]
    if column.text or value is None:
        return escape("" if value is None else value)
    text = show_number(value, column.unit, column.decimals, system)  # digits: nothing to escape
    return f"−{text[1:]}" if text[0] == "-" else text


def _steps(answer: Answer, say: Say) -> str:
    lines = "".join(f"<li>{line}</li>" for line in step_lines(answer, say))
    return f'<ol class="br-steps">{lines}</ol>'


def step_lines(
    answer: Answer, say: Say | None = None, leading_to: Collection[str] = ()
) -> list[str]:
    """The worked steps, in declared units: the formula, the figures, what comes out.

    With ``leading_to``, only the steps that these values rest on.
    """
    work = steps_behind(answer.work, leading_to) if leading_to else answer.work
    say = say or Say(answer.calculator, answer.values, answer.system)

    def shown(name: str) -> str:
        value = answer.values[name]
        quantity = say.quantities.get(name)
        if isinstance(value, str) or quantity is None:
            return str(value)
        return as_typed(value, quantity.unit, _digits(value, quantity.decimals))

    lines = []
    for item in work:
        if isinstance(item, Step):
            result = symbol(item, item.name)
            formula = with_symbols(item.formula, say.quantities)
            figures = with_figures(item.formula, shown)
            equals = "" if figures == formula else f"<mo>=</mo>{figures}"
            value = _both(answer.values[item.name], item, answer.system)
            lines.append(
                f"<p>{escape(item.label)}{_note(item)}</p>"
                f'<div class="br-formula">{math(result, "<mo>=</mo>", formula, equals)} '
                f'<span class="br-equals">= {minus(value)}</span></div>'
            )
        elif isinstance(item, Solved):
            lines.append(
                f"<p>{escape(item.label)}{_note(item)}</p>"
                f'<p class="br-method">{escape(item.method)}</p>{_gives(item.gives, say)}'
            )
    return lines


def _both(value: float, item: Step, system: str) -> str:
    """A step's value in the unit the formula computes in, and in the reader's where it differs."""
    text = show(value, item.unit, item.decimals)
    theirs = show(value, item.unit, item.decimals, system)
    return text if theirs == text else f"{text} ({theirs})"


def _digits(value: float, decimals: int) -> int:
    """Decimals of a figure in a formula: as declared, more where it would print as nothing."""
    return decimals if value == 0 or abs(value) >= 10**-decimals else decimals + 4


def _note(item: Step | Solved) -> str:
    return f' <cite class="br-cite" data-source="{item.source}">{escape(item.source)}</cite>'


def _gives(gives: Sequence[Given], say: Say) -> str:
    lines = "".join(
        f"<li>{escape(one.label)}: {minus(say(one.name))}</li>" for one in gives if not one.many
    )
    return f"<ul>{lines}</ul>" if lines else ""
