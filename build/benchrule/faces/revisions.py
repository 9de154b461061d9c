"""What changed lately, and what a person trained before a date must look at again."""

from calculators.engine.text import escape

from ..handbook import Station
from .context import Context


def revision_table(context: Context) -> str:
    """Every revision of every procedure, the newest first; the script marks what is new to one."""
    found = [
        (str(one["on"]), station, one)
        for station in context.handbook.stations
        for one in station.revisions
    ]
    found.sort(key=lambda item: (item[0], item[1].field("order")), reverse=True)
    rows = "".join(_row(context, station, one) for _, station, one in found)
    return (
        '<form class="br-lookup" data-revisions autocomplete="off">'
        '<label>Trained on<input type="date" name="trained"></label>'
        '<p role="status" data-count>Give the day to see what has changed since.</p></form>'
        '<table class="br-tolerances br-values br-revisions" data-search-exclude '
        'aria-label="Revisions, the newest first"><thead><tr>'
        '<th scope="col">Procedure</th><th scope="col">Date</th><th scope="col">Revision</th>'
        '<th scope="col">What changed</th><th scope="col">Approved by</th></tr></thead>'
        f"<tbody>{rows}</tbody></table>"
    )


def _row(context: Context, station: Station, one: dict[str, object]) -> str:
    link = context.anchor(station.page.source, "", station.title)
    return (
        f'<tr data-on="{escape(one["on"])}" data-station="{station.id}">'
        f'<th scope="row">{link}</th><td data-label="Date">{escape(one["on"])}</td>'
        f'<td data-label="Revision">{escape(one["revision"])}</td>'
        f'<td data-label="What changed">{escape(one["changed"])}</td>'
        f'<td data-label="Approved by">{escape(one["by"])}</td></tr>'
    )
