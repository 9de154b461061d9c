"""The two drawings of the neck-angle calculation: from the side and from above."""

import math
from collections.abc import Mapping
from typing import Any

from ..engine.compute import Say
from ..engine.drawing import Point, Svg
from ._neck_angle_geometry import top_rise_mm

WIDTH = 640.0
LEFT, RIGHT = 14.0, 626.0
TALL_PX = 190.0  # room for the heights, board's underside to string
MOST_TIMES = 9  # the most that heights are drawn too large
BELOW_RIM_PX = 116.0  # heel and body, shortened
WEDGE_PX = 11.0
LABEL_PX = 78.0  # about as wide as a figure with its unit


class SideFrame:
    """Where heights and lengths of the instrument lie on the side drawing."""

    def __init__(self, values: Mapping[str, Any]) -> None:
        self.values = values
        self.to_bridge: float = values["joint_to_bridge"]
        self.pitch: float = math.radians(values["pitch"])
        self.board: float = values["board_and_fret"]
        self.left_mm = -0.48 * self.to_bridge
        self.right_mm = 1.42 * self.to_bridge
        self.across = (RIGHT - LEFT) / (self.right_mm - self.left_mm)
        heights = [
            values["string_over_top"] + values["arch"], self.frets(self.left_mm),
            self.string(self.left_mm), self.string(self.to_bridge), self.board,
            self.frets(self.right_mm), self.top(self.right_mm),
        ]  # fmt: skip
        highest = max(heights)
        lowest = min(0.0, self.frets(self.left_mm) - self.board, values["arch"])
        self.times = max(1, min(MOST_TIMES, math.floor(TALL_PX / (highest - lowest) / self.across)))
        self.up = self.times * self.across
        self.rim_y = 78 + highest * self.up
        self.foot_y = self.rim_y + max(BELOW_RIM_PX, 40 - lowest * self.up)

    def frets(self, along: float) -> float:
        """Height of the fret plane over the rim plane, ``along`` from the joint (mm)."""
        return self.board / math.cos(self.pitch) + along * math.tan(self.pitch)

    def string(self, along: float) -> float:
        """Height of the string over the rim plane (mm)."""
        nut: float = self.values["nut_height"]
        saddle: float = self.values["saddle_over_frets"]
        share: float = (along + self.values["joint_fret"]) / self.values["scale_length"]
        return self.frets(along) + nut + (saddle - nut) * share

    def top(self, along: float) -> float:
        """Height of the top over the rim plane (mm); level past the end of what is known."""
        span = self.values.get("dish_span")
        within = min(along, 2 * self.to_bridge if span is None else span)
        return top_rise_mm(
            within, self.to_bridge, self.values.get("arch_measured"),
            self.values.get("dish_radius"), span,
        )  # fmt: skip

    def at(self, along: float, height: float) -> Point:
        """The place on paper."""
        return LEFT + (along - self.left_mm) * self.across, self.rim_y - height * self.up


def draw_side(values: Mapping[str, Any], say: Say) -> str:
    """Neck, top and straightedge from the side, heights drawn larger than lengths."""
    frame = SideFrame(values)
    svg = Svg(
        "neck-angle-side",
        "The neck from the side, with the straightedge passing over the bridge place",
        f"The neck is at the left, the body at the right. A straightedge on the frets passes "
        f"{say('straightedge_height')} over the top at the bridge place; the string "
        f"{say('string_over_top')}. Pitch {say('pitch')}. Heights are drawn {frame.times} times "
        f"larger than lengths.",
        WIDTH, frame.foot_y + 60,
    )  # fmt: skip
    _draw_body(svg, frame)
    _draw_neck(svg, frame)
    _draw_lines(svg, frame)
    _draw_heights(svg, frame, say)
    if values["dry_fit"] == "measured":
        _draw_shoulder_cut(svg, frame, say)
    rise = f"{say('rise_in_100')} over {say.quantity(100, 'mm', 0)}"
    svg.text((LEFT, 20), minus(f"pitch {say('pitch')}, {rise}"))
    svg.text((RIGHT, 20), _bridge_words(values, say), "end")
    drawn = f"Heights drawn {frame.times} times too large" if frame.times > 1 else "Drawn to scale"
    for foot, words in (
        (30, "Heavy line: straightedge on the frets. Fine: string. Dashed: bridge, rim plane."),
        (10, f"{drawn}; heel and body shortened. Shown at the wanted pitch."),
    ):
        svg.text((LEFT, svg.height - foot), words, "start", "label-small")
    return svg.markup()


def _bridge_words(values: Mapping[str, Any], say: Say) -> str:
    size = say.quantity(abs(values["clearance"]), "mm", 2)
    return f"straightedge {size} {'over' if values['clearance'] >= 0 else 'under'} bridge top"


def _draw_body(svg: Svg, frame: SideFrame) -> None:
    steps = [frame.right_mm * step / 16 for step in range(17)]
    outline = [frame.at(along, frame.top(along)) for along in steps]
    joint_x, _ = frame.at(0, 0)
    right_x = outline[-1][0]
    svg.polygon(
        [(joint_x, frame.rim_y + 10), (joint_x, frame.foot_y), (right_x, frame.foot_y),
         (right_x, frame.rim_y + 10)], "felt",
    )  # fmt: skip
    lower = frame.rim_y + 12
    svg.polygon([*outline, (right_x, max(lower, outline[-1][1] + 8)), (joint_x, lower)],
                "wood-light")  # fmt: skip


def _draw_neck(svg: Svg, frame: SideFrame) -> None:
    """Board, neck and heel; below the board the shapes are shortened."""
    values = frame.values
    bottom = -frame.values["fret_height"]

    def under(along: float, thickness: float) -> Point:
        return frame.at(along, frame.frets(along) + bottom - thickness)

    joint, start = under(0, values["board_joint"]), under(frame.left_mm, values["board_joint"])
    heel_x = joint[0]
    end = frame.foot_y - 14
    neck_px = 22.0
    svg.path(
        f"M{start[0]:.1f} {start[1]:.1f} L{joint[0]:.1f} {joint[1]:.1f} L{heel_x:.1f} {end:.1f} "
        f"L{heel_x - 30:.1f} {end:.1f} "
        f"Q{heel_x - 34:.1f} {joint[1] + neck_px + 4:.1f} {heel_x - 92:.1f} "
        f"{joint[1] + neck_px + (start[1] - joint[1]) * 92 / (joint[0] - start[0]):.1f} "
        f"L{start[0]:.1f} {start[1] + neck_px:.1f} Z",
        "wood-mid",
    )
    svg.rectangle((heel_x - 30, end), 30, 8, "wood-dark")
    last = values["tongue_length"]
    upper = [frame.at(along, frame.frets(along) + bottom) for along in (frame.left_mm, last)]
    svg.polygon([*upper, under(last, values["board_end"]), joint, start], "wood-dark")
    for number in range(1, values["last_fret"] + 1):
        along = values["scale_length"] * (1 - 2 ** (-number / 12)) - values["joint_fret"]
        if along > frame.left_mm:
            x, top = frame.at(along, frame.frets(along))
            foot = frame.at(along, frame.frets(along) + bottom)[1]
            svg.rectangle((x - 1.5, top), 3, foot - top, "metal")


def _draw_lines(svg: Svg, frame: SideFrame) -> None:
    """Rim plane, straightedge, string, bridge and saddle."""
    values = frame.values
    svg.line(frame.at(frame.left_mm, 0), frame.at(frame.right_mm, 0), "hidden")
    svg.text((RIGHT - 4, frame.rim_y + 30), "rim plane", "end", "label-small")
    half = 14.0
    bridge = frame.to_bridge
    top = values["arch"]
    corner = frame.at(bridge - half, top + values["bridge_thickness"])
    svg.rectangle(corner, 2 * half * frame.across, values["bridge_thickness"] * frame.up, "hidden")
    crown = top + values["string_over_top"]
    svg.line(frame.at(bridge, top + values["bridge_thickness"]), frame.at(bridge, crown), "second")
    # Drawn before the strings lift the bridge: the straightedge is where it has to pass dry.
    svg.line(
        frame.at(frame.left_mm, frame.string(frame.left_mm)), frame.at(bridge, crown), "string"
    )
    ends = [frame.at(along, frame.frets(along)) for along in (frame.left_mm, 1.36 * bridge)]
    svg.line(ends[0], ends[1], "accent")


def _draw_heights(svg: Svg, frame: SideFrame, say: Say) -> None:
    values, bridge = frame.values, frame.to_bridge
    reach = 22.0 + 14 * frame.across
    x, top_y = frame.at(bridge, values["arch"])
    edge_y = frame.at(bridge, values["arch"] + values["straightedge_height"])[1]
    crown_y = frame.at(bridge, values["arch"] + values["string_over_top"])[1]

    def line_y(at_x: float) -> float:
        """The straightedge's place on paper, for labels to keep clear of."""
        return edge_y + (edge_y - frame.at(0, frame.frets(0))[1]) / (x - frame.at(0, 0)[0]) * (
            at_x - x
        )

    for side, from_y in ((-1, edge_y), (1, crown_y)):
        across = x + side * reach
        svg.line((across, top_y), (across, from_y), "dim")
        for end_y in (top_y, from_y):
            svg.line((x, end_y), (across, end_y), "thin")
            svg.line((across - 4, end_y + 4), (across + 4, end_y - 4), "dim")
    middle = (edge_y + top_y) / 2 + 5
    lowest = max(middle, line_y(x - reach - LABEL_PX) + 18)
    svg.text((x - reach - 8, lowest), say("straightedge_height"), "end")
    middle = crown_y - 4 if values["pitch"] < 0 else max(middle, edge_y + 20)
    svg.text((x + reach + 8, middle), say("string_over_top"))

    x, y = frame.at(0, frame.frets(0))
    string_y = min(frame.at(0, frame.string(0.25 * s * bridge))[1] for s in (-1, 1))
    label_y = min(y - 40, string_y - 8)
    svg.line((x, label_y + 6), (x, frame.rim_y), "thin")
    svg.text((x, label_y), f"board and fret {say('board_and_fret')}", "middle")
    x, y = frame.at(bridge, 0)
    svg.line((x, y), (x, y + 34), "thin")
    svg.text((x, y + 50), minus(f"top rises {say('arch')}"), "middle")


def minus(words: str) -> str:
    """The words with a true minus sign before a figure."""
    return words.replace(" -", " −")


def _draw_shoulder_cut(svg: Svg, frame: SideFrame, say: Say) -> None:
    """Marks the end of the shoulder where wood comes off, or where a shim goes."""
    values = frame.values
    x, y = frame.at(0, 0)
    end = frame.foot_y - 6
    way = values["pitch_way"]
    words = {
        "off the heel end": f"{say('heel_size')} off the heel end",
        "off the board end": f"{say('heel_size')} off the board end",
        "shim at the heel end": f"shim {say('heel_size')} at the heel end",
    }.get(way, "nothing off for the pitch")
    if "heel end" in way:
        svg.polygon([(x, y), (x, end), (x - WEDGE_PX, end)], "accent-fill")
    elif "board end" in way:
        svg.polygon([(x, end), (x, y), (x - WEDGE_PX, y)], "accent-fill")
    at_board = "board end" in way
    svg.text((x + 12, y + 34 if at_board else end), words)


def draw_plan(values: Mapping[str, Any], say: Say) -> str:
    """Neck and body from above; the sideways offset is drawn large, not to scale."""
    height, middle, joint, bridge = 316.0, 156.0, 222.0, 530.0
    offset: float = values["offset_now"]
    lean = 0.0 if offset == 0 else math.copysign(10 + 26 * min(1.0, abs(offset) / 4), offset)
    words = _offset_words(offset, say)
    side_words = _side_words(values, say)
    svg = Svg(
        "neck-angle-plan",
        "The neck from above, with its centre line carried on to the bridge place",
        f"Head to the left, treble side up. The centre line of the neck passes the bridge place "
        f"{words}. Shoulders: {side_words}. The offset is drawn large.",
        WIDTH, height,
    )  # fmt: skip
    svg.path(
        f"M{joint} {middle - 66} C{joint + 10} {middle - 108} {joint + 70} {middle - 112} "
        f"{joint + 120} {middle - 104} S{joint + 240} {middle - 78} {joint + 290} {middle - 84} "
        f"S{RIGHT - 30} {middle - 106} {RIGHT} {middle - 110} L{RIGHT} {middle + 110} "
        f"C{RIGHT - 30} {middle + 106} {joint + 340} {middle + 90} {joint + 290} {middle + 84} "
        f"S{joint + 170} {middle + 96} {joint + 120} {middle + 104} "
        f"S{joint + 10} {middle + 108} {joint} {middle + 66} Z",
        "wood-light",
    )
    svg.circle((410, middle), 38, "paper")
    svg.circle((410, middle), 38, "ink")
    svg.rectangle((bridge - 16, middle - 62), 32, 124, "hidden")

    def turned(x: float, across: float) -> Point:
        """A point of the neck, swung about the middle of the joint; ``across`` towards bass."""
        angle = math.atan2(lean, bridge - joint)
        run = x - joint
        return (
            joint + run * math.cos(angle) + across * math.sin(angle),
            middle - run * math.sin(angle) + across * math.cos(angle),
        )

    half_nut, half_joint = 22.0, 32.0
    svg.polygon(
        [turned(LEFT + 6, -half_nut), turned(joint, -half_joint), turned(joint, half_joint),
         turned(LEFT + 6, half_nut)], "wood-mid",
    )  # fmt: skip
    svg.polygon(
        [turned(joint, -11), turned(joint + 30, -18), turned(joint + 30, 18), turned(joint, 11)],
        "wood-mid",
    )
    tongue = [turned(joint, -half_joint), turned(joint + 84, -half_joint - 3),
              turned(joint + 84, half_joint + 3), turned(joint, half_joint)]  # fmt: skip
    svg.polyline(tongue, "hidden")
    _mark_side(svg, values["side_way"], turned, joint, half_joint)
    svg.line((LEFT, middle), (RIGHT, middle), "hidden")
    svg.line(turned(LEFT + 6, 0), turned(bridge + 34, 0), "accent")
    _label_plan(svg, side_words, words, (joint, middle, bridge), values["side_way"])
    return svg.markup()


def _offset_words(offset: float, say: Say) -> str:
    if offset == 0:
        return "on the body's centre line"
    side = "treble" if offset > 0 else "bass"
    return f"{say.quantity(abs(offset), 'mm', 1)} to the {side} side"


def _side_words(values: Mapping[str, Any], say: Say) -> str:
    """What is done for the side, short enough for the drawing."""
    return {
        "off the treble side": f"{say('side_size')} off the treble shoulder",
        "off the bass side": f"{say('side_size')} off the bass shoulder",
        "shim on the treble side": f"shim {say('side_size')}, treble shoulder",
        "shim on the bass side": f"shim {say('side_size')}, bass shoulder",
    }.get(values["side_way"], "nothing off for the side")


def _mark_side(svg: Svg, way: str, turned: Any, joint: float, half: float) -> None:
    if "treble" in way or "bass" in way:
        sign = -1 if "treble" in way else 1
        svg.polygon(
            [turned(joint, sign * 11), turned(joint, sign * half),
             turned(joint - WEDGE_PX, sign * half)], "accent-fill",
        )  # fmt: skip


def _label_plan(
    svg: Svg, side_words: str, words: str, places: tuple[float, float, float], way: str
) -> None:
    joint, middle, bridge = places
    foot_y = svg.height - 12
    svg.text((LEFT, 22), "treble side")
    svg.text((LEFT, foot_y), "bass side")
    bass = "bass" in way
    words_y = foot_y if bass else 22.0
    svg.text((joint - 96, words_y), side_words)
    if bass or "treble" in way:
        reach = middle + 36 if bass else middle - 36
        svg.line((joint - 7, words_y - 18 if bass else words_y + 8), (joint - 7, reach), "thin")
    svg.text((RIGHT, 22), "bridge place", "end")
    svg.line((bridge, 28), (bridge, middle - 62), "thin")
    svg.text((RIGHT, foot_y), words, "end")
