"""What a shop chooses in its mkdocs.yml, read without MkDocs: by the checks and the commands."""

from collections.abc import Mapping
from dataclasses import dataclass, field, fields
from pathlib import Path
from typing import Any

import yaml

from calculators.engine.showing import SYSTEMS

from .problems import Problem
from .yaml_faults import yaml_fault


@dataclass(frozen=True)
class Choices:
    """The plugin's options that say how this shop works. The plugin reads the same fields."""

    calculators: tuple[str, ...] = ()
    """Importable packages of calculators of the shop's own, beside mkdocs.yml."""

    only: tuple[str, ...] = ()
    """Of Benchrule's own calculators only these, by name or by group (``neck``); empty for all."""

    leave_out: tuple[str, ...] = ()
    """Of Benchrule's own calculators not these, by name or by group."""

    units: str = "metric"
    """The unit system that the shop reads first: metric, inch (decimal) or inch64 (fractions)."""

    least_tolerances: int = 1
    """How many tolerances each station has to have at least."""

    drawings: bool = False
    """Whether each station has to have a drawing."""

    @classmethod
    def of(cls, options: Mapping[str, Any]) -> "Choices":
        """The choices among a plugin's options; ValueError says which is not one, and what would be."""
        known = {one.name for one in fields(cls)}
        found = {name: value for name, value in options.items() if name in known}
        for name in ("calculators", "only", "leave_out"):
            value = found.get(name) or []
            if not isinstance(value, list | tuple):
                raise ValueError(f"{name} is no list; write it like {name}: [one, another]")
            found[name] = tuple(map(str, value))
        if found.get("units", "metric") not in SYSTEMS:
            raise ValueError(
                f"units: {found['units']} is no unit system; take one of {', '.join(SYSTEMS)}"
            )
        least = found.get("least_tolerances", 1)
        if not isinstance(least, int) or isinstance(least, bool) or least < 0:
            raise ValueError("least_tolerances is no whole number; write one, like 8")
        if not isinstance(found.get("drawings", False), bool):
            raise ValueError("drawings is neither true nor false; write one of them")
        return cls(**found)


@dataclass(frozen=True)
class SiteConfig:
    """Where the pages lie, and what the shop chose."""

    docs_dir: str = "docs"
    choices: Choices = field(default_factory=Choices)


class _Lenient(yaml.SafeLoader):
    """mkdocs.yml may hold tags of MkDocs' own (!ENV, !!python/name); we pass over their values."""


_Lenient.add_multi_constructor("", lambda loader, suffix, node: None)
OTHER_OPTIONS = {"cache", "enabled"}


def read_site_config(path: Path) -> tuple[SiteConfig, list[Problem]]:
    """What mkdocs.yml says, or the problems of reading it."""
    file = path.name if path.resolve().parent == Path.cwd() else str(path)

    def wrong(line: int, what: str, to_do: str) -> tuple[SiteConfig, list[Problem]]:
        return SiteConfig(), [Problem(file, line, what, to_do)]

    try:
        text = path.read_text("utf-8")
        value: Any = yaml.load(text, _Lenient)
    except FileNotFoundError:
        return wrong(
            1, "there is no such file",
            "go to the handbook's folder, name its mkdocs.yml with -f, or begin one: "
            "benchrule begin FOLDER",
        )  # fmt: skip
    except UnicodeDecodeError:
        return wrong(1, "not UTF-8 text", "save the file as UTF-8")
    except yaml.YAMLError as error:
        return wrong(*yaml_fault(error))
    value = value if isinstance(value, dict) else {}
    options = _options(value.get("plugins"))
    if options is None:
        return wrong(
            _line_of(text, "plugins:"), "the plugin benchrule is not named, so nothing would be built",
            "write '- benchrule' below 'plugins:'",
        )  # fmt: skip
    try:
        strange = set(options) - OTHER_OPTIONS - {one.name for one in fields(Choices)}
        if strange:
            raise ValueError(
                f"benchrule has no option {min(strange)}; there are "
                f"{', '.join([*(one.name for one in fields(Choices)), 'cache'])}"
            )
        choices = Choices.of(options)
    except ValueError as error:
        what, _, to_do = str(error).partition("; ")
        return wrong(_line_of(text, f"{what.split()[0].rstrip(':')}:", "benchrule"), what, to_do)
    return SiteConfig(str(value.get("docs_dir", "docs")), choices), []


def _options(plugins: Any) -> dict[str, Any] | None:
    """The options given to our plugin; None where it is not named."""
    if isinstance(plugins, dict):
        plugins = [{name: options} for name, options in plugins.items()]
    for plugin in plugins if isinstance(plugins, list) else []:
        if plugin == "benchrule":
            return {}
        if isinstance(plugin, dict) and "benchrule" in plugin:
            return dict(plugin["benchrule"] or {})
    return None


def _line_of(text: str, *starts: str) -> int:
    """The line that begins with one of the words, the first of them where it is there."""
    for start in starts:
        for number, line in enumerate(text.splitlines(), 1):
            if line.strip().removeprefix("- ").startswith(start):
                return number
    return 1
