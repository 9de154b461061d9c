"""Keeps what was made from the handbook until one of the things it was made from changes.

A piece is known by its name. It is taken again where its own text, everything that was read of the
handbook when it was made, and the key over all else (the sources, the settings, the addresses of
the site) are still the same; else it is made anew. So a changed tolerance reaches every page that
shows it, and no other page is made again for it.
"""

import contextlib
import hashlib
import json
import zlib
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from .handbook import Handbook
from .watched import Sums, Watched

Make = Callable[[Handbook], Any]
Piece = Callable[[str, str, Make], Any]
"""Given a name, what the piece is made from besides the handbook, and how to make it of the handbook
that it is handed: returns what was made, now or before, as plain data."""

QUICK = 1  # packs a page well enough in a millisecond


def made_now(book: Handbook) -> Piece:
    """Makes every piece of ``book`` when it is asked for, and keeps none."""
    return lambda name, own, make: make(book)


@dataclass
class _Piece:
    own: str
    reads: dict[str, str]  # what was read of the handbook → its sum then
    value: Any


class Unchanged:
    """A store of pieces, in memory and, given a ``folder``, on disk for the next build."""

    def __init__(self, folder: Path | None = None) -> None:
        self._folder = folder
        self._pieces: dict[str, _Piece] = {}
        self._used: set[str] = set()
        self._last_sums: Sums | None = None
        self.made: list[str] = []

    def begin(self, book: Handbook, key: str) -> None:
        """A build of ``book`` begins; ``key`` stands for all that no piece says of itself."""
        self._key = key
        self._sums = self._last_sums = Sums(book, self._last_sums)
        self._watched = Watched(book)
        self._used = set()
        self.made = []

    def get(self, name: str, own: str, make: Make) -> Any:
        """The piece called ``name`` as plain data; ``make`` reads the handbook that it is given.

        ``own`` is what it is made from besides the handbook. A piece that ``make`` gives as None is
        not kept. Who is given a piece must not change it: the next build is given the same.
        """
        self._used.add(name)
        own = hashlib.sha256(f"{self._key}\0{own}".encode()).hexdigest()
        piece = self._pieces.get(name) or self._read(name, own)
        if piece and piece.own == own and self._holds(piece.reads):
            self._pieces[name] = piece
            self._watched.seen |= piece.reads.keys()  # what a part has read, the whole has read
            return piece.value
        outer, self._watched.seen = self._watched.seen, set()
        try:
            value = make(self._watched)
            seen = self._watched.seen
        finally:
            self._watched.seen = outer
        outer |= seen
        self.made.append(name)
        text = json.dumps(value, ensure_ascii=False)
        # Through text and back, so that a piece is the same whether it was kept or made.
        value = json.loads(text)
        if value is not None:
            reads = {one: self._sums.of(one) for one in sorted(seen)}
            piece = self._pieces[name] = _Piece(own, reads, value)
            self._write(name, piece, zlib.compress(text.encode(), QUICK))
        return value

    def _holds(self, reads: dict[str, str]) -> bool:
        try:
            return all(self._sums.of(name) == sum for name, sum in reads.items())
        except KeyError:  # a damaged note
            return False

    def _file(self, name: str) -> Path | None:
        if self._folder is None:
            return None
        return self._folder / hashlib.sha256(name.encode()).hexdigest()[:32]

    def _read(self, name: str, own: str) -> _Piece | None:
        file = self._file(name)
        if file is None:
            return None
        try:
            head, _, packed = file.read_bytes().partition(b"\n")
            found = json.loads(head)
            if found["own"] != own or found["sum"] != hashlib.sha256(packed).hexdigest():
                return None  # of other sources, or written by halves
            return _Piece(own, found["reads"], json.loads(zlib.decompress(packed)))
        except (OSError, ValueError, KeyError, TypeError, zlib.error):
            return None

    def _write(self, name: str, piece: _Piece, packed: bytes) -> None:
        file = self._file(name)
        if file is None:
            return
        said = {"own": piece.own, "reads": piece.reads, "sum": hashlib.sha256(packed).hexdigest()}
        with contextlib.suppress(OSError):  # a folder that refuses is no reason to stop
            file.parent.mkdir(parents=True, exist_ok=True)
            file.write_bytes(json.dumps(said).encode() + b"\n" + packed)

    def end(self) -> None:
        """Forgets what this build did not ask for."""
        self._pieces = {name: one for name, one in self._pieces.items() if name in self._used}
        if self._folder is None or not self._folder.exists():
            return
        wanted = {self._file(name) for name in self._used}
        for file in self._folder.iterdir():
            if file not in wanted:
                with contextlib.suppress(OSError):
                    file.unlink()
