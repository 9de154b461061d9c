"""Laws of the inlay calculation: fall of the board, pockets, strips in curves, blanks."""

import json
import math
import xml.etree.ElementTree as ET
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as some

from calculators.edges._inlay_solved import profile_places, radius_at_piece
from calculators.engine import door
from calculators.engine.declaration import Refusal

NAME = "inlay-depth"


def values(**given: Any) -> dict[str, Any]:
    found = door.answer(NAME, given)
    assert "refused" not in found, (given, found)
    steps = {step["name"]: step["value"] for step in found["steps"] if "value" in step}
    for step in found["steps"]:
        steps.update({name: one["value"] for name, one in step.get("gives", {}).items()})
    return {**steps, **{name: one["value"] for name, one in found["results"].items()}}


def rows(**given: Any) -> list[dict[str, float]]:
    one = door.answer(NAME, given)["tables"]["profile"]
    return [dict(zip(one["columns"], row, strict=True)) for row in one["rows"]]


def refused(**given: Any) -> dict[str, str]:
    first: dict[str, str] = door.answer(NAME, given)["refused"][0]
    return first


def strip(**given: Any) -> dict[str, Any]:
    return values(work="strip", **given)


def test_the_example_by_hand() -> None:
    found = values()
    fall = 400 - math.sqrt(400**2 - 14**2)
    assert found["edge_fall"] == pytest.approx(fall) and found["top_fall"] == 0
    assert found["pocket_depth"] == pytest.approx(1.3 - 0.1 + 0.05)
    assert found["left_edge"] == pytest.approx(1.3 - 0.1 - 0.1 - fall)
    assert found["left_top"] == pytest.approx(1.3 - 0.1 - 0.1)
    assert found["least_thickness"] == pytest.approx(0.7 + 0.1 + 0.1 + fall)
    assert found["pocket_edge"] == pytest.approx(1.25 - 0.1 - fall)
    assert found["board_under"] == pytest.approx(6.4 - 1.25)
    assert "fall_along" not in found and "channel_width" not in found


@settings(max_examples=50)
@given(some.floats(4, 40), some.floats(0, 30), some.floats(300, 2000))
def test_a_blank_of_the_least_thickness_just_holds(
    width: float, offset: float, radius: float
) -> None:
    given = {"piece_width": width, "piece_offset": offset, "fret_radius": radius}
    least = values(**given, shell_thickness=3)["least_thickness"]
    found = values(**given, shell_thickness=least)
    assert found["left_edge"] == pytest.approx(0.7)
    assert "Thick enough" in found["verdict"]
    assert "Too thin" in values(**given, shell_thickness=least - 0.01)["verdict"]
    assert values(**given, shell_thickness=least + 0.1)["left_edge"] == pytest.approx(0.8)
    # What is left over the wood's floor and under the shell's edge is the glue alone.
    assert found["pocket_edge"] - found["left_edge"] == pytest.approx(0.05)


@settings(max_examples=50)
@given(some.floats(6, 40), some.floats(0, 30), some.floats(150, 2000))
def test_fall_is_a_circles_and_rounder_boards_want_thicker_shell(
    width: float, offset: float, radius: float
) -> None:
    given = {"piece_width": width, "piece_offset": offset}
    found = values(**given, fret_radius=radius)
    out, top = offset + width / 2, max(0, offset - width / 2)
    assert (radius - found["edge_fall"]) ** 2 + out**2 == pytest.approx(radius**2)
    assert (radius - found["top_fall"]) ** 2 + top**2 == pytest.approx(radius**2)
    assert found["left_top"] >= found["left_edge"]
    assert found["left_top"] - found["left_edge"] == pytest.approx(
        found["edge_fall"] - found["top_fall"]
    )
    flatter = values(**given, fret_radius=radius * 1.2)
    assert flatter["least_thickness"] < found["least_thickness"]


def test_a_flat_board_takes_the_same_everywhere() -> None:
    for floor in ("level", "tilted"):
        found = values(fret_radius=0, pocket_floor=floor, piece_offset=32)
        assert found["edge_fall"] == found["top_fall"] == 0
        assert found["left_edge"] == found["left_top"]
        assert found["board_under"] == pytest.approx(6.4 - 1.25)
        assert "tilt" not in found
        assert all(row["fall"] == 0 for row in rows(fret_radius=0, pocket_floor=floor))


def test_a_floor_square_to_the_round_spares_the_outer_edge() -> None:
    given = {"piece_offset": 15, "piece_width": 12, "fret_radius": 300}
    level, tilted = values(**given), values(**given, pocket_floor="tilted")
    assert tilted["edge_fall"] == pytest.approx(300 - math.sqrt(300**2 - 6**2))
    assert tilted["top_fall"] == 0
    assert tilted["left_edge"] > level["left_edge"]
    assert tilted["tilt"] == pytest.approx(math.degrees(math.asin(15 / 300)))
    assert tilted["board_under"] < level["board_under"] == pytest.approx(6.4 - 1.25)
    middle = values(**{**given, "piece_offset": 0}, pocket_floor="tilted")
    assert middle["board_under"] == pytest.approx(5.15) and middle["tilt"] == 0


def test_the_profile_runs_from_edge_to_edge() -> None:
    table = rows(piece_offset=10)
    found = values(piece_offset=10)
    assert [row["place"] for row in table] == pytest.approx([-4 + 3.5 * n for n in range(9)])
    assert table[-1]["fall"] == pytest.approx(found["edge_fall"])
    assert table[-1]["left"] == pytest.approx(found["left_edge"])
    for row in table:
        assert row["fall"] == pytest.approx(400 - math.sqrt(400**2 - row["place"] ** 2))
        assert row["left"] == pytest.approx(1.3 - 0.1 - 0.1 - row["fall"])
    tilted = profile_places(28, 10, "tilted")
    assert [one["place"] for one in tilted] == pytest.approx([-14 + 3.5 * n for n in range(9)])


@settings(max_examples=50)
@given(some.floats(150, 600), some.floats(150, 900), some.integers(1, 20), some.floats(4, 20))
def test_the_radius_grows_with_the_way(
    nut: float, end: float, fret: int, length: float
) -> None:  # fmt: skip
    found = radius_at_piece(nut, "ends", length, end, 645, 20, fret)
    whole = 645 * (1 - 2 ** (-20 / 12))
    growth = (end - nut) / whole
    assert found["flat_radius"] - found["round_radius"] == pytest.approx(abs(growth) * length)
    middle = 645 * (1 - (2 ** (-fret / 12) + 2 ** (-(fret - 1) / 12)) / 2)
    both = (found["flat_radius"] + found["round_radius"]) / 2
    assert both == pytest.approx(nut + growth * middle)
    same = radius_at_piece(nut, "ends", length, nut, 645, 20, fret)
    assert same["round_radius"] == same["flat_radius"] == pytest.approx(nut)


def test_what_grows_must_start_round_and_lie_on_the_board() -> None:
    with pytest.raises(Refusal, match="cannot be flat"):
        radius_at_piece(0, "ends", 14, 500, 645, 20, 5)
    with pytest.raises(Refusal, match="has 12 frets"):
        radius_at_piece(300, "ends", 14, 500, 645, 12, 13)
    radius_at_piece(300, "ends", 14, 500, 645, 12, 12)
    assert refused(board_shape="ends", fret_radius=0)["input"] == "fret_radius"
    assert refused(fret_radius=27.9)["input"] == "fret_radius"
    assert values(fret_radius=28)["edge_reach"] == 14
    assert refused(shell_thickness=0.3, shell_proud=0.25)["input"] == "shell_thickness"
    values(shell_thickness=0.36, shell_proud=0.25)
    assert refused(work="strip", shell_thickness=0.3, shell_proud=0.25)["input"] == (
        "shell_thickness"
    )
    assert refused(work="strip", curve_radius=15)["input"] == "curve_radius"
    strip(curve_radius=18)


def test_words_for_thin_blanks() -> None:
    assert "Thick enough" in values()["verdict"]
    thin = values(shell_thickness=1.1)["verdict"]
    assert "Too thin" in thin and "at least 1.15 mm" in thin
    assert "through the shell" in values(shell_thickness=0.4)["verdict"]
    assert "Thick enough" in values(least_left=0.85, fret_radius=0, shell_thickness=1.05)["verdict"]


def test_a_curved_blank_loses_its_hollow_over_the_piece() -> None:
    found = values(blank_hollow=0.4)
    loss = 0.4 * (28**2 + 14**2) / 60**2
    assert found["curve_loss"] == pytest.approx(loss)
    assert found["left_edge"] == pytest.approx(values()["left_edge"] - loss)
    assert found["pocket_depth"] == pytest.approx(1.25 - loss)
    assert found["least_thickness"] == pytest.approx(values()["least_thickness"] + loss)
    # Beside the sagitta of the true circle through the blank.
    circle = 60**2 / (8 * 0.4) + 0.2
    half = math.hypot(28, 14) / 2
    assert loss == pytest.approx(circle - math.sqrt(circle**2 - half**2), rel=1e-3)
    found = strip(blank_hollow=0.4)
    assert found["strip_curve_loss"] == pytest.approx(0.4 * (18 / 60) ** 2)
    assert found["channel_depth"] == pytest.approx(1.25 - 0.036)
    assert found["strip_left"] == pytest.approx(1.1 - 0.036)


def test_the_shops_channel() -> None:
    found = strip()
    assert found["channel_width"] == pytest.approx(1.35)
    assert found["channel_depth"] == pytest.approx(1.25)
    assert found["strip_left"] == pytest.approx(1.1)
    assert found["parts_of_piece"] == 3
    assert "cracks into 3" in found["strip_words"]
    assert "as it is" in strip(strip_piece=6.9)["strip_words"]
    assert strip(strip_piece=7)["parts_of_piece"] == 2
    assert "verdict" not in found and "pocket_depth" not in found


@settings(max_examples=50)
@given(some.floats(0.02, 0.4), some.floats(20, 3000))
def test_the_longest_piece_touches_both_walls(clearance: float, radius: float) -> None:
    found = strip(strip_clearance=clearance, curve_radius=radius)
    half = found["longest_straight"] / 2
    assert math.hypot(half, radius - clearance) == pytest.approx(radius)
    if 3 <= 2 * half <= min(120, radius):
        again = strip(strip_clearance=clearance, curve_radius=radius, strip_piece=2 * half)
        assert again["clearance_needed"] == pytest.approx(clearance)
        assert again["parts_of_piece"] == 1
    assert strip(strip_clearance=clearance, curve_radius=radius * 2)["longest_straight"] > 2 * half


hundredths = [(300, 3000), (300, 3000), (1000, 10000), (1000, 6000), (10, 100), (0, 50)]


@settings(max_examples=60)
@given(some.tuples(*(some.integers(*span) for span in hundredths)))
def test_pieces_fit_the_blank_and_one_more_would_not(sizes: tuple[int, ...]) -> None:
    width, length, long, wide, kerf, spare = (size / 100 for size in sizes)
    found = values(
        piece_width=width, piece_length=length, blank_length=long, blank_width=wide,
        saw_kerf=kerf, saw_allowance=spare, fret_radius=0, shell_thickness=3,
    )  # fmt: skip

    def most(side: float, size: float) -> int:
        count = 0
        while (count + 1) * (size + 2 * spare) + count * kerf <= side + 1e-6:
            count += 1
        return count

    one = most(wide, width) * most(long, length)
    two = most(long, width) * most(wide, length)
    assert found["pieces_across"] == one and found["pieces_along"] == two
    assert found["pieces"] == max(one, two)


def test_a_hair_too_small_a_blank_gives_one_row_less() -> None:
    # Two pieces of 28 + 0.3 with a kerf of 0.3 between them need 56.9; 4 of 14.3 need 58.1.
    def count(**given: Any) -> tuple[int, int]:
        found = values(**given)
        return found["pieces_across"], found["pieces_along"]

    assert count(blank_width=56.9, blank_length=58.1) == (8, 6)
    assert count(blank_width=56.85, blank_length=58.1) == (4, 6)
    assert count(blank_width=56.9, blank_length=58.05) == (6, 6)
    assert count(blank_width=58.1, blank_length=56.9) == (6, 8)
    assert count(blank_width=58.05, blank_length=56.9) == (6, 6)
    assert count(blank_width=58.1, blank_length=56.85) == (6, 4)


def test_strips_out_of_a_blank() -> None:
    found = strip()
    assert found["strips_out"] == math.floor(35.3 / (1.3 + 0.3 + 0.3)) == 18
    assert found["strip_run"] == 18 * 60
    # 19 strips of 1.6 with 18 kerfs of 0.3 just come out of 35.8.
    assert strip(blank_width=35.8)["strips_out"] == 19
    assert strip(blank_width=35.79)["strips_out"] == 18


def test_cautions_speak_up_where_they_must() -> None:
    def said(**given: Any) -> str:
        return " ".join(door.answer(NAME, given)["cautions"])

    assert "Only" not in said() and "blank at all" not in said() and "wanted" not in said()
    assert "stays under the pocket" in said(board_joint=3)
    assert "goes through" in said(board_joint=1.2) and "Only" not in said(board_joint=1.2)
    assert "blank at all" in said(blank_width=10, blank_length=10)
    assert "blank at all" in said(work="strip", strip_width=9, blank_width=9)
    assert "is wanted" in said(work="strip", shell_thickness=0.85)
    assert "snaps" in said(blank_hollow=0.5) and "snaps" not in said(blank_hollow=0.2)


@pytest.mark.parametrize("units", ["metric", "inch"])
@pytest.mark.parametrize(
    "inputs",
    [{}, {"fret_radius": 0}, {"piece_offset": 20, "piece_width": 8},
     {"pocket_floor": "tilted", "piece_offset": 14}, {"piece_width": 80, "fret_radius": 100},
     {"work": "strip"}, {"work": "strip", "curve_radius": 20, "strip_width": 10}],
)  # fmt: skip
def test_the_drawing_stays_on_its_paper(units: str, inputs: dict[str, Any]) -> None:
    request = {"calculator": NAME, "units": units, "inputs": inputs}
    drawing = json.loads(door.live(json.dumps(request)))["parts"]["drawings"]
    svg = ET.fromstring(drawing).find(".//{http://www.w3.org/2000/svg}svg")
    assert svg is not None
    _, _, wide, high = map(float, svg.attrib["viewBox"].split())
    points = [
        tuple(map(float, point.split(",")))
        for one in svg if "points" in one.attrib for point in one.attrib["points"].split()
    ]  # fmt: skip
    assert len(points) > 60
    assert all(0 <= x <= wide and 0 <= y <= high for x, y in points)
    for box in (one.attrib for one in svg if one.tag.endswith("rect")):
        assert float(box["width"]) > 0 and float(box["height"]) > 0
        assert float(box["y"]) + float(box["height"]) <= high
    if inputs == {}:
        # The shell's edges lie lower by the fall, in the scale of the pocket's depth.
        red = next(one for one in svg if one.get("class") == "accent open")
        ys = [float(point.split(",")[1]) for point in red.attrib["points"].split()]
        boxes = [one.attrib for one in svg if one.tag.endswith("rect")]
        whole = float(boxes[0]["height"])  # shell from its proud face to the pocket's floor
        drop = 400 - math.sqrt(400**2 - 21**2)
        assert (max(ys) - min(ys)) / whole == pytest.approx(drop / (1.25 + 0.1), rel=0.02)
