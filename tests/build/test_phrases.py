"""Known phrases in running text."""

from benchrule.phrases import Phrases

TERMS = Phrases({"Run-out": "runout", "Heel cap": "cap", "Heel": "heel", "Kerf": "kerf"})


def found(text: str, overlapping: bool = False) -> list[tuple[str, str]]:
    return [(text[start:end], id) for start, end, id in TERMS.find(text, overlapping)]


def test_the_longest_phrase_is_found_first() -> None:
    assert found("The heel cap sits on the heel.") == [("heel cap", "cap"), ("heel", "heel")]


def test_every_phrase_is_found_where_they_may_overlap() -> None:
    assert found("heel  cap", overlapping=True) == [("heel  cap", "cap"), ("heel", "heel")]


def test_case_plurals_and_line_ends_do_not_matter() -> None:
    assert found("Kerfs, HEEL\ncaps") == [("Kerfs", "kerf"), ("HEEL\ncaps", "cap")]


def test_words_that_only_look_alike_are_left_alone() -> None:
    assert found("wheel, kerfing, run out, heel-piece, re-heel") == []
    assert found("run-out") == [("run-out", "runout")]
