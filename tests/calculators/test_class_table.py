"""A class marked: every figure by hand, what to teach again, and nothing hostile let through."""

import csv
import io
import json
from collections.abc import Callable, Iterator
from functools import cache
from html.parser import HTMLParser
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calculators.learning import results
from calculators.learning.assignment import Assignment, codes, make, questions_for
from calculators.learning.class_marks import ClassTable, TooManyFiles, mark_class, to_json
from calculators.learning.class_table import csv_text, to_csv, to_html, to_text
from calculators.learning.question import Question
from calculators.learning.sheet import FOOT, key_html, sheet_html, standalone

from .learning_bank import BANK, ID, TIMES, bank, own_calculator, right, slipped, wrong

CHOSEN = [["stack-height/how-high", 2], ["limit/hole-depth", 2], ["order/drilling", 1]]
CHOICES = {"title": "Holes <b>& more</b>", "word": "Go <i>slowly</i>.", "trainees": 4, "marks": 2,
           "due": "2026-12-01", "questions": CHOSEN}  # fmt: skip


@pytest.fixture(scope="module", autouse=True)
def _own() -> Iterator[None]:
    with own_calculator():
        yield


@cache
def made() -> Assignment:
    return make(BANK, CHOICES, ID)


def handed_in(place: int, how: Callable[[int, Question], Any], **times: str) -> str:
    """A result of a code; ``how`` says what is answered to a question, by number."""
    code = codes(made())[place]
    given = {one.number: how(one.number, one.question) for one in questions_for(BANK, made(), code)}
    return results.to_text(results.make(BANK, made(), code, given, {**TIMES, **times}))


def all_right(number: int, question: Question) -> Any:
    return right(question)


@cache
def four() -> tuple[tuple[str, str], ...]:
    """The first all right; the second and third forget the glue once and twice; the fourth little."""

    def once(number: int, question: Question) -> Any:
        return slipped(question) if number == 1 else right(question)

    def twice(number: int, question: Question) -> Any:
        return (
            slipped(question)
            if number in (1, 2)
            else wrong(question)
            if number == 5
            else right(question)
        )

    def little(number: int, question: Question) -> Any:
        if number == 1:
            return f"{float(question.shown.split()[0]):.1f}"  # rounded too far
        return wrong(question) if number == 3 else None if number == 5 else right(question)

    how = (all_right, once, twice, little)
    return tuple(
        (f"{name}.json", handed_in(at, how[at])) for at, name in enumerate(("a", "b", "c", "d"))
    )


@cache
def table() -> ClassTable:
    return mark_class(BANK, made(), four())


def of(code_place: int) -> Any:
    return next(row for row in table().rows if row.code == codes(made())[code_place])


def test_every_cell_is_what_was_earned() -> None:
    assert table().skills == (
        ("Stack height", 4), ("Limits: Drilling", 4), ("Order of work: Drilling", 2),
    )  # fmt: skip
    got = {place: [one for one, _ in of(place).cells] for place in range(4)}
    assert got == {0: [4, 4, 2], 1: [2, 4, 2], 2: [0, 4, 0], 3: [3, 2, 0]}
    assert [(of(place).got, of(place).of) for place in range(4)] == [
        (10, 10),
        (8, 10),
        (4, 10),
        (5, 10),
    ]
    assert [row.code for row in table().rows] == sorted(codes(made()))


def test_what_went_wrong_is_said_with_its_reason() -> None:
    assert of(0).wrong == ()
    (one,) = of(1).wrong
    assert (one.number, one.verdict, one.why) == (1, "slip", "The glue has a thickness too.")
    assert one.given == slipped(questions_for(BANK, made(), codes(made())[1])[0].question)
    assert [(each.number, each.verdict) for each in of(3).wrong] == [
        (1, "rounded"), (3, "wrong"), (5, "missing"),
    ]  # fmt: skip


def test_how_often_right_the_worst_first() -> None:
    # Heights: 2 + 1 + 0 + 1 of 8; the order: 2 of 4; readings: 2 + 2 + 2 + 1 of 8.
    assert [(one.exercise, one.right, one.asked, one.trainees) for one in table().exercises] == [
        ("order/drilling", 2, 4, 4), ("stack-height/how-high", 4, 8, 4), ("limit/hole-depth", 7, 8, 4),
    ]  # fmt: skip


def test_a_slip_of_two_trainees_is_to_be_taught_again_and_one_of_one_in_four_is_not() -> None:
    heights = next(one for one in table().exercises if one.exercise == "stack-height/how-high")
    assert [(slip.words, slip.trainees) for slip in heights.slips] == [
        ("The glue has a thickness too.", 2)
    ]
    assert next(one for one in table().exercises if one.exercise == "limit/hole-depth").slips == ()


@pytest.mark.parametrize(("slips", "common"), [(1, 0), (2, 1)])
def test_in_a_large_class_two_are_enough_and_one_is_not(slips: int, common: int) -> None:
    one = make(BANK, {"title": "x", "trainees": 9, "questions": [["stack-height/how-high", 1]]}, ID)
    files = []
    for place, code in enumerate(codes(one)):
        (asked,) = questions_for(BANK, one, code)
        given = {1: slipped(asked.question) if place < slips else right(asked.question)}
        files.append((code, results.to_text(results.make(BANK, one, code, given, TIMES))))
    (heights,) = mark_class(BANK, one, files).exercises
    assert len(heights.slips) == common and (heights.right, heights.asked) == (9 - slips, 9)


def test_in_a_class_of_three_one_is_a_third() -> None:
    few = mark_class(BANK, made(), four()[:2] + four()[3:])
    heights = next(one for one in few.exercises if one.exercise == "stack-height/how-high")
    assert {slip.trainees for slip in heights.slips} == {1} and len(heights.slips) == 2
    assert any(slip.words.startswith("Rounded too far.") for slip in heights.slips)


def test_a_wrong_cause_is_one_slip_wherever_it_was_laid() -> None:
    one = make(BANK, {"title": "x", "trainees": 40, "questions": [["fault/drilling", 1]]}, ID)
    files = []
    for code in codes(one):
        (asked,) = questions_for(BANK, one, code)
        options = asked.question.options
        if "Cause a." in options and asked.question.shown != "Cause a.":
            given = {1: options.index("Cause a.")}
            files.append((code, results.to_text(results.make(BANK, one, code, given, TIMES))))
    assert len({json.loads(text)["answers"][0]["given"] for _, text in files}) > 1
    (fault,) = mark_class(BANK, one, files).exercises
    assert [(slip.trainees, "“Cause a”" in slip.words) for slip in fault.slips] == [
        (len(files), True)
    ]


def test_files_that_cannot_be_read_are_listed_and_the_others_marked() -> None:
    files = [*four(), ("cut.json", four()[0][1][:300]), ("huge.json", "x" * 400_001), ("empty", "")]
    found = mark_class(BANK, made(), files)
    assert found.rows == table().rows
    assert dict(found.unreadable) == {
        "cut.json": "it is cut off: its end is missing", "huge.json": "it is longer than 400 kB",
        "empty": "it is empty",
    }  # fmt: skip
    assert not found.is_clean and table().is_clean


def test_of_two_files_with_a_code_the_first_saved_counts() -> None:
    later = handed_in(1, all_right, saved="2026-11-30T11:30:00+01:00")
    earlier = handed_in(1, all_right, saved="2026-11-30T10:30:00+01:00")
    found = mark_class(BANK, made(), [four()[1], ("late.json", later), ("early.json", earlier)])
    (row,) = found.rows
    assert (row.file, row.got) == ("early.json", 10)
    (finding,) = [one for one in found.findings if one.kind == "twice"]
    assert "b.json and late.json and early.json have the same code" in finding.words
    assert "the table has early.json" in finding.words and not finding.tampered


def test_the_same_file_twice_counts_once() -> None:
    found = mark_class(BANK, made(), [four()[1], ("copy.json", four()[1][1])])
    assert [one.kind for one in found.findings] == ["repeated"] and len(found.rows) == 1


def test_who_handed_in_nothing_is_named() -> None:
    found = mark_class(BANK, made(), four()[:2])
    assert found.absent == tuple(codes(made())[2:])
    lines = list(csv.reader(io.StringIO(to_csv(found))))
    assert [line[0] for line in lines[-2:]] == codes(made())[2:] and len(lines) == 5


def test_a_tampered_file_comes_first_and_late_ones_are_one_line() -> None:
    doctored = json.loads(four()[1][1])
    doctored["score"] = 10
    late = {"saved": "2026-12-03T11:00:00+01:00"}
    files = [
        ("a", handed_in(0, all_right, **late)), ("c", handed_in(2, all_right, **late)),
        ("b", json.dumps(doctored)), ("again", handed_in(0, all_right)),
    ]  # fmt: skip
    found = mark_class(BANK, made(), files)
    assert [one.kind for one in found.findings] == ["score", "twice", "late"]
    assert found.findings[2].words == "Saved after the due day: a (2026-12-03), c (2026-12-03)."
    assert not found.is_clean


def test_a_change_of_the_handbook_is_said_once_for_the_class() -> None:
    later = bank()
    later["edition"] = "ffffffffffff"
    later["tolerances"]["hole-depth"]["high"] = 10.6
    found = mark_class(later, made(), four())
    assert [one.kind for one in found.findings] == ["changed", "unanswered", "edition"]
    assert "Questions 3 and 4 (limit/hole-depth)" in found.findings[0].words
    assert [row.of for row in found.rows] == [6] * 4 and found.is_clean
    assert [title for title, _ in found.skills] == ["Stack height", "Order of work: Drilling"]


def test_a_class_has_at_most_500_files() -> None:
    many = [(f"{at}", "") for at in range(501)]
    assert len(mark_class(BANK, made(), many[:500]).unreadable) == 500
    with pytest.raises(TooManyFiles, match="501"):
        mark_class(BANK, made(), many)


def test_a_class_of_nobody_is_a_table_all_the_same() -> None:
    found = mark_class(BANK, made(), [])
    assert "No result could be marked." in to_text(found) and "No result" in to_html(found)
    assert to_csv(found).startswith("Code,File,Marks,Of\r\n")


def test_the_csv_gives_the_marks_as_numbers() -> None:
    lines = list(csv.reader(io.StringIO(to_csv(table()))))
    assert lines[0] == ["Code", "File", "Stack height (of 4)", "Limits: Drilling (of 4)",
                        "Order of work: Drilling (of 2)", "Marks", "Of"]  # fmt: skip
    assert {line[0]: line[1:] for line in lines[1:]} == {
        codes(made())[0]: ["a.json", "4", "4", "2", "10", "10"],
        codes(made())[1]: ["b.json", "2", "4", "2", "8", "10"],
        codes(made())[2]: ["c.json", "0", "4", "0", "4", "10"],
        codes(made())[3]: ["d.json", "3", "2", "0", "5", "10"],
    }  # fmt: skip


FORMULAS = [
    '=HYPERLINK("x")',
    "+1+1",
    "-1+1",
    "@SUM(A1)",
    "\t=1",
    "\r=1",
    "  =1",
    "-",
    "+5",
    "=",
    "-2.",
    "1\n=2",
]


@pytest.mark.parametrize("cell", FORMULAS)
def test_no_cell_is_a_formula(cell: str) -> None:
    ((found,),) = csv.reader(io.StringIO(csv_text([[cell]]), newline=""))
    assert found == (cell if cell == "1\n=2" else "'" + cell)


@pytest.mark.parametrize(
    "cell", ["-1", "-2.5", "3", "plain, with comma", 'with "quotes"', "a=b", "", "ä"]
)
def test_a_plain_number_or_text_stays_as_it_is(cell: str) -> None:
    assert list(csv.reader(io.StringIO(csv_text([["x", cell]]), newline=""))) == [["x", cell]]


@given(st.lists(st.lists(st.text(), min_size=2, max_size=2), max_size=4))
def test_csv_reads_back_and_never_begins_as_a_formula(rows: list[list[str]]) -> None:
    back = list(csv.reader(io.StringIO(csv_text(rows), newline="")))
    assert [[cell.removeprefix("'") for cell in row] for row in back] == [
        [cell.removeprefix("'") for cell in row] for row in rows
    ]
    for cell in (cell for row in back for cell in row):
        number = cell.lstrip("-").replace(".", "", 1).isdigit()
        assert number or cell.lstrip(" ")[:1] not in {"=", "+", "-", "@", "\t", "\r", "\n"}


class Tags(HTMLParser):
    """Every element and attribute of a fragment; fails where one is not closed."""

    VOID = frozenset({"br", "meta"})

    def __init__(self, html: str) -> None:
        super().__init__()
        self.open: list[str] = []
        self.seen: list[tuple[str, dict[str, str | None]]] = []
        self.feed(html)
        self.close()
        assert self.open == []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.seen.append((tag, dict(attrs)))
        if tag not in self.VOID:
            self.open.append(tag)

    def handle_endtag(self, tag: str) -> None:
        assert self.open.pop() == tag

    def names(self) -> set[str]:
        return {tag for tag, _ in self.seen}


SAFE = {"div", "section", "header", "h1", "h2", "h3", "p", "ul", "ol", "li", "table", "caption", "thead",
        "tbody", "tr", "th", "td", "br", "small", "strong", "b", "a", "details", "summary", "dl", "dt",
        "dd", "span"}  # fmt: skip


@given(
    st.sampled_from(
        ["<script>alert(1)</script>", '"><img src=x onerror=1>', "'", "&amp;", "\x1b[2J"]
    )
    | st.text()
)
@settings(max_examples=60)
def test_a_hostile_file_name_or_answer_is_shown_as_text_only(hostile: str) -> None:
    def hostile_answer(number: int, question: Question) -> Any:
        return hostile

    files = [(hostile, handed_in(0, hostile_answer)), (hostile + "2", "x"), (hostile, "")]
    found = mark_class(BANK, made(), files)
    tags = Tags(to_html(found))
    assert tags.names() <= SAFE
    allowed = {"class", "scope", "href", "id", "tabindex", "role", "aria-label"}
    assert {name for _, attributes in tags.seen for name in attributes} <= allowed
    shown = to_text(found)
    assert all(
        letter.isprintable() or letter in "\n\u00a0\u00ad" or ord(letter) > 0x1000
        for letter in shown
    )
    shown.encode()
    to_csv(found).encode()
    json.dumps(to_json(found), allow_nan=False)


def test_the_page_says_findings_first_then_the_table() -> None:
    html = to_html(mark_class(BANK, made(), [*four(), ("cut.json", "{")]))
    places = [html.index(part) for part in ("Findings", "<table>", "br-taught", "<details>")]
    assert places == sorted(places)
    tags = Tags(html)
    assert [attributes.get("scope") for tag, attributes in tags.seen if tag == "th"].count(
        None
    ) == 0
    assert (
        sum(tag == "caption" for tag, _ in tags.seen)
        == sum(tag == "table" for tag, _ in tags.seen)
        == 2
    )
    assert "Holes &lt;b&gt;&amp; more&lt;/b&gt;" in html


def test_the_terminal_has_the_same_figures() -> None:
    lines = to_text(table()).splitlines()
    assert "A  Stack height (of 4)" in lines
    row = next(line for line in lines if line.startswith(codes(made())[3]))
    assert row.split() == [codes(made())[3], "3", "2", "0", "5", "of", "10"]
    assert any("2 of 4: The glue has a thickness too." in line for line in lines)


def test_a_sheet_asks_everything_and_answers_nothing() -> None:
    code = codes(made())[0]
    html = sheet_html(BANK, made(), code)
    tags = Tags(html)
    assert tags.names() <= SAFE
    asked = questions_for(BANK, made(), code)
    for one in asked:
        assert one.question.words in html and f"<b>{one.number}.</b>" in html
    assert asked[0].question.shown not in html and "The glue has a thickness" not in html
    # Three boxes for each of two readings' options, four for the steps of an order.
    boxes = [
        attributes["class"]
        for tag, attributes in tags.seen
        if (attributes.get("class") or "").startswith("br-box")
    ]
    assert boxes == ["br-box"] * 6 + ["br-box br-large"] * 4
    assert "within 0.01 mm" in html and "Limits" in html and "9.5 to 10.5 mm" in html
    assert FOOT in html and code in html and "2026-12-01" in html and "of 10" in html
    assert "Go &lt;i&gt;slowly&lt;/i&gt;." in html


def test_a_key_has_every_answer_and_every_known_slip() -> None:
    chosen = codes(made())[:2]
    html = key_html(BANK, made(), chosen)
    assert Tags(html).names() <= SAFE and html.count("<table>") == 2
    for code in chosen:
        for one in questions_for(BANK, made(), code):
            question = one.question
            for slip in question.slips:
                assert f"<strong>{slip.shown}</strong> {slip.why}" in html
            if question.kind == "number":
                assert (
                    f"<strong>{question.shown}</strong>" in html and question.within_shown in html
                )
            elif question.kind == "choice":
                assert f"<strong>{'ABC'[question.answer]}</strong> {question.shown}" in html  # type: ignore[index]


def test_the_key_numbers_the_boxes_so_that_the_steps_come_in_order() -> None:
    laid = []
    for code in codes(made()):
        order = questions_for(BANK, made(), code)[4].question
        laid.append(order.answer)
        key = key_html(BANK, made(), [code])
        boxes = key.partition("Boxes from the top: <strong>")[2].partition("<")[0]
        numbered = sorted(zip(map(int, boxes.split(", ")), order.options, strict=True))
        assert " → ".join(option for _, option in numbered) == order.shown
    # Orders of which the numbers in the boxes are not the answer itself.
    assert any([one.index(at) for at in range(len(one))] != list(one) for one in laid)  # type: ignore[union-attr,arg-type]


def test_a_changed_exercise_is_left_out_of_the_sheet_and_said() -> None:
    later = bank()
    later["tolerances"]["hole-depth"]["high"] = 10.6
    html = sheet_html(later, made(), codes(made())[0])
    assert (
        "Left out" in html
        and "limit/hole-depth" in html
        and "<b>3.</b>" not in html
        and "of 6" in html
    )


def test_a_whole_document_runs_nothing_and_has_no_page_size() -> None:
    html = standalone("<script>x</script>", "<p>Body</p>")
    assert html.startswith("<!doctype html>") and "<script" not in html
    assert (
        "default-src 'none'" in html
        and "@page { margin: 15mm; }" in html
        and "size:" not in html.partition("@page")[2][:40]
    )
