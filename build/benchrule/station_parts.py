"""The parts of a station's page: its sections, and in them its steps and faults."""

import re
from collections.abc import Iterator
from dataclasses import dataclass

from markdown.extensions.toc import slugify

from .handbook import Handbook, Station
from .references import of_text

HEADING = re.compile(r"^(#{2,3}) (.+?)\s*$", re.MULTILINE)
TERM = re.compile(r"^(?P<term>[^\n:#][^\n]*)\n:   (?=\S)", re.MULTILINE)
KINDS = {"Steps": "step", "What goes wrong": "fault"}


@dataclass(frozen=True)
class Part:
    """A stretch of a page under one heading."""

    title: str
    position: int
    text: str
    parts: tuple["Part", ...] = ()


@of_text
def parts_of(body: str) -> list[Part]:
    """The level-2 parts of a page, each with its level-3 parts."""
    found: list[Part] = []
    heads = list(HEADING.finditer(body))
    ends = [*(head.start() for head in heads[1:]), len(body)]
    for head, end in zip(heads, ends, strict=True):
        part = Part(head[2], head.start(), body[head.end() : end])
        if head[1] == "##":
            found.append(part)
        elif found:
            last = found[-1]
            found[-1] = Part(last.title, last.position, last.text, (*last.parts, part))
    return found


@dataclass(frozen=True)
class Place:
    """A section, step or fault of a station, with the id that the page gives its heading."""

    station: str
    kind: str  # "section", "step" or "fault"
    title: str
    anchor: str
    text: str


def places_of(handbook: Handbook) -> Iterator[Place]:
    """Every section, step and fault of every station, in order."""
    for station in handbook.stations:
        yield from places_in(station)


def places_in(station: Station) -> list[Place]:
    """Every section, step and fault of one station, in order."""
    return _places(station.id, station.page.body)


@of_text
def _places(station: str, body: str) -> list[Place]:
    found = []
    for section in parts_of(body):
        kind = KINDS.get(section.title)
        if kind is None:
            text = section.text + "".join(part.text for part in section.parts)
            found.append(
                Place(station, "section", section.title, slugify(section.title, "-"), text)
            )
            continue
        found += [
            Place(station, kind, part.title, slugify(part.title, "-"), part.text)
            for part in section.parts
        ]
    return found


def definitions(text: str) -> dict[str, str]:
    """The terms of a step or a fault (Key point, Sign …) and what stands under each."""
    terms = list(TERM.finditer(text))
    ends = [*(term.start() for term in terms[1:]), len(text)]
    return {
        term["term"].strip(): text[term.end() : end].strip()
        for term, end in zip(terms, ends, strict=True)
    }
