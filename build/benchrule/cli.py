"""The command line: build, serve, check a handbook; ask a calculator."""

import json
import os
import sys
from importlib import import_module
from pathlib import Path
from typing import Any, ClassVar

import click

from calculators.engine import door
from calculators.engine.registry import load, modules
from calculators.engine.showing import SYSTEMS

from .calc_text import answer_lines, help_lines, refusal_lines

REFUSED = 2
VERDICT_CODES = {"accept": 0, "reject": 1, "cannot tell": 3}


class _Commands(click.Group):
    """The commands here, and those of classes, which are imported when they are asked for."""

    LATER: ClassVar = {
        "assignment": "learning_commands",
        "sheet": "learning_commands",
        "mark": "learning_commands",
        "training": "training_commands",
        "record": "record_command",
        "template": "templates.command",
        "cards": "paper_commands",
        "build-sheet": "paper_commands",
        "tables": "paper_commands",
    }

    def list_commands(self, context: click.Context) -> list[str]:
        return sorted([*super().list_commands(context), *self.LATER])

    def get_command(self, context: click.Context, name: str) -> click.Command | None:
        if name not in self.LATER:
            return super().get_command(context, name)
        module = import_module(f"benchrule.{self.LATER[name]}")
        found: click.Command = getattr(module, name.replace("-", "_"))
        return found


@click.group(cls=_Commands)
@click.version_option(package_name="benchrule")
def main() -> None:
    """Turns a shop's procedures into a searchable handbook with calculators."""


@main.command(context_settings={"ignore_unknown_options": True, "help_option_names": []})
@click.argument("words", nargs=-1, type=click.UNPROCESSED)
def calc(words: tuple[str, ...]) -> None:
    """Ask a calculator: CALCULATOR [name=value ...] [--json] [--units metric|inch|inch64].

    Without a calculator, lists them. With --help after a calculator, its inputs.
    """
    arguments, flags, units = _split(words)
    if not arguments:
        if "--help" in flags:
            click.echo(calc.get_help(click.Context(calc, info_name="benchrule calc")))
            return
        for name in modules():
            click.echo(f"{name}  {load(name).summary}")
        return
    name, *pairs = arguments
    if "--help" in flags and name in modules():
        click.echo("\n".join(help_lines(load(name))))
        return
    given, faults = _pairs(pairs)
    found = {"refused": faults} if faults else door.answer(name, given, units)
    if "--json" in flags:
        click.echo(json.dumps(found, allow_nan=False, ensure_ascii=False))
    elif "refused" in found:
        click.echo("\n".join(refusal_lines(found["refused"])), err=True)
    else:
        click.echo("\n".join(answer_lines(load(name), found, units)))
        _note_unused(name, given, found)
    if "refused" in found:
        sys.exit(REFUSED)


def _split(words: tuple[str, ...]) -> tuple[list[str], set[str], str]:
    """Plain arguments, flags, and the unit system asked for."""
    arguments: list[str] = []
    flags: set[str] = set()
    units = "metric"
    rest = iter(words)
    for word in rest:
        if word == "--units" or word.startswith("--units="):
            units = word.partition("=")[2] or next(rest, "")
            if units not in SYSTEMS:
                raise click.UsageError(f"--units takes one of {', '.join(SYSTEMS)}")
        elif word in ("--json", "--help"):
            flags.add(word)
        elif word.startswith("--"):
            raise click.UsageError(f"there is no option {word}; there are --json, --units, --help")
        else:
            arguments.append(word)
    return arguments, flags, units


def _pairs(pairs: list[str]) -> tuple[dict[str, Any], list[dict[str, str]]]:
    given: dict[str, Any] = {}
    faults = []
    for pair in pairs:
        name, equals, value = pair.partition("=")
        if not equals:
            faults.append({
                "input": pair, "given": pair, "allowed": "name=value",
                "why": "write an input as name=value, with quotes where there are spaces",
            })  # fmt: skip
        elif name in given:
            faults.append({
                "input": name, "given": value, "allowed": "one value", "why": "given twice; give it once",
            })  # fmt: skip
        else:
            given[name.strip().replace("-", "_")] = value
    return given, faults


def _note_unused(name: str, given: dict[str, Any], found: dict[str, Any]) -> None:
    unused = [one for one in given if one not in found["inputs"]]
    if unused:
        click.echo(f"Not used with these choices: {', '.join(unused)}", err=True)


@main.command()
@click.option("-f", "--config-file", default="mkdocs.yml", type=click.Path(path_type=Path))
def check(config_file: Path) -> None:
    """List every problem of a handbook, all at once."""
    from .checks import find_problems

    handbook, problems = _read(config_file)
    problems = sorted({*problems, *(find_problems(handbook) if not problems else [])})
    for problem in problems:
        click.echo(problem)
    if problems:
        click.echo(f"{len(problems)} problems", err=True)
        sys.exit(1)
    click.echo(
        f"No problems: {len(handbook.stations)} stations, {len(handbook.tolerances)} tolerances, "
        f"{len(handbook.calculators)} calculators."
    )


@main.command()
@click.argument("tolerance")
@click.argument("reading")
@click.option("--model", default="", help="id of the instrument's model")
@click.option("--gauge", default="", help="id of the gauge, where it is not the usual one")
@click.option("--units", type=click.Choice(SYSTEMS), default="metric")
@click.option("--json", "as_json", is_flag=True, help="the verdict as JSON")
@click.option("-f", "--config-file", default="mkdocs.yml", type=click.Path(path_type=Path))
def measure(
    tolerance: str, reading: str, model: str, gauge: str, units: str, as_json: bool,
    config_file: Path,
) -> None:  # fmt: skip
    """Is it in? READING, like "2.72 mm", against TOLERANCE, by its id.

    Exits 0 for accept, 1 for reject, 3 where the gauge cannot tell, 2 where it cannot be read.
    """
    from .measuring import CannotMeasure, measured

    handbook, problems = _read(config_file)
    if problems:
        raise click.ClickException("the handbook has problems; see benchrule check")
    try:
        found = measured(handbook, tolerance, reading, model, gauge, units)
    except CannotMeasure as error:
        raise click.UsageError(str(error)) from None
    if as_json:
        click.echo(json.dumps(found, allow_nan=False, ensure_ascii=False))
    elif "refused" in found:
        click.echo("\n".join(refusal_lines(found["refused"])), err=True)
    else:
        click.echo(
            "\n".join(
                [found["words"], *found["notes"], *([found["mend"]] if "mend" in found else [])]
            )
        )
    sys.exit(VERDICT_CODES.get(found.get("verdict", ""), REFUSED))


@main.command()
@click.option("-f", "--config-file", default="mkdocs.yml")
def build(config_file: str) -> None:
    """Build the handbook into the site folder."""
    config, run = _mkdocs(config_file)
    run(config())


@main.command()
@click.option("-f", "--config-file", default="mkdocs.yml")
def serve(config_file: str) -> None:
    """Build the handbook, serve it on this machine, build again on every change."""
    from .plugin import serve as serve_site

    serve_site(*_mkdocs(config_file))


def _read(config_file: Path) -> tuple[Any, list[Any]]:
    """The handbook that a mkdocs.yml names, and the problems of reading it."""
    from .opening import open_handbook

    return open_handbook(config_file)


def _mkdocs(config_file: str) -> tuple[Any, Any]:
    """How to read the configuration, and how to build with it."""
    os.environ.setdefault("NO_MKDOCS_2_WARNING", "1")
    from .plugin import mkdocs_build, mkdocs_config

    return lambda: mkdocs_config(config_file), mkdocs_build
