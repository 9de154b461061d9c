"""Reads YAML safely and remembers on which line every value stands.

Dates stay text, ``on`` and ``no`` are words (only true and false are truth values), duplicate keys
are errors, and a syntax error is a ``Problem``, not a traceback.
"""

import re
from dataclasses import dataclass, field
from typing import Any

import yaml

from .problems import Problem
from .yaml_faults import yaml_fault

Path = tuple[str | int, ...]
DEEPEST, MOST_VALUES, LONGEST_TEXT = 40, 50_000, 1_000_000
LARGEST = 1e30
LONGEST_ECHO = 60
COLLECTIONS = ("tag:yaml.org,2002:map", "tag:yaml.org,2002:seq")
UNSEEN = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069]")
"""Characters that control a terminal, or make a figure read backwards."""


@dataclass
class Located:
    """A document's plain value, and the line of every path into it."""

    value: Any
    lines: dict[Path, int] = field(default_factory=dict)

    def line(self, path: Path) -> int:
        """The line of a path, or of the nearest thing around it."""
        for length in range(len(path), -1, -1):
            if path[:length] in self.lines:
                return self.lines[path[:length]]
        return 1


_BaseLoader: Any = getattr(yaml, "CSafeLoader", yaml.SafeLoader)


class _Loader(_BaseLoader):  # type: ignore[misc]
    """The safe loader, but for dates and the old words of truth."""


LEFT_AS_TEXT = ("tag:yaml.org,2002:timestamp", "tag:yaml.org,2002:bool")
_Loader.yaml_implicit_resolvers = {
    first: [(tag, pattern) for tag, pattern in pairs if tag not in LEFT_AS_TEXT]
    for first, pairs in yaml.SafeLoader.yaml_implicit_resolvers.items()
}
_Loader.add_implicit_resolver("tag:yaml.org,2002:bool", re.compile(r"^(?:true|false)$"), list("tf"))


class _Reading:
    """A document being built: its value, its lines, and what is wrong with it."""

    def __init__(self, loader: Any, file: str, first_line: int) -> None:
        self._loader, self._file, self._first_line = loader, file, first_line
        self.located = Located(None)
        self.problems: list[Problem] = []
        self._left = MOST_VALUES

    def build(self, node: Any, path: Path) -> Any:
        """The value of a node; what cannot be taken is a problem, and None."""
        if node is None:
            return None
        self._left -= 1
        if len(path) > DEEPEST or self._left < 0:
            what = "nested too deep" if len(path) > DEEPEST else f"more than {MOST_VALUES} values"
            raise _TooMuch(f"{what} (does an * stand for what it stands in?)", self._line(node))
        self.located.lines.setdefault(path, self._line(node))
        if not isinstance(node, yaml.ScalarNode) and node.tag not in COLLECTIONS:
            what = f"'{_short(node.tag)}' is no text, number, list or fields of an entry"
            self._problem(node, what, "take away the ! and the word after it")
            return None
        if isinstance(node, yaml.MappingNode):
            return self._mapping(node, path)
        if isinstance(node, yaml.SequenceNode):
            return [self.build(child, (*path, place)) for place, child in enumerate(node.value)]
        return self._plain(node)

    def _mapping(self, node: Any, path: Path) -> dict[Any, Any]:
        mapping: dict[Any, Any] = {}
        for key_node, value_node in node.value:
            if not isinstance(key_node, yaml.ScalarNode):
                self._problem(
                    key_node, "a name is a list or has fields of its own", "name it in words"
                )
                continue
            key = self._plain(key_node)
            if key in mapping:
                self._problem(key_node, f"'{_short(key)}' stands here twice", "keep one of the two")
            self.located.lines[(*path, key)] = self._line(key_node)
            mapping[key] = self.build(value_node, (*path, key))
        return mapping

    def _plain(self, node: Any) -> Any:
        """A text, a number, a truth value or nothing."""
        try:
            value = self._loader.construct_object(node)
        except (yaml.constructor.ConstructorError, ArithmeticError, AttributeError, LookupError,
                TypeError, ValueError):  # fmt: skip
            value = NotImplemented
        if value is not None and not isinstance(value, str | int | float):
            self._problem(
                node, f"'{_short(node.value)}' is no text, number, true or false",
                "put it in quotes, without a ! before it",
            )  # fmt: skip
            return None
        if isinstance(value, str) and (unseen := UNSEEN.search(value)):
            what = f"a character that cannot be seen (U+{ord(unseen[0]):04X}) stands in the text"
            self._problem(node, what, "type the text anew")
            return None
        if isinstance(value, int | float) and not abs(value) <= LARGEST:
            what = f"'{_short(node.value)}' is no number that can be reckoned with"
            self._problem(node, what, "write a figure, or put a text in quotes")
            return None
        return value

    def _line(self, node: Any) -> int:
        line: int = self._first_line + node.start_mark.line
        return line

    def _problem(self, node: Any, what: str, to_do: str) -> None:
        self.problems.append(Problem(self._file, self._line(node), what, to_do))


class _TooMuch(Exception):
    """A document without an end; the message says so, ``line`` where."""

    def __init__(self, what: str, line: int) -> None:
        super().__init__(what)
        self.line = line


def _short(value: object) -> str:
    text = " ".join(str(value).split())
    return text if len(text) <= LONGEST_ECHO else f"{text[:LONGEST_ECHO]}…"


def read_yaml(text: str, file: str, first_line: int = 1) -> tuple[Located, list[Problem]]:
    """The document in ``text``; ``first_line`` is the line of ``file`` on which it begins.

    A document holds mappings, lists, texts, finite numbers, true, false and nothing else.
    """
    if len(text) > LONGEST_TEXT:  # a parser would be minutes about it
        what = f"more than {LONGEST_TEXT:,} characters"
        return Located(None), [Problem(file, first_line, what, "make several files of it")]
    try:
        loader = _Loader(text)
        try:
            reading = _Reading(loader, file, first_line)
            reading.located.value = reading.build(loader.get_single_node(), ())
        finally:
            loader.dispose()
    except yaml.YAMLError as error:
        return Located(None), [Problem(file, *yaml_fault(error, first_line))]
    except _TooMuch as error:
        return Located(None), [
            Problem(file, error.line, str(error), "write it out, or make it less")
        ]
    except (UnicodeEncodeError, RecursionError):  # half a letter; only the slow loader goes deep
        return Located(None), [
            Problem(file, first_line, "not YAML: it cannot be read", "write it anew")
        ]
    return reading.located, reading.problems
