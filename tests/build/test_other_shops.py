"""Two invented shops of other trades, in ``tests/shops``: what they chose holds wherever a figure shows."""

import json
import os
import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from click.testing import CliRunner

from benchrule.build_sheet import build_sheet
from benchrule.checks import find_problems
from benchrule.cli import main
from benchrule.handbook import Handbook
from benchrule.instruments import instrument_of_order
from benchrule.opening import open_handbook
from benchrule.paper.card_content import card_of
from benchrule.runtime import _sources
from calculators.engine import registry
from calculators.engine.shop_packages import LEFT_OUT, PACKAGES

ROOT = Path(__file__).parents[2]
SHOPS = ROOT / "tests" / "shops"


@pytest.fixture(autouse=True)
def only_our_own_calculators() -> Iterator[None]:
    """What a shop brought or left out holds for its test alone."""
    yield
    PACKAGES[:], LEFT_OUT[:] = ["calculators"], []
    registry.forget()


def opened(shop: str) -> Handbook:
    handbook, problems = open_handbook(SHOPS / shop / "mkdocs.yml")
    assert problems == []
    return handbook


def run(shop: str, *words: str) -> str:
    before = Path.cwd()
    os.chdir(SHOPS / shop)
    try:
        return CliRunner().invoke(main, list(words), catch_exceptions=False).output
    finally:
        os.chdir(before)


@pytest.mark.parametrize(("shop", "stations"), [("violin", 4), ("ukulele", 3)])
def test_another_shop_has_no_problem(shop: str, stations: int) -> None:
    handbook = opened(shop)
    assert find_problems(handbook) == []
    assert len(handbook.stations) == stations


def test_a_shop_has_its_own_calculators_and_only_those_of_ours_it_wants() -> None:
    violin = set(opened("violin").calculators)
    assert "neck-stop" in violin and "board-weight" in violin
    assert violin.isdisjoint(
        {"fret-spacing", "neck-angle", "kerf-spacing", "saddle-height", "settling"}
    )
    assert set(opened("ukulele").calculators) == {
        "board-feet", "board-weight", "fret-spacing", "glue-open-time", "moisture-content",
        "string-tension", "wood-movement",
    }  # fmt: skip


def test_one_shop_s_calculators_do_not_reach_the_next() -> None:
    opened("violin")
    assert "neck-stop" not in opened("ukulele").calculators
    assert "board-feet" not in opened("violin").calculators


def test_what_is_left_out_is_not_shipped() -> None:
    opened("ukulele")
    files = set(_sources(("calculators", "yard")))
    assert "yard/board_feet.py" in files and "calculators/learning/door.py" in files
    assert "calculators/neck/fret_spacing.py" in files
    assert not any(
        file.startswith(("calculators/plates/", "calculators/finish/")) for file in files
    )
    registry_file = _sources(("calculators", "yard"))[
        "calculators/engine/shop_packages.py"
    ].decode()
    assert "neck-angle" not in registry_file and "board-feet" in registry_file


def test_an_inch_shop_reads_inches_first() -> None:
    book = opened("ukulele")
    height, depth = book.tolerances["string-height"], book.tolerances["slot-depth"]
    assert (height.limits(), height.also()) == ("0.0866 to 0.1142 in", "2.20 to 2.90 mm")
    assert (depth.limits(), depth.also()) == ("0.085 ± 0.005 in", "2.16 ± 0.13 mm")
    assert book.tolerances["stock-moisture"].also() == ""
    card = card_of(book, book.stations[2], "")
    assert (card.limits[0].figures[0].first, card.limits[0].figures[0].also) == (
        "0.0866 to 0.1142 in", "2.20 to 2.90 mm",
    )  # fmt: skip
    sheets = build_sheet(instrument_of_order(book, "2026-7"))
    shown = {one.key: one for sheet in sheets for one in sheet.settings}
    joint = shown["fret-spacing.joint_position"]
    assert (joint.shown, joint.also, joint.inch) == ("8 1/2 in", "215.90 mm", "8.5000 in")
    words = [one.shown for one in shown.values() if isinstance(one.value, str)]
    assert words and not any(re.search(r"\d (?:mm|N)\b", one) for one in words), words


def test_a_metric_shop_reads_as_before() -> None:
    stop = opened("violin").tolerances["body-stop"]
    assert (stop.limits(), stop.also()) == ("195.0 ± 1.5 mm", "7.677 ± 0.059 in")
    assert stop.for_model("viola").limits() == "215.0 ± 2.0 mm"


def test_the_commands_know_the_shop() -> None:
    assert "neck-stop  How long the neck must be" in run("violin", "calc")
    assert "fret-spacing" not in run("violin", "calc")
    assert "no calculator of this name" in run("violin", "calc", "fret-spacing")
    assert "Neck, nut to edge: 128.0 mm" in run("violin", "calc", "neck-stop", "body_stop=192")
    done = run(
        "ukulele", "calc", "fret-spacing", "scale_length=17", "frets=18", "body_joint_fret=12"
    )
    assert "Last slot from the nut: 10 63/64 in" in done
    assert run("ukulele", "measure", "slot-depth", "0.086").startswith("Accept")
    found = json.loads(run("ukulele", "calc", "board-feet", "thickness=2", "--json"))
    assert found["results"]["feet"]["value"] == pytest.approx(12)


# What the demo shop calls its own; words of the trade that formulas use too are not looked for.
OF_THE_DEMO = r"Demonstration Shop|[Tt]he (?:Fourteen|Twelve)\b|fourteen-|2026-1\d\d\b"


def test_nothing_of_the_demo_shop_is_in_the_code() -> None:
    demo, _ = open_handbook(ROOT / "mkdocs.yml")
    ids = {one.id for one in demo.stations} | set(demo.tolerances)
    for kind in ("gauges", "groups", "models", "hazards", "orders"):
        ids |= set(demo.entries[kind])
    # An id of several words is the shop's own; one word (board, strings) belongs to everybody.
    ids = {id for id in ids if "-" in id and id not in demo.calculators}
    known = re.compile(r"""["'\[/]({})["'\]/]""".format("|".join(map(re.escape, sorted(ids)))))
    found = []
    for folder in ("build/benchrule", "calculators"):
        for path in sorted((ROOT / folder).rglob("*")):
            if "starter" in path.parts:
                continue  # an example of its own
            if path.suffix not in (".py", ".mjs", ".js", ".json", ".html", ".css", ".md", ".yml"):
                continue
            text = path.read_text("utf-8")
            places = [*known.finditer(text), *re.finditer(OF_THE_DEMO, text)]
            found += [
                f"{path.relative_to(ROOT)}:{text.count(chr(10), 0, one.start()) + 1}: {one[0]}"
                for one in places
            ]
    assert not found, "\n".join(found)
