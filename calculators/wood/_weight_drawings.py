"""The pictures of the weight calculation: the pieces as bars, and density against moisture."""

from collections.abc import Mapping
from typing import Any

from ..engine.compute import Say
from ..engine.drawing import Svg
from ..engine.legend import legend
from ..engine.plot import Axis, Plot
from ..engine.reading import convert
from ..engine.showing import reader_unit
from ..engine.unit_table import UNITS
from ..laws.wood_heat import FIBRE_SATURATION_PERCENT, density_kg_m3, gravity

LEFT, LONGEST = 62.0, 540.0


def draw_bars(values: Mapping[str, Any], say: Say) -> str:
    """The pieces now and thinned: dry wood and water, lengths to one scale."""
    mass, after = values["mass"], values["mass_after"]
    thinned = values["saved"] > 0
    svg = Svg(
        "board-weight-bars",
        f"Weight now {say('mass')}" + (f", thinned {say('mass_after')}" if thinned else ""),
        f"Bars of dry wood and of the water in it, to one scale. {values['verdict']}",
        640, 196 if thinned else 104,
    )  # fmt: skip
    share = values["dry_mass"] / mass
    rows = [(f"Now, {say('piece_thickness')}: {say('mass')}", mass)]
    if thinned:
        rows.append((f"Thinned to {say('thickness_after')}: {say('mass_after')}", after))
    for number, (words, amount) in enumerate(rows):
        top = 38.0 + 92 * number
        whole = LONGEST * amount / mass
        svg.text((LEFT, top - 12), words)
        svg.rectangle((LEFT, top), whole * share, 40, "wood-light")
        if share < 1:
            svg.rectangle((LEFT + whole * share, top), whole * (1 - share), 40, "metal")
        if amount < mass:
            svg.rectangle((LEFT + whole, top), LONGEST - whole, 40, "bad")
    marks = [("wood-light", "dry wood"), ("metal", f"water: {say('water_mass')} now")]
    if share == 1:
        marks.pop()
    if thinned:
        marks.append(("bad", f"taken off: {say('saved')}"))
    legend(svg, marks)
    return svg.markup()


def draw_density(values: Mapping[str, Any], say: Say) -> str:
    """Density of this wood against its moisture, with the piece and the 12 % of tables."""
    unit = reader_unit("kg/m3", say.system)
    factor = convert(1.0, "kg/m3", unit)
    green, now = values["gravity_green"], values["wood_moisture"]
    end = min(values["most_moisture"], max(30.0, 1.15 * now))
    places = [end * number / 20 for number in range(21)]
    if end > FIBRE_SATURATION_PERCENT:
        places = sorted([*places, FIBRE_SATURATION_PERCENT])

    def density(moisture: float) -> float:
        bound = min(moisture, FIBRE_SATURATION_PERCENT)
        return density_kg_m3(gravity(green, bound), moisture) * factor

    points = [(place, density(place)) for place in places]
    heights = [height for _, height in points]
    spread = values.get("gravity_spread", 0.0) / 100
    low, high = min(heights) * (1 - spread), max(heights) * (1 + spread)
    margin = 0.08 * (high - low)
    plot = Plot(
        "board-weight-density",
        f"Density of this wood at other moistures; now {say('density')}",
        f"Moisture content across, density with its water upwards. {values['gravity_words']}",
        Axis("Moisture content of the wood, %", 0, end),
        Axis(f"Density, {UNITS[unit].shown}", low - margin, high + margin),
    )  # fmt: skip
    shown = [("second", "this wood"), ("accent-fill", f"now: {say('density')}")]
    if spread:
        lower = [(place, height * (1 - spread)) for place, height in points]
        upper = [(place, height * (1 + spread)) for place, height in points]
        plot.area([*lower, *reversed(upper)], "good")
        shown.append(("good", f"other boards, {say('gravity_spread')} either side"))
    plot.curve(points, "second")
    if end > 12:
        plot.mark((12.0, density(12.0)), style="second-fill")
        shown.append(("second-fill", f"at 12 %: {say('density_at_12')}"))
    plot.mark((now, values["density"] * factor))
    legend(plot.svg, shown)
    return plot.markup()
