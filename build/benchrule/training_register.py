"""The register of training that a trainer keeps: one SQLite file, outside the handbook.

It holds what was shown on paper, from results marked again, and what a person signed off at the
bench; each on the revision of the procedure that held then.
"""

import contextlib
import sqlite3
from collections.abc import Iterable, Iterator
from pathlib import Path
from types import TracebackType
from typing import Any, NamedTuple

APPLICATION = 0x62725472  # "brTr", so that no other program's database is taken for a register
VERSION = 1
SCHEMA = """
CREATE TABLE person (
  id INTEGER PRIMARY KEY, name TEXT NOT NULL UNIQUE
);
CREATE TABLE paper (
  id INTEGER PRIMARY KEY, person INTEGER NOT NULL REFERENCES person ON DELETE CASCADE,
  assignment TEXT NOT NULL, title TEXT NOT NULL, code TEXT NOT NULL, day TEXT NOT NULL,
  digest TEXT NOT NULL, UNIQUE (assignment, code)
);
CREATE TABLE answer (
  paper INTEGER NOT NULL REFERENCES paper ON DELETE CASCADE, number INTEGER NOT NULL,
  exercise TEXT NOT NULL, skill TEXT NOT NULL, station TEXT NOT NULL, revision INTEGER NOT NULL,
  verdict TEXT NOT NULL, got REAL NOT NULL, of INTEGER NOT NULL,
  PRIMARY KEY (paper, number, station)
);
CREATE TABLE sign_off (
  person INTEGER NOT NULL REFERENCES person ON DELETE CASCADE, station TEXT NOT NULL,
  revision INTEGER NOT NULL, signed_by TEXT NOT NULL, day TEXT NOT NULL, note TEXT NOT NULL,
  PRIMARY KEY (person, station, revision, signed_by, day)
);
"""
COLUMNS = ("person", "kind", "station", "skill", "exercise", "revision", "day", "verdict", "got",
           "of", "assignment", "signed_by", "note")  # fmt: skip
PAPER, BENCH = "paper", "bench"


class RegisterError(ValueError):
    """A register that cannot be used as asked; the message says why."""


class Answer(NamedTuple):
    """A marked answer, at a station that practises its exercise."""

    number: int
    exercise: str
    skill: str
    station: str
    revision: int
    verdict: str
    got: float
    of: int


class Paper(NamedTuple):
    """A trainee's marked result."""

    assignment: str
    title: str
    code: str
    day: str
    digest: str
    answers: tuple[Answer, ...]


class Register:
    """An open register; use it in a ``with`` statement."""

    def __init__(self, path: Path, create: bool = False) -> None:
        self._path = path
        if not path.exists():
            if not create:
                raise RegisterError(f"there is no register {path}")
            try:
                path.touch(mode=0o600)  # it names people: for its owner alone
            except OSError as error:
                raise RegisterError(f"{path}: {error.strerror or 'cannot be made'}") from None
        with self._said():
            self._base = sqlite3.connect(path, isolation_level=None, timeout=5)
            try:
                self._prepare()
            except BaseException:
                self._base.close()
                raise

    def __enter__(self) -> "Register":
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:  # fmt: skip
        self._base.close()

    @contextlib.contextmanager
    def _said(self) -> Iterator[None]:
        """Says in a sentence what the database refuses."""
        try:
            yield
        except sqlite3.DatabaseError as error:
            if isinstance(error, sqlite3.OperationalError) and "locked" in str(error):
                raise RegisterError(f"{self._path} is in use by another program") from None
            raise RegisterError(f"{self._path} is no training register, or is damaged") from None

    def _prepare(self) -> None:
        """Makes a new file a register; knows its own version, and refuses what is not its own."""
        application = self._base.execute("PRAGMA application_id").fetchone()[0]
        version = self._base.execute("PRAGMA user_version").fetchone()[0]
        empty = not self._base.execute("SELECT count(*) FROM sqlite_master").fetchone()[0]
        if not empty and application != APPLICATION:
            raise RegisterError(f"{self._path} is a database of another program")
        if version > VERSION:
            raise RegisterError(f"{self._path} was written by a newer Benchrule (form {version})")
        self._base.execute("PRAGMA foreign_keys = ON")
        self._base.execute("PRAGMA secure_delete = ON")  # who is forgotten leaves no trace
        if empty:
            with self._transaction():
                for statement in SCHEMA.split(";"):
                    self._base.execute(statement)
                self._base.execute(f"PRAGMA application_id = {APPLICATION}")
                self._base.execute(f"PRAGMA user_version = {VERSION}")

    @contextlib.contextmanager
    def _transaction(self) -> Iterator[None]:
        """All of it or nothing."""
        with self._said():
            self._base.execute("BEGIN IMMEDIATE")
            try:
                yield
            except BaseException:
                self._base.execute("ROLLBACK")
                raise
            self._base.execute("COMMIT")

    def take(self, papers: Iterable[tuple[str, Paper]]) -> list[tuple[str, Paper, str]]:
        """Enters marked results of people, all or none; a result that is there is not doubled.

        Returns each with what became of it: ``taken``, ``there``, or why it was not taken.
        """
        done = []
        with self._transaction():
            for name, paper in papers:
                before = self._base.execute(
                    "SELECT paper.digest, person.name FROM paper JOIN person ON person = person.id "
                    "WHERE assignment = ? AND code = ?", (paper.assignment, paper.code),
                ).fetchone()  # fmt: skip
                if before is None:
                    self._enter(name, paper)
                    done.append((name, paper, "taken"))
                elif before == (paper.digest, name):
                    done.append((name, paper, "there"))
                elif before[0] == paper.digest:
                    done.append((name, paper, f"it is on record as {before[1]}'s"))
                else:
                    done.append((name, paper, "another result of this code is on record"))
        return done

    def _enter(self, name: str, paper: Paper) -> None:
        made = self._base.execute(
            "INSERT INTO paper (person, assignment, title, code, day, digest) VALUES (?,?,?,?,?,?)",
            (
                self._person(name),
                paper.assignment,
                paper.title,
                paper.code,
                paper.day,
                paper.digest,
            ),
        )
        self._base.executemany(
            "INSERT INTO answer VALUES (?,?,?,?,?,?,?,?,?)",
            [(made.lastrowid, *one) for one in paper.answers],
        )

    def _person(self, name: str) -> int:
        self._base.execute("INSERT OR IGNORE INTO person (name) VALUES (?)", (name,))
        found: int = self._base.execute("SELECT id FROM person WHERE name = ?", (name,)).fetchone()[
            0
        ]
        return found

    def sign_off(
        self, person: str, station: str, revision: int, signed_by: str, day: str, note: str
    ) -> bool:
        """Practical skill, signed off at the bench; False where the same entry is there already."""
        with self._transaction():
            done = self._base.execute(
                "INSERT OR IGNORE INTO sign_off VALUES (?,?,?,?,?,?)",
                (self._person(person), station, revision, signed_by, day, note),
            )
            return done.rowcount == 1

    def people(self) -> list[str]:
        """Everybody on record."""
        with self._said():
            return [name for (name,) in self._base.execute("SELECT name FROM person ORDER BY name")]

    def rows(self, person: str = "") -> list[dict[str, Any]]:
        """Every entry, of everybody or of one person, each with all of ``COLUMNS``."""
        query = f"""
            SELECT name, '{PAPER}', station, skill, exercise, revision, day, verdict, got, of,
                   assignment, '', ''
            FROM answer JOIN paper ON paper = paper.id JOIN person ON person = person.id
            WHERE ?1 IN ('', name)
            UNION ALL
            SELECT name, '{BENCH}', station, '', '', revision, day, '', NULL, NULL, '', signed_by, note
            FROM sign_off JOIN person ON person = person.id WHERE ?1 IN ('', name)
            ORDER BY 1, 3, 2, 7, 5
        """
        with self._said():
            return [dict(zip(COLUMNS, row, strict=True)) for row in
                    self._base.execute(query, (person,))]  # fmt: skip

    def forget(self, person: str) -> bool:
        """Removes a person and every entry; False where there is nobody of that name."""
        with self._transaction():
            done = self._base.execute("DELETE FROM person WHERE name = ?", (person,))
            return done.rowcount == 1
