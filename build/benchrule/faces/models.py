"""Pages of the shop's instrument models, and the words for a model elsewhere."""

from calculators.engine.declaration import Input, Number
from calculators.engine.reading import ReadingError, read_quantity
from calculators.engine.showing import show
from calculators.engine.text import escape

from ..data import Entry
from ..models import values_for
from .cards import cards
from .context import Context, calculator_page, model_page, source_link

INVENTED = "Invented, for demonstration."


def model_cards(context: Context) -> str:
    """Every model with a line on what it is."""
    return cards(
        context,
        (
            (model_page(id), entry.fields["name"], escape(entry.fields["summary"]))
            for id, entry in context.handbook.models.items()
        ),
    )


def model_choice(context: Context) -> str:
    """The reader's choice of a model; the script keeps it on the device. Empty without models."""
    models = context.handbook.models
    if not models:
        return ""
    options = "".join(
        f'<option value="{id}">{escape(entry.fields["name"])}</option>'
        for id, entry in models.items()
    )
    return (
        '<label class="br-model-choice">Model<select data-model-choice>'
        f'<option value="">All models</option>{options}</select></label>'
    )


def model_sheet(context: Context, id: str) -> str:
    """What a model is: its figures, and the limits that are its own."""
    entry = context.handbook.models[id]
    fields = entry.fields
    made = f'<p class="br-summary">{escape(fields["summary"])}</p>'
    if fields.get("invented"):
        made += f"<p><em>{INVENTED}</em></p>"
    decided = fields.get("decided")
    by = f", {escape(decided['by'])}, {escape(decided['on'])}" if decided else ""
    made += f"<p>{source_link(context, fields['source'])}{by}.</p>"
    return (
        f"{made}{_figures(context, entry)}{_own_limits(context, id)}{_calculators(context, entry)}"
    )


def _figures(context: Context, model: Entry) -> str:
    """The values that calculators take, under the labels that the calculators give them."""
    rows, seen = [], set()
    for calculator in context.handbook.calculators.values():
        given = values_for(model, calculator)
        for item in calculator.inputs:
            if item.name in given and item.label not in seen and isinstance(item, Number):
                seen.add(item.label)
                rows.append(_figure(item, given[item.name], context.handbook.units))
    return (
        '<h2 id="figures">Figures</h2><table class="br-tolerances br-values" aria-labelledby="figures">'
        f'<thead><tr><th scope="col">What</th>{_heads(context)}</tr></thead>'
        f"<tbody>{''.join(rows)}</tbody></table>"
    )


def _heads(context: Context) -> str:
    """The columns of both systems, that of the shop first."""
    heads = ("mm", "inch") if context.handbook.units == "metric" else ("inch", "mm")
    return "".join(f'<th scope="col">{head}</th>' for head in heads)


def _figure(item: Input, given: object, units: str) -> str:
    assert isinstance(item, Number)
    try:
        value = read_quantity(str(given), item.unit)
    except ReadingError:  # the check of the models has said so
        return ""
    decimals = 0 if item.whole else item.decimals
    systems = (units, "inch" if units == "metric" else "metric")
    first, other = (show(value, item.unit, decimals, system) for system in systems)
    return (
        f'<tr><th scope="row">{escape(item.label)}</th><td>{escape(first)}</td>'
        f"<td>{escape(other) if other != first else ''}</td></tr>"
    )


def _own_limits(context: Context, id: str) -> str:
    """The limits that differ from model to model, as they are for this one."""
    rows = []
    for tolerance in context.handbook.tolerances.values():
        if not tolerance.field("by_model") or not tolerance.holds_for(id):
            continue
        own = tolerance.for_model(id)
        link = context.anchor(
            f"stations/{tolerance.station}.md", f"tol-{tolerance.id}", tolerance.field("feature")
        )
        rows.append(
            f'<tr><th scope="row">{link}</th><td class="br-limits"><strong>{escape(own.limits())}'
            f"</strong></td><td>{escape(own.also())}</td></tr>"
        )
    if not rows:
        return ""
    return (
        '<h2 id="limits">Limits that differ from model to model</h2>'
        '<table class="br-tolerances br-values" aria-labelledby="limits"><thead><tr>'
        f'<th scope="col">What</th>{_heads(context)}</tr></thead>'
        f"<tbody>{''.join(rows)}</tbody></table>"
    )


def _calculators(context: Context, model: Entry) -> str:
    links = "".join(
        f'<li><a href="{escape(context.link(calculator_page(name), ""))}" '
        f'data-with-model="{model.id}">{escape(calculator.title)}</a></li>'
        for name, calculator in context.handbook.calculators.items()
        if values_for(model, calculator)
    )
    if not links:
        return ""
    return f'<h2 id="calculators">Calculators with these figures</h2><ul>{links}</ul>'
