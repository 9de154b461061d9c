"""The pictures of the booth calculation: fan against booth, readings over the face."""

from collections.abc import Mapping
from typing import Any

from ..engine.compute import Say
from ..engine.drawing import Svg
from ..engine.plot import Axis, Plot
from ..engine.reading import convert
from ..engine.showing import reader_unit
from ..engine.unit_table import UNITS

LEFT, LOW, HIGHEST = 40.0, 250.0, 190.0


def draw_fan(values: Mapping[str, Any], say: Say) -> str:
    """The fan's curve and the booth's, with filters as they are now and clean."""
    flow_unit, pressure_unit = (reader_unit(unit, say.system) for unit in ("m3/h", "Pa.air"))
    free, shut = values["fan_free_flow"], values["fan_shut_pressure"]

    def at(flow: float, pressure: float) -> tuple[float, float]:
        return convert(flow, "m3/h", flow_unit), convert(pressure, "Pa.air", pressure_unit)

    most_flow, most_pressure = at(free * 1.05, shut * 1.15)
    plot = Plot(
        "booth-airflow-fan", "The fan against the booth",
        f"The fan moves {say('air_flow')} at {say('fan_pressure')} now, and would move "
        f"{say('clean_flow')} with clean filters.",
        Axis(f"air through the booth, {UNITS[flow_unit].shown}", 0, most_flow),
        Axis(f"pressure, {UNITS[pressure_unit].shown}", 0, most_pressure),
    )  # fmt: skip
    flows = [free * place / 40 for place in range(41)]
    plot.curve([at(flow, shut * (1 - (flow / free) ** 2)) for flow in flows], "ink")

    def booth(flow: float, filter_loss: float) -> float:
        share = flow / values["air_flow"]
        return float(filter_loss * share + values["duct_loss"] * share**2)

    for loss, style in ((values["filter_loss_now"], "accent"), (values["clean_now"], "second")):
        curve = [at(flow, booth(flow, loss)) for flow in flows]
        inside = [point for point in curve if point[1] <= most_pressure]
        plot.curve(inside, style)
    for flow, pressure in (
        (values["air_flow"], values["fan_pressure"]),
        (values["clean_flow"], shut * (1 - (values["clean_flow"] / free) ** 2)),
    ):
        plot.mark(at(flow, pressure))
    least = values["air_flow"] * values["least_velocity"] / values["face_mean"]
    if least < free:
        x, _ = plot.place(at(least, 0))
        plot.svg.line((x, 34), (x, 322), "hidden")
    words = "black fan · red now · green clean filters · dashes least air"
    plot.svg.text((622, 22), words, "end", "label-small")
    return plot.markup()


def draw_face(values: Mapping[str, Any], say: Say) -> str:
    """Every reading as a bar, with the mean and the least velocity."""
    readings = values["face_readings"]
    least = values["least_velocity"]
    most = max(*readings, least)
    svg = Svg(
        "booth-airflow-face", "Readings over the face",
        f"Mean {say('face_mean')}, lowest {say('face_lowest')}, least {say('least_velocity')}.",
        640, 280,
    )  # fmt: skip
    step = 590 / len(readings)
    for place, reading in enumerate(readings):
        height = HIGHEST * reading / most
        x = LEFT + step * place
        style = "bad" if reading < least else "metal"
        svg.rectangle((x, LOW - height), step * 0.7, height, style)
        if len(readings) <= 10:
            words = say.quantity(reading, "m/s", 2).partition(" ")[0]
            svg.text((x + step * 0.35, LOW + 18), words, "middle", "label-small")
    for name, style in (("face_mean", "second"), ("least_velocity", "hidden")):
        y = LOW - HIGHEST * values[name] / most
        svg.line((LEFT - 6, y), (636, y), style)
    svg.line((LEFT - 6, LOW), (636, LOW), "ink")
    words = f"mean {say('face_mean')} (line), least {say('least_velocity')} (dashes)"
    svg.text((LEFT - 6, 30), words)
    return svg.markup()
