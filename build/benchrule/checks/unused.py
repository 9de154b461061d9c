"""Nothing lies about unused: every tolerance, hazard, gauge, source, term and drawing is needed."""

from collections.abc import Iterator

from ..handbook import Handbook
from ..problems import Problem
from ..references import BadReference, find_references, of_text, parse_reference
from .references import BLOCK

STANDING = {"common-practice", "shop-decision"}


def find_problems(handbook: Handbook) -> Iterator[Problem]:
    """Entries that no page and no other entry uses."""
    cited = _cited(handbook)
    entries = handbook.entries
    for tolerance in handbook.tolerances.values():
        if ("tol", tolerance.id) not in cited:
            yield tolerance.entry.problem(
                "no procedure cites it", f"cite it as [[{tolerance.id}]] where it is checked"
            )
    used = {id for station in handbook.stations for id in station.field("hazards")}
    used |= {id for wood in entries["materials"].values() for id in wood.fields["hazards"]}
    for id, entry in entries["hazards"].items():
        if id not in used and ("hazard", id) not in cited:
            yield entry.problem("no station has it", "name it in a station's hazards or remove it")
    gauges = {tolerance.field("gauge") for tolerance in handbook.tolerances.values()}
    for id, entry in entries["gauges"].items():
        if id not in gauges and ("gauge", id) not in cited:
            yield entry.problem("no tolerance is measured with it", "use it or remove it")
    sources = set(_sources(handbook)) | STANDING
    for id, entry in entries["sources"].items():
        if id not in sources and ("source", id) not in cited:
            yield entry.problem("nothing is taken from it", "cite it or remove it")
    yield from _terms(handbook, cited)
    yield from _drawings(handbook)
    groups = {station.group for station in handbook.stations}
    for id, entry in entries["groups"].items():
        if id not in groups:
            yield entry.problem("no station belongs to it", "name it in a station or remove it")


def _cited(handbook: Handbook) -> set[tuple[str, str]]:
    found = set()
    for page in handbook.pages:
        for _, inner in find_references(page.body):
            try:
                reference = parse_reference(inner)
            except BadReference:
                continue  # said by the check of the references
            found.add((reference.kind, reference.id))
    return found


def _sources(handbook: Handbook) -> Iterator[str]:
    for kind in ("gauges", "hazards", "tolerances", "models"):
        for entry in handbook.entries[kind].values():
            yield str(entry.fields["source"])
    for entry in handbook.entries["hazards"].values():
        yield from (str(limit["source"]) for limit in entry.fields.get("limits", ()))
    for entry in handbook.entries["materials"].values():
        yield from (str(one["source"]) for one in entry.fields["properties"])
        yield str(entry.fields["protection"]["source"])


def _terms(handbook: Handbook, cited: set[tuple[str, str]]) -> Iterator[Problem]:
    """Terms that no page uses, by their name or by any other word for the thing."""
    text = " ".join(_lower(page.body) for page in handbook.pages)
    terms = handbook.entries["glossary"]
    used = {id for kind, id in cited if kind == "term"}
    used |= {id for entry in terms.values() for id in entry.fields.get("see", ())}
    for id, entry in terms.items():
        words = (entry.fields["term"], *entry.fields.get("other_words", ()))
        if id not in used and not any(str(word).lower() in text for word in words):
            yield entry.problem("no page uses the term", "use it in a procedure or remove it")


@of_text
def _lower(body: str) -> str:
    """Its words in small letters, with a space between them."""
    return " ".join(body.lower().split())


def _drawings(handbook: Handbook) -> Iterator[Problem]:
    used = {str(entry.fields.get("drawing")) for entry in handbook.entries["glossary"].values()}
    used |= {str(entry.fields.get("drawing")) for entry in handbook.models.values()}
    for page in handbook.pages:
        for found in BLOCK.finditer(page.body):
            if found["name"] == "drawing":
                used.add((found["argument"] or "").strip())
    for path in sorted((handbook.docs / "drawings").glob("*.svg")):
        if path.stem not in used:
            file = path.relative_to(handbook.root).as_posix()
            yield Problem(file, 1, "no page shows this drawing", "place it or remove it")
