"""``benchrule begin``: lays out a new shop's own handbook, which builds at once.

The files lie ready in ``starter/``; what differs from shop to shop stands in them as ``@NAME@``.
"""

import json
import re
from collections.abc import Iterator, Mapping
from importlib import resources
from pathlib import Path

import click

from calculators.engine.showing import SYSTEMS

from .web_packages import CHECKOUT

AUTHORS_PAGE = "docs/writing-procedures.md"
PLACE = re.compile(r"@[A-Z_]+@")
OWN_PACKAGE = "our_calculators"
# The example's figures, in the units that the shop reads.
METRIC = {
    "UNIT": "mm", "CALIPER_READS": "0.02", "CALIPER_OFF": "0.05", "RULE_READS": "0.5",
    "RULE_OFF": "0.3", "END_TARGET": "7.0", "END_LOW": "6.8", "END_HIGH": "7.2",
    "END_DECIMALS": "1", "BEFORE_LOW": "13", "BEFORE_HIGH": "15", "AFTER_LOW": "11",
    "AFTER_HIGH": "13", "COLLAR_DECIMALS": "0", "WIDE": "8.5 mm", "NARROW": "7 mm",
}  # fmt: skip
INCH = {
    "UNIT": "in", "CALIPER_READS": "0.001", "CALIPER_OFF": "0.002", "RULE_READS": "0.02",
    "RULE_OFF": "0.012", "END_TARGET": "0.276", "END_LOW": "0.268", "END_HIGH": "0.284",
    "END_DECIMALS": "3", "BEFORE_LOW": "0.5", "BEFORE_HIGH": "0.58", "AFTER_LOW": "0.43",
    "AFTER_HIGH": "0.5", "COLLAR_DECIMALS": "2", "WIDE": "0.335 in", "NARROW": "0.276 in",
}  # fmt: skip
WITH_CALCULATOR = {
    "CALCULATORS": "      calculators: [our_calculators] # the folder of the shop's own calculators\n",
    "FRONT": "calculators: [taper]",
    "CALCULATOR_BLOCK": "/// calculator | taper\n///",
    "MODEL_VALUES": "    wide_end: @WIDE@\n    narrow_end: @NARROW@",
    "README_CALCULATORS": ", calculators of your own in `our_calculators/`",
    "ASK": " taper reamed=\"0.2 mm\"",
}  # fmt: skip
WITHOUT_CALCULATOR = {
    "CALCULATORS": "",
    "FRONT": "no_calculator: Nothing has to be worked out here; the peg is tried in its hole.",
    "CALCULATOR_BLOCK": "Nothing has to be worked out here: the peg is tried in its hole.",
    "MODEL_VALUES": "    scale_length: 650 mm",
    "README_CALCULATORS": "",
    "ASK": " string-tension",
}


class CannotBegin(click.ClickException):
    """Why nothing was laid out; the message says what to do."""


@click.command()
@click.argument("folder", type=click.Path(path_type=Path))
@click.option("--name", default="Our shop", show_default=True, help="what the shop is called")
@click.option(
    "--units", type=click.Choice(SYSTEMS), default="metric", show_default=True,
    help="what the shop reads first",
)  # fmt: skip
@click.option(
    "--calculator/--no-calculator",
    default=True,
    show_default=True,
    help="with an example of a calculator of the shop's own",
)
def begin(folder: Path, name: str, units: str, calculator: bool) -> None:
    """Lay out a new shop's own handbook in FOLDER: one example station that builds at once."""
    files = starter(name, units, calculator)
    if folder.exists() and not folder.is_dir():
        raise CannotBegin(f"{folder} is a file; name a folder that is new or empty")
    there = [file for file in files if (folder / file).exists()]
    if there:
        more = f" and {len(there) - 1} more" if len(there) > 1 else ""
        raise CannotBegin(
            f"{folder} has {there[0]}{more} already, and nothing is ever overwritten; "
            "name a folder that is new or empty"
        )
    try:
        for file, text in files.items():
            path = folder / file
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_text(text, "utf-8")
    except OSError as error:
        raise CannotBegin(f"cannot write in {folder}: {error.strerror}") from None
    click.echo(f"The handbook of {name} is in {folder}: {len(files)} files. Next:")
    for command, what in (
        (f"cd {folder}", ""),
        ("benchrule check", "every problem, with its line"),
        ("benchrule serve", "shows the handbook and follows every change"),
        ("benchrule build", "writes the site to be put on a web server"),
    ):
        click.echo(f"  {command:<18}{what}".rstrip())
    click.echo(f"How to write: {AUTHORS_PAGE}. What stands there is an example; replace it.")


def starter(name: str, units: str, calculator: bool) -> dict[str, str]:
    """Every file of a new handbook: its path from the folder, and its text."""
    plain = " ".join(name.split())
    if not plain or not plain.isprintable():
        raise CannotBegin("--name needs a name of letters and spaces")
    words = {
        **(METRIC if units == "metric" else INCH),
        **(WITH_CALCULATOR if calculator else WITHOUT_CALCULATOR), "UNITS": units,
    }  # fmt: skip
    found = {}
    for file, text in _templates():
        if file.startswith(OWN_PACKAGE) and not calculator:
            continue
        said = _in_quotes(plain) if file == "mkdocs.yml" else _in_markdown(plain)
        found[file] = text if file == AUTHORS_PAGE else _filled(text, words, said)
    return found


def _templates() -> Iterator[tuple[str, str]]:
    root = Path(str(resources.files("benchrule").joinpath("starter")))
    for path in sorted(root.rglob("*")):
        file = path.relative_to(root).as_posix()
        if path.is_file() and "__pycache__" not in path.parts and file != AUTHORS_PAGE:
            yield (".gitignore" if file == "gitignore" else file), path.read_text("utf-8")
    page = CHECKOUT / AUTHORS_PAGE
    yield AUTHORS_PAGE, (page if page.exists() else root / AUTHORS_PAGE).read_text("utf-8")


def _filled(text: str, words: Mapping[str, str], name: str) -> str:
    """The text with the words in their places; a word may hold places of its own."""
    for _ in range(2):
        text = PLACE.sub(lambda found: words.get(found[0].strip("@"), found[0]), text)
    return text.replace("@NAME@", name)


def _in_quotes(name: str) -> str:
    """A name as it stands between double quotes in YAML."""
    return json.dumps(name, ensure_ascii=False)[1:-1]


def _in_markdown(name: str) -> str:
    """A name as it stands in running text, whatever signs are in it."""
    escaped = re.sub(r"([\\`*_{}\[\]#|])", r"\\\1", name)
    return escaped.replace("&", "&amp;").replace("<", "&lt;")
