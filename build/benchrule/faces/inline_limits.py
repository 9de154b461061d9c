"""A tolerance's figures in running text, those of the reader's model where there are more."""

import json

from calculators.engine.text import escape

from ..handbook import Tolerance
from ..references import Reference
from .context import Context


def inline_limits(context: Context, tolerance: Tolerance, reference: Reference) -> str:
    """The limits, or the one figure that the reference asks for, linked to the row.

    Where models differ, the model of the printed figure stands behind it and those of the others
    in ``data-by-model``, for the page to change when the reader chooses a model.
    """
    href = escape(context.link(f"stations/{tolerance.station}.md", f"tol-{tolerance.id}"))
    title = escape(tolerance.field("feature"))
    words = reference.words or tolerance.part(reference.part)
    link = f'<a href="{href}" class="br-tol" title="{title}">{escape(words)}</a>'
    book = context.handbook
    general = book.general_models(tolerance)
    own = tolerance.field("by_model")
    if reference.words or not own:
        return link
    names = {id: str(entry.fields["name"]) for id, entry in book.models.items()}
    figures = {id: tolerance.part(reference.part) for id in general}
    for id in own:
        model = tolerance.for_model(id)
        if reference.part == "limits" or model.field(reference.part) is not None:
            figures[id] = model.part(reference.part)
    general_name = ", ".join(names[id] for id in general)
    data = escape(json.dumps({"": words, **figures}, ensure_ascii=False, separators=(",", ":")))
    return (
        f'<span class="br-by-model" data-by-model="{data}">{link} '
        f'<small data-general="{escape(general_name)}">({escape(general_name)})</small></span>'
    )
