"""Cases for what trainers and trainees send: exercises, assignments, links, results, files."""

import json
import os
import tempfile
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any

import click

from benchrule.class_files import read_assignment, result_files
from benchrule.records import CannotRecord, from_device
from benchrule.training_commands import read_names
from calculators.engine.strangers import depth, is_clean
from calculators.learning import assignment as assignments
from calculators.learning import door, link_text, results
from calculators.learning.class_marks import TooManyFiles, mark_class
from calculators.learning.class_table import csv_text, to_csv, to_html
from calculators.learning.untrusted import UnfitFile, parse
from tests.calculators import learning_bank

from . import hostile
from .doors import calculators
from .outcome import check_plain, check_shown, loaded, need, words_of
from .tape import Tape, decoded

CONTROLS = {chr(code) for code in (*range(9), 11, 12, *range(14, 32), 127)}


@cache
def bank() -> dict[str, Any]:
    """The small bank of the tests, and every exercise of every calculator at one station more."""
    found = learning_bank.bank()
    found["stations"]["all"] = {
        **found["stations"]["fitting"], "title": "All", "steps": [], "faults": [],
        "exercises": [
            f"{calculator.name}/{one.name}"
            for calculator in calculators()
            for one in (*calculator.exercises, *calculator.decisions)
        ],
    }  # fmt: skip
    return found


@cache
def bank_text() -> str:
    """The bank as the page hands it in."""
    return json.dumps(bank())


@cache
def assignment() -> assignments.Assignment:
    """An assignment of the small bank."""
    with learning_bank.own_calculator():
        choices = {"title": "Holes", "trainees": 3, "questions": learning_bank.CHOSEN}
        return assignments.make(bank(), choices, learning_bank.ID)


@cache
def result_text(wrong: bool = False) -> str:
    """A trainee's result: all right, or all wrong."""
    with learning_bank.own_calculator():
        code = assignments.codes(assignment())[int(wrong)]
        answer = learning_bank.wrong if wrong else learning_bank.right
        given = {
            one.number: answer(one.question)
            for one in assignments.questions_for(bank(), assignment(), code)
        }
        return results.to_text(results.make(bank(), assignment(), code, given, learning_bank.TIMES))


@cache
def exercises() -> list[str]:
    """Every exercise of the bank."""
    return [one for station in bank()["stations"].values() for one in station["exercises"]]


# --- the learning door


def asked_of_exercises(tape: Tape) -> dict[str, Any]:
    """What a page of exercises may ask."""
    way, exercise = tape.byte(), tape.pick(exercises())
    drawn = {
        "exercise": exercise, "seed": str(tape.byte()), "grade": 1 + tape.byte() % 3,
        "units": tape.pick(("metric", "inch", "inch64")),
    }  # fmt: skip
    history = [
        [tape.pick(exercises()), tape.byte() % 2 == 0, 86_400_000.0 * tape.byte()]
        for _ in range(tape.byte() % 8)
    ]
    ways = (
        {"do": "draw", **drawn},
        {"do": "hint", **drawn, "count": tape.byte()},
        {"do": "mark", **drawn, "given": given(tape)},
        {"do": "mark", **drawn, "given": given(tape)},
        {"do": "next", "exercises": exercises()[: 1 + tape.byte() % 9], "history": history,
         "now": 86_400_000.0 * tape.byte(), "seed": "1"},
        {"do": "progress", "history": history},
    )  # fmt: skip
    return ways[way % len(ways)]


def given(tape: Tape) -> Any:
    """An answer to a question, good or bad."""
    kind = tape.byte() % 4
    if kind == 0:
        return tape.byte() % 8
    if kind == 1:
        return [tape.byte() % 9 for _ in range(tape.byte() % 10)]
    if kind == 2:
        return f"{tape.share() * 10.0 ** (tape.byte() % 7 - 2):.{tape.byte() % 5}f}"
    return hostile.value(tape)


def asked_of_classes(tape: Tape) -> dict[str, Any]:
    """What the pages of assignments may ask."""
    way, plain = tape.byte(), assignments.to_json(assignment())
    code = assignments.codes(assignment())[tape.byte() % 3]
    chosen = [
        [tape.pick(exercises()), 1 + tape.byte() % 2] for _ in range(1 + tape.byte() % 2)
    ]  # fmt: skip
    ways = (
        {"do": "catalogue"},
        {"do": "make_assignment", "id": learning_bank.ID,
         "choices": {"title": "Holes", "word": "", "due": "2026-11-30", "units": "inch", "grade": 3,
                     "marks": 2, "trainees": 2, "questions": chosen}},
        {"do": "open_assignment", "text": assignments.to_text(assignment())},
        {"do": "open_assignment", "fragment": assignments.to_link_fragment(assignment())},
        {"do": "assignment_questions", "assignment": plain, "code": code},
        {"do": "make_result", "assignment": plain, "code": code, **learning_bank.TIMES,
         "given": {str(at): given(tape) for at in range(1, 8)}, "at": {"1": "2026-11-30T10:30:00Z"}},
        {"do": "mark_class", "assignment": plain,
         "files": [{"name": "a.json", "text": result_text()}, {"name": "", "text": result_text(True)}]},
        {"do": "sheet", "assignment": plain, "code": code},
        {"do": "key", "assignment": plain, "code": code},
    )  # fmt: skip
    return ways[way % len(ways)]


def learning(data: bytes) -> str:
    """A request of a page of exercises, with some of it changed."""
    tape = Tape(data)
    return learned(hostile.mutated_text(asked_of_exercises(tape), tape))


def classes(data: bytes) -> str:
    """A request of the pages of assignments, with some of it changed."""
    tape = Tape(data)
    return learned(hostile.mutated_text(asked_of_classes(tape), tape))


def learning_text(data: bytes) -> str:
    """Any text to the learning door."""
    return learned(decoded(data))


def learned(text: str) -> str:
    """Sends text through the learning door."""
    with learning_bank.own_calculator():
        if door.answer('{"do": "draw"}') == '{"needs_bank": true}':
            door.load_bank(bank_text())
        found = loaded(door.answer(text))
    need(isinstance(found, dict), "the answer is no object")
    if "refused" in found:
        need(
            isinstance(found["refused"], str) and len(found["refused"]) > 10,
            "refused without words",
        )
        check_shown(found["refused"], text, "a refusal")
        return "refused"
    for words in words_of(found):
        check_shown(words, text, "an answer")
    return "answered"


def learning_seeds() -> Iterator[bytes]:
    """Every exercise, drawn and marked."""
    for at in range(len(exercises())):
        for way in range(6):
            yield bytes((way, *_at(at), 1, way % 3, way % 3, 0, 2, 9, 9, 3, 2))


def _at(place: int) -> tuple[int, ...]:
    return (place,) if len(exercises()) <= 256 else (place // 256, place % 256)


def class_seeds() -> Iterator[bytes]:
    """Each thing that the pages of assignments ask."""
    for way in range(9):
        yield bytes((way, 1, 0, *_at(way * 7), 1))


def learning_text_seeds() -> Iterator[bytes]:
    """Requests as text."""
    for data in (*learning_seeds(), *class_seeds()):
        tape = Tape(data)
        yield json.dumps(asked_of_exercises(tape)).encode()
        break
    yield b'{"do":"next","exercises":["a/b"],"now":1e400,"history":[["a/b",true,1e400]]}'
    yield b'{"do":"next","exercises":["a/b"],"now":' + b"9" * 400 + b"}"
    yield b'{"do":"mark","exercise":"fret-spacing/x","seed":"\\ud800"}'
    history = ",".join(f'["{exercises()[at % 50]}",true,{at}]' for at in range(45_000))
    yield f'{{"do":"progress","history":[{history}]}}'.encode()
    yield f'{{"do":"next","exercises":["limit/hole-depth"],"history":[{history}]}}'.encode()
    yield b'"' + b"\\\\" * 1_000_000
    yield b'"' * 1_000_000
    yield b"[" * 1_000_000
    yield b'{"do":"' + b"a" * 2_100_000 + b'"}'


# --- documents: links, assignments, results


def links(data: bytes) -> str:
    """The end of a link: any text, any packed text, or a real one with some of it changed."""
    tape = Tape(data)
    way, inside = tape.byte() % 4, decoded(data)
    if way == 0:
        link = decoded(tape.rest())
    elif way == 1:
        link = link_text.pack(decoded(tape.rest()).encode("utf-8", "replace").decode(), "a1.")
    elif way == 2:
        payload = decoded(tape.rest())
        link = f"a1.{payload}.{link_text.check(payload.encode('utf-8', 'replace').decode())}"
    else:
        inside = hostile.mutated_text(assignments.to_json(assignment()), tape)
        link = link_text.pack(inside, "a1.")
    return _document(lambda: assignments.from_link_fragment(link), link + inside)


def assignment_files(data: bytes) -> str:
    """An assignment's file with some of it changed, or any text."""
    tape = Tape(data)
    raw = tape.byte() % 4 == 0
    text = decoded(tape.rest()) if raw else (
        hostile.mutated_text(assignments.to_json(assignment()), tape)
    )  # fmt: skip
    return _document(lambda: assignments.read(None, text), text)


def _document(read: Any, typed: str) -> str:
    try:
        found = read()
    except UnfitFile as error:
        _check_words(str(error), typed)
        return "refused"
    text = assignments.to_text(found)
    check_plain(json.loads(text))
    need(assignments.read(None, text) == found, "an assignment is another when it is read again")
    need(
        assignments.from_link_fragment(assignments.to_link_fragment(found)) == found,
        "an assignment is another by its link",
    )
    with learning_bank.own_calculator():
        assignments.changed_since(bank(), found)
        try:
            assignments.questions_for(bank(), found, assignments.codes(found)[0])
        except (UnfitFile, KeyError):
            return "answered"
    return "answered"


def _check_words(words: str, typed: str) -> None:
    need(4 < len(words) < 400, f"a refusal of {len(words)} characters: {words[:200]}")
    need(is_clean(words), f"a refusal holds what steers a terminal: {words!r}"[:300])
    check_shown(words, typed, "a refusal")


def result_texts(data: bytes) -> str:
    """A result's file with some of it changed, marked again with a sound one."""
    tape = Tape(data)
    way = tape.byte()
    text = decoded(tape.rest()) if way % 4 == 0 else (
        hostile.mutated_text(json.loads(result_text(way % 8 > 3)), tape)
    )  # fmt: skip
    with learning_bank.own_calculator():
        table = mark_class(
            bank(), assignment(), [("sound.json", result_text()), ("\x1b\ud800.json", text)]
        )
        csv, html = to_csv(table), to_html(table)
    csv.encode()
    html.encode()
    need(not CONTROLS & set(csv + html), "a table holds what steers a terminal")
    for _, why in table.unreadable:
        _check_words(why, text)
    for one in table.findings:
        check_shown(one.words, text, "a finding")
    return "refused" if table.unreadable else "answered"


def untrusted_json(data: bytes) -> str:
    """Any text as JSON of strangers."""
    text = decoded(data)
    depth(text)
    try:
        check_value = parse(text, 400_000)
    except UnfitFile as error:
        _check_words(str(error), text)
        return "refused"
    json.dumps(check_value)
    return "answered"


def json_seeds() -> Iterator[bytes]:
    """JSON whole, damaged, deep, long, with names given twice."""
    yield result_text().encode()
    yield assignments.to_text(assignment()).encode()
    yield b'{"a":1,"a":2}'
    names = ",".join(f'"{one}":1' for one in range(30_000))
    yield ("{" + names + ',"29999":1}').encode()
    for letter in (b"[", b'{"a":', b'"', b'"\\', b"\\", b"]", b"1", b"-", b" ", b"\xef\xbb\xbf"):
        yield letter * (390_000 // len(letter))
    yield b"[1e400, -0.0, 1e-400]"
    yield b"[" + b"1" * 5000 + b"]"


def document_seeds() -> Iterator[bytes]:
    """A document as it is, in every way a case may begin."""
    for way in range(8):
        yield bytes((way, 0))
        yield bytes((way, 1, 1, 3, 7, 99))
    yield b"\0" + assignments.to_link_fragment(assignment()).encode()
    yield b"\0" + assignments.to_text(assignment()).encode()
    yield b"\0" + result_text().encode()
    yield b"\0\xed\xa0\x80"
    yield b"\0a1.\xed\xa0\x80.12345678"
    yield b"\2eNpL\xed\xa0\x80"
    yield b"\1" + b" " * 60_000


# --- files, as the command line reads them


def class_files(data: bytes) -> str:
    """A folder with files of any bytes, marked as ``benchrule mark`` marks it."""
    tape = Tape(data)
    with tempfile.TemporaryDirectory(prefix="benchrule-fuzz-") as name:
        folder = Path(name)
        own = folder / "own.json"
        way = tape.byte()
        own.write_bytes(tape.rest() if way % 8 == 7 else assignments.to_text(assignment()).encode())
        (folder / "a.json").write_bytes(
            result_text().encode("utf-16" if way % 8 == 1 else "utf-8-sig")
        )
        (folder / "b.json").write_bytes(tape.rest())
        if way % 8 == 2:
            (folder / "c.json").mkdir()
        if way % 8 == 3:
            os.mkfifo(folder / "d.json")
        try:
            found = read_assignment(own)
            with learning_bank.own_calculator():
                table = mark_class(bank(), found, result_files([folder], own))
                to_csv(table).encode()
        except (click.ClickException, TooManyFiles) as error:
            need(len(str(error)) > 4, "refused without words")
            return "refused"
    return "answered"


def names_files(data: bytes) -> str:
    """A CSV of code,name as ``benchrule training take`` reads it."""
    try:
        found = read_names(decoded(data).encode("utf-8", "replace").decode())
    except click.ClickException as error:
        _check_words(error.message, decoded(data))
        return "refused"
    for code, name in found.items():
        need(is_clean(name) and 0 < len(name) <= 80 and len(code) == 4, f"a name is {name!r}")
    csv_text([[name] for name in found.values()])
    return "answered"


DEVICE: dict[str, Any] = {
    "benchrule": "measured", "version": 1, "order": "2026-101",
    "values": {"a.b": {"given": "2.9 mm", "units": "metric", "at": "2026-11-30T10:00:00Z"}},
}  # fmt: skip


def device_files(data: bytes) -> str:
    """A file of measured values that a device saved."""
    tape = Tape(data)
    raw = tape.byte() % 4 == 0
    text = decoded(tape.rest()) if raw else hostile.mutated_text(DEVICE, tape)
    try:
        found = from_device(text, "2026-101")
    except CannotRecord as error:
        _check_words(str(error), text)
        return "refused"
    for key, (reading, units, day) in found.items():
        need(is_clean(key) and is_clean(reading), f"a key or a reading is {key!r} {reading!r}")
        need(units in ("metric", "inch", "inch64"), f"the units are {units}")
        need(day == "" or assignments.is_day(day), f"a day is {day!r}")
    return "answered"
