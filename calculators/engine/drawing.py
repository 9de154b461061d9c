"""SVG drawings as text: the same picture in the static page, the live page and on paper.

Shapes carry classes only; the site's style sheet gives them ink and colour, light or dark:
ink, thin, hidden, accent, dim (strokes), wood-light, wood-mid, wood-dark, metal, glue, lacquer,
felt, paper (fills), label and label-small (text). Coordinates are user units; a drawing is some
640 wide, with labels 16 high.
"""

from collections.abc import Iterable

from .text import escape

Point = tuple[float, float]


def short(number: float) -> str:
    """A coordinate: five digits are a hundredth of a unit on any drawing of ours."""
    return f"{number:.5g}"


def points_text(points: Iterable[Point]) -> str:
    """Points as SVG writes them."""
    return " ".join(f"{short(x)},{short(y)}" for x, y in points)


class Svg:
    """A drawing under way. ``name`` makes its ids unique on a page."""

    def __init__(
        self, name: str, title: str, description: str, width: float, height: float
    ) -> None:
        self.width = width
        self.height = height
        self._name = name
        self._title = title
        self._description = description
        self._parts: list[str] = []

    def raw(self, markup: str) -> None:
        """Adds SVG text as it is."""
        self._parts.append(markup)

    def line(self, start: Point, end: Point, style: str = "ink") -> None:
        """A straight line."""
        x1, y1, x2, y2 = map(short, (*start, *end))
        self.raw(f'<line class="{style}" x1="{x1}" y1="{y1}" x2="{x2}" y2="{y2}"/>')

    def polyline(self, points: Iterable[Point], style: str = "ink") -> None:
        """A line through points."""
        self.raw(f'<polyline class="{style} open" points="{points_text(points)}"/>')

    def polygon(self, points: Iterable[Point], style: str) -> None:
        """A closed shape."""
        self.raw(f'<polygon class="{style}" points="{points_text(points)}"/>')

    def rectangle(self, corner: Point, width: float, height: float, style: str) -> None:
        """A rectangle from its upper left corner."""
        x, y, w, h = map(short, (*corner, width, height))
        self.raw(f'<rect class="{style}" x="{x}" y="{y}" width="{w}" height="{h}"/>')

    def circle(self, centre: Point, radius: float, style: str = "ink") -> None:
        """A circle."""
        x, y, r = map(short, (*centre, radius))
        self.raw(f'<circle class="{style}" cx="{x}" cy="{y}" r="{r}"/>')

    def path(self, data: str, style: str = "ink") -> None:
        """A path from SVG path text."""
        self.raw(f'<path class="{style}" d="{data}"/>')

    def text(
        self, at: Point, words: str, anchor: str = "start", style: str = "label", turn: float = 0
    ) -> None:
        """Words; ``anchor`` is start, middle or end, ``turn`` degrees clockwise about the point."""
        x, y = map(short, at)
        turned = f' transform="rotate({short(turn)} {x} {y})"' if turn else ""
        self.raw(
            f'<text class="{style}" x="{x}" y="{y}" text-anchor="{anchor}"{turned}>'
            f"{escape(words)}</text>"
        )

    def dimension(
        self, start: Point, end: Point, words: str, offset: float = 0, above: bool = True
    ) -> None:
        """A dimension line, level or upright, with ticks at its ends and its words beside it."""
        (x1, y1), (x2, y2) = start, end
        if abs(y2 - y1) <= abs(x2 - x1):
            y = (y1 if offset == 0 else max(y1, y2) if offset > 0 else min(y1, y2)) + offset
            for x, from_y in ((x1, y1), (x2, y2)):
                self.line((x, from_y), (x, y), "thin")
                self.line((x - 4, y + 4), (x + 4, y - 4), "dim")
            self.line((x1, y), (x2, y), "dim")
            self.text(((x1 + x2) / 2, y - 6 if above else y + 18), words, "middle")
        else:
            x = (x1 if offset == 0 else max(x1, x2) if offset > 0 else min(x1, x2)) + offset
            for y, from_x in ((y1, x1), (y2, x2)):
                self.line((from_x, y), (x, y), "thin")
                self.line((x - 4, y + 4), (x + 4, y - 4), "dim")
            self.line((x, y1), (x, y2), "dim")
            anchor, shift = ("start", 8) if offset >= 0 else ("end", -8)
            self.text((x + shift, (y1 + y2) / 2 + 5), words, anchor)

    def markup(self) -> str:
        """The finished drawing."""
        name = escape(self._name)
        return (
            f'<svg class="br-drawing" xmlns="http://www.w3.org/2000/svg" role="img" '
            f'viewBox="0 0 {short(self.width)} {short(self.height)}" '
            f'aria-labelledby="{name}-t {name}-d">'
            f'<title id="{name}-t">{escape(self._title)}</title>'
            f'<desc id="{name}-d">{escape(self._description)}</desc>'
            f"{''.join(self._parts)}</svg>"
        )
