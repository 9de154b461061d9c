"""Styles, scripts and fonts that every page carries: our own, and what comes from npm."""

from pathlib import Path

from .web_packages import web_package

ASSETS = Path(__file__).resolve().parent / "theme" / "assets"
FOLDER = "assets/benchrule"
SCRIPT = f"{FOLDER}/page.mjs"
STORE = f"{FOLDER}/store.mjs"
SEARCH_WORKER = f"{FOLDER}/search.js"
STYLES = [
    f"{FOLDER}/{name}.css"
    for name in ("fonts", "book", "calculator", "drawing", "learning", "offline", "print")
]
FONTS = {
    "literata.woff2": ("@fontsource-variable/literata", "literata-latin-wght-normal.woff2"),
    "literata-italic.woff2": ("@fontsource-variable/literata", "literata-latin-wght-italic.woff2"),
    "commissioner.woff2": (
        "@fontsource-variable/commissioner", "commissioner-latin-wght-normal.woff2",
    ),
}  # fmt: skip


LIBRARIES = {
    "idb.mjs": ("idb", "build/index.js"),
    "minisearch.mjs": ("minisearch", "dist/es/index.js"),
    "uqr.mjs": ("uqr", "dist/index.mjs"),
    "stemmer.mjs": ("stemmer", "index.js"),
}


def asset_files() -> dict[str, Path]:
    """Address in the site → file on disk."""
    files = {
        f"{FOLDER}/{path.name}": path
        for path in sorted(ASSETS.iterdir())
        if path.is_file() and f"{FOLDER}/{path.name}" not in (SCRIPT, STORE)  # they are filled in
    }
    for name, (package, file) in FONTS.items():
        files[f"{FOLDER}/fonts/{name}"] = web_package(package) / "files" / file
    for name, (package, file) in LIBRARIES.items():
        files[f"{FOLDER}/{name}"] = web_package(package) / file
    return files
