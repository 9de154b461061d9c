"""A template as SVG text, at full size in millimetres. Lines are where the shape is: no kerf."""

from calculators.engine.text import escape

from .shapes import Label, Stroke, Template

COLOURS = {"cut": "#000000", "slot": "#c00000", "mark": "#0050c0", "guide": "#808080"}
LINE_MM = 0.1
DASHES = {"guide": ' stroke-dasharray="4 1.5 1 1.5"'}


def to_svg(template: Template, *, instrument: str = "", edition: str = "", note: str = "") -> str:
    """The template with ``width`` and ``height`` in mm and one user unit a millimetre.

    Every line carries its kind as class and what it is as ``data-name``, a slot its width as
    ``data-width-mm``. ``instrument``, ``edition`` and ``note`` stand in the description.
    """
    wide, high = _figure(template.width_mm), _figure(template.height_mm)
    said = [one.rstrip(".") + "." for one in (instrument, edition, note, *template.notes) if one]
    lines = [
        '<?xml version="1.0" encoding="UTF-8"?>',
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{wide}mm" height="{high}mm" '
        f'viewBox="0 0 {wide} {high}">',
        f"<title>{escape(template.title)}</title>",
        f"<desc>{escape(' '.join(said))}</desc>",
        *(_stroke(template, one) for one in template.strokes),
        *(_label(template, one) for one in template.labels),
        "</svg>",
    ]
    return "\n".join(lines) + "\n"


def _figure(value: float) -> str:
    """A length in mm to a millionth, without needless zeros."""
    text = f"{value:.6f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def _stroke(template: Template, stroke: Stroke) -> str:
    points = " ".join(f"{_figure(x)},{_figure(template.height_mm - y)}" for x, y in stroke.points)
    shape = "polygon" if stroke.closed else "polyline"
    name = f' data-name="{escape(stroke.name)}"' if stroke.name else ""
    width = f' data-width-mm="{_figure(stroke.width_mm)}"' if stroke.width_mm else ""
    return (
        f'<{shape} class="{stroke.kind}"{name}{width} points="{points}" fill="none" '
        f'stroke="{COLOURS[stroke.kind]}" stroke-width="{LINE_MM}"{DASHES.get(stroke.kind, "")}/>'
    )


def _label(template: Template, label: Label) -> str:
    x, y = _figure(label.at[0]), _figure(template.height_mm - label.at[1])
    turn = f' transform="rotate({_figure(-label.angle_deg)} {x} {y})"' if label.angle_deg else ""
    return (
        f'<text class="label" x="{x}" y="{y}" font-size="{_figure(label.size_mm)}" '
        f'font-family="Helvetica, Arial, sans-serif" text-anchor="{label.anchor}"{turn}>'
        f"{escape(label.text)}</text>"
    )
