"""The pages that no author writes: lists made from the data, one page a calculator."""

from .handbook import Handbook

LISTS = {
    "tolerances.md": (
        "Tolerances",
        "Every limit of the shop, station by station: what to hold, how to measure it, what to do "
        "when it is out.",
        "/// tolerances | all\n///",
    ),
    "hazards.md": (
        "Hazards",
        "What can hurt you here, and the usual cautions. They do not replace your local code, the "
        "maker's data sheets or a licensed professional.",
        "/// hazards | all\n///",
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
    return pages


def navigation(handbook: Handbook) -> list[dict[str, object]]:
    """The order of the book, where mkdocs.yml does not set its own."""
    return [
        {"Home": "index.md"},
        {"Stations": [{station.title: station.page.source} for station in handbook.stations]},
        {
            "Calculators": [
                {"All calculators": "calculators/index.md"},
                *(
                    {calculator.title: f"calculators/{name}.md"}
                    for name, calculator in handbook.calculators.items()
                ),
            ]
        },
        {"Look up": [{title: source} for source, (title, _, _) in LISTS.items()]},
        {
            "About": [
                {str(page.front.get("title", page.source)): page.source}
                for page in handbook.pages
                if page.source != "index.md" and "station" not in page.front
            ]
        },
    ]


def station_body(body: str) -> str:
    """A station's Markdown with the head above and the way on below."""
    return f"/// station-head\n///\n\n{body.strip()}\n\n/// station-foot\n///\n"
