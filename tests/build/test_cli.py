"""The command line as other programs and people use it."""

import json
from pathlib import Path

import click
import pytest
from click.testing import CliRunner, Result

from benchrule.cli import main
from calculators.engine.registry import modules

from .trees import sound_tree, write_tree


def run(*words: str) -> Result:
    return CliRunner().invoke(main, list(words))


def test_calc_alone_lists_the_calculators_name_first() -> None:
    lines = run("calc").stdout.splitlines()
    assert [line.split()[0] for line in lines] == list(modules())


@pytest.mark.parametrize("name", modules())
def test_help_gives_inputs_units_and_ranges(name: str) -> None:
    found = run("calc", name, "--help")
    assert found.exit_code == 0
    assert " to " in found.stdout and "example" in found.stdout


@pytest.mark.parametrize("name", modules())
def test_every_calculator_answers_for_people_and_for_programs(name: str) -> None:
    for units in ("metric", "inch", "inch64"):
        assert run("calc", name, "--units", units).exit_code == 0
    found = run("calc", name, "--json")
    assert found.exit_code == 0
    assert json.loads(found.stdout)["calculator"] == name


def test_values_may_carry_units_and_fractions() -> None:
    found = json.loads(run("calc", "fret-spacing", "scale_length=25 1/2 in", "--json").stdout)
    assert found["inputs"]["scale_length"]["value"] == 647.7


def test_refusals_exit_2_in_json_and_in_words() -> None:
    found = run("calc", "fret-spacing", "scale_length=5 kg", "frets=x", "--json")
    assert found.exit_code == 2
    refused = json.loads(found.stdout)["refused"]
    assert [one["input"] for one in refused] == ["scale_length", "frets"]
    assert set(refused[0]) == {"input", "given", "allowed", "why"}
    found = run("calc", "fret-spacing", "scale_length=5 kg")
    assert found.exit_code == 2 and "Allowed: 150 to 1200 mm" in found.stderr


@pytest.mark.parametrize(
    "words",
    [["no-such"], ["fret-spacing", "scale_length"], ["fret-spacing", "frets=1", "frets=2"],
     ["fret-spacing", "what=1"]],
)  # fmt: skip
def test_what_cannot_be_asked_is_refused(words: list[str]) -> None:
    found = run("calc", *words, "--json")
    assert found.exit_code == 2
    assert json.loads(found.stdout)["refused"]


def test_unknown_options_are_usage_errors() -> None:
    assert run("calc", "fret-spacing", "--jsn").exit_code == 2
    assert run("calc", "fret-spacing", "--units", "cubits").exit_code == 2


def test_check_lists_problems_and_exits_1(tmp_path: Path) -> None:
    tree = sound_tree()
    write_tree(tmp_path, tree)
    assert run("check", "-f", str(tmp_path / "mkdocs.yml")).exit_code == 0
    station = tmp_path / "docs/stations/sanding.md"
    station.write_text(station.read_text().replace("Wipe it.", "Wipe 3 mm off."))
    found = run("check", "-f", str(tmp_path / "mkdocs.yml"))
    assert found.exit_code == 1
    assert found.stdout.startswith("docs/stations/sanding.md:")


def test_check_of_nothing_says_so(tmp_path: Path) -> None:
    found = run("check", "-f", str(tmp_path / "mkdocs.yml"))
    assert found.exit_code == 1 and "there is no such file" in found.stdout


def test_every_command_is_in_the_readme() -> None:
    readme = (Path(__file__).parents[2] / "README.md").read_text("utf-8")
    for command in main.list_commands(click.Context(main)):
        assert f"benchrule {command}" in readme, command
