"""The pictures of the hung weights: the neck in its stand, and its bends."""

from collections.abc import Mapping
from typing import Any

from ..engine.compute import Say
from ..engine.drawing import Svg
from ..engine.plot import Axis, Plot
from ..engine.reading import convert
from ..engine.showing import reader_unit
from ..engine.unit_table import UNITS
from ._plot_key import add_key

JOINT_X, NECK_Y = 520.0, 90.0


def draw_bends(values: Mapping[str, Any], say: Say) -> str:
    """Hollow along the neck under the strings and under the weights."""
    curves = values["curves"]
    across = reader_unit("mm", say.system)
    up = "um" if say.system == "metric" else "mil"
    per_across, per_up = convert(1.0, "mm", across), convert(1.0, "mm", up)
    shown = [one for one in curves if one["place"] >= values["read_place"] - 1e-9]
    found = [one[name] for one in shown for name in ("strings", "weights")]
    least, most = min(0.0, *found), max(0.01, *found)
    if least > -0.001 * most:  # the last bits of a nought
        least = 0.0
    room = 0.12 * (most - least)
    plot = Plot(
        "hung-weights-bends",
        f"Hollow of the neck under the strings, {say('sag_strings')} in the middle, and under weights",
        f"The two curves lie at most {say('worst_gap')} apart. {values['verdict']}",
        Axis(f"From the nut, {UNITS[across].shown}", 0, values["neck_length"] * per_across),
        Axis(f"Hollow, {UNITS[up].shown}", (least - room) * per_up if least < 0 else 0.0,
             (most + room) * per_up),
        height=340,
    )  # fmt: skip
    for name, style in (("weights", "second"), ("strings", "accent")):
        plot.curve([(one["place"] * per_across, one[name] * per_up) for one in shown], style)
    for row in values["fret_rows"]:
        if row["place"] >= values["read_place"] - 1e-9:
            spot = plot.place((row["place"] * per_across, row["hollow_weights"] * per_up))
            plot.svg.circle(spot, 4, "second-fill")
    plot.upright(values["middle_place"] * per_across, "bow read here", "dim")
    add_key(
        plot.svg,
        [("accent", "under the strings"), ("second-fill", "under the weights, at the frets")],
    )
    return plot.markup()


def draw_stand(values: Mapping[str, Any], say: Say) -> str:
    """The neck face down, held at the joint, with the weights where they hang; lengths to scale."""
    places = [-values["hang_place"]]
    if values["arrangement"] == "two":
        places.append(-values["pair_place"])
    length = values["neck_length"]
    head = 0.45 * length
    farthest = max(head, *(30 - place for place in places))
    scale = (JOINT_X - 30) / (length + farthest)

    def x_of(place: float) -> float:
        return float(JOINT_X + (place - length) * scale)

    svg = Svg(
        "hung-weights-stand",
        f"The neck face down, held at the body joint, with {say('weight_first')}",
        f"Lengths along the neck to scale, nut towards the left. {values['verdict']}",
        640, 300,
    )  # fmt: skip
    svg.polygon(
        ((x_of(0), NECK_Y - 8), (x_of(-head), NECK_Y - 30),
         (x_of(-head), NECK_Y - 16), (x_of(0), NECK_Y + 6)),
        "wood-mid",
    )  # fmt: skip
    svg.polygon(
        ((x_of(0), NECK_Y - 14), (JOINT_X - 26, NECK_Y - 22), (JOINT_X + 6, NECK_Y - 74),
         (JOINT_X + 34, NECK_Y - 74), (JOINT_X + 34, NECK_Y), (x_of(0), NECK_Y)),
        "wood-mid",
    )  # fmt: skip
    svg.rectangle((x_of(0), NECK_Y), JOINT_X + 84 - x_of(0), 8, "wood-dark")
    svg.polygon(
        ((JOINT_X - 16, NECK_Y + 8), (JOINT_X + 16, NECK_Y + 8), (JOINT_X + 30, 250),
         (JOINT_X - 30, 250)),
        "felt",
    )  # fmt: skip
    svg.text((JOINT_X, 274), f"held at fret {values['body_joint_fret']}", "middle", "label-small")
    if min(places) < -head:  # a bar lengthens the head
        svg.line((x_of(0), NECK_Y - 8), (x_of(min(places)), NECK_Y - 8), "ink")
    fewer = sorted(zip(places, values["weights"], strict=True), key=lambda pair: pair[0])
    for number, (place, weight) in enumerate(fewer):
        x, low = x_of(place), NECK_Y + 62 + 66 * (len(fewer) - 1 - number)
        words = say.quantity(abs(weight), "kg", 2)
        if weight >= 0:
            svg.line((x, NECK_Y - 6), (x, low), "ink")
            svg.rectangle((x - 19, low), 38, 38, "metal")
        else:
            low = NECK_Y + 14
            svg.line((x, NECK_Y - 30), (x, 26), "accent")
            svg.polygon(((x, 14), (x - 7, 30), (x + 7, 30)), "accent-fill")
            words += " lifts"
        anchor, shift = ("end", -26) if x > 500 else ("start", 26)
        svg.text((x + shift, low + 25 if weight >= 0 else 28), words, anchor)
    svg.text((x_of(0) + 6, NECK_Y + 30), "nut", style="label-small")
    return svg.markup()
