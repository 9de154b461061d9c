"""The trainer's commands on the demo handbook: set, print, mark, keep a register, forget."""

import csv
import json
import os
import random
import re
import shutil
import sqlite3
import subprocess
import sys
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
import zxingcpp
from click.testing import CliRunner, Result
from playwright.sync_api import sync_playwright

from benchrule import class_files, learning_commands
from benchrule.cli import main
from benchrule.opening import SitePlaces, open_handbook, site_places
from benchrule.training_register import Register, RegisterError
from calculators.learning import results
from calculators.learning.assignment import (
    Assignment,
    codes,
    from_link_fragment,
    questions_for,
    read,
)
from tests.chromium import FLAGS, chromium_path

ROOT = Path(__file__).parents[2]
CONFIG = str(ROOT / "mkdocs.yml")
ID = "DEMQ234567"
TIMES = {"began": "2026-11-27T09:00:00+01:00", "saved": "2026-11-27T10:00:00+01:00"}
# One mark a question: 1 to 3 a slot from the nut, 4 and 5 readings, 6 an order, 7 a fault.
EXERCISES = (
    "fret-spacing/slot-from-nut:3",
    "limit/neck-pitch-clearance:2",
    "order/neck-fit",
    "fault/neck-fit",
)
SKILLS = ["Fret spacing", "Limits: Neck fit", "Order of work: Neck fit", "Faults: Neck fit"]


@pytest.fixture(scope="module", autouse=True)
def _opened_once() -> Iterator[None]:
    """Reads each handbook once: what is tried here is what the commands do with it."""
    known: dict[Path, Any] = {}

    def opened(config_file: Path) -> Any:
        path = config_file.resolve()
        if path not in known:
            known[path] = open_handbook(path)
        return known[path]

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(class_files, "open_handbook", opened)
        yield


@pytest.fixture(scope="module")
def bank(_opened_once: None) -> dict[str, Any]:
    return class_files.bank_of(Path(CONFIG))


def run(*words: Any, config: str = CONFIG) -> Result:
    found = CliRunner().invoke(main, [*map(str, words), "-f", config])
    assert found.exception is None or isinstance(found.exception, SystemExit), found.exception
    return found


def refused(*words: Any, config: str = CONFIG) -> str:
    found = run(*words, config=config)
    assert found.exit_code == 2, found.output
    lines = found.stderr.strip().splitlines()
    assert lines[-1].startswith("Error: ")
    return lines[-1]


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("class")


@pytest.fixture(scope="module")
def set_out(folder: Path) -> Result:
    chosen = [word for one in EXERCISES for word in ("--exercise", one)]
    return run(
        "assignment", "--out", folder / "set.json", "--id", ID, "--title", "Necks", "--trainees", 3,
        "--due", "2026-11-28", "--qr", folder / "link.svg", *chosen,
    )  # fmt: skip


@pytest.fixture(scope="module")
def assignment(folder: Path, set_out: Result) -> Assignment:
    assert set_out.exit_code == 0, set_out.output
    return read(None, (folder / "set.json").read_text("utf-8"))


def slot(question: Any) -> Any:
    """Measured from the wrong end, which is a known slip."""
    return next(one.shown for one in question.slips if one.name == "from-the-saddle")


def right(question: Any) -> Any:
    if question.kind == "number":
        return question.shown
    return list(question.answer) if question.kind == "order" else question.answer


def wrong(question: Any) -> Any:
    if question.kind == "number":
        return "99999 mm"
    if question.kind == "order":
        return list(question.answer)[::-1]
    return (question.answer + 1) % len(question.options)


ANSWERS: list[Callable[[int, Any], Any]] = [
    lambda number, question: right(question),
    lambda number, question: slot(question) if number <= 2 else right(question),
    lambda number, question: slot(question) if number == 1 else wrong(question),
]


@pytest.fixture(scope="module")
def handed_in(folder: Path, assignment: Assignment, bank: dict[str, Any]) -> Path:
    """Three results: all right; two slips; a slip and everything else wrong."""
    place = folder / "results"
    place.mkdir()
    for code, how in zip(codes(assignment), ANSWERS, strict=True):
        asked = questions_for(bank, assignment, code)
        given = {one.number: how(one.number, one.question) for one in asked}
        text = results.to_text(results.make(bank, assignment, code, given, TIMES))
        (place / f"{code}.json").write_text(text, "utf-8")
    return place


def test_an_assignment_is_written_with_link_codes_and_picture(
    folder: Path, set_out: Result, assignment: Assignment
) -> None:
    address = site_places(Path(CONFIG)).address
    first, link, listed = set_out.stdout.splitlines()
    assert "7 questions for each of 3 trainees" in first
    assert link.startswith(f"Link: {address}learning/work/#a1.")
    assert from_link_fragment(link.partition("#")[2]) == assignment
    assert listed == f"Codes: {' '.join(codes(assignment))}"
    assert assignment.questions[0] == ("fret-spacing/slot-from-nut", 3)
    assert (folder / "link.svg").read_text("utf-8").startswith("<svg")


def test_the_picture_says_the_link(folder: Path, set_out: Result) -> None:
    html = f"<body style='margin:0'>{(folder / 'link.svg').read_text('utf-8')}"
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=chromium_path(), args=FLAGS)
        page = browser.new_page()
        page.set_content(html)
        page.locator("svg").screenshot(path=folder / "link.png")
        browser.close()
    from PIL import Image

    (code,) = zxingcpp.read_barcodes(Image.open(folder / "link.png"))
    assert code.text == set_out.stdout.splitlines()[1].removeprefix("Link: ")


def test_the_same_id_and_choices_give_the_same_file_and_no_other_overwrites_it(
    folder: Path, set_out: Result
) -> None:
    words = ["assignment", "--id", ID, "--title", "Necks", "--trainees", 3, "--due", "2026-11-28"]
    words += [word for one in EXERCISES for word in ("--exercise", one)]
    assert run(*words, "--out", folder / "again.json").exit_code == 0
    assert (folder / "again.json").read_bytes() == (folder / "set.json").read_bytes()
    assert run(*words, "--out", folder / "set.json").exit_code == 0
    assert "holds something else" in refused(*words, "--marks", 2, "--out", folder / "set.json")


def test_without_an_id_chance_gives_one(folder: Path) -> None:
    made = []
    for name in ("chance-1.json", "chance-2.json"):
        assert (
            run("assignment", "--out", folder / name, "--exercise", "order/neck-fit").exit_code == 0
        )
        made.append(read(None, (folder / name).read_text("utf-8")).id)
    assert made[0] != made[1]


def test_a_station_brings_each_of_its_exercises(folder: Path, bank: dict[str, Any]) -> None:
    found = run(
        "assignment",
        "--out",
        folder / "station.json",
        "--station",
        "neck-fit",
        "--exercise",
        "order/neck-fit:2",
    )
    assert found.exit_code == 0, found.output
    made = dict(read(None, (folder / "station.json").read_text("utf-8")).questions)
    left = {line.split()[0] for line in found.stderr.splitlines()}
    assert set(made) | left == set(bank["stations"]["neck-fit"]["exercises"])
    assert made["order/neck-fit"] == 2 and set(made.values()) == {1, 2}


@pytest.mark.parametrize(
    ("words", "reason"),
    [
        ([], "name a --station or an --exercise"),
        (["--station", "neck"], "did you mean neck-"),
        (["--exercise", "order/none"], "no exercise order/none"),
        (["--exercise", "order/neck-fit:x"], "write ID or ID:COUNT"),
        (["--exercise", "order/neck-fit:21"], "1 to 20 times"),
        (["--exercise", "order/neck-fit", "--exercise", "order/neck-fit"], "named twice"),
        (["--exercise", "order/neck-fit", "--count", "0"], "--count"),
        (["--exercise", "order/neck-fit", "--due", "tomorrow"], "2026-11-30"),
        (["--exercise", "order/neck-fit", "--id", "short"], "--id"),
        (["--exercise", "order/neck-fit", "--title", ""], "title"),
        (["--exercise", "order/neck-fit", "--trainees", "201"], "trainees"),
        (["--exercise", "fault/neck-fit:20", "--grade", "1"], "different question"),
    ],
)  # fmt: skip
def test_an_unfit_assignment_is_refused_and_not_written(
    folder: Path, words: list[str], reason: str
) -> None:
    assert reason in refused("assignment", "--out", folder / "unfit.json", *words)
    assert not (folder / "unfit.json").exists()


def test_without_an_address_the_link_is_said_to_lack_it(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    nowhere = SitePlaces("", Path("docs"), Path("site"))
    monkeypatch.setattr(learning_commands, "site_places", lambda config_file: nowhere)
    words = ["assignment", "--exercise", "order/neck-fit", "--out", folder / "nowhere.json"]
    found = run(*words)
    assert "\nLink: learning/work/#a1." in found.stdout and "site_url" in found.stderr
    assert "site_url" in refused(*words, "--qr", folder / "nowhere.svg")


def test_a_link_too_long_for_a_picture_is_refused(folder: Path, bank: dict[str, Any]) -> None:
    chosen = [
        one
        for station in bank["stations"].values()
        for one in station["exercises"]
        if one.startswith("limit/")
    ]
    words = [word for one in chosen[:40] for word in ("--exercise", one)]
    out = folder / "long.json"
    chance = random.Random(1)
    word = "".join(chr(chance.randrange(0x4E00, 0x9FA0)) for _ in range(600))  # packs badly
    assert "too many for a QR code" in refused("assignment", *words, "--word", word,
                                               "--out", out, "--qr", folder / "long.svg")  # fmt: skip
    assert not out.exists()


def test_sheets_and_key_are_written(folder: Path, assignment: Assignment) -> None:
    one, *others = codes(assignment)
    assert run("sheet", folder / "set.json", "--out", folder / "all.html").exit_code == 0
    every = (folder / "all.html").read_text("utf-8")
    assert every.count('<section class="br-sheet">') == 3 and all(
        code in every for code in (one, *others)
    )
    assert (
        run(
            "sheet", folder / "set.json", "--code", one.lower(), "--out", folder / "one.html"
        ).exit_code
        == 0
    )
    single = (folder / "one.html").read_text("utf-8")
    assert single.count('<li class="br-question">') == 7 and others[0] not in single
    assert (
        run("sheet", folder / "set.json", "--all", "--key", "--out", folder / "key.html").exit_code
        == 0
    )
    key = (folder / "key.html").read_text("utf-8")
    assert key.count('<section class="br-key">') == 3 and "measured from the wrong end" in key
    assert "no code of this assignment" in refused(
        "sheet", folder / "set.json", "--code", "2222", "--out", folder / "x.html"
    )
    assert "not both" in refused(
        "sheet", folder / "set.json", "--code", one, "--all", "--out", folder / "x.html"
    )


def test_marking_gives_every_figure(folder: Path, assignment: Assignment, handed_in: Path) -> None:
    found = run("mark", handed_in, "--assignment", folder / "set.json", "--json")
    assert found.exit_code == 0, found.output
    table = json.loads(found.stdout)
    assert [one["skill"] for one in table["skills"]] == SKILLS
    assert [one["of"] for one in table["skills"]] == [3, 2, 1, 1]
    by_code = {one["code"]: one for one in table["trainees"]}
    first, second, third = (by_code[code] for code in codes(assignment))
    assert [first["skills"][skill] for skill in SKILLS] == [3, 2, 1, 1] and first["got"] == 7
    assert [second["skills"][skill] for skill in SKILLS] == [1, 2, 1, 1] and second["got"] == 5
    assert [third["skills"][skill] for skill in SKILLS] == [0, 0, 0, 0] and third["got"] == 0
    assert {one["of"] for one in by_code.values()} == {7}
    slots = next(
        one for one in table["exercises"] if one["exercise"] == "fret-spacing/slot-from-nut"
    )
    assert (slots["right"], slots["asked"], slots["trainees"]) == (4, 9, 3)
    assert slots["slips"][0]["trainees"] == 2 and "wrong end" in slots["slips"][0]["words"]
    assert table["findings"] == table["unreadable"] == table["absent"] == []


def test_marking_prints_and_writes_the_same_table(
    folder: Path, assignment: Assignment, handed_in: Path
) -> None:
    files = [handed_in / f"{code}.json" for code in codes(assignment)]
    found = run("mark", *files, "--assignment", folder / "set.json",
                "--csv", folder / "marks.csv", "--html", folder / "marks.html")  # fmt: skip
    assert found.exit_code == 0
    second = codes(assignment)[1]
    line = next(line for line in found.stdout.splitlines() if line.startswith(second))
    assert line.split()[1:] == ["1", "2", "1", "1", "5", "of", "7"]
    rows = {
        row[0]: row[1:]
        for row in csv.reader((folder / "marks.csv").read_text("utf-8").splitlines())
    }
    assert rows[second] == [f"{second}.json", "1", "2", "1", "1", "5", "7"]
    assert "<strong>5</strong> of 7" in (folder / "marks.html").read_text("utf-8")


def test_a_tampered_and_an_unreadable_file_are_named_and_end_with_1(
    folder: Path, assignment: Assignment, handed_in: Path, tmp_path: Path
) -> None:
    code = codes(assignment)[2]
    doctored = json.loads((handed_in / f"{code}.json").read_text("utf-8"))
    doctored["score"] = 7
    (tmp_path / "doctored.json").write_text(json.dumps(doctored), "utf-8")
    found = run("mark", tmp_path, "--assignment", folder / "set.json")
    assert found.exit_code == 1
    assert "! doctored.json: it claims 7 of 7 marks; marked again it is 0 of 7." in found.stdout
    (tmp_path / "doctored.json").write_bytes(b" " * 2_000_000)
    found = run("mark", tmp_path, "--assignment", folder / "set.json")
    assert found.exit_code == 1 and "doctored.json: it is longer than 400 kB" in found.stdout
    (tmp_path / "doctored.json").write_bytes(b"\xff\xfe\x00")
    found = run("mark", tmp_path, "--assignment", folder / "set.json")
    assert found.exit_code == 1 and "Cannot be read: doctored.json" in found.stdout


def test_marking_without_anything_to_mark_is_refused(
    folder: Path, handed_in: Path, tmp_path: Path
) -> None:
    assert "no result files" in refused("mark", tmp_path, "--assignment", folder / "set.json")
    any_result = next(handed_in.iterdir())
    assert "a result, not an assignment" in refused("mark", handed_in, "--assignment", any_result)
    place = ROOT / "docs" / "marks.html"
    assert "get into the site" in refused(
        "mark", handed_in, "--assignment", folder / "set.json", "--html", place
    )
    assert not place.exists()
    assert run("mark", handed_in / "none.json", "--assignment", folder / "set.json").exit_code == 2


@pytest.fixture
def book(tmp_path: Path, assignment: Assignment) -> Path:
    """Where a register is to be, with the names of two of three trainees beside it."""
    first, second, _ = codes(assignment)
    (tmp_path / "names.csv").write_text(
        f"Code,Name\n{first.lower()}, Ann Ash\n{second},Ben Oak\n", "utf-8"
    )
    return tmp_path / "training.sqlite"


def take(folder: Path, handed_in: Path, book: Path) -> Result:
    return run("training", "take", handed_in, "--assignment", folder / "set.json",
               "--names", book.parent / "names.csv", "--register", book)  # fmt: skip


def entries(book: Path, person: str = "") -> list[dict[str, Any]]:
    with Register(book) as register:
        return register.rows(person)


def test_results_are_taken_once(
    folder: Path, assignment: Assignment, handed_in: Path, book: Path, bank: dict[str, Any]
) -> None:
    found = take(folder, handed_in, book)
    assert found.exit_code == 0, found.output
    nameless = f"{codes(assignment)[2]} of {ID}"
    assert set(found.stdout.splitlines()) == {
        "Ann Ash: taken",
        "Ben Oak: taken",
        f"{nameless}: taken",
    }
    once = entries(book)
    stations = [
        one for one in bank["stations"].values() if "fret-spacing/slot-from-nut" in one["exercises"]
    ]
    # A question counts at every station that practises its exercise.
    assert len(once) == 3 * (3 * len(stations) + 4)
    again = take(folder, handed_in, book)
    assert again.exit_code == 0 and "on record already" in again.stdout and entries(book) == once
    (one,) = [row for row in entries(book, "Ben Oak") if row["exercise"] == "order/neck-fit"]
    assert one == {
        "person": "Ben Oak", "kind": "paper", "station": "neck-fit", "skill": "Order of work: Neck fit",
        "exercise": "order/neck-fit", "revision": bank["stations"]["neck-fit"]["revision"],
        "day": "2026-11-27", "verdict": "right", "got": 1.0, "of": 1, "assignment": ID,
        "signed_by": "", "note": "",
    }  # fmt: skip
    assert os.stat(book).st_mode & 0o077 == 0


def test_what_was_tampered_with_or_comes_late_is_not_taken(
    folder: Path, assignment: Assignment, handed_in: Path, book: Path, bank: dict[str, Any]
) -> None:
    place = book.parent / "some"
    place.mkdir()
    first, second, _ = codes(assignment)
    doctored = json.loads((handed_in / f"{second}.json").read_text("utf-8"))
    doctored["answers"][0]["verdict"] = "right"
    (place / "doctored.json").write_text(json.dumps(doctored), "utf-8")
    (place / "sound.json").write_bytes((handed_in / f"{first}.json").read_bytes())
    found = take(folder, place, book)
    assert found.exit_code == 1 and "Ann Ash: taken" in found.stdout
    assert "Not taken: doctored.json, question 1" in found.stderr
    assert {row["person"] for row in entries(book)} == {"Ann Ash"}
    # Another result of the same code does not take the place of the first.
    other = results.make(bank, assignment, first, {}, TIMES)
    (place / "sound.json").write_text(results.to_text(other), "utf-8")
    (place / "doctored.json").unlink()
    found = take(folder, place, book)
    assert found.exit_code == 1 and "another result of this code is on record" in found.stderr
    assert sum(row["got"] for row in entries(book) if row["station"] == "neck-fit") == 4


@pytest.mark.parametrize(("claimed", "kept"), [(-1, -1), (0, 0), (40, 0)])
def test_the_revision_is_the_trainees_own_and_never_one_to_come(
    folder: Path,
    assignment: Assignment,
    handed_in: Path,
    book: Path,
    bank: dict[str, Any],
    claimed: int,
    kept: int,
) -> None:
    now = bank["stations"]["neck-fit"]["revision"]
    result = json.loads((handed_in / f"{codes(assignment)[0]}.json").read_text("utf-8"))
    result["edition"] = "0123456789ab"  # a handbook of another day
    result["revisions"]["neck-fit"] = now + claimed
    (book.parent / "other").mkdir()
    (book.parent / "other" / "r.json").write_text(json.dumps(result), "utf-8")
    assert take(folder, book.parent / "other", book).exit_code == 0
    assert {row["revision"] for row in entries(book) if row["station"] == "neck-fit"} == {
        now + kept
    }
    looks = run("training", "show", "--register", book).stdout.count("needs another look")
    assert looks == (3 if kept < 0 else 0)


def sign(book: Path, *words: str, config: str = CONFIG) -> Result:
    return run("training", "sign-off", "Ann Ash", "neck-fit", "--by", "Lead fitter", "--register", book,
               *words, config=config)  # fmt: skip


def test_a_bench_sign_off_is_kept_once_on_the_revision_of_the_day(
    book: Path, bank: dict[str, Any]
) -> None:
    found = sign(book, "--on", "2026-11-20", "--note", "Two necks")
    revision = bank["stations"]["neck-fit"]["revision"]
    assert found.stdout.strip() == (
        f"Ann Ash: Neck fit, revision {revision}, signed off by Lead fitter on 2026-11-20"
    )
    assert "on record already" in sign(book, "--on", "2026-11-20").stdout
    (one,) = entries(book)
    assert (one["kind"], one["station"], one["revision"], one["note"]) == (
        "bench",
        "neck-fit",
        revision,
        "Two necks",
    )


def test_an_unfit_sign_off_is_refused(book: Path) -> None:
    base = ["training", "sign-off", "--register", book, "--by", "JK"]
    assert "did you mean neck-fit" in refused(*base, "Ann Ash", "neck-f")
    assert "2026-11-30" in refused(*base, "Ann Ash", "neck-fit", "--on", "2026-02-30")
    assert "still to come" in refused(*base, "Ann Ash", "neck-fit", "--on", "9999-01-01")
    assert "the person" in refused(*base, " ", "neck-fit")
    assert "the person" in refused(*base, "Ann\x1b[31m", "neck-fit")
    assert not book.exists()


@pytest.fixture(scope="module")
def later(tmp_path_factory: pytest.TempPathFactory, bank: dict[str, Any]) -> str:
    """The same handbook after a change of the neck fit: one revision further."""
    place = tmp_path_factory.mktemp("later")
    shutil.copytree(ROOT / "docs", place / "docs")
    shutil.copyfile(ROOT / "mkdocs.yml", place / "mkdocs.yml")
    page = place / "docs/stations/neck-fit.md"
    now = bank["stations"]["neck-fit"]["revision"]
    text = page.read_text("utf-8")
    assert f"\nrevision: {now}\n" in text
    page.write_text(text.replace(f"\nrevision: {now}\n", f"\nrevision: {now + 1}\n", 1), "utf-8")
    return str(place / "mkdocs.yml")


def test_show_says_what_needs_another_look_after_a_revision(
    folder: Path, handed_in: Path, book: Path, later: str, bank: dict[str, Any]
) -> None:
    take(folder, handed_in, book)
    sign(book, "--on", "2026-11-20")
    now = bank["stations"]["neck-fit"]["revision"]
    before = run("training", "show", "Ann Ash", "--register", book).stdout
    assert f"Neck fit, revision {now}" in before and "another look" not in before
    assert "    Order of work: Neck fit: 1 of 1 right, last on 2026-11-27, revision" in before
    after = run("training", "show", "Ann Ash", "--register", book, config=later).stdout
    look = f"revision {now}: needs another look, the procedure is at revision {now + 1}"
    lines = [line.strip() for line in after.splitlines() if "another look" in line]
    assert lines == [
        f"Faults: Neck fit: 1 of 1 right, last on 2026-11-27, {look}",
        f"Limits: Neck fit: 2 of 2 right, last on 2026-11-27, {look}",
        f"Order of work: Neck fit: 1 of 1 right, last on 2026-11-27, {look}",
        f"At the bench: signed off by Lead fitter on 2026-11-20, {look}",
    ]
    # A new sign-off is on the new revision, and the old one says no more.
    assert f"revision {now + 1}" in sign(book, config=later).stdout
    after = run("training", "show", "Ann Ash", "--register", book, config=later).stdout
    assert len([line for line in after.splitlines() if "another look" in line]) == 3


def test_show_says_who_has_shown_nothing(
    folder: Path, handed_in: Path, book: Path, assignment: Assignment
) -> None:
    take(folder, handed_in, book)
    third = f"{codes(assignment)[2]} of {ID}"
    found = run("training", "show", third, "--register", book).stdout.splitlines()
    assert found[0] == third and "    Order of work: Neck fit: 0 of 1 right, not shown yet" in found
    assert (
        found.count("    At the bench: not signed off")
        == len([one for one in found if one[2] != " "]) - 1
    )
    everybody = run("training", "show", "--register", book).stdout.splitlines()
    assert [one for one in everybody if not one.startswith(" ")] == sorted(
        ["Ann Ash", "Ben Oak", third]
    )
    assert "nobody called Ann" in refused("training", "show", "Ann", "--register", book)


def test_export_gives_every_entry_and_no_formula(folder: Path, handed_in: Path, book: Path) -> None:
    names = book.parent / "names.csv"
    names.write_text(names.read_text("utf-8").replace("Ann Ash", "=cmd"), "utf-8")
    take(folder, handed_in, book)
    found = run(
        "training", "export", "--json", "--csv", book.parent / "out.csv", "--register", book
    )
    assert found.exit_code == 0
    rows = json.loads(found.stdout.splitlines()[-1])
    assert rows == entries(book)
    lines = list(csv.reader((book.parent / "out.csv").open(encoding="utf-8", newline="")))
    assert len(lines) == len(rows) + 1 and lines[0][0] == "person"
    assert {line[0] for line in lines[1:]} >= {"'=cmd", "Ben Oak"}
    assert "--csv FILE or --json" in refused("training", "export", "--register", book)


def test_who_is_forgotten_is_gone_from_the_file(folder: Path, handed_in: Path, book: Path) -> None:
    take(folder, handed_in, book)
    sign(book)
    assert b"Ann Ash" in book.read_bytes()
    assert run("training", "forget", "Ann Ash", "--register", book).stdout == "Ann Ash: forgotten\n"
    assert b"Ann Ash" not in book.read_bytes()
    assert {row["person"] for row in entries(book)} & {"Ann Ash", "Ben Oak"} == {"Ben Oak"}
    assert "nobody called Ann Ash" in refused("training", "forget", "Ann Ash", "--register", book)
    assert "Ann Ash: taken" in take(folder, handed_in, book).stdout


@pytest.mark.parametrize(
    "place", ["docs/training.sqlite", "site/training.sqlite", "docs/../docs/data/t.sqlite"]
)
def test_a_register_among_the_pages_or_in_the_site_is_refused(
    folder: Path, handed_in: Path, place: str
) -> None:
    for words in (["show"], ["forget", "Ann"], ["export", "--json"], ["sign-off", "Ann", "neck-fit", "--by", "JK"],
                  ["take", handed_in, "--assignment", folder / "set.json"]):  # fmt: skip
        assert "get into the site" in refused("training", *words, "--register", ROOT / place)
    assert not (ROOT / place).exists()


def test_a_link_into_the_site_is_seen_through(tmp_path: Path) -> None:
    (tmp_path / "here").symlink_to(ROOT / "docs", target_is_directory=True)
    assert "get into the site" in refused("training", "sign-off", "A", "neck-fit", "--by", "JK",
                                          "--register", tmp_path / "here" / "t.sqlite")  # fmt: skip


def test_what_is_no_register_is_refused_and_left_alone(tmp_path: Path) -> None:
    assert "there is no register" in refused(
        "training", "show", "--register", tmp_path / "none.sqlite"
    )
    assert not (tmp_path / "none.sqlite").exists()
    (tmp_path / "text").write_text(
        "no database, but a text that is long enough to be looked at" * 20, "utf-8"
    )
    with sqlite3.connect(tmp_path / "other") as other:
        other.execute("CREATE TABLE recipe (id)")
    other.close()
    for name, reason in (("text", "no training register"), ("other", "another program")):
        before = (tmp_path / name).read_bytes()
        assert reason in refused(
            "training", "sign-off", "A", "neck-fit", "--by", "JK", "--register", tmp_path / name
        )
        assert (tmp_path / name).read_bytes() == before
    with Register(tmp_path / "newer", create=True):
        pass
    newer = sqlite3.connect(tmp_path / "newer")
    newer.execute("PRAGMA user_version = 9")
    newer.close()
    assert "newer Benchrule" in refused("training", "show", "--register", tmp_path / "newer")


def test_a_register_in_use_says_so(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    with Register(tmp_path / "r", create=True) as register:
        register._base.execute("PRAGMA busy_timeout = 1")
        other = sqlite3.connect(tmp_path / "r", isolation_level=None)
        other.execute("BEGIN IMMEDIATE")
        with pytest.raises(RegisterError, match="in use by another program"):
            register.sign_off("A", "s", 1, "JK", "2026-01-01", "")
        other.execute("ROLLBACK")
        other.close()
        assert register.sign_off("A", "s", 1, "JK", "2026-01-01", "")


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        ("2345,Ann\n2345,Ben\n", "line 2: 2345 is there twice"),
        ("2345,Ann\n2346,Ann\n", "line 2: Ann is there twice"),
        ("Ann\n", "line 1: write code,name"), ("1111,Ann\n", "line 1"), ("2345,\n", "line 1"),
        ("2345,Ann,Ash\n", "line 1"), ("2345," + "x" * 81, "1 to 80"), ("2345,\x1b[2J", "line 1"),
    ],
)  # fmt: skip
def test_unfit_names_are_refused_by_line(
    folder: Path, handed_in: Path, book: Path, text: str, reason: str
) -> None:
    (book.parent / "names.csv").write_text(text, "utf-8")
    found = take(folder, handed_in, book)
    assert found.exit_code == 2 and reason in found.stderr and not book.exists()


def test_an_address_from_the_environment_is_read_as_mkdocs_does(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    config = tmp_path / "mkdocs.yml"

    def address(value: str) -> str:
        config.write_text(
            f"site_name: x\nsite_url: {value}\ntheme: {{x: !!python/name:a.b }}\n", "utf-8"
        )
        return site_places(config).address

    monkeypatch.delenv("SHOP_URL", raising=False)
    assert address('!ENV [SHOP_URL, "https://shop.example/"]') == "https://shop.example/"
    assert address("https://shop.example/book") == "https://shop.example/book/"
    assert address("!ENV SHOP_URL") == ""
    monkeypatch.setenv("SHOP_URL", "https://other.example")
    assert address('!ENV [SHOP_URL, "https://shop.example/"]') == "https://other.example/"
    assert site_places(tmp_path / "none.yml").holds(tmp_path / "docs" / "x")


def test_everything_fits_a_telephone_and_prints(
    folder: Path, set_out: Result, handed_in: Path
) -> None:
    for words in (["sheet", folder / "set.json", "--out", folder / "p-sheet.html"],
                  ["sheet", folder / "set.json", "--key", "--out", folder / "p-key.html"],
                  ["mark", handed_in, "--assignment", folder / "set.json", "--html", folder / "p-marks.html"]):  # fmt: skip
        assert run(*words).exit_code == 0
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=chromium_path(), args=FLAGS)
        page = browser.new_page(viewport={"width": 390, "height": 800})
        for name in ("p-sheet", "p-key", "p-marks"):
            page.goto((folder / f"{name}.html").as_uri())
            assert page.evaluate("document.documentElement.scrollWidth") <= 390, name
        page.goto((folder / "p-sheet.html").as_uri())
        for size in ("A4", "Letter"):
            printed = page.pdf(format=size)
            # Seven questions of three trainees: each sheet begins a page of its own.
            assert 3 <= len(re.findall(rb"/Type\s*/Page\b", printed)) <= 9, size
        browser.close()


def test_the_commands_are_listed_and_imported_only_when_asked_for(tmp_path: Path) -> None:
    def said(program: str) -> str:
        done = subprocess.run(
            [sys.executable, "-c", program],
            capture_output=True,
            text=True,
            check=True,
            cwd=tmp_path,
        )
        return done.stdout

    start = "import sys; from benchrule.cli import main; "
    listed = said(f"{start}main(['--help'])")
    for name in ("assignment", "sheet", "mark", "training", "calc"):
        assert f"\n  {name} " in listed
    loaded = f"{start}main(['calc'], standalone_mode=False); print([m for m in sys.modules if 'learning' in m])"
    assert said(loaded).splitlines()[-1] == "[]"
