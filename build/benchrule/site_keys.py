"""Keys over what a site and its pages are made by, besides what the handbook says.

Reads MkDocs' configuration, files and pages as they are; imports nothing of it.
"""

import contextlib
import logging
import re
from collections.abc import Iterator
from importlib import metadata
from pathlib import Path
from typing import Any

from .rebuild import file_stamp, stamp
from .site_assets import ASSETS, FOLDER
from .site_config import Choices

BANK = f"{FOLDER}/exercises-"
"""How the address of the exercises' file begins."""


def settings_key(config: Any, choices: Choices, sources: str) -> str:
    """A key over all that pages are made by, besides what the handbook says."""
    libraries = (
        "mkdocs",
        "mkdocs-material",
        "Markdown",
        "pymdown-extensions",
        "reportlab",
        "segno",
    )
    return stamp(
        sources, repr(choices), config.site_url, config.use_directory_urls,
        [metadata.version(name) for name in libraries],
        [one for one in config.markdown_extensions if isinstance(one, str)],
        config.mdx_configs, repr(config.validation),
    )  # fmt: skip


def addresses_key(config: Any, files: Any) -> str:
    """A key over what a page can link to."""
    return stamp([
        [file.src_uri, file.url, str(file.inclusion)]
        for file in files
        if not file.src_uri.startswith(BANK)  # its name changes with the limits; no page links to it
    ])  # fmt: skip


SEEN_THROUGH = re.compile(
    r"abbr|admonition|attr_list|def_list|fenced_code|footnotes|md_in_html|meta|sane_lists|smarty"
    r"|tables|toc|markdown\.extensions\.\w+|pymdownx\.(?!snippets|b64|superfences|extra|emoji)\w+"
)
"""Markdown extensions that make a page from its text alone, and read no file beside it."""


def seen_through(config: Any) -> bool:
    """Whether every Markdown extension makes a page from its text alone."""
    return all(
        not isinstance(one, str) or SEEN_THROUGH.fullmatch(one)
        for one in config.markdown_extensions
    )


def site_key(config: Any, sources: str) -> str:
    """A key over what the whole site is made by; none where we cannot see through it."""
    known = {"search", "material/search", "benchrule"}
    own_theme = config.theme.custom_dir is not None
    if set(config.plugins) - known or config.hooks or own_theme or not seen_through(config):
        return ""
    theme = [file_stamp(path) for path in sorted(ASSETS.parent.rglob("*")) if path.is_file()]
    written = Path(config.config_file_path).read_text("utf-8")
    if re.search(r"^INHERIT:", written, re.MULTILINE):
        return ""  # what it inherits stands in a file that is not watched
    return stamp(sources, written, config.site_dir, theme)


@contextlib.contextmanager
def warnings_of_mkdocs() -> Iterator[list[str]]:
    """Gathers what MkDocs has to say about a page while it is made."""
    said: list[str] = []
    handler = logging.Handler(logging.INFO)
    handler.emit = lambda record: said.append(record.getMessage())  # type: ignore[method-assign]
    logger = logging.getLogger("mkdocs")
    logger.addHandler(handler)
    try:
        yield said
    finally:
        logger.removeHandler(handler)


def toc_plain(one: Any) -> list[Any]:
    """An entry of a page's table of contents as plain data."""
    return [one.title, one.id, one.level, [toc_plain(child) for child in one.children]]


def nav_plain(item: Any) -> list[Any]:
    """What any page may show of an item of the navigation."""
    below = [nav_plain(child) for child in item.children or ()]
    return [
        type(item).__name__,
        item.title,
        getattr(item, "url", ""),
        getattr(item, "meta", {}),
        below,
    ]
