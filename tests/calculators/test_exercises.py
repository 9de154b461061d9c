"""Every exercise and decision of every calculator: it can be asked, answered and marked.

``EXERCISE_DRAWS`` says how many questions of each are drawn, over all unit systems and grades.
"""

import itertools
import os
from collections import Counter
from collections.abc import Iterator

import pytest

from calculators.engine.compute import PLACE, Answer, work_out
from calculators.engine.declaration import Calculator, Decision, Exercise, Slip
from calculators.engine.formula import parse
from calculators.engine.registry import load
from calculators.engine.showing import SYSTEMS
from calculators.learning.marking import (
    MISSING,
    RIGHT,
    ROUNDED,
    SLIP,
    UNIT,
    UNREADABLE,
    WRONG,
    mark,
)
from calculators.learning.numbers import draw_decision, draw_number, draw_value
from calculators.learning.question import CHOICE, GRADES, NUMBER, Question
from calculators.learning.stream import Stream

from .variants import CALCULATORS

COUNT = int(os.environ.get("EXERCISE_DRAWS", "40"))
AGAIN = 9  # questions drawn twice: one in each unit system and grade
DIFFERENT = 2000  # questions that an exercise has at least
LEAST_SHARE = 1 / 20  # of an option, among the questions of a decision
WAYS = list(itertools.product(SYSTEMS, GRADES))
EXERCISES = [(one, exercise) for one in CALCULATORS for exercise in one.exercises]
DECISIONS = [(one, decision) for one in CALCULATORS for decision in one.decisions]


def name_of(part: Calculator | Exercise | Decision) -> str:
    return part.name


each_exercise = pytest.mark.parametrize(("calculator", "exercise"), EXERCISES, ids=name_of)
each_decision = pytest.mark.parametrize(("calculator", "decision"), DECISIONS, ids=name_of)


def drawn(calculator: Calculator, part: Exercise | Decision, place: int) -> Question:
    """The question number ``place``; unit systems and grades take turns."""
    system, grade = WAYS[place % len(WAYS)]
    if isinstance(part, Exercise):
        return draw_number(calculator, part, f"test {place}", grade, system)
    return draw_decision(calculator, part, f"test {place}", grade, system)


def questions(calculator: Calculator, part: Exercise | Decision) -> Iterator[Question]:
    """``COUNT`` questions; at the end they must have been different, and come again."""
    words = set()
    for place in range(COUNT):
        question = drawn(calculator, part, place)
        assert place >= AGAIN or drawn(calculator, part, place) == question
        words.add(question.words)
        yield question
    assert len(words) >= 0.9 * min(COUNT, DIFFERENT)


@each_exercise
def test_the_right_answer_and_every_slip_is_marked_as_what_it_is(
    calculator: Calculator, exercise: Exercise
) -> None:
    for question in questions(calculator, exercise):
        assert question.kind == NUMBER
        assert mark(question, question.shown).verdict == RIGHT, question
        assert [slip.name for slip in question.slips] == [slip.name for slip in exercise.slips]
        for slip in question.slips:
            marked = mark(question, slip.shown)
            assert (marked.verdict, marked.slip, marked.why) == (SLIP, slip.name, slip.why), (
                question
            )
        assert isinstance(question.answer, float) and question.within > 0
        values = [question.answer, *(slip.value for slip in question.slips)]
        for one, other in itertools.combinations(values, 2):
            assert abs(one - other) > 2 * question.within, question


@each_exercise
def test_what_is_drawn_is_told(calculator: Calculator, exercise: Exercise) -> None:
    assert set(exercise.draw) <= set(PLACE.findall(exercise.situation))


@each_decision
def test_one_option_is_right_and_each_is_at_times(
    calculator: Calculator, decision: Decision
) -> None:
    right: Counter[int] = Counter()
    for question in questions(calculator, decision):
        assert question.kind == CHOICE
        assert isinstance(question.answer, int)
        assert len(set(question.options)) == len(decision.options) >= 2
        for place in range(len(question.options)):
            marked = mark(question, place)
            assert marked.verdict == (RIGHT if place == question.answer else WRONG)
            assert marked.why
        right[question.answer] += 1
    for place, option in enumerate(decision.options):
        assert right[place] >= LEAST_SHARE * COUNT, (option.words, right)


@each_decision
def test_options_never_hold_together(calculator: Calculator, decision: Decision) -> None:
    stream = Stream(f"options of {decision.name}")
    for _ in range(COUNT):
        given = {name: draw_value(stream, span) for name, span in decision.draw.items()}
        worked = work_out(calculator, {**decision.fixed, **given})
        if isinstance(worked, Answer):
            hold = [parse(option.holds).evaluate(worked.values) for option in decision.options]
            assert sum(hold) <= 1, given


@each_decision
def test_what_is_drawn_is_told_or_stands_behind_what_is(
    calculator: Calculator, decision: Decision
) -> None:
    told = set(PLACE.findall(decision.situation))
    known = {item.name for item in (*calculator.inputs, *calculator.constants)}
    worked = told - known  # told as if it had been measured
    assert set(decision.draw) <= told or worked


# The slot of a fret is at S · (1 - 2^(-n/12)) from the nut. On 650 mm the 12th is half-way, at
# 325 mm; by a table of powers 2^(-7/12) = 0.667420, so the 7th is at 216.177 mm, and 433.823 mm from
# the saddle line. The space before a fret is 2^(1/12) - 1 = 0.0594631 of what is left of the string.


def slot(fret: int, within: str = "0.05 mm", system: str = "metric") -> Question:
    """A question for the slot of a fret on a scale of 650 mm."""
    slips = [
        Slip(name="last-space", formula="scale_length * 2 ** (-frets / 12) * (2 ** (1 / 12) - 1)",
             why="That is the last space alone."),
        Slip(name="from-the-saddle", formula="scale_length * 2 ** (-frets / 12)",
             why="That is from the other end."),
    ]  # fmt: skip
    exercise = Exercise(
        name="slot",
        situation="How far from the nut is fret {frets} on a scale of {scale_length}?",
        asks="last_slot",
        draw={"scale_length": (650, 650, 1), "frets": (fret, fret, 1)},
        fixed={"body_joint_fret": 1},
        within=within,
        slips=tuple(slips[:1] if fret == 12 else slips),
    )
    return draw_number(load("fret-spacing"), exercise, "one", 2, system)


@pytest.mark.parametrize(
    ("given", "verdict", "slip"),
    [
        ("325 mm", RIGHT, ""),
        ("325", RIGHT, ""),
        ("325.05", RIGHT, ""),
        ("325,0 mm", RIGHT, ""),
        ("32.5 cm", RIGHT, ""),
        ("0.325 m", RIGHT, ""),
        ("12.795 in", RIGHT, ""),  # 324.993 mm
        ("12 51/64 in", RIGHT, ""),  # 325.041 mm
        ("12 25/32 in", ROUNDED, ""),  # 324.644 mm, the nearest 32nd
        ("12.8 in", ROUNDED, ""),  # 325.12 mm
        ("325 cm", UNIT, ""),
        ("325 in", UNIT, ""),
        ("32.5", UNIT, ""),  # right in centimetres
        ("12.795", UNIT, ""),  # right in inches
        ("-325", SLIP, "sign"),
        ("19.33", SLIP, "last-space"),  # 325 · 0.0594631 = 19.3255
        ("19", SLIP, "last-space"),
        ("0.761 in", SLIP, "last-space"),  # 19.329 mm
        ("326", WRONG, ""),
        ("half-way", UNREADABLE, ""),
        ("325 kg", UNREADABLE, ""),
        ("3 25", UNREADABLE, ""),
        ("", MISSING, ""),
        (None, MISSING, ""),
    ],
)
def test_marks_the_octave(given: str | None, verdict: str, slip: str) -> None:
    marked = mark(slot(12), given)
    assert (marked.verdict, marked.slip) == (verdict, slip)
    assert marked.words.startswith("The answer")


@pytest.mark.parametrize(
    ("given", "verdict", "slip", "share"),
    [
        ("216.18", RIGHT, "", 1.0),
        ("216.2", RIGHT, "", 1.0),
        ("216", ROUNDED, "", 0.5),
        ("8.51 in", RIGHT, "", 1.0),  # 216.154 mm
        ("8.5 in", ROUNDED, "", 0.5),  # 215.9 mm
        ("433.82", SLIP, "from-the-saddle", 0.0),
        ("434", SLIP, "from-the-saddle", 0.0),
        ("25.8", SLIP, "last-space", 0.0),  # 433.823 · 0.0594631 = 25.7965
        ("220", WRONG, "", 0.0),
    ],
)
def test_marks_the_seventh_fret(given: str, verdict: str, slip: str, share: float) -> None:
    marked = mark(slot(7), given)
    assert (marked.verdict, marked.slip, marked.share) == (verdict, slip, share)


def test_64ths_are_asked_only_where_they_are_fine_enough() -> None:
    fine, coarse = slot(12, "0.05 mm", "inch64"), slot(12, "0.5 mm", "inch64")
    # The scale is told as 25 19/32 in: half of that is 12.796875 in, 12 51/64 in.
    assert (fine.system, fine.shown) == ("inch", "12.797 in")
    assert (coarse.system, coarse.shown) == ("inch64", "12 51/64 in")
    assert mark(coarse, "12 13/16").verdict == RIGHT  # 325.44 mm
    assert mark(coarse, "12 3/4").verdict == ROUNDED  # 323.85 mm, the nearest quarter
    assert mark(coarse, "12 7/8").verdict == WRONG  # 327.03 mm


def test_a_choice_is_marked_by_place_or_not_read() -> None:
    calculator = load("saddle-height")
    question = draw_decision(calculator, calculator.decisions[0], "one", 2, "metric")
    assert mark(question, question.answer).verdict == RIGHT
    assert mark(question, str(question.answer)).verdict == RIGHT
    wrong = (int(str(question.answer)) + 1) % len(question.options)
    assert mark(question, wrong).slip == f"option {wrong + 1}"
    for garbage in (len(question.options), -1, "first", 0.5, [0], True):
        assert mark(question, garbage).verdict == UNREADABLE
    assert mark(question, None).verdict == MISSING
