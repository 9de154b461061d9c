"""Writes what keeps a built site for use without a network: its service worker and web manifest.

The service worker carries the list of this edition's files with the sum of each. Workbox fetches
and keeps them; the worker's own part (``web/service_worker.js``) says who gets which edition.
"""

import base64
import hashlib
import json
import os
import re
import subprocess
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import UTC, datetime
from functools import lru_cache
from importlib import resources
from pathlib import Path
from urllib.parse import quote

from .shop_icons import ICONS, OWN, icon_files
from .site_assets import FOLDER
from .web_packages import web_package

WORKER = "service-worker.js"
EDITION_SCRIPT = f"{FOLDER}/edition.mjs"
MANIFEST = "manifest.webmanifest"
ICON_FOLDER = f"{FOLDER}/icons"
PLACE = '"EDITION_OF_THIS_BUILD"'

MODULES = ("core", "routing", "strategies", "precaching")
"""Workbox's modules, each after what it needs."""

NOT_KEPT = re.compile(
    r"(^|/)\."  # hosts pass over hidden files
    r"|^(_[^/]*|CNAME|sitemap\.xml\.gz)$"  # for hosts and search engines
    rf"|^{re.escape(WORKER)}$"
    r"|\.map$"  # for whoever debugs the theme
    r"|^assets/javascripts/(lunr|workers)/"  # the theme's own search, which ours takes the place of
)
"""What of a site no reader needs, or what hosts do not serve."""

IN_PATHS = "/!$&'()*+,;=:@~"  # what browsers leave as it is in an address
PAPER, BAND = "#f7f1e6", "#3a1c17"  # as in book.css
SHORT_NAME = 12  # characters, by which a home screen shows it


@dataclass(frozen=True)
class KeptFile:
    """One file of an edition: its address below the root, SHA-256 in base64, size in bytes."""

    address: str
    sum: str
    bytes: int


def write_offline(
    site: Path, name: str, description: str, *, root: Path | None = None,
    cache: Path | None = None, serving: bool = False,
) -> None:  # fmt: skip
    """Writes the service worker with the list of this edition's files, and the web manifest.

    Called last of all: whatever stands in ``site`` by then belongs to the edition. ``root`` is the
    handbook's folder, of which the edition has its date; ``cache`` is where icons are kept between
    builds; ``serving`` makes a worker for the author, who sees each change at once and yet has
    what was last built when the server is ended.
    """
    _write_manifest(site, name, description, cache)
    edition_script = site / EDITION_SCRIPT
    edition_script.parent.mkdir(parents=True, exist_ok=True)
    edition_script.unlink(missing_ok=True)
    files = kept_files(site)
    edition = edition_of(files)
    edition_script.write_text(
        "// Which edition a page is of: a name for every file of it.\n"
        f'export const edition = "{edition}";\n',
        "utf-8",
    )
    files = sorted([*files, _kept_file(site, EDITION_SCRIPT, EDITION_SCRIPT)], key=_address)
    said = {
        "id": edition,
        "date": edition_date(root or site),
        "bytes": sum(file.bytes for file in files),
        "serving": serving,
        "files": [[file.address, file.sum, file.bytes] for file in files],
    }
    (site / WORKER).write_text(worker_text(said), "utf-8")


def kept_files(site: Path) -> list[KeptFile]:
    """Every file of the site that a reader needs, in the order of their addresses."""
    names = [name for name in _names_in(site) if not NOT_KEPT.search(name)]
    folders = _named_by_folder(names)
    return sorted(
        (_kept_file(site, name, address_of(name, folders)) for name in names), key=_address
    )


def _names_in(site: Path) -> Iterator[str]:
    """Every file of the site by its path from there."""
    for folder, _, names in os.walk(site):
        above = folder[len(str(site)) :].replace(os.sep, "/").lstrip("/")
        for name in names:
            if os.path.isfile(os.path.join(folder, name)):  # no link that leads nowhere
                yield f"{above}/{name}" if above else name


def _kept_file(site: Path, name: str, address: str) -> KeptFile:
    path = os.path.join(site, name)
    found = os.stat(path)
    sum = _sum(path, found.st_size, found.st_mtime_ns, found.st_ctime_ns, found.st_ino)
    return KeptFile(address, sum, found.st_size)


@lru_cache(maxsize=50_000)
def _sum(path: str, size: int, changed_ns: int, status_ns: int, inode: int) -> str:
    """Taken once of a file that does not change: an author's session builds again and again."""
    return base64.b64encode(hashlib.sha256(Path(path).read_bytes()).digest()).decode()


def _address(file: KeptFile) -> str:
    return file.address


def _named_by_folder(names: Iterable[str]) -> bool:
    """Whether pages are addressed by their folders, as MkDocs does unless told otherwise."""
    return all(
        name.endswith("/index.html") or name in ("index.html", "404.html")
        for name in names
        if name.endswith(".html")
    )


def address_of(name: str, folders: bool = True) -> str:
    """A file's address below the site's root; a page's is its folder where ``folders``."""
    if folders and (name == "index.html" or name.endswith("/index.html")):
        name = name.removesuffix("index.html") or "./"
    return quote(name, safe=IN_PATHS)


def edition_of(files: Iterable[KeptFile]) -> str:
    """A short name for the files, the same for the same files."""
    text = "".join(f"{file.address} {file.sum}\n" for file in files)
    return hashlib.sha256(text.encode()).hexdigest()[:16]


def edition_date(root: Path) -> str:
    """The day of an edition: SOURCE_DATE_EPOCH where it is set; else the day of the last commit,
    where nothing was changed since; else today. Two builds of one commit have the same.
    """
    epoch = os.environ.get("SOURCE_DATE_EPOCH")
    if epoch:
        return _day(int(epoch))
    if _git(root, "status", "--porcelain", "--untracked-files=no") == "":
        committed = _git(root, "log", "-1", "--format=%ct")
        if committed:
            return _day(int(committed))
    return datetime.now(UTC).date().isoformat()


def _day(seconds: int) -> str:
    return datetime.fromtimestamp(seconds, UTC).date().isoformat()


def _git(folder: Path, *words: str) -> str | None:
    try:
        done = subprocess.run(
            ["git", *words], cwd=folder, capture_output=True, text=True, check=False
        )
    except OSError:
        return None
    return done.stdout.strip() if done.returncode == 0 else None


def worker_text(edition: dict[str, object]) -> str:
    """The service worker: Workbox's modules, then our part with the edition in it."""
    parts = []
    for module in MODULES:
        package = web_package(f"workbox-{module}")
        code = (package / "build" / f"workbox-{module}.prod.js").read_text("utf-8")
        version = json.loads((package / "package.json").read_text("utf-8"))["version"]
        parts.append(
            f"// workbox-{module} {version}, MIT licence\n"
            + re.sub(r"^//# sourceMappingURL=.*$", "", code, flags=re.M).strip()
        )
    own = resources.files("benchrule").joinpath("web/service_worker.js").read_text("utf-8")
    if own.count(PLACE) != 1:
        raise ValueError(f"web/service_worker.js has no place, or several, for {PLACE}")
    listed = json.dumps(edition, ensure_ascii=False, separators=(",", ":"))
    return "\n".join([*parts, own.replace(PLACE, listed)])


def _write_manifest(site: Path, name: str, description: str, cache: Path | None) -> None:
    """What a device needs to show the handbook among its programs."""
    folder = site / ICON_FOLDER
    folder.mkdir(parents=True, exist_ok=True)
    for file, data in icon_files(site / OWN, cache).items():
        (folder / file).write_bytes(data)
    manifest = {
        "name": name,
        "short_name": name if len(name) <= SHORT_NAME else "Handbook",
        "description": description,
        "start_url": "./",
        "scope": "./",
        "display": "standalone",
        "background_color": PAPER,
        "theme_color": BAND,
        "icons": [
            {
                "src": f"{ICON_FOLDER}/{file}",
                "sizes": f"{width}x{width}",
                "type": "image/png",
                "purpose": "maskable" if may_be_cut else "any",
            }
            for file, (width, may_be_cut) in ICONS.items()
            if "touch" not in file
        ],
    }
    text = json.dumps(manifest, indent=1, ensure_ascii=False)
    (site / MANIFEST).write_text(text + "\n", "utf-8")
