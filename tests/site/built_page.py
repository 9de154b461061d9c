"""A built page read as a tree, for what must hold of its markup before any script runs."""

from collections.abc import Iterator
from dataclasses import dataclass, field
from html.parser import HTMLParser
from pathlib import Path

# Elements that have no end tag.
VOID = {"area", "base", "br", "col", "embed", "hr", "img", "input", "link", "meta", "source",
        "track", "wbr"}  # fmt: skip


@dataclass
class Element:
    """One element: its tag, attributes, parent, and what it holds, text and elements in order."""

    tag: str
    attributes: dict[str, str]
    parent: "Element | None" = None
    inside: "list[Element | str]" = field(default_factory=list)

    def every(self, *tags: str) -> "Iterator[Element]":
        """Every element below this one, in the order of the page; of ``tags`` where given."""
        for one in self.inside:
            if isinstance(one, Element):
                if not tags or one.tag in tags:
                    yield one
                yield from one.every(*tags)

    def above(self) -> "Iterator[Element]":
        """This element and those it stands in, innermost first."""
        one: Element | None = self
        while one is not None:
            yield one
            one = one.parent

    def text(self) -> str:
        """What it says, with the words of pictures, without what is hidden from being read out."""
        if self.attributes.get("aria-hidden") == "true" or self.tag in ("script", "style"):
            return ""
        said = "".join(one if isinstance(one, str) else one.text() for one in self.inside)
        return f"{said} {self.attributes.get('alt', '')}".strip() if self.tag == "img" else said

    def says(self) -> str:
        """Its name: a label of its own, or what it says."""
        return " ".join((self.attributes.get("aria-label") or self.text()).split())

    def hidden(self) -> bool:
        """Whether it, or what it stands in, is hidden from being read out."""
        return any(
            one.attributes.get("aria-hidden") == "true" or "hidden" in one.attributes
            for one in self.above()
        )

    def where(self) -> str:
        """The element as a fault names it."""
        shown = " ".join(f'{name}="{value}"' for name, value in self.attributes.items())
        return f"<{self.tag} {shown}> {self.says()}"[:160]


class _Reader(HTMLParser):
    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.root = Element("#page", {})
        self._at = self.root

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        made = Element(tag, {name: value or "" for name, value in attrs}, self._at)
        self._at.inside.append(made)
        if tag not in VOID:
            self._at = made

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self._at.inside.append(Element(tag, {name: value or "" for name, value in attrs}, self._at))

    def handle_endtag(self, tag: str) -> None:
        for one in self._at.above():
            if one.tag == tag and one.parent is not None:
                self._at = one.parent
                return

    def handle_data(self, data: str) -> None:
        self._at.inside.append(data)


def read_page(path: Path) -> Element:
    """The tree of a built page. End tags that may be left out close with what holds them."""
    reader = _Reader()
    reader.feed(path.read_text("utf-8"))
    return reader.root
