"""What a face needs to know of the page it stands on."""

from collections.abc import Callable
from dataclasses import dataclass, field

from calculators.engine.text import escape

from ..handbook import Handbook

Link = Callable[[str, str], str]  # (page source, anchor) -> an address


@dataclass
class Context:
    """The handbook, the page at hand, and how to link from it."""

    handbook: Handbook
    source: str
    link: Link  # an address from the page at hand
    address: Link  # an absolute address, as a QR code needs it
    site_url: str = ""
    links_terms: bool = False  # whether the page is one that an author wrote
    terms_linked: set[str] = field(default_factory=set)

    def anchor(self, page: str, anchor: str, words: str, style: str = "") -> str:
        """A link as HTML."""
        kind = f' class="{style}"' if style else ""
        return f'<a{kind} href="{escape(self.link(page, anchor))}">{escape(words)}</a>'


TOLERANCES = "tolerances.md"
HAZARDS = "hazards.md"
GLOSSARY = "glossary.md"
SOURCES = "sources.md"
GAUGES = "gauges.md"
REVISIONS = "revisions.md"
CALCULATORS = "calculators/index.md"


def calculator_page(name: str) -> str:
    """The page of a calculator, as MkDocs names its source."""
    return f"calculators/{name}.md"


def model_page(id: str) -> str:
    """The page of a model."""
    return f"models/{id}.md"


def material_page(id: str) -> str:
    """The page of a wood."""
    return f"materials/{id}.md"


def source_link(context: Context, id: str) -> str:
    """A source cited by its title, linked to its entry."""
    entry = context.handbook.entries["sources"].get(id)
    title = str(entry.fields["title"]) if entry else id
    return context.anchor(SOURCES, f"source-{id}", title, "br-source")
