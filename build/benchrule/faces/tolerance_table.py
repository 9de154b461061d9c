"""Tables of tolerances: limits in both systems and for each model, how measured, when out."""

import json
from collections.abc import Iterable
from typing import Any

from calculators.engine.judging import (
    acceptance_zone,
    accepts_nothing,
    is_coarse,
    show_own,
    uncertainty_in,
)
from calculators.engine.text import escape

from ..handbook import Tolerance
from .context import GAUGES, Context, source_link


def tolerance_table(context: Context, tolerances: Iterable[Tolerance], caption: str) -> str:
    """A table whose rows can be linked to, ``#tol-<id>``, and measured against."""
    rows = "\n".join(_row(context, tolerance) for tolerance in tolerances)
    return (
        f'<table class="br-tolerances" data-search-exclude><caption>{escape(caption)}</caption>\n'
        '<thead><tr><th scope="col">What</th><th scope="col">Limits</th>'
        '<th scope="col">How it is measured, and what to do when it is out</th></tr></thead>\n'
        f"<tbody>\n{rows}\n</tbody></table>"
    )


def _row(context: Context, tolerance: Tolerance) -> str:
    book = context.handbook
    decided = tolerance.field("decided")
    source = source_link(context, tolerance.field("source"))
    if decided:
        source += f", {escape(decided['by'])}, {escape(decided['on'])}"
    station = book.station(tolerance.station)
    revision = f", revision {station.field('revision')}" if station else ""
    return (
        f'<tr id="tol-{tolerance.id}" {_data(context, tolerance)}>'
        f'<th scope="row">{escape(tolerance.field("feature"))}'
        f'<span class="br-why">{escape(tolerance.field("reason"))}</span></th>\n'
        f'<td class="br-limits">{limits_for_models(context, tolerance)}</td>\n'
        f"<td><p>{escape(tolerance.field('measure'))} "
        f"{gauge_words(context, tolerance)}.</p>\n"
        f'<p><strong class="br-out">Out?</strong> {escape(tolerance.field("when_out"))}</p>'
        f'<span class="br-from">{source}{revision}</span></td></tr>'
    )


def limits_for_models(context: Context, tolerance: Tolerance) -> str:
    """The limits, and below them those of each model that has its own."""
    models = context.handbook.models
    general = context.handbook.general_models(tolerance)
    names = ", ".join(str(models[id].fields["name"]) for id in general)
    made = [_limits(tolerance, general, names)]
    for id in models:
        if id in (tolerance.field("by_model") or {}) and tolerance.holds_for(id):
            made.append(_limits(tolerance.for_model(id), [id], str(models[id].fields["name"])))
    return "".join(made)


def _limits(tolerance: Tolerance, models: list[str], names: str) -> str:
    limits, also = tolerance.limits(), tolerance.also()
    both = f'<span class="br-inch">{escape(also)}</span>' if also else ""
    target, aim = tolerance.field("target"), ""
    if target is not None and "±" not in limits and not limits.startswith("at most"):
        aim = f'<span class="br-aim">aim at {escape(tolerance.figure(target))}</span>'
    of = f'<span class="br-model">{escape(names)}</span>' if names else ""
    which = f' data-models="{" ".join(models)}"' if models else ""
    return f"<div{which}>{of}<strong>{escape(limits)}</strong>{both}{aim}</div>"


def gauge_words(context: Context, tolerance: Tolerance) -> str:
    """A gauge by name with its resolution, linked, and a warning where it is coarse."""
    id = tolerance.field("gauge")
    fields = context.handbook.entries["gauges"][id].fields
    link = context.anchor(GAUGES, f"gauge-{id}", fields["name"])
    coarse = ""
    uncertainty = uncertainty_in(fields["uncertainty"], fields["unit"], tolerance.field("unit"))
    if is_coarse(tolerance.field("low"), tolerance.field("high"), uncertainty):
        coarse = (
            '. <em class="br-coarse">Coarse for this limit: '
            f"accept {escape(_accepted(tolerance, uncertainty))} only</em>"
        )
    reads = escape(show_own(fields["resolution"], fields["unit"]))
    return f'<span class="br-gauge">{link}, reads {reads}</span>{coarse}'


def _accepted(tolerance: Tolerance, uncertainty: float) -> str:
    """The readings that are accepted, in words."""
    low, high = tolerance.field("low"), tolerance.field("high")
    zone = acceptance_zone(low, high, uncertainty)
    if zone is None or accepts_nothing(low, high, uncertainty):
        return "nothing; a finer gauge is needed"
    least, most = zone
    decimals, figure = tolerance.field("decimals"), tolerance.figure
    if least is None:
        return f"readings of at most {figure(most or 0.0)}"
    if most is None:
        return f"readings of at least {figure(least)}"
    if round(least, decimals) == round(most, decimals):
        return f"a reading of {figure(most)}"
    return f"readings of {figure(least)} to {figure(most)}"


def _data(context: Context, tolerance: Tolerance) -> str:
    """What the look-up filters by and *Is it in?* measures against, as data attributes."""
    field = tolerance.field
    words = [field("feature"), field("part"), *(field("other_words") or [])]
    data: dict[str, Any] = {
        "station": tolerance.station,
        "part": field("part"),
        "gauge": field("gauge"),
        "words": " · ".join(str(word) for word in words).lower(),
        "limits": json.dumps(_figures(context, tolerance), separators=(",", ":")),
    }
    if field("applies_to"):
        data["only"] = " ".join(field("applies_to"))
    return " ".join(f'data-{name}="{escape(value)}"' for name, value in data.items())


def _figures(context: Context, tolerance: Tolerance) -> dict[str, Any]:
    """Low and high in the tolerance's unit: the general ones under "", each model's by its id."""
    figures: dict[str, Any] = {
        "unit": tolerance.field("unit"),
        "decimals": tolerance.field("decimals"),
    }
    figures[""] = [tolerance.field("low"), tolerance.field("high")]
    for id in tolerance.field("by_model") or {}:
        own = tolerance.for_model(id)
        figures[id] = [own.field("low"), own.field("high")]
    return figures
