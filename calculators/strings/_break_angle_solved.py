"""Every string of a set over nut and saddle; lengths in mm, angles in degrees, forces in N."""

import math
from collections.abc import Mapping, Sequence
from typing import Any

from ..engine.declaration import Refusal
from ..laws.string_bends import (
    Way,
    capstan_ratio,
    down_angle_deg,
    flat_after_bend_cents,
    press_n,
    way_to_post,
    way_to_roller,
    whole_angle_deg,
)


def at_the_nut(
    strings: Sequence[Mapping[str, Any]], head: str, head_angle: float, string_over_face: float,
    friction: float, scale_length: float, hole_height: float = 0.0, windings: float = 0.0,
    post_diameter: float = 0.0, roller_depth: float = 0.0, roller_diameter: float = 0.0,
) -> Mapping[str, Any]:  # fmt: skip
    """Angle, forces and hang of every string at the nut, and the string with the least angle.

    Source of each relation: ``laws.string_bends``.
    """
    rows = []
    for place, string in enumerate(strings, start=1):
        if head == "solid":
            leaves = hole_height - windings * string["gauge"]
            if leaves < string["gauge"] / 2:
                raise Refusal(
                    "windings",
                    f"{windings:g} windings of string {string['string']} reach below the head's "
                    "face; wind fewer",
                    f"windings that end above the face, {hole_height / string['gauge'] - 0.5:.1f} "
                    "of this string at most",
                )
            reach = (post_diameter + string["gauge"]) / 2
            way = way_to_post(string["along"], string["aside"], reach, string_over_face - leaves)
        else:
            reach = (roller_diameter + string["gauge"]) / 2
            way = way_to_roller(
                string["along"], string["aside"], reach, string_over_face + roller_depth
            )
        rows.append(_nut_row(string, way, head_angle, friction, scale_length, place))
    weak = min(rows, key=lambda row: row["nut_down"])
    steep = max(rows, key=lambda row: row["nut_down"])
    if weak["nut_down"] <= 0:
        raise Refusal(
            f"strings[{weak['place']}].along",
            f"String {weak['string']} would lift off the nut: from its post it comes in "
            f"{-weak['nut_down']:.1f}° from below the line. Wind further down, or hold it down "
            "with a bar",
            "a post from which the string falls away behind the nut",
        )
    chosen = strings[weak["place"] - 1]
    return {
        "nut_rows": rows, "weak_string": weak["string"], "steep_string": steep["string"],
        "steep_down": steep["nut_down"], "weak_pull": chosen["pull"],
        "weak_gauge": chosen["gauge"], "weak_along": chosen["along"],
        "weak_aside": chosen["aside"], "nut_total": math.fsum(row["nut_load"] for row in rows),
        "worst_flat": max(row["flat"] for row in rows),
    }  # fmt: skip


def _nut_row(
    string: Mapping[str, Any], way: Way, head_angle: float, friction: float, scale: float,
    place: int,
) -> dict[str, Any]:  # fmt: skip
    down, whole = down_angle_deg(way, head_angle), whole_angle_deg(way, head_angle)
    head = math.radians(head_angle)
    pull = string["pull"]
    sinks = way.forward_mm * math.sin(head) + way.fall_mm * math.cos(head)
    capstan = capstan_ratio(friction, whole)
    return {
        "string": string["string"], "place": place, "nut_down": down, "nut_whole": whole,
        "nut_press": press_n(pull, whole), "nut_load": pull * sinks / way.length_mm,
        "nut_aside": pull * way.aside_mm / way.length_mm,
        "flat": flat_after_bend_cents(way.length_mm / scale, capstan, True),
        "forward": way.forward_mm, "fall": way.fall_mm,
    }  # fmt: skip


def at_the_saddle(
    strings: Sequence[Mapping[str, Any]], nut_rows: Sequence[Mapping[str, Any]],
    saddle_height: float, showing_bass: float, showing_treble: float, pin_back: float,
    ramp_depth: float, front_rise: float,
) -> Mapping[str, Any]:  # fmt: skip
    """Angle and forces of every string at the saddle, beside those at the nut.

    The crest runs as a parabola through its three heights, strings evenly spaced. The string
    behind goes straight from the crest to the edge of its hole, ``ramp_depth`` below the bridge's
    top. Down: T·(sin φ + sin β); towards the nut: T·(cos φ - cos β), with φ in front, β behind.
    """
    rows = []
    front = math.radians(front_rise)
    for number, (string, nut) in enumerate(zip(strings, nut_rows, strict=True)):
        share = 2 * number / (len(strings) - 1) - 1 if len(strings) > 1 else 0.0
        showing = (
            saddle_height
            + (showing_treble - showing_bass) / 2 * share
            + ((showing_bass + showing_treble) / 2 - saddle_height) * share**2
        )
        if showing <= 0:
            raise Refusal(
                "saddle_height",
                f"A crest through these three heights would dive into the bridge by string "
                f"{string['string']}; measure middle, bass and treble again",
                "three heights of one rounded crest",
            )
        behind = math.atan2(showing + ramp_depth, pin_back)
        angle = front_rise + math.degrees(behind)
        pull = string["pull"]
        rows.append({
            **nut, "showing": showing, "saddle_angle": angle,
            "saddle_press": press_n(pull, angle),
            "saddle_down": pull * (math.sin(front) + math.sin(behind)),
            "saddle_forward": pull * (math.cos(front) - math.cos(behind)),
        })  # fmt: skip
    flat = min(rows, key=lambda row: row["saddle_angle"])
    steep = max(rows, key=lambda row: row["saddle_angle"])
    return {
        "string_rows": rows, "flat_string": flat["string"], "flat_showing": flat["showing"],
        "flat_pull": strings[flat["place"] - 1]["pull"], "most_string": steep["string"],
        "saddle_most_angle": steep["saddle_angle"],
        "saddle_total": math.fsum(row["saddle_down"] for row in rows),
        "saddle_push": math.fsum(row["saddle_forward"] for row in rows),
        "pull_total": math.fsum(string["pull"] for string in strings),
    }  # fmt: skip
