"""Sheets on which a person signs off at the bench what a trainee has shown, and the pages of learning."""

from calculators.engine.text import escape

from ..handbook import Handbook, Station, Tolerance
from ..plain_words import plain_words
from ..station_parts import definitions, places_in
from .context import Context

SHEETS = "learning/sign-off/index.md"


def sign_off_page(station: str) -> str:
    """The page of a station's sheet."""
    return f"learning/sign-off/{station}.md"


def sign_off_list(context: Context) -> str:
    """A link to each station's sheet."""
    lanes = []
    for name, stations in context.handbook.lanes:
        links = "".join(
            f"<li>{context.anchor(sign_off_page(one.id), '', one.title)}</li>" for one in stations
        )
        lanes.append(f"<h2>{escape(name)}</h2><ul>{links}</ul>" if name else f"<ul>{links}</ul>")
    return "".join(lanes)


def sign_off_sheet(context: Context, station_id: str) -> str:
    """One station's sheet: its steps' checks and its limits, with room for figures and initials."""
    book = context.handbook
    station = book.station(station_id)
    if station is None:
        raise ValueError(f"{context.source}: there is no station '{station_id}'")
    return (
        f"{_head(station)}{_steps(book, station)}{_limits(book, station)}"
        '<p class="br-sign-note">Shown three times on real work, on different days, before it is signed '
        "off for good: common practice, no source. The signature stands for this revision of the "
        "procedure; a change of it is shown again.</p>"
        '<dl class="br-sign-end"><div><dt>Signed off at the bench by</dt><dd></dd></div>'
        "<div><dt>On</dt><dd></dd></div><div><dt>To be seen again</dt><dd></dd></div></dl>"
    )


def _head(station: Station) -> str:
    newest = station.revisions[0]
    facts = (("Trainee", ""), ("Begun on", ""),
             ("Procedure", f"revision {newest['revision']}, {newest['on']}"))  # fmt: skip
    cells = "".join(
        f"<div><dt>{escape(name)}</dt><dd>{escape(value)}</dd></div>" for name, value in facts
    )
    return f'<dl class="br-sign-head">{cells}</dl>'


def _steps(book: Handbook, station: Station) -> str:
    rows = "".join(
        f'<tr><th scope="row">{escape(place.title)}</th>'
        f"<td>{escape(plain_words(book, definitions(place.text).get('Check', '')))}</td>"
        "<td></td><td></td><td></td></tr>"
        for place in places_in(station)
        if place.kind == "step"
    )
    return _table("The steps, each with its check", ("Step", "What must be seen"), rows)


def _limits(book: Handbook, station: Station) -> str:
    rows = "".join(_limit(book, tolerance) for tolerance in book.tolerances_of(station.id))
    return _table("The limits, measured by the trainee", ("What", "Limits, and with what"), rows)


def _limit(book: Handbook, tolerance: Tolerance) -> str:
    gauge = book.entries["gauges"][tolerance.field("gauge")].fields["name"]
    limits = [tolerance.limits()]
    limits += [
        f"{book.models[model].fields['name']}: {tolerance.for_model(model).limits()}"
        for model in tolerance.field("by_model") or ()
    ]
    return (
        f'<tr><th scope="row">{escape(tolerance.field("feature"))}</th>'
        f"<td>{escape('; '.join(limits))}. {escape(gauge)}</td><td></td><td></td><td></td></tr>"
    )


def _table(caption: str, heads: tuple[str, str], rows: str) -> str:
    columns = "".join(f'<th scope="col">{escape(head)}</th>' for head in heads)
    return (
        f'<div class="br-scroll" role="region" tabindex="0" aria-label="{escape(caption)}">'
        f'<table class="br-sign"><caption>{escape(caption)}</caption><thead><tr>'
        f'{columns}<th scope="col">1st</th><th scope="col">2nd</th><th scope="col">3rd</th></tr></thead>'
        f"<tbody>{rows}</tbody></table></div>"
    )
