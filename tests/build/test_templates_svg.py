"""Templates as SVG, read back as XML: true millimetres, every line in its place."""

import math
from xml.etree import ElementTree

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchrule.templates.makers import make
from benchrule.templates.shapes import Label, Point, Template, mark
from benchrule.templates.svg import to_svg

from .test_templates import instrument, slot_x

SPACE = "{http://www.w3.org/2000/svg}"


def lines(root: ElementTree.Element, kind: str) -> dict[str, list[Point]]:
    """Lines of a kind by their names, as points in the file's own units, y downwards."""
    found = {}
    for one in root.iter():
        if one.get("class") == kind and one.tag in (f"{SPACE}polyline", f"{SPACE}polygon"):
            pairs = [pair.split(",") for pair in one.attrib["points"].split()]
            found[one.attrib["data-name"]] = [(float(x), float(y)) for x, y in pairs]
    return found


def mm_of(root: ElementTree.Element) -> tuple[float, float]:
    """How many millimetres one unit is, across and down."""
    box = [float(one) for one in root.attrib["viewBox"].split()]
    assert box[:2] == [0, 0]
    sizes = [root.attrib[name] for name in ("width", "height")]
    assert all(size.endswith("mm") for size in sizes)
    across, down = (
        float(size.removesuffix("mm")) / box[2 + n] for n, size in enumerate(sizes)
    )  # fmt: skip
    return across, down


def test_the_size_is_in_millimetres() -> None:
    template = make(instrument(), "neck-contours")
    root = ElementTree.fromstring(to_svg(template))
    assert mm_of(root) == (1, 1)
    assert float(root.attrib["width"].removesuffix("mm")) == pytest.approx(template.width_mm)
    assert float(root.attrib["height"].removesuffix("mm")) == pytest.approx(template.height_mm)


@settings(max_examples=25)
@given(scale=st.floats(250, 1200), frets=st.integers(1, 36))
def test_slots_lie_in_their_places(scale: float, frets: int) -> None:
    own = {"fret-spacing": {"scale_length": scale, "frets": frets}}
    root = ElementTree.fromstring(to_svg(make(instrument(calculators=own), "fret-slots")))
    across, _ = mm_of(root)
    nut = min(x for x, _ in lines(root, "cut")["board"])
    slots = lines(root, "slot")
    assert len(slots) == frets
    for fret in range(1, frets + 1):
        (x, _), (to_x, _) = slots[f"fret {fret}"]
        assert (x - nut) * across == pytest.approx(slot_x(scale, fret), abs=2e-6)
        assert to_x == x
    assert {one.get("data-width-mm") for one in root.iter() if one.get("class") == "slot"} == {
        "0.58"
    }


def test_up_is_up() -> None:
    template = make(instrument(), "bridge-place")
    root = ElementTree.fromstring(to_svg(template))
    bass, treble = lines(root, "guide")["bass string"], lines(root, "guide")["treble string"]
    assert treble[0][1] < bass[0][1]  # y runs downwards in a file, treble is drawn above
    assert treble[1][1] < treble[0][1]
    words = {one.text: one for one in root.iter(f"{SPACE}text")}
    assert float(words["treble side"].attrib["y"]) < float(words["bass side"].attrib["y"])
    turned = words["saddle"]
    assert turned.attrib["transform"].startswith("rotate(-90 ")
    assert len(words) == len(template.labels)


def test_words_are_safe_and_said_in_full() -> None:
    label = Label("<b> & 'x'", (1, 1))
    template = Template("t", "A & B", 10, 10, (mark((1, 1), (9, 9), name='"n"'),), (label,))
    text = to_svg(template, instrument="One <i>", edition="Edition 2", note="Invented.")
    root = ElementTree.fromstring(text)
    assert root.findtext(f"{SPACE}title") == "A & B"
    assert root.findtext(f"{SPACE}desc") == "One <i>. Edition 2. Invented."
    assert root.findtext(f"{SPACE}text") == "<b> & 'x'"
    assert lines(root, "mark")['"n"'] == [(1, 9), (9, 1)]


def test_lines_are_plain_and_the_same_each_time() -> None:
    template = make(instrument(), "channel-gauge")
    assert to_svg(template) == to_svg(template)
    root = ElementTree.fromstring(to_svg(template))
    for one in root.iter():
        if one.get("class") in ("cut", "slot", "mark", "guide"):
            assert one.attrib["fill"] == "none" and one.attrib["stroke"].startswith("#")
    # No kerf: the outline is the template's own.
    drawn = lines(root, "cut")["profile"]
    own = template.named("profile").points
    for (x, y), (to_x, to_y) in zip(drawn, own, strict=True):
        assert math.dist((x, template.height_mm - y), (to_x, to_y)) < 2e-6
