"""The command that writes a template to a file."""

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

import click

from calculators.engine.reading import ReadingError, read_quantity

from ..handbook import Handbook
from ..instruments import Instrument, instrument_of_model, instrument_of_order
from ..opening import open_handbook
from .answers import CannotMake
from .makers import Maker, for_instrument, make, makers
from .shapes import CannotCut, Template
from .sheets import PAPERS

INVENTED = "Invented for demonstration."


class Refused(click.ClickException):
    """What cannot be done as it was asked; the message says why."""

    exit_code = 2


@click.command("template")
@click.argument("name", default="")
@click.option(
    "--list", "listed", is_flag=True, help="list the templates, or those of an instrument"
)
@click.option("--model", default="", help="id of the instrument's model")
@click.option("--order", default="", help="number of an order, in place of a model")
@click.option(
    "--paper", type=click.Choice(list(PAPERS)), default="a4", show_default=True, help="for PDF"
)
@click.option(
    "--out",
    type=click.Path(dir_okay=False, path_type=Path),
    help="the file to write: .pdf, .svg or .dxf",
)
@click.option("--kerf", default="", help="what a laser takes away, like '0.2 mm'; for DXF")
@click.option("--tool-diameter", default="", help="a router's tool, like '3 mm'; for DXF")
@click.option(
    "-f",
    "--config-file",
    default="mkdocs.yml",
    type=click.Path(path_type=Path),
    help="the handbook's mkdocs.yml",
)
def template(
    name: str, listed: bool, model: str, order: str, paper: str, out: Path | None, kerf: str,
    tool_diameter: str, config_file: Path,
) -> None:  # fmt: skip
    """Write template NAME of a model or an order at full size, as PDF, SVG or DXF."""
    if model and order:
        raise Refused("say --model or --order, not both")
    if listed:
        _list(model, order, config_file)
        return
    if not name or not (model or order) or out is None:
        raise Refused(
            "say NAME, --model or --order, and --out; --list shows the templates there are"
        )
    writer = WRITERS.get(out.suffix.lower())
    if writer is None:
        raise Refused(f"{out}: name a file that ends in {', '.join(WRITERS)}")
    widths = _length("--kerf", kerf), _length("--tool-diameter", tool_diameter)
    if any(widths) and out.suffix.lower() != ".dxf":
        raise Refused("--kerf and --tool-diameter are for a .dxf file; leave them out")
    handbook = _handbook(config_file)
    instrument = _instrument(handbook, model, order)
    try:
        made = make(instrument, name)
        edition, note = edition_of(handbook, makers()[name]), note_of(instrument)
        found = writer(made, Asked(paper, *widths, instrument.title, edition, note))
    except (CannotMake, CannotCut) as error:
        raise Refused(str(error)) from None
    try:
        out.write_bytes(found)
    except OSError as error:
        raise Refused(f"{out}: {error.strerror or 'cannot be written'}") from None
    click.echo(
        f"{out}: {made.title}, {instrument.title}, {made.width_mm:.1f} by {made.height_mm:.1f} mm"
    )


def _list(model: str, order: str, config_file: Path) -> None:
    names = list(makers())
    if model or order:
        names = for_instrument(_instrument(_handbook(config_file), model, order))
    for name in names:
        click.echo(f"{name}  {makers()[name].summary}")


def _handbook(config_file: Path) -> Handbook:
    handbook, problems = open_handbook(config_file)
    if problems:
        raise Refused(f"the handbook has problems, such as {problems[0]}; see benchrule check")
    return handbook


def _instrument(handbook: Handbook, model: str, order: str) -> Instrument:
    if order:
        if order not in handbook.orders:
            raise Refused(f"there is no order '{order}'; take one of {', '.join(handbook.orders)}")
        return instrument_of_order(handbook, order)
    if model not in handbook.models:
        raise Refused(f"there is no model '{model}'; take one of {', '.join(handbook.models)}")
    return instrument_of_model(handbook, model)


def _length(option: str, text: str) -> float:
    """A length in mm; 0 where none is given."""
    if not text:
        return 0.0
    try:
        found = read_quantity(text, "mm")
    except ReadingError as error:
        raise Refused(f"{option} {error}") from None
    if found <= 0:
        raise Refused(f"{option} must be more than 0; leave it out for none")
    return found


def note_of(instrument: Instrument) -> str:
    """What has to be said of an instrument that is not a real one."""
    entry = instrument.order or instrument.handbook.models[instrument.model]
    return INVENTED if entry.fields.get("invented") else ""


def edition_of(handbook: Handbook, maker: Maker) -> str:
    """Which revisions of the handbook a template rests on: those of its calculators' stations."""
    stations = [
        station
        for station in handbook.stations
        if set(maker.needs or maker.takes) & set(station.field("calculators") or ())
    ]
    said = [
        f"{one.title}, revision {one.revisions[0]['revision']} of {one.revisions[0]['on']}"
        for one in stations
    ]
    return f"Handbook: {'; '.join(said)}" if said else ""


@dataclass(frozen=True)
class Asked:
    """What a file is to be like, and what is to be said in it."""

    paper: str
    kerf_mm: float
    tool_diameter_mm: float
    instrument: str
    edition: str
    note: str


# Imported where they are needed: each library costs the other files a part of a second.
def _pdf(template: Template, asked: Asked) -> bytes:
    from .pdf import to_pdf

    return to_pdf(
        template, asked.paper, instrument=asked.instrument, edition=asked.edition, note=asked.note
    )


def _svg(template: Template, asked: Asked) -> bytes:
    from .svg import to_svg

    text = to_svg(template, instrument=asked.instrument, edition=asked.edition, note=asked.note)
    return text.encode()


def _dxf(template: Template, asked: Asked) -> bytes:
    from .dxf import to_dxf

    return to_dxf(
        template,
        kerf_mm=asked.kerf_mm,
        tool_diameter_mm=asked.tool_diameter_mm,
        instrument=asked.instrument,
        edition=asked.edition,
        note=asked.note,
    )


WRITERS: dict[str, Callable[[Template, Asked], bytes]] = {".pdf": _pdf, ".svg": _svg, ".dxf": _dxf}
