"""What must hold of frets in their slots, whatever the shop."""

import json
import math
from typing import Any
from xml.etree import ElementTree

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from scipy.integrate import quad

from calculators.engine import door
from calculators.engine.compute import Answer, work_out
from calculators.engine.inputs import Refused
from calculators.laws import wedged_frets
from calculators.neck._fret_seating_proof import two_layers
from calculators.neck.fret_seating import calculator

from .svg_bounds import outside

NECKS = st.fixed_dictionaries({
    "board_wood": st.just("own"),
    "own_board_modulus": st.floats(8, 20),
    "own_board_crush": st.floats(40, 90),
    "neck_wood": st.just("own"),
    "own_neck_modulus": st.floats(6, 15),
    "neck_width": st.floats(35, 65),
    "board_joint": st.floats(4.2, 9),
    "neck_thickness": st.floats(15, 30),
    "slot_depth": st.floats(2.2, 3.5),
    "tang_depth": st.floats(1, 2.2),
    "scale_length": st.floats(350, 900),
    "body_joint_fret": st.integers(8, 22),
})  # fmt: skip
MPSI, PSI = 6.894757, 0.006894757


def answer(**given_inputs: Any) -> Answer:
    worked = work_out(calculator, given_inputs)
    assert isinstance(worked, Answer), worked
    return worked


def values(**given_inputs: Any) -> dict[str, Any]:
    return answer(**given_inputs).values


def refusal(**given_inputs: Any) -> Refused:
    worked = work_out(calculator, given_inputs)
    assert isinstance(worked, list)
    return worked[0]


def sums(neck: dict[str, Any]) -> tuple[list[float], list[float]]:
    """Moduli times width times height to the power 0, 1, 2: the whole section, the tangs' layer."""
    width, board = neck["neck_width"], neck["board_joint"]
    deep = neck["neck_thickness"] - board
    shaft, face = neck["own_neck_modulus"], neck["own_board_modulus"]

    def power(order: int) -> tuple[float, float]:
        # Heights of the half ellipse by its angle: y = -h·sin a, width b·cos a.
        ellipse = quad(
            lambda a: (-deep * math.sin(a)) ** order * width * math.cos(a) * deep * math.cos(a),
            0, math.pi / 2,
        )[0]  # fmt: skip
        under = quad(lambda y: y**order * width, 0, board - neck["slot_depth"])[0]
        tangs = quad(lambda y: y**order * width, board - neck["tang_depth"], board)[0]
        return shaft * ellipse + face * (under + tangs), face * tangs

    both = [power(order) for order in (0, 1, 2)]
    return [one for one, _ in both], [two for _, two in both]


def free_strain(neck: dict[str, Any], strain: float) -> tuple[float, float]:
    """Stretch at the joint of board and neck, and curvature in 1/mm, by force and moment."""
    (a, b, c), (p, q, _) = sums(neck)
    whole = a * c - b * b
    return strain * (p * c - q * b) / whole, strain * (a * q - b * p) / whole


# The section


@given(NECKS)
@settings(max_examples=30)
def test_the_section_by_quadrature(neck: dict[str, Any]) -> None:
    v = values(**neck, beads_from="none", bow_wanted=0)
    (a, b, c), _ = sums(neck)
    assert v["neutral"] == pytest.approx(b / a, rel=1e-6, abs=1e-6)
    assert v["stiffness"] == pytest.approx((c - b * b / a) / 1000, rel=1e-6)
    assert v["kink_rate"] == pytest.approx(1000 * free_strain(neck, 1)[1], rel=1e-6)
    assert v["shaft_depth"] == pytest.approx(neck["neck_thickness"] - neck["board_joint"])
    layers = (
        wedged_frets.half_ellipse(neck["own_neck_modulus"], neck["neck_width"], v["shaft_depth"]),
        wedged_frets.strip(
            neck["own_board_modulus"], neck["neck_width"], 0,
            neck["board_joint"] - neck["slot_depth"],
        ),
        wedged_frets.strip(
            neck["own_board_modulus"], neck["neck_width"],
            neck["board_joint"] - neck["tang_depth"], neck["board_joint"],
        ),
    )  # fmt: skip
    assert wedged_frets.neutral_mm(layers) == pytest.approx(v["neutral"], abs=1e-9)
    assert wedged_frets.stiffness_n_m2(layers) == pytest.approx(v["stiffness"])
    assert wedged_frets.curvature_per_m(layers, 2, 1) == pytest.approx(v["kink_rate"])


@given(NECKS, st.floats(0.01, 0.05))
@settings(max_examples=30)
def test_pressure_is_what_the_wood_is_held_back_by(neck: dict[str, Any], wedge: float) -> None:
    given_inputs = {**neck, "beads_from": "none", "bow_wanted": 0, "slot_width": 0.53 - wedge}
    worked = work_out(calculator, given_inputs)
    assume(isinstance(worked, Answer))
    assert isinstance(worked, Answer)
    v = worked.values
    joint, scale = neck["body_joint_fret"], neck["scale_length"]
    spaces = [scale * (math.exp2(-n / 12) - math.exp2(-(n + 1) / 12)) for n in range(joint)]
    pitch = (spaces[-1] + spaces[-2]) / 2
    assert v["closest_pitch"] == pytest.approx(pitch)
    assert v["wedge_strain"] == pytest.approx(100 * wedge / pitch)
    stretch, bend = free_strain(neck, wedge / pitch)
    middle = neck["board_joint"] - neck["tang_depth"] / 2
    held = wedge / pitch - stretch - bend * middle
    assert v["wedge_pressure"] == pytest.approx(1000 * neck["own_board_modulus"] * held, rel=1e-6)
    assert v["wedge_pressure"] * v["crush_wedge"] / wedge == pytest.approx(neck["own_board_crush"])


@given(st.floats(2, 20), st.floats(1, 10), st.floats(2, 20), st.floats(1, 10))
@settings(max_examples=40)
def test_two_layers_are_timoshenko_s(e1: float, t1: float, e2: float, t2: float) -> None:
    m, n, strain = t2 / t1, e2 / e1, 0.002
    over = 3 * (1 + m) ** 2 + (1 + m * n) * (m * m + 1 / (m * n))
    theirs = 1000 * 6 * strain * (1 + m) ** 2 / ((t1 + t2) * over)
    assert two_layers(e1, t1, e2, t2, strain) == pytest.approx(theirs, rel=1e-9)
    assert two_layers(e1, t1, e2, t2, 2 * strain) == pytest.approx(2 * theirs)


def test_a_strip_cut_in_two_is_the_strip() -> None:
    whole = wedged_frets.strip(11, 10, 0, 6)
    cut = (wedged_frets.strip(11, 10, 0, 2.5), wedged_frets.strip(11, 10, 2.5, 6))
    assert wedged_frets.neutral_mm(cut) == pytest.approx(3)
    assert wedged_frets.stiffness_n_m2(cut) == pytest.approx(11 * 10 * 6**3 / 12 / 1000)
    assert wedged_frets.stiffness_n_m2((whole,)) == pytest.approx(11 * 10 * 6**3 / 12 / 1000)


@pytest.mark.parametrize(
    ("wood", "mpsi", "psi"),
    [("rosewood", 1.78, 9220), ("maple", 1.83, 7830), ("mahogany", 1.50, None),
     ("cedar", 1.44, None)],
)  # fmt: skip
def test_woods_are_the_handbook_s(wood: str, mpsi: float, psi: float | None) -> None:
    if psi is not None:
        v = values(board_wood=wood)
        assert v["board_modulus"] == pytest.approx(mpsi * MPSI, rel=1e-6)
        assert v["board_crush"] == pytest.approx(psi * PSI, rel=1e-6)
    if wood != "rosewood":
        assert values(neck_wood=wood)["neck_modulus"] == pytest.approx(mpsi * MPSI, rel=1e-6)


# The row of kinks


def kinked_line(scale: float, joint: int) -> list[float]:
    """Heights over the chord at nut and frets of a line that turns by 1 rad at each fret."""
    places = [scale * (1 - math.exp2(-n / 12)) for n in range(joint + 1)]
    height, slope, line = 0.0, 0.0, [0.0]
    for number in range(1, joint + 1):
        height += slope * (places[number] - places[number - 1])
        line.append(height)
        slope -= 1
    return [y - line[-1] * x / places[-1] for x, y in zip(places, line, strict=True)]


@given(st.floats(300, 1100), st.integers(5, 24))
@settings(max_examples=40)
def test_the_bow_is_that_of_the_bent_line(scale: float, joint: int) -> None:
    worked = answer(
        scale_length=scale, body_joint_fret=joint, beads_from="none", slot_width=0.52,
        bow_wanted=0,
    )  # fmt: skip
    v, rows = worked.values, worked.tables["line"]
    line = kinked_line(scale, joint)
    assert v["lever_sum"] == pytest.approx(max(line))
    assert v["kinked_frets"] == joint - 1
    assert [row["fret"] for row in rows] == list(range(joint + 1))
    kink = 0.01 * v["kink_rate"] / 1000
    assert v["kink"] == pytest.approx(1000 * kink)
    assert v["bow"] == pytest.approx(kink * max(line))
    assert v["bow_hundredth"] == pytest.approx(v["bow"])
    for row, height in zip(rows, line, strict=True):
        assert row["stands"] == pytest.approx(kink * height, abs=1e-12)
        assert row["fret_from_nut"] == pytest.approx(scale * (1 - math.exp2(-row["fret"] / 12)))
    top = rows[v["bow_fret"]]
    assert v["bow_at"] == top["fret_from_nut"]
    assert top["stands"] == pytest.approx(v["bow"])
    assert v["joint_place"] == pytest.approx(rows[-1]["fret_from_nut"])


def test_many_even_kinks_are_an_arc() -> None:
    count, length, turn = 2000, 350.0, 0.01
    places = [length * (n + 0.5) / count for n in range(count)]
    bow = wedged_frets.bow_under_kinks_mm(places, length, length / 2) * turn / count
    assert bow == pytest.approx(length * turn / 8, rel=1e-5)
    assert wedged_frets.bow_under_kinks_mm((100,), 350, 250) == pytest.approx(
        wedged_frets.bow_under_kinks_mm((250,), 350, 100)
    )


def test_strings_bend_the_neck_to_an_arc() -> None:
    v = values(string_moment=9.4)
    bend = 9.4 / v["stiffness"]  # 1/m
    assert v["string_bow"] == pytest.approx(v["joint_place"] ** 2 * bend / 8000)
    assert v["hollow_left"] == pytest.approx(v["string_bow"] - v["bow"])


# Wedge, trial, slot wanted


@given(
    st.floats(0.45, 0.6), st.floats(0.02, 0.35), st.floats(0.47, 0.62), st.floats(0.45, 0.62),
    st.floats(0.01, 0.3),
)  # fmt: skip
@settings(max_examples=60)
def test_a_fret_opens_its_slot_by_the_beads_or_by_the_tang(
    tang: float, beads: float, trial: float, slot: float, bow: float
) -> None:
    over = tang + beads
    assume(over >= 0.42)
    given_inputs = {
        "tang_thickness": tang, "tang_beads": over, "trial_slot": trial, "slot_width": slot,
        "bow_trial": bow, "bow_wanted": 0.1,
    }  # fmt: skip
    worked = work_out(calculator, given_inputs)
    if isinstance(worked, list):
        return
    v = worked.values
    a_mm = max(kinked_line(645, 14)) * v["kink_rate"] / 1000  # bow for each mm of wedge
    assert v["trial_wedge"] == pytest.approx(bow / a_mm)
    share = bow / a_mm / (over - trial)
    assert v["bead_share"] == pytest.approx(100 * share)
    wedge = max(share * (over - slot), tang - slot, 0)
    assert v["wedge"] == pytest.approx(wedge, abs=1e-12)
    assert v["bow"] == pytest.approx(wedge * a_mm, abs=1e-12)
    assert v["wedge_wanted"] == pytest.approx(0.1 / a_mm)
    for row in worked.tables["by_slot"]:
        width = tang + row["hundredths"] / 100
        assert row["slot"] == pytest.approx(width)
        assert row["bite"] == pytest.approx((over - width) / 2, abs=1e-12)
        assert row["opened"] == pytest.approx(
            max(share * (over - width), tang - width, 0), abs=1e-12
        )
        assert row["bows"] == pytest.approx(row["opened"] * a_mm)
    assert [row["hundredths"] for row in worked.tables["by_slot"]] == list(range(-6, 13))
    if 0.3 <= v["slot_wanted"] <= 1:
        again = values(**{**given_inputs, "slot_width": v["slot_wanted"]})
        assert again["bow"] == pytest.approx(0.1)


def test_the_trial_neck_fretted_again_bows_as_before() -> None:
    for bow in (0.02, 0.04, 0.1):
        v = values(bow_trial=bow, trial_slot=0.56, slot_width=0.56)
        assert v["bow"] == pytest.approx(bow)


def test_without_a_trial_only_the_tang_counts() -> None:
    assert values(beads_from="none")["bow"] == 0
    tight = answer(beads_from="none", slot_width=0.5, bow_wanted=0.2)
    v = tight.values
    assert v["wedge"] == pytest.approx(0.03)
    a_mm = max(kinked_line(645, 14)) * v["kink_rate"] / 1000
    assert v["slot_wanted"] == pytest.approx(0.53 - 0.2 / a_mm)
    rows = tight.tables["by_slot"]
    assert [row["opened"] for row in rows] == pytest.approx(
        [max(0, -n / 100) for n in range(-6, 13)]
    )
    again = values(beads_from="none", slot_width=v["slot_wanted"], bow_wanted=0.2)
    assert again["bow"] == pytest.approx(0.2)


def test_the_fit() -> None:
    v = values()
    assert v["clearance"] == pytest.approx(0.05)
    assert v["bead_bite"] == pytest.approx(0.1)
    assert v["depth_margin"] == pytest.approx(0.5)


# Crowns


@given(
    st.floats(0.9, 1.6), st.floats(0, 0.2), st.floats(0.3, 0.7), st.floats(0.02, 0.3),
    st.floats(0, 0.2), st.floats(0.005, 0.1), st.floats(1.2, 3),
)  # fmt: skip
@settings(max_examples=60)
def test_crowns_worn_and_dressed_year_by_year(
    wire: float, level: float, least: float, wear: float, spare: float, year: float, wide: float
) -> None:
    v = values(
        crown_wire=wire, level_loss=level, crown_least=least, wear_dressed=wear,
        dress_spare=spare, wear_year=year, crown_width=wide,
    )  # fmt: skip
    crown, times, years = wire - level, 0, 0.0
    assert v["crown_new"] == pytest.approx(crown)
    while crown - wear - spare >= least - 1e-9:
        crown, times, years = crown - wear - spare, times + 1, years + wear / year
    assert (v["dressings"], v["crown_last"]) == (times, pytest.approx(crown))
    assert v["dress_loss"] == pytest.approx(wear + spare)
    assert v["years"] == pytest.approx(years + min(crown - least, wear) / year, abs=1e-6)
    assert v["crown_bow"] == pytest.approx(v["crown_new"] - v["bow"])
    # The crown's circle goes through its top and both ends of its foot; the band is its chord.
    radius = v["crown_radius"]
    assert math.hypot(wide / 2, radius - wire) == pytest.approx(radius)
    assert math.hypot(v["band"] / 2, radius - level) == pytest.approx(radius)


# Refusals, words, pictures


@pytest.mark.parametrize(
    ("given_inputs", "blames"),
    [
        ({"tang_beads": 0.52}, "tang_beads"),
        ({"tang_depth": 2.41}, "slot_depth"),
        ({"board_joint": 2.89}, "slot_depth"),
        ({"neck_thickness": 10, "board_joint": 7.1}, "neck_thickness"),
        ({"trial_slot": 0.7601}, "trial_slot"),
        ({"bow_trial": 2, "trial_slot": 0.75}, "bow_trial"),
        ({"slot_width": 0.38}, "slot_width"),
        ({"bow_wanted": 2, "neck_thickness": 40}, "bow_wanted"),
        ({"crown_wire": 0.79}, "level_loss"),
    ],
)
def test_what_cannot_be_is_refused(given_inputs: dict[str, Any], blames: str) -> None:
    refused = refusal(**given_inputs)
    assert refused.input == blames
    assert refused.why and refused.allowed


@pytest.mark.parametrize(
    "edge",
    [
        {"tang_beads": 0.53, "beads_from": "none"},
        {"tang_depth": 2.4},
        {"board_joint": 2.9},
        {"neck_thickness": 10.1, "board_joint": 7.1, "bow_wanted": 0, "bow_trial": 0.01},
        {"trial_slot": 0.7599},
        {"slot_width": 0.39},
        {"crown_wire": 0.81},
    ],
)
def test_what_just_can_be_is_answered(edge: dict[str, Any]) -> None:
    assert values(**edge)["verdict"]


def test_the_walls_crush_at_the_crushing_wedge() -> None:
    wedge = values()["crush_wedge"]
    tight = {"beads_from": "none", "tang_thickness": 0.6}
    assert values(**tight, slot_width=0.6 - wedge * 0.999)["wedge_pressure"] < 63.6
    assert refusal(**tight, slot_width=0.6 - wedge * 1.001).input == "slot_width"
    a_mm = max(kinked_line(645, 14)) * values()["kink_rate"] / 1000
    assert refusal(bow_wanted=wedge * a_mm * 1.001).input in ("bow_wanted",) or wedge * a_mm > 2
    if wedge * a_mm < 2:
        values(bow_wanted=wedge * a_mm * 0.999)


def test_no_saw_cuts_next_to_nothing() -> None:
    thin = {
        "beads_from": "none", "tang_thickness": 0.3, "tang_beads": 0.5, "neck_thickness": 40,
        "board_wood": "own", "own_board_modulus": 4, "own_board_crush": 150, "bow_wanted": 2,
        "slot_width": 0.3,
    }  # fmt: skip
    assert refusal(**thin).input == "bow_wanted"
    assert "saw" in refusal(**thin).why


@pytest.mark.parametrize(
    ("given_inputs", "name", "words"),
    [
        ({"slot_width": 0.78}, "fit_words", "Loose"),
        ({"slot_width": 0.52}, "fit_words", "Tight"),
        ({"slot_width": 0.545}, "fit_words", "Close"),
        ({}, "fit_words", "slips in"),
        ({"slot_width": 0.55}, "fit_words", "slips in"),
        ({"beads_from": "none"}, "verdict", "only a fretted neck"),
        ({"slot_width": 0.8}, "verdict", "do not reach"),
        ({"slot_width": 0.5}, "verdict", "Open the slots to"),
        ({"bow_wanted": 0.042}, "verdict", "as wanted"),
        ({"bow_wanted": 0.04}, "verdict", "as wanted"),
        ({"bow_wanted": 0.045}, "verdict", "bring just that"),
        ({"string_moment": 0}, "string_words", "No strings"),
        ({"slot_width": 0.5, "string_moment": 5}, "string_words", "stays bent back"),
        ({}, "string_words", "is left"),
        ({"wear_dressed": 0.4}, "crown_words", "not one dressing"),
        ({"wear_dressed": 0.2}, "crown_words", "one dressing at"),
        ({}, "crown_words", "2 dressings"),
    ],
)
def test_words_follow_the_figures(given_inputs: dict[str, Any], name: str, words: str) -> None:
    assert words in values(**given_inputs)[name]


@pytest.mark.parametrize(
    ("given_inputs", "words"),
    [
        ({"beads_from": "none"}, "Without a trial"),
        ({"slot_width": 0.5, "bow_wanted": 0.01}, "hardly anything"),
        ({"slot_depth": 2.05}, "below the tang"),
        ({"slot_width": 0.52}, "Do not level"),
    ],
)
def test_cautions_come_when_they_are_due(given_inputs: dict[str, Any], words: str) -> None:
    assert any(words in text for text in answer(**given_inputs).cautions)
    assert not any(words in text for text in answer().cautions)
    for none in (
        {"bow_wanted": 0.041}, {"slot_width": 0.52, "bow_wanted": 0.1},
        {"slot_width": 0.75, "bow_wanted": 0.01},
    ):  # fmt: skip
        assert not any("hardly anything" in text for text in answer(**none).cautions)


def test_the_shop_s_neck_by_hand() -> None:
    """Half an ellipse 48.4 by 15.4 of 10.34 GPa, board of 12.27 GPa: about 320 N·m²."""
    v = values()
    shaft = 10.342 * math.pi / 4 * 48.4 * 15.4
    under, tangs = 12.273 * 48.4 * 4.0, 12.273 * 48.4 * 1.9
    axis = (under * 2.0 + tangs * 5.45 - shaft * 6.536) / (shaft + under + tangs)
    assert v["neutral"] == pytest.approx(axis, abs=0.002)
    assert v["stiffness"] == pytest.approx(320, rel=0.01)
    # 13 kinks of a hundredth: about an even bend of that sum over 358 mm.
    assert v["bow_hundredth"] == pytest.approx(13 * 0.01 * 0.02984 * 357.7 / 8, rel=0.1)


@pytest.mark.parametrize("units", ["metric", "inch"])
@pytest.mark.parametrize(
    "size",
    [
        {},
        {"slot_width": 0.5, "bow_wanted": 0.4},
        {"beads_from": "none", "slot_width": 0.9, "bow_wanted": 0},
        {"crown_wire": 2.5, "crown_width": 0.8, "slot_depth": 5, "board_joint": 12,
         "neck_thickness": 30},
        {"crown_width": 4, "crown_wire": 0.5, "crown_least": 0.3, "tang_depth": 0.6,
         "slot_depth": 1},
    ],
)  # fmt: skip
def test_pictures_stay_on_their_paper(units: str, size: dict[str, Any]) -> None:
    request = {"calculator": "fret-seating", "units": units, "inputs": size}
    drawings = json.loads(door.live(json.dumps(request)))["parts"]["drawings"]
    svgs = ["<svg" + part.partition("</svg>")[0] + "</svg>" for part in drawings.split("<svg")[1:]]
    assert len(svgs) == 2
    ids = []
    for svg in svgs:
        assert outside(svg) == []
        ids += [e.attrib["id"] for e in ElementTree.fromstring(svg).iter() if "id" in e.attrib]
    assert len(set(ids)) == len(ids) == 4


def bow_curve(units: str) -> list[tuple[float, ...]]:
    request = json.dumps({"calculator": "fret-seating", "units": units, "inputs": {}})
    drawn = json.loads(door.live(request))["parts"]["drawings"].split("<svg")[2]
    plot = ElementTree.fromstring("<svg" + drawn.partition("</svg>")[0] + "</svg>")
    curve = [e for e in plot.iter() if e.attrib.get("class", "").startswith("ink open")][-1]
    return [tuple(map(float, p.split(","))) for p in curve.attrib["points"].split()]


def test_the_plot_is_one_picture_in_either_unit() -> None:
    metric, inch = bow_curve("metric"), bow_curve("inch")
    assert [p for one in metric for p in one] == pytest.approx([p for one in inch for p in one])
    assert metric[-1][0] == pytest.approx(622)
    assert metric[-1][1] == pytest.approx(322)  # wide slots do not bend the neck
    assert 34 < metric[0][1] < 60


def test_the_fret_is_drawn_to_scale() -> None:
    request = json.dumps({"calculator": "fret-seating", "inputs": {}})
    drawings = json.loads(door.live(request))["parts"]["drawings"].split("<svg")
    root = ElementTree.fromstring("<svg" + drawings[1].partition("</svg>")[0] + "</svg>")
    board = next(e for e in root.iter() if "wood-dark" in e.attrib.get("class", ""))
    points = [tuple(map(float, p.split(","))) for p in board.attrib["points"].split()]
    scale = (points[2][1] - points[1][1]) / 2.4
    assert (points[3][0] - points[2][0]) / scale == pytest.approx(0.58, abs=2e-3)
    tang = next(e.attrib for e in root.iter() if e.tag.endswith("rect"))
    assert float(tang["width"]) / scale == pytest.approx(0.53, abs=2e-3)
    assert float(tang["height"]) / scale == pytest.approx(1.9, abs=2e-3)
    plot = ElementTree.fromstring("<svg" + drawings[2].partition("</svg>")[0] + "</svg>")
    curve = [e for e in plot.iter() if e.attrib.get("class", "").startswith("ink open")][-1]
    places = [tuple(map(float, p.split(","))) for p in curve.attrib["points"].split()]
    heights = [y for _, y in places]
    assert heights == sorted(heights)  # the wider the slot, the less the bow
    dot = next(e.attrib for e in plot.iter() if e.attrib.get("class") == "accent-fill")
    before = max(p for p in places if p[0] <= float(dot["cx"]))
    after = min(p for p in places if p[0] > float(dot["cx"]))
    assert before[1] - 0.05 <= float(dot["cy"]) <= after[1] + 0.05
