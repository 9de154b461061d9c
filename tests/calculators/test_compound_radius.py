"""What must hold of a board rounded across, whatever the shop."""

import json
import math
from typing import Any
from xml.etree import ElementTree

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import brentq, minimize_scalar

from calculators.engine import door
from calculators.engine.compute import Answer, work_out
from calculators.engine.inputs import Refused
from calculators.laws import board_radius
from calculators.neck.compound_radius import calculator

from .svg_bounds import outside

RADIUS = st.floats(150, 900)
SHAPES = ("cone", "ends", "saddle", "cylinder")
BOARDS = st.fixed_dictionaries({
    "shape": st.sampled_from(SHAPES),
    "fret_radius": RADIUS,
    "radius_end": st.floats(900, 1500),
    "radius_saddle": st.floats(900, 2500),
    "frets": st.integers(1, 30),
    "scale_length": st.floats(300, 900),
    "string_spread_nut": st.floats(25, 60),
    "string_spread_bridge": st.floats(60.5, 90),
    "edge_margin": st.floats(0, 8),
    "board_joint": st.just(12.0),
    "gauge_fret": st.just(0),
})  # fmt: skip


def answer(**given_inputs: Any) -> Answer:
    shape = given_inputs.get("shape", "cone")
    unasked = {"radius_end": "ends", "radius_saddle": "saddle"}
    asked = {k: v for k, v in given_inputs.items() if unasked.get(k, shape) == shape}
    worked = work_out(calculator, asked)
    assert isinstance(worked, Answer), worked
    return worked


def refusal(**given_inputs: Any) -> Refused:
    worked = work_out(calculator, given_inputs)
    assert isinstance(worked, list)
    return worked[0]


def drop(radius: float, out: float) -> float:
    """The fall of a round from its middle, by the angle of the arc."""
    return radius * (1 - math.cos(math.asin(out / radius)))


def place(scale: float, fret: float) -> float:
    return scale * (1 - math.exp2(-fret / 12))


# Radii


@given(BOARDS)
@settings(max_examples=30)
def test_radius_runs_evenly_and_meets_what_was_given(board: dict[str, Any]) -> None:
    worked = answer(**board)
    v, rows = worked.values, worked.tables["by_fret"]
    scale, frets, start = board["scale_length"], board["frets"], board["fret_radius"]
    wanted = {
        "cone": (scale, start * board["string_spread_bridge"] / board["string_spread_nut"]),
        "ends": (place(scale, frets), board["radius_end"]),
        "saddle": (scale, board["radius_saddle"]),
        "cylinder": (scale, start),
    }[board["shape"]]
    slope = (wanted[1] - start) / wanted[0]
    assert v["growth"] == pytest.approx(slope, abs=1e-12)
    assert v["end_radius"] == pytest.approx(start + slope * place(scale, frets))
    assert v["octave_radius"] == pytest.approx(start + slope * scale / 2)
    assert v["saddle_radius"] == pytest.approx(start + slope * scale)
    assert [row["fret"] for row in rows] == list(range(frets + 1))
    for row in rows:
        x = place(scale, row["fret"])
        assert row["from_nut"] == pytest.approx(x)
        assert row["radius"] == pytest.approx(start + slope * x)
        spread = board["string_spread_nut"] * (1 - x / scale) + (
            board["string_spread_bridge"] * x / scale
        )
        assert row["spread"] == pytest.approx(spread)
        assert row["width"] == pytest.approx(spread + 2 * board["edge_margin"])
        assert row["string_fall"] == pytest.approx(drop(row["radius"], spread / 2), abs=1e-9)
        assert row["edge_fall"] == pytest.approx(drop(row["radius"], row["width"] / 2), abs=1e-9)
        assert row["edge_thick"] == pytest.approx(12 - row["edge_fall"])
    first, last = rows[0], rows[-1]
    assert (v["width_nut"], v["nut_fall"]) == pytest.approx((first["width"], first["edge_fall"]))
    assert (v["width_end"], v["end_fall"]) == pytest.approx((last["width"], last["edge_fall"]))
    assert (v["edge_nut"], v["edge_end"]) == pytest.approx(
        (first["edge_thick"], last["edge_thick"])
    )
    assert ("apex" in v) == (slope > 0.001)
    if "apex" in v:
        assert start + slope * -v["apex"] == pytest.approx(0, abs=1e-6)
    meet = -v["strings_meet"]
    grows = (board["string_spread_bridge"] - board["string_spread_nut"]) / scale
    assert board["string_spread_nut"] + grows * meet == pytest.approx(0, abs=1e-6)


@given(BOARDS)
@settings(max_examples=30)
def test_a_cone_is_straight_under_every_string_and_nothing_else_is(board: dict[str, Any]) -> None:
    cone = answer(**{**board, "shape": "cone"})
    assert cone.values["hump"] == pytest.approx(0, abs=1e-10)
    rows = cone.tables["by_fret"]
    start = rows[0]
    for row in rows:
        # Fall, spread and radius all grow in one proportion: a line through one point.
        assert row["string_fall"] / start["string_fall"] == pytest.approx(
            row["radius"] / start["radius"], rel=1e-9
        )
    cylinder = answer(**{**board, "shape": "cylinder"}).values
    assert cylinder["hump"] > 0
    assert cylinder["cylinder_hump"] == cylinder["hump"]
    assert cone.values["cylinder_hump"] == pytest.approx(cylinder["hump"])


@given(BOARDS)
@settings(max_examples=30)
def test_the_hump_is_the_highest_place_over_the_chord(board: dict[str, Any]) -> None:
    v = answer(**board).values
    length = place(board["scale_length"], board["frets"])
    grows = (board["string_spread_bridge"] - board["string_spread_nut"]) / board["scale_length"]

    def height(x: float) -> float:
        out = (board["string_spread_nut"] + grows * x) / 2
        return -drop(board["fret_radius"] + v["growth"] * x, out)

    def over(x: float) -> float:
        return height(x) - height(0) * (1 - x / length) - height(length) * x / length

    found = minimize_scalar(lambda x: -over(x), bounds=(0, length), method="bounded")
    assert v["hump"] == pytest.approx(max(0.0, -found.fun), abs=1e-9)
    assert v["hump"] >= 0
    if v["hump"] > 1e-4:
        assert over(v["hump_at"]) == pytest.approx(v["hump"], abs=1e-9)
        assert v["hump_at"] == pytest.approx(found.x, abs=0.02 * length)


# Gauge


@given(BOARDS, st.floats(150, 2000), st.integers(0, 30))
@settings(max_examples=30)
def test_a_gauge_of_another_radius_leaves_the_difference_of_the_falls(
    board: dict[str, Any], gauge: float, fret: int
) -> None:
    fret = min(fret, board["frets"])
    worked = answer(**{**board, "gauge_radius": gauge, "gauge_fret": fret})
    v, row = worked.values, worked.tables["by_fret"][fret]
    assert v["gauge_board"] == pytest.approx(row["radius"])
    assert v["gauge_width"] == pytest.approx(row["width"])
    gap = row["edge_fall"] - drop(gauge, row["width"] / 2)
    assert v["gauge_gap"] == pytest.approx(gap, abs=1e-9)
    assert v["gauge_leaf"] == pytest.approx(abs(gap), abs=1e-9)
    assert (v["gauge_gap"] > 0) == (gauge > row["radius"])
    words = v["gauge_words"]
    side = "edges:" if abs(gap) < 0.005 else "both edges" if gap > 0 else "under the middle"
    assert side in words or (abs(gap) < 0.005 and "no leaf" in words)
    assert board_radius.gauge_gap_mm(row["radius"], gauge, row["width"]) == pytest.approx(
        v["gauge_gap"], abs=1e-12
    )


@given(RADIUS, st.floats(1, 90))
@settings(max_examples=30)
def test_radius_and_fall_turn_into_each_other(radius: float, out: float) -> None:
    fall = board_radius.fall_mm(radius, out)
    assert fall == pytest.approx(drop(radius, out), abs=1e-10)
    assert board_radius.radius_for_fall_mm(out, fall) == pytest.approx(radius, rel=1e-7)
    # The parabola is the limit of a great radius.
    assert board_radius.fall_mm(1000 * radius, out) == pytest.approx(
        out**2 / (2000 * radius), rel=1e-5, abs=1e-9
    )


@given(RADIUS, st.floats(-0.1, 0.4), st.floats(10, 40), st.floats(0, 0.05), st.floats(0, 400))
@settings(max_examples=30)
def test_the_slope_of_the_fall_is_its_slope(
    radius: float, growth: float, out: float, opens: float, x: float
) -> None:
    board = board_radius.Ruled(radius + 60, growth, out, opens)
    step = 0.01
    slope = (board.fall_mm(x + step) - board.fall_mm(x - step)) / (2 * step)
    assert board.fall_slope(x) == pytest.approx(slope, abs=1e-7)


# Blocks and facets


def worst(block: float, rows: list[dict[str, float]]) -> float:
    return max(abs(row["edge_fall"] - drop(block, row["width"] / 2)) for row in rows)


def least_worst(rows: list[dict[str, float]]) -> float:
    radii = [row["radius"] for row in rows]
    if max(radii) - min(radii) < 1e-6:
        return worst(radii[0], rows)

    def odds(block: float) -> float:
        gaps = [row["edge_fall"] - drop(block, row["width"] / 2) for row in rows]
        return max(gaps) + min(gaps)

    block: float = brentq(odds, min(radii), max(radii), xtol=1e-10)
    return worst(block, rows)


@given(BOARDS, st.floats(0.01, 0.3))
@settings(max_examples=30)
def test_blocks_keep_to_the_gap_and_none_can_be_spared(
    board: dict[str, Any], allowed: float
) -> None:
    worked = answer(**{**board, "gap_allowed": allowed})
    v, rows, blocks = worked.values, worked.tables["by_fret"], worked.values["block_rows"]
    served: list[int] = []
    for block in blocks:
        stretch = [
            row for row in rows
            if block["stretch_from"] - 1e-9 <= row["from_nut"] <= block["stretch_to"] + 1e-9
        ]  # fmt: skip
        served += [int(row["fret"]) for row in stretch]
        first, last = int(stretch[0]["fret"]), int(stretch[-1]["fret"])
        start = f"fret {first}" if first else "nut"
        assert block["stretch"] == (start if first == last else f"{start} to {last}")
        assert block["gap"] == pytest.approx(worst(block["block_radius"], stretch), abs=1e-7)
        assert block["gap"] == pytest.approx(least_worst(stretch), abs=1e-7)
        assert block["gap"] <= allowed + 1e-9
        assert worst(block["least"], stretch) == pytest.approx(allowed, abs=1e-9)
        assert worst(block["least"] * 0.999, stretch) > allowed
        if block["most"] is None:
            assert worst(1e9, stretch) <= allowed + 1e-9
        else:
            assert worst(block["most"], stretch) == pytest.approx(allowed, abs=1e-9)
            assert worst(block["most"] * 1.001, stretch) > allowed
        if last < len(rows) - 1:
            assert least_worst(rows[first : last + 2]) > allowed  # it could take no fret more
    assert served == list(range(len(rows)))
    assert v["blocks_needed"] == len(blocks)
    assert v["one_block_gap"] == pytest.approx(least_worst(rows), abs=1e-7)
    assert worst(v["one_block_radius"], rows) == pytest.approx(v["one_block_gap"], abs=1e-9)


@given(BOARDS, st.floats(0.01, 0.3))
@settings(max_examples=30)
def test_flats_leave_ridges_no_higher_than_allowed(board: dict[str, Any], allowed: float) -> None:
    worked = answer(**{**board, "gap_allowed": allowed})
    v, rows = worked.values, worked.tables["by_fret"]
    turns = 2 * max(math.asin(row["width"] / 2 / row["radius"]) for row in (rows[0], rows[-1]))
    flattest = max(row["radius"] for row in rows)

    def ridge(flats: int) -> float:
        return flattest / math.cos(turns / flats / 2) - flattest

    assert ridge(v["facets"]) <= allowed + 1e-9
    assert v["facets"] == 1 or ridge(v["facets"] - 1) > allowed - 1e-9
    half = turns / v["facets"] / 2
    # A flat touches the round in its middle, and reaches out to where its neighbour meets it.
    for name, radius in (("facet_nut", rows[0]["radius"]), ("facet_end", rows[-1]["radius"])):
        assert math.hypot(radius, v[name] / 2) * math.cos(half) == pytest.approx(radius)


# Refusals, words, pictures


@pytest.mark.parametrize(
    ("given_inputs", "blames"),
    [
        ({"fret_radius": 0}, "fret_radius"),
        ({"fret_radius": 99.9}, "fret_radius"),
        ({"string_spread_bridge": 36.4}, "string_spread_bridge"),
        ({"shape": "ends", "radius_end": 399}, "radius_end"),
        ({"shape": "saddle", "radius_saddle": 399}, "radius_saddle"),
        ({"gauge_fret": 21}, "gauge_fret"),
        ({"fret_radius": 150, "string_spread_nut": 90, "string_spread_bridge": 90}, "board_joint"),
        ({"board_joint": 2, "fret_radius": 100}, "board_joint"),
    ],
)
def test_what_cannot_be_is_refused(given_inputs: dict[str, Any], blames: str) -> None:
    refused = refusal(**given_inputs)
    assert refused.input == blames
    assert refused.why and refused.allowed


@pytest.mark.parametrize(
    "edge",
    [
        {"fret_radius": 100, "board_joint": 12},
        {"shape": "ends", "radius_end": 400},
        {"shape": "saddle", "radius_saddle": 400},
        {"string_spread_bridge": 36.5},
        {"gauge_fret": 20},
    ],
)
def test_what_just_can_be_is_answered(edge: dict[str, Any]) -> None:
    v = answer(**edge).values
    if edge.get("radius_end") or edge.get("radius_saddle") or "string_spread_bridge" in edge:
        assert v["end_radius"] == 400
        assert v["blocks_needed"] == 1
    assert "apex" not in v or v["growth"] > 0.001


def test_the_edge_must_keep_half_a_millimetre() -> None:
    fall = answer(shape="cylinder", frets=1).values["end_fall"]
    assert fall + 0.5 < 2  # else the shop's figures would not reach the limit
    thin = {"shape": "cylinder", "frets": 1, "fret_radius": 160.0}
    v = answer(**thin).values
    needs = max(v["nut_fall"], v["end_fall"]) + 0.5
    assert refusal(**thin, board_joint=needs - 1e-6).input == "board_joint"
    answer(**thin, board_joint=needs + 1e-6)


def test_words_follow_the_figures() -> None:
    assert "all along" in answer(shape="cylinder").values["verdict"]
    assert "runs straight" in answer().values["verdict"]
    assert "proud" in answer(shape="ends", radius_end=700).values["verdict"]
    assert answer(gap_allowed=0.1).values["block_words"].startswith("One block")
    assert answer().values["block_words"].startswith("2 blocks")
    assert any("stopped saw" in text for text in answer().cautions)
    wide = answer(shape="cylinder", fret_radius=1500)
    assert wide.values["nut_fall"] < 0.2 <= wide.values["end_fall"]
    assert any("stopped saw" in text for text in wide.cautions)
    assert not any("stopped saw" in text for text in answer(fret_radius=2000).cautions)
    assert any("straight beam" in text for text in answer().cautions)
    assert not any("straight beam" in text for text in answer(gap_allowed=0.1).cautions)
    assert any("only" in text for text in answer(board_joint=3.6).cautions)
    assert not any("only" in text for text in answer(board_joint=3.8).cautions)


def test_the_shop_s_board() -> None:
    """The Fourteen, worked by hand: 43.5 mm wide at the nut, 400 mm: 21.75²/800 and a little."""
    v = answer().values
    assert v["width_nut"] == 43.5
    assert v["width_end"] == pytest.approx(55.5, abs=0.05)
    assert v["nut_fall"] == pytest.approx(21.75**2 / 800, rel=1e-3)
    assert v["saddle_radius"] == pytest.approx(400 * 54 / 36.5)


@pytest.mark.parametrize("units", ["metric", "inch"])
@pytest.mark.parametrize("shape", SHAPES)
@pytest.mark.parametrize("size", [{}, {"frets": 1}, {"frets": 36, "board_joint": 12}])
def test_pictures_stay_on_their_paper(units: str, shape: str, size: dict[str, Any]) -> None:
    request = {"calculator": "compound-radius", "units": units, "inputs": {"shape": shape, **size}}
    drawings = json.loads(door.live(json.dumps(request)))["parts"]["drawings"]
    svgs = ["<svg" + part.partition("</svg>")[0] + "</svg>" for part in drawings.split("<svg")[1:]]
    assert len(svgs) == 2
    ids = []
    for svg in svgs:
        assert outside(svg) == []
        ids += [e.attrib["id"] for e in ElementTree.fromstring(svg).iter() if "id" in e.attrib]
    assert len(set(ids)) == len(ids) == 4


def test_sections_are_to_scale() -> None:
    v = answer(shape="ends", fret_radius=200, radius_end=600).values
    drawn = json.loads(
        door.live(json.dumps({
            "calculator": "compound-radius",
            "inputs": {"shape": "ends", "fret_radius": 200, "radius_end": 600},
        }))
    )["parts"]["drawings"]  # fmt: skip
    root = ElementTree.fromstring("<svg" + drawn.split("<svg")[1].partition("</svg>")[0] + "</svg>")
    boards = [e for e in root.iter() if "wood-dark" in e.attrib.get("class", "")]
    assert len(boards) == 3
    sizes = []
    for shape in boards:
        points = [tuple(map(float, p.split(","))) for p in shape.attrib["points"].split()]
        arc = points[:-2]
        width = points[-2][0] - points[-1][0]
        sizes.append((width, arc[0][1] - min(y for _, y in arc), points[-1][1] - arc[8][1]))
    scale = sizes[-1][0] / v["width_end"]
    assert sizes[0][0] / scale == pytest.approx(v["width_nut"], rel=2e-3)
    assert sizes[0][1] / scale == pytest.approx(v["nut_fall"], rel=2e-2)
    assert sizes[-1][1] / scale == pytest.approx(v["end_fall"], rel=2e-2)
    assert sizes[-1][2] / scale == pytest.approx(v["board_joint"], rel=2e-3)
