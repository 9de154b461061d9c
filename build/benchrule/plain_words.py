"""Markdown of a procedure as plain words, with its references as they are printed."""

import re

from .handbook import Handbook
from .references import REFERENCE, Reference, parse_reference

BLOCK = re.compile(r"^/// .*?^///\s*$", re.MULTILINE | re.DOTALL)


def plain_words(handbook: Handbook, markdown: str) -> str:
    """A stretch of a station's Markdown as plain words: references as they are printed."""

    def said(found: re.Match[str]) -> str:
        reference = parse_reference(found[1])
        if reference.kind == "plain" or reference.words:
            return reference.id if reference.kind == "plain" else reference.words
        if reference.kind == "tol":
            return handbook.tolerances[reference.id].part(reference.part)
        return _name(handbook, reference)

    text = BLOCK.sub("", markdown)
    text = REFERENCE.sub(said, text)
    text = re.sub(r"^#+ |^:   |^[-*] |^\d+\. ", "", text, flags=re.MULTILINE)
    text = re.sub(r"[*_`]", "", re.sub(r"\[([^\]]*)\]\([^)]*\)", r"\1", text))
    return " ".join(text.split())


def _name(handbook: Handbook, reference: Reference) -> str:
    """What a reference without words of its own prints."""
    if reference.kind == "station":
        station = handbook.station(reference.id)
        return station.title if station else reference.id
    if reference.kind == "calc":
        return handbook.calculators[reference.id].title
    kind = {"term": "glossary", "gauge": "gauges", "source": "sources", "hazard": "hazards",
            "model": "models", "wood": "materials"}[reference.kind]  # fmt: skip
    fields = handbook.entries[kind][reference.id].fields
    return str(fields.get("term") or fields.get("name") or fields.get("title"))
