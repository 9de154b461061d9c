"""The few things of mkdocs.yml that the checks need, read without MkDocs."""

from dataclasses import dataclass
from pathlib import Path
from typing import Any

import yaml

from .problems import Problem


@dataclass(frozen=True)
class SiteConfig:
    """Where the pages lie, and which packages of calculators the shop brings."""

    docs_dir: str = "docs"
    calculators: tuple[str, ...] = ()


class _Lenient(yaml.SafeLoader):
    """mkdocs.yml may hold tags of MkDocs' own (!ENV, !!python/name); we pass over their values."""


_Lenient.add_multi_constructor("", lambda loader, suffix, node: None)


def read_site_config(path: Path) -> tuple[SiteConfig, list[Problem]]:
    """What mkdocs.yml says, or the problem of reading it."""
    try:
        value: Any = yaml.load(path.read_text("utf-8"), _Lenient)
    except FileNotFoundError:
        return SiteConfig(), [Problem(str(path), 1, "there is no such file", "name the mkdocs.yml")]
    except yaml.YAMLError as error:
        mark = getattr(error, "problem_mark", None)
        line = mark.line + 1 if mark else 1
        return SiteConfig(), [Problem(str(path), line, "not YAML", "mend it")]
    value = value if isinstance(value, dict) else {}
    packages: list[str] = []
    plugins = value.get("plugins") or []
    if isinstance(plugins, dict):
        plugins = [{name: options} for name, options in plugins.items()]
    for plugin in plugins:
        if isinstance(plugin, dict) and isinstance(plugin.get("benchrule"), dict):
            packages = plugin["benchrule"].get("calculators") or []
    return SiteConfig(str(value.get("docs_dir", "docs")), tuple(map(str, packages))), []
