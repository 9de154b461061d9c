"""What must hold of strings side by side, whatever the shop."""

import json
import math
from itertools import pairwise
from typing import Any
from xml.etree import ElementTree

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calculators.engine import door
from calculators.engine.compute import Answer, work_out
from calculators.engine.inputs import Refused
from calculators.laws import string_places
from calculators.neck.string_spacing import calculator

from .svg_bounds import outside

GAUGES = st.lists(st.floats(0.2, 2.5), min_size=2, max_size=8)
SETS = st.fixed_dictionaries({
    "gauges": GAUGES,
    "plain_strings": st.integers(0, 2),
    "nut_rule": st.sampled_from(("gaps", "centres")),
    "bridge_rule": st.sampled_from(("gaps", "centres")),
    "edge_rule": st.sampled_from(("centres", "sides")),
    "string_spread_nut": st.floats(30, 60),
    "string_spread_bridge": st.floats(45, 90),
    "edge_margin": st.floats(2.5, 8),
    "fret_radius": st.sampled_from((0.0, 180.0, 400.0, 900.0)),
    "nut_height": st.floats(0, 0.5),
    "nut_height_bass": st.floats(0, 0.5),
    "slot_clearance": st.floats(0, 0.2),
    "wound_share": st.floats(30, 80),
    "plain_share": st.floats(80, 120),
    "fret_height": st.floats(0.5, 1.5),
    "board_joint": st.floats(3, 8),
    "blank_spare": st.floats(0, 2),
    "scale_length": st.floats(300, 900),
    "frets": st.integers(12, 24),
})  # fmt: skip


def answer(**given_inputs: Any) -> Answer:
    worked = work_out(calculator, given_inputs)
    assert isinstance(worked, Answer), worked
    return worked


def refusal(**given_inputs: Any) -> Refused:
    worked = work_out(calculator, given_inputs)
    assert isinstance(worked, list)
    return worked[0]


def sides(gauges: list[float], places: list[float]) -> list[float]:
    """Gaps between the near sides of neighbours."""
    strings = list(zip(gauges, places, strict=True))
    return [(p2 - d2 / 2) - (p1 + d1 / 2) for (d1, p1), (d2, p2) in pairwise(strings)]


@given(SETS)
@settings(max_examples=50)
def test_strings_and_gaps_fill_the_spread(kit: dict[str, Any]) -> None:
    worked = answer(**kit)
    v, rows = worked.values, worked.tables["nut"]
    bass_first = kit["gauges"][::-1]
    count = len(bass_first)
    assert v["strings_count"] == count
    assert v["gauge_sum"] == pytest.approx(sum(bass_first))
    assert (v["gauge_bass"], v["gauge_treble"]) == (bass_first[0], bass_first[-1])
    assert [row["string"] for row in rows] == [str(n) for n in range(count, 0, -1)]
    assert [row["gauge"] for row in rows] == bass_first
    places = [row["place"] for row in rows]
    for spread, where, rule, at, gap, pitch, least, most in (
        (kit["string_spread_nut"], "nut", kit["nut_rule"], places, "nut_gap", "nut_pitch",
         "nut_gap_least", "nut_gap_most"),
        (kit["string_spread_bridge"], "saddle", kit["bridge_rule"],
         [row["bridge_place"] for row in worked.tables["saddle"]], "saddle_gap", "saddle_pitch",
         "saddle_gap_least", "saddle_gap_most"),
    ):  # fmt: skip
        assert at[-1] - at[0] == pytest.approx(spread), where
        gaps = sides(bass_first, at)
        steps = [after - before for before, after in pairwise(at)]
        assert (v[least], v[most]) == pytest.approx((min(gaps), max(gaps)))
        if rule == "gaps":
            assert gaps == pytest.approx([v[gap]] * (count - 1))
            assert pitch not in v
        else:
            assert steps == pytest.approx([v[pitch]] * (count - 1))
            assert gap not in v
    even = [kit["string_spread_nut"] / (count - 1) * n for n in range(count)]
    gaps = sides(bass_first, even)
    assert v["middles_gap_least"] == pytest.approx(min(gaps))
    assert v["middles_gap_most"] == pytest.approx(max(gaps))


@given(SETS)
@settings(max_examples=50)
def test_the_edges(kit: dict[str, Any]) -> None:
    worked = answer(**kit)
    v, rows = worked.values, worked.tables["nut"]
    assert v["nut_width"] == pytest.approx(kit["string_spread_nut"] + 2 * kit["edge_margin"])
    assert rows[0]["place"] == pytest.approx(v["bass_edge"])
    assert v["nut_width"] - rows[-1]["place"] == pytest.approx(v["treble_edge"])
    assert v["bass_outside"] == pytest.approx(v["bass_edge"] - v["gauge_bass"] / 2)
    assert v["treble_outside"] == pytest.approx(v["treble_edge"] - v["gauge_treble"] / 2)
    assert v["bass_edge"] + v["treble_edge"] == pytest.approx(2 * kit["edge_margin"])
    if kit["edge_rule"] == "sides":
        assert v["bass_outside"] == pytest.approx(v["treble_outside"])
    else:
        assert v["bass_edge"] == pytest.approx(v["treble_edge"])


@given(SETS, st.sampled_from(["0.01 mm", "0.05 mm", "0.1 mm", "0.5 mm", "0.001 in", "1/64 in"]))
@settings(max_examples=50)
def test_slots_and_the_nut_s_top(kit: dict[str, Any], rule: str) -> None:
    worked = answer(**kit, rule=rule)
    v, rows = worked.values, worked.tables["nut"]
    step = {"0.01 mm": 0.01, "0.05 mm": 0.05, "0.1 mm": 0.1, "0.5 mm": 0.5, "0.001 in": 0.0254,
            "1/64 in": 25.4 / 64}[rule]  # fmt: skip
    assert v["graduation"] == pytest.approx(step)
    count = len(rows)
    marks = []
    for number, row in enumerate(rows):
        for name, mark in (("place", "mark"), ("bridge_place", "bridge_mark")):
            table = rows if name == "place" else worked.tables["saddle"]
            exact, marked = table[number][name], table[number][mark]
            assert abs(marked - exact) <= step / 2 + 1e-6
            assert marked / step == pytest.approx(round(marked / step), abs=1e-6)
        marks.append(row["mark"])
        assert row["slot_width"] == pytest.approx(row["gauge"] + kit["slot_clearance"])
        assert row["wall"] + row["slot_width"] / 2 == pytest.approx(row["place"])
        plain = int(row["string"]) <= kit["plain_strings"]
        share = kit["plain_share"] if plain else kit["wound_share"]
        assert row["slot_depth"] / row["gauge"] * 100 == pytest.approx(share)
        leaf = kit["nut_height_bass"] * (1 - number / (count - 1)) + (
            kit["nut_height"] * number / (count - 1)
        )
        assert row["floor"] == pytest.approx(kit["fret_height"] + leaf)
        radius, out = kit["fret_radius"], row["place"] - v["nut_width"] / 2
        fall = radius * (1 - math.cos(math.asin(out / radius))) if radius else 0
        assert row["top"] == pytest.approx(
            kit["board_joint"] - fall + row["floor"] + row["slot_depth"]
        )
    gaps = sides([row["gauge"] for row in rows], marks)
    assert v["mark_difference"] == pytest.approx(max(gaps) - min(gaps), abs=1e-9)
    tops = [row["top"] for row in rows]
    assert (v["lowest_top"], v["highest_top"]) == (min(tops), max(tops))
    assert v["blank_height"] == pytest.approx(max(tops) + kit["blank_spare"])
    assert v["floor_treble"] == pytest.approx(rows[-1]["floor"])
    assert v["floor_bass"] == pytest.approx(rows[0]["floor"])


@given(SETS)
@settings(max_examples=40)
def test_strings_run_straight_along_the_neck(kit: dict[str, Any]) -> None:
    worked = answer(**kit)
    v, rows = worked.values, worked.tables["by_fret"]
    nut = [row["place"] - v["bass_edge"] for row in worked.tables["nut"]]
    saddle = [row["bridge_place"] for row in worked.tables["saddle"]]
    bass_first = kit["gauges"][::-1]
    assert [row["fret"] for row in rows] == list(range(kit["frets"] + 1))
    for row in rows:
        along = row["fret_from_nut"] / kit["scale_length"]
        assert along == pytest.approx(1 - math.exp2(-row["fret"] / 12))
        places = [a * (1 - along) + b * along for a, b in zip(nut, saddle, strict=True)]
        gaps = sides(bass_first, places)
        assert row["spread"] == pytest.approx(places[-1] - places[0])
        assert row["step"] == pytest.approx(row["spread"] / (len(nut) - 1))
        assert (row["narrowest"], row["widest"]) == pytest.approx((min(gaps), max(gaps)))
        assert row["board_width"] == pytest.approx(row["spread"] + 2 * kit["edge_margin"])
    assert (v["octave_gap_least"], v["octave_gap_most"]) == pytest.approx(
        (rows[12]["narrowest"], rows[12]["widest"])
    )
    for row in worked.tables["saddle"]:
        assert row["from_centre"] == pytest.approx(
            row["bridge_place"] - kit["string_spread_bridge"] / 2
        )


@given(GAUGES, st.floats(30, 90))
@settings(max_examples=40)
def test_the_even_gap_is_a_mean_and_turns_round_with_the_strings(
    gauges: list[float], spread: float
) -> None:
    gap = string_places.even_gap_mm(gauges, spread)
    middles = string_places.places_mm(gauges, spread, "centres")
    gaps = string_places.gaps_mm(gauges, middles)
    assert gap == pytest.approx(sum(gaps) / len(gaps))
    assert string_places.even_gap_mm(gauges[::-1], spread) == pytest.approx(gap)
    places = string_places.places_mm(gauges, spread, "gaps")
    other = string_places.places_mm(gauges[::-1], spread, "gaps")
    assert other == pytest.approx([spread - place for place in reversed(places)])
    alike = string_places.places_mm([gauges[0]] * 5, spread, "gaps")
    assert alike == pytest.approx(string_places.places_mm([gauges[0]] * 5, spread, "centres"))


def test_thousandths_are_read_as_such() -> None:
    mil = answer(gauges_in="mil", gauges_mil="12 16 24 32 42 53")
    mm = answer(gauges=[0.3048, 0.4064, 0.6096, 0.8128, 1.0668, 1.3462])
    for one, other in zip(mil.tables["nut"], mm.tables["nut"], strict=True):
        assert {k: v for k, v in one.items() if k != "string"} == pytest.approx(
            {k: v for k, v in other.items() if k != "string"}
        )
    typed = answer(gauges="12 thou, 16 thou, .61 mm, 32 thou, 42 thou, 53 thou")
    assert typed.values["gauge_treble"] == pytest.approx(0.3048)


@pytest.mark.parametrize(
    ("given_inputs", "blames"),
    [
        ({"plain_strings": 7}, "plain_strings"),
        ({"fret_radius": 99}, "fret_radius"),
        ({"gauges": [2.5] * 6, "string_spread_nut": 14.9}, "string_spread_nut"),
        ({"gauges": [2.5] * 6, "string_spread_bridge": 14.9}, "string_spread_bridge"),
        ({"edge_margin": 0.6}, "edge_margin"),
    ],
)
def test_what_cannot_be_is_refused(given_inputs: dict[str, Any], blames: str) -> None:
    refused = refusal(**given_inputs)
    assert refused.input == blames
    assert refused.why and refused.allowed


def test_what_just_can_be_is_answered() -> None:
    assert answer(plain_strings=6).tables["nut"][0]["slot_depth"] == pytest.approx(1.346)
    answer(fret_radius=100)
    answer(gauges=[2.5] * 6, string_spread_nut=15.01, string_spread_bridge=15.01)
    assert answer(edge_margin=0.673).values["bass_outside"] == pytest.approx(0, abs=1e-12)


def test_words_follow_the_figures() -> None:
    assert "from string to string" in answer().values["verdict"]
    assert "middle to middle" in answer(nut_rule="centres").values["verdict"]
    assert "crowd" in answer().values["rule_words"]
    assert "come to the same" in answer(gauges=[0.5, 0.5, 0.5]).values["rule_words"]
    near = answer(gauges=[0.5, 0.514, 0.528]).values
    assert 0.006 < near["middles_gap_most"] - near["middles_gap_least"] < 0.015
    assert "crowd" in near["rule_words"]
    assert "as the gauges" in answer(nut_rule="centres").values["rule_words"]
    assert "too coarse" in answer(rule="0.5 mm").values["mark_words"]
    assert "too coarse" not in answer(rule="0.1 mm").values["mark_words"]
    # Middles are even and gaps are not: the rule is not to blame for that.
    assert "too coarse" not in answer(rule="0.01 mm", nut_rule="centres").values["mark_words"]


@pytest.mark.parametrize(
    ("given_inputs", "words"),
    [
        ({"edge_margin": 2.6}, "slips over"),
        ({"string_spread_nut": 26}, "fingertip"),
        ({"slot_clearance": 0.11}, "wander"),
        ({"slot_clearance": 0.01}, "ping"),
    ],
)
def test_cautions_come_when_they_are_due(given_inputs: dict[str, Any], words: str) -> None:
    assert any(words in text for text in answer(**given_inputs).cautions)
    assert not any(words in text for text in answer().cautions)


def test_the_shop_s_nut() -> None:
    """The Fourteen by hand: 36.5 less 4.547 of gauges and back half of the outer two, over five."""
    v = answer().values
    assert v["nut_gap"] == pytest.approx((36.5 - 4.547 + (1.346 + 0.305) / 2) / 5)
    assert v["nut_width"] == 43.5
    assert v["floor_bass"] == pytest.approx(1.2)


SIZES: list[dict[str, Any]] = [
    {},
    {"gauges": [0.64, 0.84, 1.04, 0.76], "string_spread_nut": 29, "fret_radius": 0},
    {"gauges": [0.3] * 12, "string_spread_nut": 100, "string_spread_bridge": 150},
    {"gauges": [0.3, 0.4], "string_spread_nut": 10, "string_spread_bridge": 10, "frets": 1},
    {"board_joint": 0, "fret_height": 2.5, "gauges": [4, 4], "nut_rule": "centres"},
]


@pytest.mark.parametrize("units", ["metric", "inch"])
@pytest.mark.parametrize("size", SIZES)
def test_pictures_stay_on_their_paper(units: str, size: dict[str, Any]) -> None:
    request = {
        "calculator": "string-spacing",
        "units": units,
        "inputs": {"edge_rule": "sides", "plain_strings": 1, **size},
    }
    drawings = json.loads(door.live(json.dumps(request)))["parts"]["drawings"]
    svgs = ["<svg" + part.partition("</svg>")[0] + "</svg>" for part in drawings.split("<svg")[1:]]
    assert len(svgs) == 2
    ids = []
    for svg in svgs:
        assert outside(svg) == []
        ids += [e.attrib["id"] for e in ElementTree.fromstring(svg).iter() if "id" in e.attrib]
    assert len(set(ids)) == len(ids) == 4


def test_the_nut_is_drawn_to_scale() -> None:
    worked = answer(edge_rule="sides")
    request = json.dumps({"calculator": "string-spacing", "inputs": {"edge_rule": "sides"}})
    drawings = json.loads(door.live(request))["parts"]["drawings"].split("<svg")
    root = ElementTree.fromstring("<svg" + drawings[1].partition("</svg>")[0] + "</svg>")
    strings = [e.attrib for e in root.iter() if e.attrib.get("class") == "metal"]
    rows = worked.tables["nut"]
    assert len(strings) == len(rows)
    scale = 560 / worked.values["nut_width"]
    for circle, row in zip(strings, rows, strict=True):
        assert (float(circle["cx"]) - 40) / scale == pytest.approx(row["place"], abs=0.01)
        assert float(circle["r"]) / scale == pytest.approx(row["gauge"] / 2, abs=0.01)
        up = row["top"] - row["slot_depth"] + row["gauge"] / 2
        first = rows[0]["top"] - rows[0]["slot_depth"] + rows[0]["gauge"] / 2
        assert (float(strings[0]["cy"]) - float(circle["cy"])) / scale == pytest.approx(
            up - first, abs=0.02
        )
    nut = next(e.attrib for e in root.iter() if e.attrib.get("class") == "felt")
    crest = [tuple(map(float, p.split(","))) for p in nut["points"].split()][:-2]
    assert len(crest) == len(rows) + 2
    assert crest[0][1] == crest[1][1]
    assert crest[-1][1] == crest[-2][1]
    for (_, y), row in zip(crest[1:-1], rows, strict=True):
        assert (crest[1][1] - y) / scale == pytest.approx(row["top"] - rows[0]["top"], abs=0.02)
    plan = ElementTree.fromstring("<svg" + drawings[2].partition("</svg>")[0] + "</svg>")
    lines = [e.attrib for e in plan.iter() if e.attrib.get("class") == "dim"]
    wide = 170 / (54 + 7)
    for line, row, saddle in zip(lines, rows, worked.tables["saddle"], strict=True):
        middle = 44 + 85
        assert float(line["y1"]) == pytest.approx(middle + (21.75 - row["place"]) * wide, abs=0.02)
        assert float(line["y2"]) == pytest.approx(middle - saddle["from_centre"] * wide, abs=0.02)
