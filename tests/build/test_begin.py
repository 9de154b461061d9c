"""``benchrule begin``: the folder it lays out is sound, and a beginner's mistakes are told in words."""

import os
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
import yaml
from click.testing import CliRunner, Result

from benchrule.begin import AUTHORS_PAGE, PLACE, starter
from benchrule.cli import main
from calculators.engine import registry
from calculators.engine.shop_packages import LEFT_OUT, PACKAGES

ROOT = Path(__file__).parents[2]


@pytest.fixture(autouse=True)
def only_our_own_calculators() -> Iterator[None]:
    """What a shop's handbook brought or left out holds for its test alone."""
    yield
    PACKAGES[:], LEFT_OUT[:] = ["calculators"], []
    registry.forget()


def run(*words: str, folder: Path | None = None) -> Result:
    before = Path.cwd()
    os.chdir(folder or before)
    try:
        return CliRunner().invoke(main, list(words), catch_exceptions=False)
    finally:
        os.chdir(before)


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    done = run("begin", str(tmp_path / "shop"), "--name", "Test shop")
    assert done.exit_code == 0, done.output
    return tmp_path / "shop"


@pytest.mark.parametrize("units", ["metric", "inch", "inch64"])
@pytest.mark.parametrize("calculator", ["--calculator", "--no-calculator"])
def test_what_is_laid_out_has_no_problem(units: str, calculator: str, tmp_path: Path) -> None:
    run("begin", str(tmp_path / "shop"), "--units", units, calculator)
    done = run("check", folder=tmp_path / "shop")
    assert (done.exit_code, done.output[:12]) == (0, "No problems:"), done.output
    settings = (tmp_path / "shop" / "mkdocs.yml").read_text("utf-8")
    assert f"units: {units} " in settings
    assert ("our_calculators" in settings) == (calculator == "--calculator")


def test_every_place_of_the_starter_is_filled() -> None:
    for calculator in (True, False):
        for file, text in starter("A shop", "metric", calculator).items():
            assert not PLACE.search(text), file
    files = starter("A shop", "metric", True)
    assert {".gitignore", "README.md", "mkdocs.yml", AUTHORS_PAGE} <= set(files)
    assert files[AUTHORS_PAGE] == (ROOT / AUTHORS_PAGE).read_text("utf-8")


def test_a_name_may_hold_any_sign(tmp_path: Path) -> None:
    name = 'Ana\'s "best" & [[odd]] <b>: @NAME@ #1 \\ *'
    run("begin", str(tmp_path / "shop"), "--name", name)
    assert run("check", folder=tmp_path / "shop").exit_code == 0
    text = (tmp_path / "shop" / "mkdocs.yml").read_text("utf-8")
    plain = yaml.safe_load(text.replace("!ENV", ""))
    assert plain["site_name"] == name


def test_nothing_is_overwritten(shop: Path) -> None:
    (shop / "docs" / "index.md").write_text("mine")
    again = run("begin", str(shop))
    assert again.exit_code == 1
    assert "nothing is ever overwritten" in again.output and "Traceback" not in again.output
    assert (shop / "docs" / "index.md").read_text() == "mine"


def test_other_files_in_the_folder_stay(tmp_path: Path) -> None:
    (tmp_path / "notes.txt").write_text("mine")
    assert run("begin", str(tmp_path)).exit_code == 0
    assert (tmp_path / "notes.txt").read_text() == "mine"


def test_a_file_is_no_folder(tmp_path: Path) -> None:
    (tmp_path / "shop").write_text("x")
    done = run("begin", str(tmp_path / "shop"))
    assert done.exit_code == 1 and "is a file" in done.output


def test_the_shop_s_calculator_and_units_answer_in_its_folder(shop: Path) -> None:
    done = run("calc", "taper", "reamed=0.2", folder=shop)
    assert "The peg goes in by: 6.0 mm" in done.output
    settings = shop / "mkdocs.yml"
    settings.write_text(settings.read_text("utf-8").replace("units: metric", "units: inch"))
    done = run("calc", "taper", "reamed=0.008", folder=shop)
    assert "The peg goes in by: 0.240 in" in done.output
    done = run("calc", "taper", "reamed=0.2", "--units", "metric", folder=shop)
    assert "The peg goes in by: 6.0 mm" in done.output
    done = run("measure", "peg-thin-end", "0.277", folder=shop)
    assert done.output.startswith("Accept"), done.output


def swap(file: str, old: str, new: str) -> Callable[[Path], None]:
    def change(shop: Path) -> None:
        path = shop / file
        text = path.read_text("utf-8")
        assert old in text, f"{old!r} is not in {file}"
        path.write_text(text.replace(old, new, 1), "utf-8")

    return change


def add(file: str, text: str) -> Callable[[Path], None]:
    return lambda shop: (shop / file).write_text(text, "utf-8") and None


STATION = "docs/stations/peg-fitting.md"
LIMITS = "docs/data/tolerances/peg-fitting.yml"
TAPER = "our_calculators/taper.py"
# A mistake; the beginning of its message (file and line); words in it that say what, and what to do.
MISTAKES: dict[str, tuple[Callable[[Path], None], str, str, str]] = {
    "wrong indentation": (
        swap(LIMITS, "  part: peg\n", "   part: peg\n"), f"{LIMITS}:4: ", "not YAML",
        "in one column",
    ),
    "a tab": (
        swap(LIMITS, "  part: peg\n", "\tpart: peg\n"), f"{LIMITS}:4: ", "a tab stands",
        "indent by spaces",
    ),
    "a colon in a text": (
        swap(LIMITS, "reason: Thinner, and", "reason: Mind: thinner, and"), f"{LIMITS}:12: ",
        "a second ':'", "between quotes",
    ),
    "no id": (
        swap("docs/data/gauges.yml", "caliper:\n", ""), "docs/data/gauges.yml:",
        "stands without an id", "begin each entry with its id",
    ),
    "a number without a unit": (
        swap("docs/data/models.yml", "8.5 mm", "8.5"), "docs/data/models.yml:7: ",
        "wide_end: 8.5 has no unit", "write it, like 8.5 mm",
    ),
    "a limit's figure with its unit": (
        swap(LIMITS, "high: 7.2", "high: 7.2 mm"), f"{LIMITS}:7: ", "is not of type 'number'",
        "the unit has a field of its own",
    ),
    "a loose number": (
        swap(STATION, "Ream a little,", "Ream 2 mm,"), f"{STATION}:", "loose number '2 mm'",
        "cite a tolerance",
    ),
    "a section left out": (
        swap(STATION, "## Purpose\n", ""), f"{STATION}:", "no section 'Purpose'", "a station has:",
    ),
    "a block's name misspelt": (
        swap(STATION, "/// tolerances", "/// tolerance"), f"{STATION}:", "no block '/// tolerance'",
        "write /// tolerances",
    ),
    "a block that is not closed": (
        swap(STATION, "/// tools\n///\n", "/// tools\n"), f"{STATION}:", "'/// tools' is not closed",
        "write /// on a line below",
    ),
    "an unknown hazard": (
        swap(STATION, "wood-dust]", "wood-dusts]"), f"{STATION}:9: ", "unknown hazard 'wood-dusts'",
        "docs/data",
    ),
    "front matter that is not closed": (
        swap(STATION, "changed: First issue.\n---\n", "changed: First issue.\n"), f"{STATION}:1: ",
        "not closed", "a line of three hyphens",
    ),
    "a syntax error": (
        swap(TAPER, 'results=("deeper"', 'results=("deeper'), f"{TAPER}:", "not Python", "mend the line",
    ),
    "an error when it is loaded": (
        swap(TAPER, 'title="Taper",', 'titel="Taper",'), f"{TAPER}:", "needs title", "mend what",
    ),
    "no object calculator": (
        swap(TAPER, "calculator = Calculator(", "taper = Calculator("), f"{TAPER}:1: ",
        "no object 'calculator'", "write 'calculator = ",
    ),
    "a library from outside": (
        swap(TAPER, "from typing import Any", "from typing import Any\n\nimport numpy"), f"{TAPER}:",
        "imports numpy, which a reader's browser does not have", "calculators.engine",
    ),
    "a name that is taken": (
        lambda shop: (shop / TAPER).rename(shop / "our_calculators" / "thinning.py") and None,
        "our_calculators/thinning.py:1: ", "already", "leave_out: [thinning]",
    ),
    "a file called otherwise than its calculator": (
        swap(TAPER, 'name="taper"', 'name="tapers"'), f"{TAPER}:1: ", "called 'tapers'",
        'write name="taper"',
    ),
    "a formula that names nothing": (
        swap(TAPER, 'formula="reamed * taper"', 'formula="reamed * tapir"'), f"{TAPER}:", "tapir",
        "mend the declaration",
    ),
    "a drawing that fails": (
        swap(TAPER, "narrow = TALL * values", "narrow = 1 / 0 + TALL * values"), f"{TAPER}:",
        "division by zero", "raise Refusal",
    ),
    "a station's page without its id": (
        swap(STATION, "station: peg-fitting\n", ""), f"{STATION}:1: ", "without the field 'station'",
        "write 'station: peg-fitting'",
    ),
    "an entry without an id, alone in its file": (
        add("docs/data/groups.yml", "name: Fitting up\nsummary: All.\n"), "docs/data/groups.yml:1: ",
        "'name' stands without an id", "begin each entry with its id",
    ),
    "an outside figure that disagrees": (
        swap(TAPER, '"deeper": "4.5"', '"deeper": "4.4"'), f"{TAPER}:", "has 4.4", "which is right",
    ),
    "a package that is not there": (
        swap("mkdocs.yml", "calculators: [our_calculators]", "calculators: [my_sums]"), "mkdocs.yml:",
        "no package of calculators 'my_sums'", "__init__.py",
    ),
    "the plugin not named": (
        swap("mkdocs.yml", "  - benchrule:", "  - search2:"), "mkdocs.yml:",
        "the plugin benchrule is not named", "'- benchrule'",
    ),
    "an option that is none": (
        swap("mkdocs.yml", "units: metric", "unit: metric"), "mkdocs.yml:", "no option unit", "there are",
    ),
    "units that are none": (
        swap("mkdocs.yml", "units: metric", "units: feet"), "mkdocs.yml:", "feet is no unit system",
        "take one of metric, inch, inch64",
    ),
    "a calculator left out that is none": (
        swap("mkdocs.yml", "units: metric", "leave_out: [nek]\n      units: metric"), "mkdocs.yml:",
        "no group 'nek'", "take a group",
    ),
    "a tab in mkdocs.yml": (
        swap("mkdocs.yml", "  name: material", "\tname: material"), "mkdocs.yml:", "tab",
        "spaces only",
    ),
}  # fmt: skip


@pytest.mark.parametrize("mistake", MISTAKES)
def test_a_beginner_s_mistake_is_told_with_its_line(mistake: str, shop: Path) -> None:
    change, where, what, to_do = MISTAKES[mistake]
    change(shop)
    done = run("check", folder=shop)
    assert done.exit_code == 1, done.output
    first = next((line for line in done.output.splitlines() if what in line), done.output)
    assert first.startswith(where), first
    assert to_do in first, first
    assert "Traceback" not in done.output


def test_check_outside_a_handbook_says_how_to_begin_one(tmp_path: Path) -> None:
    done = run("check", folder=tmp_path)
    assert done.exit_code == 1 and "benchrule begin FOLDER" in done.output


def test_the_author_s_page_describes_every_block_and_shows_the_fields_of_every_kind() -> None:
    from benchrule.faces.field_table import TABLES
    from benchrule.markdown_extension import MAKERS
    from benchrule.references import BLOCKS

    page = (ROOT / AUTHORS_PAGE).read_text("utf-8")
    assert set(BLOCKS) == set(MAKERS)
    assert [name for name in MAKERS if f"`/// {name}" not in page] == []
    assert [kind for kind in TABLES if f"\n/// fields | {kind}\n///\n" not in page] == []


def test_every_field_says_what_it_means() -> None:
    from benchrule.data import schema
    from benchrule.faces.field_table import TABLES

    for kind in TABLES:
        fields = schema(kind).schema["properties"]  # type: ignore[index]
        assert [name for name, one in fields.items() if len(one.get("title", "")) < 5] == [], kind


def test_every_option_stands_on_the_author_s_page_and_in_the_plugin() -> None:
    from dataclasses import fields

    from benchrule.plugin import Options
    from benchrule.site_config import Choices

    names = {one.name for one in fields(Choices)}
    assert names | {"cache"} == {name for name, _ in Options._schema}
    page = (ROOT / AUTHORS_PAGE).read_text("utf-8")
    assert [name for name in names if f"\n      {name}:" not in page] == []


def test_the_example_of_a_calculator_on_the_author_s_page_works(shop: Path) -> None:
    page = (ROOT / AUTHORS_PAGE).read_text("utf-8")
    code = page.partition("```python\n")[2].partition("```")[0]
    (shop / "our_calculators" / "neck_length.py").write_text(code, "utf-8")
    done = run("check", folder=shop)
    assert done.exit_code == 0, done.output
    assert "Neck, nut to edge: 130.0 mm" in run("calc", "neck-length", folder=shop).output
