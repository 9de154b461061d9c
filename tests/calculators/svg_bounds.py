"""Whether everything in a drawing of ours stays on its paper, as near as its text can tell."""

import re
from xml.etree import ElementTree

SIZES = {"label": 16.0, "label-small": 13.5}
LETTER = 0.56  # mean width of a letter over its size
SPARE = 2.5


def outside(svg: str) -> list[str]:
    """What reaches beyond the view box: element and place, or nothing."""
    root = ElementTree.fromstring(svg)
    _, _, width, height = map(float, root.attrib["viewBox"].split())
    found = []
    for element in root.iter():
        tag = element.tag.rpartition("}")[2]
        for x, y in _points(tag, element.attrib, element.text or ""):
            if not (-SPARE <= x <= width + SPARE and -SPARE <= y <= height + SPARE):
                found.append(f"{tag} {element.attrib.get('class')} at {x:g}, {y:g}: {element.text}")
    return found


def _points(tag: str, given: dict[str, str], words: str) -> list[tuple[float, float]]:
    def number(name: str) -> float:
        return float(given.get(name, 0))

    if tag == "line":
        return [(number("x1"), number("y1")), (number("x2"), number("y2"))]
    if tag == "rect":
        x, y = number("x"), number("y")
        return [(x, y), (x + number("width"), y + number("height"))]
    if tag == "circle":
        x, y, r = number("cx"), number("cy"), number("r")
        return [(x - r, y - r), (x + r, y + r)]
    if tag in ("polygon", "polyline"):
        pairs = (pair.split(",") for pair in given["points"].split())
        return [(float(x), float(y)) for x, y in pairs]
    if tag == "text" and "transform" not in given:
        size = SIZES.get(given.get("class", ""), 16.0)
        reach = len(words) * size * LETTER
        x, y = number("x"), number("y")
        left = {"start": x, "middle": x - reach / 2, "end": x - reach}[given["text-anchor"]]
        return [(left, y - 0.7 * size), (left + reach, y)]
    if tag == "path":
        # Absolute M and L only: the ends of straight paths.
        return [
            (float(x), float(y)) for x, y in re.findall(r"[ML]([-\d.]+)[ ,]([-\d.]+)", given["d"])
        ]
    return []
