"""The pictures by which a device shows the handbook among its programs.

A shop brings its own as ``docs/assets/icon.png``, square and at least 512 pixels wide; one without
gets a rosette, the inlaid rings round the soundhole of a guitar.
"""

import hashlib
import io
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from PIL.Image import Image

OWN = "assets/icon.png"
"""Where a shop's own picture stands, below the site's root."""

GROUND = "#3a1c17"  # rosewood, as the head of every page
RINGS = (  # radius as a share of the half width, colour: from the outermost to the hole
    (0.760, "#efe2c6"), (0.735, "#2a1611"), (0.715, "#c79a4b"), (0.640, "#2a1611"),
    (0.620, "#e9e3d2"), (0.605, "#17605f"), (0.510, "#e9e3d2"), (0.495, "#2a1611"),
    (0.475, "#c79a4b"), (0.430, "#efe2c6"), (0.405, "#2a1611"),
)  # fmt: skip
FINE = 4  # drawn so many times larger, and made smooth by making it small
COLOURS = 128  # of the drawn icon, with the shades of its edges
SAFE = 0.8  # what a device that cuts icons to its own shape leaves standing

ICONS = {
    # file: its width in pixels, whether a device may cut it to a shape
    "icon-192.png": (192, False),
    "icon-512.png": (512, False),
    "icon-cut-512.png": (512, True),
    "icon-touch-180.png": (180, True),
}


class IconUnusable(ValueError):
    """A shop's picture cannot be used; the message says what to mend."""


def icon_files(own: Path, cache: Path | None = None) -> dict[str, bytes]:
    """Each icon's PNG by its file name, from the shop's picture at ``own`` if there is one.

    ``cache`` is a folder in which they are kept for the next build. Raises ``IconUnusable``.
    """
    source = own.read_bytes() if own.exists() else b""
    made_from = source + repr((RINGS, GROUND, FINE, COLOURS, SAFE, ICONS)).encode()
    kept = cache / f"icons-{hashlib.sha256(made_from).hexdigest()[:12]}" if cache else None
    if kept and all((kept / name).exists() for name in ICONS):
        return {name: (kept / name).read_bytes() for name in ICONS}
    made = {
        name: _png(_icon(source, own, width, may_be_cut))
        for name, (width, may_be_cut) in ICONS.items()
    }
    if kept:
        kept.mkdir(parents=True, exist_ok=True)
        for name, data in made.items():
            (kept / name).write_bytes(data)
    return made


def _icon(source: bytes, own: Path, width: int, may_be_cut: bool) -> "Image":
    from PIL import Image  # slow to import, and most often not needed

    if not source:
        return _rosette(width, may_be_cut)
    try:
        picture = Image.open(io.BytesIO(source)).convert("RGBA")
    except OSError:
        raise IconUnusable(f"{own.name}: not a picture that can be read; save it as PNG") from None
    if picture.width != picture.height or picture.width < 512:
        raise IconUnusable(
            f"{own.name}: {picture.width} by {picture.height} pixels; "
            "an icon is square and at least 512 wide"
        )
    if not may_be_cut:
        return picture.resize((width, width), Image.Resampling.LANCZOS)
    inner = round(width * SAFE)
    ground = Image.new("RGBA", (width, width), GROUND)
    ground.alpha_composite(
        picture.resize((inner, inner), Image.Resampling.LANCZOS), ((width - inner) // 2,) * 2
    )
    return ground.convert("RGB")


def _rosette(width: int, may_be_cut: bool) -> "Image":
    from PIL import Image, ImageDraw

    large = width * FINE
    picture = Image.new("RGBA", (large, large), GROUND if may_be_cut else (0, 0, 0, 0))
    draw = ImageDraw.Draw(picture)
    if not may_be_cut:
        draw.rounded_rectangle((0, 0, large - 1, large - 1), radius=large * 0.18, fill=GROUND)
    half = large / 2
    for radius, colour in RINGS:
        reach = half * radius * (SAFE if may_be_cut else 1) * 1.15
        draw.ellipse((half - reach, half - reach, half + reach, half + reach), fill=colour)
    smooth = picture.resize((width, width), Image.Resampling.LANCZOS)
    return smooth.quantize(COLOURS, method=Image.Quantize.FASTOCTREE)  # a tenth of the bytes


def _png(picture: "Image") -> bytes:
    out = io.BytesIO()
    picture.save(out, "PNG", optimize=True)
    return out.getvalue()
