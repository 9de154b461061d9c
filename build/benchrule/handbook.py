"""The whole handbook as plain objects: pages, stations, entries of data, calculators.

Knows nothing of MkDocs; the checks, the pages and the search entries read it.
"""

import posixpath
import re
import sys
from collections.abc import KeysView
from dataclasses import dataclass, field, replace
from functools import cached_property
from pathlib import Path
from typing import Any

from calculators.engine import registry
from calculators.engine.declaration import Calculator
from calculators.engine.reading import convert
from calculators.engine.showing import show, show_number
from calculators.engine.unit_table import UNITS

from .data import KINDS, Entry, load_kind, read_kept, validate
from .kept import Kept
from .located_yaml import Located
from .own_calculators import load_calculators
from .problems import Problem, place
from .site_config import Choices

FIGURES = ("target", "low", "high")
METRIC_OF = {one.inch: one.id for one in reversed(UNITS.values()) if one.inch not in ("", one.id)}
"""What a metric reader has for a unit of inch shops: millimetres for inches, and so on."""


@dataclass(frozen=True)
class Page:
    """A Markdown page: its front matter, its body, and the line the body begins on."""

    source: str  # path from the docs folder, as MkDocs names it
    file: str  # path from the handbook's folder, as problems name it
    front: dict[str, Any]
    body: str
    body_line: int
    located: Located

    def line_at(self, position: int) -> int:
        """The line of a position in the body."""
        return self.body_line + self.body.count("\n", 0, position)

    def problem(self, position: int, what: str, to_do: str) -> Problem:
        """A problem at a position of the body."""
        return Problem(self.file, self.line_at(position), what, to_do)


@dataclass(frozen=True)
class Station:
    """A station of the shop: its page, and what the page's front matter says."""

    page: Page

    @property
    def id(self) -> str:
        """The station's id, which is its file's name."""
        return str(self.page.front["station"])

    @property
    def title(self) -> str:
        """What people call it."""
        return str(self.page.front["title"])

    @property
    def group(self) -> str:
        """The group of stations it belongs to; empty where the shop has no groups."""
        return str(self.page.front.get("group", ""))

    @property
    def revisions(self) -> list[dict[str, Any]]:
        """Every revision, the newest first: revision, on, by, changed."""
        front = self.page.front
        newest = {
            "revision": front["revision"], "on": front["approved_on"],
            "by": front["approved_by"], "changed": front["changed"],
        }  # fmt: skip
        return [newest, *front.get("history", ())]

    def field(self, name: str) -> Any:
        """A field of the front matter."""
        return self.page.front.get(name)


@dataclass(frozen=True)
class Tolerance:
    """A tolerance, ready to be printed."""

    entry: Entry
    units: str = "metric"  # the system that its shop reads first

    @property
    def id(self) -> str:
        """Its id, unique in the handbook."""
        return self.entry.id

    @property
    def station(self) -> str:
        """The station it belongs to: the name of the file it stands in."""
        return self.entry.stem

    def field(self, name: str) -> Any:
        """A field of the entry."""
        return self.entry.fields.get(name)

    def holds_for(self, model: str) -> bool:
        """Whether ``model`` has the thing at all."""
        named = self.field("applies_to")
        return named is None or model in named

    def for_model(self, model: str) -> "Tolerance":
        """This tolerance with the figures of ``model``, where it has its own."""
        own = (self.field("by_model") or {}).get(model)
        if own is None:
            return self
        general = {k: v for k, v in self.entry.fields.items() if k not in FIGURES}
        return self.with_fields({**general, **own})

    def with_fields(self, fields: dict[str, Any]) -> "Tolerance":
        """The same tolerance with other fields."""
        return replace(self, entry=replace(self.entry, fields=fields))

    def limits(self, system: str = "") -> str:
        """The limits in words: ``at most 0.05 mm``, ``36.0 ± 0.2 mm``, ``5.5 to 6.0 mm``.

        ``system`` is the shop's own where it is left out.
        """
        system = system or self.units
        low, high, target = self.field("low"), self.field("high"), self.field("target")
        if low is None or (low == 0 and target in (None, 0) and high is not None):
            return f"at most {self.figure(high, system)}"
        if high is None:
            return f"at least {self.figure(low, system)}"
        if low == high:
            return self.figure(low, system)
        unit, decimals = self.field("unit"), self.field("decimals")
        if (
            target is not None
            and round(high - target, 9) == round(target - low, 9)
            and (system == "metric" or UNITS[unit].kind != "temperature")
        ):
            middle = show_number(target, unit, decimals, system)
            return f"{middle} ± {show(high - target, unit, decimals, system)}"
        return f"{show_number(low, unit, decimals, system)} to {self.figure(high, system)}"

    def also(self) -> str:
        """The limits in the system that the shop does not read first; empty where it is the same."""
        here = self.limits()
        there = (
            self.limits("inch") if self.units == "metric" else self._in_metric().limits("metric")
        )
        return "" if there == here else there

    def _in_metric(self) -> "Tolerance":
        """A limit that is written in inches, turned for readers of millimetres."""
        unit = METRIC_OF.get(self.field("unit"))
        if unit is None:
            return self
        turned = {
            name: convert(self.field(name), self.field("unit"), unit)
            for name in FIGURES
            if self.field(name) is not None
        }
        # One digit finer than the inch figure has it the other way: no limit looks wider than it is.
        decimals = max(0, self.field("decimals") - max(0, UNITS[unit].inch_decimals - 1))
        return self.with_fields({**self.entry.fields, **turned, "unit": unit, "decimals": decimals})

    def figure(self, value: float, system: str = "") -> str:
        """One of its figures with the unit."""
        unit, decimals = self.field("unit"), self.field("decimals")
        return show(value, unit, decimals, system or self.units)

    def part(self, name: str, system: str = "") -> str:
        """The limits, or the one figure a reference asks for."""
        return self.limits(system) if name == "limits" else self.figure(self.field(name), system)


@dataclass
class Handbook:
    """Everything a handbook holds."""

    root: Path
    docs: Path
    pages: list[Page] = field(default_factory=list)
    stations: list[Station] = field(default_factory=list)
    entries: dict[str, dict[str, Entry]] = field(default_factory=dict)
    calculators: dict[str, Calculator] = field(default_factory=dict)
    kept: Kept = field(default_factory=Kept)
    choices: Choices = field(default_factory=Choices)

    @property
    def units(self) -> str:
        """The unit system that the shop reads first: whatever shows a figure goes by this."""
        return self.choices.units

    @cached_property
    def tolerances(self) -> dict[str, Tolerance]:
        """Every tolerance by id."""
        entries = self.entries["tolerances"]
        return {id: Tolerance(entry, self.units) for id, entry in entries.items()}

    def tolerances_of(self, station: str) -> list[Tolerance]:
        """A station's tolerances in the order they are written."""
        return self._by_station.get(station, [])

    @cached_property
    def _by_station(self) -> dict[str, list[Tolerance]]:
        found: dict[str, list[Tolerance]] = {}
        for tolerance in self.tolerances.values():
            found.setdefault(tolerance.station, []).append(tolerance)
        return found

    @cached_property
    def units_of_limits(self) -> list[str]:
        """The units that any tolerance is given in."""
        return sorted({str(tolerance.field("unit")) for tolerance in self.tolerances.values()})

    def station(self, id: str) -> Station | None:
        """The station called ``id``."""
        return self._by_id.get(id)

    @property
    def station_ids(self) -> KeysView[str]:
        """Every station's id."""
        return self._by_id.keys()

    @cached_property
    def _by_id(self) -> dict[str, Station]:
        return {station.id: station for station in self.stations}

    def station_of(self, source: str) -> Station | None:
        """The station whose page ``source`` is."""
        return self._by_source.get(source)

    @cached_property
    def _by_source(self) -> dict[str, Station]:
        return {station.page.source: station for station in self.stations}

    @property
    def groups(self) -> dict[str, Entry]:
        """The groups of stations, as the work flows."""
        return self.entries["groups"]

    @property
    def models(self) -> dict[str, Entry]:
        """The shop's instrument models, in the order they are written."""
        return self.entries["models"]

    @property
    def orders(self) -> dict[str, Entry]:
        """The custom instruments on order."""
        return self.entries["orders"]

    def records(self, order: str) -> dict[str, Any]:
        """What was measured for an order, by the setting's key."""
        entry = self.entries["records"].get(order)
        return dict(entry.fields) if entry else {}

    @cached_property
    def lanes(self) -> list[tuple[str, list[Station]]]:
        """Each group's name with its stations in order; one nameless lane without groups."""
        names = {id: str(entry.fields["name"]) for id, entry in self.groups.items()}
        lanes = [
            (name, [station for station in self.stations if station.group == id])
            for id, name in names.items()
        ]
        rest = [station for station in self.stations if station.group not in names]
        return [lane for lane in [*lanes, ("", rest)] if lane[1]]

    @cached_property
    def calculator_groups(self) -> list[tuple[str, dict[str, Calculator]]]:
        """The calculators by what they are about: the first words of their package's docstring."""
        where = registry.modules()
        groups: dict[str, dict[str, Calculator]] = {}
        for name, calculator in self.calculators.items():
            package = sys.modules[where[name].rpartition(".")[0]]
            title = (package.__doc__ or "Other").strip().partition("\n")[0]
            title = title.partition(":")[0].partition(".")[0]
            groups.setdefault(title, {})[name] = calculator
        return sorted(groups.items())

    def neighbours(self, station: Station) -> tuple[list[Station], list[Station]]:
        """The stations whose work arrives here, and those that rely on this one."""
        return self._ways[station.id]

    @cached_property
    def _ways(self) -> dict[str, tuple[list[Station], list[Station]]]:
        """Each station's neighbours, both lists in the order of the work."""
        ways: dict[str, tuple[list[Station], list[Station]]] = {
            station.id: ([], []) for station in self.stations
        }
        for at, station in enumerate(self.stations):
            for id in dict.fromkeys(self._followed(station, at)):
                if id in ways:
                    ways[id][1].append(station)
                    ways[station.id][0].append(self._by_id[id])
        for before, _ in ways.values():
            before.sort(key=lambda other: self._places[other.id])
        return ways

    def follows(self, station: Station) -> list[str]:
        """The stations whose work arrives here: named in the front matter, or the one before."""
        return self._followed(station, self._places[station.id])

    @cached_property
    def _places(self) -> dict[str, int]:
        return {station.id: at for at, station in enumerate(self.stations)}

    def _followed(self, station: Station, at: int) -> list[str]:
        """What the station at a place in the order follows."""
        named = station.field("follows")
        if named is not None:
            return list(named)
        return [self.stations[at - 1].id] if at else []

    def general_models(self, tolerance: Tolerance) -> list[str]:
        """The models that a tolerance's general figures hold for; [] where they hold for all."""
        own = tolerance.field("by_model") or {}
        rest = [id for id in self.models if tolerance.holds_for(id) and id not in own]
        return rest if own or tolerance.field("applies_to") else []


def load_handbook(
    root: Path, docs: Path, choices: Choices | None = None, kept: Kept | None = None
) -> tuple[Handbook, list[Problem]]:
    """Reads the handbook in ``docs`` as the shop has chosen; ``kept`` is what an earlier build
    worked out.

    Returns the handbook and every problem of reading it; what could be read is in it.
    """
    choices = choices or Choices()
    handbook = Handbook(root, docs, kept=kept or Kept(), choices=choices)
    problems: list[Problem] = []
    for kind in KINDS:
        handbook.entries[kind], found = load_kind(docs / "data", kind, root, handbook.kept)
        problems += found
    folder = place(docs, root)
    for path in sorted(docs.rglob("*.md")):
        page, found = read_page(path, docs, folder, handbook.kept)
        problems += found
        if page is None:
            continue
        handbook.pages.append(page)
        if page.source.startswith("stations/") and "station" not in page.front and not found:
            problems.append(Problem(
                page.file, 1, "a page of a station without the field 'station'",
                f"write 'station: {path.stem}' in its front matter",
            ))  # fmt: skip
        if "station" in page.front:
            faults = validate(page.front, "station", page.file, page.located, handbook.kept)
            problems += faults
            if not faults:
                handbook.stations.append(Station(page))
    handbook.stations.sort(key=lambda station: (station.field("order"), station.id))
    handbook.calculators, found = load_calculators(root, choices)
    return handbook, problems + found


def read_page(path: Path, docs: Path, folder: str, kept: Kept) -> tuple[Page | None, list[Problem]]:
    """One Markdown page, front matter and body apart; ``folder`` is what problems call ``docs``."""
    source = path.relative_to(docs).as_posix()
    file = posixpath.join(folder, source)
    try:
        text = path.read_text("utf-8")
    except UnicodeDecodeError:
        return None, [Problem(file, 1, "not UTF-8 text", "save the page as UTF-8")]
    front, body, body_line = "", text, 1
    if text.startswith("---\n") and "\n---\n" in text[3:]:
        front, _, body = text[4:].partition("\n---\n")
        body_line = front.count("\n") + 4
    elif text.startswith("---\n") and re.match(r"---\n\w+:", text):
        what, to_do = "the front matter is not closed", "write a line of three hyphens below it"
        return None, [Problem(file, 1, what, to_do)]
    located, problems = read_kept(front, file, kept, 2)
    fields = located.value if isinstance(located.value, dict) else {}
    return Page(source, file, fields, body, body_line, located), problems
