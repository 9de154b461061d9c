"""Files beside an order's page: its sheet as JSON, and its templates as PDF and SVG."""

import json
from functools import partial

from .build_sheet import build_sheet, sheet_facts
from .handbook import Handbook
from .instruments import Instrument, instrument_of_model, instrument_of_order
from .templates.answers import CannotMake
from .templates.command import edition_of, note_of
from .templates.makers import for_instrument, make, makers
from .templates.shapes import Template
from .templates.sheets import PAPERS
from .templates.svg import to_svg
from .unchanged import Piece


def order_files(handbook: Handbook, piece: Piece) -> dict[str, bytes]:
    """Address → bytes of every file beside the orders' pages."""
    found: dict[str, bytes] = {}
    for id in (*handbook.orders, *(handbook.models if handbook.orders else ())):
        order = id in handbook.orders
        sheet = piece(f"sheet {id}", "", partial(_sheet, id, order))
        found[f"orders/{id}.json"] = sheet.encode()
        if order:
            files = piece(f"templates {id}", "", partial(_templates, id))
            found |= {address: text.encode("latin-1") for address, text in files.items()}
    return found


def _sheet(id: str, order: bool, handbook: Handbook) -> str:
    """The sheet of an order or, to compare with, of a model, as JSON."""
    one = (instrument_of_order if order else instrument_of_model)(handbook, id)
    return json.dumps(sheet_facts(one, build_sheet(one)), ensure_ascii=False)


def _templates(order: str, handbook: Handbook) -> dict[str, str]:
    """An order's templates by their addresses; a text has a letter for each byte."""
    files = template_files(handbook, order)
    return {address: content.decode("latin-1") for address, content in files.items()}


def template_addresses(order: str, name: str) -> dict[str, str]:
    """What a reader may take of a template → its address."""
    found = {words: f"orders/{order}/{name}-{paper}.pdf" for paper, words in PAPER_WORDS.items()}
    return {**found, "SVG": f"orders/{order}/{name}.svg"}


PAPER_WORDS = {paper: paper.upper() if paper.startswith("a") else paper.title() for paper in PAPERS}


def templates_of(instrument: Instrument) -> tuple[dict[str, Template], list[str]]:
    """The templates of an instrument by name, and in words why others cannot be drawn."""
    drawn: dict[str, Template] = {}
    refused = []
    for name in for_instrument(instrument):
        try:
            drawn[name] = make(instrument, name)
        except CannotMake as error:
            refused.append(f"{makers()[name].title}: {error}")
    return drawn, refused


def template_files(handbook: Handbook, order: str) -> dict[str, bytes]:
    """Address → bytes of an order's templates."""
    from .templates.pdf import to_pdf  # its libraries take half a second; most builds draw none

    found: dict[str, bytes] = {}
    instrument = instrument_of_order(handbook, order)
    for name, template in templates_of(instrument)[0].items():
        said = {
            "instrument": instrument.title, "edition": edition_of(handbook, makers()[name]),
            "note": note_of(instrument),
        }  # fmt: skip
        for paper in PAPERS:
            found[f"orders/{order}/{name}-{paper}.pdf"] = to_pdf(template, paper, **said)
        found[f"orders/{order}/{name}.svg"] = to_svg(template, **said).encode()
    return found
