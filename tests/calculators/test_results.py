"""Results: marked once by the trainee's page, again by the trainer; every alteration is found."""

import json
from collections.abc import Callable, Iterator
from functools import cache
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calculators.learning.assignment import Assignment, codes, make, questions_for, to_json
from calculators.learning.result_records import MarkedResult, UnfitResult, fit_given
from calculators.learning.results import make as make_result
from calculators.learning.results import mark_result, read, to_text

from .learning_bank import BANK, CHOSEN, ID, TIMES, bank, own_calculator, right, slipped, wrong

# Seven questions of two marks: 1, 2 a height; 3, 4 readings; 5 an order; 6 a fault; 7 a decision.
CHOICES = {"title": "Holes", "due": "2026-11-30", "trainees": 3, "marks": 2, "questions": CHOSEN}


@pytest.fixture(scope="module", autouse=True)
def _own() -> Iterator[None]:
    with own_calculator():
        yield


@cache
def one_of_three() -> Assignment:
    return make(BANK, CHOICES, ID)


@pytest.fixture(scope="module")
def made(_own: None) -> Assignment:
    return one_of_three()


@cache
def sound_text() -> str:
    return to_text(result_of(one_of_three()))


def given_by(
    assignment: Assignment, code: str, how: Callable[[Any], Any] = right
) -> dict[int, Any]:
    return {one.number: how(one.question) for one in questions_for(BANK, assignment, code)}


def result_of(assignment: Assignment, place: int = 0, **answers: Any) -> dict[str, Any]:
    """All right but for the answers named, q1 to q7."""
    code = codes(assignment)[place]
    given = given_by(assignment, code) | {int(name[1:]): one for name, one in answers.items()}
    return make_result(BANK, assignment, code, given, TIMES)


def marked(assignment: Assignment, result: dict[str, Any], use: Any = None) -> MarkedResult:
    return mark_result(use or BANK, assignment, to_text(result), "ash.json")


def kinds(found: MarkedResult) -> list[str]:
    return [one.kind for one in found.findings]


def refusal(text: object) -> str:
    with pytest.raises(UnfitResult) as found:
        read(text)
    return str(found.value)


def test_all_right_has_all_marks_and_no_finding(made: Assignment) -> None:
    result = result_of(made)
    assert (result["score"], result["of"]) == (14, 14)
    found = marked(made, result)
    assert (found.got, found.of, found.findings) == (14, 14, ())


def test_each_answer_is_worth_what_the_marking_says(made: Assignment) -> None:
    asked = questions_for(BANK, made, codes(made)[0])
    height = asked[0].question
    rounded = f"{float(height.shown.split()[0]):.1f} mm"
    result = result_of(
        made, q1=rounded, q2=slipped(asked[1].question), q3=wrong(asked[2].question), q5=None, q6=99
    )
    verdicts = [one["verdict"] for one in result["answers"]]
    assert verdicts == ["rounded", "slip", "wrong", "right", "missing", "unreadable", "right"]
    # Half of question 1, all of 4 and 7, two marks each.
    assert (result["score"], result["of"]) == (5, 14)
    found = marked(made, result)
    assert (found.got, found.of) == (5, 14)
    assert [one.mark.slip for one in found.answered][1] == "no-glue"
    assert kinds(found) == ["unanswered"]
    assert found.findings[0].words == "ash.json: no answer to question 5."


def test_a_result_reads_back_as_it_was_made(made: Assignment) -> None:
    result = result_of(made, q1="12,5 mm", q7=None)
    read_back = read(to_text(result))
    assert read_back.assignment == made and read_back.code == result["code"]
    assert [one._asdict() for one in read_back.answers] == result["answers"]
    assert (read_back.score, read_back.of) == (result["score"], result["of"])
    assert (read_back.began, read_back.saved) == (TIMES["began"], TIMES["saved"])


def test_words_hold_the_facts_and_the_options(made: Assignment) -> None:
    words = result_of(made)["answers"][2]["words"]
    assert "Gauge: Depth gauge" in words and "Limits: 9.5 to 10.5 mm" in words
    assert "1) It is in: pass it on" in words and "2) It is out: Set the stop again." in words


anything = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text()
    | st.sampled_from(["<script>alert(1)</script>", "=1+1", "\x1b[31m", "9" * 500, "1e400", "1/0", "\ud800"]),
    lambda inner: st.lists(inner, max_size=25) | st.dictionaries(st.text(max_size=3), inner, max_size=3),
    max_leaves=12,
)  # fmt: skip


@given(st.dictionaries(st.integers(0, 9) | st.text(max_size=2), anything, max_size=9))
@settings(max_examples=80)
def test_whatever_is_typed_makes_a_result_that_agrees_with_its_marking(
    given: dict[Any, Any],
) -> None:
    one = one_of_three()
    text = to_text(make_result(BANK, one, codes(one)[1], given, TIMES))
    found = mark_result(BANK, one, text, "x", ())
    assert set(kinds(found)) <= {"unanswered"}
    assert found.got == json.loads(text)["score"]


@pytest.mark.parametrize(
    "began", ["", "2026-11-30", "2026-11-30T10:00:00", "2026-13-30T10:00:00Z", "x", None, 5,
              "1926-11-30T10:00:00Z"],
)  # fmt: skip
def test_a_time_must_be_one_with_its_zone(made: Assignment, began: Any) -> None:
    with pytest.raises(UnfitResult, match="began"):
        make_result(BANK, made, codes(made)[0], {}, {**TIMES, "began": began})


# What may be altered in a result of all right answers: kind of finding, question, its words.
def alterations() -> list[tuple[Callable[[dict[str, Any]], Any], list[str], int, str]]:
    def answer(number: int, **fields: Any) -> Callable[[dict[str, Any]], Any]:
        return lambda result: result["answers"][number - 1].update(fields)

    def inside(**fields: Any) -> Callable[[dict[str, Any]], Any]:
        return lambda result: result["assignment"].update(fields)

    def words(result: dict[str, Any]) -> None:
        one = result["answers"][2]
        one["words"] = one["words"].replace("10.5", "11.5")

    def drop(result: dict[str, Any]) -> None:
        del result["answers"][4]

    def stray(result: dict[str, Any]) -> None:
        result["answers"].append({**result["answers"][6], "number": 8})

    return [
        (lambda r: r.update(score=13), ["score"], 0, "claims 13 of 14 marks; marked again it is 14 of 14"),
        (lambda r: r.update(of=12), ["score"], 0, "claims 14 of 12"),
        (answer(1, verdict="slip"), ["verdict"], 1, "claims “slip”"),
        (answer(1, share=0.5), ["verdict"], 1, "0.5 of the marks"),
        (answer(2, given="3 mm"), ["verdict", "score"], 2, "marked again it is “wrong”"),
        (answer(5, given=None), ["verdict", "unanswered", "score"], 5, "“missing”"),
        (words, ["words"], 3, "words are not those that this assignment draws"),
        (answer(4, words=""), ["words"], 4, "words are not those"),
        (answer(6, exercise="fault/fitting"), ["words"], 6, "words are not those"),
        (drop, ["unanswered", "score"], 5, "no answer to question 5"),
        (stray, ["stray"], 8, "a question 8 that there is not"),
        (inside(title="Other"), ["assignment"], 0, "altered (title)"),
        (inside(marks=3, grade=1), ["assignment"], 0, "altered (grade, marks)"),
        (inside(id="SAME234567"), ["assignment"], 0, "another assignment: SAME234567"),
        (lambda r: r.update(revisions={"drilling": 9, "fitting": 1}), ["revisions"], 0, "revisions"),
        (lambda r: r.update(code="2222"), ["code"], 0, "2222 is no code of this assignment"),
        (lambda r: r.update(edition="ffffffffffff"), ["edition"], 0, "edition ffffffffffff"),
        (lambda r: r.update(saved="2026-12-01T00:10:00+01:00"), ["late"], 0, "after the due day 2026-11-30"),
        (answer(3, at="2026-11-30T09:59:59+01:00"), ["times"], 3, "question 3 answered before"),
        (answer(3, at="2026-11-30T10:00:01Z"), ["times"], 3, "after it was saved"),
        (lambda r: r.update(began="2026-11-30T11:00:01+01:00"), ["times"], 0, "saved before it was begun"),
    ]  # fmt: skip


@pytest.mark.parametrize(("alter", "expected", "number", "words"), alterations())
def test_every_alteration_is_found_and_named(
    made: Assignment, alter: Any, expected: list[str], number: int, words: str
) -> None:
    result = json.loads(to_text(result_of(made)))
    alter(result)
    found = marked(made, result)
    assert kinds(found) == expected
    first = found.findings[0]
    assert words in first.words and first.number == number
    assert "ash.json" in first.words and first.file == "ash.json"
    tampered = set(expected) & {
        "score",
        "verdict",
        "words",
        "stray",
        "assignment",
        "revisions",
        "code",
    }
    assert {one.kind for one in found.findings if one.tampered} == tampered


def test_times_of_another_zone_are_compared_as_times(made: Assignment) -> None:
    result = result_of(made)
    result["answers"][0]["at"] = "2026-11-30T09:30:00Z"
    assert kinds(marked(made, result)) == []


def test_a_doctored_score_and_verdict_change_no_mark(made: Assignment) -> None:
    result = result_of(made, q1="1 mm", q2="1 mm")
    assert result["score"] == 10
    for answer in result["answers"]:
        answer.update(verdict="right", share=1)
    result["score"] = 14
    found = marked(made, result)
    assert found.got == 10
    assert kinds(found) == ["verdict", "verdict", "score"]


def test_another_trainees_code_draws_another_paper(made: Assignment) -> None:
    result = result_of(made)
    result["code"] = codes(made)[1]
    found = marked(made, result)
    assert "words" in kinds(found) and found.got < 14


def test_of_a_code_of_nobody_nothing_is_marked(made: Assignment) -> None:
    found = marked(made, {**result_of(made), "code": "2222"})
    assert (found.answered, found.got, found.of) == ((), 0, 0)


def test_the_trainers_assignment_counts_and_not_the_one_inside(made: Assignment) -> None:
    easy = make(BANK, {**CHOICES, "marks": 20, "grade": 1}, ID)
    result = make_result(BANK, easy, codes(easy)[0], given_by(easy, codes(easy)[0]), TIMES)
    assert result["score"] == 140
    found = marked(made, result)
    assert found.of == 14 and {"assignment", "words", "score"} <= set(kinds(found))


def test_a_changed_exercise_is_not_marked_and_the_rest_is(made: Assignment) -> None:
    result = result_of(made)
    later = bank()
    later["edition"] = "0123456789ab"
    later["stations"]["drilling"]["steps"].append({"title": "Wipe", "reason": "Clean."})
    found = marked(made, result, later)
    assert (found.got, found.of) == (12, 12)
    assert kinds(found) == ["changed", "edition"]
    assert found.findings[0].words == (
        "Question 5 (order/drilling) cannot be drawn again as it was, so it is not marked: "
        "build the edition a1b2c3d4e5f6, or set it again."
    )
    assert not any(one.tampered for one in found.findings)


def test_a_trainee_is_not_asked_what_has_changed(made: Assignment) -> None:
    later = bank()
    later["tolerances"]["hole-depth"]["high"] = 10.6
    result = make_result(later, made, codes(made)[0], {}, TIMES)
    assert [one["number"] for one in result["answers"]] == [1, 2, 5, 6, 7]
    assert result["of"] == 14


def test_a_file_cut_anywhere_is_refused(made: Assignment) -> None:
    text = to_text(result_of(made)).strip()
    for length in range(0, len(text), 7):
        assert refusal(text[:length])
    assert "cut off" in refusal(text[: len(text) // 2])


@given(st.data())
@settings(max_examples=300)
def test_a_file_with_bytes_flipped_is_marked_or_refused_and_never_fails(
    data: st.DataObject,
) -> None:
    bytes_ = bytearray(sound_text().encode())
    for _ in range(data.draw(st.integers(1, 3))):
        bytes_[data.draw(st.integers(0, len(bytes_) - 1))] = data.draw(st.integers(0, 255))
    text = bytes_.decode("utf-8", "surrogateescape")
    try:
        found = mark_result(BANK, one_of_three(), text, "x", ())
    except UnfitResult as error:
        str(error).encode()
    else:
        "".join(each.words for each in found.findings).encode()


HOSTILE: list[tuple[dict[str, Any], str]] = [
    ({"benchrule": "assignment"}, "an assignment, not a result"),
    ({"version": 2}, "version 2"),
    ({"version": None}, "version None"),
    ({"code": "abcd"}, "code"),
    ({"code": ["TEST"]}, "code"),
    ({"edition": ""}, "edition"),
    ({"revisions": [1]}, "revisions"),
    ({"began": "today"}, "began"),
    ({"saved": 5}, "saved"),
    ({"answers": {}}, "answers"),
    ({"answers": [1]}, "an answer is no object"),
    ({"answers": [{}]}, "number"),
    ({"score": "14"}, "score"),
    ({"score": -1}, "score"),
    ({"score": True}, "score"),
    ({"score": 10**300}, "score"),
    ({"of": None}, "of"),
    ({"assignment": None}, "assignment in it is unfit"),
    ({"assignment": "a1.x"}, "assignment in it is unfit"),
    ({"assignment": {"benchrule": "assignment", "version": 1}}, "assignment in it is unfit"),
    ({"name": "Ash"}, "“name” that there is not"),
]
HOSTILE_ANSWERS: list[tuple[dict[str, Any], str]] = [
    ({"number": 0}, "number"),
    ({"number": 1.0}, "number"),
    ({"number": 2}, "question 2 is answered twice"),
    ({"exercise": "<script>"}, "exercise"),
    ({"words": 5}, "words"),
    ({"words": "x" * 20_001}, "words"),
    ({"words": "\x1b[2J"}, "words"),
    ({"given": True}, "given"),
    ({"given": 1.5}, "given"),
    ({"given": {"a": 1}}, "given"),
    ({"given": "x" * 201}, "given"),
    ({"given": "a\nb"}, "given"),
    ({"given": [1, "2"]}, "given"),
    ({"given": list(range(21))}, "given"),
    ({"at": "now"}, "at"),
    ({"at": None}, "at"),
    ({"verdict": "brilliant"}, "verdict"),
    ({"share": 2}, "share"),
    ({"share": "1"}, "share"),
    ({"marks": 5}, "“marks” that there is not"),
]


@pytest.mark.parametrize(("fields", "reason"), HOSTILE)
def test_an_unfit_field_is_refused(made: Assignment, fields: dict[str, Any], reason: str) -> None:
    assert reason in refusal(json.dumps({**result_of(made), **fields}))


@pytest.mark.parametrize(("fields", "reason"), HOSTILE_ANSWERS)
def test_an_unfit_answer_is_refused(made: Assignment, fields: dict[str, Any], reason: str) -> None:
    result = json.loads(to_text(result_of(made)))
    result["answers"][0].update(fields)
    assert reason in refusal(json.dumps(result))


def test_a_field_that_is_missing_is_named(made: Assignment) -> None:
    whole = result_of(made)
    for name in set(whole) - {"benchrule"}:
        assert name in refusal(json.dumps({key: one for key, one in whole.items() if key != name}))


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        (None, "no text"), ("", "empty"), ("[" * 300_000, "nested"), (" " * 400_001, "longer than 400 kB"),
        ('{"score": NaN}', "NaN is no number"), ('{"of": 1, "of": 2}', "“of” twice"), ("\0", "no JSON"),
        ("[]", "something else"), ('"' + '\\"' * 190_000 + "\\", "cut off"),
    ],
)  # fmt: skip
def test_text_that_is_no_result_is_refused(text: Any, reason: str) -> None:
    assert reason in refusal(text)


def test_a_share_that_is_no_number_is_refused(made: Assignment) -> None:
    text = to_text(result_of(made)).replace('"share":1.0', '"share":NaN', 1)
    assert "NaN is no number" in refusal(text)


def test_more_answers_than_any_assignment_has_are_refused(made: Assignment) -> None:
    result = result_of(made)
    result["answers"] = [{**result["answers"][0], "number": n} for n in range(1, 202)]
    assert "0 to 200 entries" in refusal(json.dumps(result))


@given(anything)
def test_what_is_fit_stays_as_it_is(value: Any) -> None:
    assert fit_given(fit_given(value)) == fit_given(value)


def test_nobody_is_named_in_a_result(made: Assignment) -> None:
    assert set(result_of(made)) == {
        "benchrule", "version", "assignment", "code", "edition", "revisions", "began", "saved",
        "answers", "score", "of",
    }  # fmt: skip
    assert to_json(made).keys() == result_of(made)["assignment"].keys()
