"""A handbook that notes what is read of it.

What was made from it can be kept until one of the things it was made from is another. Whatever is
not named here more closely is noted as a whole: too much is made again rather than too little.
"""

import json
from collections.abc import ItemsView, Iterator, KeysView, Mapping, ValuesView
from pathlib import Path
from typing import Any, cast

from calculators.engine.declaration import Calculator

from .data import Entry
from .handbook import Handbook, Page, Station, Tolerance
from .kept import Kept, digest
from .site_config import Choices


class Watched(Handbook):
    """Reads like the handbook ``book``; what is read stands in ``seen`` by the names of ``sums``.

    Calculators, the shop's choices and where the handbook lies are not noted: they are part of the
    key over everything that is kept.
    """

    def __init__(self, book: Handbook) -> None:
        self.book = book
        self.seen: set[str] = set()
        self._stations = [self._watched(station) for station in book.stations]
        self._own = {station.id: station for station in self._stations}
        kinds = {kind: _Entries(entries, kind, self) for kind, entries in book.entries.items()}
        self._entries = cast(dict[str, dict[str, Entry]], kinds)
        limits = _Entries(book.tolerances, "tolerances", self)
        self._tolerances = cast(dict[str, Tolerance], limits)

    def _watched(self, station: Station) -> Station:
        return Station(cast(Page, _Page(station.page, self)))

    @property
    def root(self) -> Path:  # type: ignore[override]
        """Its folder."""
        return self.book.root

    @property
    def docs(self) -> Path:  # type: ignore[override]
        """Its folder of pages, in which drawings are looked for."""
        self.seen.add("drawings")
        return self.book.docs

    @property
    def kept(self) -> Kept:  # type: ignore[override]
        """What is kept by all that it was made from."""
        return self.book.kept

    @property
    def choices(self) -> Choices:  # type: ignore[override]
        """What the shop chose."""
        return self.book.choices

    @property
    def calculators(self) -> dict[str, Calculator]:  # type: ignore[override]
        """Every calculator."""
        return self.book.calculators

    @property
    def pages(self) -> list[Page]:  # type: ignore[override]
        """Every page, as a whole."""
        self.seen.add("pages")
        return self.book.pages

    @property
    def stations(self) -> list[Station]:  # type: ignore[override]
        """Every station; a body is noted when it is read."""
        self.seen.add("fronts")
        return self._stations

    @property
    def entries(self) -> dict[str, dict[str, Entry]]:  # type: ignore[override]
        """The data, entry by entry."""
        return self._entries

    @property
    def tolerances(self) -> dict[str, Tolerance]:
        """Every tolerance, one by one."""
        return self._tolerances

    def tolerances_of(self, station: str) -> list[Tolerance]:
        """A station's tolerances."""
        self.seen.add(f"of/{station}")
        return self.book.tolerances_of(station)

    @property
    def units_of_limits(self) -> list[str]:
        """The units of all tolerances."""
        self.seen.add("units")
        return self.book.units_of_limits

    def station(self, id: str) -> Station | None:
        """The station called ``id``."""
        self.seen.add(f"front/{id}")
        return self._own.get(id)

    def station_of(self, source: str) -> Station | None:
        """The station whose page ``source`` is."""
        found = self.book.station_of(source)
        self.seen.add(f"front/{found.id}" if found else "fronts")
        return self._own[found.id] if found else None

    @property
    def station_ids(self) -> KeysView[str]:
        """Every station's id."""
        self.seen.add("fronts")
        return self._own.keys()

    def neighbours(self, station: Station) -> tuple[list[Station], list[Station]]:
        """The stations before and after."""
        self.seen.add(f"neighbours/{station.id}")
        before, after = self.book.neighbours(station)
        return [self._own[one.id] for one in before], [self._own[one.id] for one in after]

    def follows(self, station: Station) -> list[str]:
        """The stations whose work arrives here."""
        self.seen.add("fronts")
        return self.book.follows(station)

    @property
    def lanes(self) -> list[tuple[str, list[Station]]]:
        """Each group's stations."""
        self.seen |= {"fronts", "kind/groups"}
        return [(name, [self._own[one.id] for one in lane]) for name, lane in self.book.lanes]

    @property
    def calculator_groups(self) -> list[tuple[str, dict[str, Calculator]]]:
        """The calculators by what they are about."""
        return self.book.calculator_groups


class _Entries(Mapping[str, Any]):
    """Entries of one kind; which were asked for is noted, all of them where they are gone through."""

    def __init__(self, entries: Mapping[str, Any], kind: str, watched: Watched) -> None:
        self._entries, self._kind, self._watched = entries, kind, watched

    def __getitem__(self, id: str) -> Any:
        self._watched.seen.add(f"entry/{self._kind}/{id}")
        return self._entries[id]

    def __contains__(self, id: object) -> bool:
        self._watched.seen.add(f"entry/{self._kind}/{id}")
        return id in self._entries

    def __iter__(self) -> Iterator[str]:
        self._watched.seen.add(f"kind/{self._kind}")
        return iter(self._entries)

    def __len__(self) -> int:
        self._watched.seen.add(f"kind/{self._kind}")
        return len(self._entries)

    def items(self) -> ItemsView[str, Any]:
        """All of them, noted as one."""
        self._watched.seen.add(f"kind/{self._kind}")
        return self._entries.items()

    def values(self) -> ValuesView[Any]:
        """All of them, noted as one."""
        self._watched.seen.add(f"kind/{self._kind}")
        return self._entries.values()


class _Page:
    """A page whose body is noted when it is read; its front matter is noted by who hands it out."""

    def __init__(self, page: Page, watched: Watched) -> None:
        self._page, self._watched = page, watched

    def __getattr__(self, name: str) -> Any:
        return getattr(self._page, name)

    @property
    def body(self) -> str:
        """The Markdown below the front matter."""
        self._watched.seen.add(f"body/{self._page.source}")
        return self._page.body


class Sums:
    """A sum over each thing that can be read of a handbook, by the names that ``Watched`` notes.

    ``before`` are the sums of the build before this one, of which is taken what has not changed.
    """

    def __init__(self, book: Handbook, before: "Sums | None" = None) -> None:
        self.book = book
        self._known: dict[str, str] = {}
        self._bodies = {page.source: page.body for page in book.pages}
        if before:
            self._take_over(before)

    def _take_over(self, before: "Sums") -> None:
        """A file that is as it was gives the very same entries, see ``kept``: their sums hold."""
        for kind, entries in self.book.entries.items():
            former = before.book.entries.get(kind, {})
            for id, entry in entries.items():
                name, then = f"entry/{kind}/{id}", former.get(id)
                same = then and then.fields is entry.fields and then.stem == entry.stem
                if same and name in before._known:
                    self._known[name] = before._known[name]

    def of(self, name: str) -> str:
        """The sum of one thing; the same as long as it is."""
        if name not in self._known:
            self._known[name] = digest(json.dumps(self._made(name), default=str))
        return self._known[name]

    def _made(self, name: str) -> Any:
        book = self.book
        what, _, rest = name.partition("/")
        match what:
            case "entry":
                kind, _, id = rest.partition("/")
                entry = book.entries[kind].get(id)
                return [entry.fields, entry.stem] if entry else None
            case "kind":
                return [[id, self.of(f"entry/{rest}/{id}")] for id in book.entries[rest]]
            case "front":
                station = book.station(rest)
                return [station.page.source, station.page.front] if station else None
            case "fronts":
                return [[one.id, self.of(f"front/{one.id}")] for one in book.stations]
            case "body":
                return self._bodies.get(rest)
            case "pages":
                return [[page.source, page.front, page.body] for page in book.pages]
            case "neighbours":
                found = book.station(rest)
                lists = book.neighbours(found) if found else ()
                return [[self.of(f"front/{one.id}") for one in side] for side in lists]
            case "of":
                return [
                    [one.id, self.of(f"entry/tolerances/{one.id}")]
                    for one in book.tolerances_of(rest)
                ]
            case "units":
                return book.units_of_limits
            case "drawings":
                drawings = sorted((book.docs / "drawings").glob("*.svg"))
                return [[path.name, path.read_text("utf-8", "replace")] for path in drawings]
        raise KeyError(name)
