"""A template as DXF for lasers and routers: R2010, millimetres, a layer for every kind of line."""

import io
from collections.abc import Iterator
from contextlib import contextmanager

import ezdxf
from ezdxf import units
from ezdxf.document import Drawing
from ezdxf.enums import TextEntityAlignment
from ezdxf.filemanagement import new
from ezdxf.layouts.layout import Modelspace

from .cutter_paths import Path, cutter_paths
from .shapes import Label, Template

VERSION = "R2010"
LAYERS = {"cut": "CUT", "slot": "SLOT", "mark": "MARK", "guide": "GUIDE"}
TEXT = "TEXT"
COLOURS = {"CUT": 7, "SLOT": 1, "MARK": 5, "GUIDE": 8, TEXT: 3}  # numbers of the DXF palette
DASHES = "GUIDELINE"
DASHES_MM = (8.0, 4.0, -1.5, 1.0, -1.5)  # the whole, then line and gap in turn
CAPITALS = 0.72  # height of a capital, as DXF counts it, in the height of the type
ALIGNED = {
    "start": TextEntityAlignment.LEFT,
    "middle": TextEntityAlignment.CENTER,
    "end": TextEntityAlignment.RIGHT,
}


def to_dxf(
    template: Template,
    *,
    kerf_mm: float = 0.0,
    tool_diameter_mm: float = 0.0,
    instrument: str = "",
    edition: str = "",
    note: str = "",
) -> bytes:
    """The template, its outlines set off for a laser's kerf or a router's tool.

    What kerf and tool do is said in ``cutter_paths``; CannotCut comes from there. ``instrument``,
    ``edition`` and ``note`` stand in the file's own properties. The same template gives the same
    bytes.
    """
    paths = cutter_paths(template, kerf_mm, tool_diameter_mm)
    with _without_clock():
        document = _new_document()
        space = document.modelspace()
        for path in paths:
            _draw(space, path)
        for label in template.labels:
            _write(space, label)
        said = {"Template": template.title, "Instrument": instrument, "Edition": edition,
                "Note": note}  # fmt: skip
        if kerf_mm or tool_diameter_mm:
            what = "Kerf" if kerf_mm else "Tool diameter"
            said["Set off for"] = f"{what} {kerf_mm or tool_diameter_mm:g} mm"
        for name, value in said.items():
            if value:
                document.header.custom_vars.append(name, " ".join(value.split()))
        out = io.StringIO()
        document.write(out)
    return out.getvalue().encode("utf-8")


@contextmanager
def _without_clock() -> Iterator[None]:
    """Lets the library write fixed dates and identities instead of today's."""
    options = ezdxf.options  # type: ignore[attr-defined]  # as its manual names it
    before = options.write_fixed_meta_data_for_testing
    options.write_fixed_meta_data_for_testing = True
    try:
        yield
    finally:
        options.write_fixed_meta_data_for_testing = before


def _new_document() -> Drawing:
    document = new(VERSION, units=units.MM)
    document.header["$MEASUREMENT"] = 1  # metric
    document.linetypes.add(DASHES, DASHES_MM, description="guide")
    for name, colour in COLOURS.items():
        dashed = name == LAYERS["guide"]
        document.layers.add(name, color=colour, linetype=DASHES if dashed else "Continuous")
    return document


def _draw(space: Modelspace, path: Path) -> None:
    layer = {"layer": LAYERS[path.kind]}
    if len(path.points) == 2:
        space.add_line(*path.points, dxfattribs=layer)
    else:
        space.add_lwpolyline(path.points, close=path.closed, dxfattribs=layer)


def _write(space: Modelspace, label: Label) -> None:
    text = space.add_text(
        label.text,
        height=label.size_mm * CAPITALS,
        rotation=label.angle_deg,
        dxfattribs={"layer": TEXT},
    )
    text.set_placement(label.at, align=ALIGNED[label.anchor])
