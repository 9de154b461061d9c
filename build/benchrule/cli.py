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
        "begin": "begin",
        "stick": "stick",
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

    Without a calculator, lists them. With --help after a calculator, its inputs. In a handbook's
    folder (or with -f its mkdocs.yml) the shop's own calculators and units hold.
    """
    arguments, flags, units, config_file = _split(words)
    if (of_shop := _shop_calculators(config_file)) and not units:
        units = of_shop
    units = units or "metric"
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


def _shop_calculators(config_file: str) -> str:
    """Takes up the calculators of the handbook at hand; its units, or nothing where there is none.

    A handbook with problems is no reason not to ask the calculators that can be asked.
    """
    path = Path(config_file or "mkdocs.yml")
    if not config_file and not path.exists():
        return ""
    from .own_calculators import load_calculators
    from .site_config import read_site_config

    site, problems = read_site_config(path)
    if problems and not config_file:
        return ""  # some other project's mkdocs.yml
    if not problems:
        problems = load_calculators(path.resolve().parent, site.choices)[1]
    for problem in problems:
        click.echo(problem, err=True)
    return site.choices.units


def _split(words: tuple[str, ...]) -> tuple[list[str], set[str], str, str]:
    """Plain arguments, flags, and the unit system and the mkdocs.yml asked for."""
    arguments: list[str] = []
    flags: set[str] = set()
    units = config_file = ""
    rest = iter(words)
    for word in rest:
        if word == "--units" or word.startswith("--units="):
            units = word.partition("=")[2] or next(rest, "")
            if units not in SYSTEMS:
                raise click.UsageError(f"--units takes one of {', '.join(SYSTEMS)}")
        elif word in ("-f", "--config-file"):
            config_file = next(rest, "")
        elif word in ("--json", "--help"):
            flags.add(word)
        elif word.startswith("--"):
            raise click.UsageError(
                f"there is no option {word}; there are --json, --units, -f, --help"
            )
        else:
            arguments.append(word)
    return arguments, flags, units, config_file


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
        click.echo(_counted(len(problems), "problem"), err=True)
        sys.exit(1)
    click.echo(
        f"No problems: {_counted(len(handbook.stations), 'station')}, "
        f"{_counted(len(handbook.tolerances), 'tolerance')}, "
        f"{_counted(len(handbook.calculators), 'calculator')}."
    )


def _counted(count: int, what: str) -> str:
    return f"{count} {what}" if count == 1 else f"{count} {what}s"


@main.command()
@click.argument("tolerance")
@click.argument("reading")
@click.option("--model", default="", help="id of the instrument's model")
@click.option("--gauge", default="", help="id of the gauge, where it is not the usual one")
@click.option("--units", type=click.Choice(SYSTEMS), help="the shop's own where left out")
@click.option("--json", "as_json", is_flag=True, help="the verdict as JSON")
@click.option("-f", "--config-file", default="mkdocs.yml", type=click.Path(path_type=Path))
def measure(
    tolerance: str, reading: str, model: str, gauge: str, units: str | None, as_json: bool,
    config_file: Path,
) -> None:  # fmt: skip
    """Is it in? READING, like "2.72 mm", against TOLERANCE, by its id.

    Exits 0 for accept, 1 for reject, 3 where the gauge cannot tell, 2 where it cannot be read.
    """
    from .measuring import CannotMeasure, measured

    handbook, problems = _read(config_file)
    if problems:
        raise click.ClickException(f"{problems[0]} (benchrule check lists every problem)")
    try:
        found = measured(handbook, tolerance, reading, model, gauge, units or "")
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
    _stop_on_problems(config_file)
    config, run = _mkdocs(config_file)
    run(config())


@main.command()
@click.option("-f", "--config-file", default="mkdocs.yml")
def serve(config_file: str) -> None:
    """Build the handbook, serve it on this machine, build again on every change."""
    from .serving import STARTED_AGAIN
    from .serving import serve as serve_site

    if not os.environ.get(STARTED_AGAIN):  # else what is wrong is waited for
        _stop_on_problems(config_file)
    serve_site(_mkdocs(config_file)[0])


def _read(config_file: Path) -> tuple[Any, list[Any]]:
    """The handbook that a mkdocs.yml names, and the problems of reading it."""
    from .opening import open_handbook

    return open_handbook(config_file)


def _stop_on_problems(config_file: str) -> None:
    """Says what is wrong with mkdocs.yml itself; what MkDocs would say of it is meant for others."""
    from .site_config import read_site_config

    _, problems = read_site_config(Path(config_file))
    for problem in problems:
        click.echo(problem, err=True)
    if problems:
        sys.exit(1)


def _mkdocs(config_file: str) -> tuple[Any, Any]:
    """How to read the configuration, and how to build with it."""
    os.environ.setdefault("NO_MKDOCS_2_WARNING", "1")
    from .serving import mkdocs_build, mkdocs_config

    return lambda: mkdocs_config(config_file), mkdocs_build
