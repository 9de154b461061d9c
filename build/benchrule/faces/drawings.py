"""The shop's own drawings, placed in a page."""

from calculators.engine.text import escape

from .context import Context


def drawing(context: Context, name: str, caption: str = "", again: str = "") -> str:
    """``docs/drawings/<name>.svg`` as a figure.

    ``again`` makes its ids unique where the same drawing may stand twice on a page.
    """
    svg = (context.handbook.docs / "drawings" / f"{name}.svg").read_text("utf-8")
    svg = svg[svg.index("<svg") :]
    if again:
        svg = svg.replace(f"{name}-", f"{again}-{name}-")
    below = f"<figcaption>{escape(caption)}</figcaption>" if caption else ""
    return f'<figure class="br-figure">{svg}{below}</figure>'
