"""Pages of custom instruments: the list, each one's build sheet, and what differs from another."""

import json
from datetime import date
from typing import Any

from calculators.engine.markup import parts
from calculators.engine.text import escape

from ..build_sheet import Setting, StationSheet, build_sheet, differences, gauge_of, sheet_facts
from ..instruments import Instrument, feeds_of, instrument_of_order
from ..order_files import template_addresses, templates_of
from ..templates.makers import makers
from .cards import cards
from .context import Context, material_page, model_page
from .qr import qr


def order_page(order: str) -> str:
    """The page of an order's build sheet."""
    return f"orders/{order}.md"


def order_cards(context: Context) -> str:
    """Every order with a line on what it is, the next due first."""
    orders = sorted(context.handbook.orders.items(), key=lambda one: str(one[1].fields["due"]))
    return cards(
        context,
        (
            (order_page(id), f"{id}: {entry.fields['name']}",
             f"{escape(entry.fields['summary'])} Due {escape(entry.fields['due'])}.")
            for id, entry in orders
        ),
    )  # fmt: skip


def order_sheet(context: Context, order: str) -> str:
    """The build sheet of an order: it goes with the instrument through the shop."""
    instrument = instrument_of_order(context.handbook, order)
    sheets = build_sheet(instrument)
    facts = sheet_facts(instrument, sheets)
    stations = "".join(_station(context, instrument, sheet) for sheet in sheets)
    data = json.dumps(_live(instrument, facts), separators=(",", ":"))
    return (
        f"{_head(context, instrument)}{_first(sheets)}{_unlike(context, instrument, facts)}"
        f"{_templates(context, instrument)}"
        f'<div class="br-build-sheet" data-order="{escape(order)}">{stations}'
        f"<template data-sheet>{escape(data)}</template></div>"
    )


def compare_place(context: Context) -> str:
    """Two lists to choose from, orders and models; the script fetches both and shows what differs."""
    book = context.handbook
    choices = [(id, f"{id}: {entry.fields['name']}") for id, entry in book.orders.items()]
    choices += [(id, f"Model: {entry.fields['name']}") for id, entry in book.models.items()]
    options = "".join(f'<option value="{id}">{escape(words)}</option>' for id, words in choices)
    return (
        '<div class="br-practice-live" data-compare><p>This needs the page\'s script.</p>'
        f"<template>{options}</template></div>"
    )


def _head(context: Context, instrument: Instrument) -> str:
    assert instrument.order is not None
    fields = instrument.order.fields
    model = context.handbook.models[instrument.model]
    woods = "; ".join(
        f"{part.capitalize()}: {context.anchor(material_page(wood), '', _wood(context, wood))}"
        for part, wood in (fields.get("woods") or {}).items()
    )
    days = (date.fromisoformat(fields["due"]) - date.fromisoformat(fields["ordered"])).days
    facts = (
        ("Model", context.anchor(model_page(instrument.model), "", str(model.fields["name"]))),
        ("Ordered", escape(fields["ordered"])),
        ("Due", f"{escape(fields['due'])}, {days} days after"),
        ("Woods", woods),
    )
    cells = "".join(f"<div><dt>{name}</dt><dd>{value}</dd></div>" for name, value in facts if value)
    wishes = "".join(f"<li>{escape(wish)}</li>" for wish in fields.get("wishes") or ())
    invented = "<p><em>Invented, for demonstration.</em></p>" if fields.get("invented") else ""
    asked = f"<p><strong>Asked for:</strong></p><ul>{wishes}</ul>" if wishes else ""
    return (
        f'<p class="br-summary">{escape(fields["summary"])}</p>{invented}'
        f'<dl class="br-order-head">{cells}</dl>{asked}'
    )


def _wood(context: Context, wood: str) -> str:
    return str(context.handbook.entries["materials"][wood].fields["name"])


def _first(sheets: list[StationSheet]) -> str:
    """What has to be looked at before anything is cut: refusals, and warnings for these figures."""
    lines = "".join(
        f'<li><a href="#sheet-{sheet.station.id}">{escape(sheet.station.title)}</a>: {escape(words)}</li>'
        for sheet in sheets
        for words in dict.fromkeys(sheet.warnings)
    )
    if not lines:
        return ""
    return f'<h2 id="look-first">Look at these first</h2><ul class="br-look-first">{lines}</ul>'


def _unlike(context: Context, instrument: Instrument, facts: dict[str, Any]) -> str:
    """What the bench does differently from the model, folded."""
    model = instrument.usual
    rows = "".join(
        f'<tr><th scope="row">{escape(what)}</th><td>{escape(station)}</td><td><strong>{escape(here)}'
        f"</strong></td><td>{escape(there)}</td></tr>"
        for station, what, here, there in differences(facts, sheet_facts(model, build_sheet(model)))
    )
    if not rows:
        return "<p>Nothing is set differently from the model.</p>"
    return (
        f'<h2 id="unlike">Unlike the model</h2><details class="br-fold br-unlike"><summary>What is set differently '
        f"from {escape(model.title)}</summary>"
        '<div class="br-scroll" role="region" tabindex="0" aria-label="Unlike the model">'
        '<table class="br-sign" aria-labelledby="unlike"><thead><tr>'
        '<th scope="col">What</th><th scope="col">Station</th><th scope="col">This one</th>'
        f'<th scope="col">The model</th></tr></thead><tbody>{rows}</tbody></table></div></details>'
    )


def _templates(context: Context, instrument: Instrument) -> str:
    """The templates at full size to take along, and why others cannot be drawn."""
    drawn, refused = templates_of(instrument)
    lines = "".join(
        f"<li>{escape(makers()[name].title)}: "
        + ", ".join(
            context.anchor(address, "", words)
            for words, address in template_addresses(instrument.id, name).items()
        )
        + "</li>"
        for name in drawn
    )
    lines += "".join(f"<li>{escape(words)}</li>" for words in refused)
    return (
        f'<h2 id="templates">Templates at full size</h2><ul class="br-templates">{lines}</ul>'
        "<p>Print at actual size and measure the bars on the sheet before use. For a laser or a router: "
        f"<code>benchrule template NAME --order {escape(instrument.id)} --out FILE.dxf</code>.</p>"
    )


def _station(context: Context, instrument: Instrument, sheet: StationSheet) -> str:
    page = sheet.station.page.source
    rows = "".join(_row(instrument, sheet, one) for one in sheet.settings)
    tables = "".join(parts(answer, ("tables",))["tables"] for answer in sheet.answers)
    warnings = "".join(f"<li>{escape(words)}</li>" for words in dict.fromkeys(sheet.warnings))
    newest = sheet.station.revisions[0]
    # A calculator's table may stand at several stations: each place has a name of its own.
    named = ' tabindex="0" aria-label="'
    tables = tables.replace(named, f"{named}{escape(sheet.station.title)}: ")
    return (
        f'<section class="br-sheet-station" data-station="{sheet.station.id}">'
        f'<div class="br-sheet-head"><div><h2 id="sheet-{sheet.station.id}">'
        f"{context.anchor(page, '', sheet.station.title)}</h2>"
        f'<p class="br-from">Procedure revision {newest["revision"]}, {newest["on"]}</p></div>'
        f"{qr(context, page, '', 'Procedure')}</div>"
        + (f'<ul class="br-cautions">{warnings}</ul>' if warnings else "")
        + f'<div class="br-scroll" role="region" tabindex="0" aria-label="Settings: {escape(sheet.station.title)}">'
        f'<table class="br-sign br-settings" aria-labelledby="sheet-{sheet.station.id}"><thead><tr>'
        '<th scope="col">Setting</th><th scope="col">For this instrument</th><th scope="col">Limits</th>'
        '<th scope="col">Measured</th><th scope="col">Initials</th></tr></thead>'
        f"<tbody>{rows}</tbody></table></div>"
        + (f'<details class="br-fold br-sheet-tables"><summary>Tables<span class="br-hidden"> of '
           f"{escape(sheet.station.title)}</span></summary>{tables}</details>" if tables else "")
        + "</section>"
    )  # fmt: skip


def _row(instrument: Instrument, sheet: StationSheet, one: Setting) -> str:
    own = one.tolerance
    gauge = gauge_of(instrument, one)
    judged = ""
    if own and gauge:
        facts = {"low": own.field("low"), "high": own.field("high"), "unit": own.field("unit"),
                 "decimals": own.field("decimals"), "gauge": gauge}  # fmt: skip
        judged = f' data-judge="{escape(json.dumps(facts, separators=(",", ":")))}"'
    also = f'<span class="br-inch">{escape(one.also)}</span>' if one.also != one.shown else ""
    link = f' <span class="br-from">{escape(gauge["name"])}</span>' if gauge else ""
    record = sheet.measured.get(one.key)
    read = f"{escape(record['value'])}" if record else ""
    by = escape(f"{record.get('by', '')} {record['on']}".strip()) if record else ""
    if isinstance(one.value, str):
        return (
            f'<tr data-key="{escape(one.key)}"><th scope="row">{escape(one.label)}</th>'
            f'<td colspan="3" class="br-set">{escape(one.shown)}</td><td></td></tr>'
        )
    return (
        f'<tr data-key="{escape(one.key)}"{judged}><th scope="row">{escape(one.label)}{link}</th>'
        f'<td class="br-set"><strong>{escape(one.shown)}</strong>{also}</td>'
        f"<td>{escape(own.limits()) if own else ''}</td>"
        f'<td class="br-measured" data-recorded="{read}">{read}</td><td class="br-initials">{by}</td></tr>'
    )


def _live(instrument: Instrument, facts: dict[str, Any]) -> dict[str, Any]:
    """What the script needs to carry what is measured on to the stations that follow."""
    calculators = {
        fact["calculator"]
        for station in facts["stations"]
        for fact in station["settings"].values()
        if not isinstance(instrument.worked(fact["calculator"]), list)
    }
    feeds = feeds_of(instrument.handbook)
    keys = {key for station in facts["stations"] for key in station["settings"]}
    return {
        "order": instrument.id,
        "given": {name: dict(instrument.given(name)) for name in sorted(calculators)},
        "inputs": {
            name: [item.name for item in instrument.handbook.calculators[name].inputs]
            for name in sorted(calculators)
        },
        "feeds": {key: names for key, names in feeds.items() if key in keys},
        "results": {
            key: [fact["calculator"], _result_of(instrument, key)]
            for station in facts["stations"]
            for key, fact in station["settings"].items()
            if not isinstance(fact["value"], str)
        },
    }  # fmt: skip


def _result_of(instrument: Instrument, key: str) -> str:
    tolerance = instrument.handbook.tolerances.get(key)
    if tolerance is not None:
        return str(tolerance.field("agrees_with")["result"])
    return key.partition(".")[2]
