"""The pages that no author writes: lists made from the data, one page a calculator."""

import posixpath

from .handbook import Handbook
from .learning_pages import learning_links, learning_pages
from .references import in_markdown

MANY_PAGES = 100  # written pages from which the lists at the side are folded

LISTS = {
    "tolerances.md": (
        "Tolerances",
        "Every limit of the shop: type what you look for, or choose a station, a part, your model "
        "or the gauge in your hand. *Is it in?* says whether a reading can be accepted, by the rule "
        "of ISO 14253-1: the gauge's uncertainty is kept clear of both limits.",
        "/// tolerances | all\n///",
    ),
    "hazards.md": (
        "Hazards",
        "What can hurt you here, and the usual cautions. They do not replace your local code, the "
        "maker's data sheets or a licensed professional.",
        "/// hazards | all\n///",
    ),
    "revisions.md": (
        "Revisions",
        "What changed in the procedures, the newest first. A person trained before a change reads "
        "that station again and shows it at the bench.",
        "/// revisions\n///",
    ),
    "glossary.md": ("Glossary", "The words of the trade, and what else people call them.",
                    "/// glossary\n///"),
    "gauges.md": ("Gauges", "What the shop measures with, how finely each reads, and how well.",
                  "/// gauges\n///"),
    "sources.md": ("Sources", "Where the figures come from. “Common practice, no source” means just "
                   "that.", "/// sources\n///"),
}  # fmt: skip


def generated_pages(handbook: Handbook) -> dict[str, str]:
    """Page source → Markdown, for every page that the build makes."""
    pages = {
        source: f"# {title}\n\n{words}\n\n{block}\n"
        for source, (title, words, block) in LISTS.items()
    }
    pages["calculators/index.md"] = (
        "# Calculators\n\nEach answers one question of the bench, shows its working, says where it "
        "holds, and refuses what it cannot work out.\n\n/// calculators\n///\n"
    )
    pages["calculators/how-we-know.md"] = (
        "---\nhide: [toc]\n---\n\n# How we know\n\nEvery calculator beside figures from outside this "
        "project: what the source has, what we have, and the difference. The same checks run whenever "
        "the handbook is built, and the build stops where one fails.\n\n/// how-we-know\n///\n"
    )
    pages |= learning_pages(handbook)
    pages |= _orders(handbook)
    for name, calculator in handbook.calculators.items():
        stations = [
            f"[[station:{station.id}]]"
            for station in handbook.stations
            if name in (station.field("calculators") or ())
        ]
        used = f"Used at: {', '.join(stations)}.\n\n" if stations else ""
        pages[f"calculators/{name}.md"] = (
            f"---\nhide: [toc]\n---\n\n# {calculator.title}\n\n{used}/// calculator | {name}\n///\n\n"
            f"## How we know\n\nFigures from outside this project, beside ours; the same checks run "
            f"whenever the handbook is built.\n\n/// how-we-know | {name}\n///\n\n"
            f"## Exercises\n\n/// practice | {name}\n///\n"
        )
    pages |= _entries(handbook, "models", "Models", "The instruments the shop builds. Choose one on a "
                      "station's page, in the tolerances or in a calculator, and the figures are its "
                      "own.")  # fmt: skip
    pages |= _entries(handbook, "materials", "Woods", "What the shop builds with. Published figures are of "
                      "clear, straight-grained samples: a board in the hand may differ by a fifth "
                      "either way.")  # fmt: skip
    return pages


def _orders(handbook: Handbook) -> dict[str, str]:
    """The list of custom instruments, a build sheet each, and the comparison."""
    if not handbook.orders:
        return {}
    pages = {
        "orders/index.md": "---\nhide: [toc]\n---\n\n# Orders\n\nEach custom instrument has its own build "
        "sheet: what every station sets for it, worked out from its model and its changes, with the "
        "limits and room for what is measured.\n\n/// orders\n///\n",
        "orders/compare.md": "---\nhide: [toc]\n---\n\n# Compare\n\nTwo orders, or an order and a model: "
        "what the bench does differently.\n\n/// order-compare\n///\n",
    }  # fmt: skip
    for id, entry in handbook.orders.items():
        title = f"{id}: {entry.fields['name']}"
        pages[f"orders/{id}.md"] = (
            f"---\nhide: [toc]\n---\n\n# {in_markdown(title)}\n\n/// order | {id}\n///\n"
        )
    return pages


def _entries(handbook: Handbook, kind: str, title: str, words: str) -> dict[str, str]:
    """A page that lists the entries of a kind, and a page for each; none where there are none."""
    entries = handbook.entries[kind]
    if not entries:
        return {}
    block = kind.removesuffix("s")
    pages = {
        f"{kind}/index.md": f"---\nhide: [toc]\n---\n\n# {title}\n\n{words}\n\n/// {kind}\n///\n"
    }
    for id, entry in entries.items():
        pages[f"{kind}/{id}.md"] = (
            f"---\nhide: [toc]\n---\n\n# {in_markdown(entry.fields['name'])}\n\n/// {block} | {id}\n///\n"
        )
    return pages


def navigation(handbook: Handbook) -> list[dict[str, object]]:
    """The order of the book, where mkdocs.yml does not set its own."""
    lanes = handbook.lanes
    stations: list[object] = []
    for name, members in lanes:
        links = [{in_markdown(station.title): station.page.source} for station in members]
        stations += [{in_markdown(name): links}] if name and len(lanes) > 1 else links
    return [
        {"Home": "index.md"},
        {"Stations": stations},
        {"Look up": [{title: source} for source, (title, _, _) in LISTS.items()]},
        {
            "Calculators": [
                {"All calculators": "calculators/index.md"},
                {"How we know": "calculators/how-we-know.md"},
                *(
                    {
                        title: [
                            {calculator.title: f"calculators/{name}.md"}
                            for name, calculator in members.items()
                        ]
                    }
                    for title, members in handbook.calculator_groups
                ),
            ]
        },
        learning_links(handbook),
        {"Orders": _order_links(handbook)},
        {"Models": _entry_links(handbook, "models", "All models")},
        {"Woods": _entry_links(handbook, "materials", "All woods")},
        {"About": _about(handbook)},
    ]


def _about(handbook: Handbook) -> list[object]:
    """The pages of plain words; where there are many, those of a folder together."""
    found: list[object] = []
    folders: dict[str, list[object]] = {}
    for page in handbook.pages:
        if page.source == "index.md" or "station" in page.front:
            continue
        folder = posixpath.basename(posixpath.dirname(page.source))
        link = {str(page.front.get("title", page.source)): page.source}
        if folder and len(handbook.pages) > MANY_PAGES:
            folders.setdefault(folder, []).append(link)
        else:
            found.append(link)
    found += [{name.replace("-", " ").capitalize(): links} for name, links in folders.items()]
    return found


def _entry_links(handbook: Handbook, kind: str, words: str) -> list[object]:
    entries = handbook.entries[kind]
    if not entries:
        return []
    links = [
        {in_markdown(entry.fields["name"]): f"{kind}/{id}.md"} for id, entry in entries.items()
    ]
    return [{words: f"{kind}/index.md"}, *links]


def _order_links(handbook: Handbook) -> list[object]:
    if not handbook.orders:
        return []
    links: list[object] = [{"All orders": "orders/index.md"}, {"Compare": "orders/compare.md"}]
    return [*links, *({id: f"orders/{id}.md"} for id in handbook.orders)]


def station_body(body: str) -> str:
    """A station's Markdown with the head above and the way on below."""
    return f"/// station-head\n///\n\n{body.strip()}\n\n/// station-foot\n///\n"
