"""What people ask with leads to places that exist, and each phrase to one place only."""

from collections.abc import Iterator

from ..handbook import Handbook
from ..places import known_places
from ..problems import Problem


def find_problems(handbook: Handbook) -> Iterator[Problem]:
    """Unknown places, and phrases that stand at two."""
    known = known_places(handbook) if handbook.entries["asked"] else set()
    seen: dict[str, str] = {}
    for id, entry in handbook.entries["asked"].items():
        if id not in known:
            yield entry.problem(
                "there is no such place",
                "name it station#heading, hazard:id, calc:id or a tolerance",
            )
        for number, phrase in enumerate(entry.fields):
            said = " ".join(phrase.lower().split())
            if said in seen:
                yield entry.problem(
                    f"'{phrase}' also stands at {seen[said]}", "keep it where it fits best", number
                )
            seen.setdefault(said, id)
