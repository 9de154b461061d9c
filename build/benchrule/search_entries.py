"""What the search finds: a row, a step, a fault, a term, a hazard, a wood, each a place of its own.

Each carries the other words for what it names, and what people ask with, so that it is found by
what a newcomer would type. ``theme/assets/ranking.mjs`` ranks them. Pages of other kinds, which an
author wrote in plain Markdown, are left to the search plugin.
"""

from collections.abc import Iterable

from calculators.engine.unit_table import UNITS

from .handbook import Handbook, Tolerance
from .phrases import Phrases
from .plain_words import plain_words
from .station_parts import places_of

# The sections that are places of their own; the others are found by their steps, faults and rows.
SECTIONS = ("What good looks like", "Before you pass it on")

Entry = dict[str, object]


class Vocabulary:
    """The glossary's words for a thing, and which of them a text mentions."""

    def __init__(self, handbook: Handbook) -> None:
        self._groups: list[list[str]] = []
        names: dict[str, list[str]] = {}
        for entry in handbook.entries["glossary"].values():
            words = [str(entry.fields["term"]), *map(str, entry.fields.get("other_words", []))]
            for word in words:
                names.setdefault(word.lower(), []).append(str(len(self._groups)))
            self._groups.append(words)
        self._names = Phrases({name: " ".join(groups) for name, groups in names.items()})

    def other_words(self, text: str) -> list[str]:
        """Every word for every thing that ``text`` mentions, but those it has already."""
        lower = text.lower()
        found = dict.fromkeys(
            int(group)
            for _, _, groups in self._names.find(text, overlapping=True)
            for group in groups.split()
        )
        return [word for at in found for word in self._groups[at] if word.lower() not in lower]


def search_entries(handbook: Handbook, address: dict[str, str]) -> Iterable[Entry]:
    """The entries; ``address`` maps a page's source to its address in the site."""
    vocabulary = Vocabulary(handbook)
    asked = {id: list(entry.fields) for id, entry in handbook.entries["asked"].items()}
    yield from _stations(handbook, address, vocabulary)
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


def _stations(
    handbook: Handbook, address: dict[str, str], vocabulary: Vocabulary
) -> Iterable[Entry]:
    """A station as a whole, its steps, its faults, and the sections that answer something."""
    for station in handbook.stations:
        page = address[station.page.source]
        yield _entry(
            "page", page, station.title, str(station.field("summary")), [], "",
            vocabulary.other_words(station.title),
        )  # fmt: skip
    for place in places_of(handbook):
        if place.kind == "section" and place.title not in SECTIONS:
            continue
        station_page = address[f"stations/{place.station}.md"]
        title = handbook.station(place.station).title  # type: ignore[union-attr]
        asked = handbook.entries["asked"].get(f"{place.station}#{place.anchor}")
        yield _entry(
            place.kind, f"{station_page}#{place.anchor}", place.title,
            plain_words(handbook, place.text), asked.fields if asked else [], title,
            vocabulary.other_words(place.title) if place.kind != "section" else [],
        )  # fmt: skip


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
