"""Cards: a linked plate with a name and a line of words, as the lists of pages show them."""

from collections.abc import Iterable

from calculators.engine.text import escape

from .context import Context


def cards(context: Context, items: Iterable[tuple[str, object, str]]) -> str:
    """A list of cards; each item is a page, its name, and its words as HTML."""
    made = "".join(
        f'<li><a href="{escape(context.link(page, ""))}">'
        f'<span class="br-plate-title">{escape(name)}</span>'
        f'<span class="br-plate-words">{words}</span></a></li>'
        for page, name, words in items
    )
    return f'<ul class="br-map br-cards">{made}</ul>'
