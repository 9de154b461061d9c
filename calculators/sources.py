"""Published sources that more than one calculator rests on."""

from .engine.declaration import Source

GEOMETRY = Source(
    id="plane-geometry",
    title="Elements of plane geometry: right triangles, straight lines, circles",
    kind="published",
    note="Definitions and theorems of any school book of geometry.",
)
COMMON_PRACTICE = Source(
    id="common-practice",
    title="Common practice, no source",
    kind="practice",
    note="What experienced makers do; nobody has published a figure we could check.",
)
