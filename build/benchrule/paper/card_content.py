"""What a station's card says, before anything is set in type."""

import re
from collections.abc import Iterator
from dataclasses import dataclass

from ..handbook import Handbook, Station, Tolerance
from ..plain_words import plain_words
from ..station_parts import definitions, places_of

SENTENCE_END = re.compile(r"(?<=[.!?])\s")


@dataclass(frozen=True)
class Figures:
    """Limits in both systems, and the models that they hold for; none named where for all."""

    first: str  # in the system that the shop reads first
    also: str  # empty where it would say the same
    models: str


@dataclass(frozen=True)
class CardLimit:
    """A line of the limits."""

    feature: str
    gauge: str
    figures: tuple[Figures, ...]


@dataclass(frozen=True)
class Card:
    """Everything that stands on a station's card."""

    id: str
    title: str
    group: str
    revision: str
    key_points: tuple[tuple[str, str], ...]  # a step's title, and its key point
    limits: tuple[CardLimit, ...]
    hazards: tuple[tuple[str, str], ...]  # its name, and what to mind
    address: str  # of the station's page; empty where the site has none

    def texts(self) -> Iterator[str]:
        """Every text on it."""
        yield from (self.title, self.group, self.revision)
        for pair in (*self.key_points, *self.hazards):
            yield from pair
        for limit in self.limits:
            yield from (limit.feature, limit.gauge)
            for one in limit.figures:
                yield from (one.first, one.also, one.models)


def card_of(handbook: Handbook, station: Station, site_address: str) -> Card:
    """The card of a station; ``site_address`` may be empty."""
    newest = station.revisions[0]
    group = handbook.groups.get(station.group)
    hazards = (handbook.entries["hazards"][id].fields for id in station.field("hazards"))
    page = station.page.source.removesuffix(".md")
    return Card(
        id=station.id,
        title=station.title,
        group=str(group.fields["name"]) if group else "",
        revision=f"Revision {newest['revision']}, {newest['on']}",
        key_points=tuple(_key_points(handbook, station)),
        limits=tuple(_limit(handbook, one) for one in handbook.tolerances_of(station.id)),
        hazards=tuple((str(one["name"]), _short(one["cautions"][0])) for one in hazards),
        address=f"{site_address}{page}/" if site_address else "",
    )


def _key_points(handbook: Handbook, station: Station) -> Iterator[tuple[str, str]]:
    for place in places_of(handbook):
        if place.station == station.id and place.kind == "step":
            said = definitions(place.text).get("Key point", "")
            yield place.title, plain_words(handbook, said)


def _short(caution: str) -> str:
    """The first sentence of a caution: the deed, without its reasons."""
    return SENTENCE_END.split(caution, 1)[0]


def _limit(handbook: Handbook, tolerance: Tolerance) -> CardLimit:
    gauge = handbook.entries["gauges"][tolerance.field("gauge")].fields["name"]
    names = {id: str(entry.fields["name"]) for id, entry in handbook.models.items()}
    own = [id for id in names if id in (tolerance.field("by_model") or {})]
    figures = [
        _figures(tolerance.for_model(id), names[id]) for id in own if tolerance.holds_for(id)
    ]
    rest = handbook.general_models(tolerance)
    if rest or not figures:
        others = figures and len(rest) > 1 and not tolerance.field("applies_to")
        called = "others" if others else ", ".join(names[id] for id in rest)
        figures.insert(len(figures) if others else 0, _figures(tolerance, called))
    return CardLimit(tolerance.field("feature"), str(gauge), tuple(figures))


def _figures(tolerance: Tolerance, models: str) -> Figures:
    return Figures(tolerance.limits(), tolerance.also(), models)
