"""A station's page has every part a reader relies on, in the order they expect."""

import re
from collections.abc import Iterator

from ..handbook import Handbook, Station
from ..problems import Problem
from ..references import of_text
from ..station_parts import parts_of

SECTIONS = (
    "Purpose", "What good looks like", "Before you start", "Steps", "What goes wrong", "Tolerances",
    "Calculator", "Before you pass it on", "Practice",
)  # fmt: skip
STEP_TERMS = ("Key point", "Reason", "Check")
FAULT_TERMS = ("Sign", "Likely cause", "Mend", "Stop and ask")
TERM = re.compile(r"^(?P<term>[^\n:#][^\n]*)\n(?=:   \S)", re.MULTILINE)
NEEDED_BLOCKS = ("tools", "hazards", "tolerances", "practice")


def find_problems(handbook: Handbook) -> Iterator[Problem]:
    """Missing sections, steps without key point, reason or check, faults without a mend …"""
    for station in handbook.stations:
        yield from _sections(station)
        yield from _counts(handbook, station)
        for id in station.field("hazards"):
            if id not in handbook.entries["hazards"]:
                yield _front(station, "hazards", f"unknown hazard '{id}'", "add it to docs/data")
        for name in station.field("calculators") or ():
            if name not in handbook.calculators:
                yield _front(
                    station, "calculators", f"unknown calculator '{name}'", "mend the name"
                )
            elif f"/// calculator | {name}\n" not in station.page.body:
                yield _front(
                    station, "calculators", f"calculator '{name}' is not placed on the page",
                    f"place it with /// calculator | {name}",
                )  # fmt: skip
        if station.group and station.group not in handbook.groups:
            yield _front(
                station,
                "group",
                f"unknown group '{station.group}'",
                "add it to docs/data/groups.yml",
            )
        for id in station.field("follows") or ():
            if handbook.station(id) is None or id == station.id:
                yield _front(station, "follows", f"follows unknown station '{id}'", "mend the id")
        if station.page.source != f"stations/{station.id}.md":
            yield _front(station, "station", "the id is not the file's name", "make them agree")


def _front(station: Station, field: str, what: str, to_do: str) -> Problem:
    return Problem(station.page.file, station.page.located.line((field,)), what, to_do)


def _sections(station: Station) -> Iterator[Problem]:
    for position, what, to_do in _faults_of(station.page.body):
        yield station.page.problem(position, what, to_do)


@of_text
def _faults_of(body: str) -> tuple[tuple[int, str, str], ...]:
    """What is wrong with a page's sections, steps and faults: where, what, what to do."""
    return tuple(_go_through(body))


def _go_through(body: str) -> Iterator[tuple[int, str, str]]:
    parts = parts_of(body)
    titles = [part.title for part in parts]
    if titles != list(SECTIONS):
        missing = [title for title in SECTIONS if title not in titles]
        strange = [title for title in titles if title not in SECTIONS]
        what = (
            f"no section '{missing[0]}'" if missing
            else f"strange section '{strange[0]}'" if strange
            else "the sections are out of order"
        )  # fmt: skip
        yield 0, what, "a station has: " + ", ".join(SECTIONS)
    for part in parts:
        terms = {"Steps": STEP_TERMS, "What goes wrong": FAULT_TERMS}.get(part.title)
        if not terms:
            continue
        if not part.parts:
            yield part.position, f"'{part.title}' is empty", "write its parts as ###"
        for one in part.parts:
            found = tuple(term["term"].strip() for term in TERM.finditer(one.text))
            for missing_term in (term for term in terms if term not in found):
                yield (
                    one.position, f"'{one.title}' has no {missing_term.lower()}",
                    f"add a definition '{missing_term}' with a line ':   …' below it",
                )  # fmt: skip


def _counts(handbook: Handbook, station: Station) -> Iterator[Problem]:
    page = station.page
    number, least = len(handbook.tolerances_of(station.id)), handbook.choices.least_tolerances
    if number < least:
        yield page.problem(
            0, f"{number} tolerances, fewer than {least}",
            f"add them to docs/data/tolerances/{station.id}.yml",
        )  # fmt: skip
    for block in _missing_blocks(page.body):
        yield page.problem(0, f"no block '/// {block}'", "place it where its section says")
    if handbook.choices.drawings and "/// drawing" not in page.body:
        yield page.problem(0, "no drawing", "place one with /// drawing | name")


@of_text
def _missing_blocks(body: str) -> tuple[str, ...]:
    return tuple(
        block for block in NEEDED_BLOCKS if not re.search(rf"^/// {block}\b", body, re.MULTILINE)
    )
