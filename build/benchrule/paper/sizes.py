"""Sizes of paper and type."""

from dataclasses import dataclass

POINTS_PER_MM = 72 / 25.4
POINTS_PER_IN = 72.0

# What a person at the bench still reads at arm's length.
KEY_POINTS_LEAST_PT = 9.0
LIMITS_LEAST_PT = 7.5


@dataclass(frozen=True)
class Paper:
    """A size of paper, upright."""

    name: str
    width_pt: float
    height_pt: float


def _in_mm(name: str, width_mm: float, height_mm: float) -> Paper:
    return Paper(name, width_mm * POINTS_PER_MM, height_mm * POINTS_PER_MM)


def _in_inches(name: str, width_in: float, height_in: float) -> Paper:
    return Paper(name, width_in * POINTS_PER_IN, height_in * POINTS_PER_IN)


PAPERS = {
    "a5": _in_mm("A5", 148, 210),
    "a4": _in_mm("A4", 210, 297),
    "half-letter": _in_inches("half Letter", 5.5, 8.5),
    "letter": _in_inches("Letter", 8.5, 11),
}
CARD_PAPERS = ("a5", "a4", "half-letter")
SHEET_PAPERS = ("a4", "letter")


def mm(length_mm: float) -> float:
    """Millimetres in points."""
    return length_mm * POINTS_PER_MM
