"""Keeps what a build worked out, for the next build from the same sources.

A value is named by what it was made from; the file as a whole by a key over every source of the
calculators and of the build, so that nothing outlives the code that made it. What a build did not
ask for is dropped when it is saved.
"""

import contextlib
import hashlib
import json
from collections.abc import Callable, Iterable
from pathlib import Path
from typing import Any


class Kept:
    """A store of JSON values; without a file it keeps them for this run only."""

    def __init__(self, file: Path | None = None, key: str = "") -> None:
        self._file, self._key = file, key
        self._values: dict[str, Any] = {}
        self._used: set[str] = set()
        self._new = False
        if file is not None:
            with contextlib.suppress(OSError, ValueError):
                found = json.loads(file.read_text("utf-8"))
                if found["key"] == key:
                    self._values = found["values"]

    def get(self, name: str, make: Callable[[], Any]) -> Any:
        """The value called ``name``; made now if it is not there."""
        if name not in self._values:
            # Through text and back, so that a value is the same whether it was kept or made.
            self._values[name] = json.loads(json.dumps(make()))
            self._new = True
        self._used.add(name)
        return self._values[name]

    def begin(self) -> None:
        """Another build begins with the same store."""
        self._used = set()

    def save(self) -> None:
        """Writes what this run has used; a folder that refuses is no reason to stop."""
        if self._file is None or not (self._new or len(self._used) < len(self._values)):
            return
        values = {name: self._values[name] for name in sorted(self._used)}
        with contextlib.suppress(OSError):
            self._file.parent.mkdir(parents=True, exist_ok=True)
            fresh = self._file.with_suffix(".new")
            fresh.write_text(json.dumps({"key": self._key, "values": values}), "utf-8")
            fresh.replace(self._file)


def key_of(folders: Iterable[Path]) -> str:
    """A key over every Python file and schema in the folders."""
    key = hashlib.sha256()
    for folder in folders:
        for path in sorted([*folder.rglob("*.py"), *folder.rglob("*.schema.json")]):
            key.update(path.relative_to(folder).as_posix().encode() + b"\0" + path.read_bytes())
    return key.hexdigest()


def digest(text: str) -> str:
    """A short name for a text."""
    return hashlib.sha256(text.encode()).hexdigest()[:20]
