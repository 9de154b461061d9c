"""What the search finds: a row, a step, a fault, a term, a hazard, a wood, each a place of its own.

Each carries the other words for what it names, and what people ask with, so that it is found by
what a newcomer would type. ``theme/assets/ranking.mjs`` ranks them. Pages of other kinds, which an
author wrote in plain Markdown, are left to the search plugin.
"""

import hashlib
import json
from collections.abc import Iterable
from functools import partial
from typing import Any

from calculators.engine.unit_table import UNITS

from .handbook import Handbook, Station, Tolerance
from .kept import digest
from .phrases import Phrases
from .plain_words import plain_words
from .station_parts import places_in
from .unchanged import Piece, made_now

# The sections that are places of their own; the others are found by their steps, faults and rows.
SECTIONS = ("What good looks like", "Before you pass it on")

# What the search's worker reads of an entry.
COLUMNS = ("kind", "location", "title", "text", "words", "also", "place", "unit")

Entry = dict[str, Any]


def places_file(entries: Iterable[Entry]) -> tuple[str, str]:
    """The file that the search fetches when a reader opens it: its address in the site, its text.

    Column by column, which packs tighter and is read faster than entry by entry; 0 stands where an
    entry has no such column. Its name changes with what is in it, so that a browser can keep it for
    good.
    """
    listed = list(entries)
    columns = {name: [entry.get(name, 0) for entry in listed] for name in COLUMNS}
    text = json.dumps(columns, separators=(",", ":"), ensure_ascii=False)
    return f"search/places-{hashlib.sha256(text.encode()).hexdigest()[:12]}.json", text


class Vocabulary:
    """The glossary's words for a thing, and which of them a text mentions.

    ``key`` stands for all of them.
    """

    def __init__(self, handbook: Handbook) -> None:
        self._groups: list[list[str]] = []
        names: dict[str, list[str]] = {}
        for entry in handbook.entries["glossary"].values():
            words = [str(entry.fields["term"]), *map(str, entry.fields.get("other_words", []))]
            for word in words:
                names.setdefault(word.lower(), []).append(str(len(self._groups)))
            self._groups.append(words)
        self._names = Phrases({name: " ".join(groups) for name, groups in names.items()})
        self.key = digest(json.dumps(self._groups))

    def other_words(self, text: str) -> list[str]:
        """Every word for every thing that ``text`` mentions, but those it has already."""
        lower = text.lower()
        found = dict.fromkeys(
            int(group)
            for _, _, groups in self._names.find(text, overlapping=True)
            for group in groups.split()
        )
        return [word for at in found for word in self._groups[at] if word.lower() not in lower]


def search_entries(
    handbook: Handbook, address: dict[str, str], piece: Piece | None = None
) -> Iterable[Entry]:
    """The entries; ``address`` maps a page's source to its address in the site.

    Those of each station are a ``piece``, which need not be made again where nothing has changed.
    """
    piece = piece or made_now(handbook)
    vocabulary = Vocabulary(handbook)
    parts = {}
    for station in handbook.stations:
        page = address[station.page.source]
        make = partial(_station, station.id, page, vocabulary)
        parts[station.id] = piece(f"search {station.id}", f"{page} {vocabulary.key}", make)
    yield from (part["page"] for part in parts.values())
    for part in parts.values():
        yield from part["places"]
    for tolerance in handbook.tolerances.values():
        yield parts[tolerance.station]["tolerances"][tolerance.id]
    for name, calculator in handbook.calculators.items():
        labels = ", ".join(item.label for item in calculator.inputs)
        yield _entry(
            "calculator", f"{address[f'calculators/{name}.md']}#calc-{name}", calculator.title,
            f"{calculator.summary} Asks: {labels}.",
            [*calculator.other_words, *_asked(handbook, f"calc:{name}")], "Calculator",
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
            [fields["agent"], "safety", "caution", *_asked(handbook, f"hazard:{id}"), *stations],
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


def _station(id: str, page: str, vocabulary: Vocabulary, handbook: Handbook) -> dict[str, Any]:
    """A station as a whole, its places, and its tolerances by id."""
    station = handbook.station(id)
    assert station is not None  # it was asked for by the id that it has
    whole = _entry(
        "page", page, station.title, str(station.field("summary")), [], "",
        vocabulary.other_words(station.title),
    )  # fmt: skip
    return {
        "page": whole, "places": list(_places(handbook, station, page, vocabulary)),
        "tolerances": {
            tolerance.id: _tolerance(handbook, tolerance, station, page, vocabulary)
            for tolerance in handbook.tolerances_of(id)
        },
    }  # fmt: skip


def _places(
    handbook: Handbook, station: Station, page: str, vocabulary: Vocabulary
) -> Iterable[Entry]:
    """Its steps, its faults, and the sections that answer something."""
    for place in places_in(station):
        if place.kind == "section" and place.title not in SECTIONS:
            continue
        yield _entry(
            place.kind, f"{page}#{place.anchor}", place.title, plain_words(handbook, place.text),
            _asked(handbook, f"{station.id}#{place.anchor}"), station.title,
            vocabulary.other_words(place.title) if place.kind != "section" else [],
        )  # fmt: skip


def _asked(handbook: Handbook, id: str) -> list[str]:
    """What people ask with who look for a place."""
    entry = handbook.entries["asked"].get(id)
    return list(entry.fields) if entry else []


def _tolerance(
    handbook: Handbook, tolerance: Tolerance, station: Station, page: str, vocabulary: Vocabulary
) -> Entry:
    feature, part = str(tolerance.field("feature")), str(tolerance.field("part"))
    limits = tolerance.limits()
    for id, model in handbook.models.items():
        if id in (tolerance.field("by_model") or {}):
            limits += f"; {model.fields['name']} {tolerance.for_model(id).limits()}"
    also = f" ({tolerance.also()})" if tolerance.also() else ""
    text = f"{limits}{also}. {tolerance.field('measure')} {tolerance.field('when_out')}"
    words = [
        part, *(tolerance.field("other_words") or []), *_asked(handbook, tolerance.id),
    ]  # fmt: skip
    made = _entry(
        "tolerance", f"{page}#tol-{tolerance.id}",
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
        "words": list(dict.fromkeys(words)),  # what people call it
        "also": list(also),  # other words for the things that its name names
        "place": place,
    }
