"""What a serving session remembers of the site it built last, so that it writes only what is new.

Every file of the site has a stamp over all that it is made from: a page its content, its place in
the order of the book and what the theme shows of it; an asset its bytes. A file with the stamp that
it had is left as it stands in the site's folder. Whatever else lies there (the search's places, the
map of the site, the service worker) is taken away before each build and written anew.

Knows nothing of MkDocs. Where a handbook uses what we cannot see through (other plugins, hooks, a
theme folder of its own), no key is given, and each build is a whole one.
"""

import hashlib
import json
import os
from collections.abc import Iterable
from pathlib import Path
from typing import Any

from .kept import Kept
from .unchanged import Unchanged

LISTED = 3


class Session:
    """The stamps of a site's files, and what was read for them."""

    def __init__(self) -> None:
        self.unchanged: Unchanged | None = None
        self.kept: tuple[str, Kept] | None = None
        self.entries: dict[str, list[dict[str, Any]]] = {}  # of the search, by the page's source
        self.sources = ""  # the key over every source of Python, where it was taken already
        self.written: list[str] = []  # addresses of the pages that the last build wrote
        self._stamps: dict[str, str] = {}
        self._before: dict[str, str] = {}
        self._key = ""
        self.begun = False  # whether builds are made in a session at all
        self.going_on = False  # whether this one goes on from the last

    def begin(self, key: str, site: Path) -> bool:
        """Begins a build; says whether it may go on from the last one."""
        self.begun = True
        self.going_on = bool(key) and key == self._key
        if not self.going_on:
            self.entries = {}
            self._stamps = {}
        self._before, self._stamps, self.written = self._stamps, {}, []
        self._key = ""  # until this build has come to its end
        if self.going_on:
            clear(site, self._before)
        return self.going_on

    def end(self, key: str) -> None:
        """The build has come to its end, and the site stands for it."""
        self._key = key

    def is_new(self, name: str, stamp: str, site: Path) -> bool:
        """Whether the file ``name`` has to be written; its stamp is remembered."""
        self._stamps[name] = stamp
        return not (self._before.get(name) == stamp and (site / name).is_file())

    def clear_gone(self, site: Path) -> None:
        """Takes away what the last build wrote and this one does not."""
        clear(site, self._stamps)

    def said(self, seconds: float) -> str:
        """The build in a line for the terminal."""
        pages = [page or "the first page" for page in self.written]
        if not pages:
            what = "no page has changed"
        elif len(pages) <= LISTED:
            what = ", ".join(pages)
        else:
            what = f"{', '.join(pages[:LISTED])} and {len(pages) - LISTED} more pages"
        return f"Built again in {seconds:.1f} s: {what}"


def clear(site: Path, but: Iterable[str]) -> None:
    """Takes away every file of the site but those named, and the folders that this leaves empty."""
    wanted = {os.path.join(site, *name.split("/")) for name in but}
    for folder, folders, names in os.walk(site, topdown=False):  # what is in it comes before it
        linked = [name for name in folders if os.path.islink(os.path.join(folder, name))]
        gone = {
            one for name in (*names, *linked) if (one := os.path.join(folder, name)) not in wanted
        }
        for one in gone:
            os.unlink(one)
        if folder != str(site) and not os.listdir(folder):
            os.rmdir(folder)


def stamp(*parts: Any) -> str:
    """A sum over plain data; what is not plain goes in as its text."""
    return hashlib.sha256(json.dumps(parts, default=str).encode()).hexdigest()


def file_stamp(path: Path) -> str:
    """What tells one state of a file on disk from another."""
    found = path.stat()
    return stamp(str(path), found.st_mtime_ns, found.st_ctime_ns, found.st_size, found.st_ino)
