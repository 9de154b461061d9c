"""The MkDocs plugin: options and events, nothing else. The only module that knows MkDocs."""

import hashlib
import logging
import posixpath
import re
from collections.abc import Callable
from dataclasses import replace
from functools import partial
from pathlib import Path
from typing import Any
from urllib.parse import urljoin

from jinja2 import Environment, FileSystemBytecodeCache
from mkdocs.config import config_options as options
from mkdocs.config.base import Config
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import Abort
from mkdocs.plugins import BasePlugin, CombinedEvent, event_priority
from mkdocs.structure.files import File, Files, InclusionLevel
from mkdocs.structure.nav import Navigation
from mkdocs.structure.pages import Page
from mkdocs.structure.toc import AnchorLink, TableOfContents
from mkdocs.utils import get_build_date

from .checks import find_problems
from .exercise_bank import bank_text, exercise_bank
from .faces.context import Context
from .generated_pages import MANY_PAGES, generated_pages, navigation, station_body
from .handbook import Handbook, load_handbook
from .kept import Kept, key_of
from .markdown_extension import BenchruleExtension
from .offline_edition import write_offline
from .order_files import order_files
from .own_calculators import make_importable
from .page_policy import set_policy
from .problems import Problem
from .rebuild import Session, file_stamp, stamp
from .references import in_markdown
from .runtime import RuntimeFailed, packages_folders, runtime_folder
from .search_entries import places_file, search_entries
from .shop_icons import IconUnusable
from .site_assets import ASSETS, FOLDER, SCRIPT, SEARCH_WORKER, STORE, STYLES, asset_files
from .site_config import Choices
from .site_keys import (
    addresses_key,
    nav_plain,
    seen_through,
    settings_key,
    toc_plain,
    warnings_of_mkdocs,
)
from .unchanged import Unchanged
from .web_packages import WebPackageMissing

THEME_WORKER = re.compile(
    r'("search": "[^"]*?)assets/javascripts/workers/search\.[0-9a-f]+\.min\.js'
)
SEARCH_DIALOG = 'data-md-component="search" role="dialog"'
SHARE_LINK = 'href="javascript:void(0)" class="md-search__icon'

log = logging.getLogger("mkdocs.plugins.benchrule")


class Options(Config):
    """What mkdocs.yml may set for the plugin; ``site_config.Choices`` says what each means."""

    calculators = options.ListOfItems(options.Type(str), default=[])
    only = options.ListOfItems(options.Type(str), default=[])
    leave_out = options.ListOfItems(options.Type(str), default=[])
    units = options.Type(str, default="metric")
    least_tolerances = options.Type(int, default=1)
    drawings = options.Type(bool, default=False)

    cache = options.Type(str, default=".cache/benchrule")
    """Where the packed runtime is kept between builds."""


class BenchrulePlugin(BasePlugin[Options]):
    """Reads the handbook, stops on its problems, makes its pages, search entries and runtime."""

    def __init__(self) -> None:
        super().__init__()
        self.extension = BenchruleExtension()
        self.handbook: Handbook | None = None
        self.generated: dict[str, str] = {}
        self.serving = False
        self.session = Session()

    def on_startup(self, *, command: str, dirty: bool) -> None:
        """Keeps the instance across rebuilds of a serving session."""
        self.serving = command == "serve"

    def on_config(self, config: MkDocsConfig) -> MkDocsConfig:
        """Reads and checks the handbook; adds our extensions, theme parts, styles and script."""
        root = Path(config.config_file_path or "mkdocs.yml").resolve().parent
        try:
            choices = Choices.of(self.config)
        except ValueError as error:
            raise Abort(f"mkdocs.yml: {error}") from None
        packages = tuple(one for one in choices.calculators if make_importable(root, one))
        sources = self.session.sources or sources_key(packages)
        if self.session.kept and self.session.kept[0] == sources:
            kept = self.session.kept[1]
            kept.begin()
        else:
            kept = Kept(root / self.config.cache / "kept.json", sources)
            self.session.kept = sources, kept
        handbook, problems = load_handbook(root, Path(config.docs_dir).resolve(), choices, kept)
        report(problems)
        if self.session.unchanged is None:
            self.session.unchanged = Unchanged(root / self.config.cache / "pieces")
        self.unchanged = self.session.unchanged
        self.unchanged.begin(handbook, settings_key(config, choices, sources))
        report(find_problems(handbook, self.unchanged.get))
        self.handbook = handbook
        self.generated = generated_pages(handbook)
        self.settings = ""
        self.taken = 0
        try:
            self.runtime = runtime_folder(root / self.config.cache, ("calculators", *packages))
            self.assets = asset_files()
        except (RuntimeFailed, WebPackageMissing) as error:
            raise Abort(str(error)) from None
        features = config.theme.get("features", [])
        if len(handbook.pages) > MANY_PAGES and "navigation.sections" in features:
            features.remove("navigation.sections")  # each page would list every other
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
        for name, path in self.assets.items():
            files.append(_asset(config, name, path))
        for path in sorted(self.runtime.iterdir()):
            if path.name != "manifest.json":
                files.append(_asset(config, f"runtime/{self._key()}/{path.name}", path))
        bank = exercise_bank(self.handbook, self.unchanged.get)
        bank_file = f"exercises-{bank['edition']}.json"
        page_end = "/" if config.use_directory_urls else ".html"
        script = (ASSETS / "page.mjs").read_text("utf-8")
        script = script.replace("RUNTIME_KEY", self._key()).replace("BANK_FILE", bank_file)
        store = (ASSETS / "store.mjs").read_text("utf-8").replace("SHOP_UNITS", self.handbook.units)
        texts = {
            SCRIPT: script, STORE: store,
            f"{FOLDER}/{bank_file}": bank_text(bank | {"page_end": page_end}),
        }  # fmt: skip
        made = texts | order_files(self.handbook, self.unchanged.get)
        for name, content in made.items():
            file = File.generated(
                config, name, content=content, inclusion=InclusionLevel.NOT_IN_NAV
            )
            files.append(file)
        return files

    def on_nav(self, nav: Navigation, /, *, config: MkDocsConfig, files: Files) -> Navigation:
        """Remembers the order of the book; all pages are gone through, however old their files."""
        self.nav = nav
        for file in files:
            if file.is_documentation_page():
                file.is_modified = lambda: True  # type: ignore[method-assign]
        return nav

    def on_pre_page(self, page: Page, /, *, config: MkDocsConfig, files: Files) -> Page:
        """Lets a page's content be taken from what was made before."""
        page.render = partial(self._render, page)  # type: ignore[method-assign]
        return page

    def _render(self, page: Page, config: MkDocsConfig, files: Files) -> None:
        """The page's content: as it was made before, where it would come out the same."""
        if not seen_through(config):
            Page.render(page, config, files)
            return
        self.settings = self.settings or addresses_key(config, files)
        own = stamp(page.file.src_uri, page.markdown, self.settings)
        piece = f"page {page.file.src_uri}"
        found = self.unchanged.get(piece, own, partial(self._made, page, config, files))
        if found is not None and page.content is None:
            page.content = found["content"]
            page.toc = TableOfContents([_toc_entry(one) for one in found["toc"]])
            if page.toc.items:
                page.toc.items[0].active = True  # type: ignore[attr-defined]
            page._title_from_render = found["title"]
            page.present_anchor_ids = set(found["anchors"])
            page.links_to_anchors = {
                file: links
                for source, links in found["links"]
                if (file := files.get_file_from_path(source)) is not None
            }

    def _made(
        self, page: Page, config: MkDocsConfig, files: Files, handbook: Handbook
    ) -> dict[str, Any] | None:
        """Makes the page's content; None where it is not to be kept, since a warning goes with it."""
        self.extension.context = replace(self.extension.here, handbook=handbook)
        with warnings_of_mkdocs() as warned:
            Page.render(page, config, files)
        if warned:
            return None
        return {
            "content": page.content, "toc": [toc_plain(one) for one in page.toc],
            "title": page._title_from_render, "anchors": sorted(page.present_anchor_ids or ()),
            "links": [[to.src_uri, links] for to, links in (page.links_to_anchors or {}).items()],
        }  # fmt: skip

    def on_env(self, env: Environment, /, *, config: MkDocsConfig, files: Files) -> Environment:
        """Keeps the theme's compiled templates between builds; marks what need not be written."""
        self._mark(config, files)
        folder = Path(config.config_file_path).resolve().parent / self.config.cache / "templates"
        folder.mkdir(parents=True, exist_ok=True)
        env.bytecode_cache = FileSystemBytecodeCache(str(folder))
        return env

    def _mark(self, config: MkDocsConfig, files: Files) -> None:
        """Tells MkDocs which files of the site stand there already as they would be written."""
        self.order = [file.src_uri for file in files.documentation_pages()]
        if not self.session.begun:
            return
        site = Path(config.site_dir)
        book = stamp([nav_plain(one) for one in self.nav.items], get_build_date())
        for file in files:
            if not file.inclusion.is_included():
                continue
            if file.page is not None:
                page = file.page
                toc = [toc_plain(one) for one in page.toc]
                content = hashlib.sha256(str(page.content).encode()).hexdigest()
                mark = stamp(content, toc, page.meta, page.title, page.edit_url, book)
            elif file._content is not None:
                mark = stamp(hashlib.sha256(file.content_bytes).hexdigest())
            else:
                mark = file_stamp(Path(str(file.abs_src_path)))
            new = self.session.is_new(file.dest_uri, mark, site)
            file.is_modified = partial(bool, new)  # type: ignore[method-assign]
            if new and file.page is not None:
                self.session.written.append(file.url.removeprefix("./"))
        self.session.clear_gone(site)

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
        is_station = self.handbook.station_of(source) is not None
        if is_station or source in self.generated:
            # Their places have search entries of their own; the plugin need not read the pages.
            page.meta["search"] = {"exclude": True}
        if is_station:
            title = (
                ""
                if markdown.lstrip().startswith("# ")
                else f"# {in_markdown(page.meta['title'])}\n\n"
            )
            page.meta["title"] = in_markdown(page.meta["title"])  # the theme shows it as it is
            return title + station_body(markdown)
        return markdown

    def on_post_page(self, output: str, /, *, page: Page, config: MkDocsConfig) -> str:
        """Amends what the theme made of a page."""
        search = _search(config)
        if search is not None:  # what the search plugin took from it
            found = search.search_index.entries
            self.session.entries[page.file.src_uri] = found[self.taken :]
            self.taken = len(found)
        return _amended(output)

    def on_post_template(
        self, output_content: str, /, *, template_name: str, config: MkDocsConfig
    ) -> str:
        """The same for the page that a reader gets where there is none."""
        return _amended(output_content) if template_name == "404.html" else output_content

    @event_priority(100)
    def _add_entries(self, *, config: MkDocsConfig) -> None:
        """Adds the search entries before the search plugin writes its index."""
        assert self.handbook is not None
        search = _search(config)
        if search is not None:
            self._add_entries_to(search, config)
        if not self.session.going_on:  # while serving, memory does
            self.handbook.kept.save()
        self.unchanged.end()

    def _add_entries_to(self, search: Any, config: MkDocsConfig) -> None:
        assert self.handbook is not None
        directory_urls = config.use_directory_urls
        sources = [*self.generated, *(page.source for page in self.handbook.pages)]
        address = {source: _address(source, directory_urls) for source in sources}
        entries = search.search_index.entries
        entries[:] = [
            entry for source in self.order for entry in self.session.entries.get(source, ())
        ]
        for entry in entries:  # pages of plain Markdown
            entry["kind"] = "section" if "#" in entry["location"] else "page"
        own = search_entries(self.handbook, address, self.unchanged.get)
        name, text = places_file([*entries, *own])
        path = Path(config.site_dir, name)
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, "utf-8")
        # The theme fetches its index with every page: it holds no more than where ours is.
        entries[:] = [{"location": name, "title": "", "text": ""}]

    @event_priority(-100)
    def _finish(self, *, config: MkDocsConfig) -> None:
        """What needs the whole site on the disk, when all other plugins are done."""
        site = Path(config.site_dir)
        # Its bytes hang on the day and on who compresses; the site map itself is there.
        (site / "sitemap.xml.gz").unlink(missing_ok=True)
        for fault in set_policy(site):
            log.warning("%s", fault)
        root = Path(config.config_file_path or "mkdocs.yml").resolve().parent
        try:
            write_offline(
                site, str(config.site_name), str(config.site_description or ""),
                root=root, cache=root / self.config.cache, serving=self.serving,
            )  # fmt: skip
        except IconUnusable as error:
            raise Abort(str(error)) from None

    on_post_build = CombinedEvent(_add_entries, _finish)


def sources_key(packages: tuple[str, ...]) -> str:
    """A key over the sources of every calculator and of the build itself."""
    own = [folder for _, folder in packages_folders(("calculators", *packages))]
    return key_of([*own, Path(__file__).parent])


def _search(config: MkDocsConfig) -> Any:
    """The search plugin, or None."""
    return config.plugins.get("material/search") or config.plugins.get("search")


def _toc_entry(plain: list[Any]) -> AnchorLink:
    title, id, level, children = plain
    made = AnchorLink(title, id, level)
    made.children = [_toc_entry(child) for child in children]
    return made


def _amended(page: str) -> str:
    """The theme's page with our ranking in its search, its dialog named for screen readers, and
    its link to share a search as a plain one: the policy lets no javascript: link be.
    """
    page = THEME_WORKER.sub(rf"\1{SEARCH_WORKER}", page, count=1)
    page = page.replace(SEARCH_DIALOG, f'{SEARCH_DIALOG} aria-label="Search"', 1)
    return page.replace(SHARE_LINK, SHARE_LINK.replace("javascript:void(0)", "#"), 1)


def report(problems: list[Problem]) -> None:
    """Stops the build with every problem, if there is any."""
    if problems:
        for problem in problems:
            log.error("%s", problem)
        many = f"{len(problems)} problems" if len(problems) > 1 else "a problem"
        raise Abort(f"The handbook has {many}; nothing was built.")


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
