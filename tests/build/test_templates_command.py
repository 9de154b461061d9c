"""The command that writes a template."""

from pathlib import Path
from typing import Any
from xml.etree import ElementTree

import ezdxf
import pdfplumber
import pytest
from click.testing import CliRunner, Result

from benchrule.opening import open_handbook
from benchrule.templates.command import edition_of, template
from benchrule.templates.makers import makers

from .test_templates import ROOT, handbook
from .trees import sound_tree, write_tree

DEMO = str(ROOT / "mkdocs.yml")


@pytest.fixture(autouse=True)
def _read_once(monkeypatch: pytest.MonkeyPatch) -> None:
    """The demonstration's handbook is read once for all of these; any other as always."""

    def opened(path: Path) -> Any:
        return (handbook(), []) if str(path) == DEMO else open_handbook(path)

    monkeypatch.setattr("benchrule.templates.command.open_handbook", opened)


def run(*words: str) -> Result:
    return CliRunner().invoke(template, [*words, "-f", DEMO])


def test_every_kind_of_file_is_written(tmp_path: Path) -> None:
    for ending in ("pdf", "svg", "dxf"):
        out = tmp_path / f"slots.{ending}"
        found = run("fret-slots", "--model", "twelve", "--out", str(out))
        assert found.exit_code == 0, found.output
        assert found.output.startswith(f"{out}: Fret slots, The Twelve, ")
    with pdfplumber.open(tmp_path / "slots.pdf") as book:
        words = " ".join(book.pages[0].extract_text().split())
    assert "The Twelve" in words and "Invented for demonstration." in words
    assert "Handbook: " in words and "Fretboard making, revision " in words
    assert ElementTree.parse(tmp_path / "slots.svg").getroot().attrib["width"].endswith("mm")
    assert ezdxf.readfile(tmp_path / "slots.dxf").header["$INSUNITS"] == 4


def test_the_paper_is_chosen(tmp_path: Path) -> None:
    for paper, size in (("a4", (595.28, 841.89)), ("letter", (612, 792))):
        out = tmp_path / f"{paper}.pdf"
        assert (
            run(
                "neck-contours", "--model", "fourteen", "--paper", paper, "--out", str(out)
            ).exit_code
            == 0
        )
        with pdfplumber.open(out) as book:
            assert (book.pages[0].width, book.pages[0].height) == pytest.approx(size, abs=0.01)
    assert run("neck-contours", "--model", "fourteen", "--paper", "a3").exit_code == 2


@pytest.mark.parametrize(
    ("option", "text", "grown"),
    [("--kerf", "0.2 mm", 0.2), ("--kerf", "0,25", 0.25), ("--tool-diameter", "1/8 in", 3.175),
     ("--tool-diameter", "3", 3)],
)  # fmt: skip
def test_kerf_and_tool_may_carry_units(
    tmp_path: Path, option: str, text: str, grown: float
) -> None:
    widths = []
    for name, options in (("plain.dxf", ()), ("set-off.dxf", (option, text))):
        out = tmp_path / name
        found = run("bridge-place", "--model", "ukulele", "--out", str(out), *options)
        assert found.exit_code == 0, found.output
        jig = ezdxf.readfile(out).modelspace().query('LWPOLYLINE[layer=="CUT"]')[0]
        ys = [y for _, y in jig.get_points("xy")]
        widths.append(max(ys) - min(ys))
    assert widths[1] - widths[0] == pytest.approx(grown)


def test_the_templates_are_listed() -> None:
    everything = run("--list")
    assert [line.split()[0] for line in everything.output.splitlines()] == list(makers())
    small = run("--list", "--model", "ukulele").output
    assert "fret-slots" in small and "channel-gauge" not in small
    assert run("--list", "--model", "none").exit_code == 2


@pytest.mark.parametrize(
    ("words", "why"),
    [
        (["fret-slots"], "say NAME, --model or --order, and --out"),
        (["fret-slots", "--model", "twelve"], "say NAME, --model or --order, and --out"),
        (["fret-slots", "--model", "twelve", "--out", "x.png"], "ends in .pdf, .svg, .dxf"),
        (["fret-slots", "--model", "thirteen", "--out", "x.svg"], "there is no model 'thirteen'"),
        (["lid", "--model", "twelve", "--out", "x.svg"], "There is no template 'lid'"),
        (["channel-gauge", "--model", "ukulele", "--out", "x.svg"], "not for this instrument"),
        (["fret-slots", "--model", "twelve", "--out", "x.svg", "--kerf", "1"], "for a .dxf file"),
        (["fret-slots", "--model", "twelve", "--out", "x.dxf", "--kerf", "1 kg"], "does not fit"),
        (["fret-slots", "--model", "twelve", "--out", "x.dxf", "--kerf", "-1"], "more than 0"),
        (["fret-slots", "--model", "twelve", "--out", "x.dxf", "--tool-diameter", "3"],
         "narrower than a tool of 3.00 mm"),
        (["fret-slots", "--model", "twelve", "--out", "x.dxf", "--kerf", "0.1",
          "--tool-diameter", "0.5"], "not both"),
        (["fret-slots", "--model", "twelve", "--out", "no-folder/x.svg"], "No such file"),
    ],
)  # fmt: skip
def test_what_cannot_be_done_is_said_and_nothing_is_written(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, words: list[str], why: str
) -> None:
    monkeypatch.chdir(tmp_path)
    found = run(*words)
    assert found.exit_code == 2
    assert why in found.output and "Traceback" not in found.output
    assert not list(tmp_path.iterdir())


def test_a_handbook_with_problems_is_not_used(tmp_path: Path) -> None:
    tree = sound_tree()
    tree["docs/data/models.yml"] = "big: {name: The Big}\n"
    write_tree(tmp_path, tree)
    words = ["fret-slots", "--model", "big", "--out", str(tmp_path / "x.svg")]
    found = CliRunner().invoke(template, [*words, "-f", str(tmp_path / "mkdocs.yml")])
    assert found.exit_code == 2 and "see benchrule check" in found.output


def test_the_edition_names_the_stations_it_rests_on() -> None:
    said = edition_of(handbook(), makers()["neck-contours"])
    station = handbook().station("neck-shaping")
    assert station is not None
    newest = station.revisions[0]
    assert said == f"Handbook: Neck shaping, revision {newest['revision']} of {newest['on']}"
