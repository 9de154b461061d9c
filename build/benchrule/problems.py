"""A problem of a handbook, said so that its author can mend it."""

from dataclasses import dataclass
from pathlib import Path


@dataclass(frozen=True, order=True)
class Problem:
    """Where a problem is, what is wrong and what to do. Prints as ``file:line: what; to do``."""

    file: str
    line: int
    what: str
    to_do: str

    def __str__(self) -> str:
        return f"{self.file}:{self.line}: {self.what}; {self.to_do}"


def place(path: Path, root: Path) -> str:
    """A file's name as a problem says it: from the handbook's folder."""
    try:
        return path.resolve().relative_to(root.resolve()).as_posix()
    except ValueError:
        return path.as_posix()
