"""Laws of the channel calculation: strips to ledges, pairs from the drawer, passes, lean."""

import itertools
import json
import math
import xml.etree.ElementTree as ET
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as some

from calculators.edges._channel_solved import (
    cutter_reach_mm,
    group_strips,
    ledge_width_mm,
    nearest_pair,
    plan_passes,
)
from calculators.engine import door
from calculators.engine.declaration import Refusal

NAME = "channel-cut"


def values(**given: Any) -> dict[str, Any]:
    found = door.answer(NAME, given)
    assert "refused" not in found, found
    steps = {step["name"]: step["value"] for step in found["steps"] if "value" in step}
    for step in found["steps"]:
        steps.update({name: one["value"] for name, one in step.get("gives", {}).items()})
    return {**steps, **{name: one["value"] for name, one in found["results"].items()}}


def rows(table: str, **given: Any) -> list[dict[str, Any]]:
    one = door.answer(NAME, given)["tables"][table]
    return [dict(zip(one["columns"], row, strict=True)) for row in one["rows"]]


def refused(**given: Any) -> dict[str, str]:
    first: dict[str, str] = door.answer(NAME, given)["refused"][0]
    return first


def strip(thickness: float, height: float, name: str = "strip") -> list[Any]:
    return [name, thickness, height]


def test_the_example_is_the_shops_channel() -> None:
    found = values()
    assert found["channel_depth"] == pytest.approx(1.54 + 0.02 - 0.06)
    assert found["channel_height"] == pytest.approx(6.0 + 0.02 - 0.1)
    assert found["ledge_width"] == pytest.approx(1.5 * 1.006 + 3 * 0.02)
    assert found["ledge_height"] == pytest.approx(1.3 + 0.02 - 0.1)
    assert found["wet_side"] == pytest.approx(0.06 + 1.54 * 0.006)
    assert found["wet_top"] == pytest.approx(0.1 + 6.0 * 0.006)
    assert found["proud_got"] == pytest.approx(0.04)
    assert found["collar_wanted"] == pytest.approx(16.05)
    assert found["side_left"] == pytest.approx(2.1 - found["depth_floor"])
    assert (found["cutter_mark"], found["collar_mark"]) == ("new", "16.05")
    assert (found["ledge_cutter"], found["ledge_collar"]) == ("new", "12.90")


def test_strips_of_one_height_share_a_ledge() -> None:
    ledges = group_strips(
        [
            {"strip": name, "strip_thickness": thick, "strip_height": high}
            for name, thick, high in (
                ("a", 1.0, 6.0),
                ("b", 0.4, 6.0),
                ("c", 0.5, 2.0),
                ("d", 0.7, 1.0),
            )
        ]
    )
    assert [(one["count"], one["height"]) for one in ledges] == [(2, 6.0), (1, 2.0), (1, 1.0)]
    assert ledges[0]["thickness"] == pytest.approx(1.4)
    assert ledges[0]["names"] == ["a", "b"]
    found = values(strips=[strip(1.0, 6), strip(0.4, 6), strip(0.5, 2)])
    assert found["channel_strips"] == 2 and found["ledge_count"] == 1
    assert found["channel_depth"] == pytest.approx(1.4 + 2 * 0.02 - 0.06)


def test_a_taller_strip_further_in_is_refused_by_its_row() -> None:
    with pytest.raises(Refusal, match="Strip 2 is taller"):
        group_strips([
            {"strip": "a", "strip_thickness": 1.0, "strip_height": 2.0},
            {"strip": "b", "strip_thickness": 1.0, "strip_height": 2.1},
        ])  # fmt: skip
    assert refused(strips=[strip(1, 2), strip(1, 6)])["input"] == "strips"


def test_nothing_left_of_a_channel_is_refused() -> None:
    assert refused(strips=[strip(0.1, 6)], proud_side=0.5)["input"] == "proud_side"
    assert refused(strips=[strip(1.5, 6), strip(0.5, 1)], proud_top=0.95)["input"] == "proud_top"
    assert refused(collars=[["big", 40]])["input"] == "collars"
    # 0.2 mm of ledge and 0.1 mm of depth are just enough.
    values(strips=[strip(1.5, 6), strip(0.5, 1)], proud_top=0.82)
    values(strips=[strip(0.14, 6)], proud_side=0.06)
    assert refused(strips=[strip(0.13, 6)], proud_side=0.06)["input"] == "proud_side"


@settings(max_examples=50)
@given(some.floats(0.2, 5), some.integers(1, 6), some.floats(0, 0.2), some.floats(0, 8))
def test_a_ledge_holds_its_wet_strips(t: float, n: int, film: float, swelling: float) -> None:
    width = ledge_width_mm(t, n, film, swelling)
    assert width == pytest.approx(t + n * film + t * swelling / 100)
    assert ledge_width_mm(t, n, 0, 0) == t
    assert ledge_width_mm(2 * t, 2 * n, film, swelling) == pytest.approx(2 * width)


@settings(max_examples=60)
@given(
    some.floats(0.3, 8), some.floats(0, 0.3),
    some.lists(some.floats(5, 40), min_size=1, max_size=5),
    some.lists(some.floats(3, 40), min_size=1, max_size=8),
)  # fmt: skip
def test_the_pair_is_the_best_of_all(
    wanted: float, start: float, cutters: list[float], collars: list[float]
) -> None:
    """Beside numpy, which looks at the whole grid of pairs at once."""
    pair = nearest_pair(
        wanted, start,
        [{"cutter": str(d), "cutter_diameter": d} for d in cutters],
        [{"collar": str(d), "collar_diameter": d} for d in collars],
    )  # fmt: skip
    grid = (np.subtract.outer(np.array(cutters), np.array(collars))) / 2
    grid = grid[grid > start + 1e-6]
    if not grid.size:
        assert pair is None
        return
    assert pair is not None
    reach = cutter_reach_mm(pair[0]["cutter_diameter"], pair[1]["collar_diameter"])
    assert reach > start
    assert abs(reach - wanted) <= np.abs(grid - wanted).min() + 2e-6


def test_of_equal_pairs_the_first_listed() -> None:
    found = values(cutters=[["first", 19], ["second", 19.1]], collars=[["a", 16], ["b", 16.1]])
    assert (found["cutter_mark"], found["collar_mark"]) == ("first", "a")


def test_the_ledge_counts_from_the_wall_that_is_really_cut() -> None:
    # The channel's pair cuts 0.10 too deep; the ledge's pair must make up for it.
    given: dict[str, Any] = {
        "cutters": [["only", 19.0]], "collars": [["15.8", 15.8], ["12.86", 12.86], ["12.66", 12.66]]
    }  # fmt: skip
    cuts = rows("cut_list", **given)
    assert cuts[0]["wall_at"] == pytest.approx(1.6) and cuts[0]["miss"] == pytest.approx(0.1)
    assert cuts[1]["collar"] == "12.66"
    assert cuts[1]["wall_at"] == pytest.approx(3.17)
    assert cuts[1]["miss"] == pytest.approx(3.17 - 1.6 - 1.569)
    found = values(**given)
    assert found["ledge_error"] == pytest.approx(cuts[1]["miss"])
    assert cuts[1]["width"] == pytest.approx(found["ledge_width"])
    assert cuts[1]["height"] == pytest.approx(found["ledge_height"])
    assert cuts[0]["width"] == found["channel_depth"]
    assert cuts[0]["height"] == found["channel_height"]
    assert cuts[1]["strips_in"] == "Black line + White line"
    assert [cut["cut"] for cut in cuts] == ["channel", "ledge 1"]


def test_a_drawer_without_a_pair_for_the_ledge_says_so() -> None:
    found = values(cutters=[["only", 19.0]], collars=[["16", 16]])
    assert "reaches further in" in found["no_ledge_words"]
    assert "ledge_error" not in found and "ledge_words" not in found
    cuts = rows("cut_list", cutters=[["only", 19.0]], collars=[["16", 16]])
    assert cuts[1]["miss"] is None and cuts[1]["collar"] == "none here"


def test_words_say_inside_or_outside() -> None:
    assert "inside the limits" in values()["pair_words"]
    new = [["new", 19.05]]
    near = values(cutters=new, collars=[["a", 15.95], ["b", 12.8]])  # 1.55, right on the limit
    assert near["depth_error"] == pytest.approx(0.05)
    assert "inside" in near["pair_words"]
    off = values(cutters=new, collars=[["a", 15.9], ["b", 12.8]])
    assert "wants a collar of 16.05" in off["pair_words"] and "inside" in off["ledge_words"]
    outside = values(cutters=new, collars=[["a", 16.05], ["b", 12.7]])
    assert outside["ledge_error"] == pytest.approx(3.175 - 1.5 - 1.569)
    assert "outside" in outside["ledge_words"]
    small = values(cutters=[["small", 5]], strips=[strip(9, 9)], collars=[["a", 3]])
    assert "larger cutter" in small["pair_words"]


@settings(max_examples=60)
@given(
    some.lists(some.integers(3, 200), min_size=1, max_size=4, unique=True),
    some.floats(0.3, 6), some.floats(0.01, 2) | some.just(0.0),
)  # fmt: skip
def test_passes_take_all_the_wood_and_no_bite_is_too_deep(
    tenths: list[int], deepest: float, last: float
) -> None:
    heights = [one / 10 for one in tenths]
    cuts = [{"cut": str(h), "height": h} for h in sorted(heights, reverse=True)]
    planned = plan_passes(cuts, deepest, last)["passes"]
    assert math.fsum(one["takes"] for one in planned) == pytest.approx(max(heights))
    assert all(0 < one["takes"] <= max(deepest, last) + 1e-5 for one in planned)
    assert [one["pass_number"] for one in planned] == list(range(1, len(planned) + 1))
    for before, after in itertools.pairwise(planned):
        assert after["floor_at"] > before["floor_at"]
    for cut in cuts:
        its = [one for one in planned if one["pass_cut"] == cut["cut"]]
        assert its[-1]["floor_at"] == pytest.approx(cut["height"])
        if last > 0:
            assert its[-1]["takes"] <= last + 1e-9
        if len(its) > 2:  # one pass fewer would have been too deep
            bulk = its[:-1] if last > 0 else its
            assert math.fsum(one["takes"] for one in bulk) > (len(bulk) - 1) * deepest - 1e-5


def test_the_example_takes_six_passes() -> None:
    found = rows("pass_list")
    assert [one["pass_cut"] for one in found] == ["ledge 1"] * 2 + ["channel"] * 4
    assert found[-1]["takes"] == pytest.approx(0.3)
    assert found[2]["takes"] == pytest.approx((5.92 - 1.22 - 0.3) / 3)
    assert values()["pass_count"] == 6
    assert len(rows("pass_list", pass_depth=4.4, last_pass=0.3, strips=[strip(1.5, 4.78)])) == 2


@settings(max_examples=40)
@given(some.floats(-1.0, 1.0), some.floats(0, 6), some.floats(1, 12))
def test_lean_by_coordinates(lean: float, gap: float, collar: float) -> None:
    """Beside a side drawn as a line through the collar's corner, points and distances by numpy."""
    found = values(side_lean=lean, collar_gap=gap, collar_height=collar, machine="upright")
    radius, ring = 19.05 / 2, 16.05 / 2
    touch = np.array([ring, -(gap + collar) if lean > 0 else -gap])
    along = np.array([math.sin(math.radians(lean)), math.cos(math.radians(lean))])

    def away(point: tuple[float, float]) -> float:
        d = np.array(point) - touch
        return float(d[0] * along[1] - d[1] * along[0])

    assert found["depth_floor"] == pytest.approx(away((radius, 0)), abs=1e-9)
    assert found["depth_plate"] == pytest.approx(away((radius, 5.92)), abs=1e-9)
    assert found["wall_lean"] == pytest.approx(abs(found["depth_floor"] - found["depth_plate"]))
    # Both corners of the collar lie outside the side.
    assert away((ring, -gap)) <= 1e-12 and away((ring, -gap - collar)) <= 1e-12


def test_no_lean_no_error() -> None:
    found = values(side_lean=0)
    assert found["depth_floor"] == found["depth_plate"] == found["reach"]
    assert found["wall_lean"] == 0 and found["floor_gap"] == 0
    assert found["lean_words"].startswith("None")


def test_a_foot_flat_on_the_arch_leans_with_it() -> None:
    upright, flat = values(side_lean=0.3), values(side_lean=0.3, machine="foot")
    assert flat["lean"] == pytest.approx(0.3 + upright["plate_slope"])
    assert upright["lean"] == 0.3
    assert math.sin(math.radians(flat["plate_slope"])) == pytest.approx(395 / 2 / 9000)
    assert flat["height_short"] == 0 and flat["stop_setting"] == flat["channel_height"]
    short = 4 * math.tan(math.radians(upright["plate_slope"]))
    assert upright["height_short"] == pytest.approx(short)
    assert upright["stop_setting"] == pytest.approx(5.92 + short)
    assert "more than" in flat["lean_words"]
    found = values(side_lean=upright["lean_most"])
    assert found["wall_lean"] == pytest.approx(0.05)
    assert "inside" in found["lean_words"]
    assert found["floor_gap"] == pytest.approx(1.54 * math.tan(math.radians(upright["lean_most"])))


def test_a_side_leaning_out_makes_it_shallow_and_a_great_lean_is_refused() -> None:
    assert values(side_lean=1)["depth_plate"] < values(side_lean=1)["depth_floor"] < 1.5
    inwards = values(side_lean=-1)
    assert inwards["depth_plate"] > inwards["depth_floor"] > 1.5
    assert inwards["side_left"] == pytest.approx(2.1 - inwards["depth_plate"])
    assert refused(side_lean=5, collar_height=20)["input"] == "side_lean"
    # Some depth at the floor, none at the plate.
    assert refused(side_lean=5, strips=[strip(1.54, 15)])["input"] == "side_lean"


def test_cautions_speak_up_where_they_must() -> None:
    def said(**given: Any) -> str:
        return " ".join(door.answer(NAME, given)["cautions"])

    plain = said()
    assert "Plug out" in plain and "below the wood" not in plain and "lining will show" not in plain
    assert "below the wood" in said(cutters=[["new", 19.05]], collars=[["a", 15.9]])
    assert "lining will show" in said(side_thickness=1.4)
    assert "stays behind" in said(side_thickness=1.8)
    assert "too shallow" in said(foot_inside=20)
    assert "through the plate" in said(plate_thickness=1.2)
    assert "through the plate" not in said(plate_thickness=1.3)


@pytest.mark.parametrize("units", ["metric", "inch", "inch64"])
def test_the_drawing_stays_on_its_paper(units: str) -> None:
    request = {
        "calculator": NAME, "units": units,
        "inputs": {"strips": [strip(2, 25), strip(1, 3), strip(0.5, 1.2)], "proud_side": 0.9},
    }  # fmt: skip
    drawing = json.loads(door.live(json.dumps(request)))["parts"]["drawings"]
    svg = ET.fromstring(drawing).find(".//{http://www.w3.org/2000/svg}svg")
    assert svg is not None
    _, _, wide, high = map(float, svg.attrib["viewBox"].split())
    boxes = [one.attrib for one in svg if one.tag.endswith("rect")]
    assert len(boxes) >= 8
    for box in boxes:
        x, y, w, h = (float(box[key]) for key in ("x", "y", "width", "height"))
        assert min(x, y) >= 0 and x + w <= wide and y + h <= high and min(w, h) >= 0
    strips = [box for box in boxes if box["class"] == "ink"]
    widths = [float(box["width"]) for box in strips]
    assert widths[0] / widths[1] == pytest.approx(2, rel=0.01)  # to scale
    assert float(strips[0]["height"]) / float(strips[1]["height"]) == pytest.approx(
        25 / 3, rel=0.01
    )
