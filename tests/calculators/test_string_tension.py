"""Laws of the stretched string, and what the string-tension calculator makes of them."""

import json
import math
import xml.etree.ElementTree as ET
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as some

from calculators.engine import door
from calculators.laws import strings as law
from calculators.strings._string_sets import SETS
from calculators.strings._string_tension_work import breaking_words

few = settings(max_examples=40)
lengths, pitches, masses = some.floats(300, 900), some.floats(40, 700), some.floats(0.2, 20)
NAMES = ["C", "C#", "D", "Eb", "E", "F", "F#", "G", "Ab", "A", "Bb", "B"]


def answer(**given: Any) -> dict[str, Any]:
    found = door.answer("string-tension", given)
    assert "refused" not in found, found
    return found


def value(name: str, **given: Any) -> Any:
    return answer(**given)["results"][name]["value"]


def rows(table: str, **given: Any) -> list[dict[str, Any]]:
    one = answer(**given)["tables"][table]
    return [dict(zip(one["columns"], row, strict=True)) for row in one["rows"]]


def own(*strings: list[Any], **given: Any) -> dict[str, Any]:
    return {"string_set": "own", "strings": list(strings), **given}


# ---- notes and pitch


@pytest.mark.parametrize("octave", range(1, 8))
def test_every_note_lies_a_semitone_above_the_one_before(octave: int) -> None:
    found = [law.semitones_from_a4(f"{name}{octave}") for name in NAMES]
    assert found == list(range(12 * octave - 57, 12 * octave - 45))


def test_spellings_of_one_note() -> None:
    for words in ("Bb2", "A#2", "b♭2", " B♭2", "a♯2"):
        assert law.semitones_from_a4(words) == -23
    assert law.semitones_from_a4("Cb4") == law.semitones_from_a4("B3")
    for words in ("", "E", "H2", "4", "E22", "Ex2", "Ebb2", "e-1", "part 0", "²", "E²"):
        assert law.semitones_from_a4(words) is None
    with pytest.raises(ValueError, match="no note"):
        law.note_hz("X1", 440)


@given(some.integers(-48, 48), some.floats(380, 480))
@few
def test_pitch_and_cents_are_inverse(semitones: int, a4: float) -> None:
    hertz = law.pitch_hz(semitones, a4)
    assert law.cents_between(a4, hertz) == pytest.approx(100 * semitones, abs=1e-9)
    assert law.pitch_hz(semitones + 12, a4) == pytest.approx(2 * hertz)


# ---- mass, pull, stiffness


@given(some.floats(0.2, 1.5), some.floats(1000, 9000))
@few
def test_mass_of_wire_is_density_times_volume(diameter: float, density: float) -> None:
    volume_m3 = math.pi * (diameter / 2000) ** 2
    assert law.round_mass_g_m(diameter, density) == pytest.approx(1000 * density * volume_m3)


@given(some.floats(0.2, 0.8), some.floats(0.02, 0.6))
@few
def test_a_fine_winding_fills_a_quarter_of_pi_of_its_ring(core: float, wire: float) -> None:
    gauge = core + 2 * wire
    ring = math.pi * (gauge**2 - core**2) / 4
    share = 1000 * law.winding_mass_g_m(gauge, core, 1000) / 1000 / ring
    rise = wire / (math.pi * (core + wire))
    assert share == pytest.approx(math.pi / 4 * math.sqrt(1 + rise**2), rel=1e-12)


@given(lengths, pitches, masses)
@few
def test_a_wave_runs_there_and_back_in_one_period(length: float, hertz: float, mass: float) -> None:
    speed = math.sqrt(law.tension_n(length, hertz, mass) / (mass / 1000))
    assert 2 * length / 1000 / speed == pytest.approx(1 / hertz)


@given(lengths, pitches, some.floats(0.2, 1.5))
@few
def test_stiffness_number_agrees_with_young_and_with_the_bending_length(
    length: float, hertz: float, diameter: float
) -> None:
    density = 7850.0
    pull = law.tension_n(length, hertz, law.round_mass_g_m(diameter, density))
    stiff = law.stiffness_number(200.0, diameter, pull, length)
    bend = law.bending_length_mm(200.0, diameter, pull)
    assert stiff == pytest.approx((math.pi * bend / length) ** 2)
    young = law.young_cents(200e9 / density)
    cents = young * (diameter / 10) ** 2 / (hertz**2 * (length / 10) ** 4)
    tiny = stiff * 1e-6
    assert law.partial_sharp_cents(tiny, 3) == pytest.approx(9 * cents * 1e-6, rel=1e-4)


def test_bending_length_of_a_known_rod() -> None:
    # E·I = 200 GPa · π·0.4⁴/64 mm⁴ = 251.327 N·mm², under 100 N: sqrt(2.51327) mm.
    assert law.bending_length_mm(200, 0.4, 100) == pytest.approx(1.585330, rel=1e-6)
    assert law.stress_mpa(100, 0.4) == pytest.approx(795.7747, rel=1e-6)


# ---- the calculator


def test_the_shop_figures_come_out() -> None:
    assert value("total_tension") == pytest.approx(720, abs=8)
    assert value("set_mass") == pytest.approx(19.3, abs=0.3)
    assert value("total_tension", scale_length=632) == pytest.approx(690, abs=8)
    uke = {"string_set": "ukulele", "scale_length": 380, "design_tension": 160}
    assert value("total_tension", **uke) == pytest.approx(160, abs=3)


@given(some.sampled_from(sorted(SETS)), some.floats(400, 800), some.floats(400, 470))
@few
def test_totals_are_the_sum_of_the_rows(name: str, scale: float, a4: float) -> None:
    chosen = {"string_set": name, "scale_length": scale, "reference_pitch": a4}
    found = answer(**chosen)
    results = {key: one["value"] for key, one in found["results"].items()}
    table = rows("pull", **chosen)
    pulls = [row["tension"] for row in table]
    assert results["total_tension"] == pytest.approx(math.fsum(pulls))
    assert results["strongest"] == pytest.approx(max(pulls))
    assert results["weakest"] == pytest.approx(min(pulls))
    assert results["spread"] == pytest.approx(max(pulls) / min(pulls))
    assert math.fsum(row["share"] for row in table) == pytest.approx(100)
    assert results["set_mass"] == pytest.approx(0.8 * math.fsum(row["mass"] for row in table))
    # Pull goes with the square of scale and of pitch.
    base = value("total_tension", string_set=name, scale_length=500)
    assert results["total_tension"] == pytest.approx(base * (scale * a4 / 500 / 440) ** 2)


def test_levers_and_moments() -> None:
    given = {
        "bridge_thickness": 9, "saddle_height": 4, "neck_thickness": 22, "fret_height": 1.0,
        "nut_height": 0.2, "action_bass": 2.5, "action_treble": 1.5, "design_tension": 700,
        "cut_length": 500,
    }  # fmt: skip
    found = {key: one["value"] for key, one in answer(**given)["results"].items()}
    total = found["total_tension"]
    assert found["bridge_arm"] == 13
    assert found["bridge_torque"] == pytest.approx(total * 0.013)
    assert found["design_torque"] == pytest.approx(9.1)
    assert found["neck_arm"] == pytest.approx(11 + 1 + 1.1)
    assert found["neck_moment"] == pytest.approx(total * 0.0131)
    assert found["against_design"] == pytest.approx(total / 7)
    assert found["as_heavy_as"] * 9.80665 == pytest.approx(total)
    assert found["set_mass"] == pytest.approx(value("set_mass") * 5 / 8)


def test_the_table_holds_the_laws() -> None:
    for chosen in ({}, {"string_set": "ukulele", "scale_length": 380, "nylon_modulus": 5}):
        scale = chosen.get("scale_length", 645)
        for row in rows("pull", **chosen):
            assert row["tension"] == pytest.approx(
                law.tension_n(scale, row["frequency"], row["mass"])  # type: ignore[arg-type]
            )
            assert row["stress"] == pytest.approx(law.stress_mpa(row["tension"], row["core"]))
        for row in rows("overtones", **chosen):
            stiff = law.stiffness_number(row["modulus"], row["core"], row["pull"], scale)  # type: ignore[arg-type]
            assert row["stiffness"] == pytest.approx(stiff)
            assert row["second"] == pytest.approx(law.partial_sharp_cents(stiff, 2))
            assert row["tenth"] == pytest.approx(law.partial_sharp_cents(stiff, 10))
    assert [row["modulus"] for row in rows("overtones", steel_modulus=203)] == [203.0] * 6
    uke = rows("overtones", string_set="ukulele", nylon_modulus=4.5)
    assert [row["modulus"] for row in uke] == [4.5] * 4


def test_each_kind_takes_its_own_density() -> None:
    strings = [
        ["p", "E4", 0.3, "plain", 0, 0], ["w", "E3", 0.8, "wound", 0.4, 0],
        ["n", "E4", 0.7, "nylon", 0.3, 0], ["v", "E3", 0.8, "wound nylon", 0.5, 0],
        ["g", "E3", 0.8, "bronze", 0.4, 3.3],
    ]  # fmt: skip
    given = own(*strings, steel_density=7900, wrap_density=8000, nylon_density=1200)
    mass = {row["string"]: row["mass"] for row in rows("pull", **given)}
    assert mass["p"] == pytest.approx(law.round_mass_g_m(0.3, 7900))
    assert mass["n"] == pytest.approx(law.round_mass_g_m(0.7, 1200))
    steel, wrap = law.round_mass_g_m(0.4, 7900), law.winding_mass_g_m(0.8, 0.4, 8000)
    assert mass["w"] == pytest.approx(steel + wrap)
    nylon, wrap = law.round_mass_g_m(0.5, 1200), law.winding_mass_g_m(0.8, 0.5, 8000)
    assert mass["v"] == pytest.approx(nylon + wrap)
    assert mass["g"] == 3.3
    core = {row["string"]: row["core"] for row in rows("pull", **given)}
    assert core == {"p": 0.3, "w": 0.4, "n": 0.7, "v": 0.5, "g": 0.4}
    kinds = {row["string"]: row["kind"] for row in rows("pull", **given)}
    assert kinds["g"] == "wound"
    stiff = {row["string"]: row["modulus"] for row in rows("overtones", **given)}
    assert stiff == {"p": 200, "w": 200, "n": 3, "v": 3, "g": 200}


def test_the_ready_sets_are_common_gauges_in_order_of_pitch() -> None:
    thousandths = {"light": (12, 16, 24, 32, 42, 53), "medium": (13, 17, 26, 35, 45, 56)}
    cores = {"light": (33, 36, 41, 43), "medium": (36, 38, 43, 46)}
    for name, gauges in thousandths.items():
        table = rows("pull", string_set=name)
        assert [row["note"] for row in table] == ["E4", "B3", "G3", "D3", "A2", "E2"]
        assert [row["gauge"] for row in table] == [round(25.4 * n / 1000, 3) for n in gauges]
        assert [row["core"] for row in table[2:]] == [n / 100 for n in cores[name]]
        assert [row["kind"] for row in table] == ["plain"] * 2 + ["wound"] * 4
    uke = rows("pull", string_set="ukulele")
    assert [(row["note"], row["gauge"]) for row in uke] == [
        ("A4", 0.64), ("E4", 0.84), ("C4", 1.04), ("G4", 0.76),
    ]  # fmt: skip
    assert {row["kind"] for row in uke} == {"nylon"}
    for one in SETS.values():
        assert all(mass == 0 and (core == 0) == ("wound" not in kind)
                   for _, _, _, kind, core, mass in one)  # fmt: skip


@pytest.mark.parametrize(
    ("row", "low", "high"),
    [
        (["1", "E2", 1.0, "wound", 0.4, None], 0.3926991, 7.8539816),
        (["1", "E4", 0.4, "plain", 0, None], 0.0628319, 1.2566371),
    ],
)
def test_a_weighed_mass_between_cork_and_lead(row: list[Any], low: float, high: float) -> None:
    for mass, fits in (
        (low * 0.9999, False), (low * 1.0001, True), (high * 0.9999, True), (high * 1.0001, False),
    ):  # fmt: skip
        found = door.answer("string-tension", own([*row[:5], mass], scale_length=400))
        assert ("refused" not in found) == fits


def test_the_ends_of_pitch_and_the_thinnest_winding() -> None:
    low, high = ["1", "A0", 1.0, "plain", 0, 0], ["1", "A6", 0.2, "plain", 0, 0]
    for row, a4, fits in (
        (low, 440, True), (["1", "E0", 1.0, "plain", 0, 0], 428, True),
        (["1", "E0", 1.0, "plain", 0, 0], 427, False), (["1", "D#0", 1.0, "plain", 0, 0], 452, False),
        (["1", "D#0", 1.0, "plain", 0, 0], 453, True), (high, 380, False),
        (["1", "F#6", 0.2, "plain", 0, 0], 445, True), (["1", "F#6", 0.2, "plain", 0, 0], 447, False),
    ):  # fmt: skip
        found = door.answer("string-tension", own(row, scale_length=300, reference_pitch=a4))
        assert ("refused" not in found) == fits, (row, a4)
    for core, fits in ((0.9601, False), (0.9599, True)):
        found = door.answer("string-tension", own(["1", "E2", 1.0, "wound", core, 0]))
        assert ("refused" not in found) == fits


REFUSED = [
    (["1", "H4", 0.3, "plain", 0, 0], "strings[1].note", "no note"),
    (["1", "C0", 0.3, "plain", 0, 0], "strings[1].note", "16.4 Hz"),
    (["1", "G6", 0.3, "plain", 0, 0], "strings[1].note", "1568.0 Hz"),
    (["1", "E4", 0.3, "gold", 0, 0], "strings[1].kind", "gold"),
    (["1", "E2", 1.3, "wound", 0, 0], "strings[1].core", "caliper"),
    (["1", "E2", 1.3, "wound", 1.27, 0], "strings[1].core", "no room"),
    (["1", "E2", 1.0, "wound", 0.4, 8.0], "strings[1].mass", "weigh it again"),
    (["1", "E2", 1.0, "wound", 0.4, 0.38], "strings[1].mass", "weigh it again"),
]  # fmt: skip


@pytest.mark.parametrize(("row", "blamed", "why"), REFUSED)
def test_impossible_strings_are_refused_by_cell(row: list[Any], blamed: str, why: str) -> None:
    found = door.answer("string-tension", own(row))
    assert [one["input"] for one in found["refused"]] == [blamed]
    assert why in found["refused"][0]["why"]
    assert found["refused"][0]["allowed"]


def test_just_possible_strings_are_answered() -> None:
    for row in (
        ["1", "E0", 1.3, "plain", 0, 0], ["1", "F#6", 0.2, "plain", 0, 0],
        ["1", "E2", 1.3, "wound", 1.25, 0], ["1", "E2", 1.0, "wound", 0.4, 7.8],
        ["1", "E2", 1.0, "wound", 0.4, 0.40],
    ):  # fmt: skip
        answer(**own(row, scale_length=500))


def test_a_pull_past_all_strings_is_refused() -> None:
    # 600 N on a scale of 645 mm: between 2.9 and 3.0 g a metre at E4... at E3 four times as much.
    pull = law.tension_n(645, law.note_hz("E3", 440), 1.0)
    row = ["1", "E3", 1.6, "wound", 0.5, 0.0]
    row[5] = 599 / pull
    assert value("total_tension", **own(row)) == pytest.approx(599)
    row[5] = 601 / pull
    refused = door.answer("string-tension", own(row))["refused"][0]
    assert refused["input"] == "scale_length" and "601.0 N" in refused["why"]


# ---- words


def test_words_of_the_verdict_turn_where_they_should() -> None:
    total = value("total_tension")
    for share, start in (
        (1.081, "Too much"),
        (1.079, "It fits"),
        (0.911, "It fits"),
        (0.909, "Little"),
    ):
        words = value("verdict", design_tension=total / share)
        assert words.startswith(start)
    strings = [["a", "E4", 0.3, "plain", 0, 0.4], ["b", "E4", 0.3, "plain", 0, 0.4 * 1.59]]
    assert value("even_words", **own(*strings)).startswith("Even enough: from")
    strings[1][5] = 0.4 * 1.61
    words = value("even_words", **own(*strings))
    assert words.startswith("Uneven: b pulls")
    assert value("even_words", **own(strings[0])).startswith("One pull for all")


def test_breaking_is_said_in_words_at_the_remembered_strength() -> None:
    for core in (0.25, 0.4, 1.2):
        strength = 2211 / core**0.145
        for share, words in (
            (0.3999, "far from it"), (0.4001, "as usual"), (0.6999, "as usual"),
            (0.7001, "near it"), (0.8999, "near it"), (0.9001, "very near it"),
            (0.9999, "very near it"), (1.0001, "past it"),
        ):  # fmt: skip
            assert breaking_words("plain", share * strength, core) == words
            assert breaking_words("wound", share * strength, core) == words
    assert breaking_words("plain", 2211.0, 1.0) == "past it"
    assert breaking_words("nylon", 5000, 0.4) == breaking_words("wound nylon", 5000, 0.4) == "–"


def test_cautions_name_the_strings_in_danger() -> None:
    sharp = own(["top", "A4", 0.305, "plain", 0, 0], ["low", "E3", 0.4, "plain", 0, 0])
    assert "very near to breaking: top." in " ".join(answer(**sharp)["cautions"])
    past = own(["top", "C5", 0.305, "plain", 0, 0], ["too", "C5", 0.305, "plain", 0, 0])
    assert "past breaking: top, too." in " ".join(answer(**past)["cautions"])
    assert "breaking" not in " ".join(answer()["cautions"])


# ---- pictures


@pytest.mark.parametrize("units", ["metric", "inch"])
@pytest.mark.parametrize("name", [*SETS, "own"])
def test_bars_are_as_long_as_the_pull_and_stay_on_the_paper(units: str, name: str) -> None:
    request = {
        "calculator": "string-tension",
        "units": units,
        "inputs": {"string_set": name, "bridge_thickness": 3, "saddle_height": 12},
    }
    drawings = json.loads(door.live(json.dumps(request)))["parts"]["drawings"]
    figures = ET.fromstring(f"<all>{drawings}</all>")
    pictures = figures.findall("figure/{http://www.w3.org/2000/svg}svg")
    assert len(pictures) == 2
    bars = [one for one in pictures[0].iter() if one.tag.endswith("rect")]
    table = rows("pull", string_set=name)
    lengths = [float(bar.get("width", "0")) for bar in bars[: len(table)]]
    for bar, row in zip(lengths, table, strict=True):
        assert bar == pytest.approx(
            340 * row["tension"] / max(r["tension"] for r in table), abs=0.1
        )
    for picture in pictures:
        height = float(picture.get("viewBox", "").split()[3])
        for one in picture.iter():
            for key in ("x", "x1", "x2"):
                assert 0 <= float(one.get(key, "1")) <= 640
            for key in ("y", "y1", "y2"):
                assert 0 <= float(one.get(key, "1")) <= height
