"""Links a term of the glossary where a page first uses it, outside headings, links and code."""

import xml.etree.ElementTree as etree
from collections.abc import Callable
from functools import partial

from ..handbook import Handbook
from ..phrases import Phrases
from .context import GLOSSARY, Context

SKIPPED = {"a", "code", "pre", "h1", "h2", "h3", "h4", "h5", "h6", "script", "dt"}


class TermLinks:
    """Finds the terms in one page's text and links the first use of each."""

    def __init__(self, context: Context, terms: Phrases) -> None:
        self.context = context
        self.terms = terms

    def run(self, element: etree.Element) -> None:
        """Links the terms below ``element``, in the order of the text."""
        if element.tag in SKIPPED:
            return
        at = self._link(element, 0, element.text, partial(setattr, element, "text"))
        while at < len(element):
            child = element[at]
            self.run(child)
            at = self._link(element, at + 1, child.tail, partial(setattr, child, "tail"))

    def _link(
        self, parent: etree.Element, at: int, text: str | None, keep: Callable[[str], None]
    ) -> int:
        """Links the terms in one piece of text; new links go into ``parent`` from ``at``.

        Returns the place behind them.
        """
        if not text:
            return at
        from_ = 0
        for start, end, id in self.terms.find(text):
            if id in self.context.terms_linked:
                continue
            self.context.terms_linked.add(id)
            keep(text[from_:start])
            link = self._made(id, text[start:end])
            parent.insert(at, link)
            at += 1
            from_ = end
            link.tail = text[end:]
            keep = partial(setattr, link, "tail")
        return at

    def _made(self, id: str, words: str) -> etree.Element:
        entry = self.context.handbook.entries["glossary"][id]
        attributes = {
            "href": self.context.link(GLOSSARY, f"term-{id}"),
            "class": "br-term",
            "title": str(entry.fields["meaning"]),
        }
        link = etree.Element("a", attributes)
        link.text = words
        return link


def linked_terms(handbook: Handbook) -> Phrases:
    """Every term that is linked by itself; not those that say ``link: never``."""
    return Phrases(
        {
            str(entry.fields["term"]): id
            for id, entry in handbook.entries["glossary"].items()
            if entry.fields.get("link") != "never"
        }
    )
