"""A number with a unit in a procedure must be a reference, so that it cannot drift."""

import re
from collections.abc import Iterator

from ..handbook import Handbook
from ..problems import Problem
from ..references import CODE, FENCE, REFERENCE, blank, of_text

UNIT_WORDS = (
    "mm|cm|m|µm|μm|um|microns?|in|inch(?:es)?|thou|mils?|ft|feet|°C|°F|°|degrees?|%|per ?cent|"
    "s|secs?|seconds?|min|mins|minutes?|h|hrs?|hours?|days?|weeks?|months?|kg|g|lbs?|oz|N|lbf|kgf|"
    "k?Pa|MPa|bar|psi|rpm|m/s|ft/min|W|kW|V|A|dB|ppm|ml|l|litres?|cents"
)
LOOSE = re.compile(
    rf"(?<![\w./-])\d+(?:[.,]\d+)?(?:\s*(?:to|-|–|x|×)\s*\d+(?:[.,]\d+)?)?[\s\u00a0-]?(?:{UNIT_WORDS})(?![\w/])"
)
LINK_TARGET = re.compile(r"\]\([^)\n]*\)")
OPTIONS = re.compile(r"^/// [^\n]*(?:\n {4}[^\n]*)+", re.MULTILINE)  # a calculator's own values


def find_problems(handbook: Handbook) -> Iterator[Problem]:
    """Loose numbers in the pages of stations."""
    for station in handbook.stations:
        page = station.page
        for position, number in _loose_in(page.body):
            yield page.problem(
                position, f"loose number '{number}'",
                "cite a tolerance as [[id]], or mark it: [[plain: … | reason]]",
            )  # fmt: skip


@of_text
def _loose_in(body: str) -> tuple[tuple[int, str], ...]:
    return tuple((found.start(), found[0]) for found in LOOSE.finditer(blanked(body)))


def blanked(text: str) -> str:
    """The text with references, code and link targets blanked out, positions kept."""
    return blank(text, FENCE, CODE, REFERENCE, LINK_TARGET, OPTIONS)
