"""The pages of learning: practice, assignments, marking, sign-off sheets."""

from .handbook import Handbook
from .references import in_markdown

NO_EXAM = (
    "This is no examination under supervision: nobody sees who types, or what lies beside the tablet. "
    "Skill of the hand is shown at the bench and [signed off there by a person](sign-off/index.md)."
)
MANY = 100  # stations from which the list of their sheets is folded by groups
PAGES = {
    "learning/index.md": (
        "Practice",
        "Every station ends with practice: exercises with fresh figures each time, marked on the "
        "spot, with the reason where an answer is wrong. What went wrong comes back soon, what is "
        "learned comes back late. Your answers stay on this device: no account, no server.\n\n"
        f"{NO_EXAM}\n\n## On this device\n\n/// progress\n///",
    ),
    "learning/work.md": (
        "Work through an assignment",
        "Open the file or the link that your trainer gave you, and type your code. Each trainee has "
        "figures of their own. You may stop and go on later, without a network too; what you type is "
        "kept on this device at once. At the end, save the result file and hand it to your trainer."
        "\n\n/// assignment-work\n///",
    ),
    "learning/set.md": (
        "Set an assignment",
        "Choose stations and calculators and how many questions of each. You get a file, a link with "
        "its code to scan, and sheets to print with an answer key. The same can be done with "
        "`benchrule assignment` and `benchrule sheet`.\n\n/// assignment-set\n///",
    ),
    "learning/mark.md": (
        "Mark results",
        "Give the assignment's file and the result files. Every question is drawn again and every "
        "answer marked again, here on this device; a result that was altered is named. The same can "
        f"be done with `benchrule mark`.\n\n{NO_EXAM}\n\n/// assignment-mark\n///",
    ),
    "learning/sign-off/index.md": (
        "Sign-off sheets",
        "A sheet for each station, to be printed and filled in at the bench. The trainer watches, the "
        "trainee measures, and a person signs. The command `benchrule training` keeps who has shown "
        "what on which revision, in a file of the trainer's own; nothing of it enters the handbook."
        "\n\n/// sign-off\n///",
    ),
}  # fmt: skip


def learning_pages(handbook: Handbook) -> dict[str, str]:
    """Page source → Markdown."""
    pages = {
        source: f"---\nhide: [toc]\n---\n\n# {title}\n\n{body}\n"
        for source, (title, body) in PAGES.items()
    }
    for station in handbook.stations:
        pages[f"learning/sign-off/{station.id}.md"] = (
            f"---\nhide: [toc]\n---\n\n# {in_markdown(station.title)}: sign-off\n\n/// sign-off | {station.id}\n///\n"
        )
    return pages


def learning_links(handbook: Handbook) -> dict[str, object]:
    """Their place in the order of the book."""
    links: list[object] = [
        {title: source} for source, (title, _) in PAGES.items() if "sign-off" not in source
    ]
    sheets: list[object] = [{"All sheets": "learning/sign-off/index.md"}]
    many = len(handbook.stations) > MANY
    for name, stations in handbook.lanes if many else [("", handbook.stations)]:
        below = [{in_markdown(one.title): f"learning/sign-off/{one.id}.md"} for one in stations]
        sheets += [{in_markdown(name): below}] if name else below
    return {"Learning": [*links, {"Sign-off sheets": sheets}]}
