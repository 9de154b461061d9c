"""The key below a plot: names its lines in two columns and makes the paper longer for them."""

from collections.abc import Sequence

from ..engine.drawing import Svg


def add_key(svg: Svg, entries: Sequence[tuple[str, str]]) -> None:
    """Adds (style, words) pairs below what is drawn."""
    start = svg.height
    rows = (len(entries) + 1) // 2
    for number, (style, words) in enumerate(entries):
        x = 30 + 305 * (number // rows)
        y = start + 14 + 24 * (number % rows)
        if style.endswith("-fill"):
            svg.circle((x + 17, y), 5, style)
        else:
            svg.line((x, y), (x + 34, y), style)
        svg.text((x + 44, y + 5), words)
    svg.height = start + 24 * rows + 12
