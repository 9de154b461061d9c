"""The way through the shop: the map on the home page, before and after on each station."""

from calculators.engine.text import escape

from ..handbook import Station
from .context import Context, calculator_page


def shop_map(context: Context) -> str:
    """Every station as a plate on the way, in the order the work goes."""
    plates = "".join(
        f'<li><a href="{escape(context.link(station.page.source, ""))}">'
        f'<span class="br-plate-number">{number}</span>'
        f'<span class="br-plate-title">{escape(station.title)}</span>'
        f'<span class="br-plate-words">{escape(station.field("summary"))}</span></a></li>'
        for number, station in enumerate(context.handbook.stations, 1)
    )
    return f'<ol class="br-map">{plates}</ol>'


def calculator_cards(context: Context) -> str:
    """Every calculator with a line on what it answers."""
    cards = "".join(
        f'<li><a href="{escape(context.link(calculator_page(name), ""))}">'
        f'<span class="br-plate-title">{escape(calculator.title)}</span>'
        f'<span class="br-plate-words">{escape(calculator.summary)}</span></a></li>'
        for name, calculator in context.handbook.calculators.items()
    )
    return f'<ul class="br-map br-cards">{cards}</ul>'


def station_head(context: Context, station: Station) -> str:
    """What a reader wants first: what this is, from where, to whom, which revision."""
    field = station.field
    return (
        f'<p class="br-summary">{escape(field("summary"))}</p>'
        '<dl class="br-plate">'
        f"<div><dt>Comes from</dt><dd>{escape(field('comes_from'))}</dd></div>"
        f"<div><dt>Goes to</dt><dd>{escape(field('goes_to'))}</dd></div>"
        f"<div><dt>Revision</dt><dd>{escape(field('revision'))}, {escape(field('approved_on'))}, "
        f"{escape(field('approved_by'))}</dd></div>"
        f"<div><dt>Changed</dt><dd>{escape(field('changed'))}</dd></div></dl>"
        f"{_quick(station)}"
    )


def _quick(station: Station) -> str:
    """The three places a worker with gloves on wants at once."""
    places = [("tolerances", "Tolerances"), ("what-goes-wrong", "What goes wrong")]
    if station.field("calculators"):
        places.append(("calculator", "Calculator"))
    links = "".join(f'<a href="#{anchor}">{words}</a>' for anchor, words in places)
    return f'<nav class="br-quick" aria-label="On this page">{links}</nav>'


def station_foot(context: Context, station: Station) -> str:
    """The stations before and after."""
    before, after = context.handbook.neighbours(station)
    parts = []
    for other, words, side in ((before, "Before", "before"), (after, "After", "after")):
        if other is not None:
            parts.append(
                f'<a class="br-{side}" href="{escape(context.link(other.page.source, ""))}">'
                f"<span>{words}</span>{escape(other.title)}</a>"
            )
    return f'<nav class="br-way" aria-label="The way through the shop">{"".join(parts)}</nav>'
