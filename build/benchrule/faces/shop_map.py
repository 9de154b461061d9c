"""The way through the shop: the drawn map, the list of plates, before and after on each station."""

from itertools import batched

from calculators.engine.text import escape

from ..handbook import Station
from .cards import cards
from .context import REVISIONS, Context, calculator_page
from .models import model_choice

# The map's measures, in units of the drawing; book.css lays the plates by the same.
WIDTH, LEFT, PITCH, PLATE, TALL, LANE, TOP = 1240, 146, 155, 136, 72, 126, 34
PER_LINE = (WIDTH - LEFT) // PITCH


def shop_map(context: Context) -> str:
    """The drawn map for wide screens and paper, and the same way as plates for narrow ones."""
    return (
        f'<nav class="br-way-map" aria-label="Map of the shop">{_drawn(context)}</nav>'
        f'<div class="br-way-list">{_plates(context)}</div>'
    )


def _plates(context: Context) -> str:
    made, number = [], 0
    for name, stations in context.handbook.lanes:
        plates = []
        for station in stations:
            number += 1
            plates.append(
                f'<li><a href="{escape(context.link(station.page.source, ""))}">'
                f'<span class="br-plate-number">{number}</span>'
                f'<span class="br-plate-title">{escape(station.title)}</span>'
                f'<span class="br-plate-words">{escape(station.field("summary"))}</span></a></li>'
            )
        title = f"<h2>{escape(name)}</h2>" if name else ""
        made.append(f'{title}<ol class="br-map">{"".join(plates)}</ol>')
    return "".join(made)


def _drawn(context: Context) -> str:
    book = context.handbook
    places: dict[str, tuple[float, float]] = {}
    lines: dict[str, int] = {}
    benches, y, line = [], float(TOP), 0
    for name, stations in book.lanes:
        rows = -(-len(stations) // PER_LINE)
        last = min(len(stations), PER_LINE)
        right = LEFT + (last - 1) * PITCH + PLATE
        benches.append(_bench(name, y, rows, right))
        for at, station in enumerate(stations):
            row = at // PER_LINE
            places[station.id] = (LEFT + at % PER_LINE * PITCH, y + row * LANE)
            lines[station.id] = line + row
        y += rows * LANE
        line += rows
    ways = [
        _way(places[other], places[station.id], lines[station.id] - lines[other])
        for station in book.stations
        for other in book.follows(station)
        if other in places
    ]
    height = y - LANE + TALL + TOP
    numbers = {station.id: number for number, station in enumerate(book.stations, 1)}
    rows_of_plates = "".join(
        f'<div class="br-way-row">{"".join(_plate(context, one, numbers[one.id]) for one in line)}</div>'
        for _, stations in book.lanes
        for line in batched(stations, PER_LINE)
    )
    return (
        f'<svg class="br-drawing" viewBox="0 0 {WIDTH} {height:.0f}" aria-hidden="true" '
        'focusable="false" xmlns="http://www.w3.org/2000/svg">'
        '<defs><marker id="shop-way-tip" viewBox="0 0 10 10" refX="9" refY="5" markerWidth="7" '
        'markerHeight="7" orient="auto-start-reverse"><path class="ink-fill" d="M0 1 L9 5 L0 9 Z"/>'
        f"</marker></defs>{''.join(benches)}{''.join(ways)}</svg>"
        f'<div class="br-way-rows">{rows_of_plates}</div>'
    )


def _bench(name: str, y: float, rows: int, right: float) -> str:
    """A group's bench: a board under its plates, with the group's name at the left."""
    edge = y + (rows - 1) * LANE + TALL - 8
    words = "".join(
        f'<tspan x="{LEFT - 22}" dy="{0 if not at else 18}">{escape(line)}</tspan>'
        for at, line in enumerate(_wrap(name, 14))
    )
    start = y + TALL / 2 + 5 - 9 * (len(_wrap(name, 14)) - 1)
    return (
        f'<rect class="wood-light" x="{LEFT - 12}" y="{edge:.0f}" width="{right - LEFT + 24:.0f}" '
        f'height="14" rx="2"/><text class="label br-bench" text-anchor="end" y="{start:.0f}">{words}</text>'
    )


def _way(start: tuple[float, float], end: tuple[float, float], lines_down: int) -> str:
    """The arrow from one plate to another: straight to a neighbour, else round the others."""
    (x1, y1), (x2, y2) = start, end
    middle1, middle2 = x1 + PLATE / 2, x2 + PLATE / 2
    if lines_down == 0 and x2 > x1 and x2 - x1 <= PITCH:
        path = f"M{x1 + PLATE:.0f} {y1 + TALL / 2:.0f} H{x2 - 2:.0f}"
    elif lines_down == 0:
        path = (
            f"M{middle1 + 20:.0f} {y1:.0f} C{middle1 + 40:.0f} {y1 - 30:.0f} "
            f"{middle2 - 40:.0f} {y2 - 30:.0f} {middle2 - 16:.0f} {y2 - 2:.0f}"
        )
    elif lines_down > 0:
        bow = 30 + 14 * (lines_down - 1)
        path = (
            f"M{middle1:.0f} {y1 + TALL:.0f} C{middle1:.0f} {y1 + TALL + bow:.0f} "
            f"{middle2:.0f} {y2 - bow:.0f} {middle2:.0f} {y2 - 2:.0f}"
        )
    else:
        path = (
            f"M{middle1:.0f} {y1:.0f} C{middle1:.0f} {y1 - 40:.0f} "
            f"{middle2:.0f} {y2 + TALL + 46:.0f} {middle2:.0f} {y2 + TALL + 2:.0f}"
        )
    style = "hidden" if lines_down < 0 or lines_down > 1 else "thin"
    return f'<path class="{style} br-way-line" d="{path}" marker-end="url(#shop-way-tip)"/>'


def _plate(context: Context, station: Station, number: int) -> str:
    """A plate: a plain link laid over the drawing, so that the theme treats it like any other."""
    return (
        f'<a href="{escape(context.link(station.page.source, ""))}" class="br-way-plate">'
        f'<span class="br-way-number">{number}</span><span>{escape(station.title)}</span></a>'
    )


def _wrap(words: str, most: int) -> list[str]:
    """Words on lines of at most ``most`` letters, no word broken."""
    lines: list[str] = []
    for word in words.split():
        if lines and len(lines[-1]) + 1 + len(word) <= most:
            lines[-1] += f" {word}"
        else:
            lines.append(word)
    return lines


def calculator_cards(context: Context) -> str:
    """Every calculator with a line on what it answers, by what they are about."""
    return "".join(
        f'<h2 id="group-{at}">{escape(title)}</h2>'
        + cards(
            context,
            (
                (calculator_page(name), calculator.title, escape(calculator.summary))
                for name, calculator in members.items()
            ),
        )
        for at, (title, members) in enumerate(context.handbook.calculator_groups, 1)
    )


def station_head(context: Context, station: Station) -> str:
    """What a reader wants first: what this is, from where, to whom, which revision."""
    field = station.field
    before, after = context.handbook.neighbours(station)
    revision = context.anchor(REVISIONS, "", str(field("revision")))
    return (
        f'<p class="br-summary">{escape(field("summary"))}</p>'
        '<dl class="br-plate">'
        f"<div><dt>Comes from</dt><dd>{escape(field('comes_from'))}{_links(context, before)}</dd></div>"
        f"<div><dt>Goes to</dt><dd>{escape(field('goes_to'))}{_links(context, after)}</dd></div>"
        f"<div><dt>Revision</dt><dd>{revision}, {escape(field('approved_on'))}, "
        f"{escape(field('approved_by'))}</dd></div>"
        f"<div><dt>Changed</dt><dd>{escape(field('changed'))}</dd></div></dl>"
        f'<div class="br-head-bar">{_quick(station)}{model_choice(context)}</div>'
    )


def _links(context: Context, stations: list[Station]) -> str:
    links = ", ".join(context.anchor(one.page.source, "", one.title) for one in stations)
    return f'<span class="br-others">{links}</span>' if links else ""


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
    for others, words, side in ((before, "Before", "before"), (after, "After", "after")):
        links = "".join(
            f'<a href="{escape(context.link(other.page.source, ""))}">{escape(other.title)}</a>'
            for other in others
        )
        if links:
            parts.append(f'<div class="br-{side}"><span>{words}</span>{links}</div>')
    return f'<nav class="br-way" aria-label="The way through the shop">{"".join(parts)}</nav>'
