"""Links a term of the glossary where a page first uses it, outside headings, links and code."""

import re
import xml.etree.ElementTree as etree
from functools import cache

from ..handbook import Handbook
from .context import GLOSSARY, Context

SKIPPED = {"a", "code", "pre", "h1", "h2", "h3", "h4", "h5", "h6", "script", "dt"}


class TermLinks:
    """Finds the terms in one page's text and links the first use of each."""

    def __init__(self, context: Context) -> None:
        self.context = context
        self.pattern, self.terms = _pattern(context.handbook)

    def run(self, element: etree.Element) -> None:
        """Links the terms below ``element``, in the order of the text."""
        if element.tag in SKIPPED or not self.terms:
            return
        at = self._link(element, 0, element.text, lambda text: setattr(element, "text", text))
        while at < len(element):
            child = element[at]
            self.run(child)
            at = self._link(
                element, at + 1, child.tail, lambda text, c=child: setattr(c, "tail", text)
            )

    def _link(self, parent: etree.Element, at: int, text: str | None, keep: object) -> int:
        """Links the terms in one piece of text; new links go into ``parent`` from ``at``.

        Returns the place behind them.
        """
        while text:
            found = self._first(text)
            if found is None:
                break
            id = self.terms[_key(found[1])]
            self.context.terms_linked.add(id)
            keep(text[: found.start()])  # type: ignore[operator]
            link = etree.Element(
                "a",
                {
                    "href": self.context.link(GLOSSARY, f"term-{id}"),
                    "class": "br-term",
                    "title": str(self.context.handbook.entries["glossary"][id].fields["meaning"]),
                },
            )
            link.text = found[0]
            parent.insert(at, link)
            at += 1
            text = text[found.end() :]
            link.tail = text
            keep = lambda text, link=link: setattr(link, "tail", text)  # noqa: E731
        return at

    def _first(self, text: str) -> re.Match[str] | None:
        for found in self.pattern.finditer(text):
            if self.terms[_key(found[1])] not in self.context.terms_linked:
                return found
        return None


def _key(words: str) -> str:
    return " ".join(words.lower().split())


def linked_terms(handbook: Handbook) -> dict[str, str]:
    """Words → id of every term that is linked by itself; not those that say ``link: never``."""
    return {
        _key(str(entry.fields["term"])): id
        for id, entry in handbook.entries["glossary"].items()
        if entry.fields.get("link") != "never"
    }


def _pattern(handbook: Handbook) -> tuple[re.Pattern[str], dict[str, str]]:
    terms = linked_terms(handbook)
    return _compiled(tuple(sorted(terms, key=len, reverse=True))), terms


@cache
def _compiled(words: tuple[str, ...]) -> re.Pattern[str]:
    return re.compile(
        r"(?<![\w-])("
        + "|".join(re.escape(word).replace(r"\ ", r"\s+") for word in words)
        + r")s?(?![\w-])",
        re.IGNORECASE,
    )
