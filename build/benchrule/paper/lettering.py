"""Type for PDF: fonts that are embedded, paragraphs, and letters that the fonts do not have."""

import re
import unicodedata
from collections.abc import Iterable
from functools import cache
from typing import Any
from xml.sax.saxutils import escape

from reportlab.lib.colors import Color, black  # type: ignore[import-untyped]
from reportlab.lib.styles import ParagraphStyle  # type: ignore[import-untyped]
from reportlab.pdfbase import pdfmetrics  # type: ignore[import-untyped]
from reportlab.pdfbase.ttfonts import TTFont  # type: ignore[import-untyped]
from reportlab.pdfgen.canvas import Canvas  # type: ignore[import-untyped]
from reportlab.platypus import Flowable, Paragraph  # type: ignore[import-untyped]

BODY, BOLD = "Vera", "VeraBd"  # they come with reportlab, under a licence of their own
GREY = Color(0.33, 0.33, 0.33)
PALE = Color(0.92, 0.92, 0.92)
RULE = Color(0.55, 0.55, 0.55)
LEADING = 1.18  # from line to line, of the type's size
NARROWED = 0.88  # the fonts are wide; so they are as wide as others, and as high as before
HYPHEN_MINUS = re.compile(r"(?<![\w.)])-(?=\d)")
UNKNOWN = "?"


@cache
def _glyphs() -> frozenset[int]:
    """The characters that both fonts have."""
    held = []
    for name in (BODY, BOLD):
        font = TTFont(name, f"{name}.ttf")
        pdfmetrics.registerFont(font)
        held.append(set(font.face.charToGlyph))
    pdfmetrics.registerFontFamily(BODY, normal=BODY, bold=BOLD, italic=BODY, boldItalic=BOLD)
    return frozenset(set.intersection(*held))


def printed(text: object) -> str:
    """A text in letters that the fonts have.

    A minus is a true minus sign, a raised figure without a glyph stands behind ^, a letter with a
    mark may lose it; of the rest a question mark is left.
    """
    held = _glyphs()
    words = HYPHEN_MINUS.sub("−", str(text))
    return "".join(one if ord(one) in held else _nearest(one, held) for one in words)


def unprintable(texts: Iterable[object]) -> str:
    """The letters of these texts of which ``printed`` leaves nothing that can be read."""
    held = _glyphs()
    letters = {one for text in texts for one in str(text) if not one.isspace()}
    return "".join(
        sorted(one for one in letters if ord(one) not in held and _nearest(one, held) == UNKNOWN)
    )


def _nearest(letter: str, held: frozenset[int]) -> str:
    if letter.isspace():
        return " "
    split = unicodedata.decomposition(letter)
    bare = "".join(
        one
        for one in unicodedata.normalize("NFKD", letter).replace("⁄", "/")
        if not unicodedata.combining(one)
    )
    if not bare or any(ord(one) not in held for one in bare):
        return UNKNOWN
    return f"^{bare}" if split.startswith("<super>") else bare


def markup(text: object) -> str:
    """A text as it stands in a paragraph, in letters that the fonts have."""
    return escape(printed(text))


def bold(text: object) -> str:
    """A text in bold."""
    return f"<b>{markup(text)}</b>"


def grey(text: object, size_pt: float | None = None) -> str:
    """A text that stands back, for what is looked up less often."""
    size = f' size="{size_pt:g}"' if size_pt else ""
    return f'<font color="#{GREY.hexval()[2:]}"{size}>{markup(text)}</font>'


def paragraph(words: str, size_pt: float, *, end: bool = False) -> Any:
    """A paragraph of markup in one size; ``end`` sets it against the right edge."""
    return _Narrowed(Paragraph(words, _style(size_pt, end)))


def width_of(text: object, font: str, size_pt: float) -> float:
    """How wide a text is on one line."""
    words = printed(text)
    return float(pdfmetrics.stringWidth(words, font, size_pt)) * NARROWED


class EmbeddedCanvas(Canvas):  # type: ignore[misc]
    """A PDF under way that names no font but those that it brings along."""

    def __init__(self, *arguments: Any, **options: Any) -> None:
        _glyphs()
        super().__init__(*arguments, **{**options, "initialFontName": BODY})


class _Narrowed(Flowable):  # type: ignore[misc]
    """A paragraph with its letters drawn together sideways. It is never split."""

    def __init__(self, words: Any) -> None:
        super().__init__()
        self.words = words

    def wrap(self, width: float, height: float) -> tuple[float, float]:
        """How wide and high it is in a column."""
        _, self.height = self.words.wrap(width / NARROWED, height)
        self.width = width
        return self.width, self.height

    def draw(self) -> None:
        """Draws it where the page's layout has put it."""
        self.canv.scale(NARROWED, 1)
        self.words.drawOn(self.canv, 0, 0)


@cache
def _style(size_pt: float, end: bool) -> Any:
    _glyphs()
    return ParagraphStyle(
        f"{size_pt} {end}", fontName=BODY, fontSize=size_pt, leading=size_pt * LEADING,
        textColor=black, alignment=2 if end else 0, splitLongWords=1,
    )  # fmt: skip
