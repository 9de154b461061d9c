"""What the search finds: a row, a step, a fault, a term, a hazard, a wood, each a place of its own.

The index's own entries for pages and headings are told what kind of place they are; those that the
index does not see (rows of tables, cards) are added. Each carries the other words for what it
names, so that it is found by what a newcomer would type. ``theme/assets/ranking.mjs`` ranks them.
"""

import re
from collections.abc import Iterable

from calculators.engine.unit_table import UNITS

from .handbook import Handbook, Station, Tolerance
from .places import parts

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
    asked = {id: list(entry.fields) for id, entry in handbook.entries["asked"].items()}
    for tolerance in handbook.tolerances.values():
        yield _tolerance(handbook, tolerance, address, vocabulary, asked.get(tolerance.id, []))
    for name, calculator in handbook.calculators.items():
        labels = ", ".join(item.label for item in calculator.inputs)
        yield _entry(
            "calculator", f"{address[f'calculators/{name}.md']}#calc-{name}", calculator.title,
            f"{calculator.summary} Asks: {labels}.",
            [*calculator.other_words, *asked.get(f"calc:{name}", [])], "Calculator",
            vocabulary.other_words(calculator.title),
        )  # fmt: skip
    for id, entry in handbook.entries["glossary"].items():
        yield _entry(
            "term", f"{address['glossary.md']}#term-{id}", str(entry.fields["term"]),
            str(entry.fields["meaning"]), entry.fields.get("other_words", []), "Glossary",
        )  # fmt: skip
    for id, entry in handbook.entries["hazards"].items():
        fields = entry.fields
        text = " ".join([fields["harm"], *fields["cautions"], *fields.get("protection", ())])
        stations = [one.title for one in handbook.stations if id in one.field("hazards")]
        yield _entry(
            "hazard", f"{address['hazards.md']}#hazard-{id}", str(fields["name"]), text,
            [fields["agent"], "safety", "caution", *asked.get(f"hazard:{id}", []), *stations],
            "Hazards",
        )  # fmt: skip
    for id, entry in handbook.entries["gauges"].items():
        yield _entry(
            "gauge", f"{address['gauges.md']}#gauge-{id}", str(entry.fields["name"]),
            str(entry.fields.get("note", "")), [], "Gauges",
        )  # fmt: skip
    for id, entry in handbook.entries["materials"].items():
        fields = entry.fields
        text = f"{fields['looks_and_feel']} {fields['works']} {fields['go_wrong']} {fields['protection']['status']}"
        yield _entry(
            "wood", address[f"materials/{id}.md"], str(fields["name"]), text,
            [fields["botanical"], *fields["used_for"], *fields.get("other_words", ())], "Woods",
        )  # fmt: skip
    for id, entry in handbook.models.items():
        yield _entry(
            "model", address[f"models/{id}.md"], str(entry.fields["name"]),
            str(entry.fields["summary"]), entry.fields.get("other_words", []), "Models",
        )  # fmt: skip


def tune_entries(handbook: Handbook, entries: list[Entry], address: dict[str, str]) -> None:
    """Says of the index's own entries what kind of place each is, and in which station.

    Entries of pages that have entries of their own here (calculators, lists) are left without a
    kind: the ranking passes over them.
    """
    vocabulary = Vocabulary(handbook)
    found = {
        f"{address[f'stations/{part.station}.md']}#{part.anchor}": part for part in parts(handbook)
    }
    stations = {address[station.page.source]: station for station in handbook.stations}
    authored = {address[page.source] for page in handbook.pages}
    lists = {address[source] for source in address if "/" not in source} - authored
    for entry in entries:
        page, hash, _ = str(entry["location"]).partition("#")
        title = str(entry["title"])
        station = stations.get(page)
        if station is not None:
            part = found.get(str(entry["location"]))
            _tune_station(entry, station, bool(hash), part is None, vocabulary)
            if part is not None:
                asked = handbook.entries["asked"].get(f"{part.station}#{part.anchor}")
                entry["kind"] = "step" if part.section == "Steps" else "fault"
                entry["tags"] = [title, *(asked.fields if asked else ())]
                entry["also"] = vocabulary.other_words(title)
        elif page in authored or (page in lists and not hash):
            entry["kind"] = "section" if hash else "page"


def _tune_station(
    entry: Entry, station: Station, is_heading: bool, is_plain: bool, vocabulary: Vocabulary
) -> None:
    title = str(entry["title"])
    entry["place"] = station.title
    if not is_heading:
        entry["kind"], entry["text"] = "page", station.field("summary")
        entry["tags"], entry["also"] = [title], vocabulary.other_words(title)
        entry.pop("place")
    elif is_plain and title not in SECTIONS:
        entry["kind"] = "section"
    elif title in ("What good looks like", "Before you pass it on", "Hazards and cautions"):
        entry["kind"], entry["title"] = "section", f"{title}: {station.title}"


def _tolerance(
    handbook: Handbook, tolerance: Tolerance, address: dict[str, str], vocabulary: Vocabulary,
    asked: list[str],
) -> Entry:  # fmt: skip
    station = handbook.station(tolerance.station)
    assert station is not None  # the checks have made sure
    feature, part = str(tolerance.field("feature")), str(tolerance.field("part"))
    limits = tolerance.limits()
    for id, model in handbook.models.items():
        if id in (tolerance.field("by_model") or {}):
            limits += f"; {model.fields['name']} {tolerance.for_model(id).limits()}"
    text = f"{limits} ({tolerance.limits('inch')}). {tolerance.field('measure')} {tolerance.field('when_out')}"
    words = [part, *(tolerance.field("other_words") or []), *asked]
    made = _entry(
        "tolerance", f"{address[station.page.source]}#tol-{tolerance.id}",
        f"{feature}: {tolerance.limits()}", text, words, station.title,
        vocabulary.other_words(f"{feature} {part}"),
    )  # fmt: skip
    made["unit"] = UNITS[tolerance.field("unit")].kind
    return made


def _entry(
    kind: str, location: str, title: str, text: str, words: Iterable[str], place: str,
    also: Iterable[str] = (),
) -> Entry:  # fmt: skip
    return {
        "kind": kind,
        "location": location,
        "title": title,
        "text": text,
        "tags": [title, *dict.fromkeys(words)],  # what people call it
        "also": list(also),  # other words for the things that its name names
        "place": place,
    }
