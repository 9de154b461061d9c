"""The door of assignments: what the pages ask and are told; nothing makes it fail."""

import json
from collections.abc import Iterator
from typing import Any
from unittest import mock

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calculators.engine import registry
from calculators.learning import door

from .learning_bank import BANK, CHOSEN, ID, TIMES, own_calculator

CHOICES = {"title": "Holes", "trainees": 2, "questions": CHOSEN}


@pytest.fixture(scope="module", autouse=True)
def _bank() -> Iterator[None]:
    with own_calculator():
        door.load_bank(json.dumps(BANK))
        yield
        door._bank.clear()


def ask(do: str, **request: Any) -> dict[str, Any]:
    found: dict[str, Any] = json.loads(door.answer(json.dumps({"do": do, **request})))
    return found


@pytest.fixture(scope="module")
def opened(_bank: None) -> dict[str, Any]:
    return ask("make_assignment", choices=CHOICES, id=ID)


def test_the_catalogue_names_every_exercise() -> None:
    stations = {one["id"]: one for one in ask("catalogue")["stations"]}
    named = {one["id"]: (one["title"], one["kind"]) for one in stations["drilling"]["exercises"]}
    assert named == {
        "limit/hole-depth": ("Limits: Depth of the hole", "choice"),
        "order/drilling": ("Order of work: Drilling", "order"),
        "fault/drilling": ("Faults: Drilling", "choice"),
        "stack-height/how-high": ("Stack height: how high", "number"),
        "stack-height/few": ("Stack height: few", "number"),
        "stack-height/never": ("Stack height: never", "number"),
        "stack-height/too-high": ("Stack height: too high", "choice"),
    }
    assert stations["fitting"]["title"] == "Fitting"


def test_an_assignment_is_the_same_from_choices_a_file_and_a_link(opened: dict[str, Any]) -> None:
    assert ask("open_assignment", text=opened["text"]) == opened
    assert ask("open_assignment", fragment=opened["fragment"]) == opened
    assert (opened["count"], len(opened["codes"]), opened["questions"], opened["of"]) == (
        2,
        2,
        7,
        7,
    )
    assert opened["calculators"] == ["stack-height"] and opened["changed"] == []
    assert opened["assignment"]["id"] == ID and opened["file_name"] == f"assignment-{ID}.json"


def test_questions_come_without_what_answers_them(opened: dict[str, Any]) -> None:
    code = opened["codes"][0]
    found = ask("assignment_questions", assignment=opened["assignment"], code=f" {code.lower()} ")
    assert [one["number"] for one in found["questions"]] == list(range(1, 8)) and found[
        "left_out"
    ] == []
    for one in found["questions"]:
        assert not {"answer", "shown", "slips", "whys", "seed"} & set(one)
        assert (one["hints"], one["open_hints"], one["steps"]) == (0, 0, [])


def test_grade_1_shows_the_first_step_of_a_number() -> None:
    first = ask("make_assignment", choices={**CHOICES, "grade": 1}, id=ID)
    found = ask("assignment_questions", assignment=first["text"], code=first["codes"][0])
    assert [len(one["steps"]) for one in found["questions"]] == [1, 1, 0, 0, 0, 0, 0]


def test_a_result_is_marked_with_reasons_and_marked_again_alike(opened: dict[str, Any]) -> None:
    code = opened["codes"][1]
    given = {"1": "<script>", "3": 0, "5": [0, 1, 2, 3]}
    made = ask("make_result", assignment=opened["fragment"], code=code, given=given, **TIMES,
               at={"1": TIMES["began"], "2": TIMES["began"], "3": "never"})  # fmt: skip
    assert made["of"] == 7 and made["score"] == sum(one["got"] for one in made["marks"])
    assert made["file_name"] == f"result-{ID}-{code}.json"
    first = made["marks"][0]
    assert (first["number"], first["verdict"], first["given"]) == (1, "unreadable", "<script>")
    assert first["steps"] and first["why"] is not None and first["question"]
    answers = json.loads(made["text"])["answers"]
    assert [one["at"] for one in answers[:3]] == [TIMES["began"], "", ""]
    marked = ask("mark_class", assignment=opened["text"],
                 files=[{"name": "r.json", "text": made["text"]}, {"name": "<b>", "text": "{"}])  # fmt: skip
    assert [one["kind"] for one in marked["findings"]] == ["unanswered"]
    assert marked["unreadable"] == [{"file": "<b>", "why": "it is cut off: its end is missing"}]
    assert marked["absent"] == [opened["codes"][0]] and marked["trainees"] == 1
    assert (
        marked["clean"] is False and "&lt;b&gt;" in marked["html"] and "<b>" not in marked["html"]
    )
    assert marked["csv"].splitlines()[1].startswith(f"{code},r.json,")
    assert marked["document"].startswith("<!doctype html>") and marked["html"] in marked["document"]


def test_sheets_and_keys_are_of_one_code_or_of_all(opened: dict[str, Any]) -> None:
    one, other = opened["codes"]
    for what in ("sheet", "key"):
        single = ask(what, assignment=opened["assignment"], code=one)
        assert one in single["html"] and other not in single["html"]
        every = ask(what, assignment=opened["assignment"])
        assert (
            one in every["html"] and other in every["html"] and every["html"] in every["document"]
        )


@pytest.mark.parametrize(
    ("do", "request_", "reason"),
    [
        ("open_assignment", {}, "neither a text nor a fragment"),
        ("open_assignment", {"text": "{"}, "cut off"),
        ("open_assignment", {"fragment": "a1.abc"}, "cut off"),
        ("open_assignment", {"fragment": "b7.abc"}, "none to an assignment"),
        ("make_assignment", {}, "no choices"),
        ("make_assignment", {"choices": CHOICES}, "id must be"),
        ("make_assignment", {"choices": {**CHOICES, "questions": [["order/none", 1]]}, "id": ID}, "order/none"),
        ("make_assignment", {"choices": {**CHOICES, "colour": 1}, "id": ID}, "colour"),
        ("assignment_questions", {"assignment": 5, "code": "AAAA"}, "not an assignment"),
        ("make_result", {"assignment": {}}, "not an assignment"),
        ("mark_class", {"assignment": None, "files": []}, "not an assignment"),
        ("sheet", {"assignment": []}, "not an assignment"),
        ("key", {"assignment": "nonsense"}, "no JSON"),
    ],
)  # fmt: skip
def test_what_cannot_be_done_is_refused_in_words(
    do: str, request_: dict[str, Any], reason: str
) -> None:
    found = ask(do, **request_)
    assert set(found) == {"refused"} and reason in found["refused"]


def test_a_wrong_code_or_a_result_without_answers_is_refused(opened: dict[str, Any]) -> None:
    good = {"assignment": opened["assignment"], "code": opened["codes"][0]}
    assert (
        "no code of this assignment"
        in ask("assignment_questions", **{**good, "code": "2222"})["refused"]
    )
    assert "no code" in ask("sheet", **{**good, "code": None})["refused"]
    assert "no answers" in ask("make_result", **good, **TIMES)["refused"]
    assert "began" in ask("make_result", **good, given={})["refused"]
    assert "no list of files" in ask("mark_class", **good, files=[1])["refused"]
    assert (
        "501 files" in ask("mark_class", **good, files=[{"name": "x", "text": ""}] * 501)["refused"]
    )


def test_only_the_marking_of_a_class_may_be_long() -> None:
    assert "too long" in ask("catalogue", padding="x" * 2_000_001)["refused"]
    assert "not an assignment" in ask("mark_class", padding="x" * 2_000_001)["refused"]
    assert "too long" in ask("mark_class", padding="x" * 20_000_001)["refused"]


def test_a_request_nested_too_deep_is_refused_before_it_is_parsed() -> None:
    with mock.patch.object(json, "loads", side_effect=AssertionError):
        found = door.answer('{"do":' + "[" * 100_000)
    assert found == json.dumps(
        {"refused": "the request is nested more than 12 deep; send plain values"}
    )


def test_calculators_that_are_not_fetched_yet_are_named(opened: dict[str, Any]) -> None:
    load = registry.load

    def not_there(name: str) -> Any:
        if name == "stack-height":
            raise ModuleNotFoundError(name)
        return load(name)

    with mock.patch.object(registry, "load", not_there):
        for do, request in (
            ("make_assignment", {"choices": CHOICES, "id": ID}),
            ("open_assignment", {"text": opened["text"]}),
            ("sheet", {"assignment": opened["assignment"]}),
        ):
            assert ask(do, **request)["needs"] == ["stack-height"]
        names = {one["id"]: one for one in ask("catalogue")["stations"][0]["exercises"]}
    assert names["stack-height/how-high"]["title"] == "Stack height: how high"
    assert names["stack-height/how-high"]["kind"] == ""


anything = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=5),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=5), inner, max_size=3),
    max_leaves=6,
)  # fmt: skip
FIELDS = [
    "choices",
    "id",
    "text",
    "fragment",
    "assignment",
    "code",
    "given",
    "files",
    "began",
    "saved",
    "at",
]


@given(st.sampled_from(door.FOR_CLASSES), st.dictionaries(st.sampled_from(FIELDS), anything))
@settings(max_examples=150)
def test_no_request_makes_it_fail(do: str, fields: dict[str, Any]) -> None:
    found = ask(do, **fields)
    assert "refused" in found or do == "catalogue"


@given(st.sampled_from(FIELDS), anything)
@settings(max_examples=100)
def test_no_field_of_a_sound_request_makes_it_fail(name: str, value: Any) -> None:
    one = ask("make_assignment", choices=CHOICES, id=ID)
    sound = {
        "assignment": one["assignment"],
        "code": one["codes"][0],
        "given": {},
        **TIMES,
        "files": [],
    }
    for do in ("assignment_questions", "make_result", "mark_class", "sheet"):
        assert isinstance(ask(do, **{**sound, name: value}), dict)
