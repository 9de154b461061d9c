"""Names the marks of a plot below it."""

from collections.abc import Sequence

from .drawing import Svg

LEFT, COLUMN, ROW = 62.0, 290.0, 26.0


def legend(svg: Svg, marks: Sequence[tuple[str, str]]) -> None:
    """Two columns of (class, words) below the drawing; the paper grows by what they need."""
    top = svg.height
    rows = (len(marks) + 1) // 2
    for number, (style, words) in enumerate(marks):
        x, y = LEFT + COLUMN * (number // rows), top + 12 + ROW * (number % rows)
        if style in ("good", "bad", "wood-light", "wood-mid", "wood-dark", "metal"):
            svg.rectangle((x, y - 8), 34, 16, style)
        elif style.endswith("-fill"):
            svg.circle((x + 17, y), 5, style)
        else:
            svg.line((x, y), (x + 34, y), style)
        svg.text((x + 44, y + 5), words)
    svg.height = top + ROW * rows + 10
