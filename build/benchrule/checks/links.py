"""Links between pages lead to files and headings that exist."""

import posixpath
import re
from collections.abc import Iterator

from markdown.extensions.toc import slugify

from ..handbook import Handbook
from ..problems import Problem
from ..references import CODE, FENCE, blank, of_text

LINK = re.compile(r"(?<!!)\[[^\]\n]*\]\((?P<target>[^)\s]+)\)")
IMAGE = re.compile(r"!\[[^\]\n]*\]\((?P<target>[^)\s]+)\)")
HEADING = re.compile(
    r"^#{1,6} (?P<title>.+?)\s*(?:\{[^}]*#(?P<id>[\w-]+)[^}]*\})?\s*$", re.MULTILINE
)
GENERATED = (
    "calculators/",
    "tolerances.md",
    "hazards.md",
    "glossary.md",
    "sources.md",
    "gauges.md",
    "revisions.md",
    "models/",
    "materials/",
)


def find_problems(handbook: Handbook) -> Iterator[Problem]:
    """Dead links. Anchors in pages that the build makes are left to MkDocs' own strict check."""
    pages = {page.source: page for page in handbook.pages}
    anchors = {source: _anchors(page.body) for source, page in pages.items()}
    for page in handbook.pages:
        for position, written in _links_in(page.body):
            target, _, anchor = written.partition("#")
            if re.match(r"[a-z][a-z0-9+.-]*:|/", target):
                continue
            source = posixpath.normpath(
                posixpath.join(posixpath.dirname(page.source), target) if target else page.source
            )
            if source.startswith(GENERATED):
                continue
            if source not in pages and not (handbook.docs / source).exists():
                yield page.problem(position, f"dead link '{written}'", "mend the path")
            elif anchor and source in anchors and anchor not in anchors[source]:
                generated = anchor.startswith(("tol-", "calc-", "fault-"))
                if not generated:
                    yield page.problem(
                        position, f"no heading '#{anchor}' in {source}", "mend the anchor"
                    )


@of_text
def _links_in(body: str) -> tuple[tuple[int, str], ...]:
    text = blank(body, FENCE, CODE)
    found = (*LINK.finditer(text), *IMAGE.finditer(text))
    return tuple((one.start(), one["target"]) for one in found)


@of_text
def _anchors(body: str) -> frozenset[str]:
    return frozenset(
        found["id"] or slugify(re.sub(r"[*_`]", "", found["title"]), "-")
        for found in HEADING.finditer(body)
    )
