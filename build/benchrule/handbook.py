"""The whole handbook as plain objects: pages, stations, entries of data, calculators.

Knows nothing of MkDocs; the checks, the pages and the search entries read it.
"""

import sys
from dataclasses import dataclass, field, replace
from functools import cached_property
from pathlib import Path
from typing import Any

from calculators.engine import registry
from calculators.engine.declaration import Calculator
from calculators.engine.shop_packages import PACKAGES
from calculators.engine.showing import show, show_number
from calculators.engine.unit_table import UNITS

from .data import KINDS, Entry, load_kind, read_kept, validate
from .kept import Kept
from .located_yaml import Located
from .problems import Problem, place

FIGURES = ("target", "low", "high")


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
        return Tolerance(replace(self.entry, fields={**general, **own}))

    def limits(self, system: str = "metric") -> str:
        """The limits in words: ``at most 0.05 mm``, ``36.0 ± 0.2 mm``, ``5.5 to 6.0 mm``."""
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

    def figure(self, value: float, system: str = "metric") -> str:
        """One of its figures with the unit."""
        return show(value, self.field("unit"), self.field("decimals"), system)

    def part(self, name: str, system: str = "metric") -> str:
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

    @cached_property
    def tolerances(self) -> dict[str, Tolerance]:
        """Every tolerance by id."""
        return {id: Tolerance(entry) for id, entry in self.entries["tolerances"].items()}

    def tolerances_of(self, station: str) -> list[Tolerance]:
        """A station's tolerances in the order they are written."""
        return self._by_station.get(station, [])

    @cached_property
    def _by_station(self) -> dict[str, list[Tolerance]]:
        found: dict[str, list[Tolerance]] = {}
        for tolerance in self.tolerances.values():
            found.setdefault(tolerance.station, []).append(tolerance)
        return found

    def station(self, id: str) -> Station | None:
        """The station called ``id``."""
        return self._by_id.get(id)

    @cached_property
    def _by_id(self) -> dict[str, Station]:
        return {station.id: station for station in self.stations}

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
        before = [other for other in self.stations if other.id in self.follows(station)]
        after = [other for other in self.stations if station.id in self.follows(other)]
        return before, after

    def follows(self, station: Station) -> list[str]:
        """The stations whose work arrives here: named in the front matter, or the one before."""
        named = station.field("follows")
        if named is not None:
            return list(named)
        at = self.stations.index(station)
        return [self.stations[at - 1].id] if at else []

    def general_models(self, tolerance: Tolerance) -> list[str]:
        """The models that a tolerance's general figures hold for; [] where they hold for all."""
        own = tolerance.field("by_model") or {}
        rest = [id for id in self.models if tolerance.holds_for(id) and id not in own]
        return rest if own or tolerance.field("applies_to") else []


def load_handbook(
    root: Path, docs: Path, packages: tuple[str, ...] = (), kept: Kept | None = None
) -> tuple[Handbook, list[Problem]]:
    """Reads the handbook in ``docs``; ``packages`` hold calculators of the shop's own.

    ``kept`` is what an earlier build worked out.

    Returns the handbook and every problem of reading it; what could be read is in it.
    """
    handbook = Handbook(root, docs, kept=kept or Kept())
    problems: list[Problem] = []
    for kind in KINDS:
        handbook.entries[kind], found = load_kind(docs / "data", kind, root, handbook.kept)
        problems += found
    for path in sorted(docs.rglob("*.md")):
        page, found = read_page(path, docs, root, handbook.kept)
        problems += found
        if page is None:
            continue
        handbook.pages.append(page)
        if "station" in page.front:
            faults = validate(page.front, "station", page.file, page.located, handbook.kept)
            problems += faults
            if not faults:
                handbook.stations.append(Station(page))
    handbook.stations.sort(key=lambda station: (station.field("order"), station.id))
    handbook.calculators = load_calculators(root, packages)
    return handbook, problems


def read_page(path: Path, docs: Path, root: Path, kept: Kept) -> tuple[Page | None, list[Problem]]:
    """One Markdown page, front matter and body apart."""
    file = place(path, root)
    try:
        text = path.read_text("utf-8")
    except UnicodeDecodeError:
        return None, [Problem(file, 1, "not UTF-8 text", "save the page as UTF-8")]
    front, body, body_line = "", text, 1
    if text.startswith("---\n") and "\n---\n" in text[3:]:
        front, _, body = text[4:].partition("\n---\n")
        body_line = front.count("\n") + 4
    located, problems = read_kept(front, file, kept, 2)
    fields = located.value if isinstance(located.value, dict) else {}
    source = path.relative_to(docs).as_posix()
    return Page(source, file, fields, body, body_line, located), problems


def load_calculators(root: Path, packages: tuple[str, ...]) -> dict[str, Calculator]:
    """Every calculator of ours and of the shop's own packages, by name."""
    make_importable(root, packages)
    for package in packages:
        if package not in PACKAGES:
            PACKAGES.append(package)
    return {name: registry.load(name) for name in registry.modules()}


def make_importable(root: Path, packages: tuple[str, ...]) -> None:
    """Lets the shop's own packages be imported from beside mkdocs.yml."""
    if packages and str(root) not in sys.path:
        sys.path.insert(0, str(root))
