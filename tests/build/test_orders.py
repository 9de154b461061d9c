"""Orders: every mistake with file and line at once; settings follow the order; measured values too."""

import json
import shutil
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest
import yaml

from benchrule.build_sheet import Setting, build_sheet, differences, sheet_facts
from benchrule.checks import find_problems
from benchrule.handbook import Handbook, load_handbook
from benchrule.instruments import (
    figure_of,
    instrument_of_model,
    instrument_of_order,
    limits_for,
)
from benchrule.records import CannotRecord, from_device, recorded, write_records
from calculators.engine import door

ROOT = Path(__file__).parents[2]


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    """A copy of the demo handbook whose orders can be changed."""
    shutil.copytree(ROOT / "docs", tmp_path / "docs")
    shutil.copyfile(ROOT / "mkdocs.yml", tmp_path / "mkdocs.yml")
    return tmp_path


@pytest.fixture(scope="module")
def demo() -> Handbook:
    handbook, problems = load_handbook(ROOT, ROOT / "docs")
    assert problems == []
    return handbook


def change(shop: Path, order: str, **fields: Any) -> Handbook:
    """The handbook with some fields of an order set (None takes a field away)."""
    path = shop / "docs/data/orders/invented.yml"
    orders = yaml.safe_load(path.read_text("utf-8"))
    for name, value in fields.items():
        if value is None:
            orders[order].pop(name, None)
        else:
            orders[order][name] = value
    path.write_text(yaml.safe_dump(orders, sort_keys=False), "utf-8")
    handbook, _ = load_handbook(shop, shop / "docs")
    return handbook


def settings(handbook: Handbook, order: str) -> dict[tuple[str, str], Setting]:
    sheets = build_sheet(instrument_of_order(handbook, order))
    return {(sheet.station.id, one.key): one for sheet in sheets for one in sheet.settings}


def test_the_demo_orders_are_sound_and_each_has_a_sheet(demo: Handbook) -> None:
    assert len(demo.orders) == 4
    for order in demo.orders:
        sheets = build_sheet(instrument_of_order(demo, order))
        assert len(sheets) >= 15
        assert sum(len(sheet.settings) for sheet in sheets) > 100


def test_every_mistake_is_told_with_its_line_and_all_at_once(shop: Path) -> None:
    handbook = change(
        shop, "2026-101",
        woods={"top": "unobtanium", "back": "honduras-mahogany"}, due="2026-02-30",
        values={"scale_length": "6280 mm", "no_such_thing": 3},
        calculators={"fret-spacing": {"frets": "many"}, "no-calculator": {}},
    )  # fmt: skip
    text = (shop / "docs/data/orders/invented.yml").read_text("utf-8").splitlines()
    found = [one for one in find_problems(handbook) if "orders" in one.file]
    words = "\n".join(map(str, found))
    for part in ("unknown wood 'unobtanium'", "2026-02-30 is no day", "no calculator asks 'no_such_thing'",
                 "unknown calculator 'no-calculator'", "scale_length", "frets"):  # fmt: skip
        assert part in words, (part, words)
    wood = next(one for one in found if "unobtanium" in str(one))
    assert "unobtanium" in text[wood.line - 1]
    scale = next(one for one in found if "refuses scale_length" in str(one))
    assert "6280" in text[scale.line - 1]


def test_a_missing_field_and_an_unknown_model_are_told(shop: Path) -> None:
    change(shop, "2026-102", due=None)
    _, problems = load_handbook(shop, shop / "docs")
    assert any("due" in str(one) and "invented.yml" in str(one) for one in problems)
    handbook = change(shop, "2026-102", due="2027-04-30", model="nineteen")
    assert any("unknown model 'nineteen'" in str(one) for one in find_problems(handbook))


def test_a_film_that_ends_too_thin_is_told(shop: Path) -> None:
    handbook = change(
        shop, "2026-101", calculators={"film-build": {"rounds": 1, "coats_per_round": 1}}
    )
    assert any(
        "invented.yml" in str(one) and "film-build" in str(one) for one in find_problems(handbook)
    )


def test_one_line_changed_moves_all_that_rests_on_it_and_nothing_else(shop: Path) -> None:
    before = settings(load_handbook(shop, shop / "docs")[0], "2026-101")
    values = {"scale_length": "640 mm", "action_bass": "2.2 mm", "action_treble": "1.6 mm"}
    after = settings(change(shop, "2026-101", values=values), "2026-101")
    moved = {key for key in before if key in after and before[key].value != after[key].value}
    joint = after["fretting", "fret-spacing.joint_position"]
    assert joint.value == pytest.approx(640 / 2)  # the twelfth fret halves the string
    assert before["fretting", "fret-spacing.joint_position"].value == pytest.approx(628 / 2)
    assert ("bridge-glueing", "saddle-compensation.setback_bass") in moved or any(
        station == "bridge-glueing" for station, _ in moved
    )
    assert not any(key.startswith("brace-stiffness") for _, key in moved)


def test_what_the_order_asks_too_much_of_is_said_first_in_words(demo: Handbook) -> None:
    sheets = build_sheet(instrument_of_order(demo, "2026-102"))
    words = [line for sheet in sheets for line in sheet.warnings]
    assert any("cutaway is too tight for this side: thin it to" in line for line in words), words


def test_limits_agreed_for_one_order_hold_for_it_alone(demo: Handbook) -> None:
    tolerance = demo.tolerances["channel-purfling-width"]
    assert limits_for(instrument_of_order(demo, "2026-101"), tolerance).field("high") == 1.1
    usual = limits_for(instrument_of_order(demo, "2026-102"), tolerance)
    assert usual.field("high") == tolerance.for_model("fourteen").field("high")


def test_the_sheet_says_what_the_calculator_says(demo: Handbook) -> None:
    instrument = instrument_of_order(demo, "2026-103")
    given = dict(instrument.given("fret-spacing"))
    answer = door.answer("fret-spacing", given)
    here = settings(demo, "2026-103")
    for name, result in answer["results"].items():
        one = here.get(("fretting", f"fret-spacing.{name}"))
        if one is not None:
            assert one.value == result["value"] and one.shown == result["shown"]


def test_limits_move_with_what_was_ordered_and_stay_as_wide(demo: Handbook) -> None:
    order, model = instrument_of_order(demo, "2026-104"), instrument_of_model(demo, "ukulele")
    tolerance = demo.tolerances["nut-string-spread"]
    own, usual = limits_for(order, tolerance), limits_for(model, tolerance)
    assert own.field("high") - own.field("low") == pytest.approx(
        usual.field("high") - usual.field("low")
    )
    assert own.field("low") == pytest.approx(usual.field("low") + 1.0)  # ordered 1 mm wider
    here = figure_of(order, own)
    assert here is not None and own.field("low") <= here <= own.field("high")


def test_an_order_is_told_apart_from_its_model_and_not_from_itself(demo: Handbook) -> None:
    order = instrument_of_order(demo, "2026-101")
    model = instrument_of_model(demo, order.model)
    here, there = (sheet_facts(one, build_sheet(one)) for one in (order, model))
    assert differences(here, here) == []
    found = differences(here, there)
    assert ("Order intake", "Scale length ordered", "628 mm", "632 mm") in found


def test_what_was_measured_is_judged_kept_and_carried_on(shop: Path) -> None:
    handbook, _ = load_handbook(shop, shop / "docs")
    planned = settings(handbook, "2026-101")
    found = recorded(handbook, "2026-101", "neck-fit", {"neck-top-rise": "2.9 mm"})
    assert found["neck-top-rise"]["verdict"] == "accept"
    write_records(shop / "docs/data", "2026-101", found, "2026-12-01", "KM")
    handbook, problems = load_handbook(shop, shop / "docs")
    assert problems == [] and find_problems(handbook) == []
    after = settings(handbook, "2026-101")
    # A rise 0.4 mm less over the same length asks for less pitch, here and at the stations after.
    assert (
        after["neck-fit", "neck-angle.pitch"].value < planned["neck-fit", "neck-angle.pitch"].value
    )
    given = dict(instrument_of_order(handbook, "2026-101").given("neck-angle"))
    answer = door.answer("neck-angle", {**given, "arch_measured": "2.9 mm"})
    assert after["neck-fit", "neck-angle.pitch"].value == answer["results"]["pitch"]["value"]
    # What was measured does not move its own plan, nor what came before it.
    assert after["neck-fit", "neck-top-rise"].value == planned["neck-fit", "neck-top-rise"].value
    assert all(
        after[key].value == one.value for key, one in planned.items() if key[0] == "fretting"
    )


@pytest.mark.parametrize(
    ("order", "station", "name", "reading", "words"),
    [
        ("2020-1", "neck-fit", "neck-top-rise", "3 mm", "there is no order '2020-1'"),
        ("2026-101", "polish", "neck-top-rise", "3 mm", "sets nothing for 2026-101"),
        ("2026-101", "neck-fit", "neck-rise", "3 mm", "has no setting 'neck-rise'"),
        ("2026-101", "neck-fit", "neck-top-rise", "three", "is not a number"),
        ("2026-101", "neck-fit", "neck-top-rise", "3 kg", "has a unit that does not fit"),
    ],
)
def test_what_does_not_fit_is_refused_in_words(
    demo: Handbook, order: str, station: str, name: str, reading: str, words: str
) -> None:
    with pytest.raises(CannotRecord, match=words):
        recorded(demo, order, station, {name: reading})


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("", "cut off"),
        ("[" * 100_000, "cut off"),
        ('{"benchrule": "result", "version": 1}', "not what a device saved"),
        ('{"benchrule": "measured", "version": 1, "order": "2026-102"}', "of order 2026-102"),
        (
            '{"benchrule": "measured", "version": 1, "order": "2026-101", "values": {"x": 3}}',
            "damaged",
        ),
        (" " * 1_000_001, "too large"),
    ],
)
def test_a_damaged_file_of_a_device_is_refused(text: str, words: str) -> None:
    with pytest.raises(CannotRecord, match=words):
        from_device(text, "2026-101")


def test_the_command_records_and_says_by_its_exit_what_was_found(shop: Path) -> None:
    def run(*words: str) -> subprocess.CompletedProcess[str]:
        return subprocess.run(
            [sys.executable, "-c", "from benchrule.cli import main; main()", "record", *words],
            cwd=shop, capture_output=True, text=True, check=False,
        )  # fmt: skip

    assert run("2026-101", "neck-fit", "neck-top-rise=3.3 mm").returncode == 0
    out = run("2026-101", "neck-fit", "neck-top-rise=6 mm")
    assert out.returncode == 1 and "Reject" in out.stdout
    near = run("2026-101", "neck-fit", "neck-top-rise=2.7 mm")
    assert near.returncode == 3 and "Can't tell" in near.stdout
    assert run("2026-101", "neck-fit", "nothing=1").returncode == 2
    saved = {"benchrule": "measured", "version": 1, "order": "2026-101",
             "values": {"neck-top-rise": {"given": "3.2", "units": "metric", "at": "2026-12-02T10:00:00Z"}}}  # fmt: skip
    (shop / "device.json").write_text(json.dumps(saved))
    assert run("2026-101", "--take", "device.json").returncode == 0
    records = yaml.safe_load((shop / "docs/data/records/2026-101.yml").read_text("utf-8"))
    assert records["2026-101"]["neck-top-rise"] == {"value": "3.2 mm", "on": "2026-12-02"}
