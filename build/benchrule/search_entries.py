"""Search entries of their own for tolerances, calculators and terms, each landing on its row.

The words that a newcomer would type are put in: an entry that mentions a glossary term, or one
of its other words, carries all the words for that thing. They go into the index's field for tags,
which weighs most, together with the entry's own title; the pages do not show them.
"""

import re
from collections.abc import Iterable

from .checks.stations import parts_of
from .handbook import Handbook, Tolerance

SECTIONS = {
    "Purpose", "What good looks like", "Before you start", "Steps", "What goes wrong", "Tolerances",
    "Calculator", "Before you pass it on", "Practice", "Incoming checks", "Tools",
    "Hazards and cautions",
}  # fmt: skip

Entry = dict[str, object]


class Vocabulary:
    """The glossary's words for a thing, and which of them a text mentions."""

    def __init__(self, handbook: Handbook) -> None:
        self._groups: list[tuple[re.Pattern[str], list[str]]] = []
        for entry in handbook.entries["glossary"].values():
            words = [str(entry.fields["term"]), *map(str, entry.fields.get("other_words", []))]
            pattern = "|".join(re.escape(word) for word in sorted(words, key=len, reverse=True))
            self._groups.append((re.compile(rf"\b(?:{pattern})s?\b", re.IGNORECASE), words))

    def other_words(self, text: str) -> list[str]:
        """Every word for every thing that ``text`` mentions, but those it has already."""
        found: list[str] = []
        lower = text.lower()
        for pattern, words in self._groups:
            if pattern.search(text):
                found += [word for word in words if word.lower() not in lower]
        return found


def search_entries(handbook: Handbook, address: dict[str, str]) -> Iterable[Entry]:
    """The entries; ``address`` maps a page's source to its address in the site."""
    vocabulary = Vocabulary(handbook)
    for tolerance in handbook.tolerances.values():
        yield _tolerance(handbook, tolerance, address, vocabulary)
    for name, calculator in handbook.calculators.items():
        labels = ", ".join(item.label for item in calculator.inputs)
        text = f"{calculator.summary} Asks: {labels}."
        yield _entry(
            f"{address[f'calculators/{name}.md']}#calc-{name}", f"{calculator.title}: calculator",
            text, [*calculator.other_words, *vocabulary.other_words(calculator.title)], 2,
        )  # fmt: skip
    for entry in handbook.entries["glossary"].values():
        yield _entry(
            f"{address['glossary.md']}#term-{entry.id}", str(entry.fields["term"]),
            str(entry.fields["meaning"]), entry.fields.get("other_words", []), 1.5,
        )  # fmt: skip


def tune_entries(handbook: Handbook, entries: list[Entry], address: dict[str, str]) -> None:
    """Lets the index's own entries for pages and headings be found as well as our rows.

    A page as a whole is found by its title and summary; a heading by its title and every other
    word for what the title names.
    """
    vocabulary = Vocabulary(handbook)
    faults = {
        part.title
        for station in handbook.stations
        for section in parts_of(station.page.body)
        if section.title == "What goes wrong"
        for part in section.parts
    }
    stations = {address[station.page.source]: station for station in handbook.stations}
    for entry in entries:
        page, hash, _ = str(entry["location"]).partition("#")
        station = stations.get(page)
        title = str(entry["title"])
        if station is None:
            continue
        if not hash:
            entry["text"] = station.field("summary")
        elif title not in SECTIONS:
            entry["tags"] = [title, *vocabulary.other_words(title)]
            entry["boost"] = 3 if title in faults else 1


def _tolerance(
    handbook: Handbook, tolerance: Tolerance, address: dict[str, str], vocabulary: Vocabulary
) -> Entry:
    station = handbook.station(tolerance.station)
    assert station is not None  # the checks have made sure
    feature, part = str(tolerance.field("feature")), str(tolerance.field("part"))
    text = (
        f"{tolerance.limits()} ({tolerance.limits('inch')}). {station.title}. "
        f"{tolerance.field('measure')} {tolerance.field('when_out')}"
    )
    words = [part, *(tolerance.field("other_words") or [])]
    words += vocabulary.other_words(f"{feature} {part}")
    return _entry(
        f"{address[station.page.source]}#tol-{tolerance.id}", f"{feature}: {tolerance.limits()}",
        text, words, 2.5,
    )  # fmt: skip


def _entry(location: str, title: str, text: str, words: Iterable[str], boost: float) -> Entry:
    return {
        "location": location,
        "title": title,
        "text": text,
        "tags": [title, *dict.fromkeys(words)],
        "boost": boost,
    }
