"""Files beside an order's page: its sheet as JSON, and its templates as PDF and SVG."""

import json

from .build_sheet import build_sheet, sheet_facts
from .handbook import Handbook
from .instruments import Instrument, instrument_of_model, instrument_of_order
from .templates.answers import CannotMake
from .templates.command import edition_of, note_of
from .templates.makers import for_instrument, make, makers
from .templates.pdf import to_pdf
from .templates.shapes import Template
from .templates.sheets import PAPERS
from .templates.svg import to_svg


def sheet_files(handbook: Handbook) -> dict[str, str]:
    """Address → JSON of the sheet of every order and, to compare with, of every model."""
    ones = [instrument_of_order(handbook, id) for id in handbook.orders]
    ones += [instrument_of_model(handbook, id) for id in handbook.models] if ones else []
    return {
        f"orders/{one.id}.json": json.dumps(
            sheet_facts(one, build_sheet(one)), ensure_ascii=False
        )
        for one in ones
    }  # fmt: skip


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


def template_files(handbook: Handbook) -> dict[str, bytes]:
    """Address → bytes of every order's templates."""
    found: dict[str, bytes] = {}
    for order in handbook.orders:
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
