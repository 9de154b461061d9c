"""Contrast of what is no text (WCAG 2.2, 1.4.11): lines, rings, edges, in both schemes, from the style sheets."""

import re

import pytest

from .conftest import ROOT

ASSETS = ROOT / "build/benchrule/theme/assets"
SCHEMES = ("bench", "bench-night")
GROUNDS = ("paper", "sheet", "shell-soft", "alarm-soft", "good-soft")
# What must be seen to use or understand the page, by the grounds it stands on.
LINES = {
    "strong-line": GROUNDS,  # edges of fields, buttons and options
    "brass": (*GROUNDS, "mark"),  # the ring, the edge of a verdict
    "shell": GROUNDS, "alarm": GROUNDS, "good": GROUNDS, "ink": GROUNDS, "quiet": GROUNDS,
    "draw-thin": ("paper", "sheet"),
}  # fmt: skip
# Words on the row that a link led to; axe-core never follows a link to a row.
WORDS_ON_MARK = ("ink", "quiet", "rosewood", "alarm", "brass", "shell")


def variables(scheme: str) -> dict[str, str]:
    """The colours of a scheme by name, without the prefix."""
    css = "".join((ASSETS / f"{name}.css").read_text("utf-8") for name in ("book", "drawing"))
    blocks = re.findall(rf'^\[data-md-color-scheme="{scheme}"\] {{([^}}]*)}}', css, re.MULTILINE)
    return {
        name: value
        for block in blocks
        for name, value in re.findall(r"--br-([\w-]+):\s*(#[0-9a-f]{3,6})\b", block)
    }


def luminance(colour: str) -> float:
    """Relative luminance as WCAG defines it."""
    digits = colour.lstrip("#")
    digits = "".join(one * 2 for one in digits) if len(digits) == 3 else digits
    parts = [int(digits[at : at + 2], 16) / 255 for at in (0, 2, 4)]
    red, green, blue = (c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """From 1 (alike) to 21 (black on white)."""
    lighter, darker = sorted((luminance(one), luminance(other)), reverse=True)
    return (lighter + 0.05) / (darker + 0.05)


def test_the_measure_itself() -> None:
    assert contrast("#000", "#ffffff") == pytest.approx(21)
    assert contrast("#777777", "#ffffff") == pytest.approx(4.48, abs=0.01)


@pytest.mark.parametrize("scheme", SCHEMES)
def test_lines_and_rings_stand_out_from_what_they_stand_on(scheme: str) -> None:
    colours = variables(scheme)
    weak = [
        f"{line} on {ground}: {contrast(colours[line], colours[ground]):.2f}"
        for line, grounds in LINES.items()
        for ground in grounds
        if contrast(colours[line], colours[ground]) < 3
    ]
    assert not weak, weak


@pytest.mark.parametrize("scheme", SCHEMES)
def test_words_can_be_read_on_the_row_a_link_led_to(scheme: str) -> None:
    colours = variables(scheme)
    weak = [
        f"{word}: {contrast(colours[word], colours['mark']):.2f}"
        for word in WORDS_ON_MARK
        if contrast(colours[word], colours["mark"]) < 4.5
    ]
    assert not weak, weak


@pytest.mark.parametrize("scheme", SCHEMES)
def test_the_ring_on_the_band_is_a_lighter_one(scheme: str) -> None:
    book = (ASSETS / "book.css").read_text("utf-8")
    [ring] = re.findall(r"^\.md-header, [^{]*{ --br-ring: (#\w+);", book, re.MULTILINE)
    assert contrast(ring, variables(scheme)["band"]) >= 3


@pytest.mark.parametrize("scheme", SCHEMES)
def test_woods_and_metal_are_told_apart_by_an_edge(scheme: str) -> None:
    drawing = (ASSETS / "drawing.css").read_text("utf-8")
    colours = variables(scheme)
    for style in (
        "wood-light",
        "wood-mid",
        "wood-dark",
        "metal",
        "glue",
        "lacquer",
        "felt",
        "good",
        "bad",
    ):
        [rule] = re.findall(rf"^\.br-drawing \.{style} {{([^}}]*)}}", drawing, re.MULTILINE)
        edge = re.search(r"stroke: var\(--br-([\w-]+)\)", rule)
        assert edge, f"{style} has no edge"
        assert contrast(colours[edge[1]], colours["sheet"]) >= 3
