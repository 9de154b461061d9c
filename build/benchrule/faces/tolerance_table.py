"""Tables of tolerances: limits in both systems, how measured, with what, what to do when out."""

from collections.abc import Iterable

from calculators.engine.showing import show
from calculators.engine.text import escape

from ..handbook import Tolerance
from .context import GAUGES, Context, source_link


def tolerance_table(context: Context, tolerances: Iterable[Tolerance], caption: str) -> str:
    """A table whose rows can be linked to: ``#tol-<id>``."""
    rows = "\n".join(_row(context, tolerance) for tolerance in tolerances)
    return (
        f'<table class="br-tolerances" data-search-exclude><caption>{escape(caption)}</caption>\n'
        '<thead><tr><th scope="col">What</th><th scope="col">Limits</th>'
        '<th scope="col">How it is measured, and what to do when it is out</th></tr></thead>\n'
        f"<tbody>\n{rows}\n</tbody></table>"
    )


def _row(context: Context, tolerance: Tolerance) -> str:
    metric, inch = tolerance.limits(), tolerance.limits("inch")
    both = f'<span class="br-inch">{escape(inch)}</span>' if inch != metric else ""
    target = tolerance.field("target")
    aim = ""
    if target is not None and "±" not in metric and not metric.startswith("at most"):
        aim = f'<span class="br-aim">aim at {escape(tolerance.figure(target))}</span>'
    decided = tolerance.field("decided")
    source = source_link(context, tolerance.field("source"))
    if decided:
        source += f", {escape(decided['by'])}, {escape(decided['on'])}"
    return (
        f'<tr id="tol-{tolerance.id}">'
        f'<th scope="row">{escape(tolerance.field("feature"))}'
        f'<span class="br-why">{escape(tolerance.field("reason"))}</span></th>\n'
        f'<td class="br-limits"><strong>{escape(metric)}</strong>{both}{aim}</td>\n'
        f"<td><p>{escape(tolerance.field('measure'))} "
        f"{gauge_words(context, tolerance.field('gauge'))}.</p>\n"
        f'<p><strong class="br-out">Out?</strong> {escape(tolerance.field("when_out"))}</p>'
        f'<span class="br-from">{source}</span></td></tr>'
    )


def gauge_words(context: Context, id: str) -> str:
    """A gauge by name with its resolution, linked to its entry."""
    fields = context.handbook.entries["gauges"][id].fields
    link = context.anchor(GAUGES, f"gauge-{id}", fields["name"])
    return f'<span class="br-gauge">{link}, reads {escape(reading(fields["resolution"], fields["unit"]))}</span>'


def reading(value: float, unit: str) -> str:
    """A gauge's figure with as many decimals as it has."""
    decimals = len(f"{value!r}".partition(".")[2].rstrip("0"))
    return show(value, unit, decimals)
