"""Templates for laser and router: files are read back and audited, paths measured from the outline."""

import math
from pathlib import Path
from typing import Any

import ezdxf
import pytest
from ezdxf.document import Drawing
from hypothesis import given, settings
from hypothesis import strategies as st

from benchrule.templates.cutter_paths import cutter_paths
from benchrule.templates.dxf import to_dxf
from benchrule.templates.makers import make
from benchrule.templates.shapes import CannotCut, Label, Point, Stroke, Template, cut, guide, slot

from .test_templates import fanned, instrument, slot_x, small

SQUARE = [(10.0, 10.0), (50.0, 10.0), (50.0, 40.0), (10.0, 40.0)]
WINDOW = [(20.0, 15.0), (30.0, 15.0), (30.0, 35.0), (20.0, 35.0)]
ISLAND = [(22.0, 20.0), (28.0, 20.0), (28.0, 30.0), (22.0, 30.0)]


def plate(*outlines: list[Point], more: tuple[Stroke, ...] = ()) -> Template:
    strokes = [cut(points, f"outline {number}") for number, points in enumerate(outlines)]
    return Template("plate", "Plate", 60, 50, (*strokes, *more))


def written(folder: Path, template: Template, **options: Any) -> Drawing:
    path = folder / "template.dxf"
    path.write_bytes(to_dxf(template, **options))
    found = ezdxf.readfile(path)
    audit = found.audit()
    assert not audit.errors and not audit.fixes
    return found


def outlines(drawing: Drawing, layer: str) -> list[list[Point]]:
    return [
        [(x, y) for x, y in one.get_points("xy")]
        for one in drawing.modelspace().query(f'LWPOLYLINE[layer=="{layer}"]')
        if one.closed
    ]


def size(points: list[Point]) -> tuple[float, float]:
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return max(xs) - min(xs), max(ys) - min(ys)


def middle(points: list[Point]) -> Point:
    return sum(x for x, _ in points) / len(points), sum(y for _, y in points) / len(points)


def test_units_layers_and_words(tmp_path: Path) -> None:
    template = make(instrument(), "fret-slots")
    said = {"instrument": "The Fourteen", "edition": "Handbook: first.", "note": "Invented Ő."}
    drawing = written(tmp_path, template, **said)
    assert drawing.dxfversion == "AC1024"  # R2010
    assert (drawing.header["$INSUNITS"], drawing.header["$MEASUREMENT"]) == (4, 1)
    layers = {one.dxf.name for one in drawing.layers}
    assert layers >= {"CUT", "SLOT", "MARK", "GUIDE", "TEXT"}
    space = drawing.modelspace()
    assert {one.dxf.layer for one in space} == {"CUT", "SLOT", "GUIDE", "TEXT"}
    words = [one.dxf.text for one in space.query("TEXT")]
    assert words == [label.text for label in template.labels]
    places = [(one.get_placement()[1].x, one.get_placement()[1].y) for one in space.query("TEXT")]
    assert places == [pytest.approx(label.at) for label in template.labels]
    kept = dict(drawing.header.custom_vars.properties)
    assert kept == {
        "Template": "Fret slots", "Instrument": "The Fourteen", "Edition": "Handbook: first.",
        "Note": "Invented Ő.",
    }  # fmt: skip


@pytest.mark.parametrize("kerf", [0.0, 0.2])
def test_slots_lie_in_their_places_less_the_kerf(tmp_path: Path, kerf: float) -> None:
    template = make(instrument(), "fret-slots")
    drawing = written(tmp_path, template, kerf_mm=kerf)
    slots = outlines(drawing, "SLOT")
    assert len(slots) == 20
    board = outlines(drawing, "CUT")[0]
    nut = min(x for x, _ in board) + kerf / 2
    for fret, one in enumerate(slots, 1):
        assert middle(one)[0] - nut == pytest.approx(slot_x(645, fret), abs=1e-6)
        wide, long = size(one)
        assert wide == pytest.approx(0.58 - kerf, abs=1e-9)
        share = slot_x(1, fret)
        assert long == pytest.approx(36.5 + 17.5 * share + 7 - kerf, abs=1e-6)


def test_slanted_slots_are_slanted_rectangles(tmp_path: Path) -> None:
    template = make(fanned(), "fret-slots")
    slots = outlines(written(tmp_path, template, kerf_mm=0.1), "SLOT")
    for fret, one in enumerate(slots, 1):
        a, b, c, d = one
        assert math.dist(a, d) == pytest.approx(0.48) == math.dist(b, c)
        assert (b[0] - a[0]) * (d[0] - a[0]) + (b[1] - a[1]) * (d[1] - a[1]) == (
            pytest.approx(0, abs=1e-6)
        )
        ends = template.named(f"fret {fret}").points
        assert middle(one) == pytest.approx(middle(list(ends)))
        assert math.dist(a, b) == pytest.approx(math.dist(*ends) - 0.1)


def test_a_slot_of_unknown_width_stays_a_line(tmp_path: Path) -> None:
    template = make(small(), "fret-slots")
    for options in ({}, {"kerf_mm": 0.2}, {"tool_diameter_mm": 3}):
        drawing = written(tmp_path, template, **options)
        lines = drawing.modelspace().query('LINE[layer=="SLOT"]')
        assert len(lines) == 18 and not outlines(drawing, "SLOT")
        nut = template.named("board").points[0][0]
        for fret, one in enumerate(lines, 1):
            assert one.dxf.start.x - nut == pytest.approx(slot_x(380, fret), abs=1e-6)
            assert one.dxf.end.x == pytest.approx(one.dxf.start.x)


@pytest.mark.parametrize(("option", "reach"), [("kerf_mm", 0.1), ("tool_diameter_mm", 1.5)])
def test_outlines_grow_and_windows_shrink_by_the_half(
    tmp_path: Path, option: str, reach: float
) -> None:
    template = plate(SQUARE)
    sizes = [size(one) for one in outlines(written(tmp_path, template), "CUT")]
    assert sizes == [pytest.approx((40, 30))]
    grown = outlines(written(tmp_path, template, **{option: 2 * reach}), "CUT")
    assert size(grown[0]) == pytest.approx((40 + 2 * reach, 30 + 2 * reach), abs=1e-9)
    assert middle(grown[0]) == pytest.approx((30, 25))
    # A window's inside corners keep the round of a tool, so it is tried with the beam alone.
    if option == "kerf_mm":
        found = outlines(written(tmp_path, plate(SQUARE, WINDOW, ISLAND), kerf_mm=0.2), "CUT")
        assert [size(one) for one in found] == [
            pytest.approx((40.2, 30.2)), pytest.approx((9.8, 19.8)), pytest.approx((6.2, 10.2)),
        ]  # fmt: skip


def test_the_way_round_an_outline_does_not_matter() -> None:
    for outline in (SQUARE, SQUARE[::-1], SQUARE[2:] + SQUARE[:2]):
        found = cutter_paths(plate(outline, WINDOW), kerf_mm=0.3)
        assert size(list(found[0].points)) == pytest.approx((40.3, 30.3))
        assert size(list(found[1].points)) == pytest.approx((9.7, 19.7))
        turned = cutter_paths(plate(outline, WINDOW[::-1]), kerf_mm=0.3)
        assert size(list(turned[1].points)) == pytest.approx((9.7, 19.7))


def gap(place: Point, outline: list[Point]) -> float:
    """From a place to the nearest of an outline's sides."""
    found = []
    for (x, y), (to_x, to_y) in zip(outline, outline[1:] + outline[:1], strict=True):
        way = to_x - x, to_y - y
        share = ((place[0] - x) * way[0] + (place[1] - y) * way[1]) / (way[0] ** 2 + way[1] ** 2)
        share = min(1.0, max(0.0, share))
        found.append(math.dist(place, (x + share * way[0], y + share * way[1])))
    return min(found)


@pytest.mark.parametrize(
    ("name", "options"),
    [("neck-contours", {"tool_diameter_mm": 3.175}), ("neck-contours", {"kerf_mm": 0.2}),
     ("dish-gauges", {"tool_diameter_mm": 6}), ("bridge-place", {"tool_diameter_mm": 6}),
     ("channel-gauge", {"kerf_mm": 0.15}), ("brace-profiles", {"tool_diameter_mm": 1})],
)  # fmt: skip
def test_paths_keep_half_the_width_from_every_outline(name: str, options: dict[str, float]) -> None:
    template = make(instrument(), name)
    reach = sum(options.values()) / 2
    drawn = [one for one in template.strokes if one.kind == "cut"]
    paths = [one for one in cutter_paths(template, **options) if one.kind == "cut"]
    for stroke, path in zip(drawn, paths, strict=True):
        outline = list(stroke.points)
        corners = list(path.points)
        assert min(gap(place, outline) for place in corners) >= reach - 0.005
        # Between its corners a path runs just so far from the line.
        middles = [middle([a, b]) for a, b in zip(corners, corners[1:] + corners[:1], strict=True)]
        gaps = [gap(place, outline) for place in middles]
        # The last short chord of an arc is drawn out round a sharp corner, two at each arc.
        assert sum(abs(one - reach) > 0.005 for one in gaps) <= 2
        assert max(gaps) <= 1.1 * reach
        grown, plain = size(list(path.points)), size(outline)
        assert [a - b for a, b in zip(grown, plain, strict=True)] == pytest.approx(
            [2 * reach, 2 * reach], abs=0.15 * reach
        )


def test_an_arc_is_set_off_to_an_arc() -> None:
    template = make(instrument(), "dish-gauges")
    for name, radius in (("Back, hollow", 4600 - 1.5), ("Back, full", 4600 + 1.5)):
        index = [one.name for one in template.strokes].index(name)
        path = list(cutter_paths(template, tool_diameter_mm=3)[index].points)
        low = min(y for _, y in path)
        arc = [point for point in path if point[1] > low + 12]
        centre_x = (min(x for x, _ in arc) + max(x for x, _ in arc)) / 2
        crown = min(arc, key=lambda one: abs(one[0] - centre_x))[1]
        centre_y = crown + (radius if "hollow" in name else -radius)
        inner = [one for one in arc if abs(one[0] - centre_x) < 119]
        assert len(inner) > 50
        for x, y in inner:
            assert math.hypot(x - centre_x, y - centre_y) == pytest.approx(radius, abs=1e-3)


@settings(max_examples=40)
@given(width=st.floats(0.3, 3), kerf=st.floats(0.01, 3), angle=st.floats(0, 3.1))
def test_a_slot_is_a_rectangle_less_the_kerf_or_refused(
    width: float, kerf: float, angle: float
) -> None:
    start = 30.0, 25.0
    end = 30 + 20 * math.cos(angle), 25 + 20 * math.sin(angle)
    template = Template("s", "S", 60, 50, (slot(start, end, width, "the slot"),))
    if kerf > width + 1e-6:
        with pytest.raises(CannotCut, match="'the slot' is a slot"):
            cutter_paths(template, kerf_mm=kerf)
        return
    path = cutter_paths(template, kerf_mm=kerf)[0]
    assert path.kind == "slot"
    assert middle(list(path.points)) == pytest.approx(middle([start, end]))
    if path.closed:
        sides = [math.dist(a, b) for a, b in zip(path.points, path.points[1:], strict=False)]
        assert sides == pytest.approx([20 - kerf, width - kerf, 20 - kerf], abs=1e-9)
    else:
        assert width - kerf <= 1e-6


def test_a_tool_as_wide_as_the_slot_runs_along_its_middle() -> None:
    template = Template("s", "S", 60, 50, (slot((10, 10), (40, 10), 0.6, "s"),))
    path = cutter_paths(template, tool_diameter_mm=0.6)[0]
    assert not path.closed
    assert [one for point in path.points for one in point] == pytest.approx([10.3, 10, 39.7, 10])


@pytest.mark.parametrize(
    ("name", "options", "why"),
    [
        ("fret-slots", {"tool_diameter_mm": 3},
         r"'fret 1' is a slot 0\.58 mm wide, narrower than a tool of 3\.00 mm"),
        ("fret-slots", {"kerf_mm": 0.6}, r"narrower than a kerf of 0\.60 mm"),
        ("channel-gauge", {"tool_diameter_mm": 2},
         r"'profile' has an inside corner .* narrower than a tool of 2\.00 mm: 0\.41 mm"),
        ("brace-profiles", {"tool_diameter_mm": 3}, "'section now' has an inside curve"),
        ("neck-contours", {"tool_diameter_mm": 12}, "'fret 1' and 'fret 5' lie too near"),
        ("bridge-place", {"tool_diameter_mm": 3, "kerf_mm": 0.1}, "not both"),
        ("bridge-place", {"kerf_mm": -0.1}, "0 or more"),
        ("bridge-place", {"tool_diameter_mm": float("nan")}, "0 or more"),
    ],
)  # fmt: skip
def test_what_cannot_be_cut_is_refused_in_words(
    name: str, options: dict[str, float], why: str
) -> None:
    with pytest.raises(CannotCut, match=why):
        to_dxf(make(instrument(), name), **options)


def test_a_window_is_refused_where_the_tool_leaves_its_corners_round() -> None:
    with pytest.raises(CannotCut, match="'outline 1' has an inside corner"):
        cutter_paths(plate(SQUARE, WINDOW), tool_diameter_mm=2)
    # A tool that leaves no more than a twentieth of a millimetre is let through.
    found = cutter_paths(plate(SQUARE, WINDOW), tool_diameter_mm=0.2)
    assert size(list(found[1].points)) == pytest.approx((9.8, 19.8))
    turns = [i * math.tau / 90 for i in range(90)]
    hole = [(30 + 4 * math.cos(turn), 25 + 4 * math.sin(turn)) for turn in turns]
    inside = cutter_paths(plate(SQUARE, hole), tool_diameter_mm=6)[1]
    assert all(math.dist(point, (30, 25)) == pytest.approx(1, abs=0.01) for point in inside.points)
    with pytest.raises(CannotCut, match="'outline 1' has an inside curve"):
        cutter_paths(plate(SQUARE, hole), tool_diameter_mm=9)


def test_a_slot_shorter_than_the_tool_is_refused() -> None:
    template = Template("s", "S", 60, 50, (slot((10, 10), (12, 10), 4, "s"),))
    with pytest.raises(CannotCut, match=r"2\.00 mm long, shorter than a tool of 3\.00 mm"):
        cutter_paths(template, tool_diameter_mm=3)


def test_marks_and_guides_stay_where_they_are(tmp_path: Path) -> None:
    template = make(instrument(), "bridge-place")
    plain, set_off = (
        {(one.dxf.layer, *one.dxf.start.xy, *one.dxf.end.xy)
         for one in written(tmp_path, template, **options).modelspace().query("LINE")}
        for options in ({}, {"tool_diameter_mm": 6})
    )  # fmt: skip
    assert plain == set_off
    assert {one[0] for one in plain} == {"MARK", "GUIDE"}


def test_the_same_template_gives_the_same_bytes() -> None:
    before = ezdxf.options.write_fixed_meta_data_for_testing
    for name in ("fret-slots", "brace-profiles"):
        template = make(instrument(), name)
        assert to_dxf(template, kerf_mm=0.2) == to_dxf(template, kerf_mm=0.2)
        assert to_dxf(template) != to_dxf(template, kerf_mm=0.2)
    assert ezdxf.options.write_fixed_meta_data_for_testing == before


def test_how_far_lines_are_set_off_stands_in_the_file(tmp_path: Path) -> None:
    drawing = written(tmp_path, plate(SQUARE), kerf_mm=0.2)
    assert ("Set off for", "Kerf 0.2 mm") in drawing.header.custom_vars.properties
    drawing = written(tmp_path, plate(SQUARE), tool_diameter_mm=3)
    assert ("Set off for", "Tool diameter 3 mm") in drawing.header.custom_vars.properties


def test_turned_words_are_turned(tmp_path: Path) -> None:
    label = Label("up", (5, 5), 3, 90, "end")
    template = Template("t", "T", 20, 20, (guide((1, 1), (9, 9)),), (label,))
    text = written(tmp_path, template).modelspace().query("TEXT")[0]
    assert (text.dxf.rotation, text.dxf.height) == (90, pytest.approx(2.16))
    assert text.get_placement()[0].name == "RIGHT"
