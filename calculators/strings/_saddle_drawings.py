"""The pictures of the saddle calculation: the saddle from above, the errors along the neck."""

from collections.abc import Mapping, Sequence
from typing import Any

from ..engine.compute import Say
from ..engine.drawing import Svg
from ..engine.plot import Axis, Plot
from ._plot_key import add_key

LEFT, RIGHT, TOP, DEEP = 70.0, 570.0, 74.0, 210.0
WIDEST_SCALE = 34.0  # user units a millimetre
FLAT_CENTS = 2.0  # no plot shows less than this up and down


def draw_saddle(values: Mapping[str, Any], say: Say) -> str:
    """The saddle from above, nut upwards: slot, crests wanted, crests as filed; depth magnified."""
    rows = values["saddle_rows"]
    reach = values["crest_reach"]
    ends = values["setback_treble"], values["setback_bass"]
    heights = [one["set_back"] for one in rows]
    least = min(0.0, *heights, *(end - reach for end in ends))
    most = max(0.5, *heights, *(end + reach for end in ends))
    scale = min(WIDEST_SCALE, DEEP / (most - least))

    def y_of(set_back_mm: float) -> float:
        return float(TOP + (set_back_mm - least) * scale)

    def x_of(share: float) -> float:
        return RIGHT - share * (RIGHT - LEFT)

    foot = y_of(most)
    svg = Svg(
        "saddle-compensation-saddle",
        f"The saddle from above: crests {say('needed_treble')} behind the scale at the first string, "
        f"{say('needed_bass')} at the last",
        f"Bass at the left, the nut upwards, depth magnified. {values['verdict']}",
        640, foot + 62,
    )  # fmt: skip
    band = [(LEFT - 30, ends[1], -reach), (RIGHT + 30, ends[0], -reach),
            (RIGHT + 30, ends[0], reach), (LEFT - 30, ends[1], reach)]  # fmt: skip
    svg.polygon([(x, y_of(end + side)) for x, end, side in band], "felt")
    svg.line((LEFT - 30, y_of(ends[1])), (RIGHT + 30, y_of(ends[0])), "hidden")
    svg.line((LEFT - 50, y_of(0)), (RIGHT + 50, y_of(0)), "ink")
    filed = sorted(rows, key=lambda one: -one["share"])
    svg.polyline([(x_of(one["share"]), y_of(one["filed_at"])) for one in filed], "second")
    for one in rows:
        x = x_of(one["share"])
        svg.line((x, 50), (x, foot + 6), "string")
        svg.circle((x, y_of(one["set_back"])), 5, "accent-fill")
        if len(rows) <= 8:
            svg.text((x, 18), one["string"][:7], "middle", "label-small")
            svg.text((x, 38), say.quantity(one["set_back"], "mm", 1), "middle", "label-small")
    svg.text((LEFT - 50, foot + 24), "bass", style="label-small")
    svg.text((RIGHT + 50, foot + 24), "treble", "end", "label-small")
    svg.text((320, foot + 24), "the nut lies upwards", "middle", "label-small")
    svg.height = foot + 30
    add_key(svg, [
        ("ink", "end of the scale"), ("hidden", "middle of the slot"),
        ("accent-fill", "crest as wanted"), ("second", "crests filed, within reach"),
    ])  # fmt: skip
    return svg.markup()


def draw_errors(values: Mapping[str, Any], say: Say) -> str:
    """Errors of the shown string along the neck: no set-back, on the slot, as filed."""
    rows = values["fret_rows"]
    curves: Sequence[tuple[str, str, str]] = (
        ("plain", "hidden", "no set-back"),
        ("on_slot", "second", "crest in the middle of the slot"),
        ("filed", "accent", "crest filed"),
    )
    found = [row[name] for row in rows for name, _, _ in curves]
    least, most = min(-FLAT_CENTS, *found), max(FLAT_CENTS, *found)
    room = 0.08 * (most - least)
    plot = Plot(
        "saddle-compensation-errors",
        f"String {values['shown_name']}: how far each fret is out of tune",
        f"Cents above the equal semitone, fret by fret, open string in tune. {values['verdict']}",
        Axis("Fret", 0, rows[-1]["fret"] + 0.5),
        Axis(f"String {values['shown_name']}, cents sharp", least - room, most + room),
        height=360,
    )  # fmt: skip
    plot.curve([(0, 0), (rows[-1]["fret"] + 0.5, 0)], "ink")
    for name, style, _ in curves:
        plot.curve([(row["fret"], row[name]) for row in rows], style)
    entries = [(style, words) for _, style, words in curves]
    add_key(plot.svg, [*entries, ("ink", "in tune")])
    return plot.markup()
