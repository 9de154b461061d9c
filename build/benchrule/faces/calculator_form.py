"""A calculator on a page, complete before any script runs: form, answer, steps, drawing.

The form is made here; the answer's parts come from ``calculators.engine.markup``, which makes
the same text again in the browser.
"""

import json
from collections.abc import Mapping
from typing import Any

from calculators.engine.declaration import (
    Calculator,
    Choice,
    Input,
    Number,
    Readings,
    Rows,
    When,
    Words,
)
from calculators.engine.door import turned_entry
from calculators.engine.inputs import allowed_range, applies
from calculators.engine.mathml import math, symbol
from calculators.engine.reading import read_quantity
from calculators.engine.showing import as_typed, reader_unit
from calculators.engine.text import escape
from calculators.engine.unit_table import UNITS

from ..examples import example_of
from ..models import values_for
from .context import Context, calculator_page

STILL_WORDS = (
    'Shown: the example.<span class="br-live-only"> Change a figure and it recalculates here, '
    "on this device.</span>"
)
SYSTEM_WORDS = (("metric", "mm"), ("inch", "inch, decimal"), ("inch64", "inch, 64ths"))


class CannotPlace(ValueError):
    """A calculator placed with presets that it refuses; the message lists why."""


def calculator_block(
    context: Context, calculator: Calculator, presets: Mapping[str, Any], level: int = 3
) -> str:
    """The whole calculator as HTML. ``presets`` take the place of the example's values."""
    found = example_of(context.handbook, calculator, presets)
    if "refused" in found:
        reasons = "; ".join(f"{one['input']}: {one['why']}" for one in found["refused"])
        raise CannotPlace(f"{calculator.name} refuses its presets: {reasons}")
    made, inputs = found["parts"], found["inputs"]
    name = calculator.name
    # Rows may be given as text; the form shows them as they were read.
    examples = {
        item.name: inputs[item.name] if isinstance(item, Rows) and item.name in inputs
        else presets.get(item.name, item.example)
        for item in calculator.inputs
    }  # fmt: skip
    units = context.handbook.units
    own_page = context.source == calculator_page(name)
    level = 2 if own_page else level  # below the page's own heading, or a section's
    title = (
        escape(calculator.title) if own_page
        else context.anchor(calculator_page(name), "", calculator.title)
    )  # fmt: skip
    systems = "".join(
        f'<label><input type="radio" name="{name}-units" value="{value}"'
        f"{' checked' if value == units else ''}><span>{words}</span></label>"
        for value, words in SYSTEM_WORDS
    )
    about = (
        f'aria-label="Calculator: {escape(calculator.title)}" data-calculator="{name}" '
        f'data-units="{units}" data-search-exclude'
    )
    return f"""<section class="br-calculator" id="calc-{name}" {about}>
<header class="br-calc-head"><p class="br-calc-title" role="heading" aria-level="{level}">{title}</p>
<p>{escape(calculator.summary)}</p></header>
<div class="br-calc-bar">
<fieldset class="br-units"><legend>Units</legend>{systems}</fieldset>
{_models(context, calculator)}<p class="br-state" role="status" data-state="still">{STILL_WORDS}</p>
</div>
<form class="br-form" novalidate autocomplete="off" aria-label="{escape(calculator.title)}">
{_groups(calculator, examples, inputs, units)}
<p class="br-form-end"><button type="reset" class="br-button">Back to the example</button></p></form>
<p class="br-headline" data-part="headline" aria-hidden="true">{made["headline"]}</p>
<div class="br-answer" role="region" aria-label="Answer: {escape(calculator.title)}">
<p class="br-hidden" role="status" data-said></p>
<div data-part="results">{made["results"]}</div>
{_aside(calculator, made["more"])}<div data-part="cautions">{made["cautions"]}</div>
<div data-part="drawings">{made["drawings"]}</div>
<div data-part="tables">{made["tables"]}</div>
<details class="br-fold"><summary>Worked steps</summary><div data-part="steps">{made["steps"]}</div></details>
</div>
<details class="br-fold"><summary>Where it holds</summary><p>{escape(calculator.validity)}</p></details>
</section>"""


def _models(context: Context, calculator: Calculator) -> str:
    """The models whose values the form can take, and the values as one would type them."""
    items = {item.name: item for item in calculator.inputs}
    values = {}
    for id, model in context.handbook.models.items():
        given = values_for(model, calculator)
        if given:
            values[id] = {name: _as_entered(items[name], value) for name, value in given.items()}
    if not values:
        return ""
    options = "".join(
        f'<option value="{id}">{escape(context.handbook.models[id].fields["name"])}</option>'
        for id in values
    )
    data = json.dumps(values, ensure_ascii=False, separators=(",", ":"))
    return (
        '<label class="br-model-choice">Values of<select data-model-of-form>'
        f'<option value="">The example</option>{options}</select></label>'
        f"<template data-model-values>{escape(data)}</template>"
    )


def _as_entered(item: Input, value: Any) -> str:
    """A model's value as it stands in the form in metric units."""
    if not isinstance(item, Number):
        return str(value)
    return _typed(item, read_quantity(str(value), item.unit))


def _aside(calculator: Calculator, more: str) -> str:
    if not calculator.aside:
        return ""
    return (
        '<details class="br-fold"><summary>More figures</summary>'
        f'<div data-part="more">{more}</div></details>\n'
    )


def _groups(
    calculator: Calculator, examples: Mapping[str, Any], chosen: Mapping[str, Any], units: str
) -> str:
    groups: dict[str, list[str]] = {}
    hidden: dict[str, bool] = {}
    for item in calculator.inputs:
        shown = applies(item, chosen)
        groups.setdefault(item.group, []).append(
            _field(calculator, item, examples[item.name], shown, units)
        )
        hidden[item.group] = hidden.get(item.group, True) and not shown
    made = []
    for title, fields in groups.items():
        inner = f'<div class="br-fields">{"".join(fields)}</div>'
        off = " hidden" if hidden[title] else ""
        if title in calculator.folded:
            made.append(
                f'<details class="br-group br-fold"{off}><summary>{escape(title)}</summary>{inner}</details>'
            )
        else:
            made.append(
                f'<fieldset class="br-group"{off}><legend>{escape(title or "Give")}</legend>{inner}</fieldset>'
            )
    return "".join(made)


def _when(when: When | None) -> str:
    return f' data-when="{when.choice}={",".join(when.is_one_of)}"' if when else ""


def _field(calculator: Calculator, item: Input, value: Any, shown: bool, units: str) -> str:
    id = f"{calculator.name}--{item.name}"
    off = "" if shown else " hidden"
    kind = type(item).__name__.lower()
    head = f'<div class="br-field br-{kind}" data-input="{item.name}"{_when(item.when)}{off}>'
    match item:
        case Choice():
            body = _choice(item, id, value)
        case Number() | Readings():
            body = _entry(item, id, value, units)
        case Rows():
            body = _rows(item, id, value, units)
    return f'{head}{body}<p class="br-error" id="{id}-error" hidden></p></div>'


def _label(item: Input, id: str) -> str:
    sign = ""
    if isinstance(item, Number | Readings) and item.symbol:
        sign = f' <span class="br-symbol">{math(symbol(item, item.name))}</span>'
    return f'<label for="{id}">{escape(item.label)}{sign}</label>'


def _help(item: Input, id: str, more: str = "") -> str:
    text = " ".join(part for part in (item.help, more) if part)
    return f'<p class="br-help" id="{id}-help">{escape(text)}</p>' if text else ""


def _choice(item: Choice, id: str, value: str) -> str:
    options = "".join(
        f'<option value="{escape(key)}"{" selected" if key == value else ""}>{escape(words)}</option>'
        for key, words in item.options
    )
    describe = f' aria-describedby="{id}-help"' if item.help else ""
    return (
        f'{_label(item, id)}<select id="{id}" name="{item.name}"{describe}>{options}</select>'
        f"{_help(item, id)}"
    )


def _entry(item: Number | Readings, id: str, value: Any, units: str) -> str:
    """One text entry with its unit behind it; what it allows stands in the help line."""
    text, exact = _in_units(item, value, units)
    allowed = allowed_range(item, units)
    if isinstance(item, Readings):
        more = f"{item.at_least} to {item.at_most} readings, each {allowed}."
    else:
        more = f"{allowed}.".capitalize() if item.whole else f"{allowed}."
    unit = UNITS[reader_unit(item.unit, units)].shown
    whole = getattr(item, "whole", False)
    mode = "numeric" if whole else "text" if units == "inch64" else "decimal"
    return (
        f'{_label(item, id)}<div class="br-entry"><input type="text" id="{id}" name="{item.name}" '
        f'value="{escape(text)}"{exact} inputmode="{mode}" '
        f'aria-describedby="{id}-help" spellcheck="false">'
        f'<span class="br-unit" data-unit-of="{item.name}">{escape(unit)}</span></div>'
        f"{_help(item, id, more)}"
    )


def _in_units(item: Number | Readings, value: Any, units: str) -> tuple[str, str]:
    """The entry's text, and what it stands for exactly as an attribute, where the two differ."""
    if isinstance(item, Readings) and not isinstance(value, str):
        text = "; ".join(_typed(item, one) for one in value)
    else:
        text = _typed(item, value)
    if units == "metric" or not UNITS[item.unit].inch:
        return text, ""
    was = units if isinstance(value, str) else "metric"
    turned = turned_entry(text, item, was, units)
    exact = f' data-example="{escape(turned["exact"])}"' if turned["exact"] != text else ""
    return turned["text"], exact


def _typed(item: Number | Readings, value: Any) -> str:
    if isinstance(value, str):
        return value
    decimals = 0 if getattr(item, "whole", False) else max(item.decimals, 6)
    return as_typed(value, item.unit, decimals)


def _rows(item: Rows, id: str, value: Any, units: str) -> str:
    heads = []
    for column in item.columns:
        unit = UNITS[reader_unit(column.unit, units)].shown if isinstance(column, Number) else ""
        key = f"{item.name}.{column.name}"
        behind = (
            f' <span class="br-unit" data-unit-of="{key}">{escape(unit)}</span>' if unit else ""
        )
        heads.append(f'<th scope="col">{escape(column.label)}{behind}</th>')
    rows = "".join(_row(item, number, row, units) for number, row in enumerate(value, 1))
    most = f' data-at-least="{item.at_least}" data-at-most="{item.at_most}"'
    return (
        f'<p class="br-rows-label" id="{id}">{escape(item.label)}</p>{_help(item, id)}'
        f'<div class="br-scroll" role="region" tabindex="0" aria-labelledby="{id}">'
        f'<table class="br-entry-rows" data-rows="{item.name}"{most}><thead><tr>{"".join(heads)}'
        f'<th scope="col"><span class="br-hidden">Remove</span></th></tr></thead>'
        f"<tbody>{rows}</tbody></table></div>"
        f'<button type="button" class="br-button" data-add-row>Add a row'
        f'<span class="br-hidden"> to {escape(item.label)}</span></button>'
    )


def _row(item: Rows, number: int, row: Any, units: str) -> str:
    cells = []
    values = list(row.values()) if isinstance(row, Mapping) else row
    for column, value in zip(item.columns, values, strict=True):
        text, exact = (value, "") if isinstance(column, Words) else _in_units(column, value, units)
        mode = "text" if isinstance(column, Words) or units == "inch64" else "decimal"
        cells.append(
            f'<td data-label="{escape(column.label)}"><input type="text" value="{escape(text)}"{exact} '
            f'data-column="{column.name}" inputmode="{mode}" aria-label="{escape(column.label)}, '
            f'row {number}" spellcheck="false"></td>'
        )
    return (
        f'<tr>{"".join(cells)}<td><button type="button" class="br-button br-remove" '
        f'data-remove-row aria-label="Remove row {number}">×</button></td></tr>'
    )
