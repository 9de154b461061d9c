"""Reads and validates docs/data: every kind of entry against its JSON Schema.

A kind is a file (``gauges.yml``) or a folder of files (``gauges/*.yml``); entries are mappings
from id to entry, and an id is unique in its kind.
"""

import json
import posixpath
from dataclasses import dataclass
from functools import cache, cached_property, partial
from importlib import resources
from pathlib import Path
from typing import TYPE_CHECKING, Any

from .kept import Kept, digest
from .located_yaml import Located, read_yaml
from .problems import Problem, place

if TYPE_CHECKING:  # imported where it is needed: most builds find every file sound already
    from jsonschema import Draft202012Validator
    from jsonschema.exceptions import ValidationError

KINDS = (
    "sources", "gauges", "hazards", "glossary", "groups", "models", "materials", "tolerances",
    "asked", "orders", "records",
)  # fmt: skip


@dataclass(frozen=True)
class Entry:
    """One entry of docs/data: its id, its fields, and where it stands."""

    id: str
    fields: Any  # a mapping; a list of texts for ``asked``
    file: str
    located: Located
    stem: str  # name of the file without its ending

    def line(self, *path: str | int) -> int:
        """The line of a field of this entry."""
        return self.located.line((self.id, *path))

    def problem(self, what: str, to_do: str, *path: str | int) -> Problem:
        """A problem of this entry, at the line of a field."""
        return Problem(self.file, self.line(*path), f"{self.id}: {what}", to_do)


@cache
def schema(kind: str) -> "Draft202012Validator":
    """The validator of a kind, front matter (``station``) included."""
    from jsonschema import Draft202012Validator

    text = resources.files("benchrule").joinpath(f"schemas/{kind}.schema.json").read_text("utf-8")
    return Draft202012Validator(json.loads(text))


def load_kind(
    data: Path, kind: str, root: Path, kept: Kept
) -> tuple[dict[str, Entry], list[Problem]]:
    """All entries of one kind under the folder ``data``, and what is wrong with them.

    A file that was found right before is not gone through again.
    """
    files = [data / f"{kind}.yml", *sorted((data / kind).glob("*.yml"))]
    folder = place(data, root)
    entries: dict[str, Entry] = {}
    problems: list[Problem] = []
    for path in files:
        if not path.exists():
            continue
        file = posixpath.join(folder, path.relative_to(data).as_posix())
        try:
            text = path.read_text("utf-8")
        except UnicodeDecodeError:
            problems.append(Problem(file, 1, "not UTF-8 text", "save the file as UTF-8"))
            continue
        found, faults = load_text(text, kind, file, path.stem, kept)
        problems += faults
        for id, entry in found.items():
            if id in entries:
                first = entries[id]
                problems.append(
                    entry.problem(f"already stands in {first.file}:{first.line()}", "rename one")
                )
            entries[id] = entry
    return entries, problems


def load_text(
    text: str, kind: str, file: str, stem: str, kept: Kept
) -> tuple[dict[str, Entry], list[Problem]]:
    """The entries of one file of a kind, and what is wrong with them."""
    located, problems = read_kept(text, file, kept)
    if located.value is None:
        return {}, problems
    if not isinstance(located.value, dict):
        return {}, [
            *problems, Problem(file, 1, "not a mapping from ids to entries", "give ids"),
        ]  # fmt: skip
    sound = kept.get(f"sound {kind} {digest(text)}", partial(_is_sound, kind, located.value))
    entries = {}
    for id, fields in located.value.items():
        if not isinstance(fields, dict | list) and fields is not None:
            problems.append(Problem(
                file, located.line((id,)), f"'{id}' stands without an id above it",
                "begin each entry with its id and a colon, and set its fields in by two spaces",
            ))  # fmt: skip
            continue
        faults = [] if sound else list(schema(kind).iter_errors(fields))
        problems += [_problem(fault, file, located, (id,)) for fault in faults]
        if not isinstance(id, str):
            what = f"the id {id} is a number, a day or a truth value to YAML"
            problems.append(Problem(file, located.line((id,)), what, f"put it in quotes: '{id}'"))
        elif not faults:
            entries[id] = Entry(id, fields, file, located, stem)
    return entries, problems


def read_kept(
    text: str, file: str, kept: Kept, first_line: int = 1
) -> tuple[Located, list[Problem]]:
    """A document as ``read_yaml`` reads it; one that was read before is not taken apart again."""
    name = f"yaml {digest(text)} {first_line}"
    plain = kept.get(name, partial(_plain, text, file, first_line))
    if plain is None:  # it has a problem, or it holds what JSON cannot
        return read_yaml(text, file, first_line)
    return _KeptLocated(plain["value"], plain["lines"]), []


class _KeptLocated(Located):
    """A document read before; its lines are placed only where a problem asks for one."""

    def __init__(self, value: Any, listed: list[Any]) -> None:
        self.value = value
        self._listed = listed

    @cached_property
    def lines(self) -> dict[tuple[str | int, ...], int]:  # type: ignore[override]
        """The line of every path."""
        return {tuple(path): line for path, line in self._listed}


def _plain(text: str, file: str, first_line: int) -> dict[str, Any] | None:
    located, problems = read_yaml(text, file, first_line)
    if problems or json.loads(json.dumps(located.value)) != located.value:
        return None
    return {"value": located.value, "lines": [[list(p), line] for p, line in located.lines.items()]}


def _is_sound(kind: str, content: dict[Any, Any]) -> bool:
    return all(schema(kind).is_valid(fields) for fields in content.values())


def validate(value: Any, kind: str, file: str, located: Located, kept: Kept) -> list[Problem]:
    """The schema problems of one value (a page's front matter, say)."""
    if kept.get(f"sound {kind} {digest(repr(value))}", lambda: schema(kind).is_valid(value)):
        return []
    return [_problem(fault, file, located, ()) for fault in schema(kind).iter_errors(value)]


def _problem(
    fault: "ValidationError", file: str, located: Located, base: tuple[str | int, ...]
) -> Problem:
    path = (*base, *fault.absolute_path)
    where = ".".join(str(part) for part in path) or "the entry"
    to_do = str(fault.schema.get("description", "")) if isinstance(fault.schema, dict) else ""
    what = fault.message if len(fault.message) < 160 else fault.message[:157] + "..."
    if fault.validator == "anyOf":  # the library quotes the whole entry here
        options: list[dict[str, list[str]]] = list(fault.validator_value)  # type: ignore[arg-type]
        needed = [name for option in options for name in option.get("required", [])]
        what = f"has neither {' nor '.join(needed)}"
    return Problem(file, located.line(path), f"{where}: {what}", to_do or "mend the field")
