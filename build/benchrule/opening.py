"""Opens a handbook for the command line: what it holds, and where its pages and its site are."""

import os
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import yaml

from .handbook import Handbook, load_handbook
from .problems import Problem
from .site_config import read_site_config


def open_handbook(config_file: Path) -> tuple[Handbook, list[Problem]]:
    """The handbook that a mkdocs.yml names, and the problems of reading it."""
    root = config_file.resolve().parent
    site, problems = read_site_config(config_file)
    if problems:
        return Handbook(root, root / site.docs_dir), problems
    return load_handbook(root, root / site.docs_dir, site.choices)


@dataclass(frozen=True)
class SitePlaces:
    """Where a handbook stands: its address, the folder of its pages, the folder of its site."""

    address: str
    docs: Path
    site: Path

    def holds(self, path: Path) -> bool:
        """Whether a file would lie among the pages, or in what is published."""
        real = path.resolve()
        return any(real.is_relative_to(folder.resolve()) for folder in (self.docs, self.site))


def site_places(config_file: Path) -> SitePlaces:
    """The places that a mkdocs.yml names; MkDocs' own defaults where it names none."""
    root = config_file.resolve().parent
    try:
        value: Any = yaml.load(config_file.read_text("utf-8"), _WithEnvironment)
    except (OSError, UnicodeDecodeError, yaml.YAMLError):
        value = {}
    value = value if isinstance(value, dict) else {}
    address = str(value.get("site_url") or "")
    return SitePlaces(
        address if not address or address.endswith("/") else f"{address}/",
        root / str(value.get("docs_dir") or "docs"),
        root / str(value.get("site_dir") or "site"),
    )


class _WithEnvironment(yaml.SafeLoader):
    """mkdocs.yml with values from the environment (!ENV), as MkDocs reads it."""


def _from_environment(loader: yaml.SafeLoader, node: yaml.Node) -> Any:
    if isinstance(node, yaml.ScalarNode):
        return os.environ.get(str(loader.construct_scalar(node)))
    if isinstance(node, yaml.SequenceNode):
        *names, default = loader.construct_sequence(node) or [None]
        return next((os.environ[name] for name in names if name in os.environ), default)
    return None


_WithEnvironment.add_multi_constructor("", lambda loader, suffix, node: None)
_WithEnvironment.add_constructor("!ENV", _from_environment)
