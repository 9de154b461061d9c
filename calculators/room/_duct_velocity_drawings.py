"""The pictures of the duct calculation: the tree of ducts, velocity against size of the main."""

import math
from collections.abc import Mapping
from typing import Any

from ..engine.compute import Say
from ..engine.drawing import Svg
from ..engine.plot import Axis, Plot
from ..engine.reading import convert
from ..engine.showing import reader_unit
from ..engine.unit_table import UNITS

LEFT, RIGHT, TOP, MIDDLE, WIDEST = 20.0, 620.0, 66.0, 190.0, 36.0


def draw_tree(values: Mapping[str, Any], say: Say) -> str:
    """Branches and main with widths to one scale, numbered as in the table."""
    rows, main = values["branch_rows"], values["main_diameter"]
    scale = WIDEST / max(main, values["widest_branch"])
    svg = Svg(
        "duct-velocity-tree", "The ducts, widths to one scale",
        f"Main {say('main_diameter')} with {len(rows)} branches; {say('worst_branch')} is the "
        "worst.",
        640, 264,
    )  # fmt: skip
    pitch = (RIGHT - LEFT - 40) / len(rows)
    for place, row in enumerate(rows):
        x = LEFT + pitch * (place + 0.5)
        width = max(2.0, row["diameter"] * scale)
        worst = row["machine"] == values["worst_branch"]
        style = "wood-mid" if worst else "metal"
        svg.rectangle((x - width / 2, TOP), width, MIDDLE - TOP, style)
        size = say.quantity(row["diameter"], "mm", 0).partition(" ")[0]
        svg.text((x, TOP - 24), f"{row['number']}", "middle")
        svg.text((x, TOP - 8), size, "middle", "label-small")
    thick = main * scale
    svg.rectangle((LEFT, MIDDLE), RIGHT - LEFT - 14, thick, "metal")
    y = MIDDLE + thick / 2
    svg.polyline(((RIGHT - 12, y - 10), (RIGHT, y), (RIGHT - 12, y + 10)), "accent")
    unit = UNITS[reader_unit("mm", say.system)].shown
    svg.text((LEFT, 20), f"Numbers as in the table; widths in {unit}; arrow to the fan")
    svg.text((LEFT, 252), f"Main {say('main_diameter')}: {say('velocity_low')} to "
             f"{say('velocity_high')}")  # fmt: skip
    return svg.markup()


def draw_main(values: Mapping[str, Any], say: Say) -> str:
    """Velocity in the main against its diameter, with the least and the most air."""
    size_unit, speed_unit = (reader_unit(unit, say.system) for unit in ("mm", "m/s"))
    main = values["main_diameter"]

    def at(size: float, velocity: float) -> tuple[float, float]:
        return convert(size, "mm", size_unit), convert(velocity, "m/s", speed_unit)

    def velocity(flow: float, size: float) -> float:
        return flow / 3600 / (math.pi / 4 * (size / 1000) ** 2)

    most = 1.35 * max(values["velocity_high"], values["transport_velocity"])
    across, up = at(2 * main, most)
    plot = Plot(
        "duct-velocity-main", "Velocity in the main against its size",
        f"At {say('main_diameter')} the air runs at {say('velocity_low')} to "
        f"{say('velocity_high')}; dust needs {say('transport_velocity')}.",
        Axis(f"diameter of the main, {UNITS[size_unit].shown}", at(0.6 * main, 0)[0], across),
        Axis(f"velocity, {UNITS[speed_unit].shown}", 0, up),
    )  # fmt: skip
    low = at(0, values["transport_velocity"])[1]
    left = at(0.6 * main, 0)[0]
    plot.area(((left, 0), (left, low), (across, low), (across, 0)), "bad")
    for flow, style in ((values["flow_low"], "second"), (values["flow_high"], "accent")):
        start = max(0.6 * main, 1000 * math.sqrt(4 * flow / (math.pi * 3600 * most)))
        sizes = [start + (2 * main - start) * place / 30 for place in range(31)]
        plot.curve([at(size, velocity(flow, size)) for size in sizes], style)
        plot.mark(at(main, velocity(flow, main)))
    plot.svg.text((622, 22), "green least air · red most air · shaded: dust settles", "end",
                  "label-small")  # fmt: skip
    return plot.markup()
