"""The Markdown that authors write beyond plain Markdown: references and blocks.

``[[id]]`` references become links; ``/// calculator | name`` and its like become what they name.
The plugin sets ``context`` before each page.
"""

import re
import xml.etree.ElementTree as etree
from collections.abc import Callable
from typing import Any

from markdown import Markdown
from markdown.extensions import Extension
from markdown.inlinepatterns import InlineProcessor
from markdown.treeprocessors import Treeprocessor
from pymdownx.blocks import BlocksExtension
from pymdownx.blocks.block import Block

from calculators.engine.text import escape

from .data import Entry
from .faces import lists, materials, models
from .faces.calculator_form import calculator_block
from .faces.context import (
    GAUGES,
    GLOSSARY,
    HAZARDS,
    SOURCES,
    Context,
    calculator_page,
    material_page,
    model_page,
)
from .faces.drawings import drawing
from .faces.field_table import field_table
from .faces.how_we_know import how_we_know, how_we_know_all
from .faces.inline_limits import inline_limits
from .faces.look_up import gauges_json, look_up, station_table
from .faces.order_pages import compare_place, order_cards, order_sheet
from .faces.practice import calculator_practice, station_practice
from .faces.revisions import revision_table
from .faces.shop_map import calculator_cards, shop_map, station_foot, station_head
from .faces.sign_off import sign_off_list, sign_off_sheet
from .faces.term_links import TermLinks, linked_terms
from .handbook import Station
from .phrases import Phrases
from .references import REFERENCE, Reference, parse_reference


class BenchruleExtension(Extension):
    """Adds the references and blocks; holds the context of the page at hand."""

    context: Context | None = None
    _terms: tuple[list[tuple[str, Entry]], Phrases] | None = None
    _blocks: tuple[type[Block], ...] = ()

    def extendMarkdown(self, md: Markdown) -> None:
        """Registers the inline references; the blocks come with ``blocks()``."""
        md.inlinePatterns.register(_References(self, md), "benchrule-reference", 185)
        md.treeprocessors.register(_Sections(md), "benchrule-sections", 4)
        md.treeprocessors.register(
            _Terms(self, md), "benchrule-terms", -1
        )  # after MkDocs has turned links

    def blocks(self) -> "_Blocks":
        """The companion extension that knows the blocks."""
        return _Blocks(self)

    def terms(self) -> Phrases:
        """The terms that are linked, gathered again only where the glossary is another."""
        glossary = list(self.here.handbook.entries["glossary"].items())
        if self._terms is None or self._terms[0] != glossary:
            self._terms = glossary, linked_terms(self.here.handbook)
        return self._terms[1]

    def block_classes(self) -> tuple[type[Block], ...]:
        """One block class a maker, made once for all pages."""
        if not self._blocks:
            self._blocks = tuple(
                type(
                    f"{name.title().replace('-', '')}Block", (_MadeBlock,),
                    {"NAME": name, "make": staticmethod(maker), "extension": self},
                )
                for name, maker in MAKERS.items()
            )  # fmt: skip
        return self._blocks

    @property
    def here(self) -> Context:
        """The context of the page being made."""
        if self.context is None:
            raise RuntimeError("the build has set no page")
        return self.context


class _References(InlineProcessor):
    def __init__(self, extension: BenchruleExtension, md: Markdown) -> None:
        super().__init__(REFERENCE.pattern, md)
        self.extension = extension

    def handleMatch(  # type: ignore[override]
        self, m: re.Match[str], data: str
    ) -> tuple[str, int, int]:
        """The link in place of a reference, stored as HTML: its address is already right."""
        made = link_of(self.extension.here, parse_reference(m[1]))
        return self.md.htmlStash.store(made), m.start(0), m.end(0)


def link_of(context: Context, reference: Reference) -> str:
    """A reference as HTML; the checks have made sure that it leads somewhere."""
    if reference.kind == "plain":
        return escape(reference.id)
    book = context.handbook
    match reference.kind:
        case "tol":
            return inline_limits(context, book.tolerances[reference.id], reference)
        case "term":
            entry = book.entries["glossary"][reference.id]
            page, anchor, style = GLOSSARY, f"term-{reference.id}", "br-term"
            words, title = entry.fields["term"], entry.fields["meaning"]
            context.terms_linked.add(reference.id)
        case "station":
            station = book.station(reference.id)
            page, anchor, style = f"stations/{reference.id}.md", "", "br-station"
            words = title = station.title if station else reference.id
        case "calc":
            page, anchor, style = calculator_page(reference.id), "", "br-calc"
            words = title = book.calculators[reference.id].title
        case "model":
            page, anchor, style = model_page(reference.id), "", "br-station"
            words = title = str(book.models[reference.id].fields["name"])
        case "wood":
            page, anchor, style = material_page(reference.id), "", "br-station"
            words = title = str(book.entries["materials"][reference.id].fields["name"])
        case _:
            kind, page = {
                "gauge": ("gauges", GAUGES), "source": ("sources", SOURCES),
                "hazard": ("hazards", HAZARDS),
            }[reference.kind]  # fmt: skip
            fields = book.entries[kind][reference.id].fields
            anchor, style = f"{reference.kind}-{reference.id}", f"br-{reference.kind}"
            words = title = str(fields.get("name") or fields["title"])
    hint = f' title="{escape(title)}"' if title != words else ""
    return (
        f'<a href="{escape(context.link(page, anchor))}" class="{style}"{hint}>'
        f"{escape(reference.words or words)}</a>"
    )


class _Sections(Treeprocessor):
    """Wraps each step and fault (a level-3 heading and what follows) so that it can be styled."""

    NAMES = {"steps": "br-step", "what-goes-wrong": "br-fault"}

    def run(self, root: etree.Element) -> None:
        """Wraps the parts under the two sections."""
        style = ""
        wrapper: etree.Element | None = None
        for child in list(root):
            if child.tag == "h2":
                style, wrapper = self.NAMES.get(child.get("id", ""), ""), None
            elif child.tag == "h3" and style:
                wrapper = etree.Element("section", {"class": style})
                root.insert(list(root).index(child), wrapper)
                root.remove(child)
                wrapper.append(child)
            elif wrapper is not None:
                root.remove(child)
                wrapper.append(child)


class _Terms(Treeprocessor):
    """Links each term of the glossary where a page first uses it."""

    def __init__(self, extension: BenchruleExtension, md: Markdown) -> None:
        super().__init__(md)
        self.extension = extension

    def run(self, root: etree.Element) -> None:
        """Links the terms in the pages that authors write."""
        context = self.extension.here
        if context.links_terms:
            TermLinks(context, self.extension.terms()).run(root)


class _Blocks(BlocksExtension):  # type: ignore[misc]
    def __init__(self, extension: BenchruleExtension) -> None:
        super().__init__()
        self.extension = extension

    def extendMarkdownBlocks(self, md: Markdown, block_mgr: Any) -> None:
        """Registers one block class a maker."""
        for block in self.extension.block_classes():
            block_mgr.register(block, {})


class _MadeBlock(Block):  # type: ignore[misc]
    """A block whose HTML is made from the handbook; its inner text goes to the maker."""

    ARGUMENT = None
    OPTIONS = {"presets": [{}, lambda value: value]}
    extension: BenchruleExtension
    make: Callable[[Context, str, str, dict[str, Any]], str]

    def on_markdown(self) -> str:
        """The inner text is not Markdown of its own."""
        return "raw"

    def on_create(self, parent: etree.Element) -> etree.Element:
        """A place for the HTML."""
        return etree.SubElement(parent, "div", {"class": f"br-block br-{self.NAME}-block"})

    def on_end(self, block: etree.Element) -> None:
        """The HTML, made now that the inner text is known."""
        inner = "".join(block.itertext()).strip()
        made = self.make(self.extension.here, self.argument or "", inner, self.options["presets"])
        for child in list(block):
            block.remove(child)
        block.text = self.md.htmlStash.store(made)


def _station(context: Context) -> Station:
    station = context.handbook.station_of(context.source)
    if station is None:
        raise ValueError(f"{context.source}: this block belongs on a station's page")
    return station


def _tolerances(context: Context, argument: str, inner: str, presets: dict[str, Any]) -> str:
    if argument == "all":
        return look_up(context)
    station = context.handbook.station(argument) if argument else _station(context)
    if station is None:
        raise ValueError(f"{context.source}: there is no station '{argument}'")
    return station_table(context, station) + gauges_json(context)


def _drawing(context: Context, argument: str, inner: str, presets: dict[str, Any]) -> str:
    return drawing(context, argument, inner)


def _tools(context: Context, argument: str, inner: str, presets: dict[str, Any]) -> str:
    tools = "".join(f"<li>{escape(tool)}</li>" for tool in _station(context).field("tools"))
    return f'<ul class="br-tools">{tools}</ul>'


def _hazards(context: Context, argument: str, inner: str, presets: dict[str, Any]) -> str:
    if argument == "all":
        return lists.hazards_by_agent(context)
    return lists.hazard_cards(context, _station(context).field("hazards"), brief=True)


def _calculator(context: Context, argument: str, inner: str, presets: dict[str, Any]) -> str:
    return calculator_block(context, context.handbook.calculators[argument], presets)


def _practice(context: Context, argument: str, inner: str, presets: dict[str, Any]) -> str:
    if argument:
        return calculator_practice(context.handbook, argument)
    return station_practice(context.handbook, _station(context))


def _live_place(name: str) -> str:
    """A place that the script fills in."""
    return (
        f'<div class="br-practice-live" data-{name}><p>This needs the page\'s script: it works on '
        "this device, without a server.</p></div>"
    )


MAKERS: dict[str, Callable[[Context, str, str, dict[str, Any]], str]] = {
    "calculator": _calculator,
    "tolerances": _tolerances,
    "hazards": _hazards,
    "tools": _tools,
    "drawing": _drawing,
    "practice": _practice,
    "progress": lambda *_: _live_place("progress"),
    "assignment-set": lambda *_: _live_place("set-assignment"),
    "assignment-work": lambda *_: _live_place("work-assignment"),
    "assignment-mark": lambda *_: _live_place("mark-results"),
    "sign-off": lambda context, argument, *_: (
        sign_off_sheet(context, argument) if argument else sign_off_list(context)
    ),
    "orders": lambda context, *_: order_cards(context),
    "order": lambda context, argument, *_: order_sheet(context, argument),
    "order-compare": lambda context, *_: compare_place(context),
    "glossary": lambda context, *_: lists.glossary_list(context),
    "gauges": lambda context, *_: lists.gauge_table(context),
    "sources": lambda context, *_: lists.source_list(context),
    "how-we-know": lambda context, argument, *_: (
        how_we_know(context, context.handbook.calculators[argument])
        if argument
        else how_we_know_all(context)
    ),
    "shop-map": lambda context, *_: shop_map(context),
    "calculators": lambda context, *_: calculator_cards(context),
    "models": lambda context, *_: models.model_cards(context),
    "model": lambda context, argument, *_: models.model_sheet(context, argument),
    "materials": lambda context, *_: materials.material_cards(context),
    "material": lambda context, argument, *_: materials.material_sheet(context, argument),
    "revisions": lambda context, *_: revision_table(context),
    "fields": lambda context, argument, *_: field_table(context, argument),
    "station-head": lambda context, *_: station_head(context, _station(context)),
    "station-foot": lambda context, *_: station_foot(context, _station(context)),
}
