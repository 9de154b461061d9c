"""What is fuzzed: each target is bytes → a case → "answered" or "refused", or an exception.

An exception of any kind is a finding: what cannot be done is refused, in words.
"""

from collections.abc import Callable, Iterable
from typing import NamedTuple

from . import authors, doors, learners


class Target(NamedTuple):
    """One thing that takes what strangers send."""

    case: Callable[[bytes], str]
    seeds: Callable[[], Iterable[bytes]]
    part: int  # of a thousand cases of a run
    longest: int = 1500  # bytes of a case
    words: Callable[[], Iterable[str]] = authors.names


def _judging_seeds() -> Iterable[bytes]:
    return (bytes((unit, 0, 60, 0, 99, 0, bound, 80, 0, unit, 2, 1, 2, 9, 9, 2)) for unit in range(60)
            for bound in range(6))  # fmt: skip


def _file_seeds() -> Iterable[bytes]:
    return [
        *(bytes((way,)) + learners.result_text(True).encode() for way in range(8)),
        b"\0\xff\xfe\0", b"\0", b"\0" + b"\0" * 4000, b"\0" + b" " * 1_700_000,
    ]  # fmt: skip


def _name_seeds() -> Iterable[bytes]:
    return [
        b"code,name\nABCD,Ann\n", b'ABCD,"A, B"\r\nEFGH,C', b"ABCD,A\nABCD,B", b"ABCD,A\nEFGH,A", b'"',
        b'ABCD,"A\nB"', b"ABCD,\x1b[31mA", b"ABCD", b",,,", b"a,b" + b"x" * 100_001, b"ABCD,\xed\xa0\x80",
        b'ABCD,"a"b"c', b"\xef\xbb\xbfABCD,A", b"ABCD,A\0", b"ABCD\r,A", b"ABCD," + b"x" * 81,
    ]  # fmt: skip


TARGETS: dict[str, Target] = {
    "calculators": Target(doors.built, doors.seeds, 150, 400),
    "json-text": Target(doors.as_text, doors.text_seeds, 85, 4000),
    "judging": Target(doors.judging, _judging_seeds, 145, 200),
    "readings": Target(authors.readings, authors.reading_seeds, 210, 200),
    "formulas": Target(authors.formulas, authors.formula_seeds, 95, 600),
    "yaml": Target(authors.yaml_texts, authors.yaml_seeds, 50, 600),
    "exercises": Target(learners.learning, learners.learning_seeds, 40, 300),
    "learning-text": Target(learners.learning_text, learners.learning_text_seeds, 35, 4000),
    "classes": Target(learners.classes, learners.class_seeds, 10, 400),
    "links": Target(learners.links, learners.document_seeds, 50, 2000),
    "assignments": Target(learners.assignment_files, learners.document_seeds, 40, 2000),
    "results": Target(learners.result_texts, learners.document_seeds, 8, 4000),
    "json-of-strangers": Target(learners.untrusted_json, learners.json_seeds, 50, 4000),
    "class-files": Target(learners.class_files, _file_seeds, 2, 4000),
    "names-files": Target(learners.names_files, _name_seeds, 15, 600),
    "device-files": Target(learners.device_files, learners.document_seeds, 15, 600),
}
