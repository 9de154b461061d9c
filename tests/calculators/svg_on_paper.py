"""Where the shapes of a drawing lie, and whether any of them leaves the paper."""

import xml.etree.ElementTree as ET

LETTER = {"label": 8.2, "label-small": 7.0}  # width of a letter, a little more than it needs


def corners(shape: ET.Element) -> list[tuple[float, float]]:
    """Points between which a shape lies; none for paths and turned text."""

    def number(name: str) -> float:
        return float(shape.get(name, "0"))

    match shape.tag.rpartition("}")[2]:
        case "line":
            return [(number("x1"), number("y1")), (number("x2"), number("y2"))]
        case "rect":
            x, y = number("x"), number("y")
            return [(x, y), (x + number("width"), y + number("height"))]
        case "circle":
            x, y, r = number("cx"), number("cy"), number("r")
            return [(x - r, y - r), (x + r, y + r)]
        case "polygon" | "polyline":
            pairs = [pair.split(",") for pair in shape.get("points", "").split()]
            return [(float(x), float(y)) for x, y in pairs]
        case "text" if shape.get("transform") is None:
            width = len(shape.text or "") * LETTER.get(shape.get("class", ""), 8.2)
            start = {"start": 0.0, "middle": width / 2, "end": width}[
                shape.get("text-anchor", "start")
            ]
            x, y = number("x") - start, number("y")
            return [(x, y - 13), (x + width, y + 3)]
    return []


def off_paper(picture: ET.Element) -> list[str]:
    """Every shape of which a point lies outside the view box by more than a unit."""
    _, _, width, height = map(float, picture.get("viewBox", "").split())
    return [
        f"{ET.tostring(shape, encoding='unicode')[:160]}: {x:g}, {y:g} of {width:g} by {height:g}"
        for shape in picture.iter()
        for x, y in corners(shape)
        if not (-1 <= x <= width + 1 and -1 <= y <= height + 1)
    ]


def texts_that_touch(picture: ET.Element) -> list[str]:
    """Pairs of words whose boxes overlap."""
    boxes = [
        (shape.text or "", *corners(shape))
        for shape in picture.iter()
        if shape.tag.endswith("text") and corners(shape)
    ]
    found = []
    for number, (words, low, high) in enumerate(boxes):
        for other, other_low, other_high in boxes[number + 1 :]:
            apart = (
                high[0] <= other_low[0]
                or other_high[0] <= low[0]
                or high[1] <= other_low[1]
                or other_high[1] <= low[1]
            )
            if not apart:
                found.append(f"'{words}' and '{other}'")
    return found
