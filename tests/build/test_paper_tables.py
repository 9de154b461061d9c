"""Every table of the handbook as CSV."""

import csv
import io
from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest

from benchrule.paper.handbook_tables import handbook_tables
from calculators.engine.compute import work_out
from calculators.engine.declaration import Calculator

from .test_paper import demo, run
from .trees import sound_tree, write_tree


@cache
def made() -> dict[str, bytes]:
    return handbook_tables(demo())


def read(name: str) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(made()[name].decode("utf-8"), newline="")))


def test_every_entry_has_a_row() -> None:
    book = demo()
    for name, kind in (("gauges", "gauges"), ("hazards", "hazards"), ("glossary", "glossary"),
                       ("woods", "materials"), ("sources", "sources")):  # fmt: skip
        assert {row["Id"] for row in read(f"{name}.csv")} == set(book.entries[kind])
    assert {row["Id"] for row in read("tolerances.csv")} == set(book.tolerances)
    limits = [
        one for entry in book.entries["hazards"].values() for one in entry.fields.get("limits", [])
    ]
    assert [row["What"] for row in read("hazard-limits.csv")] == [one["what"] for one in limits]
    properties = [
        one for entry in book.entries["materials"].values() for one in entry.fields["properties"]
    ]
    assert [float(row["Value"]) for row in read("wood-properties.csv")] == [
        float(one["value"]) for one in properties
    ]


def test_limits_stand_in_both_systems_for_each_model() -> None:
    rows = {(row["Id"], row["Model"]): row for row in read("tolerances.csv")}
    for model, low, high in (("fourteen", "2.9", "4.1"), ("twelve", "2.7", "3.9"),
                             ("ukulele", "0.6", "1.4")):  # fmt: skip
        row = rows["neck-top-rise", model]
        assert (row["Low"], row["High"], row["Unit"]) == (low, high, "mm")
        assert float(row["Low, inch"]) == pytest.approx(float(low) / 25.4, abs=1e-9)
        assert row["Unit, inch"] == "in"
    shim = rows["neck-shim-thickness", "all"]
    assert shim["Limits"] == "0.15 ± 0.02 mm" and shim["Limits, inch"] == "0.0059 ± 0.0008 in"
    assert shim["Gauge id"] == "micrometer" and shim["Decided on"] == "2026-11-04"
    only = demo().tolerances["brace-x-place"].field("applies_to")
    assert {model for id, model in rows if id == "brace-x-place"} == set(only)
    assert rows["neck-binding-proud", "all"]["Low"] == ""


def test_a_temperature_is_converted_as_a_temperature() -> None:
    [row] = [row for row in read("tolerances.csv") if row["Id"] == "box-hide-pot-temperature"]
    assert row["Unit"] == "°C" and row["Unit, inch"] == "°F"
    assert float(row["Low, inch"]) == pytest.approx(float(row["Low"]) * 9 / 5 + 32)


@pytest.mark.parametrize("calculator", demo().calculators.values(), ids=lambda one: one.name)
def test_each_calculators_tables_are_there_at_full_precision(calculator: Calculator) -> None:
    worked = work_out(calculator, {})
    assert not isinstance(worked, list)
    for name, rows in worked.tables.items():
        columns = worked.columns[name]
        text = made()[f"{calculator.name}.{name}.csv"].decode()
        heads, *found = csv.reader(io.StringIO(text, newline=""))
        assert len(found) == len(rows) and len(heads) == len(columns)
        for at, one in enumerate(columns):
            assert heads[at].startswith(one.label)
            for row, values in zip(found, rows, strict=True):
                value = values[one.name]
                if isinstance(value, int | float):
                    assert float(row[at]) == value


def test_no_text_becomes_a_formula() -> None:
    book = demo()
    entry = book.entries["glossary"]["headstock"]
    for start in "=+-@":
        fields = {**entry.fields, "term": f"{start}cmd", "meaning": f"{start}1+1"}
        hostile = replace(entry, fields=fields)
        glossary = {**book.entries["glossary"], "headstock": hostile}
        changed = replace(book, entries={**book.entries, "glossary": glossary})
        text = handbook_tables(changed)["glossary.csv"].decode()
        [row] = [row for row in csv.DictReader(io.StringIO(text)) if row["Id"] == "headstock"]
        assert (row["Term"], row["Meaning"]) == (f"'{start}cmd", f"'{start}1+1")
    for name in made():
        for row in csv.reader(io.StringIO(made()[name].decode(), newline="")):
            for cell in row:
                assert cell[:1] not in ("=", "+", "@"), (name, cell)
                if cell[:1] == "-":
                    float(cell)


def test_the_command_writes_them_all_the_same_each_time(tmp_path: Path) -> None:
    out = tmp_path / "deep" / "tables"
    found = run("tables", "--out", str(out))
    assert found.exit_code == 0 and f"{len(made())} tables" in found.stdout
    assert {path.name: path.read_bytes() for path in out.iterdir()} == made()
    assert handbook_tables(demo()) == made()


def test_a_file_in_the_way_is_refused_in_words(tmp_path: Path) -> None:
    write_tree(tmp_path, sound_tree())
    config = tmp_path / "mkdocs.yml"
    found = run("tables", "--out", str(config), config=config)
    assert found.exit_code == 2 and "is a file" in found.stderr
    found = run("tables", "--out", str(config / "tables"), config=config)
    assert found.exit_code == 2 and "Not a directory" in found.stderr
