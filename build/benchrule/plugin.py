"""The MkDocs plugin: options and events, nothing else. The only module that knows MkDocs."""

import logging
import os
import posixpath
import re
from collections.abc import Callable
from pathlib import Path
from typing import Any
from urllib.parse import urljoin

from jinja2 import Environment, FileSystemBytecodeCache
from mkdocs.commands.build import build as build_site
from mkdocs.config import config_options as options
from mkdocs.config import load_config
from mkdocs.config.base import Config
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import Abort
from mkdocs.plugins import BasePlugin, event_priority
from mkdocs.structure.files import File, Files, InclusionLevel
from mkdocs.structure.pages import Page

from .checks import find_problems
from .exercise_bank import bank_text, exercise_bank
from .faces.context import Context
from .generated_pages import generated_pages, navigation, station_body
from .handbook import Handbook, load_handbook, make_importable
from .kept import Kept, key_of
from .markdown_extension import BenchruleExtension
from .order_files import sheet_files, template_files
from .problems import Problem
from .runtime import packages_folders, runtime_folder
from .search_entries import search_entries
from .site_assets import ASSETS, FOLDER, SCRIPT, SEARCH_WORKER, STYLES, asset_files

THEME_WORKER = re.compile(
    r'("search": "[^"]*?)assets/javascripts/workers/search\.[0-9a-f]+\.min\.js'
)
SEARCH_DIALOG = 'data-md-component="search" role="dialog"'

log = logging.getLogger("mkdocs.plugins.benchrule")


class Options(Config):
    """What mkdocs.yml may set for the plugin."""

    calculators = options.ListOfItems(options.Type(str), default=[])
    """Importable packages of calculators of the shop's own, beside mkdocs.yml."""

    cache = options.Type(str, default=".cache/benchrule")
    """Where the packed runtime is kept between builds."""


class BenchrulePlugin(BasePlugin[Options]):
    """Reads the handbook, stops on its problems, makes its pages, search entries and runtime."""

    def __init__(self) -> None:
        super().__init__()
        self.extension = BenchruleExtension()
        self.handbook: Handbook | None = None
        self.generated: dict[str, str] = {}

    def on_startup(self, *, command: str, dirty: bool) -> None:
        """Keeps the instance across rebuilds of a serving session."""

    def on_config(self, config: MkDocsConfig) -> MkDocsConfig:
        """Reads and checks the handbook; adds our extensions, theme parts, styles and script."""
        root = Path(config.config_file_path or "mkdocs.yml").resolve().parent
        packages = tuple(self.config.calculators)
        make_importable(root, packages)
        kept = Kept(root / self.config.cache / "kept.json", _sources_key(packages))
        handbook, problems = load_handbook(root, Path(config.docs_dir).resolve(), packages, kept)
        report(problems or find_problems(handbook))
        self.handbook = handbook
        self.generated = generated_pages(handbook)
        self.runtime = runtime_folder(root / self.config.cache, ("calculators", *packages))
        if config.nav is None:
            config.nav = [entry for entry in navigation(handbook) if all(entry.values())]
        config.markdown_extensions += [self.extension, self.extension.blocks()]  # type: ignore[list-item]
        config.theme.dirs.insert(0, str(ASSETS.parent / "overrides"))
        config.extra_css[:0] = [style for style in STYLES if style not in config.extra_css]
        if SCRIPT not in [str(script) for script in config.extra_javascript]:
            script = options.ExtraScriptValue(SCRIPT)
            script.type = "module"
            config.extra_javascript.append(script)
        config.watch += [config.docs_dir, *(str(root / name) for name in packages)]
        return config

    def on_files(self, files: Files, *, config: MkDocsConfig) -> Files:
        """Adds the pages and assets that the build makes; takes data and drawings out."""
        assert self.handbook is not None
        for file in list(files):
            if file.src_uri.startswith(("data/", "drawings/")):
                files.remove(file)
        for source, text in self.generated.items():
            files.append(File.generated(config, source, content=text))
        for name, path in asset_files().items():
            files.append(_asset(config, name, path))
        for path in sorted(self.runtime.iterdir()):
            if path.name != "manifest.json":
                files.append(_asset(config, f"runtime/{self._key()}/{path.name}", path))
        bank = exercise_bank(self.handbook)
        bank_file = f"exercises-{bank['edition']}.json"
        page_end = "/" if config.use_directory_urls else ".html"
        script = (ASSETS / "page.mjs").read_text("utf-8")
        script = script.replace("RUNTIME_KEY", self._key()).replace("BANK_FILE", bank_file)
        texts = {SCRIPT: script, f"{FOLDER}/{bank_file}": bank_text(bank | {"page_end": page_end})}
        made = texts | sheet_files(self.handbook) | template_files(self.handbook)
        for name, content in made.items():
            file = File.generated(
                config, name, content=content, inclusion=InclusionLevel.NOT_IN_NAV
            )
            files.append(file)
        return files

    def on_env(self, env: Environment, /, *, config: MkDocsConfig, files: Files) -> Environment:
        """Keeps the theme's compiled templates between builds."""
        folder = Path(config.config_file_path).resolve().parent / self.config.cache / "templates"
        folder.mkdir(parents=True, exist_ok=True)
        env.bytecode_cache = FileSystemBytecodeCache(str(folder))
        return env

    def _key(self) -> str:
        return self.runtime.name.removeprefix("runtime-")

    def on_page_markdown(
        self, markdown: str, /, *, page: Page, config: MkDocsConfig, files: Files
    ) -> str:
        """Tells the Markdown extension which page is at hand; frames the stations."""
        assert self.handbook is not None
        source = page.file.src_uri
        site = config.site_url or ""
        self.extension.context = Context(
            self.handbook, source, _linker(page.file, files), _addresser(site, files), site,
            links_terms=source not in self.generated and source != "index.md",
        )  # fmt: skip
        is_station = any(station.page.source == source for station in self.handbook.stations)
        if is_station or source in self.generated:
            # Their places have search entries of their own; the plugin need not read the pages.
            page.meta["search"] = {"exclude": True}
        if is_station:
            title = "" if markdown.lstrip().startswith("# ") else f"# {page.meta['title']}\n\n"
            return title + station_body(markdown)
        return markdown

    def on_post_page(self, output: str, /, *, page: Page, config: MkDocsConfig) -> str:
        """Puts our ranking in the theme's search, and gives its dialog a name for screen readers."""
        output = THEME_WORKER.sub(rf"\1{SEARCH_WORKER}", output, count=1)
        return output.replace(SEARCH_DIALOG, f'{SEARCH_DIALOG} aria-label="Search"', 1)

    @event_priority(100)
    def on_post_build(self, *, config: MkDocsConfig) -> None:
        """Adds the search entries before the search plugin writes its index."""
        assert self.handbook is not None
        self.handbook.kept.save()
        search = config.plugins.get("material/search") or config.plugins.get("search")
        if search is None:
            return
        directory_urls = config.use_directory_urls
        sources = [*self.generated, *(page.source for page in self.handbook.pages)]
        address = {source: _address(source, directory_urls) for source in sources}
        entries = search.search_index.entries
        for entry in entries:  # pages of plain Markdown
            entry["kind"] = "section" if "#" in entry["location"] else "page"
        entries.extend(search_entries(self.handbook, address))


def _sources_key(packages: tuple[str, ...]) -> str:
    """A key over the sources of every calculator and of the build itself."""
    own = [folder for _, folder in packages_folders(("calculators", *packages))]
    return key_of([*own, Path(__file__).parent])


def report(problems: list[Problem]) -> None:
    """Stops the build with every problem, if there is any."""
    if problems:
        for problem in problems:
            log.error("%s", problem)
        raise Abort(f"The handbook has {len(problems)} problems; nothing was built.")


def _asset(config: MkDocsConfig, name: str, path: Path) -> File:
    return File.generated(config, name, abs_src_path=str(path), inclusion=InclusionLevel.NOT_IN_NAV)


def _linker(file: File, files: Files) -> Callable[[str, str], str]:
    """Links from one page to others, as addresses relative to it."""

    def link(source: str, anchor: str) -> str:
        target = files.get_file_from_path(source)
        if target is None:
            raise Abort(f"{file.src_uri} links to {source}, which is not there")
        url = "" if target is file else target.url_relative_to(file)
        return f"{url}#{anchor}" if anchor else url or "#"

    return link


def _addresser(site: str, files: Files) -> Callable[[str, str], str]:
    """Absolute addresses of pages, for QR codes."""

    def address(source: str, anchor: str) -> str:
        target = files.get_file_from_path(source)
        if target is None:
            raise Abort(f"a code leads to {source}, which is not there")
        url = urljoin(site, target.url)
        return f"{url}#{anchor}" if anchor else url

    return address


def _address(source: str, directory_urls: bool) -> str:
    stem = posixpath.splitext(source)[0]
    if not directory_urls:
        return f"{stem}.html"
    if posixpath.basename(stem) == "index":
        return f"{posixpath.dirname(stem)}/".lstrip("/")
    return f"{stem}/"


def mkdocs_config(file: str) -> MkDocsConfig:
    """The configuration of a handbook; a fault in it ends the command with MkDocs' own words."""
    return load_config(config_file=file)


def mkdocs_build(config: MkDocsConfig) -> None:
    """One build into the site folder."""
    config.plugins.on_startup(command="build", dirty=False)
    try:
        build_site(config)
    finally:
        config.plugins.on_shutdown()


def serve(read: Callable[[], MkDocsConfig], build: Callable[[MkDocsConfig], Any]) -> None:
    """Builds into the site folder, serves it, and builds again when a file changes."""
    from mkdocs.livereload import LiveReloadServer

    config = read()
    build(config)
    host, port = os.environ.get("BENCHRULE_ADDRESS", "127.0.0.1:8000").rsplit(":", 1)
    server = LiveReloadServer(
        builder=lambda: build(read()), host=host, port=int(port), root=config.site_dir,
        mount_path="/",
    )  # fmt: skip
    server.watch(str(config.config_file_path))
    for folder in config.watch:
        server.watch(folder)
    try:
        print(f"The handbook is at http://{host}:{port}/ (Ctrl-C ends it)", flush=True)
        server.serve(open_in_browser=False)
    except KeyboardInterrupt:
        server.shutdown()
    except OSError as error:
        raise Abort(
            f"Cannot serve at {host}:{port} ({error.strerror}); end what uses it, or choose another: "
            "BENCHRULE_ADDRESS=127.0.0.1:8001"
        ) from None
