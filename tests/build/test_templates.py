"""Templates as they are drawn: every place against the definition, worked out here once more."""

import math
from collections.abc import Mapping
from contextlib import suppress
from dataclasses import replace
from functools import cache
from itertools import combinations, pairwise
from pathlib import Path
from typing import Any

import mpmath
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from reportlab.pdfbase.pdfmetrics import stringWidth

from benchrule.handbook import Handbook
from benchrule.instruments import Instrument, instrument_of_model
from benchrule.opening import open_handbook
from benchrule.templates.answers import CannotMake
from benchrule.templates.makers import for_instrument, make, makers
from benchrule.templates.shapes import Label, Point, Stroke, Template, cut, mark, slot

ROOT = Path(__file__).parents[2]
# An instrument of the tests' own, so that they hold whatever the demonstration's models become.
VALUES = {
    "scale_length": 645, "frets": 20, "last_fret": 20, "body_joint_fret": 14,
    "string_spread_nut": 36.5, "string_spread_bridge": 54, "edge_margin": 3.5, "board_joint": 6.4,
    "fret_height": 1.05, "fret_radius": 400, "nut_height": 0.1, "action_bass": 2.4,
    "action_treble": 1.8, "relief": 0.2, "thickness_first": 21, "thickness_second": 22.5,
    "second_fret": 9, "neck_width_nut": 43.5, "board_end_width": 55.5, "body_length": 505,
    "dish_radius": 9000, "back_dish_radius": 4600, "side_thickness": 2.1, "plate_thickness": 2.8,
}  # fmt: skip
CALCULATORS: dict[str, Any] = {
    "fret-seating": {"slot_width": 0.58},
    "neck-profile": {"template_fret": 5, "cove_fret": 10, "fullness": 2.3},
    "string-spacing": {
        "gauges": [0.305, 0.406, 0.610, 0.813, 1.067, 1.346], "plain_strings": 2,
        "nut_height_bass": 0.15, "slot_clearance": 0.05, "wound_share": 50, "plain_share": 100,
        "blank_spare": 0.5,
    },
    "string-tension": {"string_set": "light"},
    "saddle-compensation": {"setback_bass": 4.5, "setback_treble": 2.5},
    "channel-cut": {
        "strips": [["Binding", 1.54, 6.0], *[["Line", 0.5, 1.3]] * 3], "proud_side": 0.06,
        "proud_top": 0.1, "cement_film": 0.02, "swelling": 0.6, "depth_limit": 0.05,
        "height_limit": 0.1,
    },
    "brace-stiffness": {"span": 400, "load_place": 220, "brace_width": 8, "brace_height": 13,
                        "brace_height_after": 12},
}  # fmt: skip
SMALL_VALUES = {
    "scale_length": 380, "frets": 18, "last_fret": 18, "string_spread_nut": 29,
    "string_spread_bridge": 41, "fret_radius": 0,
}  # fmt: skip
NOT_SMALL = ("fret-seating", "compound-radius", "arch-geometry", "channel-cut",
             "saddle-compensation")  # fmt: skip
FAN = {
    "layout": "fanned", "bass_scale_length": 665, "treble_scale_length": 645, "square_fret": 7,
}  # fmt: skip


@cache
def handbook() -> Handbook:
    found, problems = open_handbook(ROOT / "mkdocs.yml")
    assert problems == []
    return found


def instrument(
    values: Mapping[str, Any] | None = None, calculators: Mapping[str, Any] | None = None
) -> Instrument:
    """The tests' instrument, with other values or other inputs for single calculators."""
    usual = instrument_of_model(handbook(), "fourteen")
    own = dict(CALCULATORS)
    for name, inputs in (calculators or {}).items():
        own[name] = None if inputs is None else {**(own.get(name) or {}), **inputs}
    fields = {**usual.entry.fields, "values": {**VALUES, **(values or {})}, "calculators": own}
    return replace(usual, entry=replace(usual.entry, fields=fields), _worked={})


def small(calculators: Mapping[str, Any] | None = None) -> Instrument:
    """A little one with a flat board, for which there are fewer calculators."""
    return instrument(SMALL_VALUES, {**dict.fromkeys(NOT_SMALL), **(calculators or {})})


def fanned(**inputs: Any) -> Instrument:
    return instrument(calculators={"fret-spacing": {**FAN, **inputs}})


def nut_end(template: Template) -> tuple[Point, Point]:
    """Bass and treble corner of the board at the nut."""
    corners = template.named("board").points
    return corners[0], corners[3]


def slot_x(scale: float, fret: int, divisions: int = 12) -> float:
    with mpmath.workdps(40):
        return float(scale * (1 - mpmath.mpf(2) ** (-mpmath.mpf(fret) / divisions)))


# Fret slots


def test_every_slot_lies_where_the_octave_is_divided() -> None:
    template = make(instrument(), "fret-slots")
    (nut, low), (_, high) = nut_end(template)
    middle = (low + high) / 2
    slots = [one for one in template.strokes if one.kind == "slot"]
    assert len(slots) == 20
    for fret, one in enumerate(slots, 1):
        assert one.name == f"fret {fret}"
        (x, y), (to_x, to_y) = one.points
        place = slot_x(645, fret)
        assert x - nut == pytest.approx(place, abs=1e-9)
        assert to_x == pytest.approx(x, abs=1e-9)
        half = (36.5 + (54 - 36.5) * place / 645) / 2 + 3.5
        assert (middle - y, to_y - middle) == pytest.approx((half, half), abs=1e-9)
        assert one.width_mm == 0.58


@settings(max_examples=60)
@given(
    scale=st.floats(150, 1200),
    frets=st.integers(1, 36),
    divisions=st.integers(5, 72),
    spreads=st.tuples(st.floats(10, 100), st.floats(10, 150)),
    margin=st.floats(0, 15),
)
def test_slots_lie_right_on_any_board(
    scale: float, frets: int, divisions: int, spreads: tuple[float, float], margin: float
) -> None:
    template = make(
        instrument(calculators={"fret-spacing": {
            "scale_length": scale, "frets": frets, "divisions": divisions,
            "string_spread_nut": spreads[0], "string_spread_bridge": spreads[1],
            "edge_margin": margin,
        }}),
        "fret-slots",
    )  # fmt: skip
    nut = nut_end(template)[0][0]
    for fret in range(1, frets + 1):
        (x, _), (to_x, _) = template.named(f"fret {fret}").points
        assert x - nut == pytest.approx(slot_x(scale, fret, divisions), abs=1e-9)
        assert to_x == pytest.approx(x, abs=1e-9)


def fan_place(scale: float, spreads: tuple[float, float], share: float) -> Point:
    """A place on an outer string: how far along the centre line, and how far from it."""
    flare = (spreads[1] - spreads[0]) / 2
    run = math.sqrt(scale**2 - flare**2)
    return run * share, spreads[0] / 2 + flare * share


@settings(max_examples=40)
@given(
    bass=st.floats(560, 720), shorter=st.floats(0, 20), square=st.integers(0, 14),
    margin=st.floats(0, 8),
)  # fmt: skip
def test_a_fan_runs_through_the_places_on_both_strings(
    bass: float, shorter: float, square: int, margin: float
) -> None:
    treble, spreads = bass - shorter, (36.5, 54.0)
    template = make(
        fanned(bass_scale_length=bass, treble_scale_length=treble, square_fret=square,
               edge_margin=margin),
        "fret-slots",
    )  # fmt: skip
    # Where the bass string leaves the nut, from the guide line that is drawn for it.
    start_x, start_y = template.named("bass string").points[0]
    middle = start_y + spreads[0] / 2
    runs = [fan_place(scale, spreads, 1.0)[0] for scale in (bass, treble)]
    lead = (runs[0] - runs[1]) * slot_x(1, square)
    for fret in range(1, 21):
        share = slot_x(1, fret)
        (bass_x, bass_y), (treble_x, treble_y) = (
            fan_place(scale, spreads, share) for scale in (bass, treble)
        )
        on_bass = start_x + bass_x, middle - bass_y
        on_treble = start_x + lead + treble_x, middle + treble_y
        low, high = template.named(f"fret {fret}").points
        for place in (on_bass, on_treble):
            assert off_line(place, low, high) == pytest.approx(0, abs=1e-9)
        # Its ends lie on the edges, which run beside the strings.
        flare = (spreads[1] - spreads[0]) / 2
        edge = spreads[0] / 2 + flare * (low[0] - start_x) / runs[0] + margin
        assert middle - low[1] == pytest.approx(edge, abs=1e-9)
        edge = spreads[0] / 2 + flare * (high[0] - start_x - lead) / runs[1] + margin
        assert high[1] - middle == pytest.approx(edge, abs=1e-9)
        if fret == square:
            assert low[0] == pytest.approx(high[0], abs=1e-9)


def off_line(place: Point, start: Point, end: Point) -> float:
    """How far a place lies off the straight line through two others."""
    way = end[0] - start[0], end[1] - start[1]
    gap = place[0] - start[0], place[1] - start[1]
    return (way[0] * gap[1] - way[1] * gap[0]) / math.hypot(*way)


def test_a_fan_of_one_scale_is_the_straight_board() -> None:
    straight = make(instrument(values={"scale_length": 650}), "fret-slots")
    fan = make(fanned(bass_scale_length=650, treble_scale_length=650), "fret-slots")
    # The fan's scales run along the strings, the straight one's along the centre line.
    squeeze = math.sqrt(650**2 - 8.75**2) / 650
    nuts = nut_end(straight)[0][0], nut_end(fan)[0][0]
    for fret in range(1, 21):
        places = [t.named(f"fret {fret}").points[0][0] for t in (straight, fan)]
        assert places[1] - nuts[1] == pytest.approx((places[0] - nuts[0]) * squeeze, abs=1e-9)


def test_the_saddle_line_is_drawn_where_it_goes_on_a_sheet() -> None:
    short = make(instrument(values={"scale_length": 250}), "fret-slots")
    line, nut = short.named("saddle line"), nut_end(short)[0][0]
    assert [x - nut for x, _ in line.points] == pytest.approx([250, 250], abs=1e-9)
    assert not any("saddle line lies beyond" in note for note in short.notes)
    large = make(instrument(), "fret-slots")
    assert all(one.name != "saddle line" for one in large.strokes)
    assert any("saddle line lies beyond" in note for note in large.notes)


def test_the_notes_say_how_the_board_is_divided() -> None:
    quarter = instrument(calculators={"fret-spacing": {"divisions": 24, "frets": 30}})
    assert "The octave has 24 frets." in make(quarter, "fret-slots").notes
    assert not any("octave" in note for note in make(instrument(), "fret-slots").notes)
    assert any("fret 7 is square" in note for note in make(fanned(), "fret-slots").notes)
    square = make(fanned(square_fret=0), "fret-slots")
    assert any("the nut is square" in note for note in square.notes)


def test_a_slot_of_unknown_width_has_none() -> None:
    assert make(small(), "fret-slots").named("fret 1").width_mm == 0
    wide = make(instrument(calculators={"fret-seating": {"slot_width": 0.5}}), "fret-slots")
    assert wide.named("fret 1").width_mm == 0.5


# Neck


@pytest.mark.parametrize(("contour", "fullness"), [("superellipse", 2.3), ("superellipse", 1.6),
                                                  ("d", 2.0), ("d", 4.0)])  # fmt: skip
def test_the_hollows_are_superellipses(contour: str, fullness: float) -> None:
    inputs = {"contour": contour, "fullness": fullness, "flat_share": 30}
    template = make(instrument(calculators={"neck-profile": inputs}), "neck-contours")
    flat = 0.3 if contour == "d" else 0.0
    hollows = [one for one in template.strokes if one.kind == "cut"]
    assert [one.name for one in hollows] == ["fret 1", "fret 5", "fret 9", "fret 10"]
    for one in hollows:
        fret = int(one.name.removeprefix("fret "))
        place = slot_x(645, fret)
        grown = (22.5 - 21.0) * (place - slot_x(645, 1)) / (slot_x(645, 9) - slot_x(645, 1))
        depth = 21.0 + grown - 6.4
        half = (43.5 + (55.5 - 43.5) * place / slot_x(645, 20)) / 2
        # The outline: two lower corners, one upper, the hollow, the other upper.
        hollow = one.points[3:-1]
        middle = (one.points[0][0] + one.points[1][0]) / 2
        face = one.points[2][1]
        assert hollow[0][0] - middle == pytest.approx(half, abs=1e-9)
        assert middle - hollow[-1][0] == pytest.approx(half, abs=1e-9)
        assert face - min(y for _, y in hollow) == pytest.approx(depth, abs=1e-9)

        def value(point: Point, half: float = half, depth: float = depth,
                  middle: float = middle, face: float = face) -> float:  # fmt: skip
            across = max(0.0, (abs(point[0] - middle) / half - flat) / (1 - flat))
            return across**fullness + ((face - point[1]) / depth) ** fullness

        assert all(value(point) == pytest.approx(1, abs=1e-9) for point in hollow)
        for a, b in pairwise(hollow):
            # Between two points the chord stays within a hundredth of the curve: the middle of the
            # chord lies within it, and moved square to it by so much on one side, beyond it.
            x, y = (a[0] + b[0]) / 2, (a[1] + b[1]) / 2
            long = math.hypot(b[0] - a[0], b[1] - a[1])
            aside = 0.01 * (b[1] - a[1]) / long, 0.01 * (a[0] - b[0]) / long
            assert value((x, y)) <= 1 + 1e-9
            beyond = value((x + aside[0], y + aside[1])), value((x - aside[0], y - aside[1]))
            assert max(beyond) >= 1 - 1e-9


# Radius gauges


def arc_of(outline: Stroke) -> list[Point]:
    return list(outline.points[2:])


@pytest.mark.parametrize(
    ("name", "radius", "chord"),
    [("Top", 9000, 240), ("Back", 4600, 240), ("Board at the nut", 400, 36.5 + 7 + 4)],
)
@pytest.mark.parametrize("kind", ["hollow", "full"])
def test_gauges_are_arcs_of_their_radius(name: str, radius: float, chord: float, kind: str) -> None:
    template = make(instrument(), "dish-gauges")
    arc = arc_of(template.named(f"{name}, {kind}"))
    ends = sorted((arc[0][0], arc[-1][0]))
    assert ends[1] - ends[0] == pytest.approx(chord, abs=1e-9)
    middle = (ends[0] + ends[1]) / 2
    # The circle through three of its points has the radius wanted, its middle above a hollow.
    low = math.sqrt(radius**2 - (chord / 2) ** 2)
    up = 1 if kind == "hollow" else -1
    centre = middle, arc[0][1] + up * low
    for x, y in arc:
        assert math.hypot(x - centre[0], y - centre[1]) == pytest.approx(radius, abs=1e-6)
    fall = radius - low
    assert max(y for _, y in arc) - min(y for _, y in arc) == pytest.approx(fall, abs=1e-6)


def test_the_far_end_of_a_compound_board_has_its_own_gauge() -> None:
    cone = {one.name for one in make(instrument(), "dish-gauges").strokes}
    assert "Board at fret 20, hollow" in cone
    inputs = {"compound-radius": {"shape": "cylinder"}}
    plain = {one.name for one in make(instrument(calculators=inputs), "dish-gauges").strokes}
    assert "Board, hollow" in plain and "Board at the nut, hollow" not in plain


def test_what_is_flat_gets_no_gauge() -> None:
    flat: dict[str, Any] = {"compound-radius": None, "arch-geometry": {"dish_radius": 1_000_000}}
    template = make(instrument(calculators=flat), "dish-gauges")
    assert any(note.startswith("Top: so flat") for note in template.notes)
    assert not any(one.name.startswith("Top") for one in template.strokes)
    flat["arch-geometry"] = {"dish_radius": 1_000_000, "back_dish_radius": 1_000_000}
    with pytest.raises(CannotMake, match="use a straightedge"):
        make(instrument(calculators=flat), "dish-gauges")


# Nut and strings


def test_gaps_at_the_nut_are_alike() -> None:
    template = make(instrument(), "nut-and-strings")
    gauges = [1.346, 1.067, 0.813, 0.610, 0.406, 0.305]  # bass first
    slots = [template.named(f"slot {string}") for string in range(6, 0, -1)]
    places = [one.points[0][0] for one in slots]
    assert places[-1] - places[0] == pytest.approx(36.5, abs=1e-9)
    gaps = [
        (places[n + 1] - places[n]) - (gauges[n] + gauges[n + 1]) / 2 for n in range(5)
    ]  # fmt: skip
    assert gaps == pytest.approx([gaps[0]] * 5, abs=1e-9)
    assert [one.width_mm for one in slots] == pytest.approx([g + 0.05 for g in gauges], abs=1e-9)
    blank = template.named("nut blank").points
    wide = blank[1][0] - blank[0][0]
    assert wide == pytest.approx(43.5, abs=1e-9)
    assert (places[0] - blank[0][0], blank[1][0] - places[-1]) == pytest.approx((3.5, 3.5))
    # The floor: board less its fall, fret, leaf; the top lies as much higher as the string goes in.
    x = 36.5 / 2
    floor = 6.4 - (400 - math.sqrt(400**2 - x**2)) + 1.05 + 0.15
    assert slots[0].points[0][1] - blank[0][1] == pytest.approx(floor, abs=1e-9)
    top = template.named("nut top").points[0][1] - blank[0][1]
    assert top == pytest.approx(floor + 1.346 / 2, abs=1e-9)
    assert slots[0].points[1][1] == pytest.approx(blank[2][1], abs=1e-9)


def test_the_rules_carry_the_places_at_nut_and_saddle() -> None:
    template = make(instrument(), "nut-and-strings")
    nut = [template.named(f"slot {n}").points[0][0] for n in range(6, 0, -1)]
    rule = [template.named(f"At the nut, string {n}").points[0][0] for n in range(6, 0, -1)]
    assert [x - rule[0] for x in rule] == pytest.approx([x - nut[0] for x in nut], abs=1e-9)
    saddle = [template.named(f"At the saddle, string {n}").points[0][0] for n in range(6, 0, -1)]
    assert saddle[-1] - saddle[0] == pytest.approx(54, abs=1e-9)
    middle = template.named("At the saddle, middle").points[0][0]
    assert (saddle[0] + saddle[-1]) / 2 == pytest.approx(middle, abs=1e-9)
    ends = template.named("At the saddle").points
    assert (ends[0][0] + ends[1][0]) / 2 == pytest.approx(middle, abs=1e-9)


def test_strings_that_do_not_agree_are_refused() -> None:
    four = {"string-tension": {"string_set": "ukulele"}}
    with pytest.raises(CannotMake, match="6 strings and their tension with 4"):
        make(small(four), "nut-and-strings")
    own = {"string-spacing": {"gauges": "0.64 0.84 1.04 0.76", "plain_strings": 4}}
    template = make(small({**four, **own}), "nut-and-strings")
    assert sum(one.kind == "slot" for one in template.strokes) == 4


def test_a_slanted_nut_is_refused() -> None:
    with pytest.raises(CannotMake, match=r"10\.3 degrees aslant"):
        make(fanned(), "nut-and-strings")
    make(fanned(square_fret=0), "nut-and-strings")


# Bridge


def test_the_jig_ends_at_the_set_back_of_both_strings() -> None:
    template = make(instrument(), "bridge-place")
    for side, back, to in (("bass", 4.5, -27), ("treble", 2.5, 27)):
        (x, _), (to_x, to_y) = template.named(f"{side} string").points
        assert to_x - x == pytest.approx(645 * 2 ** (-14 / 12) + back, abs=1e-9)
        centre = template.named("centre line").points[0][1]
        assert to_y - centre == pytest.approx(to, abs=1e-9)
    corners = template.named("jig").points
    assert corners[0][0] == pytest.approx(corners[3][0], abs=1e-9)
    for side in ("bass", "treble"):
        assert off_line(template.named(f"{side} string").points[1], corners[1], corners[2]) == (
            pytest.approx(0, abs=1e-9)
        )
    last = template.named("last fret").points[0][0] - corners[0][0]
    assert last == pytest.approx(slot_x(645, 20) - slot_x(645, 14), abs=1e-9)
    scale = template.named("scale line").points[0][0] - corners[0][0]
    assert scale == pytest.approx(645 * 2 ** (-14 / 12), abs=1e-9)


def test_a_jig_without_set_back_says_so() -> None:
    short = make(small(), "bridge-place")
    (x, _), (to_x, _) = short.named("bass string").points
    assert to_x - x == pytest.approx(380 * 2 ** (-14 / 12), abs=1e-9)
    assert any(note.startswith("No set-back: none is reckoned") for note in short.notes)
    fan = make(fanned(), "bridge-place")
    assert any(note.startswith("No set-back: it is not reckoned for a fan") for note in fan.notes)
    for side, length in (("bass", 665), ("treble", 645)):
        (x, y), (to_x, to_y) = fan.named(f"{side} string").points
        left = length * 2 ** (-14 / 12)
        assert math.hypot(to_x - x, to_y - y) == pytest.approx(left, abs=1e-9)


def test_a_joint_at_the_saddle_is_refused() -> None:
    near = {"scale_length": 150, "body_joint_fret": 30}
    with pytest.raises(CannotMake, match="within 40 mm of the saddle line"):
        make(instrument(calculators={"fret-spacing": near}), "bridge-place")


# Channels and braces


def test_the_channel_gauges_have_the_sizes_of_the_card() -> None:
    template = make(instrument(), "channel-gauge")
    corners = template.named("profile").points
    # Channel 1.54 + 0.02 - 0.06 deep, 6 + 0.02 - 0.1 high; ledge of three lines, swollen, 1.3 high.
    ledge = 1.5 * 1.006 + 3 * 0.02
    side, floor, wall, shelf, end, plate = corners[1:7]
    assert floor[0] - side[0] == pytest.approx(0, abs=1e-9)
    assert wall[0] - floor[0] == pytest.approx(1.5, abs=1e-9)
    assert end[0] - shelf[0] == pytest.approx(ledge, abs=1e-9)
    assert shelf[0] == pytest.approx(wall[0], abs=1e-9)
    assert plate[1] - floor[1] == pytest.approx(5.92, abs=1e-9)
    assert plate[1] - shelf[1] == pytest.approx(1.22, abs=1e-9)
    for name, wanted, limit in (
        ("channel, inwards from the side", 1.5, 0.05),
        ("channel, down from the plate", 5.92, 0.1),
        ("ledge 1, inwards from the side", 1.5 + ledge, 0.05),
        ("ledge 1, down from the plate", 1.22, 0.1),
    ):
        points = template.named(name).points
        back = points[2][1]
        feet = sorted({round(y - back, 9) for _, y in points if y > back + 1e-6})
        assert feet == pytest.approx([wanted - limit, wanted, wanted + limit], abs=1e-9)


def area(points: list[Point]) -> float:
    return abs(
        sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(points, points[1:] + points[:1], strict=True))
    ) / 2  # fmt: skip


@pytest.mark.parametrize(
    ("shape", "share"), [("rectangle", 1), ("triangle", 1 / 2), ("parabola", 2 / 3)]
)
def test_a_brace_fills_its_share_of_width_and_height(shape: str, share: float) -> None:
    inputs = {"brace_shape": shape, "brace_width": 8, "brace_height": 13, "brace_height_after": 10}
    template = make(instrument(calculators={"brace-stiffness": inputs}), "brace-profiles")
    for when, height in (("now", 13), ("after", 10)):
        outline = template.named(f"section {when}").points
        hollow = list(outline[3:-1])
        assert area(hollow) == pytest.approx(8 * height * share, rel=1e-3)
        assert abs(hollow[0][0] - hollow[-1][0]) == pytest.approx(8, abs=1e-9)
        assert outline[2][1] - min(y for _, y in hollow) == pytest.approx(height, abs=1e-9)


def test_a_carved_brace_has_its_heights_place_by_place() -> None:
    rows = [(0, 2.5, 2.5), (90, 15, 12.5), (155, 15, 8.8), (300, 15, 13), (380, 2.5, 2.0)]
    inputs = {"brace_profile": "carved", "brace_rows": rows}
    template = make(instrument(calculators={"brace-stiffness": inputs}), "brace-profiles")
    foot, end, *ridge = template.named("carved ridge").points
    assert end[0] - foot[0] == pytest.approx(400)  # knife to knife
    heights = {round(x - foot[0], 9): y - foot[1] for x, y in ridge}
    assert heights == pytest.approx({0: 2.5, 90: 12.5, 155: 8.8, 300: 13, 380: 2.0, 400: 2.0})


def test_an_unshaved_brace_has_one_section() -> None:
    inputs = {"brace_height": 12, "brace_height_after": 12}
    template = make(instrument(calculators={"brace-stiffness": inputs}), "brace-profiles")
    assert [one.name for one in template.strokes if one.kind == "cut"] == ["section now"]


# All of them


def all_made() -> list[tuple[str, Template]]:
    carved = {"brace-stiffness": {"brace_profile": "carved"}}
    twelve = {"string-spacing": {"gauges": [1.0, 0.8] * 6}, "string-tension": None}
    tight = {"fret-spacing": {"scale_length": 200, "frets": 36}}
    chosen = [(what, one, name) for what, one in (("usual", instrument()), ("small", small()))
              for name in for_instrument(one)]  # fmt: skip
    chosen += [
        ("fan", fanned(), "fret-slots"),
        ("fan", fanned(), "bridge-place"),
        ("carved", instrument(calculators=carved), "brace-profiles"),
        ("twelve strings", instrument(calculators=twelve), "nut-and-strings"),
        ("36 frets", instrument(calculators=tight), "fret-slots"),
    ]
    return [(f"{what}, {name}", make(one, name)) for what, one, name in chosen]


def demonstration() -> list[tuple[str, Template]]:
    """Whatever can be made of the models that the demonstration has."""
    found = []
    for model in handbook().models:
        one = instrument_of_model(handbook(), model)
        for name in for_instrument(one):
            with suppress(CannotMake):
                found.append((f"{model}, {name}", make(one, name)))
    assert len(found) > 2 * len(makers())
    return found


def label_box(label: Label) -> tuple[float, float, float, float]:
    """Left, bottom, right and top of a label in the font it is printed in, mm."""
    wide = stringWidth(label.text, "Helvetica", label.size_mm)
    start = {"start": 0.0, "middle": -wide / 2, "end": -wide}[label.anchor]
    turn = math.radians(label.angle_deg)
    corners = [
        (label.at[0] + x * math.cos(turn) - y * math.sin(turn),
         label.at[1] + x * math.sin(turn) + y * math.cos(turn))
        for x in (start, start + wide) for y in (0.0, 0.72 * label.size_mm)
    ]  # fmt: skip
    xs, ys = [x for x, _ in corners], [y for _, y in corners]
    return min(xs), min(ys), max(xs), max(ys)


def test_labels_keep_to_the_template_and_off_each_other() -> None:
    for what, template in [*all_made(), *demonstration()]:
        boxes = [(one.text, label_box(one)) for one in template.labels]
        for text, (left, bottom, right, top) in boxes:
            inside = left >= 0 and bottom >= 0 and right <= template.width_mm
            assert inside and top <= template.height_mm, (what, text)
        for (one, a), (other, b) in combinations(boxes, 2):
            apart = a[2] <= b[0] or b[2] <= a[0] or a[3] <= b[1] or b[3] <= a[1]
            assert apart, (what, one, other)


def test_every_outline_has_room_round_it() -> None:
    for what, template in all_made():
        outlines = [one for one in template.strokes if one.kind == "cut"]
        assert outlines, what
        for one, other in combinations(outlines, 2):
            gaps = [
                max(min(p[axis] for p in b.points) - max(p[axis] for p in a.points)
                    for a, b in ((one, other), (other, one)))
                for axis in (0, 1)
            ]  # fmt: skip
            assert max(gaps) >= 7.9, (what, one.name, other.name)


def test_the_names_agree_with_what_is_made() -> None:
    for name, maker in makers().items():
        assert maker.name == name and maker.summary.endswith(".")
        assert all(one in handbook().calculators for one in maker.calculators)
        template = make(instrument(), name)
        assert (template.name, template.title) == (name, maker.title)
        assert all(note.endswith(".") for note in template.notes)


def test_what_is_for_an_instrument() -> None:
    assert for_instrument(instrument()) == list(makers())
    assert for_instrument(small()) == [
        "fret-slots", "neck-contours", "nut-and-strings", "bridge-place", "brace-profiles",
    ]  # fmt: skip


def test_the_same_instrument_gives_the_same_template() -> None:
    for name in makers():
        assert make(instrument(), name) == make(instrument(), name)


def test_what_stands_at_an_example_is_named() -> None:
    notes = make(instrument(), "brace-profiles").notes
    assert "Not given for this instrument, taken from an example: section of the brace; " in (
        " ".join(notes)
    )
    assert not any("width at the plate" in note for note in notes)
    assert not any("example" in note for note in make(instrument(), "fret-slots").notes)
    dishes = make(instrument(), "dish-gauges").notes
    assert dishes[-1].endswith("taken from an example: shape of the face.")
    cone = instrument(calculators={"compound-radius": {"shape": "cone"}})
    assert not any("example" in note for note in make(cone, "dish-gauges").notes)


def test_refusals_come_through_in_words() -> None:
    with pytest.raises(CannotMake, match=r"Fret spacing has no answer .* scale_length: .*5000"):
        make(instrument(values={"scale_length": "5000 mm"}), "fret-slots")
    with pytest.raises(CannotMake, match=r"no template 'lid'\. Take one of fret-slots"):
        make(instrument(), "lid")
    with pytest.raises(CannotMake, match="drawn from channel-cut, which is not for this"):
        make(small(), "channel-gauge")
    with pytest.raises(CannotMake, match="Saddle compensation has no answer"):
        make(instrument(calculators={"saddle-compensation": {"setback_bass": 99}}), "bridge-place")


@pytest.mark.parametrize(
    ("kind", "points", "closed", "width", "why"),
    [
        ("cut", ((0, 0), (1, 0), (1, 1)), False, 0, "closed outline"),
        ("cut", ((0, 0), (1, 0)), True, 0, "too few points"),
        ("slot", ((0, 0), (1, 0), (2, 0)), False, 0, "one straight line"),
        ("slot", ((0, 0), (1, 0)), False, -1, "none below 0"),
        ("mark", ((0, 0), (1, 0)), False, 1, "only a slot has a width"),
    ],
)
def test_lines_that_cannot_be_are_refused(
    kind: Any, points: tuple[Point, ...], closed: bool, width: float, why: str
) -> None:
    with pytest.raises(ValueError, match=why):
        Stroke(kind, points, closed, width)


def test_nothing_may_lie_off_a_template() -> None:
    with pytest.raises(ValueError, match="lies at 11, 5, off the template"):
        Template("t", "T", 10, 10, (mark((1, 1), (11, 5)),))
    with pytest.raises(ValueError, match="off the template"):
        Template("t", "T", 10, 10, (cut([(0, 0), (1, 0), (1, 1)]),), (Label("x", (1, -1)),))
    with pytest.raises(ValueError, match="off the template"):
        Template("t", "T", 10, 10, (slot((1, 1), (float("nan"), 5), 0),))
