"""Draws questions from the procedures: the order of steps, and the cause behind a sign."""

from typing import Any

from .question import CHOICE, ORDER, CannotDraw, Question
from .stream import Stream

STEPS_ASKED = {1: 3, 2: 4, 3: 6}
FAULTS_OFFERED = {1: 3, 2: 4, 3: 5}
FEWEST = 3


def draw_order(
    bank: dict[str, Any], station_id: str, seed: str, grade: int, units: str
) -> Question:
    """Steps of a station to be put in order: three, four or six of them."""
    station = bank["stations"][station_id]
    steps = station["steps"]
    if len(steps) < FEWEST:
        raise CannotDraw(f"order/{station_id} has fewer than {FEWEST} steps")
    stream = Stream(f"order/{station_id}/{seed}/{grade}/{units}")
    chosen = stream.some(steps, min(STEPS_ASKED[grade], len(steps)))
    laid = stream.shuffled(range(len(chosen)))
    if laid == sorted(laid):
        laid = laid[1:] + laid[:1]  # laid out in order it would be no question
    right = tuple(laid.index(place) for place in range(len(chosen)))
    return Question(
        exercise=f"order/{station_id}", title=f"Order of work: {station['title']}", kind=ORDER,
        grade=grade, words=f"{station['title']}: put these steps in the order in which they are done.",
        answer=right, shown=" → ".join(step["title"] for step in chosen),
        read=(f"{station['page']}#steps", station["title"]), system=units,
        options=tuple(chosen[place]["title"] for place in laid),
        whys=tuple(chosen[place]["reason"] for place in laid),
    )  # fmt: skip


def draw_fault(
    bank: dict[str, Any], station_id: str, seed: str, grade: int, units: str
) -> Question:
    """A sign at a station, and which of several causes is behind it; in grade 2 and 3, or which
    mend. In grade 3 the others come from the stations of the same group too."""
    station = bank["stations"][station_id]
    own = station["faults"]
    stream = Stream(f"fault/{station_id}/{seed}/{grade}/{units}")
    others = list(own)
    if grade == 3:
        others += [
            fault
            for other in bank["stations"].values()
            if other["group"] == station["group"] and other is not station
            for fault in other["faults"]
        ]
    asked = "mend" if grade > 1 and stream.whole(0, 1) else "cause"
    fault = stream.pick(own) if own else None
    wrong = [one for one in others if fault and one[asked] != fault[asked]]
    if fault is None or len(wrong) < FEWEST - 1:
        raise CannotDraw(f"fault/{station_id} has fewer than {FEWEST} faults")
    offered = stream.shuffled([fault, *stream.some(wrong, FAULTS_OFFERED[grade] - 1)])
    right = offered.index(fault)
    question = "What is the likely cause?" if asked == "cause" else "How is it mended?"
    return Question(
        exercise=f"fault/{station_id}", title=f"Faults: {station['title']}", kind=CHOICE,
        grade=grade, words=f"{station['title']}. You see this: {fault['sign']} {question}",
        answer=right, shown=fault[asked],
        read=(f"{station['page']}#{fault['anchor']}", fault["title"]), system=units,
        options=tuple(one[asked] for one in offered),
        whys=tuple(
            f"{fault['title']}. {fault[asked]}" if one is fault
            else f"That belongs to another fault: {one['title'].rstrip('.')}."
            for one in offered
        ),
    )  # fmt: skip
