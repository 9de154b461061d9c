"""The plot of the blushing calculation: the film's temperature against the dew point."""

from collections.abc import Mapping
from typing import Any

from ..engine.compute import Say
from ..engine.plot import LEFT, RIGHT, TOP, Axis, Plot
from ..engine.reading import convert
from ..engine.showing import reader_unit
from ..engine.unit_table import UNITS


def draw_film(values: Mapping[str, Any], say: Say) -> str:
    """Temperature of the film over the first minutes, the room's and the dew point beside it."""
    unit = reader_unit("degC", say.system)
    film, dew, room = values["film_history"], values["dew_point"], values["room_temperature"]

    def shown(celsius: float) -> float:
        return convert(celsius, "degC", unit)

    coolest = min(dew, values["coldest_film"])
    warmest = max(room, values["body_temperature"], dew)
    spare = 0.14 * (warmest - coolest + 5)
    last = film[-1][0]
    plot = Plot(
        "blush-risk-film",
        f"The film cools to {say('coldest_film')}; the dew point is {say('dew_point')}",
        f"Temperature upwards, seconds after spraying across. {values['verdict']}",
        Axis("Seconds after spraying", 0, last),
        Axis(f"Film, {UNITS[unit].shown}", shown(coolest - 1.6 * spare), shown(warmest + spare)),
    )
    floor = plot.up.lowest
    plot.area(((0, floor), (0, shown(dew)), (last, shown(dew)), (last, floor)), "bad")
    left, right = LEFT, plot.svg.width - RIGHT
    _, dew_y = plot.place((0, shown(dew)))
    _, room_y = plot.place((0, shown(room)))
    plot.svg.line((left, dew_y), (right, dew_y), "accent")
    plot.svg.line((left, room_y), (right, room_y), "hidden")
    _, end_y = plot.place((last, shown(film[-1][1])))
    # Words stand where the film's curve does not come by: it ends at the right, begins warm.
    under = end_y < room_y + 6 and dew_y - room_y > 44
    if under or room_y > TOP + 22:
        plot.svg.text((right - 6, room_y + (17 if under else -7)),
                      f"room {say('room_temperature')}", "end", "label-small")  # fmt: skip
    words = f"dew point {say('dew_point')}"
    if end_y > dew_y and dew_y - room_y > 26:
        plot.svg.text((right - 6, dew_y - 7), words, "end", "label-small")
    elif end_y > dew_y + 40:
        plot.svg.text((right - 6, dew_y + 17), words, "end", "label-small")
    else:
        plot.svg.text((left + 8, dew_y + 17), words, "start", "label-small")
    plot.curve([(time, shown(celsius)) for time, celsius in film], "second")
    point = values["coldest_after"], shown(values["coldest_film"])
    plot.mark(point, style="second-fill")
    x, y = plot.place(point)
    words = f"{say('coldest_film')} after {say('coldest_after')}"
    reach = 4.6 * len(words)
    x = min(max(x, left + reach + 6), right - reach - 6)
    # Below the curve, and below the line of the dew point and its words where they are near.
    y += 24
    if -8 < dew_y - y < 22 or (abs(y - dew_y - 17) < 20 and x - reach < left + 170):
        y = dew_y + (20 if x - reach >= left + 170 else 38)
    plot.svg.text((x, min(y, plot.svg.height - 64)), words, "middle")
    return plot.markup()
