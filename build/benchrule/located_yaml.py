"""Reads YAML safely and remembers on which line every value stands.

Dates stay text, ``on`` and ``no`` are words (only true and false are truth values), duplicate keys
are errors, and a syntax error is a ``Problem``, not a traceback.
"""

import re
from dataclasses import dataclass, field
from typing import Any

import yaml

from .problems import Problem

Path = tuple[str | int, ...]


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


def read_yaml(text: str, file: str, first_line: int = 1) -> tuple[Located, list[Problem]]:
    """The document in ``text``; ``first_line`` is the line of ``file`` on which it begins."""
    try:
        loader = _Loader(text)
        try:
            node = loader.get_single_node()
            problems: list[Problem] = []
            located = Located(None)
            located.value = _build(node, loader, (), located, problems, file, first_line)
        finally:
            loader.dispose()
    except yaml.YAMLError as error:
        mark = getattr(error, "problem_mark", None)
        line = first_line + (mark.line if mark else 0)
        what = getattr(error, "problem", None) or "the YAML cannot be read"
        return Located(None), [Problem(file, line, f"not YAML: {what}", "mend the YAML")]
    return located, problems


def _build(
    node: Any, loader: Any, path: Path, located: Located,
    problems: list[Problem], file: str, first_line: int,
) -> Any:  # fmt: skip
    if node is None:
        return None
    located.lines.setdefault(path, first_line + node.start_mark.line)
    if isinstance(node, yaml.MappingNode):
        mapping: dict[Any, Any] = {}
        for key_node, value_node in node.value:
            key = loader.construct_object(key_node)
            line = first_line + key_node.start_mark.line
            if key in mapping:
                problems.append(
                    Problem(file, line, f"'{key}' stands here twice", "keep one of the two")
                )
            located.lines[(*path, key)] = line
            mapping[key] = _build(
                value_node, loader, (*path, key), located, problems, file, first_line
            )
        return mapping
    if isinstance(node, yaml.SequenceNode):
        return [
            _build(child, loader, (*path, place), located, problems, file, first_line)
            for place, child in enumerate(node.value)
        ]
    return loader.construct_object(node)
