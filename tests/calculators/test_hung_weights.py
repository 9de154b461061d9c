"""The bent neck: laws of the cantilever, the weights that match the strings, what is refused."""

import json
import math
import xml.etree.ElementTree as ET
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as some
from scipy.integrate import quad, solve_bvp

from calculators.engine import door
from calculators.laws import tapered_cantilever as law
from calculators.strings._hung_solved import string_height_along, thickness_along

few = settings(max_examples=30)
FINE = {
    "scale_length": 640, "body_joint_fret": 14, "thickness_first": 20, "thickness_second": 23,
    "second_fret": 8, "neck_width_nut": 44, "board_end_width": 58, "last_fret": 19,
    "axis_share": 47, "fret_height": 1.2, "nut_height": 0.3, "action_bass": 2.6,
    "action_treble": 1.6, "mean_gauge": 0.9, "string_tension": 650, "hung_weight": 5,
    "measured_sag": 0.3,
}  # fmt: skip


def answer(**chosen: Any) -> dict[str, Any]:
    found = door.answer("hung-weights", chosen)
    assert "refused" not in found, found
    return found


def results(**chosen: Any) -> dict[str, Any]:
    return {name: one["value"] for name, one in answer(**chosen)["results"].items()}


def steps(**chosen: Any) -> dict[str, Any]:
    found: dict[str, Any] = {}
    for step in answer(**chosen)["steps"]:
        if "value" in step:
            found[step["name"]] = step["value"]
        found.update({name: one["value"] for name, one in step.get("gives", {}).items()})
    return found


def rows(**chosen: Any) -> list[dict[str, Any]]:
    one = answer(**chosen)["tables"]["neck"]
    return [dict(zip(one["columns"], row, strict=True)) for row in one["rows"]]


# ---- the law


@given(some.floats(1, 100), some.floats(200, 600), some.floats(50, 900), some.integers(1, 30))
@few
def test_an_even_cantilever_follows_the_closed_forms(
    load: float, length: float, stiffness: float, pieces: int
) -> None:
    places = law.cut_places(length, (), pieces)
    bent = law.bend(places, law.point_load_moment(load, 0), lambda _: stiffness)
    metres = length / 1000
    for place, off, slope in zip(*bent, strict=True):
        x = place / 1000
        wanted = load * (2 * metres**3 - 3 * metres**2 * x + x**3) / (6 * stiffness)
        assert off == pytest.approx(wanted * 1000, rel=1e-9, abs=1e-12)
        turned = load * (metres**2 - x**2) / (2 * stiffness)
        assert slope == pytest.approx(turned, rel=1e-9, abs=1e-15)
    constant = law.bend(places, lambda _: 7.0, lambda _: stiffness)
    assert constant.offs_mm[0] == pytest.approx(7 * metres**2 / (2 * stiffness) * 1000)


def test_named_cases() -> None:
    assert law.end_load(20, 300, 9.35712)["drop"] == pytest.approx(19.2366882)
    assert law.even_load_share(1) == pytest.approx(1 / 8)


def test_places_hold_every_cut_inside_and_the_two_ends() -> None:
    assert law.cut_places(100, (-5, 0, 33.3, 100, 120), 4) == [0, 25, 33.3, 50, 75, 100]


@given(some.floats(-80, 150), some.floats(0.3, 3), some.floats(150, 250))
@few
def test_a_tapered_neck_agrees_with_the_boundary_value_problem(
    at: float, taper: float, read: float
) -> None:
    length, load = 350.0, 40.0

    def stiffness(place: float) -> Any:
        return 300 * (1 + taper * place / length) ** 3

    places = law.cut_places(length, (at, read, (read + length) / 2), 20)
    bent = law.bend(places, law.point_load_moment(load, at), stiffness)

    def slopes(x: Any, y: Any) -> Any:
        return np.vstack([y[1], load * np.maximum(0, x - at / 1000) / stiffness(x * 1000)])

    mesh = np.unique(np.round([*np.linspace(0, length, 60), max(at, 0.0), read], 3)) / 1000
    solved = solve_bvp(
        slopes, lambda a, b: np.array([b[0], b[1]]), mesh, np.zeros((2, len(mesh))), tol=1e-9
    )
    for place in (0.0, read, (read + length) / 2):
        wanted = solved.sol(place / 1000)[0] * 1000
        assert bent.off_at(place) == pytest.approx(wanted, rel=2e-5, abs=1e-6)
    middle = solved.sol((read + length) / 2000)[0] * 1000
    hollow = solved.sol(read / 1000)[0] * 500 - middle
    assert law.hollow_mm(bent, read) == pytest.approx(hollow, rel=1e-3, abs=1e-5)


def test_an_even_moment_makes_a_hollow_of_an_eighth() -> None:
    places = law.cut_places(360, (40, 200), 12)
    bent = law.bend(places, lambda _: 9.0, lambda _: 400.0)
    assert law.hollow_mm(bent, 40.0) == pytest.approx(9 * 0.32**2 / (8 * 400) * 1000)


def test_a_load_bends_nothing_outside_itself() -> None:
    moment = law.point_load_moment(50, 120)
    assert moment(100) == moment(120) == 0
    assert moment(220) == pytest.approx(5)
    assert law.point_load_moment(50, -30)(0) == pytest.approx(1.5)


# ---- strings over the neck


def test_lines_along_the_neck() -> None:
    t = thickness_along(600, 20, 23, 12)
    first, twelfth = 600 * (1 - 2 ** (-1 / 12)), 300.0
    assert t(first) == 20 and t(twelfth) == pytest.approx(23)
    assert t((first + twelfth) / 2) == pytest.approx(21.5)
    lifted = string_height_along(600, 0.2, 2.0, 0)
    assert (lifted(0), lifted(300)) == (0.2, 2.0)
    assert lifted(150) == pytest.approx(1.1)
    pressed = string_height_along(600, 0.2, 2.0, 12)
    assert pressed(0) == 0.2 and pressed(300) == 0
    assert pressed(150) == pytest.approx(0.1)
    assert pressed(450) == pytest.approx(0.5 * (2 * 2.0 - 0.2))


@given(some.integers(1, 12))
@few
def test_pressing_the_strings_bends_the_neck_less(fret: int) -> None:
    assert results(pressed_fret=fret)["sag_strings"] < results()["sag_strings"]


# ---- the calculator


def test_the_shop_weights_come_out() -> None:
    assert 5.3 < results()["weight_first"] < 5.5
    twelve = {
        "scale_length": 632, "body_joint_fret": 12, "last_fret": 19, "thickness_first": 21.5,
        "thickness_second": 23, "second_fret": 8, "neck_width_nut": 46, "board_end_width": 58,
        "action_bass": 2.3, "action_treble": 1.7, "string_tension": 690, "hung_weight": 5.8,
    }  # fmt: skip
    assert 5.7 < results(**twelve)["weight_first"] < 5.9
    assert results()["bow_strings"] == pytest.approx(0, abs=0.05)
    assert abs(results()["rod_turn"]) <= 0.5


def reference(pair: float | None = None, hang: float = 0.0) -> dict[str, float]:
    """The neck of ``FINE`` by quadrature, written afresh in metres."""
    f = {name: float(value) for name, value in FINE.items()}

    def place(fret: float) -> float:
        return f["scale_length"] / 1000 * (1 - 2 ** (-fret / 12))

    length, read = place(14), place(1)

    def thick(x: float) -> float:
        return 20 + 3 * (x - place(1)) / (place(8) - place(1))

    def shape(x: float) -> float:
        return (44 + 14 * x / place(19)) * thick(x) ** 3 / (44 * thick(0) ** 3)

    def strings(x: float) -> float:
        line = 0.3 + (2.1 - 0.3) * x / 0.32
        return 650 * (0.47 * thick(x) + 1.2 + 0.45 + line) / 1000

    def kilo(at: float) -> Any:
        return lambda x: 9.80665 * max(0.0, x + at / 1000)

    def off(moment: Any, x: float) -> float:
        return quad(lambda s: moment(s) / shape(s) * (s - x), x, length, epsabs=1e-13)[0] * 1000

    def hollow(moment: Any) -> float:
        return off(moment, read) / 2 - off(moment, (read + length) / 2)

    stiffness = 5 * hollow(kilo(hang)) / 0.3
    found = {
        "stiffness_nut": stiffness, "sag_strings": hollow(strings) / stiffness,
        "drop_strings": off(strings, 0) / stiffness,
        "weight_first": hollow(strings) / hollow(kilo(hang)),
    }  # fmt: skip
    if pair is not None:
        a = [[hollow(kilo(hang)), hollow(kilo(pair))], [off(kilo(hang), 0), off(kilo(pair), 0)]]
        found["weight_first"], found["weight_second"] = np.linalg.solve(
            a, [hollow(strings), off(strings, 0)]
        )
    return found


@pytest.mark.parametrize(
    ("pair", "hang"), [(None, 0), (None, 40), (None, -30), (120, 0), (-40, 60)]
)
def test_the_whole_agrees_with_quadrature(pair: float | None, hang: float) -> None:
    chosen = {**FINE, "hang_place": hang}
    if pair is not None:
        chosen.update(arrangement="two", pair_place=pair)
    found = steps(**chosen)
    for name, wanted in reference(pair, hang).items():
        assert found[name] == pytest.approx(wanted, rel=1e-7), name
    assert found["sag_hung"] == pytest.approx(0.3)
    if pair is not None:
        assert found["drop_weights"] == pytest.approx(found["drop_strings"])


def test_the_weight_found_makes_the_hollow_of_the_strings() -> None:
    base = results(**FINE)
    again = results(**{
        **FINE, "hung_weight": base["weight_first"], "measured_sag": base["sag_strings"],
    })  # fmt: skip
    assert again["hung_share"] == pytest.approx(100)
    assert again["stiffness_nut"] == pytest.approx(base["stiffness_nut"])
    assert again["weight_first"] == pytest.approx(base["weight_first"])


@given(some.floats(200, 1500), some.floats(0.1, 1.0))
@few
def test_weight_goes_with_the_pull_and_not_with_the_stiffness(pull: float, sag: float) -> None:
    one = results(**{**FINE, "string_tension": pull, "measured_sag": sag})
    base = results(**FINE)
    assert one["weight_first"] / base["weight_first"] == pytest.approx(pull / 650)
    assert one["stiffness_nut"] * sag == pytest.approx(base["stiffness_nut"] * 0.3)
    assert one["sag_strings"] == pytest.approx(base["sag_strings"] * pull / 650 * sag / 0.3)


def test_stiffness_guessed_from_the_wood() -> None:
    chosen = {**FINE, "stiffness_from": "wood", "neck_modulus": 12, "section_fill": 70}
    del chosen["measured_sag"]
    places = 640 * (1 - 2 ** (-1 / 12)), 640 * (1 - 2 ** (-8 / 12))
    nut = 20 - 3 * places[0] / (places[1] - places[0])
    wanted = 12e9 * 0.7 * 0.044 * (nut / 1000) ** 3 / 12
    assert results(**chosen)["stiffness_nut"] == pytest.approx(wanted)
    assert "mostly too large" in " ".join(answer(**chosen)["cautions"])
    assert results(**chosen)["weight_first"] == pytest.approx(results(**FINE)["weight_first"])


def test_an_even_neck_follows_the_rule() -> None:
    even = {
        **FINE, "thickness_first": 21, "thickness_second": 21, "board_end_width": 44,
        "nut_height": 2, "action_bass": 2, "action_treble": 2,
    }  # fmt: skip
    for hang in (0, 50):
        found = results(**even, hang_place=hang)
        assert found["rule_weight"] == pytest.approx(found["weight_first"], rel=1e-9)
    height = 0.47 * 21 + 1.2 + 0.45 + 2
    assert found["middle_moment"] == pytest.approx(0.65 * height)
    # Constant moment: hollow M·s²/(8EI).
    span = 640 * (2 ** (-1 / 12) - 2 ** (-14 / 12))
    wanted = 0.65 * height * (span / 1000) ** 2 / (8 * found["stiffness_nut"]) * 1000
    assert found["sag_strings"] == pytest.approx(wanted)


def test_the_steps_by_hand() -> None:
    found = steps(**FINE, hang_place=20, first_read_fret=2, relief=0.25, rod_effect=0.4,
                  bow_loaded=0.05, bow_free=-0.15)  # fmt: skip
    length, read = 640 * (1 - 2 ** (-14 / 12)), 640 * (1 - 2 ** (-2 / 12))
    middle = (length + read) / 2
    assert found["neck_length"] == pytest.approx(length)
    assert found["read_place"] == pytest.approx(read)
    assert found["middle_place"] == pytest.approx(middle)
    assert found["hung_pull"] == pytest.approx(5 * 9.80665)
    assert found["hung_moment"] == pytest.approx(5 * 9.80665 * (length + 20) / 1000)
    assert found["hung_share"] == pytest.approx(100 * found["sag_hung"] / found["sag_strings"])
    thick = thickness_along(640, 20, 23, 8)(middle)
    assert found["middle_thickness"] == pytest.approx(thick)
    height = 0.47 * thick + 1.2 + 0.45 + 0.3 + 1.8 * middle / 320
    assert found["middle_height"] == pytest.approx(height)
    assert found["middle_moment"] == pytest.approx(0.65 * height)
    assert found["rule_weight"] == pytest.approx(650 * height / (middle + 20) / 9.80665)
    ratio = found["sag_strings"] / found["sag_hung"]
    assert found["bow_strings"] == pytest.approx(-0.15 + 0.2 * ratio)
    assert found["rod_turn"] == pytest.approx((0.25 - found["bow_strings"]) / 0.4)


def test_the_table_and_the_curves() -> None:
    table = rows(**FINE)
    assert [row["fret"] for row in table] == list(range(15))
    found = results(**FINE)
    for row in table:
        thick = thickness_along(640, 20, 23, 8)(row["place"])
        assert row["place"] == pytest.approx(640 * (1 - 2 ** (-row["fret"] / 12)))
        assert row["thickness"] == pytest.approx(thick)
        height = 0.47 * thick + 1.65 + 0.3 + 1.8 * row["place"] / 320
        assert row["height"] == pytest.approx(height)
        assert row["string_moment"] == pytest.approx(0.65 * height)
        assert row["weight_moment"] == pytest.approx(
            found["weight_first"] * 9.80665 * row["place"] / 1000
        )
    for name in ("hollow_strings", "hollow_weights"):
        assert table[1][name] == pytest.approx(0, abs=1e-12)
        assert table[-1][name] == pytest.approx(0, abs=1e-12)
        assert max(row[name] for row in table) >= found["sag_strings"] * 0.98
    drops = {"hollow_strings": "drop_strings", "hollow_weights": "drop_weights"}
    length, read = table[-1]["place"], table[1]["place"]
    for name, drop in drops.items():
        # At the nut: the line through fret 1 and joint, carried on, less the drop itself.
        line = found[drop] + table[0][name]
        assert line > 0 and line * (length - read) / length < found[drop]
    gap = max(abs(row["hollow_strings"] - row["hollow_weights"]) for row in table[1:])
    assert gap <= found["worst_gap"] <= gap * 1.1
    pair = results(**FINE, arrangement="two")
    assert pair["worst_gap"] < found["worst_gap"] / 5
    # A pair's moments add up along the neck.
    both = rows(**FINE, arrangement="two")[-1]
    given = steps(**FINE, arrangement="two")
    wanted = given["weight_first"] * length + given["weight_second"] * (length + 100)
    assert both["weight_moment"] == pytest.approx(9.80665 * wanted / 1000)


def test_verdicts_turn_where_they_should() -> None:
    right = results(**FINE)["weight_first"]
    for share, words in (
        (1.019, "is right"), (0.981, "is right"), (1.021, "is heavier"), (0.979, "is lighter"),
    ):  # fmt: skip
        chosen = {**FINE, "hung_weight": right * share}
        assert words in results(**chosen)["verdict"]
    assert "The first has to lift" in results(**FINE, arrangement="two")["verdict"]
    swapped = {**FINE, "arrangement": "two", "hang_place": 100, "pair_place": 0}
    assert "The second has to lift" in results(**swapped)["verdict"]


def test_words_of_the_rod() -> None:
    bow = results()["bow_strings"]
    for more, words in ((0.024, "Leave it"), (0.026, "Under the strings")):
        assert results(relief=bow + more)["rod_words"].startswith(words)
    assert "let the rod out by 0.40 turn" in results()["rod_words"]
    hollow = results(bow_loaded=0.4, bow_free=0.1)
    assert "more hollow than wanted" in hollow["rod_words"] and hollow["rod_turn"] < 0
    assert "bow_strings" not in results(rod="none")
    flat = results(bow_loaded=0.2, bow_free=0.0, relief=0.2)
    assert flat["rod_words"].startswith("Leave it")
    assert "half a turn" in " ".join(answer(relief=0.3)["cautions"])
    assert "half a turn" not in " ".join(answer(relief=0.2)["cautions"])


def test_cautions_about_the_head_and_the_nut() -> None:
    assert "easily broken" not in " ".join(answer(hang_place=15)["cautions"])
    assert "easily broken" in " ".join(answer(hang_place=16)["cautions"])
    assert "easily broken" in " ".join(answer(arrangement="two")["cautions"])
    assert "Read the bow, never the nut" in " ".join(answer()["cautions"])
    assert "never the nut" not in " ".join(answer(arrangement="two")["cautions"])


REFUSALS: list[tuple[dict[str, Any], str, str]] = [
    ({"arrangement": "two", "pair_place": 9}, "pair_place", "nearly the same place"),
    ({"board_end_width": 43}, "board_end_width", "narrower at its last fret"),
    ({"pressed_fret": 12, "body_joint_fret": 12}, "pressed_fret", "not over the neck"),
    ({"bow_loaded": -0.2}, "bow_loaded", "more hollow"),
    ({"thickness_first": 30, "thickness_second": 10}, "thickness_second", "less than 8 mm"),
    ({"string_tension": 3000, "measured_sag": 3}, "hung_weight", "no neck does"),
    ({"hang_place": -60, "scale_length": 250, "body_joint_fret": 8, "first_read_fret": 3},
     "hang_place", "hardly bends it"),
]  # fmt: skip


@pytest.mark.parametrize(("chosen", "blamed", "why"), REFUSALS)
def test_what_cannot_be_is_refused(chosen: dict[str, Any], blamed: str, why: str) -> None:
    first = door.answer("hung-weights", chosen)["refused"][0]
    assert first["input"] == blamed and why in first["why"] and first["allowed"]


def test_just_possible_figures_are_answered() -> None:
    answer(arrangement="two", pair_place=10)
    answer(board_end_width=43.5)
    answer(pressed_fret=11, body_joint_fret=12)
    base = results(**FINE)["sag_strings"]
    for wanted in (5.99, 6.01):
        chosen = {**FINE, "string_tension": 2000}
        chosen["measured_sag"] = wanted / (base * 2000 / 650) * 0.3
        found = door.answer("hung-weights", chosen)
        assert ("refused" in found) == (wanted > 6)


@pytest.mark.parametrize("units", ["metric", "inch"])
@pytest.mark.parametrize("arrangement", ["one", "two"])
def test_pictures(units: str, arrangement: str) -> None:
    chosen = {"arrangement": arrangement}
    request = {"calculator": "hung-weights", "units": units, "inputs": chosen}
    drawings = json.loads(door.live(json.dumps(request)))["parts"]["drawings"]
    figures = ET.fromstring(f"<all>{drawings}</all>")
    pictures = figures.findall("figure/{http://www.w3.org/2000/svg}svg")
    assert len(pictures) == 2
    words = [one.text or "" for one in pictures[0].iter() if one.tag.endswith("text")]
    assert sum("lifts" in word for word in words) == (arrangement == "two")
    squares = [
        one for one in pictures[0].iter()
        if one.tag.endswith("rect") and one.get("class") == "metal"
    ]  # fmt: skip
    assert len(squares) == 1
    curves = [
        one for one in pictures[1].iter()
        if one.tag.endswith("polyline") and (one.get("class") or "").split()[0] in ("accent", "second")
    ]  # fmt: skip
    tops = []
    for curve in curves:
        heights = [float(pair.split(",")[1]) for pair in (curve.get("points") or "").split()]
        assert heights[0] == heights[-1] == max(heights)
        tops.append(min(heights))
    assert len(tops) == 2 and math.isclose(*tops, rel_tol=0.05)
