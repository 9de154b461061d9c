"""The look-up for the floor: every tolerance on one page, found as one types, and measured against."""

import json

from calculators.engine.showing import reader_unit
from calculators.engine.text import escape
from calculators.engine.unit_table import UNITS

from ..handbook import Station
from ..measuring import gauge_facts
from .context import TOLERANCES, Context
from .models import model_choice
from .qr import qr
from .tolerance_table import tolerance_table


def look_up(context: Context) -> str:
    """The filter, then each station's table under its name."""
    book = context.handbook
    return (
        _filter(context)
        + "\n".join(
            f'<section class="br-of" data-of="{station.id}">'
            f'<h2 id="of-{station.id}">{context.anchor(station.page.source, "", station.title)}</h2>'
            f"{station_table(context, station)}</section>"
            for station in book.stations
        )
        + '<p class="br-nothing" hidden>No limit fits. Take away a word or a choice.</p>'
        + gauges_json(context)
    )


def station_table(context: Context, station: Station) -> str:
    """One station's table with the code that opens it on a tablet."""
    tolerances = context.handbook.tolerances_of(station.id)
    code = qr(
        context, TOLERANCES, f"of-{station.id}", f"Scan for the limits of {station.title.lower()}"
    )
    return tolerance_table(context, tolerances, f"Tolerances: {station.title}") + code


def gauges_json(context: Context) -> str:
    """What *Is it in?* must know of gauges and units, once a page."""
    entries = context.handbook.entries["gauges"]
    gauges = {id: gauge_facts(entry) for id, entry in entries.items()}
    used = {gauge["unit"] for gauge in gauges.values()}
    used |= set(context.handbook.units_of_limits)
    units = {
        unit: {
            "kind": UNITS[unit].kind,
            "metric": UNITS[unit].shown,
            "inch": UNITS[reader_unit(unit, "inch")].shown,
        }
        for unit in sorted(used)
    }
    data = {"gauges": gauges, "units": units}
    text = json.dumps(data, ensure_ascii=False, separators=(",", ":"))
    # A template and no script: the theme runs every script again that it puts in place.
    return f"<template data-gauges>{escape(text)}</template>"


def _filter(context: Context) -> str:
    book = context.handbook
    tolerances = book.tolerances.values()
    parts = sorted({str(tolerance.field("part")) for tolerance in tolerances}, key=str.lower)
    used = {tolerance.field("gauge") for tolerance in tolerances}
    gauges = sorted(
        ((id, str(entry.fields["name"])) for id, entry in book.entries["gauges"].items() if id in used),
        key=lambda item: item[1].lower(),
    )  # fmt: skip
    chosen = [
        ("station", "Station", "All stations", [(s.id, s.title) for s in book.stations]),
        ("part", "Part", "All parts", [(part, part) for part in parts]),
        ("gauge", "Gauge", "All gauges", gauges),
    ]  # fmt: skip
    selects = "".join(
        f'<label>{words}<select name="{name}"><option value="">{every}</option>'
        + "".join(f'<option value="{escape(v)}">{escape(w)}</option>' for v, w in options)
        + "</select></label>"
        for name, words, every, options in chosen
        if options
    )
    return (
        '<form class="br-lookup" data-lookup autocomplete="off">'
        '<label class="br-lookup-words">Find<input type="search" name="words" '
        'placeholder="action, gap under the heel, top …" enterkeyhint="search" spellcheck="false"></label>'
        f'<div class="br-lookup-choices">{selects}{model_choice(context)}</div>'
        f'<p role="status" data-count>{len(book.tolerances)} limits</p></form>'
    )
