"""The pages that gather entries: hazards, glossary, gauges, sources."""

from calculators.engine.declaration import Source
from calculators.engine.judging import show_own
from calculators.engine.text import escape

from ..data import Entry
from .context import GLOSSARY, HAZARDS, Context, source_link
from .drawings import drawing


def hazard_cards(context: Context, ids: list[str], brief: bool) -> str:
    """Cautions for a station (brief: linked to the full entry) or the whole list."""
    cards = [_hazard(context, context.handbook.entries["hazards"][id], brief) for id in ids]
    return (
        f'<div class="br-hazards {"br-brief" if brief else "br-full"}" data-search-exclude>'
        f"{''.join(cards)}</div>"
    )


def hazards_by_agent(context: Context) -> str:
    """Every hazard, gathered by what does the harm, with links to each agent."""
    agents: dict[str, list[str]] = {}
    for id, entry in context.handbook.entries["hazards"].items():
        agents.setdefault(str(entry.fields["agent"]), []).append(id)
    order = sorted(
        agents, key=lambda agent: (AGENTS.index(agent) if agent in AGENTS else 99, agent)
    )
    links = "".join(
        f'<a href="#agent-{agent.replace(" ", "-")}">{escape(agent.capitalize())}</a>'
        for agent in order
    )
    parts = "".join(
        f'<h2 id="agent-{agent.replace(" ", "-")}">{escape(agent.capitalize())}</h2>'
        f"{hazard_cards(context, agents[agent], brief=False)}"
        for agent in order
    )
    return f'<nav class="br-quick" aria-label="By what does the harm">{links}</nav>{parts}'


# As a new hire should learn them: what cannot be seen first.
AGENTS = (
    "dust", "shell dust", "solvent", "chemical", "hot work", "rotating tool", "blade", "noise",
    "lifting", "pressure", "electricity",
)  # fmt: skip


def _hazard(context: Context, entry: Entry, brief: bool) -> str:
    fields = entry.fields
    name = escape(fields["name"])
    if brief:
        title = f'<p class="br-hazard-name">{context.anchor(HAZARDS, f"hazard-{entry.id}", fields["name"])}</p>'
    else:
        title = f'<h3 id="hazard-{entry.id}">{name}</h3>'
    cautions = "".join(f"<li>{escape(text)}</li>" for text in fields["cautions"])
    wear = ""
    if fields.get("protection"):
        wear = f'<p class="br-wear"><strong>Wear</strong> {escape(", ".join(fields["protection"]))}</p>'
    limits, where = "", ""
    agent = f'<p class="br-agent">{escape(fields["agent"])}</p>' if brief else ""
    if not brief:
        limits = "".join(
            f"<li>{escape(limit['what'])}: {escape(limit['value'])} {escape(with_powers(limit['unit']))}, "
            f"{source_link(context, limit['source'])}, as of {escape(limit['as_of'])}</li>"
            for limit in fields.get("limits", [])
        )
        limits = f"<p>Published limits:</p><ul>{limits}</ul>" if limits else ""
        stations = [
            context.anchor(station.page.source, "", station.title)
            for station in context.handbook.stations
            if entry.id in station.field("hazards")
        ]
        where = f"<p>Where: {', '.join(stations)}.</p>" if stations else ""
    return (
        f'<section class="br-hazard" data-agent="{escape(fields["agent"])}">{title}'
        f"{agent}"
        f"<p>{escape(fields['harm'])}</p><ul>{cautions}</ul>{wear}{limits}{where}"
        f'<p class="br-defer">{escape(fields["defer"])}</p></section>'
    )


def with_powers(unit: str) -> str:
    """A published unit as it is printed: ``mg/m3`` is mg/m³."""
    return unit.replace("m3", "m³").replace("m2", "m²")


def glossary_list(context: Context) -> str:
    """Every term with its meaning and the other words people use."""
    lines = []
    terms = context.handbook.entries["glossary"]
    for entry in sorted(terms.values(), key=lambda entry: str(entry.fields["term"]).lower()):
        others = ", ".join(entry.fields.get("other_words", []))
        see = ", ".join(
            context.anchor(GLOSSARY, f"term-{id}", terms[id].fields["term"])
            for id in entry.fields.get("see", [])
            if id in terms
        )
        lines.append(
            f'<dt id="term-{entry.id}">{escape(entry.fields["term"])}</dt>'
            f"<dd>{escape(entry.fields['meaning'])}"
            + (f'<span class="br-others">Also: {escape(others)}</span>' if others else "")
            + (f'<span class="br-others">See {see}</span>' if see else "")
            + (
                drawing(context, name, again=f"g-{entry.id}")
                if (name := entry.fields.get("drawing"))
                else ""
            )
            + "</dd>"
        )
    return f'<dl class="br-glossary" data-search-exclude>{"".join(lines)}</dl>'


def gauge_table(context: Context) -> str:
    """Every gauge: what it reads, how well."""
    rows = []
    for entry in context.handbook.entries["gauges"].values():
        fields = entry.fields
        rows.append(
            f'<tr id="gauge-{entry.id}"><th scope="row" data-label="Gauge">{escape(fields["name"])}</th>\n'
            f'<td data-label="Reads">{escape(show_own(fields["resolution"], fields["unit"]))}</td>\n'
            f'<td data-label="Uncertainty (k = 2)">{escape(show_own(fields["uncertainty"], fields["unit"]))}</td>\n'
            f'<td data-label="Note">{escape(fields.get("note", ""))} '
            f"{source_link(context, fields['source'])}</td></tr>"
        )
    return (
        '<table class="br-tolerances br-gauges" data-search-exclude aria-label="Gauges"><thead><tr>'
        '<th scope="col">Gauge</th><th scope="col">Reads</th><th scope="col">Uncertainty (k = 2)</th>'
        f'<th scope="col">Note</th></tr></thead><tbody>\n{"".join(rows)}\n</tbody></table>'
    )


def source_list(context: Context) -> str:
    """Every source of the handbook and of its calculators."""
    merged: dict[str, dict[str, object]] = {
        id: dict(entry.fields) for id, entry in context.handbook.entries["sources"].items()
    }
    for calculator in context.handbook.calculators.values():
        for source in calculator.sources:
            merged.setdefault(source.id, _fields(source))
    lines = "".join(_source(id, fields) for id, fields in sorted(merged.items(), key=_by_kind))
    return f'<dl class="br-glossary br-sources" data-search-exclude>{lines}</dl>'


def _by_kind(item: tuple[str, dict[str, object]]) -> tuple[int, str]:
    order = ("practice", "shop", "published", "library")
    return order.index(str(item[1]["kind"])), str(item[1]["title"]).lower()


def _fields(source: Source) -> dict[str, object]:
    return {
        "kind": source.kind, "title": source.title, "author": source.author, "year": source.year,
        "note": source.note,
    }  # fmt: skip


def _source(id: str, fields: dict[str, object]) -> str:
    parts = [
        str(fields[name]) for name in ("author", "edition", "year", "where") if fields.get(name)
    ]
    link = fields.get("link")
    address = f' <span class="br-others">{escape(link)}</span>' if link else ""
    note = f'<span class="br-others">{escape(fields["note"])}</span>' if fields.get("note") else ""
    return (
        f'<dt id="source-{id}">{escape(fields["title"])} '
        f'<span class="br-agent">{escape(fields["kind"])}</span></dt>'
        f"<dd>{escape(', '.join(parts))}{address}{note}</dd>"
    )
